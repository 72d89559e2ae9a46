/* What demands, capacities and tests are put together from. */
#include "judge_internal.h"

void gw_demand_unknown(struct gw_demand *out, struct gw_message message)
{
    out->state = GW_NOT_KNOWN;
    out->message = message;
}

void gw_demand_not_asked(struct gw_demand *out, struct gw_message message)
{
    out->state = GW_NOT_ASKED;
    out->message = message;
}

static struct gw_term *next_term(struct gw_demand *out, struct gw_ask *ask)
{
    if (!out->terms.items) out->terms.items = gw_alloc(ask->arena, GW_TERM_LIMIT, sizeof *out->terms.items);
    return &out->terms.items[out->terms.n++];
}

void gw_demand_term(struct gw_demand *out, struct gw_ask *ask, enum gw_dim dim, enum gw_load_direction direction,
                    double value)
{
    struct gw_term *term = next_term(out, ask);
    *term = (struct gw_term){.dim = dim, .direction = direction, .value = value, .response = GW_ABSENT};
    const struct gw_term *first = out->terms.items;
    if (first->direction == GW_INWARD && first->dim == dim && direction == GW_OUTWARD) out->outward = term;
}

void gw_demand_limit(struct gw_demand *out, struct gw_ask *ask, enum gw_dim dim, double limit, double response)
{
    out->at_most = true;
    *next_term(out, ask) = (struct gw_term){.dim = dim, .value = limit, .response = response};
}

const struct gw_term *gw_term_of(const struct gw_demand *d, unsigned i)
{
    static const struct gw_term none = {.value = GW_ABSENT, .response = GW_ABSENT};
    return i < d->terms.n ? &d->terms.items[i] : &none;
}

struct gw_message gw_fault_message(const struct gw_ask *ask)
{
    const struct gw_fault *fault = &ask->engine.fault;
    const struct gw_message said = gw_fault_kept(ask->arena, fault);
    return GW_SAY(ask->arena, "{}{}", gw_of_text(fault->status == GW_OUTSIDE_METHOD ? "outside the method: " : ""),
                  gw_of_message(&said));
}

bool gw_is_taken_off(const struct gw_ask *ask, const struct gw_element *e)
{
    return e->index < ask->takeoff->elements.n && &ask->takeoff->elements.items[e->index] == e;
}

struct gw_pressures gw_pressures_on(struct gw_ask *ask, const struct gw_element *e)
{
    gw_used_merge(&ask->engine.used, &e->used);
    return (struct gw_pressures){fmax(e->inward_asd.pa, 0), fmax(-e->outward_asd.pa, 0)};
}

double gw_greater(struct gw_pressures p) { return fmax(p.inward, p.outward); }

bool gw_pressures_known(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e)
{
    if (!e->outside) return true;
    gw_demand_unknown(
        out, GW_SAY(ask->arena, "{}; ask the structural engineer for the pressure", gw_of_message(e->outside)));
    return false;
}

bool gw_demand_wind(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e, struct gw_pressures *p)
{
    if (!gw_pressures_known(out, ask, e)) return false;
    *p = gw_pressures_on(ask, e);
    out->message = GW_PLAINLY(e->governs);
    return true;
}

void gw_capacity_unknown(struct gw_capacity *out, struct gw_message question)
{
    out->state = GW_CAPACITY_UNKNOWN;
    out->message = question;
}

void gw_capacity_not_concerned(struct gw_capacity *out, struct gw_message why)
{
    out->state = GW_CAPACITY_NOT_CONCERNED;
    out->message = why;
}

struct gw_limit *gw_capacity_limit(struct gw_capacity *out, unsigned term, unsigned group, double provided,
                                   struct gw_message message)
{
    struct gw_limit *limit = &out->limits[out->n++];
    *limit = (struct gw_limit){.term = term,
                               .group = group,
                               .provided = provided,
                               .required = GW_ABSENT,
                               .use = GW_ABSENT,
                               .met = GW_UNSAID,
                               .message = message};
    return limit;
}

struct gw_limit *gw_capacity_instead(struct gw_capacity *out, enum gw_dim dim, double required, double provided,
                                     struct gw_message message)
{
    struct gw_limit *limit = gw_capacity_limit(out, 0, out->n, provided, message);
    limit->required = required;
    limit->dim = dim;
    return limit;
}

enum gw_evidence gw_stated_evidence(const char *report) { return report ? GW_BY_CALCULATION : GW_BY_STATEMENT; }

const char *gw_without_bead(const struct gw_system *system)
{
    return system->system->glazing == GW_CAPTURED ? "the glass is captured" : NULL;
}

static enum gw_component tested_as(enum gw_component component)
{
    return component == GW_SPANDREL || component == GW_COMPONENT_UNSET ? GW_FIXED : component;
}

bool gw_same_component(const struct gw_rating *rating, enum gw_component component)
{
    return tested_as(rating->component) == tested_as(component);
}

const char *gw_report_name(const struct gw_rating *rating)
{
    return rating->report ? rating->report : "report not named";
}

struct gw_message gw_ask_for_report(const struct gw_ask *ask, const struct gw_check *check)
{
    return GW_SAY(ask->arena,
                  "what shows {} names no report and is a statement, which the project does not take: ask the "
                  "manufacturer for the report",
                  gw_of_text(check->id));
}
