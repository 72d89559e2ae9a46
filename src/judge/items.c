/* The registry of what can be measured, and what a value comes to at its place. */
#include "judge/items.h"

#include "judge/judge_internal.h"
#include "judge/lite_drift.h"

#define ROW_NUMBER(id_, dim_) [GW_ITEM_##id_] = &gw_item_##id_,
#define ROW_WORD(id_) [GW_ITEM_##id_] = &gw_item_##id_,
static const struct gw_item *const ITEMS[GW_ITEM_COUNT] = {GW_NUMBER_ITEMS(ROW_NUMBER) GW_WORD_ITEMS(ROW_WORD)};
const struct gw_item *const *gw_item_list(size_t *n)
{
    *n = GW_ITEM_COUNT;
    return ITEMS;
}

const struct gw_item *gw_item_of(enum gw_item_id id) { return ITEMS[id]; }

const char *const gw_stage_names[GW_STAGE_COUNT] = {"anchors", "frame", "glass", "plates", "covers", "seals", "test"};

const char *gw_limit_basis_name(enum gw_limit_basis basis)
{
    static const char *const names[] = {"", "system", "project", "geometry", "demand", "practice"};
    return names[basis];
}

const char *gw_item_verdict_name(enum gw_item_verdict verdict)
{
    static const char *const names[] = {"unknown", "within", "outside, holds", "not met"};
    return names[verdict];
}

void gw_as_read_clear(struct gw_as_read *read)
{
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) read->of[i] = (struct gw_item_value){GW_ABSENT, 0};
    for (size_t i = 0; i < sizeof read->edges / sizeof *read->edges; i++)
        read->edges[i] = (struct gw_edge_read){GW_ABSENT, GW_ABSENT, GW_ABSENT, GW_ABSENT};
    read->torque_age = read->temperature_least = read->temperature_most = GW_ABSENT;
    read->other_least = read->other_most = GW_ABSENT;
    read->drawn = read->pocket_open = false;
}

const char *gw_item_without(const struct gw_item *item, const struct gw_ask *ask, const struct gw_system *system)
{
    return item->does->without ? item->does->without(ask, system) : NULL;
}

/* Parts of answers ------------------------------------------------------------------------------------------------- */

void gw_left_unknown(struct gw_left *out, struct gw_message question)
{
    if (!gw_said(&out->unknown)) out->unknown = question;
}

struct gw_mechanism *gw_left_by(struct gw_left *out, const char *name, double good, double bad, double required,
                                struct gw_message how)
{
    struct gw_mechanism *m = &out->list[out->n++];
    *m = (struct gw_mechanism){.name = name, .good = good, .bad = bad, .required = required, .how = how};
    return m;
}

bool gw_left_by_check(struct gw_left *out, struct gw_ask *ask, const char *name, const struct gw_check *check,
                      const struct gw_element *element, const struct gw_system *as_read)
{
    /* the findings may be kept by messages, and the ask's engine is the item's own */
    struct gw_finding *f = gw_alloc(ask->arena, 1, sizeof *f);
    struct gw_demand *d = gw_alloc(ask->arena, 1, sizeof *d);
    const struct gw_engine own = ask->engine;
    gw_judge_limits(f, d, ask, check, element, as_read);
    ask->engine = own;
    gw_used_merge(&ask->engine.used, f->used);
    if (f->verdict == GW_NOT_REQUIRED) return true;
    /* of several limits one may be known and another not */
    if (f->verdict == GW_NOT_SHOWN || !gw_given(f->utilization)) {
        gw_left_unknown(out, f->message);
        return false;
    }
    const double left = f->utilization > 0 ? 1 / f->utilization : INFINITY;
    gw_left_by(out, name, left, left, 1, f->message);
    return true;
}

/* The verdict ------------------------------------------------------------------------------------------------------ */

/* A side that the system leaves open stays as it was, unless that would leave no room. */
static void take_own(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_own_limits *own)
{
    const struct gw_item_limit usual = *out;
    *out = (struct gw_item_limit){
        .at_least = own->at_least, .at_most = own->at_most, .not_met_at = usual.not_met_at, .basis = GW_LIMIT_SYSTEM};
    const bool least = !gw_given(own->at_least) && usual.at_least <= own->at_most,
               most = !gw_given(own->at_most) && usual.at_most >= own->at_least;
    if (least) out->at_least = usual.at_least;
    if (most) out->at_most = usual.at_most;
    if (least || most)
        out->note = GW_SAY(ask->arena, "{}: {}", gw_of_text(least ? "at least" : "at most"),
                           gw_of_text(gw_limit_basis_name(usual.basis)));
}

