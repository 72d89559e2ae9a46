/* Shared by the files of src/judge only: the check registry. */
#ifndef GALEWARD_JUDGE_INTERNAL_H
#define GALEWARD_JUDGE_INTERNAL_H

#include "galeward/judge.h"
#include "galeward/member_strength.h"
#include "galeward/mullion_line.h"

enum gw_scope { GW_PER_ELEMENT, GW_PER_WALL, GW_PER_LITE_TYPE, GW_PER_NAME, GW_PER_PROJECT };

/* One wall and one component that is tested on its own: what water and air demands need, gathered in one pass. */
struct gw_judged_wall {
    const char *wall;
    enum gw_component component;
    double greatest_inward; /* Pa, allowable-stress level, of its lites below the roof */
    struct gw_used used;
};

/* What one stretch of mullion feels under the pressures of its wall, allowable-stress level, with E I of 1 N m2. */
struct gw_stretch {
    struct gw_mullion_forces forces;
    const char *direction; /* of the moment; "": none */
    const char *fault;     /* NULL; else why there are no figures */
};

struct gw_judging {
    struct gw_judgement *out;
    const struct gw_model *model;
    const struct gw_takeoff *takeoff;
    struct gw_judged_wall *walls;
    size_t n_walls, walls_capacity;
    const struct gw_glass_judged **glass; /* by element, as far as worked out; NULL: none yet */
    void *workspace;                      /* of the plate solver, once one was needed */
    const struct gw_stretch **stretches;  /* by element, the same */
    struct gw_trace *trace;               /* NULL: no derivation wanted */
    struct gw_beam_result *beam;          /* room for one, once one was needed */
    struct gw_blasted *blasted;           /* by lite type and size, as far as worked out */
    size_t n_blasted, blasted_capacity;
    struct gw_wall_anchors *anchors; /* of the last wall, framing.c */
};

/* Where a demand is worked out: the members that the check's scope gives are set. */
struct gw_place {
    const struct gw_element *element;
    const struct gw_judged_wall *wall;
    enum gw_component component;
    const struct gw_other_requirement *other;
    const struct gw_lite_type *lite;
};

/* What one rating offers against one demand. */
struct gw_offer {
    bool applies; /* it is a rating of this check and component */
    bool covers;  /* the test reaches this element; else `why` */
    bool foreign; /* tests of this kind say nothing of such an element, not even by a number too small */
    double value, value_out;
    const char *why; /* what is not covered, or a condition to confirm; "" */
};

/* One row. `needs` that is absent gives not shown with its question; a row without `demand` is not built yet. */
struct gw_need {
    bool (*present)(const struct gw_model *model);
    const char *question;
};

