/* What no single field can tell: names that must exist, sums that must come out, orders. */
#include "model_internal.h"

#include "tables_data.h"

#include <string.h>

bool gw_same_length(double a, double b)
{
    const double hair = 1e-5; /* m */
    return fabs(a - b) < hair;
}

const char *gw_shown(struct gw_model *model, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, model->arena);
    enum gw_units shown = model->project.units ? model->project.units : GW_US;
    gw_quantity_print(&text, gw_units_standard(), dim, shown, si);
    return text.at;
}

const char *gw_feet(struct gw_model *model, double si) { return gw_shown(model, GW_LENGTH, si); }

const struct gw_node *gw_at_key(const struct gw_node *node, const char *key)
{
    const struct gw_node *found = gw_node_get(node, key);
    return found ? found : node;
}

#define FAULT_AT(model, place, key, ...) gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, place, __VA_ARGS__)
#define FAULT(model, node, key, ...) FAULT_AT(model, gw_at_key(node, key), key, __VA_ARGS__)

static const struct gw_node *item_at(const struct gw_node *list, size_t i)
{
    const struct gw_node *item = list->first;
    for (; item && i; i--) item = item->next;
    return item ? item : list;
}

/* Was anything already said of the value or its key? What follows from a fault is no second fault. */
static bool is_faulty(const struct gw_model *model, const struct gw_node *node)
{
    for (size_t i = 0; i < model->diags->n; i++) {
        const struct gw_diag *d = &model->diags->items[i];
        if (d->severity != GW_ERROR || d->source != node->source) continue;
        bool value = d->line == node->line && d->column >= node->column && d->column <= node->column + node->length;
        bool key = node->key && d->line == node->key_line && d->column == node->key_column;
        if (value || key) return true;
    }
    return false;
}

bool gw_holds_fault(const struct gw_model *model, const struct gw_node *node)
{
    if (is_faulty(model, node)) return true;
    for (const struct gw_node *child = node->first; child; child = child->next)
        if (gw_holds_fault(model, child)) return true;
    return false;
}

/* Then what seems to be missing may only be misspelled. */
bool gw_has_unknown_key(const struct gw_model *model, const struct gw_node *mapping)
{
    for (size_t i = 0; i < model->diags->n; i++) {
        const struct gw_diag *d = &model->diags->items[i];
        if (strcmp(d->code, "unknown_key") != 0 || d->source != mapping->source) continue;
        for (const struct gw_node *child = mapping->first; child; child = child->next)
            if (child->key && child->key_line == d->line && child->key_column == d->column) return true;
    }
    return false;
}

static const char *building_names(struct gw_model *model)
{
    struct gw_text text;
    gw_text_init(&text, model->arena);
    gw_text_add(&text, "");
    for (size_t i = 0; i < model->project.buildings.n; i++) {
        const char *name = model->project.buildings.items[i].name;
        if (name) gw_text_addf(&text, "%s%s", text.length ? ", " : "", name);
    }
    return text.at;
}

void gw_check_building(struct gw_model *model, const struct gw_node *node, const char *name)
{
    const struct gw_project *p = &model->project;
    const struct gw_node *list = gw_node_get(p->node, "buildings");
    if (!node || gw_model_building(model, name) || !list || !p->buildings.n) return;
    if (!name) {
        if (!gw_node_get(node, "building"))
            gw_diag_node(model->diags, GW_ERROR, "missing", "building", node,
                         "'building' is missing, and there is more than one: %s", building_names(model));
        return;
    }
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, name);
    for (size_t i = 0; i < p->buildings.n; i++) {
        if (!p->buildings.items[i].name) return; /* it may be the one that is meant */
        gw_nearest_offer(&nearest, p->buildings.items[i].name);
    }
    FAULT(model, node, "building", "there is no building '%s'%s", name, gw_nearest_question(model->arena, &nearest));
}

void gw_check_lite(struct gw_model *model, const struct gw_node *node, const char *name)
{
    const struct gw_node *lites = gw_node_get(model->project.node, "lites");
    bool unread = lites ? lites->kind != GW_MAPPING : gw_has_unknown_key(model, model->project.node);
    if (!node || !name || unread || gw_model_lite(model, name)) return;
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, name);
    for (size_t i = 0; i < model->project.lites.n; i++) gw_nearest_offer(&nearest, model->project.lites.items[i].name);
    FAULT(model, node, "lite", "there is no lite type '%s' under 'lites'%s", name,
          gw_nearest_question(model->arena, &nearest));
}

