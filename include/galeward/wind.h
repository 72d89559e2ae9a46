/* ASCE 7 wind pressure on walls, components and cladding: 7-10, 7-16, 7-22.
 *
 * Pure functions. Pressures: positive inward, suction negative. Lengths and heights from the ground at the building.
 * Methods and limits: docs/methods.md; constants and their sources: tables/wind.yaml. */
#ifndef GALEWARD_WIND_H
#define GALEWARD_WIND_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_edition { GW_EDITION_UNSET, GW_ASCE7_10, GW_ASCE7_16, GW_ASCE7_22 };
enum gw_risk { GW_RISK_UNSET, GW_RISK_I, GW_RISK_II, GW_RISK_III, GW_RISK_IV };
enum gw_exposure { GW_EXPOSURE_UNSET, GW_EXPOSURE_B, GW_EXPOSURE_C, GW_EXPOSURE_D };
enum gw_enclosure { GW_ENCLOSURE_UNSET, GW_ENCLOSED, GW_PARTIALLY_ENCLOSED, GW_PARTIALLY_OPEN, GW_OPEN };
enum gw_shape { GW_SHAPE_UNSET, GW_RIDGE, GW_ESCARPMENT, GW_HILL };
enum gw_side { GW_SIDE_UNSET, GW_UPWIND, GW_DOWNWIND };
enum gw_strip_cap { GW_STRIP_CAP_UNSET, GW_STRIP_CAP_NONE, GW_STRIP_CAP_EDITION };
enum gw_floor_rule { GW_FLOOR_UNSET, GW_FLOOR_EDITION, GW_FLOOR_ALWAYS, GW_FLOOR_NEVER };
enum gw_building_code { GW_CODE_UNSET, GW_IBC_2012, GW_IBC_2015, GW_IBC_2018, GW_IBC_2021, GW_IBC_2024 };

struct gw_topography {
    enum gw_shape shape;
    double height, half_length;  /* m: H above upwind terrain; Lh upwind of the crest to half of H */
    double distance;             /* m: x from the crest, >= 0 */
    enum gw_side side;           /* of the crest */
    enum gw_bool conditions_met; /* the site conditions that are not numbers; GW_NO: K_zt = 1 */
};

struct gw_wind_parapet {
    double top;             /* m above ground */
    double height;          /* m above the roof; absent: top less mean_roof_height */
    double gcpi;            /* internal to the parapet, magnitude; 0 for a solid one */
    enum gw_bool perimeter; /* runs all round the roof */
    double corner_distance; /* m, from the nearest outside corner; HUGE_VAL: there is none; absent: not known, which
                               counts as beside the roof's corner (zone 3) */
};

/* GW_ABSENT, NULL, GW_UNSAID or an UNSET value where not given. */
struct gw_wind_case {
    enum gw_edition edition;
    double basic_wind_speed; /* m/s, 3-second gust, strength level */
    enum gw_exposure exposure;
    double mean_roof_height; /* m */
    double height;           /* m, where q_z is taken; absent: mean_roof_height */
    double least_width;      /* m, least horizontal plan dimension */
    double elevation;        /* m above sea level; absent: K_e = 1 */
    double ke, kzt;          /* given outright; absent: from elevation, topography */
    const struct gw_topography *topography;
    enum gw_enclosure enclosure;
    double effective_area; /* m2; or span and width, m */
    double span, width;
    int zone;          /* 4 or 5 */
    double roof_slope; /* rad */
    enum gw_bool alternative_60_90;
    enum gw_floor_rule exposure_b_floor;
    enum gw_strip_cap strip_cap;          /* of wide, low buildings; unset: none, the wider strip */
    double highest_opening;               /* m */
    double internal_volume, opening_area; /* m3, m2: large-volume reduction, partially enclosed */
    const struct gw_wind_parapet *parapet;
};

enum { GW_WIND_NOTES = 12 };

