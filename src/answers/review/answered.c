/* Whether what an earlier comment was of stands in this submittal at all, and is sound: leaving it out answers nothing.
 */
#include "previous.h"
#include "review_internal.h"

#include <string.h>

static bool is_drawn(const char *item)
{
    for (size_t i = 0; i < GW_SHOP_ANCHOR_SPACING; i++)
        if (strcmp(gw_shop_fields[i].key, item) == 0) return true;
    return gw_item_named(item) != GW_ITEM_COUNT;
}

/* Drawings ---------------------------------------------------------------------------------------------------------
 */

/* "A-501: east, zone 5": the place. */
static const char *place_in(const char *drawn)
{
    for (const char *at = strstr(drawn, ": "); at; at = strstr(drawn, ": ")) drawn = at + 2;
    return drawn;
}

/* A wall covers its zones. */
static bool covers(const char *place, const char *other)
{
    const size_t n = strlen(place);
    return strncmp(place, other, n) == 0 && (!other[n] || strncmp(other + n, ", zone ", strlen(", zone ")) == 0);
}

static bool is_sound(const struct reviewing *r, const char *item, const char *place)
{
    for (size_t i = 0; i < r->out->complete.n; i++) {
        const struct gw_complete *c = &r->out->complete.items[i];
        if (strcmp(c->item, item) == 0 && covers(place_in(c->subject), place)) return true;
    }
    return false;
}

/* Of this revision: what only stays open has no line. */
static bool is_told(const struct reviewing *r, const char *item, const char *place)
{
    for (size_t i = 0; i < r->out->comments.n; i++) {
        const struct gw_comment *c = &r->out->comments.items[i];
        for (size_t k = 0; strcmp(c->item, item) == 0 && c->line && k < c->places.n; k++) {
            const char *other = place_in(c->places.items[k]);
            if (covers(other, place)) return true;
        }
    }
    return false;
}

static struct gw_message of_drawings(const struct reviewing *r, const struct gw_past_comment *past)
{
    for (size_t i = 0; i < past->places.n; i++) {
        const char *place = place_in(past->places.items[i]);
        if (is_told(r, past->item, place) || is_sound(r, past->item, place)) continue; /* by a comment of its own */
        return GW_PLAINLY("no longer drawn: a value left out answers nothing");
    }
    return (struct gw_message){0};
}

/* The rest ----------------------------------------------------------------------------------------------------------
 */

static bool has_mark(const struct reviewing *r, const char *subject)
{
    for (size_t i = 0; i < r->submittal->glass.n; i++)
        if (strcmp(r->submittal->glass.items[i].mark, subject) == 0) return true;
    return r->submittal->glass.n && gw_model_lite(r->ask->model, subject);
}

/* A report on which nothing rests any more needs no answer. */
static bool is_submitted(const struct reviewing *r, const char *name)
{
    const size_t i = gw_report_index(r, name);
    if (i == r->reports.n) return true;
    return r->reports.items[i].entry || (!r->reports.items[i].tests && !r->reports.items[i].capacities);
}

struct gw_message gw_review_unanswered(const struct reviewing *r, const struct gw_past_comment *past)
{
    const struct gw_message left_out = GW_PLAINLY("no longer submitted: what is left out answers nothing");
    const bool speaks = r->submittal->offered_system || r->submittal->reports.n;
    bool answered = speaks;
    if (is_drawn(past->item)) return of_drawings(r, past);
    if (strcmp(past->item, "glass") == 0) answered = has_mark(r, past->subject);
    else if (strcmp(past->item, "offer") == 0) answered = r->judged;
    else if (strcmp(past->item, "substitution") == 0 || strcmp(past->item, "option") == 0)
        answered = r->submittal->offered_system;
    else if (strncmp(past->item, "report_", strlen("report_")) == 0)
        answered = speaks && is_submitted(r, past->subject);
    if (answered) return (struct gw_message){0};
    return left_out;
}
