/* What every unit test leans on: near comparison, nodes and projects from text, the reference cases. */
#ifndef GALEWARD_TESTS_SUPPORT_H
#define GALEWARD_TESTS_SUPPORT_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "cli/host.h"
#include "galeward/answers.h"
#include "galeward/calc.h"

#include <glob.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static const double FT = 0.3048, FT2 = 0.3048 * 0.3048, PSF = 47.88025898033584, MPH = 0.44704;

/* Written so that NaN fails. */
static inline void near_at(double got, double want, double tolerance, const char *what, const char *file, int line)
{
    if (fabs(got - want) <= tolerance) return;
    print_error("%s: got %.17g, want %.17g +- %g\n", what, got, want, tolerance);
    _fail(file, line);
}
#define assert_near(got, want, tolerance) near_at(got, want, tolerance, #got, __FILE__, __LINE__)

/* Random draws: a generator of our own, so that every run draws the same cases. */
static inline uint64_t *draw_state(void)
{
    static uint64_t state;
    return &state;
}

static inline void draw_from(uint64_t seed) { *draw_state() = seed; }

static inline uint64_t draw_bits(void)
{
    uint64_t *state = draw_state();
    return *state = *state * 6364136223846793005u + 1442695040888963407u;
}

static inline double draw(double low, double high)
{
    return low + (high - low) * ((double)(draw_bits() >> 11) / 9007199254740992.0);
}

static inline int pick(int n) { return (int)draw(0, n); }

enum { WORLD_FILES = 8, WORLD_PATH = 512 };

/* One project with everything made from it, and a directory of its own for its files. */
/* A message in US units; good until the fourth call after it. */
static inline const char *words(const struct gw_message *message)
{
    static char room[4][4096];
    static unsigned next;
    char *out = room[next++ % 4];
    struct gw_arena arena;
    gw_arena_init(&arena, NULL);
    snprintf(out, sizeof room[0], "%s", gw_message_text(&arena, message, GW_US));
    gw_arena_release(&arena);
    return out;
}

/* What a fault says, the same way. */
static inline const char *told(const struct gw_fault *fault)
{
    const struct gw_message message = gw_fault_said(fault);
    return words(&message);
}

struct world {
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
    char directory[WORLD_PATH];
    char files[WORLD_FILES][WORLD_PATH];
    size_t n_files;
};

static inline void world_open(struct world *w)
{
    const char *base = getenv("TMPDIR");
    memset(w, 0, sizeof *w);
    gw_arena_init(&w->arena, gw_system_host());
    gw_diags_init(&w->diags, &w->arena);
    snprintf(w->directory, sizeof w->directory, "%s/galeward-XXXXXX", base ? base : "/tmp");
    assert_non_null(mkdtemp(w->directory));
}

static inline void world_close(struct world *w)
{
    for (size_t i = 0; i < w->n_files; i++) unlink(w->files[i]);
    rmdir(w->directory);
    gw_arena_release(&w->arena);
}

static inline int world_setup(void **state)
{
    *state = calloc(1, sizeof(struct world));
    if (!*state) return -1;
    world_open(*state);
    return 0;
}

static inline int world_teardown(void **state)
{
    world_close(*state);
    free(*state);
    return 0;
}
#define WORLD_TEST(function) cmocka_unit_test_setup_teardown(function, world_setup, world_teardown)

/* Writes a file into the world's directory; returns its path. */
static inline const char *put_file(struct world *w, const char *name, const char *text)
{
    assert_true(w->n_files < WORLD_FILES);
    char *path = w->files[w->n_files++];
    int length = snprintf(path, WORLD_PATH, "%s", w->directory);
    snprintf(path + length, WORLD_PATH - (size_t)length, "/%s", name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
    return path;
}

static inline void print_diags(const struct gw_diags *diags)
{
    struct gw_text text;
    gw_text_init(&text, diags->arena);
    for (size_t i = 0; i < diags->n; i++) gw_diag_print(&text, &diags->items[i]);
    print_error("%s", text.at);
}

/* Loads a project text; its schedule and systems must have been put first. */
static inline bool load_text(struct world *w, const char *yaml)
{
    return gw_model_load(&w->model, &w->arena, &w->diags, put_file(w, "project.yaml", yaml), NULL, 0);
}

static inline void must_load(struct world *w, const char *yaml)
{
    bool good = load_text(w, yaml);
    if (!good) print_diags(&w->diags);
    assert_true(good);
}

static inline void must_take_off(struct world *w, const char *yaml)
{
    must_load(w, yaml);
    bool good = gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags);
    if (!good) print_diags(&w->diags);
    assert_true(good);
}

static inline void must_judge(struct world *w, const char *yaml)
{
    must_take_off(w, yaml);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_check(&w->answer, &w->ask);
}

/* Of a check at an element or place, or of a rating by its name. */
static inline const struct gw_finding *finding(const struct world *w, const char *check, const char *where)
{
    for (size_t i = 0; i < w->answer.judgement.findings.n; i++) {
        const struct gw_finding *f = &w->answer.judgement.findings.items[i];
        bool named = f->demand->name && strcmp(f->demand->name, where) == 0;
        if (strcmp(f->demand->check->id, check) == 0 && (named || strcmp(f->demand->where, where) == 0)) return f;
    }
    print_error("no finding %s at %s\n", check, where);
    fail();
    return NULL;
}

static inline struct gw_node *node_of(struct world *w, const char *yaml)
{
    return gw_yaml_read(&w->arena, gw_source_from(&w->arena, "test", yaml, strlen(yaml)), &w->diags);
}

/* A wind case with every input absent. */
static inline struct gw_wind_case empty_case(void)
{
    struct gw_wind_case in;
    gw_record_clear(&gw_wind_case_record, &in);
    return in;
}

static inline struct gw_wind_result wind_of(const struct gw_wind_case *in)
{
    struct gw_engine engine;
    struct gw_wind_result out;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    enum gw_status status = gw_wind_pressure(&out, in, &engine);
    if (status != GW_OK) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

/* The files of reference cases in name order. */
static inline void reference_files(const char *directory, glob_t *found)
{
    char pattern[WORLD_PATH];
    snprintf(pattern, sizeof pattern, "%s/*.yaml", directory);
    memset(found, 0, sizeof *found);
    if (glob(pattern, 0, NULL, found) != 0) print_error("no reference cases in %s\n", directory);
}

static inline struct gw_node *read_file(struct gw_arena *arena, const char *path)
{
    struct gw_diags diags;
    gw_diags_init(&diags, arena);
    const struct gw_source *source = gw_source_read(arena, path, &diags);
    struct gw_node *root = source ? gw_yaml_read(arena, source, &diags) : NULL;
    if (!root) print_diags(&diags);
    return root;
}

static inline const char *text_at(const struct gw_node *mapping, const char *key)
{
    const struct gw_node *node = gw_node_get(mapping, key);
    return node && node->kind == GW_SCALAR ? node->text : "";
}

#endif
