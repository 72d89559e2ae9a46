/* One element's pressure, step by step, as an engineer writes it. */
#include "report/explain.h"
#include "base/tolerance.h"
#include "report/draw/pictures.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/steps.h"
#include "report/view.h"

#include <string.h>

static void head(struct page *page, const struct gw_element *e)
{
    const char *opening = e->grid->opening ? "opening " : "",
               *lite = e->grid->opening && e->lite ? gw_format(page->arena, ", lite type %s", e->lite) : "";
    const char *what = *e->mark ? gw_format(page->arena, " (%s%s%s)", opening, e->mark, lite) : "";
    gw_report_heading(page->report, 1, gw_format(page->arena, "%s: %s%s", e->id, gw_kind_names[e->kind], what));
    gw_report_line(page->report, gw_format(page->arena, "Project %s, wall %s, building %s, %ld of these%s%s",
                                           page->results->answer->model->project.project->name, e->wall,
                                           e->building ? e->building->name : "?", e->count,
                                           *e->columns ? ", columns " : "", e->columns));
    gw_report_line(page->report, gw_format(page->arena, "%s wide, %s high, from %s to %s above ground, zone %d%s%s",
                                           gw_quantity_text(page, GW_LENGTH, e->width, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->height, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->bottom, NEAREST),
                                           gw_quantity_text(page, GW_LENGTH, e->top, NEAREST), e->zone,
                                           e->parapet ? ", above the roof line" : "",
                                           e->place_unknown ? ", place unknown: taken at the worst" : ""));
    if (e->kind == GW_LITE && e->pane > e->height + GW_HAIR_M)
        gw_report_line(page->report,
                       gw_format(page->arena,
                                 "Part of a pane %s high that crosses the roof line: its glass is that of "
                                 "the whole pane",
                                 gw_quantity_text(page, GW_LENGTH, e->pane, NEAREST)));
    if (gw_given(e->corner_distance))
        gw_report_line(page->report, gw_format(page->arena, "Nearest outside corner: %s",
                                               gw_quantity_text(page, GW_LENGTH, e->corner_distance, NEAREST)));
    gw_report_line(page->report, gw_format(page->arena, "Effective wind area: %s",
                                           gw_quantity_text(page, GW_AREA, e->effective_area, NEAREST)));
}

/* Steps are numbered through, whatever derivation they are of. */
struct walk {
    struct page page;
    size_t number;
    const char *of; /* "south/lite/2: " where several stand on one page; "" */
};

static void part(struct walk *walk, const char *title)
{
    gw_report_section(walk->page.report, GW_PART_DERIVATIONS, gw_format(walk->page.arena, "%s%s", walk->of, title));
}

static void steps(struct walk *walk, const struct gw_trace *trace)
{
    walk->number = gw_put_steps(&walk->page, trace, walk->number);
}

/* A line of the table of pressures: the element at one level. */
struct level {
    const char *name;
    double inward, outward;
};
static const struct gw_field LEVEL[] = {
    {.key = "name", .type = GW_T_TEXT, .offset = offsetof(struct level, name)},
    {.key = "inward", .type = GW_T_NUMBER, .dim = GW_PRESSURE, .offset = offsetof(struct level, inward)},
    {.key = "outward", .type = GW_T_NUMBER, .dim = GW_PRESSURE, .offset = offsetof(struct level, outward)},
};
static const struct gw_record LEVEL_RECORD = {
    .name = "level", .size = sizeof(struct level), .fields = LEVEL, .n = sizeof LEVEL / sizeof *LEVEL};
static const struct view_column LEVEL_COLUMNS[] = {COLUMN("Level", "name"), COLUMN("Inward", "inward", .rounding = UP),
                                                   COLUMN("Outward", "outward", .rounding = UP)};
static const struct view LEVELS = VIEW(&LEVEL_RECORD, LEVEL_COLUMNS);

