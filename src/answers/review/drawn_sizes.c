/* Dimensions of the wall that drawings give: what a longer span, a wider module or another section comes to. */
#include "drawn.h"
#include "stretched.h"

#include "base/tolerance.h"

#include "tables_data.h"

#include <string.h>

/* Dimensions that were taken off -------------------------------------------------------------------------------------
 */

static bool is_at(const struct gw_element *e, const struct gw_shop_value *d)
{
    return strcmp(e->wall, d->wall) == 0 && (d->zone == GW_NO_INTEGER || e->zone == d->zone);
}

enum { TAKEN_SAID = 4 };
struct taken {
    double least, most;      /* absent: none */
    bool is_one;             /* the drawn value is one of them */
    double each[TAKEN_SAID]; /* from the least; the first few that differ */
    size_t n;                /* of those that differ: more than TAKEN_SAID, or that */
};

/* Kept in order; those that are one but for rounding are said once. */
static void note(struct taken *t, double here, double close)
{
    size_t at = 0;
    if (t->n > TAKEN_SAID) return;
    while (at < t->n && t->each[at] < here - close) at++;
    if (at < t->n && t->each[at] <= here + close) return;
    if (t->n++ == TAKEN_SAID) return;
    for (size_t i = t->n - 1; i > at; i--) t->each[i] = t->each[i - 1];
    t->each[at] = here;
}

/* m, to which drawings are rounded. */
static double drawn_to(const struct reviewing *r)
{
    return r->ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_DRAWING].apart_m;
}

static void take(struct taken *t, double here, double drawn, double close)
{
    note(t, here, close);
    if (!(t->least <= here)) t->least = here;
    if (!(t->most >= here)) t->most = here;
    t->is_one = t->is_one || fabs(here - drawn) <= close;
}

static struct taken spans_of(const struct reviewing *r, const struct gw_shop_value *d)
{
    struct taken t = {.least = GW_ABSENT, .most = GW_ABSENT};
    const struct gw_takeoff *off = r->ask->takeoff;
    for (size_t i = 0; i < off->elements.n; i++) {
        const struct gw_element *e = &off->elements.items[i];
        if (e->kind == GW_MULLION && !e->overhang && is_at(e, d)) take(&t, e->span, d->read.number, drawn_to(r));
    }
    return t;
}

static struct taken modules_of(const struct reviewing *r, const struct gw_shop_value *d)
{
    struct taken t = {.least = GW_ABSENT, .most = GW_ABSENT};
    const struct gw_takeoff *off = r->ask->takeoff;
    for (size_t i = 0; i < off->elements.n; i++) {
        const struct gw_element *e = &off->elements.items[i];
        if (e->kind == GW_LITE && is_at(e, d)) take(&t, e->width, d->read.number, drawn_to(r));
    }
    return t;
}

/* The mullion of a corner is one for both walls: what is drawn of the one is built on the other. */
static bool is_across_corner(const struct gw_element *e, const struct gw_shop_value *d)
{
    const bool stands = e->kind == GW_MULLION || e->kind == GW_ANCHOR;
    return stands && e->corner && e->meets && strcmp(e->meets, d->wall) == 0 &&
           (d->zone == GW_NO_INTEGER || e->zone == d->zone);
}

static bool meets(const struct gw_wall_grid *grid, const char *wall)
{
    return (grid->left_meets && strcmp(grid->left_meets, wall) == 0) ||
           (grid->right_meets && strcmp(grid->right_meets, wall) == 0);
}

/* Anchors of walls that share a mullion stand at its levels: a taller story is one of both, where the other's is not as
 * tall already. NULL: no such wall. */
static const struct gw_takeoff *stretched(struct reviewing *r, const struct gw_shop_value *d, double up, double across)
{
    const struct gw_takeoff *own = r->ask->takeoff;
    const struct gw_takeoff *out = gw_takeoff_stretched(r->arena, own, d->wall, up, across);
    const double drawn = up * spans_of(r, d).most;
    for (size_t i = 0; out && up != 1 && i < own->grids.n; i++) {
        struct gw_shop_value other = *d;
        other.wall = own->grids.items[i]->wall;
        if (!meets(own->grids.items[i], d->wall) || strcmp(other.wall, d->wall) == 0) continue;
        const double there = drawn / spans_of(r, &other).most;
        if (there > 1) out = gw_takeoff_stretched(r->arena, out, other.wall, there, 1);
    }
    return out;
}

