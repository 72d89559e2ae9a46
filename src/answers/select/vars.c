/* The variables of a candidate: its options and the lite types' make-ups, each within the part where it is chosen. */
#include "answers/select/select_internal.h"

#include <string.h>

static const struct gw_project *project_of(const struct search *s) { return &s->ask->model->project; }

/* The variable of its kind and index whose part holds the place; made where there is none yet. */
static size_t var_of(struct search *s, size_t *parts, enum var_kind kind, size_t index, size_t wall, unsigned n,
                     size_t part)
{
    for (size_t i = 0; i < s->n_vars; i++) {
        const struct var *v = &s->vars[i];
        if (v->kind == kind && v->index == index && v->wall == wall && parts[i] == part) return i;
    }
    parts[s->n_vars] = part;
    s->vars[s->n_vars] = (struct var){.kind = kind, .index = index, .wall = wall, .n = n};
    return s->n_vars++;
}

/* Number of the part: unlike parts have unlike numbers among variables of one kind and index. */
static size_t part_of(const struct search *s, enum gw_choose choose, size_t place)
{
    if (s->everywhere || choose == GW_CHOOSE_PROJECT) return 0;
    return choose == GW_CHOOSE_WALL ? s->places->items[place].elevation : place;
}

size_t gw_search_var(const struct search *s, const struct place *p, enum var_kind kind, size_t index, size_t wall)
{
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        if (v->kind == kind && v->index == index && v->wall == wall) return i;
    }
    return p->n;
}

static void add(struct place *p, size_t *room, size_t var) { room[p->n++] = var; }

static bool stands_there(const struct search *s, size_t place, size_t type)
{
    return s->places->stands[place * s->n_types + type];
}

/* On some place of the wall. */
static bool stands_on(const struct search *s, size_t wall, size_t type)
{
    for (size_t p = 0; p < s->places->n; p++)
        if (s->places->items[p].elevation == wall && stands_there(s, p, type)) return true;
    return false;
}

static bool stands_at(const struct search *s, const struct place *p, size_t type)
{
    for (size_t m = 0; m < p->n_members; m++)
        if (stands_there(s, p->members[m], type)) return true;
    return false;
}

static bool holds_place(const struct place *p, size_t place)
{
    for (size_t m = 0; m < p->n_members; m++)
        if (p->members[m] == place) return true;
    return false;
}

/* Each option that counts what is shared at a corner of the place. */
static void add_shared(struct search *s, size_t *parts, struct place *p, size_t *room)
{
    for (size_t c = 0; c < s->shared->n; c++) {
        const struct gw_shared *shared = &s->shared->items[c];
        if (!holds_place(p, shared->first) && !holds_place(p, shared->second)) continue;
        for (size_t i = 0; i < s->candidate->options.n; i++)
            if (gw_shared_quantity(shared, &s->candidate->options.items[i]) > 0)
                add(p, room, var_of(s, parts, VAR_SHARED, i, c, 2, 0));
    }
}

static void add_vars(struct search *s, size_t *parts, struct place *p)
{
    const size_t place = p->members[0];
    const size_t options = s->candidate->options.n;
    const size_t most = options * (1 + s->shared->n) + s->n_types * (1 + s->n_walls) + 1;
    size_t *room = gw_alloc(s->arena, most, sizeof *room);
    for (size_t i = 0; i < options; i++)
        add(p, room, var_of(s, parts, VAR_OPTION, i, 0, 2, part_of(s, s->candidate->options.items[i].choose, place)));
    for (size_t i = 0; i < s->n_types; i++) {
        const struct gw_lite_type *type = &project_of(s)->lites.items[i];
        if (!type->alternatives.n || !stands_at(s, p, i)) continue;
        add(p, room,
            var_of(s, parts, VAR_LITE, i, 0, 1 + (unsigned)type->alternatives.n, part_of(s, type->choose, place)));
    }
    for (size_t w = 0; w < s->n_walls; w++)
        for (size_t i = 0; i < s->n_types; i++) {
            const struct gw_lite_type *type = &project_of(s)->lites.items[i];
            if (type->alternatives.n && stands_on(s, w, i))
                add(p, room, var_of(s, parts, VAR_HEAVIEST, i, w, 1 + (unsigned)type->alternatives.n, 0));
        }
    add_shared(s, parts, p, room);
    p->vars = room;
}

/* Prices --------------------------------------------------------------------------------------------------------- */

