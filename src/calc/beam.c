/* Of 'galeward calc beam' and 'calc member'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/member.h"
#include "galeward/model.h"

enum { PLACES = 256 }; /* that `at` may list */

struct beam_load {
    double from, to, start, end, at, force, moment;
};
struct beam_segment {
    double to, elastic_modulus, inertia;
};
/* What a beam and a member give alike. */
struct held {
    GW_LIST(double) supports, clamps, hinges;
    double elastic_modulus, inertia;
    GW_LIST(struct beam_segment) segments;
    GW_LIST(double) at;
};
struct beam_case {
    double length;
    struct held held;
    GW_LIST(struct beam_load) loads;
};
struct column {
    double width;
    GW_LIST(double) heights;
};
enum limit_choice { LIMIT_UNSET, LIMIT_SUPPORTS_GLASS, LIMIT_NONE };
struct member_case {
    enum gw_orientation orientation;
    enum gw_shedding shedding;
    double span, pressure;
    const struct column *left, *right;
    double height_above, height_below;
    struct held held;
    enum limit_choice deflection_limit;
    enum gw_bool cap;
};

typedef GW_LIST(double) numbers;
/* What both answer. */
struct bent {
    const struct gw_beam *beam;
    const struct gw_beam_result *solution;
    struct gw_beam_segment segments[GW_BEAM_SEGMENTS];
    numbers supports, reactions, couples;
    struct gw_beam_extreme shear_max, moment_max, moment_min, deflection_max, deflection_back;
    numbers at, shears, moments, slopes, deflections;
    double values[5][PLACES];
};
struct beam_answer {
    struct bent bent;
    struct gw_beam beam;
    struct gw_beam_load loads[GW_BEAM_LOADS];
    struct gw_beam_result solution;
};
struct member_answer {
    struct bent bent;
    struct gw_member_result result;
    numbers rail_levels, rail_loads, edges;
};

/* Input
 * ------------------------------------------------------------------------------------------------------------------
 */

static const struct gw_field LOAD[] = {
    NUM(beam_load, from, GW_LENGTH, .help = "spread load: where it begins"),
    NUM(beam_load, to, GW_LENGTH, .help = "where it ends"),
    NUM(beam_load, start, GW_LINE_LOAD, .help = "its intensity where it begins"),
    NUM(beam_load, end, GW_LINE_LOAD, .help = "where it ends; linear between; absent: as at the start"),
    NUM(beam_load, at, GW_LENGTH, .help = "place of a force or a moment"),
    NUM(beam_load, force, GW_FORCE, .help = "in the direction of the loads"),
    NUM(beam_load, moment, GW_MOMENT,
        .help = "a couple; positive raises the bending moment after it (clockwise, for load that acts downward)"),
};
static const struct gw_record LOAD_RECORD = RECORD("load", beam_load, LOAD);
static const struct gw_field SEGMENT[] = {
    NUM(beam_segment, to, GW_LENGTH, .help = "where it ends; the last one may leave it out"),
    NUM(beam_segment, elastic_modulus, GW_STRESS, .flags = GW_REQUIRED, .help = "of the segment"),
    NUM(beam_segment, inertia, GW_INERTIA, .flags = GW_REQUIRED, .help = "moment of inertia of the segment"),
};
static const struct gw_record SEGMENT_RECORD = RECORD("segment", beam_segment, SEGMENT);

