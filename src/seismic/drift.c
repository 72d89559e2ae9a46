/* Drift of a story, and what of it reaches a lite. */
#include "seismic_internal.h"

#include "base/tolerance.h"

static const char NOTE_UNSEEN[] =
    "the allowable drift of this structure was not seen in the standard itself: confirm it, or give the "
    "structural engineer's drift";
static const char NOTE_ALLOWABLE[] =
    "the drift is the allowable one of the structure; the structural engineer's may be "
    "less";
static const char NOTE_CONNECTION[] = "the half inch that connections must allow is recalled";
static const char NOTE_CORNER[] = "at a corner the stack joint must slide in two directions";
static const char NOTE_TILTING[] = "the dead-load anchors must let the unit rise on one side";
static const char KINEMATICS[] = "kinematics of the wall";

static const struct gw_story_drift *find_ratio(const struct gw_drift_case *in, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_STORY_DRIFT; i++) {
        const struct gw_story_drift *row = &engine->tables->story_drift[i];
        if (row->structure == (int)in->structure && row->risk == (int)in->risk) return GW_USE(engine, row);
    }
    return NULL;
}

static enum gw_status allowable_drift(struct gw_drift_result *out, const struct gw_drift_case *in,
                                      struct gw_engine *engine)
{
    if (in->structure == GW_DRIFT_UNSET)
        return gw_refuse(engine, GW_MISSING, "drift",
                         "give the story drift, or structure, risk_category and story_height for the allowable one");
    if (in->risk == GW_RISK_UNSET)
        return gw_refuse(engine, GW_MISSING, "risk_category", "risk_category is needed for the allowable drift");
    enum gw_status status = gw_seismic_positive("story_height", in->story_height, engine);
    if (status) return status;
    const struct gw_story_drift *row = find_ratio(in, engine);
    if (!row) return gw_refuse(engine, GW_OUTSIDE_METHOD, "structure", "no allowable drift for this structure");
    double rho = gw_given(in->redundancy) ? in->redundancy : 1;
    if (!(rho >= 1 && isfinite(rho)))
        return gw_refuse(engine, GW_BAD_VALUE, "redundancy", "redundancy must be 1 or more");
    out->allowable = row->ratio / rho;
    out->drift = out->allowable * in->story_height;
    GW_STEP(engine, "D_p", GW_THICKNESS, out->drift, row->row.source, "r/rho*h_sx", {"r", row->ratio, GW_RATIO},
            {"rho", rho, GW_RATIO}, {"h_sx", in->story_height, GW_THICKNESS});
    gw_seismic_note(&out->notes, NOTE_ALLOWABLE);
    gw_seismic_note_unseen(&out->notes, &row->row, NOTE_UNSEEN);
    return GW_OK;
}

static enum gw_status find_importance(struct gw_drift_result *out, const struct gw_drift_case *in,
                                      struct gw_engine *engine)
{
    if (!gw_given(in->importance)) return gw_structure_importance(&out->importance, in->risk, engine);
    out->importance = in->importance;
    return gw_seismic_positive("importance", in->importance, engine);
}

double gw_drift_of_ratio(double ratio, double story_height, struct gw_engine *engine)
{
    GW_STEP(engine, "D_p", GW_THICKNESS, ratio * story_height, "drift ratio of the structural engineer", "r*h_sx",
            {"r", ratio, GW_RATIO}, {"h_sx", story_height, GW_THICKNESS});
    return ratio * story_height;
}

double gw_drift_without_importance(double drift_with_importance, double importance, struct gw_engine *engine)
{
    GW_STEP(engine, "D_p,lite", GW_THICKNESS, drift_with_importance / importance, "D_pI = D_p I_e, ASCE 7 13.3.2",
            "D_pI/I_e", {"D_pI|D_pI|D_lite", drift_with_importance, GW_THICKNESS}, {"I_e", importance, GW_RATIO});
    return drift_with_importance / importance;
}

/* D_p and D_pI from whichever is known: the importance is counted once. */
static enum gw_status find_drifts(struct gw_drift_result *out, const struct gw_drift_case *in, struct gw_engine *engine)
{
    static const char clause[] = "D_pI = D_p I_e, ASCE 7 13.3.2";
    enum gw_status status = GW_OK;
    if (gw_given(in->drift_with_importance)) {
        status = gw_seismic_not_negative("drift_with_importance", in->drift_with_importance, engine);
        if (status) return status;
        out->drift_with_importance = in->drift_with_importance;
        out->drift = in->drift_with_importance / out->importance;
        GW_STEP(engine, "D_p", GW_THICKNESS, out->drift, clause, "D_pI/I_e",
                {"D_pI", out->drift_with_importance, GW_THICKNESS}, {"I_e", out->importance, GW_RATIO});
        return GW_OK;
    }
    out->drift = in->drift;
    status =
        gw_given(in->drift) ? gw_seismic_not_negative("drift", in->drift, engine) : allowable_drift(out, in, engine);
    if (status) return status;
    out->drift_with_importance = out->drift * out->importance;
    GW_STEP(engine, "D_pI", GW_THICKNESS, out->drift_with_importance, clause, "D_p*I_e",
            {"D_p", out->drift, GW_THICKNESS}, {"I_e", out->importance, GW_RATIO});
    return GW_OK;
}

