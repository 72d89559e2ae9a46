/* A system with some of its options taken: their changes merged over its file in the file's order, what is added last.
 */
#include "model_internal.h"

#include "galeward/alloy.h"

#include <string.h>

static struct gw_node *merged(struct gw_arena *arena, const struct gw_node *base, const struct gw_node *over);

static struct gw_node *copy_of(struct gw_arena *arena, const struct gw_node *node)
{
    struct gw_node *out = gw_alloc(arena, 1, sizeof *out);
    *out = *node;
    out->next = NULL;
    return out;
}

static void append(struct gw_node *mapping, struct gw_node ***end, struct gw_node *child)
{
    **end = child;
    *end = &child->next;
    mapping->count++;
}

/* Mappings merge key by key; lists and values replace. What is replaced keeps its place among the keys. */
static struct gw_node *merged(struct gw_arena *arena, const struct gw_node *base, const struct gw_node *over)
{
    struct gw_node *out = copy_of(arena, base->kind == over->kind ? base : over);
    if (base->kind != GW_MAPPING || over->kind != GW_MAPPING) {
        *out = *over;
        out->next = NULL;
        return out;
    }
    struct gw_node **end = &out->first;
    out->first = NULL;
    out->count = 0;
    for (const struct gw_node *child = base->first; child; child = child->next) {
        const struct gw_node *instead = gw_node_get(over, child->key);
        append(out, &end, instead ? merged(arena, child, instead) : copy_of(arena, child));
    }
    for (const struct gw_node *child = over->first; child; child = child->next)
        if (!gw_node_get(base, child->key)) append(out, &end, copy_of(arena, child));
    return out;
}

bool gw_same_value(const struct gw_node *a, const struct gw_node *b)
{
    if (a->kind != b->kind) return false;
    if (a->kind == GW_SCALAR) return a->length == b->length && memcmp(a->text, b->text, a->length) == 0;
    const struct gw_node *x = a->first, *y = b->first;
    for (; x && y && a->kind == GW_SEQUENCE; x = x->next, y = y->next)
        if (!gw_same_value(x, y)) return false;
    if (a->kind == GW_SEQUENCE) return !x && !y;
    for (; x; x = x->next) {
        const struct gw_node *other = gw_node_get(b, x->key);
        if (!other || !gw_same_value(x, other)) return false;
    }
    return a->count == b->count;
}

/* One thing that is bought whole: half of one and half of another is neither. */
static bool is_whole(const char *key)
{
    static const char *const whole[] = {"insert", "tube", "screw"};
    for (size_t i = 0; i < sizeof whole / sizeof *whole; i++)
        if (strcmp(key, whole[i]) == 0) return true;
    return false;
}

/* Two that set one key, or keys of one insert, tube or screw, to different values. What each says of the weight is of
 * itself alone: together they weigh something else, which weighed.c sees to. */
static bool collide(const struct gw_node *a, const struct gw_node *b)
{
    if (a->kind != GW_MAPPING || b->kind != GW_MAPPING) return !gw_same_value(a, b);
    for (const struct gw_node *x = a->first; x; x = x->next) {
        if (strcmp(x->key, "frame_weight") == 0) continue;
        const struct gw_node *y = gw_node_get(b, x->key);
        if (y && (is_whole(x->key) ? !gw_same_value(x, y) : collide(x, y))) return true;
    }
    return false;
}

bool gw_options_exclude(const struct gw_system *system, size_t a, size_t b)
{
    const struct gw_system_option *x = &system->options.items[a], *y = &system->options.items[b];
    if (x->group && y->group && strcmp(x->group, y->group) == 0) return true;
    return x->change && y->change && collide(x->change, y->change);
}

gw_option_set gw_options_touching(const struct gw_system *system, const char *key)
{
    gw_option_set out = 0;
    for (size_t i = 0; i < system->options.n; i++) {
        const struct gw_system_option *o = &system->options.items[i];
        const bool adds = o->adds && strcmp(key, "mullion") == 0;
        const bool weighs = strcmp(key, "frame_weight") == 0 && gw_option_changes_metal(system, o);
        if (adds || weighs || (o->change && gw_node_get(o->change, key))) out |= gw_option_bit(i);
    }
    return out;
}

/* What was tested ---------------------------------------------------------------------------------------------------
 */

