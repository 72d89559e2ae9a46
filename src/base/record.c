/* Loading records by their field tables. */
#include "galeward/record.h"

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

static void say(struct gw_load *load, const char *code, const struct gw_field *field, const struct gw_node *node,
                const char *message)
{
    gw_diag_node(load->diags, GW_ERROR, code, field->key, node, "%s", message);
}

static const char *kind_word(const struct gw_node *node)
{
    return node->kind == GW_MAPPING ? "a mapping" : node->kind == GW_SEQUENCE ? "a list" : "a single value";
}

/* A short form goes by the key that the user wrote. */
static const char *label(const struct gw_field *field, const struct gw_node *node)
{
    return node->key ? node->key : field->key;
}

static const char *article(const char *noun) { return strchr("aeiou", noun[0]) ? "an" : "a"; }

static bool want_scalar(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                        const char *what)
{
    if (node->kind == GW_SCALAR && node->length) return true;
    say(load, "wrong_type", field, node,
        gw_format(load->arena, "'%s' wants %s, not %s", label(field, node), what,
                  node->kind == GW_SCALAR ? "nothing" : kind_word(node)));
    return false;
}

static const char *not_a_unit(struct gw_load *load, const struct gw_field *field, const char *written)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, written);
    for (size_t i = 0; i < load->units.n; i++)
        if (gw_unit_find((struct gw_unit_list){&load->units.items[i], 1}, field->dim, load->units.items[i].name,
                         strlen(load->units.items[i].name)))
            gw_nearest_offer(&nearest, load->units.items[i].name);
    return gw_format(load->arena, "'%s' is not a unit of %s; write for example %s%s", written,
                     gw_dim_info(field->dim)->name, gw_dim_info(field->dim)->example,
                     gw_nearest_question(load->arena, &nearest));
}

/* What a number broken off in the middle wants to be told. */
static const char *broken_number(const char *rest)
{
    if (rest[0] == ',') return "a comma in the number";
    if (strchr(rest, '\t')) return "a tab in the value";
    if (rest[0] == '.' || rest[0] == '/') return "no such number";
    return NULL;
}

static const char *unit_message(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                                const char *rest)
{
    const char *broken = *rest ? broken_number(rest) : NULL;
    if (!broken) return not_a_unit(load, field, rest);
    return gw_format(load->arena, "'%s' is not understood, %s; write for example %s", node->text, broken,
                     gw_dim_info(field->dim)->example);
}

/* To so many digits, but with no exponent for a large number. */
static double rounded(double value, int digits)
{
    if (!(fabs(value) > 0)) return 0;
    double unit = pow(10, floor(log10(fabs(value))) - digits + 1);
    return round(value / unit) * unit;
}

static const char *show_limit(struct gw_load *load, const struct gw_field *field, double si, int digits)
{
    struct gw_text text;
    gw_text_init(&text, load->arena);
    enum gw_units shown = load->preset ? load->preset : GW_US;
    gw_text_number(&text, rounded(gw_quantity_shown(load->units, field->dim, shown, si), digits), 12);
    const char *unit = gw_dim_info(field->dim)->shown[shown];
    if (*unit) gw_text_addf(&text, " %s", unit);
    return text.at;
}

static const char *quantity_message(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                                    enum gw_quantity_fault fault, const char *rest)
{
    const struct gw_dim_info *dim = gw_dim_info(field->dim);
    const char *a = article(dim->name), *key = label(field, node);
    switch (fault) {
    case GW_QUANTITY_NOT_A_NUMBER:
        if (field->dim == GW_RATIO && field->greatest > field->least)
            return gw_format(load->arena, "'%s' wants a plain number between %s and %s, not '%s'", key,
                             show_limit(load, field, field->least, 6), show_limit(load, field, field->greatest, 6),
                             node->text);
        return gw_format(load->arena, "'%s' wants %s %s such as %s, not '%s'%s%s", key, a, dim->name, dim->example,
                         node->text, field->keyword ? ", or the word " : "", field->keyword ? field->keyword : "");
    case GW_QUANTITY_NO_UNIT:
        return gw_format(load->arena, "'%s' has no unit: write one (%s), or 'units: us' or 'units: si' at the top",
                         node->text, dim->example);
    case GW_QUANTITY_WRONG_UNIT:
        return gw_format(load->arena, "'%s' wants %s %s such as %s; '%s' measures something else", key, a, dim->name,
                         dim->example, rest);
    case GW_QUANTITY_UNKNOWN_UNIT:
        return unit_message(load, field, node, rest);
    case GW_QUANTITY_TRAILING:
        return gw_format(load->arena, "'%s' after the value is not understood; write for example %s", rest,
                         dim->example);
    case GW_QUANTITY_RANGE:
        return gw_format(load->arena, "'%s' is too large a number", node->text);
    case GW_QUANTITY_OK:
        break;
    }
    return "";
}

static void quantity_fault(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                           enum gw_quantity_fault fault, size_t at)
{
    static const char *const codes[] = {
        [GW_QUANTITY_NOT_A_NUMBER] = "wrong_type",    [GW_QUANTITY_NO_UNIT] = "no_unit",
        [GW_QUANTITY_WRONG_UNIT] = "wrong_dimension", [GW_QUANTITY_UNKNOWN_UNIT] = "unknown_unit",
        [GW_QUANTITY_TRAILING] = "bad_value",         [GW_QUANTITY_RANGE] = "bad_value"};
    struct gw_node place = *node;
    bool at_rest =
        fault == GW_QUANTITY_WRONG_UNIT || fault == GW_QUANTITY_UNKNOWN_UNIT || fault == GW_QUANTITY_TRAILING;
    if (at_rest && !node->quoted) place.column += (unsigned)gw_text_width(gw_strndup(load->arena, node->text, at));
    say(load, codes[fault], field, &place, quantity_message(load, field, node, fault, node->text + at));
}

