/* Rules by which loads act together. */
#include "galeward/combine.h"

#include "base/tolerance.h"
#include "tables_data.h"

double gw_combine_uses(double a, double b, enum gw_interaction how, struct gw_engine *engine)
{
    const double most = fmax(a, b), straight = a + b, square = sqrt(a * a + b * b);
    if (how == GW_INTERACTION_STEEL_BOLT) {
        const struct gw_bolt_interaction *row = GW_USE(engine, &engine->tables->bolt_interaction[0]);
        const double use = fmax(most, straight / row->sum);
        GW_STEP(engine, "use", GW_RATIO, use, row->row.source, "max(max(u_1,u_2),(u_1+u_2)/c)",
                {"u_1|use", a, GW_RATIO}, {"u_2|use", b, GW_RATIO}, {"c", row->sum, GW_RATIO});
        return use;
    }
    if (how == GW_INTERACTION_NONE || how == GW_INTERACTION_ELLIPTIC) {
        const bool none = how == GW_INTERACTION_NONE;
        GW_STEP(engine, "use", GW_RATIO, none ? most : square, "interaction by the report of the capacities",
                none ? "max(u_1,u_2)" : "sqrt(u_1^2+u_2^2)", {"u_1|use", a, GW_RATIO}, {"u_2|use", b, GW_RATIO});
        return none ? most : square;
    }
    GW_STEP(engine, "use", GW_RATIO, straight, "both at once: straight sum of the ratios", "u_1+u_2",
            {"u_1|use", a, GW_RATIO}, {"u_2|use", b, GW_RATIO});
    return straight;
}

/* Members ------------------------------------------------------------------------------------------------------------
 */

double gw_combine_bending(double moment_x, double allowable_x, double moment_y, double allowable_y,
                          struct gw_engine *engine)
{
    static const char clause[] = "bending both ways at once";
    const bool both = moment_y > 0 || moment_y < 0; /* without a moment about y nothing need be known of it */
    const double use = moment_x / allowable_x + (both ? moment_y / allowable_y : 0);
    if (both)
        GW_STEP(engine, "use", GW_RATIO, use, clause, "M_x/M_ax+M_y/M_ay", {"M_x|M", moment_x, GW_BENDING},
                {"M_ax|M", allowable_x, GW_BENDING}, {"M_y|M", moment_y, GW_BENDING},
                {"M_ay|M", allowable_y, GW_BENDING});
    else
        GW_STEP(engine, "use", GW_RATIO, use, clause, "M_x/M_ax", {"M_x|M", moment_x, GW_BENDING},
                {"M_ax|M", allowable_x, GW_BENDING});
    return use;
}

double gw_combine_twist(double bending, double shear, double twist, struct gw_engine *engine)
{
    const struct gw_combined_rule *row = GW_USE(engine, &engine->tables->combined_rule[0]);
    const double n = row->exponent, use = pow(pow(bending, n) + pow(shear + twist, n), 1 / n);
    GW_STEP(engine, "use", GW_RATIO, use, row->row.source, "(u_b^n+(u_v+u_t)^n)^(1/n)", {"u_b|use", bending, GW_RATIO},
            {"n", n, GW_RATIO}, {"u_v", shear, GW_RATIO}, {"u_t", twist, GW_RATIO});
    return use;
}

double gw_combine_faces(double allowable_x, double allowable_y, double other, enum gw_dim dim, struct gw_engine *engine)
{
    const bool alike = fabs(other - 1) < GW_HAIR;
    const double each = fmin(1 / (1 / allowable_x + other / allowable_y), 1 / (other / allowable_x + 1 / allowable_y));
    if (alike)
        GW_STEP(engine, dim == GW_FORCE ? "V_a" : "M_a", dim, each, "both faces of a corner at once, alike",
                "1/(1/R_x+1/R_y)", {"R_x|M|V", allowable_x, dim}, {"R_y|M|V", allowable_y, dim});
    else
        GW_STEP(engine, dim == GW_FORCE ? "V_a" : "M_a", dim, each,
                "both faces of a corner at once, the other face r times as much, about the worse axes",
                "min(1/(1/R_x+r/R_y),1/(r/R_x+1/R_y))", {"R_x|M|V", allowable_x, dim}, {"R_y|M|V", allowable_y, dim},
                {"r", other, GW_RATIO});
    return each;
}

double gw_combine_stiffness(double stiffness_x, double elastic_modulus, double inertia_y)
{
    return fmin(stiffness_x, elastic_modulus * inertia_y);
}

double gw_combine_splice(double shear, double other) { return shear + other; }

double gw_combine_end(double reaction, double weight, struct gw_engine *engine)
{
    const double force = hypot(reaction, weight / 2);
    GW_STEP(engine, "R", GW_FORCE, force, "wind, and half of the glass across it", "sqrt(R_w^2+(D/2)^2)",
            {"R_w|R", reaction, GW_FORCE}, {"D", weight, GW_FORCE});
    return force;
}

