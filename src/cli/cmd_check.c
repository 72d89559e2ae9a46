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
    struct gw_text text;
    struct gw_report report;
    if (cli->options.n_vary) return vary_check(cli);
    int code = run_project(&run, cli, true);
    if (code) return code;
    enum format format = format_of(&cli->options);
    gw_text_init(&text, &cli->arena);
    int written;
    if (format == FORMAT_JSON || format == FORMAT_CSV) {
        (format == FORMAT_JSON ? gw_json_results : gw_csv_results)(&text, &run.results, true);
        written = deliver(cli, &text);
    } else {
        gw_report_init(&report, &cli->arena);
        gw_report_check(&report, &run.results);
        written = deliver_report(cli, &report);
    }
    int verdict = verdict_code(&run.judgement);
    return written ? written : verdict;
}
