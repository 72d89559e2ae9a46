/* Cost of a plan by place: a bar each, parted into the system, the glass and the options that are taken there. */
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

static const double NAMES = 190, BARS = 400, ROW = 24, HIGH = 15, GAP = 8; /* pixels */
static const struct gw_lettering PLAIN = {.size = GW_LABEL_SIZE};
static const struct gw_lettering LIGHT = {.size = GW_LABEL_SIZE, .color = GW_INK2};
static const struct gw_lettering MIDDLE = {.size = GW_LABEL_SIZE, .color = GW_INK2, .align = GW_ALIGN_MIDDLE};
static const struct gw_lettering SUM = {.size = GW_LABEL_SIZE, .bold = true, .align = GW_ALIGN_END};

/* Parts in the order of the bars: the system, the glass, options in the file's order; those that have no pattern of
 * their own are one. */
enum { SYSTEM, GLASS, OPTIONS, PARTS = 7, PLACES = 30 };
static const struct gw_pattern PATTERNS[PARTS] = {
    {.angle = 0, .spacing = 0},          {0, 6, 1.7, GW_INK, true, false},    {45, 6, 1, GW_INK, false, false},
    {-45, 4, 0.7, GW_INK, false, false}, {45, 7.6, 0.7, GW_INK, false, true}, {90, 4, 0.7, GW_INK, false, false},
    {0, 4, 0.7, GW_INK, false, false}};
struct chart {
    struct sheet *sheet;
    const struct gw_bid *bid;
    const char *names[PARTS];
    const struct gw_system_option *options[PARTS]; /* of a part; NULL: none, or several */
    double sums[PARTS], most;
    bool merged; /* the last part is of several options */
};

static struct gw_look look_of(size_t part)
{
    return (struct gw_look){.fill = part == SYSTEM ? GW_PANEL : GW_PAPER,
                            .line = GW_INK,
                            .width = GW_LINE_THIN,
                            .pattern = PATTERNS[part].spacing > 0 ? &PATTERNS[part] : NULL};
}

static size_t part_of(struct chart *c, const struct gw_system_option *option)
{
    size_t i = OPTIONS;
    while (i < PARTS && c->options[i] && c->options[i] != option) i++;
    if (i < PARTS) {
        c->options[i] = option;
        c->names[i] = gw_sheet_name(c->sheet, gw_safe(c->sheet->arena, option->name));
        return i;
    }
    c->names[PARTS - 1] = "other options";
    c->merged = true;
    return PARTS - 1;
}

static void parts_of(double out[PARTS], struct chart *c, const struct gw_selected *place)
{
    for (size_t i = 0; i < PARTS; i++) out[i] = 0;
    out[SYSTEM] = place->wall_cost;
    for (size_t i = 0; i < place->lites.n; i++) out[GLASS] += place->lites.items[i].cost;
    for (size_t i = 0; i < place->options.n; i++) {
        const struct gw_selected_option *o = &place->options.items[i];
        if (o->cost > 0) out[part_of(c, o->option)] += o->cost;
    }
}

static const char *money(const struct chart *c, double value) { return gw_cost_text(c->sheet->arena, value); }

static void put_bar(struct chart *c, const struct gw_selected *place, double middle)
{
    double parts[PARTS], x = SHEET_MARGIN + NAMES;
    parts_of(parts, c, place);
    for (size_t i = 0; i < PARTS; i++) {
        const double width = c->most > 0 ? parts[i] / c->most * BARS : 0;
        const struct gw_look look = look_of(i);
        if (!(parts[i] > 0)) continue;
        gw_canvas_rectangle(c->sheet->canvas, &(struct gw_box){x, middle - HIGH / 2, x + width, middle + HIGH / 2},
                            &look);
        x += width;
    }
}

static void add_sums(struct chart *c, const struct gw_selected *place)
{
    double parts[PARTS];
    parts_of(parts, c, place);
    for (size_t i = 0; i < PARTS; i++) c->sums[i] += parts[i];
}

static const char *place_name(const struct chart *c, const struct gw_plan_place *p)
{
    return gw_format(c->sheet->arena, "%s, zone %d%s", gw_sheet_name(c->sheet, gw_safe(c->sheet->arena, p->wall)),
                     p->zone, p->parapet ? ", above the roof" : "");
}

static double put_line(struct chart *c, const char *name, double value, double base)
{
    const double next =
        gw_canvas_paragraph(c->sheet->canvas, (struct gw_point){SHEET_MARGIN, base}, NAMES - GAP, &PLAIN, name);
    gw_canvas_text(c->sheet->canvas, (struct gw_point){SHEET_MARGIN + SHEET_LIVE, base}, &SUM, money(c, value));
    return next;
}

/* The lower end of the rows. */
static double put_places(struct chart *c, double top)
{
    const struct gw_bid *bid = c->bid;
    double y = top, left = 0;
    for (size_t i = 0; i < bid->places.n; i++) {
        const struct gw_selected *place = &bid->places.items[i];
        add_sums(c, place);
        if (i >= PLACES) {
            left += place->cost;
            continue;
        }
        const double middle = y + ROW / 2;
        const double next = put_line(c, place_name(c, place->place), place->cost, middle + 0.36 * GW_LABEL_SIZE);
        put_bar(c, place, middle);
        y = fmax(y + ROW, next - 0.5 * GW_LABEL_SIZE);
    }
    if (bid->places.n > PLACES) {
        put_line(c, gw_format(c->sheet->arena, "%zu more places", bid->places.n - PLACES), left,
                 y + ROW / 2 + 0.36 * GW_LABEL_SIZE);
        y += ROW;
    }
    return y;
}

