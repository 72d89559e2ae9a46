/* Whole judgements as data: every scenario of tests/scenarios/NAME.yaml, one test each; the format is in DEVELOPERS.md.
 *
 * Files named on the command line are run alone. A project, its systems and its other files live in memory. */
#include "scenario_records.h"

#include "galeward/plan.h"
#include "galeward/review.h"

enum { MOST_SCENARIOS = 4000, MOST_TEXTS = 16, MOST_BASES = 200, OTHERS = 2 };
#define FOLDER "tests/scenarios"

static struct {
    struct gw_arena arena;
    struct CMUnitTest tests[MOST_SCENARIOS + OTHERS];
    size_t n, faults;             /* scenarios; faults of the files themselves */
    const char *used[MOST_BASES]; /* bases */
    size_t n_used;
    bool whole; /* every file is run */
} all;

static void file_fault(const struct gw_node *at, const char *name, const char *what)
{
    print_error("%s:%u: %s: %s\n", at->source->name, at->line, name ? name : "", what);
    all.faults++;
}

#include "scenario_stage.h"

/* What is compared --------------------------------------------------------------------------------------------------
 */

static bool same_or_any(const char *wanted, const char *got) { return !wanted || (got && strcmp(wanted, got) == 0); }

static bool picks_element(const struct expectation *x, const struct gw_element *e)
{
    bool asked = x->kind || x->mark || x->lite || x->zone != GW_NO_INTEGER || x->corner != GW_UNSAID ||
                 x->parapet != GW_UNSAID || gw_given(x->bottom);
    if (!asked || !e) return !asked;
    return (!x->kind || x->kind == 1 + (int)e->kind) && same_or_any(x->mark, e->mark) &&
           same_or_any(x->lite, e->lite) && (x->zone == GW_NO_INTEGER || x->zone == e->zone) &&
           (x->corner == GW_UNSAID || x->corner == (enum gw_bool)e->corner) &&
           (x->parapet == GW_UNSAID || x->parapet == (enum gw_bool)e->parapet) &&
           (!gw_given(x->bottom) || fabs(x->bottom - e->bottom) < 1e-6);
}

static bool picks(const struct expectation *x, const struct gw_finding *f)
{
    const struct gw_demand *d = f->demand;
    const char *wall = d->element ? d->element->wall : d->wall ? d->where : NULL;
    return strcmp(x->check, d->check->id) == 0 && same_or_any(x->where, d->where) && same_or_any(x->name, d->name) &&
           same_or_any(x->candidate, f->candidate->name) && same_or_any(x->wall, wall) &&
           (!x->component || x->component == (int)d->component) && picks_element(x, d->element);
}

static void compare_word(struct stage *s, const struct expectation *x, const char *about, const char *what,
                         const struct gw_choice *choices, int want, int got)
{
    if (want && want != got)
        wrong(s, x->node, about, what, gw_choice_name(choices, want), gw_choice_name(choices, got));
}

/* Relative; of zero, to 1e-9 of the SI unit. */
static void compare_number(struct stage *s, const struct expectation *x, const char *about, const char *what,
                           enum gw_dim dim, const char *want, double got)
{
    struct gw_text shown;
    double value = GW_ABSENT;
    size_t at;
    if (!want) return;
    bool none = strcmp(want, "none") == 0;
    bool read = none || gw_quantity_read(gw_units_standard(), dim, GW_UNITS_NONE, want, strlen(want), &value, &at) ==
                            GW_QUANTITY_OK;
    bool good = none ? !gw_given(got) : fabs(got - value) <= (fabs(value) > 0 ? x->tolerance * fabs(value) : 1e-9);
    if (read && good) return;
    gw_text_init(&shown, &s->arena);
    gw_text_number(&shown, gw_quantity_shown(gw_units_standard(), dim, GW_US, got), 8);
    gw_text_addf(&shown, " %s%s", gw_dim_info(dim)->shown[GW_US], read ? "" : ", another dimension");
    wrong(s, x->node, about, what, want, gw_given(got) ? shown.at : "none");
}

