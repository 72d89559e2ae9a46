/* Options of a system and alternatives of a lite: what no single field can tell. */
#include "model_internal.h"

#include "base/fields.h"

#include <string.h>

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_at_key(node, key), __VA_ARGS__)

static const struct gw_priced PRICED[] = {
    [GW_COUNTS_WALL] = {"a wall's area", "78 per ft2 or 840 per m2", {GW_COST_PER_AREA}, 1},
    [GW_COUNTS_LITE] = {"lites", "14 per ft2, 150 per m2 or 55 each", {GW_COST_PER_AREA, GW_COST}, 2},
    [GW_COUNTS_MULLION] = {"mullions' length", "9.5 per ft or 31 per m", {GW_COST_PER_LENGTH}, 1},
    [GW_COUNTS_TRANSOM] = {"transoms' length", "9.5 per ft or 31 per m", {GW_COST_PER_LENGTH}, 1},
    [GW_COUNTS_SCREW] = {"screws", "0.4 each", {GW_COST}, 1},
    [GW_COUNTS_ANCHOR] = {"anchors", "24 each", {GW_COST}, 1}};

static size_t option_named(const struct gw_system *system, const char *name)
{
    size_t i = 0;
    while (i < system->options.n &&
           (!system->options.items[i].name || strcmp(system->options.items[i].name, name) != 0))
        i++;
    return i;
}

static void check_required(struct gw_model *model, const struct gw_system *system, const struct gw_system_option *o)
{
    for (size_t i = 0; i < o->requires.n; i++) {
        const char *name = o->requires.items[i];
        if (!name || option_named(system, name) < system->options.n) continue;
        struct gw_nearest nearest;
        gw_nearest_start(&nearest, name);
        for (size_t k = 0; k < system->options.n; k++)
            if (system->options.items[k].name) gw_nearest_offer(&nearest, system->options.items[k].name);
        FAULT(model, o->node, "requires", "there is no option '%s' of this system%s", name,
              gw_nearest_question(model->arena, &nearest));
    }
}

gw_option_set gw_option_with_required(const struct gw_system *system, size_t option)
{
    gw_option_set all = 0, next = gw_option_bit(option);
    while (next & ~all) {
        all |= next;
        for (size_t i = 0; i < system->options.n; i++) {
            const struct gw_system_option *o = &system->options.items[i];
            for (size_t k = 0; (all & gw_option_bit(i)) && k < o->requires.n; k++) {
                const size_t named =
                    o->requires.items[k] ? option_named(system, o->requires.items[k]) : GW_OPTION_LIMIT;
                if (named < system->options.n) next |= gw_option_bit(named);
            }
        }
    }
    return all;
}

/* Two that ask for each other are one option with two names; and what asks for two of a group can never be taken. */
static void check_together(struct gw_model *model, const struct gw_system *system, size_t option)
{
    const struct gw_system_option *o = &system->options.items[option];
    const gw_option_set all = gw_option_with_required(system, option);
    for (size_t i = 0; i < system->options.n; i++) {
        const struct gw_system_option *other = &system->options.items[i];
        if (!(all & gw_option_bit(i))) continue;
        if (i != option && gw_options_exclude(system, option, i)) {
            FAULT(model, o->node, "requires", "'%s' can never be taken: it asks for '%s', which is never taken with it",
                  o->name, other->name);
            return;
        }
        if (i == option) continue;
        if (i > option && (gw_option_with_required(system, i) & gw_option_bit(option))) {
            FAULT(model, o->node, "requires", "'%s' and '%s' require each other, in a circle: write them as one option",
                  o->name, other->name);
            return;
        }
        for (size_t k = 0; k < i; k++)
            if ((all & gw_option_bit(k)) && gw_options_exclude(system, i, k)) {
                FAULT(model, o->node, "requires",
                      "'%s' can never be taken: it asks for '%s' and '%s', of which at most "
                      "one is",
                      o->name, system->options.items[k].name, other->name);
                return;
            }
    }
}

static void check_name(struct gw_model *model, const struct gw_system *system, size_t option)
{
    const struct gw_system_option *o = &system->options.items[option];
    if (option_named(system, o->name) < option) FAULT(model, o->node, "name", "a second option '%s'", o->name);
    if (!o->change && !o->adds && !gw_holds_fault(model, o->node))
        FAULT(model, o->node, "name", "'%s' changes nothing: give 'change' or 'adds'", o->name);
    if (o->adds && !system->mullion) FAULT(model, o->node, "adds", "the system has no 'mullion' to add to");
}

/* What is the system's own whatever is chosen. */
static void check_change(struct gw_model *model, const struct gw_system_option *o)
{
    static const char *const kept[] = {"galeward", "units", "system", "options", "cost"};
    for (size_t i = 0; o->change && i < COUNT(kept); i++) {
        const struct gw_node *key = gw_node_get(o->change, kept[i]);
        if (key)
            gw_diag_key(model->diags, GW_ERROR, "bad_value", key,
                        "'%s' stays the system's own: an option cannot change it", kept[i]);
    }
}

