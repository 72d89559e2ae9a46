/* The glass schedule against the project's lites, and against the make-ups that accepted tests recorded. */
#include "review_internal.h"

#include <string.h>

static bool is_of(const struct gw_lite_type *made, const struct gw_lite_type *type)
{
    if (made == type) return true;
    for (size_t i = 0; i < type->alternatives.n; i++)
        if (type->alternatives.items[i].as == made) return true;
    return false;
}

/* It is what stands somewhere in the place of that type. */
static bool is_built(const struct reviewing *r, const struct make_ups *built, const struct gw_glass_mark *mark)
{
    for (size_t i = 0; i < built->n; i++)
        if (is_of(built->items[i], mark->type) &&
            gw_layers_alike(r->ask->model->tables, built->items[i]->layers.items, built->items[i]->layers.n,
                            mark->layers.items, mark->layers.n))
            return true;
    return false;
}

/* Of those that stand there; where none is known, the type's own. */
static struct gw_message needed_of(struct reviewing *r, const struct make_ups *built, const struct gw_lite_type *type)
{
    struct gw_message all = {0};
    for (size_t i = 0; i < built->n; i++) {
        if (!is_of(built->items[i], type)) continue;
        const struct gw_message one = gw_layers_message(r, built->items[i]->layers.items, built->items[i]->layers.n);
        all = gw_say_both(r->arena, &all, ", or ", &one);
    }
    return gw_said(&all) ? all : GW_PLAINLY("the project gives no layers of it");
}

/* Everything judged anew with that glass in the place of the type's. */
static void effect_of(struct effect *out, struct reviewing *r, const struct gw_glass_mark *mark)
{
    struct gw_model model = *r->ask->model;
    struct gw_takeoff *takeoff = gw_alloc(r->arena, 1, sizeof *takeoff);
    struct gw_diags diags;
    struct bench *bench = gw_alloc(r->arena, 1, sizeof *bench);
    const size_t n = model.project.lites.n, at = (size_t)(mark->type - model.project.lites.items);
    struct gw_lite_type *lites = gw_alloc(r->arena, n + 1, sizeof *lites);
    *out = (struct effect){.worst = GW_PASS};
    gw_diags_init(&diags, r->arena);
    memcpy(lites, model.project.lites.items, n * sizeof *lites);
    lites[at].layers.items = mark->layers.items;
    lites[at].layers.n = mark->layers.n;
    model.project.lites.items = lites;
    model.tested = r->ask->model;
    model.diags = &diags;
    if (!gw_takeoff_run(takeoff, &model, r->arena, &diags)) return;
    gw_bench_judge(r, bench, &model, takeoff, &r->bench.looks[0], 1);
    if (bench->judgement.demands.n != r->bench.judgement.demands.n) return;
    gw_effect_of(out, r, gw_bench_findings(&r->bench, 0), gw_bench_findings(bench, 0), bench->judgement.demands.n);
}

static void differs(struct reviewing *r, const struct make_ups *built, const struct gw_glass_mark *mark)
{
    struct effect effect = {.worst = GW_PASS};
    if (r->judged) effect_of(&effect, r, mark);
    struct gw_comment *c = gw_comment_add(r, "glass", mark->mark, gw_consequence_of(&effect, GW_IT_DIFFERS));
    c->where = GW_SAY(r->arena, "{}, for {}", gw_of_text(mark->mark), gw_of_text(mark->type->name));
    c->submitted = gw_layers_message(r, mark->layers.items, mark->layers.n);
    c->needed = needed_of(r, built, mark->type);
    c->basis = GW_SAY(r->arena, "lite type {} of the project", gw_of_text(mark->type->name));
    gw_comment_effect(c, &effect);
    if (c->consequence != GW_IT_DIFFERS) c->disposition = GW_SPECIFIED_ITEM;
    gw_comment_at(c, mark->node);
}

/* Recorded make-ups -------------------------------------------------------------------------------------------------
 */

/* The short form names a type of the project instead. */
static bool names_its_make_up(const struct reviewing *r, const struct gw_tested *t, const struct gw_glass_mark *mark)
{
    const struct gw_lite_type *type = t->make_up ? gw_model_lite(r->ask->model, t->make_up) : NULL;
    return type && gw_layers_alike(r->ask->model->tables, type->layers.items, type->layers.n, mark->layers.items,
                                   mark->layers.n);
}

