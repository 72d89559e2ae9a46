/* What every section has, however it was given; and the rectangular tube. */
#include "section_internal.h"

#include "tables_data.h"

static const char CLAUSE[] = "section";
static const double PI = 3.14159265358979323846;

void gw_section_clear(struct gw_section *out)
{
    const struct gw_section_point nowhere = {GW_ABSENT, GW_ABSENT};
    *out = (struct gw_section){.cells = -1};
    out->torsion = out->warping = GW_ABSENT;
    out->shear_center = nowhere;
}

void gw_section_note(struct gw_section *section, const char *text)
{
    if (section->n_notes < GW_SECTION_NOTES) section->notes[section->n_notes++] = text;
}

double gw_section_modulus_x(const struct gw_section *section)
{
    return fmin(section->modulus_top, section->modulus_bottom);
}

double gw_section_modulus_y(const struct gw_section *section)
{
    return fmin(section->modulus_left, section->modulus_right);
}

static double modulus(const char *symbol, const char *inertia, double value, double fiber, struct gw_engine *engine)
{
    const bool about_x = inertia[1] == 'x';
    GW_STEP(engine, symbol, GW_SECTION_MODULUS, value / fiber, CLAUSE, about_x ? "Ix/c" : "Iy/c",
            {inertia, value, GW_INERTIA}, {"c", fiber, GW_THICKNESS});
    return value / fiber;
}

/* Inertias below this part of the largest are the rounding of a sum that is zero. */
static const double ROUNDING = 1e-12;

static void principal_axes(struct gw_section *s, struct gw_engine *engine)
{
    const double middle = (s->inertia_x + s->inertia_y) / 2, half = (s->inertia_x - s->inertia_y) / 2;
    if (fabs(s->inertia_xy) < ROUNDING * middle) s->inertia_xy = 0;
    const double radius = hypot(half, s->inertia_xy);
    s->principal_major = middle + radius;
    s->principal_minor = middle - radius;
    s->principal_angle = radius > ROUNDING * middle ? 0.5 * atan2(-s->inertia_xy, half) : 0;
    if (!(fabs(s->inertia_xy) > 0)) return;
    GW_STEP(engine, "I_major", GW_INERTIA, s->principal_major, CLAUSE, "(Ix+Iy)/2+sqrt(((Ix-Iy)/2)^2+Ixy^2)",
            {"Ix", s->inertia_x, GW_INERTIA}, {"Iy", s->inertia_y, GW_INERTIA}, {"Ixy", s->inertia_xy, GW_INERTIA});
    gw_section_note(s, "the section has a product of inertia: about x it bends sideways too unless something holds it; "
                       "stress and deflection follow the principal axes");
}

void gw_section_finish(struct gw_section *s, struct gw_engine *engine)
{
    s->modulus_top = modulus("S_top", "Ix", s->inertia_x, s->top - s->centroid.y, engine);
    s->modulus_bottom = modulus("S_bottom", "Ix", s->inertia_x, s->centroid.y - s->bottom, engine);
    s->modulus_left = modulus("S_left", "Iy", s->inertia_y, s->centroid.x - s->left, engine);
    s->modulus_right = modulus("S_right", "Iy", s->inertia_y, s->right - s->centroid.x, engine);
    principal_axes(s, engine);
}

/* Tube --------------------------------------------------------------------------------------------------------------
 */

static enum gw_status check_tube(const struct gw_tube *t, struct gw_engine *engine)
{
    const char *const keys[] = {"width", "depth", "flange", "web"};
    const double values[] = {t->width, t->depth, t->flange, t->web};
    for (size_t i = 0; i < 4; i++) {
        if (!gw_given(values[i]))
            return gw_refuse(engine, GW_MISSING, keys[i], "the tube's {} is needed", gw_of_text(keys[i]));
        if (!(values[i] > 0 && isfinite(values[i])))
            return gw_refuse(engine, GW_BAD_VALUE, keys[i], "the tube's {} must be positive", gw_of_text(keys[i]));
    }
    if (2 * t->flange >= t->depth)
        return gw_refuse(engine, GW_BAD_VALUE, "flange", "the flanges fill the depth: no tube is left");
    if (2 * t->web >= t->width)
        return gw_refuse(engine, GW_BAD_VALUE, "web", "the webs fill the width: no tube is left");
    if (t->corner > 0 && t->corner < fmax(t->flange, t->web))
        return gw_refuse(engine, GW_BAD_VALUE, "corner", "the radius of the tube's corners is less than its walls");
    if (2 * t->corner > fmin(t->width, t->depth))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "tube", "the tube's walls are too thick for its rounded corners");
    return GW_OK;
}

