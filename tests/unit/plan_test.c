/* A candidate judged with what is chosen at each place: with nothing chosen it is the candidate as it is. */
#include "support.h"

#include "galeward/plan.h"

struct plain {
    struct gw_plan_places places;
    struct gw_plan_choice *choices;
    struct gw_judgement demands;
    struct gw_ask ask;
};

static void plan_nothing(struct plain *p, struct world *w)
{
    const size_t types = w->model.project.lites.n;
    gw_ask_init(&p->ask, &w->model, &w->takeoff, &w->arena);
    gw_judge_demands(&p->demands, &p->ask);
    gw_plan_places_of(&p->places, &w->model, &w->takeoff, &w->arena);
    p->choices = gw_alloc(&w->arena, p->places.n, sizeof *p->choices);
    for (size_t i = 0; i < p->places.n; i++) p->choices[i].lites = gw_alloc(&w->arena, types + 1, sizeof(unsigned));
}

static void assert_same_finding(const struct gw_finding *a, const struct gw_finding *b, struct world *w)
{
    assert_string_equal(a->demand->where, b->demand->where);
    assert_int_equal(a->verdict, b->verdict);
    assert_int_equal(a->evidence, b->evidence);
    assert_true(memcmp(&a->utilization, &b->utilization, sizeof a->utilization) == 0);
    assert_string_equal(gw_message_text(&w->arena, &a->message, GW_US), gw_message_text(&w->arena, &b->message, GW_US));
}

static void judge_plain(struct world *w)
{
    struct plain p = {.choices = NULL};
    plan_nothing(&p, w);
    const struct gw_judgement *j = &w->answer.judgement;
    const size_t n = p.demands.demands.n;
    struct gw_finding *findings = gw_alloc(&w->arena, n + 1, sizeof *findings);
    assert_int_equal(n, j->demands.n);
    for (size_t c = 0; c < w->model.systems.n; c++) {
        struct gw_offers offers;
        struct gw_summary summary;
        const struct gw_plan plan = {&w->model.systems.items[c], &p.places, p.choices};
        gw_offers_init(&offers, &w->model, plan.candidate, &w->arena);
        gw_judge_plan(findings, &summary, &p.demands, &p.ask, &plan, &offers);
        for (size_t i = 0; i < n; i++) assert_same_finding(&findings[i], &j->findings.items[c * n + i], w);
        assert_int_equal(summary.verdict, j->summaries.items[c].verdict);
    }
}

static void must_judge_file(struct world *w, const char *path)
{
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0));
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(&w->answer, &w->ask);
}

static void nothing_chosen_changes_nothing(void **state)
{
    struct world *w = *state;
    must_judge_file(w, "projects/tern-street.yaml");
    judge_plain(w);
}

static void nor_does_it_elsewhere(void **state)
{
    struct world *w = *state;
    must_judge_file(w, "projects/gull-point.yaml");
    judge_plain(w);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(nothing_chosen_changes_nothing, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(nor_does_it_elsewhere, world_setup, world_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
