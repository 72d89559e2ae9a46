/* Earthquakes and movement: force on anchors, glass and silicone when the story drifts, joints between pieces. */
#include "judge_internal.h"

#include "galeward/combine.h"

#include "tables_data.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

static const struct gw_seismic *seismic_of(const struct gw_judging *j) { return j->model->project.site->seismic; }

static enum gw_risk risk_of(const struct gw_judging *j) { return j->model->project.project->risk_category; }

double gw_story_height(const struct gw_judging *j, const struct gw_element *e)
{
    const double hair = 1e-6, middle = (e->bottom + e->top) / 2;
    const struct gw_wall_lines *l = e->lines;
    const double head = fmin(l->top, l->roof);
    size_t n = l->n_floors;
    if (!n) return seismic_of(j)->story_height;
    while (n > 1 && l->floors[n - 1] > head - hair) n--;
    for (size_t i = 1; i < n; i++)
        if (middle < l->floors[i]) return l->floors[i] - l->floors[i - 1];
    const double last = head > l->floors[n - 1] + hair ? head - l->floors[n - 1] : l->top - l->bottom;
    /* A wall that ends below the roof may end below its slab. */
    return head < l->roof - hair && gw_given(seismic_of(j)->story_height) ? fmax(last, seismic_of(j)->story_height)
                                                                          : last;
}

static enum gw_status component_importance(double *out, const struct gw_judging *j, struct gw_engine *engine)
{
    *out = seismic_of(j)->component_importance;
    return gw_given(*out) ? GW_OK : gw_component_importance(out, risk_of(j), GW_UNSAID, engine);
}

/* Of the chapter as a whole: category B but for parapets and components of importance. */
static bool is_exempt(struct gw_demand *out, struct gw_judging *j, const struct gw_element *e)
{
    struct gw_engine engine;
    struct gw_exemptions all;
    struct gw_exemption_case in = {.edition = j->model->project.codes->wind,
                                   .category = seismic_of(j)->category,
                                   .parapet = e->parapet ? GW_YES : GW_NO,
                                   .height_above_walk = GW_ABSENT,
                                   .interlayer = GW_ABSENT,
                                   .bead = GW_ABSENT};
    gw_engine_init(&engine, j->model->tables, NULL);
    if (component_importance(&in.importance, j, &engine) != GW_OK) return false;
    if (gw_seismic_exemptions(&all, &in, &engine) != GW_OK || all.chapter == GW_EXEMPT_COUNT) return false;
    gw_used_merge(&out->used, &engine.used);
    out->status = GW_NOT_REQUIRED;
    out->message = gw_format(j->model->arena, "exempt: %s (as recalled; confirm)", all.of[all.chapter].title);
    out->summary = out->message;
    return true;
}

/* Force ---------------------------------------------------------------------------------------------------------------
 */

/* z is the level of the attachment, up to the roof; ground is the base. */
static enum gw_status force_per_weight(struct gw_seismic_forces *out, const struct gw_judging *j,
                                       const struct gw_element *e, struct gw_engine *engine)
{
    const struct gw_seismic *s = seismic_of(j);
    double importance;
    enum gw_status status = component_importance(&importance, j, engine);
    if (status != GW_OK) return status;
    if (!gw_given(s->sds))
        return gw_refuse(engine, GW_MISSING, "sds", "which S_DS? Ask the structural engineer (site: seismic: sds)");
    const struct gw_seismic_force_case in = {.edition = j->model->project.codes->wind,
                                             .sds = s->sds,
                                             .weight = 1,
                                             .height_ratio =
                                                 gw_height_ratio(gw_anchor_level(e), e->building->roof_height),
                                             .importance = importance,
                                             .ap = GW_ABSENT,
                                             .rp = GW_ABSENT,
                                             .car = GW_ABSENT,
                                             .rpo = GW_ABSENT,
                                             .period = GW_ABSENT,
                                             .response_modification = GW_ABSENT,
                                             .overstrength = GW_ABSENT,
                                             .structure_importance = GW_ABSENT};
    return gw_seismic_forces(out, &in, engine);
}

