/* First principles: plies coupled by their interlayer, sealed cavities, each ply by the failure model. */
#include "glass/lite_internal.h"

#include "tables_data.h"

static const char PLIES[] = "plies one on another, no shear between them", MODEL[] = "failure model of each ply",
                  CAVITY[] = "gas law of the sealed cavity";

/* Effective thicknesses -------------------------------------------------------------------------------------------- */

struct effective {
    double deflection, stress[GW_PLIES];
};

/* Without shear transfer each ply takes its part by its own stiffness. */
static enum gw_status layered(struct effective *out, const struct gw_pane *pane, struct gw_engine *engine)
{
    double cubes = 0, minimum[GW_PLIES];
    for (int i = 0; i < pane->n_plies; i++) {
        enum gw_status status = gw_glass_minimum(&minimum[i], pane->plies[i].nominal, engine);
        if (status != GW_OK) return status;
        cubes += pow(minimum[i], 3);
    }
    out->deflection = cbrt(cubes);
    for (int i = 0; i < pane->n_plies; i++) {
        out->stress[i] = sqrt(cubes / minimum[i]);
        GW_STEP(engine, "h_i,ef", GW_THICKNESS, out->stress[i], PLIES, "(h_ef^3/h_i)^(1/2)",
                {"h_ef", out->deflection, GW_THICKNESS}, {"h_i|t", minimum[i], GW_THICKNESS});
    }
    return GW_OK;
}

static double span_of(const struct gw_lite *in) { return in->span == GW_SPAN_WIDTH ? in->width : in->height; }

/* The shorter one; the span where only two edges or one hold. */
static double bending_length(const struct gw_lite *in)
{
    return in->edges < 3 ? span_of(in) : fmin(in->width, in->height);
}

static enum gw_status coupled(struct effective *out, const struct gw_pane *pane, const struct assessment *a)
{
    const struct gw_interlayer_usual *usual = &a->engine->tables->interlayer_usual[0];
    struct gw_laminate_result r;
    struct gw_laminate laminate = {.interlayer = pane->bonds[0].thickness,
                                   .shear_modulus = pane->bonds[0].shear_modulus,
                                   .material = pane->bonds[0].material,
                                   .duration = a->load.duration,
                                   .temperature = a->in->temperature,
                                   .length = bending_length(a->in),
                                   .elastic_modulus = GW_ABSENT};
    enum gw_status status = GW_OK;
    for (int i = 0; i < 2 && status == GW_OK; i++)
        status = gw_glass_minimum(&laminate.plies[i], pane->plies[i].nominal, a->engine);
    if (status != GW_OK) return status;
    if (!gw_given(laminate.temperature)) laminate.temperature = GW_USE(a->engine, usual)->temperature_k;
    status = gw_laminate_thickness(&r, &laminate, a->engine);
    *out = (struct effective){r.deflection, {r.stress[0], r.stress[1]}};
    return status;
}

static bool stiffness_is_known(const struct gw_pane *pane, const struct assessment *a)
{
    const struct gw_bond *bond = &pane->bonds[0];
    double temperature =
        gw_given(a->in->temperature) ? a->in->temperature : a->engine->tables->interlayer_usual[0].temperature_k;
    struct gw_engine probe = *a->engine;
    double modulus;
    probe.trace = NULL;
    return gw_given(bond->shear_modulus) ||
           gw_interlayer_modulus(&modulus, bond->material, a->load.duration, temperature, &probe) == GW_OK;
}

static enum gw_status find_effective(struct effective *out, const struct gw_pane *pane, const struct assessment *a)
{
    if (pane->n_plies == 1) {
        enum gw_status status = gw_glass_minimum(&out->deflection, pane->plies[0].nominal, a->engine);
        out->stress[0] = out->deflection;
        return status;
    }
    if (pane->n_plies == 2 && stiffness_is_known(pane, a)) return coupled(out, pane, a);
    gw_lite_note(a->out,
                 pane->n_plies == 2
                     ? "the interlayer's stiffness at this duration and temperature is not known: its plies are "
                       "taken without shear between them"
                     : "three and more plies are taken without shear between them");
    return layered(out, pane, a->engine);
}

