/* 'calc': one case from the command line, or a stream of them from standard input. */
#include "cli.h"
#include "near_miss.h"
#include "writer.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

static const struct gw_calc_kind *find_kind(struct cli *cli)
{
    size_t n;
    const struct gw_calc_kind *const *kinds = gw_calc_kinds(&n);
    if (!cli->options.n_arguments) {
        complain("which kind? 'galeward calc --list' lists them");
        return NULL;
    }
    const char *name = cli->options.arguments[0];
    const struct gw_calc_kind *kind = gw_calc_find(name);
    if (kind) return kind;
    const char **names = gw_alloc(&cli->arena, n, sizeof(const char *));
    for (size_t i = 0; i < n; i++) names[i] = kinds[i]->name;
    complain("'%s' is not a kind%s ('galeward calc --list' lists them)", name, did_you_mean(cli, name, names, n));
    return NULL;
}

static int list_kinds(struct cli *cli)
{
    struct gw_text text;
    size_t n;
    const struct gw_calc_kind *const *kinds = gw_calc_kinds(&n);
    gw_text_init(&text, &cli->arena);
    for (size_t i = 0; i < n; i++) {
        gw_text_addf(&text, "%s", kinds[i]->name);
        gw_text_repeat(&text, ' ', strlen(kinds[i]->name) < 18 ? 18 - strlen(kinds[i]->name) : 1);
        gw_text_addf(&text, "%s%s\n", kinds[i]->help, gw_drawing_find(kinds[i]->name) ? " [drawing]" : "");
    }
    return deliver(cli, &text);
}

static void add_choices(struct gw_text *out, const struct gw_choice *choices)
{
    for (const struct gw_choice *c = choices; c->name; c++) gw_text_addf(out, "%s%s", c == choices ? "" : "|", c->name);
}

static void input_key(struct gw_text *out, const struct gw_field *field, const char *prefix)
{
    const struct gw_dim_info *dim = gw_dim_info(field->dim);
    size_t from = out->length;
    gw_text_addf(out, "  %s%s", prefix, field->key);
    size_t width = out->length - from;
    gw_text_repeat(out, ' ', width < 28 ? 28 - width : 1);
    from = out->length;
    if (field->type == GW_T_CHOICE) add_choices(out, field->choices);
    else if (field->type == GW_T_BOOL) gw_text_add(out, "true|false");
    else if (field->type == GW_T_INTEGER) gw_text_add(out, "whole number");
    else if (field->type == GW_T_TEXT) gw_text_add(out, "text");
    else if (strcmp(dim->example, dim->example_si) == 0) gw_text_addf(out, "%s, %s", dim->name, dim->example);
    else gw_text_addf(out, "%s, %s or %s", dim->name, dim->example, dim->example_si);
    width = out->length - from;
    gw_text_repeat(out, ' ', width < 30 ? 30 - width : 1);
    gw_text_add(out, field->help);
    if (field->flags & GW_REQUIRED) gw_text_add(out, " (required)");
    if (field->fallback) gw_text_addf(out, " (default %s)", field->fallback);
    gw_text_add(out, "\n");
}

static void input_keys(struct gw_text *out, const struct gw_record *record, const char *prefix)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (field->type == GW_T_RECORD)
            input_keys(out, field->record, gw_format(out->arena, "%s%s.", prefix, field->key));
        else if (field->type != GW_T_NODE) input_key(out, field, prefix);
    }
}

static void output_keys(struct gw_text *out, const struct gw_record *record, const char *prefix)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (field->type == GW_T_RECORD) {
            output_keys(out, field->record, gw_format(out->arena, "%s%s.", prefix, field->key));
            continue;
        }
        size_t from = out->length;
        gw_text_addf(out, "  %s", prefix);
        gw_field_json_key(out, field);
        size_t width = out->length - from;
        if (*field->help) gw_text_repeat(out, ' ', width < 28 ? 28 - width : 1);
        gw_text_addf(out, "%s\n", field->help);
    }
}

