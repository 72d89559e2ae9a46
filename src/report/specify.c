/* A performance specification: numbered paragraphs and tables that may be pasted, with what was left open. */
#include "report/specify.h"
#include "base/fields.h"

#include "report/draw/pictures.h"
#include "report/results.h"
#include "report/view.h"

#include <ctype.h>
#include <string.h>

void gw_spec_article(struct specified_page *p, const char *title)
{
    p->article++;
    p->paragraph = 0;
    gw_report_section(p->page.report, GW_PART_DEMANDS, gw_format(p->page.arena, "%u. %s", p->article, title));
}

void gw_spec_paragraph(struct specified_page *p, const char *text)
{
    p->paragraph++;
    gw_report_line(p->page.report, gw_format(p->page.arena, "%u.%u %s", p->article, p->paragraph, text));
}

const char *gw_spec_rows_of(struct specified_page *p, const char *check)
{
    const struct gw_requirement_set *set = &p->spec->set;
    const struct gw_required *first = NULL, *last = NULL;
    for (size_t i = 0; i < set->requires.n; i++) {
        if (strcmp(set->requires.items[i].check, check) != 0) continue;
        first = first ? first : &set->requires.items[i];
        last = &set->requires.items[i];
    }
    if (!first) return "";
    return first == last ? gw_format(p->page.arena, " (%s)", first->id)
                         : gw_format(p->page.arena, " (%s to %s)", first->id, last->id);
}

const char *gw_spec_quantity(struct specified_page *p, enum gw_dim dim, double si, enum rounding rounding)
{
    return gw_quantity_text(&p->page, dim, si, rounding);
}

/* The schedule of requirements ------------------------------------------------------------------------------------ */

static bool row_place(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    gw_text_add(out, row->wall ? row->wall : "all");
    if (row->zone != GW_NO_INTEGER) gw_text_addf(out, ", zone %d", row->zone);
    if (row->part == GW_ABOVE_ROOF) gw_text_add(out, ", above the roof line");
    if (row->of == GW_SET_FRAMING) gw_text_add(out, ", framing");
    else if (gw_given(row->inward)) gw_text_add(out, ", lites");
    if (row->component) gw_text_addf(out, ", %s", gw_choice_name(gw_component_choices, (int)row->component));
    if (!gw_given(row->from)) return true;
    gw_text_add(out, ", lowest edge at ");
    gw_add_heights(out, shown, row->from, row->to);
    gw_text_addf(out, " %s", gw_dim_info(GW_LENGTH)->shown[shown]);
    return true;
}

/* At the level and with the sign that whoever tests needs. */
static void add_pressures(struct gw_text *out, const struct gw_required *row, enum gw_units shown)
{
    const char *unit = gw_dim_info(GW_PRESSURE)->shown[shown];
    gw_add_bare(out, GW_PRESSURE, shown, row->inward, UP);
    gw_text_addf(out, " %s inward, ", unit);
    gw_add_bare(out, GW_PRESSURE, shown, row->outward, UP);
    gw_text_addf(out, " %s outward", unit);
}

static void add_limit(struct gw_text *out, const struct gw_required *row)
{
    const bool most = gw_given(row->at_most);
    gw_text_addf(out, "%s %s ", row->name, most ? "at most" : "at least");
    gw_text_number(out, most ? row->at_most : row->at_least, 4);
}

static void add_blast(struct gw_text *out, const struct gw_required *row, enum gw_units shown)
{
    gw_text_add(out, "peak reflected pressure ");
    gw_add_quantity(out, GW_PRESSURE, shown, row->pressure, UP);
    gw_text_add(out, ", impulse ");
    gw_add_quantity(out, GW_IMPULSE, shown, row->impulse, UP);
    if (row->hazard) gw_text_addf(out, ", hazard at most %s", gw_choice_name(gw_hazard_choices, (int)row->hazard));
}

static bool row_value(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    if (gw_given(row->inward)) add_pressures(out, row, shown);
    else if (row->name) add_limit(out, row);
    else if (gw_given(row->impulse)) add_blast(out, row, shown);
    else if (gw_given(row->pressure)) gw_add_quantity(out, GW_PRESSURE, shown, row->pressure, UP);
    else if (gw_given(row->drift)) gw_add_quantity(out, GW_THICKNESS, shown, row->drift, UP);
    else if (row->missile) gw_text_addf(out, "missile %s", gw_choice_name(gw_missile_choices, (int)row->missile));
    if (row->wind_zone != GW_NO_INTEGER) gw_text_addf(out, ", wind zone %d", row->wind_zone);
    if (!gw_given(row->leakage)) return true;
    gw_text_add(out, "at most ");
    gw_add_quantity(out, GW_LEAKAGE, shown, row->leakage, NEAREST);
    gw_text_add(out, " at ");
    gw_add_quantity(out, GW_PRESSURE, shown, row->at, NEAREST);
    return true;
}

