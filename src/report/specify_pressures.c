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
    const char *by;   /* who says the pressures */
    double inward, outward, inward_asd, outward_asd;
};
static const struct gw_field ROW[] = {
    F(pressure_row, id, GW_T_TEXT),
    F(pressure_row, wall, GW_T_TEXT),
    F(pressure_row, part, GW_T_TEXT),
    F(pressure_row, zone, GW_T_INTEGER),
    F(pressure_row, area, GW_T_TEXT),
    F(pressure_row, by, GW_T_TEXT),
    NUM(pressure_row, inward, GW_PRESSURE),
    NUM(pressure_row, outward, GW_PRESSURE),
    NUM(pressure_row, inward_asd, GW_PRESSURE),
    NUM(pressure_row, outward_asd, GW_PRESSURE),
};
static const struct gw_record ROW_RECORD = RECORD("row", pressure_row, ROW, .help = "pressures of a place");

#define FIGURES                                                                                                        \
    COLUMN("Inward, asd", "inward_asd", .rounding = UP), COLUMN("Outward, asd", "outward_asd", .rounding = UP),        \
        COLUMN("Inward, strength", "inward", .rounding = UP), COLUMN("Outward, strength", "outward", .rounding = UP),  \
        COLUMN("By", "by")
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
    return strcmp(a->by, b->by) == 0;
}

/* What the project gives is said by its source alone: 1.1 says that it is given. */
static const char *short_source(struct specified_page *s, const struct gw_pressure_source *by)
{
    return by->row ? gw_format(s->page.arena, "%s%s", by->source, by->how) : gw_pressure_source_text(s->page.arena, by);
}

/* "asce7-16"; "asce7-16 in, S-001 out". */
static const char *by_words(struct specified_page *s, const struct gw_pressure_source *in,
                            const struct gw_pressure_source *out)
{
    const char *inward = in->source ? short_source(s, in) : NULL, *outward = out->source ? short_source(s, out) : NULL;
    if (!inward || !outward) return inward ? inward : outward ? outward : "not known";
    if (strcmp(inward, outward) == 0) return inward;
    return gw_format(s->page.arena, "%s in, %s out", inward, outward);
}

const char *gw_spec_part(bool framing, bool parapet)
{
    if (framing) return parapet ? "framing above the roof line" : "framing";
    return parapet ? "lites above the roof line" : "lites";
}

static struct pressure_row row_of(struct specified_page *s, const struct gw_specified_pressure *p)
{
    return (struct pressure_row){.id = p->row ? p->row->id : "not known",
                                 .wall = p->first->wall,
                                 .part = gw_spec_part(p->framing, p->first->parapet),
                                 .zone = p->first->zone,
                                 .by = by_words(s, &p->inward_by, &p->outward_by),
                                 .inward = p->inward,
                                 .outward = p->outward,
                                 .inward_asd = p->inward_asd,
                                 .outward_asd = p->outward_asd};
}

static void greatest(struct specified_page *s)
{
    const struct gw_specification *spec = s->spec;
    struct pressure_row *rows = gw_alloc(s->page.arena, spec->pressures.n + 1, sizeof *rows);
    for (size_t i = 0; i < spec->pressures.n; i++) rows[i] = row_of(s, &spec->pressures.items[i]);
    gw_view_list(&s->page, "", &GREATEST, rows, spec->pressures.n);
}

/* Rows that the project gives -----------------------------------------------------------------------------------------
 */

static bool is_by(const struct gw_pressure_source *by, const struct gw_given_row *row) { return by->row == row; }

/* "R-01, R-07 outward": what a given row says. */
static const char *said_by(struct specified_page *s, const struct gw_given_row *row)
{
    struct gw_text out;
    gw_text_init(&out, s->page.arena);
    for (size_t i = 0; i < s->spec->pressures.n; i++) {
        const struct gw_specified_pressure *p = &s->spec->pressures.items[i];
        const bool in = is_by(&p->inward_by, row), outward = is_by(&p->outward_by, row);
        if (in || outward)
            gw_text_addf(&out, "%s%s%s", out.length ? ", " : "", p->row ? p->row->id : p->first->wall,
                         in && outward ? ""
                         : in          ? " inward"
                                       : " outward");
    }
    return out.at;
}