static void compare_says(struct stage *s, const struct expectation *x, const char *about, const struct gw_finding *f)
{
    const char *said = gw_message_text(&s->arena, &f->message, GW_US);
    const char *asked = gw_message_text(&s->arena, &f->demand->message, GW_US);
    for (size_t i = 0; i < x->says.n; i++)
        if (!strstr(said, x->says.items[i])) wrong(s, x->node, about, "says", x->says.items[i], said);
    for (size_t i = 0; i < x->says_not.n; i++)
        if (strstr(said, x->says_not.items[i])) wrong(s, x->node, about, "says_not", x->says_not.items[i], said);
    for (size_t i = 0; i < x->demand_says.n; i++)
        if (!strstr(asked, x->demand_says.items[i]))
            wrong(s, x->node, about, "demand_says", x->demand_says.items[i], asked);
    const char *remark = gw_message_text(&s->arena, &f->remark, GW_US);
    for (size_t i = 0; i < x->remark_says.n; i++)
        if (!strstr(remark, x->remark_says.items[i]))
            wrong(s, x->node, about, "remark_says", x->remark_says.items[i], remark);
}

static void compare_finding(struct stage *s, const struct expectation *x, const struct gw_finding *f)
{
    const size_t before = s->wrong;
    const char *about = gw_format(&s->arena, "%s at %s of %s", x->check, f->demand->where, f->candidate->name);
    compare_word(s, x, about, "verdict", VERDICTS, x->verdict, 1 + (int)f->verdict);
    compare_word(s, x, about, "evidence", EVIDENCE, x->evidence, 1 + (int)f->evidence);
    compare_word(s, x, about, "direction", DIRECTIONS, x->direction, 1 + (int)f->direction);
    compare_word(s, x, about, "basis", ROW_BASES, x->basis, 1 + (int)gw_used_weakest(f->used));
    compare_number(s, x, about, "utilization", GW_RATIO, x->utilization, f->utilization);
    compare_number(s, x, about, "required", f->dim, x->required, f->required);
    compare_number(s, x, about, "provided", f->dim, x->provided, f->provided);
    for (unsigned i = 0; i < x->asks.n; i++) {
        const struct gw_term *term = gw_term_of(f->demand, i);
        compare_number(s, x, about, "asks", term->dim, x->asks.items[i], term->value);
    }
    const char *link = f->link ? f->link->demand->check->id : "none";
    if (!same_or_any(x->link, link)) wrong(s, x->node, about, "link", x->link, link);
    compare_says(s, x, about, f);
    if (s->wrong > before && !x->says.n) print_error("  %s\n", gw_message_text(&s->arena, &f->message, GW_US));
}

static void compare_findings(struct stage *s, const struct expectation *x)
{
    int n = 0;
    for (size_t i = 0; i < s->judgement.findings.n; i++) {
        const struct gw_finding *f = &s->judgement.findings.items[i];
        if (!picks(x, f)) continue;
        compare_finding(s, x, f);
        n++;
    }
    const char *found = gw_format(&s->arena, "%d", n);
    if (x->count == GW_NO_INTEGER ? !n : n != x->count)
        wrong(s, x->node, x->check, "findings",
              x->count == GW_NO_INTEGER ? "some" : gw_format(&s->arena, "%d", x->count), found);
}

static void compare_summary(struct stage *s, const struct expectation *x)
{
    size_t n = 0;
    for (size_t i = 0; i < s->judgement.summaries.n; i++) {
        const struct gw_summary *sum = &s->judgement.summaries.items[i];
        if (!same_or_any(x->candidate, sum->candidate->name)) continue;
        const struct gw_demand *worst = sum->governing ? sum->governing->demand : NULL;
        const char *check = worst ? worst->check->id : "none", *where = worst ? worst->where : "none";
        n++;
        compare_word(s, x, sum->candidate->name, "candidate_verdict", VERDICTS, x->candidate_verdict,
                     1 + (int)sum->verdict);
        for (size_t k = 0; k < x->says.n; k++)
            if (!strstr(words(&sum->held), x->says.items[k]))
                wrong(s, x->node, "candidate", "says", x->says.items[k], words(&sum->held));
        if (!x->governing) continue;
        if (!same_or_any(x->governing->check, check))
            wrong(s, x->node, "governing", "check", x->governing->check, check);
        if (!same_or_any(x->governing->where, where))
            wrong(s, x->node, "governing", "where", x->governing->where, where);
    }
    if (!n) wrong(s, x->node, "", "candidate", x->candidate ? x->candidate : "some", "none");
}

