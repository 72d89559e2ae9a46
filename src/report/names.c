/* The names of the elements, for 'explain': alike ones of a wall in a row, by the one that outward asks most. */
#include "base/fields.h"
#include "report/demand.h"
#include "report/results.h"
#include "report/view.h"

#include <string.h>

/* Elements of a wall, a kind, a mark and a zone. */
struct name_row {
    const struct gw_element *worst;
    long count;
    size_t groups;
    double bottom, top; /* of pieces with a height of their own, that */
};

static struct name_row row_of(const struct gw_element *e)
{
    const bool own = e->kind != GW_SCREW && gw_given(e->elevation);
    return (struct name_row){e, e->count, 1, own ? e->elevation : e->bottom, own ? e->elevation : e->top};
}

static bool like_names(const void *left, const void *right)
{
    const struct gw_element *a = ((const struct name_row *)left)->worst, *b = ((const struct name_row *)right)->worst;
    return a->kind == b->kind && a->zone == b->zone && a->parapet == b->parapet &&
           a->place_unknown == b->place_unknown && strcmp(a->mark, b->mark) == 0 && strcmp(a->columns, b->columns) == 0;
}

static void take_name(void *into, const void *row, bool first)
{
    struct name_row *all = into;
    const struct name_row *one = row;
    if (first) return;
    all->count += one->count;
    all->groups += one->groups;
    all->bottom = fmin(all->bottom, one->bottom);
    all->top = fmax(all->top, one->top);
    if (one->worst->outward.pa < all->worst->outward.pa) all->worst = one->worst;
}

/* "vision", "mullion, jamb", of an opening's lite its mark and its lite type. */
static bool part(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_element *e = ((const struct name_row *)thing)->worst;
    (void)shown;
    gw_text_addf(out, "%s, %s", gw_kind_names[e->kind], e->mark);
    if (e->lite && strcmp(e->lite, e->mark) != 0) gw_text_addf(out, ", %s", e->lite);
    if (e->parapet) gw_text_add(out, ", parapet");
    if (e->place_unknown) gw_text_add(out, ", place unknown");
    return true;
}

static bool heights(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct name_row *row = thing;
    gw_add_heights(out, shown, row->bottom, row->top);
    return true;
}

static bool groups(struct gw_text *out, const void *thing, enum gw_units shown)
{
    (void)shown;
    gw_text_addf(out, "%zu", ((const struct name_row *)thing)->groups);
    return true;
}

static const struct gw_field NAME[] = {
    {.key = "part", .type = GW_T_SAID, .say = part},
    {.key = "heights", .type = GW_T_SAID, .say = heights},
    {.key = "groups", .type = GW_T_SAID, .say = groups},
    F(name_row, count, GW_T_COUNT),
    F(name_row, worst, GW_T_RECORD, .record = &gw_element_record, .flags = GW_FLAT),
};
static const struct gw_record NAME_RECORD = RECORD("row", name_row, NAME, .help = "like elements of a wall");

#define COLUMNS_AFTER(name_)                                                                                           \
    COLUMN(name_, "id"), COLUMN("Part", "part"), COLUMN("Zone", "zone"), COLUMN("Count", "count"),                     \
        COLUMN("From - to", "heights", .dim = GW_LENGTH, .right = true)
static const struct view_column MERGED_COLUMNS[] = {
    COLUMNS_AFTER("Worst element"), COLUMN("Elements", "groups", .right = true), COLUMN("Columns", "columns")};
static const struct view_column EACH_COLUMNS[] = {COLUMNS_AFTER("Element"), COLUMN("Columns", "columns")};
static const struct view MERGED = VIEW(&NAME_RECORD, MERGED_COLUMNS, .same = like_names, .merge = take_name),
                         EACH = VIEW(&NAME_RECORD, EACH_COLUMNS);

static void names_page(struct gw_report *report, const struct gw_result *result)
{
    struct page page = gw_page_of(report, result->value);
    const struct gw_takeoff *t = page.results->answer->takeoff;
    const struct ordered *items = gw_order_elements(page.arena, t);
    struct name_row *rows = gw_alloc(page.arena, t->elements.n + 1, sizeof *rows);
    const bool all = page.results->all;
    gw_report_line(report, all ? "Give one of these to 'explain'."
                               : "Give one of these to 'explain'; of each row the element that suction asks most of, "
                                 "--all lists every one.");
    for (size_t i = 0, next; i < t->elements.n; i = next) {
        const struct gw_element *e = items[i].element;
        for (next = i; next < t->elements.n && items[next].wall == items[i].wall; next++)
            rows[next] = row_of(items[next].element);
        gw_report_heading(report, 3, gw_format(page.arena, "Wall %s", e->wall));
        gw_view_list(&page, "", all ? &EACH : &MERGED, rows + i, next - i);
    }
}

struct gw_result gw_result_elements(const struct gw_results *results)
{
    struct gw_result result = gw_result_demand(results);
    result.page = names_page;
    return result;
}
