/* From walls and schedules to elements: every lite, mullion, transom, screw and anchor, like ones grouped and counted.
 *
 * An element is the rectangle of wall that it carries (a transom's is half the row above and half below), so for lites,
 * mullions, transoms and anchors count x width x height adds up to the wall; where a wall goes on beyond its end, the
 * vertical there carries half a bay of what follows besides. Conventions: design of the take-off,
 * docs/methods.md. */
#ifndef GALEWARD_TAKEOFF_H
#define GALEWARD_TAKEOFF_H

#include "galeward/model.h"
#include "galeward/mullion_line.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_kind { GW_LITE, GW_MULLION, GW_TRANSOM, GW_SCREW, GW_ANCHOR, GW_KIND_COUNT };
extern const char *const gw_kind_names[GW_KIND_COUNT]; /* "lite" ... */

/* The lines of a wall, or of one opening, that its members stand on; heights above ground, m, from the bottom up. */
struct gw_wall_lines {
    const double *anchors, *splices, *levels;  /* levels: horizontal members */
    const struct gw_mullion_bearing *bearings; /* by anchor: what hangs on it */
    const double *floors;                      /* none: an opening of a schedule */
    size_t n_anchors, n_splices, n_levels, n_floors;
    double bottom, top;
    bool has_roof; /* false: an opening of a schedule, which stands below the roof */
    double roof;   /* where elements are cut; without one absent */
};

/* Whether a height stands below the roof line, by more than a hair. */
bool gw_below_roof(const struct gw_wall_lines *lines, double height);
/* The roof line cuts what runs from bottom to top, by more than a hair on either side. */
bool gw_cut_at_roof(const struct gw_wall_lines *lines, double bottom, double top);

/* Places along a wall where elements of one sort stand, numbered from 0 at its left end seen from outside: its columns,
 * or its vertical lines. Alike ones form a class; classes are numbered as they are met from the left. */
struct gw_grid_axis {
    bool lines; /* vertical lines, one more than columns */
    size_t n_places, n_classes;
    const unsigned *class_of; /* by place */
    const unsigned *members;  /* places by class, from the left */
    const unsigned *first;    /* n_classes + 1: where each class begins among the members */
    const char **columns;     /* by class: its places from 1, "1-2, 23-24"; openings of a schedule: "" */
};

/* A horizontal strip of a wall: a row of lites, a stretch of mullions between anchors, what a transom or an anchor
 * carries. What the roof line cuts is two strips, one upon the other, of one member. */
struct gw_grid_strip {
    double bottom, top; /* m above ground */
    bool parapet;       /* above the roof line */
    unsigned member;    /* from 0 at the wall's bottom: row of lites, stretch of mullion, level, anchor */
    int story, row;     /* story in which the member begins, from 1; row in it, from 1: lites and the screws of their
                           verticals, transoms (the row that stands on it); other kinds, and the wall's head: 0 */
};

enum gw_sort {
    GW_SORT_LITE,
    GW_SORT_MULLION,
    GW_SORT_TRANSOM,
    GW_SORT_TRANSOM_SCREW, /* of horizontal members */
    GW_SORT_MULLION_SCREW, /* of vertical ones */
    GW_SORT_ANCHOR,
    GW_SORT_COUNT
};

/* Elements of one sort: every strip times every class of places is a group. */
struct gw_grid_layer {
    const struct gw_grid_axis *axis;
    const struct gw_grid_strip *strips; /* from the bottom up */
    size_t n_strips, n_below;           /* n_below: those below the roof line; without one all of them */
    const unsigned *groups;             /* [strip * axis->n_classes + class]: the element's index */
    bool cut;                           /* the roof line cuts a member ... */
    unsigned cut_member;                /* ... this one */
};

/* A wall, or an opening of a schedule framed on its own, from whose lines its elements come. x is measured from the
 * wall's left end seen from outside, m. */
