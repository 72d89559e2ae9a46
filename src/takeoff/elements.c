/* Every element of a grid: its rectangle, its zone, its effective area. */
#include "takeoff_internal.h"

static bool within(double distance, double limit)
{
    const double hair = 1e-6; /* m: an element that starts at the strip's edge lies outside it */
    return distance < limit - hair;
}

/* Distance of [x0, x1] to the nearest outside corner; absent where the wall has none. */
static double corner_distance(const struct gw_grid *g, double x0, double x1)
{
    double left = gw_given(g->left_corner) ? g->left_corner + x0 : GW_ABSENT;
    double right = gw_given(g->right_corner) ? g->right_corner + g->x[g->n_columns] - x1 : GW_ABSENT;
    return fmin(left, right); /* fmin leaves out an absent one */
}

/* Members that cross the strip's edge go by their larger part where the project asks for it. */
static int zone_of(const struct gw_builder *b, const struct gw_element *e, double x0, double x1)
{
    bool by_area = b->model->project.options->edge_zone == GW_EDGE_BY_AREA && e->kind != GW_LITE;
    double middle = (x0 + x1) / 2;
    double distance = by_area ? corner_distance(b->grid, middle, middle) : e->corner_distance;
    return gw_given(distance) && within(distance, b->grid->strip) ? 5 : 4;
}

static struct gw_element start(const struct gw_builder *b, enum gw_kind kind, const char *mark, double x0, double x1,
                               double bottom, double top)
{
    const struct gw_grid *g = b->grid;
    struct gw_element e = {.wall = g->wall,
                           .building = g->building,
                           .kind = kind,
                           .mark = g->mark ? g->mark : mark,
                           .component = GW_FIXED,
                           .width = x1 - x0,
                           .height = top - bottom,
                           .bottom = bottom,
                           .top = top,
                           .span = GW_ABSENT,
                           .pane = GW_ABSENT,
                           .parapet = bottom >= g->roof,
                           .place_unknown = g->place_unknown,
                           .corner_distance = corner_distance(g, x0, x1)};
    e.zone = zone_of(b, &e, x0, x1);
    return e;
}

static long column_number(const struct gw_grid *g, size_t i) { return g->mark ? 0 : (long)i + 1; }

static void add_lites(struct gw_builder *b, const struct gw_band *band)
{
    const struct gw_grid *g = b->grid;
    for (size_t i = 0; i < g->n_columns; i++) {
        struct gw_element e =
            start(b, GW_LITE, band->type ? band->type->name : "lite", g->x[i], g->x[i + 1], band->bottom, band->top);
        e.lite = band->type ? band->type->name : NULL;
        e.component = band->type ? band->type->component : GW_FIXED;
        e.effective_area = e.width * e.height;
        e.pane = band->pane;
        gw_group_add(b, &e, 1, column_number(g, i));
    }
}

struct strip {
    double x0, x1;
};

/* The width that vertical line i carries: half of each bay beside it. */
static struct strip carried(const struct gw_grid *g, size_t i)
{
    double x = g->x[i];
    return (struct strip){i ? (g->x[i - 1] + x) / 2 : x, i < g->n_columns ? (x + g->x[i + 1]) / 2 : x};
}

static double member_area(const struct gw_builder *b, double span, double width)
{
    struct gw_engine engine;
    gw_engine_init(&engine, b->model->tables, NULL);
    return gw_wind_effective_area(span, width, &engine);
}

/* Anchor spans in the piece of mullion that holds [bottom, top]: pieces end at splices. */
static int spans_of_piece(const struct gw_grid *g, double bottom, double top)
{
    if (!g->n_splices) return 1;
    double low = g->bottom, high = g->top;
    for (size_t i = 0; i < g->n_splices; i++) {
        if (g->splices[i] <= bottom) low = g->splices[i];
        if (g->splices[i] >= top && g->splices[i] < high) high = g->splices[i];
    }
    int held = 0;
    for (size_t i = 0; i < g->n_anchors; i++) held += g->anchors[i] >= low && g->anchors[i] <= high;
    return held > 2 ? held - 1 : 1;
}

