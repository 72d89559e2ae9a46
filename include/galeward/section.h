/* Cross sections: area, inertia, elastic and plastic moduli, torsion, shear center; from a tube, a polygon, or the
 * center lines of thin walls.
 *
 * x lies in the face of the wall, y along the depth of the member, so wind bends it about x: inertia_x is the integral
 * of y^2. Top is the side of greater y, right that of greater x. Inertias are about the centroid. SI; all engines are
 * pure. A value that the method does not give is GW_ABSENT and a note says why. */
#ifndef GALEWARD_SECTION_H
#define GALEWARD_SECTION_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Rectangular tube; origin at its center. Flanges lie across the depth, webs along it. */
struct gw_tube {
    double width, depth, flange, web; /* m */
    double corner;                    /* m, outside radius of its corners, concentric with the inside; 0: sharp */
};

struct gw_section_point {
    double x, y; /* m */
};

/* A closed line without the first point again at the end; either way round. */
struct gw_polygon {
    const struct gw_section_point *points;
    size_t n;
};

/* A straight piece of thin wall by its center line. Walls are joined where ends meet: split a wall where another runs
 * into it. Curves are polylines. */
struct gw_strip {
    struct gw_section_point from, to;
    double thickness; /* m */
};

enum { GW_SECTION_NOTES = 6, GW_STRIPS = 96, GW_STRIP_NODES = 64, GW_POLYGON_POINTS = 2000 };

struct gw_section {
    double area;                             /* m2 */
    double inertia_x, inertia_y, inertia_xy; /* m4, about the centroid */
    double modulus_top, modulus_bottom;      /* m3, elastic, about x */
    double modulus_left, modulus_right;      /* m3, elastic, about y */
    double plastic_x, plastic_y;             /* m3, about the lines along x and y that halve the area */
    double torsion;                          /* m4, J */
    double warping;                          /* m6, C_w about the shear center; open walls only */
    struct gw_section_point centroid;        /* m, where the input has its origin */
    struct gw_section_point shear_center;    /* m, the same */
    double bottom, top, left, right;         /* m, extreme fibers, the same */
    double principal_major, principal_minor; /* m4 */
    double principal_angle;                  /* rad, from x to the major axis, in (-pi/2, pi/2] */
    int cells;                               /* closed by the walls, where those were given; else -1 */
    const char *notes[GW_SECTION_NOTES];     /* constant strings */
    unsigned n_notes;
};

/* The lesser of the two faces. */
double gw_section_modulus_x(const struct gw_section *section);
double gw_section_modulus_y(const struct gw_section *section);

/* Closed formulas; J by Bredt with a sharp center line, absent where the walls are thicker than its limit. Inside, a
 * round corner is the ellipse that the two walls leave of the radius. Refuses walls that meet, a radius less than a
 * wall and, outside the method, one of over half a side. */
enum gw_status gw_section_tube(struct gw_section *out, const struct gw_tube *tube, struct gw_engine *engine);

/* Exact for the polygon (Green's theorem). J, shear center and warping stay absent: add gw_section_walls. Refuses lines
 * that cross or touch, voids outside the outline or in one another. */
enum gw_status gw_section_polygon(struct gw_section *out, const struct gw_polygon *outline,
                                  const struct gw_polygon *voids, size_t n_voids, struct gw_engine *engine);

/* Walls as rectangles about their center lines: at corners they overlap outside and leave a notch, as the idealization
 * has it. J: shear flow in any number of cells, and L t^3/3 of the walls that are in none. Shear center and warping of
 * the center lines. Refuses walls that cross, that meet another between its ends, or that are not all connected. */
enum gw_status gw_section_strips(struct gw_section *out, const struct gw_strip *strips, size_t n,
                                 struct gw_engine *engine);

/* J, shear center and warping of the center lines for a section that is already there from its outline; refuses center
 * lines whose area is not that of the outline within a tenth. */
enum gw_status gw_section_walls(struct gw_section *section, const struct gw_strip *strips, size_t n,
                                struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
