/* What a take-off is as a whole: openings of a schedule, places outside the method, ids, derivations; a model that
 * stays as it was loaded. */
#include "takeoff_walls.h"

/* Openings ----------------------------------------------------------------------------------------------------------
 */

static const struct gw_element *opening(const struct world *w, const char *mark, enum gw_kind kind)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->kind == kind && strcmp(e->mark, mark) == 0) return e;
    }
    return NULL;
}

static void check_opening(const struct gw_element *e, long count, int zone, double top, bool unknown)
{
    assert_non_null(e);
    assert_int_equal(e->count, count);
    assert_int_equal(e->zone, zone);
    assert_near(e->top / FT, top, 1e-9);
    assert_int_equal(e->place_unknown, unknown);
    assert_string_equal(e->columns, "");
}

/* The first of what is selected. */
static void check_selected(struct world *w, const char *what, const struct gw_element *wanted)
{
    struct gw_selection found;
    gw_takeoff_select(&found, &w->takeoff, &w->arena, what);
    assert_true(found.elements.n > 0);
    assert_non_null(wanted);
    assert_ptr_equal(found.elements.items[0], wanted);
    for (size_t i = 1; i < found.elements.n; i++) assert_int_equal(found.elements.items[i]->kind, wanted->kind);
}

static void check_missing(struct world *w, const char *what, const char *says)
{
    struct gw_selection found;
    gw_takeoff_select(&found, &w->takeoff, &w->arena, what);
    assert_int_equal(found.elements.n, 0);
    assert_string_equal(gw_message_text(&w->arena, &found.missing, GW_US), says);
}

/* In the tower, a = 10 ft. Without an offset: the strip; without a sill: under the roof. W6 stands at 75 to 80 ft of a
 * wall of 80 ft, at its right corner; W7 ends 10 ft short of it. W8 has no wall: whether a corner is near is not known.
 * The blind wall has no corner: W9 is in zone 4 wherever it stands. */
static void openings_schedule(void **state)
{
    struct world *w = *state;
    put_file(w, "schedule.csv",
             "Tag,width,height,count,sill,offset,lite,remark,wall\r\n"
             "W1,\"5'-0\"\"\",6 ft,4,10 ft,12 ft,vision,x,n\r\n"
             "W2,5 ft,6 ft,3,10 ft,9 ft,vision,,n\r\n"
             "W3,5 ft,6 ft,2,,12 ft,vision,,n\r\n"
             "W4,5 ft,6 ft,1,10 ft,,vision,,n\r\n"
             "W5,5 ft,6 ft,,,,,,n\r\n"
             "W6,5 ft,6 ft,1,10 ft,75 ft,,,n\r\n"
             "W7,5 ft,6 ft,1,10 ft,65 ft,,,n\r\n"
             "W8,5 ft,6 ft,1,10 ft,30 ft,,,\r\n"
             "W9,5 ft,6 ft,1,10 ft,,,,blind\r\n");
    must_take_off(w, HEAD "buildings: [{name: tower, roof_height: 120 ft, least_width: 100 ft, enclosure: enclosed}]\n"
                          "elevations:\n  - {name: n, width: 80 ft, ends: [corner, corner]}\n"
                          "  - {name: blind, width: 40 ft, ends: [reentrant, none]}\n"
                          "openings: {file: schedule.csv, columns: {mark: Tag}}\n");
    check_opening(opening(w, "W1", GW_LITE), 4, 4, 16, false);
    check_opening(opening(w, "W2", GW_LITE), 3, 5, 16, false);
    check_opening(opening(w, "W3", GW_LITE), 2, 4, 120, true);
    check_opening(opening(w, "W4", GW_LITE), 1, 5, 16, true);
    check_opening(opening(w, "W5", GW_LITE), 1, 5, 120, true);
    check_opening(opening(w, "W6", GW_LITE), 1, 5, 16, false);
    check_opening(opening(w, "W7", GW_LITE), 1, 4, 16, false);
    check_opening(opening(w, "W8", GW_LITE), 1, 5, 16, true);
    check_opening(opening(w, "W9", GW_LITE), 1, 4, 16, true);
    assert_near(opening(w, "W7", GW_LITE)->corner_distance / FT, 10, 1e-9);
    assert_int_equal(w->takeoff.no_offset, 1 + 1 + 1);
    assert_int_equal(w->takeoff.no_wall, 1);
    assert_int_equal(w->takeoff.no_sill, 2 + 1);
    assert_string_equal(opening(w, "W1", GW_LITE)->wall, "n");
    check_selected(w, "W7", opening(w, "W7", GW_LITE));
    check_selected(w, "W7:anchor", opening(w, "W7", GW_ANCHOR));
    check_selected(w, opening(w, "W2", GW_SCREW)->id, opening(w, "W2", GW_SCREW));
    check_missing(w, "W77", "there is no element, and no opening of mark, 'W77'");
    assert_near(covered(w, "n", GW_LITE), 13 * 30, 1e-6);
    assert_near(covered(w, "n", GW_MULLION), 13 * 30, 1e-6);
    assert_near(covered(w, "n", GW_TRANSOM), 13 * 30, 1e-6);
    assert_near(covered(w, "n", GW_ANCHOR), 13 * 30, 1e-6);
    assert_near(opening(w, "W1", GW_TRANSOM)->height / FT, 3, 1e-9);
    /* 9 in on center: sill and head 7 each (6.67), jambs 8 each */
    long screws = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++)
        if (w->takeoff.elements.items[i].kind == GW_SCREW) screws += w->takeoff.elements.items[i].count;
    assert_int_equal(screws, 15 * (2 * 7 + 2 * 8));
}

