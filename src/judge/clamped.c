/* What a torque clamps, on the day of fastening and later. */
#include "judge/screw_line.h"

#include "judge/checks.h"
#include "judge/judge_internal.h"
#include "judge/plated.h"

#include "base/tolerance.h"
#include "galeward/clamp.h"
#include "tables_data.h"

#include <string.h>

static const double DAY = 86400, YEAR = 365.25 * 86400; /* s, exact */

/* Age ------------------------------------------------------------------------------------------------------------- */

double gw_clamp_retained(struct gw_ask *ask, const struct gw_system *system, double age)
{
    const struct gw_tables *tables = ask->model->tables;
    const struct gw_clamp_practice *practice = &tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE];
    const bool own = system->clamp && gw_given(system->clamp->retained);
    const struct gw_relaxation_case in = {
        .retained = own ? system->clamp->retained : practice->retained, .age = YEAR, .rate = GW_ABSENT, .time = age};
    struct gw_relaxation_result r;
    if (!own) gw_used_add(&ask->engine.used, &practice->row);
    if (!(age > tables->clamp_relaxation[GW_ROW_CLAMP_RELAXATION_LINE].start_s)) return 1;
    return gw_relaxation(&r, &in, &ask->engine) == GW_OK ? r.retained : 0; /* the line has come to nothing */
}

/* s: when the clamp is to hold. */
static double service(const struct gw_system *system)
{
    return system->clamp ? fmax(YEAR, system->clamp->service_life) : YEAR; /* fmax takes what is given */
}

static double most_of(const double *items, size_t n) { return n ? items[n - 1] : GW_ABSENT; }

/* Of the thread that was formed; 0: not stated, and asked for where a clamp is worked out. */
static double forming_most(const struct gw_system *system)
{
    const struct gw_clamp_spec *c = system->clamp;
    return c && c->forming_torque.n ? most_of(c->forming_torque.items, c->forming_torque.n) : 0;
}

void gw_torque_limit(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_system *system)
{
    const struct gw_clamp_torque *row = &ask->model->tables->clamp_torque[GW_ROW_CLAMP_TORQUE_QUARTER_INCH];
    const struct gw_screw_spec *screw = system->screw;
    const struct gw_own_limits *own = system->installation ? system->installation->of[GW_ITEM_screw_torque] : NULL;
    if (own) {
        *out = (struct gw_item_limit){.at_least = own->at_least, .at_most = own->at_most, .basis = GW_LIMIT_SYSTEM};
        return;
    }
    if (screw && fabs(screw->diameter - row->diameter_m) > GW_HAIR_DRAWN) return;
    gw_used_add(&ask->engine.used, &row->row);
    out->at_least = row->least_nm;
    out->at_most = row->most_nm;
    out->basis = GW_LIMIT_PRACTICE;
}

/* A thread that is formed may ask its torque again or not. */
static double expected_most(double at_most, double retained, double forming)
{
    return retained * at_most + (1 - retained) * forming;
}

void gw_torque_expected(struct gw_item_limit *limit, struct gw_ask *ask, const struct gw_as_read *read,
                        const struct gw_system *system)
{
    const double age = read->torque_age;
    if (!(age > DAY)) return;
    const double left = gw_clamp_retained(ask, system, age);
    limit->at_least *= left;
    limit->at_most = expected_most(limit->at_most, left, forming_most(system));
    limit->note = GW_SAY(ask->arena, "expected {} days after fastening, when {} of the clamp is left",
                         gw_of_number(age / DAY, 4), gw_of_number(left, 2));
}

enum gw_torque_age gw_torque_age_of(struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system)
{
    const double torque = read->of[GW_ITEM_screw_torque].number;
    struct gw_item_limit limit = {.at_least = GW_ABSENT, .at_most = GW_ABSENT};
    if (!gw_given(torque) || read->drawn) return GW_TORQUE_FRESH; /* a drawing's is the one to fasten with */
    if (gw_given(read->torque_age)) return read->torque_age > DAY ? GW_TORQUE_AGED : GW_TORQUE_FRESH;
    gw_torque_limit(&limit, ask, system);
    const double aged = limit.at_least * gw_clamp_retained(ask, system, service(system));
    const bool between = torque >= aged * (1 - GW_HAIR) && torque < limit.at_least * (1 - GW_HAIR);
    return between ? GW_TORQUE_UNSURE : GW_TORQUE_UNDATED;
}

