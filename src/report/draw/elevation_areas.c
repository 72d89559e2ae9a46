/* Lites that are filled alike and stand beside or above each other, as one area: runs up a column first, then across.
 * Never over the roof line or the limit of a zone. */
#include "report/draw/elevation.h"

#include <math.h>

static const struct gw_grid_layer *lites_of(const struct elevation *of) { return &of->grid->layers[GW_SORT_LITE]; }

static const struct gw_element *lite_at(const struct elevation *of, size_t strip, size_t place)
{
    const struct gw_grid_layer *layer = lites_of(of);
    return &of->takeoff->elements.items[layer->groups[strip * layer->axis->n_classes + layer->axis->class_of[place]]];
}

/* White where the wall has no fills. */
static const struct elevation_class *class_at(const struct elevation *of, size_t class_)
{
    static const struct elevation_class plain = {"wall", {.fill = GW_PAPER}, NULL, MARK_NONE, false};
    return of->classes ? &of->classes[class_] : &plain;
}

static bool alike(const struct elevation_area *a, const struct elevation_area *b)
{
    return a->class_ == b->class_ && a->zone == b->zone && a->parapet == b->parapet;
}

static struct elevation_area one(const struct elevation *of, size_t strip, size_t place)
{
    const struct gw_element *e = lite_at(of, strip, place);
    const size_t class_ = of->class_at   ? of->class_at(of->context, e, place)
                          : of->class_of ? of->class_of(of->context, e)
                                         : 0;
    return (struct elevation_area){.class_ = class_,
                                   .zone = e->zone,
                                   .parapet = e->parapet,
                                   .from = place,
                                   .to = place + 1,
                                   .low = strip,
                                   .high = strip + 1};
}

/* Grows the area that ends where this run begins and is as high. */
static bool joined(struct elevation_areas *areas, size_t first, const struct elevation_area *run)
{
    for (size_t i = areas->n; i-- > first;) {
        struct elevation_area *a = &areas->items[i];
        if (a->to != run->from || a->low != run->low || a->high != run->high || !alike(a, run)) continue;
        a->to = run->to;
        return true;
    }
    return false;
}

struct elevation_areas gw_elevation_areas(const struct elevation *of, struct gw_arena *arena)
{
    struct elevation_areas out = {NULL, 0, 0};
    const size_t n = lites_of(of)->n_strips;
    for (size_t place = 0; place < of->grid->n_columns; place++) {
        for (size_t strip = 0; strip < n;) {
            struct elevation_area run = one(of, strip++, place), next;
            while (strip < n && (next = one(of, strip, place), alike(&run, &next))) run.high = ++strip;
            if (joined(&out, 0, &run)) continue;
            out.items = gw_grow(arena, out.items, out.n, &out.capacity, sizeof *out.items);
            out.items[out.n++] = run;
        }
    }
    return out;
}

static struct gw_box box_of(const struct elevation_frame *f, const struct elevation_area *a)
{
    const struct gw_grid_strip *strips = lites_of(f->of)->strips;
    return (struct gw_box){gw_elevation_x(f, f->of->grid->x[a->from]), gw_elevation_y(f, strips[a->high - 1].top),
                           gw_elevation_x(f, f->of->grid->x[a->to]), gw_elevation_y(f, strips[a->low].bottom)};
}

static void upright(const struct elevation_frame *f, const struct gw_box *box, double x, const struct gw_look *look)
{
    gw_canvas_line(f->sheet->canvas, (struct gw_point){x, box->top}, (struct gw_point){x, box->bottom}, look);
}

static void level(const struct elevation_frame *f, const struct gw_box *box, double y, const struct gw_look *look)
{
    gw_canvas_line(f->sheet->canvas, (struct gw_point){box->left, y}, (struct gw_point){box->right, y}, look);
}

/* Columns and rows within an area, as fine as the scale allows. Within one pane that the roof cuts no line is met: the
 * parts are areas of their own. */
static void lines_within(const struct elevation_frame *f, const struct elevation_area *a)
{
    enum { TENTH = 10 };
    const struct gw_box box = box_of(f, a);
    const struct gw_grid_strip *strips = lites_of(f->of)->strips;
    const struct gw_look look = {.line = class_at(f->of, a->class_)->dark ? GW_PAPER : GW_INK, .width = GW_LINE_FINE};
    for (size_t i = a->from + 1; i < a->to; i++)
        if (f->every_line || (f->every_tenth && i % TENTH == 0))
            upright(f, &box, gw_elevation_x(f, f->of->grid->x[i]), &look);
    for (size_t i = a->low + 1; i < a->high; i++)
        if (f->every_line || (f->every_tenth && strips[i].row == 1))
            level(f, &box, gw_elevation_y(f, strips[i].bottom), &look);
}

void gw_elevation_fill(const struct elevation_frame *f, const struct elevation_areas *areas)
{
    for (size_t i = 0; i < areas->n; i++) {
        const struct gw_box box = box_of(f, &areas->items[i]);
        gw_canvas_rectangle(f->sheet->canvas, &box, &class_at(f->of, areas->items[i].class_)->look);
    }
    for (size_t i = 0; i < areas->n; i++) {
        const struct gw_box box = box_of(f, &areas->items[i]);
        lines_within(f, &areas->items[i]);
        gw_canvas_rectangle(f->sheet->canvas, &box, &(struct gw_look){.line = GW_INK, .width = GW_LINE_FINE});
    }
}

/* Words on the largest areas of each class that have room for them. */
static double size_of(const struct gw_box *box) { return (box->right - box->left) * (box->bottom - box->top); }

static bool is_among_largest(const struct elevation_frame *f, const struct elevation_areas *areas, size_t i)
{
    enum { PLATES = 2 };
    const struct gw_box own = box_of(f, &areas->items[i]);
    size_t larger = 0;
    for (size_t k = 0; k < areas->n; k++) {
        const struct gw_box other = box_of(f, &areas->items[k]);
        const bool before = size_of(&other) > size_of(&own) || (k < i && !(size_of(&own) > size_of(&other)));
        larger += areas->items[k].class_ == areas->items[i].class_ && before;
    }
    return larger < PLATES;
}

void gw_elevation_plates(const struct elevation_frame *f, const struct elevation_areas *areas)
{
    enum { MANY = 400 }; /* areas: there is no room for words then, and no time to compare each with each */
    for (size_t i = 0; i < areas->n && areas->n < MANY; i++) {
        const struct elevation_class *c = class_at(f->of, areas->items[i].class_);
        const struct gw_box box = box_of(f, &areas->items[i]);
        if (c->plate && is_among_largest(f, areas, i)) gw_sheet_plate(f->sheet, &box, c->mark, c->plate);
    }
}
