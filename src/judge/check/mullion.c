/* Mullions under wind: bending and shear; at a corner of both faces at once. */
#include "judge/checks.h"
#include "judge/corner.h"
#include "judge/coverage.h"
#include "judge/line.h"
#include "judge/member.h"

#include "galeward/combine.h"

enum { MOMENT, SHEAR };

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p;
    struct gw_stretch felt = {.forces = {.moment = GW_ABSENT, .shear = GW_ABSENT}};
    if (gw_demand_wind(out, ask, place->element, &p)) {
        const struct gw_stretch *s = gw_stretch_of(ask, place->element);
        felt.direction = s->direction;
        if (!gw_said(&s->fault)) felt.forces = s->forces; /* the capacity tells why there are none */
        gw_stretch_derive(ask, place->element);
    }
    gw_demand_term(out, ask, GW_MOMENT, felt.direction, felt.forces.moment);
    gw_demand_term(out, ask, GW_FORCE, felt.direction, felt.forces.shear);
}

/* How many times this face's the other's is; wind bends every stretch. */
static double times(double other, double own) { return own > 0 ? other / own : 0; }

/* Both faces at once: M_x/M_ax + M_y/M_ay, and shear alike. */
static void corner(struct gw_capacity *out, struct gw_ask *ask, const struct gw_element *e,
                   const struct gw_member_spec *spec, const struct gw_member_strength *m)
{
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    const struct gw_corner_face face = gw_corner_face_of(ask, e);
    const struct gw_message words = gw_corner_words(ask, e, face.wall);
    const struct gw_message governing = gw_member_governing(ask, spec, m);
    const struct gw_message bending = GW_SAY(ask->arena, "{}; {}", gw_of_message(&words), gw_of_message(&governing));
    const struct gw_message shear = GW_SAY(ask->arena, "{}; shear of the webs", gw_of_message(&words));
    if (gw_said(&face.fault)) {
        gw_capacity_unknown(out, face.fault);
        return;
    }
    if (!gw_given(m->moment_y)) {
        gw_capacity_unknown(out, gw_unknown_about_y(ask, m,
                                                    "a corner mullion bends both ways: its strength about y is not "
                                                    "known; ask the manufacturer (corner_mullion: tube)"));
        return;
    }
    struct gw_engine *engine = &ask->engine;
    const double moments = times(face.moment, s->forces.moment), shears = times(face.shear, s->forces.shear);
    gw_capacity_limit(out, MOMENT, 0, gw_combine_faces(m->moment, m->moment_y, moments, GW_BENDING, engine), bending);
    if (!gw_given(m->shear) || !gw_given(m->shear_y)) return;
    gw_capacity_limit(out, SHEAR, 1, gw_combine_faces(m->shear, m->shear_y, shears, GW_FORCE, engine), shear);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_stretch *s = gw_stretch_of(ask, d->element);
    struct gw_member_strength m;
    struct gw_message question;
    if (!gw_mullion_of(&m, &question, ask, system, d->element) || gw_said(&s->fault)) {
        gw_capacity_unknown(out, gw_said(&s->fault) ? s->fault : question);
        return;
    }
    const struct gw_member_spec *spec = gw_mullion_spec(system, d->element);
    const double safety = gw_member_safety(ask, spec);
    const struct gw_message governing = gw_member_governing(ask, spec, &m);
    out->evidence = gw_member_evidence(spec);
    if (d->element->corner) {
        corner(out, ask, d->element, spec, &m);
        for (unsigned i = 0; i < out->n; i++) out->limits[i].safety = safety;
        return;
    }
    gw_capacity_limit(out, MOMENT, 0, m.moment, GW_SAY(ask->arena, "bending: {}", gw_of_message(&governing)))->safety =
        safety;
    if (gw_given(m.shear)) gw_capacity_limit(out, SHEAR, 1, m.shear, GW_PLAINLY("shear of the webs"))->safety = safety;
}

const struct gw_check gw_check_mullion = {
    .id = "mullion",
    .title = "Mullions: bending and shear",
    .clause = "Aluminum Design Manual F, G",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_MULLION),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_mullion, .route = GW_RATING_OR_LIMITS}};
