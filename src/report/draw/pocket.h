/* The pocket of a lite type, or the bead that holds it: drawn in pocket.c, judged in pocket_rows.c. */
#ifndef REPORT_DRAW_POCKET_H
#define REPORT_DRAW_POCKET_H

#include "report/draw/details.h"

struct pocket {
    struct detail d;
    const struct gw_lite_type *type;     /* of the project */
    const struct gw_lite_type *glass;    /* what stands for it at the place */
    const struct gw_element *lite;       /* of that type the one that carries most suction */
    struct gw_spot spot;                 /* its left edge */
    double bite, gap, half, face, plate; /* m, as stated: bite, side gap, half of the plate, face clearance, the plate's
                                            thickness; absent */
    double x, y, end;                    /* page: lip of the pocket or edge of the glass, its outer face, where it is
                                            cut off */
    double names;                        /* page: above it stand dimensions, and no names */
    double thick;                        /* m, of the layers as drawn */
};
/* Rows of the ledger. */
void gw_pocket_rows(struct pocket *p);
void gw_bead_rows(struct pocket *p);

#endif
