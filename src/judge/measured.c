#include "judge/measured.h"

#include "judge/judge_internal.h"
#include "judge/transom_load.h"

/* A specimen that is longer is taken for none that is known. */
enum { MOST_SPANS = 8 };

/* A specimen's beam: overhanging at either end, or not, with a hinge at `hinge` or none, m from its lower support. */
struct shape {
    double before, after, hinge;
};

static bool solve(struct gw_beam_result *out, struct gw_ask *ask, const struct gw_tested *t, double line_load,
                  struct shape shape)
{
    double supports[MOST_SPANS + 1];
    struct gw_engine engine;
    const int spans = t->spans > 1 ? t->spans : 1;
    if (spans > MOST_SPANS) return false;
    for (int i = 0; i <= spans; i++) supports[i] = shape.before + i * t->span;
    const double length = supports[spans] + shape.after, hinge = shape.before + shape.hinge;
    const struct gw_beam_segment segment = {length, 1, 1};
    const struct gw_beam_load load = {GW_BEAM_SPREAD, 0, length, line_load, line_load};
    const struct gw_beam beam = {.length = length,
                                 .supports = supports,
                                 .n_supports = (size_t)spans + 1,
                                 .hinges = &hinge,
                                 .n_hinges = gw_given(hinge) ? 1 : 0,
                                 .loads = &load,
                                 .n_loads = 1,
                                 .segments = &segment,
                                 .n_segments = 1};
    gw_engine_init(&engine, ask->model->tables, NULL);
    return gw_beam_solve(out, &beam, &engine) == GW_OK;
}

bool gw_specimen_feels(struct gw_beam_result *out, struct gw_ask *ask, const struct gw_tested *t, double line_load)
{
    return solve(out, ask, t, line_load, (struct shape){.hinge = GW_ABSENT});
}

/* Whether a specimen ran past one of its ends or past both is not recorded. */
enum { ENDS = 3 };
static size_t ends_of(struct shape out[ENDS], const struct gw_tested *t)
{
    const double o = t->overhang;
    if (!(o > 0)) {
        out[0] = (struct shape){.before = 0};
        return 1;
    }
    out[0] = (struct shape){.before = o};
    out[1] = (struct shape){.after = o};
    out[2] = (struct shape){.before = o, .after = o};
    return ENDS;
}

/* N across a place `at` past the lower support, under 1 N/m; rounding is no force. */
static double shear_of(struct gw_ask *ask, struct gw_beam_result *room, const struct gw_tested *t, struct shape shape,
                       double at)
{
    if (!solve(room, ask, t, 1, shape)) return GW_ABSENT;
    const double shear = gw_beam_at(room, shape.before + at, GW_BEAM_AFTER).shear;
    return fabs(shear) > GW_HAIR * t->span ? shear : 0;
}

/* The lesser of a hinge's and of a stiff joint's, since nobody knows which moment it passed; none where it turns
 * between the two. */
static double shear_at(struct gw_ask *ask, struct gw_beam_result *room, const struct gw_tested *t, struct shape shape,
                       double at)
{
    shape.hinge = at;
    const double hinge = shear_of(ask, room, t, shape, at);
    shape.hinge = GW_ABSENT;
    const double stiff = shear_of(ask, room, t, shape, at);
    if (!gw_given(hinge) || !gw_given(stiff)) return GW_ABSENT;
    return hinge * stiff > 0 ? fmin(fabs(hinge), fabs(stiff)) : 0;
}

/* Beside which of the anchors it lay is not recorded: the least. Left of one is right of another, seen from behind. */
static double least_shear(struct gw_ask *ask, const struct gw_tested *t)
{
    struct gw_beam_result *room = gw_alloc_bare(ask->arena, sizeof *room);
    struct shape ends[ENDS];
    const size_t n = ends_of(ends, t);
    double least = GW_ABSENT; /* of which fmin takes the other */
    for (size_t k = 0; k < n; k++)
        for (int i = 1; i < t->spans; i++) {
            const double shear = shear_at(ask, room, t, ends[k], i * t->span + t->splice_at);
            if (!gw_given(shear)) return GW_ABSENT;
            least = fmin(least, shear);
        }
    return least;
}

/* What a specimen felt at least, under 1 N/m and with E I of 1. */
struct least {
    double shear;              /* across its splice, N */
    double moment, deflection; /* in its spans, N m, m; 0: none */
};

static void feel(struct least *least, struct gw_ask *ask, struct gw_beam_result *room, const struct gw_tested *t,
                 struct shape shape)
{
    const bool known = solve(room, ask, t, 1, shape);
    const double top = shape.before + (t->spans > 1 ? t->spans : 1) * t->span;
    least->moment = known ? fmin(least->moment, room->moment_max.value) : 0;
    least->deflection =
        known ? fmin(least->deflection, fmax(gw_beam_deflection_between(room, shape.before, top).value, 0)) : 0;
}

