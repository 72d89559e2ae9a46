/* Air blast of a hemispherical surface burst, from the published polynomials. */
#include "galeward/blast.h"

#include "base/tolerance.h"

#include "tables_data.h"

static const char OBLIQUE[] = "Randers-Pehrson and Bannister 1997",
                  TRIANGLE[] = "triangle of the same peak and impulse";
static const char WHOSE[] =
    "charge and standoff are for the owner's security consultant to say; a blast check does not replace a licensed "
    "engineer's";
static const char WHERE[] =
    "hemispherical burst on the ground before one large flat face: reflections from other buildings and loads inside "
    "come on top; a small face clears sooner, so that the full impulse is on the safe side";
static const char NO_INCIDENT[] =
    "nearer than the polynomials of the incident wave and of the duration begin: those are left out";
static const char FULL_REFLECTION[] =
    "the reflected pair, as at normal incidence, is the upper bound for a face at any "
    "angle";

static const struct {
    const char *name, *symbol;
    enum gw_dim dim;
    bool scales; /* with the cube root of the charge */
} QUANTITIES[] = {
    [GW_BLAST_REFLECTED_PRESSURE] = {"reflected pressure", "P_r", GW_PRESSURE, false},
    [GW_BLAST_REFLECTED_IMPULSE] = {"reflected impulse", "I_r", GW_IMPULSE, true},
    [GW_BLAST_INCIDENT_PRESSURE] = {"incident pressure", "P_s", GW_PRESSURE, false},
    [GW_BLAST_INCIDENT_IMPULSE] = {"incident impulse", "I_s", GW_IMPULSE, true},
    [GW_BLAST_POSITIVE_DURATION] = {"positive duration", "t_0", GW_TIME, true},
    [GW_BLAST_ARRIVAL] = {"arrival", "t_a", GW_TIME, true},
};

struct range {
    double least, most;
};

static struct range range_of(enum gw_blast_quantity quantity, const struct gw_tables *tables)
{
    struct range r = {INFINITY, 0};
    for (size_t i = 0; i < GW_N_BLAST_POLYNOMIAL; i++) {
        const struct gw_blast_polynomial *row = &tables->blast_polynomial[i];
        if (row->quantity != (int)quantity) continue;
        r.least = fmin(r.least, row->least);
        r.most = fmax(r.most, row->most);
    }
    return r;
}

static bool within(struct range r, double scaled_distance)
{
    return scaled_distance >= r.least * (1 - GW_HAIR) && scaled_distance <= r.most * (1 + GW_HAIR);
}

static enum gw_status outside(enum gw_blast_quantity quantity, struct range r, struct gw_engine *engine)
{
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "standoff", "the polynomials of the {} hold from {} to {} m/kg^(1/3)",
                     gw_of_text(QUANTITIES[quantity].name), gw_of_number(r.least, 4), gw_of_number(r.most, 4));
}

/* At a join of two rows the nearer one. */
static const struct gw_blast_polynomial *row_at(enum gw_blast_quantity quantity, double scaled_distance,
                                                const struct gw_tables *tables)
{
    for (size_t i = 0; i < GW_N_BLAST_POLYNOMIAL; i++) {
        const struct gw_blast_polynomial *row = &tables->blast_polynomial[i];
        if (row->quantity == (int)quantity && within((struct range){row->least, row->most}, scaled_distance))
            return row;
    }
    return NULL;
}

enum { COEFFICIENTS_MOST = 7 };
static const char *const PRESSURE_FORMULAS[COEFFICIENTS_MOST + 1] = {
    [2] = "u*exp(c_0+c_1*L)",
    [5] = "u*exp(c_0+c_1*L+c_2*L^2+c_3*L^3+c_4*L^4)",
    [7] = "u*exp(c_0+c_1*L+c_2*L^2+c_3*L^3+c_4*L^4+c_5*L^5+c_6*L^6)",
};
static const char *const SCALED_FORMULAS[COEFFICIENTS_MOST + 1] = {
    [2] = "u*W^(1/3)*exp(c_0+c_1*L)",
    [4] = "u*W^(1/3)*exp(c_0+c_1*L+c_2*L^2+c_3*L^3)",
    [5] = "u*W^(1/3)*exp(c_0+c_1*L+c_2*L^2+c_3*L^3+c_4*L^4)",
    [6] = "u*W^(1/3)*exp(c_0+c_1*L+c_2*L^2+c_3*L^3+c_4*L^4+c_5*L^5)",
};

