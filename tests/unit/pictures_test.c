/* Drawings beside the elevations: their figures are those of the take-off, the judgement, the plan. */
#include "drawing.h"

#include "report/draw/heights.h"
#include "report/page.h"

struct drawn {
    struct gw_results results;
    struct gw_answer answer;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
};

static void judge_file(struct drawn *d, struct world *w, const char *path, enum gw_units shown)
{
    *d = (struct drawn){.answer = {0}};
    gw_diags_init(&w->diags, &w->arena);
    assert_true(gw_model_load(&w->model, &w->arena, &w->diags, path, NULL, 0));
    judge(w, &d->results, &d->answer, &d->takeoff, &d->ask, shown);
}

/* Pressure against height ------------------------------------------------------------------------------------------ */

static double greatest(const struct drawn *d, const struct gw_wall_grid *g, int zone, bool inward)
{
    double most = 0;
    for (size_t i = g->first_element; i < g->first_element + g->n_elements; i++) {
        const struct gw_element *e = &d->takeoff.elements.items[i];
        if (e->kind == GW_LITE && e->zone == zone) most = fmax(most, inward ? e->inward_asd.pa : -e->outward_asd.pa);
    }
    return most;
}

/* Ends of the lines of a zone, from zero, in pixels; `dashed`: zone 5. */
static void reach_of(double out[2], const struct gw_canvas *canvas, double zero, bool dashed)
{
    out[0] = out[1] = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        if (s->kind != GW_SHAPE_POLYLINE || s->n < 2 || (s->look.dashes != NULL) != dashed) continue;
        if (s->points[0].y <= s->points[1].y || s->points[0].x != s->points[1].x) continue; /* upward, from the foot */
        for (size_t k = 0; k < s->n; k++) {
            out[0] = fmax(out[0], zero - s->points[k].x);
            out[1] = fmax(out[1], s->points[k].x - zero);
        }
    }
}

static double zero_of(const struct gw_canvas *canvas)
{
    for (size_t i = 0; i < canvas->n; i++)
        if (canvas->shapes[i].kind == GW_SHAPE_TEXT && strcmp(canvas->shapes[i].text, "inward") == 0)
            return canvas->shapes[i].points[0].x - 8;
    fail_msg("no zero");
    return 0;
}

static void check_heights(struct world *w, const struct drawn *d, const struct gw_wall_grid *g, enum gw_units shown)
{
    struct gw_canvas canvas;
    const char *name = gw_format(&w->arena, "heights:%s", gw_picture_word(&w->arena, g->wall));
    draw_named(&canvas, &w->arena, &d->results.pictures, name, shown);
    const double zero = zero_of(&canvas);
    double middle[2], edge[2], per_pa = 0;
    reach_of(middle, &canvas, zero, false);
    reach_of(edge, &canvas, zero, true);
    for (int inward = 0; inward < 2; inward++)
        for (int zone = 4; zone <= 5; zone++) {
            const double most = greatest(d, g, zone, inward), drawn = (zone == 5 ? edge : middle)[inward];
            struct gw_text text;
            if (!(most > 0)) {
                assert_near(drawn, 0, 1e-9);
                continue;
            }
            gw_text_init(&text, &w->arena);
            gw_add_bare(&text, GW_PRESSURE, shown, most, UP);
            assert_in_range(texts_with(&canvas, text.at), 1, 200);
            if (per_pa > 0) assert_near(drawn / most, per_pa, 1e-6 * per_pa);
            per_pa = drawn / most;
        }
}

static void steps_reach_what_the_lites_take(void **state)
{
    struct world *w = *state;
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (size_t i = 0; i < 2; i++)
        for (int shown = GW_US; shown <= GW_SI; shown++) {
            judge_file(d, w, demos[i], (enum gw_units)shown);
            for (size_t k = 0; k < d->takeoff.n_walls; k++)
                check_heights(w, d, d->takeoff.grids.items[k], (enum gw_units)shown);
        }
}

/* Use by check ----------------------------------------------------------------------------------------------------- */

static bool stands(const struct gw_finding *f)
{
    const bool decided = f->verdict == GW_PASS || (f->verdict == GW_FAIL && f->utilization > 1);
    return decided && isfinite(f->utilization);
}

