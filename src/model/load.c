/* A project file, its schedule and its candidates to one model. */
#include "galeward/model.h"
#include "galeward/sheet.h"

#include "galeward/sha256.h"
#include "model/setting.h"
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

static struct gw_end end_of(const struct gw_end *ends, size_t n, size_t i)
{
    return n == 2 ? ends[i] : (struct gw_end){GW_END_UNSET, GW_ABSENT, NULL};
}

bool gw_model_face(const struct gw_model *model, const char *name, struct gw_face *out)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; name && i < p->walls.n; i++) {
        const struct gw_wall *w = &p->walls.items[i];
        if (!w->name || strcmp(w->name, name) != 0) continue;
        *out = (struct gw_face){.building = w->building, .width = w->width, .bottom = GW_ABSENT, .top = w->top};
        if (w->floors.n) out->bottom = w->floors.items[0];
        for (size_t k = 0; k < 2; k++) out->ends[k] = end_of(w->ends.items, w->ends.n, k);
        return true;
    }
    for (size_t i = 0; name && i < p->elevations.n; i++) {
        const struct gw_elevation_spec *e = &p->elevations.items[i];
        if (!e->name || strcmp(e->name, name) != 0) continue;
        *out = (struct gw_face){.building = e->building, .width = e->width, .bottom = GW_ABSENT, .top = GW_ABSENT};
        for (size_t k = 0; k < 2; k++) out->ends[k] = end_of(e->ends.items, e->ends.n, k);
        return true;
    }
    return false;
}

const struct gw_building *gw_model_opening_building(const struct gw_model *model, const struct gw_opening *o)
{
    struct gw_face face;
    if (o->building || !gw_model_face(model, o->wall, &face)) return gw_model_building(model, o->building);
    return gw_model_building(model, face.building);
}

const struct gw_lite_type *gw_model_lite(const struct gw_model *model, const char *name)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; name && i < p->lites.n; i++)
        if (strcmp(p->lites.items[i].name, name) == 0) return &p->lites.items[i];
    return NULL;
}

const struct gw_lite_type *gw_model_tested_lite(const struct gw_model *model, const char *name)
{
    return gw_model_lite(model->tested ? model->tested : model, name);
}

void gw_note_input(struct gw_model *model, const struct gw_source *source)
{
    char hash[sizeof model->inputs.items->sha256];
    gw_sha256(hash, source->text, source->length);
    for (size_t i = 0; i < model->inputs.n; i++)
        if (strcmp(model->inputs.items[i].file, source->name) == 0 && strcmp(model->inputs.items[i].sha256, hash) == 0)
            return;
    model->inputs.items = gw_grow(model->arena, model->inputs.items, model->inputs.n, &model->inputs_capacity,
                                  sizeof *model->inputs.items);
    struct gw_input *input = &model->inputs.items[model->inputs.n++];
    input->file = source->name;
    memcpy(input->sha256, hash, sizeof hash);
}

/* The preset must be known before any bare number is read. */
static enum gw_units preset_of(const struct gw_node *root)
{
    const struct gw_node *units = gw_node_get(root, "units");
    if (!units || units->kind != GW_SCALAR) return GW_UNITS_NONE;
    const struct gw_choice *found = gw_choice_match(gw_units_choices, units->text);
    for (const struct gw_also *other = gw_units_words; !found && other->word; other++)
        if (gw_words_alike(other->word, units->text)) found = gw_choice_match(gw_units_choices, other->name);
    return found ? (enum gw_units)found->value : GW_UNITS_NONE;
}

static struct gw_load loader(struct gw_model *model, enum gw_units preset)
{
    return (struct gw_load){.arena = model->arena,
                            .diags = model->diags,
                            .assumptions = &model->assumptions,
                            .units = gw_units_standard(),
                            .preset = preset};
}

struct gw_load gw_loader(struct gw_model *model, const struct gw_node *root) { return loader(model, preset_of(root)); }

/* Files named in the project lie beside it. */
static const char *beside(struct gw_model *model, const char *project, const char *file)
{
    const char *slash = strrchr(project, '/');
    if (file[0] == '/' || !slash) return file;
    return gw_format(model->arena, "%.*s/%s", (int)(slash - project), project, file);
}

static const char *const SHEETS[] = {".csv", ".tsv", NULL}, *const BOOKS[] = {".xlsx", ".xls", ".xlsm", ".ods", NULL};

static bool ends_in(const char *file, const char *const *endings)
{
    const char *dot = strrchr(file, '.');
    for (; dot && *endings; endings++)
        if (gw_words_alike(*endings, dot)) return true;
    return false;
}

/* What is given in the place of a project, by its name; NULL: perhaps one. */
static const char *other_file(const char *name)
{
    if (ends_in(name, SHEETS)) return "a sheet is no project: name it in one (openings: FILE.csv)";
    return ends_in(name, BOOKS)
               ? "a spreadsheet is no project: save it as CSV and name that in one (openings: FILE.csv)"
               : NULL;
}

