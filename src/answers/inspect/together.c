/* The rows of one thing, judged with each other: its worst values together; at points that are known, point by point.
 */
#include "answers/inspect/inspect_internal.h"
#include "base/tolerance.h"
#include "judge/screw_line.h"

#include <stdlib.h>
#include <string.h>

/* A gap between two screws along their line, by the points at which it begins and ends. */
struct gap {
    double from, to, value;
};

/* What is worst of a thing, by item and edge: among all its open rows, and among those without a point. */
struct worst {
    const struct gw_inspected *all[GW_ITEM_COUNT][5], *plain[GW_ITEM_COUNT][5];
    /* along the edges of a lite, by enum gw_edge */
    const struct gw_inspected *narrow[4], *wide[4], *bite[4], *deep[4];
    struct gap *gaps;
    size_t n_gaps, capacity;
    bool pocket_open;
    struct {
        const struct gw_element *at;
        int edge;
        struct gw_item_limit is;
    } limit[GW_ITEM_COUNT]; /* the last that was asked for */
};

void *gw_worst_room(struct gw_arena *arena) { return gw_alloc(arena, 1, sizeof(struct worst)); }

/* The worse of two --------------------------------------------------------------------------------------------------
 */

static int rank_of_word(const struct gw_inspected *row)
{
    static const int ranks[] = {
        [GW_WORD_SOUND] = 0, [GW_WORD_UNKNOWN] = 1, [GW_WORD_JUDGED] = 2, [GW_WORD_NOT_MET] = 3};
    return ranks[gw_item_kinds[row->item->id].means[row->reading->value.word - 1]];
}

/* How far beyond the limit; below zero: so far within. */
static double beyond(const struct gw_item_limit *limit, double value)
{
    const double low = gw_given(limit->at_least) ? limit->at_least - value : -INFINITY;
    const double high = gw_given(limit->at_most) ? value - limit->at_most : -INFINITY;
    return low > high ? low : high;
}

static const struct gw_item_limit *limit_of(struct gw_inspecting *in, const struct gw_inspected *row)
{
    struct worst *w = in->worst;
    const enum gw_item_id item = row->item->id;
    if (w->limit[item].at != row->element || w->limit[item].edge != row->spot.edge || !row->element) {
        w->limit[item].at = row->element;
        w->limit[item].edge = row->spot.edge;
        gw_inspect_limit(&w->limit[item].is, in, row->item, &row->spot);
    }
    return &w->limit[item].is;
}

/* An old torque has lost what a new one is still to lose. */
static bool is_worse_torque(struct gw_inspecting *in, const struct gw_inspected *a, const struct gw_inspected *b)
{
    const double x = a->reading->value.number, y = b->reading->value.number;
    const double p = gw_torque_left(in->ask, gw_hung_at(in, a->element), x, a->age),
                 q = gw_torque_left(in->ask, gw_hung_at(in, b->element), y, b->age);
    if (p != q) return p < q;
    return x == y ? gw_given(b->age) && !gw_given(a->age) : x < y;
}

/* Of joints as wide the one of warmer metal: it opens by more. */
static bool is_worse(struct gw_inspecting *in, const struct gw_inspected *a, const struct gw_inspected *b)
{
    const double x = a->reading->value.number, y = b->reading->value.number;
    const enum gw_item_id item = a->item->id;
    if (a->reading->value.word) return rank_of_word(a) > rank_of_word(b);
    if (item == GW_ITEM_screw_torque) return is_worse_torque(in, a, b);
    if (x == y) return item == GW_ITEM_joint_width && a->reading->temperature > b->reading->temperature;
    if (item == GW_ITEM_screw_spacing) return x > y;
    const struct gw_item_limit *limit = limit_of(in, a);
    const double p = beyond(limit, x), q = beyond(limit, y);
    return p == q ? x < y : p > q;
}

