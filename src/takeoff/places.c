/* From places to elements, from elements to their neighbors and their pieces. */
#include "takeoff_internal.h"

#include <string.h>

struct search {
    const struct gw_takeoff *takeoff;
    const char *name;
};

static bool has_id(const void *context, size_t item)
{
    const struct search *s = context;
    return strcmp(s->takeoff->elements.items[item].id, s->name) == 0;
}

const struct gw_element *gw_takeoff_find(const struct gw_takeoff *takeoff, const char *id)
{
    size_t item;
    const struct search s = {takeoff, id};
    return gw_index_find(&item, &takeoff->ids, gw_hash_text(1, id), has_id, &s) ? &takeoff->elements.items[item] : NULL;
}

static bool has_name(const void *context, size_t item)
{
    const struct search *s = context;
    return strcmp(s->takeoff->grids.items[item]->wall, s->name) == 0;
}

const struct gw_wall_grid *gw_takeoff_wall(const struct gw_takeoff *takeoff, const char *wall)
{
    size_t item;
    const struct search s = {takeoff, wall};
    return gw_index_find(&item, &takeoff->walls, gw_hash_text(1, wall), has_name, &s) ? takeoff->grids.items[item]
                                                                                      : NULL;
}

/* Places ------------------------------------------------------------------------------------------------------------
 */

static const struct gw_element *element_of(const struct gw_takeoff *t, const struct gw_grid_layer *layer, size_t strip,
                                           size_t place_class)
{
    return &t->elements.items[layer->groups[strip * layer->axis->n_classes + place_class]];
}

static const struct gw_element *member_at(const struct gw_takeoff *t, const struct gw_wall_grid *g, enum gw_sort sort,
                                          size_t member, size_t place)
{
    const struct gw_grid_layer *layer = &g->layers[sort];
    const size_t strip = member + (layer->cut && member > layer->cut_member);
    return element_of(t, layer, strip, layer->axis->class_of[place]);
}

const struct gw_element *gw_takeoff_member(const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                                           enum gw_sort sort, size_t member, size_t place)
{
    return member_at(takeoff, grid, sort, member, place);
}

/* Finds the row of lites of a place, from 0; false: there is no such place. */
static bool row_at(size_t *row, const struct gw_wall_grid *g, int column, int story, int number)
{
    if (!g || column < 1 || (size_t)column > g->n_columns || story < 1 || (size_t)story > g->n_stories || number < 1)
        return false;
    *row = g->rows_below[story - 1] + (size_t)number - 1;
    return *row < g->rows_below[story];
}

const struct gw_element *gw_takeoff_at(const struct gw_takeoff *takeoff, const char *wall, int column, int story,
                                       int row)
{
    size_t at;
    const struct gw_wall_grid *g = gw_takeoff_wall(takeoff, wall);
    if (!row_at(&at, g, column, story, row)) return NULL;
    return member_at(takeoff, g, GW_SORT_LITE, at, (size_t)column - 1);
}

const struct gw_element *gw_takeoff_edge(const struct gw_takeoff *takeoff, const char *wall, int column, int story,
                                         int row, enum gw_edge edge, bool screws)
{
    size_t at;
    const struct gw_wall_grid *g = gw_takeoff_wall(takeoff, wall);
    if (!row_at(&at, g, column, story, row)) return NULL;
    const size_t place = (size_t)column - 1, line = edge == GW_EDGE_RIGHT ? place + 1 : place;
    if (edge == GW_EDGE_HEAD || edge == GW_EDGE_SILL)
        return member_at(takeoff, g, screws ? GW_SORT_TRANSOM_SCREW : GW_SORT_TRANSOM, at + (edge == GW_EDGE_HEAD),
                         place);
    if (screws) return member_at(takeoff, g, GW_SORT_MULLION_SCREW, at, line);
    return gw_takeoff_held(takeoff, g, GW_SORT_MULLION, line, (g->lines.levels[at] + g->lines.levels[at + 1]) / 2);
}

const struct gw_element *gw_takeoff_held(const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                                         enum gw_sort sort, size_t place, double height)
{
    const struct gw_grid_layer *layer = &grid->layers[sort];
    size_t low = 0, high = layer->n_strips; /* the last strip that begins not above the height */
    if (place >= layer->axis->n_places || !(height >= grid->lines.bottom && height <= grid->lines.top)) return NULL;
    while (high - low > 1) {
        const size_t middle = (low + high) / 2;
        if (layer->strips[middle].bottom <= height) low = middle;
        else high = middle;
    }
    return element_of(takeoff, layer, low, layer->axis->class_of[place]);
}

/* Neighbors ---------------------------------------------------------------------------------------------------------
 */

static const struct gw_grid_layer *layer_of(const struct gw_element *e) { return &e->grid->layers[e->sort]; }

size_t gw_takeoff_stack(const struct gw_element *element) { return layer_of(element)->n_strips; }

