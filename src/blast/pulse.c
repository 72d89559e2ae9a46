/* A lite under a triangular pulse.
 *
 * One degree of freedom, the mean deflection v: the work of a uniform pressure is then that of v, and the resistance
 * R(v) is the plate's static curve under uniform pressure, membrane and all. Assumed: the lite moves in its shape of
 * small deflection under uniform pressure, so that its kinetic energy is kappa m v'^2 / 2, kappa the mean square of the
 * shape over the square of its mean: kappa m v'' + R(v) = p(t) which for the center of the lite, v / v_center = K_L, is
 * the usual K_LM m x'' + R = p with K_LM = kappa K_L. The true shape grows flatter under load and kappa falls by a
 * tenth or two; with kappa held, a greater pressure or impulse never bends the lite less. docs/methods.md says what it
 * is worth. The coordinate along the curve is y = ln(1 + R/unit), in which the plate's table is smooth. */
#include "blast/blast_internal.h"

#include "tables_data.h"

#include <string.h>

static const char MODEL[] = "one degree of freedom on the plate's static curve", MASS[] = "plies by minimum thickness";
static const char SHORT[] =
    "the static load of the standard's short duration, 3 s: the type factors of heat-treated glass are stated for it, "
    "and the strength that glass gains under a pulse of milliseconds is left out, on the safe side";
static const char ALONE[] =
    "the inner pane takes the whole load by itself; outer panes and gas neither share it nor add "
    "mass";

/* The static curve --------------------------------------------------------------------------------------------------
 */

/* The cubic through the two nodes with their slopes: value, and derivative over y. */
struct reading {
    double value, slope;
};
static struct reading read(const double *values, const double *slopes, size_t i, double t, double step)
{
    const double a = values[i], b = values[i + 1], p = slopes[i] * step, q = slopes[i + 1] * step;
    const double c = 3 * (b - a) - 2 * p - q, d = 2 * (a - b) + p + q;
    return (struct reading){a + t * (p + t * (c + t * d)), (p + t * (2 * c + 3 * t * d)) / step};
}

struct blast_state gw_blast_state_at(const struct gw_blast_curve *c, double y)
{
    const double at = fmin(fmax(y / c->step, 0), GW_BLAST_NODES - 1);
    const size_t i = at < GW_BLAST_NODES - 2 ? (size_t)at : GW_BLAST_NODES - 2;
    const struct reading compliance = read(c->compliance, c->compliance_slope, i, at - (double)i, c->step);
    const double e = exp(y), per_pressure = exp(compliance.value), resistance = c->unit * (e - 1);
    return (struct blast_state){.resistance = resistance,
                                .mean = resistance * per_pressure,
                                .mean_rate = per_pressure * (c->unit * e + resistance * compliance.slope)};
}

double gw_blast_energy_at(const struct gw_blast_curve *c, double y)
{
    const size_t most = GW_BLAST_NODES - 2, below = (size_t)(y / c->step), i = below < most ? below : most;
    return c->energy[i] + gw_blast_energy_between(c, (double)i * c->step, y);
}

/* Integral of R dv by Gauss's rule of three points. */
double gw_blast_energy_between(const struct gw_blast_curve *c, double from, double to)
{
    const double place = sqrt(0.6), half = (to - from) / 2, middle = (from + to) / 2;
    const double places[] = {-place, 0, place}, weights[] = {5.0 / 9, 8.0 / 9, 5.0 / 9};
    double sum = 0;
    for (int k = 0; k < 3; k++) {
        const struct blast_state s = gw_blast_state_at(c, middle + half * places[k]);
        sum += weights[k] * s.resistance * s.mean_rate;
    }
    return sum * half;
}

double gw_blast_coordinate(const struct gw_blast_curve *c, double resistance) { return log1p(resistance / c->unit); }

/* Derivatives at equal steps from five values. */
static void find_slopes(double *out, const double *values, double step)
{
    enum { N = GW_BLAST_NODES };
    static const double rules[3][5] = {{-25, 48, -36, 16, -3}, {-3, -10, 18, -6, 1}, {1, -8, 0, 8, -1}};
    for (int i = 0; i < N; i++) {
        const int below = i, above = N - 1 - i, rule = below < 2 ? below : above < 2 ? above : 2;
        double sum = 0;
        for (int k = 0; k < 5; k++) {
            const int mirrored = above < 2 && below >= 2 ? N - 1 - k : below < 2 ? k : i - 2 + k;
            sum += rules[rule][k] * values[mirrored];
        }
        out[i] = (above < 2 && below >= 2 ? -sum : sum) / (12 * step);
    }
}

