/* What the keys of 'inspect' are. */
#include "report/inspect.h"

#include "base/fields.h"
#include "base/tolerance.h"
#include "report/results.h"

static const char *item_word(int item) { return gw_item_kinds[item].id; }
static const char *verdict_word(int verdict) { return gw_item_verdict_name((enum gw_item_verdict)verdict); }
static const char *basis_word(int basis) { return basis ? gw_limit_basis_name((enum gw_limit_basis)basis) : NULL; }
static const char *stage_word(int stage) { return gw_stage_names[stage]; }

static enum gw_dim dim_of(const struct gw_item *item) { return gw_item_kinds[item->id].value.dim; }

/* Readings ----------------------------------------------------------------------------------------------------------
 */

static bool unit_of_value(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_inspected *row = thing;
    (void)shown;
    if (gw_item_kinds[row->item->id].value.choices) return false;
    gw_text_add(out, gw_dim_info(dim_of(row->item))->suffix);
    return true;
}

/* The same for spreadsheets of people: figures in the units asked, their unit in a cell beside them. */
static void add_shown(struct gw_text *out, const struct gw_inspected *row, double si, enum gw_units shown,
                      enum rounding rounding)
{
    if (gw_given(si))
        gw_add_figure(out, gw_quantity_shown(gw_units_standard(), dim_of(row->item), shown, si), rounding);
}

static bool value_bare(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_inspected *row = thing;
    if (row->value.words) gw_text_add(out, row->value.words);
    else add_shown(out, row, row->value.number, shown, NEAREST);
    return true;
}

/* To the strict side, as the limit in words; beside a value that is the limit like that value. */
static void add_limit(struct gw_text *out, const struct gw_inspected *row, double limit, enum gw_units shown,
                      enum rounding strict)
{
    const bool same = !row->value.words && fabs(row->value.number - limit) <= GW_HAIR * fabs(limit);
    add_shown(out, row, limit, shown, same ? NEAREST : strict);
}

static bool at_least_bare(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_inspected *row = thing;
    if (row->result) add_limit(out, row, row->result->limit.at_least, shown, UP);
    return true;
}

static bool at_most_bare(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_inspected *row = thing;
    if (row->result) add_limit(out, row, row->result->limit.at_most, shown, DOWN);
    return true;
}

static bool unit_for_people(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_inspected *row = thing;
    if (gw_item_kinds[row->item->id].value.choices) return false;
    gw_text_add(out, gw_dim_info(dim_of(row->item))->shown[shown]);
    return true;
}

#define I(key_, type_, ...) F(gw_inspected, key_, type_, __VA_ARGS__)
#define OF_RESULT(key_, member_, type_, ...)                                                                           \
    FIELD(gw_item_result, key_, member_, type_, THROUGH(gw_inspected, result), __VA_ARGS__)
#define OF_READING(key_, member_, type_, ...)                                                                          \
    FIELD(gw_reading, key_, member_, type_, THROUGH(gw_inspected, reading), __VA_ARGS__)
