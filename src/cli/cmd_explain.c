#include "cli.h"

static int unknown_element(struct cli *cli, const struct gw_takeoff *takeoff, const char *id,
                           const struct gw_selection *found)
{
    const size_t n = takeoff->elements.n;
    const char **names = gw_alloc(&cli->arena, 2 * n + 1, sizeof(const char *));
    for (size_t i = 0; i < n; i++) {
        names[2 * i] = takeoff->elements.items[i].id;
        names[2 * i + 1] = i < takeoff->n_wall_elements ? names[2 * i] : takeoff->elements.items[i].mark;
    }
    return complain("%s%s (without one, 'explain' lists them)", gw_message_text(&cli->arena, &found->missing, GW_US),
                    did_you_mean(cli, id, names, 2 * n));
}

/* Lites of one place stand on one page; of other kinds, and as data, one derivation at a time: their names. */
static int name_several(const struct run *run, struct cli *cli, const struct gw_selection *found)
{
    struct gw_text list;
    gw_text_init(&list, &cli->arena);
    for (size_t i = 0; i < found->elements.n; i++) {
        const struct gw_element *e = found->elements.items[i];
        gw_text_addf(&list, "%s%s (%s, zone %d, ", i ? "; " : "", e->id, e->mark, e->zone);
        gw_quantity_print(&list, gw_units_standard(), GW_LENGTH, run->results.shown, e->bottom);
        gw_text_add(&list, " to ");
        gw_quantity_print(&list, gw_units_standard(), GW_LENGTH, run->results.shown, e->top);
        gw_text_add(&list, ")");
    }
    return complain("%zu elements stand at '%s', give one of them: %s", found->elements.n, cli->options.arguments[1],
                    list.at);
}

static int explain(struct run *run, struct cli *cli, const struct gw_selection *found)
{
    const size_t n = found->elements.n;
    const bool one_page = found->elements.items[0]->kind == GW_LITE && gw_format_can(cli->options.format, GW_HAS_PAGE);
    if (n > 1 && !one_page) return name_several(run, cli, found);
    struct gw_explanation *all = gw_alloc(&cli->arena, n, sizeof *all);
    for (size_t i = 0; i < n; i++) gw_explain(&all[i], &run->ask, &run->answer.judgement, found->elements.items[i]);
    const struct gw_result result = n > 1 ? gw_result_explain_all(&cli->arena, &run->results, all, n)
                                          : gw_result_explain(&cli->arena, &run->results, all);
    return deliver_result(cli, &result);
}

int cmd_explain(struct cli *cli)
{
    struct run run;
    int code = run_project(&run, cli, true);
    if (code) return code;
    if (cli->options.n_arguments > 1) {
        const char *what = cli->options.arguments[1];
        struct gw_selection found = {.missing = {0}};
        gw_takeoff_select(&found, &run.takeoff, &cli->arena, what);
        return found.elements.n ? explain(&run, cli, &found) : unknown_element(cli, &run.takeoff, what, &found);
    }
    const struct gw_result result = gw_result_elements(&run.results);
    return deliver_result(cli, &result);
}
