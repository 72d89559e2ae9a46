/* Comments: how they are kept, numbered and ordered, and what became of those of an earlier result. */
#include "previous.h"
#include "review_internal.h"

#include <string.h>

const char *gw_consequence_name(enum gw_consequence consequence)
{
    static const char *const names[] = {"fails", "not shown", "differs", "remark", ""};
    return names[consequence];
}

const char *gw_comment_status_name(enum gw_comment_status status)
{
    static const char *const names[] = {"new", "open", "closed", "accepted"};
    return names[status];
}

/* As the trade answers; a claim that is not good enough and what stands for what was specified say otherwise. */
static enum gw_disposition usual(enum gw_consequence consequence)
{
    static const enum gw_disposition usual[] = {[GW_IT_FAILS] = GW_REVISE,
                                                [GW_IT_IS_NOT_SHOWN] = GW_REVISE,
                                                [GW_IT_DIFFERS] = GW_CORRECTIONS_NOTED,
                                                [GW_A_REMARK] = GW_NO_EXCEPTION};
    return usual[consequence];
}

struct gw_comment *gw_comment_add(struct reviewing *r, const char *item, const char *subject,
                                  enum gw_consequence consequence)
{
    struct gw_review *out = r->out;
    out->comments.items =
        gw_grow(r->arena, out->comments.items, out->comments.n, &out->capacity, sizeof *out->comments.items);
    struct gw_comment *c = &out->comments.items[out->comments.n++];
    *c = (struct gw_comment){.item = item,
                             .subject = subject,
                             .where = GW_SAY(r->arena, "{}", gw_of_text(subject)),
                             .consequence = consequence,
                             .disposition = usual(consequence),
                             .file = r->submittal->source->name};
    return c;
}

void gw_comment_at(struct gw_comment *c, const struct gw_node *node)
{
    if (!node) return;
    c->file = node->source->name;
    c->line = node->line;
    c->column = node->column;
}

void gw_comment_effect(struct gw_comment *c, const struct effect *effect)
{
    c->effect = effect->said;
    c->places.items = effect->places.items;
    c->places.n = effect->places.n;
    if (effect->first) c->evidence = effect->first->evidence;
}

void gw_complete_add(struct reviewing *r, const char *item, const char *subject, struct gw_message said)
{
    struct gw_review *out = r->out;
    out->complete.items =
        gw_grow(r->arena, out->complete.items, out->complete.n, &out->complete_capacity, sizeof *out->complete.items);
    out->complete.items[out->complete.n++] = (struct gw_complete){item, subject, said};
}

struct gw_message gw_layers_message(struct reviewing *r, const struct gw_layer *layers, size_t n)
{
    struct gw_text si, us;
    gw_text_init(&si, r->arena);
    gw_text_init(&us, r->arena);
    gw_layers_say(&si, layers, n, GW_SI, r->ask->model->tables);
    gw_layers_say(&us, layers, n, GW_US, r->ask->model->tables);
    if (strcmp(si.at, us.at) == 0) return GW_SAY(r->arena, "{}", gw_of_text(si.at));
    const struct gw_message metric = GW_SAY(r->arena, "{}", gw_of_text(si.at)),
                            inches = GW_SAY(r->arena, "{}", gw_of_text(us.at));
    return GW_SAY(r->arena, "{}{}", gw_of_abroad(GW_US, &metric), gw_of_abroad(GW_SI, &inches));
}

/* Numbers ---------------------------------------------------------------------------------------------------------- */

static bool is_it(const struct gw_comment *c, const struct gw_past_comment *past)
{
    return strcmp(c->item, past->item) == 0 && strcmp(c->subject, past->subject) == 0;
}

/* Nothing is said of it now: closed, unless it was left out. */
static struct gw_comment unsaid(struct reviewing *r, const struct gw_past_comment *past)
{
    const struct gw_message open = past->closed ? (struct gw_message){0} : gw_review_unanswered(r, past);
    const bool stays = gw_said(&open);
#define AS_IT_WAS(text) GW_SAY(r->arena, "{}", gw_of_text(text))
    return (struct gw_comment){.number = past->number,
                               .item = past->item,
                               .subject = past->subject,
                               .where = AS_IT_WAS(past->where),
                               .submitted = AS_IT_WAS(past->submitted),
                               .needed = AS_IT_WAS(past->needed),
                               .basis = AS_IT_WAS(past->basis),
                               .consequence = past->consequence,
                               .disposition = past->disposition,
                               .evidence = past->evidence,
                               .effect = open,
                               .status = stays ? GW_COMMENT_OPEN : GW_COMMENT_CLOSED,
                               .places = {past->places.items, stays ? past->places.n : 0},
                               .file = stays ? r->submittal->source->name : NULL,
                               .stood = true};
#undef AS_IT_WAS
}

