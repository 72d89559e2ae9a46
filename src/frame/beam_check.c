/* What a beam must be before it is solved: in bounds, in order, and held so that it cannot move without bending. */
#include "frame/beam_internal.h"

/* Supports and hinges closer than this part of the length, but not one place, are a couple of forces in disguise: the
 * digits that the equations keep would not carry it. */
static const double NEAREST = 1e-4;

/* Tenths of a millimeter are fine enough for a message. */
static struct gw_value place(double x)
{
    struct gw_value value = gw_of_quantity(GW_LENGTH, round(x * 1e4) / 1e4);
    value.digits = 6;
    return value;
}

static enum gw_status positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

static enum gw_status count(const char *key, size_t n, size_t most, struct gw_engine *engine)
{
    if (n <= most) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, key, "{} {}; a beam takes at most {}", gw_of_count((long)n),
                     gw_of_text(key), gw_of_count((long)most));
}

static enum gw_status check_counts(const struct gw_beam *in, struct gw_engine *engine)
{
    enum gw_status status = count("supports", in->n_supports, GW_BEAM_SUPPORTS, engine);
    if (!status) status = count("clamps", in->n_clamps, GW_BEAM_SUPPORTS, engine);
    if (!status) status = count("hinges", in->n_hinges, GW_BEAM_HINGES, engine);
    if (!status) status = count("loads", in->n_loads, GW_BEAM_LOADS, engine);
    if (!status) status = count("segments", in->n_segments, GW_BEAM_SEGMENTS, engine);
    return status;
}

static bool on_beam(const struct gw_beam *in, double x)
{
    return x >= -GW_HAIR * in->length && x <= in->length * (1 + GW_HAIR);
}

static enum gw_status check_on_beam(const struct gw_beam *in, const char *key, double x, struct gw_engine *engine)
{
    if (on_beam(in, x)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{}: {} is not on the beam, which is {} long", gw_of_text(key),
                     place(x), place(in->length));
}

static enum gw_status check_places(const struct gw_beam *in, const char *key, const double *places, size_t n,
                                   struct gw_engine *engine)
{
    for (size_t i = 0; i < n; i++) {
        enum gw_status status = check_on_beam(in, key, places[i], engine);
        if (status) return status;
        if (i && (places[i] < places[i - 1] || beam_same(in, places[i], places[i - 1])))
            return gw_refuse(engine, GW_BAD_VALUE, key, "{} must rise along the beam: {} stands after {}",
                             gw_of_text(key), place(places[i]), place(places[i - 1]));
    }
    return GW_OK;
}

static bool among(const struct gw_beam *in, double x, const double *places, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (beam_same(in, x, places[i])) return true;
    return false;
}

static enum gw_status check_hinges(const struct gw_beam *in, struct gw_engine *engine)
{
    enum gw_status status = check_places(in, "hinges", in->hinges, in->n_hinges, engine);
    for (size_t i = 0; !status && i < in->n_hinges; i++) {
        const double x = in->hinges[i];
        if (beam_same(in, x, 0) || beam_same(in, x, in->length))
            return gw_refuse(engine, GW_BAD_VALUE, "hinges", "a hinge at an end of the beam joins nothing");
        if (among(in, x, in->clamps, in->n_clamps))
            return gw_refuse(engine, GW_BAD_VALUE, "hinges",
                             "a hinge and a clamp at {}: which side is held? Move the hinge to its side", place(x));
    }
    return status;
}

static enum gw_status check_segments(const struct gw_beam *in, struct gw_engine *engine)
{
    double before = 0;
    if (!in->n_segments) return gw_refuse(engine, GW_MISSING, "segments", "a beam needs a stiffness");
    for (size_t i = 0; i < in->n_segments; i++) {
        const struct gw_beam_segment *s = &in->segments[i];
        enum gw_status status = positive("elastic_modulus", s->elastic_modulus, engine);
        if (!status) status = positive("inertia", s->inertia, engine);
        if (!status) status = check_on_beam(in, "segments", s->to, engine);
        if (status) return status;
        if (!(s->to > before) || beam_same(in, s->to, before))
            return gw_refuse(engine, GW_BAD_VALUE, "segments", "segments must rise along the beam; one ends at {}",
                             place(s->to));
        before = s->to;
    }
    if (beam_same(in, before, in->length)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "segments", "the last segment ends at {}, the beam at {}", place(before),
                     place(in->length));
}

