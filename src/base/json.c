#include "galeward/json.h"

#include <string.h>

void gw_json_init(struct gw_json *json, struct gw_text *out, bool pretty)
{
    *json = (struct gw_json){.out = out, .pretty = pretty, .shown = GW_SI, .derived = GW_SI};
}

static void line(struct gw_json *json)
{
    if (!json->pretty) return;
    gw_text_add(json->out, "\n");
    gw_text_repeat(json->out, ' ', json->depth * (size_t)2);
}

static bool after_key(const struct gw_json *json)
{
    return json->out->length && json->out->at[json->out->length - 1] == ':';
}

static void before(struct gw_json *json)
{
    if (after_key(json)) {
        if (json->pretty) gw_text_add(json->out, " ");
        return;
    }
    if (json->pending) gw_text_add(json->out, ",");
    if (json->depth) line(json);
}

void gw_json_open(struct gw_json *json, char bracket)
{
    before(json);
    gw_text_bytes(json->out, &bracket, 1);
    json->depth++;
    json->pending = false;
}

void gw_json_close(struct gw_json *json, char bracket)
{
    json->depth--;
    if (json->pending) line(json);
    gw_text_bytes(json->out, &bracket, 1);
    json->pending = true;
}

/* A character that a terminal would obey, or a byte that is no UTF-8. */
static void escaped(struct gw_text *out, const char *text, size_t length)
{
    unsigned long c = 0xFFFD;
    if (*text == '\n') gw_text_add(out, "\\n");
    else if (gw_utf8_read(text, length, &c)) gw_text_addf(out, "\\u%04lx", c);
    else gw_text_add(out, "\\ufffd");
}

static void quoted(struct gw_text *out, const char *text)
{
    gw_text_add(out, "\"");
    for (size_t length = strlen(text); length;) {
        size_t unsafe, span = gw_safe_span(text, length, &unsafe), plain = 0;
        while (plain < span && text[plain] != '"' && text[plain] != '\\') plain++;
        bool mark = plain < span;
        size_t taken = mark ? plain + 1 : span + unsafe;
        gw_text_bytes(out, text, mark ? plain : span);
        if (mark) gw_text_addf(out, "\\%c", text[plain]);
        else if (unsafe) escaped(out, text + span, unsafe);
        text += taken;
        length -= taken;
    }
    gw_text_add(out, "\"");
}

void gw_json_key(struct gw_json *json, const char *key)
{
    before(json);
    quoted(json->out, key);
    gw_text_add(json->out, ":");
    json->pending = true;
}

void gw_json_text(struct gw_json *json, const char *text)
{
    if (!text) {
        gw_json_null(json);
        return;
    }
    before(json);
    quoted(json->out, text);
    json->pending = true;
}

void gw_json_number(struct gw_json *json, double value)
{
    if (!isfinite(value)) {
        gw_json_null(json);
        return;
    }
    before(json);
    gw_text_number(json->out, value, 12);
    json->pending = true;
}

void gw_json_integer(struct gw_json *json, long long value)
{
    before(json);
    gw_text_addf(json->out, "%lld", value);
    json->pending = true;
}

static void bare_word(struct gw_json *json, const char *word)
{
    before(json);
    gw_text_add(json->out, word);
    json->pending = true;
}

void gw_json_bool(struct gw_json *json, bool value) { bare_word(json, value ? "true" : "false"); }

void gw_json_null(struct gw_json *json) { bare_word(json, "null"); }

static void write_key(struct gw_json *json, const struct gw_field *field)
{
    before(json);
    gw_text_add(json->out, "\"");
    gw_field_json_key(json->out, field);
    gw_text_add(json->out, "\":");
    json->pending = true;
}

static void write_struct(struct gw_json *json, const struct gw_record *record, const void *value, bool skip_absent)
{
    gw_json_open(json, '{');
    gw_json_record(json, record, value, skip_absent);
    gw_json_close(json, '}');
}

static void write_value(struct gw_json *json, const struct gw_either *value)
{
    if (value->words) gw_json_text(json, value->words);
    else gw_json_number(json, value->number);
}

