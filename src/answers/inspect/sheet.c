/* What to measure where: every item that such a wall has, its limit where most is carried, how many to look at. */
#include "answers/inspect/inspect_internal.h"
#include "judge/line.h"
#include "judge/sealed.h"
#include "tables_data.h"

#include <string.h>

struct drawing_up {
    struct gw_inspection_sheet *out;
    struct gw_inspecting in;                /* of no readings: for what is hung where */
    struct gw_spots *spots[GW_ON_WALL + 1]; /* of one wall, by what an item stands on; NULL: not yet searched */
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
        return gw_sealed_edges(ask, g);
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
    else if (row->item->on == GW_ON_WALL) row->how_many = GW_PLAINLY("first bay, then a share");
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

/* Limits --------------------------------------------------------------------------------------------------------- */

/* A fresh reading of that value alone. False: it is met, or that is not known. */
static bool is_condemned(struct gw_item_result *out, struct gw_inspecting *in, const struct gw_sheet_place *place,
                         double value)
{
    struct gw_ask *ask = in->ask;
    const struct gw_engine own = ask->engine;
    const struct gw_system *on_offer = ask->system;
    struct gw_as_read read;
    if (!gw_given(value)) return false;
    gw_as_read_clear(&read);
    read.of[place->item->id].number = value;
    read.torque_age = 0;
    gw_item_judge(out, ask, place->item, &place->spot, &read,
                  gw_hung_at(in, gw_spot_element(&place->spot, place->item->on)));
    gw_unchoose(in);
    ask->engine = own;
    ask->system = on_offer;
    gw_used_merge(&ask->engine.used, &out->used);
    return out->verdict == GW_ITEM_NOT_MET;
}

/* A limit that is not met by its own value orders what an inspection then condemns: by the graver of its ends. */
static void judge_limit(struct gw_sheet_place *place, struct gw_inspecting *in)
{
    const double ends[] = {place->limit.at_least, place->limit.at_most};
    struct gw_arena *arena = in->ask->arena;
    struct gw_item_result worse = {.verdict = GW_ITEM_WITHIN}, result;
    double at = GW_ABSENT;
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        if (!is_condemned(&result, in, place, ends[i])) continue;
        if (gw_given(at) && !gw_item_graver(&result, &worse)) continue;
        worse = result;
        at = ends[i];
    }
    if (!gw_given(at)) return;
    const struct gw_value shown = gw_item_shown(place->item->id, (struct gw_item_value){at, 0});
    const struct gw_message by =
        worse.mechanism
            ? GW_SAY(arena, "at {} {} has {} of what it needs, {} required", shown, gw_of_text(worse.mechanism),
                     gw_of_number(worse.remaining_worst, 3), gw_of_number(worse.required, 3))
            : GW_SAY(arena, "at {} it is not met", shown);
    place->condemns = gw_say_both(arena, &by, ": ", &worse.message);
}

/* What is hung there, and what it is held to; false: it has no such thing. */
static bool set_place(struct gw_sheet_place *out, struct drawing_up *d, const struct gw_item *item,
                      const struct gw_spot *spot)
{
    struct gw_ask *ask = d->in.ask;
    struct gw_text words;
    const char *without = gw_item_without(item, ask, gw_hung_at(&d->in, gw_spot_element(spot, item->on)));
    gw_unchoose(&d->in);
    if (without) return false;
    gw_text_init(&words, ask->arena);
    gw_spot_say(&words, spot);
    *out = (struct gw_sheet_place){.item = item, .place = words.at, .spot = *spot};
    gw_inspect_limit(&out->limit, &d->in, item, spot);
    out->held_to = gw_limit_by_tape(ask->arena, item, &out->limit);
    judge_limit(out, &d->in);
    return true;
}

/* Places --------------------------------------------------------------------------------------------------------- */

static bool is_known(const struct drawing_up *d, size_t first, const struct gw_spot *spot)
{
    for (size_t i = first; i < d->out->places.n; i++) {
        const struct gw_spot *other = &d->out->places.items[i].spot;
        if (other->grid == spot->grid && other->across == spot->across && other->up == spot->up &&
            other->upright == spot->upright)
            return true;
    }
    return false;
}

static void add_place(struct drawing_up *d, size_t first, const struct gw_item *item, const struct gw_spot *spot)
{
    struct gw_sheet_place place;
    if (is_known(d, first, spot) || !set_place(&place, d, item, spot)) return;
    d->out->places.items = gw_grow(d->in.ask->arena, d->out->places.items, d->out->places.n, &d->places, sizeof place);
    d->out->places.items[d->out->places.n++] = place;
}

