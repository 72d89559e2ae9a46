/* What a candidate's member takes: its file's keys to the frame engine's section, and the questions where some lack. */
#include "judge_internal.h"

static void section_of(struct gw_member_section *out, struct gw_member_insert *insert,
                       const struct gw_member_spec *spec, double span)
{
    *out = (struct gw_member_section){.metal = spec->alloy,
                                      .tube = spec->tube,
                                      .unbraced_length = gw_given(spec->unbraced_length) ? spec->unbraced_length : span,
                                      .allowable_moment = spec->allowable_moment,
                                      .inertia_x = spec->inertia_x,
                                      .inertia_y = spec->inertia_y,
                                      .torsion = spec->torsion_constant};
    if (!spec->insert) return;
    *insert = (struct gw_member_insert){spec->insert->metal == GW_INSERT_STEEL, spec->insert->inertia_x,
                                        spec->insert->section_modulus_x, spec->insert->yield};
    out->insert = insert;
}

const char *gw_find_member(struct gw_member_strength *m, const struct gw_member_spec *spec, double span,
                           const char *who, const struct gw_judging *j, struct gw_used *used)
{
    struct gw_engine engine;
    struct gw_arena *arena = j->model->arena;
    struct gw_member_section section;
    struct gw_member_insert insert;
    if (!spec || (!spec->tube && !(gw_given(spec->inertia_x) && gw_given(spec->allowable_moment))))
        return gw_format(arena,
                         "which section is the %s? Ask the maker (%s: alloy and tube, or inertia_x and "
                         "allowable_moment)",
                         who, who);
    if (!spec->alloy) return gw_format(arena, "which alloy and temper is the %s? Ask the maker (%s: alloy)", who, who);
    section_of(&section, &insert, spec, span);
    gw_engine_init(&engine, j->model->tables, j->trace);
    const enum gw_status status = gw_member_strength(m, &section, &engine);
    gw_used_merge(used, &engine.used);
    if (status != GW_OK) return gw_fault_of(j, &engine);
    if (gw_given(m->moment)) return NULL;
    return gw_format(arena, "the strength of the %s is not known: ask the maker (%s: allowable_moment)", who, who);
}
