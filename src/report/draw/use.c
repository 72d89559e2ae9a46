/* Use of a candidate by check: a bar each, of what governs it, beside a stroke at the limit; what is not shown has its
 * mark and no bar. */
#include "report/check.h"
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/results.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double NAMES = 250, BARS = 200, ROW = 19, HIGH = 11, GAP = 8, MOST = 1.25; /* pixels; use */
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_MIDDLE};
static const struct gw_lettering BOLD = {.size = GW_LABEL_SIZE, .bold = true};

struct use_row {
    const struct gw_finding *governing;
    size_t order; /* of the check among those that are asked */
};
struct use_rows {
    struct use_row *items;
    size_t n, capacity;
    struct gw_text not_required;
};

static struct use_row *row_of(struct use_rows *rows, struct gw_arena *arena, const struct gw_finding *f)
{
    for (size_t i = 0; i < rows->n; i++)
        if (gw_same_check(rows->items[i].governing->demand, f->demand)) return &rows->items[i];
    rows->items = gw_grow(arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
    rows->items[rows->n] = (struct use_row){f, rows->n};
    return &rows->items[rows->n++];
}

/* Fails, what is not shown, then passes by use. */
static int by_consequence(const void *a, const void *b)
{
    const struct use_row *x = a, *y = b;
    if (x->governing->verdict != y->governing->verdict)
        return gw_verdict_rank(y->governing->verdict) - gw_verdict_rank(x->governing->verdict);
    const double p = x->governing->utilization, q = y->governing->utilization;
    if (gw_given(p) != gw_given(q)) return gw_given(p) ? -1 : 1;
    if (gw_given(p) && (p > q || p < q)) return p > q ? -1 : 1;
    return x->order < y->order ? -1 : 1;
}

static void gather(struct use_rows *rows, struct gw_arena *arena, const struct candidate_picture *of)
{
    const struct gw_judgement *j = &of->results->answer->judgement;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        if (f->candidate != of->candidate) continue;
        struct use_row *row = row_of(rows, arena, f);
        if (gw_graver(f, row->governing)) row->governing = f;
    }
    gw_text_init(&rows->not_required, arena);
    size_t kept = 0;
    for (size_t i = 0; i < rows->n; i++) {
        const struct use_row row = rows->items[i];
        const bool asked = row.governing->verdict != GW_NOT_REQUIRED;
        if (asked) rows->items[kept++] = row;
        else
            gw_text_addf(&rows->not_required, "%s%s", rows->not_required.length ? ", " : "",
                         gw_safe(arena, gw_check_name(row.governing->demand)));
    }
    rows->n = kept;
    if (rows->n) qsort(rows->items, rows->n, sizeof *rows->items, by_consequence);
}

static double across(double use) { return SHEET_MARGIN + NAMES + use / MOST * BARS; }