void gw_item_limit_at(struct gw_item_limit *out, struct gw_ask *ask, const struct gw_item *item,
                      const struct gw_spot *spot, const struct gw_system *system)
{
    const struct gw_own_limits *own = system->installation ? system->installation->of[item->id] : NULL;
    *out = (struct gw_item_limit){.at_least = GW_ABSENT, .at_most = GW_ABSENT};
    if (item->does->limit) item->does->limit(out, ask, spot, system);
    const struct gw_item_limit stated = *out;
    if (own) take_own(out, ask, own);
    const bool is_stated = stated.basis == GW_LIMIT_SYSTEM || stated.basis == GW_LIMIT_PROJECT;
    if (item->does->as_designed && is_stated && stated.at_most < out->at_most) *out = stated;
}

/* A hair beyond is within: what was read was rounded, and its unit converted. */
static bool in_limit(const struct gw_item_limit *limit, double value)
{
    const double hair = GW_HAIR * fabs(value);
    return !(value < limit->at_least - hair) && !(value > limit->at_most + hair);
}

static bool is_short(const struct gw_mechanism *m) { return m && m->bad < m->required * (1 - GW_HAIR); }

static bool fails(const struct gw_mechanism *m) { return is_short(m) && !(m->unsure && m->good >= m->required); }

static bool is_graver(const struct gw_mechanism *a, const struct gw_mechanism *b)
{
    if (fails(a) != fails(b)) return fails(a);
    return a->bad / a->required < b->bad / b->required;
}

/* Least against what is required of it, at the bad end, what fails before what may; NULL: there is none. */
static const struct gw_mechanism *governing(const struct gw_left *left)
{
    const struct gw_mechanism *least = NULL;
    for (unsigned i = 0; i < left->n; i++)
        if (!least || is_graver(&left->list[i], least)) least = &left->list[i];
    return least;
}

static enum gw_item_verdict verdict_of(const struct gw_left *left, const struct gw_mechanism *m, bool in, bool computed)
{
    if (left->lost || fails(m)) return GW_ITEM_NOT_MET;
    if (left->undecided || is_short(m) || gw_said(&left->taken)) return GW_ITEM_UNKNOWN;
    if (in) return GW_ITEM_WITHIN;
    return computed && left->n && !gw_said(&left->unknown) ? GW_ITEM_OUTSIDE_HOLDS : GW_ITEM_UNKNOWN;
}

static struct gw_message both(struct gw_ask *ask, struct gw_message a, struct gw_message b)
{
    return gw_say_both(ask->arena, &a, "; ", &b);
}

/* `in`: what to say of a value in its limit that is short; NULL: it is outside. */
static struct gw_message what_of_mechanism(struct gw_ask *ask, const struct gw_mechanism *m, const char *in)
{
    if (!m) return GW_PLAINLY(NULL);
    struct gw_message said = m->how;
    if (!is_short(m)) return said;
    if (in) said = both(ask, GW_PLAINLY(in), said);
    if (m->good < m->required) return said;
    const char *measure = m->measure ? m->measure : "measure nut factor and forming torque";
    return both(ask, said, GW_SAY(ask->arena, "enough at the good end of the ranges: {}", gw_of_text(measure)));
}

static void settle(struct gw_item_result *out, struct gw_ask *ask, const struct gw_item *item,
                   const struct gw_left *left, const char *in)
{
    const struct gw_mechanism *m = governing(left);
    out->verdict = verdict_of(left, m, in, item->does->left);
    if (m && !left->lost) {
        out->remaining = m->good;
        out->remaining_worst = m->bad;
        out->required = m->required;
        out->mechanism = m->name;
    }
    struct gw_message said = both(ask, left->taken, what_of_mechanism(ask, m, in));
    said = both(ask, said, left->remark);
    if (out->verdict == GW_ITEM_UNKNOWN || !m) said = both(ask, said, left->unknown);
    const bool missed = !in && !item->does->left;
    if (missed && item->does->then && !gw_said(&left->unknown)) said = both(ask, said, GW_PLAINLY(item->does->then));
    out->message = said;
    if (out->verdict != GW_ITEM_WITHIN)
        out->action = gw_said(&left->action) ? left->action : GW_PLAINLY(item->if_missed);
}

static enum gw_word_sense sense_of(const struct gw_item *item, struct gw_item_value value)
{
    return value.word ? gw_item_kinds[item->id].means[value.word - 1] : GW_WORD_SOUND;
}

static bool in_order(struct gw_ask *ask, const struct gw_item *item, const struct gw_spot *spot,
                     struct gw_item_value value, const struct gw_system *system)
{
    struct gw_item_limit limit;
    const enum gw_word_sense sense = sense_of(item, value);
    if (value.word) return sense == GW_WORD_SOUND || sense == GW_WORD_UNKNOWN;
    gw_item_limit_at(&limit, ask, item, spot, system);
    return in_limit(&limit, value.number);
}

