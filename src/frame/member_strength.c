/* Strength and stiffness of a member from its section. */
#include "galeward/member_strength.h"

#include "galeward/share.h"

#include "tables_data.h"

static const double PI = 3.14159265358979323846;

static void clear(struct gw_member_strength *m)
{
    *m = (struct gw_member_strength){.moment = GW_ABSENT,
                                     .moment_y = GW_ABSENT,
                                     .shear = GW_ABSENT,
                                     .shear_y = GW_ABSENT,
                                     .torque = GW_ABSENT,
                                     .stiffness = GW_ABSENT,
                                     .elastic_modulus = GW_ABSENT,
                                     .shear_modulus = GW_ABSENT,
                                     .inertia_y = GW_ABSENT,
                                     .torsion = GW_ABSENT,
                                     .governing = ""};
}

static enum gw_status bent_tube(struct gw_bending_result *out, const struct gw_tube *tube,
                                const struct gw_member_section *in, struct gw_engine *engine)
{
    struct gw_bending bending;
    gw_bending_clear(&bending);
    bending.metal = in->metal;
    bending.unbraced_length = in->unbraced_length;
    enum gw_status status = gw_bending_tube(&bending, tube, engine);
    return status == GW_OK ? gw_bending_strength(out, &bending, engine) : status;
}

/* What it resists by its shape, however strong its metal is: by the walls that its strength is found with. */
static void take_stiffness(struct gw_member_strength *m, double *inertia, const struct gw_member_section *in,
                           struct gw_engine *engine)
{
    struct gw_section section;
    const struct gw_fault before = engine->fault;
    const struct gw_tube tube = gw_tube_by_design(in->tube, in->metal, engine);
    if (gw_section_tube(&section, &tube, engine) == GW_OK) {
        *inertia = section.inertia_x;
        m->inertia_y = section.inertia_y;
        m->torsion = section.torsion;
    }
    engine->fault = before;
}

/* Pa, allowable shear stress of the webs; absent: not known. */
static double shear_stress_of(const struct gw_bending_result *r)
{
    return r->shear_allowable / r->shear_nominal * r->shear_stress;
}

/* A shear flow round the middle line of the walls, which is round at round corners: T = 2 A_m t f. */
static double tube_torque(const struct gw_tube *t, double stress, struct gw_engine *engine)
{
    const double b = t->width - t->web, d = t->depth - t->flange, wall = fmin(t->flange, t->web);
    const double rw = fmax(t->corner - t->web / 2, 0), rf = fmax(t->corner - t->flange / 2, 0);
    const double area = b * d - (4 - PI) * rw * rf, torque = 2 * area * wall * stress;
    if (!gw_given(torque)) return torque;
    const struct gw_arg args[] = {{"b_m", b, GW_THICKNESS},   {"d_m", d, GW_THICKNESS}, {"t", wall, GW_THICKNESS},
                                  {"f_s", stress, GW_STRESS}, {"pi", PI, GW_RATIO},     {"r_w", rw, GW_THICKNESS},
                                  {"r_f", rf, GW_THICKNESS}};
    const bool is_round = rw > 0 && rf > 0;
    gw_trace_step(engine, "T_a", GW_BENDING, torque, "closed tube, Bredt",
                  is_round ? "2*(b_m*d_m-(4-pi)*r_w*r_f)*t*f_s" : "2*b_m*d_m*t*f_s", args, is_round ? 7 : 4);
    return torque;
}

