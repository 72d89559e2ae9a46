/* Every candidate against every demand, and what a candidate comes to. */
#include "galeward/plan.h"
#include "judge_internal.h"

int gw_verdict_rank(enum gw_verdict verdict)
{
    static const int ranks[] = {[GW_NOT_REQUIRED] = 0, [GW_PASS] = 1, [GW_NOT_SHOWN] = 2, [GW_FAIL] = 3};
    return ranks[verdict];
}

const char *gw_verdict_name(enum gw_verdict verdict)
{
    static const char *const names[] = {"not shown", "pass", "fail", "not required"};
    return names[verdict];
}

const char *gw_evidence_name(enum gw_evidence evidence)
{
    static const char *const names[] = {"none", "test", "calculation", "statement"};
    return names[evidence];
}

const char *gw_load_direction_name(enum gw_load_direction direction)
{
    static const char *const names[] = {"", "inward", "outward"};
    return names[direction];
}

bool gw_graver(const struct gw_finding *a, const struct gw_finding *b)
{
    if (!b) return true;
    const int left = gw_verdict_rank(a->verdict), right = gw_verdict_rank(b->verdict);
    if (left != right) return left > right;
    return gw_given(a->utilization) && !(a->utilization <= b->utilization);
}

const struct gw_finding *gw_deciding(const struct gw_finding *f)
{
    return f && f->link && f->verdict != GW_NOT_SHOWN && f->link->verdict == f->verdict && !gw_given(f->required)
               ? f->link
               : f;
}

/* Pressures too low show nothing: what passes under them is at best not shown. */
void gw_summarize(struct gw_summary *summary, const struct gw_finding *findings, size_t n, bool too_low)
{
    for (size_t i = 0; i < n; i++) {
        summary->counts[findings[i].verdict]++;
        if (gw_graver(&findings[i], summary->governing)) summary->governing = &findings[i];
    }
    const bool fails = summary->counts[GW_FAIL] > 0, unshown = summary->counts[GW_NOT_SHOWN] > 0;
    if (too_low && !fails && !unshown)
        summary->held = GW_PLAINLY("given pressures that govern are lower than the computed ones");
    summary->verdict = fails ? GW_FAIL : unshown || too_low ? GW_NOT_SHOWN : GW_PASS;
}

/* Each demand by itself. */
static void find(struct gw_finding *findings, const struct gw_judgement *out, struct gw_ask *ask,
                 const struct gw_system *system)
{
    struct gw_planned *planned = gw_planned_of(ask, system);
    if (planned) {
        gw_find_by_plan(findings, out, ask, &planned->plan, &planned->offers, &planned->make_ups);
        return;
    }
    for (size_t i = 0; i < out->demands.n; i++) {
        findings[i].candidate = system;
        findings[i].demand = &out->demands.items[i];
        gw_fasten(&findings[i], ask);
        gw_find(&findings[i], ask);
    }
}

void gw_judge_leaning(struct gw_finding *findings, size_t n, struct gw_ask *ask, const struct gw_chosen *chosen)
{
    ask->choice = chosen;
    gw_judge_paths(findings, n, ask, gw_paths_of(findings, n, ask));
    ask->choice = NULL;
}

static const struct gw_chosen *chosen_for(const struct gw_ask *ask, const struct gw_system *system)
{
    const struct gw_planned *planned = gw_planned_of(ask, system);
    return planned ? &planned->make_ups : NULL;
}

static void judge_system(struct gw_finding *findings, struct gw_summary *summary, struct gw_judgement *out,
                         struct gw_ask *ask, const struct gw_system *system)
{
    const size_t n = out->demands.n;
    find(findings, out, ask, system);
    gw_judge_leaning(findings, n, ask, chosen_for(ask, system));
    *summary = (struct gw_summary){.candidate = system};
    gw_summarize(summary, findings, n, ask->takeoff->too_low);
}

void gw_judge_demands(struct gw_judgement *out, struct gw_ask *ask) { gw_find_demands(out, ask); }

void gw_judge(struct gw_judgement *out, struct gw_ask *ask)
{
    const struct gw_model *model = ask->model;
    gw_find_demands(out, ask);
    const size_t each = out->demands.n, candidates = model->systems.n;
    out->findings.items = gw_alloc(ask->arena, each * candidates + 1, sizeof *out->findings.items);
    out->summaries.items = gw_alloc(ask->arena, candidates + 1, sizeof *out->summaries.items);
    for (size_t c = 0; c < candidates; c++)
        judge_system(&out->findings.items[c * each], &out->summaries.items[c], out, ask, &model->systems.items[c]);
    out->findings.n = each * candidates;
    out->summaries.n = candidates;
}

void gw_judge_apart(struct gw_judgement *out, struct gw_ask *ask)
{
    const struct gw_model *model = ask->model;
    gw_find_demands(out, ask);
    out->findings.n = out->demands.n * model->systems.n;
    out->findings.items = gw_alloc(ask->arena, out->findings.n + 1, sizeof *out->findings.items);
    for (size_t c = 0; c < model->systems.n; c++)
        find(&out->findings.items[c * out->demands.n], out, ask, &model->systems.items[c]);
}

/* With what is chosen there; the caller puts back what the ask had. */
static void start(struct gw_finding *out, struct gw_demand *demand, struct gw_ask *ask, const struct gw_check *check,
                  const struct gw_element *element, const struct gw_system *system)
{
    const struct gw_place place = {.where = element->id, .element = element, .component = element->component};
    struct gw_planned *planned = gw_planned_of(ask, system);
    *out = (struct gw_finding){.candidate = system, .demand = demand};
    if (planned) {
        planned->make_ups.place = planned->plan.places->of[element->index];
        ask->choice = &planned->make_ups;
        out->offered = gw_planned_offer(planned, element);
    }
    ask->system = NULL; /* what a place asks is not of the system that was judged last */
    gw_judge_demand(demand, ask, check, &place);
    gw_fasten(out, ask);
}

void gw_judge_element(struct gw_finding *out, struct gw_demand *demand, struct gw_ask *ask,
                      const struct gw_check *check, const struct gw_element *element, const struct gw_system *system)
{
    const struct gw_chosen *own = ask->choice;
    start(out, demand, ask, check, element, system);
    gw_find(out, ask);
    ask->choice = own;
}

void gw_judge_limits(struct gw_finding *out, struct gw_demand *demand, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_element *element, const struct gw_system *system)
{
    const struct gw_chosen *own = ask->choice;
    start(out, demand, ask, check, element, system);
    gw_find_by_limits(out, ask);
    ask->choice = own;
}

void gw_weigh_limits(struct gw_weighed_limits *out, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_element *element, const struct gw_system *system)
{
    const struct gw_chosen *own = ask->choice;
    struct gw_finding *f = gw_alloc(ask->arena, 1, sizeof *f);
    struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d); /* messages may keep them */
    start(f, d, ask, check, element, system);
    gw_find_each_limit(out, f, ask);
    ask->choice = own;
}
