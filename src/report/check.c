/* What each candidate answers: a line, a row a check, and the groups that fail or are not shown. */
#include "report/parts.h"

#include <stdlib.h>
#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

static const char *upper_verdict(enum gw_verdict verdict)
{
    static const char *const words[] = {
        [GW_NOT_SHOWN] = "NOT SHOWN", [GW_PASS] = "PASS", [GW_FAIL] = "FAIL", [GW_NOT_REQUIRED] = "NOT REQUIRED"};
    return words[verdict];
}

static const char *check_name(const struct gw_demand *d) { return d->name ? d->name : d->check; }

/* The worse verdict first: fail, not shown, pass, not required; then the greater utilization. */
static bool worse(const struct gw_finding *a, const struct gw_finding *b)
{
    static const int rank[] = {[GW_FAIL] = 3, [GW_NOT_SHOWN] = 2, [GW_PASS] = 1, [GW_NOT_REQUIRED] = 0};
    if (rank[a->verdict] != rank[b->verdict]) return rank[a->verdict] > rank[b->verdict];
    if (gw_given(a->utilisation) != gw_given(b->utilisation)) return gw_given(a->utilisation);
    return a->utilisation > b->utilisation;
}

struct check_row {
    const struct gw_finding *governing;
    long counts[4];
};

struct check_rows {
    struct check_row *items;
    size_t n, capacity, last;
};

static bool same_check(const struct gw_demand *a, const struct gw_demand *b)
{
    return strcmp(a->check, b->check) == 0 && strcmp(check_name(a), check_name(b)) == 0;
}

/* Findings of a check mostly follow each other, so the row of the one before is tried first. */
static struct check_row *row_of(struct page *page, struct check_rows *rows, const struct gw_finding *f)
{
    if (rows->n && same_check(rows->items[rows->last].governing->demand, f->demand)) return &rows->items[rows->last];
    size_t i = 0;
    while (i < rows->n && !same_check(rows->items[i].governing->demand, f->demand)) i++;
    if (i == rows->n) {
        rows->items = gw_grow(page->arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
        rows->items[rows->n++] = (struct check_row){.governing = f};
    }
    rows->last = i;
    return &rows->items[i];
}

static const char *limit_text(struct page *page, const struct gw_finding *f, double value, bool is_demand)
{
    enum rounding rounding = f->at_most ? NEAREST : is_demand ? UP : DOWN;
    return gw_quantity_text(page, f->dim, value, rounding);
}

static void check_cells(struct page *page, const struct check_row *row)
{
    const struct gw_finding *f = row->governing;
    gw_page_cell(page, check_name(f->demand));
    gw_report_toned(page->report, gw_verdict_tone(f->verdict), gw_verdict_name(f->verdict));
    gw_page_utilization(page, f->utilisation);
    gw_page_cell(page, limit_text(page, f, f->required, true));
    gw_page_cell(page, limit_text(page, f, f->provided, false));
    gw_page_cell(page, gw_evidence_name(f->evidence));
    gw_page_count(page, row->counts[GW_PASS]);
    gw_page_count(page, row->counts[GW_FAIL]);
    gw_page_count(page, row->counts[GW_NOT_SHOWN]);
    gw_page_cell(page, f->message);
}

/* The rows on memory behind a figure; empty where nothing is asked. */
static const char *weak_rows(struct page *page, const struct gw_finding *f)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (unsigned i = 0; f->verdict != GW_NOT_REQUIRED && gw_used_next(&f->used, &i); i++) {
        const struct gw_row *row = gw_table_row_at(page->results->model->tables, i);
        if (row->basis == GW_MEMORY) gw_text_addf(&text, "%s%s/%s", text.length ? ", " : "", row->table, row->id);
    }
    return text.length ? text.at : "";
}

