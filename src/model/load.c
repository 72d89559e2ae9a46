/* A project file, its schedule and its candidates to one model. */
#include "galeward/model.h"

#include "galeward/sha256.h"
#include "model_internal.h"

#include <string.h>

const struct gw_building *gw_model_building(const struct gw_model *model, const char *name)
{
    const struct gw_project *p = &model->project;
    if (!name) return p->buildings.n == 1 ? &p->buildings.items[0] : NULL;
    for (size_t i = 0; i < p->buildings.n; i++)
        if (p->buildings.items[i].name && strcmp(p->buildings.items[i].name, name) == 0) return &p->buildings.items[i];
    return NULL;
}

const struct gw_lite_type *gw_model_lite(const struct gw_model *model, const char *name)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; name && i < p->lites.n; i++)
        if (strcmp(p->lites.items[i].name, name) == 0) return &p->lites.items[i];
    return NULL;
}

static void note_input(struct gw_model *model, const struct gw_source *source)
{
    model->inputs =
        gw_grow(model->arena, model->inputs, model->n_inputs, &model->inputs_capacity, sizeof *model->inputs);
    struct gw_input *input = &model->inputs[model->n_inputs++];
    input->file = source->name;
    gw_sha256(input->sha256, source->text, source->length);
}

/* The preset must be known before any bare number is read. */
static enum gw_units preset_of(const struct gw_node *root)
{
    const struct gw_node *units = gw_node_get(root, "units");
    if (!units || units->kind != GW_SCALAR) return GW_UNITS_NONE;
    for (const struct gw_choice *c = gw_units_choices; c->name; c++)
        if (strcmp(c->name, units->text) == 0) return (enum gw_units)c->value;
    return GW_UNITS_NONE;
}

static struct gw_load loader(struct gw_model *model, enum gw_units preset)
{
    return (struct gw_load){.arena = model->arena,
                            .diags = model->diags,
                            .assumptions = &model->assumptions,
                            .units = gw_units_standard(),
                            .preset = preset};
}

/* Files named in the project lie beside it. */
static const char *beside(struct gw_model *model, const char *project, const char *file)
{
    const char *slash = strrchr(project, '/');
    if (file[0] == '/' || !slash) return file;
    return gw_format(model->arena, "%.*s/%s", (int)(slash - project), project, file);
}

/* A file named in the project, or NULL after a fault at that name. */
static const struct gw_source *read_beside(struct gw_model *model, const char *project_path, const char *file,
                                           const struct gw_node *at)
{
    struct gw_diags why;
    gw_diags_init(&why, model->arena);
    const struct gw_source *source = gw_source_read(model->arena, beside(model, project_path, file), &why);
    if (source) return source;
    gw_diag_node(model->diags, GW_ERROR, "unreadable", at->key, at, "'%s': %s", file, why.items[0].message);
    model->diags->refused = model->diags->refused || why.refused;
    return NULL;
}

static void load_system(struct gw_model *model, const struct gw_source *source, struct gw_system *system)
{
    const struct gw_node *root = gw_yaml_draft(model->arena, source, model->diags);
    if (!root) return;
    note_input(model, source);
    struct gw_load load = loader(model, preset_of(root));
    load.assumptions = NULL;
    bool good = gw_record_load(&load, &gw_system_record, root, "", system);
    gw_validate_system(model, system);
    if (!good) return;
    system->name = system->system->name;
    system->file = source->name;
}

static void load_systems(struct gw_model *model, const char *project_path)
{
    const struct gw_project *p = &model->project;
    const struct gw_node *list = gw_node_get(p->node, "candidates"), *at = list ? list->first : NULL;
    model->systems.items = gw_alloc(model->arena, p->candidates.n + 1, sizeof *model->systems.items);
    for (size_t i = 0; i < p->candidates.n && at; i++, at = at->next) {
        const struct gw_source *source =
            p->candidates.items[i] ? read_beside(model, project_path, p->candidates.items[i], at) : NULL;
        if (source) load_system(model, source, &model->systems.items[i]);
    }
    model->systems.n = p->candidates.n;
}

struct renaming {
    const struct gw_opening_columns *columns;
};

/* The header that the project names for a field, else the field's own key. */
static const char *field_of_header(void *context, const char *header)
{
    const struct gw_opening_columns *c = ((const struct renaming *)context)->columns;
    const char *const mapped[] = {c ? c->mark : NULL,  c ? c->wall : NULL,   c ? c->building : NULL,
                                  c ? c->width : NULL, c ? c->height : NULL, c ? c->count : NULL,
                                  c ? c->sill : NULL,  c ? c->offset : NULL, c ? c->lite : NULL};
    static const char *const keys[] = {"mark",  "wall", "building", "width", "height",
                                       "count", "sill", "offset",   "lite"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        if (mapped[i] && strcmp(mapped[i], header) == 0) return keys[i];
        if (!mapped[i] && strcmp(keys[i], header) == 0) return keys[i];
    }
    return NULL;
}

