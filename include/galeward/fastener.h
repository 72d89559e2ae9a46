/* Screws and bolts of framing: their own strength, and what the aluminum around them holds; pressure plates, the ends
 * of horizontals. Allowable-stress level throughout: an allowable is a nominal strength over its safety factor. Pure.
 *
 * A screw pulls out of the metal that holds its thread, pulls the sheet over its head, shears, bears. The tapped-hole
 * formulas do not hold for a continuous chase (axis across it, part of the thread engages) nor for a slot (axis along
 * it): those want a tested value, and gw_tested_strength says so. */
#ifndef GALEWARD_FASTENER_H
#define GALEWARD_FASTENER_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_thread { GW_THREAD_UNSET, GW_THREAD_COARSE, GW_THREAD_SPACED };
enum gw_head { GW_HEAD_UNSET, GW_HEAD_FLAT, GW_HEAD_HEX_WASHER, GW_HEAD_COUNTERSUNK };
enum gw_pullover { GW_PULLOVER_UNSET, GW_PULLOVER_2015, GW_PULLOVER_2010_VALLEY, GW_PULLOVER_2010_CROWN };

/* Minimum strengths, Pa. An absent strength refuses only what needs it. */
struct gw_metal_strength {
    double ultimate, yield, elastic_modulus;
    double thickness; /* m, greatest for which the strengths hold; absent: any */
};
/* By alloy and temper, "6063-T6". */
enum gw_status gw_fastener_alloy(struct gw_metal_strength *out, const char *alloy, struct gw_engine *engine);
/* By grade and diameter: "stainless_cw", "stainless_a", "stainless_af", "grade_2", "grade_5", "a307", "a325". */
enum gw_status gw_fastener_grade(struct gw_metal_strength *out, const char *grade, double diameter,
                                 struct gw_engine *engine);

struct gw_screw {
    enum gw_thread thread;
    double diameter, pitch; /* m */
    double stripping;       /* m2 per m engaged, internal thread; absent: the size's */
    double minor;           /* m, smallest minor diameter of a spaced thread; absent: the size's */
};

/* m2. Spaced threads have one area for both, at the minor diameter; absent for a size that is not in the table. */
struct gw_screw_areas {
    double tension, root;
};
enum gw_status gw_screw_areas(struct gw_screw_areas *out, const struct gw_screw *screw, struct gw_engine *engine);

/* Nominal strengths, N. `engagement`: thread in the metal, m. In metal below 1/8 in, the lower of the formula and of
 * published tests of drilled-in screws; refused below 0.060 in, and there of screws wider than 1/4 in. */
enum gw_status gw_screw_pullout(double *out, const struct gw_screw *screw, double engagement,
                                const struct gw_metal_strength *metal, struct gw_engine *engine);
struct gw_sheet {
    double thickness;
    struct gw_metal_strength metal;
};
struct gw_screw_head {
    enum gw_head kind;     /* unset: flat */
    enum gw_pullover rule; /* unset: 2015. The forms differ two to three times on thick walls */
    double diameter;       /* m, head or washer; absent: a hex washer head's by the size */
    double hole;           /* m; 2010 only */
};
enum gw_status gw_screw_pullover(double *out, const struct gw_screw *screw, const struct gw_screw_head *head,
                                 const struct gw_sheet *sheet, struct gw_engine *engine);
/* `edge`: from the screw's axis to the end of the sheet that the load points to, m. Bolts take the same form. */
enum gw_status gw_screw_bearing(double *out, double diameter, double edge, const struct gw_sheet *sheet,
                                struct gw_engine *engine);
/* Of a bolt in a slot that lies across the load. */
enum gw_status gw_slot_bearing(double *out, double diameter, double edge, const struct gw_sheet *sheet,
                               struct gw_engine *engine);
/* Governs only where the metal that holds the thread is no thicker than the sheet under the head. */
double gw_screw_tilting(double diameter, double thickness, double ultimate, struct gw_engine *engine);

/* What has no formula, N: the tested nominal over the screw's safety factor. Pull-out from a chase or along a slot, and
 * a screw in the end of a slot under shear (spline). Absent: GW_MISSING with a message that asks for the test. */
enum gw_screw_seat { GW_SEAT_CHASE, GW_SEAT_SLOT, GW_SEAT_SPLINE };
enum gw_status gw_tested_strength(double *out, enum gw_screw_seat seat, double tested, double safety_factor,
                                  struct gw_engine *engine);

