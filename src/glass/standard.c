/* The standard's route: monolithic-equivalent thickness, glass type factors, load shares. */
#include "glass/lite_internal.h"

#include "base/tolerance.h"

#include "tables_data.h"

static const char FACTOR[] = "ASTM E1300 glass type factors", SHARE[] = "ASTM E1300 load share",
                  DESIGNATION[] = "ASTM E1300 thickness designation of laminated glass";
static const double DAY = 86400; /* s */

enum gw_treatment gw_lite_weakest(const struct gw_pane *pane)
{
    enum gw_treatment weakest = pane->plies[0].treatment;
    for (int i = 1; i < pane->n_plies; i++)
        if (pane->plies[i].treatment < weakest) weakest = pane->plies[i].treatment;
    return weakest;
}

/* Designation ------------------------------------------------------------------------------------------------------ */

/* 1/4 in and 6 mm are one designation: they have one minimum. */
static bool is_designation(double nominal, double other, struct gw_engine *engine)
{
    struct gw_engine probe = *engine;
    double minimum, wanted;
    probe.trace = NULL;
    return gw_glass_minimum(&minimum, nominal, &probe) == GW_OK && gw_glass_minimum(&wanted, other, &probe) == GW_OK &&
           fabs(minimum - wanted) < GW_HAIR;
}

static const struct gw_glass_designation *exception(const struct gw_pane *pane, double interlayer,
                                                    struct gw_engine *engine)
{
    const double spelling = 2e-5; /* 0.060 in and 1.52 mm are one thickness */
    if (pane->n_plies != 2 || !is_designation(pane->plies[0].nominal, pane->plies[1].nominal, engine)) return NULL;
    for (size_t i = 0; i < GW_N_GLASS_DESIGNATION; i++) {
        const struct gw_glass_designation *row = &engine->tables->glass_designation[i];
        bool ply = is_designation(pane->plies[0].nominal, row->ply_m, engine);
        if (ply && interlayer >= row->interlayer_least_m - spelling && interlayer <= row->interlayer_most_m + spelling)
            return row;
    }
    return NULL;
}

static enum gw_status sum_of_plies(double *out, const struct gw_pane *pane, double interlayer, struct gw_engine *engine)
{
    const struct gw_glass_designation_rule *rule = GW_USE(engine, &engine->tables->glass_designation_rule[0]);
    const struct gw_glass_thickness *best = NULL;
    double glass = 0, counted = fmin(interlayer, rule->interlayer_most_m);
    for (int i = 0; i < pane->n_plies; i++) {
        double minimum;
        enum gw_status status = gw_glass_minimum(&minimum, pane->plies[i].nominal, engine);
        if (status != GW_OK) return status;
        glass += minimum;
    }
    double sum = glass + counted;
    GW_STEP(engine, "sum", GW_THICKNESS, sum, DESIGNATION, "t_glass+t_v", {"t_glass", glass, GW_THICKNESS},
            {"t_v", counted, GW_THICKNESS});
    for (size_t i = 0; i < GW_N_GLASS_THICKNESS; i++) {
        const struct gw_glass_thickness *row = &engine->tables->glass_thickness[i];
        if (row->minimum_m <= sum * (1 + GW_HAIR) && (!best || row->minimum_m > best->minimum_m)) best = row;
    }
    if (!best) return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", "thinner than every designation of the standard");
    gw_used_add(&engine->used, &best->row);
    GW_STEP(engine, "t", GW_THICKNESS, best->minimum_m, DESIGNATION, "t_min", {"t_min", best->minimum_m, GW_THICKNESS});
    *out = best->minimum_m;
    return GW_OK;
}

