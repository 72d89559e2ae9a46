/* A derivation out of the steps that engines recorded: each name means one thing, each step leads somewhere. */
#include "base/tolerance.h"
#include "galeward/engine.h"

#include <string.h>

/* One value of a name, as it is printed. */
struct meaning {
    const char *name, *place;
    double value;
    const char *shown;
    bool leads; /* to a result */
};

struct settling {
    struct gw_trace *trace;
    struct meaning *meanings;
    size_t n, capacity;
};

static bool same_value(double a, double b)
{
    const double rounding = 1e-9;
    return fabs(a - b) <= rounding * fmax(fabs(a), fabs(b)) || (!gw_given(a) && !gw_given(b));
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

/* "K_3" at "h": "K_3,h"; "z" at "h": "z_h". */
static const char *placed(struct gw_arena *arena, const char *name, const char *place)
{
    return gw_format(arena, "%s%s%s", name, strchr(name, '_') ? "," : "_", place);
}

/* Order and repeats --------------------------------------------------------------------------------------------------
 */

static bool same_step(const struct gw_step *a, const struct gw_step *b)
{
    bool same = same_text(a->symbol, b->symbol) && same_text(a->formula, b->formula) && a->n_args == b->n_args &&
                same_value(a->value, b->value) && gw_said(&a->note) == gw_said(&b->note) &&
                (!gw_said(&a->note) || gw_message_same(&a->note, &b->note));
    for (unsigned i = 0; same && i < a->n_args; i++)
        same = same_text(a->args[i].name, b->args[i].name) && same_value(a->args[i].value, b->args[i].value);
    return same;
}

static bool is_repeat(const struct gw_trace *t, const struct gw_step *step)
{
    for (size_t i = 0; i < t->n; i++)
        if (same_step(&t->steps[i], step)) return true;
    return false;
}

static void take_group(struct gw_trace *out, const struct gw_trace *all, const char *group)
{
    for (size_t i = 0; i < all->n; i++)
        if (same_text(all->steps[i].group, group) && !is_repeat(out, &all->steps[i]))
            out->steps[out->n++] = all->steps[i];
}

/* Those of no group first. */
static void order(struct gw_trace *t)
{
    const struct gw_trace all = *t;
    t->steps = gw_alloc(t->arena, all.n + 1, sizeof *t->steps);
    t->n = 0;
    take_group(t, &all, NULL);
    for (size_t i = 0; i < t->n_groups; i++) take_group(t, &all, t->groups[i]);
    t->capacity = all.n + 1;
}

/* Where arguments come from ------------------------------------------------------------------------------------------
 */

/* "GC_p,in" is a GC_p, "p_in" a p: the name with a subscript. */
static bool is_one_of(const char *symbol, const char *name)
{
    const size_t n = strlen(name);
    return strncmp(symbol, name, n) == 0 && (!symbol[n] || symbol[n] == '_' || symbol[n] == ',');
}

/* `like`: beginnings, with a stroke between. */
static bool begins_like(const char *symbol, const char *like)
{
    for (;;) {
        const size_t n = strcspn(like, "|");
        if (strncmp(symbol, like, n) == 0) return true;
        if (!like[n]) return false;
        like += n + 1;
    }
}

/* The last step before that gives the argument: the quantity of its name, with a subscript or without, that has its
 * value; one of its own place before others. */
static size_t source_of(const struct gw_trace *t, size_t step, unsigned k)
{
    const struct gw_arg *arg = &t->steps[step].args[k];
    const char *like = t->steps[step].like[k];
    size_t found = 0;
    for (size_t i = 0; i < step; i++) {
        const struct gw_step *s = &t->steps[i];
        const bool named = like ? begins_like(s->symbol, like) : is_one_of(s->symbol, arg->name);
        if (!gw_given(s->value) || !named || !same_value(s->value, arg->value)) continue;
        const bool nearer = same_text(s->place, t->steps[step].place);
        if (!found || nearer || !same_text(t->steps[found - 1].place, t->steps[step].place)) found = i + 1;
    }
    return found;
}

static void tie(struct gw_trace *t)
{
    for (size_t i = 0; i < t->n; i++)
        for (unsigned k = 0; k < t->steps[i].n_args; k++) t->steps[i].from[k] = source_of(t, i, k);
}

/* Names --------------------------------------------------------------------------------------------------------------
 */

static struct meaning *meaning_of(const struct settling *s, const char *name, double value)
{
    for (size_t i = 0; i < s->n; i++)
        if (same_text(s->meanings[i].name, name) && same_value(s->meanings[i].value, value)) return &s->meanings[i];
    return NULL;
}

static void mean(struct settling *s, const struct gw_step *step, const char *name, double value)
{
    struct meaning *known = meaning_of(s, name, value);
    const bool leads = step->leads == GW_YES;
    if (known) {
        known->leads = known->leads || leads;
        if (!same_text(known->place, step->place)) known->place = NULL; /* at several places the same */
        return;
    }
    s->meanings = gw_grow(s->trace->arena, s->meanings, s->n, &s->capacity, sizeof *s->meanings);
    s->meanings[s->n++] = (struct meaning){name, step->place, value, NULL, leads};
}

static void gather(struct settling *s)
{
    for (size_t i = 0; i < s->trace->n; i++) {
        const struct gw_step *step = &s->trace->steps[i];
        for (unsigned k = 0; k < step->n_args && !gw_step_is_plain(step); k++)
            if (!step->from[k]) mean(s, step, step->args[k].name, step->args[k].value);
        if (gw_given(step->value)) mean(s, step, step->symbol, step->value);
    }
}

static size_t how_many(const struct settling *s, const char *name, bool leading)
{
    size_t n = 0;
    for (size_t i = 0; i < s->n; i++) n += same_text(s->meanings[i].name, name) && (!leading || s->meanings[i].leads);
    return n;
}

/* Nothing else is called so: one of several, or a name of its own with another value. */
static bool is_free(const struct settling *s, const struct meaning *m, const char *shown)
{
    for (size_t i = 0; i < s->n; i++) {
        const struct meaning *other = &s->meanings[i];
        if (other == m || !same_text(other->shown, shown)) continue;
        if (!same_value(other->value, m->value) || same_text(other->name, m->name)) return false;
    }
    return true;
}

/* The place tells it from another value of the name. */
static bool is_elsewhere(const struct settling *s, const struct meaning *m)
{
    for (size_t i = 0; i < s->n; i++)
        if (same_text(s->meanings[i].name, m->name) && s->meanings[i].place &&
            strcmp(s->meanings[i].place, m->place) != 0)
            return true;
    return false;
}

static void name_apart(const struct settling *s, struct meaning *m)
{
    struct gw_arena *arena = s->trace->arena;
    const bool tells = m->place && is_elsewhere(s, m);
    const char *at = tells ? placed(arena, m->name, m->place) : m->name, *shown = at;
    for (int k = tells ? 1 : 0; k == 0 || !is_free(s, m, shown); k++)
        shown = placed(arena, at, gw_format(arena, "%d", k + 1));
    m->shown = shown;
}

/* The plain name for what leads to a result, before what does not. */
static void name_all(struct settling *s)
{
    for (size_t i = 0; i < s->n; i++)
        if (how_many(s, s->meanings[i].name, true) <= 1 &&
            (s->meanings[i].leads || how_many(s, s->meanings[i].name, false) == 1))
            s->meanings[i].shown = s->meanings[i].name;
    for (int leads = 1; leads >= 0; leads--)
        for (size_t i = 0; i < s->n; i++)
            if (!s->meanings[i].shown && s->meanings[i].leads == (leads == 1)) name_apart(s, &s->meanings[i]);
}

static const char *shown_name(const struct settling *s, const char *name, double value)
{
    const struct meaning *m = meaning_of(s, name, value);
    return m ? m->shown : name;
}

/* An argument is called as the step that gives it. */
static const char *arg_name(const struct settling *s, const struct gw_trace *before, const struct gw_step *step,
                            unsigned k)
{
    const struct gw_step *from = step->from[k] ? &before->steps[step->from[k] - 1] : NULL;
    return from ? shown_name(s, from->symbol, from->value) : shown_name(s, step->args[k].name, step->args[k].value);
}

static void rename_steps(const struct settling *s)
{
    struct gw_trace *t = s->trace;
    const char *names[GW_STEP_ARGS];
    struct gw_trace before = *t;
    before.steps = gw_alloc(t->arena, t->n + 1, sizeof *t->steps);
    memcpy(before.steps, t->steps, t->n * sizeof *t->steps);
    for (size_t i = 0; i < t->n; i++) {
        struct gw_step *step = &t->steps[i];
        for (unsigned k = 0; k < step->n_args; k++) names[k] = arg_name(s, &before, step, k);
        gw_step_rename(step, names, t->arena);
        if (gw_given(step->value)) step->symbol = shown_name(s, step->symbol, step->value);
    }
}

/* A given argument that some step, named apart, is called like after all. */
static void tie_again(struct gw_trace *t)
{
    for (size_t i = 0; i < t->n; i++)
        for (unsigned k = 0; k < t->steps[i].n_args; k++)
            for (size_t j = i; j-- > 0 && !t->steps[i].from[k];)
                if (same_text(t->steps[j].symbol, t->steps[i].args[k].name)) t->steps[i].from[k] = j + 1;
}

/* What leads to the results ------------------------------------------------------------------------------------------
 */

static bool mark_results(struct gw_trace *t, const double *results, size_t n)
{
    bool any = false;
    for (size_t r = 0; r < n; r++)
        for (size_t i = t->n; i-- > 0;) {
            if (!gw_given(t->steps[i].value) || !same_value(fabs(t->steps[i].value), fabs(results[r]))) continue;
            t->steps[i].leads = GW_YES;
            any = true;
            break;
        }
    return any;
}

static void mark_backward(struct gw_trace *t)
{
    for (size_t i = t->n; i-- > 0;)
        for (unsigned k = 0; t->steps[i].leads && k < t->steps[i].n_args; k++)
            if (t->steps[i].from[k]) t->steps[t->steps[i].from[k] - 1].leads = GW_YES;
}

/* Of what is decided or worked out besides only what stands with steps that lead to a result. */
static void mark_decisions(struct gw_trace *t)
{
    for (size_t i = 0; i < t->n; i++)
        for (size_t j = 0; j < t->n && !gw_given(t->steps[i].value) && !t->steps[i].leads; j++)
            if (gw_given(t->steps[j].value) && t->steps[j].leads && same_text(t->steps[i].group, t->steps[j].group))
                t->steps[i].leads = GW_YES;
}

static void keep_what_leads(struct gw_trace *t, const double *results, size_t n)
{
    for (size_t i = 0; i < t->n; i++) t->steps[i].leads = GW_NO;
    if (mark_results(t, results, n)) {
        mark_backward(t);
        mark_decisions(t);
        mark_backward(t); /* what decisions rest on */
        return;
    }
    for (size_t i = 0; i < t->n; i++) t->steps[i].leads = GW_YES;
}

void gw_trace_settle(struct gw_trace *trace, const double *results, size_t n)
{
    struct settling s = {.trace = trace};
    order(trace);
    tie(trace);
    keep_what_leads(trace, results, n);
    gather(&s);
    name_all(&s);
    rename_steps(&s);
    tie_again(trace);
    keep_what_leads(trace, results, n);
}