static const struct gw_field INSPECTED[] = {
    FIELD(gw_node, "row", line, GW_T_INTEGER, .help = "line of the file",
          THROUGH2(gw_inspected, reading, gw_reading, node)),
    I(place, GW_T_TEXT, .help = "as it was said; where that is a part of one, the place of the judgement besides"),
    FIELD(gw_element, "element", id, GW_T_TEXT, .help = "that stands there; null: there is no such place",
          THROUGH(gw_inspected, element)),
    OF_READING("item", item, GW_T_WORD, .word = item_word, .help = "what was measured"),
    I(value, GW_T_EITHER, .help = "a number in `unit`, or a word"),
    OUT_SAID("unit", unit_of_value, "SI unit of the values, as the end of a key; null: a word"),
    I(limit, GW_T_MESSAGE, .help = "what it is held to"),
    FIELD(gw_item_result, "at_least", limit.at_least, GW_T_NUMBER, .help = "the same in `unit`",
          THROUGH(gw_inspected, result)),
    FIELD(gw_item_result, "at_most", limit.at_most, GW_T_NUMBER, .help = "the same in `unit`",
          THROUGH(gw_inspected, result)),
    OF_RESULT("limit_basis", limit.basis, GW_T_WORD, .word = basis_word,
              .help = "whose limit it is: system, project, geometry, demand or practice"),
    I(verdict, GW_T_WORD, .word = verdict_word, .help = "within; outside, holds; not met; unknown"),
    OF_RESULT("remaining", remaining, GW_T_NUMBER, .help = "capacity over demand at the good end of the ranges"),
    OF_RESULT("remaining_worst", remaining_worst, GW_T_NUMBER, .help = "the same at the bad end"),
    OF_RESULT("required", required, GW_T_NUMBER, .help = "of it, by the mechanism"),
    OF_RESULT("mechanism", mechanism, GW_T_TEXT, .help = "that is least against what is required of it"),
    I(message, GW_T_MESSAGE, .help = "why"),
    I(action, GW_T_MESSAGE, .help = "what to look at or to ask next"),
    OF_READING("by", by, GW_T_TEXT, .help = "crew"),
    OF_READING("date", date, GW_T_TEXT, .help = "day of reading"),
    OF_READING("point", point, GW_T_TEXT, .help = "along the edge"),
    I(closed_by, GW_T_INTEGER, .help = "line of the row that closes it; 0: it is open"),
    I(duplicate_of, GW_T_INTEGER, .help = "line of the row that says the same; 0: it counts"),
    OUT_SAID("value_bare", value_bare, "without its unit, or a word", .flags = GW_TABLES_ONLY),
    OUT_SAID("at_least_bare", at_least_bare, "without its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("at_most_bare", at_most_bare, "without its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("unit_for_people", unit_for_people, "of the three", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_inspected_record =
    RECORD("reading", gw_inspected, INSPECTED, .help = "one row of the sheet, judged");

/* What they come to -------------------------------------------------------------------------------------------------
 */

#define S(key_, type_, ...) F(gw_item_share, key_, type_, __VA_ARGS__)
static const struct gw_field SHARE[] = {
    FIELD(gw_item, "item", id, GW_T_WORD, .word = item_word, .help = "what was measured", THROUGH(gw_item_share, item)),
    S(readings, GW_T_COUNT, .help = "rows that count"),
    S(places, GW_T_COUNT, .help = "places whose first readings say something"),
    S(outside, GW_T_COUNT, .help = "of these, where one is outside its limit or not met"),
    S(unknown, GW_T_COUNT, .help = "places of which nothing is known"),
    S(random, GW_T_COUNT, .help = "of the places, those marked random"),
    S(random_outside, GW_T_COUNT, .help = "of these, outside"),
    FIELD(gw_item_share, "share_least", least, GW_T_NUMBER, .dim = GW_RATIO,
          .help = "of all places outside: lower end of the 95 % confidence interval (Clopper-Pearson); null: none is "
                  "random"),
    FIELD(gw_item_share, "share_most", most, GW_T_NUMBER, .dim = GW_RATIO, .help = "its upper end"),
    FIELD(gw_item_share, "share_below", below, GW_T_NUMBER, .dim = GW_RATIO,
          .help = "with 95 % confidence fewer are outside"),
    FIELD(gw_item_share, "large_enough", enough, GW_T_YES_NO, .help = "to say so of a tenth, and no cluster"),
    S(why, GW_T_MESSAGE, .help = "what stands behind that"),
};
const struct gw_record gw_item_share_record =
    RECORD("summary", gw_item_share, SHARE, .help = "what the places of one item say");
static const struct gw_field PART[] = {
    F(gw_part_share, of, GW_T_TEXT, .help = "crew, date or wall"),
    F(gw_part_share, name, GW_T_TEXT, .help = "which"),
    FIELD(gw_item, "item", id, GW_T_WORD, .word = item_word, .help = "what was measured", THROUGH(gw_part_share, item)),
    F(gw_part_share, places, GW_T_COUNT, .help = "places"),
    F(gw_part_share, outside, GW_T_COUNT, .help = "of these, outside"),
};
static const struct gw_record PART_RECORD =
    RECORD("part", gw_part_share, PART, .help = "the same by what parts the work");
static const struct gw_field NEXT[] = {
    FIELD(gw_item, "item", id, GW_T_WORD, .word = item_word, .help = "what to look at", THROUGH(gw_next_place, item)),
    F(gw_next_place, place, GW_T_TEXT, .help = "where"),
    F(gw_next_place, why, GW_T_MESSAGE, .help = "why there"),
};
static const struct gw_record NEXT_RECORD = RECORD("place", gw_next_place, NEXT, .help = "a place to open next");

#define COUNTED(key_, verdict_, help_) FIELD(gw_inspection, key_, counts[verdict_], GW_T_COUNT, .help = help_)
static const struct gw_field INSPECTION[] = {
    FIELD(gw_system, "system", name, GW_T_TEXT, .help = "that was hung", THROUGH(gw_inspection, system)),
    COUNTED("within", GW_ITEM_WITHIN, "open rows, each once"),
    COUNTED("outside_holds", GW_ITEM_OUTSIDE_HOLDS, "the same, outside and holding"),
    COUNTED("not_met", GW_ITEM_NOT_MET, "the same, not met"),
    COUNTED("unknown", GW_ITEM_UNKNOWN, "the same, unknown"),
    FIELD(gw_readings, "wrong_rows", wrong, GW_T_COUNT, .help = "rows with a fault, left out",
          THROUGH(gw_inspection, readings)),
    FIELD(gw_inspection, "summary", items, GW_T_RECORD, .flags = GW_MANY, .record = &gw_item_share_record,
          .help = "by item"),
    F(gw_inspection, parts, GW_T_RECORD, .flags = GW_MANY, .record = &PART_RECORD, .help = "by crew, date and wall"),
    F(gw_inspection, next, GW_T_RECORD, .flags = GW_MANY, .record = &NEXT_RECORD, .help = "places to open next"),
    F(gw_inspection, more, GW_T_YES_NO, .help = "there are others"),
    F(gw_inspection, next_more, GW_T_COUNT, .help = "places to open beside these, less grave"),
};
static const struct gw_record INSPECTION_RECORD = RECORD("inspection", gw_inspection, INSPECTION);

static const struct gw_field RESULTS[] = {
    F(gw_inspected_results, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    FIELD(gw_inspection, "readings", rows, GW_T_RECORD, .flags = GW_MANY, .record = &gw_inspected_record,
          .help = "rows of the sheet without a fault", THROUGH(gw_inspected_results, inspection)),
    F(gw_inspected_results, inspection, GW_T_RECORD, .record = &INSPECTION_RECORD, .flags = GW_FLAT),
};
const struct gw_record gw_inspection_record =
    RECORD("inspection", gw_inspected_results, RESULTS, .help = "what 'inspect' writes of readings");

/* The sheet ---------------------------------------------------------------------------------------------------------
 */

static bool sheet_place(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)shown;
    gw_spot_say(out, &((const struct gw_sheet_item *)thing)->most.spot);
    return true;
}

static const struct gw_field SHEET_PLACE[] = {
    F(gw_sheet_place, place, GW_T_TEXT, .help = "where most is carried of those that share a zone or a choice"),
    OUT_SENTENCE(gw_sheet_place, "limit", held_to, "what it is held to there"),
    OUT_SENTENCE(gw_sheet_place, "limit_not_met", condemns, "why a value at that limit does not hold there; null"),
    FIELD(gw_sheet_place, "limit_basis", limit.basis, GW_T_WORD, .word = basis_word, .help = "whose limit it is"),
};
static const struct gw_record SHEET_PLACE_RECORD =
    RECORD("place with another limit", gw_sheet_place, SHEET_PLACE, .help = "a place with a limit of its own");

#define OF_ITEM(key_, member_, type_, ...)                                                                             \
    FIELD(gw_item, key_, member_, type_, THROUGH(gw_sheet_item, item), __VA_ARGS__)
static const struct gw_field SHEET_TYPES[] = {
    F(gw_sheet_types, lites, GW_T_TEXT, .help = "types of lite"),
    OUT_SENTENCE(gw_sheet_types, "limit", first.held_to, "what they are held to"),
    OUT_SENTENCE(gw_sheet_types, "limit_not_met", first.condemns, "why a value at that limit does not hold; null"),
    FIELD(gw_sheet_types, "limit_basis", first.limit.basis, GW_T_WORD, .word = basis_word, .help = "whose limit it is"),
};
static const struct gw_record SHEET_TYPES_RECORD =
    RECORD("types", gw_sheet_types, SHEET_TYPES, .help = "the limit of lites of these types");
static const struct gw_field SHEET_ITEM[] = {
    F(gw_sheet_item, wall, GW_T_TEXT, .help = "wall"),
    OF_ITEM("stage", stage, GW_T_WORD, .word = stage_word, .help = "of the work, in which it can be seen"),
    OF_ITEM("item", id, GW_T_WORD, .word = item_word, .help = "what to measure"),
    OF_ITEM("hold_point", hold, GW_T_YES_NO, .help = "looked at before the next stage covers it"),
    OF_ITEM("how", how, GW_T_TEXT, .help = "how it is measured"),
    OUT_SENTENCE(gw_sheet_item, "limit", most.held_to, "what it is held to where most is carried"),
    OUT_SENTENCE(gw_sheet_item, "limit_not_met", most.condemns,
                 "why a value at the worse end of the limit does not hold there; null: it does, or that is not known"),
    FIELD(gw_sheet_item, "limit_basis", most.limit.basis, GW_T_WORD, .word = basis_word, .help = "whose limit it is"),
    FIELD(gw_sheet_item, "limit_note", most.limit.note, GW_T_MESSAGE, .help = "how it came about"),
    OUT_SAID("place", sheet_place, "where most is carried"),
    OUT_SENTENCE(gw_sheet_item, "strictest", strictest.held_to, "the strictest limit of the wall"),
    FIELD(gw_sheet_item, "strictest_at", strictest.place, GW_T_TEXT, .help = "where that is"),
    OUT_SENTENCE(gw_sheet_item, "elsewhere", elsewhere, "the widest limit of the wall; null: one holds everywhere"),
    FIELD(gw_sheet_item, "limits_by_type", types, GW_T_RECORD, .flags = GW_MANY, .record = &SHEET_TYPES_RECORD,
          .help = "of lites, where each type has a limit of its own"),
    FIELD(gw_sheet_item, "other_limits", other, GW_T_RECORD, .flags = GW_MANY, .record = &SHEET_PLACE_RECORD,
          .help = "places of the wall with another limit, or whose limit alone does not hold"),
    F(gw_sheet_item, places, GW_T_COUNT, .help = "such places of the wall; 0: it is none of elements"),
    F(gw_sheet_item, sample, GW_T_COUNT, .help = "of them to be looked at"),
    F(gw_sheet_item, how_many, GW_T_MESSAGE, .help = "what that many say"),
    OF_ITEM("prevents", prevents, GW_T_TEXT, .help = "what goes wrong where it is missed"),
    OF_ITEM("if_missed", if_missed, GW_T_TEXT, .help = "what to look at beside it"),
    OF_ITEM("clause", clause, GW_T_TEXT, .help = "where practice has it from"),
};
const struct gw_record gw_sheet_item_record =
    RECORD("item", gw_sheet_item, SHEET_ITEM, .help = "what to measure on one wall");
static const struct gw_field SHEET[] = {
    FIELD(gw_system, "system", name, GW_T_TEXT, .help = "that is hung", THROUGH(gw_inspection_sheet, system)),
};
static const struct gw_record SHEET_RECORD = RECORD("sheet", gw_inspection_sheet, SHEET);
static const struct gw_field SHEET_RESULTS[] = {
    F(gw_inspected_results, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    F(gw_inspected_results, sheet, GW_T_RECORD, .record = &SHEET_RECORD, .flags = GW_FLAT),
    FIELD(gw_inspection_sheet, "items", items, GW_T_RECORD, .flags = GW_MANY, .record = &gw_sheet_item_record,
          .help = "by wall, then by stage", THROUGH(gw_inspected_results, sheet)),
};
const struct gw_record gw_inspection_sheet_record =
    RECORD("inspection sheet", gw_inspected_results, SHEET_RESULTS, .help = "what 'inspect' writes without readings");
