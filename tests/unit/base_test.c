/* Arena, text, numbers, quantities, YAML, CSV, JSON and the record loader. */
#include "support.h"

#include "galeward/sha256.h"

#include <locale.h>

/* Arena and text ----------------------------------------------------------------------------------------------------
 */

static void arena_zeroes_and_aligns(void **state)
{
    struct world *w = *state;
    for (size_t size = 1; size < 100000; size = size * 3 + 1) {
        unsigned char *bytes = gw_alloc(&w->arena, 1, size);
        assert_true((uintptr_t)bytes % _Alignof(max_align_t) == 0);
        for (size_t i = 0; i < size; i++) assert_int_equal(bytes[i], 0);
        memset(bytes, 0xA5, size);
    }
}

static void arena_rewind_keeps_one_block(void **state)
{
    struct world *w = *state;
    struct gw_arena arena;
    (void)w;
    gw_arena_init(&arena, NULL);
    for (int i = 0; i < 1000; i++) gw_alloc(&arena, 1, 1000);
    gw_arena_rewind(&arena);
    size_t kept = arena.reserved;
    assert_true(kept > 0);
    unsigned char *again = gw_alloc(&arena, 1, 1000);
    for (int i = 0; i < 1000; i++) assert_int_equal(again[i], 0);
    assert_int_equal(arena.reserved, kept);
    gw_arena_release(&arena);
    assert_int_equal(arena.reserved, 0);
}

static void ask_for_everything(void *argument)
{
    gw_alloc(argument, SIZE_MAX / 4, 8);
    fail_msg("a request beyond the address space came back");
}

static void ask_twice(void *argument)
{
    assert_false(gw_guard(argument, ask_for_everything, argument));
    assert_non_null(gw_alloc(argument, 1, 100)); /* the arena is of use again under the outer guard */
    ask_for_everything(argument);
}

static void the_guard_comes_back(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    assert_false(gw_guard(&arena, ask_for_everything, &arena));
    assert_false(gw_guard(&arena, ask_twice, &arena));
    assert_null(gw_alloc(&arena, SIZE_MAX / 4, 8)); /* no guard */
    gw_arena_release(&arena);
}

