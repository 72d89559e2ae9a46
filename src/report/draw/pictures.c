#include "report/draw/pictures.h"
#include "report/draw/heights.h"
#include "report/page.h"

#include <ctype.h>
#include <string.h>

const char *gw_picture_word(struct gw_arena *arena, const char *name)
{
    enum { MOST = 24 };
    struct gw_text out;
    bool between = false;
    gw_text_init(&out, arena);
    for (; *name && out.length < MOST; name++) {
        const char c = (char)tolower((unsigned char)*name);
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (plain && between && out.length) gw_text_add(&out, "-");
        if (plain) gw_text_bytes(&out, &c, 1);
        between = !plain;
    }
    return out.length ? out.at : "unnamed";
}

void gw_picture_add(struct gw_pictures *pictures, struct gw_arena *arena, const char *name,
                    const struct gw_figure *figure)
{
    pictures->items = gw_grow(arena, pictures->items, pictures->n, &pictures->capacity, sizeof *pictures->items);
    pictures->items[pictures->n++] = (struct gw_picture){name, *figure};
}

static void add_wall(struct gw_pictures *out, struct gw_arena *arena, const struct wall_picture *of)
{
    struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    const char *wall = gw_picture_word(arena, of->grid->wall);
    *kept = *of;
    if (of->candidate) {
        const char *name = gw_format(arena, "elevation:%s:%s", wall, gw_picture_word(arena, of->candidate->name));
        const char *title =
            gw_format(arena, "Wall %s: where %s answers what is asked", of->grid->wall, of->candidate->name);
        gw_picture_add(out, arena, name, &(struct gw_figure){title, title, gw_draw_elevation_check, kept});
        return;
    }
    const char *way = of->inward ? "inward" : "outward";
    gw_picture_add(out, arena, gw_format(arena, "elevation:%s:%s", wall, way),
                   &(struct gw_figure){gw_format(arena, "Wall %s: %s pressure on its lites", of->grid->wall, way),
                                       gw_format(arena, "wall %s by its %s pressures", of->grid->wall, way),
                                       gw_draw_elevation_demand, kept});
}

static void add_heights(struct gw_pictures *out, struct gw_arena *arena, const struct wall_picture *of)
{
    struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = *of;
    const char *title = gw_format(arena, "Wall %s: pressure on its lites against height", of->grid->wall);
    gw_picture_add(out, arena, gw_format(arena, "heights:%s", gw_picture_word(arena, of->grid->wall)),
                   &(struct gw_figure){title, title, gw_draw_heights, kept});
}

static void add_use(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                    const struct gw_system *candidate)
{
    struct candidate_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = (struct candidate_picture){results, candidate};
    const char *title = gw_format(arena, "%s: use by check", candidate->name);
    gw_picture_add(out, arena, gw_format(arena, "use:%s", gw_picture_word(arena, candidate->name)),
                   &(struct gw_figure){title, title, gw_draw_use, kept});
}

const char *gw_project_line(struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_info *project = results->answer->model->project.project;
    return gw_format(arena, "%s%s%s.", project->name, project->number ? ", " : "",
                     project->number ? project->number : "");
}

void gw_page_picture(struct page *page, const struct gw_pictures *pictures, const char *name)
{
    const struct gw_picture *found = page->report->pictures ? gw_picture_named(pictures, name) : NULL;
    if (found) gw_report_figure(page->report, &found->figure);
}

void gw_pictures_of(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_answer *answer = results->answer;
    const struct gw_takeoff *takeoff = answer->takeoff;
    *out = (struct gw_pictures){.n = 0};
    for (size_t c = 0; c < answer->judgement.summaries.n; c++)
        for (size_t i = 0; i < takeoff->n_walls; i++)
            add_wall(out, arena,
                     &(struct wall_picture){results, takeoff->grids.items[i],
                                            answer->judgement.summaries.items[c].candidate, false});
    for (size_t c = 0; c < answer->judgement.summaries.n; c++)
        add_use(out, arena, results, answer->judgement.summaries.items[c].candidate);
    for (size_t i = 0; i < takeoff->n_walls; i++) {
        for (int inward = 0; inward < 2; inward++)
            add_wall(out, arena, &(struct wall_picture){results, takeoff->grids.items[i], NULL, inward});
        add_heights(out, arena, &(struct wall_picture){results, takeoff->grids.items[i], NULL, false});
    }
}

const struct gw_picture *gw_picture_named(const struct gw_pictures *pictures, const char *name)
{
    const size_t length = strlen(name);
    for (size_t i = 0; i < pictures->n; i++) {
        const char *own = pictures->items[i].name;
        if (strncmp(own, name, length) == 0 && (own[length] == '\0' || own[length] == ':')) return &pictures->items[i];
    }
    return NULL;
}
