/* Earthquakes and movement by hand: anchors, stories, beads, schedules; verdicts on glass are in tests/scenarios.
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

static const double LB = 4.4482216152605; /* N */

struct project {
    const char *risk, *treatment, *seismic, *more, *system;
};

static void judge(struct world *w, const struct project *p)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", p->system));
    must_judge(w, gw_format(&w->arena, WALL, p->risk, p->treatment, p->seismic, p->more));
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

#define GAPS "drift: {path: racking, side_gap: 3/8 in, end_gap: 1/2 in}"

/* 7-16, 0.4 x 1.25 x 1.0 (1 + 2 z/h)/1 for fasteners: z/h is the anchor's own level, 0 and 13/40: 0.5 and 0.825 W; the
 * wall's 0.4/2.5 (1 + 2 z/h) is 0.264 above and the least, 0.3, below. 0.7 of it on 6.5 ft of 10 mm glass (13 psf an
 * inch) and 3 psf of frame. */
static void anchor_force_by_hand(void **state)
{
    struct world *w = *state;
    const struct project p = {"", "annealed", D_1 ", story_drift: 1 in", "",
                              "frame_weight: 3 psf\nanchor: {inward: 100 lb, outward: 90 lb, along: 900 lb, dead: 9000 "
                              "lb, interaction: none, report: C-1}"};
    judge(w, &p);
    int low = 0, high = 0;
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        if (strcmp(f->demand->check->id, "seismic_force") != 0) continue;
        const struct gw_element *e = f->demand->element;
        const bool base = e->bottom < 1e-9;
        const double share = base ? 0.5 : 0.825, weight = (13 * 10 / 25.4 + 3) * PSF * e->width * 6.5 * FT;
        assert_near(gw_term_of(f->demand, 0)->value, share, 1e-9);
        assert_near(f->required, 0.7 * share * weight, 1e-3 * weight);
        assert_near(f->provided, 90 * LB, 1e-6);
        assert_non_null(strstr(words(&f->demand->message), base ? "30 %" : "82.5 %"));
        low += base, high += !base;
    }
    assert_true(low > 0 && high > 0);
}

/* What stands beside a seismic anchor: `ends` of the wall, its roof. */
static const struct gw_finding *force_at(struct world *w, const char *building, const char *ends, const char *system,
                                         bool corner, bool parapet)
{
    static const char head[] =
        "galeward: 1\nproject: {name: Shaken}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "buildings: [{name: low, least_width: 80 ft, enclosure: enclosed, %s}]\n"
        "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 13 ft, ends: [%s, none],\n"
        "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
        "lites: {a: {layers: [{glass: 10 mm, treatment: annealed}]}}\n"
        "site: {basic_wind_speed: 115 mph, exposure: C, seismic: {" D_1 "}}\ncandidates: [x.yaml]\n";
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", system));
    must_judge(w, gw_format(&w->arena, head, building, ends));
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        const struct gw_element *e = f->demand->element;
        if (strcmp(f->demand->check->id, "seismic_force") == 0 && e->corner == corner && e->parapet == parapet &&
            e->top > 11.9 * FT && (corner || e->width > 4 * FT))
            return f;
    }
    fail();
    return NULL;
}
#define ANCHORS "frame_weight: 3 psf\nanchor: {inward: 900 lb, outward: 900 lb, along: 2000 lb, dead: 9000 lb}\n"
static const double PER_AREA = 13 * 10 / 25.4 + 3; /* psf */

/* Half a bay of either face, against the anchor that is made for it. */
static void corner_anchors_take_both_faces(void **state)
{
    struct world *w = *state;
    struct world bare;
    const struct gw_finding *f = force_at(w, "roof_height: 40 ft", "corner",
                                          ANCHORS "corner_anchor: {inward: 400 lb, outward: 500 lb, along: 2000 lb, "
                                                  "dead: 9000 lb, interaction: none, report: C-1}",
                                          true, false);
    assert_near(f->required / LB, 0.7 * 0.825 * PER_AREA * 2 * 2.5 * 6.5, 0.2);
    assert_near(f->provided / LB, 400, 1e-6);
    world_open(&bare);
    f = force_at(&bare, "roof_height: 40 ft", "corner", ANCHORS, true, false);
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), "corner_anchor"));
    world_close(&bare);
}

