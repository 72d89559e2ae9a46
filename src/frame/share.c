/* Parts that bend together: side by side, with a gap, or composite. */
#include "galeward/share.h"

static const char CLAUSE[] = "equal deflection, each part about its own axis";
static const char COMPOSITE[] = "transformed section, one neutral axis";

static const char NOTE_SUM[] =
    "side by side: stiffnesses add, nothing of the parts' distance counts; every part must bear "
    "at both ends and be held to the others so that they deflect alike";
static const char NOTE_COMPOSITE[] =
    "composite only if the joint carries the shear flow without slip; stress of a part is "
    "its axial stress and its own bending, added as if at one fiber";
static const char NOTE_GAP[] =
    "the first part carries the moment alone until the gap closes; contact is taken at midspan";
static const char NOTE_OPEN[] = "the gap does not close under this moment: the other parts carry nothing";

static void note(struct gw_share_result *out, const char *text)
{
    if (out->n_notes < GW_SHARE_NOTES) out->notes[out->n_notes++] = text;
}

static void clear(struct gw_share_result *out)
{
    *out = (struct gw_share_result){.equivalent_inertia = GW_ABSENT};
    out->contact_moment = out->neutral_axis = GW_ABSENT;
    for (int i = 0; i < GW_SHARE_PARTS; i++) {
        out->shares[i] = out->moments[i] = out->axial[i] = GW_ABSENT;
        out->stresses[i] = out->flow[i] = out->interlock[i] = GW_ABSENT;
    }
}

/* Checks ------------------------------------------------------------------------------------------------------------
 */

static enum gw_status positive(const char *key, double value, unsigned part, struct gw_engine *engine)
{
    if (!gw_given(value))
        return gw_refuse(engine, GW_MISSING, key, "part {}: {} is needed", gw_of_count((long)part), gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "part {}: {} must be positive", gw_of_count((long)part),
                     gw_of_text(key));
}

static enum gw_status check_part(const struct gw_share *in, unsigned i, struct gw_engine *engine)
{
    const struct gw_share_part *p = &in->parts[i];
    enum gw_status status = positive("elastic_modulus", p->elastic_modulus, i + 1, engine);
    if (!status) status = positive("inertia", p->inertia, i + 1, engine);
    if (!status) status = positive("section_modulus", p->modulus, i + 1, engine);
    if (!status && in->composite) status = positive("area", p->area, i + 1, engine);
    if (!status && in->composite && !isfinite(p->centroid))
        return gw_refuse(engine, GW_MISSING, "centroid", "part {}: a composite part wants its centroid",
                         gw_of_count((long)(i + 1)));
    return status;
}

static enum gw_status check_gap(const struct gw_share *in, struct gw_engine *engine)
{
    if (!gw_given(in->gap)) {
        if (!gw_given(in->span) && !gw_given(in->per_gap)) return GW_OK;
        return gw_refuse(engine, GW_MISSING, "gap", "span and moment_per_deflection go with a gap");
    }
    if (in->composite) return gw_refuse(engine, GW_BAD_VALUE, "gap", "a composite section has no gap");
    if (!(in->gap >= 0 && isfinite(in->gap)))
        return gw_refuse(engine, GW_BAD_VALUE, "gap", "the gap must not be negative");
    if (gw_given(in->span) == gw_given(in->per_gap))
        return gw_refuse(engine, gw_given(in->span) ? GW_BAD_VALUE : GW_MISSING, "span",
                         "a gap wants the span, or the first part's moment per deflection; one of them");
    if (gw_given(in->span) ? !(in->span > 0 && isfinite(in->span)) : !(in->per_gap > 0 && isfinite(in->per_gap)))
        return gw_refuse(engine, GW_BAD_VALUE, gw_given(in->span) ? "span" : "moment_per_deflection",
                         "must be positive");
    return GW_OK;
}

static enum gw_status check_loads(const struct gw_share *in, struct gw_engine *engine)
{
    unsigned given = 0;
    for (unsigned i = 0; i < in->n_parts; i++) given += gw_given(in->parts[i].load);
    if (given && given < in->n_parts)
        return gw_refuse(engine, GW_MISSING, "loads", "loads want one value a part; 0 where none reaches it");
    if (given && in->composite)
        return gw_refuse(engine, GW_BAD_VALUE, "loads",
                         "interlock forces are of parts side by side, not of a composite");
    if (given && gw_given(in->gap))
        return gw_refuse(engine, GW_BAD_VALUE, "loads", "interlock forces are found without a gap");
    return GW_OK;
}

