/* Requirement sets: their keys, and what no single field can tell of them. */
#include "base/fields.h"
#include "galeward/model.h"

#include "model_internal.h"

#include <string.h>

static const struct gw_choice PARTS[] = {
    {"below roof", GW_BELOW_ROOF, "below the roof line"}, {"above roof", GW_ABOVE_ROOF, "above the roof line"}, {0}};
static const struct gw_choice OF[] = {
    {"framing", GW_SET_FRAMING, "mullions, transoms and anchors, where they take other pressures than the lites"}, {0}};
static const struct gw_choice EVIDENCE[] = {
    {"test", GW_ASKS_TEST, "a test counts"}, {"calculation", GW_ASKS_CALCULATION, "a calculation counts"}, {0}};

static const struct gw_field ROW[] = {
    F(gw_required, id, GW_T_TEXT, .flags = GW_REQUIRED, .help = "number of the row, R-01"),
    F(gw_required, check, GW_T_TEXT, .flags = GW_REQUIRED,
      .help = "structural, water, air, debris, blast, seismic_glass or other"),
    F(gw_required, name, GW_T_TEXT, .help = "other: name of the rating"),
    F(gw_required, wall, GW_T_TEXT, .help = "wall, or elevation of the schedule; absent: all"),
    F(gw_required, zone, GW_T_INTEGER, LIMITS(4, 5), .help = "4 or 5; absent: both"),
    PICK(gw_required, part, PARTS, .help = "below or above the roof line; absent: both"),
    PICK(gw_required, of, OF, .help = "structural: of framing alone"),
    PICK(gw_required, component, gw_component_choices,
         .help = "water, air: of vents or doors; absent: of what is fixed"),
    NUM(gw_required, from, GW_LENGTH, LIMITS(-100, 1000), .help = "debris: lites whose lowest edge is no lower"),
    NUM(gw_required, to, GW_LENGTH, LIMITS(-100, 1000), .help = "debris: lites whose lowest edge is no higher"),
    NUM(gw_required, inward, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(1, 1e6),
        .help = "structural: of the lite that takes most, inward"),
    NUM(gw_required, outward, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(1, 1e6),
        .help = "the same outward, magnitude"),
    PICK(gw_required, level, gw_level_choices, .also = gw_level_words, .help = "structural: strength or asd"),
    NUM(gw_required, pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(1, 1e7),
        .help = "water: test pressure; blast: peak reflected pressure"),
    NUM(gw_required, leakage, GW_LEAKAGE, LIMITS(1e-7, 1), .help = "air: greatest leakage"),
    NUM(gw_required, at, GW_PRESSURE, LIMITS(1, 5000), .help = "air: at this pressure difference"),
    NUM(gw_required, drift, GW_THICKNESS, LIMITS(1e-5, 2),
        .help = "seismic_glass: greatest story drift, with the importance factor"),
    PICK(gw_required, missile, gw_missile_choices, .help = "debris: missile level"),
    F(gw_required, wind_zone, GW_T_INTEGER, LIMITS(1, 4), .help = "debris: wind zone"),
    NUM(gw_required, impulse, GW_IMPULSE, LIMITS(0.001, 1e7), .help = "blast: reflected impulse"),
    PICK(gw_required, hazard, gw_hazard_choices, .help = "blast: the worst hazard rating admitted"),
    NUM(gw_required, at_least, GW_RATIO, .help = "other: least value"),
    NUM(gw_required, at_most, GW_RATIO, .help = "other: greatest value"),
    F(gw_required, test, GW_T_TEXT, .help = "test method, as it is to be printed"),
    F(gw_required, evidence, GW_T_CHOICE, .choices = EVIDENCE, .flags = GW_MANY | GW_ALONE,
      .help = "evidence that counts; absent: as the project says"),
    F(gw_required, submit, GW_T_TEXT, .flags = GW_MANY | GW_ALONE, .help = "what is to be submitted"),
    PLACE(gw_required),
};
const struct gw_record gw_required_record =
    RECORD("row of the set", gw_required, ROW, .help = "one requirement: what is asked, where, and how it is shown");

