/* Rows of a requirement set, and the demands that they replace. The site's demand is found first: where it is more than
 * the row's, the judge keeps what is to be said of that. */
#include "judge/by_set.h"

#include "judge/drift.h"
#include "judge/judge_internal.h"

#include <string.h>

/* Rows ------------------------------------------------------------------------------------------------------------ */

/* One drift of a story is asked for glass and for the bead that holds it. */
static const char *row_id(const struct gw_check *check)
{
    return strcmp(check->id, "seismic_silicone") == 0 ? "seismic_glass" : check->id;
}

bool gw_set_speaks_of(const struct gw_model *model, const struct gw_check *check)
{
    const struct gw_requirement_set *set = model->set;
    for (size_t i = 0; set && i < set->requires.n; i++)
        if (strcmp(set->requires.items[i].check, row_id(check)) == 0 && !check->path) return true;
    return false;
}

static bool at_element(const struct gw_required *row, const struct gw_element *e)
{
    if (row->zone != GW_NO_INTEGER && row->zone != e->zone) return false;
    if (row->part && (row->part == GW_ABOVE_ROOF) != e->parapet) return false;
    return !(e->bottom < row->from - GW_HAIR_M) && !(e->bottom > row->to + GW_HAIR_M); /* holds for absent ones */
}

static bool speaks_of(const struct gw_required *row, const struct gw_demand *d)
{
    const char *wall = d->element ? d->element->wall : d->wall ? d->wall->wall : NULL;
    if (strcmp(row->check, row_id(d->check)) != 0) return false;
    if (row->wall && (!wall || strcmp(row->wall, wall) != 0)) return false;
    if (row->component && row->component != d->component) return false;
    if (row->name && (!d->name || strcmp(row->name, d->name) != 0)) return false;
    return !d->element || at_element(row, d->element);
}

static int names(const struct gw_required *row)
{
    return (row->wall != NULL) + (row->zone != GW_NO_INTEGER) + (row->part != GW_ROOF_PART_UNSET) +
           (row->component != GW_COMPONENT_UNSET) + gw_given(row->from) + gw_given(row->to);
}

/* The row that names most of its place; of equals the first. */
static const struct gw_required *row_of(const struct gw_model *model, const struct gw_demand *d)
{
    const struct gw_requirement_set *set = model->set;
    const struct gw_required *best = NULL;
    if (d->check->path) return d->element && d->element->by_set ? d->element->by_set->row : NULL;
    for (size_t i = 0; i < set->requires.n; i++) {
        const struct gw_required *row = &set->requires.items[i];
        if (speaks_of(row, d) && (!best || names(row) > names(best))) best = row;
    }
    return best;
}

/* Demands --------------------------------------------------------------------------------------------------------- */

static const struct gw_required *the_row(const struct gw_demand *d) { return d->row; }

static void ask_for(struct gw_demand *out, struct gw_ask *ask, struct gw_message what)
{
    out->state = GW_ASKED;
    out->below = NULL;
    out->message =
        GW_SAY(ask->arena, "{} of the requirement set asks for {}", gw_of_text(the_row(out)->id), gw_of_message(&what));
}

static void site_asks(struct gw_demand *out, struct gw_ask *ask, double value, struct gw_message more)
{
    struct gw_below *below = gw_alloc(ask->arena, 1, sizeof *below);
    *below = (struct gw_below){value, GW_SAY(ask->arena, "the site asks {}", gw_of_message(&more))};
    out->below_row = below;
}

/* The site's, unless the project asks for less than the site itself. */
static double site_value(const struct gw_demand *d)
{
    if (d->state != GW_ASKED) return GW_ABSENT;
    return d->below ? d->below->value : gw_term_of(d, 0)->value;
}

/* One that differs from the site's by the last bits alone is the site's: true. */
static bool set_term(struct gw_demand *out, struct gw_ask *ask, unsigned i, enum gw_dim dim, double value)
{
    while (out->terms.n <= i) gw_demand_term(out, ask, dim, GW_NO_DIRECTION, GW_ABSENT);
    const double was = out->terms.items[i].value;
    const bool same = fabs(value - was) < GW_HAIR * fabs(was);
    out->terms.items[i].value = same ? was : value;
    return same;
}

