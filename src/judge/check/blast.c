/* Blast: by rating, else the glass by calculation up to its first break. */
#include "galeward/plan.h"
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/glass_lite.h"
#include "judge/judge_internal.h"
#include "judge/specimen.h"

#include <stdint.h>

static bool knows_blast(const struct gw_model *m) { return m->project.site->blast != NULL; }

static bool knows_load(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    bool any = gw_given(b->pressure) || gw_given(b->impulse) || gw_given(b->charge) || gw_given(b->standoff);
    return b->none == GW_BLAST_NONE || any;
}

static bool knows_pair(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    return gw_given(b->pressure) == gw_given(b->impulse);
}

static bool knows_burst(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    return gw_given(b->charge) == gw_given(b->standoff);
}

static const struct gw_need NEEDS[] = {
    {knows_blast,
     "is there a blast requirement? Ask the owner's security consultant (site: blast; 'none' if there is none)"},
    {knows_load, "which pressure and impulse, or which charge and standoff? Ask the owner's security consultant "
                 "(site: blast)"},
    {knows_pair, "peak pressure and impulse go together, both reflected: which is the other one? Ask the "
                 "owner's security consultant (site: blast: pressure, impulse)"},
    {knows_burst, "charge and standoff go together: which is the other one? Ask the owner's security "
                  "consultant (site: blast: charge, standoff)"},
    {0}};

static const char *waived(const struct gw_model *m)
{
    return m->project.site->blast->none == GW_BLAST_NONE ? "the project asks for none" : NULL;
}

static const char CAUTION[] = "a blast design needs a licensed specialist; rebound, frame and anchors are not checked";

/* Demand */

static struct gw_message load_message(struct gw_ask *ask, struct gw_blast_pair load)
{
    const struct gw_blast *b = ask->model->project.site->blast;
    struct gw_message m = GW_SAY(ask->arena, "peak reflected pressure {} with impulse {}",
                                 gw_of_quantity(GW_PRESSURE, load.pressure), gw_of_quantity(GW_IMPULSE, load.impulse));
    if (gw_given(b->charge))
        m = GW_SAY(ask->arena, "{}, of {} TNT at {}, normal to the face", gw_of_message(&m),
                   gw_of_quantity(GW_MASS, b->charge), gw_of_quantity(GW_LENGTH, b->standoff));
    if (b->hazard)
        m = GW_SAY(ask->arena, "{}; hazard at most {}", gw_of_message(&m),
                   gw_of_text(gw_choice_name(gw_hazard_choices, (int)b->hazard)));
    if (b->condition)
        m = GW_SAY(ask->arena, "{}; condition at most {}", gw_of_message(&m),
                   gw_of_text(gw_choice_name(gw_condition_choices, (int)b->condition)));
    if (b->hazard || b->condition) return m;
    return GW_SAY(ask->arena,
                  "{}; which hazard or condition is allowed is not said: ask the owner's security consultant (site: "
                  "blast: hazard or condition)",
                  gw_of_message(&m));
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_blast *b = ask->model->project.site->blast;
    const struct gw_blast_demand in = {.load = {b->pressure, b->impulse}, .burst = {b->charge, b->standoff, GW_ABSENT}};
    struct gw_hazard_demand *hazard = gw_alloc(ask->arena, 1, sizeof *hazard);
    (void)place;
    *hazard = (struct gw_hazard_demand){.wind_zone = GW_NO_ZONE, .blast = {GW_ABSENT, GW_ABSENT}};
    const bool known = gw_blast_find_load(&hazard->blast, &in, &ask->engine) == GW_OK;
    gw_demand_term(out, ask, GW_PRESSURE, GW_NO_DIRECTION, hazard->blast.pressure);
    gw_demand_term(out, ask, GW_IMPULSE, GW_NO_DIRECTION, hazard->blast.impulse);
    if (known) {
        out->hazard = hazard;
        out->message = out->summary = load_message(ask, hazard->blast);
        return;
    }
    const struct gw_message why = gw_fault_message(ask);
    gw_demand_unknown(out,
                      GW_SAY(ask->arena, "{}; ask the owner's security consultant (site: blast)", gw_of_message(&why)));
    out->summary = out->message;
}

/* Ratings: numbers below the demand fail whatever the size tested; sufficient ones show nothing beyond it. */
static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const struct gw_blast *b = ask->model->project.site->blast;
    const struct gw_blast_performance asked = {d->hazard->blast, b->hazard, b->condition};
    const struct gw_blast_performance has = {{rating->pressure, rating->impulse}, rating->hazard, rating->condition};
    struct gw_blast_verdict v;
    out->applies = rating->test == GW_TEST_BLAST && gw_same_component(rating, d->component);
    if (!out->applies) return;
    gw_blast_compare(&v, &asked, &has);
    struct gw_message unreached = gw_specimen_short_of_lite(ask, rating, d->element);
    const struct gw_message why = GW_PLAINLY(v.why);
    gw_specimen_add(ask, &unreached, gw_specimen_fastened_otherwise(ask, rating, d->element));
    out->provided[0] = rating->pressure;
    out->provided[1] = rating->impulse;
    out->met = v.meets == GW_NO ? GW_NO : GW_YES;
    out->covers = v.meets == GW_NO || (v.meets == GW_YES && !gw_said(&unreached));
    out->foreign = !out->covers;
    if (v.meets == GW_NO || !gw_said(&unreached))
        out->why = GW_SAY(ask->arena, "{}; {}", gw_of_text(v.why), gw_of_text(CAUTION));
    else out->why = v.meets == GW_UNSAID ? gw_say_both(ask->arena, &unreached, "; ", &why) : unreached;
}