static struct gw_plate_case plate_case(const struct gw_blast_curve *c, double pressure, unsigned want)
{
    return (struct gw_plate_case){.width = c->width,
                                  .height = c->height,
                                  .thickness = c->thickness,
                                  .pressure = pressure,
                                  .elastic_modulus = GW_ABSENT,
                                  .poissons_ratio = GW_ABSENT,
                                  .terms = GW_NO_INTEGER,
                                  .want = want};
}

/* Ratios to the pressure have a limit at none; so far below q* = 1 they are there. */
static const double NO_LOAD = 1e-6;

static enum gw_status find_nodes(struct gw_blast_curve *c, struct gw_engine *engine)
{
    const struct gw_plate_response_range *range = &engine->tables->plate_response_range[0];
    const double hair = 1e-12, greatest = c->unit / range->load_scale * range->q_star * (1 - hair);
    c->end = log1p(greatest / c->unit);
    c->step = c->end / (GW_BLAST_NODES - 1);
    for (int i = 0; i < GW_BLAST_NODES; i++) {
        struct gw_plate_result plate;
        const double pressure = fmin(greatest, c->unit * fmax(NO_LOAD, expm1(i * c->step)));
        const struct gw_plate_case in = plate_case(c, pressure, GW_PLATE_MEAN);
        const enum gw_status status = gw_plate(&plate, &in, engine);
        if (status) return status;
        c->compliance[i] = log(plate.mean_deflection / pressure);
    }
    find_slopes(c->compliance_slope, c->compliance, c->step);
    c->energy[0] = 0;
    for (int i = 1; i < GW_BLAST_NODES; i++)
        c->energy[i] = c->energy[i - 1] + gw_blast_energy_between(c, (i - 1) * c->step, i * c->step);
    return GW_OK;
}

/* The unit: resistance at q* = load_scale of the plate's table. */
static enum gw_status find_unit(struct gw_blast_curve *c, struct gw_engine *engine)
{
    struct gw_plate_result plate;
    const struct gw_plate_case in = plate_case(c, 1, GW_PLATE_MEAN);
    const enum gw_status status = gw_plate(&plate, &in, engine);
    if (!status) c->unit = engine->tables->plate_response_range[0].load_scale / plate.q_star;
    return status;
}

static enum gw_status find_mass(double *out, const struct gw_pane *pane, struct gw_engine *engine)
{
    const struct gw_blast_glass *glass = GW_USE(engine, &engine->tables->blast_glass[0]);
    double thickness = 0;
    for (int i = 0; i < pane->n_plies; i++) {
        double minimum;
        const enum gw_status status = gw_glass_minimum(&minimum, pane->plies[i].nominal, engine);
        if (status) return status;
        thickness += minimum;
    }
    *out = glass->density * thickness;
    GW_STEP(engine, "m", GW_RATIO, *out, MASS, "rho*t", {"rho", glass->density, GW_RATIO}, {"t", thickness, GW_RATIO});
    return GW_OK;
}

static double pane_thickness(const struct gw_pane *pane, struct gw_engine *engine)
{
    double sum = 0, minimum;
    for (int i = 0; i < pane->n_plies; i++)
        if (gw_glass_minimum(&minimum, pane->plies[i].nominal, engine) == GW_OK) sum += minimum;
    return sum;
}

/* An impulse taken up by the outer panes and passed on by the gas moves the inner one this many times as fast as the
 * impulse on it alone would: two masses that meet elastically. */
static double passed_on(const struct gw_make_up *unit, struct gw_engine *engine)
{
    const int inner = unit->n_panes - 1;
    const double own = pane_thickness(&unit->panes[inner], engine);
    double outer = 0;
    for (int i = 0; i < inner; i++) outer += pane_thickness(&unit->panes[i], engine);
    return 2 * own / (own + outer);
}

/* The pane that takes the load, as a lite of its own. */
static enum gw_status choose_pane(struct gw_lite *out, struct gw_blast_curve *c, const struct gw_lite *in,
                                  bool inner_alone, struct gw_engine *engine)
{
    const struct gw_make_up *m = &in->make_up;
    *out = *in;
    if (in->edges != 4 && in->edges != 0)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "support", "the response is that of lites on four edges");
    if (m->n_panes == 1) return GW_OK;
    if (!inner_alone)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers",
                         "panes coupled by the gas of a cavity are not covered; with 'unit: inner_alone' the inner "
                         "pane takes the whole load by itself");
    c->inner_alone = true;
    c->passed_on = passed_on(m, engine);
    out->make_up = (struct gw_make_up){.panes = {m->panes[m->n_panes - 1]}, .n_panes = 1};
    out->climate = false;
    gw_trace_note(engine, "pane", MODEL, ALONE);
    return GW_OK;
}

