/* How far a candidate goes: the greatest span, width and screw spacing at the project's pressures.
 *
 * By the real checks on a changed element: as it grows its effective area grows and its pressure falls, so each trial
 * has its own pressure. Given and wind-tunnel pressures do not say how they change: where they govern, the trial takes
 * no less than the element's. Simple spans; strength and deflection of the mullion, pull and bending at the screws. */
#include "judge_internal.h"

#include "galeward/member.h"

#include <string.h>

enum { STEPS = 60, BISECTIONS = 40 };

struct trial {
    struct gw_judging *j;
    const struct gw_system *system;
    const struct gw_element *element;
    double fixed; /* m, of the dimension that stays */
};

/* Allowable-stress pressures of the element as if it were of that size, Pa, magnitudes. */
static bool pressures_of(const struct gw_judging *j, const struct gw_element *e, double area, double *inward,
                         double *outward)
{
    struct gw_wind_case in;
    struct gw_wind_parapet parapet;
    struct gw_wind_result r;
    struct gw_engine engine;
    gw_takeoff_case(j->model, e, &in, &parapet);
    in.effective_area = area;
    gw_engine_init(&engine, j->model->tables, NULL);
    if (gw_wind_pressure(&r, &in, &engine) != GW_OK) return false;
    *inward = fmax(r.asd_positive.pa, 0);
    *outward = fmax(-r.asd_negative.pa, 0);
    bool computed = strncmp(e->governs, "ASCE", 4) == 0;
    if (computed) return true;
    *inward = fmax(*inward, e->inward_asd.pa);
    *outward = fmax(*outward, -e->outward_asd.pa);
    return true;
}

static bool mullion_takes(const struct trial *t, double span, double width)
{
    struct gw_engine engine;
    struct gw_member_strength m;
    struct gw_used unused = {.words = {0}};
    double inward, outward;
    gw_engine_init(&engine, t->j->model->tables, NULL);
    const double area = gw_wind_effective_area(span, width, &engine);
    if (!pressures_of(t->j, t->element, area, &inward, &outward)) return false;
    if (gw_find_member(&m, t->system->mullion, span, "mullion", t->j, &unused)) return false;
    struct gw_simple_span takes;
    gw_simple_span(&takes, fmax(inward, outward) * width, span, m.stiffness);
    bool strong = takes.moment <= m.moment && !(takes.shear > m.shear);
    return strong && takes.deflection <= gw_framing_limit(t->j, span, false, &engine);
}

static bool takes_span(const struct trial *t, double span) { return mullion_takes(t, span, t->fixed); }
static bool takes_width(const struct trial *t, double width) { return mullion_takes(t, t->fixed, width); }

/* The screw and the plate between two of them, the width that they carry staying. */
static bool takes_spacing(const struct trial *t, double spacing)
{
    struct gw_demand demand = {.element = t->element, .status = GW_PASS};
    struct gw_element changed = *t->element;
    struct gw_finding f = {.candidate = t->system, .demand = &demand};
    double inward;
    changed.height = spacing;
    demand.element = &changed;
    if (!pressures_of(t->j, t->element, changed.width * spacing, &inward, &demand.value_out)) return false;
    gw_calculate_screw(&f, t->j);
    if (f.verdict != GW_PASS) return false;
    gw_calculate_plate(&f, t->j);
    return f.verdict == GW_PASS;
}

/* From small to large to the first that fails, then by bisection; absent: not even the smallest. */
static double greatest(const struct trial *t, bool (*takes)(const struct trial *, double), double least, double most)
{
    const double ratio = pow(most / least, 1.0 / STEPS);
    double low = least, high = 0;
    if (!takes(t, least)) return GW_ABSENT;
    while (high <= 0 && low < most * (1 - 1e-9)) {
        double next = fmin(low * ratio, most);
        if (takes(t, next)) low = next;
        else high = next;
    }
    for (int i = 0; i < BISECTIONS && high > 0; i++) {
        double middle = (low + high) / 2;
        if (takes(t, middle)) low = middle;
        else high = middle;
    }
    return low;
}

static bool counts(const struct gw_element *e, enum gw_kind kind)
{
    bool vertical = kind != GW_SCREW || strcmp(e->mark, "vertical") == 0;
    return e->kind == kind && vertical && !e->parapet && !e->overhang && !e->corner && !e->outside;
}

/* Of a zone of the project the element with the greatest line load. */
static const struct gw_element *worst(const struct gw_judging *j, enum gw_kind kind, int zone)
{
    const struct gw_element *best = NULL;
    double most = 0;
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        if (!counts(e, kind) || e->zone != zone) continue;
        double size = kind == GW_MULLION ? e->span * e->span * e->width : e->width;
        double load = fmax(e->inward_asd.pa, -e->outward_asd.pa) * size;
        if (!(load > most)) continue;
        most = load;
        best = e;
    }
    return best;
}

static void reach_of(struct gw_reach *out, struct gw_judging *j, const struct gw_system *system, int zone)
{
    const double least = 0.05, longest = 15, widest = 6, apart = 1.5; /* m: beyond what anyone builds */
    const struct gw_element *mullion = worst(j, GW_MULLION, zone), *screw = worst(j, GW_SCREW, zone);
    *out = (struct gw_reach){.candidate = system,
                             .zone = zone,
                             .span = GW_ABSENT,
                             .width = GW_ABSENT,
                             .at_width = GW_ABSENT,
                             .at_span = GW_ABSENT,
                             .spacing = GW_ABSENT,
                             .screw_width = GW_ABSENT};
    if (mullion && system->mullion) {
        out->at_width = mullion->width;
        out->at_span = mullion->span;
        out->span = greatest(&(struct trial){j, system, mullion, mullion->width}, takes_span, least, longest);
        out->width = greatest(&(struct trial){j, system, mullion, mullion->span}, takes_width, least, widest);
    }
    if (!screw || !system->screw || !system->pressure_plate) return;
    out->screw_width = screw->width;
    out->spacing = greatest(&(struct trial){j, system, screw, screw->width}, takes_spacing, least, apart);
}

void gw_judge_reach(struct gw_judging *j)
{
    struct gw_judgement *out = j->out;
    const size_t zones = 2;
    out->reaches.items = gw_alloc(j->model->arena, zones * j->model->systems.n + 1, sizeof *out->reaches.items);
    for (size_t c = 0; c < j->model->systems.n; c++)
        for (int zone = 4; zone <= 5; zone++) {
            struct gw_reach *r = &out->reaches.items[out->reaches.n];
            reach_of(r, j, &j->model->systems.items[c], zone);
            if (gw_given(r->span) || gw_given(r->width) || gw_given(r->spacing)) out->reaches.n++;
        }
}
