/* The page of choosing: who passes at which cost and what governs, what is missing, then each candidate's plan. */
#include "report/select.h"
#include "base/fields.h"
#include "report/check.h"
#include "report/draw/pictures.h"
#include "report/margins.h"
#include "report/results.h"
#include "report/view.h"

#include <string.h>

/* The ranking ------------------------------------------------------------------------------------------------------ */

struct rank_row {
    const struct selection *selection;
    const char *cost, *mass, *use, *governs, *missing, *everywhere, *saves;
};
static const struct gw_field RANK_ROW[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, THROUGH3(rank_row, selection, selection, bid, gw_bid, candidate)),
    FIELD(gw_bid, "verdict", verdict, GW_T_WORD, .word = gw_verdict_loud,
          THROUGH2(rank_row, selection, selection, bid)),
    F(rank_row, cost, GW_T_TEXT),
    F(rank_row, mass, GW_T_TEXT),
    F(rank_row, use, GW_T_TEXT),
    F(rank_row, governs, GW_T_TEXT),
    F(rank_row, missing, GW_T_TEXT),
    F(rank_row, everywhere, GW_T_TEXT),
    F(rank_row, saves, GW_T_TEXT),
};
static const struct gw_record RANK_RECORD = RECORD("rank", rank_row, RANK_ROW, .help = "a candidate and its plan");
static const struct view_column RANK_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),
    COLUMN("Verdict", "verdict", .tone = gw_verdict_tone),
    COLUMN("Cost", "cost", .right = true),
    COLUMN("Mass", "mass", .right = true),
    COLUMN("Use", "use", .right = true),
    COLUMN("Governs", "governs"),
    COLUMN("Missing", "missing", .right = true),
    COLUMN("Same everywhere", "everywhere", .right = true),
    COLUMN("Saved", "saves", .right = true),
};
static const struct view RANKS = VIEW(&RANK_RECORD, RANK_COLUMNS);

static const char *amount(struct page *page, double value)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    if (gw_given(value)) gw_text_fixed(&out, value, 0);
    return out.length ? out.at : "";
}

static const char *mass_text(struct page *page, double kg)
{
    const double shown = gw_quantity_shown(gw_units_standard(), GW_MASS, page->shown, kg);
    return gw_given(kg) ? gw_format(page->arena, "%s %s", amount(page, shown), gw_dim_info(GW_MASS)->shown[page->shown])
                        : "not known";
}

static const char *what_governs(struct page *page, const struct gw_bid *bid)
{
    const struct gw_finding *f = gw_deciding(bid->summary.governing);
    if (gw_said(&bid->summary.held)) return gw_message_text(page->arena, &bid->summary.held, page->shown);
    return f ? gw_format(page->arena, "%s%s", gw_check_name(f->demand), gw_at_text(page, f)) : "nothing is asked";
}

static struct rank_row rank_of(struct page *page, const struct selections *s, const struct selection *one)
{
    const struct gw_bid *bid = one->bid;
    const bool mass = s->bids->by_mass, plan = gw_given(bid->cost);
    const double saved = mass ? bid->everywhere_mass - bid->mass : bid->saving;
    const bool same = gw_given(bid->everywhere_cost);
    return (struct rank_row){.selection = one,
                             .cost = mass   ? ""
                                     : plan ? amount(page, bid->cost)
                                            : "no plan",
                             .mass = mass_text(page, bid->mass),
                             .use =
                                 bid->summary.governing ? gw_use_text(page, gw_deciding(bid->summary.governing)) : "",
                             .governs = what_governs(page, bid),
                             .missing = gw_format(page->arena, "%zu", one->missing.n),
                             .everywhere = !plan   ? ""
                                           : !same ? "none"
                                           : mass  ? mass_text(page, bid->everywhere_mass)
                                                   : amount(page, bid->everywhere_cost),
                             .saves = !plan || !same ? ""
                                      : mass         ? mass_text(page, saved)
                                                     : amount(page, saved)};
}

static void ranking(struct page *page, const struct selections *s)
{
    struct rank_row *rows = gw_alloc(page->arena, s->items.n + 1, sizeof *rows);
    for (size_t i = 0; i < s->items.n; i++) rows[i] = rank_of(page, s, &s->items.items[i]);
    gw_view_list(page,
                 s->bids->by_mass
                     ? "No costs are given: each plan is the lightest with which every check passes. Give the system, "
                       "its options and the lites a 'cost' to choose by that."
                     : "Each plan is the cheapest with which every check passes, place by place; costs as the files "
                       "have them. Mass: of metal and glass. Missing: questions open, and reports behind statements.",
                 &RANKS, rows, s->items.n);
}

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

static void places(struct page *page, const struct gw_bid *bid)
{
    struct place_row *rows = gw_alloc(page->arena, bid->places.n + 1, sizeof *rows);
    for (size_t i = 0; i < bid->places.n; i++) gw_place_row(&rows[i], page->arena, bid, &bid->places.items[i]);
    gw_view_list(page, "", &CHOICES, rows, bid->places.n);
}

/* "zone 5 of east" */
static void add_place(struct gw_text *out, const struct gw_plan_place *p)
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
        add_place(&out, bid->places.items[p].place);
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

