/* Shared by the files of src/takeoff only. */
#ifndef GALEWARD_TAKEOFF_INTERNAL_H
#define GALEWARD_TAKEOFF_INTERNAL_H

/* A group of derivations: what drawings or a wind tunnel say. */
#define GW_TAKEOFF_GIVEN "Given pressures"

#include "base/tolerance.h"
#include "galeward/takeoff.h"

/* One row of lites of a wall. */
struct gw_row_line {
    double bottom, top;
    const struct gw_lite_type *type;
    int story, row;
};

/* A mullion between two anchors, or past the last one. */
struct gw_stretch_line {
    double bottom, top;
    bool overhang;
};

enum gw_axis_name {
    GW_AXIS_LITES,
    GW_AXIS_TRANSOMS,
    GW_AXIS_TRANSOM_SCREWS,
    GW_AXIS_MULLIONS,
    GW_AXIS_MULLION_SCREWS,
    GW_AXIS_COUNT
};

/* What the places of a class share; the first of them speaks for all. */
struct gw_class {
    double x0, x1;
    double corner_distance; /* least of them */
    double roof_distance;   /* the same, as members that cross are counted */
    int zone;
    bool end, corner;
    const char *meets; /* at a corner, where it is named */
    bool roof_corner;  /* framing above the roof: beside the roof's corner */
    double widest;     /* of them, m */
    long screws;       /* of all of them, in one horizontal run each */
};

/* A grid while it is filled, with its memory. One for openings is filled again and again until a group stands on it. */
struct gw_room {
    struct gw_wall_grid grid;
    const char *mark; /* of an opening; NULL: elements are marked by what they are */
    const struct gw_node *node;
    long multiplicity;
    bool place_unknown, height_unknown, claimed;
    double screw_spacing;
    double *x, *levels;
    struct gw_mullion_bearing *bearings;
    struct gw_row_line *rows;
    size_t n_rows;
    struct gw_stretch_line *stretches;
    size_t n_stretches;
    unsigned *rows_below;
    struct gw_grid_axis axes[GW_AXIS_COUNT];
    struct gw_class *classes[GW_AXIS_COUNT];
    unsigned *class_of[GW_AXIS_COUNT], *members[GW_AXIS_COUNT], *first[GW_AXIS_COUNT];
    const char **columns[GW_AXIS_COUNT];
    struct gw_grid_strip *strips[GW_SORT_COUNT];
    unsigned *groups[GW_SORT_COUNT];
};

/* One opening counted in an element: which of its columns or lines, a bit each. */
struct gw_opening_link {
    const struct gw_opening *opening;
    struct gw_opening_link *next;
    unsigned places;
};

/* How many elements of each kind an elevation has so far: for their ids. */
struct gw_elevation {
    const char *wall;
    size_t n[GW_KIND_COUNT];
};

struct gw_builder {
    const struct gw_model *model;
    struct gw_takeoff *takeoff; /* NULL: a derivation, which keeps nothing */
    struct gw_arena *arena;     /* of the take-off */
    struct gw_diags *diags;
    struct gw_room *room;             /* in hand */
    const struct gw_opening *opening; /* in hand; NULL: a wall */
    struct gw_index classes;          /* of the axis in hand */
    struct gw_index groups;           /* of openings */
    struct gw_index names;            /* of elevations, into numbers */
    GW_LIST(struct gw_elevation) numbers;
    size_t numbers_capacity;
    GW_LIST(size_t) differs; /* element of each difference */
    size_t differs_capacity;
    struct gw_index assumed;
    const struct gw_message *outside; /* said last of an element */
    bool failed;
};

long long gw_micrometers(double m);

/* index.c: what is alike is told by the caller. */
typedef bool gw_index_same(const void *context, size_t item);
unsigned gw_hash_text(unsigned h, const char *text);
unsigned gw_hash_number(unsigned h, long long number);
/* Empties it and makes room for n items. */
void gw_index_reset(struct gw_index *index, struct gw_arena *arena, size_t n);
bool gw_index_find(size_t *item, const struct gw_index *index, unsigned hash, gw_index_same *same, const void *context);
void gw_index_add(struct gw_index *index, struct gw_arena *arena, unsigned hash, size_t item);

/* room.c: memory for at most so many columns, rows and anchors. */
struct gw_room *gw_room_new(struct gw_arena *arena, size_t columns, size_t rows, size_t anchors);
/* grid.c */
struct gw_room *gw_grid_from_wall(struct gw_builder *b, const struct gw_wall *wall);
bool gw_grid_from_opening(struct gw_room *room, struct gw_builder *b, const struct gw_opening *opening);
/* axes.c */
double gw_line_from(const struct gw_wall_grid *g, size_t line); /* the strip that a vertical line carries */
double gw_line_to(const struct gw_wall_grid *g, size_t line);
void gw_room_axes(struct gw_room *room, struct gw_builder *b);
enum gw_axis_name gw_axis_of(enum gw_sort sort);
/* strips.c: by more than a hair */
bool gw_above(double height, double other);
void gw_room_strips(struct gw_room *room);
/* elements.c */
void gw_room_elements(struct gw_builder *b);
/* In one run; `ends`: how much of it lies beyond its first and last screw, absent: a spacing, half at each end. */
long gw_screws_on(double length, double spacing, double ends);
/* Where the roof line cuts a vertical its plate goes on: how long is the other part of its run, m; 0: not cut. */
double gw_beyond_roof(const struct gw_grid_layer *layer, unsigned strip);
/* In a vertical run of that strip; the parts of one that is cut add up to the whole run, but have one at least. */
long gw_screws_of_vertical(const struct gw_grid_layer *layer, unsigned strip, double spacing);
/* groups.c: counts `count` elements alike, those of one class in one strip. */
void gw_group_add(struct gw_builder *b, const struct gw_element *e, long count);
void gw_group_finish(struct gw_builder *b);
/* pressures.c */
/* Among the take-off's assumptions, once for a place, however often it is said. */
void gw_takeoff_assume(struct gw_builder *b, const char *where, struct gw_message text);
void gw_element_pressures(struct gw_builder *b, struct gw_element *e);
void gw_building_case(const struct gw_model *model, const struct gw_building *building, struct gw_wind_case *out);
/* Shared with given.c: a stated pressure at strength level; whether a row of a building (NULL: all) and zone speaks of
 * the element; the words for what governs, none in a derivation, whose steps say so. */
struct gw_strength gw_given_strength(enum gw_level level, double pa, struct gw_engine *engine);
bool gw_speaks_of(const char *building, int zone, const struct gw_element *e);
const char *gw_governed_by(const struct gw_builder *b, const char *what, const char *source, const char *how);
/* given.c: the drawings' pressures against the computed ones, or instead of them. */
void gw_take_given(struct gw_builder *b, struct gw_element *e, struct gw_engine *engine);
/* remarks.c: of a finished take-off. */
void gw_find_remarks(struct gw_builder *b);
void gw_building_parapet(const struct gw_building *building, struct gw_wind_parapet *out);
/* In the units of the file. */
void gw_report_fault(const struct gw_builder *b, const struct gw_node *node, const char *where,
                     const struct gw_fault *fault);

/* by_set.c: the pressures of a requirement set instead of the site's; of one element whose site's were found again. */
void gw_take_by_set(struct gw_builder *b);
void gw_scale_by_set(struct gw_element *element);

#endif
