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

/* A line of that one value, which is drawn fresh. */
static void judge_line(struct gw_item_result *out, struct reviewing *r, const struct gw_spot *spot,
                       const struct gw_system *system, enum gw_item_id item, double value)
{
    struct gw_as_read read;
    gw_as_read_clear(&read);
    read.of[item].number = value;
    read.torque_age = 0;
    read.drawn = true;
    gw_item_judge(out, &r->bench.ask, gw_item_of(item), spot, &read, system);
}

struct worst_line {
    struct gw_item_result result;
    enum gw_item_id item;
    double value; /* absent: none was judged */
};

static void take_line(struct worst_line *w, struct reviewing *r, const struct gw_spot *spot,
                      const struct gw_system *system, enum gw_item_id item, double value)
{
    struct worst_line line = {.item = item, .value = value};
    if (!gw_given(value)) return;
    judge_line(&line.result, r, spot, system, item, value);
    if (!gw_given(w->value) || gw_item_graver(&line.result, &w->result)) *w = line;
}

/* Screwed as the system says, or as the wall does; at each end of what it asks of torque and length. */
static void take_all(struct worst_line *w, struct reviewing *r, const struct gw_spot *spot,
                     const struct gw_system *system)
{
    static const enum gw_item_id limited[] = {GW_ITEM_screw_torque, GW_ITEM_screw_length};
    const double own = gw_screw_spacing(system, spot->screws->grid);
    take_line(w, r, spot, system, GW_ITEM_screw_spacing, gw_given(own) ? own : spot->screws->height);
    for (size_t i = 0; i < sizeof limited / sizeof *limited; i++) {
        struct gw_item_limit limit;
        gw_item_limit_at(&limit, &r->bench.ask, gw_item_of(limited[i]), spot, system);
        take_line(w, r, spot, system, limited[i], limit.at_least);
        take_line(w, r, spot, system, limited[i], limit.at_most);
    }
}

/* False: no line is judged there. */
static bool worst_line(struct worst_line *out, struct reviewing *r, const struct gw_system *system)
{
    struct gw_spots each;
    struct gw_spot worst;
    struct gw_message why;
    *out = (struct worst_line){.value = GW_ABSENT};
    if (!gw_spot_each_of(&each, &worst, &why, &r->bench.ask, NULL, 0, gw_item_of(GW_ITEM_screw_spacing)->on))
        return false;
    for (size_t i = 0; i < each.n; i++)
        if (each.items[i].spot.screws) take_all(out, r, &each.items[i].spot, system);
    return gw_given(out->value);
}

void gw_lines_as_offered(struct gw_comment *c, struct reviewing *r, const char *part, const struct gw_system *accepted,
                         const struct gw_system *offered)
{
    struct worst_line was, is;
    if (!bears_on_lines(part) || !worst_line(&was, r, accepted) || !worst_line(&is, r, offered)) return;
    const enum gw_item_verdict verdict = is.result.verdict;
    if (verdict == was.result.verdict || !gw_item_graver(&is.result, &was.result)) return;
    const enum gw_consequence consequence = verdict == GW_ITEM_NOT_MET   ? GW_IT_FAILS
                                            : verdict == GW_ITEM_UNKNOWN ? GW_IT_IS_NOT_SHOWN
                                                                         : c->consequence;
    const struct gw_message left = gw_left_words(r, &is.result);
    const struct gw_message lines =
        GW_SAY(r->arena, "its screw lines, at {} of {}: {}", gw_of_text(gw_item_kinds[is.item].title),
               gw_item_shown(is.item, (struct gw_item_value){is.value, 0}), gw_of_message(&left));
    c->effect = gw_said(&c->effect) ? gw_say_both(r->arena, &c->effect, "; ", &lines) : lines;
    if (verdict == GW_ITEM_NOT_MET) r->lines_short_by = is.result.mechanism;
    if (consequence >= c->consequence) return;
    c->consequence = consequence;
    c->evidence = verdict == GW_ITEM_UNKNOWN ? GW_EVIDENCE_NONE : GW_BY_CALCULATION;
}
