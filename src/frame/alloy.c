/* Strengths of metals and buckling constants of aluminum. */
#include "galeward/alloy.h"

#include "tables_data.h"

bool gw_metal_is_steel(enum gw_metal metal) { return metal >= GW_METAL_A36; }

enum gw_metal_family gw_metal_family(enum gw_metal metal)
{
    if (metal == GW_METAL_UNSET) return GW_FAMILY_UNKNOWN;
    if (metal >= GW_METAL_STAINLESS_304) return GW_FAMILY_STAINLESS;
    return gw_metal_is_steel(metal) ? GW_FAMILY_STEEL : GW_FAMILY_ALUMINUM;
}

/* The columns that both strength tables have. */
struct strength {
    const struct gw_row *row;
    int alloy;
    double above, up_to, ultimate, yield;
};

static struct strength strength_at(const struct gw_engine *engine, bool welded, size_t i)
{
    const struct gw_aluminum_strength *parent = &engine->tables->aluminum_strength[welded ? 0 : i];
    const struct gw_aluminum_weld *weld = &engine->tables->aluminum_weld[welded ? i : 0];
    if (welded)
        return (struct strength){&weld->row,    weld->alloy,       weld->above_m,
                                 weld->up_to_m, weld->ultimate_pa, weld->yield_pa};
    return (struct strength){&parent->row,    parent->alloy,       parent->above_m,
                             parent->up_to_m, parent->ultimate_pa, parent->yield_pa};
}

/* An absent thickness fits only metal whose strength does not depend on it. */
static bool fits(const struct strength *s, double thickness)
{
    if (!gw_given(thickness)) return !(s->above > 0) && !gw_given(s->up_to);
    return thickness > s->above && (!gw_given(s->up_to) || thickness <= s->up_to);
}

static enum gw_status find_strength(struct strength *out, enum gw_metal metal, double thickness, bool welded,
                                    struct gw_engine *engine)
{
    const size_t n = welded ? (size_t)GW_N_ALUMINUM_WELD : (size_t)GW_N_ALUMINUM_STRENGTH;
    bool known = false;
    for (size_t i = 0; i < n; i++) {
        const struct strength s = strength_at(engine, welded, i);
        if (s.alloy != (int)metal) continue;
        known = true;
        if (!fits(&s, thickness)) continue;
        *out = s;
        gw_used_add(&engine->used, s.row);
        return GW_OK;
    }
    if (!known && welded)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "welded", "the strength of this alloy beside a weld is not known");
    if (!known) return gw_refuse(engine, GW_BAD_VALUE, "alloy", "not an aluminum alloy of the table");
    if (!gw_given(thickness))
        return gw_refuse(engine, GW_MISSING, "thickness",
                         "this alloy's strength depends on the thickness of the metal");
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "thickness", "thicker metal than the strengths of this alloy cover");
}

static void note_strengths(const struct gw_alloy *alloy, const struct gw_row *row, struct gw_engine *engine)
{
    const struct gw_row *compression = &engine->tables->aluminum_ratio[GW_ROW_ALUMINUM_RATIO_COMPRESSIVE_YIELD].row;
    GW_STEP(engine, "Ftu", GW_STRESS, alloy->ultimate, row->source, "Ftu", {"Ftu", alloy->ultimate, GW_STRESS});
    GW_STEP(engine, "Fty", GW_STRESS, alloy->yield, row->source, "Fty", {"Fty", alloy->yield, GW_STRESS});
    GW_STEP(engine, "Fcy", GW_STRESS, alloy->compressive_yield, compression->source, "r*Fty",
            {"r", alloy->compressive_yield / alloy->yield, GW_RATIO}, {"Fty", alloy->yield, GW_STRESS});
}

static double ratio(int row, struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->aluminum_ratio[row])->value;
}

