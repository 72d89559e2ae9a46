/* libyaml's events to nodes. The checks that libyaml leaves out are here. */
#include "galeward/document.h"

#include <string.h>
#include <yaml.h>

struct anchor {
    const char *name;
    struct gw_node *node; /* NULL while it is still open: an alias to it would be a cycle */
    bool has_alias;
    struct anchor *next;
};

/* All that libyaml holds is here, so that it is given back when memory runs out in the middle. */
struct reader {
    yaml_parser_t parser;
    yaml_event_t events[GW_DEPTH_LIMIT + 4]; /* of the nodes being read, outermost first */
    size_t n_events;
    struct gw_arena *arena;
    const struct gw_source *source;
    struct gw_diags *diags;
    struct anchor *anchors;
    size_t aliases; /* met so far */
    struct gw_node *root;
    bool failed, no_memory;
};

static void fail(struct reader *r, const char *code, yaml_mark_t at, const char *message)
{
    if (!r->failed)
        gw_diag_add(r->diags, GW_ERROR, code, NULL, r->source, (unsigned)at.line + 1, (unsigned)at.column + 1, "%s",
                    message);
    r->failed = true;
}

/* The first byte that is not part of well-formed UTF-8, or the length. */
static size_t utf8_span(const char *text, size_t length)
{
    size_t i = 0, n;
    unsigned long character;
    while ((n = gw_utf8_read(text + i, length - i, &character))) i += n;
    return i;
}

static yaml_mark_t mark_of(const struct gw_source *source, size_t offset)
{
    yaml_mark_t mark = {0};
    const char line_end = gw_source_line_end(source);
    for (size_t i = gw_source_mark(source); i < offset; i++) {
        if (source->text[i] == line_end) {
            mark.line++;
            mark.column = 0;
        } else {
            mark.column += ((unsigned char)source->text[i] & 0xC0) != 0x80;
        }
    }
    return mark;
}

static bool is_utf16(const struct gw_source *s)
{
    if (s->length < 2) return false;
    bool marked = memcmp(s->text, "\xFF\xFE", 2) == 0 || memcmp(s->text, "\xFE\xFF", 2) == 0;
    return marked || (s->text[0] == '\0') != (s->text[1] == '\0');
}

/* The second byte order mark of two files that were joined, or the text's end. */
static size_t stray_mark(const struct gw_source *s)
{
    for (size_t i = 1; i + 2 < s->length; i++) {
        const char *at = memchr(s->text + i, 0xEF, s->length - i - 2);
        if (!at) break;
        i = (size_t)(at - s->text);
        if (memcmp(at, "\xEF\xBB\xBF", 3) == 0) return i;
    }
    return s->length;
}

static bool check_encoding(struct reader *r)
{
    const struct gw_source *s = r->source;
    if (is_utf16(s)) {
        fail(r, "encoding", (yaml_mark_t){0}, "the file is UTF-16: save it as UTF-8 (a sheet as 'CSV UTF-8')");
        return false;
    }
    size_t good = utf8_span(s->text, s->length), stray = stray_mark(s);
    if (good < s->length)
        fail(r, "encoding", mark_of(s, good), "not UTF-8 text: save the file as UTF-8 (a sheet as 'CSV UTF-8')");
    else if (stray < s->length)
        fail(r, "encoding", mark_of(s, stray),
             "a byte order mark (U+FEFF) inside the text, as where two files were joined: take it out");
    return !r->failed;
}

/* What libyaml says, in the words of someone who writes project files. */
static const struct wording {
    const char *problem, *ours;
} WORDINGS[] = {
    {"did not find expected ',' or ']'", "expected ',' or ']'"},
    {"did not find expected ',' or '}'", "expected ',' or '}'"},
    {"did not find expected key", "expected a key here: check the indentation, quotes and brackets before this"},
    {"did not find expected '-' indicator",
     "expected another '- ' item here, or the indentation of the keys of the item above"},
    {"mapping values are not allowed in this context",
     "a ':' where none can stand: check the indentation, or put the text in quotes"},
    {"could not find expected ':'", "a key without ':'"},
    {"found unexpected end of stream", "a quote that is never closed"},
    {"found character that cannot start any token", "no value can start with this character: put the text in quotes"},
    {"block sequence entries are not allowed in this context", "a '- ' item cannot start here: check the indentation"},
    {"did not find expected node content", "a value is missing here"},
    {"did not find expected <document start>", "text after the end of the document"},
    {"found unknown escape character", "a backslash in double quotes: write the text in single quotes"},
    {"did not find expected hexdecimal number", "a backslash in double quotes: write the text in single quotes"},
};

