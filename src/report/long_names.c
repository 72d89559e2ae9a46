#include "report/long_names.h"

#include <string.h>

enum { LONG = 120, SHORT = 24 }; /* bytes; characters */

const char *gw_beginning(struct gw_arena *arena, const char *text, int most)
{
    const size_t length = strlen(text);
    size_t used = 0;
    for (int i = 0; i < most && used < length; i++) {
        unsigned long code;
        const size_t next = gw_utf8_read(text + used, length - used, &code);
        used += next ? next : 1;
    }
    return used == length ? text : gw_format(arena, "%.*s…", (int)used, text);
}

struct collecting {
    struct gw_arena *arena;
    struct gw_long_names out;
};

/* The longest first, so that one within another is not cut out of it. */
static void take(struct collecting *c, const char *text)
{
    struct gw_long_names *out = &c->out;
    const size_t length = text ? strlen(text) : 0;
    if (length <= LONG) return;
    for (size_t i = 0; i < out->n; i++)
        if (strcmp(out->items[i].text, text) == 0) return;
    out->items = gw_grow(c->arena, out->items, out->n, &out->capacity, sizeof *out->items);
    size_t at = out->n++;
    for (; at && out->items[at - 1].length < length; at--) out->items[at] = out->items[at - 1];
    out->items[at] = (struct gw_long_name){text, length};
}

static void take_record(struct collecting *c, const struct gw_record *record, const void *value);

static void take_one(struct collecting *c, const struct gw_field *field, const void *at)
{
    if (field->type == GW_T_TEXT) take(c, *(const char *const *)at);
    if (field->type == GW_T_RECORD && *(const void *const *)at) take_record(c, field->record, *(const void *const *)at);
}

static void take_many(struct collecting *c, const struct gw_field *field, const struct gw_many *many)
{
    const char *items = many->items;
    for (size_t i = 0; i < many->n; i++) {
        if (field->type == GW_T_TEXT) take(c, ((const char *const *)many->items)[i]);
        if (field->type == GW_T_RECORD) take_record(c, field->record, items + i * field->record->size);
    }
}

static void take_record(struct collecting *c, const struct gw_record *record, const void *value)
{
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *field = &record->fields[i];
        const void *at = (const char *)value + field->offset;
        if (field->flags & GW_MANY) take_many(c, field, at);
        else take_one(c, field, at);
    }
}

struct gw_long_names gw_long_names_of(struct gw_arena *arena, const struct gw_model *model)
{
    struct collecting c = {.arena = arena};
    take_record(&c, &gw_project_record, &model->project);
    for (size_t i = 0; i < model->systems.n; i++) take_record(&c, &gw_system_record, &model->systems.items[i]);
    return c.out;
}

static const char *without(struct gw_arena *arena, const struct gw_long_name *name, const char *text)
{
    struct gw_text out;
    const char *at = strstr(text, name->text);
    if (!at) return text;
    gw_text_init(&out, arena);
    for (; at; at = strstr(text, name->text)) {
        gw_text_bytes(&out, text, (size_t)(at - text));
        gw_text_add(&out, gw_beginning(arena, name->text, SHORT));
        text = at + name->length;
    }
    gw_text_add(&out, text);
    return out.at;
}

const char *gw_shortened(struct gw_arena *arena, const struct gw_long_names *names, const char *text)
{
    for (size_t i = 0; names && i < names->n; i++) text = without(arena, &names->items[i], text);
    return text;
}

enum gw_status gw_draw_figure(struct gw_canvas *canvas, const struct gw_report *report, const struct gw_figure *figure,
                              bool small, enum gw_units shown, struct gw_engine *engine)
{
    gw_canvas_init(canvas, report->arena);
    canvas->long_names = &report->long_names;
    canvas->on_page = true;
    canvas->small = small;
    if (!figure->draw) return GW_MISSING;
    const enum gw_status status = figure->draw(canvas, figure->of, shown, engine);
    if (canvas->title) canvas->title = gw_shortened(report->arena, &report->long_names, canvas->title);
    if (canvas->description)
        canvas->description = gw_shortened(report->arena, &report->long_names, canvas->description);
    return status;
}
