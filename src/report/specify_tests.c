/* Tests of a specification: what each measures, how long, what is admitted; the mock-up, the site, the anchors. */
#include "base/fields.h"
#include "report/demand.h"
#include "report/specify.h"
#include "report/view.h"

#include "tables_data.h"

#include <string.h>

#define SAY(...) gw_spec_paragraph(p, gw_format(p->page.arena, __VA_ARGS__))

static const struct gw_tables *tables_of(const struct specified_page *p)
{
    return p->page.results->answer->model->tables;
}

static const char *say(struct specified_page *p, const struct gw_message *message)
{
    return gw_message_text(p->page.arena, message, p->page.shown);
}

static const char *seconds(struct specified_page *p, double s)
{
    struct gw_text text;
    const bool long_one = s >= 60;
    gw_text_init(&text, p->page.arena);
    gw_text_number(&text, long_one ? s / 60 : s, 4);
    gw_text_add(&text, long_one ? " min" : " s");
    return text.at;
}

static const char *number(struct specified_page *p, double value)
{
    struct gw_text text;
    gw_text_init(&text, p->page.arena);
    gw_text_number(&text, value, 4);
    return text.at;
}

static bool asked(const struct specified_page *p, const char *check)
{
    for (size_t i = 0; i < p->spec->set.requires.n; i++)
        if (strcmp(p->spec->set.requires.items[i].check, check) == 0) return true;
    return false;
}

static const struct gw_required *row_of(const struct specified_page *p, const char *check)
{
    for (size_t i = 0; i < p->spec->set.requires.n; i++)
        if (strcmp(p->spec->set.requires.items[i].check, check) == 0) return &p->spec->set.requires.items[i];
    return NULL;
}

/* Of a check the messages of its demands, each once; of elements the part that places share. */
static void say_demands(struct specified_page *p, const char *check)
{
    const struct gw_judgement *j = &p->spec->answer->judgement;
    const char **said = gw_alloc(p->page.arena, j->demands.n + 1, sizeof(const char *));
    size_t n = 0;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        const struct gw_message *m = gw_said(&d->summary) ? &d->summary : &d->message;
        if (strcmp(d->check->id, check) != 0 || d->state != GW_ASKED || !gw_said(m)) continue;
        const char *text = say(p, m);
        size_t k = 0;
        while (k < n && strcmp(said[k], text) != 0) k++;
        if (k < n) continue;
        said[n++] = text;
        SAY("%s: %s.", d->check->title, text);
    }
}

/* Of a check the demand that asks most. */
static void say_greatest(struct specified_page *p, const char *check)
{
    const struct gw_judgement *j = &p->spec->answer->judgement;
    const struct gw_demand *most = NULL;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (strcmp(d->check->id, check) != 0 || d->state != GW_ASKED || !gw_said(&d->message)) continue;
        if (!most || gw_term_of(d, 0)->value > gw_term_of(most, 0)->value) most = d;
    }
    if (!most) return;
    const struct gw_message *m = gw_said(&most->summary) ? &most->summary : &most->message;
    SAY("%s, where most is asked: %s.", most->check->title, say(p, m));
}

/* Structural ------------------------------------------------------------------------------------------------------ */

static bool all_known(const struct specified_page *p)
{
    for (size_t i = 0; i < p->spec->pressures.n; i++)
        if (!p->spec->pressures.items[i].framing && !gw_given(p->spec->pressures.items[i].inward_asd)) return false;
    return true;
}

struct proof_row {
    const char *wall, *part;
    double inward, outward, set;
};
static const struct gw_field PROOF_ROW[] = {
    F(proof_row, wall, GW_T_TEXT),        F(proof_row, part, GW_T_TEXT),     NUM(proof_row, inward, GW_PRESSURE),
    NUM(proof_row, outward, GW_PRESSURE), NUM(proof_row, set, GW_THICKNESS),
};
static const struct gw_record PROOF_RECORD = RECORD("proof", proof_row, PROOF_ROW, .help = "proof load of a part");
static const struct view_column PROOF_COLUMNS[] = {
    COLUMN("Wall", "wall"), COLUMN("Part", "part"), COLUMN("Proof inward", "inward", .rounding = UP),
    COLUMN("Proof outward", "outward", .rounding = UP), COLUMN("Permanent set at most", "set", .rounding = DOWN)};
static const struct view PROOFS = VIEW(&PROOF_RECORD, PROOF_COLUMNS);