/* Calculation */

/* A lite type of one size under the project's blast. */
struct blasted {
    const struct gw_lite_type *type;
    struct gw_message fault; /* not said: it is calculated */
    bool laminated, inner_alone;
    double passed_on, capacity;
    const char *governing;
    struct gw_blast_response response;
    const struct gw_used *used;
};

/* The curve of an element's lite, and what the load does to it; the climate of a sealed unit is not added to a blast.
 */
static enum gw_status bend(struct gw_blast_curve *curve, struct gw_blast_response *response, struct gw_lite *lite,
                           struct gw_ask *ask, const struct gw_element *e, const struct gw_lite_type *type,
                           struct gw_blast_pair load)
{
    const bool inner_alone = ask->model->project.site->blast->unit == GW_BLAST_INNER_ALONE;
    enum gw_status status = gw_lite_of(lite, ask->model, e, type, &ask->engine);
    lite->climate = false;
    if (status == GW_OK) status = gw_blast_curve(curve, lite, inner_alone, &ask->engine);
    return status == GW_OK ? gw_blast_respond(response, curve, load, &ask->engine) : status;
}

static enum gw_status respond(struct blasted *out, struct gw_ask *ask, const struct gw_element *e,
                              struct gw_blast_pair load)
{
    struct gw_lite lite = {.make_up = {.n_panes = 0}};
    struct gw_blast_curve *curve = gw_alloc(ask->arena, 1, sizeof *curve);
    const enum gw_status status = bend(curve, &out->response, &lite, ask, e, out->type, load);
    if (lite.make_up.n_panes) out->laminated = lite.make_up.panes[lite.make_up.n_panes - 1].n_plies > 1;
    if (status != GW_OK) return status;
    out->inner_alone = curve->inner_alone;
    out->passed_on = curve->passed_on;
    out->capacity = curve->capacity;
    out->governing = curve->governing;
    return GW_OK;
}

static void work_out(struct blasted *b, struct gw_ask *ask, const struct gw_demand *d)
{
    struct gw_ask own = *ask;
    gw_ask_open(&own);
    gw_use_plate_workspace(&own);
    if (respond(b, &own, d->element, d->hazard->blast) != GW_OK) {
        const struct gw_message why = gw_fault_message(&own);
        b->fault =
            GW_SAY(ask->arena, "no blast rating; by calculation: lite {}: {}; ask the manufacturer for a blast test",
                   gw_of_text(b->type->name), gw_of_message(&why));
    }
    b->used = gw_ask_close(&own, NULL);
}

/* Worked out once for each type and size, unless its derivation is wanted. */
static const struct blasted *blasted(struct gw_ask *ask, const struct gw_demand *d, const struct gw_lite_type *type)
{
    const struct gw_element *e = d->element;
    const struct {
        uintptr_t type;
        double size[3];
    } key = {(uintptr_t)type, {e->width, e->height, e->pane}};
    void **known = gw_memo_at(&ask->memory->blasts, ask->arena, &key, sizeof key);
    struct blasted *b = *known;
    if (b && !ask->trace) return b;
    b = gw_alloc(ask->arena, 1, sizeof *b);
    b->type = type;
    *known = b; /* before the work, which may move the table */
    work_out(b, ask, d);
    return b;
}

static struct gw_message bending(struct gw_ask *ask, const struct blasted *b)
{
    const struct gw_blast_response *r = &b->response;
    if (!gw_given(r->deflection)) return GW_PLAINLY("it would bend further than the plate's solution reaches");
    return GW_SAY(ask->arena, "bends {}, as under {} at rest", gw_of_quantity(GW_THICKNESS, r->deflection),
                  gw_of_quantity(GW_PRESSURE, r->equivalent));
}

/* What follows a break is not calculated: it fails where no break is admitted, and where plain glass breaks and nothing
 * says which fragments are admitted. */
static const char *broken(struct gw_limit *limit, bool *open, const struct blasted *b, const struct gw_blast *asked)
{
    const bool strict = asked->hazard == GW_HAZARD_NO_BREAK || asked->condition == GW_CONDITION_1;
    const bool admitted = asked->hazard > GW_HAZARD_NO_BREAK || asked->condition > GW_CONDITION_1;
    limit->met = GW_NO;
    if (strict) return "the glass breaks";
    *open = b->laminated || admitted;
    if (b->laminated)
        return "the glass cracks; what a laminated pane holds afterwards is not calculated: ask for a test";
    return admitted ? "the glass breaks; the hazard of its fragments is not calculated: ask for a test"
                    : "the glass breaks";
}

