/* One field of a record: its key, where its value lies, what it says. */
#include "galeward/record.h"

#include <string.h>

const struct gw_field *gw_record_field(const struct gw_record *record, const char *key)
{
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].key && strcmp(record->fields[i].key, key) == 0) return &record->fields[i];
    return NULL;
}

const char *gw_choice_name(const struct gw_choice *choices, int value)
{
    for (; choices->name; choices++)
        if (choices->value == value) return choices->name;
    return "";
}

static char next_letter(const char **at)
{
    while (**at && strchr(" -_/", **at)) (*at)++;
    char c = **at;
    if (c) (*at)++;
    return (char)(c >= 'A' && c <= 'Z' ? c + ('a' - 'A') : c);
}

bool gw_words_alike(const char *a, const char *b)
{
    for (;;) {
        char x = next_letter(&a), y = next_letter(&b);
        if (x != y) return false;
        if (!x) return true;
    }
}

bool gw_says_none(const char *text)
{
    static const char *const words[] = {"", "none", "no", "nil", "n/a", "na", "not reinforced", "unreinforced"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (gw_words_alike(text, words[i])) return true;
    return false;
}

const struct gw_choice *gw_choice_match(const struct gw_choice *choices, const char *word)
{
    const struct gw_choice *found = NULL;
    size_t n = 0;
    for (const struct gw_choice *c = choices; c->name; c++) {
        if (strcmp(c->name, word) == 0) return c;
        if (!gw_words_alike(c->name, word)) continue;
        found = c;
        n++;
    }
    return n == 1 ? found : NULL;
}

void gw_field_json_key(struct gw_text *out, const struct gw_field *field)
{
    const char *suffix = field->type == GW_T_NUMBER ? gw_dim_info(field->dim)->suffix : "";
    gw_text_add(out, field->key);
    if (*suffix) gw_text_add(out, "_");
    gw_text_add(out, suffix);
}

const void *gw_field_at(const struct gw_field *field, const void *record)
{
    for (unsigned i = 0; record && i < field->hops; i++)
        record = *(const void *const *)(const void *)((const char *)record + field->via[i]);
    return record ? (const char *)record + field->offset : NULL;
}

bool gw_field_is_written(const struct gw_field *field)
{
    return field->type != GW_T_NODE && !(field->flags & GW_TABLES_ONLY);
}

bool gw_field_is_absent(const struct gw_field *field, const void *at)
{
    if (!at) return true;
    if (field->flags & GW_MANY) return ((const struct gw_many *)at)->n == 0;
    switch (field->type) {
    case GW_T_NUMBER:
        return !gw_given(*(const double *)at);
    case GW_T_INTEGER:
        return *(const int *)at == GW_NO_INTEGER;
    case GW_T_BOOL:
        return *(const enum gw_bool *)at == GW_UNSAID;
    case GW_T_CHOICE:
        return *(const int *)at == 0;
    case GW_T_TEXT:
    case GW_T_TREE:
        return *(void *const *)at == NULL;
    case GW_T_RECORD:
        return gw_field_struct(field, at) == NULL;
    case GW_T_NODE:
        return true;
    case GW_T_EITHER:
        return !gw_given(((const struct gw_either *)at)->number) && !((const struct gw_either *)at)->words;
    default: /* what results hold is there, or its words are NULL */
        return false;
    }
}

/* What somebody makes of the struct in the reader's units. */
static const char *said(struct gw_arena *arena, const struct gw_field *field, const void *at, enum gw_units shown)
{
    struct gw_text text;
    gw_text_init(&text, arena);
    if (field->type == GW_T_MESSAGE && !gw_said(at)) return NULL;
    if (field->type == GW_T_MESSAGE) gw_message_print(&text, at, shown);
    else if (!field->say(&text, at, shown)) return NULL;
    return text.length ? text.at : "";
}

const char *gw_field_words(struct gw_arena *arena, const struct gw_field *field, const void *at, enum gw_units shown)
{
    if (!at) return NULL;
    switch (field->type) {
    case GW_T_TEXT:
        return *(const char *const *)at;
    case GW_T_CHOICE:
        return *(const int *)at ? gw_choice_name(field->choices, *(const int *)at) : NULL;
    case GW_T_WORD:
        return field->word ? field->word(*(const int *)at) : gw_choice_name(field->choices, *(const int *)at);
    case GW_T_BASIS:
        return gw_basis_name(gw_used_weakest(at));
    case GW_T_UNIT:
        return gw_dim_info(*(const enum gw_dim *)at)->suffix;
    case GW_T_EITHER:
        return ((const struct gw_either *)at)->words;
    case GW_T_MESSAGE:
    case GW_T_SAID:
        return said(arena, field, at, shown);
    default:
        return NULL;
    }
}

const void *gw_field_struct(const struct gw_field *field, const void *at)
{
    return !at || field->flags & GW_INSIDE ? at : *(const void *const *)at;
}

const void *gw_field_item(const struct gw_field *field, const struct gw_many *many, size_t i)
{
    if (field->flags & GW_POINTERS) return ((const void *const *)many->items)[i];
    return (const char *)many->items + i * field->record->size;
}
