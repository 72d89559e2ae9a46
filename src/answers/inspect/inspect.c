/* The answer: places, history, verdicts, what they come to. */
#include "answers/inspect/inspect_internal.h"

#include "base/tolerance.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

static struct gw_message limit_words(struct gw_arena *arena, const struct gw_item *item,
                                     const struct gw_item_limit *limit, int step)
{
    const struct gw_item_kind *kind = &gw_item_kinds[item->id];
    const bool low = gw_given(limit->at_least), high = gw_given(limit->at_most);
    for (const struct gw_choice *c = kind->value.choices; c && c->name; c++)
        if (kind->means[c->value - 1] == GW_WORD_SOUND) return GW_PLAINLY(c->name);
    const struct gw_value least = gw_item_limit_shown(item->id, limit->at_least, step),
                          most = gw_item_limit_shown(item->id, limit->at_most, -step);
    if (low && high && fabs(limit->at_most - limit->at_least) <= GW_HAIR_DRAWN * fabs(limit->at_most))
        return GW_SAY(arena, "{}", gw_item_limit_shown(item->id, limit->at_least, 0));
    if (low && high) return GW_SAY(arena, "{} to {}", gw_of_bare(least), most);
    if (low && limit->not_met_at > 0)
        return GW_SAY(arena, "at least {}, not met at {} or less", least,
                      gw_item_limit_shown(item->id, limit->not_met_at, 0));
    if (low) return GW_SAY(arena, "at least {}", least);
    return high ? GW_SAY(arena, "at most {}", most) : GW_PLAINLY(NULL);
}

struct gw_message gw_limit_words(struct gw_arena *arena, const struct gw_item *item, const struct gw_item_limit *limit)
{
    return limit_words(arena, item, limit, 1);
}

/* A window that two steps of a tape would close is said by its figures. */
struct gw_message gw_limit_by_tape(struct gw_arena *arena, const struct gw_item *item,
                                   const struct gw_item_limit *limit)
{
    const double steps = 2e-3;                                    /* m, two of less than 1 mm each */
    const bool narrow = limit->at_most - limit->at_least < steps; /* false where one is absent */
    return limit_words(arena, item, limit, narrow ? 1 : GW_BY_TAPE);
}

const struct gw_system *gw_hung_at(struct gw_inspecting *in, const struct gw_element *element)
{
    if (!in->planned || !element) return in->out->system;
    const struct gw_system *offered = gw_planned_offer(in->planned, element);
    in->planned->make_ups.place = in->planned->plan.places->of[element->index];
    in->ask->choice = &in->planned->make_ups;
    return offered ? offered : in->out->system;
}

void gw_unchoose(struct gw_inspecting *in) { in->ask->choice = NULL; }

void gw_inspect_limit(struct gw_item_limit *out, struct gw_inspecting *in, const struct gw_item *item,
                      const struct gw_spot *spot)
{
    gw_item_limit_at(out, in->ask, item, spot, gw_hung_at(in, gw_spot_element(spot, item->on)));
    gw_unchoose(in);
}

/* Everything that a result hangs on, without padding. */
enum { KEY_ROOM = 36 + 2 * GW_ITEM_COUNT };
struct result_key {
    uint64_t bits[KEY_ROOM];
    size_t n;
};

static void add_count(struct result_key *key, size_t count) { key->bits[key->n++] = count; }
static void add_pointer(struct result_key *key, const void *pointer) { add_count(key, (size_t)(uintptr_t)pointer); }
static void add_number(struct result_key *key, double number) { memcpy(&key->bits[key->n++], &number, sizeof number); }

static void add_edges(struct result_key *key, const struct gw_as_read *read)
{
    for (size_t i = 0; i < sizeof read->edges / sizeof *read->edges; i++) {
        const struct gw_edge_read *e = &read->edges[i];
        if (!gw_given(e->gap) && !gw_given(e->bite)) continue;
        add_count(key, GW_ITEM_COUNT * (GW_ITEM_COUNT + i)); /* no item's */
        add_number(key, e->gap);
        add_number(key, e->widest);
        add_number(key, e->bite);
        add_number(key, e->deepest);
    }
}

static void add_read(struct result_key *key, const struct gw_as_read *read)
{
    add_count(key, read->pocket_open);
    add_number(key, read->torque_age);
    add_number(key, read->temperature_least);
    add_number(key, read->temperature_most);
    add_number(key, read->other_least);
    add_number(key, read->other_most);
    add_edges(key, read);
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) {
        const struct gw_item_value v = read->of[i];
        if (!gw_given(v.number) && !v.word) continue;
        add_count(key, i + (size_t)v.word * GW_ITEM_COUNT);
        add_number(key, v.number);
    }
}

static void make_key(struct result_key *key, const struct gw_item *item, const struct gw_spot *spot,
                     const struct gw_as_read *read)
{
    const bool whole = !spot->worst && spot->column != GW_NO_INTEGER; /* one lite, whose component counts */
    key->n = 0;
    add_count(key, item->id);
    add_count(key, 2 * (size_t)(spot->edge + 1) + whole);
    add_pointer(key, spot->grid);
    add_pointer(key, spot->lite);
    add_pointer(key, spot->screws);
    add_pointer(key, spot->member);
    add_pointer(key, spot->anchor);
    add_pointer(key, spot->beside[0]);
    add_pointer(key, spot->beside[1]);
    add_count(key, item->on == GW_ON_JOINT ? spot->up : 0);
    add_read(key, read);
}

