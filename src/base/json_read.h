/* JSON read whole, by the library for JSON: nothing outside json_read.c knows which one. */
#ifndef GALEWARD_JSON_READ_H
#define GALEWARD_JSON_READ_H

#include "galeward/document.h"

/* A value of a text that is read without places, as large results are: it lives as long as `use` of gw_json_use runs.
 */
struct gw_json_value;
/* NULL where the value is no object or has no such key; where it is no list, or a shorter one. */
const struct gw_json_value *gw_json_get(const struct gw_json_value *value, const char *key);
const struct gw_json_value *gw_json_item(const struct gw_json_value *value, size_t i);
size_t gw_json_count(const struct gw_json_value *value); /* of a list; else 0 */
bool gw_json_is_list(const struct gw_json_value *value);
/* NULL, or GW_ABSENT, where the value is NULL or something else. True and false have a word. */
const char *gw_json_words(const struct gw_json_value *value);
double gw_json_double(const struct gw_json_value *value);

/* Reads the text, an object or a list, and calls `use` with it; false after a diagnostic, without the call. */
bool gw_json_use(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags,
                 void (*use)(void *context, const struct gw_json_value *root), void *context);

#endif
