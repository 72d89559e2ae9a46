/* What no single field can tell: names that must exist, sums that must come out, orders. */
#include "model_internal.h"

#include "tables_data.h"

#include <string.h>

enum { MICRON = 1000000 };

static bool same_length(double a, double b)
{
    return fabs(a - b) * MICRON < 10; /* a hundredth of a millimeter */
}

static const char *feet(struct gw_model *model, double si)
{
    struct gw_text text;
    gw_text_init(&text, model->arena);
    enum gw_units shown = model->project.units ? model->project.units : GW_US;
    gw_quantity_print(&text, gw_units_standard(), GW_LENGTH, shown, si);
    return text.at;
}

static const struct gw_node *at_key(const struct gw_node *node, const char *key)
{
    const struct gw_node *found = gw_node_get(node, key);
    return found ? found : node;
}

#define FAULT(model, node, key, ...) gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, at_key(node, key), __VA_ARGS__)

static void check_building(struct gw_model *model, const struct gw_node *node, const char *name)
{
    if (gw_model_building(model, name)) return;
    if (!name)
        gw_diag_node(model->diags, GW_ERROR, "missing", "building", node, "'building' is missing: there are %zu buildings", model->project.buildings.n);
    else
        FAULT(model, node, "building", "there is no building '%s'", name);
}

static void check_lite(struct gw_model *model, const struct gw_node *node, const char *name)
{
    if (gw_model_lite(model, name)) return;
    const char *best = NULL;
    for (size_t i = 0; i < model->project.lites.n && !best; i++)
        if (gw_edit_distance(name, model->project.lites.items[i].name, 2) < 3) best = model->project.lites.items[i].name;
    FAULT(model, node, "lite", "there is no lite type '%s' under 'lites'%s%s%s", name, best ? "; did you mean '" : "", best ? best : "", best ? "'?" : "");
}

static void check_columns(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_columns *c = wall->columns;
    bool counted = c->count != GW_NO_INTEGER && gw_given(c->width);
    if (counted == (c->widths.n > 0) || (!counted && (c->count != GW_NO_INTEGER || gw_given(c->width)))) {
        FAULT(model, wall->node, "columns", "'columns' wants count and width, or a list of widths");
        return;
    }
    double sum = counted ? c->count * c->width : 0;
    for (size_t i = 0; i < c->widths.n; i++) sum += c->widths.items[i];
    if (!same_length(sum, wall->width))
        FAULT(model, wall->node, "columns", "the columns add up to %s, the wall is %s wide", feet(model, sum), feet(model, wall->width));
}

static void check_ends(struct gw_model *model, const struct gw_wall *wall)
{
    if (wall->ends.n != 2) FAULT(model, wall->node, "ends", "'ends' wants two ends, left and right; here are %zu", wall->ends.n);
    for (size_t i = 0; i < wall->ends.n; i++)
        if ((wall->ends.items[i].kind != GW_END_UNSET) == gw_given(wall->ends.items[i].corner_at))
            FAULT(model, wall->node, "ends", "an end is corner, reentrant, none, or {corner_at: 4 ft}");
}

static void check_rising(struct gw_model *model, const struct gw_wall *wall, const char *key, const double *levels, size_t n)
{
    double lowest = wall->floors.n ? wall->floors.items[0] : 0;
    for (size_t i = 0; i < n; i++) {
        bool rises = i == 0 || levels[i] > levels[i - 1];
        if (!rises) FAULT(model, wall->node, key, "'%s' must rise: %s comes after %s", key, feet(model, levels[i]), feet(model, levels[i - 1]));
        if (levels[i] > wall->top || levels[i] < lowest)
            FAULT(model, wall->node, key, "%s lies outside the wall, which runs from %s to %s", feet(model, levels[i]), feet(model, lowest), feet(model, wall->top));
    }
}

static void check_storey(struct gw_model *model, const struct gw_wall *wall, const struct gw_storey *storey, double height)
{
    double sum = 0;
    size_t rest = 0;
    for (size_t i = 0; i < storey->rows.n; i++) {
        const struct gw_row_spec *row = &storey->rows.items[i];
        bool is_rest = isinf(row->height);
        rest += is_rest;
        sum += is_rest ? 0 : row->height;
    }
    if (rest > 1) FAULT(model, wall->node, "rows", "only one row of a floor can take the rest");
    if (rest == 0 && !same_length(sum, height))
        FAULT(model, wall->node, "rows", "the rows add up to %s, the floor is %s high; give one row 'height: rest'", feet(model, sum), feet(model, height));
    if (rest == 1 && (sum > height || same_length(sum, height)))
        FAULT(model, wall->node, "rows", "the rows leave nothing for the rest: they add up to %s of %s", feet(model, sum), feet(model, height));
}

