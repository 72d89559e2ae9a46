/* Each input alone, from its value outwards, until the verdict is another one. */
#include "galeward/margins.h"

#include "answers/margins/margins_internal.h"

#include "base/tolerance.h"

#include <math.h>
#include <string.h>

struct job {
    struct gw_margins *out;
    const struct gw_model *model;
    const struct gw_bid *bid;
    struct gw_arena *arena, *scratch;
};

/* What a project with one input moved comes to; texts live in the answer's arena. */
struct outcome {
    bool computed;
    enum gw_verdict verdict;
    const char *check, *where;
    const char *why; /* not computed */
    long new_places; /* without a choice of their own */
};

struct trial {
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_judgement demands;
    struct gw_plan_places places;
    struct gw_offers offers;
    struct gw_summary summary;
};

/* The plan --------------------------------------------------------------------------------------------------------- */

/* Of the plan's places the one with that wall, part and zone, or with any zone; NULL. */
static const struct gw_plan_choice *choice_at(const struct gw_plan *plan, const struct gw_plan_place *at, bool any_zone)
{
    for (size_t i = 0; i < plan->places->n; i++) {
        const struct gw_plan_place *p = &plan->places->items[i];
        if (p->parapet == at->parapet && (any_zone || p->zone == at->zone) && strcmp(p->wall, at->wall) == 0)
            return &plan->choices[i];
    }
    return NULL;
}

/* The same choices on the moved project; how many of its places had none of their own. */
static long choose(struct gw_plan_choice *out, const struct trial *t, const struct gw_plan *plan,
                   struct gw_arena *scratch)
{
    long n = 0;
    for (size_t i = 0; i < t->places.n; i++) {
        const struct gw_plan_choice *own = choice_at(plan, &t->places.items[i], false);
        const struct gw_plan_choice *near = own ? own : choice_at(plan, &t->places.items[i], true);
        n += !own;
        if (near) out[i] = *near;
        else out[i].lites = gw_alloc(scratch, t->model.project.lites.n + 1, sizeof(unsigned));
    }
    return n;
}

static const struct gw_system *same_system(const struct trial *t, const struct job *j)
{
    for (size_t i = 0; i < t->model.systems.n; i++) {
        const struct gw_system *s = &t->model.systems.items[i], *c = j->bid->candidate;
        if (strcmp(s->file, c->file) == 0 && strcmp(s->name, c->name) == 0) return s;
    }
    return NULL;
}

/* Trials ----------------------------------------------------------------------------------------------------------- */

/* What decides a verdict: the link of the load path where one does. */
static void name_cause(struct outcome *out, const struct gw_summary *summary, struct gw_arena *arena)
{
    const struct gw_finding *f = summary->governing;
    if (f && f->link) f = f->link;
    if (!f) return;
    out->check = f->demand->name ? gw_strdup(arena, f->demand->name) : f->demand->check->id;
    out->where = gw_strdup(arena, f->demand->where);
}

static const char *first_error(const struct gw_diags *diags)
{
    for (size_t i = 0; i < diags->n; i++)
        if (diags->items[i].severity == GW_ERROR) return diags->items[i].message;
    return "refused";
}

static void judge(struct trial *t, const struct job *j, const struct gw_system *candidate, struct outcome *out)
{
    struct gw_arena *scratch = j->scratch;
    gw_ask_init(&t->ask, &t->model, &t->takeoff, scratch);
    gw_judge_demands(&t->demands, &t->ask);
    gw_plan_places_of(&t->places, &t->model, &t->takeoff, scratch);
    struct gw_plan_choice *choices = gw_alloc(scratch, t->places.n + 1, sizeof *choices);
    struct gw_finding *findings = gw_alloc(scratch, t->demands.demands.n + 1, sizeof *findings);
    out->new_places = choose(choices, t, &j->bid->plan, scratch);
    const struct gw_plan plan = {candidate, &t->places, choices};
    gw_offers_init(&t->offers, &t->model, candidate, scratch);
    gw_judge_plan(findings, &t->summary, &t->demands, &t->ask, &plan, &t->offers);
    out->computed = true;
    out->verdict = t->summary.verdict;
    name_cause(out, &t->summary, j->arena);
}

