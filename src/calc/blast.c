/* Of 'galeward calc blast' and 'calc response'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/blast.h"
#include "galeward/model.h"

/* Blast -------------------------------------------------------------------------------------------------------------
 */

#define BURST(struct_, flags_)                                                                                         \
    NUM(struct_, charge, GW_MASS, .flags = flags_, LIMITS(0, 1e6),                                                     \
        .help = "TNT equivalent on the ground, from the security consultant"),                                         \
        NUM(struct_, standoff, GW_LENGTH, .flags = flags_, LIMITS(0, 1e4),                                             \
            .help = "from the charge to the point of the face"),                                                       \
        NUM(struct_, angle, GW_ANGLE, .help = "of the line to the charge from the face's normal; absent: 0")
static const struct gw_field BLAST_CASE[] = {BURST(gw_blast_case, GW_REQUIRED)};
static const struct gw_record BLAST_CASE_RECORD = RECORD("blast", gw_blast_case, BLAST_CASE);

#define B(key_, member_, dim_, help_) OUT(gw_blast_load, key_, member_, dim_, help_)
static const struct gw_field BLAST_ANSWER[] = {
    B("scaled_distance_m_kg13", scaled_distance, GW_RATIO, "standoff over the cube root of the charge, m/kg^(1/3)"),
    B("reflected_pressure", reflected_pressure, GW_PRESSURE, "peak, normal incidence"),
    B("reflected_impulse", reflected_impulse, GW_IMPULSE, "positive phase, normal incidence"),
    B("incident_pressure", incident_pressure, GW_PRESSURE, "peak; null nearer than its polynomials begin"),
    B("incident_impulse", incident_impulse, GW_IMPULSE, "positive phase; null nearer than its polynomials begin"),
    B("positive_duration", positive_duration, GW_TIME, "null nearer than its polynomials begin"),
    B("arrival", arrival, GW_TIME, "after the burst"),
    B("triangle_duration", triangle_duration, GW_TIME, "of the triangle with the reflected peak and impulse"),
    B("face_pressure", face_pressure, GW_PRESSURE, "peak on the face at the angle"),
    B("face_impulse", face_impulse, GW_IMPULSE, "on the face at the angle"),
};
static const struct gw_record BLAST_ANSWER_RECORD = RECORD("blast result", gw_blast_load, BLAST_ANSWER);

static enum gw_status run_blast(void *out, const void *in, struct gw_engine *engine)
{
    return gw_blast_load(out, in, engine);
}

static const char *const *blast_notes(const void *out, size_t *n)
{
    const struct gw_blast_load *load = out;
    *n = load->n_notes;
    return load->notes;
}

const struct gw_calc_kind gw_kind_blast = {.name = "blast",
                                           .help =
                                               "air blast on a face from charge and standoff, for protective design",
                                           .example = "charge='100 kg' standoff='15 m'",
                                           .input = &BLAST_CASE_RECORD,
                                           .output = &BLAST_ANSWER_RECORD,
                                           .run = run_blast,
                                           .notes = blast_notes};

/* Response ----------------------------------------------------------------------------------------------------------
 */

struct response_case {
    double width, height;
    GW_LIST(struct gw_layer) layers;
    enum gw_blast_unit unit;
    double pressure, impulse, charge, standoff, angle;
    enum gw_blast_level level;
    double probability, temperature;
    enum gw_glass_standard edition;
    enum gw_glass_route route;
    double rated_pressure, rated_impulse;
};
enum { NOTES_MOST = 10 + GW_LITE_NOTES };
struct response_answer {
    struct gw_blast_curve curve;
    struct gw_blast_pair demand, least, breaking; /* least: the asymptotes */
    double duration;
    struct gw_blast_response response;
    enum gw_bool breaks, rating_covers;
    const char *notes[NOTES_MOST];
    size_t n_notes;
};

static const struct gw_choice LEVELS[] = {{"C", GW_BLAST_LEVEL_C, ""}, {"D", GW_BLAST_LEVEL_D, ""}, {0}};
#define R(key_, dim_, ...) NUM(response_case, key_, dim_, __VA_ARGS__)
static const struct gw_field RESPONSE[] = {
    R(width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    R(height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    F(response_case, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_REQUIRED | GW_MANY,
      .help = "from outside to inside, as of a lite; four edges held"),
    PICK(response_case, unit, gw_blast_unit_choices, .help = "an insulating unit needs it: the gas is not covered"),
    R(pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e9), LIKELY(1000, 1e7), .help = "peak, reflected"),
    R(impulse, GW_IMPULSE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7), LIKELY(10, 1e5), .help = "reflected; with pressure"),
    BURST(response_case, 0),
    PICK(response_case, level, LEVELS,
         .help = "named level, instead of pressure and impulse: table blast_named_load, recalled"),
    R(probability, GW_RATIO, .help = "of breakage; absent: 0.008"),
    R(temperature, GW_TEMPERATURE, LIMITS(200, 400), .help = "of interlayers; absent: 50 degC"),
    PICK(response_case, edition, gw_glass_standard_choices, .fallback = "e1300-16", .help = "of ASTM E1300"),
    FIELD(response_case, "basis", route, GW_T_CHOICE, .choices = gw_glass_route_choices, .fallback = "lower",
          .help = "of the strength"),
    R(rated_pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e9), LIKELY(1000, 1e7),
      .help = "of a test or product"),
    R(rated_impulse, GW_IMPULSE, .flags = GW_MAGNITUDE, LIMITS(0, 1e7), LIKELY(10, 1e5),
      .help = "of a test or product"),
};
static const struct gw_record RESPONSE_CASE_RECORD = RECORD("response", response_case, RESPONSE);

