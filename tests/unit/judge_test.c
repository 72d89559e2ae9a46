/* Verdicts by hand, chains of links, summaries; what ratings show is in tests/scenarios.
 *
 * The wall: four lites of 5 x 9 ft, the first two in the edge strip. By hand, allowable-stress level (0.6 of strength):
 * inward 17.59 psf; outward 19.21 psf in zone 4, 22.21 psf in zone 5: q_h = 30.03 psf, 45 ft2, log 4.5 / log 50 =
 * 0.3845, 0.9 under a flat roof: 0.7962, -0.8862, -1.0524, each with 0.18 inside. */
#include "support.h"

#define PROJECT                                                                                                        \
    "galeward: 1\nproject: {name: Judged}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                              \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"                               \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "candidates: [x.yaml]\n"
#define SITE "site: {basic_wind_speed: 115 mph, exposure: C}\n"
#define FIXED "lites: {a: {}}\n"
#define SYSTEM "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n"

static const char PLAIN[] = SITE FIXED;

/* Judges one system against the project with `more` (its site and lites at least). */
static void judge(struct world *w, const char *more, const char *ratings)
{
    put_file(w, "x.yaml", gw_format(&w->arena, "%sratings: [%s]\n", SYSTEM, ratings));
    must_judge(w, gw_format(&w->arena, "%s%s", PROJECT, more));
}

/* Structural --------------------------------------------------------------------------------------------------------
 */

#define TESTED ", report: L-1, tested: {module: 5 ft, span: 9 ft, lite_width: 5 ft, lite_height: 9 ft, make_up: a}}"

static void utilization_and_values(void **state)
{
    struct world *w = *state;
    judge(w, PLAIN, "{test: structural, positive: 30 psf, negative: 40 psf" TESTED);
    const struct gw_finding *f = finding(w, "structural", "s/lite/1");
    assert_near(f->required / PSF, 17.59, 0.01);
    assert_near(f->provided / PSF, 30, 1e-9);
    assert_near(f->utilization, f->required / f->provided, 1e-12);
    assert_near(gw_term_of(f->demand, 1)->value / PSF, 22.21, 0.01);
    assert_int_not_equal(gw_used_weakest(f->used), GW_BASIS_NONE);
}

/* Glass: shown by calculation, whoever the candidate is --------------------------------------------------------------
 */

#define GLASS(layers) SITE "lites: {a: {layers: [" layers "]}}\n"
#define LIMITED(limit, layers) "glass: {" limit "}\n" GLASS(layers)
#define ANNEALED(t) "{glass: " t ", treatment: annealed}"

/* Both checks of a lite rest on its wind, its glass and its solution, whichever asks first. */
static void both_glass_checks_name_their_rows(void **state)
{
    struct world *w = *state;
    judge(w, LIMITED("deflection_limit: 3 in", ANNEALED("6 mm")), "");
    const char *const checks[] = {"glass", "glass_deflection"};
    for (size_t i = 0; i < 2; i++) {
        const struct gw_used *used = finding(w, checks[i], "s/lite/1")->demand->used;
        bool plate = false, wind = false;
        for (unsigned k = 0; gw_used_next(used, &k); k++) {
            const char *table = gw_table_row_at(gw_tables_standard(), k)->table;
            plate = plate || strcmp(table, "plate_response_range") == 0;
            wind = wind || strcmp(table, "wind_velocity") == 0;
        }
        assert_true(plate && wind);
    }
}

/* The chain of links
 * ---------------------------------------------------------------------------------------------------
 */

/* Tested over a smaller span and lite: every link by calculation. Each line is a link's data; the last closes the file.
 */
static const char *const CHAIN[] = {
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.188 in, web: 0.125 in}}",
    "corner_mullion: {alloy: 6063-T6, tube: {width: 4 in, depth: 6 in, flange: 0.188 in, web: 0.188 in}}",
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, eccentricity: 1 "
    "in}",
    "transom_connection: {capacity: 900 lb, report: L-10}",
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}",
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "
    "tested_pullout: 2000 lb, report: L-11}",
    "anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb, report: C-1}",
    "frame_weight: 3 psf",
    "corner_anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb, report: C-2}",
};
enum { CHAIN_LENGTH = sizeof CHAIN / sizeof *CHAIN };
#define SMALL_TEST                                                                                                     \
    "{test: structural, positive: 60 psf, negative: 60 psf, report: L-9, tested: {module: 4 ft, span: 7 ft, "          \
    "lite_width: 4 ft, lite_height: 7 ft}}"

