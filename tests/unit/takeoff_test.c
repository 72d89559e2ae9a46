/* Two elevations zoned by hand: every group of them, and the options that change their pressures.
 *
 * Hand tables are in feet and square feet. Each names what a row of elements shares (its bottom, top ...) and what a
 * column shares (its width, zone, count ...); their product is the full list, and the take-off must hold just that
 * list. */
#include "takeoff_walls.h"

/* One group as worked out by hand. */
struct hand {
    const char *wall, *mark, *lite;
    enum gw_kind kind;
    double width, height, bottom, top, corner, area;
    long count;
    int zone;
    bool parapet;
};

/* A group of columns or of vertical lines: half of each bay beside a line is what it carries. */
struct across {
    const char *mark;
    double width, corner; /* corner: nearest edge to the outside corner */
    int zone;
    long count;
};

/* A row of lites, a stretch of mullion, a transom's strip, an anchor's strip. */
struct up {
    const char *mark;
    double bottom, top;
    bool parapet;
};

/* What the whole elevation shares: how the pressure is to be worked out apart from the take-off. */
struct elevation {
    struct world *w;
    const char *wall;
    double roof, least_width, parapet, screw_spacing;
    size_t matched;
};

static struct gw_wind_case case_of(const struct elevation *v, const struct hand *h, struct gw_wind_parapet *parapet)
{
    struct gw_wind_case in = empty_case();
    in.edition = GW_ASCE7_16;
    in.basic_wind_speed = 115 * MPH;
    in.exposure = GW_EXPOSURE_C;
    in.mean_roof_height = v->roof * FT;
    in.height = (h->parapet ? v->roof : h->top) * FT;
    in.least_width = v->least_width * FT;
    in.enclosure = GW_ENCLOSED;
    in.effective_area = h->area * FT2;
    in.zone = h->zone;
    in.roof_slope = 0;
    if (!h->parapet) return in;
    *parapet = (struct gw_wind_parapet){(v->roof + v->parapet) * FT, v->parapet * FT, 0.18, GW_NO, h->corner * FT};
    in.parapet = parapet;
    return in;
}

static void check_pressure(const struct elevation *v, const struct hand *h, const struct gw_element *e)
{
    struct gw_wind_parapet parapet;
    const struct gw_wind_case in = case_of(v, h, &parapet);
    const struct gw_wind_result r = wind_of(&in);
    const struct gw_parapet_result *p = &r.parapet_values;
    bool skin = h->kind == GW_LITE || h->kind == GW_SCREW;
    double inward = !h->parapet ? r.positive.pa : skin ? p->skin_positive : p->windward_net;
    double outward = !h->parapet ? r.negative.pa : skin ? p->skin_negative : -p->leeward_net;
    assert_near(e->inward.pa, inward, 1e-6 * inward);
    assert_near(e->outward.pa, outward, -1e-6 * outward);
    assert_near(e->inward_asd.pa, 0.6 * inward, 1e-6 * inward);
    assert_near(e->outward_asd.pa, 0.6 * outward, -1e-6 * outward);
    bool framing = h->kind == GW_MULLION || h->kind == GW_TRANSOM;
    assert_int_equal(gw_given(e->inward_deflection), framing);
    if (framing) assert_near(e->inward_deflection, 0.6 * inward, 1e-6 * inward);
}

static bool is_hand(const struct gw_element *e, const struct hand *h)
{
    bool same_lite = h->lite ? e->lite && strcmp(e->lite, h->lite) == 0 : !e->lite;
    return e->kind == h->kind && e->zone == h->zone && e->parapet == h->parapet && strcmp(e->wall, h->wall) == 0 &&
           strcmp(e->mark, h->mark) == 0 && same_lite && near_feet(e->width, h->width) &&
           near_feet(e->height, h->height) && near_feet(e->bottom, h->bottom) && near_feet(e->top, h->top) &&
           near_feet(e->corner_distance, h->corner);
}

