/* From what a person calls a place to the elements there. */
#include "takeoff_internal.h"

#include <string.h>

enum { NO_KIND = -1 };

struct selecting {
    struct gw_selection *out;
    const struct gw_takeoff *takeoff;
    struct gw_arena *arena;
    size_t capacity;
};

static void select_one(struct selecting *s, const struct gw_element *e)
{
    struct gw_selection *out = s->out;
    if (!e) return;
    for (size_t i = 0; i < out->elements.n; i++)
        if (out->elements.items[i] == e) return;
    out->elements.items =
        gw_grow(s->arena, out->elements.items, out->elements.n, &s->capacity, sizeof *out->elements.items);
    out->elements.items[out->elements.n++] = e;
}

static int kind_named(const char *name)
{
    for (int kind = 0; kind < GW_KIND_COUNT; kind++)
        if (strcmp(gw_kind_names[kind], name) == 0) return kind;
    return NO_KIND;
}

/* Cuts `text` at its last colon; NULL: it has none. */
static char *cut_last(char *text)
{
    char *colon = strrchr(text, ':');
    if (!colon) return NULL;
    *colon = '\0';
    return colon + 1;
}

/* Takes ":KIND" off the end of `text`; lites where it names none. */
static enum gw_kind take_kind(char *text)
{
    char *colon = strrchr(text, ':');
    const int kind = colon ? kind_named(colon + 1) : NO_KIND;
    if (kind == NO_KIND) return GW_LITE;
    *colon = '\0';
    return (enum gw_kind)kind;
}

/* Places ----------------------------------------------------------------------------------------------------------- */

/* A whole number above zero; 0: it is none. */
static int number(const char *text)
{
    enum { MOST = 100000 };
    int value = 0;
    for (const char *at = text; *at; at++) {
        if (*at < '0' || *at > '9' || value > MOST) return 0;
        value = 10 * value + (*at - '0');
    }
    return value;
}

static void select_row(struct selecting *s, const char *wall, const int at[2], int row, enum gw_kind kind)
{
    static const enum gw_edge across[] = {GW_EDGE_SILL, GW_EDGE_HEAD}, along[] = {GW_EDGE_LEFT, GW_EDGE_RIGHT};
    const struct gw_takeoff *t = s->takeoff;
    const struct gw_wall_grid *g = gw_takeoff_wall(t, wall);
    const size_t level = g->rows_below[at[1] - 1] + (size_t)row - 1;
    const double middle = (g->lines.levels[level] + g->lines.levels[level + 1]) / 2;
    const struct gw_element *lite = gw_takeoff_at(t, wall, at[0], at[1], row);
    if (kind == GW_LITE) {
        select_one(s, lite);
        select_one(s, gw_takeoff_other_part(t, lite));
    }
    for (size_t i = 0; i < 2; i++) {
        const bool screws = kind == GW_SCREW;
        if (screws || kind == GW_TRANSOM) select_one(s, gw_takeoff_edge(t, wall, at[0], at[1], row, across[i], screws));
        if (screws || kind == GW_MULLION) select_one(s, gw_takeoff_edge(t, wall, at[0], at[1], row, along[i], screws));
        if (kind == GW_ANCHOR) select_one(s, gw_takeoff_held(t, g, GW_SORT_ANCHOR, (size_t)at[0] - 1 + i, middle));
    }
}

static void no_wall(struct selecting *s, const char *wall)
{
    struct gw_text names;
    gw_text_init(&names, s->arena);
    for (size_t i = 0; i < s->takeoff->n_walls; i++)
        gw_text_addf(&names, "%s%s", i ? ", " : "", s->takeoff->grids.items[i]->wall);
    s->out->missing = GW_SAY(s->arena, "there is no wall '{}'; there are: {}", gw_of_text(gw_strdup(s->arena, wall)),
                             gw_of_text(names.at));
}

static void select_place(struct selecting *s, const char *wall, const int at[2], enum gw_kind kind)
{
    const struct gw_wall_grid *g = gw_takeoff_wall(s->takeoff, wall);
    if (!g) {
        no_wall(s, wall);
        return;
    }
    if (!gw_takeoff_at(s->takeoff, wall, at[0], at[1], 1)) {
        s->out->missing = GW_SAY(s->arena, "wall '{}' has columns 1 to {} from the left and stories 1 to {} from below",
                                 gw_of_text(g->wall), gw_of_count((long)g->n_columns), gw_of_count((long)g->n_stories));
        return;
    }
    for (int row = 1; gw_takeoff_at(s->takeoff, wall, at[0], at[1], row); row++) select_row(s, wall, at, row, kind);
}

/* False: it is no place. */
static bool is_place(struct selecting *s, char *text, enum gw_kind kind)
{
    const char *story = cut_last(text), *column = story ? cut_last(text) : NULL;
    if (!column) return false;
    const int at[2] = {number(column), number(story)};
    if (at[0] && at[1]) select_place(s, text, at, kind);
    else
        s->out->missing =
            GW_PLAINLY("a place is WALL:COLUMN:STORY, both counted from 1, and :KIND after it, as in east:3:2:screw");
    return true;
}

/* Marks ------------------------------------------------------------------------------------------------------------ */

static void select_mark(struct selecting *s, const char *mark, enum gw_kind kind)
{
    const struct gw_takeoff *t = s->takeoff;
    for (size_t i = t->n_wall_elements; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == kind && e->mark && strcmp(e->mark, mark) == 0) select_one(s, e);
    }
}

void gw_takeoff_select(struct gw_selection *out, const struct gw_takeoff *takeoff, struct gw_arena *arena,
                       const char *what)
{
    struct selecting s = {out, takeoff, arena, 0};
    char *text = gw_strdup(arena, what);
    *out = (struct gw_selection){.missing = {0}};
    select_one(&s, gw_takeoff_find(takeoff, what));
    if (!out->elements.n) select_mark(&s, what, GW_LITE); /* a mark may have colons of its own */
    if (out->elements.n) return;
    const enum gw_kind kind = take_kind(text);
    select_mark(&s, text, kind);
    if (!out->elements.n && !is_place(&s, text, kind))
        out->missing =
            GW_SAY(arena, "there is no element, and no opening of mark, '{}'", gw_of_text(gw_strdup(arena, what)));
}