/* u is the unit of the source: 1 kPa, 1 kPa-ms, 1 ms. */
static void trace(enum gw_blast_quantity quantity, const struct gw_blast_polynomial *row, double logarithm,
                  double charge, double value, struct gw_engine *engine)
{
    static const char *const names[] = {"c_0", "c_1", "c_2", "c_3", "c_4", "c_5", "c_6"};
    const bool scales = QUANTITIES[quantity].scales;
    const enum gw_dim dim = QUANTITIES[quantity].dim;
    struct gw_arg args[COEFFICIENTS_MOST + 3];
    unsigned n = 0;
    args[n++] = (struct gw_arg){"u", row->unit_si, dim};
    args[n++] = (struct gw_arg){"L", logarithm, GW_RATIO};
    if (scales) args[n++] = (struct gw_arg){"W", charge, GW_RATIO}; /* the fit is tied to kg */
    for (size_t i = 0; i < row->n_coefficients; i++)
        args[n++] = (struct gw_arg){names[i], row->coefficients[i], GW_RATIO};
    gw_trace_step(engine, QUANTITIES[quantity].symbol, dim, value, row->row.source,
                  (scales ? SCALED_FORMULAS : PRESSURE_FORMULAS)[row->n_coefficients], args, n);
}

enum gw_status gw_blast_quantity(double *out, enum gw_blast_quantity quantity, double scaled_distance, double charge,
                                 struct gw_engine *engine)
{
    const struct gw_blast_polynomial *row = row_at(quantity, scaled_distance, engine->tables);
    if (!row) return outside(quantity, range_of(quantity, engine->tables), engine);
    gw_used_add(&engine->used, &row->row);
    const double l = log(scaled_distance);
    double sum = 0;
    for (size_t i = row->n_coefficients; i > 0; i--) sum = sum * l + row->coefficients[i - 1];
    *out = row->unit_si * (QUANTITIES[quantity].scales ? cbrt(charge) : 1) * exp(sum);
    trace(quantity, row, l, charge, *out, engine);
    return GW_OK;
}

/* Absent where its own polynomials do not reach, though the reflected ones do. */
static enum gw_status incident(double *out, enum gw_blast_quantity quantity, double scaled_distance, double charge,
                               struct gw_engine *engine)
{
    *out = GW_ABSENT;
    if (!within(range_of(quantity, engine->tables), scaled_distance)) return GW_OK;
    return gw_blast_quantity(out, quantity, scaled_distance, charge, engine);
}

static enum gw_status check(const struct gw_blast_case *in, struct gw_engine *engine)
{
    const double right_angle = acos(0), angle = gw_given(in->angle) ? in->angle : 0;
    if (!gw_given(in->charge))
        return gw_refuse(engine, GW_MISSING, "charge", "which charge? Ask the owner's security consultant");
    if (!gw_given(in->standoff))
        return gw_refuse(engine, GW_MISSING, "standoff", "which standoff? Ask the owner's security consultant");
    if (!(in->charge > 0)) return gw_refuse(engine, GW_BAD_VALUE, "charge", "must be above zero");
    if (!(in->standoff > 0)) return gw_refuse(engine, GW_BAD_VALUE, "standoff", "must be above zero");
    if (!(angle >= 0 && angle <= right_angle * (1 + GW_HAIR)))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "angle",
                         "from 0 to 90 degrees from the face's normal: beyond, the face is turned away");
    return GW_OK;
}

static enum gw_status find_quantities(struct gw_blast_load *out, double charge, struct gw_engine *engine)
{
    const double z = out->scaled_distance;
    enum gw_status status = gw_blast_quantity(&out->reflected_pressure, GW_BLAST_REFLECTED_PRESSURE, z, charge, engine);
    if (!status) status = gw_blast_quantity(&out->reflected_impulse, GW_BLAST_REFLECTED_IMPULSE, z, charge, engine);
    if (!status) status = incident(&out->incident_pressure, GW_BLAST_INCIDENT_PRESSURE, z, charge, engine);
    if (!status) status = incident(&out->incident_impulse, GW_BLAST_INCIDENT_IMPULSE, z, charge, engine);
    if (!status) status = incident(&out->positive_duration, GW_BLAST_POSITIVE_DURATION, z, charge, engine);
    if (!status) status = gw_blast_quantity(&out->arrival, GW_BLAST_ARRIVAL, z, charge, engine);
    return status;
}

/* What an angle does to a peak or an impulse. */
static double on_face(const char *symbol, enum gw_dim dim, double reflected, double side_on, double angle,
                      struct gw_engine *engine)
{
    const double value = gw_blast_oblique(reflected, side_on, angle);
    GW_STEP(engine, symbol, dim, value, OBLIQUE, "Y_r*c^2+Y_s*(1+c^2-2*c)", {"Y_r|P_|I_", reflected, dim},
            {"Y_s|P_|I_", side_on, dim}, {"c", cos(angle), GW_RATIO});
    return value;
}