static struct gw_comment *comment_of(struct gw_review *out, const struct gw_past_comment *past)
{
    for (size_t i = 0; i < out->comments.n; i++)
        if (!out->comments.items[i].number && is_it(&out->comments.items[i], past)) return &out->comments.items[i];
    return NULL;
}

/* One that was closed and is said again is open again. */
static void follow(struct reviewing *r, const struct gw_previous *previous)
{
    struct gw_review *out = r->out;
    for (size_t i = 0; previous && i < previous->n; i++) {
        const struct gw_past_comment *past = &previous->items[i];
        struct gw_comment *c = comment_of(out, past);
        if (c) {
            c->number = past->number;
            c->status = GW_COMMENT_OPEN;
            c->stood = true;
            continue;
        }
        const struct gw_comment kept = unsaid(r, past);
        out->comments.items =
            gw_grow(r->arena, out->comments.items, out->comments.n, &out->capacity, sizeof *out->comments.items);
        out->comments.items[out->comments.n++] = kept;
    }
}

static bool stands_before(const struct gw_comment *a, const struct gw_comment *b)
{
    const bool x = a->status == GW_COMMENT_CLOSED, y = b->status == GW_COMMENT_CLOSED;
    if (x != y) return y;
    if (!x && a->consequence != b->consequence) return a->consequence < b->consequence;
    return a->number && b->number && a->number < b->number;
}

/* Few, and alike ones keep their order. */
static void sort(struct gw_review *out)
{
    for (size_t i = 1; i < out->comments.n; i++) {
        const struct gw_comment c = out->comments.items[i];
        size_t k = i;
        for (; k && stands_before(&c, &out->comments.items[k - 1]); k--)
            out->comments.items[k] = out->comments.items[k - 1];
        out->comments.items[k] = c;
    }
}

static void number(struct gw_review *out)
{
    int last = 0;
    for (size_t i = 0; i < out->comments.n; i++)
        if (out->comments.items[i].number > last) last = out->comments.items[i].number;
    for (size_t i = 0; i < out->comments.n; i++)
        if (!out->comments.items[i].number) out->comments.items[i].number = ++last;
}

/* Two causes that would be known by one name are told apart in their order: from the last, whose earlier ones still
 * have the name. */
static void tell_apart(struct reviewing *r)
{
    struct gw_comment *items = r->out->comments.items;
    for (size_t i = r->out->comments.n; i-- > 0;) {
        int again = 1;
        for (size_t k = 0; k < i; k++)
            again += strcmp(items[k].item, items[i].item) == 0 && strcmp(items[k].subject, items[i].subject) == 0;
        if (again > 1) items[i].subject = gw_format(r->arena, "%s (%d)", items[i].subject, again);
    }
}

static void decide(struct reviewing *r)
{
    const struct gw_project *p = &r->ask->model->project;
    for (size_t i = 0; i < p->decisions.n; i++)
        for (size_t k = 0; k < r->out->comments.n; k++) {
            struct gw_comment *c = &r->out->comments.items[k];
            if (c->number != p->decisions.items[i].number || c->status == GW_COMMENT_CLOSED) continue;
            c->decision = &p->decisions.items[i];
            c->disposition = c->decision->disposition;
            c->status = GW_COMMENT_ACCEPTED;
        }
}

void gw_comments_settle(struct reviewing *r, const struct gw_previous *previous)
{
    struct gw_review *out = r->out;
    tell_apart(r);
    sort(out);
    follow(r, previous);
    number(out);
    sort(out);
    decide(r);
    for (size_t i = 0; i < out->comments.n; i++)
        if (out->comments.items[i].status != GW_COMMENT_CLOSED) out->counts[out->comments.items[i].consequence]++;
    out->previous = previous ? previous->file : NULL;
}

enum gw_consequence gw_review_worst(const struct gw_review *review)
{
    enum gw_consequence worst = GW_IT_FAILS;
    while (worst < GW_CONSEQUENCES && !review->counts[worst]) worst++;
    return worst;
}
