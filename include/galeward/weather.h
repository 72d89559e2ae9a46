/* Air, water and structural tests of a wall, and the drainage of its glazing pockets.
 *
 * Pure functions. Pressures at allowable-stress level: ratings and tests are stated there. Methods and limits:
 * docs/methods.md; numbers and their sources: tables/weather.yaml, tables/ratings.yaml. */
#ifndef GALEWARD_WEATHER_H
#define GALEWARD_WEATHER_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Whose share, floor and cap; also whose permanent set and deflection. */
enum gw_water_rule { GW_WATER_UNSET, GW_WATER_R, GW_WATER_LC, GW_WATER_CW, GW_WATER_AW, GW_WATER_CURTAIN_WALL };
enum gw_water_region { GW_WATER_REGION_UNSET, GW_WATER_US, GW_WATER_CANADA };
enum gw_governs_water { GW_WATER_GOVERNS_UNSET, GW_BY_SHARE, GW_BY_FLOOR, GW_BY_CAP };

/* Required water pressure (required_water.c) ------------------------------------------------------------------------
 */

struct gw_water_case {
    struct gw_asd positive; /* greatest inward design pressure; never the suction */
    enum gw_water_rule rule;
    enum gw_water_region region; /* unset: US */
    double share, floor, cap;    /* ratio, Pa, Pa; absent: the rule's own */
};
struct gw_water_result {
    double pressure;          /* Pa: share x positive, not below the floor, then not above the cap */
    double share, floor, cap; /* that were used */
    double shared;            /* Pa, before floor and cap */
    enum gw_governs_water governs;
};
/* Refuses a floor above the cap. */
enum gw_status gw_required_water(struct gw_water_result *out, const struct gw_water_case *in, struct gw_engine *engine);

/* Speed of the air stream of the dynamic test at the same pressure, m/s. */
double gw_dynamic_water_speed(double pressure, struct gw_engine *engine);
/* Pressure of the test of the installed wall, Pa: a share of the laboratory's. */
double gw_field_water(double pressure, bool *below_least, struct gw_engine *engine);
/* Leakage allowed at the installed wall, of the laboratory's limit. */
double gw_field_air(double limit, struct gw_engine *engine);

/* What a water test shows of a required pressure. */
enum gw_water_evidence { GW_WATER_SHOWS, GW_WATER_PROVIDED, GW_WATER_SHOWS_NOT, GW_WATER_BELOW };
struct gw_water_test {
    double tested, required; /* Pa */
    enum gw_bool on_site;    /* unsaid: no */
    enum gw_bool repeated;   /* passed again after the structural load */
};
/* `why`: a constant string; "" where it shows all. */
enum gw_water_evidence gw_water_test_shows(const char **why, const struct gw_water_test *test,
                                           struct gw_engine *engine);

/* Static head (head.c) --------------------------------------------------------------------------------------------- */

double gw_water_head(double pressure, struct gw_engine *engine);     /* m of water that the pressure holds up */
double gw_water_pressure(double head, struct gw_engine *engine);     /* Pa */
double gw_upstand_needed(double pressure, struct gw_engine *engine); /* m: head and its margin */
/* Does a sill upstand, an end dam or the climb to the inner air seal stand higher than the water? */
enum gw_bool gw_upstand_enough(double upstand, double pressure, struct gw_engine *engine);
/* Water that a slot (gap) or a round hole holds back by surface tension, m of head. */
double gw_capillary_slot(double gap, struct gw_engine *engine);
double gw_capillary_hole(double diameter, struct gw_engine *engine);

/* Weeps (weep.c) ----------------------------------------------------------------------------------------------------
 */

struct gw_weep_case {
    double diameter;                 /* m, round; or */
    double slot_length, slot_height; /* m */
    int count;                       /* alike */
    double head;                     /* m, water above the middle of the opening */
    double adverse_pressure;         /* Pa, of the air outside against it; absent: 0 */
    double discharge_coefficient;    /* absent: sharp edge */
    double wet_area, leak_fraction;  /* m2, ratio: rain that the outer seals let in; both or neither */
};
enum { GW_WEEP_NOTES = 6 };
struct gw_weep_result {
    double net_head;   /* m; not above zero: nothing drains */
    double velocity;   /* m/s */
    double flow;       /* m3/s, all openings */
    double area;       /* m2, all openings */
    double held_head;  /* m that surface tension holds back */
    double least_size; /* m: least diameter, or slot height, that this net head opens; absent: no net head */
    enum gw_bool part_full;
    double demand, drainage_ratio; /* m3/s at the test's spray, flow over it; absent */
    const char *notes[GW_WEEP_NOTES];
    unsigned n_notes;
};
enum gw_status gw_weep(struct gw_weep_result *out, const struct gw_weep_case *in, struct gw_engine *engine);

