#include "model/setting.h"

#include <stdlib.h>
#include <string.h>

struct walk {
    struct gw_settings *settings;
    struct gw_arena *arena;
    const char *told, *path, *value; /* the whole path, with and without its '?' */
    const char *why;
};

static bool into_record(struct walk *w, struct gw_node *node, const struct gw_record *record, const char *path);
static bool into_list(struct walk *w, struct gw_node *node, const struct gw_field *field, const char *path);

static bool fault(struct walk *w, const char *why)
{
    w->why = why;
    return false;
}

static const char *first_part(struct walk *w, const char *path)
{
    return gw_strndup(w->arena, path, strcspn(path, "."));
}

/* "" at the end */
static const char *rest_of(const char *path)
{
    path += strcspn(path, ".");
    return *path ? path + 1 : path;
}

/* What is wrong with the value is a fault of the call, not of the line that it stands in for. */
static void lay_to_call(struct gw_node *node, const struct gw_source *call)
{
    node->source = call;
    if (node->kind == GW_SCALAR) node->line = node->column = 0;
    for (struct gw_node *child = node->first; child; child = child->next) lay_to_call(child, call);
}

static bool put(struct walk *w, struct gw_node *node)
{
    struct gw_settings *s = w->settings;
    for (size_t i = 0; i < s->n; i++)
        if (s->places[i] == node)
            return fault(w, strcmp(s->paths[i], w->path) == 0
                                ? gw_format(w->arena, "'%s' is set twice", w->path)
                                : gw_format(w->arena, "'%s' and '%s' set the same place", s->paths[i], w->path));
    if (!gw_node_put(w->arena, node, w->value))
        return fault(
            w, gw_format(w->arena, "'%s' is no value of '%s': a list or mapping is not closed", w->value, w->path));
    lay_to_call(node, gw_source_from(w->arena, gw_format(w->arena, "setting %s=%s", w->path, w->value), w->value,
                                     strlen(w->value)));
    s->places = gw_grow(w->arena, s->places, s->n, &s->capacity, sizeof(struct gw_node *));
    s->paths = gw_grow(w->arena, s->paths, s->n, &s->paths_capacity, sizeof(const char *));
    s->places[s->n] = node;
    s->paths[s->n++] = w->path;
    return true;
}

/* What there is -------------------------------------------------------------------------------------------------- */

static const char *name_of(const struct gw_node *item)
{
    const struct gw_node *name = gw_node_get(item, "name");
    return name && name->kind == GW_SCALAR ? name->text : NULL;
}

static const char *keys_of(struct walk *w, const struct gw_record *record)
{
    struct gw_text list;
    gw_text_init(&list, w->arena);
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].key && !(record->fields[i].flags & GW_HIDDEN))
            gw_text_addf(&list, "%s%s", list.length ? ", " : "", record->fields[i].key);
    return list.length ? list.at : "";
}

enum { MOST_NAMED = 12 };

/* "east, north": by name, of a mapping by key. Empty where they have none. */
static const char *names_in(struct walk *w, const struct gw_node *list)
{
    struct gw_text names;
    size_t n = 0;
    gw_text_init(&names, w->arena);
    for (const struct gw_node *item = list->first; item; item = item->next) {
        const char *name = list->kind == GW_MAPPING ? item->key : name_of(item);
        if (name && ++n <= MOST_NAMED) gw_text_addf(&names, "%s%s", n > 1 ? ", " : "", name);
    }
    if (n > MOST_NAMED) gw_text_addf(&names, " and %zu more", n - MOST_NAMED);
    return names.length ? names.at : "";
}