static bool is_said(const struct gw_assumptions *list, const char *part)
{
    for (size_t i = 0; i < list->n; i++)
        if (strstr(words(&list->items[i].text), part) || strstr(list->items[i].where, part)) return true;
    return false;
}

static bool is_diagnosed(const struct gw_diags *diags, enum gw_severity severity, const char *code, const char *part)
{
    for (size_t i = 0; i < diags->n; i++) {
        const struct gw_diag *d = &diags->items[i];
        if (d->severity == severity && same_or_any(code, d->code) && strstr(d->message, part)) return true;
    }
    return false;
}

/* Every error is one that is expected, and the reverse. */
static void compare_errors(struct stage *s)
{
    const struct scenario *x = s->scenario;
    const size_t before = s->wrong;
    for (size_t i = 0; i < x->errors.n; i++)
        if (!is_diagnosed(&s->diags, GW_ERROR, x->errors.items[i].code, x->errors.items[i].says))
            wrong(s, x->node, "error", x->errors.items[i].code, x->errors.items[i].says, "no such error");
    if (s->diags.errors != x->errors.n)
        wrong(s, x->node, "", "errors", gw_format(&s->arena, "%zu", x->errors.n),
              gw_format(&s->arena, "%zu", s->diags.errors));
    if (s->wrong > before) print_diags(&s->diags);
}

/* What to ask, each "check: question". */
static void compare_asked(struct stage *s)
{
    const struct scenario *x = s->scenario;
    struct gw_answer answer = {.model = &s->model, .takeoff = &s->takeoff, .judgement = s->judgement};
    gw_find_missing(&answer, &s->ask);
    for (size_t i = 0; i < x->asked.n; i++) {
        bool found = false;
        for (size_t k = 0; k < answer.missing.n && !found; k++) {
            const struct gw_request *r = &answer.missing.items[k];
            const char *about = r->first ? r->first->demand->check->id : "given pressures";
            found = strstr(gw_format(&s->arena, "%s: %s", about, words(&r->question)), x->asked.items[i]);
        }
        if (!found) wrong(s, x->node, "", "asked", x->asked.items[i], "none such");
    }
}

#include "scenario_readings.h"
#include "scenario_review.h"

/* What loading and the take-off warn of, and the requirements that ask for less than the site. */
static bool is_warned(const struct stage *s, const struct gw_answer *answer, const char *part)
{
    for (size_t i = 0; i < answer->below_site.n; i++)
        if (strstr(words(&answer->below_site.items[i].said), part)) return true;
    return is_diagnosed(&s->diags, GW_WARNING, NULL, part);
}

static void compare_warnings(struct stage *s)
{
    const struct scenario *x = s->scenario;
    struct gw_answer answer = {.model = &s->model, .takeoff = &s->takeoff, .judgement = s->judgement};
    gw_find_below_site(&answer, &s->ask);
    for (size_t i = 0; i < x->warnings.n; i++)
        if (!is_warned(s, &answer, x->warnings.items[i]))
            wrong(s, x->node, "", "warnings", x->warnings.items[i], "none such");
    for (size_t i = 0; i < x->warns_not.n; i++)
        if (is_warned(s, &answer, x->warns_not.items[i]))
            wrong(s, x->node, "", "warns_not", x->warns_not.items[i], "such a one");
}

static bool is_of_readings(const struct expectation *x) { return x->reading != GW_NO_INTEGER || x->item; }

static void compare_all(struct stage *s)
{
    const struct scenario *x = s->scenario;
    for (size_t i = 0; i < x->expect.n; i++) {
        const struct expectation *e = &x->expect.items[i];
        if (e->comment) compare_comments(s, e);
        else if (e->sheet) compare_sheet(s, e);
        else if (is_of_readings(e)) (e->reading != GW_NO_INTEGER ? compare_reading : compare_share)(s, e);
        else (e->check ? compare_findings : compare_summary)(s, e);
    }
    for (size_t i = 0; i < x->assumptions.n; i++)
        if (!is_said(&s->model.assumptions, x->assumptions.items[i]) &&
            !is_said(&s->takeoff.assumptions, x->assumptions.items[i]))
            wrong(s, x->node, "", "assumptions", x->assumptions.items[i], "none such");
    compare_asked(s);
    if (s->submittal.node) compare_review(s);
}