/* Pressure-moderated cavity (equalization.c) ------------------------------------------------------------------------
 */

struct gw_equalization_case {
    double vent_to_leak; /* area of vents over area of inner leaks */
    double exponent;     /* absent: orifice */
    double pressure;     /* Pa across the wall; absent: shares only */
    double target_share; /* absent: none */
};
struct gw_equalization_result {
    double cladding_share, cladding; /* ratio, Pa on the outer screen; steady */
    double cavity_share;             /* the rest, on the inner seals */
    double vent_to_leak_needed;      /* for the target share */
};
enum gw_status gw_equalization(struct gw_equalization_result *out, const struct gw_equalization_case *in,
                               struct gw_engine *engine);

/* Air (air.c) -------------------------------------------------------------------------------------------------------
 */

/* Leakage at another pressure by the power law, m/s; exponent absent: the usual one. An estimate: never a result of a
 * test. */
double gw_air_convert(double leakage, double from, double to, double exponent, struct gw_engine *engine);

/* What a leakage measured at one pressure shows of a limit at another. A higher pressure shows the lower one, never the
 * other way round. */
enum gw_air_evidence {
    GW_AIR_SHOWS,    /* compare the numbers: the limit is kept, or exceeded for certain */
    GW_AIR_TOO_HARD, /* leaks more than the limit, but at a higher pressure */
    GW_AIR_TOO_SOFT  /* keeps the limit, but at a lower pressure */
};
struct gw_air_claim {
    double tested, tested_at; /* m/s, Pa */
    double limit, limit_at;
};
/* `estimate`: the tested leakage carried to the limit's pressure, for information; may be NULL. */
enum gw_air_evidence gw_air_shows(double *estimate, const struct gw_air_claim *claim, struct gw_engine *engine);

/* Structural proof (proof.c) -----------------------------------------------------------------------------------------
 */

enum gw_proof_protocol { GW_PROOF_UNSET, GW_PROOF_E330, GW_PROOF_TAS202 };
struct gw_proof_case {
    struct gw_asd positive, negative; /* magnitudes */
    double span;                      /* m, clear */
    enum gw_water_rule rule;
    enum gw_proof_protocol protocol; /* unset: E330 */
};
struct gw_proof_result {
    double preload, proof_positive, proof_negative; /* Pa, magnitudes */
    double hold;                                    /* s, each load */
    double set_limit;                               /* m, permanent, after proof */
    double deflection_limit;                        /* m, of the class at design pressure; absent: reported only */
    double framing_limit;                           /* m, of framing that supports glass, whatever the class */
};
enum gw_status gw_proof(struct gw_proof_result *out, const struct gw_proof_case *in, struct gw_engine *engine);

/* Sequence of a mock-up (sequence.c) ---------------------------------------------------------------------------------
 */

enum gw_sequence_test {
    GW_STEP_UNSET,
    GW_STEP_PRELOAD,
    GW_STEP_AIR,
    GW_STEP_WATER,
    GW_STEP_DYNAMIC,
    GW_STEP_DESIGN_IN,
    GW_STEP_DESIGN_OUT,
    GW_STEP_SWAY,
    GW_STEP_THERMAL,
    GW_STEP_PROOF_IN,
    GW_STEP_PROOF_OUT,
    GW_STEP_SAFETY
};
enum gw_sequence_when { GW_WHEN_UNSET, GW_WHEN_ALWAYS, GW_WHEN_DYNAMIC, GW_WHEN_SWAY, GW_WHEN_THERMAL };
struct gw_sequence_case {
    struct gw_asd positive, negative; /* magnitudes */
    double span;                      /* m */
    enum gw_water_rule rule;
    double water;                  /* Pa; absent: by the rule */
    double air_leakage, air_at;    /* m/s, Pa; absent: the usual limit */
    enum gw_bool dynamic, thermal; /* asked for; unsaid: no */
    double drift;                  /* m, story; absent: by story_height */
    double story_height;           /* m; absent, and no drift: no racking */
};
struct gw_sequence_step {
    enum gw_sequence_test test;
    const char *method;
    enum gw_bool again;  /* a repetition */
    double pressure;     /* Pa, outward negative; absent: none */
    double hold;         /* s; absent: until the reading */
    double displacement; /* m; absent: none */
    double leakage;      /* m/s, at most; absent: none */
    double limit;        /* m: deflection at design, set after proof; absent: none */
};
enum { GW_SEQUENCE_STEPS = 20 };
struct gw_sequence {
    struct gw_sequence_step steps[GW_SEQUENCE_STEPS];
    size_t n;
};
enum gw_status gw_test_sequence(struct gw_sequence *out, const struct gw_sequence_case *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
