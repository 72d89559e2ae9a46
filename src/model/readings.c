/* A sheet of readings to a list: each cell by the kind of its item, faults at their lines. */
#include "galeward/readings.h"

#include "base/fields.h"
#include "galeward/day.h"
#include "galeward/memo.h"
#include "galeward/sheet.h"
#include "model_internal.h"

#include <string.h>

static const struct gw_choice EDGES[] = {{"head", 1, "upper edge of a lite"},
                                         {"sill", 2, "lower edge"},
                                         {"left", 3, "left edge, seen from outside"},
                                         {"right", 4, "right edge"},
                                         {0}};
static const struct gw_choice SAMPLES[] = {{"random", GW_SAMPLE_RANDOM, "drawn by lot from all such places"},
                                           {"chosen", GW_SAMPLE_CHOSEN, "looked at for a reason"},
                                           {0}};

#define R(member_, type_, ...) F(gw_reading, member_, type_, __VA_ARGS__)
#define R_AS(key_, member_, ...) FIELD(gw_reading, key_, member_, GW_T_TEXT, __VA_ARGS__)
static const struct gw_field READING[] = {
    R(wall, GW_T_TEXT, .help = "wall, or elevation of the schedule; may be left out when there is one"),
    R(column, GW_T_INTEGER, .help = "column of lites from 1, from the left seen from outside"),
    R(story, GW_T_INTEGER, .help = "story from 1, from the wall's lowest floor"),
    R(row, GW_T_INTEGER, .help = "row of lites in the story from 1, from below"),
    FIELD(gw_reading, "edge", edge_word, GW_T_CHOICE, .choices = EDGES, .help = "edge of the lite"),
    R(line, GW_T_INTEGER, .help = "vertical line, 0 at the left end seen from outside"),
    R(point, GW_T_TEXT,
      .help = "point along the edge: a number from 1, or a distance from its left or lower end; of a spacing where it "
              "begins"),
    R_AS("item", item_name, .flags = GW_REQUIRED, .help = "what was measured"),
    R_AS("value", value_text, .help = "the value, with its unit, or a word of the item; empty: not read yet"),
    R(date, GW_T_TEXT, .flags = GW_DATE, .help = "day of reading"),
    R(installed, GW_T_TEXT, .flags = GW_DATE, .help = "day on which it was fastened"),
    R_AS("temperature", temperature_text,
         .help = "of the metal when it was read; 'air 90 degF': of the air, the metal may be hotter"),
    R(repaired, GW_T_BOOL, .help = "it was repaired before it was read: earlier rows of the place are closed"),
    R(sample, GW_T_CHOICE, .choices = SAMPLES, .help = "how the place was chosen"),
    R(by, GW_T_TEXT, .help = "crew that did the work"),
    R(note, GW_T_TEXT, .help = "not read"),
    PLACE(gw_reading),
};
const struct gw_record gw_reading_record =
    RECORD("reading", gw_reading, READING, .help = "a row of a sheet of readings");

/* Cells -------------------------------------------------------------------------------------------------------------
 */

/* Sheets say the same many times: what was read without a fault is kept by its text. */
struct known {
    struct gw_memo items, values;
};

static enum gw_item_id item_named(struct known *known, struct gw_load *load, const char *name)
{
    void **at = gw_memo_at(&known->items, load->arena, name, strlen(name));
    if (!*at) {
        enum gw_item_id *item = *at = gw_alloc(load->arena, 1, sizeof *item);
        *item = gw_item_named(name);
    }
    return *(const enum gw_item_id *)*at;
}

static bool read_value(struct gw_reading *r, struct known *known, struct gw_load *load)
{
    char key[64];
    const size_t length = strlen(r->value_text) + 1;
    key[0] = (char)r->item;
    if (length >= sizeof key) return gw_item_read(&r->value, load, r->item, gw_node_get(r->node, "value"));
    memcpy(key + 1, r->value_text, length);
    void **at = gw_memo_at(&known->values, load->arena, key, length);
    const struct gw_item_value *kept = *at;
    if (kept) {
        r->value = *kept;
        return true;
    }
    const size_t said = load->diags->n;
    if (!gw_item_read(&r->value, load, r->item, gw_node_get(r->node, "value"))) return false;
    if (load->diags->n != said) return true; /* a doubt is told of each */
    struct gw_item_value *value = gw_alloc(load->arena, 1, sizeof *value);
    *value = r->value;
    *gw_memo_at(&known->values, load->arena, key, length) = value;
    return true;
}

static bool read_item(struct gw_reading *r, struct known *known, struct gw_load *load)
{
    r->item = item_named(known, load, r->item_name);
    if (r->item != GW_ITEM_COUNT) return read_value(r, known, load);
    const char *nearest = gw_item_nearest(r->item_name);
    gw_diag_node(load->diags, GW_ERROR, "bad_value", "item", gw_node_get(r->node, "item"), "no item is named '%s'%s",
                 r->item_name, nearest ? gw_format(load->arena, "; did you mean '%s'?", nearest) : "");
    return false;
}

