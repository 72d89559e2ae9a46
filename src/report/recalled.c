/* What the figures rest on that nobody here saw in its source: a line where it matters, the whole list where it is
 * asked for. */
#include "report/page.h"

#include <stdint.h>
#include <string.h>

static const struct gw_row *row_at(const struct page *page, unsigned index)
{
    return gw_table_row_at(page->results->answer->model->tables, index);
}

/* The ids of the recalled rows of the table of the one at `index`; they leave `rest`. */
static const char *recalled_ids(struct page *page, struct gw_used *rest, unsigned index)
{
    const char *table = row_at(page, index)->table;
    struct gw_text ids;
    gw_text_init(&ids, page->arena);
    for (unsigned i = index; gw_used_next(rest, &i); i++) {
        const struct gw_row *row = row_at(page, i);
        if (row->basis != GW_MEMORY || strcmp(row->table, table) != 0) continue;
        gw_text_addf(&ids, "%s%s", ids.length ? ", " : "", row->id);
        gw_used_remove(rest, row);
    }
    return ids.at;
}

/* "Width of the edge strip at building corners (wind_strip: high)": what a row is about is its table's title. `tables`
 * counts them; those after `most` are not written. */
static const char *recalled(struct page *page, const struct gw_used *used, size_t most, size_t *tables)
{
    struct gw_used rest = *used;
    struct gw_text text;
    gw_text_init(&text, page->arena);
    *tables = 0;
    for (unsigned i = 0; gw_used_next(&rest, &i); i++) {
        const struct gw_row *row = row_at(page, i);
        if (row->basis != GW_MEMORY) continue;
        const char *ids = recalled_ids(page, &rest, i);
        if (++*tables <= most)
            gw_text_addf(&text, "%s%s (%s: %s)", text.length ? "; " : "", gw_table_find(row->table)->title, row->table,
                         ids);
    }
    return text.length ? text.at : "";
}

const char *gw_recalled_words(struct page *page, const struct gw_used *used)
{
    size_t tables;
    return used ? recalled(page, used, SIZE_MAX, &tables) : "";
}

void gw_page_recalled(struct page *page, const char *lead, const struct resting *figures, size_t n)
{
    const char **rows = gw_alloc(page->arena, n + 1, sizeof *rows);
    for (size_t i = 0; i < n; i++) rows[i] = gw_recalled_words(page, figures[i].used);
    for (size_t i = 0; i < n; i++) {
        if (!*rows[i]) continue;
        const char *shared = rows[i];
        struct gw_text names;
        gw_text_init(&names, page->arena);
        for (size_t k = i; k < n; k++) {
            if (strcmp(rows[k], shared) != 0) continue;
            gw_text_addf(&names, "%s%s", names.length ? ", " : "", figures[k].name);
            rows[k] = "";
        }
        gw_report_item(page->report, gw_format(page->arena, "%s %s: %s", lead, names.at, shared));
    }
}

static bool rests_on_recalled(const struct page *page, const struct gw_used *used)
{
    for (unsigned i = 0; used && gw_used_next(used, &i); i++)
        if (row_at(page, i)->basis == GW_MEMORY) return true;
    return false;
}

void gw_page_recalled_first(struct page *page, const struct resting *figures, size_t n)
{
    enum { NAMED = 3 };
    struct gw_used all = {{0}};
    struct gw_text names;
    size_t who = 0, tables;
    gw_text_init(&names, page->arena);
    for (size_t i = 0; i < n; i++) {
        if (!rests_on_recalled(page, figures[i].used)) continue;
        gw_text_addf(&names, "%s%s", who++ ? ", " : "", figures[i].name);
        gw_used_merge(&all, figures[i].used);
    }
    if (!who) return;
    const char *whom = who > NAMED ? gw_format(page->arena, "%zu candidates", who) : names.at;
    const char *what = recalled(page, &all, 1, &tables);
    const char *more = tables > 1 ? gw_format(page->arena, "; %zu more", tables - 1) : "";
    const char *next = page->results->sources ? "--sensitivity tells whether they matter"
                                              : "--sources tells all, --sensitivity whether they matter";
    gw_report_item(page->report,
                   gw_format(page->arena,
                             "What governs %s rests on recalled numbers, not seen in their source: %s%s. %s.", whom,
                             what, more, next));
}

static bool alike(const struct gw_row *a, const struct gw_row *b)
{
    return strcmp(a->table, b->table) == 0 && a->basis == b->basis && strcmp(a->source, b->source) == 0;
}

/* The ids of the rows from `index` on that share table, basis and source with its row; they leave `rest`. */
static const char *ids_alike(struct page *page, struct gw_used *rest, unsigned index)
{
    const struct gw_tables *tables = page->results->answer->model->tables;
    const struct gw_row *first = gw_table_row_at(tables, index);
    struct gw_text ids;
    gw_text_init(&ids, page->arena);
    for (unsigned i = index; gw_used_next(rest, &i); i++) {
        const struct gw_row *row = gw_table_row_at(tables, i);
        if (!alike(row, first)) continue;
        gw_text_addf(&ids, "%s%s", ids.length ? ", " : "", row->id);
        gw_used_remove(rest, row);
    }
    return ids.at;
}

/* The rows of one basis, what they are about, with their sources. */
static void rows_of(struct page *page, const struct gw_used *rows, enum gw_basis basis)
{
    struct gw_used rest = *rows;
    for (unsigned i = 0; gw_used_next(&rest, &i); i++) {
        const struct gw_row *row = gw_table_row_at(page->results->answer->model->tables, i);
        if (row->basis != basis) continue;
        gw_report_item(page->report,
                       gw_format(page->arena, "%s: %s: %s / %s (%s)", gw_basis_words(row->basis),
                                 gw_table_find(row->table)->title, row->table, ids_alike(page, &rest, i), row->source));
    }
}

static size_t count_of(struct page *page, const struct gw_used *rows, enum gw_basis basis)
{
    size_t n = 0;
    for (unsigned i = 0; gw_used_next(rows, &i); i++)
        n += gw_table_row_at(page->results->answer->model->tables, i)->basis == basis;
    return n;
}

void gw_page_sources(struct page *page, const struct gw_used *rows)
{
    static const enum gw_basis bases[] = {GW_MEMORY, GW_PRACTICE, GW_SECOND_HAND};
    const size_t n = count_of(page, rows, GW_MEMORY);
    gw_report_section(page->report, GW_PART_SOURCES, "Sources");
    gw_report_line(page->report,
                   n                        ? gw_format(page->arena,
                                                        "%zu row%s of the tables behind these figures %s recalled, not seen in %s source%s.",
                                                        n, n == 1 ? "" : "s", n == 1 ? "is" : "are", n == 1 ? "its" : "their",
                                 page->results->sources ? "" : "; --sources lists them")
                   : page->results->sources ? "No row of the tables behind these figures is recalled."
                                            : "No row of the tables behind these figures is recalled; --sources "
                                              "lists those that are common practice or second-hand.");
    for (size_t i = 0; page->results->sources && i < sizeof bases / sizeof *bases; i++) rows_of(page, rows, bases[i]);
}
