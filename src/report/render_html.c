/* A report as one HTML file that needs nothing else: no script, no network. */
#include "report/render_html.h"

#include "galeward/svg.h"
#include "report/links.h"
#include "report/long_names.h"
#include "report/markup.h"

#include <string.h>

void gw_html_words(struct html *html, const char *text)
{
    struct gw_reference to;
    size_t at = 0;
    for (; gw_next_reference(&to, text, at, html->derivations); at = to.end) {
        gw_markup_text(html->out, gw_strndup(html->arena, text + at, to.at - at));
        gw_text_addf(html->out, "<a href=\"#D%ld\">D%ld</a>", to.number, to.number);
    }
    gw_markup_text(html->out, text + at);
}

static void tag(struct html *html, const char *open, const char *text, const char *close)
{
    gw_text_add(html->out, open);
    gw_html_words(html, text);
    gw_text_add(html->out, close);
}

/* Sections --------------------------------------------------------------------------------------------------------- */

static bool is_section(const struct gw_block *block) { return block->kind == GW_HEADING && block->level == 2; }

static size_t count_sections(const struct gw_report *report)
{
    size_t n = 0;
    for (size_t i = 0; i < report->n; i++) n += is_section(&report->blocks[i]);
    return n;
}

/* Where many sections follow: a list of them. */
static void contents(struct html *html, const struct gw_report *report)
{
    enum { FEW = 6 };
    if (count_sections(report) <= FEW) return;
    gw_text_add(html->out, "<nav aria-label=\"Sections\"><details><summary>Sections</summary><ul>\n");
    for (size_t i = 0, n = 0; i < report->n; i++) {
        if (!is_section(&report->blocks[i])) continue;
        const long derivation = gw_derivation_number(&report->blocks[i]);
        n++;
        gw_text_addf(html->out, derivation ? "<li><a href=\"#D%ld\">" : "<li><a href=\"#s%ld\">",
                     derivation ? derivation : (long)n);
        gw_markup_text(html->out, report->blocks[i].text);
        gw_text_add(html->out, "</a></li>\n");
    }
    gw_text_add(html->out, "</ul></details></nav>\n");
}

/* Blocks ----------------------------------------------------------------------------------------------------------- */

/* What the drawing's key and list say, where the page is too narrow to show it whole. */
static void told(struct html *html, const struct gw_canvas *canvas)
{
    if (!canvas->n_told) return;
    gw_text_add(html->out, "<ul class=\"told\">\n");
    for (size_t i = 0; i < canvas->n_told; i++) {
        const struct gw_told *t = &canvas->told[i];
        gw_text_add(html->out, "<li>");
        if (t->swatch) gw_svg_swatch(html->out, t->swatch, gw_format(html->arena, "f%dk%zu-", html->figures, i));
        tag(html, "<span>", gw_safe(html->arena, t->words), "</span></li>\n");
    }
    gw_text_add(html->out, "</ul>\n");
}

static void figure(struct html *html, const struct gw_figure *of)
{
    struct gw_canvas canvas;
    gw_text_add(html->out, "<figure>");
    tag(html, "<figcaption>", of->title, "</figcaption>\n");
    const enum gw_status status = gw_draw_figure(&canvas, html->report, of, false, html->shown, html->engine);
    if (status == GW_OK) {
        gw_text_addf(html->out, "<div class=\"paper\" role=\"region\" tabindex=\"0\" aria-label=\"Drawing %d\">",
                     ++html->figures);
        gw_svg_inline(html->out, &canvas, gw_format(html->arena, "f%d-", html->figures));
        gw_text_add(html->out, "</div>\n");
        told(html, &canvas);
        tag(html, "<details><summary>In words</summary><p>",
            canvas.description ? gw_safe(html->arena, canvas.description) : of->alternative, "</p></details>");
    } else {
        tag(html, "<p>", of->alternative, "</p>");
    }
    gw_text_add(html->out, "</figure>\n");
}

