/* Sources, nodes and diagnostics. The YAML and CSV readers are in yaml.c and csv.c. */
#include "galeward/document.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

void gw_diags_init(struct gw_diags *diags, struct gw_arena *arena) { *diags = (struct gw_diags){.arena = arena}; }

static bool said_before(const struct gw_diags *diags, const struct gw_diag *diag)
{
    for (size_t i = 0; i < diags->n; i++) {
        const struct gw_diag *d = &diags->items[i];
        if (d->line == diag->line && d->column == diag->column && d->source == diag->source &&
            strcmp(d->message, diag->message) == 0)
            return true;
    }
    return false;
}

static void place(struct gw_diags *diags, const struct gw_diag *diag)
{
    if (said_before(diags, diag)) return;
    if (diag->severity == GW_ERROR) diags->errors++;
    diags->items = gw_grow(diags->arena, diags->items, diags->n, &diags->capacity, sizeof *diags->items);
    diags->items[diags->n] = *diag;
    diags->items[diags->n++].message = gw_strdup(diags->arena, diag->message);
}

void gw_diag_add(struct gw_diags *diags, enum gw_severity severity, const char *code, const char *key,
                 const struct gw_source *source, unsigned line, unsigned column, const char *format, ...)
{
    if (diags->n == GW_DIAG_LIMIT) {
        diags->errors += severity == GW_ERROR;
        diags->dropped++;
        return;
    }
    char message[512]; /* what is longer is cut, at worst in a character, which printing then shows */
    va_list args;
    va_start(args, format);
    vsnprintf(message, sizeof message, format, args);
    va_end(args);
    for (char *c = message; *c; c++)
        if ((unsigned char)*c < ' ') *c = ' ';
    const struct gw_diag diag = {severity, code, key ? key : "", message, source, line, column};
    place(diags, &diag);
}

static size_t rank_of(const struct gw_diags *diags, const struct gw_source *source)
{
    size_t i = 0;
    while (i < diags->n && diags->items[i].source != source) i++;
    return i;
}

static bool comes_before(const struct gw_diag *a, const struct gw_diag *b)
{
    return a->line != b->line ? a->line < b->line : a->column < b->column;
}

void gw_diags_sort(struct gw_diags *diags)
{
    struct gw_diag *sorted = gw_alloc(diags->arena, diags->n + 1, sizeof *sorted);
    size_t n = 0;
    for (size_t first = 0; first < diags->n; first++) {
        if (rank_of(diags, diags->items[first].source) != first) continue;
        size_t start = n;
        for (size_t i = first; i < diags->n; i++) {
            if (diags->items[i].source != diags->items[first].source) continue;
            size_t at = n++;
            for (; at > start && comes_before(&diags->items[i], &sorted[at - 1]); at--) sorted[at] = sorted[at - 1];
            sorted[at] = diags->items[i];
        }
    }
    diags->items = sorted;
    diags->capacity = diags->n + 1;
}

size_t gw_source_mark(const struct gw_source *source)
{
    return source->length >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
}

char gw_source_line_end(const struct gw_source *source)
{
    return source->length && memchr(source->text, '\n', source->length) ? '\n' : '\r';
}

static const char *line_start(const struct gw_source *source, unsigned line)
{
    const char *at = source->text + gw_source_mark(source), *end = source->text + source->length;
    const char line_end = gw_source_line_end(source);
    for (unsigned n = 1; n < line; n++) {
        at = memchr(at, line_end, (size_t)(end - at));
        if (!at) return NULL;
        at++;
    }
    return at;
}

enum { SHOWN_COLUMNS = 160 };

static void print_source_line(struct gw_text *out, const struct gw_diag *diag)
{
    const char *start = line_start(diag->source, diag->line);
    const char *end = diag->source->text + diag->source->length;
    if (!start || start >= end || diag->column > SHOWN_COLUMNS) return;
    size_t length = strcspn(start, "\r\n");
    if (length > (size_t)(end - start)) length = (size_t)(end - start);
    gw_text_add(out, "    ");
    size_t columns = 0, shown = 0;
    for (; shown < length; shown++) {
        columns += ((unsigned char)start[shown] & 0xC0) != 0x80;
        if (columns > SHOWN_COLUMNS) break;
    }
    gw_text_add_safe(out, start, shown);
    gw_text_add(out, "\n    ");
    gw_text_repeat(out, ' ', diag->column - 1);
    gw_text_add(out, "^\n");
}

void gw_diag_print(struct gw_text *out, const struct gw_diag *diag)
{
    static const char *const words[] = {[GW_ERROR] = "error", [GW_WARNING] = "warning", [GW_NOTE] = "note"};
    const char *word = words[diag->severity];
    const char *name = diag->source ? diag->source->name : "galeward";
    gw_text_add_safe(out, name, strlen(name));
    if (diag->line) gw_text_addf(out, ":%u:%u", diag->line, diag->column);
    gw_text_addf(out, ": %s: ", word);
    gw_text_add_safe(out, diag->message, strlen(diag->message));
    gw_text_add(out, "\n");
    if (diag->line && diag->source) print_source_line(out, diag);
}

const struct gw_source *gw_source_from(struct gw_arena *arena, const char *name, const char *text, size_t length)
{
    struct gw_source *source = gw_alloc(arena, 1, sizeof *source);
    *source = (struct gw_source){.name = gw_strdup(arena, name), .text = text, .length = length};
    return source;
}