static void check_columns(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_columns *c = wall->columns;
    const struct gw_node *node = gw_node_get(wall->node, "columns");
    if (!c || gw_holds_fault(model, node)) return;
    bool count = c->count != GW_NO_INTEGER, width = gw_given(c->width), list = c->widths.n > 0;
    if (count != width || count == list) {
        FAULT(model, wall->node, "columns", "'columns' wants count and width, or a list of widths");
        return;
    }
    double sum = count ? c->count * c->width : 0;
    for (size_t i = 0; i < c->widths.n; i++) sum += c->widths.items[i];
    if (gw_given(sum) && gw_given(wall->width) && !gw_same_length(sum, wall->width))
        FAULT(model, wall->node, "columns", "the columns add up to %s, the wall is %s wide", gw_feet(model, sum),
              gw_feet(model, wall->width));
}

static void check_rising(struct gw_model *model, const struct gw_wall *wall, const char *key, const double *levels,
                         size_t n)
{
    const struct gw_node *list = gw_node_get(wall->node, key);
    const bool heights = n > 1 && gw_same_length(levels[1], levels[0]) && gw_same_length(levels[n - 1], levels[0]);
    if (heights) {
        FAULT_AT(model, item_at(list, 1), key,
                 "'%s' must rise: these look like heights of stories; give levels above ground: [0 ft, %s, %s]", key,
                 gw_feet(model, levels[0]), gw_feet(model, 2 * levels[0]));
        return;
    }
    for (size_t i = 1; i < n; i++)
        if (levels[i] <= levels[i - 1])
            FAULT_AT(model, item_at(list, i), key, "'%s' must rise: %s comes after %s", key, gw_feet(model, levels[i]),
                     gw_feet(model, levels[i - 1]));
}

static void check_inside(struct gw_model *model, const struct gw_wall *wall, const char *key, const double *levels,
                         size_t n)
{
    const struct gw_node *list = gw_node_get(wall->node, key);
    double lowest = wall->floors.n ? wall->floors.items[0] : GW_ABSENT;
    if (!gw_given(lowest) || !gw_given(wall->top)) return;
    for (size_t i = 0; i < n; i++)
        if (levels[i] > wall->top || levels[i] < lowest)
            FAULT_AT(model, item_at(list, i), key, "%s lies outside the wall, which runs from %s to %s",
                     gw_feet(model, levels[i]), gw_feet(model, lowest), gw_feet(model, wall->top));
}

static void check_anchors(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_node *list = gw_node_get(wall->node, "anchors");
    const size_t n = wall->anchors.n;
    double *levels = gw_alloc(model->arena, n + 1, sizeof *levels);
    size_t told = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_wall_anchor *a = &wall->anchors.items[i];
        const struct gw_node *node = item_at(list, i), *said = gw_node_get(node, "carries");
        levels[i] = a->at;
        told += said != NULL;
        if (said && !gw_anchor_carries(a, GW_ANCHOR_WIND) && !gw_holds_fault(model, node))
            FAULT(model, node, "carries", "an anchor of a mullion holds it against wind: [wind] or [wind, dead]");
    }
    for (size_t i = 0; i < n && told; i++)
        if (!gw_node_get(item_at(list, i), "carries"))
            FAULT_AT(model, item_at(list, i), "carries", "say of every anchor of the wall what it carries, or of none");
    check_rising(model, wall, "anchors", levels, n);
    check_inside(model, wall, "anchors", levels, n);
}

static void check_levels(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_node *floors = gw_node_get(wall->node, "floors");
    size_t n = wall->floors.n;
    if (!n && floors && floors->kind == GW_SEQUENCE) FAULT(model, wall->node, "floors", "'floors' is empty");
    if (n && wall->floors.items[n - 1] >= wall->top)
        FAULT(model, wall->node, "top", "the top, %s, must lie above the last floor, %s", gw_feet(model, wall->top),
              gw_feet(model, wall->floors.items[n - 1]));
    check_rising(model, wall, "floors", wall->floors.items, n);
    check_anchors(model, wall);
    check_rising(model, wall, "splices", wall->splices.items, wall->splices.n);
    check_inside(model, wall, "splices", wall->splices.items, wall->splices.n);
}