static double put_sum(struct chart *c, double y)
{
    const double right = SHEET_MARGIN + SHEET_LIVE;
    if (c->bid->once > 0) {
        put_line(c, "paid once", c->bid->once, y + ROW / 2 + 0.36 * GW_LABEL_SIZE);
        y += ROW;
    }
    gw_canvas_line(c->sheet->canvas, (struct gw_point){SHEET_MARGIN, y}, (struct gw_point){right, y},
                   &(struct gw_look){.line = GW_INK, .width = GW_LINE_BOLD});
    put_line(c, "sum", c->bid->cost, y + ROW / 2 + 0.36 * GW_LABEL_SIZE);
    return y + ROW;
}

/* An entry of the key; without a look, which stands in no bar, its words alone. */
static struct gw_point put_entry(struct chart *c, struct gw_point at, const struct gw_look *look, const char *words)
{
    const double swatch = look ? 27 : 0, high = 13.6, gap = look ? GAP : 0;
    const double width = swatch + gap + gw_lettering_width(&LIGHT, words) + 2 * GAP;
    if (at.x + width > SHEET_MARGIN + SHEET_LIVE) at = (struct gw_point){SHEET_MARGIN, at.y + 1.7 * GW_LABEL_SIZE};
    if (look)
        gw_canvas_rectangle(c->sheet->canvas, &(struct gw_box){at.x, at.y - high + 3, at.x + swatch, at.y + 3}, look);
    gw_canvas_text(c->sheet->canvas, (struct gw_point){at.x + swatch + gap, at.y}, &PLAIN, words);
    at.x += width;
    return at;
}

/* What the sum is made of. */
static double put_key(struct chart *c, double top)
{
    struct gw_point at = {SHEET_MARGIN, top + GW_LABEL_SIZE};
    for (size_t i = 0; i < PARTS; i++) {
        if (!(c->sums[i] > 0)) continue;
        const struct gw_look look = look_of(i);
        at = put_entry(c, at, &look, gw_format(c->sheet->arena, "%s: %s", c->names[i], money(c, c->sums[i])));
    }
    if (c->bid->once > 0)
        at = put_entry(c, at, NULL, gw_format(c->sheet->arena, "paid once: %s", money(c, c->bid->once)));
    return at.y + GW_LABEL_SIZE;
}

static double round_step(double most)
{
    const double power = pow(10, floor(log10(most / 5))), steps[] = {1, 2, 5, 10};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (most / (steps[i] * power) <= 5) return steps[i] * power;
    return 10 * power;
}

/* Round steps have no cents. */
static const char *tick(const struct chart *c, double value)
{
    const char *text = money(c, value), *point = strchr(text, '.');
    const bool whole = point && strcmp(point, ".00") == 0;
    return whole ? gw_format(c->sheet->arena, "%.*s", (int)(point - text), text) : text;
}

static void put_axis(const struct chart *c, double top, double bottom)
{
    if (!(c->most > 0)) return;
    const double step = round_step(c->most);
    for (int i = 0; step * i <= c->most; i++) {
        const double x = SHEET_MARGIN + NAMES + step * i / c->most * BARS;
        gw_canvas_line(c->sheet->canvas, (struct gw_point){x, top}, (struct gw_point){x, bottom},
                       &(struct gw_look){.line = GW_FAINT, .width = GW_LINE_FINE});
        gw_canvas_text(c->sheet->canvas, (struct gw_point){x, top - 5}, &MIDDLE, tick(c, step * i));
    }
}

static const char *saving(const struct chart *c)
{
    const struct gw_bid *bid = c->bid;
    if (!gw_given(bid->everywhere_cost)) return "No single choice in every place does it.";
    return gw_format(c->sheet->arena, "The same choice in every place: %s; place by place saves %s.",
                     money(c, bid->everywhere_cost), money(c, bid->saving));
}

static const char *described(const struct chart *c, const char *candidate)
{
    struct gw_text text;
    gw_text_init(&text, c->sheet->arena);
    gw_text_addf(&text, "%s: cost by place, %zu places, %s in all.", candidate, c->bid->places.n,
                 money(c, c->bid->cost));
    for (size_t i = 0; i < PARTS; i++)
        if (c->sums[i] > 0) gw_text_addf(&text, " %s %s.", c->names[i], money(c, c->sums[i]));
    gw_text_addf(&text, " %s", saving(c));
    return text.at;
}

enum gw_status gw_draw_cost(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    const struct plan_picture *p = of;
    const char *candidate = gw_safe(canvas->arena, p->bid->candidate->name);
    struct sheet sheet;
    struct chart c = {.sheet = &sheet, .bid = p->bid, .names = {"system", "glass"}};
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    for (size_t i = 0; i < p->bid->places.n; i++) c.most = fmax(c.most, p->bid->places.items[i].cost);
    const char *lines[] = {gw_project_line(canvas->arena, p->results), saving(&c)};
    double y = gw_sheet_head(&sheet, gw_format(canvas->arena, "%s: cost by place", candidate));
    y = gw_sheet_lines(&sheet, y, lines, 2);
    y = gw_sheet_caption(&sheet, (struct gw_point){SHEET_MARGIN, y + 8}, SHEET_LIVE,
                         "Cost of the plan, as the files have it",
                         "Without a currency; each figure at the right is of its place.");
    const double top = y + 18;
    put_axis(&c, top, top + ROW * fmin((double)p->bid->places.n, PLACES));
    y = put_sum(&c, put_places(&c, top));
    y = put_key(&c, y + 8);
    canvas->description = described(&c, candidate);
    gw_sheet_foot(&sheet, y, NULL, 0);
    return GW_OK;
}
