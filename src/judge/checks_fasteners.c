/* Pressure plates and their screws, structural silicone, anchors, by calculation. */
#include "judge_internal.h"

#include "galeward/anchor.h"
#include "galeward/combine.h"
#include "galeward/silicone.h"

#include "tables_data.h"

#include <string.h>

static const double INCH = 0.0254; /* m, exact */

static double suction(const struct gw_demand *d) { return d->value_out; }

static double outward_of(const struct gw_element *e) { return fmax(-e->outward_asd.pa, 0); }

/* What the roof line cuts stands in two groups; the other part, or NULL. */
static const struct gw_element *other_part(const struct gw_judging *j, const struct gw_element *e)
{
    const double hair = 1e-6;
    const struct gw_wall_elements beside = gw_elements_beside(j, e);
    for (const struct gw_element *o = beside.from; o < beside.end; o++) {
        bool alike = o->kind == e->kind && o->zone == e->zone && o->corner == e->corner && o->parapet != e->parapet &&
                     strcmp(o->mark, e->mark) == 0;
        if (alike && (fabs(o->bottom - e->top) < hair || fabs(o->top - e->bottom) < hair)) return o;
    }
    return NULL;
}

/* Screws of a horizontal; those of a vertical stand one above the other, each on one side of the roof line. */
static bool horizontal(const struct gw_element *screw) { return screw->above > 0 || screw->below > 0; }

/* Screws -------------------------------------------------------------------------------------------------------------
 */

static bool glazed_with_plates(const struct gw_system *s) { return s->system->glazing != GW_SILICONE; }

static bool not_plated(struct gw_finding *f)
{
    if (glazed_with_plates(f->candidate)) return false;
    f->verdict = GW_NOT_REQUIRED;
    f->message = "the glass is held by silicone, not by a pressure plate";
    return true;
}

static enum gw_status metal_of(struct gw_metal_strength *out, enum gw_metal alloy, double thickness,
                               struct gw_engine *engine)
{
    struct gw_alloy found;
    enum gw_status status = gw_alloy_find(&found, alloy, thickness, false, engine);
    *out = (struct gw_metal_strength){.ultimate = found.ultimate,
                                      .yield = found.yield,
                                      .elastic_modulus = found.elastic_modulus,
                                      .thickness = GW_ABSENT};
    return status;
}

static const char *missing_of_screw(const struct gw_system *s)
{
    const struct gw_screw_spec *k = s->screw;
    if (!k) return "which screws hold the pressure plate? Ask the maker (screw)";
    if (k->hold == GW_HOLD_CHASE && !gw_given(k->tested_pullout))
        return "a chase or slot has no pull-out formula: ask the maker for a test (screw: tested_pullout)";
    if (k->hold == GW_HOLD_TAPPED && !(k->alloy && gw_given(k->engagement)) && !gw_given(k->tested_pullout))
        return "what holds the screw's thread? Ask the maker (screw: alloy, engagement)";
    if (!s->pressure_plate || !gw_given(k->head_diameter))
        return "does the head pull through the plate? Ask the maker (pressure_plate; screw: head_diameter)";
    return NULL;
}

static enum gw_status find_held(struct gw_screw_hold *h, const struct gw_system *s, struct gw_engine *engine)
{
    const struct gw_screw_spec *k = s->screw;
    struct gw_metal_strength holder;
    struct gw_sheet sheet = {.thickness = s->pressure_plate->thickness};
    struct gw_screw_result r;
    struct gw_screw_case in = {.screw = {.thread = k->thread,
                                         .diameter = k->diameter,
                                         .pitch = INCH / k->threads_per_inch,
                                         .stripping = GW_ABSENT,
                                         .minor = GW_ABSENT},
                               .head = {.diameter = k->head_diameter, .hole = GW_ABSENT},
                               .engagement = k->engagement,
                               .sheet = &sheet,
                               .edge_distance = GW_ABSENT,
                               .ultimate = k->ultimate,
                               .yield = GW_ABSENT,
                               .tested_tension = GW_ABSENT,
                               .tested_shear = GW_ABSENT,
                               .safety_factor = GW_ABSENT,
                               .metal_safety_factor = GW_ABSENT,
                               .demand_tension = GW_ABSENT,
                               .demand_shear = GW_ABSENT};
    enum gw_status status = metal_of(&sheet.metal, s->pressure_plate->alloy, sheet.thickness, engine);
    bool by_formula = k->hold == GW_HOLD_TAPPED && !gw_given(k->tested_pullout);
    if (status == GW_OK && by_formula) status = metal_of(&holder, k->alloy, k->engagement, engine);
    if (by_formula) in.metal = &holder;
    if (status == GW_OK) status = gw_screw_solve(&r, &in, engine);
    if (status != GW_OK) return status;
    return gw_screw_hold(h, &r, k->tested_pullout, engine);
}