struct gw_check {
    const char *id, *title, *clause;
    enum gw_scope scope;
    unsigned kinds;              /* per element: bits 1 << enum gw_kind */
    const struct gw_need *needs; /* ends with a NULL function; may be NULL */
    /* A reason why the project does not ask for it, or NULL. */
    const char *(*waived)(const struct gw_model *model);
    void (*demand)(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
    /* A candidate against a demand that is known: by its ratings, by the calculation, by its other data. */
    void (*settle)(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
    struct gw_offer (*offer)(const struct gw_judging *j, const struct gw_rating *rating,
                             const struct gw_demand *demand); /* for gw_compare */
    bool link; /* of the chain by which calculation shows a pressure that no test reaches */
};

const struct gw_check *gw_check_list(size_t *n);
const struct gw_check *gw_check_of(const struct gw_demand *demand);

/* checks_rated.c: structural, water, air and free-form ratings */
void gw_demand_structural(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_demand_water(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_demand_air(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_demand_other(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
struct gw_offer gw_offer_structural(const struct gw_judging *j, const struct gw_rating *rating,
                                    const struct gw_demand *demand);
struct gw_offer gw_offer_water(const struct gw_judging *j, const struct gw_rating *rating,
                               const struct gw_demand *demand);
struct gw_offer gw_offer_air(const struct gw_judging *j, const struct gw_rating *rating,
                             const struct gw_demand *demand);
struct gw_offer gw_offer_other(const struct gw_judging *j, const struct gw_rating *rating,
                               const struct gw_demand *demand);
/* A spandrel is glazed like any fixed lite; vents and doors are tested on their own. */
bool gw_same_component(const struct gw_rating *rating, enum gw_component component);
/* Why a test of a lite does not reach the element; "": it does. */
const char *gw_lite_shortfall(const struct gw_judging *j, const struct gw_rating *rating, const struct gw_element *e);
/* checks_hazard.c: wind-borne debris, blast */
void gw_demand_debris(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_debris(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
void gw_demand_blast(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_blast(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
/* members.c: a candidate's member over a span, from a tube or from stated properties. NULL, or what is missing and whom
 * to ask; `who` names the key. */
const char *gw_find_member(struct gw_member_strength *m, const struct gw_member_spec *spec, double span,
                           const char *who, const struct gw_judging *j, struct gw_used *used);

/* framing.c */
/* The elements on the lines of one wall, which stand together in the list. */
struct gw_wall_elements {
    const struct gw_element *from, *end;
};
struct gw_wall_elements gw_elements_beside(const struct gw_judging *j, const struct gw_element *e);
const struct gw_stretch *gw_stretch_of(struct gw_judging *j, const struct gw_element *e);
void gw_stretch_derive(struct gw_judging *j, const struct gw_element *e);
/* What the beam hands to the anchor that the element is. NULL, or why there is nothing. */
const char *gw_anchor_holds(struct gw_mullion_anchor *out, struct gw_judging *j, const struct gw_element *e);
/* checks_glass.c: strength, deflection, pocket */
/* The lite of an element by the project's rules; the state of the gas in service is left to the caller. */
enum gw_status gw_lite_of(struct gw_lite *out, const struct gw_model *model, const struct gw_element *e,
                          const struct gw_lite_type *type, struct gw_engine *engine);
void gw_demand_glass(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_demand_glass_deflection(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_demand_pocket(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_pocket(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
/* The demand's own calculation, whoever the candidate is. */
void gw_settle_calculated(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
/* The report of a structural rating that reaches the element at both its pressures; NULL. */
const char *gw_test_that_covers(const struct gw_judging *j, const struct gw_system *system,
                                const struct gw_demand *demand);

/* checks_framing.c, checks_fasteners.c: the links, each by the test that reaches it or by calculation */
void gw_settle_mullion(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_mullion_deflection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_transom(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_transom_deflection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_transom_connection(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_splice(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_screw(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_plate(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_silicone(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_anchor(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
/* framing.c: the level of the anchor that the element is; the pieces of a wall's mullions. */
double gw_anchor_level(const struct gw_element *e);
struct gw_mullion_piece gw_longest_piece(const struct gw_wall_lines *l);
/* checks_seismic.c */
/* Floor to floor where the element stands; the last story ends at the roof, or at the head of a wall that ends below.
 * Of an opening of a schedule as the project says, or absent. The project has seismic data. */
double gw_story_height(const struct gw_judging *j, const struct gw_element *e);
void gw_demand_seismic_force(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_seismic_force(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_demand_seismic_glass(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_seismic_glass(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_settle_seismic_silicone(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
void gw_demand_movement(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place);
void gw_settle_movement(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check);
/* Heaviest glass of the project's lite types, Pa; absent where a make-up is not known. */
double gw_heaviest_glass(const struct gw_judging *j);
void gw_judge_reactions(struct gw_judging *j);
void gw_judge_members(struct gw_judging *j);
void gw_judge_reach(struct gw_judging *j);   /* reach.c */
void gw_judge_mock_up(struct gw_judging *j); /* checks_rated.c */
/* Of a screw and of its plate, without asking whether a test reaches them. */
void gw_calculate_screw(struct gw_finding *f, struct gw_judging *j);
void gw_calculate_plate(struct gw_finding *f, struct gw_judging *j);
/* Deflection limit of framing over glass under wind, with the project's cap, m. */
double gw_framing_limit(const struct gw_judging *j, double span, bool overhang, struct gw_engine *engine);
/* Parts of a settle. */
bool gw_tested(struct gw_finding *f, const struct gw_judging *j);
void gw_unanswered(struct gw_finding *f, const char *question);
void gw_weigh_calculated(struct gw_finding *f, double required, double provided, const char *message);
const char *gw_fault_of(const struct gw_judging *j, const struct gw_engine *engine);

/* links.c: what no test reaches is shown by calculation where every link of its wall is. `findings` are one
 * candidate's. */
void gw_judge_by_links(struct gw_finding *findings, size_t n, const struct gw_judging *j);
/* compare.c: the best that a candidate's ratings show. */
void gw_compare(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check);
/* A quantity in the project's units, for messages. */
const char *gw_judge_say(const struct gw_judging *j, enum gw_dim dim, double si);

#endif
