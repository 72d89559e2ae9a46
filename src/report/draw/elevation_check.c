/* What a candidate shows of a wall: the verdict of each lite with all that holds it, its use by row and zone. */
#include "report/draw/elevation.h"
#include "report/draw/pictures.h"
#include "report/page.h"

#include <string.h>

static const struct gw_pattern ASK = {45, 6, 1, GW_INK, false, false}, NOT_ASKED = {0, 9.1, 1.7, GW_INK, true, false};
/* By enum gw_verdict. */
const struct elevation_class gw_verdict_classes[] = {
    [GW_NOT_SHOWN] = {"not shown", {.fill = "#e8b260", .pattern = &ASK}, "not shown", MARK_ASK, false},
    [GW_PASS] = {"pass", {.fill = "#c5e4f4"}, "pass", MARK_SETTLED, false},
    [GW_FAIL] = {"fail", {.fill = GW_INK_FAIL}, "fail", MARK_STOP, true},
    [GW_NOT_REQUIRED] =
        {"not required", {.fill = GW_PAPER, .pattern = &NOT_ASKED}, "not required", MARK_NOT_ASKED, false},
};

const size_t gw_verdict_order[] = {GW_FAIL, GW_NOT_SHOWN, GW_PASS, GW_NOT_REQUIRED};

enum { FLAGS = 6 };
struct verdicts {
    const struct wall_picture *of;
    struct gw_arena *arena;
    enum gw_units shown;
    const struct gw_finding **worst; /* by element of the grid, from its first: the gravest; NULL: none */
    enum gw_verdict **by_piece;      /* by the same, of lites: of each of its places; NULL: none is judged */
    struct elevation_flag flags[FLAGS];
    size_t n_flags;
};

static bool is_of_wall(const struct verdicts *v, const struct gw_finding *f)
{
    return f->candidate == v->of->candidate && f->demand->element && f->demand->element->grid == v->of->grid;
}

static const struct gw_finding *worst_of(const struct verdicts *v, const struct gw_element *e)
{
    return v->worst[e->index - v->of->grid->first_element];
}

/* Places of its class along the wall. */
static size_t pieces_of(const struct gw_element *e)
{
    const struct gw_grid_axis *axis = e->grid->layers[GW_SORT_LITE].axis;
    return axis->first[e->place_class + 1] - axis->first[e->place_class];
}

static bool is_worse(enum gw_verdict a, enum gw_verdict b)
{
    static const int gravity[] = {[GW_FAIL] = 3, [GW_NOT_SHOWN] = 2, [GW_PASS] = 1, [GW_NOT_REQUIRED] = 0};
    return gravity[a] > gravity[b];
}

static void take_pieces(struct verdicts *v, const struct gw_finding *f)
{
    const struct gw_element *e = f->demand->element;
    enum gw_verdict **of = &v->by_piece[e->index - v->of->grid->first_element];
    const size_t n = e->kind == GW_LITE ? pieces_of(e) : 0;
    if (!n) return;
    if (!*of) {
        *of = gw_alloc(v->arena, n, sizeof **of);
        for (size_t i = 0; i < n; i++) (*of)[i] = GW_NOT_REQUIRED;
    }
    for (size_t i = 0; i < n; i++) {
        const enum gw_verdict own = gw_verdict_of_piece(f, i);
        if (is_worse(own, (*of)[i])) (*of)[i] = own;
    }
}

static void gather(struct verdicts *v)
{
    const struct gw_judgement *j = &v->of->results->answer->judgement;
    v->worst = gw_alloc(v->arena, v->of->grid->n_elements + 1, sizeof *v->worst);
    v->by_piece = gw_alloc(v->arena, v->of->grid->n_elements + 1, sizeof *v->by_piece);
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        if (!is_of_wall(v, f)) continue;
        const struct gw_finding **worst = &v->worst[f->demand->element->index - v->of->grid->first_element];
        if (gw_graver(f, *worst)) *worst = f;
        take_pieces(v, f);
    }
}

static bool flagged(const struct verdicts *v, const struct gw_finding *f)
{
    const char *title = f->demand->check->title;
    for (size_t i = 0; i < v->n_flags; i++)
        if (strstr(v->flags[i].first, title)) return true;
    return false;
}

/* Where its derivation stands in the report; else what prints it. */
static const char *steps_of(const struct verdicts *v, const struct gw_finding *f)
{
    const struct gw_derivations *all = &v->of->results->derivations;
    for (size_t i = 0; i < all->list.n; i++)
        if (all->list.items[i].finding && all->list.items[i].finding->candidate == f->candidate &&
            all->list.items[i].finding->demand == f->demand)
            return gw_format(v->arena, ". Steps: D%zu, or explain %s", i + 1, all->list.items[i].element->id);
    return "";
}

static struct elevation_flag flag_of(const struct verdicts *v, const struct gw_finding *f)
{
    struct gw_text use;
    gw_text_init(&use, v->arena);
    if (f->verdict == GW_FAIL) gw_add_utilization(&use, f->utilization);
    return (struct elevation_flag){
        .element = f->demand->element,
        .first = gw_format(v->arena, "%s%s%s: %s", gw_verdict_name(f->verdict), use.length ? " " : "",
                           use.length ? use.at : "", f->demand->check->title),
        .second = gw_format(v->arena, "%s: %s%s", f->demand->where, gw_message_text(v->arena, &f->message, v->shown),
                            steps_of(v, f))};
}

