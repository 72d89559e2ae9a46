/* From the rows of a plan, which name places and choices, to what each candidate is judged with. */
#include "galeward/plan.h"

#include <string.h>

struct reading {
    struct gw_plans *out;
    struct gw_model *model;
    struct gw_arena *arena;
    size_t types; /* of lites */
    /* By candidate, then by place (then by lite type): the plans' own, and the row that names it, NULL: none. */
    struct gw_plan_choice *choices;
    unsigned *lites;
    const struct gw_chosen_row **rows;
};

static const struct gw_node *at_key(const struct gw_node *node, const char *key)
{
    const struct gw_node *found = gw_node_get(node, key);
    return found ? found : node;
}

static const struct gw_node *item_at(const struct gw_node *list, size_t i)
{
    const struct gw_node *item = list->first;
    for (; item && i; i--) item = item->next;
    return item ? item : list;
}

#define FAULT(r, node, key, ...)                                                                                       \
    gw_diag_node((r)->model->diags, GW_ERROR, "bad_value", key, at_key(node, key), __VA_ARGS__)

static struct gw_plan_choice *choice_at(const struct reading *r, size_t candidate, size_t place)
{
    return &r->choices[candidate * r->out->places.n + place];
}

static void set_lite(const struct reading *r, size_t candidate, size_t place, size_t type, unsigned number)
{
    r->lites[(candidate * r->out->places.n + place) * r->types + type] = number;
    r->out->items[candidate].chosen = r->out->items[candidate].chosen || number;
}

static void set_option(const struct reading *r, size_t candidate, size_t place, size_t option)
{
    choice_at(r, candidate, place)->options |= gw_option_bit(option);
    r->out->items[candidate].chosen = true;
}

/* Names ------------------------------------------------------------------------------------------------------------ */

static bool find_candidate(const struct reading *r, const struct gw_chosen_row *row, size_t *out)
{
    const struct gw_model *m = r->model;
    struct gw_nearest nearest;
    *out = 0;
    if (!row->candidate && m->systems.n == 1) return true;
    if (!row->candidate) {
        if (m->systems.n)
            FAULT(r, row->node, "candidate", "the project has %zu candidates: say which one", m->systems.n);
        else FAULT(r, row->node, "candidate", "the project has no candidates to choose for");
        return false;
    }
    gw_nearest_start(&nearest, row->candidate);
    for (size_t i = 0; i < m->systems.n; i++) {
        if (strcmp(m->systems.items[i].name, row->candidate) == 0) return *out = i, true;
        gw_nearest_offer(&nearest, m->systems.items[i].name);
    }
    FAULT(r, row->node, "candidate", "there is no candidate '%s'%s", row->candidate,
          gw_nearest_question(r->arena, &nearest));
    return false;
}

/* "zone 4 below roof, zone 5 below roof" */
static const char *parts_of(const struct reading *r, const char *wall)
{
    struct gw_text out;
    const struct gw_plan_places *places = &r->out->places;
    gw_text_init(&out, r->arena);
    for (size_t i = 0; i < places->n; i++)
        if (strcmp(places->items[i].wall, wall) == 0)
            gw_text_addf(&out, "%szone %d %s roof", out.length ? ", " : "", places->items[i].zone,
                         places->items[i].parapet ? "above" : "below");
    return out.at;
}

static bool find_place(const struct reading *r, const struct gw_chosen_row *row, size_t *out)
{
    const struct gw_plan_places *places = &r->out->places;
    const bool above = row->part == GW_ABOVE_ROOF;
    struct gw_nearest nearest;
    bool wall = false;
    gw_nearest_start(&nearest, row->wall);
    for (size_t i = 0; i < places->n; i++) {
        const struct gw_plan_place *p = &places->items[i];
        const bool here = strcmp(p->wall, row->wall) == 0;
        gw_nearest_offer(&nearest, p->wall);
        if (here && p->zone == row->zone && p->parapet == above) return *out = i, true;
        wall = wall || here;
    }
    if (!wall)
        FAULT(r, row->node, "wall", "there is no wall '%s'%s", row->wall, gw_nearest_question(r->arena, &nearest));
    else
        FAULT(r, row->node, "zone", "'%s' has no zone %d %s the roof line: it has %s", row->wall, row->zone,
              above ? "above" : "below", parts_of(r, row->wall));
    return false;
}

static bool find_option(const struct gw_system *system, const char *name, size_t *out, struct gw_nearest *nearest)
{
    for (size_t i = 0; i < system->options.n; i++) {
        if (strcmp(system->options.items[i].name, name) == 0) return *out = i, true;
        gw_nearest_offer(nearest, system->options.items[i].name);
    }
    return false;
}

