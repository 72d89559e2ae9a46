/* Section of the joint between two pieces of mullion, one above the other, and beside it to the same scale what closes
 * it and what opens it, stacked: from the lower piece up to the upper one, from there up to the end of the leg. */
#include "report/draw/details.h"
#include "report/page.h"

#include <math.h>

static const double HIGH = 420, STACK = 34; /* pixels */
/* m: only so that there is something to point at, or as far as a piece is shown. */
static const double SOME_WIDTH = 0.02, SOME_LEG = 0.025, SOME_WEB = 0.004, ABOVE = 0.014, BELOW = 0.018, ACROSS = 0.026;
static const struct gw_pattern SLANT = {45, 5, GW_LINE_FINE, GW_INK, false, false};
static const struct gw_pattern LEVEL = {0, 4, GW_LINE_FINE, GW_INK, false, false};
static const struct gw_pattern UPRIGHT = {90, 4, GW_LINE_FINE, GW_INK, false, false};
static const struct gw_pattern DOTS = {0, 4.5, 1.4, GW_INK, true, false};
static const struct gw_pattern KEPT = {45, 4.5, GW_LINE_FINE, GW_INK, false, true};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE, .bold = true};

struct joint {
    struct detail d;
    const struct gw_wall_grid *grid;
    const struct gw_stack_spec *spec; /* NULL: not stated */
    struct gw_judged_joint judged;
    double width, leg;        /* m, as drawn */
    double upper, lower, end; /* page y: end of the upper piece, of the lower one, of the leg */
    double x;                 /* page: outer face of the web */
};

static const char *length(const struct joint *j, double si) { return gw_sheet_given(&j->d.sheet, GW_THICKNESS, si); }
static bool has_leg(const struct joint *j) { return j->spec && gw_given(j->spec->engagement); }

#define SAY(j, ...) gw_format((j)->d.sheet.arena, __VA_ARGS__)

/* The pieces ------------------------------------------------------------------------------------------------------- */

static void put_web(struct joint *j, double top, double bottom, double open)
{
    const struct gw_member_spec *m = j->d.system->mullion;
    const bool known = m && m->tube;
    const struct gw_look look = known ? gw_detail_metal(m->alloy) : gw_detail_dashed;
    const double web = (known ? m->tube->web : SOME_WEB) * j->d.px, across = ACROSS * j->d.px;
    gw_canvas_rectangle(j->d.sheet.canvas, &(struct gw_box){j->x, top, j->x + web, bottom}, &look);
    gw_detail_break(j->d.sheet.canvas, (struct gw_point){j->x - 6, open}, (struct gw_point){j->x + across + 6, open});
}

/* Which of the pieces has it is not stated: it is drawn on the lower one. */
static void put_leg(struct joint *j, double bottom)
{
    const struct gw_member_spec *m = j->d.system->mullion;
    const double web = (m && m->tube ? m->tube->web : SOME_WEB) * j->d.px, left = j->x + web + 3;
    const double right = left + 0.008 * j->d.px;
    struct gw_canvas *canvas = j->d.sheet.canvas;
    gw_canvas_rectangle(canvas, &(struct gw_box){left, j->end, right, bottom},
                        &(struct gw_look){.fill = GW_PANEL, .line = GW_INK, .width = GW_LINE_THIN, .dashes = "5 3"});
    if (has_leg(j))
        gw_canvas_line(canvas, (struct gw_point){left, j->end}, (struct gw_point){right, j->end},
                       &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
}

static void put_line(struct joint *j, double y, double to, bool stated)
{
    const struct gw_look look = {.line = GW_INK, .width = GW_LINE_FINE, .dashes = stated ? NULL : "5 3"};
    gw_canvas_line(j->d.sheet.canvas, (struct gw_point){j->x - 6, y}, (struct gw_point){to, y}, &look);
}

static void put_pieces(struct joint *j, double top, double bottom)
{
    put_web(j, top, j->upper, top);
    put_web(j, j->lower, bottom, bottom);
    put_leg(j, bottom);
}

/* The stacks ------------------------------------------------------------------------------------------------------- */

static double put_part(struct joint *j, double x, double from, double value, const char *name,
                       const struct gw_pattern *pattern)
{
    const double to = from - value * j->d.px;
    if (!(value > 0)) return from;
    gw_canvas_rectangle(j->d.sheet.canvas, &(struct gw_box){x, to, x + STACK, from},
                        &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_THIN, .pattern = pattern});
    gw_detail_name(&j->d.right, x + STACK - 4, (from + to) / 2, SAY(j, "%s %s", name, gw_detail_needed(&j->d, value)));
    return to;
}

