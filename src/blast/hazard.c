/* Hazards, conditions and the loads of what holds the glass, as the public documents define them. */
#include "galeward/blast.h"

#include "base/tolerance.h"

#include "tables_data.h"

static const char ATTACHMENT[] = "design load of glazing connections";

enum gw_status gw_blast_admitted(enum gw_hazard *out, enum gw_protection_level protection, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_BLAST_PROTECTION; i++) {
        const struct gw_blast_protection *row = &engine->tables->blast_protection[i];
        if (row->protection != (int)protection) continue;
        gw_used_add(&engine->used, &row->row);
        gw_trace_note(engine, "hazard", row->row.source, "the worst that the level of protection admits");
        *out = (enum gw_hazard)row->hazard;
        return GW_OK;
    }
    return gw_refuse(engine, GW_MISSING, "protection",
                     "which level of protection? Ask the owner's security consultant");
}

/* Comparison --------------------------------------------------------------------------------------------------------
 */

static bool covers(double rating, double demand) { return rating >= demand * (1 - GW_HAIR); }

bool gw_blast_covers(struct gw_blast_pair rating, struct gw_blast_pair demand)
{
    return covers(rating.pressure, demand.pressure) && covers(rating.impulse, demand.impulse);
}

static bool whole(struct gw_blast_pair load) { return gw_given(load.pressure) && gw_given(load.impulse); }

static const char *hazard_unknown(const struct gw_blast_performance *demand, const struct gw_blast_performance *rating)
{
    if (!demand->hazard && !demand->condition)
        return "which hazard rating or condition is allowed? Ask the owner's security consultant";
    const bool hazard = !demand->hazard || rating->hazard, condition = !demand->condition || rating->condition;
    if (hazard && condition) return NULL;
    if (!rating->hazard && !rating->condition) return "the rating states no hazard: ask for the test report";
    return "the rating is on the other scale, and hazards and conditions do not translate: ask for the fragments of "
           "the "
           "test";
}

static const char *failure(const struct gw_blast_performance *demand, const struct gw_blast_performance *rating)
{
    if (!covers(rating->load.pressure, demand->load.pressure)) return "the rated pressure is below the demand";
    if (!covers(rating->load.impulse, demand->load.impulse)) return "the rated impulse is below the demand";
    if (demand->hazard && rating->hazard > demand->hazard) return "the hazard is worse than allowed";
    if (demand->condition && rating->condition > demand->condition) return "the condition is worse than allowed";
    return NULL;
}

/* A failure by what is known stands whatever is unknown. */
void gw_blast_compare(struct gw_blast_verdict *out, const struct gw_blast_performance *demand,
                      const struct gw_blast_performance *rating)
{
    *out = (struct gw_blast_verdict){.meets = GW_UNSAID,
                                     .pressure_use = demand->load.pressure / rating->load.pressure,
                                     .impulse_use = demand->load.impulse / rating->load.impulse};
    const bool demanded = whole(demand->load);
    struct gw_blast_performance known = *rating;
    if (!gw_given(known.load.pressure)) known.load.pressure = INFINITY;
    if (!gw_given(known.load.impulse)) known.load.impulse = INFINITY;
    out->why = "what pressure and impulse are demanded? Ask the owner's security consultant";
    if (!demanded) return;
    out->why = failure(demand, &known);
    if (out->why) {
        out->meets = GW_NO;
        return;
    }
    out->why = "the rating states not both pressure and impulse: ask for the test report";
    if (!whole(rating->load)) return;
    out->why = hazard_unknown(demand, rating);
    if (out->why) return;
    out->why = "pressure, impulse and hazard are met";
    out->meets = GW_YES;
}

/* What holds the glass ----------------------------------------------------------------------------------------------
 */

static enum gw_status by_area(double *out, const struct gw_blast_support *in, struct gw_engine *engine)
{
    const double area = in->width * in->height;
    const struct gw_blast_attachment *best = NULL;
    if (!(area > 0)) return gw_refuse(engine, GW_MISSING, "width", "the vision area is needed");
    for (size_t i = 0; i < GW_N_BLAST_ATTACHMENT; i++) {
        const struct gw_blast_attachment *row = &engine->tables->blast_attachment[i];
        if (row->criteria != (int)in->criteria || !(area <= row->area_m2 * (1 + GW_HAIR))) continue;
        if (!best || row->area_m2 < best->area_m2) best = row;
    }
    if (!best)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "width",
                         "the vision area is larger than the document's connection loads reach");
    gw_used_add(&engine->used, &best->row);
    *out = best->pressure_pa;
    GW_STEP(engine, "p_a", GW_PRESSURE, *out, best->row.source, "p", {"p", best->pressure_pa, GW_PRESSURE});
    return GW_OK;
}

