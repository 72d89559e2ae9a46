#include "judge/leaning.h"

#include "base/tolerance.h"
#include "judge/chain.h"
#include "judge/corner.h"
#include "judge/judge_internal.h"

static struct gw_leans *leans_on(struct gw_leaning *l, struct gw_arena *arena, const struct gw_element *on)
{
    for (size_t i = 0; i < l->n; i++)
        if (l->items[i].on == on) return &l->items[i];
    l->items = gw_grow(arena, l->items, l->n, &l->capacity, sizeof *l->items);
    l->items[l->n] = (struct gw_leans){.on = on};
    if (l->words) l->items[l->n].members = gw_alloc(arena, l->words, sizeof(uint64_t));
    return &l->items[l->n++];
}

enum { BITS = 64 };

/* One more piece does: of a lite the one that is being walked. */
static struct gw_leans *lean_on(struct gw_leaning *l, struct gw_arena *arena, const struct gw_element *on)
{
    struct gw_leans *leans = leans_on(l, arena, on);
    leans->pieces++;
    if (l->words) leans->members[l->walked / BITS] |= (uint64_t)1 << l->walked % BITS;
    return leans;
}

/* Pieces of mullions -------------------------------------------------------------------------------------------------
 */

/* One chain a wall. */
static const struct gw_chain *chain_of(struct gw_ask *ask, const struct gw_wall_lines *lines)
{
    struct gw_chain **kept = (struct gw_chain **)gw_memo_at(&ask->memory->chains, ask->arena, &lines, sizeof lines);
    const struct gw_chain *found = *kept;
    if (found) return found;
    struct gw_chain *chain = *kept = gw_alloc(ask->arena, 1, sizeof *chain);
    gw_chain_of(chain, ask->arena, lines);
    return chain;
}

static void lean_on_pieces(struct gw_leaning *l, struct gw_ask *ask, const struct gw_wall_grid *g, size_t line,
                           double low, double high)
{
    const struct gw_chain *chain = chain_of(ask, &g->lines);
    const struct gw_chain_hold hold = gw_chain_held(chain, low, high);
    const double from = chain->pieces[hold.from].low, to = chain->pieces[hold.to].high;
    const struct gw_grid_layer *mullions = &g->layers[GW_SORT_MULLION], *anchors = &g->layers[GW_SORT_ANCHOR];
    const unsigned class_of_line = mullions->axis->class_of[line];
    const struct gw_element *all = ask->takeoff->elements.items;
    for (size_t s = 0; s < mullions->n_strips; s++) {
        const struct gw_grid_strip *strip = &mullions->strips[s];
        if (strip->top < from + GW_HAIR_M || strip->bottom > to - GW_HAIR_M) continue;
        struct gw_leans *leans =
            lean_on(l, ask->arena, &all[mullions->groups[s * mullions->axis->n_classes + class_of_line]]);
        leans->splice = leans->splice || gw_chain_spliced(chain, &hold, strip->bottom, strip->top);
    }
    for (size_t s = 0; s < anchors->n_strips; s++) {
        const double level = g->lines.anchors[anchors->strips[s].member];
        if (level < from - GW_HAIR_M || level > to + GW_HAIR_M) continue;
        lean_on(l, ask->arena, &all[anchors->groups[s * anchors->axis->n_classes + anchors->axis->class_of[line]]]);
    }
}

/* At a corner the mullion is that of the wall that meets this one too, and stands on its anchors. */
static void lean_on_line(struct gw_leaning *l, struct gw_ask *ask, const struct gw_wall_grid *g, size_t line,
                         double low, double high)
{
    struct gw_corner_line met;
    lean_on_pieces(l, ask, g, line, low, high);
    if (!gw_corner_met(&met, ask->takeoff, g, line)) return;
    const double from = fmax(low, met.grid->lines.bottom), to = fmin(high, met.grid->lines.top);
    if (to > from + GW_HAIR_M) lean_on_pieces(l, ask, met.grid, met.line, from, to);
}

/* Lites --------------------------------------------------------------------------------------------------------------
 */

