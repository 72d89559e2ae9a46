/* From a place as a person on a scaffold names it to the elements that stand there. */
#include "galeward/inspect.h"
#include "judge/judge_internal.h"
#include "judge/line.h"
#include "judge/sealed.h"
#include "judge/spot_load.h"

#include <string.h>

struct search {
    struct gw_ask *ask;
    struct gw_spot said; /* as it was asked for */
    enum gw_item_on on;
    int zone; /* 0: any */
    const struct gw_wall_grid *grid;
    struct gw_spot best;
    bool found, several;
    double most;           /* that the best one carries; absent: not weighed yet */
    double load;           /* that the one at hand carries; absent: not weighed */
    struct gw_spots *each; /* NULL: the best alone */
    struct gw_memo alike;  /* of them, where they are many */
};

struct gw_spot gw_spot_on(const char *wall)
{
    return (struct gw_spot){.wall = wall,
                            .column = GW_NO_INTEGER,
                            .story = GW_NO_INTEGER,
                            .row = GW_NO_INTEGER,
                            .line = GW_NO_INTEGER,
                            .edge = -1};
}

static bool is_said(int number) { return number != GW_NO_INTEGER; }

/* Of a count, counted from 0: [from, to). */
struct range {
    size_t from, to;
};

/* The one of that number, counted from `first`; all, where none is said. */
static struct range meant(int number, int first, size_t count)
{
    if (!is_said(number)) return (struct range){0, count};
    if (number < first || (size_t)(number - first) >= count) return (struct range){0, 0};
    return (struct range){(size_t)(number - first), (size_t)(number - first) + 1};
}

static struct range stories_meant(const struct search *s) { return meant(s->said.story, 1, s->grid->n_stories); }

/* A line that is said, and no column, means the two beside it. */
static struct range columns_meant(const struct search *s)
{
    const int line = s->said.line, n = (int)s->grid->n_columns;
    if (is_said(s->said.column) || !is_said(line)) return meant(s->said.column, 1, s->grid->n_columns);
    return line < 0 || line > n ? (struct range){0, 0}
                                : (struct range){(size_t)(line ? line - 1 : 0), (size_t)(line < n ? line + 1 : n)};
}

/* Parts and things --------------------------------------------------------------------------------------------------
 */

/* Of a member that the roof line cuts, the part that carries more. */
static const struct gw_element *part(const struct search *s, const struct gw_element *e)
{
    const struct gw_element *other = e ? gw_takeoff_other_part(s->ask->takeoff, e) : NULL;
    if (!other || (s->zone && other->zone != s->zone)) return e;
    return gw_carried(s->ask, other) > gw_carried(s->ask, e) * (1 + GW_HAIR) ? other : e;
}

static const struct gw_element *principal(const struct search *s, const struct gw_spot *c)
{
    switch (s->on) {
    case GW_ON_ANCHOR:
        return c->anchor;
    case GW_ON_MULLION:
    case GW_ON_HORIZONTAL:
    case GW_ON_MEMBER:
    case GW_ON_JOINT:
        return c->member;
    case GW_ON_SCREWS:
        return c->screws;
    default:
        return c->lite;
    }
}

static bool is_same_thing(const struct gw_spot *a, const struct gw_spot *b)
{
    return a->grid == b->grid && a->upright == b->upright && a->across == b->across && a->up == b->up;
}

/* What the only place carries is asked of nobody: it is weighed when a second one comes. */
static void weigh_first(struct search *s)
{
    if (!s->found || gw_given(s->most)) return;
    s->most = gw_spot_load(s->ask, s->on, principal(s, &s->best), &s->best);
    for (size_t i = 0; s->each && i < s->each->n; i++) s->each->items[i].load = s->most;
}

static void offer(struct search *s, struct gw_spot *c)
{
    const struct gw_element *e = principal(s, c);
    if (!e || (s->zone && e->zone != s->zone)) return;
    c->grid = s->grid;
    c->wall = s->grid->wall;
    weigh_first(s);
    s->load = s->found ? gw_spot_load(s->ask, s->on, e, c) : GW_ABSENT;
    if (s->each) gw_spots_add(s->each, &s->alike, s->ask->arena, s->on, &(struct gw_carrying){*c, s->load});
    if (s->found && !is_same_thing(c, &s->best)) s->several = true;
    if (s->found && !(s->load > s->most * (1 + GW_HAIR))) return;
    s->found = true;
    s->best = *c;
    s->most = s->load;
}

