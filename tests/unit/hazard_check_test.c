/* Debris and blast in the check: missiles at the limits, uses, derivations; verdicts are in tests/scenarios.
 *
 * Wall h has lites that begin at 0, 30 and 60 ft, wall k a little higher than the limits: at 10, 30.1 and 60.1 ft. Each
 * is 5 ft wide. Pressures are given: 40 psf inward and 60 psf outward, allowable-stress level. */
#include "support.h"

#include "galeward/report.h"

#define HEAD                                                                                                           \
    "galeward: 1\nproject: {name: Hazards}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                             \
    "buildings: [{name: tall, roof_height: 100 ft, least_width: 80 ft, enclosure: enclosed}]\n"                        \
    "walls:\n"                                                                                                         \
    "  - {name: h, width: 5 ft, floors: [0 ft, 30 ft, 60 ft], top: 70 ft, ends: [none, none],\n"                       \
    "     columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"                                        \
    "  - {name: k, width: 5 ft, floors: [10 ft, 30.1 ft, 60.1 ft], top: 70 ft, ends: [none, none],\n"                  \
    "     columns: {count: 1, width: 5 ft}, rows: [{height: rest, lite: a}]}\n"                                        \
    "pressures: given\n"                                                                                               \
    "given: [{building: tall, zone: 4, area: 1 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1},\n"      \
    "  {building: tall, zone: 4, area: 900 ft2, inward: 40 psf, outward: 60 psf, level: asd, source: S-1}]\n"          \
    "candidates: [x.yaml]\n"
/* One lite of 4 x 6 ft. */
#define SMALL_WALL                                                                                                     \
    "galeward: 1\nproject: {name: Blasts}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                              \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: b, width: 4 ft, floors: [0 ft], top: 6 ft, ends: [none, none],\n"                                  \
    "  columns: {count: 1, width: 4 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "candidates: [x.yaml]\n"
#define SYSTEM "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n"
#define FIXED "lites: {a: {}}\n"
#define SPEED(mph) "site: {basic_wind_speed: " mph " mph, exposure: C, hurricane_prone: true"
#define COAST(mph, feet, impact) SPEED(mph) ", coast_distance: " feet " ft, impact: " impact "}\n" FIXED
#define BY_CODE "{rule: by_code, bite: 0.5 in}"
#define INLAND COAST("160", "20000", BY_CODE) /* region by 140 mph anywhere; zone 3 by 150 to 160 mph */

static void judge_of(struct world *w, const char *head, const char *more, const char *ratings)
{
    put_file(w, "x.yaml", gw_format(&w->arena, "%sratings: [%s]\n", SYSTEM, ratings));
    must_judge(w, gw_format(&w->arena, "%s%s", head, more));
}

/* Debris: the demand ------------------------------------------------------------------------------------------------
 */

static const struct gw_demand *demand(struct world *w, const char *more, const char *where)
{
    judge_of(w, HEAD, more, "");
    return finding(w, "debris", where)->demand;
}

static void at_the_limits_of_height(void **state)
{
    struct world *w = *state;
    const struct gw_demand *low = demand(w, INLAND, "h/lite/1");
    assert_int_equal(low->hazard->missile, GW_MISSILE_D);
    assert_int_equal(low->hazard->wind_zone, 3);
    assert_near(gw_term_of(low, 0)->value / PSF, 40, 1e-9);
    assert_near(gw_term_of(low, 1)->value / PSF, 60, 1e-9);
    assert_non_null(strstr(words(&low->message), "9.0 lb lumber"));
    assert_non_null(strstr(words(&low->message), "basic protection"));
    assert_non_null(strstr(words(&low->message), "3500 of 8 psf to 20 psf")); /* 0.2 and 0.5 of 40 psf */
    assert_non_null(strstr(words(&low->message), "50 of 18 psf to 60 psf"));  /* 0.3 and 1.0 of 60 psf */
    assert_int_not_equal(gw_used_weakest(low->used), GW_BASIS_NONE);
    assert_int_equal(finding(w, "debris", "h/lite/2")->demand->hazard->missile, GW_MISSILE_D); /* 30 ft is low */
    assert_int_equal(finding(w, "debris", "k/lite/2")->demand->hazard->missile, GW_MISSILE_A);
    assert_null(finding(w, "debris", "k/lite/3")->demand->hazard);
}

static void the_specification_goes_first(void **state)
{
    struct world *w = *state;
    const struct gw_demand *d = demand(w, COAST("160", "20000", "{missile: E, wind_zone: 4}"), "k/lite/3");
    assert_int_equal(d->hazard->missile, GW_MISSILE_E);
    assert_int_equal(d->hazard->wind_zone, 4);
    assert_non_null(strstr(words(&d->message), "specification"));
}

static void the_edition_of_debris(void **state)
{
    struct world *w = *state;
    const char *head = gw_format(&w->arena, "%s", HEAD);
    /* 7-22 takes the strip near the shore only with Exposure D there. */
    char *at = strstr(head, "wind: asce7-16");
    assert_non_null(at);
    const char *more = COAST("131", "100", "{rule: by_code, exposure_d_at_shore: false}");
    const char *other = gw_format(&w->arena, "%.*swind: asce7-16, debris: asce7-22%s", (int)(at - head), head,
                                  at + strlen("wind: asce7-16"));
    const char *old = gw_format(&w->arena, "%.*swind: asce7-16, debris: asce7-05%s", (int)(at - head), head,
                                at + strlen("wind: asce7-16"));
    judge_of(w, head, more, "");
    assert_int_equal(finding(w, "debris", "h/lite/1")->verdict, GW_NOT_SHOWN);
    judge_of(w, other, more, "");
    assert_int_equal(finding(w, "debris", "h/lite/1")->verdict, GW_NOT_REQUIRED);
    judge_of(w, old, more, "");
    assert_non_null(strstr(words(&finding(w, "debris", "project")->message), "nominal"));
    judge_of(w, old, COAST("131", "100", "{missile: D}"), "");
    assert_int_equal(finding(w, "debris", "h/lite/1")->demand->hazard->missile, GW_MISSILE_D);
}

/* Debris: ratings -------------------------------------------------------------------------------------------------- */

#define IMPACT(missile, zone, in, out, more)                                                                           \
    "{test: impact, missile: " missile ", wind_zone: " zone ", positive: " in " psf, negative: " out                   \
    " psf, report: I-1, " more "}"
#define LARGE "bite: 0.5 in, tested: {lite_width: 5 ft, lite_height: 30 ft}"
#define LOW "debris", "h/lite/1"
#define GOOD IMPACT("D", "3", "40", "60", LARGE)

static void use_of_an_impact_rating(void **state)
{
    struct world *w = *state;
    judge_of(w, HEAD, INLAND, IMPACT("D", "3", "80", "75", LARGE));
    const struct gw_finding *f = finding(w, LOW);
    assert_near(f->utilization, 60.0 / 75, 1e-9);
    assert_string_equal(gw_load_direction_name(f->direction), "outward");
    assert_near(f->provided / PSF, 75, 1e-9);
    assert_int_equal(w->answer.judgement.findings.n, w->answer.judgement.demands.n);
    /* No row is left out, not even with the rule of two impacts and computed pressures. */
    judge_of(w, SMALL_WALL, COAST("170", "0", BY_CODE), GOOD);
    f = finding(w, "debris", "b/lite/1");
    assert_int_not_equal(gw_used_weakest(f->used), GW_BASIS_NONE);
}

/* Blast ------------------------------------------------------------------------------------------------------------
 */

#define TEMPERED(mm) "{glass: " mm ", treatment: tempered}"
#define BLAST(given) "site: {basic_wind_speed: 115 mph, exposure: C, blast: " given "}\n"
#define GLASS(layers) "lites: {a: {layers: [" layers "]}}\n"
#define PAIR "pressure: 4 psi, impulse: 28 psi-ms"
#define ASKED BLAST("{" PAIR ", hazard: low}") FIXED
#define RATED(p, i, more) "{test: blast, pressure: " p " psi, impulse: " i " psi-ms, report: B-1, " more "}"
#define SIZE "tested: {lite_width: 4 ft, lite_height: 6 ft}"
#define STOUT "{glass: 19 mm, treatment: tempered}"
#define HERE "blast", "b/lite/1"

static void use_of_a_blast_rating(void **state)
{
    struct world *w = *state;
    judge_of(w, SMALL_WALL, ASKED, RATED("10", "35", "hazard: low, " SIZE));
    const struct gw_finding *f = finding(w, HERE);
    assert_near(f->utilization, 28.0 / 35, 1e-9);
    assert_int_equal(f->dim, GW_IMPULSE);
    judge_of(w, SMALL_WALL, ASKED, RATED("5", "70", "hazard: low, " SIZE));
    f = finding(w, HERE);
    assert_near(f->utilization, 4.0 / 5, 1e-9);
    assert_int_equal(f->dim, GW_PRESSURE);
}

/* The same finding once more, with the derivation of both sides. */
static void derive(struct world *w, struct gw_finding *out, const struct gw_finding *f, struct gw_trace *trace)
{
    struct gw_demand *demand = gw_alloc(&w->arena, 1, sizeof *demand);
    w->ask.trace = trace;
    gw_judge_element(out, demand, &w->ask, f->demand->check, f->demand->element, f->candidate);
    w->ask.trace = NULL;
}

/* The same numbers as the engine's own, and a derivation of them. */
static void the_calculation_is_the_engines(void **state)
{
    struct world *w = *state;
    struct gw_trace trace;
    struct gw_finding derived;
    judge_of(w, SMALL_WALL, BLAST("{" PAIR "}") GLASS(TEMPERED("19 mm")), "");
    const struct gw_finding *f = finding(w, HERE);
    struct gw_engine engine;
    static struct gw_blast_curve curve;
    struct gw_blast_response r;
    struct gw_lite lite = {.width = 4 * FT,
                           .height = 6 * FT,
                           .temperature = GW_ABSENT,
                           .probability = GW_ABSENT,
                           .edges = 4,
                           .edition = w->model.project.codes->glass};
    const struct gw_lite_type *type = gw_model_lite(&w->model, "a");
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    engine.workspace = gw_alloc(&w->arena, 1, GW_PLATE_WORKSPACE);
    assert_int_equal(gw_make_up_from(&lite.make_up, type->layers.items, type->layers.n, &engine), GW_OK);
    assert_int_equal(gw_blast_curve(&curve, &lite, false, &engine), GW_OK);
    assert_int_equal(gw_blast_respond(&r, &curve, f->demand->hazard->blast, &engine), GW_OK);
    assert_near(f->utilization, r.use, 1e-9);
    assert_near(f->provided, curve.capacity, 1e-6);
    assert_near(f->demand->hazard->blast.impulse, 28 * 6.894757293168361, 1e-6);
    gw_trace_init(&trace, &w->arena);
    derive(w, &derived, f, &trace);
    assert_int_equal(derived.verdict, f->verdict);
    assert_true(trace.n > 5);
}

static void debris_is_derived(void **state)
{
    struct world *w = *state;
    struct gw_trace trace;
    struct gw_finding derived;
    judge_of(w, HEAD, INLAND, GOOD);
    gw_trace_init(&trace, &w->arena);
    derive(w, &derived, finding(w, "debris", "h/lite/1"), &trace);
    assert_int_equal(derived.verdict, GW_PASS);
    size_t cycles = 0;
    for (size_t i = 0; i < trace.n; i++)
        cycles += trace.steps[i].symbol && strcmp(trace.steps[i].symbol, "p_high") == 0;
    assert_int_equal(cycles, 8);
}

/* Without a sill the take-off's place, high up, would spare the lite or give it the ball. */
static void an_unknown_height_is_asked_for(void **state)
{
    struct world *w = *state;
    static const char file[] = "openings: {file: schedule.csv, columns: {mark: Tag}}\n";
    static const char head[] =
        "galeward: 1\nproject: {name: Hazards}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "buildings: [{name: tall, roof_height: 100 ft, least_width: 80 ft, enclosure: enclosed}]\n"
        "candidates: [x.yaml]\n";
    put_file(w, "schedule.csv",
             "Tag,width,height,count,sill,offset,lite,building\nW1,5 ft,6 ft,1,,20 ft,a,tall\n"
             "W2,5 ft,6 ft,1,10 ft,20 ft,a,tall\nW3,5 ft,6 ft,1,10 ft,,a,tall\n");
    judge_of(w, head, gw_format(&w->arena, "%s%s", INLAND, file), "");
    assert_non_null(strstr(words(&finding(w, "debris", "schedule/lite/1")->message), "(openings: sill, offset)"));
    assert_int_equal(finding(w, "debris", "schedule/lite/2")->demand->hazard->missile, GW_MISSILE_D);
    assert_int_equal(finding(w, "debris", "schedule/lite/3")->demand->hazard->missile, GW_MISSILE_D);
    judge_of(w, head, gw_format(&w->arena, "%s%s", COAST("129", "0", BY_CODE), file), "");
    assert_int_equal(finding(w, "debris", "schedule/lite/1")->verdict, GW_NOT_REQUIRED);
}

/* Reports ---------------------------------------------------------------------------------------------------------- */

static const char *report_text(struct world *w, const char *element)
{
    struct gw_text text;
    struct gw_report report;
    struct gw_results results;
    gw_results_of(&results, &w->arena, &w->answer, GW_US);
    results.sources = true;
    struct gw_result result = gw_result_demand(&results);
    if (element) {
        struct gw_explanation explanation;
        gw_explain(&explanation, &w->ask, &w->answer.judgement, gw_takeoff_find(&w->takeoff, element));
        result = gw_result_explain(&w->arena, &results, &explanation);
    }
    gw_report_init(&report, &w->arena);
    result.page(&report, &result);
    gw_text_init(&text, &w->arena);
    gw_render_text(&text, &report, false);
    return text.at;
}

/* One line a requirement, whatever the pressures: walls h and k share theirs. */
static void demand_sums_up(void **state)
{
    struct world *w = *state;
    judge_of(w, HEAD, INLAND, "");
    const char *text = report_text(w, NULL);
    static const char *const parts[] = {"3 lites, 0.00 - 60.00 ft",  "missile D",
                                        "2 lites, 30.10 - 70.00 ft", "missile A",
                                        "1 lite, 60.10 - 70.00 ft",  "high above the ground"};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) assert_non_null(strstr(text, parts[i]));
}

static void explain_derives_them(void **state)
{
    struct world *w = *state;
    judge_of(w, HEAD, SPEED("160") ", coast_distance: 20000 ft, impact: " BY_CODE ", blast: {" PAIR "}}\n" GLASS(STOUT),
             GOOD);
    const char *text = report_text(w, "h/lite/1");
    static const char *const parts[] = {"X: Wind-borne debris", "p_high",   "X: Blast",
                                        "debris_cycles",        "impact-8", "I-1: provided"};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) assert_non_null(strstr(text, parts[i]));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(at_the_limits_of_height), WORLD_TEST(the_specification_goes_first),
        WORLD_TEST(the_edition_of_debris),   WORLD_TEST(use_of_an_impact_rating),
        WORLD_TEST(use_of_a_blast_rating),   WORLD_TEST(the_calculation_is_the_engines),
        WORLD_TEST(debris_is_derived),       WORLD_TEST(an_unknown_height_is_asked_for),
        WORLD_TEST(demand_sums_up),          WORLD_TEST(explain_derives_them),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