static struct gw_message two(struct gw_ask *ask, enum gw_dim dim, double site, double row, const char *than)
{
    const bool near = fabs(site - row) < 0.01 * row;
    const struct gw_value more = near ? gw_of_quantity(dim, site) : gw_of_shown(dim, site),
                          less = near ? gw_of_quantity(dim, row) : gw_of_shown(dim, row);
    return GW_SAY(ask->arena, "{}, {} than the set's {}", more, gw_of_text(than), gw_of_bare(less));
}

static void take_water(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    const double site = site_value(out);
    const struct gw_below *own = out->below;
    const bool same = set_term(out, ask, 0, GW_PRESSURE, row->pressure);
    out->by_report = out->by_report || row->evidence.n > 0;
    ask_for(out, ask, GW_SAY(ask->arena, "{}", gw_of_quantity(GW_PRESSURE, row->pressure)));
    if (same) out->below = own;
    else if (row->pressure < site * (1 - GW_HAIR))
        site_asks(out, ask, site, two(ask, GW_PRESSURE, site, row->pressure, "more"));
}

static void take_air(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    const double site = gw_term_of(out, 0)->value, at = out->at;
    const struct gw_below *own = out->below;
    const bool same = set_term(out, ask, 0, GW_LEAKAGE, row->leakage) && fabs(row->at - at) < GW_HAIR * at;
    out->at = fabs(row->at - at) < GW_HAIR * at ? at : row->at;
    out->at_most = true;
    out->by_report = out->by_report || row->evidence.n > 0;
    ask_for(out, ask,
            GW_SAY(ask->arena, "at most {} at {}", gw_of_quantity(GW_LEAKAGE, row->leakage),
                   gw_of_quantity(GW_PRESSURE, row->at)));
    if (same) out->below = own;
    else if (row->leakage > site * (1 + GW_HAIR))
        site_asks(out, ask, site, two(ask, GW_LEAKAGE, site, row->leakage, "less"));
    else if (row->at < at * (1 - GW_HAIR))
        site_asks(out, ask, site,
                  GW_SAY(ask->arena, "its leakage at {}, more than the set's {}", gw_of_shown(GW_PRESSURE, at),
                         gw_of_shown(GW_PRESSURE, row->at)));
}

static struct gw_message missile_of(struct gw_ask *ask, enum gw_missile missile, int zone)
{
    const struct gw_message in =
        zone > 0 ? GW_SAY(ask->arena, ", wind zone {}", gw_of_count(zone)) : (struct gw_message){0};
    return GW_SAY(ask->arena, "missile {}{}", gw_of_text(gw_choice_name(gw_missile_choices, (int)missile)),
                  gw_of_message(&in));
}

/* With the pressures that the lite is cycled at. */
static void take_debris(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    const struct gw_hazard_demand *site = out->state == GW_ASKED ? out->hazard : NULL;
    struct gw_pressures p = {GW_ABSENT, GW_ABSENT};
    struct gw_hazard_demand *hazard = gw_alloc(ask->arena, 1, sizeof *hazard);
    const int zone = row->wind_zone != GW_NO_INTEGER ? row->wind_zone : site ? site->wind_zone : GW_NO_ZONE;
    *hazard = site ? *site : (struct gw_hazard_demand){.blast = {GW_ABSENT, GW_ABSENT}};
    hazard->missile = row->missile;
    hazard->wind_zone = zone;
    if (!gw_pressures_known(out, ask, out->element)) return;
    p = gw_pressures_on(ask, out->element);
    out->terms.n = 0;
    out->outward = NULL;
    gw_demand_term(out, ask, GW_PRESSURE, GW_INWARD, p.inward);
    gw_demand_term(out, ask, GW_PRESSURE, GW_OUTWARD, p.outward);
    const struct gw_message mine = missile_of(ask, row->missile, zone);
    if (site && (site->missile > row->missile || site->wind_zone > zone)) {
        const struct gw_message more = missile_of(ask, site->missile, site->wind_zone);
        site_asks(out, ask, (double)site->missile,
                  GW_SAY(ask->arena, "{}, more than the set's {}", gw_of_message(&more), gw_of_message(&mine)));
    }
    out->hazard = hazard;
    ask_for(out, ask, mine);
    out->summary = out->message;
}

