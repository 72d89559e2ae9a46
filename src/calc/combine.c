/* Field tables of 'galeward calc corner', 'transom', 'screw_pull', 'anchor_load': loads that act together. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/anchor.h"
#include "galeward/combine.h"

#define MOMENT(struct_, key_, ...) NUM(struct_, key_, GW_MOMENT, LIMITS(0, 1e9), __VA_ARGS__)
#define FORCE(struct_, key_, ...) NUM(struct_, key_, GW_FORCE, LIMITS(0, 1e9), __VA_ARGS__)

/* Corner -------------------------------------------------------------------------------------------------------------
 */

struct corner_case {
    double allowable_moment_x, allowable_moment_y, allowable_shear_x, allowable_shear_y, inertia_x, inertia_y;
};
struct corner_answer {
    double moment, shear, inertia;
};
static const struct gw_field CORNER[] = {
    MOMENT(corner_case, allowable_moment_x, .flags = GW_REQUIRED, .help = "about x alone"),
    MOMENT(corner_case, allowable_moment_y, .flags = GW_REQUIRED, .help = "about y alone"),
    FORCE(corner_case, allowable_shear_x, .help = "with the wind that bends it about x"),
    FORCE(corner_case, allowable_shear_y, .help = "with the wind that bends it about y"),
    NUM(corner_case, inertia_x, GW_INERTIA, LIMITS(1e-14, 1), .help = "moment of inertia about x"),
    NUM(corner_case, inertia_y, GW_INERTIA, LIMITS(1e-14, 1), .help = "moment of inertia about y"),
};
static const struct gw_record CORNER_RECORD = RECORD("corner", corner_case, CORNER);
static const struct gw_field CORNER_ANSWER[] = {
    OUT(corner_answer, "moment", moment, GW_MOMENT, "of each face, both at once and alike"),
    OUT(corner_answer, "shear", shear, GW_FORCE, "the same; absent where one is not known"),
    OUT(corner_answer, "inertia", inertia, GW_INERTIA, "the lesser, which counts for deflection"),
};
static const struct gw_record CORNER_ANSWER_RECORD = RECORD("corner result", corner_answer, CORNER_ANSWER);

static enum gw_status run_corner(void *out, const void *in, struct gw_engine *engine)
{
    const struct corner_case *c = in;
    struct corner_answer *answer = out;
    const bool sheared = gw_given(c->allowable_shear_x) && gw_given(c->allowable_shear_y);
    const bool stiff = gw_given(c->inertia_x) && gw_given(c->inertia_y);
    answer->moment = gw_combine_faces(c->allowable_moment_x, c->allowable_moment_y, 1, GW_BENDING, engine);
    answer->shear =
        sheared ? gw_combine_faces(c->allowable_shear_x, c->allowable_shear_y, 1, GW_FORCE, engine) : GW_ABSENT;
    answer->inertia = stiff ? gw_combine_stiffness(c->inertia_x, 1, c->inertia_y) : GW_ABSENT;
    return GW_OK;
}

const struct gw_calc_kind gw_kind_corner = {.name = "corner",
                                            .help = "corner mullion under both faces at once: what it takes of each",
                                            .example =
                                                "allowable_moment_x='500 kip-in' allowable_moment_y='420 kip-in'",
                                            .input = &CORNER_RECORD,
                                            .output = &CORNER_ANSWER_RECORD,
                                            .run = run_corner};

/* Transom ------------------------------------------------------------------------------------------------------------
 */