enum gw_status gw_lite_find_thicknesses(struct assessment *a)
{
    for (int i = 0; i < a->in->make_up.n_panes; i++) {
        struct effective e = {0};
        gw_trace_at(a->engine, gw_pane_place(i, a->in->make_up.n_panes));
        enum gw_status status = find_effective(&e, &a->in->make_up.panes[i], a);
        if (status != GW_OK) return status;
        a->out->panes[i].principles.deflection_thickness = e.deflection;
        for (int k = 0; k < a->in->make_up.panes[i].n_plies; k++) a->stress_thickness[i][k] = e.stress[k];
    }
    gw_trace_at(a->engine, NULL);
    return GW_OK;
}

/* Capacities ------------------------------------------------------------------------------------------------------- */

static enum gw_status ply_capacity(struct gw_pane_by_principles *p, const struct gw_pane *pane, int ply,
                                   double stress_thickness, const struct assessment *a)
{
    enum gw_treatment treatment = pane->plies[ply].treatment;
    double factor, frit, base_duration, load;
    enum gw_status status = gw_lite_single_factor(&factor, &base_duration, treatment, a);
    if (status == GW_OK) status = gw_lite_frit_factor(&frit, &pane->plies[ply], a->engine);
    if (status == GW_OK)
        status = gw_glass_load(&load, a->in->width, a->in->height, stress_thickness, base_duration, a->probability,
                               a->engine);
    if (status != GW_OK) return status;
    double capacity = load * factor * frit;
    GW_STEP(a->engine, "q_R", GW_PRESSURE, capacity, MODEL, "NFL*GTF*k_frit", {"NFL", load, GW_PRESSURE},
            {"GTF", factor, GW_RATIO}, {"k_frit", frit, GW_RATIO});
    if (ply && capacity >= p->capacity) return GW_OK;
    p->ply = ply;
    p->stress_thickness = stress_thickness;
    p->type_factor = factor * frit;
    p->capacity = capacity;
    return GW_OK;
}

static enum gw_status find_capacities(const struct assessment *a)
{
    for (int i = 0; i < GW_PANES && i < a->in->make_up.n_panes; i++) {
        const struct gw_pane *pane = &a->in->make_up.panes[i];
        gw_trace_at(a->engine, gw_pane_place(i, a->in->make_up.n_panes));
        for (int k = 0; k < pane->n_plies; k++) {
            enum gw_status status = ply_capacity(&a->out->panes[i].principles, pane, k, a->stress_thickness[i][k], a);
            if (status != GW_OK) return status;
        }
    }
    gw_trace_at(a->engine, NULL);
    return GW_OK;
}

/* Shares of the cavity --------------------------------------------------------------------------------------------- */

static enum gw_status nets(double net[GW_PANES], double deflection[GW_PANES], double pressure,
                           const struct assessment *a)
{
    const struct gw_lite *in = a->in;
    const int n = in->make_up.n_panes;
    struct gw_cavity_result r;
    struct gw_cavity cavity = {.width = in->width,
                               .height = in->height,
                               .n_lites = n,
                               .pressure_outdoor = pressure,
                               .atmospheric_pressure = in->service.pressure,
                               .temperature = in->service.temperature,
                               .sealing_pressure = in->sealing.pressure,
                               .sealing_temperature = in->sealing.temperature};
    for (int i = 0; i < n; i++) cavity.thickness[i] = a->out->panes[i].principles.deflection_thickness;
    for (int i = 0; i + 1 < n; i++) cavity.gaps[i] = in->make_up.gaps[i];
    enum gw_status status = gw_cavity_solve(&r, &cavity, a->engine);
    for (int i = 0; i < n && status == GW_OK; i++) {
        net[i] = r.net[i];
        deflection[i] = r.deflection[i];
    }
    return status;
}

