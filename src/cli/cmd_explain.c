#include "cli.h"

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
    int code = run_project(&run, cli, true);
    if (code) return code;
    struct gw_result result = gw_result_elements(&run.results);
    if (cli->options.n_arguments > 1) {
        const char *id = cli->options.arguments[1];
        const struct gw_element *element = gw_takeoff_find(&run.takeoff, id);
        if (!element) return unknown_element(cli, &run.takeoff, id);
        struct gw_explanation explanation;
        gw_explain(&explanation, &run.ask, &run.answer.judgement, element);
        result = gw_result_explain(&cli->arena, &run.results, &explanation);
    }
    return deliver_result(cli, &result);
}
