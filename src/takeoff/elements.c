/* Every element of a grid, strip by strip and class by class: its rectangle, its zone, its effective area. */
#include "takeoff_internal.h"

static const enum gw_kind KIND_OF[GW_SORT_COUNT] = {
    [GW_SORT_LITE] = GW_LITE,           [GW_SORT_MULLION] = GW_MULLION,     [GW_SORT_TRANSOM] = GW_TRANSOM,
    [GW_SORT_TRANSOM_SCREW] = GW_SCREW, [GW_SORT_MULLION_SCREW] = GW_SCREW, [GW_SORT_ANCHOR] = GW_ANCHOR,
};

static struct gw_element start(const struct gw_builder *b, enum gw_sort sort, size_t strip, size_t place_class,
                               const char *mark)
{
    const struct gw_room *room = b->room;
    const struct gw_grid_strip *s = &room->grid.layers[sort].strips[strip];
    const struct gw_class *c = &room->classes[gw_axis_of(sort)][place_class];
    return (struct gw_element){.wall = room->grid.wall,
                               .building = room->grid.building,
                               .kind = KIND_OF[sort],
                               .mark = room->mark ? room->mark : mark,
                               .columns = room->columns[gw_axis_of(sort)][place_class],
                               .component = GW_FIXED,
                               .width = c->x1 - c->x0,
                               .height = s->top - s->bottom,
                               .bottom = s->bottom,
                               .top = s->top,
                               .grid = &room->grid,
                               .lines = &room->grid.lines,
                               .sort = sort,
                               .strip = (unsigned)strip,
                               .place_class = (unsigned)place_class,
                               .elevation = GW_ABSENT,
                               .pane = GW_ABSENT,
                               .edge = GW_ABSENT,
                               .span = GW_ABSENT,
                               .parapet = s->parapet,
                               .place_unknown = room->place_unknown,
                               .height_unknown = room->height_unknown,
                               .zone = c->zone,
                               .corner_distance = c->corner_distance,
                               .roof_distance = c->roof_distance};
}

static long members_of(const struct gw_room *room, enum gw_sort sort, size_t place_class)
{
    const struct gw_grid_axis *axis = room->grid.layers[sort].axis;
    return (long)(axis->first[place_class + 1] - axis->first[place_class]);
}

static void add_lites(struct gw_builder *b, size_t strip)
{
    const struct gw_grid_layer *layer = &b->room->grid.layers[GW_SORT_LITE];
    const struct gw_row_line *row = &b->room->rows[layer->strips[strip].member];
    const struct gw_lite_type *type = row->type;
    for (size_t c = 0; c < layer->axis->n_classes; c++) {
        struct gw_element e = start(b, GW_SORT_LITE, strip, c, type ? type->name : "lite");
        e.lite = type ? type->name : NULL;
        e.component = type ? type->component : GW_FIXED;
        e.effective_area = e.width * e.height;
        e.pane = row->top - row->bottom;
        gw_group_add(b, &e, members_of(b->room, GW_SORT_LITE, c));
    }
}

static double member_area(const struct gw_builder *b, double span, double width)
{
    struct gw_engine engine;
    gw_engine_init(&engine, b->model->tables, NULL);
    return gw_wind_effective_area(span, width, &engine);
}

/* How many of a rising list lie below x, or not above it. */
static size_t count_up_to(const double *list, size_t n, double x, bool and_at)
{
    size_t low = 0, high = n;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (list[middle] < x || (and_at && list[middle] <= x)) low = middle + 1;
        else high = middle;
    }
    return low;
}

/* The most spans of one of the pieces of mullion that lie in [bottom, top]: a piece ends at its splices, and each
 * counts its own anchors, those at its ends too. A wall that names no splices has one at every anchor. */
static int spans_of_pieces(const struct gw_wall_lines *l, double bottom, double top)
{
    int most = 1;
    if (!l->n_splices) return most;
    const size_t first = count_up_to(l->splices, l->n_splices, bottom + GW_HAIR_M, true),
                 last = count_up_to(l->splices, l->n_splices, top - GW_HAIR_M, false);
    for (size_t piece = first; piece <= last; piece++) {
        const double low = piece ? l->splices[piece - 1] : l->bottom,
                     high = piece < l->n_splices ? l->splices[piece] : l->top;
        const int held = (int)(count_up_to(l->anchors, l->n_anchors, high + GW_HAIR_M, true) -
                               count_up_to(l->anchors, l->n_anchors, low - GW_HAIR_M, false));
        if (held - 1 > most) most = held - 1;
    }
    return most;
}

