#include "judge/lite_room.h"

#include "judge/checks.h"
#include "judge/glass_lite.h"
#include "judge/racking.h"

#include "tables_data.h"

/* Systems as read -------------------------------------------------------------------------------------------------- */

static double or_own(double read, double own) { return gw_given(read) ? read : own; }

const struct gw_system *gw_with_room(struct gw_ask *ask, const struct gw_system *system, const struct gw_room *room)
{
    struct gw_system *copy = gw_alloc(ask->arena, 1, sizeof *copy);
    const bool bead = system->system->glazing == GW_SILICONE;
    *copy = *system;
    if (system->drift) {
        struct gw_drift_spec *drift = gw_alloc(ask->arena, 1, sizeof *drift);
        *drift = *system->drift;
        drift->side_gap = or_own(room->side_gap, drift->side_gap);
        drift->end_gap = or_own(room->end_gap, drift->end_gap);
        if (!bead) drift->bite = or_own(room->bite, drift->bite);
        copy->drift = drift;
    }
    if (system->silicone && bead) {
        struct gw_silicone_spec *silicone = gw_alloc(ask->arena, 1, sizeof *silicone);
        *silicone = *system->silicone;
        silicone->bite = or_own(room->bite, silicone->bite);
        copy->silicone = silicone;
    }
    return copy;
}

/* What one specimen had, against what was read. */
struct compared {
    const char *what;
    double recorded, read;
    double spelled; /* m, by which one size differs in inches and in whole millimeters */
};

static bool has_more(const struct compared *c)
{
    return gw_given(c->recorded) && gw_given(c->read) && c->recorded > c->read * (1 + GW_HAIR) + c->spelled;
}

/* Said where the rating's specimen departs from what was read; else not. */
static struct gw_message departs(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_room *room,
                                 bool unrecorded)
{
    const struct gw_tested *t = rating->tested;
    const double bite = gw_given(rating->bite) || !t ? rating->bite : t->bite;
    const double spelled = ask->model->tables->size_spelling[GW_ROW_SIZE_SPELLING_PLACE].apart_m;
    const struct compared all[] = {{"a bite", bite, room->bite, spelled},
                                   {"a side gap", t ? t->side_gap : GW_ABSENT, room->side_gap, 0},
                                   {"an end gap", t ? t->end_gap : GW_ABSENT, room->end_gap, 0}};
    const bool hazard = rating->test == GW_TEST_IMPACT || rating->test == GW_TEST_BLAST;
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        if (has_more(&all[i]))
            return GW_SAY(ask->arena, "{} recorded {} of {}, here {}", gw_of_text(gw_report_name(rating)),
                          gw_of_text(all[i].what), gw_of_quantity(GW_THICKNESS, all[i].recorded),
                          gw_of_quantity(GW_THICKNESS, all[i].read));
    if (unrecorded && hazard && !gw_given(bite))
        return GW_SAY(ask->arena, "{} records no bite, here {}: less than drawn", gw_of_text(gw_report_name(rating)),
                      gw_of_quantity(GW_THICKNESS, room->bite));
    return (struct gw_message){0};
}

/* A copy without the ratings whose specimens had more of it, with `unrecorded` also without those of debris and blast
 * that record no bite; the system itself where there is none. */
static const struct gw_system *without_departed(struct gw_ask *ask, const struct gw_system *system,
                                                const struct gw_room *room, bool unrecorded)
{
    struct gw_system *copy = gw_alloc(ask->arena, 1, sizeof *copy);
    struct gw_rating *kept = gw_alloc(ask->arena, system->ratings.n + 1, sizeof *kept);
    *copy = *system;
    copy->ratings.items = kept;
    copy->ratings.n = 0;
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_message why = departs(ask, &system->ratings.items[i], room, unrecorded);
        if (!gw_said(&why)) kept[copy->ratings.n++] = system->ratings.items[i];
    }
    return copy->ratings.n < system->ratings.n ? copy : system;
}

/* Verdicts --------------------------------------------------------------------------------------------------------- */

/* Findings may be kept by messages, and the ask's engine and system are the item's own. */
static const struct gw_finding *judged(struct gw_ask *ask, const struct gw_check *check,
                                       const struct gw_element *element, const struct gw_system *system, bool limits)
{
    struct gw_finding *f = gw_alloc(ask->arena, 1, sizeof *f);
    struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d);
    const struct gw_engine own = ask->engine;
    const struct gw_system *on_offer = ask->system;
    if (limits) gw_judge_limits(f, d, ask, check, element, system);
    else gw_judge_element(f, d, ask, check, element, system);
    ask->engine = own;
    ask->system = on_offer;
    gw_used_merge(&ask->engine.used, f->used);
    return f;
}

