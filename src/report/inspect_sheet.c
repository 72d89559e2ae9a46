/* The sheet of an inspection: by wall and stage what to measure, to what limit, how often and why; and the same as a
 * CSV to be filled in. */
#include "report/asking.h"
#include "report/draw/pictures.h"
#include "report/inspect.h"

#include <string.h>

struct sheet_page {
    struct page page;
    const struct gw_inspection_sheet *sheet;
};

static const char *limit_of(struct gw_arena *arena, const struct gw_message *held_to, enum gw_limit_basis basis,
                            enum gw_units shown)
{
    const char *limit = gw_message_text(arena, held_to, shown);
    return basis && *limit ? gw_format(arena, "%s (%s)", limit, gw_limit_basis_name(basis)) : limit;
}

/* How many of how many: "59 of 1,234", "all 12"; what is none of elements, in words. */
static const char *count_of(struct page *page, const struct gw_sheet_item *row)
{
    if (!row->places) return gw_message_text(page->arena, &row->how_many, page->shown);
    if (row->sample == row->places) return gw_format(page->arena, "all %ld", row->places);
    return gw_format(page->arena, "%ld of %ld", row->sample, row->places);
}

static const char *limit_at(struct page *page, const struct gw_sheet_place *place)
{
    return limit_of(page->arena, &place->held_to, place->limit.basis, page->shown);
}

/* Of a place its words without the wall, which stands above; "" of what is of the whole wall. */
static const char *within_wall(const struct gw_sheet_place *place, const char *wall)
{
    const size_t length = strlen(wall) + 2; /* "east, " */
    return strlen(place->place) > length ? place->place + length : "";
}

/* "vision: 15/16 to 1 1/16 in (system); spandrel: 3/16 to 5/16 in (system)" */
static const char *words_by_type(struct page *page, const struct gw_sheet_item *row)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < row->types.n; i++) {
        const struct gw_sheet_types *t = &row->types.items[i];
        const char *limit = limit_at(page, &t->first);
        gw_text_addf(&out, "%s%s: %s%s", i ? "; " : "", t->lites, *limit ? limit : "none stated",
                     gw_said(&t->first.condemns) ? ", does not hold" : "");
    }
    return out.at;
}

/* "at most 1/32 in (practice), strictest: at story 2, line 3; elsewhere up to 1/8 in"; in a narrow table the place
 * stands below it. */
static const char *limit_words(struct page *page, const struct gw_sheet_item *row)
{
    if (row->types.n) return page->report->pictures ? words_by_type(page, row) : "by type of lite: below";
    const struct gw_sheet_place *place = &row->strictest;
    const char *limit =
        gw_said(&place->condemns)
            ? gw_format(page->arena, "%s, does not hold", gw_message_text(page->arena, &place->held_to, page->shown))
            : limit_at(page, place);
    if (!gw_said(&row->elsewhere)) return limit;
    const char *elsewhere = gw_message_text(page->arena, &row->elsewhere, page->shown);
    if (!page->report->pictures) return gw_format(page->arena, "%s, strictest", limit);
    return gw_format(page->arena, "%s, strictest: at %s; elsewhere %s", limit, within_wall(place, row->wall),
                     elsewhere);
}

static void put_item(struct sheet_page *p, const struct gw_sheet_item *row)
{
    struct page *page = &p->page;
    const char *limit = limit_words(page, row);
    gw_report_cell(page->report, gw_item_kinds[row->item->id].title);
    gw_report_cell(page->report, *limit ? limit : "none stated");
    gw_report_cell(page->report, count_of(page, row));
}

static const char NOT_HELD[] = "the limit itself does not hold there, and is to be cleared before work starts";

static void put_condemned(struct sheet_page *p, const struct gw_sheet_item *row, const struct gw_sheet_place *place)
{
    struct page *page = &p->page;
    if (!gw_said(&place->condemns)) return;
    gw_report_item(page->report,
                   gw_format(page->arena, "%s, %s: %s; %s", gw_item_kinds[row->item->id].title, limit_at(page, place),
                             NOT_HELD, gw_message_text(page->arena, &place->condemns, page->shown)));
}