/* What is added is added to the mullion: a cost by length can be of nothing else. */
static void settle_cost(struct gw_model *model, struct gw_system_option *o, enum gw_units preset)
{
    double value;
    size_t at;
    const bool by_length = o->cost && gw_quantity_read(gw_units_standard(), GW_COST_PER_LENGTH, GW_UNITS_NONE, o->cost,
                                                       strlen(o->cost), &value, &at) == GW_QUANTITY_OK;
    if (!o->of) o->of = o->adds && by_length ? GW_COUNTS_MULLION : GW_COUNTS_WALL;
    gw_settle_price(&o->price, model, o->node, preset, &PRICED[o->of]);
}

/* Said before it is chosen: with it a dearer plan may pass and this one is not shown. */
static void note_unweighed(struct gw_model *model, const struct gw_system *system, size_t option)
{
    const gw_option_set alone = gw_option_bit(option);
    const struct gw_system_option *o = &system->options.items[option];
    if (!system->system || !gw_options_unweighed(system, alone)) return;
    gw_assume(model->arena, &model->assumptions, gw_format(model->arena, "system %s", system->system->name),
              GW_SAY(model->arena,
                     "option '{}' changes metal and gives no frame_weight: what the framing weighs with it is not "
                     "known, and no anchor is shown with it; ask the manufacturer (change: frame_weight)",
                     gw_of_text(o->name)));
}

bool gw_validate_options(struct gw_model *model, struct gw_system *system, enum gw_units preset)
{
    const size_t before = model->diags->errors;
    if (system->options.n > GW_OPTION_LIMIT)
        FAULT(model, system->node, "options", "%zu options: at most %d are chosen among", system->options.n,
              GW_OPTION_LIMIT);
    for (size_t i = 0; i < system->options.n && system->options.n <= GW_OPTION_LIMIT; i++) {
        struct gw_system_option *o = &system->options.items[i];
        if (!o->node || !o->name) continue;
        check_name(model, system, i);
        check_required(model, system, o);
        check_together(model, system, i);
        check_change(model, o);
        settle_cost(model, o, preset);
        note_unweighed(model, system, i);
    }
    return model->diags->errors == before;
}

static bool same_rating(const struct gw_rating *a, const struct gw_rating *b)
{
    const struct gw_record *record = gw_record_field(&gw_system_record, "ratings")->record;
    return a->test == b->test && gw_record_alike(record, a, b);
}

void gw_keep_ratings(struct gw_model *model, const struct gw_system *system, const struct gw_system *with,
                     size_t option)
{
    const struct gw_system_option *o = &system->options.items[option];
    const struct gw_node *ratings = gw_node_get(o->change, "ratings");
    for (size_t i = 0; ratings && i < system->ratings.n; i++) {
        const struct gw_rating *own = &system->ratings.items[i];
        bool kept = !own->failed_at;
        for (size_t k = 0; k < with->ratings.n; k++) kept = kept || same_rating(own, &with->ratings.items[k]);
        if (kept) continue;
        gw_diag_node(
            model->diags, GW_ERROR, "bad_value", "ratings", ratings,
            "'%s' leaves out the failure that %s recorded: what a test speaks against stays; repeat it in the list",
            o->name, own->report ? own->report : "a test");
        return;
    }
}

static void check_alternative(struct gw_model *model, struct gw_lite_type *type, size_t i)
{
    struct gw_lite_alternative *a = &type->alternatives.items[i];
    if (!a->name || !a->node) return;
    for (size_t k = 0; k < i; k++)
        if (type->alternatives.items[k].name && strcmp(type->alternatives.items[k].name, a->name) == 0)
            FAULT(model, a->node, "name", "a second alternative '%s' of '%s'", a->name, type->name);
    struct gw_lite_type *as = gw_alloc(model->arena, 1, sizeof *as);
    *as = *type;
    as->layers.items = a->layers.items;
    as->layers.n = a->layers.n;
    as->cost = a->cost;
    as->node = a->node;
    a->as = as;
}

void gw_validate_alternatives(struct gw_model *model, struct gw_lite_type *type)
{
    const struct gw_priced *lites = &PRICED[GW_COUNTS_LITE];
    const enum gw_units preset = model->project.units;
    gw_settle_price(&type->price, model, type->node, preset, lites);
    for (size_t i = 0; i < type->alternatives.n; i++) {
        struct gw_lite_alternative *a = &type->alternatives.items[i];
        check_alternative(model, type, i);
        if (a->node) gw_settle_price(&a->price, model, a->node, preset, lites);
    }
    enum { MOST = 31 };
    if (type->alternatives.n > MOST)
        FAULT(model, type->node, "alternatives", "%zu alternatives: at most %d are chosen among", type->alternatives.n,
              MOST);
    if (type->alternatives.n && !type->layers.n)
        FAULT(model, type->node, "alternatives", "alternatives to which make-up? Give 'layers' besides");
}
