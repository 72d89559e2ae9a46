/* What the readings say of the places that were not looked at. */
#include "answers/inspect/inspect_internal.h"
#include "tables_data.h"

#include <math.h>
#include <string.h>

/* One item of one thing: by its first readings. */
struct place {
    const struct gw_inspected *first;
    bool outside, known, random;
};

bool gw_is_outside(const struct gw_inspected *row)
{
    const int word = row->reading->value.word;
    const bool lost = word && gw_item_kinds[row->item->id].means[word - 1] == GW_WORD_NOT_MET;
    if (row->verdict == GW_ITEM_UNKNOWN && row->result) return gw_is_beyond(row) && !lost;
    return row->verdict == GW_ITEM_OUTSIDE_HOLDS || (row->verdict == GW_ITEM_NOT_MET && !row->elsewhere);
}

bool gw_is_beyond(const struct gw_inspected *row)
{
    const struct gw_item_value v = row->reading->value;
    const double hair = 1e-9 * fabs(v.number);
    if (v.word) {
        const enum gw_word_sense sense = gw_item_kinds[row->item->id].means[v.word - 1];
        return sense == GW_WORD_JUDGED || sense == GW_WORD_NOT_MET;
    }
    return v.number < row->result->limit.at_least - hair || v.number > row->result->limit.at_most + hair;
}

/* The rows of a thing that are of one item and edge make one place. */
static void add_rows(struct gw_inspecting *in, const struct gw_thing *thing, struct place places[][5],
                     struct gw_item_share *shares)
{
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(in, thing, i);
        struct place *p = &places[row->item->id][gw_edge_of_row(row)];
        shares[row->item->id].readings += !row->duplicate_of;
        if (row->again || row->duplicate_of) continue;
        if (!p->first) p->first = row;
        p->random = p->random || row->reading->sample == GW_SAMPLE_RANDOM;
        const bool outside = gw_is_outside(row);
        p->known = p->known || outside || row->verdict != GW_ITEM_UNKNOWN;
        p->outside = p->outside || outside;
    }
}

/* Parts -------------------------------------------------------------------------------------------------------------
 */

struct parts {
    struct gw_part_share *items;
    size_t n, capacity;
};
struct counting {
    struct gw_inspecting *in;
    struct gw_item_share shares[GW_ITEM_COUNT];
    struct place places[GW_ITEM_COUNT][5];
    struct gw_memo names;
    struct parts parts, lines; /* lines: of what is outside alone */
};

static const char *const KINDS[] = {"crew", "date", "wall", "line"};
enum { CREW, DATE, WALL, LINE, N_KINDS };

static void add_part(struct counting *c, struct parts *parts, int kind, const char *name, const struct place *place)
{
    struct gw_arena *arena = c->in->ask->arena;
    if (!name) return;
    const int key[] = {kind, (int)place->first->item->id};
    void **at = gw_memo_named(&c->names, arena, key, sizeof key, name);
    if (!*at) {
        parts->items = gw_grow(arena, parts->items, parts->n, &parts->capacity, sizeof *parts->items);
        parts->items[parts->n++] = (struct gw_part_share){.of = KINDS[kind], .name = name, .item = place->first->item};
        size_t *number = *at = gw_alloc(arena, 1, sizeof *number);
        *number = parts->n;
    }
    struct gw_part_share *part = &parts->items[*(const size_t *)*at - 1];
    part->places++;
    part->outside += place->outside;
}

/* The vertical line or the column of a wall that the place stands on. */
static const char *line_name(struct counting *c, const struct gw_spot *spot)
{
    struct gw_arena *arena = c->in->ask->arena;
    if (spot->worst || !spot->grid) return NULL;
    if (spot->upright && spot->line != GW_NO_INTEGER) return gw_format(arena, "%s, line %d", spot->wall, spot->line);
    return spot->column == GW_NO_INTEGER ? NULL : gw_format(arena, "%s, column %d", spot->wall, spot->column);
}

static void count_place(struct counting *c, const struct place *p)
{
    struct gw_item_share *share = &c->shares[p->first->item->id];
    share->unknown += !p->known;
    if (!p->known) return;
    share->places++;
    share->outside += p->outside;
    share->random += p->random;
    share->random_outside += p->random && p->outside;
    add_part(c, &c->parts, CREW, p->first->reading->by, p);
    add_part(c, &c->parts, DATE, p->first->reading->date, p);
    add_part(c, &c->parts, WALL, p->first->spot.wall, p);
    if (p->outside) add_part(c, &c->lines, LINE, line_name(c, &p->first->spot), p);
}

