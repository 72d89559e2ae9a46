/* What was worked out once, found again by what it was worked out from: a hash table of byte keys in an arena. */
#ifndef GALEWARD_MEMO_H
#define GALEWARD_MEMO_H

#include "galeward/arena.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_memo_entry;

/* All zero is empty. */
struct gw_memo {
    struct gw_memo_entry *entries;
    size_t slots, n;
};

/* Where the value of that key stands, NULL at first; until the next call. The key's bytes are copied, so it has no
 * padding and no part that differs where the meaning is the same. */
void **gw_memo_at(struct gw_memo *memo, struct gw_arena *arena, const void *key, size_t size);
/* The same of a key that is `size` bytes, of one size in the whole memo, and then a name; NULL is as "". */
void **gw_memo_named(struct gw_memo *memo, struct gw_arena *arena, const void *key, size_t size, const char *name);

#ifdef __cplusplus
}
#endif

#endif
