/* The drawings that results have, by name. A name is a word and what it is of: "elevation:east",
 * "elevation:east:plover-60". */
#ifndef REPORT_DRAW_PICTURES_H
#define REPORT_DRAW_PICTURES_H

#include "galeward/inspection.h"
#include "galeward/report.h"
#include "galeward/review.h"
#include "galeward/select.h"
#include "galeward/specify.h"

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
    const char *also; /* blast: who else has its figures; NULL */
};
/* elevation_demand.c: outward and inward pressures of each wall. elevation_check.c: verdicts of a candidate. */
enum gw_status gw_draw_elevation_demand(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                        struct gw_engine *engine);
enum gw_status gw_draw_elevation_check(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                       struct gw_engine *engine);

/* key_plan.c: all walls from above; `grid` of its picture is NULL. */
enum gw_status gw_draw_key_plan(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                struct gw_engine *engine);

/* A drawing of one candidate. */
struct candidate_picture {
    const struct gw_results *results;
    const struct gw_system *candidate;
};
/* use.c: its use by check. section.c: mullion and transom with what stands before them. */
enum gw_status gw_draw_section(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
enum gw_status gw_draw_use(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);

/* The edge of a lite type in a candidate. */
struct lite_picture {
    struct candidate_picture of;
    const struct gw_lite_type *lite;
};
/* pocket.c. Of that type the element that carries most suction; NULL: there is none, and no drawing. */
enum gw_status gw_draw_pocket(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
const struct gw_element *gw_lite_with_most_suction(const struct gw_takeoff *takeoff, const struct gw_lite_type *type);
/* joint.c, weep.c: of a candidate on a wall, a struct wall_picture. */
enum gw_status gw_draw_joint(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
enum gw_status gw_draw_weep(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);

/* detail_pictures.c: all of them, after those that are there. */
void gw_pictures_of_details(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results);
/* On the page of a candidate: where there are few, the first of each kind of which its file states something; among
 * many only those whose checks fail. */
struct page;
void gw_page_details(struct page *page, const struct gw_system *candidate);
/* Of the system that was hung: those of which something was read. */
void gw_pictures_of_hung(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                         const struct gw_inspection *inspection);

/* A plan of a candidate, on one wall. */
struct plan_picture {
    const struct gw_results *results;
    const struct gw_wall_grid *grid; /* NULL: of all walls */
    const struct gw_plan *plan;
    const struct gw_bid *bid; /* NULL: its costs are not known here */
    bool by_mass;             /* it has none */
};
/* plan_elevation.c: what is chosen on a wall. cost.c: what a bid costs by place. */
enum gw_status gw_draw_plan(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
enum gw_status gw_draw_cost(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
/* Of bids: each plan on each wall where it chooses anything, and its cost; then those of the results. */
void gw_pictures_of_bids(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                         const struct gw_bids *bids);

/* "Tern Street Clinic, 24-117." */
const char *gw_project_line(struct gw_arena *arena, const struct gw_results *results);
/* The one of that name on the page, where the page shows drawings and there is such a one. */
struct page;
void gw_page_picture(struct page *page, const struct gw_pictures *pictures, const char *name);
/* elevation_readings.c: m from the left end and above ground; false: the spot says neither. */
bool gw_elevation_spot(const struct gw_wall_grid *g, const struct gw_spot *s, double *x, double *y);
/* elevation_sheet.c: where the inspection of each wall begins. */
struct sheet_picture {
    const struct gw_results *results;
    const struct gw_inspection_sheet *sheet;
    const struct gw_wall_grid *grid;
};
enum gw_status gw_draw_elevation_sheet(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                       struct gw_engine *engine);
void gw_pictures_of_sheet(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                          const struct gw_inspection_sheet *sheet);
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
/* screw_line.c: the line of plate screws of a wall that carries most, or that readings found worst. */
struct screws_picture {
    const struct gw_results *results;
    const struct gw_wall_grid *grid;
    const struct gw_system *candidate;      /* as it is described; or */
    const struct gw_inspection *inspection; /* as its line was read */
    const struct gw_inspected *row;
    const char *also; /* who else has its figures; NULL */
};
enum gw_status gw_draw_screws(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
/* Whether a candidate has such screws; its picture on a wall; of a page the one where its screws are used most. */
bool gw_has_plate_screws(const struct gw_system *candidate);
void gw_picture_add_screws(struct gw_pictures *out, struct gw_arena *arena, const struct screws_picture *of);
void gw_page_screws(struct page *page, const struct gw_system *candidate);
/* Where its screws are used most by the check of them; NULL: nowhere. */
const struct gw_finding *gw_worst_of_screws(const struct gw_results *results, const struct gw_system *candidate);
/* Whether the drawings where two candidates are used most print the same figures. */
bool gw_screws_alike(struct gw_arena *arena, const struct gw_results *results, const struct gw_finding *a,
                     const struct gw_finding *b);
void gw_screws_figure(struct gw_figure *out, struct gw_arena *arena, const struct gw_results *results,
                      const struct gw_finding *of, const char *also);

/* elevation_comments.c: comments of a review, by wall. */
struct comments_picture {
    const struct gw_results *results;
    const struct gw_review *review;
    const struct gw_wall_grid *grid;
};
void gw_pictures_of_review(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                           const struct gw_review *review);
enum gw_status gw_draw_elevation_comments(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                          struct gw_engine *engine);
/* elevation_specify.c: the pressures that a specification asks, by wall; then those of the results. */
struct specified_picture {
    const struct gw_results *results;
    const struct gw_specification *specification;
    const struct gw_wall_grid *grid;
};
void gw_pictures_of_specification(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                                  const struct gw_specification *specification);
enum gw_status gw_draw_elevation_specify(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                         struct gw_engine *engine);
/* blast.c: of a wall the lite that blast governs; `of` a struct wall_picture. On a page of the wall that it governs. */
enum gw_status gw_draw_blast(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
void gw_pictures_of_blast(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                          const struct gw_system *candidate);
void gw_page_blast(struct page *page, const struct gw_system *candidate);
/* As gw_worst_of_screws and what follows it. */
const struct gw_finding *gw_worst_of_blast(const struct gw_results *results, const struct gw_system *candidate);
bool gw_blast_alike(struct gw_arena *arena, const struct gw_results *results, const struct gw_finding *a,
                    const struct gw_finding *b);
void gw_blast_figure(struct gw_figure *out, struct gw_arena *arena, const struct gw_results *results,
                     const struct gw_finding *of, const char *also);

/* alike.c: of many candidates the drawings that a page shows once for like ones. */
void gw_page_shared_pictures(struct page *page);

/* What is chosen of a candidate on the first walls. */
void gw_page_plan_pictures(struct page *page, const struct gw_pictures *pictures, const struct gw_system *candidate);

/* element.c: drawings of what is explained; of a candidate alone where one is given. */
struct element_picture {
    const struct gw_results *results;
    const struct gw_explanation *of;
    const struct gw_judged_line *line; /* NULL: its glass */
};
enum gw_status gw_draw_line(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
enum gw_status gw_draw_lite(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine);
void gw_pictures_of_explanation(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                                const struct gw_explanation *explanation, const struct gw_system *only);

#endif
