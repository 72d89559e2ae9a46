/* The way of water out of a pocket: drawn in weep.c, judged in weep_rows.c. */
#ifndef REPORT_DRAW_WEEP_H
#define REPORT_DRAW_WEEP_H

#include "report/draw/details.h"

struct weep {
    struct detail d;
    const struct gw_wall_grid *grid;
    struct gw_spot spot;     /* the pocket on which most rain falls */
    struct gw_message where; /* said where there is no such place */
    /* m, as the system states them; absent */
    double depth, upstand, slot_length, slot_height, slots;
    double offset, dam, slope;         /* the least that it asks of the work */
    const struct gw_own_limits *cover; /* length of the cover's slots; NULL */
    double head, needed;               /* m: static head of the water test, with its margin; absent: not known */
    struct gw_message unknown;         /* why they are not */
};
void gw_weep_figures(struct weep *w);
void gw_weep_rows(struct weep *w);

#endif