struct gw_wall_grid {
    const char *wall;                 /* its name, or the opening's elevation */
    size_t index;                     /* among the take-off's grids */
    size_t elevation;                 /* from 0: grids of one wall name have one number */
    size_t first_element, n_elements; /* those whose grid it is: they follow each other */
    const struct gw_opening *opening; /* NULL: a wall */
    const struct gw_building *building;
    const double *x; /* n_columns + 1 vertical lines from the left */
    size_t n_columns;
    const unsigned *rows_below; /* n_stories + 1: rows of lites below each story; last: all of them */
    size_t n_stories;           /* 1 for an opening */
    struct gw_wall_lines lines;
    double strip;                     /* m, width of the edge zone beside an outside corner */
    double roof_corner;               /* m, reach of the roof's corner along the parapet; 0: no part above the roof */
    double left_corner, right_corner; /* m, of an outside corner beyond that end; absent: none */
    const char *left_meets, *right_meets; /* the wall that meets it at that corner; NULL: none, or not named */
    bool screws_given;                    /* the wall says how far apart its screws are */
    bool goes_on_left, goes_on_right;     /* the wall goes on beyond that end, with a bay as wide as its last one */
    struct gw_grid_layer layers[GW_SORT_COUNT];
};

/* A structural row of a requirement set over the elements that go by it: inward, outward, Pa, allowable-stress level.
 */
struct gw_by_set {
    const struct gw_required *row;
    double greatest[2]; /* that the site asks of a lite there (of: framing: of framing); 0: not known */
    double asked[2];    /* by the row */
    double factor[2];   /* of every pressure there; 1: the set asks what the site asks */
    bool of_lites;
    size_t n_elements;
};

/* Who says the pressure of an element in one direction. */
struct gw_pressure_source {
    const char *by;                 /* "given", "wind tunnel", "requirement set"; NULL: the method itself */
    const char *source, *how;       /* "asce7-16", "S-001", "R-03"; "" or ", code floor" */
    const struct gw_given_row *row; /* of the project's given pressures; NULL: none */
};
/* "given S-001", "asce7-16". */
const char *gw_pressure_source_text(struct gw_arena *arena, const struct gw_pressure_source *source);

struct gw_element {
    const char *id;   /* "east/lite/3" */
    size_t index;     /* in the take-off's list */
    const char *wall; /* wall or schedule elevation */
    const struct gw_building *building;
    enum gw_kind kind;
    const char *mark;    /* lite type, mark of an opening, "jamb", "head", "vertical" ... */
    const char *columns; /* which columns or grid lines of the wall, from the left: "1-2, 23-24"; "" for openings */
    enum gw_component component;
    const char *lite; /* lite type, NULL */
    long count;
    double width, height, bottom,
        top;                         /* m; screws: width carried and spacing; bottom and top of the run they stand in */
    const struct gw_wall_grid *grid; /* of an opening that occurs more than once, its first */
    const struct gw_wall_lines *lines; /* of the grid */
    enum gw_sort sort;                 /* with the next two: where in the grid */
    unsigned strip, place_class;
    double elevation;    /* m above ground, transoms, their screws, anchors: the piece's own; else absent */
    double above, below; /* m, transoms: heights of the rows that they divide; 0: none */
    const struct gw_lite_type *rests; /* transoms: the lite type that stands on it; NULL: none, or not known */
    const struct gw_lite_type *under; /* transoms: the lite type below it; the same */
    double pane;                      /* m, lites: height of the whole pane, where the roof line cuts it */
    double edge;                      /* m, screws of horizontals: the longest edge of a lite beside them */
    double span;                      /* m, mullions, transoms, anchors: the member's own, cut or not */
    enum gw_carries carries;          /* anchors: wind alone, or dead load too */
    int spans;                        /* of the mullion piece */
    bool overhang;                    /* a mullion past its last anchor */
    bool corner;                      /* mullions, anchors: at an outside corner, with the other face's bay too */
    const char *meets;                /* of those the wall that meets this one there; NULL: not named */
    bool parapet;                     /* above the roof line */
    bool place_unknown;               /* taken at the worst place */
    bool height_unknown;              /* of an opening without a sill */
    int zone;                         /* 4 or 5 */
    double corner_distance;           /* m, nearest edge to the nearest outside corner; absent: none */
    double roof_distance;  /* m, from that corner, that tells the roof's corner from its edge; absent: none */
    double effective_area; /* m2 */
    struct gw_strength inward, outward; /* design; outward negative */
    struct gw_asd inward_asd, outward_asd;
    double inward_deflection, outward_deflection; /* Pa, at the level that deflection checks use; framing only */
    const struct gw_message *outside; /* NULL; else why the method gives no pressure: the pressures are absent */
    bool computed;                    /* both directions by the standard: neither given nor of a wind tunnel */
    const char *governs;              /* "asce7-16", "given S-001", "wind tunnel WT-1", "requirement set R-03" ... */
    struct gw_pressure_source inward_by, outward_by; /* the same by direction; no source: outside the method */
    const struct gw_by_set *by_set; /* the pressures are the site's times its factors; NULL: the site's */
    struct gw_used used;
};