/* FIPS 180-4 and its examples; the last one is a million times 'a'. */
static void fingerprints(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *text, *hex;
    } cases[] = {
        {"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
        {"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
        {"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
         "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
    };
    char hex[GW_SHA256_SIZE];
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        gw_sha256(hex, cases[i].text, strlen(cases[i].text));
        assert_string_equal(hex, cases[i].hex);
    }
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_repeat(&text, 'a', 1000000);
    gw_sha256(hex, text.at, text.length);
    assert_string_equal(hex, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

static void text_grows(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    assert_string_equal(text.at, "");
    for (int i = 0; i < 2000; i++) gw_text_addf(&text, "%d,", i % 10);
    gw_text_repeat(&text, '-', 3);
    gw_text_bytes(&text, "xyz", 2);
    assert_int_equal(text.length, 4000 + 5);
    assert_string_equal(text.at + 3998, "9,---xy");
    assert_int_equal(gw_text_width("5′-6″"), 5);
}

/* Numbers -----------------------------------------------------------------------------------------------------------
 */

static const char *number(double value, int digits)
{
    static char out[GW_NUMBER_SIZE];
    size_t length = gw_print_number(out, value, digits);
    assert_int_equal(length, strlen(out));
    return out;
}

static const char *decimals(double value, int places)
{
    static char out[GW_NUMBER_SIZE];
    size_t length = gw_print_fixed(out, value, places);
    assert_int_equal(length, strlen(out));
    return out;
}

static void check_printing(void)
{
    assert_string_equal(number(1234.5, 6), "1234.5");
    assert_string_equal(number(0.00256, 6), "0.00256");
    assert_string_equal(number(-0.0, 6), "0");
    assert_string_equal(number(1e-9, 3), "1e-09");
    assert_string_equal(decimals(12.345, 1), "12.3");
    assert_string_equal(decimals(-0.001, 2), "0.00");
    assert_string_equal(decimals(-0.5, 1), "-0.5");
    assert_string_equal(decimals(45, 0), "45");
}

struct reading {
    const char *text;
    size_t used;
    double value;
};

static void check_reading(void)
{
    static const struct reading cases[] = {
        {"12.5", 4, 12.5},
        {"12,5", 2, 12},
        {"-0.25 ft", 5, -0.25},
        {"+3", 2, 3},
        {".5", 2, 0.5},
        {"5.", 2, 5},
        {"1e3", 3, 1000},
        {"1e", 1, 1},
        {"1.25E-2x", 7, 0.0125},
        {"0.1234567890123456789", 21, 0.1234567890123456789},
        {"123456789012345678", 18, 123456789012345678.0},
        {"", 0, 0},
        {"-", 0, 0},
        {".", 0, 0},
        {"nan", 0, 0},
        {"inf", 0, 0},
        {"e5", 0, 0},
        {"0x10", 1, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        double value = 0;
        size_t used = gw_read_number(cases[i].text, strlen(cases[i].text), &value);
        if (used != cases[i].used) print_error("'%s'\n", cases[i].text);
        assert_int_equal(used, cases[i].used);
        if (used) assert_near(value, cases[i].value, 0);
    }
    double huge;
    assert_int_equal(gw_read_number("1e999", 5, &huge), 5);
    assert_true(isinf(huge));
}

static void numbers(void **state)
{
    (void)state;
    check_printing();
    check_reading();
}

static void numbers_under_a_comma_locale(void **state)
{
    (void)state;
    static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "de_DE"};
    const char *set = NULL;
    for (size_t i = 0; i < sizeof names / sizeof *names && !set; i++) set = setlocale(LC_ALL, names[i]);
    if (!set) {
        print_message("skipped: no locale with a decimal comma is installed (de_DE.UTF-8)\n");
        skip();
    }
    check_printing();
    check_reading();
    setlocale(LC_ALL, "C");
}

/* What is printed with 17 digits reads back to the same bits. */
/* More digits than any double has: the last of them decides, and none is lost. */
static void numbers_of_any_length(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *head;
        size_t zeros;
        const char *tail;
        double value;
    } cases[] = {
        {"1", 2000, "e-2000", 1},
        {"0.", 2000, "25e2001", 2.5},
        {"9007199254740993", 0, "", 9007199254740992.0},     /* a tie goes to the even one */
        {"9007199254740993.", 900, "1", 9007199254740994.0}, /* beyond the digits that are kept */
        {"-9007199254740993.", 900, "0", -9007199254740992.0},
        {"1e", 2000, "2", 100},
        {"-0.", 300, "e-9", 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_text text;
        double value = -1;
        gw_text_init(&text, &w->arena);
        gw_text_add(&text, cases[i].head);
        gw_text_repeat(&text, '0', cases[i].zeros);
        gw_text_add(&text, cases[i].tail);
        assert_int_equal(gw_read_number(text.at, text.length, &value), text.length);
        assert_true(value == cases[i].value);
    }
}

static void numbers_round_trip(void **state)
{
    (void)state;
    draw_from(1);
    for (int i = 0; i < 20000; i++) {
        const uint64_t bits = draw_bits();
        double value = ldexp((double)(bits >> 11), (int)(bits % 120) - 100), back;
        const char *text = number(value, 17);
        assert_int_equal(gw_read_number(text, strlen(text), &back), strlen(text));
        assert_near(back, value, 0);
    }
}

/* Quantities --------------------------------------------------------------------------------------------------------
 */

struct quantity {
    enum gw_dim dim;
    enum gw_units preset;
    const char *text;
    enum gw_quantity_fault fault;
    double si;
};

static const struct quantity QUANTITIES[] = {
    {GW_LENGTH, GW_UNITS_NONE, "5 ft 6 in", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6 1/2\"", GW_QUANTITY_OK, 1.6891},
    {GW_LENGTH, GW_UNITS_NONE, "5' 6\"", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'6\"", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5′-6″", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "12'-0\"", GW_QUANTITY_OK, 3.6576},
    {GW_LENGTH, GW_UNITS_NONE, "12'", GW_QUANTITY_OK, 3.6576},
    {GW_LENGTH, GW_UNITS_NONE, "1/4 in", GW_QUANTITY_OK, 0.00635},
    {GW_LENGTH, GW_UNITS_NONE, "6 1/2 in", GW_QUANTITY_OK, 0.1651},
    {GW_LENGTH, GW_UNITS_NONE, "6-1/2 in", GW_QUANTITY_OK, 0.1651},
    {GW_LENGTH, GW_UNITS_NONE, "-5 ft 6 in", GW_QUANTITY_OK, -1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "1524 mm", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_UNITS_NONE, "1524mm", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_UNITS_NONE, "  5 ft  ", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_US, "5", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_SI, "5", GW_QUANTITY_OK, 5},
    {GW_THICKNESS, GW_US, "1/4", GW_QUANTITY_OK, 0.00635},
    {GW_THICKNESS, GW_SI, "6", GW_QUANTITY_OK, 0.006},
    {GW_LENGTH, GW_SI, "5 ft", GW_QUANTITY_OK, 1.524},
    {GW_PRESSURE, GW_UNITS_NONE, "2.15 kPa", GW_QUANTITY_OK, 2150},
    {GW_PRESSURE, GW_US, "45", GW_QUANTITY_OK, 45 * 47.88025898033584},
    {GW_SPEED, GW_UNITS_NONE, "120 mph", GW_QUANTITY_OK, 53.6448},
    {GW_MOMENT, GW_UNITS_NONE, "95 in-lb", GW_QUANTITY_OK, 95 * 0.1129848290276167},
    {GW_TEMPERATURE, GW_UNITS_NONE, "32 degF", GW_QUANTITY_OK, 273.15},
    {GW_RATIO, GW_UNITS_NONE, "0.38", GW_QUANTITY_OK, 0.38},
    {GW_RATIO, GW_UNITS_NONE, "20 %", GW_QUANTITY_OK, 0.2},
    {GW_COST_PER_LENGTH, GW_UNITS_NONE, "9.5 per ft", GW_QUANTITY_OK, 9.5 / 0.3048},
    {GW_LENGTH, GW_UNITS_NONE, "5", GW_QUANTITY_NO_UNIT, 0},
    {GW_LENGTH, GW_US, "5 psf", GW_QUANTITY_WRONG_UNIT, 0},
    {GW_PRESSURE, GW_US, "5 ft", GW_QUANTITY_WRONG_UNIT, 0},
    {GW_LENGTH, GW_US, "5 furlong", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft junk", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft )", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft 6 ft", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "5 ft 6", GW_QUANTITY_TRAILING, 0},
    {GW_TIME, GW_UNITS_NONE, "60 d", GW_QUANTITY_OK, 5184000},
    {GW_TIME, GW_UNITS_NONE, "1 day", GW_QUANTITY_OK, 86400},
    {GW_TIME, GW_UNITS_NONE, "9 months", GW_QUANTITY_OK, 9 * 730 * 3600.0},
    {GW_TIME, GW_UNITS_NONE, "2.5 years", GW_QUANTITY_OK, 2.5 * 8760 * 3600},
    {GW_LENGTH, GW_US, "5 m 6 in", GW_QUANTITY_TRAILING, 0},
    {GW_PRESSURE, GW_US, "45 psf 3", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "1e400 ft", GW_QUANTITY_RANGE, 0},
    {GW_LENGTH, GW_US, "nan ft", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "inf", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "ft", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "", GW_QUANTITY_NOT_A_NUMBER, 0},
};

static void quantities(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof QUANTITIES / sizeof *QUANTITIES; i++) {
        const struct quantity *q = &QUANTITIES[i];
        double value = -77;
        size_t at = 999, length = strlen(q->text);
        enum gw_quantity_fault fault =
            gw_quantity_read(gw_units_standard(), q->dim, q->preset, q->text, length, &value, &at);
        if (fault != q->fault) print_error("'%s'\n", q->text);
        assert_int_equal(fault, q->fault);
        if (fault == GW_QUANTITY_OK) assert_near(value, q->si, 1e-12 * fmax(1, fabs(q->si)));
        else assert_near(value, -77, 0);
        assert_true(at <= length);
    }
}

static void quantity_fault_place(void **state)
{
    (void)state;
    double value;
    size_t at;
    gw_quantity_read(gw_units_standard(), GW_LENGTH, GW_US, "12.5 psf", 8, &value, &at);
    assert_int_equal(at, 5);
    gw_quantity_read(gw_units_standard(), GW_PRESSURE, GW_US, "45 psf 3", 8, &value, &at);
    assert_int_equal(at, 7);
}

/* Every dimension in every system of units: shown, printed, read back. */
static void units_round_trip(void **state)
{
    struct world *w = *state;
    struct gw_unit_list units = gw_units_standard();
    const double si = 37.123456789;
    for (int dim = 0; dim < GW_DIM_COUNT; dim++) {
        for (int shown = GW_UNITS_NONE; shown <= GW_SI; shown++) {
            struct gw_text text;
            gw_text_init(&text, &w->arena);
            gw_text_number(&text, gw_quantity_shown(units, (enum gw_dim)dim, (enum gw_units)shown, si), 17);
            gw_text_addf(&text, " %s", gw_dim_info((enum gw_dim)dim)->shown[shown]);
            double back = 0;
            size_t at;
            enum gw_quantity_fault fault =
                gw_quantity_read(units, (enum gw_dim)dim, GW_US, text.at, text.length, &back, &at);
            if (fault != GW_QUANTITY_OK) print_error("%s: '%s'\n", gw_dim_info((enum gw_dim)dim)->key, text.at);
            assert_int_equal(fault, GW_QUANTITY_OK);
            assert_near(back, si, 1e-12 * si);
        }
    }
}

/* A bare number in a preset is the same as the number with the preset's unit; examples are readable. */
static void bare_numbers_and_examples(void **state)
{
    struct world *w = *state;
    struct gw_unit_list units = gw_units_standard();
    for (int dim = 0; dim < GW_DIM_COUNT; dim++) {
        const struct gw_dim_info *info = gw_dim_info((enum gw_dim)dim);
        double value = 0, bare = 0, with_unit = 0;
        size_t at;
        assert_int_equal(gw_dim_by_key(info->key), dim);
        assert_int_equal(
            gw_quantity_read(units, (enum gw_dim)dim, GW_UNITS_NONE, info->example, strlen(info->example), &value, &at),
            GW_QUANTITY_OK);
        for (int preset = GW_US; preset <= GW_SI; preset++) {
            const char *text = gw_format(&w->arena, "3 %s", info->bare[preset]);
            gw_quantity_read(units, (enum gw_dim)dim, (enum gw_units)preset, "3", 1, &bare, &at);
            gw_quantity_read(units, (enum gw_dim)dim, GW_UNITS_NONE, text, strlen(text), &with_unit, &at);
            assert_near(bare, with_unit, 0);
        }
    }
}

/* YAML --------------------------------------------------------------------------------------------------------------
 */

struct refusal {
    const char *text;
    size_t length; /* 0: strlen */
    const char *code;
    unsigned line, column;
};

static const struct refusal REFUSALS[] = {
    {"a: 1\nb: 2\na: 3\n", 0, "duplicate_key", 3, 1},
    {"top:\n  x: 1\n  x: 2\n", 0, "duplicate_key", 3, 3},
    {"{a: 1, a: 2}", 0, "duplicate_key", 1, 8},
    {"a: 1\n---\nb: 2\n", 0, "second_document", 2, 1},
    {"a: &a [*a]\n", 0, "alias", 1, 8},
    {"a: &a {b: *a}\n", 0, "alias", 1, 11},
    {"a: &a [1]\nb: &b [*a]\nc: *b\n", 0, "alias", 3, 4},
    {"a: *nobody\n", 0, "alias", 1, 4},
    {"a: \"x\\0y\"\n", 0, "syntax", 1, 4},
    {"a: x\0y\n", 7, "syntax", 1, 5},
    {"\xFF\xFE"
     "a\0:\0",
     6, "encoding", 1, 1},
    {"\xFE\xFF\0a\0:", 6, "encoding", 1, 1},
    {"a: b\nc: \xFF\n", 0, "encoding", 2, 4},
    {"a: \xC3\xA9 \xC0\xAF\n", 0, "encoding", 1, 6},
    {"a: \xED\xA0\x80\n", 0, "encoding", 1, 4},
    {"a: \xE2\x82", 0, "encoding", 1, 4},
    {"", 0, "empty", 1, 1},
    {"# nothing but words\n", 0, "empty", 1, 1},
    {"a:\n\tb: 1\n", 0, "syntax", 2, 1},
    {"? [a, b]\n: 1\n", 0, "syntax", 1, 3},
};

static void yaml_refusals(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof REFUSALS / sizeof *REFUSALS; i++) {
        const struct refusal *r = &REFUSALS[i];
        struct gw_diags diags;
        gw_diags_init(&diags, &w->arena);
        size_t length = r->length ? r->length : strlen(r->text);
        const struct gw_source *source = gw_source_from(&w->arena, "test", r->text, length);
        assert_null(gw_yaml_read(&w->arena, source, &diags));
        assert_true(diags.n > 0);
        const struct gw_diag *d = &diags.items[0];
        if (strcmp(d->code, r->code) != 0 || d->line != r->line || d->column != r->column)
            print_error("refusal %zu: %s %u:%u %s\n", i, d->code, d->line, d->column, d->message);
        assert_string_equal(d->code, r->code);
        assert_int_equal(d->line, r->line);
        assert_int_equal(d->column, r->column);
    }
}

static const char *nested(struct world *w, size_t depth)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_repeat(&text, '[', depth);
    gw_text_repeat(&text, ']', depth);
    return text.at;
}

static void yaml_depth(void **state)
{
    struct world *w = *state;
    assert_non_null(node_of(w, nested(w, GW_DEPTH_LIMIT)));
    assert_null(node_of(w, nested(w, GW_DEPTH_LIMIT + 1)));
    assert_string_equal(w->diags.items[0].code, "depth");
    assert_int_equal(w->diags.items[0].line, 1);
    assert_int_equal(w->diags.items[0].column, GW_DEPTH_LIMIT + 1);
}

static void yaml_all_duplicates_in_one_run(void **state)
{
    struct world *w = *state;
    assert_null(node_of(w, "a: 1\na: 2\nb: {c: 1, c: 2}\n"));
    assert_int_equal(w->diags.errors, 2);
}

static void yaml_places(void **state)
{
    struct world *w = *state;
    const struct gw_node *root = node_of(w, "é: 1\nlist:\n  - {k: 'v w'}\n  - &x 5\n  - *x\n");
    assert_non_null(root);
    const struct gw_node *list = gw_node_get(root, "list"), *item = list->first;
    assert_int_equal(root->first->column, 4);
    assert_int_equal(list->count, 3);
    assert_int_equal(gw_node_get(item, "k")->key_column, 6);
    assert_int_equal(gw_node_get(item, "k")->line, 3);
    assert_true(gw_node_get(item, "k")->quoted);
    assert_string_equal(item->next->next->text, "5");
    assert_null(gw_node_get(root, "none"));
}

static void nodes_are_set_by_path(void **state)
{
    struct world *w = *state;
    struct gw_node *root = node_of(w, "a: {b: 1}\nlist: [{x: 1}, {x: 2}]\nscalar: 3\n");
    assert_true(gw_node_set(&w->arena, root, "a.b", "7"));
    assert_true(gw_node_set(&w->arena, root, "a.c.d", "8"));
    assert_true(gw_node_set(&w->arena, root, "list.x", "9"));
    assert_true(gw_node_set(&w->arena, root, "new", "[1, 2]"));
    assert_false(gw_node_set(&w->arena, root, "scalar.x", "1"));
    assert_string_equal(text_at(gw_node_get(root, "a"), "b"), "7");
    assert_string_equal(text_at(gw_node_get(gw_node_get(root, "a"), "c"), "d"), "8");
    assert_string_equal(text_at(gw_node_get(root, "list")->first->next, "x"), "9");
    assert_int_equal(gw_node_get(root, "new")->count, 2);
}

static void diagnostics_show_the_line(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    node_of(w, "a: 1\nbé: 2\na: 3\n");
    gw_text_init(&text, &w->arena);
    gw_diag_print(&text, &w->diags.items[0]);
    assert_string_equal(text.at, "test:3:1: error: 'a' is given twice; first on line 1\n    a: 3\n    ^\n");
}

static void sources_that_cannot_be_read(void **state)
{
    struct world *w = *state;
    assert_null(gw_source_read(&w->arena, w->directory, &w->diags));
    assert_null(gw_source_read(&w->arena, gw_format(&w->arena, "%s/none", w->directory), &w->diags));
    assert_int_equal(w->diags.errors, 2);
    assert_string_equal(w->diags.items[0].code, "unreadable");
    assert_string_equal(w->diags.items[1].code, "unreadable");
}

static void diagnostics_stop_at_the_limit(void **state)
{
    struct world *w = *state;
    const struct gw_source *source = gw_source_from(&w->arena, "test", "x", 1);
    for (int i = 0; i < GW_DIAG_LIMIT + 5; i++)
        gw_diag_add(&w->diags, GW_ERROR, "syntax", NULL, source, 1, 1, "number %d", i);
    assert_int_equal(w->diags.n, GW_DIAG_LIMIT);
    assert_int_equal(w->diags.dropped, 5);
    assert_int_equal(w->diags.errors, GW_DIAG_LIMIT + 5);
}

/* CSV ---------------------------------------------------------------------------------------------------------------
 */

static const char *same_name(void *context, const char *header)
{
    (void)context;
    return strcmp(header, "skip") == 0 ? NULL : header;
}

static const struct gw_node *csv_of(struct world *w, const char *text)
{
    return gw_csv_read(&w->arena, gw_source_from(&w->arena, "test.csv", text, strlen(text)), same_name, NULL,
                       &w->diags);
}

static void csv_forms(void **state)
{
    struct world *w = *state;
    static const char *const forms[] = {
        "mark,width,height\nW1,\"5'-6\"\"\",7'-0\"\nW2,4 ft,\"6 ft, 2 in\"\n",
        "\xEF\xBB\xBFmark,width,height\r\nW1,\"5'-6\"\"\",7'-0\"\r\nW2,4 ft,\"6 ft, 2 in\"\r\n",
        "mark;width;height\nW1;\"5'-6\"\"\";7'-0\"\nW2;4 ft;6 ft, 2 in",
        "mark , skip, width,height\n\nW1,x,5'-6\",7'-0\"\n,,,\nW2,,4 ft , \"6 ft, 2 in\"\n",
    };
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        const struct gw_node *rows = csv_of(w, forms[i]);
        assert_non_null(rows);
        assert_int_equal(rows->count, 2);
        assert_string_equal(text_at(rows->first, "mark"), "W1");
        assert_string_equal(text_at(rows->first, "width"), "5'-6\"");
        assert_string_equal(text_at(rows->first, "height"), "7'-0\"");
        assert_null(gw_node_get(rows->first, "skip"));
        assert_string_equal(text_at(rows->first->next, "width"), "4 ft");
        assert_string_equal(text_at(rows->first->next, "height"), "6 ft, 2 in");
    }
}

