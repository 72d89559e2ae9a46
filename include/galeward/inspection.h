/* Readings of a wall, judged: each row at its place with what else was read there; then what they come to. And the
 * sheet by which such readings are taken.
 *
 * Rules: docs/methods.md, "Readings". */
#ifndef GALEWARD_INSPECTION_H
#define GALEWARD_INSPECTION_H

#include "galeward/inspect.h"
#include "galeward/readings.h"

#ifdef __cplusplus
extern "C" {
#endif

/* One row of the sheet, judged. */
struct gw_inspected {
    const struct gw_reading *reading;
    const struct gw_item *item;
    const char *place; /* as it was said; of a part of one, where it is judged besides */
    struct gw_spot spot;
    const struct gw_element *element; /* that it belongs to; NULL: there is no such place */
    struct gw_either value;
    enum gw_item_verdict verdict;
    const struct gw_item_result *result; /* NULL: it was not judged */
    struct gw_message limit;             /* gw_limit_words; not said: none */
    struct gw_message message, action;
    size_t closed_by;    /* line of the file that closes it: repaired, or read anew at the same point; 0: open */
    size_t duplicate_of; /* line of the file that says the same; 0: it counts */
    bool again;          /* it closes another: no first reading */
    bool elsewhere;      /* in its own limit, and not met by other readings of its line or pocket alone */
    double age;          /* s from fastening to reading, of a torque; absent: not known */
    const struct gw_as_read *with; /* of screws: all that it was judged with; NULL: of something else */
    size_t thing;                  /* rows of one place have one number, from 1; 0: no such place */
};

/* Of one item, what its places say. A place is outside if one of its first readings is, but not where it is so by
 * readings of other items alone; unknown ones are not counted. */
struct gw_item_share {
    const struct gw_item *item;
    long readings, places, outside, unknown;
    long random, random_outside; /* of these places, the ones marked random */
    double least, most;          /* 95 % confidence interval of the share outside (Clopper-Pearson); absent: none */
    double below;                /* with 95 % confidence fewer than this share are outside; absent */
    bool enough;                 /* the sample is large enough to say so of a tenth, and no cluster */
    struct gw_message why;       /* what stands behind `enough` */
};
/* The same by what parts the work: crew, day of reading, wall. */
struct gw_part_share {
    const char *of, *name; /* "crew", "B" */
    const struct gw_item *item;
    long places, outside;
};
/* Where to open next, and why. */
struct gw_next_place {
    const struct gw_item *item;
    const char *place;
    const struct gw_inspected *beside;
    struct gw_message why;
};

struct gw_inspection {
    const struct gw_system *system; /* that was hung */
    const struct gw_readings *readings;
    GW_LIST(struct gw_inspected) rows; /* in the order of the sheet, those without a fault */
    long counts[4];                    /* open rows by enum gw_item_verdict, each once */
    GW_LIST(struct gw_item_share) items;
    GW_LIST(struct gw_part_share) parts;
    GW_LIST(struct gw_next_place) next;
    bool more;      /* there are others beyond those of `next`, */
    long next_more; /* so many */
    struct gw_used used;
};
/* Judges the readings of the system that was hung, with what the ask's plans choose for it. */
void gw_inspect(struct gw_inspection *out, struct gw_ask *ask, const struct gw_readings *readings,
                const struct gw_system *system);

/* The line of screws of that wall that carries most for a candidate as it is described, with what the ask's plans
 * choose for it; false: there is none. And the line of a row that was judged with others. */
bool gw_find_screw_line(struct gw_screw_line *out, struct gw_ask *ask, const char *wall,
                        const struct gw_system *candidate);
bool gw_find_read_line(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_inspected *row,
                       const struct gw_system *system);

/* "at least 1/2 in", "95 to 100 in-lb"; of a word the sound one; not said: there is none. */
struct gw_message gw_limit_words(struct gw_arena *arena, const struct gw_item *item, const struct gw_item_limit *limit);
/* The same rounded to what a tape reads, to the strict side. */
struct gw_message gw_limit_by_tape(struct gw_arena *arena, const struct gw_item *item,
                                   const struct gw_item_limit *limit);

/* Exact limits of a share of which `n` were looked at and `outside` found, each missed by `risk` (0.025 for a 95 %
 * interval): Clopper and Pearson. */
void gw_binomial_limits(double *least, double *most, long outside, long n, double risk);
/* How many must be looked at and found good to say with that confidence that fewer than `share` are bad. */
long gw_sample_size(double share, double confidence);

/* The sheet ---------------------------------------------------------------------------------------------------------
 */

/* A place to look at, and what holds there. */
struct gw_sheet_place {
    const struct gw_item *item;
    const char *place;
    struct gw_spot spot;
    struct gw_item_limit limit; /* of what is hung there, with what is chosen there */
    struct gw_message held_to;  /* the limit in words */
    struct gw_message condemns; /* the limit itself does not hold there, at its worse end, by what; not said: it does,
                                   or is not known */
};
/* The limit of lites of these types, wherever they stand on the wall. */
struct gw_sheet_types {
    const char *lites; /* "vision", "spandrel, louver" */
    struct gw_sheet_place first;
};
struct gw_sheet_item {
    const struct gw_item *item;
    const char *wall;
    struct gw_sheet_place most;           /* where its use is largest */
    struct gw_sheet_place strictest;      /* where its limit is */
    struct gw_message elsewhere;          /* "up to 1/8 in": the widest limit of the wall; not said: one for all */
    GW_LIST(struct gw_sheet_types) types; /* of items on lites where each type has a limit of its own; else none */
    GW_LIST(struct gw_sheet_place) other; /* places with another limit, or whose limit alone does not hold */
    long places;                          /* of the wall that have it; 0: it is none of elements */
    long sample;                          /* how many to look at */
    struct gw_message how_many;           /* of how many, and what that many say */
    struct gw_message says;               /* the latter alone */
};
struct gw_inspection_sheet {
    const struct gw_system *system;
    GW_LIST(struct gw_sheet_item) items;   /* by wall, then by stage */
    GW_LIST(struct gw_sheet_place) places; /* lines of a CSV to be filled in: where most is carried first */
    struct gw_used used;
};
/* What to measure where of a project, for the system that is to be hung. */
void gw_inspection_sheet(struct gw_inspection_sheet *out, struct gw_ask *ask, const struct gw_system *system);

#ifdef __cplusplus
}
#endif

#endif