static const struct gw_field INPUT[] = {
    F(gw_set_input, file, GW_T_TEXT, .flags = GW_REQUIRED, .help = "file that the set was made from"),
    F(gw_set_input, sha256, GW_T_TEXT, .flags = GW_REQUIRED, .help = "of its bytes"),
};
static const struct gw_record INPUT_RECORD = RECORD("input of the set", gw_set_input, INPUT);
static const struct gw_field HEAD[] = {
    F(gw_set_head, project, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name of the project"),
    F(gw_set_head, number, GW_T_TEXT, .help = "its number"),
    F(gw_set_head, inputs, GW_T_RECORD, .record = &INPUT_RECORD, .flags = GW_MANY,
      .help = "files that it was made from; one that has changed since is a warning"),
    F(gw_set_head, version, GW_T_TEXT, .help = "of the program that wrote it"),
};
static const struct gw_record HEAD_RECORD = RECORD("head of the set", gw_set_head, HEAD);
static const struct gw_field SET[] = {
    PICK(gw_requirement_set, galeward, gw_version_choices, .flags = GW_REQUIRED,
         .help = "version of the file format: 1"),
    PICK(gw_requirement_set, units, gw_units_choices,
         .help = "unit of bare numbers; absent: every number carries its unit"),
    F(gw_requirement_set, requirement_set, GW_T_RECORD, .record = &HEAD_RECORD, .flags = GW_REQUIRED,
      .help = "whose set it is"),
    F(gw_requirement_set, requires, GW_T_RECORD, .record = &gw_required_record, .flags = GW_MANY | GW_REQUIRED,
      .help = "the rows"),
    NUM(gw_requirement_set, report_age, GW_TIME, LIMITS(86400, 1e10), .example = "10 years",
        .help = "with its unit (10 years): reports older than this do not count: judged by review, where a submittal "
                "gives their dates; absent: age is a remark"),
    PLACE(gw_requirement_set),
};
const struct gw_record gw_requirement_set_record = RECORD("the requirement set", gw_requirement_set, SET);

/* What only the rows of some checks have, and must have. */
struct shape {
    const char *check;
    const char *needs[3]; /* keys */
    const char *takes[6]; /* besides */
};
static const struct shape SHAPES[] = {
    {"structural", {"inward", "outward", "level"}, {"wall", "zone", "part", "of"}},
    {"water", {"pressure"}, {"wall", "component"}},
    {"air", {"leakage", "at"}, {"wall", "component"}},
    {"debris", {"missile"}, {"wall", "wind_zone", "zone", "part", "from", "to"}},
    {"blast", {"pressure", "impulse"}, {"hazard"}},
    {"seismic_glass", {"drift"}, {"wall", "zone", "part"}},
    {"other", {"name"}, {"at_least", "at_most"}},
};
static const char *const EVERYWHERE[] = {"id", "check", "test", "evidence", "submit"};

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_at_key(node, key), __VA_ARGS__)

static bool among(const char *const *list, size_t n, const char *word)
{
    for (size_t i = 0; i < n && list[i]; i++)
        if (strcmp(list[i], word) == 0) return true;
    return false;
}

static const struct shape *shape_of(const char *check)
{
    for (size_t i = 0; i < COUNT(SHAPES); i++)
        if (strcmp(SHAPES[i].check, check) == 0) return &SHAPES[i];
    return NULL;
}

static void refuse_check(struct gw_model *model, const struct gw_required *row)
{
    const char *near = NULL;
    struct gw_text names;
    size_t least = 3;
    gw_text_init(&names, model->arena);
    for (size_t i = 0; i < COUNT(SHAPES); i++) {
        const size_t d = gw_edit_distance(row->check, SHAPES[i].check, least);
        gw_text_addf(&names, "%s%s", i ? " | " : "", SHAPES[i].check);
        if (d >= least) continue;
        least = d;
        near = SHAPES[i].check;
    }
    FAULT(model, row->node, "check", "no row of a set asks for '%s': %s%s%s%s", row->check, names.at,
          near ? "; did you mean '" : "", near ? near : "", near ? "'?" : "");
}

