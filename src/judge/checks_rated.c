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

static bool same_component(const struct gw_rating *rating, enum gw_component component)
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
        if (strong && same_component(r, e->component) && !*shortfall_of(j, r, e))
            return r->report ? r->report : "the structural test";
    }
    return NULL;
}

struct gw_offer gw_offer_structural(const struct gw_judging *j, const struct gw_rating *rating,
                                    const struct gw_demand *demand)
{
    struct gw_offer offer = {.value = rating->positive, .value_out = rating->negative, .why = ""};
    const struct gw_element *e = demand->element;
    offer.applies = rating->test == GW_TEST_STRUCTURAL && same_component(rating, e->component);
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

static const struct gw_water_basis *water_row(const struct gw_model *model, enum gw_water_rule basis)
{
    for (size_t i = 0; i < GW_N_WATER_BASIS; i++)
        if (model->tables->water_basis[i].class == (int)basis) return &model->tables->water_basis[i];
    return NULL;
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
    enum gw_water_rule basis = w && w->basis ? w->basis : GW_WATER_CURTAIN_WALL;
    const struct gw_water_basis *row = water_row(j->model, basis);
    double share = w && gw_given(w->share) ? w->share : row->share;
    double floor = w && gw_given(w->floor) ? w->floor : row->floor_pa;
    double cap = w && gw_given(w->cap) ? w->cap : row->cap_pa;
    double shared = share * place->wall->greatest_inward;
    gw_used_merge(&out->used, &place->wall->used);
    gw_used_add(&out->used, &row->row);
    out->value = fmin(fmax(shared, floor), cap);
    const char *governs = out->value < shared ? "the cap governs"
                          : shared < floor    ? "the floor governs"
                                              : "the share governs";
    struct gw_text percent;
    gw_text_init(&percent, j->model->arena);
    gw_text_fixed(&percent, share * 100, 0);
    out->message =
        gw_format(j->model->arena, "%s %% of the greatest inward pressure, %s; floor %s, cap %s: %s (basis %s)",
                  percent.at, gw_judge_say(j, GW_PRESSURE, shared), gw_judge_say(j, GW_PRESSURE, floor),
                  gw_judge_say(j, GW_PRESSURE, cap), governs, gw_choice_name(gw_water_basis_choices, (int)basis));
}

struct gw_offer gw_offer_water(const struct gw_judging *j, const struct gw_rating *rating,
                               const struct gw_demand *demand)
{
    (void)j;
    bool applies = rating->test == GW_TEST_WATER && same_component(rating, demand->component);
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

/* Leakage grows with pressure: a test at the higher pressure also shows the lower, never the other way round. */
struct gw_offer gw_offer_air(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_demand *demand)
{
    const double hair = 0.005; /* 6.24 psf and 300 Pa are the same test */
    struct gw_offer offer = {.applies = rating->test == GW_TEST_AIR && same_component(rating, demand->component),
                             .value = rating->leakage,
                             .value_out = GW_ABSENT,
                             .why = ""};
    if (!offer.applies) return offer;
    bool harder = rating->at > demand->at * (1 + hair);
    if (harder && rating->leakage > demand->value) {
        offer.why = gw_format(j->model->arena,
                              "tested at %s, above the required %s, where it leaks more than the limit; ask for the "
                              "result at the required pressure",
                              gw_judge_say(j, GW_PRESSURE, rating->at), gw_judge_say(j, GW_PRESSURE, demand->at));
        return offer;
    }
    bool leaks_already = rating->leakage > demand->value; /* at a lower pressure: more still at the required one */
    offer.covers = rating->at >= demand->at * (1 - hair) || leaks_already;
    if (offer.covers) return offer;
    double exponent = j->model->tables->air_conversion[GW_ROW_AIR_CONVERSION_TYPICAL].exponent;
    double carried = rating->leakage * pow(demand->at / rating->at, exponent);
    offer.why =
        gw_format(j->model->arena,
                  "tested at %s, required at %s: a lower pressure does not show it (about %s there, for information)",
                  gw_judge_say(j, GW_PRESSURE, rating->at), gw_judge_say(j, GW_PRESSURE, demand->at),
                  gw_judge_say(j, GW_LEAKAGE, carried));
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
