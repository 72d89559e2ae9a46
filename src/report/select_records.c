/* What 'select' writes: the plan of each candidate, and a row a place for spreadsheets. */
#include "base/fields.h"
#include "report/check.h"
#include "report/draw/pictures.h"
#include "report/margins.h"
#include "report/results.h"
#include "report/select.h"
#include "report/sheets.h"
#include "report/view.h"

static const char *verdict_word(int verdict) { return gw_verdict_name((enum gw_verdict)verdict); }

static bool part(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_plan_place *place = thing;
    (void)shown;
    gw_text_add(out, place->parapet ? "above roof" : "below roof");
    return true;
}

static bool least(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_bids *bids = thing;
    (void)shown;
    gw_text_add(out, bids->by_mass ? "mass" : "cost");
    return true;
}

/* Places ----------------------------------------------------------------------------------------------------------- */

static const struct gw_field GOVERNING[] = {
    FIELD(gw_check, "check", id, GW_T_TEXT, .help = "id of the check", THROUGH2(gw_finding, demand, gw_demand, check)),
    FIELD(gw_demand, "element", where, GW_T_TEXT, .help = "where", THROUGH(gw_finding, demand)),
    FIELD(gw_finding, "utilisation", utilization, GW_T_NUMBER, .help = "required over provided"),
};
static const struct gw_record GOVERNING_RECORD =
    RECORD("governing", gw_finding, GOVERNING, .help = "the check that governs a place");

#define OF_PLACE(key_, member_, help_)                                                                                 \
    FIELD(gw_plan_place, key_, member_, GW_T_TEXT, .help = help_, THROUGH(gw_selected, place))
#define QUANTITY(key_, member_, dim_, help_)                                                                           \
    FIELD(gw_selected, key_, quantities.member_, GW_T_NUMBER, .dim = dim_, .help = help_)
#define PIECES(key_, member_, help_) FIELD(gw_selected, key_, quantities.member_, GW_T_COUNT, .help = help_)
static const struct gw_field SELECTED[] = {
    OF_PLACE("wall", wall, "wall, or elevation of a schedule"),
    FIELD(gw_plan_place, "zone", zone, GW_T_INTEGER, .help = "4 or 5", THROUGH(gw_selected, place)),
    OUT_SAID("part", part, "below roof or above roof", THROUGH(gw_selected, place)),
    QUANTITY("area", wall_area, GW_AREA, "of the wall"),
    QUANTITY("mullion_length", mullion_length, GW_LENGTH,
             "of mullions; of a corner that two walls share with the wall that is named first"),
    QUANTITY("transom_length", transom_length, GW_LENGTH, "of transoms"),
    PIECES("screws", screws, "pieces, at the spacing that is hung there"),
    PIECES("anchors", anchors, "pieces; of a corner that two walls share with the wall that is named first"),
    FIELD(gw_selected, "options", option_names, GW_T_TEXT, .flags = GW_MANY,
          .help = "taken here, in the order of the system's file"),
    FIELD(gw_selected, "lites", lite_names, GW_T_DESCRIBED,
          .help = "by lite type that stands here the name of its make-up; null: its own"),
    F(gw_selected, cost, GW_T_NUMBER, .help = "of the place, without what is paid once; null: there is no plan"),
    F(gw_selected, governing, GW_T_RECORD, .record = &GOVERNING_RECORD,
      .help = "of its elements the gravest check; null: none is asked"),
};
static const struct gw_record SELECTED_RECORD =
    RECORD("place", gw_selected, SELECTED, .help = "a wall, a zone, below or above the roof line");

/* Candidates ------------------------------------------------------------------------------------------------------- */

static const struct gw_field BLOCKED[] = {
    FIELD(gw_check, "check", id, GW_T_TEXT, .help = "id of the check",
          THROUGH3(gw_blocked, finding, gw_finding, demand, gw_demand, check)),
    FIELD(gw_demand, "element", where, GW_T_TEXT, .help = "where", THROUGH2(gw_blocked, finding, gw_finding, demand)),
    FIELD(gw_finding, "message", message, GW_T_MESSAGE, .help = "why", THROUGH(gw_blocked, finding)),
    F(gw_blocked, choice, GW_T_TEXT,
      .help =
          "it fails with this chosen there, with which what else blocks the place passes; null: whatever is chosen"),
    F(gw_blocked, nearest, GW_T_TEXT,
      .help =
          "of one that fails whatever is chosen the choice that comes nearest, with which it is told; null: it hangs "
          "on none"),
    F(gw_blocked, together, GW_T_YES_NO, .help = "what is chosen is a plan: places that have to agree and cannot"),
};
static const struct gw_record BLOCKED_RECORD =
    RECORD("blocked", gw_blocked, BLOCKED, .help = "a check that fails where no choice passes");
static const struct gw_field ASKED[] = {
    FIELD(gw_check, "check", id, GW_T_TEXT, .help = "that it is missing for first; null: the given pressures",
          THROUGH3(gw_request, first, gw_finding, demand, gw_demand, check)),
    FIELD(gw_request, "element", where, GW_T_TEXT, .help = "the first place"),
    F(gw_request, question, GW_T_MESSAGE, .help = "what to ask"),
    F(gw_request, places, GW_T_COUNT, .help = "how many ask it"),
};
static const struct gw_record ASKED_RECORD = RECORD("missing", gw_request, ASKED, .help = "what to ask whom");

