/* What was assumed: alike ones once, over all walls; what verdicts may hang on by itself, the rest in one paragraph. */
#include "report/page.h"

#include <string.h>

bool gw_is_correction(const struct gw_assumption *a) { return strcmp(a->where, "assume") == 0; }

/* The names of those from `index` on that say the same of the same sort of thing: "walls east, north". They leave the
 * list. */
static const char *subjects(struct page *page, const struct gw_assumption **rest, size_t n, size_t index)
{
    static const char *const one[] = {"", "wall ", "building ", "system "};
    static const char *const many[] = {"", "walls ", "buildings ", "systems "};
    const struct gw_assumption *first = rest[index];
    struct gw_text names;
    size_t found = 0;
    gw_text_init(&names, page->arena);
    for (size_t i = index; i < n; i++) {
        const struct gw_assumption *a = rest[i];
        if (!a || a->subject != first->subject || !gw_message_same(&a->text, &first->text)) continue;
        gw_text_addf(&names, "%s%s", found ? ", " : "", a->subject ? a->name : a->where);
        rest[i] = NULL;
        found++;
    }
    return gw_format(page->arena, "%s%s: ", (found > 1 ? many : one)[first->subject], names.at);
}

const char *gw_assumption_words(struct page *page, const struct gw_assumption **rest, size_t n, size_t index)
{
    const struct gw_assumption *a = rest[index];
    const char *of = *a->where ? subjects(page, rest, n, index) : "";
    rest[index] = NULL;
    return gw_format(page->arena, "%s%s", gw_is_correction(a) ? "" : of,
                     gw_message_text(page->arena, &a->text, page->shown));
}

static void every_one(struct page *page)
{
    const struct gw_results *r = page->results;
    for (size_t i = 0; i < r->assumptions.n; i++) {
        const struct gw_assumption *a = r->assumptions.items[i];
        const bool placed = *a->where && !gw_is_correction(a);
        gw_report_item(page->report, gw_format(page->arena, "%s%s%s", placed ? a->where : "", placed ? ": " : "",
                                               gw_message_text(page->arena, &a->text, page->shown)));
    }
}

static void merged(struct page *page)
{
    const struct gw_results *r = page->results;
    const size_t n = r->assumptions.n;
    const struct gw_assumption **rest = gw_alloc(page->arena, n + 1, sizeof *rest);
    struct gw_text others;
    gw_text_init(&others, page->arena);
    for (size_t i = 0; i < n; i++) rest[i] = r->assumptions.items[i];
    for (size_t i = 0; i < n; i++)
        if (rest[i] && rest[i]->decides) gw_report_item(page->report, gw_assumption_words(page, rest, n, i));
    for (size_t i = 0; i < n; i++)
        if (rest[i]) gw_text_addf(&others, "%s%s", others.length ? "; " : "", gw_assumption_words(page, rest, n, i));
    if (others.length)
        gw_report_line(page->report, gw_format(page->arena, "Besides (--all: one a line): %s.", others.at));
}

void gw_page_assumptions(struct page *page)
{
    gw_report_section(page->report, GW_PART_INPUTS, "Assumptions");
    if (!page->results->assumptions.n) gw_report_line(page->report, "None: every value was given.");
    else if (page->results->all) every_one(page);
    else merged(page);
}

/* It is said of that thing, or of a part of it: "wall east", "wall east, above the roof". */
static bool is_said_of(const struct gw_assumption *a, const char *what, const char *name)
{
    const size_t n = strlen(what), length = strlen(name);
    if (strncmp(a->where, what, n) != 0 || strncmp(a->where + n, name, length) != 0) return false;
    return !a->where[n + length] || a->where[n + length] == ',';
}

/* What is said of another wall or building does not concern the element. */
bool gw_concerns_element(const struct gw_assumption *a, const struct gw_answer *answer, const struct gw_element *e)
{
    const struct gw_takeoff *t = answer->takeoff;
    const struct gw_project *p = &answer->model->project;
    for (size_t i = 0; i < t->n_walls; i++)
        if (strcmp(t->grids.items[i]->wall, e->wall) != 0 && is_said_of(a, "wall ", t->grids.items[i]->wall))
            return false;
    for (size_t i = 0; i < p->buildings.n; i++)
        if (&p->buildings.items[i] != e->building && is_said_of(a, "buildings.", p->buildings.items[i].name))
            return false;
    return true;
}
