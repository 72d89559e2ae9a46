/* A hung wall under the tape: one item at one spot, by everything that was read there.
 *
 * Wall s: four columns of 5 ft, three stories of 13 ft, in each a lite b of 5 x 7 ft below one, a, of 5 x 6 ft; its
 * pieces of mullion are one story long. */
#ifndef GALEWARD_TESTS_ITEM_SUPPORT_H
#define GALEWARD_TESTS_ITEM_SUPPORT_H

#include "support.h"

#include "galeward/inspect.h"

static const double IN = 0.0254;

#define HUNG                                                                                                           \
    "galeward: 1\nproject: {name: Hung}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                                \
    "buildings: [{name: low, roof_height: 39 ft, least_width: 80 ft, enclosure: enclosed}]\n"                          \
    "walls: [{name: s, width: 20 ft, floors: [0 ft, 13 ft, 26 ft], top: 39 ft, ends: [none, none],\n"                  \
    "  anchors: [0 ft, 13 ft, 26 ft, 39 ft], splices: [13 ft, 26 ft],\n"                                               \
    "  columns: {count: 4, width: 5 ft}, rows: [{height: 7 ft, lite: b}, {height: rest, lite: a}]}]\n"                 \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: "              \
    "tempered}]},\n"                                                                                                   \
    "  b: {layers: [{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}]}}\n"      \
    "candidates: [x.yaml]\n%s\n"
#define SITE(more) "site: {basic_wind_speed: 115 mph, exposure: C" more "}\n"
#define QUIET SITE(", seismic: {category: A}")

static inline void hang(struct world *w, const char *more, const char *glazing, const char *system)
{
    put_file(w, "x.yaml",
             gw_format(&w->arena, "galeward: 1\nsystem: {name: X, kind: stick, glazing: %s}\n%s\n", glazing, system));
    must_judge(w, gw_format(&w->arena, HUNG, more));
}

static inline const struct gw_system *hung(const struct world *w) { return &w->model.systems.items[0]; }

/* Of column 1 or line 1, story 2, of a joint of sealant 3; row 2 is a. */
static inline struct gw_spot spot_at(struct world *w, enum gw_item_on on, int row, int edge)
{
    struct gw_spot spot = gw_spot_on("s");
    struct gw_message why = {0};
    const bool upright = on == GW_ON_JOINT || on == GW_ON_ANCHOR || on == GW_ON_MEMBER || on == GW_ON_MULLION;
    spot.story = on == GW_ON_SEALANT ? 3 : 2; /* at the top, where a joint of sealant is */
    if (upright) spot.line = 1;
    else spot.column = 1, spot.row = row, spot.edge = edge;
    if (!gw_spot_find(&spot, &why, &w->ask, on)) fail_msg("%s", words(&why));
    return spot;
}

static inline struct gw_as_read nothing_read(void)
{
    struct gw_as_read read;
    gw_as_read_clear(&read);
    return read;
}

static inline struct gw_item_result judge_at(struct world *w, enum gw_item_id item, const struct gw_spot *spot,
                                             const struct gw_as_read *read)
{
    struct gw_item_result r;
    gw_item_judge(&r, &w->ask, gw_item_of(item), spot, read, hung(w));
    return r;
}

/* A number alone, row 2 (a) of column 1, or line 1. */
static inline struct gw_item_result judge_number(struct world *w, enum gw_item_id item, int row, int edge, double value)
{
    const struct gw_spot spot = spot_at(w, gw_item_of(item)->on, row, edge);
    struct gw_as_read read = nothing_read();
    read.of[item].number = value;
    return judge_at(w, item, &spot, &read);
}

static inline struct gw_item_result judge_word(struct world *w, enum gw_item_id item, int word)
{
    const struct gw_spot spot = spot_at(w, gw_item_of(item)->on, 2, GW_EDGE_SILL);
    struct gw_as_read read = nothing_read();
    read.of[item].word = word;
    return judge_at(w, item, &spot, &read);
}

static inline void is_at(const struct gw_item_result *r, enum gw_item_verdict verdict, const char *file, int line)
{
    if (r->verdict == verdict) return;
    print_error("got %s, want %s: %s\n", gw_item_verdict_name(r->verdict), gw_item_verdict_name(verdict),
                words(&r->message));
    _fail(file, line);
}
#define assert_item(r, verdict) is_at(&(r), verdict, __FILE__, __LINE__)

static inline void says_at(const struct gw_item_result *r, const char *part, const char *file, int line)
{
    if (strstr(words(&r->message), part)) return;
    print_error("'%s' is not in: %s\n", part, words(&r->message));
    _fail(file, line);
}
#define assert_says(r, part) says_at(&(r), part, __FILE__, __LINE__)

#endif
