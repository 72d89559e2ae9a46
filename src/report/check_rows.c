/* A candidate in full: a row a check with all its notes, and the groups that fail or are not shown. */
#include "base/fields.h"
#include "report/check.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <stdlib.h>
#include <string.h>

/* A row a check -------------------------------------------------------------------------------------------------- */

struct check_row {
    const struct gw_finding *governing;
    long counts[4];
};

#define COUNTED(key_, verdict_)                                                                                        \
    {                                                                                                                  \
        .key = key_, .type = GW_T_COUNT, .offset = offsetof(struct check_row, counts[verdict_])                        \
    }
static const struct gw_field CHECK_ROW[] = {
    F(check_row, governing, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_FLAT),
    COUNTED("pass", GW_PASS),
    COUNTED("fail", GW_FAIL),
    COUNTED("not_shown", GW_NOT_SHOWN),
};
static const struct gw_record CHECK_ROW_RECORD =
    RECORD("check", check_row, CHECK_ROW, .help = "one check of a candidate");

static const struct view_column CHECK_COLUMNS[] = {
    COLUMN("Check", "check_name"),
    COLUMN("Verdict", "verdict", .tone = gw_verdict_tone),
    COLUMN("Use", "use", .right = true),
    COLUMN("Required", "required", .right = true),
    COLUMN("Provided", "provided", .right = true),
    COLUMN("Evidence", "evidence"),
    COLUMN("Pass", "pass"),
    COLUMN("Fail", "fail"),
    COLUMN("Not shown", "not_shown"),
    COLUMN("Why", "message"),
};
static const struct view CHECKS = VIEW(&CHECK_ROW_RECORD, CHECK_COLUMNS);

struct check_rows {
    struct check_row *items;
    size_t n, capacity, last;
};

/* Findings of a check mostly follow each other, so the row of the one before is tried first. */
static struct check_row *row_of(struct page *page, struct check_rows *rows, const struct gw_finding *f)
{
    if (rows->n && gw_same_check(rows->items[rows->last].governing->demand, f->demand)) return &rows->items[rows->last];
    size_t i = 0;
    while (i < rows->n && !gw_same_check(rows->items[i].governing->demand, f->demand)) i++;
    if (i == rows->n) {
        rows->items = gw_grow(page->arena, rows->items, rows->n, &rows->capacity, sizeof *rows->items);
        rows->items[rows->n++] = (struct check_row){.governing = f};
    }
    rows->last = i;
    return &rows->items[i];
}

/* What fails or is not shown -------------------------------------------------------------------------------------- */

enum { TROUBLE_MARKS = 3 };

/* A finding that fails or is not shown, with the place of its group in reading order; merged, a line of them. */
struct trouble {
    const struct gw_finding *finding; /* of a line, the worst */
    size_t check, wall, index;
    const char *why; /* its message, as it is read */
    long count;      /* elements of a line, and their extent */
    double bottom, top;
    const char *marks[TROUBLE_MARKS]; /* of a line of openings: the first of its marks */
    size_t n_marks;
    const char *last_mark;
};

static int compare_sizes(size_t a, size_t b) { return (a > b) - (a < b); }

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
    if (!order) order = (int)x->direction - (int)y->direction;
    if (!order) order = gw_verdict_rank(x->verdict) - gw_verdict_rank(y->verdict);
    if (!order && !x->demand->element) order = strcmp(x->demand->where, y->demand->where);
    return order ? order : strcmp(a->why, b->why);
}

static const char *mark_of(const struct trouble *t)
{
    const struct gw_element *e = t->finding->demand->element;
    const char *mark = e ? gw_opening_mark(e) : NULL;
    return mark ? mark : "";
}

static int by_reading(const void *left, const void *right)
{
    const struct trouble *a = left, *b = right;
    int order = compare_troubles(a, b);
    if (!order) order = strcmp(mark_of(a), mark_of(b));
    return order ? order : compare_sizes(a->index, b->index);
}

static bool same_trouble(const void *a, const void *b) { return compare_troubles(a, b) == 0; }

/* Rows of one mark follow each other. */
static void take_mark(struct trouble *line, const char *mark)
{
    if (!*mark || (line->last_mark && strcmp(line->last_mark, mark) == 0)) return;
    line->last_mark = mark;
    if (line->n_marks < TROUBLE_MARKS) line->marks[line->n_marks] = mark;
    line->n_marks++;
}

static void take_trouble(void *into, const void *row, bool first)
{
    struct trouble *line = into;
    const struct trouble *trouble = row;
    const struct gw_element *e = trouble->finding->demand->element;
    take_mark(line, mark_of(trouble));
    if (!first && gw_graver(trouble->finding, line->finding)) line->finding = trouble->finding;
    if (!e) return;
    if (first || e->bottom < line->bottom) line->bottom = e->bottom;
    if (first || e->top > line->top) line->top = e->top;
    line->count += e->count;
}