static const char *chain_without(struct world *w, size_t left_out)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_add(&text, SMALL_TEST "]\n");
    for (size_t i = 0; i < CHAIN_LENGTH; i++)
        if (i != left_out) gw_text_addf(&text, "%s\n", CHAIN[i]);
    gw_text_add(&text, "pocket: [1/2 in");
    return text.at;
}

static void what_no_test_reaches_is_calculated(void **state)
{
    struct world *w = *state;
    judge(w, GLASS(ANNEALED("12 mm")), chain_without(w, CHAIN_LENGTH));
    const char *const places[] = {"s/lite/1", "s/lite/2", "s/mullion/1", "s/mullion/2"};
    for (size_t i = 0; i < 4; i++) {
        const struct gw_finding *f = finding(w, "structural", places[i]);
        assert_int_equal(f->verdict, GW_PASS);
        assert_int_equal(f->evidence, GW_BY_CALCULATION);
        assert_non_null(strstr(words(&f->message), "by calculation, every link"));
        assert_true(f->utilization > 0 && f->utilization <= 1);
    }
}

/* One link without data leaves what leans on it not shown, whichever link it is, and the message asks for it; the lites
 * of the edge strip lean on the corner mullion besides. */
static void one_missing_link_shows_nothing(void **state)
{
    (void)state;
    for (size_t i = 0; i < CHAIN_LENGTH; i++) {
        struct world w;
        world_open(&w);
        judge(&w, GLASS(ANNEALED("12 mm")), chain_without(&w, i));
        const struct gw_finding *f = finding(&w, "structural", "s/lite/1");
        if (f->verdict != GW_NOT_SHOWN || !strstr(words(&f->message), "a link is missing"))
            print_error("without '%s': %s: %s\n", CHAIN[i], gw_verdict_name(f->verdict), words(&f->message));
        assert_int_equal(f->verdict, GW_NOT_SHOWN);
        assert_non_null(strstr(words(&f->message), "a link is missing"));
        assert_non_null(strchr(words(&f->message), '?'));
        world_close(&w);
    }
}

/* Without glass data the first link of a lite is the glass itself. */
static void glass_is_a_link(void **state)
{
    struct world *w = *state;
    judge(w, GLASS("{glass: 12 mm}"), chain_without(w, CHAIN_LENGTH));
    const struct gw_finding *f = finding(w, "structural", "s/lite/2");
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), "heat treated"));
    assert_int_equal(finding(w, "structural", "s/mullion/2")->verdict, GW_PASS); /* it leans on no glass */
}

/* 5 ft bays of 9 ft under 22.21 psf by hand: the jamb of 2.5 ft at the corner takes both faces; the interior mullion
 * w = 19.21 x 5 = 96.05 lb/ft, M = 96.05 x 81 / 8 = 972.5 ft-lb, and I = 2 x 2.5 x 0.188 x 2.906^2 + 2 x 2.5 x 0.188^3
 * / 12 + 2 x 0.125 x 5.624^3 / 12 = 11.65 in4: d = 5 x 8.004 x 108^4 / (384 x 10.1e6 x 11.65) = 0.1205 in. */
static void a_mullion_by_hand(void **state)
{
    struct world *w = *state;
    judge(w, GLASS(ANNEALED("12 mm")), chain_without(w, CHAIN_LENGTH));
    const struct gw_finding *f = finding(w, "mullion", "s/mullion/2"),
                            *d = finding(w, "mullion_deflection", "s/mullion/2");
    const double ft_lb = 1.3558179483314004, inch = 0.0254;
    const double suction = -f->demand->element->outward_asd.pa, line = suction * 5 * 0.3048;
    assert_near(f->required, line * 2.7432 * 2.7432 / 8, 1e-6 * f->required);
    assert_near(f->required / ft_lb, 972.5 * suction / 47.88026 / 19.21, 2);
    assert_near(d->required, 108 * inch / 175, 1e-6);
    assert_near(d->provided / inch, 0.1205 * suction / 47.88026 / 19.21, 0.002);
}

