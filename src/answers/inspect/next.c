/* Where to open next: beside what is outside, where nothing was read yet. */
#include "answers/inspect/inspect_internal.h"

#include <stdlib.h>
#include <string.h>

enum { MOST = 24 };

static void add(struct gw_inspecting *in, size_t *capacity, const struct gw_inspected *beside,
                const struct gw_spot *spot)
{
    struct gw_inspection *out = in->out;
    struct gw_text text;
    if (out->next.n == MOST) {
        out->more = true;
        out->next_more++;
        return;
    }
    gw_text_init(&text, in->ask->arena);
    gw_spot_say(&text, spot);
    out->next.items = gw_grow(in->ask->arena, out->next.items, out->next.n, capacity, sizeof *out->next.items);
    out->next.items[out->next.n++] = (struct gw_next_place){
        .item = beside->item,
        .place = text.at,
        .beside = beside,
        .why = GW_SAY(in->ask->arena, "beside row {} of the file, {}", gw_of_count((long)beside->reading->node->line),
                      gw_of_text(gw_item_verdict_name(beside->verdict)))};
}

struct looked_at {
    struct gw_memo offered; /* by item and thing's bytes */
    size_t capacity;
};

/* The neighbor, where there is one, and nothing was read of it, and it was not offered yet. */
static void offer(struct gw_inspecting *in, struct looked_at *l, const struct gw_inspected *row, struct gw_spot spot)
{
    struct gw_message why;
    if (!gw_spot_find(&spot, &why, in->ask, row->item->on) || spot.worst) return;
    const size_t thing = gw_thing_at(in, &spot, row->item->on);
    const int edge = row->item->on == GW_ON_EDGE ? 1 + spot.edge : 0;
    if (thing && in->list.items[thing - 1].read[edge] >> row->item->id & 1) return;
    const size_t key[] = {row->item->id, (size_t)spot.grid->index, spot.across, spot.up, spot.upright};
    void **at = gw_memo_at(&l->offered, in->ask->arena, key, sizeof key);
    if (*at) return;
    *at = in;
    add(in, &l->capacity, row, &spot);
}

static void offer_beside(struct gw_inspecting *in, struct looked_at *l, const struct gw_inspected *row)
{
    for (int step = -1; step <= 1; step += 2) {
        struct gw_spot s = gw_spot_on(row->spot.wall);
        s.column = row->spot.column;
        s.story = row->spot.story;
        s.row = row->spot.row;
        s.edge = row->spot.edge;
        if (s.column == GW_NO_INTEGER) s.line = row->spot.line;
        struct gw_spot above = s;
        if (s.column != GW_NO_INTEGER) s.column += step;
        else if (s.line != GW_NO_INTEGER) s.line += step;
        offer(in, l, row, s);
        above.story += step;
        offer(in, l, row, above);
    }
    /* the lines that meet it round the same lite */
    for (int edge = GW_EDGE_HEAD; row->item->on == GW_ON_SCREWS && edge <= GW_EDGE_RIGHT; edge++) {
        struct gw_spot s = row->spot;
        s.line = GW_NO_INTEGER;
        s.edge = edge;
        if (s.column != GW_NO_INTEGER) offer(in, l, row, s);
    }
}

static bool is_asked(const struct gw_inspected *row, enum gw_item_verdict verdict)
{
    return gw_is_open(row) && row->verdict == verdict && gw_is_outside(row) && row->spot.grid && !row->spot.worst &&
           row->spot.story != GW_NO_INTEGER;
}

/* The gravest first: what least is left of; of equal ones in the order of the sheet. */
static int gravest_first(const void *a, const void *b)
{
    const struct gw_inspected *x = *(const struct gw_inspected *const *)a, *y = *(const struct gw_inspected *const *)b;
    if (x->result && y->result && gw_item_graver(x->result, y->result)) return -1;
    if (x->result && y->result && gw_item_graver(y->result, x->result)) return 1;
    return x < y ? -1 : x > y;
}

void gw_find_next(struct gw_inspecting *in)
{
    static const enum gw_item_verdict order[] = {GW_ITEM_NOT_MET, GW_ITEM_OUTSIDE_HOLDS, GW_ITEM_UNKNOWN};
    struct gw_inspection *out = in->out;
    struct looked_at l = {0};
    const struct gw_inspected **asked = gw_alloc(in->ask->arena, out->rows.n + 1, sizeof(void *));
    for (size_t k = 0; k < sizeof order / sizeof *order; k++) {
        size_t n = 0;
        for (size_t i = 0; i < out->rows.n; i++)
            if (is_asked(&out->rows.items[i], order[k])) asked[n++] = &out->rows.items[i];
        if (n) qsort(asked, n, sizeof *asked, gravest_first);
        for (size_t i = 0; i < n; i++) offer_beside(in, &l, asked[i]);
    }
}