static void design_values(struct walk *walk, const struct gw_element *e)
{
    struct page *page = &walk->page;
    const struct level all[] = {{"strength (1.0 W)", e->inward.pa, e->outward.pa},
                                {"allowable stress (0.6 W)", e->inward_asd.pa, e->outward_asd.pa},
                                {"deflection", e->inward_deflection, e->outward_deflection}};
    bool framing = e->kind == GW_MULLION || e->kind == GW_TRANSOM;
    struct level given[3];
    size_t n = 0;
    for (size_t i = 0; i < (framing ? 3 : 2); i++)
        if (gw_given(all[i].inward) || gw_given(all[i].outward)) given[n++] = all[i];
    part(walk, "Design pressures");
    gw_view_list(page, "", &LEVELS, given, n);
    gw_report_line(page->report, gw_format(page->arena, "Governs: %s", e->governs));
}

static const char *fault_text(const struct page *page, const struct gw_fault *fault)
{
    return gw_fault_text(page->arena, fault, page->shown);
}

static void glass(struct walk *walk, const struct gw_explained_glass *d, const char *make_up)
{
    struct page *page = &walk->page;
    const struct gw_lite_result *r = &d->result;
    part(walk, gw_format(page->arena, "Glass%s%s: %s", d->candidate ? ", as chosen for " : "",
                         d->candidate ? d->candidate->name : "", make_up));
    steps(walk, &d->trace);
    if (d->status != GW_OK) {
        gw_report_line(page->report,
                       gw_format(page->arena, "The computation stops here: %s", fault_text(page, &d->engine.fault)));
        return;
    }
    if (!r->standard.covered)
        gw_report_line(page->report,
                       gw_format(page->arena, "Standard's factors: %s", fault_text(page, &r->standard.why_not)));
    if (!r->principles.covered)
        gw_report_line(page->report,
                       gw_format(page->arena, "First principles: %s", fault_text(page, &r->principles.why_not)));
    for (int i = 0; i < r->n_notes; i++) gw_report_line(page->report, r->notes[i]);
    gw_report_line(page->report,
                   gw_format(page->arena, "%s of %s against %s by %s: %s. The center bends %s%s.", r->load.name,
                             gw_quantity_text(page, GW_PRESSURE, fabs(r->load.pressure), UP),
                             gw_quantity_text(page, GW_PRESSURE, r->resistance, DOWN),
                             r->governing == GW_ROUTE_STANDARD ? "the standard's factors" : "first principles", r->why,
                             gw_quantity_text(page, GW_THICKNESS, r->deflection, UP),
                             r->standard.covered && r->principles.covered ? " (the larger of both computations)" : ""));
}

/* A row of what a test was compared by. */
static void add_compared(struct page *page, const struct gw_compared *c)
{
    const char *none = "not recorded";
    const enum rounding tested = c->at_most ? UP : DOWN, needed = c->at_most ? DOWN : UP;
    gw_report_cell(page->report, c->what);
    gw_report_cell(page->report, c->tested_as          ? c->tested_as
                                 : gw_given(c->tested) ? gw_quantity_text(page, c->dim, c->tested, tested)
                                                       : none);
    gw_report_cell(page->report, c->needed_as ? c->needed_as : gw_quantity_text(page, c->dim, c->needed, needed));
    gw_report_toned(page->report, c->holds ? GW_GOOD : GW_DOUBTFUL, c->holds ? "covered" : "not covered");
}

static void compared(struct page *page, const struct gw_comparisons *c)
{
    if (!c->list.n) return;
    const char *report = c->rating && c->rating->report ? c->rating->report : "Report not named";
    struct gw_report_column *columns = gw_alloc(page->arena, 4, sizeof *columns);
    columns[0].title = "What";
    columns[1] = (struct gw_report_column){.title = gw_format(page->arena, "Tested (%s)", report), .right = true};
    columns[2] = (struct gw_report_column){.title = "Here", .right = true};
    columns[3].title = "Test";
    gw_report_table(page->report, gw_format(page->arena, "%s: what was tested, what is here", report), columns, 4);
    for (size_t i = 0; i < c->list.n; i++) add_compared(page, &c->list.items[i]);
}

