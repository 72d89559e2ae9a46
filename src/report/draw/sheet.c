#include "report/draw/sheet.h"

#include "report/page.h"

#include <math.h>
#include <string.h>

/* Heights of capitals: 3.5 mm, 2.5 mm, and never less than 1.8 mm. */
static const struct gw_lettering TITLE = {.size = 18.5, .bold = true};
static const struct gw_lettering CAPTION = {.size = 13.5, .bold = true};
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE, .color = GW_INK2};
const struct gw_lettering gw_sheet_label = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE, .plate = true};

void gw_sheet_open(struct sheet *sheet, struct gw_canvas *canvas, enum gw_units shown)
{
    *sheet = (struct sheet){.canvas = canvas, .arena = canvas->arena, .shown = shown};
    gw_text_init(&sheet->missed, sheet->arena);
    sheet->within = (struct gw_box){SHEET_MARGIN, 0, SHEET_MARGIN + SHEET_LIVE, INFINITY};
    canvas->width = SHEET_PAGE;
}

void gw_sheet_rule(struct sheet *sheet, double y)
{
    gw_canvas_line(sheet->canvas, (struct gw_point){SHEET_MARGIN, y}, (struct gw_point){SHEET_MARGIN + SHEET_LIVE, y},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
}

double gw_sheet_head(struct sheet *sheet, const char *title)
{
    const struct gw_point at = {SHEET_MARGIN, SHEET_MARGIN + TITLE.size};
    const double rule = gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE, &TITLE, title) - TITLE.size + 1;
    sheet->canvas->title = title;
    gw_sheet_rule(sheet, rule);
    return rule + 1.5 * PLAIN.size;
}

double gw_sheet_lines(struct sheet *sheet, double top, const char *const *lines, size_t n)
{
    struct gw_point at = {SHEET_MARGIN, top};
    for (size_t i = 0; i < n; i++)
        if (lines[i]) at.y = gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE, &PLAIN, lines[i]);
    return at.y;
}

double gw_sheet_marked(struct sheet *sheet, double top, enum sheet_mark mark, const char *words)
{
    const double room = 17;
    const struct gw_lettering font = {.size = CAPTION.size, .bold = true, .color = gw_mark_ink(mark)};
    const struct gw_point at = {SHEET_MARGIN + room, top + 3};
    gw_mark_draw(sheet->canvas, (struct gw_point){SHEET_MARGIN + 6, at.y - 0.36 * font.size}, mark);
    return gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE - room, &font, words);
}

double gw_sheet_verdict(struct sheet *sheet, double top, bool passes, const char *words)
{
    return gw_sheet_marked(sheet, top, passes ? MARK_SETTLED : MARK_STOP, words);
}

double gw_sheet_missed(struct sheet *sheet, double top)
{
    const struct gw_point at = {SHEET_MARGIN, top + PLAIN.size};
    if (!sheet->missed.length) return top;
    const char *words = gw_format(sheet->arena, "No room above for: %s.", sheet->missed.at);
    gw_text_init(&sheet->missed, sheet->arena);
    return gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE, &PLAIN, words) - PLAIN.size / 2;
}

void gw_sheet_foot(struct sheet *sheet, double top, const char *const *notes, size_t n)
{
    struct gw_point at = {SHEET_MARGIN, gw_sheet_missed(sheet, top)};
    gw_sheet_rule(sheet, at.y);
    at.y += 1.5 * PLAIN.size;
    for (size_t i = 0; i < n; i++)
        at.y =
            gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE, &PLAIN, gw_format(sheet->arena, "Note: %s.", notes[i]));
    if (!sheet->canvas->on_page) at.y = gw_canvas_paragraph(sheet->canvas, at, SHEET_LIVE, &PLAIN, gw_caution_text());
    sheet->canvas->height = at.y - PLAIN.size + SHEET_MARGIN / 2.0;
}

