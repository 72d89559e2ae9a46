/* JSON by Jansson, which reads strictly what RFC 8259 allows and refuses a key that is given twice. It keeps no places
 * and no digits, so a walk along the text, which it found good, gives every node its own. */
#include "base/json_read.h"

#include "galeward/engine.h"

#include <jansson.h>
#include <string.h>

struct walk {
    const struct gw_source *source;
    size_t at;
    unsigned line, column;
};

/* All that Jansson holds is here, so that it is given back when memory runs out in the middle. */
struct reader {
    struct walk walk;
    struct gw_arena *arena;
    struct gw_diags *diags;
    json_t *root;
    struct gw_node *node;
    bool failed;
    void (*use)(void *context, const struct gw_json_value *root);
    void *context;
};

/* Along the text ----------------------------------------------------------------------------------------------------
 */

static struct walk start_of(const struct gw_source *source)
{
    return (struct walk){.source = source, .at = gw_source_mark(source), .line = 1, .column = 1};
}

static void step(struct walk *w)
{
    const char c = w->source->text[w->at++];
    if (c == '\n') {
        w->line++;
        w->column = 1;
    } else if (w->at == w->source->length || ((unsigned char)w->source->text[w->at] & 0xC0) != 0x80) {
        w->column++;
    }
}

/* '\0' at the end: there is none inside. */
static char here(const struct walk *w) { return w->at < w->source->length ? w->source->text[w->at] : '\0'; }

static void skip_space(struct walk *w)
{
    while (here(w) && strchr(" \t\r\n", here(w))) step(w);
}

static void skip_string(struct walk *w)
{
    for (step(w); here(w) && here(w) != '"'; step(w))
        if (here(w) == '\\' && w->at + 1 < w->source->length) step(w);
    if (here(w)) step(w);
}

/* A string, a bracket, comma or colon, or a word: whatever stands there without a blank. */
static void skip_token(struct walk *w)
{
    if (here(w) == '"') {
        skip_string(w);
        return;
    }
    const bool alone = strchr("{}[],:", here(w)) != NULL;
    step(w);
    while (!alone && here(w) && !strchr("{}[],:\" \t\r\n", here(w))) step(w);
}

/* The beginning of the token in which, or behind which, Jansson stopped. */
static struct walk token_before(const struct gw_source *source, size_t stopped)
{
    struct walk w = start_of(source), begin;
    do {
        skip_space(&w);
        begin = w;
        if (here(&w)) skip_token(&w);
    } while (here(&w) && w.at < stopped);
    return begin;
}

static struct walk place_at(const struct gw_source *source, size_t offset)
{
    struct walk w = start_of(source);
    while (w.at < offset && here(&w)) step(&w);
    return w;
}

/* What is wrong with it ---------------------------------------------------------------------------------------------
 */

/* What Jansson says, by how it begins, in the words of someone who writes cases. `inside`: of the character after the
 * place where it stopped, not of a token. */
static const struct wording {
    const char *problem, *ours;
    bool inside;
} WORDINGS[] = {
    {"'}' expected", "expected ',' or '}'", false},
    {"']' expected", "expected ',' or ']'", false},
    {"string or '}' expected", "expected a key in double quotes", false},
    {"':' expected", "a key without ':'", false},
    {"'[' or '{' expected", "expected '{' or '['", false},
    {"invalid token", "no JSON value: texts stand in double quotes, 0.5 is written with its 0", false},
    {"unexpected token", "a value is missing here", false},
    {"end of file expected", "text after the end of the value", false},
    {"unexpected newline", "a quote that is never closed", true},
    {"control character", "a control character in a text: write it as \\u and four digits", true},
    {"invalid escape", "a backslash that begins no escape: write \\\\ for itself", false},
    {"invalid Unicode", "half of a pair of \\u escapes", false},
};

static void say(struct reader *r, const struct walk *at, const char *code, const char *key, const char *message)
{
    if (!r->failed) gw_diag_add(r->diags, GW_ERROR, code, key, at->source, at->line, at->column, "%s", message);
    r->failed = true;
}