#define HELD(struct_, key_, type_, ...) FIELD(struct_, #key_, held.key_, type_, __VA_ARGS__)
#define HELD_FIELDS(struct_, supports_help)                                                                            \
    HELD(struct_, supports, GW_T_NUMBER, .dim = GW_LENGTH, .flags = GW_MANY, .help = supports_help),                   \
        HELD(struct_, clamps, GW_T_NUMBER, .dim = GW_LENGTH, .flags = GW_MANY,                                         \
             .help = "places of supports that hold rotation too"),                                                     \
        HELD(struct_, hinges, GW_T_NUMBER, .dim = GW_LENGTH, .flags = GW_MANY,                                         \
             .help = "places of splices that carry no moment; also over a support"),                                   \
        HELD(struct_, elastic_modulus, GW_T_NUMBER, .dim = GW_STRESS, .help = "unless in segments"),                   \
        HELD(struct_, inertia, GW_T_NUMBER, .dim = GW_INERTIA, .help = "moment of inertia; unless in segments"),       \
        HELD(struct_, segments, GW_T_RECORD, .record = &SEGMENT_RECORD, .flags = GW_MANY,                              \
             .help = "pieces of their own stiffness, from the start"),                                                 \
        HELD(struct_, at, GW_T_NUMBER, .dim = GW_LENGTH, .flags = GW_MANY, .help = "places to report on")

static const struct gw_field BEAM[] = {
    NUM(beam_case, length, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 1000), .help = "of the whole beam"),
    HELD_FIELDS(beam_case, "places of supports"),
    F(beam_case, loads, GW_T_RECORD, .record = &LOAD_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "positive in one direction, in which the supports push back"),
};
static const struct gw_record BEAM_CASE_RECORD = RECORD("beam", beam_case, BEAM);

static const struct gw_field COLUMN[] = {
    NUM(column, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 20), .help = "of the lites; 0: no glass"),
    NUM(column, heights, GW_LENGTH, .flags = GW_MANY, LIMITS(0.01, 50), .help = "of the lites from the bottom"),
};
static const struct gw_record COLUMN_RECORD = RECORD("column of lites", column, COLUMN);
static const struct gw_choice ORIENTATIONS[] = {{"vertical", GW_VERTICAL, ""}, {"horizontal", GW_HORIZONTAL, ""}, {0}};
static const struct gw_choice SHEDDINGS[] = {{"two_way", GW_TWO_WAY, "45-degree lines, rails hand on their load"},
                                             {"uniform", GW_UNIFORM, "pressure times half widths"},
                                             {0}};
static const struct gw_choice LIMIT_CHOICES[] = {
    {"supports_glass", LIMIT_SUPPORTS_GLASS, ""}, {"none", LIMIT_NONE, ""}, {0}};

static const struct gw_field MEMBER[] = {
    PICK(member_case, orientation, ORIENTATIONS, .flags = GW_REQUIRED, .help = "mullion or rail"),
    NUM(member_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 500),
        .help = "of the whole member; horizontal: the width of the lites"),
    NUM(member_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE,
        .help = "of the level wanted; deflections of framing that supports glass take allowable-stress level"),
    PICK(member_case, shedding, SHEDDINGS, .flags = GW_REQUIRED, .help = "how lites hand on their load"),
    F(member_case, left, GW_T_RECORD, .record = &COLUMN_RECORD, .help = "vertical: lites on the left"),
    F(member_case, right, GW_T_RECORD, .record = &COLUMN_RECORD, .help = "vertical: lites on the right"),
    NUM(member_case, height_above, GW_LENGTH, LIMITS(0, 50), .help = "horizontal: of the lite above; 0: no glass"),
    NUM(member_case, height_below, GW_LENGTH, LIMITS(0, 50), .help = "horizontal: of the lite below; 0: no glass"),
    HELD_FIELDS(member_case, "places of anchors from the bottom or left; absent (and no clamps): both ends"),
    PICK(member_case, deflection_limit, LIMIT_CHOICES, .fallback = "supports_glass",
         .help = "compare each span's deflection with that of framing that supports glass"),
    F(member_case, cap, GW_T_BOOL, .fallback = "no", .help = "with the absolute cap that some specifications ask"),
};
static const struct gw_record MEMBER_CASE_RECORD = RECORD("member", member_case, MEMBER);

/* Output
 * -----------------------------------------------------------------------------------------------------------------
 */

