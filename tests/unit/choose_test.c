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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_plan_comes_back_as_it_was_judged),
        cmocka_unit_test(a_stopped_search_gives_what_it_has),
        cmocka_unit_test(the_corner_is_priced_at_its_place),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
