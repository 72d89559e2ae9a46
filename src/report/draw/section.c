/* Sections of a candidate's mullion and transom to one scale, outside at the top: tube, pressure plate, screw, the
 * glass in its pocket, as far as the system's file has their figures. What it has not is said, and not drawn. */
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>

static const double WIDE = 300, HIGH = 420; /* pixels: of one section */
static const struct gw_pattern STEEL = {45, 5.3, 1.7, GW_INK, false, false};
static const struct gw_look CUT = {.fill = GW_INK, .line = GW_INK, .width = GW_LINE_BOLD};
static const struct gw_look GLASS = {.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD};
static const struct gw_lettering NAME = {.size = GW_LABEL_SIZE};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .align = GW_ALIGN_MIDDLE, .bold = true};

struct section {
    struct sheet *sheet;
    const struct gw_system *system;
    double px, pocket; /* pixels a meter; m, of the thickest glass; absent: not known */
    struct gw_text missing;
};

static struct gw_look metal_look(enum gw_metal alloy)
{
    const bool aluminum = !gw_metal_is_steel(alloy);
    return aluminum ? CUT
                    : (struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_BOLD, .pattern = &STEEL};
}

static void lacks(struct section *s, const char *what)
{
    gw_text_addf(&s->missing, "%s%s", s->missing.length ? "; " : "", what);
}

/* Walls of the tube; its front face lies at `top`. */
static void put_tube(struct section *s, const struct gw_member_spec *m, double x, double top)
{
    const struct gw_tube *t = m->tube;
    const double half = t->width / 2 * s->px, web = t->web * s->px, flange = t->flange * s->px;
    const double bottom = top + t->depth * s->px;
    struct gw_point outer[] = {{x - half, top}, {x + half, top}, {x + half, bottom}, {x - half, bottom}};
    struct gw_point inner[] = {{x - half + web, top + flange},
                               {x + half - web, top + flange},
                               {x + half - web, bottom - flange},
                               {x - half + web, bottom - flange}};
    const struct gw_outline walls[] = {{outer, 4}, {inner, 4}};
    const struct gw_look look = metal_look(m->alloy);
    gw_canvas_outlines(s->sheet->canvas, walls, 2, &look);
    gw_canvas_dimension(s->sheet->canvas, (struct gw_point){x - half, bottom + 24},
                        (struct gw_point){x + half, bottom + 24}, gw_sheet_given(s->sheet, GW_THICKNESS, t->width));
    gw_canvas_dimension(s->sheet->canvas, (struct gw_point){x - half - 18, bottom},
                        (struct gw_point){x - half - 18, top}, gw_sheet_given(s->sheet, GW_THICKNESS, t->depth));
}

