/* What a price assumes: what must be among the sentences, and how they are numbered. */
#include "support.h"

#include "galeward/plan.h"
#include "report/qualifications.h"

static void load(struct world *w, const char *path, const char *const *changes, size_t n)
{
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, changes, n));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
}

static void qualify(struct world *w, struct gw_qualifications *out)
{
    struct gw_results *results = gw_alloc(&w->arena, 1, sizeof *results);
    gw_answer_check(&w->answer, &w->ask);
    gw_results_of(results, &w->arena, &w->answer, GW_US);
    gw_qualify(out, &w->arena, results);
}

static void qualify_file(struct world *w, struct gw_qualifications *out, const char *path, const char *const *changes,
                         size_t n)
{
    load(w, path, changes, n);
    qualify(w, out);
}

static size_t count(const struct gw_qualifications *all, const char *candidate, const char *kind)
{
    size_t n = 0;
    for (size_t i = 0; i < all->items.n; i++) {
        const struct gw_qualification *q = &all->items.items[i];
        const bool of = candidate ? q->candidate && strcmp(q->candidate->name, candidate) == 0 : !q->candidate;
        n += of && (!kind || strcmp(q->kind, kind) == 0);
    }
    return n;
}

static bool says(const struct gw_qualifications *all, const char *kind, const char *part)
{
    for (size_t i = 0; i < all->items.n; i++)
        if (strcmp(all->items.items[i].kind, kind) == 0 && strstr(all->items.items[i].text, part)) return true;
    print_error("no sentence of '%s' says: %s\n", kind, part);
    return false;
}

static void numbers_go_on_from_those_of_the_bid(void **state)
{
    struct world *w = *state;
    struct gw_qualifications all;
    qualify_file(w, &all, "projects/tern-street.yaml", NULL, 0);
    const int shared = (int)count(&all, NULL, NULL);
    const struct gw_system *of = NULL;
    int next = 1;
    for (size_t i = 0; i < all.items.n; i++) {
        const struct gw_qualification *q = &all.items.items[i];
        if (q->candidate != of) next = shared + 1;
        of = q->candidate;
        assert_int_equal(q->number, next++);
        const char last = q->text[strlen(q->text) - 1];
        assert_true(last == '.' || last == '?');
        assert_ptr_equal(strstr(q->text, "The price "), q->text);
    }
}

/* Whatever does not pass has a sentence, and whoever passes has none of these. */
static void failures_and_questions_are_told(void **state)
{
    struct world *w = *state;
    struct gw_qualifications all;
    qualify_file(w, &all, "projects/gull-point.yaml", NULL, 0);
    for (size_t i = 0; i < w->answer.judgement.summaries.n; i++) {
        const struct gw_summary *s = &w->answer.judgement.summaries.items[i];
        const size_t fails = count(&all, s->candidate->name, "fails"), open = count(&all, s->candidate->name, "open");
        assert_int_equal(fails > 0, s->counts[GW_FAIL] > 0);
        assert_int_equal(open > 0, s->counts[GW_NOT_SHOWN] > 0);
    }
    assert_true(says(&all, "open", "ask the manufacturer for a test (screw: tested_pullout); 327 screws (seaward)"));
    assert_true(says(&all, "fails", "Water penetration (water): 10 psf provided, 15 psf asked (K-402); seaward."));
}

static void what_the_demo_asks_and_assumes(void **state)
{
    struct world *w = *state;
    struct gw_qualifications all;
    qualify_file(w, &all, "projects/tern-street.yaml", NULL, 0);
    assert_true(says(&all, "site", "basic wind speed 130 mph, exposure C"));
    assert_true(says(&all, "site", "pressures given by S-001."));
    assert_true(says(&all, "not asked", "blast (the project asks for none)"));
    assert_true(says(&all, "assumed",
                     "screws: 9 in on center, but of a system that says its own spacing (common practice, no source)"));
    assert_true(says(&all, "not checked", "thermal stress of glass (the glass supplier)"));
    assert_true(says(&all, "recalled", "(wind_strip: high)"));
    assert_true(says(&all, "remark", "L-0877: 50 psf, here 63.6 psf is asked; it passes by calculation"));
    assert_true(says(&all, "to confirm", "the evidence for air, water; to confirm: which joints had the specimen"));
    assert_int_equal(count(&all, NULL, "waived") + count(&all, NULL, "below the site"), 0);
}