static bool no_such_item(struct walk *w, const struct gw_field *field, const struct gw_node *list, const char *part)
{
    const char *names = names_in(w, list), *key = NULL;
    const size_t n = list->count;
    if (!n) return fault(w, gw_format(w->arena, "'%s' is empty in the file: there is no '%s'", field->key, part));
    if (field->type == GW_T_RECORD && list->kind == GW_SEQUENCE) key = gw_record_nearest(field->record, part);
    return fault(w, gw_format(w->arena, "there is no '%s' in '%s': %s%s%s%s%s%s", part, field->key, names,
                              *names && list->kind == GW_SEQUENCE ? ", or " : "",
                              list->kind == GW_MAPPING ? ""
                              : n == 1                 ? "1"
                                                       : gw_format(w->arena, "1 to %zu", n),
                              key ? "; did you mean '" : "", key ? key : "", key ? "' of every item?" : ""));
}

/* An item's name given where its list's key belongs: "east.width". */
static const char *list_with(const struct gw_node *root, const struct gw_record *record, const char *name)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const struct gw_node *list = field->key ? gw_node_get(root, field->key) : NULL;
        if (!list || !(field->flags & GW_MANY)) continue;
        for (const struct gw_node *item = list->first; item; item = item->next) {
            const char *own = list->kind == GW_MAPPING ? item->key : name_of(item);
            if (own && strcmp(own, name) == 0) return field->key;
        }
    }
    return NULL;
}

static bool no_such_key(struct walk *w, const struct gw_record *record, const struct gw_node *node, const char *part)
{
    const char *near = gw_record_nearest(record, part), *list = list_with(node, record, part);
    if (list)
        return fault(w, gw_format(w->arena, "'%s' is not a key of %s; did you mean '%s.%s'?", part, record->name, list,
                                  w->path));
    return fault(w, near ? gw_format(w->arena, "'%s' is not a key of %s; did you mean '%s'?", part, record->name, near)
                         : gw_format(w->arena, "'%s' is not a key of %s: %s", part, record->name, keys_of(w, record)));
}

/* The way -------------------------------------------------------------------------------------------------------- */

static bool into_one(struct walk *w, struct gw_node *node, const struct gw_field *field, const char *path)
{
    if (!*path) return put(w, node);
    if (field->type == GW_T_RECORD) return into_record(w, node, field->record, path);
    return fault(w, gw_format(w->arena, "'%s' leads nowhere: '%s' is a single value", w->path, field->key));
}

static struct gw_node *item_of(struct gw_node *list, const char *part)
{
    char *end;
    for (struct gw_node *item = list->first; item; item = item->next) {
        const char *name = list->kind == GW_MAPPING ? item->key : name_of(item);
        if (name && strcmp(name, part) == 0) return item;
    }
    unsigned long number = strtoul(part, &end, 10);
    if (list->kind == GW_MAPPING || *end || part[0] < '0' || part[0] > '9') return NULL;
    struct gw_node *item = number ? list->first : NULL;
    while (item && --number) item = item->next;
    return item;
}

/* "buildings.main.roof_height": the path with an item in the place of its '?'. */
static const char *path_with(struct walk *w, const char *item, const char *rest)
{
    const char *from = w->told + strlen(w->told) - strlen(rest) - 2;
    return gw_format(w->arena, "%.*s%s%s%s", (int)(from - w->told), w->told, item, *rest ? "." : "", rest);
}

static bool into_only(struct walk *w, struct gw_node *list, const struct gw_field *field, const char *rest)
{
    struct gw_text places;
    size_t n = 0;
    if (list->count == 1) return into_one(w, list->first, field, rest);
    gw_text_init(&places, w->arena);
    for (const struct gw_node *item = list->first; item && n < MOST_NAMED; item = item->next) {
        const char *name = name_of(item) ? name_of(item) : gw_format(w->arena, "%zu", n + 1);
        gw_text_addf(&places, "%s%s", n++ ? ", " : "", path_with(w, name, rest));
    }
    const char *dot = strrchr(w->path, '.');
    return fault(w,
                 gw_format(w->arena, "'%s' stands in %zu places: write one of %s%s; or for all of them %s",
                           dot ? dot + 1 : w->path, list->count, places.at, list->count > n ? ", ..." : "", w->path));
}

