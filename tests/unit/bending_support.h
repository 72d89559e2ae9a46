/* Sections and strengths that the tests of bending share. */
#ifndef GALEWARD_TESTS_BENDING_SUPPORT_H
#define GALEWARD_TESTS_BENDING_SUPPORT_H

#include "support.h"

#include "galeward/bending.h"
#include "galeward/share.h"
#include "tables_data.h"

static const double IN = 0.0254, KSI = 6894757.293168361, KIP_IN = 112.9848290276167;

static struct gw_engine engine;

#define near_to(got, want, relative) assert_near(got, want, (relative)*fabs(want))

static inline struct gw_tube inches(double width, double depth, double flange, double web)
{
    return (struct gw_tube){width * IN, depth * IN, flange * IN, web * IN, 0};
}

static inline struct gw_bending tube_case(enum gw_metal metal, const struct gw_tube *tube, double length)
{
    struct gw_bending in;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_bending_clear(&in);
    assert_int_equal(gw_bending_tube(&in, tube, &engine), GW_OK);
    in.metal = metal;
    in.unbraced_length = length;
    return in;
}

/* Stocky and braced: Z and S alone. */
static inline struct gw_bending stocky(enum gw_metal metal, double plastic, double elastic)
{
    struct gw_bending in;
    gw_bending_clear(&in);
    in.metal = metal;
    in.thickness = 0.125 * IN;
    in.plastic = plastic;
    in.modulus_compression = in.modulus_tension = elastic;
    in.compact = true;
    in.unbraced_length = 0;
    return in;
}

static inline struct gw_bending_result by_tables(const struct gw_bending *in, const struct gw_tables *tables)
{
    struct gw_bending_result out;
    gw_engine_init(&engine, tables, NULL);
    enum gw_status status = gw_bending_strength(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static inline struct gw_bending_result strength(const struct gw_bending *in)
{
    return by_tables(in, gw_tables_standard());
}

static const enum gw_metal ALUMINUM[] = {GW_METAL_6063_T5, GW_METAL_6063_T6, GW_METAL_6061_T6, GW_METAL_6005A_T61,
                                         GW_METAL_6105_T5};

#define EACH(i, list)                                                                                                  \
    size_t i = 0;                                                                                                      \
    i < sizeof(list) / sizeof *(list);                                                                                 \
    i++

static inline struct gw_buckling_constants constants(enum gw_metal metal, bool welded, enum gw_buckling kind)
{
    struct gw_alloy alloy;
    struct gw_buckling_constants out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_alloy_find(&alloy, metal, 0.125 * IN, welded, &engine), GW_OK);
    gw_alloy_buckling(&out, &alloy, kind, &engine);
    return out;
}

static inline void refuse(const struct gw_bending *in, enum gw_status status, const char *key)
{
    struct gw_bending_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_int_equal(gw_bending_strength(&out, in, &engine), status);
    assert_string_equal(engine.fault.key, key);
    assert_non_null(engine.fault.format);
}

#endif