/* Lites and their edges ---------------------------------------------------------------------------------------------
 */

static bool is_member(enum gw_item_on on)
{
    return on == GW_ON_MEMBER || on == GW_ON_MULLION || on == GW_ON_HORIZONTAL;
}

static bool is_whole(enum gw_item_on on) { return on == GW_ON_LITE || on == GW_ON_CREW || on == GW_ON_WALL; }

static void name_thing(struct gw_spot *c, enum gw_item_on on, size_t column, size_t row)
{
    const bool whole = is_whole(on) || on == GW_ON_POCKET;
    c->upright = !whole && (c->edge == GW_EDGE_LEFT || c->edge == GW_EDGE_RIGHT);
    c->across = column + (!whole && c->edge == GW_EDGE_RIGHT);
    c->up = row + (!whole && c->edge == GW_EDGE_HEAD);
    /* an edge of a lite is its own: what lies on the other side of the member is another */
    if (on == GW_ON_EDGE || on == GW_ON_SEALANT) c->across = 2 * column + (c->edge == GW_EDGE_RIGHT);
    if (on == GW_ON_EDGE || on == GW_ON_SEALANT) c->up = 2 * row + (c->edge == GW_EDGE_HEAD);
}

static void offer_edge(struct search *s, size_t column, size_t row, int edge)
{
    const struct gw_takeoff *t = s->ask->takeoff;
    const struct gw_wall_grid *g = s->grid;
    const struct gw_grid_strip *at =
        &g->layers[GW_SORT_LITE]
             .strips[row + (g->layers[GW_SORT_LITE].cut && row > g->layers[GW_SORT_LITE].cut_member)];
    const size_t line = column + (edge == GW_EDGE_RIGHT), level = row + (edge == GW_EDGE_HEAD);
    const bool upright = edge == GW_EDGE_LEFT || edge == GW_EDGE_RIGHT;
    struct gw_spot c = {.column = (int)column + 1,
                        .story = at->story,
                        .row = at->row,
                        .line = upright ? (int)line : GW_NO_INTEGER,
                        .edge = edge};
    name_thing(&c, s->on, column, row);
    if (is_whole(s->on)) c.edge = s->said.edge;
    c.lite = part(s, gw_takeoff_member(t, g, GW_SORT_LITE, row, column));
    if (upright) {
        const double middle = (g->lines.levels[row] + g->lines.levels[row + 1]) / 2;
        c.screws = part(s, gw_takeoff_member(t, g, GW_SORT_MULLION_SCREW, row, line));
        c.member = part(s, gw_takeoff_held(t, g, GW_SORT_MULLION, line, middle));
        if (c.member && is_member(s->on)) c.up = g->layers[GW_SORT_MULLION].strips[c.member->strip].member;
    } else {
        c.screws = part(s, gw_takeoff_member(t, g, GW_SORT_TRANSOM_SCREW, level, column));
        c.member = part(s, gw_takeoff_member(t, g, GW_SORT_TRANSOM, level, column));
    }
    offer(s, &c);
}

static bool edge_is_meant(const struct search *s, size_t column, int edge)
{
    const struct gw_spot *said = &s->said;
    if (s->on == GW_ON_HORIZONTAL && edge != GW_EDGE_HEAD && edge != GW_EDGE_SILL) return false;
    if (said->edge >= 0 && said->edge != edge) return false;
    if (!is_said(said->line)) return true;
    return (edge == GW_EDGE_LEFT && said->line == (int)column) ||
           (edge == GW_EDGE_RIGHT && said->line == (int)column + 1);
}

static void search_row(struct search *s, size_t row)
{
    const bool pocket = s->on == GW_ON_POCKET, whole = is_whole(s->on);
    const struct range columns = columns_meant(s);
    for (size_t c = columns.from; c < columns.to; c++) {
        if (pocket || whole) offer_edge(s, c, row, !pocket && s->said.edge >= 0 ? s->said.edge : GW_EDGE_SILL);
        for (int edge = GW_EDGE_HEAD; !pocket && !whole && edge <= GW_EDGE_RIGHT; edge++)
            if (edge_is_meant(s, c, edge) && (s->on != GW_ON_SEALANT || gw_has_sealant(s->ask, s->grid, c, row, edge)))
                offer_edge(s, c, row, edge);
    }
}

