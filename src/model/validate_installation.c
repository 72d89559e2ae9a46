/* What no single key of clamp, gasket, drainage and installation can tell: ranges from least to most, limits that some
 * value can meet. A value with a fault of its own is absent here and raises no second one. */
#include "model_internal.h"

#include "galeward/items.h"

#include <math.h>

static const double YEAR = 365.25 * 86400; /* s, exact */

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_node_get(node, key) ? gw_node_get(node, key) : (node), \
                 __VA_ARGS__)

static const char *shown(struct gw_model *model, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, model->arena);
    const enum gw_units units = model->project.units ? model->project.units : GW_US;
    gw_quantity_print(&text, gw_units_standard(), dim, units, si);
    return text.at;
}

/* One value, or two. */
static void check_range(struct gw_model *model, const struct gw_node *node, const char *key, enum gw_dim dim,
                        const double *items, size_t n)
{
    if (n > 2) FAULT(model, node, key, "'%s' takes one value, or the least and the most: these are %zu", key, n);
    else if (n == 2 && items[0] > items[1])
        FAULT(model, node, key, "'%s' is from the least to the most: %s is more than %s", key,
              shown(model, dim, items[0]), shown(model, dim, items[1]));
}

static void check_clamp(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_clamp_spec *c = system->clamp;
    const struct gw_node *node = gw_node_get(system->node, "clamp");
    if (!c || !node) return;
    check_range(model, node, "nut_factor", GW_RATIO, c->nut_factor.items, c->nut_factor.n);
    check_range(model, node, "forming_torque", GW_MOMENT, c->forming_torque.items, c->forming_torque.n);
    if (c->tip >= c->chase)
        FAULT(model, node, "tip", "the screw's taper, %s, fills the chase of %s: no thread holds",
              shown(model, GW_THICKNESS, c->tip), shown(model, GW_THICKNESS, c->chase));
    if (c->service_life < YEAR)
        FAULT(model, node, "service_life",
              "a clamp is judged by what is left after a year at least: give a longer 'service_life', or leave it out");
}

static void check_gasket(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_node *node = gw_node_get(system->node, "gasket");
    if (system->gasket && node)
        check_range(model, node, "edge_load", GW_SHEAR_FLOW, system->gasket->edge_load.items,
                    system->gasket->edge_load.n);
}

static void check_drainage(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_node *node = gw_node_get(system->node, "drainage");
    const double slots = system->drainage ? system->drainage->slots : GW_ABSENT;
    if (node && gw_given(slots) && slots != floor(slots))
        FAULT(model, node, "slots", "'slots' are counted in whole numbers, those of the pocket under one lite");
}

static void check_limits(struct gw_model *model, const struct gw_node *node, const struct gw_item_kind *kind,
                         const struct gw_own_limits *own)
{
    const struct gw_node *at = gw_node_get(node, kind->id);
    if (!own || !at) return;
    if (!gw_node_get(at, "at_least") && !gw_node_get(at, "at_most"))
        FAULT(model, node, kind->id, "'%s' has no limit here: give at_least, at_most or both", kind->id);
    if (own->at_least > own->at_most)
        FAULT(model, at, "at_least", "no '%s' is at least %s and at most %s", kind->id,
              shown(model, kind->value.dim, own->at_least), shown(model, kind->value.dim, own->at_most));
}

void gw_validate_installation(struct gw_model *model, const struct gw_system *system)
{
    if (!system->node) return;
    const struct gw_node *node = gw_node_get(system->node, "installation");
    check_clamp(model, system);
    check_gasket(model, system);
    check_drainage(model, system);
    for (size_t i = 0; system->installation && node && i < GW_ITEM_COUNT; i++)
        check_limits(model, node, &gw_item_kinds[i], system->installation->of[i]);
}
