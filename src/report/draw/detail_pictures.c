/* Which sections of pockets, joints and weeps a result has, and which of them a page shows. */
#include "report/draw/pictures.h"
#include "report/page.h"

#include <string.h>

static void add_pocket(struct gw_pictures *out, struct gw_arena *arena, struct lite_picture of)
{
    struct lite_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    const char *own = of.of.candidate->name;
    *kept = of;
    const char *title = gw_format(arena, "%s: the edge of %s", own, of.lite->name);
    gw_picture_add(out, arena,
                   gw_format(arena, "pocket:%s:%s", gw_picture_word(arena, of.lite->name), gw_picture_word(arena, own)),
                   &(struct gw_figure){title, title, gw_draw_pocket, kept});
}

/* Of each candidate each lite type that stands anywhere. */
static void add_pockets(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_answer *answer = results->answer;
    for (size_t i = 0; i < answer->model->project.lites.n; i++) {
        const struct gw_lite_type *lite = &answer->model->project.lites.items[i];
        if (!gw_lite_with_most_suction(answer->takeoff, lite)) continue;
        for (size_t c = 0; c < answer->judgement.summaries.n; c++)
            add_pocket(out, arena,
                       (struct lite_picture){{results, answer->judgement.summaries.items[c].candidate}, lite});
    }
}

typedef enum gw_status (*draw_function)(struct gw_canvas *, const void *, enum gw_units, struct gw_engine *);

static void add_detail(struct gw_pictures *out, struct gw_arena *arena, const struct wall_picture *of, const char *what,
                       const char *called, draw_function draw)
{
    struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = *of;
    const char *wall = gw_picture_word(arena, of->grid->wall), *own = gw_picture_word(arena, of->candidate->name);
    const char *title = gw_format(arena, "Wall %s: %s of %s", of->grid->wall, called, of->candidate->name);
    gw_picture_add(out, arena, gw_format(arena, "%s:%s:%s", what, wall, own),
                   &(struct gw_figure){title, title, draw, kept});
}

/* Of each wall and candidate. */
static void add_details(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                        const char *what, const char *called, draw_function draw)
{
    const struct gw_answer *answer = results->answer;
    for (size_t i = 0; i < answer->takeoff->n_walls; i++)
        for (size_t c = 0; c < answer->judgement.summaries.n; c++)
            add_detail(out, arena,
                       &(struct wall_picture){results, answer->takeoff->grids.items[i],
                                              answer->judgement.summaries.items[c].candidate, false, NULL},
                       what, called, draw);
}

void gw_pictures_of_details(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    add_pockets(out, arena, results);
    add_details(out, arena, results, "joint", "joint", gw_draw_joint);
    add_details(out, arena, results, "weep", "way of the water", gw_draw_weep);
}

/* Pages ------------------------------------------------------------------------------------------------------------ */

static bool states_pocket(const struct gw_system *s) { return s->drift || s->silicone; }
static bool states_joint(const struct gw_system *s) { return s->stack_joint != NULL; }
static bool states_drainage(const struct gw_system *s) { return s->drainage != NULL; }

static const struct {
    const char *what, *checks[4];
    bool (*states)(const struct gw_system *system);
} DETAILS[] = {{"pocket", {"pocket", "seismic_glass", "silicone", "seismic_silicone"}, states_pocket},
               {"joint", {"movement", NULL}, states_joint},
               {"weep", {NULL}, states_drainage}};

static bool fails(const struct gw_judgement *j, const struct gw_system *candidate, const char *const checks[4])
{
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        for (size_t k = 0; k < 4 && checks[k]; k++)
            if (f->candidate == candidate && f->verdict == GW_FAIL && strcmp(f->demand->check->id, checks[k]) == 0)
                return true;
    }
    return false;
}

/* The first of its kind of that candidate. */
static const struct gw_picture *first_of(struct page *page, const char *what, const struct gw_system *candidate)
{
    const struct gw_pictures *all = &page->results->pictures;
    const char *own = gw_format(page->arena, ":%s", gw_picture_word(page->arena, candidate->name));
    const size_t length = strlen(own), kind = strlen(what);
    for (size_t i = 0; i < all->n; i++) {
        const char *name = all->items[i].name;
        const size_t n = strlen(name);
        if (strncmp(name, what, kind) == 0 && name[kind] == ':' && n > length && strcmp(name + n - length, own) == 0)
            return &all->items[i];
    }
    return NULL;
}

void gw_page_details(struct page *page, const struct gw_system *candidate)
{
    enum { FEW = 3 };
    const struct gw_judgement *j = &page->results->answer->judgement;
    for (size_t i = 0; page->report->pictures && i < sizeof DETAILS / sizeof *DETAILS; i++) {
        const bool here = j->summaries.n <= FEW ? DETAILS[i].states(candidate) : fails(j, candidate, DETAILS[i].checks);
        const struct gw_picture *found = here ? first_of(page, DETAILS[i].what, candidate) : NULL;
        if (found) gw_report_figure(page->report, &found->figure);
    }
}

/* What a sheet of readings measures of them. */
static bool is_read(const struct gw_inspection *in, const char *what, const struct gw_wall_grid *grid)
{
    static const enum gw_item_id pocket[] = {GW_ITEM_glass_bite, GW_ITEM_edge_clearance, GW_ITEM_face_clearance,
                                             GW_ITEM_glass_thickness},
                                 joint[] = {GW_ITEM_joint_width, GW_ITEM_splice_engagement, GW_ITEM_joint_width,
                                            GW_ITEM_joint_width},
                                 weep[] = {GW_ITEM_weep_count, GW_ITEM_weep_length, GW_ITEM_weep_offset,
                                           GW_ITEM_end_dam_height};
    const enum gw_item_id *of = *what == 'p' ? pocket : *what == 'j' ? joint : weep;
    for (size_t i = 0; i < in->rows.n; i++)
        for (size_t k = 0; k < 4; k++)
            if (in->rows.items[i].item->id == of[k] && (!grid || in->rows.items[i].spot.grid == grid)) return true;
    return false;
}

void gw_pictures_of_hung(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                         const struct gw_inspection *in)
{
    const struct gw_answer *answer = results->answer;
    for (size_t i = 0; is_read(in, "pocket", NULL) && i < answer->model->project.lites.n; i++) {
        const struct gw_lite_type *lite = &answer->model->project.lites.items[i];
        if (gw_lite_with_most_suction(answer->takeoff, lite))
            add_pocket(out, arena, (struct lite_picture){{results, in->system}, lite});
    }
    for (size_t i = 0; i < answer->takeoff->n_walls; i++) {
        const struct wall_picture of = {results, answer->takeoff->grids.items[i], in->system, false, NULL};
        if (is_read(in, "joint", of.grid)) add_detail(out, arena, &of, "joint", "joint", gw_draw_joint);
        if (is_read(in, "weep", of.grid)) add_detail(out, arena, &of, "weep", "way of the water", gw_draw_weep);
    }
}
