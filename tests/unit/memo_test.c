/* Memos: what was put in by a key comes back by it, through every growth. */
#include "support.h"

#include "galeward/memo.h"

static void every_key_comes_back(void **state)
{
    struct gw_arena arena;
    struct gw_memo memo = {0};
    static size_t values[5000];
    (void)state;
    gw_arena_init(&arena, NULL);
    for (size_t i = 0; i < 5000; i++) {
        const uint32_t key[3] = {(uint32_t)i, 7, (uint32_t)(i / 3)}; /* no multiple of eight bytes */
        void **at = gw_memo_at(&memo, &arena, key, sizeof key);
        assert_null(*at);
        *at = &values[i];
    }
    assert_int_equal(memo.n, 5000);
    for (size_t i = 0; i < 5000; i++) {
        const uint32_t key[3] = {(uint32_t)i, 7, (uint32_t)(i / 3)};
        assert_ptr_equal(*gw_memo_at(&memo, &arena, key, sizeof key), &values[i]);
    }
    gw_arena_release(&arena);
}

static void a_name_parts_keys(void **state)
{
    struct gw_arena arena;
    struct gw_memo memo = {0};
    const int head[2] = {3, 4}, other[2] = {4, 3};
    char longer[2000];
    int first, second, third;
    (void)state;
    gw_arena_init(&arena, NULL);
    memset(longer, 'x', sizeof longer - 1);
    longer[sizeof longer - 1] = '\0';
    *gw_memo_named(&memo, &arena, head, sizeof head, "east") = &first;
    *gw_memo_named(&memo, &arena, head, sizeof head, NULL) = &second;
    *gw_memo_named(&memo, &arena, head, sizeof head, longer) = &third;
    assert_null(*gw_memo_named(&memo, &arena, other, sizeof other, "east"));
    assert_ptr_equal(*gw_memo_named(&memo, &arena, head, sizeof head, "east"), &first);
    assert_ptr_equal(*gw_memo_named(&memo, &arena, head, sizeof head, ""), &second);
    assert_ptr_equal(*gw_memo_named(&memo, &arena, head, sizeof head, longer), &third);
    gw_arena_release(&arena);
}

static void length_is_part_of_a_key(void **state)
{
    struct gw_arena arena;
    struct gw_memo memo = {0};
    const unsigned char zeros[16] = {0};
    int value;
    (void)state;
    gw_arena_init(&arena, NULL);
    *gw_memo_at(&memo, &arena, zeros, 8) = &value;
    assert_null(*gw_memo_at(&memo, &arena, zeros, 16));
    assert_ptr_equal(*gw_memo_at(&memo, &arena, zeros, 8), &value);
    gw_arena_release(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_key_comes_back),
        cmocka_unit_test(a_name_parts_keys),
        cmocka_unit_test(length_is_part_of_a_key),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