static void search_lites(struct search *s)
{
    const unsigned *rows_below = s->grid->rows_below;
    const struct range stories = stories_meant(s);
    for (size_t story = stories.from; story < stories.to; story++) {
        const struct range rows = meant(s->said.row, 1, rows_below[story + 1] - rows_below[story]);
        for (size_t row = rows.from; row < rows.to; row++) search_row(s, rows_below[story] + row);
    }
}

/* What stands on vertical lines -------------------------------------------------------------------------------------
 */

/* The row in that story at a height. */
static int row_at(const struct gw_wall_grid *g, int story, double height)
{
    size_t row = g->rows_below[story - 1];
    while (row + 1 < g->rows_below[story] && g->lines.levels[row + 1] < height) row++;
    return (int)(row - g->rows_below[story - 1]) + 1;
}

static void offer_upright(struct search *s, size_t line, size_t up, int story, double height)
{
    const struct gw_takeoff *t = s->ask->takeoff;
    struct gw_spot c = {.column = s->said.column,
                        .story = story,
                        .row = s->said.row,
                        .line = (int)line,
                        .edge = s->said.edge,
                        .upright = true,
                        .across = line,
                        .up = up};
    c.member = part(s, gw_takeoff_held(t, s->grid, GW_SORT_MULLION, line, height));
    if (c.member && c.member->overhang && !is_said(c.row)) c.row = row_at(s->grid, story, height);
    for (int side = 0; side < 2 && s->on == GW_ON_MULLION; side++)
        if ((int)line + side > 0) c.beside[side] = gw_takeoff_at(t, s->grid->wall, (int)line + side, story, 1);
    if (s->on == GW_ON_ANCHOR) c.anchor = part(s, gw_takeoff_member(t, s->grid, GW_SORT_ANCHOR, up, line));
    offer(s, &c);
}

/* A column that is said, and no line, means the two beside it. */
static struct range lines_meant(const struct search *s)
{
    const size_t n = s->grid->n_columns + 1;
    const struct range column = meant(s->said.column, 1, s->grid->n_columns);
    if (is_said(s->said.line) || !is_said(s->said.column)) return meant(s->said.line, 0, n);
    return (struct range){column.from, column.from < column.to ? column.to + 1 : column.to};
}

static bool line_is_meant(const struct search *s, size_t line)
{
    const struct gw_spot *said = &s->said;
    if (!is_said(said->column)) return true;
    return (said->edge != GW_EDGE_RIGHT && said->column == (int)line + 1) ||
           (said->edge != GW_EDGE_LEFT && said->column == (int)line);
}

/* From a floor up to the next one. */
static void story_span(const struct search *s, size_t story, double *bottom, double *top)
{
    const struct gw_wall_lines *l = &s->grid->lines;
    *bottom = story < l->n_floors ? l->floors[story] : l->bottom;
    *top = story + 1 < l->n_floors ? l->floors[story + 1] : l->top;
}

/* A row that is said parts the stretches of a story. False: that story has no such row. */
static bool row_span(const struct search *s, size_t story, double *bottom, double *top)
{
    const struct gw_wall_grid *g = s->grid;
    if (!is_said(s->said.row) || s->on == GW_ON_JOINT || s->on == GW_ON_ANCHOR) return true;
    const size_t row = g->rows_below[story] + (size_t)s->said.row - 1;
    if (s->said.row < 1 || row >= g->rows_below[story + 1]) return false;
    *bottom = fmax(*bottom, g->lines.levels[row]);
    *top = fmin(*top, g->lines.levels[row + 1]);
    return true;
}

static void search_line(struct search *s, size_t line, size_t story, double bottom, double top)
{
    const struct gw_wall_lines *l = &s->grid->lines;
    const struct gw_grid_layer *mullions = &s->grid->layers[GW_SORT_MULLION];
    const double hair = GW_HAIR_M;
    if (s->on == GW_ON_JOINT) {
        size_t n;
        const struct gw_mullion_joint *joints = gw_joints_of(&n, s->ask, l);
        for (size_t i = 0; i < n; i++)
            if (joints[i].at > bottom - hair && joints[i].at < top - hair)
                offer_upright(s, line, i, (int)story + 1, joints[i].at);
        return;
    }
    if (s->on == GW_ON_ANCHOR) {
        for (size_t i = 0; i < l->n_anchors; i++)
            if (l->anchors[i] > bottom - hair && (l->anchors[i] < top - hair || story + 1 == s->grid->n_stories))
                offer_upright(s, line, i, (int)story + 1, l->anchors[i]);
        return;
    }
    for (size_t i = 0; i < mullions->n_strips; i++) {
        const struct gw_grid_strip *at = &mullions->strips[i];
        const double from = fmax(at->bottom, bottom), to = fmin(at->top, top);
        if (to > from + hair) offer_upright(s, line, at->member, (int)story + 1, (from + to) / 2);
    }
}

