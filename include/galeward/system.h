/* The records of a system file, in SI, as they were given: what its seller states of it, and what was tested.
 *
 * Absent values: GW_ABSENT, NULL, an UNSET choice, GW_UNSAID, GW_NO_INTEGER. Defaults that were taken are listed among
 * the assumptions. Field tables: src/model/records*.c (also what each field means, its unit and its default). */
#ifndef GALEWARD_SYSTEM_H
#define GALEWARD_SYSTEM_H

#include "galeward/items.h"
#include "galeward/project.h"

#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

enum gw_system_kind { GW_SYSTEM_UNSET, GW_STICK, GW_UNITIZED, GW_WINDOW_WALL };
enum gw_glazing { GW_GLAZING_UNSET, GW_CAPTURED, GW_SILICONE, GW_MIXED };
enum gw_test {
    GW_TEST_UNSET,
    GW_TEST_STRUCTURAL,
    GW_TEST_AIR,
    GW_TEST_WATER,
    GW_TEST_SWAY,
    GW_TEST_IMPACT,
    GW_TEST_BLAST,
    GW_TEST_OTHER
};

/* How each edge of a tested lite was held; `all` where one word was given for all of them. */
enum gw_edge_hold { GW_EDGE_HOLD_UNSET, GW_EDGE_PLATE, GW_EDGE_SILICONE, GW_EDGE_FREE };
struct gw_tested_hold {
    enum gw_edge_hold all, head, sill, left, right;
};
struct gw_tested_lite {
    double width, height;
    GW_LIST(struct gw_layer) layers;
    int support; /* edges held; GW_NO_INTEGER: not recorded */
    const struct gw_tested_hold *hold;
    enum gw_component component;
};
struct gw_measured {
    double value, at; /* m, Pa */
};
struct gw_tested_transom {
    double span, above, below;
    const struct gw_measured *deflection; /* under wind, at a pressure */
};
struct gw_tested_fastening {
    double diameter, spacing, end_distance;
};
enum gw_included {
    GW_INCLUDED_UNSET,
    GW_INCLUDES_ANCHORS,
    GW_INCLUDES_SPLICE,
    GW_INCLUDES_STACK_JOINT,
    GW_INCLUDES_CORNER,
    GW_INCLUDES_PARAPET,
    GW_INCLUDES_JAMB
};
/* What one specimen measured; a dimension that is not recorded is never taken from elsewhere. */
struct gw_tested {
    double module, span;
    int spans;
    double overhang;
    GW_LIST(struct gw_tested_lite) lites;
    double lite_width, lite_height; /* of one lite, as short form */
    enum gw_component component;
    const char *make_up; /* of that lite: a lite type of the project */
    GW_LIST(struct gw_layer) layers;
    double side_gap, end_gap, bite, bead_thickness, story_height; /* sway */
    const struct gw_tested_transom *transom;
    const struct gw_tested_fastening *fastening;
    double splice_shear;       /* N, across the splice in the specimen at its design pressure */
    double splice_at;          /* m, of that splice from an anchor between two spans, if its shear is not recorded */
    const char *reinforcement; /* "none", or what it was */
    GW_LIST(int) includes;     /* enum gw_included */
};
/* True where nothing that both records give differs; NULL: nothing recorded. */
bool gw_same_specimen(const struct gw_tested *a, const struct gw_tested *b);
struct gw_both_ways {
    double positive, negative;
};
/* Of a sway test: to the drift of a story in service, or in growing steps until glass falls out. */
enum gw_sway { GW_SWAY_UNSET, GW_SWAY_STATIC, GW_SWAY_DYNAMIC };
struct gw_rating {
    enum gw_test test;
    enum gw_sway kind;
    const char *name;
    double positive, negative, pressure, impulse, leakage, at, value, drift;
    enum gw_component component;
    const struct gw_both_ways *held, *failed_at; /* greatest pressures held; at which it failed or was stopped */
    const struct gw_measured *deflection;        /* of the mullion, at a pressure */
    const struct gw_tested *tested;
    const char *report;
    const char *mended; /* since another report of the same specimen; NULL */
    enum gw_missile missile;
    int wind_zone, cycles;
    enum gw_bool after_structural; /* water, air */
    enum gw_bool small_missile_shown, high_velocity_zone;
    double bite;
    enum gw_hazard hazard;
    enum gw_condition condition;
    uint32_t altered; /* parts, by number, that are other in the system than in its specimen; no key of a file */
    const struct gw_screw_spec
        *screw_then; /* of a specimen that says nothing of its screws; NULL: the system's; no key */
    const struct gw_node *node;
};
enum gw_insert_metal { GW_INSERT_UNSET, GW_INSERT_STEEL, GW_INSERT_ALUMINUM };
struct gw_insert_spec {
    enum gw_insert_metal metal;
    double inertia_x, section_modulus_x, yield;
    bool added; /* by an option that adds numbers, which say nothing of a shape; no key of a file */
};
/* A tube, or properties. */
struct gw_member_spec {
    enum gw_metal alloy;
    const struct gw_tube *tube;
    double area, inertia_x, inertia_y, section_modulus_x, section_modulus_y, torsion_constant;
    double allowable_moment, allowable_torque, unbraced_length;
    const struct gw_insert_spec *insert;
    double block_offset, eccentricity; /* transoms */
    const char *report;                /* of the allowable moment and torque; NULL: a statement */
};
struct gw_plate_spec {
    enum gw_metal alloy;
    double width, thickness, hole;
};
enum gw_hold { GW_HOLD_UNSET, GW_HOLD_TAPPED, GW_HOLD_CHASE };
struct gw_screw_spec {
    double diameter, threads_per_inch;
    double spacing, end_distance; /* m; absent: the wall's */
    enum gw_thread thread;
    enum gw_hold hold;
    enum gw_metal alloy;
    double engagement, ultimate, head_diameter, tested_pullout;
    const char *report;
};
enum gw_end_hold { GW_END_UNSAID, GW_END_SPLINE, GW_END_CHASE, GW_END_CLIP };
struct gw_capacity_spec {
    double capacity;
    enum gw_end_hold hold; /* of transoms' ends alone: a clip can be calculated */
    const char *report;
};
/* What a mullion takes where it runs past an anchor, holes counted: each alone; together they add up to 1. */
struct gw_past_anchor_spec {
    double moment, reaction;
    const char *report;
};
struct gw_seat_spec {
    enum gw_metal alloy; /* figures of a leg or chair, or the capacity of each, N */
    double capacity, length, thickness, arm;
    const char *report;
};
struct gw_anchor_spec {
    double inward, outward, along, dead, eccentricity, bolt_arm, bolt_tension, bolt_shear;
    enum gw_interaction interaction, bolt_interaction; /* with the dead load; of a bolt's tension with its shear */
    int bolts;
    const char *report;
};
/* The outer seal of an insulating unit, which alone holds its outer pane where the frame does not. */
struct gw_edge_seal_spec {
    double bite, design_stress; /* m, Pa; stress absent: as of other structural silicone */
    const char *report;
};
struct gw_silicone_spec {
    double bite, thickness, design_stress, shear_strain;
    enum gw_bool carries_weight; /* unsaid: setting blocks do */
    const char *report;          /* of a design stress above the usual one */
    const struct gw_edge_seal_spec *edge_seal;
};
/* How the system takes the drift of a story, and the gaps round its glass. */
struct gw_drift_spec {
    enum gw_drift_path path;
    double slip, side_gap, end_gap, bite;
};
struct gw_stack_spec {
    double width, least_gap, engagement, least_overlap;
};
/* How the plate's screws clamp: what their torque becomes, what they go through, what is left after a year. */
struct gw_clamp_spec {
    GW_LIST(double) nut_factor, forming_torque; /* one or two, from least to most; empty: not given */
    enum gw_bool stop;                          /* the plate lands on a stop, which the gasket's load is set by */
    double stack, chase, tip;                   /* m: between plate and chase; depth of the chase; taper of the screw */
    double retained;                            /* of the clamp at first, after a year */
    double service_life;                        /* s; absent: what is left after a year counts */
};
/* How the pocket under a lite drains. */
struct gw_drainage_spec {
    double slots;                    /* of the pocket of one lite */
    double slot_length, slot_height; /* m */
    double pocket_depth;             /* m of water that can stand before it reaches the glass */
    double upstand;                  /* m, from the pocket to the inner air seal */
    double leak_share;               /* of the rain that the outer seal lets in */
    enum gw_bool equalized;          /* unsaid: yes */
};
struct gw_gasket_spec {
    GW_LIST(double) edge_load; /* N/m on the edge of the glass, as installed: one or two, from least to most */
    double stiffness_share;    /* of the inner gasket in both */
};
/* What was read on the wall at the place that is judged, and goes before the system's own and the wall's; absent where
 * it was not read. */
