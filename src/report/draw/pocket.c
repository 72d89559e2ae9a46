/* Section of a lite's edge at a mullion, outside at the top: the glass by its layers in its pocket under the pressure
 * plate, or on its bead of silicone. Drawn to scale as far as the files state it; what they do not is dashed. */
#include "report/draw/pocket.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

/* Where nothing is stated, m: only so that there is something to point at. */
static const double SOME_BITE = 0.012, SOME_GAP = 0.006, SOME_FACE = 0.004, SOME_PLATE = 0.006, SOME_HALF = 0.026,
                    SOME_LAYER = 0.0015, SOME_WALL = 0.003;
static const double WIDE = 310, HIGH = 300, LEVEL = 20, PAST = 92, BEYOND = 54; /* pixels */
static const struct gw_lettering SMALL = {.size = GW_LABEL_SIZE, .color = GW_INK2};

static double or_some(double stated, double some) { return gw_given(stated) ? stated : some; }
static double at_x(const struct pocket *p, double m) { return p->x + m * p->d.px; }
static double at_y(const struct pocket *p, double m) { return p->y + m * p->d.px; }
static const char *length(const struct pocket *p, double si) { return gw_sheet_given(&p->d.sheet, GW_THICKNESS, si); }

#define SAY(p, ...) gw_format((p)->d.sheet.arena, __VA_ARGS__)

/* The lite ------------------------------------------------------------------------------------------------------- */

static bool is_of(const struct gw_element *e, const struct gw_lite_type *type)
{
    return e->kind == GW_LITE && e->lite && strcmp(e->lite, type->name) == 0;
}

const struct gw_element *gw_lite_with_most_suction(const struct gw_takeoff *takeoff, const struct gw_lite_type *type)
{
    const struct gw_element *worst = NULL;
    double most = 0;
    for (size_t i = 0; i < takeoff->elements.n; i++) {
        const struct gw_element *e = &takeoff->elements.items[i];
        if (!is_of(e, type)) continue;
        const double load = e->outside ? INFINITY : fmax(-e->outward_asd.pa, 0) * fmin(e->width, e->pane);
        if (worst && !(load > most)) continue;
        worst = e;
        most = load;
    }
    return worst;
}

static struct gw_spot spot_of(const struct gw_element *e)
{
    struct gw_spot spot = gw_spot_on(e->wall);
    spot.lite = e;
    spot.edge = GW_EDGE_LEFT;
    spot.worst = e->grid->opening != NULL;
    if (spot.worst) return spot;
    const struct gw_grid_layer *layer = &e->grid->layers[e->sort];
    spot.grid = e->grid;
    spot.column = (int)layer->axis->members[layer->axis->first[e->place_class]] + 1;
    spot.story = layer->strips[e->strip].story;
    spot.row = layer->strips[e->strip].row;
    return spot;
}

/* As it is chosen at that place. */
static const struct gw_lite_type *chosen(const struct pocket *p)
{
    const struct gw_project *project = &p->d.results->answer->model->project;
    const struct gw_chosen *choice = p->d.ask.choice;
    return choice ? choice->lites[choice->place * project->lites.n + (size_t)(p->type - project->lites.items)]
                  : p->type;
}

static double thickness_of(const struct gw_layer *l)
{
    return gw_given(l->glass) ? l->glass : gw_given(l->cavity) ? l->cavity : l->thickness;
}

static const char *layer_name(const struct pocket *p, const struct gw_layer *l)
{
    const double t = thickness_of(l);
    if (gw_given(l->glass))
        return SAY(p, "glass %s, %s", length(p, t),
                   gw_detail_word(p->d.sheet.arena, gw_choice_name(gw_treatment_choices, (int)l->treatment)));
    if (gw_given(l->cavity)) return SAY(p, "cavity %s", length(p, t));
    return SAY(p, "interlayer %s, %s",
               gw_detail_word(p->d.sheet.arena, gw_choice_name(gw_interlayer_choices, (int)l->interlayer)),
               gw_given(t) ? length(p, t) : "thickness not stated");
}

static bool is_glass(const struct gw_layer *l) { return gw_given(l->glass); }
static bool is_cavity(const struct gw_layer *l) { return gw_given(l->cavity); }

