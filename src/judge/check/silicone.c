/* Structural silicone: the bite under suction and, where the bead carries it, under the weight of the glass; the
 * proportions of the bead; the edge seal of insulating units. */
#include "judge/checks.h"
#include "judge/glass_lite.h"

#include "galeward/combine.h"
#include "galeward/silicone.h"
#include "tables_data.h"

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    gw_demand_wind(out, ask, place->element, &p);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, p.outward);
}

/* The proportions that practice keeps: a thick bead for movement, none so thin and wide that it cannot be filled. */
static void add_shape(struct gw_capacity *out, struct gw_ask *ask, const struct gw_silicone_spec *s)
{
    const struct gw_silicone_shape *shape = &ask->model->tables->silicone_shape[0];
    const double least = fmax(shape->least_m, s->bite / shape->ratio);
    gw_used_add(&ask->engine.used, &shape->row);
    if (!gw_given(s->thickness)) {
        gw_capacity_instead(
            out, GW_THICKNESS, least, GW_ABSENT,
            GW_PLAINLY("how thick is the structural silicone? Ask the manufacturer (silicone: thickness)"));
        return;
    }
    gw_capacity_instead(out, GW_THICKNESS, least, s->thickness,
                        GW_SAY(ask->arena, "thickness of the bead, in practice at least {} and the bite over {}",
                               gw_of_quantity(GW_THICKNESS, shape->least_m), gw_of_quantity(GW_RATIO, shape->ratio)));
    gw_capacity_instead(out, GW_THICKNESS, s->thickness, s->bite,
                        GW_PLAINLY("bite, in practice no less than the thickness of the bead"));
}

/* Absent: what is missing is in `question`. */
static double weight_of(struct gw_message *question, struct gw_ask *ask, const struct gw_element *e,
                        const struct gw_system *system)
{
    const struct gw_lite_type *type = gw_glazed_type(ask, e);
    struct gw_make_up make_up;
    if (system->system->glazing != GW_SILICONE) {
        *question = GW_PLAINLY("which edges of the glass does the bead hold that carries its weight? Ask the "
                               "manufacturer for a calculation of it");
        return GW_ABSENT;
    }
    *question = GW_PLAINLY("how heavy is the glass that the bead carries? Ask the architect (lites: layers)");
    if (!type || gw_make_up_from(&make_up, type->layers.items, type->layers.n, &ask->engine) != GW_OK) return GW_ABSENT;
    return gw_resting_weight(gw_make_up_weight(&make_up, &ask->engine), e->width, e->pane, &ask->engine);
}

static void add_weight(struct gw_capacity *out, struct gw_silicone_case *in, struct gw_ask *ask,
                       const struct gw_element *e, const struct gw_system *system)
{
    struct gw_message question;
    if (gw_part(system, silicone)->carries_weight != GW_YES) return;
    in->weight = weight_of(&question, ask, e, system);
    if (!gw_given(in->weight)) gw_capacity_instead(out, GW_THICKNESS, GW_ABSENT, GW_ABSENT, question);
}

/* More than practice's stress is a favorable statement: it counts where a report approves it. */
static bool is_unapproved(const struct gw_ask *ask, double stress, const char *report)
{
    const struct gw_silicone_stress *usual = &ask->model->tables->silicone_stress[GW_ROW_SILICONE_STRESS_WIND];
    return gw_given(stress) && stress > usual->stress_pa * (1 + GW_HAIR) && !report;
}

static struct gw_message at_stress(struct gw_ask *ask, const char *how, double stress, const char *report)
{
    if (!is_unapproved(ask, stress, report)) return GW_PLAINLY(how);
    const double usual = ask->model->tables->silicone_stress[GW_ROW_SILICONE_STRESS_WIND].stress_pa;
    return GW_SAY(ask->arena,
                  "{}; judged at {}: no report of the sealant's manufacturer approves {} (silicone: report)",
                  gw_of_text(how), gw_of_quantity(GW_STRESS, usual), gw_of_quantity(GW_STRESS, stress));
}

