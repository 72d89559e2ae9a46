/* 'check --vary': every combination of the values, each from a fresh model. */
#include "cli.h"

#include "galeward/json.h"

#include <stdio.h>
#include <string.h>

enum { COMBINATION_LIMIT = 256 };

struct variable {
    const char *key, *path, **values;
    size_t n;
};

struct outcome {
    const char **settings; /* value of each variable */
    bool computed;
    const char *message; /* where it was not */
    double inward, outward, inward_asd, outward_asd;
    enum gw_verdict *verdicts;
    double *utilizations;
};

struct matrix {
    struct cli *cli;
    const char *project;
    struct variable *variables;
    size_t n_variables;
    struct outcome *outcomes;
    size_t n_outcomes;
    const char **candidates;
    size_t n_candidates;
    enum gw_units shown;
};

static bool read_variable(struct cli *cli, const char *text, struct variable *out)
{
    size_t key = strcspn(text, "=");
    out->key = gw_strndup(&cli->arena, text, key);
    out->path = setting_path(cli, out->key);
    out->values = gw_alloc(&cli->arena, strlen(text), sizeof(const char *));
    for (const char *at = text + key + 1;; at++) {
        size_t length = strcspn(at, ",");
        if (length) out->values[out->n++] = gw_strndup(&cli->arena, at, length);
        at += length;
        if (!*at) break;
    }
    if (out->path && !out->n) complain("--vary %s: give at least one value", text);
    return out->path && out->n;
}

static bool read_variables(struct matrix *m)
{
    const struct options *o = &m->cli->options;
    m->n_variables = o->n_vary;
    m->n_outcomes = 1;
    m->variables = gw_alloc(&m->cli->arena, o->n_vary, sizeof *m->variables);
    for (size_t i = 0; i < o->n_vary; i++) {
        if (!read_variable(m->cli, o->vary[i], &m->variables[i])) return false;
        m->n_outcomes *= m->variables[i].n;
        if (m->n_outcomes > COMBINATION_LIMIT) {
            complain("--vary: more than %d combinations", COMBINATION_LIMIT);
            return false;
        }
    }
    m->outcomes = gw_alloc(&m->cli->arena, m->n_outcomes, sizeof *m->outcomes);
    return true;
}

/* The i-th combination; the last variable turns fastest. --set comes first. */
static const char **settings_of(struct matrix *m, size_t i, struct outcome *outcome, size_t *n)
{
    struct cli *cli = m->cli;
    const char **changes = gw_alloc(&cli->arena, m->n_variables + cli->options.n_set + 1, sizeof(const char *));
    outcome->settings = gw_alloc(&cli->arena, m->n_variables, sizeof(const char *));
    for (*n = 0; *n < cli->options.n_set; ++*n) {
        const char *set = cli->options.set[*n];
        size_t length = strcspn(set, "=");
        const char *path = setting_path(cli, gw_strndup(&cli->arena, set, length));
        if (!path) return NULL;
        changes[*n] = gw_format(&cli->arena, "%s%s", path, set + length);
    }
    for (size_t v = m->n_variables; v-- > 0;) {
        outcome->settings[v] = m->variables[v].values[i % m->variables[v].n];
        changes[(*n)++] = gw_format(&cli->arena, "%s=%s", m->variables[v].path, outcome->settings[v]);
        i /= m->variables[v].n;
    }
    return changes;
}

static void worst_pressures(struct outcome *o, const struct gw_takeoff *t)
{
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        o->inward = fmax(o->inward, e->inward.pa);
        o->inward_asd = fmax(o->inward_asd, e->inward_asd.pa);
        o->outward = fmin(o->outward, e->outward.pa);
        o->outward_asd = fmin(o->outward_asd, e->outward_asd.pa);
    }
}

/* What outlives the combination's own arena. */
static void keep(struct matrix *m, struct outcome *o, struct run *run)
{
    struct gw_arena *arena = &m->cli->arena;
    size_t n = run->judgement.summaries.n;
    o->computed = true;
    worst_pressures(o, &run->takeoff);
    if (!m->candidates) {
        m->candidates = gw_alloc(arena, n + 1, sizeof(const char *));
        m->n_candidates = n;
        for (size_t i = 0; i < n; i++)
            m->candidates[i] = gw_strdup(arena, run->judgement.summaries.items[i].candidate->name);
    }
    o->verdicts = gw_alloc(arena, m->n_candidates + 1, sizeof *o->verdicts);
    o->utilizations = gw_alloc(arena, m->n_candidates + 1, sizeof *o->utilizations);
    for (size_t i = 0; i < m->n_candidates && i < n; i++) {
        const struct gw_summary *s = &run->judgement.summaries.items[i];
        o->verdicts[i] = s->verdict;
        o->utilizations[i] = s->governing ? s->governing->utilisation : GW_ABSENT;
    }
}

