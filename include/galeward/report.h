/* Results: what they hold, as records and as blocks, and the formats they are written in. Renderers compute nothing. */
#ifndef GALEWARD_REPORT_H
#define GALEWARD_REPORT_H

#include "galeward/answers.h"
#include "galeward/calc.h"
#include "galeward/canvas.h"
#include "galeward/explain.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_block_kind {
    GW_HEADING,
    GW_LINE,
    GW_ITEM,
    GW_TABLE,
    GW_EQUATION,   /* a step of a derivation */
    GW_FIGURE,     /* a drawing; where none can be, its title and what it shows in words */
    GW_DEFINITION, /* a term and what it means; those that follow each other are one list */
    GW_PAGE_BREAK
};
/* What a page is made of, in the order in which every page has it. */
enum gw_page_part {
    GW_PART_FIRST, /* the question, the verdict, why, what is missing and whom to ask, a picture */
    GW_PART_DEMANDS,
    GW_PART_ANSWERS, /* candidates, comments, readings */
    GW_PART_DERIVATIONS,
    GW_PART_INPUTS, /* and what was assumed */
    GW_PART_SOURCES,
    GW_PART_NOT_CHECKED,
    GW_PART_CAUTIONS
};
enum gw_tone { GW_PLAIN, GW_GOOD, GW_BAD, GW_DOUBTFUL, GW_IN_HAND }; /* in hand: it holds, and is looked at */

struct gw_cell {
    const char *text;
    enum gw_tone tone;
};
struct gw_report_column {
    const char *title;
    bool right;
    bool below; /* sentences: on paper they stand under the row, as wide as it is */
};

/* symbol = formula = substituted = result unit [clause]; a step without a formula is a decision: its note. Formula and
 * substituted are empty where they would only repeat the result. */
struct gw_equation {
    size_t number;
    const char *symbol, *formula, *substituted, *result, *unit, *note, *clause;
    const struct gw_step *step; /* a copy: for those who set the formula */
    enum gw_units shown;
};

