/* Verdicts: what a rating shows, what it doesn't, what is never a pass.
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

struct expected {
    const char *more, *ratings, *check, *where;
    enum gw_verdict verdict;
    enum gw_evidence evidence;
    const char *direction, *part; /* part of the message */
};

static void check(const struct expected *x)
{
    struct world w;
    world_open(&w);
    judge(&w, x->more, x->ratings);
    const struct gw_finding *f = finding(&w, x->check, x->where);
    bool good = f->verdict == x->verdict && f->evidence == x->evidence && strstr(words(&f->message), x->part) &&
                strcmp(gw_load_direction_name(f->direction), x->direction) == 0;
    if (!good)
        print_error("%s at %s, [%s]: %s by %s, %s: %s\n", x->check, x->where, x->ratings, gw_verdict_name(f->verdict),
                    gw_evidence_name(f->evidence), gw_load_direction_name(f->direction), words(&f->message));
    assert_true(good);
    world_close(&w);
}

#define CHECK_ALL(list)                                                                                                \
    for (size_t i_ = 0; i_ < sizeof(list) / sizeof *(list); i_++) check(&(list)[i_])

/* Structural --------------------------------------------------------------------------------------------------------
 */

#define TESTED ", report: L-1, tested: {module: 5 ft, span: 9 ft, lite_width: 5 ft, lite_height: 9 ft}}"
#define EDGE_LITE "structural", "s/lite/1"
#define LITE "structural", "s/lite/2"
#define MULLION "structural", "s/mullion/2"

static void structural_values(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {PLAIN, "{test: structural, positive: 18 psf, negative: 23 psf" TESTED, EDGE_LITE, GW_PASS, GW_BY_TEST,
         "inward", "L-1"},
        {PLAIN, "{test: structural, positive: 30 psf, negative: 23 psf" TESTED, EDGE_LITE, GW_PASS, GW_BY_TEST,
         "outward", "L-1"},
        {PLAIN, "{test: structural, positive: 30 psf, negative: 20 psf" TESTED, LITE, GW_PASS, GW_BY_TEST, "outward",
         "L-1"},
        {PLAIN, "{test: structural, positive: 30 psf, negative: 20 psf" TESTED, EDGE_LITE, GW_FAIL, GW_BY_TEST,
         "outward", "L-1"},
        {PLAIN, "{test: structural, positive: 15 psf, negative: 23 psf" TESTED, LITE, GW_FAIL, GW_BY_TEST, "inward",
         "L-1"},
        {PLAIN, "{test: structural, positive: 30 psf" TESTED, LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward", "no value"},
        {PLAIN, "{test: structural, negative: 30 psf" TESTED, LITE, GW_NOT_SHOWN, GW_BY_TEST, "inward", "no value"},
        {PLAIN, "{test: structural, negative: 15 psf" TESTED, LITE, GW_FAIL, GW_BY_TEST, "outward", "L-1"},
        {PLAIN, "", LITE, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "no structural rating"},
        {PLAIN, "{test: water, pressure: 12 psf}", LITE, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "no structural rating"},
    };
    CHECK_ALL(list);
}

#define STRONG "{test: structural, positive: 60 psf, negative: 60 psf, report: L-2"
#define WEAK "{test: structural, positive: 10 psf, negative: 10 psf, report: L-3"

