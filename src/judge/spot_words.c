/* A place as a person on a scaffold names it. */
#include "galeward/inspect.h"
#include "judge/judge_internal.h"

static bool is_said(int number) { return number != GW_NO_INTEGER; }

static void say(struct gw_text *out, const char *before, int number, const char *after)
{
    if (!is_said(number)) return;
    gw_text_add(out, before);
    gw_text_count(out, number);
    gw_text_add(out, after);
}

void gw_spot_say(struct gw_text *out, const struct gw_spot *spot)
{
    static const char *const edges[] = {", head", ", sill", ", left edge", ", right edge"};
    gw_text_add(out, spot->wall ? spot->wall : "wall not said");
    say(out, ", story ", spot->story, "");
    say(out, ", column ", spot->column, " from the left");
    say(out, ", row ", spot->row, "");
    if (!is_said(spot->column)) say(out, ", line ", spot->line, " from the left end");
    if (spot->edge >= 0) gw_text_add(out, edges[spot->edge]);
}
