/* Mullions and transoms by calculation: strength under wind both ways, deflection, dead load of the glass. */
#include "judge_internal.h"

#include "galeward/anchor.h"
#include "galeward/combine.h"
#include "galeward/member.h"
#include "galeward/shedding.h"

#include "tables_data.h"

void gw_unanswered(struct gw_finding *f, const char *question)
{
    f->verdict = GW_NOT_SHOWN;
    f->evidence = GW_EVIDENCE_NONE;
    f->message = question;
}

/* A link that the structural test reaches at its pressure needs no calculation. */
bool gw_tested(struct gw_finding *f, const struct gw_judging *j)
{
    const struct gw_demand *d = f->demand;
    const char *report = gw_test_that_covers(j, f->candidate, d);
    if (!report) return false;
    f->verdict = GW_PASS;
    f->evidence = GW_BY_TEST;
    f->message = gw_format(j->model->arena, "%s covers it", report);
    return true;
}

void gw_weigh_calculated(struct gw_finding *f, double required, double provided, const char *message)
{
    f->required = required;
    f->provided = provided;
    f->utilisation = provided > 0 ? required / provided : (double)INFINITY;
    f->verdict = f->utilisation <= 1 ? GW_PASS : GW_FAIL;
    f->evidence = GW_BY_CALCULATION;
    f->message = message;
}

const char *gw_fault_of(const struct gw_judging *j, const struct gw_engine *engine)
{
    const char *how = engine->fault.status == GW_OUTSIDE_METHOD ? "outside the method: " : "";
    return gw_format(j->model->arena, "%s%s", how, engine->fault.message);
}

/* Mullions -----------------------------------------------------------------------------------------------------------
 */

static double greatest(const struct gw_demand *d) { return fmax(d->value, d->value_out); }

