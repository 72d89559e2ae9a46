/* A system altered: what reports state is recorded, evidence is taken away, a part is that of another. */
#include "causes.h"

#include "base/fields.h"
#include "base/tolerance.h"

#include <string.h>

/* Reports that are named ------------------------------------------------------------------------------------------ */

size_t gw_report_index(const struct reviewing *r, const char *name)
{
    size_t i = 0;
    while (i < r->reports.n && !gw_words_alike(r->reports.items[i].name, name)) i++;
    return i;
}

static struct named_report *named(struct reviewing *r, const char *name)
{
    const size_t i = gw_report_index(r, name);
    if (i < r->reports.n) return &r->reports.items[i];
    r->reports.items =
        gw_grow(r->arena, r->reports.items, r->reports.n, &r->reports.capacity, sizeof *r->reports.items);
    r->reports.items[i] = (struct named_report){.name = name, .entry = gw_submitted_report(r->submittal, name)};
    r->reports.n++;
    return &r->reports.items[i];
}

static bool is_clip(const char *key, const void *at)
{
    return strcmp(key, "transom_connection") == 0 && ((const struct gw_capacity_spec *)at)->hold == GW_END_CLIP;
}

/* No formula gives the end of a transom in a screw spline, the pull-out from a chase, or what silicone takes. */
static bool a_test_alone_shows(const char *key, const struct gw_record *record, const void *at)
{
    if (is_clip(key, at)) return false;
    const struct gw_field *pullout = gw_record_field(record, "tested_pullout");
    static const char *const keys[] = {"transom_connection", "silicone", "edge_seal"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        if (strcmp(keys[i], key) == 0) return true;
    return pullout && gw_given(*(const double *)(const void *)((const char *)at + pullout->offset));
}

/* Reports behind stated capacities: every text of the record that names one. */
static void note_capacity(struct reviewing *r, const char *key, const char *name, bool by_test)
{
    struct named_report *n = named(r, name);
    n->capacities = true;
    n->tested_capacities = n->tested_capacities || by_test;
    n->capacities_asked = n->capacities_asked || gw_capacity_is_asked(r, key);
    for (size_t i = 0; i < n->stated.n; i++)
        if (strcmp(n->stated.items[i], key) == 0) return;
    n->stated.items = gw_grow(r->arena, n->stated.items, n->stated.n, &n->stated_capacity, sizeof *n->stated.items);
    n->stated.items[n->stated.n++] = key;
}

static void note_capacities(struct reviewing *r, const struct gw_record *record, const void *at, const char *key)
{
    for (size_t i = 0; at && i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        const void *member = (const char *)at + f->offset;
        if (f->flags & GW_MANY) continue; /* ratings; options are taken before */
        if (f->type == GW_T_RECORD) note_capacities(r, f->record, *(const void *const *)member, f->key);
        else if (f->flags & GW_REPORT && *(const char *const *)member)
            note_capacity(r, key, *(const char *const *)member, a_test_alone_shows(key, record, at));
    }
}

static void note_reports(struct reviewing *r, const struct gw_system *system)
{
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_rating *rating = &system->ratings.items[i];
        if (!rating->report) continue;
        struct named_report *n = named(r, rating->report);
        n->tests |= 1u << rating->test;
        if (gw_rating_is_asked(r, rating)) n->asked |= 1u << rating->test;
    }
    note_capacities(r, &gw_system_record, system, "");
}

/* With each set of options that the project takes somewhere: what it takes none of names nothing that counts. */
void gw_find_named_reports(struct reviewing *r)
{
    for (size_t i = 0; i < r->built.n; i++) note_reports(r, r->built.items[i].system);
    for (size_t i = 0; i < r->submittal->reports.n; i++) named(r, r->submittal->reports.items[i].id);
}

/* Make-ups -------------------------------------------------------------------------------------------------------- */

bool gw_report_made_of(const struct reviewing *r, const struct gw_submitted_report *report,
                       const struct gw_layer *layers, size_t n)
{
    for (size_t i = 0; i < report->make_ups.n; i++)
        if (gw_layers_alike(r->ask->model->tables, report->make_ups.items[i].layers.items,
                            report->make_ups.items[i].layers.n, layers, n))
            return true;
    return false;
}

