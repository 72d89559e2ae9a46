#include "cli.h"

#include "galeward/margins.h"
#include "report/margins.h"

#include <signal.h>
#include <stdio.h>
#include <time.h>
#include <unistd.h>

/* The first interrupt ends the search with the best plan so far; the next one the program. */
static volatile sig_atomic_t interrupted;

static void interrupt(int signal_number)
{
    (void)signal_number;
    interrupted = 1;
}

static void take_interrupts(void)
{
    struct sigaction action = {.sa_handler = interrupt, .sa_flags = (int)SA_RESETHAND};
    sigaction(SIGINT, &action, NULL);
}

static bool must_stop(void *user)
{
    (void)user;
    return interrupted;
}

/* On a terminal alone. */
struct progress {
    bool shown;
    struct timespec last;
};

static void tell(void *user, long examined)
{
    const double pause = 0.2, nano = 1e-9; /* s */
    struct progress *p = user;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    const double since = (double)(now.tv_sec - p->last.tv_sec) + nano * (double)(now.tv_nsec - p->last.tv_nsec);
    if (since < pause) return;
    p->last = now;
    p->shown = true;
    fprintf(stderr, "\rgaleward: %ld choices judged; Ctrl-C ends with the best plan so far", examined);
}

static void end_progress(const struct progress *p)
{
    if (p->shown) fputs("\r\033[K", stderr);
}

static void select_plans(struct gw_bids *bids, struct run *run, struct cli *cli)
{
    struct progress progress = {.shown = false};
    const struct gw_select_limits limits = {
        .stop = must_stop, .tell = isatty(STDERR_FILENO) ? tell : NULL, .user = &progress, .scratch = &cli->scratch};
    take_interrupts();
    clock_gettime(CLOCK_MONOTONIC, &progress.last);
    gw_select(bids, &run->ask, &limits);
    end_progress(&progress);
}

enum { LEADING = 3 };

/* Of what was not stopped: each input is moved and everything judged anew; but of the first that pass only with --all.
 */
static void look_beyond(struct gw_bids *bids, const struct run *run, struct cli *cli)
{
    for (size_t i = 0; i < bids->items.n && !interrupted; i++) {
        struct gw_bid *bid = &bids->items.items[i];
        const bool leads = bid->verdict == GW_PASS && i < LEADING;
        if (!leads && !cli->options.all) continue;
        struct gw_margins *margins = gw_alloc(&cli->arena, 1, sizeof *margins);
        gw_find_margins(margins, &run->model, bid, &cli->arena, &cli->scratch);
        gw_margins_rows(margins, &cli->arena);
        bid->margins = margins;
    }
}

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
    const int code = open_project(&run, cli);
    if (code) return code;
    select_plans(&bids, &run, cli);
    if (!(cli->options.format->needs & (GW_HAS_FILE | GW_HAS_FIGURE))) look_beyond(&bids, &run, cli);
    gw_answer_bids(&run.answer, &run.ask, &bids);
    write_up(&run, cli);
    const struct gw_result result = gw_result_select(&cli->arena, &run.results, &bids);
    const int written = deliver_result(cli, &result);
    return written ? written : code_of_bids(&bids);
}