/* False when the rows do not fill the floor. */
static bool check_story(struct gw_model *model, const struct gw_story *story, const struct gw_node *place, double floor,
                        double height)
{
    double sum = 0;
    size_t rest = 0, errors = model->diags->errors;
    for (size_t i = 0; i < story->rows.n; i++) {
        const struct gw_row_spec *row = &story->rows.items[i];
        rest += row->rest;
        sum += row->rest ? 0 : row->node ? row->height : GW_ABSENT;
    }
    if (rest > 1) FAULT_AT(model, place, "rows", "only one row of a floor can take the rest");
    if (!gw_given(sum) || !(height > 0)) return rest <= 1;
    if (rest == 0 && !gw_same_length(sum, height))
        FAULT_AT(model, place, "rows",
                 "the rows add up to %s, but the floor at %s is %s high; one row can be 'height: rest'",
                 gw_feet(model, sum), gw_feet(model, floor), gw_feet(model, height));
    if (rest == 1 && (sum > height || gw_same_length(sum, height)))
        FAULT_AT(model, place, "rows",
                 "the rows leave nothing for the rest: they add up to %s, the floor at %s is %s high",
                 gw_feet(model, sum), gw_feet(model, floor), gw_feet(model, height));
    return model->diags->errors == errors;
}

/* One list of rows serves every floor, or each floor has its own. A list that fits no floor is reported once. */
static void check_rows(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_node *node = gw_node_get(wall->node, "rows");
    size_t floors = wall->floors.n, lists = wall->rows.n;
    if (!node || node->kind != GW_SEQUENCE) return;
    for (size_t s = 0; s < lists; s++)
        for (size_t i = 0; i < wall->rows.items[s].rows.n; i++)
            gw_check_lite(model, wall->rows.items[s].rows.items[i].node, wall->rows.items[s].rows.items[i].lite);
    if (!lists) FAULT(model, wall->node, "rows", "'rows' is empty");
    if (lists > 1 && floors && lists != floors)
        FAULT(model, wall->node, "rows", "%zu lists of rows for %zu floors", lists, floors);
    bool nested = node->first && node->first->kind == GW_SEQUENCE, good = lists == 1 || lists == floors;
    for (size_t f = 0; f < floors && (good || lists == floors); f++) {
        double bottom = wall->floors.items[f], top = f + 1 < floors ? wall->floors.items[f + 1] : wall->top;
        size_t list = lists == 1 ? 0 : f;
        good = check_story(model, &wall->rows.items[list], nested ? item_at(node, list) : node, bottom, top - bottom);
    }
}

static void check_height(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_building *b = gw_model_building(model, wall->building);
    if (!b || !b->name || !(wall->top > b->roof_height) || gw_same_length(wall->top, b->roof_height)) return;
    if (b->node && gw_holds_fault(model, b->node)) return;
    bool parapet = gw_given(b->parapet_height);
    double highest = b->roof_height + b->parapet_height;
    if (!parapet && !gw_node_get(b->node, "parapet_height"))
        FAULT(model, wall->node, "top",
              "the wall rises to %s, above the roof of '%s', %s: give the building a parapet_height, or the wall "
              "another building",
              gw_feet(model, wall->top), b->name, gw_feet(model, b->roof_height));
    if (parapet && wall->top > highest && !gw_same_length(wall->top, highest))
        FAULT(model, wall->node, "top", "the wall rises to %s, above the parapet of '%s', %s",
              gw_feet(model, wall->top), b->name, gw_feet(model, highest));
}

static const char SCREWS[] =
    "screws: {} on center, but of a system that says its own spacing (common practice, no source)";
static const char COUNTED_SCREWS[] =
    "screws: {} on center in the take-off's counts; every candidate says its own spacing (common practice, no source)";

void gw_settle_screws(struct gw_model *model)
{
    bool own = model->systems.n > 0;
    for (size_t i = 0; own && i < model->systems.n; i++) {
        const struct gw_screw_spec *screw = model->systems.items[i].screw;
        own = screw && gw_given(screw->spacing);
    }
    for (size_t i = 0; own && i < model->assumptions.n; i++)
        if (model->assumptions.items[i].text.format == SCREWS) model->assumptions.items[i].text.format = COUNTED_SCREWS;
}

