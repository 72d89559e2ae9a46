/* The library in a host that fails: a whole run in which the n-th request for memory, or a read, is refused comes back
 * with a word about it and leaves nothing behind. */
#include "support.h"

#include "galeward/report.h"

static const char PROJECT[] =
    "galeward: 1\nunits: us\nproject: {name: Quay}\ncodes: {building: ibc-2021}\n"
    "site: {basic_wind_speed: 115 mph, exposure: B}\n"
    "buildings: [{name: main, roof_height: 40 ft, least_width: 60 ft, enclosure: enclosed}]\n"
    "walls:\n"
    "  - {name: south, building: main, width: 40 ft, floors: [0 ft, 14 ft, 27 ft], top: 40 ft, ends: [corner, "
    "corner],\n"
    "     columns: {count: 8, width: 5 ft}, rows: [{height: 3 ft, lite: low}, {height: rest, lite: vision}]}\n"
    "lites: {vision: {layers: [{glass: 6 mm}, {cavity: 12 mm}, {glass: 6 mm}]}, low: {layers: [{glass: 6 mm}]}}\n"
    "assume: [{table: wind_minimum, row: cladding, column: pressure, value: 17 psf, reason: a test, by: me}]\n"
    "openings: {file: list.csv}\n"
    "candidates: [tern.yaml]\n";
static const char SCHEDULE[] = "mark,width,height,building,lite\nA,5 ft,6 ft,main,vision\nB,\"4 ft\",5 ft,main,low\n";
static const char SYSTEM[] = "galeward: 1\nunits: us\nsystem: {name: Tern 60, kind: stick, glazing: captured}\n"
                             "ratings: [{test: structural, positive: 40 psf, negative: 40 psf, report: R-1}]\n";

/* Files from a table; memory that is counted, and refused from a request on. */
struct mock {
    struct gw_host host;
    size_t asked, fails_at; /* 0: never */
    long held;
    size_t reads, read_fails_at;
    enum gw_read_status read_failure;
};

static void *mock_allocate(void *user, size_t bytes)
{
    struct mock *m = user;
    if (++m->asked >= m->fails_at && m->fails_at) return NULL;
    m->held++;
    return malloc(bytes);
}

static void mock_release(void *user, void *memory)
{
    ((struct mock *)user)->held--;
    free(memory);
}

/* In pieces of 100 bytes. */
static struct gw_read mock_read(void *user, const char *path, gw_take *take, void *sink)
{
    static const struct {
        const char *path, *text;
    } files[] = {{"place/project.yaml", PROJECT}, {"place/list.csv", SCHEDULE}, {"place/tern.yaml", SYSTEM}};
    struct mock *m = user;
    bool fails = ++m->reads == m->read_fails_at;
    for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
        if (strcmp(path, files[i].path) != 0) continue;
        for (size_t at = 0, length = strlen(files[i].text); at < length; at += 100) {
            if (fails) return (struct gw_read){m->read_failure, "the disk is on fire"};
            if (!take(sink, files[i].text + at, length - at < 100 ? length - at : 100)) break;
        }
        return (struct gw_read){GW_READ_WHOLE, NULL};
    }
    return (struct gw_read){GW_READ_NO_FILE, "not in the table"};
}

struct job {
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
    struct gw_text json, page;
    bool loaded;
};

static void whole_run(void *argument)
{
    struct job *j = argument;
    struct gw_results results;
    j->loaded = gw_model_load(&j->model, &j->arena, &j->diags, "place/project.yaml", NULL, 0) &&
                gw_takeoff_run(&j->takeoff, &j->model, &j->arena, &j->diags);
    if (!j->loaded) return;
    gw_ask_init(&j->ask, &j->model, &j->takeoff, &j->arena);
    gw_answer_check(&j->answer, &j->ask);
    gw_results_of(&results, &j->arena, &j->answer, GW_US);
    const struct gw_result result = gw_result_check(&results);
    gw_text_init(&j->json, &j->arena);
    gw_format_named("json")->render(&j->json, &result, NULL, false);
    gw_text_init(&j->page, &j->arena);
    gw_format_named("text")->render(&j->page, &result, NULL, false);
}

static bool run(struct job *j, struct mock *m)
{
    *j = (struct job){.loaded = false};
    m->host = (struct gw_host){m, mock_allocate, mock_release, mock_read, m->host.step};
    m->asked = m->reads = 0;
    gw_arena_init(&j->arena, &m->host);
    gw_diags_init(&j->diags, &j->arena);
    return gw_guard(&j->arena, whole_run, j);
}

