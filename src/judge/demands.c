/* Every check row over every place of its scope. */
#include "judge/by_set.h"
#include "judge_internal.h"

#include <string.h>

static struct gw_demand *new_demand(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check,
                                    const struct gw_place *place)
{
    out->demands.items =
        gw_grow(ask->arena, out->demands.items, out->demands.n, &out->demands_capacity, sizeof *out->demands.items);
    struct gw_demand *demand = &out->demands.items[out->demands.n++];
    gw_demand_clear(demand, check, place);
    return demand;
}

void gw_demand_clear(struct gw_demand *out, const struct gw_check *check, const struct gw_place *place)
{
    *out = (struct gw_demand){.check = check,
                              .where = place->where,
                              .element = place->element,
                              .component = place->component,
                              .wall = place->wall,
                              .lite = place->lite,
                              .name = place->other ? place->other->name : NULL,
                              .at = GW_ABSENT};
}

static const char *missing_need(const struct gw_check *check, const struct gw_model *model)
{
    for (const struct gw_need *need = check->does->needs; need && need->present; need++)
        if (!need->present(model)) return need->question;
    return NULL;
}

/* Missing or waived, where a set asks for it all the same, or who judges one place. */
static bool without_site(struct gw_demand *out, const struct gw_ask *ask, const struct gw_check *check)
{
    const char *question = missing_need(check, ask->model);
    const char *waived = !question && check->does->waived ? check->does->waived(ask->model) : NULL;
    if (question) gw_demand_unknown(out, GW_PLAINLY(question));
    else if (waived) gw_demand_not_asked(out, GW_PLAINLY(waived));
    if (question || waived) out->summary = out->message;
    return question || waived;
}

void gw_judge_demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_check *check,
                     const struct gw_place *place)
{
    struct gw_reads reads = {0}, *outer = ask->reads;
    gw_demand_clear(out, check, place);
    gw_ask_open(ask);
    gw_trace_group(&ask->engine, "What is asked");
    ask->reads = &reads;
    if (!without_site(out, ask, check)) check->does->demand(out, ask, place);
    gw_require(out, ask);
    ask->reads = outer;
    out->reads = reads;
    out->used = gw_ask_close(ask, NULL);
}

/* Without what it needs, or waived: one row for the whole project. */
static bool settle_without_places(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    const char *question = missing_need(check, ask->model);
    const char *waived = !question && check->does->waived ? check->does->waived(ask->model) : NULL;
    if ((!question && !waived) || gw_set_speaks_of(ask->model, check)) return false;
    struct gw_demand *demand =
        new_demand(out, ask, check, &(struct gw_place){.where = "project", .component = GW_FIXED});
    gw_ask_open(ask);
    demand->used = gw_ask_close(ask, NULL);
    if (waived) gw_demand_not_asked(demand, GW_PLAINLY(waived));
    else gw_demand_unknown(demand, GW_PLAINLY(question));
    return true;
}

static void demand_at(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check,
                      const struct gw_place *place)
{
    gw_judge_demand(new_demand(out, ask, check, place), ask, check, place);
}

static void per_element(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (!(check->kinds & GW_KIND_BIT(e->kind))) continue;
        demand_at(out, ask, check, &(struct gw_place){.where = e->id, .element = e, .component = e->component});
    }
}

/* Spandrels are glazed like fixed lites. */
static enum gw_component tested_component(const struct gw_element *e)
{
    return e->component == GW_SPANDREL ? GW_FIXED : e->component;
}

/* Elements of a wall follow each other, so the search from the end nearly always ends at once. */
static struct gw_judged_wall *judged_wall(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_judge_memory *m = ask->memory;
    for (size_t i = m->n_walls; i-- > 0;)
        if (m->walls[i].component == tested_component(e) && strcmp(m->walls[i].wall, e->wall) == 0) return &m->walls[i];
    m->walls = gw_grow(ask->arena, m->walls, m->n_walls, &m->walls_capacity, sizeof *m->walls);
    struct gw_judged_wall *wall = &m->walls[m->n_walls++];
    *wall = (struct gw_judged_wall){.wall = e->wall, .component = tested_component(e)};
    return wall;
}

