/* The whole case: what must be given, the heights, both signs, the levels. */
#include "wind_internal.h"

#include <stddef.h>
#include <string.h>

static void keep(const struct wind_run *run, const char *text)
{
    struct gw_wind_result *out = run->out;
    if (!out) return;
    for (unsigned i = 0; i < out->n_notes; i++)
        if (out->notes[i] == text) return;
    if (out->n_notes < GW_WIND_NOTES) out->notes[out->n_notes++] = text;
}

void gw_wind_note(const struct wind_run *run, const char *symbol, const char *clause, const char *text)
{
    gw_trace_note(run->engine, symbol, clause, text);
    keep(run, text);
}

void gw_wind_note_of(const struct wind_run *run, const char *symbol, const char *clause, struct gw_value figure,
                     const char *text)
{
    GW_TRACE_SAY(run->engine, symbol, clause, "{}: {}", figure, gw_of_text(text));
    keep(run, text);
}

const char *gw_wind_clause(const struct wind_run *run, int item)
{
    const struct gw_wind_clauses *row = &run->engine->tables->wind_clauses[item];
    switch (run->in->edition) {
    case GW_ASCE7_10:
        return row->asce7_10;
    case GW_ASCE7_16:
        return row->asce7_16;
    case GW_ASCE7_22:
        return row->asce7_22;
    case GW_EDITION_UNSET:
        break;
    }
    return row->any;
}

enum sign_rule { ANY_SIGN, NOT_NEGATIVE, POSITIVE };

/* What is asked of each number of the case. */
static const struct number_rule {
    const char *key;
    size_t offset;
    bool required;
    enum sign_rule sign;
} NUMBERS[] = {
    {"basic_wind_speed", offsetof(struct gw_wind_case, basic_wind_speed), true, POSITIVE},
    {"mean_roof_height", offsetof(struct gw_wind_case, mean_roof_height), true, POSITIVE},
    {"least_width", offsetof(struct gw_wind_case, least_width), true, POSITIVE},
    {"height", offsetof(struct gw_wind_case, height), false, POSITIVE},
    {"ke", offsetof(struct gw_wind_case, ke), false, POSITIVE},
    {"kzt", offsetof(struct gw_wind_case, kzt), false, POSITIVE},
    {"effective_area", offsetof(struct gw_wind_case, effective_area), false, POSITIVE},
    {"span", offsetof(struct gw_wind_case, span), false, POSITIVE},
    {"width", offsetof(struct gw_wind_case, width), false, POSITIVE},
    {"roof_slope", offsetof(struct gw_wind_case, roof_slope), false, NOT_NEGATIVE},
    {"highest_opening", offsetof(struct gw_wind_case, highest_opening), false, POSITIVE},
    {"internal_volume", offsetof(struct gw_wind_case, internal_volume), false, POSITIVE},
    {"opening_area", offsetof(struct gw_wind_case, opening_area), false, POSITIVE},
};

static enum gw_status check_numbers(const struct wind_run *run)
{
    for (size_t i = 0; i < sizeof NUMBERS / sizeof NUMBERS[0]; i++) {
        const struct number_rule *rule = &NUMBERS[i];
        double value;
        memcpy(&value, (const char *)run->in + rule->offset, sizeof value);
        if (!gw_given(value)) {
            if (rule->required)
                return gw_refuse(run->engine, GW_MISSING, rule->key, "{} is not given", gw_of_text(rule->key));
        } else if (rule->sign == POSITIVE && !(value > 0)) {
            return gw_refuse(run->engine, GW_BAD_VALUE, rule->key, "must be above zero");
        } else if (rule->sign == NOT_NEGATIVE && value < 0) {
            return gw_refuse(run->engine, GW_BAD_VALUE, rule->key, "must not be negative");
        }
    }
    return GW_OK;
}

static enum gw_status check_area(const struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    bool span = gw_given(in->span), width = gw_given(in->width);
    if (gw_given(in->effective_area) || (span && width)) return GW_OK;
    const char *key = span ? "width" : width ? "span" : "effective_area";
    return gw_refuse(run->engine, GW_MISSING, key, "give effective_area, or span and width");
}