static void print_hand(const struct hand *h)
{
    print_error("%s %s %s %.4g x %.4g ft, %.4g to %.4g ft, zone %d, count %ld\n", h->wall, gw_kind_names[h->kind],
                h->mark, h->width, h->height, h->bottom, h->top, h->zone, h->count);
}

/* The hand group is there once, with its count, area, corner distance and pressures. */
static void expect(struct elevation *v, const struct hand *h)
{
    const struct gw_element *found = NULL;
    for (size_t i = 0; i < v->w->takeoff.elements.n; i++) {
        const struct gw_element *e = &v->w->takeoff.elements.items[i];
        if (!is_hand(e, h)) continue;
        if (found) print_hand(h);
        assert_null(found);
        found = e;
    }
    if (!found || found->count != h->count) print_hand(h);
    assert_non_null(found);
    assert_int_equal(found->count, h->count);
    assert_near(found->effective_area, h->area * FT2, 1e-9 * h->area);
    assert_near(found->corner_distance, h->corner * FT, 1e-9);
    assert_false(found->place_unknown);
    check_pressure(v, h, found);
    v->matched++;
}

static size_t groups_of(const struct world *w, const char *wall)
{
    size_t n = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) n += strcmp(w->takeoff.elements.items[i].wall, wall) == 0;
    return n;
}

/* `upright`: what verticals carry, with half a bay of what follows where the wall goes on. */
static void check_all_matched(const struct elevation *v, double wall_area, double upright)
{
    static const enum gw_kind kinds[] = {GW_LITE, GW_MULLION, GW_TRANSOM, GW_ANCHOR};
    assert_int_equal(v->matched, groups_of(v->w, v->wall));
    for (size_t i = 0; i < COUNT(kinds); i++) {
        const bool vertical = kinds[i] == GW_MULLION || kinds[i] == GW_ANCHOR;
        assert_near(covered(v->w, v->wall, kinds[i]), vertical ? upright : wall_area, 1e-6);
    }
}

static struct hand hand_of(const struct elevation *v, enum gw_kind kind, const struct up *u, const struct across *a)
{
    return (struct hand){.wall = v->wall,
                         .mark = u->mark ? u->mark : a->mark,
                         .kind = kind,
                         .width = a->width,
                         .height = u->top - u->bottom,
                         .bottom = u->bottom,
                         .top = u->top,
                         .corner = a->corner,
                         .count = a->count,
                         .zone = a->zone,
                         .parapet = u->parapet};
}

static void expect_lites(struct elevation *v, const struct up *bands, size_t n_bands, const struct across *columns,
                         size_t n_columns)
{
    for (size_t b = 0; b < n_bands; b++)
        for (size_t c = 0; c < n_columns; c++) {
            struct hand h = hand_of(v, GW_LITE, &bands[b], &columns[c]);
            h.lite = h.mark;
            h.area = h.width * h.height;
            expect(v, &h);
        }
}

/* `areas`: by hand, a row of them for each strip. */
static void expect_members(struct elevation *v, enum gw_kind kind, const struct up *strips, size_t n_strips,
                           const struct across *columns, size_t n_columns, const double *areas)
{
    for (size_t s = 0; s < n_strips; s++)
        for (size_t c = 0; c < n_columns; c++) {
            struct hand h = hand_of(v, kind, &strips[s], &columns[c]);
            h.area = areas[s * n_columns + c];
            expect(v, &h);
        }
}

/* Screws along the horizontals carry the transom's strip, those along the verticals half of each bay. */
static void expect_screws(struct elevation *v, const char *mark, const struct up *runs, size_t n_runs,
                          const struct across *columns, size_t n_columns, const long *counts)
{
    bool horizontal = strcmp(mark, "horizontal") == 0;
    for (size_t r = 0; r < n_runs; r++)
        for (size_t c = 0; c < n_columns; c++) {
            struct hand h = hand_of(v, GW_SCREW, &runs[r], &columns[c]);
            h.mark = mark;
            if (horizontal) h.width = runs[r].top - runs[r].bottom;
            h.height = v->screw_spacing;
            h.area = h.width * h.height;
            h.count = counts[r * n_columns + c];
            expect(v, &h);
        }
}