static bool row_level(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    (void)shown;
    gw_text_add(out, row->level == GW_LEVEL_ASD        ? "allowable stress"
                     : row->level == GW_LEVEL_STRENGTH ? "strength"
                     : gw_given(row->drift)            ? "strength"
                                                       : "as tested");
    return true;
}

/* By the row; else what shows it at all. */
static bool row_evidence(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    const bool tests_alone = strcmp(row->check, "structural") != 0 && strcmp(row->check, "blast") != 0 &&
                             strcmp(row->check, "seismic_glass") != 0;
    (void)shown;
    for (size_t i = 0; i < row->evidence.n; i++)
        gw_text_addf(out, "%s%s", i ? " or " : "", row->evidence.items[i] == GW_ASKS_TEST ? "test" : "calculation");
    if (!row->evidence.n) gw_text_add(out, tests_alone ? "test" : "test or calculation");
    return true;
}

static bool row_submit(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    (void)shown;
    for (size_t i = 0; i < row->submit.n; i++) gw_text_addf(out, "%s%s", i ? "; " : "", row->submit.items[i]);
    return true;
}

static bool row_test(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_required *row = thing;
    (void)shown;
    gw_text_add(out, row->test ? row->test : "not named");
    return true;
}

static const struct gw_field SCHEDULE_ROW[] = {
    F(gw_required, id, GW_T_TEXT),
    F(gw_required, check, GW_T_TEXT),
    {.key = "place", .type = GW_T_SAID, .say = row_place},
    {.key = "value", .type = GW_T_SAID, .say = row_value},
    {.key = "level", .type = GW_T_SAID, .say = row_level},
    {.key = "test", .type = GW_T_SAID, .say = row_test},
    {.key = "evidence", .type = GW_T_SAID, .say = row_evidence},
    {.key = "submit", .type = GW_T_SAID, .say = row_submit},
};
static const struct gw_record SCHEDULE_RECORD =
    RECORD("requirement", gw_required, SCHEDULE_ROW, .help = "a row as people read it");
static const struct view_column SCHEDULE_COLUMNS[] = {
    COLUMN("No.", "id"),      COLUMN("Check", "check"), COLUMN("Where", "place"),       COLUMN("Required", "value"),
    COLUMN("Level", "level"), COLUMN("Test", "test"),   COLUMN("Evidence", "evidence"), COLUMN("Submit", "submit")};
static const struct view SCHEDULE = VIEW(&SCHEDULE_RECORD, SCHEDULE_COLUMNS);

static void schedule(struct specified_page *p)
{
    gw_spec_article(p, "Schedule of requirements");
    gw_spec_paragraph(p, "Each requirement is shown for the wall as it is to be built: its sizes, its make-up, its "
                         "framing, its fastening. A rating that was measured on something smaller does not show it.");
    gw_view_list(&p->page, "", &SCHEDULE, p->spec->set.requires.items, p->spec->set.requires.n);
}

/* What is open ---------------------------------------------------------------------------------------------------- */

static void questions(struct specified_page *p)
{
    gw_spec_article(p, "Left open by the project");
    if (!p->spec->questions.n) gw_spec_paragraph(p, "Nothing that this program knows to ask.");
    for (size_t i = 0; i < p->spec->questions.n; i++) {
        const struct gw_open_question *q = &p->spec->questions.items[i];
        const char *said = gw_message_text(p->page.arena, &q->question, p->page.shown);
        const char *places = q->places > 1 ? gw_format(p->page.arena, " (%ld places)", q->places) : "";
        gw_spec_paragraph(p, gw_format(p->page.arena, "%s: %s%s", q->check, said, places));
    }
}

/* The whole ------------------------------------------------------------------------------------------------------- */