/* The gravest of each check, told by its own walk. */
static size_t bars_of(const struct drawn *d, const struct gw_system *candidate, double *sum)
{
    const struct gw_judgement *j = &d->answer.judgement;
    size_t n = 0;
    *sum = 0;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *worst = &j->findings.items[i];
        bool first = worst->candidate == candidate;
        for (size_t k = 0; k < j->findings.n && first; k++) {
            const struct gw_finding *f = &j->findings.items[k];
            if (f->candidate != candidate || f->demand->check != worst->demand->check ||
                (f->demand->name && strcmp(f->demand->name, worst->demand->name) != 0))
                continue;
            first = k >= i;
            if (!first) break;
            if (gw_graver(f, worst)) worst = f;
        }
        if (!first || !stands(worst)) continue;
        n++;
        *sum += fmin(worst->utilization, 1.25);
    }
    return n;
}

/* Bars stand beside the axis, whose ticks give its scale. */
static void check_use(struct world *w, const struct drawn *d, const struct gw_system *candidate)
{
    struct gw_canvas canvas;
    double zero = 0, one = 0, want, got = 0;
    size_t bars = 0;
    draw_named(&canvas, &w->arena, &d->results.pictures,
               gw_format(&w->arena, "use:%s", gw_picture_word(&w->arena, candidate->name)), GW_US);
    for (size_t i = 0; i < canvas.n; i++) {
        const struct gw_drawn *s = &canvas.shapes[i];
        if (s->kind == GW_SHAPE_TEXT && strcmp(s->text, "0") == 0) zero = s->points[0].x;
        if (s->kind == GW_SHAPE_TEXT && strcmp(s->text, "1.00") == 0 && one <= 0) one = s->points[0].x;
    }
    for (size_t i = 0; i < canvas.n; i++) {
        const struct gw_drawn *s = &canvas.shapes[i];
        if (s->kind != GW_SHAPE_RECTANGLE || fabs(s->points[0].x - zero) > 1e-6) continue;
        bars++;
        got += (s->points[1].x - zero) / (one - zero);
    }
    assert_int_equal(bars, bars_of(d, candidate, &want));
    assert_near(got, want, 1e-6);
}

static void bars_are_the_use_of_what_governs(void **state)
{
    struct world *w = *state;
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    for (size_t i = 0; i < 2; i++) {
        judge_file(d, w, demos[i], GW_US);
        for (size_t k = 0; k < w->model.systems.n; k++) check_use(w, d, &w->model.systems.items[k]);
    }
}

/* Plans ------------------------------------------------------------------------------------------------------------ */

/* Pixels of bars that begin on the axis or at the end of another, and what that comes to. */
static double bars_in(const struct gw_canvas *canvas, double left, double above)
{
    double sum = 0;
    for (size_t i = 0; i < canvas->n; i++) {
        const struct gw_drawn *s = &canvas->shapes[i];
        const bool bar = s->kind == GW_SHAPE_RECTANGLE && s->points[0].x >= left - 1e-6 && s->points[0].y < above;
        if (bar) sum += s->points[1].x - s->points[0].x;
    }
    return sum;
}

static const struct gw_drawn *drawn_words(const struct gw_canvas *canvas, const char *words)
{
    for (size_t i = 0; i < canvas->n; i++)
        if (canvas->shapes[i].kind == GW_SHAPE_TEXT && strcmp(canvas->shapes[i].text, words) == 0)
            return &canvas->shapes[i];
    fail_msg("nowhere '%s'", words);
    return NULL;
}

/* What is told adds up: "92,475.00". */
static const char *to_the_cent(struct world *w, double cost)
{
    const long cents = lround(cost * 100), whole = cents / 100;
    const long millions = whole / 1000000, thousands = whole / 1000 % 1000;
    if (millions) return gw_format(&w->arena, "%ld,%03ld,%03ld.%02ld", millions, thousands, whole % 1000, cents % 100);
    if (thousands) return gw_format(&w->arena, "%ld,%03ld.%02ld", thousands, whole % 1000, cents % 100);
    return gw_format(&w->arena, "%ld.%02ld", whole, cents % 100);
}

