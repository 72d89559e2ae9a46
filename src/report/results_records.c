/* What the keys of a result are: the structs of the domain, described where they lie. */
#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"

#define SAID(key_, say_, help_, ...)                                                                                   \
    {                                                                                                                  \
        .key = key_, .type = GW_T_SAID, .say = say_, .help = help_, __VA_ARGS__                                        \
    }
#define THROUGH(struct_, member_) .hops = 1, .via = {offsetof(struct struct_, member_)}
#define THROUGH2(a_, member_, b_, next_) .hops = 2, .via = {offsetof(struct a_, member_), offsetof(struct b_, next_)}

/* Elements -------------------------------------------------------------------------------------------------------- */

static const char *kind_word(int kind) { return gw_kind_names[kind]; }

static bool element_extent(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_add_extent(out, shown, e->bottom, e->top);
    return true;
}

static bool zone_in_full(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    (void)shown;
    gw_text_addf(out, "%d%s", e->zone, e->parapet ? " parapet" : "");
    return true;
}

static bool zone_in_short(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    (void)shown;
    gw_text_addf(out, "%d%s%s", e->zone, e->parapet ? "p" : "", e->place_unknown ? "?" : "");
    return true;
}

static bool place_on_wall(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    (void)shown;
    gw_text_addf(out, "%s: %s, zone %d%s", e->wall, e->mark, e->zone, e->parapet ? ", parapet" : "");
    return true;
}

static bool member_place(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_text_addf(out, "%s, ", gw_kind_names[e->kind]);
    return place_on_wall(out, e, shown);
}