static void add_built(struct make_ups *out, const struct gw_lite_type *type)
{
    for (size_t i = 0; i < out->n; i++)
        if (out->items[i] == type) return;
    if (type && type->layers.n) out->items[out->n++] = type;
}

/* Where something is chosen, what is chosen: a type's own make-up may stand nowhere. */
struct make_ups gw_make_ups_built(struct reviewing *r)
{
    const struct gw_model *m = r->ask->model;
    const struct gw_takeoff *t = r->ask->takeoff;
    size_t most = m->project.lites.n;
    for (size_t i = 0; i < m->project.lites.n; i++) most += m->project.lites.items[i].alternatives.n;
    struct make_ups out = {gw_alloc(r->arena, most + 1, sizeof *out.items), 0};
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        const struct gw_lite_type *type = e->kind == GW_LITE ? gw_model_lite(m, e->lite) : NULL;
        if (type && r->planned) {
            const struct gw_plan *plan = &r->planned->plan;
            const size_t at = (size_t)(type - m->project.lites.items);
            type = gw_lite_numbered(type, plan->choices[plan->places->of[e->index]].lites[at]);
        }
        add_built(&out, type);
    }
    return out;
}

/* What reports state ---------------------------------------------------------------------------------------------- */

struct stated {
    const struct gw_listed_make_up *make_ups;
    size_t n;
};

static struct stated make_ups_needed(struct reviewing *r)
{
    const struct make_ups built = gw_make_ups_built(r);
    struct gw_listed_make_up *list = gw_alloc(r->arena, built.n + 1, sizeof *list);
    for (size_t i = 0; i < built.n; i++) {
        list[i].layers.items = built.items[i]->layers.items;
        list[i].layers.n = built.items[i]->layers.n;
    }
    return (struct stated){list, built.n};
}

static bool is_stated(const struct reviewing *r, const struct stated *s, const struct gw_layer *layers, size_t n)
{
    for (size_t i = 0; i < s->n; i++)
        if (gw_layers_alike(r->ask->model->tables, s->make_ups[i].layers.items, s->make_ups[i].layers.n, layers, n))
            return true;
    return false;
}

/* A lite whose own record is none of the stated make-ups, or has none, was made as the report says: once of each. */
static void record_lites(struct reviewing *r, struct gw_tested *t, const struct stated *s)
{
    const struct gw_tested_lite flat = {
        .width = t->lite_width, .height = t->lite_height, .support = GW_NO_INTEGER, .component = t->component};
    const struct gw_tested_lite *own = t->lites.n ? t->lites.items : &flat;
    const size_t n = t->lites.n ? t->lites.n : 1;
    struct gw_tested_lite *lites = gw_alloc(r->arena, n * s->n + 1, sizeof *lites);
    size_t made = 0;
    for (size_t i = 0; i < n; i++) {
        if (own[i].layers.n && is_stated(r, s, own[i].layers.items, own[i].layers.n)) {
            lites[made++] = own[i];
            continue;
        }
        for (size_t k = 0; k < s->n; k++) {
            lites[made] = own[i];
            lites[made].layers.items = s->make_ups[k].layers.items;
            lites[made++].layers.n = s->make_ups[k].layers.n;
        }
    }
    t->lites.items = lites;
    t->lites.n = made;
}

/* The short form names its make-up, or gives its layers. */
static bool flat_is_stated(struct reviewing *r, const struct gw_tested *t, const struct stated *s)
{
    const struct gw_lite_type *type = t->make_up ? gw_model_lite(r->ask->model, t->make_up) : NULL;
    if (t->lites.n) return false;
    if (t->layers.n) return is_stated(r, s, t->layers.items, t->layers.n);
    return type && is_stated(r, s, type->layers.items, type->layers.n);
}

static void record_make_ups(struct reviewing *r, struct gw_tested *t, const struct stated *s)
{
    if (!s->n || (s->n == 1 && flat_is_stated(r, t, s))) return;
    record_lites(r, t, s);
    t->make_up = NULL;
    t->layers.n = 0;
    if (s->n != 1) return;
    t->layers.items = s->make_ups[0].layers.items;
    t->layers.n = s->make_ups[0].layers.n;
}