/* The seal at the edge of a unit: its bite where the file has it. */
static void put_seal(struct pocket *p, double left, double top, double bottom)
{
    const struct gw_silicone_spec *s = p->d.system->silicone;
    const double bite = s && s->edge_seal ? s->edge_seal->bite : GW_ABSENT;
    const double right = left + or_some(bite, SOME_BITE) * p->d.px;
    const struct gw_box box = {left, top, right, bottom};
    gw_canvas_rectangle(p->d.sheet.canvas, &box, gw_given(bite) ? &gw_detail_silicone : &gw_detail_dashed);
    gw_detail_name_once(&p->d.left, left + 3, (top + bottom) / 2,
                        gw_given(bite) ? SAY(p, "edge seal of the unit, bite %s", length(p, bite))
                                       : "edge seal of the unit: not stated");
}

/* From the page's `left` to the cut; the layers one under the other. Where the edge is `known` no better than by its
 * lip, what lies in the pocket is dashed. */
static void put_layers(struct pocket *p, double edge, bool known)
{
    struct gw_canvas *canvas = p->d.sheet.canvas;
    const double left = known ? edge : at_x(p, 0);
    double from = 0;
    for (size_t i = 0; i < p->glass->layers.n; i++) {
        const struct gw_layer *l = &p->glass->layers.items[i];
        static const struct gw_look solid = {.fill = GW_INK};
        const double thick = or_some(thickness_of(l), SOME_LAYER);
        const struct gw_box box = {left, at_y(p, from), p->end, at_y(p, from + thick)};
        if (is_glass(l)) gw_detail_pane(canvas, &box, false);
        else if (is_cavity(l)) put_seal(p, edge, box.top, box.bottom);
        else gw_canvas_rectangle(canvas, &box, gw_given(l->thickness) ? &solid : &gw_detail_dashed);
        if (!known) gw_canvas_rectangle(canvas, &(struct gw_box){edge, box.top, left, box.bottom}, &gw_detail_dashed);
        gw_detail_name_once(&p->d.right, p->end - 8, (box.top + box.bottom) / 2, layer_name(p, l));
        from += thick;
    }
    if (!p->glass->layers.n) {
        gw_canvas_rectangle(canvas, &(struct gw_box){left, at_y(p, 0), p->end, at_y(p, p->thick)}, &gw_detail_dashed);
        gw_detail_name_once(&p->d.right, p->end - 8, at_y(p, p->thick / 2), "glass: not stated");
        gw_detail_ask(&p->d, "which glass is in it? Ask the architect (lites: layers)");
    }
}

static void set_thickness(struct pocket *p)
{
    p->thick = p->glass->layers.n ? 0 : 0.006;
    for (size_t i = 0; i < p->glass->layers.n; i++)
        p->thick += or_some(thickness_of(&p->glass->layers.items[i]), SOME_LAYER);
}

/* Metal behind the glass ------------------------------------------------------------------------------------------- */

/* The front wall of the mullion's tube about `center`, and the stumps of its webs; beyond `left` it goes on. */
static void put_mullion(struct pocket *p, double center, double left, double right, double top)
{
    const struct gw_member_spec *m = p->d.system->mullion;
    struct gw_canvas *canvas = p->d.sheet.canvas;
    if (!m || !m->tube) {
        gw_canvas_rectangle(canvas, &(struct gw_box){left, top, right, top + SOME_WALL * p->d.px}, &gw_detail_dashed);
        gw_detail_name(&p->d.right, right - 3, top + SOME_WALL * p->d.px / 2, "mullion: its section is not stated");
        gw_detail_ask(&p->d, "which section has the mullion? Ask the manufacturer (mullion: tube)");
        return;
    }
    const double half = m->tube->width / 2 * p->d.px, wall = m->tube->flange * p->d.px, web = m->tube->web * p->d.px;
    const double from = fmax(center - half, left), stump = top + wall + 20, face = center + half;
    const struct gw_look look = gw_detail_metal(m->alloy);
    gw_canvas_rectangle(canvas, &(struct gw_box){from, top, face, top + wall}, &look);
    gw_canvas_rectangle(canvas, &(struct gw_box){face - web, top, face, stump}, &look);
    if (center - half < left - 1)
        gw_detail_break(canvas, (struct gw_point){left, stump}, (struct gw_point){left, top - 5});
    else gw_canvas_rectangle(canvas, &(struct gw_box){center - half, top, center - half + web, stump}, &look);
    gw_detail_break(canvas, (struct gw_point){from - 4, stump}, (struct gw_point){face + 4, stump});
    gw_detail_name(&p->d.right, face - web / 2, top + wall + 8,
                   SAY(p, "mullion, face %s wide, wall %s", length(p, m->tube->width), length(p, m->tube->flange)));
}