static void structural_coverage(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {PLAIN, STRONG "}", LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward", "dimensions are not given"},
        {PLAIN, STRONG ", tested: {lite_width: 5 ft}}", LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward", "no lite height"},
        {PLAIN, STRONG ", tested: {lite_height: 9 ft}}", LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward", "no lite width"},
        {PLAIN, STRONG ", tested: {lite_width: 5 ft, lite_height: 8 ft}}", LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward",
         "tested lite height 8"},
        /* Unrotated: 9 x 5 ft does not cover 5 x 9 ft. */
        {PLAIN, STRONG ", tested: {lite_width: 9 ft, lite_height: 5 ft}}", LITE, GW_NOT_SHOWN, GW_BY_TEST, "outward",
         "tested lite height"},
        {PLAIN, STRONG ", tested: {lite_width: 6 ft, lite_height: 12 ft}}", LITE, GW_PASS, GW_BY_TEST, "outward",
         "L-2"},
        {PLAIN, STRONG ", tested: {lite_width: 5 ft, lite_height: 9 ft, make_up: b}}", LITE, GW_NOT_SHOWN, GW_BY_TEST,
         "outward", "make-up b, here a"},
        {PLAIN, STRONG ", tested: {lite_width: 5 ft, lite_height: 9 ft, make_up: a}}", LITE, GW_PASS, GW_BY_TEST,
         "outward", "L-2"},
        {PLAIN, STRONG ", tested: {module: 5 ft, span: 9 ft}}", MULLION, GW_PASS, GW_BY_TEST, "outward", "L-2"},
        {PLAIN, STRONG ", tested: {module: 5 ft}}", MULLION, GW_NOT_SHOWN, GW_BY_TEST, "outward", "no span"},
        {PLAIN, STRONG ", tested: {span: 9 ft}}", MULLION, GW_NOT_SHOWN, GW_BY_TEST, "outward", "no module"},
        {PLAIN, STRONG ", tested: {module: 4 ft, span: 9 ft}}", MULLION, GW_NOT_SHOWN, GW_BY_TEST, "outward",
         "tested module 4"},
        {PLAIN, STRONG ", tested: {module: 5 ft, span: 8.9 ft}}", MULLION, GW_NOT_SHOWN, GW_BY_TEST, "outward",
         "tested span 8.9"},
        /* A number too small fails whatever was tested. */
        {PLAIN, WEAK ", tested: {lite_width: 1 ft, lite_height: 1 ft}}", LITE, GW_FAIL, GW_BY_TEST, "outward",
         "tested lite width"},
        /* Of several reports the one that shows most. */
        {PLAIN,
         WEAK ", tested: {lite_width: 9 ft, lite_height: 9 ft}}, " STRONG
              ", tested: {lite_width: 5 ft, lite_height: 9 ft}}",
         LITE, GW_PASS, GW_BY_TEST, "outward", "L-2"},
        {PLAIN, WEAK ", tested: {lite_width: 9 ft, lite_height: 9 ft}}, " STRONG "}", LITE, GW_NOT_SHOWN, GW_BY_TEST,
         "outward", "L-2"},
    };
    CHECK_ALL(list);
}

#define SPLICED                                                                                                        \
    "galeward: 1\nproject: {name: Judged}\ncodes: {building: ibc-2021, wind: asce7-16}\n" SITE FIXED                   \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 5 ft, floors: [0 ft, 10 ft], anchors: [0 ft, 10 ft, 18 ft], splices: [18 ft], top: 20 "  \
    "ft,\n"                                                                                                            \
    "  ends: [none, none], columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                      \
    "candidates: [x.yaml]\n"

static enum gw_verdict mullion_verdict(const char *ratings, const char *where, const char *part)
{
    struct world w;
    world_open(&w);
    put_file(&w, "x.yaml", gw_format(&w.arena, "%sratings: [%s]\n", SYSTEM, ratings));
    must_judge(&w, SPLICED);
    const struct gw_finding *f = finding(&w, "structural", where);
    enum gw_verdict verdict = f->verdict;
    if (!strstr(words(&f->message), part)) print_error("%s\n", words(&f->message));
    assert_non_null(strstr(words(&f->message), part));
    world_close(&w);
    return verdict;
}

/* The piece runs over two spans, 10 and 8 ft, and 2 ft hang over the last anchor. */
static void spans_and_overhang(void **state)
{
    (void)state;
    const char *two = STRONG ", tested: {module: 5 ft, span: 10 ft, spans: 2}}";
    const char *one = STRONG ", tested: {module: 5 ft, span: 10 ft}}";
    const char *over = STRONG ", tested: {module: 5 ft, span: 10 ft, spans: 2, overhang: 2 ft}}";
    const char *little = STRONG ", tested: {module: 5 ft, span: 10 ft, spans: 2, overhang: 1 ft}}";
    assert_int_equal(mullion_verdict(two, "s/mullion/1", "L-2"), GW_PASS);
    assert_int_equal(mullion_verdict(one, "s/mullion/1", "tested over 1 span, here 2"), GW_NOT_SHOWN);
    assert_int_equal(mullion_verdict(two, "s/mullion/3", "no overhang"), GW_NOT_SHOWN);
    assert_int_equal(mullion_verdict(little, "s/mullion/3", "tested overhang 1"), GW_NOT_SHOWN);
    assert_int_equal(mullion_verdict(over, "s/mullion/3", "L-2"), GW_PASS);
}

static void utilization_and_values(void **state)
{
    struct world *w = *state;
    judge(w, PLAIN, "{test: structural, positive: 30 psf, negative: 40 psf" TESTED);
    const struct gw_finding *f = finding(w, EDGE_LITE);
    assert_near(f->required / PSF, 17.59, 0.01);
    assert_near(f->provided / PSF, 30, 1e-9);
    assert_near(f->utilisation, f->required / f->provided, 1e-12);
    assert_near(gw_term_of(f->demand, 1)->value / PSF, 22.21, 0.01);
    assert_int_not_equal(gw_used_weakest(f->used), GW_BASIS_NONE);
}

/* Components --------------------------------------------------------------------------------------------------------
 */

#define DOOR SITE "lites: {a: {component: door}}\n"
#define VENT SITE "lites: {a: {component: vent}}\n"
#define SPANDREL SITE "lites: {a: {component: spandrel}}\n"
#define LARGE ", tested: {lite_width: 5 ft, lite_height: 9 ft}}"

static void components(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {DOOR, STRONG LARGE, LITE, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "of this component"},
        {DOOR, STRONG ", component: door" LARGE, LITE, GW_PASS, GW_BY_TEST, "outward", "L-2"},
        {VENT, STRONG LARGE, LITE, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "of this component"},
        {VENT, STRONG ", component: door" LARGE, LITE, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "of this component"},
        {SPANDREL, STRONG LARGE, LITE, GW_PASS, GW_BY_TEST, "outward", "L-2"},
        {DOOR, "{test: water, pressure: 15 psf}", "water", "s", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "",
         "of this component"},
        {DOOR, "{test: water, pressure: 15 psf, component: door}", "water", "s", GW_PASS, GW_BY_TEST, "", ""},
        {DOOR, "{test: air, leakage: 0.01 cfm/ft2, at: 300 Pa}", "air", "s", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "",
         "of this component"},
    };
    CHECK_ALL(list);
}

/* A wall with fixed lites and a door asks both for water and air, once each. */
static void a_door_in_a_wall_is_asked_by_itself(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", SYSTEM "ratings: [{test: water, pressure: 15 psf}]\n");
    must_judge(w, "galeward: 1\nproject: {name: Judged}\ncodes: {building: ibc-2021, wind: asce7-16}\n" SITE
                  "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                  "lites: {a: {}, d: {component: door}, s: {component: spandrel}}\n"
                  "walls: [{name: s, width: 5 ft, floors: [0 ft], top: 20 ft, ends: [none, none],\n"
                  "  columns: {count: 1, width: 5 ft}, rows: [{height: 8 ft, lite: d}, {height: 3 ft, lite: s}, "
                  "{height: rest, lite: a}]}]\ncandidates: [x.yaml]\n");
    size_t water = 0, passed = 0;
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        if (strcmp(f->demand->check->id, "water") != 0) continue;
        water++;
        passed += f->verdict == GW_PASS;
        if (f->demand->component == GW_DOOR) assert_int_equal(f->verdict, GW_NOT_SHOWN);
    }
    assert_int_equal(water, 2);
    assert_int_equal(passed, 1);
}