#define BENT_FIELDS(struct_)                                                                                           \
    OUT_MANY(struct_, "supports", bent.supports, GW_LENGTH, "places of the reactions"),                                \
        OUT_MANY(struct_, "reactions", bent.reactions, GW_FORCE, "supports and clamps in order, against the loads"),   \
        OUT_MANY(struct_, "couples", bent.couples, GW_MOMENT,                                                          \
                 "that the clamps among them put on the beam; 0: no clamp"),                                           \
        OUT(struct_, "shear_max", bent.shear_max.value, GW_FORCE, "magnitude"),                                        \
        OUT(struct_, "shear_max_at", bent.shear_max.at, GW_LENGTH, "its place"),                                       \
        OUT(struct_, "moment_max", bent.moment_max.value, GW_MOMENT, "largest; sagging is positive"),                  \
        OUT(struct_, "moment_max_at", bent.moment_max.at, GW_LENGTH, "its place"),                                     \
        OUT(struct_, "moment_min", bent.moment_min.value, GW_MOMENT, "least; hogging is negative"),                    \
        OUT(struct_, "moment_min_at", bent.moment_min.at, GW_LENGTH, "its place"),                                     \
        OUT(struct_, "deflection_max", bent.deflection_max.value, GW_THICKNESS,                                        \
            "of the largest magnitude; positive with the load"),                                                       \
        OUT(struct_, "deflection_max_at", bent.deflection_max.at, GW_LENGTH, "its place"),                             \
        OUT(struct_, "deflection_back", bent.deflection_back.value, GW_THICKNESS,                                      \
            "the largest the other way; 0: none"),                                                                     \
        OUT(struct_, "deflection_back_at", bent.deflection_back.at, GW_LENGTH, "its place"),                           \
        OUT_MANY(struct_, "shears", bent.shears, GW_FORCE, "at the places `at`, just after"),                          \
        OUT_MANY(struct_, "moments", bent.moments, GW_MOMENT, "there, just after"),                                    \
        OUT_MANY(struct_, "slopes", bent.slopes, GW_RATIO, "there, just after"),                                       \
        OUT_MANY(struct_, "deflections", bent.deflections, GW_THICKNESS, "there")

static const struct gw_field BEAM_ANSWER[] = {BENT_FIELDS(beam_answer)};
static const struct gw_record BEAM_ANSWER_RECORD = RECORD("beam result", beam_answer, BEAM_ANSWER);

static const struct gw_field MEMBER_ANSWER[] = {
    BENT_FIELDS(member_answer),
    OUT_MANY(member_answer, "rail_levels", rail_levels, GW_LENGTH,
             "two-way verticals: of the rails, head and sill among them"),
    OUT_MANY(member_answer, "rail_loads", rail_loads, GW_FORCE, "what the rails of both sides hand on there"),
    OUT_MANY(member_answer, "glass_edge_deflection", edges, GW_THICKNESS,
             "largest of each lite's edge from the line through its ends: left, right; above, below"),
    OUT(member_answer, "deflection_limit", result.limit, GW_THICKNESS, "of the span nearest to its limit"),
    OUT(member_answer, "limit_span", result.limit_span, GW_LENGTH, "that span; of an overhang its length"),
    OUT(member_answer, "limit_deflection", result.limit_deflection, GW_THICKNESS, "the largest deflection there"),
    OUT(member_answer, "utilisation", result.utilization, GW_RATIO, "that deflection over its limit"),
    OUT(member_answer, "inertia_required", result.inertia_required, GW_INERTIA,
        "for that limit, where the stiffness is one"),
};
static const struct gw_record MEMBER_ANSWER_RECORD = RECORD("member result", member_answer, MEMBER_ANSWER);

/* Runs
 * -------------------------------------------------------------------------------------------------------------------
 */