static const char *counted_words(struct page *page, const struct gw_system_option *o, double quantity)
{
    static const char *const each[] = {
        [GW_COUNTS_WALL] = "of wall",       [GW_COUNTS_LITE] = "of lites", [GW_COUNTS_MULLION] = "of mullion",
        [GW_COUNTS_TRANSOM] = "of transom", [GW_COUNTS_SCREW] = "screws",  [GW_COUNTS_ANCHOR] = "anchors"};
    const bool length = o->of == GW_COUNTS_MULLION || o->of == GW_COUNTS_TRANSOM;
    const bool area = o->of == GW_COUNTS_WALL || (o->of == GW_COUNTS_LITE && o->price.dim != GW_COST);
    const char *n = length ? gw_quantity_text(page, GW_LENGTH, quantity, NEAREST)
                    : area ? gw_quantity_text(page, GW_AREA, quantity, NEAREST)
                           : amount(page, quantity);
    const char *what = o->of == GW_COUNTS_LITE && !area ? "lites" : each[o->of];
    return gw_format(page->arena, "%s %s", n, what);
}

/* Where an option is taken, what it counts there, what it comes to. */
static void tell_option(struct page *page, const struct gw_bid *bid, const struct gw_system_option *o)
{
    struct gw_text out;
    double sum = 0;
    size_t n = 0;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < bid->places.n; p++)
        for (size_t i = 0; i < bid->places.items[p].options.n; i++) {
            const struct gw_selected_option *taken = &bid->places.items[p].options.items[i];
            if (taken->option != o) continue;
            gw_text_addf(&out, "%s%s in ", n++ ? "; " : "", counted_words(page, o, taken->quantity));
            add_place(&out, bid->places.items[p].place);
            sum += taken->cost;
        }
    if (!n) return;
    if (o->cost) gw_text_addf(&out, ", at %s: %s", o->cost, amount(page, sum));
    if (gw_given(o->once)) gw_text_addf(&out, "%s once %s", o->cost ? ", and" : "; ", amount(page, o->once));
    gw_report_item(page->report, gw_format(page->arena, "%s: %s", o->name, out.at));
}

static void tell_make_up(struct page *page, const struct gw_bid *bid, const struct gw_lite_alternative *a,
                         const struct gw_lite_type *type)
{
    struct gw_text out;
    double sum = 0;
    size_t n = 0;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < bid->places.n; p++)
        for (size_t i = 0; i < bid->places.items[p].lites.n; i++) {
            const struct gw_selected_lite *l = &bid->places.items[p].lites.items[i];
            if (l->type != type || l->name != a->name) continue;
            gw_text_addf(&out, "%s%ld lites, %s, in ", n++ ? "; " : "", l->count,
                         gw_quantity_text(page, GW_AREA, l->area, NEAREST));
            add_place(&out, bid->places.items[p].place);
            sum += l->cost;
        }
    if (!n) return;
    if (a->cost) gw_text_addf(&out, ", at %s: %s", a->cost, amount(page, sum));
    if (type->cost) gw_text_addf(&out, " (its own make-up is %s)", type->cost);
    gw_report_item(page->report, gw_format(page->arena, "%s, %s: %s", type->name, a->name, out.at));
}

static void tell_choices(struct page *page, const struct selections *s, const struct gw_bid *bid)
{
    const struct gw_project *project = &s->bids->model->project;
    for (size_t i = 0; i < bid->candidate->options.n; i++) tell_option(page, bid, &bid->candidate->options.items[i]);
    for (size_t i = 0; i < project->lites.n; i++)
        for (size_t k = 0; k < project->lites.items[i].alternatives.n; k++)
            tell_make_up(page, bid, &project->lites.items[i].alternatives.items[k], &project->lites.items[i]);
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
                                 amount(page, bid->everywhere_cost), amount(page, bid->saving)));
    if (edge > 0)
        gw_report_item(page->report, gw_format(page->arena, "the corners alone (zone 5): %s for what is chosen there",
                                               amount(page, edge)));
}

static void tell_stopped(struct page *page, const struct selections *s)
{
    for (size_t i = 0; i < s->items.n; i++) {
        const struct gw_bid *bid = s->items.items[i].bid;
        const char *least = s->bids->by_mass ? mass_text(page, bid->bound) : amount(page, bid->bound);
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

static void candidate(struct page *page, const struct selections *s, const struct selection *one)
{
    const struct gw_bid *bid = one->bid;
    gw_report_section(page->report, GW_PART_ANSWERS,
                      gw_format(page->arena, "%s: %s", bid->candidate->name, gw_verdict_loud((int)bid->verdict)));
    places(page, bid);
    tell_choices(page, s, bid);
    tell_saving(page, s, bid);
    gw_page_plan_pictures(page, &s->pictures, bid->candidate);
    gw_page_picture(page, &s->pictures,
                    gw_format(page->arena, "cost:%s", gw_picture_word(page->arena, bid->candidate->name)));
    if (bid->verdict == GW_FAIL) gw_tell_blocked(page, bid);
    if (bid->margins) gw_page_margins(page, bid->margins);
    else gw_report_line(page->report, "What would change it: --all.");
}

/* What could be added to choose from --------------------------------------------------------------------------------
 */

static bool has_choices(const struct selections *s)
{
    const struct gw_model *model = s->bids->model;
    for (size_t i = 0; i < model->project.lites.n; i++)
        if (model->project.lites.items[i].alternatives.n) return true;
    for (size_t i = 0; i < model->systems.n; i++)
        if (model->systems.items[i].options.n) return true;
    return false;
}

static void what_to_add(struct page *page, const struct selections *s)
{
    if (!s->items.n)
        gw_report_line(
            page->report,
            "No candidates are listed: nothing is chosen. Add 'candidates: [a system file]' to the project.");
    if (has_choices(s)) return;
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
    ranking(&page, s);
    tell_stopped(&page, s);
    unpriced(&page, s);
    what_to_add(&page, s);
    gw_check_questions(&page, stories, j->summaries.n);
    first_picture(&page, s);
    for (size_t i = 0; i < s->items.n; i++) candidate(&page, s, &s->items.items[i]);
    quantities(&page, s);
    gw_page_foot(&page, &s->results->used);
}