/* Air, water, names -------------------------------------------------------------------------------------------------
 */

#define AT_300 SITE FIXED "requirements: {air: {leakage: 0.06 cfm/ft2, at: 300 Pa}}\n"
#define AT_75 SITE FIXED "requirements: {air: {leakage: 0.06 cfm/ft2, at: 75 Pa}}\n"
#define AIR "air", "s"

static void air_pairs(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {AT_300, "{test: air, leakage: 0.06 cfm/ft2, at: 300 Pa}", AIR, GW_PASS, GW_BY_TEST, "", ""},
        {AT_300, "{test: air, leakage: 0.06 cfm/ft2, at: 6.24 psf}", AIR, GW_PASS, GW_BY_TEST, "", ""},
        {AT_300, "{test: air, leakage: 0.07 cfm/ft2, at: 300 Pa}", AIR, GW_FAIL, GW_BY_TEST, "", ""},
        {AT_300, "{test: air, leakage: 0.01 cfm/ft2, at: 75 Pa}", AIR, GW_NOT_SHOWN, GW_BY_TEST, "",
         "a lower pressure does not show it"},
        {AT_300, "{test: air, leakage: 0.07 cfm/ft2, at: 75 Pa}", AIR, GW_FAIL, GW_BY_TEST, "", ""},
        {AT_75, "{test: air, leakage: 0.07 cfm/ft2, at: 300 Pa}", AIR, GW_NOT_SHOWN, GW_BY_TEST, "",
         "ask for the result at the required pressure"},
        {AT_75, "{test: air, leakage: 0.06 cfm/ft2, at: 300 Pa}", AIR, GW_PASS, GW_BY_TEST, "", ""},
        {AT_75, "{test: air, leakage: 0.06 cfm/ft2, at: 1.57 psf}", AIR, GW_PASS, GW_BY_TEST, "", ""},
        {PLAIN, "{test: air, leakage: 0.06 cfm/ft2, at: 6.24 psf}", AIR, GW_PASS, GW_BY_TEST, "", ""},
        {PLAIN, "", AIR, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "no air rating"},
    };
    CHECK_ALL(list);
}