static enum gw_status one_stiffness(struct bent *bent, size_t *n, const struct held *held, double length,
                                    struct gw_engine *engine)
{
    if (!gw_given(held->elastic_modulus))
        return gw_refuse(engine, GW_MISSING, "elastic_modulus", "elastic_modulus is needed, or segments");
    if (!gw_given(held->inertia)) return gw_refuse(engine, GW_MISSING, "inertia", "inertia is needed, or segments");
    bent->segments[0] = (struct gw_beam_segment){length, held->elastic_modulus, held->inertia};
    *n = 1;
    return GW_OK;
}

static enum gw_status take_segments(struct bent *bent, size_t *n, const struct held *held, double length,
                                    struct gw_engine *engine)
{
    if (!held->segments.n) return one_stiffness(bent, n, held, length, engine);
    if (gw_given(held->elastic_modulus) || gw_given(held->inertia))
        return gw_refuse(engine, GW_BAD_VALUE, "segments", "give elastic_modulus and inertia, or segments, not both");
    if (held->segments.n > GW_BEAM_SEGMENTS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "segments", "{} segments; a beam takes at most {}",
                         gw_of_count((long)held->segments.n), gw_of_count(GW_BEAM_SEGMENTS));
    for (size_t i = 0; i < held->segments.n; i++) {
        const struct beam_segment *s = &held->segments.items[i];
        const bool open_end = !gw_given(s->to) && i + 1 == held->segments.n;
        if (!gw_given(s->to) && !open_end)
            return gw_refuse(engine, GW_MISSING, "to", "every segment but the last says where it ends");
        bent->segments[i] = (struct gw_beam_segment){open_end ? length : s->to, s->elastic_modulus, s->inertia};
    }
    *n = held->segments.n;
    return GW_OK;
}

static enum gw_status take_spread(struct gw_beam_load *out, const struct beam_load *load, struct gw_engine *engine)
{
    if (gw_given(load->at) || gw_given(load->force) || gw_given(load->moment))
        return gw_refuse(engine, GW_BAD_VALUE, "loads",
                         "a load is spread {from, to, start, end}, a force {at, force} or a couple {at, moment}");
    if (!gw_given(load->from) || !gw_given(load->to) || !gw_given(load->start))
        return gw_refuse(engine, GW_MISSING, "loads", "a spread load needs from, to and start");
    *out = (struct gw_beam_load){GW_BEAM_SPREAD, load->from, load->to, load->start,
                                 gw_given(load->end) ? load->end : load->start};
    return GW_OK;
}

static enum gw_status take_load(struct gw_beam_load *out, const struct beam_load *load, struct gw_engine *engine)
{
    const bool force = gw_given(load->force), moment = gw_given(load->moment);
    if (gw_given(load->from) || gw_given(load->to) || gw_given(load->start) || gw_given(load->end))
        return take_spread(out, load, engine);
    if (!gw_given(load->at) || force == moment)
        return gw_refuse(engine, GW_MISSING, "loads",
                         "a load is spread {from, to, start, end}, a force {at, force} or a couple {at, moment}");
    *out = (struct gw_beam_load){
        .kind = force ? GW_BEAM_FORCE : GW_BEAM_COUPLE, .from = load->at, .start = force ? load->force : load->moment};
    return GW_OK;
}

static enum gw_status take_beam(struct beam_answer *answer, const struct beam_case *given, struct gw_engine *engine)
{
    struct gw_beam *beam = &answer->beam;
    const struct held *held = &given->held;
    *beam = (struct gw_beam){.length = given->length,
                             .supports = held->supports.items,
                             .n_supports = held->supports.n,
                             .clamps = held->clamps.items,
                             .n_clamps = held->clamps.n,
                             .hinges = held->hinges.items,
                             .n_hinges = held->hinges.n,
                             .loads = answer->loads,
                             .n_loads = given->loads.n,
                             .segments = answer->bent.segments};
    if (given->loads.n > GW_BEAM_LOADS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "loads", "{} loads; a beam takes at most {}",
                         gw_of_count((long)given->loads.n), gw_of_count(GW_BEAM_LOADS));
    for (size_t i = 0; i < given->loads.n; i++) {
        enum gw_status status = take_load(&answer->loads[i], &given->loads.items[i], engine);
        if (status) return status;
    }
    return take_segments(&answer->bent, &beam->n_segments, held, given->length, engine);
}

