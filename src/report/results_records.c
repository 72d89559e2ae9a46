/* What the keys of a result are: the structs of the domain, described where they lie. */
#include "base/fields.h"
#include "report/explain.h"
#include "report/page.h"
#include "report/results.h"

/* The rows that a struct points to. */
#define BASIS(struct_)                                                                                                 \
    {                                                                                                                  \
        .key = "basis", .type = GW_T_BASIS, .help = "the weakest basis of the numbers behind it",                      \
        THROUGH(struct_, used)                                                                                         \
    }

const char *gw_check_name(const struct gw_demand *d) { return d->name ? d->name : d->check->id; }

/* Demands --------------------------------------------------------------------------------------------------------- */

static const char *state_word(int state)
{
    static const char *const words[] = {
        [GW_ASKED] = "required", [GW_NOT_ASKED] = "not required", [GW_NOT_KNOWN] = "not shown"};
    return words[state];
}

static const char *direction_word(int direction) { return gw_load_direction_name((enum gw_load_direction)direction); }

static const char *direction_or_none(int direction) { return direction ? direction_word(direction) : NULL; }

static const struct gw_field TERM[] = {
    F(gw_term, value, GW_T_NUMBER, .help = "required, or the limit of the response, in `unit`"),
    FIELD(gw_term, "unit", dim, GW_T_UNIT, .help = "SI unit of the value, as the end of a key"),
    F(gw_term, direction, GW_T_WORD, .word = direction_or_none, .help = "inward or outward, where it matters"),
    F(gw_term, response, GW_T_NUMBER,
      .help = "of a member whose stiffness is 1 N m2, in `unit`; it keeps within the value"),
};
static const struct gw_record TERM_RECORD = RECORD("term", gw_term, TERM, .help = "one quantity that is asked for");

#define D(key_, type_, ...) F(gw_demand, key_, type_, __VA_ARGS__)
#define OF_CHECK(key_, member_, help_, ...) FIELD(gw_check, key_, member_, GW_T_TEXT, .help = help_, __VA_ARGS__)
static const struct gw_field DEMAND[] = {
    OF_CHECK("check", id, "id of the check", THROUGH(gw_demand, check)),
    OF_CHECK("title", title, "what it is about", THROUGH(gw_demand, check)),
    D(name, GW_T_TEXT, .help = "name of a free-form rating"),
    FIELD(gw_demand, "element", where, GW_T_TEXT,
          .help = "element, wall, lite type, or project; of a group its first element"),
    FIELD(gw_demand, "status", state, GW_T_WORD, .word = state_word, .help = "required, not required, or not shown"),
    FIELD(gw_term, "value", value, GW_T_NUMBER, .help = "the first of `terms`, in `unit`",
          THROUGH(gw_demand, terms.items)),
    FIELD(gw_term, "value_outward", value, GW_T_NUMBER, .help = "the same quantity outward",
          THROUGH(gw_demand, outward)),
    D(at, GW_T_NUMBER, .dim = GW_PRESSURE, .help = "air: at this pressure difference"),
    FIELD(gw_term, "unit", dim, GW_T_UNIT, .help = "SI unit of the values, as the end of a key",
          THROUGH(gw_demand, terms.items)),
    D(at_most, GW_T_YES_NO, .help = "the rating must not be above the value"),
    OF_CHECK("clause", clause, "where it is asked for", THROUGH(gw_demand, check)),
    BASIS(gw_demand),
    D(message, GW_T_MESSAGE, .help = "how it came about"),
    D(terms, GW_T_RECORD, .flags = GW_MANY, .record = &TERM_RECORD, .help = "all that is asked for, magnitudes"),
};
const struct gw_record gw_demand_record =
    RECORD("demand", gw_demand, DEMAND, .help = "what one check asks at one place");

static const struct gw_field GROUP[] = {
    F(gw_demand_group, demand, GW_T_RECORD, .record = &gw_demand_record, .flags = GW_FLAT),
    F(gw_demand_group, elements, GW_T_TEXT, .flags = GW_MANY,
      .help = "every element of which just this is asked; empty: the demand is none of an element"),
};
static const struct gw_record GROUP_RECORD =
    RECORD("demand", gw_demand_group, GROUP,
           .help = "what one check asks at one place; elements of which the same is asked, with the same terms and the "
                   "same message, may share an entry");

/* Verdicts -------------------------------------------------------------------------------------------------------- */

static const char *verdict_word(int verdict) { return gw_verdict_name((enum gw_verdict)verdict); }

const char *gw_verdict_loud(int verdict)
{
    static const char *const words[] = {
        [GW_NOT_SHOWN] = "NOT SHOWN", [GW_PASS] = "PASS", [GW_FAIL] = "FAIL", [GW_NOT_REQUIRED] = "NOT REQUIRED"};
    return words[verdict];
}
static const char *evidence_word(int evidence) { return gw_evidence_name((enum gw_evidence)evidence); }

