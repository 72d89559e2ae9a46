/* Any bytes as the sheet of readings of a good project: read, judge, print. Good rows go on beside wrong ones. */
#include "fuzz_wall.h"

#include "galeward/inspection.h"

static void check(const struct gw_inspection *in, const struct gw_readings *readings)
{
    long n = 0;
    for (int v = 0; v <= GW_ITEM_NOT_MET; v++) n += in->counts[v];
    fuzz_require(in->rows.n + readings->wrong + readings->blank == readings->rows.n, "every good row is judged");
    fuzz_require((size_t)n <= in->rows.n, "none counts twice");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct fuzz_wall w;
    struct gw_readings readings;
    struct gw_inspection inspection;
    if (size > FUZZ_LARGEST) return 0;
    fuzz_wall_open(&w);
    gw_readings_read(&readings, &w.model, fuzz_source(&w.arena, data, size));
    const struct gw_system *system = gw_readings_system(&w.model, NULL);
    fuzz_require(system, "the project has one system");
    if (readings.rows.n > readings.wrong + readings.blank) {
        gw_inspect(&inspection, &w.ask, &readings, system);
        check(&inspection, &readings);
        const struct gw_result result = gw_result_inspection(&w.arena, &w.results, &inspection);
        fuzz_wall_print(&w, &result);
    }
    fuzz_wall_close(&w);
    return 0;
}
