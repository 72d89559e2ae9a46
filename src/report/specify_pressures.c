/* Wind pressures of a specification: where the zones lie, the greatest of each, and by effective area. */
#include "base/fields.h"
#include "report/specify.h"

#include "report/demand.h"
#include "report/view.h"

#include <string.h>

struct pressure_row {
    const char *id, *wall, *part;
    int zone;
    const char *area; /* of the rows by area */
    double inward, outward, inward_asd, outward_asd;
};
static const struct gw_field ROW[] = {
    F(pressure_row, id, GW_T_TEXT),
    F(pressure_row, wall, GW_T_TEXT),
    F(pressure_row, part, GW_T_TEXT),
    F(pressure_row, zone, GW_T_INTEGER),
    F(pressure_row, area, GW_T_TEXT),
    NUM(pressure_row, inward, GW_PRESSURE),
    NUM(pressure_row, outward, GW_PRESSURE),
    NUM(pressure_row, inward_asd, GW_PRESSURE),
    NUM(pressure_row, outward_asd, GW_PRESSURE),
};
static const struct gw_record ROW_RECORD = RECORD("row", pressure_row, ROW, .help = "pressures of a place");

#define FIGURES                                                                                                        \
    COLUMN("Inward, asd", "inward_asd", .rounding = UP), COLUMN("Outward, asd", "outward_asd", .rounding = UP),        \
        COLUMN("Inward, strength", "inward", .rounding = UP), COLUMN("Outward, strength", "outward", .rounding = UP)
static const struct view_column GREATEST_COLUMNS[] = {COLUMN("No.", "id"), COLUMN("Wall", "wall"),
                                                      COLUMN("Zone", "zone"), COLUMN("Part", "part"), FIGURES};
static const struct view GREATEST = VIEW(&ROW_RECORD, GREATEST_COLUMNS);
static const struct view_column AREA_COLUMNS[] = {COLUMN("Wall", "wall"), COLUMN("Zone", "zone"),
                                                  COLUMN("Part", "part"), COLUMN("Area", "area", .right = true),
                                                  FIGURES};

static bool same_figures(const struct pressure_row *a, const struct pressure_row *b, enum gw_units shown)
{
    const double x[] = {a->inward, a->outward, a->inward_asd, a->outward_asd},
                 y[] = {b->inward, b->outward, b->inward_asd, b->outward_asd};
    for (size_t i = 0; i < COUNT(x); i++) {
        if (gw_given(x[i]) != gw_given(y[i])) return false;
        const int digits = gw_dim_info(GW_PRESSURE)->decimals[shown];
        const double left = gw_printed(GW_PRESSURE, shown, x[i], digits, UP),
                     right = gw_printed(GW_PRESSURE, shown, y[i], digits, UP);
        if (left < right || left > right) return false;
    }
    return true;
}

static const char *part_words(const struct gw_specified_pressure *p)
{
    if (p->framing) return p->first->parapet ? "framing above the roof line" : "framing";
    return p->first->parapet ? "lites above the roof line" : "lites and what holds them";
}

static struct pressure_row row_of(const struct gw_specified_pressure *p)
{
    return (struct pressure_row){.id = p->row ? p->row->id : "not known",
                                 .wall = p->first->wall,
                                 .part = part_words(p),
                                 .zone = p->first->zone,
                                 .inward = p->inward,
                                 .outward = p->outward,
                                 .inward_asd = p->inward_asd,
                                 .outward_asd = p->outward_asd};
}

static void greatest(struct specified_page *s)
{
    const struct gw_specification *spec = s->spec;
    struct pressure_row *rows = gw_alloc(s->page.arena, spec->pressures.n + 1, sizeof *rows);
    for (size_t i = 0; i < spec->pressures.n; i++) rows[i] = row_of(&spec->pressures.items[i]);
    gw_view_list(&s->page, "", &GREATEST, rows, spec->pressures.n);
}

/* "10 and less", "20", "50 to 500": areas whose printed figures are equal share a row. */
static const char *area_words(struct specified_page *s, const struct gw_specified_pressure *p, size_t from, size_t to)
{
    struct gw_text text;
    const size_t last = p->areas.n - 1;
    gw_text_init(&text, s->page.arena);
    gw_add_bare(&text, GW_AREA, s->page.shown, p->areas.items[from].area, NEAREST);
    if (to > from) {
        gw_text_add(&text, " to ");
        gw_add_bare(&text, GW_AREA, s->page.shown, p->areas.items[to].area, NEAREST);
    }
    if (to == last) gw_text_add(&text, " and more");
    gw_text_addf(&text, " %s", gw_dim_info(GW_AREA)->shown[s->page.shown]);
    return text.at;
}

static struct pressure_row area_row(const struct gw_specified_pressure *p, size_t i)
{
    const struct gw_area_pressure *a = &p->areas.items[i];
    struct pressure_row row = row_of(p);
    row.inward = a->inward;
    row.outward = a->outward;
    row.inward_asd = a->inward_asd;
    row.outward_asd = a->outward_asd;
    return row;
}

static size_t area_rows(struct specified_page *s, struct pressure_row *out, const struct gw_specified_pressure *p)
{
    size_t n = 0;
    for (size_t i = 0, next; i < p->areas.n; i = next) {
        struct pressure_row row = area_row(p, i);
        for (next = i + 1; next < p->areas.n; next++) {
            const struct pressure_row other = area_row(p, next);
            if (!same_figures(&row, &other, s->page.shown)) break;
        }
        row.area = area_words(s, p, i, next - 1);
        out[n++] = row;
    }
    return n;
}

static void by_area(struct specified_page *s)
{
    const struct gw_specification *spec = s->spec;
    const struct view areas = VIEW(&ROW_RECORD, AREA_COLUMNS);
    size_t n = 0, most = 1;
    for (size_t i = 0; i < spec->pressures.n; i++) most += spec->pressures.items[i].areas.n;
    struct pressure_row *rows = gw_alloc(s->page.arena, most, sizeof *rows);
    for (size_t i = 0; i < spec->pressures.n; i++) n += area_rows(s, rows + n, &spec->pressures.items[i]);
    gw_view_list(&s->page, "", &areas, rows, n);
}

void gw_spec_pressures(struct specified_page *s)
{
    gw_spec_article(s, "Wind pressures");
    gw_spec_paragraph(
        s,
        gw_format(s->page.arena,
                  "Resist, each way, the greatest pressure of each wall, zone and part%s. The first two columns of "
                  "figures are test pressures, at allowable-stress level; the last two are at strength level. Figures "
                  "are rounded up.",
                  gw_spec_rows_of(s, "structural")));
    greatest(s);
    gw_spec_paragraph(s, "Zone 5 is the strip beside an outside corner; all else is zone 4. Columns and lengths are "
                         "counted from the left, seen from outside:");
    gw_page_wall_keys(&s->page);
    gw_spec_paragraph(s, "By effective wind area, at the greatest height of each part, for lites and members that are "
                         "sized by their own area. Between two areas take the row of the smaller one. The area of a "
                         "member is its span times the greater of its width and a third of the span.");
    by_area(s);
}
