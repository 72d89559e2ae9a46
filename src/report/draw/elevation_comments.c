/* Comments of a review where they are of: the shape of the mark is the consequence, the number that of the comment.
 * What is of a whole wall, or of no place, is listed beside. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { FLAGS = 8, LISTS = 4, WORDS = 150 };
static const enum sheet_mark MARK_OF[] = {[GW_IT_FAILS] = MARK_STOP,
                                          [GW_IT_IS_NOT_SHOWN] = MARK_ASK,
                                          [GW_IT_DIFFERS] = MARK_IN_HAND,
                                          [GW_A_REMARK] = MARK_SETTLED,
                                          [GW_CONSEQUENCES] = MARK_NONE};

/* What a comment is of, as seen from one wall. */
enum standing { OF_NO_PLACE, OF_ANOTHER_WALL, OF_THE_WALL, AT_A_PLACE };
struct comments {
    const struct comments_picture *of;
    struct gw_arena *arena;
    struct sheet text; /* of names */
    enum gw_units shown;
    struct elevation_flag flags[FLAGS];
    size_t n_flags;
    struct gw_text whole, elsewhere, nowhere, more;
    long here;
};

/* Places ----------------------------------------------------------------------------------------------------------- */

/* "A-501: east, zone 5": the place that a sheet is of. */
static const char *after_sheet(const char *said)
{
    for (const char *at = strstr(said, ": "); at; at = strstr(said, ": ")) said = at + 2;
    return said;
}

/* Of "east" or "east, zone 5": the grid, and the zone or 0; NULL. */
static const struct gw_wall_grid *wall_of(const struct gw_takeoff *t, const char *place, int *zone)
{
    static const char between[] = ", zone ";
    for (size_t i = 0; i < t->n_walls; i++) {
        const struct gw_wall_grid *g = t->grids.items[i];
        const size_t n = strlen(g->wall);
        if (strncmp(place, g->wall, n) != 0) continue;
        *zone = 0;
        if (!place[n]) return g;
        if (strncmp(place + n, between, sizeof between - 1) != 0) continue;
        *zone = (int)strtol(place + n + sizeof between - 1, NULL, 10);
        return g;
    }
    return NULL;
}

/* Clear of the flags that stand: a tenth of the wall. */
static bool is_apart(const struct comments *c, double x, double y)
{
    const struct gw_wall_grid *g = c->of->grid;
    for (size_t i = 0; i < c->n_flags; i++)
        if (hypot(c->flags[i].x - x, c->flags[i].y - y) < g->x[g->n_columns] / 10) return false;
    return true;
}

/* The first piece of an element that is clear of the flags; else its first of all, where none was found before. */
static bool take_piece(struct comments *c, const struct gw_element *e, struct elevation_flag *flag)
{
    struct gw_pieces pieces = gw_takeoff_pieces(c->of->results->answer->takeoff, e);
    struct gw_rectangle r;
    while (gw_pieces_next(&pieces, &r)) {
        const double x = r.x + r.width / 2, y = r.y + r.height / 2;
        const bool apart = r.placed && is_apart(c, x, y);
        if (!r.placed || (flag->placed && !apart)) continue;
        flag->placed = true, flag->x = x, flag->y = y;
        if (apart) return true;
    }
    return false;
}

static bool take_zone(struct comments *c, int zone, struct elevation_flag *flag)
{
    const struct gw_takeoff *t = c->of->results->answer->takeoff;
    const struct gw_wall_grid *g = c->of->grid;
    for (size_t i = g->first_element; i < g->first_element + g->n_elements; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_LITE && e->zone == zone && take_piece(c, e, flag)) return true;
    }
    return flag->placed;
}

