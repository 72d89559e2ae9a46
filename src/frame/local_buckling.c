/* Buckling of the flat elements of aluminum sections: flanges, webs in bending, webs in shear. */
#include "bending_internal.h"

#include "tables_data.h"

static const double PI = 3.14159265358979323846;

static double element_value(int row, struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->aluminum_element[row])->value;
}

static const char *element_clause(int row, const struct gw_engine *engine)
{
    return engine->tables->aluminum_element[row].row.source;
}

/* What a flat element's strength depends on. */
struct flat {
    const char *symbol, *clause;
    double plateau, factor, slenderness, elastic_modulus; /* Pa, m or 1.6 or 5, b/t, Pa */
    struct gw_buckling_constants constants;
};

/* The plateau, then a line, then the hyperbola of the strength after buckling. */
static double flat_stress(const struct flat *f, struct gw_engine *engine)
{
    const struct gw_buckling_constants *k = &f->constants;
    const double first = (k->b - f->plateau) / (f->factor * k->d), second = k->k1 * k->b / (f->factor * k->d);
    if (f->slenderness <= first) {
        GW_STEP(engine, f->symbol, GW_STRESS, f->plateau, f->clause, "F", {"F", f->plateau, GW_STRESS});
        return f->plateau;
    }
    if (f->slenderness < second) {
        const double stress = k->b - f->factor * k->d * f->slenderness;
        GW_STEP(engine, f->symbol, GW_STRESS, stress, f->clause, "B-m*D*s", {"B|B", k->b, GW_STRESS},
                {"m", f->factor, GW_RATIO}, {"D|D", k->d, GW_STRESS}, {"s", f->slenderness, GW_RATIO});
        return stress;
    }
    const double stress = k->k2 * sqrt(k->b * f->elastic_modulus) / (f->factor * f->slenderness);
    GW_STEP(engine, f->symbol, GW_STRESS, stress, f->clause, "k2*sqrt(B*E)/(m*s)", {"k2", k->k2, GW_RATIO},
            {"B|B", k->b, GW_STRESS}, {"E", f->elastic_modulus, GW_STRESS}, {"m", f->factor, GW_RATIO},
            {"s", f->slenderness, GW_RATIO});
    return stress;
}

static double step_slenderness(const struct gw_flat_element *e, struct gw_engine *engine)
{
    GW_STEP(engine, "s", GW_RATIO, e->width / e->thickness, "ADM B.5", "b/t", {"b", e->width, GW_THICKNESS},
            {"t", e->thickness, GW_THICKNESS});
    return e->width / e->thickness;
}

static double compressed(const struct gw_flat_element *e, const struct gw_alloy *alloy, struct gw_engine *engine)
{
    const int row = e->edges == 2 ? GW_ROW_ALUMINUM_ELEMENT_BOTH_EDGES : GW_ROW_ALUMINUM_ELEMENT_ONE_EDGE;
    struct flat f = {.symbol = "Fc",
                     .clause = e->edges == 2 ? "ADM B.5.4.2" : "ADM B.5.4.1",
                     .plateau = alloy->compressive_yield,
                     .factor = element_value(row, engine),
                     .elastic_modulus = alloy->elastic_modulus};
    gw_alloy_buckling(&f.constants, alloy, GW_BUCKLING_FLAT, engine);
    f.slenderness = step_slenderness(e, engine);
    return flat_stress(&f, engine);
}

/* m of a web whose edges are stressed by cc and co. */
static double bending_factor(double stress_ratio, struct gw_engine *engine)
{
    const int reversed = GW_ROW_ALUMINUM_ELEMENT_BENDING_REVERSED, at_zero = GW_ROW_ALUMINUM_ELEMENT_BENDING_INTERCEPT,
              slope = GW_ROW_ALUMINUM_ELEMENT_BENDING_SLOPE;
    if (stress_ratio <= -1) {
        const double k = element_value(reversed, engine), m = k / (1 - stress_ratio);
        GW_STEP(engine, "m", GW_RATIO, m, element_clause(reversed, engine), "k/(1-r)", {"k", k, GW_RATIO},
                {"r", stress_ratio, GW_RATIO});
        return m;
    }
    const double a = element_value(at_zero, engine), b = element_value(slope, engine), m = a + b * stress_ratio;
    GW_STEP(engine, "m", GW_RATIO, m, element_clause(at_zero, engine), "a+b*r", {"a", a, GW_RATIO}, {"b", b, GW_RATIO},
            {"r", stress_ratio, GW_RATIO});
    return m;
}

