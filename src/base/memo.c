#include "galeward/memo.h"

#include <stdint.h>
#include <string.h>

struct gw_memo_entry {
    void *key; /* NULL: free */
    size_t size;
    uint64_t hash;
    void *value;
};

/* Eight bytes at a time, multiplied and mixed down, since the table takes the lower bits. */
static uint64_t hash_of(const unsigned char *key, size_t size)
{
    const uint64_t odd = 0x9E3779B97F4A7C15u;
    const size_t whole = size / sizeof(uint64_t) * sizeof(uint64_t);
    uint64_t hash = size * odd, word;
    for (size_t i = 0; i < whole; i += sizeof word) {
        memcpy(&word, key + i, sizeof word);
        hash = (hash ^ word) * odd;
        hash ^= hash >> 32;
    }
    word = 0;
    memcpy(&word, key + whole, size - whole);
    hash = (hash ^ word) * odd;
    return hash ^ hash >> 32;
}

static struct gw_memo_entry *find(const struct gw_memo *memo, const void *key, size_t size, uint64_t hash)
{
    size_t i = (size_t)hash & (memo->slots - 1);
    for (; memo->entries[i].key; i = (i + 1) & (memo->slots - 1)) {
        const struct gw_memo_entry *e = &memo->entries[i];
        if (e->hash == hash && e->size == size && memcmp(e->key, key, size) == 0) break;
    }
    return &memo->entries[i];
}

static void grow(struct gw_memo *memo, struct gw_arena *arena)
{
    const struct gw_memo old = *memo;
    memo->slots = old.slots ? 2 * old.slots : 32;
    memo->entries = gw_alloc(arena, memo->slots, sizeof *memo->entries);
    for (size_t i = 0; i < old.slots; i++) {
        const struct gw_memo_entry *e = &old.entries[i];
        if (e->key) *find(memo, e->key, e->size, e->hash) = *e;
    }
}

void **gw_memo_at(struct gw_memo *memo, struct gw_arena *arena, const void *key, size_t size)
{
    const uint64_t hash = hash_of(key, size);
    if (4 * memo->n >= 3 * memo->slots) grow(memo, arena);
    struct gw_memo_entry *e = find(memo, key, size, hash);
    if (!e->key) {
        *e = (struct gw_memo_entry){gw_alloc(arena, 1, size), size, hash, NULL};
        memcpy(e->key, key, size);
        memo->n++;
    }
    return &e->value;
}

void **gw_memo_named(struct gw_memo *memo, struct gw_arena *arena, const void *key, size_t size, const char *name)
{
    const size_t length = name ? strlen(name) : 0, whole = size + length;
    char room[512], *bytes = whole <= sizeof room ? room : gw_alloc(arena, 1, whole);
    memcpy(bytes, key, size);
    for (size_t i = 0; i < length; i++) bytes[size + i] = name[i];
    return gw_memo_at(memo, arena, bytes, whole);
}