static void general(struct specified_page *p)
{
    const struct gw_project *project = &p->page.results->answer->model->project;
    const char *others = gw_spec_pressures_by(p);
    gw_spec_article(p, "Basis");
    gw_spec_paragraph(
        p, gw_format(p->page.arena,
                     "Wind pressures by %s%s%s, glass by %s, as the building code %s adopts them; basic wind speed, "
                     "exposure and risk category as above, to be confirmed by the design professional in charge.",
                     gw_choice_name(gw_edition_choices, (int)project->codes->wind),
                     *others ? " and, where 2.1 says so, as " : "", others,
                     gw_choice_name(gw_glass_standard_choices, (int)project->codes->glass),
                     gw_choice_name(gw_building_code_choices, (int)project->codes->building)));
    gw_spec_paragraph(p,
                      "Positive pressure pushes inward. Test pressures are at allowable-stress level (0.6 W); the "
                      "structure is designed for strength level (1.0 W). The two are never compared with each other.");
    gw_spec_paragraph(p, "Requirements are numbered R-01 and on; the schedule at the end repeats each with its test, "
                         "its evidence and what is to be submitted.");
}

/* "each with its test and its evidence", but for those that nobody names a test for. */
static const char *with_what(struct specified_page *p)
{
    struct gw_text out;
    size_t without = 0;
    gw_text_init(&out, p->page.arena);
    gw_text_add(&out, "each with its evidence; no test is named for ");
    for (size_t i = 0; i < p->spec->set.requires.n; i++) {
        const struct gw_required *row = &p->spec->set.requires.items[i];
        if (!row->test) gw_text_addf(&out, "%s%s", without++ ? ", " : "", row->id);
    }
    return without ? out.at : "each with its test and its evidence";
}

/* The framing that takes more than any lite, which the drawing of lites does not show; NULL: none does. */
static const struct gw_specified_pressure *above_lites(const struct specified_page *p)
{
    const struct gw_specified_pressure *worst = NULL;
    double lites = 0;
    for (size_t i = 0; i < p->spec->pressures.n; i++) {
        const struct gw_specified_pressure *row = &p->spec->pressures.items[i];
        const double most = fmax(row->inward_asd, row->outward_asd);
        if (!row->framing) lites = fmax(lites, most);
        else if (row->row && (!worst || most > fmax(worst->inward_asd, worst->outward_asd))) worst = row;
    }
    return worst && fmax(worst->inward_asd, worst->outward_asd) > lites ? worst : NULL;
}

/* What is shown how, who says the pressures, and what takes most. */
static const char *lead_words(struct specified_page *p)
{
    const struct gw_codes *codes = p->page.results->answer->model->project.codes;
    const struct gw_specified_pressure *most = above_lites(p);
    const char *with = with_what(p), *others = gw_spec_pressures_by(p);
    struct gw_text out;
    gw_text_init(&out, p->page.arena);
    gw_text_addf(&out, "%c%s. Wind pressures by %s%s%s.", toupper((unsigned char)*with), with + 1,
                 gw_choice_name(gw_edition_choices, (int)codes->wind), *others ? " and, where 2.1 says so, as " : "",
                 others);
    if (!most) return out.at;
    const bool inward = most->inward_asd > most->outward_asd;
    gw_text_addf(&out, " More than any lite takes %s, ", gw_spec_part(true, most->first->parapet));
    gw_text_addf(&out, "%s: up to ", most->row->id);
    gw_add_bare(&out, GW_PRESSURE, p->page.shown, inward ? most->inward_asd : most->outward_asd, UP);
    gw_text_addf(&out, " %s %s.", gw_dim_info(GW_PRESSURE)->shown[p->page.shown], inward ? "inward" : "outward");
    return out.at;
}

/* How much is asked and how much is open, where the page is to be filed. */
static void lead(struct specified_page *p)
{
    const size_t n = p->spec->set.requires.n, open = p->spec->questions.n;
    if (!p->page.report->pictures) return;
    gw_report_lead(p->page.report, gw_format(p->page.arena, "%zu requirement%s; %zu question%s open.", n,
                                             n == 1 ? "" : "s", open, open == 1 ? " is" : "s are"));
    gw_report_line(p->page.report, lead_words(p));
    for (size_t i = 0; i < open; i++) {
        const struct gw_open_question *q = &p->spec->questions.items[i];
        gw_report_item(p->page.report, gw_format(p->page.arena, "Open, %s: %s", q->check,
                                                 gw_message_text(p->page.arena, &q->question, p->page.shown)));
    }
}

static bool is_specified(const struct gw_picture *picture) { return strncmp(picture->name, "specified:", 10) == 0; }

/* Of the wall of which the most is asked outward. */
static const struct gw_picture *governing_picture(struct specified_page *p, const struct gw_pictures *all)
{
    const struct gw_specified_pressure *worst = NULL;
    for (size_t i = 0; i < p->spec->pressures.n; i++) {
        const struct gw_specified_pressure *row = &p->spec->pressures.items[i];
        if (row->first->grid && !row->framing && (!worst || row->outward > worst->outward)) worst = row;
    }
    if (!worst) return NULL;
    const char *wall = gw_picture_word(p->page.arena, worst->first->wall);
    return gw_picture_named(all, gw_format(p->page.arena, "specified:%s", wall));
}

