/* Places to elements and back: every lite of the demo walls and of random ones, what tiles a wall, neighbors, edges,
 * openings. The geometry is worked out here from the project alone. */
#include "takeoff_walls.h"

static const double LENGTH = 2e-6; /* m: lengths are alike to the micrometer */

/* One row of lites of a wall as the project gives it. */
struct row {
    double bottom, top;
    const char *lite;
    int story, number;
};

enum { ROWS = 400, PLACES = 200 };

struct lines {
    const struct gw_wall *wall;
    double roof, x[PLACES + 1];
    size_t n_columns;
    struct row rows[ROWS];
    size_t n_rows;
};

static void lay_out_columns(struct lines *l)
{
    const struct gw_columns *c = l->wall->columns;
    l->n_columns = c->widths.n ? c->widths.n : (size_t)c->count;
    assert_true(l->n_columns <= PLACES);
    for (size_t i = 0; i < l->n_columns; i++) l->x[i + 1] = l->x[i] + (c->widths.n ? c->widths.items[i] : c->width);
}

static void lay_out_story(struct lines *l, size_t floor)
{
    const struct gw_wall *w = l->wall;
    const struct gw_story *s = &w->rows.items[w->rows.n == 1 ? 0 : floor];
    const double top = floor + 1 < w->floors.n ? w->floors.items[floor + 1] : w->top;
    double z = w->floors.items[floor], rest = top - z;
    for (size_t i = 0; i < s->rows.n; i++) rest -= s->rows.items[i].rest ? 0 : s->rows.items[i].height;
    for (size_t i = 0; i < s->rows.n; i++) {
        const double height = s->rows.items[i].rest ? rest : s->rows.items[i].height;
        assert_true(l->n_rows < ROWS);
        l->rows[l->n_rows++] = (struct row){z, z + height, s->rows.items[i].lite, (int)floor + 1, (int)i + 1};
        z += height;
    }
}

static void lay_out(struct lines *l, const struct gw_model *model, const struct gw_wall *wall)
{
    *l = (struct lines){.wall = wall, .roof = gw_model_building(model, wall->building)->roof_height};
    lay_out_columns(l);
    for (size_t f = 0; f < wall->floors.n; f++) lay_out_story(l, f);
}

static void assert_rectangle(const struct gw_rectangle *r, double x0, double x1, double bottom, double top)
{
    assert_true(r->placed);
    assert_near(r->x, x0, LENGTH);
    assert_near(r->x + r->width, x1, LENGTH);
    assert_near(r->y, bottom, LENGTH);
    assert_near(r->y + r->height, top, LENGTH);
}

/* The one piece of the element at that place. */
static struct gw_rectangle piece_at(const struct gw_takeoff *t, const struct gw_element *e, size_t place)
{
    struct gw_pieces pieces = gw_takeoff_pieces(t, e);
    struct gw_rectangle r, found = {.placed = false};
    size_t n = 0;
    while (gw_pieces_next(&pieces, &r)) {
        if (r.place != place) continue;
        found = r;
        n++;
    }
    assert_int_equal(n, 1);
    return found;
}

static void check_lite_part(const struct gw_takeoff *t, const struct lines *l, const struct gw_element *e,
                            size_t column, const struct row *row, double bottom, double top)
{
    assert_non_null(e);
    assert_int_equal(e->kind, GW_LITE);
    assert_string_equal(e->wall, l->wall->name);
    assert_int_equal(e->parapet, bottom > l->roof - LENGTH);
    if (row->lite) assert_string_equal(e->lite, row->lite);
    assert_near(e->pane, row->top - row->bottom, LENGTH);
    const struct gw_rectangle r = piece_at(t, e, column);
    assert_rectangle(&r, l->x[column], l->x[column + 1], bottom, top);
    assert_int_equal(r.story, row->story);
    assert_int_equal(r.row, row->number);
    assert_int_equal(r.count, 1);
}

/* Returns how many lites stand there: two where the roof line cuts. */
static long check_lite(const struct gw_takeoff *t, const struct lines *l, size_t column, const struct row *row)
{
    const struct gw_element *e = gw_takeoff_at(t, l->wall->name, (int)column + 1, row->story, row->number);
    bool cut = row->bottom < l->roof - LENGTH && row->top > l->roof + LENGTH;
    check_lite_part(t, l, e, column, row, row->bottom, cut ? l->roof : row->top);
    if (!cut) assert_null(gw_takeoff_other_part(t, e));
    if (!cut) return 1;
    const struct gw_element *other = gw_takeoff_other_part(t, e);
    check_lite_part(t, l, other, column, row, l->roof, row->top);
    assert_ptr_equal(gw_takeoff_other_part(t, other), e);
    return 2;
}

