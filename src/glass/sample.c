/* The fields of a loaded plate on a regular grid of points, for drawings. */
#include "glass/glass_internal.h"

#include "tables_data.h"

/* Where the fields are read, and what turns numbers without units into m and Pa. */
struct sampler {
    struct plate_field field;
    bool wide; /* the plate's long side, x of the field, lies along the width */
    double deflection_unit, stress_unit;
};

/* From 0 at the center to 1 at the edge: the distance of point i of n in equal steps. */
static double from_center(int i, int n) { return fabs(2.0 * i - (n - 1)) / (n - 1); }

static void read_at(const struct sampler *s, double across, double up, double *deflection, double *stress)
{
    const double x = s->wide ? across : up, y = s->wide ? up : across;
    if (deflection) *deflection = gw_plate_deflection_at(&s->field, x, y) * s->deflection_unit;
    if (stress) *stress = gw_plate_stress_at(&s->field, x, y, 1).first * s->stress_unit;
}

/* The first quarter of the points is computed; the others mirror it, so that the picture is exactly symmetrical. */
static void fill(const struct sampler *s, int nx, int ny, double *deflection, double *stress)
{
    for (int j = 0; j < (ny + 1) / 2; j++)
        for (int i = 0; i < (nx + 1) / 2; i++) {
            double w = 0, sigma = 0;
            const int rows[] = {j, ny - 1 - j}, columns[] = {i, nx - 1 - i};
            read_at(s, from_center(i, nx), from_center(j, ny), deflection ? &w : NULL, stress ? &sigma : NULL);
            for (int k = 0; k < 4; k++) {
                const int at = rows[k / 2] * nx + columns[k % 2];
                if (deflection) deflection[at] = w;
                if (stress) stress[at] = sigma;
            }
        }
}

static void fill_unloaded(int n, double *deflection, double *stress)
{
    for (int i = 0; i < n; i++) {
        if (deflection) deflection[i] = 0;
        if (stress) stress[i] = 0;
    }
}

enum gw_status gw_plate_sample(struct gw_plate_result *out, const struct gw_plate_case *given, int nx, int ny,
                               double *deflection, double *stress, struct gw_engine *engine)
{
    struct gw_plate_case in = *given;
    struct sampler s;
    if (nx < 2 || ny < 2)
        return gw_refuse(engine, GW_BAD_VALUE, "", "a plate is sampled at 2 points each way at least");
    gw_plate_complete(&in, engine);
    in.method = GW_PLATE_DIRECT;
    enum gw_status status = gw_plate(out, &in, engine);
    if (status) return status;
    if (!(in.pressure > 0)) { /* the solver was not asked: its workspace holds no plate */
        fill_unloaded(nx * ny, deflection, stress);
        return GW_OK;
    }
    /* gw_plate leaves the converged system at the start of the workspace. */
    const struct gw_plate_problem problem = {.poissons_ratio = in.poissons_ratio,
                                             .flaw_exponent = engine->tables->glass_flaws[0].m};
    gw_plate_open_field(&s.field, engine->workspace, &problem);
    s.wide = in.width >= in.height;
    s.deflection_unit = in.thickness;
    s.stress_unit = in.elastic_modulus * in.thickness * in.thickness / (in.width * in.height);
    fill(&s, nx, ny, deflection, stress);
    return GW_OK;
}
