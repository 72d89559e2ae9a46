/* Wind-borne debris: what it asks of every lite, what impact tests show of it. Debris is shown by test alone. */
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/glass_lite.h"
#include "judge/hazards.h"
#include "judge/specimen.h"

#include "tables_data.h"

#include <string.h>

static bool knows_region(const struct gw_model *m)
{
    return m->project.site->hurricane_prone != GW_UNSAID || m->project.site->impact;
}

static const char *waived(const struct gw_model *m)
{
    const struct gw_site *s = m->project.site;
    if (s->impact && s->impact->rule == GW_IMPACT_NONE)
        return gw_model_waives(m) ? "waived against the code: the project asks for no impact rating"
                                  : "the project asks for no impact rating";
    bool asked = s->impact && s->impact->missile;
    return !asked && s->hurricane_prone == GW_NO ? "the site is not in the hurricane-prone region" : NULL;
}

/* From ASCE 7-10 on maps are of the strength level, as is the site's speed. */
static bool knows_speed(const struct gw_model *m)
{
    const struct gw_impact *impact = m->project.site->impact;
    return m->project.codes->debris != GW_DEBRIS_ASCE7_05 || (impact && impact->missile) || waived(m);
}

static const struct gw_need NEEDS[] = {
    {knows_region, "is the site in the hurricane-prone region, and must the glazing be impact resistant? Ask the "
                   "architect (site: hurricane_prone, impact)"},
    {knows_speed, "which missile is asked for? asce7-05 goes by nominal wind speeds, the site's is of the strength "
                  "level: give the missile (site: impact) or a later edition (codes: debris)"},
    {0}};

static const struct gw_impact *impact_of(const struct gw_ask *ask)
{
    static const struct gw_impact none = {
        .wind_zone = GW_NO_ZONE, .region_wind_speed = GW_ABSENT, .aggregate_roof_height = GW_ABSENT, .bite = GW_ABSENT};
    const struct gw_impact *given = ask->model->project.site->impact;
    return given ? given : &none;
}

/* By the specification where it names a missile, else by the code. */
static enum gw_status find(struct gw_debris_result *out, struct gw_ask *ask, double height)
{
    const struct gw_impact *impact = impact_of(ask);
    if (!impact->missile) {
        struct gw_debris_case in;
        gw_model_debris_case(ask->model, height, &in);
        return gw_debris(out, &in, &ask->engine);
    }
    *out = (struct gw_debris_result){.required = GW_YES,
                                     .reason = gw_model_waives(ask->model)
                                                   ? "asked for by the project's specification, waived against the "
                                                     "code, which asks for more"
                                                   : "asked for by the project's specification",
                                     .wind_zone = impact->wind_zone,
                                     .missile = impact->missile,
                                     .impacts = GW_NO_ZONE};
    gw_debris_describe(out, &ask->engine);
    gw_trace_note(&ask->engine, "missile", "project specification", out->reason);
    return GW_OK;
}

static struct gw_message refusal(const struct gw_ask *ask)
{
    const struct gw_fault *fault = &ask->engine.fault;
    if (fault->status == GW_MISSING && strcmp(fault->key, "coast_distance") == 0)
        return GW_PLAINLY("how far is the site from the coastal mean high water line? Whether debris counts, or which "
                          "missile, hangs on it; ask the architect (site: coast_distance)");
    return gw_fault_message(ask);
}

/* The lower, the larger the missile. Where the place is not known it is asked for, unless it makes no difference. */
static bool height_matters(const struct gw_debris_result *at, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_debris_result low;
    if (!e->height_unknown || find(&low, ask, 0) != GW_OK) return false;
    return low.required != at->required || low.missile != at->missile;
}

static void unknown(struct gw_demand *out, struct gw_message message)
{
    gw_demand_unknown(out, message);
    out->summary = message;
}

static struct gw_message with_notes(struct gw_ask *ask, const struct gw_debris_result *r, struct gw_message m)
{
    for (unsigned i = 0; i < r->n_notes; i++)
        m = GW_SAY(ask->arena, "{}; {}", gw_of_message(&m), gw_of_text(r->notes[i]));
    return m;
}

/* The missile. Refusals and missing pressures are in `out`. */
static bool is_required(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e,
                        struct gw_debris_result *r)
{
    if (find(r, ask, e->bottom) != GW_OK) {
        unknown(out, refusal(ask));
    } else if (height_matters(r, ask, e)) {
        unknown(out, GW_PLAINLY("at what height is it? Debris hangs on it; ask the architect (openings: sill, "
                                "offset)"));
    } else if (r->required != GW_YES) {
        gw_demand_not_asked(out, with_notes(ask, r, GW_PLAINLY(r->reason)));
        out->summary = out->message;
    } else if (!gw_pressures_known(out, ask, e)) {
        out->summary = out->message;
    }
    return out->state == GW_ASKED;
}