/* The most used pane under a pressure on the unit. */
static enum gw_status use_at(double *use, int *pane, double pressure, const struct assessment *a)
{
    double net[GW_PANES], deflection[GW_PANES];
    enum gw_status status = nets(net, deflection, pressure, a);
    *use = 0;
    for (int i = 0; i < a->in->make_up.n_panes && status == GW_OK; i++) {
        double own = fabs(net[i]) / a->out->panes[i].principles.capacity;
        if (!(own > *use)) continue;
        *use = own;
        *pane = i;
    }
    return status;
}

/* A pressure and the use there. */
struct used {
    double pressure, use;
};

/* From the least capacity upward to a use of one, so that no pane is bent far beyond what it takes: the solution may
 * not reach there. The panes' net loads add up to the pressure, so the sum of the capacities is enough. */
static enum gw_status bracket(struct used *low, struct used *high, int *pane, double sign, const struct assessment *a)
{
    const double wider = 1.5;
    double least = INFINITY, sum = 0;
    for (int i = 0; i < a->in->make_up.n_panes; i++) {
        least = fmin(least, a->out->panes[i].principles.capacity);
        sum += a->out->panes[i].principles.capacity;
    }
    high->pressure = least;
    enum gw_status status = use_at(&high->use, pane, sign * high->pressure, a);
    while (status == GW_OK && high->use < 1 && high->pressure < sum) {
        *low = *high;
        high->pressure = fmin(high->pressure * wider, sum);
        status = use_at(&high->use, pane, sign * high->pressure, a);
    }
    return status;
}

static enum gw_status search_unit(double *resistance, int *pane, double sign, const struct assessment *a)
{
    enum { MOST_STEPS = 60 };
    const double enough = 1e-7;
    struct used low = {0, 0}, high = {0, 0}, now = {0, 0};
    enum gw_status status = use_at(&low.use, pane, 0, a);
    *resistance = 0;
    if (status != GW_OK || low.use >= 1) return status;
    status = bracket(&low, &high, pane, sign, a);
    for (int step = 0; status == GW_OK && fabs(now.use - 1) >= enough; step++) {
        if (step == MOST_STEPS)
            return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "pressure", "the resistance was not found in {} steps",
                             gw_of_count(step));
        double by_chord = low.pressure + (high.pressure - low.pressure) * (1 - low.use) / (high.use - low.use);
        now.pressure = step % 3 == 2 ? (low.pressure + high.pressure) / 2 : by_chord;
        status = use_at(&now.use, pane, sign * now.pressure, a);
        if (now.use < 1) low = now;
        else high = now;
    }
    *resistance = now.pressure;
    return status;
}

enum gw_status gw_lite_find_resistance(const struct assessment *a)
{
    struct gw_lite_route *b = &a->out->principles;
    struct gw_trace *trace = a->engine->trace;
    double sign = a->load.pressure < 0 ? -1 : 1;
    int pane = 0;
    b->resistance = a->out->panes[0].principles.capacity;
    if (a->in->make_up.n_panes == 1) return GW_OK;
    a->engine->trace = NULL; /* the search is not part of the derivation */
    enum gw_status status = search_unit(&b->resistance, &pane, sign, a);
    a->engine->trace = trace;
    if (!(b->utilization > 0)) b->pane = pane; /* else that of the load stands */
    const struct gw_pane_result *panes = a->out->panes;
    GW_FOUND(a->engine, "p_R", GW_PRESSURE, b->resistance, CAVITY,
             "the pressure at which the net load of a pane reaches its q_R, found by bracketing",
             {"q_R", panes[0].principles.capacity, GW_PRESSURE}, {"q_R", panes[1].principles.capacity, GW_PRESSURE});
    return status;
}

/* Response --------------------------------------------------------------------------------------------------------- */