static void check_wall(struct gw_model *model, const struct gw_wall *wall)
{
    if (!wall->node) return;
    gw_check_building(model, wall->node, wall->building);
    check_columns(model, wall);
    gw_check_ends(model, wall->node, wall->ends.items, wall->ends.n);
    gw_check_corners(model, wall);
    check_levels(model, wall);
    check_rows(model, wall);
    check_height(model, wall);
    gw_doubt_wall(model, wall);
    if (!wall->screws && wall->name)
        gw_assume_of_wall(
            model, wall,
            GW_SAY(model->arena, SCREWS,
                   gw_of_quantity(GW_THICKNESS,
                                  model->tables->takeoff_defaults[GW_ROW_TAKEOFF_DEFAULTS_SCREW_SPACING].value_m)));
}

static const char *fault_text(const struct gw_model *model, const struct gw_fault *fault)
{
    return gw_fault_text(model->arena, fault, model->project.units);
}

static const char *thickness_text(struct gw_model *model, double si)
{
    const struct gw_message m = GW_SAY(model->arena, "{}", gw_of_quantity(GW_THICKNESS, si));
    return gw_message_text(model->arena, &m, GW_SI);
}

/* Strength goes by the standard's least thickness of a nominal one: of another thickness nothing is shown. */
static void warn_thickness(struct gw_model *model, const struct gw_node *node, const struct gw_layer *layers, size_t n)
{
    struct gw_engine engine;
    double least;
    gw_engine_init(&engine, model->tables, NULL);
    for (size_t i = 0; i < n; i++)
        if (gw_given(layers[i].glass) && gw_glass_minimum(&least, layers[i].glass, &engine) != GW_OK)
            gw_diag_node(model->diags, GW_WARNING, "no_nominal_thickness", "layers", item_at(node, i),
                         "glass of %s: %s", thickness_text(model, layers[i].glass), fault_text(model, &engine.fault));
}

void gw_check_layers(struct gw_model *model, const struct gw_node *node, const struct gw_layer *layers, size_t n)
{
    struct gw_engine engine;
    struct gw_make_up make_up;
    size_t at = 0;
    if (!node || !n || gw_holds_fault(model, node)) return;
    gw_engine_init(&engine, model->tables, NULL);
    if (gw_layers_check(&at, layers, n, &engine) != GW_OK) {
        FAULT_AT(model, item_at(node, at), "layers", "%s", fault_text(model, &engine.fault));
        return;
    }
    if (gw_make_up_from(&make_up, layers, n, &engine) == GW_OUTSIDE_METHOD)
        FAULT_AT(model, node, "layers", "%s", fault_text(model, &engine.fault));
    warn_thickness(model, node, layers, n);
}

static void check_layers(struct gw_model *model, const struct gw_lite_type *lite)
{
    gw_check_layers(model, gw_node_get(lite->node, "layers"), lite->layers.items, lite->layers.n);
}

static void check_lite_type(struct gw_model *model, struct gw_lite_type *type)
{
    check_layers(model, type);
    gw_validate_alternatives(model, type);
    for (size_t i = 0; i < type->alternatives.n; i++)
        if (type->alternatives.items[i].as) check_layers(model, type->alternatives.items[i].as);
}

static void check_air(struct gw_model *model, const struct gw_air_state *state, const struct gw_node *place,
                      const char *key)
{
    struct gw_engine engine;
    struct gw_air air;
    gw_engine_init(&engine, model->tables, NULL);
    if (!gw_holds_fault(model, place) && gw_air_from(&air, state, key, &engine) != GW_OK)
        FAULT_AT(model, place, key, "%s", fault_text(model, &engine.fault));
}

static void check_glass_rules(struct gw_model *model)
{
    const struct gw_glass_rules *rules = model->project.glass;
    if (!rules) return;
    const struct gw_node *service = gw_at_key(rules->node, "service");
    if (!rules->sealing != !rules->service.n)
        FAULT(model, rules->node, rules->sealing ? "sealing" : "service",
              "'%s' without '%s': climatic load wants both, the air where units are sealed and where they hang",
              rules->sealing ? "sealing" : "service", rules->sealing ? "service" : "sealing");
    if (rules->sealing) check_air(model, rules->sealing, gw_at_key(rules->node, "sealing"), "sealing");
    for (size_t i = 0; i < rules->service.n; i++)
        check_air(model, &rules->service.items[i], service->kind == GW_SEQUENCE ? item_at(service, i) : service,
                  "service");
}

