/* A report as pages: what begins, heads and ends each; blocks one after the other. */
#include "report/links.h"
#include "report/pdf/pdf.h"

#include <cairo-pdf.h>
#include <math.h>
#include <string.h>

#define MM (72 / 25.4)
static const double PAGE_WIDTH = 210 * MM, PAGE_HEIGHT = 297 * MM; /* A4 */
static const struct pdf_style MARGIN = {8, PDF_REGULAR, GW_INK2, NULL, false};
static const struct pdf_style H1 = {17, PDF_BOLD, GW_INK, NULL, false}, H2 = {11.5, PDF_BOLD, GW_INK, NULL, false},
                              H3 = {9.5, PDF_SEMIBOLD, GW_INK, NULL, false},
                              LEAD = {13, PDF_SEMIBOLD, GW_INK, NULL, false},
                              TERM = {9.5, PDF_SEMIBOLD, GW_INK, NULL, false};

double pdf_left(void) { return 15 * MM; }
double pdf_width(void) { return 180 * MM; }
double pdf_top(void) { return 20 * MM; }
double pdf_bottom(void) { return pdf_top() + 250 * MM; }

void pdf_color(struct pdf *pdf, const char *color)
{
    unsigned long value = 0;
    const double most = 255;
    for (const char *c = color + 1; *c; c++)
        value = value * 16 + (unsigned long)(*c <= '9' ? *c - '0' : (*c | 0x20) - 'a' + 10);
    cairo_set_source_rgb(pdf->cr, (double)(value >> 16 & 255) / most, (double)(value >> 8 & 255) / most,
                         (double)(value & 255) / most);
}

void pdf_rule(struct pdf *pdf, double y, double width, const char *color)
{
    pdf_color(pdf, color);
    cairo_set_line_width(pdf->cr, width);
    cairo_move_to(pdf->cr, pdf_left(), y);
    cairo_line_to(pdf->cr, pdf_left() + pdf_width(), y);
    cairo_stroke(pdf->cr);
}

static void margins(struct pdf *pdf)
{
    const double half = pdf_width() * 0.7, y = 9 * MM, foot = PAGE_HEIGHT - 9 * MM - MARGIN.size;
    const char *page = gw_format(pdf->arena, "page %d of %d", pdf->page, pdf->pages);
    if (pdf->report->head) pdf_put_line(pdf, pdf_left(), y, pdf_width(), pdf->report->head, &MARGIN);
    if (pdf->report->foot) pdf_put_line(pdf, pdf_left(), foot, half, pdf->report->foot, &MARGIN);
    pdf_put(pdf, pdf_left() + half, foot, pdf_width() - half, page, &MARGIN, true);
}

/* Head and foot of a page are of no block. */
void pdf_new_page(struct pdf *pdf)
{
    if (pdf->tag) cairo_tag_end(pdf->cr, pdf->tag);
    if (pdf->page) cairo_show_page(pdf->cr);
    pdf->page++;
    pdf->y = pdf_top();
    margins(pdf);
    if (pdf->tag) cairo_tag_begin(pdf->cr, pdf->tag, NULL);
}

void pdf_need(struct pdf *pdf, double height)
{
    if (pdf->y + height > pdf_bottom() && pdf->y > pdf_top()) pdf_new_page(pdf);
}

/* Blocks ----------------------------------------------------------------------------------------------------------- */

static void bookmark(struct pdf *pdf, const struct gw_block *block)
{
    struct gw_text where;
    if (!pdf->bookmarks || block->level > 2) return;
    gw_text_init(&where, pdf->arena);
    gw_text_addf(&where, "page=%d pos=[0 ", pdf->page);
    gw_text_fixed(&where, pdf->y, 1);
    gw_text_add(&where, "]");
    const int parent = block->level == 2 ? pdf->outline : CAIRO_PDF_OUTLINE_ROOT;
    const int made = cairo_pdf_surface_add_outline(pdf->surface, parent, gw_safe(pdf->arena, block->text), where.at,
                                                   CAIRO_PDF_OUTLINE_FLAG_OPEN);
    if (block->level == 1) pdf->outline = made;
}

/* Of a derivation, to which its name leads. */
static void destination(struct pdf *pdf, const struct gw_block *block)
{
    const long number = gw_derivation_number(block);
    if (!pdf->bookmarks || !number || number > pdf->derivations) return;
    struct gw_text where;
    gw_text_init(&where, pdf->arena);
    gw_text_addf(&where, "name='D%ld' x=0 y=", number);
    gw_text_fixed(&where, pdf->y, 1);
    cairo_tag_begin(pdf->cr, CAIRO_TAG_DEST, where.at);
    cairo_tag_end(pdf->cr, CAIRO_TAG_DEST);
}

enum { BESIDE = 74, INDENT = 14 }; /* pt: where the meaning of a term begins, beside it or below it */