/* Over either end or both, the splice stiff or a hinge beside each of the anchors between two spans. */
static void least_spans(struct least *least, struct gw_ask *ask, const struct gw_tested *t)
{
    struct gw_beam_result *room = gw_alloc_bare(ask->arena, sizeof *room);
    struct shape ends[ENDS];
    const size_t n = ends_of(ends, t);
    for (size_t k = 0; k < n; k++) {
        struct shape shape = ends[k];
        shape.hinge = GW_ABSENT;
        feel(least, ask, room, t, shape);
        for (int i = 1; i < t->spans && gw_given(t->splice_at); i++) {
            shape.hinge = i * t->span + t->splice_at;
            feel(least, ask, room, t, shape);
        }
    }
}

static const struct least *least_of(struct gw_ask *ask, const struct gw_tested *t)
{
    struct least **kept = (struct least **)gw_memo_at(&ask->memory->specimens, ask->arena, &t, sizeof t);
    struct least *least = *kept;
    if (least) return least;
    *kept = least = gw_alloc(ask->arena, 1, sizeof *least);
    *least = (struct least){GW_ABSENT, GW_ABSENT, GW_ABSENT};
    if (gw_given(t->splice_at)) least->shear = least_shear(ask, t);
    least_spans(least, ask, t);
    return least;
}

double gw_splice_carried(struct gw_ask *ask, const struct gw_tested *t, double pressure)
{
    if (gw_given(t->splice_shear) || !gw_given(t->splice_at)) return t->splice_shear;
    return least_of(ask, t)->shear * pressure * t->module;
}

double gw_specimen_moment(struct gw_ask *ask, const struct gw_tested *t, double line_load)
{
    return least_of(ask, t)->moment * line_load;
}

double gw_specimen_deflection(struct gw_ask *ask, const struct gw_tested *t, double line_load)
{
    return least_of(ask, t)->deflection * line_load;
}

bool gw_specimen_relieved(struct gw_ask *ask, const struct gw_tested *t)
{
    struct gw_beam_result *plain = gw_alloc_bare(ask->arena, sizeof *plain);
    if (!gw_given(t->splice_at) || !gw_specimen_feels(plain, ask, t, 1)) return false;
    return least_of(ask, t)->moment < plain->moment_max.value * (1 - GW_HAIR);
}

void gw_reading_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_measured *measured,
                        const struct gw_framing_bend *bend, double felt, bool scaled)
{
    const double here = measured->value * bend->response / felt;
    if (!(here > bend->limit * (1 + GW_HAIR))) return;
    const struct gw_message where = gw_framing_bend_message(ask, bend);
    out->adverse = out->covers = true;
    out->presumed = scaled;
    out->foreign = false;
    out->met = GW_UNSAID;
    out->proof = GW_ABSENT;
    out->provided[0] = here;
    out->why =
        GW_SAY(ask->arena, "its {} measured at {} is {} here ({}), above {}",
               gw_of_quantity(GW_THICKNESS, measured->value), gw_of_quantity(GW_PRESSURE, measured->at),
               gw_of_quantity(GW_THICKNESS, here), gw_of_message(&where), gw_of_quantity(GW_THICKNESS, bend->limit));
}

/* With E I of 1. */
static double transom_feels(const struct gw_ask *ask, const struct gw_element *e, double pressure)
{
    const struct gw_shed_case shed = gw_shed_to(e, pressure);
    struct gw_engine untold = ask->engine;
    untold.trace = NULL;
    return gw_shed_deflection(&shed, 1, 1, &untold);
}

void gw_transom_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_tested_transom *tested,
                        const struct gw_element *e, double asked)
{
    if (!tested || !tested->deflection || !(fabs(tested->span - e->span) < GW_HAIR_M)) return;
    struct gw_element specimen = *e; /* glazed alike */
    if (gw_given(tested->above) || e->above > 0) specimen.above = tested->above;
    if (gw_given(tested->below) || e->below > 0) specimen.below = tested->below;
    if (!gw_given(specimen.above) || !gw_given(specimen.below)) return;
    const struct gw_framing_bend bend = gw_framing_bend_again(ask, e, transom_feels(ask, e, asked), GW_ABSENT);
    const double felt = transom_feels(ask, &specimen, tested->deflection->at);
    const bool scaled = tested->deflection->at < asked * (1 - GW_HAIR) || specimen.above < e->above - GW_HAIR_M ||
                        specimen.below < e->below - GW_HAIR_M;
    if (felt > 0) gw_reading_against(out, ask, tested->deflection, &bend, felt, scaled);
}
