/* Wrong inputs, each with its exact diagnostics and places: every case of tests/bad/NAME.cases, one test a case.
 *
 *   kind: project       what the cases from here on are: project | system | schedule | calc | submittal | readings
 *   base: project.yaml  what they change: a file of tests/bad, or none
 *   == NAME             a case; NAME that starts with warn- or good- is taken all the same, every other one is refused
 *   -old line           a change: lines that stand in the base, one below the other ...
 *    line that stays
 *   +new line           ... and what stands there then; with new lines alone, they go to the end
 *   *new\x09line        the same with \xHH and \\ for what a text file cannot show
 *   ~                   parts two changes; the second lies below the first
 *   > diagnostics       what is said, to the letter; with >* in the escapes of *
 *
 * A project is loaded and taken off; a system is the one candidate of a good project, a schedule its openings, a
 * submittal and readings go with it; a calc case is one of calc wind. GW_UPDATE=1 rewrites the diagnostics: review the
 * diff like code. */
#include "support.h"

#include "galeward/plan.h"
#include "galeward/readings.h"
#include "galeward/submittal.h"

#include <sys/stat.h>

enum kind { PROJECT, SYSTEM, SCHEDULE, CALC, SUBMITTAL, READINGS, KINDS };
static const char *const KIND_NAMES[KINDS] = {"project", "system", "schedule", "calc", "submittal", "readings"};
static const char *const KIND_FILES[KINDS] = {"%s.project.yaml",   "%s.system.yaml", "%s.schedule.csv", NULL,
                                              "%s.submittal.yaml", "%s.readings.csv"};

/* A run of whole lines. */
struct lines {
    const char *from, *to;
};

struct bad_case {
    enum kind kind;
    const char *name, *base; /* base: its text */
    struct lines change, expected;
    const char *said; /* NULL before its test has run */
};

enum { MOST_CASES = 2000, MOST_FILES = 100, OTHERS = 5 };

struct case_file {
    const char *path, *text;
    size_t first, n; /* cases */
};

static struct {
    struct gw_arena arena;
    char sources[WORLD_PATH], folder[WORLD_PATH]; /* tests/bad; where the wrong files are written and loaded */
    const char *good_project, *good_openings;
    struct case_file files[MOST_FILES];
    struct bad_case cases[MOST_CASES];
    size_t n_files, n_cases;
} all;

static _Noreturn void stop(const char *what, const char *which)
{
    fprintf(stderr, "tests/bad: %s: %s\n", what, which);
    exit(2);
}

static const char *read_text(const char *name)
{
    struct gw_diags diags;
    gw_diags_init(&diags, &all.arena);
    const char *path = name[0] == '/' ? name : gw_format(&all.arena, "%s/%s", all.sources, name);
    const struct gw_source *source = gw_source_read(&all.arena, path, &diags);
    if (!source) stop("cannot read", path);
    return source->text;
}

static const char *line_end(const char *at)
{
    const char *end = strchr(at, '\n');
    if (!end) stop("no line end", at);
    return end;
}

static const char *after_colon(const char *line)
{
    const char *value = strchr(line, ':') + 2;
    return gw_strndup(&all.arena, value, (size_t)(line_end(value) - value));
}

static enum kind kind_named(const char *name)
{
    for (int kind = 0; kind < KINDS; kind++)
        if (strcmp(name, KIND_NAMES[kind]) == 0) return (enum kind)kind;
    stop("not a kind", name);
}

/* The lines from `at` on that begin with one of `marks`. */
static struct lines lines_marked(const char *at, const char *marks)
{
    struct lines run = {at, at};
    while (*run.to && strchr(marks, *run.to)) run.to = line_end(run.to) + 1;
    return run;
}

