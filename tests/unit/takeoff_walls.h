/* The walls that the tests of the take-off share. */
#ifndef GALEWARD_TESTS_TAKEOFF_WALLS_H
#define GALEWARD_TESTS_TAKEOFF_WALLS_H

#include "support.h"

#define HEAD                                                                                                           \
    "galeward: 1\nproject: {name: Hand}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                                \
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"                                                                 \
    "lites: {vision: {}, spandrel: {component: spandrel}}\n"
#define LOW_BUILDING "buildings: [{name: low, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
#define LOW_WALL                                                                                                       \
    "walls:\n  - {name: south, width: 30 ft, floors: [0 ft, 12 ft], top: 24 ft,\n"                                     \
    "     ends: [{corner_at: 4 ft}, reentrant], columns: [3 ft, 5 ft, 5 ft, 5 ft, 6 ft, 6 ft],\n"                      \
    "     rows: [{height: 3 ft, lite: spandrel}, {height: rest, lite: vision}]}\n"

#define TOWER                                                                                                          \
    "buildings:\n"                                                                                                     \
    "  - {name: tower, roof_height: 120 ft, least_width: 100 ft, enclosure: enclosed, parapet_height: 4 ft}\n"         \
    "  - {name: penthouse, roof_height: 136 ft, least_width: 30 ft, enclosure: enclosed}\n"                            \
    "walls:\n"                                                                                                         \
    "  - {name: east, building: tower, width: 24 ft, floors: [100 ft, 112 ft], top: 124 ft, ends: [corner, none],\n"   \
    "     columns: {count: 6, width: 4 ft}, screws: {spacing: 12 in},\n"                                               \
    "     rows: [{height: 3 ft, lite: spandrel}, {height: rest, lite: vision}]}\n"                                     \
    "  - {name: plant, building: penthouse, width: 16 ft, floors: [120 ft], top: 136 ft, ends: [corner, corner],\n"    \
    "     columns: {count: 4, width: 4 ft}, screws: {spacing: 12 in}, rows: [{height: rest, lite: vision}]}\n"

#define COUNT(array) (sizeof(array) / sizeof *(array))

static inline bool near_feet(double si, double feet) { return fabs(si / FT - feet) < 1e-6; }

static inline double covered(const struct world *w, const char *wall, enum gw_kind kind)
{
    double area = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == kind && strcmp(e->wall, wall) == 0) area += (double)e->count * e->width * e->height;
    }
    return area / FT2;
}

#endif