static bool find_alternative(const struct gw_lite_type *type, const char *name, unsigned *out,
                             struct gw_nearest *nearest)
{
    for (unsigned i = 0; i < type->alternatives.n; i++) {
        if (strcmp(type->alternatives.items[i].name, name) == 0) return *out = i + 1, true;
        gw_nearest_offer(nearest, type->alternatives.items[i].name);
    }
    return false;
}

static bool find_type(const struct gw_model *model, const char *name, size_t *out, struct gw_nearest *nearest)
{
    for (size_t i = 0; i < model->project.lites.n; i++) {
        if (strcmp(model->project.lites.items[i].name, name) == 0) return *out = i, true;
        gw_nearest_offer(nearest, model->project.lites.items[i].name);
    }
    return false;
}

/* Rows ------------------------------------------------------------------------------------------------------------- */

static void take_options(const struct reading *r, const struct gw_chosen_row *row, size_t candidate, size_t place)
{
    const struct gw_system *system = &r->model->systems.items[candidate];
    const struct gw_node *list = at_key(row->node, "options");
    for (size_t i = 0; i < row->options.n; i++) {
        const char *name = row->options.items[i];
        struct gw_nearest nearest;
        size_t option;
        if (!name) continue;
        gw_nearest_start(&nearest, name);
        if (find_option(system, name, &option, &nearest)) set_option(r, candidate, place, option);
        else
            gw_diag_node(r->model->diags, GW_ERROR, "bad_value", "options", item_at(list, i),
                         "there is no option '%s' of '%s'%s", name, system->name,
                         gw_nearest_question(r->arena, &nearest));
    }
}

static bool is_own(const struct gw_chosen_lite *lite)
{
    return !lite->node->quoted && (strcmp(lite->name, "null") == 0 || strcmp(lite->name, "~") == 0);
}

static void take_lite(const struct reading *r, const struct gw_chosen_lite *lite, size_t candidate, size_t place)
{
    struct gw_diags *diags = r->model->diags;
    struct gw_nearest types, names;
    size_t type;
    unsigned number;
    gw_nearest_start(&types, lite->type);
    if (!find_type(r->model, lite->type, &type, &types)) {
        gw_diag_key(diags, GW_ERROR, "bad_value", lite->node, "there is no lite type '%s'%s", lite->type,
                    gw_nearest_question(r->arena, &types));
        return;
    }
    if (is_own(lite)) return;
    gw_nearest_start(&names, lite->name);
    if (!find_alternative(&r->model->project.lites.items[type], lite->name, &number, &names))
        gw_diag_node(diags, GW_ERROR, "bad_value", "lites", lite->node, "there is no alternative '%s' of '%s'%s",
                     lite->name, lite->type, gw_nearest_question(r->arena, &names));
    else if (!r->out->places.stands[place * r->types + type])
        gw_diag_node(diags, GW_ERROR, "bad_value", "lites", lite->node, "no lite of type '%s' stands there",
                     lite->type);
    else set_lite(r, candidate, place, type, number);
}

static void take_row(struct reading *r, const struct gw_chosen_row *row)
{
    size_t candidate, place;
    if (!row->node || !row->wall || row->zone == GW_NO_INTEGER) return;
    const bool known_candidate = find_candidate(r, row, &candidate), known_place = find_place(r, row, &place);
    if (!known_candidate || !known_place) return;
    const struct gw_chosen_row **known = &r->rows[candidate * r->out->places.n + place];
    if (*known) {
        FAULT(r, row->node, "wall", "zone %d of '%s' is named twice, first in line %u", row->zone, row->wall,
              (*known)->node->line);
        return;
    }
    *known = row;
    take_options(r, row, candidate, place);
    for (size_t i = 0; i < row->lites.n; i++)
        if (row->lites.items[i].name && row->lites.items[i].node) take_lite(r, &row->lites.items[i], candidate, place);
}

/* Everywhere --------------------------------------------------------------------------------------------------------
 */

static void no_such(const struct reading *r, const struct gw_with *with, const char *what,
                    const struct gw_nearest *near)
{
    gw_diag_add(r->model->diags, GW_ERROR, "bad_setting", "--with", NULL, 0, 0, "--with %s%s%s: there is no %s%s",
                with->lite ? with->lite : "", with->lite ? "=" : "", with->name, what,
                gw_nearest_question(r->arena, near));
}

static void take_option_everywhere(const struct reading *r, const struct gw_with *with)
{
    struct gw_model *m = r->model;
    struct gw_nearest nearest;
    size_t option, found = 0;
    gw_nearest_start(&nearest, with->name);
    for (size_t c = 0; c < m->systems.n; c++) found += find_option(&m->systems.items[c], with->name, &option, &nearest);
    if (!found) {
        no_such(r, with, "such option of any candidate", &nearest);
        return;
    }
    for (size_t c = 0; c < m->systems.n; c++) {
        if (find_option(&m->systems.items[c], with->name, &option, &nearest))
            for (size_t p = 0; p < r->out->places.n; p++) set_option(r, c, p, option);
        else
            gw_diag_add(m->diags, GW_WARNING, "no_option", "--with", NULL, 0, 0,
                        "'%s' has no option '%s': it is judged without it", m->systems.items[c].name, with->name);
    }
}

