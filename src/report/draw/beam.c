/* A solved beam: its loads and what holds it, shear, bending moment and deflection, one above the other. */
#include "galeward/member.h"
#include "report/draw/beam_sheet.h"
#include "report/draw/drawings.h"

#include <math.h>
#include <string.h>

static double limit_of(const struct beam_drawing *drawing, const struct bay *bay, struct gw_engine *engine)
{
    const struct gw_member_chart *member = drawing->member;
    const double span = bay->to - bay->from;
    if (member && member->limited) return gw_deflection_limit(span, bay->overhang, member->capped, engine);
    if (!drawing->limited || drawing->loose) return GW_ABSENT;
    return fmin(gw_deflection_limit(span, bay->overhang, false, engine), drawing->cap); /* leaves out what is absent */
}

static void find_bays(struct beam_sheet *s, const struct beam_drawing *drawing, struct gw_engine *engine)
{
    const size_t n = s->result->n_supports;
    for (size_t i = 0; i <= n; i++) {
        const double from = i ? s->result->supports[i - 1] : 0, to = i < n ? s->result->supports[i] : s->beam->length;
        struct bay bay = {from, to, GW_ABSENT, i == 0 || i == n};
        if (!(to > from)) continue;
        bay.limit = limit_of(drawing, &bay, engine);
        s->bays[s->n_bays++] = bay;
    }
}

static const char *largest_of(const struct beam_sheet *s, bool loose)
{
    const struct gw_beam_result *r = s->result;
    const struct sheet *page = &s->page;
    if (loose)
        return gw_format(page->arena, "Largest moment %s at %s, least %s at %s; largest shear %s at %s.",
                         gw_sheet_demand(page, GW_MOMENT, r->moment_max.value), gw_sheet_place(page, r->moment_max.at),
                         gw_sheet_demand(page, GW_MOMENT, r->moment_min.value), gw_sheet_place(page, r->moment_min.at),
                         gw_sheet_demand(page, GW_FORCE, r->shear_max.value), gw_sheet_place(page, r->shear_max.at));
    return gw_format(
        page->arena, "Largest moment %s at %s, least %s at %s; largest deflection %s at %s; largest shear %s at %s.",
        gw_sheet_demand(page, GW_MOMENT, r->moment_max.value), gw_sheet_place(page, r->moment_max.at),
        gw_sheet_demand(page, GW_MOMENT, r->moment_min.value), gw_sheet_place(page, r->moment_min.at),
        gw_sheet_demand(page, GW_THICKNESS, r->deflection_max.value), gw_sheet_place(page, r->deflection_max.at),
        gw_sheet_demand(page, GW_FORCE, r->shear_max.value), gw_sheet_place(page, r->shear_max.at));
}

static const char *verdict_of(const struct beam_sheet *s, const struct gw_member_chart *member)
{
    const struct sheet *page = &s->page;
    if (!member || !member->limited) return "No deflection limit is asked.";
    return gw_format(page->arena, "%s: deflection %s of %s over %s, use %s.", member->use <= 1 ? "pass" : "fail",
                     gw_sheet_demand(page, GW_THICKNESS, fabs(member->limit_deflection)),
                     gw_sheet_capacity(page, GW_THICKNESS, member->limit), gw_sheet_place(page, member->limit_span),
                     gw_sheet_use(page, member->use));
}

static const char *load_of(const struct beam_sheet *s, const struct gw_member_chart *member)
{
    if (!member) return NULL;
    return gw_format(s->page.arena, "%s, drawn from its %s end. Wind %s, handed on by the lites %s.",
                     strcmp(member->orientation, "vertical") == 0 ? "Vertical" : "Horizontal",
                     strcmp(member->orientation, "vertical") == 0 ? "lower" : "left",
                     gw_sheet_given(&s->page, GW_PRESSURE, member->pressure),
                     strcmp(member->shedding, "uniform") == 0 ? "as pressure times half their widths"
                                                              : "two ways, by 45-degree lines");
}

void gw_draw_beam(struct gw_canvas *canvas, const struct beam_drawing *drawing, enum gw_units shown,
                  struct gw_engine *engine)
{
    struct beam_sheet *s = gw_alloc(canvas->arena, 1, sizeof *s);
    gw_sheet_open(&s->page, canvas, shown);
    s->beam = drawing->beam;
    s->result = drawing->result;
    s->scale = (SHEET_PAGE - 2 * BEAM_SIDE) / s->beam->length;
    find_bays(s, drawing, engine);
    const char *name = drawing->id ? gw_format(canvas->arena, " %s", gw_sheet_name(&s->page, drawing->id)) : "";
    const char *title = drawing->title;
    if (!title)
        title = gw_format(canvas->arena, "%s%s, %s long", drawing->name, name,
                          gw_sheet_given(&s->page, GW_LENGTH, s->beam->length));
    const bool cut = drawing->id && strlen(gw_sheet_name(&s->page, drawing->id)) < strlen(drawing->id);
    const bool judged = drawing->member && drawing->member->limited;
    const char *verdict = verdict_of(s, drawing->member), *largest = largest_of(s, drawing->loose);
    const char *lines[] = {cut ? gw_format(canvas->arena, "Mark: %s", drawing->id) : NULL, load_of(s, drawing->member),
                           judged || drawing->title ? NULL : verdict, largest};
    canvas->description = gw_format(canvas->arena, "%s%s %s", drawing->title ? drawing->title : verdict,
                                    drawing->title ? "." : "", largest);
    double y = gw_sheet_head(&s->page, title);
    if (judged) y = gw_sheet_verdict(&s->page, y, drawing->member->use <= 1, verdict);
    y = gw_sheet_lines(&s->page, y, drawing->said, drawing->n_said);
    y = gw_sheet_lines(&s->page, y, lines, 4) + 12;
    y = gw_beam_load_strip(s, y) + 20;
    for (int kind = BEAM_SHEAR; kind <= (drawing->loose ? BEAM_MOMENT : BEAM_DEFLECTION); kind++)
        y = gw_beam_curve_strip(s, (enum beam_curve)kind, y) + 16;
    gw_sheet_foot(&s->page, y - 8, drawing->notes, drawing->n_notes);
}
