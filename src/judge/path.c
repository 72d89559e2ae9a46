/* The structural verdict of an element: along its own load path, each link by a test or by calculation. */
#include "judge/by_set.h"
#include "judge_internal.h"

#include "judge/checks.h"
#include "judge/leaning.h"

/* One candidate's findings of links, by the element's index and the link's number. */
struct gw_paths {
    const struct gw_finding **of;      /* `each` an element; the first: framing that a specimen speaks against */
    const struct gw_finding *findings; /* where they lie */
    size_t each;
};

/* Rows of the registry that are links, numbered from 1; of none how many there are. */
static unsigned link_number(const struct gw_check *check)
{
    size_t n;
    unsigned number = 0;
    const struct gw_check *const *checks = gw_check_list(&n);
    for (size_t i = 0; i < n && checks[i] != check; i++) number += checks[i]->link;
    return check ? number + 1 : number;
}

static void gather(struct gw_paths *links, const struct gw_finding *findings, size_t n, struct gw_ask *ask)
{
    const struct gw_check *last = NULL;
    unsigned number = 0;
    links->findings = findings;
    links->each = link_number(NULL) + 1;
    links->of = gw_alloc(ask->arena, links->each * (ask->takeoff->elements.n + 1), sizeof(const struct gw_finding *));
    for (size_t i = 0; i < n; i++) {
        const struct gw_demand *d = findings[i].demand;
        if (d->element && d->check->path && d->element->kind != GW_LITE && findings[i].adverse)
            links->of[links->each * d->element->index] = &findings[i];
        if (!d->element || !d->check->link) continue;
        if (d->check != last) number = link_number(d->check);
        last = d->check;
        links->of[links->each * d->element->index + number] = &findings[i];
    }
}

/* What the links of a path come to. */
struct held {
    const struct gw_finding *by;
    long pieces; /* of the element's, that lean on it */
};
struct path {
    struct held worst;
    struct held low;                   /* whose test is short where no calculation that is taken shows more */
    const struct gw_finding *untested; /* the first that a test recorded does not show */
    const struct gw_finding *stated;   /* the first that stands on what names no report */
    const struct gw_finding *calculated;
    bool test_alone; /* the project takes no calculation */
    /* Pieces of the element that lean on a link that fails, that is not shown, that no test shows. */
    size_t words;
    uint64_t *failing, *unshown, *beyond;
};

/* A short test decides where calculation does not show the link, or where the project takes none. */
static bool is_low(const struct path *path, const struct gw_finding *f)
{
    return f->rated && (f->verdict == GW_NOT_SHOWN || (f->verdict == GW_PASS && path->test_alone));
}

static bool is_lower(const struct gw_finding *f, const struct gw_finding *least)
{
    return !least || !(f->rated->utilization <= least->rated->utilization);
}

static void add_pieces(const struct path *path, uint64_t *set, const struct gw_leans *leans)
{
    for (size_t i = 0; i < path->words; i++) set[i] |= leans->members[i];
}

static void take(struct path *path, const struct gw_finding *f, const struct gw_leans *leans)
{
    if (!f || f->verdict == GW_NOT_REQUIRED) return;
    /* glass, its bead and its seats: no wind test shows their strength */
    const bool testable = f->demand->check->does->test != NULL && !f->wind_tested;
    const bool calculated = f->evidence == GW_BY_CALCULATION && testable, low = is_low(path, f);
    if (calculated && !path->calculated) path->calculated = f;
    if (calculated && !path->untested && gw_said(&f->untested)) path->untested = f;
    if (!path->stated && f->evidence == GW_BY_STATEMENT) path->stated = f;
    if (low && is_lower(f, path->low.by)) path->low = (struct held){f, leans->pieces};
    if (gw_graver(f, path->worst.by)) path->worst = (struct held){f, leans->pieces};
    if (low || f->verdict == GW_FAIL) add_pieces(path, path->failing, leans);
    if (f->verdict == GW_NOT_SHOWN) add_pieces(path, path->unshown, leans);
    if (calculated && gw_said(&f->untested)) add_pieces(path, path->beyond, leans);
}

