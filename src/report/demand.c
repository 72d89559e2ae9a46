/* What the site asks: one page by wall, kind and zone; then every group. */
#include "report/parts.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof *(array))

static const struct heading BANDS[] = {{.title = "Kind"},
                                       {.title = "Zone"},
                                       {"From - to", true, GW_LENGTH},
                                       {.title = "Count", .right = true},
                                       {"Inward", true, GW_PRESSURE},
                                       {"Outward", true, GW_PRESSURE},
                                       {"ASD in", true, GW_PRESSURE},
                                       {"ASD out", true, GW_PRESSURE},
                                       {.title = "Governs"}};

struct band {
    long count;
    double bottom, top, inward, outward, inward_asd, outward_asd;
    const char *governs;
};

static void widen(struct band *band, const struct gw_element *e)
{
    bool first = band->count == 0;
    band->count += e->count;
    if (first || e->bottom < band->bottom) band->bottom = e->bottom;
    if (first || e->top > band->top) band->top = e->top;
    if (first || !gw_given(band->inward) || e->inward.pa > band->inward) band->inward = e->inward.pa;
    if (first || !gw_given(band->inward_asd) || e->inward_asd.pa > band->inward_asd)
        band->inward_asd = e->inward_asd.pa;
    if (first || !gw_given(band->outward_asd) || e->outward_asd.pa < band->outward_asd)
        band->outward_asd = e->outward_asd.pa;
    if (first || !gw_given(band->outward) || e->outward.pa < band->outward) {
        band->outward = e->outward.pa;
        band->governs = e->governs;
    }
}

static void band_row(struct page *page, const struct gw_element *e, const struct band *band)
{
    gw_page_cell(page, gw_kind_names[e->kind]);
    gw_page_cell(page, gw_format(page->arena, "%d%s", e->zone, e->parapet ? " parapet" : ""));
    gw_page_cell(page, gw_height_band(page, band->bottom, band->top));
    gw_page_count(page, band->count);
    gw_page_quantity(page, GW_PRESSURE, band->inward, UP);
    gw_page_quantity(page, GW_PRESSURE, band->outward, UP);
    gw_page_quantity(page, GW_PRESSURE, band->inward_asd, UP);
    gw_page_quantity(page, GW_PRESSURE, band->outward_asd, UP);
    gw_page_cell(page, band->governs);
}

static void wall_tables(struct page *page)
{
    size_t n = page->results->takeoff->elements.n;
    const struct ordered *items = gw_order_elements(page->arena, page->results->takeoff);
    for (size_t i = 0; i < n;) {
        const struct gw_element *e = items[i].element;
        struct band band = {.governs = ""};
        size_t next = i;
        for (; next < n && gw_same_band(&items[i], &items[next]); next++) widen(&band, items[next].element);
        if (i == 0 || items[i].wall != items[i - 1].wall) {
            const char *name = e->building ? e->building->name : "";
            gw_page_table(page, gw_format(page->arena, "Wall %s, building %s", e->wall, name), BANDS, COUNT(BANDS));
        }
        band_row(page, e, &band);
        i = next;
    }
}

static const char *demand_value(struct page *page, const struct gw_demand *d)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    if (!gw_given(d->value)) return "";
    gw_text_add(&text, d->at_most ? "at most " : "at least ");
    gw_add_quantity(&text, d->dim, page->shown, d->value, d->at_most ? NEAREST : UP);
    if (d->dim == GW_LEAKAGE && gw_given(d->at)) {
        gw_text_add(&text, " at ");
        gw_add_quantity(&text, GW_PRESSURE, page->shown, d->at, NEAREST);
    }
    return text.at;
}

/* Demands that read alike but for the place. */
static bool alike(const struct gw_demand *a, const struct gw_demand *b)
{
    bool same_name = a->name == b->name || (a->name && b->name && strcmp(a->name, b->name) == 0);
    bool same_value = a->value == b->value || (!gw_given(a->value) && !gw_given(b->value));
    return same_name && same_value && a->status == b->status && a->component == b->component &&
           strcmp(a->check, b->check) == 0 && strcmp(a->message, b->message) == 0;
}

static const char *places(struct page *page, const struct gw_demand *first, size_t n)
{
    enum { NAMED = 3 };
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < n && i < NAMED; i++) gw_text_addf(&text, "%s%s", i ? ", " : "", first[i].where);
    if (n > NAMED) gw_text_addf(&text, " and %zu more", n - NAMED);
    return text.at;
}

