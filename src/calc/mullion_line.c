/* Field tables of 'galeward calc mullion_line'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/mullion_line.h"

struct stretch_case {
    double from, to, member_from, member_to, inward, outward;
    enum gw_bool overhang;
};
struct mullion_case {
    double bottom, top, roof;
    GW_LIST(double) anchors, splices;
    GW_LIST(struct stretch_case) stretches;
    double elastic_modulus, inertia;
};
struct stretch_answer {
    double moment, shear, splice_shear, deflection;
    int pattern, unknown;
};
struct mullion_answer {
    GW_LIST(struct stretch_answer) stretches;
    GW_LIST(struct gw_mullion_anchor) anchors;
    struct stretch_answer each[GW_MULLION_STRETCHES];
    struct gw_mullion_anchor of[GW_BEAM_SUPPORTS];
    struct gw_mullion_stretch loads[GW_MULLION_STRETCHES];
    struct gw_mullion_forces forces[GW_MULLION_STRETCHES];
};

#define S(key_, dim_, ...) NUM(stretch_case, key_, dim_, __VA_ARGS__)
static const struct gw_field STRETCH[] = {
    S(from, GW_LENGTH, .flags = GW_REQUIRED, .help = "height above ground where its load begins"),
    S(to, GW_LENGTH, .flags = GW_REQUIRED, .help = "where it ends"),
    S(inward, GW_LINE_LOAD, .flags = GW_MAGNITUDE, .help = "pressure times width carried; absent: not known"),
    S(outward, GW_LINE_LOAD, .flags = GW_MAGNITUDE, .help = "the same the other way"),
    S(member_from, GW_LENGTH, .help = "where its span or overhang begins; absent: where the load does"),
    S(member_to, GW_LENGTH, .help = "where it ends; absent: where the load does"),
    F(stretch_case, overhang, GW_T_BOOL, .help = "absent: whether it lies past the first or the last anchor"),
};
static const struct gw_record STRETCH_RECORD = RECORD("stretch", stretch_case, STRETCH);
#define M(key_, dim_, ...) NUM(mullion_case, key_, dim_, __VA_ARGS__)
static const struct gw_field CASE[] = {
    M(bottom, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(-500, 1000), .help = "of the wall, above ground"),
    M(top, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(-500, 1000), .help = "of the wall"),
    M(roof, GW_LENGTH, .help = "where the anchors' shares are told apart; absent: nowhere"),
    M(anchors, GW_LENGTH, .flags = GW_REQUIRED | GW_MANY, .help = "their heights, from the bottom"),
    M(splices, GW_LENGTH, .flags = GW_MANY, .help = "absent: at every anchor but the first and the last"),
    F(mullion_case, stretches, GW_T_RECORD, .record = &STRETCH_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "parts of the mullion, each with its own load"),
    M(elastic_modulus, GW_STRESS, LIMITS(1e6, 1e13), .help = "with inertia, for deflections"),
    M(inertia, GW_INERTIA, LIMITS(1e-14, 1), .help = "moment of inertia"),
};
static const struct gw_record MULLION_CASE_RECORD = RECORD("mullion line", mullion_case, CASE);

static const struct gw_choice PATTERNS[] = {{"inward_all", GW_INWARD_ALL, ""},
                                            {"inward_alone", GW_INWARD_ALONE, ""},
                                            {"outward_all", GW_OUTWARD_ALL, ""},
                                            {"outward_alone", GW_OUTWARD_ALONE, ""},
                                            {0}};
static const struct gw_field STRETCH_ANSWER[] = {
    NUM(stretch_answer, moment, GW_MOMENT, .help = "largest magnitude over the member"),
    NUM(stretch_answer, shear, GW_FORCE, .help = "the same"),
    NUM(stretch_answer, splice_shear, GW_FORCE, .help = "of the splices in it; 0: none"),
    NUM(stretch_answer, deflection, GW_LENGTH, .help = "absent without elastic_modulus and inertia"),
    PICK(stretch_answer, pattern, PATTERNS, .help = "of the moment: all loads, or spans or overhangs alone"),
    F(stretch_answer, unknown, GW_T_INTEGER, .help = "the first stretch without a load that bends it, from 1; 0: none"),
};
static const struct gw_record STRETCH_ANSWER_RECORD = RECORD("stretch result", stretch_answer, STRETCH_ANSWER);
static const struct gw_field ANCHOR[] = {
    NUM(gw_mullion_anchor, below, GW_LENGTH, .help = "height of wall below the roof line whose load it takes"),
    NUM(gw_mullion_anchor, above, GW_LENGTH, .help = "above the roof line"),
    NUM(gw_mullion_anchor, piece, GW_LENGTH, .help = "the longest piece that can hang on it"),
};
static const struct gw_record ANCHOR_RECORD = RECORD("anchor's share", gw_mullion_anchor, ANCHOR);
static const struct gw_field ANSWER[] = {
    F(mullion_answer, stretches, GW_T_RECORD, .record = &STRETCH_ANSWER_RECORD, .flags = GW_MANY, .help = "in order"),
    F(mullion_answer, anchors, GW_T_RECORD, .record = &ANCHOR_RECORD, .flags = GW_MANY, .help = "from the bottom"),
};
static const struct gw_record MULLION_ANSWER_RECORD = RECORD("mullion line result", mullion_answer, ANSWER);

static struct gw_mullion_stretch stretch_of(const struct stretch_case *s, const struct mullion_case *given)
{
    const bool past = s->to <= given->anchors.items[0] || s->from >= given->anchors.items[given->anchors.n - 1];
    return (struct gw_mullion_stretch){.from = s->from,
                                       .to = s->to,
                                       .member_from = gw_given(s->member_from) ? s->member_from : s->from,
                                       .member_to = gw_given(s->member_to) ? s->member_to : s->to,
                                       .inward = s->inward,
                                       .outward = s->outward,
                                       .overhang = s->overhang == GW_UNSAID ? past : s->overhang == GW_YES};
}

static enum gw_status check(const struct mullion_case *given, struct gw_engine *engine)
{
    if (gw_given(given->elastic_modulus) != gw_given(given->inertia))
        return gw_refuse(engine, GW_MISSING, gw_given(given->inertia) ? "elastic_modulus" : "inertia",
                         "a deflection wants elastic_modulus and inertia");
    if (given->stretches.n <= GW_MULLION_STRETCHES) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "stretches", "{} stretches; a line takes at most {}",
                     gw_of_count((long)given->stretches.n), gw_of_count(GW_MULLION_STRETCHES));
}

static struct stretch_answer answer_of(const struct gw_mullion_forces *f, const struct mullion_case *given)
{
    if (f->unknown)
        return (struct stretch_answer){.moment = GW_ABSENT,
                                       .shear = GW_ABSENT,
                                       .splice_shear = GW_ABSENT,
                                       .deflection = GW_ABSENT,
                                       .pattern = GW_PATTERN_UNSET,
                                       .unknown = (int)f->unknown};
    return (struct stretch_answer){.moment = f->moment,
                                   .shear = f->shear,
                                   .splice_shear = f->splice_shear,
                                   .deflection = f->deflection / (given->elastic_modulus * given->inertia),
                                   .pattern = (int)f->pattern};
}

/* Of the stretch with the largest moment. */
static enum gw_status derive(const struct mullion_answer *answer, const struct gw_mullion_wall *wall, size_t n,
                             struct gw_engine *engine)
{
    size_t most = 0;
    for (size_t i = 1; i < n; i++)
        if (answer->forces[i].moment > answer->forces[most].moment) most = i;
    if (answer->forces[most].pattern)
        return gw_mullion_derive(&answer->forces[most], wall, answer->loads, n, most, engine->workspace, engine);
    gw_trace_note(engine, "w", "line loads", "no stretch has a moment: no load, or none that is known");
    return GW_OK;
}