static bool only_keys(const struct gw_node *change, const char *const *keys)
{
    for (const struct gw_node *k = change->first; k; k = k->next) {
        bool known = false;
        for (size_t i = 0; keys[i]; i++) known = known || strcmp(keys[i], k->key) == 0;
        if (!known) return false;
    }
    return true;
}

static bool no_less(double with, double without) { return !gw_given(without) || with >= without; }

static bool anchor_no_less(const struct gw_anchor_spec *with, const struct gw_anchor_spec *without)
{
    return !without || (no_less(with->inward, without->inward) && no_less(with->outward, without->outward) &&
                        no_less(with->along, without->along) && no_less(with->dead, without->dead));
}

static bool capacity_no_less(const struct gw_capacity_spec *with, const struct gw_capacity_spec *without)
{
    return !without || no_less(with->capacity, without->capacity);
}

static const struct gw_member_spec *member_of(const struct gw_system *system, enum gw_system_part part)
{
    return part == GW_PART_mullion          ? system->mullion
           : part == GW_PART_corner_mullion ? system->corner_mullion
           : part == GW_PART_jamb_mullion   ? system->jamb_mullion
                                            : system->transom;
}

/* No dimension less, of the same alloy: stiffer and stronger. */
static bool tube_no_less(const struct gw_tube *with, const struct gw_tube *without)
{
    if (!with || !without) return with == without;
    return with->width >= without->width && with->depth >= without->depth && with->flange >= without->flange &&
           with->web >= without->web;
}

static bool member_no_less(const struct gw_node *change, const struct gw_member_spec *with,
                           const struct gw_member_spec *without)
{
    static const char *const keys[] = {"insert", "tube", NULL};
    if (!only_keys(change, keys) || !with || !without) return false;
    return tube_no_less(with->tube, without->tube) && (!gw_node_get(change, "insert") || !without->insert);
}

/* A tube no dimension of which is less, an insert where there was none, screws at another spacing, which the record's
 * is compared with, and a capacity that is stated, or stated greater, leave the part that was tested in its place;
 * anything else makes it another. */
bool gw_part_stays_tested(enum gw_system_part part, const struct gw_node *change, const struct gw_system *with,
                          const struct gw_system *without)
{
    static const char *const screws[] = {"spacing", "end_distance", "tested_pullout", "report", NULL},
                             *const capacity[] = {"capacity", "report", NULL},
                             *const reactions[] = {"inward", "outward", "along", "dead", "report", NULL};
    switch (part) {
    case GW_PART_mullion:
    case GW_PART_corner_mullion:
    case GW_PART_jamb_mullion:
    case GW_PART_transom:
        return member_no_less(change, member_of(with, part), member_of(without, part));
    case GW_PART_screw:
        return only_keys(change, screws) &&
               (!without->screw || no_less(with->screw->tested_pullout, without->screw->tested_pullout));
    case GW_PART_transom_connection:
        return only_keys(change, capacity) && capacity_no_less(with->transom_connection, without->transom_connection);
    case GW_PART_splice:
        return only_keys(change, capacity) && capacity_no_less(with->splice, without->splice);
    case GW_PART_anchor:
        return only_keys(change, reactions) && anchor_no_less(with->anchor, without->anchor);
    case GW_PART_corner_anchor:
        return only_keys(change, reactions) && anchor_no_less(with->corner_anchor, without->corner_anchor);
    case GW_PART_jamb_anchor:
        return only_keys(change, reactions) && anchor_no_less(with->jamb_anchor, without->jamb_anchor);
    default:
        return false;
    }
}

static void note_altered(struct gw_system *out, const struct gw_system *base, gw_option_set taken)
{
    static const char *const parts[] = {
#define PART_NAME(part) #part,
        GW_SYSTEM_PARTS(PART_NAME)};
    for (size_t i = 0; i < base->options.n; i++)
        for (unsigned p = 0; p < GW_SYSTEM_PART_COUNT && (taken & gw_option_bit(i)); p++) {
            const struct gw_node *change = gw_node_get(base->options.items[i].change, parts[p]);
            if (change && !gw_part_stays_tested((enum gw_system_part)p, change, out, base))
                out->altered |= (uint32_t)1 << p;
        }
}