/* Captured --------------------------------------------------------------------------------------------------------- */

static void put_gasket(struct pocket *p, double top, double bottom, const char *which)
{
    const bool stated = gw_given(p->face);
    const double right = at_x(p, 0), left = right - fmin(or_some(p->bite, SOME_BITE), 0.010) * p->d.px;
    gw_canvas_rectangle(p->d.sheet.canvas, &(struct gw_box){left, top, right, bottom},
                        stated ? &gw_detail_gasket : &gw_detail_dashed);
    gw_detail_name(&p->d.right, right - 3, (top + bottom) / 2,
                   stated ? SAY(p, "%s gasket, face clearance %s", which, length(p, p->face))
                          : SAY(p, "%s gasket: face clearance not stated", which));
}

/* Metal that the edge of the glass faces: its face stands where the clearance says, its shape is nobody's. */
static void put_tongue(struct pocket *p, double other, double face, double bottom)
{
    struct gw_canvas *canvas = p->d.sheet.canvas;
    const bool known = gw_given(p->gap) && gw_given(p->bite);
    const double top = at_y(p, 0), far = fmin(other, face - 4);
    gw_canvas_rectangle(canvas, &(struct gw_box){far, top, face, bottom},
                        &(struct gw_look){.fill = GW_PANEL, .line = GW_INK, .width = GW_LINE_THIN, .dashes = "5 3"});
    if (known)
        gw_canvas_line(canvas, (struct gw_point){face, top}, (struct gw_point){face, at_y(p, p->thick)},
                       &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    gw_detail_name(&p->d.left, far + 2, at_y(p, p->thick) - 4,
                   known ? "metal at the edge of the glass: schematic but for its face"
                         : "metal at the edge of the glass: schematic");
    if (gw_given(p->half) && known && p->bite + p->gap >= p->half)
        gw_detail_ask(&p->d, "bite and clearance reach past the middle of the plate: which of the figures is true? Ask "
                             "the manufacturer (drift: bite, side_gap; pressure_plate: width)");
}

/* From the plate's face into its chase, as far as the file says how deep; the head's height is schematic. */
static void put_screw(struct pocket *p, double center, double top, double face)
{
    const struct gw_screw_spec *s = p->d.system->screw;
    const struct gw_clamp_spec *c = p->d.system->clamp;
    struct gw_canvas *canvas = p->d.sheet.canvas;
    if (!s || !gw_given(s->diameter)) {
        gw_canvas_line(canvas, (struct gw_point){center, top - 10}, (struct gw_point){center, face}, &gw_detail_center);
        gw_detail_name(&p->d.left, center, top - 8, "screw: not stated");
        gw_detail_ask(&p->d, "which screw holds the plate? Ask the manufacturer (screw)");
        return;
    }
    const double shank = s->diameter / 2 * p->d.px, head = or_some(s->head_diameter, 2 * s->diameter) / 2 * p->d.px;
    const bool deep = c && gw_given(c->stack) && gw_given(s->engagement) && gw_given(p->plate);
    const double end = deep ? top + (p->plate + c->stack + s->engagement) * p->d.px : face;
    gw_canvas_rectangle(canvas, &(struct gw_box){center - shank, top, center + shank, end}, &gw_detail_steel);
    if (!deep)
        gw_detail_break(canvas, (struct gw_point){center - shank - 3, end}, (struct gw_point){center + shank + 3, end});
    gw_canvas_rectangle(canvas, &(struct gw_box){center - head, top - s->diameter * 0.45 * p->d.px, center + head, top},
                        &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_THIN, .dashes = "5 3"});
    gw_detail_name(&p->d.left, center - head + 2, top - s->diameter * 0.2 * p->d.px,
                   SAY(p, "screw %s%s%s", length(p, s->diameter), gw_given(s->head_diameter) ? ", head " : "",
                       gw_given(s->head_diameter) ? length(p, s->head_diameter) : ""));
}

