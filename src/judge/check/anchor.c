/* Anchors to the structure under wind and weight at once: D + 0.6 W, and for bolts what relieves less. */
#include "judge/anchor_load.h"
#include "judge/checks.h"
#include "judge/corner.h"
#include "judge/coverage.h"
#include "judge/member.h"

#include "galeward/anchor.h"
#include "galeward/combine.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_anchor_load load = {.inward = GW_ABSENT, .outward = GW_ABSENT};
    struct gw_pressures p;
    if (gw_demand_wind(out, ask, place->element, &p)) {
        gw_anchor_load_of(&load, ask, place->element);
        gw_corner_load(&load, ask, place->element);
    }
    gw_demand_term(out, ask, GW_FORCE, GW_INWARD, load.inward);
    gw_demand_term(out, ask, GW_FORCE, GW_OUTWARD, load.outward);
}

static const char *ask_capacity(const struct gw_system *s, const struct gw_element *e)
{
    if (e->corner)
        return "an anchor at an outside corner takes both faces at once, one along its slab edge: what does it take? "
               "Ask the manufacturer's engineer (corner_anchor: inward, outward, dead)";
    if (gw_is_half(s, e))
        return "one unit alone hangs on the anchor at a jamb: what does its half take? Ask the manufacturer's engineer "
               "(jamb_anchor: inward, outward, dead)";
    return "what does the anchor take? Ask the manufacturer's engineer (anchor: inward, outward, dead)";
}

static struct gw_message missing(struct gw_ask *ask, const struct gw_anchor_load *load, const struct gw_anchor_spec *a,
                                 const struct gw_system *s, const struct gw_element *e, double glass)
{
    if (!a || !gw_given(a->inward) || !gw_given(a->outward) || !gw_given(a->dead))
        return GW_PLAINLY(ask_capacity(s, e));
    if (!gw_given(gw_part(s, frame_weight))) return gw_ask_frame_weight(ask, s);
    return gw_given(glass) ? load->fault : GW_PLAINLY("what does the glass weigh? Ask the architect (lites: layers)");
}

static struct gw_message words(struct gw_ask *ask, struct gw_message what, const struct gw_anchor_load *load,
                               const struct gw_element *e)
{
    return GW_SAY(ask->arena, "{}{}{}", gw_of_message(&what),
                  gw_of_text(load->cut ? ", both sides of the roof line" : ""),
                  gw_of_text(e->corner ? ", corner: both faces at once" : ""));
}

static bool has_bolts(const struct gw_anchor_spec *a)
{
    return gw_given(a->eccentricity) && gw_given(a->bolt_arm) && a->bolts > 0 && gw_given(a->bolt_tension);
}

/* Tension by wind and by the couple of the weight, shear by the weight. */
static void add_bolts(struct gw_capacity *out, struct gw_ask *ask, const struct gw_anchor_spec *a,
                      const struct gw_anchor_load *load, const struct gw_element *e, double dead)
{
    const struct gw_anchor_case in = {
        .eccentricity = a->eccentricity, .bolt_arm = a->bolt_arm, .bolts = a->bolts, .prying = GW_ABSENT};
    const struct gw_anchor_bolt_case loads = {load->inward,    load->outward, dead,
                                              a->bolt_tension, a->bolt_shear, a->bolt_interaction};
    struct gw_anchor_bolts b;
    gw_anchor_bolts(&b, &loads, &in, &ask->engine);
    const bool sheared = dead > 0 && gw_given(a->bolt_shear);
    const struct gw_message bolt =
        GW_SAY(ask->arena, "a bolt in tension{}, {}", gw_of_text(sheared ? " and shear" : ""), gw_of_text(b.name));
    struct gw_limit *limit = gw_capacity_instead(
        out, GW_FORCE, b.tension, b.use > 0 ? b.tension / b.use : a->bolt_tension, words(ask, bolt, load, e));
    limit->use = b.use;
    limit->turned = true;
    limit->direction = b.inward ? GW_INWARD : GW_OUTWARD;
    if (dead > 0 && !gw_given(a->bolt_shear))
        gw_capacity_instead(out, GW_FORCE, b.shear, GW_ABSENT,
                            GW_PLAINLY("the bolts carry the weight in shear beside their tension: what shear does one "
                                       "take? Ask the manufacturer's engineer (anchor: bolt_shear)"));
}

/* The demand derived the reactions. */
static void load_again(struct gw_anchor_load *load, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_trace *trace = ask->engine.trace;
    ask->engine.trace = NULL;
    gw_anchor_load_of(load, ask, e);
    ask->engine.trace = trace;
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_anchor_spec *a = gw_anchor_of(system, e);
    const double glass = gw_heaviest_glass(ask, e),
                 weight = gw_corner_weight(glass + gw_part(system, frame_weight), gw_corner_faces(ask, e));
    struct gw_anchor_load load;
    load_again(&load, ask, e);
    gw_corner_load(&load, ask, e);
    const struct gw_message question = missing(ask, &load, a, system, e, glass);
    if (gw_said(&question)) {
        gw_capacity_unknown(out, question);
        return;
    }
    out->evidence = gw_stated_evidence(a->report);
    const double dead = gw_anchor_weight(weight, e->width, load.area / e->width, &ask->engine);
    struct gw_anchor_parts parts = {.load = load.inward,
                                    .allowable = a->inward,
                                    .dead = dead,
                                    .dead_allowable = a->dead,
                                    .direction = GW_INWARD,
                                    .interaction = a->interaction,
                                    .load_words = words(ask, GW_PLAINLY("reaction"), &load, e),
                                    .dead_words = GW_PLAINLY(e->corner ? "dead load of both faces" : "dead load")};
    gw_anchor_together(out, ask, &parts);
    parts.load = load.outward;
    parts.allowable = a->outward;
    parts.direction = GW_OUTWARD;
    gw_anchor_together(out, ask, &parts);
    gw_ask_bearing(out, e);
    if (has_bolts(a)) add_bolts(out, ask, a, &load, e, dead);
}

const struct gw_check gw_check_anchor = {
    .id = "anchor",
    .title = "Anchors to the structure",
    .clause = "ASCE 7 combinations",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_ANCHOR),
    .link = true,
    .does = &(const struct gw_functions){
        .demand = demand, .capacity = capacity, .test = gw_test_anchor, .route = GW_RATING_OR_LIMITS}};
