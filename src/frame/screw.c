/* Areas of a screw, and what the aluminum around it holds. */
#include "fastener_internal.h"

#include "tables_data.h"

static const double PI = 3.14159265358979323846;
static const double INCH = 0.0254; /* sizes are kept by threads per inch */

static const char PULLOUT_CLAUSE[] = "ADM 2015 J.5.4.1";
static const char PULLOVER_CLAUSE[] = "ADM 2015 J.5.4.2";
static const char PULLOVER_OLD_CLAUSE[] = "ADM 2010 J.5.4.2";
static const char BEARING_CLAUSE[] = "ADM 2015 J.5.5.1";
static const char TILTING_CLAUSE[] = "ADM 2015 J.5.5.2";

static enum gw_status check_screw(const struct gw_screw *screw, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_positive("diameter", screw->diameter, engine);
    if (!status) status = gw_fastener_positive("threads_per_inch", screw->pitch, engine);
    if (!status) status = gw_fastener_positive_if_given("stripping_area", screw->stripping, engine);
    if (!status) status = gw_fastener_positive_if_given("minor_diameter", screw->minor, engine);
    if (status) return status;
    if (screw->thread == GW_THREAD_UNSET)
        return gw_refuse(engine, GW_MISSING, "thread", "thread is needed: coarse or spaced");
    if (gw_given(screw->minor) && screw->minor >= screw->diameter)
        return gw_refuse(engine, GW_BAD_VALUE, "minor_diameter", "minor_diameter must be less than the diameter");
    if (screw->diameter > 2 * screw->pitch) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, "threads_per_inch", "the thread is too coarse for the diameter");
}

static const struct gw_screw_size *size_of(const struct gw_screw *screw, const struct gw_tables *tables)
{
    for (size_t i = 0; i < GW_N_SCREW_SIZE; i++) {
        const struct gw_screw_size *row = &tables->screw_size[i];
        const double pitch = INCH / row->per_inch;
        if (row->thread != (int)screw->thread) continue;
        if (fabs(screw->pitch - pitch) > SCREW_ROUNDING * pitch) continue;
        if (fabs(screw->diameter - row->diameter_m) <= SCREW_ROUNDING * row->diameter_m) return row;
    }
    return NULL;
}

static double thread_area(const char *symbol, int id, const struct gw_screw *screw, struct gw_engine *engine)
{
    const struct gw_thread_area *row = GW_USE(engine, &engine->tables->thread_area[id]);
    const double across = screw->diameter - row->pitches * screw->pitch, area = PI / 4 * across * across;
    GW_STEP(engine, symbol, GW_SECTION_AREA, area, row->row.source, "0.785398163*(D-c*p)^2",
            {"D", screw->diameter, GW_THICKNESS}, {"c", row->pitches, GW_RATIO}, {"p", screw->pitch, GW_THICKNESS});
    return area;
}

static void spaced_areas(struct gw_screw_areas *out, const struct gw_screw *screw, struct gw_engine *engine)
{
    const struct gw_screw_size *size = size_of(screw, engine->tables);
    double minor = screw->minor;
    if (!gw_given(minor) && size) minor = GW_USE(engine, size)->minor_m;
    out->tension = out->root = PI / 4 * minor * minor;
    if (!gw_given(minor)) return;
    GW_STEP(engine, "A", GW_SECTION_AREA, out->root, "area at the minor diameter of a spaced thread", "0.785398163*d^2",
            {"d", minor, GW_THICKNESS});
}

enum gw_status gw_screw_areas(struct gw_screw_areas *out, const struct gw_screw *screw, struct gw_engine *engine)
{
    enum gw_status status = check_screw(screw, engine);
    if (status) return status;
    if (screw->thread == GW_THREAD_SPACED) {
        spaced_areas(out, screw, engine);
        return GW_OK;
    }
    out->tension = thread_area("A_s", GW_ROW_THREAD_AREA_TENSION, screw, engine);
    out->root = thread_area("A_r", GW_ROW_THREAD_AREA_ROOT, screw, engine);
    return GW_OK;
}

/* Pull-out --------------------------------------------------------------------------------------------------------- */

struct pullout {
    const struct gw_screw_pullout *row;
    double yield_to, rupture_from; /* m, of engagement */
    double width;                  /* m: area that strips per length engaged, or the diameter */
};