static struct gw_screw_side side_of(const struct gw_element *e)
{
    return (struct gw_screw_side){outward_of(e), e->width, e->height};
}

/* The demand's pressure, which is the element's where nobody tries another. */
static struct gw_screw_side own_side(const struct gw_finding *f)
{
    const struct gw_element *e = f->demand->element;
    return (struct gw_screw_side){suction(f->demand), e->width, e->height};
}

/* Suction on the screw's own length of plate. */
void gw_settle_screw(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    (void)check;
    if (!not_plated(f) && !gw_tested(f, j)) gw_calculate_screw(f, j);
}

void gw_calculate_screw(struct gw_finding *f, struct gw_judging *j)
{
    const struct gw_element *e = f->demand->element;
    struct gw_engine engine;
    struct gw_screw_hold h;
    const char *missing = missing_of_screw(f->candidate);
    if (missing) {
        gw_unanswered(f, missing);
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (find_held(&h, f->candidate, &engine) != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    gw_used_merge(&f->used, &engine.used);
    f->direction = "outward";
    f->dim = GW_FORCE;
    const struct gw_element *o = horizontal(e) ? other_part(j, e) : NULL;
    if (o && o->outside) {
        gw_unanswered(f, o->outside);
        return;
    }
    if (!gw_given(h.allowable)) {
        gw_unanswered(f, gw_format(j->model->arena, "the %s is not known: ask the maker for it by test", h.by));
        return;
    }
    const struct gw_screw_side own = own_side(f), other = o ? side_of(o) : own;
    const double force = gw_screw_pull(&own, o ? &other : NULL, &engine);
    gw_weigh_calculated(f, force, h.allowable, h.by);
}

/* The plate between two screws. */
void gw_settle_plate(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    (void)check;
    if (!not_plated(f) && !gw_tested(f, j)) gw_calculate_plate(f, j);
}

void gw_calculate_plate(struct gw_finding *f, struct gw_judging *j)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_plate_spec *p = f->candidate->pressure_plate;
    struct gw_engine engine;
    struct gw_pressure_plate_result r;
    if (!p) {
        gw_unanswered(f, "which pressure plate? Ask the maker (pressure_plate: alloy, width, thickness)");
        return;
    }
    const struct gw_element *o = horizontal(e) ? other_part(j, e) : NULL;
    if (o && o->outside) {
        gw_unanswered(f, o->outside);
        return;
    }
    struct gw_plate_section section;
    gw_plate_flat(&section, p->width, p->hole, p->thickness);
    gw_engine_init(&engine, j->model->tables, j->trace);
    enum gw_status status = metal_of(&section.metal, p->alloy, p->thickness, &engine);
    const struct gw_screw_side own = own_side(f), other = o ? side_of(o) : own;
    const double width = gw_plate_load_width(&own, o ? &other : NULL);
    const struct gw_pressure_plate_case in = {.pressure = suction(f->demand),
                                              .width_left = width,
                                              .width_right = width,
                                              .spacing = e->height,
                                              .length = GW_ABSENT,
                                              .end_distance = GW_ABSENT,
                                              .gasket_load = GW_ABSENT,
                                              .preload = GW_ABSENT,
                                              .screw_allowable = GW_ABSENT,
                                              .chase_tested = GW_ABSENT,
                                              .safety_factor = GW_ABSENT,
                                              .section = &section};
    if (status == GW_OK) status = gw_pressure_plate(&r, &in, &engine);
    if (status != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    gw_used_merge(&f->used, &engine.used);
    f->direction = "outward";
    f->dim = GW_STRESS;
    gw_weigh_calculated(f, r.stress, r.stress_allowable, "bending of the plate between screws");
}

/* Structural silicone
 * -------------------------------------------------------------------------------------------------- */

void gw_settle_silicone(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_silicone_spec *s = f->candidate->silicone;
    struct gw_engine engine;
    struct gw_silicone_result r;
    (void)check;
    if (f->candidate->system->glazing == GW_CAPTURED) {
        f->verdict = GW_NOT_REQUIRED;
        f->message = "the glass is captured";
        return;
    }
    if (!s) {
        gw_unanswered(f, "how wide is the bite of the structural silicone? Ask the maker (silicone: bite)");
        return;
    }
    const struct gw_silicone_case in = {.width = e->width,
                                        .height = e->pane,
                                        .pressure = suction(f->demand),
                                        .allowable = s->design_stress,
                                        .weight = GW_ABSENT,
                                        .dead_allowable = GW_ABSENT,
                                        .movement = GW_ABSENT,
                                        .strain = GW_ABSENT,
                                        .bite = GW_ABSENT,
                                        .thickness = GW_ABSENT};
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (gw_silicone(&r, &in, &engine) != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    gw_used_merge(&f->used, &engine.used);
    f->direction = "outward";
    f->dim = GW_THICKNESS;
    gw_weigh_calculated(f, r.bite_wind, s->bite, "bite under suction; weight on setting blocks");
}

/* Anchors
 * -------------------------------------------------------------------------------------------------------------- */

/* The nearest anchor of the same verticals on the other side of the roof line, for its pressures; NULL. */
static const struct gw_element *across_roof(const struct gw_judging *j, const struct gw_element *e)
{
    const double hair = 1e-6;
    const struct gw_element *best = NULL;
    const struct gw_wall_elements beside = gw_elements_beside(j, e);
    for (const struct gw_element *o = beside.from; o < beside.end; o++) {
        bool alike = o->kind == GW_ANCHOR && o->zone == e->zone && o->corner == e->corner && o->parapet != e->parapet &&
                     fabs(o->width - e->width) < hair && strcmp(o->mark, e->mark) == 0;
        if (alike && (!best || fabs(o->bottom - e->bottom) < fabs(best->bottom - e->bottom))) best = o;
    }
    return best;
}

struct sides {
    double own, across; /* m, heights of wall whose pressure it takes */
    const struct gw_element *e, *o;
};

static double force_of(const char *symbol, const struct sides *s, double own, double across, struct gw_engine *engine)
{
    const struct gw_anchor_side here = {s->own, own}, there = {s->across, across};
    return gw_anchor_wind(symbol, s->e->width, &here, &there, engine);
}

static struct sides sides_of(const struct gw_judging *j, const struct gw_element *e, const struct gw_mullion_anchor *h)
{
    const struct gw_element *o = across_roof(j, e);
    return (struct sides){e->parapet ? h->above : h->below, e->parapet ? h->below : h->above, e, o ? o : e};
}

static struct gw_reaction reaction_of(struct gw_judging *j, const struct gw_element *e)
{
    struct gw_mullion_anchor h;
    struct gw_reaction r = {.element = e, .fault = gw_anchor_holds(&h, j, e), .cut = other_part(j, e) != NULL};
    const struct sides s = sides_of(j, e, &h);
    struct gw_engine engine;
    r.area = e->width * h.piece;
    r.inward = r.outward = r.inward_strength = r.outward_strength = GW_ABSENT;
    if (!r.fault && s.across > 0 && s.o->outside) r.fault = s.o->outside;
    if (r.fault) return r;
    gw_engine_init(&engine, j->model->tables, NULL);
    r.inward = force_of("R_in", &s, e->inward_asd.pa, s.o->inward_asd.pa, &engine);
    r.outward = force_of("R_out", &s, -e->outward_asd.pa, -s.o->outward_asd.pa, &engine);
    r.inward_strength = force_of("R_in", &s, e->inward.pa, s.o->inward.pa, &engine);
    r.outward_strength = force_of("R_out", &s, -e->outward.pa, -s.o->outward.pa, &engine);
    return r;
}

void gw_judge_reactions(struct gw_judging *j)
{
    struct gw_judgement *out = j->out;
    size_t capacity = 0;
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        if (e->kind != GW_ANCHOR || e->outside) continue;
        struct gw_reaction r = reaction_of(j, e);
        if (r.cut && e->parapet) continue; /* told with the part below */
        out->reactions.items =
            gw_grow(j->model->arena, out->reactions.items, out->reactions.n, &capacity, sizeof *out->reactions.items);
        out->reactions.items[out->reactions.n++] = r;
    }
}

/* The part above the roof line is told with the part below. */
static struct gw_reaction find_reaction(struct gw_judging *j, const struct gw_element *e)
{
    for (size_t i = 0; i < j->out->reactions.n; i++)
        if (j->out->reactions.items[i].element == e) return j->out->reactions.items[i];
    return reaction_of(j, e);
}

/* Heights by the beam, below and above the roof line; the piece that can hang on it. */
static void trace_reaction(struct gw_judging *j, const struct gw_reaction *r, double weight, struct gw_engine *engine)
{
    struct gw_mullion_anchor h;
    const struct gw_element *e = r->element;
    if (!j->trace || gw_anchor_holds(&h, j, e)) return;
    const struct sides s = sides_of(j, e, &h);
    force_of("R_in", &s, e->inward_asd.pa, s.o->inward_asd.pa, engine);
    force_of("R_out", &s, -e->outward_asd.pa, -s.o->outward_asd.pa, engine);
    gw_anchor_weight(weight, e->width, h.piece, engine);
}

/* Heaviest glass of the project's lite types, Pa: what a wall can weigh; absent where a make-up is not known. */
double gw_heaviest_glass(const struct gw_judging *j)
{
    double heaviest = 0;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, j->trace);
    for (size_t i = 0; i < j->model->project.lites.n; i++) {
        const struct gw_lite_type *type = &j->model->project.lites.items[i];
        struct gw_make_up make_up;
        if (!type->layers.n || gw_make_up_from(&make_up, type->layers.items, type->layers.n, &engine) != GW_OK)
            return GW_ABSENT;
        heaviest = fmax(heaviest, gw_make_up_weight(&make_up, &engine));
    }
    return heaviest > 0 ? heaviest : GW_ABSENT; /* no lite types: nothing is known of the glass */
}

struct anchor_use {
    double required, provided;
    const char *by, *direction;
};

static void worst_of(struct anchor_use *u, double required, double provided, const char *by, const char *direction)
{
    if (!gw_given(provided) || (gw_given(u->provided) && required / provided <= u->required / u->provided)) return;
    *u = (struct anchor_use){required, provided, by, direction};
}

static const char *missing_of_anchor(const struct gw_system *s, bool corner, double weight)
{
    const struct gw_anchor_spec *a = corner ? s->corner_anchor : s->anchor;
    bool known = a && gw_given(a->inward) && gw_given(a->outward) && gw_given(a->dead);
    if (corner && !known)
        return "an anchor at an outside corner takes both faces at once, one along its slab edge: what does it take? "
               "Ask the maker's engineer (corner_anchor: inward, outward, dead)";
    if (!a || !gw_given(a->inward) || !gw_given(a->outward) || !gw_given(a->dead))
        return "what does the anchor take? Ask the maker's engineer (anchor: inward, outward, dead)";
    if (!gw_given(s->frame_weight)) return "what does the framing weigh? Ask the maker (frame_weight)";
    return gw_given(weight) ? NULL : "what does the glass weigh? Ask the architect (lites: layers)";
}

static bool has_bolts(const struct gw_anchor_spec *a)
{
    return gw_given(a->eccentricity) && gw_given(a->bolt_arm) && a->bolts > 0 && gw_given(a->bolt_tension);
}

static enum gw_status weigh_bolts(struct anchor_use *u, const struct gw_anchor_spec *a, const struct gw_reaction *r,
                                  double wall_weight, struct gw_engine *engine)
{
    struct gw_anchor_reactions out;
    const double area = r->area;
    const struct gw_anchor_case in = {.carries = GW_CARRIES_DEAD_AND_WIND,
                                      .pressure_in = r->inward / area,
                                      .pressure_out = r->outward / area,
                                      .wall_weight = wall_weight,
                                      .spacing = r->element->width,
                                      .tributary_height = area / r->element->width,
                                      .eccentricity = a->eccentricity,
                                      .bolt_arm = a->bolt_arm,
                                      .bolts = a->bolts,
                                      .prying = GW_ABSENT,
                                      .clip_arm = GW_ABSENT};
    enum gw_status status = gw_anchor_reactions(&out, &in, engine);
    if (status == GW_OK) worst_of(u, out.bolt_tension, a->bolt_tension, "tension of a bolt", "outward");
    return status;
}

void gw_settle_anchor(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_anchor_spec *a = e->corner ? f->candidate->corner_anchor : f->candidate->anchor;
    struct gw_engine engine;
    struct gw_reaction r = find_reaction(j, e);
    struct anchor_use u = {.provided = GW_ABSENT};
    (void)check;
    const double glass = gw_heaviest_glass(j), weight = gw_corner_weight(glass + f->candidate->frame_weight, e->corner);
    const char *missing = missing_of_anchor(f->candidate, e->corner, glass);
    if (missing || r.fault) {
        gw_unanswered(f, missing ? missing : r.fault);
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    trace_reaction(j, &r, weight, &engine);
    worst_of(&u, r.inward, a->inward, "reaction", "inward");
    worst_of(&u, r.outward, a->outward, "reaction", "outward");
    worst_of(&u, weight * r.area, a->dead, "dead load", "");
    if (has_bolts(a) && weigh_bolts(&u, a, &r, weight, &engine) != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    f->dim = GW_FORCE;
    f->direction = u.direction;
    gw_weigh_calculated(f, u.required, u.provided,
                        gw_format(j->model->arena, "%s%s%s", u.by, r.cut ? ", both sides of the roof line" : "",
                                  e->corner ? ", corner: both faces at once" : ""));
}