/* Where the list, mapping or quote began, if that is another line than the one that is printed. */
static const char *begun(struct reader *r, bool at_context)
{
    const yaml_parser_t *p = &r->parser;
    const char *thing = !p->context                           ? NULL
                        : strstr(p->context, "flow sequence") ? "'['"
                        : strstr(p->context, "flow mapping")  ? "'{'"
                                                              : NULL;
    if (!thing || at_context || p->context_mark.line == p->problem_mark.line) return "";
    return gw_format(r->arena, "; the %s stands on line %zu", thing, p->context_mark.line + 1);
}

/* libyaml's mark counts characters. */
static const char *place_of(const struct gw_source *source, yaml_mark_t at)
{
    const char *c = source->text + gw_source_mark(source), *end = source->text + source->length;
    const char line_end = gw_source_line_end(source);
    for (size_t line = 0; line < at.line && c < end; c++) line += *c == line_end;
    for (size_t column = 0; column < at.column && c < end; column++)
        for (c++; c < end && ((unsigned char)*c & 0xC0) == 0x80;) c++;
    return c;
}

static char character_at(const struct gw_source *source, yaml_mark_t at)
{
    const char *c = place_of(source, at);
    return c < source->text + source->length ? *c : '\0';
}

/* "exposure:B" in the line where a key was not found: NULL, or what to write. */
static const char *unspaced_key(struct reader *r, yaml_mark_t at)
{
    const char *from = place_of(r->source, at), *end = r->source->text + r->source->length;
    size_t key = 0, line = 0;
    while (from + line < end && !strchr("\r\n", from[line])) line++;
    while (key < line && from[key] != ':') key++;
    if (!key || key + 1 >= line || memchr(from, ' ', key)) return NULL;
    return gw_format(r->arena, "not valid YAML: no space after the ':'; write %.*s: %.*s", (int)key, from,
                     (int)(line - key - 1), from + key + 1);
}

static const char *syntax_message(struct reader *r, bool at_context)
{
    const yaml_parser_t *p = &r->parser;
    if (p->error == YAML_PARSER_ERROR && p->problem_mark.index && !character_at(r->source, p->problem_mark))
        return gw_format(r->arena, "not valid YAML: the file ends inside a bracket that is never closed%s",
                         begun(r, at_context));
    const char *problem = p->problem ? p->problem : "unknown problem";
    const char *unspaced =
        strcmp(problem, "could not find expected ':'") == 0 ? unspaced_key(r, p->context_mark) : NULL;
    if (unspaced) return unspaced;
    for (size_t i = 0; i < sizeof WORDINGS / sizeof *WORDINGS; i++)
        if (strcmp(problem, WORDINGS[i].problem) == 0)
            return gw_format(r->arena, "not valid YAML: %s%s", WORDINGS[i].ours, begun(r, at_context));
    return gw_format(r->arena, "not valid YAML: %s%s%s", problem, p->context ? ", " : "", p->context ? p->context : "");
}

static void syntax_error(struct reader *r)
{
    yaml_parser_t *p = &r->parser;
    if (p->error == YAML_MEMORY_ERROR) {
        r->failed = r->no_memory = true;
        return;
    }
    bool at_context = p->context && (strcmp(p->problem, "found unexpected end of stream") == 0 ||
                                     strcmp(p->problem, "could not find expected ':'") == 0);
    yaml_mark_t at = at_context ? p->context_mark : p->problem_mark;
    if (p->error == YAML_READER_ERROR)
        at = mark_of(r->source,
                     p->problem_offset < r->source->length ? p->problem_offset + gw_source_mark(r->source) : 0);
    if (p->error == YAML_SCANNER_ERROR && character_at(r->source, at) == '\t')
        fail(r, "syntax", at, "a tab: indent with spaces");
    else fail(r, "syntax", at, syntax_message(r, at_context));
}

/* NULL after a fault; else to be dropped, the last one first. */
static yaml_event_t *next_event(struct reader *r)
{
    yaml_event_t *event = &r->events[r->n_events];
    if (r->failed) return NULL;
    if (yaml_parser_parse(&r->parser, event)) {
        r->n_events++;
        return event;
    }
    syntax_error(r);
    return NULL;
}

static void drop_event(struct reader *r) { yaml_event_delete(&r->events[--r->n_events]); }