static void read_cases(struct case_file *file)
{
    enum kind kind = KINDS;
    const char *base = NULL;
    file->text = read_text(file->path);
    file->first = all.n_cases;
    for (const char *at = file->text; *at;) {
        const char *next = line_end(at) + 1;
        if (strncmp(at, "kind: ", 6) == 0) {
            kind = kind_named(after_colon(at));
        } else if (strncmp(at, "base: ", 6) == 0) {
            base = after_colon(at);
            base = strcmp(base, "none") == 0 ? "" : read_text(base);
        } else if (strncmp(at, "== ", 3) == 0) {
            if (all.n_cases == MOST_CASES || kind == KINDS || !base) stop("case out of place", at);
            struct bad_case *c = &all.cases[all.n_cases++];
            *c = (struct bad_case){.kind = kind, .base = base, .change = lines_marked(next, " -+*~")};
            c->name = gw_strndup(&all.arena, at + 3, (size_t)(next - 1 - (at + 3)));
            c->expected = lines_marked(c->change.to, ">");
            next = c->expected.to;
        } else if (*at != '\n' && *at != '#') {
            stop("not a line of a case file", at);
        }
        at = next;
    }
    file->n = all.n_cases - file->first;
}

static void add_unescaped(struct gw_text *out, const char *at, const char *end)
{
    while (at < end) {
        char byte = *at++;
        if (byte == '\\' && *at == 'x') {
            const char hex[3] = {at[1], at[2], '\0'};
            byte = (char)strtoul(hex, NULL, 16);
            at += 3;
        } else if (byte == '\\') {
            byte = *at++;
        }
        gw_text_bytes(out, &byte, 1);
    }
}

/* Where the old lines stand in the base from `rest` on. */
static const char *find_lines(const char *rest, const char *lines, const char *name)
{
    for (const char *at = rest; *at; at = line_end(at) + 1)
        if (strncmp(at, lines, strlen(lines)) == 0) return at;
    stop("the lines to change are not in the base", name);
}

/* One change: writes the base up to it and what it puts there; the rest of the base. */
static const char *apply(struct gw_text *out, const char *rest, struct lines change, const char *name)
{
    struct gw_text old;
    gw_text_init(&old, &all.arena);
    for (const char *at = change.from; at < change.to; at = line_end(at) + 1)
        if (*at == ' ' || *at == '-') gw_text_bytes(&old, at + 1, (size_t)(line_end(at) - at));
    const char *found = old.length ? find_lines(rest, old.at, name) : rest + strlen(rest);
    gw_text_bytes(out, rest, (size_t)(found - rest));
    for (const char *at = change.from; at < change.to; at = line_end(at) + 1) {
        const char *end = line_end(at);
        if (*at == '-') continue;
        if (*at == '*') add_unescaped(out, at + 1, end);
        else gw_text_bytes(out, at + 1, (size_t)(end - at - 1));
        gw_text_add(out, "\n");
    }
    return found + old.length;
}

static void assemble(struct gw_text *out, const struct bad_case *c)
{
    const char *rest = c->base;
    gw_text_init(out, &all.arena);
    for (const char *at = c->change.from; at < c->change.to;) {
        struct lines change = lines_marked(at, " -+*");
        rest = apply(out, rest, change, c->name);
        at = *change.to == '~' ? line_end(change.to) + 1 : change.to;
    }
    gw_text_add(out, rest);
}

static void write_bytes(const char *path, const char *bytes, size_t n)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(bytes, 1, n, file), n);
    assert_int_equal(fclose(file), 0);
}

static void say(struct gw_text *out, const struct gw_diags *diags)
{
    for (size_t i = 0; i < diags->n; i++) gw_diag_print(out, &diags->items[i]);
}

static bool load(struct gw_text *said, const char *path)
{
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_plans *plans;
    gw_diags_init(&diags, said->arena);
    bool good = gw_model_load(&model, said->arena, &diags, path, NULL, 0) &&
                gw_takeoff_run(&takeoff, &model, said->arena, &diags) &&
                gw_plans_read(&plans, &model, &takeoff, said->arena);
    say(said, &diags);
    return good;
}

static bool load_submittal(struct gw_text *said, const char *path)
{
    struct gw_diags diags;
    struct gw_model model;
    struct gw_submittal submittal;
    write_bytes("good.yaml", all.good_project, strlen(all.good_project));
    gw_diags_init(&diags, said->arena);
    bool good =
        gw_model_load(&model, said->arena, &diags, "good.yaml", NULL, 0) && gw_submittal_load(&submittal, &model, path);
    say(said, &diags);
    return good;
}

static bool load_readings(struct gw_text *said, const char *path)
{
    struct gw_diags diags;
    struct gw_model model;
    struct gw_readings readings;
    write_bytes("good.yaml", all.good_project, strlen(all.good_project));
    gw_diags_init(&diags, said->arena);
    bool good = gw_model_load(&model, said->arena, &diags, "good.yaml", NULL, 0);
    const struct gw_source *source = good ? gw_source_read(said->arena, path, &diags) : NULL;
    good = source && gw_readings_read(&readings, &model, source);
    say(said, &diags);
    return good;
}

