/* The framing's links at the level of 'check': loads, patterns, corners, the roof line. Expected figures by hand, in US
 * units, from statics and the section's own formulas; the wind is given, so that it stays out of the way. */
#include "support.h"

static const double LB = 4.4482216152605, INCH = 0.0254, KSI = 6894757.293168, LB_FT = 4.4482216152605 * 0.3048;

/* 30 psf inward and 42 psf outward everywhere below the roof, allowable-stress level. */
#define GIVEN                                                                                                          \
    "pressures: given\ngiven: [{zone: 4, area: 1 ft2, inward: 30 psf, outward: 42 psf, level: asd},\n"                 \
    "  {zone: 5, area: 1 ft2, inward: 30 psf, outward: 42 psf, level: asd}]\n"
#define CODES(year) "galeward: 1\nproject: {name: Framed}\ncodes: {building: ibc-" year ", wind: asce7-16}\n"
#define SITE "site: {basic_wind_speed: 115 mph, exposure: C}\n"
#define BUILDING(more) "buildings: [{name: low, least_width: 80 ft, enclosure: enclosed, " more "}]\n"
#define MONOLITHIC "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\n"
#define CANDIDATE "candidates: [x.yaml]\n"
#define WALL(more) "walls: [{name: s, columns: {count: 4, width: 5 ft}, width: 20 ft, " more "}]\n"
#define PLAIN_ENDS "ends: [none, none], rows: [{height: rest, lite: a}]"
#define PROJECT(wall)                                                                                                  \
    CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(wall ", " PLAIN_ENDS)

#define TUBE "{alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}}"
/* Of that tube: (2.5 x 6^3 - 2.25 x 5.75^3) / 12. */
static const double TUBE_INERTIA = (2.5 * 216 - 2.25 * 5.75 * 5.75 * 5.75) / 12; /* in4 */

/* For a YAML file; never by printf, whose point goes with the locale. */
static const char *shown(struct world *w, double value)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_text_number(&text, value, 12);
    return text.at;
}

static void judge(struct world *w, const char *project, const char *system)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", system));
    must_judge(w, project);
}

/* The element of that kind and mark that starts at `bottom` ft. */
static const struct gw_element *element(const struct world *w, enum gw_kind kind, const char *mark, double bottom)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == kind && strcmp(e->mark, mark) == 0 && fabs(e->bottom - bottom * FT) < 1e-6) return e;
    }
    print_error("no %s %s at %g ft\n", gw_kind_names[kind], mark, bottom);
    fail();
    return NULL;
}

static const struct gw_finding *of(const struct world *w, const char *check, enum gw_kind kind, const char *mark,
                                   double bottom)
{
    return finding(w, check, element(w, kind, mark, bottom)->id);
}

static const struct gw_reaction *reaction(const struct world *w, const char *mark, double bottom)
{
    const struct gw_element *e = element(w, GW_ANCHOR, mark, bottom);
    for (size_t i = 0; i < w->answer.reactions.n; i++)
        if (w->answer.reactions.items[i].element == e) return &w->answer.reactions.items[i];
    fail();
    return NULL;
}

static const struct gw_member_demand *member(const struct world *w, const struct gw_element *e)
{
    for (size_t i = 0; i < w->answer.members.n; i++)
        if (w->answer.members.items[i].element == e) return &w->answer.members.items[i];
    fail();
    return NULL;
}

static void must_ask(const struct gw_finding *f, const char *part)
{
    if (f->verdict != GW_NOT_SHOWN || !strstr(words(&f->message), part))
        print_error("%s at %s: %s: %s\n", f->demand->check->id, f->demand->where, gw_verdict_name(f->verdict),
                    words(&f->message));
    assert_int_equal(f->verdict, GW_NOT_SHOWN);
    assert_non_null(strstr(words(&f->message), part));
}

/* Deflection level --------------------------------------------------------------------------------------------------
 */

