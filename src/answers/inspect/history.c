/* Which rows say the same twice, and which were overtaken by later ones. */
#include "answers/inspect/inspect_internal.h"

#include <string.h>

static const double DAY = 86400, ALIKE_K = 1e-3; /* of a temperature that is written in another unit */
/* It was fastened anew, nobody says when: later than any day, so that no age follows. */
static const long SOME_DAY = 2147483647L;

/* Numbers of a row that tell it from others; its point, as it is written, besides. */
enum { KEY_NUMBERS = 11 };

/* Two points are one where their numbers are, however they are written. */
static void name_point(long numbers[2], const struct gw_reading *r)
{
    numbers[0] = !r->point ? 0 : gw_given(r->at) ? 1 + r->at_distance : 3;
    numbers[1] = gw_given(r->at) ? lround(r->at * 1e4) : 0;
}

struct gw_point *gw_point_at(struct gw_inspecting *in, size_t thing, enum gw_item_id item, int edge,
                             const struct gw_reading *r)
{
    long numbers[KEY_NUMBERS] = {(long)thing, (long)item, edge};
    name_point(numbers + 3, r);
    void **at = gw_memo_named(&in->points, in->ask->arena, numbers, sizeof numbers, gw_given(r->at) ? NULL : r->point);
    struct gw_point *p = *at;
    if (p) return p;
    p = *at = gw_alloc(in->ask->arena, 1, sizeof *p);
    p->fastened = GW_NO_DAY;
    return p;
}

/* Another row with the same value at the same point of the same thing on the same day, of a metal as warm and fastened
 * as long ago; NULL: it is the first. */
static const struct gw_inspected *said_before(struct gw_inspecting *in, struct gw_inspected *row)
{
    const struct gw_reading *r = row->reading;
    long numbers[KEY_NUMBERS] = {(long)row->thing,
                                 (long)r->item,
                                 gw_edge_of_row(row),
                                 0,
                                 0,
                                 r->day,
                                 2 * r->value.word + (r->repaired == GW_YES),
                                 0,
                                 gw_given(r->temperature) ? lround(r->temperature / ALIKE_K) : 0,
                                 r->of_air,
                                 r->installed_on};
    name_point(numbers + 3, r);
    if (gw_given(r->value.number)) memcpy(&numbers[7], &r->value.number, sizeof numbers[7]);
    void **at = gw_memo_named(&in->alike, in->ask->arena, numbers, sizeof numbers, gw_given(r->at) ? NULL : r->point);
    if (!*at) *at = row;
    return *at == row ? NULL : *at;
}

/* Closing -----------------------------------------------------------------------------------------------------------
 */

/* Open rows of one item (and edge) of a thing: those without a point, and those with one. */
struct open_rows {
    struct gw_inspected **list[2];
    size_t n[2], capacity[2];
};

static void keep_open(struct gw_inspecting *in, struct open_rows *open, struct gw_inspected *row)
{
    const bool pointed = row->reading->point;
    open->list[pointed] = gw_grow(in->ask->arena, open->list[pointed], open->n[pointed], &open->capacity[pointed],
                                  sizeof(struct gw_inspected *));
    open->list[pointed][open->n[pointed]++] = row;
}

static void close_row(struct gw_inspected *row, struct gw_inspected *by)
{
    if (row == by || row->closed_by) return;
    row->closed_by = by->reading->node->line;
    by->again = true;
}

/* A repair without a point closes all that is open; one at a point what has none. */
static void close_repaired(struct open_rows *open, struct gw_inspected *by)
{
    const int last = by->reading->point ? 0 : 1;
    for (int pointed = 0; pointed <= last; pointed++) {
        for (size_t i = 0; open->list[pointed] && i < open->n[pointed]; i++) close_row(open->list[pointed][i], by);
        open->n[pointed] = 0;
    }
}

