/* From a path on the command line to a judged project. */
#include "cli.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

void say_diags(struct gw_arena *arena, const struct gw_diags *diags)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    for (size_t i = 0; i < diags->n; i++) gw_diag_print(&text, &diags->items[i]);
    if (diags->dropped) gw_text_addf(&text, "and %zu more\n", diags->dropped);
    if (diags->errors) gw_text_addf(&text, "%zu error%s\n", diags->errors, diags->errors == 1 ? "" : "s");
    fputs(text.at, stderr);
}

static bool load_project(struct run *run, const char *path, const char *const *changes, size_t n)
{
    gw_diags_init(&run->diags, run->arena);
    bool good = gw_model_load(&run->model, run->arena, &run->diags, path, changes, n) &&
                gw_takeoff_run(&run->takeoff, &run->model, run->arena, &run->diags);
    return good;
}

/* --set key=value with its key in full. */
static const char **full_settings(struct cli *cli)
{
    const struct options *o = &cli->options;
    const char **full = gw_alloc(&cli->arena, o->n_set + 1, sizeof(const char *));
    for (size_t i = 0; i < o->n_set; i++) {
        size_t length = strcspn(o->set[i], "=");
        const char *path = setting_path(cli, gw_strndup(&cli->arena, o->set[i], length));
        if (!path) return NULL;
        full[i] = gw_format(&cli->arena, "%s%s", path, o->set[i] + length);
    }
    return full;
}

/* "2026-11-30", where the program runs. */
static const char *today(struct gw_arena *arena)
{
    const time_t now = time(NULL);
    struct tm day;
    char text[16];
    if (!localtime_r(&now, &day) || !strftime(text, sizeof text, "%Y-%m-%d", &day)) return NULL;
    return gw_strdup(arena, text);
}

int code_of(const struct gw_diags *diags) { return diags->refused ? EXIT_OURS : EXIT_CALL; }

int run_project(struct run *run, struct cli *cli, bool judge)
{
    const char **settings = full_settings(cli);
    if (!settings) return EXIT_CALL;
    if (!cli->options.n_arguments) return complain("which project? Give a file, or - for standard input");
    run->arena = &cli->arena;
    bool good = load_project(run, cli->options.arguments[0], settings, cli->options.n_set);
    say_diags(run->arena, &run->diags);
    if (!good) return code_of(&run->diags);
    gw_ask_init(&run->ask, &run->model, &run->takeoff, run->arena);
    (judge ? gw_answer_check : gw_answer_demand)(&run->answer, &run->ask);
    enum gw_units own = run->model.project.units, shown = cli->options.units ? cli->options.units : own ? own : GW_US;
    gw_results_of(&run->results, run->arena, &run->answer, shown);
    run->results.sources = cli->options.sources;
    run->results.all = cli->options.all;
    if (cli->options.date) run->results.date = today(run->arena);
    return EXIT_PASS;
}

struct search {
    struct gw_arena *arena;
    const char *key;
    const char *found[8];
    size_t n;
    const char *nearest;
    size_t distance;
};

static void search_record(struct search *s, const struct gw_record *record, const char *prefix, unsigned depth)
{
    for (size_t i = 0; i < record->n && depth < 8; i++) {
        const struct gw_field *f = &record->fields[i];
        if (f->type == GW_T_NODE) continue;
        const char *path = gw_format(s->arena, "%s%s%s", prefix, *prefix ? "." : "", f->key);
        size_t d = gw_edit_distance(s->key, f->key, 3);
        if (d == 0 && s->n < sizeof s->found / sizeof *s->found) s->found[s->n++] = path;
        if (d < s->distance) {
            s->distance = d;
            s->nearest = path;
        }
        if (f->type == GW_T_RECORD && !(f->flags & GW_NAMED)) search_record(s, f->record, path, depth + 1);
    }
}

/* Each part of a dotted path must be a key of its record; where records go by name, any name will do. */
static const char *check_dotted(const char *path)
{
    const struct gw_record *record = &gw_project_record;
    for (const char *at = path;;) {
        char part[64];
        size_t length = strcspn(at, ".");
        if (length >= sizeof part || !record) break;
        memcpy(part, at, length);
        part[length] = '\0';
        const struct gw_field *field = gw_record_field(record, part);
        if (!field) {
            const char *nearest = gw_record_nearest(record, part);
            complain("'%s' is not a key of %s%s%s%s", part, record->name, nearest ? "; did you mean '" : "",
                     nearest ? nearest : "", nearest ? "'?" : "");
            return NULL;
        }
        at += length;
        if (!*at) return path;
        at++;
        if (field->flags & GW_NAMED) {
            at += strcspn(at, ".");
            if (!*at) return path;
            at++;
        }
        record = field->type == GW_T_RECORD ? field->record : NULL;
    }
    complain("'%s' leads nowhere", path);
    return NULL;
}

const char *setting_path(struct cli *cli, const char *key)
{
    struct search s = {.arena = &cli->arena, .key = key, .distance = 3};
    if (strcmp(key, "edition") == 0) return "codes.wind";
    if (strchr(key, '.')) return check_dotted(key);
    search_record(&s, &gw_project_record, "", 0);
    if (s.n == 1) return s.found[0];
    if (!s.n) {
        complain("'%s' is not a key of the project file%s%s%s", key, s.nearest ? "; did you mean '" : "",
                 s.nearest ? s.nearest : "", s.nearest ? "'?" : "");
        return NULL;
    }
    struct gw_text list;
    gw_text_init(&list, &cli->arena);
    for (size_t i = 0; i < s.n; i++) gw_text_addf(&list, "%s%s", i ? ", " : "", s.found[i]);
    complain("'%s' occurs more than once; give it in full: %s", key, list.at);
    return NULL;
}
