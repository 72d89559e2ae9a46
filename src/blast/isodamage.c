/* Pairs of peak pressure and impulse under which the glass just breaks. */
#include "blast/blast_internal.h"

static enum gw_status check(const struct gw_blast_curve *c, struct gw_engine *engine)
{
    if (c->break_at <= c->end) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", "the strength of the lite lies beyond the plate's solution");
}

/* A long pulse: the work P v of a constant pressure is the strain energy. A short one: so is the kinetic energy that it
 * leaves, with the lite still flat. */
enum gw_status gw_blast_asymptotes(struct gw_blast_pair *out, const struct gw_blast_curve *c, struct gw_engine *engine)
{
    const enum gw_status status = check(c, engine);
    if (status) return status;
    const double energy = gw_blast_energy_at(c, c->break_at);
    out->pressure = energy / gw_blast_state_at(c, c->break_at).mean;
    out->impulse = sqrt(2 * c->motion * c->mass * energy);
    return GW_OK;
}

static struct gw_blast_pair pair_of(double pressure, double duration)
{
    return (struct gw_blast_pair){pressure, pressure * duration / 2};
}

/* Above zero where the glass breaks; grows with the pressure. */
static enum gw_status excess(double *out, const struct gw_blast_curve *c, double pressure, double duration,
                             struct gw_engine *engine)
{
    double y;
    const enum gw_status status = gw_blast_peak(&y, c, pair_of(pressure, duration), engine);
    if (!status) *out = log(expm1(fmin(y, c->end)) / expm1(c->break_at));
    return status;
}

/* Both asymptotes bound the pressure from below; their sum, not far above. */
enum gw_status gw_blast_breaking(struct gw_blast_pair *out, const struct gw_blast_curve *c, double duration,
                                 struct gw_engine *engine)
{
    enum { MOST_STEPS = 80 };
    const double wider = 1.3, enough = 1e-7;
    struct gw_blast_pair least;
    double f_low = 0, f_high = 0, f = 0;
    if (!(duration > 0 && isfinite(duration))) return gw_refuse(engine, GW_BAD_VALUE, "duration", "must be above zero");
    enum gw_status status = gw_blast_asymptotes(&least, c, engine);
    if (status) return status;
    double low = fmax(least.pressure, 2 * least.impulse / duration) * (1 - enough);
    double high = least.pressure + 2 * least.impulse / duration;
    status = excess(&f_low, c, low, duration, engine);
    if (!status) status = excess(&f_high, c, high, duration, engine);
    for (int i = 0; i < MOST_STEPS && !status && f_high < 0; i++) {
        low = high, f_low = f_high;
        status = excess(&f_high, c, high *= wider, duration, engine);
    }
    if (!status && f_low >= 0) high = low; /* on the asymptote, to the steps' error */
    for (int i = 0; i < MOST_STEPS && !status && high - low > enough * low; i++) {
        const double by_chord = low + (high - low) * f_low / (f_low - f_high);
        const double middle = i % 3 == 2 ? (low + high) / 2 : by_chord;
        status = excess(&f, c, middle, duration, engine);
        if (status) break;
        if (f < 0) low = middle, f_low = f;
        else high = middle, f_high = f;
        if (fabs(f) < enough / 10) low = high = middle;
    }
    if (!status) *out = pair_of(high, duration);
    return status;
}

enum gw_status gw_blast_isodamage(struct gw_blast_pair *out, size_t n, const struct gw_blast_curve *c, double shortest,
                                  double longest, struct gw_engine *engine)
{
    enum gw_status status = GW_OK;
    for (size_t i = 0; i < n && !status; i++) {
        const double part = (double)i / (double)(n - 1);
        status = gw_blast_breaking(&out[i], c, shortest * pow(longest / shortest, part), engine);
    }
    return status;
}