static enum gw_status find_capacity(struct gw_blast_curve *c, const struct gw_lite *lite, struct gw_engine *engine)
{
    struct gw_lite_result result;
    const struct gw_lite_load load = {"blast", GW_ABSENT, GW_ABSENT};
    const enum gw_status status = gw_lite_assess(&result, lite, &load, engine);
    if (status) return status;
    c->capacity = result.resistance;
    gw_trace_found(engine, "R_c", GW_PRESSURE, c->capacity, MODEL, SHORT, NULL, 0);
    c->n_notes = result.n_notes;
    memcpy(c->notes, result.notes, sizeof c->notes);
    c->thickness = result.panes[0].principles.deflection_thickness;
    c->governing = result.governing == GW_ROUTE_STANDARD ? "standard's factors" : "first principles";
    return GW_OK;
}

/* Navier's double series of the small deflection under uniform pressure: w_mn sin(m pi x/a) sin(n pi y/b), m and n odd,
 * whatever Poisson's ratio. */
static void find_shape(struct gw_blast_curve *c, struct gw_engine *engine)
{
    enum { TERMS = 61 }; /* falls with the sixth power of m and n */
    const double pi = acos(-1), aspect = c->width / c->height;
    double mean = 0, square = 0, center = 0;
    for (int m = 1; m <= TERMS; m += 2)
        for (int n = 1; n <= TERMS; n += 2) {
            const double waves = m * m / aspect + n * n * aspect, w = 1 / (m * n * waves * waves);
            mean += 4 * w / (pi * pi * m * n);
            square += w * w / 4;
            center += (m + n) % 4 == 2 ? w : -w;
        }
    c->motion = square / (mean * mean);
    c->load_mass_factor = c->motion * mean / center;
    static const char SERIES[] = "small deflection under uniform pressure, by Navier's series";
    GW_TRACE_SAY(engine, "kappa, K_L", MODEL,
                 "{} and {}: mean square of the deflected shape over the square of its mean, and mean over center: {}",
                 gw_of_number(c->motion, 6), gw_of_number(mean / center, 6), gw_of_text(SERIES));
    GW_STEP(engine, "K_LM", GW_RATIO, c->load_mass_factor, MODEL, "kappa*K_L", {"kappa", c->motion, GW_RATIO},
            {"K_L", mean / center, GW_RATIO});
}

static void find_period(struct gw_blast_curve *c, struct gw_engine *engine)
{
    const double stiffness = exp(-c->compliance[0]), pi = acos(-1);
    c->period = 2 * pi * sqrt(c->motion * c->mass / stiffness);
    /* In kg, m and s. */
    GW_STEP(engine, "T", GW_TIME, c->period, MODEL, "2*pi*sqrt(kappa*m/k)", {"pi", pi, GW_RATIO},
            {"kappa", c->motion, GW_RATIO}, {"m", c->mass, GW_RATIO}, {"k", stiffness, GW_RATIO});
}

enum gw_status gw_blast_curve(struct gw_blast_curve *out, const struct gw_lite *given, bool inner_alone,
                              struct gw_engine *engine)
{
    struct gw_trace *trace = engine->trace;
    struct gw_lite lite;
    *out = (struct gw_blast_curve){.width = given->width, .height = given->height, .passed_on = GW_ABSENT};
    enum gw_status status = choose_pane(&lite, out, given, inner_alone, engine);
    if (!status) status = find_capacity(out, &lite, engine);
    if (!status) status = find_mass(&out->mass, &lite.make_up.panes[0], engine);
    engine->trace = NULL; /* the curve is no derivation */
    if (!status) status = find_unit(out, engine);
    if (!status) status = find_nodes(out, engine);
    engine->trace = trace;
    if (status) return status;
    out->break_at = gw_blast_coordinate(out, out->capacity);
    find_shape(out, engine);
    find_period(out, engine);
    return GW_OK;
}

/* Motion ------------------------------------------------------------------------------------------------------------
 */

/* y along the curve, velocity of the mean deflection, work done so far per area. */
struct moving {
    double y, speed, work;
};

static double pressure_at(struct gw_blast_pair load, double t)
{
    return fmax(load.pressure * (1 - t / gw_blast_duration(load)), 0);
}