static enum gw_status check(const struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    struct gw_engine *engine = run->engine;
    if (in->edition == GW_EDITION_UNSET)
        return gw_refuse(engine, GW_MISSING, "edition", "edition of ASCE 7 is not given");
    if (in->exposure == GW_EXPOSURE_UNSET) return gw_refuse(engine, GW_MISSING, "exposure", "exposure is not given");
    if (in->enclosure == GW_ENCLOSURE_UNSET)
        return gw_refuse(engine, GW_MISSING, "enclosure", "enclosure class is not given");
    if (in->zone == 0) return gw_refuse(engine, GW_MISSING, "zone", "wall zone is not given: 4 or 5");
    if (in->zone != 4 && in->zone != 5) return gw_refuse(engine, GW_BAD_VALUE, "zone", "wall zones are 4 and 5");
    enum gw_status status = check_numbers(run);
    if (status == GW_OK) status = check_area(run);
    if (status == GW_OK && in->topography && !gw_given(in->kzt))
        status = gw_wind_check_topography(in->topography, engine);
    return status;
}

static enum gw_status check_height(const struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    if (!gw_given(in->height) || wind_at_most(in->height, in->mean_roof_height)) return GW_OK;
    const char *clause = gw_wind_clause(run, gw_wind_figure_clause(run));
    if (in->parapet) {
        gw_wind_note(run, "z", clause,
                     "height is above the mean roof height: the pressures of the parapet are those that apply there");
    } else if (run->low) {
        gw_wind_note(run, "z", clause, "height is above the mean roof height; the pressures are those of q_h");
    } else {
        return gw_refuse(run->engine, GW_OUTSIDE_METHOD, "height",
                         "height is above the mean roof height, and there is no parapet; limit {}",
                         gw_of_quantity(GW_LENGTH, in->mean_roof_height));
    }
    return GW_OK;
}

static enum gw_status find_levels(const struct wind_run *run)
{
    static const struct wind_names at_roof = {"K_h", "K_zt,h", "q_h", "K_z=K_h", "K_zt=K_zt,h", "h"},
                                   at_height = {"K_z", "K_zt,z", "q_z", "K_z", "K_zt=K_zt,z", "z"};
    const struct gw_wind_case *in = run->in;
    struct gw_wind_result *out = run->out;
    struct wind_level roof, height;
    out->ke = gw_wind_ke_of_run(run);
    if (!gw_wind_level_at(run, in->mean_roof_height, out->ke, &at_roof, &roof)) return run->engine->fault.status;
    if (!gw_given(in->height) || !(fabs(in->height - in->mean_roof_height) > 0)) {
        height = roof;
        GW_TRACE_SAY(run->engine, "q_z", gw_wind_clause(run, GW_ROW_WIND_CLAUSES_VELOCITY),
                     "at the mean roof height: q_z = q_h = {}", gw_of_quantity(GW_PRESSURE, roof.q));
    } else if (!gw_wind_level_at(run, in->height, out->ke, &at_height, &height)) {
        return run->engine->fault.status;
    }
    out->kh = roof.kz, out->kzt_h = roof.kzt, out->qh = roof.q;
    out->kz = height.kz, out->kzt_z = height.kzt, out->qz = height.q;
    return GW_OK;
}

static void find_area(const struct wind_run *run)
{
    const struct gw_wind_case *in = run->in;
    const struct gw_wind_area *rule = &run->engine->tables->wind_area[GW_ROW_WIND_AREA_WALL];
    run->out->effective_area =
        gw_given(in->effective_area) ? in->effective_area : gw_wind_area(run, in->span, in->width);
    if (!wind_at_most(run->out->effective_area, rule->main_frame_m2))
        gw_wind_note(
            run, "A", gw_wind_clause(run, GW_ROW_WIND_CLAUSES_MAIN_FRAME),
            "the area is large enough that the pressures of the main frame would be permitted; those of cladding "
            "are given");
}

