/* Like elements counted together: a hash table from what makes them alike to the group. */
#include "takeoff_internal.h"

#include <stdlib.h>
#include <string.h>

struct gw_slot {
    struct gw_group_key key;
    size_t group; /* index + 1; 0: free */
};

/* Columns met by a group, as "1-2, 23-24". */
struct gw_column_run {
    struct gw_text text;
    long first, last;
};

static long long micrometers(double m)
{
    enum { PER_METER = 1000000 };
    return gw_given(m) ? llround(m * PER_METER) : 0;
}

static struct gw_group_key key_of(const struct gw_element *e)
{
    struct gw_group_key key;
    memset(&key, 0, sizeof key);
    key.wall = e->wall;
    key.mark = e->mark;
    key.lite = e->lite;
    key.width = micrometers(e->width);
    key.height = micrometers(e->height);
    key.bottom = micrometers(e->bottom);
    key.top = micrometers(e->top);
    key.span = micrometers(e->span);
    key.pane = micrometers(e->pane);
    key.kind = (int)e->kind;
    key.zone = e->zone;
    key.spans = e->spans;
    key.overhang = e->overhang;
    key.parapet = e->parapet;
    key.place_unknown = e->place_unknown;
    key.corner = e->corner;
    return key;
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

static bool same_key(const struct gw_group_key *a, const struct gw_group_key *b)
{
    return a->width == b->width && a->height == b->height && a->bottom == b->bottom && a->top == b->top &&
           a->span == b->span && a->pane == b->pane && a->corner == b->corner && a->kind == b->kind &&
           a->zone == b->zone && a->spans == b->spans && a->overhang == b->overhang && a->parapet == b->parapet &&
           a->place_unknown == b->place_unknown && same_text(a->wall, b->wall) && same_text(a->mark, b->mark) &&
           same_text(a->lite, b->lite);
}

static size_t hash_text(size_t h, const char *text)
{
    for (; text && *text; text++) h = (h ^ (unsigned char)*text) * 1099511628211u;
    return h;
}

static size_t hash_key(const struct gw_group_key *key)
{
    const long long numbers[] = {key->width, key->height, key->bottom, key->top,
                                 key->span,  key->kind,   key->zone,   key->parapet};
    size_t h = hash_text(hash_text(1469598103934665603u, key->wall), key->mark);
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        h = (h ^ (size_t)numbers[i]) * 1099511628211u;
        h ^= h >> 29;
    }
    return h;
}

static struct gw_slot *find_slot(struct gw_builder *b, const struct gw_group_key *key)
{
    size_t i = hash_key(key) & (b->n_slots - 1);
    while (b->slots[i].group && !same_key(&b->slots[i].key, key)) i = (i + 1) & (b->n_slots - 1);
    return &b->slots[i];
}

static void make_room(struct gw_builder *b)
{
    if (b->n_slots && b->takeoff->elements.n * 2 < b->n_slots) return;
    struct gw_slot *old = b->slots;
    size_t n = b->n_slots;
    b->n_slots = n ? n * 2 : 256;
    b->slots = gw_alloc(b->arena, b->n_slots, sizeof *b->slots);
    for (size_t i = 0; i < n; i++)
        if (old[i].group) *find_slot(b, &old[i].key) = old[i];
}

static const char *new_id(struct gw_builder *b, const struct gw_element *e)
{
    size_t number = 1;
    for (size_t i = b->takeoff->elements.n; i-- > 0;) {
        const struct gw_element *other = &b->takeoff->elements.items[i];
        if (other->kind != e->kind || strcmp(other->wall, e->wall) != 0) continue;
        number = (size_t)strtoul(strrchr(other->id, '/') + 1, NULL, 10) + 1;
        break;
    }
    return gw_format(b->arena, "%s/%s/%zu", e->wall, gw_kind_names[e->kind], number);
}

static const struct gw_wall_lines *lines_of(struct gw_builder *b)
{
    const struct gw_grid *g = b->grid;
    if (b->lines) return b->lines;
    struct gw_wall_lines *lines = gw_alloc(b->arena, 1, sizeof *lines);
    *lines = (struct gw_wall_lines){.anchors = g->anchors,
                                    .splices = g->splices,
                                    .levels = g->levels,
                                    .n_anchors = g->n_anchors,
                                    .n_splices = g->n_splices,
                                    .n_levels = g->n_levels,
                                    .floors = g->floors,
                                    .n_floors = g->n_floors,
                                    .bottom = g->bottom,
                                    .top = g->top,
                                    .roof = g->roof};
    return b->lines = lines;
}

static size_t new_group(struct gw_builder *b, const struct gw_element *e)
{
    struct gw_takeoff *t = b->takeoff;
    t->elements.items = gw_grow(b->arena, t->elements.items, t->elements.n, &t->capacity, sizeof *t->elements.items);
    b->runs = gw_grow(b->arena, b->runs, t->elements.n, &b->runs_capacity, sizeof *b->runs);
    struct gw_element *group = &t->elements.items[t->elements.n];
    *group = *e;
    group->count = 0;
    group->id = new_id(b, e);
    group->columns = "";
    group->lines = lines_of(b);
    gw_element_pressures(b, group);
    b->runs[t->elements.n] = (struct gw_column_run){.first = 0};
    gw_text_init(&b->runs[t->elements.n].text, b->arena);
    return t->elements.n++;
}

static void close_run(struct gw_column_run *run)
{
    if (!run->first) return;
    const char *comma = run->text.length ? ", " : "";
    if (run->first == run->last) gw_text_addf(&run->text, "%s%ld", comma, run->first);
    else gw_text_addf(&run->text, "%s%ld-%ld", comma, run->first, run->last);
    run->first = 0;
}

static void note_column(struct gw_column_run *run, long column)
{
    if (!column) return;
    if (run->first && column == run->last + 1) {
        run->last = column;
        return;
    }
    close_run(run);
    run->first = run->last = column;
}

void gw_group_add(struct gw_builder *b, const struct gw_element *e, long count, long column)
{
    struct gw_group_key key = key_of(e);
    make_room(b);
    struct gw_slot *slot = find_slot(b, &key);
    if (!slot->group) {
        size_t group = new_group(b, e);
        *slot = (struct gw_slot){key, group + 1};
    }
    struct gw_element *group = &b->takeoff->elements.items[slot->group - 1];
    group->count += count * b->grid->multiplicity;
    if (gw_given(e->corner_distance) && !(group->corner_distance <= e->corner_distance))
        group->corner_distance = e->corner_distance;
    note_column(&b->runs[slot->group - 1], column);
}

void gw_group_finish(struct gw_builder *b)
{
    for (size_t i = 0; i < b->takeoff->elements.n; i++) {
        close_run(&b->runs[i]);
        if (b->runs[i].text.length) b->takeoff->elements.items[i].columns = b->runs[i].text.at;
    }
}