#define E_NUM(key_, dim_, help_) F(gw_element, key_, GW_T_NUMBER, .dim = dim_, .help = help_)
#define E_PA(key_, help_) FIELD(gw_element, #key_, key_.pa, GW_T_NUMBER, .help = help_, .dim = GW_PRESSURE)
static const struct gw_field ELEMENT[] = {
    F(gw_element, id, GW_T_TEXT, .help = "name of the group, for 'explain'"),
    F(gw_element, wall, GW_T_TEXT, .help = "wall, or elevation of the schedule"),
    FIELD(gw_building, "building", name, GW_T_TEXT, .help = "its building", THROUGH(gw_element, building)),
    F(gw_element, kind, GW_T_WORD, .word = kind_word, .help = "lite, mullion, transom, screw or anchor"),
    F(gw_element, mark, GW_T_TEXT, .help = "lite type, mark of an opening, or place in the frame"),
    F(gw_element, columns, GW_T_TEXT, .help = "columns or grid lines of the wall, from the left"),
    PICK(gw_element, component, gw_component_choices, .help = "fixed, vent, door or spandrel"),
    F(gw_element, lite, GW_T_TEXT, .help = "lite type"),
    F(gw_element, count, GW_T_COUNT, .help = "how many"),
    E_NUM(width, GW_LENGTH, "width carried"),
    E_NUM(height, GW_LENGTH, "height carried"),
    E_NUM(bottom, GW_LENGTH, "lowest edge above ground"),
    E_NUM(top, GW_LENGTH, "highest edge above ground"),
    E_NUM(span, GW_LENGTH, "span, framing"),
    F(gw_element, zone, GW_T_INTEGER, .help = "4 or 5"),
    F(gw_element, parapet, GW_T_YES_NO, .help = "stands above the roof line"),
    F(gw_element, place_unknown, GW_T_YES_NO, .help = "taken at the worst place"),
    E_NUM(corner_distance, GW_LENGTH, "nearest edge to the nearest outside corner"),
    E_NUM(effective_area, GW_AREA, "effective wind area"),
    E_PA(inward, "design pressure, strength level, positive"),
    E_PA(outward, "design pressure, strength level, negative"),
    E_PA(inward_asd, "allowable-stress level, positive"),
    E_PA(outward_asd, "allowable-stress level, negative"),
    F(gw_element, governs, GW_T_TEXT, .help = "where the governing pressure comes from"),
    FIELD(gw_element, "basis", used, GW_T_BASIS, .help = "the weakest basis of the numbers behind it"),
    SAID("extent", element_extent, "from bottom to top", .flags = GW_TABLES_ONLY),
    SAID("zone_in_full", zone_in_full, "with 'parapet'", .flags = GW_TABLES_ONLY),
    SAID("zone_in_short", zone_in_short, "with p and ?", .flags = GW_TABLES_ONLY),
    SAID("place", place_on_wall, "wall, mark and zone", .flags = GW_TABLES_ONLY),
    SAID("member_place", member_place, "kind, wall, mark and zone", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_element_record = RECORD("element", gw_element, ELEMENT, .help = "a group of like elements");

/* Keys of the element that a struct points to. */
#define OF(struct_, key_, type_, help_, ...)                                                                           \
    FIELD(gw_element, #key_, key_, type_, .help = help_, THROUGH(struct_, element), __VA_ARGS__)
/* All of them, for tables. */
#define ELEMENT_OF(struct_)                                                                                            \
    {                                                                                                                  \
        .key = "its", .type = GW_T_RECORD, .record = &gw_element_record, .offset = offsetof(struct struct_, element),  \
        .flags = GW_TABLES_ONLY | GW_FLAT                                                                              \
    }

const char *gw_check_name(const struct gw_demand *d) { return d->name ? d->name : d->check->id; }

const char *gw_demand_state_name(const struct gw_demand *d)
{
    static const char *const names[] = {
        [GW_ASKED] = "required", [GW_NOT_ASKED] = "not required", [GW_NOT_KNOWN] = "not shown"};
    return names[d->state];
}

/* Demands --------------------------------------------------------------------------------------------------------- */

static bool demand_status(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)shown;
    gw_text_add(out, gw_demand_state_name(thing));
    return true;
}

/* Of the check that a struct points to. */
#define OF_CHECK(key_, member_, struct_, pointer_, help_)                                                              \
    FIELD(gw_check, key_, member_, GW_T_TEXT, .help = help_, THROUGH(struct_, pointer_))

static const char *load_direction_word(int direction)
{
    return direction ? gw_load_direction_name((enum gw_load_direction)direction) : NULL;
}
static const struct gw_field TERM[] = {
    F(gw_term, direction, GW_T_WORD, .word = load_direction_word, .help = "inward or outward, where it matters"),
    F(gw_term, value, GW_T_NUMBER, .help = "in `unit`, magnitude"),
    FIELD(gw_term, "unit", dim, GW_T_UNIT, .help = "SI unit, as the end of a key"),
};
static const struct gw_record TERM_RECORD = RECORD("term", gw_term, TERM, .help = "one quantity that is asked");

#define D(key_, type_, ...) F(gw_demand, key_, type_, __VA_ARGS__)
static const struct gw_field DEMAND[] = {
    OF_CHECK("check", id, gw_demand, check, "id of the check"),
    OF_CHECK("title", title, gw_demand, check, "what it is about"),
    D(name, GW_T_TEXT, .help = "name of a free-form rating"),
    FIELD(gw_demand, "element", where, GW_T_TEXT,
          .help = "element, wall, lite type, or project; of a group its first element"),
    SAID("status", demand_status, "required, not required, or not shown"),
    FIELD(gw_term, "value", value, GW_T_NUMBER, .help = "demand in `unit`; pressures: inward, allowable-stress level",
          THROUGH(gw_demand, terms.items)),
    FIELD(gw_term, "value_outward", value, GW_T_NUMBER, .help = "pressures: outward, magnitude",
          THROUGH(gw_demand, outward)),
    D(at, GW_T_NUMBER, .dim = GW_PRESSURE, .help = "air: at this pressure difference"),
    FIELD(gw_term, "unit", dim, GW_T_UNIT, .help = "SI unit of the values, as the end of a key",
          THROUGH(gw_demand, terms.items)),
    D(terms, GW_T_RECORD, .flags = GW_MANY, .record = &TERM_RECORD, .help = "every quantity that is asked"),
    D(at_most, GW_T_YES_NO, .help = "the rating must not be above the value"),
    OF_CHECK("clause", clause, gw_demand, check, "where it is asked for"),
    FIELD(gw_used, "basis", words, GW_T_BASIS, .help = "the weakest basis of the numbers behind it",
          THROUGH(gw_demand, used)),
    D(message, GW_T_MESSAGE, .help = "how it came about"),
};
const struct gw_record gw_demand_record =
    RECORD("demand", gw_demand, DEMAND, .help = "what one check asks at one place");

static const struct gw_field GROUP[] = {
    F(gw_demand_group, demand, GW_T_RECORD, .record = &gw_demand_record, .flags = GW_FLAT),
    F(gw_demand_group, elements, GW_T_TEXT, .flags = GW_MANY,
      .help = "every element of which just this is asked; empty: the demand is none of an element"),
};
static const struct gw_record GROUP_RECORD = RECORD(
    "demand", gw_demand_group, GROUP,
    .help = "what one check asks at one place; elements of which the same is asked, with the same values and the "
            "same message, share an entry");

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

/* "63.6 / 50 psf" */
static bool needs_and_has(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_finding *f = thing;
    const char *unit = gw_dim_info(f->dim)->shown[shown];
    if (!gw_given(f->required) || !gw_given(f->provided)) return required(out, f, shown);
    enum rounding rounding = f->at_most ? NEAREST : UP;
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), f->dim, shown, f->required), rounding);
    gw_text_add(out, " / ");
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), f->dim, shown, f->provided), f->at_most ? NEAREST : DOWN);
    if (*unit) gw_text_addf(out, " %s", unit);
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

