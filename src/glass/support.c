/* Lites held on three edges, two or one: formulas, their range, limit pressures. */
#include "galeward/support.h"

#include "base/tolerance.h"

#include "tables_data.h"

/* What is written of each number of edges. */
struct form {
    const char *clause, *length, *deflection, *stress;
    int row; /* of support_limits */
};
static const struct form ONE = {"cantilever, one edge clamped", "L", "1.5*q*L^4/(E*t^3)", "3*q*L^2/t^2",
                                GW_ROW_SUPPORT_LIMITS_ONE_EDGE};
static const struct form TWO = {"beam, two opposite edges", "L", "5*q*L^4/(32*E*t^3)", "0.75*q*L^2/t^2",
                                GW_ROW_SUPPORT_LIMITS_TWO_EDGES};
static const struct form THREE = {"linear plate, three edges simply supported", "b", "alpha*q*b^4/(E*t^3)",
                                  "beta*q*b^2/t^2", GW_ROW_SUPPORT_LIMITS_THREE_EDGES};

static const char NOTE_THREE[] = "linear theory: as the deflection grows the free edge is stressed more than it says; "
                                 "stress_edge_bound says how much at most";
static const char NOTE_TWO[] = "linear beam, slopes small; plate action stresses the free edges of the strip more than "
                               "a beam: stress_edge_bound says how much at most";
static const char NOTE_TWO_BARE[] = "linear beam, slopes small; plate action stresses the free edges more than a beam, "
                                    "by how much is not known for this Poisson's ratio";
static const char NOTE_THREE_BARE[] = "linear theory: as the deflection grows the free edge is stressed more than it "
                                      "says, by how much is not known for this Poisson's ratio";
static const char NOTE_ONE[] = "linear cantilever, slopes small; the held edge must be clamped, not only captured, and "
                               "the local stress at the clamp is not part of it";
static const char NOTE_METHOD[] = "the limit pressure is the end of the linear method; the allowable stress is reached "
                                  "beyond it";

/* A case with its defaults, and the formula that goes with its edges. */
struct shape {
    struct gw_support_case in;
    const struct gw_support_limits *limits;
    const struct form *form;
    double deflection_limit; /* m */
    double largest;          /* stress anywhere over q l^2/t^2 */
};

static enum gw_status positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

static enum gw_status positive_if_given(const char *key, double value, struct gw_engine *engine)
{
    return gw_given(value) ? positive(key, value, engine) : GW_OK;
}

static enum gw_status check(const struct gw_support_case *in, struct gw_engine *engine)
{
    if (in->edges == 4)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "edges", "a lite on four edges is a plate: calc plate, calc lite");
    if (in->edges < 1 || in->edges > 3) return gw_refuse(engine, GW_BAD_VALUE, "edges", "edges held must be 1, 2 or 3");
    enum gw_status status = positive("span", in->span, engine);
    if (!status) status = (in->edges == 3 ? positive : positive_if_given)("breadth", in->breadth, engine);
    if (!status) status = positive("thickness", in->thickness, engine);
    if (!status) status = positive("stress_thickness", in->stress_thickness, engine);
    if (!status) status = positive("elastic_modulus", in->elastic_modulus, engine);
    if (!status) status = positive_if_given("edge_allowable", in->edge_allowable, engine);
    if (!status) status = positive_if_given("surface_allowable", in->surface_allowable, engine);
    if (status) return status;
    if (!(in->poissons_ratio >= 0 && in->poissons_ratio < 0.5))
        return gw_refuse(engine, GW_BAD_VALUE, "poissons_ratio", "poissons_ratio must be from 0 up to 0.5");
    if (gw_given(in->edge_allowable) != gw_given(in->surface_allowable))
        return gw_refuse(engine, GW_MISSING, "edge_allowable", "give both allowable stresses or neither");
    if (!gw_given(in->pressure) && !gw_given(in->edge_allowable))
        return gw_refuse(engine, GW_MISSING, "pressure", "pressure is needed, or the allowable stresses");
    if (gw_given(in->pressure) && !(in->pressure >= 0 && isfinite(in->pressure)))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "pressure must be a magnitude");
    return GW_OK;
}

