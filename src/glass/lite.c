/* A lite under one load by both routes, and which of them governs. */
#include "glass/lite_internal.h"

#include "base/tolerance.h"

#include "tables_data.h"

#include <string.h>

void gw_lite_note(struct gw_lite_result *out, const char *constant)
{
    for (int i = 0; i < out->n_notes; i++)
        if (out->notes[i] == constant) return;
    if (out->n_notes < GW_LITE_NOTES) out->notes[out->n_notes++] = constant;
}

struct gw_plate_case gw_lite_plate_case(const struct gw_lite *in, double thickness, double pressure, unsigned want)
{
    return (struct gw_plate_case){.width = in->width,
                                  .height = in->height,
                                  .thickness = thickness,
                                  .pressure = pressure,
                                  .elastic_modulus = GW_ABSENT,
                                  .poissons_ratio = GW_ABSENT,
                                  .terms = GW_NO_INTEGER,
                                  .want = want};
}

/* Of plies or panes, one by one; one alone needs no step. */
static double sum_of(const char *symbol, const double *weights, int n, struct gw_engine *engine)
{
    static const char *const formulas[] = {"", "", "w_1+w_2", "w_1+w_2+w_3", "w_1+w_2+w_3+w_4"};
    static const char *const names[] = {"w_1|w_pane|weight", "w_2|w_pane|weight", "w_3|w_pane|weight",
                                        "w_4|w_pane|weight"};
    _Static_assert((int)GW_PANES <= 4 && (int)GW_PLIES <= 4, "a formula for each number of them");
    enum { MOST = sizeof names / sizeof *names };
    struct gw_arg args[MOST];
    double sum = 0;
    for (int i = 0; i < n; i++) {
        args[i] = (struct gw_arg){names[i], weights[i], GW_PRESSURE};
        sum += weights[i];
    }
    if (n > 1 && n <= MOST)
        gw_trace_step(engine, symbol, GW_PRESSURE, sum, "weight of its glass", formulas[n], args, (unsigned)n);
    return sum;
}

double gw_make_up_weight(const struct gw_make_up *make_up, struct gw_engine *engine)
{
    double panes[GW_PANES];
    for (int i = 0; i < make_up->n_panes; i++) {
        const struct gw_pane *pane = &make_up->panes[i];
        double plies[GW_PLIES];
        for (int k = 0; k < pane->n_plies; k++) plies[k] = gw_glass_weight(pane->plies[k].nominal, engine);
        panes[i] = sum_of("w_pane", plies, pane->n_plies, engine);
    }
    return sum_of("w", panes, make_up->n_panes, engine);
}

/* How much more of the first-principles route is used than of the standard's; by the resistances where nothing acts. */
static double difference(const struct gw_lite_route *standard, const struct gw_lite_route *principles)
{
    bool acts = standard->utilization > 0 || principles->utilization > 0;
    if (acts) return principles->utilization / standard->utilization - 1;
    return standard->resistance / principles->resistance - 1;
}

static const double SAME = 5e-4;

/* What the factors leave out of the pane that governs by first principles. */
static const char *left_out(const struct assessment *a)
{
    const int i = a->out->principles.pane;
    const struct gw_pane_result *pane = &a->out->panes[i];
    if (a->in->climate && a->in->make_up.n_panes > 1)
        return "the more used of the two: climatic load of the sealed cavities, which the factors leave out";
    if (gw_lite_is_long(a) && a->in->make_up.panes[i].plies[pane->principles.ply].treatment == GW_ANNEALED)
        return "the lower of the two: over 30 days the failure model leaves annealed glass less than the factors do";
    if (pane->principles.stress_thickness < pane->standard.thickness)
        return "the lower of the two: the interlayer couples the plies less than the monolithic-equivalent thickness "
               "takes for granted";
    return "the lower of the two: the sealed cavity loads this pane more than the cubes of the thicknesses do";
}

