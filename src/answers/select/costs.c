/* What a place holds, and what each choice there costs or weighs. */
#include "answers/select/select_internal.h"

#include "tables_data.h"

#include <math.h>
#include <string.h>

money gw_to_money(double value)
{
    const double millionths = 1e6;
    return llround(value * millionths);
}

double gw_of_money(money m)
{
    const double millionths = 1e6;
    return (double)m / millionths;
}

bool gw_is_upper_part(const struct gw_takeoff *t, const struct gw_element *e)
{
    return e->parapet && gw_takeoff_other_part(t, e) != NULL;
}

static size_t type_of(const struct gw_model *model, const struct gw_element *e)
{
    const struct gw_lite_type *type = e->lite ? gw_model_lite(model, e->lite) : NULL;
    return type ? (size_t)(type - model->project.lites.items) : model->project.lites.n;
}

static void count_lite(struct gw_quantities *q, const struct gw_model *model, const struct gw_element *e, bool upper)
{
    const double area = (double)e->count * e->width * e->height;
    const size_t type = type_of(model, e);
    q->wall_area += area;
    if (type == model->project.lites.n) return;
    q->lite_area[type] += area;
    q->lites[type] += upper ? 0 : e->count;
}

static void count(struct gw_quantities *q, const struct gw_model *model, const struct gw_element *e, bool upper)
{
    switch (e->kind) {
    case GW_LITE:
        count_lite(q, model, e, upper);
        break;
    case GW_MULLION:
        q->mullion_length += (double)e->count * e->height;
        break;
    case GW_TRANSOM:
        q->transom_length += upper ? 0 : (double)e->count * e->width;
        break;
    case GW_ANCHOR:
        q->anchors += upper ? 0 : e->count;
        break;
    default: /* screws by what is hung: screws.c */
        break;
    }
}

void gw_quantities_of(struct gw_quantities *out, struct gw_ask *ask, const struct gw_plan_places *places)
{
    const struct gw_takeoff *t = ask->takeoff;
    const size_t types = ask->model->project.lites.n + 1;
    for (size_t p = 0; p < places->n; p++)
        out[p] = (struct gw_quantities){.lite_area = gw_alloc(ask->arena, types, sizeof(double)),
                                        .lites = gw_alloc(ask->arena, types, sizeof(long))};
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        count(&out[places->of[i]], ask->model, e, gw_is_upper_part(t, e));
    }
}

bool gw_anything_priced(const struct gw_model *model)
{
    for (size_t c = 0; c < model->systems.n; c++) {
        const struct gw_system *s = &model->systems.items[c];
        bool priced = gw_given(s->cost);
        for (size_t i = 0; i < s->options.n; i++)
            priced = priced || gw_given(s->options.items[i].price.value) || gw_given(s->options.items[i].once);
        if (priced) return true;
    }
    for (size_t i = 0; i < model->project.lites.n; i++) {
        const struct gw_lite_type *type = &model->project.lites.items[i];
        bool priced = gw_given(type->price.value);
        for (size_t k = 0; k < type->alternatives.n; k++)
            priced = priced || gw_given(type->alternatives.items[k].price.value);
        if (priced) return true;
    }
    return false;
}

double gw_option_quantity(const struct gw_system_option *o, const struct gw_quantities *q, size_t types)
{
    double lites = 0;
    switch (o->of) {
    case GW_COUNTS_LITE:
        for (size_t i = 0; i < types; i++) lites += o->price.dim == GW_COST ? (double)q->lites[i] : q->lite_area[i];
        return lites;
    case GW_COUNTS_MULLION:
        return q->mullion_length;
    case GW_COUNTS_TRANSOM:
        return q->transom_length;
    case GW_COUNTS_SCREW:
        return (double)q->screws;
    case GW_COUNTS_ANCHOR:
        return (double)q->anchors;
    default:
        return q->wall_area;
    }
}

money gw_option_cost(const struct gw_system_option *o, const struct gw_quantities *q, size_t types)
{
    return gw_given(o->price.value) ? gw_to_money(gw_option_quantity(o, q, types) * o->price.value) : 0;
}

money gw_lite_cost(const struct gw_price *price, const struct gw_quantities *q, size_t type)
{
    if (!gw_given(price->value)) return 0;
    return gw_to_money(price->value * (price->dim == GW_COST ? (double)q->lites[type] : q->lite_area[type]));
}

static double gravity_of(const struct gw_model *model)
{
    return model->tables->water_properties[GW_ROW_WATER_PROPERTIES_WATER].gravity_m_s2;
}

double gw_lite_mass(const struct gw_lite_type *type, const struct gw_model *model, double area)
{
    struct gw_engine engine;
    struct gw_make_up make_up;
    gw_engine_init(&engine, model->tables, NULL);
    if (!type->layers.n || gw_make_up_from(&make_up, type->layers.items, type->layers.n, &engine) != GW_OK)
        return GW_ABSENT;
    return gw_make_up_weight(&make_up, &engine) * area / gravity_of(model);
}

double gw_frame_mass(const struct gw_system *system, const struct gw_model *model, double area)
{
    return system->frame_weight * area / gravity_of(model);
}
