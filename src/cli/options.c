/* Options, from one table. */
#include "cli.h"

#include <stdio.h>
#include <string.h>

struct option {
    const char *name, *letter, *value; /* value: its word in the help, NULL for a switch */
    unsigned bit;                      /* enum option_bit; 0: every command */
    const char *help;
    bool (*set)(struct cli *cli, const char *value);
};

static bool set_format(struct cli *cli, const char *value)
{
    static const char *const names[] = {"text", "json", "csv", "md"};
    enum { N = sizeof names / sizeof *names };
    for (size_t i = 0; i < N; i++)
        if (strcmp(names[i], value) == 0) cli->options.format = (enum format)(FORMAT_TEXT + (int)i);
    if (cli->options.format) return true;
    complain("--format %s: text, json, csv or md%s", value, did_you_mean(cli, value, names, N));
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
    complain("--units %s: us or si", value);
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

static bool set_list(struct cli *cli, const char *value)
{
    (void)value;
    cli->options.list = true;
    return true;
}

static bool set_help(struct cli *cli, const char *value)
{
    (void)value;
    cli->options.help = true;
    return true;
}

static const struct option OPTIONS[] = {
    {"--format", NULL, "FORMAT", TAKES_FORMAT, "text, json, csv or md", set_format},
    {"--output", "-o", "FILE", 0,
     "write FILE, whole or not at all; its ending (.txt .json .csv .md; of calc .json .svg) chooses the format",
     set_output},
    {"--units", NULL, "us|si", TAKES_UNITS, "units of the output; otherwise the file's own", set_units},
    {"--set", NULL, "KEY=VALUE", TAKES_SET, "as if the project file said so", add_set},
    {"--vary", NULL, "KEY=A,B", TAKES_VARY, "compute each value; may be repeated for every combination", add_vary},
    {"--list", NULL, NULL, TAKES_LIST, "list what there is", set_list},
    {"--help", "-h", NULL, 0, "this text", set_help},
};
enum { N_OPTIONS = sizeof OPTIONS / sizeof *OPTIONS };

void list_options(struct gw_text *out, unsigned takes)
{
    gw_text_add(out, "options:\n");
    for (size_t i = 0; i < N_OPTIONS; i++) {
        const struct option *o = &OPTIONS[i];
        if (o->bit && !(takes & o->bit)) continue;
        size_t from = out->length;
        gw_text_addf(out, "  %s%s%s%s%s", o->letter ? o->letter : "", o->letter ? ", " : "", o->name,
                     o->value ? " " : "", o->value ? o->value : "");
        size_t width = out->length - from;
        gw_text_repeat(out, ' ', width < 22 ? 22 - width : 1);
        gw_text_addf(out, "%s\n", o->help);
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

static bool unknown_option(struct cli *cli, const struct command *command, const char *word)
{
    const char *names[N_OPTIONS];
    size_t n = 0;
    for (size_t i = 0; i < N_OPTIONS; i++)
        if (!OPTIONS[i].bit || command->takes & OPTIONS[i].bit) names[n++] = OPTIONS[i].name;
    complain("'%s' is not an option of '%s'%s", word, command->name, did_you_mean(cli, word, names, n));
    return false;
}

static bool read_option(struct cli *cli, const struct command *command, int argc, char **argv, int *i)
{
    const char *word = argv[*i], *equals = strchr(word, '='), *value = NULL;
    const struct option *option = find_option(word);
    if (!option || (option->bit && !(command->takes & option->bit))) return unknown_option(cli, command, word);
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
    return option->set(cli, value);
}

/* A case of 'calc' is key=value: only words that begin with '-' are options, and '-' alone is standard input. */
bool read_options(struct cli *cli, const struct command *command, int argc, char **argv)
{
    struct options *o = &cli->options;
    size_t room = (size_t)argc + 1;
    o->vary = gw_alloc(&cli->arena, room, sizeof(const char *));
    o->set = gw_alloc(&cli->arena, room, sizeof(const char *));
    o->arguments = gw_alloc(&cli->arena, room, sizeof(const char *));
    bool only_arguments = false;
    for (int i = 0; i < argc; i++) {
        bool dashed = argv[i][0] == '-' && argv[i][1] && !only_arguments;
        if (dashed && strcmp(argv[i], "--") == 0) only_arguments = true;
        else if (!dashed) o->arguments[o->n_arguments++] = argv[i];
        else if (!read_option(cli, command, argc, argv, &i)) return false;
    }
    if (!o->output || !(command->takes & TAKES_FORMAT)) return true;
    return format_of(o) != FORMAT_NONE;
}

/* FORMAT_NONE after a complaint. */
enum format format_of(const struct options *o)
{
    static const struct {
        const char *ending;
        enum format format; /* FORMAT_NONE: not yet */
    } endings[] = {{".txt", FORMAT_TEXT},  {".json", FORMAT_JSON}, {".csv", FORMAT_CSV},  {".md", FORMAT_MD},
                   {".html", FORMAT_NONE}, {".pdf", FORMAT_NONE},  {".svg", FORMAT_NONE}, {".sarif", FORMAT_NONE}};
    const char *dot = o->output ? strrchr(o->output, '.') : NULL;
    for (size_t i = 0; dot && i < sizeof endings / sizeof *endings; i++) {
        if (strcmp(dot, endings[i].ending) != 0) continue;
        if (endings[i].format) return o->format ? o->format : endings[i].format;
        complain("%s: reports as %s come in a later version; write .txt, .json, .csv or .md", o->output, dot + 1);
        return FORMAT_NONE;
    }
    if (o->format || !o->output) return o->format ? o->format : FORMAT_TEXT;
    complain("%s: the ending does not say which format: .txt, .json, .csv or .md, or give --format", o->output);
    return FORMAT_NONE;
}