/* Each given row that a figure of the table comes from; what the others say is lower, or of other areas. */
static void given_rows(struct specified_page *s)
{
    const struct gw_given *given = s->page.results->answer->model->project.given;
    for (size_t i = 0; given && i < given->rows.n; i++) {
        const struct gw_given_row *row = &given->rows.items[i];
        const char *said = said_by(s, row);
        struct gw_text text;
        if (!*said) continue;
        gw_text_init(&text, s->page.arena);
        gw_text_addf(&text, "Given %s: %s%szone %d, area from ", row->source ? row->source : "in the project",
                     row->building ? row->building : "", row->building ? ", " : "", row->zone);
        gw_add_quantity(&text, GW_AREA, s->page.shown, row->area, NEAREST);
        gw_text_add(&text, ", ");
        gw_add_quantity(&text, GW_PRESSURE, s->page.shown, row->inward, UP);
        gw_text_add(&text, " inward, ");
        gw_add_quantity(&text, GW_PRESSURE, s->page.shown, row->outward, UP);
        gw_text_addf(&text, " outward, %s: %s", row->level == GW_LEVEL_ASD ? "allowable stress" : "strength", said);
        gw_report_item(s->page.report, text.at);
    }
}

static bool by_others(const struct gw_specification *spec)
{
    for (size_t i = 0; i < spec->pressures.n; i++)
        if (spec->pressures.items[i].inward_by.by || spec->pressures.items[i].outward_by.by) return true;
    return false;
}

const char *gw_spec_pressures_by(struct specified_page *s)
{
    const struct gw_specification *spec = s->spec;
    struct gw_text out;
    const char *last = "";
    gw_text_init(&out, s->page.arena);
    if (!by_others(spec)) return "";
    for (size_t i = 0; i < spec->pressures.n; i++) {
        const struct gw_pressure_source *both[] = {&spec->pressures.items[i].inward_by,
                                                   &spec->pressures.items[i].outward_by};
        for (size_t way = 0; way < COUNT(both); way++) {
            if (!both[way]->by) continue;
            const char *said = gw_format(s->page.arena, "%s %s", both[way]->by, both[way]->source);
            if (strstr(last, said)) continue;
            gw_text_addf(&out, "%s%s", out.length ? ", " : "", said);
            last = out.at;
        }
    }
    return out.at;
}

/* What stands in that place besides lites; above the roof line framing has rows of its own. */
static bool holds_lites(const struct gw_specified_pressure *p, const struct gw_element *e, enum gw_kind kind)
{
    return e->kind == kind && !e->outside && !(e->parapet && kind != GW_SCREW) && e->zone == p->first->zone &&
           e->parapet == p->first->parapet && e->grid->elevation == p->first->grid->elevation;
}

static double printed(const struct specified_page *s, double pa)
{
    return gw_printed(GW_PRESSURE, s->page.shown, pa, gw_dim_info(GW_PRESSURE)->decimals[s->page.shown], UP);
}

/* Of such elements there; everywhere below the roof line without a place. */
static void most_of(double most[2], struct specified_page *s, const struct gw_specified_pressure *p, enum gw_kind kind)
{
    const struct gw_takeoff *t = s->page.results->answer->takeoff;
    most[0] = most[1] = 0;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (p ? !holds_lites(p, e, kind) : e->kind != kind || e->outside || e->parapet) continue;
        most[0] = fmax(most[0], e->inward_asd.pa);
        most[1] = fmax(most[1], -e->outward_asd.pa);
    }
}

