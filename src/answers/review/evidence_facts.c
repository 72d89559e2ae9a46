/* What reports state of make-up, reinforcement and fastening, against what is built. */
#include "causes.h"

#include "base/tolerance.h"

#include "tables_data.h"

#include <ctype.h>
#include <string.h>

#define BIT(test) (1u << GW_TEST_##test)
#define OF_GLASS (BIT(STRUCTURAL) | BIT(IMPACT) | BIT(BLAST) | BIT(SWAY))
#define OF_JOINTS (BIT(WATER) | BIT(AIR))
/* Records of fastening are held against what is built by the checks of these. */
#define OF_EDGES (BIT(STRUCTURAL) | BIT(IMPACT) | BIT(BLAST))
/* How far a mullion bends decides how panes are racked and struck, and how joints open: shown by no record of theirs.
 */
#define ON_MULLIONS (BIT(IMPACT) | BIT(BLAST) | BIT(SWAY) | OF_JOINTS)

/* Make-up --------------------------------------------------------------------------------------------------------- */

/* A gasket seals what is as thick as what was tested, within its range. */
static bool in_range(struct reviewing *r, const struct gw_submitted_report *e, const struct gw_lite_type *type)
{
    const double range = r->ask->model->tables->glazing_pocket[0].tolerance_m;
    const double here = gw_layers_thickness(type->layers.items, type->layers.n);
    for (size_t i = 0; i < e->make_ups.n; i++) {
        const struct gw_listed_make_up *m = &e->make_ups.items[i];
        const double tested = gw_layers_thickness(m->layers.items, m->layers.n);
        if (!gw_given(tested) || !gw_given(here) || fabs(tested - here) <= range * (1 + GW_HAIR)) return true;
    }
    return false;
}

static struct gw_message make_ups_of(struct reviewing *r, const struct gw_submitted_report *e)
{
    struct gw_message all = {0};
    for (size_t i = 0; i < e->make_ups.n; i++) {
        const struct gw_listed_make_up *m = &e->make_ups.items[i];
        const struct gw_message one = gw_layers_message(r, m->layers.items, m->layers.n);
        all = gw_say_both(r->arena, &all, "; ", &one);
    }
    return all;
}

static struct gw_message needed_of(struct reviewing *r, struct gw_message all, const struct gw_lite_type *type)
{
    const struct gw_message layers = gw_layers_message(r, type->layers.items, type->layers.n);
    const struct gw_message one = GW_SAY(r->arena, "{}: {}", gw_of_text(type->name), gw_of_message(&layers));
    return gw_say_both(r->arena, &all, "; ", &one);
}

/* A vent or a door is shown by ratings of its own kind alone: whatever its make-up, no other's report answers for it.
 */
static bool answers_for(const struct reviewing *r, size_t report, const struct gw_lite_type *type, unsigned tests)
{
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        if (rating->report && gw_report_index(r, rating->report) == report && (tests & (1u << rating->test)) &&
            gw_same_component(rating, type->component))
            return true;
    }
    return false;
}

/* Another report of such a rating lists that make-up: this one need not, as far as that one reaches. */
static bool is_shown_elsewhere(struct reviewing *r, size_t report, const struct gw_lite_type *type, unsigned tests)
{
    for (size_t i = 0; i < r->reports.n; i++) {
        const struct named_report *n = &r->reports.items[i];
        if (i != report && n->entry && n->entry->make_ups.n && answers_for(r, i, type, tests) &&
            gw_report_made_of(r, n->entry, type->layers.items, type->layers.n))
            return true;
    }
    return false;
}

