/* What framing must bring, and what its anchors hand to the structure. */
#include "base/fields.h"
#include "report/demand.h"
#include "report/how_found.h"
#include "report/ledger.h"
#include "report/results.h"
#include "report/view.h"

#include <stdlib.h>
#include <string.h>

/* Pieces of a corner ---------------------------------------------------------------------------------------------- */

struct pairs {
    const struct gw_element **items; /* the first of each pair of walls */
    size_t n, capacity;
};

/* Each pair of walls once. */
static void add_pair(struct page *page, struct pairs *pairs, const struct gw_element *e, const char *with)
{
    if (!with || !e->meets || strcmp(e->id, with) > 0) return;
    for (size_t i = 0; i < pairs->n; i++)
        if (strcmp(pairs->items[i]->wall, e->wall) == 0 && strcmp(pairs->items[i]->meets, e->meets) == 0) return;
    pairs->items = gw_grow(page->arena, pairs->items, pairs->n, &pairs->capacity, sizeof(const struct gw_element *));
    pairs->items[pairs->n++] = e;
}

static void say_pairs(struct page *page, const struct pairs *pairs)
{
    struct gw_text text;
    if (!pairs->n) return;
    gw_text_init(&text, page->arena);
    for (size_t i = 0; i < pairs->n; i++)
        gw_text_addf(&text, "%s%s with %s", i ? ", " : "", pairs->items[i]->wall, pairs->items[i]->meets);
    gw_report_line(page->report, gw_format(page->arena,
                                           "Counted in both walls that meet at a corner, each row one face of the "
                                           "same ones: %s.",
                                           text.at));
}

/* By wall --------------------------------------------------------------------------------------------------------- */

/* A thing of an element: where it stands in its list, and which wall it belongs to. */
struct of_wall {
    size_t wall, kind, index;
};

static int compare_sizes(size_t a, size_t b) { return (a > b) - (a < b); }

static int by_wall(const void *left, const void *right)
{
    const struct of_wall *a = left, *b = right;
    int order = compare_sizes(a->wall, b->wall);
    if (!order) order = compare_sizes(a->kind, b->kind);
    return order ? order : compare_sizes(a->index, b->index);
}

/* The n things whose elements lie `stride` bytes apart from the first on, wall by wall and kind by kind: openings of a
 * schedule come as the schedule has them. */
static const struct of_wall *wall_by_wall(struct page *page, const struct gw_element *const *first, size_t stride,
                                          size_t n)
{
    const struct gw_takeoff *t = page->results->answer->takeoff;
    const struct ordered *ordered = gw_order_elements(page->arena, t);
    size_t *ranks = gw_alloc(page->arena, t->elements.n + 1, sizeof *ranks);
    struct of_wall *items = gw_alloc(page->arena, n + 1, sizeof *items);
    for (size_t i = 0; i < t->elements.n; i++) ranks[ordered[i].index] = ordered[i].wall;
    for (size_t i = 0; i < n; i++) {
        const void *at = (const char *)first + i * stride;
        const struct gw_element *e = *(const struct gw_element *const *)at;
        items[i] = (struct of_wall){ranks[e->index], (size_t)e->kind, i};
    }
    qsort(items, n, sizeof *items, by_wall);
    return items;
}

/* Members --------------------------------------------------------------------------------------------------------- */

/* Like members of a wall, the worst of each zone; of every row itself. */
struct member_row {
    const struct gw_element *element;
    double limit; /* of the one that needs the most inertia */
    struct member_zone {
        long count;
        double moment, shear, inertia; /* count 0: not set */
    } zones[LEDGER_ZONES];
    bool each; /* stands for itself, with its height */
};

