/* A plate that clamps two lites on a line of screws, under suction.
 *
 * Along the screws a beam of equal spans s with an overhang a at each end, line load w. Far from the ends w s^2/12 over
 * each screw. What the ends differ from that dies out by lambda = sqrt(3) - 2 a span (three-moment equation): m_i = m +
 * (m_0 - m)(lambda^i + lambda^(N-i))/(1 + lambda^N), m_0 = w a^2/2. */
#include "fastener_internal.h"

#include "tables_data.h"

static const char BEAM_CLAUSE[] = "continuous beam on the screws, three-moment equation";
static const char ACROSS_CLAUSE[] = "cantilever from the screws to the gasket";
static const char ALLOWABLE_CLAUSE[] = "ADM 2015 F.1, F.2";

static const char NOTE_CHASE[] =
    "the utilization is not shown: pull-out from a chase has no formula, give chase_tested, "
    "the tested nominal strength of a screw";
static const char NOTE_SCREW[] =
    "the utilization is not shown: the strength of the screw and of the plate under its head "
    "is not given";
static const char NOTE_SECTION[] =
    "the utilization is not shown: the section and alloy of the plate and the arm of its "
    "gaskets are not given";
static const char NOTE_SPACING[] = "screws are farther apart than pressure plates are usually fastened";
static const char NOTE_END[] = "the end screw is farther from the joint than pressure plates are usually fastened";
static const char NOTE_UPPER[] = "with a stop under the plate the screw carries the larger of preload and suction; "
                                 "tension_upper is for a soft joint and is compared with the tested nominal";

/* Spans of a long plate: so many that its other end does not matter. Screws from an end that are looked at. */
enum { FAR = 1000, NEAR = 5 };

struct beam {
    double load, span, overhang; /* N/m, m, m */
    int spans;
    double inner, end;  /* Nm over a screw, far from the ends and at the end */
    double share[NEAR]; /* of what the end differs by, by screws from it */
    bool has_end;
};

static enum gw_status check(const struct gw_pressure_plate_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_magnitude("pressure", in->pressure, engine);
    if (!status) status = gw_fastener_magnitude("width_left", in->width_left, engine);
    if (!status) status = gw_fastener_magnitude("width_right", in->width_right, engine);
    if (!status) status = gw_fastener_positive("spacing", in->spacing, engine);
    if (!status) status = gw_fastener_positive_if_given("length", in->length, engine);
    if (!status) status = gw_fastener_magnitude_if_given("end_distance", in->end_distance, engine);
    if (!status) status = gw_fastener_magnitude_if_given("gasket_load", in->gasket_load, engine);
    if (!status) status = gw_fastener_magnitude_if_given("preload", in->preload, engine);
    if (!status) status = gw_fastener_positive_if_given("screw_allowable", in->screw_allowable, engine);
    if (status) return status;
    if (in->width_left + in->width_right <= 0)
        return gw_refuse(engine, GW_BAD_VALUE, "width_left", "there is no glass on either side of the plate");
    if (gw_given(in->length) && !gw_given(in->end_distance))
        return gw_refuse(engine, GW_MISSING, "end_distance", "a plate with a length wants its end_distance");
    return GW_OK;
}

static enum gw_status lay_out(struct gw_pressure_plate_result *out, struct beam *beam,
                              const struct gw_pressure_plate_case *in, struct gw_engine *engine)
{
    const double between = in->length - 2 * in->end_distance;
    *beam = (struct beam){.span = in->spacing, .overhang = in->end_distance, .spans = FAR};
    beam->has_end = gw_given(in->end_distance);
    out->fasteners = 0;
    if (!gw_given(in->length)) return GW_OK;
    if (!(between > 0))
        return gw_refuse(engine, GW_BAD_VALUE, "length", "the plate is too short for two screws at end_distance");
    const double spans = ceil(between / in->spacing * (1 - GW_HAIR));
    if (spans >= FAR)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "length", "more than {} screws", gw_of_number(FAR, 4));
    beam->spans = (int)spans;
    beam->span = between / spans;
    out->fasteners = beam->spans + 1;
    GW_STEP(engine, "s", GW_THICKNESS, beam->span, BEAM_CLAUSE, "(L-2*a)/N", {"L", in->length, GW_THICKNESS},
            {"a", in->end_distance, GW_THICKNESS}, {"N", spans, GW_RATIO});
    return GW_OK;
}