static void search_lines(struct search *s)
{
    double bottom, top;
    const struct range stories = stories_meant(s), lines = lines_meant(s);
    for (size_t story = stories.from; story < stories.to; story++) {
        story_span(s, story, &bottom, &top);
        if (!row_span(s, story, &bottom, &top)) continue;
        for (size_t line = lines.from; line < lines.to; line++)
            if (line_is_meant(s, line)) search_line(s, line, story, bottom, top);
    }
}

static void search_grid(struct search *s, const struct gw_wall_grid *grid)
{
    const bool across = s->said.edge == GW_EDGE_HEAD || s->said.edge == GW_EDGE_SILL;
    s->grid = grid;
    const bool upright = s->on == GW_ON_MEMBER && is_said(s->said.line) && !across;
    if (upright || s->on == GW_ON_ANCHOR || s->on == GW_ON_JOINT || s->on == GW_ON_MULLION) search_lines(s);
    else search_lites(s);
}

/* Why not -----------------------------------------------------------------------------------------------------------
 */

static struct gw_message unknown_wall(const struct gw_ask *ask, const char *wall)
{
    struct gw_nearest nearest;
    const struct gw_takeoff *t = ask->takeoff;
    if (!wall) return GW_PLAINLY("the wall is not said: on which wall was it read");
    gw_nearest_start(&nearest, wall);
    for (size_t i = 0; i < t->grids.n; i++) gw_nearest_offer(&nearest, t->grids.items[i]->wall);
    return GW_SAY(ask->arena, "no wall is named '{}'{}", gw_of_text(gw_safe(ask->arena, wall)),
                  gw_of_text(gw_nearest_question(ask->arena, &nearest)));
}

static bool is_beyond(struct gw_message *why, const struct gw_ask *ask, const struct gw_wall_grid *g, int number,
                      const char *format, long from, long to)
{
    if (!is_said(number) || (number >= from && number <= to)) return false;
    *why = GW_SAY(ask->arena, format, gw_of_text(g->wall), gw_of_count(number), gw_of_count(to));
    return true;
}

static size_t most_rows(const struct gw_wall_grid *g, int story)
{
    const struct range stories = meant(story, 1, g->n_stories);
    size_t most = 0;
    for (size_t i = stories.from; i < stories.to; i++)
        most = most > g->rows_below[i + 1] - g->rows_below[i] ? most : g->rows_below[i + 1] - g->rows_below[i];
    return most;
}

/* A number that the wall does not have. */
static bool has_not(struct gw_message *why, const struct search *s, const struct gw_wall_grid *g)
{
    const struct gw_ask *ask = s->ask;
    const struct gw_spot *said = &s->said;
    return is_beyond(why, ask, g, said->column,
                     "{} has no column {}: it has {}, counted from the left seen from outside", 1,
                     (long)g->n_columns) ||
           is_beyond(why, ask, g, said->story, "{} has no story {}: it has {}, counted from its lowest floor", 1,
                     (long)g->n_stories) ||
           is_beyond(why, ask, g, said->row, "{} has no row {} there: at most {} in a story, counted from below", 1,
                     (long)most_rows(g, said->story)) ||
           is_beyond(why, ask, g, said->line, "{} has no line {}: they run from 0 at the left end to {}", 0,
                     (long)g->n_columns);
}

static struct gw_message none_found(const struct search *s)
{
    struct gw_arena *arena = s->ask->arena;
    const struct gw_value wall = gw_of_text(s->said.wall);
    if (s->zone) return GW_SAY(arena, "{} has no such place in zone {}", wall, gw_of_count(s->zone));
    if (s->on == GW_ON_JOINT) return GW_SAY(arena, "no joint between pieces of mullion there on {}", wall);
    if (s->on == GW_ON_ANCHOR) return GW_SAY(arena, "no anchor there on {}", wall);
    if (s->on == GW_ON_SEALANT) return GW_SAY(arena, "no joint of sealant there: inside {} glass meets metal", wall);
    if (is_said(s->said.line) && is_said(s->said.column))
        return GW_SAY(arena, "line {} of {} is not beside column {}, at that edge", gw_of_count(s->said.line), wall,
                      gw_of_count(s->said.column));
    return GW_SAY(arena, "no such place on {}", wall);
}

