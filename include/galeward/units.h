/* Dimensions, units and quantities: the edge where "5'-6 1/2\"" becomes 1.6891 m and back. */
#ifndef GALEWARD_UNITS_H
#define GALEWARD_UNITS_H

#include "galeward/text.h"

#ifdef __cplusplus
extern "C" {
#endif

/* GW_THICKNESS is a length that people give in inches or millimeters; the dimensions of sections go with it: an area in
 * in2 or mm2, a bending moment in in-lb or N-mm, a shear flow in lb/in or N/mm, so that a derivation stays in one set
 * of units. The GW_BEAM_ ones go with line loads and moments (m and N; in and lb) in the same way. */
enum gw_dim {
    GW_RATIO,
    GW_LENGTH,
    GW_THICKNESS,
    GW_AREA,
    GW_VOLUME,
    GW_SPEED,
    GW_PRESSURE,
    GW_STRESS,
    GW_FORCE,
    GW_LINE_LOAD,
    GW_MOMENT,
    GW_MASS,
    GW_TIME,
    GW_IMPULSE,
    GW_LEAKAGE,
    GW_ANGLE,
    GW_TEMPERATURE,
    GW_SECTION_MODULUS,
    GW_INERTIA,
    GW_PER_LENGTH,
    GW_WIND_CONSTANT,
    GW_COST,
    GW_COST_PER_LENGTH,
    GW_COST_PER_AREA,
    GW_SECTION_AREA,
    GW_BENDING,
    GW_SHEAR_FLOW,
    GW_WARPING,
    GW_BEAM_LENGTH,
    GW_BEAM_STRESS,
    GW_BEAM_INERTIA,
    GW_BEAM_MODULUS,
    GW_VELOCITY, /* of water and missiles: feet a second, where GW_SPEED is of wind */
    GW_ACCELERATION,
    GW_FLOW,
    GW_DRAINED, /* a flow as people who drain things say it: gallons a minute, liters a second */
    GW_UNIT_WEIGHT,
    GW_MOMENTUM,
    GW_ENERGY,
    GW_SLOPE, /* rise over run: a ratio that people write as "1:48" or "1/4 in per ft" */
    GW_DIM_COUNT
};

enum gw_units { GW_UNITS_NONE, GW_US, GW_SI };

/* SI value = number * factor + offset */
struct gw_unit {
    const char *name;
    enum gw_dim dim;
    double factor, offset;
};

struct gw_unit_list {
    const struct gw_unit *items;
    size_t n;
};

struct gw_dim_info {
    const char *name;     /* "length" */
    const char *key;      /* "length": as tables name it */
    const char *suffix;   /* "m": the end of a JSON key; "" for a ratio */
    const char *shown[3]; /* unit printed, by enum gw_units: {"m", "ft", "m"} */
    const char *bare[3];  /* unit of a bare number: {NULL, "ft", "m"} */
    int decimals[3];      /* digits printed after the point */
    const char *example;  /* "12 ft 6 in" */
    const char *example_si;
};

const struct gw_dim_info *gw_dim_info(enum gw_dim dim);
/* How a value is written, in those units; of no units as of US ones. */
const char *gw_dim_example(enum gw_dim dim, enum gw_units units);
/* GW_DIM_COUNT where no dimension has that key. */
enum gw_dim gw_dim_by_key(const char *key);
/* The dimension that the units of `dim` are listed under: thicknesses are lengths, and so on. */
enum gw_dim gw_unit_dim(enum gw_dim dim);
const struct gw_unit *gw_unit_find(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length);

/* The same by what people write for it: in capitals ("FT"), with stops ("in."), but never 'mPa' for 'MPa'. */
const struct gw_unit *gw_unit_written(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length);

enum gw_quantity_fault {
    GW_QUANTITY_OK,
    GW_QUANTITY_NOT_A_NUMBER,
    GW_QUANTITY_NO_UNIT,    /* a bare number and no preset to read it by */
    GW_QUANTITY_WRONG_UNIT, /* a unit of another dimension */
    GW_QUANTITY_UNKNOWN_UNIT,
    GW_QUANTITY_TRAILING, /* something after the quantity */
    GW_QUANTITY_RANGE     /* overflow */
};

/* Reads all of `text` as a quantity of `dim`, to SI: decimals, fractions ("6 1/2"), mixed feet and inches. On a fault
 * `*at` is the byte where it lies and `*value` is untouched. A ratio takes a bare number or percent. */
enum gw_quantity_fault gw_quantity_read(struct gw_unit_list units, enum gw_dim dim, enum gw_units preset,
                                        const char *text, size_t length, double *value, size_t *at);

/* The number in the unit shown for `dim`. `gw_quantity_print` adds "12.50 ft". */
double gw_quantity_shown(struct gw_unit_list units, enum gw_dim dim, enum gw_units shown, double si);
void gw_quantity_print(struct gw_text *out, struct gw_unit_list units, enum gw_dim dim, enum gw_units shown, double si);

#ifdef __cplusplus
}
#endif

#endif
