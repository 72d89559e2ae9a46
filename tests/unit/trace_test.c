/* The printed formula is the computed one: an evaluator of its own works out every substituted expression of every
 * case and compares it with the recorded result. */
#include "support.h"

#include "galeward/explain.h"

static const char *reference_directory = "tests/reference";
static const char demo[] = "projects/tern-street.yaml";

/* The evaluator: that of the tree, read from what is printed ---------------------------------------------------------
 */

static bool evaluate(struct gw_arena *arena, const char *text, double *value)
{
    const struct gw_formula *formula = gw_formula_parse(arena, text, NULL, 0);
    if (formula) *value = gw_formula_value(formula, NULL);
    return formula;
}

static void evaluator_by_hand(void **state)
{
    struct gw_arena arena;
    gw_arena_init(&arena, NULL);
    (void)state;
    static const struct {
        const char *text;
        double value;
    } cases[] = {
        {"1+2*3", 7},       {"(1+2)*3", 9},    {"2^3^2", 512},    {"-2^2", -4},       {"10-4-3", 3},
        {"16/4/2", 2},      {"2*(-0.5)", -1},  {"1-(-0.9)", 1.9}, {"max(1, 2)*3", 6}, {"-max(1,min(5,4))", -4},
        {"log10(1000)", 3}, {"exp(ln(7))", 7}, {"abs(-3)^2", 9},  {"1e-05*1e5", 1},   {"sqrt(2^2+3*4)", 4},
        {"2^-1", 0.5},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        double value = NAN;
        assert_true(evaluate(&arena, cases[i].text, &value));
        assert_near(value, cases[i].value, 1e-12);
    }
    double ignored;
    assert_false(evaluate(&arena, "1+", &ignored));
    assert_false(evaluate(&arena, "q_h*2", &ignored));
    assert_false(evaluate(&arena, "1 2", &ignored));
    assert_false(evaluate(&arena, "sin(1)", &ignored));
    gw_arena_release(&arena);
}

/* The cases ----------------------------------------------------------------------------------------------------------
 */

struct tally {
    size_t cases, steps, notes, bad;
};

static void check_step(struct tally *tally, struct gw_arena *arena, const char *id, const struct gw_step *step,
                       enum gw_units shown)
{
    struct gw_text text;
    double value = 0, recorded = gw_quantity_shown(gw_units_standard(), step->dim, shown, step->value);
    gw_text_init(&text, arena);
    gw_step_substituted(&text, step, shown);
    bool read = step->tree && evaluate(arena, text.at, &value);
    tally->steps++;
    if (read && fabs(value - recorded) <= 1e-5 * fabs(recorded)) return;
    tally->bad++;
    print_error("%s: %s = %s: recorded %.9g, evaluated %.9g%s\n", id, step->symbol, text.at, recorded, value,
                read ? "" : " (not readable)");
}

static void complain(struct tally *tally, const char *id, const struct gw_step *step, const char *name, const char *why)
{
    tally->bad++;
    print_error("%s: %s = %s: %s %s\n", id, step->symbol, step->formula ? step->formula : "(found)", name, why);
}

static bool is_same(double a, double b) { return fabs(a - b) <= 1e-9 * fmax(fabs(a), fabs(b)); }

/* A number that stands in more than one place by chance: none, a few, a tenth. */
static bool is_common(double value) { return fabs(value * 100 - round(value * 100)) < 1e-9; }

/* Equal by chance, or because one of them governs: a floor that applies, panes alike, a sum of one item. */
static bool is_chance(const char *given, const char *step)
{
    static const char *const pairs[][2] = {
        {"p_least", "p_"}, {"A_1", "A"},    {"t", "t"},      {"m", ""},       {"M", ""},
        {"P", "W"},        {"d_most", "W"}, {"T", "B_"},     {"h", "b_"},     {"d", "drift"},
        {"d", "theta"},    {"Q_full", "Q"}, {"D_min", "D_"}, {"s_head", "s"}, {"sigma_surface", "sigma_edge"},
        {"M0", "M_part"},  {"Ma", "M0"},    {"D_p", "D_"},   {"D_pI", "D_"},  {"V_s", "V_cavity"},
        {"V", "D"}};
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        const size_t n = strlen(pairs[i][0]);
        if (strncmp(given, pairs[i][0], n) != 0) continue;
        const size_t number = given[n] == '_' || given[n] == ',' ? n + 1 : n;
        const bool same = strspn(given + number, "0123456789") == strlen(given + number);
        if (same && strncmp(step, pairs[i][1], strlen(pairs[i][1])) == 0) return true;
    }
    return false;
}

