/* Blast on glazing, for the choice of glass that protects people: the load on a face, the response of a lite to it, and
 * the comparison of what is asked with what was tested.
 *
 * Loads come from the published polynomials of a hemispherical surface burst. What charge and what standoff a project
 * takes is its security consultant's to say. Nothing here replaces a licensed engineer. */
#ifndef GALEWARD_BLAST_H
#define GALEWARD_BLAST_H

#include "galeward/lite.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Load --------------------------------------------------------------------------------------------------------------
 */

/* Peak pressure, Pa, and positive impulse, Pa s: both of them reflected. */
struct gw_blast_pair {
    double pressure, impulse;
};

enum gw_blast_quantity {
    GW_BLAST_QUANTITY_UNSET,
    GW_BLAST_REFLECTED_PRESSURE,
    GW_BLAST_REFLECTED_IMPULSE,
    GW_BLAST_INCIDENT_PRESSURE,
    GW_BLAST_INCIDENT_IMPULSE,
    GW_BLAST_POSITIVE_DURATION,
    GW_BLAST_ARRIVAL
};
/* One quantity in Pa, Pa s or s at a scaled distance (m/kg^(1/3)) of a charge (kg TNT). Refuses outside the quantity's
 * own published range. */
enum gw_status gw_blast_quantity(double *out, enum gw_blast_quantity quantity, double scaled_distance, double charge,
                                 struct gw_engine *engine);

enum { GW_BLAST_NOTES = 6 };
struct gw_blast_case {
    double charge;   /* kg TNT, on the ground */
    double standoff; /* m, from the charge to the point of the face */
    double angle;    /* rad, between the line to the charge and the face's normal; absent: 0 */
};
struct gw_blast_load {
    double scaled_distance; /* m/kg^(1/3) */
    double reflected_pressure, reflected_impulse;
    double incident_pressure, incident_impulse, positive_duration; /* GW_ABSENT nearer than their polynomials begin */
    double arrival;
    double triangle_duration;           /* s, of the triangle with the reflected peak and impulse */
    double face_pressure, face_impulse; /* at the angle */
    const char *notes[GW_BLAST_NOTES];  /* constant strings */
    unsigned n_notes;
};
enum gw_status gw_blast_load(struct gw_blast_load *out, const struct gw_blast_case *in, struct gw_engine *engine);

/* On a face at an angle: of peaks, or of impulses. */
double gw_blast_oblique(double reflected, double incident, double angle);
/* s, of the triangle with that peak and impulse. */
static inline double gw_blast_duration(struct gw_blast_pair load) { return 2 * load.impulse / load.pressure; }

/* Where a demand comes from: the pair itself, a named level, or charge and standoff. */
enum gw_blast_level { GW_BLAST_LEVEL_UNSET, GW_BLAST_LEVEL_C, GW_BLAST_LEVEL_D };
struct gw_blast_demand {
    struct gw_blast_pair load; /* members absent: not given */
    struct gw_blast_case burst;
    enum gw_blast_level level;
};
/* Refuses none of the three, and more than one. */
enum gw_status gw_blast_find_load(struct gw_blast_pair *out, const struct gw_blast_demand *in,
                                  struct gw_engine *engine);

/* Response ----------------------------------------------------------------------------------------------------------
 */

/* How a lite moves: its static curve, from no load to the plate table's end, and its kinetic energy. */
enum { GW_BLAST_NODES = 161 };
struct gw_blast_curve {
    double width, height, thickness; /* m; the thickness is the effective one for deflection */
    double mass;                     /* kg/m2 */
    double capacity;                 /* Pa, static pressure at which the glass breaks at the probability */
    double unit;                     /* Pa: resistance is unit (exp(y) - 1) at the coordinate y */
    double step, end;                /* of y between nodes; y of the last node */
    double break_at;                 /* y at the capacity; beyond the end: the curve ends first */
    double compliance[GW_BLAST_NODES], compliance_slope[GW_BLAST_NODES]; /* ln(mean deflection / resistance) over y */
    double energy[GW_BLAST_NODES];                                       /* J/m2, strain energy */
    double period;                                                       /* s, of small oscillations */
    double motion;           /* kinetic energy over that of a rigid lite with the mean velocity, small deflections */
    double load_mass_factor; /* of the deflection of the center: motion times mean over center */
    const char *governing;   /* route of the capacity; constant */
    const char *notes[GW_LITE_NOTES]; /* about the strength: constant strings */
    int n_notes;
    bool inner_alone; /* of an insulating unit */
    double passed_on; /* inner_alone: 2 m/(m + m_outer), the most that an impulse through outer panes is worth */
};

/* Insulating units are refused unless `inner_alone`: then the inner pane takes the whole load by itself.
 * engine->workspace: GW_PLATE_WORKSPACE bytes. */
enum gw_status gw_blast_curve(struct gw_blast_curve *out, const struct gw_lite *lite, bool inner_alone,
                              struct gw_engine *engine);