static void check_make_up(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    const struct make_ups built = gw_make_ups_built(r);
    struct gw_message glass = {0}, thick = {0}, elsewhere = {0};
    for (size_t i = 0; n->entry->make_ups.n && i < built.n; i++) {
        const struct gw_lite_type *type = built.items[i];
        if (gw_report_made_of(r, n->entry, type->layers.items, type->layers.n)) continue;
        if (!answers_for(r, report, type, UINT32_MAX)) continue;
        if (is_shown_elsewhere(r, report, type, n->tests & (OF_GLASS | OF_JOINTS))) {
            elsewhere = needed_of(r, elsewhere, type);
            continue;
        }
        glass = needed_of(r, glass, type);
        if (!in_range(r, n->entry, type)) thick = needed_of(r, thick, type);
    }
    const bool of_joints = gw_said(&thick) && (n->tests & OF_JOINTS), answered = !gw_said(&glass) && !of_joints;
    if (answered) glass = elsewhere;
    const bool of_glass = gw_said(&glass) && (n->tests & OF_GLASS);
    if (!of_glass && !of_joints) return;
    struct cause *c = gw_cause_add(out, r, "report_make_up", report);
    const struct gw_message *needed = of_glass ? &glass : &thick;
    c->fact = of_glass ? MAKE_UP_FACT : NO_FACT;
    c->answered = answered;
    c->tests = of_joints ? OF_JOINTS : 0;
    c->submitted = make_ups_of(r, n->entry);
    c->needed = *needed;
    c->basis = of_glass ? GW_PLAINLY("a test shows the make-up that was tested: lites, edges, impact, blast, racking")
                        : GW_PLAINLY("water and air hold where the gasket seals the thickness that was tested");
}

/* Reinforcement --------------------------------------------------------------------------------------------------- */

/* `word` in small letters. */
static bool says(const char *text, const char *word)
{
    for (; *text; text++) {
        size_t n = 0;
        while (word[n] && tolower((unsigned char)text[n]) == word[n]) n++;
        if (!word[n]) return true;
    }
    return false;
}

/* The report's words name the other metal. */
static bool of_other_metal(const char *was, const struct gw_insert_spec *insert)
{
    const bool steel = says(was, "steel"), aluminum = says(was, "alumin");
    if (steel == aluminum || insert->metal == GW_INSERT_UNSET) return false;
    return steel != (insert->metal == GW_INSERT_STEEL);
}

/* What a rating says that the report was of; NULL: the same, or nothing. */
static const char *recorded_otherwise(const struct reviewing *r, size_t report, const char *was)
{
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        const char *recorded = rating->tested ? rating->tested->reinforcement : NULL;
        if (recorded && rating->report && gw_report_index(r, rating->report) == report &&
            !gw_words_alike(recorded, was))
            return recorded;
    }
    return NULL;
}

/* With every set of options that the project takes. */
static bool is_reinforced(const struct reviewing *r)
{
    bool all = true;
    for (size_t i = 0; i < r->built.n; i++) {
        const struct gw_member_spec *m = r->built.items[i].system->mullion;
        all = all && m && m->insert;
    }
    return all;
}

/* Of a wall as a whole, unless every place of it is. */
static bool is_plain_there(const struct reviewing *r, const struct gw_demand *d)
{
    const struct gw_member_spec *m = d->element ? gw_built_at(r, d->element)->mullion : NULL;
    return !m || !m->insert;
}

/* Reinforced, as the mullion is; with something else. */
static void check_other_reinforcement(struct causes *out, struct reviewing *r, size_t report, const char *was)
{
    const char *recorded = recorded_otherwise(r, report, was);
    bool other = false;
    for (size_t i = 0; i < r->built.n; i++)
        other = other || of_other_metal(was, r->built.items[i].system->mullion->insert);
    if (!recorded && !other) return;
    struct cause *c = gw_cause_add(out, r, "report_reinforcement", report);
    c->tests = r->reports.items[report].tests & (BIT(STRUCTURAL) | ON_MULLIONS);
    c->gone = true;
    c->submitted = GW_SAY(r->arena, "tested with {}", gw_of_text(was));
    c->needed = recorded ? GW_SAY(r->arena, "a test with {}, as the rating that names it says", gw_of_text(recorded))
                         : GW_PLAINLY("a test with the insert that is built, which is of another metal");
    c->basis = GW_PLAINLY("a test shows the reinforcement that was tested");
    c->ask = GW_PLAINLY("with which reinforcement was it tested? Ask the manufacturer");
}