static enum gw_status check(const struct gw_share *in, struct gw_engine *engine)
{
    if (!(in->moment >= 0 && isfinite(in->moment)))
        return gw_refuse(engine, gw_given(in->moment) ? GW_BAD_VALUE : GW_MISSING, "moment",
                         "the moment is needed, as a magnitude");
    if (in->n_parts < 1 || in->n_parts > GW_SHARE_PARTS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "parts", "one to {} parts; here are {}",
                         gw_of_count(GW_SHARE_PARTS), gw_of_count((long)in->n_parts));
    enum gw_status status = GW_OK;
    for (unsigned i = 0; i < in->n_parts && !status; i++) status = check_part(in, i, engine);
    if (!status) status = check_gap(in, engine);
    if (!status) status = check_loads(in, engine);
    if (!status && gw_given(in->shear) && !in->composite)
        return gw_refuse(engine, GW_BAD_VALUE, "shear", "shear is for the shear flow of a composite");
    if (!status && gw_given(in->shear) && !(in->shear >= 0 && isfinite(in->shear)))
        return gw_refuse(engine, GW_BAD_VALUE, "shear", "the shear must be a magnitude");
    return status;
}

/* Side by side ------------------------------------------------------------------------------------------------------
 */

/* The sum so far and one part more, in the first part's modulus. */
static double add_transformed(double sum, double modulus, double first, double inertia, struct gw_engine *engine)
{
    GW_STEP(engine, "I", GW_INERTIA, sum + modulus / first * inertia, CLAUSE, "sum+E/E1*I", {"sum|I", sum, GW_INERTIA},
            {"E", modulus, GW_STRESS}, {"E1", first, GW_STRESS}, {"I", inertia, GW_INERTIA});
    return sum + modulus / first * inertia;
}

static double transformed_sum(const struct gw_share *in, struct gw_engine *engine)
{
    double sum = 0;
    for (unsigned i = 0; i < in->n_parts; i++)
        sum = add_transformed(sum, in->parts[i].elastic_modulus, in->parts[0].elastic_modulus, in->parts[i].inertia,
                              engine);
    return sum;
}

/* Of the moment, without a gap. */
static double share_of(double modulus, double first, double inertia, double all, struct gw_engine *engine)
{
    const double share = modulus / first * inertia / all;
    GW_STEP(engine, "share", GW_RATIO, share, CLAUSE, "E/E1*I/Isum", {"E", modulus, GW_STRESS},
            {"E1", first, GW_STRESS}, {"I", inertia, GW_INERTIA}, {"Isum|I", all, GW_INERTIA});
    return share;
}

/* M at which the first part has deflected by the gap: simple span, uniform load, d = 5 M L^2/(48 E I). */
static double find_contact(const struct gw_share *in, struct gw_engine *engine)
{
    const struct gw_share_part *p = &in->parts[0];
    if (gw_given(in->per_gap)) {
        GW_STEP(engine, "M0", GW_BENDING, in->per_gap * in->gap, CLAUSE, "k*gap", {"k", in->per_gap, GW_FORCE},
                {"gap", in->gap, GW_THICKNESS});
        return in->per_gap * in->gap;
    }
    const double moment = 48 * p->elastic_modulus * p->inertia * in->gap / (5 * in->span * in->span);
    GW_STEP(engine, "M0", GW_BENDING, moment, "simple span, uniform load", "48*E*I*gap/(5*L^2)",
            {"E", p->elastic_modulus, GW_STRESS}, {"I", p->inertia, GW_INERTIA}, {"gap", in->gap, GW_THICKNESS},
            {"L", in->span, GW_THICKNESS});
    return moment;
}

