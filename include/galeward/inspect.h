/* Items in place: what is measured on a wall, its limit there, and what is left where it is missed.
 *
 * The third registry: one row an item (src/judge/items.h). An item never writes a verdict: it says its limits at a
 * place and, by what was read there, capacity over demand of each mechanism that it bears on; gw_item_judge compares.
 * Rules: docs/methods.md, "Readings". */
#ifndef GALEWARD_INSPECT_H
#define GALEWARD_INSPECT_H

#include "galeward/items.h"
#include "galeward/judge.h"

#ifdef __cplusplus
extern "C" {
#endif

/* When it can be seen, in the order of the work; what is a hold point is looked at before the next stage covers it. */
enum gw_stage {
    GW_STAGE_ANCHORS,
    GW_STAGE_FRAME,
    GW_STAGE_GLASS,
    GW_STAGE_PLATES,
    GW_STAGE_COVERS,
    GW_STAGE_SEALS,
    GW_STAGE_TEST,
    GW_STAGE_COUNT
};
extern const char *const gw_stage_names[GW_STAGE_COUNT]; /* "anchors", "frame", "glass" ... */

/* What a place of the item is. */
enum gw_item_on {
    GW_ON_ANCHOR,
    GW_ON_MULLION,    /* a vertical line in a story */
    GW_ON_HORIZONTAL, /* at the head or the sill of a lite */
    GW_ON_MEMBER,     /* either of them */
    GW_ON_JOINT,      /* between pieces of mullion one above the other, on a line */
    GW_ON_LITE,
    GW_ON_EDGE,   /* of a lite */
    GW_ON_POCKET, /* under a lite: its sill */
    GW_ON_SCREWS, /* along one edge of a lite */
    GW_ON_SEALANT,
    GW_ON_CREW, /* a day's work of it */
    GW_ON_WALL
};

/* A place as a person on a scaffold names it, and the elements that stand there. */
struct gw_spot {
    const char *wall;
    int column, story, row, line;    /* from 1; line: 0 at the left end; GW_NO_INTEGER: not said */
    int edge;                        /* enum gw_edge; below 0: not said */
    const struct gw_wall_grid *grid; /* NULL: an opening of a schedule */
    const struct gw_element *lite;   /* NULL: none there, or not said which; so with the next ones */
    const struct gw_element *screws; /* of that edge */
    const struct gw_element *member; /* the mullion or transom of that edge, or of that line and story */
    const struct gw_element *anchor;
    const struct gw_element *beside[2]; /* of a mullion: the lowest lites on its left and right in that story */
    bool worst;                         /* the place was said in part: these are the worst there */
    /* The thing itself, alike under each of its names: the head of a lite is the sill of the one above. */
    bool upright;      /* it stands on a vertical line; else in a column */
    size_t across, up; /* that line or column, from 0; its row, level, stretch, splice or anchor, from the bottom */
};

/* A spot of which nothing is said but the wall (NULL: nothing). */
struct gw_spot gw_spot_on(const char *wall);
/* Fills grid and elements of a spot whose wall and numbers are set, for an item that stands on such a place: a screw
 * line wants an edge, a joint a line and a story. What is not said is filled in where most suction is carried
 * (`worst`; of pockets, where most rain falls); of what the roof line cuts it is the part that carries more. Openings
 * of a schedule have no columns and stories: always at their worst. False: there is no such place, or too little is
 * said: `why`. */
bool gw_spot_find(struct gw_spot *spot, struct gw_message *why, struct gw_ask *ask, enum gw_item_on on);
/* Places that a spot may be which was said in part, each as a whole one, alike ones once; and what suction each carries
 * (of pockets the rain, of joints what moves into them), to be compared within one item's. */
struct gw_carrying {
    struct gw_spot spot;
    double load;
};
struct gw_spots {
    struct gw_carrying *items;
    size_t n, capacity;
};
/* The same as gw_spot_find, and lists them: none of a wall's or a crew's items, which no lite parts. */
bool gw_spot_each(struct gw_spots *each, struct gw_spot *spot, struct gw_message *why, struct gw_ask *ask,
                  enum gw_item_on on);
/* Where on that wall (NULL: any), in that zone (0: any), such a place carries most suction. */
bool gw_spot_worst(struct gw_spot *out, struct gw_message *why, struct gw_ask *ask, const char *wall, int zone,
                   enum gw_item_on on);
/* The same, and lists all such places, alike ones once. */
bool gw_spot_each_of(struct gw_spots *each, struct gw_spot *out, struct gw_message *why, struct gw_ask *ask,
                     const char *wall, int zone, enum gw_item_on on);
/* "east, story 3, column 2 from the left, row 1, left edge"; what is not said is left out */
void gw_spot_say(struct gw_text *out, const struct gw_spot *spot);

/* Along one edge of a lite, m; absent: not read. */
struct gw_edge_read {
    double gap, widest;   /* edge clearance, the least and the largest of its points */
    double bite, deepest; /* the least and the largest */
};
/* All that was read at a spot, the worst of its points, whatever the item; and what goes with it. */
struct gw_as_read {
    struct gw_item_value of[GW_ITEM_COUNT];
    double torque_age;                          /* s from fastening to the torque's reading; 0: on that day; absent */
    double temperature_least, temperature_most; /* K, of the metal when a joint was read; absent */
    double other_least, other_most;             /* K, when what else is known of that joint was; absent: then too */
    struct gw_edge_read edges[4];               /* of that lite, by enum gw_edge */
    bool drawn;       /* none was read, they are of a drawing: joints as they are set, with tolerances to come */
    bool pocket_open; /* a reading shows a plug, corner, joint or weep of that pocket open or blocked */
};
void gw_as_read_clear(struct gw_as_read *read);
static inline bool gw_was_read(const struct gw_as_read *read, enum gw_item_id item)
{
    return gw_given(read->of[item].number) || read->of[item].word;
}

enum gw_limit_basis {
    GW_LIMIT_NONE,
    GW_LIMIT_SYSTEM,   /* the system states it (installation, drainage, clamp ...) */
    GW_LIMIT_PROJECT,  /* the project does */
    GW_LIMIT_GEOMETRY, /* follows from the system's own dimensions */
    GW_LIMIT_DEMAND,   /* follows from what the site asks there */
    GW_LIMIT_PRACTICE  /* common practice, no source */
};
const char *gw_limit_basis_name(enum gw_limit_basis basis); /* "system" ... ; "" for none */

/* What a value is held to at a spot. A word is held to the item's sound one. */
struct gw_item_limit {
    double at_least, at_most; /* SI; absent: none on that side */
    double not_met_at; /* at or below it a reading is not met, whatever holds between it and the limit; 0: none */
    enum gw_limit_basis basis;
    struct gw_message note; /* how it came about; not said: as stated */
};

enum gw_item_verdict { GW_ITEM_UNKNOWN, GW_ITEM_WITHIN, GW_ITEM_OUTSIDE_HOLDS, GW_ITEM_NOT_MET };
const char *gw_item_verdict_name(enum gw_item_verdict verdict); /* "outside, holds" */

struct gw_item_result {
    enum gw_item_verdict verdict;
    struct gw_item_limit limit;
    double remaining, remaining_worst; /* capacity over demand at the good and the bad end of the ranges; absent */
    double required;                   /* of it, by the mechanism */
    const char *mechanism;             /* that is least against what is required of it; NULL */
    struct gw_message message;
    struct gw_message action; /* what to look at or to ask next; never an order to a person */
    struct gw_used used;      /* rows of tables */
};

struct gw_item_functions; /* the judge's own */
struct gw_item {
    enum gw_item_id id;
    enum gw_stage stage;
    enum gw_item_on on;
    bool hold;             /* a hold point: before what follows covers it */
    const char *how;       /* how it is measured */
    const char *prevents;  /* what goes wrong where it is missed */
    const char *clause;    /* where practice has it from: "common practice, no source" */
    const char *if_missed; /* the question of repair, and what to look at beside it */
    const struct gw_item_functions *does;
};
/* In the order of the sheet. */
const struct gw_item *const *gw_item_list(size_t *n);
const struct gw_item *gw_item_of(enum gw_item_id id);
/* Why such a system or wall has no such thing, or NULL. */
const char *gw_item_without(const struct gw_item *item, const struct gw_ask *ask, const struct gw_system *system);
/* The limits there, whatever was read. */
void gw_item_limit_at(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_item *item,
                      const struct gw_spot *spot, const struct gw_system *system);
/* One item at one spot for the system that was hung there. With `ask->trace` set, with its derivation. */
void gw_item_judge(struct gw_item_result *out, struct gw_ask *ask, const struct gw_item *item,
                   const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system);
/* Not met before unknown before outside; then what has least left of what it needs. */
bool gw_item_graver(const struct gw_item_result *a, const struct gw_item_result *b);

/* A line of the plate's screws, as it was read or, where nothing was, as it is described: what clamps it when it is to
 * hold, and what pulls at it. Quantities that are not known are absent, and `unknown` asks. */
struct gw_screw_line {
    const struct gw_system *system; /* as it is hung there */
    struct gw_spot spot;
    const struct gw_element *screws; /* of the spot as they are fastened: `height` is the spacing; NULL: none */
    double end_distance;             /* m */
    double torque;                   /* Nm, read there, else the least that the limits ask */
    bool torque_read;
    bool bottomed;         /* it takes its torque and clamps nothing, whatever the next two say */
    double told[2];        /* N, least and most, that the torque clamps when it is read */
    double left[2], share; /* N, the same when it is to hold; of the least what is left until then */
    double pull;           /* N, suction on a screw between two others, allowable-stress level */
    double end_pull;       /* N, on the one that the plate's end loads most; 0: no more than another */
    double factor;         /* that the clamp is to keep over the suction */
    struct gw_message unknown;
    struct gw_item_result result; /* of its spacing: the least of what is left by clamp, plate and pull-out */
};
void gw_screw_line_as_read(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system);

#ifdef __cplusplus
}
#endif

#endif