/* Keys that a row of its check must have, and those that it may have. */
static void check_shape(struct gw_model *model, const struct gw_required *row)
{
    const struct shape *shape = shape_of(row->check);
    if (!shape) {
        refuse_check(model, row);
        return;
    }
    for (size_t i = 0; i < COUNT(shape->needs) && shape->needs[i]; i++)
        if (!gw_node_get(row->node, shape->needs[i]))
            FAULT(model, row->node, "check", "%s: a row of %s needs %s", row->id, row->check, shape->needs[i]);
    for (const struct gw_node *n = row->node->first; n; n = n->next) {
        if (!n->key || !gw_record_field(&gw_required_record, n->key)) continue;
        if (among(EVERYWHERE, COUNT(EVERYWHERE), n->key) || among(shape->needs, COUNT(shape->needs), n->key) ||
            among(shape->takes, COUNT(shape->takes), n->key))
            continue;
        gw_diag_key(model->diags, GW_ERROR, "bad_value", n, "%s: a row of %s has no '%s'", row->id, row->check, n->key);
    }
    if (strcmp(row->check, "other") == 0 && gw_given(row->at_least) == gw_given(row->at_most))
        FAULT(model, row->node, "check", "%s: at_least or at_most, one of the two", row->id);
}

/* Those without a wall stand where GW_WALL_UNKNOWN says. */
static bool openings_stand_in(const struct gw_model *model, const char *wall)
{
    for (size_t i = 0; i < model->openings.n; i++) {
        const char *own = model->openings.items[i].wall ? model->openings.items[i].wall : GW_WALL_UNKNOWN;
        if (strcmp(own, wall) == 0) return true;
    }
    return false;
}

static void check_wall(struct gw_model *model, const struct gw_required *row)
{
    struct gw_face face;
    const char *near = NULL;
    size_t least = 4;
    if (!row->wall || gw_model_face(model, row->wall, &face) || openings_stand_in(model, row->wall)) return;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const size_t d = gw_edit_distance(row->wall, model->project.walls.items[i].name, least);
        if (d >= least) continue;
        least = d;
        near = model->project.walls.items[i].name;
    }
    FAULT(model, row->node, "wall", "%s: the project has no wall '%s'%s%s%s", row->id, row->wall,
          near ? "; did you mean '" : "", near ? near : "", near ? "'?" : "");
}

static bool same_text(const char *a, const char *b) { return a && b ? strcmp(a, b) == 0 : a == b; }

static bool same_place(const struct gw_required *a, const struct gw_required *b)
{
    const bool from = gw_given(a->from) == gw_given(b->from) && !(a->from < b->from) && !(a->from > b->from);
    const bool to = gw_given(a->to) == gw_given(b->to) && !(a->to < b->to) && !(a->to > b->to);
    return same_text(a->check, b->check) && same_text(a->wall, b->wall) && same_text(a->name, b->name) &&
           a->zone == b->zone && a->part == b->part && a->of == b->of && a->component == b->component && from && to;
}

static void check_twice(struct gw_model *model, const struct gw_requirement_set *set, size_t i)
{
    const struct gw_required *row = &set->requires.items[i];
    for (size_t k = 0; k < i; k++) {
        const struct gw_required *before = &set->requires.items[k];
        if (!before->id || !before->check) continue;
        if (strcmp(before->id, row->id) == 0) {
            FAULT(model, row->node, "id", "%s is given twice; first on line %u", row->id, before->node->line);
            return;
        }
        if (same_place(before, row)) {
            FAULT(model, row->node, "check", "%s asks what %s asks at the same place", row->id, before->id);
            return;
        }
    }
}

static const char *last_part(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}