static void share_part(struct gw_share_result *out, const struct gw_share *in, unsigned i, double alone,
                       struct gw_engine *engine)
{
    const struct gw_share_part *p = &in->parts[i];
    const double stiffness =
        share_of(p->elastic_modulus, in->parts[0].elastic_modulus, p->inertia, out->equivalent_inertia, engine);
    const double first = i ? 0 : alone;
    out->moments[i] = first + stiffness * (in->moment - alone);
    out->shares[i] = in->moment > 0 ? out->moments[i] / in->moment : stiffness;
    out->stresses[i] = out->moments[i] / p->modulus;
    GW_STEP(engine, "M_part", GW_BENDING, out->moments[i], CLAUSE, "Ma+share*(M-M0)", {"Ma", first, GW_BENDING},
            {"share", stiffness, GW_RATIO}, {"M", in->moment, GW_BENDING}, {"M0", alone, GW_BENDING});
    GW_STEP(engine, "f", GW_STRESS, out->stresses[i], CLAUSE, "M_part/S", {"M_part", out->moments[i], GW_BENDING},
            {"S", p->modulus, GW_SECTION_MODULUS});
}

static void find_interlock(struct gw_share_result *out, const struct gw_share *in, struct gw_engine *engine)
{
    double total = 0;
    if (!gw_given(in->parts[0].load)) return;
    for (unsigned i = 0; i < in->n_parts; i++) total += in->parts[i].load;
    for (unsigned i = 0; i < in->n_parts; i++) {
        const struct gw_share_part *p = &in->parts[i];
        const double share = p->elastic_modulus / in->parts[0].elastic_modulus * p->inertia / out->equivalent_inertia;
        out->interlock[i] = p->load - share * total;
        GW_STEP(engine, "q", GW_SHEAR_FLOW, out->interlock[i], "equal deflection along the span", "w-share*W",
                {"w", p->load, GW_SHEAR_FLOW}, {"share", share, GW_RATIO}, {"W", total, GW_SHEAR_FLOW});
    }
}

static void side_by_side(struct gw_share_result *out, const struct gw_share *in, struct gw_engine *engine)
{
    double alone = 0;
    out->equivalent_inertia = transformed_sum(in, engine);
    if (in->n_parts > 1) note(out, NOTE_SUM);
    if (gw_given(in->gap)) {
        out->contact_moment = find_contact(in, engine);
        alone = fmin(in->moment, out->contact_moment);
        note(out, in->moment > out->contact_moment ? NOTE_GAP : NOTE_OPEN);
    }
    for (unsigned i = 0; i < in->n_parts; i++) share_part(out, in, i, alone, engine);
    find_interlock(out, in, engine);
}

static enum gw_status check_strength(const struct gw_share_strength *part, unsigned i, struct gw_engine *engine)
{
    enum gw_status status = positive("elastic_modulus", part->elastic_modulus, i + 1, engine);
    return status == GW_OK ? positive("inertia", part->inertia, i + 1, engine) : status;
}

enum gw_status gw_share_allowable(struct gw_share_limit *out, const struct gw_share_strength *parts, unsigned n,
                                  struct gw_engine *engine)
{
    double sum = 0;
    bool known = true;
    for (unsigned i = 0; i < n; i++) {
        enum gw_status status = check_strength(&parts[i], i, engine);
        if (status != GW_OK) return status;
        sum = add_transformed(sum, parts[i].elastic_modulus, parts[0].elastic_modulus, parts[i].inertia, engine);
    }
    *out = (struct gw_share_limit){.moment = INFINITY, .equivalent_inertia = sum};
    for (unsigned i = 0; i < n; i++) {
        const double share =
            share_of(parts[i].elastic_modulus, parts[0].elastic_modulus, parts[i].inertia, sum, engine);
        const double whole = parts[i].allowable / share;
        known = known && gw_given(whole);
        if (gw_given(whole))
            GW_STEP(engine, "M_a", GW_BENDING, whole, "used up first", "M_part/share",
                    {"M_part|M", parts[i].allowable, GW_BENDING}, {"share", share, GW_RATIO});
        if (!(whole < out->moment)) continue;
        out->moment = whole;
        out->governs = i;
    }
    if (!known) out->moment = GW_ABSENT;
    return GW_OK;
}

/* Composite ---------------------------------------------------------------------------------------------------------
 */

static double modular(const struct gw_share *in, unsigned i)
{
    return in->parts[i].elastic_modulus / in->parts[0].elastic_modulus;
}