/* The gaps at the other edges of the lite. */
static bool edges_in_order(struct gw_ask *ask, const struct gw_spot *spot, const struct gw_as_read *read,
                           const struct gw_system *system)
{
    struct gw_spot there = *spot;
    bool all = true;
    for (there.edge = GW_EDGE_HEAD; there.edge <= GW_EDGE_RIGHT; there.edge++) {
        const struct gw_item_value gap = {gw_narrow_gap(read, there.edge, system), 0};
        if (there.edge == spot->edge || !gw_given(gap.number)) continue;
        all = all && in_order(ask, &gw_item_edge_clearance, &there, gap, system);
    }
    return all;
}

/* A value in its limit that is short: by its limit, or by what else was read there. */
static const char *short_by(struct gw_ask *ask, const struct gw_item *item, const struct gw_spot *spot,
                            const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_engine own = ask->engine;
    bool alone = !read->pocket_open && edges_in_order(ask, spot, read, system);
    for (size_t i = 0; alone && i < GW_ITEM_COUNT; i++)
        if (ITEMS[i] != item && gw_was_read(read, ITEMS[i]->id))
            alone = in_order(ask, ITEMS[i], spot, read->of[i], system);
    ask->engine = own;
    return alone ? "the limit, not the work" : "in its own limit, short by what else was read there";
}

/* A number that nothing limits is within only by what it leaves. */
static bool is_in(const struct gw_item_limit *limit, const struct gw_left *left, double value)
{
    const bool limited = gw_given(limit->at_least) || gw_given(limit->at_most);
    return in_limit(limit, value) && (limited || (left->n && !gw_said(&left->unknown)));
}

static void judge(struct gw_item_result *out, struct gw_ask *ask, const struct gw_item *item,
                  const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system)
{
    const struct gw_item_value value = read->of[item->id];
    const enum gw_word_sense sense = sense_of(item, value);
    struct gw_left left = {0};
    gw_item_limit_at(&out->limit, ask, item, spot, system);
    if (item->does->left && sense != GW_WORD_UNKNOWN) item->does->left(&left, ask, spot, read, system);
    const bool own = system->installation && system->installation->of[item->id];
    if (left.limit.basis == GW_LIMIT_SYSTEM || (left.limit.basis && !own)) out->limit = left.limit;
    left.lost = left.lost || sense == GW_WORD_NOT_MET;
    if (sense == GW_WORD_UNKNOWN) {
        left.undecided = true;
        if (!gw_said(&left.unknown))
            left.unknown = GW_PLAINLY(item->does->then ? item->does->then : "not known: look there, or measure");
    }
    const bool in = value.word ? sense == GW_WORD_SOUND : is_in(&out->limit, &left, value.number);
    const bool is_short_in = in && is_short(governing(&left));
    const char *by_what = left.short_by ? left.short_by : is_short_in ? short_by(ask, item, spot, read, system) : "";
    settle(out, ask, item, &left, is_short_in ? by_what : in ? "" : NULL);
}

void gw_item_judge(struct gw_item_result *out, struct gw_ask *ask, const struct gw_item *item,
                   const struct gw_spot *spot, const struct gw_as_read *read, const struct gw_system *system)
{
    const char *without = gw_item_without(item, ask, system);
    *out = (struct gw_item_result){.limit = {.at_least = GW_ABSENT, .at_most = GW_ABSENT},
                                   .remaining = GW_ABSENT,
                                   .remaining_worst = GW_ABSENT,
                                   .required = GW_ABSENT};
    gw_ask_open(ask);
    if (without) out->message = GW_PLAINLY(without);
    else judge(out, ask, item, spot, read, system);
    out->used = *gw_ask_close(ask, NULL);
}

/* What is left against what is needed; of what is lost nothing. */
static double left_of(const struct gw_item_result *r)
{
    if (gw_given(r->remaining_worst)) return r->remaining_worst / r->required;
    return r->verdict == GW_ITEM_NOT_MET ? -1 : INFINITY;
}

bool gw_item_graver(const struct gw_item_result *a, const struct gw_item_result *b)
{
    static const int ranks[] = {
        [GW_ITEM_WITHIN] = 0, [GW_ITEM_OUTSIDE_HOLDS] = 1, [GW_ITEM_UNKNOWN] = 2, [GW_ITEM_NOT_MET] = 3};
    const double p = left_of(a), q = left_of(b);
    if (a->verdict != b->verdict) return ranks[a->verdict] > ranks[b->verdict];
    return p < q - GW_HAIR * fabs(q) || (p < q && isinf(q));
}