static void complete(struct gw_support_case *in, struct gw_engine *engine)
{
    const struct gw_glass_material *glass = &engine->tables->glass_material[0];
    if (!gw_given(in->stress_thickness)) in->stress_thickness = in->thickness;
    if (gw_given(in->elastic_modulus) && gw_given(in->poissons_ratio)) return;
    gw_used_add(&engine->used, &glass->row);
    if (!gw_given(in->elastic_modulus)) in->elastic_modulus = glass->elastic_modulus_pa;
    if (!gw_given(in->poissons_ratio)) in->poissons_ratio = glass->poissons_ratio;
}

static void clear(struct gw_support_result *out)
{
    *out = (struct gw_support_result){.governing = NULL};
    out->alpha = out->beta = out->length = GW_ABSENT;
    out->deflection = out->deflection_cylindrical = out->pullout = GW_ABSENT;
    out->stress_edge = out->stress_edge_bound = out->stress_surface = GW_ABSENT;
    out->surface_place[0] = out->surface_place[1] = GW_ABSENT;
    out->limit_pressure = out->limit_pressure_bound = out->utilization = GW_ABSENT;
}

static void note(struct gw_support_result *out, const char *text)
{
    if (out->n_notes < GW_SUPPORT_NOTES) out->notes[out->n_notes++] = text;
}

static bool bounded(const struct shape *s)
{
    return gw_given(s->limits->edge_excess) && s->in.poissons_ratio <= s->limits->poissons_ratio;
}

