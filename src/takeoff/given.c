/* Pressures from the structural drawings: which row speaks of an element, what holds between two areas, and where they
 * differ from the computed ones. */
#include "takeoff_internal.h"

#include "tables_data.h"

#include <string.h>

struct gw_pair {
    double inward, outward; /* strength level, signed */
};

/* The row that serves, and where areas are interpolated the next larger one; NULL: none. */
struct found {
    const struct gw_given_row *row, *above;
};

static bool applies(const struct gw_given_row *row, const struct gw_element *e)
{
    return gw_speaks_of(row->building, row->zone, e) && !e->parapet && !(gw_given(row->up_to) && e->top > row->up_to);
}

/* Whether a row's area is no more than the element's, which is a product of lengths: 5 ft x 10 ft is 50 ft2 on every
 * floor. */
static bool reaches(const struct gw_given_row *row, const struct gw_element *e)
{
    return row->area <= e->effective_area * (1 + GW_HAIR);
}

/* Of rows limited in height the lowest that still reaches the element is meant for it. Pressures fall as areas grow:
 * the row with the largest area not above the element's is the safe one; below every row, the smallest. */
static bool fits_better(const struct gw_given_row *row, const struct gw_given_row *best, const struct gw_element *e)
{
    bool limited = gw_given(row->up_to), best_limited = gw_given(best->up_to);
    if (limited != best_limited) return limited;
    if (limited && (row->up_to < best->up_to || row->up_to > best->up_to)) return row->up_to < best->up_to;
    bool fits = reaches(row, e), best_fits = reaches(best, e);
    if (fits != best_fits) return fits;
    return fits ? row->area > best->area : row->area < best->area;
}