/* The bars are the sum but for what is paid once; every place and the sum are told. */
static void check_cost(struct world *w, const struct gw_pictures *pictures, const struct gw_bid *bid)
{
    struct gw_canvas canvas;
    double most = 0;
    draw_named(&canvas, &w->arena, pictures,
               gw_format(&w->arena, "cost:%s", gw_picture_word(&w->arena, bid->candidate->name)), GW_US);
    for (size_t i = 0; i < bid->places.n; i++) {
        assert_in_range(texts_with(&canvas, to_the_cent(w, bid->places.items[i].cost)), 1, 100);
        most = fmax(most, bid->places.items[i].cost);
    }
    const struct gw_drawn *zero = drawn_words(&canvas, "0"), *sum = drawn_words(&canvas, "sum");
    const double drawn = bars_in(&canvas, zero->points[0].x, sum->points[0].y);
    assert_near(drawn / 400 * most, bid->cost - bid->once, 1e-6 * bid->cost); /* the longest is 400 pixels */
}

/* Letters in the ledger of a wall are those below it, and each with its words. */
static void check_plan(struct world *w, const struct gw_pictures *pictures, const struct gw_bid *bid, const char *wall)
{
    struct gw_canvas canvas;
    const char *name = gw_format(&w->arena, "plan:%s:%s", gw_picture_word(&w->arena, wall),
                                 gw_picture_word(&w->arena, bid->candidate->name));
    bool any = false;
    for (size_t p = 0; p < bid->places.n; p++)
        any = any || (strcmp(bid->places.items[p].place->wall, wall) == 0 &&
                      *gw_choice_words(&bid->plan, p, &w->model, &w->arena));
    if (!any) {
        assert_null(gw_picture_named(pictures, name));
        return;
    }
    draw_named(&canvas, &w->arena, pictures, name, GW_US);
    for (size_t p = 0; p < bid->places.n; p++) {
        if (strcmp(bid->places.items[p].place->wall, wall) != 0) continue;
        for (size_t i = 0; i < bid->places.items[p].options.n; i++)
            assert_non_null(strstr(canvas.description, bid->places.items[p].options.items[i].option->name));
    }
    assert_null(strstr(canvas.description, "several")); /* a letter is one choice */
    for (char letter = 'A'; letter <= 'Z'; letter++) {
        const char own[] = {letter, '\0'}, lead[] = {letter, ':', ' ', '\0'};
        bool used = false;
        for (size_t i = 0; i < canvas.n; i++)
            used = used || (canvas.shapes[i].kind == GW_SHAPE_TEXT && strcmp(canvas.shapes[i].text, own) == 0);
        assert_int_equal(used, texts_with(&canvas, lead) > 0);
    }
}

static void plans_are_drawn_as_they_are_chosen(void **state)
{
    struct world *w = *state;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    struct gw_bids bids;
    struct gw_pictures pictures;
    for (size_t i = 0; i < 2; i++) {
        judge_file(d, w, demos[i], GW_US);
        gw_select(&bids, &d->ask, &(struct gw_select_limits){.most = 0});
        gw_answer_bids(&d->answer, &d->ask, &bids);
        gw_results_of(&d->results, &w->arena, &d->answer, GW_US);
        gw_pictures_of_bids(&pictures, &w->arena, &d->results, &bids);
        size_t plans = 0;
        for (size_t b = 0; b < bids.items.n; b++) {
            if (!gw_given(bids.items.items[b].cost)) continue;
            plans++;
            check_cost(w, &pictures, &bids.items.items[b]);
            for (size_t k = 0; k < d->takeoff.n_walls; k++)
                check_plan(w, &pictures, &bids.items.items[b], d->takeoff.grids.items[k]->wall);
        }
        assert_int_equal(plans, 3);
    }
}

/* Elements --------------------------------------------------------------------------------------------------------- */

/* The line shows the moment that the members' demand has; where no stiffness is known, no deflection. */
static void check_line(struct world *w, struct drawn *d, const struct gw_member_demand *m)
{
    struct gw_explanation x;
    struct gw_pictures pictures = {.n = 0};
    struct gw_text most;
    gw_explain(&x, &d->ask, &d->answer.judgement, m->element);
    gw_pictures_of_explanation(&pictures, &w->arena, &d->results, &x, NULL);
    assert_int_equal(pictures.n, w->model.systems.n);
    gw_text_init(&most, &w->arena);
    gw_add_quantity(&most, GW_MOMENT, GW_US, m->moment, UP);
    for (size_t i = 0; i < pictures.n; i++) {
        struct gw_canvas canvas;
        draw_named(&canvas, &w->arena, &pictures, pictures.items[i].name, GW_US);
        assert_in_range(texts_with(&canvas, most.at), 1, 20);
        assert_int_equal(texts_with(&canvas, "Deflection, with the load"), x.lines.items[i]->stiff);
        if (!x.lines.items[i]->stiff) assert_int_equal(texts_with(&canvas, "Deflection is not drawn"), 1);
    }
}

