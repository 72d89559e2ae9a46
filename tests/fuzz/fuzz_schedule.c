/* Any bytes as the CSV schedule of openings of a good project: load, take off. */
#include "fuzz.h"

static const char PROJECT[] =
    "galeward: 1\n"
    "units: us\n"
    "project: {name: Mill House}\n"
    "codes: {building: ibc-2021}\n"
    "site: {basic_wind_speed: 115 mph, exposure: B}\n"
    "buildings:\n"
    "  - {name: main, roof_height: 40 ft, least_width: 60 ft, enclosure: enclosed}\n"
    "  - {name: annex, roof_height: 20 ft, least_width: 30 ft, enclosure: enclosed}\n"
    "lites: {vision: {layers: [{glass: 6 mm}]}, spandrel: {layers: [{glass: 6 mm}], component: spandrel}}\n"
    "openings: schedule.csv\n";

struct sheet {
    const uint8_t *data;
    size_t size;
};

static void *allocate(void *user, size_t bytes)
{
    (void)user;
    return malloc(bytes);
}

static void release(void *user, void *memory)
{
    (void)user;
    free(memory);
}

/* In two pieces, as a slow disk gives them. */
static struct gw_read read_sheet(void *user, const char *path, gw_take *take, void *sink)
{
    const struct sheet *sheet = user;
    const size_t half = sheet->size / 2;
    const char *bytes = (const char *)sheet->data;
    fuzz_require(strcmp(path, "schedule.csv") == 0, "only the schedule is read");
    if (take(sink, bytes, half)) take(sink, bytes + half, sheet->size - half);
    return (struct gw_read){GW_READ_WHOLE, NULL};
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct sheet sheet = {data, size};
    const struct gw_host host = {.user = &sheet, .allocate = allocate, .release = release, .read = read_sheet};
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    if (size > FUZZ_LARGEST) return 0;
    gw_arena_init(&arena, &host);
    gw_diags_init(&diags, &arena);
    const struct gw_source *source = gw_source_from(&arena, "project.yaml", PROJECT, sizeof PROJECT - 1);
    bool good = gw_model_load_source(&model, &arena, &diags, source, NULL, 0);
    if (good && gw_takeoff_run(&takeoff, &model, &arena, &diags)) fuzz_check_takeoff(&takeoff);
    fuzz_print(&diags);
    gw_arena_release(&arena);
    return 0;
}
