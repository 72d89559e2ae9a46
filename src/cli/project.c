/* From a path on the command line to a judged project. */
#include "cli.h"

#include "galeward/plan.h"
#include "galeward/readings.h"

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

/* "steel insert", "vision=thicker outer pane" */
static void take_withs(struct gw_model *model, const struct options *o)
{
    model->withs = gw_alloc(model->arena, o->n_with + 1, sizeof *model->withs);
    model->n_withs = o->n_with;
    for (size_t i = 0; i < o->n_with; i++) {
        const char *equals = strchr(o->with[i], '=');
        const size_t length = equals ? (size_t)(equals - o->with[i]) : 0;
        model->withs[i] = (struct gw_with){.lite = equals ? gw_strndup(model->arena, o->with[i], length) : NULL,
                                           .name = equals ? equals + 1 : o->with[i]};
    }
}

bool plan_project(struct run *run, const struct cli *cli)
{
    struct gw_plans *plans = NULL;
    take_withs(&run->model, &cli->options);
    if (cli->options.plan && !gw_model_take_plan(&run->model, cli->options.plan)) return false;
    if (!gw_plans_read(&plans, &run->model, &run->takeoff, run->arena)) return false;
    gw_ask_init(&run->ask, &run->model, &run->takeoff, run->arena);
    run->ask.plans = plans;
    return true;
}

/* By a requirement set, where one is named. */
static bool load_project(struct run *run, const struct cli *cli, const char *const *changes)
{
    const struct options *o = &cli->options;
    gw_diags_init(&run->diags, run->arena);
    if (!gw_model_load(&run->model, run->arena, &run->diags, o->arguments[0], changes, o->n_set)) return false;
    run->model.judges_ages = cli->command->run == cmd_review;
    if (cli->command->run == cmd_inspect && !gw_readings_hang(&run->model, o->system)) return false;
    return (!o->requirements || gw_model_require(&run->model, o->requirements)) &&
           gw_takeoff_run(&run->takeoff, &run->model, run->arena, &run->diags);
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

/* Warnings that judging found stand before those of the files. */
static void say_found(struct run *run)
{
    struct gw_text text;
    gw_text_init(&text, run->arena);
    for (size_t i = 0; i < run->answer.below_site.n; i++) gw_diag_print(&text, run->results.warnings.items[i]);
    fputs(text.at, stderr);
}

bool writes_over_inputs(const struct cli *cli, const struct gw_model *model)
{
    for (size_t i = 0; i < model->inputs.n; i++)
        if (writes_over(cli, model->inputs.items[i].file, "this project")) return true;
    return false;
}

int code_of(const struct gw_diags *diags) { return diags->refused ? EXIT_OURS : EXIT_CALL; }

/* What is chosen already is left out of account where it is to be chosen. */
static bool leave_chosen(struct run *run)
{
    if (run->model.project.chosen.n)
        gw_diag_key(&run->diags, GW_WARNING, "chosen_anew", gw_node_get(run->model.project.node, "chosen"),
                    "what is chosen here is left out of account: everything is chosen anew");
    gw_ask_init(&run->ask, &run->model, &run->takeoff, run->arena);
    return true;
}

int open_project(struct run *run, struct cli *cli)
{
    const char **settings = check_settings(cli) ? full_settings(cli, 0) : NULL;
    if (!settings) return EXIT_CALL;
    if (!cli->options.n_arguments) return complain("which project? Give a file, or - for standard input");
    run->arena = &cli->arena;
    bool good = load_project(run, cli, settings);
    good = good && (cli->command->run == cmd_select ? leave_chosen(run) : plan_project(run, cli));
    say_diags(run->arena, &run->diags);
    if (!good) return code_of(&run->diags);
    return writes_over_inputs(cli, &run->model) ? EXIT_CALL : EXIT_PASS;
}

void write_up(struct run *run, struct cli *cli)
{
    enum gw_units own = run->model.project.units, shown = cli->options.units ? cli->options.units : own ? own : GW_US;
    gw_results_of(&run->results, run->arena, &run->answer, shown);
    say_found(run);
    run->results.sources = cli->options.sources;
    run->results.all = cli->options.all;
    if (cli->options.date) run->results.date = today(run->arena);
}

int run_project(struct run *run, struct cli *cli, bool judge)
{
    const int code = open_project(run, cli);
    if (code) return code;
    (judge ? gw_answer_check : gw_answer_demand)(&run->answer, &run->ask);
    write_up(run, cli);
    const struct gw_format *format = cli->options.format;
    if (!format || !(format->sheets || (format->needs & GW_HAS_FIGURE))) return EXIT_PASS;
    gw_find_derivations(&run->results.derivations, &run->ask, &run->takeoff, &run->answer.judgement);
    gw_pictures_of_derivations(&run->results.pictures, run->arena, &run->results);
    return EXIT_PASS;
}
