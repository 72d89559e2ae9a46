/* Drawings of what the system itself has: where that is not enough, the system is short, not its drawing. */
#include "drawn.h"

#include "base/tolerance.h"
#include "judge/lite_room.h"

#include <string.h>

/* The check that judges the system by what an item is short by. */
static const char *check_of(const char *mechanism)
{
    static const struct {
        const char *mechanism, *check;
    } of[] = {{"drift", "seismic_glass"}, {"shear of the bead", "seismic_silicone"},
              {"plate", "plate"},         {"pull-out", "screw"},
              {"closing", "movement"},    {"opening", "movement"},
              {"silicone", "silicone"}};
    for (size_t i = 0; i < sizeof of / sizeof *of; i++)
        if (strcmp(of[i].mechanism, mechanism) == 0) return of[i].check;
    return NULL;
}

/* "east", or an element of it. */
static bool is_of_wall(const char *place, const char *wall)
{
    const size_t n = strlen(wall);
    return strncmp(place, wall, n) == 0 && (!place[n] || place[n] == '/');
}

/* As gravely, or more. */
static bool says_it(const struct gw_comment *c, const char *check, const char *wall, enum gw_consequence consequence)
{
    if (strcmp(c->item, check) != 0 || c->consequence > consequence) return false;
    for (size_t i = 0; i < c->places.n; i++)
        if (is_of_wall(c->places.items[i], wall)) return true;
    return false;
}

/* What is as grave there as it is claimed, and another comment, of a substitution, says why. */
static bool is_explained(struct reviewing *r, const char *check, const char *wall, enum gw_verdict verdict)
{
    const struct gw_finding *claimed = gw_bench_findings(&r->bench, 0);
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++)
        if (r->explained[i] && gw_verdict_rank(claimed[i].verdict) >= gw_verdict_rank(verdict) &&
            strcmp(claimed[i].demand->check->id, check) == 0 && is_of_wall(claimed[i].demand->where, wall))
            return true;
    return false;
}

static const char *said_by_check(struct reviewing *r, const char *check, const char *wall, bool fails)
{
    const enum gw_consequence consequence = fails ? GW_IT_FAILS : GW_IT_IS_NOT_SHOWN;
    for (size_t i = 0; check && i < r->out->comments.n; i++)
        if (says_it(&r->out->comments.items[i], check, wall, consequence)) return check;
    return check && is_explained(r, check, wall, fails ? GW_FAIL : GW_NOT_SHOWN) ? check : NULL;
}

static bool is_own(const struct gw_item_limit *limit, double value)
{
    const double hair = GW_HAIR * fabs(value);
    return limit->basis == GW_LIMIT_SYSTEM &&
           (fabs(value - limit->at_least) <= hair || fabs(value - limit->at_most) <= hair);
}

const char *gw_said_of_the_system(struct reviewing *r, const struct gw_shop_value *d,
                                  const struct gw_item_result *result)
{
    if (!is_own(&result->limit, d->read.number)) return NULL;
    if (result->verdict == GW_ITEM_UNKNOWN) {
        const bool open = strstr(gw_message_text(r->arena, &result->message, GW_SI), gw_short_as_drawn);
        return open ? said_by_check(r, "seismic_glass", d->wall, false) : NULL;
    }
    if (result->verdict != GW_ITEM_NOT_MET || !result->mechanism) return NULL;
    if (r->lines_short_by && strcmp(r->lines_short_by, result->mechanism) == 0) return result->mechanism;
    return said_by_check(r, check_of(result->mechanism), d->wall, true);
}
