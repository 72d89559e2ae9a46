/* Demands and ratings of the checks that a test report answers. */
#include "judge_internal.h"

#include "tables_data.h"

#include <string.h>

const char *gw_judge_say(const struct gw_judging *j, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    enum gw_units shown = j->model->project.units ? j->model->project.units : GW_US;
    gw_text_number(&text, gw_quantity_shown(gw_units_standard(), dim, shown, si), 4);
    if (*gw_dim_info(dim)->shown[shown]) gw_text_addf(&text, " %s", gw_dim_info(dim)->shown[shown]);
    return text.at;
}

/* A spandrel is glazed like any fixed lite; vents and doors are tested on their own. */
static enum gw_component tested_as(enum gw_component component)
{
    return component == GW_SPANDREL || component == GW_COMPONENT_UNSET ? GW_FIXED : component;
}

bool gw_same_component(const struct gw_rating *rating, enum gw_component component)
{
    return tested_as(rating->component) == tested_as(component);
}

/* Structural ------------------------------------------------------------------------------------------------------- */

void gw_demand_structural(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    out->dim = GW_PRESSURE;
    if (e->outside) {
        out->status = GW_NOT_SHOWN;
        out->message = gw_format(j->model->arena, "%s; ask the structural engineer for the pressure", e->outside);
        return;
    }
    out->value = fmax(e->inward_asd.pa, 0);
    out->value_out = fmax(-e->outward_asd.pa, 0);
    out->message = e->governs;
    gw_used_merge(&out->used, &e->used);
}

struct dimension {
    const char *name;
    double tested, needed;
};

/* The first recorded dimension that is missing or too small; "" when the test reaches the element. */
static const char *shortfall(const struct gw_judging *j, const struct dimension *dimensions, size_t n)
{
    const double hair = 1e-6;
    struct gw_arena *arena = j->model->arena;
    for (size_t i = 0; i < n; i++) {
        const struct dimension *d = &dimensions[i];
        if (!gw_given(d->tested)) return gw_format(arena, "the report records no %s; ask the maker for it", d->name);
        if (d->tested < d->needed - hair)
            return gw_format(arena, "tested %s %s, here %s", d->name, gw_judge_say(j, GW_LENGTH, d->tested),
                             gw_judge_say(j, GW_LENGTH, d->needed));
    }
    return "";
}

static const char *lite_shortfall(const struct gw_judging *j, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"lite width", t->lite_width, e->width}, {"lite height", t->lite_height, e->pane}};
    const char *size = shortfall(j, d, 2);
    if (*size) return size;
    if (t->make_up && e->lite && strcmp(t->make_up, e->lite) != 0)
        return gw_format(j->model->arena, "tested with make-up %s, here %s", t->make_up, e->lite);
    return "";
}

static const char *mullion_shortfall(const struct gw_judging *j, const struct gw_tested *t, const struct gw_element *e)
{
    if (e->parapet)
        return "framing above the roof carries both skins of the parapet: a wall test does not show it; ask for a "
               "calculation";
    if (e->corner) return "a corner mullion takes both faces: a flat specimen does not show it";
    if (e->overhang) {
        const struct dimension d[] = {{"overhang", t->overhang, e->span}, {"module", t->module, e->width}};
        return shortfall(j, d, 2);
    }
    const struct dimension d[] = {{"span", t->span, e->span}, {"module", t->module, e->width}};
    const char *size = shortfall(j, d, 2);
    if (*size || t->spans >= e->spans) return size;
    return gw_format(j->model->arena, "tested over %d span%s, here %d", t->spans, t->spans == 1 ? "" : "s", e->spans);
}

static const char *transom_shortfall(const struct gw_judging *j, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"module", t->module, e->span},
                                  {"lite height", t->lite_height, fmax(e->above, e->below)}};
    const char *size = shortfall(j, d, 2);
    if (*size) return size;
    if (t->make_up && e->rests && strcmp(t->make_up, e->rests->name) != 0)
        return gw_format(j->model->arena, "tested under the weight of make-up %s, here %s", t->make_up, e->rests->name);
    return "";
}

/* A screw carries half a lite on each side, so the lites tested are to be no narrower than what it carries. */
static const char *screw_shortfall(const struct gw_judging *j, const struct gw_tested *t, const struct gw_element *e)
{
    const struct dimension d[] = {{"lite width", t->lite_width, e->width}, {"lite height", t->lite_height, e->width}};
    return shortfall(j, d, 2);
}

const char *gw_lite_shortfall(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_element *e)
{
    if (!rating->tested) return "the report's tested dimensions are not given; ask the maker for them";
    return lite_shortfall(j, rating->tested, e);
}

static const char *shortfall_of(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_element *e)
{
    if (!rating->tested) return "the report's tested dimensions are not given; ask the maker for them";
    switch (e->kind) {
    case GW_LITE:
        return lite_shortfall(j, rating->tested, e);
    case GW_MULLION:
        return mullion_shortfall(j, rating->tested, e);
    case GW_TRANSOM:
        return transom_shortfall(j, rating->tested, e);
    case GW_SCREW:
        return screw_shortfall(j, rating->tested, e);
    case GW_ANCHOR:
    case GW_KIND_COUNT:
        break;
    }
    return "a laboratory holds the specimen by anchors of its own";
}

