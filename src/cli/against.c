/* '--against': a result that was written before, and what differs from it. */
#include "cli.h"

#include "galeward/against.h"

#include <string.h>

bool check_against(const struct cli *cli)
{
    const struct options *o = &cli->options;
    const bool both = o->against && o->n_arguments && strcmp(o->against, "-") == 0 && strcmp(o->arguments[0], "-") == 0;
    const bool several = o->against && (o->n_vary || o->sensitivity || o->qualifications);
    if (both) complain("standard input is either the project or the result");
    else if (several) complain("--against goes with one project: not with --vary, --sensitivity or --qualifications");
    return !both && !several && !(o->against && writes_over(cli, o->against, "--against"));
}

int compare_against(struct cli *cli, const struct run *run, bool judged)
{
    const char *path = cli->options.against;
    struct gw_diags diags;
    struct gw_against against;
    gw_diags_init(&diags, &cli->arena);
    const struct gw_source *source = gw_source_read_most(&cli->arena, path, GW_RESULT_LIMIT, &diags);
    if (!source || !gw_against(&against, &cli->arena, &run->results, judged, source, &diags)) {
        say_diags(&cli->arena, &diags);
        return code_of(&diags);
    }
    if (strcmp(against.version, GW_VERSION) != 0)
        complain("%s: warning: written by version %s of this program, this is %s: what both have is compared", path,
                 against.version, GW_VERSION);
    const struct gw_result result = gw_result_against(&against);
    const int written = deliver_result(cli, &result);
    return written ? written : against.changes.n ? EXIT_UNSHOWN : EXIT_PASS;
}