/* Checks that rest on the same rows share a line. */
static void weak_figures(struct page *page, const struct check_rows *rows)
{
    const char **weak = gw_alloc(page->arena, rows->n + 1, sizeof *weak);
    for (size_t i = 0; i < rows->n; i++) weak[i] = weak_rows(page, rows->items[i].governing);
    for (size_t i = 0; i < rows->n; i++) {
        if (!*weak[i]) continue;
        const char *shared = weak[i];
        struct gw_text names;
        gw_text_init(&names, page->arena);
        for (size_t k = i; k < rows->n; k++) {
            if (strcmp(weak[k], shared) != 0) continue;
            gw_text_addf(&names, "%s%s", names.length ? ", " : "", check_name(rows->items[k].governing->demand));
            weak[k] = "";
        }
        gw_report_item(page->report, gw_format(page->arena, "Rests on memory - %s: %s", names.at, shared));
    }
}

static void not_built(struct page *page, const struct check_rows *rows)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < rows->n; i++) {
        const struct gw_finding *f = rows->items[i].governing;
        if (gw_is_not_built(f->message)) gw_text_addf(&text, "%s%s", text.length ? ", " : "", check_name(f->demand));
    }
    if (text.length)
        gw_report_line(page->report, gw_format(page->arena, "Not built yet, therefore not shown: %s.", text.at));
}

/* Three figures to a line; a candidate without the data has no line. */
static void reach(struct page *page, const struct gw_system *candidate)
{
    static const struct heading headings[] = {{.title = "How far it goes, by calculation"},
                                              {"Mullion span", true, GW_LENGTH},
                                              {"at width", true, GW_LENGTH},
                                              {"Width", true, GW_LENGTH},
                                              {"at span", true, GW_LENGTH},
                                              {"Screw spacing", true, GW_THICKNESS},
                                              {"at width", true, GW_LENGTH}};
    const struct gw_judgement *judgement = page->results->judgement;
    bool any = false;
    for (size_t i = 0; i < judgement->reaches.n; i++) {
        const struct gw_reach *r = &judgement->reaches.items[i];
        if (r->candidate != candidate) continue;
        if (!any) gw_page_table(page, "", headings, COUNT(headings));
        any = true;
        gw_page_cell(page, gw_format(page->arena, "zone %d, its worst element", r->zone));
        gw_page_quantity(page, GW_LENGTH, r->span, DOWN);
        gw_page_quantity(page, GW_LENGTH, r->at_width, NEAREST);
        gw_page_quantity(page, GW_LENGTH, r->width, DOWN);
        gw_page_quantity(page, GW_LENGTH, r->at_span, NEAREST);
        gw_page_quantity(page, GW_THICKNESS, r->spacing, DOWN);
        gw_page_quantity(page, GW_LENGTH, r->screw_width, NEAREST);
    }
}

static void check_table(struct page *page, const struct check_rows *rows)
{
    static const struct heading headings[] = {{.title = "Check"},
                                              {.title = "Verdict"},
                                              {.title = "Use", .right = true},
                                              {.title = "Required", .right = true},
                                              {.title = "Provided", .right = true},
                                              {.title = "Evidence"},
                                              {.title = "Pass", .right = true},
                                              {.title = "Fail", .right = true},
                                              {.title = "N. sh.", .right = true},
                                              {.title = "Why"}};
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0; i < rows->n; i++)
        if (!gw_is_not_built(rows->items[i].governing->message)) check_cells(page, &rows->items[i]);
    not_built(page, rows);
    weak_figures(page, rows);
}

/* A finding of an element, with the place of its group in reading order. */
struct trouble {
    const struct gw_finding *finding;
    size_t check, wall, index;
};

static int compare_sizes(size_t a, size_t b) { return (a > b) - (a < b); }

static int compare_texts(const char *a, const char *b) { return a == b ? 0 : strcmp(a ? a : "", b ? b : ""); }

static int compare_places(const struct gw_element *a, const struct gw_element *b)
{
    if (!a || !b) return (a != NULL) - (b != NULL);
    if (a->kind != b->kind) return a->kind < b->kind ? -1 : 1;
    if (a->zone != b->zone) return a->zone < b->zone ? -1 : 1;
    return (int)a->parapet - (int)b->parapet;
}