/* A model that does not load is the caller's fault; a method that does not cover a combination is a result. */
static int compute(struct matrix *m, size_t i)
{
    struct gw_arena *arena = &m->cli->scratch;
    struct run run = {.arena = arena};
    struct outcome *o = &m->outcomes[i];
    size_t n;
    const char *path = m->cli->options.arguments[0];
    const char **changes = settings_of(m, i, o, &n);
    if (!changes) return EXIT_CALL;
    gw_diags_init(&run.diags, arena);
    bool loaded = gw_model_load(&run.model, arena, &run.diags, path, changes, n);
    bool taken = loaded && gw_takeoff_run(&run.takeoff, &run.model, arena, &run.diags);
    if (i == 0 || !taken) say_diags(arena, &run.diags);
    if (!loaded) return code_of(&run.diags);
    m->project = gw_strdup(&m->cli->arena, run.model.project.project->name);
    m->shown = m->cli->options.units     ? m->cli->options.units
               : run.model.project.units ? run.model.project.units
                                         : GW_US;
    if (!taken) {
        for (size_t d = 0; d < run.diags.n && !o->message; d++)
            if (run.diags.items[d].severity == GW_ERROR)
                o->message = gw_strdup(&m->cli->arena, run.diags.items[d].message);
        return EXIT_PASS;
    }
    gw_judge(&run.judgement, &run.model, &run.takeoff);
    keep(m, o, &run);
    return EXIT_PASS;
}

static int compute_all(struct matrix *m)
{
    int code = EXIT_PASS;
    for (size_t i = 0; i < m->n_outcomes && !code; i++) {
        code = compute(m, i);
        gw_arena_rewind(&m->cli->scratch);
    }
    return code;
}

static struct gw_report_column *matrix_columns(struct matrix *m, size_t *n)
{
    struct gw_arena *arena = &m->cli->arena;
    static const char *const pressures[] = {"inward", "outward", "ASD in", "ASD out"};
    struct gw_report_column *columns = gw_alloc(arena, m->n_variables + m->n_candidates + 4, sizeof *columns);
    *n = 0;
    for (size_t v = 0; v < m->n_variables; v++) columns[(*n)++].title = m->variables[v].key;
    for (size_t p = 0; p < 4; p++)
        columns[(*n)++] = (struct gw_report_column){
            gw_format(arena, "%s %s", pressures[p], gw_dim_info(GW_PRESSURE)->shown[m->shown]), true};
    for (size_t c = 0; c < m->n_candidates; c++) columns[(*n)++].title = m->candidates[c];
    return columns;
}

/* Away from zero, to the digits shown: a person may design to it. */
static const char *pressure_text(struct matrix *m, double pa)
{
    struct gw_text text;
    int decimals = gw_dim_info(GW_PRESSURE)->decimals[m->shown];
    double scale = pow(10, decimals), value = gw_quantity_shown(gw_units_standard(), GW_PRESSURE, m->shown, pa);
    gw_text_init(&text, &m->cli->arena);
    gw_text_fixed(&text, copysign(ceil(fabs(value) * scale - 1e-7) / scale, value), decimals);
    return text.at;
}

static void verdict_cell(struct matrix *m, struct gw_report *report, const struct outcome *o, size_t c)
{
    static const enum gw_tone tones[] = {
        [GW_NOT_SHOWN] = GW_DOUBTFUL, [GW_PASS] = GW_GOOD, [GW_FAIL] = GW_BAD, [GW_NOT_REQUIRED] = GW_PLAIN};
    struct gw_text text;
    enum gw_verdict verdict = o->computed ? o->verdicts[c] : GW_NOT_SHOWN;
    gw_text_init(&text, &m->cli->arena);
    gw_text_add(&text, gw_verdict_name(verdict));
    if (o->computed && isfinite(o->utilizations[c]) && verdict != GW_NOT_SHOWN) {
        gw_text_add(&text, " ");
        gw_text_fixed(&text, ceil(o->utilizations[c] * 100 - 1e-7) / 100, 2);
    }
    gw_report_toned(report, tones[verdict], text.at);
}

