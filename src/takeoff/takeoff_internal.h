/* Shared by the files of src/takeoff only. */
#ifndef GALEWARD_TAKEOFF_INTERNAL_H
#define GALEWARD_TAKEOFF_INTERNAL_H

#include "galeward/takeoff.h"

/* One row of lites across the whole grid; a row that the roof line crosses is two bands. */
struct gw_band {
    double bottom, top;
    double pane; /* height of the whole row */
    const struct gw_lite_type *type;
    bool parapet;
};

/* A wall, or one opening framed on its own, as lines and bands. */
struct gw_grid {
    const char *wall;
    const char *mark; /* of an opening; NULL: elements are marked by what they are */
    const struct gw_building *building;
    const struct gw_node *node;
    double *x; /* n_columns + 1 vertical lines from the left */
    size_t n_columns;
    struct gw_band *bands; /* from the bottom up */
    size_t n_bands;
    double *levels; /* horizontal members: sill, between rows, head */
    size_t n_levels;
    const double *anchors;
    size_t n_anchors;
    const double *splices, *floors;
    size_t n_splices, n_floors;
    double bottom, top, roof;         /* roof: the line where elements are cut; above top: never */
    double left_corner, right_corner; /* distance of an outside corner beyond each end; absent: none */
    double strip;                     /* width a */
    double screw_spacing;
    long multiplicity;
    bool place_unknown;
};

/* What makes two elements alike; lengths in micrometers so that equal ones compare equal. */
struct gw_group_key {
    const char *wall, *mark, *lite;
    long long width, height, bottom, top, span, pane;
    int kind, zone, spans;
    bool overhang, parapet, place_unknown, corner;
};

struct gw_slot; /* hash table slot, groups.c */

struct gw_builder {
    const struct gw_model *model;
    struct gw_takeoff *takeoff; /* NULL: a derivation, which keeps nothing */
    struct gw_arena *arena;     /* of the take-off */
    struct gw_diags *diags;
    const struct gw_grid *grid;
    const struct gw_wall_lines *lines; /* of the grid, once a new group asked for them */
    struct gw_slot *slots;
    size_t n_slots;
    struct gw_column_run *runs; /* one an element: the columns met so far */
    size_t runs_capacity;
    size_t last; /* group met last */
    bool failed;
};

/* grid.c */
bool gw_grid_from_wall(struct gw_grid *grid, const struct gw_builder *b, const struct gw_wall *wall);
bool gw_grid_from_opening(struct gw_grid *grid, const struct gw_builder *b, const struct gw_opening *opening);
/* groups.c: counts one element, or `count` of them, whose rectangle is `e` and whose column is `column` (0: none). */
void gw_group_add(struct gw_builder *b, const struct gw_element *e, long count, long column);
void gw_group_finish(struct gw_builder *b);
/* elements.c */
void gw_grid_elements(struct gw_builder *b);
/* pressures.c */
void gw_element_pressures(struct gw_builder *b, struct gw_element *e);
void gw_building_case(const struct gw_model *model, const struct gw_building *building, struct gw_wind_case *out);
void gw_report_fault(struct gw_diags *diags, const struct gw_node *node, const char *where,
                     const struct gw_fault *fault);

#endif