static void count_thing(struct counting *c, const struct gw_thing *thing)
{
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(c->in, thing, i);
        c->places[row->item->id][gw_edge_of_row(row)] = (struct place){0};
    }
    add_rows(c->in, thing, c->places, c->shares);
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(c->in, thing, i);
        struct place *p = &c->places[row->item->id][gw_edge_of_row(row)];
        if (p->first) count_place(c, p);
        p->first = NULL;
    }
}

/* What follows ------------------------------------------------------------------------------------------------------
 */

/* A crew or a line with more than half of what is outside, of two or more; NULL. */
static const struct gw_part_share *cluster_in(const struct parts *parts, const struct gw_item_share *share)
{
    for (size_t i = 0; share->outside > 1 && i < parts->n; i++) {
        const struct gw_part_share *p = &parts->items[i];
        if (p->item != share->item || p->of == KINDS[DATE] || p->of == KINDS[WALL]) continue;
        if (2 * p->outside > share->outside) return p;
    }
    return NULL;
}

/* "; 29 with none outside say 10 %" */
static const struct gw_message *more_to_say(struct gw_arena *arena, const struct gw_inspection_sample *sample)
{
    struct gw_message *said = gw_alloc(arena, 1, sizeof *said);
    *said =
        GW_SAY(arena, "; {} with none outside say {} %", gw_of_count(gw_sample_size(sample->share, sample->confidence)),
               gw_of_number(sample->share * 100, 3));
    return said;
}

static void conclude(const struct counting *c, struct gw_item_share *s)
{
    struct gw_arena *arena = c->in->ask->arena;
    const struct gw_part_share *crew = cluster_in(&c->parts, s), *cluster = crew ? crew : cluster_in(&c->lines, s);
    const struct gw_inspection_sample *sample =
        GW_USE(&c->in->ask->engine, &c->in->ask->model->tables->inspection_sample[GW_ROW_INSPECTION_SAMPLE_OTHER]);
    s->least = s->most = s->below = GW_ABSENT;
    if (s->random) {
        const double risk = 1 - sample->confidence;
        double none;
        gw_binomial_limits(&s->least, &s->most, s->random_outside, s->random, risk / 2);
        gw_binomial_limits(&none, &s->below, s->random_outside, s->random, risk);
    }
    s->enough = s->random && s->below <= sample->share && !cluster;
    if (cluster)
        s->why = GW_SAY(arena, "no sample of the rest: {} of {} outside are of {} {}", gw_of_count(cluster->outside),
                        gw_of_count(s->outside), gw_of_text(cluster->of), gw_of_text(gw_safe(arena, cluster->name)));
    else if (!s->places) s->why = GW_PLAINLY("nothing is known of these places yet");
    else if (!s->random) s->why = GW_PLAINLY("none is marked random: it says nothing of other places");
    else if (!(s->below < 1))
        s->why = GW_PLAINLY("every place marked random is outside: nothing good can be said of the others");
    else
        s->why = GW_SAY(arena, "{} random places, {} outside: with {} % confidence fewer than {} % are{}",
                        gw_of_count(s->random), gw_of_count(s->random_outside),
                        gw_of_number(sample->confidence * 100, 3), gw_of_number(s->below * 100, 3),
                        s->enough ? gw_of_text("") : gw_of_message(more_to_say(arena, sample)));
}

void gw_count_shares(struct gw_inspecting *in)
{
    struct gw_inspection *out = in->out;
    struct counting *c = gw_alloc(in->ask->arena, 1, sizeof *c);
    c->in = in;
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) c->shares[i].item = gw_item_of((enum gw_item_id)i);
    for (size_t i = 0; i < in->list.n; i++) count_thing(c, &in->list.items[i]);
    out->items.items = gw_alloc(in->ask->arena, GW_ITEM_COUNT, sizeof *out->items.items);
    size_t n;
    const struct gw_item *const *order = gw_item_list(&n);
    for (size_t i = 0; i < n; i++) {
        struct gw_item_share *s = &c->shares[order[i]->id];
        if (!s->readings) continue;
        conclude(c, s);
        out->items.items[out->items.n++] = *s;
    }
    out->parts.items = c->parts.items;
    out->parts.n = c->parts.n;
}