enum { MEBIBYTE = 1024 * 1024 };

/* The bytes of a file as they come. Nothing here may jump: the host has the file open. */
struct sink {
    struct gw_arena *arena;
    char *text;
    size_t length, capacity, limit;
    bool no_memory, too_large;
};

static bool take(void *to, const char *bytes, size_t n)
{
    struct sink *sink = to;
    if (n > sink->limit - sink->length) {
        sink->too_large = true;
        return false;
    }
    if (sink->length + n >= sink->capacity) {
        size_t larger = 2 * sink->capacity > sink->length + n ? 2 * sink->capacity : sink->length + n + 1;
        char *moved = gw_alloc_or_null(sink->arena, larger);
        sink->no_memory = !moved;
        if (!moved) return false;
        if (sink->length) memcpy(moved, sink->text, sink->length);
        sink->text = moved;
        sink->capacity = larger;
    }
    memcpy(sink->text + sink->length, bytes, n);
    sink->length += n;
    sink->text[sink->length] = '\0';
    return true;
}

const struct gw_source *gw_source_read(struct gw_arena *arena, const char *path, struct gw_diags *diags)
{
    return gw_source_read_most(arena, path, GW_FILE_LIMIT / MEBIBYTE, diags);
}

const struct gw_source *gw_source_read_most(struct gw_arena *arena, const char *path, unsigned limit,
                                            struct gw_diags *diags)
{
    struct gw_source *source = gw_alloc(arena, 1, sizeof *source);
    struct sink sink = {.arena = arena, .limit = (size_t)limit * MEBIBYTE};
    source->name = gw_strdup(arena, strcmp(path, "-") == 0 ? "<stdin>" : path);
    struct gw_read read = arena->host->read(arena->host->user, path, take, &sink);
    if (sink.no_memory) {
        gw_arena_fail(arena);
        read = (struct gw_read){GW_READ_REFUSED, "out of memory"};
    }
    if (sink.too_large) read = (struct gw_read){GW_READ_NO_FILE, gw_format(arena, "larger than %u MiB", limit)};
    if (read.status != GW_READ_WHOLE) {
        gw_diag_add(diags, GW_ERROR, "unreadable", NULL, source, 0, 0, "cannot read the file: %s", read.why);
        diags->refused = diags->refused || read.status == GW_READ_REFUSED;
        return NULL;
    }
    source->text = sink.text ? sink.text : "";
    source->length = sink.length;
    return source;
}

const struct gw_node *gw_node_get(const struct gw_node *mapping, const char *key)
{
    if (!mapping || mapping->kind != GW_MAPPING) return NULL;
    for (const struct gw_node *child = mapping->first; child; child = child->next)
        if (strcmp(child->key, key) == 0) return child;
    return NULL;
}

static struct gw_node *child_named(struct gw_node *mapping, const char *key, size_t length)
{
    for (struct gw_node *child = mapping->first; child; child = child->next)
        if (strlen(child->key) == length && memcmp(child->key, key, length) == 0) return child;
    return NULL;
}

static struct gw_node *append(struct gw_arena *arena, struct gw_node *mapping, const char *key, size_t length)
{
    struct gw_node **end = &mapping->first;
    while (*end) end = &(*end)->next;
    *end = gw_alloc(arena, 1, sizeof **end);
    **end = (struct gw_node){.kind = GW_MAPPING,
                             .line = mapping->line,
                             .column = mapping->column,
                             .source = mapping->source,
                             .key = gw_strndup(arena, key, length),
                             .key_line = mapping->line,
                             .key_column = mapping->column};
    mapping->count++;
    return *end;
}

bool gw_node_put(struct gw_arena *arena, struct gw_node *node, const char *value)
{
    struct gw_node kept = *node;
    if (value[0] == '{' || value[0] == '[') {
        struct gw_diags diags;
        gw_diags_init(&diags, arena);
        const struct gw_source *source = gw_source_from(arena, kept.key, value, strlen(value));
        struct gw_node *parsed = gw_yaml_read(arena, source, &diags);
        if (!parsed) return false;
        *node = *parsed;
    } else {
        *node = (struct gw_node){.kind = GW_SCALAR,
                                 .line = kept.line,
                                 .column = kept.column,
                                 .source = kept.source,
                                 .text = gw_strdup(arena, value),
                                 .length = strlen(value)};
    }
    node->next = kept.next;
    node->key = kept.key;
    node->key_line = kept.key_line;
    node->key_column = kept.key_column;
    return true;
}

struct gw_node *gw_node_child(struct gw_arena *arena, struct gw_node *mapping, const char *key)
{
    struct gw_node *child = child_named(mapping, key, strlen(key));
    return child ? child : append(arena, mapping, key, strlen(key));
}

bool gw_node_set(struct gw_arena *arena, struct gw_node *root, const char *path, const char *value)
{
    if (root->kind == GW_SEQUENCE) {
        bool all = true;
        for (struct gw_node *item = root->first; item; item = item->next)
            all = gw_node_set(arena, item, path, value) && all;
        return all;
    }
    if (root->kind != GW_MAPPING) return false;
    size_t length = strcspn(path, ".");
    struct gw_node *child = child_named(root, path, length);
    if (!child) child = append(arena, root, path, length);
    if (path[length] == '.') return gw_node_set(arena, child, path + length + 1, value);
    return gw_node_put(arena, child, value);
}