static enum gw_status take_tube(struct gw_member_strength *m, double *inertia, const struct gw_member_section *in,
                                struct gw_engine *engine)
{
    const struct gw_tube *t = in->tube, on_its_side = {t->depth, t->width, t->web, t->flange, t->corner};
    struct gw_bending_result r;
    const char *before = gw_trace_at(engine, "x");
    enum gw_status status = bent_tube(&r, t, in, engine);
    if (status == GW_OK || status == GW_OUTSIDE_METHOD) take_stiffness(m, inertia, in, engine);
    if (status != GW_OK) {
        gw_trace_at(engine, before);
        return status;
    }
    m->moment = r.allowable;
    m->shear = r.shear_allowable;
    m->governing = r.governing ? r.governing : "";
    const double upright = shear_stress_of(&r);
    gw_trace_at(engine, "y");
    status = bent_tube(&r, &on_its_side, in, engine);
    gw_trace_at(engine, before);
    if (status == GW_OUTSIDE_METHOD) {
        m->about_y = engine->fault;
        engine->fault = (struct gw_fault){.status = GW_OK};
        return GW_OK;
    }
    if (status != GW_OK) return status;
    m->moment_y = r.allowable;
    m->shear_y = r.shear_allowable;
    const struct gw_tube design = gw_tube_by_design(t, in->metal, engine);
    m->torque = tube_torque(&design, upright < shear_stress_of(&r) ? upright : shear_stress_of(&r), engine);
    return GW_OK;
}

static void take_stated(struct gw_member_strength *m, double *inertia, const struct gw_member_section *in,
                        struct gw_engine *engine)
{
    m->moment = in->allowable_moment;
    m->inertia_y = in->inertia_y;
    m->torsion = in->torsion;
    m->torque = in->allowable_torque;
    m->governing = "stated by the manufacturer";
    *inertia = in->inertia_x;
    gw_trace_found(engine, "M_a", GW_BENDING, m->moment, "stated by the manufacturer", "as stated", NULL, 0);
}

static enum gw_status add_insert(struct gw_member_strength *m, double inertia, const struct gw_member_insert *insert,
                                 struct gw_engine *engine)
{
    const double safety = engine->tables->steel_rule[GW_ROW_STEEL_RULE_BENDING_SAFETY].value;
    const struct gw_moduli moduli = gw_metal_moduli(insert->steel ? GW_METAL_A36 : GW_METAL_6063_T6, engine);
    const struct gw_share_strength parts[] = {
        {m->elastic_modulus, inertia, m->moment},
        {moduli.elastic, insert->inertia, insert->yield * insert->modulus / safety}};
    struct gw_share_limit both;
    GW_STEP(engine, "M_insert", GW_BENDING, parts[1].allowable, "yielding over its safety factor", "F_y*S/SF",
            {"F_y", insert->yield, GW_STRESS}, {"S", insert->modulus, GW_SECTION_MODULUS}, {"SF", safety, GW_RATIO});
    enum gw_status status = gw_share_allowable(&both, parts, 2, engine);
    if (status != GW_OK) return status;
    if (both.governs == 1) m->governing = "the insert's yielding";
    m->moment = both.moment;
    m->stiffness = m->elastic_modulus * both.equivalent_inertia;
    return GW_OK;
}

enum gw_status gw_member_strength(struct gw_member_strength *out, const struct gw_member_section *in,
                                  struct gw_engine *engine)
{
    double inertia = GW_ABSENT;
    clear(out);
    if (!in->metal) return gw_refuse(engine, GW_MISSING, "alloy", "which alloy and temper, or grade, is the member?");
    enum gw_status status = GW_OK;
    if (in->tube) status = take_tube(out, &inertia, in, engine);
    else take_stated(out, &inertia, in, engine);
    const bool yields_gradually = gw_metal_family(in->metal) == GW_FAMILY_STAINLESS;
    if (status != GW_OK && (status != GW_OUTSIDE_METHOD || yields_gradually)) return status;
    const struct gw_moduli moduli = gw_metal_moduli(in->metal, engine);
    out->elastic_modulus = moduli.elastic;
    out->shear_modulus = moduli.shear;
    out->stiffness = moduli.elastic * inertia;
    const enum gw_status inserted =
        in->insert && (status == GW_OK || gw_given(inertia)) ? add_insert(out, inertia, in->insert, engine) : GW_OK;
    return status == GW_OK ? inserted : status;
}
