/* What plate and thread of a line of screws hold as it was read, and the ratings that recorded it otherwise. */
#include "judge/screw_line.h"

#include "judge/by_set.h"
#include "judge/checks.h"
#include "judge/judge_internal.h"
#include "judge/leaning.h"
#include "judge/specimen.h"

#include <string.h>

const struct gw_system *gw_line_as_read(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                                        const struct gw_system *system)
{
    enum { OF_LINE = 3 };
    static const enum gw_item_id line[OF_LINE] = {GW_ITEM_screw_spacing, GW_ITEM_screw_end_distance,
                                                  GW_ITEM_screw_length};
    struct {
        const struct gw_system *system;
        double read[OF_LINE];
    } key = {system, {0}};
    for (int i = 0; i < OF_LINE; i++) key.read[i] = read->of[line[i]].number;
    void **kept = gw_memo_at(&ask->memory->lines_read, ask->arena, &key, sizeof key);
    const struct gw_system *known = *kept;
    if (known) return known;
    struct gw_as_read of_screws;
    gw_as_read_clear(&of_screws);
    for (int i = 0; i < OF_LINE; i++) of_screws.of[line[i]] = read->of[line[i]];
    const struct gw_system *as_read = gw_system_as_read(ask, spot, &of_screws, system);
    memcpy(kept, &as_read, sizeof as_read);
    return as_read;
}

static bool by_test(const struct gw_finding *f) { return f->verdict == GW_PASS && f->evidence == GW_BY_TEST; }

/* As the estimator's check has it, for the system that is given. Its derivation is not that of the item. */
static const struct gw_finding *found(struct gw_ask *ask, const struct gw_check *check, const struct gw_element *e,
                                      const struct gw_system *system)
{
    const struct {
        const struct gw_check *check;
        const struct gw_element *e;
        const struct gw_system *system;
        size_t place; /* whose make-ups are chosen */
    } key = {check, e, system, ask->choice ? ask->choice->place + 1 : 0};
    void **kept = gw_memo_at(&ask->memory->links_read, ask->arena, &key, sizeof key);
    struct gw_finding *f = *kept;
    if (!f) {
        struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d);
        const struct gw_engine own = ask->engine;
        struct gw_trace *trace = ask->trace;
        *kept = f = gw_alloc(ask->arena, 1, sizeof *f);
        ask->trace = NULL;
        gw_judge_element(f, d, ask, check, e, system);
        ask->trace = trace;
        ask->engine = own;
    }
    gw_used_merge(&ask->engine.used, f->used);
    return f;
}

/* A test that covers the line as it was read goes before a calculation of it. */
void gw_left_link(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                  const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_system *as_read = gw_line_as_read(ask, spot, read, system);
    if (!spot->screws) {
        gw_left_unknown(out, GW_PLAINLY("which screws are there? No plate of the take-off stands at that place"));
        return;
    }
    if (!by_test(found(ask, check, spot->screws, as_read))) {
        gw_left_by_check(out, ask, name, check, spot->screws, as_read);
        return;
    }
    struct gw_left alone = {0};
    if (gw_left_by_check(&alone, ask, name, check, spot->screws, as_read) && alone.n && alone.list[0].bad >= 1)
        out->list[out->n++] = alone.list[0];
}

/* Ratings ---------------------------------------------------------------------------------------------------------- */

/* Whether the project takes what shows a link of these lites, where no test does. */
static bool is_taken(struct gw_ask *ask, const struct gw_leaning *lites, enum gw_evidence evidence,
                     const struct gw_system *system)
{
    for (size_t i = 0; i < lites->n; i++) {
        const struct gw_finding *f = found(ask, &gw_check_structural, lites->items[i].on, system);
        const struct gw_evidence_asked asked = gw_evidence_asked(ask, f->demand);
        if (f->demand->state != GW_ASKED || asked.any) continue;
        if (evidence != GW_BY_CALCULATION || !asked.calculation) return false;
    }
    return true;
}

