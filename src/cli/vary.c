/* 'check --vary': every combination of the values, each from a fresh model. */
#include "cli.h"

#include "galeward/variations.h"

#include <stdio.h>
#include <string.h>

enum { COMBINATION_LIMIT = 256 };

struct variable {
    const char *key, *path, *place, **values;
    size_t n;
};

struct matrix {
    struct cli *cli;
    struct variable *variables;
    size_t n_variables;
    struct gw_variations found;
};

/* Each value of a list is a list: a comma parts values. */
static bool are_lists(struct cli *cli, const char *text, const struct setting *found, const struct variable *v)
{
    struct gw_text lists;
    bool good = true;
    if (!found->field || !(found->field->flags & GW_MANY) || found->field->flags & GW_NAMED) return true;
    gw_text_init(&lists, &cli->arena);
    for (size_t i = 0; i < v->n; i++) {
        good = good && v->values[i][0] == '[';
        gw_text_addf(&lists, v->values[i][0] == '[' ? "%s%s" : "%s[%s]", i ? "," : "", v->values[i]);
    }
    if (!good) complain("--vary %s: '%s' is a list: write --vary %s='%s'", text, v->key, v->key, lists.at);
    return good;
}

static bool read_variable(struct cli *cli, const char *text, struct variable *out)
{
    size_t key = strcspn(text, "=");
    out->key = gw_strndup(&cli->arena, text, key);
    struct setting found;
    if (!find_setting(cli, out->key, &found)) return false;
    out->path = found.path;
    out->place = found.place;
    out->values = gw_alloc(&cli->arena, strlen(text), sizeof(const char *));
    return split_values(cli, text, out->values, &out->n) && are_lists(cli, text, &found, out);
}

static bool read_variables(struct matrix *m)
{
    const struct options *o = &m->cli->options;
    m->n_variables = o->n_vary;
    m->found.variations.n = 1;
    m->variables = gw_alloc(&m->cli->arena, o->n_vary, sizeof *m->variables);
    for (size_t i = 0; i < o->n_vary; i++) {
        if (!read_variable(m->cli, o->vary[i], &m->variables[i])) return false;
        m->found.variations.n *= m->variables[i].n;
        if (m->found.variations.n > COMBINATION_LIMIT) {
            complain("--vary: more than %d combinations", COMBINATION_LIMIT);
            return false;
        }
    }
    m->found.variations.items = gw_alloc(&m->cli->arena, m->found.variations.n, sizeof *m->found.variations.items);
    m->found.variables.items = gw_alloc(&m->cli->arena, o->n_vary, sizeof *m->found.variables.items);
    for (size_t i = 0; i < o->n_vary; i++)
        m->found.variables.items[i] = (struct gw_variable){m->variables[i].key, m->variables[i].path};
    m->found.variables.n = o->n_vary;
    return true;
}

/* The i-th combination; the last variable turns fastest. --set comes first. */
static const char **settings_of(struct matrix *m, size_t i, struct gw_variation *outcome, size_t *n)
{
    struct cli *cli = m->cli;
    const char **changes = full_settings(cli, m->n_variables);
    outcome->settings = gw_alloc(&cli->arena, m->n_variables, sizeof(const char *));
    if (!changes) return NULL;
    *n = cli->options.n_set;
    for (size_t v = m->n_variables; v-- > 0;) {
        outcome->settings[v] = m->variables[v].values[i % m->variables[v].n];
        changes[(*n)++] = gw_format(&cli->arena, "%s=%s", m->variables[v].place, outcome->settings[v]);
        i /= m->variables[v].n;
    }
    return changes;
}

static void worst_pressures(struct gw_variation *o, const struct gw_takeoff *t)
{
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        o->inward = fmax(o->inward, e->inward.pa);
        o->inward_asd = fmax(o->inward_asd, e->inward_asd.pa);
        o->outward = fmin(o->outward, e->outward.pa);
        o->outward_asd = fmin(o->outward_asd, e->outward_asd.pa);
    }
}

/* Every candidate, not shown: as it stands where nothing is computed. */
static void name_candidates(struct matrix *m, struct gw_variation *o, size_t n)
{
    o->summaries.items = gw_alloc(&m->cli->arena, n + 1, sizeof *o->summaries.items);
    o->summaries.n = n;
    for (size_t i = 0; i < n; i++) o->summaries.items[i] = (struct gw_varied_summary){.utilization = GW_ABSENT};
}

/* The greatest use of each check, so that what moves is seen though it does not govern. */
static const double *greatest_uses(struct gw_arena *arena, const struct gw_judgement *j,
                                   const struct gw_system *candidate)
{
    size_t n, at = 0;
    const struct gw_check *const *checks = gw_check_list(&n);
    double *uses = gw_alloc(arena, n + 1, sizeof *uses);
    for (size_t i = 0; i < n; i++) uses[i] = GW_ABSENT;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        if (f->candidate != candidate || (f->verdict != GW_PASS && f->verdict != GW_FAIL)) continue;
        while (checks[at] != f->demand->check) at = at + 1 < n ? at + 1 : 0;
        if (!(f->utilization <= uses[at]) && gw_given(f->utilization)) uses[at] = f->utilization;
    }
    return uses;
}

