/* What items about water ask at a spot: the pressure of the water test there, and whether its pocket drains. */
#ifndef GALEWARD_JUDGE_DRAINED_H
#define GALEWARD_JUDGE_DRAINED_H

#include "judge/item.h"

/* The pressure of the laboratory's water test that the check `water` asks of that wall. */
struct gw_water_there {
    double pressure;           /* Pa, allowable-stress level; absent: not known */
    struct gw_message message; /* how it came about; not known: what to ask */
    struct gw_message below;   /* that the project asks less than the site; not said: it does not */
};
/* Keeps the ask's engine open and adds the rows that the demand rests on. */
void gw_water_at(struct gw_water_there *out, struct gw_ask *ask, const struct gw_spot *spot);

/* Whether that word was read of the item there. */
bool gw_reads(const struct gw_as_read *read, enum gw_item_id item, const char *word);
/* The number that was read there; absent. */
static inline double gw_read_or(const struct gw_as_read *read, enum gw_item_id item, double otherwise)
{
    return gw_given(read->of[item].number) ? read->of[item].number : otherwise;
}
/* The system's, all absent where it says nothing. */
struct gw_drainage_spec gw_drainage_of(const struct gw_system *system);

/* The mechanism "flow": what the weeps pass over what rain brings, the openings as read, else as the system has them.
 * The pocket is equalized unless the system says otherwise or something read there is open or blocked: then the whole
 * water pressure stands against the weeps. */
void gw_left_by_flow(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system);

#endif
