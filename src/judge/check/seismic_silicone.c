/* The structural bead in shear under the drift that reaches the lite, with importance as 13.3.2 has it; or the test
 * that held the lite until it fell out. */
#include "judge/checks.h"
#include "judge/drift.h"
#include "judge/racking.h"

static void capacity(struct gw_capacity *out, struct gw_ask *ask, const struct gw_demand *d,
                     const struct gw_system *system)
{
    const struct gw_element *e = d->element;
    const struct gw_silicone_spec *s = gw_part(system, silicone);
    struct gw_racking_result r;
    double in_lite = 0;
    if (!s || !gw_given(s->thickness) || !gw_given(s->shear_strain) || !gw_part(system, drift)) {
        gw_capacity_unknown(out, GW_PLAINLY("how thick is the bead, how far may it shear, how does the system take "
                                            "drift? Ask the manufacturer (silicone: thickness, shear_strain; drift: "
                                            "path)"));
        return;
    }
    enum gw_status status = gw_drift_in_lite(&in_lite, ask, e, gw_part(system, drift), gw_term_of(d, 0)->value);
    const struct gw_racking_case in = {in_lite, e->width, e->pane, s->thickness};
    if (status == GW_OK) status = gw_silicone_racking(&r, &in, &ask->engine);
    if (status != GW_OK) gw_capacity_unknown(out, gw_fault_message(ask));
    else
        gw_capacity_instead(out, GW_RATIO, r.strain_corner, s->shear_strain,
                            GW_PLAINLY("shear of the bead at a corner, slip over thickness"));
}

const struct gw_check gw_check_seismic_silicone = {.id = "seismic_silicone",
                                                   .title = "Structural silicone when the story drifts",
                                                   .clause = "ASTM C1401",
                                                   .scope = GW_PER_ELEMENT,
                                                   .kinds = GW_KIND_BIT(GW_LITE),
                                                   .does = &(const struct gw_functions){.needs = gw_drift_needs,
                                                                                        .waived = gw_seismic_waived,
                                                                                        .demand = gw_demand_drift,
                                                                                        .without = gw_without_bead,
                                                                                        .capacity = capacity,
                                                                                        .test = gw_test_racking,
                                                                                        .route = GW_RATING_OR_LIMITS}};
