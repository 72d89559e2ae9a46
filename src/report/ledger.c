#include "report/ledger.h"

#include "base/fields.h"
#include "base/tolerance.h"

#include <stdlib.h>
#include <string.h>

/* Screws stand along the whole of their run. */
static bool has_own_height(const struct gw_element *e) { return e->kind != GW_SCREW && gw_given(e->elevation); }

struct ledger_row gw_ledger_row(struct page *page, const struct gw_element *e, const char *part)
{
    const bool own = has_own_height(e);
    const int story = e->grid->opening ? 0 : e->grid->layers[e->sort].strips[e->strip].story;
    struct ledger_row row = {.element = e,
                             .part = part,
                             .bottom = own ? e->elevation : e->bottom,
                             .top = own ? e->elevation : e->top,
                             .area = GW_ABSENT,
                             .story = story,
                             .to_story = story,
                             .groups = 1,
                             .dim = GW_PRESSURE,
                             .decimals = gw_dim_info(GW_PRESSURE)->decimals[page->shown]};
    for (int i = 0; i < LEDGER_ZONES; i++)
        row.zones[i] = (struct ledger_zone){0, GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT, NULL, NULL};
    row.zones[e->zone == 5] = (struct ledger_zone){.count = e->count,
                                                   .inward = e->inward.pa,
                                                   .outward = fabs(e->outward.pa),
                                                   .inward_asd = e->inward_asd.pa,
                                                   .outward_asd = fabs(e->outward_asd.pa),
                                                   .governs = e->governs,
                                                   .worst = e};
    return row;
}

/* Reading order -------------------------------------------------------------------------------------------------- */

static int compare_parts(const struct ledger_row *a, const struct ledger_row *b)
{
    const struct gw_element *x = a->element, *y = b->element;
    if (x->kind != y->kind) return x->kind < y->kind ? -1 : 1;
    if (x->parapet != y->parapet) return x->parapet ? 1 : -1;
    return strcmp(a->part, b->part);
}

static int compare_heights(double a, double b) { return (a > b + GW_HAIR_M) - (b > a + GW_HAIR_M); }

static int compare_places(const struct ledger_row *a, const struct ledger_row *b)
{
    int order = compare_parts(a, b);
    if (!order) order = compare_heights(a->bottom, b->bottom);
    return order ? order : compare_heights(a->top, b->top);
}

static int by_place(const void *left, const void *right)
{
    const struct ledger_row *a = left, *b = right;
    const int order = compare_places(a, b);
    return order ? order : (a->element->index > b->element->index) - (a->element->index < b->element->index);
}

/* Merging -------------------------------------------------------------------------------------------------------- */

/* fmax leaves out what is absent. */
static void take_zone(struct ledger_zone *into, const struct ledger_zone *zone)
{
    const bool leads = zone->worst && (!into->worst || zone->outward > into->outward);
    into->count += zone->count;
    if (leads) into->governs = zone->governs;
    if (leads) into->worst = zone->worst;
    into->inward = fmax(into->inward, zone->inward);
    into->outward = fmax(into->outward, zone->outward);
    into->inward_asd = fmax(into->inward_asd, zone->inward_asd);
    into->outward_asd = fmax(into->outward_asd, zone->outward_asd);
}

static void take_row(struct ledger_row *into, const struct ledger_row *row)
{
    into->bottom = fmin(into->bottom, row->bottom);
    into->top = fmax(into->top, row->top);
    into->area = fmax(into->area, row->area);
    if (row->to_story > into->to_story) into->to_story = row->to_story;
    if (row->story && (!into->story || row->story < into->story)) into->story = row->story;
    into->groups += row->groups;
    for (int i = 0; i < LEDGER_ZONES; i++) take_zone(&into->zones[i], &row->zones[i]);
}

