/* The derivation of a beam: the handbook's formulas where it is one of the handbook's beams, else sums of forces and
 * moments along it. */
#include "frame/beam_internal.h"

#include <stdint.h>

static const char STATICS[] = "statics", BENDING[] = "bending, E I y'' = -M", HANDBOOK[] = "beam formulas";

#define Q(name, value)                                                                                                 \
    {                                                                                                                  \
        name, value, GW_LINE_LOAD                                                                                      \
    }
#define L(name, value)                                                                                                 \
    {                                                                                                                  \
        name, value, GW_BEAM_LENGTH                                                                                    \
    }
#define P(name, value)                                                                                                 \
    {                                                                                                                  \
        name, value, GW_FORCE                                                                                          \
    }
#define M(name, value)                                                                                                 \
    {                                                                                                                  \
        name, value, GW_MOMENT                                                                                         \
    }

/* The handbook's beams
 * ---------------------------------------------------------------------------------------------------
 */

/* Formulas in the line load w, its length L, ramps a, a force P in the middle, and the stiffness; NULL: not from here.
 */
struct form {
    const char *name, *reaction, *moment, *deflection;
    const char *second, *sagging; /* two spans: the middle reaction, the moment in the spans */
};
static const struct form UNIFORM = {"simple span, uniform load", "w*L/2", "w*L^2/8", "5*w*L^4/(384*E*I)", NULL, NULL};
static const struct form TRIANGLE = {
    "simple span, load rising to the middle", "w*L/4", "w*L^2/12", "w*L^4/(120*E*I)", NULL, NULL};
static const struct form TRAPEZOID = {"simple span, load with equal ramps at both ends",
                                      "w*(L-a)/2",
                                      "w*L^2/24*(3-4*a^2/L^2)",
                                      "w*(5*L^2-4*a^2)^2/(1920*E*I)",
                                      NULL,
                                      NULL};
static const struct form MIDDLE = {"simple span, force in the middle", "P/2", "P*L/4", "P*L^3/(48*E*I)", NULL, NULL};
static const struct form CANTILEVER = {"cantilever, uniform load", "w*L", "-w*L^2/2", "w*L^4/(8*E*I)", NULL, NULL};
static const struct form TWO_SPANS = {
    "two equal spans, uniform load", "3*w*L/8", "-w*L^2/8", NULL, "10*w*L/8", "9*w*L^2/128"};

static bool same(double a, double b) { return fabs(a - b) <= GW_HAIR * fmax(fabs(a), fabs(b)); }
static bool none(double value) { return !(fabs(value) > 0); }

static bool uniform(const struct gw_beam_piece *piece)
{
    return same(piece->load_from, piece->load_to) && !none(piece->load_from);
}

static bool unloaded(const struct gw_beam_piece *piece) { return none(piece->load_from) && none(piece->load_to); }

static bool as_long(const struct gw_beam_piece *a, const struct gw_beam_piece *b)
{
    return same(beam_piece_length(a), beam_piece_length(b));
}

static bool no_couples(const struct beam_run *run)
{
    for (size_t i = 0; i <= run->out->n_pieces; i++)
        if (!none(run->couples[i])) return false;
    return true;
}

/* No forces but on the ends. */
static bool only_spread(const struct beam_run *run)
{
    for (size_t i = 1; i < run->out->n_pieces; i++)
        if (!none(run->forces[i])) return false;
    return true;
}

static bool ramps(const struct gw_beam_piece *first, const struct gw_beam_piece *last)
{
    return none(first->load_from) && none(last->load_to) && same(first->load_to, last->load_from) &&
           as_long(first, last) && !none(first->load_to);
}

static const struct form *simple_form(const struct beam_run *run)
{
    const struct gw_beam_piece *p = run->out->pieces;
    const size_t n = run->out->n_pieces;
    const bool bare_ends = none(run->forces[0]) && none(run->forces[n]);
    if (n == 2 && unloaded(&p[0]) && unloaded(&p[1]) && as_long(&p[0], &p[1]) && bare_ends) return &MIDDLE;
    if (!only_spread(run)) return NULL;
    if (n == 1 && uniform(&p[0])) return &UNIFORM;
    if (n == 2 && ramps(&p[0], &p[1])) return &TRIANGLE;
    return n == 3 && ramps(&p[0], &p[2]) && uniform(&p[1]) && same(p[0].load_to, p[1].load_from) ? &TRAPEZOID : NULL;
}