static bool is_narrow(struct pdf *pdf, const struct gw_block *definition)
{
    return pdf_text_width(pdf, definition->text, &TERM) < BESIDE - 4;
}

static double definition_height(struct pdf *pdf, const struct gw_block *block)
{
    const bool narrow = is_narrow(pdf, block);
    const double meaning = pdf_height_within(pdf, block->meaning, &pdf_body, pdf_width() - (narrow ? BESIDE : INDENT));
    return meaning + 1.5 + (narrow ? 0 : pdf_text_height(pdf, block->text, &TERM));
}

/* Lines and terms below a heading, up to the first that is more: a table stands under them with its head and a row. */
static double under(struct pdf *pdf, const struct gw_block *heading)
{
    const struct gw_block *at = heading + 1, *end = pdf->report->blocks + pdf->report->n;
    double height = 0;
    for (; at < end && (at->kind == GW_LINE || at->kind == GW_DEFINITION); at++)
        height +=
            at->kind == GW_DEFINITION ? definition_height(pdf, at) : pdf_text_height(pdf, at->text, &pdf_body) + 4;
    return height + (at < end && at->kind == GW_TABLE ? PDF_TABLE_START : 0);
}

static const struct pdf_style *style_of(const struct gw_block *heading)
{
    return heading->level == 1 ? &H1 : heading->level == 2 ? &H2 : &H3;
}

static double before_heading(const struct gw_block *heading)
{
    return heading->level == 1 ? 0 : heading->level == 2 ? 14 : 8;
}

/* A heading with the beginning of what it heads, a deeper heading with its own. */
static double heading_needs(struct pdf *pdf, const struct gw_block *heading)
{
    const struct gw_block *next = heading + 1, *end = pdf->report->blocks + pdf->report->n;
    const double least = heading->level == 2 ? 95 : 60, size = style_of(heading)->size;
    const double most = (pdf_bottom() - pdf_top()) / 3; /* longer text may part */
    const bool deeper = next < end && next->kind == GW_HEADING && next->level > heading->level;
    const double below = deeper ? heading_needs(pdf, next) + 2 * size : size + under(pdf, heading);
    return before_heading(heading) + size + fmax(least, fmin(most, below));
}

/* With room for what it heads. */
static void heading(struct pdf *pdf, const struct gw_block *block)
{
    const struct pdf_style *style = style_of(block);
    const double before = before_heading(block);
    pdf_need(pdf, heading_needs(pdf, block));
    if (pdf->y > pdf_top()) pdf->y += before;
    if (block->level == 2) {
        pdf_rule(pdf, pdf->y, 1.4, GW_RULE);
        pdf->y += 5;
    }
    bookmark(pdf, block);
    destination(pdf, block);
    const long derivations = pdf->derivations;
    pdf->derivations = 0; /* a heading leads nowhere */
    pdf_paragraph(pdf, 0, block->text, style);
    pdf->derivations = derivations;
    pdf->y += 4;
}

static void item(struct pdf *pdf, const struct gw_block *block)
{
    const double indent = 14;
    const char *mark = block->level ? gw_format(pdf->arena, "%d.", block->level) : "•";
    pdf_need(pdf, 2 * pdf_body.size);
    pdf_put(pdf, pdf_left() + 3, pdf->y, 0, mark, &pdf_body, false);
    pdf_paragraph(pdf, block->level > 9 ? indent + 8 : indent, block->text, &pdf_body);
    pdf->y += 2.5;
}

/* The term beside what it means, where it has room. */
static void definition(struct pdf *pdf, const struct gw_block *block)
{
    const bool narrow = is_narrow(pdf, block);
    pdf_need(pdf, fmin(3 * pdf_body.size, definition_height(pdf, block)));
    if (narrow) pdf_put(pdf, pdf_left(), pdf->y, BESIDE, block->text, &TERM, false);
    else pdf_paragraph(pdf, 0, block->text, &TERM);
    pdf_paragraph(pdf, narrow ? BESIDE : INDENT, block->meaning, &pdf_body);
    pdf->y += 1.5;
}

/* What announces the next block stands with its beginning. */
static void line(struct pdf *pdf, const struct gw_block *block)
{
    const struct pdf_style *style = block->level ? &LEAD : &pdf_body;
    const size_t n = strlen(block->text);
    if (n && block->text[n - 1] == ':')
        pdf_need(pdf, fmin(pdf_text_height(pdf, block->text, style), (pdf_bottom() - pdf_top()) / 3) + PDF_TABLE_START);
    if (n) pdf_paragraph(pdf, 0, block->text, style);
    pdf->y += 4;
}