enum gw_status gw_story_drift(struct gw_drift_result *out, const struct gw_drift_case *in, struct gw_engine *engine)
{
    const struct gw_drift_rule *rule = &engine->tables->drift_rule[GW_ROW_DRIFT_RULE_CONNECTION];
    *out = (struct gw_drift_result){.allowable = GW_ABSENT};
    if (gw_given(in->drift) && gw_given(in->drift_with_importance))
        return gw_refuse(engine, GW_BAD_VALUE, "drift_with_importance",
                         "give the drift with importance or without it, not both");
    enum gw_status status = find_importance(out, in, engine);
    if (!status) status = find_drifts(out, in, engine);
    if (status) return status;
    gw_used_add(&engine->used, &rule->row);
    out->connection = fmax(rule->factor * out->drift_with_importance, rule->least_m);
    GW_STEP(engine, "D_connection", GW_THICKNESS, out->connection, rule->clause, "max(c*D_pI,D_min)",
            {"c", rule->factor, GW_RATIO}, {"D_pI", out->drift_with_importance, GW_THICKNESS},
            {"D_min", rule->least_m, GW_THICKNESS});
    gw_seismic_note_unseen(&out->notes, &rule->row, NOTE_CONNECTION);
    return GW_OK;
}

static enum gw_status check_heights(const struct gw_lite_drift_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_seismic_positive("story_height", in->story_height, engine);
    if (!status) status = gw_seismic_positive("frame_height", in->frame_height, engine);
    if (status || in->frame_height <= in->story_height * (1 + GW_HAIR)) return status;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "frame_height",
                     "the frame opening is higher than the story: a lite takes drift from one story");
}

/* What racks the frame, the rest of the drift when some has slid away, evenly over the story. */
static enum gw_status rack(struct gw_lite_drift_result *out, const struct gw_lite_drift_case *in,
                           struct gw_engine *engine)
{
    enum gw_status status = check_heights(in, engine);
    if (status) return status;
    double rest = in->drift - out->slip;
    out->in_lite = rest * in->frame_height / in->story_height;
    GW_STEP(engine, "D_lite", GW_THICKNESS, out->in_lite, KINEMATICS, "D*h_f/h_s", {"D", rest, GW_THICKNESS},
            {"h_f", in->frame_height, GW_THICKNESS}, {"h_s", in->story_height, GW_THICKNESS});
    return GW_OK;
}

static enum gw_status slide_head(struct gw_lite_drift_result *out, const struct gw_lite_drift_case *in,
                                 struct gw_engine *engine)
{
    enum gw_status status = gw_seismic_not_negative("slip", in->slip, engine);
    if (status) return status;
    out->slip = fmin(in->slip, in->drift);
    GW_STEP(engine, "s", GW_THICKNESS, out->slip, KINEMATICS, "min(s_head,D_p)", {"s_head", in->slip, GW_THICKNESS},
            {"D_p", in->drift, GW_THICKNESS});
    return rack(out, in, engine);
}

static enum gw_status tilt(struct gw_lite_drift_result *out, const struct gw_lite_drift_case *in,
                           struct gw_engine *engine)
{
    enum gw_status status = gw_seismic_positive("story_height", in->story_height, engine);
    if (!status) status = gw_seismic_positive("unit_width", in->unit_width, engine);
    if (status) return status;
    out->angle = in->drift / in->story_height;
    out->lift = out->joint_slip = in->drift / in->story_height * in->unit_width;
    GW_STEP(engine, "s_joint", GW_THICKNESS, out->joint_slip, KINEMATICS, "D/H*b", {"D", in->drift, GW_THICKNESS},
            {"H", in->story_height, GW_THICKNESS}, {"b", in->unit_width, GW_THICKNESS});
    gw_seismic_note(&out->notes, NOTE_TILTING);
    return GW_OK;
}

enum gw_status gw_lite_drift(struct gw_lite_drift_result *out, const struct gw_lite_drift_case *in,
                             struct gw_engine *engine)
{
    *out = (struct gw_lite_drift_result){.in_lite = 0};
    enum gw_status status = gw_seismic_not_negative("drift", in->drift, engine);
    if (status) return status;
    switch (in->path) {
    case GW_PATH_RACKING:
        return rack(out, in, engine);
    case GW_PATH_ALL_IN_LITE:
        out->in_lite = in->drift;
        gw_trace_found(engine, "D_lite", GW_THICKNESS, out->in_lite, KINEMATICS,
                       "stiff bands above and below: all of the drift is in the lite", NULL, 0);
        return GW_OK;
    case GW_PATH_SLIDING_HEAD:
        return slide_head(out, in, engine);
    case GW_PATH_SLIDING:
        out->slip = in->drift;
        gw_seismic_note(&out->notes, NOTE_CORNER);
        gw_trace_found(engine, "D_lite", GW_THICKNESS, out->in_lite, KINEMATICS,
                       "the stack joint slides by the drift: none in the lite", NULL, 0);
        return GW_OK;
    case GW_PATH_TILTING:
        return tilt(out, in, engine);
    case GW_PATH_UNSET:
        break;
    }
    return gw_refuse(engine, GW_MISSING, "distribution", "how the wall takes the drift is not given");
}
