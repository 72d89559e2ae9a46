#include "report/view.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_ROWS = 40, MOST_WORST = 25 }; /* of a table on a sheet; of one with more of them */

/* The field of that key and, by `*row`, the struct that it belongs to. */
static const struct gw_field *find_field(const struct gw_record *record, const char *key, const void **row)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *inner = *row;
        if (field->key && strcmp(field->key, key) == 0) return field;
        if (!(field->flags & GW_FLAT)) continue;
        inner = gw_field_struct(field, gw_field_at(field, inner));
        const struct gw_field *found = find_field(field->record, key, &inner);
        if (found) *row = inner;
        if (found) return found;
    }
    return NULL;
}

static bool is_number(const struct gw_field *field)
{
    return field->type == GW_T_NUMBER || field->type == GW_T_INTEGER || field->type == GW_T_COUNT ||
           field->type == GW_T_FIGURE;
}

static enum gw_dim dim_of(const struct view_column *column, const struct gw_field *field)
{
    return column->dim ? column->dim : field->type == GW_T_NUMBER ? field->dim : GW_RATIO;
}

/* Whether it has figures that people design to; words at the right are such figures with their units. */
static bool rounds(const struct view *view)
{
    for (size_t i = 0; i < view->n; i++)
        if (view->columns[i].use || view->columns[i].rounding != NEAREST || view->columns[i].right) return true;
    return false;
}

static void open_table(struct page *page, const char *caption, const struct view *view)
{
    struct gw_report_column *columns = gw_alloc(page->arena, view->n, sizeof *columns);
    for (size_t i = 0; i < view->n; i++) {
        const struct view_column *column = &view->columns[i];
        const void *none = NULL;
        columns[i] = (struct gw_report_column){.title = column->heading, .right = column->right};
        if (!column->key) continue;
        const struct gw_field *field = find_field(view->record, column->key, &none);
        assert(field);
        const char *unit = gw_dim_info(dim_of(column, field))->shown[page->shown];
        if (*unit) columns[i].title = gw_format(page->arena, "%s %s", column->heading, unit);
        columns[i].right = column->right || is_number(field);
    }
    gw_report_table(page->report, caption, columns, view->n);
    page->report->blocks[page->report->n - 1].rounds = rounds(view);
}

static void add_number(struct gw_text *out, struct page *page, const struct view_column *column,
                       const struct gw_field *field, const void *at)
{
    if (!at) return; /* behind a pointer that leads nowhere */
    if (field->type == GW_T_INTEGER) gw_text_addf(out, "%d", *(const int *)at);
    else if (field->type == GW_T_COUNT) gw_text_addf(out, "%ld", *(const long *)at);
    else if (field->type == GW_T_FIGURE) gw_text_number(out, field->figure(at, page->shown), 6);
    else if (column->use) gw_add_utilization(out, *(const double *)at);
    else gw_add_bare(out, dim_of(column, field), page->shown, *(const double *)at, column->rounding);
}

static const char *cell_text(struct page *page, const struct view_column *column, const struct gw_field *field,
                             const void *at)
{
    struct gw_text text;
    if (!at || gw_field_is_absent(field, at)) return "";
    if (field->type == GW_T_YES_NO) return *(const bool *)at ? "yes" : "no";
    if (field->type == GW_T_BOOL) return *(const enum gw_bool *)at == GW_YES ? "yes" : "no";
    if (!is_number(field)) return gw_field_words(page->arena, field, at, page->shown);
    gw_text_init(&text, page->arena);
    add_number(&text, page, column, field, at);
    return text.length ? text.at : "";
}

static void put_row(struct page *page, const struct view *view, const void *row, size_t number)
{
    for (size_t i = 0; i < view->n; i++) {
        const struct view_column *column = &view->columns[i];
        const void *owner = row;
        if (!column->key) {
            gw_report_cell(page->report, gw_format(page->arena, "%zu", number));
            continue;
        }
        const struct gw_field *field = find_field(view->record, column->key, &owner);
        const void *at = gw_field_at(field, owner);
        enum gw_tone tone = column->tone && at ? column->tone(*(const int *)at) : GW_PLAIN;
        gw_report_toned(page->report, tone, cell_text(page, column, field, at));
    }
}