/* " W1, W2, W4 and 3 more" */
static void add_marks(struct gw_text *out, const struct trouble *line)
{
    for (size_t i = 0; i < line->n_marks && i < TROUBLE_MARKS; i++)
        gw_text_addf(out, "%s %s", i ? "," : "", line->marks[i]);
    if (line->n_marks > TROUBLE_MARKS) gw_text_addf(out, " and %zu more", line->n_marks - TROUBLE_MARKS);
}

static bool where(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct trouble *line = thing;
    const struct gw_element *e = line->finding->demand->element;
    (void)shown;
    if (!e) {
        gw_text_add(out, line->finding->demand->where);
        return true;
    }
    gw_text_addf(out, "%s: %s%s", e->wall, gw_kind_names[e->kind], line->count == 1 ? "" : "s");
    add_marks(out, line);
    gw_text_addf(out, ", zone %d%s", e->zone, e->parapet ? ", parapet" : "");
    return true;
}

static bool extent(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct trouble *line = thing;
    if (line->finding->demand->element) gw_add_extent(out, shown, line->bottom, line->top);
    return line->finding->demand->element != NULL;
}

static bool how_many(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct trouble *line = thing;
    (void)shown;
    if (line->finding->demand->element) gw_text_addf(out, "%ld", line->count);
    return line->finding->demand->element != NULL;
}

static const struct gw_field TROUBLE[] = {
    {.key = "where", .type = GW_T_SAID, .say = where},
    {.key = "extent", .type = GW_T_SAID, .say = extent},
    {.key = "elements", .type = GW_T_SAID, .say = how_many},
    F(trouble, finding, GW_T_RECORD, .record = &gw_finding_record, .flags = GW_FLAT),
};
static const struct gw_record TROUBLE_RECORD = RECORD("trouble", trouble, TROUBLE, .help = "like findings");

static const struct view_column COLUMNS[] = {
    COLUMN("Where", "where"),
    COLUMN("From - to", "extent", .dim = GW_LENGTH, .right = true),
    COLUMN("Elements", "elements", .right = true),
    COLUMN("Check", "check_and_direction"),
    COLUMN("Verdict", "verdict", .tone = gw_verdict_tone),
    COLUMN("Use", "use", .right = true),
    COLUMN("Needs / has", "needs_and_has", .right = true),
    COLUMN("Why", "message"),
};
static const struct view TROUBLES = VIEW(&TROUBLE_RECORD, COLUMNS, .same = same_trouble, .merge = take_trouble);

/* Rank of every element's wall, by the element's place in the take-off. */
static void rank_walls(struct page *page, struct trouble *troubles, size_t n)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const struct ordered *ordered = gw_order_elements(page->arena, t);
    size_t *ranks = gw_alloc(page->arena, t->elements.n + 1, sizeof *ranks);
    for (size_t i = 0; i < t->elements.n; i++) ranks[ordered[i].index] = ordered[i].wall;
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = troubles[i].finding->demand->element;
        troubles[i].wall = e ? ranks[e - t->elements.items] : 0;
    }
}

static void put_troubles(struct page *page, struct trouble *troubles, size_t n)
{
    if (!n) return;
    rank_walls(page, troubles, n);
    for (size_t i = 0; i < n; i++)
        troubles[i].why = gw_message_text(page->arena, &troubles[i].finding->message, page->shown);
    qsort(troubles, n, sizeof *troubles, by_reading);
    gw_report_heading(page->report, 3, "What fails or is not shown, every row");
    gw_view_list(page, "", &TROUBLES, troubles, n);
    gw_page_how_found(page, troubles[0].finding->demand->element, "");
}

void gw_check_rows(struct page *page, const struct verdict_story *story)
{
    struct check_rows rows = {0};
    struct trouble *troubles = gw_alloc(page->arena, story->n + 1, sizeof *troubles);
    size_t n = 0;
    for (size_t i = 0; i < story->n; i++) {
        const struct gw_finding *f = &story->findings[i];
        struct check_row *row = row_of(page, &rows, f);
        row->counts[f->verdict]++;
        if (gw_graver(f, row->governing)) row->governing = f;
        if (gw_verdict_rank(f->verdict) > gw_verdict_rank(GW_PASS))
            troubles[n++] = (struct trouble){.finding = f, .check = rows.last, .index = i};
    }
    gw_report_heading(page->report, 3, "Every check");
    gw_view_list(page, "", &CHECKS, rows.items, rows.n);
    gw_page_how_found(page, NULL, "Provided by a test or a statement: as its report or the system's file gives it.");
    put_troubles(page, troubles, n);
}