static void add_limit(struct gw_text *out, const struct gw_finding *f, double value, bool is_demand,
                      enum gw_units shown)
{
    enum rounding rounding = f->at_most ? NEAREST : is_demand ? UP : DOWN;
    if (f->at_most && gw_given(value)) gw_text_add(out, is_demand ? "limit " : "here ");
    gw_add_quantity(out, f->dim, shown, value, rounding);
}

static bool required(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    add_limit(out, f, f->required, true, shown);
    return true;
}

static bool provided(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    add_limit(out, f, f->provided, false, shown);
    return true;
}

static void add_bare_limit(struct gw_text *out, const struct gw_finding *f, double value, bool is_demand,
                           enum gw_units shown)
{
    enum rounding rounding = f->at_most ? NEAREST : is_demand ? UP : DOWN;
    if (gw_given(value)) gw_add_figure(out, gw_quantity_shown(gw_units_standard(), f->dim, shown, value), rounding);
}

static bool required_bare(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    add_bare_limit(out, f, f->required, true, shown);
    return true;
}

static bool provided_bare(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    add_bare_limit(out, f, f->provided, false, shown);
    return true;
}

static bool unit_of_both(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    if (gw_given(f->required) || gw_given(f->provided)) gw_text_add(out, gw_dim_info(f->dim)->shown[shown]);
    return true;
}

/* "63.6 / 50 psf"; of a limit "limit 1 in, here 1.182 in" */
static bool needs_and_has(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    const char *unit = gw_dim_info(f->dim)->shown[shown];
    if (!gw_given(f->required) || !gw_given(f->provided)) return required(out, f, shown);
    if (f->at_most) {
        required(out, f, shown);
        gw_text_add(out, ", ");
        return provided(out, f, shown);
    }
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), f->dim, shown, f->required), UP);
    gw_text_add(out, " / ");
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), f->dim, shown, f->provided), DOWN);
    if (*unit) gw_text_addf(out, " %s", unit);
    return true;
}

void gw_add_use(struct gw_text *out, const struct gw_finding *f)
{
    const bool stands = f->verdict == GW_PASS || (f->verdict == GW_FAIL && !(f->utilization <= 1));
    if (stands) gw_add_utilization(out, f->utilization);
}

static bool use(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)shown;
    gw_add_use(out, thing);
    return true;
}

static bool name_of_check(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)shown;
    gw_text_add(out, gw_check_name(thing));
    return true;
}

static bool check_and_direction(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    (void)shown;
    gw_text_add(out, gw_check_name(f->demand));
    if (f->direction) gw_text_addf(out, ", %s", gw_load_direction_name(f->direction));
    return true;
}

static bool name_or_mark(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_demand *d = thing;
    const char *mark = d->element ? gw_opening_mark(d->element) : NULL;
    (void)shown;
    if (!d->name && !mark) return false;
    gw_text_add(out, d->name ? d->name : mark);
    return true;
}

/* "north/lite/1 (W1)" */
static bool place_with_mark(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_demand *d = thing;
    const char *mark = d->element ? gw_opening_mark(d->element) : NULL;
    (void)shown;
    gw_text_add(out, d->where);
    if (mark) gw_text_addf(out, " (%s)", mark);
    return true;
}