/* Framing that holds glass deflects under 0.6 W, never 0.42 W, whatever the edition: 210 lb/ft over 12 ft. */
static void deflection_takes_the_whole_design_wind(void **state)
{
    (void)state;
    static const char *const editions[] = {CODES("2012"), CODES("2015"), CODES("2018"), CODES("2021")};
    const double by_hand = 5 * 17.5 * pow(144, 4) / (384 * 10.1e6 * TUBE_INERTIA); /* in */
    for (size_t i = 0; i < 4; i++) {
        struct world w;
        world_open(&w);
        const char *wall = WALL("floors: [0 ft], top: 12 ft, " PLAIN_ENDS);
        judge(&w,
              gw_format(&w.arena, "%s%s%s%s", editions[i], SITE BUILDING("roof_height: 75 ft") GIVEN,
                        MONOLITHIC CANDIDATE, wall),
              "mullion: " TUBE);
        const struct gw_finding *f = of(&w, "mullion_deflection", GW_MULLION, "interior", 0);
        assert_near(f->provided / INCH, by_hand, 1e-6);
        assert_near(f->required / INCH, 144.0 / 175, 1e-9);
        assert_int_equal(f->verdict, by_hand <= 144.0 / 175 ? GW_PASS : GW_FAIL);
        world_close(&w);
    }
}

/* 13 ft 6 in still goes by L/175; above it L/240 + 1/4 in; a cantilever counts twice its length. */
static void limits_at_the_boundary(void **state)
{
    struct world *w = *state;
    judge(w,
          PROJECT("floors: [0 ft, 13 ft 6 in, 27 ft 1 in], anchors: [0 ft, 13 ft 6 in, 27 ft 1 in], top: 29 ft 1 in"),
          "mullion: " TUBE);
    assert_near(member(w, element(w, GW_MULLION, "interior", 0))->deflection_limit / INCH, 162.0 / 175, 1e-9);
    assert_near(member(w, element(w, GW_MULLION, "interior", 13.5))->deflection_limit / INCH, 163.0 / 240 + 0.25, 2e-3);
    assert_near(member(w, element(w, GW_MULLION, "interior", 27 + 1.0 / 12))->deflection_limit / INCH, 2 * 24.0 / 175,
                1e-9);
}

/* Line loads --------------------------------------------------------------------------------------------------------
 */

/* A third of the span is an area for the coefficient, not a width that is loaded: 3 ft bays over 24 ft. */
static void a_third_of_the_span_is_not_a_loaded_width(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE
          "walls: [{name: s, columns: {count: 4, width: 3 ft}, width: 12 ft, floors: [0 ft], top: 24 ft, " PLAIN_ENDS
          "}]\n",
          "mullion: " TUBE);
    const struct gw_element *e = element(w, GW_MULLION, "interior", 0);
    assert_near(e->effective_area / FT2, 24 * 8, 1e-6);
    assert_near(member(w, e)->moment / LB_FT, 42 * 3 * 24.0 * 24 / 8, 1e-6);
    assert_near(member(w, e)->shear / LB, 42 * 3 * 12, 1e-6);
    assert_near(reaction(w, "interior", 0)->outward / LB, 42 * 3 * 12, 1e-6);
}

/* Rails give their reactions back to the mullion: with a rail at midheight its moment is that of the uniform load; each
 * rail takes a triangle or trapezoid from above and one from below, 42 psf: lites of 5 x 6 ft give w L^2/12, w = 105.
 */
static void rails_are_loaded_and_relieve_nothing(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(
              "floors: [0 ft], top: 12 ft, ends: [none, none], rows: [{height: 6 ft, lite: a}, {height: rest, lite: "
              "a}]"),
          "mullion: " TUBE);
    const struct gw_element *rail = element(w, GW_TRANSOM, "intermediate", 3);
    assert_near(member(w, element(w, GW_MULLION, "interior", 0))->moment / LB_FT, 210 * 144.0 / 8, 1e-6);
    assert_near(member(w, rail)->moment / LB_FT, 2 * 105 * 25.0 / 12, 1e-6);
    assert_near(member(w, rail)->shear / LB, 2 * 105 * 5.0 / 4, 1e-6);
    assert_near(member(w, element(w, GW_TRANSOM, "sill", 0))->moment / LB_FT, 105 * 25.0 / 12, 1e-6);
}

