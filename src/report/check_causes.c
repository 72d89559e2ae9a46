/* Findings of a candidate, gathered by what they have in common. Nothing is read from printed words: alike is what the
 * judge said in the same words with other figures. */
#include "galeward/memo.h"
#include "report/check.h"
#include "report/results.h"

#include <stdlib.h>
#include <string.h>

bool gw_same_check(const struct gw_demand *a, const struct gw_demand *b)
{
    return a->check == b->check && strcmp(gw_check_name(a), gw_check_name(b)) == 0;
}

/* Places ---------------------------------------------------------------------------------------------------------- */

static void add_name(struct page *page, struct places *places, const char *name)
{
    for (size_t i = 0; i < places->named.n; i++)
        if (strcmp(places->named.items[i], name) == 0) return;
    places->named.items = gw_grow(page->arena, places->named.items, places->named.n, &places->named_capacity,
                                  sizeof *places->named.items);
    places->named.items[places->named.n++] = name;
}

/* Those pieces were counted with another element: the other part of what the roof line cuts, the other face of a
 * corner. */
static bool is_counted(const struct places *places, const struct gw_takeoff *t, const struct gw_element *e)
{
    const struct gw_element *others[GW_SAME_PIECES];
    const size_t n = gw_same_pieces(others, t, e);
    for (size_t i = 0; i < n; i++)
        if (places->seen[others[i]->index]) return true;
    return false;
}

static void add_element(struct page *page, struct places *places, const struct gw_element *e)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const bool first = !places->seen;
    if (first) places->seen = gw_alloc(page->arena, t->elements.n + 1, sizeof *places->seen);
    if (first) places->walls = gw_alloc(page->arena, t->n_elevations + 1, sizeof *places->walls);
    if (places->seen[e->index]) return;
    places->seen[e->index] = true;
    places->walls[e->grid->elevation] = e->wall;
    if (!is_counted(places, t, e)) places->counts[e->kind] += e->count;
    places->zone_4 = places->zone_4 || e->zone == 4;
    places->zone_5 = places->zone_5 || e->zone == 5;
    places->parapet = places->parapet || e->parapet;
    places->below = places->below || !e->parapet;
    if (first || e->bottom < places->bottom) places->bottom = e->bottom;
    if (first || e->top > places->top) places->top = e->top;
}

bool gw_is_of_project(const struct gw_demand *d) { return !d->element && !d->wall && !d->lite; }

static void add_place(struct page *page, struct places *places, const struct gw_demand *d)
{
    if (d->element) add_element(page, places, d->element);
    else if (gw_is_of_project(d)) places->project = true;
    else add_name(page, places, d->where);
}

long gw_places_count(const struct places *places)
{
    long n = (long)places->named.n + places->project + places->untold;
    for (int kind = 0; kind < GW_KIND_COUNT; kind++) n += places->counts[kind];
    return n;
}

/* Causes ---------------------------------------------------------------------------------------------------------- */

enum { FIGURES = 24 };

static size_t collect(double *out, size_t n, const struct gw_message *message)
{
    for (unsigned i = 0; i < message->n && n < FIGURES; i++) {
        const struct gw_value *v = &message->values[i];
        if (v->kind == GW_V_NUMBER || v->kind == GW_V_QUANTITY) out[n++] = v->as.number;
        if (v->kind == GW_V_MESSAGE || v->kind == GW_V_ABROAD) n = collect(out, n, v->as.message);
    }
    return n;
}

static void take_figures(struct page *page, struct cause *cause, const struct gw_message *words)
{
    double figures[FIGURES];
    const size_t n = collect(figures, 0, words);
    const bool first = !cause->figures.items;
    if (first) cause->figures.items = gw_alloc(page->arena, n + 1, sizeof *cause->figures.items);
    if (first) cause->figures.n = n;
    for (size_t i = 0; i < n && i < cause->figures.n; i++) {
        struct figure_range *range = &cause->figures.items[i];
        if (first || figures[i] < range->low) range->low = figures[i];
        if (first || figures[i] > range->high) range->high = figures[i];
    }
}

static void take_check(struct page *page, struct cause *cause, const char *name)
{
    for (size_t i = cause->checks.n; i-- > 0;)
        if (strcmp(cause->checks.items[i], name) == 0) return;
    cause->checks.items = gw_grow(page->arena, cause->checks.items, cause->checks.n, &cause->checks_capacity,
                                  sizeof *cause->checks.items);
    cause->checks.items[cause->checks.n++] = name;
}

static struct cause *cause_of(struct page *page, struct causes *causes, const struct gw_text *key)
{
    void **at = gw_memo_at(&causes->known, page->arena, key->at, key->length);
    struct cause *cause = *at;
    if (cause) return cause;
    *at = cause = gw_alloc(page->arena, 1, sizeof *cause);
    causes->items = gw_grow(page->arena, causes->items, causes->n, &causes->capacity, sizeof(struct cause *));
    cause->number = causes->n;
    causes->items[causes->n++] = cause;
    return cause;
}

static void add_leaning(struct page *page, struct cause *cause, const struct gw_finding *f)
{
    const size_t n = page->results->answer->takeoff->elements.n;
    if (!cause->lean) cause->lean = gw_alloc(page->arena, n + 1, sizeof *cause->lean);
    cause->lean[f->demand->element->index] = (unsigned)f->lean;
}

/* `root`: where the cause stands, the finding itself or the link that it leans on. */
static void take(struct page *page, struct cause *cause, const struct gw_finding *f, const struct gw_finding *root,
                 const struct gw_message *words)
{
    if (gw_graver(root, cause->worst)) {
        cause->worst = root;
        cause->words = words;
    }
    take_figures(page, cause, words);
    take_check(page, cause, gw_check_name(f->demand));
    if (f == root) add_place(page, &cause->at, f->demand);
    else add_leaning(page, cause, f);
    cause->path = cause->path || f->demand->check->path;
    cause->project = cause->project || f->demand->state == GW_NOT_KNOWN;
    cause->held++;
}

