/* Readings where they were taken: the shape of the mark is the verdict, the number that of the list below. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { FLAGS = 8, FLAGS_ON_PAGE = 6, MARKS = 400 }; /* a page lists every reading besides */
static const enum sheet_mark MARK_OF[] = {[GW_ITEM_UNKNOWN] = MARK_ASK,
                                          [GW_ITEM_WITHIN] = MARK_SETTLED,
                                          [GW_ITEM_OUTSIDE_HOLDS] = MARK_IN_HAND,
                                          [GW_ITEM_NOT_MET] = MARK_STOP};

struct readings {
    const struct readings_picture *of;
    struct gw_arena *arena;
    enum gw_units shown;
    struct elevation_flag flags[FLAGS];
    struct elevation_mark *marks;
    size_t n_flags, n_marks, more, most_flags;
    long counts[4];
};

/* The strip of lites that the place names, else the whole story; false: neither is said. */
static bool heights_of(const struct gw_wall_grid *g, const struct gw_spot *s, double *bottom, double *top)
{
    const struct gw_grid_layer *layer = &g->layers[GW_SORT_LITE];
    bool any = false;
    for (size_t i = 0; i < layer->n_strips; i++) {
        const struct gw_grid_strip *strip = &layer->strips[i];
        if (strip->story != s->story || (s->row != GW_NO_INTEGER && strip->row != s->row)) continue;
        if (!any) *bottom = strip->bottom;
        *top = strip->top;
        any = true;
    }
    return any;
}

bool gw_elevation_spot(const struct gw_wall_grid *g, const struct gw_spot *s, double *x, double *y)
{
    double bottom = g->lines.bottom, top = g->lines.top, left = 0, right = g->x[g->n_columns];
    const bool line = s->line >= 0 && (size_t)s->line <= g->n_columns;
    const bool column = s->column >= 1 && (size_t)s->column <= g->n_columns;
    const bool high = heights_of(g, s, &bottom, &top);
    if (column) left = g->x[s->column - 1], right = g->x[s->column];
    if (line) left = right = g->x[s->line];
    *x = s->edge == GW_EDGE_LEFT ? left : s->edge == GW_EDGE_RIGHT ? right : (left + right) / 2;
    *y = s->edge == GW_EDGE_HEAD ? top : s->edge == GW_EDGE_SILL ? bottom : (bottom + top) / 2;
    return high || line || column;
}

static bool is_here(const struct readings *r, const struct gw_inspected *row)
{
    return row->result && !row->closed_by && !row->duplicate_of && row->spot.grid == r->of->grid;
}

static const char *read_words(const struct readings *r, const struct gw_inspected *row)
{
    const struct gw_message shown = GW_SAY(r->arena, "{}", gw_item_shown(row->item->id, row->reading->value));
    return gw_message_text(r->arena, &shown, r->shown);
}

static struct elevation_flag flag_of(const struct readings *r, const struct gw_inspected *row, double x, double y)
{
    struct gw_text left;
    gw_text_init(&left, r->arena);
    if (gw_given(row->result->remaining_worst)) {
        gw_text_add(&left, ", left ");
        gw_text_fixed(&left, floor(row->result->remaining_worst * 100) / 100, 2);
    }
    return (struct elevation_flag){
        .placed = true,
        .x = x,
        .y = y,
        .mark = MARK_OF[row->verdict],
        .first = gw_format(r->arena, "%s: %s%s", gw_item_verdict_name(row->verdict), gw_item_kinds[row->item->id].title,
                           left.at ? left.at : ""),
        .second = gw_format(r->arena, "%s: read %s, limit %s", row->place, read_words(r, row),
                            gw_said(&row->limit) ? gw_message_text(r->arena, &row->limit, r->shown) : "none")};
}

static bool marked_before(const struct readings *r, double x, double y)
{
    for (size_t i = 0; i < r->n_marks; i++)
        if (fabs(r->marks[i].x - x) < 1e-6 && fabs(r->marks[i].y - y) < 1e-6) return true;
    for (size_t i = 0; i < r->n_flags; i++)
        if (fabs(r->flags[i].x - x) < 1e-6 && fabs(r->flags[i].y - y) < 1e-6) return true;
    return false;
}

