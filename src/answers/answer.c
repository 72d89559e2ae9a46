/* Demand and check: the parts in the order in which they lean on each other. */
#include "galeward/answers.h"
#include "galeward/select.h"

#include <string.h>

static void start(struct gw_answer *out, const struct gw_ask *ask)
{
    *out = (struct gw_answer){.model = ask->model, .takeoff = ask->takeoff, .plans = ask->plans};
}

static void whoever_makes_it(struct gw_answer *out, struct gw_ask *ask)
{
    gw_find_reactions(out, ask);
    gw_find_member_demands(out, ask);
    gw_find_mock_up(out, ask);
    gw_find_tests_apart(out, ask);
    gw_find_below_site(out, ask);
    gw_list_not_checked(out, ask);
}

void gw_answer_demand(struct gw_answer *out, struct gw_ask *ask)
{
    start(out, ask);
    gw_judge_demands(&out->judgement, ask);
    whoever_makes_it(out, ask);
}

void gw_answer_check(struct gw_answer *out, struct gw_ask *ask)
{
    start(out, ask);
    gw_judge(&out->judgement, ask);
    whoever_makes_it(out, ask);
    gw_find_missing(out, ask);
    gw_find_reaches(out, ask);
}

void gw_answer_bids(struct gw_answer *out, struct gw_ask *ask, const struct gw_bids *bids)
{
    const size_t each = bids->demands.demands.n, n = bids->items.n;
    struct gw_judgement *j = &out->judgement;
    start(out, ask);
    *j = bids->demands;
    j->findings.items = gw_alloc(ask->arena, each * n + 1, sizeof *j->findings.items);
    j->summaries.items = gw_alloc(ask->arena, n + 1, sizeof *j->summaries.items);
    j->findings.n = each * n;
    j->summaries.n = n;
    for (size_t i = 0; i < n; i++) {
        memcpy(&j->findings.items[i * each], bids->items.items[i].findings, each * sizeof *j->findings.items);
        j->summaries.items[i] = bids->items.items[i].summary;
    }
    whoever_makes_it(out, ask);
    gw_find_missing(out, ask);
}
