/* From walls and schedules to elements: every lite, mullion, transom, screw and anchor, like ones grouped and counted.
 *
 * An element is the rectangle of wall that it carries (a transom's is half the row above and half below), so for lites,
 * mullions, transoms and anchors count x width x height adds up to the wall. Conventions: design of the take-off,
 * docs/methods.md. */
#ifndef GALEWARD_TAKEOFF_H
#define GALEWARD_TAKEOFF_H

#include "galeward/model.h"

enum gw_kind { GW_LITE, GW_MULLION, GW_TRANSOM, GW_SCREW, GW_ANCHOR, GW_KIND_COUNT };
extern const char *const gw_kind_names[GW_KIND_COUNT]; /* "lite" ... */

/* The lines of a wall, or of one opening, that its members stand on; heights above ground, m, from the bottom up. */
struct gw_wall_lines {
    const double *anchors, *splices, *levels; /* levels: horizontal members */
    const double *floors;                     /* none: an opening of a schedule */
    size_t n_anchors, n_splices, n_levels, n_floors;
    double bottom, top, roof; /* roof: where elements are cut; above top: never */
};

struct gw_element {
    const char *id;   /* "east/lite/3" */
    const char *wall; /* wall or schedule elevation */
    const struct gw_building *building;
    enum gw_kind kind;
    const char *mark;    /* lite type, mark of an opening, "jamb", "head", "vertical" ... */
    const char *columns; /* which columns or grid lines of the wall, from the left: "1-2, 23-24"; "" for openings */
    enum gw_component component;
    const char *lite; /* lite type, NULL */
    long count;
    double width, height, bottom,
        top; /* m; screws: width carried and spacing; bottom and top of the run they stand in */
    const struct gw_wall_lines *lines;
    double above, below;                /* m, transoms: heights of the rows that they divide; 0: none */
    const struct gw_lite_type *rests;   /* transoms: the lite type that stands on it; NULL: none, or not known */
    const struct gw_lite_type *under;   /* transoms: the lite type below it; the same */
    double pane;                        /* m, lites: height of the whole pane, where the roof line cuts it */
    double span;                        /* m, mullions, transoms, anchors: the member's own, cut or not */
    int spans;                          /* of the mullion piece */
    bool overhang;                      /* a mullion past its last anchor */
    bool corner;                        /* mullions, anchors: at an outside corner, with the other face's bay too */
    bool parapet;                       /* above the roof line */
    bool place_unknown;                 /* taken at the worst place */
    int zone;                           /* 4 or 5 */
    double corner_distance;             /* m, nearest edge to the nearest outside corner; absent: none */
    double effective_area;              /* m2 */
    struct gw_strength inward, outward; /* design; outward negative */
    struct gw_asd inward_asd, outward_asd;
    double inward_deflection, outward_deflection; /* Pa, at the level that deflection checks use; framing only */
    const char *outside; /* NULL; else why the method gives no pressure: the pressures are absent */
    const char *governs; /* "ASCE 7-16", "given S-001", "wind tunnel WT-1", "floor of the wind tunnel" ... */
    struct gw_used used;
};

/* A given pressure that differs from the computed one by more than 5 %. */
struct gw_difference {
    const struct gw_element *element;
    const char *id; /* of the element */
    const char *source, *direction;
    double computed, given; /* Pa, strength level, signed */
};

struct gw_takeoff {
    GW_LIST(struct gw_element) elements;
    size_t capacity;
    GW_LIST(struct gw_difference) differences;
    size_t differences_capacity;
    long no_offset, no_sill;           /* openings whose place is unknown */
    struct gw_assumptions assumptions; /* its own; the model's are listed before them */
    const struct gw_diags *diags;      /* where its refusals went */
};

/* Fills `*out` from a model that loaded without error and is not changed: everything of the take-off lives in `arena`,
 * which may be the model's own and must not outlive the model. Engine refusals and bad geometry go to `diags` (with the
 * wall's place). True when there was none. Linear in the number of lites. */
bool gw_takeoff_run(struct gw_takeoff *out, const struct gw_model *model, struct gw_arena *arena,
                    struct gw_diags *diags);
const struct gw_element *gw_takeoff_find(const struct gw_takeoff *takeoff, const char *id);
/* The wind case behind an element, and the same computation again with its derivation. */
void gw_takeoff_case(const struct gw_model *model, const struct gw_element *element, struct gw_wind_case *out,
                     struct gw_wind_parapet *parapet);
enum gw_status gw_takeoff_derive(const struct gw_model *model, const struct gw_element *element, struct gw_trace *trace,
                                 struct gw_wind_result *out);

#endif
