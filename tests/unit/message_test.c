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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quantities_follow_the_reader),
        cmocka_unit_test(what_was_not_said_prints_nothing),
        cmocka_unit_test(alike_by_words_and_values),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