static struct gw_message requirement(struct gw_ask *ask, const struct gw_debris_result *r)
{
    struct gw_arena *arena = ask->arena;
    const struct gw_message same =
        GW_SAY(arena, ": {} at {}", gw_of_quantity(GW_MASS, r->mass), gw_of_quantity(GW_VELOCITY, r->speed));
    struct gw_message m =
        GW_SAY(arena, "missile {} ({}{})", gw_of_text(gw_choice_name(gw_missile_choices, (int)r->missile)),
               gw_of_text(r->description), gw_of_abroad(GW_US, &same)); /* the standard names missiles in pounds */
    if (r->wind_zone != GW_NO_ZONE) m = GW_SAY(arena, "{}, wind zone {}", gw_of_message(&m), gw_of_count(r->wind_zone));
    if (r->protection > GW_PROTECTION_NONE)
        m = GW_SAY(arena, "{}, {} protection", gw_of_message(&m),
                   gw_of_text(gw_choice_name(gw_protection_choices, (int)r->protection)));
    if (r->impacts > 1)
        m = GW_SAY(arena, "{}, {} impacts on each specimen", gw_of_message(&m), gw_of_count(r->impacts));
    return with_notes(ask, r, GW_SAY(arena, "{}: {}", gw_of_message(&m), gw_of_text(r->reason)));
}

struct gw_message gw_say_cycles(struct gw_ask *ask, const struct gw_cycles *cycles)
{
    struct gw_message m = GW_PLAINLY("then cycled");
    enum gw_cycle_direction last = GW_CYCLE_UNSAID;
    for (size_t i = 0; i < cycles->n; i++) {
        const struct gw_cycle_step *s = &cycles->steps[i];
        const bool turns = s->direction != last;
        m = GW_SAY(ask->arena, "{}{}{}{} {} of {} to {}", gw_of_message(&m),
                   gw_of_text(!i      ? ""
                              : turns ? ";"
                                      : ","),
                   gw_of_text(turns ? " " : ""),
                   gw_of_text(turns ? gw_choice_name(gw_cycle_direction_choices, (int)s->direction) : ""),
                   gw_of_count(s->cycles), gw_of_quantity(GW_PRESSURE, s->low), gw_of_quantity(GW_PRESSURE, s->high));
        last = s->direction;
    }
    return m;
}

static void keep_hazard(struct gw_demand *out, struct gw_ask *ask, const struct gw_debris_result *r)
{
    struct gw_hazard_demand *hazard = gw_alloc(ask->arena, 1, sizeof *hazard);
    *hazard = (struct gw_hazard_demand){.missile = r->missile,
                                        .wind_zone = r->wind_zone,
                                        .high_velocity_zone = impact_of(ask)->high_velocity_zone,
                                        .blast = {GW_ABSENT, GW_ABSENT}};
    out->hazard = hazard;
    out->summary = requirement(ask, r);
}

/* The missile, then the cycles at the element's pressures. */
static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_debris_result r;
    struct gw_cycles cycles;
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    const bool required = is_required(out, ask, place->element, &r);
    if (required) p = gw_pressures_on(ask, place->element);
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, p.inward);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, p.outward);
    if (!required) return;
    keep_hazard(out, ask, &r);
    if (gw_debris_cycles(&cycles, (struct gw_asd){p.inward}, (struct gw_asd){p.outward}, GW_CYCLES_IMPACT,
                         &ask->engine) != GW_OK) {
        unknown(out, gw_fault_message(ask));
        return;
    }
    const struct gw_message then = gw_say_cycles(ask, &cycles);
    out->message = gw_say_both(ask->arena, &out->summary, "; ", &then);
}

/* Ratings */

static struct gw_impact_rating impact_rating(const struct gw_rating *r)
{
    return (struct gw_impact_rating){.missile = r->missile,
                                     .small_missile_shown = r->small_missile_shown,
                                     .wind_zone = r->wind_zone,
                                     .high_velocity_zone = r->high_velocity_zone,
                                     .positive = {r->positive},
                                     .negative = {r->negative},
                                     .width = r->tested ? r->tested->lite_width : GW_ABSENT,
                                     .height = r->tested ? r->tested->lite_height : GW_ABSENT,
                                     .bite = r->bite,
                                     .cycles = r->cycles};
}