static const char *percent(struct gw_judging *j, double ratio)
{
    struct gw_text text;
    gw_text_init(&text, j->model->arena);
    gw_text_number(&text, ratio * 100, 3);
    return text.at;
}

/* In parts of the weight: what hangs on the anchor is the candidate's. */
void gw_demand_seismic_force(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    struct gw_engine engine;
    struct gw_seismic_forces forces = {.fasteners = {.force = GW_ABSENT}};
    gw_engine_init(&engine, j->model->tables, NULL);
    out->dim = GW_RATIO;
    if (is_exempt(out, j, place->element)) return;
    if (force_per_weight(&forces, j, place->element, &engine) != GW_OK) {
        out->status = GW_NOT_SHOWN;
        out->message = gw_fault_of(j, &engine);
        return;
    }
    out->value = forces.fasteners.force;
    gw_used_merge(&out->used, &engine.used);
    out->message = gw_format(j->model->arena,
                             "strength level: wall and bodies of connections %s %% of the weight, fasteners %s %%",
                             percent(j, forces.wall_element.force), percent(j, forces.fasteners.force));
    out->summary = out->message;
}

static const char *missing_of_force(const struct gw_system *s, const struct gw_anchor_spec *a, double glass)
{
    if (!a || !gw_given(a->outward) || !gw_given(a->inward) || !gw_given(a->along) || !gw_given(a->dead))
        return "what does the anchor take? Ask the maker's engineer (anchor, corner_anchor: inward, outward, along, "
               "dead)";
    if (!gw_given(s->frame_weight)) return "what does the framing weigh? Ask the maker (frame_weight)";
    return gw_given(glass) ? NULL : "what does the glass weigh? Ask the architect (lites: layers)";
}

struct seismic_use {
    double required, provided;
    const char *words;
};

/* One at a time, whichever is used most. */
static struct seismic_use worst_use(const struct gw_anchor_spec *anchor, const struct gw_anchor_quake *quake)
{
    const struct seismic_use uses[] = {
        {quake->out_of_plane, fmin(anchor->inward, anchor->outward),
         "fasteners of the connection, out of plane, 0.7 E"},
        {quake->along, anchor->along, "fasteners of the connection, along the slab edge, 0.7 E"},
        {quake->down, anchor->dead, "dead load and the vertical force with it, D + 0.7 E"}};
    size_t worst = 0;
    for (size_t i = 1; i < COUNT(uses); i++)
        if (uses[i].required / uses[i].provided > uses[worst].required / uses[worst].provided) worst = i;
    return uses[worst];
}

/* Both faces at a corner. */
static void find_quake(struct gw_anchor_quake *out, const struct gw_judging *j, const struct gw_finding *f,
                       const struct gw_mullion_anchor *h, double glass, struct gw_engine *engine)
{
    const struct gw_element *e = f->demand->element;
    const double per_area = gw_corner_weight(glass + f->candidate->frame_weight, e->corner);
    struct gw_anchor_quake_case in = {.coefficient = f->demand->value, .sds = seismic_of(j)->sds};
    in.mass = gw_anchor_mass(per_area, e->width, h->below + h->above, engine);
    in.weight = gw_anchor_weight(per_area, e->width, h->piece, engine);
    gw_anchor_quake(out, &in, engine);
}

