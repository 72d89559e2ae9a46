/* Options, from one table. */
#include "cli.h"
#include "near_miss.h"

#include <stddef.h>
#include <stdio.h>
#include <string.h>

struct option {
    const char *name, *letter, *value; /* value: its word in the help, NULL for a switch */
    unsigned bit;                      /* enum option_bit; 0: every command */
    const char *help;
    bool (*set)(struct cli *cli, const char *value); /* NULL: it is kept as it is: */
    size_t at; /* offset in struct options: of a switch its bool, else of the text of its value */
};
#define SWITCH(member) .at = offsetof(struct options, member)
#define TEXT(member) .at = offsetof(struct options, member)

static bool set_format(struct cli *cli, const char *value)
{
    size_t n, written = 0;
    const struct gw_format *formats = gw_formats(&n);
    const char **names = gw_alloc(&cli->arena, n + 1, sizeof(const char *));
    unsigned parts = cli->command->parts;
    cli->options.format = gw_format_named(value);
    cli->options.format_said = true;
    if (cli->options.format && gw_format_can(cli->options.format, parts)) return true;
    for (size_t i = 0; i < n; i++)
        if (gw_format_can(&formats[i], parts)) names[written++] = formats[i].name;
    complain("--format %s: %s%s", value, gw_format_names(&cli->arena, parts, false), meant_format(cli, value, names));
    return false;
}

static bool set_output(struct cli *cli, const char *value)
{
    cli->options.output = strcmp(value, "-") == 0 ? NULL : value;
    return true;
}

static bool set_units(struct cli *cli, const char *value)
{
    for (const struct gw_choice *c = gw_units_choices; c->name; c++)
        if (strcmp(c->name, value) == 0) cli->options.units = (enum gw_units)c->value;
    if (cli->options.units) return true;
    complain("--units %s: us or si%s", value, meant_units(cli, value));
    return false;
}

static bool needs_equals(const char *option, const char *value)
{
    const char *equals = strchr(value, '=');
    if (equals && equals != value && equals[1]) return true;
    complain("%s %s: write key=value", option, value);
    return false;
}

static bool add_vary(struct cli *cli, const char *value)
{
    cli->options.vary[cli->options.n_vary++] = value;
    return needs_equals("--vary", value);
}

static bool add_set(struct cli *cli, const char *value)
{
    cli->options.set[cli->options.n_set++] = value;
    return needs_equals("--set", value);
}

static bool add_with(struct cli *cli, const char *value)
{
    cli->options.with[cli->options.n_with++] = value;
    return true;
}

/* Help that the registry of formats completes. */
static const char FORMATS[] = "formats", ENDINGS[] = "endings";

static const struct option OPTIONS[] = {
    {"--format", NULL, "FORMAT", TAKES_FORMAT, FORMATS, .set = set_format},
    {"--output", "-o", "FILE", 0, ENDINGS, .set = set_output},
    {"--units", NULL, "us|si", TAKES_UNITS, "units of the output; otherwise the file's own", .set = set_units},
    {"--set", NULL, "KEY=VALUE", TAKES_SET, "as if the project file said so", .set = add_set},
    {"--vary", NULL, "KEY=A,B", TAKES_VARY, "compute each value; may be repeated for every combination",
     .set = add_vary},
    {"--against", NULL, "RESULT", TAKES_AGAINST, "say what differs from this result, written before as JSON",
     TEXT(against)},
    {"--plan", NULL, "FILE", TAKES_PLAN, "judge with the choices of FILE, instead of the project's 'chosen'",
     TEXT(plan)},
    {"--with", NULL, "NAME", TAKES_PLAN, "take an option everywhere, or LITE=ALTERNATIVE; may be repeated",
     .set = add_with},
    {"--previous", NULL, "RESULT", TAKES_PREVIOUS, "number comments as this earlier result does, written as JSON",
     TEXT(previous)},
    {"--requirements", NULL, "FILE", TAKES_REQUIREMENTS, "judge by a requirement set instead of what the site asks",
     TEXT(requirements)},
    {"--drawing", NULL, "NAME", TAKES_DRAWING, "which one -o FILE.svg holds; 'list' names them all", TEXT(drawing)},
    {"--system", NULL, "FILE", TAKES_SYSTEM,
     "which of the candidates was hung, where there are several; any system, where there are none", TEXT(system)},
    {"--all", NULL, NULL, TAKES_ALL, "every row and every step, where the page shows what decides", SWITCH(all)},
    {"--sources", NULL, NULL, TAKES_SOURCES, "list the rows of the tables that are recalled, second-hand or practice",
     SWITCH(sources)},
    {"--sensitivity", NULL, NULL, TAKES_SENSITIVITY,
     "move each recalled number by 10 % and list the verdicts that flip", SWITCH(sensitivity)},
    {"--qualifications", NULL, NULL, TAKES_QUALIFICATIONS, "what the price assumes, as numbered sentences for a bid",
     SWITCH(qualifications)},
    {"--date", NULL, NULL, TAKES_DATE, "print the date of the run in the head", SWITCH(date)},
    {"--list", NULL, NULL, TAKES_LIST, "list what there is", SWITCH(list)},
    {"--help", "-h", NULL, 0, "this text", SWITCH(help)},
};
enum { N_OPTIONS = sizeof OPTIONS / sizeof *OPTIONS };