static const struct form *cantilever_form(const struct beam_run *run)
{
    const bool plain = run->out->n_pieces == 1 && uniform(&run->out->pieces[0]);
    return plain && none(run->forces[0]) && none(run->forces[1]) ? &CANTILEVER : NULL;
}

static const struct form *two_span_form(const struct beam_run *run)
{
    const struct gw_beam_piece *p = run->out->pieces;
    const bool plain = run->out->n_pieces == 2 && only_spread(run) && uniform(&p[0]) && uniform(&p[1]);
    return plain && same(p[0].load_from, p[1].load_from) && as_long(&p[0], &p[1]) ? &TWO_SPANS : NULL;
}

static const struct form *form_of(const struct beam_run *run)
{
    size_t supports = 0, clamps = 0;
    for (size_t i = 0; i < run->n_nodes; i++) {
        supports += run->nodes[i].support;
        clamps += run->nodes[i].clamp;
    }
    if (run->in->n_segments > 1 || run->in->n_hinges || !no_couples(run)) return NULL;
    if (run->n_nodes == 2 && supports == 1) return cantilever_form(run);
    if (clamps || supports != run->n_nodes) return NULL;
    return run->n_nodes == 2 ? simple_form(run) : run->n_nodes == 3 ? two_span_form(run) : NULL;
}

static void form_step(const struct beam_run *run, const struct form *form, const char *symbol, enum gw_dim dim,
                      double value, const char *formula)
{
    const struct gw_beam_piece *first = &run->out->pieces[0];
    const double length = form == &TWO_SPANS ? first->to : run->in->length;
    if (!formula) return;
    GW_STEP(run->engine, symbol, dim, value, HANDBOOK, formula, Q("w", first->load_to), P("P", run->forces[1]),
            L("L", length), L("a", first->to), {"E", run->in->segments[0].elastic_modulus, GW_BEAM_STRESS},
            {"I", run->in->segments[0].inertia, GW_BEAM_INERTIA});
}

static void handbook_steps(const struct beam_run *run, const struct form *form)
{
    const struct gw_beam_result *out = run->out;
    const bool sags = fabs(out->moment_max.value) > fabs(out->moment_min.value);
    const size_t held = run->nodes[0].support ? 0 : 1; /* the force on a support itself is not the span's */
    GW_TRACE_SAY(run->engine, "beam", HANDBOOK, "{}, {} long", gw_of_text(form->name),
                 gw_of_quantity(GW_LENGTH, run->in->length));
    form_step(run, form, "R", GW_FORCE, out->reactions[0] - run->forces[held], form->reaction);
    form_step(run, form, "R_2", GW_FORCE, out->reactions[1], form->second);
    form_step(run, form, "M", GW_MOMENT, (sags ? out->moment_max : out->moment_min).value, form->moment);
    form_step(run, form, "M_span", GW_MOMENT, (sags ? out->moment_min : out->moment_max).value, form->sagging);
    form_step(run, form, "y", GW_BEAM_LENGTH, out->deflection_max.value, form->deflection);
}

/* Sums
 * -------------------------------------------------------------------------------------------------------------------
 *
 * A sum grows step by step, as many terms to a step as one holds. Where terms cancel, the printed digits do not carry
 * the difference: then the step says its value in words only. */

enum { ARGS = 10 };
struct sum {
    const struct beam_run *run;
    const char *symbol;
    enum gw_dim dim;
    double value, size; /* so far; of the terms alone, without signs */
    struct gw_text formula;
    struct gw_arg args[ARGS];
    unsigned n;
    bool begun; /* a step was written */
};

static const double CANCELS = 10; /* terms together over their sum: 7 digits still give 5 */

static struct gw_arena *arena_of(const struct beam_run *run) { return run->engine->trace->arena; }

static struct sum sum_open(const struct beam_run *run, const char *symbol, enum gw_dim dim)
{
    struct sum sum = {.run = run, .symbol = symbol, .dim = dim};
    gw_text_init(&sum.formula, arena_of(run));
    return sum;
}

