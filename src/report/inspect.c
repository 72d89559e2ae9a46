/* Readings as people read them: what is not met, what holds outside its limit and how much is left, what is unknown and
 * what to measure; then the rest, merged, and what the readings say of the places that were not looked at. */
#include "report/inspect.h"
#include "report/asking.h"
#include "report/draw/pictures.h"
#include "report/sheets.h"

#include "galeward/memo.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct inspect_page {
    struct page page;
    const struct gw_inspection *in;
};

static const char *plural(long n) { return n == 1 ? "" : "s"; }

/* Alike rows: of one item, value and verdict, for one reason ---------------------------------------------------------
 */

struct alike {
    const struct gw_inspected *first, *last;
    long n, named;
    struct gw_text lines, places;
    size_t next; /* 1 + another one whose key is the same; 0: none */
};
struct merged {
    struct alike *items;
    size_t n, capacity;
    struct gw_memo known; /* 1 + an index in `items` */
};
enum { NAMED = 6 }; /* places and lines named of one entry; of what is not met all are */

static const char *message_of(struct page *page, const struct gw_message *message)
{
    return gw_message_text(page->arena, message, page->shown);
}

static bool is_alike(const struct alike *a, const struct gw_inspected *row)
{
    const struct gw_inspected *first = a->first;
    const struct gw_item_value v = row->reading->value, w = first->reading->value;
    return first->item == row->item && v.word == w.word && (v.word || v.number == w.number) &&
           gw_message_same(&first->message, &row->message);
}

static struct alike *find_alike(struct inspect_page *p, struct merged *m, const struct gw_inspected *row)
{
    const struct gw_item_value v = row->reading->value;
    uint64_t key[] = {(uint64_t)row->item->id, (uint64_t)v.word, 0, gw_message_hash(&row->message)};
    const double number = v.word ? 0 : v.number + 0.0; /* zero is zero, whatever its sign */
    memcpy(&key[2], &number, sizeof number);
    size_t *at = (size_t *)(void *)gw_memo_at(&m->known, p->page.arena, key, sizeof key);
    for (size_t i = *at; i; i = m->items[i - 1].next)
        if (is_alike(&m->items[i - 1], row)) return &m->items[i - 1];
    m->items = gw_grow(p->page.arena, m->items, m->n, &m->capacity, sizeof *m->items);
    struct alike *a = &m->items[m->n++];
    *a = (struct alike){.first = row, .next = *at};
    *at = m->n;
    gw_text_init(&a->lines, p->page.arena);
    gw_text_init(&a->places, p->page.arena);
    return a;
}

static void add_row(struct inspect_page *p, struct merged *m, const struct gw_inspected *row)
{
    struct alike *a = find_alike(p, m, row);
    if (a->n < NAMED || row->verdict == GW_ITEM_NOT_MET) {
        a->named++;
        if (a->n) gw_text_add(&a->lines, ", ");
        gw_text_count(&a->lines, (long)row->reading->node->line);
        const bool other = !a->n || strcmp(a->last->place, row->place) != 0;
        if (a->n && other) gw_text_add(&a->places, "; ");
        if (other) gw_text_add(&a->places, row->place);
    }
    a->last = row;
    a->n++;
}

/* Least left against what is needed first, then what nothing is left of or known of; in the sheet's order. After them
 * what is in its own limit and not met by others alone. */
static int least_first(const void *a, const void *b)
{
    const struct alike *x = a, *y = b;
    if (x->first->elsewhere != y->first->elsewhere) return x->first->elsewhere ? 1 : -1;
    const struct gw_item_result *r = x->first->result, *q = y->first->result;
    const double p = r && gw_given(r->remaining_worst) ? r->remaining_worst / r->required : -1;
    const double s = q && gw_given(q->remaining_worst) ? q->remaining_worst / q->required : -1;
    if (p != s) return p < s ? -1 : 1;
    return x->first < y->first ? -1 : x->first > y->first;
}

static struct merged merge(struct inspect_page *p, enum gw_item_verdict verdict)
{
    struct merged m = {0};
    for (size_t i = 0; i < p->in->rows.n; i++) {
        const struct gw_inspected *row = &p->in->rows.items[i];
        if (row->verdict == verdict && !row->closed_by && !row->duplicate_of) add_row(p, &m, row);
    }
    if (m.n) qsort(m.items, m.n, sizeof *m.items, least_first);
    return m;
}

/* Entries -----------------------------------------------------------------------------------------------------------
 */