static void take(struct gw_inspecting *in, const struct gw_inspected **worst, const struct gw_inspected *row)
{
    if (!*worst || is_worse(in, row, *worst)) *worst = row;
}

bool gw_opens_pocket(const struct gw_inspected *row)
{
    switch (row->item->id) {
    case GW_ITEM_joint_plug:
    case GW_ITEM_gasket_corner:
    case GW_ITEM_frame_joint:
    case GW_ITEM_weep_clear:
    case GW_ITEM_weep_place:
    case GW_ITEM_cover_weep_clear:
    case GW_ITEM_blocks_and_weeps:
        return rank_of_word(row) > 1;
    default:
        return false;
    }
}

/* Sealant under a cover shuts no weep that was seen to be free. */
static bool seals_pocket(const struct worst *w)
{
    const struct gw_inspected *sealant = w->all[GW_ITEM_sealant_under_cover][0],
                              *cover = w->all[GW_ITEM_cover_weep_clear][0];
    return sealant && rank_of_word(sealant) > 1 && !(cover && rank_of_word(cover) == 0);
}

static void add_gap(struct gw_inspecting *in, struct worst *w, const struct gw_reading *r)
{
    if (!gw_given(r->at)) return;
    w->gaps = gw_grow(in->ask->arena, w->gaps, w->n_gaps, &w->capacity, sizeof *w->gaps);
    w->gaps[w->n_gaps++] = (struct gap){r->at, r->at + (r->at_distance ? r->value.number : 1), r->value.number};
}

static int along(const void *a, const void *b)
{
    const struct gap *x = a, *y = b;
    return x->from < y->from ? -1 : x->from > y->from;
}

static void take_number(const struct gw_inspected **best, const struct gw_inspected *row, double sign)
{
    if (!*best || sign * row->reading->value.number < sign * (*best)->reading->value.number) *best = row;
}

static void take_edge(struct worst *w, const struct gw_inspected *row)
{
    const int edge = row->spot.edge;
    const bool any = row->spot.worst && !row->reading->edge_word; /* of any edge: at each it is the row's own */
    if (row->item->on != GW_ON_EDGE || edge < 0 || any) return;
    const bool bite = row->item->id == GW_ITEM_glass_bite;
    if (!bite && row->item->id != GW_ITEM_edge_clearance) return;
    take_number(bite ? &w->bite[edge] : &w->narrow[edge], row, 1);
    take_number(bite ? &w->deep[edge] : &w->wide[edge], row, -1);
}

static void find_worst(struct gw_inspecting *in, struct worst *w, const struct gw_thing *thing)
{
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(in, thing, i);
        const int edge = gw_edge_of_row(row);
        w->all[row->item->id][edge] = w->plain[row->item->id][edge] = NULL;
    }
    for (size_t i = 0; i < 4; i++) w->narrow[i] = w->wide[i] = w->bite[i] = w->deep[i] = NULL;
    w->pocket_open = false;
    w->n_gaps = w->capacity = 0;
    w->gaps = NULL;
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(in, thing, i);
        const int edge = gw_edge_of_row(row);
        if (!gw_is_open(row)) continue;
        take(in, &w->all[row->item->id][edge], row);
        take_edge(w, row);
        if (!row->reading->point) take(in, &w->plain[row->item->id][edge], row);
        w->pocket_open = w->pocket_open || gw_opens_pocket(row);
        if (row->item->id == GW_ITEM_screw_spacing) add_gap(in, w, row->reading);
    }
    w->pocket_open = w->pocket_open || seals_pocket(w);
    if (w->n_gaps > 1) qsort(w->gaps, w->n_gaps, sizeof *w->gaps, along);
}

/* Forgets the thing: what follows has other items. */
static void forget(struct gw_inspecting *in, struct worst *w, const struct gw_thing *thing)
{
    for (size_t i = 0; i < thing->n; i++) {
        const struct gw_inspected *row = gw_row_of(in, thing, i);
        const int edge = gw_edge_of_row(row);
        w->all[row->item->id][edge] = w->plain[row->item->id][edge] = NULL;
    }
}