/* The merged row that `row` belongs to; rows that are alike mostly follow each other, so the last is tried first. */
static void *merged_of(const struct view *view, void *const *merged, size_t n, const void *row)
{
    for (size_t i = n; i-- > 0;)
        if (view->same(merged[i], row)) return merged[i];
    return NULL;
}

static size_t merge_rows(struct page *page, const struct view *view, const void *const *rows, size_t n, void **merged)
{
    size_t count = 0;
    for (size_t i = 0; i < n; i++) {
        void *into = merged_of(view, merged, count, rows[i]);
        bool first = !into;
        if (first) {
            into = merged[count++] = gw_alloc(page->arena, 1, view->record->size);
            memcpy(into, rows[i], view->record->size);
        }
        view->merge(into, rows[i], first);
    }
    return count;
}

/* What follows a table that was cut. */
static void say_rest(struct page *page, size_t n)
{
    gw_report_line(page->report, gw_format(page->arena, "The worst %d of %zu. And %zu more: %s; on this page: --all.",
                                           MOST_WORST, n, n - MOST_WORST, page->report->rest));
}

struct judged {
    double badness;
    size_t at;
};

static int worst_first(const void *left, const void *right)
{
    const struct judged *a = left, *b = right;
    const int order = (a->badness < b->badness) - (a->badness > b->badness);
    return order ? order : (a->at > b->at) - (a->at < b->at);
}

static int in_order(const void *left, const void *right)
{
    const struct judged *a = left, *b = right;
    return (a->at > b->at) - (a->at < b->at);
}

/* The worst, in the order in which they stood. */
static void put_worst(struct page *page, const struct view *view, const void *const *rows, size_t n)
{
    struct judged *all = gw_alloc(page->arena, n, sizeof *all);
    for (size_t i = 0; i < n; i++) all[i] = (struct judged){view->badness(rows[i]), i};
    qsort(all, n, sizeof *all, worst_first);
    qsort(all, MOST_WORST, sizeof *all, in_order);
    for (size_t i = 0; i < MOST_WORST; i++) put_row(page, view, rows[all[i].at], all[i].at + 1);
    say_rest(page, n);
}

/* The first, in the order in which they stand. */
static void put_first(struct page *page, const struct view *view, const void *const *rows, size_t n)
{
    for (size_t i = 0; i < MOST_WORST; i++) put_row(page, view, rows[i], i + 1);
    gw_report_line(page->report, gw_format(page->arena, "The first %d of %zu. And %zu more: %s; on this page: --all.",
                                           MOST_WORST, n, n - MOST_WORST, page->report->rest));
}

static void put_rows(struct page *page, const struct view *view, const void *const *rows, size_t n)
{
    if (page->report->rest && n > MOST_ROWS) {
        (view->badness ? put_worst : put_first)(page, view, rows, n);
        return;
    }
    for (size_t i = 0; i < n; i++) put_row(page, view, rows[i], i + 1);
}

void gw_view_table(struct page *page, const char *caption, const struct view *view, const void *const *rows, size_t n)
{
    if (!n) return;
    open_table(page, caption, view);
    if (!view->same) {
        put_rows(page, view, rows, n);
        return;
    }
    void **merged = gw_alloc(page->arena, n, sizeof(void *));
    const size_t count = merge_rows(page, view, rows, n, merged);
    put_rows(page, view, (const void *const *)merged, count);
}

const void *const *gw_view_rows(struct gw_arena *arena, const void *items, size_t n, size_t size)
{
    const void **rows = gw_alloc(arena, n + 1, sizeof(const void *));
    for (size_t i = 0; i < n; i++) rows[i] = (const char *)items + i * size;
    return rows;
}

void gw_view_list(struct page *page, const char *caption, const struct view *view, const void *items, size_t n)
{
    gw_view_table(page, caption, view, gw_view_rows(page->arena, items, n, view->record->size), n);
}

void gw_view_sheet(struct page *page, const struct view *view, const void *items, size_t n)
{
    if (n) gw_view_list(page, "", view, items, n);
    else open_table(page, "", view);
}