/* Elevation A: a low building, 40 ft high, 80 ft wide. a = min(0.1 x 80, 0.4 x 40) = 8 ft.
 * The wall is 30 ft wide and starts at a pier, 4 ft from the corner; its right end is an inside corner.
 * Grid lines 0 3 8 13 18 24 30 ft, from the corner 4 7 12 17 22 28 34 ft: columns 1 and 2 begin within 8 ft. */
static const struct across LOW_COLUMNS[] = {
    {NULL, 3, 4, 5, 1}, {NULL, 5, 7, 5, 1}, {NULL, 5, 12, 4, 2}, {NULL, 6, 22, 4, 2}};
/* Lines at 0 3 8 13 18 24 30 carry 1.5 4 5 5 5.5 6 3 ft; their strips begin at 0 1.5 5.5 10.5 15.5 21 27 ft. */
static const struct across LOW_LINES[] = {{"jamb", 1.5, 4, 5, 1},     {"interior", 4, 5.5, 5, 1},
                                          {"interior", 5, 9.5, 4, 2}, {"interior", 5.5, 19.5, 4, 1},
                                          {"interior", 6, 25, 4, 1},  {"jamb", 3, 31, 4, 1}};
static const struct up LOW_BANDS[] = {
    {"spandrel", 0, 3, false}, {"vision", 3, 12, false}, {"spandrel", 12, 15, false}, {"vision", 15, 24, false}};
/* Anchors at the floors and at the head, 24 ft, which lies below the roof. */
static const struct up LOW_SPANS[] = {{NULL, 0, 12, false}, {NULL, 12, 24, false}};
static const struct up LOW_ANCHORS[] = {{NULL, 0, 6, false}, {NULL, 6, 18, false}, {NULL, 18, 24, false}};
/* Horizontals at 0 3 12 15 24 ft carry half the row below and half the row above. */
static const struct up LOW_TRANSOMS[] = {{"sill", 0, 1.5, false},
                                         {"intermediate", 1.5, 7.5, false},
                                         {"intermediate", 7.5, 13.5, false},
                                         {"intermediate", 13.5, 19.5, false},
                                         {"head", 19.5, 24, false}};

static void expect_low_members(struct elevation *v)
{
    /* span 12 ft x max(width, 4 ft) */
    static const double spans[] = {48, 48, 60, 66, 72, 48, 48, 48, 60, 66, 72, 48, 48, 48, 60, 66, 72, 48};
    /* width x max(strip, width / 3): 3 x 1.5, 5 x 5/3, 6 x 2; 3 x 6 ...; 3 x 4.5 ... */
    static const double transoms[] = {4.5, 25.0 / 3, 25.0 / 3, 12, 18, 30, 30,   36,   18,   30,
                                      30,  36,       18,       30, 30, 36, 13.5, 22.5, 22.5, 27};
    expect_members(v, GW_MULLION, LOW_SPANS, COUNT(LOW_SPANS), LOW_LINES, COUNT(LOW_LINES), spans);
    expect_members(v, GW_ANCHOR, LOW_ANCHORS, COUNT(LOW_ANCHORS), LOW_LINES, COUNT(LOW_LINES), spans);
    expect_members(v, GW_TRANSOM, LOW_TRANSOMS, COUNT(LOW_TRANSOMS), LOW_COLUMNS, COUNT(LOW_COLUMNS), transoms);
}