static void first_picture(struct specified_page *p, const struct gw_pictures *all)
{
    const struct gw_picture *first = p->page.report->pictures ? governing_picture(p, all) : NULL;
    if (first) gw_report_figure(p->page.report, &first->figure);
}

static void other_pictures(struct specified_page *p, const struct gw_pictures *all)
{
    enum { FEW = 4 };
    const struct gw_picture *first = governing_picture(p, all);
    for (size_t i = 0, shown = 0; p->page.report->pictures && i < all->n && shown < FEW; i++) {
        if (!is_specified(&all->items[i]) || &all->items[i] == first) continue;
        gw_report_figure(p->page.report, &all->items[i].figure);
        shown++;
    }
}

static void specify_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_specified *specified = result->value;
    struct specified_page p = {.page = gw_page_of(report, specified->results), .spec = specified->specification};
    struct gw_used used = p.spec->used;
    gw_page_head(&p.page, "Performance requirements");
    lead(&p);
    first_picture(&p, result->pictures);
    general(&p);
    gw_spec_pressures(&p);
    other_pictures(&p, result->pictures);
    gw_spec_tests(&p);
    schedule(&p);
    questions(&p);
    gw_used_merge(&used, &specified->results->used);
    gw_page_foot(&p.page, &used);
}

/* Data --------------------------------------------------------------------------------------------------------------
 */

static bool source_words(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_pressure_source *by = thing;
    (void)shown;
    if (!by->source) return false;
    gw_text_addf(out, "%s%s%s%s", by->by ? by->by : "", by->by ? " " : "", by->source, by->how);
    return true;
}

#define SOURCES(struct_)                                                                                               \
    OUT_SAID("inward_by", source_words, "who says the pressure inward",                                                \
             .offset = offsetof(struct struct_, inward_by)),                                                           \
        OUT_SAID("outward_by", source_words, "the same outward", .offset = offsetof(struct struct_, outward_by))
static const struct gw_field AREA[] = {
    NUM(gw_area_pressure, area, GW_AREA, .help = "effective wind area"),
    NUM(gw_area_pressure, inward, GW_PRESSURE, .help = "strength level, magnitude"),
    NUM(gw_area_pressure, outward, GW_PRESSURE, .help = "the same outward"),
    NUM(gw_area_pressure, inward_asd, GW_PRESSURE, .help = "allowable-stress level"),
    NUM(gw_area_pressure, outward_asd, GW_PRESSURE, .help = "the same outward"),
    SOURCES(gw_area_pressure),
};
static const struct gw_record AREA_RECORD = RECORD("area", gw_area_pressure, AREA, .help = "pressures of one area");
#define P_NUM(key_, dim_, help_) NUM(gw_specified_pressure, key_, dim_, .help = help_)
static const struct gw_field PRESSURE[] = {
    FIELD(gw_required, "id", id, GW_T_TEXT, .help = "the row that asks it", THROUGH(gw_specified_pressure, row)),
    FIELD(gw_element, "wall", wall, GW_T_TEXT, .help = "wall, or elevation of the schedule",
          THROUGH(gw_specified_pressure, first)),
    FIELD(gw_element, "zone", zone, GW_T_INTEGER, .help = "4 or 5", THROUGH(gw_specified_pressure, first)),
    FIELD(gw_element, "parapet", parapet, GW_T_YES_NO, .help = "above the roof line",
          THROUGH(gw_specified_pressure, first)),
    F(gw_specified_pressure, framing, GW_T_YES_NO, .help = "of framing, not of lites"),
    F(gw_specified_pressure, count, GW_T_COUNT, .help = "elements"),
    P_NUM(bottom, GW_LENGTH, "lowest edge above ground"),
    P_NUM(top, GW_LENGTH, "highest edge above ground"),
    P_NUM(inward, GW_PRESSURE, "greatest, strength level, magnitude"),
    P_NUM(outward, GW_PRESSURE, "the same outward"),
    P_NUM(inward_asd, GW_PRESSURE, "greatest, allowable-stress level"),
    P_NUM(outward_asd, GW_PRESSURE, "the same outward"),
    SOURCES(gw_specified_pressure),
    F(gw_specified_pressure, areas, GW_T_RECORD, .record = &AREA_RECORD, .flags = GW_MANY,
      .help = "what they would be at other effective areas"),
};
static const struct gw_record PRESSURE_RECORD =
    RECORD("pressure", gw_specified_pressure, PRESSURE, .help = "of one wall, zone and part");
