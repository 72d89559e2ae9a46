#include "cli.h"

static int list_elements(struct cli *cli, const struct gw_takeoff *takeoff)
{
    static const struct gw_report_column columns[] = {
        {"Element", false}, {"Kind", false}, {"Count", true}, {"Zone", true}, {"Columns", false}};
    struct gw_report report;
    gw_report_init(&report, &cli->arena);
    gw_report_table(&report, "Give one of these to 'explain'.", columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        gw_report_cell(&report, e->id);
        gw_report_cell(&report, gw_kind_names[e->kind]);
        gw_report_cell(&report, gw_format(&cli->arena, "%ld", e->count));
        gw_report_cell(&report, gw_format(&cli->arena, "%d", e->zone));
        gw_report_cell(&report, e->columns);
    }
    return deliver_report(cli, &report);
}

static int unknown_element(struct cli *cli, const struct gw_takeoff *takeoff, const char *id)
{
    const char **names = gw_alloc(&cli->arena, takeoff->elements.n + 1, sizeof(const char *));
    for (size_t i = 0; i < takeoff->elements.n; i++) names[i] = takeoff->elements.items[i].id;
    return complain("there is no element '%s'%s (without one, 'explain' lists them)", id,
                    did_you_mean(cli, id, names, takeoff->elements.n));
}

int cmd_explain(struct cli *cli)
{
    struct run run;
    struct gw_text text;
    struct gw_report report;
    int code = run_project(&run, cli, true);
    if (code) return code;
    bool json = format_of(&cli->options) == FORMAT_JSON;
    gw_text_init(&text, &cli->arena);
    if (cli->options.n_arguments < 2) {
        if (!json) return list_elements(cli, &run.takeoff);
        gw_json_results(&text, &run.results, false);
        return deliver(cli, &text);
    }
    const char *id = cli->options.arguments[1];
    const struct gw_element *element = gw_takeoff_find(&run.takeoff, id);
    if (!element) return unknown_element(cli, &run.takeoff, id);
    if (json) {
        gw_json_explain(&text, &run.results, element);
        return deliver(cli, &text);
    }
    gw_report_init(&report, &cli->arena);
    gw_report_explain(&report, &run.results, element);
    return deliver_report(cli, &report);
}
