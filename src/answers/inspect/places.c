/* Which thing each row was read of. */
#include "answers/inspect/inspect_internal.h"

#include <stdlib.h>
#include <string.h>

_Static_assert(GW_ITEM_COUNT <= 64, "the items of a thing are bits of one word");

enum gw_family gw_family_of(enum gw_item_on on)
{
    switch (on) {
    case GW_ON_SCREWS:
        return GW_OF_SCREWS;
    case GW_ON_LITE:
    case GW_ON_EDGE:
    case GW_ON_POCKET:
        return GW_OF_LITE;
    case GW_ON_MULLION:
    case GW_ON_HORIZONTAL:
    case GW_ON_MEMBER:
        return GW_OF_MEMBER;
    case GW_ON_JOINT:
        return GW_OF_JOINT;
    case GW_ON_ANCHOR:
        return GW_OF_ANCHOR;
    case GW_ON_SEALANT:
        return GW_OF_SEALANT;
    case GW_ON_CREW:
        return GW_OF_CREW;
    default:
        return GW_OF_AREA;
    }
}

const struct gw_element *gw_spot_element(const struct gw_spot *spot, enum gw_item_on on)
{
    switch (on) {
    case GW_ON_SCREWS:
        return spot->screws;
    case GW_ON_MULLION:
    case GW_ON_HORIZONTAL:
    case GW_ON_MEMBER:
    case GW_ON_JOINT:
        return spot->member;
    case GW_ON_ANCHOR:
        return spot->anchor;
    default:
        return spot->lite;
    }
}

/* Keys: numbers, then a text ----------------------------------------------------------------------------------------
 */

enum { KEY_NUMBERS = 8 };
struct key {
    struct gw_arena *arena;
    int numbers[KEY_NUMBERS];
    const char *text;
};

static void **find(struct gw_memo *memo, const struct key *key)
{
    return gw_memo_named(memo, key->arena, key->numbers, sizeof key->numbers, key->text);
}

/* Spots -------------------------------------------------------------------------------------------------------------
 */

static struct gw_spot said_of(const struct gw_reading *r)
{
    struct gw_spot s = gw_spot_on(r->wall);
    s.column = r->column;
    s.story = r->story;
    s.row = r->row;
    s.line = r->line;
    s.edge = r->edge_word - 1;
    return s;
}

static const char *words_of(struct gw_arena *arena, const struct gw_spot *spot)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_spot_say(&text, spot);
    return gw_safe(arena, text.at);
}

static struct gw_found *spot_of(struct gw_inspecting *in, const struct gw_reading *r, enum gw_item_on on)
{
    const struct key key = {
        in->ask->arena, {(int)on, r->column, r->story, r->row, r->line, r->edge_word, r->wall != NULL}, r->wall};
    void **at = find(&in->spots, &key);
    struct gw_found *f = *at;
    if (f) return f;
    f = *at = gw_alloc(in->ask->arena, 1, sizeof *f);
    const struct gw_spot said = said_of(r);
    f->spot = said;
    f->there = gw_spot_each(&f->each, &f->spot, &f->why, in->ask, on);
    struct gw_spot shown = said;
    if (!shown.wall && f->there) shown.wall = f->spot.wall;
    f->said = on == GW_ON_CREW && !said.wall ? "" : words_of(in->ask->arena, &shown);
    return f;
}

/* Things ------------------------------------------------------------------------------------------------------------
 */

/* Of a place that was said in part it is what was said; a crew's is its day. */
static struct key thing_of(struct gw_inspecting *in, const struct gw_spot *spot, const struct gw_reading *r,
                           enum gw_item_on on)
{
    const enum gw_family family = gw_family_of(on);
    struct key key = {in->ask->arena, {(int)family}, spot->wall};
    if (r && (family == GW_OF_CREW || family == GW_OF_AREA || spot->worst)) {
        const int said[] = {1, r->column, r->story, r->row, r->line, r->edge_word, 0};
        memcpy(key.numbers + 1, said, sizeof said);
        if (family == GW_OF_CREW)
            key.text = gw_format(in->ask->arena, "%s\n%s %s", spot->wall ? spot->wall : "", r->by ? r->by : "",
                                 r->date ? r->date : "");
        return key;
    }
    const bool whole = family == GW_OF_LITE;
    const int is[] = {0, whole ? spot->column : (int)spot->across, whole ? spot->story : (int)spot->up,
                      whole ? spot->row : (int)spot->upright};
    memcpy(key.numbers + 1, is, sizeof is);
    return key;
}

static size_t number_of(struct gw_inspecting *in, const struct key *key, enum gw_family family)
{
    void **at = find(&in->things, key);
    struct gw_thing *thing;
    if (*at) return *(size_t *)*at;
    in->list.items = gw_grow(in->ask->arena, in->list.items, in->list.n, &in->capacity, sizeof *in->list.items);
    thing = &in->list.items[in->list.n++];
    *thing = (struct gw_thing){.family = family};
    size_t *number = *at = gw_alloc(in->ask->arena, 1, sizeof *number);
    *number = in->list.n;
    return *number;
}

size_t gw_thing_at(struct gw_inspecting *in, const struct gw_spot *spot, enum gw_item_on on)
{
    const struct key key = thing_of(in, spot, NULL, on);
    const void *at = *find(&in->things, &key);
    return at ? *(const size_t *)at : 0;
}

static void place_row(struct gw_inspecting *in, size_t i)
{
    struct gw_inspected *row = &in->out->rows.items[i];
    const enum gw_item_on on = row->item->on;
    struct gw_found *f = in->found[i] = spot_of(in, row->reading, on);
    row->place = f->said;
    row->spot = f->spot;
    if (!f->there) {
        row->message = f->why;
        row->action = GW_PLAINLY("where was it read: wall, story, column, row, edge");
        return;
    }
    if (on == GW_ON_CREW && row->reading->by)
        row->place = gw_format(in->ask->arena, "%s%screw %s", f->said, *f->said ? ", " : "",
                               gw_safe(in->ask->arena, row->reading->by));
    row->element = gw_spot_element(&row->spot, on);
    const struct key key = thing_of(in, &row->spot, row->reading, on);
    row->thing = number_of(in, &key, gw_family_of(on));
    struct gw_thing *thing = &in->list.items[row->thing - 1];
    thing->rows = gw_grow(in->ask->arena, thing->rows, thing->n, &thing->capacity, sizeof *thing->rows);
    thing->read[gw_edge_of_row(row)] |= (uint64_t)1 << row->item->id;
    thing->rows[thing->n++] = (struct gw_thing_row){row->reading->day, i};
}

/* By day; what has none stays where the sheet has it. */
static int by_day(const void *a, const void *b)
{
    const struct gw_thing_row *x = a, *y = b;
    if (x->day != y->day) return x->day < y->day ? -1 : 1;
    return x->at < y->at ? -1 : x->at > y->at;
}

void gw_place_rows(struct gw_inspecting *in)
{
    for (size_t i = 0; i < in->out->rows.n; i++) place_row(in, i);
    for (size_t i = 0; i < in->list.n; i++) {
        const struct gw_thing *t = &in->list.items[i];
        bool dated = t->n > 1;
        for (size_t k = 0; k < t->n; k++) dated = dated && t->rows[k].day != GW_NO_DAY;
        if (dated) qsort(t->rows, t->n, sizeof *t->rows, by_day);
    }
}
