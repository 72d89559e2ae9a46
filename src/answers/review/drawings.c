/* Dimensions of drawings: items by what is left with them, and spans, modules and depths against what was taken off. */
#include "drawn.h"

#include "base/tolerance.h"

#include "tables_data.h"

#include <string.h>

static const char *place_of(struct reviewing *r, const struct gw_shop_value *d)
{
    return d->zone == GW_NO_INTEGER ? d->wall : gw_format(r->arena, "%s, zone %d", d->wall, d->zone);
}

/* Items ------------------------------------------------------------------------------------------------------------ */

bool gw_drawn_at_one_place(const struct gw_shop_value *a, const struct gw_shop_value *b)
{
    return strcmp(a->wall, b->wall) == 0 &&
           (a->zone == b->zone || a->zone == GW_NO_INTEGER || b->zone == GW_NO_INTEGER);
}

/* What an item is measured against is as it is drawn, whatever else is: a depth its width, slots each other. */
static bool is_measured_by(enum gw_item_id item, enum gw_item_id other)
{
    switch (item) {
    case GW_ITEM_sealant_depth:
        return other == GW_ITEM_sealant_width;
    case GW_ITEM_weep_offset:
        return other == GW_ITEM_weep_length || other == GW_ITEM_cover_weep_length;
    default:
        return false;
    }
}

static void read_drawn(struct gw_as_read *read, const struct reviewing *r, const struct gw_shop_value *d, bool together)
{
    const struct gw_submittal *s = r->submittal;
    gw_as_read_clear(read);
    for (size_t i = 0; i < s->drawings.n; i++) {
        const struct gw_shop_value *o = &s->drawings.items[i];
        if (o->what == GW_SHOP_ITEM && gw_drawn_at_one_place(d, o) && (together || is_measured_by(d->id, o->id)))
            read->of[o->id] = o->read;
    }
    read->of[d->id] = d->read;
    read->drawn = true;
}

static const struct gw_system *system_at(struct reviewing *r, const struct gw_spot *spot)
{
    const struct gw_system *system = &r->bench.model.systems.items[0];
    struct gw_planned *planned = gw_planned_of(&r->bench.ask, system);
    const struct gw_element *e = spot->screws   ? spot->screws
                                 : spot->lite   ? spot->lite
                                 : spot->member ? spot->member
                                                : spot->anchor;
    const struct gw_system *with = planned && e ? gw_planned_offer(planned, e) : NULL;
    return with ? with : system;
}

/* Rounded to the safe side; beside the same value as that is, so that in other units it does not read as short. */
static struct gw_value beside(const struct gw_shop_value *d, double limit, int side)
{
    const bool same = fabs(d->read.number - limit) <= GW_HAIR * fabs(limit);
    return gw_item_limit_shown(d->id, limit, same ? 0 : side);
}

/* "at least 1/4 in and at most 9 in (system)" */
static struct gw_message limit_words(struct reviewing *r, const struct gw_shop_value *d, const struct gw_item_limit *l)
{
    struct gw_message least = {0}, most = {0};
    if (gw_given(l->at_least)) least = GW_SAY(r->arena, "at least {}", beside(d, l->at_least, 1));
    if (gw_given(l->at_most)) most = GW_SAY(r->arena, "at most {}", beside(d, l->at_most, -1));
    return gw_say_both(r->arena, &least, " and ", &most);
}

static struct gw_message sound_words(struct reviewing *r, enum gw_item_id id)
{
    struct gw_message all = {0};
    const struct gw_item_kind *kind = &gw_item_kinds[id];
    for (int word = 1; kind->means && kind->value.choices[word - 1].name; word++) {
        if (kind->means[word - 1] != GW_WORD_SOUND) continue;
        const struct gw_message one = GW_SAY(r->arena, "{}", gw_of_text(kind->value.choices[word - 1].name));
        all = gw_say_both(r->arena, &all, " or ", &one);
    }
    return all;
}

/* To three digits: what is short must not read as enough. */
static double rounded_down(double left)
{
    if (!(left > 0) || isinf(left)) return left;
    const double unit = pow(10, floor(log10(left)) - 2);
    return floor(left / unit + GW_HAIR) * unit;
}

