/* Loading records by their field tables. */
#include "base/record_say.h"
#include "base/spelling.h"
#include "galeward/day.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

static void *member(void *record, const struct gw_field *field) { return (char *)record + field->offset; }

static size_t type_size(const struct gw_field *field)
{
    switch (field->type) {
    case GW_T_NUMBER:
        return sizeof(double);
    case GW_T_INTEGER:
        return sizeof(int);
    case GW_T_BOOL:
        return sizeof(enum gw_bool);
    case GW_T_TEXT:
        return sizeof(const char *);
    case GW_T_CHOICE:
        return sizeof(int);
    case GW_T_RECORD:
        return field->record->size;
    case GW_T_NODE:
    case GW_T_TREE:
        return sizeof(const struct gw_node *);
    default: /* of results: never read */
        return 0;
    }
}

const char *gw_record_nearest(const struct gw_record *record, const char *key)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, key);
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].key && !(record->fields[i].flags & GW_HIDDEN))
            gw_nearest_offer(&nearest, record->fields[i].key);
    return gw_nearest_word(&nearest);
}

void gw_assume_that(struct gw_arena *arena, struct gw_assumptions *list, const struct gw_assumption *said)
{
    static const char *const of[] = {
        [GW_OF_NOTHING] = "", [GW_OF_WALL] = "wall ", [GW_OF_BUILDING] = "buildings.", [GW_OF_SYSTEM] = "system "};
    if (!list) return;
    struct gw_assumption kept = *said;
    kept.where = said->name ? gw_format(arena, "%s%s", of[said->subject], said->name) : gw_strdup(arena, said->where);
    for (size_t i = 0; i < list->n; i++)
        if (strcmp(list->items[i].where, kept.where) == 0 && gw_message_same(&list->items[i].text, &kept.text)) return;
    list->items = gw_grow(arena, list->items, list->n, &list->capacity, sizeof *list->items);
    list->items[list->n++] = kept;
}

void gw_assume(struct gw_arena *arena, struct gw_assumptions *list, const char *where, struct gw_message text)
{
    const struct gw_assumption said = {.where = where, .text = text};
    gw_assume_that(arena, list, &said);
}

static bool check_range(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, double value)
{
    bool limited = field->least < field->greatest;
    if (limited && (value < field->least || value > field->greatest)) {
        gw_load_say(load, "bad_value", field, node,
                    gw_format(load->arena, "'%s' is %s; it must lie between %s and %s%s%s", gw_load_label(field, node),
                              node->text, gw_show_limit(load, field, field->least, 4),
                              gw_show_limit(load, field, field->greatest, 4),
                              value < field->least && field->below ? field->below : "",
                              gw_range_hint(load, field, node)));
        return false;
    }
    bool doubted = field->likely_least < field->likely_most;
    if (doubted && (value < field->likely_least || value > field->likely_most))
        gw_diag_node(load->diags, GW_WARNING, "implausible", field->key, node,
                     "'%s' is %s; usual values lie between %s and %s%s", gw_load_label(field, node), node->text,
                     gw_show_limit(load, field, field->likely_least, 3),
                     gw_show_limit(load, field, field->likely_most, 3), gw_range_hint(load, field, node));
    return true;
}

static bool load_number(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, double *out)
{
    double value;
    size_t at;
    if (node->kind != GW_SCALAR || !node->length) /* the wording costs an allocation: only when it is needed */
        return gw_want_scalar(load, field, node,
                              gw_format(load->arena, "%s %s such as %s", gw_article(gw_dim_info(field->dim)->name),
                                        gw_dim_info(field->dim)->name, gw_dim_example(field->dim, load->preset)));
    if (field->keyword && strcmp(node->text, field->keyword) == 0) {
        *out = GW_ABSENT;
        *(bool *)(void *)((char *)out - field->offset + field->keyword_at) = true;
        return true;
    }
    enum gw_quantity_fault fault =
        gw_quantity_read(load->units, field->dim, load->preset, node->text, node->length, &value, &at);
    if (fault != GW_QUANTITY_OK) {
        gw_say_quantity_fault(load, field, node, fault, at);
        return false;
    }
    if (field->flags & GW_NO_MINUS && value < 0)
        gw_diag_node(load->diags, GW_WARNING, "implausible", field->key, node,
                     "'%s' is %s: inward is written without a minus sign; %s is taken", gw_load_label(field, node),
                     node->text, node->text + strcspn(node->text, "0123456789."));
    if (field->flags & GW_MAGNITUDE) value = fabs(value);
    if (!check_range(load, field, node, value)) return false;
    *out = value;
    return true;
}

