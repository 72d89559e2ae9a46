/* A small canvas, and what is written of it. */
#ifndef GALEWARD_TESTS_WRITTEN_SUPPORT_H
#define GALEWARD_TESTS_WRITTEN_SUPPORT_H

#include "support.h"

#include "galeward/svg.h"

static inline struct gw_canvas opened(struct world *w)
{
    struct gw_canvas canvas;
    gw_canvas_init(&canvas, &w->arena);
    canvas.width = 200;
    canvas.height = 100.5;
    return canvas;
}

static inline struct gw_text written(struct world *w, const struct gw_canvas *canvas)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_svg_write(&text, canvas);
    return text;
}

static inline size_t count_of(const char *text, const char *word)
{
    size_t n = 0;
    for (; (text = strstr(text, word)); text++) n++;
    return n;
}

#endif