/* As the list below has them: what nothing is left of, or computed, then the least that is left. */
static int least_first(const void *a, const void *b)
{
    const struct gw_inspected *x = *(const struct gw_inspected *const *)a, *y = *(const struct gw_inspected *const *)b;
    const double p = gw_given(x->result->remaining_worst) ? x->result->remaining_worst / x->result->required : -1,
                 q = gw_given(y->result->remaining_worst) ? y->result->remaining_worst / y->result->required : -1;
    if (p < q || p > q) return p < q ? -1 : 1;
    return (x > y) - (x < y);
}

/* The gravest first, so that they have the flags; one mark a place. */
static void gather(struct readings *r, enum gw_item_verdict verdict)
{
    const size_t all = r->of->inspection->rows.n;
    const struct gw_inspected **here = gw_alloc(r->arena, all + 1, sizeof(void *));
    for (size_t i = 0; i < all; i++) {
        const struct gw_inspected *row = &r->of->inspection->rows.items[i];
        if (is_here(r, row) && row->verdict == verdict) here[r->counts[verdict]++] = row;
    }
    if (r->counts[verdict]) qsort(here, (size_t)r->counts[verdict], sizeof *here, least_first);
    for (long i = 0; i < r->counts[verdict]; i++) {
        const struct gw_inspected *row = here[i];
        double x, y;
        if (!gw_elevation_spot(r->of->grid, &row->spot, &x, &y) || marked_before(r, x, y)) continue;
        if (verdict != GW_ITEM_WITHIN && r->n_flags < r->most_flags) r->flags[r->n_flags++] = flag_of(r, row, x, y);
        else if (r->n_marks < MARKS) r->marks[r->n_marks++] = (struct elevation_mark){x, y, MARK_OF[verdict]};
        else r->more++;
    }
}

/* "Called out: those of which nothing or least is left; 7 more not met, 5 outside the limit, 14 unknown: the lists." */
static const char *not_called_out(const struct readings *r)
{
    static const enum gw_item_verdict verdicts[] = {GW_ITEM_NOT_MET, GW_ITEM_OUTSIDE_HOLDS, GW_ITEM_UNKNOWN};
    struct gw_text out;
    gw_text_init(&out, r->arena);
    for (size_t i = 0; i < sizeof verdicts / sizeof *verdicts; i++) {
        long left = r->counts[verdicts[i]];
        for (size_t f = 0; f < r->n_flags; f++) left -= r->flags[f].mark == MARK_OF[verdicts[i]];
        if (left)
            gw_text_addf(&out, "%s%ld %s%s", out.length ? ", " : "", left, out.length ? "" : "more ",
                         gw_item_verdict_name(verdicts[i]));
    }
    if (!out.length) return NULL;
    return gw_format(r->arena,
                     "Called out are those of which nothing is left or computed, then those with the least left. "
                     "Besides: %s; the report lists them.",
                     out.at);
}

enum gw_status gw_draw_elevation_readings(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                          struct gw_engine *engine)
{
    struct readings r = {
        .of = of, .arena = canvas->arena, .shown = shown, .most_flags = canvas->on_page ? FLAGS_ON_PAGE : FLAGS};
    const struct gw_info *project = r.of->results->answer->model->project.project;
    (void)engine;
    r.marks = gw_alloc(canvas->arena, MARKS, sizeof *r.marks);
    gather(&r, GW_ITEM_NOT_MET);
    gather(&r, GW_ITEM_OUTSIDE_HOLDS);
    gather(&r, GW_ITEM_UNKNOWN);
    gather(&r, GW_ITEM_WITHIN);
    const char *more = not_called_out(&r);
    const char *counts = gw_format(canvas->arena, "%ld not met, %ld outside and holding, %ld unknown, %ld within",
                                   r.counts[GW_ITEM_NOT_MET], r.counts[GW_ITEM_OUTSIDE_HOLDS],
                                   r.counts[GW_ITEM_UNKNOWN], r.counts[GW_ITEM_WITHIN]);
    const struct elevation e = {
        .takeoff = r.of->results->answer->takeoff,
        .grid = r.of->grid,
        .title = gw_format(canvas->arena, "Wall %s: readings", gw_safe(canvas->arena, r.of->grid->wall)),
        .second = gw_format(canvas->arena, "%s%s%s.", project->name, project->number ? ", " : "",
                            project->number ? project->number : ""),
        .caption = gw_format(canvas->arena, "Readings of %s: %s", r.of->inspection->system->name, counts),
        .note = "Square: not met. Triangle: outside, holds. Diamond: unknown. Circle: within. Story 2 is on Floor 2.",
        .described = gw_format(canvas->arena, "Elevation of wall %s, %s, with its readings: %s.", r.of->grid->wall,
                               gw_elevation_size(canvas->arena, r.of->grid), counts),
        .key = "Readings",
        .flags = r.flags,
        .n_flags = r.n_flags,
        .marks = r.marks,
        .n_marks = r.n_marks,
        .lines = &more,
        .n_lines = more != NULL};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}

