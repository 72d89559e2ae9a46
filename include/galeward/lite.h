/* A lite as it is glazed: one to three panes with sealed cavities between them, each pane of one or more plies.
 *
 * Two routes side by side, by the same failure model of the glass surface (glass.h):
 * - the standard's factors (ASTM E1300): a laminated pane as monolithic glass of its designation, glass type factors by
 *   the pair, load shares by the cubes of the thicknesses;
 * - first principles: plies coupled by their interlayer (laminate.h), sealed cavities by the gas law with nonlinear
 *   panes (cavity.h), each ply's own type factor. Climatic load is part of it where sealing and service are given.
 * The lower resistance governs unless one of the routes is asked for.
 * Pressures act toward indoors where positive; all are of allowable-stress level. On fewer than four edges first
 * principles are the stresses of edges and surface against their allowable ones. */
#ifndef GALEWARD_LITE_H
#define GALEWARD_LITE_H

#include "galeward/cavity.h"
#include "galeward/glass.h"
#include "galeward/laminate.h"
#include "galeward/support.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_PANES = GW_CAVITY_LITES, GW_PLIES = 4, GW_LITE_LOADS = 3, GW_LITE_NOTES = 6 };

struct gw_ply {
    double nominal; /* m, designation */
    enum gw_treatment treatment;
    bool frit; /* ceramic frit fired on one of its surfaces */
};

struct gw_bond {
    double thickness; /* m, nominal */
    enum gw_interlayer material;
    double shear_modulus; /* Pa, from test data; absent: the material's table */
};

/* From outside to inside. */
struct gw_pane {
    struct gw_ply plies[GW_PLIES];
    struct gw_bond bonds[GW_PLIES - 1];
    int n_plies;
};

struct gw_make_up {
    struct gw_pane panes[GW_PANES];
    double gaps[GW_PANES - 1]; /* m */
    int n_panes;
};

enum gw_glass_standard { GW_GLASS_STANDARD_UNSET, GW_E1300_04, GW_E1300_09A, GW_E1300_12A, GW_E1300_16, GW_E1300_24 };

enum gw_glass_route { GW_GLASS_ROUTE_UNSET, GW_ROUTE_LOWER, GW_ROUTE_STANDARD, GW_ROUTE_PRINCIPLES };

/* State of the gas: of the air around the unit in service, or when it was sealed. */
struct gw_air {
    double pressure, temperature; /* Pa, K */
};

enum gw_lite_span { GW_SPAN_UNSET, GW_SPAN_WIDTH, GW_SPAN_HEIGHT };

struct gw_lite {
    double width, height; /* m, clear opening */
    struct gw_make_up make_up;
    int edges;                  /* held: 4; fewer: one pane, by its stresses (support.h) */
    enum gw_lite_span span;     /* fewer than four edges: the side that runs across the free edges */
    enum gw_edge_finish finish; /* of free edges */
    double temperature;         /* K, of interlayers; absent: the table's */
    double probability;         /* absent: the standard's */
    enum gw_glass_standard edition;
    enum gw_glass_route route;
    bool climate; /* else sealed as in service: no climatic load */
    struct gw_air sealing, service;
    bool use_only; /* under a load: the resistance by first principles is searched only where it governs */
};

struct gw_lite_load {
    const char *name; /* constant: "wind toward indoors" ... */
    double pressure;  /* Pa, signed; absent: strength only */
    double duration;  /* s; absent: the standard's short duration */
};

struct gw_pane_by_standard {
    double thickness;        /* m, minimum of the designation */
    double nonfactored_load; /* Pa */
    double type_factor, share;
    double load_resistance;        /* Pa on the whole unit: NFL x GTF / LSF */
    double deflection, stress_max; /* m, Pa, under its share; absent without a pressure */
    double breakage;               /* probability under the pressure */
};

struct gw_pane_by_principles {
    double deflection_thickness; /* m, effective */
    double stress_thickness;     /* m, effective, of the ply that governs */
    double type_factor;          /* of that ply */
    int ply;                     /* that ply, from outside, from 0 */
    double capacity;             /* Pa, net load that the pane takes */
    double net;                  /* Pa, its part of the load, toward indoors; absent without a pressure */
    double deflection, stress_max;
    double breakage;
};

struct gw_pane_result {
    double weight; /* Pa */
    struct gw_pane_by_standard standard;
    struct gw_pane_by_principles principles;
};