/* "pass, 120 lb required, 300 lb provided: ..."; of a limit "pass, limit 1 in, here 0.7343 in: ..." */
static void conclude(struct page *page, const char *lead, const struct gw_finding *f)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_text_addf(&out, "%s%s", lead, gw_verdict_name(f->verdict));
    if (gw_given(f->required)) gw_text_addf(&out, ", %s%s", gw_as_required(page, f), f->at_most ? "" : " required");
    if (gw_given(f->provided)) gw_text_addf(&out, ", %s%s", gw_as_provided(page, f), f->at_most ? "" : " provided");
    gw_text_addf(&out, ": %s", gw_message_text(page->arena, &f->message, page->shown));
    gw_report_line(page->report, out.at);
}

/* Links of one check that no test shows for one reason, with the gravest of them. */
struct untested_row {
    const struct gw_finding *worst;
    const char *reason; /* without its figures */
    size_t n;
};

static const char *shape_of(struct page *page, const struct gw_message *message)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_message_shape(&out, message);
    return out.length ? out.at : "";
}

static size_t gather_untested(struct page *page, struct untested_row *rows, const struct gw_explained_link *l)
{
    size_t n = 0, k;
    for (size_t i = 0; i < l->untested.n; i++) {
        const struct gw_finding *f = l->untested.items[i];
        const char *reason = shape_of(page, &f->untested);
        for (k = 0; k < n; k++)
            if (rows[k].worst->demand->check == f->demand->check && strcmp(rows[k].reason, reason) == 0) break;
        if (k == n) rows[n++] = (struct untested_row){f, reason, 0};
        else if (gw_graver(f, rows[k].worst)) rows[k].worst = f;
        rows[k].n++;
    }
    return n;
}

/* The links that no test shows, and what calculation says of them. */
static void untested(struct page *page, const struct gw_explained_link *l)
{
    static const struct gw_report_column columns[] = {{.title = "Link on its path"},
                                                      {.title = "At"},
                                                      {.title = "Verdict"},
                                                      {.title = "Use", .right = true},
                                                      {.title = "Why no test shows it"}};
    struct untested_row *rows = gw_alloc(page->arena, l->untested.n + 1, sizeof *rows);
    const size_t n = gather_untested(page, rows, l);
    if (!n) return;
    gw_report_table(page->report, "Links on its path that no test shows", columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < n; i++) {
        const struct gw_finding *f = rows[i].worst;
        struct gw_text use;
        gw_text_init(&use, page->arena);
        gw_add_use(&use, f);
        gw_report_cell(page->report, f->demand->check->id);
        gw_report_cell(page->report, rows[i].n == 1
                                         ? f->demand->where
                                         : gw_format(page->arena, "%s and %zu more", f->demand->where, rows[i].n - 1));
        gw_report_toned(page->report, gw_verdict_tone((int)f->verdict), gw_verdict_name(f->verdict));
        gw_report_cell(page->report, use.length ? use.at : "");
        gw_report_cell(page->report, gw_message_text(page->arena, &f->untested, page->shown));
    }
    gw_page_how_found(page, rows[0].worst->demand->element, "");
}

static void linked(struct walk *walk, const struct gw_explained_link *l)
{
    struct page *page = &walk->page;
    const struct gw_finding *f = &l->finding;
    if (!l->calculated || page->results->all) steps(walk, &l->trace); /* else the calculation repeats them */
    compared(page, &l->compared);
    conclude(page, "", f);
    untested(page, l);
    if (!l->calculated) return;
    gw_report_heading(page->report, 3, "By calculation, beside the test");
    steps(walk, &l->calculation);
    conclude(page, "By calculation: ", l->calculated);
}

static void link(struct walk *walk, const struct gw_explained_link *l)
{
    const struct gw_finding *f = &l->finding;
    part(walk, gw_format(walk->page.arena, "%s: %s", f->candidate->name, f->demand->check->title));
    linked(walk, l);
}

static const struct view_column ROW_COLUMNS[] = {COLUMN("Table", "table"), COLUMN("Row", "row"),
                                                 COLUMN("Basis", "basis_for_people", .tone = gw_basis_tone),
                                                 COLUMN("Source", "source")};
static const struct view ROWS = VIEW(&gw_row_record, ROW_COLUMNS);