static void sum_write(struct sum *sum)
{
    if (!sum->n) return;
    if (sum->size <= CANCELS * fabs(sum->value))
        gw_trace_step(sum->run->engine, sum->symbol, sum->dim, sum->value, STATICS, sum->formula.at, sum->args, sum->n);
    else
        GW_TRACE_SAY(sum->run->engine, sum->symbol, STATICS, "{}: its parts cancel but for rounding or a small rest",
                     gw_of_quantity(sum->dim, sum->value));
    gw_text_init(&sum->formula, arena_of(sum->run));
    sum->n = 0;
    sum->begun = true;
}

/* Room for a term of so many arguments; what was summed before is one more. */
static void sum_room(struct sum *sum, unsigned args)
{
    if (sum->n + args > ARGS) sum_write(sum);
    if (sum->n || !sum->begun) return;
    sum->size = fabs(sum->value);
    sum->args[sum->n++] = (struct gw_arg){sum->symbol, sum->value, sum->dim};
    gw_text_add(&sum->formula, sum->symbol);
}

/* "q3": the argument's place makes its name. */
static const char *sum_arg(struct sum *sum, const char *letter, double value, enum gw_dim dim)
{
    const char *name = gw_format(arena_of(sum->run), "%s%u", letter, sum->n + 1);
    const char *like = gw_format(arena_of(sum->run), "%s|%s%s", name, letter, *letter == 'q' ? "|w" : "");
    sum->args[sum->n++] = (struct gw_arg){like, value, dim};
    return name;
}

static void sum_count(struct sum *sum, double value, bool minus)
{
    sum->value += minus ? -value : value;
    sum->size += fabs(value);
}

static void sum_sign(struct sum *sum, bool minus)
{
    if (minus) gw_text_add(&sum->formula, "-");
    else if (sum->formula.length) gw_text_add(&sum->formula, "+");
}

/* A plain term. */
static void sum_add(struct sum *sum, const char *letter, double value, bool minus)
{
    if (none(value)) return;
    sum_room(sum, 1);
    sum_sign(sum, minus);
    gw_text_add(&sum->formula, sum_arg(sum, letter, value, sum->dim));
    sum_count(sum, value, minus);
}

/* A spread load: mean times length. */
static void sum_add_spread(struct sum *sum, const struct gw_beam_load *load)
{
    if (none(load->start) && none(load->end)) return;
    sum_room(sum, 3);
    sum_sign(sum, false);
    const char *a = sum_arg(sum, "q", load->start, GW_LINE_LOAD), *b = sum_arg(sum, "q", load->end, GW_LINE_LOAD);
    const char *h = sum_arg(sum, "h", load->to - load->from, GW_BEAM_LENGTH);
    gw_text_addf(&sum->formula, "(%s+%s)/2*%s", a, b, h);
    sum_count(sum, (load->start + load->end) / 2 * (load->to - load->from), false);
}

/* A force times its arm. */
static void sum_add_arm(struct sum *sum, double force, double arm, bool minus)
{
    if (none(force) || none(arm)) return;
    sum_room(sum, 2);
    sum_sign(sum, minus);
    const char *p = sum_arg(sum, "V", force, GW_FORCE), *r = sum_arg(sum, "x", arm, GW_BEAM_LENGTH);
    gw_text_addf(&sum->formula, "%s*%s", p, r);
    sum_count(sum, force * arm, minus);
}

/* The load on a piece, from its start over a length h, times its arm to a place r behind that. */
static void sum_add_piece(struct sum *sum, const struct gw_beam_piece *piece, double h, double r, bool minus)
{
    const double q1 = piece->load_from;
    const double q2 = q1 + (piece->load_to - q1) * h / beam_piece_length(piece);
    if ((none(q1) && none(q2)) || none(h)) return;
    sum_room(sum, 4);
    sum_sign(sum, minus);
    const char *a = sum_arg(sum, "q", q1, GW_LINE_LOAD), *b = sum_arg(sum, "q", q2, GW_LINE_LOAD);
    const char *l = sum_arg(sum, "h", h, GW_BEAM_LENGTH);
    if (none(r)) {
        gw_text_addf(&sum->formula, "(2*%s+%s)*%s^2/6", a, b, l);
    } else {
        const char *x = sum_arg(sum, "r", r, GW_BEAM_LENGTH);
        gw_text_addf(&sum->formula, "%s/2*(%s*(%s+2*%s/3)+%s*(%s+%s/3))", l, a, x, l, b, x, l);
    }
    sum_count(sum, h / 2 * (q1 * (r + 2 * h / 3) + q2 * (r + h / 3)), minus);
}