/* Tension ---------------------------------------------------------------------------------------------------------- */

/* One end of the ranges. */
struct end {
    double nut_factor, forming;
    double share; /* of the tension that the torque tells, what is left when it is to hold */
};

/* Of an old torque that much is left of what it tells now: the line goes on from there. */
static double share_from(struct gw_ask *ask, const struct gw_system *system, double age)
{
    const double then = service(system), at = gw_clamp_retained(ask, system, then);
    if (!(age < then)) return 1;
    return at / gw_clamp_retained(ask, system, age);
}

double gw_torque_left(struct gw_ask *ask, const struct gw_system *system, double torque, double age)
{
    return share_from(ask, system, gw_given(age) ? age : 0) * fmax(torque - forming_most(system), 0);
}

static void find_ends(struct end *good, struct end *bad, struct gw_ask *ask, const struct gw_as_read *read,
                      const struct gw_system *system)
{
    const struct gw_clamp_spec *c = system->clamp;
    const enum gw_torque_age age = gw_torque_age_of(ask, read, system);
    const bool fresh = age == GW_TORQUE_FRESH;
    const double by_then = share_from(ask, system, age == GW_TORQUE_AGED ? read->torque_age : 0);
    /* a thread once formed may turn on freely */
    *good = (struct end){c->nut_factor.items[0], fresh ? c->forming_torque.items[0] : 0, by_then};
    *bad = (struct end){most_of(c->nut_factor.items, c->nut_factor.n), forming_most(system), by_then};
    if (age == GW_TORQUE_UNDATED || age == GW_TORQUE_UNSURE) good->share = 1; /* it may be so old */
}

/* N; the engine wants a torque above 0, and what is left of one above 0. */
static double tension(struct gw_clamp_result *r, struct gw_ask *ask, const struct gw_system *system, double torque,
                      const struct end *end)
{
    const struct gw_clamp_case in = {.diameter = system->screw->diameter,
                                     .nut_factor = end->nut_factor,
                                     .torque = torque,
                                     .torque_later = GW_ABSENT,
                                     .forming_torque = end->forming,
                                     .forming_torque_later = GW_ABSENT,
                                     .retained = end->share,
                                     .spacing = GW_ABSENT,
                                     .tributary_width = GW_ABSENT,
                                     .pressure = GW_ABSENT,
                                     .safety_factor = GW_ABSENT};
    if (!(torque > 0) || !(end->share > 0)) return 0;
    return gw_clamp(r, &in, &ask->engine) == GW_OK ? r->preload_later : GW_ABSENT;
}

static const char *missing(const struct gw_system *system)
{
    const struct gw_clamp_spec *c = system->clamp;
    if (!system->screw) return "which screws hold the pressure plate? Ask the manufacturer (screw)";
    if (!c || !c->nut_factor.n || !c->forming_torque.n)
        return "what does a torque clamp? Measure, or ask the manufacturer for, the nut factor and the torque that "
               "forms the thread (clamp: nut_factor, forming_torque)";
    return NULL;
}

static const char *other_screw(const struct gw_as_read *read)
{
    return read->of[GW_ITEM_screw_type].word > 1
               ? "which screw is it? Ask for its nut factor, length and strength before anything is said of its clamp"
               : NULL;
}

bool gw_bottomed(const struct gw_as_read *read, const struct gw_system *system)
{
    const double length = read->of[GW_ITEM_screw_length].number;
    const struct gw_clamp_spec *c = system->clamp;
    if (read->of[GW_ITEM_screw_head].word == 2) return true;
    if (!gw_given(length) || !c || !system->pressure_plate) return false;
    return system->pressure_plate->thickness + c->stack + c->chase - length <= GW_HAIR_M; /* absent: not known */
}

