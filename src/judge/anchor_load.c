#include "judge/anchor_load.h"
#include "judge/glass_lite.h"

#include "judge/corner.h"
#include "judge/judge_internal.h"
#include "judge/member.h"

#include "galeward/combine.h"

#include <string.h>

/* The wall on its own side of the roof line and across it, m, with the elements whose pressures they take. */
struct sides {
    double own, across;
    const struct gw_element *e, *o;
};

static double force_of(const char *symbol, const struct sides *s, double own, double across, struct gw_engine *engine)
{
    const struct gw_anchor_side here = {s->own, own}, there = {s->across, across};
    return gw_anchor_wind(symbol, s->e->width, &here, &there, engine);
}

void gw_anchor_load_of(struct gw_anchor_load *out, struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_mullion_anchor h;
    *out = (struct gw_anchor_load){.inward = GW_ABSENT,
                                   .outward = GW_ABSENT,
                                   .inward_strength = GW_ABSENT,
                                   .outward_strength = GW_ABSENT,
                                   .cut = gw_takeoff_other_part(ask->takeoff, e) != NULL};
    const bool known = gw_anchor_holds(&h, &out->fault, ask, e);
    const struct gw_element *found = gw_takeoff_across_roof(ask->takeoff, e), *o = found ? found : e;
    const struct sides s = {e->parapet ? h.above : h.below, e->parapet ? h.below : h.above, e, o};
    out->area = e->width * gw_anchor_bearing(e)->piece;
    if (known && s.across > 0 && o->outside) out->fault = *o->outside;
    if (gw_said(&out->fault)) return;
    gw_used_merge(&ask->engine.used, &e->used);
    if (s.across > 0) gw_used_merge(&ask->engine.used, &o->used);
    struct gw_engine untold = ask->engine; /* only the allowable-stress level is derived */
    untold.trace = NULL;
    out->inward = force_of("R_in", &s, e->inward_asd.pa, o->inward_asd.pa, &ask->engine);
    out->outward = force_of("R_out", &s, -e->outward_asd.pa, -o->outward_asd.pa, &ask->engine);
    out->inward_strength = force_of("R_in", &s, e->inward.pa, o->inward.pa, &untold);
    out->outward_strength = force_of("R_out", &s, -e->outward.pa, -o->outward.pa, &untold);
}

void gw_ask_bearing(struct gw_capacity *out, const struct gw_element *e)
{
    static const char *const questions[] = {
        [GW_BORNE_BY_NONE] = "no anchor bears the piece of mullion that is held here: what does, a sill on which it "
                             "stands compressed? Ask the manufacturer's engineer (walls: anchors: carries)",
        [GW_BORNE_TWICE] =
            "two anchors bear one piece of mullion, and heat locks a force in between them: which of them "
            "slides? Ask the manufacturer's engineer (walls: anchors: carries)"};
    const enum gw_borne borne = gw_anchor_bearing(e)->borne;
    if (borne != GW_BORNE_ONCE) gw_capacity_instead(out, GW_FORCE, 0, GW_ABSENT, GW_PLAINLY(questions[borne]));
}

/* Which lite types stand in which elevation: a row of the table each. */
static bool *types_of(const struct gw_ask *ask, bool *table, const struct gw_wall_grid *grid)
{
    return table + grid->elevation * ask->model->project.lites.n;
}

/* A lite whose type nobody named may be of any. */
static void note_lite(const struct gw_ask *ask, bool *types, const struct gw_element *e)
{
    for (size_t i = 0; i < ask->model->project.lites.n; i++)
        if (!e->lite || strcmp(ask->model->project.lites.items[i].name, e->lite) == 0) types[i] = true;
}

static bool *placed_types(struct gw_ask *ask)
{
    bool *table = ask->memory->placed_types;
    if (table) return table;
    const struct gw_takeoff *t = ask->takeoff;
    table = gw_alloc(ask->arena, t->n_elevations * ask->model->project.lites.n + 1, sizeof *table);
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_LITE) note_lite(ask, types_of(ask, table, e->grid), e);
    }
    return ask->memory->placed_types = table;
}

/* Absent: one of the make-ups is not known. */
static double heaviest_on(struct gw_ask *ask, const struct gw_wall_grid *grid)
{
    const bool *placed = types_of(ask, placed_types(ask), grid);
    double heaviest = 0;
    for (size_t i = 0; i < ask->model->project.lites.n; i++) {
        struct gw_make_up make_up;
        if (!placed[i]) continue;
        const struct gw_lite_type *type = gw_heaviest_now(ask, grid, &ask->model->project.lites.items[i]);
        if (!type->layers.n || gw_make_up_from(&make_up, type->layers.items, type->layers.n, &ask->engine) != GW_OK)
            return GW_ABSENT;
        heaviest = fmax(heaviest, gw_make_up_weight(&make_up, &ask->engine));
    }
    return heaviest > 0 ? heaviest : GW_ABSENT; /* no lite types: nothing is known of the glass */
}

