/* Every case of tests/reference through gw_calc_case, each value against its tolerance. One test a basis: 'published',
 * 'memory' and 'fem' are outside checks, 'derived' are our own figures and only guard against change.
 *
 * reference_test [DIRECTORY]                  compares
 * reference_test --markdown [DIRECTORY]       prints the verification record */
#include "support.h"

enum basis { PUBLISHED, MEMORY, FEM, DERIVED, BASES };
static const char *const BASIS_NAMES[BASES] = {"published", "memory", "fem", "derived"};
static const char *const BASIS_TITLES[BASES] = {
    "published: seen in the source (outside check)", "recalled, not yet confirmed (outside check)",
    "fem: by an independent finite-element program (outside check)", "derived: computed here (guards against change)"};

/* One compared value. */
struct row {
    const char *file, *id, *source, *key, *expected, *tolerance;
    enum basis basis;
    bool number, good;      /* number: want and got are set */
    bool word;              /* no tolerance: a word, true or false, to the letter */
    double want, got, unit; /* SI; unit: one of the expected's unit, SI */
    const char *got_text;
};

static struct {
    struct gw_arena arena;
    struct row *rows;
    size_t n, capacity, files;
    size_t faults; /* of the files themselves */
} all;

static void file_fault(const char *file, const char *id, const char *text)
{
    print_error("%s: %s: %s\n", file, id, text);
    all.faults++;
}

static bool is_one_of(const char *word, const char *const *list)
{
    for (; *list; list++)
        if (strcmp(word, *list) == 0) return true;
    return false;
}

static void check_keys(const struct row *about, const struct gw_node *node, const char *const *known)
{
    for (const struct gw_node *child = node->first; child; child = child->next)
        if (!is_one_of(child->key, known)) file_fault(about->file, about->id, child->key);
}

/* The dimension whose suffix ends the key: the longest one; none is a ratio. */
static enum gw_dim dim_of_key(const char *key)
{
    enum gw_dim best = GW_RATIO;
    size_t longest = 0, length = strlen(key);
    const char *dot = strrchr(key, '.');
    if (dot && strspn(dot + 1, "0123456789") == strlen(dot + 1)) length = (size_t)(dot - key); /* an item of a list */
    for (int dim = 0; dim < GW_DIM_COUNT; dim++) {
        const char *suffix = gw_dim_info((enum gw_dim)dim)->suffix;
        size_t span = strlen(suffix);
        if (span <= longest || span + 1 >= length || key[length - span - 1] != '_') continue;
        if (strncmp(key + length - span, suffix, span) != 0) continue;
        longest = span;
        best = (enum gw_dim)dim;
    }
    return best;
}

static bool quantity(enum gw_dim dim, const char *text, double *si)
{
    size_t at;
    return gw_quantity_read(gw_units_standard(), dim, GW_UNITS_NONE, text, strlen(text), si, &at) == GW_QUANTITY_OK;
}

/* Dimensions may share a suffix (m3: a volume, a section modulus): the unit says which. */
static bool quantity_of(enum gw_dim dim, const char *text, double *si)
{
    const char *suffix = gw_dim_info(dim)->suffix;
    for (int other = 0; other < GW_DIM_COUNT; other++)
        if (strcmp(gw_dim_info((enum gw_dim)other)->suffix, suffix) == 0 && quantity((enum gw_dim)other, text, si))
            return true;
    return false;
}

/* Absolute in the value's dimension, or a percentage of it. */
static bool tolerance_of(const struct row *row, enum gw_dim dim, double *tolerance)
{
    size_t length = strlen(row->tolerance);
    if (!length || row->tolerance[length - 1] != '%') return quantity_of(dim, row->tolerance, tolerance);
    if (!quantity(GW_RATIO, row->tolerance, tolerance)) return false;
    *tolerance *= fabs(row->want);
    return true;
}

/* "key", "key.key", or "list.0" for an item. */
static const struct gw_node *at_path(const struct gw_node *node, const char *path)
{
    size_t span = strcspn(path, ".");
    const struct gw_node *child = gw_node_get(node, gw_strndup(&all.arena, path, span));
    if (node && node->kind == GW_SEQUENCE) {
        child = node->first;
        for (unsigned long i = strtoul(path, NULL, 10); child && i > 0; i--) child = child->next;
    }
    return child && path[span] ? at_path(child, path + span + 1) : child;
}

static struct row *new_row(const struct row *about)
{
    all.rows = gw_grow(&all.arena, all.rows, all.n, &all.capacity, sizeof *all.rows);
    all.rows[all.n] = *about;
    return &all.rows[all.n++];
}

