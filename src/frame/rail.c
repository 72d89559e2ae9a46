/* A horizontal under the weight of its glass: two setting blocks, simple span, ends held against twist. */
#include "fastener_internal.h"

#include "tables_data.h"

static const char BEAM_CLAUSE[] = "simple span, two loads";
static const char CHAIR_CLAUSE[] = "setting chair, a cantilever";
static const char TWIST_CLAUSE[] = "twist about the shear center, ends held";

static const char NOTE_BLOCK[] = "the setting blocks are nearer to the corner than they may move out";
static const char NOTE_QUARTER[] = "setting blocks at the quarter points";

static enum gw_status check(const struct gw_rail_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_magnitude("glass_weight", in->weight, engine);
    if (!status) status = gw_fastener_positive("span", in->span, engine);
    if (!status) status = gw_fastener_positive_if_given("block_offset", in->offset, engine);
    if (!status) status = gw_fastener_positive_if_given("elastic_modulus", in->elastic_modulus, engine);
    if (!status) status = gw_fastener_positive_if_given("inertia", in->inertia, engine);
    if (!status) status = gw_fastener_positive_if_given("shear_modulus", in->shear_modulus, engine);
    if (!status) status = gw_fastener_positive_if_given("torsion_constant", in->torsion_constant, engine);
    if (status) return status;
    if (gw_given(in->offset) && in->offset > in->span / 2 * (1 + GW_HAIR))
        return gw_refuse(engine, GW_BAD_VALUE, "block_offset", "a block is at most half the span from its end");
    if (gw_given(in->elastic_modulus) != gw_given(in->inertia))
        return gw_refuse(engine, GW_MISSING, "inertia", "elastic_modulus and inertia go together");
    if (gw_given(in->torsion_constant) != gw_given(in->shear_modulus) ||
        gw_given(in->eccentricity) != gw_given(in->shear_modulus))
        return gw_refuse(engine, GW_MISSING, "shear_modulus",
                         "shear_modulus, torsion_constant and eccentricity go together");
    return GW_OK;
}

static void bend(struct gw_rail_result *out, const struct gw_rail_case *in, struct gw_engine *engine)
{
    const double p = in->weight / 2, a = out->offset, span = in->span;
    out->moment = p * a;
    GW_STEP(engine, "M", GW_BENDING, out->moment, BEAM_CLAUSE, "G/2*a", {"G|D", in->weight, GW_FORCE},
            {"a", a, GW_THICKNESS});
    if (!gw_given(in->inertia)) return;
    out->deflection = p * a * (3 * span * span - 4 * a * a) / (24 * in->elastic_modulus * in->inertia);
    GW_STEP(engine, "d", GW_THICKNESS, out->deflection, BEAM_CLAUSE, "G/2*a*(3*L^2-4*a^2)/(24*E*I)",
            {"G|D", in->weight, GW_FORCE}, {"a", a, GW_THICKNESS}, {"L", span, GW_THICKNESS},
            {"E", in->elastic_modulus, GW_STRESS}, {"I|I", in->inertia, GW_INERTIA});
}

static void twist(struct gw_rail_result *out, const struct gw_rail_case *in, struct gw_engine *engine)
{
    if (!gw_given(in->shear_modulus)) return;
    const double p = in->weight / 2, a = out->offset;
    out->twist = p * in->eccentricity * a / (in->shear_modulus * in->torsion_constant);
    GW_STEP(engine, "phi (rad)", GW_RATIO, out->twist, TWIST_CLAUSE, "G/2*e*a/(G_s*J)", {"G|D", in->weight, GW_FORCE},
            {"e", in->eccentricity, GW_THICKNESS}, {"a", a, GW_THICKNESS}, {"G_s", in->shear_modulus, GW_STRESS},
            {"J", in->torsion_constant, GW_INERTIA});
}

static void limits(struct gw_rail_result *out, const struct gw_rail_case *in, struct gw_engine *engine)
{
    const struct gw_rail_limits *row = GW_USE(engine, &engine->tables->rail_limits[0]);
    out->deflection_limit = fmin(in->span / row->spans, row->most_m);
    out->twist_limit = row->twist_rad;
    GW_STEP(engine, "d_limit", GW_THICKNESS, out->deflection_limit, row->row.source, "min(L/n,d_most)",
            {"L", in->span, GW_THICKNESS}, {"n", row->spans, GW_RATIO}, {"d_most", row->most_m, GW_THICKNESS});
    if (!gw_given(in->offset)) out->notes[out->n_notes++] = NOTE_QUARTER;
    if (out->offset < fmax(in->span / row->block_spans, row->block_least_m) * (1 - GW_HAIR))
        out->notes[out->n_notes++] = NOTE_BLOCK;
}

enum gw_status gw_rail_dead_load(struct gw_rail_result *out, const struct gw_rail_case *in, struct gw_engine *engine)
{
    *out = (struct gw_rail_result){.n_notes = 0};
    out->deflection = out->twist = GW_ABSENT;
    enum gw_status status = check(in, engine);
    if (status) return status;
    out->offset = gw_given(in->offset) ? in->offset : in->span / 4;
    bend(out, in, engine);
    twist(out, in, engine);
    limits(out, in, engine);
    return GW_OK;
}

void gw_setting_chair(struct gw_chair_result *out, const struct gw_chair_case *in, struct gw_engine *engine)
{
    const struct gw_aluminum_safety *rupture =
        GW_USE(engine, &engine->tables->aluminum_safety[GW_ROW_ALUMINUM_SAFETY_RUPTURE]);
    const struct gw_aluminum_safety *other =
        GW_USE(engine, &engine->tables->aluminum_safety[GW_ROW_ALUMINUM_SAFETY_OTHER]);
    const struct gw_rail_limits *row = GW_USE(engine, &engine->tables->rail_limits[0]);
    const double b = in->length, t = in->thickness, z = b * t * t / 4, i = b * t * t * t / 12;
    const double stress = fmin(in->metal.yield / other->factor, in->metal.ultimate / rupture->factor);
    out->moment = in->weight * in->arm;
    out->allowable = z * stress;
    out->stress = out->moment / (z / 1.5); /* Z is 3/2 of S in a rectangle */
    out->deflection = out->moment * in->arm * in->arm / (3 * in->metal.elastic_modulus * i);
    out->deflection_limit = row->chair_most_m;
    GW_STEP(engine, "M", GW_BENDING, out->moment, CHAIR_CLAUSE, "P*e", {"P", in->weight, GW_FORCE},
            {"e", in->arm, GW_THICKNESS});
    GW_STEP(engine, "M_a", GW_BENDING, out->allowable, CHAIR_CLAUSE, "b*t^2/4*min(F_ty/c_y,F_tu/c_u)",
            {"b", b, GW_THICKNESS}, {"t", t, GW_THICKNESS}, {"F_ty|Fty", in->metal.yield, GW_STRESS},
            {"c_y", other->factor, GW_RATIO}, {"F_tu|Ftu", in->metal.ultimate, GW_STRESS},
            {"c_u", rupture->factor, GW_RATIO});
    GW_STEP(engine, "d", GW_THICKNESS, out->deflection, CHAIR_CLAUSE, "P*e^3/(3*E*b*t^3/12)",
            {"P", in->weight, GW_FORCE}, {"e", in->arm, GW_THICKNESS}, {"E", in->metal.elastic_modulus, GW_STRESS},
            {"b", b, GW_THICKNESS}, {"t", t, GW_THICKNESS});
}