static void say_syntax(struct reader *r, const json_error_t *error, size_t stopped)
{
    const struct gw_source *source = r->walk.source;
    for (size_t i = 0; i < sizeof WORDINGS / sizeof *WORDINGS; i++) {
        const struct wording *w = &WORDINGS[i];
        if (strncmp(error->text, w->problem, strlen(w->problem)) != 0) continue;
        const struct walk at = w->inside ? place_at(source, stopped) : token_before(source, stopped);
        say(r, &at, "syntax", NULL, gw_format(r->arena, "not valid JSON: %s", w->ours));
        return;
    }
    const struct walk at = token_before(source, stopped);
    const char *near = strstr(error->text, " near '"); /* of the text itself: shown with its line, if at all */
    const size_t length = near ? (size_t)(near - error->text) : strlen(error->text);
    say(r, &at, "syntax", NULL, gw_format(r->arena, "not valid JSON: %.*s", (int)length, error->text));
}

static void say_twice(struct reader *r, size_t stopped)
{
    const struct walk at = token_before(r->walk.source, stopped);
    json_t *key = json_loadb(at.source->text + at.at, stopped - at.at, JSON_DECODE_ANY, NULL);
    const char *copied = gw_strdup(r->arena, key ? json_string_value(key) : "");
    json_decref(key);
    say(r, &at, "duplicate_key", copied, gw_format(r->arena, "'%s' is given twice", copied));
}

static void say_end(struct reader *r)
{
    const struct walk end = place_at(r->walk.source, r->walk.source->length), first = start_of(r->walk.source);
    struct walk word = first;
    skip_space(&word);
    if (!here(&word)) say(r, &first, "empty", NULL, "the file is empty");
    say(r, &end, "syntax", NULL, "not valid JSON: it ends inside a bracket or quote that is never closed");
}

static void say_why(struct reader *r, const json_error_t *error)
{
    const struct walk first = start_of(r->walk.source);
    const size_t stopped = first.at + (error->position > 0 ? (size_t)error->position : 0);
    const struct walk at = token_before(r->walk.source, stopped);
    switch (json_error_code(error)) {
    case json_error_out_of_memory:
        gw_arena_fail(r->arena);
        say(r, &first, "memory", NULL, "out of memory");
        break;
    case json_error_stack_overflow:
        say(r, &at, "depth", NULL, "nested deeper than 64 levels");
        break;
    case json_error_duplicate_key:
        say_twice(r, stopped);
        break;
    case json_error_numeric_overflow:
        say(r, &at, "number", NULL, "a number beyond 1.8e308");
        break;
    case json_error_null_character:
    case json_error_null_byte_in_key:
        say(r, &at, "encoding", NULL, "a zero byte (\\u0000) in a text");
        break;
    case json_error_premature_end_of_input:
        say_end(r);
        break;
    default:
        say_syntax(r, error, stopped);
        break;
    }
}

/* Nodes -------------------------------------------------------------------------------------------------------------
 */

static struct gw_node *read_value(struct reader *r, json_t *value, unsigned depth);

static struct gw_node *new_node(struct reader *r, enum gw_node_kind kind)
{
    struct gw_node *node = gw_alloc(r->arena, 1, sizeof *node);
    skip_space(&r->walk);
    *node = (struct gw_node){
        .kind = kind, .source = r->walk.source, .line = r->walk.line, .column = r->walk.column, .text = ""};
    return node;
}

static struct gw_node *read_scalar(struct reader *r, const json_t *value)
{
    struct gw_node *node = new_node(r, GW_SCALAR);
    const size_t from = r->walk.at;
    skip_token(&r->walk);
    node->quoted = json_is_string(value);
    const char *text = node->quoted ? json_string_value(value) : r->walk.source->text + from;
    node->length = node->quoted ? json_string_length(value) : r->walk.at - from;
    node->text = gw_strndup(r->arena, text, node->length);
    return node;
}

static void next_part(struct walk *w)
{
    step(w); /* the bracket or the comma */
    skip_space(w);
}

static struct gw_node *read_items(struct reader *r, json_t *array, unsigned depth)
{
    struct gw_node *node = new_node(r, GW_SEQUENCE), **end = &node->first;
    for (size_t i = 0; i < json_array_size(array) && !r->failed; i++, node->count++) {
        next_part(&r->walk);
        if (!(*end = read_value(r, json_array_get(array, i), depth))) return NULL;
        end = &(*end)->next;
        skip_space(&r->walk);
    }
    if (!node->count) next_part(&r->walk);
    step(&r->walk);
    return node;
}

