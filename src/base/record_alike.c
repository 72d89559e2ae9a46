/* Whether two structs of one record differ in anything that both give. */
#include "galeward/record.h"

#include <math.h>
#include <string.h>

/* Of one item, not of a list; what either leaves out tells nothing. */
static bool values_alike(const struct gw_field *field, const void *a, const void *b)
{
    const double hair = 1e-6; /* of the greater: a length in feet and the same in millimeters */
    if (field->type == GW_T_NUMBER) {
        const double x = *(const double *)a, y = *(const double *)b;
        return !gw_given(x) || !gw_given(y) || fabs(x - y) <= hair * fmax(fabs(x), fabs(y));
    }
    if (field->type == GW_T_INTEGER) {
        const int x = *(const int *)a, y = *(const int *)b;
        return x == GW_NO_INTEGER || y == GW_NO_INTEGER || x == y;
    }
    if (field->type == GW_T_BOOL || field->type == GW_T_CHOICE) {
        const int x = *(const int *)a, y = *(const int *)b;
        return !x || !y || x == y;
    }
    if (field->type == GW_T_TEXT) {
        const char *x = *(const char *const *)a, *y = *(const char *const *)b;
        return !x || !y || strcmp(x, y) == 0;
    }
    if (field->type == GW_T_RECORD) {
        const void *x = *(const void *const *)a, *y = *(const void *const *)b;
        return !x || !y || gw_record_alike(field->record, x, y);
    }
    return true; /* where it stands in its file */
}

static size_t item_size(const struct gw_field *field)
{
    if (field->type == GW_T_RECORD) return field->record->size;
    if (field->type == GW_T_NUMBER) return sizeof(double);
    return field->type == GW_T_TEXT ? sizeof(const char *) : sizeof(int);
}

static bool one_alike(const struct gw_field *field, const void *a, const void *b)
{
    return field->type == GW_T_RECORD ? gw_record_alike(field->record, a, b) : values_alike(field, a, b);
}

/* The order of a list counts only where it is of a kind that has one: layers from outside to inside. */
static bool found(const struct gw_field *field, const char *item, const struct gw_many *in, size_t at)
{
    const size_t size = item_size(field);
    const char *items = in->items;
    if (field->flags & GW_ORDERED) return one_alike(field, item, items + at * size);
    for (size_t i = 0; i < in->n; i++)
        if (one_alike(field, item, items + i * size)) return true;
    return false;
}

static bool items_alike(const struct gw_field *field, const void *a, const void *b)
{
    const struct gw_many *x = a, *y = b;
    const size_t size = item_size(field);
    const char *of_x = x->items, *of_y = y->items;
    if (!x->n || !y->n) return true;
    if (x->n != y->n) return false;
    for (size_t i = 0; i < x->n; i++)
        if (!found(field, of_x + i * size, y, i) || !found(field, of_y + i * size, x, i)) return false;
    return true;
}

bool gw_record_alike(const struct gw_record *record, const void *a, const void *b)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const char *x = (const char *)a + field->offset, *y = (const char *)b + field->offset;
        if (!(field->flags & GW_MANY ? items_alike(field, x, y) : values_alike(field, x, y))) return false;
    }
    return true;
}