/* What outlives the combination's own arena. */
static void keep(struct matrix *m, struct gw_variation *o, struct run *run)
{
    struct gw_arena *arena = &m->cli->arena;
    o->computed = true;
    o->inward = o->outward = o->inward_asd = o->outward_asd = 0;
    worst_pressures(o, &run->takeoff);
    name_candidates(m, o, run->answer.judgement.summaries.n);
    for (size_t i = 0; i < o->summaries.n; i++) {
        const struct gw_summary *s = &run->answer.judgement.summaries.items[i];
        o->summaries.items[i] = (struct gw_varied_summary){gw_strdup(arena, s->candidate->name), s->verdict,
                                                           s->governing ? s->governing->utilization : GW_ABSENT,
                                                           greatest_uses(arena, &run->answer.judgement, s->candidate)};
    }
}

/* A model that does not load is the caller's fault; a method that does not cover a combination is a result. */
static int compute(struct matrix *m, size_t i)
{
    struct gw_arena *arena = &m->cli->scratch;
    struct run run = {.arena = arena};
    struct gw_variation *o = &m->found.variations.items[i];
    size_t n;
    const char *path = m->cli->options.arguments[0];
    o->inward = o->outward = o->inward_asd = o->outward_asd = GW_ABSENT;
    const char **changes = settings_of(m, i, o, &n);
    if (!changes) return EXIT_CALL;
    gw_diags_init(&run.diags, arena);
    bool loaded = gw_model_load(&run.model, arena, &run.diags, path, changes, n);
    bool taken = loaded && gw_takeoff_run(&run.takeoff, &run.model, arena, &run.diags);
    const bool planned = taken && plan_project(&run, m->cli);
    if (i == 0 || !planned) say_diags(arena, &run.diags);
    if (!loaded || (taken && !planned)) return code_of(&run.diags);
    if (writes_over_inputs(m->cli, &run.model)) return EXIT_CALL;
    m->found.project = gw_strdup(&m->cli->arena, run.model.project.project->name);
    m->found.shown = m->cli->options.units     ? m->cli->options.units
                     : run.model.project.units ? run.model.project.units
                                               : GW_US;
    if (!taken) {
        for (size_t d = 0; d < run.diags.n && !o->message; d++)
            if (run.diags.items[d].severity == GW_ERROR)
                o->message = gw_strdup(&m->cli->arena, run.diags.items[d].message);
        return EXIT_PASS;
    }
    gw_judge(&run.answer.judgement, &run.ask);
    keep(m, o, &run);
    return EXIT_PASS;
}

static int compute_all(struct matrix *m)
{
    int code = EXIT_PASS;
    for (size_t i = 0; i < m->found.variations.n && !code; i++) {
        code = compute(m, i);
        gw_arena_rewind(&m->cli->scratch);
    }
    return code;
}

static const struct gw_variation *first_computed(const struct matrix *m)
{
    for (size_t i = 0; i < m->found.variations.n; i++)
        if (m->found.variations.items[i].computed) return &m->found.variations.items[i];
    return NULL;
}

/* Combinations that were not computed name the candidates too. */
static void complete(struct matrix *m)
{
    const struct gw_variation *model = first_computed(m);
    for (size_t i = 0; model && i < m->found.variations.n; i++) {
        struct gw_variation *o = &m->found.variations.items[i];
        if (o->computed) continue;
        name_candidates(m, o, model->summaries.n);
        for (size_t c = 0; c < o->summaries.n; c++)
            o->summaries.items[c].candidate = model->summaries.items[c].candidate;
    }
}

static int matrix_code(const struct matrix *m)
{
    const struct gw_variation *first = m->found.variations.items;
    for (size_t i = 0; i < m->found.variations.n; i++) {
        const struct gw_variation *o = &m->found.variations.items[i];
        if (!o->computed) return EXIT_UNSHOWN;
        for (size_t c = 0; c < o->summaries.n; c++)
            if (o->summaries.items[c].verdict != GW_PASS) return EXIT_UNSHOWN;
    }
    return first->summaries.n ? EXIT_PASS : EXIT_UNSHOWN;
}

int vary_check(struct cli *cli)
{
    struct matrix m = {.cli = cli};
    if (!cli->options.n_arguments) return complain("which project? Give a file");
    if (strcmp(cli->options.arguments[0], "-") == 0)
        return complain("--vary reads the project once a combination: give a file, not standard input");
    int code = check_settings(cli) && read_variables(&m) ? compute_all(&m) : EXIT_CALL;
    if (code) return code;
    complete(&m);
    const struct gw_result result = gw_result_variations(&cli->arena, &m.found);
    int written = deliver_result(cli, &result);
    return written ? written : matrix_code(&m);
}
