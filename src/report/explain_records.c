/* What 'explain' writes: every derivation behind one element. */
#include "base/fields.h"
#include "report/explain.h"
#include "report/page.h"
#include "report/results.h"

static const char *status_word(int status) { return status == GW_OK ? NULL : gw_status_code((enum gw_status)status); }
static const char *glass_route_word(int route)
{
    return route == GW_ROUTE_STANDARD ? "the standard's factors" : "first principles";
}

#define TRACE(struct_, key_, member_, help_, ...)                                                                      \
    FIELD(struct_, key_, member_.steps, GW_T_RECORD, .flags = GW_MANY, .record = &gw_step_record, .help = help_,       \
          __VA_ARGS__)

/* What a test was compared by ---------------------------------------------------------------------------------------
 */

static double tested(const void *thing, enum gw_units shown)
{
    const struct gw_compared *c = thing;
    return gw_quantity_shown(gw_units_standard(), c->dim, shown, c->tested);
}

static double needed(const void *thing, enum gw_units shown)
{
    const struct gw_compared *c = thing;
    return gw_quantity_shown(gw_units_standard(), c->dim, shown, c->needed);
}

static bool unit_of_compared(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_compared *c = thing;
    if (!c->needed_as) gw_text_add(out, gw_dim_info(c->dim)->shown[shown]);
    return !c->needed_as;
}

static const struct gw_field COMPARED[] = {
    F(gw_compared, what, GW_T_TEXT, .help = "what of the specimen"),
    {.key = "tested",
     .type = GW_T_FIGURE,
     .figure = tested,
     .help = "its own, in `unit`; null: not recorded, or words"},
    {.key = "needed", .type = GW_T_FIGURE, .figure = needed, .help = "what is here, in `unit`; null: words"},
    {.key = "unit", .type = GW_T_SAID, .say = unit_of_compared, .help = "of both; empty: plain numbers"},
    F(gw_compared, tested_as, GW_T_TEXT, .help = "its own in words"),
    F(gw_compared, needed_as, GW_T_TEXT, .help = "what is here in words"),
    F(gw_compared, at_most, GW_T_YES_NO, .help = "the specimen's is not to be greater"),
    F(gw_compared, holds, GW_T_YES_NO, .help = "the test covers it"),
};
static const struct gw_record COMPARED_RECORD =
    RECORD("compared", gw_compared, COMPARED, .help = "what a test was compared by");

/* Links ------------------------------------------------------------------------------------------------------------ */

static const struct gw_field LINK[] = {
    FIELD(gw_check, "title", title, GW_T_TEXT, THROUGH2(gw_explained_link, finding.demand, gw_demand, check),
          .help = "what it is about"),
    FIELD(gw_explained_link, "finding", finding, GW_T_RECORD, .record = &gw_finding_record,
          .flags = GW_FLAT | GW_INSIDE),
    TRACE(gw_explained_link, "trace", trace, "its derivation", .hops = 0),
    FIELD(gw_explained_link, "compared", compared.list, GW_T_RECORD, .flags = GW_MANY, .record = &COMPARED_RECORD,
          .help = "by what the best of its tests was compared"),
    F(gw_explained_link, calculated, GW_T_RECORD, .record = &gw_finding_record,
      .help = "where a test answers: what calculation says besides; null: none"),
    TRACE(gw_explained_link, "calculation", calculation, "its derivation", .hops = 0),
};
static const struct gw_record LINK_RECORD =
    RECORD("link", gw_explained_link, LINK, .help = "a check of one candidate at the element, with its derivation");

/* Glass ------------------------------------------------------------------------------------------------------------ */

static void say_fault(struct gw_text *out, const struct gw_fault *fault, enum gw_units shown)
{
    const struct gw_message said = gw_fault_said(fault);
    gw_message_print(out, &said, shown);
}

static bool where_it_stops(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_explained_glass *g = thing;
    if (g->status != GW_OK) say_fault(out, &g->engine.fault, shown);
    return g->status != GW_OK;
}

static bool why_no_standard(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_explained_glass *g = thing;
    bool silent = g->status != GW_OK || g->result.standard.covered;
    if (!silent) say_fault(out, &g->result.standard.why_not, shown);
    return !silent;
}

static bool why_no_principles(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_explained_glass *g = thing;
    bool silent = g->status != GW_OK || g->result.principles.covered;
    if (!silent) say_fault(out, &g->result.principles.why_not, shown);
    return !silent;
}