#define WATER "water", "s"

static void water_ratings(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {SITE FIXED "requirements: {water: 12 psf}\n", "{test: water, pressure: 12 psf}", WATER, GW_PASS, GW_BY_TEST,
         "", ""},
        {SITE FIXED "requirements: {water: 12 psf}\n", "{test: water, pressure: 11.9 psf}", WATER, GW_FAIL, GW_BY_TEST,
         "", ""},
        {SITE FIXED "requirements: {water: 12 psf}\n", "", WATER, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "",
         "no water rating"},
    };
    CHECK_ALL(list);
}

struct water {
    const char *requirements;
    double value; /* psf */
    const char *part;
};

/* The greatest inward pressure is 17.59 psf: 20 % 3.52, 15 % 2.64, 50 % 8.795, 100 % 17.59. */
static void water_share_floor_cap(void **state)
{
    (void)state;
    static const struct water list[] = {
        {"", 6.24, "the floor governs"},
        {"requirements: {water: {basis: R}}\n", 2.90, "the floor governs"},
        {"requirements: {water: {basis: LC}}\n", 3.75, "floor"},
        {"requirements: {water: {basis: CW}}\n", 4.50, "floor"},
        {"requirements: {water: {basis: AW}}\n", 8.00, "floor"},
        {"requirements: {water: {share: 0.5}}\n", 8.795, "the share governs"},
        {"requirements: {water: {share: 50 %}}\n", 8.795, "50 %"},
        {"requirements: {water: {share: 1}}\n", 15, "the cap governs"},
        {"requirements: {water: {share: 1, cap: 12 psf}}\n", 12, "the cap governs"},
        {"requirements: {water: {share: 1, basis: AW}}\n", 12, "the cap governs"},
        {"requirements: {water: {floor: 10 psf}}\n", 10, "the floor governs"},
        {"requirements: {water: 9 psf}\n", 9, "required by the project"},
    };
    for (size_t i = 0; i < sizeof list / sizeof *list; i++) {
        struct world w;
        world_open(&w);
        judge(&w, gw_format(&w.arena, "%s%s", PLAIN, list[i].requirements), "");
        const struct gw_demand *d = finding(&w, WATER)->demand;
        assert_near(gw_term_of(d, 0)->value / PSF, list[i].value, 0.005);
        if (!strstr(words(&d->message), list[i].part)) print_error("%s\n", words(&d->message));
        assert_non_null(strstr(words(&d->message), list[i].part));
        world_close(&w);
    }
}

