/* Readings of one thing that cannot both be true. */
#include "answers/inspect/inspect_internal.h"
#include "judge/screw_line.h"

/* Words of two items that exclude each other at one place. */
struct excluded {
    enum gw_item_id a, b;
    const char *word_a, *word_b;
};
static const struct excluded EXCLUDED[] = {
    {GW_ITEM_weep_clear, GW_ITEM_blocks_and_weeps, "yes", "covered"},
};
enum { N_EXCLUDED = sizeof EXCLUDED / sizeof *EXCLUDED };

static void against(struct gw_inspecting *in, struct gw_inspected *row, const struct gw_inspected *other)
{
    gw_add_said(in, row,
                GW_SAY(in->ask->arena, "row {} of the file says of this place {} {}: the two cannot both be right",
                       gw_of_count((long)other->reading->node->line), gw_of_text(gw_item_kinds[other->item->id].title),
                       gw_item_shown(other->item->id, other->reading->value)));
    if (row->verdict != GW_ITEM_WITHIN && row->verdict != GW_ITEM_OUTSIDE_HOLDS) return;
    row->verdict = GW_ITEM_UNKNOWN;
    row->action = GW_PLAINLY("which of the two is right: look there again");
}

static void contradict(struct gw_inspecting *in, struct gw_inspected *a, struct gw_inspected *b)
{
    against(in, a, b);
    against(in, b, a);
}

static bool says(const struct gw_inspected *row, enum gw_item_id item, const char *word)
{
    return row->item->id == item && gw_words_alike(gw_item_word(item, row->reading->value), word);
}

/* A screw on the bottom of its chase does not bear; one that is only near it does. */
static bool is_bottomed(struct gw_inspecting *in, const struct gw_inspected *row)
{
    struct gw_as_read read;
    if (row->item->id != GW_ITEM_screw_length) return false;
    gw_as_read_clear(&read);
    read.of[GW_ITEM_screw_length] = row->reading->value;
    return gw_bottomed(&read, gw_hung_at(in, row->element));
}

/* Points that are not said may be any. */
static bool may_be_one(const struct gw_inspected *a, const struct gw_inspected *b)
{
    return !a->reading->point || !b->reading->point || a->reading->at == b->reading->at;
}

/* What was met so far of a thing; each contradiction is said of the first such row. */
struct met {
    struct gw_inspected *bears, *bottomed, *held, *leaked, *of[N_EXCLUDED][2];
};

static void note(struct gw_inspecting *in, struct met *m, struct gw_inspected *row)
{
    const double value = row->reading->value.number;
    if (!m->bears && says(row, GW_ITEM_screw_head, "bears")) m->bears = row;
    if (!m->bottomed && is_bottomed(in, row)) m->bottomed = row;
    if (row->item->id == GW_ITEM_field_water && (!m->held || value > m->held->reading->value.number)) m->held = row;
    if (row->item->id == GW_ITEM_leaked_at && (!m->leaked || value < m->leaked->reading->value.number)) m->leaked = row;
    for (size_t i = 0; i < N_EXCLUDED; i++) {
        if (!m->of[i][0] && says(row, EXCLUDED[i].a, EXCLUDED[i].word_a)) m->of[i][0] = row;
        if (!m->of[i][1] && says(row, EXCLUDED[i].b, EXCLUDED[i].word_b)) m->of[i][1] = row;
    }
}

/* Each screw by its own point. */
static void contradict_heads(struct gw_inspecting *in, const struct gw_thing *thing, const struct met *m)
{
    if (!m->bears || !m->bottomed) return;
    for (size_t i = 0; i < thing->n; i++) {
        struct gw_inspected *row = gw_row_of(in, thing, i);
        if (!gw_is_open(row) || !says(row, GW_ITEM_screw_head, "bears")) continue;
        struct gw_inspected *same = gw_open_at(in, row->thing, GW_ITEM_screw_length, 0, row->reading);
        struct gw_inspected *length = same ? same : m->bottomed;
        if (is_bottomed(in, length) && may_be_one(row, length)) contradict(in, row, length);
    }
}

void gw_contradict(struct gw_inspecting *in, const struct gw_thing *thing)
{
    struct met m = {0};
    if (thing->n < 2) return;
    for (size_t i = 0; i < thing->n; i++)
        if (gw_is_open(gw_row_of(in, thing, i))) note(in, &m, gw_row_of(in, thing, i));
    contradict_heads(in, thing, &m);
    if (m.held && m.leaked && m.held->reading->value.number >= m.leaked->reading->value.number)
        contradict(in, m.held, m.leaked);
    for (size_t i = 0; i < N_EXCLUDED; i++)
        if (m.of[i][0] && m.of[i][1]) contradict(in, m.of[i][0], m.of[i][1]);
}