const char *gw_test_that_covers(const struct gw_judging *j, const struct gw_system *system,
                                const struct gw_demand *demand)
{
    const struct gw_element *e = demand->element;
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_rating *r = &system->ratings.items[i];
        bool strong = r->test == GW_TEST_STRUCTURAL && r->positive >= demand->value && r->negative >= demand->value_out;
        if (strong && gw_same_component(r, e->component) && !*shortfall_of(j, r, e))
            return r->report ? r->report : "the structural test";
    }
    return NULL;
}

struct gw_offer gw_offer_structural(const struct gw_judging *j, const struct gw_rating *rating,
                                    const struct gw_demand *demand)
{
    struct gw_offer offer = {.value = rating->positive, .value_out = rating->negative, .why = ""};
    const struct gw_element *e = demand->element;
    offer.applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, e->component);
    if (!offer.applies) return offer;
    offer.why = shortfall_of(j, rating, e);
    offer.covers = !*offer.why;
    offer.foreign = e->corner || (e->parapet && e->kind == GW_MULLION);
    if (offer.covers && e->kind == GW_LITE && !rating->tested->make_up)
        offer.why = "provided that the tested make-up, reinforcement and fastening are like the project's: the "
                    "report's make-up is not recorded";
    return offer;
}

/* Water ------------------------------------------------------------------------------------------------------------ */

static struct gw_water_case water_case(const struct gw_water_requirement *w, const struct gw_judged_wall *wall)
{
    return (struct gw_water_case){.positive = {wall->greatest_inward},
                                  .basis = w && w->basis ? w->basis : GW_WATER_CURTAIN_WALL,
                                  .region = GW_WATER_US,
                                  .share = w ? w->share : GW_ABSENT,
                                  .floor = w ? w->floor : GW_ABSENT,
                                  .cap = w ? w->cap : GW_ABSENT};
}

static const char *water_message(const struct gw_judging *j, const struct gw_water_result *water,
                                 enum gw_water_rule basis)
{
    static const char *const governs[] = {[GW_WATER_GOVERNS_UNSET] = "",
                                          [GW_BY_SHARE] = "the share governs",
                                          [GW_BY_FLOOR] = "the floor governs",
                                          [GW_BY_CAP] = "the cap governs"};
    struct gw_text percent;
    gw_text_init(&percent, j->model->arena);
    gw_text_fixed(&percent, water->share * 100, 0);
    return gw_format(j->model->arena, "%s %% of the greatest inward pressure, %s; floor %s, cap %s: %s (basis %s)",
                     percent.at, gw_judge_say(j, GW_PRESSURE, water->shared),
                     gw_judge_say(j, GW_PRESSURE, water->floor), gw_judge_say(j, GW_PRESSURE, water->cap),
                     governs[water->governs], gw_choice_name(gw_water_basis_choices, (int)basis));
}

void gw_demand_water(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    const struct gw_requirements *r = j->model->project.requirements;
    const struct gw_water_requirement *w = r ? r->water : NULL;
    out->dim = GW_PRESSURE;
    if (w && gw_given(w->pressure)) {
        out->value = w->pressure;
        out->message = "required by the project";
        return;
    }
    struct gw_engine engine;
    struct gw_water_result water;
    const struct gw_water_case in = water_case(w, place->wall);
    gw_engine_init(&engine, j->model->tables, NULL);
    if (gw_required_water(&water, &in, &engine)) {
        out->status = GW_NOT_SHOWN;
        out->message = gw_strdup(j->model->arena, engine.fault.message);
        return;
    }
    gw_used_merge(&out->used, &place->wall->used);
    gw_used_merge(&out->used, &engine.used);
    out->value = water.pressure;
    out->message = water_message(j, &water, in.basis);
}

struct gw_offer gw_offer_water(const struct gw_judging *j, const struct gw_rating *rating,
                               const struct gw_demand *demand)
{
    (void)j;
    bool applies = rating->test == GW_TEST_WATER && gw_same_component(rating, demand->component);
    return (struct gw_offer){
        .applies = applies, .covers = true, .value = rating->pressure, .value_out = GW_ABSENT, .why = ""};
}

/* Air -------------------------------------------------------------------------------------------------------------- */

void gw_demand_air(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    const struct gw_requirements *r = j->model->project.requirements;
    (void)place;
    out->dim = GW_LEAKAGE;
    out->at_most = true;
    if (r && r->air) {
        out->value = r->air->leakage;
        out->at = r->air->at;
        out->message =
            gw_format(j->model->arena, "required by the project, at %s", gw_judge_say(j, GW_PRESSURE, out->at));
        return;
    }
    const struct gw_air_default *row = &j->model->tables->air_default[GW_ROW_AIR_DEFAULT_CURTAIN_WALL];
    gw_used_add(&out->used, &row->row);
    out->value = row->leakage_m_s;
    out->at = row->at_pa;
    out->message = gw_format(j->model->arena, "usual limit of fixed curtain wall, at %s; the project gives none",
                             gw_judge_say(j, GW_PRESSURE, out->at));
}