/* A lite's own glass and bead count; those of others do not. */
static void walk_links(const struct gw_paths *links, struct gw_ask *ask, const struct gw_element *e,
                       void (*visit)(void *user, const struct gw_finding *f, const struct gw_leans *leans), void *user)
{
    const struct gw_leaning *l = gw_leaning_of(ask, e);
    for (size_t i = 0; i < l->n; i++)
        for (size_t k = 1; k <= links->each; k++) { /* links in order, what speaks against it last */
            const struct gw_finding *f = links->of[links->each * l->items[i].on->index + k % links->each];
            if (f && (f->demand->check != &gw_check_splice || l->items[i].splice)) visit(user, f, &l->items[i]);
        }
}

static void take_link(void *path, const struct gw_finding *f, const struct gw_leans *leans) { take(path, f, leans); }

static void walk(struct path *path, const struct gw_paths *links, struct gw_ask *ask, const struct gw_demand *d)
{
    const struct gw_evidence_asked asked = gw_evidence_asked(ask, d);
    const size_t words = gw_leaning_of(ask, d->element)->words;
    uint64_t *sets = gw_alloc(ask->arena, 3 * words + 1, sizeof *sets);
    *path = (struct path){.test_alone = asked.test && !asked.calculation,
                          .words = words,
                          .failing = sets,
                          .unshown = sets + words,
                          .beyond = sets + 2 * words};
    walk_links(links, ask, d->element, take_link, path);
}

/* Verdicts -----------------------------------------------------------------------------------------------------------
 */

/* Other elements than lites are pieces of one member, which lean as one. */
static long leaning(const struct gw_finding *f, const struct held *held)
{
    const struct gw_element *e = f->demand->element;
    return e->kind == GW_LITE && held->pieces < e->count ? held->pieces : e->count;
}

static struct gw_message at_link(struct gw_ask *ask, const struct gw_finding *f, const struct held *held)
{
    const struct gw_demand *link = held->by->demand;
    const long count = f->demand->element->kind == GW_LITE ? f->demand->element->count : held->pieces;
    const struct gw_message share = held->pieces < count ? GW_SAY(ask->arena, " (on which {} of these {} lean)",
                                                                  gw_of_count(held->pieces), gw_of_count(count))
                                                         : (struct gw_message){0};
    return GW_SAY(ask->arena, "{} at {}{}", gw_of_text(link->check->id), gw_of_text(link->where),
                  gw_of_message(&share));
}

/* The link's own figures stand with it. */
static void lean_on(struct gw_finding *f, struct gw_ask *ask, const struct gw_finding *link)
{
    f->link = link;
    f->required = f->provided = GW_ABSENT;
    ask->engine.used = *f->used;
    f->used = gw_ask_close(ask, link->used);
}

static struct gw_message how_short(struct gw_ask *ask, const struct gw_finding *f)
{
    return GW_SAY(ask->arena, "its test is short: {}: {}, here {} is asked", gw_of_message(&f->message),
                  gw_of_capacity(f->dim, f->provided), gw_of_demand(f->dim, f->required));
}

static void not_shown(struct gw_finding *f, struct gw_ask *ask, const struct path *path)
{
    const struct gw_message at = at_link(ask, f, &path->worst);
    const bool is_short = f->verdict == GW_FAIL, covered = f->verdict == GW_PASS;
    const struct gw_message rated = is_short ? how_short(ask, f) : f->message;
    const char *missing = is_short ? "no complete calculation shows more" : "by calculation a link is missing";
    f->link = path->worst.by;
    if (!covered) f->untested = rated;
    f->message = covered ? GW_SAY(ask->arena, "a link is missing: {}: {}", gw_of_message(&at),
                                  gw_of_message(&path->worst.by->message))
                         : GW_SAY(ask->arena, "{}; {}: {}: {}", gw_of_message(&rated), gw_of_text(missing),
                                  gw_of_message(&at), gw_of_message(&path->worst.by->message));
    if (is_short) return; /* as submitted */
    f->verdict = GW_NOT_SHOWN;
    f->evidence = GW_EVIDENCE_NONE;
}