/* Points ------------------------------------------------------------------------------------------------------------
 */

/* Of two points along an edge, read with a tape. */
static bool is_same_point(double a, double b, double gap) { return fabs(a - b) <= 0.1 * fabs(gap); }

/* A screw carries half the gap on each side; a gap that was not read is as large as the largest of the line. Absent:
 * none beside it was read. */
static double carried_at(const struct worst *w, double at)
{
    const struct gw_inspected *largest = w->all[GW_ITEM_screw_spacing][0];
    size_t low = 0, high = w->n_gaps; /* the first that does not begin before the point */
    while (low < high) {
        const size_t middle = (low + high) / 2;
        if (w->gaps[middle].from < at && !is_same_point(w->gaps[middle].from, at, w->gaps[middle].value))
            low = middle + 1;
        else high = middle;
    }
    const struct gap *right = low < w->n_gaps ? &w->gaps[low] : NULL, *left = low ? &w->gaps[low - 1] : NULL;
    if (right && !is_same_point(right->from, at, right->value)) right = NULL;
    if (left && !is_same_point(left->to, at, left->to - left->from)) left = NULL;
    if (!largest || (!left && !right)) return GW_ABSENT;
    const double other = largest->reading->value.number;
    return ((left ? left->value : other) + (right ? right->value : other)) / 2;
}

/* What goes with a row ----------------------------------------------------------------------------------------------
 */

static void put(struct gw_company *c, const struct gw_inspected *with)
{
    if (!with) return;
    c->read.of[with->item->id] = with->reading->value;
    if (with->item->id == GW_ITEM_screw_torque) c->read.torque_age = with->age;
    c->with[with->item->id] = with;
}

/* Along a line of screws: at the row's own point where it has one, else the worst of the line. */
static const struct gw_inspected *beside(struct gw_inspecting *in, const struct worst *w,
                                         const struct gw_inspected *row, enum gw_item_id item)
{
    if (!w->all[item][0]) return NULL;
    if (!row->reading->point) return w->all[item][0];
    const struct gw_inspected *same = gw_open_at(in, row->thing, item, 0, row->reading);
    return same ? same : w->plain[item][0];
}

/* The screws at both ends of a gap. */
static void put_ends(struct gw_inspecting *in, struct gw_company *c, const struct gw_inspected *row)
{
    struct gw_reading end = *row->reading;
    end.at += end.at_distance ? end.value.number : 1;
    const struct gw_inspected *there = gw_open_at(in, row->thing, GW_ITEM_screw_torque, 0, &end);
    const struct gw_inspected *have = c->with[GW_ITEM_screw_torque];
    if (gw_given(end.at) && there && (!have || is_worse(in, there, have))) put(c, there);
}

static void put_screws(struct gw_inspecting *in, struct gw_company *c, const struct worst *w,
                       const struct gw_inspected *row)
{
    static const enum gw_item_id items[] = {GW_ITEM_screw_spacing, GW_ITEM_screw_end_distance, GW_ITEM_screw_torque,
                                            GW_ITEM_screw_length,  GW_ITEM_screw_head,         GW_ITEM_screw_type};
    const enum gw_item_id own = row->item->id;
    for (size_t i = 0; i < sizeof items / sizeof *items; i++)
        if (items[i] != own) put(c, beside(in, w, row, items[i]));
    if (own == GW_ITEM_screw_spacing && row->reading->point) put_ends(in, c, row);
    if (own == GW_ITEM_screw_spacing || !gw_given(row->reading->at)) return;
    c->share = carried_at(w, row->reading->at);
    if (!gw_given(c->share)) return;
    c->read.of[GW_ITEM_screw_spacing].number = c->share;
    c->with[GW_ITEM_screw_spacing] = NULL;
}

static double number_of(const struct gw_inspected *row) { return row ? row->reading->value.number : GW_ABSENT; }