/* Finding -----------------------------------------------------------------------------------------------------------
 */

/* An opening of a schedule stands in no column and story. */
static void unplace(struct gw_spot *spot)
{
    const struct gw_spot none = gw_spot_on(NULL);
    spot->column = none.column;
    spot->story = none.story;
    spot->row = none.row;
    spot->line = none.line;
    spot->grid = NULL;
}

static bool finish(struct search *s, struct gw_spot *out, struct gw_message *why)
{
    if (!s->found || !s->best.grid) {
        if (!gw_said(why)) *why = none_found(s);
        return false;
    }
    const bool opening = s->best.grid->opening, anywhere = s->on == GW_ON_WALL || s->on == GW_ON_CREW;
    *out = s->best;
    out->worst = s->several || opening;
    if (anywhere) {
        out->column = s->said.column;
        out->story = s->said.story;
        out->row = s->said.row;
        out->line = s->said.line;
        out->edge = s->said.edge;
        out->worst = opening;
    }
    if (opening) unplace(out);
    for (size_t i = 0; s->each && i < s->each->n; i++)
        if (s->each->items[i].spot.grid->opening) unplace(&s->each->items[i].spot);
    return true;
}

/* Walls by their index; elevations of a schedule hold many grids. */
static bool search_wall(struct search *s, struct gw_message *why)
{
    const struct gw_takeoff *t = s->ask->takeoff;
    const struct gw_wall_grid *wall = gw_takeoff_wall(t, s->said.wall);
    if (wall) {
        if (has_not(why, s, wall)) return false;
        search_grid(s, wall);
        return true;
    }
    bool named = false;
    for (size_t i = t->n_walls; i < t->grids.n; i++) {
        if (strcmp(t->grids.items[i]->wall, s->said.wall) != 0) continue;
        if (!has_not(why, s, t->grids.items[i])) search_grid(s, t->grids.items[i]);
        named = true;
    }
    if (!named) *why = unknown_wall(s->ask, s->said.wall);
    return named;
}

bool gw_spot_find(struct gw_spot *spot, struct gw_message *why, struct gw_ask *ask, enum gw_item_on on)
{
    return gw_spot_each(NULL, spot, why, ask, on);
}

bool gw_spot_each(struct gw_spots *each, struct gw_spot *spot, struct gw_message *why, struct gw_ask *ask,
                  enum gw_item_on on)
{
    const bool anywhere = on == GW_ON_WALL || on == GW_ON_CREW;
    struct search s = {.ask = ask, .said = *spot, .on = on, .each = anywhere ? NULL : each};
    if (each) *each = (struct gw_spots){0};
    const struct gw_takeoff *t = ask->takeoff;
    *why = GW_PLAINLY(NULL);
    const bool any = t->n_elevations == 1 || on == GW_ON_CREW; /* a crew's work is not of one wall */
    if (!s.said.wall && any && t->grids.n) s.said.wall = t->grids.items[0]->wall;
    if (!s.said.wall) {
        *why = unknown_wall(ask, NULL);
        return false;
    }
    if (on == GW_ON_POCKET && s.said.edge == GW_EDGE_HEAD) {
        *why = GW_PLAINLY("a pocket stands on the sill of its lite, not at the head: of which lite is it");
        return false;
    }
    return search_wall(&s, why) && finish(&s, spot, why);
}

bool gw_spot_worst(struct gw_spot *out, struct gw_message *why, struct gw_ask *ask, const char *wall, int zone,
                   enum gw_item_on on)
{
    return gw_spot_each_of(NULL, out, why, ask, wall, zone, on);
}

bool gw_spot_each_of(struct gw_spots *each, struct gw_spot *out, struct gw_message *why, struct gw_ask *ask,
                     const char *wall, int zone, enum gw_item_on on)
{
    const bool anywhere = on == GW_ON_WALL || on == GW_ON_CREW;
    struct search s = {.ask = ask, .said = gw_spot_on(wall), .on = on, .zone = zone, .each = anywhere ? NULL : each};
    const struct gw_takeoff *t = ask->takeoff;
    if (each) *each = (struct gw_spots){0};
    *why = GW_PLAINLY(NULL);
    if (wall && !search_wall(&s, why)) return false;
    for (size_t i = 0; i < t->grids.n && !wall; i++) search_grid(&s, t->grids.items[i]);
    if (!wall) s.said.wall = "the project";
    return finish(&s, out, why);
}
