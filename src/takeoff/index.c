/* A hash index of items: open addressing, never more than half full; what is alike is told by the caller. */
#include "takeoff_internal.h"

#include <string.h>

struct gw_index_slot {
    unsigned hash, item; /* item + 1; 0: free */
};

/* FNV-1a, and a last stir: the low bits choose the slot. */
static unsigned stir(unsigned h, unsigned char byte) { return (h ^ byte) * 16777619u; }

unsigned gw_hash_text(unsigned h, const char *text)
{
    for (; text && *text; text++) h = stir(h, (unsigned char)*text);
    return stir(h, 0) ^ h >> 15;
}

unsigned gw_hash_number(unsigned h, long long number)
{
    const unsigned long long mixed = (unsigned long long)number * 0x9E3779B97F4A7C15u;
    return (h ^ (unsigned)(mixed >> 32)) * 16777619u;
}

static size_t slots_for(size_t n)
{
    size_t slots = 16;
    while (slots < 2 * n) slots *= 2;
    return slots;
}

void gw_index_reset(struct gw_index *index, struct gw_arena *arena, size_t n)
{
    index->n = 0;
    index->n_slots = slots_for(n);
    if (index->n_slots > index->capacity) {
        index->capacity = index->n_slots;
        index->slots = gw_alloc(arena, index->n_slots, sizeof *index->slots);
    } else {
        memset(index->slots, 0, index->n_slots * sizeof *index->slots);
    }
}

bool gw_index_find(size_t *item, const struct gw_index *index, unsigned hash, gw_index_same *same, const void *context)
{
    if (!index->n_slots) return false;
    for (size_t i = hash & (index->n_slots - 1); index->slots[i].item; i = (i + 1) & (index->n_slots - 1)) {
        if (index->slots[i].hash != hash || !same(context, index->slots[i].item - 1)) continue;
        *item = index->slots[i].item - 1;
        return true;
    }
    return false;
}

static void put(struct gw_index *index, struct gw_index_slot slot)
{
    size_t i = slot.hash & (index->n_slots - 1);
    while (index->slots[i].item) i = (i + 1) & (index->n_slots - 1);
    index->slots[i] = slot;
}

void gw_index_add(struct gw_index *index, struct gw_arena *arena, unsigned hash, size_t item)
{
    if (2 * (index->n + 1) > index->n_slots) {
        const struct gw_index old = *index;
        index->capacity = index->n_slots = slots_for(2 * (index->n + 1));
        index->slots = gw_alloc(arena, index->n_slots, sizeof *index->slots);
        for (size_t i = 0; i < old.n_slots; i++)
            if (old.slots[i].item) put(index, old.slots[i]);
    }
    put(index, (struct gw_index_slot){hash, (unsigned)item + 1});
    index->n++;
}