static void check_edges(const struct gw_takeoff *t, const struct lines *l, size_t column, size_t row)
{
    const struct row *r = &l->rows[row];
    const char *wall = l->wall->name;
    const int c = (int)column + 1;
    const struct gw_element *sill = gw_takeoff_edge(t, wall, c, r->story, r->number, GW_EDGE_SILL, false);
    const struct gw_element *head = gw_takeoff_edge(t, wall, c, r->story, r->number, GW_EDGE_HEAD, false);
    const struct gw_element *left = gw_takeoff_edge(t, wall, c, r->story, r->number, GW_EDGE_LEFT, false);
    const struct gw_element *screws = gw_takeoff_edge(t, wall, c, r->story, r->number, GW_EDGE_RIGHT, true);
    assert_int_equal(sill->kind, GW_TRANSOM);
    assert_string_equal(sill->mark, row ? row == l->n_rows ? "head" : "intermediate" : "sill");
    assert_string_equal(head->mark, row + 1 == l->n_rows ? "head" : "intermediate");
    if (r->lite) assert_string_equal(sill->rests->name, r->lite);
    if (r->lite) assert_string_equal(head->under->name, r->lite);
    assert_near(sill->above, r->top - r->bottom, LENGTH);
    if (row + 1 < l->n_rows) {
        const struct row *up = &l->rows[row + 1];
        assert_ptr_equal(head, gw_takeoff_edge(t, wall, c, up->story, up->number, GW_EDGE_SILL, false));
    }
    assert_int_equal(left->kind, GW_MULLION);
    assert_true(left->bottom < (r->bottom + r->top) / 2 + LENGTH && left->top > (r->bottom + r->top) / 2 - LENGTH);
    if (column) assert_ptr_equal(left, gw_takeoff_edge(t, wall, c - 1, r->story, r->number, GW_EDGE_RIGHT, false));
    assert_int_equal(screws->kind, GW_SCREW);
    assert_string_equal(screws->mark, "vertical");
    assert_near(screws->bottom, r->bottom, LENGTH);
    piece_at(t, screws, column + 1);
    piece_at(t, sill, column);
}

static long check_wall_places(const struct gw_takeoff *t, const struct lines *l)
{
    long lites = 0;
    const char *wall = l->wall->name;
    for (size_t row = 0; row < l->n_rows; row++)
        for (size_t c = 0; c < l->n_columns; c++) {
            lites += check_lite(t, l, c, &l->rows[row]);
            check_edges(t, l, c, row);
        }
    const struct row *last = &l->rows[l->n_rows - 1];
    assert_null(gw_takeoff_at(t, wall, 0, 1, 1));
    assert_null(gw_takeoff_at(t, wall, (int)l->n_columns + 1, 1, 1));
    assert_null(gw_takeoff_at(t, wall, 1, 0, 1));
    assert_null(gw_takeoff_at(t, wall, 1, last->story + 1, 1));
    assert_null(gw_takeoff_at(t, wall, 1, last->story, last->number + 1));
    assert_null(gw_takeoff_at(t, wall, 1, 1, 0));
    assert_null(gw_takeoff_at(t, "no such wall", 1, 1, 1));
    return lites;
}

/* Elements ----------------------------------------------------------------------------------------------------------
 */

/* The rectangles add up to the group: areas, or of screws their number. */
static void check_sums(const struct gw_takeoff *t, const struct gw_element *e)
{
    struct gw_pieces pieces = gw_takeoff_pieces(t, e);
    struct gw_rectangle r;
    double area = 0;
    long count = 0;
    while (gw_pieces_next(&pieces, &r)) {
        area += (double)r.count * r.width * r.height;
        count += r.count;
    }
    assert_int_equal(count, e->count);
    const double n = (double)count;
    if (e->kind != GW_SCREW) assert_near(area, n * e->width * e->height, n * LENGTH * (e->width + e->height));
}

/* A stack is one mullion line or one column from the bottom to the top, without a gap. */
static void check_stack(const struct gw_takeoff *t, const struct gw_element *e)
{
    const size_t n = gw_takeoff_stack(e);
    assert_ptr_equal(gw_takeoff_stacked(t, e, e->strip), e);
    for (size_t i = 0; i < n; i++) {
        const struct gw_element *o = gw_takeoff_stacked(t, e, i);
        assert_int_equal(o->sort, e->sort);
        assert_int_equal(o->zone, e->zone);
        assert_string_equal(o->columns, e->columns);
        assert_ptr_equal(o->grid, e->grid);
        assert_near(o->bottom, i ? gw_takeoff_stacked(t, e, i - 1)->top : e->lines->bottom, LENGTH);
    }
    assert_near(gw_takeoff_stacked(t, e, n - 1)->top, e->lines->top, LENGTH);
}

