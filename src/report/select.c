/* The page of choosing: who passes at which cost and what governs, what is missing, then each candidate's plan. */
#include "report/select.h"
#include "base/fields.h"
#include "report/check.h"
#include "report/draw/pictures.h"
#include "report/how_found.h"
#include "report/margins.h"
#include "report/results.h"
#include "report/view.h"

#include <string.h>

/* What is chosen where ----------------------------------------------------------------------------------------------
 */

static const struct view_column CHOICE_COLUMNS[] = {
    COLUMN("Wall", "wall"),
    COLUMN("Zone", "zone"),
    COLUMN("Part", "part"),
    COLUMN("Cost", "place_cost", .dim = GW_RATIO),
    COLUMN("Use", "use", .right = true),
    COLUMN("Governs", "check_name"),
    COLUMN("At", "element"),
    COLUMN("Options", "options"),
    COLUMN("Make-ups", "lites"),
};
static const struct view CHOICES = VIEW(&gw_place_row_record, CHOICE_COLUMNS);
static const struct view_column QUANTITY_COLUMNS[] = {
    COLUMN("Wall", "wall"),
    COLUMN("Zone", "zone"),
    COLUMN("Part", "part"),
    COLUMN("Area", "area"),
    COLUMN("Lites", "lite_count"),
    COLUMN("Mullions", "mullion_length"),
    COLUMN("Transoms", "transom_length"),
    COLUMN("Screws", "screws"),
    COLUMN("Anchors", "anchors"),
};
static const struct view QUANTITIES = VIEW(&gw_place_row_record, QUANTITY_COLUMNS);
/* Without screws, where candidates space them otherwise. */
static const struct view_column SHARED_COLUMNS[] = {
    COLUMN("Wall", "wall"),
    COLUMN("Zone", "zone"),
    COLUMN("Part", "part"),
    COLUMN("Area", "area"),
    COLUMN("Lites", "lite_count"),
    COLUMN("Mullions", "mullion_length"),
    COLUMN("Transoms", "transom_length"),
    COLUMN("Anchors", "anchors"),
};
static const struct view SHARED = VIEW(&gw_place_row_record, SHARED_COLUMNS);

/* What fails is of a wall or a lite type as a whole: no row of the places, which are of elements, has it. */
static void tell_beside_places(struct page *page, const struct gw_bid *bid)
{
    const struct gw_finding *f = bid->summary.governing;
    if (bid->verdict == GW_PASS || !f || f->demand->element) return;
    gw_report_line(page->report,
                   gw_format(page->arena, "%s%s decides, which stands in no row: rows are of what is in a place.",
                             gw_titled(page, f), gw_at_text(page, f)));
}

static void places(struct page *page, const struct gw_bid *bid)
{
    tell_beside_places(page, bid);
    struct place_row *rows = gw_alloc(page->arena, bid->places.n + 1, sizeof *rows);
    for (size_t i = 0; i < bid->places.n; i++) gw_place_row(&rows[i], page->arena, bid, &bid->places.items[i]);
    gw_view_list(page, "", &CHOICES, rows, bid->places.n);
    gw_page_how_planned(page);
}

/* "zone 5 of east" */
void gw_add_plan_place(struct gw_text *out, const struct gw_plan_place *p)
{
    gw_text_addf(out, "zone %d of %s%s", p->zone, p->wall, p->parapet ? " above the roof" : "");
}

static bool screws_alike(const struct selections *s)
{
    const struct gw_bid *first = s->items.items->bid;
    for (size_t i = 1; i < s->items.n; i++)
        for (size_t p = 0; p < first->places.n; p++)
            if (s->items.items[i].bid->places.items[p].quantities.screws != first->places.items[p].quantities.screws)
                return false;
    return true;
}

static void tell_screws(struct page *page, const struct gw_bid *bid)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < bid->places.n; p++) {
        if (!bid->places.items[p].quantities.screws) continue;
        gw_text_addf(&out, "%s%ld in ", out.length ? "; " : "", bid->places.items[p].quantities.screws);
        gw_add_plan_place(&out, bid->places.items[p].place);
    }
    if (out.length)
        gw_report_item(page->report, gw_format(page->arena, "screws of %s: %s", bid->candidate->name, out.at));
}

