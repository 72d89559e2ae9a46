/* Horizontals, of 'galeward calc': connection, rail_dead_load. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/fastener.h"
#include "galeward/model.h"

/* connection */

struct connection_case {
    enum gw_rail_end connection;
    double wind, dead, diameter, allowable, spline_tested, safety_factor;
    const struct gw_fastener_place *load;
    GW_LIST(struct gw_fastener_place) fasteners;
};

static const struct gw_choice CONNECTIONS[] = {{"shear_block", GW_SHEAR_BLOCK, "block screwed to the vertical"},
                                               {"screw_spline", GW_SCREW_SPLINE, "screws into slots of the horizontal"},
                                               {0}};
static const struct gw_field PLACE_FIELDS[] = {
    NUM(gw_fastener_place, x, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(-10, 10), .help = "into the wall"),
    NUM(gw_fastener_place, y, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(-10, 10), .help = "up"),
};
static const struct gw_record PLACE_RECORD = RECORD("place", gw_fastener_place, PLACE_FIELDS);
static const struct gw_field CONNECTION[] = {
    PICK(connection_case, connection, CONNECTIONS, .flags = GW_REQUIRED, .help = "shear_block or screw_spline"),
    NUM(connection_case, wind, GW_FORCE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "reaction at this end, either way"),
    NUM(connection_case, dead, GW_FORCE, .flags = GW_REQUIRED | GW_MAGNITUDE, LIMITS(0, 1e7),
        .help = "reaction at this end"),
    F(connection_case, load, GW_T_RECORD, .record = &PLACE_RECORD, .flags = GW_REQUIRED, .help = "where the two act"),
    F(connection_case, fasteners, GW_T_RECORD, .record = &PLACE_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "places, seen along the horizontal"),
    NUM(connection_case, diameter, GW_THICKNESS, LIMITS(0.0001, 0.1), .help = "of a fastener; checks the spacing"),
    NUM(connection_case, allowable, GW_FORCE, LIMITS(1, 1e7),
        .help = "in shear of one: least of screw, bearing in each part, tilting"),
    NUM(connection_case, spline_tested, GW_FORCE, LIMITS(1, 1e7),
        .help = "nominal in shear of one screw in its slot, by test: no formula holds"),
    NUM(connection_case, safety_factor, GW_RATIO, LIMITS(1, 10), .help = "of spline_tested; absent: the screw's, 3.0"),
};
static const struct gw_record CONNECTION_CASE_RECORD = RECORD("connection", connection_case, CONNECTION);

#define C(key_, member_, dim_, help_) OUT(gw_connection_result, key_, member_, dim_, help_)
static const struct gw_field CONNECTION_ANSWER[] = {
    C("resultant", resultant, GW_FORCE, "of wind and dead load"),
    C("moment", moment, GW_MOMENT, "about the middle of the fasteners"),
    C("fastener_shear", fastener, GW_FORCE, "of the most loaded one"),
    OUT_WHOLE(gw_connection_result, "fastener", worst, "which, from 0"),
    C("fastener_allowable", allowable, GW_FORCE, "of one"),
    C("utilisation", utilization, GW_RATIO, ""),
};
static const struct gw_record CONNECTION_ANSWER_RECORD =
    RECORD("connection result", gw_connection_result, CONNECTION_ANSWER);

static enum gw_status run_connection(void *out, const void *in, struct gw_engine *engine)
{
    const struct connection_case *given = in;
    const struct gw_connection_case end = {.kind = given->connection,
                                           .wind = given->wind,
                                           .dead = given->dead,
                                           .load = *given->load,
                                           .fasteners = given->fasteners.items,
                                           .n_fasteners = given->fasteners.n,
                                           .diameter = given->diameter,
                                           .allowable = given->allowable,
                                           .tested = given->spline_tested,
                                           .safety_factor = given->safety_factor};
    return gw_connection(out, &end, engine);
}

const struct gw_calc_kind gw_kind_connection = {
    .name = "connection",
    .help = "end of a horizontal on its fasteners: shear block, or screws in slots",
    .example =
        "connection=shear_block wind='450 lb' dead='100 lb' load='{x: 0 in, y: 0 in}' fasteners='[{x: 1 in, y: 0 "
        "in}, {x: 3 in, y: 0 in}]' allowable='380 lb'",
    .input = &CONNECTION_CASE_RECORD,
    .output = &CONNECTION_ANSWER_RECORD,
    .run = run_connection};

/* rail_dead_load */

struct rail_case {
    double glass_weight, span, block_offset, elastic_modulus, inertia, shear_modulus, torsion_constant, eccentricity;
};