static void proof_table(struct specified_page *p)
{
    const struct gw_specification *spec = p->spec;
    const double times = tables_of(p)->proof_loads[GW_ROW_PROOF_LOADS_E330].proof;
    const enum gw_units shown = p->page.shown;
    struct proof_row *rows = gw_alloc(p->page.arena, spec->proofs.n + 1, sizeof *rows);
    for (size_t i = 0; i < spec->proofs.n; i++) {
        const struct gw_specified_proof *q = &spec->proofs.items[i];
        rows[i] = (struct proof_row){.wall = q->first->wall,
                                     .part = gw_spec_part(q->framing, q->first->parapet),
                                     .inward = gw_times_printed(GW_PRESSURE, shown, times, q->inward / times),
                                     .outward = gw_times_printed(GW_PRESSURE, shown, times, q->outward / times),
                                     .set = q->set_limit};
    }
    gw_view_list(&p->page, "", &PROOFS, rows, spec->proofs.n);
}

/* Its pressure is of both faces at once, which no chamber puts on it through lites that are not made for it. */
static void framing_above(struct specified_page *p)
{
    for (size_t i = 0; i < p->spec->proofs.n; i++) {
        if (!p->spec->proofs.items[i].framing || !p->spec->proofs.items[i].first->parapet) continue;
        SAY("Framing above the roof line takes the pressures of both faces at once, its lites those of their own: it "
            "is "
            "shown by calculation, or by a test that loads the framing without its lites.");
        return;
    }
}

static void structural(struct specified_page *p)
{
    const struct gw_proof_loads *loads = &tables_of(p)->proof_loads[GW_ROW_PROOF_LOADS_E330];
    const struct gw_proof_class *class = &tables_of(p)->proof_class[GW_ROW_PROOF_CLASS_CURTAIN_WALL];
    gw_spec_article(p, "Structural performance");
    SAY("Test by %s, both ways, at the pressures of 2.1. Preload with %s %% of the inward pressure, hold it %s, "
        "release, set the gauges to zero. Then the full pressure inward and outward, each held %s, with the "
        "deflections "
        "read.",
        loads->clause, number(p, 100 * loads->preload), seconds(p, loads->hold_s), seconds(p, loads->hold_s));
    SAY("Proof: %s times the pressures, inward and outward, each held %s. No glass breaks, nothing comes loose, and "
        "the "
        "permanent set of framing is at most 1/%s of its clear span.",
        number(p, loads->proof), seconds(p, loads->hold_s), number(p, 1 / class->set));
    if (gw_said(&p->spec->proof_fault)) SAY("Not shown: %s.", say(p, &p->spec->proof_fault));
    else {
        SAY("Proof of each wall and part%s, and the permanent set on its longest span; a mock-up below the roof line "
            "takes "
            "the greatest of the lites there:",
            all_known(p) ? "" : " whose pressure is known");
        proof_table(p);
        framing_above(p);
    }
    SAY("The specimen has the spans, widths, reinforcement, fastening, anchors and glass of the wall, no smaller; a "
        "joint, "
        "a corner or a part above the roof line is shown only by a specimen that had one.");
}

static void deflection(struct specified_page *p)
{
    const struct gw_model *model = p->page.results->answer->model;
    const struct gw_glass_rules *glass = model->project.glass;
    const struct gw_message rule = gw_framing_rule(model, p->page.arena);
    const struct gw_rail_limits *dead = &tables_of(p)->rail_limits[0];
    gw_spec_article(p, "Deflection");
    SAY("Under the pressures of article 2, normal to the wall: %s. L is the clear span of the member, of a cantilever "
        "%s "
        "times its length.",
        say(p, &rule), number(p, tables_of(p)->framing_cantilever[0].lengths));
    if (glass && gw_given(glass->deflection_limit))
        SAY("Glass bends at its center at most %s.", gw_spec_quantity(p, GW_THICKNESS, glass->deflection_limit, DOWN));
    if (glass && gw_given(glass->deflection_ratio))
        SAY("Glass bends at its center at most 1/%s of its short side.", number(p, glass->deflection_ratio));
    if (model->project.framing && gw_given(model->project.framing->dead_load_limit))
        SAY("Horizontals sag under the weight of glass by at most %s.",
            gw_spec_quantity(p, GW_THICKNESS, model->project.framing->dead_load_limit, DOWN));
    else
        SAY("Horizontals sag under the weight of glass by at most their span over %s and %s (%s).",
            number(p, dead->spans), gw_spec_quantity(p, GW_THICKNESS, dead->most_m, DOWN), dead->row.source);
}

