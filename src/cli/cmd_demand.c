#include "cli.h"

int cmd_demand(struct cli *cli)
{
    struct run run;
    int code = run_project(&run, cli, false);
    if (code) return code;
    const struct gw_result result = gw_result_demand(&run.results);
    return deliver_result(cli, &result);
}