static const char *help_of(struct gw_arena *arena, const struct option *o, const struct command *command)
{
    const char *names = gw_format_names(arena, command->parts, o->help == ENDINGS);
    if (o->help == FORMATS) return names;
    if (o->help != ENDINGS) return o->help;
    return gw_format(arena, "write FILE, whole or not at all%s%s%s", *names ? "; its ending (" : "", names,
                     *names ? ") chooses the format" : "");
}

void list_options(struct gw_text *out, const struct command *command)
{
    gw_text_add(out, "options:\n");
    for (size_t i = 0; i < N_OPTIONS; i++) {
        const struct option *o = &OPTIONS[i];
        if (o->bit && !(command->takes & o->bit)) continue;
        size_t from = out->length;
        gw_text_addf(out, "  %s%s%s%s%s", o->letter ? o->letter : "", o->letter ? ", " : "", o->name,
                     o->value ? " " : "", o->value ? o->value : "");
        size_t width = out->length - from;
        gw_text_repeat(out, ' ', width < 22 ? 22 - width : 1);
        gw_text_addf(out, "%s\n", help_of(out->arena, o, command));
    }
}

/* `word` may hold its value: --name=value. */
static const struct option *find_option(const char *word)
{
    size_t length = strncmp(word, "--", 2) == 0 ? strcspn(word, "=") : strlen(word);
    for (size_t i = 0; i < N_OPTIONS; i++) {
        const struct option *o = &OPTIONS[i];
        if (strlen(o->name) == length && memcmp(o->name, word, length) == 0) return o;
        if (o->letter && strcmp(o->letter, word) == 0) return o;
    }
    return NULL;
}

bool option_bit_of(const char *name, unsigned *bit, bool *wants_value)
{
    const struct option *option = find_option(name);
    if (!option) return false;
    *bit = option->bit;
    *wants_value = option->value != NULL;
    return true;
}

const char *option_name(size_t i) { return i < N_OPTIONS ? OPTIONS[i].name : NULL; }

static bool read_option(struct cli *cli, const struct command *command, int argc, char **argv, int *i)
{
    const char *word = argv[*i], *equals = strchr(word, '='), *value = NULL;
    const struct option *option = find_option(word);
    if (!option || (option->bit && !(command->takes & option->bit))) {
        unknown_option(cli, command, word, *i + 1 < argc ? argv[*i + 1] : NULL);
        return false;
    }
    if (equals) value = equals + 1;
    if (value && !option->value) {
        complain("%s takes no value", option->name);
        return false;
    }
    if (!value && option->value) {
        if (*i + 1 == argc) {
            complain("%s wants a value: %s", option->name, option->value);
            return false;
        }
        value = argv[++*i];
    }
    if (option->set) return option->set(cli, value);
    char *at = (char *)&cli->options + option->at;
    if (option->value) *(const char **)(void *)at = value;
    else *(bool *)at = true;
    return true;
}

/* An ending that promises another format than --format gives. A file of ours is none of a command that writes none. */
static bool disagree(const struct options *o, unsigned parts)
{
    const struct gw_format *own = o->output ? gw_format_of_file(o->output) : NULL;
    if (!own || own == o->format || (own->needs & ~parts & GW_HAS_FILE)) return false;
    complain("-o %s says %s, --format %s: leave one of them out, or name another file", o->output, own->name,
             o->format->name);
    return true;
}

/* By --format, else by the ending of -o, else the first that fits. A file without an ending says nothing against it
 * where --format could not be given. */
