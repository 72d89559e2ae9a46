/* Random problems of choosing: a project and a system, as files. */
#ifndef SELECT_PROBLEMS_H
#define SELECT_PROBLEMS_H

#include "support.h"

enum { TEXT = 8192 };

/* One random problem ------------------------------------------------------------------------------------------------
 */

struct problem {
    char project[TEXT], system[TEXT];
    int options, alternatives;
    bool trade;
    bool spaced;  /* options space the screws that options count */
    bool meeting; /* the second wall meets the first at its corner: one mullion, its anchors */
};

static void add(char *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void add(char *text, const char *format, ...)
{
    const size_t length = strlen(text);
    va_list args;
    va_start(args, format);
    vsnprintf(text + length, TEXT - length, format, args);
    va_end(args);
}

static const char *scope(void)
{
    static const char *const scopes[] = {"zone", "zone", "zone", "wall", "project"};
    return scopes[pick(5)];
}

/* Strong in wind and weak under weight, and the reverse: what one place needs another cannot have. */
static void write_trade(struct problem *p)
{
    add(p->system,
        "  - {name: windy, change: {anchor: {inward: 5000 lb, outward: 5000 lb, dead: %d lb}}, of: anchor, cost: %d "
        "each}\n"
        "  - {name: heavy, change: {anchor: {inward: %d lb, outward: %d lb, dead: 5000 lb}}, of: anchor, cost: %d "
        "each}\n",
        900 + 60 * pick(6), pick(20), 1000 + 200 * pick(8), 1000 + 200 * pick(8), pick(20));
    p->options = 2;
}

/* Two that mend the screw, by their spacing or their thread, and two that mend the transom's ends, of which one costs
 * by the screws: what is cheaper for one hangs on what is taken of the other. */
static void write_spaced(struct problem *p)
{
    static const char *const changes[] = {
        "{screw: {spacing: %d in}}, of: screw, cost: 0.%02d each",
        "{screw: {spacing: 5 in, end_distance: %d in}}, of: wall, cost: 0.%02d per ft2",
        "{screw: {spacing: %d in, tested_pullout: 300 lb}}, of: mullion, cost: 0.%02d per ft",
        "{screw: {tested_pullout: 40%d lb}}, of: screw, cost: 0.%02d each",
        "{transom_connection: {capacity: 9%d0 lb}}, of: screw, cost: 0.%02d each",
        "{transom_connection: {capacity: 9%d0 lb}}, of: transom, cost: 7.%02d per ft"};
    const int kinds[] = {pick(3), pick(4), 4, 5};
    p->options = 4;
    for (int i = 0; i < p->options; i++) {
        char change[512];
        snprintf(change, sizeof change, changes[kinds[i]], 3 + pick(4), i == 2 ? 20 + pick(50) : 5 + pick(90));
        add(p->system, "  - {name: o%d, change: %s, choose: %s", i, change, scope());
        if (pick(6) == 0) add(p->system, ", once: %d", 10 * pick(10));
        add(p->system, "}\n");
    }
}

/* What one side needs the other may not, and the corner's mullion and anchors are of both. */
static void write_meeting(struct problem *p)
{
    static const char *const changes[] = {
        "{mullion: {unbraced_length: %d in}}, of: mullion, cost: %d per ft",
        "{transom_connection: {capacity: %d0 lb}}, of: anchor, cost: %d each",
        ("{mullion: {insert: {metal: steel, inertia_x: %d in4, section_modulus_x: 1.6 in3, yield: 36 ksi}}}, of: "
         "mullion, cost: %d per ft"),
        "{splice: {capacity: %d00 lb}}, of: anchor, cost: %d each"};
    static const int least[] = {20, 40, 3, 6}, more[] = {5, 8, 2, 8};
    p->options = 2;
    for (int i = 0; i < p->options; i++) {
        const int kind = 2 * pick(2) + i;
        char change[512];
        snprintf(change, sizeof change, changes[kind], least[kind] + more[kind] * pick(4), 1 + pick(6));
        add(p->system, "  - {name: o%d, change: %s, choose: %s", i, change, scope());
        if (pick(5) == 0) add(p->system, ", once: %d", 10 * pick(10));
        add(p->system, "}\n");
    }
}

static void write_options(struct problem *p)
{
    static const char *const changes[] = {
        "{mullion: {insert: {metal: steel, inertia_x: 3.0 in4, section_modulus_x: 1.6 in3, yield: 36 ksi}}}, of: "
        "mullion, "
        "cost: %d per ft",
        "{mullion: {insert: {metal: steel, inertia_x: 6.0 in4, section_modulus_x: 3.0 in3, yield: 36 ksi}}}, of: "
        "mullion, "
        "cost: %d per ft",
        "{anchor: {inward: 4600 lb, outward: 4600 lb}, corner_anchor: {inward: 4600 lb, outward: 4600 lb}}, of: "
        "anchor, "
        "cost: %d each",
        "{transom_connection: {capacity: 900 lb}}, of: transom, cost: %d per ft",
        "{splice: {capacity: 4000 lb}, mullion: {unbraced_length: 24 in}}, of: wall, cost: %d per ft2"};
    const int n = 1 + pick(3);
    add(p->system, "options:\n");
    if (p->spaced) {
        write_spaced(p);
        return;
    }
    if (p->meeting) {
        write_meeting(p);
        return;
    }
    if (p->trade) {
        write_trade(p);
        return;
    }
    for (int i = 0; i < n; i++) {
        char change[512];
        const int kind = pick(5);
        char *end = change;
        if (kind < 2 && pick(3)) end += sprintf(end, "{frame_weight: 4.%d psf, ", pick(3));
        snprintf(end, sizeof change - (size_t)(end - change), changes[kind] + (end > change), pick(4));
        add(p->system, "  - {name: o%d, change: %s, choose: %s", i, change, scope());
        if (pick(3) == 0) add(p->system, ", once: %d", 100 * pick(30));
        if (pick(4) == 0) add(p->system, ", group: g");
        if (i && pick(4) == 0) add(p->system, ", requires: o%d", pick(i));
        add(p->system, "}\n");
    }
    p->options = n;
}

/* Of the system itself. */
static void write_screw(struct problem *p)
{
    static const char *const own[] = {"", ", spacing: 2 in", ", spacing: 12 in", ", spacing: 3 in, end_distance: 2 in"};
    add(p->system,
        "screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "
        "tested_pullout: %d lb, report: L-8%s}\n",
        p->spaced ? 110 + 30 * pick(6) : 2200, p->spaced ? own[pick(4)] : "");
}

static void write_system(struct problem *p)
{
    p->trade = !p->spaced && !p->meeting && pick(3) == 0;
    p->system[0] = '\0';
    add(p->system,
        "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: captured}\npocket: [1/4 in, 5/16 in, 3/8 in, "
        "1/2 in, 56 mm]\n"
        "ratings:\n  - {test: water, pressure: 15 psf, report: L-2, after_structural: yes, tested: {includes: [corner, "
        "splice]}}\n"
        "  - {test: air, leakage: 0.05 cfm/ft2, at: 6.24 psf, report: L-3, after_structural: yes, tested: {includes: "
        "[corner, splice]}}\n"
        "mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: %d in, flange: 0.25 in, web: 0.125 in}}\n"
        "corner_mullion: {alloy: 6063-T6, tube: {width: 7 in, depth: 8 in, flange: 0.5 in, web: 0.5 in}}\n"
        "transom: {alloy: 6063-T6, tube: {width: 5 in, depth: 6 in, flange: 0.5 in, web: 0.5 in}, eccentricity: 0 in}\n"
        "transom_connection: {capacity: %d lb, report: L-5}\npast_anchor: {moment: 9000 ft-lb, reaction: 9000 lb, "
        "report: L-6}\n"
        "splice: {capacity: %d lb, report: L-7}\npressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 0.25 in}\n"
        "anchor: {inward: %d lb, outward: %d lb, dead: %d lb, report: L-9}\n"
        "corner_anchor: {inward: 9000 lb, outward: 9000 lb, dead: 9000 lb, report: L-9}\n"
        "stack_joint: {width: 1.5 in, least_gap: 0.1 in, engagement: 3 in, least_overlap: 0.5 in}\nframe_weight: 3 "
        "psf\ncost: 50 per ft2\n",
        (p->trade    ? 6
         : p->spaced ? 7
                     : 4) +
            pick(3),
        (p->trade    ? 1200
         : p->spaced ? 100
                     : 250) +
            60 * pick(6),
        (p->trade || p->spaced ? 3000 : 900) + 300 * pick(6),
        (p->trade    ? 500
         : p->spaced ? 2500
                     : 1500) +
            200 * pick(8),
        (p->trade    ? 500
         : p->spaced ? 2500
                     : 1500) +
            200 * pick(8),
        (p->spaced ? 2000 : 900) + 500 * pick(6));
    write_screw(p);
    write_options(p);
}

static void write_project(struct problem *p)
{
    static const char *const glass[] = {
        "{glass: 10 mm, treatment: tempered}", "{glass: 6 mm, treatment: heat_strengthened}",
        "{glass: 8 mm, treatment: heat_strengthened}", "{glass: 6 mm, treatment: tempered}"};
    static const char *const ends[] = {"[corner, none]", "[none, none]", "[corner, corner]"};
    p->project[0] = '\0';
    p->alternatives = p->trade || p->spaced || p->meeting ? 0 : pick(3);
    add(p->project,
        "galeward: 1\nunits: us\nproject: {name: R}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
        "site: {basic_wind_speed: %d, exposure: %c, seismic: {category: A}, hurricane_prone: false, blast: none}\n"
        "buildings: [{name: b, roof_height: 26 ft, least_width: 60 ft, enclosure: enclosed}]\n"
        "requirements: {water: 8 psf, air: {leakage: 0.06 cfm/ft2, at: 6.24 psf}}\n"
        "walls:\n  - {name: w, width: 20 ft, floors: [0 ft, 13 ft], top: 26 ft, ends: %s, columns: {count: 4, width: 5 "
        "ft}, rows: [{height: rest, lite: a}]%s}\n",
        (p->trade ? 115 : 90) + 10 * pick(5), "BCD"[pick(3)], p -> meeting ? "[{corner: v}, none]" : ends[pick(3)],
        p->spaced &&pick(4) == 0 ? ", screws: {spacing: 7 in}" : "");
    const int bay = 3 + pick(4);
    if (p->meeting)
        add(p->project,
            "  - {name: v, width: %d ft, floors: [0 ft, 13 ft], top: 26 ft, ends: [none, corner], columns: {count: 2, "
            "width: %d ft}, rows: [{height: rest, lite: a}]}\n",
            2 * bay, bay);
    else if (p->trade || (!p->spaced && pick(2)))
        add(p->project,
            "  - {name: v, width: %d ft, floors: [0 ft], top: %d ft, ends: [none, none], columns: {count: 2, width: %d "
            "ft}, rows: [{height: rest, lite: %s}]}\n",
            p->trade ? 16 : 12, p->trade ? 9 : 13, p->trade ? 8 : 6, p->trade ? "b" : "a");
    add(p->project, "lites:\n  a:\n    layers: [%s]\n    cost: %d per ft2\n    choose: %s\n", glass[pick(4)], pick(5),
        scope());
    if (p->trade)
        add(p->project,
            "  b: {layers: [{glass: 10 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 10 mm, treatment: tempered}, "
            "{cavity: 12 mm}, {glass: 12 mm, treatment: tempered}]}\n");
    if (p->alternatives) add(p->project, "    alternatives:\n");
    for (int i = 0; i < p->alternatives; i++)
        add(p->project, "      - {name: alt%d, layers: [%s], cost: %d per ft2}\n", i, glass[pick(4)], pick(6));
    if (pick(4)) add(p->project, "movement: {live_load: 0 in}\n");
    add(p->project, "candidates: [x.yaml]\n");
}

#endif