#define STEEP_ROOF                                                                                                     \
    "buildings: [{name: main, roof_height: 40 ft, least_width: 80 ft, roof_slope: 20 deg, "                            \
    "enclosure: enclosed, parapet_height: 4 ft}]\n"                                                                    \
    "walls:\n  - {name: w, width: 20 ft, floors: [0 ft, 20 ft], top: 44 ft, ends: [corner, none], "                    \
    "columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: vision}]}\n"

/* A roof too steep for the parapet coefficients: groups keep their counts, pressures stay absent, verdicts not shown.
 */
static void outside_the_method(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD STEEP_ROOF);
    long outside = 0, inside = 0;
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        assert_int_equal(e->outside != NULL, e->parapet);
        assert_int_equal(gw_given(e->inward.pa), !e->parapet);
        assert_int_equal(gw_given(e->outward_asd.pa), !e->parapet);
        if (e->kind == GW_LITE) *(e->parapet ? &outside : &inside) += e->count;
    }
    assert_int_equal(outside, 4);
    assert_int_equal(inside, 8);
    gw_ask_init(&w->ask, &w->model, &w->takeoff, &w->arena);
    gw_answer_demand(&w->answer, &w->ask);
    size_t not_shown = 0;
    for (size_t i = 0; i < w->answer.judgement.demands.n; i++) {
        const struct gw_demand *d = &w->answer.judgement.demands.items[i];
        const bool of_weight = strcmp(d->check->id, "glass_seat") == 0; /* no wind in it */
        if (!d->element || !d->element->outside || of_weight) continue;
        assert_int_equal(d->state, GW_NOT_KNOWN);
        assert_non_null(strstr(words(&d->message), "outside the method"));
        not_shown++;
    }
    assert_true(not_shown >= 4);
}

/* Another arena, other diagnostics: the model and what it owns keep every byte, and what the take-off assumed is its
 * own. */