static void fails(struct gw_finding *f, struct gw_ask *ask, const struct path *path)
{
    const struct gw_message at = at_link(ask, f, &path->worst);
    const struct gw_message by_test = how_short(ask, f);
    if (f->verdict != GW_PASS) f->untested = f->verdict == GW_FAIL ? by_test : f->message;
    const struct gw_message tested =
        f->verdict == GW_FAIL ? GW_SAY(ask->arena, " ({})", gw_of_message(&by_test)) : (struct gw_message){0};
    lean_on(f, ask, path->worst.by);
    f->verdict = GW_FAIL;
    f->evidence = path->worst.by->evidence;
    f->utilization = path->worst.by->utilization;
    f->direction = path->worst.by->direction;
    f->message = GW_SAY(ask->arena, "{} fails: {}{}", gw_of_message(&at), gw_of_message(&path->worst.by->message),
                        gw_of_message(&tested));
}

static struct gw_message first_untested(struct gw_ask *ask, const struct path *path, bool covered)
{
    const struct gw_finding *u = path->untested;
    if (!covered) return (struct gw_message){0}; /* the reason stands behind */
    if (!u) return GW_PLAINLY(" that the test does not show");
    return GW_SAY(ask->arena, " that the test does not show (first {} at {}: {})", gw_of_text(u->demand->check->id),
                  gw_of_text(u->demand->where), gw_of_message(&u->untested));
}

/* A vent's or a door's pressure is shown by its own test alone; calculation shows what holds it. */
static bool has_own_test(const struct gw_element *e)
{
    return e->kind == GW_LITE && (e->component == GW_VENT || e->component == GW_DOOR);
}

static struct gw_message which_report(struct gw_ask *ask, const struct gw_finding *stated)
{
    return GW_SAY(ask->arena, "what shows {} names no report and is a statement: ask the manufacturer for the report",
                  gw_of_text(stated->demand->check->id));
}

/* The test's own figures where it shows every link; else those of the link that governs. */
static void passes(struct gw_finding *f, struct gw_ask *ask, const struct path *path)
{
    const struct gw_message at = at_link(ask, f, &path->worst);
    const bool is_short = f->verdict == GW_FAIL, covered = f->verdict == GW_PASS;
    const bool tested = covered && !path->calculated && (!path->stated || f->evidence == GW_BY_STATEMENT);
    const struct gw_message why = is_short ? how_short(ask, f) : f->message, lacks = first_untested(ask, path, covered);
    f->link = path->worst.by;
    f->verdict = GW_PASS;
    if (!covered) f->untested = why;
    if (tested) return;
    lean_on(f, ask, path->worst.by);
    const bool own_statement = f->evidence == GW_BY_STATEMENT && has_own_test(f->demand->element);
    f->evidence = path->stated || own_statement ? GW_BY_STATEMENT : GW_BY_CALCULATION;
    f->utilization = path->worst.by->utilization;
    f->direction = path->worst.by->direction;
    const bool stated = f->evidence == GW_BY_STATEMENT;
    f->message = GW_SAY(ask->arena, "by {}, every link of it{}; {} governs ({})",
                        gw_of_text(stated ? "statement and calculation" : "calculation"), gw_of_message(&lacks),
                        gw_of_message(&at), gw_of_message(&why));
    if (stated) f->confirm = f->question = which_report(ask, path->stated ? path->stated : f);
    if (is_short)
        f->remark = GW_SAY(ask->arena, "{}; it passes by {}", gw_of_message(&why),
                           gw_of_text(stated ? "statement" : "calculation"));
}