/* A lite held at head and sill alone loads them evenly with half its height: 42 x 3 over 5 ft, from both sides. */
static void two_edges_load_the_rails_evenly(void **state)
{
    struct world *w = *state;
    judge(w,
          CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN CANDIDATE
          "lites: {a: {support: 2, span: height, layers: [{glass: 12 mm, treatment: tempered}]}}\n" WALL(
              "floors: [0 ft], top: 12 ft, ends: [none, none], rows: [{height: 6 ft, lite: a}, {height: rest, lite: "
              "a}]"),
          "mullion: " TUBE);
    const struct gw_member_demand *rail = member(w, element(w, GW_TRANSOM, "intermediate", 3));
    assert_near(rail->moment / LB_FT, 42 * 6 * 25.0 / 8, 1e-6);
    assert_near(rail->shear / LB, 42 * 6 * 2.5, 1e-6);
}

/* Continuity --------------------------------------------------------------------------------------------------------
 */

#define STATED "mullion: {alloy: 6063-T6, inertia_x: 20 in4, allowable_moment: 60000 in-lb}\n"

/* One piece over two stories of 12 ft, 210 lb/ft: 1.25 w L at the middle, w L^2/8 over it; joints at every floor: w L.
 */
static void the_middle_support_of_two_spans(void **state)
{
    (void)state;
    static const struct {
        const char *project;
        double middle, end, piece;
    } cases[] = {{PROJECT("floors: [0 ft, 12 ft], anchors: [0 ft, 12 ft, 24 ft], splices: [24 ft], top: 24 ft"), 1.25,
                  0.375, 24},
                 {PROJECT("floors: [0 ft, 12 ft], anchors: [0 ft, 12 ft, 24 ft], top: 24 ft"), 1, 0.5, 12}};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(&w, cases[i].project, STATED);
        for (int k = 0; k < 2; k++)
            assert_near(member(&w, element(&w, GW_MULLION, "interior", 12 * k))->moment / LB_FT, 210 * 144.0 / 8, 1e-6);
        assert_near(reaction(&w, "interior", 6)->outward / LB, cases[i].middle * 210 * 12, 1e-6);
        assert_near(reaction(&w, "interior", 0)->outward / LB, cases[i].end * 210 * 12, 1e-6);
        assert_near(reaction(&w, "interior", 18)->outward / LB, cases[i].end * 210 * 12, 1e-6);
        assert_near(reaction(&w, "interior", 6)->area / FT2, 5 * cases[i].piece, 1e-6);
        world_close(&w);
    }
}

/* Spliced 2 ft above each floor. From the top: the piece of 50 to 60 ft spans 10 ft, 1050 lb and 2625 ft-lb; it hangs
 * on the overhang below: M = 210 x 2 + 2 V over the anchor, V = 1050 - M/10 at the next splice: 2520 ft-lb and 798 lb,
 * 2016 and 848.4, 2116.8 and 838.32, 2096.64: the end stories are not the steady state, 2100 and 840. */
static void splices_beyond_the_anchors(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft, 12 ft, 24 ft, 36 ft, 48 ft], splices: [14 ft, 26 ft, 38 ft, 50 ft], top: 60 ft"),
          STATED "splice: {capacity: 1000 lb}");
    const struct {
        double floor, moment, splice;
    } stories[] = {{48, 2625, 1050}, {36, 2520, 798}, {24, 2116.8, 848.4}, {12, 2116.8, 838.32}};
    for (size_t i = 0; i < sizeof stories / sizeof *stories; i++) {
        const struct gw_finding *f = of(w, "mullion", GW_MULLION, "interior", stories[i].floor),
                                *s = of(w, "splice", GW_MULLION, "interior", stories[i].floor);
        assert_near(f->required / LB_FT, stories[i].moment, 1e-6);
        assert_near(s->required / LB, stories[i].splice, 1e-6);
        assert_int_equal(s->verdict, stories[i].splice > 1000 ? GW_FAIL : GW_PASS);
    }
    /* Without a splice: 12 ft less the overhang's couple. R = 1260 - 2096.64/12 = 1085.28; M = R^2/(2 w) = 2804.4. */
    assert_near(of(w, "mullion", GW_MULLION, "interior", 0)->required / LB_FT, 1085.28 * 1085.28 / 420, 1e-6);
    assert_int_equal(of(w, "splice", GW_MULLION, "interior", 0)->verdict, GW_NOT_REQUIRED);
}

/* A reinforced mullion shares by stiffness: 8.0 in4 of aluminum and 2.5 of steel, 80.8 and 72.5 of E I; the part used
 * up first limits both. Never the sum of the moduli. */
