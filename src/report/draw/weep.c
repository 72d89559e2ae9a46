/* The way of water out of a pocket: a section through the sill of a lite, outside at the left, and the slots of plate
 * and cover as they follow each other along it. What a system does not state of it is dashed. */
#include "report/draw/weep.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

/* m: only so that there is something to point at, or as far as a part is shown. */
static const double SOME_DEPTH = 0.012, SOME_UPSTAND = 0.05, SOME_SLOT = 0.006, SOME_LENGTH = 0.04, SOME_OFFSET = 0.1,
                    SOME_PLATE = 0.007, SOME_BITE = 0.014, SOME_FACE = 0.004, SOME_GLASS = 0.024, SOME_WALL = 0.003,
                    SOME_DAM = 0.04, SOME_FALL = 0.125, COVER = 0.014, ABOVE = 0.012, BELOW = 0.02, DRIP = 0.03,
                    BEHIND = 0.014;
static const double WIDE = 300, HIGH = 300, STRIP = 440; /* pixels */
static const char DASHES[] = "5 3";
static const struct gw_lettering CAPTION = {.size = GW_LABEL_SIZE, .bold = true};
static const struct gw_look BOLD = {.line = GW_INK, .width = GW_LINE_BOLD};
static const struct gw_look OPENING = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_MEDIUM};
static const struct gw_look SCHEMATIC = {.fill = GW_PANEL, .line = GW_INK, .width = GW_LINE_THIN, .dashes = "5 3"};

static double or_some(double stated, double some) { return gw_given(stated) ? stated : some; }
static const char *length(const struct weep *w, double si) { return gw_sheet_given(&w->d.sheet, GW_THICKNESS, si); }

#define SAY(w, ...) gw_format((w)->d.sheet.arena, __VA_ARGS__)

/* Where things stand on the page. */
struct place {
    double px, inner, floor;         /* inner face of the plate; floor of the pocket */
    double outer, glass, back, wall; /* outer face of the plate; both faces of the glass; inner metal */
    double top, bottom, dam, sill;   /* ends of the section; the dam, and the flashing at its foot */
};

static double plate_thickness(const struct weep *w)
{
    const struct gw_plate_spec *plate = w->d.system->pressure_plate;
    return plate ? plate->thickness : GW_ABSENT;
}

static double plate_reach(const struct weep *w)
{
    const struct gw_drift_spec *drift = w->d.system->drift;
    return or_some(w->depth, SOME_DEPTH) + or_some(drift ? drift->bite : GW_ABSENT, SOME_BITE);
}

static double glass_thickness(const struct weep *w)
{
    const struct gw_project *project = &w->d.results->answer->model->project;
    for (size_t i = 0; w->spot.lite && w->spot.lite->lite && i < project->lites.n; i++)
        if (strcmp(project->lites.items[i].name, w->spot.lite->lite) == 0)
            return gw_layers_thickness(project->lites.items[i].layers.items, project->lites.items[i].layers.n);
    return GW_ABSENT;
}

static double rise_of(const struct weep *w)
{
    const double dam = fmax(or_some(w->dam, SOME_DAM), gw_given(w->needed) ? w->needed : 0) - BELOW;
    const double up = fmax(or_some(w->upstand, SOME_UPSTAND), plate_reach(w)) + ABOVE;
    return fmax(fmax(up, dam), gw_given(w->needed) ? w->needed + 0.004 : 0);
}

static double across_of(const struct weep *w)
{
    return DRIP + or_some(plate_thickness(w), SOME_PLATE) + 2 * SOME_FACE + or_some(glass_thickness(w), SOME_GLASS) +
           SOME_WALL + BEHIND;
}

static double cover_length(const struct weep *w)
{
    if (!w->cover) return GW_ABSENT;
    return gw_given(w->cover->at_least) ? w->cover->at_least : w->cover->at_most;
}

static double along_of(const struct weep *w)
{
    return or_some(w->slot_length, SOME_LENGTH) / 2 + or_some(w->offset, SOME_OFFSET) +
           or_some(cover_length(w), SOME_LENGTH) / 2;
}