static void compare(struct row *row, const struct gw_node *result)
{
    enum gw_dim dim = dim_of_key(row->key);
    double tolerance, in_its_unit;
    const struct gw_node *got = at_path(result, row->key);
    row->got_text = got && got->kind == GW_SCALAR ? got->text : "absent";
    row->word = !*row->tolerance && !gw_read_number(row->expected, strlen(row->expected), &in_its_unit);
    if (row->word) {
        row->good = strcmp(row->got_text, row->expected) == 0;
        return;
    }
    if (!quantity_of(dim, row->expected, &row->want) || !tolerance_of(row, dim, &tolerance)) {
        file_fault(row->file, row->id, gw_format(&all.arena, "%s: not a quantity with its tolerance", row->key));
        return;
    }
    row->number = got && gw_read_number(got->text, got->length, &row->got) == got->length;
    bool scaled = gw_read_number(row->expected, strlen(row->expected), &in_its_unit) && fabs(in_its_unit) > 0;
    row->unit = scaled ? row->want / in_its_unit : 1;
    row->good = row->number && fabs(row->got - row->want) <= tolerance;
}

static void compare_all(const struct row *about, const struct gw_node *expect, const struct gw_node *result)
{
    static const char *const keys[] = {"value", "tolerance", NULL};
    if (!expect || expect->kind != GW_MAPPING || !expect->count) file_fault(about->file, about->id, "expects nothing");
    for (const struct gw_node *e = expect ? expect->first : NULL; e; e = e->next) {
        struct row *row = new_row(about);
        row->key = e->key;
        row->expected = text_at(e, "value");
        row->tolerance = text_at(e, "tolerance");
        check_keys(about, e, keys);
        compare(row, result);
    }
}

static void compare_error(const struct row *about, const char *code, const struct gw_node *result)
{
    struct row *row = new_row(about);
    row->key = "error";
    row->expected = code;
    row->tolerance = "";
    row->got_text = text_at(gw_node_get(result, "error"), "code");
    row->good = strcmp(row->got_text, code) == 0;
}

static bool find_basis(const char *name, enum basis *basis)
{
    for (int i = 0; i < BASES; i++)
        if (strcmp(BASIS_NAMES[i], name) == 0) {
            *basis = (enum basis)i;
            return true;
        }
    return false;
}

static const struct gw_node *run_case(const struct gw_calc_kind *kind, const struct gw_node *in)
{
    struct gw_text out;
    struct gw_diags diags;
    gw_text_init(&out, &all.arena);
    gw_diags_init(&diags, &all.arena);
    gw_calc_case(&out, &all.arena, kind, in, gw_tables_standard());
    return gw_yaml_read(&all.arena, gw_source_from(&all.arena, "result", out.at, out.length), &diags);
}

static void take_case(const char *file, const struct gw_node *node)
{
    static const char *const keys[] = {"id", "kind", "source", "basis", "in", "expect", "error", NULL};
    struct row about = {.file = file, .id = text_at(node, "id"), .source = text_at(node, "source")};
    const struct gw_calc_kind *kind = gw_calc_find(text_at(node, "kind"));
    const struct gw_node *in = gw_node_get(node, "in"), *result = kind && in ? run_case(kind, in) : NULL;
    bool told = *about.id && *about.source && find_basis(text_at(node, "basis"), &about.basis);
    check_keys(&about, node, keys);
    if (!told || !result || !gw_node_get(node, "error") == !gw_node_get(node, "expect")) {
        file_fault(file, about.id, "wants id, kind, source, basis, in, and either expect or error");
        return;
    }
    if (gw_node_get(node, "error")) compare_error(&about, text_at(node, "error"), result);
    else compare_all(&about, gw_node_get(node, "expect"), result);
}

static void take_file(const char *path)
{
    static const char *const keys[] = {"cases", NULL};
    const char *slash = strrchr(path, '/');
    const struct row about = {.file = gw_strdup(&all.arena, slash ? slash + 1 : path), .id = "the file"};
    const struct gw_node *root = read_file(&all.arena, path), *cases = gw_node_get(root, "cases");
    all.files++;
    if (root && root->kind == GW_MAPPING) check_keys(&about, root, keys);
    if (!cases || cases->kind != GW_SEQUENCE || !cases->count) {
        file_fault(about.file, about.id, "holds no cases");
        return;
    }
    for (const struct gw_node *c = cases->first; c; c = c->next) take_case(about.file, c);
}

static void check_unique_ids(void)
{
    for (size_t i = 1; i < all.n; i++)
        for (size_t k = 0; k < i; k++) {
            const struct row *a = &all.rows[i], *b = &all.rows[k];
            bool again = strcmp(a->id, b->id) == 0 && strcmp(a->key, b->key) == 0;
            if (again) file_fault(a->file, a->id, "given twice");
        }
}

static void run_all(const char *directory)
{
    glob_t found;
    reference_files(directory, &found);
    for (size_t i = 0; i < found.gl_pathc; i++) take_file(found.gl_pathv[i]);
    globfree(&found);
    check_unique_ids();
}

/* Comparing ----------------------------------------------------------------------------------------------------------
 */