/* The other part as it was told before there were stacks: by scanning all elements. */
static void check_other_part(const struct gw_takeoff *t, const struct gw_element *e)
{
    const double whole = e->kind == GW_LITE      ? e->pane
                         : e->kind == GW_MULLION ? e->span
                         : e->kind == GW_TRANSOM ? (e->above + e->below) / 2
                                                 : GW_ABSENT;
    const struct gw_element *other = gw_takeoff_other_part(t, e);
    if (gw_given(whole)) assert_int_equal(other != NULL, whole > e->height + LENGTH);
    if (!other) return;
    const struct gw_element *found = NULL;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *o = &t->elements.items[i];
        bool alike = o->lines == e->lines && o->sort == e->sort && o->parapet != e->parapet && o->corner == e->corner &&
                     strcmp(o->columns, e->columns) == 0;
        if (alike && (fabs(o->bottom - e->top) < LENGTH || fabs(o->top - e->bottom) < LENGTH)) found = o;
    }
    assert_ptr_equal(other, found);
}

/* By scanning: of its sort and columns, the nearest beyond the roof line. */
static void check_across_roof(const struct gw_takeoff *t, const struct gw_element *e)
{
    const struct gw_element *found = NULL;
    for (size_t i = e->grid->first_element; i < e->grid->first_element + e->grid->n_elements; i++) {
        const struct gw_element *o = &t->elements.items[i];
        bool alike = o->sort == e->sort && o->parapet != e->parapet && o->place_class == e->place_class;
        if (alike && (!found || fabs(o->bottom - e->bottom) < fabs(found->bottom - e->bottom))) found = o;
    }
    assert_ptr_equal(gw_takeoff_across_roof(t, e), found);
}

/* A point lies in one piece of every sort but the screws of transoms, which share the transoms' strips. */
static void check_point(const struct gw_takeoff *t, const struct gw_wall_grid *g, enum gw_sort sort, double x, double y)
{
    size_t hits = 0;
    for (size_t i = 0; i < t->n_wall_elements; i++) {
        const struct gw_element *e = &t->elements.items[i];
        struct gw_pieces pieces = gw_takeoff_pieces(t, e);
        struct gw_rectangle r;
        if (e->grid != g || e->sort != sort) continue;
        while (gw_pieces_next(&pieces, &r)) {
            if (x < r.x || x >= r.x + r.width || y < r.y || y >= r.y + r.height) continue;
            assert_ptr_equal(gw_takeoff_held(t, g, sort, r.place, y), e);
            hits++;
        }
    }
    assert_int_equal(hits, 1);
}

static void check_tiling(const struct gw_takeoff *t, const struct gw_wall_grid *g)
{
    for (int sort = 0; sort < GW_SORT_COUNT; sort++)
        for (int i = 0; i < 3; i++)
            check_point(t, g, (enum gw_sort)sort, draw(0, g->x[g->n_columns]), draw(g->lines.bottom, g->lines.top));
    assert_null(gw_takeoff_held(t, g, GW_SORT_LITE, g->n_columns, g->lines.bottom));
    assert_null(gw_takeoff_held(t, g, GW_SORT_LITE, 0, g->lines.top + 1));
    assert_null(gw_takeoff_held(t, g, GW_SORT_LITE, 0, g->lines.bottom - 1));
}

static void check_take_off(const struct gw_takeoff *t, const struct gw_model *model)
{
    static struct lines lines;
    long lites = 0, counted = 0;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        lay_out(&lines, model, &model->project.walls.items[i]);
        const struct gw_wall_grid *g = gw_takeoff_wall(t, lines.wall->name);
        assert_ptr_equal(g, t->grids.items[i]);
        lites += check_wall_places(t, &lines);
        check_tiling(t, g);
    }
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        assert_int_equal(e->index, i);
        assert_ptr_equal(e->lines, &e->grid->lines);
        assert_true(i >= e->grid->first_element && i < e->grid->first_element + e->grid->n_elements);
        assert_true(e->height > LENGTH); /* no sliver at the roof line */
        check_sums(t, e);
        if (i >= t->n_wall_elements) continue;
        check_stack(t, e);
        check_other_part(t, e);
        check_across_roof(t, e);
        if (e->kind == GW_LITE) counted += e->count;
    }
    assert_int_equal(counted, lites);
}