/* Equilibrium
 * ------------------------------------------------------------------------------------------------------------
 */

static void load_steps(const struct beam_run *run)
{
    struct sum load = sum_open(run, "W", GW_FORCE);
    for (size_t i = 0; i < run->in->n_loads; i++)
        if (run->in->loads[i].kind == GW_BEAM_SPREAD) sum_add_spread(&load, &run->in->loads[i]);
    for (size_t i = 0; i < run->in->n_loads; i++)
        if (run->in->loads[i].kind == GW_BEAM_FORCE) sum_add(&load, "P", run->in->loads[i].start, false);
    sum_write(&load);
    struct sum held = sum_open(run, "R", GW_FORCE);
    for (size_t i = 0; i < run->out->n_supports; i++) sum_add(&held, "R", run->out->reactions[i], false);
    sum_write(&held);
}

/* The moment about `x` of what acts on field f between its start and `x`, start excluded. */
static void add_field_loads(struct sum *sum, const struct beam_run *run, size_t f, double x, bool minus)
{
    const size_t first = run->nodes[f].piece, end = run->nodes[f + 1].piece;
    for (size_t i = first; i < end; i++) {
        const struct gw_beam_piece *piece = &run->out->pieces[i];
        if (piece->from > x || beam_same(run->in, piece->from, x)) return;
        const double to = fmin(piece->to, x);
        if (i > first) sum_add_arm(sum, run->forces[i], x - piece->from, minus);
        if (i > first) sum_add(sum, "C", run->couples[i], !minus);
        sum_add_piece(sum, piece, to - piece->from, x - to, minus);
    }
}

/* The shear just after the start of the field: of a simple beam, and what the moments at its ends add. */
static void start_shear(const struct beam_run *run, size_t f)
{
    const struct beam_node *a = &run->nodes[f], *b = &run->nodes[f + 1];
    const double length = b->at - a->at;
    struct sum about = sum_open(run, "S", GW_MOMENT);
    add_field_loads(&about, run, f, b->at, false);
    sum_write(&about);
    const double parts = fabs(b->before) + fabs(a->after) + fabs(about.value);
    if (parts <= CANCELS * fabs(a->shear_after) * length)
        GW_STEP(run->engine, "V_a", GW_FORCE, a->shear_after, STATICS, "(S+M_b-M_a)/l", M("S", about.value),
                M("M_b", b->before), M("M_a", a->after), L("l", length));
    else
        GW_TRACE_SAY(run->engine, "V_a", STATICS, "{}: the shear after a is as good as none",
                     gw_of_quantity(GW_FORCE, a->shear_after));
}

static bool is_value(double value, const struct gw_beam_extreme *extreme)
{
    return fabs(value - extreme->value) <= GW_HAIR * fabs(extreme->value);
}

/* The field that ends with the extreme or holds it; of one just after a node, the field that begins there. */
static size_t field_at(const struct beam_run *run, const struct gw_beam_extreme *extreme)
{
    size_t f = 0;
    while (f + 2 < run->n_nodes) {
        const struct beam_node *next = &run->nodes[f + 1];
        const bool here = beam_same(run->in, extreme->at, next->at);
        if (here ? is_value(next->before, extreme) : extreme->at < next->at) break;
        f++;
    }
    return f;
}

/* Just after the start of a field: as seen from its end. */
static void start_moment(const struct beam_run *run, size_t f, const char *symbol)
{
    const struct beam_node *a = &run->nodes[f], *b = &run->nodes[f + 1];
    struct sum moment = sum_open(run, symbol, GW_MOMENT);
    sum_add(&moment, "M_b", b->before, false);
    sum_add_arm(&moment, a->shear_after, b->at - a->at, true);
    add_field_loads(&moment, run, f, b->at, false);
    sum_write(&moment);
}

/* A couple at the place itself, where the extreme is just after it. */
static void add_last_couple(struct sum *moment, const struct beam_run *run, size_t f,
                            const struct gw_beam_extreme *extreme)
{
    if (is_value(moment->value, extreme)) return;
    for (size_t i = run->nodes[f].piece + 1; i < run->nodes[f + 1].piece; i++)
        if (beam_same(run->in, run->out->pieces[i].from, extreme->at)) sum_add(moment, "C", run->couples[i], false);
}

