/* A place as a person on a scaffold names it. */
#include "galeward/inspect.h"
#include "judge/judge_internal.h"

static bool is_said(int number) { return number != GW_NO_INTEGER; }

void gw_spot_say(struct gw_text *out, const struct gw_spot *spot)
{
    static const char *const edges[] = {"head", "sill", "left edge", "right edge"};
    gw_text_add(out, spot->wall ? spot->wall : "wall not said");
    if (is_said(spot->story)) gw_text_addf(out, ", story %d", spot->story);
    if (is_said(spot->column)) gw_text_addf(out, ", column %d from the left", spot->column);
    if (is_said(spot->row)) gw_text_addf(out, ", row %d", spot->row);
    if (is_said(spot->line) && !is_said(spot->column)) gw_text_addf(out, ", line %d from the left end", spot->line);
    if (spot->edge >= 0) gw_text_addf(out, ", %s", edges[spot->edge]);
}