static const char *too_hard(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_demand *demand)
{
    return gw_format(
        j->model->arena,
        "tested at %s, above the required %s, where it leaks more than the limit; ask for the result at the "
        "required pressure",
        gw_judge_say(j, GW_PRESSURE, rating->at), gw_judge_say(j, GW_PRESSURE, demand->at));
}

static const char *too_soft(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_demand *demand,
                            double estimate)
{
    return gw_format(
        j->model->arena,
        "tested at %s, required at %s: a lower pressure does not show it (about %s there, for information)",
        gw_judge_say(j, GW_PRESSURE, rating->at), gw_judge_say(j, GW_PRESSURE, demand->at),
        gw_judge_say(j, GW_LEAKAGE, estimate));
}

struct gw_offer gw_offer_air(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_demand *demand)
{
    struct gw_offer offer = {.applies = rating->test == GW_TEST_AIR && gw_same_component(rating, demand->component),
                             .value = rating->leakage,
                             .value_out = GW_ABSENT,
                             .why = ""};
    if (!offer.applies) return offer;
    struct gw_engine engine;
    double estimate;
    const struct gw_air_claim claim = {rating->leakage, rating->at, demand->value, demand->at};
    gw_engine_init(&engine, j->model->tables, NULL);
    enum gw_air_evidence evidence = gw_air_shows(&estimate, &claim, &engine);
    offer.covers = evidence == GW_AIR_SHOWS;
    if (evidence == GW_AIR_TOO_HARD) offer.why = too_hard(j, rating, demand);
    if (evidence == GW_AIR_TOO_SOFT) offer.why = too_soft(j, rating, demand, estimate);
    return offer;
}

/* Free-form ratings by name -----------------------------------------------------------------------------------------
 */

void gw_demand_other(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    (void)j;
    out->at_most = gw_given(place->other->at_most);
    out->value = out->at_most ? place->other->at_most : place->other->at_least;
    out->dim = GW_RATIO;
    out->name = place->other->name;
    out->message = gw_format(j->model->arena, "required by the project: %s", out->at_most ? "at most" : "at least");
}

struct gw_offer gw_offer_other(const struct gw_judging *j, const struct gw_rating *rating,
                               const struct gw_demand *demand)
{
    (void)j;
    bool named = rating->name && strcmp(rating->name, demand->name) == 0 &&
                 (rating->test == GW_TEST_OTHER || rating->test == GW_TEST_UNSET);
    return (struct gw_offer){
        .applies = named, .covers = true, .value = rating->value, .value_out = GW_ABSENT, .why = ""};
}

/* Mock-up
 * -------------------------------------------------------------------------------------------------------------- */

/* The story drift that the structural engineer gives, for the tallest story; absent: no racking in the sequence. */
static double racking(const struct gw_judging *j)
{
    const struct gw_seismic *s = j->model->project.site->seismic;
    double tallest = GW_ABSENT;
    struct gw_engine engine;
    if (!s || s->category == GW_SDC_A) return GW_ABSENT;
    for (size_t i = 0; i < j->takeoff->elements.n; i++)
        tallest = fmax(tallest, gw_story_height(j, &j->takeoff->elements.items[i])); /* leaves out absent ones */
    gw_engine_init(&engine, j->model->tables, NULL);
    return gw_given(s->story_drift) ? s->story_drift : gw_drift_of_ratio(s->story_drift_ratio, tallest, &engine);
}

static void set_requirements(struct gw_sequence_case *in, const struct gw_requirements *r)
{
    if (r && r->water) {
        in->water = r->water->pressure;
        if (r->water->basis) in->basis = r->water->basis;
    }
    if (!r || !r->air) return;
    in->air_leakage = r->air->leakage;
    in->air_at = r->air->at;
}

/* The greatest pressures of the walls below the roof, on the greatest span. */
void gw_judge_mock_up(struct gw_judging *j)
{
    struct gw_engine engine;
    double span = 0;
    struct gw_sequence_case in = {.basis = GW_WATER_CURTAIN_WALL,
                                  .water = GW_ABSENT,
                                  .air_leakage = GW_ABSENT,
                                  .air_at = GW_ABSENT,
                                  .dynamic = GW_UNSAID,
                                  .thermal = GW_UNSAID,
                                  .story_height = GW_ABSENT};
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        if (e->outside || e->parapet) continue;
        if (e->kind == GW_MULLION && !e->overhang) span = fmax(span, e->span);
        if (e->kind != GW_LITE) continue;
        in.positive.pa = fmax(in.positive.pa, e->inward_asd.pa);
        in.negative.pa = fmax(in.negative.pa, -e->outward_asd.pa);
    }
    in.span = span;
    in.drift = racking(j);
    set_requirements(&in, j->model->project.requirements);
    gw_engine_init(&engine, j->model->tables, NULL);
    if (gw_test_sequence(&j->out->mock_up, &in, &engine) == GW_OK) return;
    j->out->mock_up.n = 0;
    j->out->mock_up_fault = gw_fault_of(j, &engine);
}
