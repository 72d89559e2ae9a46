/* Blocks, in order. */
#include "galeward/report.h"
#include "report/long_names.h"

#include <string.h>

void gw_report_init(struct gw_report *report, struct gw_arena *arena) { *report = (struct gw_report){.arena = arena}; }

/* Whatever the renderer, and whoever wrote the name in it. */
static const char *copy(struct gw_report *report, const char *text)
{
    const char *said = gw_shortened(report->arena, &report->long_names, text ? text : "");
    return gw_safe(report->arena, gw_strdup(report->arena, said));
}

static struct gw_block *add(struct gw_report *report, enum gw_block_kind kind, const char *text)
{
    report->blocks = gw_grow(report->arena, report->blocks, report->n, &report->capacity, sizeof *report->blocks);
    struct gw_block *block = &report->blocks[report->n++];
    *block = (struct gw_block){.kind = kind, .part = report->part, .text = copy(report, text)};
    return block;
}

void gw_report_heading(struct gw_report *report, int level, const char *text)
{
    add(report, GW_HEADING, text)->level = level;
}

void gw_report_section(struct gw_report *report, enum gw_page_part part, const char *title)
{
    report->part = part;
    gw_report_heading(report, 2, title);
}

void gw_report_arrange(struct gw_report *report)
{
    struct gw_block *blocks = gw_alloc(report->arena, report->n + 1, sizeof *blocks);
    size_t n = 0;
    for (int part = GW_PART_FIRST; part <= GW_PART_CAUTIONS; part++)
        for (size_t i = 0; i < report->n; i++)
            if ((int)report->blocks[i].part == part) blocks[n++] = report->blocks[i];
    report->blocks = blocks;
    report->capacity = n;
}

void gw_report_line(struct gw_report *report, const char *text) { add(report, GW_LINE, text); }

void gw_report_lead(struct gw_report *report, const char *text) { add(report, GW_LINE, text)->level = 1; }

void gw_report_item(struct gw_report *report, const char *text) { add(report, GW_ITEM, text); }

void gw_report_numbered(struct gw_report *report, int number, const char *text)
{
    add(report, GW_ITEM, text)->level = number;
}

void gw_report_table(struct gw_report *report, const char *caption, const struct gw_report_column *columns, size_t n)
{
    struct gw_block *block = add(report, GW_TABLE, caption);
    struct gw_report_column *own = gw_alloc(report->arena, n + 1, sizeof *own);
    for (size_t i = 0; i < n; i++) {
        own[i] = columns[i];
        own[i].title = copy(report, columns[i].title);
    }
    block->columns = own;
    block->n_columns = n;
}

void gw_report_toned(struct gw_report *report, enum gw_tone tone, const char *text)
{
    if (!report->n || report->blocks[report->n - 1].kind != GW_TABLE) return;
    struct gw_block *table = &report->blocks[report->n - 1];
    table->cells = gw_grow(report->arena, table->cells, table->n_cells, &table->capacity, sizeof *table->cells);
    table->cells[table->n_cells++] = (struct gw_cell){copy(report, text), tone};
}

void gw_report_cell(struct gw_report *report, const char *text) { gw_report_toned(report, GW_PLAIN, text); }

static const char *or_empty(const char *text) { return text ? text : ""; }

static const struct gw_step *copy_step(struct gw_report *report, const struct gw_step *step)
{
    struct gw_step *own = gw_alloc(report->arena, 1, sizeof *own);
    *own = *step;
    return own;
}

void gw_report_equation(struct gw_report *report, const struct gw_step *step, size_t number, enum gw_units shown)
{
    struct gw_equation equation = {number,
                                   or_empty(step->symbol),
                                   "",
                                   "",
                                   "",
                                   "",
                                   copy(report, gw_message_text(report->arena, &step->note, shown)),
                                   copy(report, step->clause),
                                   copy_step(report, step),
                                   shown};
    struct gw_text text;
    if (step->formula && !gw_step_is_plain(step)) {
        gw_text_init(&text, report->arena);
        gw_step_substituted(&text, step, shown);
        equation.formula = step->formula;
        equation.substituted = text.at;
    }
    if (gw_given(step->value)) {
        gw_text_init(&text, report->arena);
        gw_text_number(&text, gw_quantity_shown(gw_units_standard(), step->dim, shown, step->value), 6);
        equation.result = text.at;
        equation.unit = gw_dim_info(step->dim)->shown[shown];
    }
    add(report, GW_EQUATION, "")->equation = equation;
}

void gw_report_figure(struct gw_report *report, const struct gw_figure *figure)
{
    struct gw_block *block = add(report, GW_FIGURE, figure->title);
    block->figure = *figure;
    block->figure.title = block->text;
    block->figure.alternative = copy(report, figure->alternative);
}

void gw_report_definition(struct gw_report *report, const char *term, const char *meaning)
{
    add(report, GW_DEFINITION, term)->meaning = copy(report, meaning);
}

void gw_report_page_break(struct gw_report *report) { add(report, GW_PAGE_BREAK, ""); }

const char *gw_equation_text(struct gw_arena *arena, const struct gw_equation *e)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_addf(&text, "%zu. %s", e->number, e->symbol);
    if (!*e->result) {
        gw_text_addf(&text, "%s%s", *e->symbol ? ": " : "", e->note);
    } else {
        if (*e->formula) gw_text_addf(&text, " = %s = %s", e->formula, e->substituted);
        gw_text_addf(&text, " = %s%s%s", e->result, *e->unit ? " " : "", e->unit);
        if (*e->note) gw_text_addf(&text, ": %s", e->note);
    }
    if (*e->clause) gw_text_addf(&text, "   [%s]", e->clause);
    return text.at;
}
