/* Field tables of 'galeward calc anchor_bolts': bolts of an anchor under weight and wind at once. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/anchor.h"
#include "galeward/model.h"

#define FORCE(key_, ...) NUM(bolts_case, key_, GW_FORCE, LIMITS(0, 1e9), __VA_ARGS__)

struct bolts_case {
    double inward, outward, dead, eccentricity, bolt_arm, prying, bolt_tension, bolt_shear;
    int bolts;
    enum gw_interaction bolt_interaction;
};
struct bolts_answer {
    struct gw_anchor_bolts worst;
    const char *wind;
};
static const struct gw_field BOLTS[] = {
    FORCE(inward, .flags = GW_REQUIRED, .help = "reaction under wind, allowable-stress level"),
    FORCE(outward, .flags = GW_REQUIRED, .help = "the same the other way"),
    FORCE(dead, .flags = GW_REQUIRED, .help = "weight that hangs on the anchor; 0: it is slotted"),
    NUM(bolts_case, eccentricity, GW_THICKNESS, .fallback = "0 mm", LIMITS(-5, 5),
        .help = "of the weight, outside of the bearing"),
    NUM(bolts_case, bolt_arm, GW_THICKNESS, LIMITS(0.001, 5), .help = "of the bolts against it"),
    F(bolts_case, bolts, GW_T_INTEGER, .fallback = "1", LIMITS(1, 64), .help = "that share both"),
    NUM(bolts_case, prying, GW_RATIO, .fallback = "1", LIMITS(1, 10), .help = "bolt pull over that without prying"),
    FORCE(bolt_tension, .flags = GW_REQUIRED, .help = "allowable of one"),
    FORCE(bolt_shear, .flags = GW_REQUIRED, .help = "allowable of one"),
    PICK(bolts_case, bolt_interaction, gw_bolt_interaction_choices, .fallback = "linear", .help = "of the two"),
};
static const struct gw_record BOLTS_RECORD = RECORD("anchor bolts", bolts_case, BOLTS);
static const struct gw_field BOLTS_ANSWER[] = {
    OUT_TEXT(bolts_answer, "combination", worst.name, "that uses most"),
    OUT_TEXT(bolts_answer, "wind", wind, "inward or outward in it"),
    OUT(bolts_answer, "tension", worst.tension, GW_FORCE, "of one bolt in it"),
    OUT(bolts_answer, "shear", worst.shear, GW_FORCE, "of one bolt in it"),
    OUT(bolts_answer, "utilisation", worst.use, GW_RATIO, "of both at once, at most 1"),
};
static const struct gw_record BOLTS_ANSWER_RECORD = RECORD("anchor bolts result", bolts_answer, BOLTS_ANSWER);

static enum gw_status run_bolts(void *out, const void *in, struct gw_engine *engine)
{
    const struct bolts_case *c = in;
    struct bolts_answer *answer = out;
    if (fabs(c->eccentricity) > 0 && !gw_given(c->bolt_arm))
        return gw_refuse(engine, GW_MISSING, "bolt_arm", "an eccentric weight wants the lever arm of the bolts");
    if (!(c->bolt_tension > 0) || !(c->bolt_shear > 0))
        return gw_refuse(engine, GW_BAD_VALUE, c->bolt_tension > 0 ? "bolt_shear" : "bolt_tension",
                         "a bolt takes more than nothing");
    const struct gw_anchor_case anchor = {
        .eccentricity = c->eccentricity, .bolt_arm = c->bolt_arm, .bolts = c->bolts, .prying = c->prying};
    const struct gw_anchor_bolt_case loads = {c->inward,       c->outward,    c->dead,
                                              c->bolt_tension, c->bolt_shear, c->bolt_interaction};
    gw_anchor_bolts(&answer->worst, &loads, &anchor, engine);
    answer->wind = answer->worst.inward ? "inward" : "outward";
    return GW_OK;
}

const struct gw_calc_kind gw_kind_anchor_bolts = {
    .name = "anchor_bolts",
    .help = "bolts of an anchor under weight and wind at once, in tension and shear",
    .example = "inward='1950 lb' outward='2730 lb' dead='650 lb' eccentricity='4 in' bolt_arm='5 in' bolts=2 "
               "bolt_tension='2600 lb' bolt_shear='1500 lb'",
    .input = &BOLTS_RECORD,
    .output = &BOLTS_ANSWER_RECORD,
    .run = run_bolts};
