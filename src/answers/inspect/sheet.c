/* What to measure where: every item that such a wall has, its limit where most is carried, how many to look at. */
#include "answers/inspect/inspect_internal.h"
#include "judge/line.h"
#include "tables_data.h"

#include <string.h>

struct drawing_up {
    struct gw_inspection_sheet *out;
    struct gw_inspecting in; /* of no readings: for what is hung where */
    size_t items, places;
};

/* How many such places a wall has; 0: it is none of elements. */
static long places_of(struct gw_ask *ask, const struct gw_wall_grid *g, enum gw_item_on on)
{
    size_t n;
    const long columns = (long)g->n_columns, rows = (long)g->rows_below[g->n_stories], lines = columns + 1;
    switch (on) {
    case GW_ON_ANCHOR:
        return lines * (long)g->lines.n_anchors;
    case GW_ON_JOINT:
        gw_joints_of(&n, ask, &g->lines);
        return lines * (long)n;
    case GW_ON_MULLION:
        return lines * (long)g->n_stories;
    case GW_ON_HORIZONTAL:
        return columns * (rows + 1);
    case GW_ON_MEMBER:
        return lines * (long)g->n_stories + columns * (rows + 1);
    case GW_ON_LITE:
    case GW_ON_POCKET:
        return columns * rows;
    case GW_ON_EDGE:
        return 4 * columns * rows;
    case GW_ON_SCREWS:
        return lines * rows + columns * (rows + 1);
    case GW_ON_SEALANT:
        return 2 * (columns + rows);
    default:
        return 0;
    }
}

/* The same of the openings of a schedule, each framed on its own. */
static long openings_of(const struct gw_takeoff *t, const char *elevation, enum gw_item_on on)
{
    enum { EDGES = 4, SIDES = 2 };
    long lites = 0, anchors = 0;
    for (size_t i = t->n_wall_elements; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (strcmp(e->wall, elevation) != 0) continue;
        lites += e->kind == GW_LITE ? e->count : 0;
        anchors += e->kind == GW_ANCHOR ? e->count : 0;
    }
    switch (on) {
    case GW_ON_ANCHOR:
        return anchors;
    case GW_ON_MULLION:
    case GW_ON_HORIZONTAL:
        return SIDES * lites;
    case GW_ON_MEMBER:
    case GW_ON_EDGE:
    case GW_ON_SCREWS:
    case GW_ON_SEALANT:
        return EDGES * lites;
    case GW_ON_LITE:
    case GW_ON_POCKET:
        return lites;
    default:
        return 0;
    }
}

/* As many as say, all found good, that fewer than the share of practice are bad. */
static void how_many(struct gw_sheet_item *row, struct gw_ask *ask)
{
    const struct gw_inspection_sample *s = GW_USE(
        &ask->engine, &ask->model->tables->inspection_sample[row->item->hold ? GW_ROW_INSPECTION_SAMPLE_HOLD_POINT
                                                                             : GW_ROW_INSPECTION_SAMPLE_OTHER]);
    const long n = gw_sample_size(s->share, s->confidence);
    if (row->item->on == GW_ON_CREW) row->how_many = GW_PLAINLY("each crew, each day");
    else if (row->item->on == GW_ON_WALL) row->how_many = GW_PLAINLY("first bay, then a share of the wall");
    if (!row->places) return;
    row->sample = n < row->places ? n : row->places;
    row->says = GW_SAY(
        ask->arena, "{} drawn by lot, none of them outside, say with {} % confidence that fewer than {} % of all are",
        gw_of_count(n), gw_of_number(s->confidence * 100, 3), gw_of_number(s->share * 100, 3));
    row->how_many = row->sample == row->places
                        ? GW_SAY(ask->arena, "all {}", gw_of_count(row->places))
                        : GW_SAY(ask->arena, "{} of {}; {}; besides them all of the first lites of each crew",
                                 gw_of_count(row->sample), gw_of_count(row->places), gw_of_message(&row->says));
}

/* A limit that is not met by its own value orders what an inspection then condemns. */
static struct gw_message at_limit(struct gw_ask *ask, const struct gw_sheet_item *row, const struct gw_system *hung,
                                  double value)
{
    const struct gw_engine own = ask->engine;
    const struct gw_system *on_offer = ask->system;
    const struct gw_item_value shown = {value, 0};
    struct gw_item_result result;
    struct gw_as_read read;
    gw_as_read_clear(&read);
    read.of[row->item->id] = shown;
    read.torque_age = 0;
    gw_item_judge(&result, ask, row->item, &row->spot, &read, hung);
    ask->engine = own;
    ask->system = on_offer;
    if (result.verdict != GW_ITEM_NOT_MET) return (struct gw_message){0};
    const struct gw_message by = result.mechanism
                                     ? GW_SAY(ask->arena, "at {} {} has {} of what it needs, {} required",
                                              gw_item_shown(row->item->id, shown), gw_of_text(result.mechanism),
                                              gw_of_number(result.remaining_worst, 3), gw_of_number(result.required, 3))
                                     : GW_SAY(ask->arena, "at {} it is not met", gw_item_shown(row->item->id, shown));
    return gw_say_both(ask->arena, &by, ": ", &result.message);
}

