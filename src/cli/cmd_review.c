#include "cli.h"

#include "galeward/against.h"
#include "galeward/review.h"

#include <string.h>

static bool is_readable(const struct cli *cli)
{
    const struct options *o = &cli->options;
    if (o->n_arguments < 2) {
        complain(
            "which submittal? galeward review PROJECT SUBMITTAL.yaml ('galeward new submittal -o FILE' prints one)");
        return false;
    }
    const bool both = strcmp(o->arguments[0], "-") == 0 && strcmp(o->arguments[1], "-") == 0;
    if (both) complain("standard input is either the project or the submittal");
    return !both && !(o->previous && writes_over(cli, o->previous, "--previous"));
}

/* Comments of an earlier result. False after diagnostics. */
static bool read_previous(struct cli *cli, const struct gw_previous **out, struct run *run,
                          const struct gw_submittal *submittal)
{
    *out = NULL;
    if (!cli->options.previous) return true;
    const struct gw_source *source =
        gw_source_read_most(&cli->arena, cli->options.previous, GW_RESULT_LIMIT, &run->diags);
    if (source)
        *out = gw_review_previous(&cli->arena, source, run->model.project.project->name, submittal->submittal,
                                  &run->diags);
    return *out;
}

/* What was said of the project stands before it. */
static void say_later(struct cli *cli, const struct gw_diags *diags, size_t before)
{
    struct gw_diags later = *diags;
    later.items += before;
    later.n -= before;
    say_diags(&cli->arena, &later);
}

/* A decision on a comment that is not there was meant for another one. */
static void doubt_decisions(struct run *run, const struct gw_review *review)
{
    const struct gw_project *p = &run->model.project;
    for (size_t i = 0; i < p->decisions.n; i++) {
        bool found = false;
        for (size_t k = 0; k < review->comments.n; k++)
            found = found || review->comments.items[k].number == p->decisions.items[i].number;
        if (!found) complain("warning: decisions: there is no comment %d in this review", p->decisions.items[i].number);
    }
}

static int code_of_review(const struct gw_review *review)
{
    return gw_review_worst(review) < GW_A_REMARK ? EXIT_UNSHOWN : EXIT_PASS;
}

int cmd_review(struct cli *cli)
{
    struct run run;
    struct gw_submittal submittal;
    struct gw_review review;
    const struct gw_previous *previous = NULL;
    if (!cli->options.n_arguments) return complain("which project? Give a file, or - for standard input");
    if (!is_readable(cli)) return EXIT_CALL;
    int code = open_project(&run, cli);
    if (code) return code;
    const size_t before = run.diags.n;
    const bool read = gw_submittal_load(&submittal, &run.model, cli->options.arguments[1]);
    const bool known = !read || read_previous(cli, &previous, &run, &submittal);
    say_later(cli, &run.diags, before);
    if (!read || !known) return code_of(&run.diags);
    if (writes_over_inputs(cli, &run.model)) return EXIT_CALL;
    gw_answer_demand(&run.answer, &run.ask);
    write_up(&run, cli);
    gw_review_submittal(&review, &run.ask, &run.answer, &submittal, previous);
    doubt_decisions(&run, &review);
    const struct gw_reviewed reviewed = {&run.results, &review};
    const struct gw_result result = gw_result_review(&cli->arena, &reviewed);
    const int written = deliver_result(cli, &result);
    return written ? written : gw_below_unaccepted(&run.answer) ? EXIT_UNSHOWN : code_of_review(&review);
}