/* Stress and probability of the ply that governs, under the pane's net load. */
static enum gw_status respond_pane(int i, const struct assessment *a)
{
    struct gw_pane_by_principles *p = &a->out->panes[i].principles;
    struct gw_plate_result plate;
    struct gw_plate_case stressed = gw_lite_plate_case(a->in, p->stress_thickness, fabs(p->net), GW_PLATE_STRESS);
    struct gw_trace *trace = a->engine->trace;
    double base_duration, factor;
    enum gw_status status = gw_plate(&plate, &stressed, a->engine);
    if (status != GW_OK) return status;
    p->stress_max = plate.stress_max;
    a->engine->trace = NULL;
    status = gw_lite_single_factor(&factor, &base_duration, a->in->make_up.panes[i].plies[p->ply].treatment, a);
    if (status == GW_OK)
        status = gw_glass_breakage(&p->breakage, a->in->width, a->in->height, p->stress_thickness,
                                   fabs(p->net) / p->type_factor, base_duration, a->engine);
    a->engine->trace = trace;
    return status;
}

static enum gw_status load_panes(const struct assessment *a)
{
    struct gw_pane_result *panes = a->out->panes;
    double net[GW_PANES], deflection[GW_PANES];
    struct gw_plate_result plate;
    enum gw_status status;
    if (a->in->make_up.n_panes == 1) {
        struct gw_plate_case bent = gw_lite_plate_case(a->in, panes[0].principles.deflection_thickness,
                                                       fabs(a->load.pressure), GW_PLATE_DEFLECTION);
        status = gw_plate(&plate, &bent, a->engine);
        net[0] = a->load.pressure;
        deflection[0] = copysign(plate.deflection, a->load.pressure);
    } else {
        status = nets(net, deflection, a->load.pressure, a);
    }
    for (int i = 0; i < a->in->make_up.n_panes && status == GW_OK; i++) {
        panes[i].principles.net = net[i];
        panes[i].principles.deflection = deflection[i];
        gw_trace_at(a->engine, gw_pane_place(i, a->in->make_up.n_panes));
        status = respond_pane(i, a);
    }
    gw_trace_at(a->engine, NULL);
    return status;
}

/* The use is that of the panes' net loads: with a climatic load it is not the ratio of the pressures. */
static void gather(struct gw_lite_route *b, const struct assessment *a)
{
    const int n = a->in->make_up.n_panes;
    b->utilization = b->deflection = b->stress_max = b->breakage = 0;
    for (int i = 0; i < n; i++) {
        const struct gw_pane_by_principles *p = &a->out->panes[i].principles;
        double use = fabs(p->net) / p->capacity;
        if (use > b->utilization) b->pane = i;
        b->utilization = fmax(b->utilization, use);
        b->deflection = fmax(b->deflection, fabs(p->deflection));
        b->stress_max = fmax(b->stress_max, p->stress_max);
        b->breakage = fmax(b->breakage, p->breakage);
    }
    const struct gw_pane_by_principles *p = &a->out->panes[b->pane].principles;
    GW_STEP(a->engine, "use", GW_RATIO, b->utilization, MODEL, "q_net/q_R",
            {n > 1 ? "q_net" : "q_net|F_g|q_net", fabs(p->net), GW_PRESSURE}, {"q_R", p->capacity, GW_PRESSURE});
}

/* Fewer than four edges ----------------------------------------------------------------------------------------------
 */

/* The least of any ply. */
static enum gw_status find_allowables(struct gw_support_case *c, const struct assessment *a)
{
    const struct gw_pane *pane = &a->in->make_up.panes[0];
    c->edge_allowable = c->surface_allowable = INFINITY;
    for (int i = 0; i < pane->n_plies; i++) {
        const enum gw_treatment treatment = pane->plies[i].treatment;
        double edge, surface, frit;
        enum gw_status status =
            gw_edge_allowable(&edge, treatment, a->in->finish, a->load.duration, a->probability, a->engine);
        if (status == GW_OK)
            status = gw_surface_allowable(&surface, treatment, a->load.duration, a->probability, a->engine);
        if (status == GW_OK) status = gw_lite_frit_factor(&frit, &pane->plies[i], a->engine);
        if (status != GW_OK) return status;
        c->edge_allowable = fmin(c->edge_allowable, edge * frit);
        c->surface_allowable = fmin(c->surface_allowable, surface * frit);
    }
    return GW_OK;
}