static void other_demand(struct page *page, const struct gw_demand *d, size_t n)
{
    static const char *const words[] = {[GW_NOT_SHOWN] = "not shown",
                                        [GW_PASS] = "required",
                                        [GW_FAIL] = "required",
                                        [GW_NOT_REQUIRED] = "not required"};
    bool opens = d->component == GW_VENT || d->component == GW_DOOR;
    const char *component =
        opens ? gw_format(page->arena, ", %s", gw_choice_name(gw_component_choices, (int)d->component)) : "";
    gw_page_cell(page, gw_format(page->arena, "%s%s", d->name ? d->name : d->check, component));
    gw_page_cell(page, places(page, d, n));
    gw_page_cell(page, words[d->status]);
    gw_page_cell(page, demand_value(page, d));
    gw_page_cell(page, d->message);
}

/* What a hazard asks of elements: one line a requirement, with those that it meets. */
static bool same_hazard(const struct gw_demand *a, const struct gw_demand *b)
{
    return a->status == b->status && strcmp(a->check, b->check) == 0 && strcmp(a->summary, b->summary) == 0;
}

struct hazards {
    struct hazard {
        const struct gw_demand *first;
        struct band band;
    } * items;
    size_t n, capacity;
};

/* The requirement that a demand belongs to; a new one, if it is the first. */
static struct hazard *hazard_of(struct hazards *hazards, const struct gw_demand *d, struct gw_arena *arena)
{
    for (size_t i = 0; i < hazards->n; i++)
        if (same_hazard(hazards->items[i].first, d)) return &hazards->items[i];
    hazards->items = gw_grow(arena, hazards->items, hazards->n, &hazards->capacity, sizeof *hazards->items);
    hazards->items[hazards->n] = (struct hazard){.first = d, .band = {.governs = ""}};
    return &hazards->items[hazards->n++];
}

/* Pressures of the elements stand in the tables above, the pair of a blast in its text. */
static void hazard_row(struct page *page, const struct hazard *h)
{
    struct gw_demand row = *h->first;
    row.where = gw_format(page->arena, "%ld %s%s, %s %s", h->band.count, gw_kind_names[row.element->kind],
                          h->band.count == 1 ? "" : "s", gw_height_band(page, h->band.bottom, h->band.top),
                          gw_dim_info(GW_LENGTH)->shown[page->shown]);
    row.component = GW_FIXED;
    row.value = GW_ABSENT;
    row.message = row.summary;
    other_demand(page, &row, 1);
}

static void hazard_rows(struct page *page, const struct gw_judgement *judgement)
{
    struct hazards hazards = {.n = 0};
    for (size_t i = 0; i < judgement->demands.n; i++) {
        const struct gw_demand *d = &judgement->demands.items[i];
        if (d->element && d->summary) widen(&hazard_of(&hazards, d, page->arena)->band, d->element);
    }
    for (size_t i = 0; i < hazards.n; i++) hazard_row(page, &hazards.items[i]);
}

static void other_demands(struct page *page)
{
    static const struct heading headings[] = {
        {.title = "Check"}, {.title = "Where"}, {.title = "Status"}, {.title = "Value"}, {.title = "How"}};
    const struct gw_judgement *judgement = page->results->judgement;
    struct gw_text unbuilt;
    gw_text_init(&unbuilt, page->arena);
    gw_report_heading(page->report, 2, "Other demands");
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0, next; i < judgement->demands.n; i = next) {
        const struct gw_demand *d = &judgement->demands.items[i];
        for (next = i + 1; next < judgement->demands.n && !judgement->demands.items[next].element &&
                           alike(d, &judgement->demands.items[next]);)
            next++;
        if (d->element) continue;
        if (gw_is_not_built(d->message)) gw_text_addf(&unbuilt, "%s%s", unbuilt.length ? ", " : "", d->check);
        else other_demand(page, d, next - i);
    }
    hazard_rows(page, judgement);
    if (unbuilt.length)
        gw_report_line(page->report, gw_format(page->arena, "Not built yet, therefore not shown: %s.", unbuilt.at));
}

static void unknown_places(struct page *page)
{
    const struct gw_takeoff *t = page->results->takeoff;
    if (!t->no_offset && !t->no_sill) return;
    gw_report_line(page->report, gw_format(page->arena,
                                           "Place unknown: %ld openings without an offset (taken in the edge zone), "
                                           "%ld without a sill (taken at the top of the building).",
                                           t->no_offset, t->no_sill));
}

static const char *place_of(struct page *page, const struct gw_element *e)
{
    return gw_format(page->arena, "%s: %s, zone %d%s", e->wall, e->mark, e->zone, e->parapet ? ", parapet" : "");
}