static int kind_help(struct cli *cli, const struct gw_calc_kind *kind)
{
    const struct gw_drawing *drawing = gw_drawing_find(kind->name);
    struct gw_text text;
    gw_text_init(&text, &cli->arena);
    gw_text_addf(&text, "galeward calc %s: %s\n\n  galeward calc %s %s\n\nkeys:\n", kind->name, kind->help, kind->name,
                 kind->example);
    input_keys(&text, kind->input, "");
    gw_text_add(&text, "  units                     us|si                         unit of bare numbers\n"
                       "  id                        anything                      comes back\n"
                       "  trace                     true|false                    adds the derivation\n"
                       "\nresult, SI (null where there is none):\n");
    output_keys(&text, kind->output, "");
    gw_text_add(&text, "  notes                     what to know about the result\n"
                       "\nas people read it, rounded: --units us|si (text), --format csv or md; JSON is exact\n");
    if (drawing) gw_text_addf(&text, "\ndrawing of one case (-o FILE.svg, --units us|si):\n  %s\n", drawing->help);
    return deliver(cli, &text);
}

/* The same key twice: which one counts would be a guess. */
static bool said_before(struct cli *cli, size_t at)
{
    const char *argument = cli->options.arguments[at];
    const size_t length = strcspn(argument, "=") + 1; /* with the sign */
    for (size_t i = 1; i < at; i++)
        if (strncmp(cli->options.arguments[i], argument, length) == 0) return true;
    return false;
}

static int one_case(struct cli *cli, const struct gw_calc_kind *kind)
{
    struct gw_text text;
    const struct gw_source *source = gw_source_from(&cli->arena, "command line", "", 0);
    struct gw_node root = {.kind = GW_MAPPING, .line = 1, .column = 1, .source = source};
    for (size_t i = 1; i < cli->options.n_arguments; i++) {
        const char *argument = cli->options.arguments[i];
        size_t length = strcspn(argument, "=");
        const char *path = gw_strndup(&cli->arena, argument, length);
        if (!length || argument[length] != '=' || !gw_node_set(&cli->arena, &root, path, argument + length + 1))
            return complain("'%s': write key=value", argument);
        if (!gw_record_field(kind->input, path) && strcmp(path, "units") != 0 &&
            dashless_option(cli, cli->command, argument))
            return EXIT_CALL;
        if (said_before(cli, i)) return complain("'%s' is given twice", path);
    }
    if (wants_drawing(cli)) return draw_case(cli, kind, &root);
    if (!wants_json(cli)) return show_only(cli, kind, &root);
    gw_text_init(&text, &cli->arena);
    bool good = gw_calc_case(&text, &cli->arena, kind, &root, gw_tables_standard());
    gw_text_add(&text, "\n");
    int written = deliver(cli, &text);
    return written ? written : good ? EXIT_PASS : EXIT_UNSHOWN;
}

/* Standard input by lines. What was written is flushed before a read that may wait, so that a caller which feeds one
 * case at a time gets its answer. */
struct lines {
    char chunk[1 << 16];
    size_t at, end;
    bool done;
    int error;          /* errno of a read that failed */
    struct writer *out; /* NULL: nothing is written meanwhile */
    struct gw_text line;
};

static bool refill(struct lines *in)
{
    ssize_t n;
    if (in->out) writer_flush(in->out);
    do n = read(STDIN_FILENO, in->chunk, sizeof in->chunk);
    while (n < 0 && errno == EINTR);
    in->at = 0;
    in->end = n > 0 ? (size_t)n : 0;
    in->done = n <= 0;
    if (n < 0) in->error = errno;
    return !in->done;
}