/* Screws as far apart and as thin as any here. */
static const struct gw_tested_fastening *fastening_needed(struct reviewing *r, const struct gw_system *system)
{
    const double far = 10; /* m: no plate is longer between screws */
    struct gw_tested_fastening *f = gw_alloc(r->arena, 1, sizeof *f);
    *f = (struct gw_tested_fastening){
        .diameter = system->screw ? system->screw->diameter : GW_ABSENT, .spacing = far, .end_distance = far};
    return f;
}

static void record_facts(struct reviewing *r, struct gw_rating *rating, const struct gw_system *system,
                         const struct look *look)
{
    const size_t index = gw_report_index(r, rating->report);
    if (index == r->reports.n) return;
    const struct gw_submitted_report *report = r->reports.items[index].entry;
    struct gw_tested *t = gw_alloc(r->arena, 1, sizeof *t);
    const enum fact favored = look->favored && look->report == index ? look->favored : NO_FACT;
    const bool states = report && (report->make_ups.n || report->reinforcement || report->fastening);
    /* a structural record without a specimen shows nothing, whatever glass there was in it */
    if (!states || (!rating->tested && rating->test != GW_TEST_IMPACT)) return;
    if (rating->tested) *t = *rating->tested;
    else gw_record_clear(&gw_tested_record, t);
    const struct stated stated =
        favored == MAKE_UP_FACT ? make_ups_needed(r) : (struct stated){report->make_ups.items, report->make_ups.n};
    if (report->make_ups.n) record_make_ups(r, t, &stated);
    if (report->reinforcement) t->reinforcement = favored == REINFORCEMENT_FACT ? NULL : report->reinforcement;
    if (report->fastening) t->fastening = favored == FASTENING_FACT ? fastening_needed(r, system) : report->fastening;
    rating->tested = t;
}

/* Altering -------------------------------------------------------------------------------------------------------- */

static bool is_voided(const struct reviewing *r, const struct voided *out, const struct gw_rating *rating)
{
    if (!out) return false;
    if (!rating->report) return out->unnamed;
    return out->tests[gw_report_index(r, rating->report)] & (1u << rating->test);
}

/* A calculation is no test: what no check of ours computes or has tested is a statement then. */
static bool is_computed(const struct reviewing *r, const struct gw_rating *rating)
{
    const struct gw_submitted_report *report =
        rating->report ? gw_submitted_report(r->submittal, rating->report) : NULL;
    return report && report->place == GW_BY_COMPUTING && rating->test == GW_TEST_OTHER;
}

static bool is_of_joints(const struct gw_rating *rating)
{
    return rating->test == GW_TEST_WATER || rating->test == GW_TEST_AIR;
}

/* A report of the accepted system is of that system's parts. */
static void alter_ratings(struct reviewing *r, struct gw_system *system, const struct look *look)
{
    struct gw_rating *ratings = gw_alloc(r->arena, system->ratings.n + 1, sizeof *ratings);
    size_t n = 0;
    for (size_t i = 0; i < system->ratings.n; i++) {
        const struct gw_rating *own = &system->ratings.items[i];
        const bool taken = is_voided(r, look->out, own), old = look->other_all || gw_report_is_accepted(r, own->report);
        const bool gone = taken && !is_computed(r, own), level = own->test == GW_TEST_IMPACT;
        if ((gone && !level) || (old && look->other.joints && is_of_joints(own))) continue;
        ratings[n] = *own;
        if (gone) ratings[n].altered = UINT32_MAX; /* none of a lesser missile takes its place */
        if (old) ratings[n].altered |= look->other.parts;
        if (old && r->accepted) ratings[n].screw_then = r->accepted->screw;
        if (look->facts && own->report) record_facts(r, &ratings[n], system, look);
        if (taken && !gone) ratings[n].report = NULL;
        n++;
    }
    system->ratings.items = ratings;
    system->ratings.n = n;
}