static void csv_refusals(void **state)
{
    struct world *w = *state;
    static const struct refusal cases[] = {
        {"", 0, "empty", 1, 1},
        {"a,b\n1,\"2\n", 0, "syntax", 2, 3},
        {"a,b\n1,2,3\n", 0, "syntax", 2, 5},
        {"a,b,a\n1,2,3\n", 0, "duplicate_key", 1, 5},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        w->diags.n = w->diags.errors = 0;
        assert_null(csv_of(w, cases[i].text));
        assert_string_equal(w->diags.items[0].code, cases[i].code);
        assert_int_equal(w->diags.items[0].line, cases[i].line);
        assert_int_equal(w->diags.items[0].column, cases[i].column);
    }
}

static void csv_places(void **state)
{
    struct world *w = *state;
    const struct gw_node *rows = csv_of(w, "mark,width\nW1,é\n\nWé, 4 ft\n");
    const struct gw_node *width = gw_node_get(rows->first->next, "width");
    assert_int_equal(width->line, 4);
    assert_int_equal(width->column, 5);
    assert_null(gw_node_get(csv_of(w, "mark,width\nW1\n")->first, "width"));
}

/* Edit distance and JSON --------------------------------------------------------------------------------------------
 */

static void edit_distance(void **state)
{
    (void)state;
    assert_int_equal(gw_edit_distance("kitten", "sitting", 5), 3);
    assert_int_equal(gw_edit_distance("kitten", "sitting", 2), 3);
    assert_int_equal(gw_edit_distance("", "abc", 5), 3);
    assert_int_equal(gw_edit_distance("width", "width", 5), 0);
    assert_int_equal(gw_edit_distance("widht", "width", 5), 2);
    assert_int_equal(gw_edit_distance("abc", "xyzuvw", 2), 3);
    char longer[200];
    memset(longer, 'a', sizeof longer - 1);
    longer[sizeof longer - 1] = '\0';
    assert_int_equal(gw_edit_distance(longer, "a", 4), 5);
}