static bool check_range(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, double value)
{
    bool limited = field->least < field->greatest;
    if (limited && (value < field->least || value > field->greatest)) {
        say(load, "bad_value", field, node,
            gw_format(load->arena, "'%s' is %s; it must lie between %s and %s", label(field, node), node->text,
                      show_limit(load, field, field->least, 4), show_limit(load, field, field->greatest, 4)));
        return false;
    }
    bool doubted = field->likely_least < field->likely_most;
    if (doubted && (value < field->likely_least || value > field->likely_most))
        gw_diag_node(load->diags, GW_WARNING, "implausible", field->key, node,
                     "'%s' is %s; usual values lie between %s and %s", label(field, node), node->text,
                     show_limit(load, field, field->likely_least, 3), show_limit(load, field, field->likely_most, 3));
    return true;
}

static bool load_number(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, double *out)
{
    double value;
    size_t at;
    if (node->kind != GW_SCALAR || !node->length) /* the wording costs an allocation: only when it is needed */
        return want_scalar(load, field, node,
                           gw_format(load->arena, "%s %s such as %s", article(gw_dim_info(field->dim)->name),
                                     gw_dim_info(field->dim)->name, gw_dim_info(field->dim)->example));
    if (field->keyword && strcmp(node->text, field->keyword) == 0) {
        *out = GW_ABSENT;
        *(bool *)(void *)((char *)out - field->offset + field->keyword_at) = true;
        return true;
    }
    enum gw_quantity_fault fault =
        gw_quantity_read(load->units, field->dim, load->preset, node->text, node->length, &value, &at);
    if (fault != GW_QUANTITY_OK) {
        quantity_fault(load, field, node, fault, at);
        return false;
    }
    if (field->flags & GW_MAGNITUDE) value = fabs(value);
    if (!check_range(load, field, node, value)) return false;
    *out = value;
    return true;
}

static bool load_integer(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, int *out)
{
    double value;
    if (!want_scalar(load, field, node, "a whole number")) return false;
    bool whole = gw_read_number(node->text, node->length, &value) == node->length && fabs(value) < 1e9 &&
                 !(fabs(value - floor(value)) > 0);
    if (!whole) {
        say(load, "wrong_type", field, node,
            gw_format(load->arena, "'%s' wants a whole number, not '%s'", label(field, node), node->text));
        return false;
    }
    if (!check_range(load, field, node, value)) return false;
    *out = (int)value;
    return true;
}

static bool load_bool(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, enum gw_bool *out)
{
    if (!want_scalar(load, field, node, "true or false")) return false;
    bool yes = strcmp(node->text, "true") == 0 || strcmp(node->text, "yes") == 0;
    bool no = strcmp(node->text, "false") == 0 || strcmp(node->text, "no") == 0;
    if (yes || no) {
        *out = yes ? GW_YES : GW_NO;
        return true;
    }
    say(load, "wrong_type", field, node,
        gw_format(load->arena, "'%s' wants true or false, not '%s'", field->key, node->text));
    return false;
}

static bool load_choice(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, int *out)
{
    struct gw_text words;
    struct gw_nearest nearest;
    bool scalar = node->kind == GW_SCALAR;
    gw_text_init(&words, load->arena);
    gw_nearest_start(&nearest, scalar ? node->text : "");
    for (const struct gw_choice *c = field->choices; c->name; c++) {
        bool same = scalar && strcmp(node->text, c->name) == 0;
        if (same) *out = c->value;
        if (same) return true;
        gw_text_addf(&words, "%s%s", words.length ? " | " : "", c->name);
        gw_nearest_offer(&nearest, c->name);
    }
    bool several = field->choices[1].name;
    if (!want_scalar(load, field, node, gw_format(load->arena, "%s%s", several ? "one of " : "", words.at)))
        return false;
    const char *question = gw_nearest_question(load->arena, &nearest), *key = label(field, node);
    say(load, "bad_value", field, node,
        several ? gw_format(load->arena, "'%s' is not a value of '%s': %s%s", node->text, key, words.at, question)
                : gw_format(load->arena, "'%s' wants %s, not '%s'%s", key, words.at, node->text, question));
    return false;
}

static bool load_text(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char **out)
{
    if (!want_scalar(load, field, node, "a text")) return false;
    *out = node->text;
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
        say(load, "wrong_type", field, node,
            gw_format(load->arena, "'%s' wants %s, not %s%s", field->key,
                      wanted == GW_MAPPING ? "a mapping of names" : "a list",
                      node->kind == GW_SCALAR && !node->length ? "nothing" : kind_word(node),
                      word ? gw_format(load->arena, ": write [%s]", node->text) : ""));
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

/* Returns the field that was meant, perhaps. */
static const struct gw_field *unknown_key(struct gw_load *load, const struct gw_record *record,
                                          const struct gw_node *child)
{
    const char *nearest = gw_record_nearest(record, child->key);
    gw_diag_key(load->diags, GW_ERROR, "unknown_key", child, "'%s' is not a key of %s%s%s%s", child->key, record->name,
                nearest ? "; did you mean '" : "", nearest ? nearest : "", nearest ? "'?" : "");
    return nearest ? gw_record_field(record, nearest) : NULL;
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
            field = unknown_key(load, record, child);
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
        gw_diag_node(load->diags, GW_ERROR, "wrong_type", "", node, "%s wants a mapping of keys%s, not %s",
                     record->name, node->kind == GW_SCALAR && record->list_key ? " or a list" : "",
                     node->kind == GW_SCALAR && !node->length ? "nothing" : kind_word(node));
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
