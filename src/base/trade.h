/* Figures as people of the trade say them: fractions of an inch, slopes, no more digits than a tape has. */
#ifndef GALEWARD_BASE_TRADE_H
#define GALEWARD_BASE_TRADE_H

#include "galeward/units.h"

struct gw_text;
/* See gw_of_trade (galeward/message.h). */
void gw_trade_print(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, int side, bool bare);

#endif