/* Members come in the order of the text. */
static struct gw_node *read_members(struct reader *r, json_t *object, unsigned depth)
{
    struct gw_node *node = new_node(r, GW_MAPPING), **end = &node->first;
    for (void *i = json_object_iter(object); i; i = json_object_iter_next(object, i), node->count++) {
        next_part(&r->walk);
        const struct walk key = r->walk;
        skip_string(&r->walk);
        skip_space(&r->walk);
        step(&r->walk); /* the colon */
        if (!(*end = read_value(r, json_object_iter_value(i), depth))) return NULL;
        (*end)->key = gw_strdup(r->arena, json_object_iter_key(i));
        (*end)->key_line = key.line;
        (*end)->key_column = key.column;
        end = &(*end)->next;
        skip_space(&r->walk);
    }
    if (!node->count) next_part(&r->walk);
    step(&r->walk);
    return node;
}

static struct gw_node *read_value(struct reader *r, json_t *value, unsigned depth)
{
    if (!json_is_array(value) && !json_is_object(value)) return read_scalar(r, value);
    skip_space(&r->walk);
    if (depth == GW_DEPTH_LIMIT) {
        say(r, &r->walk, "depth", NULL, "nested deeper than 64 levels");
        return NULL;
    }
    return (json_is_array(value) ? read_items : read_members)(r, value, depth + 1);
}

/* What is common ----------------------------------------------------------------------------------------------------
 */

static void read_nodes(void *argument)
{
    struct reader *r = argument;
    r->node = read_value(r, r->root, 0);
}

static void use_values(void *argument)
{
    struct reader *r = argument;
    r->use(r->context, (const struct gw_json_value *)r->root);
}

/* `work` runs with the text in r->root. */
static bool with_root(struct reader *r, void (*work)(void *reader))
{
    const struct gw_source *source = r->walk.source;
    json_error_t error;
    if (!gw_source_check(source, r->diags)) return false;
    /* Not from a device, as Jansson would: the library reads no file by itself. */
    json_object_seed(1);
    const size_t mark = gw_source_mark(source);
    r->root = json_loadb(source->text + mark, source->length - mark, JSON_REJECT_DUPLICATES | JSON_DECODE_INT_AS_REAL,
                         &error);
    if (!r->root) {
        say_why(r, &error);
        return false;
    }
    const bool enough = gw_guard(r->arena, work, r);
    json_decref(r->root);
    if (!enough) gw_arena_fail(r->arena);
    return enough && !r->failed;
}

struct gw_node *gw_json_read(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags)
{
    struct reader r = {.walk = start_of(source), .arena = arena, .diags = diags};
    return with_root(&r, read_nodes) ? r.node : NULL;
}

bool gw_json_use(struct gw_arena *arena, const struct gw_source *source, struct gw_diags *diags,
                 void (*use)(void *context, const struct gw_json_value *root), void *context)
{
    struct reader r = {.walk = start_of(source), .arena = arena, .diags = diags, .use = use, .context = context};
    return with_root(&r, use_values);
}

/* Values ------------------------------------------------------------------------------------------------------------
 */

static const json_t *theirs(const struct gw_json_value *value) { return (const json_t *)value; }

const struct gw_json_value *gw_json_get(const struct gw_json_value *value, const char *key)
{
    return (const struct gw_json_value *)json_object_get(theirs(value), key);
}

const struct gw_json_value *gw_json_item(const struct gw_json_value *value, size_t i)
{
    return (const struct gw_json_value *)json_array_get(theirs(value), i);
}

size_t gw_json_count(const struct gw_json_value *value) { return json_array_size(theirs(value)); }

bool gw_json_is_list(const struct gw_json_value *value) { return json_is_array(theirs(value)); }

const char *gw_json_words(const struct gw_json_value *value)
{
    const json_t *json = theirs(value);
    if (json_is_boolean(json)) return json_is_true(json) ? "true" : "false";
    return json_string_value(json);
}

double gw_json_double(const struct gw_json_value *value)
{
    const json_t *json = theirs(value);
    return json_is_number(json) ? json_number_value(json) : GW_ABSENT;
}