const struct gw_element *gw_takeoff_stacked(const struct gw_takeoff *takeoff, const struct gw_element *element,
                                            size_t i)
{
    return element_of(takeoff, layer_of(element), i, element->place_class);
}

const struct gw_element *gw_takeoff_other_part(const struct gw_takeoff *takeoff, const struct gw_element *element)
{
    const struct gw_grid_layer *layer = layer_of(element);
    if (!layer->cut || layer->strips[element->strip].member != layer->cut_member) return NULL;
    return gw_takeoff_stacked(takeoff, element, element->parapet ? element->strip - 1 : element->strip + 1);
}

const struct gw_element *gw_takeoff_across_roof(const struct gw_takeoff *takeoff, const struct gw_element *element)
{
    const struct gw_grid_layer *layer = layer_of(element);
    if (element->parapet) return layer->n_below ? gw_takeoff_stacked(takeoff, element, layer->n_below - 1) : NULL;
    return layer->n_below < layer->n_strips ? gw_takeoff_stacked(takeoff, element, layer->n_below) : NULL;
}

/* Pieces ------------------------------------------------------------------------------------------------------------
 */

struct gw_pieces gw_takeoff_pieces(const struct gw_takeoff *takeoff, const struct gw_element *element)
{
    bool of_wall = element->index < takeoff->n_wall_elements;
    return (struct gw_pieces){element,
                              of_wall ? NULL : takeoff->openings[element->index - takeoff->n_wall_elements].head, 0};
}

static double run_of(const struct gw_rectangle *r, const struct gw_element *screws)
{
    return screws->sort == GW_SORT_TRANSOM_SCREW ? r->width : r->height;
}

/* In the element's own grid; openings counted together are of one size. What a screw carries is a part of its run. */
static void set_extent(struct gw_rectangle *r, const struct gw_element *e, size_t place)
{
    const struct gw_wall_grid *g = e->grid;
    bool lines = layer_of(e)->axis->lines;
    const double from = lines ? gw_line_from(g, place) : g->x[place],
                 to = lines ? gw_line_to(g, place) : g->x[place + 1];
    r->place = place;
    r->x = from;
    r->y = e->bottom;
    r->width = to - from;
    r->height = e->top - e->bottom;
    r->count = e->sort == GW_SORT_MULLION_SCREW   ? gw_screws_of_vertical(layer_of(e), e->strip, e->height)
               : e->sort == GW_SORT_TRANSOM_SCREW ? gw_screws_on(r->width, e->height, GW_ABSENT)
                                                  : 1;
}

static bool next_of_wall(struct gw_pieces *pieces, struct gw_rectangle *out)
{
    const struct gw_element *e = pieces->element;
    const struct gw_grid_layer *layer = layer_of(e);
    const size_t at = layer->axis->first[e->place_class] + pieces->at++;
    if (at >= layer->axis->first[e->place_class + 1]) return false;
    *out = (struct gw_rectangle){
        .placed = true, .story = layer->strips[e->strip].story, .row = layer->strips[e->strip].row};
    set_extent(out, e, layer->axis->members[at]);
    return true;
}

static bool next_of_opening(struct gw_pieces *pieces, struct gw_rectangle *out)
{
    const struct gw_element *e = pieces->element;
    const struct gw_grid_axis *axis = layer_of(e)->axis;
    for (; pieces->link; pieces->link = pieces->link->next, pieces->at = 0) {
        const struct gw_opening *o = pieces->link->opening;
        while (pieces->at < axis->n_places && !(pieces->link->places >> pieces->at & 1)) pieces->at++;
        if (pieces->at == axis->n_places) continue;
        *out = (struct gw_rectangle){.placed = gw_given(o->sill) && gw_given(o->offset), .opening = o};
        set_extent(out, e, pieces->at++);
        out->count *= o->count;
        out->x = out->placed ? out->x + o->offset : GW_ABSENT;
        out->y = out->placed ? out->y : GW_ABSENT;
        return true;
    }
    return false;
}

bool gw_pieces_next(struct gw_pieces *pieces, struct gw_rectangle *out)
{
    return pieces->element->grid->opening ? next_of_opening(pieces, out) : next_of_wall(pieces, out);
}

long gw_takeoff_screws(const struct gw_takeoff *takeoff, const struct gw_element *element, double spacing,
                       double end_distance)
{
    struct gw_pieces pieces = gw_takeoff_pieces(takeoff, element);
    struct gw_rectangle r;
    long n = 0;
    if (element->parapet && gw_takeoff_other_part(takeoff, element)) return 0;
    /* One run, counted with the part below. */
    const double beyond =
                     element->sort == GW_SORT_MULLION_SCREW ? gw_beyond_roof(layer_of(element), element->strip) : 0,
                 apart = gw_given(spacing) && !element->grid->screws_given ? spacing : element->height;
    while (gw_pieces_next(&pieces, &r))
        n += gw_screws_on(run_of(&r, element) + beyond, apart, 2 * end_distance) * (r.opening ? r.opening->count : 1);
    return n;
}
