/* Where two structs of one record differ, value by value. */
#include "galeward/record.h"

#include <math.h>
#include <string.h>

struct walk {
    struct gw_record_differences *out;
    struct gw_arena *arena;
};

static void add(struct walk *w, const char *path, struct gw_message a, struct gw_message b)
{
    struct gw_record_differences *out = w->out;
    out->list.items = gw_grow(w->arena, out->list.items, out->list.n, &out->capacity, sizeof *out->list.items);
    out->list.items[out->list.n++] = (struct gw_record_difference){path, a, b};
}

static struct gw_message plain(struct walk *w, struct gw_value value) { return GW_SAY(w->arena, "{}", value); }

/* Of one item that is no record; not said: it is not given. */
static struct gw_message shown(struct walk *w, const struct gw_field *field, const void *at)
{
    const struct gw_message nothing = {0};
    int whole;
    switch (field->type) {
    case GW_T_NUMBER:
        if (!gw_given(*(const double *)at)) return nothing;
        return plain(w, field->dim == GW_RATIO ? gw_of_number(*(const double *)at, 4)
                                               : gw_of_quantity(field->dim, *(const double *)at));
    case GW_T_INTEGER:
        whole = *(const int *)at;
        return whole == GW_NO_INTEGER ? nothing : plain(w, gw_of_count(whole));
    case GW_T_BOOL:
        if (*(const enum gw_bool *)at == GW_UNSAID) return nothing;
        return plain(w, gw_of_text(*(const enum gw_bool *)at == GW_YES ? "yes" : "no"));
    case GW_T_CHOICE:
        if (!*(const int *)at) return nothing;
        return plain(w, gw_of_text(gw_choice_name(field->choices, *(const int *)at)));
    case GW_T_TEXT:
        return *(const char *const *)at ? plain(w, gw_of_text(*(const char *const *)at)) : nothing;
    default:
        return nothing;
    }
}

static bool same_number(double x, double y)
{
    const double hair = 1e-6; /* of the greater: a length in feet and the same in millimeters */
    if (!gw_given(x) || !gw_given(y)) return gw_given(x) == gw_given(y);
    return fabs(x - y) <= hair * fmax(fabs(x), fabs(y));
}

static bool same_tree(const struct gw_node *a, const struct gw_node *b)
{
    if (!a || !b) return a == b;
    if (a->kind != b->kind || a->count != b->count) return false;
    if (a->kind == GW_SCALAR) return a->length == b->length && memcmp(a->text, b->text, a->length) == 0;
    const struct gw_node *y = b->first;
    for (const struct gw_node *x = a->first; x; x = x->next, y = y ? y->next : NULL)
        if (!same_tree(x, a->kind == GW_MAPPING ? gw_node_get(b, x->key) : y)) return false;
    return true;
}

static bool same(const struct gw_field *field, const void *a, const void *b);

static bool same_record(const struct gw_record *record, const void *a, const void *b)
{
    for (size_t i = 0; a && b && i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        if (!same(f, (const char *)a + f->offset, (const char *)b + f->offset)) return false;
    }
    return !a == !b;
}

static size_t item_size(const struct gw_field *field)
{
    if (field->type == GW_T_RECORD) return field->record->size;
    if (field->type == GW_T_NUMBER) return sizeof(double);
    return field->type == GW_T_TEXT ? sizeof(const char *) : sizeof(int);
}

static const void *item(const struct gw_field *field, const struct gw_many *list, size_t i)
{
    return (const char *)list->items + i * item_size(field);
}

/* One value, or one item of a list, where it lies; a record that is no item lies behind a pointer. */
static bool same_value(const struct gw_field *field, const void *a, const void *b)
{
    const char *x, *y;
    switch (field->type) {
    case GW_T_NUMBER:
        return same_number(*(const double *)a, *(const double *)b);
    case GW_T_TEXT:
        x = *(const char *const *)a, y = *(const char *const *)b;
        return x && y ? strcmp(x, y) == 0 : x == y;
    case GW_T_TREE:
        return same_tree(*(const struct gw_node *const *)a, *(const struct gw_node *const *)b);
    case GW_T_INTEGER:
    case GW_T_BOOL:
    case GW_T_CHOICE:
        return *(const int *)a == *(const int *)b;
    default: /* where it stands in its file */
        return true;
    }
}