static void answer_support(const struct assessment *a, const struct gw_support_result *r)
{
    struct gw_pane_by_principles *p = &a->out->panes[0].principles;
    struct gw_lite_route *b = &a->out->principles;
    const bool bounded = gw_given(r->limit_pressure_bound); /* a cantilever has no plate action to bound */
    if (bounded)
        gw_lite_note(a->out,
                     "linear theory; the stress of the free edges includes the most by which plate action exceeds it");
    for (unsigned i = bounded; i < r->n_notes; i++) gw_lite_note(a->out, r->notes[i]);
    b->resistance = p->capacity = bounded ? r->limit_pressure_bound : r->limit_pressure;
    if (!gw_given(a->load.pressure)) return;
    p->net = a->load.pressure;
    b->deflection = r->deflection;
    p->deflection = copysign(r->deflection, a->load.pressure);
    p->stress_max = b->stress_max = bounded ? fmax(r->stress_edge_bound, r->stress_surface) : r->stress_surface;
    b->utilization = fabs(a->load.pressure) / b->resistance;
    GW_STEP(a->engine, "use", GW_RATIO, b->utilization, "stresses of edge and surface", "p/p_R",
            {"p|F_g|p", fabs(a->load.pressure), GW_PRESSURE}, {"p_R", b->resistance, GW_PRESSURE});
}

/* The ply with the least stress thickness has the most stress. */
static enum gw_status by_support(const struct assessment *a)
{
    const struct gw_lite *in = a->in;
    struct gw_pane_by_principles *p = &a->out->panes[0].principles;
    struct gw_support_result r;
    if (in->make_up.n_panes > 1)
        return gw_refuse(a->engine, GW_OUTSIDE_METHOD, "support", "insulating units are held on four edges");
    if (in->span == GW_SPAN_UNSET)
        return gw_refuse(a->engine, GW_MISSING, "span", "does the lite span its width or its height?");
    p->stress_thickness = a->stress_thickness[0][0];
    for (int i = 1; i < in->make_up.panes[0].n_plies; i++)
        if (a->stress_thickness[0][i] < p->stress_thickness) p->stress_thickness = a->stress_thickness[0][p->ply = i];
    struct gw_support_case c = {.edges = in->edges,
                                .span = span_of(in),
                                .breadth = in->span == GW_SPAN_WIDTH ? in->height : in->width,
                                .thickness = p->deflection_thickness,
                                .stress_thickness = p->stress_thickness,
                                .pressure = fabs(a->load.pressure),
                                .elastic_modulus = GW_ABSENT,
                                .poissons_ratio = GW_ABSENT};
    enum gw_status status = find_allowables(&c, a);
    if (status == GW_OK) status = gw_support_solve(&r, &c, a->engine);
    if (status == GW_OK) answer_support(a, &r);
    return status;
}

/* With a load the use is enough; the search for the resistance costs ten times as much. */
enum gw_status gw_lite_by_principles(const struct assessment *a)
{
    const bool loaded = gw_given(a->load.pressure);
    if (a->in->climate && a->in->make_up.n_panes > 1)
        gw_lite_note(a->out,
                     "climatic load is taken with the duration of the pressure beside it, though it lasts longer");
    gw_trace_group(a->engine, GW_LITE_PRINCIPLES);
    if (a->in->edges < 4) return by_support(a);
    enum gw_status status = find_capacities(a);
    if (status == GW_OK && loaded) status = load_panes(a);
    if (status == GW_OK && loaded) gather(&a->out->principles, a);
    const bool enough = a->in->use_only && a->out->principles.utilization > 0;
    return status == GW_OK && !enough ? gw_lite_find_resistance(a) : status;
}