static void look_at_link(struct gw_left *out, struct gw_ask *ask, const struct gw_check *check,
                         const struct gw_spot *spot, const struct gw_system *as_read, const struct gw_system *system)
{
    struct gw_leaning lites = {.n = 0};
    const struct gw_finding *before = found(ask, check, spot->screws, system);
    const struct gw_finding *now = by_test(before) ? found(ask, check, spot->screws, as_read) : NULL;
    if (!now || by_test(now)) return;
    gw_lites_beside(&lites, ask, spot->screws);
    const struct gw_message why =
        as_read->altered != system->altered
            ? GW_SAY(ask->arena, "{} as described, by screws that more thread held", gw_of_message(&before->message))
        : gw_said(&now->untested) ? now->untested
                                  : now->message;
    const bool shown = now->verdict == GW_PASS && is_taken(ask, &lites, now->evidence, system);
    struct gw_message *said = shown ? &out->remark : &out->taken;
    if (!gw_said(said))
        *said =
            shown ? GW_SAY(ask->arena, "{}: its test shows nothing here, calculation does", gw_of_message(&why)) : why;
}

static bool is_rated(const struct gw_system *system, const struct gw_check *check)
{
    const enum gw_test test = check == &gw_check_debris ? GW_TEST_IMPACT : GW_TEST_BLAST;
    for (size_t i = 0; i < system->ratings.n; i++)
        if (system->ratings.items[i].test == test) return true;
    return false;
}

/* What tests alone show: a lite whose rating recorded another fastening, or, where it records none, was submitted with
 * another. */
static void look_at_lites(struct gw_left *out, struct gw_ask *ask, const struct gw_check *check,
                          const struct gw_spot *spot, const struct gw_system *as_read, const struct gw_system *system)
{
    struct gw_leaning lites = {.n = 0};
    if (!is_rated(system, check)) return;
    gw_lites_beside(&lites, ask, spot->screws);
    for (size_t i = 0; i < lites.n && !gw_said(&out->taken); i++) {
        const struct gw_element *lite = lites.items[i].on;
        const struct gw_finding *before = found(ask, check, lite, system);
        if (!by_test(before)) continue;
        const struct gw_finding *now = found(ask, check, lite, as_read);
        if (now->verdict == GW_PASS) continue;
        const struct gw_message why =
            as_read->altered != system->altered
                ? GW_SAY(ask->arena, "{}; more thread held the screws of its specimen", gw_of_message(&before->message))
                : now->message;
        out->taken =
            GW_SAY(ask->arena, "{} at {}: {}", gw_of_text(check->id), gw_of_text(lite->id), gw_of_message(&why));
    }
}

/* Of that wall, each component's. */
static const struct gw_finding *found_of_wall(struct gw_ask *ask, const struct gw_check *check,
                                              const struct gw_judged_wall *wall, const struct gw_system *system)
{
    struct gw_finding *f = gw_alloc(ask->arena, 1, sizeof *f);
    struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d);
    const struct gw_engine own = ask->engine;
    struct gw_trace *trace = ask->trace;
    ask->trace = NULL;
    gw_judge_demand(d, ask, check, &(struct gw_place){.where = wall->wall, .wall = wall, .component = wall->component});
    *f = (struct gw_finding){.candidate = system, .demand = d};
    gw_find(f, ask);
    ask->trace = trace;
    ask->engine = own;
    gw_used_merge(&ask->engine.used, f->used);
    return f;
}

/* Its screws press the gaskets that keep water and air out, which tests alone show. */
static void look_at_joints(struct gw_left *out, struct gw_ask *ask, const struct gw_check *check,
                           const struct gw_spot *spot, const struct gw_system *as_read, const struct gw_system *system)
{
    size_t n;
    const struct gw_judged_wall *walls = gw_judged_walls(ask, &n);
    for (size_t i = 0; i < n && !gw_said(&out->taken); i++) {
        if (strcmp(walls[i].wall, spot->screws->wall) != 0) continue;
        if (!by_test(found_of_wall(ask, check, &walls[i], system))) continue;
        const struct gw_finding *now = found_of_wall(ask, check, &walls[i], as_read);
        if (now->verdict != GW_PASS)
            out->taken = GW_SAY(ask->arena, "{} of {}: {}", gw_of_text(check->id), gw_of_text(walls[i].wall),
                                gw_of_message(&now->message));
    }
}

void gw_left_ratings(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                     const struct gw_system *system)
{
    const struct gw_system *as_read = gw_line_as_read(ask, spot, read, system);
    if (as_read == system || !spot->screws) return;
    look_at_link(out, ask, &gw_check_plate, spot, as_read, system);
    look_at_link(out, ask, &gw_check_screw, spot, as_read, system);
    look_at_lites(out, ask, &gw_check_debris, spot, as_read, system);
    look_at_lites(out, ask, &gw_check_blast, spot, as_read, system);
    look_at_joints(out, ask, &gw_check_water, spot, as_read, system);
    look_at_joints(out, ask, &gw_check_air, spot, as_read, system);
}
