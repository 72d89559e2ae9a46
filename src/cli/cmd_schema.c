#include "cli.h"

#include "galeward/against.h"
#include "galeward/readings.h"
#include "galeward/review.h"

#include <string.h>

static const struct gw_calc_kind *kind_named(const char *name)
{
    return strncmp(name, "calc-", 5) == 0 ? gw_calc_find(name + 5) : NULL;
}

/* What the file that is read looks like; NULL for results, which are only written. */
static const struct gw_record *record_read(const char *name)
{
    if (strcmp(name, "project") == 0) return &gw_project_record;
    if (strcmp(name, "system") == 0) return &gw_system_record;
    if (strcmp(name, "requirements") == 0) return &gw_requirement_set_record;
    if (strcmp(name, "submittal") == 0) return &gw_submittal_record;
    if (strcmp(name, "readings") == 0) return &gw_reading_record;
    const struct gw_calc_kind *kind = kind_named(name);
    return kind ? kind->input : NULL;
}

static const struct gw_record *record_written(const char *name)
{
    if (strcmp(name, "results") == 0) return &gw_results_record;
    if (strcmp(name, "explanation") == 0) return &gw_explanation_record;
    if (strcmp(name, "selections") == 0) return &gw_selections_record;
    if (strcmp(name, "changes") == 0) return &gw_against_record;
    if (strcmp(name, "specification") == 0) return &gw_specification_record;
    if (strcmp(name, "review") == 0) return &gw_review_record;
    if (strcmp(name, "inspection") == 0) return &gw_inspection_record;
    if (strcmp(name, "inspection-sheet") == 0) return &gw_inspection_sheet_record;
    const struct gw_calc_kind *kind = kind_named(name);
    return kind ? kind->output : NULL;
}

static int unknown_schema(struct cli *cli, const char *name)
{
    static const char *const names[] = {"project", "system",      "requirements",     "submittal", "readings",
                                        "results", "explanation", "selections",       "changes",   "specification",
                                        "review",  "inspection",  "inspection-sheet", "calc-wind"};
    return complain(
        "there is no schema '%s': project, system, requirements, submittal, readings, results, "
        "explanation, selections, changes, specification, review, inspection, inspection-sheet or calc-KIND%s",
        name, did_you_mean(cli, name, names, sizeof names / sizeof *names));
}

int cmd_schema(struct cli *cli)
{
    struct gw_text text;
    struct options *o = &cli->options;
    const char *name = o->n_arguments ? o->arguments[0] : "project";
    const struct gw_schema schema = {gw_format(&cli->arena, "galeward %s", name), record_read(name),
                                     record_written(name)};
    if (!schema.in && !schema.out) return unknown_schema(cli, name);
    gw_text_init(&text, &cli->arena);
    o->format->schema(&text, &schema);
    return deliver(cli, &text);
}