static void json_writing(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    gw_json_open(&json, '{');
    gw_json_key(&json, "a\"b");
    gw_json_text(&json, "5'-6\" \\ \n\t\x01 é:");
    gw_json_key(&json, "list");
    gw_json_open(&json, '[');
    gw_json_number(&json, 0.1);
    gw_json_number(&json, GW_ABSENT);
    gw_json_number(&json, 1e300 * 1e300);
    gw_json_integer(&json, -3);
    gw_json_bool(&json, true);
    gw_json_null(&json);
    gw_json_open(&json, '{');
    gw_json_close(&json, '}');
    gw_json_close(&json, ']');
    gw_json_key(&json, "none");
    gw_json_text(&json, NULL);
    gw_json_close(&json, '}');
    assert_string_equal(text.at, "{\"a\\\"b\":\"5'-6\\\" \\\\ \\n\\u0009\\u0001 é:\","
                                 "\"list\":[0.1,null,null,-3,true,null,{}],\"none\":null}");
}

/* To the letter, whatever a double would make of it. */
static void nodes_come_back_as_they_came(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *yaml, *json;
    } cases[] = {
        {"12345678901234567890", "12345678901234567890"},
        {"0.10000000000000000555", "0.10000000000000000555"},
        {"-1.50e+03", "-1.50e+03"},
        {"true", "true"},
        {"null", "null"},
        {"'true'", "\"true\""},
        {"\"7\"", "\"7\""},
        {"007", "\"007\""}, /* no number of JSON's */
        {".5", "\".5\""},
        {"1.", "\"1.\""},
        {"+1", "\"+1\""},
        {"--", "\"--\""},
        {"1e", "\"1e\""},
        {"nan", "\"nan\""},
        {"[1.0, {b: false, c: ~}, \"\", 'null']", "[1.0,{\"b\":false,\"c\":null},\"\",\"null\"]"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_text text;
        struct gw_json json;
        const struct gw_node *root = node_of(w, gw_format(&w->arena, "id: %s\n", cases[i].yaml));
        gw_text_init(&text, &w->arena);
        gw_json_init(&json, &text, false);
        gw_json_node(&json, gw_node_get(root, "id"));
        assert_string_equal(text.at, cases[i].json);
    }
}