static void find_axis(struct gw_share_result *out, const struct gw_share *in, struct gw_engine *engine)
{
    double area = 0, first = 0, sum = 0;
    const double origin = in->parts[0].centroid;
    for (unsigned i = 0; i < in->n_parts; i++) {
        area += modular(in, i) * in->parts[i].area;
        first += modular(in, i) * in->parts[i].area * (in->parts[i].centroid - origin);
    }
    out->neutral_axis = origin + first / area;
    GW_STEP(engine, "ybar", GW_THICKNESS, out->neutral_axis, COMPOSITE, "y1+Q/A", {"y1", origin, GW_THICKNESS},
            {"Q", first, GW_SECTION_MODULUS}, {"A", area, GW_SECTION_AREA});
    for (unsigned i = 0; i < in->n_parts; i++) {
        const struct gw_share_part *p = &in->parts[i];
        const double arm = p->centroid - out->neutral_axis, n = modular(in, i);
        GW_STEP(engine, "I", GW_INERTIA, sum + n * (p->inertia + p->area * arm * arm), COMPOSITE,
                "sum+n*(I+A*(y-ybar)^2)", {"sum|I", sum, GW_INERTIA}, {"n", n, GW_RATIO}, {"I", p->inertia, GW_INERTIA},
                {"A", p->area, GW_SECTION_AREA}, {"y", p->centroid, GW_THICKNESS},
                {"ybar", out->neutral_axis, GW_THICKNESS});
        sum += n * (p->inertia + p->area * arm * arm);
    }
    out->equivalent_inertia = sum;
}

static void composite_part(struct gw_share_result *out, const struct gw_share *in, unsigned i, struct gw_engine *engine)
{
    const struct gw_share_part *p = &in->parts[i];
    const double n = modular(in, i), arm = p->centroid - out->neutral_axis, inertia = out->equivalent_inertia;
    out->shares[i] = n * (p->inertia + p->area * arm * arm) / inertia;
    out->moments[i] = n * p->inertia / inertia * in->moment;
    out->axial[i] = -n * p->area * arm / inertia * in->moment;
    out->stresses[i] = fabs(out->axial[i]) / p->area + out->moments[i] / p->modulus;
    GW_STEP(engine, "M_part", GW_BENDING, out->moments[i], COMPOSITE, "n*I/Isum*M", {"n", n, GW_RATIO},
            {"I", p->inertia, GW_INERTIA}, {"Isum|I", inertia, GW_INERTIA}, {"M", in->moment, GW_BENDING});
    GW_STEP(engine, "N", GW_FORCE, out->axial[i], COMPOSITE, "-n*A*e/Isum*M", {"n", n, GW_RATIO},
            {"A", p->area, GW_SECTION_AREA}, {"e", arm, GW_THICKNESS}, {"Isum|I", inertia, GW_INERTIA},
            {"M", in->moment, GW_BENDING});
    GW_STEP(engine, "f", GW_STRESS, out->stresses[i], COMPOSITE, "abs(N)/A+M_part/S", {"N", out->axial[i], GW_FORCE},
            {"A", p->area, GW_SECTION_AREA}, {"M_part", out->moments[i], GW_BENDING},
            {"S", p->modulus, GW_SECTION_MODULUS});
    if (!gw_given(in->shear)) return;
    out->flow[i] = in->shear * n * p->area * fabs(arm) / inertia;
    GW_STEP(engine, "q", GW_SHEAR_FLOW, out->flow[i], "V Q/I", "V*n*A*abs(e)/Isum", {"V", in->shear, GW_FORCE},
            {"n", n, GW_RATIO}, {"A", p->area, GW_SECTION_AREA}, {"e", arm, GW_THICKNESS},
            {"Isum|I", inertia, GW_INERTIA});
}

enum gw_status gw_share_moment(struct gw_share_result *out, const struct gw_share *in, struct gw_engine *engine)
{
    clear(out);
    enum gw_status status = check(in, engine);
    if (status) return status;
    if (!in->composite) {
        side_by_side(out, in, engine);
        return GW_OK;
    }
    note(out, NOTE_COMPOSITE);
    find_axis(out, in, engine);
    for (unsigned i = 0; i < in->n_parts; i++) composite_part(out, in, i, engine);
    return GW_OK;
}