static void inserts_share_by_stiffness(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft], top: 12 ft"),
          "mullion: {alloy: 6063-T6, inertia_x: 8 in4, allowable_moment: 40000 in-lb,\n"
          "  insert: {metal: steel, inertia_x: 2.5 in4, section_modulus_x: 1.25 in3, yield: 36 ksi}}\n");
    const double aluminum = 10.1e6 * 8, steel = 29e6 * 2.5, all = aluminum + steel;
    const double by_steel = 36000 / 1.67 * 1.25 * all / steel, by_aluminum = 40000 * all / aluminum;
    assert_true(by_steel < by_aluminum);
    const struct gw_finding *f = of(w, "mullion", GW_MULLION, "interior", 0),
                            *d = of(w, "mullion_deflection", GW_MULLION, "interior", 0);
    assert_near(f->provided / (LB * INCH), by_steel, 1e-3);
    assert_non_null(strstr(words(&f->message), "insert"));
    assert_near(d->provided / INCH, 5 * 17.5 * pow(144, 4) / (384 * all), 1e-6);
}

/* The roof line -----------------------------------------------------------------------------------------------------
 */

#define PARAPET CODES("2021") SITE BUILDING("roof_height: 40 ft, parapet_height: 4 ft") GIVEN MONOLITHIC CANDIDATE
#define SCREWED                                                                                                        \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"                                           \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "tested_pullout: 2000 lb}\n"

/* A span from 20 to 44 ft over a roof at 40: both parts know that it is one member of 24 ft. */
static void a_span_across_the_roof_line_is_one_member(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s", PARAPET,
                    WALL("floors: [0 ft, 20 ft], anchors: [0 ft, 20 ft, 44 ft], top: 44 ft, " PLAIN_ENDS)),
          "mullion: " TUBE "\nratings: [{test: structural, positive: 900 psf, negative: 900 psf, report: L-1, tested: "
          "{module: 5 ft, span: 20 ft, lite_width: 5 ft, lite_height: 20 ft}}]\n");
    const struct gw_element *low = element(w, GW_MULLION, "interior", 20),
                            *high = element(w, GW_MULLION, "interior", 40);
    assert_near(low->span / FT, 24, 1e-9);
    assert_near(high->span / FT, 24, 1e-9);
    assert_near(low->height / FT, 20, 1e-9);
    const struct gw_finding *a = finding(w, "mullion", low->id), *b = finding(w, "mullion", high->id);
    assert_int_equal(a->evidence, GW_BY_CALCULATION); /* a test over 20 ft does not reach it */
    assert_near(a->required, b->required, 1e-9 * b->required);
    /* Inward: 30 psf on 20 ft and the parapet's on 4: R at 20 ft = (w1 20 x 14 + w2 4 x 2) / 24, M = R^2/(2 w1). */
    const double w1 = fmax(low->inward_asd.pa, 0) * low->width, w2 = high->inward_asd.pa * high->width;
    const double r = (w1 * 20 * 14 + w2 * 4 * 2) / 24 * FT, top = r / w1;
    const double v1 = -low->outward_asd.pa * low->width, v2 = -high->outward_asd.pa * high->width;
    const double q = (v1 * 20 * 14 + v2 * 4 * 2) / 24 * FT;
    assert_true(top < 20 * FT && q / v1 < 20 * FT);
    assert_near(a->required, fmax(r * r / (2 * w1), q * q / (2 * v1)), 1e-6 * a->required);
    /* The pane that the line cuts is one pane of 24 ft. */
    assert_near(element(w, GW_LITE, "a", 20)->pane / FT, 24, 1e-9);
    assert_non_null(
        strstr(words(&of(w, "structural", GW_LITE, "a", 20)->message), "tested lite height 20 ft, here 24 ft"));
}

/* 20 ft of wall and 4 ft of parapet past the roof anchor: p_1 L/2 + p_2 (a + a^2/(2 L)); the anchor below keeps all of
 * its load though the parapet would relieve it. */
