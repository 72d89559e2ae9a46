/* 'calc' for people: its results in their units, as a page or a line of a spreadsheet. */
#include "cli.h"

#include "galeward/calc_page.h"

#include <string.h>

bool wants_json(const struct cli *cli) { return !(cli->options.format->needs & ~(unsigned)GW_HAS_DATA); }

static enum gw_units units_of(const struct cli *cli, const struct gw_calc_answer *answer)
{
    enum gw_units asked = cli->options.units;
    return asked ? asked : answer->units ? answer->units : GW_US;
}

static bool run(const struct show *show, struct gw_calc_answer *answer, struct gw_arena *arena,
                const struct gw_node *node, const struct gw_diags *diags)
{
    enum gw_units words = show->n ? show->shown : show->cli->options.units;
    if (node) return gw_calc_run(answer, arena, show->kind, node, gw_tables_standard(), words);
    const struct gw_diag *wrong = diags->items;
    *answer = (struct gw_calc_answer){.error_code = wrong->code, .error_key = wrong->key, .error = wrong->message};
    return false;
}

bool show_case(struct show *show, struct gw_text *out, const struct gw_node *node, const struct gw_diags *diags)
{
    struct gw_engine none = {.tables = gw_tables_standard()};
    struct gw_calc_answer answer;
    bool good = run(show, &answer, out->arena, node, diags);
    if (!show->n) show->shown = units_of(show->cli, &answer);
    const struct gw_result result = gw_result_calc(out->arena, show->kind, &answer, show->n == 0, show->shown);
    show->n++;
    show->cli->options.format->render(out, &result, &none, false);
    return good;
}

int show_only(struct cli *cli, const struct gw_calc_kind *kind, const struct gw_node *node)
{
    struct gw_calc_answer answer;
    if (!gw_calc_run(&answer, &cli->arena, kind, node, gw_tables_standard(), cli->options.units))
        return refused_case(kind, answer.error_code, answer.error_key, answer.error);
    const struct gw_result result = gw_result_calc(&cli->arena, kind, &answer, true, units_of(cli, &answer));
    return deliver_result(cli, &result);
}