static void expect_low_screws(struct elevation *v)
{
    /* 9 in on center: 3 ft take 4, 5 ft 7 (6.67 rounded up), 6 ft 8. Alike along a horizontal but for the zone, so zone
     * 5 has 4 + 7 and zone 4 has 7 + 7 + 8 + 8. */
    static const struct across zones[] = {{NULL, 0, 4, 5, 0}, {NULL, 0, 12, 4, 0}};
    static const long horizontal[] = {11, 30, 11, 30, 11, 30, 11, 30, 11, 30};
    /* A run of 3 ft takes 4, one of 9 ft 12; two lines carry 5 ft. */
    static const long vertical[] = {4, 4, 8, 4, 4, 4, 12, 12, 24, 12, 12, 12, 4, 4, 8, 4, 4, 4, 12, 12, 24, 12, 12, 12};
    expect_screws(v, "horizontal", LOW_TRANSOMS, COUNT(LOW_TRANSOMS), zones, COUNT(zones), horizontal);
    expect_screws(v, "vertical", LOW_BANDS, COUNT(LOW_BANDS), LOW_LINES, COUNT(LOW_LINES), vertical);
}

static void low_building_beside_a_pier(void **state)
{
    struct elevation v = {.w = *state, .wall = "south", .roof = 40, .least_width = 80, .screw_spacing = 0.75};
    must_take_off(v.w, HEAD LOW_BUILDING LOW_WALL);
    expect_lites(&v, LOW_BANDS, COUNT(LOW_BANDS), LOW_COLUMNS, COUNT(LOW_COLUMNS));
    expect_low_members(&v);
    expect_low_screws(&v);
    check_all_matched(&v, 30 * 24, 30 * 24);
    assert_int_equal(v.matched, 16 + 12 + 20 + 34 + 18);
}

/* Pressures by hand -------------------------------------------------------------------------------------------------
 */

struct pressure {
    enum gw_kind kind;
    const char *mark;
    double width, bottom;
    int zone;
    double inward, outward; /* psf */
};

static const struct gw_element *find_element(const struct world *w, const char *wall, const struct pressure *p)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == p->kind && e->zone == p->zone && near_feet(e->width, p->width) &&
            near_feet(e->bottom, p->bottom) && strcmp(e->mark, p->mark) == 0 && strcmp(e->wall, wall) == 0)
            return e;
    }
    return NULL;
}

static void check_by_hand(const struct world *w, const char *wall, const struct pressure *list, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *e = find_element(w, wall, &list[i]);
        assert_non_null(e);
        assert_near(e->inward.pa / PSF, list[i].inward, 0.02);
        assert_near(e->outward.pa / PSF, list[i].outward, 0.02);
    }
}

/* K_h = 2.01 (40/900)^(2/9.5) = 1.0436; q_h = 0.00256 x 1.0436 x 0.85 x 115^2 = 30.03 psf; (GC_p) x 0.9 under a flat
 * roof. 60 ft2: log 6 / log 50 = 0.4580: +0.8626 x 0.9 = 0.7763; -0.9626 x 0.9 = -0.8663. 48 ft2: log 4.8 / log 50 =
 * 0.4010: +0.8797 x 0.9 = 0.7917; zone 5 -1.1594 x 0.9 = -1.0435. 10 ft2 and less: +0.9; -1.26 in zone 5, -0.99 in
 * zone 4. Each with 0.18 inside. */
static void low_building_by_hand(void **state)
{
    static const struct pressure list[] = {
        {GW_MULLION, "interior", 5, 0, 4, 28.72, -31.42},
        {GW_MULLION, "interior", 4, 12, 5, 29.18, -36.74},
        {GW_TRANSOM, "sill", 5, 0, 5, 32.44, -43.25},
        {GW_SCREW, "vertical", 5, 3, 4, 32.44, -35.14},
    };
    must_take_off(*state, HEAD LOW_BUILDING LOW_WALL);
    check_by_hand(*state, "south", list, COUNT(list));
}