/* What it keeps, then each movement that way; its mark on top. */
static void put_stack(struct joint *j, double x, double from, enum gw_direction way, double kept, const char *keeps,
                      const struct gw_weighed *limit)
{
    static const struct gw_pattern *const cycle[] = {&LEVEL, &UPRIGHT, &SLANT};
    size_t n = 0;
    double y = put_part(j, x, from, gw_given(kept) ? kept : 0, keeps, &KEPT);
    for (size_t i = 0; i < j->judged.n; i++) {
        const struct gw_movement_item *m = &j->judged.items[i];
        if (m->direction != way && m->direction != GW_BOTH_WAYS) continue;
        y = put_part(j, x, y, m->value, m->name, m->kind == GW_TOLERANCE ? &DOTS : cycle[n++ % 3]);
    }
    gw_canvas_label(j->d.sheet.canvas,
                    (struct gw_point){x + STACK / 2, way == GW_CLOSES ? from + 17 : fmin(y, j->end) - 22},
                    way == GW_CLOSES ? 14 : -14, 3, &j->d.sheet.within, &MIDDLE, way == GW_CLOSES ? "closes" : "opens");
    if (limit)
        gw_mark_draw(j->d.sheet.canvas, (struct gw_point){x + STACK / 2, y - 11}, gw_detail_mark(limit->verdict));
}

static void put_stacks(struct joint *j)
{
    const struct gw_weighed_limits *l = &j->judged.limits;
    const double closes = j->x + ACROSS * j->d.px + 28, opens = closes + STACK + 20;
    put_line(j, j->lower, closes + STACK + 8, true);
    put_line(j, j->upper, opens + STACK + 8, j->spec != NULL);
    put_line(j, j->end, opens + STACK + 8, has_leg(j));
    gw_detail_upright(&j->d, j->upper, j->lower, j->x - 30, j->x, NULL);
    gw_detail_upright(&j->d, j->end, j->upper, j->x - 30, j->x, NULL);
    if (gw_said(&j->judged.fault)) return;
    put_stack(j, closes, j->lower, GW_CLOSES, j->spec ? j->spec->least_gap : GW_ABSENT, "kept when closed",
              l->n ? &l->items[0] : NULL);
    put_stack(j, opens, j->upper, GW_OPENS, j->spec ? j->spec->least_overlap : GW_ABSENT, "kept engaged",
              l->n > 1 ? &l->items[1] : NULL);
}

static void put_names(struct joint *j, double top, double bottom)
{
    struct detail_names *left = &j->d.left;
    const struct gw_member_spec *m = j->d.system->mullion;
    const bool known = m && m->tube;
    const double leg = j->x + (known ? m->tube->web : SOME_WEB) * j->d.px + 6;
    gw_detail_name(left, j->x + 2, top + 10,
                   known ? SAY(j, "upper piece, web %s", length(j, m->tube->web)) : "upper piece: not stated");
    gw_detail_name(left, j->x - 30, (j->end + j->upper) / 2,
                   has_leg(j) ? SAY(j, "engaged %s", length(j, j->spec->engagement)) : "engagement: not stated");
    gw_detail_name(left, j->x - 30, (j->upper + j->lower) / 2,
                   j->spec ? SAY(j, "joint %s", length(j, j->spec->width)) : "joint: not stated");
    gw_detail_name(left, leg, j->lower + 0.4 * BELOW * j->d.px, "leg or sleeve: schematic, its end is to scale");
    gw_detail_name(left, j->x + 2, bottom - 10, "lower piece");
}

