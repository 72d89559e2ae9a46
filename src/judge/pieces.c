/* Pieces that the take-off tells more than once: what the roof line cuts, and what two walls share at a corner. */
#include "judge/corner.h"
#include "judge/line.h"

#include "tables_data.h"

#include <math.h>

/* A run of screws along a vertical that the roof line cuts is parted, its screws with it; of one along a horizontal
 * both parts tell every screw. */
static const struct gw_element *cut_part(const struct gw_takeoff *t, const struct gw_element *e)
{
    return e->sort == GW_SORT_MULLION_SCREW ? NULL : gw_takeoff_other_part(t, e);
}

/* Of the wall that meets this one; anchors at unlike heights are two. */
static const struct gw_element *twin_of(const struct gw_takeoff *t, const struct gw_element *e)
{
    const struct gw_element *twin = e->kind == GW_MULLION || e->kind == GW_ANCHOR ? gw_corner_twin(t, e) : NULL;
    if (twin && e->kind == GW_ANCHOR && fabs(gw_anchor_level(twin) - gw_anchor_level(e)) > GW_HAIR_M) return NULL;
    return twin;
}

size_t gw_same_pieces(const struct gw_element *others[GW_SAME_PIECES], const struct gw_takeoff *takeoff,
                      const struct gw_element *e)
{
    const struct gw_element *twin = twin_of(takeoff, e),
                            *all[GW_SAME_PIECES] = {cut_part(takeoff, e), twin, twin ? cut_part(takeoff, twin) : NULL};
    size_t n = 0;
    for (int i = 0; i < GW_SAME_PIECES; i++)
        if (all[i]) others[n++] = all[i];
    return n;
}

long gw_pieces_once(const struct gw_takeoff *takeoff, const struct gw_element *e)
{
    const struct gw_element *twin = twin_of(takeoff, e);
    const bool upper = e->parapet && cut_part(takeoff, e);
    return upper || (twin && twin->grid->elevation < e->grid->elevation) ? 0 : e->count;
}