/* Air and water --------------------------------------------------------------------------------------------------- */

static void air(struct specified_page *p)
{
    gw_spec_article(p, "Air leakage");
    for (size_t i = 0; i < p->spec->set.requires.n; i++) {
        const struct gw_required *row = &p->spec->set.requires.items[i];
        if (strcmp(row->check, "air") != 0) continue;
        SAY("%s, %s%s%s: at most %s at a pressure difference of %s, by %s. A leakage means nothing without its "
            "pressure.",
            row->id, row->wall ? "wall " : "every wall", row->wall ? row->wall : "",
            row->component ? gw_format(p->page.arena, ", %s", gw_choice_name(gw_component_choices, (int)row->component))
                           : "",
            gw_spec_quantity(p, GW_LEAKAGE, row->leakage, NEAREST), gw_spec_quantity(p, GW_PRESSURE, row->at, NEAREST),
            row->test);
    }
    SAY("The area counted is the outside of the specimen with its framing. The test is repeated after the structural "
        "load.");
}

static void water(struct specified_page *p)
{
    const struct gw_water_spray *spray = &tables_of(p)->water_spray[GW_ROW_WATER_SPRAY_SPRAY];
    const struct gw_requirements *r = p->page.results->answer->model->project.requirements;
    gw_spec_article(p, "Water penetration");
    for (size_t i = 0; i < p->spec->set.requires.n; i++) {
        const struct gw_required *row = &p->spec->set.requires.items[i];
        if (strcmp(row->check, "water") != 0) continue;
        SAY("%s, %s%s%s: no water past the inner face at %s, steady, for %s under spray, by %s.", row->id,
            row->wall ? "wall " : "every wall", row->wall ? row->wall : "",
            row->component ? gw_format(p->page.arena, ", %s", gw_choice_name(gw_component_choices, (int)row->component))
                           : "",
            gw_spec_quantity(p, GW_PRESSURE, row->pressure, UP), seconds(p, spray->steady_s),
            gw_check_find("water")->clause);
    }
    if (r && r->water && r->water->dynamic == GW_YES)
        SAY("The same pressure in an air stream, by %s, as long.",
            tables_of(p)->mockup_sequence[GW_ROW_MOCKUP_SEQUENCE_DYNAMIC].method);
    SAY("The test is repeated after the structural load: a wall that was tight before it is not shown to be tight "
        "after "
        "it.");
}

/* Earthquakes, hazards, movement, named ratings -------------------------------------------------------------------- */

static double racked(const struct specified_page *p, enum gw_sequence_test test)
{
    const struct gw_sequence *steps = &p->page.results->answer->mock_up;
    for (size_t i = 0; i < steps->n; i++)
        if (steps->steps[i].test == test) return steps->steps[i].displacement;
    return GW_ABSENT;
}

/* One drift has a figure for each use: they are said together once. */
static void say_drifts(struct specified_page *p, const struct gw_required *row)
{
    const double drift = racked(p, GW_STEP_SWAY), safety = racked(p, GW_STEP_SAFETY);
    if (!(drift > 0)) return;
    SAY("One drift in three figures: the story drift alone, %s, by which the mock-up of article 13 is racked%s; with "
        "the "
        "importance factor %s, which is %s; what a test to fallout must reach is more than that, and stands with it.",
        gw_spec_quantity(p, GW_THICKNESS, drift, UP),
        safety > 0 ? gw_format(p->page.arena, ", and for safety by %s times that, %s", number(p, safety / drift),
                               gw_spec_quantity(p, GW_THICKNESS, safety, UP))
                   : "",
        gw_spec_quantity(p, GW_THICKNESS, row->drift, UP), row->id);
}

static void drift(struct specified_page *p)
{
    const struct gw_required *row = row_of(p, "seismic_glass");
    gw_spec_article(p, "Drift and racking");
    if (!row) {
        SAY("No drift is asked for by the project's seismic data.");
        return;
    }
    SAY("%s: glass neither falls out nor touches its frame at a story drift of %s, with the importance factor, the "
        "greatest of any story; a lower story its share of it.",
        row->id, gw_spec_quantity(p, GW_THICKNESS, row->drift, UP));
    SAY("Show it by the clearances of the glass in its pocket, or by racking a specimen to fallout; a static test (%s) "
        "shows the story drift, not the drift of fallout.",
        row->test);
    say_drifts(p, row);
    say_greatest(p, "seismic_force");
}