struct transom_case {
    double wind_moment, allowable_moment_x, dead_moment, allowable_moment_y, reaction, glass_weight;
    double allowable_shear, torque, allowable_torque;
};
struct transom_answer {
    double use, end, twisted;
};
static const struct gw_field TRANSOM[] = {
    MOMENT(transom_case, wind_moment, .flags = GW_REQUIRED, .help = "about x"),
    MOMENT(transom_case, allowable_moment_x, .flags = GW_REQUIRED, .help = "about x alone"),
    MOMENT(transom_case, dead_moment, .fallback = "0 N-m", .help = "about y, of the glass that rests on it"),
    MOMENT(transom_case, allowable_moment_y, .help = "about y alone; with a dead_moment"),
    FORCE(transom_case, reaction, .fallback = "0 N", .help = "of the wind at one end"),
    FORCE(transom_case, glass_weight, .fallback = "0 N", .help = "of all the glass that rests on it"),
    FORCE(transom_case, allowable_shear, .help = "of the webs; with a torque"),
    MOMENT(transom_case, torque, .fallback = "0 N-m", .help = "of one setting block beside the shear center"),
    MOMENT(transom_case, allowable_torque, .help = "goes with torque"),
};
static const struct gw_record TRANSOM_RECORD = RECORD("transom", transom_case, TRANSOM);
static const struct gw_field TRANSOM_ANSWER[] = {
    OUT(transom_answer, "utilisation", use, GW_RATIO, "M_x/M_ax + M_y/M_ay"),
    OUT(transom_answer, "twisted", twisted, GW_RATIO, "use with shear and twist: sqrt(u_b^2 + (u_v + u_t)^2)"),
    OUT(transom_answer, "end_force", end, GW_FORCE, "that its connection takes: wind, and half of the glass across it"),
};
static const struct gw_record TRANSOM_ANSWER_RECORD = RECORD("transom result", transom_answer, TRANSOM_ANSWER);

static enum gw_status run_transom(void *out, const void *in, struct gw_engine *engine)
{
    const struct transom_case *c = in;
    struct transom_answer *answer = out;
    if (c->dead_moment > 0 && !gw_given(c->allowable_moment_y))
        return gw_refuse(engine, GW_MISSING, "allowable_moment_y", "a dead_moment wants allowable_moment_y");
    answer->use =
        gw_combine_bending(c->wind_moment, c->allowable_moment_x, c->dead_moment, c->allowable_moment_y, engine);
    answer->twisted = GW_ABSENT;
    if (c->torque > 0 && !(gw_given(c->allowable_torque) && gw_given(c->allowable_shear)))
        return gw_refuse(engine, GW_MISSING, gw_given(c->allowable_torque) ? "allowable_shear" : "allowable_torque",
                         "a torque acts with the shear: give what the member takes of both");
    if (c->torque > 0)
        answer->twisted =
            gw_combine_twist(answer->use, c->reaction / c->allowable_shear, c->torque / c->allowable_torque, engine);
    answer->end = gw_combine_end(c->reaction, c->glass_weight, engine);
    return GW_OK;
}

const struct gw_calc_kind gw_kind_transom = {
    .name = "transom",
    .help = "horizontal under wind and glass at once: use in bending, force at its end",
    .example = "wind_moment='3200 in-lb' allowable_moment_x='24 kip-in' dead_moment='1460 in-lb' "
               "allowable_moment_y='12 kip-in' reaction='164 lb' glass_weight='195 lb'",
    .input = &TRANSOM_RECORD,
    .output = &TRANSOM_ANSWER_RECORD,
    .run = run_transom};

/* Screw --------------------------------------------------------------------------------------------------------------
 */

struct pull_case {
    double pressure, width, spacing, pressure_across, width_across;
};
struct pull_answer {
    double tension, width;
};
static const struct gw_field PULL[] = {
    NUM(pull_case, pressure, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, .help = "suction"),
    NUM(pull_case, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 50), .help = "that the screw carries"),
    NUM(pull_case, spacing, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.01, 5), .help = "of the screws"),
    NUM(pull_case, pressure_across, GW_PRESSURE, .flags = GW_MAGNITUDE,
        .help = "of a row at the roof line: on the other side"),
    NUM(pull_case, width_across, GW_LENGTH, LIMITS(0.001, 50), .help = "carried there"),
};
static const struct gw_record PULL_RECORD = RECORD("screw pull", pull_case, PULL);
static const struct gw_field PULL_ANSWER[] = {
    OUT(pull_answer, "tension", tension, GW_FORCE, "of one screw"),
    OUT(pull_answer, "equal_width", width, GW_LENGTH, "that loads the plate under `pressure` as both sides do"),
};
static const struct gw_record PULL_ANSWER_RECORD = RECORD("screw pull result", pull_answer, PULL_ANSWER);