/* The vertical at an end of a wall that is an outside corner also holds the other face. An opening has jambs of its
 * own. */
static bool at_corner(const struct gw_grid *g, size_t i)
{
    const double hair = 1e-6;
    return !g->mark && ((i == 0 && g->left_corner < hair) || (i == g->n_columns && g->right_corner < hair));
}

static void add_mullion_part(struct gw_builder *b, double bottom, double top, double span, bool overhang)
{
    const struct gw_grid *g = b->grid;
    for (size_t i = 0; i <= g->n_columns; i++) {
        struct strip s = carried(g, i);
        struct gw_element e =
            start(b, GW_MULLION, i == 0 || i == g->n_columns ? "jamb" : "interior", s.x0, s.x1, bottom, top);
        e.span = span;
        e.spans = overhang ? 0 : spans_of_piece(g, bottom, top);
        e.overhang = overhang;
        e.corner = at_corner(g, i);
        e.effective_area = member_area(b, e.span, e.width);
        gw_group_add(b, &e, 1, column_number(g, i));
    }
}

/* One stretch of every mullion, cut at the roof line; its span stays the member's own. */
static void add_mullion_span(struct gw_builder *b, double bottom, double top, bool overhang)
{
    const double roof = b->grid->roof, span = top - bottom;
    if (!(top > bottom)) return;
    if (bottom < roof && top > roof) {
        add_mullion_part(b, bottom, roof, span, overhang);
        add_mullion_part(b, roof, top, span, overhang);
    } else {
        add_mullion_part(b, bottom, top, span, overhang);
    }
}

static void add_mullions(struct gw_builder *b)
{
    const struct gw_grid *g = b->grid;
    add_mullion_span(b, g->bottom, g->anchors[0], true);
    for (size_t i = 1; i < g->n_anchors; i++) add_mullion_span(b, g->anchors[i - 1], g->anchors[i], false);
    add_mullion_span(b, g->anchors[g->n_anchors - 1], g->top, true);
}

/* Horizontal member at level k carries half of the row below and half of the row above. */
static struct strip carried_height(const struct gw_grid *g, size_t k)
{
    double z = g->levels[k];
    return (struct strip){k ? (g->levels[k - 1] + z) / 2 : z, k + 1 < g->n_levels ? (z + g->levels[k + 1]) / 2 : z};
}

static long screws_on(double length, double spacing)
{
    const double hair = 1e-9;
    return (long)ceil(length / spacing - hair);
}

/* Screws of a run: each carries its spacing times the run's tributary width. */
static void add_screws(struct gw_builder *b, const char *mark, const struct gw_element *run, double length,
                       double width, long column)
{
    struct gw_element e = *run;
    e.kind = GW_SCREW;
    e.mark = b->grid->mark ? b->grid->mark : mark;
    e.span = GW_ABSENT;
    e.spans = 0;
    e.overhang = false;
    e.width = width;
    e.height = b->grid->screw_spacing;
    e.effective_area = e.width * e.height;
    gw_group_add(b, &e, screws_on(length, b->grid->screw_spacing), column);
}

/* The lite type whose lower edge stands at that level. */
static const struct gw_lite_type *glass_on(const struct gw_grid *g, double level)
{
    const double hair = 1e-6;
    for (size_t i = 0; i < g->n_bands; i++)
        if (fabs(g->bands[i].bottom - level) < hair) return g->bands[i].type;
    return NULL;
}

/* The one whose upper edge is held there. */
static const struct gw_lite_type *glass_under(const struct gw_grid *g, double level)
{
    const double hair = 1e-6;
    for (size_t i = 0; i < g->n_bands; i++)
        if (fabs(g->bands[i].top - level) < hair) return g->bands[i].type;
    return NULL;
}

