/* Wind-borne debris: where glazing must resist it, by which missile, the pressure cycles that follow the missile, and
 * what an impact rating shows of what is asked.
 *
 * Pure functions. Heights above ground, of the lowest edge of the glazing. Methods, limits and what stays uncertain:
 * docs/methods.md; limits, missiles and cycles with their sources: tables/debris.yaml. */
#ifndef GALEWARD_DEBRIS_H
#define GALEWARD_DEBRIS_H

#include "galeward/wind.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_debris_edition {
    GW_DEBRIS_UNSET,
    GW_DEBRIS_ASCE7_05,
    GW_DEBRIS_ASCE7_10,
    GW_DEBRIS_ASCE7_16,
    GW_DEBRIS_ASCE7_22
};
enum gw_protection { GW_PROTECTION_UNSET, GW_PROTECTION_NONE, GW_PROTECTION_BASIC, GW_PROTECTION_ENHANCED };
enum gw_missile { GW_MISSILE_UNSET, GW_MISSILE_A, GW_MISSILE_B, GW_MISSILE_C, GW_MISSILE_D, GW_MISSILE_E };
enum gw_missile_size { GW_MISSILE_SIZE_UNSET, GW_SMALL_MISSILE, GW_LARGE_MISSILE };

/* Region --------------------------------------------------------------------------------------------------------- */

struct gw_debris_case {
    enum gw_debris_edition edition;
    double basic_wind_speed;  /* m/s, 3-second gust of the building's own map: 7-05 nominal, later strength level */
    double region_wind_speed; /* m/s, of the map that the region goes by (gw_debris_map); absent: basic_wind_speed */
    double coast_distance;    /* m from the coastal mean high water line; absent: refused where it matters */
    enum gw_risk risk_category;
    enum gw_bool health_care;         /* Risk Category III: its own map then; unsaid: no */
    double height;                    /* m, lowest edge: an opening across a limit counts as low */
    enum gw_bool hurricane_prone;     /* unsaid: taken so, with a note */
    enum gw_bool exposure_d_at_shore; /* unsaid: taken so, with a note where it matters */
    enum gw_bool high_velocity_zone;  /* Miami-Dade and Broward; unsaid: no */
    enum gw_bool hawaii;              /* unsaid: no */
    double aggregate_roof_height;     /* m, highest roof with gravel within 1,500 ft; absent: none */
};

enum { GW_DEBRIS_NOTES = 10 };

struct gw_debris_result {
    enum gw_bool region, required;
    const char *reason; /* why it is required, or why not: a constant string */
    const char *map;    /* figure whose speed the region goes by; NULL: Risk Category I, high-velocity zone */
    /* What follows is UNSET, GW_NO_ZONE or absent where nothing is required. */
    int wind_zone;                 /* 1 to 4; the high-velocity zone has none */
    enum gw_protection protection; /* NONE: not required; UNSET: high-velocity zone, which has one kind */
    enum gw_missile missile;
    enum gw_missile_size size;
    const char *description; /* of the missile */
    double mass, speed;      /* kg, m/s */
    double momentum, energy; /* N s, J; of one ball */
    int impacts;             /* on each specimen, large missile; GW_NO_ZONE: small */
    double limit;            /* m/s, within the rounding of the speed above it or taken for it; absent: none */
    const char *limit_note;  /* what of it; NULL: none */
    const char *notes[GW_DEBRIS_NOTES];
    unsigned n_notes;
};
#define GW_NO_ZONE (-2147483647 - 1) /* as GW_NO_INTEGER of records */

/* Is the site in the region? Refuses a case whose answer hangs on a value that is absent. */
enum gw_status gw_debris_region(enum gw_bool *region, const struct gw_debris_case *in, struct gw_engine *engine);
/* All of it: region, relief, zone, protection, missile. */
enum gw_status gw_debris(struct gw_debris_result *out, const struct gw_debris_case *in, struct gw_engine *engine);

/* Figure that the region goes by, NULL for Risk Category I. `borrowed`: it is another category's than the pressures'.
 */
