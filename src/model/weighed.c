/* What framing weighs with options: another section, another metal, an insert or a plate weighs something, and only the
 * file can say what. Anchors, screws, seats and splices are small parts: they are not counted. */
#include "model_internal.h"

#include "galeward/alloy.h"

#include "base/fields.h"

#include <string.h>

/* What of a section takes metal, and how dense it is; its strength and what braces it do not. */
static const char *const SECTION[] = {"alloy",
                                      "tube",
                                      "insert",
                                      "area",
                                      "inertia_x",
                                      "inertia_y",
                                      "section_modulus_x",
                                      "section_modulus_y",
                                      "torsion_constant",
                                      NULL};
static const char *const PLATE[] = {"alloy", "width", "thickness", NULL};
static const struct {
    const char *part;
    const char *const *keys;
} METAL[] = {{"mullion", SECTION},
             {"corner_mullion", SECTION},
             {"jamb_mullion", SECTION},
             {"transom", SECTION},
             {"pressure_plate", PLATE}};

/* From what the system has, in the words of its file; a stronger insert of the same size weighs the same. */
static bool differs(const struct gw_node *own, const struct gw_node *change)
{
    if (!own || own->kind != change->kind) return true;
    if (change->kind != GW_MAPPING) return !gw_same_value(own, change);
    for (const struct gw_node *k = change->first; k; k = k->next)
        if (strcmp(k->key, "yield") != 0 && differs(gw_node_get(own, k->key), k)) return true;
    return false;
}

static enum gw_metal_family family_of(const struct gw_node *alloy)
{
    const struct gw_choice *found =
        alloy && alloy->kind == GW_SCALAR ? gw_choice_match(gw_metal_choices, alloy->text) : NULL;
    return found ? gw_metal_family((enum gw_metal)found->value) : GW_FAMILY_UNKNOWN;
}

/* An alloy of the same density weighs the same. */
static bool weighs_otherwise(const char *key, const struct gw_node *own, const struct gw_node *change)
{
    if (strcmp(key, "alloy") == 0) return family_of(own) != family_of(change);
    return differs(own, change);
}

bool gw_option_changes_metal(const struct gw_system *system, const struct gw_system_option *o)
{
    if (o->adds) return true;
    for (size_t i = 0; i < COUNT(METAL); i++) {
        const struct gw_node *own = gw_node_get(system->node, METAL[i].part),
                             *part = gw_node_get(o->change, METAL[i].part);
        for (size_t k = 0; METAL[i].keys[k]; k++) {
            const struct gw_node *change = gw_node_get(part, METAL[i].keys[k]);
            if (change && weighs_otherwise(METAL[i].keys[k], gw_node_get(own, METAL[i].keys[k]), change)) return true;
        }
    }
    return false;
}

static bool states_weight(const struct gw_system_option *o) { return gw_node_get(o->change, "frame_weight") != NULL; }

/* Those that change metal or speak of its weight. */
static gw_option_set bearing(const struct gw_system *system, gw_option_set taken)
{
    gw_option_set out = 0;
    for (size_t i = 0; i < system->options.n && i < GW_OPTION_LIMIT; i++) {
        const struct gw_system_option *o = &system->options.items[i];
        if ((taken & gw_option_bit(i)) && (states_weight(o) || gw_option_changes_metal(system, o)))
            out |= gw_option_bit(i);
    }
    return out;
}

const struct gw_system_option *gw_option_weighing(const struct gw_system *system, gw_option_set taken)
{
    const gw_option_set of = bearing(system, taken);
    for (size_t i = 0; i < system->options.n && i < GW_OPTION_LIMIT; i++) {
        const struct gw_system_option *o = &system->options.items[i];
        if ((of & gw_option_bit(i)) && states_weight(o) && !(of & ~gw_option_with_required(system, i))) return o;
    }
    return NULL;
}

gw_option_set gw_options_unweighed(const struct gw_system *system, gw_option_set taken)
{
    return gw_option_weighing(system, taken) ? 0 : bearing(system, taken);
}

/* An insert where there was none, or what is added: nothing is taken away for it. */
static bool only_adds(const struct gw_system *system, const struct gw_system_option *o)
{
    for (size_t i = 0; i < COUNT(METAL); i++) {
        const struct gw_node *own = gw_node_get(system->node, METAL[i].part),
                             *part = gw_node_get(o->change, METAL[i].part);
        for (size_t k = 0; METAL[i].keys[k]; k++) {
            const char *key = METAL[i].keys[k];
            const struct gw_node *before = gw_node_get(own, key), *change = gw_node_get(part, key);
            const bool added = strcmp(key, "insert") == 0 && own && !before;
            const bool kept = strcmp(key, "alloy") == 0 && change && !weighs_otherwise(key, before, change);
            if (change && !added && !kept) return false;
        }
    }
    return !o->requires.n && gw_option_changes_metal(system, o);
}

void gw_doubt_weight(struct gw_model *model, const struct gw_system *system, const struct gw_system *with,
                     size_t option)
{
    const struct gw_system_option *o = &system->options.items[option];
    if (!(with->frame_weight < system->frame_weight) || !only_adds(system, o)) return;
    gw_diag_node(
        model->diags, GW_WARNING, "implausible", "frame_weight", gw_node_get(o->change, "frame_weight"),
        "'%s' adds metal, and the framing weighs less with it than without: is this the weight of what it adds "
        "alone? Give that of the whole framing",
        o->name);
}
