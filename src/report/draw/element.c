/* Drawings of one element of a project: the line of mullions that it is a stretch of, the pane of a lite that governs.
 */
#include "base/tolerance.h"
#include "galeward/plate.h"
#include "report/draw/drawings.h"
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <string.h>

/* Mullions --------------------------------------------------------------------------------------------------------- */

static const char *finding_line(struct sheet *sheet, const struct gw_finding *f)
{
    struct gw_text text;
    gw_text_init(&text, sheet->arena);
    gw_text_addf(&text, "%s: %s", f->demand->check->title, gw_verdict_name(f->verdict));
    if (gw_given(f->required)) {
        gw_text_add(&text, f->at_most ? ", limit " : ", required ");
        gw_add_quantity(&text, f->dim, sheet->shown, f->required, f->at_most ? NEAREST : UP);
    }
    if (gw_given(f->provided)) {
        gw_text_add(&text, f->at_most ? ", here " : ", provided ");
        gw_add_quantity(&text, f->dim, sheet->shown, f->provided, f->at_most ? NEAREST : DOWN);
    }
    if (f->evidence) gw_text_addf(&text, ", by %s", gw_evidence_name(f->evidence));
    gw_text_add(&text, ".");
    return text.at;
}

enum { SAID = 6 };

static size_t said_of(const char *said[SAID], struct sheet *sheet, const struct element_picture *p)
{
    const struct gw_judged_line *line = p->line;
    const struct gw_element *e = p->of->element;
    const bool in = line->direction == GW_INWARD;
    size_t n = 0;
    said[n++] = gw_format(sheet->arena, "%s %s: the mullions of wall %s as one beam, drawn from their lower end at %s.",
                          gw_project_line(sheet->arena, p->results), e->id, gw_safe(sheet->arena, e->wall),
                          gw_sheet_place(sheet, line->bottom));
    said[n++] =
        gw_format(sheet->arena,
                  "Loads: %s, allowable-stress level, each stretch its own pressure times %s carried, so placed "
                  "that they bend this stretch (%s to %s) most. The curves are calculated, whatever a test shows.",
                  in ? "inward" : "outward", gw_sheet_place(sheet, e->width), gw_sheet_place(sheet, e->bottom),
                  gw_sheet_place(sheet, e->top));
    for (size_t i = 0; i < p->of->links.n && n + 1 < SAID; i++) {
        const struct gw_finding *f = &p->of->links.items[i].finding;
        const bool bends =
            strcmp(f->demand->check->id, "mullion") == 0 || strcmp(f->demand->check->id, "mullion_deflection") == 0;
        if (f->candidate == line->system && bends) said[n++] = finding_line(sheet, f);
    }
    if (!line->stiff)
        said[n++] = gw_format(sheet->arena, "Deflection is not drawn: %s.",
                              gw_message_text(sheet->arena, &line->unknown, sheet->shown));
    return n;
}

enum gw_status gw_draw_line(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct element_picture *p = of;
    const struct gw_judged_line *line = p->line;
    struct sheet words = {.arena = canvas->arena, .shown = shown};
    struct gw_engine own;
    const char *said[SAID];
    (void)engine;
    gw_engine_init(&own, p->results->answer->model->tables, NULL);
    const struct beam_drawing drawing = {.name = "Mullion",
                                         .beam = &line->line.beam,
                                         .result = &line->result,
                                         .title =
                                             gw_format(canvas->arena, "%s, %s: line of mullions",
                                                       gw_safe(canvas->arena, line->system->name), p->of->element->id),
                                         .said = said,
                                         .n_said = said_of(said, &words, p),
                                         .limited = true,
                                         .loose = !line->stiff,
                                         .cap = line->cap};
    gw_draw_beam(canvas, &drawing, shown, &own);
    return GW_OK;
}

/* Lites ------------------------------------------------------------------------------------------------------------ */

/* By first principles a unit's use is that of a pane's own net load, which is not the ratio of the lite's pressures
 * where panes share it otherwise as it grows: "pane 2's net load over what that pane takes"; "" where it is that ratio.
 */
static const char *use_words(struct sheet *sheet, const struct gw_lite_result *r)
{
    const double ratio = fabs(r->load.pressure) / r->resistance;
    if (r->governing == GW_ROUTE_STANDARD || r->n_panes < 2 || !(fabs(ratio - r->utilization) > GW_HAIR)) return "";
    return gw_format(sheet->arena, " (pane %d's net load over what that pane takes)", r->principles.pane + 1);
}

