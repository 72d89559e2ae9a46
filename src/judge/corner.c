#include "judge/corner.h"

#include "judge/judge_internal.h"

/* Lines --------------------------------------------------------------------------------------------------------------
 */

struct gw_corner_search gw_corner_of(const struct gw_ask *ask, const struct gw_element *e)
{
    return (struct gw_corner_search){ask->takeoff, e, 0};
}

static size_t own_line(const struct gw_element *e)
{
    const struct gw_grid_axis *axis = e->grid->layers[e->sort].axis;
    return axis->members[axis->first[e->place_class]];
}

/* Seen from outside a left end meets a right one. */
bool gw_corner_met(struct gw_corner_line *out, const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                   size_t line)
{
    const char *name = line == 0 ? grid->left_meets : line == grid->n_columns ? grid->right_meets : NULL;
    const struct gw_wall_grid *met = name ? gw_takeoff_wall(takeoff, name) : NULL;
    if (met) *out = (struct gw_corner_line){met, line ? 0 : met->n_columns};
    return met != NULL;
}

/* A corner end of the building of which nothing says what meets it. */
static bool free_line(const struct gw_corner_line *line, const struct gw_element *e)
{
    const struct gw_wall_grid *g = line->grid;
    const double beyond = line->line ? g->right_corner : g->left_corner;
    const bool named = line->line ? g->right_meets : g->left_meets;
    const bool own = g == e->grid && line->line == own_line(e);
    return g->building == e->building && beyond < GW_HAIR_M && !named && !own;
}

bool gw_corner_next(struct gw_corner_search *search, struct gw_corner_line *out)
{
    const struct gw_takeoff *t = search->takeoff;
    if (!search->e->corner) return false;
    if (search->e->meets) return !search->at++ && gw_corner_met(out, t, search->e->grid, own_line(search->e));
    while (search->at < 2 * t->n_walls) {
        const struct gw_wall_grid *g = t->grids.items[search->at / 2];
        *out = (struct gw_corner_line){g, search->at++ % 2 ? g->n_columns : 0};
        if (free_line(out, search->e)) return true;
    }
    return false;
}

/* Mullions -----------------------------------------------------------------------------------------------------------
 */

static void take(struct gw_corner_face *face, const struct gw_stretch *s, const struct gw_element *o)
{
    if (!gw_said(&face->fault)) face->fault = s->fault;
    if (s->forces.moment > face->moment || s->forces.shear > face->shear) face->wall = o->wall;
    face->moment = fmax(face->moment, s->forces.moment);
    face->shear = fmax(face->shear, s->forces.shear);
    face->splice_shear = fmax(face->splice_shear, s->forces.splice_shear);
}

/* Every stretch of the other line beside this one: the largest of each, all at once. */
static void take_line(struct gw_corner_face *face, struct gw_ask *ask, const struct gw_corner_line *line,
                      const struct gw_element *e)
{
    const struct gw_grid_layer *layer = &line->grid->layers[GW_SORT_MULLION];
    const double low = e->parapet ? e->top - e->span : e->bottom, high = e->parapet ? e->top : e->bottom + e->span;
    for (size_t i = 0; i < layer->n_strips; i++) {
        const struct gw_grid_strip *strip = &layer->strips[i];
        if (strip->top < low + GW_HAIR_M || strip->bottom > high - GW_HAIR_M) continue;
        const unsigned place_class = layer->axis->class_of[line->line];
        const struct gw_element *o =
            &ask->takeoff->elements.items[layer->groups[i * layer->axis->n_classes + place_class]];
        gw_used_merge(&ask->engine.used, &o->used);
        take(face, gw_stretch_of(ask, o), o);
    }
}

struct gw_corner_face gw_corner_face_of(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_corner_face face = {.moment = 0};
    struct gw_corner_search search = gw_corner_of(ask, e);
    struct gw_corner_line line;
    if (!e->corner) return face;
    if (!e->meets) take(&face, gw_stretch_of(ask, e), e);
    face.wall = NULL;
    while (gw_corner_next(&search, &line)) take_line(&face, ask, &line, e);
    if (e->meets) face.wall = e->meets;
    return face;
}

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

