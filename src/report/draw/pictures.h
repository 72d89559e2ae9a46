/* The drawings that results have, by name. A name is a word and what it is of: "elevation:east",
 * "elevation:east:plover-60". */
#ifndef REPORT_DRAW_PICTURES_H
#define REPORT_DRAW_PICTURES_H

#include "galeward/inspection.h"
#include "galeward/report.h"

/* "Plover 60": "plover-60"; never empty. */
const char *gw_picture_word(struct gw_arena *arena, const char *name);
void gw_picture_add(struct gw_pictures *pictures, struct gw_arena *arena, const char *name,
                    const struct gw_figure *figure);

/* A drawing of one wall; `of` of its figures. */
struct wall_picture {
    const struct gw_results *results;
    const struct gw_wall_grid *grid;
    const struct gw_system *candidate; /* NULL: what the site asks */
    bool inward;
};
/* elevation_demand.c: outward and inward pressures of each wall. elevation_check.c: verdicts of a candidate. */
enum gw_status gw_draw_elevation_demand(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                        struct gw_engine *engine);
enum gw_status gw_draw_elevation_check(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                       struct gw_engine *engine);

/* A drawing of one candidate. */
struct candidate_picture {
    const struct gw_results *results;
    const struct gw_system *candidate;
};
/* use.c: its use by check. */
enum gw_status gw_draw_use(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);

/* "Tern Street Clinic, 24-117." */
const char *gw_project_line(struct gw_arena *arena, const struct gw_results *results);
/* The one of that name on the page, where the page shows drawings and there is such a one. */
struct page;
void gw_page_picture(struct page *page, const struct gw_pictures *pictures, const char *name);
/* readings of a wall, and torques against their age: `of` a struct readings_picture. */
struct readings_picture {
    const struct gw_results *results;
    const struct gw_inspection *inspection;
    const struct gw_wall_grid *grid; /* NULL: all walls */
};
void gw_pictures_of_readings(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                             const struct gw_inspection *inspection);
enum gw_status gw_draw_elevation_readings(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                          struct gw_engine *engine);
enum gw_status gw_draw_torques(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);

#endif
