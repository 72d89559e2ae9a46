/* The schedule of glass, for whoever buys it, and how many pieces of each kind there are. */
#include "base/fields.h"
#include "base/tolerance.h"
#include "report/demand.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <stdlib.h>
#include <string.h>

/* Lites of one type and size; or of a type all of them. */
struct glass_row {
    const char *lite;
    double width, height; /* of the whole pane; absent: of all sizes */
    long count;
    double area, edges; /* m2, m: of all of them */
    double inward, outward;
};

static bool each_area(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct glass_row *row = thing;
    if (gw_given(row->width)) gw_add_bare(out, GW_AREA, shown, row->width * row->height, NEAREST);
    return gw_given(row->width);
}

static const struct gw_field GLASS[] = {
    F(glass_row, lite, GW_T_TEXT),
    NUM(glass_row, width, GW_LENGTH),
    NUM(glass_row, height, GW_LENGTH),
    F(glass_row, count, GW_T_COUNT),
    {.key = "each_area", .type = GW_T_SAID, .say = each_area},
    NUM(glass_row, area, GW_AREA),
    NUM(glass_row, edges, GW_LENGTH),
    NUM(glass_row, inward, GW_PRESSURE),
    NUM(glass_row, outward, GW_PRESSURE),
};
static const struct gw_record GLASS_RECORD = RECORD("glass", glass_row, GLASS, .help = "lites of a type and size");

static const struct view_column COLUMNS[] = {
    COLUMN("Lite", "lite"),
    COLUMN("Width", "width"),
    COLUMN("Height", "height"),
    COLUMN("Count", "count"),
    COLUMN("Each", "each_area", .dim = GW_AREA, .right = true),
    COLUMN("Area", "area"),
    COLUMN("Edges", "edges"),
    COLUMN("ASD in", "inward", .rounding = UP),
    COLUMN("ASD out", "outward", .rounding = UP),
};
static const struct view SCHEDULE = VIEW(&GLASS_RECORD, COLUMNS);

/* A pane that the roof line cuts is two elements of one pane: it is counted with the part below. */
static struct glass_row row_of(const struct gw_element *e)
{
    const double height = gw_given(e->pane) ? e->pane : e->height;
    const bool again = e->parapet && height > e->height + GW_HAIR_M;
    struct glass_row row = {.lite = e->lite ? e->lite : "lite",
                            .width = e->width,
                            .height = height,
                            .count = again ? 0 : e->count,
                            .inward = e->inward_asd.pa,
                            .outward = fabs(e->outward_asd.pa)};
    row.area = (double)row.count * row.width * row.height;
    row.edges = 2 * (double)row.count * (row.width + row.height);
    return row;
}

static int compare_sizes(double a, double b) { return (a > b + GW_HAIR_M) - (b > a + GW_HAIR_M); }

static int by_size(const void *left, const void *right)
{
    const struct glass_row *a = left, *b = right;
    int order = strcmp(a->lite, b->lite);
    if (!order) order = compare_sizes(a->height, b->height);
    return order ? order : compare_sizes(a->width, b->width);
}

static void take(struct glass_row *into, const struct glass_row *row)
{
    into->count += row->count;
    into->area += row->area;
    into->edges += row->edges;
    into->inward = fmax(into->inward, row->inward);
    into->outward = fmax(into->outward, row->outward);
}

static size_t merge(struct glass_row *rows, size_t n)
{
    size_t kept = 0;
    qsort(rows, n, sizeof *rows, by_size);
    for (size_t i = 0; i < n; i++)
        if (kept && by_size(&rows[kept - 1], &rows[i]) == 0) take(&rows[kept - 1], &rows[i]);
        else rows[kept++] = rows[i];
    return kept;
}

static const char *make_up(struct page *page, const char *name)
{
    struct gw_text text;
    const struct gw_model *model = page->results->answer->model;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < model->project.lites.n; i++) {
        const struct gw_lite_type *type = &model->project.lites.items[i];
        if (strcmp(type->name, name) == 0 && type->layers.n)
            gw_layers_say(&text, type->layers.items, type->layers.n, page->shown, model->tables);
    }
    return text.length ? text.at : NULL;
}

