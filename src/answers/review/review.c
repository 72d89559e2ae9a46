/* The review of a submittal: its parts in the order in which they lean on each other. */
#include "review_internal.h"

#include <string.h>

/* The project's only candidate stands for the accepted system where a submittal names none. */
static void find_systems(struct reviewing *r)
{
    const struct gw_model *m = r->ask->model;
    r->accepted = r->submittal->accepted_system;
    r->judged = r->submittal->offered_system ? r->submittal->offered_system : r->accepted;
    if (!r->judged && m->systems.n == 1) r->judged = &m->systems.items[0];
}

static const struct gw_planned *planned_named(const struct reviewing *r, const char *name)
{
    const struct gw_model *m = r->ask->model;
    for (size_t i = 0; r->ask->plans && i < m->systems.n; i++)
        if (r->ask->plans->items[i].chosen && (m->systems.n == 1 || strcmp(m->systems.items[i].name, name) == 0))
            return &r->ask->plans->items[i];
    return NULL;
}

static void find_plan(struct reviewing *r)
{
    if (r->accepted) r->planned = planned_named(r, r->accepted->name);
    if (!r->planned && r->judged) r->planned = planned_named(r, r->judged->name);
}

static void ask_for_system(struct reviewing *r)
{
    struct gw_comment *c = gw_comment_add(r, "offer", "system", GW_IT_IS_NOT_SHOWN);
    c->submitted = GW_PLAINLY("no system");
    c->needed = GW_PLAINLY("the system file of what is offered (offer), or of what was accepted (accepted)");
    c->basis = GW_PLAINLY("without one no dimension and no claim can be judged");
    gw_comment_at(c, r->submittal->node);
}

void gw_review_submittal(struct gw_review *out, struct gw_ask *ask, const struct gw_answer *answer,
                         const struct gw_submittal *submittal, const struct gw_previous *previous)
{
    struct reviewing r = {.out = out, .ask = ask, .arena = ask->arena, .submittal = submittal};
    *out = (struct gw_review){.submittal = submittal, .answer = answer};
    find_systems(&r);
    find_plan(&r);
    out->judged = r.judged;
    if (r.judged) gw_review_systems(&r);
    else ask_for_system(&r);
    gw_review_glass(&r);
    if (r.judged) gw_review_drawings(&r);
    gw_review_missing(&r);
    gw_comments_settle(&r, previous);
}
