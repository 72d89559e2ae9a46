/* A project as hard as they come, made at run time: eleven walls of so many stories, columns of two widths, corners at
 * both ends, a parapet, pressures of the drawings that differ from the computed ones, a candidate with all its framing
 * and no test that reaches.
 *   walls DIRECTORY STORIES...   take-off and judging of each size in this process: time, time a group, memory
 *   walls DIRECTORY              writes the project of 40 stories and its system there, to be read by the program */
#include "cli/host.h"
#include "galeward/answers.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <time.h>

enum { WALLS = 11, COLUMNS = 57, STORY = 12, SYSTEMS = 12 }; /* two rows a story; ft */

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

static void write_wall(FILE *file, int wall, int stories)
{
    const double wide = 5, narrow = 4.5;
    double width = 0;
    for (int i = 0; i < COLUMNS; i++) width += i % 3 ? wide : narrow;
    fprintf(file, "  - name: w%d\n    width: %d.%d\n    top: %d\n    ends: [corner, corner]\n    columns: [", wall + 1,
            (int)width, (int)(width * 10) % 10, stories * STORY + 3);
    for (int i = 0; i < COLUMNS; i++) fprintf(file, "%s%s", i ? ", " : "", i % 3 ? "5" : "4.5");
    fprintf(file, "]\n    rows: [{height: 3, lite: spandrel}, {height: rest, lite: vision}]\n    floors: [");
    for (int i = 0; i < stories; i++) fprintf(file, "%s%d", i ? ", " : "", i * STORY);
    fprintf(file, "]\n");
}

static bool write_project(const char *path, int stories)
{
    FILE *file = fopen(path, "w");
    if (!file) return false;
    fprintf(
        file,
        "galeward: 1\nunits: us\nproject: {name: Eleven walls}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "site: {basic_wind_speed: 115, exposure: C}\n"
        "buildings: [{name: t, roof_height: %d, least_width: 200, enclosure: enclosed, parapet_height: 3}]\n"
        "lites:\n"
        "  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}, {cavity: 12 mm}, {glass: 6 mm, treatment: "
        "annealed}]}\n"
        "  spandrel: {layers: [{glass: 6 mm, treatment: heat_strengthened}], component: spandrel}\n"
        "given:\n"
        "  - {zone: 4, area: 10, inward: 71, outward: 75, level: strength, source: S-1}\n"
        "  - {zone: 5, area: 10, inward: 71, outward: 126, level: strength, source: S-1}\n"
        "candidates: [",
        stories * STORY);
    for (int i = 0; i < SYSTEMS; i++) fprintf(file, "%ssystem-%d.yaml", i ? ", " : "", i);
    fprintf(file, "]\nwalls:\n");
    for (int i = 0; i < WALLS; i++) write_wall(file, i, stories);
    return fclose(file) == 0;
}

/* Each a little deeper than the one before. */
static bool write_system(const char *path, int i)
{
    FILE *file = fopen(path, "w");
    if (!file) return false;
    fprintf(
        file,
        "galeward: 1\nunits: us\nsystem: {name: Bench %d, kind: stick, glazing: captured}\npocket: [1 in, 1/4 in]\n"
        "ratings: [{test: structural, positive: 60 psf, negative: 75 psf, report: B-1, tested: {module: 2 ft, span: 4 "
        "ft, spans: 1, lite_width: 2 ft, lite_height: 2 ft}}]\n"
        "frame_weight: 3 psf\n"
        "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: %d.5 in, flange: 0.25 in, web: 0.156 in}}\n"
        "corner_mullion: {alloy: 6061-T6, tube: {width: 5 in, depth: 8.5 in, flange: 0.25 in, web: 0.25 in}}\n"
        "transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5.5 in, flange: 0.125 in, web: 0.125 in}, "
        "eccentricity: 1 in}\n"
        "pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.3125 in, hole: 0.281 in}\n"
        "screw: {diameter: 0.25 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 0.5 in, "
        "tested_pullout: 2100 lb, report: B-2}\n"
        "transom_connection: {capacity: 900 lb, report: B-3}\nsplice: {capacity: 2600 lb, report: B-4}\n"
        "anchor: {inward: 4200 lb, outward: 6200 lb, along: 1400 lb, dead: 2400 lb, report: B-5}\n"
        "corner_anchor: {inward: 3200 lb, outward: 4400 lb, along: 1400 lb, dead: 2400 lb, report: B-6}\n",
        i, 6 + i % 4);
    return fclose(file) == 0;
}

static long lites_of(const struct gw_takeoff *takeoff)
{
    long n = 0;
    for (size_t i = 0; i < takeoff->elements.n; i++)
        if (takeoff->elements.items[i].kind == GW_LITE) n += takeoff->elements.items[i].count;
    return n;
}

static void say(const struct gw_takeoff *t, const struct gw_arena *arena, double taken, double judged)
{
    const double groups = (double)t->elements.n, million = 1e6;
    printf("eleven walls, %ld lites in %zu groups: take-off %.1f ms (%.2f us a group, %.1f MB), judge of 12 systems "
           "%.1f ms (%.2f "
           "us a group)\n",
           lites_of(t), t->elements.n, taken * 1e3, taken / groups * million, (double)arena->reserved / million,
           judged * 1e3, judged / groups * million);
}

static bool measure(const char *path)
{
    static struct gw_model model;
    struct gw_arena arena, own;
    struct gw_diags diags;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
    gw_arena_init(&arena, gw_system_host());
    gw_arena_init(&own, gw_system_host());
    gw_diags_init(&diags, &arena);
    bool good = gw_model_load(&model, &arena, &diags, path, NULL, 0);
    double begin = now();
    good = good && gw_takeoff_run(&takeoff, &model, &own, &diags);
    double taken = now();
    gw_ask_init(&ask, &model, &takeoff, &arena);
    if (good) gw_judge(&answer.judgement, &ask);
    double judged = now();
    if (good) say(&takeoff, &own, taken - begin, judged - taken);
    for (size_t i = 0; i < diags.n; i++) fprintf(stderr, "%s\n", diags.items[i].message);
    gw_arena_release(&own);
    gw_arena_release(&arena);
    return good;
}

enum { PATH_LENGTH = 1024, USUAL = 40 };

static bool write_systems(const char *directory)
{
    bool good = true;
    for (int i = 0; i < SYSTEMS && good; i++) {
        char path[PATH_LENGTH];
        snprintf(path, sizeof path, "%s/system-%d.yaml", directory, i);
        good = write_system(path, i);
    }
    return good;
}

int main(int argc, char **argv)
{
    char project[PATH_LENGTH];
    if (argc < 2) return 2;
    snprintf(project, sizeof project, "%s/walls.yaml", argv[1]);
    bool good = write_systems(argv[1]) && (argc > 2 || write_project(project, USUAL));
    for (int i = 2; good && i < argc; i++) {
        const int stories = atoi(argv[i]);
        good = stories > 0 && write_project(project, stories) && measure(project);
    }
    return good ? 0 : 1;
}
