/* The solution without units, then the case with units. */
#include "glass/glass_internal.h"

#include "tables_data.h"

size_t gw_plate_workspace(int terms)
{
    size_t matrix = (size_t)(terms * terms) * (size_t)(terms * terms);
    return sizeof(struct plate_system) + 4 * matrix * sizeof(double);
}

/* Terms each way that reach 0.1 % of every result up to the load. */
int gw_plate_default_terms(double q_star)
{
    static const struct {
        double q_star;
        int terms;
    } rows[] = {{150, 8}, {1000, 10}, {2000, 12}, {3000, 14}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        if (q_star <= rows[i].q_star) return rows[i].terms;
    return GW_PLATE_TERMS_MOST;
}

static void place_matrices(struct plate_system *s, int n)
{
    size_t matrix = (size_t)(n * n) * (size_t)(n * n);
    s->membrane = (double *)(void *)(s + 1);
    s->stiffness = s->membrane + matrix;
    s->coupling = s->stiffness + matrix;
    s->tangent = s->coupling + matrix;
}

bool gw_plate_solve(struct gw_plate_solution *out, const struct gw_plate_problem *in, void *workspace)
{
    struct plate_system *s = workspace;
    *out = (struct gw_plate_solution){.terms = in->terms ? in->terms : gw_plate_default_terms(in->q_star)};
    if (!(in->q_star > 0)) return in->q_star >= 0; /* no load, no deflection */
    place_matrices(s, out->terms);
    bool good = gw_plate_converge(s, in, out->terms);
    out->iterations = s->iterations;
    out->residual = s->error;
    if (good) gw_plate_read_fields(out, s, in);
    return good;
}

static const char *const CLAUSE = "von Karman plate, four edges simply supported";
static const char *const STRESS_NOTE =
    "at this load the largest stress, beside a corner, is good to about 1 %; deflection and risk are good to 0.1 %";

static const char DEFLECTION_FROM_TABLE[] = "deflection over thickness at q*_load, from the table of solutions of the "
                                            "equations of large deflection",
                  DEFLECTION_FROM_EQUATIONS[] =
                      "deflection over thickness at q*_load, from the equations of large deflection",
                  STRESS_FROM_TABLE[] = "stress times a b/(E t^2) at q*_load, from the same table",
                  STRESS_FROM_EQUATIONS[] = "stress times a b/(E t^2) at q*_load, from the same equations";

static enum gw_status check_positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

static enum gw_status check_numbers(const struct gw_plate_case *in, struct gw_engine *engine)
{
    enum gw_status status = check_positive("width", in->width, engine);
    if (!status) status = check_positive("height", in->height, engine);
    if (!status) status = check_positive("thickness", in->thickness, engine);
    if (!status) status = check_positive("elastic_modulus", in->elastic_modulus, engine);
    if (status) return status;
    if (!gw_given(in->pressure)) return gw_refuse(engine, GW_MISSING, "pressure", "pressure is needed");
    if (!(in->pressure >= 0 && isfinite(in->pressure)))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "pressure must be a magnitude");
    if (!(in->poissons_ratio >= 0 && in->poissons_ratio < 0.5))
        return gw_refuse(engine, GW_BAD_VALUE, "poissons_ratio", "poissons_ratio must be from 0 up to 0.5");
    if (in->terms != GW_NO_INTEGER && (in->terms < GW_PLATE_TERMS_LEAST || in->terms > GW_PLATE_TERMS_MOST))
        return gw_refuse(engine, GW_BAD_VALUE, "terms", "terms must be from {} to {}",
                         gw_of_count(GW_PLATE_TERMS_LEAST), gw_of_count(GW_PLATE_TERMS_MOST));
    return GW_OK;
}

static enum gw_status check_range(const struct gw_plate_problem *p, struct gw_engine *engine)
{
    const struct gw_plate_limits *limits = GW_USE(engine, &engine->tables->plate_limits[0]);
    if (p->aspect > limits->aspect * (1 + 1e-12))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "height", "the sides' ratio is beyond the solution's limit of {}",
                         gw_of_number(limits->aspect, 4));
    if (!(p->q_star <= limits->q_star))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "pressure",
                         "the load q (a b)^2/(E t^4) is beyond the solution's limit of {}",
                         gw_of_number(limits->q_star, 4));
    return GW_OK;
}

/* What keeps the response table from answering the case; NULL: nothing. */
struct obstacle {
    const char *key, *limit;
};
static struct obstacle find_obstacle(const struct gw_plate_case *in, const struct gw_plate_problem *p,
                                     const struct gw_plate_response_range *range)
{
    if (in->terms != GW_NO_INTEGER) return (struct obstacle){"terms", "any number of terms but its own"};
    if (p->straight_edges) return (struct obstacle){"edges", "edges held straight, only for free ones"};
    if (p->poissons_ratio != range->poissons_ratio)
        return (struct obstacle){"poissons_ratio", "a Poisson's ratio other than that of glass"};
    if (p->flaw_exponent != range->flaw_exponent)
        return (struct obstacle){"method", "a flaw exponent other than the standard's"};
    return (struct obstacle){NULL, NULL};
}