/* The sheet -------------------------------------------------------------------------------------------------------- */

static void add_rows(struct joint *j)
{
    static const char *const names[] = {"Width of the joint", "Engagement of the leg"};
    const struct gw_weighed_limits *l = &j->judged.limits;
    for (unsigned i = 0; i < l->n && i < 2; i++)
        gw_detail_row(&j->d, (struct detail_row){.name = names[i],
                                                 .provided = gw_detail_stated(&j->d, l->items[i].provided),
                                                 .required = i && !gw_given(l->items[i].provided)
                                                                 ? NULL
                                                                 : gw_detail_needed(&j->d, l->items[i].required),
                                                 .mark = gw_detail_mark(l->items[i].verdict),
                                                 .verdict = gw_verdict_name(l->items[i].verdict),
                                                 .how = gw_detail_said(&j->d, &l->items[i].message)});
    if (l->n) return;
    const bool fault = gw_said(&j->judged.fault);
    gw_detail_row(
        &j->d, (struct detail_row){.name = names[0],
                                   .provided = gw_detail_stated(&j->d, j->spec ? j->spec->width : GW_ABSENT),
                                   .required = fault ? NULL
                                                     : SAY(j, "%s and what it keeps closed",
                                                           gw_detail_needed(&j->d, j->judged.moves.closing.arithmetic)),
                                   .mark = gw_detail_mark(fault ? GW_NOT_SHOWN : l->verdict),
                                   .verdict = gw_verdict_name(fault ? GW_NOT_SHOWN : l->verdict),
                                   .how = gw_detail_said(&j->d, fault ? &j->judged.fault : &l->message)});
}

static const char *sums_line(const struct joint *j)
{
    const struct gw_movement_result *r = &j->judged.moves;
    if (gw_said(&j->judged.fault)) return "What moves into the joint is not known, so no stack is drawn.";
    return SAY(
        j,
        "All added, which governs: closes %s, opens %s. With tolerances by root sum of squares %s and %s; all by "
        "root sum of squares %s and %s.",
        gw_detail_needed(&j->d, r->closing.arithmetic), gw_detail_needed(&j->d, r->opening.arithmetic),
        gw_detail_needed(&j->d, r->closing.mixed), gw_detail_needed(&j->d, r->opening.mixed),
        gw_detail_needed(&j->d, r->closing.srss), gw_detail_needed(&j->d, r->opening.srss));
}

static double put_head(struct joint *j)
{
    struct gw_arena *arena = j->d.sheet.arena;
    const struct gw_mullion_joint *at = &j->judged.joint;
    const char *which = gw_given(at->at)
                            ? SAY(j, "The joint into which most moves, at %s; the pieces that meet in it measure %s.",
                                  gw_sheet_place(&j->d.sheet, at->at), gw_sheet_place(&j->d.sheet, at->length))
                            : SAY(j, "The wall has no joint: taken as if its longest piece, %s, met another.",
                                  gw_sheet_place(&j->d.sheet, at->length));
    const char *lines[] = {
        SAY(j, "%s %s", gw_project_line(arena, j->d.results), which),
        SAY(j, "Section through a web, stacks of movement at the same scale, %s. Dashed: not stated, or schematic.",
            j->d.scale),
        sums_line(j)};
    const double y = gw_sheet_head(&j->d.sheet, SAY(j, "Wall %s: joint of %s", gw_safe(arena, j->grid->wall),
                                                    gw_safe(arena, j->d.candidate->name)));
    for (size_t i = 0; i < 3; i++) lines[i] = gw_detail_glued(arena, lines[i]);
    return gw_sheet_lines(&j->d.sheet, y, lines, 3);
}

