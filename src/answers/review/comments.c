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

void gw_confirm_add(struct reviewing *r, const char *item, const char *subject, struct gw_message said)
{
    struct gw_review *out = r->out;
    out->confirm.items =
        gw_grow(r->arena, out->confirm.items, out->confirm.n, &out->confirm_capacity, sizeof *out->confirm.items);
    out->confirm.items[out->confirm.n++] = (struct gw_complete){item, subject, said};
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

/* Without the " (2)" that tells causes of one name apart. */
static size_t name_length(const char *subject)
{
    const char *mark = strrchr(subject, '(');
    return mark && mark - subject > 1 && mark[-1] == ' ' && mark[1] >= '2' && mark[1] <= '9' &&
                   strspn(mark + 1, "0123456789") + 2 == strlen(mark)
               ? (size_t)(mark - subject - 1)
               : strlen(subject);
}

static bool is_it(const struct gw_comment *c, const struct gw_past_comment *past)
{
    const size_t n = name_length(c->subject);
    return strcmp(c->item, past->item) == 0 && n == name_length(past->subject) &&
           strncmp(c->subject, past->subject, n) == 0;
}

/* The same, of a wall whose zones were told together and are told apart now, or the reverse. */
static bool is_part(const struct gw_comment *c, const struct gw_past_comment *past)
{
    static const char zone[] = ", zone ";
    const size_t n = name_length(c->subject), m = name_length(past->subject);
    const char *longer = n > m ? c->subject : past->subject;
    const size_t shorter = n < m ? n : m;
    return strcmp(c->item, past->item) == 0 && n != m && strncmp(c->subject, past->subject, shorter) == 0 &&
           strncmp(longer + shorter, zone, strlen(zone)) == 0;
}

static size_t places_shared(const struct gw_comment *c, const struct gw_past_comment *past)
{
    size_t n = 0;
    for (size_t i = 0; i < c->places.n; i++)
        for (size_t k = 0; k < past->places.n; k++) n += strcmp(c->places.items[i], past->places.items[k]) == 0;
    return n;
}

/* Nothing is said of it now: closed, unless it was left out. */
static struct gw_comment unsaid(struct reviewing *r, const struct gw_past_comment *past)
{
    struct gw_message open = {0};
    if (!past->closed) open = gw_review_unanswered(r, past);
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

/* As it stands in a result, whose units nobody knows. */
static bool is_submitted_again(const struct reviewing *r, const struct gw_comment *c,
                               const struct gw_past_comment *past)
{
    return strcmp(gw_message_text(r->arena, &c->submitted, GW_US), past->submitted) == 0 ||
           strcmp(gw_message_text(r->arena, &c->submitted, GW_SI), past->submitted) == 0;
}

/* The one of its name that shares most places; of those the one of the same value; of those the one with its number
 * behind the name. */
static struct gw_comment *comment_of(struct reviewing *r, const struct gw_past_comment *past, size_t least)
{
    struct gw_comment *best = NULL;
    size_t most = 0;
    for (size_t i = 0; i < r->out->comments.n; i++) {
        struct gw_comment *c = &r->out->comments.items[i];
        if (c->number || !(is_it(c, past) || (least && is_part(c, past)))) continue;
        const size_t shared = places_shared(c, past), same = is_submitted_again(r, c, past),
                     rank = 4 * shared + 2 * same + (strcmp(c->subject, past->subject) == 0);
        if (shared < least || (best && rank <= most)) continue;
        best = c;
        most = rank;
    }
    return best;
}

/* One that was closed and is said again is open again. */
static bool go_on(struct reviewing *r, const struct gw_past_comment *past, size_t least)
{
    struct gw_comment *c = comment_of(r, past, least);
    if (!c) return false;
    c->number = past->number;
    if (is_it(c, past)) c->subject = past->subject;
    c->status = GW_COMMENT_OPEN;
    c->stood = true;
    return true;
}

/* Of causes of one name each goes on at its own places; what is left goes on by its name alone. */
static void follow(struct reviewing *r, const struct gw_previous *previous)
{
    struct gw_review *out = r->out;
    bool *goes_on = gw_alloc(r->arena, previous ? previous->n + 1 : 1, sizeof *goes_on);
    for (size_t least = 2; least-- > 0;)
        for (size_t i = 0; previous && i < previous->n; i++)
            goes_on[i] = goes_on[i] || go_on(r, &previous->items[i], least);
    for (size_t i = 0; previous && i < previous->n; i++) {
        if (goes_on[i]) continue;
        const struct gw_comment kept = unsaid(r, &previous->items[i]);
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

/* By an earlier one, or by one of an earlier result. */
static bool is_taken(const struct gw_review *out, size_t at, const char *subject)
{
    for (size_t i = 0; i < out->comments.n; i++) {
        const struct gw_comment *other = &out->comments.items[i];
        if (i == at || (i > at && !other->stood)) continue;
        if (strcmp(other->item, out->comments.items[at].item) == 0 && strcmp(other->subject, subject) == 0) return true;
    }
    return false;
}

/* Two causes that would be known by one name are told apart: a new one has a number behind it. */
static void tell_apart(struct reviewing *r)
{
    struct gw_review *out = r->out;
    for (size_t i = 0; i < out->comments.n; i++) {
        struct gw_comment *c = &out->comments.items[i];
        const char *name = gw_strndup(r->arena, c->subject, name_length(c->subject));
        for (int again = 2; !c->stood && is_taken(out, i, c->subject); again++)
            c->subject = gw_format(r->arena, "%s (%d)", name, again);
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
    tell_apart(r); /* in the order in which they were found */
    sort(out);
    follow(r, previous);
    tell_apart(r);
    number(out);
    sort(out);
    decide(r);
    for (size_t i = 0; i < out->comments.n; i++)
        if (out->comments.items[i].status != GW_COMMENT_CLOSED) out->counts[out->comments.items[i].consequence]++;
    gw_dispose_of_whole(r);
    out->previous = previous ? previous->file : NULL;
}

enum gw_consequence gw_review_worst(const struct gw_review *review)
{
    enum gw_consequence worst = GW_IT_FAILS;
    while (worst < GW_CONSEQUENCES && !review->counts[worst]) worst++;
    return worst;
}