const struct gw_source *gw_read_beside(struct gw_model *model, const char *project_path, const char *file,
                                       const struct gw_node *at)
{
    struct gw_diags why;
    gw_diags_init(&why, model->arena);
    if (ends_in(file, BOOKS)) {
        gw_diag_node(model->diags, GW_ERROR, "wrong_file", at->key, at,
                     "'%s' is a spreadsheet's own file: save the sheet as CSV and name that", file);
        return NULL;
    }
    const struct gw_source *source = gw_source_read(model->arena, beside(model, project_path, file), &why);
    if (source) return source;
    gw_diag_node(model->diags, GW_ERROR, "unreadable", at->key, at, "'%s': %s", file, why.items[0].message);
    model->diags->refused = model->diags->refused || why.refused;
    return NULL;
}

bool gw_load_system(struct gw_model *model, const struct gw_source *source, const char *named_in,
                    struct gw_system *system)
{
    const size_t before = model->diags->errors;
    const struct gw_node *root =
        ends_in(source->name, SHEETS) ? NULL : gw_yaml_draft(model->arena, source, model->diags);
    const bool project = root && gw_node_get(root, "project") && !gw_node_get(root, "system");
    if (project || ends_in(source->name, SHEETS))
        gw_diag_add(model->diags, GW_ERROR, "wrong_file", named_in, source, 0, 0, "%s, and no system file",
                    project ? "this is a project" : "this is a sheet");
    if (!root || project) return false;
    gw_note_input(model, source);
    struct gw_load load = loader(model, preset_of(root));
    load.assumptions = NULL;
    bool good = gw_record_load(&load, &gw_system_record, root, "", system);
    gw_validate_system(model, system);
    const bool options = gw_validate_options(model, system, load.preset);
    if (!good) return false;
    gw_doubt_inserts(model, system, NULL, system->node);
    system->name = system->system->name;
    system->file = source->name;
    for (size_t i = 0; i < system->options.n && i < GW_OPTION_LIMIT; i++) {
        struct gw_system alone; /* its faults are found where they are written */
        if (!gw_system_with(&alone, model, system, gw_option_bit(i))) continue;
        gw_keep_ratings(model, system, &alone, i);
        gw_doubt_weight(model, system, &alone, i);
        gw_doubt_inserts(model, &alone, system, system->options.items[i].change);
    }
    if (options) gw_assume_system(model, system);
    return model->diags->errors == before;
}

static const char *plain_path(const char *path)
{
    while (strncmp(path, "./", 2) == 0) path += 2;
    return path;
}

static bool listed_before(struct gw_model *model, size_t i, const struct gw_node *at)
{
    const struct gw_project *p = &model->project;
    for (size_t k = 0; k < i; k++) {
        if (!p->candidates.items[k] || strcmp(plain_path(p->candidates.items[k]), plain_path(at->text)) != 0) continue;
        gw_diag_node(model->diags, GW_ERROR, "duplicate", "candidates", at, "'%s' is listed twice", at->text);
        return true;
    }
    return false;
}

static void load_systems(struct gw_model *model, const char *project_path)
{
    const struct gw_project *p = &model->project;
    const struct gw_node *list = gw_node_get(p->node, "candidates"), *at = list ? list->first : NULL;
    model->systems.items = gw_alloc(model->arena, p->candidates.n + 1, sizeof *model->systems.items);
    for (size_t i = 0; i < p->candidates.n && at; i++, at = at->next) {
        if (p->candidates.items[i] && listed_before(model, i, at)) continue;
        const struct gw_source *source =
            p->candidates.items[i] ? gw_read_beside(model, project_path, p->candidates.items[i], at) : NULL;
        if (source) gw_load_system(model, source, "candidates", &model->systems.items[i]);
    }
    model->systems.n = p->candidates.n;
}

static void load_openings(struct gw_model *model, const char *project_path, enum gw_units preset)
{
    const struct gw_openings *openings = model->project.openings;
    if (!openings || !openings->file) return;
    const struct gw_node *node = gw_node_get(model->project.node, "openings"), *file = gw_node_get(node, "file");
    const struct gw_source *source = gw_read_beside(model, project_path, openings->file, file ? file : node);
    if (!source) return;
    gw_note_input(model, source);
    size_t n_columns;
    const struct gw_sheet_column *columns = gw_sheet_columns(model->arena, gw_node_get(node, "columns"), &n_columns);
    const struct gw_sheet_layout sheet = {&gw_opening_record, "schedule", "openings", columns, n_columns};
    struct gw_load load = loader(model, preset);
    load.assumptions = NULL;
    struct gw_sheet_rows rows;
    gw_sheet_read(&rows, &sheet, source, &load);
    model->openings.items = rows.items;
    model->openings.n = rows.n;
}