/* One route for the whole lite. */
struct gw_lite_route {
    bool covered;
    double resistance;                                    /* Pa, magnitude */
    int pane;                                             /* that governs, from 0 */
    double utilization, deflection, stress_max, breakage; /* absent without a pressure; the largest of any pane */
    struct gw_fault why_not;                              /* not covered: the limit */
};

struct gw_lite_result {
    struct gw_lite_load load;
    struct gw_pane_result panes[GW_PANES];
    int n_panes;
    struct gw_lite_route standard, principles;
    enum gw_glass_route governing;
    const char *why;                  /* why that route governs; constant */
    double resistance;                /* Pa, of the governing route */
    double utilization;               /* of the governing route; absent without a pressure */
    double deflection;                /* m, the larger of the two routes */
    double weight;                    /* Pa, of the whole lite laid flat */
    const char *notes[GW_LITE_NOTES]; /* constant strings */
    int n_notes;
};

/* engine->workspace: GW_PLATE_WORKSPACE bytes. Refuses when neither route covers the lite (the standard's limit is then
 * in the fault), and what is wrong with the input itself. */
enum gw_status gw_lite_assess(struct gw_lite_result *out, const struct gw_lite *in, const struct gw_lite_load *load,
                              struct gw_engine *engine);

/* The pane that governs a result on four edges, from 0: its plate of the thickness for stress, under its share. */
struct gw_plate_case;
int gw_lite_governing_plate(struct gw_plate_case *out, const struct gw_lite *in, const struct gw_lite_result *r);

/* Loads that a lite must take, and how far it may bend. */
struct gw_lite_demand {
    struct gw_lite_load loads[GW_LITE_LOADS];
    int n;
    double deflection_limit; /* m, center of glass; absent: none */
};

/* For it, m: the lower of a length and of the short side over a ratio; either may be absent, or both. */
double gw_lite_deflection_limit(double limit, double ratio, double width, double height);

struct gw_lite_verdict {
    struct gw_lite_result results[GW_LITE_LOADS]; /* one a load */
    int n, governing;                             /* the load of the greatest utilization */
    double strength_use, deflection_use;          /* greatest of all loads; absent without a pressure, or a limit */
    bool passes;
};

enum gw_status gw_lite_check(struct gw_lite_verdict *out, const struct gw_lite *in, const struct gw_lite_demand *demand,
                             struct gw_engine *engine);

/* Combinations for glass that slopes more than 15 degrees from vertical (IBC 2404.2): magnitudes in Pa,
 * allowable-stress level; slope in rad from horizontal; dead: weight of the glass laid flat. */
struct gw_sloped {
    double wind_in, wind_out, snow, slope, dead;
};
enum gw_status gw_lite_sloped(struct gw_lite_demand *out, const struct gw_sloped *in, struct gw_engine *engine);

/* The lightest that pass, lightest first. */
enum { GW_CHOICES = 3 };
struct gw_lite_choice {
    int index; /* in the list */
    double weight, use;
    struct gw_lite_verdict verdict;
};
struct gw_lite_choices {
    struct gw_lite_choice items[GW_CHOICES];
    int n, tried, failed, refused; /* refused: outside the method */
};
/* `like` gives everything but the make-up. A make-up that is wrong in itself is a fault; one outside the method is
 * counted and passed over. */
enum gw_status gw_lite_lightest(struct gw_lite_choices *out, const struct gw_lite *like, const struct gw_make_up *list,
                                size_t n, const struct gw_lite_demand *demand, struct gw_engine *engine);
/* Greatest pressure (Pa, magnitude) of the load's direction and duration for strength and for the deflection limit; 0
 * when the climatic load alone is too much. */
enum gw_status gw_lite_greatest_pressure(double *out, const struct gw_lite *in, const struct gw_lite_load *load,
                                         double deflection_limit, struct gw_engine *engine);
/* Widest that is looked at: where the plate solution ends. */
double gw_lite_widest(const struct gw_lite *in, const struct gw_engine *engine);
/* Greatest width at the lite's height that takes the demand; 0 when none does. What is outside the method does not. */
enum gw_status gw_lite_greatest_width(double *out, const struct gw_lite *in, const struct gw_lite_demand *demand,
                                      struct gw_engine *engine);

/* Dead load of the glass, Pa on the face of a lite laid flat. */
double gw_make_up_weight(const struct gw_make_up *make_up, struct gw_engine *engine);
/* The standard's designation of a pane as monolithic glass: its minimum thickness, m. */
enum gw_status gw_pane_designation(double *out, const struct gw_pane *pane, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
