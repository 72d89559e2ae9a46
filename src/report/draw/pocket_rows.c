/* What a pocket or a bead leaves of bite and clearance, by the checks and items that judge it. */
#include "report/draw/pocket.h"
#include "report/page.h"

#include <string.h>

#define COPY(arena, type, from) ((type *)memcpy(gw_alloc((arena), 1, sizeof(type)), (from), sizeof(type)))

/* As the system is, but for what it states of its pocket: then practice is what it is held to. */
static const struct gw_system *by_practice(const struct detail *d)
{
    struct gw_system *copy = COPY(d->sheet.arena, struct gw_system, d->system);
    copy->installation = NULL;
    copy->silicone = NULL;
    if (!copy->drift) return copy;
    struct gw_drift_spec *drift = COPY(d->sheet.arena, struct gw_drift_spec, copy->drift);
    drift->bite = drift->side_gap = drift->end_gap = GW_ABSENT;
    copy->drift = drift;
    return copy;
}

static struct gw_as_read read_of(enum gw_item_id item, double value)
{
    struct gw_as_read read;
    gw_as_read_clear(&read);
    read.of[item].number = value;
    read.drawn = true;
    return read;
}

static void add_practice(struct pocket *p, const char *name, enum gw_item_id item, int edge, double value)
{
    struct gw_spot spot = p->spot;
    spot.edge = edge;
    gw_detail_practice(&p->d, name, item, &spot, value, by_practice(&p->d));
}

/* What the lite may lose of its bite as it goes to the other side, bows and the frame grows. */
static void add_strength(struct pocket *p)
{
    struct detail *d = &p->d;
    struct gw_item_result *r = gw_alloc(d->sheet.arena, 1, sizeof *r);
    const double bite = p->bite;
    const struct gw_as_read read = read_of(GW_ITEM_glass_bite, bite);
    if (!gw_given(bite) || d->system->system->glazing == GW_MIXED) return;
    gw_item_judge(r, &d->ask, gw_item_of(GW_ITEM_glass_bite), &p->spot, &read, d->system);
    struct detail_row row = {.name = "Bite, as it shifts and bows",
                             .provided = gw_detail_stated(d, bite),
                             .mark = gw_detail_item_mark(r->verdict),
                             .verdict = gw_item_verdict_name(r->verdict),
                             .how = gw_detail_said(d, &r->message)};
    if (gw_given(r->remaining_worst) && r->remaining_worst > 0)
        row.required = gw_detail_needed(d, bite * r->required / r->remaining_worst);
    if (!row.required && r->verdict == GW_ITEM_WITHIN) {
        row.mark = MARK_ASK;
        row.verdict = "not shown";
    }
    gw_detail_row(d, row);
}

static const struct gw_finding *governing(const struct pocket *p, const char *check)
{
    const struct gw_judgement *j = &p->d.results->answer->judgement;
    const struct gw_finding *worst = NULL;
    for (size_t i = 0; i < j->findings.n; i++) {
        const struct gw_finding *f = &j->findings.items[i];
        const struct gw_demand *m = f->demand;
        if (f->candidate != p->d.candidate || strcmp(m->check->id, check) != 0) continue;
        const char *type = m->element ? m->element->lite : m->lite ? m->lite->name : NULL;
        if (type && strcmp(type, p->type->name) == 0 && gw_graver(f, worst)) worst = f;
    }
    return worst;
}

static void add_finding(struct pocket *p, const char *name, const struct gw_finding *f, const char *none)
{
    struct detail *d = &p->d;
    struct detail_row row = {.name = name,
                             .mark = gw_detail_mark(f->verdict),
                             .verdict = gw_verdict_name(f->verdict),
                             .how = gw_detail_said(d, &f->message)};
    if (gw_given(f->provided)) row.provided = gw_sheet_capacity(&d->sheet, f->dim, f->provided);
    if (gw_given(f->required)) row.required = gw_sheet_demand(&d->sheet, f->dim, f->required);
    if (f->verdict == GW_NOT_REQUIRED) row.provided = "not asked";
    else if (!(f->provided > 0)) row.provided = none;
    if (f->demand->element && strlen(f->demand->where) < 32)
        row.how = gw_format(d->sheet.arena, "%s%s%s", row.how ? row.how : "", row.how ? "; " : "",
                            gw_safe(d->sheet.arena, f->demand->where));
    gw_detail_row(d, row);
}

