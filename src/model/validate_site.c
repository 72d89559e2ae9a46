/* What no single field of the site and of the movements can tell. */
#include "model_internal.h"

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_at_key(node, key), __VA_ARGS__)

/* A zone goes with its missile, and what is waived is not asked for. */
static void check_impact(struct gw_model *model)
{
    const struct gw_site *site = model->project.site;
    const struct gw_impact *impact = site ? site->impact : NULL;
    if (!impact || !impact->node || gw_holds_fault(model, impact->node)) return;
    if (impact->rule == GW_IMPACT_NONE && impact->missile)
        FAULT(model, impact->node, "missile", "'impact' asks for none and for a missile");
    if (impact->wind_zone != GW_NO_INTEGER && !impact->missile)
        FAULT(model, impact->node, "wind_zone", "'wind_zone' wants the missile that is asked for with it");
}

/* One drift, said once. */
static void check_seismic(struct gw_model *model)
{
    const struct gw_node *node = gw_node_get(gw_node_get(model->project.node, "site"), "seismic");
    if (!node || gw_holds_fault(model, node)) return;
    bool drift = gw_node_get(node, "story_drift"), ratio = gw_node_get(node, "story_drift_ratio");
    if (drift && ratio)
        FAULT(model, node, "story_drift_ratio",
              "'story_drift_ratio' beside 'story_drift': the drift is given twice; leave one of them out");
    if ((drift || ratio) && gw_node_get(node, "structure"))
        FAULT(
            model, node, "structure",
            "'structure' is for the allowable drift, which the structural engineer's takes the place of: leave one of "
            "them out");
}

static void check_range(struct gw_model *model, const struct gw_node *node, const char *low, double low_si,
                        const char *high, double high_si)
{
    bool lower = gw_node_get(node, low), upper = gw_node_get(node, high);
    if (lower != upper)
        gw_diag_node(model->diags, GW_ERROR, "missing", lower ? high : low, node, "'%s' is missing: '%s' goes with it",
                     lower ? high : low, lower ? low : high);
    else if (lower && low_si > high_si) FAULT(model, node, low, "'%s' is above '%s'", low, high);
}

static void check_movement(struct gw_model *model)
{
    const struct gw_movement_rules *m = model->project.movement;
    const struct gw_node *node = gw_node_get(model->project.node, "movement");
    if (!m || !node || gw_holds_fault(model, node)) return;
    check_range(model, node, "coldest", m->coldest, "hottest", m->hottest);
    check_range(model, node, "set_coldest", m->set_coldest, "set_warmest", m->set_warmest);
    if (gw_node_get(node, "set_coldest") && !gw_node_get(node, "coldest"))
        gw_diag_node(model->diags, GW_ERROR, "missing", "coldest", node,
                     "'coldest' and 'hottest' are missing: temperatures at installation need those in service");
}

void gw_validate_site(struct gw_model *model)
{
    check_impact(model);
    check_seismic(model);
    check_movement(model);
}