static enum gw_status open_three(struct gw_support_result *out, struct shape *s, struct gw_engine *engine)
{
    const struct gw_support_aspect *least = GW_USE(engine, &engine->tables->support_aspect[0]);
    const double ratio = s->in.span / s->in.breadth;
    struct gw_three_edge plate;
    if (ratio < least->least * (1 - GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "span",
                         "three edges: the sides beside the free edge must be at least {} % of its length",
                         gw_of_number(100 * least->least, 4));
    gw_three_edge(&plate, ratio, s->in.poissons_ratio);
    out->alpha = plate.alpha;
    out->beta = plate.beta;
    out->length = s->in.breadth;
    out->surface_place[0] = plate.x * s->in.breadth;
    out->surface_place[1] = plate.y * s->in.breadth;
    s->largest = plate.largest;
    GW_STEP(engine, "r", GW_RATIO, ratio, THREE.clause, "a/b", {"a", s->in.span, GW_THICKNESS},
            {"b", s->in.breadth, GW_THICKNESS});
    GW_TRACE_SAY(engine, "alpha, beta", THREE.clause,
                 "{} and {}: deflection over q b^4/(E t^3) and stress over q b^2/t^2 at the middle of the free edge b, "
                 "from the sine series of the plate",
                 gw_of_number(out->alpha, 6), gw_of_number(out->beta, 6));
    note(out, bounded(s) ? NOTE_THREE : NOTE_THREE_BARE);
    return GW_OK;
}

/* Simply supported beam: M = q L^2/8, w = 5 q L^4/(384 E I), I = t^3/12. Cantilever: q L^2/2, q L^4/(8 E I). */
static void open_beam(struct gw_support_result *out, struct shape *s)
{
    const bool two = s->in.edges == 2;
    out->alpha = two ? 5.0 / 32 : 1.5;
    out->beta = s->largest = two ? 0.75 : 3;
    out->length = s->in.span;
    note(out, !two ? NOTE_ONE : bounded(s) ? NOTE_TWO : NOTE_TWO_BARE);
}

static enum gw_status open_shape(struct gw_support_result *out, struct shape *s, const struct gw_support_case *in,
                                 struct gw_engine *engine)
{
    *s = (struct shape){.in = *in};
    clear(out);
    complete(&s->in, engine);
    enum gw_status status = check(&s->in, engine);
    if (status) return status;
    s->form = in->edges == 3 ? &THREE : in->edges == 2 ? &TWO : &ONE;
    s->limits = GW_USE(engine, &engine->tables->support_limits[s->form->row]);
    s->deflection_limit =
        gw_given(s->limits->thicknesses) ? s->limits->thicknesses * s->in.thickness : s->limits->spans * s->in.span;
    if (in->edges == 3) return open_three(out, s, engine);
    open_beam(out, s);
    return GW_OK;
}

double gw_edge_pullout(double deflection, double span) { return 4.0 / 3 * deflection * deflection / span; }

static void step_deflection(const struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    GW_STEP(engine, "w", GW_THICKNESS, out->deflection, s->form->clause, s->form->deflection,
            {"q", s->in.pressure, GW_STRESS}, {s->form->length, out->length, GW_THICKNESS},
            {"E", s->in.elastic_modulus, GW_STRESS}, {"t", s->in.thickness, GW_THICKNESS},
            {"alpha", out->alpha, GW_RATIO});
}

static void step_stress(const struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    GW_STEP(engine, "sigma_edge", GW_STRESS, out->stress_edge, s->form->clause, s->form->stress,
            {"q", s->in.pressure, GW_STRESS}, {s->form->length, out->length, GW_THICKNESS},
            {"t", s->in.stress_thickness, GW_THICKNESS}, {"beta", out->beta, GW_RATIO});
}

static enum gw_status check_deflection(const struct gw_support_result *out, const struct shape *s,
                                       struct gw_engine *engine)
{
    if (out->deflection <= s->deflection_limit * (1 + GW_HAIR)) return GW_OK;
    if (s->in.edges == 3)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "pressure",
                         "three edges: the linear plate holds up to a deflection of {} thicknesses; this is more",
                         gw_of_number(s->limits->thicknesses, 4));
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "pressure",
                     "the linear beam holds up to a deflection of {} % of the span; this is more",
                     gw_of_number(100 * s->limits->spans, 4));
}

static void bound_edge(struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    if (!bounded(s)) return;
    out->stress_edge_bound = out->stress_edge * s->limits->edge_excess;
    GW_STEP(engine, "sigma_bound", GW_STRESS, out->stress_edge_bound, s->limits->row.source, "c*sigma_edge",
            {"c", s->limits->edge_excess, GW_RATIO}, {"sigma_edge", out->stress_edge, GW_STRESS});
}

/* The middle of a wide strip cannot bend crosswise. */
static void bend_cylinder(struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    const double nu = s->in.poissons_ratio;
    if (s->in.edges != 2 || !gw_given(s->in.breadth)) return;
    if (s->in.breadth < s->limits->wide * s->in.span * (1 - GW_HAIR)) return;
    out->deflection_cylindrical = out->deflection * (1 - nu * nu);
    GW_STEP(engine, "w_c", GW_THICKNESS, out->deflection_cylindrical, "cylindrical bending", "w*(1-nu^2)",
            {"w", out->deflection, GW_THICKNESS}, {"nu", nu, GW_RATIO});
}

static void draw_in(struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    if (s->in.edges == 1) return;
    out->pullout = gw_edge_pullout(out->deflection, out->length);
    GW_STEP(engine, "pull-out", GW_THICKNESS, out->pullout, "shortening of a parabola", "(8/3)*(w^2/L)/2",
            {"w", out->deflection, GW_THICKNESS}, {"L", out->length, GW_THICKNESS});
}