static void add_figure(struct gw_text *out, double value)
{
    char number[GW_NUMBER_SIZE];
    const double hundredth = 100;
    if (isinf(value)) gw_text_add(out, "all");
    else {
        gw_print_fixed(number, floor(value * hundredth + 1e-9) / hundredth, 2); /* what is left is rounded down */
        gw_text_add(out, number);
    }
}

/* "0.89 to 1.12 of what is asked (clamp), 1.5 needed" */
static const char *left_words(struct inspect_page *p, const struct gw_item_result *r)
{
    struct gw_text text;
    gw_text_init(&text, p->page.arena);
    gw_text_add(&text, "");
    if (!r || !gw_given(r->remaining_worst)) return text.at;
    add_figure(&text, r->remaining_worst);
    if (r->remaining > r->remaining_worst * (1 + 1e-6)) {
        gw_text_add(&text, " to ");
        add_figure(&text, r->remaining);
    }
    gw_text_addf(&text, " of the demand (%s), ", r->mechanism);
    add_figure(&text, r->required);
    gw_text_add(&text, " needed");
    return text.at;
}

static const char *limit_words(struct inspect_page *p, const struct gw_inspected *row)
{
    const char *limit = message_of(&p->page, &row->limit);
    const enum gw_limit_basis basis = row->result ? row->result->limit.basis : GW_LIMIT_NONE;
    return basis && *limit ? gw_format(p->page.arena, "%s (%s)", limit, gw_limit_basis_name(basis)) : limit;
}

static const char *value_words(struct inspect_page *p, const struct gw_inspected *row)
{
    const struct gw_value shown = gw_item_shown(row->item->id, row->reading->value);
    const struct gw_message message = GW_SAY(p->page.arena, "{}", shown);
    return message_of(&p->page, &message);
}

static const char *more_places(struct inspect_page *p, const struct alike *a)
{
    return a->n > a->named ? gw_format(p->page.arena, " and %ld more places", a->n - a->named) : "";
}

/* What is known, then what to ask and to do. */
static const char *why_and_do(struct inspect_page *p, const struct gw_inspected *row)
{
    const char *why = message_of(&p->page, &row->message), *action = message_of(&p->page, &row->action);
    const bool both = *action && strcmp(action, why) != 0;
    const char *all = gw_format(p->page.arena, "%s%s%s", why, both && *why ? "; " : "", both ? action : "");
    return gw_ask_and_do(p->page.arena, all);
}

static void entry(struct inspect_page *p, const struct alike *a)
{
    const struct gw_inspected *row = a->first;
    struct gw_text text;
    const char *limit = limit_words(p, row), *left = left_words(p, row->result);
    const char *why = why_and_do(p, row);
    gw_text_init(&text, p->page.arena);
    gw_text_addf(&text, "%s: %s", gw_item_kinds[row->item->id].title, value_words(p, row));
    if (*limit) gw_text_addf(&text, ", limit %s", limit);
    if (*left) gw_text_addf(&text, "; left: %s", left);
    gw_text_addf(&text, ". %s%s (row%s %s%s of the file).", a->places.at, more_places(p, a), plural(a->n), a->lines.at,
                 a->n > a->named ? ", ..." : "");
    if (*why) gw_text_addf(&text, " %s", why);
    gw_report_item(p->page.report, text.at);
}

/* On pages that are filed a row each, which a phone shows as cards. */
static const struct gw_report_column CARD[] = {{.title = "Item"},
                                               {.title = "Verdict"},
                                               {.title = "Read"},
                                               {.title = "Limit"},
                                               {.title = "Left"},
                                               {.title = "Where", .below = true},
                                               {.title = "Why, and what to do", .below = true}};

static void card(struct inspect_page *p, const struct alike *a)
{
    static const enum gw_tone tones[] = {[GW_ITEM_UNKNOWN] = GW_DOUBTFUL,
                                         [GW_ITEM_WITHIN] = GW_GOOD,
                                         [GW_ITEM_OUTSIDE_HOLDS] = GW_IN_HAND,
                                         [GW_ITEM_NOT_MET] = GW_BAD};
    const struct gw_inspected *row = a->first;
    const char *limit = limit_words(p, row), *left = left_words(p, row->result);
    const char *more = more_places(p, a);
    struct gw_report *report = p->page.report;
    gw_report_cell(report, gw_item_kinds[row->item->id].title);
    gw_report_toned(report, tones[row->verdict], gw_item_verdict_name(row->verdict));
    gw_report_cell(report, value_words(p, row));
    gw_report_cell(report, *limit ? limit : "none");
    gw_report_cell(report, *left ? left : "not computed");
    gw_report_cell(report, gw_format(p->page.arena, "%s%s (row%s %s%s of the file)", a->places.at, more, plural(a->n),
                                     a->lines.at, a->n > a->named ? ", ..." : ""));
    gw_report_cell(report, why_and_do(p, row));
}