/* Of many candidates the first few have theirs on the page. */
/* The first stands on the first page. */
static void first_picture(struct page *page, const struct gw_pictures *all)
{
    if (page->report->pictures && all->n) gw_report_figure(page->report, &all->items[0].figure);
}

static void other_pictures(struct page *page, const struct gw_pictures *all)
{
    enum { FEW = 3 };
    const size_t shown = page->results->all || all->n < FEW ? all->n : FEW;
    if (!page->report->pictures) return;
    for (size_t i = 1; i < shown; i++) gw_report_figure(page->report, &all->items[i].figure);
    if (shown < all->n)
        gw_report_line(page->report,
                       gw_format(page->arena,
                                 "And %zu more drawings: --drawing list names them, -o FILE.svg --drawing "
                                 "NAME writes one; --all shows all of them.",
                                 all->n - shown));
}

static void explain_one(struct walk *walk, const struct explained *x)
{
    struct page *page = &walk->page;
    head(page, x->of->element);
    gw_page_chosen_at(page, x->of->element);
    first_picture(page, &x->pictures);
    part(walk, "Wind");
    steps(walk, &x->of->trace);
    if (x->of->status != GW_OK)
        gw_report_line(page->report,
                       gw_format(page->arena, "The computation stops here: %s.", gw_status_code(x->of->status)));
    design_values(walk, x->of->element);
    if (x->of->glass) glass(walk, x->of->glass, x->make_up);
    other_pictures(page, &x->pictures);
    for (size_t i = 0; i < x->of->links.n; i++) link(walk, &x->of->links.items[i]);
    if (!page->results->sources) return;
    part(walk, "Rows of the tables that it rests on");
    gw_view_table(page, "", &ROWS, (const void *const *)x->rows.items, x->rows.n);
}

/* Derivations of a report ------------------------------------------------------------------------------------------ */

static const char *derivation_title(struct page *page, const struct gw_derivation *d, size_t number)
{
    const struct gw_finding *f = d->finding;
    if (!f)
        return gw_format(page->arena, "D%zu Greatest outward pressure on a lite: %s, %s at strength level", number,
                         d->element->id, gw_quantity_text(page, GW_PRESSURE, -d->element->outward.pa, UP));
    const char *asked = gw_as_required(page, f), *has = gw_as_provided(page, f);
    return gw_format(page->arena, "D%zu %s: %s at %s%s%s%s%s", number, f->candidate->name, f->demand->check->title,
                     f->demand->where, *asked ? ", asked " : "", asked, *has ? ", here " : "", has);
}

void gw_page_derivations(struct page *page)
{
    const struct gw_derivations *all = &page->results->derivations;
    struct walk walk = {.page = *page, .of = ""};
    for (size_t i = 0; i < all->list.n; i++) {
        const struct gw_derivation *d = &all->list.items[i];
        part(&walk, derivation_title(page, d, i + 1));
        if (d->link) linked(&walk, d->link);
        if (d->of->lines.n && d->finding)
            gw_page_picture(page, &page->results->pictures,
                            gw_format(page->arena, "mullion:%s:%s", gw_picture_word(page->arena, d->element->id),
                                      gw_picture_word(page->arena, d->finding->candidate->name)));
        if (!d->link) steps(&walk, &d->of->trace);
        else gw_page_how_found(page, d->element, "So come about the pressures that it starts from.");
    }
    if (all->list.n)
        gw_report_line(page->report, gw_format(page->arena,
                                               "Every other figure: %s. All digits are carried; what is printed is "
                                               "rounded.",
                                               gw_explain_command(page, NULL)));
}

/* Foot ------------------------------------------------------------------------------------------------------------- */

struct explained_all {
    const struct gw_results *results;
    const struct explained *items;
    size_t n;
};

static void foot(struct page *page, const struct explained_all *all)
{
    const struct gw_results *r = all->results;
    struct gw_results own = *r;
    struct gw_used used = all->items[0].of->used;
    own.assumptions.items = gw_alloc(page->arena, r->assumptions.n + 1, sizeof *own.assumptions.items);
    own.assumptions.n = 0;
    for (size_t i = 0; i < r->assumptions.n; i++) {
        bool counts = false;
        for (size_t k = 0; k < all->n && !counts; k++)
            counts = gw_concerns_element(r->assumptions.items[i], r->answer, all->items[k].of->element);
        if (counts || r->all) own.assumptions.items[own.assumptions.n++] = r->assumptions.items[i];
    }
    for (size_t k = 1; k < all->n; k++) gw_used_merge(&used, &all->items[k].of->used);
    struct page last = *page;
    last.results = &own;
    gw_page_foot(&last, &used);
}

