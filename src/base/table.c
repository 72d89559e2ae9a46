#include "galeward/table.h"

#include "tables_data.h"

#include <string.h>

const char *gw_basis_name(enum gw_basis basis)
{
    static const char *const names[] = {"none", "published", "derived", "memory", "practice"};
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

void gw_used_add(struct gw_used *used, const struct gw_row *row)
{
    for (unsigned i = 0; i < used->n; i++)
        if (used->rows[i] == row) return;
    if (used->n < GW_USED_LIMIT) {
        used->rows[used->n++] = row;
        return;
    }
    unsigned strongest = 0;
    for (unsigned i = 1; i < used->n; i++)
        if (used->rows[i]->basis < used->rows[strongest]->basis) strongest = i;
    if (row->basis > used->rows[strongest]->basis) used->rows[strongest] = row;
}

void gw_used_merge(struct gw_used *used, const struct gw_used *more)
{
    for (unsigned i = 0; i < more->n; i++) gw_used_add(used, more->rows[i]);
}

enum gw_basis gw_used_weakest(const struct gw_used *used)
{
    enum gw_basis weakest = GW_BASIS_NONE;
    for (unsigned i = 0; i < used->n; i++)
        if (used->rows[i]->basis > weakest) weakest = used->rows[i]->basis;
    return weakest;
}
