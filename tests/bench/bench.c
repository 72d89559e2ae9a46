/* What the bench script measures with:
 *   bench time RUNS INPUT PROGRAM ARGS...  median wall time of a program, standard input from INPUT
 *   bench tower                            load and take-off of 50,000 lites in this process
 *   bench plate                            direct plate solutions in this process, fastest of several
 *   bench table                            the response table: time a lite, errors against the equations
 *   bench cases N                          prints N wind cases, one JSON object a line
 *   bench plates N                         prints N plate cases
 *   bench lites N                          prints N lite cases: single, laminated, double, triple */
#include "cli/host.h"
#include "galeward/plate.h"
#include "galeward/takeoff.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + (double)t.tv_nsec / 1e9;
}

/* Only returns in the parent. */
static pid_t start(const char *input, char **argv)
{
    pid_t child = fork();
    if (child != 0) return child;
    int in = open(input, O_RDONLY), out = open("/dev/null", O_WRONLY);
    if (in < 0 || out < 0 || dup2(in, STDIN_FILENO) < 0 || dup2(out, STDOUT_FILENO) < 0) _exit(127);
    execv(argv[0], argv);
    _exit(127);
}

static int by_value(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Exit 1 of 'check' is an answer, not a fault. */
static int measure(int runs, const char *input, char **argv)
{
    double *times = calloc((size_t)runs, sizeof *times);
    int status = 0;
    for (int i = 0; times && i < runs; i++) {
        double begin = now();
        pid_t child = start(input, argv);
        if (child < 0 || waitpid(child, &status, 0) < 0) status = -1;
        times[i] = now() - begin;
    }
    bool good = times && WIFEXITED(status) && WEXITSTATUS(status) <= 1;
    if (good) qsort(times, (size_t)runs, sizeof *times, by_value);
    if (good) printf("%.6f\n", times[runs / 2]);
    free(times);
    return good ? 0 : 1;
}

enum { COLUMNS = 250, FLOORS = 100 }; /* two rows a floor */

static bool write_tower(const char *path)
{
    FILE *file = fopen(path, "w");
    if (!file) return false;
    fprintf(file,
            "galeward: 1\nunits: us\nproject: {name: Tower}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
            "site: {basic_wind_speed: 115, exposure: C}\n"
            "buildings: [{name: t, roof_height: %d, least_width: 200, enclosure: enclosed}]\n"
            "walls:\n  - name: east\n    width: %d\n    top: %d\n    ends: [corner, corner]\n"
            "    columns: {count: %d, width: 5}\n"
            "    rows: [{height: 3, lite: a}, {height: rest, lite: a}]\n    floors: [",
            FLOORS * 8, COLUMNS * 5, FLOORS * 8, COLUMNS);
    for (int i = 0; i < FLOORS; i++) fprintf(file, "%s%d", i ? ", " : "", i * 8);
    fprintf(file, "]\nlites: {a: {}}\n");
    return fclose(file) == 0;
}

static long lites_of(const struct gw_takeoff *takeoff)
{
    long n = 0;
    for (size_t i = 0; i < takeoff->elements.n; i++)
        if (takeoff->elements.items[i].kind == GW_LITE) n += takeoff->elements.items[i].count;
    return n;
}

static int take_off_tower(const char *path)
{
    static struct gw_model model;
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_takeoff takeoff;
    struct rusage usage;
    gw_arena_init(&arena, gw_system_host());
    gw_diags_init(&diags, &arena);
    double begin = now();
    bool good = gw_model_load(&model, &arena, &diags, path, NULL, 0);
    double loaded = now();
    good = good && gw_takeoff_run(&takeoff, &model, &arena, &diags);
    double end = now();
    if (good) {
        getrusage(RUSAGE_SELF, &usage);
        printf("take-off of %ld lites into %zu groups: load %.1f ms, take-off %.1f ms, peak memory %.1f MB\n",
               lites_of(&takeoff), takeoff.elements.n, (loaded - begin) * 1e3, (end - loaded) * 1e3,
               (double)usage.ru_maxrss / 1024);
    }
    gw_arena_release(&arena);
    return good ? 0 : 1;
}

static int tower(void)
{
    char path[] = "/tmp/galeward-bench-XXXXXX";
    int fd = mkstemp(path);
    if (fd < 0) return 1;
    close(fd);
    int result = write_tower(path) ? take_off_tower(path) : 1;
    unlink(path);
    return result;
}

static double time_plate(struct gw_plate_solution *out, const struct gw_plate_problem *in, void *workspace)
{
    double best = INFINITY;
    for (int i = 0; i < 21; i++) {
        double begin = now();
        if (!gw_plate_solve(out, in, workspace)) return INFINITY;
        best = fmin(best, now() - begin);
    }
    return best;
}

static int plate(void)
{
    const double loads[] = {10, 100, 1000, 10000};
    void *workspace = malloc(GW_PLATE_WORKSPACE);
    const bool good = workspace != NULL;
    for (size_t i = 0; good && i < sizeof loads / sizeof *loads; i++) {
        struct gw_plate_solution solution;
        const struct gw_plate_problem in = {1.5, loads[i], 0.22, 7, 0, false};
        double best = time_plate(&solution, &in, workspace);
        printf("plate, direct, q* %.0f: %.2f ms (%d x %d terms, %d steps)\n", loads[i], best * 1e3, solution.terms,
               solution.terms, solution.iterations);
    }
    free(workspace);
    return good ? 0 : 1;
}

/* Spread evenly over the range; another pair of irrational numbers than the certificate's. */
static void place(double *aspect, double *q_star, int i)
{
    *aspect = exp(fmod(i * sqrt(5), 1) * log(5));
    *q_star = 0.05 * exp(fmod(i * sqrt(7), 1) * log(2e5));
}

/* Fastest of many rounds over the same places. */
static void time_table(const char *what, unsigned want)
{
    enum { PLACES = 200, ROUNDS = 2000 };
    const struct gw_tables *tables = gw_tables_standard();
    double aspect[PLACES], q_star[PLACES], best = INFINITY, sum = 0;
    for (int i = 0; i < PLACES; i++) place(&aspect[i], &q_star[i], i);
    for (int round = 0; round < ROUNDS; round++) {
        struct gw_plate_solution out = {0};
        double begin = now();
        for (int i = 0; i < PLACES; i++) {
            gw_plate_response(&out, aspect[i], q_star[i], want, tables);
            sum += out.risk + out.mean_deflection;
        }
        best = fmin(best, (now() - begin) / PLACES);
    }
    if (sum >= 0) printf("plate, table, %s: %.2f us a lite\n", what, best * 1e6);
}

static int table_errors(void)
{
    enum { PLACES = 100 };
    void *workspace = malloc(GW_PLATE_WORKSPACE);
    bool good = workspace != NULL;
    double w = 0, stress[2] = {0, 0}, resistance = 0;
    for (int i = 1; good && i <= PLACES; i++) {
        struct gw_plate_problem in = {0, 0, 0.22, 7, GW_PLATE_TERMS_MOST, false};
        struct gw_plate_solution direct, table, nearby;
        place(&in.aspect, &in.q_star, i);
        good = gw_plate_solve(&direct, &in, workspace) &&
               gw_plate_response(&table, in.aspect, in.q_star, GW_PLATE_ALL, gw_tables_standard()) &&
               gw_plate_response(&nearby, in.aspect, in.q_star * 0.99, GW_PLATE_RISK, gw_tables_standard());
        if (!good) break;
        double *largest = &stress[in.q_star > 5000];
        w = fmax(w, fabs(table.deflection / direct.deflection - 1));
        *largest = fmax(*largest, fabs(table.stress_max / direct.stress_max - 1));
        resistance = fmax(resistance, fabs(log(table.risk / direct.risk) * log(0.99) / log(nearby.risk / table.risk)));
    }
    free(workspace);
    if (good)
        printf("plate, table against %d x %d terms at %d places, largest error: deflection %.4f %%, stress %.4f %% "
               "(q* above 5000: %.3f %%), load resistance %.4f %%\n",
               GW_PLATE_TERMS_MOST, GW_PLATE_TERMS_MOST, PLACES, w * 100, stress[0] * 100, stress[1] * 100,
               resistance * 100);
    return good ? 0 : 1;
}

static int table(void)
{
    time_table("deflection, mean, risk, largest stress",
               GW_PLATE_DEFLECTION | GW_PLATE_MEAN | GW_PLATE_RISK | GW_PLATE_STRESS);
    time_table("risk alone", GW_PLATE_RISK);
    time_table("mean deflection alone", GW_PLATE_MEAN);
    time_table("everything", GW_PLATE_ALL);
    return table_errors();
}

static int plates(int n)
{
    for (int i = 0; i < n; i++)
        printf("{\"id\": %d, \"width\": \"%d mm\", \"height\": \"%d mm\", \"thickness\": \"5.56 mm\", "
               "\"pressure\": \"%d Pa\"}\n",
               i, 800 + i % 700, 1500 + i % 1300, 500 + i % 3000);
    return 0;
}

static int lites(int n)
{
    static const char *const layers[] = {
        "{\"glass\": \"6 mm\", \"treatment\": \"annealed\"}",
        "{\"glass\": \"5 mm\", \"treatment\": \"heat_strengthened\"}, {\"interlayer\": \"pvb\", \"thickness\": \"1.52 "
        "mm\"}, "
        "{\"glass\": \"5 mm\", \"treatment\": \"heat_strengthened\"}",
        "{\"glass\": \"6 mm\", \"treatment\": \"tempered\"}, {\"cavity\": \"12 mm\"}, {\"glass\": \"6 mm\", "
        "\"treatment\": "
        "\"annealed\"}",
        "{\"glass\": \"6 mm\", \"treatment\": \"tempered\"}, {\"cavity\": \"12 mm\"}, {\"glass\": \"4 mm\", "
        "\"treatment\": "
        "\"tempered\"}, {\"cavity\": \"12 mm\"}, {\"glass\": \"6 mm\", \"treatment\": \"tempered\"}"};
    for (int i = 0; i < n; i++)
        printf("{\"id\": %d, \"width\": \"%d mm\", \"height\": \"%d mm\", \"layers\": [%s], \"pressure\": \"%d Pa\"}\n",
               i, 800 + i % 700, 1500 + i % 1300, layers[i % 4], 500 + i % 2500);
    return 0;
}

/* Every line differs; all editions, exposures and zones. */
static int cases(int n)
{
    for (int i = 0; i < n; i++)
        printf("{\"id\": %d, \"edition\": \"asce7-%s\", \"basic_wind_speed\": \"%d mph\", \"exposure\": \"%c\", "
               "\"mean_roof_height\": \"%d ft\", \"height\": \"%d ft\", \"least_width\": \"90 ft\", "
               "\"enclosure\": \"enclosed\", \"effective_area\": \"%d.%d ft2\", \"zone\": %d, \"roof_slope\": \"0 "
               "deg\"}\n",
               i,
               i % 3 == 0   ? "10"
               : i % 3 == 1 ? "16"
                            : "22",
               95 + i % 80, "BCD"[i / 3 % 3], 120 + i % 300, 15 + i % 100, 10 + i % 490, i % 10, 4 + i % 2);
    return 0;
}

int main(int argc, char **argv)
{
    if (argc > 4 && strcmp(argv[1], "time") == 0) return measure(atoi(argv[2]), argv[3], argv + 4);
    if (argc > 1 && strcmp(argv[1], "tower") == 0) return tower();
    if (argc > 1 && strcmp(argv[1], "plate") == 0) return plate();
    if (argc > 1 && strcmp(argv[1], "table") == 0) return table();
    if (argc > 2 && strcmp(argv[1], "plates") == 0) return plates(atoi(argv[2]));
    if (argc > 2 && strcmp(argv[1], "lites") == 0) return lites(atoi(argv[2]));
    if (argc > 2 && strcmp(argv[1], "cases") == 0) return cases(atoi(argv[2]));
    fprintf(stderr, "usage: bench time RUNS INPUT PROGRAM ARGS... | bench tower | bench plate | bench table | "
                    "bench cases N | bench plates N | bench lites N\n");
    return 2;
}