/* Velocity pressure of the internal pressure that adds to suction outside. */
static double outward_internal_q(const struct wind_run *run)
{
    static const struct wind_names at_opening = {"K_i", "K_zt,i", "q_i", "K_z=K_i", "K_zt=K_zt,i", "i"};
    struct wind_level level;
    if (run->low || run->in->enclosure != GW_PARTIALLY_ENCLOSED || !gw_given(run->in->highest_opening))
        return run->out->qh;
    if (!gw_wind_level_at(run, run->in->highest_opening, run->out->ke, &at_opening, &level)) return GW_ABSENT;
    return level.q;
}

/* The alternative is read both ways, q_z or q_h inward: on a hill q_z below the roof can be the larger. */
static double inward_alternative(const struct wind_run *run, bool with_kd, const char *clause)
{
    const struct gw_wind_result *out = run->out;
    double kd = with_kd ? out->kd : 1, p = kd * (fmax(out->qz, out->qh) * out->gcp_positive + out->qh * out->gcpi);
    GW_STEP(run->engine, "p_net,in", GW_PRESSURE, p, clause,
            with_kd ? "max(q_z, q_h)*K_d*GC_p+q_h*K_d*GC_pi" : "max(q_z, q_h)*GC_p+q_h*GC_pi",
            {"q_z", out->qz, GW_PRESSURE}, {"q_h", out->qh, GW_PRESSURE}, {"K_d", out->kd, GW_RATIO},
            {"GC_p=GC_p,in", out->gcp_positive, GW_RATIO}, {"GC_pi", out->gcpi, GW_RATIO});
    return p;
}

/* Inward pressure takes suction inside, outward pressure takes pressure inside. The low figure knows q_h only. */
static double inward(const struct wind_run *run, bool with_kd)
{
    const struct gw_wind_result *out = run->out;
    const char *clause = gw_wind_clause(run, run->low ? GW_ROW_WIND_CLAUSES_LOW : GW_ROW_WIND_CLAUSES_HIGH);
    double kd = with_kd ? out->kd : 1, p;
    if (run->alternative) return inward_alternative(run, with_kd, clause);
    if (run->low) {
        p = out->qh * kd * (out->gcp_positive + out->gcpi);
        GW_STEP(run->engine, "p_net,in", GW_PRESSURE, p, clause, with_kd ? "q_h*K_d*(GC_p+GC_pi)" : "q_h*(GC_p+GC_pi)",
                {"q_h", out->qh, GW_PRESSURE}, {"K_d", out->kd, GW_RATIO},
                {"GC_p=GC_p,in", out->gcp_positive, GW_RATIO}, {"GC_pi", out->gcpi, GW_RATIO});
        return p;
    }
    p = kd * (out->qz * out->gcp_positive + out->qh * out->gcpi);
    GW_STEP(run->engine, "p_net,in", GW_PRESSURE, p, clause,
            with_kd ? "q_z*K_d*GC_p+q_h*K_d*GC_pi" : "q_z*GC_p+q_h*GC_pi", {"q_z", out->qz, GW_PRESSURE},
            {"K_d", out->kd, GW_RATIO}, {"GC_p=GC_p,in", out->gcp_positive, GW_RATIO}, {"q_h", out->qh, GW_PRESSURE},
            {"GC_pi", out->gcpi, GW_RATIO});
    return p;
}