enum gw_status gw_pane_designation(double *out, const struct gw_pane *pane, struct gw_engine *engine)
{
    double interlayer = 0;
    if (pane->n_plies == 1) return gw_glass_minimum(out, pane->plies[0].nominal, engine);
    for (int i = 0; i + 1 < pane->n_plies; i++) interlayer += pane->bonds[i].thickness;
    const struct gw_glass_designation *row = exception(pane, interlayer, engine);
    if (!row) return sum_of_plies(out, pane, interlayer, engine);
    gw_used_add(&engine->used, &row->row);
    gw_trace_note(engine, "t", DESIGNATION, "one of the standard's exceptions for two like plies");
    return gw_glass_minimum(out, row->designation_m, engine);
}

/* Glass type factors ----------------------------------------------------------------------------------------------- */

static enum gw_status unknown_treatment(struct gw_engine *engine)
{
    return gw_refuse(engine, GW_MISSING, "treatment", "how is the glass heat treated? Ask the glass supplier");
}

/* Rows are found by treatment; every table has one for each. */
static const struct gw_glass_type_factor *find_single(enum gw_treatment treatment, const struct gw_tables *tables)
{
    const struct gw_glass_type_factor *row = tables->glass_type_factor;
    while (row->treatment != (int)treatment) row++;
    return row;
}

static double single_row(enum gw_treatment treatment, bool is_short, struct gw_engine *engine)
{
    const struct gw_glass_type_factor *row = find_single(treatment, engine->tables);
    gw_used_add(&engine->used, &row->row);
    return is_short ? row->short_factor : row->long_factor;
}

static double pair_row(enum gw_treatment treatment, enum gw_treatment other, bool is_short, struct gw_engine *engine)
{
    const struct gw_glass_pair_factor *row = engine->tables->glass_pair_factor;
    while (row->treatment != (int)treatment || row->other != (int)other) row++;
    gw_used_add(&engine->used, &row->row);
    return is_short ? row->short_factor : row->long_factor;
}

static double triple_row(enum gw_treatment treatment, bool is_short, struct gw_engine *engine)
{
    const struct gw_glass_triple_factor *row = engine->tables->glass_triple_factor;
    while (row->treatment != (int)treatment) row++;
    gw_used_add(&engine->used, &row->row);
    return is_short ? row->short_factor : row->long_factor;
}

enum gw_status gw_lite_frit_factor(double *factor, const struct gw_ply *ply, struct gw_engine *engine)
{
    *factor = 1;
    if (!ply->frit) return GW_OK;
    for (size_t i = 0; i < GW_N_GLASS_FRIT; i++) {
        const struct gw_glass_frit *row = &engine->tables->glass_frit[i];
        if (row->treatment != (int)ply->treatment) continue;
        gw_used_add(&engine->used, &row->row);
        *factor = row->factor;
        GW_STEP(engine, "k_frit", GW_RATIO, *factor, row->row.source, "k_frit", {"k_frit", *factor, GW_RATIO});
        return GW_OK;
    }
    return gw_refuse(engine, GW_BAD_VALUE, "frit",
                     "ceramic frit is fired on: the glass is heat strengthened or tempered");
}

enum gw_status gw_lite_single_factor(double *factor, double *base_duration, enum gw_treatment treatment,
                                     const struct assessment *a)
{
    const struct gw_glass_duration *rule = &a->engine->tables->glass_duration[0];
    if (treatment == GW_TREATMENT_UNSET) return unknown_treatment(a->engine);
    *factor = 1;
    *base_duration = a->load.duration;
    if (treatment == GW_ANNEALED) return GW_OK; /* the failure model has the duration itself */
    if (a->load.duration > rule->long_s * (1 + GW_HAIR))
        return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "duration",
                         "the type factors of heat-treated glass end at {} days", gw_of_number(rule->long_s / DAY, 4));
    bool between = !a->is_short && a->load.duration < rule->long_s * (1 - GW_HAIR);
    if (between) gw_lite_note(a->out, "heat-treated glass between 3 s and 30 days: the factor of 30 days is taken");
    *base_duration = rule->short_s;
    *factor = single_row(treatment, a->is_short, a->engine);
    return GW_OK;
}