static bool by_a_test(const struct gw_finding *f)
{
    return f->verdict == GW_PASS && (f->evidence == GW_BY_TEST || f->evidence == GW_BY_STATEMENT);
}

/* A pass without a number is one all the same: no more is known of it. */
static void enough(struct gw_left *out, const char *name, const struct gw_finding *f)
{
    const double left = !gw_given(f->utilization) ? 1 : f->utilization > 0 ? 1 / f->utilization : INFINITY;
    gw_left_by(out, name, left, left, 1, f->message);
}

/* Bonded glass has no clearance to be short of: a test is asked. */
static bool has_limits(const struct gw_check *check, const struct gw_system *system)
{
    return check->does->capacity && !(check == &gw_check_seismic_glass && gw_is_bonded(system));
}

/* Capacity over demand of what falls short; absent. */
static double short_by(const struct gw_finding *f)
{
    if (f->verdict != GW_FAIL) return GW_ABSENT;
    if (gw_given(f->utilization)) return f->utilization > 0 ? 1 / f->utilization : GW_ABSENT;
    return f->at_most ? f->required / f->provided : f->provided / f->required;
}

/* Short by calculation where a test could still show it: lost to what was read only where it was shown as drawn. */
static bool is_open_as_drawn(struct gw_ask *ask, const struct gw_check *check, const struct gw_element *element,
                             const struct gw_system *offered)
{
    return check->does->route == GW_LIMITS_THEN_RATING && short_by(judged(ask, check, element, offered, true)) < 1;
}

const char gw_short_as_drawn[] = "short as drawn too";

static void not_enough(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                       const struct gw_element *element, const struct gw_system *offered,
                       const struct gw_system *as_read, const struct gw_finding *now)
{
    const bool by_limits = now->verdict != GW_FAIL && has_limits(check, as_read);
    const struct gw_finding *by = by_limits ? judged(ask, check, element, as_read, true) : now;
    const double left = short_by(by);
    if (left < 1 && by_limits && is_open_as_drawn(ask, check, element, offered)) {
        out->undecided = true;
        gw_left_unknown(out, gw_say_both(ask->arena, &GW_PLAINLY(gw_short_as_drawn), ": ", &now->message));
    } else if (left < 1) gw_left_by(out, name, left, left, 1, by->message);
    else if (now->verdict == GW_FAIL) gw_left_by(out, name, 0, 0, 1, now->message);
    else gw_left_unknown(out, gw_said(&now->question) ? now->question : now->message);
}

void gw_left_by_verdict(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                        const struct gw_element *element, const struct gw_system *offered,
                        const struct gw_system *as_read, struct gw_message named)
{
    const struct gw_finding *now = judged(ask, check, element, as_read, false);
    if (now->verdict == GW_NOT_REQUIRED) return;
    if (now->verdict == GW_PASS) {
        enough(out, name, now);
        return;
    }
    if (as_read != offered && by_a_test(judged(ask, check, element, offered, false)))
        out->taken = gw_say_both(ask->arena, &out->taken, "; ", gw_said(&named) ? &named : &now->message);
    else not_enough(out, ask, name, check, element, offered, as_read, now);
}

void gw_left_by_either(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                       const struct gw_element *element, const struct gw_system *offered,
                       const struct gw_system *as_read, struct gw_message question)
{
    const struct gw_finding *now = judged(ask, check, element, as_read, false);
    if (now->verdict == GW_NOT_REQUIRED) return;
    if (now->verdict == GW_PASS) enough(out, name, now);
    else if (judged(ask, check, element, offered, false)->verdict == GW_PASS) gw_left_unknown(out, question);
    else not_enough(out, ask, name, check, element, offered, as_read, now);
}

bool gw_may_drift(struct gw_ask *ask, const struct gw_element *lite, const struct gw_system *system)
{
    return judged(ask, &gw_check_seismic_glass, lite, system, false)->demand->state != GW_NOT_ASKED;
}

/* Of the ratings that depart, which of them held the lite as it is drawn by that check: each beside those that do not
 * depart. Where none does alone, all of them. */
