/* The marks of verdicts: each told by its shape alone. */
#include "report/draw/sheet.h"

static const double HALF = 5.7, ARM = 2.6; /* pixels: 3 mm high */

const char *gw_mark_ink(enum sheet_mark mark)
{
    static const char *const inks[] = {
        [MARK_NONE] = GW_INK,        [MARK_STOP] = GW_INK_FAIL,    [MARK_ASK] = GW_INK_ASK,
        [MARK_IN_HAND] = GW_INK_ASK, [MARK_SETTLED] = GW_INK_PASS, [MARK_NOT_ASKED] = GW_INK_NONE};
    return inks[mark];
}

static void cross(struct gw_canvas *canvas, struct gw_point c)
{
    const struct gw_look look = {.line = GW_PAPER, .width = GW_LINE_BOLD};
    const struct gw_box square = {c.x - HALF, c.y - HALF, c.x + HALF, c.y + HALF};
    gw_canvas_rectangle(canvas, &square, &(struct gw_look){.fill = GW_INK_FAIL});
    gw_canvas_line(canvas, (struct gw_point){c.x - ARM, c.y - ARM}, (struct gw_point){c.x + ARM, c.y + ARM}, &look);
    gw_canvas_line(canvas, (struct gw_point){c.x - ARM, c.y + ARM}, (struct gw_point){c.x + ARM, c.y - ARM}, &look);
}

/* A question, or an exclamation, of strokes. */
static void asked(struct gw_canvas *canvas, struct gw_point c, const struct gw_look *look)
{
    const struct gw_point hook[] = {
        {c.x - 1.5, c.y - 1.4}, {c.x - 0.9, c.y - 2.6}, {c.x + 0.6, c.y - 2.6}, {c.x + 1.4, c.y - 1.4}, {c.x, c.y},
        {c.x, c.y + 1}};
    gw_canvas_polyline(canvas, hook, sizeof hook / sizeof *hook, look);
    gw_canvas_line(canvas, (struct gw_point){c.x, c.y + 2}, (struct gw_point){c.x, c.y + 3}, look);
}

static void exclaimed(struct gw_canvas *canvas, struct gw_point c, const struct gw_look *look)
{
    gw_canvas_line(canvas, (struct gw_point){c.x, c.y - 1.6}, (struct gw_point){c.x, c.y + 1.6}, look);
    gw_canvas_line(canvas, (struct gw_point){c.x, c.y + 2.6}, (struct gw_point){c.x, c.y + 3.6}, look);
}

void gw_mark_draw(struct gw_canvas *canvas, struct gw_point c, enum sheet_mark mark)
{
    const struct gw_look open = {.fill = GW_PAPER, .line = gw_mark_ink(mark), .width = GW_LINE_MEDIUM};
    const struct gw_look line = {.line = gw_mark_ink(mark), .width = GW_LINE_MEDIUM};
    const struct gw_point diamond[] = {{c.x, c.y - HALF}, {c.x + HALF, c.y}, {c.x, c.y + HALF}, {c.x - HALF, c.y}};
    const struct gw_point triangle[] = {{c.x, c.y - HALF}, {c.x + HALF, c.y + HALF - 1}, {c.x - HALF, c.y + HALF - 1}};
    const struct gw_point tick[] = {{c.x - ARM, c.y}, {c.x - ARM / 3, c.y + ARM}, {c.x + ARM, c.y - ARM}};
    switch (mark) {
    case MARK_STOP:
        cross(canvas, c);
        break;
    case MARK_ASK:
        gw_canvas_polygon(canvas, diamond, 4, &open);
        asked(canvas, c, &line);
        break;
    case MARK_IN_HAND:
        gw_canvas_polygon(canvas, triangle, 3, &open);
        exclaimed(canvas, c, &line);
        break;
    case MARK_SETTLED:
        gw_canvas_circle(canvas, c, HALF, &open);
        gw_canvas_polyline(canvas, tick, 3, &line);
        break;
    case MARK_NOT_ASKED:
        gw_canvas_rectangle(canvas, &(struct gw_box){c.x - HALF, c.y - 3, c.x + HALF, c.y + 3}, &open);
        gw_canvas_line(canvas, (struct gw_point){c.x - ARM, c.y}, (struct gw_point){c.x + ARM, c.y}, &line);
        break;
    case MARK_NONE:
        break;
    }
}
