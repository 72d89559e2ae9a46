/* Outside corners: which wall meets a wall at its end. Seen from outside, the left end of one meets the right end of
 * the other. */
#include "model_internal.h"

#include <string.h>

enum { LEFT, RIGHT, ENDS };
static const char *const SIDES[ENDS] = {"left", "right"};

static const struct gw_wall *wall_named(const struct gw_project *p, const char *name)
{
    for (size_t i = 0; i < p->walls.n; i++)
        if (p->walls.items[i].name && strcmp(p->walls.items[i].name, name) == 0) return &p->walls.items[i];
    return NULL;
}

static const struct gw_end *end_of(const struct gw_wall *wall, size_t end)
{
    return wall->ends.n == ENDS ? &wall->ends.items[end] : NULL;
}

static bool names(const struct gw_end *end, const char *wall)
{
    return end && end->corner && wall && strcmp(end->corner, wall) == 0;
}

bool gw_end_is_corner(const struct gw_end *end) { return end->kind == GW_CORNER || end->corner; }

const char *gw_model_meets(const struct gw_model *model, const struct gw_wall *wall, size_t end)
{
    const struct gw_project *p = &model->project;
    const struct gw_end *own = end_of(wall, end);
    if (!own || own->corner || own->kind != GW_CORNER) return own ? own->corner : NULL;
    for (size_t i = 0; i < p->walls.n; i++)
        if (names(end_of(&p->walls.items[i], ENDS - 1 - end), wall->name)) return p->walls.items[i].name;
    return NULL;
}

/* Faults -------------------------------------------------------------------------------------------------------------
 */

static void fault(struct gw_model *model, const struct gw_node *place, const char *key, const char *message)
{
    gw_diag_node(model->diags, GW_ERROR, "bad_value", key, place, "%s", message);
}

void gw_check_ends(struct gw_model *model, const struct gw_node *face, const struct gw_end *ends, size_t n)
{
    const struct gw_node *node = gw_node_get(face, "ends");
    if (!node || node->kind != GW_SEQUENCE) return;
    if (n != ENDS && !gw_holds_fault(model, node))
        fault(model, node, "ends", gw_format(model->arena, "'ends' wants two ends, left and right; here are %zu", n));
    const struct gw_node *end = node->first;
    for (size_t i = 0; i < n && end; i++, end = end->next) {
        const int said = (ends[i].kind != GW_END_UNSET) + gw_given(ends[i].corner_at) + (ends[i].corner != NULL);
        if (said != 1 && !gw_holds_fault(model, end))
            fault(model, end, "ends", "an end is corner, reentrant, none, {corner: other wall} or {corner_at: 4 ft}");
    }
}

void gw_check_openings_ends(struct gw_model *model, const struct gw_node *face, const struct gw_end *ends, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (ends[i].corner)
            fault(model, gw_at_key(face, "ends"), "ends",
                  "openings have jambs of their own, which no other wall loads: write corner");
}

static void no_such_wall(struct gw_model *model, const struct gw_node *node, const char *name)
{
    const struct gw_project *p = &model->project;
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, name);
    for (size_t i = 0; i < p->walls.n; i++)
        if (p->walls.items[i].name) gw_nearest_offer(&nearest, p->walls.items[i].name);
    const char *question = gw_nearest_question(model->arena, &nearest);
    fault(model, node, "corner",
          gw_format(model->arena, "there is no wall '%s'%s", name,
                    *question ? question : "; 'corner' names the wall that meets this one, 'corner_at' is a distance"));
}

static bool claimed_before(const struct gw_model *model, const struct gw_wall *wall, size_t end, const char *name)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->walls.n && &p->walls.items[i] != wall; i++)
        if (names(end_of(&p->walls.items[i], end), name)) return true;
    return false;
}

/* A plain `corner` answers whoever names it. */
static void check_corner(struct gw_model *model, const struct gw_wall *wall, size_t end, const struct gw_node *node)
{
    const char *name = wall->ends.items[end].corner, *side = SIDES[ENDS - 1 - end];
    const struct gw_wall *met = wall_named(&model->project, name);
    const struct gw_end *answer = met ? end_of(met, ENDS - 1 - end) : NULL;
    if (!met) no_such_wall(model, node, name);
    else if (met == wall)
        fault(model, node, "corner", gw_format(model->arena, "the wall '%s' cannot meet itself", name));
    else if (!answer) return; /* its ends have a fault of their own */
    else if (answer->corner && !names(answer, wall->name))
        fault(model, node, "corner",
              gw_format(model->arena, "the %s end of '%s', which meets this one, names '%s'", side, name,
                        answer->corner));
    else if (!gw_end_is_corner(answer))
        fault(model, node, "corner",
              gw_format(model->arena,
                        "the %s end of '%s', which meets this one seen from outside, is no corner: write {corner: %s} "
                        "there",
                        side, name, wall->name));
    else if (claimed_before(model, wall, end, name))
        fault(model, node, "corner",
              gw_format(model->arena, "the %s end of '%s' meets another wall already", side, name));
}

void gw_check_corners(struct gw_model *model, const struct gw_wall *wall)
{
    const struct gw_node *node = gw_node_get(wall->node, "ends");
    if (!node || node->kind != GW_SEQUENCE || wall->ends.n != ENDS || !wall->name) return;
    const struct gw_node *end = node->first;
    for (size_t i = 0; i < ENDS && end; i++, end = end->next)
        if (wall->ends.items[i].corner) check_corner(model, wall, i, gw_at_key(end, "corner"));
}

void gw_assume_corners(struct gw_model *model, const struct gw_wall *wall)
{
    bool unnamed = false;
    for (size_t i = 0; i < wall->ends.n && wall->name; i++)
        unnamed = unnamed || (wall->ends.items[i].kind == GW_CORNER && !gw_model_meets(model, wall, i));
    if (unnamed)
        gw_assume_of_wall(
            model, wall,
            GW_PLAINLY("ends: corner: which wall meets it there is not named ({corner: name}): mullion and "
                       "anchors of the corner take this face twice, or this face and another corner end of the "
                       "building where that is more"));
}