static const struct gw_element *anchor_beside(struct gw_ask *ask, const struct gw_corner_line *line,
                                              const struct gw_element *e)
{
    return gw_takeoff_held(ask->takeoff, line->grid, GW_SORT_ANCHOR, line->line, gw_anchor_level(e));
}

/* Derived as one's own alone. */
static struct gw_anchor_load load_of(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_trace *trace = ask->engine.trace;
    struct gw_anchor_load load;
    ask->engine.trace = NULL;
    gw_anchor_load_of(&load, ask, e);
    ask->engine.trace = trace;
    return load;
}

/* One mullion hangs on one row of anchors. */
static struct gw_message ask_where(struct gw_ask *ask, const struct gw_element *e, const struct gw_element *o)
{
    if (!e->meets || fabs(gw_anchor_level(e) - gw_anchor_level(o)) < GW_HAIR_M) return (struct gw_message){0};
    return GW_SAY(ask->arena,
                  "the mullion of the corner is one with that of {}, which has no anchor at {}: which anchors hold it? "
                  "Ask the manufacturer's engineer (walls: anchors)",
                  gw_of_text(o->wall), gw_of_quantity(GW_LENGTH, gw_anchor_level(e)));
}

void gw_corner_load(struct gw_anchor_load *load, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_corner_search search = gw_corner_of(ask, e);
    struct gw_corner_line line;
    while (gw_corner_next(&search, &line)) {
        const struct gw_element *o = anchor_beside(ask, &line, e);
        if (!o) continue; /* that wall does not reach there */
        const struct gw_anchor_load other = load_of(ask, o);
        if (!gw_said(&load->fault)) load->fault = ask_where(ask, e, o);
        if (!gw_said(&load->fault)) load->fault = other.fault;
        load->inward = fmax(load->inward, other.inward);
        load->outward = fmax(load->outward, other.outward);
        load->inward_strength = fmax(load->inward_strength, other.inward_strength);
        load->outward_strength = fmax(load->outward_strength, other.outward_strength);
    }
}

/* m2 of wall whose wind the anchor takes. */
static double loaded_area(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_mullion_anchor h;
    struct gw_message why;
    return gw_anchor_holds(&h, &why, ask, e) ? e->width * (h.below + h.above) : 0;
}

static double part_of(double other, double own) { return own > 0 ? other / own : 0; }

double gw_corner_faces(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_corner_search search = gw_corner_of(ask, e);
    struct gw_corner_line line;
    double other = e->corner && !e->meets ? 1 : 0;
    while (gw_corner_next(&search, &line)) {
        const struct gw_element *o = anchor_beside(ask, &line, e);
        if (!o) continue;
        other = fmax(other, part_of(load_of(ask, o).area, load_of(ask, e).area));
        other = fmax(other, part_of(loaded_area(ask, o), loaded_area(ask, e)));
    }
    return 1 + other;
}

/* Told twice ---------------------------------------------------------------------------------------------------------
 */

const struct gw_element *gw_corner_twin(const struct gw_takeoff *takeoff, const struct gw_element *e)
{
    struct gw_corner_line line;
    if (!e->meets || !gw_corner_met(&line, takeoff, e->grid, own_line(e))) return NULL;
    const double height = e->sort == GW_SORT_ANCHOR ? gw_anchor_level(e) : (e->bottom + e->top) / 2;
    return gw_takeoff_held(takeoff, line.grid, e->sort, line.line, height);
}

struct gw_message gw_corner_words(struct gw_ask *ask, const struct gw_element *e, const char *wall)
{
    if (!e->corner) return GW_PLAINLY("");
    if (!wall) return GW_PLAINLY("corner: both faces at once, alike");
    return GW_SAY(ask->arena, "corner: both faces at once, {} {}",
                  gw_of_text(e->meets ? "the other is" : "the other as at"), gw_of_text(wall));
}
