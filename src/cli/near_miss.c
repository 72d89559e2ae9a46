/* What was meant, perhaps: other programs' words for our options, their values and our commands. */
#include "near_miss.h"

#include <stdio.h>
#include <string.h>

struct meant {
    const char *written, *means;
};

static const struct meant OPTION_WORDS[] = {{"-f", "--format"},
                                            {"--fmt", "--format"},
                                            {"--type", "--format"},
                                            {"--unit", "--units"},
                                            {"-u", "--units"},
                                            {"--out", "--output"},
                                            {"--outfile", "--output"},
                                            {"--save", "--output"},
                                            {"-s", "--set"},
                                            {"--var", "--vary"},
                                            {"--text", "--format text"},
                                            {"--txt", "--format text"},
                                            {"--json", "--format json"},
                                            {"--csv", "--format csv"},
                                            {"--md", "--format md"},
                                            {"--markdown", "--format md"},
                                            {"--svg", "--format svg"},
                                            {"--us", "--units us"},
                                            {"--ip", "--units us"},
                                            {"--imperial", "--units us"},
                                            {"--si", "--units si"},
                                            {"--metric", "--units si"},
                                            {"--help-all", "--help"},
                                            {"--usage", "--help"},
                                            {"-?", "--help"},
                                            {"-a", "--all"},
                                            {"-l", "--list"},
                                            {NULL, NULL}};
static const struct meant UNIT_WORDS[] = {{"imperial", "us"}, {"english", "us"}, {"customary", "us"}, {"ip", "us"},
                                          {"inch", "us"},     {"in", "us"},      {"ft", "us"},        {"usa", "us"},
                                          {"metric", "si"},   {"mks", "si"},     {"m", "si"},         {"mm", "si"},
                                          {NULL, NULL}};
static const struct meant FORMAT_WORDS[] = {{"txt", "text"},   {"plain", "text"},      {"markdown", "md"},
                                            {"jsonl", "json"}, {"spreadsheet", "csv"}, {"xls", "csv"},
                                            {"xlsx", "csv"},   {"excel", "csv"},       {NULL, NULL}};
static const struct meant COMMAND_WORDS[] = {{"version", "--version"}, {"-v", "--version"},   {"-V", "--version"},
                                             {"init", "new"},          {"create", "new"},     {"judge", "check"},
                                             {"verify", "check"},      {"calculate", "calc"}, {"compute", "calc"},
                                             {"loads", "demand"},      {NULL, NULL}};

static const char *lower(struct gw_arena *arena, const char *word)
{
    char *out = gw_alloc(arena, strlen(word) + 1, 1);
    for (size_t i = 0; word[i]; i++) out[i] = (char)(word[i] >= 'A' && word[i] <= 'Z' ? word[i] - 'A' + 'a' : word[i]);
    return out;
}

static const char *looked_up(const struct meant *list, const char *word)
{
    while (list->written && strcmp(list->written, word) != 0) list++;
    return list->means;
}

/* In any case of letters: by the list, then by likeness; names end with NULL. */
static const char *meant_word(struct gw_arena *arena, const struct meant *list, const char *word,
                              const char *const *names)
{
    const char *small = lower(arena, word), *means = looked_up(list, small);
    size_t n = 0;
    for (; names[n]; n++) {
        if (means && strcmp(names[n], means) == 0) return means;
        if (strcmp(names[n], small) == 0) return names[n];
    }
    return strlen(word) > 3 ? nearest_name(small, names, n) : NULL;
}

static const char *question(struct cli *cli, const char *word)
{
    return word ? gw_format(&cli->arena, "; did you mean '%s'?", word) : "";
}

const char *meant_units(struct cli *cli, const char *value)
{
    static const char *const names[] = {"us", "si", NULL};
    return question(cli, meant_word(&cli->arena, UNIT_WORDS, value, names));
}

const char *meant_format(struct cli *cli, const char *value, const char *const *names)
{
    return question(cli, meant_word(&cli->arena, FORMAT_WORDS, value, names));
}

/* Options --------------------------------------------------------------------------------------------------------- */

/* "demand, check and explain": the commands that take the option. */
static const char *takers(struct cli *cli, unsigned bit)
{
    struct gw_text list;
    const char *last = NULL;
    size_t n, written = 0;
    const struct command *commands = command_list(&n);
    gw_text_init(&list, &cli->arena);
    for (size_t i = 0; i < n; i++) {
        if (!(commands[i].takes & bit)) continue;
        if (last) gw_text_addf(&list, "%s%s", written++ ? ", " : "", last);
        last = commands[i].name;
    }
    if (last) gw_text_addf(&list, "%s%s", written ? " and " : "", last);
    return list.length ? list.at : "";
}

static bool takes(const struct command *command, unsigned bit) { return !bit || command->takes & bit; }

/* "--format csv" of "-f csv" or "--fmt=csv". */
static const char *with_value(struct cli *cli, const char *means, const char *value)
{
    return !value || strchr(means, ' ') ? means : gw_format(&cli->arena, "%s %s", means, value);
}

/* Another program's word: what to write instead; NULL where the command has no such option. */
static const char *instead(struct cli *cli, const struct command *command, const char *name, const char *value)
{
    unsigned bit;
    bool wants_value;
    const char *means = looked_up(OPTION_WORDS, name);
    if (!means && option_bit_of(lower(&cli->arena, name), &bit, &wants_value)) means = lower(&cli->arena, name);
    if (!means) return NULL;
    const char *own = gw_strndup(&cli->arena, means, strcspn(means, " "));
    if (!option_bit_of(own, &bit, &wants_value) || !takes(command, bit)) return NULL;
    return with_value(cli, means, wants_value ? value : NULL);
}

