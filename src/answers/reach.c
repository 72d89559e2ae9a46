/* How far a candidate goes: the greatest span, width and screw spacing at the project's pressures.
 *
 * By the real checks on a changed element: as it grows its effective area grows and its pressure falls, so each trial
 * has its own pressure. Given and wind-tunnel pressures do not say how they change: where they govern, the trial takes
 * no less than the element's. Simple spans; strength and deflection of the mullion, pull and bending at the screws. */
#include "galeward/answers.h"
#include "galeward/member.h"
#include "galeward/plan.h"
#include "judge/member.h"

#include <string.h>

enum { STEPS = 60, BISECTIONS = 40 };

struct trial {
    struct gw_ask *ask;
    const struct gw_system *system;
    const struct gw_element *element;
    double fixed; /* m, of the dimension that stays */
};

/* The element as if it were of another size, at the pressures that such a one has. False: the method gives none. */
static bool resized(struct gw_element *out, const struct trial *t, double area)
{
    struct gw_wind_case in;
    struct gw_wind_parapet parapet;
    struct gw_wind_result r;
    struct gw_engine engine;
    const struct gw_element *e = t->element;
    gw_takeoff_case(t->ask->model, e, &in, &parapet);
    in.effective_area = area;
    gw_engine_init(&engine, t->ask->model->tables, NULL);
    if (gw_wind_pressure(&r, &in, &engine) != GW_OK) return false;
    *out = *e;
    out->inward_asd.pa = fmax(r.asd_positive.pa, 0);
    out->outward_asd.pa = -fmax(-r.asd_negative.pa, 0);
    if (e->by_set) {
        out->inward_asd.pa *= e->by_set->factor[0];
        out->outward_asd.pa *= e->by_set->factor[1];
    }
    if (e->computed) return true;
    out->inward_asd.pa = fmax(out->inward_asd.pa, e->inward_asd.pa);
    out->outward_asd.pa = fmin(out->outward_asd.pa, e->outward_asd.pa);
    return true;
}

static bool mullion_takes(const struct trial *t, double span, double width)
{
    struct gw_ask *ask = t->ask;
    struct gw_member_strength m;
    struct gw_message question;
    struct gw_element trial;
    struct gw_simple_span felt;
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    if (!resized(&trial, t, gw_wind_effective_area(span, width, &ask->engine))) return false;
    if (!gw_member_of(&m, &question, ask, gw_part(t->system, mullion), span, "mullion")) return false;
    gw_simple_span(&felt, fmax(trial.inward_asd.pa, -trial.outward_asd.pa) * width, span, m.stiffness);
    const bool strong = felt.moment <= m.moment && !(felt.shear > m.shear);
    /* lites as tall as the span, since its rows are not told */
    const double limit = fmin(gw_framing_limit(ask->model, span, false, &ask->engine), gw_edge_cap(ask));
    return strong && felt.deflection <= limit;
}

static bool takes_span(const struct trial *t, double span) { return mullion_takes(t, span, t->fixed); }
static bool takes_width(const struct trial *t, double width) { return mullion_takes(t, t->fixed, width); }

static bool passes(const struct trial *t, const char *check, const struct gw_element *changed)
{
    struct gw_demand demand;
    struct gw_finding finding;
    gw_judge_limits(&finding, &demand, t->ask, gw_check_find(check), changed, t->system);
    return finding.verdict == GW_PASS;
}

/* The screw and the plate between two of them, the width that they carry staying. */
static bool takes_spacing(const struct trial *t, double spacing)
{
    struct gw_element changed;
    if (!resized(&changed, t, t->element->width * spacing)) return false;
    changed.height = spacing;
    return passes(t, "screw", &changed) && passes(t, "plate", &changed);
}

/* From small to large to the first that fails, then by bisection; absent: not even the smallest. */
static double greatest(const struct trial *t, bool (*takes)(const struct trial *, double), double least, double most)
{
    const double ratio = pow(most / least, 1.0 / STEPS);
    double low = least, high = 0;
    if (!takes(t, least)) return GW_ABSENT;
    while (high <= 0 && low < most * (1 - GW_HAIR)) {
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
static const struct gw_element *worst(const struct gw_ask *ask, enum gw_kind kind, int zone)
{
    const struct gw_element *best = NULL;
    double most = 0;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (!counts(e, kind) || e->zone != zone) continue;
        double size = kind == GW_MULLION ? e->span * e->span * e->width : e->width;
        double load = fmax(e->inward_asd.pa, -e->outward_asd.pa) * size;
        if (!(load > most)) continue;
        most = load;
        best = e;
    }
    return best;
}

/* The candidate with what is chosen at the place of the worst element. */
static const struct gw_system *offered_at(const struct gw_ask *ask, const struct gw_system *candidate,
                                          const struct gw_element *e)
{
    struct gw_planned *planned = e ? gw_planned_of(ask, candidate) : NULL;
    return planned ? gw_planned_offer(planned, e) : candidate;
}

static void reach_of(struct gw_reach *out, struct gw_ask *ask, const struct gw_system *system, int zone)
{
    const double least = 0.05, longest = 15, widest = 6, apart = 1.5; /* m: beyond what anyone builds */
    const struct gw_element *mullion = worst(ask, GW_MULLION, zone), *screw = worst(ask, GW_SCREW, zone);
    *out = (struct gw_reach){.candidate = system,
                             .zone = zone,
                             .span = GW_ABSENT,
                             .width = GW_ABSENT,
                             .at_width = GW_ABSENT,
                             .at_span = GW_ABSENT,
                             .spacing = GW_ABSENT,
                             .screw_width = GW_ABSENT};
    const struct gw_system *braced = offered_at(ask, system, mullion), *held = offered_at(ask, system, screw);
    if (mullion && gw_part(braced, mullion)) {
        out->at_width = mullion->width;
        out->at_span = mullion->span;
        out->span = greatest(&(struct trial){ask, braced, mullion, mullion->width}, takes_span, least, longest);
        out->width = greatest(&(struct trial){ask, braced, mullion, mullion->span}, takes_width, least, widest);
    }
    if (!screw || !gw_part(held, screw) || !gw_part(held, pressure_plate)) return;
    out->screw_width = screw->width;
    out->spacing = greatest(&(struct trial){ask, held, screw, screw->width}, takes_spacing, least, apart);
}

void gw_find_reaches(struct gw_answer *out, struct gw_ask *ask)
{
    const size_t zones = 2;
    out->reaches.items = gw_alloc(ask->arena, zones * ask->model->systems.n + 1, sizeof *out->reaches.items);
    for (size_t c = 0; c < ask->model->systems.n; c++)
        for (int zone = 4; zone <= 5; zone++) {
            struct gw_reach *r = &out->reaches.items[out->reaches.n];
            reach_of(r, ask, &ask->model->systems.items[c], zone);
            if (gw_given(r->span) || gw_given(r->width) || gw_given(r->spacing)) out->reaches.n++;
        }
}
