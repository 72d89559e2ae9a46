#include "galeward/arena.h"

#include <setjmp.h>
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

struct gw_guard_point {
    jmp_buf back;
};

enum { FIRST_BLOCK = 16 * 1024, LARGEST_STEP = 4 * 1024 * 1024 };

static void *from_malloc(void *user, size_t bytes)
{
    (void)user;
    return malloc(bytes);
}

static void to_free(void *user, void *memory)
{
    (void)user;
    free(memory);
}

static struct gw_read no_files(void *user, const char *path, gw_take *take, void *sink)
{
    (void)user, (void)path, (void)take, (void)sink;
    return (struct gw_read){GW_READ_REFUSED, "files are not read here"};
}

void gw_arena_init(struct gw_arena *arena, const struct gw_host *host)
{
    static const struct gw_host plain = {.allocate = from_malloc, .release = to_free, .read = no_files};
    *arena = (struct gw_arena){.host = host ? host : &plain};
}

bool gw_guard(struct gw_arena *arena, void (*run)(void *argument), void *argument)
{
    struct gw_guard_point here, *const outer = arena->guard;
    arena->guard = &here;
    if (setjmp(here.back) != 0) {
        arena->guard = outer;
        return false;
    }
    run(argument);
    arena->guard = outer;
    return true;
}

void gw_arena_fail(struct gw_arena *arena)
{
    if (arena->guard) longjmp(arena->guard->back, 1);
}

static void free_from(struct gw_arena *arena, struct gw_arena_block *block)
{
    while (block) {
        struct gw_arena_block *older = block->older;
        arena->reserved -= block->size;
        arena->host->release(arena->host->user, block);
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
    const struct gw_host *host = arena->host;
    size_t size = host->step ? host->step : arena->newest ? arena->newest->size * 2 : FIRST_BLOCK;
    if (!host->step && size > LARGEST_STEP) size = LARGEST_STEP;
    if (size < wanted) size = wanted;
    struct gw_arena_block *block = host->allocate(host->user, sizeof *block + size);
    if (!block) return NULL;
    *block = (struct gw_arena_block){.older = arena->newest, .size = size};
    arena->newest = block;
    arena->reserved += size;
    return block;
}

static size_t aligned(size_t bytes)
{
    const size_t align = _Alignof(max_align_t);
    return (bytes + align - 1) / align * align;
}

void *gw_alloc_or_null(struct gw_arena *arena, size_t bytes)
{
    if (bytes > SIZE_MAX / 2) return NULL;
    bytes = aligned(bytes);
    struct gw_arena_block *block = arena->newest;
    if (!block || block->size - block->used < bytes) block = add_block(arena, bytes);
    if (!block) return NULL;
    void *result = (char *)block->data + block->used;
    block->used += bytes;
    return result;
}

bool gw_extend(struct gw_arena *arena, const void *memory, size_t bytes, size_t wanted)
{
    struct gw_arena_block *block = arena->newest;
    if (!block || !memory || wanted > SIZE_MAX / 2) return false;
    const size_t held = aligned(bytes), whole = aligned(wanted);
    if ((const char *)memory + held != (const char *)block->data + block->used) return false;
    if (whole - held > block->size - block->used) return false;
    block->used += whole - held;
    return true;
}

void *gw_alloc_bare(struct gw_arena *arena, size_t bytes)
{
    void *result = gw_alloc_or_null(arena, bytes);
    if (!result) gw_arena_fail(arena);
    return result;
}

void *gw_alloc(struct gw_arena *arena, size_t count, size_t size)
{
    size_t bytes = size && count > (SIZE_MAX / 2) / size ? SIZE_MAX : count * size;
    void *result = gw_alloc_bare(arena, bytes);
    return result ? memset(result, 0, bytes) : NULL;
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
    char usual[256]; /* most fit at the first try */
    va_list args, again;
    va_start(args, format);
    va_copy(again, args);
    const int printed = vsnprintf(usual, sizeof usual, format, args);
    va_end(args);
    const size_t length = printed < 0 ? 0 : (size_t)printed;
    char *text = gw_alloc(arena, length + 1, 1);
    if (length < sizeof usual) memcpy(text, usual, length);
    else vsnprintf(text, length + 1, format, again);
    va_end(again);
    return text;
}

void *gw_grow(struct gw_arena *arena, void *items, size_t used, size_t *capacity, size_t size)
{
    if (used < *capacity) return items;
    const size_t larger = *capacity ? *capacity * 2 : 8;
    if (larger <= SIZE_MAX / 2 / size && gw_extend(arena, items, *capacity * size, larger * size)) {
        memset((char *)items + *capacity * size, 0, (larger - *capacity) * size);
        *capacity = larger;
        return items;
    }
    void *moved = gw_alloc(arena, larger, size);
    if (used) memcpy(moved, items, used * size);
    *capacity = larger;
    return moved;
}