static enum gw_status run_mullion_line(void *out, const void *in, struct gw_engine *engine)
{
    const struct mullion_case *given = in;
    struct mullion_answer *answer = out;
    struct gw_beam_result *room = engine->workspace;
    const struct gw_mullion_wall wall = {.bottom = given->bottom,
                                         .top = given->top,
                                         .roof = gw_given(given->roof) ? given->roof : INFINITY,
                                         .anchors = given->anchors.items,
                                         .splices = given->splices.items,
                                         .n_anchors = given->anchors.n,
                                         .n_splices = given->splices.n};
    const size_t n = given->stretches.n;
    enum gw_status status = check(given, engine);
    if (status == GW_OK) status = gw_mullion_anchors(answer->of, &wall, room, engine);
    for (size_t i = 0; i < n && status == GW_OK; i++) answer->loads[i] = stretch_of(&given->stretches.items[i], given);
    if (status == GW_OK) status = gw_mullion_line(answer->forces, &wall, answer->loads, n, room, engine);
    if (status != GW_OK) return status;
    for (size_t i = 0; i < n; i++) answer->each[i] = answer_of(&answer->forces[i], given);
    answer->stretches.items = answer->each, answer->stretches.n = n;
    answer->anchors.items = answer->of, answer->anchors.n = wall.n_anchors;
    return engine->trace ? derive(answer, &wall, n, engine) : GW_OK;
}

const struct gw_calc_kind gw_kind_mullion_line = {
    .name = "mullion_line",
    .help = "mullions of a wall as one beam over their anchors: forces of every stretch, shares of every anchor",
    .example =
        "bottom='0 ft' top='29 ft' anchors='[0 ft, 13 ft, 26 ft]' stretches='[{from: 0 ft, to: 13 ft, inward: 10 "
        "lb/in, outward: 12 lb/in}, {from: 13 ft, to: 26 ft, inward: 10 lb/in, outward: 12 lb/in}, {from: 26 "
        "ft, to: 29 ft, inward: 16 lb/in, outward: 16 lb/in}]'",
    .input = &MULLION_CASE_RECORD,
    .output = &MULLION_ANSWER_RECORD,
    .run = run_mullion_line,
    .workspace = sizeof(struct gw_beam_result)};
