/* What 'select' finds is judged alike when it comes back as a file; a search that is stopped keeps what it has. */
#include "support.h"

#include "galeward/plan.h"
#include "galeward/report.h"
#include "galeward/select.h"

enum { LONG_ENOUGH = 100000 };

static void load_project(struct world *w, const char *path)
{
    world_open(w);
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
}

static const char PROJECT[] = "tests/golden/choose/wren-yard.yaml";

/* Its plans, written as the program writes them, into a file of the world. */
static void write_plan(struct world *w, const struct gw_bids *bids)
{
    struct gw_results results;
    struct gw_text text;
    gw_answer_bids(&w->answer, &w->ask, bids);
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    const struct gw_result result = gw_result_select(&w->arena, &results, bids);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named("yaml")->render(&text, &result, NULL, false), GW_OK);
    put_file(w, "plan.yaml", text.at);
}

static const struct gw_bid *bid_of(const struct gw_bids *bids, const char *name)
{
    for (size_t i = 0; i < bids->items.n; i++)
        if (strcmp(bids->items.items[i].candidate->name, name) == 0) return &bids->items.items[i];
    fail();
    return NULL;
}

static void assert_same(const struct gw_finding *a, const struct gw_finding *b)
{
    assert_int_equal(a->verdict, b->verdict);
    assert_int_equal(a->evidence, b->evidence);
    assert_string_equal(a->demand->where, b->demand->where);
    assert_true(memcmp(&a->utilization, &b->utilization, sizeof(double)) == 0);
    assert_true(memcmp(&a->provided, &b->provided, sizeof(double)) == 0);
}

static void a_plan_comes_back_as_it_was_judged(void **state)
{
    struct world w;
    struct gw_bids bids;
    struct gw_plans *plans;
    struct gw_answer again;
    (void)state;
    load_project(&w, PROJECT);
    gw_select(&bids, &w.ask, &(const struct gw_select_limits){.most = 0});
    write_plan(&w, &bids);
    assert_true(gw_model_take_plan(&w.model, gw_format(&w.arena, "%s/plan.yaml", w.directory)));
    assert_true(gw_plans_read(&plans, &w.model, &w.takeoff, &w.arena));
    w.ask.plans = plans;
    gw_answer_check(&again, &w.ask);
    const size_t n = again.judgement.demands.n;
    for (size_t c = 0; c < again.judgement.summaries.n; c++) {
        const struct gw_summary *s = &again.judgement.summaries.items[c];
        const struct gw_bid *bid = bid_of(&bids, s->candidate->name);
        assert_int_equal(s->verdict, bid->verdict);
        assert_string_equal(s->governing->demand->check->id, bid->summary.governing->demand->check->id);
        assert_same(s->governing, bid->summary.governing);
        for (size_t i = 0; i < n; i++) assert_same(&again.judgement.findings.items[c * n + i], &bid->findings[i]);
    }
    assert_int_equal(bid_of(&bids, "Siskin 60")->verdict, GW_PASS);
    world_close(&w);
}

static long left;

static bool stop_after(void *user)
{
    (void)user;
    return left-- <= 0;
}

/* Wherever it is stopped: what it gives has been judged, and its bound is none too high. */
static void a_stopped_search_gives_what_it_has(void **state)
{
    struct world w;
    struct gw_bids whole, part;
    long with_plan = 0, without = 0;
    (void)state;
    load_project(&w, PROJECT);
    gw_select(&whole, &w.ask, &(const struct gw_select_limits){.most = 0});
    const struct gw_bid *best = bid_of(&whole, "Siskin 60");
    for (long after = 0; after < LONG_ENOUGH; after++) {
        left = after;
        gw_select(&part, &w.ask, &(const struct gw_select_limits){.stop = stop_after});
        const struct gw_bid *got = bid_of(&part, "Siskin 60");
        if (got->complete) {
            assert_true(fabs(got->cost - best->cost) < 1e-6);
            break;
        }
        assert_true(got->bound <= best->cost + 1e-6);
        with_plan += gw_given(got->cost);
        without += !gw_given(got->cost);
        if (!gw_given(got->cost)) continue;
        assert_int_equal(got->verdict, GW_PASS);
        assert_int_equal(got->summary.verdict, GW_PASS);
        assert_true(got->cost >= best->cost - 1e-6);
    }
    assert_true(with_plan > 0 && without > 0);
    world_close(&w);
}

/* Of the corner's own, the least that does. */
static void the_corner_is_priced_at_its_place(void **state)
{
    struct world w;
    struct gw_bids bids;
    (void)state;
    load_project(&w, PROJECT);
    gw_select(&bids, &w.ask, &(const struct gw_select_limits){.recompute = true});
    const struct gw_bid *bid = bid_of(&bids, "Siskin 60");
    double sum = bid->once;
    for (size_t p = 0; p < bid->places.n; p++) {
        const struct gw_selected *s = &bid->places.items[p];
        double place = s->wall_cost;
        for (size_t i = 0; i < s->options.n; i++) place += s->options.items[i].cost;
        for (size_t i = 0; i < s->lites.n; i++) place += s->lites.items[i].cost;
        assert_true(fabs(place - s->cost) < 1e-5);
        assert_int_equal(s->options.n, s->place->zone == 5 ? 1 : 0);
        sum += s->cost;
    }
    assert_true(fabs(sum - bid->cost) < 1e-5);
    assert_true(fabs(bid->everywhere_cost - bid->saving - bid->cost) < 1e-5 && bid->saving > 0);
    assert_int_equal(bid->mismatches, 0);
    world_close(&w);
}

