/* The system as it was read at a place: a copy with what was measured there. */
#include "judge/item.h"

#include "base/tolerance.h"
#include "galeward/clamp.h"
#include "tables_data.h"

#include <string.h>

#define COPY(ask, type, from) ((type *)copy_of((ask)->arena, (from), sizeof(type)))
static void *copy_of(struct gw_arena *arena, const void *from, size_t size)
{
    return memcpy(gw_alloc(arena, 1, size), from, size);
}

static double number(const struct gw_as_read *read, enum gw_item_id item) { return read->of[item].number; }

double gw_engagement_read(struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_clamp_spec *c = system->clamp;
    const double length = number(read, GW_ITEM_screw_length);
    struct gw_engine engine = {.tables = ask->model->tables}; /* no trace: the item tells */
    struct gw_screw_length_result r;
    if (!gw_given(length) || !c || !system->pressure_plate) return GW_ABSENT;
    const struct gw_screw_length_case in = {.length = length,
                                            .plate = system->pressure_plate->thickness,
                                            .stack = c->stack,
                                            .chase = c->chase,
                                            .tip = c->tip,
                                            .engagement_required = GW_ABSENT};
    if (gw_screw_length(&r, &in, &engine) != GW_OK) return GW_ABSENT;
    return r.engagement > GW_HAIR_M ? r.engagement : 0; /* what rounding leaves of none is none */
}

/* Practice says 1 to 1 1/2 diameters: as much of it as the chase takes with the tip clear of its bottom. */
double gw_engagement_asked(struct gw_ask *ask, const struct gw_system *system)
{
    const struct gw_screw_length_practice *row =
        &ask->model->tables->screw_length_practice[GW_ROW_SCREW_LENGTH_PRACTICE_PLATE];
    const struct gw_clamp_spec *c = system->clamp;
    if (!system->screw) return GW_ABSENT;
    if (gw_given(system->screw->engagement)) return system->screw->engagement;
    gw_used_add(&ask->engine.used, &row->row);
    const double tip = c && gw_given(c->tip) ? c->tip : 0;
    const double room = c ? c->chase - tip - row->tip_clearance_m : GW_ABSENT; /* fmin takes what is given */
    const double diameters = fmax(row->engagement_least, fmin(row->engagement, room / system->screw->diameter));
    return diameters * system->screw->diameter;
}

/* What holds a thread that is short of what is asked: less of it. A tested pull-out is taken in proportion to the most
 * that the chase can engage, since nobody says how much was. */
static void shorten(struct gw_system *out, struct gw_ask *ask, const struct gw_as_read *read)
{
    const double e = gw_engagement_read(ask, read, out);
    if (!(e < gw_engagement_asked(ask, out) - GW_HAIR_M)) return;
    struct gw_screw_spec *screw = COPY(ask, struct gw_screw_spec, out->screw);
    const double tip = gw_given(out->clamp->tip) ? out->clamp->tip : 0;
    const double whole = gw_given(screw->engagement) ? screw->engagement : out->clamp->chase - tip;
    if (gw_given(screw->engagement)) screw->engagement = e;
    if (gw_given(screw->tested_pullout)) screw->tested_pullout *= e / whole;
    out->screw = screw;
    out->altered |= (uint32_t)1 << GW_PART_screw; /* no specimen was held by it */
}

static void hang(struct gw_system *out, struct gw_ask *ask, const struct gw_as_read *read)
{
    const struct gw_hung hung = {number(read, GW_ITEM_screw_spacing), number(read, GW_ITEM_screw_end_distance),
                                 number(read, GW_ITEM_glass_bite)};
    if (!gw_given(hung.spacing) && !gw_given(hung.end_distance) && !gw_given(hung.bite)) return;
    out->hung = COPY(ask, struct gw_hung, &hung);
}

/* The system's gaps are averages of two opposite edges: of an edge that is said the other one is as drawn. fmin takes
 * what is given. */
static double gap_with(double drawn, double read, bool one)
{
    const double here = fmin(drawn, read);
    return one ? (here + drawn) / 2 : here;
}

static void glaze(struct gw_system *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read)
{
    const double bite = number(read, GW_ITEM_glass_bite), gap = number(read, GW_ITEM_edge_clearance);
    const int edge = spot->edge;
    if (!out->drift || (!gw_given(bite) && !gw_given(gap))) return;
    struct gw_drift_spec *drift = COPY(ask, struct gw_drift_spec, out->drift);
    if (gw_given(bite)) drift->bite = bite;
    if (edge != GW_EDGE_HEAD && edge != GW_EDGE_SILL && gw_given(drift->side_gap))
        drift->side_gap = gap_with(drift->side_gap, gap, edge >= 0);
    if (edge != GW_EDGE_LEFT && edge != GW_EDGE_RIGHT && gw_given(drift->end_gap))
        drift->end_gap = gap_with(drift->end_gap, gap, edge >= 0);
    out->drift = drift;
}

static void join(struct gw_system *out, struct gw_ask *ask, const struct gw_as_read *read)
{
    const double width = number(read, GW_ITEM_joint_width), in = number(read, GW_ITEM_splice_engagement);
    if (!out->stack_joint || (!gw_given(width) && !gw_given(in))) return;
    struct gw_stack_spec *joint = COPY(ask, struct gw_stack_spec, out->stack_joint);
    if (gw_given(width)) joint->width = width;
    if (gw_given(in)) joint->engagement = in;
    out->stack_joint = joint;
}

const struct gw_system *gw_system_as_read(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                                          const struct gw_system *system)
{
    struct gw_system out = *system;
    hang(&out, ask, read);
    shorten(&out, ask, read);
    glaze(&out, ask, spot, read);
    join(&out, ask, read);
    const bool same = out.hung == system->hung && out.screw == system->screw && out.drift == system->drift &&
                      out.stack_joint == system->stack_joint;
    return same ? system : COPY(ask, struct gw_system, &out);
}