/* Of the screw or bolt itself, N: F_u A/SF, F_u A/(sqrt(3) SF). */
double gw_screw_tension(double ultimate, double area, double safety_factor, struct gw_engine *engine);
double gw_screw_shear(double ultimate, double area, double safety_factor, struct gw_engine *engine);
/* Steel bolts by AISC, allowable strength, threads in the shear plane; not to be mixed with the two above. */
struct gw_bolt_strength {
    double tension, shear;
};
void gw_steel_bolt(struct gw_bolt_strength *out, double diameter, double ultimate, struct gw_engine *engine);
/* (T/Ta)^2 + (V/Va)^2 of the fastener itself: at most 1. */
double gw_fastener_interaction(double tension, double tension_allowable, double shear, double shear_allowable,
                               struct gw_engine *engine);
double gw_screw_safety(struct gw_engine *engine); /* of the metal around a screw, and of a screw where nobody says */
double gw_bolt_safety(struct gw_engine *engine);  /* of the aluminum around a bolt */

/* One screw with everything that its inputs allow; the rest is absent. */
struct gw_screw_case {
    struct gw_screw screw;
    struct gw_screw_head head;
    double engagement;                     /* m */
    const struct gw_metal_strength *metal; /* that holds the thread; NULL: not known */
    const struct gw_sheet *sheet;          /* under the head; NULL */
    double edge_distance;
    double ultimate, yield;              /* Pa, of the screw */
    double tested_tension, tested_shear; /* N, nominal of the screw itself; go before `ultimate` */
    double safety_factor;                /* absent: the screw's */
    double metal_safety_factor; /* pull-out, pull-over, bearing, tilting; absent: safety_factor, at least the screw's */
    double demand_tension, demand_shear; /* N, magnitudes */
};
enum { GW_SCREW_NOTES = 4 };
struct gw_screw_result {
    struct gw_screw_areas areas;
    double safety_factor, metal_safety_factor;
    double tension, shear, tension_yield; /* N: allowable, allowable, at yield without a factor */
    double pullout_nominal, pullout, pullover_nominal, pullover, bearing_nominal, bearing, tilting_nominal, tilting;
    bool thin;             /* the thread's metal is so thin that its pull-out is looked up in tests */
    double interaction;    /* (T/Ta)^2 + (V/Va)^2 of the screw */
    double utilization;    /* largest of the demands over their allowables, and of the interaction's root */
    const char *governing; /* NULL without a demand */
    const char *notes[GW_SCREW_NOTES];
    unsigned n_notes;
};
enum gw_status gw_screw_solve(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine);

/* What a screw that clamps a plate takes in tension, of a solved case: the least of the screw itself, the pull-over of
 * the plate and the pull-out of its thread, which is `tested_pullout` (N, nominal) over the screw's factor where there
 * is one. Absent where one of the three is not known. */
struct gw_screw_hold {
    double allowable; /* N */
    const char *by;   /* "tension of the screw" ...; of an absent one what is not known */
};
enum gw_status gw_screw_hold(struct gw_screw_hold *out, const struct gw_screw_result *solved, double tested_pullout,
                             struct gw_engine *engine);

/* A plate that clamps two lites along a line of screws: a continuous beam on the screws under the suction of both
 * lites, and two cantilevers from the line of screws to the gaskets. */
