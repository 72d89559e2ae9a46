#include "judge/member.h"

#include "galeward/member.h"

#include "judge/judge_internal.h"
#include "tables_data.h"

/* What a member's strength hangs on and nothing else, so that equal ones are worked out once. */
struct key {
    double metal, tube[4], unbraced, moment, torque, inertia[2], torsion, insert[4];
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
                                      .torsion = spec->torsion_constant,
                                      .allowable_torque = spec->allowable_torque};
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
                      .torque = s->allowable_torque,
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

struct gw_message gw_unknown_about_y(struct gw_ask *ask, const struct gw_member_strength *strength, const char *lacking)
{
    const struct gw_fault *why = &strength->about_y;
    if (!why->format) return GW_PLAINLY(lacking);
    const struct gw_message said = gw_fault_kept(ask->arena, why);
    return GW_SAY(ask->arena, "it bends about y too, which is outside the method: {}", gw_of_message(&said));
}

/* Only where the wall ends: where it goes on the next unit brings the other half. */
bool gw_is_half(const struct gw_system *system, const struct gw_element *e)
{
    const struct gw_wall_grid *g = e->grid;
    const struct gw_grid_axis *axis = g->layers[e->sort].axis;
    bool half = false;
    for (unsigned i = axis->first[e->place_class]; i < axis->first[e->place_class + 1]; i++)
        half = half || (axis->members[i] == 0 && !g->goes_on_left) ||
               (axis->members[i] == g->n_columns && !g->goes_on_right);
    const bool shared = e->kind == GW_MULLION || e->kind == GW_ANCHOR; /* by two units, where both are there */
    return half && shared && !e->corner && system->system->kind == GW_UNITIZED;
}

const struct gw_member_spec *gw_mullion_spec(const struct gw_system *system, const struct gw_element *e)
{
    if (e->corner) return gw_part(system, corner_mullion);
    return gw_is_half(system, e) ? gw_part(system, jamb_mullion) : gw_part(system, mullion);
}

bool gw_mullion_of(struct gw_member_strength *out, struct gw_message *question, struct gw_ask *ask,
                   const struct gw_system *system, const struct gw_element *e)
{
    const char *who = e->corner ? "corner_mullion" : gw_is_half(system, e) ? "jamb_mullion" : "mullion";
    return gw_member_of(out, question, ask, gw_mullion_spec(system, e), e->span, who);
}

double gw_framing_limit(const struct gw_model *model, double span, bool overhang, struct gw_engine *engine)
{
    const struct gw_framing_rules *rules = model->project.framing;
    const double limit = gw_deflection_limit(span, overhang, false, engine);
    return rules && gw_given(rules->deflection_cap) ? fmin(limit, rules->deflection_cap) : limit;
}

/* "L/175 up to 13.5 ft" */
static struct gw_message framing_row(const struct gw_framing_deflection *row, struct gw_arena *arena)
{
    const int digits = 4;
    const struct gw_message plus =
        row->plus_m > 0 ? GW_SAY(arena, " + {}", gw_of_quantity(GW_THICKNESS, row->plus_m)) : (struct gw_message){0};
    const struct gw_message range =
        gw_given(row->span_at_most_m)
            ? GW_SAY(arena, " up to a span of {}", gw_of_quantity(GW_LENGTH, row->span_at_most_m))
            : GW_PLAINLY(" of longer ones");
    return GW_SAY(arena, "L/{}{}{}", gw_of_number(row->span_over, digits), gw_of_message(&plus), gw_of_message(&range));
}

struct gw_message gw_framing_rule(const struct gw_model *model, struct gw_arena *arena)
{
    const struct gw_framing_rules *rules = model->project.framing;
    const struct gw_framing_deflection *rows = model->tables->framing_deflection;
    struct gw_message limits = {0};
    for (size_t i = 0; i < GW_N_FRAMING_DEFLECTION; i++) {
        const struct gw_message row = framing_row(&rows[i], arena);
        limits = gw_say_both(arena, &limits, ", ", &row);
    }
    const bool capped = rules && gw_given(rules->deflection_cap);
    const struct gw_message cap = capped ? GW_SAY(arena, ", at most {} (framing: deflection_cap)",
                                                  gw_of_quantity(GW_THICKNESS, rules->deflection_cap))
                                         : (struct gw_message){0};
    return GW_SAY(arena, "framing that holds glass bends at most {} ({}){}", gw_of_message(&limits),
                  gw_of_text(rows[0].row.source), gw_of_message(&cap));
}

static const struct gw_code_glass_edge *edge_cap(const struct gw_model *model)
{
    for (size_t i = 0; i < GW_N_CODE_GLASS_EDGE; i++)
        if (model->tables->code_glass_edge[i].code == (int)model->project.codes->building)
            return &model->tables->code_glass_edge[i];
    return NULL;
}

double gw_edge_cap(struct gw_ask *ask)
{
    const struct gw_code_glass_edge *cap = edge_cap(ask->model);
    if (cap) gw_used_add(&ask->engine.used, &cap->row);
    return cap ? cap->deflection_m : (double)INFINITY;
}

