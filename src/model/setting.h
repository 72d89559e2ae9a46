/* Settings: values put into a file's tree before it is read, each at a place that the file has. */
#ifndef MODEL_SETTING_H
#define MODEL_SETTING_H

#include "galeward/record.h"

struct gw_settings {
    struct gw_arena *arena;
    struct gw_node **places; /* that were set, with the paths that led there */
    const char **paths;
    size_t n, capacity, paths_capacity;
};

/* "walls.east.columns.width=5 ft". A path goes by the record's keys, where the file has a list by an item's name or its
 * number from 1; a key in their place means every item, and '?' the only one. False: `*why` says what is wrong, and
 * what there is. */
bool gw_setting_put(struct gw_settings *settings, const struct gw_record *record, struct gw_node *root,
                    const char *setting, const char **why);

#endif
