/* Lateral-torsional buckling of aluminum members. */
#include "bending_internal.h"

#include "tables_data.h"

static const double PI = 3.14159265358979323846;

/* Cb ----------------------------------------------------------------------------------------------------------------
 */

static enum gw_status check_moments(const double *m, struct gw_engine *engine)
{
    for (int i = 0; i < 4; i++)
        if (!(m[i] >= 0 && m[i] <= m[0]) || !(m[0] > 0))
            return gw_refuse(engine, GW_BAD_VALUE, "quarter_moments",
                             "quarter_moments are four magnitudes: the greatest, then those at 1/4, 1/2 and 3/4");
    return GW_OK;
}

static double gradient(const double *m, enum gw_adm edition, struct gw_engine *engine)
{
    const bool older = edition == GW_ADM_2015;
    const int row = older ? GW_ROW_ALUMINUM_GRADIENT_ADM_2015 : GW_ROW_ALUMINUM_GRADIENT_ADM_2020;
    const struct gw_aluminum_gradient *g = GW_USE(engine, &engine->tables->aluminum_gradient[row]);
    const double sum = g->max * m[0] + g->a * m[1] + g->b * m[2] + g->c * m[3];
    const double squares = g->max * m[0] * m[0] + g->a * m[1] * m[1] + g->b * m[2] * m[2] + g->c * m[3] * m[3];
    const double cb = g->numerator * m[0] / (older ? sum : sqrt(squares));
    GW_STEP(engine, "Cb", GW_RATIO, cb, g->row.source,
            older ? "n*Mmax/(m*Mmax+a*MA+b*MB+c*MC)" : "n*Mmax/sqrt(m*Mmax^2+a*MA^2+b*MB^2+c*MC^2)",
            {"n", g->numerator, GW_RATIO}, {"Mmax", m[0], GW_BENDING}, {"m", g->max, GW_RATIO}, {"a", g->a, GW_RATIO},
            {"MA", m[1], GW_BENDING}, {"b", g->b, GW_RATIO}, {"MB", m[2], GW_BENDING}, {"c", g->c, GW_RATIO},
            {"MC", m[3], GW_BENDING});
    return cb;
}

/* A member with nearly all of Iy in one flange takes no advantage of the variation of its moment. */
static bool lopsided(const struct gw_bending *in, struct gw_engine *engine)
{
    if (!gw_given(in->compression_flange_share)) return false;
    const struct gw_aluminum_flange_share *usual = GW_USE(engine, &engine->tables->aluminum_flange_share[0]);
    return in->compression_flange_share <= usual->least || in->compression_flange_share >= usual->greatest;
}

static enum gw_status find_cb(struct gw_bending_result *out, const struct gw_bending *in, struct gw_engine *engine)
{
    const double share = in->compression_flange_share;
    const bool moments = gw_given(in->quarter_moments[0]);
    if (gw_given(share) && !(share >= 0 && share <= 1))
        return gw_refuse(engine, GW_BAD_VALUE, "compression_flange_share", "a share lies between 0 and 1");
    if (moments && gw_given(in->cb))
        return gw_refuse(engine, GW_BAD_VALUE, "cb", "give cb or quarter_moments, not both");
    if (gw_given(in->cb) && !(in->cb >= 1 && isfinite(in->cb)))
        return gw_refuse(engine, GW_BAD_VALUE, "cb", "cb must be 1 or more");
    if (moments) {
        enum gw_status status = check_moments(in->quarter_moments, engine);
        if (status) return status;
    }
    out->cb = 1;
    if (lopsided(in, engine)) {
        gw_bending_note(out, "Cb is 1: nearly all of Iy lies in one flange");
        gw_trace_note(engine, "Cb", "ADM F.4.1", "1: nearly all of Iy lies in one flange");
        return GW_OK;
    }
    if (moments) out->cb = gradient(in->quarter_moments, in->edition, engine);
    else if (gw_given(in->cb)) out->cb = in->cb;
    return GW_OK;
}

/* Slenderness -------------------------------------------------------------------------------------------------------
 */

static double closed_slenderness(const struct gw_bending *in, double cb, struct gw_engine *engine)
{
    const double k = GW_USE(engine, &engine->tables->aluminum_lateral[0])->factor;
    const double lambda =
        k * sqrt(in->unbraced_length * in->modulus_compression / (cb * sqrt(in->inertia_y * in->torsion)));
    GW_STEP(engine, "lambda", GW_RATIO, lambda, "ADM F.4.2.3, closed shape", "k*sqrt(Lb*Sc/(Cb*sqrt(Iy*J)))",
            {"k", k, GW_RATIO}, {"Lb", in->unbraced_length, GW_THICKNESS},
            {"Sc|S", in->modulus_compression, GW_SECTION_MODULUS}, {"Cb", cb, GW_RATIO},
            {"Iy|I", in->inertia_y, GW_INERTIA}, {"J", in->torsion, GW_INERTIA});
    return lambda;
}

/* Elastic moment of a shape whose shear center lies on its axis of bending, under a uniform moment. */
static double open_moment(const struct gw_bending *in, const struct gw_alloy *alloy, struct gw_engine *engine)
{
    const double e = alloy->elastic_modulus, g = alloy->shear_modulus, l = in->unbraced_length;
    const double moment =
        PI / l * sqrt(e * in->inertia_y * g * in->torsion + pow(PI * e / l, 2) * in->inertia_y * in->warping);
    GW_STEP(engine, "Me", GW_BENDING, moment, "elastic lateral-torsional buckling",
            "pi/Lb*sqrt(E*Iy*G*J+(pi*E/Lb)^2*Iy*Cw)", {"pi", PI, GW_RATIO}, {"Lb", l, GW_THICKNESS},
            {"E", e, GW_STRESS}, {"Iy|I", in->inertia_y, GW_INERTIA}, {"G", g, GW_STRESS},
            {"J", in->torsion, GW_INERTIA}, {"Cw", in->warping, GW_WARPING});
    return moment;
}