static void find_shares(struct beam *b)
{
    const double lambda = sqrt(3) - 2, whole = 1 + pow(lambda, b->spans);
    for (int i = 0; i < NEAR; i++) b->share[i] = (pow(lambda, i) + pow(lambda, b->spans - i)) / whole;
}

/* Moment over screw i, counted from an end; positive lifts the plate's middle from the screw's head. */
static double moment_at(const struct beam *b, int i)
{
    return b->has_end ? b->inner + (b->end - b->inner) * b->share[i] : b->inner;
}

static double reaction_at(const struct beam *b, int i)
{
    const double here = moment_at(b, i), s = b->span;
    if (!b->has_end) return b->load * s;
    if (i == 0) return b->load * (b->overhang + s / 2) + (here - moment_at(b, 1)) / s;
    if (i == b->spans) return reaction_at(b, 0);
    return b->load * s + (2 * here - moment_at(b, i - 1) - moment_at(b, i + 1)) / s;
}

static double middle_of_span(const struct beam *b, int i)
{
    const double s = b->span;
    return 5 * b->load * pow(s, 4) / 384 - (moment_at(b, i) + moment_at(b, i + 1)) * s * s / 16;
}

/* The ends' influence alternates and falls to a quarter a span: the largest is among the first few. */
static int largest(double (*at)(const struct beam *, int), const struct beam *b, int last)
{
    int best = 0;
    for (int i = 1; i <= last && i <= 3; i++)
        if (at(b, i) > at(b, best) * (1 + GW_HAIR)) best = i;
    return best;
}

#define PRESSURE_AND_WIDTH                                                                                             \
    {"p", in->pressure, GW_STRESS}, { "b", (in->width_left + in->width_right) / 2, GW_THICKNESS }

static void tensions(struct gw_pressure_plate_result *out, const struct beam *b,
                     const struct gw_pressure_plate_case *in, struct gw_engine *engine)
{
    const int worst = largest(reaction_at, b, b->spans);
    out->tension = b->load * b->span;
    out->tension_most = reaction_at(b, worst);
    GW_STEP(engine, "N", GW_FORCE, out->tension, "tributary area", "p*b*s", PRESSURE_AND_WIDTH,
            {"s", b->span, GW_THICKNESS});
    if (b->has_end && worst == 0)
        GW_STEP(engine, "N_most", GW_FORCE, out->tension_most, BEAM_CLAUSE, "p*b*(a+s/2)+(m_0-m_1)/s",
                PRESSURE_AND_WIDTH, {"a", b->overhang, GW_THICKNESS}, {"s", b->span, GW_THICKNESS},
                {"m_0|m", moment_at(b, 0), GW_BENDING}, {"m_1|m", moment_at(b, 1), GW_BENDING});
    else if (b->has_end)
        GW_STEP(engine, "N_most", GW_FORCE, out->tension_most, BEAM_CLAUSE, "p*b*s+(2*m_1-m_0-m_2)/s",
                PRESSURE_AND_WIDTH, {"s", b->span, GW_THICKNESS}, {"m_1|m", moment_at(b, worst), GW_BENDING},
                {"m_0|m", moment_at(b, worst - 1), GW_BENDING}, {"m_2|m", moment_at(b, worst + 1), GW_BENDING});
    out->tension_upper = gw_given(in->preload) ? in->preload + out->tension_most : GW_ABSENT;
    if (!gw_given(in->preload)) return;
    GW_STEP(engine, "N_upper", GW_FORCE, out->tension_upper, "soft joint", "F_0+N", {"F_0", in->preload, GW_FORCE},
            {"N", out->tension_most, GW_FORCE});
}