/* "; screws up to 59.8 psf outward": what takes more than `lites`, each way. */
static void add_more(struct gw_text *out, struct specified_page *s, const struct gw_specified_pressure *p,
                     const double lites[2], enum gw_kind kind)
{
    static const char *const ways[] = {"inward", "outward"};
    double most[2];
    size_t n = 0;
    most_of(most, s, p, kind);
    for (size_t way = 0; way < 2; way++) {
        if (!gw_given(lites[way]) || !(printed(s, most[way]) > printed(s, lites[way]))) continue;
        if (!n++) gw_text_addf(out, "%s%ss ", out->length ? "; " : "", gw_kind_names[kind]);
        else gw_text_add(out, " and ");
        gw_add_bare(out, GW_PRESSURE, s->page.shown, most[way], UP);
        gw_text_addf(out, " %s %s", gw_dim_info(GW_PRESSURE)->shown[s->page.shown], ways[way]);
    }
}

static const char *more_than(struct specified_page *s, const struct gw_specified_pressure *p, const double lites[2])
{
    static const enum gw_kind kinds[] = {GW_MULLION, GW_TRANSOM, GW_SCREW, GW_ANCHOR};
    struct gw_text text;
    gw_text_init(&text, s->page.arena);
    for (size_t k = 0; k < COUNT(kinds); k++) add_more(&text, s, p, lites, kinds[k]);
    return text.length ? text.at : "";
}

const char *gw_spec_more_than(struct specified_page *s, double inward, double outward)
{
    const double lites[] = {inward, outward};
    return more_than(s, NULL, lites);
}

/* What of a place takes more than its lites, which its row is of. */
static void tell_more(struct specified_page *s)
{
    for (size_t i = 0; i < s->spec->pressures.n; i++) {
        const struct gw_specified_pressure *p = &s->spec->pressures.items[i];
        const double lites[] = {p->inward_asd, p->outward_asd};
        const char *more = p->framing ? "" : more_than(s, p, lites);
        if (*more)
            gw_report_item(s->page.report, gw_format(s->page.arena, "%s, %s, zone %d%s, more than its lites: %s",
                                                     p->row ? p->row->id : "not known", p->first->wall, p->first->zone,
                                                     p->first->parapet ? ", above the roof line" : "", more));
    }
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

static struct pressure_row area_row(struct specified_page *s, const struct gw_specified_pressure *p, size_t i)
{
    const struct gw_area_pressure *a = &p->areas.items[i];
    struct pressure_row row = row_of(s, p);
    row.part = p->framing ? (p->first->parapet ? "framing above roof" : "framing")
                          : (p->first->parapet ? "lites above roof" : "lites and what holds them");
    row.inward = a->inward;
    row.outward = a->outward;
    row.inward_asd = a->inward_asd;
    row.outward_asd = a->outward_asd;
    row.by = by_words(s, &a->inward_by, &a->outward_by);
    return row;
}

static size_t area_rows(struct specified_page *s, struct pressure_row *out, const struct gw_specified_pressure *p)
{
    size_t n = 0;
    for (size_t i = 0, next; i < p->areas.n; i = next) {
        struct pressure_row row = area_row(s, p, i);
        for (next = i + 1; next < p->areas.n; next++) {
            const struct pressure_row other = area_row(s, p, next);
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
        s, gw_format(
               s->page.arena,
               "Resist, each way, the greatest pressure of the lites of each wall, zone and part, above the roof line "
               "of the framing too%s. The first two columns of figures are test pressures, at allowable-stress "
               "level; the last two are at strength level. Figures are rounded up. What has a smaller area than "
               "the lites may take more: %u.3.",
               gw_spec_rows_of(s, "structural"), s->article));
    greatest(s);
    if (by_others(s->spec)) given_rows(s);
    gw_spec_paragraph(s, "Zone 5 is the strip beside an outside corner; all else is zone 4. Columns and lengths are "
                         "counted from the left, seen from outside:");
    gw_page_wall_keys(&s->page);
    gw_spec_paragraph(s, "By effective wind area, at the greatest height of each part, for lites and members that are "
                         "sized by their own area. Between two areas take the row of the smaller one. The area of a "
                         "member is its span times the greater of its width and a third of the span. What holds the "
                         "lites is sized by these; at allowable-stress level, where it takes more than its lites:");
    tell_more(s);
    by_area(s);
}
