/* What to ask: each question once, with the places that ask it, and nothing but what is not shown. */
#include "support.h"

#define WALL                                                                                                           \
    "galeward: 1\nunits: us\nproject: {name: W}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                        \
    "site: {basic_wind_speed: 115, exposure: C}\n"                                                                     \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, corner],\n"                     \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\ncandidates: [x.yaml]\n"

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

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(each_question_once)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