bool gw_model_load(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags, const char *path,
                   const char *const *changes, size_t n_changes)
{
    const struct gw_source *source = gw_source_read(arena, path, diags);
    return source && gw_model_load_source(model, arena, diags, source, changes, n_changes);
}

/* What would be read without a setting that has no place is not what was asked. */
static bool change(struct gw_model *model, struct gw_node *root, const char *const *changes, size_t n)
{
    struct gw_settings settings = {.arena = model->arena};
    bool good = true;
    for (size_t i = 0; i < n; i++) {
        const char *text = changes[i], *why;
        if (gw_setting_put(&settings, &gw_project_record, root, text, &why)) continue;
        gw_diag_add(model->diags, GW_ERROR, "bad_setting", gw_strndup(model->arena, text, strcspn(text, "=")),
                    model->source, 0, 0, "%s", why);
        good = false;
    }
    return good;
}

static bool load(struct gw_model *model)
{
    struct gw_arena *arena = model->arena;
    struct gw_diags *diags = model->diags;
    const struct gw_source *source = model->source;
    const char *other = other_file(source->name);
    if (other) {
        gw_diag_add(diags, GW_ERROR, "wrong_file", "", source, 0, 0, "%s", other);
        return false;
    }
    struct gw_node *root = gw_yaml_draft(arena, source, diags);
    if (!root) return false;
    gw_note_input(model, source);
    if (gw_node_get(root, "system") && !gw_node_get(root, "project")) {
        gw_diag_node(diags, GW_ERROR, "wrong_file", "system", gw_node_get(root, "system"),
                     "this is a system file: name it under 'candidates' of a project, and check the project");
        return false;
    }
    if (!change(model, root, model->changes, model->n_changes)) return false;
    if (!change(model, root, model->moves, model->n_moves)) return false;
    struct gw_load loading = loader(model, preset_of(root));
    gw_record_load(&loading, &gw_project_record, root, "", &model->project);
    if (!model->project.node) return false;
    gw_validate_project(model);
    load_openings(model, source->name, loading.preset);
    gw_validate_openings(model);
    if (!diags->errors) gw_settle_breach(model);
    load_systems(model, source->name);
    gw_settle_screws(model);
    gw_diags_sort(diags);
    return diags->errors == 0;
}

bool gw_model_load_source(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags,
                          const struct gw_source *source, const char *const *changes, size_t n_changes)
{
    *model = (struct gw_model){.arena = arena,
                               .diags = diags,
                               .tables = gw_tables_standard(),
                               .source = source,
                               .changes = changes,
                               .n_changes = n_changes,
                               .pressures = 1};
    return load(model);
}

bool gw_model_reload(struct gw_model *model, const struct gw_model *of, struct gw_arena *arena, struct gw_diags *diags,
                     const struct gw_tables *tables)
{
    *model = (struct gw_model){.arena = arena,
                               .diags = diags,
                               .tables = tables,
                               .source = of->source,
                               .changes = of->changes,
                               .n_changes = of->n_changes,
                               .moves = of->moves,
                               .n_moves = of->n_moves,
                               .pressures = of->pressures};
    const bool good = load(model) && (!of->set_source || gw_model_require_source(model, of->set_source));
    model->project.chosen.items = of->project.chosen.items;
    model->project.chosen.n = of->project.chosen.n;
    model->plan_file = of->plan_file;
    model->withs = of->withs;
    model->n_withs = of->n_withs;
    return good;
}

bool gw_model_move(struct gw_model *model, const struct gw_model *of, struct gw_arena *arena, struct gw_diags *diags,
                   const char *const *moves, size_t n_moves)
{
    *model = (struct gw_model){.arena = arena,
                               .diags = diags,
                               .tables = gw_tables_standard(), /* the project's own corrections are read anew */
                               .source = of->source,
                               .changes = of->changes,
                               .n_changes = of->n_changes,
                               .moves = moves,
                               .n_moves = n_moves,
                               .pressures = 1};
    return load(model) && (!of->set_source || gw_model_require_source(model, of->set_source));
}

bool gw_model_take_plan(struct gw_model *model, const char *path)
{
    struct gw_plan_file file;
    const size_t before = model->diags->errors;
    const struct gw_source *source = gw_source_read(model->arena, path, model->diags);
    const struct gw_node *root = source ? gw_yaml_draft(model->arena, source, model->diags) : NULL;
    if (!root) return false;
    gw_note_input(model, source);
    struct gw_load loading = loader(model, preset_of(root));
    loading.assumptions = NULL;
    gw_record_load(&loading, &gw_plan_file_record, root, "", &file);
    model->project.chosen.items = file.chosen.items;
    model->project.chosen.n = file.chosen.n;
    model->plan_file = source->name;
    return model->diags->errors == before;
}
