/* What a section provides against what is required of it, a line each, under its drawing. */
#include "report/draw/details.h"
#include "report/page.h"

#include "base/tolerance.h"
#include "base/trade.h"

#include <math.h>
#include <string.h>

static const double FIGURES = 164, VERDICT = 338, HOW = 440, PAD = 2.5; /* pixels from the left */
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE};
static const struct gw_lettering SOFT = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering HEAD = {.size = GW_LABEL_SIZE, .bold = true};

void gw_detail_row(struct detail *d, struct detail_row row)
{
    struct gw_arena *arena = d->sheet.arena;
    if (row.how) row.how = gw_detail_glued(arena, row.how);
    if (row.provided) row.provided = gw_detail_glued(arena, row.provided);
    if (row.required) row.required = gw_detail_glued(arena, row.required);
    if (d->n_rows < DETAIL_ROWS) d->rows[d->n_rows++] = row;
}

void gw_detail_ask(struct detail *d, const char *question)
{
    for (size_t i = 0; i < d->n_open; i++)
        if (strcmp(d->open[i], question) == 0) return;
    if (d->n_open < DETAIL_OPEN) d->open[d->n_open++] = question;
}

const char *gw_detail_stated(const struct detail *d, double si)
{
    return gw_given(si) ? gw_sheet_given(&d->sheet, GW_THICKNESS, si) : NULL;
}

const char *gw_detail_needed(const struct detail *d, double si)
{
    return gw_given(si) ? gw_sheet_demand(&d->sheet, GW_THICKNESS, si) : NULL;
}

const char *gw_detail_said(const struct detail *d, const struct gw_message *message)
{
    return gw_said(message) ? gw_safe(d->sheet.arena, gw_message_text(d->sheet.arena, message, d->sheet.shown)) : NULL;
}

enum sheet_mark gw_detail_mark(enum gw_verdict verdict)
{
    static const enum sheet_mark marks[] = {
        [GW_NOT_SHOWN] = MARK_ASK, [GW_PASS] = MARK_SETTLED, [GW_FAIL] = MARK_STOP, [GW_NOT_REQUIRED] = MARK_NOT_ASKED};
    return marks[verdict];
}

enum sheet_mark gw_detail_item_mark(enum gw_item_verdict verdict)
{
    static const enum sheet_mark marks[] = {[GW_ITEM_UNKNOWN] = MARK_ASK,
                                            [GW_ITEM_WITHIN] = MARK_SETTLED,
                                            [GW_ITEM_OUTSIDE_HOLDS] = MARK_IN_HAND,
                                            [GW_ITEM_NOT_MET] = MARK_STOP};
    return marks[verdict];
}

const char *gw_detail_value(const struct detail *d, enum gw_item_id item, double si)
{
    const enum gw_dim dim = gw_item_kinds[item].value.dim;
    struct gw_text plain;
    if (!gw_given(si)) return NULL;
    if (dim != GW_RATIO && dim != GW_SLOPE) return gw_sheet_given(&d->sheet, dim, si);
    gw_text_init(&plain, d->sheet.arena);
    if (dim == GW_SLOPE) gw_trade_print(&plain, dim, d->sheet.shown, si, 0, false);
    else gw_text_number(&plain, si, 4);
    return plain.at;
}

static const char *needed_words(const struct detail *d, enum gw_item_id item, double si)
{
    if (gw_item_kinds[item].value.dim == GW_SLOPE) return gw_detail_value(d, item, si);
    return gw_sheet_demand(&d->sheet, gw_item_kinds[item].value.dim, si);
}

void gw_detail_item(struct detail *d, const char *name, enum gw_item_id item, const struct gw_spot *spot,
                    const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_result *r = gw_alloc(d->sheet.arena, 1, sizeof *r);
    struct gw_item_limit limit;
    const double value = read->of[item].number;
    struct detail_row row = {.name = name, .provided = gw_detail_value(d, item, value)};
    if (gw_given(value)) {
        gw_item_judge(r, &d->ask, gw_item_of(item), spot, read, system);
        limit = r->limit;
        row.mark = gw_detail_item_mark(r->verdict);
        row.verdict = gw_item_verdict_name(r->verdict);
        row.how = gw_detail_said(d, &r->message);
    } else {
        gw_item_limit_at(&limit, &d->ask, gw_item_of(item), spot, system);
        row.mark = MARK_ASK;
        row.verdict = "not stated";
    }
    const double needed = gw_given(limit.at_least) ? limit.at_least : limit.at_most;
    const char *figure = gw_given(needed) ? needed_words(d, item, needed) : NULL;
    row.required = figure;
    if (!row.how) row.how = gw_detail_said(d, &limit.note);
    if (figure && limit.basis == GW_LIMIT_PRACTICE)
        row.how = row.how ? gw_format(d->sheet.arena, "practice; %s", row.how) : "practice";
    gw_detail_row(d, row);
}

