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

bool gw_has_plate_screws(const struct gw_system *candidate)
{
    return candidate->screw && candidate->system->glazing != GW_SILICONE;
}

static const char *screws_title(struct gw_arena *arena, const struct screws_picture *of)
{
    return of->candidate
               ? gw_format(arena, "Wall %s: screws of the pressure plate, %s", of->grid->wall, of->candidate->name)
               : gw_format(arena, "Wall %s: screws of the pressure plate as read", of->grid->wall);
}

void gw_picture_add_screws(struct gw_pictures *out, struct gw_arena *arena, const struct screws_picture *of)
{
    struct screws_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    const char *wall = gw_picture_word(arena, of->grid->wall);
    *kept = *of;
    const char *title = screws_title(arena, of);
    const char *name = of->candidate
                           ? gw_format(arena, "screws:%s:%s", wall, gw_picture_word(arena, of->candidate->name))
                           : gw_format(arena, "screws:%s", wall);
    gw_picture_add(out, arena, name, &(struct gw_figure){title, title, gw_draw_screws, kept});
}

static void add_screws(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                       const struct gw_system *candidate)
{
    const struct gw_takeoff *t = results->answer->takeoff;
    for (size_t i = 0; i < t->n_walls && gw_has_plate_screws(candidate); i++)
        gw_picture_add_screws(
            out, arena,
            &(struct screws_picture){.results = results, .grid = t->grids.items[i], .candidate = candidate});
}

const struct gw_finding *gw_worst_of_screws(const struct gw_results *results, const struct gw_system *candidate)
{
    const struct gw_judgement *j = &results->answer->judgement;
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        const bool own = f->candidate == candidate && strcmp(f->demand->check->id, "screw") == 0 && f->demand->element;
        if (own && gw_graver(f, worst)) worst = f;
    }
    return gw_has_plate_screws(candidate) ? worst : NULL;
}

void gw_screws_figure(struct gw_figure *out, struct gw_arena *arena, const struct gw_results *results,
                      const struct gw_finding *of, const char *also)
{
    struct screws_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = (struct screws_picture){results, of->demand->element->grid, of->candidate, NULL, NULL, also};
    const char *title = screws_title(arena, kept);
    *out = (struct gw_figure){title, title, gw_draw_screws, kept};
}

void gw_page_screws(struct page *page, const struct gw_system *candidate)
{
    const struct gw_finding *worst = gw_worst_of_screws(page->results, candidate);
    if (!worst) return;
    gw_page_picture(page, &page->results->pictures,
                    gw_format(page->arena, "screws:%s:%s", gw_picture_word(page->arena, worst->demand->element->wall),
                              gw_picture_word(page->arena, candidate->name)));
}

static void add_key_plan(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    struct wall_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = (struct wall_picture){.results = results};
    gw_picture_add(out, arena, "plan",
                   &(struct gw_figure){"Key plan: walls and their edge zones", "walls from above with their edge zones",
                                       gw_draw_key_plan, kept});
}

static void add_use(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                    const struct gw_system *candidate)
{
    struct candidate_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    *kept = (struct candidate_picture){results, candidate};
    const char *title = gw_format(arena, "%s: use by check", candidate->name);
    gw_picture_add(out, arena, gw_format(arena, "use:%s", gw_picture_word(arena, candidate->name)),
                   &(struct gw_figure){title, title, gw_draw_use, kept});
    const char *sections = gw_format(arena, "%s: sections of mullion and transom", candidate->name);
    const bool drawn =
        (candidate->mullion && candidate->mullion->tube) || (candidate->transom && candidate->transom->tube);
    if (drawn)
        gw_picture_add(out, arena, gw_format(arena, "section:%s", gw_picture_word(arena, candidate->name)),
                       &(struct gw_figure){sections, sections, gw_draw_section, kept});
}

const char *gw_project_line(struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_info *project = results->answer->model->project.project;
    return gw_format(arena, "%s%s%s.", project->name, project->number ? ", " : "",
                     project->number ? project->number : "");
}

/* On the page already. Two drawings of one thing share what they are of. */
static bool stands(const struct page *page, const struct gw_figure *figure)
{
    for (size_t i = 0; i < page->report->n; i++) {
        const struct gw_block *b = &page->report->blocks[i];
        if (b->kind == GW_FIGURE && b->figure.of == figure->of && b->figure.draw == figure->draw) return true;
    }
    return false;
}

void gw_page_picture(struct page *page, const struct gw_pictures *pictures, const char *name)
{
    const struct gw_picture *found = page->report->pictures ? gw_picture_named(pictures, name) : NULL;
    if (found && !stands(page, &found->figure)) gw_report_figure(page->report, &found->figure);
}

