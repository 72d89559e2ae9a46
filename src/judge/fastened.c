/* Screws at the spacing of the system on offer, where the wall says none of its own: the group of screws as it would be
 * taken off with that spacing. */
#include "judge/judge_internal.h"

double gw_screw_spacing(const struct gw_system *system, const struct gw_wall_grid *grid)
{
    if (system->hung && gw_given(system->hung->spacing)) return system->hung->spacing;
    return grid->screws_given || !gw_part(system, screw) ? GW_ABSENT : gw_part(system, screw)->spacing;
}

double gw_screw_end_distance(const struct gw_system *system)
{
    if (system->hung && gw_given(system->hung->end_distance)) return system->hung->end_distance;
    return gw_part(system, screw) ? gw_part(system, screw)->end_distance : GW_ABSENT;
}

/* Absent: the take-off's own stands. */
static double own_spacing(const struct gw_system *system, const struct gw_element *e)
{
    if (e->kind != GW_SCREW) return GW_ABSENT;
    const double spacing = gw_screw_spacing(system, e->grid);
    return fabs(spacing - e->height) > GW_HAIR_M ? spacing : GW_ABSENT;
}

const struct gw_element *gw_as_fastened(struct gw_ask *ask, const struct gw_system *system, const struct gw_element *e)
{
    const double spacing = own_spacing(system, e);
    if (!gw_given(spacing)) return e;
    const struct {
        uintptr_t element;
        double spacing;
    } key = {(uintptr_t)e, spacing};
    const void *known = *gw_memo_at(&ask->memory->fastened, ask->arena, &key, sizeof key);
    if (known) return known;
    struct gw_element *again = gw_alloc(ask->arena, 1, sizeof *again);
    *again = *e;
    again->height = spacing;
    again->effective_area = again->width * spacing;
    if (!e->outside) gw_takeoff_again(ask->model, again);
    *gw_memo_at(&ask->memory->fastened, ask->arena, &key, sizeof key) = again;
    return again;
}

void gw_fasten(struct gw_finding *f, struct gw_ask *ask)
{
    const struct gw_demand *d = f->demand;
    const struct gw_system *system = f->offered ? f->offered : f->candidate;
    const struct gw_element *e = d->element ? gw_as_fastened(ask, system, d->element) : NULL;
    if (e == d->element) return;
    struct gw_demand *demand = gw_alloc(ask->arena, 1, sizeof *demand);
    const struct gw_place place = {.where = d->where, .element = e, .component = d->component};
    ask->system = system;
    gw_judge_demand(demand, ask, d->check, &place);
    f->demand = demand;
}
