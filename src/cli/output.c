/* What leaves the program: results whole, complaints to standard error. */
#include "cli.h"
#include "writer.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static void say(const char *format, va_list args)
{
    char message[2048];
    vsnprintf(message, sizeof message, format, args);
    fputs("galeward: ", stderr);
    for (size_t at = 0, length = strlen(message); at < length;) {
        size_t unsafe, span = gw_safe_span(message + at, length - at, &unsafe);
        fwrite(message + at, 1, span, stderr);
        if (unsafe) fputs(gw_safe_instead(message + at + span), stderr);
        at += span + unsafe;
    }
    fputs("\n", stderr);
}

int complain(const char *format, ...)
{
    va_list args;
    va_start(args, format);
    say(format, args);
    va_end(args);
    return EXIT_CALL;
}

int refuse(const char *format, ...)
{
    va_list args;
    va_start(args, format);
    say(format, args);
    va_end(args);
    return EXIT_OURS;
}

const char *nearest_name(const char *name, const char *const *names, size_t n)
{
    const char *best = NULL;
    size_t least = strlen(name) / 3 + 2;
    for (size_t i = 0; i < n; i++) {
        size_t d = gw_edit_distance(name, names[i], least);
        if (d >= least) continue;
        least = d;
        best = names[i];
    }
    return best;
}

const char *did_you_mean(struct cli *cli, const char *name, const char *const *names, size_t n)
{
    const char *nearest = nearest_name(name, names, n);
    return nearest ? gw_format(&cli->arena, "; did you mean '%s'?", nearest) : "";
}

bool writes_over(const struct cli *cli, const char *read, const char *by)
{
    struct stat to, from;
    const char *output = cli->options.output;
    if (!output || stat(output, &to) != 0 || !S_ISREG(to.st_mode)) return false;
    const bool standard = strcmp(read, "-") == 0 || strcmp(read, "<stdin>") == 0;
    if ((standard ? fstat(STDIN_FILENO, &from) : stat(read, &from)) != 0) return false;
    if (from.st_dev != to.st_dev || from.st_ino != to.st_ino) return false;
    complain("%s is read by %s: name another file after -o", output, by);
    return true;
}

int deliver(struct cli *cli, const struct gw_text *text)
{
    struct writer writer;
    if (!writer_open(&writer, &cli->arena, cli->options.output)) return EXIT_OURS;
    writer_add(&writer, text->at, text->length);
    return writer_close(&writer, EXIT_PASS);
}

static bool wants_color(const struct options *options)
{
    const char *none = getenv("NO_COLOR"), *terminal = getenv("TERM");
    bool refused = (none && *none) || (terminal && strcmp(terminal, "dumb") == 0);
    return !options->output && !refused && isatty(STDOUT_FILENO);
}

static int list_drawings(struct cli *cli, const struct gw_pictures *pictures)
{
    struct gw_text text;
    gw_text_init(&text, &cli->arena);
    for (size_t i = 0; i < pictures->n; i++)
        gw_text_addf(&text, "%s  %s\n", pictures->items[i].name, pictures->items[i].figure.title);
    return deliver(cli, &text);
}

/* The drawing that was asked for, else the first; false after a complaint. */
static bool choose_drawing(struct cli *cli, struct gw_result *result)
{
    const struct gw_pictures *pictures = result->pictures;
    const char *name = cli->options.drawing;
    if (!(cli->options.format->needs & GW_HAS_FIGURE)) {
        if (name) complain("--drawing %s: -o FILE.svg holds one drawing; other files hold those of their pages", name);
        return !name;
    }
    const struct gw_picture *found = !pictures->n ? NULL : name ? gw_picture_named(pictures, name) : pictures->items;
    if (found) result->figure = &found->figure;
    else if (!pictures->n)
        complain("no drawing: elevations are of walls; 'explain' draws mullions, and lites held on four edges");
    else complain("no drawing is named '%s'; --drawing list names them", name);
    return found;
}

int deliver_result(struct cli *cli, const struct gw_result *result)
{
    struct gw_engine none = {.tables = gw_tables_standard()};
    struct gw_result chosen = *result;
    struct gw_text text;
    gw_text_init(&text, &cli->arena);
    if (result->pictures && cli->options.drawing && strcmp(cli->options.drawing, "list") == 0)
        return list_drawings(cli, result->pictures);
    if (result->pictures && !choose_drawing(cli, &chosen)) return EXIT_CALL;
    if (cli->options.format->render(&text, &chosen, &none, wants_color(&cli->options)))
        return complain("%s", gw_fault_text(&cli->arena, &none.fault, result->shown));
    return deliver(cli, &text);
}
