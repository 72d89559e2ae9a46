/* Each wall: what it is, where its edge zone lies, and its pressures by height. */
#include "base/tolerance.h"
#include "report/demand.h"
#include "report/how_found.h"
#include "report/ledger.h"
#include "report/view.h"

#include <string.h>

/* Where the edge zone lies --------------------------------------------------------------------------------------- */

static const char *length_text(struct page *page, double si) { return gw_quantity_text(page, GW_LENGTH, si, NEAREST); }

static bool in_edge_zone(const struct page *page, const struct gw_wall_grid *g, size_t column)
{
    const struct gw_grid_layer *layer = &g->layers[GW_SORT_LITE];
    return page->results->answer->takeoff->elements.items[layer->groups[layer->axis->class_of[column]]].zone == 5;
}

/* "columns 1 to 2 and 24"; nothing without one. */
static bool add_edge_columns(struct gw_text *out, const struct page *page, const struct gw_wall_grid *g)
{
    const size_t n = g->n_columns;
    size_t runs = 0, count = 0, written = 0;
    for (size_t i = 0; i < n; i++) {
        const bool in = in_edge_zone(page, g, i);
        count += in;
        runs += in && (i == 0 || !in_edge_zone(page, g, i - 1));
    }
    if (count) gw_text_add(out, count == 1 ? "column " : "columns ");
    for (size_t i = 0, next; i < n; i = next) {
        for (next = i + 1; next < n && in_edge_zone(page, g, next) == in_edge_zone(page, g, i);) next++;
        if (!in_edge_zone(page, g, i)) continue;
        gw_text_addf(out, "%s%zu", !written ? "" : written + 1 == runs ? " and " : ", ", i + 1);
        if (next > i + 1) gw_text_addf(out, " to %zu", next);
        written++;
    }
    return count > 0;
}

/* "0 to 9 ft" */
static void add_span(struct gw_text *out, struct page *page, double from, double to)
{
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), GW_LENGTH, page->shown, from), NEAREST);
    gw_text_addf(out, " to %s", length_text(page, to));
}

/* A face: its width, its edge zone beside outside corners, how far beyond each end one lies; absent: none. */
struct face {
    double width, strip, left, right;
};

/* The strip as far as it lies on this face, from its left end. */
static void add_edge_places(struct gw_text *out, struct page *page, const struct face *f)
{
    const double left = gw_given(f->left) ? fmin(f->strip - f->left, f->width) : 0;
    const double right = gw_given(f->right) ? fmin(f->strip - f->right, f->width) : 0;
    if (left > 0) add_span(out, page, 0, left);
    if (left > 0 && right > 0) gw_text_add(out, " and ");
    if (right > 0) add_span(out, page, f->width - right, f->width);
    gw_text_add(out, left > 0 || right > 0 ? " from the left end" : "none of it on this face");
}

static const struct gw_wall *wall_of(const struct page *page, const struct gw_wall_grid *g)
{
    const struct gw_project *project = &page->results->answer->model->project;
    for (size_t i = 0; i < project->walls.n; i++)
        if (strcmp(project->walls.items[i].name, g->wall) == 0) return &project->walls.items[i];
    return NULL;
}

static const char *end_text(struct page *page, const struct gw_wall *wall, bool right, double corner, const char *meets)
{
    if (meets) return gw_format(page->arena, "outside corner, meets %s", meets);
    if (corner > GW_HAIR_M) return gw_format(page->arena, "%s short of an outside corner", length_text(page, corner));
    if (gw_given(corner)) return "outside corner";
    const bool reentrant = wall && wall->ends.n == 2 && wall->ends.items[right].kind == GW_REENTRANT;
    return reentrant ? "re-entrant, no edge zone" : "no corner, no edge zone";
}

/* What gives the pressures of a wall, each once, in the order in which they are met. */
static void add_governs(struct gw_text *out, struct page *page, const struct ordered *items, size_t n)
{
    const char **met = gw_alloc(page->arena, n, sizeof(const char *));
    size_t count = 0;
    for (size_t i = 0; i < n; i++) {
        const char *governs = items[i].element->governs;
        size_t k = 0;
        while (k < count && strcmp(met[k], governs) != 0) k++;
        if (k == count) met[count++] = governs;
    }
    gw_text_add(out, "Governs: ");
    for (size_t i = 0; i < count; i++) gw_text_addf(out, "%s%s", i ? "; " : "", met[i]);
    gw_text_add(out, ".");
}

