/* A requirement set: what a specification asks of a wall, row by row, as it was written and is read again.
 *
 * `specify` writes it, `check` and `demand` judge by it. SI, as everywhere; GW_ABSENT, NULL, GW_NO_INTEGER and UNSET
 * choices are what a row leaves out. Pressures are magnitudes, at the level that the row names. Field tables:
 * src/model/records_set.c. */
#ifndef GALEWARD_REQUIREMENT_SET_H
#define GALEWARD_REQUIREMENT_SET_H

#include "galeward/project.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_set_of { GW_SET_OF_UNSET, GW_SET_FRAMING };

/* One row. Where it holds: each of wall, zone, part, of, component, from and to that it gives. */
struct gw_required {
    const char *id, *check;
    const char *wall;
    int zone;
    enum gw_roof_part part;
    enum gw_set_of of;           /* structural: of framing alone; else of lites, whose share what holds them takes */
    enum gw_component component; /* water, air: of vents or doors; absent: of what is fixed */
    double from, to;             /* m above ground, lowest edge of the lite: debris */
    double inward, outward;      /* structural: of the lite that takes most, Pa */
    enum gw_level level;
    double pressure;         /* water; blast: peak reflected, Pa */
    double leakage, at;      /* air: m/s at Pa */
    double drift;            /* m, of the story, with importance: the greatest of the row */
    enum gw_missile missile; /* debris */
    int wind_zone;
    double impulse; /* blast, reflected, Pa s */
    enum gw_hazard hazard;
    const char *name; /* of a rating by name; with the next two */
    double at_least, at_most;
    const char *test;
    GW_LIST(int) evidence; /* enum gw_evidence_rule; empty: as the project says */
    GW_LIST(const char *) submit;
    const struct gw_node *node;
};

struct gw_set_input {
    const char *file, *sha256;
};
struct gw_set_head {
    const char *project, *number;
    GW_LIST(struct gw_set_input) inputs;
    const char *version;
};
struct gw_requirement_set {
    int galeward;
    enum gw_units units;
    const struct gw_set_head *requirement_set;
    GW_LIST(struct gw_required) requires;
    double report_age; /* s; absent: no limit */
    const struct gw_node *node;
};

#ifdef __cplusplus
}
#endif

#endif
