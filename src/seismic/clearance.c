/* Glass in a frame that racks: the clearance that keeps them apart, the fallout drift where they meet. */
#include "seismic_internal.h"

static const char NOTE_WORDING[] = "whether the clearance is compared with the drift with or without I_e is recalled "
                                   "to differ between editions and not "
                                   "verified (ASCE 7-10 without, 7-16 and 7-22 with): read the edition's 13.5.9.1";
static const char NOTE_HARD[] = "gaps are hard clearances: setting blocks and gaskets fill them";
static const char NOTE_LEAST[] = "the least fallout drift of half an inch is recalled";
static const char CLEAR[] = "D_clear, ASCE 7 13.5.9.1; a rigid lite in a frame that stays a parallelogram";

static enum gw_status check(const struct gw_clearance_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_seismic_positive("lite_width", in->lite_width, engine);
    if (!status) status = gw_seismic_positive("lite_height", in->lite_height, engine);
    if (!status) status = gw_seismic_not_negative("side_gap", in->side_gap, engine);
    if (!status) status = gw_seismic_not_negative("end_gap", in->end_gap, engine);
    if (!status && gw_given(in->drift_in_lite)) {
        status = gw_seismic_not_negative("drift_in_lite", in->drift_in_lite, engine);
        if (!status) status = gw_seismic_positive("importance", in->importance, engine);
    }
    return status;
}

static const struct gw_clearance_rule *rule_of(enum gw_edition edition, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_CLEARANCE_RULE; i++)
        if (engine->tables->clearance_rule[i].edition == (int)edition)
            return GW_USE(engine, &engine->tables->clearance_rule[i]);
    return NULL;
}

/* The factor is the same in every edition; without one, that of the first. */
static enum gw_status compare(struct gw_clearance_result *out, const struct gw_clearance_case *in,
                              struct gw_engine *engine)
{
    const struct gw_clearance_rule *rule = rule_of(in->edition, engine);
    const bool known = rule != NULL;
    struct gw_fallout_result fallout;
    if (!rule) rule = GW_USE(engine, &engine->tables->clearance_rule[0]);
    out->required_without = rule->factor * in->drift_in_lite;
    out->required_with_importance = rule->factor * in->drift_in_lite * in->importance;
    GW_STEP(engine, "D_required", GW_THICKNESS, out->required_without, rule->clause, "c*D_p",
            {"c", rule->factor, GW_RATIO}, {"D_p|D", in->drift_in_lite, GW_THICKNESS});
    GW_STEP(engine, "D_required,I", GW_THICKNESS, out->required_with_importance, rule->clause, "c*D_p*I_e",
            {"c", rule->factor, GW_RATIO}, {"D_p|D", in->drift_in_lite, GW_THICKNESS},
            {"I_e", in->importance, GW_RATIO});
    out->passes_without = seismic_reaches(out->clearance, out->required_without) ? GW_YES : GW_NO;
    out->passes_with_importance = seismic_reaches(out->clearance, out->required_with_importance) ? GW_YES : GW_NO;
    if (known) {
        out->edition_counts_importance = (enum gw_bool)rule->with_importance;
        out->passes = rule->with_importance == GW_YES ? out->passes_with_importance : out->passes_without;
    }
    gw_seismic_note_unseen(&out->notes, &rule->row, NOTE_WORDING);
    enum gw_status status = gw_fallout(&fallout, in->drift_in_lite * in->importance, GW_ABSENT, engine);
    out->fallout_required = fallout.required;
    gw_seismic_note(&out->notes, NOTE_LEAST);
    return status;
}

enum gw_status gw_clearance(struct gw_clearance_result *out, const struct gw_clearance_case *in,
                            struct gw_engine *engine)
{
    *out = (struct gw_clearance_result){.passes = GW_UNSAID};
    out->passes_with_importance = out->passes_without = out->edition_counts_importance = GW_UNSAID;
    out->required_with_importance = out->required_without = out->fallout_required = GW_ABSENT;
    enum gw_status status = check(in, engine);
    if (status) return status;
    out->clearance = 2 * in->side_gap + 2 * in->end_gap * in->lite_height / in->lite_width;
    GW_STEP(engine, "D_clear", GW_THICKNESS, out->clearance, CLEAR, "2*c_1+2*c_2*h_p/b_p",
            {"c_1", in->side_gap, GW_THICKNESS}, {"c_2", in->end_gap, GW_THICKNESS},
            {"h_p", in->lite_height, GW_THICKNESS}, {"b_p", in->lite_width, GW_THICKNESS});
    gw_seismic_note(&out->notes, NOTE_HARD);
    return gw_given(in->drift_in_lite) ? compare(out, in, engine) : GW_OK;
}

enum gw_status gw_fallout(struct gw_fallout_result *out, double drift_with_importance, double tested,
                          struct gw_engine *engine)
{
    const struct gw_drift_rule *rule = GW_USE(engine, &engine->tables->drift_rule[GW_ROW_DRIFT_RULE_FALLOUT]);
    const struct gw_drift_rule *least = GW_USE(engine, &engine->tables->drift_rule[GW_ROW_DRIFT_RULE_FALLOUT_LEAST]);
    *out = (struct gw_fallout_result){.passes = GW_UNSAID};
    enum gw_status status = gw_seismic_not_negative("drift", drift_with_importance, engine);
    if (!status && gw_given(tested)) status = gw_seismic_not_negative("fallout_tested", tested, engine);
    if (status) return status;
    out->required = fmax(rule->factor * drift_with_importance, least->least_m);
    GW_STEP(engine, "D_fallout", GW_THICKNESS, out->required, rule->clause, "max(c*D_pI,D_min)",
            {"c", rule->factor, GW_RATIO}, {"D_pI|D_pI|D_lite", drift_with_importance, GW_THICKNESS},
            {"D_min", least->least_m, GW_THICKNESS});
    if (gw_given(tested)) out->passes = seismic_reaches(tested, out->required) ? GW_YES : GW_NO;
    return GW_OK;
}
