/* Newton steps at a load, and the way to it. */
#include "glass/glass_internal.h"

#include <string.h>

/* Settings of the method. */
enum { STEPS_MOST = 25, CUTS_MOST = 40, COARSE_TERMS = 6 };
static const double GOOD = 1e-9, GOOD_ENOUGH_ON_THE_WAY = 1e-3; /* relative residual */
static const double FIRST_LOAD = 60, LOAD_RATIO = 6, LEAST_RATIO = 1.02;
static const double GROWTH = 0.45; /* deflection grows about as this power of a large load */

static void keep(double *to, const double *from, int n) { memcpy(to, from, (size_t)n * sizeof *to); }

static bool newton(struct plate_system *s, double q, double good)
{
    double best = INFINITY;
    for (int step = 0; step < STEPS_MOST; step++) {
        gw_plate_couple(s);
        gw_plate_residual(s, q);
        if (s->error <= good) return true;
        if (!(s->error < 1e6) || (step > 6 && !(s->error < best / 2))) return s->error <= good;
        if (s->error < best) best = s->error;
        if (!gw_plate_tangent(s)) return false;
        keep(s->step, s->residual, s->unknowns);
        gw_plate_forward(s->tangent, s->step, s->unknowns, 1);
        gw_plate_backward(s->tangent, s->step, s->unknowns);
        for (int i = 0; i < s->unknowns; i++) s->w[i] -= s->step[i];
        s->iterations++;
    }
    return false;
}

/* The linear solution, brought to the amplitude s that balances s k + 2 s^3 g = q k in its own shape. */
static void first_guess(struct plate_system *s, double q)
{
    const int n = s->unknowns;
    double linear = 0, cubic = 0, amplitude = q;
    keep(s->tangent, s->stiffness, n * n);
    keep(s->w, s->load, n);
    gw_plate_factor(s->tangent, n);
    gw_plate_forward(s->tangent, s->w, n, 1);
    gw_plate_backward(s->tangent, s->w, n);
    gw_plate_couple(s);
    for (int i = 0; i < n; i++) {
        double pull = 0;
        for (int k = 0; k < n; k++) pull -= s->f[k] * s->coupling[k * n + i];
        linear += s->w[i] * s->load[i];
        cubic += s->w[i] * pull;
    }
    for (int i = 0; i < 60; i++)
        amplitude -= (amplitude * linear + amplitude * amplitude * amplitude * cubic - q * linear) /
                     (linear + 3 * amplitude * amplitude * cubic);
    for (int i = 0; i < n; i++) s->w[i] *= amplitude;
}

/* From load q to q * ratio along the tangent in ln q; the tangent's factor is that of the last step. */
static void predict(struct plate_system *s, double q, double ratio)
{
    keep(s->step, s->load, s->unknowns);
    gw_plate_forward(s->tangent, s->step, s->unknowns, 1);
    gw_plate_backward(s->tangent, s->step, s->unknowns);
    double reach = q * (pow(ratio, GROWTH) - 1) / GROWTH;
    for (int i = 0; i < s->unknowns; i++) s->w[i] += reach * s->step[i];
}

static bool climb(struct plate_system *s, double target)
{
    double at = fmin(target, FIRST_LOAD), ratio = LOAD_RATIO;
    first_guess(s, at);
    if (!newton(s, at, at < target ? GOOD_ENOUGH_ON_THE_WAY : GOOD)) return false;
    for (int cut = 0; at < target && cut < CUTS_MOST; cut++) {
        double next = fmin(target, at * ratio);
        keep(s->kept, s->w, s->unknowns);
        predict(s, at, next / at);
        if (newton(s, next, GOOD_ENOUGH_ON_THE_WAY)) {
            at = next;
            continue;
        }
        ratio = sqrt(ratio);
        keep(s->w, s->kept, s->unknowns);
        if (ratio < LEAST_RATIO || !newton(s, at, GOOD_ENOUGH_ON_THE_WAY)) return false;
    }
    return at >= target;
}

/* The basis is hierarchical: more terms continue from fewer. */
static void refine(struct plate_system *s, const struct gw_plate_problem *in, int n)
{
    const int was = s->n;
    const double bending = 1 / (12 * (1 - in->poissons_ratio * in->poissons_ratio));
    if (was) keep(s->kept, s->w, was * was);
    gw_plate_assemble(s, n, in->aspect, in->straight_edges);
    for (int i = 0; i < s->unknowns * s->unknowns; i++) s->stiffness[i] *= bending;
    memset(s->w, 0, sizeof s->w);
    for (int a = 0; a < was; a++)
        for (int b = 0; b < was; b++) s->w[a * n + b] = s->kept[a * was + b];
}

bool gw_plate_converge(struct plate_system *s, const struct gw_plate_problem *in, int terms)
{
    const bool coarse_first = terms > COARSE_TERMS && in->q_star > FIRST_LOAD;
    s->n = 0;
    s->iterations = 0;
    refine(s, in, coarse_first ? COARSE_TERMS : terms);
    if (!climb(s, in->q_star)) return false;
    if (coarse_first) refine(s, in, terms);
    return newton(s, in->q_star, GOOD);
}
