/* A good project of one small wall with its system, for the targets whose bytes are read beside it, and what such bytes
 * come to in each form that is printed. */
#ifndef GALEWARD_TESTS_FUZZ_WALL_H
#define GALEWARD_TESTS_FUZZ_WALL_H

#include "fuzz.h"

#include "galeward/plan.h"
#include "galeward/report.h"

static const char FUZZ_PROJECT[] =
    "galeward: 1\n"
    "units: us\n"
    "project: {name: Mill House}\n"
    "codes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C, hurricane_prone: false, seismic: {category: D, sds: 1.0, "
    "story_drift: 1 in}, impact: none, blast: none}\n"
    "buildings: [{name: hall, roof_height: 40 ft, least_width: 60 ft, enclosure: enclosed}]\n"
    "walls:\n"
    "  - {name: s, building: hall, width: 10 ft, floors: [0 ft, 12 ft], top: 24 ft, anchors: [0 ft, 12 ft, 24 ft],\n"
    "     ends: [none, none], columns: {count: 2, width: 5 ft}, rows: [{height: 4 ft, lite: a}, {height: rest, lite: "
    "b}]}\n"
    "lites:\n"
    "  a: {layers: [{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}]}\n"
    "  b: {layers: [{glass: 6 mm}, {cavity: 12 mm}, {glass: 6 mm}], component: vent}\n"
    "movement: {live_load: 3/4 in, shortening: 1/16 in, coldest: 0 degF, hottest: 160 degF, set_coldest: 40 degF, "
    "set_warmest: 80 degF}\n"
    "requirements: {water: 12 psf}\n"
    "candidates: [system.yaml]\n";

static const char FUZZ_SYSTEM[] =
    "galeward: 1\n"
    "units: us\n"
    "system: {name: X, kind: stick, glazing: captured}\n"
    "pocket: [1 in]\n"
    "ratings:\n"
    "  - {test: structural, positive: 40 psf, negative: 40 psf, report: S, tested: {module: 5 ft, span: 12 ft}}\n"
    "  - {test: air, leakage: 0.03 cfm/ft2, at: 6.24 psf, report: T}\n"
    "  - {test: water, pressure: 12 psf, report: T}\n"
    "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 7 in, flange: 0.25 in, web: 0.125 in}}\n"
    "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, eccentricity: 0 "
    "in}\n"
    "transom_connection: {capacity: 1200 lb, report: C}\n"
    "splice: {capacity: 3000 lb, report: C}\n"
    "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in, hole: 0.281 in}\n"
    "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "
    "tested_pullout: 1800 lb, report: C}\n"
    "anchor: {inward: 9000 lb, outward: 9000 lb, along: 2000 lb, dead: 9000 lb, report: C}\n"
    "frame_weight: 3 psf\n"
    "drift: {path: racking, side_gap: 3/8 in, end_gap: 3/8 in, bite: 5/8 in}\n"
    "stack_joint: {width: 3 in, least_gap: 1/4 in, engagement: 3 in, least_overlap: 1/2 in}\n"
    "clamp: {nut_factor: [0.20, 0.35], forming_torque: [10 in-lb, 30 in-lb], stop: true, stack: 3/4 in, chase: 1/2 in, "
    "tip: 1/16 in, retained: 0.80}\n"
    "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in, pocket_depth: 1/2 in, upstand: 3 1/2 in, "
    "leak_share: 0.1}\n"
    "gasket: {edge_load: [4 lb/in, 10 lb/in], stiffness_share: 0.5}\n"
    "options: [{name: deep, change: {mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 8 in, flange: 0.25 in, "
    "web: "
    "0.125 in}}}}]\n";

static void *fuzz_allocate(void *user, size_t bytes)
{
    (void)user;
    return malloc(bytes);
}

static void fuzz_release(void *user, void *memory)
{
    (void)user;
    free(memory);
}

/* The system alone is there. */
static struct gw_read fuzz_read(void *user, const char *path, gw_take *take, void *sink)
{
    (void)user;
    if (strcmp(path, "system.yaml") != 0) return (struct gw_read){GW_READ_NO_FILE, "there is no such file"};
    take(sink, FUZZ_SYSTEM, sizeof FUZZ_SYSTEM - 1);
    return (struct gw_read){GW_READ_WHOLE, NULL};
}

static const struct gw_host fuzz_host = {.allocate = fuzz_allocate, .release = fuzz_release, .read = fuzz_read};

struct fuzz_wall {
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_plans *plans;
    struct gw_ask ask;
    struct gw_answer answer;
    struct gw_results results;
};

static void fuzz_wall_open(struct fuzz_wall *w)
{
    gw_arena_init(&w->arena, &fuzz_host);
    gw_diags_init(&w->diags, &w->arena);
    const struct gw_source *source = gw_source_from(&w->arena, "project.yaml", FUZZ_PROJECT, sizeof FUZZ_PROJECT - 1);
    fuzz_require(gw_model_load_source(&w->model, &w->arena, &w->diags, source, NULL, 0) &&
                     gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags) &&
                     gw_plans_read(&w->plans, &w->model, &w->takeoff, &w->arena),
                 "the project is good");
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    w->ask.plans = w->plans;
    gw_answer_demand(&w->answer, &w->ask);
    gw_results_of(&w->results, &w->arena, &w->answer, GW_US);
}

/* In every form that it has, in both families of units by turns. */
static void fuzz_wall_print(struct fuzz_wall *w, const struct gw_result *result)
{
    static const char *const names[] = {"text", "json", "csv", "md", "html", "sarif"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        const struct gw_format *format = gw_format_named(names[i]);
        struct gw_engine engine = {.tables = gw_tables_standard()};
        struct gw_result shown = *result;
        struct gw_text text;
        gw_text_init(&text, &w->arena);
        fuzz_require(format, "a format by that name");
        if ((format->needs & GW_HAS_LOG) && !result->log) continue;
        shown.shown = i % 2 ? GW_SI : GW_US;
        fuzz_require(!format->render(&text, &shown, &engine, false) && text.length, "what was judged can be printed");
    }
}

static void fuzz_wall_close(struct fuzz_wall *w)
{
    fuzz_print(&w->diags);
    gw_arena_release(&w->arena);
}

#endif
