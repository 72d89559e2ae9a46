/* Sealed cavities: one gas-law equation each, solved by Newton's method on the nonlinear lites. */
#include "galeward/cavity.h"

static const char LAW[] = "gas law of the sealed cavity";

/* A lite under its net load: volume swept inward, and how fast that grows with the load. */
struct lite {
    double net, volume, compliance;
};

struct state {
    const struct gw_cavity *in;
    struct gw_engine *engine;
    int n; /* cavities */
    double gauge[GW_CAVITY_LITES - 1], residual[GW_CAVITY_LITES - 1];
    struct lite lites[GW_CAVITY_LITES];
};

static enum gw_status bend(const struct state *s, int i, double net, unsigned want, struct gw_plate_result *plate)
{
    const struct gw_plate_case lite = {.width = s->in->width,
                                       .height = s->in->height,
                                       .thickness = s->in->thickness[i],
                                       .pressure = fabs(net),
                                       .elastic_modulus = GW_ABSENT,
                                       .poissons_ratio = GW_ABSENT,
                                       .terms = GW_NO_INTEGER,
                                       .want = want};
    return gw_plate(plate, &lite, s->engine);
}

static enum gw_status swept(const struct state *s, int i, double net, double *volume)
{
    struct gw_plate_result plate;
    enum gw_status status = bend(s, i, net, GW_PLATE_MEAN, &plate);
    *volume = copysign(plate.volume, net);
    return status;
}

/* Net load on lite i: what presses on its outer face less what presses back. */
static double net_load(const struct state *s, int i)
{
    double outside = i ? s->gauge[i - 1] : s->in->pressure_outdoor;
    double behind = i < s->n ? s->gauge[i] : -s->in->pressure_indoor;
    return outside - behind;
}

static enum gw_status bend_all(struct state *s)
{
    for (int i = 0; i <= s->n; i++) {
        struct lite *l = &s->lites[i];
        double moved;
        l->net = net_load(s, i);
        double step = fmax(1, fabs(l->net) / 1000); /* Pa: small beside the load, large beside rounding */
        enum gw_status status = swept(s, i, l->net, &l->volume);
        if (status == GW_OK) status = swept(s, i, l->net + step, &moved);
        if (status != GW_OK) return status;
        l->compliance = (moved - l->volume) / step;
    }
    return GW_OK;
}

static double sealed_volume(const struct state *s, int i) { return s->in->width * s->in->height * s->in->gaps[i]; }

static double volume_now(const struct state *s, int i)
{
    return sealed_volume(s, i) - s->lites[i].volume + s->lites[i + 1].volume;
}

/* (p V/T) / (p_s V_s/T_s) - 1 of each cavity; the largest of them. */
static double find_residuals(struct state *s)
{
    const struct gw_cavity *in = s->in;
    double worst = 0;
    for (int i = 0; i < s->n; i++) {
        double filled = in->sealing_pressure * sealed_volume(s, i) / in->sealing_temperature;
        s->residual[i] = (in->atmospheric_pressure + s->gauge[i]) * volume_now(s, i) / in->temperature / filled - 1;
        worst = fmax(worst, fabs(s->residual[i]));
    }
    return worst;
}

/* Change of residual i with gauge k, from the lites' compliances. */
static double slope(const struct state *s, int i, int k)
{
    const struct gw_cavity *in = s->in;
    double scale = in->sealing_temperature / (in->sealing_pressure * sealed_volume(s, i) * in->temperature);
    double pressure = in->atmospheric_pressure + s->gauge[i];
    if (i == k) return scale * (volume_now(s, i) + pressure * (s->lites[i].compliance + s->lites[i + 1].compliance));
    return -scale * pressure * s->lites[i < k ? i + 1 : i].compliance;
}

static void newton_step(struct state *s)
{
    if (s->n == 1) {
        s->gauge[0] -= s->residual[0] / slope(s, 0, 0);
        return;
    }
    double a = slope(s, 0, 0), b = slope(s, 0, 1), c = slope(s, 1, 0), d = slope(s, 1, 1);
    double determinant = a * d - b * c, first = s->residual[0], second = s->residual[1];
    s->gauge[0] -= (d * first - b * second) / determinant;
    s->gauge[1] -= (a * second - c * first) / determinant;
}