static void put_block(struct pdf *pdf, const struct gw_block *block)
{
    switch (block->kind) {
    case GW_HEADING:
        heading(pdf, block);
        return;
    case GW_LINE:
        line(pdf, block);
        return;
    case GW_ITEM:
        item(pdf, block);
        return;
    case GW_TABLE:
        pdf_table(pdf, block);
        return;
    case GW_EQUATION:
        pdf_step(pdf, &block->equation);
        return;
    case GW_FIGURE:
        pdf_figure(pdf, block);
        return;
    case GW_DEFINITION:
        definition(pdf, block);
        return;
    case GW_PAGE_BREAK:
        if (pdf->y > pdf_top()) pdf_new_page(pdf);
        return;
    }
}

static const char *tag_of(const struct gw_block *block)
{
    static const char *const headings[] = {"H1", "H2", "H3"};
    switch (block->kind) {
    case GW_HEADING:
        return headings[block->level < 3 ? block->level - 1 : 2];
    case GW_TABLE:
        return "Div";
    case GW_FIGURE:
        return "Figure";
    case GW_EQUATION:
        return "Formula";
    default:
        return "P";
    }
}

static void put_tagged(struct pdf *pdf, const struct gw_block *block)
{
    if (!pdf->bookmarks || block->kind == GW_PAGE_BREAK) {
        put_block(pdf, block);
        return;
    }
    pdf->tag = tag_of(block);
    cairo_tag_begin(pdf->cr, pdf->tag, NULL);
    put_block(pdf, block);
    cairo_tag_end(pdf->cr, pdf->tag);
    pdf->tag = NULL;
}

/* The picture that the first page had no room for whole stands behind it. */
static void put(struct pdf *pdf, size_t i)
{
    const struct gw_block *block = &pdf->report->blocks[i];
    const bool ends = i && block->part != GW_PART_FIRST && block[-1].part == GW_PART_FIRST;
    if (ends && pdf->small) put_tagged(pdf, pdf->small);
    put_tagged(pdf, block);
}

/* The document ----------------------------------------------------------------------------------------------------- */

static cairo_status_t take(void *closure, const unsigned char *bytes, unsigned int length)
{
    if (closure) gw_text_bytes(closure, (const char *)bytes, length);
    return CAIRO_STATUS_SUCCESS;
}

static void describe(struct pdf *pdf)
{
    const char *title = "Galeward";
    for (size_t i = pdf->report->n; i-- > 0;)
        if (pdf->report->blocks[i].kind == GW_HEADING && pdf->report->blocks[i].level == 1)
            title = pdf->report->blocks[i].text;
    cairo_pdf_surface_set_metadata(pdf->surface, CAIRO_PDF_METADATA_TITLE, gw_safe(pdf->arena, title));
    cairo_pdf_surface_set_metadata(pdf->surface, CAIRO_PDF_METADATA_CREATOR, "Galeward " GW_VERSION);
    /* No date of the run: like input gives like bytes. */
    cairo_pdf_surface_set_metadata(pdf->surface, CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
}

static PangoContext *letters_of(cairo_t *cr)
{
    PangoContext *context = pango_cairo_create_context(cr);
    cairo_font_options_t *options = cairo_font_options_create();
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    pango_cairo_context_set_font_options(context, options);
    pango_context_set_round_glyph_positions(context, FALSE);
    cairo_font_options_destroy(options);
    return context;
}

static int set_pages(struct gw_text *out, struct pdf *pdf, int pages)
{
    pdf->surface = cairo_pdf_surface_create_for_stream(take, out, PAGE_WIDTH, PAGE_HEIGHT);
    pdf->cr = cairo_create(pdf->surface);
    pdf->letters = letters_of(pdf->cr);
    pdf->page = 0, pdf->pages = pages, pdf->small = NULL, pdf->outline = CAIRO_PDF_OUTLINE_ROOT;
    pdf->bookmarks = out != NULL;
    pdf->derivations = gw_count_derivations(pdf->report);
    describe(pdf);
    /* Links must stand in a structure: without one cairo names objects that it never writes. */
    if (pdf->bookmarks) cairo_tag_begin(pdf->cr, "Document", NULL);
    pdf_new_page(pdf);
    for (size_t i = 0; i < pdf->report->n; i++) put(pdf, i);
    if (pdf->bookmarks) cairo_tag_end(pdf->cr, "Document");
    cairo_show_page(pdf->cr);
    g_object_unref(pdf->letters);
    cairo_destroy(pdf->cr);
    cairo_surface_finish(pdf->surface);
    const bool good = cairo_surface_status(pdf->surface) == CAIRO_STATUS_SUCCESS;
    cairo_surface_destroy(pdf->surface);
    return good ? pdf->page : 0;
}

enum gw_status gw_pdf_write(struct gw_text *out, const struct gw_report *report, enum gw_units shown,
                            struct gw_engine *engine)
{
    struct pdf pdf = {.arena = report->arena, .report = report, .shown = shown, .engine = engine};
    const int pages = set_pages(NULL, &pdf, 0); /* to know how many there are */
    if (pages && set_pages(out, &pdf, pages)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "pdf", "the PDF library could not set these pages");
}