static struct place place_of(const struct weep *w, double top)
{
    const double px = w->d.px, left = SHEET_MARGIN + DETAIL_COLUMN + 24;
    struct place p = {.px = px, .top = top};
    p.outer = left + DRIP * px;
    p.inner = p.outer + or_some(plate_thickness(w), SOME_PLATE) * px;
    p.glass = p.inner + SOME_FACE * px;
    p.back = p.glass + or_some(glass_thickness(w), SOME_GLASS) * px;
    p.wall = p.back + SOME_FACE * px;
    p.floor = top + rise_of(w) * px;
    p.bottom = p.floor + 0.012 * px;
    p.dam = p.wall + (SOME_WALL + BEHIND) * px;
    p.sill = p.floor + BELOW * px;
    return p;
}

/* The pocket ------------------------------------------------------------------------------------------------------- */

static void put_plate(struct weep *w, const struct place *p)
{
    const struct gw_plate_spec *plate = w->d.system->pressure_plate;
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const struct gw_look look = plate ? gw_detail_metal(plate->alloy) : gw_detail_dashed;
    const double slot = p->floor - or_some(w->slot_height, SOME_SLOT) * p->px, lip = p->floor - plate_reach(w) * p->px;
    gw_canvas_rectangle(canvas, &(struct gw_box){p->outer, fmin(lip, slot), p->inner, slot}, &look);
    gw_canvas_rectangle(canvas, &(struct gw_box){p->outer, p->floor, p->inner, p->bottom}, &look);
    gw_detail_break(canvas, (struct gw_point){p->outer - 5, p->bottom}, (struct gw_point){p->inner + 5, p->bottom});
    if (!gw_given(w->slot_height))
        gw_canvas_rectangle(canvas, &(struct gw_box){p->outer, slot, p->inner, p->floor}, &gw_detail_dashed);
    gw_detail_name(&w->d.left, p->outer + 3, lip + 0.6 * (slot - lip),
                   plate ? SAY(w, "pressure plate, thickness %s", length(w, plate->thickness))
                         : "pressure plate: not stated");
    gw_detail_name(&w->d.left, p->outer - 1, (slot + p->floor) / 2,
                   gw_given(w->slot_height) ? SAY(w, "slot of the plate, height %s", length(w, w->slot_height))
                                            : "slot of the plate: not stated");
}

static void put_cover(struct weep *w, const struct place *p)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const double left = p->outer - COVER * p->px, top = p->floor - plate_reach(w) * p->px;
    const struct gw_point cover[] = {
        {p->outer, top}, {left, top}, {left, p->bottom}, {left + 0.25 * (p->outer - left), p->bottom}};
    gw_canvas_polyline(canvas, cover, 4, &gw_detail_dashed);
    gw_canvas_line(canvas, (struct gw_point){left + 0.75 * (p->outer - left), p->bottom},
                   (struct gw_point){p->outer, p->bottom}, &gw_detail_dashed);
    gw_detail_name(&w->d.left, left, top + 0.35 * (p->floor - top), "cover and its slot: schematic");
}

static void put_glass(struct weep *w, const struct place *p)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const double foot = p->floor - or_some(w->depth, SOME_DEPTH) * p->px, thick = glass_thickness(w);
    const struct gw_box pane = {p->glass, p->top, p->back, foot};
    if (gw_given(thick) && gw_given(w->depth)) gw_detail_pane(canvas, &pane, true);
    else gw_canvas_rectangle(canvas, &pane, &gw_detail_dashed);
    gw_detail_break(canvas, (struct gw_point){p->glass - 6, p->top}, (struct gw_point){p->back + 6, p->top});
    gw_detail_name(&w->d.right, p->back - 4, p->top + 12,
                   gw_given(thick) ? SAY(w, "glass, overall %s", length(w, thick)) : "glass: not stated");
}

