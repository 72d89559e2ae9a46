/* A sealant joint that takes movement across it. */
#include "galeward/silicone.h"

#include "fastener_internal.h"
#include "tables_data.h"

static const char CLAUSE[] = "ASTM C1472";

static enum gw_status check(const struct gw_joint_case *in, const struct gw_sealant_shape *movement,
                            struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_positive("movement", in->movement, engine);
    if (!status) status = gw_fastener_positive("capability", in->capability, engine);
    if (!status) status = gw_fastener_magnitude("tolerance", in->tolerance, engine);
    if (!status) status = gw_fastener_magnitude_if_given("slip", in->slip, engine);
    if (status) return status;
    if (in->capability < movement->capability * (1 - GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "capability",
                         "joints that move want a sealant of class {} % at least",
                         gw_of_number(100 * movement->capability, 4));
    if (in->capability <= 1) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "capability", "capability is a fraction: 0.25 or 25 %");
}

enum gw_status gw_sealant_joint(struct gw_joint_result *out, const struct gw_joint_case *in, struct gw_engine *engine)
{
    const struct gw_sealant_shape *rows = engine->tables->sealant_shape;
    const struct gw_sealant_shape *shape = GW_USE(engine, &rows[GW_ROW_SEALANT_SHAPE_SHAPE]);
    enum gw_status status = check(in, GW_USE(engine, &rows[GW_ROW_SEALANT_SHAPE_MOVEMENT]), engine);
    if (status) return status;
    out->width = in->movement / in->capability + in->tolerance;
    GW_STEP(engine, "W", GW_THICKNESS, out->width, CLAUSE, "M/S+t", {"M", in->movement, GW_THICKNESS},
            {"S", in->capability, GW_RATIO}, {"t", in->tolerance, GW_THICKNESS});
    out->depth = fmin(fmax(shape->depth_share * out->width, shape->depth_least_m), shape->depth_most_m);
    GW_STEP(engine, "depth", GW_THICKNESS, out->depth, shape->row.source, "min(max(c*W,d_least),d_most)",
            {"c", shape->depth_share, GW_RATIO}, {"W", out->width, GW_THICKNESS},
            {"d_least", shape->depth_least_m, GW_THICKNESS}, {"d_most", shape->depth_most_m, GW_THICKNESS});
    out->extension = GW_ABSENT;
    if (!gw_given(in->slip)) return GW_OK;
    out->extension = hypot(out->width, in->slip) - out->width;
    GW_STEP(engine, "extension", GW_THICKNESS, out->extension, CLAUSE, "sqrt(W^2+s^2)-W",
            {"W", out->width, GW_THICKNESS}, {"s", in->slip, GW_THICKNESS});
    return GW_OK;
}