static bool is_opening(const struct gw_element *e) { return e->grid && e->grid->opening; }

/* What is built as drawn: of a longer span mullions and anchors, of openings everything, as of a wider module. The
 * mullion of a corner is one for both walls. */
static bool is_built_so(const void *drawn, const struct gw_element *e)
{
    const struct gw_shop_value *d = drawn;
    const bool span = d->what == GW_SHOP_SPAN || d->what == GW_SHOP_ANCHOR_SPACING;
    const bool stands = e->kind == GW_MULLION || e->kind == GW_ANCHOR || is_opening(e);
    return is_across_corner(e, d) || (is_at(e, d) && (stands || !span));
}

/* Why it is not shown so, and whom to ask. */
static void ask_why(struct judged_value *v, const struct effect *effect)
{
    const struct gw_finding *f = effect->first;
    if (v->consequence != GW_IT_IS_NOT_SHOWN || !f || gw_said(&v->ask)) return;
    v->ask = gw_said(&f->question) ? f->question : f->message;
}

static bool effect_of_size(struct effect *out, struct reviewing *r, const struct gw_shop_value *d, double factor)
{
    const bool module = d->what == GW_SHOP_MODULE;
    const struct gw_takeoff *takeoff = stretched(r, d, module ? 1 : factor, module ? factor : 1);
    return takeoff && gw_bench_judge_partly(out, r, takeoff, r->bench.looks, is_built_so, d);
}

/* "13 ft or 16 ft": nothing between them. Of many, from the least to the most. */
static struct gw_message needed_words(struct reviewing *r, const struct taken *t, enum gw_dim dim)
{
    struct gw_message all = {0};
    if (t->n <= TAKEN_SAID) {
        for (size_t i = 0; i < t->n; i++) {
            const struct gw_message one = GW_SAY(r->arena, "{}", gw_of_quantity(dim, t->each[i]));
            all = gw_say_both(r->arena, &all, i + 1 < t->n ? ", " : " or ", &one);
        }
        return all;
    }
    return GW_SAY(r->arena, "one of those from {} to {}", gw_of_quantity(dim, t->least), gw_of_quantity(dim, t->most));
}

/* No wall on a grid is by that name. */
static bool of_schedule(const struct reviewing *r, const struct gw_shop_value *d)
{
    return !gw_takeoff_wall(r->ask->takeoff, d->wall);
}

void gw_judge_drawn_size(struct judged_value *v, struct reviewing *r)
{
    const struct gw_shop_value *d = v->drawn;
    const bool module = d->what == GW_SHOP_MODULE;
    const struct taken t = module ? modules_of(r, d) : spans_of(r, d);
    struct effect effect = {.worst = GW_PASS};
    v->basis = GW_PLAINLY(module ? "lites of that wall as the project has them"
                                 : "mullions of that wall between their anchors, as the project has them");
    if (of_schedule(r, d))
        v->basis = GW_PLAINLY(module ? "lites of those openings as their schedule has them"
                                     : "mullions of those openings between their anchors, as their schedule has them");
    if (!gw_given(t.most)) {
        v->consequence = GW_IT_IS_NOT_SHOWN;
        v->effect = GW_PLAINLY("nothing of that kind was taken off there");
        return;
    }
    v->needed = needed_words(r, &t, GW_LENGTH);
    v->consequence = t.is_one ? GW_CONSEQUENCES : GW_IT_DIFFERS;
    if (t.is_one) return;
    if (d->read.number < t.least) v->effect = GW_PLAINLY("less than any that was taken off");
    else if (d->read.number < t.most) v->ask = GW_PLAINLY("which of these is drawn so? It is none of them");
    if (d->read.number <= t.most) return;
    if (!effect_of_size(&effect, r, d, d->read.number / t.most)) {
        v->consequence = GW_IT_IS_NOT_SHOWN;
        v->effect = GW_PLAINLY("greater than was taken off: change the project and check it");
        return;
    }
    v->consequence = gw_consequence_of(&effect, GW_IT_DIFFERS);
    v->effect = gw_said(&effect.said) ? effect.said : GW_PLAINLY("judged so: nothing gets worse");
    ask_why(v, &effect);
    if (effect.first) v->evidence = effect.first->evidence;
}