/* A column that every opening needs is missed once, not in every row. */
static void want_column(struct gw_model *model, const struct gw_node *header, const char *key)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, key);
    for (const struct gw_node *h = header; h; h = h->next) {
        if (h->key && strcmp(h->key, key) == 0) return;
        if (!h->key) gw_nearest_offer(&nearest, h->text);
    }
    const char *near = gw_nearest_word(&nearest);
    gw_diag_node(model->diags, GW_ERROR, "missing", key, header,
                 "no column is headed '%s'; name the one in the project: openings: {file: ..., columns: {%s: %s}}", key,
                 key, near ? near : "HEADER");
}

static bool check_header(struct gw_model *model, const struct gw_node *header)
{
    static const char *const needed[] = {"mark", "width", "height"};
    size_t errors = model->diags->errors;
    bool named = false;
    for (const struct gw_node *h = header; h; h = h->next) named = named || h->key;
    if (header && !named) {
        gw_diag_node(model->diags, GW_ERROR, "missing", "mark", header,
                     "the first line names no columns: it must head them mark, width, height and so on, or as "
                     "'openings: columns' maps them");
        return false;
    }
    for (size_t i = 0; header && i < sizeof needed / sizeof *needed; i++) want_column(model, header, needed[i]);
    return header && model->diags->errors == errors;
}

/* Headers that the project names must be there. */
static void check_mapped(struct gw_model *model, const struct gw_node *header)
{
    const struct gw_node *openings = gw_node_get(model->project.node, "openings"),
                         *columns = gw_node_get(openings, "columns");
    for (const struct gw_node *c = columns ? columns->first : NULL; c; c = c->next) {
        struct gw_nearest nearest;
        if (c->kind != GW_SCALAR || !c->length) continue;
        gw_nearest_start(&nearest, c->text);
        bool found = false;
        for (const struct gw_node *h = header; h; h = h->next) {
            found = found || strcmp(h->text, c->text) == 0;
            gw_nearest_offer(&nearest, h->text);
        }
        if (!found)
            gw_diag_node(model->diags, GW_ERROR, "bad_value", c->key, c, "the schedule has no column headed '%s'%s",
                         c->text, gw_nearest_question(model->arena, &nearest));
    }
}

static void load_openings(struct gw_model *model, const char *project_path, enum gw_units preset)
{
    const struct gw_openings *openings = model->project.openings;
    if (!openings || !openings->file) return;
    const struct gw_node *node = gw_node_get(model->project.node, "openings"), *file = gw_node_get(node, "file");
    const struct gw_source *source = read_beside(model, project_path, openings->file, file ? file : node);
    if (!source || !gw_source_check(source, model->diags)) return;
    note_input(model, source);
    struct renaming renaming = {openings->columns};
    size_t before = model->diags->errors;
    const struct gw_node *header,
        *rows = gw_csv_draft(model->arena, source, field_of_header, &renaming, model->diags, &header);
    bool whole = model->diags->errors == before;
    size_t errors = model->diags->errors;
    if (header) check_mapped(model, header);
    if (model->diags->errors != errors || !check_header(model, header) || !header) return;
    if (!rows->count && whole)
        gw_diag_node(model->diags, GW_ERROR, "empty", NULL, header, "the schedule has no openings below its header");
    struct gw_load load = loader(model, preset);
    load.assumptions = NULL;
    model->openings.items = gw_alloc(model->arena, rows->count + 1, sizeof *model->openings.items);
    for (const struct gw_node *row = rows->first; row; row = row->next)
        gw_record_load(&load, &gw_opening_record, row, "this row", &model->openings.items[model->openings.n++]);
}

bool gw_model_load(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags, const char *path,
                   const char *const *changes, size_t n_changes)
{
    const struct gw_source *source = gw_source_read(arena, path, diags);
    return source && gw_model_load_source(model, arena, diags, source, changes, n_changes);
}

bool gw_model_load_source(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags,
                          const struct gw_source *source, const char *const *changes, size_t n_changes)
{
    *model = (struct gw_model){.arena = arena, .diags = diags, .tables = gw_tables_standard()};
    struct gw_node *root = gw_yaml_draft(arena, source, diags);
    if (!root) return false;
    note_input(model, source);
    for (size_t i = 0; i < n_changes; i++) {
        size_t key = strcspn(changes[i], "=");
        const char *dotted = gw_strndup(arena, changes[i], key);
        if (changes[i][key] != '=' || !gw_node_set(arena, root, dotted, changes[i] + key + 1))
            gw_diag_add(diags, GW_ERROR, "bad_value", dotted, source, 0, 0, "cannot set '%s'", changes[i]);
    }
    struct gw_load load = loader(model, preset_of(root));
    gw_record_load(&load, &gw_project_record, root, "", &model->project);
    if (!model->project.node) return false;
    gw_validate_project(model);
    load_openings(model, source->name, load.preset);
    gw_validate_openings(model);
    load_systems(model, source->name);
    gw_diags_sort(diags);
    return diags->errors == 0;
}
