/* What a plan chooses on a wall: a pattern a choice, each with its letter, and its words below. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <string.h>

/* Of a wall, which has at most four places: each in a pattern of its own. */
enum { HATCHES_N = 8, LETTERS = 26 };
static const struct gw_pattern HATCHES[HATCHES_N] = {
    {.angle = 0, .spacing = 0},           {45, 7.6, 0.7, GW_INK2, false, false}, {-45, 3.8, 0.7, GW_INK2, false, false},
    {45, 7.6, 0.7, GW_INK2, false, true}, {0, 6, 1.7, GW_INK2, true, false},     {90, 5, 0.7, GW_INK2, false, false},
    {0, 5, 0.7, GW_INK2, false, false},   {0, 7.6, 0.7, GW_INK2, false, true}};

struct parts {
    const struct plan_picture *of;
    struct gw_arena *arena;
    size_t *class_of;   /* by place */
    const char **names; /* by class: what is chosen; its letter */
    const char **letters;
    size_t told;
    struct elevation_class *classes;
};

static const struct gw_plan_places *places_of(const struct parts *p) { return p->of->plan->places; }

static bool is_here(const struct parts *p, size_t place)
{
    return places_of(p)->items[place].elevation == p->of->grid->elevation;
}

static size_t own_class(struct parts *p, const char *words)
{
    size_t i = 0;
    while (i < p->told && strcmp(p->names[i], words) != 0) i++;
    if (i == p->told) p->names[p->told++] = words;
    return i;
}

static bool stands_here(const struct parts *p, size_t class)
{
    bool here = false;
    for (size_t i = 0; i < places_of(p)->n; i++) here = here || (is_here(p, i) && p->class_of[i] == class);
    return here;
}

/* That of its letter, unless another choice of this wall has it: then the next that none here has. */
static void hatch(struct parts *p)
{
    bool used[HATCHES_N] = {false};
    for (size_t i = 0; i < p->told; i++) {
        size_t at = i % HATCHES_N;
        if (stands_here(p, i)) {
            for (size_t tried = 0; used[at] && tried < HATCHES_N; tried++) at = (at + 1) % HATCHES_N;
            used[at] = true;
        }
        p->classes[i] = (struct elevation_class){
            .name = p->letters[i],
            .look = {.fill = GW_PAPER, .pattern = HATCHES[at].spacing > 0 ? &HATCHES[at] : NULL},
            .plate = p->letters[i],
            .mark = MARK_NONE};
    }
}

/* Letters are those of the whole plan, so that a letter is one choice on every wall: A to Z, then A2. */
static void gather(struct parts *p)
{
    const size_t n = places_of(p)->n;
    p->class_of = gw_alloc(p->arena, n + 1, sizeof *p->class_of);
    p->names = gw_alloc(p->arena, n + 1, sizeof *p->names);
    p->letters = gw_alloc(p->arena, n + 1, sizeof *p->letters);
    p->classes = gw_alloc(p->arena, n + 1, sizeof *p->classes);
    for (size_t i = 0; i < n; i++) {
        const char *words = gw_choice_words(p->of->plan, i, p->of->results->answer->model, p->arena);
        p->class_of[i] = own_class(p, *words ? words : "as it is, each lite with its own make-up");
    }
    for (size_t i = 0; i < p->told; i++)
        p->letters[i] = i < LETTERS ? gw_format(p->arena, "%c", 'A' + (int)i)
                                    : gw_format(p->arena, "%c%zu", 'A' + (int)(i % LETTERS), i / LETTERS + 1);
    hatch(p);
}

static size_t class_of(const void *context, const struct gw_element *e)
{
    const struct parts *p = context;
    return p->class_of[places_of(p)->of[e->index]];
}

static void cell(struct gw_text *out, const void *context, const struct gw_element *const *lites, size_t n,
                 size_t column)
{
    const struct parts *p = context;
    for (size_t i = 0; i < n; i++) {
        const char *letter = lites[i]->zone == (column ? 5 : 4) ? p->letters[class_of(context, lites[i])] : "";
        if (*letter && (!out->length || !strstr(out->at, letter)))
            gw_text_addf(out, "%s%s", out->length ? ", " : "", letter);
    }
}

static const char *place_words(const struct parts *p, size_t place)
{
    const struct gw_plan_place *at = &places_of(p)->items[place];
    const struct gw_bid *bid = p->of->bid;
    struct gw_text text;
    gw_text_init(&text, p->arena);
    gw_text_addf(&text, "zone %d%s", at->zone, at->parapet ? " above the roof" : "");
    if (!bid || p->of->by_mass) return text.at;
    gw_text_addf(&text, ", cost %s", gw_cost_text(p->arena, bid->places.items[place].cost));
    return text.at;
}

/* "B: steel insert (zone 5, cost 9120)"; NULL: not on this wall. */
static const char *class_line(const struct parts *p, size_t class)
{
    struct gw_text text;
    gw_text_init(&text, p->arena);
    for (size_t i = 0; i < places_of(p)->n; i++)
        if (is_here(p, i) && p->class_of[i] == class)
            gw_text_addf(&text, "%s%s", text.length ? "; " : "", place_words(p, i));
    return text.length ? gw_format(p->arena, "%s: %s (%s)", p->letters[class], p->names[class], text.at) : NULL;
}

enum gw_status gw_draw_plan(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    static const char *const heads[][2] = {{"zone 4", "part"}, {"zone 5", "part"}};
    struct parts p = {.of = of, .arena = canvas->arena};
    const char *candidate = gw_safe(canvas->arena, p.of->plan->candidate->name);
    const char *wall = gw_safe(canvas->arena, p.of->grid->wall);
    struct gw_text described;
    size_t n = 0;
    (void)engine;
    gather(&p);
    const char **lines = gw_alloc(canvas->arena, p.told + 1, sizeof *lines);
    gw_text_init(&described, canvas->arena);
    gw_text_addf(&described, "Elevation of wall %s, %s: what is chosen of %s.", wall,
                 gw_elevation_size(canvas->arena, p.of->grid), candidate);
    for (size_t i = 0; i < p.told; i++) {
        const char *line = class_line(&p, i);
        if (!line) continue;
        lines[n++] = line;
        gw_text_addf(&described, " %s.", line);
    }
    const struct elevation e = {.takeoff = p.of->results->answer->takeoff,
                                .grid = p.of->grid,
                                .context = &p,
                                .title = gw_format(canvas->arena, "Wall %s: what is chosen of %s", wall, candidate),
                                .second = gw_project_line(canvas->arena, p.of->results),
                                .caption = gw_format(canvas->arena, "Options and make-ups of %s by place", candidate),
                                .note = "A letter is one choice on every wall; below, what it is.",
                                .described = described.at,
                                .key = "Chosen",
                                .classes = p.classes,
                                .n_classes = p.told,
                                .class_of = class_of,
                                .heads = heads,
                                .n_columns = 2,
                                .cell = cell,
                                .lines = lines,
                                .n_lines = n};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}
