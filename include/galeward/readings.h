/* Readings of a wall as it was hung: a CSV sheet, one row a value at a place.
 *
 * Columns: wall column story row edge line point item value date installed temperature repaired sample by note; other
 * headers are mapped by `readings: columns` of the project. A number carries its unit. */
#ifndef GALEWARD_READINGS_H
#define GALEWARD_READINGS_H

#include "galeward/items.h"
#include "galeward/model.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_sample { GW_SAMPLE_UNSET, GW_SAMPLE_RANDOM, GW_SAMPLE_CHOSEN };
#define GW_NO_DAY (-2147483647L - 1)

struct gw_reading {
    /* As the sheet has it. */
    const char *wall, *point, *item_name, *value_text, *date, *installed, *temperature_text, *by, *note;
    int column, story, row, line; /* GW_NO_INTEGER: not said */
    int edge_word;                /* 1 + enum gw_edge; 0: not said */
    enum gw_bool repaired;
    enum gw_sample sample;
    const struct gw_node *node; /* its line */
    /* As it was read. */
    bool good; /* false: a fault was reported, and it is left out of account */
    enum gw_item_id item;
    struct gw_item_value value;
    double at;              /* of the point: its number, or m from the edge's left or lower end; absent: neither */
    bool at_distance;       /* the latter */
    long day, installed_on; /* since 1970-01-01; GW_NO_DAY: not said */
    double temperature;     /* K; absent */
    bool of_air;            /* of the air: the metal may be hotter */
};

struct gw_readings {
    const char *file;
    GW_LIST(struct gw_reading) rows; /* in the order of the sheet */
    size_t wrong, blank;             /* rows with a fault; rows without a value, which are left out */
};

/* Reads a sheet for a project; every fault of every row goes to the model's diagnostics, and the file is one of its
 * inputs. A file that heads neither an item nor a value is refused without showing anything of it. True when there was
 * no fault; rows without one are there in either case. */
bool gw_readings_read(struct gw_readings *out, struct gw_model *model, const struct gw_source *source);
/* The sheet that the project names; NULL: none, or after a diagnostic. */
const struct gw_source *gw_readings_named(struct gw_model *model);
/* Loads the system that was hung where the project has no candidates: `file`, as the working directory has it; NULL:
 * the project's `readings: system`, beside the project. Before the take-off. False after a diagnostic. */
bool gw_readings_hang(struct gw_model *model, const char *file);
/* The candidate that was hung: by `name` (file or name of the system; NULL: the project's `readings: system`), or the
 * only one. NULL after a diagnostic. */
const struct gw_system *gw_readings_system(struct gw_model *model, const char *name);
extern const struct gw_record gw_reading_record;

#ifdef __cplusplus
}
#endif

#endif