/* Of each check that fails, then that is not shown, its gravest place on this wall. */
static void call_out(struct verdicts *v, enum gw_verdict verdict)
{
    const struct gw_judgement *j = &v->of->results->answer->judgement;
    while (v->n_flags < FLAGS) {
        const struct gw_finding *next = NULL;
        for (size_t i = 0; i < j->findings.n; i++) {
            const struct gw_finding *f = &j->findings.items[i];
            if (is_of_wall(v, f) && f->verdict == verdict && !f->link && !flagged(v, f) && gw_graver(f, next)) next = f;
        }
        if (!next) return;
        v->flags[v->n_flags++] = flag_of(v, next);
    }
}

static size_t class_of(const void *context, const struct gw_element *e)
{
    const struct gw_finding *f = worst_of(context, e);
    return f ? f->verdict : GW_NOT_REQUIRED;
}

/* Of alike lites those that lean on what fails, and no others. */
static size_t class_at(const void *context, const struct gw_element *e, size_t place)
{
    const struct verdicts *v = context;
    const struct gw_grid_axis *axis = e->grid->layers[GW_SORT_LITE].axis;
    const enum gw_verdict *pieces = v->by_piece[e->index - v->of->grid->first_element];
    for (size_t i = 0; pieces && i < pieces_of(e); i++)
        if (axis->members[axis->first[e->place_class] + i] == place) return pieces[i];
    return class_of(context, e);
}

static void count_lites(const struct verdicts *v, const struct gw_element *e, long counts[4])
{
    const enum gw_verdict *pieces = v->by_piece[e->index - v->of->grid->first_element];
    const long n = (long)pieces_of(e);
    if (!pieces || n != e->count) counts[class_of(v, e)] += e->count;
    else
        for (long i = 0; i < n; i++) counts[pieces[i]]++;
}

static void cell(struct gw_text *out, const void *context, const struct gw_element *const *lites, size_t n,
                 size_t column)
{
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = lites[i]->zone == (column ? 5 : 4) ? worst_of(context, lites[i]) : NULL;
        if (f && gw_graver(f, worst)) worst = f;
    }
    if (!worst) return;
    if (worst->verdict == GW_NOT_SHOWN) gw_text_add(out, "ask");
    else if (worst->verdict == GW_NOT_REQUIRED) gw_text_add(out, "none");
    else gw_add_utilization(out, worst->utilization);
}

static const char *described(const struct verdicts *v)
{
    long counts[4] = {0};
    const struct gw_wall_grid *g = v->of->grid;
    const struct gw_takeoff *t = v->of->results->answer->takeoff;
    for (size_t i = 0; i < g->n_elements; i++) {
        const struct gw_element *e = &t->elements.items[g->first_element + i];
        if (e->kind == GW_LITE) count_lites(v, e, counts);
    }
    return gw_format(v->arena,
                     "Elevation of wall %s, %s: with %s, of its lites and panes cut by the roof line %ld fail, "
                     "%ld are not shown, %ld pass.",
                     g->wall, gw_elevation_size(v->arena, g), v->of->candidate->name, counts[GW_FAIL],
                     counts[GW_NOT_SHOWN], counts[GW_PASS]);
}

enum gw_status gw_draw_elevation_check(struct gw_canvas *canvas, const void *of, enum gw_units shown,
                                       struct gw_engine *engine)
{
    static const char *const heads[][2] = {{"zone 4", "use"}, {"zone 5", "use"}};
    struct verdicts v = {.of = of, .arena = canvas->arena, .shown = shown};
    const char *candidate = gw_safe(canvas->arena, v.of->candidate->name);
    (void)engine;
    gather(&v);
    call_out(&v, GW_FAIL);
    call_out(&v, GW_NOT_SHOWN);
    const struct elevation e = {
        .takeoff = v.of->results->answer->takeoff,
        .grid = v.of->grid,
        .context = &v,
        .title =
            gw_format(canvas->arena, "Wall %s: where %s answers", gw_safe(canvas->arena, v.of->grid->wall), candidate),
        .second = gw_project_line(canvas->arena, v.of->results),
        .caption = gw_format(canvas->arena, "Verdict of each lite with what holds it: %s", candidate),
        .note = "The figures are use, required over provided, rounded up; up to 1.00 passes. ask: not shown.",
        .described = described(&v),
        .key = "Verdict",
        .classes = gw_verdict_classes,
        .n_classes = sizeof gw_verdict_classes / sizeof *gw_verdict_classes,
        .order = gw_verdict_order,
        .class_of = class_of,
        .class_at = class_at,
        .heads = heads,
        .n_columns = 2,
        .cell = cell,
        .flags = v.flags,
        .n_flags = v.n_flags};
    gw_draw_elevation(canvas, &e, shown);
    return GW_OK;
}