/* Demo projects, random walls ---------------------------------------------------------------------------------------
 */

static void demo_walls(void **state)
{
    struct world *w = *state;
    glob_t found;
    reference_files("projects", &found);
    assert_true(found.gl_pathc >= 2);
    draw_from(7);
    for (size_t i = 0; i < found.gl_pathc; i++) {
        assert_true(gw_model_load(&w->model, &w->arena, &w->diags, found.gl_pathv[i], NULL, 0));
        assert_true(gw_takeoff_run(&w->takeoff, &w->model, &w->arena, &w->diags));
        check_take_off(&w->takeoff, &w->model);
    }
    globfree(&found);
}

/* Widths out of a few, so that classes repeat with others between them. */
static double add_columns(struct gw_text *text, int n)
{
    static const int tenths[] = {45, 50, 37, 45, 62};
    int sum = 0;
    gw_text_add(text, ", columns: [");
    for (int i = 0; i < n; i++) {
        const int width = tenths[pick(5)];
        gw_text_addf(text, "%s%d.%d ft", i ? ", " : "", width / 10, width % 10);
        sum += width;
    }
    gw_text_add(text, "]");
    return sum / 10.0;
}

static int add_floors(struct gw_text *text, int stories)
{
    int z = pick(3) * 7;
    gw_text_addf(text, ", floors: [%d ft", z);
    for (int i = 1; i < stories; i++) gw_text_addf(text, ", %d ft", z += 9 + pick(6));
    gw_text_add(text, "]");
    return z;
}

/* The roof line through the last story, at a floor, or above the wall. */
static const char *random_wall(struct world *w)
{
    static const char *const ends[] = {"corner", "none", "reentrant", "{corner_at: 4 ft}"};
    static const char *const rows[] = {
        "{height: rest, lite: vision}", "{height: 3 ft, lite: spandrel}, {height: rest, lite: vision}",
        "{height: 2 ft, lite: spandrel}, {height: rest, lite: vision}, {height: 18 in, lite: vision}"};
    struct gw_text text, head;
    gw_text_init(&text, &w->arena);
    gw_text_init(&head, &w->arena);
    const double width = add_columns(&text, 1 + pick(14));
    const int last = add_floors(&text, 1 + pick(7)), top = last + 8 + pick(5), roof = last + 1 + pick(top - last + 6);
    gw_text_addf(&text, ", top: %d ft, ends: [%s, %s], rows: [%s]", top, ends[pick(4)], ends[pick(4)], rows[pick(3)]);
    if (pick(3) == 0) gw_text_addf(&text, ", anchors: [%d.5 ft, %d ft]", last + 1, last + 5);
    gw_text_addf(
        &head,
        "buildings: [{name: b, roof_height: %d ft, least_width: %d ft, enclosure: enclosed, parapet_height: 12 "
        "ft}]\noptions: {edge_zone: %s}\nwalls: [{name: w, width: %d.%d ft",
        roof, 20 + pick(100), pick(2) ? "by_area" : "any_part", (int)(width + 0.01), (int)(width * 10 + 0.5) % 10);
    return gw_format(&w->arena, "%s%s%s}]\n", HEAD, head.at, text.at);
}

static void random_walls(void **state)
{
    enum { WALLS = 200 };
    struct world *w = *state;
    draw_from(20);
    size_t cut = 0;
    for (int i = 0; i < WALLS; i++) {
        w->n_files = 0;
        must_take_off(w, random_wall(w));
        check_take_off(&w->takeoff, &w->model);
        for (int s = 0; s < GW_SORT_COUNT; s++) cut += w->takeoff.grids.items[0]->layers[s].cut;
    }
    assert_true(cut > WALLS);
}

/* Openings ----------------------------------------------------------------------------------------------------------
 */

#define SCHEDULE                                                                                                       \
    "buildings: [{name: tower, roof_height: 120 ft, least_width: 100 ft, enclosure: enclosed}]\n"                      \
    "elevations: [{name: n, width: 90 ft, ends: [corner, corner]}]\n"                                                  \
    "openings: {file: schedule.csv, columns: {mark: Tag}}\n"

static const struct gw_element *of_mark(const struct world *w, enum gw_sort sort, const char *mark)
{
    for (size_t i = 0; i < w->takeoff.elements.n; i++) {
        const struct gw_element *e = &w->takeoff.elements.items[i];
        if (e->sort == sort && strcmp(e->mark, mark) == 0) return e;
    }
    return NULL;
}