/* A given argument is none that a step before gives under another name. */
static void check_given(struct tally *tally, const char *id, const struct gw_trace *trace, size_t i, unsigned k)
{
    const struct gw_arg *arg = &trace->steps[i].args[k];
    for (size_t j = 0; j < i; j++) {
        const struct gw_step *s = &trace->steps[j];
        if (!gw_given(s->value) || gw_step_is_plain(&trace->steps[i])) continue;
        if (strcmp(s->symbol, arg->name) == 0)
            complain(tally, id, &trace->steps[i], arg->name, "is given, and a step gives it");
        else if (s->dim == arg->dim && is_same(s->value, arg->value) && !is_common(arg->value) &&
                 !is_chance(arg->name, s->symbol))
            complain(tally, id, &trace->steps[i], arg->name, s->symbol);
    }
}

/* A name means one thing: of the steps before, and of what is given. */
static void check_meaning(struct tally *tally, const char *id, const struct gw_trace *trace, size_t i)
{
    const struct gw_step *step = &trace->steps[i];
    const char last = step->symbol[strlen(step->symbol) - 1];
    if (strchr("+-*/^=", last)) complain(tally, id, step, step->symbol, "ends in an operator");
    for (size_t j = 0; j < i; j++) {
        const struct gw_step *s = &trace->steps[j];
        if (strcmp(s->symbol, step->symbol) == 0 && gw_given(s->value) && gw_given(step->value) &&
            !is_same(s->value, step->value))
            complain(tally, id, step, step->symbol, "has two values");
    }
    for (unsigned k = 0; k < step->n_args && !gw_step_is_plain(step); k++) {
        if (!step->from[k]) {
            check_given(tally, id, trace, i, k);
            continue;
        }
        const struct gw_step *from = &trace->steps[step->from[k] - 1];
        assert_true(step->from[k] <= i);
        if (!gw_given(from->value)) continue; /* decided */
        if (strcmp(from->symbol, step->args[k].name) != 0 || !is_same(from->value, step->args[k].value))
            complain(tally, id, step, step->args[k].name, "is not what its step gives");
    }
}

static void check_settled(struct tally *tally, struct gw_arena *arena, const char *id, const struct gw_trace *trace)
{
    tally->cases++;
    for (size_t i = 0; i < trace->n; i++) check_meaning(tally, id, trace, i);
    for (size_t i = 0; i < trace->n; i++) {
        const struct gw_step *step = &trace->steps[i];
        assert_non_null(step->symbol);
        assert_non_null(step->clause);
        assert_true(step->formula || gw_said(&step->note));
        tally->notes += !step->formula;
        if (!step->formula) continue;
        check_step(tally, arena, id, step, GW_US);
        check_step(tally, arena, id, step, GW_SI);
    }
}

static void check_trace(struct tally *tally, struct gw_arena *arena, const char *id, struct gw_trace *trace)
{
    assert_true(trace->n > 0);
    gw_trace_settle(trace, NULL, 0);
    check_settled(tally, arena, id, trace);
}

/* Takes `units` out of a case, as 'calc' does; the caller's node is left alone. */
static struct gw_node *take_units(struct gw_load *load, const struct gw_node *in)
{
    struct gw_node *out = gw_alloc(load->arena, 1, sizeof *out), **end = &out->first;
    *out = *in;
    for (const struct gw_node *child = in->first; child; child = child->next) {
        if (strcmp(child->key, "units") == 0) {
            load->preset = strcmp(child->text, "us") == 0 ? GW_US : GW_SI;
            continue;
        }
        struct gw_node *copy = *end = gw_alloc(load->arena, 1, sizeof *copy);
        *copy = *child;
        end = &copy->next;
    }
    *end = NULL;
    return out;
}

static void check_case(struct tally *tally, struct gw_arena *arena, const struct gw_node *node)
{
    struct gw_diags diags;
    struct gw_trace trace;
    struct gw_engine engine;
    gw_diags_init(&diags, arena);
    struct gw_load load = {.arena = arena, .diags = &diags, .units = gw_units_standard()};
    const struct gw_calc_kind *kind = gw_calc_find(text_at(node, "kind"));
    if (!kind || gw_node_get(node, "error")) return;
    void *in = gw_alloc(arena, 1, kind->input->size), *out = gw_alloc(arena, 1, kind->output->size);
    gw_record_clear(kind->output, out);
    assert_true(gw_record_load(&load, kind->input, take_units(&load, gw_node_get(node, "in")), "", in));
    gw_trace_init(&trace, arena);
    gw_engine_init(&engine, gw_tables_standard(), &trace);
    engine.workspace = kind->workspace ? gw_alloc(arena, kind->workspace, 1) : NULL;
    assert_int_equal(kind->run(out, in, &engine), GW_OK);
    check_trace(tally, arena, text_at(node, "id"), &trace);
}

