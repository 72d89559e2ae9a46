/* The end of a horizontal: wind and dead load on a group of fasteners, shared as by a stiff part on equal springs. */
#include "fastener_internal.h"

#include "tables_data.h"

static const char GROUP_CLAUSE[] = "elastic fastener group";

struct group {
    struct gw_fastener_place middle;
    double polar; /* m2, sum of squares of the distances from the middle */
};

static enum gw_status check(const struct gw_connection_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_magnitude("wind", in->wind, engine);
    if (!status) status = gw_fastener_magnitude("dead", in->dead, engine);
    if (!status) status = gw_fastener_positive_if_given("diameter", in->diameter, engine);
    if (!status) status = gw_fastener_positive_if_given("allowable", in->allowable, engine);
    if (status) return status;
    if (in->kind == GW_RAIL_END_UNSET)
        return gw_refuse(engine, GW_MISSING, "connection", "connection is needed: shear_block or screw_spline");
    if (!in->n_fasteners) return gw_refuse(engine, GW_MISSING, "fasteners", "fasteners are needed");
    if (in->kind == GW_SCREW_SPLINE && gw_given(in->allowable))
        return gw_refuse(engine, GW_BAD_VALUE, "allowable", "screws in slots take spline_tested, a tested value");
    return GW_OK;
}

static enum gw_status check_spacing(const struct gw_connection_case *in, struct gw_engine *engine)
{
    const struct gw_screw_shear *row = &engine->tables->screw_shear[GW_ROW_SCREW_SHEAR_SPACING_LEAST];
    if (!gw_given(in->diameter)) return GW_OK;
    gw_used_add(&engine->used, &row->row);
    for (size_t i = 0; i < in->n_fasteners; i++)
        for (size_t k = 0; k < i; k++) {
            const double x = in->fasteners[i].x - in->fasteners[k].x, y = in->fasteners[i].y - in->fasteners[k].y;
            if (hypot(x, y) >= row->value * in->diameter * (1 - GW_HAIR)) continue;
            return gw_refuse(engine, GW_OUTSIDE_METHOD, "fasteners",
                             "fasteners {} and {} are closer than {} % of the diameter", gw_of_count((long)(k + 1)),
                             gw_of_count((long)(i + 1)), gw_of_number(100 * row->value, 4));
        }
    return GW_OK;
}

static void open_group(struct group *group, const struct gw_connection_case *in)
{
    *group = (struct group){{0, 0}, 0};
    for (size_t i = 0; i < in->n_fasteners; i++) {
        group->middle.x += in->fasteners[i].x / (double)in->n_fasteners;
        group->middle.y += in->fasteners[i].y / (double)in->n_fasteners;
    }
    for (size_t i = 0; i < in->n_fasteners; i++) {
        const double x = in->fasteners[i].x - group->middle.x, y = in->fasteners[i].y - group->middle.y;
        group->polar += x * x + y * y;
    }
}

/* Counterclockwise, about the middle; dead load acts downward. */
static double moment_of(const struct gw_connection_case *in, const struct group *group, double wind)
{
    const double x = in->load.x - group->middle.x, y = in->load.y - group->middle.y;
    return -x * in->dead - y * wind;
}

static double shear_of(const struct gw_connection_case *in, const struct group *group, double wind, size_t i)
{
    const double n = (double)in->n_fasteners, moment = moment_of(in, group, wind);
    const double turn = group->polar > 0 ? moment / group->polar : 0;
    const double x = in->fasteners[i].x - group->middle.x, y = in->fasteners[i].y - group->middle.y;
    return hypot(wind / n - turn * y, turn * x - in->dead / n);
}

static void step_shear(const struct gw_connection_result *out, const struct gw_connection_case *in,
                       const struct group *group, double wind, struct gw_engine *engine)
{
    const struct gw_fastener_place *at = &in->fasteners[out->worst];
    const double n = (double)in->n_fasteners;
    if (!(group->polar > 0)) {
        GW_STEP(engine, "V", GW_FORCE, out->fastener, GROUP_CLAUSE, "sqrt((W/n)^2+(D/n)^2)", {"W", wind, GW_FORCE},
                {"n", n, GW_RATIO}, {"D", in->dead, GW_FORCE});
        return;
    }
    GW_STEP(engine, "M", GW_BENDING, out->moment, GROUP_CLAUSE, "-x*D-y*W",
            {"x", in->load.x - group->middle.x, GW_THICKNESS}, {"D", in->dead, GW_FORCE},
            {"y", in->load.y - group->middle.y, GW_THICKNESS}, {"W", wind, GW_FORCE});
    GW_STEP(engine, "V", GW_FORCE, out->fastener, GROUP_CLAUSE, "sqrt((W/n-M*y/J)^2+(M*x/J-D/n)^2)",
            {"W", wind, GW_FORCE}, {"n", n, GW_RATIO}, {"M", out->moment, GW_BENDING},
            {"y", at->y - group->middle.y, GW_THICKNESS}, {"J", group->polar, GW_SECTION_AREA},
            {"x", at->x - group->middle.x, GW_THICKNESS}, {"D", in->dead, GW_FORCE});
}

static void share(struct gw_connection_result *out, const struct gw_connection_case *in, const struct group *group,
                  struct gw_engine *engine)
{
    double worst_wind = in->wind;
    for (int way = 0; way < 2; way++)
        for (size_t i = 0; i < in->n_fasteners; i++) {
            const double wind = way ? -in->wind : in->wind, shear = shear_of(in, group, wind, i);
            if (shear <= out->fastener * (1 + GW_HAIR)) continue;
            out->fastener = shear;
            out->worst = (int)i;
            worst_wind = wind;
        }
    out->moment = moment_of(in, group, worst_wind);
    out->resultant = hypot(in->wind, in->dead);
    GW_STEP(engine, "R", GW_FORCE, out->resultant, "resultant of wind and dead load", "sqrt(W^2+D^2)",
            {"W", in->wind, GW_FORCE}, {"D", in->dead, GW_FORCE});
    step_shear(out, in, group, worst_wind, engine);
}

enum gw_status gw_connection(struct gw_connection_result *out, const struct gw_connection_case *in,
                             struct gw_engine *engine)
{
    struct group group;
    *out = (struct gw_connection_result){.allowable = in->allowable, .utilization = GW_ABSENT};
    enum gw_status status = check(in, engine);
    if (!status) status = check_spacing(in, engine);
    if (!status && in->kind == GW_SCREW_SPLINE)
        status = gw_tested_strength(&out->allowable, GW_SEAT_SPLINE, in->tested, in->safety_factor, engine);
    if (status) return status;
    open_group(&group, in);
    const bool eccentric = fabs(moment_of(in, &group, in->wind)) > 0 || fabs(moment_of(in, &group, -in->wind)) > 0;
    if (eccentric && !(group.polar > 0))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "fasteners", "one fastener does not hold an eccentric load");
    share(out, in, &group, engine);
    if (!gw_given(out->allowable)) return GW_OK;
    out->utilization = out->fastener / out->allowable;
    GW_STEP(engine, "use", GW_RATIO, out->utilization, GROUP_CLAUSE, "V/V_a", {"V", out->fastener, GW_FORCE},
            {"V_a|V_a|R_a", out->allowable, GW_FORCE});
    return GW_OK;
}
