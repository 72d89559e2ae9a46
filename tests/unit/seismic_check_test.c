/* Verdicts on earthquakes and movement: what the project must say, what the candidate must say, by hand.
 *
 * One wall of one story, 13 ft, four lites of 5 x 6 ft above a band of 7 ft. Risk category II, category D, S_DS 1.0. */
#include "support.h"

#define WALL                                                                                                           \
    "galeward: 1\nproject: {name: Shaken%s}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                            \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 13 ft, ends: [none, none], anchors: [0 ft, 13 ft],\n"        \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: 7 ft, lite: b}, {height: rest, lite: a}]}]\n"                 \
    "lites: {a: {layers: [{glass: 10 mm, treatment: %s}]}, b: {layers: [{glass: 10 mm, treatment: annealed}]}}\n"      \
    "site: {basic_wind_speed: 115 mph, exposure: C, seismic: {%s}}\n%s\ncandidates: [x.yaml]\n"
#define D_1 "category: D, sds: 1.0"

struct project {
    const char *risk, *treatment, *seismic, *more, *system;
};

static void judge(struct world *w, const struct project *p)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", p->system));
    must_judge(w, gw_format(&w->arena, WALL, p->risk, p->treatment, p->seismic, p->more));
}

static const struct gw_finding *finding(const struct world *w, const char *check, const char *where)
{
    for (size_t i = 0; i < w->judgement.findings.n; i++) {
        const struct gw_finding *f = &w->judgement.findings.items[i];
        if (strcmp(f->demand->check, check) == 0 && strcmp(f->demand->where, where) == 0) return f;
    }
    print_error("no finding %s at %s\n", check, where);
    fail();
    return NULL;
}

/* Of the lite a, 5 x 6 ft. */
static const char *lite_a(const struct world *w)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == GW_LITE && strcmp(e->lite, "a") == 0) return e->id;
    }
    return "";
}

static void expect(const struct project *p, enum gw_verdict verdict, const char *part)
{
    struct world w;
    world_open(&w);
    judge(&w, p);
    const char *where = lite_a(&w);
    for (size_t i = 0; i < w.judgement.findings.n; i++) /* unknown needs stand for the whole project */
        if (strcmp(w.judgement.findings.items[i].demand->check, "seismic_glass") == 0 &&
            strcmp(w.judgement.findings.items[i].demand->where, "project") == 0)
            where = "project";
    const struct gw_finding *f = finding(&w, "seismic_glass", where);
    if (f->verdict != verdict || !strstr(f->message, part))
        print_error("{%s} [%s]: %s: %s\n", p->seismic, p->system, gw_verdict_name(f->verdict), f->message);
    assert_int_equal(f->verdict, verdict);
    assert_non_null(strstr(f->message, part));
    world_close(&w);
}

#define GAPS "drift: {path: racking, side_gap: 3/8 in, end_gap: 1/2 in}"

/* 60 x 72 in, gaps 3/8 and 1/2 in: D_clear = 0.75 + 1.0 x 72/60 = 1.95 in. */
static void glass_by_hand(void **state)
{
    struct world *w = *state;
    const struct project p = {"", "annealed", D_1 ", story_drift: 2 in", "", GAPS};
    const double inch = 0.0254;
    judge(w, &p);
    const struct gw_finding *f = finding(w, "seismic_glass", lite_a(w));
    assert_int_equal(f->verdict, GW_PASS);
    assert_near(f->provided / inch, 1.95, 1e-9);
    assert_near(f->required / inch, 1.25 * 2 * 72 / 156, 1e-9); /* I_e is 1 */
}