static struct gw_node *new_node(struct reader *r, enum gw_node_kind kind, const yaml_event_t *event)
{
    struct gw_node *node = gw_alloc(r->arena, 1, sizeof *node);
    *node = (struct gw_node){.kind = kind,
                             .line = (unsigned)event->start_mark.line + 1,
                             .column = (unsigned)event->start_mark.column + 1,
                             .source = r->source};
    return node;
}

static struct anchor *open_anchor(struct reader *r, const yaml_char_t *name)
{
    if (!name) return NULL;
    struct anchor *anchor = gw_alloc(r->arena, 1, sizeof *anchor);
    *anchor = (struct anchor){.name = gw_strdup(r->arena, (const char *)name), .next = r->anchors};
    r->anchors = anchor;
    return anchor;
}

static struct gw_node *follow_alias(struct reader *r, const yaml_event_t *event)
{
    const char *name = (const char *)event->data.alias.anchor;
    for (const struct anchor *a = r->anchors; a; a = a->next) {
        if (strcmp(a->name, name) != 0) continue;
        if (!a->node || a->has_alias) {
            fail(r, "alias", event->start_mark,
                 a->node ? "an alias to something that holds an alias: write it out"
                         : "an alias to the thing it stands in");
            return NULL;
        }
        r->aliases++;
        struct gw_node *copy = gw_alloc(r->arena, 1, sizeof *copy);
        *copy = *a->node;
        copy->next = NULL;
        return copy;
    }
    fail(r, "alias", event->start_mark,
         gw_format(r->arena, "there is no '&%s' before this '*%s'; for a text write it in quotes", name, name));
    return NULL;
}

static struct gw_node *read_node(struct reader *r, const yaml_event_t *event, unsigned depth);

static struct gw_node *read_scalar(struct reader *r, const yaml_event_t *event)
{
    struct gw_node *node = new_node(r, GW_SCALAR, event);
    node->text = gw_strndup(r->arena, (const char *)event->data.scalar.value, event->data.scalar.length);
    node->length = event->data.scalar.length;
    node->quoted = event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE;
    if (memchr(node->text, '\0', node->length)) fail(r, "syntax", event->start_mark, "a zero byte in the text");
    return node;
}

static void read_items(struct reader *r, struct gw_node *sequence, unsigned depth)
{
    struct gw_node **end = &sequence->first;
    const yaml_event_t *event;
    while ((event = next_event(r))) {
        bool done = event->type == YAML_SEQUENCE_END_EVENT;
        struct gw_node *item = done ? NULL : read_node(r, event, depth);
        drop_event(r);
        if (!item) return;
        *end = item;
        end = &item->next;
        sequence->count++;
    }
}

/* FNV-1a; a mapping of many keys must not cost the square of their number. */
static size_t hash_key(const char *key)
{
    size_t h = 1469598103934665603u;
    for (; *key; key++) h = (h ^ (unsigned char)*key) * 1099511628211u;
    return h;
}

static const struct gw_node **key_table(struct reader *r, const struct gw_node *mapping, size_t *size)
{
    *size = 16;
    while (*size < mapping->count * 2) *size *= 2;
    return gw_alloc(r->arena, *size, sizeof(const struct gw_node *));
}

/* The first of two like keys stays. */
static void check_duplicates(struct reader *r, struct gw_node *mapping)
{
    size_t size;
    if (mapping->count < 2) return;
    const struct gw_node **seen = key_table(r, mapping, &size);
    for (struct gw_node **at = &mapping->first; *at;) {
        struct gw_node *n = *at;
        size_t slot = hash_key(n->key) & (size - 1);
        while (seen[slot] && strcmp(seen[slot]->key, n->key) != 0) slot = (slot + 1) & (size - 1);
        if (seen[slot]) {
            gw_diag_key(r->diags, GW_ERROR, "duplicate_key", n, "'%s' is given twice; first on line %u", n->key,
                        seen[slot]->key_line);
            *at = n->next;
            mapping->count--;
        } else {
            seen[slot] = n;
            at = &n->next;
        }
    }
}

static bool read_key(struct reader *r, const yaml_event_t *event, struct gw_node *key)
{
    if (event->type != YAML_SCALAR_EVENT) {
        fail(r, "syntax", event->start_mark, "a key must be a plain word");
        return false;
    }
    *key = *read_scalar(r, event);
    return !r->failed;
}