/* Blocks from `first` on that are written as one: of one kind. */
static size_t run_of(const struct gw_report *report, size_t first)
{
    size_t n = 1;
    const struct gw_block *one = &report->blocks[first];
    const bool lists = one->kind == GW_ITEM || one->kind == GW_DEFINITION || one->kind == GW_EQUATION;
    while (lists && first + n < report->n && report->blocks[first + n].kind == one->kind) n++;
    return n;
}

static void items(struct html *html, const struct gw_block *first, size_t n)
{
    const int start = first->level;
    if (start) gw_text_addf(html->out, "<ol start=\"%d\">\n", start);
    else gw_text_add(html->out, "<ul>\n");
    for (size_t i = 0; i < n; i++) {
        if (first[i].level) gw_text_addf(html->out, "<li value=\"%d\">", first[i].level);
        else gw_text_add(html->out, "<li>");
        tag(html, "", first[i].text, "</li>\n");
    }
    gw_text_add(html->out, start ? "</ol>\n" : "</ul>\n");
}

static void definitions(struct html *html, const struct gw_block *first, size_t n)
{
    gw_text_add(html->out, "<dl>\n");
    for (size_t i = 0; i < n; i++) {
        tag(html, "<dt>", first[i].text, "</dt>");
        tag(html, "<dd>", first[i].meaning, "</dd>\n");
    }
    gw_text_add(html->out, "</dl>\n");
}

static void heading(struct html *html, const struct gw_block *block, size_t *sections)
{
    const int level = block->level < 3 ? block->level : 3;
    const long derivation = gw_derivation_number(block);
    if (level == 2) ++*sections;
    if (derivation) gw_text_addf(html->out, "<h2 id=\"D%ld\">", derivation);
    else if (level == 2) gw_text_addf(html->out, "<h2 id=\"s%zu\">", *sections);
    else gw_text_addf(html->out, "<h%d>", level);
    gw_markup_text(html->out, block->text);
    gw_text_addf(html->out, "</h%d>\n", level);
}

static void put_run(struct html *html, const struct gw_block *block, size_t n, size_t *sections)
{
    switch (block->kind) {
    case GW_HEADING:
        heading(html, block, sections);
        return;
    case GW_LINE:
        if (*block->text) tag(html, block->level ? "<p class=\"lead\">" : "<p>", block->text, "</p>\n");
        return;
    case GW_ITEM:
        items(html, block, n);
        return;
    case GW_TABLE:
        gw_html_table(html, block);
        return;
    case GW_EQUATION:
        gw_html_steps(html, block, n);
        return;
    case GW_FIGURE:
        figure(html, &block->figure);
        return;
    case GW_DEFINITION:
        definitions(html, block, n);
        return;
    case GW_PAGE_BREAK:
        gw_text_add(html->out, "<div class=\"new\"></div>\n");
        return;
    }
}

static const char *title_of(const struct gw_report *report)
{
    for (size_t i = 0; i < report->n; i++)
        if (report->blocks[i].kind == GW_HEADING) return report->blocks[i].text;
    return "Galeward";
}

void gw_render_html(struct gw_text *out, const struct gw_report *report, enum gw_units shown, struct gw_engine *engine)
{
    struct html html = {.out = out, .report = report, .arena = report->arena, .engine = engine, .shown = shown};
    size_t sections = 0;
    html.derivations = gw_count_derivations(report);
    gw_text_add(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
                     "content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light "
                     "dark\">\n");
    tag(&html, "<title>", title_of(report), "</title>\n");
    gw_text_addf(out, "<style>\n%s</style>\n</head>\n<body>\n<a class=\"skip\" href=\"#main\">To the report</a>\n",
                 gw_html_style);
    tag(&html, "<header>", report->head ? report->head : "", "</header>\n");
    contents(&html, report);
    gw_text_add(out, "<main id=\"main\">\n");
    for (size_t i = 0, n; i < report->n; i += n) {
        n = run_of(report, i);
        put_run(&html, &report->blocks[i], n, &sections);
    }
    tag(&html, "</main>\n<footer>", report->foot ? report->foot : "", "</footer>\n</body>\n</html>\n");
}
