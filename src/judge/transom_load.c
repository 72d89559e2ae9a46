#include "judge/transom_load.h"

#include "judge/glass_lite.h"

#include "galeward/combine.h"

static struct gw_shed_lite lite_shed(const struct gw_lite_type *type, double height)
{
    struct gw_shed_lite lite = {height, GW_HELD_ALL_ROUND};
    if (!type || type->support == 4) return lite;
    lite.held = type->support != 2            ? GW_HELD_OTHERWISE
                : type->span == GW_SPAN_WIDTH ? GW_HELD_JAMBS
                                              : GW_HELD_HEAD_AND_SILL;
    return lite;
}

struct gw_shed_case gw_shed_along(const struct gw_element *e, double edge, double pressure)
{
    return (struct gw_shed_case){edge, pressure, lite_shed(e->rests, e->above), lite_shed(e->under, e->below)};
}

struct gw_shed_case gw_shed_to(const struct gw_element *e, double pressure)
{
    return gw_shed_along(e, e->span, pressure);
}

const char gw_unknown_weight[] = "which glass rests on it? Ask the architect (lites: layers)";

double gw_weight_resting_on(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_make_up make_up;
    if (!(e->above > 0)) return 0;
    const struct gw_lite_type *rests = gw_heaviest_now(ask, e->grid, e->rests);
    if (!rests || !rests->layers.n) return GW_ABSENT;
    if (gw_make_up_from(&make_up, rests->layers.items, rests->layers.n, &ask->engine) != GW_OK) return GW_ABSENT;
    return gw_resting_weight(gw_make_up_weight(&make_up, &ask->engine), e->span, e->above, &ask->engine);
}

const char gw_unknown_line_of_weight[] =
    "how far from the transom's shear center does the weight of the glass stand? It twists the transom; ask the "
    "manufacturer (transom: eccentricity; 0: through it)";

static enum gw_status hang(struct gw_carried *c, struct gw_ask *ask, const struct gw_element *e,
                           const struct gw_member_spec *spec)
{
    const bool twists =
        gw_given(c->member.shear_modulus) && gw_given(c->member.torsion) && gw_given(spec->eccentricity);
    const struct gw_rail_case in = {.weight = c->weight,
                                    .span = e->span,
                                    .offset = spec->block_offset,
                                    .elastic_modulus = c->member.elastic_modulus,
                                    .inertia = c->member.inertia_y,
                                    .shear_modulus = twists ? c->member.shear_modulus : GW_ABSENT,
                                    .torsion_constant = twists ? c->member.torsion : GW_ABSENT,
                                    .eccentricity = twists ? spec->eccentricity : GW_ABSENT};
    return gw_rail_dead_load(&c->dead, &in, &ask->engine);
}

bool gw_carried_by(struct gw_carried *c, struct gw_capacity *out, struct gw_ask *ask, const struct gw_element *e,
                   const struct gw_member_spec *spec, double (*about_y)(const struct gw_member_strength *m),
                   const char *lacking)
{
    struct gw_message question;
    const bool known = gw_member_of(&c->member, &question, ask, spec, e->span, "transom");
    c->weight = gw_weight_resting_on(ask, e);
    if (known && !gw_given(c->weight)) question = GW_PLAINLY(gw_unknown_weight);
    else if (known && c->weight > 0 && !gw_given(about_y(&c->member)))
        question = gw_unknown_about_y(ask, &c->member, lacking);
    else if (known && hang(c, ask, e, spec) != GW_OK) question = gw_fault_message(ask);
    if (gw_said(&question)) gw_capacity_unknown(out, question);
    return !gw_said(&question);
}