/* Whoever the candidate is, but for the screws. */
static void quantities(struct page *page, const struct selections *s)
{
    const struct gw_bid *bid = s->items.n ? s->items.items->bid : NULL;
    if (!bid) return;
    struct place_row *rows = gw_alloc(page->arena, bid->places.n + 1, sizeof *rows);
    for (size_t i = 0; i < bid->places.n; i++) gw_place_row(&rows[i], page->arena, bid, &bid->places.items[i]);
    gw_report_section(page->report, GW_PART_ANSWERS, "Quantities");
    const bool alike = screws_alike(s);
    gw_view_list(page,
                 s->bids->shares_corners
                     ? "Of any candidate. Members and panes that the roof line cuts count with the part below. The "
                       "mullion and the anchors of a corner that two walls share count once, with the wall that is "
                       "named first; an option that the other alone takes is priced there for them."
                     : "Of any candidate. Members and panes that the roof line cuts count with the part below.",
                 alike ? &QUANTITIES : &SHARED, rows, bid->places.n);
    for (size_t i = 0; i < s->items.n && !alike; i++) tell_screws(page, s->items.items[i].bid);
}

/* What options, and make-ups dearer than the type's own, add in the edge strips alone. */
static double edge_cost(const struct gw_bid *bid)
{
    double sum = 0;
    for (size_t p = 0; p < bid->places.n; p++) {
        const struct gw_selected *place = &bid->places.items[p];
        if (place->place->zone != 5) continue;
        for (size_t i = 0; i < place->options.n; i++) sum += place->options.items[i].cost;
        for (size_t i = 0; i < place->lites.n; i++) {
            const struct gw_selected_lite *l = &place->lites.items[i];
            const struct gw_price *own = &l->type->price;
            const double count = own->dim == GW_COST ? (double)l->count : l->area;
            sum += l->name ? l->cost - (gw_given(own->value) ? own->value * count : 0) : 0;
        }
    }
    return sum;
}

static void tell_saving(struct page *page, const struct selections *s, const struct gw_bid *bid)
{
    if (!gw_given(bid->cost) || s->bids->by_mass) return;
    const double edge = edge_cost(bid);
    if (!gw_given(bid->everywhere_cost)) gw_report_item(page->report, "no single choice in every place does it");
    else
        gw_report_item(page->report,
                       gw_format(page->arena, "the same choice in every place: %s; place by place saves %s",
                                 gw_cost_text(page->arena, bid->everywhere_cost),
                                 gw_cost_text(page->arena, bid->saving)));
    if (edge > 0)
        gw_report_item(page->report, gw_format(page->arena, "the corners alone (zone 5): %s for what is chosen there",
                                               gw_cost_text(page->arena, edge)));
}

static void tell_stopped(struct page *page, const struct selections *s)
{
    for (size_t i = 0; i < s->items.n; i++) {
        const struct gw_bid *bid = s->items.items[i].bid;
        const char *least = s->bids->by_mass ? gw_select_mass(page, bid->bound) : gw_cost_text(page->arena, bid->bound);
        if (bid->complete) continue;
        gw_report_item(page->report,
                       gw_format(page->arena, "%s: stopped: %s; %s%s", bid->candidate->name,
                                 gw_given(bid->cost) ? "the best plan so far" : "no plan was found so far",
                                 !gw_given(bid->bound) ? "the mass of none that is left is known"
                                 : s->bids->by_mass    ? "none is lighter than "
                                                       : "none is cheaper than ",
                                 gw_given(bid->bound) ? least : ""));
    }
}

/* What its plan has open that is no question: the first page counts it. */
static void tell_open(struct page *page, const struct verdict_story *story)
{
    const struct words confirm = gw_confirm_words(page, story), stated = gw_stated_words(page, story);
    for (size_t i = 0; i < confirm.n; i++) gw_report_item(page->report, confirm.items[i]);
    for (size_t i = 0; i < stated.n; i++) gw_report_item(page->report, stated.items[i]);
}