static bool load_integer(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, int *out)
{
    double value;
    if (!gw_want_scalar(load, field, node, "a whole number")) return false;
    bool whole = gw_read_number(node->text, node->length, &value) == node->length && fabs(value) < 1e9 &&
                 !(fabs(value - floor(value)) > 0);
    if (!whole) {
        gw_load_say(load, "wrong_type", field, node,
                    gw_format(load->arena, "'%s' wants a whole number, not '%s'%s", gw_load_label(field, node),
                              node->text, gw_whole_hint(load, node->text)));
        return false;
    }
    if (!check_range(load, field, node, value)) return false;
    *out = (int)value;
    return true;
}

static bool is_word_of(const char *const *words, const char *text)
{
    for (; *words; words++)
        if (gw_words_alike(*words, text)) return true;
    return false;
}

static const char *const YES[] = {"true", "yes", "on", "y", NULL}, *const NO[] = {"false", "no", "off", "n", NULL};

static bool load_bool(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, enum gw_bool *out)
{
    if (!gw_want_scalar(load, field, node, "true or false")) return false;
    bool is_yes = is_word_of(YES, node->text);
    if (is_yes || is_word_of(NO, node->text)) {
        *out = is_yes ? GW_YES : GW_NO;
        return true;
    }
    gw_load_say(load, "wrong_type", field, node,
                gw_format(load->arena, "'%s' wants true or false, not '%s'", field->key, node->text));
    return false;
}

/* Of words among which are yes and no, one that says so otherwise. */
static const struct gw_choice *match(const struct gw_choice *choices, const char *text)
{
    const struct gw_choice *found = gw_choice_match(choices, text);
    if (found || (!is_word_of(YES, text) && !is_word_of(NO, text))) return found;
    return gw_choice_match(choices, is_word_of(YES, text) ? "yes" : "no");
}

static bool load_choice(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, int *out)
{
    const struct gw_choice *found = node->kind == GW_SCALAR ? match(field->choices, node->text) : NULL;
    const struct gw_also *also = field->also;
    while (!found && also && also->word && !(node->kind == GW_SCALAR && gw_words_alike(also->word, node->text))) also++;
    const bool other = !found && also && also->word;
    if (other && also->name) {
        found = gw_choice_match(field->choices, also->name);
        gw_diag_node(load->diags, also->severity, "read_as", field->key, node, "'%s' is read as %s%s%s", node->text,
                     also->name, also->says ? ": " : "", also->says ? also->says : "");
    }
    if (found) *out = found->value;
    else gw_say_no_choice(load, field, node, also);
    return found;
}

/* A statement is no report because a word stands in its place. */
static const char *report_of(struct gw_load *load, const struct gw_field *field, const struct gw_node *node)
{
    const char *label = gw_load_label(field, node);
    if (gw_names_nothing(node->text)) {
        gw_diag_node(load->diags, GW_WARNING, "no_report", field->key, node,
                     "'%s' is '%s', which names no report: it counts as a statement without one", label, node->text);
        return NULL;
    }
    if (gw_is_date(node->text))
        gw_diag_node(load->diags, GW_WARNING, "implausible", field->key, node,
                     "'%s' is a date: it counts as a report, but which one? Give its number", label);
    return node->text;
}

static bool load_text(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char **out)
{
    if (!gw_want_scalar(load, field, node, "a text")) return false;
    if (gw_is_spreadsheet_error(node->text)) {
        gw_load_say(load, "bad_value", field, node,
                    gw_format(load->arena, "'%s' is no text of '%s': %s", node->text, gw_load_label(field, node),
                              gw_value_hint(load->arena, GW_RATIO, load->preset, node->text)));
        return false;
    }
    if (field->flags & GW_DATE && !gw_day_read(&(long){0}, node->text)) {
        gw_load_say(load, "wrong_type", field, node,
                    gw_format(load->arena, "'%s' wants a day such as 2026-09-14, not '%s'", gw_load_label(field, node),
                              node->text));
        return false;
    }
    *out = field->flags & GW_REPORT ? report_of(load, field, node) : node->text;
    return true;
}