/* The stacks may stand higher than what is provided. */
static double high_of(const struct joint *j)
{
    const struct gw_movement_result *r = &j->judged.moves;
    const double leg = fmax(j->leg, gw_given(r->engagement.arithmetic) ? r->engagement.arithmetic : 0);
    return fmax(leg + j->width, gw_said(&j->judged.fault) ? 0 : r->joint.arithmetic) + ABOVE + BELOW;
}

static void ask_for(struct joint *j)
{
    const struct gw_member_spec *m = j->d.system->mullion;
    if (!j->spec)
        gw_detail_ask(&j->d,
                      "how wide is the joint, what does it keep when closed, how far is its leg engaged, and how far "
                      "must it stay? Ask the manufacturer (stack_joint)");
    else if (!has_leg(j) || !gw_given(j->spec->least_overlap))
        gw_detail_ask(&j->d, "how far is the leg engaged, and how far must it stay? Ask the manufacturer (stack_joint: "
                             "engagement, least_overlap)");
    if (!m || !m->tube) gw_detail_ask(&j->d, "which section has the mullion? Ask the manufacturer (mullion: tube)");
    gw_detail_ask(&j->d,
                  "which of the pieces carries the leg, and how is it shaped? Ask the manufacturer for a drawing");
}

static void take_figures(struct joint *j)
{
    gw_judge_joint(&j->judged, &j->d.ask, j->grid, j->d.system);
    j->spec = j->d.system->stack_joint;
    j->width = j->spec ? j->spec->width : SOME_WIDTH;
    j->leg = has_leg(j) ? j->spec->engagement : SOME_LEG;
}

static const struct gw_element *mullion_of(const struct gw_takeoff *takeoff, const struct gw_wall_grid *grid)
{
    for (size_t i = grid->first_element; i < grid->first_element + grid->n_elements; i++)
        if (takeoff->elements.items[i].kind == GW_MULLION) return &takeoff->elements.items[i];
    return NULL;
}

static const char *described(const struct joint *j)
{
    struct gw_text text;
    gw_text_init(&text, j->d.sheet.arena);
    gw_text_addf(&text, "Joint between pieces of mullion of %s on wall %s at %s.", j->d.candidate->name, j->grid->wall,
                 j->d.scale);
    for (size_t i = 0; i < j->d.n_rows; i++)
        gw_text_addf(&text, " %s: %s, %s.", j->d.rows[i].name, gw_detail_figures(j->d.sheet.arena, &j->d.rows[i]),
                     j->d.rows[i].verdict);
    return text.at;
}

static void draw(struct gw_canvas *canvas, const void *of, enum gw_units shown, int coarser)
{
    const struct wall_picture *wall = of;
    struct joint j = {.grid = wall->grid};
    gw_detail_open(&j.d, canvas, &(struct candidate_picture){wall->results, wall->candidate}, shown);
    j.d.coarser = coarser;
    gw_detail_at(&j.d, mullion_of(wall->results->answer->takeoff, wall->grid));
    take_figures(&j);
    gw_detail_scale(&j.d, ACROSS + 0.01, high_of(&j), 200, HIGH);
    j.d.left.width = 150;
    j.x = SHEET_MARGIN + j.d.left.width + 44;
    j.d.right.width = 220;
    const double top = put_head(&j) + 26, rise = fmax(ABOVE, high_of(&j) - j.leg - j.width - BELOW) * j.d.px;
    j.end = top + rise;
    j.upper = j.end + j.leg * j.d.px;
    j.lower = j.upper + j.width * j.d.px;
    const double bottom = j.lower + BELOW * j.d.px;
    put_pieces(&j, top, bottom);
    put_stacks(&j);
    put_names(&j, top, bottom);
    const double left = gw_detail_put_names(&j.d, &j.d.left, false, top - 8),
                 right = gw_detail_put_names(&j.d, &j.d.right, true, top - 8);
    add_rows(&j);
    ask_for(&j);
    canvas->description = described(&j);
    gw_detail_close(&j.d, fmax(bottom, fmax(left, right)) + 14);
}

enum gw_status gw_draw_joint(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    (void)engine;
    gw_detail_to_fit(canvas, draw, of, shown);
    return GW_OK;
}
