/* Demands besides the pressures: of walls, lite types and the project; what hazards and movement ask of elements. */
#include "base/fields.h"
#include "report/demand.h"
#include "report/how_found.h"
#include "report/results.h"
#include "report/view.h"

#include <string.h>

/* A line of the table: demands that read alike but for the place. */
struct demand_line {
    const struct gw_demand *demand; /* the first of them */
    struct gw_element extent;       /* of an element's: all of them; of pieces with a height of their own, that */
    size_t n;
    const char *places[3];
    const char *how; /* as it is read: what differs in the last bits of a double only is one line */
};
enum { NAMED = 3 };

static bool name_and_component(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_demand *d = ((const struct demand_line *)thing)->demand;
    (void)shown;
    gw_text_add(out, gw_check_name(d));
    if (!d->element && (d->component == GW_VENT || d->component == GW_DOOR))
        gw_text_addf(out, ", %s", gw_choice_name(gw_component_choices, (int)d->component));
    return true;
}

static bool places(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct demand_line *line = thing;
    if (line->demand->element) {
        gw_text_addf(out, "%ld %s%s, ", line->extent.count, gw_kind_names[line->extent.kind],
                     line->extent.count == 1 ? "" : "s");
        if (line->extent.top > line->extent.bottom) gw_add_extent(out, shown, line->extent.bottom, line->extent.top);
        else gw_add_bare(out, GW_LENGTH, shown, line->extent.top, NEAREST);
        gw_text_addf(out, " %s", gw_dim_info(GW_LENGTH)->shown[shown]);
        return true;
    }
    for (size_t i = 0; i < line->n && i < NAMED; i++) gw_text_addf(out, "%s%s", i ? ", " : "", line->places[i]);
    if (line->n > NAMED) gw_text_addf(out, " and %zu more", line->n - NAMED);
    return true;
}

/* Pressures of the elements stand in the tables above, the pair of a blast in its text. */
static double value_of(const struct gw_demand *d) { return gw_term_of(d, 0)->value; }

static bool demand_value(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_demand *d = ((const struct demand_line *)thing)->demand;
    if (d->element || !gw_given(value_of(d))) return false;
    gw_text_add(out, d->at_most ? "at most " : "at least ");
    gw_add_quantity(out, gw_term_of(d, 0)->dim, shown, value_of(d), d->at_most ? NEAREST : UP);
    if (gw_given(d->at)) {
        gw_text_add(out, " at ");
        gw_add_quantity(out, GW_PRESSURE, shown, d->at, NEAREST);
    }
    return true;
}

static const struct gw_field LINE[] = {
    {.key = "name_and_component", .type = GW_T_SAID, .say = name_and_component},
    {.key = "places", .type = GW_T_SAID, .say = places},
    {.key = "value_and_unit", .type = GW_T_SAID, .say = demand_value},
    F(demand_line, how, GW_T_TEXT),
    F(demand_line, demand, GW_T_RECORD, .record = &gw_demand_record, .flags = GW_FLAT),
};
static const struct gw_record LINE_RECORD = RECORD("line", demand_line, LINE, .help = "demands that read alike");

static bool same_value(const struct gw_demand *a, const struct gw_demand *b)
{
    const double x = value_of(a), y = value_of(b);
    return gw_given(x) == gw_given(y) && !(x < y) && !(x > y);
}

static bool alike(const void *left, const void *right)
{
    const struct demand_line *x = left, *y = right;
    const struct gw_demand *a = x->demand, *b = y->demand;
    if (a->check != b->check || a->state != b->state || !a->element != !b->element) return false;
    if (!a->element && (a->component != b->component || !same_value(a, b))) return false;
    return strcmp(gw_check_name(a), gw_check_name(b)) == 0 && strcmp(x->how, y->how) == 0;
}