static bool load_tree(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                      const struct gw_node **out)
{
    if (node->kind != GW_MAPPING || !node->first) {
        gw_load_say(load, "wrong_type", field, node,
                    gw_format(load->arena, "'%s' wants a mapping of keys, not %s", gw_load_label(field, node),
                              node->kind != GW_SEQUENCE && !node->length ? "nothing" : gw_kind_word(node)));
        return false;
    }
    *out = node;
    return true;
}

static bool load_into(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *path,
                      void *at)
{
    switch (field->type) {
    case GW_T_NUMBER:
        return load_number(load, field, node, at);
    case GW_T_INTEGER:
        return load_integer(load, field, node, at);
    case GW_T_BOOL:
        return load_bool(load, field, node, at);
    case GW_T_CHOICE:
        return load_choice(load, field, node, at);
    case GW_T_TEXT:
        return load_text(load, field, node, at);
    case GW_T_TREE:
        return load_tree(load, field, node, at);
    case GW_T_RECORD:
        return gw_record_load(load, field->record, node, path, at);
    default: /* takes no key, or is of results */
        return false;
    }
}

static const struct gw_field *name_field(const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].type == GW_T_TEXT) return &record->fields[i];
    return NULL;
}

/* "wall east" rather than "walls[0]", where the item has a name. */
static const char *item_path(struct gw_load *load, const struct gw_field *field, const struct gw_node *item,
                             const char *path, size_t i)
{
    const struct gw_node *name = gw_node_get(item, "name");
    const char *dot = *path ? "." : "";
    if (field->flags & GW_NAMED) return gw_format(load->arena, "%s%s%s.%s", path, dot, field->key, item->key);
    if (name && name->kind == GW_SCALAR) return gw_format(load->arena, "%s%s%s.%s", path, dot, field->key, name->text);
    return gw_format(load->arena, "%s%s%s[%zu]", path, dot, field->key, i + 1);
}

static bool load_items(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *path,
                       struct gw_many *out)
{
    size_t size = type_size(field), i = 0;
    bool good = true;
    char *items = gw_alloc(load->arena, node->count ? node->count : 1, size);
    struct gw_field one = *field;
    one.flags &= ~(unsigned)GW_MANY;
    one.offset = 0;
    for (const struct gw_node *item = node->first; item; item = item->next, i++) {
        void *at = items + i * size;
        good = !gw_say_split_number(load, field, item) && good;
        if (field->type != GW_T_RECORD) gw_field_clear(&one, at);
        good = load_into(load, &one, item, item_path(load, field, item, path, i), at) && good;
        const struct gw_field *name = field->flags & GW_NAMED ? name_field(field->record) : NULL;
        if (name) *(const char **)member(at, name) = item->key;
    }
    *out = (struct gw_many){items, i};
    return good;
}

/* One item that stands for a list of itself. */
static bool load_alone(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *path,
                       struct gw_many *out)
{
    struct gw_node item = *node, list = *node;
    item.next = NULL;
    list.first = &item;
    list.count = 1;
    return load_items(load, field, &list, path, out);
}

static bool load_many(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *path,
                      struct gw_many *out)
{
    enum gw_node_kind wanted = field->flags & GW_NAMED ? GW_MAPPING : GW_SEQUENCE;
    if ((field->flags & GW_ALONE) && node->kind == GW_SCALAR && node->length)
        return load_alone(load, field, node, path, out);
    if (node->kind != wanted) {
        bool word = node->kind == GW_SCALAR && node->length && wanted == GW_SEQUENCE && field->type != GW_T_RECORD;
        gw_load_say(load, "wrong_type", field, node,
                    gw_format(load->arena, "'%s' wants %s, not %s%s", field->key,
                              wanted == GW_MAPPING ? "a mapping of names" : "a list",
                              node->kind == GW_SCALAR && !node->length ? "nothing" : gw_kind_word(node),
                              field->example ? gw_format(load->arena, ": write %s", field->example)
                              : word         ? gw_format(load->arena, ": write [%s]", node->text)
                                             : ""));
        return false;
    }
    if (!(field->flags & GW_WRAP) || !node->first || node->first->kind == GW_SEQUENCE)
        return load_items(load, field, node, path, out);
    return load_alone(load, field, node, path, out);
}