static bool same_text(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

static bool same_height(const struct gw_given_row *a, const struct gw_given_row *b)
{
    if (gw_given(a->up_to) != gw_given(b->up_to)) return false;
    return !gw_given(a->up_to) || !(a->up_to < b->up_to || a->up_to > b->up_to);
}

/* The next larger area of the same zone, building and height; NULL: none, or no area below the element's. */
static const struct gw_given_row *row_above(const struct gw_given *given, const struct gw_given_row *row,
                                            const struct gw_element *e)
{
    const struct gw_given_row *above = NULL;
    if (!reaches(row, e)) return NULL;
    for (size_t i = 0; i < given->rows.n; i++) {
        const struct gw_given_row *other = &given->rows.items[i];
        if (reaches(other, e) || other->zone != row->zone || !same_height(other, row) ||
            !same_text(other->building, row->building))
            continue;
        if (!above || other->area < above->area) above = other;
    }
    return above;
}

static struct found find_given(const struct gw_given *given, const struct gw_element *e)
{
    struct found found = {NULL, NULL};
    for (size_t i = 0; given && i < given->rows.n; i++) {
        const struct gw_given_row *row = &given->rows.items[i];
        if (applies(row, e) && (!found.row || fits_better(row, found.row, e))) found.row = row;
    }
    if (found.row && given->between == GW_BETWEEN_INTERPOLATE) found.above = row_above(given, found.row, e);
    return found;
}

static const char *source_of(const struct gw_given_row *row) { return row->source ? row->source : "given"; }

static struct gw_pair pair_of(const struct gw_given_row *row, struct gw_engine *engine)
{
    return (struct gw_pair){gw_given_strength(row->level, row->inward, engine).pa,
                            -gw_given_strength(row->level, row->outward, engine).pa};
}

static double between(const struct found *f, double area, double low, double high, struct gw_engine *engine)
{
    const double a_1 = f->row->area, a_2 = f->above->area;
    const double p = low + (high - low) * log10(area / a_1) / log10(a_2 / a_1);
    GW_STEP(engine, "p_given", GW_PRESSURE, p, source_of(f->row), "p_1+(p_2-p_1)*log10(A/A_1)/log10(A_2/A_1)",
            {"p_1", low, GW_PRESSURE}, {"p_2", high, GW_PRESSURE}, {"A", area, GW_AREA}, {"A_1", a_1, GW_AREA},
            {"A_2", a_2, GW_AREA});
    return p;
}

static void note_row(struct gw_engine *engine, const struct found *f, bool given_rule)
{
    static const char govern[] = "the given pressures govern",
                      onerous[] = "the more onerous of given and computed governs";
    const struct gw_value zone = gw_of_count(f->row->zone), area = gw_of_shown(GW_AREA, f->row->area),
                          rule = gw_of_text(given_rule ? govern : onerous);
    if (f->above)
        GW_TRACE_SAY(engine, "given", source_of(f->row),
                     "zone {}, row for an effective area of {}, interpolated to that for {}; {}", zone, area,
                     gw_of_shown(GW_AREA, f->above->area), rule);
    else
        GW_TRACE_SAY(engine, "given", source_of(f->row), "zone {}, row for an effective area of {}; {}", zone, area,
                     rule);
}

static struct gw_pair given_at(const struct found *f, double area, struct gw_engine *engine)
{
    const struct gw_pair low = pair_of(f->row, engine);
    if (!f->above) return low;
    const struct gw_pair high = pair_of(f->above, engine);
    const char *before = gw_trace_at(engine, "in");
    const double inward = between(f, area, low.inward, high.inward, engine);
    gw_trace_at(engine, "out");
    const double outward = between(f, area, low.outward, high.outward, engine);
    gw_trace_at(engine, before);
    return (struct gw_pair){inward, outward};
}

/* Drawings and their engineer know the building as it stands, not as it is once its glazing has broken. */
static bool given_ones_govern(const struct gw_model *model, const struct gw_element *e)
{
    return model->project.pressures == GW_GIVEN_GOVERN && !gw_model_breached(model, e->building);
}

static void note_difference(struct gw_builder *b, const struct gw_element *e, const char *source, const char *direction,
                            double computed, double given)
{
    if (!b->takeoff) return; /* a derivation, not a take-off */
    double share = b->model->tables->takeoff_shares[GW_ROW_TAKEOFF_SHARES_DIFFERENCE_LISTED].value;
    if (fabs(given - computed) <= share * fabs(computed)) return;
    struct gw_takeoff *t = b->takeoff;
    t->differences.items = gw_grow(b->arena, t->differences.items, t->differences.n, &t->differences_capacity,
                                   sizeof *t->differences.items);
    const bool governs = given_ones_govern(b->model, e);
    const double excess = given / computed - 1;
    struct gw_difference d = {governs, NULL, e->id, source, direction, computed, given, excess};
    t->differences.items[t->differences.n++] = d;
    b->differs.items =
        gw_grow(b->arena, b->differs.items, b->differs.n, &b->differs_capacity, sizeof *b->differs.items);
    b->differs.items[b->differs.n++] = e->index;
}

static void trace_given(struct gw_engine *engine, const char *source, bool given_rule, struct gw_pair computed,
                        struct gw_pair given)
{
    double inward = given_rule ? given.inward : fmax(computed.inward, given.inward);
    double outward = given_rule ? given.outward : fmin(computed.outward, given.outward);
    GW_STEP(engine, "p_design,in", GW_PRESSURE, inward, source, given_rule ? "p_given" : "max(p, p_given)",
            {"p", computed.inward, GW_PRESSURE}, {"p_given=p_given,in", given.inward, GW_PRESSURE});
    GW_STEP(engine, "p_design,out", GW_PRESSURE, outward, source, given_rule ? "p_given" : "min(p, p_given)",
            {"p", computed.outward, GW_PRESSURE}, {"p_given=p_given,out", given.outward, GW_PRESSURE});
}

void gw_take_given(struct gw_builder *b, struct gw_element *e, struct gw_engine *engine)
{
    const struct found f = find_given(b->model->project.given, e);
    if (!f.row) return;
    const char *source = source_of(f.row);
    const bool given_rule = given_ones_govern(b->model, e);
    const struct gw_pair computed = {e->inward.pa, e->outward.pa};
    gw_trace_group(engine, GW_TAKEOFF_GIVEN);
    note_row(engine, &f, given_rule);
    const struct gw_pair given = given_at(&f, e->effective_area, engine);
    note_difference(b, e, source, "inward", computed.inward, given.inward);
    note_difference(b, e, source, "outward", computed.outward, given.outward);
    bool takes_in = given_rule || given.inward > computed.inward,
         takes_out = given_rule || given.outward < computed.outward;
    trace_given(engine, source, given_rule, computed, given);
    const struct gw_pressure_source by = {"given", source, f.above ? ", interpolated" : "", f.row};
    if (takes_in) e->inward.pa = given.inward;
    if (takes_out) e->outward.pa = given.outward;
    if (takes_in) e->inward_by = by;
    if (takes_out) e->outward_by = by;
    e->computed = e->computed && !takes_in && !takes_out;
    if (takes_in || takes_out)
        e->governs = gw_governed_by(b, "given", source,
                                    takes_in && takes_out ? ""
                                    : takes_in            ? ", inward"
                                                          : ", outward");
}