/* Depth of the mullion -----------------------------------------------------------------------------------------------
 */

/* Tests were of the other section, and say nothing of a shallower one. */
static struct look with_depth(const struct reviewing *r, double depth)
{
    const struct gw_member_spec *m = r->judged->mullion;
    struct look look = r->bench.looks[0];
    look.mullion_depth = depth;
    if (m && m->tube && depth >= m->tube->depth) return look;
    look.other.parts |= (uint32_t)1 << GW_PART_mullion;
    look.other_all = true;
    return look;
}

static bool has_corner(const struct reviewing *r, const struct gw_shop_value *d)
{
    const struct gw_takeoff *t = r->ask->takeoff;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_MULLION && e->corner && is_at(e, d)) return true;
    }
    return false;
}

/* What to ask of the insert of a mullion that is drawn so; one that does not fit as it is was asked of elsewhere. */
static struct gw_message insert_as_drawn(struct reviewing *r, const struct gw_member_spec *own, double depth)
{
    struct gw_member_spec drawn = *own;
    struct gw_tube tube = *own->tube;
    tube.depth = depth;
    drawn.tube = &tube;
    if (gw_insert_too_deep(own)) return GW_PLAINLY(NULL);
    return gw_ask_if_it_fits(r, &drawn);
}

/* As deep as the others it is drawn with them. */
static bool is_drawn_alike(const struct gw_member_spec *corner, const struct gw_member_spec *m)
{
    return corner && corner->tube && fabs(corner->tube->depth - m->tube->depth) <= GW_HAIR_M;
}

/* With those options, at the drawn wall and zone. */
static bool stands_there(const struct reviewing *r, const struct gw_shop_value *d, const struct gw_system *with)
{
    const struct gw_takeoff *t = r->ask->takeoff;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_MULLION && is_at(e, d) && gw_built_at(r, e) == with) return true;
    }
    return false;
}

/* As the system has it, or as an option that the project takes reinforces it: judged with that insert, whether it fits
 * or not. */
static void ask_of_inserts(struct judged_value *v, struct reviewing *r)
{
    struct gw_message ask = {0};
    for (size_t i = 0; i < r->built.n && !gw_said(&ask); i++) {
        const struct gw_system *with = r->built.items[i].system;
        if (!with->mullion || !with->mullion->tube || !stands_there(r, v->drawn, with)) continue;
        ask = insert_as_drawn(r, with->mullion, v->drawn->read.number);
        if (!gw_said(&ask) && has_corner(r, v->drawn) && is_drawn_alike(with->corner_mullion, with->mullion)) {
            ask = insert_as_drawn(r, with->corner_mullion, v->drawn->read.number);
            if (gw_said(&ask)) ask = GW_SAY(r->arena, "corner_mullion: {}", gw_of_message(&ask));
        }
    }
    if (!gw_said(&ask)) return;
    v->ask = gw_say_both(r->arena, &v->ask, "; ", &ask);
    if (v->consequence <= GW_IT_IS_NOT_SHOWN) return;
    v->consequence = GW_IT_IS_NOT_SHOWN;
    v->evidence = GW_EVIDENCE_NONE;
}