/* One value that is no record; a list of such values holds them one after the other. */
static void write_plain(struct gw_json *json, const struct gw_field *field, const void *at)
{
    switch (field->type) {
    case GW_T_NUMBER:
        gw_json_number(json, *(const double *)at);
        break;
    case GW_T_FIGURE:
        gw_json_number(json, field->figure(at, json->derived));
        break;
    case GW_T_INTEGER:
        gw_json_integer(json, *(const int *)at);
        break;
    case GW_T_COUNT:
        gw_json_integer(json, *(const long *)at);
        break;
    case GW_T_BOOL:
        gw_json_bool(json, *(const enum gw_bool *)at == GW_YES);
        break;
    case GW_T_YES_NO:
        gw_json_bool(json, *(const bool *)at);
        break;
    case GW_T_EITHER:
        write_value(json, at);
        break;
    default:
        gw_json_text(json, gw_field_words(json->out->arena, field, at,
                                          field->type == GW_T_MESSAGE ? json->shown : json->derived));
        break;
    }
}

static void write_one(struct gw_json *json, const struct gw_field *field, const void *at, bool skip_absent)
{
    const struct gw_described *described = at;
    if (field->type == GW_T_RECORD) write_struct(json, field->record, at, skip_absent);
    else if (field->type == GW_T_DESCRIBED) write_struct(json, described->record, described->value, skip_absent);
    else write_plain(json, field, at);
}

static size_t item_size(const struct gw_field *field)
{
    if (field->type == GW_T_DESCRIBED) return sizeof(struct gw_described);
    if (field->type == GW_T_NUMBER) return sizeof(double);
    return field->type == GW_T_TEXT ? sizeof(char *) : sizeof(int);
}

static void write_many(struct gw_json *json, const struct gw_field *field, const struct gw_many *many, bool skip_absent)
{
    gw_json_open(json, '[');
    for (size_t i = 0; many && i < many->n; i++) {
        bool records = field->type == GW_T_RECORD;
        const void *item = records ? gw_field_item(field, many, i) : (const char *)many->items + i * item_size(field);
        write_one(json, field, item, skip_absent);
    }
    gw_json_close(json, ']');
}

void gw_json_record(struct gw_json *json, const struct gw_record *record, const void *value, bool skip_absent)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, value);
        if (!gw_field_is_written(field)) continue;
        if (field->flags & GW_FLAT) {
            gw_json_record(json, field->record, gw_field_struct(field, at), skip_absent);
            continue;
        }
        bool absent = gw_field_is_absent(field, at);
        if (absent && skip_absent) continue;
        write_key(json, field);
        if (field->flags & GW_MANY) write_many(json, field, at, skip_absent);
        else if (absent) gw_json_null(json);
        else write_one(json, field, field->type == GW_T_RECORD ? gw_field_struct(field, at) : at, skip_absent);
    }
}

void gw_json_result(struct gw_json *json)
{
    gw_json_open(json, '{');
    gw_json_key(json, "galeward");
    gw_json_integer(json, 1);
    gw_json_key(json, "version");
    gw_json_text(json, GW_VERSION);
}

/* As JSON writes numbers: -1.5e+3; no leading zeros, no bare point. */
static bool is_json_number(const char *text)
{
    static const char digits[] = "0123456789";
    text += *text == '-';
    size_t whole = strspn(text, digits);
    if (!whole || (whole > 1 && *text == '0')) return false;
    text += whole;
    if (*text == '.') {
        size_t decimals = strspn(text + 1, digits);
        if (!decimals) return false;
        text += 1 + decimals;
    }
    if (*text != 'e' && *text != 'E') return !*text;
    text++;
    text += *text == '-' || *text == '+';
    size_t exponent = strspn(text, digits);
    return exponent && !text[exponent];
}

/* What stood there without quotes and means something to JSON comes back to the letter; all else as text. */
static void write_scalar(struct gw_json *json, const struct gw_node *node)
{
    const char *text = node->text;
    bool is_null = !*text || strcmp(text, "null") == 0 || strcmp(text, "~") == 0;
    bool is_word = strcmp(text, "true") == 0 || strcmp(text, "false") == 0 || is_json_number(text);
    if (node->quoted || !(is_null || is_word)) gw_json_text(json, text);
    else bare_word(json, is_null ? "null" : text);
}

void gw_json_node(struct gw_json *json, const struct gw_node *node)
{
    if (node->kind == GW_SCALAR) {
        write_scalar(json, node);
        return;
    }
    bool mapping = node->kind == GW_MAPPING;
    gw_json_open(json, mapping ? '{' : '[');
    for (const struct gw_node *child = node->first; child; child = child->next) {
        if (mapping) gw_json_key(json, child->key);
        gw_json_node(json, child);
    }
    gw_json_close(json, mapping ? '}' : ']');
}