/* What does not hold, and the places that another limit holds. */
static void put_limits(struct sheet_page *p, const struct gw_sheet_item *row)
{
    struct page *page = &p->page;
    if (gw_said(&row->elsewhere) && !row->types.n && !page->report->pictures)
        gw_report_item(page->report,
                       gw_format(page->arena, "%s: strictest at %s; elsewhere %s", gw_item_kinds[row->item->id].title,
                                 within_wall(&row->strictest, row->wall),
                                 gw_message_text(page->arena, &row->elsewhere, page->shown)));
    if (row->types.n && !page->report->pictures)
        gw_report_item(page->report,
                       gw_format(page->arena, "%s: %s", gw_item_kinds[row->item->id].title, words_by_type(page, row)));
    put_condemned(p, row, &row->most);
    for (size_t i = 0; i < row->other.n; i++) {
        const struct gw_sheet_place *place = &row->other.items[i];
        if (row->types.n && !gw_said(&place->condemns)) continue;
        gw_report_item(page->report,
                       gw_format(page->arena, "%s at %s: %s%s%s", gw_item_kinds[row->item->id].title,
                                 within_wall(place, row->wall), limit_at(page, place),
                                 gw_said(&place->condemns) ? gw_format(page->arena, "; %s; ", NOT_HELD) : "",
                                 gw_message_text(page->arena, &place->condemns, page->shown)));
    }
}

/* Once each where most is carried, with all that is to be measured there. */
static void put_begin(struct sheet_page *p, size_t from, size_t to)
{
    struct page *page = &p->page;
    for (size_t i = from; i < to; i++) {
        const struct gw_sheet_item *row = &p->sheet->items.items[i];
        const char *place = within_wall(&row->most, row->wall);
        struct gw_text what;
        bool before = false;
        for (size_t k = from; k < i; k++)
            before = before || !strcmp(p->sheet->items.items[k].most.place, row->most.place);
        if (before || !*place) continue;
        gw_text_init(&what, page->arena);
        for (size_t k = i; k < to; k++)
            if (!strcmp(p->sheet->items.items[k].most.place, row->most.place))
                gw_text_addf(&what, "%s%s", k > i ? "; " : "", gw_item_kinds[p->sheet->items.items[k].item->id].title);
        gw_report_item(page->report, gw_format(page->arena, "Most is carried at %s: %s.", place, what.at));
    }
}

/* Rows of one wall and stage, from `from`; returns where the next ones begin. */
static size_t put_stage(struct sheet_page *p, size_t from)
{
    static const struct gw_report_column columns[] = {{.title = "What"}, {.title = "Limit"}, {.title = "Look at"}};
    const struct gw_sheet_item *first = &p->sheet->items.items[from];
    size_t to = from;
    bool hold = false;
    for (; to < p->sheet->items.n; to++) {
        const struct gw_sheet_item *row = &p->sheet->items.items[to];
        if (strcmp(row->wall, first->wall) != 0 || row->item->stage != first->item->stage) break;
        hold = hold || row->item->hold;
    }
    gw_report_heading(p->page.report, 3,
                      gw_format(p->page.arena, "%s: %s", first->wall, gw_stage_names[first->item->stage]));
    const int stage = (int)first->item->stage;
    const char *then = stage + 1 < GW_STAGE_COUNT ? gw_stage_names[stage + 1] : "";
    const char *covered = gw_format(p->page.arena, "Hold point: before the next stage, %s, begins there.", then);
    if (hold)
        gw_report_line(p->page.report,
                       first->item->stage == GW_STAGE_TEST ? "Hold point: before the work is handed over." : covered);
    gw_report_table(p->page.report, "", columns, sizeof columns / sizeof *columns);
    for (size_t i = from; i < to; i++) put_item(p, &p->sheet->items.items[i]);
    for (size_t i = from; i < to; i++) put_limits(p, &p->sheet->items.items[i]);
    put_begin(p, from, to);
    return to;
}

/* Once for all walls: name in the sheet of readings, how, why, and what then. */
static void put_meanings(struct sheet_page *p)
{
    bool told[GW_ITEM_COUNT] = {false};
    struct gw_arena *arena = p->page.arena;
    gw_report_section(p->page.report, GW_PART_ANSWERS, "How, why, and when one is outside");
    for (size_t i = 0; i < p->sheet->items.n; i++) {
        const struct gw_item *item = p->sheet->items.items[i].item;
        if (told[item->id]) continue;
        told[item->id] = true;
        gw_report_definition(
            p->page.report, gw_format(arena, "%s (%s)", gw_item_kinds[item->id].title, gw_item_kinds[item->id].id),
            gw_format(arena, "%s.%s%s%s %s", item->how, *item->prevents ? " It prevents: " : "", item->prevents,
                      *item->prevents ? "." : "", gw_if_missed(arena, item->if_missed)));
    }
}

