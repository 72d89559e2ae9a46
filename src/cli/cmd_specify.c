#include "cli.h"

#include "galeward/specify.h"

int cmd_specify(struct cli *cli)
{
    struct run run;
    struct gw_specification specification;
    int code = run_project(&run, cli, false);
    if (code) return code;
    gw_specify(&specification, &run.answer, &run.ask, run.results.shown);
    gw_leave_out_systems(&run.results);
    const struct gw_specified specified = {&run.results, &specification};
    const struct gw_result result = gw_result_specify(&cli->arena, &specified);
    return deliver_result(cli, &result);
}