static void hazards(struct specified_page *p)
{
    gw_spec_article(p, "Wind-borne debris");
    if (asked(p, "debris")) say_demands(p, "debris");
    else SAY("Not asked for.");
    if (asked(p, "debris"))
        SAY("The rating%s states missile, wind zone, both cycled pressures, size, bite and make-up of one specimen.",
            gw_spec_rows_of(p, "debris"));
    gw_spec_article(p, "Blast");
    if (asked(p, "blast")) say_demands(p, "blast");
    else SAY("Not asked for.");
}

static void others(struct specified_page *p)
{
    gw_spec_article(p, "Movement and other ratings");
    say_demands(p, "movement");
    for (size_t i = 0; i < p->spec->set.requires.n; i++) {
        const struct gw_required *row = &p->spec->set.requires.items[i];
        if (!row->name) continue;
        SAY("%s: %s %s %s, as the project asks.", row->id, row->name, gw_given(row->at_most) ? "at most" : "at least",
            number(p, gw_given(row->at_most) ? row->at_most : row->at_least));
    }
}

/* Anchors, the site, the mock-up ---------------------------------------------------------------------------------- */

static void anchors(struct specified_page *p)
{
    gw_spec_article(p, "Anchors and framing");
    SAY("Anchors carry these reactions to the structure, wind at both levels; the structural engineer takes them at "
        "strength level. Dead load besides, by the wall that hangs on each.");
    gw_page_reactions(&p->page);
    gw_page_members(&p->page);
}

static void field_tests(struct specified_page *p)
{
    const struct gw_field_test *row = &tables_of(p)->field_test[GW_ROW_FIELD_TEST_CURTAIN_WALL];
    gw_spec_article(p, "Tests of the installed wall");
    if (gw_given(p->spec->field_water))
        SAY("Water, by %s: %s, which is %s of the laboratory's. A pass there is no evidence of the full pressure.",
            row->clause, gw_spec_quantity(p, GW_PRESSURE, p->spec->field_water, UP), number(p, row->share));
    if (gw_given(p->spec->field_leakage))
        SAY("Air, by %s: at most %s, which is %s times the laboratory's limit, at the same pressure. No sheet of "
            "inspection lists it and no reading shows it: its report is filed by itself.",
            row->clause, gw_spec_quantity(p, GW_LEAKAGE, p->spec->field_leakage, NEAREST), number(p, row->air_factor));
    SAY("Test early, on the first finished stretch, while work can still be changed, and say who witnesses it.");
}

static bool by_test_alone(const struct specified_page *p)
{
    const struct gw_requirements *r = p->page.results->answer->model->project.requirements;
    bool test = false, calculation = false;
    for (size_t i = 0; r && r->structural && i < r->structural->evidence.n; i++) {
        test = test || r->structural->evidence.items[i] == GW_ASKS_TEST;
        calculation = calculation || r->structural->evidence.items[i] == GW_ASKS_CALCULATION;
    }
    return test && !calculation;
}

/* One chamber puts one pressure on all: what is asked more of than lites is not shown by theirs. */
static void beyond_mock_up(struct specified_page *p)
{
    const struct gw_sequence *steps = &p->page.results->answer->mock_up;
    double in = GW_ABSENT, out = GW_ABSENT;
    for (size_t i = 0; i < steps->n; i++) {
        if (steps->steps[i].test == GW_STEP_DESIGN_IN) in = fabs(steps->steps[i].pressure);
        if (steps->steps[i].test == GW_STEP_DESIGN_OUT) out = fabs(steps->steps[i].pressure);
    }
    const char *more = gw_spec_more_than(p, in, out);
    if (!*more) return;
    SAY("The design steps take the lites' pressures; by 2.3 these take more: %s. %s", more,
        by_test_alone(p) ? "The steps and their proofs are raised to it."
                         : "They are shown at that by calculation, or the steps and their proofs are raised to it.");
}

static void mock_up(struct specified_page *p)
{
    gw_spec_article(p, "Laboratory mock-up");
    SAY("Order of the tests, on one specimen:");
    gw_page_mock_up_table(&p->page);
    beyond_mock_up(p);
    if (!p->page.results->answer->apart.n) return;
    SAY("Tests of specimens of their own:");
    gw_page_apart_table(&p->page);
}

void gw_spec_tests(struct specified_page *p)
{
    structural(p);
    deflection(p);
    air(p);
    water(p);
    drift(p);
    hazards(p);
    others(p);
    anchors(p);
    field_tests(p);
    mock_up(p);
}