static void every_step_of_every_case(void **state)
{
    struct world *w = *state;
    struct tally tally = {0};
    glob_t found;
    reference_files(reference_directory, &found);
    for (size_t i = 0; i < found.gl_pathc; i++) {
        const struct gw_node *cases = gw_node_get(read_file(&w->arena, found.gl_pathv[i]), "cases");
        for (const struct gw_node *c = cases ? cases->first : NULL; c; c = c->next) check_case(&tally, &w->arena, c);
    }
    globfree(&found);
    print_message("%zu cases, %zu steps evaluated, %zu decisions\n", tally.cases, tally.steps, tally.notes);
    assert_int_equal(tally.bad, 0);
    assert_true(tally.steps > 1000);
}

/* The conversions between levels and the wind tunnel's floor have steps of their own. */
static void steps_of_the_levels(void **state)
{
    struct world *w = *state;
    struct gw_trace trace;
    struct gw_engine engine;
    struct tally tally = {0};
    gw_trace_init(&trace, &w->arena);
    gw_engine_init(&engine, gw_tables_standard(), &trace);
    gw_to_strength(gw_to_asd((struct gw_strength){1234}, &engine), &engine);
    gw_wind_tunnel((struct gw_strength){-700}, (struct gw_strength){-1000}, &engine);
    gw_wind_tunnel((struct gw_strength){700}, (struct gw_strength){1000}, &engine);
    gw_wind_deflection_pa((struct gw_strength){1000}, GW_IBC_2021, true, &engine);
    gw_wind_deflection_pa((struct gw_strength){-1000}, GW_IBC_2021, false, &engine);
    check_trace(&tally, &w->arena, "levels", &trace);
    assert_int_equal(tally.bad, 0);
    assert_int_equal(tally.steps, 12);
}

/* What explain prints of the glass of a lite, under either load. */
static void check_glass(struct tally *tally, struct world *w, const struct gw_element *e)
{
    struct gw_glass_judged judged;
    struct gw_engine engine;
    const struct gw_lite_type *type = gw_model_lite(&w->model, e->lite);
    assert_non_null(type);
    gw_engine_init(&engine, w->model.tables, NULL);
    engine.workspace = gw_alloc_bare(&w->arena, GW_PLATE_WORKSPACE);
    assert_int_equal(gw_judge_glass(&judged, &w->model, e, type, &engine), GW_OK);
    for (int i = 0; i < judged.demand.n; i++) {
        struct gw_trace trace;
        struct gw_lite_result result;
        gw_trace_init(&trace, &w->arena);
        engine.trace = &trace;
        assert_int_equal(gw_lite_assess(&result, &judged.lite, &judged.demand.loads[i], &engine), GW_OK);
        check_trace(tally, &w->arena, e->id, &trace);
    }
}

static void steps_of_the_glass_of_every_lite(void **state)
{
    struct world *w = *state;
    struct tally tally = {0};
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, demo, NULL, 0));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    for (size_t i = 0; i < w->takeoff.elements.n; i++)
        if (w->takeoff.elements.items[i].kind == GW_LITE) check_glass(&tally, w, &w->takeoff.elements.items[i]);
    print_message("%zu lites and loads, %zu steps evaluated\n", tally.cases, tally.steps);
    assert_int_equal(tally.bad, 0);
    assert_true(tally.cases > 50 && tally.steps > 1000);
}

/* Nothing that leads to a result rests on a step that is left out. */
static void check_whole(const struct gw_trace *trace)
{
    for (size_t i = 0; i < trace->n; i++)
        for (unsigned k = 0; trace->steps[i].leads == GW_YES && k < trace->steps[i].n_args; k++)
            if (trace->steps[i].from[k]) assert_int_equal(trace->steps[trace->steps[i].from[k] - 1].leads, GW_YES);
}

static void check_explained(struct tally *tally, struct world *w, struct gw_ask *ask,
                            const struct gw_judgement *judgement, const struct gw_element *e)
{
    struct gw_explanation x;
    gw_explain(&x, ask, judgement, e);
    check_settled(tally, &w->arena, e->id, &x.trace);
    check_whole(&x.trace);
    if (x.glass) check_settled(tally, &w->arena, e->id, &x.glass->trace);
    if (x.glass) check_whole(&x.glass->trace);
    for (size_t i = 0; i < x.links.n; i++) {
        check_settled(tally, &w->arena, e->id, &x.links.items[i].trace);
        check_settled(tally, &w->arena, e->id, &x.links.items[i].calculation);
        check_whole(&x.links.items[i].trace);
    }
}