static bool same_item(const struct gw_field *field, const void *a, const void *b)
{
    return field->type == GW_T_RECORD ? same_record(field->record, a, b) : same_value(field, a, b);
}

static bool same_list(const struct gw_field *field, const struct gw_many *a, const struct gw_many *b)
{
    if (a->n != b->n) return false;
    for (size_t i = 0; i < a->n; i++)
        if (!same_item(field, item(field, a, i), item(field, b, i))) return false;
    return true;
}

static bool same(const struct gw_field *field, const void *a, const void *b)
{
    if (field->flags & GW_MANY) return same_list(field, a, b);
    if (field->type == GW_T_RECORD) return same_record(field->record, *(const void *const *)a, *(const void *const *)b);
    return same_value(field, a, b);
}

/* Walking ---------------------------------------------------------------------------------------------------------- */

static const char *below(struct walk *w, const char *path, const char *key)
{
    return gw_format(w->arena, "%s%s%s", path, *path && *key != '[' ? "." : "", key);
}

static void differ(struct walk *w, const char *path, const struct gw_field *field, const void *a, const void *b);

static void differ_records(struct walk *w, const char *path, const struct gw_record *record, const void *a,
                           const void *b)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        if (f->type != GW_T_NODE)
            differ(w, below(w, path, f->key), f, (const char *)a + f->offset, (const char *)b + f->offset);
    }
}

/* As its file has it; a list, which keys do not tell apart, is other as a whole. */
static struct gw_message written(struct walk *w, const struct gw_node *node)
{
    if (!node) return (struct gw_message){0};
    return node->kind == GW_SCALAR ? plain(w, gw_of_text(node->text)) : GW_PLAINLY("a list");
}

static void differ_trees(struct walk *w, const char *path, const struct gw_node *a, const struct gw_node *b)
{
    const bool maps = (!a || a->kind == GW_MAPPING) && (!b || b->kind == GW_MAPPING);
    if (same_tree(a, b)) return;
    if (!maps) {
        add(w, path, written(w, a), written(w, b));
        return;
    }
    for (const struct gw_node *x = a ? a->first : NULL; x; x = x->next)
        differ_trees(w, below(w, path, x->key), x, b ? gw_node_get(b, x->key) : NULL);
    for (const struct gw_node *y = b ? b->first : NULL; y; y = y->next)
        if (!a || !gw_node_get(a, y->key)) differ_trees(w, below(w, path, y->key), NULL, y);
}

/* A record that only one side gives: each of its values. */
static void differ_from_none(struct walk *w, const char *path, const struct gw_field *field, const void *a,
                             const void *b)
{
    void *none = gw_alloc(w->arena, 1, field->record->size);
    gw_record_clear(field->record, none);
    differ_records(w, path, field->record, a ? a : none, b ? b : none);
}

/* Whether two items that are not the same are of one kind: by their first key. */
static bool same_kind(const struct gw_field *field, const void *a, const void *b)
{
    if (field->type != GW_T_RECORD || !field->record->n) return true;
    const struct gw_field *f = &field->record->fields[0];
    return (f->flags & GW_MANY) || f->type == GW_T_NUMBER || f->type == GW_T_RECORD ||
           same(f, (const char *)a + f->offset, (const char *)b + f->offset);
}

struct pairs {
    size_t *of_a; /* 1 + the index in b; 0: none */
    bool *taken;  /* by item of b */
};

static void pair(struct pairs *p, const struct gw_field *field, const struct gw_many *a, const struct gw_many *b,
                 bool (*alike)(const struct gw_field *, const void *, const void *))
{
    const bool ordered = field->flags & GW_ORDERED;
    for (size_t i = 0; i < a->n; i++)
        for (size_t k = ordered ? i : 0; k < b->n && !p->of_a[i] && (!ordered || k == i); k++) {
            if (p->taken[k] || !alike(field, item(field, a, i), item(field, b, k))) continue;
            p->of_a[i] = k + 1;
            p->taken[k] = true;
        }
}