static const char *load_line(struct sheet *sheet, const struct gw_explained_glass *g)
{
    const struct gw_lite_result *r = &g->result;
    return gw_format(sheet->arena, "Strength: %s %s of %s, use %s%s, by %s.", r->load.name,
                     gw_sheet_demand(sheet, GW_PRESSURE, fabs(r->load.pressure)),
                     gw_sheet_capacity(sheet, GW_PRESSURE, r->resistance), gw_sheet_use(sheet, r->utilization),
                     use_words(sheet, r),
                     r->governing == GW_ROUTE_STANDARD ? "the standard's factors" : "first principles");
}

enum gw_status gw_draw_lite(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct element_picture *p = of;
    const struct gw_explained_glass *g = p->of->glass;
    const struct gw_lite_result *r = &g->result;
    struct sheet words = {.arena = canvas->arena, .shown = shown};
    struct gw_engine own;
    struct gw_plate_case plate;
    struct gw_text make_up;
    gw_engine_init(&own, p->results->answer->model->tables, NULL);
    own.workspace = gw_alloc_bare(canvas->arena, GW_PLATE_WORKSPACE);
    const int pane = gw_lite_governing_plate(&plate, &g->judged.lite, r);
    const double thickness = r->panes[pane].principles.deflection_thickness;
    gw_text_init(&make_up, canvas->arena);
    gw_layers_say(&make_up, g->type->layers.items, g->type->layers.n, shown, own.tables);
    const char *lines[] = {gw_format(canvas->arena, "%s Make-up, outside to inside: %s.",
                                     gw_project_line(canvas->arena, p->results), make_up.at),
                           load_line(&words, g),
                           gw_format(canvas->arena,
                                     "Shown: pane %d of %d from outside, which governs, under its part of the %s load.",
                                     pane + 1, r->n_panes, r->load.name)};
    const struct plate_drawing drawing = {.name = "Lite",
                                          .id = p->of->element->id,
                                          .plate = &plate,
                                          .deflection_thickness = thickness,
                                          .lines = lines,
                                          .n_lines = sizeof lines / sizeof *lines,
                                          .deflection_limit = g->judged.demand.deflection_limit};
    const enum gw_status status = gw_draw_plate(canvas, &drawing, shown, &own);
    if (engine && status) engine->fault = own.fault;
    return status;
}

/* What an explanation has ------------------------------------------------------------------------------------------ */

static void add(struct gw_pictures *out, struct gw_arena *arena, const struct element_picture *of)
{
    struct element_picture *kept = gw_alloc(arena, 1, sizeof *kept);
    const struct gw_element *e = of->of->element;
    const char *place = gw_picture_word(arena, e->id);
    *kept = *of;
    if (!of->line) {
        const char *title = gw_format(arena, "%s: deflection and tension of the pane that governs", e->id);
        gw_picture_add(out, arena, gw_format(arena, "lite:%s", place),
                       &(struct gw_figure){title, title, gw_draw_lite, kept});
        return;
    }
    const char *title =
        gw_format(arena, "%s, %s: line of mullions, its loads, moment and deflection", of->line->system->name, e->id);
    gw_picture_add(out, arena, gw_format(arena, "mullion:%s:%s", place, gw_picture_word(arena, of->line->system->name)),
                   &(struct gw_figure){title, title, gw_draw_line, kept});
}

void gw_pictures_of_explanation(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results,
                                const struct gw_explanation *x, const struct gw_system *only)
{
    for (size_t i = 0; i < x->lines.n; i++) {
        const struct gw_judged_line *line = x->lines.items[i];
        if (!gw_said(&line->fault) && (!only || line->system == only))
            add(out, arena, &(struct element_picture){results, x, line});
    }
    const struct gw_explained_glass *g = x->glass;
    const bool whole = g && !g->status && g->judged.lite.edges == 4 && gw_given(g->result.load.pressure);
    if (whole && !only) add(out, arena, &(struct element_picture){results, x, NULL});
}

void gw_pictures_of_derivations(struct gw_pictures *out, struct gw_arena *arena, const struct gw_results *results)
{
    const struct gw_derivations *all = &results->derivations;
    for (size_t i = 0; i < all->list.n; i++)
        if (all->list.items[i].finding)
            gw_pictures_of_explanation(out, arena, results, all->list.items[i].of,
                                       all->list.items[i].finding->candidate);
}
