/* What a place carries, by which the worst of several is found. */
#include "judge/spot_load.h"

#include "judge/judge_internal.h"
#include "judge/line.h"
#include "judge/plated.h"

/* N/m: what a line of screws takes for each length of plate, as the check of screws has it: of a horizontal what its
 * lites shed to its middle. */
static double suction_along(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_demand d;
    const struct gw_element *hung = ask->system ? gw_as_fastened(ask, ask->system, e) : e;
    const struct gw_engine own = ask->engine;
    gw_demand_clear(&d, NULL, &(struct gw_place){.where = e->id, .element = hung, .component = e->component});
    ask->engine.trace = NULL;
    gw_demand_screw(&d, ask, &(struct gw_place){.where = e->id, .element = hung, .component = e->component});
    ask->engine = own;
    const double pull = gw_term_of(&d, 0)->value;
    return gw_given(pull) ? pull / hung->height : (double)INFINITY;
}

double gw_carried(struct gw_ask *ask, const struct gw_element *e)
{
    if (e->outside) return INFINITY;
    const double suction = fmax(-e->outward_asd.pa, 0);
    switch (e->kind) {
    case GW_LITE:
        return suction * fmin(e->width, e->pane);
    case GW_TRANSOM:
        return suction * e->height;
    case GW_ANCHOR:
        return suction * e->width * e->height;
    case GW_SCREW:
        return suction_along(ask, e);
    default:
        return suction * e->width;
    }
}

double gw_spot_load(struct gw_ask *ask, enum gw_item_on on, const struct gw_element *e, const struct gw_spot *spot)
{
    if (on == GW_ON_POCKET) return e->width * e->pane;
    if (on != GW_ON_JOINT) return gw_carried(ask, e);
    size_t n;
    const struct gw_mullion_joint *joints = gw_joints_of(&n, ask, &spot->grid->lines);
    return joints[spot->up].length;
}