/* What the sizes of the samples say: once each. */
static void put_samples(struct sheet_page *p)
{
    long told[2] = {0};
    for (size_t i = 0; i < p->sheet->items.n; i++) {
        const struct gw_sheet_item *row = &p->sheet->items.items[i];
        if (!row->places || row->sample == row->places || told[row->item->hold]) continue;
        told[row->item->hold] = row->sample;
        gw_report_item(p->page.report, gw_message_text(p->page.arena, &row->says, p->page.shown));
    }
    gw_report_item(p->page.report, "Besides the sample all of the first lites of each crew.");
    gw_report_item(p->page.report,
                   "One outside: look at the whole piece and at the ones beside it, and read them too.");
}

static void sheet_page(struct gw_report *report, const struct gw_result *result)
{
    enum { PICTURES = 6 };
    const struct gw_inspected_results *value = result->value;
    struct sheet_page p = {.page = gw_page_of(report, value->results), .sheet = value->sheet};
    struct gw_used used = p.sheet->used;
    const char *wall = "";
    gw_page_head(&p.page, "Inspection sheet");
    gw_report_line(report,
                   gw_format(p.page.arena,
                             "%s: what to measure on the wall, by wall and stage of the work. A limit names "
                             "whose it is. -o readings.csv writes the places to be filled in; 'galeward inspect "
                             "PROJECT readings.csv' judges what was read.",
                             p.sheet->system->name));
    const struct gw_pictures *pictures = result->pictures;
    for (size_t i = 0; report->pictures && i < pictures->n && i < PICTURES; i++) {
        gw_report_figure(report, &pictures->items[i].figure);
        if (!i) put_samples(&p);
    }
    if (!report->pictures || !pictures->n) put_samples(&p);
    for (size_t i = 0; i < p.sheet->items.n;) {
        const char *here = p.sheet->items.items[i].wall;
        if (strcmp(here, wall) != 0)
            gw_report_section(report, GW_PART_ANSWERS, gw_format(p.page.arena, "Wall %s", here));
        wall = here;
        i = put_stage(&p, i);
    }
    put_meanings(&p);
    gw_used_merge(&used, &value->results->used);
    gw_page_foot(&p.page, &used);
}

/* To be filled in ---------------------------------------------------------------------------------------------------
 */

static void put_number(struct gw_text *out, int number)
{
    gw_csv_cell(out, number == GW_NO_INTEGER ? "" : gw_format(out->arena, "%d", number), false);
}

static void put_place(struct gw_text *out, const struct gw_sheet_place *row, enum gw_units shown)
{
    static const char *const edges[] = {"head", "sill", "left", "right"};
    const struct gw_spot *s = &row->spot;
    const bool lined = s->line != GW_NO_INTEGER && s->column == GW_NO_INTEGER;
    const char *limit = limit_of(out->arena, &row->held_to, row->limit.basis, shown);
    const char *condemns = gw_message_text(out->arena, &row->condemns, shown);
    gw_csv_cell(out, s->wall, true);
    put_number(out, s->column);
    put_number(out, s->story);
    put_number(out, s->row);
    gw_csv_cell(out, s->edge >= 0 ? edges[s->edge] : "", false);
    put_number(out, lined ? s->line : GW_NO_INTEGER);
    gw_text_add(out, ","); /* point */
    gw_csv_cell(out, gw_item_kinds[row->item->id].id, false);
    gw_text_add(out, ",,,,,,,"); /* value date installed temperature repaired sample by */
    gw_csv_cell(out,
                gw_format(out->arena, "%s%s%s%s%s", gw_item_kinds[row->item->id].title, *limit ? ": " : "", limit,
                          *condemns ? gw_format(out->arena, "; %s: ", NOT_HELD) : "", condemns),
                false);
    gw_text_add(out, "\n");
}

static void sheet_table(struct gw_text *out, const struct gw_result *result)
{
    const struct gw_inspected_results *value = result->value;
    gw_text_add(
        out, "wall,column,story,row,edge,line,point,item,value,date,installed,temperature,repaired,sample,by,note\n");
    for (size_t i = 0; i < value->sheet->places.n; i++) put_place(out, &value->sheet->places.items[i], result->shown);
}

struct gw_result gw_result_inspection_sheet(struct gw_arena *arena, const struct gw_results *results,
                                            const struct gw_inspection_sheet *sheet)
{
    struct gw_inspected_results *value = gw_alloc(arena, 1, sizeof *value);
    *value = (struct gw_inspected_results){.results = results, .sheet = sheet};
    struct gw_pictures *shown = gw_alloc(arena, 1, sizeof *shown);
    gw_pictures_of_sheet(shown, arena, results, sheet);
    return (struct gw_result){.shown = results->shown,
                              .pictures = shown,
                              .record = &gw_inspection_sheet_record,
                              .value = value,
                              .rows = "items",
                              .page = sheet_page,
                              .table = sheet_table};
}