/* Cut at the roof line, a stretch keeps the span of the whole. */
static void add_mullions(struct gw_builder *b, size_t strip)
{
    const struct gw_room *room = b->room;
    const struct gw_grid_layer *layer = &room->grid.layers[GW_SORT_MULLION];
    const struct gw_stretch_line *stretch = &room->stretches[layer->strips[strip].member];
    for (size_t c = 0; c < layer->axis->n_classes; c++) {
        const struct gw_class *at = &room->classes[GW_AXIS_MULLIONS][c];
        struct gw_element e = start(b, GW_SORT_MULLION, strip, c, at->end ? "jamb" : "interior");
        e.span = stretch->top - stretch->bottom;
        e.spans = stretch->overhang ? 0 : spans_of_pieces(e.lines, stretch->bottom, stretch->top);
        e.overhang = stretch->overhang;
        e.corner = at->corner;
        e.meets = at->meets;
        e.effective_area = member_area(b, e.span, e.width);
        gw_group_add(b, &e, members_of(room, GW_SORT_MULLION, c));
    }
}

long gw_screws_on(double length, double spacing, double ends)
{
    const double gaps = (length - (gw_given(ends) ? ends : spacing)) / spacing;
    return 1 + (long)fmax(ceil(gaps - GW_HAIR), 0);
}

double gw_beyond_roof(const struct gw_grid_layer *layer, unsigned strip)
{
    const struct gw_grid_strip *s = &layer->strips[strip];
    if (!layer->cut || s->member != layer->cut_member) return 0;
    const struct gw_grid_strip *other = s->parapet ? s - 1 : s + 1;
    return other->top - other->bottom;
}

long gw_screws_of_vertical(const struct gw_grid_layer *layer, unsigned strip, double spacing)
{
    const struct gw_grid_strip *s = &layer->strips[strip];
    const double own = s->top - s->bottom, beyond = gw_beyond_roof(layer, strip), below = s->parapet ? beyond : own;
    if (!(beyond > 0)) return gw_screws_on(own, spacing, GW_ABSENT);
    const long all = gw_screws_on(own + beyond, spacing, GW_ABSENT), lower = gw_screws_on(below, spacing, GW_ABSENT),
               upper = lower < all ? all - lower : 1;
    if (s->parapet) return upper;
    return upper < all ? all - upper : 1;
}

/* Each carries its spacing times the width that its run carries. */
static void set_screw(struct gw_element *e, const struct gw_room *room, double width)
{
    e->width = width;
    e->height = room->screw_spacing;
    e->effective_area = e->width * e->height;
}

static void set_transom(struct gw_element *e, const struct gw_room *room, size_t level)
{
    const double *z = room->levels;
    bool head = level == room->n_rows;
    e->elevation = z[level];
    e->above = head ? 0 : z[level + 1] - z[level];
    e->below = level ? z[level] - z[level - 1] : 0;
    e->rests = head ? NULL : room->rows[level].type;
    e->under = level ? room->rows[level - 1].type : NULL;
}

static void add_transom_screws(struct gw_builder *b, size_t strip, size_t place_class)
{
    const struct gw_room *room = b->room;
    struct gw_element e = start(b, GW_SORT_TRANSOM_SCREW, strip, place_class, "horizontal");
    set_transom(&e, room, room->grid.layers[GW_SORT_TRANSOM].strips[strip].member);
    set_screw(&e, room, e.height);
    e.edge = room->classes[GW_AXIS_TRANSOM_SCREWS][place_class].widest;
    gw_group_add(b, &e, room->classes[GW_AXIS_TRANSOM_SCREWS][place_class].screws);
}