static enum gw_status run_pull(void *out, const void *in, struct gw_engine *engine)
{
    const struct pull_case *c = in;
    struct pull_answer *answer = out;
    const bool cut = gw_given(c->pressure_across);
    const struct gw_screw_side own = {c->pressure, c->width, c->spacing},
                               other = {c->pressure_across, c->width_across, c->spacing};
    if (cut != gw_given(c->width_across))
        return gw_refuse(engine, GW_MISSING, cut ? "width_across" : "pressure_across",
                         "pressure_across and width_across go together");
    answer->tension = gw_screw_pull(&own, cut ? &other : NULL, engine);
    answer->width = gw_plate_load_width(&own, cut ? &other : NULL);
    return GW_OK;
}

const struct gw_calc_kind gw_kind_screw_pull = {.name = "screw_pull",
                                                .help = "suction on one screw of a plate, on both sides of a roof line",
                                                .example = "pressure='42 psf' width='5 ft' spacing='9 in'",
                                                .input = &PULL_RECORD,
                                                .output = &PULL_ANSWER_RECORD,
                                                .run = run_pull};

/* Anchor -------------------------------------------------------------------------------------------------------------
 */

struct load_case {
    double width, height, height_across, inward, inward_across, outward, outward_across, wall_weight, piece;
    double coefficient, sds, eccentricity, bolt_arm, prying, bolt_tension;
    int bolts;
    enum gw_bool corner;
};
struct load_answer {
    double in, out, dead, bolts_take;
    struct gw_anchor_quake quake;
};
#define L(key_, dim_, ...) NUM(load_case, key_, dim_, __VA_ARGS__)
static const struct gw_field LOAD[] = {
    L(width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 50), .help = "of wall that its mullion carries"),
    L(height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 100), .help = "of wall whose wind it takes (mullion_line)"),
    L(inward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, .help = "of the level wanted"),
    L(outward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, .help = "the same the other way"),
    L(height_across, GW_LENGTH, .fallback = "0 m", LIMITS(0, 100), .help = "beyond the roof line"),
    L(inward_across, GW_PRESSURE, .flags = GW_MAGNITUDE, .fallback = "0 Pa", .help = "there"),
    L(outward_across, GW_PRESSURE, .flags = GW_MAGNITUDE, .fallback = "0 Pa", .help = "there"),
    L(wall_weight, GW_PRESSURE, .flags = GW_REQUIRED, LIMITS(0, 1e4), .help = "per area of one face"),
    L(piece, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 100), .help = "the longest that can hang on it"),
    F(load_case, corner, GW_T_BOOL, .fallback = "no", .help = "of an outside corner: both faces hang on it"),
    L(coefficient, GW_RATIO, LIMITS(0, 20), .help = "seismic: F_p over the weight, of the fasteners, strength level"),
    L(sds, GW_RATIO, LIMITS(0, 5), .help = "seismic: S_DS"),
    F(load_case, bolts, GW_T_INTEGER, .fallback = "0", LIMITS(0, 64), .help = "of the anchor; 0: nothing about bolts"),
    L(bolt_tension, GW_FORCE, LIMITS(1, 1e8), .help = "allowable of one; goes with bolts"),
    L(eccentricity, GW_THICKNESS, .fallback = "0 mm", LIMITS(-5, 5), .help = "of the weight, outside of the bearing"),
    L(bolt_arm, GW_THICKNESS, LIMITS(0.001, 5), .help = "of the bolts against the weight; goes with eccentricity"),
    L(prying, GW_RATIO, .fallback = "1", LIMITS(1, 10), .help = "bolt pull over that without prying"),
};
static const struct gw_record LOAD_RECORD = RECORD("anchor load", load_case, LOAD);
static const struct gw_field LOAD_ANSWER[] = {
    OUT(load_answer, "inward", in, GW_FORCE, "of the wind"),
    OUT(load_answer, "outward", out, GW_FORCE, "of the wind"),
    OUT(load_answer, "dead", dead, GW_FORCE, "of the piece"),
    OUT(load_answer, "bolts_take", bolts_take, GW_FORCE, "outward, beside the weight of the piece; with bolts"),
    OUT(load_answer, "seismic_out_of_plane", quake.out_of_plane, GW_FORCE, "0.7 E, of the mass that wind loads"),
    OUT(load_answer, "seismic_along", quake.along, GW_FORCE, "0.7 E, of the piece"),
    OUT(load_answer, "seismic_down", quake.down, GW_FORCE, "D + 0.7 E"),
};
static const struct gw_record LOAD_ANSWER_RECORD = RECORD("anchor load result", load_answer, LOAD_ANSWER);