static bool choose_format(struct cli *cli)
{
    struct options *o = &cli->options;
    const unsigned parts = cli->command->parts;
    if (!parts) return true;
    if (o->format) return !disagree(o, cli->command->parts);
    const char *own = cli->command->format;
    const bool silent = !o->output || (!strchr(o->output, '.') && (own || !(cli->command->takes & TAKES_FORMAT)));
    o->format_said = !silent;
    o->format = !silent ? gw_format_of_file(o->output) : own ? gw_format_named(own) : gw_format_first(parts);
    if (o->format && gw_format_can(o->format, parts)) return true;
    if (gw_format_named("svg") && o->format == gw_format_named("svg")) {
        return complain(
                   "%s: '%s' has no drawing; calc draws one case: galeward calc plate width='48 in' height='72 in' "
                   "thickness='5.56 mm' pressure='40 psf' -o %s ('galeward calc --list' marks the kinds)",
                   o->output, cli->command->name, o->output) == EXIT_PASS;
    }
    complain("%s: the ending must be %s%s", o->output, gw_format_names(&cli->arena, parts, true),
             cli->command->takes & TAKES_FORMAT ? ", or give --format" : "");
    return false;
}

static bool is_system_file(struct cli *cli, const char *path)
{
    struct gw_diags diags;
    gw_diags_init(&diags, &cli->arena);
    if (strcmp(path, "-") == 0) return false;
    const struct gw_source *source = gw_source_read(&cli->arena, path, &diags);
    const struct gw_node *root = source ? gw_yaml_draft(&cli->arena, source, &diags) : NULL;
    return root && gw_node_get(root, "system") && !gw_node_get(root, "project");
}

/* "east lite 3" */
static void complain_of_parts(struct cli *cli)
{
    const struct options *o = &cli->options;
    struct gw_text one;
    gw_text_init(&one, &cli->arena);
    for (size_t i = 1; i < o->n_arguments; i++) gw_text_addf(&one, "%s%s", i > 1 ? "/" : "", o->arguments[i]);
    complain("'%s' is one argument too many: an element is one word, as %s, or a place, WALL:COLUMN:STORY",
             o->arguments[2], one.at);
}

/* An argument that nothing reads would be answered by silence: a second project would seem to be judged. */
static bool surplus(struct cli *cli, const struct command *command)
{
    const struct options *o = &cli->options;
    const size_t most = o->list ? 0 : command->most;
    if (o->n_arguments <= most) return false;
    const char *extra = o->arguments[most], *own = most > 1 ? o->arguments[0] : NULL;
    if (command->takes & TAKES_SET && strchr(extra, '=')) complain("'%s': write --set %s", extra, extra);
    else if (command->run == cmd_explain && !strpbrk(o->arguments[1], "/:")) complain_of_parts(cli);
    else if (command->takes & TAKES_SET && is_system_file(cli, extra))
        complain("'%s' is a system file: list it under candidates in '%s'", extra, o->arguments[0]);
    else if (o->list) complain("'%s' is one argument too many: '%s --list' takes none", extra, command->name);
    else
        complain("'%s' is one argument too many (usage: galeward %s); for several let the shell loop: for each in A B; "
                 "do galeward %s%s%s \"$each\"; done",
                 extra, command->usage, command->name, own ? " " : "", own ? own : "");
    return true;
}

static bool take_argument(struct cli *cli, const struct command *command, const char *word)
{
    struct options *o = &cli->options;
    if (command->most != ANY_NUMBER && dashless_option(cli, command, word)) return false;
    o->arguments[o->n_arguments++] = word;
    return true;
}

/* A case of 'calc' is key=value: only words that begin with '-' are options, and '-' alone is standard input. */
bool read_options(struct cli *cli, const struct command *command, int argc, char **argv)
{
    struct options *o = &cli->options;
    cli->command = command;
    size_t room = (size_t)argc + 1;
    o->vary = gw_alloc(&cli->arena, room, sizeof(const char *));
    o->set = gw_alloc(&cli->arena, room, sizeof(const char *));
    o->with = gw_alloc(&cli->arena, room, sizeof(const char *));
    o->arguments = gw_alloc(&cli->arena, room, sizeof(const char *));
    bool only_arguments = false;
    for (int i = 0; i < argc; i++) {
        bool dashed = argv[i][0] == '-' && argv[i][1] && !only_arguments;
        if (dashed && strcmp(argv[i], "--") == 0) only_arguments = true;
        else if (!(dashed ? read_option(cli, command, argc, argv, &i) : take_argument(cli, command, argv[i])))
            return false;
    }
    return !surplus(cli, command) && choose_format(cli);
}