/* Elevation B: a tower 120 ft high, 100 ft wide, with a parapet of 4 ft and a penthouse set back on it.
 * a = 0.1 x 100 = 10 ft. Six columns of 4 ft from a corner: those beginning at 0, 4 and 8 ft lie in the strip. The
 * roof's corner reaches 2 a = 20 ft: above the roof those from 12 and 16 ft on stand beside it, that from 20 ft does
 * not. The penthouse is a building of its own, 136 ft high and 30 ft wide: a = 3 ft; corners at both ends of 16 ft. */
static const struct across TOWER_COLUMNS[] = {{NULL, 4, 0, 5, 3}, {NULL, 4, 12, 4, 3}};
static const struct across TOWER_BEAMS[] = {{NULL, 4, 0, 5, 3}, {NULL, 4, 12, 4, 2}, {NULL, 4, 20, 4, 1}};
/* Lines at 0 4 ... 24 carry 2 4 4 4 4 4 4 ft, from 0 2 6 10 14 18 22 ft: the one from 10 ft on lies outside. The wall
 * goes on at its right end: the last one stands beside another bay as wide. */
static const struct across TOWER_LINES[] = {
    {"jamb", 2, 0, 5, 1}, {"interior", 4, 2, 5, 2}, {"interior", 4, 10, 4, 3}, {"jamb", 4, 22, 4, 1}};
/* The upper vision row, 115 to 124 ft, is cut at the roof. */
static const struct up TOWER_BANDS[] = {{"spandrel", 100, 103, false},
                                        {"vision", 103, 112, false},
                                        {"spandrel", 112, 115, false},
                                        {"vision", 115, 120, false},
                                        {"vision", 120, 124, true}};
/* Anchors at the floors and at the roof; above it the mullion hangs over. */
static const struct up TOWER_SPANS[] = {{NULL, 100, 112, false}, {NULL, 112, 120, false}, {NULL, 120, 124, true}};
static const struct up TOWER_ANCHORS[] = {
    {NULL, 100, 106, false}, {NULL, 106, 116, false}, {NULL, 116, 120, false}, {NULL, 120, 124, true}};
/* Horizontals at 100 103 112 115 124 ft; the head's strip, 119.5 to 124 ft, is cut at the roof. */
static const struct up TOWER_TRANSOMS[] = {{"sill", 100, 101.5, false},           {"intermediate", 101.5, 107.5, false},
                                           {"intermediate", 107.5, 113.5, false}, {"intermediate", 113.5, 119.5, false},
                                           {"head", 119.5, 120, false},           {"head", 120, 124, true}};

static void expect_tower_members(struct elevation *v)
{
    /* 12 ft x max(w, 4), 8 ft x max(w, 8/3), 4 ft x max(w, 4/3) */
    static const double mullions[] = {48, 48, 48, 48, 64.0 / 3, 32, 32, 32, 8, 16, 16, 16};
    /* The shorter span beside each anchor: 12, 8, 8 ft; the last is cut in two, its upper part as the mullion there. */
    static const double anchors[] = {48, 48, 48, 48, 64.0 / 3, 32, 32, 32, 64.0 / 3, 32, 32, 32, 8, 16, 16, 16};
    /* 4 ft x max(strip, 4/3 ft) */
    static const double transoms[] = {6,  6,  6,  24,       24,       24,       24, 24, 24,
                                      24, 24, 24, 16.0 / 3, 16.0 / 3, 16.0 / 3, 16, 16, 16};
    expect_members(v, GW_MULLION, TOWER_SPANS, COUNT(TOWER_SPANS), TOWER_LINES, COUNT(TOWER_LINES), mullions);
    expect_members(v, GW_ANCHOR, TOWER_ANCHORS, COUNT(TOWER_ANCHORS), TOWER_LINES, COUNT(TOWER_LINES), anchors);
    expect_members(v, GW_TRANSOM, TOWER_TRANSOMS, COUNT(TOWER_TRANSOMS), TOWER_BEAMS, COUNT(TOWER_BEAMS), transoms);
}

