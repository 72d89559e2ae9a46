/* Derivations: steps as engines record them, and how a step prints. */
#include "galeward/engine.h"

#include <string.h>

void gw_trace_init(struct gw_trace *trace, struct gw_arena *arena) { *trace = (struct gw_trace){.arena = arena}; }

static bool starts_name(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

static bool is_digit(char c) { return c >= '0' && c <= '9'; }

static size_t name_span(const char *text)
{
    size_t i = 0;
    while (starts_name(text[i]) || is_digit(text[i])) i++;
    return i;
}

/* A literal of the formula, kept whole: the 'e' of 1e3 is no name. */
static size_t number_span(const char *text)
{
    double ignored;
    return is_digit(*text) || *text == '.' ? gw_read_number(text, strlen(text), &ignored) : 0;
}

/* The argument whose name stands here: the longest, for a name may go on behind a comma ("K_zt,h"). */
static int arg_at(const struct gw_step *step, const char *text, size_t *length)
{
    int found = -1;
    *length = name_span(text);
    for (unsigned i = 0; i < step->n_args; i++) {
        const size_t n = strlen(step->args[i].name);
        const bool here = strncmp(text, step->args[i].name, n) == 0 && !starts_name(text[n]) && !is_digit(text[n]);
        if (!here || (found >= 0 && n <= *length)) continue;
        found = (int)i;
        *length = n;
    }
    return found;
}

static void add_value(struct gw_text *out, const struct gw_arg *arg, enum gw_units shown)
{
    const int digits = 7; /* enough that the printed equation still gives the printed result */
    double value = gw_quantity_shown(gw_units_standard(), arg->dim, shown, arg->value);
    bool negative = value < 0; /* "1-(-0.9)", not "1--0.9" */
    if (negative) gw_text_add(out, "(");
    gw_text_number(out, value, digits);
    if (negative) gw_text_add(out, ")");
}

static bool uses(const struct gw_step *step, unsigned arg)
{
    size_t length;
    for (const char *at = step->formula; *at; at += length ? length : 1) {
        length = number_span(at);
        if (!length && starts_name(*at) && arg_at(step, at, &length) == (int)arg) return true;
    }
    return false;
}

/* The formula, word by word: `names` or values in the places of arguments. */
static void print_formula(struct gw_text *out, const struct gw_step *step, const char *const *names,
                          enum gw_units shown)
{
    for (const char *at = step->formula; at && *at;) {
        size_t length = number_span(at);
        const int arg = !length && starts_name(*at) ? arg_at(step, at, &length) : -1;
        if (!length) length = 1;
        if (arg < 0) gw_text_bytes(out, at, length);
        else if (names) gw_text_add(out, names[arg]);
        else add_value(out, &step->args[arg], shown);
        at += length;
    }
}

void gw_step_substituted(struct gw_text *out, const struct gw_step *step, enum gw_units shown)
{
    print_formula(out, step, NULL, shown);
}

void gw_step_rename(struct gw_step *step, const char *const *names, struct gw_arena *arena)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    print_formula(&text, step, names, GW_SI);
    if (step->formula) step->formula = text.at;
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
    for (unsigned i = 0; i < step->n_args; i++) {
        if (!uses(step, i)) continue;
        step->args[kept] = step->args[i];
        step->like[kept] = step->like[i];
        names[kept++] = names[i];
    }
    step->n_args = kept;
}

/* "K_z=K_h": the formula's K_z is the derivation's K_h; "Mn|Mn": whatever begins with Mn and has the value. */
static void take_args(struct gw_trace *trace, struct gw_step *step, const struct gw_arg *args, unsigned n_args)
{
    const char *names[GW_STEP_ARGS];
    step->n_args = n_args < GW_STEP_ARGS ? n_args : GW_STEP_ARGS;
    bool renamed = false;
    for (unsigned i = 0; i < step->n_args; i++) {
        const size_t plain = strcspn(args[i].name, "=|");
        const char *more = args[i].name[plain] ? args[i].name + plain + 1 : NULL;
        const bool as = args[i].name[plain] == '=';
        step->args[i] = args[i];
        if (more) step->args[i].name = gw_format(trace->arena, "%.*s", (int)plain, args[i].name);
        step->like[i] = as ? NULL : more;
        names[i] = as ? more : step->args[i].name;
        renamed = renamed || as;
    }
    if (step->formula) drop_unused(step, names);
    if (renamed) gw_step_rename(step, names, trace->arena);
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
