#include "cli.h"

static int unknown_table(struct cli *cli, const char *name)
{
    size_t n;
    const struct gw_table *list = gw_table_list(&n);
    const char **names = gw_alloc(&cli->arena, n, sizeof(const char *));
    for (size_t i = 0; i < n; i++) names[i] = list[i].name;
    return complain("there is no table '%s'%s ('galeward tables' lists them)", name, did_you_mean(cli, name, names, n));
}

int cmd_tables(struct cli *cli)
{
    const char *name = cli->options.n_arguments ? cli->options.arguments[0] : NULL;
    if (name && !gw_table_find(name)) return unknown_table(cli, name);
    const struct gw_result result = gw_result_tables(&cli->arena, gw_tables_standard(), name, cli->options.units);
    return deliver_result(cli, &result);
}
