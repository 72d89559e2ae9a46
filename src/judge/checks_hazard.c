/* Wind-borne debris and blast: what they ask of every lite, what ratings show of it. Debris is shown by test alone;
 * glass under blast is calculated where no rating says anything of it. */
#include "judge_internal.h"

#include <string.h>

static void unknown(struct gw_demand *out, const char *message)
{
    out->status = GW_NOT_SHOWN;
    out->message = out->summary = message;
}

/* Of two ratings, or of two findings from them, the one that shows more. */
static bool shows_more(const struct gw_finding *a, const struct gw_finding *b)
{
    static const int rank[] = {[GW_PASS] = 3, [GW_NOT_REQUIRED] = 3, [GW_NOT_SHOWN] = 2, [GW_FAIL] = 1};
    if (rank[a->verdict] != rank[b->verdict]) return rank[a->verdict] > rank[b->verdict];
    return a->utilisation < b->utilisation;
}

static const char *report_of(const struct gw_judging *j, const struct gw_rating *rating, const char *text)
{
    return gw_format(j->model->arena, "%s: %s", rating->report ? rating->report : "report not named", text);
}

typedef void weigh_function(struct gw_finding *out, struct gw_judging *j, const struct gw_rating *rating);

/* The best of the candidate's ratings of one test; false: it has none of this component. */
static bool best_rating(struct gw_finding *f, struct gw_judging *j, enum gw_test test, weigh_function *weigh)
{
    bool any = false;
    for (size_t i = 0; i < f->candidate->ratings.n; i++) {
        const struct gw_rating *rating = &f->candidate->ratings.items[i];
        struct gw_finding one = *f;
        if (rating->test != test || !gw_same_component(rating, f->demand->component)) continue;
        one.evidence = GW_BY_TEST;
        weigh(&one, j, rating);
        if (!any || shows_more(&one, f)) *f = one;
        any = true;
    }
    return any;
}

/* Debris -----------------------------------------------------------------------------------------------------------
 */

static const struct gw_impact *impact_of(const struct gw_judging *j)
{
    static const struct gw_impact none = {
        .wind_zone = GW_NO_ZONE, .region_wind_speed = GW_ABSENT, .aggregate_roof_height = GW_ABSENT, .bite = GW_ABSENT};
    const struct gw_impact *given = j->model->project.site->impact;
    return given ? given : &none;
}

/* Debris goes by the edition that wind goes by, unless the project names another. */
static enum gw_debris_edition debris_edition(const struct gw_codes *codes)
{
    static const enum gw_debris_edition same[] = {
        [GW_ASCE7_10] = GW_DEBRIS_ASCE7_10, [GW_ASCE7_16] = GW_DEBRIS_ASCE7_16, [GW_ASCE7_22] = GW_DEBRIS_ASCE7_22};
    return codes->debris ? codes->debris : same[codes->wind];
}

static struct gw_debris_case debris_case(const struct gw_judging *j, double height)
{
    const struct gw_project *p = &j->model->project;
    const struct gw_impact *impact = impact_of(j);
    return (struct gw_debris_case){.edition = debris_edition(p->codes),
                                   .basic_wind_speed = p->site->basic_wind_speed,
                                   .region_wind_speed = impact->region_wind_speed,
                                   .coast_distance = p->site->coast_distance,
                                   .risk_category = p->project->risk_category,
                                   .health_care = impact->health_care,
                                   .height = height,
                                   .hurricane_prone = p->site->hurricane_prone,
                                   .exposure_d_at_shore = impact->exposure_d_at_shore,
                                   .high_velocity_zone = impact->high_velocity_zone,
                                   .hawaii = impact->hawaii,
                                   .aggregate_roof_height = impact->aggregate_roof_height};
}