static struct member_row member_row(const struct gw_member_demand *m, bool each)
{
    struct member_row row = {.element = m->element, .limit = m->deflection_limit, .each = each};
    for (int i = 0; i < LEDGER_ZONES; i++) row.zones[i] = (struct member_zone){0, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    row.zones[m->element->zone == 5] = (struct member_zone){m->element->count, m->moment, m->shear, m->inertia};
    return row;
}

/* Whether a row is of one mark only: all of the openings of a schedule share rows, as all transoms of a wall do. */
static bool marked(const struct member_row *row)
{
    return row->each || (row->element->kind != GW_TRANSOM && !row->element->grid->opening);
}

static bool like_members(const void *left, const void *right)
{
    const struct member_row *x = left, *y = right;
    const struct gw_element *a = x->element, *b = y->element;
    const bool same_mark = !marked(x) || strcmp(a->mark, b->mark) == 0;
    return !x->each && a->kind == b->kind && a->parapet == b->parapet && strcmp(a->wall, b->wall) == 0 && same_mark;
}

static double greatest(const struct member_row *row)
{
    return fmax(row->zones[0].inertia, row->zones[1].inertia); /* leaves out an absent one */
}

static void take_member(void *into, const void *row, bool first)
{
    struct member_row *all = into;
    const struct member_row *one = row;
    if (first) return;
    if (greatest(one) > greatest(all)) all->limit = one->limit;
    for (int i = 0; i < LEDGER_ZONES; i++) {
        struct member_zone *a = &all->zones[i];
        const struct member_zone *b = &one->zones[i];
        a->count += b->count;
        a->moment = fmax(a->moment, b->moment);
        a->shear = fmax(a->shear, b->shear);
        a->inertia = fmax(a->inertia, b->inertia);
    }
}

static bool member_name(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct member_row *row = thing;
    const struct gw_element *e = row->element;
    gw_text_addf(out, "%s: %s%s%s%s", e->wall, gw_kind_names[e->kind], marked(row) ? ", " : "",
                 marked(row) ? e->mark : "", e->parapet ? ", parapet" : "");
    if (!row->each) return true;
    gw_text_add(out, ", ");
    if (gw_given(e->elevation)) gw_add_heights(out, shown, e->elevation, e->elevation);
    else gw_add_heights(out, shown, e->bottom, e->top);
    return true;
}

/* Whole units of a moment and a force: nobody designs to a tenth of a pound. */
static bool whole(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si)
{
    if (!gw_given(si)) return false;
    gw_text_fixed(out, gw_printed(dim, shown, si, 0, UP), 0);
    return true;
}

#define OF_ZONE(zone_, at_)                                                                                            \
    static bool count_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                             \
    {                                                                                                                  \
        const struct member_row *row = thing;                                                                          \
        (void)shown;                                                                                                   \
        if (row->zones[at_].count) gw_text_addf(out, "%ld", row->zones[at_].count);                                    \
        else gw_text_add(out, "none");                                                                                 \
        return true;                                                                                                   \
    }                                                                                                                  \
    static bool moment_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                            \
    {                                                                                                                  \
        return whole(out, GW_MOMENT, shown, ((const struct member_row *)thing)->zones[at_].moment);                    \
    }                                                                                                                  \
    static bool shear_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                             \
    {                                                                                                                  \
        return whole(out, GW_FORCE, shown, ((const struct member_row *)thing)->zones[at_].shear);                      \
    }                                                                                                                  \
    static bool inertia_##zone_(struct gw_text *out, const void *thing, enum gw_units shown)                           \
    {                                                                                                                  \
        gw_add_bare(out, GW_INERTIA, shown, ((const struct member_row *)thing)->zones[at_].inertia, UP);               \
        return true;                                                                                                   \
    }
OF_ZONE(4, 0)
OF_ZONE(5, 1)

#define SAID(key_)                                                                                                     \
    {                                                                                                                  \
        .key = #key_, .type = GW_T_SAID, .say = key_                                                                   \
    }
static const struct gw_field MEMBER_ROW[] = {
    SAID(member_name), SAID(count_4),  SAID(moment_4), SAID(shear_4),   SAID(inertia_4),
    SAID(count_5),     SAID(moment_5), SAID(shear_5),  SAID(inertia_5), NUM(member_row, limit, GW_LENGTH),
};
static const struct gw_record MEMBER_ROW_RECORD =
    RECORD("row", member_row, MEMBER_ROW, .help = "like members of a wall");

#define ZONE_COLUMNS(zone_)                                                                                            \
    COLUMN("Zone " #zone_, "count_" #zone_, .right = true),                                                            \
        COLUMN("M", "moment_" #zone_, .dim = GW_MOMENT, .right = true),                                                \
        COLUMN("V", "shear_" #zone_, .dim = GW_FORCE, .right = true),                                                  \
        COLUMN("I", "inertia_" #zone_, .dim = GW_INERTIA, .right = true)
static const struct view_column MEMBER_COLUMNS[] = {COLUMN("Members", "member_name"), ZONE_COLUMNS(4), ZONE_COLUMNS(5),
                                                    COLUMN("Limit", "limit", .rounding = DOWN, .dim = GW_THICKNESS)};
static double of_member(const void *row) { return greatest(row); }
static const struct view MEMBERS =
    VIEW(&MEMBER_ROW_RECORD, MEMBER_COLUMNS, .same = like_members, .merge = take_member, .badness = of_member);

/* Moments and reactions are worked out where a candidate's check asks for them. */
static const char *as_checked(const struct gw_answer *answer)
{
    return answer->model->systems.n ? "They stand there under what the candidates' checks ask."
                                    : "They stand there once the project lists a candidate: its checks ask for "
                                      "them.";
}

void gw_page_members(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    const size_t n = answer->members.n;
    struct member_row *rows = gw_alloc(page->arena, n + 1, sizeof *rows);
    struct pairs pairs = {NULL, 0, 0};
    if (!n) return;
    const struct of_wall *items = wall_by_wall(page, &answer->members.items->element, sizeof *answer->members.items, n);
    for (size_t i = 0; i < n; i++) {
        const struct gw_member_demand *m = &answer->members.items[items[i].index];
        rows[i] = member_row(m, page->results->all);
        add_pair(page, &pairs, m->element, m->shared_with);
    }
    gw_report_section(page->report, GW_PART_DEMANDS, "What framing must bring under wind (0.6 W)");
    gw_view_list(page, "", &MEMBERS, rows, n);
    gw_page_how_found(page, answer->members.items[items[0].index].element, as_checked(answer));
    gw_report_line(page->report,
                   gw_format(page->arena,
                             "%sM, V: largest moment and shear of one; I: of aluminum, for the limit of deflection. "
                             "Section modulus needed: M over the allowable stress of the alloy. "
                             "A corner mullion takes both faces: the moment about each axis.",
                             page->results->all ? "" : "Of like members of a wall and zone the worst. "));
    say_pairs(page, &pairs);
}

/* Reactions ------------------------------------------------------------------------------------------------------- */

static struct ledger_row reaction_row(struct page *page, const struct gw_reaction *r)
{
    const struct gw_element *e = r->element;
    const bool all = page->results->all;
    const char *mark = e->grid->opening && !all ? "openings" : e->mark;
    struct ledger_row row = gw_ledger_row(page, e, gw_format(page->arena, "%s: %s", e->wall, mark));
    struct ledger_zone *zone = &row.zones[e->zone == 5];
    if (all)
        row.part = gw_format(page->arena, "%s, %s", row.part, gw_quantity_text(page, GW_LENGTH, e->width, NEAREST));
    row.dim = GW_FORCE;
    row.decimals = 0;
    row.area = r->area;
    zone->inward = r->inward_strength;
    zone->outward = r->outward_strength;
    zone->inward_asd = r->inward;
    zone->outward_asd = r->outward;
    return row;
}

static const struct view_column REACTION_COLUMNS[] = {
    COLUMN("Anchors", "part"), COLUMN("Height", "heights", .dim = GW_LENGTH, .right = true), COLUMN("Wall", "area"),
    LEDGER_COLUMNS(4, GW_FORCE), LEDGER_COLUMNS(5, GW_FORCE)};
static const struct view REACTIONS = VIEW(&gw_ledger_record, REACTION_COLUMNS, .badness = gw_ledger_badness);

static const struct ledger_rule EQUAL_ONES = {0, 4}, EVERY_STEP = {0, 0};

void gw_page_reactions(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    const size_t n = answer->reactions.n;
    struct ledger_row *rows = gw_alloc(page->arena, n + 1, sizeof *rows);
    struct pairs pairs = {NULL, 0, 0};
    size_t kept = 0;
    if (!n) return;
    const struct of_wall *items =
        wall_by_wall(page, &answer->reactions.items->element, sizeof *answer->reactions.items, n);
    for (size_t i = 0, next; i < n; i = next) {
        for (next = i; next < n && items[next].wall == items[i].wall; next++) {
            const struct gw_reaction *r = &answer->reactions.items[items[next].index];
            rows[kept + next - i] = reaction_row(page, r);
            add_pair(page, &pairs, r->element, r->shared_with);
        }
        kept += gw_ledger_merge(page, rows + kept, next - i, page->results->all ? &EVERY_STEP : &EQUAL_ONES);
    }
    gw_report_section(page->report, GW_PART_DEMANDS, "Reactions of the anchors under wind, each");
    gw_view_list(page, "", &REACTIONS, rows, kept);
    gw_page_how_found(page, answer->reactions.items[items[0].index].element, as_checked(answer));
    gw_report_line(page->report,
                   "In and out: strength level (1.0 W) / allowable-stress level (0.6 W), the worst of the row. Wall: "
                   "the piece of mullion that hangs on the anchor, 0 where it is slotted; its dead load is that area "
                   "times the weight of framing and glass. At an outside corner: of each face. An anchor that the roof "
                   "line cuts is listed once, with both of its parts; one whose load the method does not give has no "
                   "figures.");
    say_pairs(page, &pairs);
}