/* Of a pane in its unit. Between the short and the long duration there are none: there a single annealed lite has its
 * duration in the failure model. */
static enum gw_status type_factor(double *factor, double *base_duration, int i, enum gw_treatment own,
                                  const struct assessment *a)
{
    const struct gw_make_up *m = &a->in->make_up;
    const struct gw_glass_duration *rule = &a->engine->tables->glass_duration[0];
    const bool long_load = gw_lite_is_long(a);
    for (int k = 0; k < m->n_panes; k++)
        if (gw_lite_weakest(&m->panes[k]) == GW_TREATMENT_UNSET) return unknown_treatment(a->engine);
    if (!a->is_short && !long_load && (m->n_panes > 1 || own != GW_ANNEALED))
        return gw_refuse(
            a->engine, GW_OUTSIDE_METHOD, "duration",
            "the standard's factors of heat-treated glass and of insulating units hold for {} or {} days only",
            gw_of_quantity(GW_TIME, rule->short_s), gw_of_number(rule->long_s / DAY, 4));
    if (m->n_panes == 1 && !long_load) return gw_lite_single_factor(factor, base_duration, own, a);
    *base_duration = rule->short_s;
    if (m->n_panes == 1) {
        *factor = single_row(own, false, a->engine);
        return GW_OK;
    }
    if (m->n_panes == 2) {
        *factor = pair_row(own, gw_lite_weakest(&m->panes[1 - i]), a->is_short, a->engine);
        return GW_OK;
    }
    for (int k = 0; k < m->n_panes; k++)
        if (gw_lite_weakest(&m->panes[k]) != gw_lite_weakest(&m->panes[i]))
            return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "layers",
                             "the standard's factors of triple units of unlike treatments are not established here");
    *factor = triple_row(own, a->is_short, a->engine);
    return GW_OK;
}

/* Load shares ------------------------------------------------------------------------------------------------------ */

/* For a long load a laminated pane counts as its plies, one on another. */
static enum gw_status stiffness(double *out, int i, const struct assessment *a)
{
    const struct gw_pane *pane = &a->in->make_up.panes[i];
    *out = pow(a->out->panes[i].standard.thickness, 3);
    if (a->is_short || pane->n_plies == 1) return GW_OK;
    *out = 0;
    for (int k = 0; k < pane->n_plies; k++) {
        double minimum;
        enum gw_status status = gw_glass_minimum(&minimum, pane->plies[k].nominal, a->engine);
        if (status != GW_OK) return status;
        *out += pow(minimum, 3);
    }
    gw_trace_note(a->engine, "t^3", SHARE, "long duration: a laminated pane counts as the sum of its plies' cubes");
    return GW_OK;
}

static enum gw_status find_shares(const struct assessment *a)
{
    static const char *const names[] = {"LSF_1", "LSF_2", "LSF_3"};
    static const char *const TWO[] = {"t_1^3/(t_1^3+t_2^3)", "t_2^3/(t_1^3+t_2^3)"}, *const THREE[] = {
                                                                                         "t_1^3/(t_1^3+t_2^3+t_3^3)",
                                                                                         "t_2^3/(t_1^3+t_2^3+t_3^3)",
                                                                                         "t_3^3/(t_1^3+t_2^3+t_3^3)"};
    double cubes[GW_PANES] = {0}, sum = 0;
    const int n = a->in->make_up.n_panes;
    a->out->panes[0].standard.share = 1;
    if (n == 1) return GW_OK;
    for (int i = 0; i < n; i++) {
        enum gw_status status = stiffness(&cubes[i], i, a);
        if (status != GW_OK) return status;
        sum += cubes[i];
    }
    for (int i = 0; i < n; i++) {
        a->out->panes[i].standard.share = cubes[i] / sum;
        GW_STEP(a->engine, names[i], GW_RATIO, cubes[i] / sum, SHARE, n > 2 ? THREE[i] : TWO[i],
                {"t_1", cbrt(cubes[0]), GW_THICKNESS}, {"t_2", cbrt(cubes[1]), GW_THICKNESS},
                {"t_3", cbrt(cubes[2]), GW_THICKNESS});
    }
    return GW_OK;
}