static enum gw_status give(struct gw_cavity_result *out, const struct state *s)
{
    struct gw_plate_result plate;
    double applied = s->in->pressure_outdoor + s->in->pressure_indoor;
    for (int i = 0; i <= s->n; i++) {
        const struct lite *l = &s->lites[i];
        enum gw_status status = bend(s, i, l->net, GW_PLATE_DEFLECTION | GW_PLATE_STRESS, &plate);
        if (status != GW_OK) return status;
        if (i < s->n) out->gauge[i] = s->gauge[i];
        out->net[i] = l->net;
        out->deflection[i] = copysign(plate.deflection, l->net);
        out->stress_max[i] = plate.stress_max;
        out->share[i] = fabs(applied) > 0 ? l->net / applied : GW_ABSENT;
    }
    return GW_OK;
}

static void trace_cavities(const struct state *s)
{
    const struct gw_cavity *in = s->in;
    for (int i = 0; i < s->n; i++) {
        GW_STEP(s->engine, "V_cavity", GW_VOLUME, volume_now(s, i), LAW, "V_s-v_o+v_i",
                {"V_s", sealed_volume(s, i), GW_VOLUME}, {"v_o", s->lites[i].volume, GW_VOLUME},
                {"v_i", s->lites[i + 1].volume, GW_VOLUME});
        double p =
            in->sealing_pressure * sealed_volume(s, i) / in->sealing_temperature * in->temperature / volume_now(s, i);
        GW_STEP(s->engine, "p_cavity", GW_PRESSURE, p, LAW, "p_s*V_s/V_cavity*(T/T_s)",
                {"p_s|p_air", in->sealing_pressure, GW_PRESSURE}, {"V_s", sealed_volume(s, i), GW_VOLUME},
                {"V_cavity", volume_now(s, i), GW_VOLUME}, {"T", in->temperature, GW_RATIO},
                {"T_s", in->sealing_temperature, GW_RATIO});
        GW_FOUND(s->engine, "p_gauge", GW_PRESSURE, s->gauge[i], LAW,
                 "p_cavity less the atmosphere; it presses on both lites beside the cavity",
                 {"p_cavity", p, GW_PRESSURE});
    }
    for (int i = 0; i <= s->n; i++)
        GW_FOUND(s->engine, "q_net", GW_PRESSURE, fabs(s->lites[i].net), LAW,
                 "what is left on this lite of the wind and of the cavities beside it",
                 {"p_gauge", s->gauge[i ? i - 1 : 0], GW_PRESSURE},
                 {"p_gauge", s->gauge[i < s->n ? i : i - 1], GW_PRESSURE});
}

static enum gw_status check(const struct gw_cavity *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } positive[] = {{"width", in->width},
                    {"height", in->height},
                    {"gaps", in->gaps[0]},
                    {"gaps", in->n_lites == GW_CAVITY_LITES ? in->gaps[1] : in->gaps[0]},
                    {"atmospheric_pressure", in->atmospheric_pressure},
                    {"temperature", in->temperature},
                    {"sealing.atmospheric_pressure", in->sealing_pressure},
                    {"sealing.temperature", in->sealing_temperature}};
    if (in->n_lites < 2 || in->n_lites > GW_CAVITY_LITES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "lites", "two or three lites; here are {}",
                         gw_of_count(in->n_lites));
    for (size_t i = 0; i < sizeof positive / sizeof *positive; i++)
        if (!(positive[i].value > 0)) return gw_refuse(engine, GW_BAD_VALUE, positive[i].key, "must be above zero");
    return GW_OK;
}

enum gw_status gw_cavity_solve(struct gw_cavity_result *out, const struct gw_cavity *in, struct gw_engine *engine)
{
    enum { MOST_STEPS = 60 };
    const double enough = 1e-11;
    struct state s = {.in = in, .engine = engine, .n = in->n_lites - 1};
    struct gw_trace *trace = engine->trace;
    enum gw_status status = check(in, engine);
    if (status != GW_OK) return status;
    engine->trace = NULL; /* the search is not part of the derivation */
    for (int i = 0; i < s.n; i++) s.gauge[i] = (in->pressure_outdoor - in->pressure_indoor) / 2;
    for (out->iterations = 0; out->iterations < MOST_STEPS; out->iterations++) {
        status = bend_all(&s);
        if (status != GW_OK) break;
        out->residual = find_residuals(&s);
        if (out->residual < enough) break;
        newton_step(&s);
    }
    if (status == GW_OK && out->residual < enough) status = give(out, &s);
    engine->trace = trace;
    if (status != GW_OK) return status;
    if (!(out->residual < enough))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "gaps", "the cavity pressures did not converge in {} steps",
                         gw_of_count((long)MOST_STEPS));
    trace_cavities(&s);
    return GW_OK;
}