/* By the specification where it names a missile, else by the code. */
static enum gw_status find_debris(struct gw_debris_result *out, const struct gw_judging *j, double height,
                                  struct gw_engine *engine)
{
    const struct gw_impact *impact = impact_of(j);
    if (!impact->missile) {
        const struct gw_debris_case in = debris_case(j, height);
        return gw_debris(out, &in, engine);
    }
    *out = (struct gw_debris_result){.required = GW_YES,
                                     .reason = "asked for by the project's specification",
                                     .wind_zone = impact->wind_zone,
                                     .missile = impact->missile,
                                     .impacts = GW_NO_ZONE};
    gw_debris_describe(out, engine);
    gw_trace_note(engine, "missile", "project specification", out->reason);
    return GW_OK;
}

static const char *debris_fault(const struct gw_judging *j, const struct gw_engine *engine)
{
    bool coast = engine->fault.status == GW_MISSING && strcmp(engine->fault.key, "coast_distance") == 0;
    if (coast)
        return "how far is the site from the coastal mean high water line? Whether debris counts, or which missile, "
               "hangs on it; ask the architect (site: coast_distance)";
    return gw_fault_of(j, engine);
}

/* The lower, the larger the missile. Where the place is not known it is asked for, unless it makes no difference. */
static bool height_matters(const struct gw_debris_result *at, const struct gw_judging *j, const struct gw_element *e,
                           struct gw_engine *engine)
{
    struct gw_debris_result low;
    if (!e->place_unknown || find_debris(&low, j, 0, engine) != GW_OK) return false;
    return low.required != at->required || low.missile != at->missile;
}

static const char *requirement_text(const struct gw_judging *j, const struct gw_debris_result *r)
{
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    gw_text_addf(&text, "missile %s (%s)", gw_choice_name(gw_missile_choices, (int)r->missile),
                 r->description ? r->description : "");
    if (r->wind_zone != GW_NO_ZONE) gw_text_addf(&text, ", wind zone %d", r->wind_zone);
    if (r->protection > GW_PROTECTION_NONE)
        gw_text_addf(&text, ", %s protection", gw_choice_name(gw_protection_choices, (int)r->protection));
    if (r->impacts > 1) gw_text_addf(&text, ", %d impacts on each specimen", r->impacts);
    gw_text_addf(&text, ": %s", r->reason);
    for (unsigned i = 0; i < r->n_notes; i++) gw_text_addf(&text, "; %s", r->notes[i]);
    return text.at;
}

static void add_step(struct gw_text *text, const struct gw_judging *j, const struct gw_cycle_step *s)
{
    gw_text_addf(text, " %d of %s to %s", s->cycles, gw_judge_say(j, GW_PRESSURE, s->low),
                 gw_judge_say(j, GW_PRESSURE, s->high));
}

static const char *cycles_text(const struct gw_judging *j, const struct gw_cycles *cycles)
{
    struct gw_text text;
    enum gw_cycle_direction last = GW_CYCLE_UNSAID;
    gw_text_init(&text, j->model->arena);
    gw_text_add(&text, "then cycled");
    for (size_t i = 0; i < cycles->n; i++) {
        const struct gw_cycle_step *s = &cycles->steps[i];
        if (i) gw_text_add(&text, s->direction == last ? "," : ";");
        if (s->direction != last)
            gw_text_addf(&text, " %s", gw_choice_name(gw_cycle_direction_choices, (int)s->direction));
        last = s->direction;
        add_step(&text, j, s);
    }
    return text.at;
}

/* The missile, then the cycles at the element's pressures. Refusals and missing pressures are in `out`. */
static bool required_debris(struct gw_demand *out, struct gw_judging *j, const struct gw_element *e,
                            struct gw_debris_result *r, struct gw_engine *engine)
{
    const char *question = "at what height is it? Debris hangs on it; ask the architect (openings: sill, offset)";
    if (find_debris(r, j, e->bottom, engine) != GW_OK) {
        unknown(out, debris_fault(j, engine));
    } else if (height_matters(r, j, e, engine)) {
        unknown(out, question);
    } else if (r->required != GW_YES) {
        out->status = GW_NOT_REQUIRED;
        out->message = out->summary = r->reason;
    } else if (e->outside) {
        unknown(out, gw_format(j->model->arena, "%s; ask the structural engineer for the pressure", e->outside));
    }
    return out->status == GW_PASS;
}