static void reactions(struct page *page)
{
    static const struct heading headings[] = {{.title = "Anchors"},
                                              {.title = "From - to", .dim = GW_LENGTH},
                                              {.title = "Count", .right = true},
                                              {"In 0.6 W", true, GW_FORCE},
                                              {"Out 0.6 W", true, GW_FORCE},
                                              {"In 1.0 W", true, GW_FORCE},
                                              {"Out 1.0 W", true, GW_FORCE},
                                              {"Wall", true, GW_AREA}};
    const struct gw_judgement *judgement = page->results->judgement;
    if (!judgement->reactions.n) return;
    gw_report_heading(page->report, 2, "Reactions of the anchors under wind, each");
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0; i < judgement->reactions.n; i++) {
        const struct gw_reaction *r = &judgement->reactions.items[i];
        gw_page_cell(page, place_of(page, r->element));
        gw_page_cell(page, gw_height_band(page, r->element->bottom, r->element->top));
        gw_page_count(page, r->element->count);
        gw_page_quantity(page, GW_FORCE, r->inward, UP);
        gw_page_quantity(page, GW_FORCE, r->outward, UP);
        gw_page_quantity(page, GW_FORCE, r->inward_strength, UP);
        gw_page_quantity(page, GW_FORCE, r->outward_strength, UP);
        gw_page_quantity(page, GW_AREA, r->area, NEAREST);
    }
    gw_report_line(page->report, "Wall: the longest piece of mullion that can hang on the anchor; its dead load is "
                                 "that area times the weight of framing and glass. At an outside corner: of each face. "
                                 "An anchor that the roof line cuts is listed once, with both of its parts; one whose "
                                 "load the method does not give has no figures.");
}

static bool same_row(const struct gw_element *a, const struct gw_element *b)
{
    return a->kind == b->kind && a->zone == b->zone && a->parapet == b->parapet && strcmp(a->wall, b->wall) == 0 &&
           strcmp(a->mark, b->mark) == 0;
}

/* Of like members of a wall the one that needs most; the result file has them all. */
static bool needs_most(const struct gw_judgement *judgement, size_t at)
{
    const struct gw_member_demand *own = &judgement->members.items[at];
    for (size_t i = 0; i < judgement->members.n; i++) {
        const struct gw_member_demand *other = &judgement->members.items[i];
        if (i == at || !same_row(own->element, other->element)) continue;
        if (other->inertia > own->inertia || (i < at && !(own->inertia > other->inertia))) return false;
    }
    return true;
}

static void members(struct page *page)
{
    static const struct heading headings[] = {{.title = "Members"},
                                              {.title = "From - to", .dim = GW_LENGTH},
                                              {.title = "Count", .right = true},
                                              {"Moment", true, GW_BENDING},
                                              {"Shear", true, GW_FORCE},
                                              {"Deflection limit", true, GW_THICKNESS},
                                              {"I of aluminum", true, GW_INERTIA}};
    const struct gw_judgement *judgement = page->results->judgement;
    if (!judgement->members.n) return;
    gw_report_heading(page->report, 2, "What framing must bring under wind (0.6 W)");
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0; i < judgement->members.n; i++) {
        const struct gw_member_demand *m = &judgement->members.items[i];
        const struct gw_element *e = m->element;
        if (!needs_most(judgement, i)) continue;
        gw_page_cell(page, gw_format(page->arena, "%s, %s", gw_kind_names[e->kind], place_of(page, e)));
        gw_page_cell(page, gw_height_band(page, e->bottom, e->top));
        gw_page_count(page, e->count);
        gw_page_quantity(page, GW_BENDING, m->moment, UP);
        gw_page_quantity(page, GW_FORCE, m->shear, UP);
        gw_page_quantity(page, GW_THICKNESS, m->deflection_limit, DOWN);
        gw_page_quantity(page, GW_INERTIA, m->inertia, UP);
    }
    gw_report_line(page->report, "Of like members of a wall the one that needs most. Section modulus needed: the "
                                 "moment over the allowable stress of the alloy. A corner "
                                 "mullion takes both faces: the moment about each axis.");
}

static void optional_quantity(struct page *page, enum gw_dim dim, double value)
{
    if (gw_given(value)) gw_page_quantity(page, dim, value, NEAREST);
    else gw_page_cell(page, "");
}