static enum gw_status report_places(struct bent *bent, const struct held *held, struct gw_engine *engine)
{
    enum { LISTS = 4 };
    numbers *const lists[LISTS] = {&bent->shears, &bent->moments, &bent->slopes, &bent->deflections};
    if (held->at.n > PLACES)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "at", "{} places; a case reports on at most {}",
                         gw_of_count((long)held->at.n), gw_of_count(PLACES));
    for (size_t i = 0; i < held->at.n; i++) {
        const struct gw_beam_point p = gw_beam_at(bent->solution, held->at.items[i], GW_BEAM_AFTER);
        if (!gw_given(p.moment)) return gw_refuse(engine, GW_BAD_VALUE, "at", "a place in `at` is not on the beam");
        bent->values[0][i] = p.shear;
        bent->values[1][i] = p.moment;
        bent->values[2][i] = p.slope;
        bent->values[3][i] = p.deflection;
    }
    for (size_t k = 0; k < LISTS; k++) {
        lists[k]->items = bent->values[k];
        lists[k]->n = held->at.n;
    }
    return GW_OK;
}

static enum gw_status report(struct bent *bent, const struct gw_beam *beam, struct gw_beam_result *solution,
                             const struct held *held, struct gw_engine *engine)
{
    bent->beam = beam;
    bent->solution = solution;
    bent->supports.items = solution->supports;
    bent->reactions.items = solution->reactions;
    bent->couples.items = solution->couples;
    bent->supports.n = bent->reactions.n = bent->couples.n = solution->n_supports;
    bent->shear_max = solution->shear_max;
    bent->moment_max = solution->moment_max;
    bent->moment_min = solution->moment_min;
    bent->deflection_max = solution->deflection_max;
    bent->deflection_back = solution->deflection_back;
    return report_places(bent, held, engine);
}

static enum gw_status run_beam(void *out, const void *in, struct gw_engine *engine)
{
    const struct beam_case *given = in;
    struct beam_answer *answer = out;
    enum gw_status status = take_beam(answer, given, engine);
    if (!status) status = gw_beam_solve(&answer->solution, &answer->beam, engine);
    return status ? status : report(&answer->bent, &answer->beam, &answer->solution, &given->held, engine);
}

static struct gw_lite_column column_of(const struct column *given)
{
    if (!given) return (struct gw_lite_column){.width = GW_ABSENT};
    return (struct gw_lite_column){given->width, given->heights.items, given->heights.n};
}

static enum gw_status check_orientation(const struct member_case *given, struct gw_engine *engine)
{
    if (given->orientation == GW_HORIZONTAL && (given->left || given->right))
        return gw_refuse(engine, GW_BAD_VALUE, given->left ? "left" : "right",
                         "left and right go with a vertical; a horizontal has height_above and height_below");
    if (given->orientation == GW_VERTICAL && (gw_given(given->height_above) || gw_given(given->height_below)))
        return gw_refuse(engine, GW_BAD_VALUE, gw_given(given->height_above) ? "height_above" : "height_below",
                         "height_above and height_below go with a horizontal; a vertical has left and right");
    return GW_OK;
}