static const struct gw_field RAIL[] = {
    NUM(rail_case, glass_weight, GW_FORCE, .flags = GW_REQUIRED, LIMITS(0, 1e6), .help = "of the whole lite"),
    NUM(rail_case, span, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "between verticals"),
    NUM(rail_case, block_offset, GW_LENGTH, LIMITS(0.001, 20),
        .help = "of a setting block from its end; absent: quarter points"),
    NUM(rail_case, elastic_modulus, GW_STRESS, LIMITS(1e8, 1e12), .help = "absent: no deflection"),
    NUM(rail_case, inertia, GW_INERTIA, LIMITS(1e-12, 1), .help = "about the horizontal axis in the wall's plane"),
    NUM(rail_case, shear_modulus, GW_STRESS, LIMITS(1e8, 1e12), .help = "absent: no twist"),
    NUM(rail_case, torsion_constant, GW_INERTIA, LIMITS(1e-14, 1), .help = "goes with shear_modulus"),
    NUM(rail_case, eccentricity, GW_THICKNESS, LIMITS(-1, 1), .help = "glass from the shear center"),
};
static const struct gw_record RAIL_CASE_RECORD = RECORD("horizontal", rail_case, RAIL);

#define R(key_, member_, dim_, help_) OUT(gw_rail_result, key_, member_, dim_, help_)
static const struct gw_field RAIL_ANSWER[] = {
    R("block_offset", offset, GW_LENGTH, ""),
    R("moment", moment, GW_MOMENT, "between the blocks"),
    R("deflection", deflection, GW_THICKNESS, "midspan"),
    R("deflection_limit", deflection_limit, GW_THICKNESS, "smaller of span/360 and 1/8 in"),
    R("twist", twist, GW_ANGLE, "at a block, ends held"),
    R("twist_limit", twist_limit, GW_ANGLE, ""),
};
static const struct gw_record RAIL_ANSWER_RECORD = RECORD("horizontal result", gw_rail_result, RAIL_ANSWER);

static enum gw_status run_rail(void *out, const void *in, struct gw_engine *engine)
{
    const struct rail_case *given = in;
    const struct gw_rail_case rail = {.weight = given->glass_weight,
                                      .span = given->span,
                                      .offset = given->block_offset,
                                      .elastic_modulus = given->elastic_modulus,
                                      .inertia = given->inertia,
                                      .shear_modulus = given->shear_modulus,
                                      .torsion_constant = given->torsion_constant,
                                      .eccentricity = given->eccentricity};
    return gw_rail_dead_load(out, &rail, engine);
}

static const char *const *rail_notes(const void *out, size_t *n)
{
    const struct gw_rail_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

const struct gw_calc_kind gw_kind_rail_dead_load = {
    .name = "rail_dead_load",
    .help = "horizontal under the weight of its glass: moment, deflection, twist",
    .example = "glass_weight='195 lb' span='60 in' block_offset='15 in' elastic_modulus='10100 ksi' inertia='1.2 in4'",
    .input = &RAIL_CASE_RECORD,
    .output = &RAIL_ANSWER_RECORD,
    .run = run_rail,
    .notes = rail_notes};

/* Chair --------------------------------------------------------------------------------------------------------------
 */

struct chair_case {
    double weight, arm, length, thickness;
    enum gw_metal alloy;
};
static const struct gw_field CHAIR[] = {
    NUM(chair_case, weight, GW_FORCE, .flags = GW_REQUIRED, LIMITS(0, 1e6), .help = "on one block"),
    NUM(chair_case, arm, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0001, 1), .help = "of the weight from its root"),
    NUM(chair_case, length, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.001, 2), .help = "along the horizontal"),
    NUM(chair_case, thickness, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.0005, 0.1), .help = "of the leg"),
    PICK(chair_case, alloy, gw_metal_choices, .flags = GW_REQUIRED, .help = "alloy and temper"),
};
static const struct gw_record CHAIR_RECORD = RECORD("setting chair", chair_case, CHAIR);
static const struct gw_field CHAIR_ANSWER[] = {
    OUT(gw_chair_result, "moment", moment, GW_MOMENT, "at its root"),
    OUT(gw_chair_result, "allowable", allowable, GW_MOMENT, "plastic, by yielding or rupture over the safety factor"),
    OUT(gw_chair_result, "stress", stress, GW_STRESS, "on the elastic modulus"),
    OUT(gw_chair_result, "deflection", deflection, GW_THICKNESS, "at the block"),
    OUT(gw_chair_result, "deflection_limit", deflection_limit, GW_THICKNESS, "practice"),
};
static const struct gw_record CHAIR_ANSWER_RECORD = RECORD("setting chair result", gw_chair_result, CHAIR_ANSWER);

static enum gw_status run_chair(void *out, const void *in, struct gw_engine *engine)
{
    const struct chair_case *c = in;
    struct gw_alloy alloy;
    const enum gw_status status = gw_alloy_find(&alloy, c->alloy, c->thickness, false, engine);
    if (status != GW_OK) return status;
    const struct gw_chair_case chair = {
        c->weight, c->arm, c->length, c->thickness, {alloy.ultimate, alloy.yield, alloy.elastic_modulus, GW_ABSENT}};
    gw_setting_chair(out, &chair, engine);
    return GW_OK;
}

const struct gw_calc_kind gw_kind_setting_chair = {
    .name = "setting_chair",
    .help = "leg or chair that bears a setting block beyond a horizontal",
    .example = "weight='97.5 lb' arm='0.6 in' length='4 in' thickness='1/8 in' alloy=6063-T6",
    .input = &CHAIR_RECORD,
    .output = &CHAIR_ANSWER_RECORD,
    .run = run_chair};
