/* Anchors to the structure under wind and weight. */
#include "judge/anchor_load.h"
#include "judge/checks.h"

#include "galeward/anchor.h"
#include "galeward/combine.h"

enum { INWARD, OUTWARD };

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_anchor_load load = {.inward = GW_ABSENT, .outward = GW_ABSENT};
    struct gw_pressures p;
    if (gw_demand_wind(out, ask, place->element, &p)) gw_anchor_load_of(&load, ask, place->element);
    gw_demand_term(out, ask, GW_FORCE, GW_INWARD, load.inward);
    gw_demand_term(out, ask, GW_FORCE, GW_OUTWARD, load.outward);
}

static struct gw_message missing(const struct gw_anchor_load *load, const struct gw_anchor_spec *a,
                                 const struct gw_system *s, const struct gw_element *e, double glass)
{
    if (!a || !gw_given(a->inward) || !gw_given(a->outward) || !gw_given(a->dead))
        return GW_PLAINLY(e->corner ? "an anchor at an outside corner takes both faces at once, one along its slab "
                                      "edge: what does it take? Ask the manufacturer's engineer (corner_anchor: "
                                      "inward, outward, dead)"
                                    : "what does the anchor take? Ask the manufacturer's engineer (anchor: inward, "
                                      "outward, dead)");
    if (!gw_given(s->frame_weight))
        return GW_PLAINLY("what does the framing weigh? Ask the manufacturer (frame_weight)");
    return gw_given(glass) ? load->fault : GW_PLAINLY("what does the glass weigh? Ask the architect (lites: layers)");
}

static struct gw_message words(struct gw_ask *ask, const char *what, const struct gw_anchor_load *load,
                               const struct gw_element *e)
{
    return GW_SAY(ask->arena, "{}{}{}", gw_of_text(what), gw_of_text(load->cut ? ", both sides of the roof line" : ""),
                  gw_of_text(e->corner ? ", corner: both faces at once" : ""));
}

static bool has_bolts(const struct gw_anchor_spec *a)
{
    return gw_given(a->eccentricity) && gw_given(a->bolt_arm) && a->bolts > 0 && gw_given(a->bolt_tension);
}

static enum gw_status add_bolts(struct gw_capacity *out, struct gw_ask *ask, const struct gw_anchor_spec *a,
                                const struct gw_anchor_load *load, const struct gw_element *e, double weight)
{
    struct gw_anchor_reactions r;
    const double area = load->area;
    const struct gw_anchor_case in = {.carries = GW_CARRIES_DEAD_AND_WIND,
                                      .pressure_in = load->inward / area,
                                      .pressure_out = load->outward / area,
                                      .wall_weight = weight,
                                      .spacing = e->width,
                                      .tributary_height = area / e->width,
                                      .eccentricity = a->eccentricity,
                                      .bolt_arm = a->bolt_arm,
                                      .bolts = a->bolts,
                                      .prying = GW_ABSENT,
                                      .clip_arm = GW_ABSENT};
    const enum gw_status status = gw_anchor_reactions(&r, &in, &ask->engine);
    if (status != GW_OK) return status;
    struct gw_limit *limit =
        gw_capacity_instead(out, GW_FORCE, r.bolt_tension, a->bolt_tension, words(ask, "tension of a bolt", load, e));
    limit->turned = true;
    limit->direction = GW_OUTWARD;
    return GW_OK;
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
    const double glass = gw_heaviest_glass(ask), weight = gw_corner_weight(glass + system->frame_weight, e->corner);
    struct gw_anchor_load load;
    load_again(&load, ask, e);
    const struct gw_message question = missing(&load, a, system, e, glass);
    if (gw_said(&question)) {
        gw_capacity_unknown(out, question);
        return;
    }
    const struct gw_message reaction = words(ask, "reaction", &load, e);
    gw_capacity_limit(out, INWARD, 0, a->inward, reaction);
    gw_capacity_limit(out, OUTWARD, 1, a->outward, reaction);
    struct gw_limit *dead =
        gw_capacity_instead(out, GW_FORCE, gw_anchor_weight(weight, e->width, load.area / e->width, &ask->engine),
                            a->dead, words(ask, "dead load", &load, e));
    dead->turned = true; /* down: neither in nor out */
    if (has_bolts(a) && add_bolts(out, ask, a, &load, e, weight) != GW_OK)
        gw_capacity_unknown(out, gw_fault_message(ask));
}

const struct gw_check gw_check_anchor = {.id = "anchor",
                                         .title = "Anchors to the structure",
                                         .clause = "ASCE 7 combinations",
                                         .scope = GW_PER_ELEMENT,
                                         .kinds = GW_KIND_BIT(GW_ANCHOR),
                                         .link = true,
                                         .does = &(const struct gw_functions){.demand = demand, .capacity = capacity}};
