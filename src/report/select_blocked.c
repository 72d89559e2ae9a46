/* Why a candidate has no plan, in words: each check once, with the places where no choice passes it, and sets of checks
 * that no choice passes together. */
#include "report/check.h"
#include "report/select.h"

#include <string.h>

static void add_place(struct gw_text *out, const struct gw_plan_place *p)
{
    gw_text_addf(out, "%szone %d of %s%s", out->length ? ", " : "", p->zone, p->wall,
                 p->parapet ? " above the roof" : "");
}

static const char *failure_words(struct page *page, const struct gw_finding *f)
{
    const char *asked = gw_required_text(page, f), *has = gw_provided_text(page, f), *at = gw_at_text(page, f);
    const char *said = gw_message_text(page->arena, &f->message, page->shown);
    const char *way = f->direction ? gw_load_direction_name(f->direction) : "";
    if (!*asked || !*has) return gw_format(page->arena, "%s%s%s%s", gw_titled(page, f), at, *said ? ": " : "", said);
    if (f->at_most) return gw_format(page->arena, "%s%s: %s, %s", gw_titled(page, f), at, asked, has);
    return gw_format(page->arena, "%s%s: %s%s%s provided, %s asked", gw_titled(page, f), at, has, *way ? " " : "", way,
                     asked);
}

static bool same_check(const struct gw_blocked *a, const struct gw_blocked *b)
{
    return a->finding->demand->check == b->finding->demand->check && !a->choice == !b->choice &&
           (!a->choice || strcmp(a->choice, b->choice) == 0);
}

/* Where it hangs on a choice, the figures are those of the best. */
static const char *nearest_words(struct page *page, const struct gw_blocked *b)
{
    if (!b->nearest) return "";
    return *b->nearest ? gw_format(page->arena, ", with the best choice for it: %s", b->nearest)
                       : "; no choice does better than nothing chosen";
}

static void tell_alone(struct page *page, const struct gw_bid *bid, size_t first)
{
    const struct gw_blocked *all = bid->blocked.items, *worst = &all[first];
    struct gw_text where;
    size_t n = 0;
    gw_text_init(&where, page->arena);
    for (size_t i = 0; i < first; i++)
        if (same_check(&all[i], &all[first])) return; /* told with it */
    for (size_t i = first; i < bid->blocked.n; i++) {
        if (!same_check(&all[i], &all[first])) continue;
        add_place(&where, all[i].place);
        n++;
        if (gw_graver(all[i].finding, worst->finding)) worst = &all[i];
    }
    gw_report_item(page->report, gw_format(page->arena, "whatever is chosen%s%s: %s%s", n < bid->places.n ? " in " : "",
                                           n < bid->places.n ? where.at : "", failure_words(page, worst->finding),
                                           nearest_words(page, worst)));
}

/* Past the last of the set that begins there: those of one place. */
static size_t end_of_set(const struct gw_bid *bid, size_t first)
{
    const struct gw_blocked *all = bid->blocked.items;
    size_t end = first;
    while (end < bid->blocked.n && all[end].choice && !all[end].together && all[end].place == all[first].place) end++;
    return end;
}

static bool same_set(const struct gw_bid *bid, size_t a, size_t b)
{
    const size_t n = end_of_set(bid, a) - a;
    if (end_of_set(bid, b) - b != n) return false;
    for (size_t i = 0; i < n; i++)
        if (!same_check(&bid->blocked.items[a + i], &bid->blocked.items[b + i])) return false;
    return true;
}

static bool begins_set(const struct gw_bid *bid, size_t i)
{
    const struct gw_blocked *all = bid->blocked.items;
    return all[i].choice && !all[i].together && (!i || !all[i - 1].choice || all[i - 1].place != all[i].place);
}

static void tell_set(struct page *page, const struct gw_bid *bid, size_t first)
{
    const struct gw_blocked *all = bid->blocked.items;
    struct gw_text where;
    gw_text_init(&where, page->arena);
    for (size_t i = 0; i < first; i++)
        if (begins_set(bid, i) && same_set(bid, i, first)) return;
    for (size_t i = first; i < bid->blocked.n; i++)
        if (begins_set(bid, i) && same_set(bid, i, first)) add_place(&where, all[i].place);
    gw_report_line(page->report, gw_format(page->arena, "Every choice fails one of these in %s:", where.at));
    for (size_t i = first; i < end_of_set(bid, first); i++)
        gw_report_item(page->report, gw_format(page->arena, "with %s: %s", *all[i].choice ? all[i].choice : "nothing",
                                               failure_words(page, all[i].finding)));
}

/* Where no calculation is whole for want of a weight, a test that is short fails: with the weight a choice may pass. */
static void tell_unweighed(struct page *page, const struct gw_system *candidate)
{
    struct gw_text names;
    size_t n = 0;
    gw_text_init(&names, page->arena);
    for (size_t i = 0; i < candidate->options.n && i < GW_OPTION_LIMIT; i++)
        if (gw_options_unweighed(candidate, gw_option_bit(i)))
            gw_text_addf(&names, "%s'%s'", n++ ? ", " : "", candidate->options.items[i].name);
    if (!n) return;
    gw_report_item(
        page->report,
        gw_format(page->arena,
                  "no anchor, and no load path by calculation, is shown with %s: what does the framing weigh "
                  "with %s? Ask the manufacturer (change: frame_weight), then select again",
                  names.at, n > 1 ? "each" : "it"));
}

/* What keeps places apart that each have a choice. */
static void tell_together(struct page *page, const struct gw_bid *bid)
{
    const struct gw_blocked *all = bid->blocked.items;
    const char *rule = bid->blocked_rule;
    size_t first = 0;
    while (first < bid->blocked.n && !all[first].together) first++;
    gw_report_line(page->report,
                   gw_format(page->arena, "%s has a choice that passes, but they have to agree and cannot%s%s. %s",
                             first ? "Besides, for the rest each place by itself" : "No plan: each place by itself",
                             rule && *rule ? ": " : "", rule ? rule : "",
                             rule ? "Every plan fails one of these:" : "With nothing chosen fails:"));
    for (size_t i = first; i < bid->blocked.n; i++) {
        bool told = false;
        for (size_t k = first; k < i; k++) told = told || same_check(&all[k], &all[i]);
        const char *words = failure_words(page, all[i].finding);
        if (!told)
            gw_report_item(page->report, !rule ? words
                                               : gw_format(page->arena, "with %s: %s",
                                                           *all[i].choice ? all[i].choice : "nothing", words));
    }
}

void gw_tell_blocked(struct page *page, const struct gw_bid *bid)
{
    if (!bid->blocked.n || !bid->blocked.items[0].together) gw_report_line(page->report, "No plan.");
    for (size_t i = 0; i < bid->blocked.n; i++)
        if (!bid->blocked.items[i].choice) tell_alone(page, bid, i);
    for (size_t i = 0; i < bid->blocked.n; i++)
        if (begins_set(bid, i)) tell_set(page, bid, i);
    if (bid->blocked_together) tell_together(page, bid);
    tell_unweighed(page, bid->candidate);
}