static void check_reinforcement(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    const char *was = n->entry->reinforcement;
    if (!was || gw_says_none(was) || !(n->tests & (BIT(STRUCTURAL) | ON_MULLIONS))) return;
    if (is_reinforced(r)) {
        check_other_reinforcement(out, r, report, was);
        return;
    }
    struct cause *c = gw_cause_add(out, r, "report_reinforcement", report);
    c->fact = n->tests & BIT(STRUCTURAL) ? REINFORCEMENT_FACT : NO_FACT;
    c->tests = n->tests & ON_MULLIONS;
    c->gone = c->tests;
    c->counts = is_plain_there;
    c->submitted = GW_SAY(r->arena, "tested with {}", gw_of_text(was));
    c->needed = GW_PLAINLY("a test of the mullion without reinforcement, or the reinforcement that was tested");
    c->basis = GW_PLAINLY("a test of a reinforced mullion shows no plain one");
}

/* Fastening ------------------------------------------------------------------------------------------------------- */

/* The greatest spacing of screws in the walls, with the options of each place. */
static double spacing_built(struct reviewing *r)
{
    const struct gw_takeoff *t = r->ask->takeoff;
    double most = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind != GW_SCREW) continue;
        const struct gw_screw_spec *s = gw_built_at(r, e)->screw;
        const bool own = !e->grid->screws_given && s && gw_given(s->spacing);
        most = fmax(most, own ? s->spacing : e->height);
    }
    return most;
}

/* The thinnest screws and those that are farthest from the end of the plate; absent: not known. */
static struct gw_screw_spec screws_built(const struct reviewing *r)
{
    struct gw_screw_spec out = {.diameter = GW_ABSENT, .end_distance = GW_ABSENT};
    for (size_t i = 0; i < r->built.n; i++) {
        const struct gw_screw_spec *s = r->built.items[i].system->screw;
        if (!s) continue;
        out.diameter = fmin(s->diameter, out.diameter); /* fmin and fmax take what is given */
        out.end_distance = fmax(s->end_distance, out.end_distance);
    }
    return out;
}

static void check_fastening(struct causes *out, struct reviewing *r, size_t report)
{
    const struct named_report *n = &r->reports.items[report];
    const struct gw_tested_fastening *f = n->entry->fastening;
    const struct gw_screw_spec built = screws_built(r), *s = &built;
    const double here = spacing_built(r);
    if (!f || !(n->tests & (OF_EDGES | OF_JOINTS))) return;
    const struct gw_size_spelling *rows = r->ask->model->tables->size_spelling;
    const double place = rows[GW_ROW_SIZE_SPELLING_PLACE].apart_m, size = rows[GW_ROW_SIZE_SPELLING_SCREW].apart_m;
    const bool apart = f->spacing < here - place,
               end = f->end_distance<s->end_distance - place, thick = f->diameter> s->diameter + size;
    if (!apart && !end && !thick) return;
    struct cause *c = gw_cause_add(out, r, "report_fastening", report);
    c->fact = FASTENING_FACT;
    c->tests = n->tests & OF_JOINTS; /* what presses the gasket */
    c->gone = c->tests;
    c->submitted = apart   ? GW_SAY(r->arena, "screws {} apart", gw_of_quantity(GW_THICKNESS, f->spacing))
                   : thick ? GW_SAY(r->arena, "screws of {}", gw_of_quantity(GW_THICKNESS, f->diameter))
                           : GW_SAY(r->arena, "screws {} from the end of the plate",
                                    gw_of_quantity(GW_THICKNESS, f->end_distance));
    c->needed = apart ? GW_SAY(r->arena, "a test with screws {} apart, as here", gw_of_quantity(GW_THICKNESS, here))
                : thick
                    ? GW_SAY(r->arena, "a test with screws of {}, as here", gw_of_quantity(GW_THICKNESS, s->diameter))
                    : GW_SAY(r->arena, "a test with screws {} from the end, as here",
                             gw_of_quantity(GW_THICKNESS, s->end_distance));
    c->basis =
        GW_PLAINLY("a test shows the fastening that was tested: edges, plates, screws, and the gasket that they press");
}

void gw_find_fact_causes(struct causes *out, struct reviewing *r, size_t report)
{
    check_make_up(out, r, report);
    check_reinforcement(out, r, report);
    check_fastening(out, r, report);
}
