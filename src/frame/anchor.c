/* Anchors: reactions by tributary area, the couple of the eccentric weight, load combinations. */
#include "galeward/anchor.h"

#include "fastener_internal.h"
#include "tables_data.h"

static const char AREA_CLAUSE[] = "tributary area";
static const char COUPLE_CLAUSE[] = "couple of the eccentric weight on the bolts";

/* Names by the rows of anchor_factors. */
static const char *const NAMES[] = {
    [GW_ROW_ANCHOR_FACTORS_ASD_D] = "D",
    [GW_ROW_ANCHOR_FACTORS_ASD_D_W] = "D + 0.6 W",
    [GW_ROW_ANCHOR_FACTORS_ASD_LESS_D_W] = "0.6 D + 0.6 W",
    [GW_ROW_ANCHOR_FACTORS_ASD_D_E] = "D + 0.7 E",
    [GW_ROW_ANCHOR_FACTORS_ASD_LESS_D_E] = "0.6 D + 0.7 E",
    [GW_ROW_ANCHOR_FACTORS_LRFD_D] = "1.4 D",
    [GW_ROW_ANCHOR_FACTORS_LRFD_D_W] = "1.2 D + 1.0 W",
    [GW_ROW_ANCHOR_FACTORS_LRFD_LESS_D_W] = "0.9 D + 1.0 W",
    [GW_ROW_ANCHOR_FACTORS_LRFD_D_E] = "1.2 D + 1.0 E",
    [GW_ROW_ANCHOR_FACTORS_LRFD_LESS_D_E] = "0.9 D + 1.0 E",
};

static enum gw_status check(const struct gw_anchor_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_magnitude("pressure_in", in->pressure_in, engine);
    if (!status) status = gw_fastener_magnitude("pressure_out", in->pressure_out, engine);
    if (!status) status = gw_fastener_magnitude("wall_weight", in->wall_weight, engine);
    if (!status) status = gw_fastener_positive("spacing", in->spacing, engine);
    if (!status) status = gw_fastener_positive("tributary_height", in->tributary_height, engine);
    if (!status) status = gw_fastener_positive_if_given("bolt_arm", in->bolt_arm, engine);
    if (!status) status = gw_fastener_positive_if_given("prying", in->prying, engine);
    if (!status) status = gw_fastener_positive_if_given("clip_arm", in->clip_arm, engine);
    if (status) return status;
    if (gw_given(in->prying) && in->prying < 1)
        return gw_refuse(engine, GW_BAD_VALUE, "prying", "prying cannot relieve a bolt: at least 1");
    if (in->bolts < 1) return gw_refuse(engine, GW_BAD_VALUE, "bolts", "an anchor has at least one bolt");
    if (!gw_given(in->eccentricity))
        return gw_refuse(engine, GW_MISSING, "eccentricity", "eccentricity is needed; 0 for none");
    if (fabs(in->eccentricity) > 0 && in->carries != GW_CARRIES_WIND && !gw_given(in->bolt_arm))
        return gw_refuse(engine, GW_MISSING, "bolt_arm", "an eccentric weight wants the lever arm of the bolts");
    return GW_OK;
}

static double force(const char *symbol, double pressure, const struct gw_anchor_case *in, struct gw_engine *engine)
{
    const double total = pressure * in->spacing * in->tributary_height;
    GW_STEP(engine, symbol, GW_FORCE, total, AREA_CLAUSE, "p*s*h", {"p", pressure, GW_PRESSURE},
            {"s", in->spacing, GW_LENGTH}, {"h", in->tributary_height, GW_LENGTH});
    return total;
}

/* Each bolt: what pulls outward, and the couple; a couple that presses inward can relieve it to nothing. */
static double bolt_tension(double outward, double moment, const struct gw_anchor_case *in, struct gw_engine *engine)
{
    const bool couple = fabs(moment) > 0;
    const double pull = outward + (couple ? moment / in->bolt_arm : 0), n = in->bolts;
    const double prying = gw_given(in->prying) ? in->prying : 1, tension = prying * fmax(pull, 0) / n;
    if (couple)
        GW_STEP(engine, "T", GW_FORCE, tension, COUPLE_CLAUSE, "k*max(R+M/z,0)/n", {"k", prying, GW_RATIO},
                {"R", outward, GW_FORCE}, {"M", moment, GW_BENDING}, {"z", in->bolt_arm, GW_THICKNESS},
                {"n", n, GW_RATIO});
    else
        GW_STEP(engine, "T", GW_FORCE, tension, COUPLE_CLAUSE, "k*R/n", {"k", prying, GW_RATIO},
                {"R", outward, GW_FORCE}, {"n", n, GW_RATIO});
    return tension;
}