/* A text that ends in a colon is not a key. */
static void json_text_that_looks_like_a_key(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    gw_json_open(&json, '[');
    gw_json_text(&json, "a:");
    gw_json_text(&json, ":");
    gw_json_close(&json, ']');
    assert_string_equal(text.at, "[\"a:\",\":\"]");
}

static void json_reads_back(void **state)
{
    struct world *w = *state;
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, true);
    gw_json_node(&json, node_of(w, "a: [1, '2', {b: x}]\nc: \"tab\\there\"\n"));
    const struct gw_node *back = node_of(w, text.at);
    assert_non_null(back);
    assert_int_equal(gw_node_get(back, "a")->count, 3);
    assert_false(gw_node_get(back, "a")->first->quoted);
    assert_true(gw_node_get(back, "a")->first->next->quoted);
    assert_string_equal(text_at(back, "c"), "tab\there");
}

/* Records -----------------------------------------------------------------------------------------------------------
 */

static const char GOOD_CASE[] = "{edition: asce7-16, basic_wind_speed: 115 mph, exposure: C, mean_roof_height: 40 ft, "
                                "least_width: 80 ft, enclosure: enclosed, effective_area: 50 ft2, zone: 5}";

static bool load_case(struct world *w, const char *yaml, struct gw_assumptions *assumptions, struct gw_wind_case *out)
{
    struct gw_load load = {
        .arena = &w->arena, .diags = &w->diags, .assumptions = assumptions, .units = gw_units_standard()};
    const struct gw_node *node = node_of(w, yaml);
    assert_non_null(node);
    return gw_record_load(&load, &gw_wind_case_record, node, "case", out);
}