/* Rows of one place become one. */
static size_t take_places_together(struct ledger_row *rows, size_t n)
{
    size_t kept = 0;
    for (size_t i = 0; i < n; i++)
        if (kept && compare_places(&rows[kept - 1], &rows[i]) == 0) take_row(&rows[kept - 1], &rows[i]);
        else rows[kept++] = rows[i];
    return kept;
}

/* How finely rows are told apart. */
struct grain {
    enum gw_units shown;
    double share; /* 0: as printed */
};

static bool close(const struct grain *grain, enum gw_dim dim, int decimals, double a, double b)
{
    if (!gw_given(a) || !gw_given(b)) return gw_given(a) == gw_given(b);
    const double x = gw_printed(dim, grain->shown, a, decimals, UP), y = gw_printed(dim, grain->shown, b, decimals, UP);
    return fabs(x - y) <= fmax(grain->share, GW_HAIR) * fmax(fabs(x), fabs(y));
}

/* Where figures are not told apart as printed only whether there is an area. */
static bool same_area(const struct grain *grain, double a, double b)
{
    const int decimals = gw_dim_info(GW_AREA)->decimals[grain->shown];
    return (a > 0) == (b > 0) && (grain->share > 0 || close(grain, GW_AREA, decimals, a, b));
}

/* The row against the lowest of the run, so that many small steps do not add up. Where figures are told apart as they
 * are printed, rows with a zone and without it are not alike. */
static bool goes_on(const struct grain *grain, const struct ledger_row *run, const struct ledger_row *row)
{
    for (int i = 0; i < LEDGER_ZONES; i++) {
        const struct ledger_zone *x = &run->first[i], *y = &row->zones[i];
        const double pairs[][2] = {{x->inward, y->inward},
                                   {x->outward, y->outward},
                                   {x->inward_asd, y->inward_asd},
                                   {x->outward_asd, y->outward_asd}};
        if (!x->worst != !y->worst && !(grain->share > 0)) return false;
        if (!x->worst || !y->worst) continue;
        for (size_t k = 0; k < COUNT(pairs); k++)
            if (!close(grain, run->dim, run->decimals, pairs[k][0], pairs[k][1])) return false;
    }
    return same_area(grain, run->area, row->area);
}

/* Of the runs so far the one that a row goes on with: the last, or one that ends in this story or the one below, where
 * rows of a story take turns. */
static struct ledger_row *run_for(struct ledger_row *runs, size_t n, const struct ledger_row *row,
                                  const struct grain *grain)
{
    for (size_t i = n; i-- > 0;) {
        const bool next = i + 1 == n || row->story - runs[i].to_story <= 1;
        if (next && goes_on(grain, &runs[i], row)) return &runs[i];
    }
    return NULL;
}

static size_t runs_of(struct ledger_row *runs, const struct ledger_row *rows, size_t n, const struct grain *grain)
{
    size_t count = 0;
    for (size_t i = 0; i < n; i++) {
        struct ledger_row *run = run_for(runs, count, &rows[i], grain);
        if (run) take_row(run, &rows[i]);
        else runs[count++] = rows[i];
        if (!run) run = &runs[count - 1];
        for (int k = 0; k < LEDGER_ZONES; k++)
            if (!run->first[k].worst) run->first[k] = rows[i].zones[k];
    }
    return count;
}

/* The rows of one part on one side of the roof line. */
static size_t merge_part(struct ledger_row *runs, const struct ledger_row *rows, size_t n, enum gw_units shown,
                         const struct ledger_rule *rule)
{
    const double finest = 0.02, factor = 1.5, all = 1;
    struct grain grain = {shown, rule->share};
    size_t count = runs_of(runs, rows, n, &grain);
    while (rule->most && count > rule->most && grain.share < all) {
        grain.share = fmax(finest, factor * grain.share);
        count = runs_of(runs, rows, n, &grain);
    }
    return count;
}