double gw_resting_weight(double per_area, double width, double height, struct gw_engine *engine)
{
    const double weight = per_area * width * height;
    GW_STEP(engine, "D", GW_FORCE, weight, "glass that rests on it", "w*b*h", {"w|w|weight", per_area, GW_STRESS},
            {"b", width, GW_THICKNESS}, {"h", height, GW_THICKNESS});
    return weight;
}

double gw_inertia_for(double deflection, double elastic_modulus, double limit)
{
    return deflection / (elastic_modulus * limit);
}

/* Screws and plates --------------------------------------------------------------------------------------------------
 */

double gw_screw_pull(const struct gw_screw_side *own, const struct gw_screw_side *other, struct gw_engine *engine)
{
    const double alone = own->pressure * own->width * own->spacing;
    GW_STEP(engine, "T", GW_FORCE, alone, "tributary area of the screw", "p*b*s", {"p", own->pressure, GW_STRESS},
            {"b", own->width, GW_THICKNESS}, {"s", own->spacing, GW_THICKNESS});
    if (!other) return alone;
    const double both = alone + other->pressure * other->width * other->spacing;
    GW_STEP(engine, "T_both", GW_FORCE, both, "both sides of the roof line", "T+p_2*b_2*s", {"T", alone, GW_FORCE},
            {"p_2", other->pressure, GW_STRESS}, {"b_2", other->width, GW_THICKNESS},
            {"s", other->spacing, GW_THICKNESS});
    return both;
}

double gw_plate_load_width(const struct gw_screw_side *own, const struct gw_screw_side *other)
{
    return own->width + (other ? other->pressure / own->pressure * other->width : 0);
}

/* Anchors ------------------------------------------------------------------------------------------------------------
 */

double gw_anchor_wind(const char *symbol, double width, const struct gw_anchor_side *own,
                      const struct gw_anchor_side *across, struct gw_engine *engine)
{
    static const char clause[] = "reaction of the mullion as a beam";
    const double p = fmax(own->pressure, 0), p_2 = fmax(across->pressure, 0);
    const double force = width * (own->height * p + (across->height > 0 ? across->height * p_2 : 0));
    if (across->height > 0)
        GW_STEP(engine, symbol, GW_FORCE, force, clause, "b*(h_1*p_1+h_2*p_2)", {"b", width, GW_THICKNESS},
                {"h_1", own->height, GW_THICKNESS}, {"p_1", p, GW_STRESS}, {"h_2", across->height, GW_THICKNESS},
                {"p_2", p_2, GW_STRESS});
    else
        GW_STEP(engine, symbol, GW_FORCE, force, clause, "b*h*p", {"b", width, GW_THICKNESS},
                {"h", own->height, GW_THICKNESS}, {"p", p, GW_STRESS});
    return force;
}

static double weight(const char *symbol, const char *clause, double per_area, double width, double height,
                     struct gw_engine *engine)
{
    GW_STEP(engine, symbol, GW_FORCE, per_area * width * height, clause, "g*b*h", {"g", per_area, GW_STRESS},
            {"b", width, GW_THICKNESS}, {"h", height, GW_THICKNESS});
    return per_area * width * height;
}

double gw_anchor_weight(double per_area, double width, double piece, struct gw_engine *engine)
{
    return weight("D", "piece of mullion that hangs on it; 0: slotted", per_area, width, piece, engine);
}

double gw_anchor_mass(double per_area, double width, double height, struct gw_engine *engine)
{
    return weight("W", "height of wall by the beam; both faces at a corner", per_area, width, height, engine);
}

double gw_corner_weight(double per_area, double faces) { return faces * per_area; }

void gw_anchor_quake(struct gw_anchor_quake *out, const struct gw_anchor_quake_case *in, struct gw_engine *engine)
{
    const struct gw_anchor_factors *level =
        GW_USE(engine, &engine->tables->anchor_factors[GW_ROW_ANCHOR_FACTORS_ASD_D_E]);
    const struct gw_seismic_vertical *vertical = GW_USE(engine, &engine->tables->seismic_vertical[0]);
    const double f = level->seismic, part = f * in->coefficient;
    const char *clause = level->row.source;
    *out = (struct gw_anchor_quake){part * in->mass, part * in->weight,
                                    in->weight * (level->dead + f * vertical->share * in->sds)};
    GW_STEP(engine, "F", GW_FORCE, out->out_of_plane, clause, "f*c*W", {"f", f, GW_RATIO},
            {"c", in->coefficient, GW_RATIO}, {"W", in->mass, GW_FORCE});
    GW_STEP(engine, "F_along", GW_FORCE, out->along, clause, "f*c*D", {"f", f, GW_RATIO},
            {"c", in->coefficient, GW_RATIO}, {"D", in->weight, GW_FORCE});
    GW_STEP(engine, "F_down", GW_FORCE, out->down, clause, "D*(f_D+f*c_v*S_DS)", {"D", in->weight, GW_FORCE},
            {"f_D", level->dead, GW_RATIO}, {"f", f, GW_RATIO}, {"c_v", vertical->share, GW_RATIO},
            {"S_DS", in->sds, GW_RATIO});
}