/* What is alike in all of these reads as one line. */
static int compare_troubles(const struct trouble *a, const struct trouble *b)
{
    const struct gw_finding *x = a->finding, *y = b->finding;
    int order = compare_sizes(a->check, b->check);
    if (!order) order = compare_sizes(a->wall, b->wall);
    if (!order) order = compare_places(x->demand->element, y->demand->element);
    if (!order) order = compare_texts(x->direction, y->direction);
    if (!order) order = (x->verdict > y->verdict) - (x->verdict < y->verdict);
    if (!order && !x->demand->element) order = compare_texts(x->demand->where, y->demand->where);
    return order ? order : compare_texts(x->message, y->message);
}

static int by_reading(const void *left, const void *right)
{
    const struct trouble *a = left, *b = right;
    int order = compare_troubles(a, b);
    return order ? order : compare_sizes(a->index, b->index);
}

struct span {
    long count;
    double bottom, top;
    const struct gw_finding *worst;
};

static void take(struct span *span, const struct gw_finding *f)
{
    const struct gw_element *e = f->demand->element;
    if (!span->worst || worse(f, span->worst)) span->worst = f;
    if (!e) return;
    if (!span->count || e->bottom < span->bottom) span->bottom = e->bottom;
    if (!span->count || e->top > span->top) span->top = e->top;
    span->count += e->count;
}

/* "63.6 / 50 psf" */
static const char *limits_text(struct page *page, const struct gw_finding *f)
{
    const char *needs = limit_text(page, f, f->required, true), *has = limit_text(page, f, f->provided, false);
    const char *unit = gw_dim_info(f->dim)->shown[page->shown];
    size_t number = strlen(needs) - (*needs && *unit ? strlen(unit) + 1 : 0);
    return *has ? gw_format(page->arena, "%.*s / %s", (int)number, needs, has) : needs;
}

static void trouble_cells(struct page *page, const struct span *span)
{
    const struct gw_finding *f = span->worst;
    const struct gw_element *e = f->demand->element;
    const char *end = span->count == 1 ? "" : "s";
    gw_page_cell(page, e ? gw_format(page->arena, "%s: %s%s, zone %d%s", e->wall, gw_kind_names[e->kind], end, e->zone,
                                     e->parapet ? ", parapet" : "")
                         : f->demand->where);
    if (e) gw_page_cell(page, gw_height_band(page, span->bottom, span->top));
    else gw_page_cell(page, "");
    if (e) gw_page_count(page, span->count);
    else gw_page_cell(page, "");
    gw_page_cell(page, f->direction && *f->direction
                           ? gw_format(page->arena, "%s, %s", check_name(f->demand), f->direction)
                           : check_name(f->demand));
    gw_report_toned(page->report, gw_verdict_tone(f->verdict), gw_verdict_name(f->verdict));
    gw_page_utilization(page, f->utilisation);
    gw_page_cell(page, limits_text(page, f));
    gw_page_cell(page, f->message);
}

static void trouble_table(struct page *page, struct trouble *items, size_t n)
{
    static const struct heading headings[] = {{.title = "Where"},
                                              {"From - to", true, GW_LENGTH},
                                              {.title = "Elements", .right = true},
                                              {.title = "Check"},
                                              {.title = "Verdict"},
                                              {.title = "Use", .right = true},
                                              {.title = "Needs / has", .right = true},
                                              {.title = "Why"}};
    if (!n) return;
    qsort(items, n, sizeof *items, by_reading);
    gw_report_heading(page->report, 3, "What fails or is not shown");
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0; i < n;) {
        struct span span = {0};
        size_t next = i;
        for (; next < n && compare_troubles(&items[i], &items[next]) == 0; next++) take(&span, items[next].finding);
        trouble_cells(page, &span);
        i = next;
    }
}

/* Rank of every element's wall, by the element's place in the take-off. */
static size_t *wall_ranks(struct page *page)
{
    const struct gw_takeoff *t = page->results->takeoff;
    const struct ordered *ordered = gw_order_elements(page->arena, t);
    size_t *ranks = gw_alloc(page->arena, t->elements.n + 1, sizeof *ranks);
    for (size_t i = 0; i < t->elements.n; i++) ranks[ordered[i].index] = ordered[i].wall;
    return ranks;
}

