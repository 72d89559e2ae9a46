/* What bears the setting blocks beyond a transom: a chair or a leg. */
#include "judge/checks.h"
#include "judge/plated.h"
#include "judge/transom_load.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const double weight = gw_weight_resting_on(ask, place->element);
    gw_demand_term(out, ask, GW_FORCE, GW_NO_DIRECTION, weight / 2);
    if (gw_given(weight) && !(weight > 0)) gw_demand_not_asked(out, GW_PLAINLY("no glass rests on it"));
}

/* The blocks stand within the depth of a tube, so that its walls bear them as far as the check of transoms goes. */
static bool within_section(const struct gw_member_spec *transom)
{
    return transom && transom->tube && fabs(transom->eccentricity) <= transom->tube->depth / 2;
}

static bool has_figures(const struct gw_seat_spec *s)
{
    return s->alloy && gw_given(s->length) && gw_given(s->thickness) && gw_given(s->arm);
}

static void by_figures(struct gw_capacity *out, struct gw_ask *ask, double weight, const struct gw_seat_spec *s)
{
    struct gw_chair_case in = {.weight = weight, .arm = s->arm, .length = s->length, .thickness = s->thickness};
    struct gw_chair_result r;
    if (gw_metal_strength_of(&in.metal, s->alloy, s->thickness, &ask->engine) != GW_OK) {
        gw_capacity_unknown(out, gw_fault_message(ask));
        return;
    }
    gw_setting_chair(&r, &in, &ask->engine);
    gw_capacity_instead(out, GW_MOMENT, r.moment, r.allowable,
                        GW_PLAINLY("bending of the chair under half of the glass"));
    gw_capacity_instead(out, GW_THICKNESS, r.deflection, r.deflection_limit,
                        GW_PLAINLY("deflection of the chair under half of the glass"));
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_seat_spec *s = gw_part(system, glass_seat);
    const double weight = gw_term_of(d, 0)->value;
    if (!gw_given(weight)) gw_capacity_unknown(out, GW_PLAINLY(gw_unknown_weight));
    else if (s && gw_given(s->capacity)) {
        const struct gw_capacity_spec stated = {.capacity = s->capacity, .report = s->report};
        out->evidence = gw_stated_evidence(s->report);
        gw_capacity_limit(out, 0, 0, s->capacity, gw_stated_by(ask, &stated));
    } else if (s && has_figures(s)) by_figures(out, ask, weight, s);
    else if (!s && within_section(gw_part(system, transom)))
        gw_capacity_not_concerned(out, GW_PLAINLY("the weight stands within the transom's depth (transom: "
                                                  "eccentricity): taken as setting blocks on the transom's own walls"));
    else
        gw_capacity_unknown(out, GW_PLAINLY("what bears the setting blocks beyond the transom's section? Ask the "
                                            "manufacturer (glass_seat: capacity, or alloy, length, thickness, arm)"));
}

static const char *without(const struct gw_system *system)
{
    const struct gw_silicone_spec *bead = gw_part(system, silicone);
    return bead && bead->carries_weight == GW_YES ? "the silicone bears the weight of the glass" : NULL;
}

const struct gw_check gw_check_glass_seat = {
    .id = "glass_seat",
    .title = "Seats of the glass on transoms",
    .clause = "Aluminum Design Manual F",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_TRANSOM),
    .link = true,
    .does = &(const struct gw_functions){.demand = demand, .without = without, .capacity = capacity}};
