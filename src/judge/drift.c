#include "judge/drift.h"

const struct gw_seismic *gw_seismic_of(const struct gw_ask *ask) { return ask->model->project.site->seismic; }

enum gw_risk gw_risk_of(const struct gw_ask *ask) { return ask->model->project.project->risk_category; }

static bool has_seismic(const struct gw_model *m) { return m->project.site->seismic != NULL; }

static bool knows_sds(const struct gw_model *m)
{
    const struct gw_seismic *s = m->project.site->seismic;
    /* most of category B is exempt */
    return s->category == GW_SDC_A || s->category == GW_SDC_B || gw_given(s->sds);
}

const struct gw_need gw_seismic_needs[] = {
    {has_seismic, "which seismic design category and S_DS? Ask the structural engineer (site: seismic)"},
    {knows_sds, "what is S_DS? The seismic force hangs on it; ask the structural engineer (site: seismic: sds)"},
    {0}};

/* The force alone hangs on S_DS. */
const struct gw_need gw_drift_needs[] = {
    {has_seismic, "which seismic design category, and how far does a story drift? Ask the structural engineer "
                  "(site: seismic)"},
    {0}};

const char *gw_seismic_waived(const struct gw_model *m)
{
    bool waived = m->project.site->seismic->category == GW_SDC_A;
    return waived ? "Seismic Design Category A: chapter 13 of ASCE 7 does not apply" : NULL;
}

enum gw_status gw_importance_of(double *out, struct gw_ask *ask)
{
    *out = gw_seismic_of(ask)->component_importance;
    return gw_given(*out) ? GW_OK : gw_component_importance(out, gw_risk_of(ask), GW_UNSAID, &ask->engine);
}

/* In an engine of its own: what is not exempt does not rest on the rows of the exemptions. */
bool gw_is_exempt(struct gw_demand *out, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_ask own = *ask;
    struct gw_exemptions all;
    struct gw_exemption_case in = {.edition = ask->model->project.codes->wind,
                                   .category = gw_seismic_of(ask)->category,
                                   .parapet = e->parapet ? GW_YES : GW_NO,
                                   .height_above_walk = GW_ABSENT,
                                   .interlayer = GW_ABSENT,
                                   .bead = GW_ABSENT};
    own.trace = NULL;
    gw_engine_init(&own.engine, ask->model->tables, NULL);
    if (gw_importance_of(&in.importance, &own) != GW_OK) return false;
    if (gw_seismic_exemptions(&all, &in, &own.engine) != GW_OK || all.chapter == GW_EXEMPT_COUNT) return false;
    gw_used_merge(&ask->engine.used, &own.engine.used);
    gw_demand_not_asked(out,
                        GW_SAY(ask->arena, "exempt: {} (as recalled; confirm)", gw_of_text(all.of[all.chapter].title)));
    out->summary = out->message;
    return true;
}

double gw_story_height(const struct gw_ask *ask, const struct gw_element *e)
{
    const double middle = (e->bottom + e->top) / 2, said = gw_seismic_of(ask)->story_height;
    const struct gw_wall_lines *l = e->lines;
    const double head = fmin(l->top, l->roof);
    size_t n = l->n_floors;
    if (!n) return said;
    while (n > 1 && l->floors[n - 1] > head - GW_HAIR_M) n--;
    for (size_t i = 1; i < n; i++)
        if (middle < l->floors[i]) return l->floors[i] - l->floors[i - 1];
    const double last = head > l->floors[n - 1] + GW_HAIR_M ? head - l->floors[n - 1] : l->top - l->bottom;
    /* A wall that ends below the roof may end below its slab. */
    return head < l->roof - GW_HAIR_M && gw_given(said) ? fmax(last, said) : last;
}

/* What a part of the story's height, or the allowable drift, needs. */
static enum gw_status height_known(struct gw_ask *ask, double height)
{
    const struct gw_seismic *s = gw_seismic_of(ask);
    if (!gw_given(s->story_drift) && !gw_given(s->story_drift_ratio) && !s->structure)
        return gw_refuse(&ask->engine, GW_MISSING, "story_drift",
                         "how far does a story drift? Ask the structural engineer (site: seismic: story_drift, or "
                         "structure for the allowable drift)");
    if (gw_given(s->story_drift) || gw_given(height)) return GW_OK;
    return gw_refuse(&ask->engine, GW_MISSING, "story_height",
                     "how high is the story round an opening of the schedule? Ask the architect (site: seismic: "
                     "story_height)");
}

enum gw_status gw_drift_of(struct gw_drift_result *out, struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_seismic *s = gw_seismic_of(ask);
    const double height = gw_story_height(ask, e);
    const double given = gw_given(s->story_drift) ? s->story_drift
                         : gw_given(s->story_drift_ratio)
                             ? gw_drift_of_ratio(s->story_drift_ratio, height, &ask->engine)
                             : GW_ABSENT;
    const struct gw_drift_case in = {.drift = given,
                                     .drift_with_importance = GW_ABSENT,
                                     .importance = GW_ABSENT,
                                     .risk = gw_risk_of(ask),
                                     .structure = s->structure,
                                     .story_height = height,
                                     .redundancy = GW_ABSENT};
    const enum gw_status status = height_known(ask, height);
    return status == GW_OK ? gw_story_drift(out, &in, &ask->engine) : status;
}

/* A head slides only so far, so what is left does not grow in step with the drift: the importance counts before it
 * slides. Where the story's height is not known all of the drift counts as the lite's. */
enum gw_status gw_drift_in_lite(double *out, struct gw_ask *ask, const struct gw_element *e,
                                const struct gw_drift_spec *spec, double drift)
{
    struct gw_lite_drift_result r;
    const double height = gw_story_height(ask, e);
    if (spec->path == GW_PATH_SLIDING_HEAD && !gw_given(spec->slip))
        return gw_refuse(&ask->engine, GW_MISSING, "slip",
                         "how far does the head slide? Ask the manufacturer (drift: slip)");
    const struct gw_lite_drift_case in = {.path = spec->path,
                                          .drift = drift,
                                          .story_height = gw_given(height) ? height : e->pane,
                                          .frame_height = e->pane,
                                          .slip = spec->slip,
                                          .unit_width = e->width};
    const enum gw_status status = gw_lite_drift(&r, &in, &ask->engine);
    *out = r.in_lite;
    return status;
}

void gw_demand_drift(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    struct gw_drift_result drift = {.drift = GW_ABSENT, .drift_with_importance = GW_ABSENT};
    const bool exempt = gw_is_exempt(out, ask, place->element);
    const bool known = !exempt && gw_drift_of(&drift, ask, place->element) == GW_OK;
    gw_demand_term(out, ask, GW_THICKNESS, GW_NO_DIRECTION, known ? drift.drift_with_importance : GW_ABSENT);
    if (exempt) return;
    if (!known) {
        gw_demand_unknown(out, gw_fault_message(ask));
        out->summary = out->message; /* pages list what has one */
        return;
    }
    out->message = out->summary =
        GW_SAY(ask->arena, "story drift {}, with the importance factor {}", gw_of_demand(GW_THICKNESS, drift.drift),
               gw_of_demand(GW_THICKNESS, drift.drift_with_importance));
}