static struct outcome try_it(struct job *j, const struct moves *moves)
{
    struct outcome out = {.computed = false};
    struct trial *t = gw_alloc(j->scratch, 1, sizeof *t);
    gw_diags_init(&t->diags, j->scratch);
    j->out->tried++;
    bool good = gw_model_move(&t->model, j->model, j->scratch, &t->diags, moves->settings, moves->n);
    t->model.pressures = moves->pressures * j->model->pressures;
    good = good && gw_takeoff_run(&t->takeoff, &t->model, j->scratch, &t->diags);
    const struct gw_system *candidate = good ? same_system(t, j) : NULL;
    if (candidate) judge(t, j, candidate, &out);
    else out.why = gw_strdup(j->arena, first_error(&t->diags));
    gw_arena_rewind(j->scratch);
    return out;
}

static struct outcome try_number(struct job *j, const struct moved_number *x, double factor)
{
    struct moves moves = {.pressures = 1};
    x->put(&moves, j->model, j->scratch, factor);
    return try_it(j, &moves);
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

static void note(struct gw_margin *row, struct gw_arena *arena, struct gw_message said)
{
    struct gw_message *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = row->note ? gw_say_both(arena, row->note, "; ", &said) : said;
    row->note = kept;
}

static struct gw_margin *add_row(struct job *j, const struct gw_margin *row)
{
    struct gw_margins *out = j->out;
    out->items.items = gw_grow(j->arena, out->items.items, out->items.n, &out->capacity, sizeof *out->items.items);
    out->items.items[out->items.n] = *row;
    return &out->items.items[out->items.n++];
}

/* What the verdict hangs on when it gets worse is what fails then; when it gets better, what failed before. */
static void add_flip(struct job *j, struct gw_margin *row, const struct outcome *then)
{
    struct outcome now = {.computed = true};
    const bool worse = gw_verdict_rank(then->verdict) > gw_verdict_rank(j->out->verdict);
    name_cause(&now, &j->bid->summary, j->arena);
    row->verdict = then->verdict;
    row->check = worse ? then->check : now.check;
    row->where = worse ? then->where : now.where;
    if (then->new_places)
        note(row, j->arena,
             GW_SAY(j->arena, "{} new there: with the choices of the same part of the wall, else with none",
                    gw_of_count(then->new_places)));
}

/* Numbers ---------------------------------------------------------------------------------------------------------- */

/* One side of a number, as far as it was looked at. */
struct side {
    double last;       /* factor, the farthest one before the flip */
    double flip, back; /* factors; absent */
    double stopped;    /* factor from which on nothing could be computed; absent */
    struct outcome at_flip, at_stop;
};

enum { MOST_TRIED = 16 };

static void scan(struct job *j, const struct moved_number *x, const struct tried_factors *f, struct side *out)
{
    const size_t stride = (f->n + MOST_TRIED - 1) / MOST_TRIED;
    *out = (struct side){.last = 1, .flip = GW_ABSENT, .back = GW_ABSENT, .stopped = GW_ABSENT};
    for (size_t i = stride; stride && i < f->n + stride && !gw_given(out->back); i += stride) {
        const double factor = f->at[i <= f->n ? i - 1 : f->n - 1];
        const struct outcome o = try_number(j, x, factor);
        if (!o.computed) {
            out->stopped = factor;
            out->at_stop = o;
            return;
        }
        const bool same = o.verdict == j->out->verdict;
        if (gw_given(out->flip)) {
            if (same) out->back = factor;
        } else if (same) {
            out->last = factor;
        } else {
            out->flip = factor;
            out->at_flip = o;
        }
    }
}

/* Those between, one by one. */
static void refine_whole(struct job *j, const struct moved_number *x, const struct tried_factors *f, struct side *s)
{
    const double first = fabs(log(s->last)) + GW_HAIR, end = fabs(log(s->flip)) - GW_HAIR;
    for (size_t i = 0; i < f->n; i++) {
        const double distance = fabs(log(f->at[i]));
        if (distance < first || distance > end) continue;
        const struct outcome o = try_number(j, x, f->at[i]);
        if (!o.computed || o.verdict == j->out->verdict) continue;
        s->flip = f->at[i];
        s->at_flip = o;
        return;
    }
}

static void refine(struct job *j, const struct moved_number *x, struct side *s)
{
    const double fine = 0.002; /* well within the half percent that is promised */
    while (fabs(log(s->flip / s->last)) > fine) {
        const double middle = sqrt(s->flip * s->last);
        const struct outcome o = try_number(j, x, middle);
        if (!o.computed) return;
        if (o.verdict == j->out->verdict) {
            s->last = middle;
        } else {
            s->flip = middle;
            s->at_flip = o;
        }
    }
}

static bool add_side(struct job *j, const struct moved_number *x, const struct gw_margin *plain, bool up)
{
    struct side s;
    struct gw_margin row = *plain;
    const struct tried_factors f = gw_tried_factors(x, j->model, j->arena, up);
    scan(j, x, &f, &s);
    if (gw_given(s.flip)) {
        if (x->whole) refine_whole(j, x, &f, &s);
        else refine(j, x, &s);
        row.flips_at = x->value(j->model, s.flip);
        add_flip(j, &row, &s.at_flip);
    }
    if (gw_given(s.back))
        note(&row, j->arena,
             GW_SAY(j->arena, "{} again at {}", gw_of_text(gw_verdict_name(j->out->verdict)),
                    gw_of_quantity(x->dim, x->value(j->model, s.back))));
    if (gw_given(s.stopped))
        note(&row, j->arena,
             GW_SAY(j->arena, "not computed from {} on: {}", gw_of_quantity(x->dim, x->value(j->model, s.stopped)),
                    gw_of_text(s.at_stop.why)));
    if (!gw_given(s.flip) && !row.note) return false;
    add_row(j, &row);
    return true;
}

static void move_number(struct job *j, const struct moved_number *x)
{
    const struct gw_margin row = {.input = x->name,
                                  .dim = x->dim,
                                  .value = x->value(j->model, 1),
                                  .flips_at = GW_ABSENT,
                                  .verdict = j->out->verdict};
    if (!gw_given(row.value)) return;
    const bool below = add_side(j, x, &row, false), above = add_side(j, x, &row, true);
    if (!below && !above) add_row(j, &row);
}

/* Words ------------------------------------------------------------------------------------------------------------ */

static void move_word(struct job *j, const struct moved_word *x, size_t index)
{
    const int now = x->value(j->model, index);
    const struct gw_building *building = x->of_building ? &j->model->project.buildings.items[index] : NULL;
    struct gw_margin none = {.input = x->name,
                             .of = building && j->model->project.buildings.n > 1 ? building->name : NULL,
                             .word = true,
                             .value = GW_ABSENT,
                             .flips_at = GW_ABSENT,
                             .value_word = gw_choice_name(x->choices, now),
                             .verdict = j->out->verdict};
    bool flips = false;
    if (!now) return;
    for (const struct gw_choice *c = x->choices; c->name; c++) {
        struct moves moves = {.pressures = 1};
        struct gw_margin row = none;
        if (c->value == now) continue;
        x->put(&moves, j->model, j->scratch, index, c->name);
        const struct outcome o = try_it(j, &moves);
        if (!o.computed) {
            note(&none, j->arena, GW_SAY(j->arena, "{} not computed: {}", gw_of_text(c->name), gw_of_text(o.why)));
            continue;
        }
        if (o.verdict == j->out->verdict) continue;
        row.note = NULL;
        row.flips_word = c->name;
        add_flip(j, &row, &o);
        add_row(j, &row);
        flips = true;
    }
    if (!flips || none.note) add_row(j, &none);
}

void gw_find_margins(struct gw_margins *out, const struct gw_model *model, const struct gw_bid *bid,
                     struct gw_arena *arena, struct gw_arena *scratch)
{
    struct job j = {out, model, bid, arena, scratch};
    *out = (struct gw_margins){.candidate = bid->candidate, .verdict = bid->summary.verdict};
    for (size_t i = 0; i < gw_n_moved_numbers; i++) move_number(&j, &gw_moved_numbers[i]);
    for (size_t i = 0; i < gw_n_moved_words; i++) {
        const size_t n = gw_moved_words[i].of_building ? model->project.buildings.n : 1;
        for (size_t k = 0; k < n; k++) move_word(&j, &gw_moved_words[i], k);
    }
}