/* Returns the field whose start is derived by now; that of `derived` was before. */
static size_t moment_steps(const struct beam_run *run, const struct gw_beam_extreme *extreme, const char *symbol,
                           size_t derived)
{
    const size_t f = field_at(run, extreme);
    const struct beam_node *a = &run->nodes[f];
    if (none(extreme->value)) return derived;
    if (beam_same(run->in, extreme->at, a->at)) {
        start_moment(run, f, symbol);
        return derived;
    }
    if (f != derived) start_shear(run, f);
    struct sum moment = sum_open(run, symbol, GW_MOMENT);
    sum_add(&moment, "M_a", a->after, false);
    sum_add_arm(&moment, a->shear_after, extreme->at - a->at, false);
    add_field_loads(&moment, run, f, extreme->at, true);
    add_last_couple(&moment, run, f, extreme);
    sum_write(&moment);
    return f;
}

static const struct gw_beam_piece *piece_at(const struct gw_beam_result *out, double x)
{
    size_t i = 0;
    while (i + 1 < out->n_pieces && x > out->pieces[i].to) i++;
    return &out->pieces[i];
}

static const struct gw_beam_segment *segment_at(const struct gw_beam *in, double x)
{
    size_t i = 0;
    while (i + 1 < in->n_segments && in->segments[i].to <= x) i++;
    return &in->segments[i];
}

/* From the start of the piece it lies on; q, the load at its place. */
static void deflection_step(const struct beam_run *run)
{
    const struct gw_beam_extreme *y = &run->out->deflection_max;
    const struct gw_beam_piece *p = piece_at(run->out, y->at);
    const struct gw_beam_segment *segment = segment_at(run->in, (p->from + p->to) / 2);
    const struct gw_beam_point *a = &p->start;
    const double s = y->at - p->from;
    const double q = p->load_from + (p->load_to - p->load_from) * s / beam_piece_length(p);
    const double bend =
        (fabs(a->moment) / 2 + fabs(a->shear) * s / 6 + fabs(4 * p->load_from + q) * s * s / 120) * s * s;
    if (none(y->value)) return;
    if (fabs(a->deflection) + fabs(a->slope) * s + bend / p->stiffness > CANCELS * fabs(y->value)) {
        GW_TRACE_SAY(run->engine, "y", BENDING,
                     "{}: integrated piece by piece; the terms of the last one nearly cancel",
                     gw_of_quantity(GW_THICKNESS, y->value));
        return;
    }
    GW_STEP(run->engine, "y", GW_BEAM_LENGTH, y->value, BENDING, "y0+t0*s-(M0*s^2/2+V0*s^3/6-(4*q0+q)*s^4/120)/(E*I)",
            L("y0", a->deflection), {"t0", a->slope, GW_RATIO}, L("s", s), M("M0|M", a->moment), P("V0|V", a->shear),
            Q("q0|q|w", p->load_from), Q("q|q|w", q), {"E", segment->elastic_modulus, GW_BEAM_STRESS},
            {"I", segment->inertia, GW_BEAM_INERTIA});
}

static const char METHOD[] =
    "{} long, supports: {}, integrated exactly from piece to piece; moments over supports from equal slopes on both "
    "sides, no moment at hinges and free ends";
static const char SUMS[] =
    "largest {}, least {}; between two supports, hinges or ends a, b: S, the moment of the loads about b; V_a, the "
    "shear after a; then the moment at a, the shear times its arm, less the loads up to there";

void gw_beam_steps(const struct beam_run *run)
{
    if (!run->engine->trace) return;
    const struct form *form = form_of(run);
    if (form) {
        handbook_steps(run, form);
        return;
    }
    GW_TRACE_SAY(run->engine, "beam", BENDING, METHOD, gw_of_quantity(GW_LENGTH, run->in->length),
                 gw_of_count((long)(run->in->n_supports + run->in->n_clamps)));
    GW_TRACE_SAY(run->engine, "moments", STATICS, SUMS, gw_of_quantity(GW_MOMENT, run->out->moment_max.value),
                 gw_of_quantity(GW_MOMENT, run->out->moment_min.value));
    load_steps(run);
    const size_t derived = moment_steps(run, &run->out->moment_max, "M_max", SIZE_MAX);
    moment_steps(run, &run->out->moment_min, "M_min", derived);
    deflection_step(run);
}
