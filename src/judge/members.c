/* What a candidate's member takes: from its tube and alloy, or from stated properties, with its insert. */
#include "judge_internal.h"

#include "tables_data.h"

static void clear(struct gw_strength_of_member *m)
{
    *m = (struct gw_strength_of_member){.moment = GW_ABSENT,
                                        .moment_y = GW_ABSENT,
                                        .shear = GW_ABSENT,
                                        .shear_y = GW_ABSENT,
                                        .stiffness = GW_ABSENT,
                                        .elastic_modulus = GW_ABSENT,
                                        .inertia_y = GW_ABSENT,
                                        .torsion = GW_ABSENT,
                                        .governing = ""};
}

static enum gw_status tube_strength(struct gw_strength_of_member *m, const struct gw_member_spec *spec, double unbraced,
                                    struct gw_engine *engine)
{
    struct gw_bending in;
    struct gw_bending_result r;
    struct gw_section section, turned;
    const struct gw_tube *t = spec->tube, other = {t->depth, t->width, t->web, t->flange};
    gw_bending_clear(&in);
    in.metal = spec->alloy;
    in.unbraced_length = unbraced;
    enum gw_status status = gw_bending_tube(&in, t, engine);
    if (status == GW_OK) status = gw_bending_strength(&r, &in, engine);
    if (status == GW_OK) status = gw_section_tube(&section, t, engine);
    if (status != GW_OK) return status;
    m->moment = r.allowable;
    m->shear = r.shear_allowable;
    m->governing = r.governing ? r.governing : "";
    m->stiffness = section.inertia_x;
    m->inertia_y = section.inertia_y;
    m->torsion = section.torsion;
    gw_bending_clear(&in); /* the tube on its side */
    in.metal = spec->alloy;
    in.unbraced_length = unbraced;
    status = gw_bending_tube(&in, &other, engine);
    if (status == GW_OK) status = gw_bending_strength(&r, &in, engine);
    if (status == GW_OK) status = gw_section_tube(&turned, &other, engine);
    if (status != GW_OK) return status;
    m->moment_y = r.allowable;
    m->shear_y = r.shear_allowable;
    return status;
}

/* Moments go by stiffness; the part that is used up first limits the whole. */
static void add_insert(struct gw_strength_of_member *m, const struct gw_insert_spec *insert, double insert_modulus,
                       const struct gw_judging *j)
{
    const double safety = j->model->tables->steel_rule[GW_ROW_STEEL_RULE_BENDING_SAFETY].value;
    double own = insert_modulus * insert->inertia_x, all = m->stiffness + own;
    double by_insert = insert->yield * insert->section_modulus_x / safety * all / own;
    double by_member = m->moment * all / m->stiffness;
    if (by_insert < by_member) m->governing = "the insert's yielding";
    m->moment = fmin(by_member, by_insert);
    m->stiffness = all;
}

/* Elastic constants do not hang on the thickness. */
double gw_modulus_of(bool steel, const struct gw_tables *t)
{
    return steel ? t->steel_modulus[GW_ROW_STEEL_MODULUS_CARBON].elastic_modulus_pa
                 : t->aluminum_modulus[0].elastic_modulus_pa;
}

static void add_parts(struct gw_strength_of_member *m, const struct gw_member_spec *spec, const struct gw_judging *j)
{
    const struct gw_tables *t = j->model->tables;
    bool steel = gw_metal_is_steel(spec->alloy);
    m->elastic_modulus = gw_modulus_of(steel, t);
    m->shear_modulus =
        steel ? GW_ABSENT : t->aluminum_shear_modulus[0].shear_modulus_pa; /* a steel twist is not told */
    m->stiffness *= m->elastic_modulus;
    if (spec->insert) add_insert(m, spec->insert, gw_modulus_of(spec->insert->metal == GW_INSERT_STEEL, t), j);
}

/* From a tube, or from stated properties; `who` names the key in the questions. */
void gw_find_member(struct gw_strength_of_member *m, const struct gw_member_spec *spec, double span, const char *who,
                    const struct gw_judging *j, struct gw_used *used)
{
    struct gw_engine engine;
    struct gw_arena *arena = j->model->arena;
    clear(m);
    gw_engine_init(&engine, j->model->tables, j->trace);
    if (!spec || (!spec->tube && !(gw_given(spec->inertia_x) && gw_given(spec->allowable_moment)))) {
        m->question = gw_format(arena,
                                "which section is the %s? Ask the maker (%s: alloy and tube, or inertia_x and "
                                "allowable_moment)",
                                who, who);
        return;
    }
    if (!spec->alloy) {
        m->question = gw_format(arena, "which alloy and temper is the %s? Ask the maker (%s: alloy)", who, who);
        return;
    }
    enum gw_status status = GW_OK;
    if (spec->tube) {
        status = tube_strength(m, spec, gw_given(spec->unbraced_length) ? spec->unbraced_length : span, &engine);
    } else {
        m->moment = spec->allowable_moment;
        m->stiffness = spec->inertia_x;
        m->inertia_y = spec->inertia_y;
        m->torsion = spec->torsion_constant;
        m->governing = "stated by the maker";
    }
    if (status == GW_OK) add_parts(m, spec, j);
    if (status != GW_OK) m->question = gw_fault_of(j, &engine);
    else if (!gw_given(m->moment))
        m->question =
            gw_format(arena, "the strength of the %s is not known: ask the maker (%s: allowable_moment)", who, who);
    gw_used_merge(used, &engine.used);
}
