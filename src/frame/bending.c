/* Bending strength of aluminum members: yielding and rupture, and which limit governs. */
#include "bending_internal.h"

#include "tables_data.h"

void gw_bending_clear(struct gw_bending *out)
{
    *out = (struct gw_bending){.metal = GW_METAL_UNSET};
    out->thickness = out->plastic = out->modulus_compression = out->modulus_tension = GW_ABSENT;
    out->area = out->inertia_y = out->torsion = out->warping = GW_ABSENT;
    out->elastic_moment = out->compression_flange_share = out->unbraced_length = out->cb = GW_ABSENT;
    for (int i = 0; i < 4; i++) out->quarter_moments[i] = GW_ABSENT;
    out->flange_inertia = out->flange_distance = out->web_inertia = out->web_distance = GW_ABSENT;
    out->web_depth = out->web_clear = out->web_thickness = GW_ABSENT;
}

static void clear_result(struct gw_bending_result *out)
{
    *out = (struct gw_bending_result){.governing = NULL};
    out->yielding = out->rupture = out->local = out->lateral = GW_ABSENT;
    out->nominal_yielding = out->nominal_rupture = out->nominal_local = out->nominal_lateral = GW_ABSENT;
    out->allowable = out->shear_allowable = out->shear_nominal = GW_ABSENT;
    out->flange_stress = out->web_stress = out->shear_stress = GW_ABSENT;
    out->slenderness = out->slenderness_limit = out->cb = GW_ABSENT;
}

void gw_bending_note(struct gw_bending_result *out, const char *text)
{
    if (out->n_notes < GW_BENDING_NOTES) out->notes[out->n_notes++] = text;
}

enum gw_status gw_bending_positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value) || (value > 0 && isfinite(value))) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be positive", gw_of_text(key));
}

double gw_bending_allow(const char *symbol, const char *clause, double nominal, double safety, struct gw_engine *engine)
{
    GW_STEP(engine, symbol, GW_BENDING, nominal / safety, clause, "Mn/Omega", {"Mn|M", nominal, GW_BENDING},
            {"Omega", safety, GW_RATIO});
    return nominal / safety;
}

/* Tube --------------------------------------------------------------------------------------------------------------
 */

static void step_tube(const struct gw_bending *out, const struct gw_tube *t, struct gw_engine *engine)
{
    static const char CLAUSE[] = "flange and web elements of a tube";
    const struct gw_arg args[] = {{"B", t->width, GW_THICKNESS},
                                  {"H", t->depth, GW_THICKNESS},
                                  {"tf", t->flange, GW_THICKNESS},
                                  {"tw", t->web, GW_THICKNESS}};
    gw_trace_step(engine, "If", GW_INERTIA, out->flange_inertia, CLAUSE, "2*(B*tf^3/12+B*tf*((H-tf)/2)^2)", args, 4);
    gw_trace_step(engine, "Iw", GW_INERTIA, out->web_inertia, CLAUSE, "2*tw*(H-2*tf)^3/12", args, 4);
    gw_trace_step(engine, "ccf", GW_THICKNESS, out->flange_distance, CLAUSE, "(H-tf)/2", args, 4);
    gw_trace_step(engine, "ccw", GW_THICKNESS, out->web_distance, CLAUSE, "H/2-tf", args, 4);
}

static void set_elements(struct gw_bending *out, const struct gw_tube *t)
{
    const double b = t->width, h = t->depth, arm = (h - t->flange) / 2;
    out->flange_inertia = 2 * (b * pow(t->flange, 3) / 12 + b * t->flange * arm * arm);
    out->flange_distance = arm;
    out->web_inertia = 2 * t->web * pow(h - 2 * t->flange, 3) / 12;
    out->web_distance = h / 2 - t->flange;
    out->elements[0] = (struct gw_flat_element){GW_ELEMENT_COMPRESSION, b - 2 * t->web, t->flange, 2, GW_ABSENT};
    out->elements[1] = (struct gw_flat_element){GW_ELEMENT_BENDING, h - 2 * t->flange, t->web, 2, -1};
    out->n_elements = 2;
    out->webs = 2;
    out->web_depth = h;
    out->web_clear = h - 2 * t->flange;
    out->web_thickness = t->web;
}