/* Both faces at once, each with a half bay and the greatest pressure: M_x/M_ax + M_y/M_ay, and shear alike. */
static void corner_strength(struct gw_finding *f, const struct gw_member_strength *m, const struct gw_stretch *s,
                            struct gw_judging *j)
{
    struct gw_engine engine;
    if (!gw_given(m->moment_y)) {
        gw_unanswered(f, "a corner mullion bends both ways: its strength about y is not known; ask the maker "
                         "(corner_mullion: tube)");
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    const bool known = gw_given(m->shear) && gw_given(m->shear_y);
    const double moment = gw_combine_faces(m->moment, m->moment_y, GW_BENDING, &engine);
    const double shear = known ? gw_combine_faces(m->shear, m->shear_y, GW_FORCE, &engine) : INFINITY;
    const bool by_shear = s->forces.shear / shear > s->forces.moment / moment;
    if (by_shear) f->dim = GW_FORCE;
    gw_weigh_calculated(f, by_shear ? s->forces.shear : s->forces.moment, by_shear ? shear : moment,
                        gw_format(j->model->arena, "corner: both faces at once, alike; %s",
                                  by_shear ? "shear of the webs" : m->governing));
}

void gw_settle_mullion(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    struct gw_member_strength m;
    (void)check;
    if (gw_tested(f, j)) return;
    const bool corner = e->corner;
    const struct gw_stretch *s = gw_stretch_of(j, e);
    const char *missing = gw_find_member(&m, corner ? f->candidate->corner_mullion : f->candidate->mullion, e->span,
                                         corner ? "corner_mullion" : "mullion", j, &f->used);
    if (s->fault || missing) {
        gw_unanswered(f, s->fault ? s->fault : missing);
        return;
    }
    f->direction = s->direction;
    f->dim = GW_MOMENT;
    gw_stretch_derive(j, e);
    if (corner) {
        corner_strength(f, &m, s, j);
        return;
    }
    double by_shear = gw_given(m.shear) ? s->forces.shear / m.shear : 0;
    bool shear = by_shear > s->forces.moment / m.moment;
    if (shear) f->dim = GW_FORCE;
    gw_weigh_calculated(f, shear ? s->forces.shear : s->forces.moment, shear ? m.shear : m.moment,
                        shear ? "shear of the webs" : gw_format(j->model->arena, "bending: %s", m.governing));
}

double gw_framing_limit(const struct gw_judging *j, double span, bool overhang, struct gw_engine *engine)
{
    const struct gw_framing_rules *rules = j->model->project.framing;
    double limit = gw_deflection_limit(span, overhang, false, engine);
    return rules && gw_given(rules->deflection_cap) ? fmin(limit, rules->deflection_cap) : limit;
}

static double wind_deflection_limit(const struct gw_judging *j, const struct gw_element *e, struct gw_engine *engine)
{
    return gw_framing_limit(j, e->span, e->overhang, engine);
}

static void weigh_deflection(struct gw_finding *f, double deflection, double limit, const char *message)
{
    f->required = limit;
    f->provided = deflection;
    f->utilisation = deflection / limit;
    f->verdict = f->utilisation <= 1 ? GW_PASS : GW_FAIL;
    f->evidence = GW_BY_CALCULATION;
    f->dim = GW_THICKNESS;
    f->at_most = true;
    f->message = message;
}

void gw_settle_mullion_deflection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    struct gw_engine engine;
    struct gw_member_strength m;
    (void)check;
    if (gw_tested(f, j)) return;
    const struct gw_stretch *s = gw_stretch_of(j, e);
    const bool corner = e->corner;
    const char *missing = gw_find_member(&m, corner ? f->candidate->corner_mullion : f->candidate->mullion, e->span,
                                         corner ? "corner_mullion" : "mullion", j, &f->used);
    if (s->fault || missing) {
        gw_unanswered(f, s->fault ? s->fault : missing);
        return;
    }
    if (corner && !gw_given(m.inertia_y)) {
        gw_unanswered(f, "a corner mullion bends both ways: its inertia about y is not known; ask the maker "
                         "(corner_mullion: inertia_y)");
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    double limit = wind_deflection_limit(j, e, &engine);
    double stiffness = corner ? gw_combine_stiffness(m.stiffness, m.elastic_modulus, m.inertia_y) : m.stiffness;
    gw_used_merge(&f->used, &engine.used);
    weigh_deflection(f, gw_mullion_deflection(&s->forces, stiffness, &engine), limit, "under wind");
}

/* Transoms -----------------------------------------------------------------------------------------------------------
 */

static struct gw_shed_lite lite_shed(const struct gw_lite_type *type, double height)
{
    struct gw_shed_lite lite = {height, GW_HELD_ALL_ROUND};
    if (!type || type->support == 4) return lite;
    lite.held = type->support != 2            ? GW_HELD_OTHERWISE
                : type->span == GW_SPAN_WIDTH ? GW_HELD_JAMBS
                                              : GW_HELD_HEAD_AND_SILL;
    return lite;
}

static struct gw_shed_case shed_to(const struct gw_element *e, double pressure)
{
    return (struct gw_shed_case){e->span, pressure, lite_shed(e->rests, e->above), lite_shed(e->under, e->below)};
}

/* Weight of the lite that rests on the horizontal, N; absent: its glass is not known. */
static double resting_weight(const struct gw_judging *j, const struct gw_element *e)
{
    struct gw_engine engine;
    struct gw_make_up make_up;
    if (!(e->above > 0)) return 0;
    if (!e->rests || !e->rests->layers.n) return GW_ABSENT;
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (gw_make_up_from(&make_up, e->rests->layers.items, e->rests->layers.n, &engine) != GW_OK) return GW_ABSENT;
    return gw_resting_weight(gw_make_up_weight(&make_up, &engine), e->span, e->above);
}

static const char NO_WEIGHT[] = "which glass rests on it? Ask the architect (lites: layers)";

static enum gw_status rail(struct gw_rail_result *out, const struct gw_member_strength *m,
                           const struct gw_member_spec *spec, const struct gw_element *e, double weight,
                           struct gw_engine *engine)
{
    const struct gw_rail_case in = {.weight = weight,
                                    .span = e->span,
                                    .offset = spec->block_offset,
                                    .elastic_modulus = m->elastic_modulus,
                                    .inertia = m->inertia_y,
                                    .shear_modulus = m->shear_modulus,
                                    .torsion_constant = m->torsion,
                                    .eccentricity = spec->eccentricity};
    return gw_rail_dead_load(out, &in, engine);
}

/* What both checks of a transom start from. */
struct carried {
    struct gw_member_strength m;
    struct gw_rail_result dead;
    double weight; /* N, of the glass that rests on it */
};

/* False: answered already, by a test or by what is missing; `about_y` says what the member lacks under weight. */
static bool carry(struct carried *c, struct gw_finding *f, struct gw_judging *j,
                  double (*about_y)(const struct carried *), const char *lacking, struct gw_engine *engine)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_member_spec *spec = f->candidate->transom;
    if (gw_tested(f, j)) return false;
    const char *missing = gw_find_member(&c->m, spec, e->span, "transom", j, &f->used);
    c->weight = resting_weight(j, e);
    if (!missing && !gw_given(c->weight)) missing = NO_WEIGHT;
    if (!missing && c->weight > 0 && !gw_given(about_y(c))) missing = lacking;
    gw_engine_init(engine, j->model->tables, j->trace);
    if (!missing && rail(&c->dead, &c->m, spec, e, c->weight, engine) != GW_OK) missing = gw_fault_of(j, engine);
    if (missing) gw_unanswered(f, missing);
    return !missing;
}