/* Resistance and response ------------------------------------------------------------------------------------------ */

/* Of least strength by its treatment and frit, and what the frit leaves of it. */
static enum gw_status weakest_ply(const struct gw_ply **ply, double *frit, const struct gw_pane *pane,
                                  struct gw_engine *engine)
{
    double least = INFINITY, own;
    *ply = pane->plies;
    *frit = 1;
    for (int i = 0; i < pane->n_plies; i++) {
        const struct gw_ply *p = &pane->plies[i];
        if (p->treatment == GW_TREATMENT_UNSET) return unknown_treatment(engine);
        enum gw_status status = gw_lite_frit_factor(&own, p, engine);
        if (status != GW_OK) return status;
        double strength = own * find_single(p->treatment, engine->tables)->short_factor;
        if (!(strength < least)) continue;
        least = strength;
        *ply = p;
        *frit = own;
    }
    return GW_OK;
}

static enum gw_status resist(int i, double *base_duration, const struct assessment *a)
{
    struct gw_pane_by_standard *s = &a->out->panes[i].standard;
    const struct gw_ply *ply = NULL;
    double frit = 1;
    enum gw_status status = weakest_ply(&ply, &frit, &a->in->make_up.panes[i], a->engine);
    if (status == GW_OK) status = type_factor(&s->type_factor, base_duration, i, ply->treatment, a);
    if (status == GW_OK)
        status = gw_glass_load(&s->nonfactored_load, a->in->width, a->in->height, s->thickness, *base_duration,
                               a->probability, a->engine);
    if (status != GW_OK) return status;
    s->type_factor *= frit;
    s->load_resistance = s->nonfactored_load * s->type_factor / s->share;
    GW_STEP(a->engine, "LR", GW_PRESSURE, s->load_resistance, FACTOR, "NFL*GTF/LSF",
            {"NFL", s->nonfactored_load, GW_PRESSURE}, {"GTF", s->type_factor, GW_RATIO}, {"LSF", s->share, GW_RATIO});
    return GW_OK;
}

/* The stress is that of the monolithic equivalent; the deflection of a laminated pane is that of its effective
 * thickness. The probability is that of annealed glass at the pressure over the type factor. */
static enum gw_status respond(int i, double base_duration, const struct assessment *a)
{
    struct gw_pane_by_standard *s = &a->out->panes[i].standard;
    struct gw_plate_result plate;
    double share = fabs(a->load.pressure) * s->share;
    s->deflection = s->stress_max = s->breakage = GW_ABSENT;
    if (!gw_given(a->load.pressure)) return GW_OK;
    if (a->in->make_up.n_panes > 1)
        GW_STEP(a->engine, "q_pane", GW_PRESSURE, share, SHARE, "p*LSF",
                {"p|F_g|p", fabs(a->load.pressure), GW_PRESSURE}, {"LSF", s->share, GW_RATIO});
    double bending = a->out->panes[i].principles.deflection_thickness;
    bool laminated = bending != s->thickness;
    struct gw_plate_case lite =
        gw_lite_plate_case(a->in, s->thickness, share, GW_PLATE_STRESS | (laminated ? 0 : GW_PLATE_DEFLECTION));
    enum gw_status status = gw_plate(&plate, &lite, a->engine);
    if (status != GW_OK) return status;
    s->stress_max = plate.stress_max;
    if (laminated) {
        lite = gw_lite_plate_case(a->in, bending, share, GW_PLATE_DEFLECTION);
        status = gw_plate(&plate, &lite, a->engine);
    }
    s->deflection = plate.deflection;
    struct gw_trace *trace = a->engine->trace;
    a->engine->trace = NULL;
    if (status == GW_OK)
        status = gw_glass_breakage(&s->breakage, a->in->width, a->in->height, s->thickness, share / s->type_factor,
                                   base_duration, a->engine);
    a->engine->trace = trace;
    return status;
}

