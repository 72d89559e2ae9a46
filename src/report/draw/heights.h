/* Pressure on a wall's lites by their height: the steps that a drawing shows, which a test can count. */
#ifndef REPORT_DRAW_HEIGHTS_H
#define REPORT_DRAW_HEIGHTS_H

#include "report/draw/pictures.h"

enum heights_way { HEIGHTS_OUTWARD, HEIGHTS_INWARD, HEIGHTS_WAYS };
enum heights_zone { HEIGHTS_MIDDLE, HEIGHTS_EDGE, HEIGHTS_ZONES }; /* 4, 5 */

/* Strips of lites, or where these are too low on the page all those of a floor; of each way and zone the lite that
 * takes most. NULL: there is none, or no method gives its pressure. */
struct height_step {
    double bottom, top; /* m above ground */
    int first, last;    /* stories, from 1 */
    bool parapet;
    const struct gw_element *worst[HEIGHTS_WAYS][HEIGHTS_ZONES];
};
struct height_steps {
    struct height_step *items;
    size_t n;
};
double gw_heights_pressure(const struct gw_element *lite, enum heights_way way); /* Pa, magnitude; absent: none */
struct height_steps gw_height_steps(struct gw_arena *arena, const struct wall_picture *of, bool by_floor);

enum gw_status gw_draw_heights(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);

#endif
