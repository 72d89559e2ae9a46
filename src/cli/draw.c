/* 'calc KIND -o FILE.svg': the drawing of one case. */
#include "cli.h"

bool wants_drawing(const struct cli *cli) { return gw_format_can(cli->options.format, GW_HAS_FIGURE); }

static int no_drawing(struct cli *cli, const struct gw_calc_kind *kind)
{
    size_t n;
    const struct gw_drawing *drawings = gw_drawings(&n);
    struct gw_text names;
    gw_text_init(&names, &cli->arena);
    for (size_t i = 0; i < n; i++) gw_text_addf(&names, "%s%s", i ? ", " : "", drawings[i].kind);
    return complain("%s: '%s' has no drawing; these have one: %s", cli->options.output ? cli->options.output : "svg",
                    kind->name, names.at);
}

int check_drawing(struct cli *cli, const struct gw_calc_kind *kind)
{
    return gw_drawing_find(kind->name) ? EXIT_PASS : no_drawing(cli, kind);
}

int refused_case(const struct gw_calc_kind *kind, const char *code, const char *key, const char *message)
{
    complain("calc %s: %s: %s%s%s", kind->name, code, key && *key ? key : "", key && *key ? ": " : "", message);
    return EXIT_UNSHOWN;
}

int draw_case(struct cli *cli, const struct gw_calc_kind *kind, const struct gw_node *node)
{
    struct gw_engine engine;
    struct gw_calc_answer answer;
    struct gw_text text;
    if (!gw_calc_run(&answer, &cli->arena, kind, node, gw_tables_standard(), cli->options.units))
        return refused_case(kind, answer.error_code, answer.error_key, answer.error);
    enum gw_units shown = cli->options.units ? cli->options.units : answer.units ? answer.units : GW_US;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    if (kind->workspace) engine.workspace = gw_alloc(&cli->arena, 1, kind->workspace);
    gw_text_init(&text, &cli->arena);
    const struct gw_drawing *drawing = gw_drawing_find(kind->name);
    const struct gw_figure figure = {kind->name, drawing->help, drawing->draw, &answer};
    const struct gw_result result = {.shown = shown, .figure = &figure};
    enum gw_status status = cli->options.format->render(&text, &result, &engine, false);
    if (status)
        return refused_case(kind, gw_status_code(status), engine.fault.key,
                            gw_fault_text(&cli->arena, &engine.fault, shown));
    return deliver(cli, &text);
}