static void gather(struct gw_lite_route *b, const struct assessment *a)
{
    const struct gw_pane_result *panes = a->out->panes;
    for (int i = 0; i < a->out->n_panes; i++)
        if (panes[i].standard.load_resistance < panes[b->pane].standard.load_resistance) b->pane = i;
    b->resistance = panes[b->pane].standard.load_resistance;
    if (!gw_given(a->load.pressure)) return;
    b->utilization = fabs(a->load.pressure) / b->resistance;
    b->deflection = b->stress_max = b->breakage = 0;
    for (int i = 0; i < a->out->n_panes; i++) {
        b->deflection = fmax(b->deflection, panes[i].standard.deflection);
        b->stress_max = fmax(b->stress_max, panes[i].standard.stress_max);
        b->breakage = fmax(b->breakage, panes[i].standard.breakage);
    }
    GW_STEP(a->engine, "use_factors", GW_RATIO, b->utilization, FACTOR, "p/LR",
            {"p|F_g|p", fabs(a->load.pressure), GW_PRESSURE}, {"LR", b->resistance, GW_PRESSURE});
}

static enum gw_status check_limits(const struct assessment *a)
{
    const struct gw_glass_edition *row = a->engine->tables->glass_edition;
    while (row->edition != (int)a->in->edition) row++;
    gw_used_add(&a->engine->used, &row->row);
    if (a->in->edges != 4)
        return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "support",
                         "how the standard's charts for fewer than four edges were made is not established");
    if (a->in->make_up.n_panes > 2 && row->triple == GW_NO)
        return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "layers", "this edition of the standard has no triple units");
    if (fabs(a->load.pressure) > row->chart_limit_pa)
        return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "pressure", "the standard's charts end at {}",
                         gw_of_quantity(GW_PRESSURE, row->chart_limit_pa));
    return GW_OK;
}

static bool beyond_charts(const struct assessment *a)
{
    const struct gw_glass_edition *row = a->engine->tables->glass_edition;
    while (row->edition != (int)a->in->edition) row++;
    for (int i = 0; i < a->out->n_panes; i++)
        if (a->out->panes[i].standard.nonfactored_load > row->chart_limit_pa) return true;
    return false;
}

const char *gw_pane_place(int pane, int panes)
{
    static const char *const places[GW_PANES] = {"1", "2", "3"};
    return panes > 1 && pane >= 0 && pane < GW_PANES ? places[pane] : NULL;
}

enum gw_status gw_lite_by_standard(const struct assessment *a)
{
    const int n = a->in->make_up.n_panes;
    enum gw_status status = check_limits(a);
    gw_trace_group(a->engine, "The standard's factors");
    for (int i = 0; i < n && status == GW_OK; i++) {
        gw_trace_at(a->engine, gw_pane_place(i, n));
        status = gw_pane_designation(&a->out->panes[i].standard.thickness, &a->in->make_up.panes[i], a->engine);
    }
    if (status == GW_OK) status = find_shares(a);
    for (int i = 0; i < n && status == GW_OK; i++) {
        double base_duration = GW_ABSENT;
        gw_trace_at(a->engine, gw_pane_place(i, n));
        status = resist(i, &base_duration, a);
        if (status == GW_OK) status = respond(i, base_duration, a);
    }
    gw_trace_at(a->engine, NULL);
    if (status != GW_OK) return status;
    gather(&a->out->standard, a);
    if (beyond_charts(a)) gw_lite_note(a->out, "a non-factored load lies beyond the standard's charts");
    return GW_OK;
}