static void add_transom_part(struct gw_builder *b, size_t k, double bottom, double top)
{
    const struct gw_grid *g = b->grid;
    const char *mark = k == 0 ? "sill" : k + 1 == g->n_levels ? "head" : "intermediate";
    for (size_t i = 0; i < g->n_columns; i++) {
        struct gw_element e = start(b, GW_TRANSOM, mark, g->x[i], g->x[i + 1], bottom, top);
        e.above = k + 1 < g->n_levels ? g->levels[k + 1] - g->levels[k] : 0;
        e.below = k ? g->levels[k] - g->levels[k - 1] : 0;
        e.rests = glass_on(g, g->levels[k]);
        e.under = glass_under(g, g->levels[k]);
        e.span = e.width;
        e.spans = 1;
        e.effective_area = member_area(b, e.span, e.height);
        gw_group_add(b, &e, 1, column_number(g, i));
        add_screws(b, "horizontal", &e, e.width, e.height, column_number(g, i));
    }
}

static void add_transoms(struct gw_builder *b)
{
    const struct gw_grid *g = b->grid;
    for (size_t k = 0; k < g->n_levels; k++) {
        struct strip s = carried_height(g, k);
        if (s.x0 < g->roof && s.x1 > g->roof) {
            add_transom_part(b, k, s.x0, g->roof);
            add_transom_part(b, k, g->roof, s.x1);
        } else {
            add_transom_part(b, k, s.x0, s.x1);
        }
    }
}

static void add_vertical_screws(struct gw_builder *b, const struct gw_band *band)
{
    const struct gw_grid *g = b->grid;
    for (size_t i = 0; i <= g->n_columns; i++) {
        struct strip s = carried(g, i);
        struct gw_element run = start(b, GW_SCREW, "vertical", s.x0, s.x1, band->bottom, band->top);
        add_screws(b, "vertical", &run, run.height, run.width, column_number(g, i));
    }
}

/* The span beside anchor a that gives the smaller effective area, which is the safe one. */
static double anchor_span(const struct gw_grid *g, size_t a)
{
    double below = a ? g->anchors[a] - g->anchors[a - 1] : GW_ABSENT;
    double above = a + 1 < g->n_anchors ? g->anchors[a + 1] - g->anchors[a] : GW_ABSENT;
    double span = fmin(below, above);
    return gw_given(span) ? span : g->top - g->bottom;
}

static void add_anchor_part(struct gw_builder *b, size_t a, double bottom, double top)
{
    const struct gw_grid *g = b->grid;
    bool tributary = b->model->project.options->anchor_area == GW_ANCHOR_TRIBUTARY;
    for (size_t i = 0; i <= g->n_columns; i++) {
        struct strip s = carried(g, i);
        struct gw_element e =
            start(b, GW_ANCHOR, i == 0 || i == g->n_columns ? "jamb" : "interior", s.x0, s.x1, bottom, top);
        e.span = anchor_span(g, a);
        e.corner = at_corner(g, i);
        e.effective_area = tributary ? e.width * e.height : member_area(b, e.span, e.width);
        gw_group_add(b, &e, 1, column_number(g, i));
    }
}

static void add_anchors(struct gw_builder *b)
{
    const struct gw_grid *g = b->grid;
    for (size_t a = 0; a < g->n_anchors; a++) {
        double bottom = a ? (g->anchors[a - 1] + g->anchors[a]) / 2 : g->bottom;
        double top = a + 1 < g->n_anchors ? (g->anchors[a] + g->anchors[a + 1]) / 2 : g->top;
        if (bottom < g->roof && top > g->roof) {
            add_anchor_part(b, a, bottom, g->roof);
            add_anchor_part(b, a, g->roof, top);
        } else {
            add_anchor_part(b, a, bottom, top);
        }
    }
}

void gw_grid_elements(struct gw_builder *b)
{
    for (size_t i = 0; i < b->grid->n_bands; i++) add_lites(b, &b->grid->bands[i]);
    add_mullions(b);
    add_transoms(b);
    for (size_t i = 0; i < b->grid->n_bands; i++) add_vertical_screws(b, &b->grid->bands[i]);
    add_anchors(b);
}