/* The screws of a zone follow its first transom. */
static void add_transoms(struct gw_builder *b, size_t strip)
{
    const struct gw_room *room = b->room;
    const struct gw_grid_axis *axis = &room->axes[GW_AXIS_TRANSOMS], *screws = &room->axes[GW_AXIS_TRANSOM_SCREWS];
    const size_t level = room->grid.layers[GW_SORT_TRANSOM].strips[strip].member;
    const char *mark = level == 0 ? "sill" : level == room->n_rows ? "head" : "intermediate";
    for (size_t c = 0; c < axis->n_classes; c++) {
        struct gw_element e = start(b, GW_SORT_TRANSOM, strip, c, mark);
        set_transom(&e, room, level);
        e.span = e.width;
        e.spans = 1;
        e.effective_area = member_area(b, e.span, e.height);
        gw_group_add(b, &e, members_of(room, GW_SORT_TRANSOM, c));
        const unsigned place = axis->members[axis->first[c]], zone = screws->class_of[place];
        if (screws->members[screws->first[zone]] == place) add_transom_screws(b, strip, zone);
    }
}

static void add_mullion_screws(struct gw_builder *b, size_t strip)
{
    const struct gw_room *room = b->room;
    for (size_t c = 0; c < room->axes[GW_AXIS_MULLION_SCREWS].n_classes; c++) {
        struct gw_element e = start(b, GW_SORT_MULLION_SCREW, strip, c, "vertical");
        const long a_run =
            gw_screws_of_vertical(&room->grid.layers[GW_SORT_MULLION_SCREW], (unsigned)strip, room->screw_spacing);
        set_screw(&e, room, e.width);
        gw_group_add(b, &e, a_run * members_of(room, GW_SORT_MULLION_SCREW, c));
    }
}

/* The span beside anchor a that gives the smaller effective area, which is the safe one. */
static double anchor_span(const struct gw_wall_lines *l, size_t a)
{
    double below = a ? l->anchors[a] - l->anchors[a - 1] : GW_ABSENT;
    double above = a + 1 < l->n_anchors ? l->anchors[a + 1] - l->anchors[a] : GW_ABSENT;
    double span = fmin(below, above);
    return gw_given(span) ? span : l->top - l->bottom;
}

/* Above the roof an anchor takes no less pressure than the mullions that it holds there: no larger area. */
static double parapet_anchor_area(const struct gw_builder *b, const struct gw_element *e)
{
    const struct gw_room *room = b->room;
    double area = e->effective_area;
    for (size_t i = 0; i < room->n_stretches; i++) {
        const struct gw_stretch_line *s = &room->stretches[i];
        if (gw_above(s->top, e->bottom) && gw_above(e->top, s->bottom))
            area = fmin(area, member_area(b, s->top - s->bottom, e->width));
    }
    return area;
}

static void add_anchors(struct gw_builder *b, size_t strip)
{
    const struct gw_room *room = b->room;
    bool tributary = b->model->project.options->anchor_area == GW_ANCHOR_TRIBUTARY;
    for (size_t c = 0; c < room->axes[GW_AXIS_MULLIONS].n_classes; c++) {
        const struct gw_class *at = &room->classes[GW_AXIS_MULLIONS][c];
        struct gw_element e = start(b, GW_SORT_ANCHOR, strip, c, at->end ? "jamb" : "interior");
        e.span = anchor_span(e.lines, room->grid.layers[GW_SORT_ANCHOR].strips[strip].member);
        e.elevation = e.lines->anchors[room->grid.layers[GW_SORT_ANCHOR].strips[strip].member];
        e.corner = at->corner;
        e.carries = e.lines->bearings[room->grid.layers[GW_SORT_ANCHOR].strips[strip].member].piece > 0
                        ? GW_CARRIES_DEAD_AND_WIND
                        : GW_CARRIES_WIND;
        e.meets = at->meets;
        e.effective_area = tributary ? e.width * e.height : member_area(b, e.span, e.width);
        if (e.parapet) e.effective_area = parapet_anchor_area(b, &e);
        gw_group_add(b, &e, members_of(room, GW_SORT_ANCHOR, c));
    }
}

/* Screws of transoms come with their transoms. */
void gw_room_elements(struct gw_builder *b)
{
    static const struct {
        enum gw_sort sort;
        void (*add)(struct gw_builder *, size_t strip);
    } steps[] = {{GW_SORT_LITE, add_lites},
                 {GW_SORT_MULLION, add_mullions},
                 {GW_SORT_TRANSOM, add_transoms},
                 {GW_SORT_MULLION_SCREW, add_mullion_screws},
                 {GW_SORT_ANCHOR, add_anchors}};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        for (size_t s = 0; s < b->room->grid.layers[steps[i].sort].n_strips; s++) steps[i].add(b, s);
}