#define V(key_, type_, ...) F(gw_finding, key_, type_, __VA_ARGS__)
static const struct gw_field FINDING[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_finding, candidate)),
    OF_CHECK("check", id, "id of the check", THROUGH2(gw_finding, demand, gw_demand, check)),
    OUT_SAID("name", name_or_mark, "name of a free-form rating; mark of the opening of a schedule",
             THROUGH(gw_finding, demand)),
    V(verdict, GW_T_WORD, .word = verdict_word, .help = "pass, fail, not shown or not required"),
    FIELD(gw_finding, "utilisation", utilization, GW_T_NUMBER, .help = "required over provided"),
    V(evidence, GW_T_WORD, .word = evidence_word, .help = "test, calculation, statement or none"),
    FIELD(gw_demand, "element", where, GW_T_TEXT, .help = "element, wall, lite type, or project",
          THROUGH(gw_finding, demand)),
    OUT_SAID("place", place_with_mark, "with the mark of an opening", .flags = GW_TABLES_ONLY,
             THROUGH(gw_finding, demand)),
    FIELD(gw_finding, "demand", required, GW_T_NUMBER, .help = "required, in `unit`"),
    FIELD(gw_finding, "capacity", provided, GW_T_NUMBER, .help = "provided, in `unit`"),
    FIELD(gw_finding, "unit", dim, GW_T_UNIT, .help = "SI unit of the values, as the end of a key"),
    V(direction, GW_T_WORD, .word = direction_word, .help = "inward or outward, where it matters"),
    BASIS(gw_finding),
    V(message, GW_T_MESSAGE, .help = "why"),
    OF_CHECK("link_check", id, "the link of the load path that governs",
             THROUGH3(gw_finding, link, gw_finding, demand, gw_demand, check)),
    FIELD(gw_demand, "link_element", where, GW_T_TEXT, .help = "where that link stands",
          THROUGH2(gw_finding, link, gw_finding, demand)),
    OUT_SAID("check_name", name_of_check, "name of a free-form rating, else the check's id",
             THROUGH(gw_finding, demand), .flags = GW_TABLES_ONLY),
    OUT_SAID("check_and_direction", check_and_direction, "with the direction", .flags = GW_TABLES_ONLY),
    OUT_SAID("basis_for_people", gw_say_basis, "the basis in words", .flags = GW_TABLES_ONLY,
             THROUGH(gw_finding, used)),
    OUT_SAID("required_bare", required_bare, "without its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("provided_bare", provided_bare, "without its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("unit_for_people", unit_of_both, "of both", .flags = GW_TABLES_ONLY),
    OUT_SAID("use", use, "the utilization where it stands for itself", .flags = GW_TABLES_ONLY),
    OUT_SAID("required", required, "with its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("provided", provided, "with its unit", .flags = GW_TABLES_ONLY),
    OUT_SAID("needs_and_has", needs_and_has, "required / provided", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_finding_record =
    RECORD("verdict", gw_finding, FINDING, .help = "one check of one candidate at one place");

#define COUNTED(key_, verdict_) FIELD(gw_summary, key_, counts[verdict_], GW_T_COUNT, .help = "how many")
static const struct gw_field SUMMARY[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_summary, candidate)),
    F(gw_summary, verdict, GW_T_WORD, .word = verdict_word,
      .help = "fail if any check fails; else not shown if any is, or something holds it; else pass"),
    OUT_SENTENCE(gw_summary, "held_by", held, "what holds it back where no check does; null: nothing"),
    COUNTED("pass", GW_PASS),
    COUNTED("fail", GW_FAIL),
    COUNTED("not_shown", GW_NOT_SHOWN),
    COUNTED("not_required", GW_NOT_REQUIRED),
    OF_CHECK("governing_check", id, "the check that governs",
             THROUGH3(gw_summary, governing, gw_finding, demand, gw_demand, check)),
    FIELD(gw_demand, "governing_element", where, GW_T_TEXT, .help = "where it governs",
          THROUGH2(gw_summary, governing, gw_finding, demand)),
    OUT_SAID("governing_place", place_with_mark, "with the mark of an opening",
             THROUGH2(gw_summary, governing, gw_finding, demand), .flags = GW_TABLES_ONLY),
    FIELD(gw_finding, "utilisation", utilization, GW_T_NUMBER, .help = "of the governing check",
          THROUGH(gw_summary, governing)),
    F(gw_summary, governing, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_TABLES_ONLY | GW_FLAT),
    FIELD(gw_summary, "verdict_loud", verdict, GW_T_WORD, .help = "in capitals", .word = gw_verdict_loud,
          .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_summary_record = RECORD("summary", gw_summary, SUMMARY, .help = "one candidate");

/* Remarks --------------------------------------------------------------------------------------------------------- */

static bool sha256(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_input *input = thing;
    (void)shown;
    gw_text_add(out, input->sha256);
    return true;
}

static const struct gw_field INPUT[] = {F(gw_input, file, GW_T_TEXT, .help = "as it was named"),
                                        OUT_SAID("sha256", sha256, "of its bytes")};
static const struct gw_record INPUT_RECORD = RECORD("input", gw_input, INPUT, .help = "a file that was read");
static const struct gw_field ASSUMPTION[] = {F(gw_assumption, where, GW_T_TEXT, .help = "what it concerns"),
                                             F(gw_assumption, text, GW_T_MESSAGE, .help = "what is said")};
static const struct gw_record ASSUMPTION_RECORD =
    RECORD("assumption", gw_assumption, ASSUMPTION, .help = "a default, a correction or a convention");
static const struct gw_field WARNING[] = {
    FIELD(gw_diag, "where", key, GW_T_TEXT, .help = "what it concerns"),
    FIELD(gw_diag, "text", message, GW_T_TEXT, .help = "what is said"),
    FIELD(gw_source, "file", name, GW_T_TEXT, .help = "where it stands", THROUGH(gw_diag, source)),
    F(gw_diag, line, GW_T_INTEGER, .help = "in that file; 0: nowhere"),
};
static const struct gw_record WARNING_RECORD = RECORD("warning", gw_diag, WARNING, .help = "an implausible value");
static const struct gw_field NOT_CHECKED[] = {
    FIELD(gw_not_checked, "where", what, GW_T_TEXT, .help = "what it concerns"),
    FIELD(gw_not_checked, "text", ask, GW_T_TEXT, .help = "what is said")};
static const struct gw_record NOT_CHECKED_RECORD =
    RECORD("not checked", gw_not_checked, NOT_CHECKED, .help = "a thing that is not checked here");

static bool caution(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)thing, (void)shown;
    gw_text_add(out, gw_caution_text());
    return true;
}

static const struct gw_field REMARKS[] = {
    {.key = "project",
     .type = GW_T_TEXT,
     .offset = offsetof(struct gw_info, name),
     .help = "project name",
     THROUGH3(gw_results, answer, gw_answer, model, gw_model, project.project)},
    FIELD(gw_model, "inputs", inputs, GW_T_RECORD, .help = "files that were read", .flags = GW_MANY,
          .record = &INPUT_RECORD, THROUGH2(gw_results, answer, gw_answer, model)),
    F(gw_results, assumptions, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &ASSUMPTION_RECORD,
      .help = "defaults taken, corrections, conventions"),
    F(gw_results, warnings, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &WARNING_RECORD,
      .help = "implausible values"),
    FIELD(gw_answer, "not_checked", not_checked, GW_T_RECORD, .flags = GW_MANY, .record = &NOT_CHECKED_RECORD,
          .help = "what is not checked here, and whom to ask", THROUGH(gw_results, answer)),
    OUT_SAID("caution", caution, "what the results are good for"),
};
const struct gw_record gw_remarks_record =
    RECORD("remarks", gw_results, REMARKS, .help = "what every result carries besides its figures");

/* The whole ------------------------------------------------------------------------------------------------------- */

#define MANY(key_, struct_, member_, record_, help_, ...)                                                              \
    FIELD(struct_, key_, member_, GW_T_RECORD, .flags = GW_MANY, .record = record_, .help = help_, __VA_ARGS__)
#define OF_ANSWER(key_, member_, record_, help_)                                                                       \
    MANY(key_, gw_answer, member_, record_, help_, THROUGH(gw_results, answer))
#define OF_TAKEOFF(key_, member_, record_, help_)                                                                      \
    MANY(key_, gw_takeoff, member_, record_, help_, THROUGH2(gw_results, answer, gw_answer, takeoff))
static const struct gw_field RESULTS[] = {
    {.key = "remarks", .type = GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT | GW_INSIDE},
    OF_TAKEOFF("elements", elements, &gw_element_record, "groups of like elements"),
    F(gw_results, demands, GW_T_RECORD, .flags = GW_MANY, .record = &GROUP_RECORD,
      .help = "demands other than pressures on elements"),
    OF_ANSWER("reactions", reactions, &gw_reaction_record, "of the anchors under wind"),
    OF_ANSWER("members", members, &gw_member_record, "what wind asks of mullions and transoms"),
    F(gw_results, mock_up, GW_T_RECORD, .flags = GW_MANY, .record = &gw_mock_up_record,
      .help = "tests of a laboratory mock-up, in their order"),
    FIELD(gw_answer, "mock_up_fault", mock_up_fault, GW_T_MESSAGE, .help = "why there are none; null: there are",
          THROUGH(gw_results, answer)),
    FIELD(gw_answer, "racking_fault", racking_fault, GW_T_MESSAGE,
          .help = "why they lack the racking that is asked for; null: they do not", THROUGH(gw_results, answer)),
    OF_ANSWER("tests_apart", apart, &gw_test_apart_record, "with specimens of their own, or apart from the mock-up's"),
    OF_TAKEOFF("differences", differences, &gw_difference_record, "given pressures that differ from the computed ones"),
    FIELD(gw_results, "to_confirm", weak, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &gw_row_record,
          .help = "rows of the tables behind the figures that are recalled, not yet confirmed, or common practice"),
    OF_ANSWER("verdicts", judgement.findings, &gw_finding_record, "every check of every candidate"),
    OF_ANSWER("summaries", judgement.summaries, &gw_summary_record, "every candidate"),
    OF_ANSWER("missing", missing, &gw_request_record, "what to ask whom, each question once"),
    OF_ANSWER("reaches", reaches, &gw_reach_record, "how far each candidate goes"),
};
enum { CHECK_ONLY = 4 /* the last lists */ };
const struct gw_record gw_demand_results_record = {.name = "results",
                                                   .size = sizeof(struct gw_results),
                                                   .fields = RESULTS,
                                                   .n = COUNT(RESULTS) - CHECK_ONLY,
                                                   .help = "what 'demand' writes"};
const struct gw_record gw_results_record = RECORD(
    "results", gw_results, RESULTS, .help = "what 'check' writes; 'demand' leaves out verdicts, summaries and reaches");