static const char *direction_word(int direction) { return gw_load_direction_name((enum gw_load_direction)direction); }

#define V(key_, type_, ...) F(gw_finding, key_, type_, __VA_ARGS__)
static const struct gw_field FINDING[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_finding, candidate)),
    FIELD(gw_check, "check", id, GW_T_TEXT, .help = "id of the check", THROUGH2(gw_finding, demand, gw_demand, check)),
    FIELD(gw_demand, "name", name, GW_T_TEXT, .help = "name of a free-form rating", THROUGH(gw_finding, demand)),
    V(verdict, GW_T_WORD, .word = verdict_word, .help = "pass, fail, not shown or not required"),
    V(utilisation, GW_T_NUMBER, .help = "required over provided"),
    V(evidence, GW_T_WORD, .word = evidence_word, .help = "test, calculation, statement or none"),
    FIELD(gw_demand, "element", where, GW_T_TEXT, .help = "element, wall, lite type, or project",
          THROUGH(gw_finding, demand)),
    FIELD(gw_finding, "demand", required, GW_T_NUMBER, .help = "required, in `unit`"),
    FIELD(gw_finding, "capacity", provided, GW_T_NUMBER, .help = "provided, in `unit`"),
    FIELD(gw_finding, "unit", dim, GW_T_UNIT, .help = "SI unit of the values, as the end of a key"),
    V(direction, GW_T_WORD, .word = direction_word, .help = "inward or outward, where it matters"),
    FIELD(gw_used, "basis", words, GW_T_BASIS, .help = "the weakest basis of the numbers behind it",
          THROUGH(gw_finding, used)),
    V(message, GW_T_MESSAGE, .help = "why"),
    SAID("check_name", name_of_check, "name of a free-form rating, else the check's id", THROUGH(gw_finding, demand),
         .flags = GW_TABLES_ONLY),
    SAID("check_and_direction", check_and_direction, "with the direction", .flags = GW_TABLES_ONLY),
    SAID("required", required, "with its unit", .flags = GW_TABLES_ONLY),
    SAID("provided", provided, "with its unit", .flags = GW_TABLES_ONLY),
    SAID("needs_and_has", needs_and_has, "required / provided", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_finding_record =
    RECORD("verdict", gw_finding, FINDING, .help = "one check of one candidate at one place");

#define COUNTED(key_, verdict_) FIELD(gw_summary, key_, counts[verdict_], GW_T_COUNT, .help = "how many")
static const struct gw_field SUMMARY[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_summary, candidate)),
    F(gw_summary, verdict, GW_T_WORD, .word = verdict_word,
      .help = "fail if any check fails; else not shown if any is; else pass"),
    COUNTED("pass", GW_PASS),
    COUNTED("fail", GW_FAIL),
    COUNTED("not_shown", GW_NOT_SHOWN),
    COUNTED("not_required", GW_NOT_REQUIRED),
    FIELD(gw_check, "governing_check", id, GW_T_TEXT, .help = "the check that governs", .hops = 3,
          .via = {offsetof(struct gw_summary, governing), offsetof(struct gw_finding, demand),
                  offsetof(struct gw_demand, check)}),
    FIELD(gw_demand, "governing_element", where, GW_T_TEXT, .help = "where it governs",
          THROUGH2(gw_summary, governing, gw_finding, demand)),
    FIELD(gw_finding, "utilisation", utilisation, GW_T_NUMBER, .help = "of the governing check",
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
                                        SAID("sha256", sha256, "of its bytes")};
static const struct gw_record INPUT_RECORD = RECORD("input", gw_input, INPUT, .help = "a file that was read");
static const struct gw_field ASSUMPTION[] = {F(gw_assumption, where, GW_T_TEXT, .help = "what it concerns"),
                                             F(gw_assumption, text, GW_T_TEXT, .help = "what is said")};
static const struct gw_record ASSUMPTION_RECORD =
    RECORD("assumption", gw_assumption, ASSUMPTION, .help = "a default, a correction or a convention");
