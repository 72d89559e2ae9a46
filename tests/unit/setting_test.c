/* Settings: where a path leads in a file's tree, and what is said where it leads nowhere. */
#include "support.h"

#include "model/setting.h"

static const char FILE_TEXT[] = "site: {exposure: C}\n"
                                "buildings:\n"
                                "  - {name: main, roof_height: 60 ft}\n"
                                "walls:\n"
                                "  - {name: east, top: 40 ft, columns: [4 ft, 5 ft], floors: [0 ft, 12 ft],\n"
                                "     rows: [{height: 3 ft, lite: a}, {height: rest, lite: b}]}\n"
                                "  - {name: west, top: 40 ft, columns: {count: 4, width: 5 ft}, floors: [0 ft]}\n"
                                "lites: {a: {component: spandrel}, b: {}}\n"
                                "given: [{building: main, zone: 4, inward: 30 psf}]\n";

static struct gw_node *root_of(struct world *w) { return node_of(w, FILE_TEXT); }

static const char *refusal(struct world *w, struct gw_node *root, const char *setting)
{
    struct gw_settings settings = {.arena = &w->arena};
    const char *why = NULL;
    return gw_setting_put(&settings, &gw_project_record, root, setting, &why) ? NULL : why;
}

/* What stands at that way of keys and numbers. */
static const char *at(const struct gw_node *node, const char *way)
{
    for (; *way; way += strcspn(way, "/") + (strchr(way, '/') != NULL)) {
        char part[32] = "";
        memcpy(part, way, strcspn(way, "/"));
        if (node->kind == GW_MAPPING) node = gw_node_get(node, part);
        else {
            node = node->first;
            for (int i = atoi(part); i > 1; i--) node = node->next;
        }
        assert_non_null(node);
    }
    return node->text;
}

static void a_path_sets_its_place(void **state)
{
    static const char *const cases[][3] = {
        {"site.exposure=D", "site/exposure", "D"},
        {"site.elevation=30 ft", "site/elevation", "30 ft"},
        {"codes.wind=asce7-22", "codes/wind", "asce7-22"},
        {"walls.west.top=44 ft", "walls/2/top", "44 ft"},
        {"walls.2.top=44 ft", "walls/2/top", "44 ft"},
        {"walls.top=44 ft", "walls/1/top", "44 ft"}, /* every wall */
        {"walls.west.columns.width=6 ft", "walls/2/columns/width", "6 ft"},
        {"walls.east.columns.2=6 ft", "walls/1/columns/2", "6 ft"},
        {"walls.east.floors.2=13 ft", "walls/1/floors/2", "13 ft"},
        {"walls.east.rows.1.height=2 ft", "walls/1/rows/1/height", "2 ft"},
        {"lites.b.component=vent", "lites/b/component", "vent"},
        {"given.1.inward=31 psf", "given/1/inward", "31 psf"},
        {"walls.east.columns={count: 2, width: 3 ft}", "walls/1/columns/width", "3 ft"},
    };
    struct world *w = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_node *root = root_of(w);
        const char *why = refusal(w, root, cases[i][0]);
        if (why) print_error("%s: %s\n", cases[i][0], why);
        assert_null(why);
        assert_string_equal(at(root, cases[i][1]), cases[i][2]);
    }
}

static void what_is_not_there_is_told(void **state)
{
    static const char *const cases[][2] = {
        {"walls.eest.top=1 ft", "there is no 'eest' in 'walls': east, west, or 1 to 2"},
        {"walls.3.top=1 ft", "there is no '3' in 'walls': east, west, or 1 to 2"},
        {"walls.0.top=1 ft", "there is no '0' in 'walls': east, west, or 1 to 2"},
        {"walls.topp=1 ft", "there is no 'topp' in 'walls': east, west, or 1 to 2; did you mean 'top' of every item?"},
        {"lites.c.component=vent", "there is no 'c' in 'lites': a, b"},
        {"walls.east.floors.3=1 ft", "there is no '3' in 'floors': 1 to 2"},
        {"walls.east.tops=1 ft", "'tops' is not a key of wall; did you mean 'top'?"},
        {"east.top=1 ft", "'east' is not a key of the project file; did you mean 'walls.east.top'?"},
        {"wind_tunnel.1.inward=1", "the file has no list 'wind_tunnel', so no '1' in it"},
        {"site.exposure.x=1", "'site.exposure.x' leads nowhere: 'exposure' is a single value"},
        {"walls.east.floors=[0 ft", "'[0 ft' is no value of 'walls.east.floors': a list or mapping is not closed"},
    };
    struct world *w = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *why = refusal(w, root_of(w), cases[i][0]);
        assert_non_null(why);
        assert_string_equal(why, cases[i][1]);
    }
}

static void one_place_is_set_once(void **state)
{
    struct world *w = *state;
    struct gw_settings settings = {.arena = &w->arena};
    struct gw_node *root = root_of(w);
    const char *why;
    assert_true(gw_setting_put(&settings, &gw_project_record, root, "walls.east.top=41 ft", &why));
    assert_true(gw_setting_put(&settings, &gw_project_record, root, "walls.west.top=42 ft", &why));
    assert_false(gw_setting_put(&settings, &gw_project_record, root, "walls.1.top=43 ft", &why));
    assert_string_equal(why, "'walls.east.top' and 'walls.1.top' set the same place");
    assert_false(gw_setting_put(&settings, &gw_project_record, root, "walls.west.top=43 ft", &why));
    assert_string_equal(why, "'walls.west.top' is set twice");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(a_path_sets_its_place, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(what_is_not_there_is_told, world_setup, world_teardown),
        cmocka_unit_test_setup_teardown(one_place_is_set_once, world_setup, world_teardown),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
