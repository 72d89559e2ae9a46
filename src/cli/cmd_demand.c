#include "cli.h"

int cmd_demand(struct cli *cli)
{
    struct run run;
    struct gw_text text;
    struct gw_report report;
    if (!run_project(&run, cli, false)) return EXIT_CALL;
    enum format format = format_of(&cli->options);
    gw_text_init(&text, &cli->arena);
    if (format == FORMAT_JSON || format == FORMAT_CSV) {
        (format == FORMAT_JSON ? gw_json_results : gw_csv_results)(&text, &run.results, false);
        return deliver(cli, &text);
    }
    gw_report_init(&report, &cli->arena);
    gw_report_demand(&report, &run.results);
    return deliver_report(cli, &report);
}