static void compare_blast(struct gw_demand *out, struct gw_ask *ask, struct gw_blast_pair site)
{
    const struct gw_required *row = the_row(out);
    const struct gw_blast *own = ask->model->site_blast;
    if (!own) return;
    if (row->pressure < site.pressure * (1 - GW_HAIR))
        site_asks(out, ask, site.pressure, two(ask, GW_PRESSURE, site.pressure, row->pressure, "more"));
    else if (row->impulse < site.impulse * (1 - GW_HAIR))
        site_asks(out, ask, site.pressure, two(ask, GW_IMPULSE, site.impulse, row->impulse, "more"));
    else if (row->hazard && own->hazard && own->hazard < row->hazard)
        site_asks(out, ask, site.pressure,
                  GW_SAY(ask->arena, "a hazard of {} at most, less than the set's {}",
                         gw_of_text(gw_choice_name(gw_hazard_choices, (int)own->hazard)),
                         gw_of_text(gw_choice_name(gw_hazard_choices, (int)row->hazard))));
}

static void take_blast(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    struct gw_hazard_demand *hazard = gw_alloc(ask->arena, 1, sizeof *hazard);
    if (out->state != GW_ASKED || !out->hazard) return;
    *hazard = *out->hazard;
    set_term(out, ask, 0, GW_PRESSURE, row->pressure);
    set_term(out, ask, 1, GW_IMPULSE, row->impulse);
    compare_blast(out, ask, hazard->blast);
    hazard->blast = (struct gw_blast_pair){gw_term_of(out, 0)->value, gw_term_of(out, 1)->value};
    out->hazard = hazard;
    ask_for(out, ask,
            GW_SAY(ask->arena, "a peak reflected pressure of {} with an impulse of {}",
                   gw_of_quantity(GW_PRESSURE, row->pressure), gw_of_quantity(GW_IMPULSE, row->impulse)));
    out->summary = out->message;
}

/* The greatest drift that the site asks of a lite of the row; 0: none is known. */
static double greatest_drift(struct gw_ask *ask, const struct gw_required *row)
{
    struct gw_judge_memory *m = ask->memory;
    const size_t i = (size_t)(row - ask->model->set->requires.items), n = ask->model->set->requires.n;
    struct gw_ask own = *ask;
    if (!m->drifts) {
        m->drifts = gw_alloc(ask->arena, n, sizeof *m->drifts);
        for (size_t k = 0; k < n; k++) m->drifts[k] = GW_ABSENT;
    }
    if (gw_given(m->drifts[i])) return m->drifts[i];
    m->drifts[i] = 0;
    own.trace = NULL;
    gw_ask_open(&own);
    for (size_t k = 0; k < ask->takeoff->elements.n; k++) {
        const struct gw_element *e = &ask->takeoff->elements.items[k];
        const struct gw_place place = {.where = e->id, .element = e, .component = e->component};
        struct gw_demand d;
        gw_demand_clear(&d, gw_check_find("seismic_glass"), &place);
        if (e->kind != GW_LITE || row_of(ask->model, &d) != row) continue;
        gw_demand_drift(&d, &own, &place);
        if (d.state == GW_ASKED) m->drifts[i] = fmax(m->drifts[i], gw_term_of(&d, 0)->value);
    }
    return m->drifts[i];
}

