/* Bending strength of carbon steel: compact rectangular tubes, and other shapes known to be compact and braced. */
#include "bending_internal.h"

#include "tables_data.h"

struct steel {
    const struct gw_steel_strength *grade;
    double elastic_modulus;
    struct gw_tube tube; /* m, by design thickness */
    double plastic, modulus, area, inertia_y, torsion;
};

static double rule(int row, struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->steel_rule[row])->value;
}

static const char *rule_source(int row, const struct gw_engine *engine)
{
    return engine->tables->steel_rule[row].row.source;
}

static const struct gw_steel_strength *grade_of(enum gw_metal metal, const struct gw_tables *tables)
{
    for (size_t i = 0; i < GW_N_STEEL_STRENGTH; i++)
        if (tables->steel_strength[i].grade == (int)metal) return &tables->steel_strength[i];
    return NULL;
}

struct gw_tube gw_tube_by_design(const struct gw_tube *tube, enum gw_metal metal, struct gw_engine *engine)
{
    const struct gw_steel_strength *grade = grade_of(metal, engine->tables);
    struct gw_tube design = *tube;
    if (!grade) return design;
    gw_used_add(&engine->used, &grade->row);
    design.flange *= grade->wall;
    design.web *= grade->wall;
    GW_STEP(engine, "tf", GW_THICKNESS, design.flange, grade->row.source, "k*t", {"k", grade->wall, GW_RATIO},
            {"t", tube->flange, GW_THICKNESS});
    GW_STEP(engine, "tw", GW_THICKNESS, design.web, grade->row.source, "k*t", {"k", grade->wall, GW_RATIO},
            {"t", tube->web, GW_THICKNESS});
    const double radii = rule(GW_ROW_STEEL_RULE_CORNER, engine), wall = fmax(design.flange, design.web);
    design.corner = radii * wall;
    GW_STEP(engine, "R", GW_THICKNESS, design.corner, rule_source(GW_ROW_STEEL_RULE_CORNER, engine),
            design.flange < design.web ? "k*tw" : "k*tf", {"k", radii, GW_RATIO},
            {design.flange < design.web ? "tw" : "tf", wall, GW_THICKNESS});
    return design;
}

static enum gw_status find_grade(struct steel *s, const struct gw_bending *in, struct gw_engine *engine)
{
    const struct gw_tables *tables = engine->tables;
    s->grade = grade_of(in->metal, tables);
    if (!s->grade) return gw_refuse(engine, GW_BAD_VALUE, "alloy", "not a steel of the table");
    if (s->grade->family == GW_STEEL_STAINLESS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "alloy",
                         "stainless steel yields gradually; its bending strength follows rules that are not here");
    gw_used_add(&engine->used, &s->grade->row);
    s->elastic_modulus = GW_USE(engine, &tables->steel_modulus[GW_ROW_STEEL_MODULUS_CARBON])->elastic_modulus_pa;
    if (in->welded) return gw_refuse(engine, GW_BAD_VALUE, "welded", "welded goes with aluminum");
    if (gw_given(in->quarter_moments[0]))
        return gw_refuse(engine, GW_BAD_VALUE, "quarter_moments", "quarter_moments go with aluminum: give cb");
    if (gw_given(in->cb) && !(in->cb >= 1 && isfinite(in->cb)))
        return gw_refuse(engine, GW_BAD_VALUE, "cb", "cb must be 1 or more");
    return GW_OK;
}

static enum gw_status fill_tube(struct steel *s, const struct gw_bending *in, struct gw_engine *engine)
{
    struct gw_section section;
    s->tube = gw_tube_by_design(in->tube, in->metal, engine);
    enum gw_status status = gw_section_tube(&section, &s->tube, engine);
    s->plastic = section.plastic_x;
    s->modulus = section.modulus_top;
    s->area = section.area;
    s->inertia_y = section.inertia_y;
    s->torsion = section.torsion;
    return status;
}

static void find_yielding(struct gw_bending_result *out, const struct steel *s, struct gw_engine *engine)
{
    const int row = GW_ROW_STEEL_RULE_PLASTIC_LIMIT;
    const double limit = rule(row, engine), fy = s->grade->yield_pa;
    out->nominal_yielding = fmin(fy * s->plastic, limit * fy * s->modulus);
    GW_STEP(engine, "Mp", GW_BENDING, out->nominal_yielding, rule_source(row, engine), "min(Fy*Z,k*Fy*S)",
            {"Fy", fy, GW_STRESS}, {"Z|Z", s->plastic, GW_SECTION_MODULUS}, {"k", limit, GW_RATIO},
            {"S|S", s->modulus, GW_SECTION_MODULUS});
}