static void take_lite_everywhere(const struct reading *r, const struct gw_with *with)
{
    struct gw_nearest types, names;
    size_t type;
    unsigned number;
    gw_nearest_start(&types, with->lite);
    gw_nearest_start(&names, with->name);
    if (!find_type(r->model, with->lite, &type, &types)) {
        no_such(r, with, "such lite type", &types);
        return;
    }
    if (!find_alternative(&r->model->project.lites.items[type], with->name, &number, &names)) {
        no_such(r, with, "such alternative of it", &names);
        return;
    }
    for (size_t c = 0; c < r->model->systems.n; c++)
        for (size_t p = 0; p < r->out->places.n; p++)
            if (r->out->places.stands[p * r->types + type]) set_lite(r, c, p, type, number);
}

/* Rules ------------------------------------------------------------------------------------------------------------ */

/* At the row that names the place, else of the whole plan. */
static void broken(const struct reading *r, size_t candidate, size_t place, const char *message)
{
    const struct gw_plan_place *p = &r->out->places.items[place];
    const struct gw_chosen_row *row = r->rows[candidate * r->out->places.n + place];
    const char *words = gw_format(r->arena, "'%s', zone %d of '%s'%s: %s", r->model->systems.items[candidate].name,
                                  p->zone, p->wall, p->parapet ? " above the roof" : "", message);
    if (row) gw_diag_node(r->model->diags, GW_ERROR, "bad_plan", "chosen", row->node, "%s", words);
    else gw_diag_add(r->model->diags, GW_ERROR, "bad_plan", "chosen", NULL, 0, 0, "%s", words);
}

/* What goes together in one place. */
static bool check_together(const struct reading *r, size_t c, size_t place)
{
    const struct gw_system *s = &r->model->systems.items[c];
    const gw_option_set set = choice_at(r, c, place)->options;
    size_t needed;
    for (size_t i = 0; i < s->options.n; i++) {
        const struct gw_system_option *o = &s->options.items[i];
        struct gw_nearest none;
        if (!(set & gw_option_bit(i))) continue;
        for (size_t k = 0; k < i; k++)
            if ((set & gw_option_bit(k)) && gw_options_exclude(s, i, k)) {
                broken(r, c, place,
                       gw_format(r->arena, "of '%s' and '%s' at most one is taken", s->options.items[k].name, o->name));
                return false;
            }
        gw_nearest_start(&none, "");
        for (size_t k = 0; k < o->requires.n; k++)
            if (find_option(s, o->requires.items[k], &needed, &none) && !(set & gw_option_bit(needed))) {
                broken(r, c, place, gw_format(r->arena, "'%s' requires '%s'", o->name, o->requires.items[k]));
                return false;
            }
    }
    if (gw_offer_with(&r->out->items[c].offers, set)) return true;
    broken(r, c, place, "these options together make no valid system");
    return false;
}

static bool same_part(const struct reading *r, enum gw_choose choose, size_t a, size_t b)
{
    const struct gw_plan_place *x = &r->out->places.items[a], *y = &r->out->places.items[b];
    return choose == GW_CHOOSE_PROJECT || (choose == GW_CHOOSE_WALL && x->elevation == y->elevation);
}

static const char *within(enum gw_choose choose)
{
    return choose == GW_CHOOSE_WALL ? "on a wall (choose: wall)" : "on all walls (choose: project)";
}

/* What is chosen everywhere or nowhere within a part. */
static void check_parts(const struct reading *r, size_t c, size_t place)
{
    const struct gw_system *s = &r->model->systems.items[c];
    const struct gw_plan_choice *here = choice_at(r, c, place);
    for (size_t before = 0; before < place; before++) {
        const struct gw_plan_choice *there = choice_at(r, c, before);
        for (size_t i = 0; i < s->options.n; i++)
            if (same_part(r, s->options.items[i].choose, before, place) &&
                ((here->options ^ there->options) & gw_option_bit(i))) {
                broken(r, c, place,
                       gw_format(r->arena, "'%s' is taken everywhere or nowhere %s", s->options.items[i].name,
                                 within(s->options.items[i].choose)));
                return;
            }
        for (size_t i = 0; i < r->types; i++) {
            const struct gw_lite_type *type = &r->model->project.lites.items[i];
            const bool *stands = r->out->places.stands;
            if (stands[place * r->types + i] && stands[before * r->types + i] &&
                same_part(r, type->choose, before, place) && here->lites[i] != there->lites[i]) {
                broken(r, c, place, gw_format(r->arena, "'%s' has one make-up %s", type->name, within(type->choose)));
                return;
            }
        }
    }
}

