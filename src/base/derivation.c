/* The record of a derivation's steps. */
#include "base/fields.h"

static bool substituted(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_step *step = thing;
    if (step->formula) gw_step_substituted(out, step, shown);
    return step->formula != NULL;
}

static double result(const void *thing, enum gw_units shown)
{
    const struct gw_step *step = thing;
    return gw_quantity_shown(gw_units_standard(), step->dim, shown, step->value);
}

static bool unit(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_step *step = thing;
    if (gw_given(step->value)) gw_text_add(out, gw_dim_info(step->dim)->shown[shown]);
    return gw_given(step->value);
}

static const struct gw_field STEP[] = {
    F(gw_step, symbol, GW_T_TEXT, .help = "what is found"),
    F(gw_step, formula, GW_T_TEXT, .help = "expression in named values; null: found otherwise or decided, see `note`"),
    {.key = "substituted",
     .type = GW_T_SAID,
     .say = substituted,
     .help = "the formula with its values in their places"},
    {.key = "result", .type = GW_T_FIGURE, .figure = result, .help = "its value, in `unit`"},
    {.key = "unit", .type = GW_T_SAID, .say = unit, .help = "of the result; empty: a plain number"},
    F(gw_step, clause, GW_T_TEXT, .help = "where the formula stands"),
    F(gw_step, note, GW_T_MESSAGE, .help = "how it was found; or what was chosen, and why"),
    F(gw_step, group, GW_T_TEXT, .help = "what it is part of; null: nothing in particular"),
    F(gw_step, leads, GW_T_BOOL, .help = "a result of the derivation rests on it"),
};
const struct gw_record gw_step_record = RECORD("step", gw_step, STEP, .help = "a step of a derivation");