#define U_FACTOR SITE FIXED "requirements: {other: [{name: u_factor, at_most: 0.38}, {name: stc, at_least: 35}]}\n"

static void named_ratings(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {U_FACTOR, "{test: other, name: u_factor, value: 0.38}", "other", "u_factor", GW_PASS, GW_BY_TEST, "", ""},
        {U_FACTOR, "{name: u_factor, value: 0.36}", "other", "u_factor", GW_PASS, GW_BY_TEST, "", ""},
        {U_FACTOR, "{test: other, name: u_factor, value: 0.39}", "other", "u_factor", GW_FAIL, GW_BY_TEST, "", ""},
        {U_FACTOR, "{test: other, name: u-factor, value: 0.30}", "other", "u_factor", GW_NOT_SHOWN, GW_EVIDENCE_NONE,
         "", "no u_factor rating"},
        {U_FACTOR, "{test: other, name: stc, value: 35}", "other", "stc", GW_PASS, GW_BY_TEST, "", ""},
        {U_FACTOR, "{test: other, name: stc, value: 34}", "other", "stc", GW_FAIL, GW_BY_TEST, "", ""},
        {U_FACTOR, "", "other", "stc", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "no stc rating"},
    };
    CHECK_ALL(list);
}

/* Glass: shown by calculation, whoever the candidate is --------------------------------------------------------------
 */

#define GLASS(layers) SITE "lites: {a: {layers: [" layers "]}}\n"
#define LIMITED(limit, layers) "glass: {" limit "}\n" GLASS(layers)
#define ANNEALED(t) "{glass: " t ", treatment: annealed}"
#define EDGE_GLASS "glass", "s/lite/1"
#define EDGE_BEND "glass_deflection", "s/lite/1"
#define POCKET(sizes) "]\npocket: [" sizes /* after the ratings */

/* 5 x 9 ft under 22.21 psf of suction in the strip. */
static void glass_is_shown_by_calculation(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {GLASS(ANNEALED("12 mm")), "", EDGE_GLASS, GW_PASS, GW_BY_CALCULATION, "outward", "standard's factors"},
        {GLASS(ANNEALED("4 mm")), "", EDGE_GLASS, GW_FAIL, GW_BY_CALCULATION, "outward", "standard's factors"},
        {GLASS(ANNEALED("6 mm") ", {cavity: 12 mm}, " ANNEALED("6 mm")), "", EDGE_GLASS, GW_PASS, GW_BY_CALCULATION,
         "outward", "lite 1 of 2"},
        {PLAIN, "", EDGE_GLASS, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "which glass is in it"},
        {GLASS("{glass: 6 mm}"), "", EDGE_GLASS, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "how is the glass heat treated"},
        {GLASS("{glass: 7 mm, treatment: annealed}"), "", EDGE_GLASS, GW_NOT_SHOWN, GW_EVIDENCE_NONE, "",
         "outside the method"},
        {GLASS(ANNEALED("6 mm") ", {interlayer: pvb}, " ANNEALED("6 mm")), "", EDGE_GLASS, GW_NOT_SHOWN,
         GW_EVIDENCE_NONE, "", "how thick is the interlayer"},
        {GLASS(ANNEALED("6 mm")), "", "glass_deflection", "project", GW_NOT_REQUIRED, GW_EVIDENCE_NONE, "", "no limit"},
        {LIMITED("deflection_limit: 1/2 in", ANNEALED("6 mm")), "", EDGE_BEND, GW_FAIL, GW_BY_CALCULATION, "outward",
         "psf"},
        {LIMITED("deflection_limit: 3 in", ANNEALED("6 mm")), "", EDGE_BEND, GW_PASS, GW_BY_CALCULATION, "outward",
         "psf"},
        {LIMITED("deflection_ratio: 60, deflection_limit: 3 in", ANNEALED("6 mm")), "", EDGE_BEND, GW_PASS,
         GW_BY_CALCULATION, "outward", "psf"},
        {LIMITED("deflection_ratio: 200, deflection_limit: 3 in", ANNEALED("6 mm")), "", EDGE_BEND, GW_FAIL,
         GW_BY_CALCULATION, "outward", "psf"},
    };
    CHECK_ALL(list);
}

