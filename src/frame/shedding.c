/* Triangles and trapezoids of lites on simply held horizontals, in closed form. */
#include "galeward/shedding.h"

#include "galeward/member.h"

static const char SHED[] = "45-degree shedding of the lites above and below",
                  SPREAD[] = "lite on fewer than four edges";

/* Heights carried evenly by a lite that is not held on four edges; 0: it sheds at 45 degrees. */
static double carried_evenly(const struct gw_shed_lite *lite)
{
    if (lite->held == GW_HELD_OTHERWISE) return lite->height;
    return lite->held == GW_HELD_HEAD_AND_SILL ? lite->height / 2 : 0;
}

/* All of `carried` of a lite's height, evenly, under 1 Pa. */
static struct gw_simple_span spread(double carried, double span)
{
    struct gw_simple_span out;
    gw_simple_span(&out, carried, span, 1);
    return out;
}

/* One lite under 1 Pa. Moment of a trapezoid of height w with ramps of length a: w L^2/24 (3 - 4 a^2/L^2), of which a
 * triangle is the case a = L/2; deflection w (5 L^2 - 4 a^2)^2/(1920 E I). */
static double moment_by(const struct gw_shed_lite *lite, double l)
{
    const double carried = carried_evenly(lite), a = gw_shed_ramp(l, lite->height);
    return carried > 0 ? spread(carried, l).moment : a * l * l / 24 * (3 - 4 * a * a / (l * l));
}

static double reaction_by(const struct gw_shed_lite *lite, double l)
{
    const double carried = carried_evenly(lite), a = gw_shed_ramp(l, lite->height);
    return carried > 0 ? spread(carried, l).shear : gw_shed_end(a, l, a);
}

static double deflection_by(const struct gw_shed_lite *lite, double l)
{
    const double carried = carried_evenly(lite), a = gw_shed_ramp(l, lite->height), square = 5 * l * l - 4 * a * a;
    return carried > 0 ? spread(carried, l).deflection : a * square * square / 1920;
}

static double reach_by(const char *symbol, const struct gw_shed_lite *lite, double span, struct gw_engine *engine)
{
    const double h = lite->height, even = carried_evenly(lite), reach = even > 0 ? even : gw_shed_ramp(span, h);
    if (!(h > 0)) return 0;
    if (!(even > 0))
        GW_STEP(engine, symbol, GW_THICKNESS, reach, SHED, "min(L,h)/2", {"L", span, GW_THICKNESS},
                {"h", h, GW_THICKNESS});
    else GW_STEP(engine, symbol, GW_THICKNESS, reach, SPREAD, "c*h", {"c", even / h, GW_RATIO}, {"h", h, GW_THICKNESS});
    return reach;
}

void gw_shed_reach(struct gw_shed_reach *out, const struct gw_shed_case *in, struct gw_engine *engine)
{
    out->above = reach_by("b_above", &in->above, in->span, engine);
    out->below = reach_by("b_below", &in->below, in->span, engine);
}

/* What the three answers differ in. */
struct answer {
    const char *above, *below, *sum;    /* symbols */
    const char *of_above, *of_below;    /* as arguments of the sum */
    const char *of_ramp, *of_carried;   /* formulas */
    enum gw_dim dim, of_stress, length; /* its own; of p and E; of a, b and L */
    double (*of)(const struct gw_shed_lite *lite, double span);
};
/* E, Pa, and I, m4: 1 and 1 where the answer does not hang on them. */
struct stiff {
    double e, i;
};
static const struct stiff NONE = {1, 1};

static double side(const struct answer *answer, const struct gw_shed_case *in, const struct gw_shed_lite *lite,
                   const struct stiff *s, struct gw_engine *engine)
{
    if (!(lite->height > 0)) return 0;
    const double value = answer->of(lite, in->span), carried = carried_evenly(lite);
    const bool even = carried > 0;
    const struct gw_arg args[] = {
        {"p", in->pressure, answer->of_stress},
        {even ? "b" : "a", even ? carried : gw_shed_ramp(in->span, lite->height), answer->length},
        {"L", in->span, answer->length},
        {"E", s->e, answer->of_stress},
        {"I|I", s->i, GW_BEAM_INERTIA}};
    gw_trace_step(engine, lite == &in->above ? answer->above : answer->below, answer->dim,
                  in->pressure * value / (s->e * s->i), even ? SPREAD : SHED,
                  even ? answer->of_carried : answer->of_ramp, args, s == &NONE ? 3 : 5);
    return value;
}

static double both(const struct answer *answer, const struct gw_shed_case *in, const struct stiff *s,
                   struct gw_engine *engine)
{
    const double above = side(answer, in, &in->above, s, engine), below = side(answer, in, &in->below, s, engine);
    const double unit = in->pressure / (s->e * s->i), sum = unit * (above + below);
    if (in->above.height > 0 && in->below.height > 0)
        GW_STEP(engine, answer->sum, answer->dim, sum, "both lites at once", "a+b",
                {answer->of_above, unit * above, answer->dim}, {answer->of_below, unit * below, answer->dim});
    return sum;
}

double gw_shed_moment(const struct gw_shed_case *in, struct gw_engine *engine)
{
    static const struct answer answer = {.above = "M_above",
                                         .below = "M_below",
                                         .sum = "M_w",
                                         .of_above = "a|M_above",
                                         .of_below = "b|M_below",
                                         .of_ramp = "p*a*L^2/24*(3-4*a^2/L^2)",
                                         .of_carried = "p*b*L^2/8",
                                         .dim = GW_BENDING,
                                         .of_stress = GW_STRESS,
                                         .length = GW_THICKNESS,
                                         .of = moment_by};
    return both(&answer, in, &NONE, engine);
}

double gw_shed_reaction(const struct gw_shed_case *in, struct gw_engine *engine)
{
    static const struct answer answer = {.above = "R_above",
                                         .below = "R_below",
                                         .sum = "R_w",
                                         .of_above = "a|R_above",
                                         .of_below = "b|R_below",
                                         .of_ramp = "p*a*(L-a)/2",
                                         .of_carried = "p*b*L/2",
                                         .dim = GW_FORCE,
                                         .of_stress = GW_STRESS,
                                         .length = GW_THICKNESS,
                                         .of = reaction_by};
    return both(&answer, in, &NONE, engine);
}

double gw_shed_deflection(const struct gw_shed_case *in, double elastic_modulus, double inertia,
                          struct gw_engine *engine)
{
    static const struct answer answer = {.above = "d_above",
                                         .below = "d_below",
                                         .sum = "d_w",
                                         .of_above = "a|d_above",
                                         .of_below = "b|d_below",
                                         .of_ramp = "p*a*(5*L^2-4*a^2)^2/(1920*E*I)",
                                         .of_carried = "5*p*b*L^4/(384*E*I)",
                                         .dim = GW_BEAM_LENGTH,
                                         .of_stress = GW_BEAM_STRESS,
                                         .length = GW_BEAM_LENGTH,
                                         .of = deflection_by};
    const struct stiff s = {elastic_modulus, inertia};
    return both(&answer, in, &s, engine);
}
