#include "galeward/table.h"

#include "tables_data.h"

#include <string.h>

const char *gw_basis_name(enum gw_basis basis)
{
    static const char *const names[] = {"none", "published", "derived", "second_hand", "memory", "practice"};
    return names[basis];
}

const struct gw_tables *gw_tables_standard(void) { return &gw_tables_data; }

size_t gw_tables_size(void) { return sizeof(struct gw_tables); }

const struct gw_table *gw_table_list(size_t *n)
{
    *n = GW_TABLE_COUNT;
    return gw_table_infos;
}

const struct gw_table *gw_table_find(const char *name)
{
    for (size_t i = 0; i < GW_TABLE_COUNT; i++)
        if (strcmp(gw_table_infos[i].name, name) == 0) return &gw_table_infos[i];
    return NULL;
}

const struct gw_row *gw_table_row(const struct gw_tables *tables, const struct gw_table *table, size_t i)
{
    const char *first = (const char *)tables + table->offset;
    return (const struct gw_row *)(const void *)(first + i * table->row_size);
}

struct gw_unit_list gw_units_standard(void) { return (struct gw_unit_list){gw_units_data, GW_N_UNIT_SPELLINGS}; }

_Static_assert((int)GW_ROW_COUNT <= (int)GW_USED_LIMIT, "raise GW_USED_LIMIT: a set of used rows must hold every row");

const struct gw_row *gw_table_row_at(const struct gw_tables *tables, unsigned index)
{
    size_t low = 0, high = GW_TABLE_COUNT; /* the last table that begins at or before the index; none is empty */
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (gw_table_infos[middle].first <= index) low = middle;
        else high = middle;
    }
    return gw_table_row(tables, &gw_table_infos[low], index - gw_table_infos[low].first);
}

void gw_used_add(struct gw_used *used, const struct gw_row *row)
{
    used->words[row->index / GW_USED_WORD] |= (uint64_t)1 << row->index % GW_USED_WORD;
}

void gw_used_remove(struct gw_used *used, const struct gw_row *row)
{
    used->words[row->index / GW_USED_WORD] &= ~((uint64_t)1 << row->index % GW_USED_WORD);
}

void gw_used_merge(struct gw_used *used, const struct gw_used *more)
{
    for (size_t i = 0; i < GW_USED_LIMIT / GW_USED_WORD; i++) used->words[i] |= more->words[i];
}

bool gw_used_next(const struct gw_used *used, unsigned *index)
{
    for (unsigned i = *index; i < GW_USED_LIMIT; i++) {
        uint64_t rest = used->words[i / GW_USED_WORD] >> i % GW_USED_WORD;
        if (rest & 1) {
            *index = i;
            return true;
        }
        if (!rest) i |= GW_USED_WORD - 1; /* on to the next word */
    }
    return false;
}

enum gw_basis gw_used_weakest(const struct gw_used *used)
{
    enum gw_basis weakest = GW_BASIS_NONE;
    for (unsigned i = 0; gw_used_next(used, &i); i++) {
        enum gw_basis basis = gw_table_row_at(gw_tables_standard(), i)->basis;
        if (basis > weakest) weakest = basis;
    }
    return weakest;
}
