/* Messages: a format and typed values, worded for their reader. */
#include "support.h"

#include "galeward/message.h"

static void words_of(struct gw_arena *arena, const struct gw_message *m, const char *us, const char *si)
{
    assert_string_equal(gw_message_text(arena, m, GW_US), us);
    assert_string_equal(gw_message_text(arena, m, GW_SI), si);
}

static void quantities_follow_the_reader(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    struct gw_message m = GW_SAY(&arena, "tested {} {}, here {}", gw_of_text("span"), gw_of_quantity(GW_LENGTH, 3.048),
                                 gw_of_shown(GW_LENGTH, 4.572));
    words_of(&arena, &m, "tested span 10 ft, here 15.00 ft", "tested span 3.048 m, here 4.572 m");
    struct gw_message outer = GW_SAY(&arena, "{}: {} of {}", gw_of_message(&m), gw_of_count(3), gw_of_number(0.25, 3));
    words_of(&arena, &outer, "tested span 10 ft, here 15.00 ft: 3 of 0.25",
             "tested span 3.048 m, here 4.572 m: 3 of 0.25");
    m = GW_SAY(&arena, ": {}", gw_of_quantity(GW_MASS, 4.5359237));
    outer = GW_SAY(&arena, "a 10 lb weight{}", gw_of_abroad(GW_US, &m));
    words_of(&arena, &outer, "a 10 lb weight", "a 10 lb weight: 4.536 kg");
    gw_arena_release(&arena);
}

/* Fractions to 1/32 in where they are such, else three digits to the strict side, four where they are exact. */
/* A demand goes up where a quantity goes to the nearest; exact ones stay, to the last bits of a double. */
static void demands_go_up(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    const double mm = 1e-3;
    struct gw_message m = GW_SAY(&arena, "{} {} {}", gw_of_demand(GW_THICKNESS, 10.0001 * mm),
                                 gw_of_quantity(GW_THICKNESS, 10.0001 * mm), gw_of_demand(GW_THICKNESS, 10.01 * mm));
    assert_string_equal(gw_message_text(&arena, &m, GW_SI), "10.01 mm 10 mm 10.01 mm");
    m = GW_SAY(&arena, "{}, {}, {}", gw_of_demand(GW_THICKNESS, 0), gw_of_demand(GW_THICKNESS, -1.23411 * mm),
               gw_of_bare(gw_of_demand(GW_THICKNESS, 123.41 * mm)));
    assert_string_equal(gw_message_text(&arena, &m, GW_SI), "0 mm, -1.235 mm, 123.5");
    gw_arena_release(&arena);
}

/* A capacity goes down; one that is exact stays. */
static void capacities_go_down(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    const double mm = 1e-3;
    struct gw_message m =
        GW_SAY(&arena, "{} {} {}", gw_of_capacity(GW_THICKNESS, 10.0099 * mm), gw_of_capacity(GW_THICKNESS, 10.01 * mm),
               gw_of_bare(gw_of_capacity(GW_THICKNESS, 123.47 * mm)));
    assert_string_equal(gw_message_text(&arena, &m, GW_SI), "10 mm 10.01 mm 123.4");
    m = GW_SAY(&arena, "{}, {}", gw_of_capacity(GW_THICKNESS, 0), gw_of_capacity(GW_PRESSURE, 28009.9));
    assert_string_equal(gw_message_text(&arena, &m, GW_SI), "0 mm, 28000 Pa");
    gw_arena_release(&arena);
}