enum gw_status gw_alloy_find(struct gw_alloy *out, enum gw_metal metal, double thickness, bool welded,
                             struct gw_engine *engine)
{
    struct strength found = {.row = NULL};
    enum gw_status status = find_strength(&found, metal, thickness, welded, engine);
    if (status) return status;
    *out = (struct gw_alloy){.ultimate = found.ultimate, .yield = found.yield};
    out->temper = welded ? GW_TEMPER_ANNEALED : GW_TEMPER_UNSET;
    for (size_t i = 0; i < GW_N_ALUMINUM_STRENGTH && !out->temper; i++)
        if (engine->tables->aluminum_strength[i].alloy == (int)metal)
            out->temper = (enum gw_temper)engine->tables->aluminum_strength[i].temper;
    out->compressive_yield = found.yield * ratio(GW_ROW_ALUMINUM_RATIO_COMPRESSIVE_YIELD, engine);
    out->shear_yield = found.yield * ratio(GW_ROW_ALUMINUM_RATIO_SHEAR, engine);
    out->tension_coefficient = ratio(GW_ROW_ALUMINUM_RATIO_TENSION_COEFFICIENT, engine);
    out->elastic_modulus = GW_USE(engine, &engine->tables->aluminum_modulus[0])->elastic_modulus_pa;
    out->shear_modulus = GW_USE(engine, &engine->tables->aluminum_shear_modulus[0])->shear_modulus_pa;
    note_strengths(out, found.row, engine);
    return GW_OK;
}

static const struct gw_steel_modulus *steel_modulus_of(enum gw_metal metal, const struct gw_tables *tables)
{
    const struct gw_steel_strength *grade = tables->steel_strength;
    const struct gw_steel_modulus *row = tables->steel_modulus;
    while (grade->grade != (int)metal) grade++; /* every steel has its row, every family too */
    while (row->family != grade->family) row++;
    return row;
}

struct gw_moduli gw_metal_moduli(enum gw_metal metal, struct gw_engine *engine)
{
    const struct gw_tables *t = engine->tables;
    if (gw_metal_is_steel(metal))
        return (struct gw_moduli){GW_USE(engine, steel_modulus_of(metal, t))->elastic_modulus_pa, GW_ABSENT};
    return (struct gw_moduli){GW_USE(engine, &t->aluminum_modulus[0])->elastic_modulus_pa,
                              t->aluminum_shear_modulus[0].shear_modulus_pa};
}

static const char *const SYMBOLS[][3] = {[GW_BUCKLING_MEMBER] = {"Bc", "Dc", "Cc"},
                                         [GW_BUCKLING_FLAT] = {"Bp", "Dp", "Cp"},
                                         [GW_BUCKLING_BENDING] = {"Bbr", "Dbr", "Cbr"},
                                         [GW_BUCKLING_SHEAR] = {"Bs", "Ds", "Cs"}};

void gw_alloy_buckling(struct gw_buckling_constants *out, const struct gw_alloy *alloy, enum gw_buckling buckling,
                       struct gw_engine *engine)
{
    const struct gw_aluminum_buckling *row = engine->tables->aluminum_buckling;
    while (row->temper != (int)alloy->temper || row->buckling != (int)buckling) row++; /* every pair has its row */
    gw_used_add(&engine->used, &row->row);
    const double f = buckling == GW_BUCKLING_SHEAR ? alloy->shear_yield : alloy->compressive_yield;
    const double e = alloy->elastic_modulus;
    out->b = row->factor * f * (1 + pow(f / row->reference_pa, 1 / row->root));
    out->d = out->b / row->divisor * sqrt(row->inside * out->b / e);
    out->c = row->limit * out->b / out->d;
    out->k1 = row->k1;
    out->k2 = row->k2;
    const char *const *symbol = SYMBOLS[buckling];
    GW_STEP(engine, symbol[0], GW_STRESS, out->b, row->row.source, "k*F*(1+(F/R)^(1/n))", {"k", row->factor, GW_RATIO},
            {"F|F", f, GW_STRESS}, {"R", row->reference_pa, GW_STRESS}, {"n", row->root, GW_RATIO});
    GW_STEP(engine, symbol[1], GW_STRESS, out->d, row->row.source, "B/d*sqrt(i*B/E)", {"B|B", out->b, GW_STRESS},
            {"d", row->divisor, GW_RATIO}, {"i", row->inside, GW_RATIO}, {"E", e, GW_STRESS});
    GW_STEP(engine, symbol[2], GW_RATIO, out->c, row->row.source, "c*B/D", {"c", row->limit, GW_RATIO},
            {"B|B", out->b, GW_STRESS}, {"D|D", out->d, GW_STRESS});
}