static struct moving rate(const struct gw_blast_curve *c, const struct moving *m, double pressure)
{
    const struct blast_state s = gw_blast_state_at(c, m->y);
    return (struct moving){m->speed / s.mean_rate, (pressure - s.resistance) / (c->motion * c->mass),
                           pressure * m->speed};
}

static struct moving ahead(const struct moving *m, const struct moving *k, double h)
{
    return (struct moving){m->y + h * k->y, m->speed + h * k->speed, m->work + h * k->work};
}

/* One step of Runge and Kutta's fourth order. */
static struct moving advance(const struct gw_blast_curve *c, const struct moving *m, struct gw_blast_pair load,
                             double t, double h)
{
    const double before = pressure_at(load, t), half = pressure_at(load, t + h / 2), after = pressure_at(load, t + h);
    const struct moving k1 = rate(c, m, before), at2 = ahead(m, &k1, h / 2), k2 = rate(c, &at2, half),
                        at3 = ahead(m, &k2, h / 2), k3 = rate(c, &at3, half), at4 = ahead(m, &k3, h),
                        k4 = rate(c, &at4, after);
    return (struct moving){m->y + h / 6 * (k1.y + 2 * k2.y + 2 * k3.y + k4.y),
                           m->speed + h / 6 * (k1.speed + 2 * k2.speed + 2 * k3.speed + k4.speed),
                           m->work + h / 6 * (k1.work + 2 * k2.work + 2 * k3.work + k4.work)};
}

/* Within a step at whose end the lite swings back: where it stands still. */
static double stand_still(const struct gw_blast_curve *c, const struct moving *m, struct gw_blast_pair load, double t,
                          double h)
{
    enum { ROUNDS = 60 };
    double low = 0, high = h, f_low = m->speed, f_high = advance(c, m, load, t, h).speed;
    for (int i = 0; i < ROUNDS && high - low > 1e-13 * h; i++) {
        const double by_chord = low + (high - low) * f_low / (f_low - f_high);
        const double middle = i % 3 == 2 ? (low + high) / 2 : by_chord, f = advance(c, m, load, t, middle).speed;
        if (f > 0) low = middle, f_low = f;
        else high = middle, f_high = f;
    }
    return (low + high) / 2;
}

/* To the first standstill, which is the largest deflection: afterwards the falling load does less work over the same
 * way back inward than it took out before. False when it lies beyond the curve or is not reached. */
struct run {
    struct moving peak;
    double time;
    bool beyond;
    int steps;
};
enum { STEPS_MOST = 4000000 };

static void run(struct run *out, const struct gw_blast_curve *c, struct gw_blast_pair load, double step)
{
    enum { LEAST_OF_PULSE = 8 };
    const double duration = gw_blast_duration(load), pulse_steps = fmax(ceil(duration / step), LEAST_OF_PULSE);
    struct moving m = {0, 0, 0};
    double t = 0;
    *out = (struct run){.steps = 0};
    while (out->steps++ < STEPS_MOST) {
        const bool pulse = out->steps <= pulse_steps;
        const double h = pulse ? duration / pulse_steps : step;
        const struct moving next = advance(c, &m, load, t, h);
        if (!(next.y <= c->end)) {
            out->beyond = true;
            return;
        }
        if (next.speed <= 0) {
            const double rest = stand_still(c, &m, load, t, h);
            out->peak = advance(c, &m, load, t, rest);
            out->time = t + rest;
            return;
        }
        m = next;
        t = pulse ? duration * out->steps / pulse_steps : t + h;
    }
}

/* The period of the oscillation whose amplitude is the deflection at rest under the peak: shorter than that of small
 * ones. */
static double shorter_period(const struct gw_blast_curve *c, double pressure)
{
    const struct blast_state s = gw_blast_state_at(c, fmin(gw_blast_coordinate(c, pressure), c->end));
    return 2 * acos(-1) * sqrt(c->motion * c->mass * s.mean / pressure);
}

/* Steps are halved until the resistance at the peak stays. */
static enum gw_status converge(struct run *out, const struct gw_blast_curve *c, struct gw_blast_pair load,
                               struct gw_engine *engine)
{
    enum { FIRST = 40, HALVINGS = 9 };
    const double enough = 1e-8;
    double step = shorter_period(c, load.pressure) / FIRST;
    struct run last;
    run(&last, c, load, step);
    for (int i = 0; i < HALVINGS; i++) {
        run(out, c, load, step /= 2);
        if (last.steps > STEPS_MOST || out->steps > STEPS_MOST) break;
        if (out->beyond && last.beyond) return GW_OK;
        const double now = expm1(out->peak.y), before = expm1(last.peak.y);
        if (!out->beyond && !last.beyond && fabs(now - before) <= enough * now) return GW_OK;
        last = *out;
    }
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "impulse", "the steps in time did not converge");
}