enum gw_status gw_bending_tube(struct gw_bending *out, const struct gw_tube *tube, struct gw_engine *engine)
{
    struct gw_section section;
    enum gw_status status = gw_section_tube(&section, tube, engine);
    if (status) return status;
    out->tube = tube;
    out->thickness = fmax(tube->flange, tube->web);
    out->plastic = section.plastic_x;
    out->modulus_compression = section.modulus_top;
    out->modulus_tension = section.modulus_bottom;
    out->area = section.area;
    out->inertia_y = section.inertia_y;
    out->torsion = section.torsion;
    out->profile = GW_PROFILE_CLOSED;
    set_elements(out, tube);
    step_tube(out, tube, engine);
    return GW_OK;
}

/* Yielding and rupture ----------------------------------------------------------------------------------------------
 */

static enum gw_status check(const struct gw_bending *in, struct gw_engine *engine)
{
    if (in->metal == GW_METAL_UNSET) return gw_refuse(engine, GW_MISSING, "alloy", "the metal is needed");
    if (!gw_given(in->unbraced_length))
        return gw_refuse(engine, GW_MISSING, "unbraced_length", "the unbraced length is needed; 0: braced throughout");
    if (!(in->unbraced_length >= 0 && isfinite(in->unbraced_length)))
        return gw_refuse(engine, GW_BAD_VALUE, "unbraced_length", "the unbraced length must not be negative");
    const struct {
        const char *key;
        double value;
    } positive[] = {{"thickness", in->thickness},
                    {"plastic_modulus_x", in->plastic},
                    {"section_modulus_compression", in->modulus_compression},
                    {"section_modulus_tension", in->modulus_tension}};
    for (size_t i = 0; i < sizeof positive / sizeof *positive; i++) {
        enum gw_status status = gw_bending_positive(positive[i].key, positive[i].value, engine);
        if (status) return status;
    }
    if (in->plastic < fmin(in->modulus_compression, in->modulus_tension)) /* not where absent */
        return gw_refuse(engine, GW_BAD_VALUE, "plastic_modulus_x", "the plastic modulus is less than the elastic one");
    return GW_OK;
}

static void find_yielding(struct gw_bending_result *out, const struct gw_bending *in, const struct gw_alloy *alloy,
                          struct gw_engine *engine)
{
    const struct gw_aluminum_ratio *limit = &engine->tables->aluminum_ratio[GW_ROW_ALUMINUM_RATIO_PLASTIC_LIMIT];
    if (!gw_given(in->plastic) || !gw_given(in->modulus_compression) || !gw_given(in->modulus_tension)) {
        gw_bending_note(out, "yielding is not known: it wants the plastic modulus and the elastic ones of both faces");
        return;
    }
    gw_used_add(&engine->used, &limit->row);
    out->nominal_yielding = fmin(in->plastic * alloy->compressive_yield,
                                 fmin(limit->value * in->modulus_tension * alloy->yield,
                                      limit->value * in->modulus_compression * alloy->compressive_yield));
    GW_STEP(engine, "Mny", GW_BENDING, out->nominal_yielding, "ADM F.2", "min(Z*Fcy,min(k*St*Fty,k*Sc*Fcy))",
            {"Z|Z", in->plastic, GW_SECTION_MODULUS}, {"Fcy", alloy->compressive_yield, GW_STRESS},
            {"k", limit->value, GW_RATIO}, {"St|S", in->modulus_tension, GW_SECTION_MODULUS},
            {"Fty", alloy->yield, GW_STRESS}, {"Sc|S", in->modulus_compression, GW_SECTION_MODULUS});
}

static void find_rupture(struct gw_bending_result *out, const struct gw_bending *in, const struct gw_alloy *alloy,
                         struct gw_engine *engine)
{
    if (!gw_given(in->plastic)) {
        gw_bending_note(out, "rupture is not known: it wants the plastic modulus");
        return;
    }
    out->nominal_rupture = in->plastic * alloy->ultimate / alloy->tension_coefficient;
    GW_STEP(engine, "Mnu", GW_BENDING, out->nominal_rupture, "ADM F.2", "Z*Ftu/kt",
            {"Z|Z", in->plastic, GW_SECTION_MODULUS}, {"Ftu", alloy->ultimate, GW_STRESS},
            {"kt", alloy->tension_coefficient, GW_RATIO});
}

