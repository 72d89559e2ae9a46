/* What the files of the wind engine share. */
#ifndef GALEWARD_WIND_INTERNAL_H
#define GALEWARD_WIND_INTERNAL_H

#include "galeward/wind.h"
#include "tables_data.h"

/* One evaluation. `out` is NULL where a part is used alone; `low` says which wall figure serves the building. */
struct wind_run {
    struct gw_engine *engine;
    const struct gw_wind_case *in;
    struct gw_wind_result *out;
    bool low;
    bool alternative; /* low by the alternative for buildings of middle height */
};

/* Names of the quantities at one height, as the derivation prints them. */
struct wind_names {
    const char *kz, *kzt, *q;
    const char *kz_in_q, *kzt_in_q; /* in the formula of q, which serves all heights */
    const char *place;
};

struct wind_level {
    double kz, kzt, q;
};

/* A height typed in other units lands a rounding error beside a limit: 720 in is 60 ft. */
static inline bool wind_at_most(double value, double limit)
{
    const double rounding = 1e-9;
    return value <= limit + rounding * fabs(limit);
}

static inline bool wind_below(double value, double limit) { return !wind_at_most(limit, value); }

/* Roof slope; a roof of no given slope is flat. */
static inline double wind_roof_slope(const struct gw_wind_case *in)
{
    return gw_given(in->roof_slope) ? in->roof_slope : 0;
}

/* pressure.c: a remark for the result and the derivation; each once in the result. `text` is constant. */
void gw_wind_note(const struct wind_run *run, const char *symbol, const char *clause, const char *text);
/* With a figure before it: "15 ft: z raised to ...". */
void gw_wind_note_of(const struct wind_run *run, const char *symbol, const char *clause, struct gw_value figure,
                     const char *text);
/* The clause of an item (GW_ROW_WIND_CLAUSES_...) in the edition of the run. */
const char *gw_wind_clause(const struct wind_run *run, int item);

/* velocity.c; NULL or GW_ABSENT with the fault filled where edition or exposure is not given. */
const struct gw_wind_velocity *gw_wind_velocity_row(const struct wind_run *run);
double gw_wind_kz_of_run(const struct wind_run *run, const char *symbol, double z);
double gw_wind_ke_of_run(const struct wind_run *run);
/* K_z, K_zt and q at a height. False with the fault filled where that fails. */
bool gw_wind_level_at(const struct wind_run *run, double z, double ke, const struct wind_names *names,
                      struct wind_level *level);

/* topography.c */
enum gw_status gw_wind_check_topography(const struct gw_topography *topography, struct gw_engine *engine);
double gw_wind_kzt_of_run(const struct wind_run *run, const char *symbol, const struct gw_topography *topography,
                          double z);

/* internal.c: (GC_pi) after the large-volume factor; GW_ABSENT with the fault filled where it fails. */
double gw_wind_gcpi(const struct wind_run *run);

/* coefficients.c */
enum wind_sign { WIND_POSITIVE, WIND_NEGATIVE };
/* `low` and `alternative` of the run. */
void gw_wind_choose_figure(struct wind_run *run);
double gw_wind_area(const struct wind_run *run, double span, double width);
double gw_wind_wall_gcp(const struct wind_run *run, enum wind_sign sign, double area);
/* Suction of a flat roof, edge (2) or corner (3). */
double gw_wind_roof_gcp(const struct wind_run *run, int zone, double area);
int gw_wind_figure_clause(const struct wind_run *run);

/* strip.c; the second from the first */
double gw_wind_strip(const struct wind_run *run);
double gw_wind_roof_reach(const struct wind_run *run, double strip);

/* levels.c: the least design pressure, on a positive pressure or a negative one. */
double gw_wind_at_least_minimum(const struct wind_run *run, const char *symbol, const char *of, double pressure);

/* parapet.c */
/* A high parapet all round: the roof's corners count as its edges. */
bool gw_wind_corners_calmed(const struct wind_run *run);
enum gw_status gw_wind_parapet(const struct wind_run *run, struct gw_parapet_result *out);

#endif
