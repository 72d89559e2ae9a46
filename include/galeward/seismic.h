/* Earthquakes, ASCE 7 chapter 13: force on a wall and its connections, drift of the structure and what of it reaches a
 * lite, clearance and fallout of glass, bonded lites, exemptions.
 *
 * Pure. Forces and drifts are those of strength level. I_e is the structure's importance and belongs to drift; I_p is
 * the component's and belongs to force. Drift D_p is without I_e, D_pI = D_p I_e with it; which one a member is, its
 * comment says. Absent: GW_ABSENT, an UNSET choice, GW_UNSAID. Methods and limits: docs/methods.md. */
#ifndef GALEWARD_SEISMIC_H
#define GALEWARD_SEISMIC_H

#include "galeward/glass.h"
#include "galeward/wind.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_seismic_category { GW_SDC_UNSET, GW_SDC_A, GW_SDC_B, GW_SDC_C, GW_SDC_D, GW_SDC_E, GW_SDC_F };

/* Constant strings about a result. */
enum { GW_SEISMIC_NOTES = 6 };
struct gw_seismic_notes {
    const char *items[GW_SEISMIC_NOTES];
    unsigned n;
};

/* Force --------------------------------------------------------------------------------------------------------------
 */

enum gw_seismic_part { GW_PART_UNSET, GW_PART_WALL_ELEMENT, GW_PART_CONNECTION_BODY, GW_PART_FASTENERS };

struct gw_seismic_force_case {
    enum gw_edition edition;
    double sds;                /* S_DS */
    double weight;             /* N, W_p */
    double height_ratio;       /* z/h of the attachment; 0: at or below grade; above the roof it counts as 1 */
    double importance;         /* I_p */
    enum gw_seismic_part part; /* whose coefficients of the table stand in for those not given */
    double ap, rp;             /* 7-10, 7-16 */
    double car, rpo;           /* 7-22 */
    double period;             /* s, T_a of the structure, 7-22; absent: unknown */
    double response_modification, overstrength, structure_importance; /* R, Omega_0, I_e, 7-22; all, or unknown */
};

struct gw_seismic_force_result {
    double force;            /* N, horizontal, in plane and out of plane, one direction at a time */
    double minimum, maximum; /* N */
    double computed;         /* N, before the limits */
    double vertical;         /* N, with `force`, up or down */
    double hf, rmu;          /* 7-22 */
    double ap, rp, car, rpo; /* used; absent: not of the edition */
    const char *governs;     /* "formula", "minimum", "maximum" */
    struct gw_seismic_notes notes;
};

/* z/h of an attachment at height z of a roof at h, m: 0 at or below grade, 1 at or above the roof. */
double gw_height_ratio(double z, double h);
enum gw_status gw_seismic_force(struct gw_seismic_force_result *out, const struct gw_seismic_force_case *in,
                                struct gw_engine *engine);
/* The three parts side by side, by the table; `in` gives no part and no coefficients. Wall and bodies of connections
 * are one group, their fasteners a far higher one. */
struct gw_seismic_forces {
    struct gw_seismic_force_result wall_element, connection_body, fasteners;
};
enum gw_status gw_seismic_forces(struct gw_seismic_forces *out, const struct gw_seismic_force_case *in,
                                 struct gw_engine *engine);

/* I_e by risk category. */
enum gw_status gw_structure_importance(double *out, enum gw_risk risk, struct gw_engine *engine);
/* I_p: essential for life safety (GW_YES), or risk category IV. */
enum gw_status gw_component_importance(double *out, enum gw_risk risk, enum gw_bool life_safety,
                                       struct gw_engine *engine);

/* Drift --------------------------------------------------------------------------------------------------------------
 */

/* Rows of the allowable story drift. */
enum gw_drift_structure {
    GW_DRIFT_UNSET,
    GW_DRIFT_LOW_RISE,           /* at most 4 stories, no masonry shear walls, finishes detailed for drift */
    GW_DRIFT_MASONRY_CANTILEVER, /* masonry cantilever shear walls */
    GW_DRIFT_MASONRY,            /* other masonry shear walls */
    GW_DRIFT_OTHER
};

/* Drift between two floors: by the engineer with or without I_e, or the allowable one. */
struct gw_drift_case {
    double drift;                      /* m, D_p */
    double drift_with_importance;      /* m, D_pI; not both */
    double importance;                 /* I_e; absent: by risk */
    enum gw_risk risk;                 /* for the table, and I_e */
    enum gw_drift_structure structure; /* for the table */
    double story_height;               /* m, for the table */
    double redundancy;                 /* rho; of moment frames in categories D to F it divides the allowable drift */
};

struct gw_drift_result {
    double drift, importance, drift_with_importance; /* D_p m, I_e, D_pI m */
    double allowable;                                /* of the story's height; absent where the drift was given */
    double connection;                               /* m, that connections and joints must allow */
    struct gw_seismic_notes notes;
};
enum gw_status gw_story_drift(struct gw_drift_result *out, const struct gw_drift_case *in, struct gw_engine *engine);

/* D_p, m, of a story with that drift ratio and height. */
double gw_drift_of_ratio(double ratio, double story_height, struct gw_engine *engine);
/* D_p, m, of a drift that has I_e in it, for what multiplies it by I_e again. */
double gw_drift_without_importance(double drift_with_importance, double importance, struct gw_engine *engine);

/* How the wall takes the drift of a story. */
enum gw_drift_path {
    GW_PATH_UNSET,
    GW_PATH_RACKING,      /* its frame racks evenly over the story */
    GW_PATH_ALL_IN_LITE,  /* stiff bands above and below: all of it in the glazed band */
    GW_PATH_SLIDING_HEAD, /* a head receptor or track slides, the rest racks the frame */
    GW_PATH_SLIDING,      /* unitized, the stack joint slides */
    GW_PATH_TILTING       /* unitized, the units tilt */
};

