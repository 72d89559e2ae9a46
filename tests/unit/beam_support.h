/* Beams with everything at multiples of a grid's step, drawn at random, for the tests of beams and members. */
#ifndef GALEWARD_TESTS_BEAM_SUPPORT_H
#define GALEWARD_TESTS_BEAM_SUPPORT_H

#include "support.h"

#include "galeward/member.h"

enum { GRID = 24, MOST = 8 };

struct sample {
    struct gw_beam beam;
    double supports[MOST], clamps[MOST], hinges[MOST];
    struct gw_beam_load loads[2 * MOST];
    struct gw_beam_segment segments[MOST];
};

static inline double step_of(const struct sample *s) { return s->beam.length / GRID; }

static inline bool holds(const double *list, size_t n, double x)
{
    for (size_t i = 0; i < n; i++)
        if (fabs(list[i] - x) < 1e-9) return true;
    return false;
}

static inline struct gw_beam_load any_load(double step)
{
    const int kind = pick(4), from = pick(GRID), to = from + 1 + pick(GRID - from);
    if (kind == 0) return (struct gw_beam_load){GW_BEAM_FORCE, from * step, 0, draw(-700, 2300), 0};
    if (kind == 1) return (struct gw_beam_load){GW_BEAM_COUPLE, from * step, 0, draw(-900, 900), 0};
    return (struct gw_beam_load){GW_BEAM_SPREAD, from * step, to * step, draw(-300, 1700), draw(-300, 1700)};
}

static inline void any_places(struct sample *s)
{
    struct gw_beam *b = &s->beam;
    const double step = step_of(s);
    const int supports = 1 + pick(5), hinges = pick(4);
    for (int i = 0; i <= GRID; i++) {
        const double x = i * step;
        const bool end = i == 0 || i == GRID;
        if (draw(0, 1) < supports / (double)GRID || (end && pick(2))) {
            if (pick(4) == 0 && b->n_clamps < MOST) s->clamps[b->n_clamps++] = x;
            else if (b->n_supports < MOST) s->supports[b->n_supports++] = x;
        }
        if (!end && draw(0, 1) < hinges / (double)GRID && b->n_hinges < MOST && !holds(s->clamps, b->n_clamps, x))
            s->hinges[b->n_hinges++] = x;
    }
}

static inline void any_loads(struct sample *s)
{
    const int n = 1 + pick(6);
    for (int i = 0; i < n; i++) {
        const struct gw_beam_load load = any_load(step_of(s));
        const bool bad = load.kind == GW_BEAM_COUPLE && holds(s->hinges, s->beam.n_hinges, load.from);
        if (!bad) s->loads[s->beam.n_loads++] = load;
    }
}

static inline void any_segments(struct sample *s)
{
    const int n = 1 + pick(3);
    for (int i = 0, at = 0; i < n && at < GRID; i++) {
        at = i + 1 == n ? GRID : at + 1 + pick(GRID - at);
        s->segments[s->beam.n_segments++] =
            (struct gw_beam_segment){at * step_of(s), draw(40e9, 210e9), draw(5e-7, 9e-6)};
    }
}

static inline void own_lists(struct sample *s)
{
    s->beam.supports = s->supports;
    s->beam.clamps = s->clamps;
    s->beam.hinges = s->hinges;
    s->beam.loads = s->loads;
    s->beam.segments = s->segments;
}

/* May be unstable, or without support. */
static inline void any_beam(struct sample *s)
{
    memset(s, 0, sizeof *s);
    s->beam.length = draw(2, 17);
    own_lists(s);
    any_places(s);
    any_loads(s);
    any_segments(s);
}

static inline enum gw_status solve(struct gw_beam_result *out, const struct gw_beam *beam, struct gw_engine *engine)
{
    gw_engine_init(engine, gw_tables_standard(), NULL);
    return gw_beam_solve(out, beam, engine);
}

static inline void must_solve(struct gw_beam_result *out, const struct gw_beam *beam)
{
    struct gw_engine engine;
    enum gw_status status = solve(out, beam, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
}

/* The next stable one. */
static inline void any_stable(struct sample *s, struct gw_beam_result *out)
{
    struct gw_engine engine;
    do any_beam(s);
    while (solve(out, &s->beam, &engine) != GW_OK);
}

static inline double largest_moment(const struct gw_beam_result *r)
{
    return fmax(r->moment_max.value, -r->moment_min.value);
}

static inline double stiffness(const struct sample *s, double x)
{
    for (size_t i = 0; i < s->beam.n_segments; i++)
        if (x < s->segments[i].to) return s->segments[i].elastic_modulus * s->segments[i].inertia;
    return 0;
}

#endif
