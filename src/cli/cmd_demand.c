#include "cli.h"

int cmd_demand(struct cli *cli)
{
    struct run run;
    struct gw_text text;
    struct gw_report report;
    int code = run_project(&run, cli, false);
    if (code) return code;
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