void gw_judge_drawn_depth(struct judged_value *v, struct reviewing *r)
{
    const struct gw_member_spec *m = r->judged->mullion;
    const double drawn = v->drawn->read.number, here = m && m->tube ? m->tube->depth : GW_ABSENT;
    struct look *look = gw_alloc(r->arena, 1, sizeof *look);
    struct effect effect = {.worst = GW_PASS};
    v->basis = GW_SAY(r->arena, "mullion of {}", gw_of_text(r->judged->name));
    if (!gw_given(here)) {
        v->consequence = GW_IT_IS_NOT_SHOWN;
        v->needed = GW_PLAINLY("the depth of the section, which the system file does not give");
        v->ask = GW_PLAINLY("which section is drawn? Ask the manufacturer (mullion: tube)");
        return;
    }
    v->needed = GW_SAY(r->arena, "{}", gw_of_quantity(GW_THICKNESS, here));
    v->consequence = GW_CONSEQUENCES;
    if (fabs(drawn - here) <= drawn_to(r)) return;
    *look = with_depth(r, drawn);
    gw_bench_judge_partly(&effect, r, r->ask->takeoff, look, is_built_so, v->drawn);
    v->consequence = gw_consequence_of(&effect, GW_IT_DIFFERS);
    v->effect = effect.said;
    if (effect.first) v->evidence = effect.first->evidence;
    ask_why(v, &effect);
    ask_of_inserts(v, r);
}

/* Together --------------------------------------------------------------------------------------------------------- */

/* A wall with all that is drawn otherwise of it. */
struct other_size {
    double up, across, depth; /* factors; m, absent: as the system has it */
    size_t n;                 /* of the three that are other */
};

static void add_size(struct other_size *out, const struct reviewing *r, const struct judged_value *v)
{
    const struct gw_shop_value *d = v->drawn;
    const double drawn = d->read.number;
    const bool module = d->what == GW_SHOP_MODULE;
    if (v->consequence != GW_IT_DIFFERS) return;
    if (d->what == GW_SHOP_MULLION_DEPTH) {
        out->n += !gw_given(out->depth);
        out->depth = fmin(drawn, out->depth); /* fmin takes what is given */
        return;
    }
    const struct taken t = module ? modules_of(r, d) : spans_of(r, d);
    double *factor = module ? &out->across : &out->up;
    if (!gw_given(t.most) || drawn <= t.most) return;
    out->n += *factor <= 1;
    *factor = fmax(*factor, drawn / t.most);
}

static bool is_size(const struct gw_shop_value *d) { return d->what != GW_SHOP_ITEM; }

static struct other_size size_of(const struct reviewing *r, const struct judged_value *list, size_t n, size_t of)
{
    struct other_size out = {1, 1, GW_ABSENT, 0};
    for (size_t i = 0; i < n; i++)
        if (is_size(list[i].drawn) && gw_drawn_at_one_place(list[i].drawn, list[of].drawn)) add_size(&out, r, &list[i]);
    return out;
}

/* Of several things drawn, all that is there. */
static bool is_there(const void *drawn, const struct gw_element *e)
{
    return is_at(e, drawn) || is_across_corner(e, drawn);
}

static bool effect_of_all(struct effect *out, struct reviewing *r, const struct gw_shop_value *d,
                          const struct other_size *size)
{
    const struct gw_takeoff *takeoff = stretched(r, d, size->up, size->across);
    struct look *look = gw_alloc(r->arena, 1, sizeof *look);
    *look = gw_given(size->depth) ? with_depth(r, size->depth) : r->bench.looks[0];
    return takeoff && gw_bench_judge_partly(out, r, takeoff, look, is_there, d);
}

void gw_judge_sizes_together(struct judged_value *list, struct reviewing *r, size_t n)
{
    struct judged_value *joint = gw_alloc(r->arena, n + 1, sizeof *joint);
    memcpy(joint, list, n * sizeof *joint);
    for (size_t i = 0; i < n; i++) {
        struct effect effect = {.worst = GW_PASS};
        if (!is_size(list[i].drawn) || list[i].consequence != GW_IT_DIFFERS) continue;
        const struct other_size size = size_of(r, list, n, i);
        if (size.n < 2 || !effect_of_all(&effect, r, list[i].drawn, &size)) continue;
        const enum gw_consequence together = gw_consequence_of(&effect, GW_IT_DIFFERS);
        if (together >= list[i].consequence) continue;
        joint[i].consequence = together;
        joint[i].effect =
            GW_SAY(r->arena, "with what else is drawn otherwise of that wall: {}", gw_of_message(&effect.said));
        if (effect.first) joint[i].evidence = effect.first->evidence;
        joint[i].ask = (struct gw_message){0};
        ask_why(&joint[i], &effect);
    }
    memcpy(list, joint, n * sizeof *joint);
}