static const char *headline(struct page *page, const struct gw_summary *s)
{
    return gw_format(page->arena, "%s: %s (%ld pass, %ld fail, %ld not shown, %ld not required)", s->candidate->name,
                     upper_verdict(s->verdict), s->counts[GW_PASS], s->counts[GW_FAIL], s->counts[GW_NOT_SHOWN],
                     s->counts[GW_NOT_REQUIRED]);
}

static void edge_only(struct page *page, const struct trouble *troubles, size_t n)
{
    size_t failed = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = troubles[i].finding->demand->element;
        if (troubles[i].finding->verdict != GW_FAIL) continue;
        if (!e || e->zone != 5) return;
        failed++;
    }
    if (failed) gw_report_line(page->report, "It fails in the edge strips (zone 5) only.");
}

/* Findings stand by candidate; `*at` moves past this one's. */
static void candidate(struct page *page, const struct gw_summary *s, const size_t *ranks, size_t *at)
{
    const struct gw_judgement *j = page->results->judgement;
    const struct gw_element *first = page->results->takeoff->elements.items;
    struct check_rows rows = {0};
    size_t begin = *at, n = 0;
    while (*at < j->findings.n && j->findings.items[*at].candidate == s->candidate) ++*at;
    struct trouble *troubles = gw_alloc(page->arena, *at - begin + 1, sizeof *troubles);
    for (size_t i = begin; i < *at; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        struct check_row *row = row_of(page, &rows, f);
        row->counts[f->verdict]++;
        if (worse(f, row->governing)) row->governing = f;
        bool trouble = (f->verdict == GW_FAIL || f->verdict == GW_NOT_SHOWN) && !gw_is_not_built(f->message);
        size_t wall = f->demand->element ? ranks[f->demand->element - first] : 0;
        if (trouble) troubles[n++] = (struct trouble){f, rows.last, wall, i};
    }
    gw_report_heading(page->report, 2, headline(page, s));
    edge_only(page, troubles, n);
    check_table(page, &rows);
    reach(page, s->candidate);
    trouble_table(page, troubles, n);
}

static void summary_cells(struct page *page, const struct gw_summary *s)
{
    const struct gw_finding *f = s->governing;
    gw_page_cell(page, s->candidate->name);
    gw_report_toned(page->report, gw_verdict_tone(s->verdict), upper_verdict(s->verdict));
    gw_page_count(page, s->counts[GW_PASS]);
    gw_page_count(page, s->counts[GW_FAIL]);
    gw_page_count(page, s->counts[GW_NOT_SHOWN]);
    gw_page_cell(page, f ? check_name(f->demand) : "");
    gw_page_cell(page, f ? f->demand->where : "");
    gw_page_utilization(page, f ? f->utilisation : GW_ABSENT);
}

static void summary_table(struct page *page)
{
    static const struct heading headings[] = {{.title = "Candidate"},
                                              {.title = "Verdict"},
                                              {.title = "Pass", .right = true},
                                              {.title = "Fail", .right = true},
                                              {.title = "Not shown", .right = true},
                                              {.title = "Governing check"},
                                              {.title = "at"},
                                              {.title = "Use", .right = true}};
    const struct gw_judgement *j = page->results->judgement;
    if (!j->summaries.n) {
        gw_report_line(page->report,
                       "No candidates are listed: nothing is shown. Add 'candidates: [a system file]' to the project.");
        return;
    }
    gw_page_table(page, "Use is required over provided: up to 1.00 passes. Not shown is never a pass.", headings,
                  COUNT(headings));
    for (size_t i = 0; i < j->summaries.n; i++) summary_cells(page, &j->summaries.items[i]);
}

void gw_report_check(struct gw_report *report, const struct gw_results *results)
{
    struct page page = gw_page_of(report, results);
    struct gw_used rows = {.words = {0}};
    size_t at = 0;
    gw_page_head(&page, "Candidates");
    summary_table(&page);
    const size_t *ranks = wall_ranks(&page);
    for (size_t i = 0; i < results->judgement->summaries.n; i++)
        candidate(&page, &results->judgement->summaries.items[i], ranks, &at);
    gw_page_rows(&rows, &page, true);
    gw_page_foot(&page, &rows);
}