/* The next line, without its end, into in->line; false at the end of the input. */
static bool next_line(struct lines *in)
{
    in->line.length = 0;
    gw_text_bytes(&in->line, "", 0);
    for (;;) {
        if (in->at == in->end && !refill(in)) return in->line.length > 0;
        const char *from = in->chunk + in->at, *end = memchr(from, '\n', in->end - in->at);
        size_t length = end ? (size_t)(end - from) : in->end - in->at;
        gw_text_bytes(&in->line, from, length);
        in->at += length + (end != NULL);
        if (end) break;
    }
    if (in->line.length && in->line.at[in->line.length - 1] == '\r') in->line.at[--in->line.length] = '\0';
    return true;
}

/* A drawing's case: kept until it is known to be the only one. */
struct only {
    struct gw_arena *arena;
    const char *text;
    size_t length, n;
    bool json;
};

typedef struct gw_node *reader(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags);
static reader *reader_of(bool json) { return json ? gw_json_read : gw_yaml_read; }

struct stream {
    const struct gw_calc_kind *kind;
    struct only *only;       /* NULL: each case is run when it has been read */
    struct show *show;       /* NULL: JSON */
    struct gw_arena *arena;  /* of one case */
    struct gw_text document; /* the YAML document being collected */
    unsigned line, first;    /* of the input: read last, and where the case begins */
    struct writer *out;
    bool any_error;
};

/* `first` is the line of the input on which the case begins. */
static void reading_error(struct gw_text *out, const struct gw_diags *diags, unsigned first)
{
    struct gw_json json;
    const struct gw_diag *diag = diags->items;
    gw_json_init(&json, out, false);
    gw_json_open(&json, '{');
    gw_json_key(&json, "error");
    gw_json_open(&json, '{');
    gw_json_key(&json, "code");
    gw_json_text(&json, diag->code);
    gw_json_key(&json, "key");
    gw_json_text(&json, diag->key);
    gw_json_key(&json, "message");
    gw_json_text(&json, diag->message);
    gw_json_key(&json, "line");
    gw_json_integer(&json, first + diag->line - 1);
    gw_json_key(&json, "column");
    gw_json_integer(&json, diag->column);
    gw_json_close(&json, '}');
    gw_json_close(&json, '}');
}

static void keep_case(struct only *only, const char *text, size_t length, bool json)
{
    if (only->n++) return;
    only->json = json;
    only->text = gw_strndup(only->arena, text, length);
    only->length = length;
}

static bool json_case(struct stream *s, struct gw_text *out, const struct gw_node *node, const struct gw_diags *diags)
{
    bool good = node && gw_calc_case(out, s->arena, s->kind, node, gw_tables_standard());
    if (!node) reading_error(out, diags, s->first);
    gw_text_add(out, "\n");
    return good;
}

static void run_case(struct stream *s, const char *text, size_t length, bool json)
{
    if (s->only) {
        keep_case(s->only, text, length, json);
        return;
    }
    struct gw_diags diags;
    struct gw_text out;
    gw_arena_rewind(s->arena);
    gw_diags_init(&diags, s->arena);
    gw_text_init(&out, s->arena);
    const struct gw_source *source = gw_source_from(s->arena, "<stdin>", text, length);
    const struct gw_node *node = reader_of(json)(s->arena, source, &diags);
    bool good = s->show ? show_case(s->show, &out, node, &diags) : json_case(s, &out, node, &diags);
    if (!good) s->any_error = true;
    writer_add(s->out, out.at, out.length);
}

/* Only blanks and comments: no case. */
static bool says_something(const struct gw_text *document)
{
    bool comment = false;
    for (size_t i = 0; i < document->length; i++) {
        char c = document->at[i];
        comment = (comment && c != '\n') || c == '#';
        if (!comment && (!c || !strchr(" \t\r\n", c))) return true;
    }
    return false;
}

static void end_document(struct stream *s)
{
    if (says_something(&s->document)) run_case(s, s->document.at, s->document.length, false);
    s->document.length = 0;
    gw_text_bytes(&s->document, "", 0);
}

static bool is_marker(const struct gw_text *line)
{
    bool dashes = strncmp(line->at, "---", 3) == 0 || strncmp(line->at, "...", 3) == 0;
    return dashes && 3 + strspn(line->at + 3, " \t") == line->length;
}