static enum gw_status check_load(const struct gw_beam *in, const struct gw_beam_load *load, struct gw_engine *engine)
{
    const bool spread = load->kind == GW_BEAM_SPREAD;
    if (!isfinite(load->start) || (spread && !isfinite(load->end)))
        return gw_refuse(engine, GW_BAD_VALUE, "loads", "a load must be a finite number");
    enum gw_status status = check_on_beam(in, "loads", load->from, engine);
    if (!status && spread) status = check_on_beam(in, "loads", load->to, engine);
    if (status) return status;
    if (spread && (!(load->to > load->from) || beam_same(in, load->to, load->from)))
        return gw_refuse(engine, GW_BAD_VALUE, "loads", "a spread load must end after it begins, at {}",
                         place(load->from));
    if (load->kind == GW_BEAM_COUPLE && among(in, load->from, in->hinges, in->n_hinges))
        return gw_refuse(engine, GW_BAD_VALUE, "loads",
                         "a couple on the hinge at {}: which side does it turn? Move it to that side",
                         place(load->from));
    return GW_OK;
}

enum gw_status gw_beam_check(const struct gw_beam *in, struct gw_engine *engine)
{
    enum gw_status status = positive("length", in->length, engine);
    if (!status) status = check_counts(in, engine);
    if (!status && in->n_supports + in->n_clamps == 0)
        status = gw_refuse(engine, GW_MISSING, "supports", "the beam has no support: nothing carries its load");
    if (!status) status = check_places(in, "supports", in->supports, in->n_supports, engine);
    if (!status) status = check_places(in, "clamps", in->clamps, in->n_clamps, engine);
    if (!status) status = check_hinges(in, engine);
    if (!status) status = check_segments(in, engine);
    for (size_t i = 0; !status && i < in->n_loads; i++) status = check_load(in, &in->loads[i], engine);
    return status;
}

/* A rigid part between two hinges turns about one point and is at rest with two. What a part at rest holds, its hinges
 * hold for the next part. On a straight beam a chain of parts that this leaves free can move: each has one freedom more
 * than points. */
struct part {
    size_t first, last; /* nodes */
    bool rests;
};

static size_t find_parts(struct part parts[BEAM_NODES], const struct beam_run *run)
{
    size_t n = 0, first = 0;
    for (size_t i = 1; i < run->n_nodes; i++) {
        if (!run->nodes[i].hinge && i + 1 < run->n_nodes) continue;
        parts[n++] = (struct part){.first = first, .last = i};
        first = i;
    }
    return n;
}

static bool held_enough(const struct beam_run *run, const struct part *part, const bool held[BEAM_NODES])
{
    size_t points = 0;
    for (size_t i = part->first; i <= part->last; i++) {
        points += held[i];
        if (run->nodes[i].clamp) return true;
    }
    return points >= 2;
}

static bool rest_more(const struct beam_run *run, struct part *parts, size_t n, bool held[BEAM_NODES])
{
    bool more = false;
    for (size_t i = 0; i < n; i++) {
        if (parts[i].rests || !held_enough(run, &parts[i], held)) continue;
        parts[i].rests = more = true;
        held[parts[i].first] = held[parts[i].last] = true;
    }
    return more;
}

static enum gw_status check_nearness(const struct beam_run *run)
{
    for (size_t i = 1; i < run->n_nodes; i++) {
        const double a = run->nodes[i - 1].at, b = run->nodes[i].at;
        if (b - a < NEAREST * run->in->length)
            return gw_refuse(run->engine, GW_OUTSIDE_METHOD, run->nodes[i].hinge ? "hinges" : "supports",
                             "supports, hinges and ends must be at least 1/10000 of the length apart; those at {} are "
                             "not: give a clamp instead, or one place",
                             place(b));
    }
    return GW_OK;
}

enum gw_status gw_beam_check_stable(const struct beam_run *run)
{
    struct part parts[BEAM_NODES];
    bool held[BEAM_NODES];
    enum gw_status status = check_nearness(run);
    if (status) return status;
    const size_t n = find_parts(parts, run);
    for (size_t i = 0; i < run->n_nodes; i++) held[i] = run->nodes[i].support;
    while (rest_more(run, parts, n, held)) continue;
    for (size_t i = 0; i < n; i++)
        if (!parts[i].rests)
            return gw_refuse(run->engine, GW_OUTSIDE_METHOD, run->in->n_hinges ? "hinges" : "supports",
                             "unstable: the part from {} to {} is held at fewer than two points and turns freely; "
                             "add a support, clamp one, or take out a hinge",
                             place(run->nodes[parts[i].first].at), place(run->nodes[parts[i].last].at));
    return GW_OK;
}