static struct gw_message under_suction(struct gw_ask *ask, const struct gw_silicone_spec *s)
{
    const bool carries = s->carries_weight == GW_YES;
    const char *how = carries ? "bite under suction" : "bite under suction; weight on setting blocks";
    return at_stress(ask, how, s->design_stress, s->report);
}

static bool has_cavity(const struct gw_lite_type *type)
{
    for (size_t i = 0; type && i < type->layers.n; i++)
        if (gw_given(type->layers.items[i].cavity)) return true;
    return false;
}

/* The frame's bead holds the inner pane of an insulating unit; the outer one hangs on the seal of its edge. How much of
 * the suction it takes depends on the cavity; all of it is safe. */
static void add_edge_seal(struct gw_capacity *out, const struct gw_silicone_case *lite, struct gw_ask *ask,
                          const struct gw_element *e, const struct gw_silicone_spec *s)
{
    const struct gw_edge_seal_spec *seal = s->edge_seal;
    struct gw_silicone_case in = *lite;
    struct gw_silicone_result r;
    if (!has_cavity(gw_glazed_type(ask, e))) return;
    if (!seal) {
        gw_capacity_instead(out, GW_THICKNESS, GW_ABSENT, GW_ABSENT,
                            GW_PLAINLY("the edge seal of the insulating unit holds its outer pane: how wide is its "
                                       "bite? Ask the manufacturer of the units (silicone: edge_seal)"));
        return;
    }
    in.allowable = is_unapproved(ask, seal->design_stress, seal->report) ? GW_ABSENT : seal->design_stress;
    in.weight = GW_ABSENT;
    if (gw_silicone(&r, &in, &ask->engine) != GW_OK) {
        gw_capacity_unknown(out, gw_fault_message(ask));
        return;
    }
    gw_capacity_instead(out, GW_THICKNESS, r.bite_wind, seal->bite,
                        at_stress(ask, "bite of the unit's edge seal, the suction wholly on the outer pane",
                                  seal->design_stress, seal->report));
}

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_silicone_spec *s = gw_part(system, silicone);
    struct gw_silicone_result r;
    if (!s) {
        gw_capacity_unknown(
            out, GW_PLAINLY("how wide is the bite of the structural silicone? Ask the manufacturer (silicone: bite)"));
        return;
    }
    struct gw_silicone_case in = {.width = e->width,
                                  .height = e->pane,
                                  .pressure = gw_term_of(d, 0)->value,
                                  .allowable =
                                      is_unapproved(ask, s->design_stress, s->report) ? GW_ABSENT : s->design_stress,
                                  .weight = GW_ABSENT,
                                  .dead_allowable = GW_ABSENT,
                                  .movement = GW_ABSENT,
                                  .strain = GW_ABSENT,
                                  .bite = GW_ABSENT,
                                  .thickness = GW_ABSENT};
    add_weight(out, &in, ask, e, system);
    if (gw_silicone(&r, &in, &ask->engine) != GW_OK) {
        gw_capacity_unknown(out, gw_fault_message(ask));
        return;
    }
    gw_capacity_instead(out, GW_THICKNESS, r.bite_wind, s->bite, under_suction(ask, s));
    if (gw_given(in.weight))
        gw_capacity_instead(out, GW_THICKNESS, r.bite_dead, s->bite,
                            GW_PLAINLY("bite under the weight of the glass, all round, besides the wind"));
    add_shape(out, ask, s);
    add_edge_seal(out, &in, ask, e, s);
}

const struct gw_check gw_check_silicone = {
    .id = "silicone",
    .title = "Structural silicone: bite and thickness",
    .clause = "ASTM C1401",
    .scope = GW_PER_ELEMENT,
    .kinds = GW_KIND_BIT(GW_LITE),
    .link = true,
    .does = &(const struct gw_functions){.demand = demand, .without = gw_without_bead, .capacity = capacity}};