/* Sealed at altitude in summer, hung at the sea in winter: the factors know nothing of it. */
static void first_principles_see_the_climate(void **state)
{
    (void)state;
/* Winter strains the annealed pane most, summer bends the tempered one most: each check has its own state. */
#define TWO_STATES                                                                                                     \
    "deflection_limit: 1/2 in, sealing: {elevation: 700 m, temperature: 10 degC}, "                                    \
    "service: [{elevation: 0 m, temperature: -25 degC}, {elevation: 1500 m, temperature: 45 degC}]"
#define UNLIKE_UNIT "{glass: 4 mm, treatment: tempered}, {cavity: 25 mm}, " ANNEALED("5 mm")
#define SMALL_UNIT ANNEALED("3 mm") ", {cavity: 25 mm}, " ANNEALED("3 mm")
    static const struct expected list[] = {
        {LIMITED("basis: first_principles", SMALL_UNIT), "", EDGE_GLASS, GW_FAIL, GW_BY_CALCULATION, "outward",
         "first principles"},
        {LIMITED("sealing: {elevation: 7000 ft, temperature: 35 degC}, "
                 "service: [{elevation: 0 ft, temperature: 20 degC}, {elevation: 0 ft, temperature: -20 degC}]",
                 ANNEALED("12 mm") ", {cavity: 25 mm}, " ANNEALED("4 mm")),
         "", EDGE_GLASS, GW_PASS, GW_BY_CALCULATION, "outward", "climatic load"},
        {LIMITED(TWO_STATES, UNLIKE_UNIT), "", EDGE_GLASS, GW_PASS, GW_BY_CALCULATION, "outward", "climatic load"},
        {LIMITED(TWO_STATES, UNLIKE_UNIT), "", EDGE_BEND, GW_FAIL, GW_BY_CALCULATION, "outward", "psf"},
    };
    CHECK_ALL(list);
}

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

static void pockets_take_their_thicknesses(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {GLASS(ANNEALED("6 mm")), POCKET("1/4 in, 1 in"), "pocket", "a", GW_PASS, GW_BY_STATEMENT, "", "confirmed"},
        {GLASS(ANNEALED("8 mm")), POCKET("1/4 in, 1 in"), "pocket", "a", GW_FAIL, GW_BY_STATEMENT, "", "no pocket"},
        {GLASS(ANNEALED("6 mm") ", {cavity: 12 mm}, " ANNEALED("6 mm")), POCKET("1/4 in, 1 in"), "pocket", "a", GW_PASS,
         GW_BY_STATEMENT, "", "confirmed"},
        {GLASS(ANNEALED("6 mm")), "", "pocket", "a", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "Ask the manufacturer"},
        {PLAIN, POCKET("1 in"), "pocket", "a", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "which glass"},
    };
    CHECK_ALL(list);
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
    "transom_connection: {capacity: 900 lb}",
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}",
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "
    "tested_pullout: 2000 lb}",
    "anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb}",
    "frame_weight: 3 psf",
    "corner_anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb}",
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
        assert_true(f->utilisation > 0 && f->utilisation <= 1);
    }
}

