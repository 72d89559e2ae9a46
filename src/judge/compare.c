/* One demand against a candidate's ratings: the best of what they show. */
#include "judge_internal.h"

#include "tables_data.h"

struct outcome {
    enum gw_verdict verdict;
    double utilisation, required, provided;
    const char *direction, *message;
};

/* Of what is asked, the part used up: above 1 fails. */
static double use_of(double required, double provided, bool at_most)
{
    double part = at_most ? provided : required, whole = at_most ? required : provided;
    if (whole > 0) return part / whole;
    return part > 0 ? (double)INFINITY : 0;
}

static struct outcome weigh_one(double required, double provided, bool at_most, const char *direction)
{
    struct outcome o = {
        .required = required, .provided = provided, .direction = direction, .utilisation = GW_ABSENT, .message = ""};
    if (!gw_given(provided)) {
        o.message = "the rating gives no value for this direction";
        return o;
    }
    const double hair = 1e-9;
    o.utilisation = use_of(required, provided, at_most);
    o.verdict = o.utilisation <= 1 + hair ? GW_PASS : GW_FAIL;
    return o;
}

/* Of two directions the one that is worse: a failure, then a missing value, then the greater use. */
static struct outcome worse(struct outcome a, struct outcome b)
{
    static const int rank[] = {[GW_PASS] = 0, [GW_NOT_REQUIRED] = 0, [GW_NOT_SHOWN] = 1, [GW_FAIL] = 2};
    if (rank[a.verdict] != rank[b.verdict]) return rank[a.verdict] > rank[b.verdict] ? a : b;
    return a.utilisation >= b.utilisation ? a : b;
}

/* A number below the demand fails whatever the size tested; a sufficient one shows nothing beyond the tested size. */
static struct outcome weigh(const struct gw_offer *offer, const struct gw_demand *demand)
{
    bool two = gw_given(demand->value_out);
    struct outcome o = weigh_one(demand->value, offer->value, demand->at_most, two ? "inward" : "");
    if (two) o = worse(o, weigh_one(demand->value_out, offer->value_out, demand->at_most, "outward"));
    bool unreached = !offer->covers && (o.verdict == GW_PASS || demand->at_most || offer->foreign);
    if (unreached) o.verdict = GW_NOT_SHOWN;
    bool condition = offer->covers && o.verdict != GW_PASS; /* a proviso of a pass says nothing about a failure */
    if (*offer->why && !condition) o.message = offer->why;
    return o;
}

/* Of two ratings the one that shows more. */
static bool better(const struct outcome *a, const struct outcome *b)
{
    static const int rank[] = {[GW_PASS] = 3, [GW_NOT_REQUIRED] = 3, [GW_NOT_SHOWN] = 2, [GW_FAIL] = 1};
    if (rank[a->verdict] != rank[b->verdict]) return rank[a->verdict] > rank[b->verdict];
    return a->utilisation < b->utilisation;
}

static const char *report_of(struct gw_arena *arena, const struct gw_rating *rating, const char *message)
{
    const char *report = rating->report ? rating->report : "report not named";
    return *message ? gw_format(arena, "%s: %s", report, message) : report;
}

static const char *unrated(struct gw_arena *arena, const struct gw_check *check, const struct gw_demand *demand)
{
    if (demand->name) return gw_format(arena, "no %s rating; ask the maker for a report of it", demand->name);
    bool own = demand->component == GW_VENT || demand->component == GW_DOOR;
    return gw_format(arena, "no %s rating%s; ask the maker for a report by %s", check->id,
                     own ? " of this component" : "", check->clause);
}

void gw_compare(struct gw_finding *finding, struct gw_judging *j, const struct gw_check *check)
{
    const struct gw_demand *demand = finding->demand;
    const struct gw_rating *from = NULL;
    struct outcome best = {.verdict = GW_NOT_SHOWN,
                           .utilisation = GW_ABSENT,
                           .required = demand->value,
                           .provided = GW_ABSENT,
                           .direction = ""};
    for (size_t i = 0; i < finding->candidate->ratings.n; i++) {
        const struct gw_rating *rating = &finding->candidate->ratings.items[i];
        struct gw_offer offer = check->offer(j, rating, demand);
        if (!offer.applies) continue;
        struct outcome o = weigh(&offer, demand);
        if (from && !better(&o, &best)) continue;
        best = o;
        from = rating;
    }
    finding->verdict = best.verdict;
    finding->utilisation = best.utilisation;
    finding->required = best.required;
    finding->provided = best.provided;
    finding->direction = best.direction;
    finding->evidence = from ? GW_BY_TEST : GW_EVIDENCE_NONE;
    finding->message = from ? report_of(j->model->arena, from, best.message) : unrated(j->model->arena, check, demand);
}