void gw_demand_debris(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_debris_result r;
    struct gw_cycles cycles;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, NULL);
    out->dim = GW_PRESSURE;
    bool required = required_debris(out, j, e, &r, &engine);
    gw_used_merge(&out->used, &engine.used);
    if (!required) return;
    out->value = fmax(e->inward_asd.pa, 0);
    out->value_out = fmax(-e->outward_asd.pa, 0);
    struct gw_hazard_demand *hazard = gw_alloc(j->model->arena, 1, sizeof *hazard);
    *hazard = (struct gw_hazard_demand){.missile = r.missile,
                                        .wind_zone = r.wind_zone,
                                        .high_velocity_zone = impact_of(j)->high_velocity_zone,
                                        .blast = {GW_ABSENT, GW_ABSENT}};
    out->hazard = hazard;
    out->summary = requirement_text(j, &r);
    if (gw_debris_cycles(&cycles, (struct gw_asd){out->value}, (struct gw_asd){out->value_out}, GW_CYCLES_IMPACT,
                         &engine) != GW_OK) {
        unknown(out, gw_fault_of(j, &engine));
        return;
    }
    out->message = gw_format(j->model->arena, "%s; %s", out->summary, cycles_text(j, &cycles));
    gw_used_merge(&out->used, &engine.used);
    gw_used_merge(&out->used, &e->used);
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

static struct gw_impact_demand impact_demand(const struct gw_judging *j, const struct gw_demand *d)
{
    return (struct gw_impact_demand){.missile = d->hazard->missile,
                                     .wind_zone = d->hazard->wind_zone,
                                     .high_velocity_zone = d->hazard->high_velocity_zone,
                                     .positive = {d->value},
                                     .negative = {d->value_out},
                                     .width = d->element->width,
                                     .height = d->element->height,
                                     .bite = impact_of(j)->bite};
}

/* The reasons of the gravest kind. */
static const char *reasons_text(const struct gw_judging *j, const struct gw_impact_comparison *c)
{
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    for (unsigned i = 0; i < c->n; i++)
        if (c->reasons[i].shown == c->shown) gw_text_addf(&text, "%s%s", text.length ? "; " : "", c->reasons[i].text);
    return text.at;
}

static double use_of(double required, double provided)
{
    if (!gw_given(provided)) return GW_ABSENT;
    if (provided > 0) return required / provided;
    return required > 0 ? (double)INFINITY : 0;
}

/* Of the two directions the one that uses more; one that the rating does not give has no use. */
static void use_pressures(struct gw_finding *f, const struct gw_rating *r)
{
    const struct gw_demand *d = f->demand;
    double inward = use_of(d->value, r->positive), outward = use_of(d->value_out, r->negative);
    bool out = gw_given(outward) && !(inward >= outward);
    f->direction = out ? "outward" : "inward";
    f->required = out ? d->value_out : d->value;
    f->provided = out ? r->negative : r->positive;
    f->utilisation = out ? outward : inward;
}

static bool other_make_up(const struct gw_rating *r, const struct gw_element *e)
{
    return r->tested && r->tested->make_up && e->lite && strcmp(r->tested->make_up, e->lite) != 0;
}

static void weigh_impact(struct gw_finding *f, struct gw_judging *j, const struct gw_rating *rating)
{
    static const enum gw_verdict verdicts[] = {
        [GW_SHOWN] = GW_PASS, [GW_SHOWN_PROVIDED] = GW_PASS, [GW_UNSHOWN] = GW_NOT_SHOWN, [GW_BELOW] = GW_FAIL};
    const struct gw_impact_rating has = impact_rating(rating);
    const struct gw_impact_demand needs = impact_demand(j, f->demand);
    struct gw_impact_comparison c;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, NULL);
    gw_impact_compare(&c, &has, &needs, &engine);
    use_pressures(f, rating);
    f->verdict = verdicts[c.shown];
    f->message = report_of(j, rating, reasons_text(j, &c));
    gw_used_merge(&f->used, &engine.used);
    if (f->verdict != GW_PASS || !other_make_up(rating, f->demand->element)) return;
    f->verdict = GW_NOT_SHOWN;
    f->message = report_of(j, rating,
                           gw_format(j->model->arena, "tested with make-up %s, here %s", rating->tested->make_up,
                                     f->demand->element->lite));
}

