/* How causes, places and figures of the page of candidates read. */
#include "report/check.h"
#include "report/results.h"

#include <math.h>
#include <string.h>

/* Words with ranges ------------------------------------------------------------------------------------------------ */

/* Far enough apart to print differently. */
static bool is_range(const struct figure_range *r)
{
    return fabs(r->high - r->low) > 5e-4 * fmax(fabs(r->high), fabs(r->low));
}

static struct gw_message ranged(struct page *page, const struct gw_message *message, const struct cause *cause,
                                size_t *next)
{
    struct gw_value *values = gw_alloc(page->arena, message->n + 1, sizeof *values);
    for (unsigned i = 0; i < message->n; i++) {
        struct gw_value *v = &values[i];
        *v = message->values[i];
        if (v->kind == GW_V_MESSAGE || v->kind == GW_V_ABROAD) {
            struct gw_message *inner = gw_alloc(page->arena, 1, sizeof *inner);
            *inner = ranged(page, v->as.message, cause, next);
            v->as.message = inner;
        }
        if ((v->kind != GW_V_NUMBER && v->kind != GW_V_QUANTITY) || *next >= cause->figures.n) continue;
        const struct figure_range *r = &cause->figures.items[(*next)++];
        if (!is_range(r)) continue;
        struct gw_value low = *v, high = *v;
        struct gw_message *both = gw_alloc(page->arena, 1, sizeof *both);
        low.as.number = r->low;
        high.as.number = r->high;
        *both = GW_SAY(page->arena, "{} to {}", low, high);
        *v = gw_of_message(both);
    }
    return gw_say_values(page->arena, message->format, values, message->n);
}

const char *gw_cause_words(struct page *page, const struct cause *cause)
{
    size_t next = 0;
    if (!cause->words || !gw_said(cause->words)) return "";
    const struct gw_message words = ranged(page, cause->words, cause, &next);
    return gw_message_text(page->arena, &words, page->shown);
}

const char *gw_checks_words(struct page *page, const struct cause *c)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < c->checks.n; i++) gw_text_addf(&out, "%s%s", i ? ", " : "", c->checks.items[i]);
    return out.at;
}

/* Places -------------------------------------------------------------------------------------------------------------
 */

enum { NAMED = 4 };

static void add_listed(struct gw_text *out, const char *name, size_t i, size_t n)
{
    if (i < NAMED || n == NAMED + 1) gw_text_addf(out, "%s%s", i ? ", " : "", name);
    else if (i == NAMED) gw_text_addf(out, " and %zu more", n - NAMED);
}

/* How many pieces of each kind there are. */
static void count_all(long counts[GW_KIND_COUNT], struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    for (size_t i = 0; i < t->elements.n; i++)
        counts[t->elements.items[i].kind] += gw_pieces_once(t, &t->elements.items[i]);
}

/* "all 447 transoms, 12 mullions"; false: some are left of a kind. */
static bool add_kinds(struct gw_text *out, struct page *page, const long counts[GW_KIND_COUNT])
{
    long all[GW_KIND_COUNT] = {0};
    bool any = false, whole = true;
    count_all(all, page);
    for (int kind = 0; kind < GW_KIND_COUNT; kind++) {
        const long n = counts[kind];
        if (!n) continue;
        gw_text_addf(out, "%s%s%ld %s%s", any ? ", " : "", n > 1 && n == all[kind] ? "all " : "", n,
                     gw_kind_names[kind], n == 1 ? "" : "s");
        whole = whole && n == all[kind];
        any = true;
    }
    return whole;
}

static void add_walls(struct gw_text *out, struct page *page, const struct places *places)
{
    const size_t most = page->results->answer->takeoff->n_elevations;
    size_t n = 0, i = 0;
    for (size_t w = 0; w < most; w++) n += places->walls[w] != NULL;
    if (n > 1 && n == most) {
        gw_text_add(out, " (all walls)");
        return;
    }
    gw_text_add(out, " (");
    for (size_t w = 0; w < most; w++)
        if (places->walls[w]) add_listed(out, places->walls[w], i++, n);
    gw_text_add(out, ")");
}

const char *gw_kinds_words(struct page *page, const struct places *places)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    add_kinds(&out, page, places->counts);
    return out.length ? out.at : "";
}