static void add_plan(struct gw_pictures *out, struct gw_arena *arena, const struct plan_picture *of)
{
    struct plan_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    const char *own = of->plan->candidate->name;
    *kept = *of;
    const char *title = of->grid ? gw_format(arena, "Wall %s: what is chosen of %s", of->grid->wall, own)
                                 : gw_format(arena, "%s: cost by place", own);
    const char *name =
        of->grid ? gw_format(arena, "plan:%s:%s", gw_picture_word(arena, of->grid->wall), gw_picture_word(arena, own))
                 : gw_format(arena, "cost:%s", gw_picture_word(arena, own));
    gw_picture_add(out, arena, name, &(struct gw_figure){title, title, of->grid ? gw_draw_plan : gw_draw_cost, kept});
}

static bool chooses_on(const struct plan_picture *of)
{
    const struct gw_plan *plan = of->plan;
    const size_t types = of->results->answer->model->project.lites.n;
    for (size_t i = 0; i < plan->places->n; i++) {
        bool any = plan->choices[i].options != 0;
        for (size_t k = 0; k < types; k++) any = any || plan->choices[i].lites[k];
        if (any && plan->places->items[i].elevation == of->grid->elevation) return true;
    }
    return false;
}

/* On walls of the project where anything is chosen; those of a schedule have no elevation. */
static void add_plans(struct gw_pictures *out, struct gw_arena *arena, struct plan_picture of)
{
    const struct gw_takeoff *takeoff = of.results->answer->takeoff;
    for (size_t i = 0; i < takeoff->n_walls; i++) {
        of.grid = takeoff->grids.items[i];
        if (chooses_on(&of)) add_plan(out, arena, &of);
    }
}

void gw_pictures_of_bids(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                         const struct gw_bids *bids)
{
    *out = (struct gw_pictures){.n = 0};
    for (size_t i = 0; i < bids->items.n; i++) {
        const struct gw_bid *bid = &bids->items.items[i];
        const struct plan_picture of = {results, NULL, &bid->plan, bid, bids->by_mass};
        if (!gw_given(bid->cost)) continue;
        add_plans(out, arena, of);
        if (!bids->by_mass) add_plan(out, arena, &of);
    }
    for (size_t i = 0; i < results->pictures.n; i++)
        gw_picture_add(out, arena, results->pictures.items[i].name, &results->pictures.items[i].figure);
}

/* With which plan candidates were judged. */
static void add_planned(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_plans *plans = results->answer->plans;
    const struct gw_model *model = results->answer->model;
    for (size_t c = 0; plans && c < model->systems.n; c++)
        if (plans->items[c].chosen)
            add_plans(out, arena, (struct plan_picture){.results = results, .plan = &plans->items[c].plan});
}

void gw_page_plan_pictures(struct page *page, const struct gw_pictures *pictures, const struct gw_system *candidate)
{
    enum { WALLS = 3 };
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const char *own = gw_picture_word(page->arena, candidate->name);
    for (size_t i = 0; i < t->n_walls && i < WALLS; i++) {
        const char *wall = gw_picture_word(page->arena, t->grids.items[i]->wall);
        gw_page_picture(page, pictures, gw_format(page->arena, "plan:%s:%s", wall, own));
    }
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
                                            answer->judgement.summaries.items[c].candidate, false, NULL});
    for (size_t c = 0; c < answer->judgement.summaries.n; c++)
        add_use(out, arena, results, answer->judgement.summaries.items[c].candidate);
    for (size_t c = 0; c < answer->judgement.summaries.n; c++)
        add_screws(out, arena, results, answer->judgement.summaries.items[c].candidate);
    gw_pictures_of_details(out, arena, results);
    for (size_t c = 0; c < answer->judgement.summaries.n; c++)
        gw_pictures_of_blast(out, arena, results, answer->judgement.summaries.items[c].candidate);
    add_planned(out, arena, results);
    for (size_t i = 0; i < takeoff->n_walls; i++) {
        for (int inward = 0; inward < 2; inward++)
            add_wall(out, arena, &(struct wall_picture){results, takeoff->grids.items[i], NULL, inward, NULL});
        add_heights(out, arena, &(struct wall_picture){results, takeoff->grids.items[i], NULL, false, NULL});
    }
    if (takeoff->n_walls) add_key_plan(out, arena, results);
}

const struct gw_picture *gw_picture_named(const struct gw_pictures *pictures, const char *name)
{
    const size_t length = strlen(name);
    for (size_t i = 0; i < pictures->n; i++)
        if (strcmp(pictures->items[i].name, name) == 0) return &pictures->items[i];
    for (size_t i = 0; i < pictures->n; i++) {
        const char *own = pictures->items[i].name;
        if (strncmp(own, name, length) == 0 && (own[length] == '\0' || own[length] == ':')) return &pictures->items[i];
    }
    return NULL;
}