#define A(key_, member_, dim_, help_) OUT(response_answer, key_, member_, dim_, help_)
static const struct gw_field ANSWER[] = {
    A("deflection_max", response.deflection, GW_THICKNESS, "center deflection, of the lite as long as it is whole"),
    F(response_answer, breaks, GW_T_BOOL, .help = "the strength at the probability is reached"),
    A("load_factor", response.load_factor, GW_RATIO, "equivalent static pressure over the peak"),
    A("period", curve.period, GW_TIME, "of small oscillations"),
    A("equivalent_static", response.equivalent, GW_PRESSURE, "that bends the lite as far at rest"),
    A("capacity", curve.capacity, GW_PRESSURE, "static, 3 s, at the probability"),
    A("utilisation", response.use, GW_RATIO, "equivalent static pressure over capacity"),
    OUT_TEXT(response_answer, "basis", curve.governing, "of the capacity"),
    A("pressure", demand.pressure, GW_PRESSURE, "peak of the demand"),
    A("impulse", demand.impulse, GW_IMPULSE, "of the demand"),
    A("duration", duration, GW_TIME, "of the triangle"),
    A("time_of_largest", response.time, GW_TIME, "after arrival"),
    A("breaking_pressure", breaking.pressure, GW_PRESSURE, "that just breaks the glass, at this duration"),
    A("breaking_impulse", breaking.impulse, GW_IMPULSE, "that goes with it"),
    A("least_breaking_pressure", least.pressure, GW_PRESSURE, "below it no impulse breaks the glass"),
    A("least_breaking_impulse", least.impulse, GW_IMPULSE, "below it no pressure does"),
    A("load_mass_factor", curve.load_mass_factor, GW_RATIO, "of the center, small deflections"),
    A("mass_per_area", curve.mass, GW_RATIO, "of the glass that moves, kg/m2"),
    F(response_answer, rating_covers, GW_T_BOOL, .help = "both numbers of the rating reach the demand"),
    A("energy_residual", response.energy_residual, GW_RATIO, "work less strain energy at the largest deflection"),
    OUT_WHOLE(response_answer, "steps", response.steps, "in time"),
};
static const struct gw_record RESPONSE_ANSWER_RECORD = RECORD("response result", response_answer, ANSWER);

static void note(struct response_answer *answer, const char *constant)
{
    if (answer->n_notes < NOTES_MOST) answer->notes[answer->n_notes++] = constant;
}

static enum gw_status find_demand(struct response_answer *answer, const struct response_case *given,
                                  struct gw_engine *engine)
{
    const struct gw_blast_demand demand = {.load = {given->pressure, given->impulse},
                                           .burst = {given->charge, given->standoff, given->angle},
                                           .level = given->level};
    const enum gw_status status = gw_blast_find_load(&answer->demand, &demand, engine);
    answer->duration = status ? GW_ABSENT : gw_blast_duration(answer->demand);
    return status;
}

static enum gw_status find_rating(struct response_answer *answer, const struct response_case *given,
                                  struct gw_engine *engine)
{
    const bool pressure = gw_given(given->rated_pressure), impulse = gw_given(given->rated_impulse);
    const struct gw_blast_pair rating = {given->rated_pressure, given->rated_impulse};
    answer->rating_covers = GW_UNSAID;
    if (!pressure && !impulse) return GW_OK;
    if (!pressure || !impulse)
        return gw_refuse(engine, GW_MISSING, pressure ? "rated_impulse" : "rated_pressure",
                         "a blast rating is both numbers, pressure and impulse");
    answer->rating_covers = gw_blast_covers(rating, answer->demand) ? GW_YES : GW_NO;
    return GW_OK;
}

static enum gw_status find_curve(struct response_answer *answer, const struct response_case *given,
                                 struct gw_engine *engine)
{
    struct gw_lite lite = {.width = given->width,
                           .height = given->height,
                           .temperature = given->temperature,
                           .probability = given->probability,
                           .edges = 4,
                           .edition = given->edition,
                           .route = given->route};
    const enum gw_status status = gw_make_up_from(&lite.make_up, given->layers.items, given->layers.n, engine);
    if (status) return status;
    return gw_blast_curve(&answer->curve, &lite, given->unit == GW_BLAST_INNER_ALONE, engine);
}