static const char AIR[] = "air";

static bool read_temperature(struct gw_reading *r, struct gw_load *load)
{
    static const struct gw_field field = {
        .key = "temperature", .type = GW_T_NUMBER, .dim = GW_TEMPERATURE, LIMITS(200, 400), .help = "of the metal"};
    const struct gw_node *at = gw_node_get(r->node, "temperature");
    if (!r->temperature_text || !at) return true;
    struct gw_node bare = *at;
    const size_t word = sizeof AIR - 1;
    r->of_air = bare.length > word && gw_words_alike(AIR, gw_strndup(load->arena, bare.text, word)) &&
                strchr(" \t:", bare.text[word]);
    if (r->of_air) {
        const size_t skip = word + strspn(bare.text + word, " \t:");
        bare.text += skip;
        bare.length -= skip;
    }
    return gw_field_load(load, &field, &bare, &r->temperature);
}

static void read_point(struct gw_reading *r)
{
    size_t at;
    if (!r->point) return;
    const size_t length = strlen(r->point);
    if (gw_read_number(r->point, length, &r->at) == length) return;
    r->at = GW_ABSENT;
    r->at_distance = gw_quantity_read(gw_units_standard(), GW_THICKNESS, GW_UNITS_NONE, r->point, length, &r->at,
                                      &at) == GW_QUANTITY_OK;
    if (!r->at_distance) r->at = GW_ABSENT;
}

static long day_of(const char *text)
{
    long day;
    return text && gw_day_read(&day, text) ? day : GW_NO_DAY;
}

static void read_row(struct gw_reading *r, struct known *known, struct gw_load *load, bool good)
{
    r->item = GW_ITEM_COUNT;
    r->value = (struct gw_item_value){GW_ABSENT, 0};
    r->temperature = r->at = GW_ABSENT;
    r->day = day_of(r->date);
    r->installed_on = day_of(r->installed);
    read_point(r);
    const bool item = !r->item_name || !r->value_text || read_item(r, known, load);
    const bool temperature = read_temperature(r, load);
    r->good = good && item && temperature && r->item_name && r->value_text;
}

/* The sheet ---------------------------------------------------------------------------------------------------------
 */

struct heading {
    const struct gw_sheet_column *columns;
    size_t n;
    bool ours; /* something heads an item, or a value */
};

static const char *look(void *context, const char *header)
{
    struct heading *h = context;
    bool meant = gw_words_alike(header, "item") || gw_words_alike(header, "value");
    for (size_t i = 0; i < h->n; i++) {
        const struct gw_sheet_column *c = &h->columns[i];
        const bool of_ours = strcmp(c->key, "item") == 0 || strcmp(c->key, "value") == 0;
        meant = meant || (of_ours && gw_words_alike(c->header, header));
    }
    h->ours = h->ours || meant;
    return header;
}

/* By its first lines alone: nothing of a file that is no sheet of readings is shown. */
static bool is_ours(struct gw_model *model, const struct gw_source *source, struct heading *heading)
{
    enum { ENOUGH = 4096 };
    struct gw_diags none;
    const struct gw_node *header;
    size_t length = source->length;
    if (length > ENOUGH) {
        length = ENOUGH;
        while (length && source->text[length - 1] != '\n' && source->text[length - 1] != '\r') length--;
    }
    gw_diags_init(&none, model->arena);
    const struct gw_source *start = gw_source_from(model->arena, source->name, source->text, length);
    if (gw_source_check(start, &none)) gw_csv_draft(model->arena, start, look, heading, &none, &header);
    if (heading->ours) return true;
    gw_diag_add(model->diags, GW_ERROR, "wrong_file", "readings", source, 0, 0,
                "no sheet of readings: no column of its first line is headed 'item' or 'value'; the project may map "
                "other headers: readings: {columns: {item: ..., value: ...}}");
    return false;
}

/* A sheet that is filled in by and by has rows without a value; one without any value is a mistake. */
static void tell_blank(const struct gw_readings *out, struct gw_load *load, const struct gw_node *first)
{
    if (!out->blank || !first) return;
    if (out->blank == out->rows.n)
        gw_diag_node(load->diags, GW_ERROR, "empty", "value", first, "no row has a value: nothing was read yet");
    else
        gw_diag_node(load->diags, GW_WARNING, "blank", "value", first,
                     "%zu row%s without a value, this the first: not read yet, left out", out->blank,
                     out->blank == 1 ? "" : "s");
}