static void put_plate(struct pocket *p, double left, double top, double bottom)
{
    const struct gw_plate_spec *plate = p->d.system->pressure_plate;
    struct gw_canvas *canvas = p->d.sheet.canvas;
    const struct gw_box box = {left, top, at_x(p, 0), bottom};
    if (plate && gw_given(p->half)) {
        const struct gw_look look = gw_detail_metal(plate->alloy);
        gw_canvas_rectangle(canvas, &box, &look);
        gw_detail_name(&p->d.right, box.right - 3, (top + bottom) / 2,
                       SAY(p, "pressure plate %s by %s", length(p, plate->width), length(p, plate->thickness)));
        return;
    }
    gw_canvas_rectangle(canvas, &box, &gw_detail_dashed);
    gw_detail_name(&p->d.right, box.right - 3, (top + bottom) / 2, "pressure plate: not stated");
    gw_detail_ask(&p->d,
                  "which pressure plate holds the glass? Ask the manufacturer (pressure_plate: width, thickness)");
}

static void put_clearances(struct pocket *p, double top)
{
    const double edge = at_x(p, -or_some(p->bite, SOME_BITE)), face = edge - or_some(p->gap, SOME_GAP) * p->d.px;
    if (gw_given(p->gap))
        gw_detail_across(&p->d, face, edge, top - 2 * LEVEL, at_y(p, 0),
                         SAY(p, "edge clearance %s", length(p, p->gap)));
    if (gw_given(p->bite))
        gw_detail_across(&p->d, edge, at_x(p, 0), top - LEVEL, at_y(p, 0), SAY(p, "bite %s", length(p, p->bite)));
    if (!gw_given(p->bite)) gw_detail_name(&p->d.left, edge + 2, at_y(p, 0.15 * p->thick), "bite: not stated");
    if (!gw_given(p->gap))
        gw_detail_name(&p->d.left, (face + edge) / 2, at_y(p, 0.5 * p->thick), "edge clearance: not stated");
    if (!gw_given(p->bite) || !gw_given(p->gap))
        gw_detail_ask(&p->d, "how deep does the glass stand in its pocket, and how much room is at its edges? Ask the "
                             "manufacturer (drift: bite, side_gap, end_gap)");
    if (!gw_given(p->face))
        gw_detail_ask(&p->d, "how far stand the faces of the glass from metal? Ask the manufacturer (installation: "
                             "face_clearance)");
}

/* Of what is to scale: from the plate's middle to its edge, or the bead. */
static double wide_of(const struct pocket *p)
{
    const struct gw_silicone_spec *s = p->d.system->silicone;
    const enum gw_glazing glazing = p->d.system->system->glazing;
    const double pocket = or_some(p->bite, SOME_BITE) + or_some(p->gap, SOME_GAP);
    const double half = glazing == GW_SILICONE ? 0 : fmax(or_some(p->half, SOME_HALF), pocket);
    return fmax(half, glazing == GW_CAPTURED ? 0 : or_some(s ? s->bite : GW_ABSENT, SOME_BITE));
}

static double high_of(const struct pocket *p)
{
    const struct gw_member_spec *m = p->d.system->mullion;
    return or_some(p->plate, SOME_PLATE) + 2 * or_some(p->face, SOME_FACE) + p->thick +
           (m && m->tube ? m->tube->flange : SOME_WALL);
}