bool gw_clears_bottom(const struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_screw_length_practice *row =
        &ask->model->tables->screw_length_practice[GW_ROW_SCREW_LENGTH_PRACTICE_PLATE];
    const double length = read->of[GW_ITEM_screw_length].number;
    const struct gw_clamp_spec *c = system->clamp;
    if (!gw_given(length) || !c || !system->pressure_plate) return false;
    const double clear = system->pressure_plate->thickness + c->stack + c->chase - length;
    return clear >= row->tip_clearance_m - GW_HAIR_M; /* false where one is absent */
}

/* As the check of screws has it; with a derivation anew. */
static const struct gw_demand *demand_on(struct gw_ask *ask, const struct gw_element *screws,
                                         const struct gw_system *as_read)
{
    const void *key[] = {screws, as_read};
    void **kept = ask->trace ? NULL : gw_memo_at(&ask->memory->suctions, ask->arena, key, sizeof key);
    const struct gw_demand *known = kept ? *kept : NULL;
    if (!known) {
        struct gw_finding *f = gw_alloc(ask->arena, 1, sizeof *f);
        struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d);
        const struct gw_engine own = ask->engine;
        gw_judge_limits(f, d, ask, &gw_check_screw, screws, as_read);
        ask->engine = own;
        known = f->demand;
        if (kept) memcpy(kept, &known, sizeof known);
    }
    gw_used_merge(&ask->engine.used, known->used);
    return known;
}

/* Suction on a screw between two others, and on the one that the plate's end loads most; absent: not known, and
 * `unknown` asks. */
static void find_suction(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_system *as_read)
{
    const struct gw_demand *d = demand_on(ask, out->spot.screws, as_read);
    out->pull = gw_term_of(d, 0)->value;
    out->screws = d->element;
    if (!gw_given(out->pull)) out->unknown = d->message;
    else out->end_pull = gw_end_screw_pull(ask, out->screws, as_read, out->pull);
}

static double torque_there(struct gw_ask *ask, const struct gw_as_read *read, const struct gw_system *system)
{
    struct gw_item_limit limit = {.at_least = GW_ABSENT, .at_most = GW_ABSENT};
    if (gw_was_read(read, GW_ITEM_screw_torque)) return read->of[GW_ITEM_screw_torque].number;
    gw_torque_limit(&limit, ask, system);
    return limit.at_least;
}

/* From the torque to what is left of it; the least is of the bad ends. */
static void find_clamp(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_as_read *read,
                       const struct gw_system *system)
{
    struct gw_clamp_result most = {.preload = 0}, least = {.preload = 0};
    struct end good, bad;
    find_ends(&good, &bad, ask, read, system);
    out->left[1] = tension(&most, ask, system, out->torque, &good);
    out->left[0] = tension(&least, ask, system, out->torque, &bad);
    out->told[0] = least.preload;
    out->told[1] = most.preload;
    out->share = bad.share;
    if (!gw_given(out->left[0]) || !gw_given(out->left[1])) out->unknown = gw_fault_message(ask);
}

static void clear_line(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_spot *spot,
                       const struct gw_as_read *read, const struct gw_system *system)
{
    *out =
        (struct gw_screw_line){.system = system,
                               .spot = *spot,
                               .screws = spot->screws,
                               .torque = GW_ABSENT,
                               .torque_read = gw_was_read(read, GW_ITEM_screw_torque),
                               .told = {GW_ABSENT, GW_ABSENT},
                               .left = {GW_ABSENT, GW_ABSENT},
                               .share = GW_ABSENT,
                               .pull = GW_ABSENT,
                               .end_distance = GW_ABSENT,
                               .factor = ask->model->tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE].safety_factor};
}