static void take_line(void *into, const void *row, bool first)
{
    struct demand_line *line = into;
    const struct demand_line *other = row;
    if (first) return;
    line->extent.count += other->extent.count;
    line->extent.bottom = fmin(line->extent.bottom, other->extent.bottom);
    line->extent.top = fmax(line->extent.top, other->extent.top);
    if (line->n < NAMED) line->places[line->n] = other->places[0];
    line->n++;
}

static const struct view_column COLUMNS[] = {COLUMN("Check", "name_and_component"), COLUMN("Where", "places"),
                                             COLUMN("Status", "status"), COLUMN("Value", "value_and_unit"),
                                             COLUMN("How", "how")};
static const struct view LINES = VIEW(&LINE_RECORD, COLUMNS, .same = alike, .merge = take_line);

/* Of an element the part of the message that places share; its own pressures stand in the tables above. */
static struct demand_line line_of(struct page *page, const struct gw_demand *d)
{
    struct demand_line line = {.demand = d, .n = 1, .places = {d->where}};
    line.how = gw_message_text(page->arena, d->element ? &d->summary : &d->message, page->shown);
    if (d->element) line.extent = *d->element;
    if (d->element && d->element->kind != GW_SCREW && gw_given(d->element->elevation))
        line.extent.bottom = line.extent.top = d->element->elevation;
    return line;
}

static bool not_asked(const struct gw_demand *d) { return !d->element && d->state == GW_NOT_ASKED; }

/* Of walls, lite types and the project first, then of elements. */
static size_t gather(struct page *page, struct demand_line *lines, const struct gw_judgement *judgement)
{
    size_t n = 0;
    for (int elements = 0; elements < 2; elements++)
        for (size_t i = 0; i < judgement->demands.n; i++) {
            const struct gw_demand *d = &judgement->demands.items[i];
            if (not_asked(d)) continue;
            if (d->element ? elements && gw_said(&d->summary) : !elements) lines[n++] = line_of(page, d);
        }
    return n;
}

/* Not required --------------------------------------------------------------------------------------------------- */

static void add_name(struct gw_text *out, const struct gw_demand *d)
{
    const bool everywhere = strcmp(d->where, "project") == 0;
    gw_text_add(out, gw_check_name(d));
    if (!everywhere) gw_text_addf(out, " (%s)", d->where);
}

/* Each reason once, with all that it settles. */
static void not_required(struct page *page, const struct gw_judgement *judgement)
{
    const size_t n = judgement->demands.n;
    const struct gw_demand **left = gw_alloc(page->arena, n + 1, sizeof(const struct gw_demand *));
    const char **why = gw_alloc(page->arena, n + 1, sizeof(const char *));
    size_t count = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_demand *d = &judgement->demands.items[i];
        if (!not_asked(d)) continue;
        why[count] = gw_message_text(page->arena, &d->message, page->shown);
        left[count++] = d;
    }
    if (count) gw_report_line(page->report, "Not required:");
    for (size_t i = 0; i < count; i++) {
        struct gw_text text;
        if (!left[i]) continue;
        gw_text_init(&text, page->arena);
        add_name(&text, left[i]);
        for (size_t k = i + 1; k < count; k++) {
            if (!left[k] || strcmp(why[i], why[k]) != 0) continue;
            gw_text_add(&text, ", ");
            add_name(&text, left[k]);
            left[k] = NULL;
        }
        gw_report_item(page->report, gw_format(page->arena, "%s: %s", text.at, why[i]));
    }
}

void gw_page_other_demands(struct page *page)
{
    const struct gw_judgement *judgement = &page->results->answer->judgement;
    struct demand_line *lines = gw_alloc(page->arena, judgement->demands.n + 1, sizeof *lines);
    size_t n = gather(page, lines, judgement);
    gw_report_section(page->report, GW_PART_DEMANDS, "Other demands");
    gw_view_list(page, "", &LINES, lines, n);
    if (n)
        gw_page_how_found(page, NULL, "What is asked of the project, a wall or a lite type is as its file gives it.");
    not_required(page, judgement);
}
