/* A lite bonded on four edges in a frame that racks: it turns by the angle at which the bead's shear energy is least.
 */
#include "seismic_internal.h"

#include "base/tolerance.h"

static const char LEAST_ENERGY[] = "least shear energy of a uniform bead on four edges";
static const char NOTE_STRAIN[] =
    "strain_corner is shear strain, slip over thickness of the bead; extension_corner is how much longer the bead gets";
static const char NOTE_BEAD[] = "one thickness and width of bead on four edges, a rigid lite, and a frame that stays a "
                                "parallelogram; glazed against a spacer that does not bind";

static enum gw_status check(const struct gw_racking_case *in, struct gw_engine *engine)
{
    const struct gw_racking_limit *limit = GW_USE(engine, &engine->tables->racking_limit[0]);
    enum gw_status status = gw_seismic_not_negative("drift_in_lite", in->drift_in_lite, engine);
    if (!status) status = gw_seismic_positive("lite_width", in->lite_width, engine);
    if (!status) status = gw_seismic_positive("lite_height", in->lite_height, engine);
    if (!status) status = gw_seismic_positive("thickness", in->thickness, engine);
    if (status || in->drift_in_lite / in->lite_height <= limit->angle_rad * (1 + GW_HAIR)) return status;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "drift_in_lite",
                     "the frame's angle is small in this method: drift up to {} % of the lite's height",
                     gw_of_number(100 * limit->angle_rad, 4));
}

/* Slip along head and sill is (gamma - theta) h/2 and theta x; along the sides (gamma - theta) y and theta b/2. The sum
 * of squares over the perimeter, least in theta, gives gamma A/(A + B). */
static void turn(struct gw_racking_result *out, const struct gw_racking_case *in, struct gw_engine *engine)
{
    const double h = in->lite_height, b = in->lite_width;
    const double sides = h * h * (3 * b + h), ends = b * b * (3 * h + b);
    out->frame_angle = in->drift_in_lite / h;
    out->lite_rotation = out->frame_angle * sides / (sides + ends);
    /* Printed as lengths: an angle shown in degrees would need its factor in the formula. */
    GW_STEP(engine, "theta h_p", GW_THICKNESS, out->lite_rotation * h, LEAST_ENERGY,
            "D*h^2*(3*b+h)/(h^2*(3*b+h)+b^2*(3*h+b))", {"D", in->drift_in_lite, GW_THICKNESS}, {"h", h, GW_THICKNESS},
            {"b", b, GW_THICKNESS});
}

static void slip(struct gw_racking_result *out, const struct gw_racking_case *in, struct gw_engine *engine)
{
    const double turned = out->lite_rotation * in->lite_height;
    out->slip_horizontal = (out->frame_angle - out->lite_rotation) * in->lite_height / 2;
    out->slip_vertical = out->lite_rotation * in->lite_width / 2;
    out->slip_corner = hypot(out->slip_horizontal, out->slip_vertical);
    out->strain_corner = out->slip_corner / in->thickness;
    out->extension_corner = hypot(1, out->strain_corner) - 1;
    GW_STEP(engine, "s_h", GW_THICKNESS, out->slip_horizontal, LEAST_ENERGY, "(D-d)/2",
            {"D", in->drift_in_lite, GW_THICKNESS}, {"d", turned, GW_THICKNESS});
    GW_STEP(engine, "s_v", GW_THICKNESS, out->slip_vertical, LEAST_ENERGY, "d/h*b/2", {"d", turned, GW_THICKNESS},
            {"h", in->lite_height, GW_THICKNESS}, {"b", in->lite_width, GW_THICKNESS});
    GW_STEP(engine, "s_corner", GW_THICKNESS, out->slip_corner, LEAST_ENERGY, "sqrt(s_h^2+s_v^2)",
            {"s_h", out->slip_horizontal, GW_THICKNESS}, {"s_v", out->slip_vertical, GW_THICKNESS});
    GW_STEP(engine, "strain", GW_RATIO, out->strain_corner, LEAST_ENERGY, "s/t", {"s", out->slip_corner, GW_THICKNESS},
            {"t", in->thickness, GW_THICKNESS});
    gw_seismic_note(&out->notes, NOTE_STRAIN);
    gw_seismic_note(&out->notes, NOTE_BEAD);
}

enum gw_status gw_silicone_racking(struct gw_racking_result *out, const struct gw_racking_case *in,
                                   struct gw_engine *engine)
{
    *out = (struct gw_racking_result){.frame_angle = 0};
    enum gw_status status = check(in, engine);
    if (status) return status;
    turn(out, in, engine);
    slip(out, in, engine);
    return GW_OK;
}
