/* Whether anything here asks for what a claim is of, and what the checks say without it. */
#include "causes.h"

#include <string.h>

static const char *const check_of[] = {[GW_TEST_STRUCTURAL] = "structural",
                                       [GW_TEST_AIR] = "air",
                                       [GW_TEST_WATER] = "water",
                                       [GW_TEST_SWAY] = "seismic_glass",
                                       [GW_TEST_IMPACT] = "debris",
                                       [GW_TEST_BLAST] = "blast",
                                       [GW_TEST_OTHER] = "other"};

const char *gw_check_of_test(enum gw_test test) { return check_of[test]; }

static bool is_of(const struct gw_demand *d, const char *check) { return strcmp(d->check->id, check) == 0; }

/* A vent's rating is asked for where there are vents. What is not known to be asked may be. */
static bool may_ask(const struct gw_demand *d, const struct gw_rating *rating)
{
    const enum gw_test test = rating->test;
    if (!is_of(d, check_of[test]) || d->state == GW_NOT_ASKED) return false;
    if (test == GW_TEST_OTHER) return rating->name && d->name && strcmp(rating->name, d->name) == 0;
    return gw_same_component(rating, d->component);
}

/* A missile that is less than the one asked for was shot for another place. */
bool gw_rating_answers(const struct gw_demand *d, const struct gw_rating *rating)
{
    if (!may_ask(d, rating)) return false;
    return rating->test != GW_TEST_IMPACT || !d->hazard || gw_missile_covers(rating->missile, d->hazard->missile);
}

bool gw_rating_is_asked(const struct reviewing *r, const struct gw_rating *rating)
{
    const struct gw_judgement *j = &r->out->answer->judgement;
    for (size_t i = 0; rating->test != GW_TEST_UNSET && i < j->demands.n; i++)
        if (may_ask(&j->demands.items[i], rating)) return true;
    return false;
}

/* Parts that no check is named after, tubes and inserts, belong to others that are asked. */
bool gw_capacity_is_asked(const struct reviewing *r, const char *key)
{
    const struct gw_judgement *j = &r->out->answer->judgement;
    bool any = false;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (!is_of(d, key)) continue;
        if (d->state != GW_NOT_ASKED) return true;
        any = true;
    }
    return !any;
}

/* The check that judges a part which none is named after. */
static const char *check_of_part(const char *key)
{
    static const struct {
        const char *part, *check;
    } of[] = {{"corner_anchor", "anchor"},
              {"jamb_anchor", "anchor"},
              {"corner_mullion", "mullion"},
              {"jamb_mullion", "mullion"}};
    for (size_t i = 0; i < sizeof of / sizeof *of; i++)
        if (strcmp(of[i].part, key) == 0) return of[i].check;
    return key;
}

/* Said once a check: the gravest of what it comes to. */
static bool concerns(const struct reviewing *r, const struct cause *c, const struct gw_check *check)
{
    const struct named_report *n = &r->reports.items[c->report];
    for (int t = GW_TEST_STRUCTURAL; t <= GW_TEST_OTHER; t++)
        if ((c->tests & n->asked & (1u << t)) && strcmp(check->id, check_of[t]) == 0) return true;
    for (size_t i = 0; c->capacities && i < n->stated.n; i++)
        if (strcmp(check->id, check_of_part(n->stated.items[i])) == 0) return true;
    return false;
}

static const struct gw_finding *gravest_of(const struct reviewing *r, const struct gw_finding *findings,
                                           const struct gw_check *check)
{
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++) {
        const struct gw_finding *f = &findings[i];
        if (f->demand->check != check || f->verdict == GW_NOT_REQUIRED) continue;
        if (!worst || gw_graver(f, worst)) worst = f;
    }
    return worst;
}

/* `gone`: with all other evidence that does not hold away too. */
static struct gw_message one_check(struct reviewing *r, const struct gw_finding *f, const struct gw_finding *gone)
{
    static const char *const said[] = {[GW_PASS] = "passes without it too",
                                       [GW_NOT_SHOWN] = "is not shown with it either",
                                       [GW_FAIL] = "fails with it too"};
    const char *id = f->demand->name ? f->demand->name : f->demand->check->id;
    if (f->verdict != GW_PASS || !f->evidence)
        return GW_SAY(r->arena, "{} {}", gw_of_text(id), gw_of_text(said[f->verdict]));
    if (gone->verdict != GW_PASS || gone->evidence != f->evidence)
        return GW_SAY(r->arena, "{} {}, by {} whose own evidence does not hold either", gw_of_text(id),
                      gw_of_text(said[GW_PASS]), gw_of_text(gw_evidence_name(f->evidence)));
    return GW_SAY(r->arena, "{} {}, by {}", gw_of_text(id), gw_of_text(said[f->verdict]),
                  gw_of_text(gw_evidence_name(f->evidence)));
}

struct gw_message gw_without_it(struct reviewing *r, const struct cause *c, const struct gw_finding *findings,
                                const struct gw_finding *all_gone)
{
    struct gw_message all = {0};
    const struct gw_check *before = NULL;
    if (!gw_cause_is_asked(r, c)) return GW_PLAINLY("nothing here asks for it");
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++) {
        const struct gw_check *check = findings[i].demand->check;
        if (check == before || !concerns(r, c, check)) continue;
        before = check; /* demands of a check follow each other */
        const struct gw_finding *worst = gravest_of(r, findings, check);
        if (!worst) continue;
        const struct gw_message one = one_check(r, worst, gravest_of(r, all_gone, check));
        all = gw_say_both(r->arena, &all, "; ", &one);
    }
    return all;
}

bool gw_cause_is_asked(const struct reviewing *r, const struct cause *c)
{
    const struct named_report *n = &r->reports.items[c->report];
    return (c->tests & n->asked) || (c->capacities && n->capacities_asked);
}
