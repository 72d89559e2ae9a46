/* Torques of plate screws against their age, with the band that is expected of each: log time, since clamp is lost by
 * the logarithm of time. */
#include "galeward/plot.h"
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <math.h>
#include <stdlib.h>

static const double DAY = 86400, HOUR = 3600; /* s */
static const struct gw_look BAND = {.line = GW_INK, .width = GW_LINE_MEDIUM, .dashes = "9 3"};

struct torque {
    double age, value, least, most; /* days; in the unit shown; absent: no such limit */
    enum gw_item_verdict verdict;
};
struct torques {
    struct torque *items;
    size_t n;
    double low, high, first, last;
};

static double shown_torque(double si, enum gw_units shown)
{
    return gw_given(si) ? gw_quantity_shown(gw_units_standard(), GW_MOMENT, shown, si) : GW_ABSENT;
}

static int by_age(const void *a, const void *b)
{
    const struct torque *x = a, *y = b;
    return (x->age > y->age) - (x->age < y->age);
}

/* Read on the day of fastening is drawn at an hour, where the line begins. */
static struct torques gather(const struct gw_inspection *in, struct gw_arena *arena, enum gw_units shown)
{
    struct torques out = {gw_alloc(arena, in->rows.n + 1, sizeof *out.items), 0, INFINITY, 0, INFINITY, 0};
    for (size_t i = 0; i < in->rows.n; i++) {
        const struct gw_inspected *row = &in->rows.items[i];
        if (row->item->id != GW_ITEM_screw_torque || !gw_given(row->age) || !row->result) continue;
        const struct torque t = {fmax(row->age, HOUR) / DAY, shown_torque(row->value.number, shown),
                                 shown_torque(row->result->limit.at_least, shown),
                                 shown_torque(row->result->limit.at_most, shown), row->verdict};
        out.items[out.n++] = t;
        out.low = fmin(out.low, fmin(t.value, t.least));
        out.high = fmax(out.high, fmax(t.value, t.most));
        out.first = fmin(out.first, t.age);
        out.last = fmax(out.last, t.age);
    }
    qsort(out.items, out.n, sizeof *out.items, by_age);
    return out;
}

static void band(struct gw_canvas *canvas, const struct gw_plot *plot, const struct torques *t, bool upper)
{
    struct gw_point *points = gw_alloc(canvas->arena, t->n + 1, sizeof *points);
    size_t n = 0;
    for (size_t i = 0; i < t->n; i++) {
        const double y = upper ? t->items[i].most : t->items[i].least;
        if (gw_given(y)) points[n++] = (struct gw_point){t->items[i].age, y};
    }
    gw_plot_curve(canvas, plot, points, n, &BAND);
}

enum gw_status gw_draw_torques(struct gw_canvas *canvas, const void *of, enum gw_units shown, struct gw_engine *engine)
{
    static const enum sheet_mark marks[] = {[GW_ITEM_UNKNOWN] = MARK_ASK,
                                            [GW_ITEM_WITHIN] = MARK_SETTLED,
                                            [GW_ITEM_OUTSIDE_HOLDS] = MARK_IN_HAND,
                                            [GW_ITEM_NOT_MET] = MARK_STOP};
    const struct readings_picture *p = of;
    struct sheet sheet;
    const struct torques t = gather(p->inspection, canvas->arena, shown);
    (void)engine;
    gw_sheet_open(&sheet, canvas, shown);
    const char *lines[] = {
        gw_format(canvas->arena,
                  "%zu torques of plate screws of %s, at the age at which they were read. Dashed: what is "
                  "expected at that age, from and to.",
                  t.n, p->inspection->system->name),
        "Square with a cross: not met. Triangle: outside, holds. Diamond: unknown. Circle: within."};
    canvas->description = gw_format(canvas->arena, "%s %s", lines[0], lines[1]);
    const double top = gw_sheet_lines(&sheet, gw_sheet_head(&sheet, "Torques against their age"), lines, 2) + 24;
    const double margin = 0.1 * fmax(t.high - t.low, 1);
    const struct gw_plot plot = {SHEET_MARGIN + 60,
                                 top,
                                 SHEET_LIVE - 80,
                                 300,
                                 {fmin(t.first, 0.04) / 1.2, fmax(t.last, 400) * 1.2, true, "days since fastening"},
                                 {fmax(t.low - margin, 0), t.high + margin, false,
                                  gw_format(canvas->arena, "torque, %s", gw_dim_info(GW_MOMENT)->shown[shown])}};
    gw_plot_open(canvas, &plot);
    band(canvas, &plot, &t, false);
    band(canvas, &plot, &t, true);
    for (size_t i = 0; i < t.n; i++) {
        struct gw_point at;
        if (gw_plot_place(&at, &plot, t.items[i].age, t.items[i].value))
            gw_mark_draw(canvas, at, marks[t.items[i].verdict]);
    }
    gw_sheet_foot(&sheet, top + plot.height + 48, NULL, 0);
    return GW_OK;
}
