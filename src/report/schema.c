/* JSON Schemas (draft 2020-12) from the field tables. */
#include "galeward/report.h"

#include "galeward/json.h"
#include "report/results.h"

#include <string.h>

/* A file that people write, or a result that the program writes: keys with units, numbers, nulls. */
enum side { WRITTEN_BY_PEOPLE, WRITTEN_BY_US };

static void member(struct gw_json *json, const char *key, const char *text)
{
    gw_json_key(json, key);
    gw_json_text(json, text);
}

static void flag(struct gw_json *json, const char *key, bool value)
{
    gw_json_key(json, key);
    gw_json_bool(json, value);
}

static void words(struct gw_json *json, const char *key, const char *const *list, size_t n)
{
    gw_json_key(json, key);
    gw_json_open(json, '[');
    for (size_t i = 0; i < n; i++) gw_json_text(json, list[i]);
    gw_json_close(json, ']');
}

static void type_only(struct gw_json *json, const char *type)
{
    gw_json_open(json, '{');
    member(json, "type", type);
    gw_json_close(json, '}');
}

static void limits(struct gw_json *json, const struct gw_field *field)
{
    if (!(field->least < field->greatest)) return;
    gw_json_key(json, "minimum");
    gw_json_number(json, field->least);
    gw_json_key(json, "maximum");
    gw_json_number(json, field->greatest);
}

/* A bare number is in the file's units, so only a ratio's limits can be told. */
static void number(struct gw_json *json, const struct gw_field *field)
{
    gw_json_key(json, "anyOf");
    gw_json_open(json, '[');
    gw_json_open(json, '{');
    member(json, "type", "number");
    if (gw_unit_dim(field->dim) == GW_RATIO && !(field->flags & GW_MAGNITUDE)) limits(json, field);
    gw_json_close(json, '}');
    type_only(json, "string");
    gw_json_close(json, ']');
    const struct gw_dim_info *dim = gw_dim_info(field->dim);
    const char *examples[3] = {dim->example};
    size_t n = 1;
    if (strcmp(dim->example, dim->example_si) != 0) examples[n++] = dim->example_si;
    if (field->keyword) examples[n++] = field->keyword;
    words(json, "examples", examples, n);
}

static void choices(struct gw_json *json, const struct gw_field *field)
{
    gw_json_key(json, "enum");
    gw_json_open(json, '[');
    for (const struct gw_choice *c = field->choices; c->name; c++) {
        double number_word; /* 1 is written bare */
        bool bare = gw_read_number(c->name, strlen(c->name), &number_word) == strlen(c->name);
        if (bare) gw_json_number(json, number_word);
        gw_json_text(json, c->name);
    }
    gw_json_close(json, ']');
}

static void yes_or_no(struct gw_json *json)
{
    gw_json_key(json, "enum");
    gw_json_open(json, '[');
    gw_json_bool(json, true);
    gw_json_bool(json, false);
    gw_json_text(json, "yes");
    gw_json_text(json, "no");
    gw_json_close(json, ']');
}

static void record_members(struct gw_json *json, const struct gw_record *record, const char *named, enum side side);

/* The keywords that describe one value of the field, into an open object. */
static void one_value(struct gw_json *json, const struct gw_field *field, const char *named)
{
    static const char *const scalars[] = {"string", "number", "boolean"};
    switch (field->type) {
    case GW_T_NUMBER:
        number(json, field);
        break;
    case GW_T_INTEGER:
        member(json, "type", "integer");
        limits(json, field);
        break;
    case GW_T_BOOL:
        yes_or_no(json);
        break;
    case GW_T_TEXT:
        words(json, "type", scalars, 3);
        break;
    case GW_T_CHOICE:
        choices(json, field);
        break;
    case GW_T_RECORD:
        record_members(json, field->record, named, WRITTEN_BY_PEOPLE);
        break;
    default: /* of results only */
        break;
    }
}

static const char *first_text(const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].type == GW_T_TEXT) return record->fields[i].key;
    return NULL;
}

static void list_of(struct gw_json *json, const struct gw_field *field)
{
    bool named = field->flags & GW_NAMED;
    member(json, "type", named ? "object" : "array");
    gw_json_key(json, named ? "additionalProperties" : "items");
    gw_json_open(json, '{');
    one_value(json, field, named ? first_text(field->record) : NULL);
    gw_json_close(json, '}');
}

static void value(struct gw_json *json, const struct gw_field *field)
{
    const struct gw_field *inner =
        field->flags & GW_WRAP ? gw_record_field(field->record, field->record->list_key) : NULL;
    if (!(field->flags & GW_MANY)) {
        one_value(json, field, NULL);
    } else if (!inner) {
        list_of(json, field);
    } else {
        gw_json_key(json, "anyOf");
        gw_json_open(json, '[');
        gw_json_open(json, '{');
        list_of(json, inner);
        gw_json_close(json, '}');
        gw_json_open(json, '{');
        list_of(json, field);
        gw_json_close(json, '}');
        gw_json_close(json, ']');
    }
}

static void default_value(struct gw_json *json, const struct gw_field *field)
{
    double plain;
    size_t length = strlen(field->fallback);
    bool is_number = (field->type == GW_T_NUMBER || field->type == GW_T_INTEGER) &&
                     gw_read_number(field->fallback, length, &plain) == length;
    gw_json_key(json, "default");
    if (field->type == GW_T_BOOL) gw_json_bool(json, strcmp(field->fallback, "true") == 0);
    else if (is_number) gw_json_number(json, plain);
    else gw_json_text(json, field->fallback);
}

