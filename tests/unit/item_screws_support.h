/* Screws of a plate as they were read: the wall that their tests share.
 *
 * The wall of judge_test: four lites of 5 x 9 ft, 40 ft high. The third vertical from the left lies beyond the edge
 * strip. K 0.20 to 0.35, 10 to 30 in-lb form the thread, 0.80 of the clamp is left after a year, so that 95 in-lb on a
 * 1/4 in screw leaves 0.8 (95 - 30)/(0.35 x 0.25) = 594.3 lb to 0.8 (95 - 10)/(0.20 x 0.25) = 1360 lb. */
#ifndef GALEWARD_TESTS_ITEM_SCREWS_SUPPORT_H
#define GALEWARD_TESTS_ITEM_SCREWS_SUPPORT_H

#include "support.h"

#include "galeward/inspect.h"
#include "judge/item.h"

static const double LB = 4.4482216152605, IN = 0.0254;
#define INLB (LB * IN)
#define DAYS 86400.0

#define PROJECT                                                                                                        \
    "galeward: 1\nproject: {name: Read}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                                \
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft], top: 9 ft, ends: [corner, none],\n"                               \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                                          \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "lites: {a: {layers: [{glass: 12 mm, treatment: annealed}]}}\ncandidates: [x.yaml]\n"
#define SYSTEM                                                                                                         \
    "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\npocket: [1/2 in]\nframe_weight: 3 psf\n"          \
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.188 in, web: 0.125 in}}\n"                 \
    "corner_mullion: {alloy: 6063-T6, tube: {width: 4 in, depth: 6 in, flange: 0.188 in, web: 0.188 in}}\n"            \
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, eccentricity: 1 "  \
    "in}\ntransom_connection: {capacity: 900 lb, report: L-10}\n"                                                      \
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.375 in}\n"                                          \
    "anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb, report: C-1}\n"                                        \
    "corner_anchor: {inward: 3000 lb, outward: 3000 lb, dead: 3000 lb, report: C-2}\n"
#define SCREW_WITH(more)                                                                                               \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "tested_pullout: 2000 lb, report: L-11" more "}\n"
#define SCREW SCREW_WITH("")
/* In a chase that no torque of its limits strips, nor half of it. */
#define STRONG_SCREW                                                                                                   \
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "          \
    "tested_pullout: 4000 lb, report: L-11}\n"
#define CLAMP                                                                                                          \
    "clamp: {nut_factor: [0.20, 0.35], forming_torque: [10 in-lb, 30 in-lb], stop: yes, stack: 3/4 in, "               \
    "chase: 1/2 in, tip: 1/16 in, retained: 0.80}\n"
#define NO_STOP "clamp: {nut_factor: [0.20, 0.25], forming_torque: [0 in-lb], stop: no}\n"
#define TESTED                                                                                                         \
    "ratings: [{test: structural, positive: 60 psf, negative: 60 psf, report: L-9, deflection: {value: 0.3 in, at: "   \
    "60 psf}, tested: {module: 5 ft, span: 9 "                                                                         \
    "ft, lites: [{width: 5 ft, height: 9 ft, layers: [{glass: 12 mm, treatment: annealed}], support: 4, hold: "        \
    "plate}], transom: {span: 5 ft, above: 9 ft, below: 9 ft, deflection: {value: 0.05 in, at: 60 psf}}, fastening: "  \
    "{diameter: 1/4 in, spacing: 9 in, "                                                                               \
    "end_distance: 3 in}, includes: [anchors, corner]}}]\n"
#define BY_TEST "requirements: {structural: {evidence: [test]}}\n"

/* The screws of the vertical right of the third column. */
struct line {
    struct gw_spot spot;
    struct gw_as_read read;
};

static inline void hang(struct world *w, struct line *line, const char *project, const char *system)
{
    put_file(w, "x.yaml", system);
    must_judge(w, project);
    line->spot = (struct gw_spot){.wall = "s", .column = 3, .story = 1, .row = 1, .line = GW_NO_INTEGER};
    line->spot.edge = GW_EDGE_RIGHT;
    line->spot.grid = gw_takeoff_wall(&w->takeoff, "s");
    line->spot.lite = gw_takeoff_at(&w->takeoff, "s", 3, 1, 1);
    line->spot.screws = gw_takeoff_edge(&w->takeoff, "s", 3, 1, 1, GW_EDGE_RIGHT, true);
    assert_non_null(line->spot.screws);
    gw_as_read_clear(&line->read);
}

static inline struct gw_item_result judged(struct world *w, struct line *line, enum gw_item_id item, double value)
{
    struct gw_item_result r;
    line->read.of[item].number = value;
    gw_item_judge(&r, &w->ask, gw_item_of(item), &line->spot, &line->read, &w->model.systems.items[0]);
    return r;
}

static inline struct gw_item_result worded(struct world *w, struct line *line, enum gw_item_id item, int word)
{
    struct gw_item_result r;
    line->read.of[item].word = word;
    gw_item_judge(&r, &w->ask, gw_item_of(item), &line->spot, &line->read, &w->model.systems.items[0]);
    return r;
}

#define assert_verdict(r, verdict_)                                                                                    \
    do {                                                                                                               \
        const struct gw_item_result got_ = (r);                                                                        \
        if (got_.verdict != (verdict_))                                                                                \
            print_error("%s: %s\n", gw_item_verdict_name(got_.verdict), words(&got_.message));                         \
        assert_int_equal(got_.verdict, (verdict_));                                                                    \
    } while (0)
#define assert_says(message, part)                                                                                     \
    do {                                                                                                               \
        if (!strstr(words(&(message)), part)) print_error("'%s' lacks '%s'\n", words(&(message)), part);               \
        assert_non_null(strstr(words(&(message)), part));                                                              \
    } while (0)

/* N, of suction on a screw of that line at its spacing in the project: by the estimator's check. */
static inline double pull(const struct world *w, const struct line *line)
{
    return finding(w, "screw", line->spot.screws->id)->required;
}

#endif