static int matrix_report(struct matrix *m)
{
    struct gw_report report;
    size_t n;
    struct gw_report_column *columns = matrix_columns(m, &n);
    gw_report_init(&report, &m->cli->arena);
    gw_report_heading(&report, 1, gw_format(&m->cli->arena, "Variations: %s", m->project));
    gw_report_line(&report, "Worst pressures of all elements, strength and allowable-stress level; verdicts with the "
                            "use of the governing check.");
    gw_report_table(&report, "", columns, n);
    for (size_t i = 0; i < m->n_outcomes; i++) {
        const struct outcome *o = &m->outcomes[i];
        const double pressures[] = {o->inward, o->outward, o->inward_asd, o->outward_asd};
        for (size_t v = 0; v < m->n_variables; v++) gw_report_cell(&report, o->settings[v]);
        for (size_t p = 0; p < 4; p++) gw_report_cell(&report, o->computed ? pressure_text(m, pressures[p]) : "-");
        for (size_t c = 0; c < m->n_candidates; c++) verdict_cell(m, &report, o, c);
    }
    for (size_t i = 0; i < m->n_outcomes; i++)
        if (!m->outcomes[i].computed)
            gw_report_item(&report, gw_format(&m->cli->arena, "not computed: %s", m->outcomes[i].message));
    gw_report_line(
        &report,
        "Each combination alone is reported by 'check --set KEY=VALUE', with its assumptions and what is not checked.");
    return deliver_report(m->cli, &report);
}

static void json_number(struct gw_json *json, const char *key, double value, bool known)
{
    gw_json_key(json, key);
    gw_json_number(json, known ? value : GW_ABSENT);
}

static void json_outcome(struct gw_json *json, const struct matrix *m, const struct outcome *o)
{
    gw_json_open(json, '{');
    gw_json_key(json, "settings");
    gw_json_open(json, '{');
    for (size_t v = 0; v < m->n_variables; v++) {
        gw_json_key(json, m->variables[v].path);
        gw_json_text(json, o->settings[v]);
    }
    gw_json_close(json, '}');
    json_number(json, "inward_pa", o->inward, o->computed);
    json_number(json, "outward_pa", o->outward, o->computed);
    json_number(json, "inward_asd_pa", o->inward_asd, o->computed);
    json_number(json, "outward_asd_pa", o->outward_asd, o->computed);
    gw_json_key(json, "summaries");
    gw_json_open(json, '[');
    for (size_t c = 0; c < m->n_candidates; c++) {
        gw_json_open(json, '{');
        gw_json_key(json, "candidate");
        gw_json_text(json, m->candidates[c]);
        gw_json_key(json, "verdict");
        gw_json_text(json, gw_verdict_name(o->computed ? o->verdicts[c] : GW_NOT_SHOWN));
        json_number(json, "utilisation", o->computed ? o->utilizations[c] : 0, o->computed);
        gw_json_close(json, '}');
    }
    gw_json_close(json, ']');
    gw_json_key(json, "message");
    gw_json_text(json, o->message);
    gw_json_close(json, '}');
}

static int matrix_json(struct matrix *m)
{
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &m->cli->arena);
    gw_json_init(&json, &text, true);
    gw_json_result(&json, m->project);
    gw_json_key(&json, "variations");
    gw_json_open(&json, '[');
    for (size_t i = 0; i < m->n_outcomes; i++) json_outcome(&json, m, &m->outcomes[i]);
    gw_json_close(&json, ']');
    gw_json_close(&json, '}');
    gw_text_add(&text, "\n");
    return deliver(m->cli, &text);
}

static int matrix_code(const struct matrix *m)
{
    for (size_t i = 0; i < m->n_outcomes; i++) {
        const struct outcome *o = &m->outcomes[i];
        if (!o->computed) return EXIT_UNSHOWN;
        for (size_t c = 0; c < m->n_candidates; c++)
            if (o->verdicts[c] != GW_PASS) return EXIT_UNSHOWN;
    }
    return m->n_candidates ? EXIT_PASS : EXIT_UNSHOWN;
}

int vary_check(struct cli *cli)
{
    struct matrix m = {.cli = cli};
    if (!cli->options.n_arguments) return complain("which project? Give a file");
    if (strcmp(cli->options.arguments[0], "-") == 0)
        return complain("--vary reads the project once a combination: give a file, not standard input");
    int code = read_variables(&m) ? compute_all(&m) : EXIT_CALL;
    if (code) return code;
    int written = format_of(&cli->options) == FORMAT_JSON ? matrix_json(&m) : matrix_report(&m);
    return written ? written : matrix_code(&m);
}