static enum gw_status needed(double on_load, double on_resistance, const struct gw_blast_support *in,
                             struct gw_engine *engine)
{
    if (gw_given(on_load) && !gw_given(in->equivalent_load))
        return gw_refuse(engine, GW_MISSING, "equivalent_load",
                         "what is the equivalent 3-second load? It is read from the chart of ASTM F2248");
    if (gw_given(on_resistance) && !gw_given(in->glass_resistance))
        return gw_refuse(engine, GW_MISSING, "glass_resistance", "what load does the lite resist (ASTM E1300)?");
    return GW_OK;
}

/* Factors that a document leaves out count as none. */
static double larger(const char *symbol, const char *clause, double on_load, double on_resistance,
                     const struct gw_blast_support *in, struct gw_engine *engine)
{
    const double f = gw_given(on_load) ? on_load : 0, g = gw_given(on_resistance) ? on_resistance : 0;
    const double load = gw_given(in->equivalent_load) ? in->equivalent_load : 0;
    const double resistance = gw_given(in->glass_resistance) ? in->glass_resistance : 0;
    const double value = fmax(f * load, g * resistance);
    GW_STEP(engine, symbol, GW_PRESSURE, value, clause, "max(f*q_3s,g*LR)", {"f", f, GW_RATIO},
            {"q_3s", load, GW_PRESSURE}, {"g", g, GW_RATIO}, {"LR", resistance, GW_PRESSURE});
    return value;
}

enum gw_status gw_blast_attachment(double *out, const struct gw_blast_support *in, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_BLAST_ATTACHMENT; i++) {
        const struct gw_blast_attachment *row = &engine->tables->blast_attachment[i];
        if (row->criteria != (int)in->criteria) continue;
        if (gw_given(row->pressure_pa)) return by_area(out, in, engine);
        const enum gw_status status = needed(row->on_load, row->on_resistance, in, engine);
        if (status) return status;
        gw_used_add(&engine->used, &row->row);
        *out = larger("p_a", ATTACHMENT, row->on_load, row->on_resistance, in, engine);
        return GW_OK;
    }
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "criteria",
                     "this document's connection loads are not established here");
}

enum gw_status gw_blast_edge_limit(double *span_over, double *pressure, const struct gw_blast_support *in,
                                   struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_BLAST_EDGE; i++) {
        const struct gw_blast_edge *row = &engine->tables->blast_edge[i];
        if (row->criteria != (int)in->criteria) continue;
        const enum gw_status status = needed(row->on_load, row->on_resistance, in, engine);
        if (status) return status;
        gw_used_add(&engine->used, &row->row);
        *span_over = row->span_over;
        *pressure = larger("p_e", row->row.source, row->on_load, row->on_resistance, in, engine);
        return GW_OK;
    }
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "criteria",
                     "this document's limit of the edge's deflection is not established here: it changed by edition");
}

enum gw_status gw_blast_bead(struct gw_blast_bead *out, enum gw_blast_criteria criteria, double designation,
                             struct gw_engine *engine)
{
    if (!(designation > 0)) return gw_refuse(engine, GW_MISSING, "glass", "the glass's designation is needed");
    for (size_t i = 0; i < GW_N_BLAST_BITE; i++) {
        const struct gw_blast_bite *row = &engine->tables->blast_bite[i];
        if (row->criteria != (int)criteria) continue;
        gw_used_add(&engine->used, &row->row);
        *out = (struct gw_blast_bead){.least = fmax(row->width_floor_m, row->width_of_glass * designation),
                                      .most = row->most_of_glass * designation,
                                      .thickness = row->thickness_m,
                                      .dry = row->dry_m};
        GW_STEP(engine, "b", GW_THICKNESS, out->least, row->row.source, "max(b_0,n*t)",
                {"b_0", row->width_floor_m, GW_THICKNESS}, {"n", row->width_of_glass, GW_RATIO},
                {"t", designation, GW_THICKNESS});
        return GW_OK;
    }
    return gw_refuse(engine, GW_OUTSIDE_METHOD, "criteria", "this document's bead and bite are not established here");
}