/* Inner metal of the pocket as high as the seal, and the seal; the floor between it and the plate. */
static void put_upstand(struct weep *w, const struct place *p)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const struct gw_member_spec *m = w->d.system->transom;
    const bool stated = gw_given(w->upstand);
    const double up = p->floor - or_some(w->upstand, SOME_UPSTAND) * p->px, seal = fmin(0.008 * p->px, p->floor - up);
    const double wall = (m && m->tube ? m->tube->flange : SOME_WALL) * p->px;
    const struct gw_look look = !stated ? gw_detail_dashed : m && m->tube ? gw_detail_metal(m->alloy) : SCHEMATIC;
    gw_canvas_rectangle(canvas, &(struct gw_box){p->inner, p->floor, p->wall, p->floor + 0.006 * p->px}, &SCHEMATIC);
    if (gw_given(w->depth))
        gw_canvas_line(canvas, (struct gw_point){p->inner, p->floor}, (struct gw_point){p->wall, p->floor}, &BOLD);
    gw_canvas_rectangle(canvas, &(struct gw_box){p->wall, up, p->wall + wall, p->bottom}, &look);
    gw_detail_break(canvas, (struct gw_point){p->wall - 5, p->bottom},
                    (struct gw_point){p->wall + wall + 5, p->bottom});
    gw_canvas_rectangle(canvas, &(struct gw_box){p->back, up, p->wall, up + seal}, &gw_detail_dashed);
    gw_detail_name(&w->d.right, p->wall - 2, up + seal / 2, "inner air seal: schematic");
    gw_detail_name(&w->d.right, p->wall + wall / 2, up + 0.62 * (p->floor - up),
                   stated ? SAY(w, "upstand %s", length(w, w->upstand)) : "upstand: not stated");
}

static void put_outer_gasket(struct weep *w, const struct place *p)
{
    const double lip = p->floor - plate_reach(w) * p->px;
    gw_canvas_rectangle(w->d.sheet.canvas, &(struct gw_box){p->inner, lip, p->glass, lip + 0.008 * p->px},
                        &gw_detail_dashed);
}

static void put_water(struct weep *w, const struct place *p)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const double drop = or_some(w->slot_height, SOME_SLOT) * p->px, cover = p->outer - COVER / 2 * p->px;
    const double y = p->floor - fmin(drop, or_some(w->depth, SOME_DEPTH) * p->px) / 2;
    const struct gw_point way[] = {
        {(p->glass + p->back) / 2, y}, {cover, y}, {cover, p->bottom + 4}, {cover, fmax(p->bottom + 16, p->sill - 4)}};
    gw_detail_flow(canvas, way, 4);
    if (gw_given(w->depth))
        gw_detail_name(&w->d.right, p->back - 3, p->floor - w->depth / 2 * p->px,
                       SAY(w, "pocket: water stands %s before it reaches the glass", length(w, w->depth)));
    else gw_detail_name(&w->d.right, p->back - 3, p->floor - SOME_DEPTH / 2 * p->px, "depth of the pocket: not stated");
}

/* Head and sill ---------------------------------------------------------------------------------------------------- */

static void put_level(struct weep *w, const struct place *p, double height, const char *words, const char *dashes)
{
    const double y = p->floor - height * p->px, right = p->dam + 46;
    gw_canvas_line(w->d.sheet.canvas, (struct gw_point){p->back, y}, (struct gw_point){right, y},
                   &(struct gw_look){.line = GW_PAPER, .width = GW_LINE_HEAVY});
    gw_canvas_line(w->d.sheet.canvas, (struct gw_point){p->back, y}, (struct gw_point){right, y},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = dashes});
    gw_detail_name(&w->d.right, right, y, words);
}

static void put_head(struct weep *w, const struct place *p)
{
    if (!gw_given(w->head)) return;
    put_level(w, p, w->needed, SAY(w, "head and its margin %s", gw_detail_needed(&w->d, w->needed)), "15 3 3 3");
    put_level(w, p, w->head, SAY(w, "static head of the water test %s", gw_detail_needed(&w->d, w->head)),
              "15 3 3 3 3 3");
}

