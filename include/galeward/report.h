/* A result as headings, lines and tables, and its renderings. Renderers compute nothing. */
#ifndef GALEWARD_REPORT_H
#define GALEWARD_REPORT_H

#include "galeward/calc.h"
#include "galeward/judge.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_block_kind { GW_HEADING, GW_LINE, GW_ITEM, GW_TABLE };
enum gw_tone { GW_PLAIN, GW_GOOD, GW_BAD, GW_DOUBTFUL };

struct gw_cell {
    const char *text;
    enum gw_tone tone;
};
struct gw_report_column {
    const char *title;
    bool right;
};

struct gw_block {
    enum gw_block_kind kind;
    int level;        /* headings 1 to 3 */
    const char *text; /* heading, line, item; a table's caption or "" */
    enum gw_tone tone;
    const struct gw_report_column *columns;
    size_t n_columns;
    struct gw_cell *cells; /* row by row */
    size_t n_cells, capacity;
};

struct gw_report {
    struct gw_arena *arena;
    struct gw_block *blocks;
    size_t n, capacity;
};

void gw_report_init(struct gw_report *report, struct gw_arena *arena);
void gw_report_heading(struct gw_report *report, int level, const char *text);
void gw_report_line(struct gw_report *report, const char *text);
void gw_report_item(struct gw_report *report, const char *text);
/* The table's columns must outlive the report. Cells are then added in order, row by row. */
void gw_report_table(struct gw_report *report, const char *caption, const struct gw_report_column *columns, size_t n);
void gw_report_cell(struct gw_report *report, const char *text);
void gw_report_toned(struct gw_report *report, enum gw_tone tone, const char *text);

void gw_render_text(struct gw_text *out, const struct gw_report *report, bool color);
void gw_render_markdown(struct gw_text *out, const struct gw_report *report);
/* Tables only; each preceded by an empty line after the first. */
void gw_render_csv(struct gw_text *out, const struct gw_report *report);

/* What a report is built from. */
struct gw_results {
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    const struct gw_judgement *judgement;
    enum gw_units shown;
};

/* One page first (what governs by wall, zone and kind), then every group. */
void gw_report_demand(struct gw_report *report, const struct gw_results *results);
void gw_report_check(struct gw_report *report, const struct gw_results *results);
void gw_report_explain(struct gw_report *report, const struct gw_results *results, const struct gw_element *element);
void gw_report_tables(struct gw_report *report, const struct gw_tables *tables, const char *name, enum gw_units shown);

/* The element and its derivation; the tables, or one of them (SI). */
void gw_json_explain(struct gw_text *out, const struct gw_results *results, const struct gw_element *element);
void gw_json_tables(struct gw_text *out, const struct gw_tables *tables, const char *name);

/* JSON results (SI). `demand` writes elements, `check` adds verdicts. */
void gw_json_results(struct gw_text *out, const struct gw_results *results, bool verdicts);
/* CSV of the groups, or of the verdicts, one a line, SI with the unit in the header. */
void gw_csv_results(struct gw_text *out, const struct gw_results *results, bool verdicts);

/* Drawings (SVG) of one case of 'calc': the kinds that have one. The engine has the kind's workspace; a refusal fills
 * its fault and leaves `*out` as it was. */
struct gw_drawing {
    const char *kind, *help;
    enum gw_status (*draw)(struct gw_text *out, const struct gw_calc_answer *answer, enum gw_units shown,
                           struct gw_engine *engine);
};
const struct gw_drawing *gw_drawings(size_t *n);
const struct gw_drawing *gw_drawing_find(const char *kind); /* or NULL */

/* JSON Schema (draft 2020-12) and the field reference (Markdown) of a record. */
void gw_schema_json(struct gw_text *out, const struct gw_record *record, const char *title);
void gw_schema_results(struct gw_text *out);
void gw_schema_markdown(struct gw_text *out, const struct gw_record *record);
/* The same of a record that is written: its keys carry their units. */
void gw_schema_output_markdown(struct gw_text *out, const struct gw_record *record);
/* What 'check' writes as JSON. */
extern const struct gw_record gw_results_record;

#ifdef __cplusplus
}
#endif

#endif
