/* Splices of mullions: shear; at a corner that of both faces. */
#include "judge/checks.h"
#include "judge/corner.h"
#include "judge/coverage.h"
#include "judge/line.h"
#include "judge/member.h"

#include "galeward/combine.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_pressures p;
    const bool known = gw_demand_wind(out, ask, e, &p);
    const struct gw_stretch *s = known ? gw_stretch_of(ask, e) : NULL;
    struct gw_corner_face face = {.splice_shear = 0};
    if (s) face = gw_corner_face_of(ask, e);
    const double shear = s ? gw_combine_splice(s->forces.splice_shear, face.splice_shear) : GW_ABSENT;
    gw_demand_term(out, ask, GW_FORCE, GW_NO_DIRECTION, shear);
    if (!s) return;
    if (gw_said(&s->fault) || gw_said(&face.fault)) gw_demand_unknown(out, gw_said(&s->fault) ? s->fault : face.fault);
    else if (!(shear > 0)) gw_demand_not_asked(out, GW_PLAINLY("no splice in this stretch"));
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_capacity_spec *spec = gw_part(system, splice);
    if (!spec) {
        gw_capacity_unknown(
            out, GW_PLAINLY("what shear does the splice of the mullion take? Ask the manufacturer (splice: capacity)"));
        return;
    }
    const struct gw_message by = gw_stated_by(ask, spec);
    out->evidence = gw_stated_evidence(spec->report);
    gw_capacity_limit(
        out, 0, 0, spec->capacity,
        d->element->corner ? GW_SAY(ask->arena, "corner: both faces' shears added; {}", gw_of_message(&by)) : by);
}

const struct gw_check gw_check_splice = {
    .id = "splice",
    .title = "Splices of mullions: shear",
    .clause = "manufacturer's test",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_MULLION),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_splice, .route = GW_RATING_OR_LIMITS}};
