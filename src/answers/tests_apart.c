/* Tests that have specimens of their own, or stand apart from the sequence of the mock-up: what each is to show. */
#include "galeward/answers.h"
#include "judge/hazards.h"

#include "tables_data.h"

static void add(struct gw_answer *out, struct gw_ask *ask, int row, struct gw_message asked)
{
    struct gw_test_apart *apart = &out->apart.items[out->apart.n++];
    *apart = (struct gw_test_apart){.title = ask->model->tables->mockup_apart[row].title,
                                    .method = ask->model->tables->mockup_apart[row].method,
                                    .asked = asked};
}

/* All lites that ask for one missile, at their greatest pressures in both directions. */
struct struck {
    const struct gw_demand *first;
    double inward, outward;
};

static void add_impact(struct gw_answer *out, struct gw_ask *ask, const struct struck *s)
{
    struct gw_cycles cycles;
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    const bool known = gw_debris_cycles(&cycles, (struct gw_asd){s->inward}, (struct gw_asd){s->outward},
                                        GW_CYCLES_IMPACT, &ask->engine) == GW_OK;
    const struct gw_message then = known ? gw_say_cycles(ask, &cycles) : gw_fault_message(ask);
    add(out, ask, GW_ROW_MOCKUP_APART_IMPACT, gw_say_both(ask->arena, &s->first->summary, "; ", &then));
}

static void find_impact(struct gw_answer *out, struct gw_ask *ask)
{
    struct struck of[GW_MISSILE_E + 1] = {{NULL, 0, 0}};
    for (size_t i = 0; i < out->judgement.demands.n; i++) {
        const struct gw_demand *d = &out->judgement.demands.items[i];
        if (!d->hazard || !d->hazard->missile || d->state != GW_ASKED) continue;
        struct struck *s = &of[d->hazard->missile];
        if (!s->first) s->first = d;
        s->inward = fmax(s->inward, gw_term_of(d, 0)->value);
        s->outward = fmax(s->outward, gw_term_of(d, 1)->value);
    }
    for (size_t i = 0; i <= GW_MISSILE_E; i++)
        if (of[i].first) add_impact(out, ask, &of[i]);
}

/* The same everywhere. */
static void find_blast(struct gw_answer *out, struct gw_ask *ask)
{
    for (size_t i = 0; i < out->judgement.demands.n; i++) {
        const struct gw_demand *d = &out->judgement.demands.items[i];
        if (!d->hazard || !gw_given(d->hazard->blast.pressure) || d->state != GW_ASKED) continue;
        add(out, ask, GW_ROW_MOCKUP_APART_BLAST, d->summary);
        return;
    }
}

/* Asked of glass that its pocket does not keep in. */
static void find_fallout(struct gw_answer *out, struct gw_ask *ask)
{
    double worst = GW_ABSENT;
    struct gw_fallout_result fallout;
    for (size_t i = 0; i < out->judgement.demands.n; i++) {
        const struct gw_demand *d = &out->judgement.demands.items[i];
        if (gw_is_story_drift(d) && d->state == GW_ASKED) worst = fmax(worst, gw_term_of(d, 0)->value);
    }
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    if (!gw_given(worst) || gw_fallout(&fallout, worst, GW_ABSENT, &ask->engine) != GW_OK) return;
    add(out, ask, GW_ROW_MOCKUP_APART_FALLOUT,
        GW_SAY(ask->arena, "of glass whose room in its pocket does not show it: no fallout up to a story drift of {}",
               gw_of_quantity(GW_THICKNESS, fallout.required)));
}

static void find_vertical(struct gw_answer *out, struct gw_ask *ask)
{
    const struct gw_movement_rules *m = ask->model->project.movement;
    if (!m || !(m->live_load > 0)) return;
    add(out, ask, GW_ROW_MOCKUP_APART_VERTICAL,
        GW_SAY(ask->arena, "the floor edge above a joint moves by {} under live load against the one below",
               gw_of_quantity(GW_THICKNESS, m->live_load)));
}

void gw_find_tests_apart(struct gw_answer *out, struct gw_ask *ask)
{
    out->apart.items = gw_alloc(ask->arena, GW_N_MOCKUP_APART + GW_MISSILE_E, sizeof *out->apart.items);
    find_impact(out, ask);
    find_blast(out, ask);
    find_fallout(out, ask);
    find_vertical(out, ask);
    const struct gw_requirements *r = ask->model->project.requirements;
    const enum gw_bool dynamic = r && r->water ? r->water->dynamic : GW_UNSAID;
    const struct gw_message unasked = GW_PLAINLY("asked for by the specification alone: then it is to stand in the "
                                                 "sequence above ('calc sequence' places it)");
    if (dynamic == GW_UNSAID)
        add(out, ask, GW_ROW_MOCKUP_APART_DYNAMIC,
            GW_PLAINLY("the project does not say whether it is asked for (requirements: water: dynamic)"));
    add(out, ask, GW_ROW_MOCKUP_APART_THERMAL, unasked);
}
