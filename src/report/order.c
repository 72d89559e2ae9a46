/* Element groups in the order in which people read them. */
#include "report/page.h"

#include <stdlib.h>
#include <string.h>

static int compare_sizes(size_t a, size_t b) { return (a > b) - (a < b); }

static int by_wall_name(const void *left, const void *right)
{
    const struct ordered *a = left, *b = right;
    int order = strcmp(a->element->wall, b->element->wall);
    return order ? order : compare_sizes(a->index, b->index);
}

static int compare_bands(const struct ordered *a, const struct ordered *b)
{
    const struct gw_element *x = a->element, *y = b->element;
    if (a->wall != b->wall) return compare_sizes(a->wall, b->wall);
    if (x->kind != y->kind) return x->kind < y->kind ? -1 : 1;
    if (x->parapet != y->parapet) return x->parapet ? 1 : -1;
    return (x->zone > y->zone) - (x->zone < y->zone);
}

static int by_band(const void *left, const void *right)
{
    const struct ordered *a = left, *b = right;
    int order = compare_bands(a, b);
    return order ? order : compare_sizes(a->index, b->index);
}

/* Sorted by name, each wall's first element stands first: its index is the wall's place in the file's order. */
struct ordered *gw_order_elements(struct gw_arena *arena, const struct gw_takeoff *takeoff)
{
    size_t n = takeoff->elements.n;
    struct ordered *items = gw_alloc(arena, n + 1, sizeof *items);
    for (size_t i = 0; i < n; i++) items[i] = (struct ordered){&takeoff->elements.items[i], 0, i};
    qsort(items, n, sizeof *items, by_wall_name);
    for (size_t i = 0; i < n; i++) {
        bool same = i && strcmp(items[i].element->wall, items[i - 1].element->wall) == 0;
        items[i].wall = same ? items[i - 1].wall : items[i].index;
    }
    qsort(items, n, sizeof *items, by_band);
    return items;
}