/* Framing whose weight nobody knows stands behind any that is known, kg: no wall weighs as much. */
static double ranked_mass(struct search *s, gw_option_set taken, double area)
{
    const double unknown = GW_MASS_UNKNOWN;
    const struct gw_system *with = gw_offer_with(&s->offers, taken);
    const double mass = with ? gw_frame_mass(with, s->ask->model, area) : unknown;
    return gw_given(mass) ? mass : unknown;
}

/* What it adds to those that it requires: it may be the one that says what they weigh. */
static double frame_gain(struct search *s, size_t option, double area)
{
    const gw_option_set with = gw_option_with_required(s->candidate, option);
    if (!gw_given(s->candidate->frame_weight)) return 0; /* nothing is known of any plan */
    return ranked_mass(s, with, area) - ranked_mass(s, with & ~gw_option_bit(option), area);
}

static struct price price_of(struct search *s, const struct var *v, unsigned value, const struct gw_quantities *q,
                             bool by_mass)
{
    const struct gw_model *model = s->ask->model;
    if (v->kind == VAR_HEAVIEST || v->kind == VAR_SHARED) return (struct price){0, 0};
    if (v->kind == VAR_OPTION) {
        const money cost = !value    ? 0
                           : by_mass ? gw_to_money(frame_gain(s, v->index, q->wall_area))
                                     : gw_option_cost(&s->candidate->options.items[v->index], q, s->n_types);
        return (struct price){cost, (int)value};
    }
    const struct gw_lite_type *type = &project_of(s)->lites.items[v->index];
    if (by_mass) {
        const double mass = gw_lite_mass(gw_lite_numbered(type, value), model, q->lite_area[v->index]);
        return (struct price){gw_given(mass) ? gw_to_money(mass) : 0, 0};
    }
    return (struct price){gw_lite_cost(value ? &type->alternatives.items[value - 1].price : &type->price, q, v->index),
                          0};
}

/* The wall itself, and the lites that there is no choice of. */
static money fixed_cost(struct search *s, const struct gw_quantities *q, bool by_mass)
{
    const struct gw_model *model = s->ask->model;
    money cost = 0;
    for (size_t i = 0; i < s->n_types; i++) {
        const struct gw_lite_type *type = &project_of(s)->lites.items[i];
        if (type->alternatives.n) continue;
        const double mass = by_mass ? gw_lite_mass(type, model, q->lite_area[i]) : GW_ABSENT;
        cost += by_mass ? (gw_given(mass) ? gw_to_money(mass) : 0) : gw_lite_cost(&type->price, q, i);
    }
    const double own = by_mass ? gw_frame_mass(s->candidate, model, q->wall_area) : s->candidate->cost * q->wall_area;
    return cost + (gw_given(own) ? gw_to_money(own) : 0);
}

/* With the screws that stand there with these options. */
static struct gw_quantities fastened(const struct search *s, const struct gw_quantities *q, size_t place,
                                     gw_option_set taken)
{
    struct gw_quantities out = *q;
    out.screws = gw_search_screws_at(s, place, taken);
    return out;
}

static struct price price_with(struct search *s, const struct gw_quantities *q, const struct place *p, size_t var,
                               unsigned value, gw_option_set taken, bool by_mass)
{
    struct price sum = {0, 0};
    for (size_t m = 0; m < p->n_members; m++) {
        const struct gw_quantities own = gw_apart(&q[p->members[m]], s->shared, p->members[m]),
                                   here = fastened(s, &own, p->members[m], taken);
        const struct price one = price_of(s, &s->vars[p->vars[var]], value, &here, by_mass);
        sum.cost += one.cost;
        sum.options += one.options;
    }
    return sum;
}

static bool spaces_screws(const struct search *s, const struct var *v)
{
    return v->kind == VAR_OPTION && (s->spacing >> v->index & 1);
}

/* What the option costs by each spacing that another may give the screws that it counts; NULL: always the same. */
static money *costs_by_spacing(struct search *s, const struct gw_quantities *q, const struct place *p, size_t var)
{
    const struct var *v = &s->vars[p->vars[var]];
    if (v->kind != VAR_OPTION || spaces_screws(s, v)) return NULL;
    money *out = gw_alloc(s->arena, p->n_spaced + 1, sizeof *out);
    bool differs = false;
    for (size_t i = 0; i <= p->n_spaced; i++) {
        const gw_option_set taken = i ? gw_option_bit(s->vars[p->vars[p->spaced[i - 1]]].index) : 0;
        out[i] = price_with(s, q, p, var, 1, taken, false).cost;
        differs = differs || out[i] != out[0];
    }
    return differs ? out : NULL;
}

