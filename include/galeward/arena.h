/* Memory that dies together.
 *
 * One arena a project, a run or a stream case. Nothing is freed singly. Requests are zeroed and aligned for
 * any type. Running out of memory is the one failure that is not returned: `out_of_memory` is called, and must
 * not come back (the program leaves with exit code 3; a host may jump); without one the process aborts. */
#ifndef GALEWARD_ARENA_H
#define GALEWARD_ARENA_H

#include <stddef.h>

struct gw_arena_block;

struct gw_arena {
    struct gw_arena_block *newest;
    size_t reserved; /* bytes held from the system */
    void (*out_of_memory)(void);
};

void gw_arena_init(struct gw_arena *arena, void (*out_of_memory)(void));
void gw_arena_release(struct gw_arena *arena);
/* Forget all that was handed out, keep the newest block for the next round. */
void gw_arena_rewind(struct gw_arena *arena);

void *gw_alloc(struct gw_arena *arena, size_t count, size_t size);
/* Not zeroed: for a workspace that may never be touched. */
void *gw_alloc_bare(struct gw_arena *arena, size_t bytes);
char *gw_strndup(struct gw_arena *arena, const char *text, size_t length);
char *gw_strdup(struct gw_arena *arena, const char *text);
/* printf into the arena; never give it a floating-point value, whose printing would follow the locale. */
char *gw_format(struct gw_arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Room for one more item in a growing array: doubles `*items` (moved within the arena) when it is full. */
void *gw_grow(struct gw_arena *arena, void *items, size_t used, size_t *capacity, size_t size);

#endif