static void moments(struct gw_pressure_plate_result *out, struct beam *b, const struct gw_pressure_plate_case *in,
                    struct gw_engine *engine)
{
    b->inner = b->load * b->span * b->span / 12;
    GW_STEP(engine, "m", GW_BENDING, b->inner, BEAM_CLAUSE, "p*b*s^2/12", PRESSURE_AND_WIDTH,
            {"s", b->span, GW_THICKNESS});
    out->moment = b->inner;
    out->end_equal_moment = b->span / sqrt(6);
    if (!b->has_end) return;
    b->end = out->moment_end = b->load * b->overhang * b->overhang / 2;
    GW_STEP(engine, "m_0", GW_BENDING, b->end, BEAM_CLAUSE, "p*b*a^2/2", PRESSURE_AND_WIDTH,
            {"a", b->overhang, GW_THICKNESS});
    find_shares(b);
    const int worst = largest(moment_at, b, b->spans);
    out->moment = moment_at(b, worst);
    if (worst == 0) return;
    GW_STEP(engine, "m_most", GW_BENDING, out->moment, BEAM_CLAUSE, "m+(m_0-m)*f", {"m", b->inner, GW_BENDING},
            {"m_0|m", b->end, GW_BENDING}, {"f", (out->moment - b->inner) / (b->end - b->inner), GW_RATIO});
}

static void deflect(struct gw_pressure_plate_result *out, const struct beam *b, const struct gw_pressure_plate_case *in,
                    struct gw_engine *engine)
{
    const double stiffness = in->section->metal.elastic_modulus * in->section->inertia, s = b->span, a = b->overhang;
    const int worst = largest(middle_of_span, b, b->spans - 1);
    if (!gw_given(stiffness)) return;
    out->deflection = middle_of_span(b, worst) / stiffness;
    GW_STEP(engine, "d", GW_THICKNESS, out->deflection, BEAM_CLAUSE, "(5*p*b*s^4/384-(m_1+m_2)*s^2/16)/(E*I)",
            PRESSURE_AND_WIDTH, {"s", s, GW_THICKNESS}, {"m_1|m", moment_at(b, worst), GW_BENDING},
            {"m_2|m", moment_at(b, worst + 1), GW_BENDING}, {"E", in->section->metal.elastic_modulus, GW_STRESS},
            {"I", in->section->inertia, GW_INERTIA});
    if (!b->has_end) return;
    const double turn = b->load * pow(s, 3) / 24 - (2 * moment_at(b, 0) + moment_at(b, 1)) * s / 6;
    out->deflection_end = (b->load * pow(a, 4) / 8 - turn * a) / stiffness;
    GW_STEP(engine, "d_end", GW_THICKNESS, out->deflection_end, BEAM_CLAUSE,
            "(p*b*a^4/8-(p*b*s^3/24-(2*m_0+m_1)*s/6)*a)/(E*I)", PRESSURE_AND_WIDTH, {"a", a, GW_THICKNESS},
            {"s", s, GW_THICKNESS}, {"m_0|m", moment_at(b, 0), GW_BENDING}, {"m_1|m", moment_at(b, 1), GW_BENDING},
            {"E", in->section->metal.elastic_modulus, GW_STRESS}, {"I", in->section->inertia, GW_INERTIA});
}

static enum gw_status bend_across(struct gw_pressure_plate_result *out, const struct beam *b,
                                  const struct gw_plate_section *plate, struct gw_engine *engine)
{
    const double hole = gw_given(plate->hole) ? plate->hole : 0, t = plate->thickness;
    const double gasket = fmax(out->gasket_left, out->gasket_right) * b->span;
    if (!gw_given(plate->arm)) return GW_OK;
    enum gw_status status = gw_fastener_positive("plate.arm", plate->arm, engine);
    if (!status) status = gw_fastener_positive("plate.thickness", t, engine);
    if (status) return status;
    if (!(hole >= 0 && hole < b->span)) return gw_refuse(engine, GW_BAD_VALUE, "plate.hole", "the hole is no hole");
    out->stress_across = 6 * gasket * plate->arm / (t * t * (b->span - hole));
    GW_STEP(engine, "sigma_across", GW_STRESS, out->stress_across, ACROSS_CLAUSE, "6*G*e/(t^2*(s-d))",
            {"G", gasket, GW_FORCE}, {"e", plate->arm, GW_THICKNESS}, {"t", t, GW_THICKNESS},
            {"s", b->span, GW_THICKNESS}, {"d", hole, GW_THICKNESS});
    return GW_OK;
}