static enum gw_status take_bolts(struct load_answer *answer, const struct load_case *c, struct gw_engine *engine)
{
    const struct gw_anchor_case in = {
        .eccentricity = c->eccentricity, .bolt_arm = c->bolt_arm, .bolts = c->bolts, .prying = c->prying};
    answer->bolts_take = GW_ABSENT;
    if (!c->bolts) return GW_OK;
    if (!gw_given(c->bolt_tension))
        return gw_refuse(engine, GW_MISSING, "bolt_tension", "what does one bolt take in tension?");
    if (fabs(c->eccentricity) > 0 && !gw_given(c->bolt_arm))
        return gw_refuse(engine, GW_MISSING, "bolt_arm", "an eccentric weight wants the lever arm of the bolts");
    answer->bolts_take = gw_anchor_bolts_take(&in, answer->dead, c->bolt_tension, engine);
    return GW_OK;
}

static enum gw_status run_load(void *out, const void *in, struct gw_engine *engine)
{
    const struct load_case *c = in;
    struct load_answer *answer = out;
    const double per_area = gw_corner_weight(c->wall_weight, c->corner == GW_YES ? 2 : 1);
    const struct gw_anchor_side in_own = {c->height, c->inward}, in_across = {c->height_across, c->inward_across},
                                out_own = {c->height, c->outward}, out_across = {c->height_across, c->outward_across};
    if (gw_given(c->coefficient) != gw_given(c->sds))
        return gw_refuse(engine, GW_MISSING, gw_given(c->sds) ? "coefficient" : "sds",
                         "coefficient and sds go together");
    answer->in = gw_anchor_wind("R_in", c->width, &in_own, &in_across, engine);
    answer->out = gw_anchor_wind("R_out", c->width, &out_own, &out_across, engine);
    answer->dead = gw_anchor_weight(per_area, c->width, c->piece, engine);
    answer->quake = (struct gw_anchor_quake){GW_ABSENT, GW_ABSENT, GW_ABSENT};
    enum gw_status status = take_bolts(answer, c, engine);
    if (status != GW_OK || !gw_given(c->sds)) return status;
    const struct gw_anchor_quake_case quake = {
        c->coefficient, c->sds, gw_anchor_mass(per_area, c->width, c->height + c->height_across, engine), answer->dead};
    gw_anchor_quake(&answer->quake, &quake, engine);
    return GW_OK;
}

const struct gw_calc_kind gw_kind_anchor_load = {
    .name = "anchor_load",
    .help = "what one anchor takes from its mullion: wind, weight, earthquake",
    .example = "width='5 ft' height='13 ft' inward='30 psf' outward='42 psf' wall_weight='10 psf' piece='13 ft'",
    .input = &LOAD_RECORD,
    .output = &LOAD_ANSWER_RECORD,
    .run = run_load};