struct gw_hung {
    double spacing, end_distance; /* m, of the plate's screws */
    double bite;                  /* m, of the glass */
};
/* Sealant joints round the wall: how far they move one way, and the share of its width that the sealant takes. */
struct gw_perimeter_spec {
    double movement, capability;
};
struct gw_adds {
    double inertia_x, section_modulus_x;
};
/* What the cost of an option counts. */
enum gw_counted {
    GW_COUNTS_UNSET,
    GW_COUNTS_WALL,
    GW_COUNTS_LITE,
    GW_COUNTS_MULLION,
    GW_COUNTS_TRANSOM,
    GW_COUNTS_SCREW,
    GW_COUNTS_ANCHOR
};
struct gw_system_option {
    const char *name;
    const struct gw_node *change; /* keys of the system file, to be merged over it; NULL */
    const struct gw_adds *adds;   /* to the mullion, after every change */
    enum gw_counted of;
    const char *cost; /* as it was written */
    struct gw_price price;
    double once; /* where it is used at all; absent: nothing */
    enum gw_choose choose;
    const char *group; /* of one group at most one is taken; NULL */
    GW_LIST(const char *) requires;
    const struct gw_node *node;
};
/* Options of one system, by their place in its file. */
enum { GW_OPTION_LIMIT = 64 };
typedef uint64_t gw_option_set;
struct gw_system_head {
    const char *name;
    enum gw_system_kind kind;
    enum gw_glazing glazing;
};
struct gw_system {
    int galeward;
    enum gw_units units;
    const struct gw_system_head *system;
    const char *name; /* system->name, for short */
    const char *file;
    GW_LIST(double) pocket;
    GW_LIST(struct gw_rating) ratings;
    const struct gw_member_spec *mullion, *corner_mullion, *jamb_mullion, *transom;
    const struct gw_plate_spec *pressure_plate;
    const struct gw_screw_spec *screw;
    const struct gw_silicone_spec *silicone;
    const struct gw_capacity_spec *transom_connection, *splice;
    const struct gw_seat_spec *glass_seat;
    const struct gw_past_anchor_spec *past_anchor;
    const struct gw_anchor_spec *anchor, *corner_anchor, *jamb_anchor;
    const struct gw_drift_spec *drift;
    const struct gw_stack_spec *stack_joint;
    double frame_weight;
    const struct gw_clamp_spec *clamp;
    const struct gw_drainage_spec *drainage;
    const struct gw_gasket_spec *gasket;
    const struct gw_perimeter_spec *perimeter;
    const struct gw_installation *installation; /* its own limits of what is measured on the wall */
    GW_LIST(struct gw_system_option) options;
    double cost;
    const struct gw_node *node;
    const struct gw_hung *hung; /* never of the file; NULL: nothing was read */
    struct gw_reads *reads;     /* marked by gw_part; NULL: nobody asks */
    gw_option_set
        unweighed;    /* options with which, together, the framing's weight is not known: frame_weight is absent */
    uint32_t altered; /* parts, by number, that an option makes other than what was tested */
    const struct gw_screw_spec *screw_then; /* before options; NULL: none changes it, or they bring their own ratings */
};