static const struct gw_field SELECTION[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system",
          THROUGH2(selection, bid, gw_bid, candidate)),
    FIELD(gw_bid, "verdict", verdict, GW_T_WORD, .word = verdict_word, THROUGH(selection, bid),
          .help = "pass: the cheapest plan that passes; not shown: none passes, the cheapest in which nothing fails; "
                  "fail: no such plan"),
    FIELD(gw_bid, "cost", cost, GW_T_NUMBER, THROUGH(selection, bid),
          .help = "with what is paid once; without a currency; null: no plan"),
    FIELD(gw_bid, "mass", mass, GW_T_NUMBER, .dim = GW_MASS, THROUGH(selection, bid),
          .help = "of metal and glass; null: not known"),
    FIELD(gw_bid, "places", places, GW_T_RECORD, .flags = GW_MANY, .record = &SELECTED_RECORD, THROUGH(selection, bid),
          .help = "what is chosen where"),
    FIELD(gw_bid, "once", once, GW_T_NUMBER, THROUGH(selection, bid),
          .help = "sum of what is paid once; not in the places' costs"),
    FIELD(gw_bid, "everywhere_cost", everywhere_cost, GW_T_NUMBER, THROUGH(selection, bid),
          .help = "of the cheapest plan of this verdict with the same choices in every place; null: there is none"),
    FIELD(gw_bid, "saving", saving, GW_T_NUMBER, THROUGH(selection, bid), .help = "against that"),
    FIELD(gw_bid, "everywhere_mass", everywhere_mass, GW_T_NUMBER, .dim = GW_MASS, THROUGH(selection, bid),
          .help = "of the lightest such plan, where the least mass is chosen"),
    FIELD(gw_bid, "blocked", blocked, GW_T_RECORD, .flags = GW_MANY, .record = &BLOCKED_RECORD, THROUGH(selection, bid),
          .help = "what no choice satisfies"),
    FIELD(gw_bid, "blocked_rule", blocked_rule, GW_T_TEXT, THROUGH(selection, bid),
          .help = "why places that have a choice have to agree; null: that blocks nothing, or nobody looked"),
    F(selection, missing, GW_T_RECORD, .flags = GW_MANY, .record = &ASKED_RECORD,
      .help = "what its plan lacks to be shown, and reports behind statements"),
    MARGINS(THROUGH2(selection, bid, gw_bid, margins)),
    FIELD(gw_bid, "examined", examined, GW_T_COUNT, THROUGH(selection, bid),
          .help = "choices of single places and whole plans that were judged"),
    FIELD(gw_bid, "complete", complete, GW_T_YES_NO, THROUGH(selection, bid),
          .help = "false: stopped, the best plan found so far"),
    FIELD(gw_bid, "bound", bound, GW_T_NUMBER, THROUGH(selection, bid),
          .help = "no plan costs less (of masses: weighs, kg); of a search that was not stopped the cost itself"),
};
static const struct gw_record SELECTION_RECORD =
    RECORD("selection", selection, SELECTION, .help = "a candidate and its plan");

static const struct gw_field SELECTIONS[] = {
    F(selections, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    FIELD(gw_results, "to_confirm", weak, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &gw_row_record,
          .help = "rows of the tables behind the figures that are recalled, not yet confirmed, or common practice",
          THROUGH(selections, results)),
    OUT_SAID("least", least, "what is least: cost, or mass where nothing has a cost", THROUGH(selections, bids)),
    FIELD(gw_bids, "unpriced", unpriced, GW_T_TEXT, .flags = GW_MANY, THROUGH(selections, bids),
          .help = "options and make-ups without a cost, which count 0"),
    FIELD(selections, "selections", items, GW_T_RECORD, .flags = GW_MANY, .record = &SELECTION_RECORD,
          .help = "every candidate, best first: pass by cost, not shown by cost, fail"),
};
const struct gw_record gw_selections_record =
    RECORD("selections", selections, SELECTIONS, .help = "what 'select' writes");

/* A row a place ---------------------------------------------------------------------------------------------------- */

#define ROW(member_, type_, ...) F(place_row, member_, type_, .help = #member_, __VA_ARGS__)
static const struct gw_field PLACE_ROW[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name", THROUGH2(place_row, bid, gw_bid, candidate)),
    FIELD(gw_bid, "verdict", verdict, GW_T_WORD, .word = verdict_word, .help = "of the plan", THROUGH(place_row, bid)),
    ROW(options, GW_T_TEXT),
    ROW(lites, GW_T_TEXT),
    ROW(lite_count, GW_T_COUNT),
    ROW(lite_area, GW_T_NUMBER, .dim = GW_AREA),
    ROW(lite_cost, GW_T_NUMBER, .dim = GW_COST),
    ROW(option_cost, GW_T_NUMBER, .dim = GW_COST),
    FIELD(gw_selected, "wall_cost", wall_cost, GW_T_NUMBER, .dim = GW_COST, .help = "of the wall itself",
          THROUGH(place_row, place)),
    ROW(governing, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_FLAT),
    FIELD(gw_selected, "place_cost", cost, GW_T_NUMBER, .dim = GW_COST, .help = "of all", THROUGH(place_row, place)),
    ROW(place, GW_T_RECORD, .record = &SELECTED_RECORD, .flags = GW_FLAT),
};
const struct gw_record gw_place_row_record = RECORD("place", place_row, PLACE_ROW, .help = "a place of a candidate");

/* "vision: thicker outer pane; spandrel" */
static const char *lites_words(struct gw_arena *arena, const struct gw_selected *place)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    for (size_t i = 0; i < place->lites.n; i++) {
        const struct gw_selected_lite *l = &place->lites.items[i];
        gw_text_addf(&out, "%s%s%s%s", i ? "; " : "", l->type->name, l->name ? ": " : "", l->name ? l->name : "");
    }
    return out.length ? out.at : "";
}

