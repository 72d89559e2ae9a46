/* Which line of plate screws carries most, and what clamps it there. */
#include "galeward/inspection.h"
#include "galeward/plan.h"

/* With what is chosen there. */
static void look_at(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_spot *spot,
                    const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_planned *planned = gw_planned_of(ask, system);
    const struct gw_system *offered = planned ? gw_planned_offer(planned, spot->screws) : NULL;
    if (planned) {
        planned->make_ups.place = planned->plan.places->of[spot->screws->index];
        ask->choice = &planned->make_ups;
    }
    gw_screw_line_as_read(out, ask, spot, read, offered ? offered : system);
    ask->choice = NULL;
}

bool gw_find_screw_line(struct gw_screw_line *out, struct gw_ask *ask, const char *wall,
                        const struct gw_system *candidate)
{
    struct gw_as_read none;
    struct gw_message why;
    struct gw_spot spot;
    gw_as_read_clear(&none);
    ask->system = candidate;
    if (!gw_spot_worst(&spot, &why, ask, wall, 0, GW_ON_SCREWS) || !spot.screws) return false;
    look_at(out, ask, &spot, &none, candidate);
    return true;
}

bool gw_find_read_line(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_inspected *row,
                       const struct gw_system *system)
{
    ask->system = system;
    if (!row->with || !row->spot.screws) return false;
    look_at(out, ask, &row->spot, row->with, system);
    return true;
}