static void expect_tower_screws(struct elevation *v)
{
    /* 12 in on center: 4 a transom, three transoms of each zone; 3 9 3 5 4 in the rows. */
    static const long horizontal[] = {12, 12, 12, 12, 12, 12, 12, 12, 12, 12, 12, 12};
    /* The last line carries as much as the others of zone 4. */
    static const struct across lines[] = {{NULL, 2, 0, 5, 1}, {NULL, 4, 2, 5, 2}, {NULL, 4, 10, 4, 4}};
    static const long vertical[] = {3, 6, 12, 9, 18, 36, 3, 6, 12, 5, 10, 20, 4, 8, 16};
    expect_screws(v, "horizontal", TOWER_TRANSOMS, COUNT(TOWER_TRANSOMS), TOWER_COLUMNS, COUNT(TOWER_COLUMNS),
                  horizontal);
    expect_screws(v, "vertical", TOWER_BANDS, COUNT(TOWER_BANDS), lines, COUNT(lines), vertical);
}

static void tower_with_a_parapet(void **state)
{
    struct elevation v = {
        .w = *state, .wall = "east", .roof = 120, .least_width = 100, .parapet = 4, .screw_spacing = 1};
    must_take_off(v.w, HEAD TOWER);
    expect_lites(&v, TOWER_BANDS, COUNT(TOWER_BANDS), TOWER_COLUMNS, COUNT(TOWER_COLUMNS));
    expect_tower_members(&v);
    expect_tower_screws(&v);
    check_all_matched(&v, 24 * 24, 26 * 24);
    assert_int_equal(v.matched, 10 + 12 + 18 + 12 + 15 + 16);
}

static const struct across PLANT_COLUMNS[] = {{NULL, 4, 0, 5, 2}, {NULL, 4, 4, 4, 2}};
/* Lines carry 2 4 4 4 2 ft, from 0 2 6 2 0 ft to the nearer corner. */
static const struct across PLANT_LINES[] = {{"jamb", 2, 0, 5, 2}, {"interior", 4, 2, 5, 2}, {"interior", 4, 6, 4, 1}};

static void penthouse_set_back(void **state)
{
    static const struct up rows[] = {{"vision", 120, 136, false}}, spans[] = {{NULL, 120, 136, false}};
    static const struct up halves[] = {{NULL, 120, 128, false}, {NULL, 128, 136, false}};
    static const struct up transoms[] = {{"sill", 120, 128, false}, {"head", 128, 136, false}};
    /* 16 ft x 16/3 ft; 4 ft x 8 ft */
    static const double long_spans[] = {256.0 / 3, 256.0 / 3, 256.0 / 3, 256.0 / 3, 256.0 / 3, 256.0 / 3};
    static const double transom_areas[] = {32, 32, 32, 32};
    static const long horizontal[] = {8, 8, 8, 8}, vertical[] = {32, 32, 16};
    struct elevation v = {.w = *state, .wall = "plant", .roof = 136, .least_width = 30, .screw_spacing = 1};
    must_take_off(v.w, HEAD TOWER);
    expect_lites(&v, rows, 1, PLANT_COLUMNS, COUNT(PLANT_COLUMNS));
    expect_members(&v, GW_MULLION, spans, 1, PLANT_LINES, COUNT(PLANT_LINES), long_spans);
    expect_members(&v, GW_ANCHOR, halves, 2, PLANT_LINES, COUNT(PLANT_LINES), long_spans);
    expect_members(&v, GW_TRANSOM, transoms, 2, PLANT_COLUMNS, COUNT(PLANT_COLUMNS), transom_areas);
    expect_screws(&v, "horizontal", transoms, 2, PLANT_COLUMNS, COUNT(PLANT_COLUMNS), horizontal);
    expect_screws(&v, "vertical", rows, 1, PLANT_LINES, COUNT(PLANT_LINES), vertical);
    check_all_matched(&v, 16 * 16, 16 * 16);
}