/* A drawing. `draw` refuses with the engine's fault; the canvas is then of no use. */
struct gw_figure {
    const char *title, *alternative; /* what it is; what it shows, for those who do not see it */
    enum gw_status (*draw)(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
    const void *of;
};

struct gw_block {
    enum gw_block_kind kind;
    enum gw_page_part part;
    int level;           /* headings 1 to 3; of an item its number, 0: none; of a line 1: it leads */
    const char *text;    /* heading, line, item; a table's caption or ""; a definition's term */
    const char *meaning; /* of a definition */
    bool rounds;         /* a table: figures in it are rounded to the safe side */
    enum gw_tone tone;
    const struct gw_report_column *columns;
    size_t n_columns;
    struct gw_cell *cells; /* row by row */
    size_t n_cells, capacity;
    struct gw_equation equation;
    struct gw_figure figure;
};

/* A name longer than a line: pages that are filed say it whole once, at their end. */
struct gw_long_name {
    const char *text;
    size_t length;
};
struct gw_long_names {
    struct gw_long_name *items; /* the longest first */
    size_t n, capacity;
};

struct gw_report {
    struct gw_arena *arena;
    struct gw_block *blocks;
    size_t n, capacity;
    enum gw_page_part part;          /* of what is added now */
    struct gw_long_names long_names; /* that are whole only once; none: every name is whole */
    bool pictures;                   /* it is for a format that shows drawings: pages may add them */
    const char *rest; /* the command that gives what long tables leave out here; NULL: they leave out nothing */
    const char *head,
        *foot; /* of each page where it is parted into pages: what it is of; by what it can be told again */
};

/* Texts are copied, and made safe to show (gw_safe). */
void gw_report_init(struct gw_report *report, struct gw_arena *arena);
void gw_report_heading(struct gw_report *report, int level, const char *text);
/* A heading of level 2: it and what follows belong to that part. */
void gw_report_section(struct gw_report *report, enum gw_page_part part, const char *title);
/* The parts in their order, whichever was written first; within a part nothing moves. */
void gw_report_arrange(struct gw_report *report);
void gw_report_line(struct gw_report *report, const char *text);
/* The verdict in a sentence or two, larger. */
void gw_report_lead(struct gw_report *report, const char *text);
void gw_report_item(struct gw_report *report, const char *text);
/* "3. ...", of a list whose numbers are its own. */
void gw_report_numbered(struct gw_report *report, int number, const char *text);
/* Cells are then added in order, row by row. */
void gw_report_table(struct gw_report *report, const char *caption, const struct gw_report_column *columns, size_t n);
void gw_report_cell(struct gw_report *report, const char *text);
void gw_report_toned(struct gw_report *report, enum gw_tone tone, const char *text);
/* The n-th step of a derivation, in the units shown. */
void gw_report_equation(struct gw_report *report, const struct gw_step *step, size_t number, enum gw_units shown);
/* "3. q = c*v^2 = 0.00256*115^2 = 33.9 psf   [clause]" */
const char *gw_equation_text(struct gw_arena *arena, const struct gw_equation *equation);
void gw_report_figure(struct gw_report *report, const struct gw_figure *figure);
void gw_report_definition(struct gw_report *report, const char *term, const char *meaning);
void gw_report_page_break(struct gw_report *report);

void gw_render_text(struct gw_text *out, const struct gw_report *report, bool color);
void gw_render_markdown(struct gw_text *out, const struct gw_report *report);
/* Drawings refuse with the engine's fault; what they show is then told in words. */
void gw_render_html(struct gw_text *out, const struct gw_report *report, enum gw_units shown, struct gw_engine *engine);
/* The steps of derivations as one table, then the tables; an empty line between two. */
void gw_render_csv(struct gw_text *out, const struct gw_report *report);

/* Like demands that ask the same, with the elements that they are asked of. */
struct gw_demand_group {
    const struct gw_demand *demand; /* the first of them */
    const char *words;              /* its message, as it is read; of elements */
    GW_LIST(const char *) elements; /* ids; none: a demand of a wall, a lite type or the project */
    size_t capacity;
};

/* Drawings that a result has, by name: "elevation:east:plover-60". */
struct gw_picture {
    const char *name;
    struct gw_figure figure;
};
struct gw_pictures {
    struct gw_picture *items;
    size_t n, capacity;
};
/* An answer as it is written: with the remarks that every result carries. */
struct gw_results {
    const struct gw_answer *answer;
    enum gw_units shown;
    bool sources;     /* pages list every row that is recalled, second-hand or practice; else how many are recalled */
    bool all;         /* pages hold every row and every step; else what decides, merged */
    const char *date; /* of the run, printed in the head; NULL: no date, so that like input gives like bytes */
    GW_LIST(const struct gw_assumption *) assumptions; /* corrections first, then the model's, then the take-off's */
    GW_LIST(const struct gw_diag *) warnings;          /* requirements below the site's first, then the files' */
    GW_LIST(const struct gw_sequence_step) mock_up;
    struct gw_used used;                     /* rows behind every figure */
    GW_LIST(const struct gw_row *) weak;     /* of these the recalled ones and those of common practice */
    GW_LIST(struct gw_demand_group) demands; /* all but the pressures of elements, which the elements hold */
    struct gw_pictures pictures;
    struct gw_derivations derivations; /* that pages bring with them; none: not asked */
};
void gw_results_of(struct gw_results *out, struct gw_arena *arena, const struct gw_answer *answer, enum gw_units shown);

/* Of a demand or a check: each wall, with what each candidate shows there, and by its pressures. */
void gw_pictures_of(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results);
/* Of the derivations that it brings with it: the line of mullions of what decides a candidate. */
void gw_pictures_of_derivations(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results);
/* The one of that name, else the first that begins with it, as far as a colon; NULL. */
const struct gw_picture *gw_picture_named(const struct gw_pictures *pictures, const char *name);
/* One finding of a result, as programs that show findings beside files take it. */
struct gw_logged {
    const char *rule, *rule_text; /* which kind; what it means */
    enum gw_log_level { GW_LOG_ERROR, GW_LOG_WARNING, GW_LOG_NOTE } level;
    const char *message;
    const char *file;        /* NULL: of none */
    unsigned line, column;   /* 0: of the whole file */
    const char *fingerprint; /* by which it is known again */
    enum gw_log_state { GW_LOG_NEW, GW_LOG_UNCHANGED, GW_LOG_ABSENT } state;
    const char *accepted; /* why it stands although it is found; NULL */
};
struct gw_log {
    GW_LIST(struct gw_logged) list;
    size_t capacity;
};

/* What a command hands to a format: records describe it for programs, blocks are what people read, a figure is drawn.
 * A result may have only some of them. */
struct gw_result {
    enum gw_units shown;
    const struct gw_record *record; /* of `value`; NULL: no data */
    const void *value;
    const char
        *rows; /* key of the record's list that a table of data holds, one a line; NULL: the tables of the page */
    void (*page)(struct gw_report *page, const struct gw_result *result); /* NULL: none */
    /* The table of data in US units, rounded, the unit in the heading; NULL: `rows`, else the tables of the page. */
    void (*sheet)(struct gw_report *sheet, const struct gw_result *result);
    /* A table of data that writes itself, instead of both; NULL: none. */
    void (*table)(struct gw_text *out, const struct gw_result *result);
    const struct gw_figure *figure;     /* NULL: none */
    const struct gw_pictures *pictures; /* of which `figure` is one, and pages may show others; NULL: none */
    /* What it gives to another command, as a file that people may change; NULL: nothing. */
    void (*file)(struct gw_text *out, const struct gw_result *result);
    /* Its findings one by one; NULL: it has none. */
    void (*log)(struct gw_log *out, struct gw_arena *arena, const struct gw_result *result);
};
struct gw_result gw_result_demand(const struct gw_results *results);
struct gw_result gw_result_check(const struct gw_results *results);
/* `results` of gw_answer_bids of the same bids. */
struct gw_bids;
struct gw_result gw_result_select(struct gw_arena *arena, const struct gw_results *results, const struct gw_bids *bids);
struct gw_inspection;
struct gw_inspection_sheet;
struct gw_result gw_result_inspection(struct gw_arena *arena, const struct gw_results *results,
                                      const struct gw_inspection *inspection);
struct gw_result gw_result_inspection_sheet(struct gw_arena *arena, const struct gw_results *results,
                                            const struct gw_inspection_sheet *sheet);
/* What the price of each candidate assumes, as sentences for a bid. */
struct gw_result gw_result_qualifications(struct gw_arena *arena, const struct gw_results *results);
/* The names of the elements, for 'explain'; as data the same as gw_result_demand. */
struct gw_result gw_result_elements(const struct gw_results *results);
struct gw_result gw_result_explain(struct gw_arena *arena, const struct gw_results *results,
                                   const struct gw_explanation *explanation);
/* Several of them on one page, which is all there is. */
struct gw_result gw_result_explain_all(struct gw_arena *arena, const struct gw_results *results,
                                       const struct gw_explanation *explanations, size_t n);
/* The tables, or one of them (`name`). */
struct gw_result gw_result_tables(struct gw_arena *arena, const struct gw_tables *tables, const char *name,
                                  enum gw_units shown);

/* How results are written: one row a format. No command knows a format, no format knows a command. */
enum gw_part {
    GW_HAS_DATA = 1,
    GW_HAS_PAGE = 2,
    GW_HAS_FIGURE = 4,
    GW_HAS_FILE = 16, /* a file of ours */
    GW_HAS_LOG = 32,  /* findings beside files */
    GW_HAS_SCHEMA = 8 /* alone: what is written is a schema */
};
/* What a schema describes: a file that is read, a result that is written, or both. */
struct gw_schema {
    const char *title;
    const struct gw_record *in, *out; /* NULL: none */
};
struct gw_format {
    const char *name;          /* "json" */
    const char *ending, *also; /* of a file: ".json"; another one, or NULL */
    const char *media_type;
    unsigned needs; /* bits of enum gw_part: what a result must have */
    bool sheets;    /* pages with drawings and derivations, to be filed */
    /* Only drawings compute: they may refuse with the engine's fault, and find its workspace. */
    enum gw_status (*render)(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color);
    void (*schema)(struct gw_text *out, const struct gw_schema *schema); /* NULL: none */
};
const struct gw_format *gw_formats(size_t *n);
const struct gw_format *gw_format_named(const char *name);   /* or NULL */
const struct gw_format *gw_format_of_file(const char *path); /* by its ending, or NULL */
/* Whether something with these parts can be written so; the first of the formats in which it can. */
bool gw_format_can(const struct gw_format *format, unsigned parts);
const struct gw_format *gw_format_first(unsigned parts);
/* "text, json, csv or md", or ".txt, .json, .csv or .md": those in which something with these parts can be written. */
const char *gw_format_names(struct gw_arena *arena, unsigned parts, bool endings);

/* Drawings of one case of 'calc': the kinds that have one. `of`: a struct gw_calc_answer; the engine has the kind's
 * workspace. */
struct gw_drawing {
    const char *kind, *help;
    enum gw_status (*draw)(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
};
const struct gw_drawing *gw_drawings(size_t *n);
const struct gw_drawing *gw_drawing_find(const char *kind); /* or NULL */

/* Schemas: JSON Schema (draft 2020-12), and the field reference as Markdown. What is written begins with `galeward` and
 * `version`, and its keys carry their units. */
void gw_schema_json(struct gw_text *out, const struct gw_schema *schema);
void gw_schema_markdown(struct gw_text *out, const struct gw_schema *schema);
/* What 'check' writes as data; what 'explain' does; what 'select' does. */
extern const struct gw_record gw_results_record, gw_explanation_record, gw_selections_record;
extern const struct gw_record gw_specification_record; /* what 'specify' does */
/* What 'inspect' does, of readings; without them. */
extern const struct gw_record gw_inspection_record, gw_inspection_sheet_record;

#ifdef __cplusplus
}
#endif

#endif