struct gw_blast_response {
    double deflection;      /* m, largest of the center, of the lite as long as it is whole; absent beyond the curve */
    double equivalent;      /* Pa, the pressure at rest that bends the lite as far; absent beyond the curve */
    double load_factor;     /* equivalent over the peak; absent beyond the curve */
    double time;            /* s, of the largest deflection; absent beyond the curve */
    double use;             /* equivalent over capacity; absent beyond the curve */
    bool breaks;            /* the capacity is reached */
    double energy_residual; /* work less strain energy at the largest deflection, over the work */
    int steps;
};
/* Triangular pulse, no damping. Refuses where the steps do not converge, and a response beyond the curve of a lite
 * whose capacity lies there too. engine->workspace: GW_PLATE_WORKSPACE bytes. */
enum gw_status gw_blast_respond(struct gw_blast_response *out, const struct gw_blast_curve *curve,
                                struct gw_blast_pair load, struct gw_engine *engine);

/* Iso-damage: pairs under which the glass just breaks. --------------------------------------------------------------
 */

/* Below this peak no impulse breaks the glass, below this impulse no peak does. */
enum gw_status gw_blast_asymptotes(struct gw_blast_pair *out, const struct gw_blast_curve *curve,
                                   struct gw_engine *engine);
/* The pair with that triangle duration that just breaks the glass. Refuses a lite whose capacity lies beyond its curve.
 */
enum gw_status gw_blast_breaking(struct gw_blast_pair *out, const struct gw_blast_curve *curve, double duration,
                                 struct gw_engine *engine);
/* n pairs (from 2) at durations in equal ratios. */
enum gw_status gw_blast_isodamage(struct gw_blast_pair *out, size_t n, const struct gw_blast_curve *curve,
                                  double shortest, double longest, struct gw_engine *engine);

/* Levels ------------------------------------------------------------------------------------------------------------
 */

/* Performance conditions (GSA, ISC) and hazard ratings (ASTM F1642), best first: a larger one is worse. */
enum gw_condition {
    GW_CONDITION_UNSET,
    GW_CONDITION_1,
    GW_CONDITION_2,
    GW_CONDITION_3A,
    GW_CONDITION_3B,
    GW_CONDITION_4,
    GW_CONDITION_5
};
enum gw_hazard {
    GW_HAZARD_UNSET,
    GW_HAZARD_NO_BREAK,
    GW_HAZARD_NO_HAZARD,
    GW_HAZARD_MINIMAL,
    GW_HAZARD_VERY_LOW,
    GW_HAZARD_LOW,
    GW_HAZARD_HIGH
};
enum gw_protection_level {
    GW_BLAST_PROTECTION_UNSET,
    GW_BLAST_PROTECTION_VERY_LOW,
    GW_BLAST_PROTECTION_LOW,
    GW_BLAST_PROTECTION_MEDIUM,
    GW_BLAST_PROTECTION_HIGH
};
/* The worst hazard that a level of protection admits (UFC 4-010-01). */
enum gw_status gw_blast_admitted(enum gw_hazard *out, enum gw_protection_level protection, struct gw_engine *engine);

/* What is asked of a lite, or what a test or analysis has shown of it. On the demand's side hazard and condition are
 * the worst that are allowed. */
struct gw_blast_performance {
    struct gw_blast_pair load; /* members absent: not stated */
    enum gw_hazard hazard;
    enum gw_condition condition;
};
struct gw_blast_verdict {
    enum gw_bool meets;  /* GW_UNSAID: not shown */
    double pressure_use; /* demand over rating; absent where either is */
    double impulse_use;  /* both must be 1 or less */
    const char *why;     /* constant: what fails, or what is not shown and whom to ask */
};
/* Both numbers of the rating must reach the demand, and its hazard (or condition) must be no worse than allowed, on the
 * scale that the demand names: the two scales measure at different heights and do not translate. */
void gw_blast_compare(struct gw_blast_verdict *out, const struct gw_blast_performance *demand,
                      const struct gw_blast_performance *rating);
/* Of the loads alone. */
bool gw_blast_covers(struct gw_blast_pair rating, struct gw_blast_pair demand);

/* Documents that say what holds the glass. */
enum gw_blast_criteria {
    GW_BLAST_CRITERIA_UNSET,
    GW_BLAST_UFC_2003,
    GW_BLAST_UFC_2007,
    GW_BLAST_UFC_2012,
    GW_BLAST_F2248_03,
    GW_BLAST_F2248_09
};
struct gw_blast_support {
    enum gw_blast_criteria criteria;
    double width, height;    /* m, vision area */
    double equivalent_load;  /* Pa, 3 s, from the chart of ASTM F2248; absent: not given */
    double glass_resistance; /* Pa, of the whole lite, ASTM E1300; absent: not given */
};
/* Pa on the lite that connections are designed for. */
enum gw_status gw_blast_attachment(double *out, const struct gw_blast_support *in, struct gw_engine *engine);
/* Framing that holds the glass: span over its deflection, at least, and the pressure that it is taken under. */
enum gw_status gw_blast_edge_limit(double *span_over, double *pressure, const struct gw_blast_support *in,
                                   struct gw_engine *engine);
/* Widths of the structural bead, and the bite in gaskets, of glass of a designation (m); absent where the document
 * says nothing. */
struct gw_blast_bead {
    double least, most, thickness, dry;
};
enum gw_status gw_blast_bead(struct gw_blast_bead *out, enum gw_blast_criteria criteria, double designation,
                             struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