static enum gw_status respond(struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    const struct gw_support_case *in = &s->in;
    if (!gw_given(in->pressure)) return GW_OK;
    const double slender = out->length / in->thickness, stress_slender = out->length / in->stress_thickness;
    out->deflection = out->alpha * in->pressure / in->elastic_modulus * pow(slender, 3) * out->length;
    out->stress_edge = out->beta * in->pressure * stress_slender * stress_slender;
    out->stress_surface = s->largest * in->pressure * stress_slender * stress_slender;
    enum gw_status status = check_deflection(out, s, engine);
    if (status) return status;
    step_deflection(out, s, engine);
    step_stress(out, s, engine);
    bound_edge(out, s, engine);
    bend_cylinder(out, s, engine);
    draw_in(out, s, engine);
    return GW_OK;
}

/* Stress at the limit over q l^2/t^2, solved for q. */
static double pressure_at(double stress, double coefficient, const char *symbol, const struct gw_support_result *out,
                          const struct shape *s, struct gw_engine *engine)
{
    const double t = s->in.stress_thickness, pressure = stress / coefficient * (t / out->length) * (t / out->length);
    GW_STEP(engine, symbol, GW_STRESS, pressure, s->form->clause, "sigma*t^2/(beta*l^2)",
            {"sigma|f_", stress, GW_STRESS}, {"t", t, GW_THICKNESS}, {"beta", coefficient, GW_RATIO},
            {"l", out->length, GW_THICKNESS});
    return pressure;
}

static double pressure_of_range(const struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    const double t = s->in.thickness, e = s->in.elastic_modulus;
    const double pressure = s->deflection_limit / out->length * e / out->alpha * pow(t / out->length, 3);
    GW_STEP(engine, "q_method", GW_STRESS, pressure, s->limits->row.source, "w*E*t^3/(alpha*l^4)",
            {"w", s->deflection_limit, GW_THICKNESS}, {"E", e, GW_STRESS}, {"t", t, GW_THICKNESS},
            {"alpha", out->alpha, GW_RATIO}, {"l", out->length, GW_THICKNESS});
    return pressure;
}

static void limit(struct gw_support_result *out, const struct shape *s, struct gw_engine *engine)
{
    if (!gw_given(s->in.edge_allowable)) return;
    const double edge = pressure_at(s->in.edge_allowable, out->beta, "q_edge", out, s, engine);
    const double surface = pressure_at(s->in.surface_allowable, s->largest, "q_surface", out, s, engine);
    const double range = pressure_of_range(out, s, engine);
    out->limit_pressure = fmin(range, fmin(edge, surface));
    out->governing = range < fmin(edge, surface) ? "method" : edge <= surface ? "edge" : "surface";
    GW_STEP(engine, "q_limit", GW_STRESS, out->limit_pressure, s->form->clause, "min(q_method,min(q_edge,q_surface))",
            {"q_method", range, GW_STRESS}, {"q_edge", edge, GW_STRESS}, {"q_surface", surface, GW_STRESS});
    if (bounded(s)) out->limit_pressure_bound = fmin(range, fmin(edge, surface) / s->limits->edge_excess);
    if (range < fmin(edge, surface)) note(out, NOTE_METHOD);
    if (!gw_given(s->in.pressure)) return;
    out->utilization = fmax(out->stress_edge / s->in.edge_allowable, out->stress_surface / s->in.surface_allowable);
    GW_STEP(engine, "use", GW_RATIO, out->utilization, s->form->clause,
            "max(sigma_edge/f_edge,sigma_surface/f_surface)", {"sigma_edge", out->stress_edge, GW_STRESS},
            {"f_edge", s->in.edge_allowable, GW_STRESS}, {"sigma_surface", out->stress_surface, GW_STRESS},
            {"f_surface", s->in.surface_allowable, GW_STRESS});
}

enum gw_status gw_support_solve(struct gw_support_result *out, const struct gw_support_case *in,
                                struct gw_engine *engine)
{
    struct shape s;
    enum gw_status status = open_shape(out, &s, in, engine);
    if (!status) status = respond(out, &s, engine);
    if (!status) limit(out, &s, engine);
    return status;
}