struct gw_lite_drift_case {
    enum gw_drift_path path;
    double drift;        /* m, of the story: D_p; with D_pI everything below comes with I_e */
    double story_height; /* m; racking, sliding head, tilting */
    double frame_height; /* m, frame opening round the lite; racking, sliding head */
    double slip;         /* m, that the head can slide each way; sliding head */
    double unit_width;   /* m; tilting */
};

struct gw_lite_drift_result {
    double in_lite;    /* m, over the height of the lite */
    double slip;       /* m, horizontal, at the head or the stack joint */
    double angle;      /* rad, of a unit that tilts */
    double lift;       /* m, at the anchor of its far side, that its dead-load anchors must allow */
    double joint_slip; /* m, along each vertical joint between units */
    struct gw_seismic_notes notes;
};
/* Refuses a frame higher than the story. */
enum gw_status gw_lite_drift(struct gw_lite_drift_result *out, const struct gw_lite_drift_case *in,
                             struct gw_engine *engine);

/* Glass --------------------------------------------------------------------------------------------------------------
 */

struct gw_clearance_case {
    double lite_width, lite_height; /* m, of the glass */
    double side_gap, end_gap;       /* m, average of both sides; average of head and sill (the block's height) */
    double drift_in_lite;           /* m, D_p in the lite; absent: clearance only */
    double importance;              /* I_e; goes with drift_in_lite */
    enum gw_edition edition;        /* for `passes` */
};

struct gw_clearance_result {
    double clearance;                                    /* m, D_clear */
    double required_with_importance, required_without;   /* m, 1.25 D_pI and 1.25 D_p */
    double fallout_required;                             /* m, of a test or analysis where the clearance is short */
    enum gw_bool passes_with_importance, passes_without; /* GW_UNSAID: no drift */
    enum gw_bool passes;                                 /* by the edition's wording, as recalled */
    enum gw_bool edition_counts_importance;              /* GW_UNSAID: no edition */
    struct gw_seismic_notes notes;
};
enum gw_status gw_clearance(struct gw_clearance_result *out, const struct gw_clearance_case *in,
                            struct gw_engine *engine);

struct gw_fallout_result {
    double required;     /* m */
    enum gw_bool passes; /* GW_UNSAID: nothing tested */
};
/* `drift_with_importance`: D_pI in the lite. `tested`: fallout drift by test or analysis, absent: none. */
enum gw_status gw_fallout(struct gw_fallout_result *out, double drift_with_importance, double tested,
                          struct gw_engine *engine);

/* A lite bonded on four edges by a bead of one thickness, in a frame that racks. */
struct gw_racking_case {
    double drift_in_lite;           /* m over the height of the lite */
    double lite_width, lite_height; /* m, between the middles of the beads */
    double thickness;               /* m, of the bead */
};
struct gw_racking_result {
    double frame_angle, lite_rotation;     /* rad */
    double slip_horizontal, slip_vertical; /* m, along head and sill; along the sides */
    double slip_corner;                    /* m, their vector sum */
    double strain_corner;                  /* shear: slip over thickness */
    double extension_corner;               /* of the bead's length: sqrt(thickness^2 + slip^2)/thickness - 1 */
    struct gw_seismic_notes notes;
};
/* Refuses frame angles beyond the small ones. */
enum gw_status gw_silicone_racking(struct gw_racking_result *out, const struct gw_racking_case *in,
                                   struct gw_engine *engine);

/* Exemptions ---------------------------------------------------------------------------------------------------------
 */

enum gw_exempt {
    GW_EXEMPT_CATEGORY_A,
    GW_EXEMPT_CATEGORY_B,
    GW_EXEMPT_CLEARANCE,
    GW_EXEMPT_TEMPERED,
    GW_EXEMPT_LAMINATED,
    GW_EXEMPT_COUNT
};

struct gw_exemption_case {
    enum gw_edition edition;
    enum gw_seismic_category category;
    enum gw_risk risk;
    double importance;             /* I_p */
    enum gw_bool parapet;          /* the wall in question is a parapet */
    enum gw_bool clearance_passes; /* gw_clearance's answer by the edition */
    enum gw_bool monolithic;       /* one layer of glass; laminated: GW_NO */
    enum gw_treatment treatment;   /* of every ply */
    double height_above_walk;      /* m, of the glass above a walking surface */
    enum gw_bool single_thickness; /* laminated, and not part of an insulating unit */
    double interlayer;             /* m, thickness */
    enum gw_bool captured;         /* mechanically, in a glazing pocket */
    double bead;                   /* m, contact of a wet-glazed elastomeric bead all round */
    enum gw_bool other_anchorage;  /* approved, in place of the bead */
};

/* One exemption. GW_YES: every condition is met. GW_NO: `condition` is not. GW_UNSAID: `condition` is not known. */
struct gw_exemption {
    enum gw_bool applies;
    const char *condition;                   /* NULL where it applies */
    const char *title, *conditions, *clause; /* all of them, as recalled */
};
struct gw_exemptions {
    struct gw_exemption of[GW_EXEMPT_COUNT]; /* by enum gw_exempt */
    enum gw_exempt chapter;                  /* of chapter 13 as a whole: the first that applies, or GW_EXEMPT_COUNT */
    enum gw_exempt glass;                    /* of the glass from its drift, likewise */
    struct gw_seismic_notes notes;
};
enum gw_status gw_seismic_exemptions(struct gw_exemptions *out, const struct gw_exemption_case *in,
                                     struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
