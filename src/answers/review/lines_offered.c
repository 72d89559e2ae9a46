/* What screw lines come to with an offer's own clamp, torque, screws and plates: no check judges the clamp. */
#include "causes.h"
#include "drawn.h"

#include <string.h>

static bool bears_on_lines(const char *part)
{
    static const char *const parts[] = {"clamp", "installation", "screw", "pressure_plate"};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        if (strcmp(parts[i], part) == 0) return true;
    return false;
}

/* Screwed as the system says, or as the wall does. */
static void judge_line(struct gw_item_result *out, struct reviewing *r, const struct gw_spot *spot,
                       const struct gw_system *system)
{
    struct gw_as_read read;
    const double own = gw_screw_spacing(system, spot->screws->grid);
    gw_as_read_clear(&read);
    read.of[GW_ITEM_screw_spacing].number = gw_given(own) ? own : spot->screws->height;
    read.drawn = true;
    gw_item_judge(out, &r->bench.ask, gw_item_of(GW_ITEM_screw_spacing), spot, &read, system);
}

static bool worst_line(struct gw_item_result *out, struct reviewing *r, const struct gw_system *system)
{
    struct gw_spots each;
    struct gw_spot worst;
    struct gw_message why;
    bool any = false;
    if (!gw_spot_each_of(&each, &worst, &why, &r->bench.ask, NULL, 0, gw_item_of(GW_ITEM_screw_spacing)->on))
        return false;
    for (size_t i = 0; i < each.n; i++) {
        struct gw_item_result result;
        if (!each.items[i].spot.screws) continue;
        judge_line(&result, r, &each.items[i].spot, system);
        if (!any || gw_item_graver(&result, out)) *out = result;
        any = true;
    }
    return any;
}

void gw_lines_as_offered(struct gw_comment *c, struct reviewing *r, const char *part, const struct gw_system *accepted,
                         const struct gw_system *offered)
{
    struct gw_item_result was, is;
    if (!bears_on_lines(part) || !worst_line(&was, r, accepted) || !worst_line(&is, r, offered)) return;
    if (is.verdict == was.verdict || !gw_item_graver(&is, &was)) return;
    const enum gw_consequence consequence = is.verdict == GW_ITEM_NOT_MET   ? GW_IT_FAILS
                                            : is.verdict == GW_ITEM_UNKNOWN ? GW_IT_IS_NOT_SHOWN
                                                                            : c->consequence;
    const struct gw_message left = gw_left_words(r, &is);
    const struct gw_message lines = GW_SAY(r->arena, "its screw lines: {}", gw_of_message(&left));
    c->effect = gw_said(&c->effect) ? gw_say_both(r->arena, &c->effect, "; ", &lines) : lines;
    if (consequence >= c->consequence) return;
    c->consequence = consequence;
    c->evidence = is.verdict == GW_ITEM_UNKNOWN ? GW_EVIDENCE_NONE : GW_BY_CALCULATION;
}