static void the_roof_anchor_takes_the_overhang_with_its_lever(void **state)
{
    struct world *w = *state;
    judge(w, gw_format(&w->arena, "%s%s", PARAPET, WALL("floors: [0 ft, 20 ft], top: 44 ft, " PLAIN_ENDS)), STATED);
    const struct gw_element *below = element(w, GW_ANCHOR, "interior", 30),
                            *above = element(w, GW_ANCHOR, "interior", 40);
    assert_true(above->inward_asd.pa > 1.2 * below->inward_asd.pa);
    const double hold = 4 + 16.0 / 40;
    const struct gw_reaction *r = reaction(w, "interior", 30);
    assert_near(r->inward, 5 * FT2 * (below->inward_asd.pa * 10 + above->inward_asd.pa * hold), 1e-6 * r->inward);
    assert_near(r->outward, -5 * FT2 * (below->outward_asd.pa * 10 + above->outward_asd.pa * hold), 1e-6 * r->outward);
    assert_near(r->area / FT2, 5 * 24, 1e-9);
    assert_near(reaction(w, "interior", 10)->outward / LB, 42 * 5 * 20, 1e-6);
    /* Over the anchor: p a^2/2. */
    const struct gw_element *tip = element(w, GW_MULLION, "interior", 40);
    const double most = fmax(tip->inward_asd.pa, -tip->outward_asd.pa) * tip->width;
    assert_near(member(w, tip)->moment, most * 16 * FT2 / 2, 1e-6 * most);
    assert_near(member(w, tip)->deflection_limit / INCH, 2 * 48.0 / 175, 1e-9);
}

/* The rail at 38 ft carries 19 to 41 ft: a screw of its plate has both parts, whichever group it is read in. */
static void screws_of_a_rail_at_the_roof_line(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s", PARAPET,
                    WALL("floors: [0 ft, 38 ft], top: 44 ft, screws: {spacing: 9 in}, " PLAIN_ENDS)),
          SCREWED);
    const struct gw_element *low = element(w, GW_SCREW, "horizontal", 19),
                            *high = element(w, GW_SCREW, "horizontal", 40);
    const double by_hand = 0.75 * FT * (-low->outward_asd.pa * 21 * FT - high->outward_asd.pa * 1 * FT);
    const struct gw_finding *a = finding(w, "screw", low->id), *b = finding(w, "screw", high->id);
    assert_near(a->required, by_hand, 1e-6 * by_hand);
    assert_near(b->required, by_hand, 1e-6 * by_hand);
    /* Plate: w s^2/12 over b t^2/6. */
    const double stress = by_hand * 0.75 * FT / 12 / (2.25 * 0.0625 / 6 * pow(INCH, 3));
    assert_near(finding(w, "plate", low->id)->required, stress, 1e-6 * stress);
    assert_near(finding(w, "plate", high->id)->required, stress, 1e-6 * stress);
}

/* A parapet without a pressure leaves what hangs together with it not shown, never without its load. */
static void a_stretch_without_a_pressure_is_not_left_out(void **state)
{
    struct world *w = *state;
    judge(w,
          gw_format(&w->arena, "%s%s",
                    CODES("2021") SITE BUILDING("roof_height: 40 ft, parapet_height: 4 ft, roof_slope: 30 deg")
                        GIVEN MONOLITHIC CANDIDATE,
                    WALL("floors: [0 ft, 20 ft], top: 44 ft, " PLAIN_ENDS)),
          STATED "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb}\nframe_weight: 3 psf\n");
    must_ask(of(w, "mullion", GW_MULLION, "interior", 20), "ask the structural engineer");
    must_ask(of(w, "mullion_deflection", GW_MULLION, "interior", 20), "ask the structural engineer");
    must_ask(of(w, "anchor", GW_ANCHOR, "interior", 30), "outside the method");
    assert_false(gw_given(reaction(w, "interior", 30)->outward));
    /* Past the joint at 20 ft it does not matter. */
    assert_near(of(w, "mullion", GW_MULLION, "interior", 0)->required / LB_FT, 210 * 400.0 / 8, 1e-6);
    assert_near(of(w, "anchor", GW_ANCHOR, "interior", 0)->required / LB, 42 * 5 * 10, 1e-6);
}

/* Corners -----------------------------------------------------------------------------------------------------------
 */

#define CORNER                                                                                                         \
    CODES("2021")                                                                                                      \
    SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(                                               \
        "floors: [0 ft, 12 ft], top: 24 ft, ends: [corner, {corner_at: 3 ft}], rows: [{height: rest, lite: a}]")