static bool load_case(struct gw_text *said, const struct bad_case *c, const struct gw_text *input)
{
    char name[WORLD_PATH];
    snprintf(name, sizeof name, KIND_FILES[c->kind], c->name);
    write_bytes(name, input->at, input->length);
    const char *path = name;
    if (c->kind == SUBMITTAL || c->kind == READINGS) {
        const bool taken = (c->kind == SUBMITTAL ? load_submittal : load_readings)(said, name);
        unlink(name);
        return taken;
    }
    if (c->kind != PROJECT) {
        const char *text = c->kind == SYSTEM ? gw_format(said->arena, "%scandidates: [%s]\n", all.good_project, name)
                                             : gw_format(said->arena, "%sopenings: %s\n", all.good_openings, name);
        write_bytes("good.yaml", text, strlen(text));
        path = "good.yaml";
    }
    bool good = load(said, path);
    unlink(name);
    return good;
}

static bool calculate(struct gw_text *said, const struct gw_text *input)
{
    struct gw_diags diags;
    gw_diags_init(&diags, said->arena);
    const struct gw_source *source = gw_source_from(said->arena, "<stdin>", input->at, input->length);
    const struct gw_node *node = gw_yaml_read(said->arena, source, &diags);
    bool good = node && gw_calc_case(said, said->arena, gw_calc_find("wind"), node, gw_tables_standard());
    if (node) gw_text_add(said, "\n");
    say(said, &diags);
    return good;
}

static const char *expected_text(const struct bad_case *c)
{
    struct gw_text text;
    gw_text_init(&text, &all.arena);
    for (const char *at = c->expected.from; at < c->expected.to; at = line_end(at) + 1) {
        if (at[1] == '*') add_unescaped(&text, at + 2, line_end(at));
        else if (at[1] == ' ') gw_text_bytes(&text, at + 2, (size_t)(line_end(at) - at - 2));
        gw_text_add(&text, "\n");
    }
    return text.at;
}

/* The diagnostics to the letter; and nothing wrong may load, nothing good be refused. */
static void case_is_told(void **state)
{
    struct bad_case *c = *state;
    struct gw_text input, said;
    assemble(&input, c);
    gw_text_init(&said, &all.arena);
    bool good = c->kind == CALC ? calculate(&said, &input) : load_case(&said, c, &input);
    assert_int_equal(good, strncmp(c->name, "warn-", 5) == 0 || strncmp(c->name, "good-", 5) == 0);
    c->said = said.at;
    if (!getenv("GW_UPDATE")) assert_string_equal(said.at, expected_text(c));
}

static void file_is_told(const char *path, const char *message)
{
    struct gw_text said;
    gw_text_init(&said, &all.arena);
    assert_false(load(&said, path));
    assert_string_equal(said.at, gw_format(&all.arena, "%s: error: cannot read the file: %s\n", path, message));
}

static void folder_is_told(void **state)
{
    (void)state;
    file_is_told("good", "it is a directory");
}

static void missing_file_is_told(void **state)
{
    (void)state;
    file_is_told("none.yaml", "No such file or directory");
}

static void huge_file_is_told(void **state)
{
    (void)state;
    enum { BYTES = 17000000 };
    char *bytes = malloc(BYTES);
    assert_non_null(bytes);
    memset(bytes, '#', BYTES);
    write_bytes("huge.yaml", bytes, BYTES);
    free(bytes);
    file_is_told("huge.yaml", "larger than 16 MiB");
    unlink("huge.yaml");
}

static void locked_file_is_told(void **state)
{
    (void)state;
    enum { NOBODY = 65534 };
    const uid_t self = geteuid();
    write_bytes("locked.yaml", "", 0);
    assert_int_equal(chmod("locked.yaml", 0), 0);
    if (self == 0) assert_int_equal(seteuid(NOBODY), 0); /* root reads it all the same */
    file_is_told("locked.yaml", "Permission denied");
    if (self == 0) assert_int_equal(seteuid(self), 0);
    unlink("locked.yaml");
}