static enum standing stand_at(struct comments *c, const char *said, struct elevation_flag *flag, bool *apart)
{
    const struct gw_takeoff *t = c->of->results->answer->takeoff;
    const char *place = after_sheet(said);
    const struct gw_element *e = gw_takeoff_find(t, place);
    int zone;
    if (e && e->grid) {
        if (e->grid != c->of->grid) return OF_ANOTHER_WALL;
        *apart = take_piece(c, e, flag);
        return AT_A_PLACE;
    }
    const struct gw_wall_grid *g = wall_of(t, place, &zone);
    if (!g) return OF_NO_PLACE;
    if (g != c->of->grid) return OF_ANOTHER_WALL;
    if (!zone) return OF_THE_WALL;
    *apart = take_zone(c, zone, flag);
    return flag->placed ? AT_A_PLACE : OF_THE_WALL;
}

/* By its places, else by where it says it is, else by what it is of: the nearest to a place on this wall. */
static enum standing standing_of(struct comments *c, const struct gw_comment *comment, struct elevation_flag *flag)
{
    enum standing best = OF_NO_PLACE;
    bool apart = false;
    for (size_t i = 0; i < comment->places.n && !apart; i++) {
        const enum standing here = stand_at(c, comment->places.items[i], flag, &apart);
        best = here > best ? here : best;
    }
    if (!comment->places.n) best = stand_at(c, gw_message_text(c->arena, &comment->where, c->shown), flag, &apart);
    return best == OF_NO_PLACE ? stand_at(c, comment->subject, flag, &apart) : best;
}

/* Words ------------------------------------------------------------------------------------------------------------ */

/* What somebody wrote, no longer than there is room for. The page has it whole. */
static const char *in_short(struct comments *c, const struct gw_message *said)
{
    const char *text = gw_safe(c->arena, gw_message_text(c->arena, said, c->shown));
    size_t used = 0;
    if (strlen(text) <= WORDS) return text;
    for (unsigned long code; used < WORDS;) {
        const size_t next = gw_utf8_read(text + used, strlen(text + used), &code);
        used += next ? next : 1;
    }
    return gw_format(c->arena, "%.*s (more on the page)", (int)used, text);
}

/* "screw_spacing": as it is said. */
static const char *item_of(struct comments *c, const char *item)
{
    char *words = gw_strdup(c->arena, item);
    for (char *at = words; *at; at++)
        if (*at == '_') *at = ' ';
    return words;
}

static const char *name_of(struct comments *c, const char *name)
{
    return gw_sheet_name(&c->text, gw_safe(c->arena, name));
}

static void describe(struct comments *c, const struct gw_comment *comment, struct elevation_flag *flag)
{
    const bool many = comment->places.n > 1;
    flag->number = comment->number;
    flag->mark = MARK_OF[comment->consequence];
    flag->first = gw_format(c->arena, "%s: %s, %s", gw_consequence_name(comment->consequence),
                            item_of(c, comment->item), name_of(c, comment->subject));
    flag->second = gw_format(c->arena, "%ssubmitted %s%s%s",
                             many ? gw_format(c->arena, "one of %zu such groups; ", comment->places.n) : "",
                             in_short(c, &comment->submitted), gw_said(&comment->needed) ? "; needed " : "",
                             gw_said(&comment->needed) ? in_short(c, &comment->needed) : "");
}

static void list(struct comments *c, struct gw_text *out, const struct gw_comment *comment, bool bare)
{
    gw_text_addf(out, "%s%d", out->length ? (bare ? ", " : "; ") : "", comment->number);
    if (!bare)
        gw_text_addf(out, " %s: %s, %s", gw_consequence_name(comment->consequence), item_of(c, comment->item),
                     name_of(c, comment->subject));
}