/* It falls to the outside by what is stated, else dashed by what practice asks. */
static void put_sill(struct weep *w, const struct place *p)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const bool stated = gw_given(w->slope), dam = gw_given(w->dam);
    const double left = p->outer - DRIP * p->px;
    const double fall = or_some(w->slope, SOME_FALL) * (p->dam - left), high = or_some(w->dam, SOME_DAM) * p->px;
    const struct gw_look sloped = {.line = GW_INK, .width = GW_LINE_BOLD, .dashes = stated ? NULL : DASHES};
    const struct gw_look upright = {.line = GW_INK, .width = GW_LINE_BOLD, .dashes = dam ? NULL : DASHES};
    gw_canvas_line(canvas, (struct gw_point){p->dam, p->sill}, (struct gw_point){left, p->sill + fall}, &sloped);
    gw_canvas_line(canvas, (struct gw_point){p->dam, p->sill}, (struct gw_point){p->dam, p->sill - high}, &upright);
    gw_detail_name(&w->d.right, p->dam, p->sill - 0.3 * high,
                   dam ? SAY(w, "end dam, at least %s", length(w, w->dam)) : "end dam: not stated");
    gw_detail_name(&w->d.left, left + 6, p->sill + fall - or_some(w->slope, SOME_FALL) * 6,
                   stated
                       ? SAY(w, "sill flashing, falls outward %s", gw_detail_value(&w->d, GW_ITEM_sill_slope, w->slope))
                       : "sill flashing: its slope is not stated");
}

/* Slots along the sill --------------------------------------------------------------------------------------------- */

static void put_bar(struct weep *w, double y, double from, double to, const char *name, bool plate)
{
    struct gw_canvas *canvas = w->d.sheet.canvas;
    const double high = 16, left = SHEET_MARGIN + 60, right = SHEET_MARGIN + SHEET_LIVE;
    const bool stated = plate ? gw_given(w->slot_length) : gw_given(cover_length(w));
    gw_canvas_rectangle(canvas, &(struct gw_box){left, y, right, y + high}, &SCHEMATIC);
    gw_canvas_rectangle(canvas, &(struct gw_box){from, y + 4, to, y + high - 4}, stated ? &OPENING : &gw_detail_dashed);
    gw_canvas_text(canvas, (struct gw_point){SHEET_MARGIN, y + 12}, &CAPTION, name);
}

static const char *cover_words(const struct weep *w)
{
    const struct gw_own_limits *c = w->cover;
    if (!c) return "slot of the cover: not stated";
    if (gw_given(c->at_least) && gw_given(c->at_most))
        return SAY(w, "slot %s to %s", length(w, c->at_least), length(w, c->at_most));
    return gw_given(c->at_least) ? SAY(w, "slot at least %s", length(w, c->at_least))
                                 : SAY(w, "slot at most %s", length(w, c->at_most));
}

static double put_slots(struct weep *w, double top)
{
    const double px = w->d.px, plate = or_some(w->slot_length, SOME_LENGTH) * px,
                 cover = or_some(cover_length(w), SOME_LENGTH) * px, apart = or_some(w->offset, SOME_OFFSET) * px;
    const double from = SHEET_MARGIN + 76, middle = from + plate / 2, other = middle + apart;
    const double bar = top + 33, second = bar + 26;
    gw_canvas_text(w->d.sheet.canvas, (struct gw_point){SHEET_MARGIN, top + 12}, &CAPTION,
                   "Slots along the sill from outside, same scale; of a range the least is drawn");
    put_bar(w, bar, from, from + plate, "plate", true);
    put_bar(w, second, other - cover / 2, other + cover / 2, "cover", false);
    gw_detail_across(&w->d, from, from + plate, bar - 10, bar,
                     gw_given(w->slot_length) ? SAY(w, "slot %s%s", length(w, w->slot_length),
                                                    gw_given(w->slots) ? SAY(w, ", %.0f under one lite", w->slots) : "")
                                              : "slot of the plate: not stated");
    gw_detail_across(&w->d, other - cover / 2, other + cover / 2, second + 30, second + 16, cover_words(w));
    gw_detail_across(&w->d, middle, other, second + 50, bar + 8,
                     gw_given(w->offset) ? SAY(w, "offset, middle to middle, at least %s", length(w, w->offset))
                                         : "offset: not stated");
    return second + 58;
}

/* The sheet -------------------------------------------------------------------------------------------------------- */