static const char *whole(struct gw_limit *limit, bool *open, const struct blasted *b)
{
    limit->met = GW_YES;
    if (!b->inner_alone) return "the glass does not break";
    *open = b->passed_on > 1;
    return *open ? "the outer panes are lighter than the inner one and can pass on more impulse than it takes alone: "
                   "ask for a test"
                 : "the inner pane, taking the whole load by itself, does not break";
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_lite_type *type = gw_glazed_type(ask, d->element);
    (void)system;
    if (!type) {
        gw_capacity_unknown(out,
                            GW_PLAINLY("no blast rating, and which glass is in it? Ask the manufacturer for a test "
                                       "(ASTM F1642), the architect for the glass (lites: layers)"));
        return;
    }
    const struct blasted *b = blasted(ask, d, type);
    gw_used_merge(&ask->engine.used, b->used);
    if (gw_said(&b->fault)) {
        gw_capacity_unknown(out, b->fault);
        return;
    }
    struct gw_limit *limit =
        gw_capacity_instead(out, GW_PRESSURE, b->response.equivalent, b->capacity, (struct gw_message){0});
    const char *why = b->response.breaks ? broken(limit, &out->open, b, ask->model->project.site->blast)
                                         : whole(limit, &out->open, b);
    const struct gw_message bends = bending(ask, b);
    limit->use = b->response.use;
    limit->message = GW_SAY(ask->arena,
                            "no blast rating; one lite by calculation, up to the first break: {}: {}; strength {} by "
                            "{}; {}",
                            gw_of_text(why), gw_of_message(&bends), gw_of_quantity(GW_PRESSURE, b->capacity),
                            gw_of_text(b->governing), gw_of_text(CAUTION));
}

/* Drawn ------------------------------------------------------------------------------------------------------------ */

/* 2: it answers the demand; 1: nobody can tell; 0: it does not; below: no rating of blast with both its numbers. */
static int nearness(const struct gw_rating *r, const struct gw_finding *f, const struct gw_blast *b)
{
    const struct gw_blast_performance asked = {f->demand->hazard->blast, b->hazard, b->condition};
    const struct gw_blast_performance has = {{r->pressure, r->impulse}, r->hazard, r->condition};
    struct gw_blast_verdict v;
    const bool both = r->test == GW_TEST_BLAST && gw_given(r->pressure) && gw_given(r->impulse);
    if (!both || !gw_same_component(r, f->demand->component)) return -1;
    gw_blast_compare(&v, &asked, &has);
    return v.meets == GW_YES ? 2 : v.meets == GW_NO ? 0 : 1;
}

static const struct gw_rating *nearest(const struct gw_ask *ask, const struct gw_finding *f)
{
    const struct gw_system *system = f->offered ? f->offered : f->candidate;
    const struct gw_rating *best = NULL;
    int most = -1;
    for (size_t i = 0; i < system->ratings.n; i++) {
        const int near = nearness(&system->ratings.items[i], f, ask->model->project.site->blast);
        if (near > most) best = &system->ratings.items[i], most = near;
    }
    return best;
}

static enum gw_status find_breaking(struct gw_judged_blast *out, struct gw_blast_curve *curve, struct gw_ask *ask)
{
    struct gw_lite lite;
    enum gw_status status = bend(curve, &out->response, &lite, ask, out->element, out->type, out->demand);
    if (status == GW_OK) status = gw_blast_asymptotes(&out->least, curve, &ask->engine);
    if (status == GW_OK)
        status = gw_blast_breaking(&out->breaking, curve, gw_blast_duration(out->demand), &ask->engine);
    return status;
}

void gw_judge_blast(struct gw_judged_blast *out, struct gw_ask *ask, const struct gw_finding *f)
{
    const struct gw_blast_pair none = {GW_ABSENT, GW_ABSENT};
    struct gw_blast_curve *curve = gw_alloc(ask->arena, 1, sizeof *curve);
    struct gw_planned *planned = gw_planned_of(ask, f->candidate);
    const struct gw_element *e = f->demand->element;
    if (planned) planned->make_ups.place = planned->plan.places->of[e->index];
    ask->choice = planned ? &planned->make_ups : NULL;
    *out = (struct gw_judged_blast){.element = e,
                                    .type = gw_glazed_type(ask, e),
                                    .rating = nearest(ask, f),
                                    .demand = f->demand->hazard->blast,
                                    .least = none,
                                    .breaking = none};
    ask->choice = NULL;
    gw_ask_open(ask);
    gw_use_plate_workspace(ask);
    if (!out->type) out->fault = GW_PLAINLY("which glass is in it? Ask the architect (lites: layers)");
    else if (find_breaking(out, curve, ask) != GW_OK) out->fault = gw_fault_message(ask);
    else out->curve = curve;
}

const struct gw_check gw_check_blast = {
    .id = "blast",
    .title = "Blast",
    .clause = "ASTM F1642, F2248",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .does = &(const struct gw_functions){
        .needs = NEEDS, .waived = waived, .demand = demand, .capacity = capacity, .test = test, .levels = true}};