static void as_the_trade_says_it(void **state)
{
    static const struct {
        enum gw_dim dim;
        double si;
        int side;
        const char *us, *si_words;
    } cases[] = {{GW_THICKNESS, 1.4375 * 0.0254, 1, "1 7/16 in", "36.6 mm"},
                 {GW_THICKNESS, 0.0254 / 32, -1, "1/32 in", "0.793 mm"},
                 {GW_THICKNESS, 0.0254 / 24, -1, "0.0416 in", "1.05 mm"},
                 {GW_THICKNESS, 0.0254 / 24, 1, "0.0417 in", "1.06 mm"},
                 {GW_THICKNESS, 2 * 0.0254, 1, "2 in", "50.8 mm"},
                 {GW_THICKNESS, -0.25 * 0.0254, 0, "-1/4 in", "-6.35 mm"},
                 {GW_THICKNESS, 0, 0, "0 in", "0 mm"},
                 {GW_SLOPE, 1.0 / 48, 1, "1/4 in per ft", "1:48"},
                 {GW_SLOPE, -1.0 / 48, 1, "-1/4 in per ft", "-1:48"},
                 {GW_SLOPE, 0.02, 1, "0.24 in per ft", "1:50"},
                 {GW_SLOPE, 0.0205, 1, "0.246 in per ft", "1:48.7"},
                 {GW_SLOPE, -0.05, 0, "-0.6 in per ft", "-1:20"},
                 {GW_THICKNESS, 0.0254 / 24, -GW_BY_TAPE, "1/32 in", "1 mm"},
                 {GW_THICKNESS, 1.264 * 0.0254, GW_BY_TAPE, "1 9/32 in", "32.5 mm"},
                 {GW_THICKNESS, 0.01 * 0.0254, -GW_BY_TAPE, "0.01 in", "0.254 mm"},
                 {GW_SLOPE, 0, 0, "0 in per ft", "0"},
                 {GW_PRESSURE, 6.66666667 * 47.880258980336, 1, "6.67 psf", "320 Pa"}};
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct gw_value value = gw_of_trade(cases[i].dim, cases[i].si, cases[i].side);
        const struct gw_message said = GW_SAY(&arena, "{}", value);
        words_of(&arena, &said, cases[i].us, cases[i].si_words);
    }
    const struct gw_message range = GW_SAY(&arena, "{} to {}", gw_of_bare(gw_of_trade(GW_THICKNESS, 0.0127, 1)),
                                           gw_of_trade(GW_THICKNESS, 0.0254, -1));
    words_of(&arena, &range, "1/2 to 1 in", "12.7 to 25.4 mm");
    gw_arena_release(&arena);
}

static void what_was_not_said_prints_nothing(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    struct gw_message none = {0}, plain = GW_PLAINLY("said");
    struct gw_message both = gw_say_both(&arena, &none, "; ", &plain);
    assert_false(gw_said(&none));
    words_of(&arena, &none, "", "");
    words_of(&arena, &both, "said", "said");
    both = gw_say_both(&arena, &plain, "; ", &plain);
    words_of(&arena, &both, "said; said", "said; said");
    gw_arena_release(&arena);
}

static void alike_by_words_and_values(void **state)
{
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    struct gw_message a = GW_SAY(&arena, "at {}", gw_of_quantity(GW_PRESSURE, 1000)),
                      b = GW_SAY(&arena, "at {}", gw_of_quantity(GW_PRESSURE, 1000)),
                      c = GW_SAY(&arena, "at {}", gw_of_quantity(GW_PRESSURE, 1001));
    assert_true(gw_message_same(&a, &b));
    assert_false(gw_message_same(&a, &c));
    gw_arena_release(&arena);
}

/* Figures do not tell alike messages apart, words do. */
static void shapes_leave_figures_out(void **state)
{
    struct gw_arena arena;
    struct gw_text a, b, c;
    (void)state;
    gw_arena_init(&arena, NULL);
    const struct gw_message two = GW_SAY(&arena, "here {}", gw_of_quantity(GW_LENGTH, 2)),
                            three = GW_SAY(&arena, "here {}", gw_of_quantity(GW_LENGTH, 3));
    const struct gw_message first = GW_SAY(&arena, "{}: {}", gw_of_text("R-1"), gw_of_message(&two)),
                            same = GW_SAY(&arena, "{}: {}", gw_of_text("R-1"), gw_of_message(&three)),
                            other = GW_SAY(&arena, "{}: {}", gw_of_text("R-2"), gw_of_message(&two));
    gw_text_init(&a, &arena);
    gw_text_init(&b, &arena);
    gw_text_init(&c, &arena);
    gw_message_shape(&a, &first);
    gw_message_shape(&b, &same);
    gw_message_shape(&c, &other);
    assert_string_equal(a.at, b.at);
    assert_string_not_equal(a.at, c.at);
    gw_arena_release(&arena);
}

