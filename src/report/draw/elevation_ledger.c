/* The ledger of an elevation: floors and rows named at its left, their figures at its right. Rows too near to each
 * other become one of their floor; floors with equal figures one of all of them. */
#include "report/draw/elevation.h"

#include <math.h>
#include <string.h>

enum { LEDGER_COLUMNS = 4 };
static const double COLUMN = 46, GAP = 8; /* pixels */
static const struct gw_lettering NAME = {.size = GW_LABEL_SIZE, .bold = true};
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering FIGURE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_END};
static const struct gw_lettering ROW_NAME = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_END};

/* Strips that one row of the ledger tells of. */
struct row {
    size_t low, high;
    const char *cells[LEDGER_COLUMNS];
};
struct rows {
    struct row *items;
    size_t n;
};

static const struct gw_grid_layer *layer_of(const struct elevation_frame *f)
{
    return &f->of->grid->layers[GW_SORT_LITE];
}

static void set_cells(const struct elevation_frame *f, struct row *row)
{
    const struct gw_grid_layer *layer = layer_of(f);
    const size_t classes = layer->axis->n_classes, n = (row->high - row->low) * classes;
    const struct gw_element **lites = gw_alloc(f->sheet->arena, n + 1, sizeof *lites);
    for (size_t i = 0; i < n; i++) lites[i] = &f->of->takeoff->elements.items[layer->groups[row->low * classes + i]];
    for (size_t c = 0; c < f->of->n_columns && c < LEDGER_COLUMNS; c++) {
        struct gw_text text;
        gw_text_init(&text, f->sheet->arena);
        f->of->cell(&text, f->of->context, lites, n, c);
        row->cells[c] = text.length ? text.at : "";
    }
}

static bool same_cells(const struct elevation_frame *f, const struct row *a, const struct row *b)
{
    for (size_t c = 0; c < f->of->n_columns && c < LEDGER_COLUMNS; c++)
        if (strcmp(a->cells[c], b->cells[c]) != 0) return false;
    return true;
}

/* A row a strip where there is room, else a floor; the parapet by itself. */
static bool belongs(const struct elevation_frame *f, const struct gw_grid_strip *a, const struct gw_grid_strip *b)
{
    return !f->every_line && a->story == b->story && a->parapet == b->parapet;
}

static struct rows rows_of(const struct elevation_frame *f)
{
    const struct gw_grid_layer *layer = layer_of(f);
    struct rows out = {gw_alloc(f->sheet->arena, layer->n_strips + 1, sizeof *out.items), 0};
    for (size_t i = 0; i < layer->n_strips;) {
        struct row row = {.low = i, .high = i + 1};
        while (row.high < layer->n_strips && belongs(f, &layer->strips[i], &layer->strips[row.high])) row.high++;
        set_cells(f, &row);
        struct row *last = out.n ? &out.items[out.n - 1] : NULL;
        const bool merge = last && !f->every_line && same_cells(f, last, &row) &&
                           layer->strips[last->low].parapet == layer->strips[i].parapet;
        if (merge) last->high = row.high;
        else out.items[out.n++] = row;
        i = row.high;
    }
    return out;
}

static bool put_free(const struct elevation_frame *f, struct gw_point at, const struct gw_lettering *font,
                     const char *text)
{
    const struct gw_box box = gw_lettering_box(font, at, text);
    if (!gw_canvas_is_free(f->sheet->canvas, &box)) return false;
    gw_canvas_text(f->sheet->canvas, at, font, text);
    return true;
}

static double middle_of(const struct elevation_frame *f, const struct row *row)
{
    const struct gw_grid_strip *strips = layer_of(f)->strips;
    const double top = gw_elevation_y(f, strips[row->high - 1].top),
                 bottom = gw_elevation_y(f, strips[row->low].bottom);
    return (top + bottom) / 2 + 0.36 * GW_LABEL_SIZE;
}