struct gw_message gw_left_words(struct reviewing *r, const struct gw_item_result *result)
{
    if (!result->mechanism) return result->message;
    const bool two = result->remaining - result->remaining_worst > GW_HAIR * result->remaining;
    const struct gw_message good =
        result->verdict == GW_ITEM_NOT_MET && two
            ? GW_SAY(r->arena, "{} at the good end of the ranges, ", gw_of_number(rounded_down(result->remaining), 3))
            : (struct gw_message){0};
    const struct gw_message left = GW_SAY(r->arena, "left by {}: {}{}{}, {} required", gw_of_text(result->mechanism),
                                          gw_of_message(&good), gw_of_number(rounded_down(result->remaining_worst), 3),
                                          gw_of_text(!two             ? ""
                                                     : gw_said(&good) ? " at the bad"
                                                                      : " at the bad end of the ranges"),
                                          gw_of_number(result->required, 3));
    return gw_say_both(r->arena, &left, "; ", &result->message);
}

/* Of a drawing nothing is measured beside it: what is not known is asked. */
static void tell_left(struct judged_value *v, struct reviewing *r, const struct gw_item_result *result)
{
    const bool asks = result->verdict == GW_ITEM_UNKNOWN && !result->mechanism &&
                      strchr(gw_message_text(r->arena, &result->message, GW_SI), '?');
    if (asks) v->ask = result->message;
    else v->effect = gw_left_words(r, result);
    const char *without = gw_item_without(gw_item_of(v->drawn->id), r->ask, r->judged);
    if (without)
        v->ask = GW_SAY(r->arena, "of what is it drawn? By its file the system has none ({})", gw_of_text(without));
}

static enum gw_consequence consequence_of(enum gw_item_verdict verdict)
{
    static const enum gw_consequence of[] = {[GW_ITEM_UNKNOWN] = GW_IT_IS_NOT_SHOWN,
                                             [GW_ITEM_WITHIN] = GW_CONSEQUENCES,
                                             [GW_ITEM_OUTSIDE_HOLDS] = GW_IT_DIFFERS,
                                             [GW_ITEM_NOT_MET] = GW_IT_FAILS};
    return of[verdict];
}

static void judge_at(struct gw_item_result *out, struct reviewing *r, const struct gw_shop_value *d,
                     const struct gw_spot *spot, bool together)
{
    struct gw_as_read read;
    read_drawn(&read, r, d, together);
    gw_item_judge(out, &r->bench.ask, gw_item_of(d->id), spot, &read, system_at(r, spot));
}

/* A drawing says no lite and no edge: at each of its wall and zone, the gravest; where most is carried of like ones. */
static bool judge_everywhere(struct gw_item_result *out, struct gw_message *why, struct reviewing *r,
                             const struct gw_shop_value *d, bool together)
{
    const enum gw_item_on on = gw_item_of(d->id)->on;
    struct gw_spot worst;
    struct gw_spots each;
    if (!gw_spot_each_of(&each, &worst, why, &r->bench.ask, d->wall, d->zone == GW_NO_INTEGER ? 0 : d->zone, on))
        return false;
    if (on == GW_ON_EDGE) worst.edge = -1; /* the worst of the lite's */
    judge_at(out, r, d, &worst, together);
    for (size_t i = 0; i < each.n; i++) {
        struct gw_spot spot = each.items[i].spot;
        struct gw_item_result result;
        if (on == GW_ON_EDGE) spot.edge = -1;
        judge_at(&result, r, d, &spot, together);
        if (gw_item_graver(&result, out)) *out = result;
    }
    return true;
}

/* The limit itself, in whole millimeters. */
static bool is_spelled(const struct reviewing *r, const struct gw_shop_value *d, const struct gw_item_limit *limit)
{
    const enum gw_dim dim = gw_item_kinds[d->id].value.dim;
    const double apart = r->ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_PLACE].apart_m;
    if (dim != GW_LENGTH && dim != GW_THICKNESS) return false;
    return !(d->read.number < limit->at_least - apart) && !(d->read.number > limit->at_most + apart);
}