static void leader(struct section *s, struct gw_point from, double x, const char *words)
{
    const struct gw_point to = {x, from.y};
    gw_canvas_line(s->sheet->canvas, from, to, &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
    gw_sheet_put(s->sheet, (struct gw_point){x + 4, from.y + 0.36 * GW_LABEL_SIZE}, 15, 3, &NAME, words, words);
}

/* On either side of the plate's middle, as deep as the file has its bite. */
static void put_glass(struct section *s, double x, double top)
{
    const double past = 40, plate = s->system->pressure_plate->width / 2, bite = s->system->drift->bite;
    const double from = (plate - bite) * s->px, to = plate * s->px + past, high = s->pocket * s->px;
    for (int side = -1; side <= 1; side += 2) {
        const struct gw_box pane = {x + (side < 0 ? -to : from), top, x + (side < 0 ? -from : to), top + high};
        gw_canvas_rectangle(s->sheet->canvas, &pane, &GLASS);
        for (int i = 0; i < 2; i++) {
            const double at = x + side * (from + 22 + 9 * i), middle = top + high / 2;
            gw_canvas_line(s->sheet->canvas, (struct gw_point){at - 4, middle + 4},
                           (struct gw_point){at + 4, middle - 4},
                           &(struct gw_look){.line = GW_INK, .width = GW_LINE_THIN});
        }
    }
}

static bool has_glass(const struct section *s)
{
    const struct gw_system *y = s->system;
    return y->pressure_plate && gw_given(s->pocket) && y->drift && gw_given(y->drift->bite) &&
           y->drift->bite < y->pressure_plate->width / 2;
}

/* The plate lies over the glass; the screw runs from its face to the tube's. */
static void put_front(struct section *s, double x, double face, bool named)
{
    const struct gw_plate_spec *plate = s->system->pressure_plate;
    const struct gw_screw_spec *screw = s->system->screw;
    if (!plate || !gw_given(s->pocket) || !gw_given(plate->width) || !gw_given(plate->thickness)) return;
    const double half = plate->width / 2 * s->px, under = face - s->pocket * s->px;
    const double top = under - plate->thickness * s->px, right = x + half + 52;
    const struct gw_look look = metal_look(plate->alloy);
    if (has_glass(s)) put_glass(s, x, under);
    gw_canvas_rectangle(s->sheet->canvas, &(struct gw_box){x - half, top, x + half, under}, &look);
    const bool screwed = screw && gw_given(screw->diameter);
    const double shank = screwed ? screw->diameter / 2 * s->px : 0;
    if (screwed)
        gw_canvas_rectangle(
            s->sheet->canvas, &(struct gw_box){x - shank, top, x + shank, face},
            &(struct gw_look){.fill = GW_PAPER, .line = GW_INK, .width = GW_LINE_THIN, .pattern = &STEEL});
    if (!named) return;
    leader(s, (struct gw_point){x + half, (top + under) / 2}, right,
           gw_format(s->sheet->arena, "plate %s by %s", gw_sheet_given(s->sheet, GW_THICKNESS, plate->width),
                     gw_sheet_given(s->sheet, GW_THICKNESS, plate->thickness)));
    if (has_glass(s))
        leader(s, (struct gw_point){x + half + 30, under + (face - under) * 0.4}, right,
               gw_format(s->sheet->arena, "glass %s, bite %s", gw_sheet_given(s->sheet, GW_THICKNESS, s->pocket),
                         gw_sheet_given(s->sheet, GW_THICKNESS, s->system->drift->bite)));
    if (screwed)
        leader(s, (struct gw_point){x + shank, face - 5}, right,
               gw_format(s->sheet->arena, "screw %s", gw_sheet_given(s->sheet, GW_THICKNESS, screw->diameter)));
}

static double front_height(const struct section *s)
{
    const struct gw_plate_spec *plate = s->system->pressure_plate;
    return gw_given(s->pocket) && plate && gw_given(plate->thickness) ? s->pocket + plate->thickness : 0;
}

static void set_scale(struct section *s, const struct gw_member_spec *const members[2], double *ratio)
{
    static const double ratios[] = {1, 2, 2.5, 4, 5, 10, 20};
    double wide = 0, high = 0;
    for (int i = 0; i < 2; i++) {
        if (!members[i] || !members[i]->tube) continue;
        wide = fmax(wide, members[i]->tube->width);
        high = fmax(high, members[i]->tube->depth + front_height(s));
    }
    size_t i = 0;
    while (i + 1 < sizeof ratios / sizeof *ratios &&
           (wide * 96 / 0.0254 / ratios[i] > WIDE / 2 || high * 96 / 0.0254 / ratios[i] > HIGH))
        i++;
    *ratio = ratios[i];
    s->px = 96 / 0.0254 / ratios[i];
}

static void set_pocket(struct section *s)
{
    s->pocket = GW_ABSENT;
    for (size_t i = 0; i < s->system->pocket.n; i++) s->pocket = fmax(s->pocket, s->system->pocket.items[i]);
    if (!gw_given(s->pocket)) lacks(s, "the pocket's glass thickness (pocket)");
    if (!s->system->pressure_plate) lacks(s, "a pressure plate (pressure_plate)");
    else if (!has_glass(s)) lacks(s, "how deep the glass stands in it (drift: bite)");
    if (!s->system->screw) lacks(s, "the screw (screw)");
}

static double put_members(struct section *s, const struct gw_member_spec *const members[2], double top)
{
    double bottom = top;
    bool named = false;
    for (int i = 0; i < 2; i++) {
        const struct gw_member_spec *m = members[i];
        const double x = SHEET_MARGIN + (i ? 560 : 112), face = top + 26 + front_height(s) * s->px;
        const char *title = i ? "Transom" : "Mullion";
        if (!m || !m->tube) {
            lacks(s, gw_format(s->sheet->arena, "the %s's shape (%s: tube)", i ? "transom" : "mullion",
                               i ? "transom" : "mullion"));
            continue;
        }
        if (m->insert)
            lacks(s, gw_format(s->sheet->arena, "the shape of the insert in the %s", i ? "transom" : "mullion"));
        gw_canvas_text(s->sheet->canvas, (struct gw_point){x, top + 8}, &MIDDLE,
                       gw_format(s->sheet->arena, "%s, %s", title, gw_choice_name(gw_metal_choices, (int)m->alloy)));
        put_front(s, x, face, !named);
        named = true;
        put_tube(s, m, x, face);
        bottom = fmax(bottom, face + m->tube->depth * s->px + 34);
    }
    return bottom;
}

static const char *tube_line(const struct section *s, const char *name, const struct gw_member_spec *m)
{
    if (!m || !m->tube) return NULL;
    return gw_format(
        s->sheet->arena, "%s: %s by %s, faces %s, webs %s.", name,
        gw_sheet_given(s->sheet, GW_THICKNESS, m->tube->width), gw_sheet_given(s->sheet, GW_THICKNESS, m->tube->depth),
        gw_sheet_given(s->sheet, GW_THICKNESS, m->tube->flange), gw_sheet_given(s->sheet, GW_THICKNESS, m->tube->web));
}

enum gw_status gw_draw_section(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct candidate_picture *p = of;
    struct sheet sheet;
    struct section s = {.sheet = &sheet, .system = p->candidate};
    const struct gw_member_spec *const members[2] = {p->candidate->mullion, p->candidate->transom};
    double ratio;
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    struct gw_text scale;
    gw_text_init(&s.missing, canvas->arena);
    set_pocket(&s);
    set_scale(&s, members, &ratio);
    gw_text_init(&scale, canvas->arena);
    gw_text_number(&scale, ratio, 3);
    const char *lines[] = {gw_format(canvas->arena,
                                     "%s As offered, without options. Scale 1:%s on A4 and letter; "
                                     "outside is at the top; screws are drawn to the face of the tube.",
                                     gw_project_line(canvas->arena, p->results), scale.at),
                           tube_line(&s, "Mullion", members[0]), tube_line(&s, "Transom", members[1])};
    double y =
        gw_sheet_head(&sheet, gw_format(canvas->arena, "%s: sections", gw_safe(canvas->arena, p->candidate->name)));
    y = gw_sheet_lines(&sheet, y, lines, 3);
    y = put_members(&s, members, y + 12);
    const char *missing =
        s.missing.length ? gw_format(canvas->arena, "Not in the file, so not drawn: %s.", s.missing.at) : NULL;
    y = gw_sheet_lines(&sheet, y + 18, &missing, 1);
    canvas->description = gw_format(canvas->arena, "Sections of %s at 1:%s. %s %s %s", p->candidate->name, scale.at,
                                    lines[1] ? lines[1] : "", lines[2] ? lines[2] : "", missing ? missing : "");
    gw_sheet_foot(&sheet, y, NULL, 0);
    return GW_OK;
}