/* What is to be asked where calculation shows each link, by what the ratings alone said. */
static struct gw_message ask_for_rating(struct gw_ask *ask, const struct gw_finding *rated, const struct path *path)
{
    const struct gw_finding *u = path->untested;
    if (u)
        return GW_SAY(ask->arena, "the project asks for a test that covers each {}: {}",
                      gw_of_text(u->demand->check->id), gw_of_message(&u->untested));
    if (rated->verdict == GW_NOT_SHOWN)
        return GW_SAY(ask->arena, "the project asks for a test: {}", gw_of_message(&rated->message));
    if (rated->evidence == GW_BY_STATEMENT) return gw_ask_for_report(ask, rated->demand->check);
    const struct gw_finding *lacks = path->calculated ? path->calculated : rated;
    return GW_SAY(ask->arena, "the project asks for a test that covers each {}", gw_of_text(lacks->demand->check->id));
}

/* The rating's own figures: no link fails. */
static void fail_as_rated(struct gw_finding *f, struct gw_ask *ask, const struct gw_finding *rated)
{
    const struct gw_used *used = f->used;
    *f = *rated;
    f->used = used;
    f->message = GW_SAY(ask->arena, "{} is short; calculation shows it, and the project asks for a test",
                        gw_of_message(&rated->message));
}

/* A project that asks for tests takes nothing else; one that says what it takes, no mere statement. */
static void ask_for_test(struct gw_finding *f, struct gw_ask *ask, const struct gw_finding *rated,
                         const struct path *path)
{
    const struct gw_evidence_asked asked = gw_evidence_asked(ask, f->demand);
    if (asked.any || f->verdict != GW_PASS || f->evidence == GW_BY_TEST) return;
    if (f->evidence == GW_BY_STATEMENT) {
        f->verdict = GW_NOT_SHOWN;
        f->message = GW_SAY(ask->arena, "what names no report is a statement, which the project does not take: {}",
                            gw_of_message(&f->message));
        f->question = gw_ask_for_report(ask, (path->stated ? path->stated : f)->demand->check);
        f->confirm = (struct gw_message){0};
        return;
    }
    if (!asked.test || asked.calculation) return;
    if (rated->verdict == GW_FAIL) {
        fail_as_rated(f, ask, rated);
        return;
    }
    f->verdict = GW_NOT_SHOWN;
    f->message = GW_SAY(ask->arena, "the project asks for a test: {}", gw_of_message(&f->message));
    f->question = ask_for_rating(ask, rated, path);
}

/* A link whose test covers it and is short fails what leans on it, as its own rating would. */
static void fails_as_tested(struct gw_finding *f, struct gw_ask *ask, const struct path *path)
{
    const struct gw_finding *rated = path->low.by->rated;
    const struct gw_message at = at_link(ask, f, &path->low);
    lean_on(f, ask, rated);
    f->verdict = GW_FAIL;
    f->evidence = rated->evidence;
    f->utilization = rated->utilization;
    f->direction = rated->direction;
    f->lean = leaning(f, &path->low);
    f->question = f->confirm = f->remark = (struct gw_message){0};
    f->message =
        GW_SAY(ask->arena, "{}: its test shows {} {}, here {} is asked: {}", gw_of_message(&at),
               gw_of_capacity(rated->dim, rated->provided), gw_of_text(gw_load_direction_name(rated->direction)),
               gw_of_demand(rated->dim, rated->required), gw_of_message(&rated->message));
}

static void keep_rated(struct gw_finding *f, struct gw_ask *ask, const struct gw_finding *rated)
{
    struct gw_finding *kept = gw_alloc(ask->arena, 1, sizeof *kept);
    *kept = *rated;
    f->rated = kept;
}