static const struct gw_kept *judge_at(struct gw_inspecting *in, const struct gw_item *item, const struct gw_spot *spot,
                                      const struct gw_as_read *read)
{
    struct result_key key;
    struct gw_ask *ask = in->ask;
    make_key(&key, item, spot, read);
    void **at = gw_memo_at(&in->results, ask->arena, key.bits, key.n * sizeof *key.bits);
    struct gw_kept *kept = *at;
    if (kept) return kept;
    kept = *at = gw_alloc(ask->arena, 1, sizeof *kept);
    gw_item_judge(&kept->result, ask, item, spot, read, gw_hung_at(in, gw_spot_element(spot, item->on)));
    gw_unchoose(in);
    gw_used_merge(&in->out->used, &kept->result.used);
    kept->limit = gw_limit_words(ask->arena, item, &kept->result.limit);
    return kept;
}

/* Said in part --------------------------------------------------------------------------------------------------- */

/* The gravest of the places that it may be, from 0: among alike ones where most is carried. */
struct gravest {
    const struct gw_kept *kept;
    size_t at;
};

static const struct gravest *gravest_of(struct gw_inspecting *in, const struct gw_item *item, const struct gw_found *f,
                                        const struct gw_as_read *read)
{
    struct result_key key = {.n = 0};
    add_pointer(&key, f);
    add_count(&key, item->id);
    add_read(&key, read);
    void **at = gw_memo_at(&in->gravest, in->ask->arena, key.bits, key.n * sizeof *key.bits);
    struct gravest *g = *at;
    if (g) return g;
    g = *at = gw_alloc(in->ask->arena, 1, sizeof *g);
    for (size_t i = 0; i < f->each.n; i++) {
        const struct gw_kept *kept = judge_at(in, item, &f->each.items[i].spot, read);
        const bool more = g->kept && f->each.items[i].load > f->each.items[g->at].load &&
                          !gw_item_graver(&g->kept->result, &kept->result);
        if (!g->kept || more || gw_item_graver(&kept->result, &g->kept->result)) *g = (struct gravest){kept, i};
    }
    return g;
}

/* "quay, story 2 (said in part; judged at the gravest: quay, story 2, column 1 from the left)" */
static const char *words_of_place(struct gw_inspecting *in, struct gw_found *f, size_t at)
{
    struct gw_text text;
    if (!f->spot.worst) return f->said;
    if (!f->judged_at) f->judged_at = gw_alloc(in->ask->arena, f->each.n, sizeof *f->judged_at);
    if (f->judged_at[at]) return f->judged_at[at];
    gw_text_init(&text, in->ask->arena);
    gw_spot_say(&text, &f->each.items[at].spot);
    f->judged_at[at] = gw_format(in->ask->arena, "%s (said in part; judged where it is gravest: %s)", f->said,
                                 gw_safe(in->ask->arena, text.at));
    return f->judged_at[at];
}

static bool is_one_place(const struct gw_found *f) { return !f->each.n || (f->each.n < 2 && !f->spot.worst); }

const struct gw_kept *gw_inspect_again(struct gw_inspecting *in, const struct gw_inspected *row,
                                       const struct gw_as_read *read)
{
    const struct gw_found *f = in->found[row - in->out->rows.items];
    return is_one_place(f) ? judge_at(in, row->item, &row->spot, read) : gravest_of(in, row->item, f, read)->kept;
}

const struct gw_kept *gw_inspect_judge(struct gw_inspecting *in, struct gw_inspected *row,
                                       const struct gw_as_read *read)
{
    struct gw_found *f = in->found[row - in->out->rows.items];
    if (is_one_place(f)) return judge_at(in, row->item, &row->spot, read);
    const struct gravest *g = gravest_of(in, row->item, f, read);
    row->spot = f->each.items[g->at].spot;
    row->spot.worst = f->spot.worst;
    row->element = gw_spot_element(&row->spot, row->item->on);
    row->place = words_of_place(in, f, g->at);
    return g->kept;
}

static void start_rows(struct gw_inspecting *in, const struct gw_readings *readings)
{
    struct gw_inspection *out = in->out;
    out->rows.items = gw_alloc(in->ask->arena, readings->rows.n + 1, sizeof *out->rows.items);
    for (size_t i = 0; i < readings->rows.n; i++) {
        const struct gw_reading *r = &readings->rows.items[i];
        if (!r->good) continue;
        const char *word = gw_item_word(r->item, r->value);
        out->rows.items[out->rows.n++] = (struct gw_inspected){.reading = r,
                                                               .item = gw_item_of(r->item),
                                                               .place = "",
                                                               .value = {r->value.number, *word ? word : NULL},
                                                               .age = GW_ABSENT};
    }
}

void gw_inspect(struct gw_inspection *out, struct gw_ask *ask, const struct gw_readings *readings,
                const struct gw_system *system)
{
    *out = (struct gw_inspection){.system = system, .readings = readings};
    struct gw_inspecting in = {.out = out, .ask = ask, .planned = gw_planned_of(ask, system)};
    in.found = gw_alloc(ask->arena, readings->rows.n + 1, sizeof *in.found);
    in.history = gw_history_room(ask->arena);
    in.worst = gw_worst_room(ask->arena);
    ask->system = system;
    start_rows(&in, readings);
    gw_place_rows(&in);
    for (size_t i = 0; i < in.list.n; i++) gw_close_rows(&in, &in.list.items[i]);
    for (size_t i = 0; i < in.list.n; i++) gw_judge_thing(&in, &in.list.items[i]);
    for (size_t i = 0; i < in.list.n; i++) gw_contradict(&in, &in.list.items[i]);
    gw_doubt_torques(&in);
    for (size_t i = 0; i < out->rows.n; i++) out->counts[out->rows.items[i].verdict] += gw_is_open(&out->rows.items[i]);
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    gw_count_shares(&in);
    gw_used_merge(&out->used, &ask->engine.used);
    gw_find_next(&in);
}