void gw_settle_seismic_force(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_anchor_spec *anchor = e->corner ? f->candidate->corner_anchor : f->candidate->anchor;
    const double glass = gw_heaviest_glass(j);
    const char *missing = missing_of_force(f->candidate, anchor, glass);
    struct gw_mullion_anchor h;
    struct gw_engine engine;
    (void)check;
    if (!missing) missing = gw_anchor_holds(&h, j, e);
    if (missing) {
        gw_unanswered(f, missing);
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    struct gw_seismic_forces derived;
    gw_trace_note(&engine, "W_p", "ASCE 7 13.3.1", "forces of a unit weight, 1 N: the coefficient c of the weight");
    if (j->trace && force_per_weight(&derived, j, e, &engine) != GW_OK) return; /* the demand was known, so this is */
    struct gw_anchor_quake quake;
    find_quake(&quake, j, f, &h, glass, &engine);
    const struct seismic_use use = worst_use(anchor, &quake);
    gw_used_merge(&f->used, &engine.used);
    f->dim = GW_FORCE;
    gw_weigh_calculated(f, use.required, use.provided, use.words);
}

/* Drift ---------------------------------------------------------------------------------------------------------------
 */

/* What a part of the story's height, or the allowable drift, needs. */
static enum gw_status height_known(const struct gw_judging *j, double height, struct gw_engine *engine)
{
    const struct gw_seismic *s = seismic_of(j);
    if (!gw_given(s->story_drift) && !gw_given(s->story_drift_ratio) && !s->structure)
        return gw_refuse(engine, GW_MISSING, "story_drift",
                         "how far does a story drift? Ask the structural engineer (site: seismic: story_drift, or "
                         "structure for the allowable drift)");
    if (gw_given(s->story_drift) || gw_given(height)) return GW_OK;
    return gw_refuse(engine, GW_MISSING, "story_height",
                     "how high is the story round an opening of the schedule? Ask the architect (site: seismic: "
                     "story_height)");
}

static enum gw_status find_drift(struct gw_drift_result *out, const struct gw_judging *j, const struct gw_element *e,
                                 struct gw_engine *engine)
{
    const struct gw_seismic *s = seismic_of(j);
    const double height = gw_story_height(j, e);
    const double given = gw_given(s->story_drift)         ? s->story_drift
                         : gw_given(s->story_drift_ratio) ? gw_drift_of_ratio(s->story_drift_ratio, height, engine)
                                                          : GW_ABSENT;
    const struct gw_drift_case in = {.drift = given,
                                     .drift_with_importance = GW_ABSENT,
                                     .importance = GW_ABSENT,
                                     .risk = risk_of(j),
                                     .structure = s->structure,
                                     .story_height = height,
                                     .redundancy = GW_ABSENT};
    enum gw_status status = height_known(j, height, engine);
    if (status != GW_OK) return status;
    return gw_story_drift(out, &in, engine);
}

void gw_demand_seismic_glass(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    struct gw_engine engine;
    struct gw_drift_result drift = {.drift = GW_ABSENT};
    gw_engine_init(&engine, j->model->tables, NULL);
    out->dim = GW_THICKNESS;
    if (is_exempt(out, j, place->element)) return;
    if (find_drift(&drift, j, place->element, &engine) != GW_OK) {
        out->status = GW_NOT_SHOWN;
        out->message = gw_fault_of(j, &engine);
        return;
    }
    out->value = drift.drift_with_importance;
    gw_used_merge(&out->used, &engine.used);
    out->message = gw_format(j->model->arena, "story drift %s, with the importance factor %s",
                             gw_judge_say(j, GW_THICKNESS, drift.drift),
                             gw_judge_say(j, GW_THICKNESS, drift.drift_with_importance));
    out->summary = out->message;
}

/* What of the story's drift, with importance, reaches the lite. A head slides only so far, so what is left does not
 * grow in step with the drift: the importance counts before it slides. Where the story's height is not known all of the
 * drift counts as the lite's. */
static enum gw_status drift_in_lite(double *out, const struct gw_judging *j, const struct gw_finding *f, double drift,
                                    struct gw_engine *engine)
{
    const struct gw_drift_spec *spec = f->candidate->drift;
    const struct gw_element *e = f->demand->element;
    struct gw_lite_drift_result r;
    const double height = gw_story_height(j, e);
    if (spec->path == GW_PATH_SLIDING_HEAD && !gw_given(spec->slip))
        return gw_refuse(engine, GW_MISSING, "slip", "how far does the head slide? Ask the maker (drift: slip)");
    const struct gw_lite_drift_case in = {.path = spec->path,
                                          .drift = drift,
                                          .story_height = gw_given(height) ? height : e->pane,
                                          .frame_height = e->pane,
                                          .slip = spec->slip,
                                          .unit_width = e->width};
    enum gw_status status = gw_lite_drift(&r, &in, engine);
    *out = r.in_lite;
    return status;
}

/* Of a lite type: one layer of glass, laminated, the same treatment throughout. */
static void set_glass(struct gw_exemption_case *in, const struct gw_judging *j, const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(j->model, e->lite) : NULL;
    struct gw_make_up m;
    struct gw_engine engine;
    gw_engine_init(&engine, j->model->tables, NULL);
    if (!type || gw_make_up_from(&m, type->layers.items, type->layers.n, &engine) != GW_OK) return;
    const struct gw_pane *p = &m.panes[0];
    in->monolithic = m.n_panes == 1 && p->n_plies == 1 ? GW_YES : GW_NO;
    in->single_thickness = m.n_panes == 1 && p->n_plies > 1 ? GW_YES : GW_NO;
    in->treatment = p->plies[0].treatment;
    for (unsigned i = 1; i < (unsigned)p->n_plies; i++)
        if (p->plies[i].treatment != in->treatment) in->treatment = GW_TREATMENT_UNSET; /* the least of them counts */
    in->interlayer = p->n_plies > 1 ? p->bonds[0].thickness : GW_ABSENT;
}

/* Of the glass; its clearance is weighed apart. */
static const char *exempt_by(const struct gw_judging *j, const struct gw_finding *f, struct gw_engine *engine)
{
    struct gw_exemptions all;
    const struct gw_element *e = f->demand->element;
    struct gw_exemption_case in = {.edition = j->model->project.codes->wind,
                                   .category = seismic_of(j)->category,
                                   .risk = risk_of(j),
                                   .parapet = e->parapet ? GW_YES : GW_NO,
                                   .clearance_passes = GW_UNSAID,
                                   .monolithic = GW_UNSAID,
                                   .height_above_walk = e->top,
                                   .single_thickness = GW_UNSAID,
                                   .interlayer = GW_ABSENT,
                                   .captured = f->candidate->system->glazing == GW_CAPTURED ? GW_YES : GW_NO,
                                   .bead = GW_ABSENT,
                                   .other_anchorage = GW_UNSAID};
    if (component_importance(&in.importance, j, engine) != GW_OK) return NULL;
    set_glass(&in, j, e);
    if (gw_seismic_exemptions(&all, &in, engine) != GW_OK) return NULL;
    return all.glass == GW_EXEMPT_COUNT || all.glass == GW_EXEMPT_CLEARANCE ? NULL : all.of[all.glass].title;
}

/* Largest fallout drift of the candidate's racking tests of that component; absent: none. */
static double tested_fallout(const struct gw_system *s, enum gw_component component, const char **report)
{
    double most = GW_ABSENT;
    for (size_t i = 0; i < s->ratings.n; i++) {
        const struct gw_rating *r = &s->ratings.items[i];
        if (r->test != GW_TEST_SWAY || !gw_given(r->drift) || most >= r->drift) continue;
        if (!gw_same_component(r, component)) continue;
        most = r->drift;
        *report = r->report ? r->report : "report not named";
    }
    return most;
}

/* A racking test records the drift of the story, so all of the story's drift is asked of it, not the lite's part. */
static void by_fallout(struct gw_finding *f, struct gw_judging *j, double clearance, double needed,
                       struct gw_engine *engine)
{
    const char *report = NULL;
    struct gw_fallout_result fallout;
    double tested = tested_fallout(f->candidate, f->demand->component, &report);
    if (!gw_given(tested)) {
        f->required = needed;
        f->provided = clearance;
        gw_unanswered(f, gw_format(j->model->arena,
                                   "the clearance of %s is short: ask the maker for the drift at which glass falls "
                                   "out (AAMA 501.6; ratings: test sway, drift)",
                                   gw_judge_say(j, GW_THICKNESS, clearance)));
        return;
    }
    if (gw_fallout(&fallout, f->demand->value, tested, engine) != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, engine));
        return;
    }
    gw_used_merge(&f->used, &engine->used);
    gw_weigh_calculated(f, fallout.required, tested,
                        gw_format(j->model->arena,
                                  "the clearance of %s is short; fallout drift of a story by %s, of lites and stories "
                                  "like these",
                                  gw_judge_say(j, GW_THICKNESS, clearance), report));
    f->evidence = GW_BY_TEST;
}