/* The steps that led to the demand. */
static void derive_debris(struct gw_judging *j, const struct gw_demand *d)
{
    struct gw_debris_result r;
    struct gw_cycles cycles;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (find_debris(&r, j, d->element->bottom, &engine) != GW_OK) return;
    gw_debris_cycles(&cycles, (struct gw_asd){d->value}, (struct gw_asd){d->value_out}, GW_CYCLES_IMPACT, &engine);
}

void gw_settle_debris(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    (void)check;
    if (j->trace) derive_debris(j, f->demand);
    if (best_rating(f, j, GW_TEST_IMPACT, weigh_impact)) return;
    gw_unanswered(f, "no impact rating of this component: ask the maker for an impact report (ASTM E1886, E1996)");
}

/* Blast ------------------------------------------------------------------------------------------------------------
 */

static const char CAUTION[] = "a blast design needs a licensed specialist; rebound, frame and anchors are not checked";

/* A lite type of one size under the project's blast. */
struct gw_blasted {
    const struct gw_lite_type *type;
    double width, height;
    const char *fault; /* NULL; else why it is not calculated */
    bool laminated;
    double passed_on, capacity;
    bool inner_alone;
    const char *governing;
    struct gw_blast_response response;
    struct gw_used used;
};

static enum gw_status find_blast(struct gw_blast_pair *out, const struct gw_judging *j, struct gw_engine *engine)
{
    const struct gw_blast *b = j->model->project.site->blast;
    const struct gw_blast_demand in = {.load = {b->pressure, b->impulse}, .burst = {b->charge, b->standoff, GW_ABSENT}};
    return gw_blast_find_load(out, &in, engine);
}

static const char *blast_text(const struct gw_judging *j, struct gw_blast_pair load)
{
    const struct gw_blast *b = j->model->project.site->blast;
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    gw_text_addf(&text, "peak reflected pressure %s with impulse %s", gw_judge_say(j, GW_PRESSURE, load.pressure),
                 gw_judge_say(j, GW_IMPULSE, load.impulse));
    if (gw_given(b->charge))
        gw_text_addf(&text, ", of %s TNT at %s, normal to the face", gw_judge_say(j, GW_MASS, b->charge),
                     gw_judge_say(j, GW_LENGTH, b->standoff));
    if (b->hazard) gw_text_addf(&text, "; hazard at most %s", gw_choice_name(gw_hazard_choices, (int)b->hazard));
    if (b->condition)
        gw_text_addf(&text, "; condition at most %s", gw_choice_name(gw_condition_choices, (int)b->condition));
    return text.at;
}

void gw_demand_blast(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    struct gw_engine engine;
    struct gw_hazard_demand *hazard = gw_alloc(j->model->arena, 1, sizeof *hazard);
    (void)place;
    gw_engine_init(&engine, j->model->tables, NULL);
    out->dim = GW_PRESSURE;
    *hazard = (struct gw_hazard_demand){.wind_zone = GW_NO_ZONE};
    enum gw_status status = find_blast(&hazard->blast, j, &engine);
    gw_used_merge(&out->used, &engine.used);
    if (status != GW_OK) {
        unknown(out, gw_format(j->model->arena, "%s; ask the owner's security consultant (site: blast)",
                               gw_fault_of(j, &engine)));
        return;
    }
    out->hazard = hazard;
    out->value = hazard->blast.pressure;
    out->message = out->summary = blast_text(j, hazard->blast);
}

/* Ratings */