/* Ratings that an option brings are of what it makes. */
static void keep_screw(struct gw_system *out, const struct gw_system *base, gw_option_set taken)
{
    bool rated = false;
    for (size_t i = 0; i < base->options.n; i++)
        rated = rated || ((taken & gw_option_bit(i)) && gw_node_get(base->options.items[i].change, "ratings"));
    if (out->screw != base->screw && !rated) out->screw_then = base->screw;
}

/* What is added bends with the tube and takes its share of the moment, in the same alloy. */
static void add_insert(struct gw_model *model, struct gw_member_spec *m, const struct gw_adds *adds)
{
    struct gw_insert_spec *insert = gw_alloc(model->arena, 1, sizeof *insert);
    struct gw_engine engine;
    struct gw_alloy alloy;
    gw_engine_init(&engine, model->tables, NULL);
    *insert = m->insert ? *m->insert : (struct gw_insert_spec){.metal = GW_INSERT_ALUMINUM, .yield = GW_ABSENT};
    if (!m->insert && m->alloy && gw_alloy_find(&alloy, m->alloy, GW_ABSENT, false, &engine) == GW_OK)
        insert->yield = alloy.yield;
    if (gw_given(adds->inertia_x)) insert->inertia_x += adds->inertia_x;
    if (gw_given(adds->section_modulus_x)) insert->section_modulus_x += adds->section_modulus_x;
    insert->added = true;
    m->insert = insert;
}

/* A stated moment stands for the stated section: with the addition each takes its share by stiffness, at most at the
 * stress that the stated moment means; without a section modulus nothing is gained in strength. */
static void add_numbers(struct gw_member_spec *m, const struct gw_adds *adds)
{
    const double inertia = m->inertia_x, modulus = m->section_modulus_x, moment = m->allowable_moment;
    const double more = gw_given(adds->inertia_x) ? adds->inertia_x : 0, added = adds->section_modulus_x;
    if (gw_given(inertia)) m->inertia_x = inertia + more;
    if (gw_given(modulus) && gw_given(added)) m->section_modulus_x = modulus + added;
    if (!(more > 0) || !gw_given(inertia) || !gw_given(moment) || !gw_given(modulus) || !gw_given(added)) return;
    const double whole = inertia + more, own = moment * whole / inertia,
                 of_added = moment / modulus * added * whole / more;
    m->allowable_moment = fmax(moment, fmin(own, of_added));
}

static void add_all(struct gw_model *model, struct gw_system *out, const struct gw_system *base, gw_option_set taken)
{
    for (size_t i = 0; i < base->options.n; i++) {
        const struct gw_adds *adds = base->options.items[i].adds;
        if (!adds || !(taken & gw_option_bit(i)) || !out->mullion) continue;
        struct gw_member_spec *m = gw_alloc(model->arena, 1, sizeof *m);
        *m = *out->mullion;
        if (m->tube) add_insert(model, m, adds);
        else add_numbers(m, adds);
        out->mullion = m;
    }
}

static const struct gw_node *changed(struct gw_arena *arena, const struct gw_system *base, gw_option_set taken)
{
    const struct gw_node *node = base->node;
    for (size_t i = 0; i < base->options.n; i++)
        if ((taken & gw_option_bit(i)) && base->options.items[i].change)
            node = merged(arena, node, base->options.items[i].change);
    const struct gw_system_option *weighed = gw_option_weighing(base, taken);
    return weighed ? merged(arena, node, weighed->change) : node; /* its weight last: it is of all of them */
}

bool gw_system_with(struct gw_system *out, struct gw_model *model, const struct gw_system *base, gw_option_set taken)
{
    const size_t before = model->diags->errors;
    struct gw_load load = {
        .arena = model->arena, .diags = model->diags, .units = gw_units_standard(), .preset = base->units};
    *out = *base;
    if (!taken) return true;
    const struct gw_node *node = changed(model->arena, base, taken);
    if (node != base->node) {
        const bool good = gw_record_load(&load, &gw_system_record, node, "", out);
        gw_validate_system(model, out);
        if (!good || model->diags->errors != before) return false;
    }
    out->name = base->name;
    out->file = base->file;
    out->options.items = base->options.items;
    out->options.n = base->options.n;
    note_altered(out, base, taken);
    keep_screw(out, base, taken);
    add_all(model, out, base, taken);
    out->unweighed = gw_options_unweighed(base, taken);
    if (out->unweighed) out->frame_weight = GW_ABSENT; /* the weight without them would flatter every anchor */
    return model->diags->errors == before;
}