/* Margins of the demand; none where the strength lies beyond the plate's solution. */
static enum gw_status find_margins(struct response_answer *answer, struct gw_engine *engine)
{
    answer->least = answer->breaking = (struct gw_blast_pair){GW_ABSENT, GW_ABSENT};
    enum gw_status status = gw_blast_asymptotes(&answer->least, &answer->curve, engine);
    if (!status) status = gw_blast_breaking(&answer->breaking, &answer->curve, answer->duration, engine);
    if (status != GW_OUTSIDE_METHOD) return status;
    note(answer, "the strength lies beyond the plate's solution: no breaking pair is found");
    return GW_OK;
}

static bool laminated(const struct response_case *given)
{
    for (size_t i = 0; i < given->layers.n; i++)
        if (given->layers.items[i].interlayer) return true;
    return false;
}

static void add_notes(struct response_answer *answer, const struct response_case *given)
{
    note(answer, "the load is for the owner's security consultant to say; a blast check does not replace a licensed "
                 "engineer's");
    note(answer,
         "one degree of freedom on the plate's static curve, no damping, up to the first fracture; the strength "
         "is that of a static load of 3 s; mass of the glass alone, without interlayers; rebound, frame and "
         "anchors are not checked");
    for (int i = 0; i < answer->curve.n_notes; i++) note(answer, answer->curve.notes[i]);
    if (answer->breaks == GW_YES)
        note(answer, laminated(given) ? "the glass cracks: what a laminated pane holds afterwards, and the hazard, are "
                                        "not computed here"
                                      : "the glass breaks: single plies leave fragments");
    if (answer->breaks == GW_YES && !gw_given(answer->response.deflection))
        note(answer, "as a whole pane it would bend further than the plate's solution reaches");
    if (answer->curve.inner_alone)
        note(answer, "the inner pane takes the whole load by itself, and single-pane type factors; outer panes and gas "
                     "count for nothing");
    if (answer->curve.inner_alone && answer->curve.passed_on > 1)
        note(answer, "the outer panes are lighter than the inner one: a stiff cavity can pass on more impulse than the "
                     "inner pane alone would take, at most 2 m/(m + m_outer) times it");
    if (answer->rating_covers == GW_NO)
        note(answer, "the rating does not cover the demand: a test at a higher pressure but a lower impulse, or the "
                     "other way round, does not");
}

static enum gw_status run_response(void *out, const void *in, struct gw_engine *engine)
{
    const struct response_case *given = in;
    struct response_answer *answer = out;
    answer->n_notes = 0;
    enum gw_status status = find_demand(answer, given, engine);
    if (!status) status = find_rating(answer, given, engine);
    if (!status) status = find_curve(answer, given, engine);
    if (!status) status = gw_blast_respond(&answer->response, &answer->curve, answer->demand, engine);
    if (!status) status = find_margins(answer, engine);
    if (status) return status;
    answer->breaks = answer->response.breaks ? GW_YES : GW_NO;
    add_notes(answer, given);
    return GW_OK;
}

static const char *const *response_notes(const void *out, size_t *n)
{
    const struct response_answer *answer = out;
    *n = answer->n_notes;
    return answer->notes;
}

const struct gw_calc_kind gw_kind_response = {
    .name = "response",
    .help = "lite under a blast: deflection, break, the pairs of pressure and impulse that break it",
    .example = "width='1.2 m' height='1.8 m' layers='[{glass: 6 mm, treatment: heat_strengthened}, {interlayer: pvb, "
               "thickness: 1.52 mm}, {glass: 6 mm, treatment: heat_strengthened}]' pressure='4 psi' "
               "impulse='28 psi-ms' probability=0.008",
    .input = &RESPONSE_CASE_RECORD,
    .output = &RESPONSE_ANSWER_RECORD,
    .run = run_response,
    .workspace = GW_PLATE_WORKSPACE,
    .notes = response_notes};

void gw_response_chart(struct gw_response_chart *chart, const void *in, const void *out)
{
    const struct response_case *given = in;
    const struct response_answer *answer = out;
    *chart = (struct gw_response_chart){.curve = &answer->curve,
                                        .layers = given->layers.items,
                                        .n_layers = given->layers.n,
                                        .probability = given->probability,
                                        .demand = answer->demand,
                                        .breaking = answer->breaking,
                                        .least = answer->least,
                                        .rating = {given->rated_pressure, given->rated_impulse},
                                        .breaks = answer->response.breaks,
                                        .use = answer->response.use,
                                        .notes = answer->notes,
                                        .n_notes = answer->n_notes};
}