static double outward(const struct wind_run *run, bool with_kd, double qi)
{
    const struct gw_wind_result *out = run->out;
    const char *clause = gw_wind_clause(run, run->low ? GW_ROW_WIND_CLAUSES_LOW : GW_ROW_WIND_CLAUSES_HIGH);
    double kd = with_kd ? out->kd : 1, p;
    if (run->low) {
        p = out->qh * kd * (out->gcp_negative - out->gcpi);
        GW_STEP(run->engine, "p_net,out", GW_PRESSURE, p, clause, with_kd ? "q_h*K_d*(GC_p-GC_pi)" : "q_h*(GC_p-GC_pi)",
                {"q_h", out->qh, GW_PRESSURE}, {"K_d", out->kd, GW_RATIO},
                {"GC_p=GC_p,out", out->gcp_negative, GW_RATIO}, {"GC_pi", out->gcpi, GW_RATIO});
        return p;
    }
    p = kd * (out->qh * out->gcp_negative - qi * out->gcpi);
    const bool own = fabs(qi - out->qh) > 0; /* of the highest opening */
    GW_STEP(run->engine, "p_net,out", GW_PRESSURE, p, clause,
            with_kd ? "q_h*K_d*GC_p-q_i*K_d*GC_pi" : "q_h*GC_p-q_i*GC_pi", {"q_h", out->qh, GW_PRESSURE},
            {"K_d", out->kd, GW_RATIO}, {"GC_p=GC_p,out", out->gcp_negative, GW_RATIO},
            {own ? "q_i" : "q_i=q_h", qi, GW_PRESSURE}, {"GC_pi", out->gcpi, GW_RATIO});
    return p;
}

static enum gw_status find_coefficients(const struct wind_run *run)
{
    struct gw_wind_result *out = run->out;
    gw_trace_group(run->engine, GW_WIND_COEFFICIENTS);
    out->gcpi = gw_wind_gcpi(run);
    if (!gw_given(out->gcpi)) return run->engine->fault.status;
    find_area(run);
    out->gcp_positive = gw_wind_wall_gcp(run, WIND_POSITIVE, out->effective_area);
    out->gcp_negative = gw_wind_wall_gcp(run, WIND_NEGATIVE, out->effective_area);
    out->zone_width = gw_wind_strip(run);
    return GW_OK;
}

static enum gw_status find_pressures(const struct wind_run *run)
{
    struct gw_wind_result *out = run->out;
    const struct gw_wind_velocity *velocity = gw_wind_velocity_row(run);
    gw_trace_group(run->engine, GW_WIND_VELOCITY);
    double qi = outward_internal_q(run);
    if (!velocity || !gw_given(qi)) return run->engine->fault.status;
    bool with_kd = velocity->kd_in_pressure == GW_YES;
    out->kd = velocity->kd;
    gw_trace_group(run->engine, GW_WIND_NET);
    out->raw_positive.pa = inward(run, with_kd);
    out->raw_negative.pa = outward(run, with_kd, qi);
    out->positive.pa = gw_wind_at_least_minimum(run, "p_in", "p=p_net,in", out->raw_positive.pa);
    out->negative.pa = gw_wind_at_least_minimum(run, "p_out", "p=p_net,out", out->raw_negative.pa);
    gw_trace_group(run->engine, GW_WIND_LEVEL);
    const char *before = gw_trace_at(run->engine, "in");
    out->asd_positive = gw_to_asd(out->positive, run->engine);
    gw_trace_at(run->engine, "out");
    out->asd_negative = gw_to_asd(out->negative, run->engine);
    gw_trace_at(run->engine, before);
    return GW_OK;
}

enum gw_status gw_wind_pressure(struct gw_wind_result *out, const struct gw_wind_case *in, struct gw_engine *engine)
{
    struct wind_run run = {.engine = engine, .in = in, .out = out};
    engine->fault.status = GW_OK;
    *out = (struct gw_wind_result){.n_notes = 0};
    enum gw_status status = check(&run);
    if (status != GW_OK) return status;
    const char *before = gw_trace_group(engine, GW_WIND_VELOCITY); /* the order in which they are read */
    gw_trace_group(engine, GW_WIND_COEFFICIENTS);
    gw_wind_choose_figure(&run);
    status = check_height(&run);
    gw_trace_group(engine, GW_WIND_VELOCITY);
    if (status == GW_OK) status = find_levels(&run);
    if (status == GW_OK) status = find_coefficients(&run);
    if (status == GW_OK) status = find_pressures(&run);
    if (status == GW_OK && in->parapet) {
        gw_trace_group(engine, GW_WIND_PARAPET);
        status = gw_wind_parapet(&run, &out->parapet_values);
        out->parapet_result = &out->parapet_values;
    }
    gw_trace_group(engine, before);
    return status;
}
