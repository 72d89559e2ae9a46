/* Mullions where they run past an anchor: moment with the anchor's reaction on a section with holes. At the ends of a
 * simple piece the anchor's own capacity covers this. */
#include "judge/anchor_load.h"
#include "judge/checks.h"
#include "judge/coverage.h"
#include "judge/leaning.h"
#include "judge/member.h"

#include "base/tolerance.h"

enum { MOMENT, REACTION };

/* Of the anchors at or in the stretch the largest reaction, both faces at a corner; N. Not said: `why` there is none.
 */
static double reaction_on(struct gw_message *why, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_leaning *l = gw_leaning_of(ask, e);
    double most = 0;
    for (size_t i = 0; i < l->n; i++) {
        const struct gw_element *a = l->items[i].on;
        struct gw_anchor_load load;
        const double level = a->kind == GW_ANCHOR ? gw_anchor_level(a) : GW_ABSENT;
        if (!(level > e->bottom - GW_HAIR_M && level < e->top + GW_HAIR_M)) continue;
        gw_anchor_load_of(&load, ask, a);
        if (gw_said(&load.fault)) *why = load.fault;
        most = fmax(most, fmax(load.inward, load.outward));
    }
    return most;
}

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_element *e = place->element;
    struct gw_pressures p;
    struct gw_message why = {0};
    const bool past = e->spans > 1 || e->overhang;
    const bool known = past && gw_demand_wind(out, ask, e, &p);
    const struct gw_stretch *s = known ? gw_stretch_of(ask, e) : NULL;
    const double faces = e->corner ? 2 : 1; /* each with its own moment and reaction, taken as added */
    gw_demand_term(out, ask, GW_MOMENT, GW_NO_DIRECTION, s ? faces * s->forces.moment : GW_ABSENT);
    gw_demand_term(out, ask, GW_FORCE, GW_NO_DIRECTION, s ? faces * reaction_on(&why, ask, e) : GW_ABSENT);
    if (!past) gw_demand_not_asked(out, GW_PLAINLY("it ends at its anchors, whose capacity covers it"));
    else if (s && gw_said(&s->fault)) gw_demand_unknown(out, s->fault);
    else if (gw_said(&why)) gw_demand_unknown(out, why);
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_past_anchor_spec *spec = gw_part(system, past_anchor);
    (void)d;
    if (!spec) {
        gw_capacity_unknown(out, GW_PLAINLY("what does the mullion take where it runs past an anchor, with its holes: "
                                            "which moment, which reaction? Ask the manufacturer's engineer "
                                            "(past_anchor: moment, reaction)"));
        return;
    }
    const struct gw_capacity_spec stated = {.capacity = spec->moment, .report = spec->report};
    const struct gw_message by = gw_stated_by(ask, &stated);
    const struct gw_message words =
        GW_SAY(ask->arena, "moment with the anchor's reaction, added: {}", gw_of_message(&by));
    out->evidence = gw_stated_evidence(spec->report);
    gw_capacity_limit(out, MOMENT, 0, spec->moment, words);
    gw_capacity_limit(out, REACTION, 0, spec->reaction, words);
}

const struct gw_check gw_check_past_anchor = {.id = "past_anchor",
                                              .title = "Mullions where they run past an anchor",
                                              .clause = "manufacturer's engineer",
                                              .scope = GW_PER_ELEMENT,
                                              .kinds = GW_KIND_BIT(GW_MULLION),
                                              .link = true,
                                              .does =
                                                  &(const struct gw_functions){.demand = demand, .capacity = capacity}};