static double dead_moment(double dead, const struct gw_anchor_case *in, struct gw_engine *engine)
{
    const double moment = dead * in->eccentricity;
    GW_STEP(engine, "M", GW_BENDING, moment, COUPLE_CLAUSE, "D*e", {"D", dead, GW_FORCE},
            {"e", in->eccentricity, GW_THICKNESS});
    return moment;
}

static double dead_load(const struct gw_anchor_case *in, struct gw_engine *engine)
{
    return in->carries == GW_CARRIES_WIND ? 0 : force("D", in->wall_weight, in, engine);
}

enum gw_status gw_anchor_reactions(struct gw_anchor_reactions *out, const struct gw_anchor_case *in,
                                   struct gw_engine *engine)
{
    enum gw_status status = check(in, engine);
    if (status) return status;
    out->in = force("R_in", in->pressure_in, in, engine);
    out->out = force("R_out", in->pressure_out, in, engine);
    out->dead = dead_load(in, engine);
    out->dead_moment = dead_moment(out->dead, in, engine);
    out->bolt_tension = bolt_tension(out->out, out->dead_moment, in, engine);
    out->bolt_shear = out->dead / in->bolts;
    out->clip_moment = GW_ABSENT;
    if (!gw_given(in->clip_arm)) return GW_OK;
    const double most = fmax(out->in, out->out);
    out->clip_moment = most * in->clip_arm;
    GW_STEP(engine, "M_clip", GW_BENDING, out->clip_moment, "bending of the clip", "R*a", {"R", most, GW_FORCE},
            {"a", in->clip_arm, GW_THICKNESS});
    return GW_OK;
}

double gw_anchor_bolts_take(const struct gw_anchor_case *in, double dead, double allowable, struct gw_engine *engine)
{
    const double n = in->bolts, prying = gw_given(in->prying) ? in->prying : 1;
    const double moment = dead_moment(dead, in, engine), couple = fabs(moment) > 0 ? moment / in->bolt_arm : 0;
    const double outward = fmax(n * allowable / prying - couple, 0);
    GW_STEP(engine, "R_a", GW_FORCE, outward, COUPLE_CLAUSE, "max(n*T_a/k-C,0)", {"n", n, GW_RATIO},
            {"T_a", allowable, GW_FORCE}, {"k", prying, GW_RATIO}, {"C", couple, GW_FORCE});
    return outward;
}

/* One combination; the wind of the loads has its factor already, so 1 or 0 of it counts. */
static void bolts_under(struct gw_anchor_bolts *out, const struct gw_anchor_factors *row, bool inward,
                        const struct gw_anchor_bolt_case *loads, const struct gw_anchor_case *in,
                        struct gw_engine *engine)
{
    const double wind = row->wind > 0 ? (inward ? -loads->inward : loads->outward) : 0, dead = row->dead * loads->dead;
    struct gw_anchor_bolts b = {.name = NAMES[row - engine->tables->anchor_factors], .inward = inward};
    gw_used_add(&engine->used, &row->row);
    gw_trace_note(engine, b.name, row->row.source, inward ? "wind inward presses" : "wind outward pulls");
    b.tension = bolt_tension(wind, dead_moment(dead, in, engine), in, engine);
    b.shear = dead / in->bolts;
    GW_STEP(engine, "V", GW_FORCE, b.shear, "dead load on the bolts", "D/n", {"D", dead, GW_FORCE},
            {"n", (double)in->bolts, GW_RATIO});
    b.use = b.tension / loads->tension;
    if (gw_given(loads->shear) && b.shear > 0)
        b.use = gw_combine_uses(b.use, b.shear / loads->shear, loads->interaction, engine);
    if (!out->name || b.use > out->use) *out = b;
}

void gw_anchor_bolts(struct gw_anchor_bolts *out, const struct gw_anchor_bolt_case *loads,
                     const struct gw_anchor_case *in, struct gw_engine *engine)
{
    static const int rows[] = {GW_ROW_ANCHOR_FACTORS_ASD_D, GW_ROW_ANCHOR_FACTORS_ASD_D_W,
                               GW_ROW_ANCHOR_FACTORS_ASD_LESS_D_W};
    *out = (struct gw_anchor_bolts){.name = NULL};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct gw_anchor_factors *row = &engine->tables->anchor_factors[rows[i]];
        bolts_under(out, row, false, loads, in, engine);
        if (row->wind > 0) bolts_under(out, row, true, loads, in, engine);
    }
}

/* Unfactored forces of one anchor, N. */
struct forces {
    double in, out, dead, seismic, fasteners, vertical;
};

