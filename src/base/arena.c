#include "galeward/arena.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct gw_arena_block {
    struct gw_arena_block *older;
    size_t used, size;
    max_align_t data[];
};

enum { FIRST_BLOCK = 16 * 1024, LARGEST_STEP = 4 * 1024 * 1024 };

static void fail(struct gw_arena *arena)
{
    if (arena->out_of_memory) arena->out_of_memory();
    abort();
}

void gw_arena_init(struct gw_arena *arena, void (*out_of_memory)(void))
{
    *arena = (struct gw_arena){.out_of_memory = out_of_memory};
}

static void free_from(struct gw_arena *arena, struct gw_arena_block *block)
{
    while (block) {
        struct gw_arena_block *older = block->older;
        arena->reserved -= block->size;
        free(block);
        block = older;
    }
}

void gw_arena_release(struct gw_arena *arena)
{
    free_from(arena, arena->newest);
    arena->newest = NULL;
}

void gw_arena_rewind(struct gw_arena *arena)
{
    struct gw_arena_block *kept = arena->newest;
    if (!kept) return;
    free_from(arena, kept->older);
    kept->older = NULL;
    kept->used = 0;
}

static struct gw_arena_block *add_block(struct gw_arena *arena, size_t wanted)
{
    size_t size = arena->newest ? arena->newest->size * 2 : FIRST_BLOCK;
    if (size > LARGEST_STEP) size = LARGEST_STEP;
    if (size < wanted) size = wanted;
    struct gw_arena_block *block = malloc(sizeof *block + size);
    if (!block) fail(arena);
    *block = (struct gw_arena_block){.older = arena->newest, .size = size};
    arena->newest = block;
    arena->reserved += size;
    return block;
}

void *gw_alloc_bare(struct gw_arena *arena, size_t bytes)
{
    const size_t align = _Alignof(max_align_t);
    bytes = (bytes + align - 1) / align * align;
    struct gw_arena_block *block = arena->newest;
    if (!block || block->size - block->used < bytes) block = add_block(arena, bytes);
    void *result = (char *)block->data + block->used;
    block->used += bytes;
    return result;
}

void *gw_alloc(struct gw_arena *arena, size_t count, size_t size)
{
    if (size && count > (SIZE_MAX / 2) / size) fail(arena);
    return memset(gw_alloc_bare(arena, count * size), 0, count * size);
}

char *gw_strndup(struct gw_arena *arena, const char *text, size_t length)
{
    char *copy = gw_alloc(arena, length + 1, 1);
    memcpy(copy, text, length);
    return copy;
}

char *gw_strdup(struct gw_arena *arena, const char *text) { return gw_strndup(arena, text, strlen(text)); }

char *gw_format(struct gw_arena *arena, const char *format, ...)
{
    va_list args, again;
    va_start(args, format);
    va_copy(again, args);
    int length = vsnprintf(NULL, 0, format, args);
    va_end(args);
    size_t room = length < 0 ? 0 : (size_t)length;
    char *text = gw_alloc(arena, room + 1, 1);
    if (length >= 0) vsnprintf(text, room + 1, format, again);
    va_end(again);
    return text;
}

void *gw_grow(struct gw_arena *arena, void *items, size_t used, size_t *capacity, size_t size)
{
    if (used < *capacity) return items;
    size_t larger = *capacity ? *capacity * 2 : 8;
    void *moved = gw_alloc(arena, larger, size);
    if (used) memcpy(moved, items, used * size);
    *capacity = larger;
    return moved;
}