/* Why the route that governs does. */
static const char *reason(const struct assessment *a)
{
    const struct gw_lite_route *s = &a->out->standard, *p = &a->out->principles;
    if (!p->covered) return "first principles do not cover this lite";
    if (!s->covered) return "the standard's factors do not cover this lite";
    if (a->in->route == GW_ROUTE_STANDARD) return "the standard's factors are asked for";
    if (a->in->route == GW_ROUTE_PRINCIPLES) return "first principles are asked for";
    if (fabs(difference(s, p)) < SAME) return "both routes agree";
    if (difference(s, p) < 0)
        return "the lower of the two: the standard's factors stay on the safe side of the plies and cavities as they "
               "share the load";
    return left_out(a);
}

static void choose(const struct assessment *a)
{
    struct gw_lite_result *out = a->out;
    const struct gw_lite_route *s = &out->standard, *p = &out->principles;
    bool lower = p->covered && s->covered && difference(s, p) > SAME;
    if (a->in->route == GW_ROUTE_STANDARD && s->covered) lower = false;
    if (a->in->route == GW_ROUTE_PRINCIPLES && p->covered) lower = true;
    bool by_principles = !s->covered || lower;
    const struct gw_lite_route *governs = by_principles ? p : s;
    out->governing = by_principles ? GW_ROUTE_PRINCIPLES : GW_ROUTE_STANDARD;
    out->why = reason(a);
    out->resistance = governs->resistance;
    out->utilization = governs->utilization;
    out->deflection = GW_ABSENT;
    if (gw_given(a->load.pressure))
        out->deflection = fmax(s->covered ? s->deflection : 0, p->covered ? p->deflection : 0);
}

static void clear_route(struct gw_lite_route *b)
{
    *b = (struct gw_lite_route){.utilization = GW_ABSENT,
                                .deflection = GW_ABSENT,
                                .stress_max = GW_ABSENT,
                                .breakage = GW_ABSENT,
                                .resistance = GW_ABSENT};
}