/* 5 ft by 13 ft can hang on the anchor at the head, at 0.825 of its weight: 0.7 E along the edge, and
 * D + 0.7 (0.2 S_DS D) down. */
static void anchors_hold_along_and_down(void **state)
{
    (void)state;
    static const struct {
        const char *along_dead, *words;
        double share, provided;
    } cases[] = {{"along: 60 lb, dead: 9000 lb", "along the slab edge", 0.7 * 0.825, 60},
                 {"along: 900 lb, dead: 200 lb", "dead load and the vertical", 1 + 0.7 * 0.2 * 1.0, 200}};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        const char *system = gw_format(
            &w.arena,
            "frame_weight: 3 psf\nanchor: {inward: 900 lb, outward: 900 lb, interaction: none, report: C-1, %s}",
            cases[i].along_dead);
        const struct gw_finding *f = force_at(&w, "roof_height: 40 ft", "none", system, false, false);
        assert_near(f->required / LB, cases[i].share * PER_AREA * 5 * 13, 0.2);
        assert_near(f->provided / LB, cases[i].provided, 1e-6);
        assert_non_null(strstr(words(&f->message), cases[i].words));
        world_close(&w);
    }
    struct world bare;
    world_open(&bare);
    const struct gw_finding *f =
        force_at(&bare, "roof_height: 40 ft", "none",
                 "frame_weight: 3 psf\nanchor: {inward: 900 lb, outward: 900 lb, dead: 900 lb}", false, false);
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    world_close(&bare);
}

/* A roof at 12 ft cuts the anchor's band; span 12 ft, overhang 1 ft: 13 x 6.5/12 = 7.04 ft, all of it in both parts. */
static void an_anchor_at_the_roof_is_one(void **state)
{
    (void)state;
    for (int parapet = 0; parapet < 2; parapet++) {
        struct world w;
        world_open(&w);
        const struct gw_finding *f =
            force_at(&w, "roof_height: 12 ft, parapet_height: 1 ft", "none", ANCHORS, false, parapet);
        assert_near(f->required / LB, 0.7 * 1.5 * PER_AREA * 5 * 13 * 6.5 / 12, 0.5);
        world_close(&w);
    }
}

/* Category B is exempt, but for parapets and components of importance; no S_DS is needed to say so. */
static void category_b(void **state)
{
    (void)state;
    const struct project plain = {"", "annealed", "category: B", "", GAPS};
    const struct project vital = {", risk_category: IV", "annealed", "category: B, story_drift: 1 in", "", GAPS};
    static const char *const checks[] = {"seismic_glass", "seismic_silicone", "seismic_force"};
    for (size_t i = 0; i < 6; i++) {
        struct world w;
        world_open(&w);
        judge(&w, i < 3 ? &plain : &vital);
        for (size_t k = 0; k < w.answer.judgement.demands.n; k++) {
            const struct gw_demand *d = &w.answer.judgement.demands.items[k];
            if (strcmp(d->check->id, checks[i % 3]) != 0) continue;
            assert_true((d->state == GW_NOT_ASKED) == (i < 3));
            if (i < 3) assert_non_null(strstr(words(&d->message), "exempt"));
            if (i == 5) assert_non_null(strstr(words(&d->message), "S_DS"));
        }
        world_close(&w);
    }
}

/* Drift: stories, heads, tests --------------------------------------------------------------------------------------
 */

/* Floors 13 ft apart, anchors at every other one: the story is 13 ft, not 26. */
#define TALL                                                                                                           \
    "galeward: 1\nproject: {name: Shaken}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                              \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft, 13 ft, 26 ft], top: 40 ft, ends: [none, none],\n"                  \
    "  anchors: [0 ft, 26 ft, 40 ft], columns: {count: 4, width: 5 ft},\n"                                             \
    "  rows: [{height: 7 ft, lite: b}, {height: rest, lite: a}]}]\n"                                                   \
    "lites: {a: {layers: [{glass: 10 mm, treatment: annealed}]}, b: {layers: [{glass: 10 mm, treatment: "              \
    "annealed}]}}\n"                                                                                                   \
    "site: {basic_wind_speed: 115 mph, exposure: C, seismic: {" D_1 ", story_drift_ratio: 0.02}}\n%s\n"                \
    "candidates: [x.yaml]\n"