static bool load_field(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *path,
                       void *record)
{
    void *at = member(record, field);
    if (field->flags & GW_MANY) return load_many(load, field, node, path, at);
    if (field->type != GW_T_RECORD) return load_into(load, field, node, path, at);
    void *inner = gw_alloc(load->arena, 1, field->record->size);
    *(void **)at = inner;
    return gw_record_load(load, field->record, node,
                          gw_format(load->arena, "%s%s%s", path, *path ? "." : "", field->key), inner);
}

bool gw_field_load(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, void *at)
{
    gw_field_clear(field, at);
    return load_into(load, field, node, "", at);
}

/* A default with a unit is said in the reader's. */
static struct gw_value value_taken(const struct gw_field *field, const void *record)
{
    if (field->type != GW_T_NUMBER || field->dim == GW_RATIO) return gw_of_text(field->fallback);
    return gw_of_quantity(field->dim, *(const double *)gw_field_at(field, record));
}

static bool take_default(struct gw_load *load, const struct gw_field *field, const char *path, void *record)
{
    struct gw_source source = {"default", field->fallback, strlen(field->fallback)};
    struct gw_node node = {
        .kind = GW_SCALAR, .source = &source, .text = field->fallback, .length = source.length, .line = 1, .column = 1};
    if (!load_field(load, field, &node, path, record)) return false;
    if (!(field->flags & GW_SILENT))
        gw_assume(load->arena, load->assumptions, path,
                  GW_SAY(load->arena, "{}: {} (default)", gw_of_text(field->key), value_taken(field, record)));
    return true;
}

static bool finish_field(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                         const char *path, void *record)
{
    if (field->fallback) return take_default(load, field, path, record);
    if (!(field->flags & GW_REQUIRED)) return true;
    bool helps = strcmp(field->help, field->key) != 0;
    gw_diag_node(load->diags, GW_ERROR, "missing", field->key, node, "'%s' is missing%s%s%s%s", field->key,
                 *path ? " in " : "", path, helps ? ": " : "", helps ? field->help : "");
    return false;
}

enum { FIELD_LIMIT = 64 };

static bool load_members(struct gw_load *load, const struct gw_record *record, const struct gw_node *node,
                         const char *path, void *out, bool seen[FIELD_LIMIT])
{
    bool good = true;
    for (const struct gw_node *child = node->first; child; child = child->next) {
        const struct gw_field *field = gw_record_field(record, child->key);
        if (field) {
            seen[field - record->fields] = true;
            good = load_field(load, field, child, path, out) && good;
        } else {
            field = gw_say_unknown_key(load, record, child);
            if (field) seen[field - record->fields] = true; /* misspelled, not missing */
            good = false;
        }
    }
    return good;
}

/* A bare scalar or list stands for the mapping with that one key. */
static bool load_short(struct gw_load *load, const struct gw_record *record, const struct gw_node *node,
                       const char *path, void *out, bool seen[FIELD_LIMIT])
{
    const char *key = node->kind == GW_SCALAR ? record->scalar_key : record->list_key;
    const struct gw_field *field =
        key && (node->kind == GW_SEQUENCE || node->length) ? gw_record_field(record, key) : NULL;
    if (!field) {
        gw_diag_node(load->diags, GW_ERROR, "wrong_type", "", node, "%s wants a mapping of keys%s, not %s%s%s",
                     record->name, node->kind == GW_SCALAR && record->list_key ? " or a list" : "",
                     node->kind == GW_SCALAR && !node->length ? "nothing" : gw_kind_word(node),
                     record->example ? ": write " : "", record->example ? record->example : "");
        return false;
    }
    struct gw_node named = *node;
    if (!named.key) named.key = record->name;
    seen[field - record->fields] = true;
    return load_field(load, field, &named, path, out);
}

bool gw_record_load(struct gw_load *load, const struct gw_record *record, const struct gw_node *node, const char *path,
                    void *out)
{
    bool seen[FIELD_LIMIT] = {false};
    gw_record_clear(record, out);
    bool good = (node->kind == GW_MAPPING ? load_members : load_short)(load, record, node, path, out, seen);
    if (!good && node->kind != GW_MAPPING) return false;
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (field->type == GW_T_NODE) *(const struct gw_node **)member(out, field) = node;
        else if (!seen[i]) good = finish_field(load, field, node, path, out) && good;
    }
    return good;
}