static bool assumed(const struct gw_assumptions *list, const char *text)
{
    for (size_t i = 0; i < list->n; i++)
        if (strcmp(list->items[i].text, text) == 0) return true;
    return false;
}

static void record_loads(void **state)
{
    struct world *w = *state;
    struct gw_assumptions assumptions = {0};
    struct gw_wind_case in;
    assert_true(load_case(w, GOOD_CASE, &assumptions, &in));
    assert_int_equal(in.edition, GW_ASCE7_16);
    assert_near(in.mean_roof_height, 12.192, 1e-12);
    assert_false(gw_given(in.kzt));
    assert_null(in.topography);
    assert_near(in.roof_slope, 0, 0);
    assert_int_equal(in.alternative_60_90, GW_NO);
    assert_true(assumed(&assumptions, "roof_slope: 0 deg (default)"));
}

struct record_fault {
    const char *yaml, *code, *key, *part; /* part of the message */
};

static const struct record_fault RECORD_FAULTS[] = {
    {"{editon: asce7-16}", "unknown_key", "editon", "did you mean 'edition'?"},
    {"{nothing_like_it: 1}", "unknown_key", "nothing_like_it", "is not a key of"},
    {"{edition: asce7-17}", "bad_value", "edition", "did you mean 'asce7-1"},
    {"{basic_wind_speed: 115}", "no_unit", "basic_wind_speed", "has no unit"},
    {"{basic_wind_speed: 115 psf}", "wrong_dimension", "basic_wind_speed", "wants a speed"},
    {"{basic_wind_speed: fast}", "wrong_type", "basic_wind_speed", "not 'fast'"},
    {"{basic_wind_speed: [115 mph]}", "wrong_type", "basic_wind_speed", "not a list"},
    {"{basic_wind_speed: 115 mhp}", "unknown_unit", "basic_wind_speed", "'mhp' is not a unit"},
    {"{basic_wind_speed: 900 mph}", "bad_value", "basic_wind_speed", "must lie between"},
    {"{basic_wind_speed: }", "wrong_type", "basic_wind_speed", "not nothing"},
    {"{zone: 4.5}", "wrong_type", "zone", "whole number"},
    {"{zone: 6}", "bad_value", "zone", "must lie between"},
    {"{alternative_60_90: maybe}", "wrong_type", "alternative_60_90", "true or false"},
    {"{topography: steep}", "wrong_type", "", "wants a mapping"},
};