static void the_run_is_whole(void **state)
{
    struct job j;
    struct mock m = {.held = 0};
    (void)state;
    assert_true(run(&j, &m));
    if (!j.loaded) print_diags(&j.diags);
    assert_true(j.loaded);
    assert_int_equal(m.reads, 3);
    assert_int_equal(j.answer.judgement.summaries.n, 1);
    assert_non_null(strstr(j.page.at, "Tern 60"));
    assert_non_null(strstr(j.json.at, "\"verdict\""));
    assert_true(m.held > 0);
    gw_arena_release(&j.arena);
    assert_int_equal(m.held, 0);
}

/* With an arena that asks for little at a time there are thousands of requests, each of them in another place. */
static void fail_everywhere(size_t step, size_t most)
{
    struct job j;
    struct mock m = {.host.step = step};
    assert_true(run(&j, &m));
    gw_arena_release(&j.arena);
    const size_t all = m.asked;
    assert_true(all > most / 2);
    for (size_t n = 1; n <= all; n = n < 64 ? n + 1 : n + n / 8) {
        m.fails_at = n;
        assert_false(run(&j, &m));
        assert_int_equal(m.asked, n);
        gw_arena_release(&j.arena);
        assert_int_equal(m.held, 0);
    }
    m.fails_at = all + 1;
    assert_true(run(&j, &m));
    gw_arena_release(&j.arena);
}

static void memory_runs_out(void **state)
{
    (void)state;
    fail_everywhere(0, 4);
    fail_everywhere(256, 400);
}

static void a_file_cannot_be_read(void **state)
{
    (void)state;
    for (size_t n = 1; n <= 3; n++)
        for (int refused = 0; refused < 2; refused++) {
            struct job j;
            struct mock m = {.read_fails_at = n, .read_failure = refused ? GW_READ_REFUSED : GW_READ_NO_FILE};
            assert_true(run(&j, &m));
            assert_false(j.loaded);
            assert_int_equal(j.diags.refused, refused);
            assert_true(j.diags.errors > 0);
            assert_string_equal(j.diags.items[0].code, "unreadable");
            assert_non_null(strstr(j.diags.items[0].message, "the disk is on fire"));
            gw_arena_release(&j.arena);
            assert_int_equal(m.held, 0);
        }
}

/* The readers' own memory: what they hold when ours runs out is given back (seen by the address sanitizer). */
static void read_yaml(void *argument)
{
    struct job *j = argument;
    const char text[] = "a: {b: [1, 2, {c: &x deep}]}\nd: *x\n? e\n: [\"f\", g]\n";
    const struct gw_source *source = gw_source_from(&j->arena, "t", text, sizeof text - 1);
    j->loaded = gw_yaml_read(&j->arena, source, &j->diags) != NULL;
}

static void read_json(void *argument)
{
    struct job *j = argument;
    const char text[] = "{\"a\": {\"b\": [1, 2, {\"c\": \"deep\"}]}, \"d\": [true, null, {}], \"e\": [\"f\", \"g\"]}";
    const struct gw_source *source = gw_source_from(&j->arena, "t", text, sizeof text - 1);
    j->loaded = gw_json_read(&j->arena, source, &j->diags) != NULL;
}

static void gives_memory_back(void (*read)(void *job))
{
    for (size_t n = 1;; n++) {
        struct job j = {.loaded = false};
        struct mock m = {.fails_at = n};
        m.host = (struct gw_host){&m, mock_allocate, mock_release, mock_read, 16};
        gw_arena_init(&j.arena, &m.host);
        gw_diags_init(&j.diags, &j.arena);
        bool whole = gw_guard(&j.arena, read, &j);
        gw_arena_release(&j.arena);
        assert_int_equal(m.held, 0);
        assert_int_equal(j.loaded, whole);
        if (!whole) continue;
        assert_true(n > 10);
        return;
    }
}

static void readers_give_their_memory_back(void **state)
{
    (void)state;
    gives_memory_back(read_yaml);
    gives_memory_back(read_json);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_run_is_whole),
        cmocka_unit_test(memory_runs_out),
        cmocka_unit_test(a_file_cannot_be_read),
        cmocka_unit_test(readers_give_their_memory_back),
    };
    return cmocka_run_group_tests_name("host", tests, NULL, NULL);
}