static void find_line(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_spot *spot,
                      const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_clamp_practice *row = &ask->model->tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE];
    const char *question = other_screw(read) ? other_screw(read) : missing(system);
    clear_line(out, ask, spot, read, system);
    if (!question && !spot->screws) question = "which screws are there? No plate of the take-off stands at that place";
    if (question) {
        out->unknown = GW_PLAINLY(question);
        return;
    }
    out->torque = torque_there(ask, read, system);
    find_suction(out, ask, gw_line_as_read(ask, spot, read, system));
    if (!gw_given(out->torque))
        out->unknown = gw_said(&out->unknown)
                           ? out->unknown
                           : GW_PLAINLY("which torque does the manufacturer ask of these screws? (installation: "
                                        "screw_torque: at_least)");
    if (gw_said(&out->unknown)) return;
    find_clamp(out, ask, read, system);
    if (!gw_said(&out->unknown)) gw_used_add(&ask->engine.used, &row->row);
}

static double over(double capacity, double demand) { return demand > 0 ? capacity / demand : (double)INFINITY; }

/* As the torque is that was read, whatever is left of it later. */
static void look_at_strengths(struct gw_left *out, struct gw_ask *ask, const struct gw_as_read *read,
                              const struct gw_screw_line *line)
{
    const struct gw_system *system = line->system;
    const struct gw_clamp_spec *c = system->clamp;
    const bool aged = gw_torque_age_of(ask, read, system) == GW_TORQUE_AGED; /* a formed thread may turn freely */
    const struct end worst = {c->nut_factor.items[0], aged ? 0 : c->forming_torque.items[0], 1},
                     best = {most_of(c->nut_factor.items, c->nut_factor.n), forming_most(system), 1};
    struct gw_item_limit limit = {.at_least = GW_ABSENT, .at_most = GW_ABSENT};
    struct gw_clamp_result r;
    gw_torque_limit(&limit, ask, system);
    gw_torque_expected(&limit, ask, read, system);
    const struct gw_pull pull = {.most = tension(&r, ask, system, line->torque, &worst),
                                 .least = tension(&r, ask, system, line->torque, &best),
                                 .torque = line->torque,
                                 .suction = fmax(line->pull, line->end_pull), /* fmax takes what is given */
                                 .was_read = line->torque_read,
                                 .stopped = c->stop == GW_YES,
                                 .tight = line->torque_read && line->torque > limit.at_most * (1 + GW_HAIR)};
    if (gw_given(pull.most) && gw_given(pull.least))
        gw_left_strengths(out, ask, &pull, system, gw_line_as_read(ask, &line->spot, read, system));
}

void gw_left_clamp(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                   const struct gw_system *system)
{
    const double factor = ask->model->tables->clamp_practice[GW_ROW_CLAMP_PRACTICE_PLATE].safety_factor;
    struct gw_screw_line line;
    if (gw_bottomed(read, system)) {
        gw_left_by(out, "clamp", 0, 0, factor,
                   gw_clears_bottom(ask, read, system)
                       ? GW_PLAINLY("a screw whose head stands off clamps nothing, whatever torque it takes")
                       : GW_PLAINLY("a screw that stands on the bottom of its chase takes its torque and clamps "
                                    "nothing"));
        return;
    }
    find_line(&line, ask, spot, read, system);
    if (gw_said(&line.unknown)) gw_left_unknown(out, line.unknown);
    if (gw_given(line.torque)) look_at_strengths(out, ask, read, &line);
    if (gw_said(&line.unknown)) return;
    const double suction = fmax(line.pull, line.end_pull);
    const double good = over(line.left[1], suction), bad = over(line.left[0], suction);
    struct gw_mechanism *clamp = gw_left_by(
        out, "clamp", good, bad, factor,
        GW_SAY(ask->arena, "a screw's clamp of {} to {} ({}, {}; {} of it left when it is to hold) over {} of suction",
               gw_of_capacity(GW_FORCE, line.left[0]), gw_of_capacity(GW_FORCE, line.left[1]),
               gw_of_quantity(GW_MOMENT, line.torque),
               gw_of_text(line.torque_read && read->drawn ? "as it is drawn"
                          : line.torque_read              ? "read there"
                                                          : "the least torque that is asked, none was read"),
               gw_of_number(line.share, 2), gw_of_demand(GW_FORCE, suction)));
    clamp->unsure =
        gw_torque_age_of(ask, read, system) == GW_TORQUE_UNSURE && bad >= factor * line.share * (1 - GW_HAIR);
    if (clamp->unsure)
        clamp->measure = "when was it fastened? So much torque is enough of an old screw, not of a new one";
}

