/* What to ask whom: the questions behind everything that is not shown or rests on a statement, each once. */
#include "galeward/answers.h"
#include "galeward/memo.h"

#include <string.h>

/* What stands on links is not shown for their questions, which they ask themselves, unless it has one of its own; a
 * pass that rests on a statement asks for the report. */
static bool asks(const struct gw_finding *f)
{
    if (f->verdict == GW_PASS) return gw_said(&f->question);
    return f->verdict == GW_NOT_SHOWN && (!(f->demand->check->path && f->link) || gw_said(&f->question)) &&
           gw_said(&f->message);
}

static struct gw_request *request(struct gw_answer *out, size_t *capacity, struct gw_ask *ask)
{
    out->missing.items = gw_grow(ask->arena, out->missing.items, out->missing.n, capacity, sizeof *out->missing.items);
    return &out->missing.items[out->missing.n++];
}

static void ask_once(struct gw_answer *out, struct gw_memo *known, size_t *capacity, struct gw_ask *ask,
                     const struct gw_finding *f)
{
    const struct gw_message *question = gw_said(&f->question) ? &f->question : &f->message;
    const char *words = gw_message_text(ask->arena, question, GW_SI);
    const char *key =
        gw_format(ask->arena, "%s|%s", f->candidate->file ? f->candidate->file : f->candidate->name, words);
    void **at = gw_memo_at(known, ask->arena, key, strlen(key));
    size_t *index = *at;
    if (!index) {
        *at = index = gw_alloc(ask->arena, 1, sizeof *index);
        *index = out->missing.n;
        *request(out, capacity, ask) = (struct gw_request){
            .candidate = f->candidate, .first = f, .where = f->demand->where, .question = *question};
    }
    out->missing.items[*index].places++;
}

/* Given pressures of one building and zone that are too low: the worst of them, for all. */
struct low_zone {
    const struct gw_difference *worst, *last;
    long places;
};
struct low_zones {
    struct low_zone *items;
    size_t n, capacity;
};

static struct low_zone *zone_of(struct low_zones *zones, struct gw_ask *ask, const struct gw_element *e)
{
    for (size_t i = 0; i < zones->n; i++) {
        const struct gw_element *other = zones->items[i].worst->element;
        if (other->building == e->building && other->zone == e->zone) return &zones->items[i];
    }
    zones->items = gw_grow(ask->arena, zones->items, zones->n, &zones->capacity, sizeof *zones->items);
    zones->items[zones->n] = (struct low_zone){.places = 0};
    return &zones->items[zones->n++];
}

/* Both directions of an element follow each other. */
static void find_low_zones(struct low_zones *zones, struct gw_ask *ask)
{
    const struct gw_takeoff *t = ask->takeoff;
    *zones = (struct low_zones){.n = 0};
    for (size_t i = 0; t->too_low && i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        if (!d->governs || !(d->excess < 0)) continue;
        struct low_zone *zone = zone_of(zones, ask, d->element);
        if (!zone->worst || d->excess < zone->worst->excess) zone->worst = d;
        zone->places += !zone->last || zone->last->element != d->element;
        zone->last = d;
    }
}

static struct gw_message which_holds(struct gw_ask *ask, const struct gw_difference *d)
{
    const double hundred = 100;
    const bool several = ask->model->project.buildings.n > 1;
    struct gw_text percent;
    gw_text_init(&percent, ask->arena);
    gw_text_fixed(&percent, -hundred * d->excess, 0);
    const struct gw_message building =
        several ? GW_SAY(ask->arena, " of {}", gw_of_text(d->element->building->name)) : (struct gw_message){0};
    return GW_SAY(
        ask->arena,
        "zone {}{}: {} given {} is {} % lower than {} computed (strength level), at worst on an area of {} at "
        "{} (source {}): ask the structural engineer which holds, or who accepts the given ones "
        "(lower_than_computed: by, reason)",
        gw_of_count(d->element->zone), gw_of_message(&building), gw_of_quantity(GW_PRESSURE, fabs(d->given)),
        gw_of_text(d->direction), gw_of_text(percent.at), gw_of_quantity(GW_PRESSURE, fabs(d->computed)),
        gw_of_quantity(GW_AREA, d->element->effective_area), gw_of_text(d->id), gw_of_text(d->source));
}

static void ask_about_pressures(struct gw_answer *out, size_t *capacity, struct gw_ask *ask,
                                const struct low_zones *zones, const struct gw_system *candidate)
{
    for (size_t i = 0; i < zones->n; i++) {
        const struct low_zone *zone = &zones->items[i];
        *request(out, capacity, ask) = (struct gw_request){.candidate = candidate,
                                                           .where = zone->worst->id,
                                                           .question = which_holds(ask, zone->worst),
                                                           .places = zone->places};
    }
}

void gw_find_missing(struct gw_answer *out, struct gw_ask *ask)
{
    const struct gw_judgement *j = &out->judgement;
    struct gw_memo known = {0};
    struct low_zones zones;
    size_t capacity = 0, at = 0;
    find_low_zones(&zones, ask);
    for (size_t i = 0; i < j->summaries.n; i++) {
        const struct gw_system *candidate = j->summaries.items[i].candidate;
        ask_about_pressures(out, &capacity, ask, &zones, candidate);
        for (; at < j->findings.n && j->findings.items[at].candidate == candidate; at++)
            if (asks(&j->findings.items[at])) ask_once(out, &known, &capacity, ask, &j->findings.items[at]);
    }
}
