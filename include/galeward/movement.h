/* Movement of joints: thermal expansion, floors, tolerances, and their sums three ways.
 *
 * Pure. Lengths are magnitudes, m. Temperatures are in K, differences of temperature too: a difference of 90 degF is
 * 50 K. Methods and limits: docs/methods.md; coefficients: tables/movement.yaml. */
#ifndef GALEWARD_MOVEMENT_H
#define GALEWARD_MOVEMENT_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_MOVEMENT_NOTES = 6 };

enum gw_direction { GW_DIRECTION_UNSET, GW_CLOSES, GW_OPENS, GW_BOTH_WAYS };
enum gw_movement_kind { GW_MOVEMENT_UNSET, GW_MOVEMENT, GW_TOLERANCE };

struct gw_movement_item {
    const char *name;            /* NULL or a string that outlives the trace */
    double value;                /* m, >= 0; GW_BOTH_WAYS: so much each way */
    enum gw_direction direction; /* absent: a tolerance goes both ways; a movement must say */
    enum gw_movement_kind kind;
};

/* arithmetic: all add. mixed: movements add, tolerances by root sum of squares. srss: all by root sum of squares, which
 * holds for independent random items only; live load, temperature and creep may come together. */
struct gw_movement_sums {
    double arithmetic, mixed, srss;
};
struct gw_movement_result {
    struct gw_movement_sums closing, opening;
    struct gw_movement_sums joint;      /* m, closing + least gap: the nominal joint */
    struct gw_movement_sums engagement; /* m, opening + least overlap; absent without an overlap */
    const char *notes[GW_MOVEMENT_NOTES];
    unsigned n_notes;
};
/* `least_gap`: what the closed joint keeps (gasket at its solid height, sealant at its limit); `least_overlap`: what
 * the open one keeps engaged, absent: none asked. */
enum gw_status gw_movement_sum(struct gw_movement_result *out, const struct gw_movement_item *items, size_t n,
                               double least_gap, double least_overlap, struct gw_engine *engine);

enum gw_expands {
    GW_EXPANDS_UNSET,
    GW_EXPANDS_ALUMINUM,
    GW_EXPANDS_GLASS,
    GW_EXPANDS_STEEL,
    GW_EXPANDS_STAINLESS_STEEL, /* type 304 */
    GW_EXPANDS_STAINLESS_316,
    GW_EXPANDS_CONCRETE
};

/* A length that warms and cools from the temperature at which it was set. */
struct gw_thermal_case {
    double length;                   /* m */
    enum gw_expands material;        /* or */
    double expansion_per_k;          /* 1/K */
    double hottest, coldest;         /* K, of the material, in service; absent: the usual range of a surface */
    double set_warmest, set_coldest; /* K, at installation; absent: any temperature of the range */
};
struct gw_thermal_result {
    double expansion_per_k;
    double rise, fall;        /* K, differences from the set temperature */
    double growth, shrinkage; /* m */
    const char *notes[GW_MOVEMENT_NOTES];
    unsigned n_notes;
};
/* With the set temperature unknown each way gets the whole range. */
enum gw_status gw_thermal_movement(struct gw_thermal_result *out, const struct gw_thermal_case *in,
                                   struct gw_engine *engine);
/* alpha L dT, m. */
double gw_thermal_length(double expansion_per_k, double length, double difference_k, struct gw_engine *engine);

/* The stack joint of a story, from a project's values. Absent: no such movement, and no item. */
struct gw_stack_joint {
    double live_above, live_below; /* m, live-load deflection of the floor edge that carries the wall above the joint,
                                      and of the one that carries the wall below it: one loaded, the other not */
    double shortening;             /* m a story, of columns, after the wall is set: closes */
    double rebound;                /* m, of the structure: opens */
    const struct gw_thermal_result *thermal; /* of the pieces that meet in the joint, their whole length */
    double stories;                          /* that a piece spans, for `shortening`; absent: 1 */
    double fabrication, erection;            /* m, tolerances each way; absent: the usual, and noted by the caller */
};
enum { GW_JOINT_ITEMS = 8 };
/* Fills `items` (GW_JOINT_ITEMS of them); returns how many. */
size_t gw_joint_items(struct gw_movement_item *items, const struct gw_stack_joint *in, struct gw_engine *engine);
/* Live-load deflection of a floor edge where only its span is known, m; `span_ratio` absent: the table's. */
enum gw_status gw_floor_movement(double *out, double span, double span_ratio, struct gw_engine *engine);

/* Slot of an anchor that lets a wall move: the bolt, and movement and erection tolerance each way, m. */
enum gw_status gw_anchor_slot(double *out, double bolt, double movement, double tolerance, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
