/* Where the inspection of a wall begins: the places that carry most, with what is measured there. */
#include "galeward/inspection.h"
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <string.h>

enum { FLAGS = 8, FLAGS_ON_PAGE = 6, NAMED = 3 }; /* a page has every item in its tables besides */

struct beginning {
    const struct sheet_picture *of;
    struct gw_arena *arena;
    struct elevation_flag flags[FLAGS];
    const char *places[FLAGS];
    struct gw_text items[FLAGS];
    long n_items[FLAGS];
    size_t n, most;
    long more; /* places without a flag */
};

static size_t flag_at(struct beginning *b, const struct gw_sheet_place *place, double x, double y)
{
    size_t i = 0;
    while (i < b->n && strcmp(b->places[i], place->place) != 0) i++;
    if (i < b->n || b->n == b->most) return i;
    b->places[i] = place->place;
    b->flags[i] = (struct elevation_flag){.placed = true, .x = x, .y = y, .mark = MARK_NONE};
    gw_text_init(&b->items[i], b->arena);
    b->n++;
    return i;
}

static void gather(struct beginning *b)
{
    const struct gw_inspection_sheet *sheet = b->of->sheet;
    for (size_t i = 0; i < sheet->items.n; i++) {
        const struct gw_sheet_place *place = &sheet->items.items[i].most;
        double x, y;
        if (place->spot.grid != b->of->grid || !place->place || !gw_elevation_spot(b->of->grid, &place->spot, &x, &y))
            continue;
        const size_t at = flag_at(b, place, x, y);
        if (at == b->most) b->more++;
        else if (b->n_items[at]++ < NAMED)
            gw_text_addf(&b->items[at], "%s%s", b->items[at].length ? "; " : "",
                         gw_item_kinds[sheet->items.items[i].item->id].title);
    }
    for (size_t i = 0; i < b->n; i++) {
        if (b->n_items[i] > NAMED) gw_text_addf(&b->items[i], "; and %ld more", b->n_items[i] - NAMED);
        b->flags[i].first = b->items[i].at;
        b->flags[i].second = b->places[i];
    }
}

enum gw_status gw_draw_elevation_sheet(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                       struct gw_engine *engine)
{
    struct beginning b = {.of = of, .arena = canvas->arena, .most = canvas->on_page ? FLAGS_ON_PAGE : FLAGS};
    const struct gw_info *project = b.of->results->answer->model->project.project;
    (void)engine;
    gather(&b);
    const char *more =
        b.more ? gw_format(canvas->arena, "%ld more items begin at other places: the tables name them.", b.more) : NULL;
    const struct elevation e = {
        .takeoff = b.of->results->answer->takeoff,
        .grid = b.of->grid,
        .title = gw_format(canvas->arena, "Wall %s: where to begin", gw_safe(canvas->arena, b.of->grid->wall)),
        .second = gw_format(canvas->arena, "%s%s%s.", project->name, project->number ? ", " : "",
                            project->number ? project->number : ""),
        .caption = gw_format(canvas->arena, "Where each item of %s carries most", b.of->sheet->system->name),
        .note = "The tables say the limit there, and how many others to look at.",
        .described = gw_format(canvas->arena, "Elevation of wall %s, %s, with the places at which to begin.",
                               b.of->grid->wall, gw_elevation_size(canvas->arena, b.of->grid)),
        .key = "",
        .flags = b.flags,
        .n_flags = b.n,
        .lines = &more,
        .n_lines = more != NULL};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}

static bool has_items(const struct gw_inspection_sheet *sheet, const struct gw_wall_grid *grid)
{
    for (size_t i = 0; i < sheet->items.n; i++)
        if (sheet->items.items[i].most.place && sheet->items.items[i].most.spot.grid == grid) return true;
    return false;
}

void gw_pictures_of_sheet(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                          const struct gw_inspection_sheet *sheet)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    *out = (struct gw_pictures){.n = 0};
    for (size_t i = 0; i < t->n_walls; i++) {
        struct sheet_picture *kept = gw_alloc(arena, 1, sizeof *kept);
        *kept = (struct sheet_picture){results, sheet, t->grids.items[i]};
        if (!has_items(sheet, kept->grid)) continue;
        const char *title = gw_format(arena, "Wall %s: where to begin", kept->grid->wall);
        gw_picture_add(out, arena, gw_format(arena, "begin:%s", gw_picture_word(arena, kept->grid->wall)),
                       &(struct gw_figure){title, title, gw_draw_elevation_sheet, kept});
    }
}