static void lean_horizontally(struct gw_leaning *l, struct gw_ask *ask, const struct gw_wall_grid *g, size_t row,
                              size_t column)
{
    for (size_t level = row; level <= row + 1; level++) {
        lean_on(l, ask->arena, gw_takeoff_member(ask->takeoff, g, GW_SORT_TRANSOM, level, column));
        lean_on(l, ask->arena, gw_takeoff_member(ask->takeoff, g, GW_SORT_TRANSOM_SCREW, level, column));
    }
}

static void lean_vertically(struct gw_leaning *l, struct gw_ask *ask, const struct gw_element *lite, size_t column)
{
    const struct gw_wall_grid *g = lite->grid;
    const struct gw_grid_strip *strip = &g->layers[GW_SORT_LITE].strips[lite->strip];
    for (size_t line = column; line <= column + 1; line++) {
        const struct gw_grid_layer *screws = &g->layers[GW_SORT_MULLION_SCREW];
        const unsigned group = screws->groups[lite->strip * screws->axis->n_classes + screws->axis->class_of[line]];
        lean_on(l, ask->arena, &ask->takeoff->elements.items[group]);
        lean_on_line(l, ask, g, line, strip->bottom, strip->top);
    }
}

static void of_lite(struct gw_leaning *l, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_grid_axis *axis = e->grid->layers[GW_SORT_LITE].axis;
    const size_t row = e->grid->layers[GW_SORT_LITE].strips[e->strip].member;
    const unsigned first = axis->first[e->place_class], end = axis->first[e->place_class + 1];
    l->words = (end - first + BITS - 1) / BITS;
    for (unsigned i = first; i < end; i++) {
        l->walked = i - first;
        lean_on(l, ask->arena, e);
        lean_horizontally(l, ask, e->grid, row, axis->members[i]);
        lean_vertically(l, ask, e, axis->members[i]);
    }
}

static void of_mullion(struct gw_leaning *l, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_grid_axis *axis = e->grid->layers[GW_SORT_MULLION].axis;
    lean_on_line(l, ask, e->grid, axis->members[axis->first[e->place_class]], e->bottom, e->top);
}

const struct gw_leaning *gw_leaning_of(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_judge_memory *m = ask->memory;
    const bool kept = gw_is_taken_off(ask, e);
    if (!m->leaning) m->leaning = gw_alloc(ask->arena, ask->takeoff->elements.n + 1, sizeof *m->leaning);
    if (kept && m->leaning[e->index]) return m->leaning[e->index];
    struct gw_leaning *l = gw_alloc(ask->arena, 1, sizeof *l);
    if (e->kind == GW_LITE) of_lite(l, ask, e);
    else of_mullion(l, ask, e);
    if (kept) m->leaning[e->index] = l;
    return l;
}

/* Beside framing and screws ------------------------------------------------------------------------------------------
 */

static void add_lite(struct gw_leaning *out, struct gw_ask *ask, const struct gw_wall_grid *g, size_t strip,
                     size_t column)
{
    const struct gw_grid_layer *lites = &g->layers[GW_SORT_LITE];
    if (strip >= lites->n_strips || column >= lites->axis->n_places) return;
    const unsigned group = lites->groups[strip * lites->axis->n_classes + lites->axis->class_of[column]];
    lean_on(out, ask->arena, &ask->takeoff->elements.items[group]);
}

void gw_lites_beside(struct gw_leaning *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_grid_layer *layer = &e->grid->layers[e->sort], *lites = &e->grid->layers[GW_SORT_LITE];
    const struct gw_grid_axis *axis = layer->axis;
    const struct gw_grid_strip *own = &layer->strips[e->strip];
    for (unsigned i = axis->first[e->place_class]; i < axis->first[e->place_class + 1]; i++) {
        const size_t place = axis->members[i];
        for (size_t s = 0; s < lites->n_strips; s++) {
            const struct gw_grid_strip *strip = &lites->strips[s];
            const bool beside =
                axis->lines ? s == e->strip : strip->member == own->member || strip->member + 1 == own->member;
            if (!beside) continue;
            add_lite(out, ask, e->grid, s, place);
            if (axis->lines && place > 0) add_lite(out, ask, e->grid, s, place - 1);
        }
    }
}