static bool at_anchor(const struct gw_wall_lines *l, double height)
{
    for (size_t i = 0; i < l->n_anchors; i++)
        if (fabs(l->anchors[i] - height) <= GW_HAIR_M) return true;
    return false;
}

/* Of the edge of one row beside a stretch of mullion. Where it runs past an anchor its ends and what lies between may
 * bend to both sides. */
static double row_response(const struct gw_element *e, double from, double to, double deflection, double moment)
{
    const double edge = to - from, sag = gw_edge_under_moment(moment, edge);
    if (at_anchor(e->lines, from) && at_anchor(e->lines, to)) return deflection;
    if (edge > e->span - GW_HAIR_M) return fmin(sag, 2 * deflection);
    const bool simple = e->spans == 1 && fabs(e->top - e->bottom - e->span) <= GW_HAIR_M;
    return fmin(sag, simple ? gw_edge_of_simple_span(deflection, edge, e->span) : deflection);
}

/* The rows lie between the horizontals. */
static void find_worst_row(struct gw_framing_bend *out, const struct gw_element *e, double deflection, double moment)
{
    const struct gw_wall_lines *l = e->lines;
    out->response = out->edge = 0;
    for (size_t i = 1; i < l->n_levels; i++) {
        const double from = l->levels[i - 1], to = l->levels[i];
        if (to < e->bottom + GW_HAIR_M || from > e->top - GW_HAIR_M) continue;
        const double response = row_response(e, from, to, deflection, moment);
        if (!(response > out->response)) continue;
        out->response = response;
        out->edge = to - from;
    }
}

struct gw_framing_bend gw_framing_bend(struct gw_ask *ask, const struct gw_element *e, double deflection, double moment)
{
    const struct gw_code_glass_edge *cap = edge_cap(ask->model);
    struct gw_framing_bend own = {gw_framing_limit(ask->model, e->span, e->overhang, &ask->engine), deflection,
                                  GW_ABSENT, NULL};
    if (!cap) return own;
    struct gw_framing_bend edge = {cap->deflection_m, deflection, e->span, cap->clause}; /* a transom's whole length */
    if (e->kind == GW_MULLION) find_worst_row(&edge, e, deflection, moment);
    gw_used_add(&ask->engine.used, &cap->row);
    return edge.response * own.limit > own.response * edge.limit ? edge : own;
}

struct gw_framing_bend gw_framing_bend_again(struct gw_ask *ask, const struct gw_element *e, double deflection,
                                             double moment)
{
    struct gw_trace *trace = ask->engine.trace;
    ask->engine.trace = NULL;
    const struct gw_framing_bend bend = gw_framing_bend(ask, e, deflection, moment);
    ask->engine.trace = trace;
    return bend;
}

double gw_framing_bent(const struct gw_framing_bend *bend, double stiffness, struct gw_engine *engine)
{
    const double one = 1; /* N m2, as EI: their ratio has no unit */
    GW_FOUND(engine, "d_1", GW_BEAM_LENGTH, bend->response, bend->clause,
             "the edge's deflection from its own ends with E I of EI_1, 1 N m2 (EI in N m2 in both systems of units)",
             {"EI_1", one, GW_RATIO});
    GW_STEP(engine, "d_edge", GW_BEAM_LENGTH, bend->response / stiffness, bend->clause, "d_1*EI_1/EI",
            {"d_1", bend->response, GW_BEAM_LENGTH}, {"EI_1", one, GW_RATIO}, {"EI", stiffness, GW_RATIO});
    return bend->response / stiffness;
}

struct gw_message gw_framing_bend_message(struct gw_ask *ask, const struct gw_framing_bend *bend)
{
    if (!bend->clause) return GW_PLAINLY("under wind");
    return GW_SAY(ask->arena, "edge of the glass, {} long, from its own ends under wind ({})",
                  gw_of_quantity(GW_LENGTH, bend->edge), gw_of_text(bend->clause));
}

double gw_member_safety(struct gw_ask *ask, const struct gw_member_spec *spec)
{
    const struct gw_tables *t = ask->model->tables;
    if (!spec->tube) return 0;
    return gw_metal_is_steel(spec->alloy) ? t->steel_rule[GW_ROW_STEEL_RULE_BENDING_SAFETY].value
                                          : t->aluminum_safety[GW_ROW_ALUMINUM_SAFETY_OTHER].factor;
}

enum gw_evidence gw_member_evidence(const struct gw_member_spec *spec)
{
    return spec->tube ? GW_BY_CALCULATION : gw_stated_evidence(spec->report);
}

struct gw_message gw_member_governing(struct gw_ask *ask, const struct gw_member_spec *spec,
                                      const struct gw_member_strength *strength)
{
    if (spec->tube || !spec->report) return GW_PLAINLY(strength->governing);
    return GW_SAY(ask->arena, "{}, {}", gw_of_text(strength->governing), gw_of_text(spec->report));
}

struct gw_message gw_stated_by(struct gw_ask *ask, const struct gw_capacity_spec *spec)
{
    if (!spec->report) return GW_PLAINLY("capacity as stated by the manufacturer");
    return GW_SAY(ask->arena, "capacity by {}", gw_of_text(spec->report));
}