void gw_screw_line_as_read(struct gw_screw_line *out, struct gw_ask *ask, const struct gw_spot *spot,
                           const struct gw_as_read *read, const struct gw_system *system)
{
    gw_ask_open(ask);
    find_line(out, ask, spot, read, system);
    const struct gw_system *as_read = gw_line_as_read(ask, spot, read, system);
    if (spot->screws && !gw_given(out->pull)) {
        const struct gw_message asked = out->unknown;
        find_suction(out, ask, as_read);
        if (gw_said(&asked)) out->unknown = asked;
    }
    out->end_distance = gw_screw_end_distance(as_read);
    out->bottomed = gw_bottomed(read, system);
    gw_item_judge(&out->result, ask, gw_item_of(GW_ITEM_screw_spacing), spot, read, system);
}

/* Too much of it --------------------------------------------------------------------------------------------------- */

/* Pa; of steels of that strength and size the least yield; absent: none is known. */
static double yield_of(struct gw_ask *ask, const struct gw_screw_spec *screw)
{
    const struct gw_fastener_metal *rows = ask->model->tables->fastener_metal, *least = NULL;
    for (size_t i = 0; i < GW_N_FASTENER_METAL; i++) {
        const bool fits =
            screw->diameter >= rows[i].least_m * (1 - GW_HAIR) && screw->diameter <= rows[i].greatest_m * (1 + GW_HAIR);
        const bool alike = fabs(screw->ultimate / rows[i].ultimate_pa - 1) < GW_HAIR_GRADE;
        if (fits && alike && gw_given(rows[i].yield_pa) && (!least || rows[i].yield_pa < least->yield_pa))
            least = &rows[i];
    }
    if (!least) return GW_ABSENT;
    gw_used_add(&ask->engine.used, &least->row);
    return least->yield_pa;
}

/* The torque that a screw or an edge takes, at an end of the ranges. */
static double torque_at(const struct gw_system *system, const struct end *end, double tension)
{
    return end->nut_factor * system->screw->diameter * tension + end->forming;
}

/* Of a torque within its limits only where the limits ask too much. */
static void look_at_yield(struct gw_left *out, struct gw_ask *ask, const struct gw_system *system, double most,
                          double least, const struct end *worst, bool tight)
{
    const double yield = yield_of(ask, system->screw), area = gw_screw_tension_area(ask, system->screw);
    const double takes = yield * area; /* absent: not known */
    if (tight && !gw_given(takes))
        gw_left_unknown(out,
                        GW_PLAINLY("at what tension does the screw yield? Ask the manufacturer: no steel of such a "
                                   "strength is known here"));
    if (!gw_given(takes)) return;
    if (!tight && most <= takes * (1 + GW_HAIR)) return;
    gw_left_by(
        out, "yield", over(takes, least), over(takes, most), 1,
        GW_SAY(ask->arena,
               "a tension of up to {}, where the screw yields at {}; at the least nut factor the torque could be "
               "{} at most",
               gw_of_quantity(GW_FORCE, most), gw_of_quantity(GW_FORCE, takes),
               gw_of_quantity(GW_MOMENT, torque_at(system, worst, takes))));
}