static const char *options_words(struct gw_arena *arena, const struct gw_selected *place)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    for (size_t i = 0; i < place->options.n; i++)
        gw_text_addf(&out, "%s%s", i ? "; " : "", place->options.items[i].option->name);
    return out.length ? out.at : "";
}

void gw_place_row(struct place_row *out, struct gw_arena *arena, const struct gw_bid *bid,
                  const struct gw_selected *place)
{
    *out = (struct place_row){.bid = bid,
                              .place = place,
                              .governing = gw_deciding(place->governing),
                              .options = options_words(arena, place),
                              .lites = lites_words(arena, place)};
    for (size_t i = 0; i < place->lites.n; i++) {
        out->lite_count += place->lites.items[i].count;
        out->lite_area += place->lites.items[i].area;
        out->lite_cost += place->lites.items[i].cost;
    }
    for (size_t i = 0; i < place->options.n; i++) out->option_cost += place->options.items[i].cost;
}

static const struct view_column PLACE_COLUMNS[] = {
    COLUMN("candidate", "candidate"),
    COLUMN("verdict", "verdict"),
    COLUMN("wall", "wall"),
    COLUMN("zone", "zone"),
    COLUMN("part", "part"),
    COLUMN("options", "options"),
    COLUMN("make-ups", "lites"),
    COLUMN("wall area", "area"),
    COLUMN("lites", "lite_count"),
    COLUMN("lite area", "lite_area"),
    COLUMN("mullions", "mullion_length"),
    COLUMN("transoms", "transom_length"),
    COLUMN("screws", "screws"),
    COLUMN("anchors", "anchors"),
    COLUMN("cost of wall", "wall_cost"),
    COLUMN("cost of lites", "lite_cost"),
    COLUMN("cost of options", "option_cost"),
    COLUMN("cost", "place_cost"),
    COLUMN("governing check", "check"),
    COLUMN("element", "element"),
    COLUMN("utilization", "utilisation", .use = true),
};
static const struct view PLACES = VIEW(&gw_place_row_record, PLACE_COLUMNS);

void gw_sheet_of_places(struct gw_report *report, const struct gw_result *result)
{
    const struct selections *s = result->value;
    struct page page = {report, report->arena, NULL, result->shown};
    size_t n = 0, most = 1;
    for (size_t i = 0; i < s->items.n; i++) most += s->items.items[i].bid->places.n;
    struct place_row *rows = gw_alloc(report->arena, most, sizeof *rows);
    for (size_t i = 0; i < s->items.n; i++) {
        const struct gw_bid *bid = s->items.items[i].bid;
        for (size_t p = 0; p < bid->places.n; p++) gw_place_row(&rows[n++], report->arena, bid, &bid->places.items[p]);
    }
    gw_view_sheet(&page, &PLACES, rows, n);
}

/* The whole -------------------------------------------------------------------------------------------------------- */

static void take_missing(struct selection *out, const struct gw_answer *answer)
{
    for (size_t i = 0; i < answer->missing.n; i++) {
        if (answer->missing.items[i].candidate != out->bid->candidate) continue;
        if (!out->missing.n++) out->missing.items = &answer->missing.items[i];
    }
}

struct gw_result gw_result_select(struct gw_arena *arena, const struct gw_results *results, const struct gw_bids *bids)
{
    struct selections *s = gw_alloc(arena, 1, sizeof *s);
    s->results = results;
    s->bids = bids;
    s->items.n = bids->items.n;
    s->items.items = gw_alloc(arena, bids->items.n + 1, sizeof *s->items.items);
    for (size_t i = 0; i < bids->items.n; i++) {
        s->items.items[i].bid = &bids->items.items[i];
        take_missing(&s->items.items[i], results->answer);
    }
    gw_pictures_of_bids(&s->pictures, arena, results, bids);
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_selections_record,
                              .pictures = &s->pictures,
                              .value = s,
                              .sheet = gw_sheet_of_places,
                              .page = gw_select_page,
                              .file = gw_write_plan};
}