static void section(struct inspect_page *p, enum gw_item_verdict verdict, const char *title)
{
    enum { SHOWN = 12 };
    const struct merged m = merge(p, verdict);
    const bool all = p->page.results->all || verdict == GW_ITEM_NOT_MET; /* a page leaves out nothing that is not met */
    const size_t most = all || m.n < SHOWN ? m.n : SHOWN;
    if (!m.n) return;
    gw_report_section(p->page.report, GW_PART_ANSWERS, title);
    const bool cards = p->page.report->pictures;
    if (cards) gw_report_table(p->page.report, "", CARD, sizeof CARD / sizeof *CARD);
    for (size_t i = 0; i < most; i++) (cards ? card : entry)(p, &m.items[i]);
    if (most < m.n)
        gw_report_line(p->page.report,
                       gw_format(p->page.arena,
                                 "%zu more entries: 'galeward inspect PROJECT READINGS.csv --all' lists them, with "
                                 "-o FILE.csv every row.",
                                 m.n - most));
}

/* What is within: one line an item. */
static void within(struct inspect_page *p)
{
    static const struct gw_report_column columns[] = {
        {.title = "Item"}, {.title = "Readings", .right = true}, {.title = "Limit, and the least that is left"}};
    long n[GW_ITEM_COUNT] = {0};
    const struct gw_inspected *least[GW_ITEM_COUNT] = {0};
    if (!p->in->counts[GW_ITEM_WITHIN]) return;
    for (size_t i = 0; i < p->in->rows.n; i++) {
        const struct gw_inspected *row = &p->in->rows.items[i], **worst = &least[row->item->id];
        if (row->verdict != GW_ITEM_WITHIN || row->closed_by || row->duplicate_of) continue;
        n[row->item->id]++;
        if (!*worst || row->result->remaining_worst / row->result->required <
                           (*worst)->result->remaining_worst / (*worst)->result->required)
            *worst = row;
    }
    gw_report_section(p->page.report, GW_PART_ANSWERS, "Within");
    gw_report_table(p->page.report, "", columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) {
        if (!least[i]) continue;
        gw_report_cell(p->page.report, gw_item_kinds[i].title);
        gw_report_cell(p->page.report, gw_format(p->page.arena, "%ld", n[i]));
        const char *limit = limit_words(p, least[i]), *left = left_words(p, least[i]->result);
        gw_report_cell(p->page.report, gw_format(p->page.arena, "%s%s%s", limit, *limit && *left ? "; " : "", left));
    }
}

/* What they come to -------------------------------------------------------------------------------------------------
 */

static const char *percent(struct inspect_page *p, double share)
{
    struct gw_text text;
    gw_text_init(&text, p->page.arena);
    gw_text_number(&text, share * 100, 3);
    gw_text_add(&text, " %");
    return text.at;
}

/* Once each, with the items that it is said of. */
static void reasons(struct inspect_page *p)
{
    const struct gw_item_share *all = p->in->items.items;
    for (size_t i = 0; i < p->in->items.n; i++) {
        struct gw_text of;
        bool before = !gw_said(&all[i].why);
        for (size_t k = 0; k < i; k++) before = before || gw_message_same(&all[k].why, &all[i].why);
        if (before) continue;
        gw_text_init(&of, p->page.arena);
        for (size_t k = i; k < p->in->items.n; k++)
            if (gw_message_same(&all[k].why, &all[i].why))
                gw_text_addf(&of, "%s%s", k > i ? "; " : "", gw_item_kinds[all[k].item->id].title);
        gw_report_item(p->page.report, gw_format(p->page.arena, "%s: %s", of.at, message_of(&p->page, &all[i].why)));
    }
}

