/* What a plan is made of, place by place, and which choices count nothing for want of a cost. */
#include "answers/select/select_internal.h"

#include "base/fields.h"

static void list_options(struct gw_bid *bid, size_t place, const struct gw_shared_list *shared, size_t types,
                         struct gw_arena *arena)
{
    struct gw_selected *out = &bid->places.items[place];
    const struct gw_system *candidate = bid->candidate;
    const size_t n = candidate->options.n;
    out->options.items = gw_alloc(arena, n + 1, sizeof *out->options.items);
    out->option_names.items = gw_alloc(arena, n + 1, sizeof *out->option_names.items);
    for (size_t i = 0; i < n; i++) {
        const struct gw_system_option *o = &candidate->options.items[i];
        if (!(out->choice->options & gw_option_bit(i))) continue;
        const struct gw_quantities counted = gw_counted_at(&out->quantities, shared, &bid->plan, place, i);
        out->options.items[out->options.n++] = (struct gw_selected_option){
            o, gw_option_quantity(o, &counted, types), gw_of_money(gw_option_cost(o, &counted, types))};
        out->option_names.items[out->option_names.n++] = o->name;
    }
}

static void list_lites(struct gw_selected *out, const struct gw_model *model, const bool *stands,
                       struct gw_arena *arena)
{
    const size_t n = model->project.lites.n;
    out->lites.items = gw_alloc(arena, n + 1, sizeof *out->lites.items);
    for (size_t i = 0; i < n; i++) {
        const struct gw_lite_type *type = &model->project.lites.items[i];
        const unsigned number = out->choice->lites[i];
        const struct gw_lite_alternative *a = number ? &type->alternatives.items[number - 1] : NULL;
        if (!stands[i]) continue;
        out->lites.items[out->lites.n++] = (struct gw_selected_lite){
            .type = type,
            .name = a ? a->name : NULL,
            .area = out->quantities.lite_area[i],
            .count = out->quantities.lites[i],
            .cost = gw_of_money(gw_lite_cost(a ? &a->price : &type->price, &out->quantities, i))};
    }
}

/* A record of its own: its keys are the project's names. */
static void describe_lites(struct gw_selected *out, struct gw_arena *arena)
{
    const size_t n = out->lites.n;
    struct gw_field *fields = gw_alloc(arena, n + 1, sizeof *fields);
    struct gw_record *record = gw_alloc(arena, 1, sizeof *record);
    const char **names = gw_alloc(arena, n + 1, sizeof *names);
    for (size_t i = 0; i < n; i++) {
        fields[i] =
            (struct gw_field){.key = out->lites.items[i].type->name, .type = GW_T_TEXT, .offset = i * sizeof *names};
        names[i] = out->lites.items[i].name;
    }
    *record = (struct gw_record){.name = "lites", .size = n * sizeof *names, .fields = fields, .n = n, .help = ""};
    out->lite_names = (struct gw_described){record, names};
}

void gw_itemize(struct gw_bid *bid, const struct gw_model *model, const struct gw_shared_list *shared,
                struct gw_arena *arena)
{
    const size_t types = model->project.lites.n;
    for (size_t p = 0; p < bid->places.n; p++) {
        struct gw_selected *place = &bid->places.items[p];
        place->choice = &bid->plan.choices[p];
        list_options(bid, p, shared, types, arena);
        list_lites(place, model, &bid->plan.places->stands[p * types], arena);
        describe_lites(place, arena);
        const double own = bid->candidate->cost * place->quantities.wall_area;
        place->wall_cost = gw_given(own) ? gw_of_money(gw_to_money(own)) : 0;
    }
}

static void add_unpriced(struct gw_bids *out, struct gw_arena *arena, size_t *capacity, const char *words)
{
    out->unpriced.items = gw_grow(arena, out->unpriced.items, out->unpriced.n, capacity, sizeof *out->unpriced.items);
    out->unpriced.items[out->unpriced.n++] = words;
}

static void list_unpriced_of(struct gw_bids *out, struct gw_arena *arena, size_t *capacity, const struct gw_system *s)
{
    if (!gw_given(s->cost)) add_unpriced(out, arena, capacity, gw_format(arena, "%s itself", s->name));
    for (size_t i = 0; i < s->options.n; i++)
        if (!gw_given(s->options.items[i].price.value))
            add_unpriced(out, arena, capacity, gw_format(arena, "%s: option '%s'", s->name, s->options.items[i].name));
}

void gw_list_unpriced(struct gw_bids *out, struct gw_arena *arena)
{
    size_t capacity = 0;
    if (out->by_mass) return;
    for (size_t i = 0; i < out->model->systems.n; i++)
        list_unpriced_of(out, arena, &capacity, &out->model->systems.items[i]);
    for (size_t i = 0; i < out->model->project.lites.n; i++) {
        const struct gw_lite_type *type = &out->model->project.lites.items[i];
        if (!gw_given(type->price.value)) add_unpriced(out, arena, &capacity, gw_format(arena, "lite %s", type->name));
        for (size_t k = 0; k < type->alternatives.n; k++)
            if (!gw_given(type->alternatives.items[k].price.value))
                add_unpriced(out, arena, &capacity,
                             gw_format(arena, "lite %s: '%s'", type->name, type->alternatives.items[k].name));
    }
}