static const struct gw_field QUESTION[] = {
    F(gw_open_question, check, GW_T_TEXT, .help = "that hangs on it"),
    F(gw_open_question, where, GW_T_TEXT, .help = "the first of the places"),
    F(gw_open_question, question, GW_T_MESSAGE, .help = "what is open, and whom to ask"),
    F(gw_open_question, places, GW_T_COUNT, .help = "how many"),
};
static const struct gw_record QUESTION_RECORD =
    RECORD("question", gw_open_question, QUESTION, .help = "what the project leaves open");
#define OF_SPEC(key_, member_, record_, help_)                                                                         \
    FIELD(gw_specification, key_, member_, GW_T_RECORD, .record = record_, .flags = GW_MANY, .help = help_,            \
          THROUGH(gw_specified, specification))
static const struct gw_field SPECIFIED[] = {
    F(gw_specified, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    OF_SPEC("requires", set.requires, &gw_required_record, "rows of the requirement set"),
    OF_SPEC("pressures", pressures, &PRESSURE_RECORD, "by wall, zone and part"),
    OF_SPEC("questions", questions, &QUESTION_RECORD, "what the project leaves open"),
    FIELD(gw_results, "mock_up", mock_up, GW_T_RECORD, .record = &gw_mock_up_record, .flags = GW_MANY,
          .help = "tests of a laboratory mock-up, in their order", THROUGH(gw_specified, results)),
};
const struct gw_record gw_specification_record =
    RECORD("specification", gw_specified, SPECIFIED, .help = "what 'specify' writes");

/* The file --------------------------------------------------------------------------------------------------------- */

static void pressures_beside(struct gw_text *out, const struct gw_required *row, enum gw_units shown)
{
    if (!gw_given(row->inward)) return;
    gw_text_add(out, " # ");
    add_pressures(out, row, shown);
}

static void set_file(struct gw_text *out, const struct gw_result *result)
{
    const struct gw_specified *specified = result->value;
    const struct gw_requirement_set *set = &specified->specification->set;
    const enum gw_units shown = result->shown;
    gw_text_add(out,
                "# A requirement set: 'check PROJECT --requirements FILE' judges by it instead of the site. A "
                "structural row is the greatest\n# pressure, each way, of the lites of its wall, zone and part, at "
                "the level that it names; figures are not rounded, so that a set\n# that is left as it is changes "
                "no verdict.\n");
    gw_text_addf(out, "galeward: 1\nunits: %s\nrequirement_set: ", gw_choice_name(gw_units_choices, (int)shown));
    gw_yaml_flow(out, gw_record_field(&gw_requirement_set_record, "requirement_set")->record, set->requirement_set,
                 shown);
    gw_text_add(out, set->requires.n ? "\nrequires:\n" : "\nrequires: []\n");
    for (size_t i = 0; i < set->requires.n; i++) {
        gw_text_add(out, "  - ");
        gw_yaml_flow(out, &gw_required_record, &set->requires.items[i], shown);
        pressures_beside(out, &set->requires.items[i], shown);
        gw_text_add(out, "\n");
    }
    gw_text_add(out, "# report_age: 10 years         # reports older than this do not count: judged by review, where a "
                     "submittal gives their dates\n");
}

/* What is assumed of candidates is none of a specification. */
void gw_leave_out_systems(struct gw_results *results)
{
    size_t kept = 0;
    for (size_t i = 0; i < results->assumptions.n; i++)
        if (results->assumptions.items[i]->subject != GW_OF_SYSTEM)
            results->assumptions.items[kept++] = results->assumptions.items[i];
    results->assumptions.n = kept;
}

static void schedule_sheet(struct gw_report *sheet, const struct gw_result *result)
{
    const struct gw_specified *specified = result->value;
    const struct gw_requirement_set *set = &specified->specification->set;
    struct page page = gw_page_of(sheet, specified->results);
    gw_view_sheet(&page, &SCHEDULE, set->requires.items, set->requires.n);
}

struct gw_result gw_result_specify(struct gw_arena *arena, const struct gw_specified *specified)
{
    struct gw_pictures *pictures = gw_alloc(arena, 1, sizeof *pictures);
    gw_pictures_of_specification(pictures, arena, specified->results, specified->specification);
    return (struct gw_result){.shown = specified->results->shown,
                              .record = &gw_specification_record,
                              .value = specified,
                              .rows = "requires",
                              .page = specify_page,
                              .sheet = schedule_sheet,
                              .pictures = pictures,
                              .file = set_file};
}
