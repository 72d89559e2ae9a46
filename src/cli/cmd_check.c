#include "cli.h"

static int verdict_code(const struct gw_judgement *judgement)
{
    if (!judgement->summaries.n) {
        complain("the project lists no candidates: nothing is shown");
        return EXIT_UNSHOWN;
    }
    for (size_t i = 0; i < judgement->summaries.n; i++)
        if (judgement->summaries.items[i].verdict != GW_PASS) return EXIT_UNSHOWN;
    return EXIT_PASS;
}

int cmd_check(struct cli *cli)
{
    struct run run;
    if (cli->options.n_vary) return vary_check(cli);
    int code = run_project(&run, cli, true);
    if (code) return code;
    const struct gw_result result = gw_result_check(&run.results);
    int written = deliver_result(cli, &result);
    int verdict = verdict_code(&run.answer.judgement);
    return written ? written : verdict;
}