static void add_spacings(struct search *s, const struct gw_quantities *q, struct place *p)
{
    size_t *spaced = gw_alloc(s->arena, p->n + 1, sizeof *spaced);
    bool any = false;
    p->spaced = spaced;
    p->by_spacing = gw_alloc(s->arena, p->n + 1, sizeof *p->by_spacing);
    for (size_t i = 0; i < p->n; i++)
        if (spaces_screws(s, &s->vars[p->vars[i]])) spaced[p->n_spaced++] = i;
    for (size_t i = 0; i < p->n; i++) {
        p->by_spacing[i] = costs_by_spacing(s, q, p, i);
        any = any || p->by_spacing[i];
    }
    if (!any) p->n_spaced = 0;
}

/* Paid with the first of the two places. */
static money price_of_shared(const struct search *s, const struct place *p, const struct var *v)
{
    const struct gw_shared *shared = &s->shared->items[v->wall];
    const struct gw_system_option *o = &s->candidate->options.items[v->index];
    if (!holds_place(p, shared->first) || !gw_given(o->price.value)) return 0;
    return gw_to_money(gw_shared_quantity(shared, o) * o->price.value);
}

/* An option that spaces the screws that it counts costs by its own spacing. */
static void add_prices(struct search *s, const struct gw_quantities *q, struct place *p, bool by_mass)
{
    p->prices = gw_alloc(s->arena, p->n + 1, sizeof *p->prices);
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        const gw_option_set own = spaces_screws(s, v) ? gw_option_bit(v->index) : 0;
        p->prices[i] = gw_alloc(s->arena, v->n, sizeof **p->prices);
        for (unsigned k = 0; k < v->n; k++) p->prices[i][k] = price_with(s, q, p, i, k, own, by_mass);
        if (v->kind == VAR_SHARED && !by_mass) p->prices[i][1].cost = price_of_shared(s, p, v);
    }
    if (!by_mass) add_spacings(s, q, p);
    for (size_t m = 0; m < p->n_members; m++) p->fixed += fixed_cost(s, &q[p->members[m]], by_mass);
}

money gw_place_cost(struct search *s, const struct gw_plan *plan, size_t place, const struct gw_quantities *q,
                    bool by_mass, const uint32_t *value)
{
    const struct place *p = &s->at[s->at_of[place]];
    const struct gw_quantities here = fastened(s, q, place, plan->choices[place].options);
    money cost = fixed_cost(s, q, by_mass);
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        const bool counted = v->kind == VAR_OPTION && value[i];
        const struct gw_quantities all = counted ? gw_counted_at(&here, s->shared, plan, place, v->index) : here;
        cost += price_of(s, v, value[i], &all, by_mass).cost;
    }
    return cost;
}

/* Rules ------------------------------------------------------------------------------------------------------------ */

static void never_both(struct search *s, struct place *p, size_t a, uint32_t a_value, size_t b, uint32_t b_value)
{
    const struct literal both[] = {{(uint32_t)a, a_value}, {(uint32_t)b, b_value}};
    if (a < p->n && b < p->n) gw_add_nogood(s, &p->nogoods, both, 2, NULL);
}

static size_t option_named(const struct gw_system *system, const char *name)
{
    for (size_t i = 0; i < system->options.n; i++)
        if (strcmp(system->options.items[i].name, name) == 0) return i;
    return system->options.n;
}

static void add_option_rules(struct search *s, struct place *p)
{
    const struct gw_system *c = s->candidate;
    for (size_t i = 0; i < c->options.n; i++) {
        const size_t own = gw_search_var(s, p, VAR_OPTION, i, 0);
        for (size_t k = 0; k < i; k++)
            if (gw_options_exclude(c, i, k)) never_both(s, p, gw_search_var(s, p, VAR_OPTION, k, 0), 1, own, 1);
        for (size_t k = 0; k < c->options.items[i].requires.n; k++) {
            const size_t needed = option_named(c, c->options.items[i].requires.items[k]);
            never_both(s, p, own, 1, gw_search_var(s, p, VAR_OPTION, needed, 0), 0);
        }
    }
}

static double weight_of(const struct search *s, size_t type, unsigned value)
{
    const double mass = gw_lite_mass(gw_lite_numbered(&project_of(s)->lites.items[type], value), s->ask->model, 1);
    return gw_given(mass) ? mass : HUGE_VAL;
}