static void model_stays_as_loaded(void **state)
{
    struct world *w = *state;
    struct gw_arena arena;
    struct gw_diags diags;
    must_load(w, HEAD STEEP_ROOF);
    const struct gw_model before = w->model;
    const size_t reserved = w->arena.reserved, said = w->diags.n;
    const void *next = gw_alloc(&w->arena, 1, 16);
    gw_arena_init(&arena, NULL);
    gw_diags_init(&diags, &arena);
    assert_true(gw_takeoff_run(&w->takeoff, &w->model, &arena, &diags));
    assert_memory_equal(&before, &w->model, sizeof before);
    assert_int_equal(w->arena.reserved, reserved);
    assert_ptr_equal((const char *)gw_alloc(&w->arena, 1, 16), (const char *)next + 16);
    assert_int_equal(w->diags.n, said);
    assert_int_equal(diags.n, 0);
    assert_int_equal(w->takeoff.assumptions.n, 1);
    assert_string_equal(w->takeoff.assumptions.items[0].where, "wall w, above the roof");
    gw_arena_release(&arena);
}

/* What the engine refuses goes to the caller's diagnostics. A project without a wind speed does not load, so it is
 * taken away afterwards. */
static void refusals_go_to_the_caller(void **state)
{
    struct world *w = *state;
    struct gw_diags diags;
    must_load(w, HEAD LOW_BUILDING LOW_WALL);
    struct gw_site calm = *w->model.project.site;
    calm.basic_wind_speed = GW_ABSENT;
    w->model.project.site = &calm;
    gw_diags_init(&diags, &w->arena);
    assert_false(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &diags));
    assert_int_equal(w->diags.n, 0);
    assert_int_equal(diags.errors, 1);
    assert_string_equal(diags.items[0].code, "missing");
    assert_string_equal(diags.items[0].key, "basic_wind_speed");
    assert_ptr_equal(w->takeoff.diags, &diags);
}

/* Found by id, columns named ----------------------------------------------------------------------------------------
 */

static void ids_and_columns(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD LOW_BUILDING LOW_WALL);
    const struct gw_element *e = gw_takeoff_find(&w->takeoff, "south/lite/3");
    assert_non_null(e);
    assert_string_equal(e->columns, "3 to 4");
    assert_null(gw_takeoff_find(&w->takeoff, "south/lite/99"));
    for (size_t i = 0; i < w->takeoff.elements.n; i++)
        assert_ptr_equal(gw_takeoff_find(&w->takeoff, w->takeoff.elements.items[i].id), &w->takeoff.elements.items[i]);
}

/* The derivation gives the same bits. */
static void derivations_agree(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD TOWER);
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        struct gw_trace trace;
        struct gw_wind_result r;
        gw_trace_init(&trace, &w->arena);
        assert_int_equal(gw_takeoff_derive(&w->model, e, &trace, &r), GW_OK);
        assert_true(trace.n > 0);
        if (!e->parapet) assert_near(r.positive.pa, e->inward.pa, 0);
        if (!e->parapet) assert_near(r.negative.pa, e->outward.pa, 0);
    }
}

static void places_are_selected(void **state)
{
    struct world *w = *state;
    must_take_off(w, HEAD LOW_BUILDING LOW_WALL);
    const struct gw_takeoff *t = &w->takeoff;
    check_selected(w, "south:2:1", gw_takeoff_at(t, "south", 2, 1, 1));
    check_selected(w, "south:2:1:mullion", gw_takeoff_edge(t, "south", 2, 1, 1, GW_EDGE_LEFT, false));
    check_selected(w, "south:2:1:transom", gw_takeoff_edge(t, "south", 2, 1, 1, GW_EDGE_SILL, false));
    check_selected(w, "south:2:1:screw", gw_takeoff_edge(t, "south", 2, 1, 1, GW_EDGE_SILL, true));
    check_missing(w, "north:2:1", "there is no wall 'north'; there are: south");
    check_missing(w, "south:2:0",
                  "a place is WALL:COLUMN:STORY, both counted from 1, and :KIND after it, as in east:3:2:screw");
    check_missing(w, "south:2:1:bolt",
                  "a place is WALL:COLUMN:STORY, both counted from 1, and :KIND after it, as in east:3:2:screw");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(openings_schedule),   WORLD_TEST(outside_the_method), WORLD_TEST(model_stays_as_loaded),
        WORLD_TEST(ids_and_columns),     WORLD_TEST(derivations_agree),  WORLD_TEST(refusals_go_to_the_caller),
        WORLD_TEST(places_are_selected),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