static void candidate(struct page *page, const struct selections *s, const struct selection *one,
                      const struct verdict_story *story)
{
    const struct gw_bid *bid = one->bid;
    gw_report_section(page->report, GW_PART_ANSWERS,
                      gw_format(page->arena, "%s: %s", bid->candidate->name, gw_verdict_loud((int)bid->verdict)));
    if (!gw_is_told_first(page, (size_t)(one - s->items.items))) gw_tell_offered(page, bid);
    places(page, bid);
    gw_tell_choices(page, s, bid);
    tell_saving(page, s, bid);
    tell_open(page, story);
    gw_page_plan_pictures(page, &s->pictures, bid->candidate);
    gw_page_picture(page, &s->pictures,
                    gw_format(page->arena, "cost:%s", gw_picture_word(page->arena, bid->candidate->name)));
    if (bid->verdict == GW_FAIL) gw_tell_blocked(page, bid);
    if (bid->margins) gw_page_margins(page, bid->margins);
    else gw_report_line(page->report, "What would change it: --all.");
}

/* What could be added to choose from --------------------------------------------------------------------------------
 */

static void what_to_add(struct page *page, const struct selections *s)
{
    if (!s->items.n)
        gw_report_line(
            page->report,
            "No candidates are listed: nothing is chosen. Add 'candidates: [a system file]' to the project.");
    if (gw_has_choices(s->bids->model)) return;
    gw_report_line(page->report,
                   "There is nothing to choose from: each candidate is judged as it is. Add options to a system file: "
                   "'options: [{name: steel insert, change: {frame_weight: 4.5 psf}, adds: {inertia_x: 4.2 in4}, of: "
                   "mullion, cost: 9.5 per ft}]', or "
                   "make-ups to a lite of the project: 'alternatives: [{name: thicker outer pane, layers: [...], cost: "
                   "16.5 per ft2}]'.");
}

static void unpriced(struct page *page, const struct selections *s)
{
    struct gw_text out;
    if (!s->bids->unpriced.n) return;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < s->bids->unpriced.n; i++)
        gw_text_addf(&out, "%s%s", i ? "; " : "", s->bids->unpriced.items[i]);
    gw_report_line(page->report, gw_format(page->arena, "Without a cost, each counts 0: %s.", out.at));
}

/* What is chosen of the first, on the first wall where anything is. */
static void first_picture(struct page *page, const struct selections *s)
{
    const char *own = s->items.n ? gw_picture_word(page->arena, s->items.items[0].bid->candidate->name) : "";
    for (size_t i = 0; i < s->pictures.n; i++) {
        const char *name = s->pictures.items[i].name, *last = strrchr(name, ':');
        if (strncmp(name, "plan:", 5) != 0 || strcmp(last + 1, own) != 0) continue;
        gw_page_picture(page, &s->pictures, name);
        return;
    }
}

void gw_select_page(struct gw_report *report, const struct gw_result *result)
{
    const struct selections *s = result->value;
    struct page page = gw_page_of(report, s->results);
    const struct gw_judgement *j = &s->results->answer->judgement;
    struct verdict_story *stories = gw_alloc(page.arena, j->summaries.n + 1, sizeof *stories);
    size_t at = 0;
    for (size_t i = 0; i < j->summaries.n; i++) gw_story_of(&stories[i], &page, &j->summaries.items[i], &at);
    gw_page_rest(&page, "select");
    gw_page_head(&page, "Choice");
    gw_select_first(&page, s, stories);
    tell_stopped(&page, s);
    unpriced(&page, s);
    what_to_add(&page, s);
    gw_check_questions(&page, stories, j->summaries.n);
    first_picture(&page, s);
    gw_tell_make_ups(&page, s);
    for (size_t i = 0; i < s->items.n; i++) candidate(&page, s, &s->items.items[i], &stories[i]);
    quantities(&page, s);
    gw_page_foot(&page, &s->results->used);
}