static struct gw_blast_performance blast_asked(const struct gw_judging *j, const struct gw_demand *d)
{
    const struct gw_blast *b = j->model->project.site->blast;
    return (struct gw_blast_performance){.load = d->hazard->blast, .hazard = b->hazard, .condition = b->condition};
}

/* Of pressure and impulse the one that uses more. */
static void use_pair(struct gw_finding *f, const struct gw_rating *r)
{
    const struct gw_blast_pair load = f->demand->hazard->blast;
    double pressure = use_of(load.pressure, r->pressure), impulse = use_of(load.impulse, r->impulse);
    bool by_impulse = gw_given(impulse) && !(pressure >= impulse);
    f->dim = by_impulse ? GW_IMPULSE : GW_PRESSURE;
    f->required = by_impulse ? load.impulse : load.pressure;
    f->provided = by_impulse ? r->impulse : r->pressure;
    f->utilisation = by_impulse ? impulse : pressure;
}

/* Numbers below the demand fail whatever the size tested; sufficient ones show nothing beyond it. */
static void weigh_blast(struct gw_finding *f, struct gw_judging *j, const struct gw_rating *rating)
{
    const struct gw_blast_performance asked = blast_asked(j, f->demand);
    const struct gw_blast_performance has = {{rating->pressure, rating->impulse}, rating->hazard, rating->condition};
    struct gw_blast_verdict v;
    gw_blast_compare(&v, &asked, &has);
    use_pair(f, rating);
    f->verdict = v.meets == GW_UNSAID ? GW_NOT_SHOWN : v.meets == GW_YES ? GW_PASS : GW_FAIL;
    f->message = report_of(j, rating, gw_format(j->model->arena, "%s; %s", v.why, CAUTION));
    const char *unreached = gw_lite_shortfall(j, rating, f->demand->element);
    if (f->verdict == GW_FAIL || !*unreached) return;
    const char *also = f->verdict == GW_NOT_SHOWN ? gw_format(j->model->arena, "; %s", v.why) : "";
    f->verdict = GW_NOT_SHOWN;
    f->message = report_of(j, rating, gw_format(j->model->arena, "%s%s", unreached, also));
}

/* Calculation */

static enum gw_status respond(struct gw_blasted *out, const struct gw_judging *j, const struct gw_element *e,
                              struct gw_blast_pair load, struct gw_engine *engine)
{
    struct gw_lite lite;
    struct gw_blast_curve *curve = gw_alloc(j->model->arena, 1, sizeof *curve);
    bool inner_alone = j->model->project.site->blast->unit == GW_BLAST_INNER_ALONE;
    enum gw_status status = gw_lite_of(&lite, j->model, e, out->type, engine);
    lite.climate = false; /* the climate of a sealed unit is not added to a blast */
    if (status == GW_OK) out->laminated = lite.make_up.panes[lite.make_up.n_panes - 1].n_plies > 1;
    if (status == GW_OK) status = gw_blast_curve(curve, &lite, inner_alone, engine);
    if (status == GW_OK) status = gw_blast_respond(&out->response, curve, load, engine);
    if (status != GW_OK) return status;
    out->inner_alone = curve->inner_alone;
    out->passed_on = curve->passed_on;
    out->capacity = curve->capacity;
    out->governing = curve->governing;
    return GW_OK;
}

/* Worked out once for each type and size. */
static const struct gw_blasted *blasted(struct gw_judging *j, const struct gw_demand *d,
                                        const struct gw_lite_type *type)
{
    struct gw_arena *arena = j->model->arena;
    const struct gw_element *e = d->element;
    struct gw_engine engine;
    for (size_t i = 0; i < j->n_blasted; i++) {
        const struct gw_blasted *b = &j->blasted[i];
        if (b->type == type && b->width == e->width && b->height == e->height) return b;
    }
    if (!j->workspace) j->workspace = gw_alloc(arena, 1, GW_PLATE_WORKSPACE);
    gw_engine_init(&engine, j->model->tables, j->trace);
    engine.workspace = j->workspace;
    j->blasted = gw_grow(arena, j->blasted, j->n_blasted, &j->blasted_capacity, sizeof *j->blasted);
    struct gw_blasted *b = &j->blasted[j->n_blasted++];
    *b = (struct gw_blasted){.type = type, .width = e->width, .height = e->height};
    if (respond(b, j, e, d->hazard->blast, &engine) != GW_OK)
        b->fault = gw_format(arena, "no blast rating; by calculation: lite %s: %s; ask the maker for a blast test",
                             type->name, gw_fault_of(j, &engine));
    b->used = engine.used;
    return b;
}