/* 0.00256 x 0.85 x 115^2 = 28.778 psf. K_h(120) = 1.3151: q_h = 37.85 psf. K_z(112) = 1.2962: q_z = 37.30 psf.
 * 36 ft2: log 1.8 / log 25 = 0.1826: +0.8452, zone 5 -1.6539, zone 4 -0.8635.
 *   inward 37.30 x 0.8452 + 37.85 x 0.18 = 38.34; outward 37.85 x 1.8339 = 69.41, 37.85 x 1.0435 = 39.49.
 * Parapet: K(124) = 1.3243: q_p = 38.11 psf. 16 ft2: +0.9, -1.8, -0.9.
 *   glass: 38.11 x 1.08 = 41.16; 38.11 x 1.98 = 75.46 and 38.11 x 1.08 = 41.16.
 *   framing: roof -2.3 + 0.7 log 1.6 / log 50 = -2.2159 and -3.2 + 0.9 x 0.1201 = -3.0919; windward 38.11 x 3.1159 =
 * 118.74 and 38.11 x 3.9919 = 152.13: the interior mullions stand within 2 a = 20 ft of the corner, roof zone 3, in
 * wall zone 4 too; the last one, from 22 ft on, stands beside zone 2. Leeward 38.11 x 1.8
 * = 68.60 and 38.11 x 2.7 = 102.89. */
static void tower_by_hand(void **state)
{
    static const struct pressure list[] = {
        {GW_LITE, "vision", 4, 103, 5, 38.34, -69.41},        {GW_LITE, "vision", 4, 103, 4, 38.34, -39.49},
        {GW_LITE, "vision", 4, 120, 5, 41.16, -75.46},        {GW_LITE, "vision", 4, 120, 4, 41.16, -41.16},
        {GW_MULLION, "interior", 4, 120, 5, 152.13, -102.89}, {GW_MULLION, "interior", 4, 120, 4, 152.13, -68.60},
        {GW_ANCHOR, "interior", 4, 120, 4, 152.13, -68.60},   {GW_MULLION, "jamb", 4, 120, 4, 118.74, -68.60},
        {GW_TRANSOM, "head", 4, 120, 4, 152.13, -68.60},
    };
    must_take_off(*state, HEAD TOWER);
    check_by_hand(*state, "east", list, COUNT(list));
}

/* Options -----------------------------------------------------------------------------------------------------------
 */

static void option_center(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD TOWER "options: {inward_height: center}\n");
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->parapet || strcmp(e->wall, "east") != 0) continue;
        const struct elevation v = {.roof = 120, .least_width = 100};
        const struct hand h = {
            .top = (e->bottom + e->top) / 2 / FT, .area = e->effective_area / FT2, .zone = e->zone, .kind = e->kind};
        struct gw_wind_parapet unused;
        const struct gw_wind_case in = case_of(&v, &h, &unused);
        assert_near(e->inward.pa, wind_of(&in).positive.pa, 1e-6);
        assert_near(e->outward.pa, wind_of(&in).negative.pa, 1e-6);
    }
}

/* A correction of the rule for the effective area reaches the members: span / 6 instead of span / 3. */
static void corrected_area_rule(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD LOW_BUILDING LOW_WALL "assume: [{table: wind_area, row: wall, column: span_divisor, "
                                                "value: '6', reason: a test, by: the test}]\n");
    static const struct pressure jamb = {.kind = GW_MULLION, .mark = "jamb", .width = 1.5, .zone = 5};
    const struct gw_element *e = find_element(w, "south", &jamb);
    assert_non_null(e);
    assert_near(e->effective_area / FT2, 12 * 2, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(low_building_beside_a_pier), WORLD_TEST(low_building_by_hand), WORLD_TEST(tower_with_a_parapet),
        WORLD_TEST(penthouse_set_back),         WORLD_TEST(tower_by_hand),        WORLD_TEST(option_center),
        WORLD_TEST(corrected_area_rule),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