/* Stories that are lower than the row's greatest drift less: their share of it. */
static void take_drift(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    const struct gw_seismic *s = gw_seismic_of(ask);
    if (!s || s->category == GW_SDC_A) {
        gw_demand_unknown(
            out, GW_SAY(ask->arena,
                        "{} asks for a drift of {}, and by the project's seismic data none is asked for: which "
                        "category counts? Ask the structural engineer (site: seismic)",
                        gw_of_text(row->id), gw_of_quantity(GW_THICKNESS, row->drift)));
        out->summary = out->message;
        return;
    }
    if (out->state == GW_NOT_ASKED) return;
    const double site = out->state == GW_ASKED ? gw_term_of(out, 0)->value : GW_ABSENT,
                 greatest = greatest_drift(ask, row);
    const double ratio = greatest > 0 ? row->drift / greatest : 1;
    const double asked = !gw_given(site) ? row->drift : fabs(ratio - 1) < GW_HAIR ? site : site * ratio;
    set_term(out, ask, 0, GW_THICKNESS, asked);
    if (ratio < 1 - GW_HAIR) site_asks(out, ask, greatest, two(ask, GW_THICKNESS, greatest, row->drift, "more"));
    ask_for(out, ask,
            GW_SAY(ask->arena, "a story drift of {}, with the importance factor", gw_of_demand(GW_THICKNESS, asked)));
    out->summary = out->message;
}

/* A limit of another kind than the project's is another requirement, of which nothing is compared. */
static void take_other(struct gw_demand *out, struct gw_ask *ask)
{
    const struct gw_required *row = the_row(out);
    const bool most = gw_given(row->at_most), alike = most == out->at_most;
    const double value = most ? row->at_most : row->at_least, site = gw_term_of(out, 0)->value;
    const bool less = most ? value > site : value < site;
    set_term(out, ask, 0, GW_RATIO, value);
    out->at_most = most;
    if (alike && less) site_asks(out, ask, site, two(ask, GW_RATIO, site, value, most ? "less" : "more"));
    ask_for(out, ask,
            GW_SAY(ask->arena, "{} {}", gw_of_text(most ? "at most" : "at least"), gw_of_quantity(GW_RATIO, value)));
}

void gw_require(struct gw_demand *out, struct gw_ask *ask)
{
    static const struct {
        const char *check;
        void (*take)(struct gw_demand *, struct gw_ask *);
    } ways[] = {{"water", take_water}, {"air", take_air},     {"debris", take_debris},
                {"blast", take_blast}, {"other", take_other}, {"seismic_glass", take_drift}};
    if (!ask->model->set) return;
    out->row = row_of(ask->model, out);
    if (!out->row) return;
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        if (strcmp(ways[i].check, row_id(out->check)) == 0) ways[i].take(out, ask);
}

/* Evidence -------------------------------------------------------------------------------------------------------- */

struct gw_evidence_asked gw_evidence_asked(const struct gw_ask *ask, const struct gw_demand *d)
{
    const struct gw_requirements *r = ask->model->project.requirements;
    const int *items = r && r->structural ? r->structural->evidence.items : NULL;
    size_t n = r && r->structural ? r->structural->evidence.n : 0;
    struct gw_evidence_asked out = {.any = true};
    if (d->row && d->row->evidence.n) {
        items = d->row->evidence.items;
        n = d->row->evidence.n;
    }
    for (size_t i = 0; i < n; i++) {
        out.any = false;
        out.test = out.test || items[i] == GW_ASKS_TEST;
        out.calculation = out.calculation || items[i] == GW_ASKS_CALCULATION;
    }
    return out;
}

/* What stands on the load path, and tests whose reports are weighed, have ways of their own. */
void gw_ask_evidence(struct gw_finding *f, struct gw_ask *ask)
{
    const struct gw_demand *d = f->demand;
    if (!d->row || !d->row->evidence.n || d->check->path || d->by_report || f->verdict != GW_PASS) return;
    const struct gw_evidence_asked asked = gw_evidence_asked(ask, d);
    const bool counts = asked.any || (asked.test && f->evidence == GW_BY_TEST) ||
                        (asked.calculation && f->evidence == GW_BY_CALCULATION);
    if (counts) return;
    f->verdict = GW_NOT_SHOWN;
    f->message = GW_SAY(ask->arena, "{} of the requirement set takes {} alone: {}", gw_of_text(d->row->id),
                        gw_of_text(asked.test && asked.calculation ? "a test or a calculation"
                                   : asked.test                    ? "a test"
                                                                   : "a calculation"),
                        gw_of_message(&f->message));
}
