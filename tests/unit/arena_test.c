/* Arena, guard, fingerprints, text that grows. */
#include "support.h"

#include "galeward/sha256.h"

#include <limits.h>

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

static void only_the_last_request_is_extended(void **state)
{
    struct world *w = *state;
    size_t capacity = 0;
    unsigned *numbers = NULL, *stays = NULL;
    char *first = gw_alloc(&w->arena, 20, 1), *last = gw_alloc(&w->arena, 20, 1);
    assert_false(gw_extend(&w->arena, first, 20, 40));
    assert_true(gw_extend(&w->arena, last, 20, 400));
    assert_true((char *)gw_alloc(&w->arena, 1, 1) >= last + 400);
    assert_false(gw_extend(&w->arena, last, 400, 800));
    assert_false(gw_extend(&w->arena, NULL, 0, 16));
    for (unsigned i = 0; i < 10000; i++) {
        numbers = gw_grow(&w->arena, numbers, i, &capacity, sizeof *numbers);
        for (size_t k = i; k < capacity; k++) assert_int_equal(numbers[k], 0);
        numbers[i] = i + 1;
        if (i == 8) stays = numbers;
        if (i == 60) assert_ptr_equal(stays, numbers);
        if (i == 61) gw_alloc(&w->arena, 1, 1); /* from here on it is moved */
    }
    for (unsigned i = 0; i < 10000; i++) assert_int_equal(numbers[i], i + 1);
    assert_ptr_not_equal(stays, numbers);
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

static void counts_are_digits(void **state)
{
    struct world *w = *state;
    const long counts[] = {0, 7, -7, 1000, LONG_MAX, LONG_MIN};
    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
        struct gw_text text;
        gw_text_init(&text, &w->arena);
        gw_text_count(&text, counts[i]);
        assert_string_equal(text.at, gw_format(&w->arena, "%ld", counts[i]));
    }
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

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(arena_zeroes_and_aligns),
        WORLD_TEST(arena_rewind_keeps_one_block),
        WORLD_TEST(only_the_last_request_is_extended),
        cmocka_unit_test(the_guard_comes_back),
        WORLD_TEST(fingerprints),
        WORLD_TEST(counts_are_digits),
        WORLD_TEST(text_grows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