static void clear(struct gw_lite_result *out, const struct gw_lite *in, const struct gw_lite_load *load)
{
    *out = (struct gw_lite_result){.load = *load, .n_panes = in->make_up.n_panes};
    clear_route(&out->standard);
    clear_route(&out->principles);
    for (int i = 0; i < GW_PANES; i++) {
        out->panes[i].standard = (struct gw_pane_by_standard){GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT,
                                                              GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
        out->panes[i].principles = (struct gw_pane_by_principles){.deflection_thickness = GW_ABSENT,
                                                                  .stress_thickness = GW_ABSENT,
                                                                  .type_factor = GW_ABSENT,
                                                                  .capacity = GW_ABSENT,
                                                                  .net = GW_ABSENT,
                                                                  .deflection = GW_ABSENT,
                                                                  .stress_max = GW_ABSENT,
                                                                  .breakage = GW_ABSENT};
    }
}

bool gw_lite_is_long(const struct assessment *a)
{
    const double thirty_days = a->engine->tables->glass_duration[0].long_s;
    return fabs(a->load.duration - thirty_days) <= thirty_days * GW_HAIR;
}

static enum gw_status check(const struct gw_lite *in, const struct gw_lite_load *load, struct gw_engine *engine)
{
    if (in->make_up.n_panes < 1 || in->make_up.n_panes > GW_PANES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", "one to three panes");
    if (!(in->width > 0)) return gw_refuse(engine, GW_BAD_VALUE, "width", "must be above zero");
    if (!(in->height > 0)) return gw_refuse(engine, GW_BAD_VALUE, "height", "must be above zero");
    if (gw_given(in->probability) && !(in->probability > 0 && in->probability < 1))
        return gw_refuse(engine, GW_BAD_VALUE, "probability", "must lie between 0 and 1");
    if (gw_given(load->duration) && !(load->duration > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "duration", "must be above zero");
    return GW_OK;
}

static void complete(struct assessment *a, struct gw_lite *in)
{
    const struct gw_glass_load *usual = &a->engine->tables->glass_load[0];
    const struct gw_glass_duration *rule = &a->engine->tables->glass_duration[0];
    const struct gw_standard_air *air = &a->engine->tables->standard_air[0];
    a->probability = gw_given(in->probability) ? in->probability : usual->probability;
    if (!gw_given(a->load.duration)) a->load.duration = usual->duration_s;
    a->is_short = a->load.duration <= rule->short_s * (1 + GW_HAIR);
    if (!in->edges) in->edges = 4;
    if (!in->edition) in->edition = GW_E1300_16;
    if (!in->climate) in->service = in->sealing = (struct gw_air){air->pressure_pa, air->temperature_k};
}

/* A limit of one route leaves the other; a fault of the input itself stops both. */
static enum gw_status set_aside(struct gw_lite_route *b, enum gw_status status, struct gw_engine *engine)
{
    b->covered = status == GW_OK;
    if (status != GW_OUTSIDE_METHOD) return status;
    b->why_not = engine->fault;
    return GW_OK;
}

static enum gw_status assess(struct gw_lite_result *out, const struct gw_lite *given, const struct gw_lite_load *load,
                             struct gw_engine *engine)
{
    struct gw_lite in = *given;
    struct assessment a = {.in = &in, .load = *load, .engine = engine, .out = out};
    clear(out, &in, load);
    enum gw_status status = check(&in, load, engine);
    if (status != GW_OK) return status;
    complete(&a, &in);
    out->load = a.load;
    status = gw_lite_find_thicknesses(&a);
    if (status == GW_OK) status = set_aside(&out->standard, gw_lite_by_standard(&a), engine);
    struct gw_fault first = engine->fault;
    if (status == GW_OK) status = set_aside(&out->principles, gw_lite_by_principles(&a), engine);
    if (status != GW_OK) return status;
    if (!out->standard.covered && !out->principles.covered) {
        if (in.edges == 4) engine->fault = first; /* else it says no more than that the standard is silent */
        return GW_OUTSIDE_METHOD;
    }
    gw_trace_group(engine, "Weight");
    for (int i = 0; i < out->n_panes; i++)
        out->panes[i].weight = gw_make_up_weight(&(struct gw_make_up){{in.make_up.panes[i]}, {0}, 1}, engine);
    for (int i = 0; i < out->n_panes; i++) out->weight += out->panes[i].weight;
    choose(&a);
    gw_trace_group(engine, GW_LITE_PRINCIPLES);
    if (out->governing != GW_ROUTE_PRINCIPLES || gw_given(out->principles.resistance)) return GW_OK;
    status = gw_lite_find_resistance(&a);
    out->resistance = out->principles.resistance;
    return status;
}

enum gw_status gw_lite_assess(struct gw_lite_result *out, const struct gw_lite *given, const struct gw_lite_load *load,
                              struct gw_engine *engine)
{
    const char *before = gw_trace_group(engine, "Thicknesses");
    const enum gw_status status = assess(out, given, load, engine);
    gw_trace_group(engine, before);
    return status;
}

int gw_lite_governing_plate(struct gw_plate_case *out, const struct gw_lite *in, const struct gw_lite_result *r)
{
    const bool standard = r->governing == GW_ROUTE_STANDARD;
    const int pane = standard ? r->standard.pane : r->principles.pane;
    const struct gw_pane_result *p = &r->panes[pane];
    *out = (struct gw_plate_case){.width = in->width,
                                  .height = in->height,
                                  .thickness = standard ? p->standard.thickness : p->principles.stress_thickness,
                                  .pressure =
                                      standard ? fabs(r->load.pressure) * p->standard.share : fabs(p->principles.net),
                                  .elastic_modulus = GW_ABSENT,
                                  .poissons_ratio = GW_ABSENT,
                                  .method = GW_PLATE_DIRECT,
                                  .terms = GW_NO_INTEGER};
    return pane;
}