/* J = 4 A^2/(sum of s/t) of the center line: shear flow around the cell, nothing for the walls' own twist.
 * Corners stay sharp in it: round ones make A^2 over the length greater, so J is less than theirs. */
static void tube_torsion(struct gw_section *out, const struct gw_tube *t, struct gw_engine *engine)
{
    const struct gw_thin_wall *limit = GW_USE(engine, &engine->tables->thin_wall[GW_ROW_THIN_WALL_CLOSED]);
    const double b = t->width - t->web, h = t->depth - t->flange, thickest = fmax(t->flange, t->web);
    out->cells = 1;
    if (thickest > limit->thickness * fmin(b, h)) {
        gw_section_note(out, "no torsion constant: walls this thick are beyond Bredt's formula");
        gw_trace_note(engine, "J", limit->row.source, "walls too thick for Bredt's formula: not given");
        return;
    }
    out->torsion = 2 * b * b * h * h / (b / t->flange + h / t->web);
    GW_STEP(engine, "J", GW_INERTIA, out->torsion, "Bredt: closed thin-walled tube",
            "2*(B-tw)^2*(H-tf)^2/((B-tw)/tf+(H-tf)/tw)", {"B", t->width, GW_THICKNESS}, {"H", t->depth, GW_THICKNESS},
            {"tf", t->flange, GW_THICKNESS}, {"tw", t->web, GW_THICKNESS});
}

/* What a corner takes from the sharp one: area, integrals of the distance from an axis and of its square. */
struct corner {
    double area, first, second;
};

/* Between a quarter of an ellipse and its tangents, semi-axis a along the axis and b across it; center at d from it. */
static struct corner spandrel(double a, double b, double d)
{
    const double area = (1 - PI / 4) * a * b;
    return (struct corner){area, a * b * b / 6 + d * area,
                           (1.0 / 3 - PI / 16) * a * pow(b, 3) + d * a * b * b / 3 + d * d * area};
}

/* About the axis across `depth`: the outside corner is cut off, the inside one filled. `along`, `across`: thickness of
 * the walls that stand along the depth and across it. */
static struct corner corner_of(double depth, double along, double across, double radius)
{
    const double d = depth / 2 - radius;
    const struct corner off = spandrel(radius, radius, d), filled = spandrel(radius - along, radius - across, d);
    return (struct corner){off.area - filled.area, off.first - filled.first, off.second - filled.second};
}

/* The steps of one axis; the area's goes with the first. */
static void step_corner(const struct corner *c, const struct gw_tube *t, bool about_x, struct gw_engine *engine)
{
    const struct gw_arg args[] = {{"pi", PI, GW_RATIO},
                                  {"R", t->corner, GW_THICKNESS},
                                  {"tw", t->web, GW_THICKNESS},
                                  {"tf", t->flange, GW_THICKNESS},
                                  {about_x ? "H" : "B", about_x ? t->depth : t->width, GW_THICKNESS},
                                  {"A_c", c->area, GW_SECTION_AREA}};
    if (about_x)
        gw_trace_step(engine, "A_c", GW_SECTION_AREA, c->area, CLAUSE, "(1-pi/4)*(R^2-(R-tw)*(R-tf))", args, 4);
    gw_trace_step(engine, about_x ? "I_cx" : "I_cy", GW_INERTIA, c->second, CLAUSE,
                  about_x ? "(1/3-pi/16)*(R^4-(R-tw)*(R-tf)^3)+(H/2-R)*(R^3-(R-tw)*(R-tf)^2)/3+(H/2-R)^2*A_c"
                          : "(1/3-pi/16)*(R^4-(R-tf)*(R-tw)^3)+(B/2-R)*(R^3-(R-tf)*(R-tw)^2)/3+(B/2-R)^2*A_c",
                  args, 6);
    gw_trace_step(engine, about_x ? "Q_cx" : "Q_cy", GW_SECTION_MODULUS, c->first, CLAUSE,
                  about_x ? "(R^3-(R-tw)*(R-tf)^2)/6+(H/2-R)*A_c" : "(R^3-(R-tf)*(R-tw)^2)/6+(B/2-R)*A_c", args + 1, 5);
}