static enum gw_status check_engagement(const struct pullout *p, const struct gw_screw *screw, double engagement,
                                       struct gw_engine *engine)
{
    const struct gw_screw_pullout *row = p->row;
    enum gw_status status = gw_fastener_positive("engagement", engagement, engine);
    if (status) return status;
    if (p->yield_to < row->step_m)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "threads_per_inch",
                         "the pull-out formula of spaced threads holds from a pitch of {} on",
                         gw_of_quantity(GW_THICKNESS, row->step_m / row->yield_to_pitches));
    if (engagement < row->least_m * (1 - GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "engagement",
                         "the pull-out formula holds from an engagement of {} on: thicker metal, or a test",
                         gw_of_quantity(GW_THICKNESS, row->least_m));
    if (engagement > row->greatest_m * (1 + GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "engagement",
                         "the pull-out formula holds up to an engagement of {}",
                         gw_of_quantity(GW_THICKNESS, row->greatest_m));
    if (engagement <= p->yield_to * (1 + GW_HAIR) || gw_given(p->width)) return GW_OK;
    return gw_refuse(engine, GW_MISSING, "stripping_area",
                     "no internal stripping area is known for a thread of this pitch ({}): give stripping_area, per "
                     "length engaged",
                     gw_of_quantity(GW_THICKNESS, screw->pitch));
}

static void open_pullout(struct pullout *p, const struct gw_screw *screw, struct gw_engine *engine)
{
    const bool spaced = screw->thread == GW_THREAD_SPACED;
    const struct gw_screw_size *size = spaced ? NULL : size_of(screw, engine->tables);
    p->row = GW_USE(engine,
                    &engine->tables->screw_pullout[spaced ? GW_ROW_SCREW_PULLOUT_SPACED : GW_ROW_SCREW_PULLOUT_COARSE]);
    p->yield_to = spaced ? p->row->yield_to_pitches * screw->pitch : p->row->yield_to_m;
    p->rupture_from = spaced ? p->row->rupture_from_pitches * screw->pitch : p->row->rupture_from_m;
    p->width = spaced ? screw->diameter : screw->stripping;
    if (!gw_given(p->width) && size) p->width = size->stripping_m;
}

static double pullout_yield(double factor, const struct gw_screw *screw, double engagement, double yield,
                            struct gw_engine *engine)
{
    const double nominal = factor * screw->diameter * engagement * yield;
    GW_STEP(engine, "R_n", GW_FORCE, nominal, PULLOUT_CLAUSE, "c*D*L_e*F_ty", {"c", factor, GW_RATIO},
            {"D", screw->diameter, GW_THICKNESS}, {"L_e", engagement, GW_THICKNESS}, {"F_ty|Fty", yield, GW_STRESS});
    return nominal;
}

static double pullout_rupture(const struct pullout *p, double engagement, double ultimate, struct gw_engine *engine)
{
    const double nominal = p->row->rupture * p->width * engagement * ultimate;
    GW_STEP(engine, "R_n", GW_FORCE, nominal, PULLOUT_CLAUSE, "c*A_n*L_e*F_tu", {"c", p->row->rupture, GW_RATIO},
            {"A_n", p->width, GW_THICKNESS}, {"L_e", engagement, GW_THICKNESS}, {"F_tu|Ftu", ultimate, GW_STRESS});
    return nominal;
}

static double pullout_between(const struct pullout *p, const struct gw_screw *screw, double engagement,
                              const struct gw_metal_strength *metal, struct gw_engine *engine)
{
    const double nominal = p->row->yielding * screw->diameter * metal->yield * (p->rupture_from - engagement) +
                           p->row->blend * p->width * metal->ultimate * (engagement - p->yield_to);
    GW_STEP(engine, "R_n", GW_FORCE, nominal, PULLOUT_CLAUSE, "c_y*D*F_ty*(L_r-L_e)+c_u*A_n*F_tu*(L_e-L_y)",
            {"c_y", p->row->yielding, GW_RATIO}, {"D", screw->diameter, GW_THICKNESS},
            {"F_ty|Fty", metal->yield, GW_STRESS}, {"L_r", p->rupture_from, GW_THICKNESS},
            {"L_e", engagement, GW_THICKNESS}, {"c_u", p->row->blend, GW_RATIO}, {"A_n", p->width, GW_THICKNESS},
            {"F_tu|Ftu", metal->ultimate, GW_STRESS}, {"L_y", p->yield_to, GW_THICKNESS});
    return nominal;
}

enum gw_status gw_screw_pullout(double *out, const struct gw_screw *screw, double engagement,
                                const struct gw_metal_strength *metal, struct gw_engine *engine)
{
    struct pullout p;
    enum gw_status status = check_screw(screw, engine);
    if (status) return status;
    open_pullout(&p, screw, engine);
    status = check_engagement(&p, screw, engagement, engine);
    const bool yields = engagement<p.rupture_from *(1 - GW_HAIR), ruptures = engagement> p.yield_to * (1 + GW_HAIR);
    if (!status && yields) status = gw_fastener_positive("metal_yield", metal->yield, engine);
    if (!status && ruptures) status = gw_fastener_positive("metal_ultimate", metal->ultimate, engine);
    if (status) return status;
    if (ruptures && screw->thread == GW_THREAD_COARSE && !gw_given(screw->stripping))
        gw_used_add(&engine->used, &size_of(screw, engine->tables)->row);
    if (!yields) *out = pullout_rupture(&p, engagement, metal->ultimate, engine);
    else if (ruptures) *out = pullout_between(&p, screw, engagement, metal, engine);
    else
        *out = pullout_yield(engagement < p.row->step_m * (1 - GW_HAIR) ? p.row->thin : p.row->yielding, screw,
                             engagement, metal->yield, engine);
    if (!gw_screw_in_thin_metal(engagement, engine->tables)) return GW_OK;
    return gw_screw_pullout_thin(out, screw, engagement, metal, p.row->yielding, engine);
}

static const struct {
    const char *key, *what;
} SEATS[] = {[GW_SEAT_CHASE] = {"chase_tested", "pull-out of a screw from a chase of an extrusion"},
             [GW_SEAT_SLOT] = {"slot_tested", "pull-out of a screw along a slot of an extrusion"},
             [GW_SEAT_SPLINE] = {"spline_tested", "shear of a screw in the end of a slot"}};

enum gw_status gw_tested_strength(double *out, enum gw_screw_seat seat, double tested, double safety_factor,
                                  struct gw_engine *engine)
{
    const char *key = SEATS[seat].key;
    if (!gw_given(tested))
        return gw_refuse(engine, GW_MISSING, key,
                         "no formula holds for the {}, that of a tapped hole is unsafe there: give the tested nominal "
                         "strength",
                         gw_of_text(SEATS[seat].what));
    enum gw_status status = gw_fastener_positive(key, tested, engine);
    const double factor = gw_given(safety_factor) ? safety_factor : gw_screw_safety(engine);
    if (!status) status = gw_fastener_positive("safety_factor", factor, engine);
    if (status) return status;
    *out = tested / factor;
    GW_STEP(engine, "R_a", GW_FORCE, *out, "tested nominal strength", "R_test/SF", {"R_test", tested, GW_FORCE},
            {"SF", factor, GW_RATIO});
    return GW_OK;
}

/* The sheet under the head --------------------------------------------------------------------------------------- */

static enum gw_status check_sheet(const struct gw_sheet *sheet, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_positive("sheet.thickness", sheet->thickness, engine);
    if (status || !gw_given(sheet->metal.thickness)) return status;
    if (sheet->thickness <= sheet->metal.thickness * (1 + GW_HAIR)) return GW_OK;
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "sheet.thickness",
                     "the strengths of this alloy hold up to a thickness of {}: give them for this one",
                     gw_of_quantity(GW_THICKNESS, sheet->metal.thickness));
}