static double strength_about_y(const struct carried *c) { return c->m.moment_y; }
static double inertia_about_y(const struct carried *c) { return c->m.inertia_y; }

/* Wind about x and the weight of the glass about y at once. */
void gw_settle_transom(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    struct gw_engine engine;
    struct carried c;
    (void)check;
    if (!carry(&c, f, j, strength_about_y,
               "the transom carries glass: its strength about y is not known; ask the maker (transom: tube)", &engine))
        return;
    const struct gw_shed_case shed = shed_to(e, greatest(f->demand));
    const double wind = gw_shed_moment(&shed, &engine);
    const double use = gw_combine_bending(wind, c.m.moment, c.dead.moment, c.m.moment_y, &engine);
    f->direction = f->demand->value >= f->demand->value_out ? "inward" : "outward";
    gw_engine_init(&engine, j->model->tables, NULL);
    const double reaction = gw_shed_reaction(&shed, &engine);
    if (gw_given(c.m.shear) && reaction / c.m.shear > use) {
        f->dim = GW_FORCE;
        gw_weigh_calculated(f, reaction, c.m.shear, "shear of the webs under wind");
        return;
    }
    f->dim = GW_MOMENT;
    gw_weigh_calculated(
        f, wind, wind / use,
        gw_format(j->model->arena, "bending by wind and by the weight of the glass at once: %s", c.m.governing));
}

static double dead_limit(const struct gw_judging *j, const struct gw_rail_result *dead)
{
    const struct gw_framing_rules *rules = j->model->project.framing;
    return rules && gw_given(rules->dead_load_limit) ? rules->dead_load_limit : dead->deflection_limit;
}

/* The worse of wind and dead load. */
void gw_settle_transom_deflection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    struct gw_engine engine;
    struct carried c;
    (void)check;
    if (!carry(&c, f, j, inertia_about_y,
               "the transom carries glass: ask the maker for its inertia about y (transom: inertia_y)", &engine))
        return;
    double pressure = fmax(fabs(e->inward_deflection), fabs(e->outward_deflection));
    const struct gw_shed_case shed = shed_to(e, pressure);
    double wind_limit = wind_deflection_limit(j, e, &engine),
           wind = gw_shed_deflection(&shed, c.m.elastic_modulus, c.m.stiffness / c.m.elastic_modulus, &engine);
    bool by_weight = c.weight > 0 && c.dead.deflection / dead_limit(j, &c.dead) > wind / wind_limit;
    gw_used_merge(&f->used, &engine.used);
    weigh_deflection(f, by_weight ? c.dead.deflection : wind, by_weight ? dead_limit(j, &c.dead) : wind_limit,
                     by_weight ? "under the weight of the glass" : "under wind");
}