static void judge_item(struct judged_value *v, struct reviewing *r, bool together)
{
    const struct gw_shop_value *d = v->drawn;
    struct gw_message why;
    struct gw_item_result result;
    if (!judge_everywhere(&result, &why, r, d, together)) {
        v->consequence = GW_IT_IS_NOT_SHOWN;
        v->effect = why;
        return;
    }
    v->consequence = consequence_of(result.verdict);
    if (v->consequence == GW_IT_DIFFERS && is_spelled(r, d, &result.limit)) v->consequence = GW_CONSEQUENCES;
    v->needed = d->read.word ? sound_words(r, d->id) : limit_words(r, d, &result.limit);
    const struct gw_message by = GW_SAY(r->arena, "{}: limit by {}", gw_of_text(gw_item_kinds[d->id].title),
                                        gw_of_text(gw_limit_basis_name(result.limit.basis)));
    v->basis = result.limit.basis ? gw_say_both(r->arena, &by, "; ", &result.limit.note)
                                  : GW_SAY(r->arena, "{}", gw_of_text(gw_item_kinds[d->id].title));
    tell_left(v, r, &result);
    if (!together) v->already = gw_said_of_the_system(r, d, &result);
    v->evidence = result.verdict == GW_ITEM_UNKNOWN ? GW_EVIDENCE_NONE : GW_BY_CALCULATION;
}

/* Comments -----------------------------------------------------------------------------------------------------------
 */

static bool same_cause(const struct judged_value *a, const struct judged_value *b)
{
    const struct gw_shop_value *x = a->drawn, *y = b->drawn;
    const bool number = (!gw_given(x->read.number) && !gw_given(y->read.number)) ||
                        fabs(x->read.number - y->read.number) <= GW_HAIR * fabs(x->read.number);
    return strcmp(x->item, y->item) == 0 && x->read.word == y->read.word && number && a->consequence == b->consequence;
}

static const char *where_drawn(struct reviewing *r, const struct gw_shop_value *d)
{
    return gw_format(r->arena, "%s: %s", d->sheet, place_of(r, d));
}

static bool same_message(struct reviewing *r, const struct gw_message *a, const struct gw_message *b)
{
    return strcmp(gw_message_text(r->arena, a, GW_SI), gw_message_text(r->arena, b, GW_SI)) == 0;
}

/* What one value does at all the places where it is drawn: where it does not do the same, place by place. */
static struct gw_message effects_of(struct reviewing *r, const struct judged_value *list, size_t n, size_t i)
{
    struct gw_message all = {0};
    bool same = true;
    for (size_t k = i; k < n; k++) {
        if (!same_cause(&list[i], &list[k])) continue;
        same = same && same_message(r, &list[i].effect, &list[k].effect);
        if (!gw_said(&list[k].effect)) continue;
        const struct gw_message one =
            GW_SAY(r->arena, "{}: {}", gw_of_text(place_of(r, list[k].drawn)), gw_of_message(&list[k].effect));
        all = gw_said(&all) ? gw_say_both(r->arena, &all, "; ", &one) : one;
    }
    return same ? list[i].effect : all;
}

static void tell(struct reviewing *r, struct judged_value *list, size_t n, size_t i)
{
    const struct judged_value *v = &list[i];
    const struct gw_shop_value *d = v->drawn;
    struct gw_comment *c = gw_comment_add(r, d->item, place_of(r, d), v->consequence);
    const char **places = gw_alloc(r->arena, n + 1, sizeof *places);
    for (size_t k = i; k < n; k++) {
        if (list[k].told || !same_cause(v, &list[k])) continue;
        list[k].told = true;
        places[c->places.n++] = where_drawn(r, list[k].drawn);
    }
    c->places.items = places;
    c->effect = effects_of(r, list, n, i);
    c->where = c->places.n > 1
                   ? GW_SAY(r->arena, "{} and {} more", gw_of_text(places[0]), gw_of_count((long)c->places.n - 1))
                   : GW_SAY(r->arena, "{}", gw_of_text(places[0]));
    c->submitted = GW_SAY(r->arena, "{}", gw_shop_shown(d));
    c->needed = v->needed;
    c->basis = v->basis;
    c->ask = v->ask;
    c->evidence = v->evidence;
    gw_comment_at(c, d->node);
}