/* Their list ------------------------------------------------------------------------------------------------------- */

static bool has_torques(const struct gw_inspection *in)
{
    for (size_t i = 0; i < in->rows.n; i++)
        if (in->rows.items[i].item->id == GW_ITEM_screw_torque && gw_given(in->rows.items[i].age)) return true;
    return false;
}

static bool has_readings(const struct gw_inspection *in, const struct gw_wall_grid *grid)
{
    for (size_t i = 0; i < in->rows.n; i++)
        if (in->rows.items[i].spot.grid == grid) return true;
    return false;
}

static int gravity(const struct gw_inspected *row)
{
    static const int ranks[] = {
        [GW_ITEM_WITHIN] = 0, [GW_ITEM_OUTSIDE_HOLDS] = 1, [GW_ITEM_UNKNOWN] = 2, [GW_ITEM_NOT_MET] = 3};
    return ranks[row->verdict];
}

static double left_of(const struct gw_inspected *row)
{
    const struct gw_item_result *r = row->result;
    return gw_given(r->remaining_worst) ? r->remaining_worst / r->required : (double)INFINITY;
}

/* The line of screws of a wall that is worst as it was read; NULL: none was read. */
static const struct gw_inspected *worst_screws(const struct readings *r)
{
    const struct gw_inspected *worst = NULL;
    for (size_t i = 0; i < r->of->inspection->rows.n; i++) {
        const struct gw_inspected *row = &r->of->inspection->rows.items[i];
        if (!is_here(r, row) || !row->with || !row->spot.screws) continue;
        const int more = worst ? gravity(row) - gravity(worst) : 1;
        if (more > 0 || (!more && left_of(row) < left_of(worst))) worst = row;
    }
    return worst;
}

static void add_screws(struct gw_pictures *out, struct gw_arena *arena, const struct readings_picture *of)
{
    const struct readings r = {.of = of, .arena = arena};
    const struct gw_inspected *worst = gw_has_plate_screws(of->inspection->system) ? worst_screws(&r) : NULL;
    if (worst)
        gw_picture_add_screws(out, arena,
                              &(struct screws_picture){of->results, of->grid, NULL, of->inspection, worst, NULL});
}

void gw_pictures_of_readings(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                             const struct gw_inspection *inspection)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    *out = (struct gw_pictures){.n = 0};
    for (size_t i = 0; i < t->n_walls; i++) {
        struct readings_picture *kept = gw_alloc(arena, 1, sizeof *kept);
        *kept = (struct readings_picture){results, inspection, t->grids.items[i]};
        if (!has_readings(inspection, kept->grid)) continue;
        const char *title = gw_format(arena, "Wall %s: readings", kept->grid->wall);
        gw_picture_add(out, arena, gw_format(arena, "readings:%s", gw_picture_word(arena, kept->grid->wall)),
                       &(struct gw_figure){title, title, gw_draw_elevation_readings, kept});
        add_screws(out, arena, kept);
    }
    struct readings_picture *all = gw_alloc(arena, 1, sizeof *all);
    *all = (struct readings_picture){results, inspection, NULL};
    if (has_torques(inspection))
        gw_picture_add(
            out, arena, "torques",
            &(struct gw_figure){"Torques against their age", "torques against their age", gw_draw_torques, all});
    gw_pictures_of_hung(out, arena, results, inspection);
}
