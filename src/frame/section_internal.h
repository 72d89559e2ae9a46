/* What the files of src/frame that make sections share. */
#ifndef GALEWARD_SECTION_INTERNAL_H
#define GALEWARD_SECTION_INTERNAL_H

#include "base/tolerance.h"
#include "galeward/section.h"

/* A closed line that bounds metal (sign 1) or a void (-1), either way round. Metal that overlaps counts twice. */
struct gw_ring {
    const struct gw_section_point *points;
    size_t n;
    double sign;
};

void gw_section_clear(struct gw_section *out);
void gw_section_note(struct gw_section *section, const char *text);
/* Signed area: positive when the points run from x toward y. */
double gw_ring_area(const struct gw_ring *ring);
/* Everything but torsion, shear center and warping. The net area must be positive. */
void gw_rings_section(struct gw_section *out, const struct gw_ring *rings, size_t n);
/* Elastic moduli and principal axes from inertias and fibers, with their steps. */
void gw_section_finish(struct gw_section *section, struct gw_engine *engine);

enum gw_crossing { GW_APART, GW_TOUCHING, GW_CROSSING };
/* Of the segments a-b and c-d; within `near` of each other they touch. */
enum gw_crossing gw_segments(struct gw_section_point a, struct gw_section_point b, struct gw_section_point c,
                             struct gw_section_point d, double near);
double gw_point_to_segment(struct gw_section_point p, struct gw_section_point a, struct gw_section_point b);

#endif