static void shares(struct inspect_page *p)
{
    static const struct gw_report_column columns[] = {{.title = "Item"},
                                                      {.title = "Places", .right = true},
                                                      {.title = "Outside", .right = true},
                                                      {.title = "Unknown", .right = true},
                                                      {.title = "Random", .right = true},
                                                      {.title = "Of all, 95 %"},
                                                      {.title = "Enough"}};
    if (!p->in->items.n) return;
    gw_report_section(p->page.report, GW_PART_ANSWERS, "What the readings say of the other places");
    gw_report_table(p->page.report, "", columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < p->in->items.n; i++) {
        const struct gw_item_share *s = &p->in->items.items[i];
        const long counts[] = {s->places, s->outside, s->unknown, s->random};
        gw_report_cell(p->page.report, gw_item_kinds[s->item->id].title);
        for (size_t k = 0; k < sizeof counts / sizeof *counts; k++)
            gw_report_cell(p->page.report, gw_format(p->page.arena, "%ld", counts[k]));
        gw_report_cell(p->page.report,
                       s->random ? gw_format(p->page.arena, "%s to %s", percent(p, s->least), percent(p, s->most))
                                 : "");
        gw_report_cell(p->page.report, s->enough ? "yes" : "no");
    }
    reasons(p);
    gw_report_line(p->page.report,
                   "A place is outside if one of its first readings is beyond its limit, also where what "
                   "is left is unknown; unknown here are those that no limit tells. The interval is exact "
                   "(Clopper-Pearson), of the places marked random alone.");
}

/* Not all of the item's places. */
static bool parts_the_work(const struct inspect_page *p, const struct gw_part_share *s)
{
    for (size_t i = 0; i < p->in->items.n; i++)
        if (p->in->items.items[i].item == s->item) return s->places < p->in->items.items[i].places;
    return false;
}

static void parts(struct inspect_page *p)
{
    static const struct gw_report_column columns[] = {{.title = "By"},
                                                      {.title = "Which"},
                                                      {.title = "Item"},
                                                      {.title = "Outside", .right = true},
                                                      {.title = "Places", .right = true}};
    bool any = false;
    for (size_t i = 0; i < p->in->parts.n; i++) {
        const struct gw_part_share *s = &p->in->parts.items[i];
        if (!p->page.results->all && (!s->outside || !parts_the_work(p, s))) continue;
        if (!any) gw_report_table(p->page.report, "By crew, date and wall", columns, sizeof columns / sizeof *columns);
        any = true;
        gw_report_cell(p->page.report, s->of);
        gw_report_cell(p->page.report, s->name);
        gw_report_cell(p->page.report, gw_item_kinds[s->item->id].title);
        gw_report_cell(p->page.report, gw_format(p->page.arena, "%ld", s->outside));
        gw_report_cell(p->page.report, gw_format(p->page.arena, "%ld", s->places));
    }
}

/* Of a place all that is to be opened there, in the order in which its first item is grave. */
static void next_place(struct inspect_page *p, size_t from)
{
    const char *place = p->in->next.items[from].place;
    struct gw_text text;
    gw_text_init(&text, p->page.arena);
    for (size_t i = 0; i < p->in->next.n; i++) {
        const struct gw_next_place *n = &p->in->next.items[i];
        if (strcmp(n->place, place) != 0) continue;
        if (i < from) return; /* told there */
        gw_text_addf(&text, "%s%s (%s%s)", text.length ? "; " : "", gw_item_kinds[n->item->id].title,
                     message_of(&p->page, &n->why), n->item->hold ? "; hold point" : "");
    }
    gw_report_item(p->page.report, gw_format(p->page.arena, "%s: %s", place, text.at));
}

static void next(struct inspect_page *p)
{
    if (!p->in->next.n) return;
    gw_report_section(p->page.report, GW_PART_ANSWERS, "Where to open next");
    if (p->page.report->pictures)
        gw_report_line(p->page.report, "By place, the gravest first; a hold point is looked at before the work there "
                                       "goes on.");
    for (size_t i = 0; i < p->in->next.n; i++) next_place(p, i);
    if (p->in->next_more)
        gw_report_line(
            p->page.report,
            gw_format(p->page.arena, "%ld more beside what is outside, after these by gravity.", p->in->next_more));
}

/* Rows that do not count ------------------------------------------------------------------------------------------- */