static void take_line(struct stream *s, const struct gw_text *line)
{
    const size_t mark = ++s->line == 1 && strncmp(line->at, "\xEF\xBB\xBF{", 4) == 0 ? 3 : 0; /* byte order */
    if (line->at[mark] == '{') {
        end_document(s);
        s->first = s->line;
        run_case(s, line->at + mark, line->length - mark, true);
    } else if (is_marker(line)) {
        end_document(s);
    } else {
        if (!s->document.length) s->first = s->line;
        gw_text_bytes(&s->document, line->at, line->length);
        gw_text_add(&s->document, "\n");
    }
}

/* EXIT_OURS after a complaint about the input. */
static int read_stream(struct cli *cli, struct stream *s)
{
    struct lines *in = gw_alloc(&cli->arena, 1, sizeof *in);
    in->out = s->out;
    s->arena = &cli->scratch;
    gw_text_init(&in->line, &cli->arena);
    gw_text_init(&s->document, &cli->arena);
    while (next_line(in) && !(s->out && s->out->error)) take_line(s, &in->line);
    if (in->error) return refuse("cannot read standard input: %s", strerror(in->error));
    end_document(s);
    return EXIT_PASS;
}

/* With -o the file appears when the stream has ended. */
static int run_stream(struct cli *cli, const struct gw_calc_kind *kind)
{
    struct writer writer;
    struct show show = {.cli = cli, .kind = kind};
    struct stream s = {.kind = kind, .out = &writer, .show = wants_json(cli) ? NULL : &show};
    if (!writer_open(&writer, &cli->arena, cli->options.output)) return EXIT_OURS;
    int code = read_stream(cli, &s);
    return writer_close(&writer, code ? code : s.any_error ? EXIT_UNSHOWN : EXIT_PASS);
}

static int draw_stream(struct cli *cli, const struct gw_calc_kind *kind)
{
    struct only only = {.arena = &cli->arena};
    struct stream s = {.kind = kind, .only = &only};
    struct gw_diags diags;
    gw_diags_init(&diags, &cli->arena);
    int code = read_stream(cli, &s);
    if (code) return code;
    if (only.n != 1) return complain("%s: a drawing shows one case; here are %zu", cli->options.output, only.n);
    const struct gw_source *source = gw_source_from(&cli->arena, "<stdin>", only.text, only.length);
    const struct gw_node *node = reader_of(only.json)(&cli->arena, source, &diags);
    if (node) return draw_case(cli, kind, node);
    say_diags(&cli->arena, &diags);
    return EXIT_UNSHOWN;
}

/* JSON is SI: who asks for units reads the answer of a case, and a stream is read by a program. */
static int check_output(struct cli *cli, const struct gw_calc_kind *kind, bool one)
{
    struct options *o = &cli->options;
    if (wants_drawing(cli)) return check_drawing(cli, kind);
    if (!o->units || !wants_json(cli)) return EXIT_PASS;
    if (one && !o->format_said) o->format = gw_format_first(cli->command->parts);
    else
        return complain("--units: JSON is SI; units go with --format text, csv or md%s",
                        one ? "" : ", of a stream too");
    return EXIT_PASS;
}

int cmd_calc(struct cli *cli)
{
    const struct options *o = &cli->options;
    if (o->list) return list_kinds(cli);
    const struct gw_calc_kind *kind = find_kind(cli);
    if (!kind) return EXIT_CALL;
    if (o->help) return kind_help(cli, kind);
    bool one = o->n_arguments > 1 && !(o->n_arguments == 2 && strcmp(o->arguments[1], "-") == 0);
    if (check_output(cli, kind, one) != EXIT_PASS) return EXIT_CALL;
    if (one) return one_case(cli, kind);
    if (writes_over(cli, "-", "this command, as its standard input")) return EXIT_CALL;
    if (wants_drawing(cli)) return draw_stream(cli, kind);
    return run_stream(cli, kind);
}