/* A bite above the drawn is judged by the gap that it leaves. */
static bool leaves_less_gap(struct gw_inspecting *in, const struct gw_inspected *row)
{
    return row->item->id == GW_ITEM_glass_bite && row->reading->value.number > limit_of(in, row)->at_least;
}

/* Gaps all round go with each other and with the skew of the opening; a bite with the gap opposite, at its widest. A
 * gap that nobody read is what the bite leaves. */
static void put_edges(struct gw_inspecting *in, struct gw_company *c, const struct worst *w,
                      const struct gw_inspected *row)
{
    const enum gw_item_id own = row->item->id;
    const bool bite = own == GW_ITEM_glass_bite, round = !bite || leaves_less_gap(in, row);
    const bool tells = in->out->system->system->glazing != GW_MIXED; /* a bead's bite tells no gap */
    for (int i = 0; i < 4; i++) {
        const struct gw_inspected *narrow = w->narrow[i] || !tells ? w->narrow[i] : w->deep[i],
                                  *wide = w->wide[i] || !tells ? w->wide[i] : w->bite[i];
        c->read.edges[i] = (struct gw_edge_read){number_of(w->narrow[i]), number_of(w->wide[i]), number_of(w->bite[i]),
                                                 number_of(w->deep[i])};
        if (round && !(own != GW_ITEM_squareness && i == row->spot.edge)) c->gap[i] = narrow;
        if (bite && i == gw_edge_opposite(row->spot.edge)) c->gap[i] = wide;
    }
}

/* What of a lite bears on each other: its room, its blocks, what drains its pocket. The rest of it stands alone. */
enum bears { BEARS_ALONE, BEARS_ROOM, BEARS_BLOCKS, BEARS_WATER };
static enum bears bears_of(size_t item)
{
    static const enum bears of[GW_ITEM_COUNT] = {[GW_ITEM_squareness] = BEARS_ROOM,
                                                 [GW_ITEM_edge_clearance] = BEARS_ROOM,
                                                 [GW_ITEM_glass_bite] = BEARS_ROOM,
                                                 [GW_ITEM_setting_block_length] = BEARS_BLOCKS,
                                                 [GW_ITEM_setting_block_place] = BEARS_BLOCKS,
                                                 [GW_ITEM_weep_place] = BEARS_WATER,
                                                 [GW_ITEM_weep_count] = BEARS_WATER,
                                                 [GW_ITEM_weep_length] = BEARS_WATER,
                                                 [GW_ITEM_weep_height] = BEARS_WATER,
                                                 [GW_ITEM_weep_clear] = BEARS_WATER,
                                                 [GW_ITEM_weep_offset] = BEARS_WATER,
                                                 [GW_ITEM_cover_weep_length] = BEARS_WATER,
                                                 [GW_ITEM_cover_weep_clear] = BEARS_WATER,
                                                 [GW_ITEM_sealant_under_cover] = BEARS_WATER,
                                                 [GW_ITEM_joint_plug] = BEARS_WATER,
                                                 [GW_ITEM_frame_joint] = BEARS_WATER,
                                                 [GW_ITEM_gasket_corner] = BEARS_WATER,
                                                 [GW_ITEM_blocks_and_weeps] = BEARS_WATER};
    return of[item];
}

/* All corners of a lite stand in its pocket. */
static const struct gw_inspected *worst_corner(const struct worst *w)
{
    const struct gw_inspected *const *of = w->all[GW_ITEM_gasket_corner], *worst = of[0];
    for (int edge = 1; edge <= 4; edge++)
        if (of[edge] && (!worst || rank_of_word(of[edge]) > rank_of_word(worst))) worst = of[edge];
    return worst;
}

