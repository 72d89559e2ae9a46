#include "cli.h"

#include <string.h>

static const struct gw_calc_kind *kind_named(const char *name)
{
    return strncmp(name, "calc-", 5) == 0 ? gw_calc_find(name + 5) : NULL;
}

/* What the file that is read looks like; NULL for the results, which are only written. */
static const struct gw_record *record_read(const char *name)
{
    if (strcmp(name, "project") == 0) return &gw_project_record;
    if (strcmp(name, "system") == 0) return &gw_system_record;
    const struct gw_calc_kind *kind = kind_named(name);
    return kind ? kind->input : NULL;
}

static const struct gw_record *record_written(const char *name)
{
    if (strcmp(name, "results") == 0) return &gw_results_record;
    const struct gw_calc_kind *kind = kind_named(name);
    return kind ? kind->output : NULL;
}

static void write_markdown(struct gw_text *out, const struct gw_record *in, const struct gw_record *result)
{
    if (in) gw_schema_markdown(out, in);
    if (in && result) gw_text_add(out, "\n");
    if (result) gw_schema_output_markdown(out, result);
}

static int unknown_schema(struct cli *cli, const char *name)
{
    static const char *const names[] = {"project", "system", "results", "calc-wind"};
    return complain("there is no schema '%s': project, system, results or calc-KIND%s", name,
                    did_you_mean(cli, name, names, sizeof names / sizeof *names));
}

int cmd_schema(struct cli *cli)
{
    struct gw_text text;
    struct options *o = &cli->options;
    const char *name = o->n_arguments ? o->arguments[0] : "project";
    const struct gw_record *in = record_read(name), *result = record_written(name);
    if (!in && !result) return unknown_schema(cli, name);
    enum format format = o->format || o->output ? format_of(o) : FORMAT_JSON;
    if (format != FORMAT_MD && format != FORMAT_JSON) return complain("a schema is written as json or md");
    gw_text_init(&text, &cli->arena);
    if (format == FORMAT_MD) write_markdown(&text, in, result);
    else if (in) gw_schema_json(&text, in, gw_format(&cli->arena, "galeward %s", name));
    else gw_schema_results(&text);
    return deliver(cli, &text);
}
