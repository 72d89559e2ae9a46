/* Elements, what framing and anchors must bring, tests, reaches: the structs of the take-off and the answers, described
 * where they lie. */
#include "base/fields.h"
#include "report/page.h"
#include "report/results.h"

/* Elements -------------------------------------------------------------------------------------------------------- */

static const char *kind_word(int kind) { return gw_kind_names[kind]; }

static bool zone_in_short(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    (void)shown;
    gw_text_addf(out, "%d%s%s", e->zone, e->parapet ? "p" : "", e->place_unknown ? "?" : "");
    return true;
}

static bool element_size(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_add_bare(out, GW_LENGTH, shown, e->width, NEAREST);
    gw_text_add(out, " x ");
    gw_add_bare(out, GW_LENGTH, shown, e->height, NEAREST);
    return true;
}

static bool element_heights(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_add_heights(out, shown, e->bottom, e->top);
    return true;
}

static bool own_height(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    if (gw_given(e->elevation)) gw_add_heights(out, shown, e->elevation, e->elevation);
    return gw_given(e->elevation);
}

static bool inward_levels(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_add_levels(out, shown, e->inward.pa, e->inward_asd.pa);
    return true;
}

static bool outward_levels(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = thing;
    gw_add_levels(out, shown, fabs(e->outward.pa), fabs(e->outward_asd.pa));
    return true;
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
    E_NUM(elevation, GW_LENGTH, "of transoms, their screws and anchors: their own height above ground"),
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
    OUT_SAID("basis_for_people", gw_say_basis, "the basis in words", .flags = GW_TABLES_ONLY,
             .offset = offsetof(struct gw_element, used)),
    OUT_SAID("size", element_size, "width and height", .flags = GW_TABLES_ONLY),
    OUT_SAID("heights", element_heights, "from bottom to top", .flags = GW_TABLES_ONLY),
    OUT_SAID("own_height", own_height, "the elevation, where there is one", .flags = GW_TABLES_ONLY),
    OUT_SAID("inward_levels", inward_levels, "strength / allowable-stress level", .flags = GW_TABLES_ONLY),
    OUT_SAID("outward_levels", outward_levels, "the same, a magnitude", .flags = GW_TABLES_ONLY),
    OUT_SAID("zone_in_short", zone_in_short, "with p and ?", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_element_record = RECORD("element", gw_element, ELEMENT, .help = "a group of like elements");

/* Keys of the element that a struct points to. */
#define OF(struct_, key_, type_, help_, ...)                                                                           \
    FIELD(gw_element, #key_, key_, type_, .help = help_, THROUGH(struct_, element), __VA_ARGS__)

/* Framing --------------------------------------------------------------------------------------------------------- */

static const char *carries_word(int carries) { return carries == GW_CARRIES_WIND ? "wind" : "wind, dead"; }

#define R_NUM(key_, dim_, member_, help_) FIELD(gw_reaction, key_, member_, GW_T_NUMBER, .help = help_, .dim = dim_)
static const struct gw_field REACTION[] = {
    FIELD(gw_element, "element", id, GW_T_TEXT, .help = "name of the group of anchors", THROUGH(gw_reaction, element)),
    OF(gw_reaction, wall, GW_T_TEXT, "its wall"),
    OF(gw_reaction, mark, GW_T_TEXT, "jamb or interior, or mark of an opening"),
    OF(gw_reaction, count, GW_T_COUNT, "how many"),
    OF(gw_reaction, zone, GW_T_INTEGER, "4 or 5"),
    OF(gw_reaction, elevation, GW_T_NUMBER, "its own height above ground", .dim = GW_LENGTH),
    R_NUM("inward_asd", GW_FORCE, inward, "of each, allowable-stress level"),
    R_NUM("outward_asd", GW_FORCE, outward, "of each, magnitude"),
    R_NUM("inward", GW_FORCE, inward_strength, "of each, strength level"),
    R_NUM("outward", GW_FORCE, outward_strength, "of each, magnitude"),
    OF(gw_reaction, carries, GW_T_WORD, "wind, or wind and dead load", .word = carries_word),
    R_NUM("area", GW_AREA, area, "of the wall that hangs on it, for the dead load; 0: slotted"),
    F(gw_reaction, shared_with, GW_T_TEXT, .help = "the same anchors at a corner, told of the other face"),
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
    OF(gw_member_demand, elevation, GW_T_NUMBER, "of a transom: its own height above ground", .dim = GW_LENGTH),
    M_NUM("moment_asd", GW_MOMENT, moment, "largest under wind, allowable-stress level"),
    M_NUM("shear_asd", GW_FORCE, shear, "the same"),
    M_NUM("deflection_limit", GW_LENGTH, deflection_limit, "under wind, of the member or of the edge of glass"),
    M_NUM("inertia_needed", GW_INERTIA, inertia, "of aluminum, for that limit"),
    F(gw_member_demand, shared_with, GW_T_TEXT, .help = "the same mullions at a corner, told of the other face"),
};
const struct gw_record gw_member_record =
    RECORD("member", gw_member_demand, MEMBER, .help = "a group of mullions or transoms");

static bool test_and_again(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_sequence_step *s = thing;
    (void)shown;
    for (const char *c = gw_choice_name(gw_sequence_test_choices, (int)s->test); *c; c++)
        gw_text_bytes(out, *c == '_' ? " " : c, 1); /* words, where a file has a key */
    gw_text_add(out, s->again == GW_YES ? " again" : "");
    return true;
}

/* The test says which way it goes. Of air and water the pressure is a setting, often a standard's: 6.24 psf. */
static bool magnitude(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_sequence_step *s = thing;
    const bool set = s->test == GW_STEP_AIR || s->test == GW_STEP_WATER || s->test == GW_STEP_DYNAMIC;
    const double pressure = fabs(s->pressure);
    if (!gw_given(pressure)) return false;
    if (set) gw_add_figure(out, gw_quantity_shown(gw_units_standard(), GW_PRESSURE, shown, pressure), UP);
    else gw_add_bare(out, GW_PRESSURE, shown, pressure, UP);
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
    OUT_SAID("magnitude", magnitude, "of the pressure, rounded up", .flags = GW_TABLES_ONLY),
    OUT_SAID("test_and_again", test_and_again, "with 'again'", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_mock_up_record =
    RECORD("step", gw_sequence_step, MOCK_UP, .help = "a test of a laboratory mock-up");

static const struct gw_field APART[] = {
    F(gw_test_apart, title, GW_T_TEXT, .help = "what is done"),
    F(gw_test_apart, method, GW_T_TEXT, .help = "standard"),
    F(gw_test_apart, asked, GW_T_MESSAGE, .help = "what it is to show"),
};
const struct gw_record gw_test_apart_record =
    RECORD("test apart", gw_test_apart, APART, .help = "a test with specimens of its own, or apart from the mock-up's");

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
    OUT_SAID("place", reach_place, "its zone, in words", .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_reach_record = RECORD("reach", gw_reach, REACH, .help = "how far a candidate goes");

static const struct gw_field REQUEST[] = {
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system", THROUGH(gw_request, candidate)),
    FIELD(gw_check, "check", id, GW_T_TEXT, .help = "that is not shown for it; null: given pressures are too low",
          THROUGH3(gw_request, first, gw_finding, demand, gw_demand, check)),
    OUT_SENTENCE(gw_request, "question", question, "what is missing, and whom to ask"),
    F(gw_request, places, GW_T_COUNT, .help = "how many places ask it"),
    FIELD(gw_request, "element", where, GW_T_TEXT, .help = "the first of them; of pressures the worst"),
};
const struct gw_record gw_request_record =
    RECORD("request", gw_request, REQUEST, .help = "a question, once, with what is not shown for it");

static const struct gw_field DIFFERENCE[] = {
    FIELD(gw_difference, "element", id, GW_T_TEXT, .help = "name of the group"),
    F(gw_difference, direction, GW_T_TEXT, .help = "inward or outward"),
    NUM(gw_difference, computed, GW_PRESSURE, .help = "strength level, signed"),
    NUM(gw_difference, given, GW_PRESSURE, .help = "by the project's table"),
    F(gw_difference, excess, GW_T_NUMBER,
      .help = "of the given one over the computed one, as a part of it; below zero: too low"),
    FIELD(gw_element, "zone", zone, GW_T_INTEGER, .help = "4 or 5", THROUGH(gw_difference, element)),
    FIELD(gw_element, "effective_area", effective_area, GW_T_NUMBER, .help = "effective wind area", .dim = GW_AREA,
          THROUGH(gw_difference, element)),
    F(gw_difference, source, GW_T_TEXT, .help = "of the given one"),
};
const struct gw_record gw_difference_record =
    RECORD("difference", gw_difference, DIFFERENCE,
           .help = "a given pressure that differs from the computed one by more than 5 %");
