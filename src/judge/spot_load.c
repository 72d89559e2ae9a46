/* Places that one may be which was said in part: what each carries, and which are alike. */
#include "judge/spot_load.h"

#include "judge/judge_internal.h"
#include "judge/line.h"
#include "judge/plated.h"

#include <stdint.h>
#include <string.h>

/* N/m: what a line of screws takes for each length of plate, as the check of screws has it: of a horizontal what its
 * lites shed to its middle. */
static double suction_along(struct gw_ask *ask, const struct gw_element *e)
{
    struct gw_demand d;
    const struct gw_element *hung = ask->system ? gw_as_fastened(ask, ask->system, e) : e;
    const struct gw_engine own = ask->engine;
    gw_demand_clear(&d, NULL, &(struct gw_place){.where = e->id, .element = hung, .component = e->component});
    ask->engine.trace = NULL;
    gw_demand_screw(&d, ask, &(struct gw_place){.where = e->id, .element = hung, .component = e->component});
    ask->engine = own;
    const double pull = gw_term_of(&d, 0)->value;
    return gw_given(pull) ? pull / hung->height : (double)INFINITY;
}

double gw_carried(struct gw_ask *ask, const struct gw_element *e)
{
    if (e->outside) return INFINITY;
    const double suction = fmax(-e->outward_asd.pa, 0);
    switch (e->kind) {
    case GW_LITE:
        return suction * fmin(e->width, e->pane);
    case GW_TRANSOM:
        return suction * e->height;
    case GW_ANCHOR:
        return suction * e->width * e->height;
    case GW_SCREW:
        return suction_along(ask, e);
    default:
        return suction * e->width;
    }
}

double gw_spot_load(struct gw_ask *ask, enum gw_item_on on, const struct gw_element *e, const struct gw_spot *spot)
{
    if (on == GW_ON_POCKET) return e->width * e->pane;
    if (on != GW_ON_JOINT) return gw_carried(ask, e);
    size_t n;
    const struct gw_mullion_joint *joints = gw_joints_of(&n, ask, &spot->grid->lines);
    return joints[spot->up].length;
}

/* Alike ones ----------------------------------------------------------------------------------------------------- */

/* What tells places apart for an item: a line of screws is one thing from both its sides, and the glass beside it
 * decides nothing. */
enum { KEY = 9 };
static void name_place(uint64_t key[KEY], enum gw_item_on on, const struct gw_spot *c)
{
    const bool screws = on == GW_ON_SCREWS;
    const void *const parts[] = {c->grid,
                                 c->screws,
                                 screws ? NULL : c->lite,
                                 screws ? NULL : c->member,
                                 screws ? NULL : c->anchor,
                                 screws ? NULL : c->beside[0],
                                 screws ? NULL : c->beside[1]};
    size_t n = 0;
    for (; n < sizeof parts / sizeof *parts; n++) key[n] = (uintptr_t)parts[n];
    key[n++] = screws ? 0 : (uint64_t)(c->edge + 1);
    key[n] = on == GW_ON_JOINT ? c->up : 0;
}

static bool is_alike(enum gw_item_on on, const struct gw_spot *a, const struct gw_spot *b)
{
    uint64_t x[KEY], y[KEY];
    name_place(x, on, a);
    name_place(y, on, b);
    return memcmp(x, y, sizeof x) == 0;
}

static void **place_in(struct gw_memo *memo, struct gw_arena *arena, enum gw_item_on on, const struct gw_spot *c)
{
    uint64_t key[KEY];
    name_place(key, on, c);
    return gw_memo_at(memo, arena, key, sizeof key);
}

/* Few are compared one by one; of more the memo is made, and kept as long as the list. */
static bool is_listed(const struct gw_spots *each, struct gw_memo *alike, struct gw_arena *arena, enum gw_item_on on,
                      const struct gw_spot *c)
{
    enum { FEW = 16 };
    for (size_t i = 0; i < each->n && each->n < FEW; i++)
        if (is_alike(on, &each->items[i].spot, c)) return true;
    if (each->n < FEW) return false;
    for (size_t i = alike->n; i < each->n; i++) *place_in(alike, arena, on, &each->items[i].spot) = alike;
    void **at = place_in(alike, arena, on, c);
    const bool listed = *at;
    *at = alike; /* it is listed now */
    return listed;
}

void gw_spots_add(struct gw_spots *each, struct gw_memo *alike, struct gw_arena *arena, enum gw_item_on on,
                  const struct gw_carrying *place)
{
    if (is_listed(each, alike, arena, on, &place->spot)) return;
    if (!each->n) {
        each->items = gw_alloc(arena, 1, sizeof *each->items); /* a place said whole has no other */
        each->capacity = 1;
    }
    each->items = gw_grow(arena, each->items, each->n, &each->capacity, sizeof *each->items);
    each->items[each->n++] = *place;
}
