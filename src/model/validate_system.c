/* What no single field of a system's framing can tell: walls that leave a tube, heads wider than holes, keys that only
 * mean something together. A value with a fault of its own is absent here and raises no second one. */
#include "model_internal.h"

#include <string.h>

static const struct gw_node *at_key(const struct gw_node *node, const char *key)
{
    const struct gw_node *found = gw_node_get(node, key);
    return found ? found : node;
}

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, at_key(node, key), __VA_ARGS__)

static const char *size(struct gw_model *model, double si)
{
    struct gw_text text;
    gw_text_init(&text, model->arena);
    enum gw_units shown = model->project.units ? model->project.units : GW_US;
    gw_quantity_print(&text, gw_units_standard(), GW_THICKNESS, shown, si);
    return text.at;
}

static void check_tube(struct gw_model *model, const struct gw_node *node, const struct gw_tube *t)
{
    if (2 * t->flange >= t->depth)
        FAULT(model, node, "flange", "two flanges of %s fill the depth of %s: give the thickness of one wall",
              size(model, t->flange), size(model, t->depth));
    if (2 * t->web >= t->width)
        FAULT(model, node, "web", "two webs of %s fill the width of %s: give the thickness of one wall",
              size(model, t->web), size(model, t->width));
}

/* A tube gives all properties; a second set would have to be believed or dropped. */
static void check_properties(struct gw_model *model, const struct gw_node *node)
{
    static const char *const keys[] = {"area",
                                       "inertia_x",
                                       "inertia_y",
                                       "section_modulus_x",
                                       "section_modulus_y",
                                       "torsion_constant",
                                       "allowable_moment",
                                       "allowable_torque"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        if (gw_node_get(node, keys[i]))
            FAULT(model, node, keys[i],
                  "'%s' beside 'tube': the tube gives it; leave one of them out (properties are for shapes that are no "
                  "tube)",
                  keys[i]);
}

/* A tube is calculated; a report stands for what is stated. */
static void check_report(struct gw_model *model, const struct gw_node *node, const struct gw_member_spec *spec)
{
    const bool stated = gw_node_get(node, "allowable_moment") || gw_node_get(node, "allowable_torque");
    if (!gw_node_get(node, "report")) return;
    if (spec->tube)
        FAULT(model, node, "report", "'report' beside 'tube': the tube is calculated; name what was tested in ratings");
    else if (!stated)
        FAULT(model, node, "report", "'report' of what? Give the allowable_moment that it shows, or leave it out");
}

static void check_member(struct gw_model *model, const struct gw_system *system, const char *key,
                         const struct gw_member_spec *spec, bool transom)
{
    static const char *const of_glass[] = {"block_offset", "eccentricity"};
    const struct gw_node *node = gw_node_get(system->node, key);
    if (!spec || !node) return;
    if (spec->tube) {
        check_tube(model, at_key(node, "tube"), spec->tube);
        check_properties(model, node);
    }
    check_report(model, node, spec);
    for (size_t i = 0; i < 2 && !transom; i++)
        if (gw_node_get(node, of_glass[i]))
            FAULT(model, node, of_glass[i], "'%s' is of the glass that stands on a transom: give it there",
                  of_glass[i]);
}

static void check_screw(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_screw_spec *k = system->screw;
    const struct gw_plate_spec *p = system->pressure_plate;
    const struct gw_node *screw = gw_node_get(system->node, "screw"),
                         *plate = gw_node_get(system->node, "pressure_plate");
    if (k && k->head_diameter <= k->diameter)
        FAULT(model, screw, "head_diameter", "the head, %s, is no wider than the screw, %s",
              size(model, k->head_diameter), size(model, k->diameter));
    if (p && p->hole >= p->width)
        FAULT(model, plate, "hole", "the hole, %s, is as wide as the plate, %s", size(model, p->hole),
              size(model, p->width));
    if (k && p && p->hole >= k->head_diameter)
        FAULT(model, plate, "hole", "the hole, %s, lets the head of the screw through, %s", size(model, p->hole),
              size(model, k->head_diameter));
    if (k && p && p->hole < k->diameter)
        FAULT(model, plate, "hole", "the hole, %s, is smaller than the screw, %s", size(model, p->hole),
              size(model, k->diameter));
    if (k && k->hold == GW_HOLD_CHASE && gw_node_get(screw, "engagement"))
        FAULT(model, screw, "engagement",
              "a chase holds only part of the thread: 'engagement' has no formula there, give 'tested_pullout'");
}

/* Less than the straight sum is somebody's finding: whose? */
static void check_interaction(struct gw_model *model, const struct gw_node *node, const struct gw_anchor_spec *anchor,
                              const char *key, enum gw_interaction how)
{
    if (how == GW_INTERACTION_UNSET || how == GW_INTERACTION_LINEAR || anchor->report || gw_node_get(node, "report"))
        return;
    FAULT(model, node, key,
          "'%s' takes less than the straight sum of the ratios: name the report that gives it (report)", key);
}

/* Bolts are judged by all four or not at all. */
static void check_anchor(struct gw_model *model, const struct gw_system *system, const char *key,
                         const struct gw_anchor_spec *anchor)
{
    static const char *const keys[] = {"eccentricity", "bolt_arm", "bolts", "bolt_tension"};
    const struct gw_node *node = gw_node_get(system->node, key);
    size_t given = 0;
    if (anchor && node) {
        check_interaction(model, node, anchor, "interaction", anchor->interaction);
        check_interaction(model, node, anchor, "bolt_interaction", anchor->bolt_interaction);
    }
    for (size_t i = 0; node && i < 4; i++) given += gw_node_get(node, keys[i]) != NULL;
    for (size_t i = 0; given && i < 4; i++)
        if (!gw_node_get(node, keys[i])) {
            gw_diag_node(
                model->diags, GW_ERROR, "missing", keys[i], node,
                "'%s' is missing: the bolts need eccentricity, bolt_arm, bolts and bolt_tension together (leave "
                "out all four where the stated reactions cover them)",
                keys[i]);
            return;
        }
}

/* Another path has no head that slides. */
static void check_drift(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_node *node = gw_node_get(system->node, "drift");
    if (system->drift && system->drift->path && system->drift->path != GW_PATH_SLIDING_HEAD &&
        gw_node_get(node, "slip"))
        FAULT(model, node, "slip", "'slip' is of a head that slides: path is '%s'",
              gw_choice_name(gw_drift_path_choices, (int)system->drift->path));
}

static void check_stack(struct gw_model *model, const struct gw_system *system)
{
    const struct gw_stack_spec *s = system->stack_joint;
    const struct gw_node *node = gw_node_get(system->node, "stack_joint");
    if (!s || !node) return;
    if (s->least_gap >= s->width)
        FAULT(model, node, "least_gap", "the closed joint keeps %s of %s: nothing is left to move",
              size(model, s->least_gap), size(model, s->width));
    if (s->least_overlap >= s->engagement)
        FAULT(model, node, "least_overlap", "the open joint keeps %s of %s engaged: nothing is left to move",
              size(model, s->least_overlap), size(model, s->engagement));
}

/* Where a splice lay gives its force only in a specimen that stands with it. */
static void check_splice_place(struct gw_model *model, const struct gw_rating *rating)
{
    const struct gw_node *node = gw_node_get(rating->node, "tested");
    const struct gw_tested *t = rating->tested;
    if (!t || !gw_node_get(node, "splice_at")) return;
    if (gw_node_get(node, "splice_shear"))
        FAULT(model, node, "splice_at",
              "'splice_at' beside 'splice_shear': the report says what the splice carried; leave one of them out");
    if (t->spans == 1)
        FAULT(model, node, "splice_at",
              "'splice_at' in one span, which a splice lets fold: give the spans of the specimen (spans), or what its "
              "splice carried (splice_shear)");
    else if (t->splice_at >= t->span)
        FAULT(model, node, "splice_at",
              "'splice_at' lies beyond the span: it is measured from the nearest anchor between two spans");
}

void gw_validate_framing(struct gw_model *model, const struct gw_system *system)
{
    if (!system->node) return;
    check_member(model, system, "mullion", system->mullion, false);
    check_member(model, system, "corner_mullion", system->corner_mullion, false);
    check_member(model, system, "jamb_mullion", system->jamb_mullion, false);
    check_member(model, system, "transom", system->transom, true);
    for (size_t i = 0; i < system->ratings.n; i++) check_splice_place(model, &system->ratings.items[i]);
    check_screw(model, system);
    check_drift(model, system);
    check_stack(model, system);
    check_anchor(model, system, "anchor", system->anchor);
    check_anchor(model, system, "corner_anchor", system->corner_anchor);
    check_anchor(model, system, "jamb_anchor", system->jamb_anchor);
}