static void stories_go_by_floors(void **state)
{
    struct world *w = *state;
    const double inch = 0.0254;
    int low = 0, last = 0;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n" GAPS "\n");
    must_judge(w, gw_format(&w->arena, TALL, ""));
    for (size_t i = 0; i < w->answer.judgement.demands.n; i++) {
        const struct gw_demand *d = &w->answer.judgement.demands.items[i];
        if (strcmp(d->check->id, "seismic_glass") != 0) continue;
        bool top = d->element->bottom > 25 * FT; /* up to the roof: 14 ft */
        assert_near(gw_term_of(d, 0)->value / inch, 0.02 * 12 * (top ? 14 : 13), 1e-9);
        low += !top, last += top;
    }
    assert_true(low > 0 && last > 0);
    for (size_t i = 0; i < w->answer.mock_up.n; i++) /* of the tallest story */
        if (w->answer.mock_up.steps[i].test == GW_STEP_SWAY)
            assert_near(w->answer.mock_up.steps[i].displacement / inch, 0.02 * 12 * 14, 1e-9);
}

/* A shop front of 11 ft in a story of 14 ft drifts with the 14 ft. */
static void a_wall_may_end_below_its_slab(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n" GAPS "\n");
    must_judge(w, "galeward: 1\nproject: {name: Shaken}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                  "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                  "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 11 ft, ends: [none, none],\n"
                  "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"
                  "lites: {a: {layers: [{glass: 10 mm, treatment: annealed}]}}\n"
                  "site: {basic_wind_speed: 115 mph, exposure: C, seismic: {" D_1
                  ", story_drift_ratio: 0.02, story_height: 14 ft}}\ncandidates: [x.yaml]\n");
    for (size_t i = 0; i < w->answer.judgement.demands.n; i++) {
        const struct gw_demand *d = &w->answer.judgement.demands.items[i];
        if (strcmp(d->check->id, "seismic_glass") == 0)
            assert_near(gw_term_of(d, 0)->value / 0.0254, 0.02 * 12 * 14, 1e-9);
    }
}