/* A stated reaction below what the wall brings fails, by calculation alone. */
static void a_weak_anchor_fails_the_wall(void **state)
{
    struct world *w = *state;
    const char *weak =
        gw_format(&w->arena,
                  SMALL_TEST "]\n%s\n%s\n%s\n%s\n%s\n%s\n%s\n"
                             "anchor: {inward: 3000 lb, outward: 200 lb, dead: 3000 lb, report: C-1}\npocket: [1/2 in",
                  CHAIN[0], CHAIN[1], CHAIN[2], CHAIN[3], CHAIN[4], CHAIN[5], CHAIN[7]);
    judge(w, GLASS(ANNEALED("12 mm")), weak);
    const struct gw_finding *f = finding(w, "structural", "s/lite/2");
    assert_int_equal(f->verdict, GW_FAIL);
    assert_int_equal(f->evidence, GW_BY_CALCULATION);
    assert_non_null(strstr(words(&f->message), "anchor at"));
}

/* Rows without an engine --------------------------------------------------------------------------------------------
 */

#define ALL_KNOWN                                                                                                      \
    "site: {basic_wind_speed: 115 mph, exposure: C, hurricane_prone: true, seismic: {category: D, sds: 0.8},\n"        \
    "  blast: {pressure: 4 psi, impulse: 28 psi-ms}}\n" FIXED
#define NONE_ASKED                                                                                                     \
    "site: {basic_wind_speed: 115 mph, exposure: C, hurricane_prone: false, seismic: {category: A}, blast: "           \
    "none}\n" FIXED
#define NO_IMPACT "site: {basic_wind_speed: 115 mph, exposure: C, hurricane_prone: true, impact: none}\n" FIXED
#define STRONG_ALL "{test: structural, positive: 900 psf, negative: 900 psf" TESTED

/* Not built rows have no verdict of their own; a pass always comes from a test report. */
static void a_pass_has_evidence(void **state)
{
    struct world *w = *state;
    judge(w, ALL_KNOWN,
          STRONG_ALL ", {test: water, pressure: 99 psf}, {test: air, leakage: 0.001 cfm/ft2, at: 300 Pa}");
    size_t passes = 0;
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        if (f->verdict == GW_PASS) assert_true(f->evidence != GW_EVIDENCE_NONE);
        if (f->demand->state == GW_NOT_KNOWN) assert_int_equal(f->verdict, GW_NOT_SHOWN);
        passes += f->verdict == GW_PASS;
    }
    assert_true(passes > 0);
    assert_int_equal(w->answer.judgement.summaries.items[0].verdict, GW_NOT_SHOWN);
}

/* Summaries ---------------------------------------------------------------------------------------------------------
 */

static struct gw_summary summary_of(enum gw_verdict verdict, const char *ratings, const char *governs)
{
    struct world w;
    world_open(&w);
    judge(&w, PLAIN, ratings);
    assert_int_equal(w.answer.judgement.summaries.n, 1);
    struct gw_summary s = w.answer.judgement.summaries.items[0];
    assert_int_equal(s.verdict, verdict);
    assert_non_null(s.governing);
    assert_string_equal(s.governing->demand->where, governs);
    assert_int_equal(s.counts[GW_PASS] + s.counts[GW_FAIL] + s.counts[GW_NOT_SHOWN] + s.counts[GW_NOT_REQUIRED],
                     w.answer.judgement.demands.n);
    world_close(&w);
    s.governing = NULL;
    s.candidate = NULL;
    return s;
}