/* No make-up is chosen that is heavier than the heaviest of its wall. */
static void keep_within_heaviest(struct search *s, struct place *p, size_t place)
{
    for (size_t i = 0; i < p->n; i++) {
        const struct var *lite = &s->vars[p->vars[i]];
        if (lite->kind != VAR_LITE || !stands_there(s, place, lite->index)) continue;
        const size_t most = gw_search_var(s, p, VAR_HEAVIEST, lite->index, s->places->items[place].elevation);
        for (uint32_t k = 0; k < lite->n; k++)
            for (uint32_t h = 0; h < lite->n; h++)
                if (weight_of(s, lite->index, k) > weight_of(s, lite->index, h)) never_both(s, p, i, k, most, h);
    }
}

/* Of a shared corner an option is paid for where either side takes it. */
static void pay_shared(struct search *s, struct place *p)
{
    for (size_t i = 0; i < p->n; i++) {
        const struct var *v = &s->vars[p->vars[i]];
        if (v->kind == VAR_SHARED) never_both(s, p, gw_search_var(s, p, VAR_OPTION, v->index, 0), 1, i, 0);
    }
}

/* Demands by place ------------------------------------------------------------------------------------------------- */

static void list_demand(struct search *s, size_t demand, size_t place)
{
    struct place *p = &s->at[s->at_of[place]];
    p->demands = gw_grow(s->arena, p->demands, p->n_demands, &p->demands_capacity, sizeof *p->demands);
    p->demands[p->n_demands++] = (struct placed_demand){demand, place};
}

static void list_demands(struct search *s)
{
    for (size_t i = 0; i < s->demands->demands.n; i++) {
        const struct gw_demand *d = &s->demands->demands.items[i];
        if (d->element) list_demand(s, i, s->places->of[d->element->index]);
        for (size_t p = 0; !d->element && p < s->places->n; p++)
            if (gw_demand_is_at(d, s->ask, s->places, p)) list_demand(s, i, p);
    }
}

static double asked(const struct search *s, const struct placed_demand *d)
{
    const struct gw_demand *demand = &s->demands->demands.items[d->demand];
    return demand->state == GW_ASKED && demand->terms.n ? fabs(demand->terms.items[0].value) : -1;
}

/* Of each check what asks most goes first: the demands of a check follow each other. */
static void put_hard_first(const struct search *s, struct place *p)
{
    for (size_t i = 0, end; i < p->n_demands; i = end) {
        const struct gw_check *check = s->demands->demands.items[p->demands[i].demand].check;
        size_t most = i;
        for (end = i; end < p->n_demands && s->demands->demands.items[p->demands[end].demand].check == check; end++)
            if (asked(s, &p->demands[end]) > asked(s, &p->demands[most])) most = end;
        const struct placed_demand moved = p->demands[most];
        p->demands[most] = p->demands[p->n_hard];
        p->demands[p->n_hard++] = moved;
    }
}

static void list_places(struct search *s)
{
    const size_t n = s->places->n;
    size_t *members = gw_alloc(s->arena, n + 1, sizeof *members), *at_of = gw_alloc(s->arena, n + 1, sizeof *at_of);
    s->n_at = s->everywhere && n ? 1 : n;
    s->at = gw_alloc(s->arena, s->n_at + 1, sizeof *s->at);
    s->at_of = at_of;
    for (size_t i = 0; i < n; i++) {
        members[i] = i;
        at_of[i] = s->everywhere ? 0 : i;
        struct place *p = &s->at[at_of[i]];
        if (!p->n_members++) p->members = &members[i];
    }
}

void gw_search_vars(struct search *s, const struct gw_quantities *q, bool by_mass)
{
    const size_t most = s->places->n * (s->candidate->options.n + s->n_types) + s->n_walls * s->n_types +
                        s->shared->n * s->candidate->options.n + 1;
    size_t *parts = gw_alloc(s->arena, most, sizeof *parts);
    s->vars = gw_alloc(s->arena, most, sizeof *s->vars);
    list_places(s);
    for (size_t i = 0; i < s->n_at; i++) add_vars(s, parts, &s->at[i]);
    for (size_t i = 0; i < s->n_at; i++) {
        struct place *p = &s->at[i];
        add_prices(s, q, p, by_mass);
        add_option_rules(s, p);
        pay_shared(s, p);
        for (size_t m = 0; m < p->n_members; m++) keep_within_heaviest(s, p, p->members[m]);
    }
    list_demands(s);
    for (size_t i = 0; i < s->n_at; i++) put_hard_first(s, &s->at[i]);
}