static double slenderness_of(const struct gw_bending *in, double moment, double cb, double e, struct gw_engine *engine)
{
    const double lambda = PI * sqrt(e * in->modulus_compression / (cb * moment));
    GW_STEP(engine, "lambda", GW_RATIO, lambda, "ADM F.4.2.5, any shape", "pi*sqrt(E*Sc/(Cb*Me))", {"pi", PI, GW_RATIO},
            {"E", e, GW_STRESS}, {"Sc|S", in->modulus_compression, GW_SECTION_MODULUS}, {"Cb", cb, GW_RATIO},
            {"Me", moment, GW_BENDING});
    return lambda;
}

static const char UNKNOWN_SHAPE[] =
    "lateral-torsional buckling is not known: it wants the shape (closed, or open and symmetric), or "
    "the elastic buckling moment";
static const char UNKNOWN_CLOSED[] =
    "lateral-torsional buckling is not known: a closed shape wants inertia_y and the torsion constant (of thick "
    "walls the formulas know none: give it)";
static const char UNKNOWN_OPEN[] =
    "lateral-torsional buckling is not known: an open shape wants inertia_y, the torsion constant and "
    "the warping constant";

static bool known(double value) { return gw_given(value) && value > 0; }

/* Absent where something is missing; says what. */
static double find_slenderness(struct gw_bending_result *out, const struct gw_bending *in, const struct gw_alloy *alloy,
                               struct gw_engine *engine)
{
    const double e = alloy->elastic_modulus;
    const bool twists = known(in->inertia_y) && known(in->torsion);
    if (known(in->elastic_moment)) return slenderness_of(in, in->elastic_moment, out->cb, e, engine);
    if (in->profile == GW_PROFILE_UNSET) gw_bending_note(out, UNKNOWN_SHAPE);
    else if (in->profile == GW_PROFILE_CLOSED && twists) return closed_slenderness(in, out->cb, engine);
    else if (in->profile == GW_PROFILE_CLOSED) gw_bending_note(out, UNKNOWN_CLOSED);
    else if (twists && gw_given(in->warping))
        return slenderness_of(in, open_moment(in, alloy, engine), out->cb, e, engine);
    else gw_bending_note(out, UNKNOWN_OPEN);
    return GW_ABSENT;
}

/* Strength ----------------------------------------------------------------------------------------------------------
 */

static double strength(const struct gw_bending_result *out, const struct gw_bending *in, const struct gw_alloy *alloy,
                       struct gw_engine *engine)
{
    const double lambda = out->slenderness, cc = out->slenderness_limit, sc = in->modulus_compression,
                 e = alloy->elastic_modulus;
    if (lambda < cc) {
        const double mn = out->nominal_yielding * (1 - lambda / cc) + PI * PI * e * lambda * sc / pow(cc, 3);
        GW_STEP(engine, "Mnmb", GW_BENDING, mn, "ADM F.4", "Mny*(1-lambda/Cc)+pi^2*E*lambda*Sc/Cc^3",
                {"Mny", out->nominal_yielding, GW_BENDING}, {"lambda", lambda, GW_RATIO}, {"Cc", cc, GW_RATIO},
                {"pi", PI, GW_RATIO}, {"E", e, GW_STRESS}, {"Sc|S", sc, GW_SECTION_MODULUS});
        return mn;
    }
    const double mn = PI * PI * e * sc / (lambda * lambda);
    GW_STEP(engine, "Mnmb", GW_BENDING, mn, "ADM F.4", "pi^2*E*Sc/lambda^2", {"pi", PI, GW_RATIO}, {"E", e, GW_STRESS},
            {"Sc|S", sc, GW_SECTION_MODULUS}, {"lambda", lambda, GW_RATIO});
    return mn;
}

static enum gw_status check_given(const struct gw_bending *in, struct gw_engine *engine)
{
    enum gw_status status = gw_bending_positive("inertia_y", in->inertia_y, engine);
    if (!status) status = gw_bending_positive("torsion_constant", in->torsion, engine);
    if (!status) status = gw_bending_positive("elastic_moment", in->elastic_moment, engine);
    if (!status && gw_given(in->warping) && !(in->warping >= 0 && isfinite(in->warping)))
        return gw_refuse(engine, GW_BAD_VALUE, "warping_constant", "the warping constant must not be negative");
    return status;
}

enum gw_status gw_bending_lateral(struct gw_bending_result *out, const struct gw_bending *in,
                                  const struct gw_alloy *alloy, struct gw_engine *engine)
{
    struct gw_buckling_constants member;
    enum gw_status status = check_given(in, engine);
    if (!status) status = find_cb(out, in, engine);
    if (status || !gw_given(out->nominal_yielding)) return status; /* without it there is no line to start from */
    gw_alloy_buckling(&member, alloy, GW_BUCKLING_MEMBER, engine);
    out->slenderness_limit = member.c;
    if (in->unbraced_length > 0) {
        out->slenderness = find_slenderness(out, in, alloy, engine);
        if (gw_given(out->slenderness)) out->nominal_lateral = strength(out, in, alloy, engine);
        return GW_OK;
    }
    out->slenderness = 0;
    out->nominal_lateral = out->nominal_yielding;
    gw_trace_note(engine, "Mnmb", "ADM F.4", "braced throughout: Mny");
    return GW_OK;
}