/* Of an element of a schedule's opening its mark; NULL: it is a wall's. */
const char *gw_opening_mark(const struct gw_element *element);

/* A given pressure that differs from the computed one by more than 5 %. */
struct gw_difference {
    bool governs; /* the given one, though it may be the lower */
    const struct gw_element *element;
    const char *id; /* of the element */
    const char *source, *direction;
    double computed, given; /* Pa, strength level, signed */
    double excess;          /* of the given one over the computed one, as a part of it; below zero: it is too low */
};

/* A hash index of items by what makes them alike: kept by the take-off, searched through the functions below. */
struct gw_index_slot;
struct gw_opening_link;
struct gw_opening_links {
    struct gw_opening_link *head, *tail;
};
struct gw_index {
    struct gw_index_slot *slots;
    size_t n_slots, capacity, n;
};

struct gw_takeoff {
    GW_LIST(struct gw_element) elements; /* those of a wall follow each other */
    size_t capacity;
    GW_LIST(const struct gw_wall_grid *) grids; /* walls in the project's order, then openings that differ */
    size_t grids_capacity;
    size_t n_elevations;             /* names of walls and of elevations of the schedule */
    size_t n_walls, n_wall_elements; /* of the grids and of the elements: these come first */
    GW_LIST(struct gw_difference) differences;
    size_t differences_capacity;
    bool too_low; /* a given pressure governs, is lower than the computed one, and nobody accepts it: nothing passes */
    GW_LIST(struct gw_message) remarks; /* what must be seen first; each is a warning too */
    size_t remarks_capacity;
    long no_offset, no_sill, no_wall;  /* openings whose place is unknown; no_wall: though they have an offset */
    struct gw_assumptions assumptions; /* its own; the model's are listed before them */
    const struct gw_diags *diags;      /* where its refusals went */
    GW_LIST(struct gw_by_set) by_set;  /* by structural row of the requirement set */
    struct gw_index ids, walls;
    struct gw_opening_links *openings; /* by element that is no wall's: the openings counted in it */
    size_t openings_capacity;
};

/* Fills `*out` from a model that loaded without error and is not changed: everything of the take-off lives in `arena`,
 * which may be the model's own and must not outlive the model. Engine refusals and bad geometry go to `diags` (with the
 * wall's place). True when there was none. Linear in the number of lites. */
bool gw_takeoff_run(struct gw_takeoff *out, const struct gw_model *model, struct gw_arena *arena,
                    struct gw_diags *diags);
/* By id; NULL. A look-up in a hash index, as all that follow take a time that does not grow with the take-off. */
const struct gw_element *gw_takeoff_find(const struct gw_takeoff *takeoff, const char *id);

/* Elements as people ask for them: by id; by an opening's mark, "D-12"; by wall, column and story, "east:3:2". After a
 * mark or a place ":KIND" says which (":screw"), else the lites. Each element once; none: `missing` says what there is.
 */
struct gw_selection {
    GW_LIST(const struct gw_element *) elements;
    struct gw_message missing;
};
void gw_takeoff_select(struct gw_selection *out, const struct gw_takeoff *takeoff, struct gw_arena *arena,
                       const char *what);

/* Places to elements ----------------------------------------------------------------------------------------------- */

/* The grid of a wall of the project; NULL: no wall has that name. */
const struct gw_wall_grid *gw_takeoff_wall(const struct gw_takeoff *takeoff, const char *wall);
/* The lite of a place: column from 1 at the left end seen from outside, story from 1 at the wall's lowest floor, row in
 * the story from 1, from below. Where the roof line cuts it, the part below; gw_takeoff_other_part gives the other.
 * NULL: there is no such place. */
const struct gw_element *gw_takeoff_at(const struct gw_takeoff *takeoff, const char *wall, int column, int story,
                                       int row);