static void record_faults(void **state)
{
    struct world *w = *state;
    for (size_t i = 0; i < sizeof RECORD_FAULTS / sizeof *RECORD_FAULTS; i++) {
        const struct record_fault *f = &RECORD_FAULTS[i];
        struct gw_wind_case in;
        w->diags.n = w->diags.errors = 0;
        assert_false(load_case(w, f->yaml, NULL, &in));
        const struct gw_diag *d = &w->diags.items[0];
        if (strcmp(d->code, f->code) != 0 || !strstr(d->message, f->part))
            print_error("%s: %s %s\n", f->yaml, d->code, d->message);
        assert_string_equal(d->code, f->code);
        assert_string_equal(d->key, f->key);
        assert_non_null(strstr(d->message, f->part));
    }
}

static void record_names_all_that_is_missing(void **state)
{
    struct world *w = *state;
    struct gw_wind_case in;
    assert_false(load_case(w, "{roof_slope: 1 deg}", NULL, &in));
    static const char *const required[] = {"edition",     "basic_wind_speed", "exposure", "mean_roof_height",
                                           "least_width", "enclosure",        "zone"};
    assert_int_equal(w->diags.errors, sizeof required / sizeof *required);
    for (size_t i = 0; i < w->diags.n; i++) {
        assert_string_equal(w->diags.items[i].code, "missing");
        assert_string_equal(w->diags.items[i].key, required[i]);
    }
}