/* A torque read on the day of fastening, or of fastening anew, is fresh. */
static double age_of(const struct gw_inspected *row, long fastened_anew)
{
    const struct gw_reading *r = row->reading;
    const long from = r->installed_on > fastened_anew ? r->installed_on : fastened_anew;
    if (r->repaired == GW_YES) return 0;
    return r->day == GW_NO_DAY || from == GW_NO_DAY || r->day < from ? GW_ABSENT : (double)(r->day - from) * DAY;
}

/* Two rows that were said in part may be of two places. A wall's or a crew's rows are whole. */
static bool is_in_part(const struct gw_inspected *row)
{
    return row->spot.worst && row->item->on != GW_ON_WALL && row->item->on != GW_ON_CREW;
}

/* Of one day two at one point both count where they are of a metal as warm, or fastened, otherwise: neither was there
 * later. One fastened anew that day was. */
static bool overtakes(const struct gw_reading *r, const struct gw_reading *before)
{
    if (r->day != before->day || r->repaired == GW_YES) return true;
    if (fabs(r->temperature - before->temperature) > ALIKE_K || r->of_air != before->of_air) return false;
    return r->installed_on == GW_NO_DAY || r->installed_on >= before->installed_on;
}

static void follow(struct gw_inspecting *in, struct gw_inspected *row, struct open_rows *open, struct open_rows *other,
                   long *fastened)
{
    const struct gw_reading *r = row->reading;
    struct gw_point *point = gw_point_at(in, row->thing, r->item, gw_edge_of_row(row), r);
    const bool in_part = is_in_part(row), same_point = r->point && (!in_part || !row->spot.grid);
    if (same_point && point->open && overtakes(r, point->open->reading)) close_row(point->open, row);
    row->age = age_of(row, point->fastened > *fastened ? point->fastened : *fastened);
    if (r->repaired == GW_YES) {
        if (!in_part) close_repaired(open, row);
        if (other) close_repaired(other, row);
        if (!in_part) point->fastened = r->day == GW_NO_DAY ? SOME_DAY : r->day;
        if (!r->point && point->fastened > *fastened) *fastened = point->fastened;
    }
    point->open = row;
    keep_open(in, open, row);
}

/* Room for what is open, by item and edge. */
struct history {
    struct open_rows open[GW_ITEM_COUNT][5];
    long fastened[GW_ITEM_COUNT][5];
};

static void clear_history(struct history *h, const struct gw_inspected *row)
{
    const int edge = gw_edge_of_row(row);
    h->open[row->item->id][edge] = (struct open_rows){0};
    h->fastened[row->item->id][edge] = GW_NO_DAY;
    h->open[GW_ITEM_field_water][0] = h->open[GW_ITEM_leaked_at][0] = (struct open_rows){0};
}

void gw_close_rows(struct gw_inspecting *in, const struct gw_thing *thing)
{
    if (thing->n == 1) {
        struct gw_inspected *only = gw_row_of(in, thing, 0);
        only->age = age_of(only, GW_NO_DAY);
        return;
    }
    struct history *h = in->history;
    for (size_t i = 0; i < thing->n; i++) clear_history(h, gw_row_of(in, thing, i));
    for (size_t i = 0; i < thing->n; i++) {
        struct gw_inspected *row = gw_row_of(in, thing, i);
        const enum gw_item_id item = row->item->id;
        const int edge = gw_edge_of_row(row);
        const struct gw_inspected *before = row->spot.worst ? NULL : said_before(in, row);
        const bool water = item == GW_ITEM_field_water || item == GW_ITEM_leaked_at;
        struct open_rows *other = water ? &h->open[GW_ITEM_field_water + GW_ITEM_leaked_at - item][0] : NULL;
        if (before) {
            row->duplicate_of = before->reading->node->line;
            row->age = before->age;
            continue;
        }
        follow(in, row, &h->open[item][edge], other, &h->fastened[item][edge]);
    }
}

void *gw_history_room(struct gw_arena *arena) { return gw_alloc(arena, 1, sizeof(struct history)); }
