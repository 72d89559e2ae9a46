/* Prices: a number and what it counts, "9.5 per ft", "14 per ft2", "0.4 each". */
#include "model_internal.h"

#include <string.h>

static bool is_bare(const struct gw_node *node)
{
    double plain;
    return gw_read_number(node->text, node->length, &plain) == node->length;
}

void gw_settle_price(struct gw_price *out, struct gw_model *model, const struct gw_node *node, enum gw_units preset,
                     const struct gw_priced *may)
{
    *out = (struct gw_price){GW_ABSENT, GW_COST};
    const struct gw_node *cost = gw_node_get(node, "cost");
    if (!cost || cost->kind != GW_SCALAR) return;
    for (size_t i = 0; i < may->n; i++) {
        double value;
        size_t at;
        /* a bare number is of the first that is counted; `each` is never left out where both are possible */
        if (is_bare(cost) && i > 0) break;
        if (gw_quantity_read(gw_units_standard(), may->dims[i], preset, cost->text, cost->length, &value, &at) !=
            GW_QUANTITY_OK)
            continue;
        if (value < 0) gw_diag_node(model->diags, GW_ERROR, "bad_value", "cost", cost, "a cost is not below 0");
        *out = (struct gw_price){value, may->dims[i]};
        return;
    }
    gw_diag_node(model->diags, GW_ERROR, "bad_value", "cost", cost, "'%s' is no cost of %s: write %s", cost->text,
                 may->of, may->example);
}