static void read_members(struct reader *r, struct gw_node *mapping, unsigned depth)
{
    struct gw_node **end = &mapping->first;
    const yaml_event_t *event;
    while ((event = next_event(r))) {
        struct gw_node key;
        bool done = event->type == YAML_MAPPING_END_EVENT;
        bool good = !done && read_key(r, event, &key);
        drop_event(r);
        if (!good || !(event = next_event(r))) break;
        struct gw_node *value = read_node(r, event, depth);
        drop_event(r);
        if (!value) break;
        value->key = key.text;
        value->key_line = key.line;
        value->key_column = key.column;
        *end = value;
        end = &value->next;
        mapping->count++;
    }
    check_duplicates(r, mapping);
}

/* The caller drops the event. */
static struct gw_node *read_node(struct reader *r, const yaml_event_t *event, unsigned depth)
{
    if (event->type == YAML_ALIAS_EVENT) return follow_alias(r, event);
    if (event->type == YAML_SCALAR_EVENT) {
        struct anchor *anchor = open_anchor(r, event->data.scalar.anchor);
        struct gw_node *node = read_scalar(r, event);
        if (anchor) anchor->node = node;
        return r->failed ? NULL : node;
    }
    if (depth == GW_DEPTH_LIMIT) {
        fail(r, "depth", event->start_mark, "nested deeper than 64 levels");
        return NULL;
    }
    bool sequence = event->type == YAML_SEQUENCE_START_EVENT;
    struct anchor *anchor =
        open_anchor(r, sequence ? event->data.sequence_start.anchor : event->data.mapping_start.anchor);
    struct gw_node *node = new_node(r, sequence ? GW_SEQUENCE : GW_MAPPING, event);
    size_t before = r->aliases;
    (sequence ? read_items : read_members)(r, node, depth + 1);
    if (anchor) {
        anchor->node = node;
        anchor->has_alias = r->aliases != before;
    }
    return r->failed ? NULL : node;
}

/* Past stream and document start, to the root; NULL for an empty file. */
static struct gw_node *read_root(struct reader *r)
{
    const yaml_event_t *event;
    struct gw_node *root = NULL;
    while ((event = next_event(r))) {
        yaml_event_type_t type = event->type;
        if (type == YAML_STREAM_END_EVENT) fail(r, "empty", (yaml_mark_t){0}, "the file is empty");
        if (type != YAML_STREAM_START_EVENT && type != YAML_DOCUMENT_START_EVENT) root = read_node(r, event, 0);
        drop_event(r);
        if (root || r->failed) break;
    }
    return root;
}

static void refuse_second_document(struct reader *r)
{
    const yaml_event_t *event;
    while ((event = next_event(r))) {
        bool end = event->type == YAML_STREAM_END_EVENT;
        if (event->type == YAML_DOCUMENT_START_EVENT)
            fail(r, "second_document", event->start_mark, "a second document in the file: one is read");
        drop_event(r);
        if (end) return;
    }
}

static void read_document(void *argument)
{
    struct reader *r = argument;
    r->root = read_root(r);
    if (r->root) refuse_second_document(r);
}

struct gw_node *gw_yaml_draft(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags)
{
    struct reader r = {.arena = arena, .source = source, .diags = diags};
    if (!check_encoding(&r)) return NULL;
    if (yaml_parser_initialize(&r.parser)) {
        yaml_parser_set_encoding(&r.parser, YAML_UTF8_ENCODING);
        const size_t mark = gw_source_mark(source);
        yaml_parser_set_input_string(&r.parser, (const unsigned char *)source->text + mark, source->length - mark);
        if (!gw_guard(arena, read_document, &r)) r.no_memory = true;
        while (r.n_events) drop_event(&r);
        yaml_parser_delete(&r.parser);
    } else {
        r.no_memory = true;
    }
    if (r.no_memory) {
        gw_arena_fail(arena);
        fail(&r, "memory", (yaml_mark_t){0}, "out of memory");
        return NULL;
    }
    return r.failed ? NULL : r.root;
}

struct gw_node *gw_yaml_read(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags)
{
    size_t errors = diags->errors;
    struct gw_node *root = gw_yaml_draft(arena, source, diags);
    return diags->errors == errors ? root : NULL;
}

bool gw_source_check(const struct gw_source *source, struct gw_diags *diags)
{
    struct reader r = {.source = source, .diags = diags};
    if (!check_encoding(&r)) return false;
    const char *zero = memchr(source->text, '\0', source->length);
    if (zero) fail(&r, "encoding", mark_of(source, (size_t)(zero - source->text)), "a zero byte: not a text file");
    return !zero;
}