/* Where a plan chooses for itself: of each of its places on the wall where most is carried. */
static void add_chosen(struct drawing_up *d, size_t first, const struct gw_item *item, const char *wall)
{
    const struct gw_plan_places *places = d->in.planned ? d->in.planned->plan.places : NULL;
    struct gw_spot spot = gw_spot_on(wall);
    struct gw_spots each;
    struct gw_message why;
    if (!places || !gw_spot_each(&each, &spot, &why, d->in.ask, item->on)) return;
    for (size_t p = 0; p < places->n; p++) {
        const struct gw_carrying *most = NULL;
        for (size_t i = 0; i < each.n; i++) {
            const struct gw_element *e = gw_spot_element(&each.items[i].spot, item->on);
            if (e && places->of[e->index] == p && (!most || each.items[i].load > most->load)) most = &each.items[i];
        }
        if (most) add_place(d, first, item, &most->spot);
    }
}

/* By a tape two limits may be one. */
static bool reads_alike(struct gw_arena *arena, const struct gw_message *a, const struct gw_message *b)
{
    return strcmp(gw_message_text(arena, a, GW_US), gw_message_text(arena, b, GW_US)) == 0 &&
           strcmp(gw_message_text(arena, a, GW_SI), gw_message_text(arena, b, GW_SI)) == 0;
}

static bool is_other(struct gw_arena *arena, const struct gw_sheet_place *a, const struct gw_sheet_place *b)
{
    return a->limit.basis != b->limit.basis || !reads_alike(arena, &a->held_to, &b->held_to) ||
           gw_said(&a->condemns) != gw_said(&b->condemns);
}

/* Strictest and widest ----------------------------------------------------------------------------------------- */

/* How wide a limit is, to be compared within one item's; infinite: it has none. */
static double width_of(const struct gw_item_limit *l)
{
    const bool low = gw_given(l->at_least), high = gw_given(l->at_most);
    if (low && high) return l->at_most - l->at_least;
    return high ? l->at_most : low ? -l->at_least : (double)INFINITY;
}

static const struct gw_spots *spots_of(struct drawing_up *d, const char *wall, enum gw_item_on on)
{
    struct gw_spots *known = d->spots[on];
    struct gw_message why;
    struct gw_spot spot = gw_spot_on(wall);
    if (known) return known;
    known = d->spots[on] = gw_alloc(d->in.ask->arena, 1, sizeof *known);
    if (!gw_spot_each(known, &spot, &why, d->in.ask, on)) known->n = 0;
    return known;
}

/* "up to 1/8 in", "down to 1 in", "3/4 to 1 1/2 in" */
static struct gw_message wide_words(struct gw_arena *arena, const struct gw_item *item, const struct gw_item_limit *l)
{
    const bool low = gw_given(l->at_least), high = gw_given(l->at_most);
    if (!low && !high) return GW_PLAINLY("none is stated");
    if (low && high) return gw_limit_by_tape(arena, item, l);
    return high ? GW_SAY(arena, "up to {}", gw_item_limit_shown(item->id, l->at_most, -GW_BY_TAPE))
                : GW_SAY(arena, "down to {}", gw_item_limit_shown(item->id, l->at_least, GW_BY_TAPE));
}

/* Among all that the wall has of it, which may be none of the places at which to begin. */
static void find_strictest(struct drawing_up *d, struct gw_sheet_item *row)
{
    const struct gw_spots *spots = spots_of(d, row->wall, row->item->on);
    const struct gw_spot *strict = NULL;
    struct gw_item_limit limit, widest = row->most.limit;
    double least = width_of(&row->most.limit), most = least;
    row->strictest = row->most;
    for (size_t i = 0; i < spots->n; i++) {
        const struct gw_spot *spot = &spots->items[i].spot;
        if (gw_item_without(row->item, d->in.ask, gw_hung_at(&d->in, gw_spot_element(spot, row->item->on)))) continue;
        gw_inspect_limit(&limit, &d->in, row->item, spot);
        const double width = width_of(&limit);
        if (width > most + GW_HAIR * fabs(most)) most = width, widest = limit;
        if (width < least - GW_HAIR * fabs(least)) least = width, strict = spot;
    }
    gw_unchoose(&d->in);
    if (strict) set_place(&row->strictest, d, row->item, strict);
    const struct gw_message wide = gw_limit_by_tape(d->in.ask->arena, row->item, &widest);
    const struct gw_message strictest = wide_words(d->in.ask->arena, row->item, &row->strictest.limit),
                            elsewhere = wide_words(d->in.ask->arena, row->item, &widest);
    if (!gw_message_same(&wide, &row->strictest.held_to) && !reads_alike(d->in.ask->arena, &elsewhere, &strictest))
        row->elsewhere = elsewhere;
}

/* By type of lite ------------------------------------------------------------------------------------------------ */

