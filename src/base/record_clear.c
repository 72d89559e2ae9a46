/* A record before anything is loaded into it: each field absent in the way of its type. */
#include "galeward/record.h"

#include <string.h>

void gw_field_clear(const struct gw_field *field, void *at)
{
    if (field->flags & GW_MANY) {
        memset(at, 0, sizeof(struct gw_many));
        return;
    }
    switch (field->type) {
    case GW_T_NUMBER:
        *(double *)at = GW_ABSENT;
        break;
    case GW_T_INTEGER:
        *(int *)at = GW_NO_INTEGER;
        break;
    case GW_T_BOOL:
        *(enum gw_bool *)at = GW_UNSAID;
        break;
    case GW_T_CHOICE:
        *(int *)at = 0;
        break;
    case GW_T_TEXT:
    case GW_T_RECORD:
    case GW_T_NODE:
    case GW_T_TREE:
        *(void **)at = NULL;
        break;
    default: /* of results: never read */
        break;
    }
}

void gw_record_clear(const struct gw_record *record, void *out)
{
    memset(out, 0, record->size);
    for (size_t i = 0; i < record->n; i++) gw_field_clear(&record->fields[i], (char *)out + record->fields[i].offset);
}
