/* Of 'galeward calc shedding'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/shedding.h"

struct shedding_case {
    double span, pressure, height_above, height_below;
    enum gw_held_edges held_above, held_below;
    double elastic_modulus, inertia;
};
struct shedding_answer {
    double moment, reaction, deflection, peak;
};

static const struct gw_choice HELD[] = {{"all_round", GW_HELD_ALL_ROUND, "four edges: 45-degree lines"},
                                        {"head_and_sill", GW_HELD_HEAD_AND_SILL, "half to each"},
                                        {"jambs", GW_HELD_JAMBS, "taken as all round"},
                                        {"otherwise", GW_HELD_OTHERWISE, "three edges or one: all of it here"},
                                        {0}};
static const struct gw_field CASE[] = {
    NUM(shedding_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 50),
        .help = "of the horizontal, held at both ends: the width of the lites"),
    NUM(shedding_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, .help = "of the level wanted"),
    NUM(shedding_case, height_above, GW_LENGTH, .fallback = "0 ft", LIMITS(0, 50),
        .help = "of the lite above; 0: no glass"),
    PICK(shedding_case, held_above, HELD, .fallback = "all_round", .help = "edges of the lite above"),
    NUM(shedding_case, height_below, GW_LENGTH, .fallback = "0 ft", LIMITS(0, 50),
        .help = "of the lite below; 0: no glass"),
    PICK(shedding_case, held_below, HELD, .fallback = "all_round", .help = "edges of the lite below"),
    NUM(shedding_case, elastic_modulus, GW_STRESS, LIMITS(1e6, 1e13), .help = "with inertia, for the deflection"),
    NUM(shedding_case, inertia, GW_INERTIA, LIMITS(1e-14, 1), .help = "moment of inertia"),
};
static const struct gw_record SHEDDING_CASE_RECORD = RECORD("shedding", shedding_case, CASE);

static const struct gw_field ANSWER[] = {
    NUM(shedding_answer, moment, GW_MOMENT, .help = "at midspan, of both lites"),
    NUM(shedding_answer, reaction, GW_FORCE, .help = "at one end"),
    NUM(shedding_answer, peak, GW_LINE_LOAD, .help = "greatest load along it, at midspan: what screws and plates feel"),
    NUM(shedding_answer, deflection, GW_LENGTH, .help = "at midspan; absent without elastic_modulus and inertia"),
};
static const struct gw_record SHEDDING_ANSWER_RECORD = RECORD("shedding result", shedding_answer, ANSWER);

static enum gw_status run_shedding(void *out, const void *in, struct gw_engine *engine)
{
    const struct shedding_case *given = in;
    struct shedding_answer *answer = out;
    const struct gw_shed_case shed = {given->span,
                                      given->pressure,
                                      {given->height_above, given->held_above},
                                      {given->height_below, given->held_below}};
    if (gw_given(given->elastic_modulus) != gw_given(given->inertia))
        return gw_refuse(engine, GW_MISSING, gw_given(given->inertia) ? "elastic_modulus" : "inertia",
                         "a deflection wants elastic_modulus and inertia");
    answer->moment = gw_shed_moment(&shed, engine);
    answer->reaction = gw_shed_reaction(&shed, engine);
    struct gw_shed_reach reach;
    gw_shed_reach(&reach, &shed, engine);
    answer->peak = given->pressure * (reach.above + reach.below);
    answer->deflection = gw_given(given->inertia)
                             ? gw_shed_deflection(&shed, given->elastic_modulus, given->inertia, engine)
                             : GW_ABSENT;
    return GW_OK;
}

const struct gw_calc_kind gw_kind_shedding = {
    .name = "shedding",
    .help = "what lites give to the horizontal between them: moment, reaction, deflection",
    .example = "span='5 ft' pressure='30 psf' height_above='6 ft' height_below='30 in'",
    .input = &SHEDDING_CASE_RECORD,
    .output = &SHEDDING_ANSWER_RECORD,
    .run = run_shedding};
