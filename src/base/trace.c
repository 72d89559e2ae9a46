/* Derivations: steps as engines record them, and how a step prints. */
#include "galeward/engine.h"

#include <string.h>

void gw_trace_init(struct gw_trace *trace, struct gw_arena *arena) { *trace = (struct gw_trace){.arena = arena}; }

/* Values, or names, in the places of arguments. */
struct in_place {
    const struct gw_step *step;
    const char *const *names;
    enum gw_units shown;
};

static void put_name(struct gw_text *out, const void *context, int arg)
{
    const struct in_place *in = context;
    gw_text_add(out, in->names[arg]);
}

static void put_value(struct gw_text *out, const void *context, int i)
{
    const struct in_place *in = context;
    const struct gw_arg *arg = &in->step->args[i];
    const enum gw_units shown = in->shown;
    double value = gw_quantity_shown(gw_units_standard(), arg->dim, shown, arg->value);
    bool negative = value < 0; /* "1-(-0.9)", not "1--0.9" */
    if (negative) gw_text_add(out, "(");
    gw_text_number(out, value, GW_STEP_DIGITS);
    if (negative) gw_text_add(out, ")");
}

static void print(struct gw_text *out, const struct in_place *in,
                  void (*put)(struct gw_text *out, const void *context, int arg))
{
    const struct gw_formula_words words = {put, in};
    if (in->step->tree) gw_formula_print(out, in->step->tree, &words);
}

void gw_step_substituted(struct gw_text *out, const struct gw_step *step, enum gw_units shown)
{
    print(out, &(struct in_place){.step = step, .shown = shown}, put_value);
}

void gw_step_rename(struct gw_step *step, const char *const *names, struct gw_arena *arena)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    print(&text, &(struct in_place){.step = step, .names = names}, put_name);
    if (step->tree) step->formula = text.at;
    for (unsigned i = 0; i < step->n_args; i++) step->args[i].name = names[i];
}

bool gw_step_is_plain(const struct gw_step *step)
{
    return step->formula && step->n_args == 1 && strcmp(step->formula, step->args[0].name) == 0;
}

static struct gw_step *next_step(struct gw_trace *trace)
{
    trace->steps = gw_grow(trace->arena, trace->steps, trace->n, &trace->capacity, sizeof *trace->steps);
    struct gw_step *step = &trace->steps[trace->n++];
    *step = (struct gw_step){.group = trace->group, .place = trace->place, .value = GW_ABSENT, .leads = GW_YES};
    return step;
}

const char *gw_trace_group(struct gw_engine *engine, const char *title)
{
    struct gw_trace *t = engine->trace;
    if (!t) return NULL;
    const char *before = t->group;
    t->group = title;
    for (size_t i = 0; i < t->n_groups; i++)
        if (title && strcmp(t->groups[i], title) == 0) return before;
    if (!title) return before;
    t->groups = gw_grow(t->arena, t->groups, t->n_groups, &t->groups_capacity, sizeof *t->groups);
    t->groups[t->n_groups++] = title;
    return before;
}

const char *gw_trace_at(struct gw_engine *engine, const char *place)
{
    if (!engine->trace) return NULL;
    const char *before = engine->trace->place;
    engine->trace->place = place;
    return before;
}

/* A formula that has forms for several editions may leave an argument out. */
static void drop_unused(struct gw_step *step, const char **names)
{
    unsigned kept = 0;
    int places[GW_STEP_ARGS] = {0};
    for (unsigned i = 0; i < step->n_args; i++) {
        if (!gw_formula_uses(step->tree, (int)i)) continue;
        places[i] = (int)kept;
        step->args[kept] = step->args[i];
        step->like[kept] = step->like[i];
        names[kept++] = names[i];
    }
    step->n_args = kept;
    gw_formula_renumber(step->tree, places);
}

/* "K_z=K_h": the formula's K_z is the derivation's K_h; "Mn|Mn": whatever begins with Mn and has the value. */
static void take_args(struct gw_trace *trace, struct gw_step *step, const struct gw_arg *args, unsigned n_args)
{
    const char *names[GW_STEP_ARGS];
    step->n_args = n_args < GW_STEP_ARGS ? n_args : GW_STEP_ARGS;
    const char *plain_names[GW_STEP_ARGS];
    for (unsigned i = 0; i < step->n_args; i++) {
        const size_t plain = strcspn(args[i].name, "=|");
        const char *more = args[i].name[plain] ? args[i].name + plain + 1 : NULL;
        const bool as = args[i].name[plain] == '=';
        step->args[i] = args[i];
        if (more) step->args[i].name = gw_format(trace->arena, "%.*s", (int)plain, args[i].name);
        step->like[i] = as ? NULL : more;
        names[i] = as ? more : step->args[i].name;
        plain_names[i] = step->args[i].name;
    }
    if (step->formula) step->tree = gw_formula_parse(trace->arena, step->formula, plain_names, step->n_args);
    if (step->tree) drop_unused(step, names);
    gw_step_rename(step, names, trace->arena);
}

void gw_trace_step(struct gw_engine *engine, const char *symbol, enum gw_dim dim, double value, const char *clause,
                   const char *formula, const struct gw_arg *args, unsigned n_args)
{
    if (!engine->trace) return;
    struct gw_step *step = next_step(engine->trace);
    step->symbol = symbol, step->formula = formula, step->clause = clause, step->value = value, step->dim = dim;
    take_args(engine->trace, step, args, n_args);
}

void gw_trace_found(struct gw_engine *engine, const char *symbol, enum gw_dim dim, double value, const char *clause,
                    const char *note, const struct gw_arg *args, unsigned n_args)
{
    if (!engine->trace) return;
    gw_trace_step(engine, symbol, dim, value, clause, NULL, args, n_args);
    engine->trace->steps[engine->trace->n - 1].note = gw_say_values(engine->trace->arena, note, NULL, 0);
}

void gw_trace_note(struct gw_engine *engine, const char *symbol, const char *clause, const char *note)
{
    gw_trace_say(engine, symbol, clause, note, NULL, 0);
}

void gw_trace_say(struct gw_engine *engine, const char *symbol, const char *clause, const char *format,
                  const struct gw_value *values, unsigned n)
{
    if (!engine->trace) return;
    const struct gw_message note = gw_say_values(engine->trace->arena, format, values, n);
    struct gw_step *step = next_step(engine->trace);
    step->symbol = symbol, step->note = note, step->clause = clause;
}
