/* Ratings of a system: which key belongs to which test, and what a test cannot be judged without. */
#include "model_internal.h"

#include <string.h>

#define OF(test) (1u << (test))
enum {
    STRUCTURAL = OF(GW_TEST_STRUCTURAL),
    AIR = OF(GW_TEST_AIR),
    WATER = OF(GW_TEST_WATER),
    SWAY = OF(GW_TEST_SWAY),
    IMPACT = OF(GW_TEST_IMPACT),
    BLAST = OF(GW_TEST_BLAST),
    OTHER = OF(GW_TEST_OTHER)
};

/* Every other key (test, name, component, tested, report, mended) stands beside any test. */
static const struct owned {
    const char *key;
    unsigned tests;
    const char *of;
} OWNED[] = {
    {"positive", STRUCTURAL | IMPACT, "a structural or impact test"},
    {"negative", STRUCTURAL | IMPACT, "a structural or impact test"},
    {"held", STRUCTURAL, "a structural test"},
    {"failed_at", STRUCTURAL, "a structural test"},
    {"deflection", STRUCTURAL, "a structural test"},
    {"pressure", WATER | BLAST, "a water or blast test"},
    {"impulse", BLAST, "a blast test"},
    {"hazard", BLAST, "a blast test"},
    {"condition", BLAST, "a blast test"},
    {"leakage", AIR, "an air test"},
    {"at", AIR, "an air test"},
    {"value", OTHER, "a rating by its name (test: other)"},
    {"drift", SWAY, "a sway test"},
    {"kind", SWAY, "a sway test"},
    {"missile", IMPACT, "an impact test"},
    {"wind_zone", IMPACT, "an impact test"},
    {"bite", IMPACT, "an impact test"},
    {"cycles", IMPACT, "an impact test"},
    {"small_missile_shown", IMPACT, "an impact test"},
    {"high_velocity_zone", IMPACT, "an impact test"},
    {"after_structural", WATER | AIR, "a water or air test"},
};
static const char *const WANTS[] = {
    [GW_TEST_STRUCTURAL] = "a structural test wants positive and negative",
    [GW_TEST_AIR] = "an air test wants leakage and at",
    [GW_TEST_WATER] = "a water test wants pressure",
    [GW_TEST_SWAY] = "a sway test wants kind and drift",
    [GW_TEST_IMPACT] = "an impact test wants missile, positive and negative",
    [GW_TEST_BLAST] = "a blast test wants pressure and impulse",
    [GW_TEST_OTHER] = "a rating by its name wants value",
};

/* What nothing would read must not seem to count. True: one of its keys is of another test. */
static bool check_keys(struct gw_model *model, const struct gw_rating *r, enum gw_test test)
{
    bool other = false;
    for (const struct gw_node *child = r->node->first; child; child = child->next)
        for (size_t i = 0; i < sizeof OWNED / sizeof *OWNED; i++) {
            if (strcmp(child->key, OWNED[i].key) != 0 || OWNED[i].tests & OF(test)) continue;
            gw_diag_key(model->diags, GW_ERROR, "bad_value", child, "'%s' is of %s: %s", child->key, OWNED[i].of,
                        WANTS[test]);
            other = true;
        }
    return other;
}

static void want(struct gw_model *model, const struct gw_rating *rating, const char *key, double value)
{
    if (!gw_given(value) && !gw_node_get(rating->node, key) && !gw_has_unknown_key(model, rating->node))
        gw_diag_node(model->diags, GW_ERROR, "missing", key, rating->node, "'%s' is missing in this rating", key);
}

/* The key is of blast too, where other pressures are usual. */
static void doubt_water(struct gw_model *model, const struct gw_rating *r)
{
    const double least = 100, most = 1500; /* Pa: plausible, no limit */
    const struct gw_node *node = gw_at_key(r->node, "pressure");
    if (gw_given(r->pressure) && (r->pressure < least || r->pressure > most))
        gw_diag_node(model->diags, GW_WARNING, "implausible", "pressure", node,
                     "'pressure' is %s; water tests are usually made at %s to %s", node->text ? node->text : "",
                     gw_shown(model, GW_PRESSURE, least), gw_shown(model, GW_PRESSURE, most));
}

static void check_rating(struct gw_model *model, const struct gw_rating *r)
{
    const bool untold = r->test == GW_TEST_UNSET && !gw_node_get(r->node, "test");
    const enum gw_test test = untold && r->name ? GW_TEST_OTHER : r->test;
    if (untold && !r->name && !gw_holds_fault(model, r->node))
        gw_diag_node(model->diags, GW_ERROR, "missing", "test", r->node,
                     "'test' is missing: which test gave this rating?");
    if (test == GW_TEST_UNSET || check_keys(model, r, test)) return;
    if (test == GW_TEST_AIR) {
        want(model, r, "leakage", r->leakage);
        want(model, r, "at", r->at);
    }
    if (test == GW_TEST_WATER) {
        want(model, r, "pressure", r->pressure);
        doubt_water(model, r);
    }
    if (test != GW_TEST_OTHER) return;
    if (!r->name && !gw_node_get(r->node, "name"))
        gw_diag_node(model->diags, GW_ERROR, "missing", "name", r->node,
                     "'name' is missing in this rating: which number is it?");
    want(model, r, "value", r->value);
}

void gw_validate_system(struct gw_model *model, const struct gw_system *system)
{
    for (size_t i = 0; i < system->ratings.n; i++)
        if (system->ratings.items[i].node) check_rating(model, &system->ratings.items[i]);
    gw_validate_framing(model, system);
    gw_validate_installation(model, system);
}