/* A key of a case, given as an option. */
static bool is_case_key(const struct cli *cli, const char *name)
{
    const struct gw_calc_kind *kind = cli->options.n_arguments ? gw_calc_find(cli->options.arguments[0]) : NULL;
    return cli->command->most == ANY_NUMBER && kind && strncmp(name, "--", 2) == 0 &&
           gw_record_field(kind->input, name + 2);
}

/* By likeness: of the command's own options, else of any. */
static int nearest_option(struct cli *cli, const struct command *command, const char *name)
{
    const char *own[64], *others[64];
    size_t n = 0, n_others = 0;
    unsigned bit;
    bool wants_value;
    const char *option;
    for (size_t i = 0; (option = option_name(i)) != NULL && i < 64; i++) {
        option_bit_of(option, &bit, &wants_value);
        if (takes(command, bit)) own[n++] = option;
        else others[n_others++] = option;
    }
    const char *means = looked_up(OPTION_WORDS, name); /* of an option that the command does not take */
    const char *near = means ? NULL : nearest_name(name, own, n), *other = NULL;
    if (means) other = gw_strndup(&cli->arena, means, strcspn(means, " "));
    else if (!near) other = nearest_name(name, others, n_others);
    if (near) return complain("'%s' is not an option of '%s'; did you mean '%s'?", name, command->name, near);
    if (!other)
        return complain("'%s' is not an option of '%s' ('galeward %s --help' lists them)", name, command->name,
                        command->name);
    option_bit_of(other, &bit, &wants_value);
    return complain("'%s' is not an option of '%s'; '%s' is an option of %s", name, command->name, other,
                    takers(cli, bit));
}

int unknown_option(struct cli *cli, const struct command *command, const char *word, const char *next)
{
    const size_t length = strncmp(word, "--", 2) == 0 ? strcspn(word, "=") : strlen(word);
    const char *name = gw_strndup(&cli->arena, word, length);
    const char *value = word[length] ? word + length + 1 : next && next[0] != '-' ? next : NULL;
    unsigned bit;
    bool wants_value;
    if (option_bit_of(name, &bit, &wants_value))
        return complain("'%s' is an option of %s, not of '%s'", name, takers(cli, bit), command->name);
    const char *write = instead(cli, command, name, value);
    if (write) return complain("'%s' is not an option of '%s'; write %s", name, command->name, write);
    if (strcmp(name, "--version") == 0) return complain("write galeward --version, without '%s'", command->name);
    if (command->takes & TAKES_SET && (strcmp(name, "--project") == 0 || strcmp(name, "--file") == 0))
        return complain("the project stands by itself, without '%s': galeward %s %s", name, command->name,
                        value ? value : "PROJECT");
    if (is_case_key(cli, name))
        return complain("a key of a case has no dashes: write %s=%s", name + 2, value ? value : "VALUE");
    return nearest_option(cli, command, name);
}

int dashless_option(struct cli *cli, const struct command *command, const char *word)
{
    const size_t length = strcspn(word, "=");
    const char *name = gw_format(&cli->arena, "--%s", gw_strndup(&cli->arena, word, length));
    const char *value = word[length] ? word + length + 1 : NULL;
    unsigned bit;
    bool wants_value;
    if (!value) return EXIT_PASS;
    const char *write = instead(cli, command, name, value);
    if (write) return complain("'%s': write %s", word, write);
    if (option_bit_of(name, &bit, &wants_value) && bit)
        return complain("'%s': '%s' is an option of %s, not of '%s'", word, name, takers(cli, bit), command->name);
    return EXIT_PASS;
}

/* Commands --------------------------------------------------------------------------------------------------------- */

static bool ends_with(const char *word, const char *end)
{
    size_t length = strlen(word), tail = strlen(end);
    return length >= tail && strcmp(word + length - tail, end) == 0;
}

int unknown_command(struct cli *cli, const char *name, const char *const *names, size_t n)
{
    unsigned bit;
    bool wants_value;
    const char *small = lower(&cli->arena, name), *means = looked_up(COMMAND_WORDS, name);
    if (!means) means = looked_up(COMMAND_WORDS, small);
    if (means) return complain("'%s' is not a command; did you mean 'galeward %s'?", name, means);
    if (strcmp(small, "draw") == 0 || strcmp(small, "plot") == 0)
        return complain("'%s' is not a command; calc draws one case: galeward calc plate width='48 in' height='72 in' "
                        "thickness='5.56 mm' pressure='40 psf' -o plate.svg ('galeward calc --list' marks the kinds)",
                        name);
    if (ends_with(small, ".yaml") || ends_with(small, ".yml"))
        return complain("'%s' is not a command; did you mean 'galeward check %s'?", name, name);
    const char *option = gw_strndup(&cli->arena, name, strcspn(name, "="));
    if (option_bit_of(option, &bit, &wants_value) || looked_up(OPTION_WORDS, option))
        return complain("'%s' comes after the command: galeward COMMAND ... %s", option, name);
    return complain("'%s' is not a command%s (galeward --help lists them)", name, did_you_mean(cli, small, names, n));
}