static const char *json_type(const struct gw_field *field)
{
    if (field->flags & GW_MANY) return "array";
    switch (field->type) {
    case GW_T_NUMBER:
    case GW_T_FIGURE:
        return "number";
    case GW_T_INTEGER:
    case GW_T_COUNT:
        return "integer";
    case GW_T_BOOL:
    case GW_T_YES_NO:
        return "boolean";
    case GW_T_RECORD:
    case GW_T_DESCRIBED:
    case GW_T_NODE:
    case GW_T_TREE:
        return "object";
    default: /* words */
        return "string";
    }
}

static void list_item(struct gw_json *json, const struct gw_field *list)
{
    struct gw_field item = *list;
    item.flags &= ~(unsigned)GW_MANY;
    gw_json_key(json, "items");
    type_only(json, json_type(&item));
}

/* Lists and version are always there; anything else may be null. */
static void output_value(struct gw_json *json, const struct gw_field *field)
{
    const char *types[] = {json_type(field), "null", "number"};
    words(json, "type", types, field->type == GW_T_EITHER ? 3 : 2);
    if (field->type != GW_T_RECORD) {
        if (field->flags & GW_MANY) list_item(json, field);
        return;
    }
    if (field->flags & GW_MANY) {
        gw_json_key(json, "items");
        gw_json_open(json, '{');
    }
    record_members(json, field->record, NULL, WRITTEN_BY_US);
    if (field->flags & GW_MANY) gw_json_close(json, '}');
}

static bool has_key(const struct gw_field *field, const char *named)
{
    return gw_field_is_written(field) && !(named && strcmp(field->key, named) == 0);
}

static void property(struct gw_json *json, const struct gw_field *field, enum side side)
{
    struct gw_text key;
    gw_text_init(&key, json->out->arena);
    gw_field_json_key(&key, field);
    gw_json_key(json, side == WRITTEN_BY_US ? key.at : field->key);
    gw_json_open(json, '{');
    if (field->help && *field->help) member(json, "description", field->help);
    if (side == WRITTEN_BY_US) output_value(json, field);
    else value(json, field);
    if (field->fallback) default_value(json, field);
    gw_json_close(json, '}');
}

static void required(struct gw_json *json, const struct gw_record *record, const char *named)
{
    gw_json_key(json, "required");
    gw_json_open(json, '[');
    for (size_t i = 0; i < record->n; i++)
        if (has_key(&record->fields[i], named) && record->fields[i].flags & GW_REQUIRED)
            gw_json_text(json, record->fields[i].key);
    gw_json_close(json, ']');
}

static void properties(struct gw_json *json, const struct gw_record *record, const char *named, enum side side)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (!gw_field_is_written(field)) continue;
        if (field->flags & GW_FLAT) properties(json, field->record, named, side);
        else if (has_key(field, named)) property(json, field, side);
    }
}

static void mapping(struct gw_json *json, const struct gw_record *record, const char *named, enum side side)
{
    bool object = side == WRITTEN_BY_PEOPLE;
    if (object) member(json, "type", "object");
    gw_json_key(json, "properties");
    gw_json_open(json, '{');
    properties(json, record, named, side);
    gw_json_close(json, '}');
    if (object) required(json, record, named);
    if (object) flag(json, "additionalProperties", false);
}

/* A mapping, or the scalar or list that stands for it. */
static void record_members(struct gw_json *json, const struct gw_record *record, const char *named, enum side side)
{
    const char *keys[] = {record->scalar_key, record->list_key};
    if (side == WRITTEN_BY_US || (!keys[0] && !keys[1])) {
        mapping(json, record, named, side);
        return;
    }
    gw_json_key(json, "anyOf");
    gw_json_open(json, '[');
    gw_json_open(json, '{');
    mapping(json, record, named, side);
    gw_json_close(json, '}');
    for (int i = 0; i < 2; i++) {
        if (!keys[i]) continue;
        gw_json_open(json, '{');
        value(json, gw_record_field(record, keys[i]));
        gw_json_close(json, '}');
    }
    gw_json_close(json, ']');
}

static const struct gw_field HEAD[] = {
    {.key = "galeward", .type = GW_T_INTEGER, .help = "version of the format"},
    {.key = "version", .type = GW_T_TEXT, .help = "version of the program"},
};
const struct gw_record gw_result_head_record = {.name = "head", .fields = HEAD, .n = sizeof HEAD / sizeof *HEAD};

static void result_members(struct gw_json *json, const struct gw_record *record)
{
    member(json, "type", "object");
    gw_json_key(json, "properties");
    gw_json_open(json, '{');
    properties(json, &gw_result_head_record, NULL, WRITTEN_BY_US);
    properties(json, record, NULL, WRITTEN_BY_US);
    gw_json_close(json, '}');
}

static void whole_schema(struct gw_text *out, const struct gw_record *record, const char *title, enum side side)
{
    struct gw_json json;
    gw_json_init(&json, out, true);
    gw_json_open(&json, '{');
    member(&json, "$schema", "https://json-schema.org/draft/2020-12/schema");
    member(&json, "title", title);
    if (record->help) member(&json, "description", record->help);
    if (side == WRITTEN_BY_US) result_members(&json, record);
    else record_members(&json, record, NULL, side);
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}

void gw_schema_json(struct gw_text *out, const struct gw_schema *schema)
{
    whole_schema(out, schema->in ? schema->in : schema->out, schema->title,
                 schema->in ? WRITTEN_BY_PEOPLE : WRITTEN_BY_US);
}
