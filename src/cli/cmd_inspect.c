#include "cli.h"

#include "galeward/inspection.h"

/* The sheet of readings: named in the call, else by the project; NULL: none. */
static const struct gw_source *sheet_of(struct run *run, struct cli *cli)
{
    const struct options *o = &cli->options;
    if (o->n_arguments > 1) return gw_source_read(run->arena, o->arguments[1], &run->diags);
    return gw_readings_named(&run->model);
}

static int code_of_rows(const struct gw_inspection *in, const struct gw_diags *diags)
{
    if (diags->errors) return EXIT_CALL;
    const long *n = in->counts;
    return n[GW_ITEM_NOT_MET] || n[GW_ITEM_OUTSIDE_HOLDS] || n[GW_ITEM_UNKNOWN] ? EXIT_UNSHOWN : EXIT_PASS;
}

static int draw_sheet(struct run *run, struct cli *cli, const struct gw_system *system)
{
    struct gw_inspection_sheet sheet;
    gw_answer_demand(&run->answer, &run->ask);
    gw_inspection_sheet(&sheet, &run->ask, system);
    write_up(run, cli);
    const struct gw_result result = gw_result_inspection_sheet(run->arena, &run->results, &sheet);
    return deliver_result(cli, &result);
}

/* What was said of the project already is not said again. */
static void say_since(struct run *run, size_t said)
{
    struct gw_diags since = run->diags;
    since.items += said;
    since.n -= said;
    gw_diags_sort(&since);
    say_diags(run->arena, &since);
}

static int judge_readings(struct run *run, struct cli *cli, const struct gw_source *source)
{
    struct gw_readings readings;
    struct gw_inspection inspection;
    const size_t said = run->diags.n;
    gw_readings_read(&readings, &run->model, source);
    const struct gw_system *system = gw_readings_system(&run->model, cli->options.system);
    say_since(run, said);
    if (!system || readings.rows.n == readings.wrong + readings.blank) return code_of(&run->diags);
    if (writes_over_inputs(cli, &run->model)) return EXIT_CALL;
    gw_answer_demand(&run->answer, &run->ask);
    gw_inspect(&inspection, &run->ask, &readings, system);
    write_up(run, cli);
    const struct gw_result result = gw_result_inspection(run->arena, &run->results, &inspection);
    const int written = deliver_result(cli, &result);
    return written ? written : code_of_rows(&inspection, &run->diags);
}

int cmd_inspect(struct cli *cli)
{
    struct run run = {0};
    const int code = open_project(&run, cli);
    if (code) return code;
    const size_t said = run.diags.n;
    const struct gw_source *source = sheet_of(&run, cli);
    if (source) return judge_readings(&run, cli, source);
    const struct gw_system *system = run.diags.errors ? NULL : gw_readings_system(&run.model, cli->options.system);
    say_since(&run, said);
    return system ? draw_sheet(&run, cli, system) : code_of(&run.diags);
}
