/* The field reference: a Markdown table a record, each record once. */
#include "report/results.h"

#include <string.h>

struct reference {
    struct gw_text *out;
    bool written;                     /* by us: keys with units, nothing to choose */
    const struct gw_record *result;   /* the record that is a whole result, with a head; NULL: none */
    const struct gw_record **records; /* in the order met */
    size_t n, capacity;
};

static void meet(struct reference *r, const struct gw_record *record)
{
    for (size_t i = 0; i < r->n; i++)
        if (r->records[i] == record) return;
    r->records = gw_grow(r->out->arena, r->records, r->n, &r->capacity, sizeof(const struct gw_record *));
    r->records[r->n++] = record;
}

static void link_to(struct gw_text *out, const struct gw_record *record)
{
    gw_text_addf(out, "[%s](#", record->name);
    for (const char *c = record->name; *c; c++) {
        char small = *c == ' ' ? '-' : *c >= 'A' && *c <= 'Z' ? (char)(*c - 'A' + 'a') : *c;
        gw_text_bytes(out, &small, 1);
    }
    gw_text_add(out, ")");
}

static void choice_words(struct gw_text *out, const struct gw_field *field)
{
    for (const struct gw_choice *c = field->choices; c->name; c++) {
        gw_text_addf(out, "%s`%s`", c == field->choices ? "" : ", ", c->name);
        if (c->help && *c->help) gw_text_addf(out, " (%s)", c->help);
    }
    const char *before = "; also read: ";
    for (const struct gw_also *also = field->also; also && also->word; also++) {
        if (also->name) gw_text_addf(out, "%s`%s` as `%s`", before, also->word, also->name);
        if (also->name) before = ", ";
    }
}

static void kind(struct gw_text *out, const struct gw_field *field)
{
    const struct gw_dim_info *dim = gw_dim_info(field->dim);
    if (field->flags & GW_MANY) gw_text_add(out, field->flags & GW_NAMED ? "mapping of names to " : "list: ");
    switch (field->type) {
    case GW_T_NUMBER:
        gw_text_addf(out, "%s, `%s`", dim->name, dim->example);
        if (strcmp(dim->example, dim->example_si) != 0) gw_text_addf(out, " or `%s`", dim->example_si);
        break;
    case GW_T_INTEGER:
        gw_text_add(out, "whole number");
        break;
    case GW_T_BOOL:
        gw_text_add(out, "`true` or `false`");
        break;
    case GW_T_TEXT:
        gw_text_add(out, "text");
        break;
    case GW_T_CHOICE:
        choice_words(out, field);
        break;
    case GW_T_RECORD:
        link_to(out, field->record);
        break;
    default: /* of results only */
        break;
    }
    if (field->keyword) gw_text_addf(out, ", or `%s`", field->keyword);
}

static void limit_range(struct gw_text *out, const struct gw_field *field)
{
    if (!(field->least < field->greatest)) return;
    enum gw_dim dim = field->type == GW_T_NUMBER ? field->dim : GW_RATIO;
    const char *unit = gw_dim_info(dim)->shown[GW_UNITS_NONE];
    gw_text_number(out, gw_quantity_shown(gw_units_standard(), dim, GW_UNITS_NONE, field->least), 4);
    gw_text_add(out, " to ");
    gw_text_number(out, gw_quantity_shown(gw_units_standard(), dim, GW_UNITS_NONE, field->greatest), 6);
    if (*unit) gw_text_addf(out, " %s", unit);
}

static void output_row(struct gw_text *out, const struct gw_field *field)
{
    static const char *const types[] = {[GW_T_NUMBER] = "number",
                                        [GW_T_INTEGER] = "whole number",
                                        [GW_T_BOOL] = "true or false",
                                        [GW_T_TEXT] = "text",
                                        [GW_T_CHOICE] = "text",
                                        [GW_T_RECORD] = "",
                                        [GW_T_NODE] = "",
                                        [GW_T_TREE] = "mapping",
                                        [GW_T_YES_NO] = "true or false",
                                        [GW_T_COUNT] = "whole number",
                                        [GW_T_WORD] = "text",
                                        [GW_T_MESSAGE] = "text",
                                        [GW_T_BASIS] = "text",
                                        [GW_T_UNIT] = "text",
                                        [GW_T_SAID] = "text",
                                        [GW_T_FIGURE] = "number",
                                        [GW_T_DESCRIBED] = "its own keys",
                                        [GW_T_EITHER] = "number or text"};
    gw_text_add(out, "| `");
    gw_field_json_key(out, field);
    gw_text_addf(out, "` | %s | %s%s", field->help ? field->help : "", field->flags & GW_MANY ? "list: " : "",
                 types[field->type]);
    if (field->type == GW_T_RECORD) link_to(out, field->record);
    gw_text_add(out, " |\n");
}

static void row(struct gw_text *out, const struct gw_field *field)
{
    gw_text_addf(out, "| `%s` | %s | ", field->key, field->help ? field->help : "");
    kind(out, field);
    if (field->fallback) gw_text_addf(out, " | `%s` | ", field->fallback);
    else gw_text_add(out, field->flags & GW_REQUIRED ? " | required | " : " | | ");
    limit_range(out, field);
    gw_text_add(out, " |\n");
}

static void short_forms(struct gw_text *out, const struct gw_record *record)
{
    if (record->scalar_key) gw_text_addf(out, "\nA single value in its place sets `%s`.\n", record->scalar_key);
    if (record->list_key) gw_text_addf(out, "\nA list in its place sets `%s`.\n", record->list_key);
}

static void rows(struct reference *r, const struct gw_record *record)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        if (!gw_field_is_written(field) || field->flags & GW_HIDDEN) continue;
        if (field->flags & GW_FLAT) {
            rows(r, field->record);
            continue;
        }
        (r->written ? output_row : row)(r->out, field);
        if (field->type == GW_T_RECORD) meet(r, field->record);
    }
}

static void section(struct reference *r, const struct gw_record *record)
{
    struct gw_text *out = r->out;
    gw_text_addf(out, "## %s\n\n", record->name);
    if (record->help) gw_text_addf(out, "%s\n\n", record->help);
    gw_text_add(out, r->written ? "| key | what | value |\n|---|---|---|\n"
                                : "| key | what | value | default | limits |\n|---|---|---|---|---|\n");
    if (r->result && record == r->result) rows(r, &gw_result_head_record);
    rows(r, record);
    short_forms(out, record);
}

static void sections(struct reference *r, const struct gw_record *record)
{
    meet(r, record);
    for (size_t i = 0; i < r->n; i++) {
        if (i) gw_text_add(r->out, "\n");
        section(r, r->records[i]);
    }
}

void gw_schema_markdown(struct gw_text *out, const struct gw_schema *schema)
{
    if (schema->in) sections(&(struct reference){.out = out}, schema->in);
    if (schema->in && schema->out) gw_text_add(out, "\n");
    if (schema->out)
        sections(&(struct reference){.out = out, .written = true, .result = schema->in ? NULL : schema->out},
                 schema->out);
}