static void lines_show_what_the_mullions_take(void **state)
{
    struct world *w = *state;
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    size_t n = 0;
    judge_file(d, w, "projects/tern-street.yaml", GW_US);
    for (size_t i = 0; i < d->answer.members.n && n < 6; i++) {
        const struct gw_member_demand *m = &d->answer.members.items[i];
        if (m->element->kind != GW_MULLION || !(m->moment > 0)) continue;
        check_line(w, d, m);
        n++;
    }
    assert_int_equal(n, 6);
}

/* The pane that governs, by the explanation's own figures. */
static void lites_show_their_load(void **state)
{
    struct world *w = *state;
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    struct gw_explanation x;
    struct gw_pictures pictures = {.n = 0};
    struct gw_canvas canvas;
    struct gw_text use;
    judge_file(d, w, "projects/tern-street.yaml", GW_US);
    gw_explain(&x, &d->ask, &d->answer.judgement, gw_takeoff_find(&d->takeoff, "east/lite/2"));
    gw_pictures_of_explanation(&pictures, &w->arena, &d->results, &x, NULL);
    assert_int_equal(pictures.n, 1);
    draw_named(&canvas, &w->arena, &pictures, "lite:east-lite-2", GW_US);
    gw_text_init(&use, &w->arena);
    gw_add_utilization(&use, x.glass->result.utilization);
    assert_in_range(texts_with(&canvas, gw_format(&w->arena, "use %s", use.at)), 1, 2);
    assert_int_equal(texts_with(&canvas, "Deflection, in"), 1);
}

/* Sections --------------------------------------------------------------------------------------------------------- */

/* Each tube of the file as one shape with its hole, to one scale; what the file lacks is said. */
static void check_section(struct world *w, const struct drawn *d, const struct gw_system *system)
{
    const struct gw_member_spec *members[] = {system->mullion, system->transom};
    struct gw_canvas canvas;
    size_t tubes = 0, drawn = 0;
    double per_m = 0;
    for (int i = 0; i < 2; i++) tubes += members[i] && members[i]->tube;
    const char *name = gw_format(&w->arena, "section:%s", gw_picture_word(&w->arena, system->name));
    if (!tubes) {
        assert_null(gw_picture_named(&d->results.pictures, name));
        return;
    }
    draw_named(&canvas, &w->arena, &d->results.pictures, name, GW_US);
    for (size_t i = 0; i < canvas.n; i++) {
        const struct gw_drawn *s = &canvas.shapes[i];
        if (s->kind != GW_SHAPE_OUTLINES) continue;
        const struct gw_member_spec *m = members[0] && members[0]->tube && !drawn ? members[0] : members[1];
        const struct gw_point *p = s->outlines[0].points, *q = s->outlines[1].points;
        if (drawn++) assert_near((p[1].x - p[0].x) / m->tube->width, per_m, 1e-6 * per_m);
        per_m = (p[1].x - p[0].x) / m->tube->width;
        assert_near((p[2].y - p[1].y) / m->tube->depth, per_m, 1e-6 * per_m);
        assert_near((q[0].y - p[0].y) / m->tube->flange, per_m, 1e-6 * per_m);
    }
    assert_int_equal(drawn, tubes);
    if (!system->screw || !system->pressure_plate) assert_int_equal(texts_with(&canvas, "Not in the file"), 1);
}

static void sections_are_the_file_s(void **state)
{
    struct world *w = *state;
    static const char *const demos[] = {"projects/tern-street.yaml", "projects/gull-point.yaml"};
    struct drawn *d = gw_alloc(&w->arena, 1, sizeof *d);
    for (size_t i = 0; i < 2; i++) {
        judge_file(d, w, demos[i], GW_US);
        for (size_t k = 0; k < w->model.systems.n; k++) check_section(w, d, &w->model.systems.items[k]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(steps_reach_what_the_lites_take),
        WORLD_TEST(bars_are_the_use_of_what_governs),
        WORLD_TEST(plans_are_drawn_as_they_are_chosen),
        WORLD_TEST(lines_show_what_the_mullions_take),
        WORLD_TEST(lites_show_their_load),
        WORLD_TEST(sections_are_the_file_s),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
