/* A stranger's program, valid as C and as C++: a project from memory to the pressure on one lite, by the installed
 * headers and the installed archive alone. */
#include <galeward/takeoff.h>

#include <stdio.h>
#include <string.h>

static const char PROJECT[] =
    "galeward: 1\n"
    "project: {name: Consumer, risk_category: II}\n"
    "codes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"
    "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
    "lites: {a: {}}\n"
    "walls:\n"
    "  - {name: south, building: low, width: 100 ft, floors: [0 ft], top: 12 ft, ends: [corner, corner],\n"
    "     columns: {count: 20, width: 5 ft}, rows: [{height: 12 ft, lite: a}]}\n";

static int print_pressure(const struct gw_takeoff *takeoff, struct gw_arena *arena)
{
    const struct gw_element *element = gw_takeoff_find(takeoff, "south/lite/1");
    struct gw_text text;
    if (!element) return 1;
    gw_text_init(&text, arena);
    gw_text_add(&text, "south/lite/1 inward ");
    gw_quantity_print(&text, gw_units_standard(), GW_PRESSURE, GW_US, element->inward.pa);
    puts(text.at);
    return 0;
}

int main(void)
{
    struct gw_arena arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    int failed = 1;
    gw_arena_init(&arena, NULL);
    gw_diags_init(&diags, &arena);
    const struct gw_source *source = gw_source_from(&arena, "memory", PROJECT, strlen(PROJECT));
    if (gw_model_load_source(&model, &arena, &diags, source, NULL, 0) &&
        gw_takeoff_run(&takeoff, &model, &arena, &diags))
        failed = print_pressure(&takeoff, &arena);
    struct gw_text text;
    gw_text_init(&text, &arena);
    for (size_t i = 0; i < diags.n; i++) gw_diag_print(&text, &diags.items[i]);
    fputs(text.at, stderr);
    gw_arena_release(&arena);
    return failed;
}
