/* Seismic force on anchors: out of plane, along the slab edge, and down with the weight. */
#include "judge/anchor_load.h"
#include "judge/checks.h"
#include "judge/corner.h"
#include "judge/drift.h"

#include "galeward/combine.h"

/* z is the level of the attachment, up to the roof; ground is the base. */
static enum gw_status force_per_weight(struct gw_seismic_forces *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_seismic *s = gw_seismic_of(ask);
    const double height = gw_height_ratio(gw_anchor_level(e), e->building->roof_height);
    double importance;
    const enum gw_status status = gw_importance_of(&importance, ask);
    if (status != GW_OK) return status;
    if (!gw_given(s->sds))
        return gw_refuse(&ask->engine, GW_MISSING, "sds",
                         "which S_DS? Ask the structural engineer (site: seismic: sds)");
    const struct gw_seismic_force_case in = {.edition = ask->model->project.codes->wind,
                                             .sds = s->sds,
                                             .weight = 1,
                                             .height_ratio = height,
                                             .importance = importance,
                                             .ap = GW_ABSENT,
                                             .rp = GW_ABSENT,
                                             .car = GW_ABSENT,
                                             .rpo = GW_ABSENT,
                                             .period = GW_ABSENT,
                                             .response_modification = GW_ABSENT,
                                             .overstrength = GW_ABSENT,
                                             .structure_importance = GW_ABSENT};
    gw_trace_note(&ask->engine, "W_p", "ASCE 7 13.3.1",
                  "forces of a unit weight, 1 N: the coefficient c of the weight");
    return gw_seismic_forces(out, &in, &ask->engine);
}

/* In parts of the weight: what hangs on the anchor is the candidate's. */
static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_seismic_forces forces = {.fasteners = {.force = GW_ABSENT}};
    const bool exempt = gw_is_exempt(out, ask, place->element);
    const bool known = !exempt && force_per_weight(&forces, ask, place->element) == GW_OK;
    gw_demand_term(out, ask, GW_RATIO, GW_NO_DIRECTION, known ? forces.fasteners.force : GW_ABSENT);
    if (exempt) return;
    if (!known) {
        gw_demand_unknown(out, gw_fault_message(ask));
        return;
    }
    out->message = out->summary =
        GW_SAY(ask->arena, "strength level: wall and bodies of connections {} % of the weight, fasteners {} %",
               gw_of_number(forces.wall_element.force * 100, 3), gw_of_number(forces.fasteners.force * 100, 3));
}

static struct gw_message missing(struct gw_ask *ask, const struct gw_system *s, const struct gw_element *e,
                                 double glass)
{
    const struct gw_anchor_spec *a = gw_anchor_of(s, e);
    if (!a || !gw_given(a->outward) || !gw_given(a->inward) || !gw_given(a->along) || !gw_given(a->dead))
        return GW_SAY(ask->arena,
                      "what does the anchor take? Ask the manufacturer's engineer ({}: inward, outward, along, dead)",
                      gw_of_text(gw_anchor_key(s, e)));
    if (!gw_given(gw_part(s, frame_weight))) return gw_ask_frame_weight(ask, s);
    if (!gw_given(glass)) return GW_PLAINLY("what does the glass weigh? Ask the architect (lites: layers)");
    return (struct gw_message){0};
}

/* Both faces at a corner. */
static void find_quake(struct gw_anchor_quake *out, struct gw_ask *ask, const struct gw_demand *d,
                       const struct gw_mullion_anchor *h, double per_area)
{
    const struct gw_element *e = d->element;
    struct gw_anchor_quake_case in = {.coefficient = gw_term_of(d, 0)->value, .sds = gw_seismic_of(ask)->sds};
    in.mass = gw_anchor_mass(per_area, e->width, h->below + h->above, &ask->engine);
    in.weight = gw_anchor_weight(per_area, e->width, gw_anchor_bearing(e)->piece, &ask->engine);
    gw_anchor_quake(out, &in, &ask->engine);
}

/* In one direction at a time, each with the weight. */
static void take(struct gw_capacity *out, struct gw_ask *ask, const struct gw_anchor_spec *anchor,
                 const struct gw_anchor_quake *quake)
{
    struct gw_anchor_parts parts = {.load = quake->out_of_plane,
                                    .allowable = fmin(anchor->inward, anchor->outward),
                                    .dead = quake->down,
                                    .dead_allowable = anchor->dead,
                                    .interaction = anchor->interaction,
                                    .load_words = GW_PLAINLY("fasteners of the connection, out of plane, 0.7 E"),
                                    .dead_words = GW_PLAINLY("dead load and the vertical force with it, D + 0.7 E")};
    gw_anchor_together(out, ask, &parts);
    parts.load = quake->along;
    parts.allowable = anchor->along;
    parts.load_words = GW_PLAINLY("fasteners of the connection, along the slab edge, 0.7 E");
    gw_anchor_together(out, ask, &parts);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_anchor_spec *anchor = gw_anchor_of(system, e);
    const double glass = gw_heaviest_glass(ask, e);
    struct gw_mullion_anchor h;
    struct gw_message question = missing(ask, system, e, glass);
    if (!gw_said(&question)) gw_anchor_holds(&h, &question, ask, e);
    if (gw_said(&question)) {
        gw_capacity_unknown(out, question);
        return;
    }
    struct gw_anchor_quake quake;
    out->evidence = gw_stated_evidence(anchor->report);
    find_quake(&quake, ask, d, &h, gw_corner_weight(glass + gw_part(system, frame_weight), gw_corner_faces(ask, e)));
    take(out, ask, anchor, &quake);
    gw_ask_bearing(out, e);
}

const struct gw_check gw_check_seismic_force = {
    .id = "seismic_force",
    .title = "Seismic force on anchors",
    .clause = "ASCE 7 13.3",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_ANCHOR),
    .does = &(const struct gw_functions){
        .needs = gw_seismic_needs, .waived = gw_seismic_waived, .demand = demand, .capacity = capacity}};