static struct gw_message held_by(struct gw_ask *ask, const struct gw_check *check, const struct gw_element *lite,
                                 const struct gw_system *system, const struct gw_room *room, bool unrecorded)
{
    const struct gw_system *rest = without_departed(ask, system, room, unrecorded);
    const size_t n = rest->ratings.n;
    struct gw_message held = {0}, all = {0};
    struct gw_system one = *rest;
    struct gw_rating *ratings = gw_alloc(ask->arena, n + 1, sizeof *ratings);
    for (size_t i = 0; i < n; i++) ratings[i] = rest->ratings.items[i];
    one.ratings.items = ratings;
    one.ratings.n = n + 1;
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_message why = departs(ask, &system->ratings.items[i], room, unrecorded);
        if (!gw_said(&why)) continue;
        ratings[n] = system->ratings.items[i];
        all = gw_say_both(ask->arena, &all, "; ", &why);
        if (by_a_test(judged(ask, check, lite, &one, false))) held = gw_say_both(ask->arena, &held, "; ", &why);
    }
    return gw_said(&held) ? held : all;
}

void gw_left_by_drift(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                      const struct gw_system *system, const struct gw_room *room)
{
    const struct gw_check *check = &gw_check_seismic_glass;
    const struct gw_system *roomy = gw_with_room(ask, system, room);
    const struct gw_system *as_read = without_departed(ask, roomy, room, false);
    struct gw_message named = {0};
    if (as_read != roomy) named = held_by(ask, check, lite, system, room, false);
    gw_left_by_verdict(out, ask, "drift", check, lite, system, as_read, named);
}

void gw_left_by_tests_of_bite(struct gw_left *out, struct gw_ask *ask, const struct gw_element *lite,
                              const struct gw_system *system, double bite, bool below_drawn)
{
    const struct gw_check *const checks[] = {&gw_check_structural, &gw_check_seismic_glass, &gw_check_debris,
                                             &gw_check_blast};
    const struct gw_room room = {GW_ABSENT, GW_ABSENT, bite};
    const struct gw_system *as_read = without_departed(ask, system, &room, below_drawn);
    for (size_t i = 0; i < sizeof checks / sizeof *checks && as_read != system; i++) {
        if (!by_a_test(judged(ask, checks[i], lite, system, false))) continue;
        const struct gw_finding *now = judged(ask, checks[i], lite, as_read, false);
        if (now->verdict == GW_PASS || now->verdict == GW_NOT_REQUIRED) continue;
        const struct gw_message named = held_by(ask, checks[i], lite, system, &room, below_drawn);
        out->taken = gw_say_both(ask->arena, &out->taken, "; ", &named);
        return;
    }
}

void gw_left_by_range(struct gw_left *out, const char *name, double has, const struct gw_needed *needed,
                      struct gw_message how, const char *measure, const char *question)
{
    const double good = needed->least > 0 ? has / needed->least : INFINITY,
                 known = needed->known > 0 ? has / needed->known : INFINITY,
                 bad = needed->most > 0 ? has / needed->most : INFINITY;
    if (bad < 1 - GW_HAIR && known >= 1 - GW_HAIR) gw_left_unknown(out, GW_PLAINLY(question));
    else gw_left_by(out, name, good, bad, 1, how)->measure = measure;
}

/* Practice --------------------------------------------------------------------------------------------------------- */

double gw_lite_thickness(struct gw_ask *ask, const struct gw_element *lite)
{
    const struct gw_lite_type *type = lite ? gw_glazed_type(ask, lite) : NULL;
    return type ? gw_layers_thickness(type->layers.items, type->layers.n) : GW_ABSENT;
}

const struct gw_glazing_room *gw_practice_room(struct gw_ask *ask, const struct gw_element *lite)
{
    const struct gw_glazing_room *rows = ask->model->tables->glazing_room, *row = &rows[GW_ROW_GLAZING_ROOM_SINGLE];
    const struct gw_lite_type *type = lite ? gw_glazed_type(ask, lite) : NULL;
    struct gw_make_up m;
    struct gw_engine engine;
    gw_engine_init(&engine, ask->model->tables, NULL);
    if (!type || gw_make_up_from(&m, type->layers.items, type->layers.n, &engine) != GW_OK) return NULL;
    const struct gw_glazing_room *thick = &rows[GW_ROW_GLAZING_ROOM_LAMINATED];
    if (m.n_panes > 1) row = &rows[GW_ROW_GLAZING_ROOM_INSULATING];
    else if (m.panes[0].n_plies > 1 && gw_lite_thickness(ask, lite) >= thick->thickness_m * (1 - GW_HAIR)) row = thick;
    gw_used_add(&ask->engine.used, &row->row);
    return row;
}
