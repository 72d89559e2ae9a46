/* What every section has, however it was given; and the rectangular tube. */
#include "section_internal.h"

#include "tables_data.h"

static const char CLAUSE[] = "section";

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
    return GW_OK;
}

/* J = 4 A^2/(sum of s/t) of the center line: shear flow around the cell, nothing for the walls' own twist. */
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

static void step_tube(const struct gw_section *s, const struct gw_tube *t, struct gw_engine *engine)
{
    const struct gw_arg width = {"B", t->width, GW_THICKNESS}, depth = {"H", t->depth, GW_THICKNESS},
                        flange = {"tf", t->flange, GW_THICKNESS}, web = {"tw", t->web, GW_THICKNESS};
    const struct gw_arg args[] = {width, depth, flange, web};
    gw_trace_step(engine, "A", GW_SECTION_AREA, s->area, CLAUSE, "B*H-(B-2*tw)*(H-2*tf)", args, 4);
    gw_trace_step(engine, "Ix", GW_INERTIA, s->inertia_x, CLAUSE, "(B*H^3-(B-2*tw)*(H-2*tf)^3)/12", args, 4);
    gw_trace_step(engine, "Iy", GW_INERTIA, s->inertia_y, CLAUSE, "(H*B^3-(H-2*tf)*(B-2*tw)^3)/12", args, 4);
    gw_trace_step(engine, "Zx", GW_SECTION_MODULUS, s->plastic_x, CLAUSE, "(B*H^2-(B-2*tw)*(H-2*tf)^2)/4", args, 4);
    gw_trace_step(engine, "Zy", GW_SECTION_MODULUS, s->plastic_y, CLAUSE, "(H*B^2-(H-2*tf)*(B-2*tw)^2)/4", args, 4);
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
    step_tube(out, t, engine);
    gw_section_finish(out, engine);
    tube_torsion(out, t, engine);
    return GW_OK;
}