#define CORNER_TUBE "{alloy: 6063-T6, inertia_x: 20 in4, inertia_y: 5 in4, allowable_moment: 60000 in-lb}"

/* Only the jamb that stands at the corner; the other stops 3 ft short of it. */
static void one_jamb_of_two_is_a_corner(void **state)
{
    struct world *w = *state;
    judge(w, CORNER,
          STATED "corner_mullion: {alloy: 6063-T6, tube: {width: 5 in, depth: 6 in, flange: 0.125 in, web: 0.25 in}}\n"
                 "splice: {capacity: 5000 lb}\nframe_weight: 6.92913 psf\n"
                 "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb}\n"
                 "corner_anchor: {inward: 9000 lb, outward: 9000 lb, dead: 650 lb}\n");
    int corners = 0, jambs = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind != GW_MULLION || strcmp(e->mark, "jamb") != 0) continue;
        jambs++;
        assert_int_equal(e->count, 1);
        assert_string_equal(e->columns, e->corner ? "1" : "5");
        corners += e->corner;
        const struct gw_finding *f = finding(w, "mullion", e->id), *s = finding(w, "splice", e->id);
        assert_near(f->required / LB_FT, 105 * 144.0 / 8, 1e-6);
        assert_int_equal(strstr(words(&f->message), "corner") != NULL, e->corner);
        assert_near(s->required / LB, (e->corner ? 2 : 1) * 105 * 6, 1e-6);
    }
    assert_int_equal(jambs, 4);
    assert_int_equal(corners, 2);
    /* 10 psf of wall, a piece of 12 ft, half a bay of each face: 600 lb against 650. */
    const struct gw_finding *a = finding(w, "anchor", "s/anchor/1");
    assert_true(a->demand->element->corner);
    assert_near(a->required / LB, 600, 0.01);
    assert_int_equal(a->verdict, GW_PASS);
}

/* It bends both ways: the weaker stiffness for deflection, and what is not known is asked for. */
static void a_corner_bends_both_ways(void **state)
{
    (void)state;
    struct world w;
    world_open(&w);
    judge(&w, CORNER, STATED "corner_mullion: " CORNER_TUBE);
    const double by_hand = 5 * 8.75 * pow(144, 4) / (384 * 10.1e6 * 5);
    assert_near(finding(&w, "mullion_deflection", "s/mullion/1")->provided / INCH, by_hand, 1e-6);
    must_ask(finding(&w, "mullion", "s/mullion/1"), "about y");
    must_ask(finding(&w, "anchor", "s/anchor/1"), "corner_anchor");
    must_ask(finding(&w, "splice", "s/mullion/1"), "splice");
    world_close(&w);
    world_open(&w);
    judge(&w, CORNER, STATED "corner_mullion: {alloy: 6063-T6, inertia_x: 20 in4, allowable_moment: 60000 in-lb}");
    must_ask(finding(&w, "mullion_deflection", "s/mullion/1"), "inertia_y");
    world_close(&w);
}

/* An opening whose place is unknown takes the worst pressure, but its jambs are its own. */
static void an_opening_is_no_corner(void **state)
{
    struct world *w = *state;
    put_file(w, "o.csv", "mark,building,width,height,count,lite\nW1,low,5 ft,12 ft,3,a\n");
    judge(w, CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE "openings: o.csv\n",
          STATED "anchor: {inward: 900 lb, outward: 900 lb, dead: 900 lb}\nframe_weight: 3 psf\n");
    const struct gw_finding *f = of(w, "mullion", GW_MULLION, "W1", 63), *a = of(w, "anchor", GW_ANCHOR, "W1", 63);
    assert_false(f->demand->element->corner);
    assert_near(f->required / LB_FT, 42 * 2.5 * 144.0 / 8, 1e-6);
    assert_near(a->required / LB, 42 * 2.5 * 6, 1e-6);
}

/* Fasteners ---------------------------------------------------------------------------------------------------------
 */

/* A tapping screw has a factor of 3.0 on its tested strength and on the formula; 1/4-20 in 1/8 in of 6063-T6: 1.2 x
 * 0.25 x 0.125 x 25 ksi = 937.5 lb nominal. 42 psf on 5 ft by 9 in. */
