/* A project as hard as they come, made at run time: eleven walls of so many stories, columns of two widths, corners at
 * both ends, a parapet, pressures of the drawings that differ from the computed ones, a candidate with all its framing
 * and no test that reaches.
 *   walls DIRECTORY STORIES...   take-off and judging of each size in this process: time, time a group, memory
 *   walls DIRECTORY select WALLSxSTORIES...  the least-cost plan of each of 12 candidates with 20 options; judging them
 *                                as they are beside it
 *   walls DIRECTORY              writes the project of 40 stories and its system there, to be read by the program */
#include "cli/host.h"
#include "galeward/answers.h"
#include "galeward/select.h"

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

/* Of this process: choosing takes seconds, in which other ones may run. */
static double processor(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
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

static bool write_project(const char *path, int walls, int stories, const char *lites, const char *more)
{
    FILE *file = fopen(path, "w");
    if (!file) return false;
    fprintf(file,
            "galeward: 1\nunits: us\nproject: {name: Eleven walls}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
            "buildings: [{name: t, roof_height: %d, least_width: 200, enclosure: enclosed, parapet_height: 3}]\n%s%s"
            "given:\n"
            "  - {zone: 4, area: 10, inward: 71, outward: 75, level: strength, source: S-1}\n"
            "  - {zone: 5, area: 10, inward: 71, outward: 126, level: strength, source: S-1}\n"
            "candidates: [",
            stories * STORY, lites, more);
    for (int i = 0; i < SYSTEMS; i++) fprintf(file, "%ssystem-%d.yaml", i ? ", " : "", i);
    fprintf(file, "]\nwalls:\n");
    for (int i = 0; i < walls; i++) write_wall(file, i, stories);
    return fclose(file) == 0;
}

static const char LITES[] =
    "lites:\n"
    "  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}, {cavity: 12 mm}, {glass: 6 mm, treatment: "
    "annealed}]}\n"
    "  spandrel: {layers: [{glass: 6 mm, treatment: heat_strengthened}], component: spandrel}\n";
static const char SITE[] = "site: {basic_wind_speed: 115, exposure: C}\n";

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

/* Choosing --------------------------------------------------------------------------------------------------------- */

static const char CHOSEN_LITES[] =
    "lites:\n"
    "  vision:\n    layers: [{glass: 6 mm, treatment: heat_strengthened}, {cavity: 12 mm}, {glass: 6 mm, treatment: "
    "heat_strengthened}]\n    cost: 14 per ft2\n    alternatives:\n"
    "      - {name: thicker, layers: [{glass: 8 mm, treatment: heat_strengthened}, {cavity: 12 mm}, {glass: 6 mm, "
    "treatment: heat_strengthened}], cost: 16 per ft2}\n"
    "      - {name: tempered, layers: [{glass: 8 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 8 mm, treatment: "
    "tempered}], cost: 19 per ft2}\n"
    "  spandrel: {layers: [{glass: 8 mm, treatment: tempered}], component: spandrel, cost: 12 per ft2}\n";
static const char CHOSEN_SITE[] =
    "site: {basic_wind_speed: 115, exposure: C, seismic: {category: A}, hurricane_prone: false, blast: none}\n"
    "requirements: {water: 8 psf, air: {leakage: 0.06 cfm/ft2, at: 6.24 psf}}\nmovement: {live_load: 0 in}\n";

/* Five of each sort, one better than the other. */
static void write_options(FILE *file, int system)
{
    fprintf(file, "options:\n");
    for (int i = 1; i <= 5; i++) {
        fprintf(file,
                "  - {name: insert %d, change: {frame_weight: 4 psf, mullion: {insert: {metal: steel, inertia_x: %d "
                "in4, section_modulus_x: "
                "%d in3, yield: 36 ksi}}}, of: mullion, cost: %d.%d per ft, group: stiffening%s}\n",
                i, 2 * i, i, 3 + 3 * i, system % 10, i == 5 ? ", once: 4000" : "");
        fprintf(file,
                "  - {name: screws %d, change: {screw: {spacing: %d in}}, of: wall, cost: 0.%d per ft2, group: "
                "screws%s}\n",
                i, 10 - i, 4 * i % 10, i == 4 ? ", choose: wall" : "");
        fprintf(file,
                "  - {name: anchor %d, change: {anchor: {inward: %d lb, outward: %d lb}, corner_anchor: {inward: %d "
                "lb, outward: %d lb}}, of: anchor, cost: %d each, group: anchors%s}\n",
                i, 4000 + 1000 * i, 4000 + 1000 * i, 4000 + 1000 * i, 4000 + 1000 * i, 20 * i,
                i == 2 ? ", choose: project" : "");
        fprintf(file,
                "  - {name: clip %d, change: {transom_connection: {capacity: %d lb}}, of: transom, cost: %d.5 per ft, "
                "group: clips}\n",
                i, 500 + 250 * i, i);
    }
}

static bool write_chooser(const char *path, int i)
{
    FILE *file = fopen(path, "w");
    if (!file) return false;
    fprintf(
        file,
        "galeward: 1\nunits: us\nsystem: {name: Bench %d, kind: stick, glazing: captured}\npocket: [1/4 in, 8 mm, 6 "
        "mm, "
        "24 mm, 26 mm, 28 mm]\n"
        "cost: %d per ft2\nframe_weight: 3 psf\n"
        "ratings:\n  - {test: water, pressure: 15 psf, report: L-2, after_structural: yes, tested: {includes: [corner, "
        "splice]}}\n"
        "  - {test: air, leakage: 0.05 cfm/ft2, at: 6.24 psf, report: L-3, after_structural: yes, tested: {includes: "
        "[corner, splice]}}\n"
        "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: %d.5 in, flange: 0.25 in, web: 0.156 in}}\n"
        "corner_mullion: {alloy: 6061-T6, tube: {width: 7 in, depth: 12 in, flange: 0.5 in, web: 0.5 in}}\n"
        "transom: {alloy: 6063-T6, tube: {width: 5 in, depth: 6 in, flange: 0.5 in, web: 0.5 in}, eccentricity: 0 in}\n"
        "pressure_plate: {alloy: 6061-T6, width: 2.25 in, thickness: 0.5 in}\n"
        "past_anchor: {moment: 9000 ft-lb, reaction: 9000 lb, report: L-6}\n"
        "screw: {diameter: 0.25 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 0.5 in, "
        "spacing: 12 in, tested_pullout: 900 lb, report: B-2}\n"
        "transom_connection: {capacity: 400 lb, report: B-3}\nsplice: {capacity: 9000 lb, report: B-4}\n"
        "anchor: {inward: 3000 lb, outward: 3000 lb, along: 3000 lb, dead: 6000 lb, report: B-5}\n"
        "corner_anchor: {inward: 3000 lb, outward: 3000 lb, along: 9000 lb, dead: 9000 lb, report: B-6}\n"
        "stack_joint: {width: 1.5 in, least_gap: 0.1 in, engagement: 3 in, least_overlap: 0.5 in}\n",
        i, 60 + i, 6 + i % 4);
    write_options(file, i);
    return fclose(file) == 0;
}

static void say_chosen(const struct gw_bids *bids, double judged, double chosen)
{
    struct rusage usage;
    long examined = 0, verdicts[4] = {0};
    for (size_t i = 0; i < bids->items.n; i++) {
        examined += bids->items.items[i].examined;
        verdicts[bids->items.items[i].verdict]++;
    }
    getrusage(RUSAGE_SELF, &usage);
    printf("select: 12 candidates, 20 options each, %zu places, %ld lites in %zu groups: %.1f ms, %.2f times judging "
           "them (%.1f ms); %ld examined; %ld pass, %ld not shown, %ld fail; peak memory %.1f MB\n",
           bids->places.n, lites_of(bids->takeoff), bids->takeoff->elements.n, chosen * 1e3, chosen / judged,
           judged * 1e3, examined, verdicts[GW_PASS], verdicts[GW_NOT_SHOWN], verdicts[GW_FAIL],
           (double)usage.ru_maxrss / 1024);
}

static bool choose(const char *path)
{
    static struct gw_model model;
    struct gw_arena arena, own, scratch;
    const struct gw_select_limits limits = {.scratch = &scratch};
    struct gw_diags diags;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_judgement judgement;
    struct gw_bids bids;
    gw_arena_init(&arena, gw_system_host());
    gw_arena_init(&own, gw_system_host());
    gw_arena_init(&scratch, gw_system_host());
    gw_diags_init(&diags, &arena);
    const bool good =
        gw_model_load(&model, &arena, &diags, path, NULL, 0) && gw_takeoff_run(&takeoff, &model, &arena, &diags);
    if (good) {
        gw_ask_init(&ask, &model, &takeoff, &own);
        const double begin = processor();
        gw_judge(&judgement, &ask);
        const double judged = processor();
        gw_arena_release(&own);
        gw_arena_init(&own, gw_system_host());
        gw_ask_init(&ask, &model, &takeoff, &own);
        const double again = processor();
        gw_select(&bids, &ask, &limits);
        say_chosen(&bids, judged - begin, processor() - again);
    }
    for (size_t i = 0; i < diags.n && !good; i++) fprintf(stderr, "%s\n", diags.items[i].message);
    gw_arena_release(&scratch);
    gw_arena_release(&own);
    gw_arena_release(&arena);
    return good;
}

enum { PATH_LENGTH = 1024, USUAL = 40 };

static bool write_systems(const char *directory, bool (*write)(const char *path, int i))
{
    bool good = true;
    for (int i = 0; i < SYSTEMS && good; i++) {
        char path[PATH_LENGTH];
        snprintf(path, sizeof path, "%s/system-%d.yaml", directory, i);
        good = write(path, i);
    }
    return good;
}

/* "11x40": walls and stories. */
static bool choose_size(const char *directory, const char *project, const char *size)
{
    char *end;
    const long walls = strtol(size, &end, 10), stories = *end == 'x' ? strtol(end + 1, NULL, 10) : 0;
    return walls > 0 && stories > 0 && write_systems(directory, write_chooser) &&
           write_project(project, (int)walls, (int)stories, CHOSEN_LITES, CHOSEN_SITE) && choose(project);
}

int main(int argc, char **argv)
{
    char project[PATH_LENGTH];
    if (argc < 2) return 2;
    const bool chooses = argc > 2 && strcmp(argv[2], "select") == 0;
    snprintf(project, sizeof project, "%s/walls.yaml", argv[1]);
    bool good = chooses || (write_systems(argv[1], write_system) &&
                            (argc > 2 || write_project(project, WALLS, USUAL, LITES, SITE)));
    for (int i = 3; good && chooses && i < argc; i++) good = choose_size(argv[1], project, argv[i]);
    for (int i = 2; good && !chooses && i < argc; i++) {
        const int stories = atoi(argv[i]);
        good = stories > 0 && write_project(project, WALLS, stories, LITES, SITE) && measure(project);
    }
    return good ? 0 : 1;
}