/* The end of a transom takes its wind reaction and half of the glass. */
void gw_settle_transom_connection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_capacity_spec *spec = f->candidate->transom_connection;
    struct gw_engine engine;
    (void)check;
    if (gw_tested(f, j)) return;
    double weight = resting_weight(j, e);
    if (!spec || !gw_given(weight)) {
        gw_unanswered(f, spec ? NO_WEIGHT
                              : "what does the end of the transom take? Ask the maker for a test: a screw spline or a "
                                "chase has no formula (transom_connection: capacity)");
        return;
    }
    const struct gw_shed_case shed = shed_to(e, greatest(f->demand));
    gw_engine_init(&engine, j->model->tables, j->trace);
    f->dim = GW_FORCE;
    gw_weigh_calculated(f, gw_combine_end(gw_shed_reaction(&shed, &engine), weight, &engine), spec->capacity,
                        spec->report ? gw_format(j->model->arena, "capacity by %s", spec->report)
                                     : "capacity as stated by the maker");
}

/* Splice
 * --------------------------------------------------------------------------------------------------------------- */

void gw_settle_splice(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_capacity_spec *spec = f->candidate->splice;
    const struct gw_stretch *s = gw_stretch_of(j, e);
    (void)check;
    if (s->fault) {
        gw_unanswered(f, s->fault);
        return;
    }
    if (!(s->forces.splice_shear > 0)) {
        f->verdict = GW_NOT_REQUIRED;
        f->message = "no splice in this stretch";
        return;
    }
    if (gw_tested(f, j)) return;
    if (!spec) {
        gw_unanswered(f, "what shear does the splice of the mullion take? Ask the maker (splice: capacity)");
        return;
    }
    f->dim = GW_FORCE;
    const char *by =
        spec->report ? gw_format(j->model->arena, "capacity by %s", spec->report) : "capacity as stated by the maker";
    gw_weigh_calculated(f, gw_combine_splice(s->forces.splice_shear, e->corner), spec->capacity,
                        e->corner ? gw_format(j->model->arena, "corner: both faces' shears added; %s", by) : by);
}

/* What any maker's framing must bring --------------------------------------------------------------------------------
 */

static bool demand_of(struct gw_member_demand *out, struct gw_judging *j, const struct gw_element *e)
{
    struct gw_engine engine;
    double deflection; /* m, with E I of 1 N m2 */
    gw_engine_init(&engine, j->model->tables, NULL);
    const double aluminum = gw_metal_moduli(GW_METAL_6063_T6, &engine).elastic;
    *out = (struct gw_member_demand){.element = e, .deflection_limit = wind_deflection_limit(j, e, &engine)};
    if (e->kind == GW_MULLION) {
        const struct gw_stretch *s = gw_stretch_of(j, e);
        out->moment = s->forces.moment;
        out->shear = s->forces.shear;
        deflection = s->forces.deflection;
        if (s->fault) return false;
    } else {
        const double pressure = fmax(fmax(e->inward_asd.pa, 0), fmax(-e->outward_asd.pa, 0));
        const struct gw_shed_case shed = shed_to(e, pressure);
        out->moment = gw_shed_moment(&shed, &engine);
        out->shear = gw_shed_reaction(&shed, &engine);
        deflection = gw_shed_deflection(&shed, 1, 1, &engine);
    }
    out->inertia = gw_inertia_for(deflection, aluminum, out->deflection_limit);
    return true;
}

void gw_judge_members(struct gw_judging *j)
{
    struct gw_judgement *out = j->out;
    size_t capacity = 0;
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        struct gw_member_demand one;
        if ((e->kind != GW_MULLION && e->kind != GW_TRANSOM) || e->outside || !demand_of(&one, j, e)) continue;
        out->members.items =
            gw_grow(j->model->arena, out->members.items, out->members.n, &capacity, sizeof *out->members.items);
        out->members.items[out->members.n++] = one;
    }
}
