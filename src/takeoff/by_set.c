/* A requirement set in the place of the site: every pressure of an element, at each level, times the pressure of its
 * row over the greatest that the site asks of the row's lites. So lites, framing, screws and anchors of a place keep
 * the proportions that heights and areas give them, and a set that is as it was written changes nothing. */
#include "base/tolerance.h"
#include "takeoff_internal.h"

#include <string.h>

static bool is_framing(const struct gw_element *e)
{
    return e->kind == GW_MULLION || e->kind == GW_TRANSOM || e->kind == GW_ANCHOR;
}

static bool speaks_of(const struct gw_required *row, const struct gw_element *e)
{
    if (strcmp(row->check, "structural") != 0) return false;
    if (row->wall && strcmp(row->wall, e->wall) != 0) return false;
    if (row->zone != GW_NO_INTEGER && row->zone != e->zone) return false;
    if (row->part && (row->part == GW_ABOVE_ROOF) != e->parapet) return false;
    return row->of != GW_SET_FRAMING || is_framing(e);
}

/* How much of a place it names. Framing goes by its own row before any of lites. */
static int names(const struct gw_required *row)
{
    return (row->wall != NULL) + (row->zone != GW_NO_INTEGER) + (row->part != GW_ROOF_PART_UNSET) +
           (row->of == GW_SET_FRAMING ? 8 : 0);
}

/* The row that names most of its place; of equals the first. */
static struct gw_by_set *row_of(struct gw_takeoff *t, const struct gw_element *e)
{
    struct gw_by_set *best = NULL;
    for (size_t i = 0; i < t->by_set.n; i++) {
        struct gw_by_set *one = &t->by_set.items[i];
        if (speaks_of(one->row, e) && (!best || names(one->row) > names(best->row))) best = one;
    }
    return best;
}

/* Of a row without lites of its own the framing is what it speaks of. */
static void take_greatest(struct gw_by_set *s, const struct gw_element *e)
{
    const bool own = s->row->of == GW_SET_FRAMING || e->kind == GW_LITE;
    if (e->outside || (s->of_lites && !own)) return;
    if (own && !s->of_lites) {
        s->of_lites = true;
        s->greatest[0] = s->greatest[1] = 0;
    }
    s->greatest[0] = fmax(s->greatest[0], e->inward_asd.pa);
    s->greatest[1] = fmax(s->greatest[1], -e->outward_asd.pa);
}

static double asd_of(const struct gw_required *row, double pa, struct gw_engine *engine)
{
    return row->level == GW_LEVEL_ASD ? pa : gw_to_asd((struct gw_strength){pa}, engine).pa;
}

/* What was written in one unit and read in another differs by the last bits alone: that is no other requirement. */
static double factor(double asked, double greatest)
{
    if (!(greatest > 0)) return 1;
    const double ratio = asked / greatest;
    return fabs(ratio - 1) < GW_HAIR ? 1 : ratio;
}

static void find_factors(struct gw_by_set *s, struct gw_engine *engine)
{
    s->asked[0] = asd_of(s->row, s->row->inward, engine);
    s->asked[1] = asd_of(s->row, s->row->outward, engine);
    for (int i = 0; i < 2; i++) s->factor[i] = factor(s->asked[i], s->greatest[i]);
}

void gw_scale_by_set(struct gw_element *e)
{
    const double in = e->by_set->factor[0], out = e->by_set->factor[1];
    e->inward.pa *= in;
    e->inward_asd.pa *= in;
    e->inward_deflection *= in;
    e->outward.pa *= out;
    e->outward_asd.pa *= out;
    e->outward_deflection *= out;
}

static void warn_of_nothing(struct gw_builder *b, const struct gw_by_set *s)
{
    if (!s->n_elements)
        gw_diag_node(b->diags, GW_WARNING, "no_place", "requires", s->row->node,
                     "%s asks nothing: no lite stands there", s->row->id);
}

void gw_take_by_set(struct gw_builder *b)
{
    struct gw_takeoff *t = b->takeoff;
    const struct gw_requirement_set *set = b->model->set;
    struct gw_engine engine;
    if (!set) return;
    gw_engine_init(&engine, b->model->tables, NULL);
    t->by_set.items = gw_alloc(b->arena, set->requires.n + 1, sizeof *t->by_set.items);
    for (size_t i = 0; i < set->requires.n; i++)
        if (strcmp(set->requires.items[i].check, "structural") == 0)
            t->by_set.items[t->by_set.n++] = (struct gw_by_set){.row = &set->requires.items[i]};
    struct gw_by_set **of = gw_alloc(b->arena, t->elements.n + 1, sizeof *of);
    for (size_t i = 0; i < t->elements.n; i++) {
        of[i] = row_of(t, &t->elements.items[i]);
        if (!of[i]) continue;
        of[i]->n_elements++;
        take_greatest(of[i], &t->elements.items[i]);
    }
    for (size_t i = 0; i < t->by_set.n; i++) {
        find_factors(&t->by_set.items[i], &engine);
        warn_of_nothing(b, &t->by_set.items[i]);
    }
    for (size_t i = 0; i < t->elements.n; i++) {
        struct gw_element *e = &t->elements.items[i];
        e->by_set = of[i];
        if (!of[i] || e->outside) continue;
        gw_scale_by_set(e);
        e->governs = gw_format(b->arena, "requirement set %s", of[i]->row->id);
        e->inward_by = e->outward_by = (struct gw_pressure_source){"requirement set", of[i]->row->id, "", NULL};
    }
}