static void record_warns_of_the_implausible(void **state)
{
    struct world *w = *state;
    struct gw_wind_case in;
    load_case(w, "{basic_wind_speed: 300 mph}", NULL, &in);
    assert_int_equal(w->diags.items[0].severity, GW_WARNING);
    assert_string_equal(w->diags.items[0].code, "implausible");
    assert_non_null(strstr(w->diags.items[0].message, "usual values"));
}

/* Every row of every table is found by its index, and the set loses none. */
static void used_rows_are_exact(void **state)
{
    (void)state;
    size_t n_tables;
    unsigned count = 0, seen = 0;
    const struct gw_table *list = gw_table_list(&n_tables);
    struct gw_used used = {.words = {0}}, every_third = used;
    assert_int_equal(gw_used_weakest(&used), GW_BASIS_NONE);
    for (size_t t = 0; t < n_tables; t++)
        for (size_t i = 0; i < list[t].n_rows; i++, count++) {
            const struct gw_row *row = gw_table_row(gw_tables_standard(), &list[t], i);
            assert_int_equal(row->index, count);
            assert_ptr_equal(gw_table_row_at(gw_tables_standard(), count), row);
            gw_used_add(count % 3 ? &used : &every_third, row);
            gw_used_add(count % 3 ? &used : &every_third, row);
        }
    for (unsigned i = 0; gw_used_next(&every_third, &i); i++, seen++) assert_int_equal(i, 3 * seen);
    assert_int_equal(seen, (count + 2) / 3);
    gw_used_merge(&used, &every_third);
    for (unsigned i = seen = 0; gw_used_next(&used, &i); i++, seen++) assert_int_equal(i, seen);
    assert_int_equal(seen, count);
}

static void the_weakest_of_used_rows(void **state)
{
    (void)state;
    const struct gw_row *best = NULL, *worst = NULL;
    struct gw_used used = {.words = {0}};
    size_t n_tables;
    const struct gw_table *list = gw_table_list(&n_tables);
    for (size_t t = 0; t < n_tables; t++) {
        const struct gw_row *row = gw_table_row(gw_tables_standard(), &list[t], 0);
        if (!best || row->basis < best->basis) best = row;
        if (!worst || row->basis > worst->basis) worst = row;
    }
    assert_true(best->basis < worst->basis);
    gw_used_add(&used, best);
    assert_int_equal(gw_used_weakest(&used), best->basis);
    gw_used_add(&used, worst);
    assert_int_equal(gw_used_weakest(&used), worst->basis);
    gw_used_remove(&used, worst);
    assert_int_equal(gw_used_weakest(&used), best->basis);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(used_rows_are_exact),
        cmocka_unit_test(the_weakest_of_used_rows),
        WORLD_TEST(arena_zeroes_and_aligns),
        WORLD_TEST(arena_rewind_keeps_one_block),
        cmocka_unit_test(the_guard_comes_back),
        WORLD_TEST(fingerprints),
        WORLD_TEST(text_grows),
        cmocka_unit_test(numbers),
        cmocka_unit_test(numbers_under_a_comma_locale),
        WORLD_TEST(numbers_of_any_length),
        cmocka_unit_test(numbers_round_trip),
        cmocka_unit_test(quantities),
        cmocka_unit_test(quantity_fault_place),
        WORLD_TEST(units_round_trip),
        WORLD_TEST(bare_numbers_and_examples),
        WORLD_TEST(yaml_refusals),
        WORLD_TEST(yaml_depth),
        WORLD_TEST(yaml_all_duplicates_in_one_run),
        WORLD_TEST(yaml_places),
        WORLD_TEST(nodes_are_set_by_path),
        WORLD_TEST(diagnostics_show_the_line),
        WORLD_TEST(sources_that_cannot_be_read),
        WORLD_TEST(diagnostics_stop_at_the_limit),
        WORLD_TEST(csv_forms),
        WORLD_TEST(csv_refusals),
        WORLD_TEST(csv_places),
        cmocka_unit_test(edit_distance),
        WORLD_TEST(json_writing),
        WORLD_TEST(nodes_come_back_as_they_came),
        WORLD_TEST(json_text_that_looks_like_a_key),
        WORLD_TEST(json_reads_back),
        WORLD_TEST(record_loads),
        WORLD_TEST(record_faults),
        WORLD_TEST(record_names_all_that_is_missing),
        WORLD_TEST(record_warns_of_the_implausible),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
