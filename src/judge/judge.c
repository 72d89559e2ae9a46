/* Every check row over every place, then every candidate against each demand. */
#include "judge_internal.h"

#include <string.h>

static struct gw_demand *new_demand(struct gw_judging *j, const struct gw_check *check, const char *where)
{
    struct gw_judgement *out = j->out;
    out->demands.items = gw_grow(j->model->arena, out->demands.items, out->demands.n, &out->demands_capacity,
                                 sizeof *out->demands.items);
    struct gw_demand *demand = &out->demands.items[out->demands.n++];
    *demand = (struct gw_demand){.check = check->id,
                                 .title = check->title,
                                 .clause = check->clause,
                                 .where = where,
                                 .status = GW_PASS,
                                 .value = GW_ABSENT,
                                 .value_out = GW_ABSENT,
                                 .at = GW_ABSENT,
                                 .component = GW_FIXED,
                                 .message = ""};
    return demand;
}

static const char *missing_need(const struct gw_check *check, const struct gw_model *model)
{
    for (const struct gw_need *need = check->needs; need && need->present; need++)
        if (!need->present(model)) return need->question;
    return NULL;
}

/* Without an engine, or without what it needs, or waived: one row for the whole project. */
static bool settle_without_engine(struct gw_judging *j, const struct gw_check *check)
{
    const char *question = missing_need(check, j->model);
    const char *waived = !question && check->waived ? check->waived(j->model) : NULL;
    if (!question && !waived && check->demand) return false;
    struct gw_demand *demand = new_demand(j, check, "project");
    demand->status = waived ? GW_NOT_REQUIRED : GW_NOT_SHOWN;
    demand->message = question ? question
                      : waived ? waived
                               : "not built yet: this version does not compute it; ask the engineer of record";
    return true;
}

static void demand_at(struct gw_judging *j, const struct gw_check *check, const char *where,
                      const struct gw_place *place)
{
    struct gw_demand *demand = new_demand(j, check, where);
    demand->element = place->element;
    demand->component = place->component;
    check->demand(demand, j, place);
}

static void per_element(struct gw_judging *j, const struct gw_check *check)
{
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        if (!(check->kinds & (1u << e->kind))) continue;
        struct gw_place place = {.element = e, .component = e->component};
        demand_at(j, check, e->id, &place);
    }
}

/* Spandrels are glazed like fixed lites. */
static enum gw_component tested_component(const struct gw_element *e)
{
    return e->component == GW_SPANDREL ? GW_FIXED : e->component;
}

/* Elements of a wall follow each other, so the search from the end nearly always ends at once. */
static struct gw_judged_wall *judged_wall(struct gw_judging *j, const struct gw_element *e)
{
    for (size_t i = j->n_walls; i-- > 0;)
        if (j->walls[i].component == tested_component(e) && strcmp(j->walls[i].wall, e->wall) == 0) return &j->walls[i];
    j->walls = gw_grow(j->model->arena, j->walls, j->n_walls, &j->walls_capacity, sizeof *j->walls);
    struct gw_judged_wall *wall = &j->walls[j->n_walls++];
    *wall = (struct gw_judged_wall){.wall = e->wall, .component = tested_component(e)};
    return wall;
}

static void gather_walls(struct gw_judging *j)
{
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_element *e = &j->takeoff->elements.items[i];
        if (e->kind != GW_LITE) continue;
        struct gw_judged_wall *wall = judged_wall(j, e);
        if (e->parapet || !(e->inward_asd.pa > wall->greatest_inward)) continue;
        wall->greatest_inward = e->inward_asd.pa;
        wall->used = e->used;
    }
}

static void per_wall(struct gw_judging *j, const struct gw_check *check)
{
    for (size_t i = 0; i < j->n_walls; i++) {
        struct gw_place place = {.wall = &j->walls[i], .component = j->walls[i].component};
        demand_at(j, check, j->walls[i].wall, &place);
    }
}

static void per_lite_type(struct gw_judging *j, const struct gw_check *check)
{
    for (size_t i = 0; i < j->model->project.lites.n; i++) {
        const struct gw_lite_type *lite = &j->model->project.lites.items[i];
        struct gw_place place = {.component = lite->component, .lite = lite};
        demand_at(j, check, lite->name, &place);
    }
}

static void per_name(struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_requirements *r = j->model->project.requirements;
    for (size_t i = 0; r && i < r->other.n; i++) {
        struct gw_place place = {.component = GW_FIXED, .other = &r->other.items[i]};
        demand_at(j, check, "project", &place);
    }
}

