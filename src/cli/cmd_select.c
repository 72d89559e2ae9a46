#include "cli.h"

#include "galeward/select.h"

static int code_of_bids(const struct gw_bids *bids)
{
    if (!bids->items.n) {
        complain("the project lists no candidates: there is nothing to choose");
        return EXIT_UNSHOWN;
    }
    for (size_t i = 0; i < bids->items.n; i++)
        if (bids->items.items[i].verdict != GW_PASS || !bids->items.items[i].complete) return EXIT_UNSHOWN;
    return EXIT_PASS;
}

int cmd_select(struct cli *cli)
{
    struct run run;
    struct gw_bids bids;
    const struct gw_select_limits limits = {.most = 0};
    const int code = open_project(&run, cli);
    if (code) return code;
    gw_select(&bids, &run.ask, &limits);
    gw_answer_bids(&run.answer, &run.ask, &bids);
    write_up(&run, cli);
    const struct gw_result result = gw_result_select(&cli->arena, &run.results, &bids);
    const int written = deliver_result(cli, &result);
    return written ? written : code_of_bids(&bids);
}