static void differ_items(struct walk *w, const char *path, const struct gw_field *field, const void *a, const void *b)
{
    if (field->type != GW_T_RECORD)
        add(w, path, a ? shown(w, field, a) : (struct gw_message){0}, b ? shown(w, field, b) : (struct gw_message){0});
    else if (!a || !b) differ_from_none(w, path, field, a, b);
    else differ_records(w, path, field->record, a, b);
}

static const char *text_of(const struct gw_record *record, const char *key, const void *item)
{
    const struct gw_field *f = gw_record_field(record, key);
    return f && f->type == GW_T_TEXT ? *(const char *const *)(const void *)((const char *)item + f->offset) : NULL;
}

/* What an item is told by: its name, or what it is of and the report that it names; NULL: its number. */
static const char *name_of(struct walk *w, const struct gw_field *field, const void *item)
{
    if (field->type != GW_T_RECORD || !field->record->n) return NULL;
    const struct gw_field *first = field->record->fields;
    const char *name = text_of(field->record, "name", item), *report = text_of(field->record, "report", item);
    if (name && strcmp(first->key, "name") == 0) return name;
    if (!report || first->type != GW_T_CHOICE) return NULL;
    const int kind = *(const int *)(const void *)((const char *)item + first->offset);
    return gw_format(w->arena, "%s %s", gw_choice_name(first->choices, kind), report);
}

static const char *labeled(struct walk *w, const char *path, const struct gw_field *field, const void *item, size_t i)
{
    const char *name = name_of(w, field, item);
    return below(w, path, name ? gw_format(w->arena, "[%s]", name) : gw_format(w->arena, "[%zu]", i + 1));
}

/* One that only one side has: by its name alone, where it has one. */
static void differ_alone(struct walk *w, const char *path, const struct gw_field *field, const void *a, const void *b)
{
    const struct gw_message given = GW_PLAINLY("given"), nothing = {0};
    if (name_of(w, field, a ? a : b)) add(w, path, a ? given : nothing, b ? given : nothing);
    else differ_items(w, path, field, a, b);
}

static void differ_lists(struct walk *w, const char *path, const struct gw_field *field, const struct gw_many *a,
                         const struct gw_many *b)
{
    struct pairs p = {gw_alloc(w->arena, a->n + 1, sizeof *p.of_a), gw_alloc(w->arena, b->n + 1, sizeof *p.taken)};
    pair(&p, field, a, b, same_item);
    pair(&p, field, a, b, same_kind);
    for (size_t i = 0; i < a->n; i++) {
        const void *x = item(field, a, i), *y = p.of_a[i] ? item(field, b, p.of_a[i] - 1) : NULL;
        const char *label = labeled(w, path, field, x, y ? p.of_a[i] - 1 : i);
        if (!y) differ_alone(w, label, field, x, NULL);
        else if (!same_item(field, x, y)) differ_items(w, label, field, x, y);
    }
    for (size_t k = 0; k < b->n; k++)
        if (!p.taken[k]) differ_alone(w, labeled(w, path, field, item(field, b, k), k), field, NULL, item(field, b, k));
}

static void differ(struct walk *w, const char *path, const struct gw_field *field, const void *a, const void *b)
{
    if (same(field, a, b)) return;
    if (field->flags & GW_MANY) {
        differ_lists(w, path, field, a, b);
        return;
    }
    if (field->type == GW_T_RECORD) {
        const void *x = *(const void *const *)a, *y = *(const void *const *)b;
        if (x && y) differ_records(w, path, field->record, x, y);
        else differ_from_none(w, path, field, x, y);
        return;
    }
    if (field->type == GW_T_TREE)
        differ_trees(w, path, *(const struct gw_node *const *)a, *(const struct gw_node *const *)b);
    else add(w, path, shown(w, field, a), shown(w, field, b));
}

void gw_field_differ(struct gw_record_differences *out, struct gw_arena *arena, const struct gw_field *field,
                     const void *a, const void *b)
{
    struct walk w = {out, arena};
    *out = (struct gw_record_differences){.capacity = 0};
    differ(&w, "", field, a, b);
}