/* Lites above the roof count where none of the wall's stands below it. */
static void count_lite(struct gw_judged_wall *wall, const struct gw_element *e)
{
    const double inward = e->by_set ? e->inward_asd.pa / e->by_set->factor[0] : e->inward_asd.pa; /* the site's */
    if (e->parapet && wall->below) return;
    if (!e->parapet && !wall->below)
        *wall = (struct gw_judged_wall){.wall = wall->wall, .component = wall->component, .below = true};
    if (e->outside) wall->outside = e->outside;
    if (e->outside || !(inward > wall->greatest_inward)) return;
    wall->greatest_inward = inward;
    wall->used = e->used;
}

static void gather_walls(struct gw_ask *ask)
{
    ask->memory->n_walls = 0;
    for (size_t i = 0; i < ask->takeoff->elements.n; i++) {
        const struct gw_element *e = &ask->takeoff->elements.items[i];
        if (e->kind == GW_LITE) count_lite(judged_wall(ask, e), e);
    }
}

const struct gw_judged_wall *gw_judged_walls(struct gw_ask *ask, size_t *n)
{
    if (!ask->memory->n_walls) gather_walls(ask);
    *n = ask->memory->n_walls;
    return ask->memory->walls;
}

static void per_wall(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    const struct gw_judge_memory *m = ask->memory;
    for (size_t i = 0; i < m->n_walls; i++)
        demand_at(
            out, ask, check,
            &(struct gw_place){.where = m->walls[i].wall, .wall = &m->walls[i], .component = m->walls[i].component});
}

static bool stands_somewhere(const struct gw_takeoff *takeoff, const struct gw_lite_type *lite)
{
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        if (e->kind == GW_LITE && e->lite && strcmp(e->lite, lite->name) == 0) return true;
    }
    return false;
}

/* A type that is listed and stands nowhere asks nothing of a system. */
static void per_lite_type(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    for (size_t i = 0; i < ask->model->project.lites.n; i++) {
        const struct gw_lite_type *lite = &ask->model->project.lites.items[i];
        const struct gw_place place = {.where = lite->name, .component = lite->component, .lite = lite};
        struct gw_demand *demand = new_demand(out, ask, check, &place);
        gw_judge_demand(demand, ask, check, &place);
        if (stands_somewhere(ask->takeoff, lite)) continue;
        gw_demand_not_asked(demand, GW_PLAINLY("no wall and no opening has a lite of this type"));
        demand->summary = demand->message;
    }
}

static bool is_named(const struct gw_requirements *r, const char *name)
{
    for (size_t i = 0; r && i < r->other.n; i++)
        if (strcmp(r->other.items[i].name, name) == 0) return true;
    return false;
}

/* Of the project, then what the set alone asks for. */
static void per_name(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    const struct gw_requirement_set *set = ask->model->set;
    for (size_t i = 0; r && i < r->other.n; i++)
        demand_at(out, ask, check,
                  &(struct gw_place){.where = "project", .component = GW_FIXED, .other = &r->other.items[i]});
    for (size_t i = 0; set && i < set->requires.n; i++) {
        const struct gw_required *row = &set->requires.items[i];
        if (!row->name || is_named(r, row->name)) continue;
        const struct gw_other_requirement own = {.name = row->name, .at_least = row->at_least, .at_most = row->at_most};
        demand_at(out, ask, check, &(struct gw_place){.where = "project", .component = GW_FIXED, .other = &own});
    }
}

static void per_project(struct gw_judgement *out, struct gw_ask *ask, const struct gw_check *check)
{
    demand_at(out, ask, check, &(struct gw_place){.where = "project", .component = GW_FIXED});
}

void gw_find_demands(struct gw_judgement *out, struct gw_ask *ask)
{
    static void (*const over[])(struct gw_judgement *, struct gw_ask *,
                                const struct gw_check *) = {[GW_PER_ELEMENT] = per_element,
                                                            [GW_PER_WALL] = per_wall,
                                                            [GW_PER_LITE_TYPE] = per_lite_type,
                                                            [GW_PER_NAME] = per_name,
                                                            [GW_PER_PROJECT] = per_project};
    size_t n;
    const struct gw_check *const *checks = gw_check_list(&n);
    gather_walls(ask);
    *out = (struct gw_judgement){.demands_capacity = 0};
    for (size_t i = 0; i < n; i++)
        if (!settle_without_places(out, ask, checks[i])) over[checks[i]->scope](out, ask, checks[i]);
}