/* The base line after it. */
static double put_captured(struct pocket *p, double top)
{
    const struct gw_screw_spec *s = p->d.system->screw;
    const double face = or_some(p->face, SOME_FACE), half = or_some(p->half, SOME_HALF);
    const double head = s && gw_given(s->diameter) ? 0.45 * s->diameter * p->d.px : 12;
    const double room = ((gw_given(p->bite) ? 1 : 0) + (gw_given(p->gap) ? 1 : 0)) * LEVEL + 14 + head;
    p->end = SHEET_MARGIN + SHEET_LIVE - DETAIL_COLUMN - 30;
    p->x = p->end - PAST;
    p->y = top + room + (or_some(p->plate, SOME_PLATE) + face) * p->d.px;
    const double center = at_x(p, -half), under = at_y(p, -face),
                 over = under - or_some(p->plate, SOME_PLATE) * p->d.px;
    const double inner = at_y(p, p->thick), tube = at_y(p, p->thick + face);
    const double tongue = at_x(p, -or_some(p->bite, SOME_BITE) - or_some(p->gap, SOME_GAP));
    const double left = center - BEYOND;
    put_tongue(p, fmax(left, 2 * center - tongue), tongue, tube);
    put_layers(p, at_x(p, -or_some(p->bite, SOME_BITE)), gw_given(p->bite));
    put_gasket(p, under, at_y(p, 0), "outer");
    put_gasket(p, inner, tube, "inner");
    put_mullion(p, center, left, at_x(p, 0), tube);
    put_plate(p, left, over, under);
    put_screw(p, center, over, tube);
    gw_detail_break(p->d.sheet.canvas, (struct gw_point){left, over - 5}, (struct gw_point){left, under + 5});
    gw_canvas_line(p->d.sheet.canvas, (struct gw_point){center, over - head - 8}, (struct gw_point){center, tube + 26},
                   &gw_detail_center);
    gw_detail_break(p->d.sheet.canvas, (struct gw_point){p->end, at_y(p, 0) - 5}, (struct gw_point){p->end, inner + 5});
    put_clearances(p, over - head);
    p->names = over - head;
    const double wall = high_of(p) * p->d.px - (inner - over) - face * p->d.px;
    return tube + wall + 30;
}

/* Bonded ----------------------------------------------------------------------------------------------------------- */

static void put_bead(struct pocket *p, double top)
{
    const struct gw_silicone_spec *s = p->d.system->silicone;
    const bool known = s && gw_given(s->bite) && gw_given(s->thickness);
    const double bite = or_some(s ? s->bite : GW_ABSENT, SOME_BITE),
                 thick = or_some(s ? s->thickness : GW_ABSENT, SOME_GAP);
    const struct gw_box bead = {at_x(p, 0), top, at_x(p, bite), top + thick * p->d.px};
    gw_canvas_rectangle(p->d.sheet.canvas, &bead, known ? &gw_detail_silicone : &gw_detail_dashed);
    const struct gw_box tape = {bead.right, bead.top, bead.right + 0.006 * p->d.px, bead.bottom};
    gw_canvas_rectangle(p->d.sheet.canvas, &tape, &gw_detail_dashed);
    gw_detail_name(&p->d.right, tape.right - 2, (bead.top + bead.bottom) / 2, "spacer: schematic");
    gw_detail_name(&p->d.left, bead.left + 3, (bead.top + bead.bottom) / 2,
                   known ? SAY(p, "structural silicone, bite %s, thickness %s", length(p, bite), length(p, thick))
                   : s   ? SAY(p, "structural silicone, bite %s, thickness not stated", length(p, bite))
                         : "structural silicone: not stated");
    if (!known)
        gw_detail_ask(&p->d, "how wide is the bite of the structural silicone, how thick is the bead? Ask the "
                             "manufacturer (silicone: bite, thickness)");
    if (s && gw_given(s->bite))
        gw_detail_across(&p->d, at_x(p, 0), at_x(p, s->bite), at_y(p, 0) - 16, at_y(p, 0),
                         SAY(p, "bite %s", length(p, s->bite)));
}

static double put_bonded(struct pocket *p, double top)
{
    const struct gw_silicone_spec *s = p->d.system->silicone;
    const double thick = or_some(s ? s->thickness : GW_ABSENT, SOME_GAP);
    p->end = SHEET_MARGIN + SHEET_LIVE - DETAIL_COLUMN - 30;
    p->x = p->end - fmax(PAST, or_some(s ? s->bite : GW_ABSENT, SOME_BITE) * p->d.px + 50);
    p->y = top + 34;
    p->names = p->y - 6;
    const double inner = at_y(p, p->thick), metal = inner + thick * p->d.px;
    put_layers(p, p->x, true);
    put_bead(p, inner);
    put_mullion(p, at_x(p, -SOME_GAP), p->x - BEYOND, at_x(p, or_some(s ? s->bite : GW_ABSENT, SOME_BITE) + SOME_GAP),
                metal);
    gw_detail_break(p->d.sheet.canvas, (struct gw_point){p->end, at_y(p, 0) - 5}, (struct gw_point){p->end, inner + 5});
    return metal + 50;
}