static void check_rules(const struct reading *r)
{
    for (size_t c = 0; c < r->model->systems.n; c++)
        for (size_t p = 0; r->out->items[c].chosen && p < r->out->places.n; p++)
            if (check_together(r, c, p)) check_parts(r, c, p);
}

/* The whole -------------------------------------------------------------------------------------------------------- */

const char *gw_choice_words(const struct gw_plan *plan, size_t place, const struct gw_model *model,
                            struct gw_arena *arena)
{
    struct gw_text out;
    const struct gw_plan_choice *choice = &plan->choices[place];
    gw_text_init(&out, arena);
    for (size_t i = 0; i < plan->candidate->options.n; i++)
        if (choice->options & gw_option_bit(i))
            gw_text_addf(&out, "%s%s", out.length ? "; " : "", plan->candidate->options.items[i].name);
    for (size_t i = 0; i < model->project.lites.n; i++)
        if (choice->lites[i])
            gw_text_addf(&out, "%s%s: %s", out.length ? "; " : "", model->project.lites.items[i].name,
                         model->project.lites.items[i].alternatives.items[choice->lites[i] - 1].name);
    return out.length ? out.at : "";
}

static void assume_chosen(const struct reading *r, size_t c)
{
    const struct gw_plan *plan = &r->out->items[c].plan;
    for (size_t p = 0; r->out->items[c].chosen && p < r->out->places.n; p++) {
        const struct gw_plan_place *place = &r->out->places.items[p];
        const char *words = gw_choice_words(plan, p, r->model, r->arena);
        if (*words)
            gw_assume(r->arena, &r->model->assumptions, gw_format(r->arena, "candidate %s", plan->candidate->name),
                      GW_SAY(r->arena, "judged with what is chosen in zone {} of {}{}: {}", gw_of_count(place->zone),
                             gw_of_text(place->wall), gw_of_text(place->parapet ? " above the roof" : ""),
                             gw_of_text(words)));
    }
}

static void start(struct reading *r, const struct gw_takeoff *takeoff)
{
    const size_t candidates = r->model->systems.n;
    gw_plan_places_of(&r->out->places, r->model, takeoff, r->arena);
    const size_t places = r->out->places.n;
    r->out->items = gw_alloc(r->arena, candidates + 1, sizeof *r->out->items);
    r->rows = gw_alloc(r->arena, candidates * places + 1, sizeof *r->rows);
    r->choices = gw_alloc(r->arena, candidates * places + 1, sizeof *r->choices);
    r->lites = gw_alloc(r->arena, candidates * places * r->types + 1, sizeof *r->lites);
    for (size_t i = 0; i < candidates * places; i++) r->choices[i].lites = &r->lites[i * r->types];
    for (size_t c = 0; c < candidates; c++) {
        struct gw_planned *planned = &r->out->items[c];
        planned->plan = (struct gw_plan){&r->model->systems.items[c], &r->out->places, choice_at(r, c, 0)};
        gw_offers_init(&planned->offers, r->model, planned->plan.candidate, r->arena);
    }
}

bool gw_plans_read(struct gw_plans **out, struct gw_model *model, const struct gw_takeoff *takeoff,
                   struct gw_arena *arena)
{
    const size_t before = model->diags->errors;
    *out = NULL;
    if (!model->project.chosen.n && !model->n_withs) return true;
    struct gw_plans *plans = gw_alloc(arena, 1, sizeof *plans);
    struct reading r = {.out = plans, .model = model, .arena = arena, .types = model->project.lites.n};
    start(&r, takeoff);
    for (size_t i = 0; i < model->project.chosen.n; i++) take_row(&r, &model->project.chosen.items[i]);
    for (size_t i = 0; i < model->n_withs; i++)
        (model->withs[i].lite ? take_lite_everywhere : take_option_everywhere)(&r, &model->withs[i]);
    if (model->diags->errors == before) check_rules(&r);
    if (model->diags->errors != before) return false;
    for (size_t c = 0; c < model->systems.n; c++) {
        gw_plan_chosen(&plans->items[c].make_ups, &plans->items[c].plan, model, arena);
        assume_chosen(&r, c);
    }
    *out = plans;
    return true;
}

struct gw_planned *gw_planned_of(const struct gw_ask *ask, const struct gw_system *candidate)
{
    for (size_t c = 0; ask->plans && c < ask->model->systems.n; c++)
        if (&ask->model->systems.items[c] == candidate && ask->plans->items[c].chosen) return &ask->plans->items[c];
    return NULL;
}

struct gw_system *gw_planned_offer(struct gw_planned *planned, const struct gw_element *element)
{
    const size_t place = planned->plan.places->of[element->index];
    return gw_offer_with(&planned->offers, planned->plan.choices[place].options);
}