static const struct gw_field WARNING[] = {FIELD(gw_diag, "where", key, GW_T_TEXT, .help = "what it concerns"),
                                          FIELD(gw_diag, "text", message, GW_T_TEXT, .help = "what is said")};
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
     THROUGH2(gw_results, model, gw_model, project.project)},
    FIELD(gw_model, "inputs", inputs, GW_T_RECORD, .help = "files that were read", .flags = GW_MANY,
          .record = &INPUT_RECORD, THROUGH(gw_results, model)),
    F(gw_results, assumptions, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &ASSUMPTION_RECORD,
      .help = "defaults taken, corrections, conventions"),
    F(gw_results, warnings, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &WARNING_RECORD,
      .help = "implausible values"),
    FIELD(gw_answer, "not_checked", not_checked, GW_T_RECORD, .flags = GW_MANY, .record = &NOT_CHECKED_RECORD,
          .help = "what is not checked here, and whom to ask", THROUGH(gw_results, answer)),
    SAID("caution", caution, "what the results are good for"),
};
const struct gw_record gw_remarks_record =
    RECORD("remarks", gw_results, REMARKS, .help = "what every result carries besides its figures");

/* Framing --------------------------------------------------------------------------------------------------------- */

#define R_NUM(key_, dim_, member_, help_) FIELD(gw_reaction, key_, member_, GW_T_NUMBER, .help = help_, .dim = dim_)
static const struct gw_field REACTION[] = {
    FIELD(gw_element, "element", id, GW_T_TEXT, .help = "name of the group of anchors", THROUGH(gw_reaction, element)),
    OF(gw_reaction, wall, GW_T_TEXT, "its wall"),
    OF(gw_reaction, mark, GW_T_TEXT, "jamb or interior, or mark of an opening"),
    OF(gw_reaction, count, GW_T_COUNT, "how many"),
    OF(gw_reaction, zone, GW_T_INTEGER, "4 or 5"),
    R_NUM("inward_asd", GW_FORCE, inward, "of each, allowable-stress level"),
    R_NUM("outward_asd", GW_FORCE, outward, "of each, magnitude"),
    R_NUM("inward", GW_FORCE, inward_strength, "of each, strength level"),
    R_NUM("outward", GW_FORCE, outward_strength, "of each, magnitude"),
    R_NUM("area", GW_AREA, area, "of the wall that hangs on it, for the dead load"),
    ELEMENT_OF(gw_reaction),
};
const struct gw_record gw_reaction_record = RECORD("reaction", gw_reaction, REACTION, .help = "a group of anchors");

#define M_NUM(key_, dim_, member_, help_)                                                                              \
    FIELD(gw_member_demand, key_, member_, GW_T_NUMBER, .help = help_, .dim = dim_)
static const struct gw_field MEMBER[] = {
    FIELD(gw_element, "element", id, GW_T_TEXT, .help = "name of the group", THROUGH(gw_member_demand, element)),
    OF(gw_member_demand, kind, GW_T_WORD, "mullion or transom", .word = kind_word),
    OF(gw_member_demand, wall, GW_T_TEXT, "its wall"),
    OF(gw_member_demand, mark, GW_T_TEXT, "its place in the frame"),
    OF(gw_member_demand, count, GW_T_COUNT, "how many"),
    OF(gw_member_demand, zone, GW_T_INTEGER, "4 or 5"),
    M_NUM("moment_asd", GW_MOMENT, moment, "largest under wind, allowable-stress level"),
    M_NUM("shear_asd", GW_FORCE, shear, "the same"),
    M_NUM("deflection_limit", GW_LENGTH, deflection_limit, "under wind"),
    M_NUM("inertia_needed", GW_INERTIA, inertia, "of aluminum, for that limit"),
    ELEMENT_OF(gw_member_demand),
};
const struct gw_record gw_member_record =
    RECORD("member", gw_member_demand, MEMBER, .help = "a group of mullions or transoms");

static bool test_and_again(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_sequence_step *s = thing;
    (void)shown;
    gw_text_addf(out, "%s%s", gw_choice_name(gw_sequence_test_choices, (int)s->test),
                 s->again == GW_YES ? " again" : "");
    return true;
}