static enum gw_status find_face(struct gw_blast_load *out, double angle, struct gw_engine *engine)
{
    out->face_pressure = out->reflected_pressure;
    out->face_impulse = out->reflected_impulse;
    if (!(angle > 0)) return GW_OK;
    if (!gw_given(out->incident_pressure))
        return outside(GW_BLAST_INCIDENT_PRESSURE, range_of(GW_BLAST_INCIDENT_PRESSURE, engine->tables), engine);
    out->face_pressure = on_face("P_face", GW_PRESSURE, out->reflected_pressure, out->incident_pressure, angle, engine);
    out->face_impulse = on_face("I_face", GW_IMPULSE, out->reflected_impulse, out->incident_impulse, angle, engine);
    return GW_OK;
}

static void add_notes(struct gw_blast_load *out, double angle)
{
    out->notes[out->n_notes++] = WHOSE;
    out->notes[out->n_notes++] = WHERE;
    if (!gw_given(out->incident_pressure)) out->notes[out->n_notes++] = NO_INCIDENT;
    if (angle > 0) out->notes[out->n_notes++] = FULL_REFLECTION;
}

enum gw_status gw_blast_load(struct gw_blast_load *out, const struct gw_blast_case *in, struct gw_engine *engine)
{
    const double angle = gw_given(in->angle) ? in->angle : 0;
    enum gw_status status = check(in, engine);
    if (status) return status;
    *out = (struct gw_blast_load){.scaled_distance = in->standoff / cbrt(in->charge)};
    GW_STEP(engine, "Z", GW_RATIO, out->scaled_distance, "scaled distance, in m and kg", "R/W^(1/3)",
            {"R", in->standoff, GW_RATIO}, {"W", in->charge, GW_RATIO});
    GW_STEP(engine, "L", GW_RATIO, log(out->scaled_distance), "natural logarithm", "ln(Z)",
            {"Z", out->scaled_distance, GW_RATIO});
    status = find_quantities(out, in->charge, engine);
    if (!status) status = find_face(out, angle, engine);
    if (status) return status;
    out->triangle_duration = gw_blast_duration((struct gw_blast_pair){out->reflected_pressure, out->reflected_impulse});
    /* psi and psi-ms do not cancel to seconds: the numbers are SI. */
    GW_STEP(engine, "t_e", GW_TIME, out->triangle_duration, TRIANGLE, "2*I_r/P_r",
            {"I_r", out->reflected_impulse, GW_RATIO}, {"P_r", out->reflected_pressure, GW_RATIO});
    add_notes(out, angle);
    return GW_OK;
}

static enum gw_status by_level(struct gw_blast_pair *out, enum gw_blast_level level, struct gw_engine *engine)
{
    const struct gw_blast_named_load *row = engine->tables->blast_named_load;
    while (row->level != (int)level) row++;
    gw_used_add(&engine->used, &row->row);
    gw_trace_note(engine, "P, I", row->row.source, "the pair of the named level");
    *out = (struct gw_blast_pair){row->pressure_pa, row->impulse_pa_s};
    return GW_OK;
}

static enum gw_status by_burst(struct gw_blast_pair *out, const struct gw_blast_case *burst, struct gw_engine *engine)
{
    struct gw_blast_load load;
    enum gw_status status = gw_blast_load(&load, burst, engine);
    if (!status) *out = (struct gw_blast_pair){load.face_pressure, load.face_impulse};
    return status;
}

enum gw_status gw_blast_find_load(struct gw_blast_pair *out, const struct gw_blast_demand *in, struct gw_engine *engine)
{
    const bool pair = gw_given(in->load.pressure) || gw_given(in->load.impulse);
    const bool burst = gw_given(in->burst.charge) || gw_given(in->burst.standoff) || gw_given(in->burst.angle);
    const bool level = in->level != GW_BLAST_LEVEL_UNSET;
    if (pair + burst + level == 0)
        return gw_refuse(engine, GW_MISSING, "pressure",
                         "give pressure and impulse, or charge and standoff, or a level: ask the owner's security "
                         "consultant");
    if (pair + burst + level > 1)
        return gw_refuse(engine, GW_BAD_VALUE, pair ? "pressure" : "charge",
                         "give one of: pressure and impulse, charge and standoff, level");
    if (level) return by_level(out, in->level, engine);
    if (burst) return by_burst(out, &in->burst, engine);
    if (!gw_given(in->load.pressure) || !gw_given(in->load.impulse))
        return gw_refuse(engine, GW_MISSING, gw_given(in->load.pressure) ? "impulse" : "pressure",
                         "peak pressure and impulse are given together, both reflected");
    if (!(in->load.pressure > 0)) return gw_refuse(engine, GW_BAD_VALUE, "pressure", "must be above zero");
    if (!(in->load.impulse > 0)) return gw_refuse(engine, GW_BAD_VALUE, "impulse", "must be above zero");
    *out = in->load;
    return GW_OK;
}