static void print_row(const struct row *r)
{
    if (!r->number) {
        printf("%-30s %-26s %-9s want %-22s got %-22s %s\n", r->id, r->key, BASIS_NAMES[r->basis], r->expected,
               r->got_text, r->good ? "PASS" : "FAIL");
        return;
    }
    printf("%-30s %-26s %-9s want %-22.12g got %-22.12g difference %-12.3g %s\n", r->id, r->key, BASIS_NAMES[r->basis],
           r->want, r->got, r->got - r->want, r->good ? "PASS" : "FAIL");
}

static void check_basis(enum basis basis)
{
    size_t n = 0, bad = 0;
    for (size_t i = 0; i < all.n; i++) {
        if (all.rows[i].basis != basis) continue;
        print_row(&all.rows[i]);
        n++;
        bad += !all.rows[i].good;
    }
    printf("%s: %zu values, %zu within tolerance, %zu not\n", BASIS_TITLES[basis], n, n - bad, bad);
    fflush(stdout);
    assert_true(n > 0);
    assert_int_equal(bad, 0);
}

static void published_values(void **state)
{
    (void)state;
    check_basis(PUBLISHED);
}

static void recalled_values(void **state)
{
    (void)state;
    check_basis(MEMORY);
}

static void finite_element_values(void **state)
{
    (void)state;
    check_basis(FEM);
}

static void derived_values(void **state)
{
    (void)state;
    check_basis(DERIVED);
}

static void files_are_well_formed(void **state)
{
    (void)state;
    assert_true(all.files > 0);
    assert_int_equal(all.faults, 0);
}

/* The verification record --------------------------------------------------------------------------------------------
 */

static void print_cell(const char *text)
{
    for (; *text; text++) {
        if (*text == '|') putchar('\\');
        putchar(*text);
    }
}

static const char *unit_of(const struct row *r)
{
    double ignored;
    const char *rest = r->expected + gw_read_number(r->expected, strlen(r->expected), &ignored);
    return rest + strspn(rest, " ");
}

static void print_record(const struct row *r, bool first)
{
    printf("| %s | ", first ? r->id : "");
    if (first) print_cell(r->source);
    if (r->word) {
        printf(" | `%s` | %s | %s%s | |\n", r->key, r->expected, r->got_text, r->good ? "" : " **differs**");
        return;
    }
    if (!r->number) {
        printf(" | `%s` | refused: %s | %s%s | |\n", r->key, r->expected, *r->got_text ? "refused: " : "not refused",
               r->got_text);
        return;
    }
    printf(" | `%s` | %s | %.6g %s | %+.2g %%%s |\n", r->key, r->expected, r->got / r->unit, unit_of(r),
           fabs(r->want) > 0 ? (r->got - r->want) / fabs(r->want) * 100 : 0, r->good ? "" : " **beyond tolerance**");
}

static void print_group(const char *file, enum basis basis)
{
    const char *last = NULL;
    for (size_t i = 0; i < all.n; i++) {
        const struct row *r = &all.rows[i];
        if (r->basis != basis || strcmp(r->file, file) != 0) continue;
        if (!last) {
            printf("\n### %s\n\n| case | source | key | expected | got | difference |\n", BASIS_TITLES[basis]);
            printf("| --- | --- | --- | --- | --- | --- |\n");
        }
        print_record(r, !last || strcmp(last, r->id) != 0);
        last = r->id;
    }
}

static void print_counts(void)
{
    printf("| basis | values | within tolerance |\n| --- | --- | --- |\n");
    for (int basis = 0; basis < BASES; basis++) {
        size_t n = 0, good = 0;
        for (size_t i = 0; i < all.n; i++) {
            n += all.rows[i].basis == (enum basis)basis;
            good += all.rows[i].basis == (enum basis)basis && all.rows[i].good;
        }
        printf("| %s | %zu | %zu |\n", BASIS_TITLES[basis], n, good);
    }
}

static int print_markdown(void)
{
    printf(
        "# Verification record\n\nGenerated from the reference cases; every value runs through `galeward calc`.\n\n");
    print_counts();
    for (size_t i = 0; i < all.n; i++) {
        if (i && strcmp(all.rows[i].file, all.rows[i - 1].file) == 0) continue;
        printf("\n## %s\n", all.rows[i].file);
        for (int basis = 0; basis < BASES; basis++) print_group(all.rows[i].file, (enum basis)basis);
    }
    gw_arena_release(&all.arena);
    return 0;
}

int main(int argc, char **argv)
{
    bool markdown = argc > 1 && strcmp(argv[1], "--markdown") == 0;
    const char *directory = argc > 1 + markdown ? argv[1 + markdown] : "tests/reference";
    gw_arena_init(&all.arena, gw_system_host());
    run_all(directory);
    if (markdown) return print_markdown();
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(files_are_well_formed), cmocka_unit_test(published_values), cmocka_unit_test(recalled_values),
        cmocka_unit_test(finite_element_values), cmocka_unit_test(derived_values),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    gw_arena_release(&all.arena);
    return failed;
}