/* Glass b ends at 7 ft, glass a at 13 ft: tempered and monolithic, b is exempt but in risk category IV, a is not. */
static void tempered_low_down(void **state)
{
    (void)state;
    for (int vital = 0; vital < 2; vital++) {
        struct world w;
        world_open(&w);
        put_file(&w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n");
        char *text =
            gw_format(&w.arena, WALL, vital ? ", risk_category: IV" : "", "tempered", D_1 ", story_drift: 2 in", "");
        memcpy(strstr(text, "annealed"), "tempered", strlen("tempered"));
        must_judge(&w, text);
        for (size_t i = 0; i < w.answer.judgement.findings.n; i++) {
            const struct gw_finding *f = &w.answer.judgement.findings.items[i];
            if (strcmp(f->demand->check->id, "seismic_glass") != 0) continue;
            bool low = strcmp(f->demand->element->lite, "b") == 0;
            assert_int_equal(f->verdict, low && !vital ? GW_NOT_REQUIRED : GW_NOT_SHOWN);
        }
        world_close(&w);
    }
}

/* The bead of a lite of 60 x 72 in under D_pI = 1.25 x 2 x 72/156 in, by the least energy written out. */
static void silicone_by_hand(void **state)
{
    struct world *w = *state;
    const double h = 72, b = 60, drift = 1.25 * 2 * 72 / 156, t = 0.375;
    const double a = h * h * (3 * b + h), c = b * b * (3 * h + b), turn = drift / h * a / (a + c);
    put_file(w, "x.yaml",
             "galeward: 1\nsystem: {name: X, kind: unitized, glazing: silicone}\n" GAPS
             "\nsilicone: {bite: 5/8 in, thickness: 3/8 in, shear_strain: 1.5}\n");
    must_judge(w, gw_format(&w->arena, WALL, ", risk_category: III", "annealed", D_1 ", story_drift: 2 in", ""));
    const struct gw_finding *f = finding(w, "seismic_silicone", lite_a(w));
    assert_near(f->required, hypot((drift / h - turn) * h / 2, turn * b / 2) / t, 1e-9);
    assert_int_equal(f->verdict, GW_PASS);
}

/* Openings of a schedule stand in no story: a given drift is all theirs, a part of the story's height asks for it. */
static void openings_of_a_schedule(void **state)
{
    (void)state;
    static const char head[] =
        "galeward: 1\nproject: {name: Shaken}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
        "lites: {a: {layers: [{glass: 10 mm, treatment: annealed}]}}\nopenings: s.csv\n"
        "site: {basic_wind_speed: 115 mph, exposure: C, seismic: {" D_1 ", %s}}\ncandidates: [x.yaml]\n";
    const struct {
        const char *drift;
        enum gw_verdict verdict;
        double required; /* in */
        const char *part;
    } rows[] = {
        {"story_drift: 1 in", GW_PASS, 1.25, "clearance"},
        {"story_drift_ratio: 0.01", GW_NOT_SHOWN, GW_ABSENT, "story_height"},
        {"structure: other", GW_NOT_SHOWN, GW_ABSENT, "story_height"},
        {"story_drift_ratio: 0.01, story_height: 12 ft", GW_PASS, 1.25 * 0.01 * 72, "clearance"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct world w;
        world_open(&w);
        put_file(&w, "s.csv", "mark,width,height,count,sill,offset,lite\nA,60 in,72 in,1,10 ft,20 ft,a\n");
        put_file(&w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n" GAPS "\n");
        must_judge(&w, gw_format(&w.arena, head, rows[i].drift));
        const struct gw_finding *f = finding(&w, "seismic_glass", "schedule/lite/1");
        assert_int_equal(f->verdict, rows[i].verdict);
        assert_non_null(strstr(words(&f->message), rows[i].part));
        if (gw_given(rows[i].required)) assert_near(f->required / 0.0254, rows[i].required, 1e-9);
        assert_int_equal(finding(&w, "movement", "project")->verdict, GW_NOT_REQUIRED);
        world_close(&w);
    }
}

/* Without lite types nothing is known of the glass that hangs on an anchor. */
static void glass_that_is_not_known(void **state)
{
    struct world *w = *state;
    put_file(w, "s.csv", "mark,width,height,count,sill,offset\nA,60 in,72 in,1,10 ft,20 ft\n");
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n" ANCHORS);
    must_judge(w, "galeward: 1\nproject: {name: Shaken}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
                  "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
                  "openings: s.csv\nsite: {basic_wind_speed: 115 mph, exposure: C, seismic: {" D_1 "}}\n"
                  "candidates: [x.yaml]\n");
    const struct gw_finding *f = finding(w, "seismic_force", "schedule/anchor/1");
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), "what does the glass weigh"));
}

/* Movement ----------------------------------------------------------------------------------------------------------
 */

#define MOVES                                                                                                          \
    "movement: {live_load: 0.75 in, shortening: 0.125 in, coldest: -20 degF, hottest: 160 degF, "                      \
    "set_coldest: 70 degF, set_warmest: 70 degF, fabrication: 1/16 in, erection: 1/8 in}"

/* Anchors at every other floor: pieces of 26 and 14 ft, the first of which spans two stories: twice the shortening,
 * and 26 ft of aluminum, 23.6e-6 per K by 50 K. */
static void long_pieces_move_more(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n" GAPS "\n");
    must_judge(w, gw_format(&w->arena, TALL, MOVES));
    const double thermal = 23.6e-6 * 26 * 12 * 50;
    assert_near(gw_term_of(finding(w, "movement", "project")->demand, 0)->value / 0.0254,
                0.75 + 2 * 0.125 + thermal + 0.1875, 1e-6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(anchor_force_by_hand),
        WORLD_TEST(corner_anchors_take_both_faces),
        cmocka_unit_test(anchors_hold_along_and_down),
        cmocka_unit_test(an_anchor_at_the_roof_is_one),
        cmocka_unit_test(category_b),
        WORLD_TEST(stories_go_by_floors),
        WORLD_TEST(a_wall_may_end_below_its_slab),
        cmocka_unit_test(tempered_low_down),
        WORLD_TEST(silicone_by_hand),
        cmocka_unit_test(openings_of_a_schedule),
        WORLD_TEST(glass_that_is_not_known),
        WORLD_TEST(long_pieces_move_more),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
