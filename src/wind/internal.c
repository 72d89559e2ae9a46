/* Internal pressure: (GC_pi) by enclosure, and its reduction in a large undivided volume. */
#include "wind_internal.h"

static const struct gw_wind_internal *find(const struct wind_run *run, enum gw_enclosure enclosure)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_INTERNAL; i++) {
        const struct gw_wind_internal *row = &tables->wind_internal[i];
        if (row->edition == (int)run->in->edition && row->enclosure == (int)enclosure) return GW_USE(run->engine, row);
    }
    return NULL;
}

/* An edition without the partially open class counts such a building as enclosed. */
static const struct gw_wind_internal *enclosure_row(const struct wind_run *run)
{
    const struct gw_wind_internal *row = find(run, run->in->enclosure);
    if (row || run->in->enclosure != GW_PARTIALLY_OPEN) return row;
    gw_wind_note(run, "GC_pi", gw_wind_clause(run, GW_ROW_WIND_CLAUSES_ENCLOSURE),
                 "this edition has no partially open class: the building counts as enclosed");
    return find(run, GW_ENCLOSED);
}

/* R_i, never above 1 by its form. */
static double volume_factor(const struct wind_run *run)
{
    const struct gw_wind_large_volume *row =
        &run->engine->tables->wind_large_volume[GW_ROW_WIND_LARGE_VOLUME_LARGE_VOLUME];
    gw_used_add(&run->engine->used, &row->row);
    double volume = run->in->internal_volume, opening = run->in->opening_area;
    double factor = row->share * (1 + 1 / sqrt(1 + volume / (row->length_m * opening)));
    GW_STEP(run->engine, "R_i", GW_RATIO, factor, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_LARGE_VOLUME),
            "s*(1+1/sqrt(1+V_i/(c*A_og)))", {"s", row->share, GW_RATIO}, {"V_i", volume, GW_VOLUME},
            {"c", row->length_m, GW_LENGTH}, {"A_og", opening, GW_AREA});
    return factor;
}

static bool large_volume_applies(const struct wind_run *run)
{
    if (!gw_given(run->in->internal_volume)) return false;
    if (run->in->enclosure == GW_PARTIALLY_ENCLOSED) return true;
    gw_wind_note(run, "R_i", gw_wind_clause(run, GW_ROW_WIND_CLAUSES_LARGE_VOLUME),
                 "the large-volume reduction is for partially enclosed buildings only: not used");
    return false;
}

static enum gw_status check_pair(const struct wind_run *run)
{
    bool volume = gw_given(run->in->internal_volume), opening = gw_given(run->in->opening_area);
    if (volume == opening) return GW_OK;
    return gw_refuse(run->engine, GW_MISSING, volume ? "opening_area" : "internal_volume",
                     "the large-volume reduction needs both internal_volume and opening_area");
}

double gw_wind_gcpi(const struct wind_run *run)
{
    if (check_pair(run) != GW_OK) return GW_ABSENT;
    const struct gw_wind_internal *row = enclosure_row(run);
    if (!row) {
        gw_refuse(run->engine, GW_MISSING, "enclosure", "enclosure class is not given");
        return GW_ABSENT;
    }
    const char *clause = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_GCPI);
    const bool large = large_volume_applies(run);
    GW_STEP(run->engine, large ? "GC_table" : "GC_pi", GW_RATIO, row->gcpi, clause, "g", {"g", row->gcpi, GW_RATIO});
    if (!large) return row->gcpi;
    double factor = volume_factor(run), reduced = factor * row->gcpi;
    GW_STEP(run->engine, "GC_pi", GW_RATIO, reduced, clause, "R_i*GC_table", {"R_i", factor, GW_RATIO},
            {"GC_table", row->gcpi, GW_RATIO});
    return reduced;
}