/* Reading -----------------------------------------------------------------------------------------------------------
 */

static struct gw_load loader(struct gw_diags *diags)
{
    return (struct gw_load){.arena = diags->arena, .diags = diags, .units = gw_units_standard()};
}

static bool load_file(struct gw_arena *arena, const char *path, const struct gw_record *record, void *out)
{
    struct gw_diags diags;
    gw_diags_init(&diags, arena);
    const struct gw_source *source = gw_source_read(arena, path, &diags);
    const struct gw_node *root = source ? gw_yaml_read(arena, source, &diags) : NULL;
    struct gw_load load = loader(&diags);
    bool good = root && gw_record_load(&load, record, root, "", out);
    if (!good) print_diags(&diags);
    return good;
}

static void load_base(struct parts *out, const char *name)
{
    gw_record_clear(&base_record, out);
    if (!name) return;
    bool good = load_file(&all.arena, gw_format(&all.arena, FOLDER "/base/%s.yaml", name), &base_record, out);
    assert_true(good);
}

/* By its requirement set, where it has one. */
static bool require(struct stage *s)
{
    const char *text = s->scenario->set;
    return !text || gw_model_require_source(&s->model, gw_source_from(&s->arena, "set.yaml", text, strlen(text)));
}

static bool wants_sheet(const struct scenario *x)
{
    for (size_t i = 0; i < x->expect.n; i++)
        if (x->expect.items[i].sheet) return true;
    return false;
}

/* Its sheet of readings, where it has one; wrong rows are errors of the scenario. */
static bool read_sheet(struct stage *s)
{
    const char *text = s->scenario->readings;
    if (wants_sheet(s->scenario)) s->hung = gw_readings_system(&s->model, NULL);
    if (!text) return true;
    gw_readings_read(&s->readings, &s->model, gw_source_from(&s->arena, "readings.csv", text, strlen(text)));
    s->hung = gw_readings_system(&s->model, NULL);
    return s->hung;
}

static void run(struct stage *s)
{
    size_t n = 0;
    struct parts base;
    struct gw_plans *plans = NULL;
    load_base(&base, s->scenario->base);
    const char *text = project_text(s, &base, &s->scenario->parts);
    const char **settings = settings_of(s, &base, &s->scenario->parts, &n);
    bool good = !s->diags.errors &&
                gw_model_load_source(&s->model, &s->arena, &s->diags,
                                     gw_source_from(&s->arena, "project.yaml", text, strlen(text)), settings, n) &&
                require(s) && gw_takeoff_run(&s->takeoff, &s->model, &s->arena, &s->diags) &&
                gw_plans_read(&plans, &s->model, &s->takeoff, &s->arena) && read_sheet(s) && read_submittal(s);
    compare_errors(s);
    if (good) {
        gw_ask_init(&s->ask, &s->model, &s->takeoff, &s->arena);
        s->ask.plans = plans;
        if (s->scenario->submittal) review(s);
        else if (s->hung && s->scenario->readings) gw_inspect(&s->inspection, &s->ask, &s->readings, s->hung);
        else if (s->hung) gw_inspection_sheet(&s->sheet, &s->ask, s->hung);
        else gw_judge(&s->judgement, &s->ask);
    }
    compare_warnings(s);
    if (!good) return;
    compare_all(s);
}

static void scenario_holds(void **state)
{
    static struct stage s;
    s = (struct stage){.host = *gw_system_host(), .scenario = *state};
    s.host.user = &s;
    s.host.read = read_text;
    gw_arena_init(&s.arena, &s.host);
    gw_diags_init(&s.diags, &s.arena);
    run(&s);
    gw_arena_release(&s.arena);
    if (s.wrong) _fail(s.scenario->node->source->name, (int)s.scenario->node->line);
}