static void left_out(struct inspect_page *p)
{
    long closed = 0, twice = 0;
    for (size_t i = 0; i < p->in->rows.n; i++) {
        closed += p->in->rows.items[i].closed_by != 0;
        twice += p->in->rows.items[i].duplicate_of != 0;
    }
    if (closed)
        gw_report_line(p->page.report, gw_format(p->page.arena,
                                                 "%ld row%s closed by later ones: repaired, or read anew "
                                                 "at the same point.",
                                                 closed, plural(closed)));
    if (twice)
        gw_report_line(p->page.report,
                       gw_format(p->page.arena, "%ld row%s said twice, counted once.", twice, plural(twice)));
    const long wrong = (long)p->in->readings->wrong;
    if (wrong)
        gw_report_line(p->page.report, gw_format(p->page.arena, "%ld row%s with a fault left out: see the errors.",
                                                 wrong, plural(wrong)));
}

/* The answer in a sentence, where the page is to be filed. */
static void lead(struct inspect_page *p, long all)
{
    const long missed = p->in->counts[GW_ITEM_NOT_MET], unknown = p->in->counts[GW_ITEM_UNKNOWN];
    const char *says =
        missed    ? gw_format(p->page.arena, "%ld of %ld readings %s not met.", missed, all, missed == 1 ? "is" : "are")
        : unknown ? gw_format(p->page.arena, "No reading is missed; of %ld of %ld nothing is known.", unknown, all)
        : all     ? "Every reading holds."
                  : "There is no reading.";
    if (p->page.report->pictures) gw_report_lead(p->page.report, says);
}

/* " (7 of them in their own limit, by others of the same line or pocket)" */
static const char *by_others(struct inspect_page *p)
{
    long n = 0;
    for (size_t i = 0; i < p->in->rows.n; i++) {
        const struct gw_inspected *row = &p->in->rows.items[i];
        n += row->elsewhere && row->verdict == GW_ITEM_NOT_MET && !row->closed_by && !row->duplicate_of;
    }
    if (!n) return "";
    return gw_format(p->page.arena, " (%ld of them in %s own limit, by others of the same line or pocket)", n,
                     n == 1 ? "its" : "their");
}

static void first_line(struct inspect_page *p)
{
    const long *n = p->in->counts;
    const long all = n[0] + n[1] + n[2] + n[3];
    lead(p, all);
    gw_report_line(p->page.report, gw_format(p->page.arena,
                                             "%ld reading%s of %s: %ld not met%s, %ld outside and holding, %ld "
                                             "unknown, %ld within.",
                                             all, plural(all), p->in->system->name, n[GW_ITEM_NOT_MET], by_others(p),
                                             n[GW_ITEM_OUTSIDE_HOLDS], n[GW_ITEM_UNKNOWN], n[GW_ITEM_WITHIN]));
    left_out(p);
}

/* The first, an elevation, stands on the first page; the others after what they show in words. */
static void pictures(struct inspect_page *p, const struct gw_result *result, size_t from, size_t most)
{
    for (size_t i = from; p->page.report->pictures && i < result->pictures->n && i < most; i++)
        gw_report_figure(p->page.report, &result->pictures->items[i].figure);
}

static void inspect_page(struct gw_report *report, const struct gw_result *result)
{
    enum { FEW = 12 };
    const struct gw_inspected_results *value = result->value;
    struct inspect_page p = {.page = gw_page_of(report, value->results), .in = value->inspection};
    struct gw_used used = p.in->used;
    gw_page_head(&p.page, "Inspection");
    first_line(&p);
    pictures(&p, result, 0, 1);
    section(&p, GW_ITEM_NOT_MET, "Not met");
    section(&p, GW_ITEM_OUTSIDE_HOLDS, "Outside the limit, and holds");
    section(&p, GW_ITEM_UNKNOWN, "Unknown");
    next(&p);
    within(&p);
    shares(&p);
    parts(&p);
    pictures(&p, result, 1, FEW);
    gw_used_merge(&used, &value->results->used);
    gw_page_foot(&p.page, &used);
}

struct gw_result gw_result_inspection(struct gw_arena *arena, const struct gw_results *results,
                                      const struct gw_inspection *inspection)
{
    struct gw_inspected_results *value = gw_alloc(arena, 1, sizeof *value);
    *value = (struct gw_inspected_results){.results = results, .inspection = inspection};
    struct gw_pictures *shown = gw_alloc(arena, 1, sizeof *shown);
    gw_pictures_of_readings(shown, arena, results, inspection);
    return (struct gw_result){.shown = results->shown,
                              .record = &gw_inspection_record,
                              .value = value,
                              .rows = "readings",
                              .pictures = shown,
                              .page = inspect_page,
                              .sheet = gw_sheet_of_readings};
}