enum gw_edge { GW_EDGE_HEAD, GW_EDGE_SILL, GW_EDGE_LEFT, GW_EDGE_RIGHT };
/* Of one that is not said (below 0): as little. */
static inline int gw_edge_opposite(int edge) { return edge < 0 ? edge : edge ^ 1; }
/* What holds one edge of that lite: the transom (`screws`: its screws) at the head or the sill; at the left or the
 * right the screws of the vertical, or the stretch of mullion that holds the middle of the edge. Of members that the
 * roof line cuts, the part below. NULL: there is no such place. */
const struct gw_element *gw_takeoff_edge(const struct gw_takeoff *takeoff, const char *wall, int column, int story,
                                         int row, enum gw_edge edge, bool screws);
/* The element of a sort at a place of its axis (a column or a line, from 0) whose strip holds a height above ground;
 * where two meet, the upper one. NULL: the grid does not reach there. */
const struct gw_element *gw_takeoff_held(const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                                         enum gw_sort sort, size_t place, double height);

/* The element of a sort that is the member-th from the bottom (row of lites, level, anchor) at a place of its axis;
 * where the roof line cuts it, the part below. Both within the grid. */
const struct gw_element *gw_takeoff_member(const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid,
                                           enum gw_sort sort, size_t member, size_t place);

/* Neighbors -------------------------------------------------------------------------------------------------------- */

/* The elements of the same sort and class from the wall's bottom to its top, `*n` of them: the pieces of the same
 * mullion lines, the anchors of the same verticals; gw_takeoff_stacked gives the i-th. e->strip is its own place. */
size_t gw_takeoff_stack(const struct gw_element *element);
const struct gw_element *gw_takeoff_stacked(const struct gw_takeoff *takeoff, const struct gw_element *element,
                                            size_t i);
/* Its other part where the roof line cuts the member; NULL: it is whole. */
const struct gw_element *gw_takeoff_other_part(const struct gw_takeoff *takeoff, const struct gw_element *element);
/* Of its stack, the element next to the roof line on the line's other side; NULL: the wall ends at the roof, or starts
 * there. */
const struct gw_element *gw_takeoff_across_roof(const struct gw_takeoff *takeoff, const struct gw_element *element);

/* Elements to places ----------------------------------------------------------------------------------------------- */

/* One piece of an element: the rectangle of wall that it carries; of screws, the run in which they stand. */
struct gw_rectangle {
    bool placed;                      /* false: an opening whose sill or offset is not known; x and y are absent */
    double x, y, width, height;       /* m; x from the wall's left end, y above ground, of the lower left corner */
    size_t place;                     /* column or line of the grid, from 0 */
    int story, row;                   /* as in struct gw_grid_strip; of an opening 0 */
    const struct gw_opening *opening; /* NULL: a wall */
    long count;                       /* elements here: of an opening, for all of its kind; screws: of the run */
};

/* Goes through the pieces of an element, those of a wall from the left.
 *
 *     struct gw_pieces pieces = gw_takeoff_pieces(&takeoff, element);
 *     struct gw_rectangle r;
 *     while (gw_pieces_next(&pieces, &r)) ... */
struct gw_pieces {
    const struct gw_element *element;
    const struct gw_opening_link *link;
    size_t at;
};
struct gw_pieces gw_takeoff_pieces(const struct gw_takeoff *takeoff, const struct gw_element *element);
bool gw_pieces_next(struct gw_pieces *pieces, struct gw_rectangle *out);
/* How many screws an element of them counts where a system says how far apart they stand and how far the last one is
 * from the end of a plate (absent: as the take-off has them, half a spacing); the wall's own spacing
 * goes before the system's. A run that the roof line cuts counts whole with the part below, its upper part none. */
long gw_takeoff_screws(const struct gw_takeoff *takeoff, const struct gw_element *element, double spacing,
                       double end_distance);

/* Wind ------------------------------------------------------------------------------------------------------------- */

/* The wind case behind an element, and the same computation again with its derivation. */
void gw_takeoff_case(const struct gw_model *model, const struct gw_element *element, struct gw_wind_case *out,
                     struct gw_wind_parapet *parapet);
/* The pressures of an element anew, after its effective area was changed; what governs is not said again. */
enum gw_status gw_takeoff_again(const struct gw_model *model, struct gw_element *element);
enum gw_status gw_takeoff_derive(const struct gw_model *model, const struct gw_element *element, struct gw_trace *trace,
                                 struct gw_wind_result *out);

#ifdef __cplusplus
}
#endif

#endif