bool gw_readings_read(struct gw_readings *out, struct gw_model *model, const struct gw_source *source)
{
    const struct gw_readings_rules *rules = model->project.readings;
    const struct gw_node *mapping = rules && rules->node ? gw_node_get(rules->node, "columns") : NULL;
    struct heading heading = {.ours = false};
    struct gw_sheet_rows rows;
    const size_t before = model->diags->errors;
    heading.columns = gw_sheet_columns(model->arena, mapping, &heading.n);
    *out = (struct gw_readings){.file = source->name};
    if (!is_ours(model, source, &heading)) return false;
    gw_note_input(model, source);
    const struct gw_sheet_layout sheet = {&gw_reading_record, "sheet", "readings", heading.columns, heading.n};
    struct gw_load load = gw_loader(model, NULL);
    load.alone = true;
    load.assumptions = NULL;
    load.preset = GW_UNITS_NONE;
    gw_sheet_read(&rows, &sheet, source, &load);
    out->rows.items = rows.items;
    out->rows.n = rows.n;
    const struct gw_node *blank = NULL;
    struct known known = {0};
    for (size_t i = 0; i < rows.n; i++) {
        struct gw_reading *r = &out->rows.items[i];
        r->node = rows.rows[i].node;
        read_row(r, &known, &load, rows.rows[i].good);
        const bool empty = rows.rows[i].good && !r->value_text;
        if (empty && !blank) blank = r->node;
        out->blank += empty;
        out->wrong += !r->good && !empty;
    }
    tell_blank(out, &load, blank);
    return model->diags->errors == before;
}

const struct gw_source *gw_readings_named(struct gw_model *model)
{
    const struct gw_readings_rules *rules = model->project.readings;
    if (!rules || !rules->file) return NULL;
    const struct gw_node *at = gw_node_get(rules->node, "file");
    return gw_read_beside(model, model->source->name, rules->file, at ? at : rules->node);
}

/* Which system -------------------------------------------------------------------------------------------------------
 */

static const char *last_part(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}

static bool is_called(const struct gw_model *model, size_t i, const char *name)
{
    const struct gw_system *s = &model->systems.items[i];
    const char *listed = model->project.candidates.items[i];
    return (s->name && strcmp(s->name, name) == 0) || (listed && strcmp(listed, name) == 0) ||
           (s->file && strcmp(s->file, name) == 0) || (listed && strcmp(last_part(listed), name) == 0);
}

static const char *names_of(struct gw_model *model)
{
    struct gw_text list;
    gw_text_init(&list, model->arena);
    gw_text_add(&list, "");
    for (size_t i = 0; i < model->systems.n; i++)
        gw_text_addf(&list, "%s%s", i ? ", " : "", model->project.candidates.items[i]);
    return list.at;
}

/* A project of a wall that stands needs no list of what was on offer. */
bool gw_readings_hang(struct gw_model *model, const char *file)
{
    const struct gw_readings_rules *rules = model->project.readings;
    const bool by_project = !file && rules && rules->system;
    const struct gw_source *source = NULL;
    if (model->systems.n || !(file || by_project)) return true;
    if (by_project) {
        file = rules->system;
        source = gw_read_beside(model, model->source->name, file, gw_at_key(rules->node, "system"));
    } else {
        source = gw_source_read(model->arena, file, model->diags);
    }
    if (!source) return false;
    model->project.candidates.items = gw_alloc(model->arena, 1, sizeof *model->project.candidates.items);
    model->systems.items = gw_alloc(model->arena, 1, sizeof *model->systems.items);
    model->project.candidates.items[0] = file;
    model->project.candidates.n = model->systems.n = 1;
    const bool good = gw_load_system(model, source, "system", &model->systems.items[0]);
    if (good) gw_settle_screws(model);
    return good;
}

const struct gw_system *gw_readings_system(struct gw_model *model, const char *name)
{
    const struct gw_readings_rules *rules = model->project.readings;
    const bool by_project = !name && rules && rules->system;
    if (by_project) name = rules->system;
    if (!name && model->systems.n == 1) return &model->systems.items[0];
    for (size_t i = 0; name && i < model->systems.n; i++)
        if (is_called(model, i, name)) return &model->systems.items[i];
    const char *why = !model->systems.n
                          ? gw_format(model->arena, "the project has no candidates: which system is hung? Name its "
                                                    "file: --system FILE, or candidates: [FILE]")
                      : name ? gw_format(model->arena, "no candidate is '%s': %s", name, names_of(model))
                             : gw_format(model->arena,
                                         "which system was hung: readings: {system: FILE}, or --system FILE; the "
                                         "candidates are %s",
                                         names_of(model));
    const struct gw_node *at = by_project && rules->node ? gw_at_key(rules->node, "system") : model->project.node;
    gw_diag_node(model->diags, GW_ERROR, by_project ? "bad_value" : "missing", "system", at, "%s", why);
    return NULL;
}