/* A mullion too weak, and two options that stiffen it. */
static const char WEAK_PROJECT[] =
    "galeward: 1\nproject: {name: P}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
    "walls: [{name: s, building: low, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [none, none], columns: {count: 4, "
    "width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates: [x.yaml, y.yaml]\n";
static const char WEAK_SYSTEM[] =
    "galeward: 1\nsystem: {name: %s, kind: stick, glazing: captured}\n"
    "mullion: {alloy: 6063-T6, tube: {width: 2 in, depth: 2 in, flange: 0.1 in, web: 0.1 in}}\n"
    "frame_weight: 2 psf\noptions:\n"
    "  - {name: insert, change: {mullion: {insert: {metal: steel, inertia_x: 4 in4, section_modulus_x: 2 in3, yield: "
    "36 "
    "ksi}}}, group: g}\n"
    "%s";

/* Without costs the least mass is chosen: 180 ft2 x 7 psf of framing that is known before any of which it is not. */
static void an_unknown_mass_is_not_the_least(void **state)
{
    struct world w;
    struct gw_bids bids;
    (void)state;
    world_open(&w);
    put_file(&w, "x.yaml",
             gw_format(&w.arena, WEAK_SYSTEM, "X",
                       "  - {name: deep, change: {frame_weight: 7 psf, mullion: {tube: {width: 2 in, depth: 6 in, "
                       "flange: 0.2 in, web: 0.2 in}}}, group: g}\n"));
    put_file(&w, "y.yaml", gw_format(&w.arena, WEAK_SYSTEM, "Y", ""));
    assert_true(load_text(&w, WEAK_PROJECT));
    assert_true(gw_takeoff_run(&w.takeoff, &w.model, &w.arena, &w.diags));
    gw_ask_init(&w.ask, &w.model, &w.takeoff, &w.arena);
    gw_select(&bids, &w.ask, &(const struct gw_select_limits){.recompute = true});
    assert_true(bids.by_mass);
    const struct gw_bid *known = bid_of(&bids, "X"), *unknown = bid_of(&bids, "Y");
    const double kg_per_lb = 0.45359237, glass = 180 * 13 * 6 / 25.4;
    assert_ptr_equal(known, &bids.items.items[0]);
    assert_int_equal(known->places.n, 1);
    assert_int_equal(known->places.items[0].choice->options, gw_option_bit(1));
    assert_true(fabs(known->mass / kg_per_lb - 180 * 7 - glass) < 1e-2 * glass);
    assert_true(fabs(known->everywhere_mass - known->mass) < 1e-9);
    assert_int_equal(unknown->places.items[0].choice->options, gw_option_bit(0));
    assert_int_equal(unknown->verdict, known->verdict);
    assert_false(gw_given(unknown->mass) || gw_given(unknown->everywhere_mass));
    world_close(&w);
}

/* A test that is short, and a calculation that lacks a weight alone: no plan, and the page says what would give one. */
static void a_weight_that_would_help_is_asked_for(void **state)
{
    struct world w;
    struct gw_bids bids;
    struct gw_results results;
    struct gw_text text;
    (void)state;
    world_open(&w);
    const char *rating =
        "ratings: [{test: structural, positive: 10 psf, negative: 10 psf, report: L-1, tested: {module: 5 "
        "ft, span: 9 ft, lites: [{width: 5 ft, height: 9 ft, layers: [{glass: 6 mm, treatment: "
        "tempered}]}], fastening: {spacing: 9 in}, includes: [anchors]}}]\n";
    put_file(&w, "x.yaml", gw_format(&w.arena, WEAK_SYSTEM, "X", rating));
    put_file(&w, "y.yaml", gw_format(&w.arena, WEAK_SYSTEM, "Y", ""));
    assert_true(load_text(&w, WEAK_PROJECT));
    assert_true(gw_takeoff_run(&w.takeoff, &w.model, &w.arena, &w.diags));
    gw_ask_init(&w.ask, &w.model, &w.takeoff, &w.arena);
    gw_select(&bids, &w.ask, &(const struct gw_select_limits){.recompute = true});
    assert_int_equal(bid_of(&bids, "X")->verdict, GW_FAIL);
    gw_answer_bids(&w.answer, &w.ask, &bids);
    gw_results_of(&results, &w.arena, &w.answer, GW_US);
    const struct gw_result result = gw_result_select(&w.arena, &results, &bids);
    gw_text_init(&text, &w.arena);
    assert_int_equal(gw_format_named("text")->render(&text, &result, NULL, false), GW_OK);
    assert_non_null(strstr(text.at, "is shown with 'insert': what does the framing weigh"));
    world_close(&w);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_plan_comes_back_as_it_was_judged),    cmocka_unit_test(a_stopped_search_gives_what_it_has),
        cmocka_unit_test(the_corner_is_priced_at_its_place),     cmocka_unit_test(an_unknown_mass_is_not_the_least),
        cmocka_unit_test(a_weight_that_would_help_is_asked_for),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