static void ask_for(struct weep *w)
{
    if (!w->d.system->drainage)
        gw_detail_ask(&w->d,
                      "how does the pocket drain: its slots, its depth, its upstand? Ask the manufacturer (drainage)");
    else if (!gw_given(w->depth) || !gw_given(w->upstand) || !gw_given(w->slots) || !gw_given(w->slot_length) ||
             !gw_given(w->slot_height))
        gw_detail_ask(&w->d,
                      "how many slots has the pocket of one lite, how long and high are they, how deep can water "
                      "stand, how high is the upstand? Ask the manufacturer (drainage)");
    if (!w->cover || !gw_given(w->offset))
        gw_detail_ask(&w->d, "how long are the slots of the cover, and how far from the plate's? Ask the manufacturer "
                             "(installation: cover_weep_length, weep_offset)");
    if (!gw_given(w->dam) || !gw_given(w->slope))
        gw_detail_ask(&w->d,
                      "how high are the end dams of the sill flashing, and how does it fall? Ask the manufacturer "
                      "(installation: end_dam_height, sill_slope)");
    if (!gw_given(w->head))
        gw_detail_ask(&w->d, SAY(w, "which static head stands against it: %s",
                                 gw_said(&w->unknown) ? gw_detail_said(&w->d, &w->unknown) : "no water test is asked"));
}

static double put_top(struct weep *w)
{
    struct gw_arena *arena = w->d.sheet.arena;
    struct gw_text place;
    gw_text_init(&place, arena);
    if (!gw_said(&w->where)) gw_spot_say(&place, &w->spot);
    const char *lines[] = {
        SAY(w, "%s The pocket on which most rain falls: %s.", gw_project_line(arena, w->d.results),
            place.length ? gw_safe(arena, place.at) : "none"),
        SAY(w, "Section, outside at the left, scale %s. Dashed: not stated, or schematic, not to scale.", w->d.scale)};
    const double y = gw_sheet_head(&w->d.sheet, SAY(w, "Wall %s: way of the water, %s", gw_safe(arena, w->grid->wall),
                                                    gw_safe(arena, w->d.candidate->name)));
    return gw_sheet_lines(&w->d.sheet, y, lines, 2);
}

static double put_section(struct weep *w, double top)
{
    const struct place p = place_of(w, top);
    put_sill(w, &p);
    put_cover(w, &p);
    put_plate(w, &p);
    put_upstand(w, &p);
    put_glass(w, &p);
    put_outer_gasket(w, &p);
    put_head(w, &p);
    put_water(w, &p);
    const double left = gw_detail_put_names(&w->d, &w->d.left, false, top - 6),
                 right = gw_detail_put_names(&w->d, &w->d.right, true, top - 6);
    const double fall = or_some(w->slope, SOME_FALL) * (p.dam - p.outer + DRIP * p.px);
    return fmax(fmax(left, right), p.sill + fall) + 6;
}

static const char *described(const struct weep *w)
{
    struct gw_text text;
    gw_text_init(&text, w->d.sheet.arena);
    gw_text_addf(&text, "Way of water out of a pocket of %s on wall %s at %s.", w->d.candidate->name, w->grid->wall,
                 w->d.scale);
    for (size_t i = 0; i < w->d.n_rows; i++)
        gw_text_addf(&text, " %s: %s, %s.", w->d.rows[i].name, gw_detail_figures(w->d.sheet.arena, &w->d.rows[i]),
                     w->d.rows[i].verdict);
    return text.at;
}

static void draw(struct gw_canvas *canvas, const void *of, enum gw_units shown, int coarser)
{
    const struct wall_picture *wall = of;
    struct weep w = {.grid = wall->grid};
    gw_detail_open(&w.d, canvas, &(struct candidate_picture){wall->results, wall->candidate}, shown);
    w.spot = gw_spot_on(wall->grid->wall);
    struct gw_message why = {0};
    if (!gw_spot_worst(&w.spot, &why, &w.d.ask, wall->grid->wall, 0, GW_ON_POCKET)) w.where = why;
    w.d.coarser = coarser;
    gw_detail_at(&w.d, w.spot.lite);
    gw_weep_figures(&w);
    gw_detail_scale(&w.d, fmax(across_of(&w), along_of(&w) * WIDE / STRIP), rise_of(&w) + BELOW + 0.01, WIDE, HIGH);
    const double y = put_slots(&w, put_section(&w, put_top(&w) + 10));
    gw_weep_rows(&w);
    ask_for(&w);
    canvas->description = described(&w);
    gw_detail_close(&w.d, y + 4);
}

enum gw_status gw_draw_weep(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    (void)engine;
    gw_detail_to_fit(canvas, draw, of, shown);
    return GW_OK;
}