struct gw_plate_section {
    double section_modulus, inertia; /* m3, m4, along the screws */
    double thickness;                /* m, on the line of screws; absent: no bending across */
    double hole;                     /* m, of the screws; absent: none taken off */
    double arm;                      /* m, from the screws to a gasket; absent: no bending across */
    struct gw_metal_strength metal;
};
/* Of a flat plate: modulus with the hole taken off, inertia without. `hole` absent: none. The rest is absent. */
void gw_plate_flat(struct gw_plate_section *out, double width, double hole, double thickness);
struct gw_pressure_plate_case {
    double pressure;                        /* Pa, suction, magnitude */
    double width_left, width_right;         /* m, of the lites on each side; 0: no glass */
    double spacing;                         /* m, of the screws; with a length: at most */
    double length;                          /* m, of the plate; absent: long, its ends far away */
    double end_distance;                    /* m, from an end to its screw; absent: no end in the case */
    double gasket_load;                     /* N/m, each line, from clamping; absent: suction alone */
    double preload;                         /* N, of a screw; absent: none in the upper bound */
    double screw_allowable;                 /* N, least of the screw's own and the pull-over; absent */
    double chase_tested;                    /* N, nominal; absent: utilization is not known */
    double safety_factor;                   /* of the tested value; absent: the screw's */
    const struct gw_plate_section *section; /* NULL: forces only */
};
enum { GW_PRESSURE_PLATE_NOTES = 6 };
struct gw_pressure_plate_result {
    int fasteners;                     /* of a plate with a length */
    double spacing;                    /* m, as laid out */
    double line_load;                  /* N/m */
    double gasket_left, gasket_right;  /* N/m, plate on gasket: clamping and half the suction of its lite */
    double tension;                    /* N, line load x spacing */
    double tension_most;               /* N, the most loaded screw of the continuous plate */
    double tension_upper;              /* N, with the whole preload: a soft joint */
    double moment, moment_end;         /* Nm, largest over a screw; over the end screw, from the overhang */
    double deflection, deflection_end; /* m, largest at midspan; of the end, away from the glass; minus: toward it */
    double stress, stress_across;      /* Pa */
    double stress_allowable;
    double chase;            /* N, allowable */
    double end_equal_moment; /* m, end distance at which end and interior moments are equal */
    double utilization;      /* of screw, chase and plate; absent until each link of the three is known */
    const char *governing;
    const char *notes[GW_PRESSURE_PLATE_NOTES];
    unsigned n_notes;
};
enum gw_status gw_pressure_plate(struct gw_pressure_plate_result *out, const struct gw_pressure_plate_case *in,
                                 struct gw_engine *engine);
/* Pa: the suction under which the plate is bent between two screws to its allowable stress; pressure, clamping and
 * preload of the case are not looked at. Wants a section. */
enum gw_status gw_plate_suction(double *out, const struct gw_pressure_plate_case *in, struct gw_engine *engine);

/* The end of a horizontal at a vertical: its reactions on fasteners whose axes lie along it, shared elastically. A
 * shear block's fasteners come with their allowable (screw, bearing in each part, tilting); a spline's want a tested
 * value. */
enum gw_rail_end { GW_RAIL_END_UNSET, GW_SHEAR_BLOCK, GW_SCREW_SPLINE };
struct gw_fastener_place {
    double x, y; /* m: into the wall, up */
};
struct gw_connection_case {
    enum gw_rail_end kind;
    double wind, dead;                         /* N, reactions of the horizontal at this end; wind acts both ways */
    struct gw_fastener_place load;             /* m, where the two act */
    const struct gw_fastener_place *fasteners; /* m */
    size_t n_fasteners;
    double diameter;      /* m; absent: spacing is not looked at */
    double allowable;     /* N, in shear of one fastener; absent: no utilization; not for splines */
    double tested;        /* N, nominal in shear of one screw in its slot; splines */
    double safety_factor; /* of the tested value; absent: the screw's */
};
struct gw_connection_result {
    double resultant;   /* N, of wind and dead */
    double moment;      /* Nm, about the middle of the group, with the wind that loads a fastener most */
    double fastener;    /* N, shear of the most loaded one */
    int worst;          /* which, from 0 */
    double allowable;   /* N, of one */
    double utilization; /* absent without an allowable */
};
enum gw_status gw_connection(struct gw_connection_result *out, const struct gw_connection_case *in,
                             struct gw_engine *engine);

/* A horizontal that carries a lite on two setting blocks, each the same way from its end. */
struct gw_rail_case {
    double weight, span, offset;                          /* N of the whole lite, m, m; offset absent: quarter points */
    double elastic_modulus, inertia;                      /* Pa, m4; absent: no deflection */
    double shear_modulus, torsion_constant, eccentricity; /* Pa, m4, m; absent: no twist */
};
struct gw_rail_result {
    double offset, moment, deflection, deflection_limit, twist, twist_limit; /* m, Nm, m, m, rad, rad */
    const char *notes[2];
    unsigned n_notes;
};
/* A flat leg or chair that bears one setting block beyond the horizontal's face: a cantilever over its own length.
 * Plastic moment by yielding and by rupture, each over its safety factor. */
struct gw_chair_case {
    double weight, arm, length, thickness; /* N on it, m from its root, m along the horizontal, m */
    struct gw_metal_strength metal;
};
struct gw_chair_result {
    double moment, allowable, stress;    /* Nm, Nm, Pa on the elastic modulus */
    double deflection, deflection_limit; /* m, at the block */
};
void gw_setting_chair(struct gw_chair_result *out, const struct gw_chair_case *in, struct gw_engine *engine);
enum gw_status gw_rail_dead_load(struct gw_rail_result *out, const struct gw_rail_case *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