static void look_at_edge(struct gw_left *out, struct gw_ask *ask, const struct gw_system *system, double spacing,
                         double most, double least, const struct end *worst)
{
    const struct gw_glass_edge *row = &ask->model->tables->glass_edge[GW_ROW_GLASS_EDGE_MOST];
    const double takes = 2 * row->most_n_m * spacing; /* N: two edges, along a screw's length of plate */
    gw_used_add(&ask->engine.used, &row->row);
    gw_left_by(out, "edge", over(takes, least), over(takes, most), 1,
               GW_SAY(ask->arena,
                      "the plate lands on no stop, so that a screw presses each edge of glass with up to {}, where an "
                      "edge takes {}; the torque could be {} at most",
                      gw_of_quantity(GW_SHEAR_FLOW, most / (2 * spacing)), gw_of_quantity(GW_SHEAR_FLOW, row->most_n_m),
                      gw_of_quantity(GW_MOMENT, torque_at(system, worst, takes))));
}

void gw_left_over_torque(struct gw_left *out, struct gw_ask *ask, const struct gw_spot *spot,
                         const struct gw_as_read *read, const struct gw_system *system, bool tight)
{
    const double torque = read->of[GW_ITEM_screw_torque].number;
    const struct gw_clamp_spec *c = system->clamp;
    struct gw_clamp_result r;
    if (!gw_given(torque) || missing(system) || other_screw(read) || !spot->screws) return;
    const struct end worst = {c->nut_factor.items[0],
                              gw_torque_age_of(ask, read, system) == GW_TORQUE_FRESH ? c->forming_torque.items[0] : 0,
                              1},
                     best = {most_of(c->nut_factor.items, c->nut_factor.n), forming_most(system), 1};
    const double most = tension(&r, ask, system, torque, &worst), least = tension(&r, ask, system, torque, &best);
    const struct gw_system *as_read = gw_line_as_read(ask, spot, read, system);
    if (!gw_given(most) || !gw_given(least)) return;
    look_at_yield(out, ask, system, most, least, &worst, tight);
    if (c->stop == GW_NO)
        look_at_edge(out, ask, system, gw_as_fastened(ask, as_read, spot->screws)->height, most, least, &worst);
}

/* The glass edge --------------------------------------------------------------------------------------------------- */

/* m, of the lite whose suction goes to that edge and the one across: of a horizontal what reaches its middle. */
static double across(const struct gw_spot *spot)
{
    const struct gw_element *lite = spot->lite;
    const bool upright = spot->edge == GW_EDGE_LEFT || spot->edge == GW_EDGE_RIGHT;
    return upright ? lite->width : fmin(lite->width, lite->pane);
}

static bool opens(struct gw_gasket_result *r, struct gw_ask *ask, const struct gw_spot *spot,
                  const struct gw_system *system, double edge_load)
{
    const double retained = gw_clamp_retained(ask, system, service(system));
    const struct gw_gasket_case in = {.edge_load = edge_load,
                                      .retained = retained > 0 ? retained : GW_ABSENT,
                                      .pressure = gw_pressures_on(ask, spot->lite).outward,
                                      .lite_width = across(spot),
                                      .stiffness_share = system->gasket->stiffness_share};
    return gw_gasket_load(r, &in, &ask->engine) == GW_OK && r->inner_opens;
}

struct gw_message gw_edge_said(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_system *system)
{
    const struct gw_gasket_spec *g = system->gasket;
    struct gw_gasket_result most, least;
    const bool stopped = system->clamp && system->clamp->stop == GW_YES;
    if (!stopped || !g || !g->edge_load.n || !spot->lite || spot->lite->outside || spot->edge < 0)
        return (struct gw_message){0};
    if (!opens(&least, ask, spot, system, g->edge_load.items[0])) return (struct gw_message){0};
    const bool always = opens(&most, ask, spot, system, most_of(g->edge_load.items, g->edge_load.n));
    return GW_SAY(ask->arena,
                  "under the design suction the inner gasket opens{}: {} of {} on its edge is left when it is to hold, "
                  "and suction takes {}",
                  gw_of_text(always ? "" : " at the least of the edge loads that the system states"),
                  gw_of_quantity(GW_SHEAR_FLOW, least.edge_load_later),
                  gw_of_quantity(GW_SHEAR_FLOW, g->edge_load.items[0]),
                  gw_of_quantity(GW_SHEAR_FLOW, least.edge_load_later - least.inner));
}
