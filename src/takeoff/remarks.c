/* What a reader must see before any verdict: given pressures that are too low, a rule of wind that does not hold. */
#include "takeoff_internal.h"

#include "base/tolerance.h"
#include "galeward/debris.h"
#include "galeward/wind.h"
#include "tables_data.h"

#include <string.h>

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

/* Of all differences the ratio of given to computed: near the conversion between the levels either way, the level is
 * doubtful. Differences are listed only where they are more than the table's share, which the ratios may be apart. */
static double level_ratio(const struct gw_builder *b)
{
    const struct gw_takeoff *t = b->takeoff;
    const double to_asd = b->model->tables->wind_levels[GW_ROW_WIND_LEVELS_ALLOWABLE_STRESS].share;
    const double share = b->model->tables->takeoff_shares[GW_ROW_TAKEOFF_SHARES_DIFFERENCE_LISTED].value;
    double sum = 0;
    for (size_t i = 0; i < t->differences.n; i++)
        sum += t->differences.items[i].given / t->differences.items[i].computed;
    const double mean = t->differences.n ? sum / (double)t->differences.n : 1;
    const double near = mean < 1 ? to_asd : 1 / to_asd;
    for (size_t i = 0; i < t->differences.n; i++) {
        const double ratio = t->differences.items[i].given / t->differences.items[i].computed;
        if (fabs(ratio / near - 1) > 4 * share) return GW_ABSENT;
    }
    return fabs(mean / near - 1) <= 4 * share ? mean : GW_ABSENT;
}

static void remark_level(struct gw_builder *b)
{
    const double ratio = level_ratio(b);
    const bool most = 2 * b->takeoff->differences.n >= 3 * b->takeoff->elements.n; /* each has two directions */
    if (!gw_given(ratio) || !most || !b->model->project.given) return;
    const double to_asd = b->model->tables->wind_levels[GW_ROW_WIND_LEVELS_ALLOWABLE_STRESS].share;
    const struct gw_message said = GW_SAY(
        b->arena,
        "given pressures are {} times the computed ones of the same level wherever they differ: the ratio is near "
        "{}; is their level (strength or asd) right?",
        gw_of_number(ratio, 3), gw_of_number(ratio < 1 ? to_asd : 1 / to_asd, 3));
    remark(b, "level_doubtful", "given", b->model->project.given->node, &said);
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

/* Debris ----------------------------------------------------------------------------------------------------------- */

/* A speed in mph is the map's own. */
static bool is_metric(const struct gw_model *model, const struct gw_node *node)
{
    const char *text = node && node->text ? node->text : "";
    if (strstr(text, "mph") || strstr(text, "mi/h") || strstr(text, "f")) return false;
    return model->project.units == GW_SI || strstr(text, "m");
}

static bool same_decision(const struct gw_debris_result *a, const struct gw_debris_result *b)
{
    return a->required == b->required && a->missile == b->missile && a->wind_zone == b->wind_zone;
}

/* Of glazing near the ground: at the speed as given, then at the limit. A speed that stands for its limit counts so
 * already. */
static bool hangs_on_limit(struct gw_debris_result *out, const struct gw_builder *b)
{
    struct gw_debris_case in;
    struct gw_debris_result at_limit;
    struct gw_engine engine;
    gw_model_debris_case(b->model, 0, &in);
    gw_engine_init(&engine, b->model->tables, NULL);
    const bool known = gw_debris(out, &in, &engine) == GW_OK;
    if (!gw_given(out->limit)) return false;
    if (in.basic_wind_speed < out->limit) in.basic_wind_speed = out->limit;
    if (gw_given(in.region_wind_speed)) in.region_wind_speed = out->limit;
    gw_engine_init(&engine, b->model->tables, NULL);
    const bool known_there = gw_debris(&at_limit, &in, &engine) == GW_OK;
    return !known || !known_there || out->required == GW_YES || !same_decision(out, &at_limit);
}

/* Each as its map has it, whatever the reader's units. */
static const char *speed_text(const struct gw_builder *b, double speed, enum gw_units shown)
{
    const struct gw_message m = GW_SAY(b->arena, "{}", gw_of_quantity(GW_SPEED, speed));
    return gw_message_text(b->arena, &m, shown);
}

static void remark_debris(struct gw_builder *b)
{
    const struct gw_site *site = b->model->project.site;
    const struct gw_node *node = gw_node_get(gw_node_get(b->model->project.node, "site"), "basic_wind_speed");
    const bool by_code = !site->impact || (!site->impact->missile && site->impact->rule != GW_IMPACT_NONE);
    struct gw_debris_result r;
    if (!by_code || b->model->project.codes->debris == GW_DEBRIS_ASCE7_05 || !is_metric(b->model, node)) return;
    if (site->hurricane_prone == GW_UNSAID && !site->impact) return; /* asked for as a whole */
    if (!hangs_on_limit(&r, b)) return;
    const bool own_map = !site->impact || !gw_given(site->impact->region_wind_speed);
    const double speed = own_map ? site->basic_wind_speed : site->impact->region_wind_speed;
    const struct gw_message said = GW_SAY(b->arena, "wind-borne debris: basic wind speed {}, limit {}: {}",
                                          gw_of_text(speed_text(b, speed, GW_SI)),
                                          gw_of_text(speed_text(b, r.limit, GW_US)), gw_of_text(r.limit_note));
    remark(b, "near_debris_limit", "basic_wind_speed", node, &said);
}

void gw_find_remarks(struct gw_builder *b)
{
    remark_too_low(b);
    remark_level(b);
    for (size_t i = 0; i < b->model->project.buildings.n; i++)
        remark_alternative(b, &b->model->project.buildings.items[i]);
    remark_debris(b);
}