static const char *row_name(const struct elevation_frame *f, const struct row *row)
{
    const struct gw_grid_layer *layer = layer_of(f);
    const struct gw_grid_strip *first = &layer->strips[row->low], *last = &layer->strips[row->high - 1];
    const struct gw_element *e = &f->of->takeoff->elements.items[layer->groups[row->low * layer->axis->n_classes]];
    if (f->every_line) return e->lite ? gw_sheet_name(f->sheet, e->lite) : "";
    if (first->parapet) return "parapet";
    if (first->story == last->story) return gw_format(f->sheet->arena, "floor %d", first->story);
    return gw_format(f->sheet->arena, "floors %d to %d", first->story, last->story);
}

static void put_row(const struct elevation_frame *f, const struct row *row, double width_of_floors)
{
    const double y = middle_of(f, row), left = f->wall.right + GAP;
    const char *name = row_name(f, row);
    const bool fits = gw_lettering_width(&ROW_NAME, name) <= f->wall.left - GAP - SHEET_MARGIN - width_of_floors;
    const bool near_line = f->sheet->canvas->small && !f->every_line; /* the roof's runs on to its left */
    if (fits && !near_line) put_free(f, (struct gw_point){f->wall.left - GAP / 2, y}, &ROW_NAME, name);
    for (size_t c = 0; c < f->of->n_columns && c < LEDGER_COLUMNS; c++) {
        const struct gw_point at = {left + COLUMN * (double)(c + 1), y};
        if (*row->cells[c]) put_free(f, at, &FIGURE, row->cells[c]);
    }
}

static void put_heads(const struct elevation_frame *f)
{
    for (size_t c = 0; c < f->of->n_columns && c < LEDGER_COLUMNS; c++) {
        const double x = f->wall.right + GAP + COLUMN * (double)(c + 1);
        const struct gw_lettering bold = {.size = GW_LABEL_SIZE, .bold = true, .align = GW_ALIGN_END};
        gw_canvas_text(f->sheet->canvas, (struct gw_point){x, f->wall.top - 20}, &bold, f->of->heads[c][0]);
        gw_canvas_text(f->sheet->canvas, (struct gw_point){x, f->wall.top - 6}, &ROW_NAME, f->of->heads[c][1]);
    }
}

/* "Floor 3" above its line, its height below. */
static void put_level(const struct elevation_frame *f, double height, const char *name)
{
    const double y = gw_elevation_y(f, height), left = SHEET_MARGIN;
    if (!put_free(f, (struct gw_point){left, y - 3}, &NAME, name)) return;
    gw_canvas_line(f->sheet->canvas, (struct gw_point){left, y}, (struct gw_point){f->wall.left, y},
                   &(struct gw_look){.line = GW_RULE, .width = GW_LINE_FINE});
    put_free(f, (struct gw_point){left, y + GW_LABEL_SIZE}, &PLAIN, gw_sheet_place(f->sheet, height));
}

static double put_levels(const struct elevation_frame *f)
{
    enum { FIFTH = 5 };
    const struct gw_wall_lines *lines = &f->of->grid->lines;
    for (size_t i = 0; i < lines->n_floors; i++) {
        const bool shown = f->every_line || (i + 1) % FIFTH == 0 || i == 0 || i + 1 == lines->n_floors;
        if (shown) put_level(f, lines->floors[i], gw_format(f->sheet->arena, "Floor %zu", i + 1));
    }
    if (lines->has_roof && lines->roof > lines->bottom && lines->roof < lines->top) put_level(f, lines->roof, "roof");
    put_level(f, lines->top, "top");
    return gw_lettering_width(&NAME, "Floor 10");
}

void gw_elevation_ledger(const struct elevation_frame *f)
{
    const double floors = put_levels(f);
    const struct rows rows = rows_of(f);
    for (size_t i = 0; i < rows.n; i++) put_row(f, &rows.items[i], floors);
    put_heads(f);
}
