/* Memory that dies together.
 *
 * One arena a project, a run or a stream case; its blocks come from the host. Nothing is freed singly. Requests are
 * zeroed and aligned for any type.
 *
 * Running out of memory is the one failure that the library's functions do not return: they jump to the innermost
 * gw_guard of the arena, which returns false. Call the library under a guard:
 *
 *     static void work(void *argument) { struct job *job = argument; ... gw_model_load(&job->model, &job->arena, ...);
 * }
 *     ...
 *     gw_arena_init(&job.arena, &host);
 *     if (!gw_guard(&job.arena, work, &job)) ... no memory left ...
 *     gw_arena_release(&job.arena);
 *
 * After that what is in the arena is of no use but to be released or rewound; nothing else is lost. Without a guard
 * gw_alloc and gw_alloc_bare return NULL, for which no other function of the library is made: a host whose `allocate`
 * never gives NULL needs none. An arena and its guard belong to one thread. */
#ifndef GALEWARD_ARENA_H
#define GALEWARD_ARENA_H

#include "galeward/host.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_arena_block;
struct gw_guard_point;

struct gw_arena {
    struct gw_arena_block *newest;
    size_t reserved; /* bytes held from the host */
    const struct gw_host *host;
    struct gw_guard_point *guard;
};

/* The host must outlive the arena. NULL: malloc and free, and no files. */
void gw_arena_init(struct gw_arena *arena, const struct gw_host *host);
void gw_arena_release(struct gw_arena *arena);
/* Forget all that was handed out, keep the newest block for the next round. */
void gw_arena_rewind(struct gw_arena *arena);

/* Calls `run(argument)`. False when the arena ran out of memory meanwhile. Guards of one arena may be nested. */
bool gw_guard(struct gw_arena *arena, void (*run)(void *argument), void *argument);
/* As if memory had run out: jumps to the guard. Comes back only where there is none. */
void gw_arena_fail(struct gw_arena *arena);

void *gw_alloc(struct gw_arena *arena, size_t count, size_t size);
/* Not zeroed: for a workspace that may never be touched. */
void *gw_alloc_bare(struct gw_arena *arena, size_t bytes);
/* The same, but NULL instead of a jump: for where something must be put away first. */
void *gw_alloc_or_null(struct gw_arena *arena, size_t bytes);
/* Makes the last request that was answered larger where it stands, `bytes` long until now; what is new is not zeroed.
 * False, and nothing is done: it is not the last, or its block is full. */
bool gw_extend(struct gw_arena *arena, const void *memory, size_t bytes, size_t wanted);
char *gw_strndup(struct gw_arena *arena, const char *text, size_t length);
char *gw_strdup(struct gw_arena *arena, const char *text);
/* printf into the arena; never give it a floating-point value, whose printing would follow the locale. */
char *gw_format(struct gw_arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Room for one more item in a growing array: doubles `*items` (moved within the arena) when it is full. */
void *gw_grow(struct gw_arena *arena, void *items, size_t used, size_t *capacity, size_t size);

#ifdef __cplusplus
}
#endif

#endif