/* In the order of the comments: the gravest first, so that they have the flags. */
static void gather(struct comments *c)
{
    struct gw_text *texts[] = {&c->whole, &c->elsewhere, &c->nowhere, &c->more};
    for (size_t i = 0; i < LISTS; i++) gw_text_init(texts[i], c->arena);
    for (size_t i = 0; i < c->of->review->comments.n; i++) {
        const struct gw_comment *comment = &c->of->review->comments.items[i];
        struct elevation_flag flag = {.placed = false};
        if (comment->status == GW_COMMENT_CLOSED) continue;
        const enum standing standing = standing_of(c, comment, &flag);
        c->here += standing == AT_A_PLACE;
        if (standing == AT_A_PLACE && c->n_flags < FLAGS) {
            describe(c, comment, &flag);
            c->flags[c->n_flags++] = flag;
            continue;
        }
        list(c,
             texts[standing == OF_THE_WALL       ? 0
                   : standing == OF_ANOTHER_WALL ? 1
                   : standing == OF_NO_PLACE     ? 2
                                                 : 3],
             comment, standing == OF_ANOTHER_WALL || standing == AT_A_PLACE);
    }
}

static size_t beside(const struct comments *c, const char *lines[LISTS])
{
    size_t n = 0;
    if (c->more.length) lines[n++] = gw_format(c->arena, "More comments have places here: %s.", c->more.at);
    if (c->whole.length) lines[n++] = gw_format(c->arena, "Of the wall as a whole: %s.", c->whole.at);
    if (c->nowhere.length) lines[n++] = gw_format(c->arena, "Without a place on a wall: %s.", c->nowhere.at);
    if (c->elsewhere.length) lines[n++] = gw_format(c->arena, "On other walls: %s.", c->elsewhere.at);
    return n;
}

static const char *described(const struct comments *c, const char *const *lines, size_t n)
{
    struct gw_text out;
    const struct gw_wall_grid *g = c->of->grid;
    gw_text_init(&out, c->arena);
    gw_text_addf(&out, "Elevation of wall %s, %s, with the comments of the review: %ld have a place on it.", g->wall,
                 gw_elevation_size(c->arena, g), c->here);
    for (size_t i = 0; i < n; i++) gw_text_addf(&out, " %s", lines[i]);
    return out.at;
}

enum gw_status gw_draw_elevation_comments(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                          struct gw_engine *engine)
{
    struct comments c = {
        .of = of, .arena = canvas->arena, .shown = shown, .text = {.arena = canvas->arena, .shown = shown}};
    const char *lines[LISTS];
    (void)engine;
    gather(&c);
    const size_t n = beside(&c, lines);
    const struct elevation e = {
        .takeoff = c.of->results->answer->takeoff,
        .grid = c.of->grid,
        .title = gw_format(canvas->arena, "Wall %s: comments", name_of(&c, c.of->grid->wall)),
        .second = gw_project_line(canvas->arena, c.of->results),
        .caption =
            gw_format(canvas->arena, "Comments on submittal %s: %ld %s a place here",
                      name_of(&c, c.of->review->submittal->submittal->number), c.here, c.here == 1 ? "has" : "have"),
        .note = "Square with a cross: fails. Diamond: not shown. Triangle: differs. Circle: remark. One place of each.",
        .described = described(&c, lines, n),
        .key = "Comments",
        .flags = c.flags,
        .n_flags = c.n_flags,
        .lines = lines,
        .n_lines = n};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}

/* A wall without any has no picture, unless no wall has one: then the last shows what is of no place. */
static bool has_places(const struct comments_picture *of, struct gw_arena *arena)
{
    struct comments c = {.of = of, .arena = arena, .text = {.arena = arena}};
    gather(&c);
    return c.here > 0;
}

void gw_pictures_of_review(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                           const struct gw_review *review)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    *out = (struct gw_pictures){.n = 0};
    for (size_t i = 0; i < t->n_walls; i++) {
        struct comments_picture *kept = gw_alloc(arena, 1, sizeof *kept);
        *kept = (struct comments_picture){results, review, t->grids.items[i]};
        const bool last = i + 1 == t->n_walls && !out->n;
        if (!last && !has_places(kept, arena)) continue;
        const char *title = gw_format(arena, "Wall %s: comments of the review", kept->grid->wall);
        gw_picture_add(out, arena, gw_format(arena, "comments:%s", gw_picture_word(arena, kept->grid->wall)),
                       &(struct gw_figure){title, title, gw_draw_elevation_comments, kept});
    }
}