/* Clear widths between walls: no credit for the corner radius. */
static enum gw_status check_compact(const struct steel *s, struct gw_engine *engine)
{
    const struct gw_tube *t = &s->tube;
    const double flat[] = {(t->width - 2 * t->web) / t->flange, (t->depth - 2 * t->flange) / t->web};
    const int rows[] = {GW_ROW_STEEL_RULE_COMPACT_FLANGE, GW_ROW_STEEL_RULE_COMPACT_WEB};
    for (size_t i = 0; i < 2; i++) {
        const double k = rule(rows[i], engine), limit = k * sqrt(s->elastic_modulus / s->grade->yield_pa);
        GW_STEP(engine, i ? "lambda_pw" : "lambda_pf", GW_RATIO, limit, rule_source(rows[i], engine), "k*sqrt(E/Fy)",
                {"k", k, GW_RATIO}, {"E", s->elastic_modulus, GW_STRESS}, {"Fy", s->grade->yield_pa, GW_STRESS});
        if (flat[i] > limit)
            return gw_refuse(engine, GW_OUTSIDE_METHOD, "tube", "the steel tube's {} is not compact: b/t is over {}",
                             gw_of_text(i ? "web" : "flange"), gw_of_number(limit, 4));
    }
    return GW_OK;
}

/* Lp or Lr: k E ry sqrt(J A)/M. */
static double length_limit(const char *symbol, int row, double moment, const struct steel *s, struct gw_engine *engine)
{
    const double k = rule(row, engine), ry = sqrt(s->inertia_y / s->area);
    const double length = k * s->elastic_modulus * ry * sqrt(s->torsion * s->area) / moment;
    GW_STEP(engine, symbol, GW_THICKNESS, length, rule_source(row, engine), "k*E*ry*sqrt(J*A)/M", {"k", k, GW_RATIO},
            {"E", s->elastic_modulus, GW_STRESS}, {"ry", ry, GW_THICKNESS}, {"J", s->torsion, GW_INERTIA},
            {"A", s->area, GW_SECTION_AREA}, {"M|M", moment, GW_BENDING});
    return length;
}

static double between(const struct gw_bending_result *out, double length, double lp, double lr, double at_lr,
                      struct gw_engine *engine)
{
    const double mp = out->nominal_yielding, cb = out->cb;
    const double mn = fmin(mp, cb * (mp - (mp - at_lr) * (length - lp) / (lr - lp)));
    GW_STEP(engine, "Mn", GW_BENDING, mn, "AISC 360-16 F7", "min(Mp,Cb*(Mp-(Mp-Mr)*(Lb-Lp)/(Lr-Lp)))",
            {"Mp", mp, GW_BENDING}, {"Cb", cb, GW_RATIO}, {"Mr", at_lr, GW_BENDING}, {"Lb", length, GW_THICKNESS},
            {"Lp", lp, GW_THICKNESS}, {"Lr", lr, GW_THICKNESS});
    return mn;
}

static enum gw_status lateral_tube(struct gw_bending_result *out, const struct steel *s, double length,
                                   struct gw_engine *engine)
{
    const int residual = GW_ROW_STEEL_RULE_RESIDUAL;
    if (!gw_given(s->torsion))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "tube", "the tube's walls are too thick for its torsion constant");
    const double k = rule(residual, engine), at_lr = k * s->grade->yield_pa * s->modulus;
    const double lp = length_limit("Lp", GW_ROW_STEEL_RULE_PLASTIC_LENGTH, out->nominal_yielding, s, engine);
    const double lr = length_limit("Lr", GW_ROW_STEEL_RULE_ELASTIC_LENGTH, at_lr, s, engine);
    GW_STEP(engine, "Mr", GW_BENDING, at_lr, rule_source(residual, engine), "k*Fy*S", {"k", k, GW_RATIO},
            {"Fy", s->grade->yield_pa, GW_STRESS}, {"S|S", s->modulus, GW_SECTION_MODULUS});
    if (length > lr)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "unbraced_length",
                         "the steel tube buckles sideways before it yields");
    out->nominal_lateral = length > lp ? between(out, length, lp, lr, at_lr, engine) : out->nominal_yielding;
    return GW_OK;
}

