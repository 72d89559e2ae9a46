/* Which parts of what is offered are others than those that the accepted system's tests were of. */
#include "review_internal.h"

#include <string.h>

bool gw_report_is_accepted(const struct reviewing *r, const char *name)
{
    for (size_t i = 0; name && r->accepted && i < r->accepted->ratings.n; i++) {
        const char *report = r->accepted->ratings.items[i].report;
        if (report && gw_words_alike(report, name)) return true;
    }
    return false;
}

static size_t part_named(const char *key)
{
    static const char *const names[] = {
#define PART_NAME(part) #part,
        GW_SYSTEM_PARTS(PART_NAME)
#undef PART_NAME
    };
    size_t i = 0;
    while (i < GW_SYSTEM_PART_COUNT && strcmp(names[i], key) != 0) i++;
    return i;
}

/* The first keys of what differs, as a mapping of a file would hold them. */
static const struct gw_node *keys_of(struct reviewing *r, const struct gw_record_differences *differences)
{
    struct gw_node *mapping = gw_alloc(r->arena, 1, sizeof *mapping);
    struct gw_node **end = &mapping->first;
    mapping->kind = GW_MAPPING;
    for (size_t i = 0; i < differences->list.n; i++) {
        const char *path = differences->list.items[i].path;
        struct gw_node *key = gw_alloc(r->arena, 1, sizeof *key);
        key->key = gw_strndup(r->arena, path, strcspn(path, ".["));
        *end = key;
        end = &key->next;
    }
    return mapping;
}

/* What a design reckons with, and no specimen has. */
bool gw_is_assumption(const char *part, const struct gw_record_differences *differences)
{
    if (strcmp(part, "drainage") != 0) return false;
    for (size_t i = 0; i < differences->list.n; i++)
        if (strcmp(differences->list.items[i].path, "leak_share") != 0) return false;
    return true;
}

static bool among(const char *const *list, const char *key)
{
    while (*list && strcmp(*list, key) != 0) list++;
    return *list;
}

static void add_part(struct otherness *out, struct reviewing *r, const struct gw_field *field,
                     const struct gw_record_differences *differences)
{
    static const char *const joints[] = {"gasket", "drainage", "stack_joint", NULL};
    const size_t part = part_named(field->key);
    if (strcmp(field->key, "system") == 0) {
        const struct gw_system_head *a = r->accepted->system, *b = r->judged->system;
        /* a name alone makes no other specimen: reports say of which system they are */
        if (a->kind == b->kind && a->glazing == b->glazing) return;
        *out = (struct otherness){UINT32_MAX, true};
        return;
    }
    if (gw_is_assumption(field->key, differences)) return;
    out->joints = out->joints || among(joints, field->key);
    if (part == GW_SYSTEM_PART_COUNT || part == GW_PART_ratings) return;
    const bool gone = field->type == GW_T_RECORD && !*(const void *const *)((const char *)r->judged + field->offset);
    if (gone || !gw_part_stays_tested((enum gw_system_part)part, keys_of(r, differences), r->judged, r->accepted))
        out->parts |= (uint32_t)1 << part;
}

void gw_otherness_of(struct otherness *out, struct reviewing *r, size_t part,
                     const struct gw_record_differences *differences)
{
    add_part(out, r, &gw_system_record.fields[part], differences);
}