/* A line of diagnostics as a case file holds it. */
static void add_expected(struct gw_text *out, const char *line, const char *end)
{
    bool plain = true;
    for (const char *at = line; at < end; at++) plain = plain && *at >= ' ' && *at <= '~';
    gw_text_add(out, plain ? "> " : ">*");
    for (const char *at = line; at < end; at++) {
        unsigned byte = (unsigned char)*at;
        if (!plain && (byte < ' ' || byte > '~' || byte == '\\')) gw_text_addf(out, "\\x%02x", byte);
        else gw_text_bytes(out, at, 1);
    }
    gw_text_add(out, "\n");
}

/* A file that no case stands on would look like a test and be none. */
static void every_file_is_used(void **state)
{
    glob_t found;
    (void)state;
    assert_int_equal(glob(gw_format(&all.arena, "%s/*", all.sources), 0, NULL, &found), 0);
    for (size_t i = 0; i < found.gl_pathc; i++) {
        const char *name = strrchr(found.gl_pathv[i], '/') + 1, *end = strrchr(name, '.');
        bool used = end && strcmp(end, ".cases") == 0;
        const char *line = gw_format(&all.arena, "\nbase: %s\n", name);
        for (size_t k = 0; k < all.n_files; k++) used = used || strstr(all.files[k].text, line);
        if (!used) print_error("tests/bad/%s is no file of cases and the base of none\n", name);
        assert_true(used);
    }
    globfree(&found);
}

static void write_update(const struct case_file *file)
{
    struct gw_text text;
    const char *from = file->text;
    gw_text_init(&text, &all.arena);
    for (size_t i = file->first; i < file->first + file->n; i++) {
        const struct bad_case *c = &all.cases[i];
        gw_text_bytes(&text, from, (size_t)(c->expected.from - from));
        for (const char *at = c->said ? c->said : ""; *at; at = line_end(at) + 1) add_expected(&text, at, line_end(at));
        from = c->said ? c->expected.to : c->expected.from;
    }
    gw_text_add(&text, from);
    write_bytes(file->path, text.at, text.length);
}

static void open_folder(void)
{
    const char *base = getenv("TMPDIR");
    snprintf(all.folder, sizeof all.folder, "%s/galeward-XXXXXX", base ? base : "/tmp");
    if (!mkdtemp(all.folder) || chdir(all.folder) != 0 || mkdir("good", 0700) != 0) stop("no folder", all.folder);
}

static void close_folder(void)
{
    unlink("good.yaml");
    rmdir("good");
    if (chdir("/") != 0 || rmdir(all.folder) != 0) fprintf(stderr, "%s is left\n", all.folder);
}

static void read_all(void)
{
    glob_t found;
    gw_arena_init(&all.arena, gw_system_host());
    if (!getcwd(all.sources, sizeof all.sources - sizeof "/tests/bad")) stop("no folder", ".");
    strcat(all.sources, "/tests/bad");
    all.good_project = read_text("project.yaml");
    all.good_openings = read_text("openings.yaml");
    if (glob(gw_format(&all.arena, "%s/*.cases", all.sources), 0, NULL, &found) != 0) stop("no cases", all.sources);
    for (size_t i = 0; i < found.gl_pathc && all.n_files < MOST_FILES; i++) {
        struct case_file *file = &all.files[all.n_files++];
        file->path = gw_format(&all.arena, "%s", found.gl_pathv[i]);
        read_cases(file);
    }
    globfree(&found);
}

int main(void)
{
    static struct CMUnitTest tests[MOST_CASES + OTHERS] = {
        cmocka_unit_test(folder_is_told),     cmocka_unit_test(missing_file_is_told),
        cmocka_unit_test(huge_file_is_told),  cmocka_unit_test(locked_file_is_told),
        cmocka_unit_test(every_file_is_used),
    };
    read_all();
    open_folder();
    for (size_t i = 0; i < all.n_cases; i++)
        tests[OTHERS + i] = (struct CMUnitTest){all.cases[i].name, case_is_told, NULL, NULL, &all.cases[i]};
    int failed = _cmocka_run_group_tests("bad", tests, OTHERS + all.n_cases, NULL, NULL);
    close_folder();
    for (size_t i = 0; getenv("GW_UPDATE") && i < all.n_files; i++) write_update(&all.files[i]);
    gw_arena_release(&all.arena);
    return failed;
}