double gw_heaviest_glass(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_corner_search search = gw_corner_of(ask, e);
    struct gw_corner_line line;
    double heaviest = heaviest_on(ask, e->grid);
    while (gw_given(heaviest) && gw_corner_next(&search, &line)) {
        const double other = heaviest_on(ask, line.grid);
        heaviest = gw_given(other) ? fmax(heaviest, other) : GW_ABSENT;
    }
    return heaviest;
}

/* What is stated of the leading load, and the other one against what is stated of it: together they leave less. */
static struct gw_message how_together(const struct gw_ask *ask, const struct gw_anchor_parts *p, bool dead)
{
    static const char *const how[] = {[GW_INTERACTION_UNSET] = "straight sum of the ratios",
                                      [GW_INTERACTION_NONE] = "each for itself by its report",
                                      [GW_INTERACTION_LINEAR] = "straight sum of the ratios",
                                      [GW_INTERACTION_ELLIPTIC] = "elliptic by its report"};
    const struct gw_message *first = dead ? &p->dead_words : &p->load_words,
                            *second = dead ? &p->load_words : &p->dead_words;
    if (!(p->dead > 0) || !(p->load > 0)) return *first;
    return GW_SAY(ask->arena, "{}, {} stated, with {}, {} of {} stated: {}", gw_of_message(first),
                  gw_of_quantity(GW_FORCE, dead ? p->dead_allowable : p->allowable), gw_of_message(second),
                  gw_of_quantity(GW_FORCE, dead ? p->load : p->dead),
                  gw_of_quantity(GW_FORCE, dead ? p->allowable : p->dead_allowable), gw_of_text(how[p->interaction]));
}

void gw_anchor_together(struct gw_capacity *out, struct gw_ask *ask, const struct gw_anchor_parts *p)
{
    const double by_load = p->load / p->allowable, by_dead = p->dead > 0 ? p->dead / p->dead_allowable : 0;
    const bool dead = by_dead > by_load;
    GW_STEP(&ask->engine, "use_w", GW_RATIO, by_load, "of the capacity stated", "R/C", {"R|R|F", p->load, GW_FORCE},
            {"C", p->allowable, GW_FORCE});
    if (p->dead > 0)
        GW_STEP(&ask->engine, "use_d", GW_RATIO, by_dead, "of the capacity stated", "D/C_d",
                {"D|D|F", p->dead, GW_FORCE}, {"C_d", p->dead_allowable, GW_FORCE});
    const double use = gw_combine_uses(by_load, by_dead, p->interaction, &ask->engine),
                 leading = dead ? p->dead : p->load, alone = dead ? p->dead_allowable : p->allowable;
    const double left = use > 0 ? leading / use : alone;
    struct gw_limit *limit = gw_capacity_instead(out, GW_FORCE, leading, left, how_together(ask, p, dead));
    limit->use = use;
    limit->turned = true; /* a dead load is neither in nor out */
    limit->direction = dead ? GW_NO_DIRECTION : p->direction;
}

const struct gw_anchor_spec *gw_anchor_of(const struct gw_system *system, const struct gw_element *e)
{
    if (e->corner) return gw_part(system, corner_anchor);
    return gw_is_half(system, e) ? gw_part(system, jamb_anchor) : gw_part(system, anchor);
}

const char *gw_anchor_key(const struct gw_system *system, const struct gw_element *e)
{
    if (e->corner) return "corner_anchor";
    return gw_is_half(system, e) ? "jamb_anchor" : "anchor";
}

struct gw_message gw_ask_frame_weight(struct gw_ask *ask, const struct gw_system *system)
{
    struct gw_text names;
    size_t n = 0;
    gw_text_init(&names, ask->arena);
    for (size_t i = 0; i < system->options.n && i < GW_OPTION_LIMIT; i++) {
        if (!(system->unweighed & gw_option_bit(i))) continue;
        gw_text_addf(&names, "%s'%s'", n++ ? " and " : "", system->options.items[i].name);
    }
    if (!n) return GW_PLAINLY("what does the framing weigh? Ask the manufacturer (frame_weight)");
    return GW_SAY(ask->arena, "what does the framing weigh with {}{}? Ask the manufacturer ({})", gw_of_text(names.at),
                  gw_of_text(n > 1 ? " together" : ""),
                  gw_of_text(n > 1 ? "frame_weight of an option that requires them" : "change: frame_weight"));
}
