/* Shared by the files of the response: pulse.c, isodamage.c. */
#ifndef BLAST_INTERNAL_H
#define BLAST_INTERNAL_H

#include "galeward/blast.h"

/* The lite at a coordinate y of its curve. */
struct blast_state {
    double resistance; /* Pa */
    double mean;       /* m, mean deflection */
    double mean_rate;  /* its derivative over y */
};
struct blast_state gw_blast_state_at(const struct gw_blast_curve *curve, double y);
double gw_blast_coordinate(const struct gw_blast_curve *curve, double resistance);
/* Strain energy per area, J/m2. */
double gw_blast_energy_at(const struct gw_blast_curve *curve, double y);
double gw_blast_energy_between(const struct gw_blast_curve *curve, double from, double to);

/* Coordinate of the largest deflection; infinite beyond the curve. */
enum gw_status gw_blast_peak(double *y, const struct gw_blast_curve *curve, struct gw_blast_pair load,
                             struct gw_engine *engine);

#endif