static enum gw_status pullover_flat(double *out, const struct gw_screw_head *head, const struct gw_sheet *sheet,
                                    struct gw_engine *engine)
{
    const struct gw_screw_pullover *rows = engine->tables->screw_pullover;
    const struct gw_screw_pullover *row = GW_USE(engine, &rows[GW_ROW_SCREW_PULLOVER_FLAT]);
    const struct gw_screw_pullover *width = GW_USE(engine, &rows[GW_ROW_SCREW_PULLOVER_FLAT_WIDTH]);
    enum gw_status status = gw_fastener_positive("head_diameter", head->diameter, engine);
    if (!status) status = gw_fastener_positive("sheet.yield", sheet->metal.yield, engine);
    if (status) return status;
    if (head->diameter > width->head_most_m * (1 + GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "head_diameter",
                         "a head or washer counts up to {} for pull-over: give no more",
                         gw_of_quantity(GW_THICKNESS, width->head_most_m));
    *out = (row->base + row->slope * sheet->thickness / head->diameter) * head->diameter * sheet->thickness *
           sheet->metal.yield;
    GW_STEP(engine, "R_n", GW_FORCE, *out, PULLOVER_CLAUSE, "(c_0+c_1*t/D_ws)*D_ws*t*F_ty",
            {"c_0", row->base, GW_RATIO}, {"c_1", row->slope, GW_RATIO}, {"t", sheet->thickness, GW_THICKNESS},
            {"D_ws", head->diameter, GW_THICKNESS}, {"F_ty|Fty", sheet->metal.yield, GW_STRESS});
    return GW_OK;
}

static enum gw_status pullover_countersunk(double *out, double diameter, const struct gw_sheet *sheet,
                                           struct gw_engine *engine)
{
    const struct gw_screw_pullover *row =
        GW_USE(engine, &engine->tables->screw_pullover[GW_ROW_SCREW_PULLOVER_COUNTERSUNK]);
    enum gw_status status = gw_fastener_positive("sheet.yield", sheet->metal.yield, engine);
    if (status) return status;
    if (sheet->thickness > row->thickness_most * diameter * (1 + GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "sheet.thickness",
                         "pull-over of countersunk heads holds up to {} % of the diameter in thickness",
                         gw_of_number(100 * row->thickness_most, 4));
    *out = (row->base + row->slope * sheet->thickness / diameter) * diameter * sheet->thickness * sheet->metal.yield;
    GW_STEP(engine, "R_n", GW_FORCE, *out, PULLOVER_CLAUSE, "(c_0+c_1*t/D)*D*t*F_ty", {"c_0", row->base, GW_RATIO},
            {"c_1", row->slope, GW_RATIO}, {"t", sheet->thickness, GW_THICKNESS}, {"D", diameter, GW_THICKNESS},
            {"F_ty|Fty", sheet->metal.yield, GW_STRESS});
    return GW_OK;
}

static enum gw_status pullover_2010(double *out, const struct gw_screw_head *head, const struct gw_sheet *sheet,
                                    struct gw_engine *engine)
{
    const struct gw_screw_pullover *row = GW_USE(
        engine,
        &engine->tables->screw_pullover[head->rule == GW_PULLOVER_2010_CROWN ? GW_ROW_SCREW_PULLOVER_ADM_2010_CROWN
                                                                             : GW_ROW_SCREW_PULLOVER_ADM_2010_VALLEY]);
    enum gw_status status = gw_fastener_positive("head_diameter", head->diameter, engine);
    if (!status) status = gw_fastener_positive("hole_diameter", head->hole, engine);
    if (!status) status = gw_fastener_positive("sheet.ultimate", sheet->metal.ultimate, engine);
    if (status) return status;
    if (head->hole >= head->diameter)
        return gw_refuse(engine, GW_BAD_VALUE, "hole_diameter", "the hole must be smaller than the head");
    *out = row->base * sheet->thickness * sheet->metal.ultimate * (head->diameter - head->hole);
    GW_STEP(engine, "R_n", GW_FORCE, *out, PULLOVER_OLD_CLAUSE, "C*t*F_tu*(D_ws-D_h)", {"C", row->base, GW_RATIO},
            {"t", sheet->thickness, GW_THICKNESS}, {"F_tu|Ftu", sheet->metal.ultimate, GW_STRESS},
            {"D_ws", head->diameter, GW_THICKNESS}, {"D_h", head->hole, GW_THICKNESS});
    return GW_OK;
}

static enum gw_status find_head(struct gw_screw_head *out, const struct gw_screw_head *head, double diameter,
                                struct gw_engine *engine)
{
    *out = *head;
    if (head->kind != GW_HEAD_HEX_WASHER || gw_given(head->diameter)) return GW_OK;
    for (size_t i = 0; i < GW_N_HEX_WASHER_HEAD; i++) {
        const struct gw_hex_washer_head *row = &engine->tables->hex_washer_head[i];
        if (fabs(row->diameter_m - diameter) > SCREW_ROUNDING * diameter) continue;
        out->diameter = GW_USE(engine, row)->head_m;
        return GW_OK;
    }
    return gw_refuse(engine, GW_MISSING, "head_diameter", "no hex washer head is known for this screw: head_diameter");
}

enum gw_status gw_screw_pullover(double *out, const struct gw_screw *screw, const struct gw_screw_head *given,
                                 const struct gw_sheet *sheet, struct gw_engine *engine)
{
    struct gw_screw_head found, *head = &found;
    const bool old = given->rule == GW_PULLOVER_2010_VALLEY || given->rule == GW_PULLOVER_2010_CROWN;
    enum gw_status status = check_screw(screw, engine);
    if (!status) status = find_head(head, given, screw->diameter, engine);
    if (!status) status = check_sheet(sheet, engine);
    if (status) return status;
    if (gw_given(head->diameter) && head->diameter <= screw->diameter)
        return gw_refuse(engine, GW_BAD_VALUE, "head_diameter", "the head must be wider than the screw");
    if (head->kind != GW_HEAD_COUNTERSUNK)
        return old ? pullover_2010(out, head, sheet, engine) : pullover_flat(out, head, sheet, engine);
    if (old)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "head", "the 2010 pull-over form is not for countersunk heads");
    return pullover_countersunk(out, screw->diameter, sheet, engine);
}

static enum gw_status bear(double *out, int most_row, double diameter, double edge, const struct gw_sheet *sheet,
                           struct gw_engine *engine)
{
    const struct gw_screw_shear *most = GW_USE(engine, &engine->tables->screw_shear[most_row]);
    const struct gw_screw_shear *least = GW_USE(engine, &engine->tables->screw_shear[GW_ROW_SCREW_SHEAR_EDGE_LEAST]);
    enum gw_status status = gw_fastener_positive("diameter", diameter, engine);
    if (!status) status = check_sheet(sheet, engine);
    if (!status) status = gw_fastener_positive("edge_distance", edge, engine);
    if (!status) status = gw_fastener_positive("sheet.ultimate", sheet->metal.ultimate, engine);
    if (status) return status;
    if (edge < least->value * diameter * (1 - GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "edge_distance",
                         "the edge distance must be at least {} % of the diameter",
                         gw_of_number(100 * least->value, 4));
    *out = fmin(edge, most->value * diameter) * sheet->thickness * sheet->metal.ultimate;
    GW_STEP(engine, "R_n", GW_FORCE, *out, BEARING_CLAUSE, "min(d_e,c*D)*t*F_tu", {"d_e", edge, GW_THICKNESS},
            {"c", most->value, GW_RATIO}, {"D", diameter, GW_THICKNESS}, {"t", sheet->thickness, GW_THICKNESS},
            {"F_tu|Ftu", sheet->metal.ultimate, GW_STRESS});
    return GW_OK;
}

enum gw_status gw_screw_bearing(double *out, double diameter, double edge, const struct gw_sheet *sheet,
                                struct gw_engine *engine)
{
    return bear(out, GW_ROW_SCREW_SHEAR_BEARING_MOST, diameter, edge, sheet, engine);
}

enum gw_status gw_slot_bearing(double *out, double diameter, double edge, const struct gw_sheet *sheet,
                               struct gw_engine *engine)
{
    return bear(out, GW_ROW_SCREW_SHEAR_SLOT_MOST, diameter, edge, sheet, engine);
}

double gw_screw_tilting(double diameter, double thickness, double ultimate, struct gw_engine *engine)
{
    const double factor = GW_USE(engine, &engine->tables->screw_shear[GW_ROW_SCREW_SHEAR_TILTING])->value;
    const double nominal = factor * sqrt(thickness * thickness * thickness * diameter) * ultimate;
    GW_STEP(engine, "R_n", GW_FORCE, nominal, TILTING_CLAUSE, "c*sqrt(t_2^3*D)*F_tu", {"c", factor, GW_RATIO},
            {"t_2", thickness, GW_THICKNESS}, {"D", diameter, GW_THICKNESS}, {"F_tu|Ftu", ultimate, GW_STRESS});
    return nominal;
}