/* One link without data leaves the whole wall not shown, whichever link it is, and the message asks for it. */
static void one_missing_link_shows_nothing(void **state)
{
    (void)state;
    for (size_t i = 0; i < CHAIN_LENGTH; i++) {
        struct world w;
        world_open(&w);
        judge(&w, GLASS(ANNEALED("12 mm")), chain_without(&w, i));
        const struct gw_finding *f = finding(&w, "structural", "s/lite/2");
        if (f->verdict != GW_NOT_SHOWN || !strstr(words(&f->message), "a link is missing"))
            print_error("without '%s': %s: %s\n", CHAIN[i], gw_verdict_name(f->verdict), words(&f->message));
        assert_int_equal(f->verdict, GW_NOT_SHOWN);
        assert_non_null(strstr(words(&f->message), "a link is missing"));
        assert_non_null(strchr(words(&f->message), '?'));
        world_close(&w);
    }
}

/* Without glass data the first link is the glass itself. */
static void glass_is_a_link(void **state)
{
    struct world *w = *state;
    judge(w, GLASS("{glass: 12 mm}"), chain_without(w, CHAIN_LENGTH));
    const struct gw_finding *f = finding(w, "structural", "s/mullion/2");
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), "heat treated"));
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
                             "anchor: {inward: 3000 lb, outward: 200 lb, dead: 3000 lb}\npocket: [1/2 in",
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

static void rows_without_an_engine(void **state)
{
    (void)state;
    static const struct expected list[] = {
        {PLAIN, STRONG_ALL, "seismic_glass", "project", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "",
         "which seismic design category"},
        {PLAIN, STRONG_ALL, "debris", "project", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "hurricane-prone"},
        {PLAIN, STRONG_ALL, "blast", "project", GW_NOT_SHOWN, GW_EVIDENCE_NONE, "", "security consultant"},
        {NONE_ASKED, STRONG_ALL, "seismic_glass", "project", GW_NOT_REQUIRED, GW_EVIDENCE_NONE, "", "Category A"},
        {NONE_ASKED, STRONG_ALL, "debris", "project", GW_NOT_REQUIRED, GW_EVIDENCE_NONE, "",
         "not in the hurricane-prone"},
        {NONE_ASKED, STRONG_ALL, "blast", "project", GW_NOT_REQUIRED, GW_EVIDENCE_NONE, "", "asks for none"},
        {NO_IMPACT, STRONG_ALL, "debris", "project", GW_NOT_REQUIRED, GW_EVIDENCE_NONE, "",
         "asks for no impact rating"},
    };
    CHECK_ALL(list);
}

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
        cmocka_unit_test(structural_values),
        cmocka_unit_test(structural_coverage),
        cmocka_unit_test(spans_and_overhang),
        WORLD_TEST(utilization_and_values),
        cmocka_unit_test(components),
        WORLD_TEST(a_door_in_a_wall_is_asked_by_itself),
        cmocka_unit_test(air_pairs),
        cmocka_unit_test(water_ratings),
        cmocka_unit_test(water_share_floor_cap),
        cmocka_unit_test(named_ratings),
        cmocka_unit_test(glass_is_shown_by_calculation),
        cmocka_unit_test(first_principles_see_the_climate),
        WORLD_TEST(both_glass_checks_name_their_rows),
        cmocka_unit_test(pockets_take_their_thicknesses),
        WORLD_TEST(what_no_test_reaches_is_calculated),
        cmocka_unit_test(one_missing_link_shows_nothing),
        WORLD_TEST(glass_is_a_link),
        WORLD_TEST(a_mullion_by_hand),
        WORLD_TEST(a_weak_anchor_fails_the_wall),
        cmocka_unit_test(rows_without_an_engine),
        WORLD_TEST(a_pass_has_evidence),
        cmocka_unit_test(summaries),
        WORLD_TEST(lists_what_is_not_checked),
        cmocka_unit_test(tornadoes_are_named),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