static long pieces_in(const struct path *path, const uint64_t *set)
{
    long n = 0;
    for (size_t i = 0; i < path->words; i++)
        for (uint64_t left = set[i]; left; left &= left - 1) n++;
    return n;
}

/* How many of alike elements the verdict is of, and which: what it is of by itself it is of all. */
static long share(struct gw_finding *f, const struct gw_finding *rated, const struct path *path)
{
    const struct gw_element *e = f->demand->element;
    const bool by_itself = gw_given(f->required) && rated->verdict != GW_PASS;
    if (f->verdict == GW_PASS || !f->link || by_itself) return 0;
    const bool open = path->worst.by && path->worst.by->verdict != GW_PASS;
    const uint64_t *set = f->verdict == GW_FAIL                      ? path->failing
                          : open                                     ? path->unshown
                          : rated->verdict == GW_PASS && path->words ? path->beyond
                                                                     : NULL;
    const long n = set ? pieces_in(path, set) : 0;
    if (!n || n >= e->count) return 0;
    f->pieces = set;
    f->open = f->verdict == GW_FAIL ? path->unshown : NULL;
    return n;
}

static bool has_bit(const uint64_t *set, size_t at)
{
    enum { BITS = 64 };
    return set[at / BITS] >> at % BITS & 1;
}

enum gw_verdict gw_verdict_of_piece(const struct gw_finding *finding, size_t piece)
{
    if (!finding->pieces || has_bit(finding->pieces, piece)) return finding->verdict;
    return finding->open && has_bit(finding->open, piece) ? GW_NOT_SHOWN : GW_PASS;
}

static void judge_path(struct gw_finding *f, const struct gw_paths *links, struct gw_ask *ask)
{
    const struct gw_element *e = f->demand->element;
    const struct gw_finding rated = *f;
    struct path path;
    if ((f->adverse && f->verdict == GW_FAIL) || (has_own_test(e) && f->verdict != GW_PASS)) return;
    walk(&path, links, ask, f->demand);
    const struct gw_finding *worst = path.worst.by == f ? NULL : path.worst.by;
    if (rated.verdict == GW_FAIL && worst) keep_rated(f, ask, &rated);
    f->lean = worst ? leaning(f, &path.worst) : 0;
    if (worst && worst->verdict == GW_FAIL) fails(f, ask, &path);
    else if (worst && !f->adverse && worst->verdict == GW_NOT_SHOWN) not_shown(f, ask, &path);
    else if (worst && !f->adverse) passes(f, ask, &path);
    ask_for_test(f, ask, &rated, &path);
    if (path.low.by && f->verdict != GW_FAIL) fails_as_tested(f, ask, &path);
    f->share = share(f, &rated, &path);
}

const struct gw_paths *gw_paths_of(const struct gw_finding *findings, size_t n, struct gw_ask *ask)
{
    struct gw_paths *paths = gw_alloc(ask->arena, 1, sizeof *paths);
    gather(paths, findings, n, ask);
    return paths;
}

struct visit {
    const struct gw_finding *findings;
    void (*visit)(void *user, size_t index);
    void *user;
};

static void visit_link(void *user, const struct gw_finding *f, const struct gw_leans *leans)
{
    const struct visit *v = user;
    (void)leans;
    v->visit(v->user, (size_t)(f - v->findings));
}

void gw_path_visit(const struct gw_paths *paths, struct gw_ask *ask, const struct gw_finding *f,
                   void (*visit)(void *user, size_t index), void *user)
{
    struct visit v = {paths->findings, visit, user};
    walk_links(paths, ask, f->demand->element, visit_link, &v);
}

void gw_judge_paths(struct gw_finding *findings, size_t n, struct gw_ask *ask, const struct gw_paths *paths)
{
    for (size_t i = 0; i < n; i++)
        if (findings[i].demand->check->path && findings[i].demand->state == GW_ASKED)
            judge_path(&findings[i], paths, ask);
}