/* The last element of each kind, which stands above the roof line where a wall does, and the first. */
static void steps_of_what_is_explained(void **state)
{
    struct world *w = *state;
    struct tally tally = {0};
    struct gw_ask ask;
    struct gw_judgement judgement;
    bool seen[GW_KIND_COUNT] = {false};
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, demo, NULL, 0));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&ask, &w->model, &w->takeoff, &w->arena);
    gw_judge(&judgement, &ask);
    const struct gw_takeoff *t = &w->takeoff;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        const bool last = i + 1 == t->elements.n || t->elements.items[i + 1].wall != e->wall;
        if (!seen[e->kind] || last || e->corner) check_explained(&tally, w, &ask, &judgement, e);
        seen[e->kind] = true;
    }
    print_message("%zu derivations, %zu steps evaluated\n", tally.cases, tally.steps);
    assert_int_equal(tally.bad, 0);
    assert_true(tally.steps > 1000);
}

static const struct gw_step *step_of(const struct gw_trace *trace, const char *symbol)
{
    for (size_t i = 0; i < trace->n; i++)
        if (strcmp(trace->steps[i].symbol, symbol) == 0) return &trace->steps[i];
    fail_msg("no step gives %s", symbol);
    return NULL;
}

static void record_level(struct gw_engine *engine, const char *place, double z)
{
    gw_trace_at(engine, place);
    GW_STEP(engine, "k", GW_RATIO, 3, "", "c+1", {"c", 2, GW_RATIO});
    GW_STEP(engine, "q", GW_RATIO, 3 * z, "", "k*z", {"k", 3, GW_RATIO}, {"z", z, GW_RATIO});
    gw_trace_at(engine, NULL);
}

/* Two levels share a factor; the result stands in a group that is read before; one step feeds nothing. */
static void what_is_settled(void **state)
{
    struct world *w = *state;
    struct gw_trace trace;
    struct gw_engine engine;
    gw_trace_init(&trace, &w->arena);
    gw_engine_init(&engine, gw_tables_standard(), &trace);
    gw_trace_group(&engine, "levels");
    gw_trace_group(&engine, "results");
    GW_STEP(&engine, "p", GW_RATIO, 50, "", "q_1-q_2+c*g", {"q_1=q_top", 60, GW_RATIO}, {"q_2|q", 12, GW_RATIO},
            {"c", 1, GW_RATIO}, {"g", 2, GW_RATIO});
    gw_trace_group(&engine, "levels");
    record_level(&engine, "h", 7);
    record_level(&engine, "z", 4);
    GW_STEP(&engine, "q_top", GW_RATIO, 60, "", "5*q", {"q", 12, GW_RATIO});
    GW_FOUND(&engine, "spare", GW_RATIO, 9, "", "seen", {"k", 3, GW_RATIO});
    gw_trace_note(&engine, "choice", "", "said once");
    gw_trace_note(&engine, "choice", "", "said once");
    gw_trace_settle(&trace, (const double[]){-50}, 1);
    assert_int_equal(trace.n, 7); /* k and the choice once */
    assert_string_equal(trace.steps[trace.n - 1].symbol, "p");
    assert_string_equal(step_of(&trace, "p")->formula, "q_top-q+c_2*g");
    assert_string_equal(step_of(&trace, "q")->formula, "k*z");
    assert_string_equal(step_of(&trace, "k")->formula, "c_1+1");
    assert_int_equal(step_of(&trace, "k")->leads, GW_YES);
    assert_int_equal(step_of(&trace, "q_h")->leads, GW_NO);
    assert_int_equal(step_of(&trace, "spare")->leads, GW_NO);
    assert_int_equal(step_of(&trace, "choice")->leads, GW_YES);
}

/* What no calc kind reaches: importance, floors, slots. */
static void steps_of_importance_and_movement(void **state)
{
    struct world *w = *state;
    struct gw_trace trace;
    struct gw_engine engine;
    struct tally tally = {0};
    double value;
    gw_trace_init(&trace, &w->arena);
    gw_engine_init(&engine, gw_tables_standard(), &trace);
    assert_int_equal(gw_component_importance(&value, GW_RISK_IV, GW_NO, &engine), GW_OK);
    assert_int_equal(gw_structure_importance(&value, GW_RISK_III, &engine), GW_OK);
    assert_int_equal(gw_floor_movement(&value, 9.1, GW_ABSENT, &engine), GW_OK);
    assert_int_equal(gw_anchor_slot(&value, 0.0127, 0.019, 0.006, &engine), GW_OK);
    check_trace(&tally, &w->arena, "importance and movement", &trace);
    assert_int_equal(tally.bad, 0);
    assert_int_equal(tally.steps, 8);
}

int main(int argc, char **argv)
{
    if (argc > 1) reference_directory = argv[1];
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(evaluator_by_hand),
        WORLD_TEST(every_step_of_every_case),
        WORLD_TEST(steps_of_the_levels),
        WORLD_TEST(steps_of_the_glass_of_every_lite),
        WORLD_TEST(steps_of_what_is_explained),
        WORLD_TEST(what_is_settled),
        WORLD_TEST(steps_of_importance_and_movement),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