size_t gw_ledger_merge(struct page *page, struct ledger_row *rows, size_t n, const struct ledger_rule *rule)
{
    size_t kept = 0;
    if (!n) return 0;
    qsort(rows, n, sizeof *rows, by_place);
    n = take_places_together(rows, n);
    struct ledger_row *runs = gw_alloc(page->arena, n, sizeof *runs);
    for (size_t i = 0, next; i < n; i = next) {
        for (next = i + 1; next < n && compare_parts(&rows[i], &rows[next]) == 0;) next++;
        kept += merge_part(runs + kept, rows + i, next - i, page->shown, rule);
    }
    memcpy(rows, runs, kept * sizeof *rows);
    return kept;
}

/* As it is written ------------------------------------------------------------------------------------------------ */

static bool heights(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct ledger_row *row = thing;
    gw_add_heights(out, shown, row->bottom, row->top);
    return true;
}

static bool floors(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct ledger_row *row = thing;
    (void)shown;
    if (row->story) gw_text_addf(out, "%d", row->story);
    if (row->to_story > row->story) gw_text_addf(out, " to %d", row->to_story);
    return true;
}

static bool count_in(struct gw_text *out, const struct ledger_row *row, int zone)
{
    if (row->zones[zone].worst) gw_text_addf(out, "%ld", row->zones[zone].count);
    else gw_text_add(out, "none");
    return true;
}

/* "51.0 / 30.6", rounded up; nothing where absent. */
static bool pair(struct gw_text *out, const struct ledger_row *row, enum gw_units shown, double strength, double asd)
{
    if (!gw_given(strength)) return false;
    gw_text_fixed(out, gw_printed(row->dim, shown, strength, row->decimals, UP), row->decimals);
    gw_text_add(out, " / ");
    gw_text_fixed(out, gw_printed(row->dim, shown, asd, row->decimals, UP), row->decimals);
    return true;
}

/* The same of each zone, as keys of a record. */
#define IN_ZONE(zone_, at_)                                                                                            \
    static bool count_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                             \
    {                                                                                                                  \
        (void)shown;                                                                                                   \
        return count_in(out, thing, at_);                                                                              \
    }                                                                                                                  \
    static bool inward_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                            \
    {                                                                                                                  \
        const struct ledger_row *row = thing;                                                                          \
        return pair(out, row, shown, row->zones[at_].inward, row->zones[at_].inward_asd);                              \
    }                                                                                                                  \
    static bool outward_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                           \
    {                                                                                                                  \
        const struct ledger_row *row = thing;                                                                          \
        return pair(out, row, shown, row->zones[at_].outward, row->zones[at_].outward_asd);                            \
    }
IN_ZONE(4, 0)
IN_ZONE(5, 1)

/* Where the zones differ, each says its own. */
static bool governs(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct ledger_row *row = thing;
    const char *four = row->zones[0].governs, *five = row->zones[1].governs;
    (void)shown;
    if (!four || !five || strcmp(four, five) == 0) gw_text_add(out, four ? four : five ? five : "");
    else gw_text_addf(out, "%s; %s", four, five);
    return true;
}

#define SAID(key_)                                                                                                     \
    {                                                                                                                  \
        .key = #key_, .type = GW_T_SAID, .say = key_                                                                   \
    }
static const struct gw_field LEDGER[] = {
    F(ledger_row, part, GW_T_TEXT),
    SAID(heights),
    SAID(floors),
    NUM(ledger_row, area, GW_AREA),
    SAID(count_4),
    SAID(inward_4),
    SAID(outward_4),
    SAID(count_5),
    SAID(inward_5),
    SAID(outward_5),
    SAID(governs),
};
const struct gw_record gw_ledger_record = RECORD("row", ledger_row, LEDGER, .help = "like elements of a wall");

double gw_ledger_badness(const void *thing)
{
    const struct ledger_row *row = thing;
    double most = 0;
    for (int i = 0; i < LEDGER_ZONES; i++) /* leaves out what is absent */
        most = fmax(most, fmax(row->zones[i].inward, row->zones[i].outward));
    return most;
}