const char *gw_debris_map(enum gw_debris_edition edition, enum gw_risk risk, bool health_care, bool *borrowed,
                          struct gw_engine *engine);

/* Missile (missile.c) ---------------------------------------------------------------------------------------------- */

/* Wind zone of the impact standard, by speed and distance from the coast (may be absent where it does not matter). */
enum gw_status gw_debris_zone(int *zone, enum gw_debris_edition edition, double speed, double coast_distance,
                              enum gw_bool hawaii, struct gw_engine *engine);
enum gw_status gw_debris_missile(enum gw_missile *missile, int zone, enum gw_protection protection, double height,
                                 struct gw_engine *engine);
enum gw_status gw_debris_missile_hvhz(enum gw_missile *missile, double height, struct gw_engine *engine);
/* Size, description, mass, speed, momentum and energy of out->missile. */
void gw_debris_describe(struct gw_debris_result *out, struct gw_engine *engine);

/* Cycles (cycles.c) ------------------------------------------------------------------------------------------------ */

enum gw_cycle_schedule { GW_CYCLES_UNSET, GW_CYCLES_IMPACT, GW_CYCLES_FATIGUE };
enum gw_cycle_direction { GW_CYCLE_UNSAID, GW_CYCLE_INWARD, GW_CYCLE_OUTWARD };
struct gw_cycle_step {
    enum gw_cycle_direction direction; /* unsaid: the schedule does not say */
    double low, high;                  /* Pa, magnitudes */
    int cycles;
};
enum { GW_CYCLE_STEPS = 16 };
struct gw_cycles {
    struct gw_cycle_step steps[GW_CYCLE_STEPS];
    size_t n;
    int total;
};
/* The steps in order, from the design pressures at allowable-stress level, magnitudes. */
enum gw_status gw_debris_cycles(struct gw_cycles *out, struct gw_asd inward, struct gw_asd outward,
                                enum gw_cycle_schedule schedule, struct gw_engine *engine);
/* Cycles that a schedule has in all. */
int gw_debris_cycles_total(enum gw_cycle_schedule schedule, struct gw_engine *engine);

/* Ratings (rating.c) ----------------------------------------------------------------------------------------------- */

/* What a report says. Absent values are reasons of their own. */
struct gw_impact_rating {
    enum gw_missile missile;
    enum gw_bool small_missile_shown; /* a large missile's report or code that says it covers the small one too */
    int wind_zone;                    /* GW_NO_ZONE: not said */
    enum gw_bool high_velocity_zone;  /* tested by TAS 201, 202 and 203 */
    struct gw_asd positive, negative; /* cycled; magnitudes */
    double width, height;             /* m, tested lite */
    double bite;                      /* m, of the tested glazing */
    int cycles;                       /* GW_NO_ZONE: not said */
};
struct gw_impact_demand {
    enum gw_missile missile;
    int wind_zone; /* GW_NO_ZONE: none */
    enum gw_bool high_velocity_zone;
    struct gw_asd positive, negative; /* Pa, allowable-stress level, magnitudes */
    double width, height;             /* m */
    double bite;                      /* m, of the project's glazing; absent: not known */
};
/* In order of weight. A rating below the demand fails; a test that does not reach, or does not say, is not shown. */
enum gw_shown { GW_SHOWN, GW_SHOWN_PROVIDED, GW_UNSHOWN, GW_BELOW };
struct gw_reason {
    enum gw_shown shown;
    const char *text; /* a constant string */
};
enum { GW_IMPACT_REASONS = 12 };
struct gw_impact_comparison {
    enum gw_shown shown; /* the gravest of the reasons; without any, shown */
    struct gw_reason reasons[GW_IMPACT_REASONS];
    unsigned n;
    bool other_missile; /* it is of one that does not by itself show the missile asked */
};
void gw_impact_compare(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                       const struct gw_impact_demand *demand, struct gw_engine *engine);
/* E covers D, D covers C: energy and momentum grow. A stands apart, B is not for walls. */
bool gw_missile_covers(enum gw_missile tested, enum gw_missile asked);

#ifdef __cplusplus
}
#endif

#endif