/* What is waived is told once, as that and not as a thing that nobody requires. */
static void waived_below_the_site_corrected(void **state)
{
    static const char *const changes[] = {
        "site.impact={rule: none}", "requirements.water=3 psf",
        "assume=[{table: wind_strip, row: low, column: width_share, value: 0.12, reason: amended, by: A. Person}]"};
    struct world *w = *state;
    struct gw_qualifications all;
    qualify_file(w, &all, "projects/gull-point.yaml", changes, 3);
    assert_true(says(&all, "waived", "waived against the code: the project asks for no impact protection"));
    assert_true(says(&all, "below the site", "the project asks 3 psf, less than the site's"));
    assert_true(
        says(&all, "assumed", "The price goes by a correction to the tables: wind_strip/low width_share = 0.12"));
    assert_int_equal(count(&all, NULL, "not asked"), 0);
}

/* In 7-22 and Risk Category III tornado loads may govern: said by itself, not among the rest. */
static void what_may_govern_and_is_not_checked(void **state)
{
    static const char *const changes[] = {"codes.wind=asce7-22"};
    struct world *w = *state;
    struct gw_qualifications all;
    qualify_file(w, &all, "projects/gull-point.yaml", changes, 1);
    assert_int_equal(count(&all, NULL, "not checked"), 2);
    assert_true(says(&all, "not checked", "The price includes nothing for tornado loads: this project"));
}

/* As submitted no option is in the price; with a plan what it takes, and where. */
static void what_is_chosen(void **state)
{
    struct world *w = *state;
    struct gw_qualifications all;
    struct gw_plans *plans;
    struct gw_with withs[] = {{NULL, "steel insert"}, {"spandrel", "heat-strengthened"}};
    qualify_file(w, &all, "projects/tern-street.yaml", NULL, 0);
    assert_true(says(&all, "plan", "none of the options: steel insert, extruded insert, screwed clip, shear block"));
    assert_int_equal(count(&all, "Sandpiper U", "plan"), 0);
    const char *plan =
        put_file(w, "plan.yaml",
                 "galeward: 1\nchosen:\n"
                 "  - {candidate: Plover 60, wall: east, zone: 5, part: below roof, options: [steel insert, "
                 "shear block]}\n"
                 "  - {candidate: Plover 60, wall: east, zone: 4, part: below roof, options: [], lites: "
                 "{vision: thinner outer pane}}\n");
    load(w, "projects/tern-street.yaml", NULL, 0);
    assert_true(gw_model_take_plan(&w->model, plan));
    assert_true(gw_plans_read(&plans, &w->model, &w->takeoff, &w->arena));
    w->ask.plans = plans;
    qualify(w, &all);
    assert_true(says(&all, "plan",
                     ": steel insert in zone 5 of east; shear block in zone 5 of east; vision: thinner outer pane in "
                     "zone 4 of east; else as the files have it."));
    load(w, "projects/tern-street.yaml", NULL, 0);
    w->model.withs = withs;
    w->model.n_withs = 2;
    assert_true(gw_plans_read(&plans, &w->model, &w->takeoff, &w->arena));
    w->ask.plans = plans;
    qualify(w, &all);
    assert_true(
        says(&all, "plan", "The price is for this choice: steel insert everywhere; spandrel: heat-strengthened"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(numbers_go_on_from_those_of_the_bid), WORLD_TEST(failures_and_questions_are_told),
        WORLD_TEST(what_the_demo_asks_and_assumes),      WORLD_TEST(waived_below_the_site_corrected),
        WORLD_TEST(what_may_govern_and_is_not_checked),  WORLD_TEST(what_is_chosen),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