/* With sharp corners (`c` is NULL) the formulas end before what the corners take off. */
static void step_tube(const struct gw_section *s, const struct gw_tube *t, const struct corner c[2],
                      struct gw_engine *engine)
{
    const struct {
        const char *symbol, *sharp, *round;
        enum gw_dim dim;
        double value;
        struct gw_arg corner;
    } steps[] = {
        {"A",
         "B*H-(B-2*tw)*(H-2*tf)",
         "B*H-(B-2*tw)*(H-2*tf)-4*A_c",
         GW_SECTION_AREA,
         s->area,
         {"A_c", c ? c[0].area : 0, GW_SECTION_AREA}},
        {"Ix",
         "(B*H^3-(B-2*tw)*(H-2*tf)^3)/12",
         "(B*H^3-(B-2*tw)*(H-2*tf)^3)/12-4*I_cx",
         GW_INERTIA,
         s->inertia_x,
         {"I_cx", c ? c[0].second : 0, GW_INERTIA}},
        {"Iy",
         "(H*B^3-(H-2*tf)*(B-2*tw)^3)/12",
         "(H*B^3-(H-2*tf)*(B-2*tw)^3)/12-4*I_cy",
         GW_INERTIA,
         s->inertia_y,
         {"I_cy", c ? c[1].second : 0, GW_INERTIA}},
        {"Zx",
         "(B*H^2-(B-2*tw)*(H-2*tf)^2)/4",
         "(B*H^2-(B-2*tw)*(H-2*tf)^2)/4-4*Q_cx",
         GW_SECTION_MODULUS,
         s->plastic_x,
         {"Q_cx", c ? c[0].first : 0, GW_SECTION_MODULUS}},
        {"Zy",
         "(H*B^2-(H-2*tf)*(B-2*tw)^2)/4",
         "(H*B^2-(H-2*tf)*(B-2*tw)^2)/4-4*Q_cy",
         GW_SECTION_MODULUS,
         s->plastic_y,
         {"Q_cy", c ? c[1].first : 0, GW_SECTION_MODULUS}},
    };
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        const struct gw_arg args[] = {{"B", t->width, GW_THICKNESS},
                                      {"H", t->depth, GW_THICKNESS},
                                      {"tf", t->flange, GW_THICKNESS},
                                      {"tw", t->web, GW_THICKNESS},
                                      steps[i].corner};
        gw_trace_step(engine, steps[i].symbol, steps[i].dim, steps[i].value, CLAUSE,
                      c ? steps[i].round : steps[i].sharp, args, c ? 5 : 4);
    }
}

static void round_corners(struct gw_section *out, const struct gw_tube *t, struct gw_engine *engine)
{
    const struct corner c[] = {corner_of(t->depth, t->web, t->flange, t->corner),
                               corner_of(t->width, t->flange, t->web, t->corner)};
    out->area -= 4 * c[0].area;
    out->inertia_x -= 4 * c[0].second;
    out->inertia_y -= 4 * c[1].second;
    out->plastic_x -= 4 * c[0].first;
    out->plastic_y -= 4 * c[1].first;
    step_corner(&c[0], t, true, engine);
    step_corner(&c[1], t, false, engine);
    step_tube(out, t, c, engine);
}

enum gw_status gw_section_tube(struct gw_section *out, const struct gw_tube *t, struct gw_engine *engine)
{
    gw_section_clear(out);
    enum gw_status status = check_tube(t, engine);
    if (status) return status;
    const double b = t->width - 2 * t->web, h = t->depth - 2 * t->flange;
    out->area = t->width * t->depth - b * h;
    out->inertia_x = (t->width * pow(t->depth, 3) - b * pow(h, 3)) / 12;
    out->inertia_y = (t->depth * pow(t->width, 3) - h * pow(b, 3)) / 12;
    out->plastic_x = (t->width * t->depth * t->depth - b * h * h) / 4;
    out->plastic_y = (t->depth * t->width * t->width - h * b * b) / 4;
    out->top = t->depth / 2, out->bottom = -out->top;
    out->right = t->width / 2, out->left = -out->right;
    out->centroid = out->shear_center = (struct gw_section_point){0, 0};
    if (t->corner > 0) round_corners(out, t, engine);
    else step_tube(out, t, NULL, engine);
    gw_section_finish(out, engine);
    tube_torsion(out, t, engine);
    return GW_OK;
}