static bool notes(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_explained_glass *g = thing;
    (void)shown;
    for (int i = 0; i < g->result.n_notes; i++) gw_text_addf(out, "%s%s", i ? "; " : "", g->result.notes[i]);
    return g->result.n_notes > 0;
}

#define GLASS_NUM(key_, member_, dim_, help_)                                                                          \
    FIELD(gw_explained_glass, key_, result.member_, GW_T_NUMBER, .dim = dim_, .help = help_)
static const struct gw_field GLASS[] = {
    FIELD(gw_explained_glass, "load", result.load.name, GW_T_TEXT, .help = "the load that governs"),
    GLASS_NUM("pressure", load.pressure, GW_PRESSURE, "of that load"),
    GLASS_NUM("resistance", resistance, GW_PRESSURE, "of the route that governs"),
    FIELD(gw_explained_glass, "by", result.governing, GW_T_WORD, .word = glass_route_word,
          .help = "the standard's factors or first principles"),
    FIELD(gw_explained_glass, "why", result.why, GW_T_TEXT, .help = "why that route governs"),
    GLASS_NUM("utilisation", utilization, GW_RATIO, "pressure over resistance"),
    GLASS_NUM("deflection", deflection, GW_LENGTH, "of the center"),
    OUT_SAID("standard_silent", why_no_standard, "why the standard's factors do not cover it"),
    OUT_SAID("principles_silent", why_no_principles, "why first principles do not cover it"),
    OUT_SAID("notes", notes, "what to know about it"),
    OUT_SAID("stops", where_it_stops, "where the computation stops, if it does: then no figures"),
};
static const struct gw_record GLASS_RECORD =
    RECORD("glass", gw_explained_glass, GLASS, .help = "the glass under the load that governs it");

/* Rows of tables --------------------------------------------------------------------------------------------------- */

static const char *basis_word(int basis) { return gw_basis_name((enum gw_basis)basis); }
static const char *basis_for_people(int basis) { return gw_basis_words((enum gw_basis)basis); }

static const struct gw_field ROW[] = {
    F(gw_row, table, GW_T_TEXT, .help = "name of the table"),
    FIELD(gw_row, "row", id, GW_T_TEXT, .help = "id of the row"),
    F(gw_row, basis, GW_T_WORD, .word = basis_word,
      .help = "published, derived, second_hand, memory (recalled) or practice"),
    F(gw_row, source, GW_T_TEXT, .help = "where the number stands"),
    FIELD(gw_row, "basis_for_people", basis, GW_T_WORD, .word = basis_for_people, .flags = GW_TABLES_ONLY),
};
const struct gw_record gw_row_record = RECORD("row", gw_row, ROW, .help = "a row of a table of numbers");

/* The whole -------------------------------------------------------------------------------------------------------- */

#define OF THROUGH(explained, of)
#define OF_ELEMENT THROUGH2(explained, of, gw_explanation, element)
static const struct gw_field EXPLAINED[] = {
    F(explained, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    FIELD(gw_explanation, "element", element, GW_T_RECORD, OF, .record = &gw_element_record, .help = "the group"),
    FIELD(gw_element, "inward_deflection", inward_deflection, GW_T_NUMBER, .dim = GW_PRESSURE, OF_ELEMENT,
          .help = "framing: at the level of deflection checks"),
    FIELD(gw_element, "outward_deflection", outward_deflection, GW_T_NUMBER, .dim = GW_PRESSURE, OF_ELEMENT,
          .help = "the same, negative"),
    TRACE(gw_explanation, "trace", trace, "how its pressure came about", OF),
    FIELD(gw_explanation, "stops", status, GW_T_WORD, OF, .word = status_word,
          .help = "why that derivation stops, if it does"),
    F(explained, make_up, GW_T_TEXT, .help = "of the glass"),
    FIELD(gw_explanation, "glass", glass, GW_T_RECORD, OF, .record = &GLASS_RECORD,
          .help = "a lite's; null: not known"),
    TRACE(gw_explained_glass, "glass_trace", trace, "its derivation", THROUGH2(explained, of, gw_explanation, glass)),
    FIELD(gw_explanation, "links", links, GW_T_RECORD, OF, .flags = GW_MANY, .record = &LINK_RECORD,
          .help = "every check of every candidate there that is derived"),
    F(explained, rows, GW_T_RECORD, .flags = GW_MANY | GW_POINTERS, .record = &gw_row_record,
      .help = "rows of the tables that it rests on"),
};
const struct gw_record gw_explanation_record =
    RECORD("explanation", explained, EXPLAINED, .help = "what 'explain' writes of one element");