/* What goes on beyond the axis ends in two slant strokes. */
static void put_break(struct gw_canvas *canvas, double x, double middle)
{
    const double lean = 3, off = 5;
    for (int i = 0; i < 2; i++) {
        const double at = x - off * (i + 1);
        gw_canvas_line(canvas, (struct gw_point){at - lean, middle + HIGH}, (struct gw_point){at + lean, middle - HIGH},
                       &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
    }
}

static void put_bar(struct gw_canvas *canvas, const struct gw_finding *f, double use, double middle)
{
    struct gw_look look = gw_verdict_classes[f->verdict].look;
    look.line = gw_mark_ink(gw_verdict_classes[f->verdict].mark);
    look.width = GW_LINE_THIN;
    const double end = across(fmin(use, MOST));
    gw_canvas_rectangle(canvas, &(struct gw_box){across(0), middle - HIGH / 2, end, middle + HIGH / 2}, &look);
    if (use > MOST) put_break(canvas, end, middle);
}

static const char *name_of(const struct sheet *sheet, const struct gw_finding *f)
{
    const struct gw_demand *d = f->demand;
    return d->name ? gw_sheet_name(sheet, gw_safe(sheet->arena, d->name)) : d->check->title;
}

/* The base line after it. */
static double put_place(struct sheet *sheet, const struct gw_demand *d, struct gw_point at)
{
    const char *where = gw_sheet_name(sheet, gw_safe(sheet->arena, d->where));
    if (d->check->scope == GW_PER_PROJECT || d->check->scope == GW_PER_NAME) where = "the project";
    else where = gw_format(sheet->arena, "at %s", where);
    return gw_canvas_paragraph(sheet->canvas, at, SHEET_MARGIN + SHEET_LIVE - at.x, &PLAIN, where);
}

/* The lower end of the row. */
static double put_row(struct sheet *sheet, const struct gw_finding *f, double top)
{
    struct gw_canvas *canvas = sheet->canvas;
    const struct elevation_class *class = &gw_verdict_classes[f->verdict];
    const double words = across(MOST) + GAP, mark = 15, column = 44;
    const double next = gw_canvas_paragraph(canvas, (struct gw_point){SHEET_MARGIN, top + 0.72 * ROW}, NAMES - GAP,
                                            &(struct gw_lettering){.size = GW_LABEL_SIZE}, name_of(sheet, f));
    const double middle = top + 0.5 * ROW, base = middle + 0.36 * GW_LABEL_SIZE;
    struct gw_text use;
    gw_text_init(&use, sheet->arena);
    gw_add_use(&use, f);
    const struct gw_lettering ink = {.size = GW_LABEL_SIZE, .bold = true, .color = gw_mark_ink(class->mark)};
    gw_mark_draw(canvas, (struct gw_point){words + 6, middle}, class->mark);
    if (use.length && isfinite(f->utilization)) put_bar(canvas, f, f->utilization, middle);
    const char *said = use.length ? use.at : class->name;
    gw_canvas_text(canvas, (struct gw_point){words + mark, base}, &ink, said);
    const double after = fmax(gw_lettering_width(&ink, said), column - mark) + mark + GAP;
    const double place = put_place(sheet, f->demand, (struct gw_point){words + after, base});
    return fmax(top + ROW, fmax(next, place) - 0.72 * GW_LABEL_SIZE);
}

static void put_axis(struct gw_canvas *canvas, double top, double bottom)
{
    static const struct {
        double at;
        const char *name;
    } ticks[] = {{0, "0"}, {0.25, "0.25"}, {0.5, "0.50"}, {0.75, "0.75"}, {1, "1.00"}, {1.25, "1.25"}};
    for (size_t i = 0; i < sizeof ticks / sizeof *ticks; i++) {
        const double x = across(ticks[i].at);
        const struct gw_look fine = {.line = GW_FAINT, .width = GW_LINE_FINE};
        gw_canvas_line(canvas, (struct gw_point){x, top}, (struct gw_point){x, bottom}, &fine);
        gw_canvas_text(canvas, (struct gw_point){x, top - 5}, &MIDDLE, ticks[i].name);
    }
}

/* Over the bars: what reaches it uses all there is. */
static void put_limit(struct gw_canvas *canvas, double top, double bottom)
{
    const struct gw_point from = {across(1), top - 3}, to = {across(1), bottom + 3};
    gw_canvas_line(canvas, from, to, &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
    gw_canvas_line(canvas, from, to, &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM});
}

static double height_of(struct sheet *sheet, const struct use_rows *rows)
{
    struct gw_canvas trial;
    struct sheet on = *sheet;
    double y = 0;
    gw_canvas_init(&trial, sheet->arena);
    on.canvas = &trial;
    for (size_t i = 0; i < rows->n; i++) y = put_row(&on, rows->items[i].governing, y);
    return y;
}

static const char *described(struct sheet *sheet, const struct use_rows *rows, const char *candidate)
{
    long counts[4] = {0};
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    for (size_t i = 0; i < rows->n; i++) counts[rows->items[i].governing->verdict]++;
    gw_text_addf(&text, "%s: use by check, %zu checks: %ld fail, %ld not shown, %ld pass.", candidate, rows->n,
                 counts[GW_FAIL], counts[GW_NOT_SHOWN], counts[GW_PASS]);
    for (size_t i = 0; i < rows->n && i < 1; i++) {
        const struct gw_finding *f = rows->items[i].governing;
        gw_text_addf(&text, " First: %s, %s ", name_of(sheet, f), gw_verdict_name(f->verdict));
        gw_add_use(&text, f);
        gw_text_addf(&text, " at %s.", f->demand->where);
    }
    return text.at;
}

enum gw_status gw_draw_use(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct candidate_picture *p = of;
    const char *candidate = gw_safe(canvas->arena, p->candidate->name);
    struct sheet sheet;
    struct use_rows rows = {0};
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    gather(&rows, canvas->arena, p);
    double y = gw_sheet_head(&sheet, gw_format(canvas->arena, "%s: use by check", candidate));
    const char *project = gw_project_line(canvas->arena, p->results);
    y = gw_sheet_lines(&sheet, y, &project, 1);
    y = gw_sheet_caption(&sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE, "Use, required over provided",
                         "Of each check the place that governs, rounded up; up to 1.00 passes. What is not shown has "
                         "no bar.");
    const double top = y + 18, bottom = top + height_of(&sheet, &rows);
    put_axis(canvas, top, bottom);
    double at = top;
    for (size_t i = 0; i < rows.n; i++) at = put_row(&sheet, rows.items[i].governing, at);
    put_limit(canvas, top, bottom);
    if (!rows.n)
        at = gw_canvas_paragraph(canvas, (struct gw_point){SHEET_MARGIN, top + ROW}, SHEET_LIVE, &BOLD,
                                 "Nothing is asked of it.");
    const char *rest =
        rows.not_required.length ? gw_format(canvas->arena, "Not required: %s.", rows.not_required.at) : NULL;
    canvas->description = described(&sheet, &rows, candidate);
    gw_sheet_foot(&sheet, gw_sheet_lines(&sheet, at + 20, &rest, 1) - (rest ? 4 : 12), NULL, 0);
    return GW_OK;
}