static const char *wall_words(struct page *page, const struct ordered *items)
{
    struct gw_text text;
    const struct gw_wall_grid *g = items[0].element->grid;
    const struct gw_wall *wall = wall_of(page, g);
    gw_text_init(&text, page->arena);
    gw_text_addf(&text, "%s wide, ", length_text(page, g->x[g->n_columns]));
    add_span(&text, page, g->lines.bottom, g->lines.top);
    gw_text_add(&text, " above ground");
    if (g->lines.has_roof && gw_cut_at_roof(&g->lines, g->lines.bottom, g->lines.top))
        gw_text_addf(&text, ", roof line at %s", length_text(page, g->lines.roof));
    gw_text_addf(&text, "; left end: %s; right end: %s. ", end_text(page, wall, false, g->left_corner, g->left_meets),
                 end_text(page, wall, true, g->right_corner, g->right_meets));
    if (gw_given(g->left_corner) || gw_given(g->right_corner)) {
        gw_text_addf(&text, "Edge zone 5, a = %s: ", length_text(page, g->strip));
        if (add_edge_columns(&text, page, g)) gw_text_add(&text, ", ");
        const struct face face = {g->x[g->n_columns], g->strip, g->left_corner, g->right_corner};
        add_edge_places(&text, page, &face);
        gw_text_add(&text, ". ");
    }
    return text.at;
}

static double corner_beyond(const struct gw_end *end)
{
    if (gw_given(end->corner_at)) return end->corner_at;
    return gw_end_is_corner(end) ? 0 : GW_ABSENT;
}

/* Openings of a schedule, in a face that is named or in none. */
static const char *openings_words(struct page *page, const struct ordered *items)
{
    struct gw_text text;
    struct gw_face face;
    const struct gw_wall_grid *g = items[0].element->grid;
    gw_text_init(&text, page->arena);
    gw_text_addf(&text,
                 "Openings of the schedule. Edge zone 5 beside outside corners, a = %s: ", length_text(page, g->strip));
    if (gw_model_face(page->results->answer->model, g->opening->wall, &face)) {
        const struct face f = {face.width, g->strip, corner_beyond(&face.ends[0]), corner_beyond(&face.ends[1])};
        add_edge_places(&text, page, &f);
    } else {
        gw_text_add(&text, "the face is not known, all of it is taken as edge zone");
    }
    gw_text_add(&text, ". ");
    return text.at;
}

/* "120 ft wide, ...": what it is and where its edge zone lies. */
static const char *key_words(struct page *page, const struct ordered *items)
{
    return items[0].element->grid->opening ? openings_words(page, items) : wall_words(page, items);
}

static void say_what_it_is(struct page *page, const struct ordered *items, size_t n)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    gw_text_add(&text, key_words(page, items));
    add_governs(&text, page, items, n);
    gw_report_line(page->report, text.at);
}

void gw_page_wall_keys(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const struct ordered *items = gw_order_elements(page->arena, t);
    for (size_t i = 0, next; i < t->elements.n; i = next) {
        for (next = i + 1; next < t->elements.n && items[next].wall == items[i].wall;) next++;
        const char *key = key_words(page, items + i);
        const int length = (int)strlen(key) - (key[strlen(key) - 1] == ' ');
        gw_report_item(page->report, gw_format(page->arena, "Wall %s: %.*s", items[i].element->wall, length, key));
    }
}

/* The ledger ------------------------------------------------------------------------------------------------------ */

static const char *part_of(struct page *page, const struct gw_element *e)
{
    const char *name = e->kind == GW_LITE && e->lite ? e->lite : gw_kind_names[e->kind];
    if (!e->parapet && !e->place_unknown) return name;
    return gw_format(page->arena, "%s%s%s", name, e->parapet ? ", parapet" : "",
                     e->place_unknown ? ", place unknown" : "");
}

#define FIRST_COLUMNS                                                                                                  \
    COLUMN("Part", "part"), COLUMN("From - to", "heights", .dim = GW_LENGTH, .right = true),                           \
        COLUMN("Floors", "floors", .right = true)
