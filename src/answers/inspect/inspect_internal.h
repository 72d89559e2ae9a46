/* Shared by the files of src/answers/inspect only. */
#ifndef GALEWARD_INSPECT_INTERNAL_H
#define GALEWARD_INSPECT_INTERNAL_H

#include "galeward/inspection.h"
#include "galeward/memo.h"
#include "galeward/plan.h"

#include <stdint.h>

/* What is judged together. */
enum gw_family {
    GW_OF_SCREWS,
    GW_OF_LITE,
    GW_OF_MEMBER,
    GW_OF_JOINT,
    GW_OF_ANCHOR,
    GW_OF_SEALANT,
    GW_OF_CREW,
    GW_OF_AREA
};
enum gw_family gw_family_of(enum gw_item_on on);

/* A row of a thing: its place among the inspection's. */
struct gw_thing_row {
    long day; /* GW_NO_DAY */
    size_t at;
};
/* All rows of one thing, in the order of their days. */
struct gw_thing {
    enum gw_family family;
    uint64_t read[5]; /* by edge (0: none): bits of the items that were read of it */
    struct gw_thing_row *rows;
    size_t n, capacity;
};
/* What was read at one point of a thing, of one item. */
struct gw_point {
    struct gw_inspected *open; /* the last row that counts; NULL */
    long fastened;             /* day of the last fastening anew; GW_NO_DAY */
};

/* What was said of a place, and what it may be. */
struct gw_found {
    bool there;
    struct gw_spot spot;
    struct gw_spots each;  /* one, where it was said whole; none of a wall's and a crew's items */
    struct gw_message why; /* it is not there */
    const char *said;
    const char **judged_at; /* by place of `each`: the same with where it was judged; NULL: not yet worded */
};

struct gw_inspecting {
    struct gw_inspection *out;
    struct gw_ask *ask;
    struct gw_planned *planned; /* NULL: nothing is chosen */
    struct gw_memo spots;       /* by what was said of a place */
    struct gw_memo things;      /* by what a thing is: its number, from 1 */
    struct gw_memo results;     /* by item, elements and values */
    struct gw_memo gravest;     /* by what was said of a place, item and values */
    struct gw_memo points;      /* by thing, item, edge and point */
    struct gw_memo alike;       /* by thing, item, edge, point, value, day and what goes with them: the first row */
    void *history, *worst;      /* room of history.c and together.c */
    GW_LIST(struct gw_thing) list;
    size_t capacity;
    struct gw_found **found; /* by row */
};

/* places.c: spot and thing of every row; the rows of things in the order of their days. */
void gw_place_rows(struct gw_inspecting *in);
/* A spot that is not any row's: the number of its thing, 0: nothing was read of it. */
size_t gw_thing_at(struct gw_inspecting *in, const struct gw_spot *spot, enum gw_item_on on);
const struct gw_element *gw_spot_element(const struct gw_spot *spot, enum gw_item_on on);
static inline struct gw_inspected *gw_row_of(const struct gw_inspecting *in, const struct gw_thing *thing, size_t i)
{
    return &in->out->rows.items[thing->rows[i].at];
}
/* An edge of a lite that parts readings of it: 1 + enum gw_edge; 0: the item is none of an edge. */
static inline int gw_edge_of_row(const struct gw_inspected *row)
{
    return row->item->on == GW_ON_EDGE ? 1 + row->spot.edge : 0;
}
static inline bool gw_is_open(const struct gw_inspected *row) { return !row->closed_by && !row->duplicate_of; }
/* history.c: duplicates, what is closed, how old a torque is, of one thing. */
void gw_close_rows(struct gw_inspecting *in, const struct gw_thing *thing);
void *gw_history_room(struct gw_arena *arena);
void *gw_worst_room(struct gw_arena *arena);
/* What was read at that point. */
struct gw_point *gw_point_at(struct gw_inspecting *in, size_t thing, enum gw_item_id item, int edge,
                             const struct gw_reading *at);
/* The row there that still counts; NULL. */
static inline struct gw_inspected *gw_open_at(struct gw_inspecting *in, size_t thing, enum gw_item_id item, int edge,
                                              const struct gw_reading *at)
{
    struct gw_inspected *row = gw_point_at(in, thing, item, edge, at)->open;
    return row && gw_is_open(row) ? row : NULL;
}
/* contradictions.c: after the rows of the thing were judged. */
void gw_contradict(struct gw_inspecting *in, const struct gw_thing *thing);
/* Appends to what is said of a row. */
void gw_add_said(struct gw_inspecting *in, struct gw_inspected *row, struct gw_message said);
/* doubts.c: why such a row cannot be judged; not said: it can. */
struct gw_message gw_cannot_be(struct gw_inspecting *in, const struct gw_inspected *row, const struct gw_as_read *read);
bool gw_is_before_fastening(const struct gw_inspected *row);
/* By the project metal gets never as hot, or as cold. */
bool gw_is_no_temperature(const struct gw_inspecting *in, const struct gw_reading *r);
/* After all rows were judged: torques of a day and crew whose driver was not checked are not sure. */
void gw_doubt_torques(struct gw_inspecting *in);
/* together.c: judges the rows of one thing with each other. */
void gw_judge_thing(struct gw_inspecting *in, const struct gw_thing *thing);
/* The result of an item at a spot, and its limit in words, kept. */
struct gw_kept {
    struct gw_item_result result;
    struct gw_message limit;
};
/* Of a row said in part at the gravest of the places that it may be, which becomes the row's. */
const struct gw_kept *gw_inspect_judge(struct gw_inspecting *in, struct gw_inspected *row,
                                       const struct gw_as_read *read);
/* With other readings than it was judged with, at the same place; the row stays as it is. */
const struct gw_kept *gw_inspect_again(struct gw_inspecting *in, const struct gw_inspected *row,
                                       const struct gw_as_read *read);
/* What goes with a row. */
struct gw_company {
    struct gw_as_read read;
    const struct gw_inspected *with[GW_ITEM_COUNT]; /* other rows that were taken; by item */
    const struct gw_inspected *gap[4];              /* of other edges of the lite, by enum gw_edge */
    double share;                                   /* the gap that the screw carries, by its point; absent */
    bool decided;                                   /* of all that was read one alone is left, which decides */
};
/* One that shows a plug, corner, joint or weep of the pocket open or blocked. */
bool gw_opens_pocket(const struct gw_inspected *row);
/* decisive.c: whether a row of screws or of a pocket is not met by other readings there alone; of these the one that
 * makes it so by itself is left in the company. */
void gw_find_decisive(struct gw_inspecting *in, struct gw_inspected *row, struct gw_company *c);
/* What was hung at an element, with what is chosen there: the make-ups become the ask's choice, until gw_unchoose. */
const struct gw_system *gw_hung_at(struct gw_inspecting *in, const struct gw_element *element);
void gw_unchoose(struct gw_inspecting *in);
/* The limits there, of what was hung there. */
void gw_inspect_limit(struct gw_item_limit *out, struct gw_inspecting *in, const struct gw_item *item,
                      const struct gw_spot *spot);
/* statistics.c, next.c */
/* Outside its limit, whatever is left there, or not met but by other readings. */
bool gw_is_outside(const struct gw_inspected *row);
/* Its own value or word, whatever is left there. */
bool gw_is_beyond(const struct gw_inspected *row);
void gw_count_shares(struct gw_inspecting *in);
void gw_find_next(struct gw_inspecting *in);

#endif