/* What the record cannot say of a scenario. */
static void check_scenario(const struct scenario *x)
{
    if (!x->source || !*x->source) file_fault(x->node, x->name, "'source' is missing, here and at the top");
    if (!x->basis) file_fault(x->node, x->name, "'basis' is missing, here and at the top");
    if (!x->expect.n && !x->warnings.n && !x->warns_not.n && !x->assumptions.n && !x->asked.n && !x->errors.n &&
        !x->review_verdict && !x->review_disposition)
        file_fault(x->node, x->name, "expects nothing");
    if (x->expect.n && x->errors.n && !x->readings)
        file_fault(x->node, x->name, "a project that is refused has no findings");
    for (size_t i = 0; i < x->expect.n; i++) {
        const struct expectation *e = &x->expect.items[i];
        bool sums = e->candidate_verdict || e->governing;
        if (is_of_readings(e) && !x->readings) file_fault(e->node, x->name, "has no readings");
        if (e->comment && !x->submittal) file_fault(e->node, x->name, "has no submittal");
        if (e->sheet && x->readings) file_fault(e->node, x->name, "has readings: it draws up no sheet");
        if (is_of_readings(e) || e->comment || e->sheet) continue;
        if (!e->check == !sums)
            file_fault(e->node, x->name, "wants either 'check', or 'candidate_verdict', 'governing'");
        if (e->check && !gw_check_find(e->check)) file_fault(e->node, e->check, "is no check");
    }
    for (size_t i = 0; i < all.n; i++) {
        const struct scenario *other = all.tests[OTHERS + i].initial_state;
        bool again = other->node->source == x->node->source && strcmp(other->name, x->name) == 0;
        if (again) file_fault(x->node, x->name, "two scenarios have this name");
    }
}

static void use_base(const char *name)
{
    for (size_t i = 0; i < all.n_used; i++)
        if (strcmp(all.used[i], name) == 0) return;
    assert_true(all.n_used < MOST_BASES);
    all.used[all.n_used++] = name;
}

static void take_file(const char *path)
{
    struct scenario_file file;
    if (!load_file(&all.arena, path, &scenario_file_record, &file)) {
        all.faults++;
        return;
    }
    for (size_t i = 0; i < file.scenarios.n && all.n < MOST_SCENARIOS; i++) {
        struct scenario *x = &file.scenarios.items[i];
        if (!x->source) x->source = file.source;
        if (!x->base) x->base = file.base;
        if (!x->basis) x->basis = file.basis;
        check_scenario(x);
        if (x->base) use_base(x->base);
        const char *name = gw_format(&all.arena, "%s:%u: %s", path, x->node->line, x->name);
        all.tests[OTHERS + all.n++] = (struct CMUnitTest){name, scenario_holds, NULL, NULL, x};
    }
}

static void files_are_well_formed(void **state)
{
    (void)state;
    assert_true(all.n > 0);
    assert_true(all.n < MOST_SCENARIOS);
    assert_int_equal(all.faults, 0);
}

static void every_base_is_used(void **state)
{
    glob_t found;
    size_t unused = 0;
    (void)state;
    reference_files(FOLDER "/base", &found);
    for (size_t i = 0; all.whole && i < found.gl_pathc; i++) {
        bool used = false;
        for (size_t k = 0; k < all.n_used; k++)
            used = used || strcmp(found.gl_pathv[i], gw_format(&all.arena, FOLDER "/base/%s.yaml", all.used[k])) == 0;
        if (!used) print_error("%s is the base of no scenario\n", found.gl_pathv[i]);
        unused += !used;
    }
    globfree(&found);
    assert_int_equal(unused, 0);
}

int main(int argc, char **argv)
{
    glob_t found = {0};
    all.tests[0] = (struct CMUnitTest)cmocka_unit_test(files_are_well_formed);
    all.tests[1] = (struct CMUnitTest)cmocka_unit_test(every_base_is_used);
    all.whole = argc < 2;
    gw_arena_init(&all.arena, gw_system_host());
    if (all.whole) reference_files(FOLDER, &found);
    for (size_t i = 0; i < found.gl_pathc; i++) take_file(found.gl_pathv[i]);
    for (int i = 1; i < argc; i++) take_file(argv[i]);
    int failed = _cmocka_run_group_tests("scenarios", all.tests, OTHERS + all.n, NULL, NULL);
    if (all.whole) globfree(&found);
    gw_arena_release(&all.arena);
    return failed;
}