static enum gw_status strength_of_plate(struct gw_pressure_plate_result *out, const struct gw_plate_section *plate,
                                        struct gw_engine *engine)
{
    const struct gw_fastener_safety *rows = engine->tables->fastener_safety;
    const double yield = GW_USE(engine, &rows[GW_ROW_FASTENER_SAFETY_FLAT_YIELD])->factor;
    const double rupture = GW_USE(engine, &rows[GW_ROW_FASTENER_SAFETY_FLAT_RUPTURE])->factor;
    enum gw_status status = gw_fastener_positive("plate.yield", plate->metal.yield, engine);
    if (!status) status = gw_fastener_positive("plate.ultimate", plate->metal.ultimate, engine);
    if (status) return status;
    out->stress_allowable = fmin(plate->metal.yield / yield, plate->metal.ultimate / rupture);
    GW_STEP(engine, "f_a", GW_STRESS, out->stress_allowable, ALLOWABLE_CLAUSE, "min(F_ty/O_y,F_tu/O_u)",
            {"F_ty|Fty", plate->metal.yield, GW_STRESS}, {"O_y", yield, GW_RATIO},
            {"F_tu|Ftu", plate->metal.ultimate, GW_STRESS}, {"O_u", rupture, GW_RATIO});
    return GW_OK;
}

static enum gw_status bend(struct gw_pressure_plate_result *out, const struct beam *b,
                           const struct gw_pressure_plate_case *in, struct gw_engine *engine)
{
    const struct gw_plate_section *plate = in->section;
    if (!plate) return GW_OK;
    enum gw_status status = gw_fastener_positive("plate.section_modulus", plate->section_modulus, engine);
    if (!status) status = gw_fastener_positive_if_given("plate.inertia", plate->inertia, engine);
    if (status) return status;
    out->stress = out->moment / plate->section_modulus;
    GW_STEP(engine, "sigma", GW_STRESS, out->stress, "elastic section", "M/S", {"M|m", out->moment, GW_BENDING},
            {"S", plate->section_modulus, GW_SECTION_MODULUS});
    deflect(out, b, in, engine);
    status = bend_across(out, b, plate, engine);
    return status ? status : strength_of_plate(out, plate, engine);
}

static void gaskets(struct gw_pressure_plate_result *out, const struct gw_pressure_plate_case *in,
                    struct gw_engine *engine)
{
    const double clamped = gw_given(in->gasket_load) ? in->gasket_load : 0, s = out->spacing;
    out->gasket_left = clamped + in->pressure * in->width_left / 2;
    out->gasket_right = clamped + in->pressure * in->width_right / 2;
    GW_STEP(engine, "G", GW_FORCE, fmax(out->gasket_left, out->gasket_right) * s, "one gasket, a screw's length",
            "G_0+p*b_1/2*s", {"G_0", clamped * s, GW_FORCE}, {"p", in->pressure, GW_STRESS},
            {"b_1|b", fmax(in->width_left, in->width_right), GW_THICKNESS}, {"s", s, GW_THICKNESS});
}

static void note(struct gw_pressure_plate_result *out, const char *text)
{
    fastener_note(out->notes, &out->n_notes, GW_PRESSURE_PLATE_NOTES, text);
}

static void use(struct gw_pressure_plate_result *out, double ratio, const char *name)
{
    if (!gw_given(ratio) || (gw_given(out->utilization) && ratio <= out->utilization)) return;
    out->utilization = ratio;
    out->governing = name;
}

