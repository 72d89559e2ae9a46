/* What a reader must see before any verdict: given pressures that are too low, a rule of wind that does not hold. */
#include "takeoff_internal.h"

#include "base/tolerance.h"
#include "galeward/wind.h"
#include "tables_data.h"

static void remark(struct gw_builder *b, const char *code, const char *key, const struct gw_node *node,
                   const struct gw_message *said)
{
    struct gw_takeoff *t = b->takeoff;
    t->remarks.items =
        gw_grow(b->arena, t->remarks.items, t->remarks.n, &t->remarks_capacity, sizeof *t->remarks.items);
    t->remarks.items[t->remarks.n++] = *said;
    gw_diag_node(b->diags, GW_WARNING, code, key, node, "%s",
                 gw_message_text(b->arena, said, b->model->project.units ? b->model->project.units : GW_US));
}

/* Given pressures -------------------------------------------------------------------------------------------------- */

static bool is_too_low(const struct gw_difference *d) { return d->governs && d->excess < 0; }

static const struct gw_difference *lowest(const struct gw_takeoff *t)
{
    const struct gw_difference *worst = NULL;
    for (size_t i = 0; i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        if (is_too_low(d) && (!worst || d->excess < worst->excess)) worst = d;
    }
    return worst;
}

static const char *percent(struct gw_arena *arena, double share)
{
    const double hundred = 100;
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_fixed(&text, hundred * share, 0);
    return text.at;
}

/* Of those that are too low the least in magnitude; NULL. */
static const struct gw_difference *least_given(const struct gw_takeoff *t)
{
    const struct gw_difference *least = NULL;
    for (size_t i = 0; i < t->differences.n; i++) {
        const struct gw_difference *d = &t->differences.items[i];
        if (is_too_low(d) && (!least || fabs(d->given) < fabs(least->given))) least = d;
    }
    return least;
}

/* An acceptance does not say that it knows of the code's least pressure. */
static struct gw_message below_least(const struct gw_builder *b)
{
    const double floor = b->model->tables->wind_minimum[GW_ROW_WIND_MINIMUM_CLADDING].pressure_pa;
    const struct gw_difference *d = least_given(b->takeoff);
    if (!d || !(fabs(d->given) < floor * (1 - GW_HAIR))) return (struct gw_message){0};
    return GW_SAY(b->arena, "; {} given at {} {} is below the code's least, {}",
                  gw_of_quantity(GW_PRESSURE, fabs(d->given)), gw_of_text(d->id), gw_of_text(d->direction),
                  gw_of_quantity(GW_PRESSURE, floor));
}

static struct gw_message who_accepts(const struct gw_builder *b)
{
    const struct gw_acceptance *accepted = b->model->project.lower_than_computed;
    const struct gw_message below = below_least(b);
    if (accepted)
        return GW_SAY(b->arena, "accepted by {}: {}{}", gw_of_text(accepted->by), gw_of_text(accepted->reason),
                      gw_of_message(&below));
    return GW_PLAINLY("nothing passes with them unless the project says who accepts that (lower_than_computed: by, "
                      "reason)");
}

/* Differences are only listed where they are more than the table's share. */
static void remark_too_low(struct gw_builder *b)
{
    struct gw_takeoff *t = b->takeoff;
    const struct gw_project *p = &b->model->project;
    const struct gw_difference *d = lowest(t);
    if (!d) return;
    const double share = b->model->tables->takeoff_shares[GW_ROW_TAKEOFF_SHARES_DIFFERENCE_LISTED].value;
    struct gw_message *who = gw_alloc(b->arena, 1, sizeof *who);
    *who = who_accepts(b);
    const struct gw_message said = GW_SAY(
        b->arena,
        "given pressures govern that are more than {} % lower than the computed ones, at worst on wall {} at "
        "{} {}: given {}, computed {} ({} %, strength level, source {}); {}",
        gw_of_text(percent(b->arena, share)), gw_of_text(d->element->wall), gw_of_text(d->id), gw_of_text(d->direction),
        gw_of_quantity(GW_PRESSURE, d->given), gw_of_quantity(GW_PRESSURE, d->computed),
        gw_of_text(percent(b->arena, d->excess)), gw_of_text(d->source), gw_of_message(who));
    t->too_low = !p->lower_than_computed;
    remark(b, "given_too_low", "given", p->given->node, &said);
}

/* Coefficients ----------------------------------------------------------------------------------------------------- */

static bool stands_on(const struct gw_takeoff *t, const struct gw_building *building)
{
    for (size_t i = 0; i < t->elements.n; i++)
        if (t->elements.items[i].building == building) return true;
    return false;
}

static void remark_alternative(struct gw_builder *b, const struct gw_building *building)
{
    struct gw_wind_case in;
    if (building->alternative_60_90 != GW_YES || !stands_on(b->takeoff, building)) return;
    gw_building_case(b->model, building, &in);
    if (!gw_wind_alternative_refused(&in, b->model->tables)) return;
    const struct gw_wind_figure *figure = &b->model->tables->wind_figure[GW_ROW_WIND_FIGURE_WALL];
    const struct gw_message said = GW_SAY(
        b->arena,
        "building '{}': alternative_60_90 does not hold at a roof height of {} and a least width of {} (height below "
        "{}, over width at most {}): the figures for high buildings are used instead",
        gw_of_text(building->name), gw_of_quantity(GW_LENGTH, building->roof_height),
        gw_of_quantity(GW_LENGTH, building->least_width), gw_of_quantity(GW_LENGTH, figure->alternative_height_m),
        gw_of_quantity(GW_RATIO, figure->alternative_slenderness));
    remark(b, "alternative_not_permitted", "alternative_60_90", building->node, &said);
}

void gw_find_remarks(struct gw_builder *b)
{
    remark_too_low(b);
    for (size_t i = 0; i < b->model->project.buildings.n; i++)
        remark_alternative(b, &b->model->project.buildings.items[i]);
}