/* The sheet -------------------------------------------------------------------------------------------------------- */

static void take_figures(struct pocket *p)
{
    const struct gw_system *s = p->d.system;
    const struct gw_own_limits *face = s->installation ? s->installation->of[GW_ITEM_face_clearance] : NULL;
    p->bite = s->drift ? s->drift->bite : GW_ABSENT;
    p->gap = s->drift ? s->drift->side_gap : GW_ABSENT;
    p->half = s->pressure_plate ? s->pressure_plate->width / 2 : GW_ABSENT;
    p->plate = s->pressure_plate ? s->pressure_plate->thickness : GW_ABSENT;
    p->face = face ? face->at_least : GW_ABSENT;
    set_thickness(p);
}

static double put_names(struct pocket *p, double bottom)
{
    const double left = gw_detail_put_names(&p->d, &p->d.left, false, p->names),
                 right = gw_detail_put_names(&p->d, &p->d.right, true, p->names);
    p->d.left.n = p->d.right.n = 0;
    return fmax(bottom, fmax(left, right) + 8);
}

static double put_head(struct pocket *p)
{
    struct gw_arena *arena = p->d.sheet.arena;
    struct gw_text place;
    gw_text_init(&place, arena);
    gw_spot_say(&place, &p->spot);
    const char *lines[] = {
        SAY(p, "%s Lite type %s at %s, where it carries most suction. Outside is at the top.",
            gw_project_line(arena, p->d.results), gw_safe(arena, p->type->name), gw_safe(arena, place.at)),
        SAY(p, "Section at a mullion, scale %s. Dashed: not stated, or schematic, not to scale.", p->d.scale)};
    const double y = gw_sheet_head(&p->d.sheet, SAY(p, "%s: %s in its pocket", gw_safe(arena, p->d.candidate->name),
                                                    gw_safe(arena, p->type->name)));
    return gw_sheet_lines(&p->d.sheet, y, lines, 2);
}

static const char *described(const struct pocket *p)
{
    struct gw_text text;
    gw_text_init(&text, p->d.sheet.arena);
    gw_text_addf(&text, "Edge of lite type %s in %s at %s.", p->type->name, p->d.candidate->name, p->d.scale);
    for (size_t i = 0; i < p->d.n_rows; i++)
        gw_text_addf(&text, " %s: %s, %s.", p->d.rows[i].name, gw_detail_figures(p->d.sheet.arena, &p->d.rows[i]),
                     p->d.rows[i].verdict);
    return text.at;
}

static void draw(struct gw_canvas *canvas, const void *of, enum gw_units shown, int coarser)
{
    const struct lite_picture *of_lite = of;
    struct pocket p = {.type = of_lite->lite};
    gw_detail_open(&p.d, canvas, &of_lite->of, shown);
    p.lite = gw_lite_with_most_suction(of_lite->of.results->answer->takeoff, p.type);
    p.spot = spot_of(p.lite);
    p.d.coarser = coarser;
    gw_detail_at(&p.d, p.lite);
    p.glass = chosen(&p);
    take_figures(&p);
    gw_detail_scale(&p.d, wide_of(&p), high_of(&p), WIDE - PAST - BEYOND, HIGH);
    double y = put_head(&p) + 4;
    const enum gw_glazing glazing = p.d.system->system->glazing;
    if (glazing != GW_SILICONE) y = put_names(&p, put_captured(&p, y));
    if (glazing == GW_MIXED)
        gw_canvas_text(canvas, (struct gw_point){SHEET_MARGIN, y + 8}, &SMALL,
                       "Edges on silicone: which they are is not stated.");
    if (glazing != GW_CAPTURED) y = put_names(&p, put_bonded(&p, y + 8));
    if (glazing != GW_SILICONE) gw_pocket_rows(&p);
    if (glazing != GW_CAPTURED) gw_bead_rows(&p);
    canvas->description = described(&p);
    gw_detail_close(&p.d, y + 6);
}

enum gw_status gw_draw_pocket(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    (void)engine;
    gw_detail_to_fit(canvas, draw, of, shown);
    return GW_OK;
}
