/* What an item is made of: the contract between gw_item_judge and the files of item/.
 *
 * An item never writes a verdict. `limit` says what its value is held to at a spot; `left` what it leaves there, by
 * everything that was read at the spot: capacity over demand of each mechanism, at the good and at the bad end of
 * ranges that are not known better. The judge compares:
 *
 *     in the limit, nothing short at the bad end, or nothing to compute    within
 *     outside the limit, every mechanism enough at the bad end             outside, holds
 *     a mechanism short at the bad end                                     not met (in the limit: the limit, not the
 *                                                                          work; or what else was read there)
 *     outside the limit, or none is known, and a mechanism not known       unknown, with what to measure or to ask
 *
 * Words go by their sense (galeward/items.h); a sound one is within unless `left` says otherwise. */
#ifndef GALEWARD_JUDGE_ITEM_H
#define GALEWARD_JUDGE_ITEM_H

#include "galeward/inspect.h"

/* One way in which it fails. */
struct gw_mechanism {
    const char *name;      /* "clamp", "plate", "pull-out", "head", "flow", "movement", "bite" ... */
    double good, bad;      /* capacity over demand at either end; no demand: INFINITY */
    double required;       /* 1, or the factor that is required of it */
    struct gw_message how; /* the figures behind it */
    const char *measure;   /* what tells which end is true; NULL: nut factor and forming torque */
    bool unsure;           /* the bad end hangs on a fact that nobody said, not on the ranges: short there is unknown */
};

enum { GW_MECHANISMS = 8 };
struct gw_left {
    struct gw_mechanism list[GW_MECHANISMS];
    unsigned n;
    struct gw_message unknown; /* a mechanism that cannot be told: what to measure or to ask; not said: all are there */
    struct gw_message taken;   /* a rating that is relied on recorded otherwise and shows nothing here: "report L-1041
                                  recorded screws 9 in apart"; with `unknown` or a mechanism besides; not said: none */
    struct gw_message remark;  /* to be said whatever the verdict is: "a torque tells no gasket load"; not said */
    struct gw_message action;  /* where the item's own `if_missed` is not it */
    struct gw_item_limit limit; /* in the place of the item's own where it hangs on what else was read there: a joint at
                                   the temperature of its metal; basis GW_LIMIT_NONE: no. The system's own go before,
                                   unless its basis says that it follows from them */
    const char *short_by;       /* what to say of a value in its limit that is short; NULL: nothing else than usual */
    bool lost;                  /* not met whatever mechanisms say: "slope inward"; `remark` says why */
    bool undecided;             /* unknown though in its limit: `unknown` says why (a torque without a date) */
};

struct gw_item_functions {
    /* Why such a system has no such thing, or NULL. May be NULL. */
    const char *(*without)(const struct gw_ask *ask, const struct gw_system *system);
    /* The limits where the system's `installation` states none; may leave them absent. May be NULL: a word. */
    void (*limit)(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_spot *spot,
                  const struct gw_system *system);
    /* What is left. May be NULL: nothing is computed, and outside its limit it is unknown. */
    void (*left)(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                 const struct gw_system *system);
    bool as_designed; /* what an option, the wall's drawing or the system has there is what was judged: no wider limit
                         of `installation` lets more in */
    const char *then; /* without `left`, or where the word is unknown: what tells whether it holds: "measure the
                         clearances there" */
};

/* The system as it was read at the spot, a copy where that is another: screws at the spacing, end distance and
 * engagement, glass at the bite and the clearance of the spot's edge (of no edge: of all), joints at the width and
 * engagement that were read. A clearance above the system's counts as the system's: one side's gain is the other's
 * loss. */
const struct gw_system *gw_system_as_read(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                                          const struct gw_system *system);
/* m, engagement that is asked of a screw: the system's, else practice, 1 1/2 diameters, or what the chase takes with
 * the tip clear of its bottom, and never less than one; absent: no screw is known. A screw of as much is taken for the
 * one that was tested. */
double gw_engagement_asked(struct gw_ask *ask, const struct gw_system *system);
/* m, engagement of a screw of the length that was read, by the geometry of the system; absent: no length was read, or
 * the geometry is not known. 0: it does not reach. */
double gw_engagement_read(struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system);

/* Parts of answers. */
void gw_left_unknown(struct gw_left *out, struct gw_message question);
struct gw_mechanism *gw_left_by(struct gw_left *out, const char *name, double good, double bad, double required,
                                struct gw_message how);
/* By a check of `check` for the system as it was read, at an element: its capacity over its demand by calculation
 * alone, required 1. False: not shown, and `out->unknown` asks what the check asks. */
bool gw_left_by_check(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                      const struct gw_element *element, const struct gw_system *as_read);

#endif
