/* The answer: places, history, verdicts, what they come to. */
#include "answers/inspect/inspect_internal.h"

#include <stdint.h>
#include <string.h>

static struct gw_value limit_value(const struct gw_item *item, double si)
{
    return gw_of_quantity(gw_item_kinds[item->id].value.dim, si);
}

struct gw_message gw_limit_words(struct gw_arena *arena, const struct gw_item *item, const struct gw_item_limit *limit)
{
    const struct gw_item_kind *kind = &gw_item_kinds[item->id];
    const bool low = gw_given(limit->at_least), high = gw_given(limit->at_most);
    for (const struct gw_choice *c = kind->value.choices; c && c->name; c++)
        if (kind->means[c->value - 1] == GW_WORD_SOUND) return GW_PLAINLY(c->name);
    if (low && high)
        return GW_SAY(arena, "{} to {}", gw_of_bare(limit_value(item, limit->at_least)),
                      limit_value(item, limit->at_most));
    if (low) return GW_SAY(arena, "at least {}", limit_value(item, limit->at_least));
    return high ? GW_SAY(arena, "at most {}", limit_value(item, limit->at_most)) : GW_PLAINLY(NULL);
}

const struct gw_system *gw_hung_at(struct gw_inspecting *in, const struct gw_element *element)
{
    if (!in->planned || !element) return in->out->system;
    const struct gw_system *offered = gw_planned_offer(in->planned, element);
    return offered ? offered : in->out->system;
}

/* Everything that a result hangs on, without padding. */
enum { KEY_ROOM = 16 + 2 * GW_ITEM_COUNT };
struct result_key {
    uint64_t bits[KEY_ROOM];
    size_t n;
};

static void add_count(struct result_key *key, size_t count) { key->bits[key->n++] = count; }
static void add_pointer(struct result_key *key, const void *pointer) { add_count(key, (size_t)(uintptr_t)pointer); }
static void add_number(struct result_key *key, double number) { memcpy(&key->bits[key->n++], &number, sizeof number); }

static void make_key(struct result_key *key, const struct gw_item *item, const struct gw_spot *spot,
                     const struct gw_as_read *read)
{
    key->n = 0;
    add_count(key, item->id);
    add_count(key, (size_t)(spot->edge + 1) + (read->pocket_open ? GW_ITEM_COUNT : 0));
    add_pointer(key, spot->grid);
    add_pointer(key, spot->lite);
    add_pointer(key, spot->screws);
    add_pointer(key, spot->member);
    add_pointer(key, spot->anchor);
    add_number(key, read->torque_age);
    add_number(key, read->temperature_least);
    add_number(key, read->temperature_most);
    for (size_t i = 0; i < GW_ITEM_COUNT; i++) {
        const struct gw_item_value v = read->of[i];
        if (!gw_given(v.number) && !v.word) continue;
        add_count(key, i + (size_t)v.word * GW_ITEM_COUNT);
        add_number(key, v.number);
    }
}

const struct gw_kept *gw_inspect_judge(struct gw_inspecting *in, const struct gw_item *item, const struct gw_spot *spot,
                                       const struct gw_as_read *read)
{
    struct result_key key;
    struct gw_ask *ask = in->ask;
    const struct gw_element *element = gw_spot_element(spot, item->on);
    make_key(&key, item, spot, read);
    void **at = gw_memo_at(&in->results, ask->arena, key.bits, key.n * sizeof *key.bits);
    if (*at) return *at;
    struct gw_kept *kept = *at = gw_alloc(ask->arena, 1, sizeof *kept);
    if (in->planned && element) {
        in->planned->make_ups.place = in->planned->plan.places->of[element->index];
        ask->choice = &in->planned->make_ups;
    }
    gw_item_judge(&kept->result, ask, item, spot, read, gw_hung_at(in, element));
    ask->choice = NULL;
    gw_used_merge(&in->out->used, &kept->result.used);
    kept->limit = gw_limit_words(ask->arena, item, &kept->result.limit);
    return kept;
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
    in.history = gw_history_room(ask->arena);
    in.worst = gw_worst_room(ask->arena);
    ask->system = system;
    start_rows(&in, readings);
    gw_place_rows(&in);
    for (size_t i = 0; i < in.list.n; i++) gw_close_rows(&in, &in.list.items[i]);
    for (size_t i = 0; i < in.list.n; i++) gw_judge_thing(&in, &in.list.items[i]);
    for (size_t i = 0; i < in.list.n; i++) gw_contradict(&in, &in.list.items[i]);
    for (size_t i = 0; i < out->rows.n; i++) out->counts[out->rows.items[i].verdict] += gw_is_open(&out->rows.items[i]);
    gw_engine_init(&ask->engine, ask->model->tables, NULL);
    gw_count_shares(&in);
    gw_used_merge(&out->used, &ask->engine.used);
    gw_find_next(&in);
}
