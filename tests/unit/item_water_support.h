/* A wall of lites of 5 x 10 ft over spandrels of 5 x 5 ft, what is read at its pockets, and what that comes to. */
#ifndef GALEWARD_TESTS_ITEM_WATER_SUPPORT_H
#define GALEWARD_TESTS_ITEM_WATER_SUPPORT_H

#include "support.h"

#include "galeward/inspect.h"

static const double INCH = 0.0254;

static const char PROJECT[] =
    "galeward: 1\nunits: us\nproject: {name: Wet}\ncodes: {building: ibc-2021, wind: asce7-16}\n"
    "site: {basic_wind_speed: 115 mph, exposure: C}\n"
    "buildings: [{name: b, roof_height: 40 ft, least_width: 80 ft, enclosure: enclosed}]\n"
    "requirements: {water: %s}\n"
    "walls: [{name: w, width: 20 ft, floors: [0 ft], top: 15 ft, ends: [none, none], columns: {count: 4, width: 5 "
    "ft},\n"
    "  rows: [{height: 5 ft, lite: spandrel}, {height: rest, lite: vision}]}]\n"
    "lites: {vision: {}, spandrel: {component: spandrel}}\ncandidates: [x.yaml]\n";
static const char SYSTEM[] = "galeward: 1\nunits: us\nsystem: {name: X, kind: stick, glazing: %s}\n%s\n";

/* As in the head of this file; two slots where the system's own number counts. */
#define DRAINED(more)                                                                                                  \
    "drainage: {slots: 2, slot_length: 2 in, slot_height: 1/4 in, pocket_depth: 5/8 in, leak_share: 0.1" more "}"

struct place {
    struct world world;
    struct gw_spot spot;
    struct gw_as_read read;
    struct gw_item_result result;
};

static inline void open_glazed(struct place *p, const char *water, const char *glazing, const char *system)
{
    struct world *w = &p->world;
    world_open(w);
    put_file(w, "x.yaml", gw_format(&w->arena, SYSTEM, glazing, system));
    must_take_off(w, gw_format(&w->arena, PROJECT, water));
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_as_read_clear(&p->read);
    const struct gw_element *lite = gw_takeoff_at(&w->takeoff, "w", 2, 1, 2);
    p->spot = (struct gw_spot){.wall = "w",
                               .column = 2,
                               .story = 1,
                               .row = 2,
                               .line = GW_NO_INTEGER,
                               .edge = -1,
                               .grid = lite->grid,
                               .lite = lite};
}

static inline void open_place(struct place *p, const char *water, const char *system)
{
    open_glazed(p, water, "captured", system);
}

static inline void close_place(struct place *p) { world_close(&p->world); }

static inline void number(struct place *p, enum gw_item_id item, double value) { p->read.of[item].number = value; }

static inline void word(struct place *p, enum gw_item_id item, const char *text)
{
    const struct gw_choice *choices = gw_item_kinds[item].value.choices;
    for (; choices->name; choices++)
        if (strcmp(choices->name, text) == 0) p->read.of[item].word = choices->value;
    assert_int_not_equal(p->read.of[item].word, 0);
}

static inline const struct gw_system *system_of(const struct place *p) { return &p->world.model.systems.items[0]; }

static inline void judge(struct place *p, enum gw_item_id item, enum gw_item_verdict verdict)
{
    gw_item_judge(&p->result, &p->world.ask, gw_item_of(item), &p->spot, &p->read, system_of(p));
    if (p->result.verdict != verdict)
        print_error("%s: %s: %s\n", gw_item_kinds[item].id, gw_item_verdict_name(p->result.verdict),
                    words(&p->result.message));
    assert_int_equal(p->result.verdict, verdict);
}

static inline void says(const struct place *p, const char *part)
{
    const char *said = words(&p->result.message);
    if (!strstr(said, part)) print_error("'%s' is not in: %s\n", part, said);
    assert_non_null(strstr(said, part));
}

static inline void says_not(const struct place *p, const char *part)
{
    assert_null(strstr(words(&p->result.message), part));
}

static inline void judge_number(struct place *p, enum gw_item_id item, double value, enum gw_item_verdict verdict)
{
    number(p, item, value);
    judge(p, item, verdict);
}

static inline void judge_word(struct place *p, enum gw_item_id item, const char *text, enum gw_item_verdict verdict)
{
    word(p, item, text);
    judge(p, item, verdict);
}

#endif