static void check_rows(struct gw_model *model, const struct gw_wall *wall)
{
    size_t floors = wall->floors.n;
    if (wall->rows.n != 1 && wall->rows.n != floors) {
        FAULT(model, wall->node, "rows", "%zu lists of rows for %zu floors", wall->rows.n, floors);
        return;
    }
    for (size_t s = 0; s < wall->rows.n; s++)
        for (size_t i = 0; i < wall->rows.items[s].rows.n; i++)
            check_lite(model, wall->rows.items[s].rows.items[i].node, wall->rows.items[s].rows.items[i].lite);
    for (size_t f = 0; f < floors; f++) {
        double top = f + 1 < floors ? wall->floors.items[f + 1] : wall->top;
        check_storey(model, wall, &wall->rows.items[wall->rows.n == 1 ? 0 : f], top - wall->floors.items[f]);
    }
}

static void check_wall(struct gw_model *model, const struct gw_wall *wall)
{
    size_t errors = model->diags->errors;
    check_building(model, wall->node, wall->building);
    check_columns(model, wall);
    check_ends(model, wall);
    if (!wall->floors.n) FAULT(model, wall->node, "floors", "'floors' is empty");
    if (wall->floors.n && wall->floors.items[wall->floors.n - 1] >= wall->top)
        FAULT(model, wall->node, "top", "the top, %s, must lie above the last floor, %s", feet(model, wall->top), feet(model, wall->floors.items[wall->floors.n - 1]));
    check_rising(model, wall, "floors", wall->floors.items, wall->floors.n);
    check_rising(model, wall, "anchors", wall->anchors.items, wall->anchors.n);
    check_rising(model, wall, "splices", wall->splices.items, wall->splices.n);
    if (model->diags->errors == errors && wall->floors.n) check_rows(model, wall);
    const struct gw_building *b = gw_model_building(model, wall->building);
    if (b && wall->top > b->roof_height && !gw_given(b->parapet_height))
        FAULT(model, wall->node, "top", "the wall rises to %s above the roof of '%s', %s: give the building a parapet_height, or the wall another building",
              feet(model, wall->top), b->name, feet(model, b->roof_height));
    if (b && gw_given(b->parapet_height) && wall->top > b->roof_height + b->parapet_height && !same_length(wall->top, b->roof_height + b->parapet_height))
        FAULT(model, wall->node, "top", "the wall rises to %s, the parapet of '%s' to %s", feet(model, wall->top), b->name, feet(model, b->roof_height + b->parapet_height));
    if (!wall->screws) gw_assume(model->arena, &model->assumptions, gw_format(model->arena, "wall %s", wall->name), "screws: 9 in on center (common practice, no source)");
}

static void check_layers(struct gw_model *model, const struct gw_lite_type *lite)
{
    for (size_t i = 0; i < lite->layers.n; i++) {
        const struct gw_layer *l = &lite->layers.items[i];
        int kinds = gw_given(l->glass) + gw_given(l->cavity) + (l->interlayer != NULL);
        if (kinds != 1) FAULT(model, l->node, "glass", "a layer is glass, a cavity or an interlayer");
    }
}

static void check_names(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->buildings.n; i++)
        if (gw_model_building(model, p->buildings.items[i].name) != &p->buildings.items[i])
            FAULT(model, p->buildings.items[i].node, "name", "two buildings are named '%s'", p->buildings.items[i].name);
    for (size_t i = 0; i < p->walls.n; i++)
        for (size_t j = 0; j < i; j++)
            if (strcmp(p->walls.items[i].name, p->walls.items[j].name) == 0)
                FAULT(model, p->walls.items[i].node, "name", "two walls are named '%s'", p->walls.items[i].name);
}

static void check_requirements(struct gw_model *model)
{
    const struct gw_requirements *r = model->project.requirements;
    if (!r) return;
    for (size_t i = 0; i < r->other.n; i++)
        if (!gw_given(r->other.items[i].at_least) && !gw_given(r->other.items[i].at_most))
            gw_diag_node(model->diags, GW_ERROR, "missing", "at_least", r->other.items[i].node, "'%s' wants at_least or at_most", r->other.items[i].name);
    const struct gw_water_requirement *w = r->water;
    if (w && gw_given(w->floor) && gw_given(w->cap) && w->floor > w->cap)
        FAULT(model, gw_node_get(model->project.node, "requirements"), "water", "the water floor lies above its cap");
}