static void screws_have_a_factor_of_three(void **state)
{
    (void)state;
    static const struct {
        const char *hold;
        double nominal;
    } cases[] = {{"hold: chase, tested_pullout: 1500 lb", 1500},
                 {"hold: tapped, alloy: 6063-T6, engagement: 0.125 in", 937.5},
                 {"hold: tapped, tested_pullout: 840 lb", 840}};
    for (size_t i = 0; i < 3; i++) {
        struct world w;
        world_open(&w);
        judge(&w, PROJECT("floors: [0 ft], top: 12 ft, screws: {spacing: 9 in}"),
              gw_format(&w.arena,
                        "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"
                        "screw: {diameter: 1/4 in, threads_per_inch: 20, ultimate: 100 ksi, head_diameter: 1/2 in, %s}",
                        cases[i].hold));
        const struct gw_finding *f = NULL;
        for (size_t k = 0; k < w.answer.judgement.findings.n; k++) {
            const struct gw_finding *one = &w.answer.judgement.findings.items[k];
            bool run =
                strcmp(one->demand->check->id, "screw") == 0 && strcmp(one->demand->element->mark, "vertical") == 0;
            if (run && one->demand->element->width > 4 * FT) f = one;
        }
        assert_non_null(f);
        assert_near(f->provided / LB, cases[i].nominal / 3, 1e-3);
        assert_near(f->required / LB, 42 * 5 * 0.75, 1e-6);
        world_close(&w);
    }
}

/* 6063-T5 is weaker above 1/2 in: 15 ksi there, 16 below; bending of the plate by yielding of its elastic modulus. */
static void strength_goes_with_the_thickness(void **state)
{
    (void)state;
    static const struct {
        const char *thickness;
        double yield; /* ksi */
    } cases[] = {{"0.5 in", 16}, {"0.625 in", 15}};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(
            &w, PROJECT("floors: [0 ft], top: 12 ft"),
            gw_format(&w.arena, "pressure_plate: {alloy: 6063-T5, width: 2.25 in, thickness: %s}", cases[i].thickness));
        assert_near(finding(&w, "plate", "s/screw/1")->provided / KSI, cases[i].yield / 1.65, 1e-6);
        world_close(&w);
    }
}

/* 13 ft stories of 10 psf: 1950 lb in, 2730 out, 650 dead at 4 in: 2600 in-lb on 5 in: 2730 + 520 = 3250 lb. */
static void bolts_take_the_couple_of_the_weight(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft, 13 ft], top: 26 ft"),
          "frame_weight: 6.92913 psf\n" /* with 3.07087 of glass */
          "anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb, eccentricity: 4 in, bolt_arm: 5 in, bolts: 1, "
          "bolt_tension: 4000 lb}");
    const struct gw_reaction *r = reaction(w, "interior", 6.5);
    assert_near(r->inward / LB, 1950, 1e-6);
    assert_near(r->outward / LB, 2730, 1e-6);
    assert_near(r->outward_strength / LB, 2730 / 0.6, 1e-6);
    assert_near(r->area / FT2 * 10, 650, 1e-6);
    const struct gw_finding *f = of(w, "anchor", GW_ANCHOR, "interior", 6.5);
    assert_near(f->required / LB, 3250, 0.01);
    assert_near(f->provided / LB, 4000, 1e-6);
    assert_non_null(strstr(words(&f->message), "bolt"));
}

/* The wind on half of the lesser side: 42 psf x 5 ft / 2 over 20 psi: 0.4375 in. */
static void the_bite_goes_by_the_lesser_side(void **state)
{
    struct world *w = *state;
    put_file(w, "x.yaml", "galeward: 1\nsystem: {name: X, kind: stick, glazing: silicone}\nsilicone: {bite: 0.4 in}\n");
    must_judge(w, PROJECT("floors: [0 ft], top: 12 ft"));
    const struct gw_finding *f = finding(w, "silicone", "s/lite/1");
    assert_near(f->required / INCH, 42 * 2.5 / 144 * 12 / 20, 1e-6);
    assert_int_equal(f->verdict, GW_FAIL);
}

