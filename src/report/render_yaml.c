/* A record as one of our own files has it, to be read again: what is absent is left out, numbers carry their unit and
 * as many digits as bring back the same double. */
#include "report/page.h"

#include <string.h>

/* The shortest that reads back as it was; 17 digits always come within the last bit. */
static void add_exact(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si)
{
    enum { LEAST = 4, MOST = 17 };
    const struct gw_unit_list units = gw_units_standard();
    const double number = gw_quantity_shown(units, dim, shown, si);
    const char *unit = gw_dim_info(dim)->shown[shown];
    for (int digits = LEAST; digits <= MOST; digits++) {
        struct gw_text text;
        double back = GW_ABSENT;
        size_t at;
        gw_text_init(&text, out->arena);
        gw_text_number(&text, number, digits);
        if (*unit) gw_text_addf(&text, " %s", unit);
        const bool read = gw_quantity_read(units, dim, shown, text.at, text.length, &back, &at) == GW_QUANTITY_OK;
        const bool same = read && !(back < si) && !(back > si);
        if (!same && digits < MOST) continue;
        gw_text_bytes(out, text.at, text.length);
        return;
    }
}

/* Letters, digits, and between them spaces, '_', '.' and '-': what no reader takes for anything else. */
static bool is_plain(const char *text)
{
    static const char letters[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const size_t length = strlen(text);
    static const char *const words[] = {"true", "false", "yes", "no", "on", "off", "null", "y", "n"};
    if (!length || !strchr(letters, *text) || text[length - 1] == ' ') return false;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (gw_words_alike(words[i], text)) return false;
    for (const char *c = text; *c; c++)
        if (!strchr(letters, *c) && !strchr("0123456789 _.-", *c)) return false;
    return true;
}

static void add_words(struct gw_text *out, const char *text)
{
    if (is_plain(text)) {
        gw_text_add(out, text);
        return;
    }
    gw_text_add(out, "\"");
    for (const char *c = text; *c; c++) {
        if (*c == '"' || *c == '\\') gw_text_add(out, "\\");
        gw_text_bytes(out, c, 1);
    }
    gw_text_add(out, "\"");
}

static void add_value(struct gw_text *out, const struct gw_field *field, const void *at, enum gw_units shown)
{
    switch (field->type) {
    case GW_T_NUMBER:
        add_exact(out, field->dim, shown, *(const double *)at);
        return;
    case GW_T_INTEGER:
        gw_text_addf(out, "%d", *(const int *)at);
        return;
    case GW_T_BOOL:
        gw_text_add(out, *(const enum gw_bool *)at == GW_YES ? "true" : "false");
        return;
    case GW_T_CHOICE:
        add_words(out, gw_choice_name(field->choices, *(const int *)at));
        return;
    case GW_T_TEXT:
        add_words(out, *(const char *const *)at);
        return;
    default:
        return;
    }
}

static size_t item_size(const struct gw_field *field)
{
    return field->type == GW_T_TEXT ? sizeof(const char *) : field->type == GW_T_NUMBER ? sizeof(double) : sizeof(int);
}

static void add_list(struct gw_text *out, const struct gw_field *field, const struct gw_many *many, enum gw_units shown)
{
    gw_text_add(out, "[");
    for (size_t i = 0; i < many->n; i++) {
        if (i) gw_text_add(out, ", ");
        if (field->type == GW_T_RECORD) gw_yaml_flow(out, field->record, gw_field_item(field, many, i), shown);
        else add_value(out, field, (const char *)many->items + i * item_size(field), shown);
    }
    gw_text_add(out, "]");
}

void gw_yaml_flow(struct gw_text *out, const struct gw_record *record, const void *value, enum gw_units shown)
{
    bool any = false;
    gw_text_add(out, "{");
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = gw_field_at(field, value);
        const bool many = field->flags & GW_MANY;
        if (field->type == GW_T_NODE || gw_field_is_absent(field, at)) continue;
        if (many && !((const struct gw_many *)at)->n) continue;
        gw_text_addf(out, "%s%s: ", any ? ", " : "", field->key);
        any = true;
        if (many) add_list(out, field, at, shown);
        else if (field->type == GW_T_RECORD) gw_yaml_flow(out, field->record, gw_field_struct(field, at), shown);
        else add_value(out, field, at, shown);
    }
    gw_text_add(out, "}");
}