static void summaries(void **state)
{
    (void)state;
    const char *strips = "{test: structural, positive: 30 psf, negative: 20 psf" TESTED
                         ", {test: water, pressure: 12 psf}, {test: air, leakage: 0.04 cfm/ft2, at: 300 Pa}";
    /* The jamb at the corner has the greatest suction, but no flat specimen speaks of it. */
    const struct gw_summary s = summary_of(GW_FAIL, strips, "s/lite/1");
    assert_true(s.counts[GW_FAIL] > 0 && s.counts[GW_PASS] > 0);
    /* Nothing fails, nothing is shown of the rows without an engine. */
    assert_int_equal(summary_of(GW_NOT_SHOWN, STRONG_ALL, "s/mullion/1").counts[GW_FAIL], 0);
    /* Two candidates keep to themselves. */
    struct world w;
    world_open(&w);
    put_file(&w, "x.yaml", SYSTEM "ratings: [" STRONG_ALL "]\n");
    put_file(&w, "y.yaml", SYSTEM "ratings: []\n");
    must_judge(&w, gw_format(&w.arena, "%s%s",
                             "galeward: 1\nproject: {name: Judged}\ncodes: {building: ibc-2021}\n" SITE FIXED
                             "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                             "walls: [{name: s, width: 5 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"
                             "  columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n",
                             "candidates: [x.yaml, y.yaml]\n"));
    assert_int_equal(w.answer.judgement.summaries.n, 2);
    assert_true(w.answer.judgement.summaries.items[0].counts[GW_PASS] > 0);
    assert_int_equal(w.answer.judgement.summaries.items[1].counts[GW_PASS], 0);
    assert_int_equal(w.answer.judgement.findings.n, 2 * w.answer.judgement.demands.n);
    world_close(&w);
}

#define PLAIN                                                                                                          \
    "galeward: 1\nproject: {name: P, risk_category: %s}\ncodes: {building: ibc-2021, wind: %s}\n"                      \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 5 ft, floors: [0 ft], top: 13 ft, ends: [none, none],\n"                                 \
    "  columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: a}]}]\nlites: {a: {}}\n"

static void lists_what_is_not_checked(void **state)
{
    struct world *w = *state;
    must_judge(w, gw_format(&w->arena, PLAIN, "III", "asce7-16"));
    const struct gw_not_checked *rows = w->answer.not_checked.items;
    const size_t n = w->answer.not_checked.n;
    static const char *const topics[] = {"tornado", "joints",    "snow", "guards",       "safety",
                                         "thermal", "sunshades", "fire", "condensation", "acoustics"};
    assert_int_equal(n, sizeof topics / sizeof *topics);
    for (size_t i = 0; i < n; i++) assert_non_null(strstr(rows[i].what, topics[i]));
    for (size_t i = 0; i < n; i++) assert_true(strlen(rows[i].ask) > 0);
}

/* Chapter 32 came with 7-22 and is for the two upper categories: a project of those is told so. */
static void tornadoes_are_named(void **state)
{
    (void)state;
    static const struct {
        const char *risk, *edition;
        bool applies;
    } rows[] = {{"I", "asce7-22", false}, {"II", "asce7-22", false},  {"III", "asce7-22", true},
                {"IV", "asce7-22", true}, {"III", "asce7-16", false}, {"IV", "asce7-10", false}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct world w;
        world_open(&w);
        must_judge(&w, gw_format(&w.arena, PLAIN, rows[i].risk, rows[i].edition));
        const char *what = w.answer.not_checked.items[0].what;
        assert_non_null(strstr(what, "chapter 32"));
        assert_true((strstr(what, "this project") && strstr(what, "not computed")) == rows[i].applies);
        world_close(&w);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(utilization_and_values),
        WORLD_TEST(both_glass_checks_name_their_rows),
        WORLD_TEST(what_no_test_reaches_is_calculated),
        cmocka_unit_test(one_missing_link_shows_nothing),
        WORLD_TEST(glass_is_a_link),
        WORLD_TEST(a_mullion_by_hand),
        WORLD_TEST(a_weak_anchor_fails_the_wall),
        WORLD_TEST(a_pass_has_evidence),
        cmocka_unit_test(summaries),
        WORLD_TEST(lists_what_is_not_checked),
        cmocka_unit_test(tornadoes_are_named),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