static bool same_name(const char *a, const char *b) { return a && b && strcmp(a, b) == 0; }

static void check_volume(struct gw_model *model, const struct gw_building *b)
{
    if (!b->node || b->enclosure != GW_PARTIALLY_ENCLOSED ||
        gw_given(b->internal_volume) == gw_given(b->opening_area) || gw_holds_fault(model, b->node))
        return;
    const char *given = gw_given(b->internal_volume) ? "internal_volume" : "opening_area";
    const char *absent = gw_given(b->internal_volume) ? "opening_area" : "internal_volume";
    gw_diag_node(model->diags, GW_ERROR, "missing", absent, gw_at_key(b->node, given),
                 "'%s' is missing beside '%s': the large-volume reduction needs both", absent, given);
}

static void check_names(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->buildings.n; i++)
        if (p->buildings.items[i].name &&
            gw_model_building(model, p->buildings.items[i].name) != &p->buildings.items[i])
            FAULT(model, p->buildings.items[i].node, "name", "two buildings are named '%s'",
                  p->buildings.items[i].name);
    for (size_t i = 0; i < p->walls.n; i++)
        for (size_t j = 0; j < i; j++)
            if (same_name(p->walls.items[i].name, p->walls.items[j].name))
                FAULT(model, p->walls.items[i].node, "name", "two walls are named '%s'", p->walls.items[i].name);
}

/* Faces of openings alone share their names with walls. */
static void check_elevations(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->elevations.n; i++) {
        const struct gw_elevation_spec *e = &p->elevations.items[i];
        bool twice = false;
        if (!e->node) continue;
        gw_check_building(model, e->node, e->building);
        gw_check_ends(model, e->node, e->ends.items, e->ends.n);
        gw_check_openings_ends(model, e->node, e->ends.items, e->ends.n);
        for (size_t k = 0; k < p->walls.n; k++) twice = twice || same_name(p->walls.items[k].name, e->name);
        for (size_t k = 0; k < i; k++) twice = twice || same_name(p->elevations.items[k].name, e->name);
        if (twice) FAULT(model, e->node, "name", "two walls or elevations are named '%s'", e->name);
    }
}

static void check_requirements(struct gw_model *model)
{
    const struct gw_requirements *r = model->project.requirements;
    if (!r) return;
    for (size_t i = 0; i < r->other.n; i++) {
        const struct gw_other_requirement *o = &r->other.items[i];
        if (!o->node || !o->name || gw_given(o->at_least) || gw_given(o->at_most) || gw_holds_fault(model, o->node))
            continue;
        gw_diag_node(model->diags, GW_ERROR, "missing", "at_least", o->node, "'%s' wants at_least or at_most", o->name);
    }
    const struct gw_water_requirement *w = r->water;
    if (w && w->floor > w->cap)
        FAULT(model, gw_node_get(gw_node_get(model->project.node, "requirements"), "water"), "floor",
              "the water floor lies above its cap");
}

void gw_validate_project(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    gw_correct_tables(model);
    gw_settle_project(model);
    check_names(model);
    const struct gw_node *buildings = gw_node_get(p->node, "buildings");
    if (!p->buildings.n && buildings && buildings->kind == GW_SEQUENCE)
        FAULT(model, p->node, "buildings", "'buildings' is empty");
    for (size_t i = 0; i < p->buildings.n; i++) check_volume(model, &p->buildings.items[i]);
    for (size_t i = 0; i < p->lites.n; i++) check_lite_type(model, &p->lites.items[i]);
    check_glass_rules(model);
    for (size_t i = 0; i < p->walls.n; i++) check_wall(model, &p->walls.items[i]);
    check_elevations(model);
    gw_validate_given(model);
    for (size_t i = 0; i < p->wind_tunnel.n; i++)
        if (p->wind_tunnel.items[i].building)
            gw_check_building(model, p->wind_tunnel.items[i].node, p->wind_tunnel.items[i].building);
    check_requirements(model);
    gw_validate_site(model);
    gw_assume_conventions(model);
    const struct gw_node *walls = gw_node_get(p->node, "walls");
    if (!p->walls.n && !p->openings && (walls ? walls->kind == GW_SEQUENCE : !gw_has_unknown_key(model, p->node)))
        gw_diag_node(model->diags, GW_ERROR, "missing", "walls", p->node,
                     "nothing to check: give 'walls', 'openings' or both");
}
