#include "judge/member.h"

#include "galeward/member.h"

#include "judge/judge_internal.h"

/* What a member's strength hangs on and nothing else, so that equal ones are worked out once. */
struct key {
    double metal, tube[4], unbraced, moment, inertia[2], torsion, insert[4];
};

struct known {
    struct gw_member_strength strength;
    struct gw_message fault; /* not said: none */
    const struct gw_used *used;
};

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

static struct key key_of(const struct gw_member_section *s)
{
    struct key key = {.metal = (double)s->metal,
                      .unbraced = s->unbraced_length,
                      .moment = s->allowable_moment,
                      .inertia = {s->inertia_x, s->inertia_y},
                      .torsion = s->torsion};
    const struct gw_tube *t = s->tube;
    const struct gw_member_insert *i = s->insert;
    const double tube[4] = {t ? t->width : 0, t ? t->depth : 0, t ? t->flange : 0, t ? t->web : 0};
    const double insert[4] = {i && i->steel ? 1 : 0, i ? i->inertia : 0, i ? i->modulus : 0, i ? i->yield : 0};
    for (int k = 0; k < 4; k++) {
        key.tube[k] = tube[k];
        key.insert[k] = insert[k];
    }
    return key;
}

static struct known *work_out(struct gw_ask *ask, const struct gw_member_section *section)
{
    struct gw_ask own = *ask;
    struct known *k = gw_alloc(ask->arena, 1, sizeof *k);
    gw_ask_open(&own);
    if (gw_member_strength(&k->strength, section, &own.engine) != GW_OK) k->fault = gw_fault_message(&own);
    k->used = gw_ask_close(&own, NULL);
    return k;
}

/* Again where a derivation is wanted. */
static const struct known *known_of(struct gw_ask *ask, const struct gw_member_section *section)
{
    const struct key key = key_of(section);
    const struct known *known = *gw_memo_at(&ask->memory->members, ask->arena, &key, sizeof key);
    if (known && !ask->trace) return known;
    struct known *k = work_out(ask, section); /* may move the table */
    *gw_memo_at(&ask->memory->members, ask->arena, &key, sizeof key) = k;
    return k;
}

bool gw_member_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                  const struct gw_member_spec *spec, double span, const char *who)
{
    struct gw_member_section section;
    struct gw_member_insert insert;
    const struct gw_value name = gw_of_text(who);
    if (!spec || (!spec->tube && !(gw_given(spec->inertia_x) && gw_given(spec->allowable_moment)))) {
        *question = GW_SAY(ask->arena,
                           "which section is the {}? Ask the manufacturer ({}: alloy and tube, or inertia_x and "
                           "allowable_moment)",
                           name, name);
        return false;
    }
    if (!spec->alloy) {
        *question =
            GW_SAY(ask->arena, "which alloy and temper is the {}? Ask the manufacturer ({}: alloy)", name, name);
        return false;
    }
    section_of(&section, &insert, spec, span);
    const struct known *known = known_of(ask, &section);
    gw_used_merge(&ask->engine.used, known->used);
    *out = known->strength;
    *question = known->fault;
    if (!gw_said(question) && !gw_given(out->moment))
        *question = GW_SAY(
            ask->arena, "the strength of the {} is not known: ask the manufacturer ({}: allowable_moment)", name, name);
    return !gw_said(question);
}

bool gw_mullion_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                   const struct gw_system *system, const struct gw_element *e)
{
    return gw_member_of(out, question, ask, e->corner ? system->corner_mullion : system->mullion, e->span,
                        e->corner ? "corner_mullion" : "mullion");
}

double gw_framing_limit(const struct gw_model *model, double span, bool overhang, struct gw_engine *engine)
{
    const struct gw_framing_rules *rules = model->project.framing;
    const double limit = gw_deflection_limit(span, overhang, false, engine);
    return rules && gw_given(rules->deflection_cap) ? fmin(limit, rules->deflection_cap) : limit;
}

struct gw_message gw_stated_by(struct gw_ask *ask, const struct gw_capacity_spec *spec)
{
    if (!spec->report) return GW_PLAINLY("capacity as stated by the manufacturer");
    return GW_SAY(ask->arena, "capacity by {}", gw_of_text(spec->report));
}