static const char *type_of(const struct gw_spot *spot)
{
    return !spot->lite ? NULL : spot->lite->lite ? spot->lite->lite : spot->lite->mark;
}

static bool lists(const char *types, const char *type)
{
    const size_t n = strlen(type);
    for (const char *at = strstr(types, type); at; at = strstr(at + 1, type))
        if ((at == types || at[-1] == ' ') && (!at[n] || at[n] == ',')) return true;
    return false;
}

/* False: that type has two limits. */
static bool take_type(struct drawing_up *d, struct gw_sheet_item *row, const struct gw_sheet_place *place,
                      size_t *capacity)
{
    const char *type = type_of(&place->spot);
    struct gw_arena *arena = d->in.ask->arena;
    struct gw_sheet_types *alike = NULL;
    if (!type) return false;
    for (size_t i = 0; i < row->types.n; i++) {
        struct gw_sheet_types *own = &row->types.items[i];
        const bool same = !is_other(arena, place, &own->first);
        if (lists(own->lites, type)) return same;
        if (same) alike = own;
    }
    if (alike) {
        alike->lites = gw_format(arena, "%s, %s", alike->lites, type);
        return true;
    }
    row->types.items = gw_grow(arena, row->types.items, row->types.n, capacity, sizeof *row->types.items);
    row->types.items[row->types.n++] = (struct gw_sheet_types){type, *place};
    return true;
}

/* What is thick is no stricter than what is thin: a limit that hangs on the type of lite is said of each. */
static void find_types(struct drawing_up *d, struct gw_sheet_item *row, size_t first)
{
    const enum gw_item_on on = row->item->on;
    size_t capacity = 0;
    if (on != GW_ON_LITE && on != GW_ON_EDGE && on != GW_ON_POCKET) return;
    const struct gw_spots *spots = spots_of(d, row->wall, on);
    for (size_t i = 0; i < spots->n; i++) {
        struct gw_sheet_place place;
        if (!set_place(&place, d, row->item, &spots->items[i].spot)) continue;
        if (take_type(d, row, &place, &capacity)) continue;
        row->types.n = 0;
        return;
    }
    if (row->types.n < 2) row->types.n = 0;
    for (size_t i = 0; i < row->types.n; i++) add_place(d, first, row->item, &row->types.items[i].first.spot);
}

/* Where most is carried; then the worst of the edge strips, and of the middle; then those of a plan. */
static void add_places(struct drawing_up *d, struct gw_sheet_item *row)
{
    static const int zones[] = {5, 4};
    const size_t first = d->out->places.n;
    struct gw_arena *arena = d->in.ask->arena;
    struct gw_spot spot;
    struct gw_message why;
    size_t capacity = 0;
    add_place(d, first, row->item, &row->most.spot);
    for (size_t i = 0; i < sizeof zones / sizeof *zones && row->places; i++)
        if (gw_spot_worst(&spot, &why, d->in.ask, row->wall, zones[i], row->item->on))
            add_place(d, first, row->item, &spot);
    add_chosen(d, first, row->item, row->wall);
    if (d->out->places.n == first) return;
    row->most = d->out->places.items[first];
    find_strictest(d, row);
    add_place(d, first, row->item, &row->strictest.spot);
    find_types(d, row, first);
    for (size_t i = first + 1; i < d->out->places.n; i++) {
        const struct gw_sheet_place *place = &d->out->places.items[i];
        if (!is_other(arena, place, &row->most)) continue;
        row->other.items = gw_grow(arena, row->other.items, row->other.n, &capacity, sizeof *place);
        row->other.items[row->other.n++] = *place;
    }
}

static void add_item(struct drawing_up *d, const struct gw_wall_grid *g, const struct gw_item *item)
{
    struct gw_sheet_item row = {.item = item, .wall = g->wall};
    struct gw_inspection_sheet *out = d->out;
    struct gw_ask *ask = d->in.ask;
    struct gw_message why;
    const size_t before = out->places.n;
    row.places = g->opening ? openings_of(ask->takeoff, g->wall, item->on) : places_of(ask, g, item->on);
    if (!gw_spot_worst(&row.most.spot, &why, ask, g->wall, 0, item->on)) return;
    add_places(d, &row);
    if (out->places.n == before) return;
    how_many(&row, ask);
    out->items.items = gw_grow(ask->arena, out->items.items, out->items.n, &d->items, sizeof *out->items.items);
    out->items.items[out->items.n++] = row;
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
        memset(d.spots, 0, sizeof d.spots);
        for (int stage = 0; stage < GW_STAGE_COUNT; stage++)
            for (size_t i = 0; i < n; i++)
                if ((int)items[i]->stage == stage) add_item(&d, g, items[i]);
    }
    out->used = ask->engine.used;
}