/* m, of the system that is judged, in its pocket; absent: it gives none, or a bead holds the glass. */
static double bite_of_system(const struct gw_ask *ask)
{
    if (!ask->system || ask->system->system->glazing == GW_SILICONE) return GW_ABSENT;
    const struct gw_drift_spec *drift = gw_part(ask->system, drift);
    return drift ? drift->bite : GW_ABSENT;
}

/* m: what was read on the wall goes before the project's and the system's, of which the lesser is there. */
static double bite_here(const struct gw_ask *ask)
{
    const struct gw_hung *hung = ask->system ? ask->system->hung : NULL;
    return hung && gw_given(hung->bite) ? hung->bite : fmin(impact_of(ask)->bite, bite_of_system(ask));
}

static struct gw_impact_demand impact_demand(const struct gw_ask *ask, const struct gw_demand *d)
{
    return (struct gw_impact_demand){.missile = d->hazard->missile,
                                     .wind_zone = d->hazard->wind_zone,
                                     .high_velocity_zone = d->hazard->high_velocity_zone,
                                     .positive = {gw_term_of(d, 0)->value},
                                     .negative = {gw_term_of(d, 1)->value},
                                     .width = d->element->width,
                                     .height = d->element->pane,
                                     .bite = bite_here(ask)};
}

/* The reasons of the gravest kind. */
static struct gw_message reasons(struct gw_ask *ask, const struct gw_impact_comparison *c)
{
    struct gw_message m = {0};
    for (unsigned i = 0; i < c->n; i++) {
        const struct gw_message one = GW_PLAINLY(c->reasons[i].text);
        if (c->reasons[i].shown == c->shown) m = gw_say_both(ask->arena, &m, "; ", &one);
    }
    return m;
}

static bool is_of(const struct gw_ask *ask, const struct gw_tested_lite *lite, const struct gw_demand *d,
                  const struct gw_lite_type *here)
{
    const bool other =
        lite->component && !gw_same_component(&(struct gw_rating){.component = lite->component}, d->component);
    return !other && (!here || !lite->layers.n || gw_same_make_up(ask, lite, here));
}

/* By the lite of the specimen that shows most, of those that are made as the one here. */
static void compare(struct gw_impact_comparison *out, struct gw_ask *ask, const struct gw_demand *d,
                    const struct gw_rating *rating)
{
    const struct gw_tested *t = rating->tested;
    struct gw_impact_demand needs = impact_demand(ask, d);
    struct gw_impact_rating has = impact_rating(rating);
    const struct gw_size_spelling *spelling = &ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_PLACE];
    if (needs.bite < has.bite && needs.bite + spelling->apart_m >= has.bite) { /* one size in inches, in millimeters */
        needs.bite = has.bite;
        gw_used_add(&ask->engine.used, &spelling->row);
    }
    gw_impact_compare(out, &has, &needs, &ask->engine);
    for (size_t i = 0; t && i < t->lites.n; i++) {
        struct gw_impact_comparison one;
        if (!is_of(ask, &t->lites.items[i], d, gw_type_of(ask, d->element))) continue;
        has.width = t->lites.items[i].width;
        has.height = t->lites.items[i].height;
        gw_impact_compare(&one, &has, &needs, &ask->engine);
        if (one.shown <= out->shown) *out = one;
    }
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    struct gw_impact_comparison c;
    out->applies = rating->test == GW_TEST_IMPACT && gw_same_component(rating, d->component);
    if (!out->applies) return;
    compare(&c, ask, d, rating);
    out->provided[0] = rating->positive;
    out->provided[1] = rating->negative;
    out->met = c.shown == GW_BELOW ? GW_NO : GW_YES;
    out->covers = c.shown == GW_SHOWN || c.shown == GW_SHOWN_PROVIDED;
    out->foreign = c.shown == GW_UNSHOWN;
    out->lesser = c.other_missile;
    out->why = reasons(ask, &c);
    const struct gw_message fastened = gw_specimen_fastened_otherwise(ask, rating, d->element),
                            made = gw_made_otherwise(ask, rating, d->element);
    const struct gw_message *other = gw_said(&fastened) ? &fastened : &made;
    if (!out->covers || !gw_said(other)) return;
    out->covers = false;
    out->foreign = true;
    out->why = *other;
}

const struct gw_check gw_check_debris = {
    .id = "debris",
    .title = "Wind-borne debris",
    .clause = "ASTM E1886, E1996",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .does = &(const struct gw_functions){
        .needs = NEEDS,
        .waived = waived,
        .demand = demand,
        .test = test,
        .levels = true,
        .unrated =
            "no impact rating of this component: ask the manufacturer for an impact report (ASTM E1886, E1996)"}};