static double bent(const struct gw_flat_element *e, const struct gw_alloy *alloy, struct gw_engine *engine)
{
    struct flat f = {.symbol = "Fb",
                     .clause = "ADM B.5.5.1",
                     .plateau =
                         element_value(GW_ROW_ALUMINUM_ELEMENT_BENDING_PLATEAU, engine) * alloy->compressive_yield,
                     .factor = bending_factor(gw_given(e->stress_ratio) ? e->stress_ratio : -1, engine),
                     .elastic_modulus = alloy->elastic_modulus};
    gw_alloy_buckling(&f.constants, alloy, GW_BUCKLING_BENDING, engine);
    f.slenderness = step_slenderness(e, engine);
    return flat_stress(&f, engine);
}

static enum gw_status check_element(const struct gw_flat_element *e, struct gw_engine *engine)
{
    if (e->stress == GW_ELEMENT_UNSET)
        return gw_refuse(engine, GW_MISSING, "elements", "an element is in compression or in bending: say which");
    if (!(e->width > 0 && e->thickness > 0 && isfinite(e->width) && isfinite(e->thickness)))
        return gw_refuse(engine, GW_BAD_VALUE, "elements", "an element's width and thickness must be positive");
    if (e->edges != 1 && e->edges != 2)
        return gw_refuse(engine, GW_BAD_VALUE, "elements", "an element is supported on one edge or on two");
    if (e->stress == GW_ELEMENT_COMPRESSION) return GW_OK;
    if (e->edges == 1)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "elements",
                         "an element in bending that is supported on one edge only is not covered");
    if (gw_given(e->stress_ratio) && !(e->stress_ratio < 1))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "elements",
                         "stress_ratio of an element in bending must be below 1; at 1 it is in uniform compression");
    return GW_OK;
}

/* The weakest flange and the weakest web element stand for theirs. */
static enum gw_status find_stresses(struct gw_bending_result *out, const struct gw_bending *in,
                                    const struct gw_alloy *alloy, struct gw_engine *engine)
{
    for (unsigned i = 0; i < in->n_elements; i++) {
        const struct gw_flat_element *e = &in->elements[i];
        enum gw_status status = check_element(e, engine);
        if (status) return status;
        if (e->stress == GW_ELEMENT_COMPRESSION)
            out->flange_stress = fmin(out->flange_stress, compressed(e, alloy, engine));
        else out->web_stress = fmin(out->web_stress, bent(e, alloy, engine));
    }
    return GW_OK;
}

/* Inertia over distance of flanges or of webs; 0 for a section without them. */
static enum gw_status part_modulus(double *out, const char *key, double inertia, double distance, double stress,
                                   struct gw_engine *engine)
{
    *out = 0;
    if (!(inertia > 0)) return GW_OK;
    if (!(distance > 0 && isfinite(distance) && isfinite(inertia)))
        return gw_refuse(engine, GW_MISSING, key, "{} is needed beside its inertia", gw_of_text(key));
    if (!gw_given(stress))
        return gw_refuse(engine, GW_MISSING, "elements", "{} without an element: its slenderness is needed",
                         gw_of_text(key));
    *out = inertia / distance;
    return GW_OK;
}

static enum gw_status weigh(struct gw_bending_result *out, const struct gw_bending *in, struct gw_engine *engine)
{
    double flange, web;
    enum gw_status status =
        part_modulus(&flange, "flange_distance", in->flange_inertia, in->flange_distance, out->flange_stress, engine);
    if (!status)
        status = part_modulus(&web, "web_distance", in->web_inertia, in->web_distance, out->web_stress, engine);
    if (status) return status;
    if (!(flange + web > 0))
        return gw_refuse(engine, GW_MISSING, "flange_inertia",
                         "elements want the inertia and distance of their flanges, webs or both");
    const double fc = flange > 0 ? out->flange_stress : 0, fb = web > 0 ? out->web_stress : 0;
    const double ccf = flange > 0 ? in->flange_distance : 1, ccw = web > 0 ? in->web_distance : 1;
    out->nominal_local = fc * flange + fb * web;
    GW_STEP(engine, "Mnlb", GW_BENDING, out->nominal_local, "ADM F.3.1, weighted average", "Fc*If/ccf+Fb*Iw/ccw",
            {"Fc", fc, GW_STRESS}, {"If", flange * ccf, GW_INERTIA}, {"ccf", ccf, GW_THICKNESS}, {"Fb", fb, GW_STRESS},
            {"Iw", web * ccw, GW_INERTIA}, {"ccw", ccw, GW_THICKNESS});
    return GW_OK;
}

