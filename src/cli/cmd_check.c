#include "cli.h"

#include "galeward/sensitivity.h"

static int verdict_code(const struct gw_answer *answer)
{
    const struct gw_judgement *judgement = &answer->judgement;
    if (!judgement->summaries.n) {
        complain("the project lists no candidates: nothing is shown");
        return EXIT_UNSHOWN;
    }
    for (size_t i = 0; i < judgement->summaries.n; i++)
        if (judgement->summaries.items[i].verdict != GW_PASS) return EXIT_UNSHOWN;
    return gw_below_unaccepted(answer) ? EXIT_UNSHOWN : EXIT_PASS;
}

static int sensitivity(struct cli *cli, const struct run *run)
{
    struct gw_sensitivity found;
    gw_find_sensitivity(&found, &run->answer, &cli->arena, &cli->scratch);
    found.shown = run->results.shown;
    const struct gw_result result = gw_result_sensitivity(&found);
    return deliver_result(cli, &result);
}

int cmd_check(struct cli *cli)
{
    struct run run;
    const struct options *o = &cli->options;
    if (o->n_vary && (o->sensitivity || o->qualifications))
        return complain("--%s goes with one project: not with --vary",
                        o->sensitivity ? "sensitivity" : "qualifications");
    if (o->sensitivity && o->qualifications) return complain("--sensitivity or --qualifications: one page at a time");
    if (o->n_vary && o->requirements) return complain("--requirements goes with one project: not with --vary");
    if (!check_against(cli)) return EXIT_CALL;
    if (cli->options.n_vary) return vary_check(cli);
    int code = run_project(&run, cli, true);
    if (code) return code;
    if (o->against) return compare_against(cli, &run, true);
    const struct gw_result result =
        o->qualifications ? gw_result_qualifications(&cli->arena, &run.results) : gw_result_check(&run.results);
    int written = cli->options.sensitivity ? sensitivity(cli, &run) : deliver_result(cli, &result);
    int verdict = verdict_code(&run.answer);
    return written ? written : verdict;
}