void gw_detail_practice(struct detail *d, const char *name, enum gw_item_id item, const struct gw_spot *spot,
                        double value, const struct gw_system *without_own)
{
    struct gw_item_limit limit;
    gw_item_limit_at(&limit, &d->ask, gw_item_of(item), spot, without_own);
    const bool less = gw_given(value) && value < limit.at_least * (1 - GW_HAIR);
    gw_detail_row(
        d, (struct detail_row){.name = name,
                               .provided = gw_detail_value(d, item, value),
                               .required = gw_given(limit.at_least) ? needed_words(d, item, limit.at_least) : NULL,
                               .mark = gw_given(value) && !less ? MARK_SETTLED : MARK_ASK,
                               .verdict = less              ? "less than practice"
                                          : gw_given(value) ? "within"
                                                            : "not stated",
                               .how = gw_given(limit.at_least) ? "practice" : NULL});
}

/* The ledger ------------------------------------------------------------------------------------------------------- */

const char *gw_detail_figures(struct gw_arena *arena, const struct detail_row *row)
{
    if (!row->provided && !row->required) return "not stated";
    const char *provided = row->provided ? row->provided : "not stated";
    if (row->plain || row->mark == MARK_NOT_ASKED || (!row->required && row->mark == MARK_NONE)) return provided;
    return gw_format(arena, "%s ≥ %s", provided, row->required ? row->required : "not known");
}

static double put_row(struct detail *d, const struct detail_row *row, double top)
{
    struct gw_canvas *canvas = d->sheet.canvas;
    const double left = SHEET_MARGIN, base = top + PAD + GW_LABEL_SIZE, mark = 17;
    const struct gw_lettering ink = {.size = GW_LABEL_SIZE, .bold = true, .color = gw_mark_ink(row->mark)};
    double end = gw_canvas_paragraph(canvas, (struct gw_point){left, base}, FIGURES - 8, &PLAIN, row->name);
    end = fmax(end, gw_canvas_paragraph(canvas, (struct gw_point){left + FIGURES, base}, VERDICT - FIGURES - 8, &PLAIN,
                                        gw_detail_figures(canvas->arena, row)));
    gw_mark_draw(canvas, (struct gw_point){left + VERDICT + 6, base - 0.36 * GW_LABEL_SIZE}, row->mark);
    if (row->verdict)
        end = fmax(end, gw_canvas_paragraph(canvas, (struct gw_point){left + VERDICT + mark, base},
                                            HOW - VERDICT - mark - 6, &ink, row->verdict));
    const bool beside = row->how && gw_lettering_width(&SOFT, row->how) < 1.8 * (SHEET_LIVE - HOW);
    if (row->how)
        end = fmax(end,
                   gw_canvas_paragraph(canvas, (struct gw_point){left + (beside ? HOW : FIGURES), beside ? base : end},
                                       SHEET_LIVE - (beside ? HOW : FIGURES), &SOFT, row->how));
    const double bottom = end - GW_LABEL_SIZE + PAD;
    gw_canvas_line(canvas, (struct gw_point){left, bottom}, (struct gw_point){left + SHEET_LIVE, bottom},
                   &(struct gw_look){.line = GW_FAINT, .width = GW_LINE_FINE});
    return bottom;
}

static double put_heads(struct detail *d, double top)
{
    struct gw_canvas *canvas = d->sheet.canvas;
    const double left = SHEET_MARGIN, base = top + GW_LABEL_SIZE, rule = base + 6;
    gw_canvas_text(canvas, (struct gw_point){left, base}, &HEAD, "What");
    gw_canvas_text(canvas, (struct gw_point){left + FIGURES, base}, &HEAD, "Provided ≥ required");
    gw_canvas_text(canvas, (struct gw_point){left + VERDICT, base}, &HEAD, "Verdict");
    gw_canvas_text(canvas, (struct gw_point){left + HOW, base}, &HEAD, "By what");
    gw_canvas_line(canvas, (struct gw_point){left, rule}, (struct gw_point){left + SHEET_LIVE, rule},
                   &(struct gw_look){.line = GW_RULE, .width = GW_LINE_MEDIUM});
    return rule;
}

void gw_detail_close(struct detail *d, double top)
{
    struct gw_arena *arena = d->sheet.arena;
    double y = gw_sheet_missed(&d->sheet, top) + 4;
    if (d->n_rows) y = put_heads(d, y);
    for (size_t i = 0; i < d->n_rows; i++) y = put_row(d, &d->rows[i], y);
    y += 1.6 * GW_LABEL_SIZE;
    if (d->n_open) {
        gw_canvas_text(d->sheet.canvas, (struct gw_point){SHEET_MARGIN, y}, &HEAD, "Not stated, so dashed");
        y += 1.35 * GW_LABEL_SIZE;
    }
    for (size_t i = 0; i < d->n_open; i++) {
        const char *line = gw_format(arena, "%zu. %s", i + 1, d->open[i]);
        y = gw_sheet_lines(&d->sheet, y, &line, 1);
    }
    gw_sheet_foot(&d->sheet, y - 4, NULL, 0);
}