/* Files are known by their names alone: whoever reads the set may stand elsewhere. */
static void compare_inputs(struct gw_model *model, const struct gw_requirement_set *set)
{
    const struct gw_set_head *head = set->requirement_set;
    for (size_t i = 0; i < head->inputs.n; i++)
        for (size_t k = 0; k < model->inputs.n; k++) {
            const struct gw_set_input *was = &head->inputs.items[i];
            const struct gw_input *is = &model->inputs.items[k];
            if (strcmp(last_part(was->file), last_part(is->file)) != 0 || strcmp(was->sha256, is->sha256) == 0)
                continue;
            gw_diag_node(model->diags, GW_WARNING, "changed", "inputs", gw_node_get(set->node, "requirement_set"),
                         "%s has changed since the requirement set was written", is->file);
        }
}

static void compare_project(struct gw_model *model, const struct gw_requirement_set *set)
{
    const struct gw_set_head *head = set->requirement_set;
    const struct gw_info *info = model->project.project;
    const struct gw_node *node = gw_node_get(set->node, "requirement_set");
    if (strcmp(head->project, info->name) != 0 || (head->number && !same_text(head->number, info->number)))
        FAULT(model, node, "project", "a set of another project: '%s'%s%s, not '%s'%s%s", head->project,
              head->number ? ", " : "", head->number ? head->number : "", info->name, info->number ? ", " : "",
              info->number ? info->number : "");
    else compare_inputs(model, set);
}

/* A blast that the project is silent of, or waives, is the set's: checks find it where a project's stands. */
static void take_blast(struct gw_model *model, const struct gw_required *row)
{
    const struct gw_site *site = model->project.site;
    const bool own = site->blast && site->blast->none != GW_BLAST_NONE;
    struct gw_blast *blast = gw_alloc(model->arena, 1, sizeof *blast);
    struct gw_site *with = gw_alloc(model->arena, 1, sizeof *with);
    if (own) *blast = *site->blast;
    else
        *blast = (struct gw_blast){
            .pressure = row->pressure, .impulse = row->impulse, .charge = GW_ABSENT, .standoff = GW_ABSENT};
    if (row->hazard) blast->hazard = row->hazard;
    *with = *site;
    with->blast = blast;
    model->site_blast = own ? site->blast : NULL;
    model->project.site = with;
}

/* Ratings have no date to judge by. */
static void warn_of_age(struct gw_model *model, const struct gw_requirement_set *set)
{
    const struct gw_node *age = gw_node_get(set->node, "report_age");
    gw_diag_node(model->diags, GW_WARNING, "not_judged", "report_age", age,
                 "reports older than %s do not count: judged by review, where a submittal gives their dates, and not "
                 "here",
                 age->text);
}

static bool load_set(struct gw_model *model, const struct gw_source *source)
{
    struct gw_requirement_set *set = gw_alloc(model->arena, 1, sizeof *set);
    const struct gw_node *root = gw_yaml_draft(model->arena, source, model->diags);
    const size_t errors = model->diags->errors;
    if (!root) return false;
    gw_note_input(model, source);
    struct gw_load load = gw_loader(model, root);
    load.assumptions = NULL;
    const bool good = gw_record_load(&load, &gw_requirement_set_record, root, "", set);
    for (size_t i = 0; i < set->requires.n; i++) {
        if (!set->requires.items[i].id || !set->requires.items[i].check) continue;
        check_shape(model, &set->requires.items[i]);
        check_wall(model, &set->requires.items[i]);
        check_twice(model, set, i);
    }
    if (good) compare_project(model, set);
    if (model->diags->errors > errors) return false;
    for (size_t i = 0; i < set->requires.n; i++)
        if (set->requires.items[i].check && strcmp(set->requires.items[i].check, "blast") == 0)
            take_blast(model, &set->requires.items[i]);
    if (gw_given(set->report_age) && !model->judges_ages) warn_of_age(model, set);
    model->set = set;
    return true;
}

bool gw_model_require_source(struct gw_model *model, const struct gw_source *source)
{
    model->set_source = source;
    const bool good = load_set(model, source);
    gw_diags_sort(model->diags);
    return good && !model->diags->errors;
}

bool gw_model_require(struct gw_model *model, const char *path)
{
    const struct gw_source *source = gw_source_read(model->arena, path, model->diags);
    return source && gw_model_require_source(model, source);
}