#define S_NUM(key_, dim_, help_) NUM(gw_sequence_step, key_, dim_, .help = help_)
static const struct gw_field MOCK_UP[] = {
    PICK(gw_sequence_step, test, gw_sequence_test_choices, .help = "what is done"),
    F(gw_sequence_step, method, GW_T_TEXT, .help = "standard"),
    F(gw_sequence_step, again, GW_T_BOOL, .help = "a repetition"),
    S_NUM(pressure, GW_PRESSURE, "outward negative"),
    S_NUM(leakage, GW_LEAKAGE, "at most"),
    FIELD(gw_sequence_step, "racking", displacement, GW_T_NUMBER, .help = "displacement", .dim = GW_LENGTH),
    S_NUM(limit, GW_LENGTH, "deflection at design pressure, permanent set after proof, at most"),
    SAID("test_and_again", test_and_again, "with 'again'", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_mock_up_record =
    RECORD("step", gw_sequence_step, MOCK_UP, .help = "a test of a laboratory mock-up");

static bool reach_place(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_reach *r = thing;
    (void)shown;
    gw_text_addf(out, "zone %d, its worst element", r->zone);
    return true;
}

#define G_NUM(key_, member_, help_) FIELD(gw_reach, key_, member_, GW_T_NUMBER, .help = help_, .dim = GW_LENGTH)
static const struct gw_field REACH[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_reach, candidate)),
    F(gw_reach, zone, GW_T_INTEGER, .help = "4 or 5: at the pressures of its worst element"),
    G_NUM("mullion_span", span, "greatest simple span by calculation"),
    G_NUM("at_width", at_width, "width that it carries"),
    G_NUM("mullion_width", width, "greatest width carried, by calculation"),
    G_NUM("at_span", at_span, "over that span"),
    G_NUM("screw_spacing", spacing, "greatest spacing of pressure-plate screws, by calculation"),
    G_NUM("screw_width", screw_width, "width that they carry"),
    SAID("place", reach_place, "its zone, in words", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_reach_record = RECORD("reach", gw_reach, REACH, .help = "how far a candidate goes");

static const struct gw_field DIFFERENCE[] = {
    FIELD(gw_difference, "element", id, GW_T_TEXT, .help = "name of the group"),
    F(gw_difference, direction, GW_T_TEXT, .help = "inward or outward"),
    NUM(gw_difference, computed, GW_PRESSURE, .help = "strength level, signed"),
    NUM(gw_difference, given, GW_PRESSURE, .help = "by the project's table"),
    F(gw_difference, source, GW_T_TEXT, .help = "of the given one"),
};
const struct gw_record gw_difference_record =
    RECORD("difference", gw_difference, DIFFERENCE,
           .help = "a given pressure that differs from the computed one by more than 5 %");

/* The whole ------------------------------------------------------------------------------------------------------- */

#define MANY(key_, through_, struct_, member_, record_, help_)                                                         \
    FIELD(struct_, key_, member_, GW_T_RECORD, .help = help_, .flags = GW_MANY, .record = record_,                     \
          THROUGH(gw_results, through_))
static const struct gw_field RESULTS[] = {
    {.key = "remarks", .type = GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT | GW_INSIDE},
    MANY("elements", takeoff, gw_takeoff, elements, &gw_element_record, "groups of like elements"),
    F(gw_results, demands, GW_T_RECORD, .flags = GW_MANY, .record = &GROUP_RECORD,
      .help = "demands other than pressures on elements"),
    MANY("reactions", answer, gw_answer, reactions, &gw_reaction_record, "of the anchors under wind"),
    MANY("members", answer, gw_answer, members, &gw_member_record, "what wind asks of mullions and transoms"),
    F(gw_results, mock_up, GW_T_RECORD, .flags = GW_MANY, .record = &gw_mock_up_record,
      .help = "tests of a laboratory mock-up, in their order"),
    MANY("differences", takeoff, gw_takeoff, differences, &gw_difference_record,
         "given pressures that differ from the computed ones"),
    MANY("verdicts", answer, gw_answer, judgement.findings, &gw_finding_record, "every check of every candidate"),
    MANY("summaries", answer, gw_answer, judgement.summaries, &gw_summary_record, "every candidate"),
    MANY("reaches", answer, gw_answer, reaches, &gw_reach_record, "how far each candidate goes"),
};
enum { CHECK_ONLY = 3 /* the last lists */ };
const struct gw_record gw_demand_results_record = {.name = "results",
                                                   .size = sizeof(struct gw_results),
                                                   .fields = RESULTS,
                                                   .n = COUNT(RESULTS) - CHECK_ONLY,
                                                   .help = "what 'demand' writes"};
const struct gw_record gw_results_record = RECORD(
    "results", gw_results, RESULTS, .help = "what 'check' writes; 'demand' leaves out verdicts, summaries and reaches");