/* Voided capacities lose their report; those that a test alone shows, where there is none, are gone altogether. */
static bool without_report(struct reviewing *r, const struct gw_record *record, char *copy, const char *key,
                           const struct voided *out)
{
    const struct gw_field *report = gw_record_field(record, "report"), *pullout;
    const char **name = report ? (const char **)(void *)(copy + report->offset) : NULL;
    const size_t index = name && *name && report->flags & GW_REPORT ? gw_report_index(r, *name) : r->reports.n;
    if (index == r->reports.n || !out->capacities[index]) return false;
    const bool untested = out->capacities[index] == TESTED_CAPACITIES;
    if (untested && !a_test_alone_shows(key, record, copy)) return false;
    *name = NULL;
    pullout = gw_record_field(record, "tested_pullout");
    if (untested && pullout) *(double *)(void *)(copy + pullout->offset) = GW_ABSENT;
    return true;
}

static bool is_gone(struct reviewing *r, const struct gw_field *f, const void *inner, const struct voided *out)
{
    if (strcmp(f->key, "transom_connection") != 0) return false;
    const struct gw_capacity_spec *spec = inner;
    if (spec->hold == GW_END_CLIP) return false;
    const size_t index = spec->report ? gw_report_index(r, spec->report) : r->reports.n;
    return index < r->reports.n && out->capacities[index] == TESTED_CAPACITIES;
}

/* Copied where it is another then; else the same. */
static const void *without_reports(struct reviewing *r, const struct gw_record *record, const void *at, const char *key,
                                   const struct voided *out)
{
    char *copy = gw_alloc(r->arena, 1, record->size);
    memcpy(copy, at, record->size);
    bool other = without_report(r, record, copy, key, out);
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        const void **member = (const void **)(void *)(copy + f->offset), *inner;
        if (f->flags & GW_MANY || f->type != GW_T_RECORD || !*member) continue;
        inner = *member;
        *member = is_gone(r, f, inner, out) ? NULL : without_reports(r, f->record, inner, f->key, out);
        other = other || *member != inner;
    }
    return other ? copy : at;
}

struct gw_message gw_ask_if_it_fits(struct reviewing *r, const struct gw_member_spec *spec)
{
    if (!gw_insert_too_deep(spec)) return (struct gw_message){0};
    return GW_SAY(r->arena,
                  "does its insert fit? By inertia and section modulus it is about {} deep (2 I/S), and the tube is {} "
                  "deep inside: ask the manufacturer for the sections",
                  gw_of_quantity(GW_THICKNESS, gw_insert_depth(spec->insert)),
                  gw_of_quantity(GW_THICKNESS, spec->tube->depth - 2 * spec->tube->flange));
}

static void set_depth(struct reviewing *r, struct gw_system *system, double depth)
{
    if (!system->mullion || !system->mullion->tube) return;
    struct gw_member_spec *mullion = gw_alloc(r->arena, 1, sizeof *mullion);
    struct gw_tube *tube = gw_alloc(r->arena, 1, sizeof *tube);
    *mullion = *system->mullion;
    *tube = *system->mullion->tube;
    tube->depth = depth;
    mullion->tube = tube;
    system->mullion = mullion;
}

/* A part that is another than the accepted one was not what the accepted one's tests were of. */
static void take_part(struct gw_system *system, const struct gw_system *offered, size_t part)
{
    const struct gw_field *f = &gw_system_record.fields[part];
    const size_t size = f->flags & GW_MANY       ? sizeof(struct gw_many)
                        : f->type == GW_T_NUMBER ? sizeof(double)
                        : f->type == GW_T_CHOICE ? sizeof(int)
                                                 : sizeof(void *);
    memcpy((char *)system + f->offset, (const char *)offered + f->offset, size);
}

void gw_alter(struct reviewing *r, struct gw_system *system, const struct gw_system *offered, const struct look *look)
{
    if (look->part != NO_PART) take_part(system, offered, look->part);
    if (gw_given(look->mullion_depth)) set_depth(r, system, look->mullion_depth);
    alter_ratings(r, system, look);
    if (look->named) gw_name_reports(r, system, look->unnamed);
    if (!look->out) return;
    const struct gw_system *other = without_reports(r, &gw_system_record, system, "", look->out);
    if (other != system) *system = *other;
}