/* What of a system, and of the make-up of lites, something was worked out from: the parts of the file, and the lite
 * types and elevations by their number modulo 64. */
struct gw_reads {
    uint32_t parts;
    uint64_t lites;   /* types whose own make-up was looked at */
    uint64_t weights; /* types whose heaviest make-up on a wall was */
    uint64_t walls;   /* those walls: elevations of the take-off */
    bool beyond;      /* a make-up at another place than the one that is judged */
};
#define GW_SYSTEM_PARTS(X)                                                                                             \
    X(pocket)                                                                                                          \
    X(ratings)                                                                                                         \
    X(mullion)                                                                                                         \
    X(corner_mullion)                                                                                                  \
    X(jamb_mullion)                                                                                                    \
    X(transom)                                                                                                         \
    X(pressure_plate)                                                                                                  \
    X(screw)                                                                                                           \
    X(silicone)                                                                                                        \
    X(transom_connection)                                                                                              \
    X(splice)                                                                                                          \
    X(glass_seat)                                                                                                      \
    X(past_anchor)                                                                                                     \
    X(anchor)                                                                                                          \
    X(jamb_anchor)                                                                                                     \
    X(corner_anchor)                                                                                                   \
    X(drift)                                                                                                           \
    X(stack_joint)                                                                                                     \
    X(frame_weight)
#define GW_PART_NUMBER(part) GW_PART_##part,
enum gw_system_part { GW_SYSTEM_PARTS(GW_PART_NUMBER) GW_SYSTEM_PART_COUNT };
static inline void gw_mark_part(const struct gw_system *system, enum gw_system_part part)
{
    if (system->reads) system->reads->parts |= (uint32_t)1 << part;
}
/* The only way for a check to look at a part that options may change: gw_part(system, mullion)->alloy. */
#define gw_part(system, part) (gw_mark_part(system, GW_PART_##part), (system)->part)

#ifdef __cplusplus
}
#endif

#endif