static bool records(const struct reviewing *r, const struct gw_tested *t, const struct gw_glass_mark *mark, bool *any)
{
    if (!t) return false;
    *any = *any || t->layers.n || t->make_up;
    if (names_its_make_up(r, t, mark)) return true;
    if (t->layers.n &&
        gw_layers_alike(r->ask->model->tables, t->layers.items, t->layers.n, mark->layers.items, mark->layers.n))
        return true;
    for (size_t i = 0; i < t->lites.n; i++) {
        const struct gw_tested_lite *l = &t->lites.items[i];
        *any = *any || l->layers.n;
        if (l->layers.n &&
            gw_layers_alike(r->ask->model->tables, l->layers.items, l->layers.n, mark->layers.items, mark->layers.n))
            return true;
    }
    return false;
}

/* The accepted tests had other glass, and no report of this submittal speaks of it. */
static bool is_of_other_tests(const struct reviewing *r, const struct gw_glass_mark *mark)
{
    bool any = false;
    if (!r->accepted || r->submittal->offered_system || r->submittal->reports.n) return false;
    for (size_t i = 0; i < r->accepted->ratings.n; i++)
        if (records(r, r->accepted->ratings.items[i].tested, mark, &any)) return false;
    return any;
}

static void untested(struct reviewing *r, const struct gw_glass_mark *mark)
{
    struct gw_comment *c = gw_comment_add(r, "glass", mark->mark, GW_IT_DIFFERS);
    c->where = GW_SAY(r->arena, "{}, for {}", gw_of_text(mark->mark), gw_of_text(mark->type->name));
    c->submitted = gw_layers_message(r, mark->layers.items, mark->layers.n);
    c->needed = GW_PLAINLY("a make-up that a report of the accepted system records");
    c->basis = GW_SAY(r->arena, "the tests of {} are of other make-ups", gw_of_text(r->accepted->name));
    gw_comment_at(c, mark->node);
}

/* The schedule ------------------------------------------------------------------------------------------------------
 */

static void check_mark(struct reviewing *r, const struct make_ups *built, const struct gw_glass_mark *mark)
{
    if (!is_built(r, built, mark)) {
        differs(r, built, mark);
        return;
    }
    if (is_of_other_tests(r, mark)) {
        untested(r, mark);
        return;
    }
    const struct gw_message layers = gw_layers_message(r, mark->layers.items, mark->layers.n);
    gw_complete_add(r, "glass", mark->mark,
                    GW_SAY(r->arena, "{}, as {} of the project", gw_of_message(&layers), gw_of_text(mark->type->name)));
}

/* By a mark of its own make-up, or by one of another that nothing here is made of, which is told already. */
static bool is_listed(const struct reviewing *r, const struct make_ups *built, const struct gw_lite_type *type)
{
    for (size_t i = 0; i < r->submittal->glass.n; i++) {
        const struct gw_glass_mark *mark = &r->submittal->glass.items[i];
        if (!is_of(type, mark->type)) continue;
        if (gw_layers_alike(r->ask->model->tables, type->layers.items, type->layers.n, mark->layers.items,
                            mark->layers.n) ||
            !is_built(r, built, mark))
            return true;
    }
    return false;
}

static void check_listed(struct reviewing *r, const struct make_ups *built, const struct gw_lite_type *type)
{
    if (is_listed(r, built, type)) return;
    struct gw_comment *c = gw_comment_add(r, "glass", type->name, GW_IT_IS_NOT_SHOWN);
    c->submitted = GW_PLAINLY("no mark of the glass schedule");
    c->needed = gw_layers_message(r, type->layers.items, type->layers.n);
    c->basis = GW_PLAINLY("it stands in a wall of the project");
    c->ask = GW_SAY(r->arena, "which glass is offered for {}? Ask the glazing contractor", gw_of_text(type->name));
    gw_comment_at(c, gw_node_get(r->submittal->node, "glass"));
}

void gw_review_glass(struct reviewing *r)
{
    const struct make_ups built = gw_make_ups_built(r);
    if (!r->submittal->glass.n) return;
    for (size_t i = 0; i < r->submittal->glass.n; i++) check_mark(r, &built, &r->submittal->glass.items[i]);
    for (size_t i = 0; i < built.n; i++) check_listed(r, &built, built.items[i]);
}