static enum gw_status solve_member(struct member_answer *answer, const struct member_case *given,
                                   struct gw_engine *engine)
{
    const struct held *held = &given->held;
    struct gw_member member = {.orientation = given->orientation,
                               .shedding = given->shedding,
                               .span = given->span,
                               .pressure = given->pressure,
                               .left = column_of(given->left),
                               .right = column_of(given->right),
                               .height_above = given->height_above,
                               .height_below = given->height_below,
                               .supports = held->supports.items,
                               .n_supports = held->supports.n,
                               .clamps = held->clamps.items,
                               .n_clamps = held->clamps.n,
                               .hinges = held->hinges.items,
                               .n_hinges = held->hinges.n,
                               .segments = answer->bent.segments,
                               .limited = given->deflection_limit == LIMIT_SUPPORTS_GLASS,
                               .capped = given->cap == GW_YES};
    enum gw_status status = check_orientation(given, engine);
    if (!status) status = take_segments(&answer->bent, &member.n_segments, held, given->span, engine);
    if (!status) status = gw_member_solve(&answer->result, &member, engine);
    return status;
}

static enum gw_status run_member(void *out, const void *in, struct gw_engine *engine)
{
    const struct member_case *given = in;
    struct member_answer *answer = out;
    struct gw_member_result *result = &answer->result;
    enum gw_status status = solve_member(answer, given, engine);
    if (status) return status;
    answer->rail_levels.items = result->rail_levels;
    answer->rail_loads.items = result->rail_loads;
    answer->rail_levels.n = answer->rail_loads.n = result->n_rails;
    answer->edges.items = result->edges;
    answer->edges.n = result->n_edges;
    return report(&answer->bent, &result->beam, &result->solution, &given->held, engine);
}

static const char *const *beam_notes(const void *out, size_t *n)
{
    static const char *const notes[] = {"bending only, small slopes: no shear deformation, no slip or play of splices"};
    (void)out;
    *n = COUNT(notes);
    return notes;
}

const struct gw_calc_kind gw_kind_member = {
    .name = "member",
    .help = "mullion or rail under the wind on its lites: reactions, moments, deflection and its limit",
    .example = "orientation=vertical span='12 ft' pressure='30 psf' shedding=two_way "
               "left='{width: 5 ft, heights: [30 in, 84 in, 30 in]}' right='{width: 5 ft, heights: [6 ft, 6 ft]}' "
               "elastic_modulus='10100 ksi' inertia='9.35 in4'",
    .input = &MEMBER_CASE_RECORD,
    .output = &MEMBER_ANSWER_RECORD,
    .run = run_member,
    .notes = beam_notes};

const struct gw_calc_kind gw_kind_beam = {
    .name = "beam",
    .help = "straight beam under any piecewise linear load: spans, overhangs, hinges, clamps, steps of stiffness",
    .example = "length='24 ft' supports='[0 ft, 12 ft, 24 ft]' loads='[{from: 0 ft, to: 24 ft, start: 12.5 lb/in}]' "
               "elastic_modulus='10100 ksi' inertia='9.35 in4'",
    .input = &BEAM_CASE_RECORD,
    .output = &BEAM_ANSWER_RECORD,
    .run = run_beam,
    .notes = beam_notes};

void gw_answer_beam(const struct gw_beam **beam, const struct gw_beam_result **solution, const void *out)
{
    const struct bent *bent = out;
    *beam = bent->beam;
    *solution = bent->solution;
}

void gw_member_chart(struct gw_member_chart *chart, const void *in, const void *out)
{
    const struct member_case *given = in;
    const struct gw_member_result *result = &((const struct member_answer *)out)->result;
    *chart = (struct gw_member_chart){.orientation = gw_choice_name(ORIENTATIONS, (int)given->orientation),
                                      .shedding = gw_choice_name(SHEDDINGS, (int)given->shedding),
                                      .pressure = given->pressure,
                                      .limited = given->deflection_limit == LIMIT_SUPPORTS_GLASS,
                                      .capped = given->cap == GW_YES,
                                      .limit_span = result->limit_span,
                                      .limit_deflection = result->limit_deflection,
                                      .limit = result->limit,
                                      .use = result->utilization};
}