struct gw_parapet_result {
    double qp;                           /* Pa, the edition's own velocity pressure at the top */
    double windward_net, leeward_net;    /* Pa, strength, magnitudes, both faces together, after the minimum */
    double skin_positive, skin_negative; /* Pa, strength, outer face against the parapet's inside, after the minimum */
};

struct gw_wind_result {
    double kz, kh, kzt_z, kzt_h, ke, kd;
    double qz, qh;                                 /* Pa, the edition's own: 7-22 has no K_d in q */
    double gcp_positive, gcp_negative, gcpi;       /* gcpi magnitude, after the large-volume factor */
    double zone_width;                             /* m, the edge strip a */
    double effective_area;                         /* m2 */
    struct gw_strength raw_positive, raw_negative; /* before the minimum */
    struct gw_strength positive, negative;         /* design, strength level */
    struct gw_asd asd_positive, asd_negative;
    const struct gw_parapet_result *parapet_result; /* NULL without a parapet, else &parapet_values of this struct */
    struct gw_parapet_result parapet_values;
    const char *notes[GW_WIND_NOTES]; /* constant strings */
    unsigned n_notes;
};

/* Groups of its derivation. */
#define GW_WIND_VELOCITY "Velocity pressure"
#define GW_WIND_COEFFICIENTS "Coefficients"
#define GW_WIND_NET "Pressure"
#define GW_WIND_LEVEL "Level"
#define GW_WIND_PARAPET "Parapet"

/* The whole case. GW_OK fills `*out`; else engine->fault says which input and which limit, `*out` is undefined. */
enum gw_status gw_wind_pressure(struct gw_wind_result *out, const struct gw_wind_case *in, struct gw_engine *engine);
/* The alternative for buildings of middle height is asked for and does not hold: the figures of high ones are used. */
bool gw_wind_alternative_refused(const struct gw_wind_case *in, const struct gw_tables *tables);

/* The parts, each usable alone (velocity.c, topography.c, internal.c, coefficients.c, parapet.c). */
double gw_wind_kz(enum gw_edition edition, enum gw_exposure exposure, enum gw_floor_rule floor, double z,
                  struct gw_engine *engine);
double gw_wind_ke(enum gw_edition edition, double elevation, struct gw_engine *engine);
double gw_wind_kzt(const struct gw_topography *topography, enum gw_exposure exposure, double z,
                   struct gw_engine *engine);
/* True where the figure for h <= 60 ft serves this building (with the 60-90 ft alternative where asked for and
 * permitted). */
bool gw_wind_low_figure(const struct gw_wind_case *in, struct gw_engine *engine);
/* Width a of the edge strip, m. */
double gw_wind_zone_width(const struct gw_wind_case *in, struct gw_engine *engine);
/* How far the roof's corner (zone 3) reaches along the edge of a flat roof from an outside corner, m: by the roof
 * figure that goes with the wall's, not by the wall's strip; 0 where
 * the case has a parapet that makes corners count as edges. */
double gw_wind_roof_corner(const struct gw_wind_case *in, struct gw_engine *engine);
/* Whether the cap of the strip says anything of this building, whatever the case's option is. */
bool gw_wind_strip_capped(const struct gw_wind_case *in, struct gw_engine *engine);
/* A = span max(width, span/3) */
double gw_wind_effective_area(double span, double width, struct gw_engine *engine);

/* Wind-tunnel result against the code's floor: the greater of the test and a share of the code's Zone 4 pressure, for
 * both signs. Magnitudes of like sign. */
struct gw_strength gw_wind_tunnel(struct gw_strength test, struct gw_strength code_zone_4, struct gw_engine *engine);

/* The only conversions between the levels (levels.c). */
struct gw_asd gw_to_asd(struct gw_strength p, struct gw_engine *engine);
struct gw_strength gw_to_strength(struct gw_asd p, struct gw_engine *engine);
/* Pressure for deflection: 0.6 of strength level for framing that supports glass, 0.42 elsewhere where the code allows.
 */
double gw_wind_deflection_pa(struct gw_strength p, enum gw_building_code code, bool supports_glass,
                             struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