enum gw_status gw_bending_local(struct gw_bending_result *out, const struct gw_bending *in,
                                const struct gw_alloy *alloy, struct gw_engine *engine)
{
    if (in->n_elements) {
        enum gw_status status = find_stresses(out, in, alloy, engine);
        return status ? status : weigh(out, in, engine);
    }
    if (in->compact) {
        out->nominal_local = out->nominal_yielding;
        gw_bending_note(out, "local buckling: elements taken as compact, as the input says");
        return GW_OK;
    }
    gw_bending_note(out,
                    "local buckling is not known: it wants the elements, or compact where that is shown elsewhere");
    return GW_OK;
}

/* Shear -------------------------------------------------------------------------------------------------------------
 */

static double shear_stress(double slenderness, const struct gw_alloy *alloy, struct gw_engine *engine)
{
    struct gw_buckling_constants k;
    const double factor = element_value(GW_ROW_ALUMINUM_ELEMENT_SHEAR, engine), f = alloy->shear_yield;
    gw_alloy_buckling(&k, alloy, GW_BUCKLING_SHEAR, engine);
    if (slenderness <= (k.b - f) / (factor * k.d)) {
        GW_STEP(engine, "Fs", GW_STRESS, f, "ADM G.2", "Fsy", {"Fsy", f, GW_STRESS});
        return f;
    }
    if (slenderness < k.c / factor) {
        const double stress = k.b - factor * k.d * slenderness;
        GW_STEP(engine, "Fs", GW_STRESS, stress, "ADM G.2", "Bs-m*Ds*s", {"Bs", k.b, GW_STRESS},
                {"m", factor, GW_RATIO}, {"Ds", k.d, GW_STRESS}, {"s", slenderness, GW_RATIO});
        return stress;
    }
    const double stress = PI * PI * alloy->elastic_modulus / pow(factor * slenderness, 2);
    GW_STEP(engine, "Fs", GW_STRESS, stress, "ADM G.2", "pi^2*E/(m*s)^2", {"pi", PI, GW_RATIO},
            {"E", alloy->elastic_modulus, GW_STRESS}, {"m", factor, GW_RATIO}, {"s", slenderness, GW_RATIO});
    return stress;
}

enum gw_status gw_bending_shear(struct gw_bending_result *out, const struct gw_bending *in,
                                const struct gw_alloy *alloy, struct gw_engine *engine)
{
    if (!in->webs) {
        gw_bending_note(out, "shear is not known: it wants the webs");
        return GW_OK;
    }
    if (in->webs < 0 || !(in->web_depth > 0 && in->web_clear > 0 && in->web_thickness > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "webs",
                         "the webs' count, depth, clear height and thickness must be positive");
    if (in->web_clear > in->web_depth)
        return gw_refuse(engine, GW_BAD_VALUE, "webs", "the webs' clear height is more than their depth");
    const struct gw_flat_element web = {GW_ELEMENT_BENDING, in->web_clear, in->web_thickness, 2, GW_ABSENT};
    out->shear_stress = shear_stress(step_slenderness(&web, engine), alloy, engine);
    out->shear_nominal = out->shear_stress * in->webs * in->web_depth * in->web_thickness;
    GW_STEP(engine, "Vn", GW_FORCE, out->shear_nominal, "ADM G.2", "Fs*n*d*t", {"Fs", out->shear_stress, GW_STRESS},
            {"n", in->webs, GW_RATIO}, {"d", in->web_depth, GW_THICKNESS}, {"t", in->web_thickness, GW_THICKNESS});
    return GW_OK;
}