void gw_add_names(struct gw_text *out, const char *const *names, size_t n)
{
    for (size_t i = 0; i < n; i++) add_listed(out, names[i], i, n);
}

static void add_part(struct gw_text *out, struct page *page, const struct places *places, bool heights)
{
    add_walls(out, page, places);
    if (places->zone_5 && !places->zone_4) gw_text_add(out, " in the edge strips (zone 5) only");
    if (places->zone_4 && !places->zone_5) gw_text_add(out, " in zone 4 only");
    if (places->parapet && !places->below) gw_text_add(out, " above the roof only");
    if (heights)
        gw_text_addf(out, ", %s to %s", gw_quantity_text(page, GW_LENGTH, places->bottom, NEAREST),
                     gw_quantity_text(page, GW_LENGTH, places->top, NEAREST));
}

const char *gw_places_words(struct page *page, const struct places *places, bool heights)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    if (places->seen && !add_kinds(&out, page, places->counts)) add_part(&out, page, places, heights);
    if (places->named.n && places->seen) gw_text_add(&out, "; ");
    gw_add_names(&out, places->named.items, places->named.n);
    return out.length ? out.at : "";
}

/* Its pieces lean on the cause as another element before it in the list. */
static bool leans_already(const struct gw_takeoff *t, const struct cause *c, size_t at)
{
    const struct gw_element *others[GW_SAME_PIECES];
    const size_t n = gw_same_pieces(others, t, &t->elements.items[at]);
    for (size_t i = 0; i < n; i++)
        if ((c->at.seen && c->at.seen[others[i]->index]) || (others[i]->index < at && c->lean[others[i]->index]))
            return true;
    return false;
}

/* Other elements than the cause's own. */
static const char *leaning_words(struct page *page, const struct cause *c)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    long counts[GW_KIND_COUNT] = {0}, n = 0;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; c->lean && i < t->elements.n; i++) {
        if (!c->lean[i] || (c->at.seen && c->at.seen[i]) || leans_already(t, c, i)) continue;
        counts[t->elements.items[i].kind] += c->lean[i];
        n += c->lean[i];
    }
    if (!n) return "";
    gw_text_add(&out, "; ");
    add_kinds(&out, page, counts);
    gw_text_addf(&out, " lean%s on %s", n == 1 ? "s" : "", gw_places_count(&c->at) == 1 ? "it" : "them");
    return out.at;
}

/* What calculation says where a test is short. */
static const char *besides(const struct gw_finding *f)
{
    if (f->verdict != GW_FAIL || !f->link) return "";
    if (f->link->verdict == GW_NOT_SHOWN) return "; no complete calculation shows more";
    return f->link->verdict == GW_PASS ? "; by calculation it passes, and the project asks for a test" : "";
}

const char *gw_where_words(struct page *page, const struct cause *c, bool heights)
{
    const char *places = gw_places_words(page, &c->at, heights);
    return gw_format(page->arena, "%s%s%s%s", besides(c->worst), *places ? "; " : "", places, leaning_words(page, c));
}

/* Findings -----------------------------------------------------------------------------------------------------------
 */

const char *gw_titled(struct page *page, const struct gw_finding *f)
{
    return gw_format(page->arena, "%s (%s)", f->demand->check->title, gw_check_name(f->demand));
}

/* It fails by something else than these figures. */
static bool beside(const struct gw_finding *f) { return f->verdict == GW_FAIL && f->utilization <= 1; }

/* "north/lite/1 (W1)" */
const char *gw_where_text(struct page *page, const struct gw_demand *demand)
{
    const char *mark = demand->element ? gw_opening_mark(demand->element) : NULL;
    return mark ? gw_format(page->arena, "%s (%s)", demand->where, mark) : demand->where;
}

const char *gw_at_text(struct page *page, const struct gw_finding *f)
{
    return gw_is_of_project(f->demand) ? "" : gw_format(page->arena, " at %s", gw_where_text(page, f->demand));
}

const char *gw_required_text(struct page *page, const struct gw_finding *f)
{
    return beside(f) ? "" : gw_as_required(page, f);
}

const char *gw_provided_text(struct page *page, const struct gw_finding *f)
{
    return beside(f) ? "" : gw_as_provided(page, f);
}

const char *gw_use_text(struct page *page, const struct gw_finding *f)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_add_use(&out, f);
    return out.length ? out.at : "";
}