/* What of a finding counts -------------------------------------------------------------------------------------------
 */

/* The link whose verdict it shares, unless it has something of its own to ask. */
static const struct gw_finding *root_of(const struct gw_finding *f)
{
    return f->link && f->link->verdict == f->verdict && !gw_said(&f->question) ? f->link : f;
}

static const struct gw_message *words_of(const struct gw_finding *root)
{
    if (gw_said(&root->question)) return &root->question;
    return root->link && gw_said(&root->untested) ? &root->untested : &root->message;
}

/* Why one of its tests does not show it. */
static void take_gap(struct verdict_story *story, struct page *page, struct gw_text *key, const struct gw_finding *f,
                     const struct gw_message *why, bool stated)
{
    key->length = 0;
    gw_message_shape(key, why);
    gw_text_add(key, stated ? "|stated" : "|");
    struct cause *c = cause_of(page, &story->untested, key);
    c->stated = stated;
    take(page, c, f, f, why);
}

static void take_trouble(struct verdict_story *story, struct page *page, struct gw_text *key,
                         const struct gw_finding *f)
{
    const struct gw_finding *root = root_of(f);
    const struct gw_message *words = words_of(root);
    const bool fails = f->verdict == GW_FAIL;
    struct causes *causes = fails ? &story->fails : &story->questions;
    key->length = 0;
    gw_text_addf(key, "%s|", fails ? gw_check_name(root->demand) : "");
    gw_message_shape(key, words);
    take(page, cause_of(page, causes, key), f, root, words);
    if (!gw_said(&f->untested)) return;
    if (words != &f->untested) take_gap(story, page, key, f, &f->untested, false);
    for (size_t i = 0; f->gaps && i < f->gaps->list.n; i++)
        take_gap(story, page, key, f, &f->gaps->list.items[i].why, f->gaps->list.items[i].stated);
}

static const struct gw_message *confirmed(const struct gw_finding *f) { return &f->confirm; }

static const struct gw_message *stated(const struct gw_finding *f)
{
    static const struct gw_message nothing;
    return f->verdict == GW_PASS ? &f->question : &nothing;
}

static void gather(struct causes *out, struct page *page, const struct verdict_story *story,
                   const struct gw_message *(*said_of)(const struct gw_finding *))
{
    struct gw_text key;
    gw_text_init(&key, page->arena);
    for (size_t i = 0; i < story->n; i++) {
        const struct gw_finding *f = &story->findings[i];
        const struct gw_message *words = said_of(f);
        if (!gw_said(words)) continue;
        key.length = 0;
        gw_message_shape(&key, words);
        take(page, cause_of(page, out, &key), f, f, words);
    }
}

void gw_gather_confirmed(struct causes *out, struct page *page, const struct verdict_story *story)
{
    gather(out, page, story, confirmed);
}

void gw_gather_stated(struct causes *out, struct page *page, const struct verdict_story *story)
{
    gather(out, page, story, stated);
}

/* Order ------------------------------------------------------------------------------------------------------------ */

static double use_of(const struct cause *c)
{
    const double use = c->worst->utilization;
    return gw_given(use) ? use : 0;
}

static int by_held(const void *left, const void *right)
{
    const struct cause *a = *(struct cause *const *)left, *b = *(struct cause *const *)right;
    if (a->stated != b->stated) return a->stated ? 1 : -1;
    if (a->held != b->held) return a->held > b->held ? -1 : 1;
    return a->number < b->number ? -1 : 1;
}

static int by_use(const void *left, const void *right)
{
    const struct cause *a = *(struct cause *const *)left, *b = *(struct cause *const *)right;
    if (use_of(a) != use_of(b)) return use_of(a) > use_of(b) ? -1 : 1;
    return by_held(left, right);
}

static void sort(struct causes *causes, int (*order)(const void *, const void *))
{
    if (causes->n) qsort(causes->items, causes->n, sizeof(struct cause *), order);
}

/* Given pressures that are too low hold everything. */
static void take_pressures(struct verdict_story *story, struct page *page)
{
    const struct gw_answer *a = page->results->answer;
    for (size_t i = 0; story->summary->governing && i < a->missing.n; i++) {
        const struct gw_request *r = &a->missing.items[i];
        struct gw_text key;
        if (r->first || r->candidate != story->summary->candidate) continue;
        gw_text_init(&key, page->arena);
        gw_text_addf(&key, "given|%zu", i);
        struct cause *c = cause_of(page, &story->questions, &key);
        c->worst = story->summary->governing;
        c->words = &r->question;
        c->at.untold = r->places;
        c->project = true;
        c->held = (long)story->n;
        take_figures(page, c, &r->question);
        take_check(page, c, "given pressures");
    }
}

void gw_story_of(struct verdict_story *out, struct page *page, const struct gw_summary *summary, size_t *at)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    struct gw_text key;
    const size_t begin = *at;
    while (*at < j->findings.n && j->findings.items[*at].candidate == summary->candidate) ++*at;
    *out = (struct verdict_story){
        .summary = summary, .findings = j->findings.items + begin, .n = *at - begin, .fails = {.n = 0}};
    gw_text_init(&key, page->arena);
    for (size_t i = 0; i < out->n; i++)
        if (gw_verdict_rank(out->findings[i].verdict) > gw_verdict_rank(GW_PASS))
            take_trouble(out, page, &key, &out->findings[i]);
    take_pressures(out, page);
    sort(&out->fails, by_use);
    sort(&out->questions, by_held);
    sort(&out->untested, by_held);
}