static void judge_limit(struct gw_sheet_item *row, struct gw_ask *ask, const struct gw_system *hung)
{
    const double least = row->limit.at_least, most = row->limit.at_most;
    if (gw_given(least)) row->condemns = at_limit(ask, row, hung, least);
    if (gw_given(most) && !gw_said(&row->condemns)) row->condemns = at_limit(ask, row, hung, most);
}

static void add_place(struct drawing_up *d, const struct gw_sheet_item *row, const struct gw_spot *spot)
{
    struct gw_inspection_sheet *out = d->out;
    struct gw_arena *arena = d->in.ask->arena;
    struct gw_text words;
    for (size_t i = out->places.n; i-- > 0 && out->places.items[i].item == row->item;) {
        const struct gw_spot *other = &out->places.items[i].spot;
        if (other->grid == spot->grid && other->across == spot->across && other->up == spot->up &&
            other->upright == spot->upright)
            return;
    }
    gw_text_init(&words, arena);
    gw_spot_say(&words, spot);
    out->places.items = gw_grow(arena, out->places.items, out->places.n, &d->places, sizeof *out->places.items);
    out->places.items[out->places.n++] = (struct gw_sheet_place){row->item, words.at, *spot, row->limit};
}

/* Where most is carried; then the worst of the edge strips, and of the middle. */
static void add_places(struct drawing_up *d, const struct gw_sheet_item *row)
{
    static const int zones[] = {5, 4};
    struct gw_spot spot;
    struct gw_message why;
    add_place(d, row, &row->spot);
    if (!row->places) return;
    for (size_t i = 0; i < sizeof zones / sizeof *zones; i++)
        if (gw_spot_worst(&spot, &why, d->in.ask, row->wall, zones[i], row->item->on)) add_place(d, row, &spot);
}

static void add_item(struct drawing_up *d, const struct gw_wall_grid *g, const struct gw_item *item)
{
    struct gw_sheet_item row = {.item = item, .wall = g->wall};
    struct gw_inspection_sheet *out = d->out;
    struct gw_ask *ask = d->in.ask;
    struct gw_message why;
    row.places = g->opening ? openings_of(ask->takeoff, g->wall, item->on) : places_of(ask, g, item->on);
    if (!gw_spot_worst(&row.spot, &why, ask, g->wall, 0, item->on)) return;
    const struct gw_element *element = gw_spot_element(&row.spot, item->on);
    const struct gw_system *hung = gw_hung_at(&d->in, element);
    if (gw_item_without(item, ask, hung)) return;
    gw_item_limit_at(&row.limit, ask, item, &row.spot, hung);
    row.held_to = gw_limit_words(ask->arena, item, &row.limit);
    judge_limit(&row, ask, hung);
    how_many(&row, ask);
    out->items.items = gw_grow(ask->arena, out->items.items, out->items.n, &d->items, sizeof *out->items.items);
    out->items.items[out->items.n++] = row;
    add_places(d, &row);
}

void gw_inspection_sheet(struct gw_inspection_sheet *out, struct gw_ask *ask, const struct gw_system *system)
{
    struct drawing_up d = {.out = out};
    struct gw_inspection none = {.system = system};
    size_t n;
    const struct gw_item *const *items = gw_item_list(&n);
    *out = (struct gw_inspection_sheet){.system = system};
    d.in = (struct gw_inspecting){.out = &none, .ask = ask, .planned = gw_planned_of(ask, system)};
    ask->system = system;
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    bool *drawn = gw_alloc(ask->arena, ask->takeoff->n_elevations + 1, sizeof *drawn);
    for (size_t w = 0; w < ask->takeoff->grids.n; w++) {
        const struct gw_wall_grid *g = ask->takeoff->grids.items[w];
        if (drawn[g->elevation]) continue; /* openings of one elevation are of one sheet */
        drawn[g->elevation] = true;
        for (int stage = 0; stage < GW_STAGE_COUNT; stage++)
            for (size_t i = 0; i < n; i++)
                if ((int)items[i]->stage == stage) add_item(&d, g, items[i]);
    }
    out->used = ask->engine.used;
}