#define ZONE_COLUMNS(zone_) LEDGER_COLUMNS(zone_, GW_PRESSURE)
#define LAST_COLUMN COLUMN("Governs", "governs")
static const struct view_column BOTH_COLUMNS[] = {FIRST_COLUMNS, ZONE_COLUMNS(4), ZONE_COLUMNS(5), LAST_COLUMN};
static const struct view_column FOUR_COLUMNS[] = {FIRST_COLUMNS, ZONE_COLUMNS(4), LAST_COLUMN};
static const struct view_column FIVE_COLUMNS[] = {FIRST_COLUMNS, ZONE_COLUMNS(5), LAST_COLUMN};
static const struct view BOTH = VIEW(&gw_ledger_record, BOTH_COLUMNS), FOUR = VIEW(&gw_ledger_record, FOUR_COLUMNS),
                         FIVE = VIEW(&gw_ledger_record, FIVE_COLUMNS);

/* Both zones, or the only one that the wall has; what governs each row where every row is asked for. */
static struct view view_for(const struct page *page, const struct ledger_row *rows, size_t n)
{
    bool four = false, five = false;
    for (size_t i = 0; i < n; i++) {
        four = four || rows[i].zones[0].worst;
        five = five || rows[i].zones[1].worst;
    }
    struct view view = four && five ? BOTH : five ? FIVE : FOUR;
    if (!page->results->all) view.n--;
    return view;
}

/* Lites by every step; of framing what differs by more than a little. Of a tower a few bands. */
static const struct ledger_rule LITES = {0, 4}, FRAMING = {0.05, 3}, EVERY_STEP = {0, 0};

static void ledger(struct page *page, const struct ordered *items, size_t n)
{
    struct ledger_row *rows = gw_alloc(page->arena, n, sizeof *rows);
    const bool all = page->results->all;
    size_t lites = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = items[i].element;
        rows[i] = gw_ledger_row(page, e, part_of(page, e));
        lites += e->kind == GW_LITE;
    }
    const size_t kept = gw_ledger_merge(page, rows, lites, all ? &EVERY_STEP : &LITES),
                 framing = gw_ledger_merge(page, rows + lites, n - lites, all ? &EVERY_STEP : &FRAMING);
    memmove(rows + kept, rows + lites, framing * sizeof *rows);
    const struct view view = view_for(page, rows, kept + framing);
    gw_view_list(page, "", &view, rows, kept + framing);
}

static void wall(struct page *page, const struct ordered *items, size_t n)
{
    const struct gw_element *e = items[0].element;
    gw_report_heading(
        page->report, 3,
        gw_format(page->arena, "Wall %s, building %s", e->wall, e->building ? e->building->name : "not known"));
    say_what_it_is(page, items, n);
    ledger(page, items, n);
    gw_page_how_found(page, e, "Given pressures stand there with their source.");
}

static void unknown_places(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    if (!t->no_offset && !t->no_sill && !t->no_wall) return;
    gw_report_line(
        page->report,
        gw_format(page->arena,
                  "Place unknown: %ld openings without an offset and %ld without a wall (taken in the edge zone), "
                  "%ld without a sill (taken at the top of the building).",
                  t->no_offset, t->no_wall, t->no_sill));
}

void gw_page_walls(struct page *page)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const struct ordered *items = gw_order_elements(page->arena, t);
    gw_report_section(page->report, GW_PART_DEMANDS, "Pressures by wall");
    gw_report_line(page->report,
                   gw_format(page->arena,
                             "Count in zone 4 and in zone 5, and pressures inward and outward: strength / "
                             "allowable-stress level. %s Transoms and anchors: their own height; what the roof line "
                             "cuts stands on both sides of it.",
                             page->results->all ? "Each figure is the worst of its row."
                                                : "Each figure is the worst of its row; a row may hold several steps "
                                                  "with height, which --all parts."));
    unknown_places(page);
    for (size_t i = 0, next; i < t->elements.n; i = next) {
        for (next = i + 1; next < t->elements.n && items[next].wall == items[i].wall;) next++;
        wall(page, items + i, next - i);
    }
}