/* The table where it reaches, unless the equations are asked for; the equations elsewhere, unless the table is. */
static enum gw_status respond(struct gw_plate_solution *out, bool *by_table, const struct gw_plate_case *in,
                              const struct gw_plate_problem *p, struct gw_engine *engine)
{
    const struct gw_plate_response_range *range = &engine->tables->plate_response_range[0];
    const struct obstacle obstacle = find_obstacle(in, p, range);
    *by_table = false;
    *out = (struct gw_plate_solution){.residual = GW_ABSENT, .terms = GW_NO_INTEGER};
    if (in->method != GW_PLATE_DIRECT && !obstacle.key)
        *by_table = gw_plate_response(out, p->aspect, p->q_star, in->want ? in->want : GW_PLATE_ALL, engine->tables);
    if (*by_table) {
        gw_used_add(&engine->used, &range->row);
        return GW_OK;
    }
    if (in->method == GW_PLATE_TABLE)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, obstacle.key ? obstacle.key : "method",
                         "there is no response table for {}",
                         gw_of_text(obstacle.key ? obstacle.limit : "this ratio of the sides and this load"));
    if (gw_plate_solve(out, p, engine->workspace)) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "pressure", "the solution did not converge in {} steps",
                     gw_of_count(out->iterations));
}

/* Absent material values are those of glass. */
void gw_plate_complete(struct gw_plate_case *in, struct gw_engine *engine)
{
    const struct gw_glass_material *glass = &engine->tables->glass_material[0];
    if (gw_given(in->elastic_modulus) && gw_given(in->poissons_ratio)) return;
    gw_used_add(&engine->used, &glass->row);
    if (!gw_given(in->elastic_modulus)) in->elastic_modulus = glass->elastic_modulus_pa;
    if (!gw_given(in->poissons_ratio)) in->poissons_ratio = glass->poissons_ratio;
}

static void put_units(struct gw_plate_result *out, const struct gw_plate_case *in, const struct gw_plate_solution *s)
{
    const double t = in->thickness, area = in->width * in->height;
    const double stress = in->elastic_modulus * t * t / area;
    const bool wide = in->width >= in->height;
    out->deflection = s->deflection * t;
    out->mean_deflection = s->mean_deflection * t;
    out->volume = out->mean_deflection * area;
    out->stress_max = s->stress_max * stress;
    out->stress_center = s->stress_center * stress;
    out->stress_loaded_face = s->stress_loaded_face * stress;
    out->place[0] = (wide ? s->stress_x : s->stress_y) * in->width / 2;
    out->place[1] = (wide ? s->stress_y : s->stress_x) * in->height / 2;
    out->stress_place.items = out->place;
    out->stress_place.n = 2;
    out->risk = s->risk;
    out->edge_slope = s->edge_slope * t / sqrt(area);
    out->iterations = s->iterations;
    out->terms = s->terms;
    out->residual = s->residual;
}

static void trace(const struct gw_plate_result *out, const struct gw_plate_case *in, const struct gw_plate_solution *s,
                  bool by_table, struct gw_engine *engine)
{
    const double e = in->elastic_modulus, t = in->thickness;
    GW_STEP(engine, "q*_load", GW_RATIO, out->q_star, CLAUSE, "q*(a*b)^2/(E*t^4)", {"q", in->pressure, GW_STRESS},
            {"a", fmax(in->width, in->height), GW_THICKNESS}, {"b", fmin(in->width, in->height), GW_THICKNESS},
            {"E", e, GW_STRESS}, {"t|t|h_", t, GW_THICKNESS});
    if (!in->want || in->want & GW_PLATE_DEFLECTION) {
        GW_FOUND(engine, "W", GW_RATIO, s->deflection, CLAUSE,
                 by_table ? DEFLECTION_FROM_TABLE : DEFLECTION_FROM_EQUATIONS, {"q*_load", out->q_star, GW_RATIO});
        GW_STEP(engine, "w", GW_THICKNESS, out->deflection, CLAUSE, "W*t", {"W", s->deflection, GW_RATIO},
                {"t|t|h_", t, GW_THICKNESS});
    }
    if (!in->want || in->want & GW_PLATE_STRESS) {
        GW_FOUND(engine, "S", GW_RATIO, s->stress_max, CLAUSE, by_table ? STRESS_FROM_TABLE : STRESS_FROM_EQUATIONS,
                 {"q*_load", out->q_star, GW_RATIO});
        GW_STEP(engine, "sigma_max", GW_STRESS, out->stress_max, CLAUSE, "S*E*t^2/(a*b)",
                {"S", s->stress_max, GW_RATIO}, {"E", e, GW_STRESS}, {"t|t|h_", t, GW_THICKNESS},
                {"a", fmax(in->width, in->height), GW_THICKNESS}, {"b", fmin(in->width, in->height), GW_THICKNESS});
    }
}

enum gw_status gw_plate(struct gw_plate_result *out, const struct gw_plate_case *given, struct gw_engine *engine)
{
    struct gw_plate_case in = *given;
    struct gw_plate_solution s;
    bool by_table;
    gw_plate_complete(&in, engine);
    enum gw_status status = check_numbers(&in, engine);
    if (status) return status;
    const double area_ratio = in.width / in.thickness * (in.height / in.thickness);
    const struct gw_glass_flaws *flaws = GW_USE(engine, &engine->tables->glass_flaws[0]);
    const struct gw_plate_problem problem = {.aspect = fmax(in.width, in.height) / fmin(in.width, in.height),
                                             .q_star = in.pressure / in.elastic_modulus * area_ratio * area_ratio,
                                             .poissons_ratio = in.poissons_ratio,
                                             .flaw_exponent = flaws->m,
                                             .terms = in.terms == GW_NO_INTEGER ? 0 : in.terms,
                                             .straight_edges = in.edges == GW_PLATE_STRAIGHT};
    status = check_range(&problem, engine);
    if (!status) status = respond(&s, &by_table, &in, &problem, engine);
    if (status) return status;
    *out = (struct gw_plate_result){.q_star = problem.q_star, .method = by_table ? "table" : "direct"};
    put_units(out, &in, &s);
    trace(out, &in, &s, by_table, engine);
    if (problem.q_star > engine->tables->plate_limits[0].q_star_corner) out->notes[out->n_notes++] = STRESS_NOTE;
    return GW_OK;
}