/* A test under a lighter unit says nothing of the weight of a heavier one. */
static void a_test_shows_a_rail_only_under_its_own_glass(void **state)
{
    (void)state;
    static const char *const made[] = {"a", "b"};
    for (size_t i = 0; i < 2; i++) {
        struct world w;
        world_open(&w);
        judge(
            &w, PROJECT("floors: [0 ft], top: 12 ft"),
            gw_format(&w.arena,
                      "ratings: [{test: structural, positive: 60 psf, negative: 60 psf, report: L-1, tested: {module: "
                      "5 ft, span: 12 ft, lite_width: 5 ft, lite_height: 12 ft, make_up: %s}}]",
                      made[i]));
        const struct gw_finding *f = of(&w, "transom", GW_TRANSOM, "sill", 0);
        assert_int_equal(f->verdict, i == 0 ? GW_PASS : GW_NOT_SHOWN);
        assert_int_equal(of(&w, "transom", GW_TRANSOM, "head", 6)->verdict, GW_PASS);
        world_close(&w);
    }
}

/* One simple span of that height, 5 ft modules. */
static bool mullion_passes(double span_ft)
{
    struct world w;
    world_open(&w);
    judge(&w,
          gw_format(&w.arena, PROJECT("floors: [0 ft], top: %s ft, anchors: [0 ft, %s ft]"), shown(&w, span_ft),
                    shown(&w, span_ft)),
          "mullion: " TUBE);
    const struct gw_element *e = element(&w, GW_MULLION, "interior", 0);
    bool passes = finding(&w, "mullion", e->id)->verdict == GW_PASS &&
                  finding(&w, "mullion_deflection", e->id)->verdict == GW_PASS;
    world_close(&w);
    return passes;
}

/* The span that the search gives is where the checks themselves turn. */
static void the_reach_is_where_the_checks_turn(void **state)
{
    struct world *w = *state;
    judge(w, PROJECT("floors: [0 ft], top: 12 ft, anchors: [0 ft, 12 ft]"), "mullion: " TUBE);
    const struct gw_reach *r = NULL;
    for (size_t i = 0; i < w->answer.reaches.n; i++)
        if (w->answer.reaches.items[i].zone == 4) r = &w->answer.reaches.items[i];
    assert_non_null(r);
    assert_near(r->at_width, 5 * FT, 1e-9);
    assert_true(mullion_passes(r->span / FT * 0.995));
    assert_false(mullion_passes(r->span / FT * 1.005));
    /* By hand where deflection governs: 5 w L^4/(384 E I) = L/175. */
    double line = 42 * 5 * LB / FT, inertia = TUBE_INERTIA * pow(INCH, 4), modulus = 10100 * KSI;
    double by_hand = cbrt(384 * modulus * inertia / (5 * 175 * line));
    assert_near(r->span, by_hand, 0.002 * by_hand);
    assert_false(gw_given(r->spacing)); /* no screws are known */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(deflection_takes_the_whole_design_wind),
        WORLD_TEST(limits_at_the_boundary),
        WORLD_TEST(a_third_of_the_span_is_not_a_loaded_width),
        WORLD_TEST(rails_are_loaded_and_relieve_nothing),
        WORLD_TEST(two_edges_load_the_rails_evenly),
        cmocka_unit_test(the_middle_support_of_two_spans),
        WORLD_TEST(splices_beyond_the_anchors),
        WORLD_TEST(inserts_share_by_stiffness),
        WORLD_TEST(a_span_across_the_roof_line_is_one_member),
        WORLD_TEST(the_roof_anchor_takes_the_overhang_with_its_lever),
        WORLD_TEST(screws_of_a_rail_at_the_roof_line),
        WORLD_TEST(a_stretch_without_a_pressure_is_not_left_out),
        WORLD_TEST(one_jamb_of_two_is_a_corner),
        cmocka_unit_test(a_corner_bends_both_ways),
        WORLD_TEST(an_opening_is_no_corner),
        cmocka_unit_test(screws_have_a_factor_of_three),
        cmocka_unit_test(strength_goes_with_the_thickness),
        WORLD_TEST(bolts_take_the_couple_of_the_weight),
        WORLD_TEST(the_bite_goes_by_the_lesser_side),
        cmocka_unit_test(a_test_shows_a_rail_only_under_its_own_glass),
        WORLD_TEST(the_reach_is_where_the_checks_turn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