static void glass_verdicts(void **state)
{
    (void)state;
    const struct {
        struct project p;
        enum gw_verdict verdict;
        const char *part;
    } rows[] = {
        {{"", "annealed", "category: A", "", GAPS}, GW_NOT_REQUIRED, "Category A"},
        {{"", "annealed", "category: D", "", GAPS}, GW_NOT_SHOWN, "S_DS"},
        {{"", "annealed", D_1, "", GAPS}, GW_NOT_SHOWN, "how far does a story drift"},
        {{"", "annealed", D_1 ", structure: other", "", GAPS}, GW_PASS, "clearance"},
        {{"", "annealed", D_1 ", story_drift_ratio: 0.02", "", GAPS}, GW_PASS, "clearance"},
        {{"", "annealed", D_1 ", story_drift: 2 in", "", ""}, GW_NOT_SHOWN, "Ask the maker"},
        {{"", "annealed", D_1 ", story_drift: 2 in", "",
          "drift: {path: all_in_lite, side_gap: 3/8 in, end_gap: 1/2 in}"},
         GW_NOT_SHOWN,
         "falls out"},
        {{"", "annealed", D_1 ", story_drift: 2 in", "",
          "drift: {path: all_in_lite, side_gap: 3/8 in, end_gap: 1/2 in}\nratings: [{test: sway, drift: 3 in, report: "
          "R-1}]"},
         GW_PASS,
         "R-1"},
        {{"", "annealed", D_1 ", story_drift: 2 in", "",
          "drift: {path: all_in_lite, side_gap: 3/8 in, end_gap: 1/2 in}\nratings: [{test: sway, drift: 2 in, report: "
          "R-1}]"},
         GW_FAIL,
         "R-1"},
        /* The importance of risk category IV counts once: 1.25 x 1.5 x 2 x 72/156 = 1.73 in, and 3 in of drift is too
           much. */
        {{", risk_category: IV", "annealed", D_1 ", story_drift: 2 in", "", GAPS}, GW_PASS, "clearance"},
        {{", risk_category: IV", "annealed", D_1 ", story_drift: 3 in", "", GAPS}, GW_NOT_SHOWN, "falls out"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) expect(&rows[i].p, rows[i].verdict, rows[i].part);
}

/* 7-16, z/h = 13/40 at the top anchor (6.5 to 13 ft carried): fasteners 0.4 x 1.25 x 1.0 (1 + 2 x 0.325)/1 = 0.825 W,
 * 0.7 of it on 10 mm glass (13 psf an inch) and 3 psf of frame. */
static void anchor_force_by_hand(void **state)
{
    struct world *w = *state;
    const struct project p = {"", "annealed", D_1 ", story_drift: 1 in", "",
                              "frame_weight: 3 psf\nanchor: {inward: 100 lb, outward: 90 lb, dead: 900 lb}"};
    judge(w, &p);
    const double psf = 47.88025898, lb = 4.4482216152605, ft = 0.3048;
    for (size_t i = 0; i < w->judgement.findings.n; i++) {
        const struct gw_finding *f = &w->judgement.findings.items[i];
        if (strcmp(f->demand->check, "seismic_force") != 0) continue;
        const struct gw_element *e = f->demand->element;
        double share = fmin(0.5 * (1 + 2 * (e->top / (40 * ft))), 1.6);
        double weight = (13 * 10 / 25.4 + 3) * psf * e->width * e->height;
        assert_near(f->demand->value, share, 1e-6);
        assert_near(f->required, 0.7 * share * weight, 1e-3 * weight);
        assert_near(f->provided, 90 * lb, 1e-6);
    }
}

#define MOVES                                                                                                          \
    "movement: {live_load: 0.75 in, shortening: 0.125 in, coldest: -20 degF, hottest: 160 degF, "                      \
    "set_coldest: 70 degF, set_warmest: 70 degF, fabrication: 1/16 in, erection: 1/8 in}"

/* 156 in of aluminum, 90 degF each way: 0.180 in; closing 0.75 + 0.125 + 0.180 + 0.1875 = 1.242 in. */
static void movement_by_hand(void **state)
{
    struct world *w = *state;
    const struct project p = {
        "", "annealed", D_1 ", story_drift: 1 in", MOVES,
        "stack_joint: {width: 1.5 in, least_gap: 1/4 in, engagement: 2 in, least_overlap: 1/2 in}"};
    judge(w, &p);
    const struct gw_finding *f = finding(w, "movement", "project");
    const double inch = 0.0254;
    assert_near(f->demand->value / inch, 1.242, 0.003);
    assert_int_equal(f->verdict, GW_PASS);
    assert_near(f->required / inch, 1.492, 0.003);
    assert_non_null(strstr(f->demand->message, "arithmetic"));
}

static void movement_verdicts(void **state)
{
    (void)state;
    const struct {
        const char *more, *system;
        enum gw_verdict verdict;
        const char *part;
    } rows[] = {
        {"", "", GW_NOT_SHOWN, "live load"},
        {MOVES, "", GW_NOT_SHOWN, "how wide is the joint"},
        {MOVES, "stack_joint: {width: 1.4 in, least_gap: 1/4 in}", GW_FAIL, "closing"},
        {MOVES, "stack_joint: {width: 1.6 in, least_gap: 1/4 in}", GW_NOT_SHOWN, "engaged"},
        {MOVES, "stack_joint: {width: 1.6 in, least_gap: 1/4 in, engagement: 1 in, least_overlap: 1/2 in}", GW_FAIL,
         "opening"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct world w;
        world_open(&w);
        const struct project p = {"", "annealed", D_1 ", story_drift: 1 in", rows[i].more, rows[i].system};
        judge(&w, &p);
        const struct gw_finding *f = finding(&w, "movement", "project");
        if (f->verdict != rows[i].verdict) print_error("[%s]: %s\n", rows[i].system, f->message);
        assert_int_equal(f->verdict, rows[i].verdict);
        assert_non_null(strstr(f->message, rows[i].part));
        world_close(&w);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(glass_by_hand),    cmocka_unit_test(glass_verdicts),    WORLD_TEST(anchor_force_by_hand),
        WORLD_TEST(movement_by_hand), cmocka_unit_test(movement_verdicts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