static enum gw_status check_loads(const struct gw_anchor_loads *loads, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_magnitude("pressure_in", loads->in.pa, engine);
    if (!status) status = gw_fastener_magnitude("pressure_out", loads->out.pa, engine);
    if (!status) status = gw_fastener_magnitude_if_given("seismic_body", loads->seismic_body, engine);
    if (!status) status = gw_fastener_magnitude_if_given("seismic_fasteners", loads->seismic_fasteners, engine);
    if (!status) status = gw_fastener_magnitude_if_given("seismic_vertical", loads->seismic_vertical, engine);
    if (status || gw_given(loads->seismic_body) == gw_given(loads->seismic_fasteners)) return status;
    return gw_refuse(engine, GW_MISSING, gw_given(loads->seismic_body) ? "seismic_fasteners" : "seismic_body",
                     "the body of a connection and its fasteners have seismic forces of their own: give both");
}

/* Down where the dead load is the worse for it, up where the dead load relieves; nothing hangs upward on the slot. */
static double factored_dead(const struct gw_anchor_factors *row, const struct forces *f, struct gw_engine *engine)
{
    const double sign = row->dead < 1 ? -1 : 1, vertical = row->seismic > 0 && f->dead > 0 ? f->vertical : 0;
    const double dead = fmax(row->dead * f->dead + sign * row->seismic * vertical, 0);
    if (vertical > 0)
        GW_STEP(engine, "D_f", GW_FORCE, dead, row->row.source, "max(f_D*D+s*f_E*F_v,0)", {"f_D", row->dead, GW_RATIO},
                {"D", f->dead, GW_FORCE}, {"s", sign, GW_RATIO}, {"f_E", row->seismic, GW_RATIO},
                {"F_v", vertical, GW_FORCE});
    return dead;
}

static void combine_one(struct gw_anchor_combination *c, const struct gw_anchor_factors *row, const struct forces *f,
                        const struct gw_anchor_case *in, struct gw_engine *engine)
{
    const double seismic = row->seismic > 0 ? row->seismic * f->seismic : 0;
    const double fasteners = row->seismic > 0 ? row->seismic * f->fasteners : 0;
    c->in = row->wind * f->in + seismic;
    c->out = row->wind * f->out + seismic;
    c->dead = factored_dead(row, f, engine);
    gw_trace_note(engine, c->name, row->row.source, "load combination");
    const double moment = dead_moment(c->dead, in, engine), pull = row->wind * f->out + fasteners;
    GW_STEP(engine, "R", GW_FORCE, pull, row->row.source, "f_W*W+f_E*E", {"f_W", row->wind, GW_RATIO},
            {"W|R", f->out, GW_FORCE}, {"f_E", row->seismic, GW_RATIO},
            {"E", gw_given(f->fasteners) ? f->fasteners : 0, GW_FORCE});
    c->bolt_tension = bolt_tension(pull, moment, in, engine);
    c->bolt_shear = c->dead / in->bolts;
}

static void keep_largest(struct gw_anchor_combined *out)
{
    const struct gw_anchor_combination *c = &out->each[out->n - 1];
    if (c->bolt_tension > out->bolt_tension) out->worst = out->n - 1;
    out->in = fmax(out->in, c->in);
    out->out = fmax(out->out, c->out);
    out->dead = fmax(out->dead, c->dead);
    out->bolt_tension = fmax(out->bolt_tension, c->bolt_tension);
    out->bolt_shear = fmax(out->bolt_shear, c->bolt_shear);
}

enum gw_status gw_anchor_combine(struct gw_anchor_combined *out, const struct gw_anchor_case *in,
                                 const struct gw_anchor_loads *loads, enum gw_design design, struct gw_engine *engine)
{
    struct gw_anchor_case loaded = *in;
    *out = (struct gw_anchor_combined){.n = 0};
    enum gw_status status = check_loads(loads, engine);
    loaded.pressure_in = loads->in.pa;
    loaded.pressure_out = loads->out.pa;
    if (!status) status = check(&loaded, engine);
    if (status) return status;
    if (design == GW_DESIGN_UNSET) return gw_refuse(engine, GW_MISSING, "design", "design is needed: asd or lrfd");
    const struct forces f = {force("R_in", loads->in.pa, &loaded, engine),
                             force("R_out", loads->out.pa, &loaded, engine),
                             dead_load(&loaded, engine),
                             loads->seismic_body,
                             loads->seismic_fasteners,
                             gw_given(loads->seismic_vertical) ? loads->seismic_vertical : 0};
    for (size_t i = 0; i < GW_N_ANCHOR_FACTORS; i++) {
        const struct gw_anchor_factors *row = &engine->tables->anchor_factors[i];
        if (row->design != (int)design || (row->seismic > 0 && !gw_given(f.seismic))) continue;
        gw_used_add(&engine->used, &row->row);
        out->each[out->n].name = NAMES[i];
        combine_one(&out->each[out->n++], row, &f, &loaded, engine);
        keep_largest(out);
    }
    return GW_OK;
}