static void put_lite(struct gw_inspecting *in, struct gw_company *c, const struct worst *w,
                     const struct gw_inspected *row)
{
    const int edge = row->item->on == GW_ON_POCKET ? 1 + GW_EDGE_SILL : gw_edge_of_row(row);
    const enum bears own = bears_of(row->item->id);
    for (size_t i = 0; own && i < GW_ITEM_COUNT; i++) {
        if (i == row->item->id || bears_of(i) != own) continue;
        if (i == GW_ITEM_gasket_corner) put(c, worst_corner(w));
        else put(c, w->all[i][edge] ? w->all[i][edge] : w->all[i][0]);
    }
    if (own == BEARS_ROOM) put_edges(in, c, w, row);
    if (own == BEARS_WATER) c->read.pocket_open = w->pocket_open;
}

static void put_others(struct gw_company *c, const struct worst *w, const struct gw_inspected *row)
{
    for (size_t i = 0; i < GW_ITEM_COUNT; i++)
        if (i != row->item->id) put(c, w->all[i][0]);
}

/* K, of the metal; of the air: from there up to the hottest surface. */
static void put_temperature(struct gw_inspecting *in, double *least, double *most, const struct gw_reading *r)
{
    const struct gw_movement_rules *m = in->ask->model->project.movement;
    if (!gw_given(r->temperature) || gw_is_no_temperature(in, r)) return;
    *least = *most = r->temperature;
    if (r->of_air) *most = m && gw_given(m->hottest) ? fmax(m->hottest, r->temperature) : GW_ABSENT;
}

/* Width and leg of a joint may be of different days; a leg without a temperature is taken to be of the width's. */
static void put_temperatures(struct gw_inspecting *in, struct gw_company *c, const struct gw_inspected *row)
{
    struct gw_as_read *read = &c->read;
    const bool is_width = row->item->id == GW_ITEM_joint_width;
    const struct gw_inspected *other = c->with[is_width ? GW_ITEM_splice_engagement : GW_ITEM_joint_width];
    const bool own = gw_given(row->reading->temperature) || is_width;
    const struct gw_reading *by = own || !other ? row->reading : other->reading;
    put_temperature(in, &read->temperature_least, &read->temperature_most, by);
    if (own && other) put_temperature(in, &read->other_least, &read->other_most, other->reading);
}

static void keep_company(struct gw_inspecting *in, struct gw_company *c, const struct worst *w,
                         const struct gw_thing *thing, const struct gw_inspected *row)
{
    memset(c, 0, sizeof *c);
    gw_as_read_clear(&c->read);
    c->share = GW_ABSENT;
    if (thing->family == GW_OF_SCREWS) put_screws(in, c, w, row);
    else if (thing->family == GW_OF_LITE) put_lite(in, c, w, row);
    else if (thing->family != GW_OF_CREW) put_others(c, w, row);
    c->read.of[row->item->id] = row->reading->value;
    if (row->item->id == GW_ITEM_screw_torque) c->read.torque_age = row->age;
    put_temperatures(in, c, row);
}

/* Words -------------------------------------------------------------------------------------------------------------
 */

void gw_add_said(struct gw_inspecting *in, struct gw_inspected *row, struct gw_message said)
{
    row->message = gw_say_both(in->ask->arena, &row->message, "; ", &said);
}

/* "edge clearance at the head 0.125 in (row 4 of the file)" */
static struct gw_message say_edges(struct gw_inspecting *in, const struct gw_company *c)
{
    static const char *const edges[] = {"head", "sill", "left edge", "right edge"};
    struct gw_message said = GW_PLAINLY(NULL);
    for (size_t i = 0; i < 4; i++) {
        const struct gw_inspected *with = c->gap[i];
        if (!with) continue;
        const struct gw_message one =
            GW_SAY(in->ask->arena, "{} at the {} {} (row {} of the file)",
                   gw_of_text(gw_item_kinds[with->item->id].title), gw_of_text(edges[i]),
                   gw_item_shown(with->item->id, with->reading->value), gw_of_count((long)with->reading->node->line));
        said = gw_say_both(in->ask->arena, &said, ", ", &one);
    }
    return said;
}

