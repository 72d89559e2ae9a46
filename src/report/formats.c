/* How results are written: one row a format. */
#include "galeward/json.h"
#include "galeward/pdf.h"
#include "galeward/sha256.h"
#include "galeward/svg.h"
#include "report/captions.h"
#include "report/page.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

static void build_page(struct gw_report *page, struct gw_arena *arena, const struct gw_result *result)
{
    gw_report_init(page, arena);
    result->page(page, result);
    gw_report_arrange(page);
}

static enum gw_status text(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_report page;
    (void)engine;
    build_page(&page, out->arena, result);
    gw_render_text(out, &page, color);
    return GW_OK;
}

static enum gw_status markdown(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine,
                               bool color)
{
    struct gw_report page;
    (void)engine, (void)color;
    build_page(&page, out->arena, result);
    gw_render_markdown(out, &page);
    return GW_OK;
}

static enum gw_status json(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_json json;
    (void)engine, (void)color;
    gw_json_init(&json, out, true);
    json.shown = result->shown;
    gw_json_result(&json);
    gw_json_record(&json, result->record, result->value, false);
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
    return GW_OK;
}

/* Its data, so that two prints of one result can be told from two results. */
static const char *hash_of(struct gw_arena *arena, const struct gw_result *result)
{
    enum { SHOWN = 8 };
    struct gw_text data;
    char *hash = gw_alloc(arena, 65, 1);
    if (!result->record) return NULL;
    gw_text_init(&data, arena);
    json(&data, result, NULL, false);
    gw_sha256(hash, data.at, data.length);
    hash[SHOWN] = '\0';
    return hash;
}

/* With drawings, and what tells one print from another. */
static void build_sheets(struct gw_report *page, struct gw_arena *arena, const struct gw_result *result)
{
    const char *hash = hash_of(arena, result);
    gw_report_init(page, arena);
    page->pictures = true;
    page->foot =
        gw_format(arena, "%s%s%sGaleward %s", hash ? "result " : "", hash ? hash : "", hash ? ", " : "", GW_VERSION);
    result->page(page, result);
    gw_report_arrange(page);
    gw_report_captions(page);
    if (page->n && page->blocks[0].kind == GW_HEADING) page->head = page->blocks[0].text;
}

static enum gw_status html(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_report page;
    (void)color;
    build_sheets(&page, out->arena, result);
    page.head = NULL;
    gw_render_html(out, &page, result->shown, engine);
    return GW_OK;
}

static enum gw_status pdf(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_report page;
    (void)color;
    build_sheets(&page, out->arena, result);
    return gw_pdf_write(out, &page, result->shown, engine);
}

static enum gw_status csv(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_report page;
    (void)engine, (void)color;
    if (result->table) {
        result->table(out, result);
        return GW_OK;
    }
    bool people = result->sheet && (result->shown != GW_SI || !result->rows);
    if (result->rows && !people) {
        gw_csv_records(out, gw_record_field(result->record, result->rows), result->value);
        return GW_OK;
    }
    gw_report_init(&page, out->arena);
    (people ? result->sheet : result->page)(&page, result);
    gw_render_csv(out, &page);
    return GW_OK;
}

static enum gw_status svg(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    (void)color;
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, out->arena);
    const enum gw_status status = result->figure->draw(&canvas, result->figure->of, result->shown, engine);
    if (!status) gw_svg_write(out, &canvas);
    return status;
}

static enum gw_status yaml(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    (void)engine, (void)color;
    result->file(out, result);
    return GW_OK;
}

static enum gw_status sarif(struct gw_text *out, const struct gw_result *result, struct gw_engine *engine, bool color)
{
    struct gw_log log = {.capacity = 0};
    (void)engine, (void)color;
    result->log(&log, out->arena, result);
    gw_render_sarif(out, &log);
    return GW_OK;
}

static const struct gw_format FORMATS[] = {
    {"text", ".txt", NULL, "text/plain", GW_HAS_PAGE, false, text, NULL},
    {"json", ".json", ".jsonl", "application/json", GW_HAS_DATA, false, json, gw_schema_json},
    {"csv", ".csv", NULL, "text/csv", GW_HAS_PAGE, false, csv, NULL},
    {"md", ".md", NULL, "text/markdown", GW_HAS_PAGE, false, markdown, gw_schema_markdown},
    {"svg", ".svg", NULL, "image/svg+xml", GW_HAS_FIGURE, false, svg, NULL},
    {"html", ".html", ".htm", "text/html", GW_HAS_PAGE, true, html, NULL},
    {"pdf", ".pdf", NULL, "application/pdf", GW_HAS_PAGE, true, pdf, NULL},
    {"yaml", ".yaml", ".yml", "application/yaml", GW_HAS_FILE, false, yaml, NULL},
    {"sarif", ".sarif", NULL, "application/sarif+json", GW_HAS_LOG, false, sarif, NULL},
};

const struct gw_format *gw_formats(size_t *n)
{
    *n = COUNT(FORMATS);
    return FORMATS;
}

const struct gw_format *gw_format_named(const char *name)
{
    for (size_t i = 0; i < COUNT(FORMATS); i++)
        if (strcmp(FORMATS[i].name, name) == 0) return &FORMATS[i];
    return NULL;
}

static bool ends_alike(const char *ending, const char *dot)
{
    size_t i = 0;
    while (ending[i] && ending[i] == (dot[i] >= 'A' && dot[i] <= 'Z' ? dot[i] + ('a' - 'A') : dot[i])) i++;
    return !ending[i] && !dot[i];
}

const struct gw_format *gw_format_of_file(const char *path)
{
    const char *dot = strrchr(path, '.');
    for (size_t i = 0; dot && i < COUNT(FORMATS); i++) {
        const struct gw_format *f = &FORMATS[i];
        if (ends_alike(f->ending, dot) || (f->also && ends_alike(f->also, dot))) return f;
    }
    return NULL;
}

bool gw_format_can(const struct gw_format *format, unsigned parts)
{
    return parts & GW_HAS_SCHEMA ? format->schema != NULL : !(format->needs & ~parts);
}

const struct gw_format *gw_format_first(unsigned parts)
{
    for (size_t i = 0; i < COUNT(FORMATS); i++)
        if (gw_format_can(&FORMATS[i], parts)) return &FORMATS[i];
    return NULL;
}

const char *gw_format_names(struct gw_arena *arena, unsigned parts, bool endings)
{
    struct gw_text names;
    const char *last = NULL;
    size_t written = 0;
    gw_text_init(&names, arena);
    for (size_t i = 0; i < COUNT(FORMATS); i++) {
        if (!gw_format_can(&FORMATS[i], parts)) continue;
        if (last) gw_text_addf(&names, "%s%s", written++ ? ", " : "", last);
        last = endings ? FORMATS[i].ending : FORMATS[i].name;
    }
    if (last) gw_text_addf(&names, "%s%s", written ? " or " : "", last);
    return names.length ? names.at : "";
}