/* Which governs -----------------------------------------------------------------------------------------------------
 */

static void set_allowable(double *out, const char *symbol, double nominal, double safety, struct gw_engine *engine)
{
    if (gw_given(nominal)) *out = gw_bending_allow(symbol, "ADM F.1", nominal, safety, engine);
}

static void govern(struct gw_bending_result *out, struct gw_engine *engine)
{
    static const char *const names[] = {"yielding", "rupture", "local", "lateral_torsional"};
    const double values[] = {out->yielding, out->rupture, out->local, out->lateral};
    double least = INFINITY;
    for (size_t i = 0; i < 4; i++) {
        if (!gw_given(values[i])) {
            gw_bending_note(out, "no allowable moment: one of its limits is not known");
            out->governing = NULL;
            return;
        }
        if (values[i] < least) least = values[i], out->governing = names[i];
    }
    out->allowable = least;
    GW_STEP(engine, "Ma", GW_BENDING, least, "ADM F.1", "min(min(My,Mu),min(Mlocal,Mlateral))",
            {"My", out->yielding, GW_BENDING}, {"Mu", out->rupture, GW_BENDING}, {"Mlocal", out->local, GW_BENDING},
            {"Mlateral", out->lateral, GW_BENDING});
}

static void finish(struct gw_bending_result *out, struct gw_engine *engine)
{
    const struct gw_aluminum_safety *rupture = &engine->tables->aluminum_safety[GW_ROW_ALUMINUM_SAFETY_RUPTURE],
                                    *other = &engine->tables->aluminum_safety[GW_ROW_ALUMINUM_SAFETY_OTHER];
    gw_used_add(&engine->used, &rupture->row);
    gw_used_add(&engine->used, &other->row);
    set_allowable(&out->yielding, "My", out->nominal_yielding, other->factor, engine);
    set_allowable(&out->rupture, "Mu", out->nominal_rupture, rupture->factor, engine);
    set_allowable(&out->local, "Mlocal", out->nominal_local, other->factor, engine);
    set_allowable(&out->lateral, "Mlateral", out->nominal_lateral, other->factor, engine);
    govern(out, engine);
    if (!gw_given(out->shear_nominal)) return;
    out->shear_allowable = out->shear_nominal / other->factor;
    GW_STEP(engine, "Va", GW_FORCE, out->shear_allowable, "ADM G.1", "Vn/Omega", {"Vn", out->shear_nominal, GW_FORCE},
            {"Omega", other->factor, GW_RATIO});
}

static const char WELDED[] =
    "welded: strengths of the weld-affected zone are taken for the whole section and the whole "
    "unbraced length";

enum gw_status gw_bending_strength(struct gw_bending_result *out, const struct gw_bending *in, struct gw_engine *engine)
{
    struct gw_alloy alloy;
    clear_result(out);
    enum gw_status status = check(in, engine);
    if (status) return status;
    if (gw_metal_is_steel(in->metal)) return gw_bending_steel(out, in, engine);
    gw_trace_note(engine, "edition", in->edition == GW_ADM_2015 ? "ADM 2015" : "ADM 2020",
                  in->edition == GW_ADM_2015
                      ? "Aluminum Design Manual 2015, Part I, allowable strength design, building-type structures"
                      : "Aluminum Design Manual 2020, Part I, allowable strength design, building-type structures");
    status = gw_alloy_find(&alloy, in->metal, in->thickness, in->welded, engine);
    if (status) return status;
    if (in->welded) gw_bending_note(out, WELDED);
    find_yielding(out, in, &alloy, engine);
    find_rupture(out, in, &alloy, engine);
    status = gw_bending_local(out, in, &alloy, engine);
    if (!status) status = gw_bending_lateral(out, in, &alloy, engine);
    if (!status) status = gw_bending_shear(out, in, &alloy, engine);
    if (!status) finish(out, engine);
    return status;
}