/* Of a web between its round corners. */
static double clear_depth(const struct gw_tube *t, struct gw_engine *engine)
{
    const int row = GW_ROW_STEEL_RULE_SHEAR_CORNERS;
    const double walls = rule(row, engine), clear = t->depth - walls * fmax(t->flange, t->web);
    GW_STEP(engine, "h", GW_THICKNESS, clear, rule_source(row, engine), t->flange < t->web ? "H-k*tw" : "H-k*tf",
            {"H", t->depth, GW_THICKNESS}, {"k", walls, GW_RATIO},
            {t->flange < t->web ? "tw" : "tf", fmax(t->flange, t->web), GW_THICKNESS});
    return clear;
}

static enum gw_status find_tube(struct gw_bending_result *out, const struct steel *s, const struct gw_bending *in,
                                struct gw_engine *engine)
{
    enum gw_status status = check_compact(s, engine);
    if (status) return status;
    out->nominal_local = out->nominal_yielding;
    status = lateral_tube(out, s, in->unbraced_length, engine);
    if (status) return status;
    const double shear = rule(GW_ROW_STEEL_RULE_SHEAR, engine), clear = clear_depth(&s->tube, engine);
    out->shear_stress = shear * s->grade->yield_pa;
    out->shear_nominal = out->shear_stress * 2 * clear * s->tube.web;
    GW_STEP(engine, "Vn", GW_FORCE, out->shear_nominal, rule_source(GW_ROW_STEEL_RULE_SHEAR, engine), "k*Fy*2*h*tw",
            {"k", shear, GW_RATIO}, {"Fy", s->grade->yield_pa, GW_STRESS}, {"h", clear, GW_THICKNESS},
            {"tw|tw", s->tube.web, GW_THICKNESS});
    return GW_OK;
}

/* Flats, angles, channels: only what needs no buckling. */
static void find_other(struct gw_bending_result *out, const struct gw_bending *in)
{
    if (in->compact) out->nominal_local = out->nominal_yielding;
    else gw_bending_note(out, "local buckling is not known: say compact where that is shown elsewhere");
    if (!(in->unbraced_length > 0)) out->nominal_lateral = out->nominal_yielding;
    else
        gw_bending_note(
            out, "lateral-torsional buckling of steel other than tubes is not covered: give 0 where it is braced");
    gw_bending_note(out, "shear is not known");
}

static void finish(struct gw_bending_result *out, struct gw_engine *engine)
{
    const int row = GW_ROW_STEEL_RULE_BENDING_SAFETY;
    const double safety = rule(row, engine);
    out->yielding = gw_bending_allow("My", rule_source(row, engine), out->nominal_yielding, safety, engine);
    if (gw_given(out->nominal_local)) out->local = out->nominal_local / safety;
    if (gw_given(out->nominal_lateral))
        out->lateral = gw_bending_allow("Mlateral", rule_source(row, engine), out->nominal_lateral, safety, engine);
    if (gw_given(out->shear_nominal)) {
        const double shear = rule(GW_ROW_STEEL_RULE_SHEAR_SAFETY, engine);
        out->shear_allowable = out->shear_nominal / shear;
        GW_STEP(engine, "Va", GW_FORCE, out->shear_allowable, rule_source(GW_ROW_STEEL_RULE_SHEAR_SAFETY, engine),
                "Vn/Omega", {"Vn", out->shear_nominal, GW_FORCE}, {"Omega", shear, GW_RATIO});
    }
    if (!gw_given(out->local) || !gw_given(out->lateral)) {
        gw_bending_note(out, "no allowable moment: one of its limits is not known");
        return;
    }
    out->allowable = fmin(out->yielding, out->lateral);
    out->governing = out->lateral < out->yielding ? "lateral_torsional" : "yielding";
}

enum gw_status gw_bending_steel(struct gw_bending_result *out, const struct gw_bending *in, struct gw_engine *engine)
{
    const double sc = in->modulus_compression, st = in->modulus_tension;
    struct steel s = {.plastic = in->plastic, .modulus = sc < st ? sc : st};
    enum gw_status status = find_grade(&s, in, engine);
    if (!status && in->tube) status = fill_tube(&s, in, engine);
    if (status) return status;
    if (!gw_given(s.plastic) || !gw_given(sc) || !gw_given(st))
        return gw_refuse(engine, GW_MISSING, "plastic_modulus_x", "steel wants its plastic and elastic moduli");
    out->cb = gw_given(in->cb) ? in->cb : 1;
    find_yielding(out, &s, engine);
    if (in->tube) status = find_tube(out, &s, in, engine);
    else find_other(out, in);
    if (!status) finish(out, engine);
    return status;
}
