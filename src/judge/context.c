/* The context of an answer: the engine that checks run, and the sets of rows that they used. */
#include "judge_internal.h"

#include <string.h>

void gw_ask_init(struct gw_ask *ask, const struct gw_model *model, const struct gw_takeoff *takeoff,
                 struct gw_arena *arena)
{
    *ask = (struct gw_ask){.model = model, .takeoff = takeoff, .arena = arena};
    ask->memory = gw_alloc(arena, 1, sizeof *ask->memory);
    gw_ask_open(ask);
}

void gw_ask_open(struct gw_ask *ask) { gw_engine_init(&ask->engine, ask->model->tables, ask->trace); }

/* The different sets are few, so that findings share them. */
static const struct gw_used *shared_set(struct gw_ask *ask, const struct gw_used *used)
{
    void **set = gw_memo_at(&ask->memory->sets, ask->arena, used, sizeof *used);
    if (!*set) *set = memcpy(gw_alloc(ask->arena, 1, sizeof *used), used, sizeof *used);
    return *set;
}

const struct gw_used *gw_ask_close(struct gw_ask *ask, const struct gw_used *more)
{
    if (more) gw_used_merge(&ask->engine.used, more);
    return shared_set(ask, &ask->engine.used);
}