static double residual(const struct gw_blast_curve *c, const struct run *r)
{
    return (r->peak.work - gw_blast_energy_at(c, r->peak.y)) / r->peak.work;
}

enum gw_status gw_blast_peak(double *y, const struct gw_blast_curve *c, struct gw_blast_pair load,
                             struct gw_engine *engine)
{
    struct run r;
    const enum gw_status status = converge(&r, c, load, engine);
    if (!status) *y = r.beyond ? INFINITY : r.peak.y;
    return status;
}

static enum gw_status check_load(struct gw_blast_pair load, struct gw_engine *engine)
{
    if (!gw_given(load.pressure)) return gw_refuse(engine, GW_MISSING, "pressure", "peak pressure is needed");
    if (!gw_given(load.impulse)) return gw_refuse(engine, GW_MISSING, "impulse", "impulse is needed");
    if (!(load.pressure > 0 && isfinite(load.pressure)))
        return gw_refuse(engine, GW_BAD_VALUE, "pressure", "must be above zero");
    if (!(load.impulse > 0 && isfinite(load.impulse)))
        return gw_refuse(engine, GW_BAD_VALUE, "impulse", "must be above zero");
    return GW_OK;
}

static enum gw_status beyond(struct gw_blast_response *out, const struct gw_blast_curve *c, struct gw_engine *engine)
{
    if (c->break_at > c->end)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "impulse",
                         "the lite bends further than the plate's solution reaches, and its strength lies there too");
    *out = (struct gw_blast_response){GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT, true, GW_ABSENT, 0};
    gw_trace_note(engine, "R_max", MODEL, "beyond the plate's solution, and so beyond R_c: the glass breaks");
    return GW_OK;
}

static void trace_response(const struct gw_blast_response *r, const struct gw_blast_curve *c, struct gw_blast_pair load,
                           struct gw_engine *engine)
{
    /* psi and psi-ms do not cancel to seconds: the numbers are SI. */
    GW_STEP(engine, "t_d", GW_TIME, gw_blast_duration(load), "triangular pulse", "2*I/P", {"I", load.impulse, GW_RATIO},
            {"P", load.pressure, GW_RATIO});
    GW_FOUND(engine, "R_max", GW_PRESSURE, r->equivalent, MODEL,
             "the static pressure that bends the lite as far as the pulse does, by steps in time, halved until it "
             "stays",
             {"T", c->period, GW_TIME}, {"t_d", gw_blast_duration(load), GW_TIME});
    GW_STEP(engine, "load_factor", GW_RATIO, r->load_factor, MODEL, "R_max/P", {"R_max", r->equivalent, GW_PRESSURE},
            {"P", load.pressure, GW_PRESSURE});
    GW_STEP(engine, "use", GW_RATIO, r->use, MODEL, "R_max/R_c", {"R_max", r->equivalent, GW_PRESSURE},
            {"R_c", c->capacity, GW_PRESSURE});
}

enum gw_status gw_blast_respond(struct gw_blast_response *out, const struct gw_blast_curve *c,
                                struct gw_blast_pair load, struct gw_engine *engine)
{
    struct gw_trace *trace = engine->trace;
    struct gw_plate_result plate;
    struct run r;
    enum gw_status status = check_load(load, engine);
    if (!status) status = converge(&r, c, load, engine);
    if (status) return status;
    if (r.beyond) return beyond(out, c, engine);
    *out = (struct gw_blast_response){.equivalent = c->unit * expm1(r.peak.y), .time = r.time, .steps = r.steps};
    out->load_factor = out->equivalent / load.pressure;
    out->use = out->equivalent / c->capacity;
    out->breaks = out->use >= 1;
    out->energy_residual = residual(c, &r);
    const double balanced = 1e-5;
    if (!(fabs(out->energy_residual) <= balanced))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "impulse", "work and strain energy do not balance");
    const struct gw_plate_case bent = plate_case(c, out->equivalent, GW_PLATE_DEFLECTION);
    engine->trace = NULL;
    status = gw_plate(&plate, &bent, engine);
    engine->trace = trace;
    if (status) return status;
    out->deflection = plate.deflection;
    trace_response(out, c, load, engine);
    return GW_OK;
}