void gw_settle_seismic_glass(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_drift_spec *spec = f->candidate->drift;
    struct gw_engine engine;
    struct gw_drift_result drift = {.drift = GW_ABSENT};
    struct gw_clearance_result c;
    double in_lite = 0;
    (void)check;
    gw_engine_init(&engine, j->model->tables, j->trace);
    const char *exempt = exempt_by(j, f, &engine);
    if (exempt) {
        f->verdict = GW_NOT_REQUIRED;
        f->message = gw_format(j->model->arena, "exempt: %s (as recalled; confirm)", exempt);
        return;
    }
    if (!spec || !gw_given(spec->side_gap) || !gw_given(spec->end_gap)) {
        gw_unanswered(f, "how does the system take drift, and how much room has the glass? Ask the maker (drift: path, "
                         "side_gap, end_gap)");
        return;
    }
    enum gw_status status = find_drift(&drift, j, e, &engine);
    if (status == GW_OK) status = drift_in_lite(&in_lite, j, f, drift.drift_with_importance, &engine);
    if (status == GW_OK) in_lite = gw_drift_without_importance(in_lite, drift.importance, &engine);
    const struct gw_clearance_case in = {.lite_width = e->width,
                                         .lite_height = e->pane,
                                         .side_gap = spec->side_gap,
                                         .end_gap = spec->end_gap,
                                         .drift_in_lite = in_lite,
                                         .importance = drift.importance,
                                         .edition = j->model->project.codes->wind};
    if (status == GW_OK) status = gw_clearance(&c, &in, &engine);
    gw_used_merge(&f->used, &engine.used);
    if (status != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    double needed = c.edition_counts_importance == GW_NO ? c.required_without : c.required_with_importance;
    if (c.passes != GW_YES) {
        by_fallout(f, j, c.clearance, needed, &engine);
        return;
    }
    gw_weigh_calculated(f, needed, c.clearance, "clearance of the glass in its pocket");
}

/* The bead in shear under the drift that reaches the lite, with importance as 13.3.2 has it. */
void gw_settle_seismic_silicone(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_silicone_spec *s = f->candidate->silicone;
    struct gw_engine engine;
    struct gw_drift_result drift = {.drift = GW_ABSENT};
    struct gw_racking_result r;
    double in_lite = 0;
    (void)check;
    if (f->candidate->system->glazing == GW_CAPTURED) {
        f->verdict = GW_NOT_REQUIRED;
        f->message = "the glass is captured";
        return;
    }
    if (!s || !gw_given(s->thickness) || !gw_given(s->shear_strain) || !f->candidate->drift) {
        gw_unanswered(f, "how thick is the bead, how far may it shear, how does the system take drift? Ask the maker "
                         "(silicone: thickness, shear_strain; drift: path)");
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    enum gw_status status = find_drift(&drift, j, e, &engine);
    if (status == GW_OK) status = drift_in_lite(&in_lite, j, f, drift.drift_with_importance, &engine);
    const struct gw_racking_case in = {in_lite, e->width, e->pane, s->thickness};
    if (status == GW_OK) status = gw_silicone_racking(&r, &in, &engine);
    gw_used_merge(&f->used, &engine.used);
    if (status != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    f->dim = GW_RATIO;
    gw_weigh_calculated(f, r.strain_corner, s->shear_strain, "shear of the bead at a corner, slip over thickness");
}

/* Movement ------------------------------------------------------------------------------------------------------------
 */

/* The longest piece of any wall, and the most stories that one spans. */
static struct gw_mullion_piece longest_piece(const struct gw_judging *j)
{
    struct gw_mullion_piece longest = {0, 1};
    for (size_t i = 0; i < j->takeoff->elements.n; i++) {
        const struct gw_wall_lines *l = j->takeoff->elements.items[i].lines;
        if (!l->n_floors) continue; /* an opening of a schedule is one piece */
        struct gw_mullion_piece one = gw_longest_piece(l);
        longest.length = fmax(longest.length, one.length);
        if (one.stories > longest.stories) longest.stories = one.stories;
    }
    return longest;
}

static enum gw_status find_movement(struct gw_movement_result *out, const struct gw_judging *j, double least_gap,
                                    double least_overlap, struct gw_engine *engine)
{
    const struct gw_movement_rules *m = j->model->project.movement;
    struct gw_movement_item items[GW_JOINT_ITEMS];
    struct gw_thermal_result thermal;
    const struct gw_mullion_piece piece = longest_piece(j);
    const struct gw_thermal_case warm = {.length = piece.length,
                                         .material = GW_EXPANDS_ALUMINUM,
                                         .expansion_per_k = GW_ABSENT,
                                         .hottest = m->hottest,
                                         .coldest = m->coldest,
                                         .set_warmest = m->set_warmest,
                                         .set_coldest = m->set_coldest};
    enum gw_status status = gw_thermal_movement(&thermal, &warm, engine);
    if (status != GW_OK) return status;
    const struct gw_stack_joint joint = {.live_above = m->live_load,
                                         .live_below = gw_given(m->live_load_below) ? m->live_load_below : m->live_load,
                                         .shortening = m->shortening,
                                         .rebound = m->rebound,
                                         .thermal = &thermal,
                                         .stories = (double)piece.stories,
                                         .fabrication = m->fabrication,
                                         .erection = m->erection};
    size_t n = gw_joint_items(items, &joint, engine);
    return gw_movement_sum(out, items, n, least_gap, least_overlap, engine);
}

void gw_demand_movement(struct gw_demand *out, struct gw_judging *j, const struct gw_place *place)
{
    struct gw_engine engine;
    struct gw_movement_result r;
    (void)place;
    gw_engine_init(&engine, j->model->tables, NULL);
    out->dim = GW_THICKNESS;
    if (find_movement(&r, j, 0, GW_ABSENT, &engine) != GW_OK) {
        out->status = GW_NOT_SHOWN;
        out->message = gw_fault_of(j, &engine);
        return;
    }
    out->value = r.closing.arithmetic;
    gw_used_merge(&out->used, &engine.used);
    out->message = gw_format(
        j->model->arena,
        "closes %s arithmetic, %s with tolerances by root sum of squares, %s all by root sum of squares; opens %s, %s, "
        "%s; the arithmetic sums govern",
        gw_judge_say(j, GW_THICKNESS, r.closing.arithmetic), gw_judge_say(j, GW_THICKNESS, r.closing.mixed),
        gw_judge_say(j, GW_THICKNESS, r.closing.srss), gw_judge_say(j, GW_THICKNESS, r.opening.arithmetic),
        gw_judge_say(j, GW_THICKNESS, r.opening.mixed), gw_judge_say(j, GW_THICKNESS, r.opening.srss));
}

/* The joint closes onto its gasket; the leg stays engaged where the joint opens. */
void gw_settle_movement(struct gw_finding *f, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_stack_spec *s = f->candidate->stack_joint;
    struct gw_engine engine;
    struct gw_movement_result r;
    (void)check;
    if (!s) {
        gw_unanswered(f, "how wide is the joint between pieces, and what does it keep when closed? Ask the maker "
                         "(stack_joint: width, least_gap, engagement, least_overlap)");
        return;
    }
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (find_movement(&r, j, s->least_gap, s->least_overlap, &engine) != GW_OK) {
        gw_unanswered(f, gw_fault_of(j, &engine));
        return;
    }
    gw_used_merge(&f->used, &engine.used);
    double closing = r.joint.arithmetic / s->width;
    if (!gw_given(s->engagement) || !gw_given(s->least_overlap)) {
        gw_weigh_calculated(f, r.joint.arithmetic, s->width, "closing and the least gap");
        if (f->verdict == GW_PASS)
            gw_unanswered(f, "it closes safely; how far is the male leg engaged, and how far must it stay? Ask the "
                             "maker (stack_joint: engagement, least_overlap)");
        return;
    }
    bool opens = r.engagement.arithmetic / s->engagement > closing;
    gw_weigh_calculated(f, opens ? r.engagement.arithmetic : r.joint.arithmetic, opens ? s->engagement : s->width,
                        opens ? "opening and the least overlap" : "closing and the least gap");
}
