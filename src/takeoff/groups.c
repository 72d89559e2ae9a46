/* Groups into the list. Of a wall each class in each strip is a group of its own; openings of a schedule that are alike
 * are counted together, by a hash index from what makes them alike. */
#include "takeoff_internal.h"

#include <string.h>

/* What makes elements of two openings alike; lengths in micrometers so that equal ones compare equal. */
struct group_key {
    const char *wall, *mark, *lite;
    long long width, height, bottom, top, elevation, span, pane;
    int kind, zone, spans;
    bool overhang, parapet, place_unknown, height_unknown, corner;
};

long long gw_micrometers(double m)
{
    enum { PER_METER = 1000000 };
    return gw_given(m) ? llround(m * PER_METER) : 0;
}

const char *gw_opening_mark(const struct gw_element *element)
{
    return element->grid && element->grid->opening ? element->mark : NULL;
}

static struct group_key key_of(const struct gw_element *e)
{
    return (struct group_key){.wall = e->wall,
                              .mark = e->mark,
                              .lite = e->lite,
                              .width = gw_micrometers(e->width),
                              .height = gw_micrometers(e->height),
                              .bottom = gw_micrometers(e->bottom),
                              .top = gw_micrometers(e->top),
                              .elevation = gw_micrometers(e->elevation),
                              .span = gw_micrometers(e->span),
                              .pane = gw_micrometers(e->pane),
                              .kind = (int)e->kind,
                              .zone = e->zone,
                              .spans = e->spans,
                              .overhang = e->overhang,
                              .parapet = e->parapet,
                              .place_unknown = e->place_unknown,
                              .height_unknown = e->height_unknown,
                              .corner = e->corner};
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

static bool same_key(const struct group_key *a, const struct group_key *b)
{
    return a->width == b->width && a->height == b->height && a->bottom == b->bottom && a->top == b->top &&
           a->elevation == b->elevation && a->span == b->span && a->pane == b->pane && a->corner == b->corner &&
           a->kind == b->kind && a->zone == b->zone && a->spans == b->spans && a->overhang == b->overhang &&
           a->parapet == b->parapet && a->place_unknown == b->place_unknown && a->height_unknown == b->height_unknown &&
           same_text(a->wall, b->wall) && same_text(a->mark, b->mark) && same_text(a->lite, b->lite);
}

static unsigned hash_key(const struct group_key *key)
{
    const long long numbers[] = {key->width, key->height, key->bottom, key->top,
                                 key->span,  key->kind,   key->zone,   key->place_unknown};
    unsigned h = gw_hash_text(gw_hash_text(1, key->wall), key->mark);
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) h = gw_hash_number(h, numbers[i]);
    return h;
}

struct wanted {
    const struct gw_takeoff *takeoff;
    const struct group_key *key;
};

static bool is_group(const void *context, size_t item)
{
    const struct wanted *w = context;
    const struct group_key key = key_of(&w->takeoff->elements.items[item]);
    return same_key(&key, w->key);
}

static size_t new_group(struct gw_builder *b, const struct gw_element *e)
{
    struct gw_takeoff *t = b->takeoff;
    t->elements.items = gw_grow(b->arena, t->elements.items, t->elements.n, &t->capacity, sizeof *t->elements.items);
    struct gw_element *group = &t->elements.items[t->elements.n];
    *group = *e;
    group->count = 0;
    group->index = t->elements.n;
    group->id = gw_format(b->arena, "%s/%s/%zu", e->wall, gw_kind_names[e->kind],
                          ++b->numbers.items[b->room->grid.elevation].n[e->kind]);
    b->room->claimed = true;
    gw_element_pressures(b, group);
    return t->elements.n++;
}

static size_t new_opening_group(struct gw_builder *b, const struct gw_element *e, unsigned hash)
{
    struct gw_takeoff *t = b->takeoff;
    const size_t n = t->elements.n - t->n_wall_elements;
    t->openings = gw_grow(b->arena, t->openings, n, &t->openings_capacity, sizeof *t->openings);
    t->openings[n] = (struct gw_opening_links){NULL, NULL};
    gw_index_add(&b->groups, b->arena, hash, t->elements.n);
    return new_group(b, e);
}

static void link_opening(struct gw_builder *b, size_t group, const struct gw_element *e)
{
    const struct gw_grid_axis *axis = b->room->grid.layers[e->sort].axis;
    struct gw_opening_links *links = &b->takeoff->openings[group - b->takeoff->n_wall_elements];
    struct gw_opening_link *link = gw_alloc(b->arena, 1, sizeof *link);
    link->opening = b->opening;
    for (unsigned i = axis->first[e->place_class]; i < axis->first[e->place_class + 1]; i++)
        link->places |= 1u << axis->members[i];
    if (links->tail) links->tail->next = link;
    else links->head = link;
    links->tail = link;
}

static size_t group_of_opening(struct gw_builder *b, const struct gw_element *e)
{
    const struct group_key key = key_of(e);
    const struct wanted wanted = {b->takeoff, &key};
    const unsigned hash = hash_key(&key);
    size_t group;
    if (!gw_index_find(&group, &b->groups, hash, is_group, &wanted)) group = new_opening_group(b, e, hash);
    link_opening(b, group, e);
    return group;
}

void gw_group_add(struct gw_builder *b, const struct gw_element *e, long count)
{
    const size_t at = b->opening ? group_of_opening(b, e) : new_group(b, e);
    struct gw_element *group = &b->takeoff->elements.items[at];
    const struct gw_grid_axis *axis = b->room->grid.layers[e->sort].axis;
    b->room->groups[e->sort][e->strip * axis->n_classes + e->place_class] = (unsigned)at;
    if (e->edge > group->edge) group->edge = e->edge;
    group->count += count * b->room->multiplicity;
    if (gw_given(e->corner_distance) && !(group->corner_distance <= e->corner_distance))
        group->corner_distance = e->corner_distance;
}

void gw_group_finish(struct gw_builder *b)
{
    struct gw_takeoff *t = b->takeoff;
    gw_index_reset(&t->ids, b->arena, t->elements.n);
    for (size_t i = 0; i < t->elements.n; i++)
        gw_index_add(&t->ids, b->arena, gw_hash_text(1, t->elements.items[i].id), i);
    for (size_t i = 0; i < t->differences.n; i++)
        t->differences.items[i].element = &t->elements.items[b->differs.items[i]];
}