/* Two of a mark at 20 and 30 ft, which are one group; then one nearer to the corner, and one without a place. */
static void openings_have_rectangles(void **state)
{
    struct world *w = *state;
    put_file(w, "schedule.csv",
             "Tag,wall,width,height,count,sill,offset,lite\r\nA,n,5 ft,6 ft,4,10 ft,20 ft,vision\r\n"
             "A,n,5 ft,6 ft,1,10 ft,30 ft,vision\r\nA,n,5 ft,6 ft,2,10 ft,1 ft,vision\r\n"
             "B,n,5 ft,6 ft,3,10 ft,,vision\r\n");
    must_take_off(w, HEAD SCHEDULE);
    const struct gw_takeoff *t = &w->takeoff;
    check_take_off(t, &w->model);
    const struct gw_element *e = of_mark(w, GW_SORT_LITE, "A"), *line = of_mark(w, GW_SORT_MULLION, "A");
    struct gw_pieces pieces = gw_takeoff_pieces(t, e);
    struct gw_rectangle r;
    assert_int_equal(e->count, 5);
    assert_true(gw_pieces_next(&pieces, &r));
    assert_rectangle(&r, 20 * FT, 25 * FT, 10 * FT, 16 * FT);
    assert_int_equal(r.count, 4);
    assert_ptr_equal(r.opening, &w->model.openings.items[0]);
    assert_true(gw_pieces_next(&pieces, &r));
    assert_rectangle(&r, 30 * FT, 35 * FT, 10 * FT, 16 * FT);
    assert_int_equal(r.count, 1);
    assert_false(gw_pieces_next(&pieces, &r));
    pieces = gw_takeoff_pieces(t, line);
    assert_true(gw_pieces_next(&pieces, &r));
    assert_rectangle(&r, 20 * FT, 22.5 * FT, 10 * FT, 16 * FT);
    assert_true(gw_pieces_next(&pieces, &r));
    assert_rectangle(&r, 22.5 * FT, 25 * FT, 10 * FT, 16 * FT);
    pieces = gw_takeoff_pieces(t, of_mark(w, GW_SORT_LITE, "B"));
    assert_true(gw_pieces_next(&pieces, &r));
    assert_false(r.placed || gw_given(r.x) || gw_given(r.y));
    assert_int_equal(r.count, 3);
    assert_near(r.width, 5 * FT, 1e-12);
}

/* An opening stands below the roof, whatever its height; a wall of the project and an elevation of the schedule may
 * have one name: ids go on, the grid is the wall's. */
static void openings_beside_a_wall_of_their_name(void **state)
{
    struct world *w = *state;
    put_file(w, "schedule.csv",
             "Tag,wall,width,height,sill,offset,lite\r\nvision,south,5 ft,9 ft,11 ft,20 ft,vision\r\n");
    must_take_off(w, HEAD LOW_BUILDING LOW_WALL "openings: {file: schedule.csv, columns: {mark: Tag}}\n");
    const struct gw_takeoff *t = &w->takeoff;
    check_take_off(t, &w->model);
    assert_int_equal(t->n_walls, 1);
    assert_int_equal(t->grids.n, 2);
    assert_int_equal(t->n_elevations, 1);
    assert_int_equal(t->grids.items[0]->elevation, t->grids.items[1]->elevation);
    assert_null(gw_takeoff_wall(t, "south")->opening);
    const struct gw_element *e = &t->elements.items[t->n_wall_elements];
    assert_string_equal(e->wall, "south");
    assert_ptr_equal(gw_takeoff_find(t, e->id), e);
    assert_true(strtol(strrchr(e->id, '/') + 1, NULL, 10) > 1);
    assert_false(e->parapet || e->lines->has_roof);
    assert_true(gw_below_roof(e->lines, 45 * FT));
    assert_false(gw_cut_at_roof(e->lines, 36 * FT, 45 * FT));
    assert_null(gw_takeoff_other_part(t, e));
    const struct gw_wall_lines *wall = &gw_takeoff_wall(t, "south")->lines;
    assert_true(gw_cut_at_roof(wall, 36 * FT, 45 * FT));
    assert_false(gw_cut_at_roof(wall, 36 * FT, 40 * FT));
    assert_false(gw_below_roof(wall, 40 * FT));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(demo_walls),
        WORLD_TEST(random_walls),
        WORLD_TEST(openings_have_rectangles),
        WORLD_TEST(openings_beside_a_wall_of_their_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