double gw_sheet_caption(struct sheet *sheet, struct gw_point at, double width, const char *title, const char *second)
{
    at.y = gw_canvas_paragraph(sheet->canvas, at, width, &CAPTION, title);
    if (second) at.y = gw_canvas_paragraph(sheet->canvas, at, width, &PLAIN, second);
    return at.y;
}

const char *gw_sheet_given(const struct sheet *sheet, enum gw_dim dim, double si)
{
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    gw_quantity_print(&text, gw_units_standard(), dim, sheet->shown, si);
    return text.at;
}

static const char *figure(const struct sheet *sheet, enum gw_dim dim, double si, enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    gw_add_quantity(&text, dim, sheet->shown, si, rounding);
    return text.length ? text.at : "";
}

const char *gw_sheet_place(const struct sheet *sheet, double si) { return figure(sheet, GW_LENGTH, si, NEAREST); }

const char *gw_sheet_demand(const struct sheet *sheet, enum gw_dim dim, double si)
{
    return figure(sheet, dim, si, UP);
}

const char *gw_sheet_capacity(const struct sheet *sheet, enum gw_dim dim, double si)
{
    return figure(sheet, dim, si, DOWN);
}

const char *gw_sheet_use(const struct sheet *sheet, double use)
{
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    gw_add_utilization(&text, use);
    return text.at;
}

const char *gw_sheet_name(const struct sheet *sheet, const char *name)
{
    enum { MOST = 24 };
    const size_t length = strlen(name);
    size_t used = 0;
    for (int i = 0; i < MOST && used < length; i++) {
        unsigned long code;
        const size_t next = gw_utf8_read(name + used, length - used, &code);
        used += next ? next : 1;
    }
    return gw_strndup(sheet->arena, name, used);
}

void gw_sheet_list(struct sheet *sheet, const char *listed)
{
    gw_text_addf(&sheet->missed, "%s%s", sheet->missed.length ? "; " : "", listed);
}

bool gw_sheet_put(struct sheet *sheet, struct gw_point at, double step, int tries, const struct gw_lettering *lettering,
                  const char *text, const char *listed)
{
    if (gw_canvas_label(sheet->canvas, at, step, tries, &sheet->within, lettering, text)) return true;
    gw_sheet_list(sheet, listed);
    return false;
}

void gw_sheet_number(struct sheet *sheet, struct gw_point center, size_t number)
{
    static const struct gw_lettering font = {.size = GW_LABEL_SIZE, .bold = true, .align = GW_ALIGN_MIDDLE};
    gw_canvas_circle(sheet->canvas, center, SHEET_FLAG,
                     &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM});
    gw_canvas_text(sheet->canvas, (struct gw_point){center.x, center.y + 0.36 * font.size}, &font,
                   gw_format(sheet->arena, "%zu", number));
}

bool gw_sheet_plate(struct sheet *sheet, const struct gw_box *box, enum sheet_mark mark, const char *words)
{
    const double height = 15.9, room = 15, gap = 4; /* pixels: of the plate; for the mark; before and after */
    const struct gw_lettering font = {.size = GW_LABEL_SIZE, .bold = true, .color = gw_mark_ink(mark)};
    const double width = gap + (mark ? room : 0) + gw_lettering_width(&font, words) + gap;
    const double x = (box->left + box->right) / 2, y = (box->top + box->bottom) / 2;
    const struct gw_box plate = {x - width / 2, y - height / 2, x + width / 2, y + height / 2};
    if (width + 2 * gap > box->right - box->left || height + gap > box->bottom - box->top) return false;
    if (!gw_canvas_is_free(sheet->canvas, &plate)) return false;
    gw_canvas_rectangle(sheet->canvas, &plate,
                        &(struct gw_look){.fill = GW_PAPER, .line = font.color, .width = GW_LINE_THIN});
    if (mark) gw_mark_draw(sheet->canvas, (struct gw_point){plate.left + gap + 6, y}, mark);
    gw_canvas_text(sheet->canvas, (struct gw_point){plate.left + gap + (mark ? room : 0), y + 0.36 * font.size}, &font,
                   words);
    return true;
}