/* The edition that the building code adopts, unless the file names one. */
static void settle_edition(struct gw_model *model)
{
    const struct gw_codes *codes = model->project.codes;
    if (codes->wind != GW_EDITION_UNSET) return;
    struct gw_codes *settled = gw_alloc(model->arena, 1, sizeof *settled);
    *settled = *codes;
    for (size_t i = 0; i < GW_N_CODE_WIND_EDITION; i++)
        if (model->tables->code_wind_edition[i].code == (int)codes->building) settled->wind = (enum gw_edition)model->tables->code_wind_edition[i].edition;
    model->project.codes = settled;
    gw_assume(model->arena, &model->assumptions, "codes",
              gw_format(model->arena, "wind: %s (adopted by %s)", gw_choice_name(gw_edition_choices, (int)settled->wind), gw_choice_name(gw_building_code_choices, (int)codes->building)));
}

static void assume_site(struct gw_model *model)
{
    const struct gw_site *site = model->project.site;
    if (!gw_given(site->elevation)) gw_assume(model->arena, &model->assumptions, "site", "elevation not given: K_e = 1.0, which is safe above sea level");
    if (!site->topography) gw_assume(model->arena, &model->assumptions, "site", "no topography given: K_zt = 1.0");
    for (size_t i = 0; i < model->project.walls.n; i++)
        for (size_t k = 0; k < model->project.walls.items[i].ends.n; k++)
            if (model->project.walls.items[i].ends.items[k].kind == GW_REENTRANT)
                gw_assume(model->arena, &model->assumptions, gw_format(model->arena, "wall %s", model->project.walls.items[i].name), "no edge strip at the re-entrant end");
}

static void settle_options(struct gw_model *model)
{
    if (model->project.options) return;
    struct gw_options *options = gw_alloc(model->arena, 1, sizeof *options);
    *options = (struct gw_options){GW_QZ_TOP, GW_EDGE_ANY_PART, GW_ANCHOR_AS_MULLION};
    model->project.options = options;
}

void gw_validate_project(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    gw_correct_tables(model);
    settle_edition(model);
    settle_options(model);
    check_names(model);
    if (!p->buildings.n) FAULT(model, p->node, "buildings", "'buildings' is empty");
    for (size_t i = 0; i < p->lites.n; i++) check_layers(model, &p->lites.items[i]);
    for (size_t i = 0; i < p->walls.n; i++) check_wall(model, &p->walls.items[i]);
    for (size_t i = 0; i < p->given.n; i++)
        if (p->given.items[i].building) check_building(model, p->given.items[i].node, p->given.items[i].building);
    for (size_t i = 0; i < p->wind_tunnel.n; i++)
        if (p->wind_tunnel.items[i].building) check_building(model, p->wind_tunnel.items[i].node, p->wind_tunnel.items[i].building);
    check_requirements(model);
    assume_site(model);
    if (!p->walls.n && !p->openings)
        gw_diag_node(model->diags, GW_ERROR, "missing", "walls", p->node, "nothing to check: give 'walls', 'openings' or both");
}

void gw_validate_openings(struct gw_model *model)
{
    for (size_t i = 0; i < model->openings.n; i++) {
        const struct gw_opening *o = &model->openings.items[i];
        check_building(model, o->node, o->building);
        if (o->lite) check_lite(model, o->node, o->lite);
        const struct gw_building *b = gw_model_building(model, o->building);
        if (b && gw_given(o->sill) && o->sill + o->height > b->roof_height && !same_length(o->sill + o->height, b->roof_height))
            FAULT(model, o->node, "sill", "the opening ends at %s, above the roof of '%s', %s", feet(model, o->sill + o->height), b->name, feet(model, b->roof_height));
        if (b && !gw_given(o->sill) && o->height > b->roof_height) FAULT(model, o->node, "height", "the opening is taller than '%s'", b->name);
    }
}

static void want(struct gw_model *model, const struct gw_rating *rating, const char *key, double value)
{
    if (!gw_given(value)) gw_diag_node(model->diags, GW_ERROR, "missing", key, rating->node, "'%s' is missing in this rating", key);
}

void gw_validate_system(struct gw_model *model, const struct gw_system *system)
{
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_rating *r = &system->ratings.items[i];
        if (r->test == GW_TEST_UNSET && !r->name) gw_diag_node(model->diags, GW_ERROR, "missing", "test", r->node, "'test' is missing: which test gave this rating?");
        if (r->test == GW_TEST_AIR) {
            want(model, r, "leakage", r->leakage);
            want(model, r, "at", r->at);
        }
        if (r->test == GW_TEST_WATER) want(model, r, "pressure", r->pressure);
        if (r->test == GW_TEST_OTHER || (r->test == GW_TEST_UNSET && r->name)) want(model, r, "value", r->value);
    }
}
