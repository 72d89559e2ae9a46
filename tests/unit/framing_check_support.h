/* Walls under a given wind, their elements and what is found of them, for the tests of framing by 'check'. */
#ifndef GALEWARD_TESTS_FRAMING_CHECK_SUPPORT_H
#define GALEWARD_TESTS_FRAMING_CHECK_SUPPORT_H

#include "support.h"

static const double LB = 4.4482216152605, INCH = 0.0254, KSI = 6894757.293168, LB_FT = 4.4482216152605 * 0.3048;

/* 30 psf inward and 42 psf outward everywhere below the roof, allowable-stress level. */
#define GIVEN                                                                                                          \
    "pressures: given\ngiven: [{zone: 4, area: 1 ft2, inward: 30 psf, outward: 42 psf, level: asd},\n"                 \
    "  {zone: 5, area: 1 ft2, inward: 30 psf, outward: 42 psf, level: asd}]\n"

#define CODES(year) "galeward: 1\nproject: {name: Framed}\ncodes: {building: ibc-" year ", wind: asce7-16}\n"

#define SITE "site: {basic_wind_speed: 115 mph, exposure: C}\n"

#define BUILDING(more) "buildings: [{name: low, least_width: 80 ft, enclosure: enclosed, " more "}]\n"

#define MONOLITHIC "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\n"

#define CANDIDATE "candidates: [x.yaml]\n"

#define WALL(more) "walls: [{name: s, columns: {count: 4, width: 5 ft}, width: 20 ft, " more "}]\n"

#define PLAIN_ENDS "ends: [none, none], rows: [{height: rest, lite: a}]"

#define PROJECT(wall)                                                                                                  \
    CODES("2021") SITE BUILDING("roof_height: 75 ft") GIVEN MONOLITHIC CANDIDATE WALL(wall ", " PLAIN_ENDS)

#define TUBE "{alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}}"

/* Of that tube: (2.5 x 6^3 - 2.25 x 5.75^3) / 12. */
static const double TUBE_INERTIA = (2.5 * 216 - 2.25 * 5.75 * 5.75 * 5.75) / 12; /* in4 */

static inline void judge(struct world *w, const char *project, const char *system)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: captured}\n%s\n", system));
    must_judge(w, project);
}

/* The element of that kind and mark that starts at `bottom` ft. */
static inline const struct gw_element *element(const struct world *w, enum gw_kind kind, const char *mark,
                                               double bottom)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == kind && strcmp(e->mark, mark) == 0 && fabs(e->bottom - bottom * FT) < 1e-6) return e;
    }
    print_error("no %s %s at %g ft\n", gw_kind_names[kind], mark, bottom);
    fail();
    return NULL;
}

static inline const struct gw_finding *of(const struct world *w, const char *check, enum gw_kind kind, const char *mark,
                                          double bottom)
{
    return finding(w, check, element(w, kind, mark, bottom)->id);
}

static inline const struct gw_reaction *reaction(const struct world *w, const char *mark, double bottom)
{
    const struct gw_element *e = element(w, GW_ANCHOR, mark, bottom);
    for (size_t i = 0; i < w->answer.reactions.n; i++)
        if (w->answer.reactions.items[i].element == e) return &w->answer.reactions.items[i];
    fail();
    return NULL;
}

static inline const struct gw_member_demand *member(const struct world *w, const struct gw_element *e)
{
    for (size_t i = 0; i < w->answer.members.n; i++)
        if (w->answer.members.items[i].element == e) return &w->answer.members.items[i];
    fail();
    return NULL;
}

#define STATED "mullion: {alloy: 6063-T6, inertia_x: 20 in4, allowable_moment: 60000 in-lb}\n"

#endif