static void mock_up(struct page *page)
{
    static const struct heading headings[] = {{.title = "Step"},
                                              {.title = "Test"},
                                              {.title = "Method"},
                                              {"Pressure", true, GW_PRESSURE},
                                              {"Leakage at most", true, GW_LEAKAGE},
                                              {"Racking", true, GW_THICKNESS},
                                              {"Limit", true, GW_THICKNESS}};
    const struct gw_judgement *judgement = page->results->judgement;
    gw_report_heading(page->report, 2, "Tests of a laboratory mock-up, in their order");
    if (judgement->mock_up_fault) {
        gw_report_line(page->report, gw_format(page->arena, "Not shown: %s", judgement->mock_up_fault));
        return;
    }
    gw_page_table(page, "", headings, COUNT(headings));
    for (size_t i = 0; i < judgement->mock_up.n; i++) {
        const struct gw_sequence_step *s = &judgement->mock_up.steps[i];
        const char *name = gw_choice_name(gw_sequence_test_choices, (int)s->test);
        gw_page_count(page, (long)i + 1);
        gw_page_cell(page, gw_format(page->arena, "%s%s", name, s->again == GW_YES ? " again" : ""));
        gw_page_cell(page, s->method ? s->method : "");
        optional_quantity(page, GW_PRESSURE, s->pressure);
        optional_quantity(page, GW_LEAKAGE, s->leakage);
        optional_quantity(page, GW_THICKNESS, s->displacement);
        optional_quantity(page, GW_THICKNESS, s->limit);
    }
    gw_report_line(page->report,
                   "At the greatest pressures of the walls below the roof line, on the greatest span. Limit: "
                   "deflection at the design pressure, permanent set after proof.");
}

static void differences(struct page *page)
{
    static const struct heading headings[] = {{.title = "Element"},
                                              {.title = "Direction"},
                                              {"Computed", true, GW_PRESSURE},
                                              {"Given", true, GW_PRESSURE},
                                              {.title = "Source"}};
    const struct gw_takeoff *t = page->results->takeoff;
    if (!t->differences.n) return;
    gw_report_heading(page->report, 2, "Given pressures that differ by more than 5 %");
    gw_page_table(page, "Strength level.", headings, COUNT(headings));
    for (size_t i = 0; i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        gw_page_cell(page, d->element->id);
        gw_page_cell(page, d->direction);
        gw_page_quantity(page, GW_PRESSURE, d->computed, UP);
        gw_page_quantity(page, GW_PRESSURE, d->given, NEAREST);
        gw_page_cell(page, d->source);
    }
}

static const struct heading GROUPS[] = {{.title = "Group"},
                                        {.title = "Count", .right = true},
                                        {"Width", true, GW_LENGTH},
                                        {"Height", true, GW_LENGTH},
                                        {"From - to", true, GW_LENGTH},
                                        {.title = "Zone"},
                                        {"Area", true, GW_AREA},
                                        {"In", true, GW_PRESSURE},
                                        {"Out", true, GW_PRESSURE},
                                        {"ASD in", true, GW_PRESSURE},
                                        {"ASD out", true, GW_PRESSURE},
                                        {.title = "Columns"}};

static void group_row(struct page *page, const struct gw_element *e)
{
    gw_page_cell(page, e->id);
    gw_page_count(page, e->count);
    gw_page_quantity(page, GW_LENGTH, e->width, NEAREST);
    gw_page_quantity(page, GW_LENGTH, e->height, NEAREST);
    gw_page_cell(page, gw_height_band(page, e->bottom, e->top));
    gw_page_cell(page, gw_format(page->arena, "%d%s%s", e->zone, e->parapet ? "p" : "", e->place_unknown ? "?" : ""));
    gw_page_quantity(page, GW_AREA, e->effective_area, NEAREST);
    gw_page_quantity(page, GW_PRESSURE, e->inward.pa, UP);
    gw_page_quantity(page, GW_PRESSURE, e->outward.pa, UP);
    gw_page_quantity(page, GW_PRESSURE, e->inward_asd.pa, UP);
    gw_page_quantity(page, GW_PRESSURE, e->outward_asd.pa, UP);
    gw_page_cell(page, e->columns);
}

static void every_group(struct page *page)
{
    const struct gw_takeoff *t = page->results->takeoff;
    gw_report_heading(page->report, 2, "Every group");
    gw_report_line(page->report, "Zone: p is above the roof line, ? is a place unknown and taken at its worst. "
                                 "Area is the effective wind area.");
    gw_page_table(page, "", GROUPS, COUNT(GROUPS));
    for (size_t i = 0; i < t->elements.n; i++) group_row(page, &t->elements.items[i]);
}

void gw_report_demand(struct gw_report *report, const struct gw_results *results)
{
    struct page page = gw_page_of(report, results);
    struct gw_used rows = {.words = {0}};
    gw_page_head(&page, "Wind demand");
    gw_page_buildings(&page);
    gw_report_heading(report, 2, "Pressures by wall");
    gw_report_line(
        report,
        "Worst of each row. Inward and outward: strength level; ASD: allowable-stress level. Outward is negative.");
    unknown_places(&page);
    wall_tables(&page);
    other_demands(&page);
    members(&page);
    reactions(&page);
    mock_up(&page);
    differences(&page);
    every_group(&page);
    gw_page_rows(&rows, &page, false);
    gw_page_foot(&page, &rows);
}