enum { MOST_SIZES = 20 /* of a type, unless every row is asked for */ };

static int by_area(const void *left, const void *right)
{
    const struct glass_row *a = left, *b = right;
    const int order = (a->area < b->area) - (a->area > b->area);
    return order ? order : by_size(left, right);
}

static struct glass_row all_of(struct page *page, const struct glass_row *rows, size_t n)
{
    struct glass_row all = rows[0];
    for (size_t i = 1; i < n; i++) take(&all, &rows[i]);
    all.width = all.height = GW_ABSENT;
    all.lite = gw_format(page->arena, "%s, in all", rows[0].lite);
    return all;
}

static struct glass_row rest_of(struct page *page, const struct glass_row *rows, size_t n)
{
    struct glass_row rest = all_of(page, rows, n);
    rest.lite = gw_format(page->arena, "%s, %zu more sizes", rows[0].lite, n);
    return rest;
}

/* The sizes of a type; where there are many those with the most glass and the rest in a row; then all of them. */
static size_t add_type(struct page *page, struct glass_row *out, struct glass_row *rows, size_t n)
{
    size_t kept = n;
    const struct glass_row all = all_of(page, rows, n);
    if (n > MOST_SIZES && !page->results->all) {
        kept = MOST_SIZES;
        qsort(rows, n, sizeof *rows, by_area);
        qsort(rows, kept, sizeof *rows, by_size);
    }
    memcpy(out, rows, kept * sizeof *rows);
    size_t written = kept;
    if (kept < n) out[written++] = rest_of(page, rows + kept, n - kept);
    if (n > 1) out[written++] = all;
    return written;
}

static void schedule(struct page *page, struct glass_row *rows, size_t n)
{
    struct glass_row *out = gw_alloc(page->arena, 3 * n, sizeof *out);
    size_t written = 0;
    for (size_t i = 0, next; i < n; i = next) {
        for (next = i + 1; next < n && strcmp(rows[next].lite, rows[i].lite) == 0;) next++;
        const char *made = make_up(page, rows[i].lite);
        gw_report_item(page->report, gw_format(page->arena, "%s: %s", rows[i].lite, made ? made : "layers not given"));
        written += add_type(page, out + written, rows + i, next - i);
    }
    gw_view_list(page, "", &SCHEDULE, out, written);
}

/* Pieces ---------------------------------------------------------------------------------------------------------- */

static void say_counts(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    long counts[GW_KIND_COUNT] = {0};
    struct gw_text text;
    for (size_t i = 0; i < t->elements.n; i++)
        counts[t->elements.items[i].kind] += gw_pieces_once(t, &t->elements.items[i]);
    gw_text_init(&text, page->arena);
    for (int i = 0; i < GW_KIND_COUNT; i++)
        gw_text_addf(&text, "%s%ld %s%s", i ? ", " : "In all: ", counts[i], gw_kind_names[i],
                     counts[i] == 1 ? "" : "s");
    gw_text_add(&text, "; a mullion is a stretch between anchors. What the roof line cuts and what two walls share at "
                       "a corner is counted once here.");
    gw_report_line(page->report, text.at);
}

void gw_page_glass(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    struct glass_row *rows = gw_alloc(page->arena, t->elements.n + 1, sizeof *rows);
    const struct gw_element *first = NULL;
    size_t n = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind != GW_LITE) continue;
        if (!first) first = e;
        rows[n++] = row_of(e);
    }
    gw_report_section(page->report, GW_PART_DEMANDS, "Glass and pieces");
    n = merge(rows, n);
    if (n) schedule(page, rows, n);
    if (n) gw_page_how_found(page, first, "Sizes, areas and counts are the take-off's own.");
    gw_report_line(page->report, "Sizes from center to center of framing. Edges: of all of them, for sealant and "
                                 "gaskets. ASD: the worst.");
    say_counts(page);
}
