/* Given pressures that differ from the computed ones: each that is too low; what is higher in a sentence. */
#include "base/fields.h"
#include "base/tolerance.h"
#include "report/demand.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <stdlib.h>
#include <string.h>

/* Differences of one zone, size and direction: the worst of them, for all. */
struct difference_line {
    const struct gw_difference *worst;
    long count;
};

static bool percent(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_difference *d = ((const struct difference_line *)thing)->worst;
    const double hundred = 100;
    (void)shown;
    gw_text_fixed(out, hundred * d->excess, 0);
    gw_text_addf(out, " %%%s", d->excess < 0 ? ", too low" : "");
    return true;
}

static const struct gw_field DIFFERENCE_LINE[] = {
    F(difference_line, count, GW_T_COUNT),
    {.key = "percent", .type = GW_T_SAID, .say = percent},
    F(difference_line, worst, GW_T_RECORD, .record = &gw_difference_record, .flags = GW_FLAT),
};
static const struct gw_record DIFFERENCE_LINE_RECORD =
    RECORD("line", difference_line, DIFFERENCE_LINE, .help = "differences of one zone, size and direction");

static bool same_size(const void *left, const void *right)
{
    const struct gw_difference *a = ((const struct difference_line *)left)->worst,
                               *b = ((const struct difference_line *)right)->worst;
    return a->element->zone == b->element->zone && a->element->building == b->element->building &&
           strcmp(a->direction, b->direction) == 0 && strcmp(a->source, b->source) == 0 &&
           fabs(a->element->effective_area - b->element->effective_area) <= GW_HAIR * a->element->effective_area;
}

static void take_difference(void *into, const void *row, bool first)
{
    struct difference_line *line = into;
    if (!first) line->count += ((const struct difference_line *)row)->count;
}

static int by_excess(const void *left, const void *right)
{
    const struct gw_difference *a = ((const struct difference_line *)left)->worst,
                               *b = ((const struct difference_line *)right)->worst;
    const int order = (a->excess > b->excess) - (a->excess < b->excess);
    return order ? order : (a > b) - (a < b);
}

static const struct view_column COLUMNS[] = {COLUMN("Worst element", "element"),
                                             COLUMN("Count", "count"),
                                             COLUMN("Zone", "zone"),
                                             COLUMN("Area", "effective_area"),
                                             COLUMN("Direction", "direction"),
                                             COLUMN("Computed", "computed", .rounding = UP),
                                             COLUMN("Given", "given"),
                                             COLUMN("Given is", "percent", .right = true),
                                             COLUMN("Source", "source")};
static const struct view DIFFERENCES =
    VIEW(&DIFFERENCE_LINE_RECORD, COLUMNS, .same = same_size, .merge = take_difference);

/* What is higher ----------------------------------------------------------------------------------------------------
 */

/* Of a zone of a building by one source. */
struct higher {
    const struct gw_building *building;
    int zone;
    const char *source;
    double least, most;
    long count;
    const struct gw_element *last; /* one that differs both ways is one element */
};

static void take_higher(struct higher *h, const struct gw_difference *d)
{
    h->least = h->last ? fmin(h->least, d->excess) : d->excess;
    h->most = h->last ? fmax(h->most, d->excess) : d->excess;
    if (h->last != d->element) h->count += d->element->count;
    h->last = d->element;
}

static void say_higher(struct page *page, const struct higher *h)
{
    struct gw_text range;
    const double hundred = 100, least = round(hundred * h->least), most = round(hundred * h->most);
    gw_text_init(&range, page->arena);
    gw_text_fixed(&range, least, 0);
    if (most > least) gw_text_add(&range, " to ");
    if (most > least) gw_text_fixed(&range, most, 0);
    gw_report_item(page->report,
                   gw_format(page->arena, "Building %s, zone %d: given %s is %s %% above computed, %ld element%s%s",
                             h->building ? h->building->name : "not known", h->zone, h->source, range.at, h->count,
                             h->count == 1 ? "" : "s", page->results->all ? "" : " (--all lists them)"));
}

static void higher(struct page *page, const struct gw_takeoff *t)
{
    struct higher *all = gw_alloc(page->arena, t->differences.n, sizeof *all);
    size_t n = 0;
    for (size_t i = 0; i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        const struct gw_element *e = d->element;
        size_t k = 0;
        if (d->excess < 0) continue;
        while (k < n &&
               (all[k].building != e->building || all[k].zone != e->zone || strcmp(all[k].source, d->source) != 0))
            k++;
        if (k == n) all[n++] = (struct higher){.building = e->building, .zone = e->zone, .source = d->source};
        take_higher(&all[k], d);
    }
    for (size_t i = 0; i < n; i++) say_higher(page, &all[i]);
}

void gw_page_given(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    struct difference_line *lines = gw_alloc(page->arena, t->differences.n + 1, sizeof *lines);
    size_t n = 0;
    if (!t->differences.n) return;
    for (size_t i = 0; i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        if (d->excess < 0 || page->results->all) lines[n++] = (struct difference_line){d, d->element->count};
    }
    qsort(lines, n, sizeof *lines, by_excess);
    gw_report_section(page->report, GW_PART_DEMANDS, "Given pressures that differ by more than 5 %");
    gw_view_list(page, "Strength level; a line for each zone, size and direction, of its worst element. Too low first.",
                 &DIFFERENCES, lines, n);
    if (n) gw_page_how_found(page, lines[0].worst->element, "Given pressures stand there with their source.");
    higher(page, t);
}
