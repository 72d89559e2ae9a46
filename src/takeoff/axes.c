/* The places along a grid and their classes: what is alike in width and zone is alike in every strip. */
#include "takeoff_internal.h"

#include <string.h>

/* An element that starts at the strip's edge lies outside it. */
static bool within(double distance, double limit) { return distance < limit - GW_HAIR_M; }

/* Distance of [x0, x1] to the nearest outside corner; absent where the wall has none. */
static double corner_distance(const struct gw_wall_grid *g, double x0, double x1)
{
    double left = gw_given(g->left_corner) ? g->left_corner + x0 : GW_ABSENT;
    double right = gw_given(g->right_corner) ? g->right_corner + g->x[g->n_columns] - x1 : GW_ABSENT;
    return fmin(left, right); /* fmin leaves out an absent one */
}

double gw_line_from(const struct gw_wall_grid *g, size_t line)
{
    if (line) return (g->x[line - 1] + g->x[line]) / 2;
    return g->goes_on_left ? g->x[0] - (g->x[1] - g->x[0]) / 2 : g->x[0];
}

double gw_line_to(const struct gw_wall_grid *g, size_t line)
{
    const size_t last = g->n_columns;
    if (line < last) return (g->x[line] + g->x[line + 1]) / 2;
    return g->goes_on_right ? g->x[last] + (g->x[last] - g->x[last - 1]) / 2 : g->x[last];
}

/* The vertical at an end of a wall that is an outside corner also holds the other face. An opening has jambs of its
 * own. */
static bool at_corner(const struct gw_room *room, size_t line)
{
    const struct gw_wall_grid *g = &room->grid;
    return !room->mark &&
           ((line == 0 && g->left_corner < GW_HAIR_M) || (line == g->n_columns && g->right_corner < GW_HAIR_M));
}

/* Members that cross an edge go by their larger part where the project asks for it. */
static double counted_distance(const struct gw_wall_grid *g, const struct gw_class *c, bool by_area)
{
    const double middle = (c->x0 + c->x1) / 2;
    return by_area ? corner_distance(g, middle, middle) : c->corner_distance;
}

static bool is_framing(enum gw_axis_name name) { return name == GW_AXIS_TRANSOMS || name == GW_AXIS_MULLIONS; }

static struct gw_class class_at(const struct gw_room *room, enum gw_axis_name name, size_t i, bool by_area)
{
    const struct gw_wall_grid *g = &room->grid;
    bool lines = room->axes[name].lines;
    struct gw_class c = {.x0 = lines ? gw_line_from(g, i) : g->x[i], .x1 = lines ? gw_line_to(g, i) : g->x[i + 1]};
    c.widest = c.x1 - c.x0;
    c.corner_distance = corner_distance(g, c.x0, c.x1);
    c.roof_distance = counted_distance(g, &c, by_area && name != GW_AXIS_LITES);
    c.zone = gw_given(c.roof_distance) && within(c.roof_distance, g->strip) ? 5 : 4;
    c.roof_corner = is_framing(name) && gw_given(c.roof_distance) && within(c.roof_distance, g->roof_corner);
    c.end = name == GW_AXIS_MULLIONS && (i == 0 || i == g->n_columns);
    c.corner = name == GW_AXIS_MULLIONS && at_corner(room, i);
    c.meets = c.corner ? (i ? g->right_meets : g->left_meets) : NULL;
    if (!lines) c.screws = gw_screws_on(c.x1 - c.x0, room->screw_spacing, GW_ABSENT);
    return c;
}

/* Screws of a horizontal carry the height beside them, whatever the width of the column. */
static long long width_of(const struct gw_class *c, enum gw_axis_name name)
{
    return name == GW_AXIS_TRANSOM_SCREWS ? 0 : gw_micrometers(c->x1 - c->x0);
}

struct alike {
    const struct gw_class *classes, *c;
    enum gw_axis_name name;
};

static bool same_class(const void *context, size_t item)
{
    const struct alike *a = context;
    const struct gw_class *o = &a->classes[item], *c = a->c;
    if (o->meets || c->meets) return false; /* each has its own other face */
    return o->zone == c->zone && o->end == c->end && o->corner == c->corner && o->roof_corner == c->roof_corner &&
           width_of(o, a->name) == width_of(c, a->name);
}

static void take_class(struct gw_class *all, const struct gw_class *c)
{
    if (gw_given(c->corner_distance) && !(all->corner_distance <= c->corner_distance))
        all->corner_distance = c->corner_distance;
    if (gw_given(c->roof_distance) && !(all->roof_distance <= c->roof_distance)) all->roof_distance = c->roof_distance;
    all->widest = fmax(all->widest, c->widest);
    all->screws += c->screws;
}

static void find_classes(struct gw_room *room, struct gw_builder *b, enum gw_axis_name name)
{
    struct gw_grid_axis *axis = &room->axes[name];
    bool by_area = b->model->project.options->edge_zone == GW_EDGE_BY_AREA;
    axis->n_classes = 0;
    gw_index_reset(&b->classes, b->arena, axis->n_places);
    for (size_t i = 0; i < axis->n_places; i++) {
        const struct gw_class c = class_at(room, name, i, by_area);
        const struct alike alike = {room->classes[name], &c, name};
        const unsigned hash = gw_hash_number(gw_hash_number(7, width_of(&c, name)),
                                             c.zone * 8 + c.end * 4 + c.corner * 2 + c.roof_corner);
        size_t found;
        if (gw_index_find(&found, &b->classes, hash, same_class, &alike)) {
            take_class(&room->classes[name][found], &c);
        } else {
            found = axis->n_classes++;
            room->classes[name][found] = c;
            gw_index_add(&b->classes, b->arena, hash, found);
        }
        room->class_of[name][i] = (unsigned)found;
    }
}

static void sort_members(struct gw_room *room, enum gw_axis_name name)
{
    const struct gw_grid_axis *axis = &room->axes[name];
    unsigned *first = room->first[name];
    memset(first, 0, (axis->n_classes + 1) * sizeof *first);
    for (size_t i = 0; i < axis->n_places; i++) first[axis->class_of[i] + 1]++;
    for (size_t c = 0; c < axis->n_classes; c++) first[c + 1] += first[c];
    for (size_t i = 0; i < axis->n_places; i++) room->members[name][first[axis->class_of[i]]++] = (unsigned)i;
    for (size_t c = axis->n_classes; c > 0; c--) first[c] = first[c - 1];
    first[0] = 0;
}

/* "1 to 2, 23 to 24": a spreadsheet would read 1-2 as a day. */
static const char *columns_text(const struct gw_grid_axis *axis, size_t c, struct gw_arena *arena)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    for (unsigned i = axis->first[c], next; i < axis->first[c + 1]; i = next) {
        for (next = i + 1; next < axis->first[c + 1] && axis->members[next] == axis->members[next - 1] + 1;) next++;
        gw_text_addf(&text, "%s%u", text.length ? ", " : "", axis->members[i] + 1);
        if (next > i + 1) gw_text_addf(&text, " to %u", axis->members[next - 1] + 1);
    }
    return text.at;
}

void gw_room_axes(struct gw_room *room, struct gw_builder *b)
{
    for (int i = 0; i < GW_AXIS_COUNT; i++) {
        const enum gw_axis_name name = (enum gw_axis_name)i;
        find_classes(room, b, name);
        sort_members(room, name);
        for (size_t c = 0; c < room->axes[name].n_classes; c++)
            room->columns[name][c] = room->mark ? "" : columns_text(&room->axes[name], c, b->arena);
    }
}