/* "with a spacing of 14 in (row 12)": once for all that was read elsewhere in the line. */
static void say_company(struct gw_inspecting *in, struct gw_inspected *row, const struct gw_company *c)
{
    struct gw_message said = say_edges(in, c);
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) {
        const struct gw_inspected *with = c->with[i];
        if (!with) continue;
        const struct gw_message one =
            GW_SAY(in->ask->arena, "{} {} (row {} of the file)", gw_of_text(gw_item_kinds[i].title),
                   gw_item_shown(with->item->id, with->reading->value), gw_of_count((long)with->reading->node->line));
        said = gw_say_both(in->ask->arena, &said, ", ", &one);
    }
    if (gw_given(c->share)) {
        const struct gw_message one =
            GW_SAY(in->ask->arena, "half the gap on each side, {}", gw_of_quantity(GW_THICKNESS, c->share));
        said = gw_say_both(in->ask->arena, &said, ", ", &one);
    }
    const char *words = row->elsewhere && c->decided ? "decided by {}" : "judged with {}";
    if (gw_said(&said)) gw_add_said(in, row, GW_SAY(in->ask->arena, words, gw_of_message(&said)));
}

/* What is not met by its own word hangs on nothing else. */
static bool is_lost_by_word(const struct gw_inspected *row)
{
    return row->reading->value.word && rank_of_word(row) == 3;
}

/* Judging -----------------------------------------------------------------------------------------------------------
 */

/* Of a row that cannot be judged its limit alone. */
static const struct gw_item_result *held_to(struct gw_inspecting *in, const struct gw_item_result *result)
{
    struct gw_item_result *limit = gw_alloc(in->ask->arena, 1, sizeof *limit);
    *limit = (struct gw_item_result){
        .limit = result->limit, .remaining = GW_ABSENT, .remaining_worst = GW_ABSENT, .required = GW_ABSENT};
    return limit;
}

static void judge_row(struct gw_inspecting *in, const struct worst *w, const struct gw_thing *thing,
                      struct gw_inspected *row)
{
    struct gw_company c;
    keep_company(in, &c, w, thing, row);
    const struct gw_kept *kept = gw_inspect_judge(in, row, &c.read);
    row->result = &kept->result;
    row->limit = kept->limit;
    if (thing->family == GW_OF_SCREWS)
        row->with = memcpy(gw_alloc(in->ask->arena, 1, sizeof c.read), &c.read, sizeof c.read);
    const bool lost = row->item->on == GW_ON_JOINT && kept->result.verdict == GW_ITEM_NOT_MET;
    const struct gw_message why = gw_cannot_be(in, row, &c.read);
    const bool asks = gw_said(&why) && (!lost || gw_is_before_fastening(row));
    row->verdict = asks ? GW_ITEM_UNKNOWN : row->result->verdict;
    row->message = asks ? why : row->result->message;
    row->action = asks ? why : row->result->action;
    if (asks) row->result = held_to(in, row->result);
    else gw_find_decisive(in, row, &c);
    if (row->elsewhere) row->action = GW_PLAINLY(NULL); /* to do is what the other reading asks */
    if (!asks && !is_lost_by_word(row)) say_company(in, row, &c);
    if (row->closed_by)
        gw_add_said(in, row, GW_SAY(in->ask->arena, "closed by row {} of the file", gw_of_count((long)row->closed_by)));
    if (row->duplicate_of)
        gw_add_said(in, row,
                    GW_SAY(in->ask->arena, "the same as row {} of the file: counted once",
                           gw_of_count((long)row->duplicate_of)));
}

void gw_judge_thing(struct gw_inspecting *in, const struct gw_thing *thing)
{
    struct worst *w = in->worst;
    find_worst(in, w, thing);
    for (size_t i = 0; i < thing->n; i++) judge_row(in, w, thing, gw_row_of(in, thing, i));
    forget(in, w, thing);
}