/* Screw, chase, plate: one unknown link and nothing is shown. */
static enum gw_status judge(struct gw_pressure_plate_result *out, const struct gw_pressure_plate_case *in,
                            struct gw_engine *engine)
{
    const bool chase = gw_given(in->chase_tested);
    enum gw_status status =
        chase ? gw_tested_strength(&out->chase, GW_SEAT_CHASE, in->chase_tested, in->safety_factor, engine) : GW_OK;
    if (status) return status;
    if (!chase) note(out, NOTE_CHASE);
    if (!gw_given(in->screw_allowable)) note(out, NOTE_SCREW);
    if (!gw_given(out->stress_across)) note(out, NOTE_SECTION);
    if (!chase || !gw_given(in->screw_allowable) || !gw_given(out->stress_across)) return GW_OK;
    use(out, out->tension_most / out->chase, "chase");
    use(out, out->tension_upper / in->chase_tested, "chase under preload");
    use(out, out->tension_most / in->screw_allowable, "screw");
    use(out, out->stress / out->stress_allowable, "plate");
    use(out, out->stress_across / out->stress_allowable, "plate across");
    return GW_OK;
}

static void look_at_places(struct gw_pressure_plate_result *out, const struct gw_pressure_plate_case *in,
                           struct gw_engine *engine)
{
    const struct gw_plate_fastening *rows = engine->tables->plate_fastening;
    const double spacing = GW_USE(engine, &rows[GW_ROW_PLATE_FASTENING_SPACING])->distance_m;
    const double end = GW_USE(engine, &rows[GW_ROW_PLATE_FASTENING_END])->distance_m;
    if (out->spacing > spacing * (1 + GW_HAIR)) note(out, NOTE_SPACING);
    if (gw_given(in->end_distance) && in->end_distance > end * (1 + GW_HAIR)) note(out, NOTE_END);
    if (gw_given(in->preload)) note(out, NOTE_UPPER);
}

static void clear(struct gw_pressure_plate_result *out)
{
    *out = (struct gw_pressure_plate_result){.governing = NULL};
    out->moment_end = out->deflection = out->deflection_end = GW_ABSENT;
    out->stress = out->stress_across = out->stress_allowable = out->chase = out->utilization = GW_ABSENT;
}

void gw_plate_flat(struct gw_plate_section *out, double width, double hole, double thickness)
{
    const double net = width - (gw_given(hole) ? hole : 0), t = thickness;
    *out = (struct gw_plate_section){.section_modulus = net * t * t / 6,
                                     .inertia = width * t * t * t / 12,
                                     .thickness = GW_ABSENT,
                                     .hole = GW_ABSENT,
                                     .arm = GW_ABSENT};
}

enum gw_status gw_pressure_plate(struct gw_pressure_plate_result *out, const struct gw_pressure_plate_case *in,
                                 struct gw_engine *engine)
{
    struct beam beam;
    clear(out);
    enum gw_status status = check(in, engine);
    if (!status) status = lay_out(out, &beam, in, engine);
    if (status) return status;
    out->spacing = beam.span;
    beam.load = out->line_load = in->pressure * (in->width_left + in->width_right) / 2;
    gaskets(out, in, engine);
    moments(out, &beam, in, engine);
    tensions(out, &beam, in, engine);
    status = bend(out, &beam, in, engine);
    if (!status) status = judge(out, in, engine);
    if (!status) look_at_places(out, in, engine);
    return status;
}

/* Bending along the plate is linear in the suction: one pascal says all. The steps are those of the answer. */
enum gw_status gw_plate_suction(double *out, const struct gw_pressure_plate_case *in, struct gw_engine *engine)
{
    struct gw_trace *trace = engine->trace;
    struct gw_pressure_plate_case alone = *in;
    struct gw_pressure_plate_result r;
    alone.pressure = 1;
    alone.gasket_load = alone.preload = GW_ABSENT;
    if (!in->section) return gw_refuse(engine, GW_MISSING, "plate", "bending of the plate wants its section");
    engine->trace = NULL;
    enum gw_status status = gw_pressure_plate(&r, &alone, engine);
    engine->trace = trace;
    if (status != GW_OK) return status;
    *out = alone.pressure = r.stress_allowable / r.stress;
    return trace ? gw_pressure_plate(&r, &alone, engine) : GW_OK;
}