static bool admits_break(const struct gw_blast *b)
{
    return b->hazard > GW_HAZARD_NO_BREAK || b->condition > GW_CONDITION_1;
}

static const char *deflection_text(const struct gw_judging *j, const struct gw_blasted *b)
{
    const struct gw_blast_response *r = &b->response;
    if (!gw_given(r->deflection)) return "it would bend further than the plate's solution reaches";
    return gw_format(j->model->arena, "bends %s, as under %s at rest", gw_judge_say(j, GW_THICKNESS, r->deflection),
                     gw_judge_say(j, GW_PRESSURE, r->equivalent));
}

/* What follows a break is not calculated: it fails where no break is admitted, and where plain glass breaks and
 * nothing says which fragments are admitted. */
static enum gw_verdict broken(const char **why, const struct gw_blasted *b, const struct gw_blast *asked)
{
    bool strict = asked->hazard == GW_HAZARD_NO_BREAK || asked->condition == GW_CONDITION_1;
    *why = "the glass breaks";
    if (strict) return GW_FAIL;
    if (b->laminated)
        *why = "the glass cracks; what a laminated pane holds afterwards is not calculated: ask for a test";
    if (b->laminated) return GW_NOT_SHOWN;
    if (!admits_break(asked)) return GW_FAIL;
    *why = "the glass breaks; the hazard of its fragments is not calculated: ask for a test";
    return GW_NOT_SHOWN;
}

static enum gw_verdict whole(const char **why, const struct gw_blasted *b)
{
    *why = "the glass does not break";
    if (!b->inner_alone) return GW_PASS;
    *why = "the inner pane, taking the whole load by itself, does not break";
    if (!(b->passed_on > 1)) return GW_PASS;
    *why = "the outer panes are lighter than the inner one and can pass on more impulse than it takes alone: ask for "
           "a test";
    return GW_NOT_SHOWN;
}

static void by_calculation(struct gw_finding *f, struct gw_judging *j, const struct gw_lite_type *type)
{
    const struct gw_blasted *b = blasted(j, f->demand, type);
    const char *why;
    gw_used_merge(&f->used, &b->used);
    if (b->fault) {
        gw_unanswered(f, b->fault);
        return;
    }
    f->verdict = b->response.breaks ? broken(&why, b, j->model->project.site->blast) : whole(&why, b);
    f->evidence = GW_BY_CALCULATION;
    f->required = b->response.equivalent;
    f->provided = b->capacity;
    f->utilisation = b->response.use;
    f->message =
        gw_format(j->model->arena,
                  "no blast rating; one lite by calculation, up to the first break: %s: %s; "
                  "strength %s by %s; %s",
                  why, deflection_text(j, b), gw_judge_say(j, GW_PRESSURE, b->capacity), b->governing, CAUTION);
}

static void derive_blast(struct gw_judging *j)
{
    struct gw_blast_pair load;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, j->trace);
    find_blast(&load, j, &engine);
}

void gw_settle_blast(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_lite_type *type = e->lite ? gw_model_lite(j->model, e->lite) : NULL;
    (void)check;
    if (j->trace) derive_blast(j);
    if (best_rating(f, j, GW_TEST_BLAST, weigh_blast)) return;
    if (type && type->layers.n) by_calculation(f, j, type);
    else
        gw_unanswered(f, "no blast rating, and which glass is in it? Ask the maker for a test (ASTM F1642), the "
                         "architect for the glass (lites: layers)");
}