static bool into_every(struct walk *w, struct gw_node *list, const struct gw_record *record, const char *path)
{
    for (struct gw_node *item = list->first; item; item = item->next)
        if (!into_record(w, item, record, path)) return false;
    return true;
}

/* The list of `field` is that of its record's list where its items are plain. */
static const struct gw_field *listed(const struct gw_field *field, const struct gw_node *node)
{
    bool wrapped = field->flags & GW_WRAP && node->first && node->first->kind != GW_SEQUENCE;
    const char *key = wrapped ? field->record->list_key : NULL;
    return key ? gw_record_field(field->record, key) : field;
}

static bool into_list(struct walk *w, struct gw_node *node, const struct gw_field *field, const char *path)
{
    const char *part = first_part(w, path);
    const struct gw_field *of = listed(field, node);
    const bool named = field->flags & GW_NAMED, only = strcmp(part, "?") == 0;
    if (node->kind != (named ? GW_MAPPING : GW_SEQUENCE) || !node->first)
        return fault(w, gw_format(w->arena, "the file has no list '%s', so no '%s' in it", field->key,
                                  only ? rest_of(path) : part));
    if (only) return into_only(w, node, of, rest_of(path));
    if (!named && of->type == GW_T_RECORD && gw_record_field(of->record, part))
        return into_every(w, node, of->record, path);
    struct gw_node *item = item_of(node, part);
    return item ? into_one(w, item, of, rest_of(path)) : no_such_item(w, of, node, part);
}

/* A value that stands for the mapping with one key becomes that mapping; false where it stands for none. */
static bool open_short(struct gw_arena *arena, struct gw_node *node, const struct gw_record *record)
{
    const bool nothing = node->kind == GW_SCALAR && !node->length;
    const char *key = node->kind == GW_SCALAR ? record->scalar_key : record->list_key;
    if (node->kind == GW_MAPPING) return true;
    if (!key && !nothing) return false;
    struct gw_node *inner = gw_alloc(arena, 1, sizeof *inner);
    *inner = *node;
    inner->key = key;
    inner->next = NULL;
    node->kind = GW_MAPPING;
    node->first = nothing ? NULL : inner;
    node->count = nothing ? 0 : 1;
    return true;
}

static bool into_record(struct walk *w, struct gw_node *node, const struct gw_record *record, const char *path)
{
    const char *part = first_part(w, path);
    const struct gw_field *field = gw_record_field(record, part);
    const struct gw_field *list = record->list_key ? gw_record_field(record, record->list_key) : NULL;
    if (!field && node->kind == GW_SEQUENCE && list) return into_list(w, node, list, path);
    if (!field || field->type == GW_T_NODE) return no_such_key(w, record, node, part);
    if (!open_short(w->arena, node, record))
        return fault(w, gw_format(w->arena, "'%s' cannot be set: the file gives a single value for its %s", w->path,
                                  record->name));
    struct gw_node *child = gw_node_child(w->arena, node, part);
    path = rest_of(path);
    return *path && field->flags & GW_MANY ? into_list(w, child, field, path) : into_one(w, child, field, path);
}

static const char *without_marks(struct gw_arena *arena, const char *path)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    gw_text_add(&out, "");
    for (; *path; path++)
        if (strncmp(path, "?.", 2) == 0) path++;
        else gw_text_bytes(&out, path, 1);
    return out.at;
}

bool gw_setting_put(struct gw_settings *settings, const struct gw_record *record, struct gw_node *root,
                    const char *setting, const char **why)
{
    size_t length = strcspn(setting, "=");
    struct walk w = {
        .settings = settings, .arena = settings->arena, .told = gw_strndup(settings->arena, setting, length)};
    w.path = without_marks(w.arena, w.told);
    if (setting[length] != '=') {
        *why = gw_format(w.arena, "'%s': write key=value", setting);
        return false;
    }
    w.value = setting + length + 1;
    bool good = into_record(&w, root, record, w.told);
    *why = w.why;
    return good;
}