static void find_demands(struct gw_judging *j)
{
    size_t n;
    gather_walls(j);
    const struct gw_check *checks = gw_check_list(&n);
    *j->out = (struct gw_judgement){.demands_capacity = 0};
    for (size_t i = 0; i < n; i++) {
        if (settle_without_engine(j, &checks[i])) continue;
        switch (checks[i].scope) {
        case GW_PER_ELEMENT:
            per_element(j, &checks[i]);
            break;
        case GW_PER_WALL:
            per_wall(j, &checks[i]);
            break;
        case GW_PER_LITE_TYPE:
            per_lite_type(j, &checks[i]);
            break;
        case GW_PER_NAME:
            per_name(j, &checks[i]);
            break;
        case GW_PER_PROJECT:
            demand_at(j, &checks[i], "project", &(struct gw_place){.component = GW_FIXED});
            break;
        }
    }
    gw_judge_reactions(j);
    gw_judge_members(j);
    gw_judge_mock_up(j);
}

const struct gw_check *gw_check_of(const struct gw_demand *demand)
{
    size_t n;
    const struct gw_check *checks = gw_check_list(&n);
    for (size_t i = 0; i < n; i++)
        if (strcmp(checks[i].id, demand->check) == 0) return &checks[i];
    return NULL;
}

static void find(struct gw_finding *finding, struct gw_judging *j)
{
    const struct gw_demand *demand = finding->demand;
    finding->utilisation = finding->required = finding->provided = GW_ABSENT;
    finding->direction = "";
    finding->dim = demand->dim;
    finding->at_most = demand->at_most;
    finding->used = demand->used;
    if (demand->status != GW_PASS) {
        finding->verdict = demand->status;
        finding->message = demand->message;
        return;
    }
    const struct gw_check *check = gw_check_of(demand);
    check->settle(finding, j, check);
}

static bool governs(const struct gw_finding *a, const struct gw_finding *b)
{
    static const int rank[] = {[GW_FAIL] = 3, [GW_NOT_SHOWN] = 2, [GW_PASS] = 1, [GW_NOT_REQUIRED] = 0};
    if (!b || rank[a->verdict] != rank[b->verdict]) return !b || rank[a->verdict] > rank[b->verdict];
    return gw_given(a->utilisation) && !(a->utilisation <= b->utilisation);
}

static void summarize(struct gw_summary *summary, const struct gw_finding *findings, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        summary->counts[findings[i].verdict]++;
        if (governs(&findings[i], summary->governing)) summary->governing = &findings[i];
    }
    bool fails = summary->counts[GW_FAIL] > 0, unshown = summary->counts[GW_NOT_SHOWN] > 0;
    summary->verdict = fails ? GW_FAIL : unshown ? GW_NOT_SHOWN : GW_PASS;
}

void gw_judge_demands(struct gw_judgement *out, const struct gw_model *model, const struct gw_takeoff *takeoff)
{
    struct gw_judging j = {.out = out, .model = model, .takeoff = takeoff};
    find_demands(&j);
}

void gw_judge(struct gw_judgement *out, const struct gw_model *model, const struct gw_takeoff *takeoff)
{
    struct gw_judging j = {.out = out, .model = model, .takeoff = takeoff};
    find_demands(&j);
    size_t each = out->demands.n, candidates = model->systems.n;
    out->findings.items = gw_alloc(model->arena, each * candidates + 1, sizeof *out->findings.items);
    out->summaries.items = gw_alloc(model->arena, candidates + 1, sizeof *out->summaries.items);
    for (size_t c = 0; c < candidates; c++) {
        struct gw_finding *first = &out->findings.items[c * each];
        for (size_t i = 0; i < each; i++) {
            first[i].candidate = &model->systems.items[c];
            first[i].demand = &out->demands.items[i];
            find(&first[i], &j);
        }
        gw_judge_by_links(first, each, &j);
        out->summaries.items[c].candidate = &model->systems.items[c];
        summarize(&out->summaries.items[c], first, each);
    }
    gw_judge_reach(&j);
    out->findings.n = each * candidates;
    out->summaries.n = candidates;
}

bool gw_judge_derive(struct gw_finding *out, const struct gw_model *model, const struct gw_takeoff *takeoff,
                     const struct gw_judgement *judgement, const struct gw_finding *finding, struct gw_trace *trace)
{
    struct gw_judgement kept = *judgement;
    struct gw_judging j = {.out = &kept, .model = model, .takeoff = takeoff, .trace = trace};
    const struct gw_check *check = gw_check_of(finding->demand);
    bool compared = check->settle == gw_compare || check->settle == gw_settle_calculated;
    if (compared || !check->settle || finding->demand->status != GW_PASS) return false;
    *out = (struct gw_finding){.candidate = finding->candidate, .demand = finding->demand};
    find(out, &j);
    return true;
}