/* Of a check at the element where it governs what calculation says, and where a test decides the test besides. */
static void add_check(struct pocket *p, const char *name, const char *by_test, const char *check, const char *none)
{
    struct detail *d = &p->d;
    const struct gw_finding *f = governing(p, check);
    if (!f) return;
    if (f->evidence != GW_BY_TEST || !f->demand->element) {
        add_finding(p, name, f, none);
        return;
    }
    struct gw_finding *limits = gw_alloc(d->sheet.arena, 1, sizeof *limits);
    struct gw_demand *demand = gw_alloc(d->sheet.arena, 1, sizeof *demand);
    gw_judge_limits(limits, demand, &d->ask, f->demand->check, f->demand->element, d->candidate);
    add_finding(p, name, limits, none);
    struct detail_row *row = &d->rows[d->n_rows - 1];
    if (f->verdict == GW_PASS && limits->verdict != GW_PASS) {
        row->mark = MARK_IN_HAND;
        row->verdict = "short, a test shows it";
    }
    add_finding(p, by_test, f, none);
}

static void add_glass(struct pocket *p)
{
    struct detail *d = &p->d;
    const struct gw_finding *f = governing(p, "pocket");
    if (!f) return;
    const char *taken = gw_given(f->provided) ? gw_sheet_given(&d->sheet, GW_THICKNESS, f->provided) : "not stated";
    const double thick = gw_term_of(f->demand, 0)->value;
    const char *glass = gw_given(thick) ? gw_sheet_given(&d->sheet, GW_THICKNESS, thick) : "not known";
    gw_detail_row(d, (struct detail_row){.name = "Glass, and its pocket",
                                         .provided = gw_format(d->sheet.arena, "%s %s%s", glass,
                                                               gw_given(f->provided) ? "for " : "", taken),
                                         .plain = true,
                                         .mark = gw_detail_mark(f->verdict),
                                         .verdict = gw_verdict_name(f->verdict),
                                         .how = gw_detail_said(d, &f->message)});
}

void gw_pocket_rows(struct pocket *p)
{
    const struct gw_drift_spec *drift = p->d.system->drift;
    const struct gw_installation *own = p->d.system->installation;
    const struct gw_own_limits *face = own ? own->of[GW_ITEM_face_clearance] : NULL;
    add_glass(p);
    add_practice(p, "Bite", GW_ITEM_glass_bite, GW_EDGE_LEFT, p->bite);
    add_strength(p);
    add_practice(p, "Edge clearance, sides", GW_ITEM_edge_clearance, GW_EDGE_LEFT, p->gap);
    add_practice(p, "Edge clearance, head", GW_ITEM_edge_clearance, GW_EDGE_HEAD, drift ? drift->end_gap : GW_ABSENT);
    add_practice(p, "Face clearance, each", GW_ITEM_face_clearance, GW_EDGE_LEFT, face ? face->at_least : GW_ABSENT);
    add_check(p, "Clearance in story drift", "Drift until glass falls out", "seismic_glass", "not stated");
}

void gw_bead_rows(struct pocket *p)
{
    struct detail *d = &p->d;
    struct gw_weighed_limits *all = gw_alloc(d->sheet.arena, 1, sizeof *all);
    gw_weigh_limits(all, &d->ask, gw_check_find("silicone"), p->lite, d->system);
    for (unsigned i = 0; i < all->n; i++) {
        const struct gw_weighed *w = &all->items[i];
        gw_detail_row(d, (struct detail_row){
                             .name = "Silicone",
                             .provided = gw_given(w->provided) ? gw_sheet_given(&d->sheet, w->dim, w->provided) : NULL,
                             .required = gw_given(w->required) ? gw_sheet_demand(&d->sheet, w->dim, w->required) : NULL,
                             .mark = gw_detail_mark(w->verdict),
                             .verdict = gw_verdict_name(w->verdict),
                             .how = gw_detail_said(d, &w->message)});
    }
    if (!all->n)
        gw_detail_row(d, (struct detail_row){.name = "Silicone",
                                             .mark = gw_detail_mark(all->verdict),
                                             .verdict = gw_verdict_name(all->verdict),
                                             .how = gw_detail_said(d, &all->message)});
    add_check(p, "Shear of the bead in drift", "Drift that a test held", "seismic_silicone", "not stated");
    if (d->system->system->glazing == GW_SILICONE)
        add_check(p, "Glass in story drift", "Drift until glass falls out", "seismic_glass", "no clearance");
}