static void refusals_are_worded_by_their_reader(void **state)
{
    struct gw_engine engine;
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, NULL);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_null(engine.fault.format);
    assert_int_equal(gw_refuse(&engine, GW_OUTSIDE_METHOD, "span", "{}: up to {}", gw_of_text("span"),
                               gw_of_quantity(GW_LENGTH, 3.048)),
                     GW_OUTSIDE_METHOD);
    const struct gw_message kept = gw_fault_kept(&arena, &engine.fault);
    assert_string_equal(gw_fault_text(&arena, &engine.fault, GW_US), "span: up to 10 ft");
    assert_int_equal(gw_refuse(&engine, GW_MISSING, "cb", "cb is needed"), GW_MISSING);
    assert_int_equal(engine.fault.n, 0);
    assert_string_equal(gw_fault_text(&arena, &engine.fault, GW_SI), "cb is needed");
    words_of(&arena, &kept, "span: up to 10 ft", "span: up to 3.048 m");
    gw_arena_release(&arena);
}

/* Sentences in the sources ----------------------------------------------------------------------------------------- */

/* To the end of a string, of brackets, or of the argument: "," or ")". */
static const char *argument_end(const char *at)
{
    int depth = 0;
    for (bool quoted = false; *at && (quoted || depth || (*at != ',' && *at != ')')); at++) {
        if (*at == '\\') at++;
        else if (*at == '"') quoted = !quoted;
        else if (!quoted) depth += (*at == '(' || *at == '{' || *at == '[') - (*at == ')' || *at == '}' || *at == ']');
    }
    return at;
}

/* `at` stands behind the opening bracket, `before` arguments come before the format. False: the format is not written
 * out there. */
static bool slots_and_values(int *slots, int *values, const char *at, int before)
{
    *slots = *values = 0;
    for (; before; before--) at = argument_end(at) + 1;
    at += strspn(at, " \n");
    if (*at != '"') return false;
    const char *end = argument_end(at);
    for (; at < end; at++) *slots += at[0] == '{' && at[1] == '}';
    for (; *end == ','; end = argument_end(end + 1)) ++*values;
    return true;
}

static int check_sentences(const char *path, const char *source, const char *call, int before)
{
    int checked = 0, slots, values;
    for (const char *at = source; (at = strstr(at, call)) != NULL;) {
        at += strlen(call);
        if (!slots_and_values(&slots, &values, at, before)) continue;
        if (slots != values) fail_msg("%s: %d slots, %d values: %.60s", path, slots, values, at);
        assert_true(strcmp(call, "gw_refuse(") != 0 || values <= GW_FAULT_VALUES);
        checked++;
    }
    return checked;
}

/* What the compiler does for printf. */
static void every_slot_has_its_value(void **state)
{
    static char source[1 << 16];
    glob_t found = {0};
    int refusals = 0, sentences = 0;
    (void)state;
    assert_int_equal(glob("src/*/*.[ch]", 0, NULL, &found), 0);
    assert_int_equal(glob("src/*/*/*.c", GLOB_APPEND, NULL, &found), 0);
    for (size_t i = 0; i < found.gl_pathc; i++) {
        FILE *file = fopen(found.gl_pathv[i], "rb");
        assert_non_null(file);
        const size_t n = fread(source, 1, sizeof source - 1, file);
        assert_true(n < sizeof source - 1);
        source[n] = 0;
        fclose(file);
        refusals += check_sentences(found.gl_pathv[i], source, "gw_refuse(", 3);
        sentences += check_sentences(found.gl_pathv[i], source, "GW_SAY(", 1);
    }
    globfree(&found);
    assert_true(refusals > 400 && sentences > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quantities_follow_the_reader), cmocka_unit_test(demands_go_up),
        cmocka_unit_test(quantities_follow_the_reader), cmocka_unit_test(capacities_go_down),
        cmocka_unit_test(as_the_trade_says_it),         cmocka_unit_test(what_was_not_said_prints_nothing),
        cmocka_unit_test(alike_by_words_and_values),    cmocka_unit_test(refusals_are_worded_by_their_reader),
        cmocka_unit_test(every_slot_has_its_value),     cmocka_unit_test(shapes_leave_figures_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
