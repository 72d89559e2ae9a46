/* What to ask: each question once, with the places that ask it, and nothing but what is not shown. */
#include "support.h"

#include "galeward/report.h"

#define WALL                                                                                                           \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 40 ft, floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, corner],\n"                     \
    "  columns: {count: 8, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates:\n  - x.yaml\n"

static void each_question_once(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_judge(w, WALL);
    long asked = 0, unshown = 0;
    for (size_t i = 0; i < w->answer.missing.n; i++) {
        const struct gw_request *r = &w->answer.missing.items[i];
        asked += r->places;
        assert_int_equal(r->first->verdict, GW_NOT_SHOWN);
        for (size_t k = 0; k < i; k++)
            assert_false(gw_message_same(&r->question, &w->answer.missing.items[k].question));
    }
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        unshown += f->verdict == GW_NOT_SHOWN && !(f->demand->check->path && f->link);
    }
    assert_true(asked > 10);
    assert_int_equal(asked, unshown);
    assert_true(w->answer.missing.n < 20);
}

/* At strength level, far below the computed ones. */
#define LOW                                                                                                            \
    "pressures: given\ngiven: [{zone: 4, area: 1 ft2, inward: 25, outward: 25, level: strength, source: S-1},\n"       \
    "  {zone: 5, area: 1 ft2, inward: 25, outward: 25, level: strength, source: S-1}]\n"

static size_t of_pressures(const struct gw_answer *a, const char *candidate)
{
    size_t n = 0;
    for (size_t i = 0; i < a->missing.n; i++)
        n += !a->missing.items[i].first && strcmp(a->missing.items[i].candidate->name, candidate) == 0;
    return n;
}

/* The strips at the wall's corners are zone 5, so two zones ask: before all else, of each candidate. */
static void pressures_too_low_come_first(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    put_file(w, "y.yaml", "galeward: 1\nsystem: {name: Y, kind: stick, glazing: captured}\n");
    must_judge(w, WALL "  - y.yaml\n" LOW);
    const struct gw_answer *a = &w->answer;
    assert_int_equal(of_pressures(a, "X"), 2);
    assert_int_equal(of_pressures(a, "Y"), 2);
    assert_null(a->missing.items[0].first);
    assert_null(a->missing.items[1].first);
    bool after = false;
    for (size_t i = 1; i < a->missing.n; i++) {
        const bool next = a->missing.items[i].candidate != a->missing.items[i - 1].candidate;
        after = after || next;
        if (next) assert_null(a->missing.items[i].first);
        if (!a->missing.items[i].first && !next) assert_null(a->missing.items[i - 1].first);
    }
    assert_true(after);
}

static void accepted_pressures_ask_nothing(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_judge(w, WALL LOW "lower_than_computed: {by: A. Engineer, reason: sheltered}\n");
    assert_int_equal(of_pressures(&w->answer, "X"), 0);
    assert_true(w->answer.missing.n > 0);
}

/* Nothing fails and nothing is not shown, so the headline says in words what holds the candidate back. */
static void the_headline_says_what_holds_it(void **state)
{
    struct world *w = *state;
    struct gw_results results;
    struct gw_text text;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
    must_judge(w, WALL);
    struct gw_summary *s = &w->answer.judgement.summaries.items[0];
    assert_false(gw_said(&s->held)); /* findings hold it back themselves */
    s->held = GW_PLAINLY("given pressures that govern are lower than the computed ones");
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    const struct gw_result result = gw_result_check(&results);
    gw_text_init(&text, &w->arena);
    assert_int_equal(gw_format_named("text")->render(&text, &result, NULL, false), GW_OK);
    assert_non_null(
        strstr(text.at, "X: NOT SHOWN: given pressures that govern are lower than the computed ones (at these"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(each_question_once), WORLD_TEST(pressures_too_low_come_first),
                                       WORLD_TEST(accepted_pressures_ask_nothing),
                                       WORLD_TEST(the_headline_says_what_holds_it)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
