#include "cli.h"

int cmd_demand(struct cli *cli)
{
    struct run run;
    if (!check_against(cli)) return EXIT_CALL;
    int code = run_project(&run, cli, false);
    if (code) return code;
    if (cli->options.against) return compare_against(cli, &run, false);
    const struct gw_result result = gw_result_demand(&run.results);
    code = deliver_result(cli, &result);
    return code ? code : gw_below_unaccepted(&run.answer) ? EXIT_UNSHOWN : EXIT_PASS;
}