/* "3 lites at this place: ...": first, so that nobody takes the first of them for all. */
static void name_all(struct page *page, const struct explained_all *all)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_text_addf(&out, "%zu %ss at this place: ", all->n, gw_kind_names[all->items[0].of->element->kind]);
    for (size_t i = 0; i < all->n; i++) {
        const struct gw_element *e = all->items[i].of->element;
        gw_text_addf(&out, "%s%s, from %s to %s", i ? "; " : "", e->id,
                     gw_quantity_text(page, GW_LENGTH, e->bottom, NEAREST),
                     gw_quantity_text(page, GW_LENGTH, e->top, NEAREST));
    }
    gw_report_line(page->report, out.at);
}

static void explain_all_page(struct gw_report *report, const struct gw_result *result)
{
    const struct explained_all *all = result->value;
    struct walk walk = {.page = gw_page_of(report, all->results), .of = ""};
    if (all->n > 1) name_all(&walk.page, all);
    for (size_t i = 0; i < all->n; i++) {
        if (all->n > 1) walk.of = gw_format(report->arena, "%s: ", all->items[i].of->element->id);
        explain_one(&walk, &all->items[i]);
    }
    foot(&walk.page, all);
}

static void explain_page(struct gw_report *report, const struct gw_result *result)
{
    const struct explained *x = result->value;
    const struct explained_all alone = {x->results, x, 1};
    struct gw_result as_page = *result;
    as_page.value = &alone;
    explain_all_page(report, &as_page);
}

static void list_rows(struct explained *x, struct gw_arena *arena)
{
    size_t n = 0;
    for (unsigned i = 0; gw_used_next(&x->of->used, &i); i++) n++;
    x->rows.items = gw_alloc(arena, n + 1, sizeof(const struct gw_row *));
    for (unsigned i = 0; gw_used_next(&x->of->used, &i); i++)
        x->rows.items[x->rows.n++] = gw_table_row_at(x->results->answer->model->tables, i);
}

static const char *make_up(const struct gw_results *r, const struct gw_lite_type *type, struct gw_arena *arena)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_layers_say(&text, type->layers.items, type->layers.n, r->shown, r->answer->model->tables);
    return text.at;
}

static void keep(struct explained *x, struct gw_arena *arena, const struct gw_results *r,
                 const struct gw_explanation *explanation)
{
    struct gw_explanation *kept = gw_alloc(arena, 1, sizeof *kept);
    x->results = r;
    *kept = *explanation;
    x->of = kept;
    if (x->of->glass) x->make_up = make_up(r, x->of->glass->type, arena);
    list_rows(x, arena);
    gw_pictures_of_explanation(&x->pictures, arena, r, kept, NULL);
}

struct gw_result gw_result_explain(struct gw_arena *arena, const struct gw_results *r,
                                   const struct gw_explanation *explanation)
{
    struct explained *x = gw_alloc(arena, 1, sizeof *x);
    keep(x, arena, r, explanation);
    return (struct gw_result){.shown = r->shown,
                              .record = &gw_explanation_record,
                              .value = x,
                              .pictures = &x->pictures,
                              .page = explain_page};
}

struct gw_result gw_result_explain_all(struct gw_arena *arena, const struct gw_results *r,
                                       const struct gw_explanation *explanations, size_t n)
{
    struct explained_all *all = gw_alloc(arena, 1, sizeof *all);
    struct explained *items = gw_alloc(arena, n, sizeof *items);
    for (size_t i = 0; i < n; i++) keep(&items[i], arena, r, &explanations[i]);
    *all = (struct explained_all){r, items, n};
    return (struct gw_result){.shown = r->shown, .value = all, .page = explain_all_page};
}