static void accept(struct reviewing *r, const struct judged_value *v)
{
    struct gw_message value = GW_SAY(r->arena, "{}", gw_shop_shown(v->drawn));
    if (gw_said(&v->needed))
        value = GW_SAY(r->arena, "{}; needed: {}", gw_of_message(&value), gw_of_message(&v->needed));
    if (v->already)
        value = GW_SAY(r->arena, "{}; as the system has it, which by another comment is not enough ({})",
                       gw_of_message(&value), gw_of_text(v->already));
    gw_complete_add(r, v->drawn->item, where_drawn(r, v->drawn), value);
}

static void judge_value(struct judged_value *v, struct reviewing *r)
{
    switch (v->drawn->what) {
    case GW_SHOP_ITEM:
        judge_item(v, r, false);
        break;
    case GW_SHOP_MULLION_DEPTH:
        gw_judge_drawn_depth(v, r);
        break;
    default:
        gw_judge_drawn_size(v, r);
    }
}

static bool same_words(struct reviewing *r, const struct judged_value *a, const struct judged_value *b)
{
    const struct gw_message *x = gw_said(&a->ask) ? &a->ask : &a->effect, *y = gw_said(&b->ask) ? &b->ask : &b->effect;
    return same_message(r, x, y);
}

static void say_together(struct judged_value *joint, struct reviewing *r)
{
    struct gw_message *said = gw_said(&joint->ask) ? &joint->ask : &joint->effect;
    if (gw_said(said)) *said = GW_SAY(r->arena, "with what else is drawn there: {}", gw_of_message(said));
}

/* What is not known by itself may be with what else is drawn there. Where that fails by itself it is what fails. */
static void answer_by_others(struct judged_value *list, struct reviewing *r, size_t n)
{
    struct judged_value *with = gw_alloc(r->arena, n + 1, sizeof *with);
    memcpy(with, list, n * sizeof *with);
    for (size_t i = 0; i < n; i++) {
        struct judged_value joint = {.drawn = list[i].drawn, .consequence = GW_CONSEQUENCES};
        size_t others = 0;
        bool failing = false;
        if (list[i].drawn->what != GW_SHOP_ITEM || list[i].consequence != GW_IT_IS_NOT_SHOWN) continue;
        for (size_t k = 0; k < n; k++) {
            const bool other = k != i && list[k].drawn->what == GW_SHOP_ITEM && list[k].drawn->id != list[i].drawn->id;
            if (!other || !gw_drawn_at_one_place(list[i].drawn, list[k].drawn)) continue;
            others++;
            failing = failing || list[k].consequence == GW_IT_FAILS;
        }
        if (!others) continue;
        judge_item(&joint, r, true);
        const bool alike = joint.consequence == GW_IT_IS_NOT_SHOWN && same_words(r, &joint, &list[i]);
        if (alike || (failing && joint.consequence == GW_IT_FAILS)) continue;
        say_together(&joint, r);
        with[i] = joint;
    }
    memcpy(list, with, n * sizeof *with);
}

/* Values of one place that hold one by one may not together. */
static void judge_together(struct judged_value *list, struct reviewing *r, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        struct judged_value joint = {.drawn = list[i].drawn, .consequence = GW_CONSEQUENCES};
        bool alone = true;
        if (list[i].drawn->what != GW_SHOP_ITEM) continue;
        for (size_t k = 0; k < n; k++)
            if (list[k].drawn->what == GW_SHOP_ITEM && gw_drawn_at_one_place(list[i].drawn, list[k].drawn))
                alone = alone && list[k].consequence >= GW_IT_DIFFERS;
        if (!alone) continue;
        judge_item(&joint, r, true);
        if (joint.consequence >= list[i].consequence) continue;
        say_together(&joint, r);
        list[i] = joint;
    }
}

void gw_review_drawings(struct reviewing *r)
{
    const size_t n = r->submittal->drawings.n;
    struct judged_value *list = gw_alloc(r->arena, n + 1, sizeof *list);
    for (size_t i = 0; i < n; i++) {
        list[i].drawn = &r->submittal->drawings.items[i];
        judge_value(&list[i], r);
    }
    answer_by_others(list, r, n);
    judge_together(list, r, n);
    gw_judge_sizes_together(list, r, n);
    for (size_t i = 0; i < n; i++) {
        if (list[i].consequence == GW_CONSEQUENCES || list[i].already) accept(r, &list[i]);
        else if (!list[i].told) tell(r, list, n, i);
    }
}
