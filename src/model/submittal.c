/* Submittals: their keys, what no single field can tell of them, and the systems that they name. */
#include "galeward/submittal.h"
#include "base/fields.h"

#include "model_internal.h"

#include <string.h>

static const struct gw_choice BY[] = {{"independent", GW_BY_INDEPENDENT, "an independent laboratory or engineer"},
                                      {"manufacturer", GW_BY_MANUFACTURER, "whoever sells the system"},
                                      {"unknown", GW_BY_UNKNOWN, "not known"},
                                      {0}};
static const struct gw_choice PLACE_WORDS[] = {{"laboratory", GW_IN_LABORATORY, "a test in a laboratory"},
                                               {"field", GW_IN_THE_FIELD, "a test on a building"},
                                               {"calculation", GW_BY_COMPUTING, "no test: a calculation"},
                                               {0}};
static const struct gw_choice PAGES[] = {{"complete", GW_PAGES_COMPLETE, "every page"},
                                         {"summary", GW_PAGES_SUMMARY, "a summary, or some of the pages"},
                                         {"unknown", GW_PAGES_UNKNOWN, "not known"},
                                         {0}};

static const struct gw_field MAKE_UP[] = {
    F(gw_listed_make_up, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY | GW_ORDERED,
      .help = "from outside to inside"),
};
static const struct gw_record MAKE_UP_RECORD =
    RECORD("make-up", gw_listed_make_up, MAKE_UP, .list_key = "layers", .help = "one make-up of several");
static const struct gw_field REPORT[] = {
    F(gw_submitted_report, id, GW_T_TEXT, .flags = GW_REQUIRED, .help = "its number, as ratings name it"),
    F(gw_submitted_report, standard, GW_T_TEXT, .help = "that it was tested or calculated by: ASTM E330"),
    F(gw_submitted_report, date, GW_T_TEXT, .flags = GW_DATE, .help = "of the report: 2019-05-02"),
    PICK(gw_submitted_report, by, BY, .help = "who tested; absent: not known"),
    PICK(gw_submitted_report, place, PLACE_WORDS, .help = "where; absent: asked"),
    F(gw_submitted_report, system, GW_T_TEXT, .help = "name of the system that was tested; absent: asked"),
    FIELD(gw_submitted_report, "layers", make_ups, GW_T_RECORD, .record = &MAKE_UP_RECORD, .flags = GW_MANY | GW_WRAP,
          .help = "make-up of its lites, from outside to inside, or a list of several make-ups"),
    F(gw_submitted_report, reinforcement, GW_T_TEXT, .help = "of its mullions: none, or what"),
    F(gw_submitted_report, fastening, GW_T_RECORD, .record = &gw_tested_fastening_record,
      .help = "of its pressure plates"),
    PICK(gw_submitted_report, pages, PAGES, .help = "what of it was submitted; absent: asked"),
    PLACE(gw_submitted_report),
};
static const struct gw_record REPORT_RECORD = RECORD("report", gw_submitted_report, REPORT);
static const struct gw_field MARK[] = {
    F(gw_glass_mark, mark, GW_T_TEXT, .flags = GW_REQUIRED, .help = "of the glass schedule"),
    F(gw_glass_mark, lite, GW_T_TEXT, .flags = GW_REQUIRED, .help = "lite type of the project that it is for"),
    F(gw_glass_mark, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY | GW_REQUIRED | GW_ORDERED,
      .help = "from outside to inside"),
    PLACE(gw_glass_mark),
};
static const struct gw_record MARK_RECORD = RECORD("glass mark", gw_glass_mark, MARK);
static const struct gw_field DRAWING[] = {
    F(gw_shop_value, sheet, GW_T_TEXT, .flags = GW_REQUIRED, .help = "number of the drawing"),
    F(gw_shop_value, wall, GW_T_TEXT, .flags = GW_REQUIRED, .help = "wall of the project"),
    F(gw_shop_value, zone, GW_T_INTEGER, LIMITS(4, 5), .help = "4 or 5; absent: the whole wall"),
    F(gw_shop_value, item, GW_T_TEXT, .flags = GW_REQUIRED,
      .help = "what is drawn: span, module, mullion_depth, anchor_spacing, or an item to inspect"),
    F(gw_shop_value, value, GW_T_TEXT, .flags = GW_REQUIRED, .help = "with its unit, or a word of the item"),
    PLACE(gw_shop_value),
};
static const struct gw_record DRAWING_RECORD = RECORD("drawn value", gw_shop_value, DRAWING);
static const struct gw_field HEAD[] = {
    F(gw_submittal_head, number, GW_T_TEXT, .flags = GW_REQUIRED, .help = "of the submittal: \"084413-02\""),
    F(gw_submittal_head, revision, GW_T_INTEGER, LIMITS(0, 1000), .help = "of it"),
    F(gw_submittal_head, date, GW_T_TEXT, .flags = GW_DATE,
      .help = "2026-09-14: the age of reports counts to it; absent: their age is not judged"),
    F(gw_submittal_head, title, GW_T_TEXT, .help = "what is submitted"),
    F(gw_submittal_head, accepted, GW_T_TEXT, .help = "system file that was accepted, relative to this file"),
};
static const struct gw_record HEAD_RECORD = RECORD("head of the submittal", gw_submittal_head, HEAD);
static const struct gw_field SUBMITTAL[] = {
    PICK(gw_submittal, galeward, gw_version_choices, .flags = GW_REQUIRED, .help = "version of the file format: 1"),
    PICK(gw_submittal, units, gw_units_choices, .also = gw_units_words,
         .help = "unit of bare numbers; absent: every number carries its unit"),
    F(gw_submittal, submittal, GW_T_RECORD, .record = &HEAD_RECORD, .flags = GW_REQUIRED, .help = "what it is"),
    F(gw_submittal, offer, GW_T_TEXT,
      .help = "system file of what is offered now, relative to this file; against the accepted one every difference is "
              "a substitution"),
    F(gw_submittal, reports, GW_T_RECORD, .record = &REPORT_RECORD, .flags = GW_MANY,
      .help = "test reports and calculations"),
    F(gw_submittal, glass, GW_T_RECORD, .record = &MARK_RECORD, .flags = GW_MANY, .help = "the glass schedule"),
    F(gw_submittal, drawings, GW_T_RECORD, .record = &DRAWING_RECORD, .flags = GW_MANY,
      .help = "dimensions of the shop drawings"),
    F(gw_submittal, deviations, GW_T_TEXT, .flags = GW_MANY | GW_ALONE,
      .help = "as the submitter wrote them: repeated, never judged by their words"),
    PLACE(gw_submittal),
};
const struct gw_record gw_submittal_record = RECORD("the submittal", gw_submittal, SUBMITTAL);

#define DRAWN(key_, dim_, ...)                                                                                         \
    {                                                                                                                  \
        .key = key_, .type = GW_T_NUMBER, .dim = dim_, __VA_ARGS__                                                     \
    }
const struct gw_field gw_shop_fields[GW_SHOP_ANCHOR_SPACING] = {
    DRAWN("span", GW_LENGTH, LIMITS(0.05, 100), .help = "of a mullion between its anchors"),
    DRAWN("module", GW_LENGTH, LIMITS(0.05, 100), .help = "between mullions"),
    DRAWN("mullion_depth", GW_THICKNESS, LIMITS(0.005, 2), .help = "of the mullion's section"),
    DRAWN("anchor_spacing", GW_LENGTH, LIMITS(0.05, 100), .help = "along the mullion"),
};

struct gw_value gw_shop_shown(const struct gw_shop_value *d)
{
    if (d->what == GW_SHOP_ITEM) return gw_item_shown(d->id, d->read);
    return gw_of_quantity(gw_shop_fields[d->what - 1].dim, d->read.number);
}

const struct gw_submitted_report *gw_submitted_report(const struct gw_submittal *submittal, const char *id)
{
    for (size_t i = 0; id && i < submittal->reports.n; i++)
        if (submittal->reports.items[i].id && gw_words_alike(submittal->reports.items[i].id, id))
            return &submittal->reports.items[i];
    return NULL;
}

/* Rules ------------------------------------------------------------------------------------------------------------ */

#define FAULT(model, node, key, ...)                                                                                   \
    gw_diag_node((model)->diags, GW_ERROR, "bad_value", key, gw_at_key(node, key), __VA_ARGS__)

static void check_reports(struct gw_model *model, const struct gw_submittal *s)
{
    for (size_t i = 0; i < s->reports.n; i++) {
        const struct gw_submitted_report *r = &s->reports.items[i];
        const struct gw_submitted_report *first = gw_submitted_report(s, r->id);
        if (!r->node) continue;
        if (first && first != r && first->node)
            FAULT(model, r->node, "id", "report '%s' is listed twice; first on line %u", r->id, first->node->line);
        const struct gw_node *list = gw_node_get(r->node, "layers"), *at = list ? list->first : NULL;
        const bool several = at && at->kind == GW_SEQUENCE;
        for (size_t k = 0; k < r->make_ups.n && list; k++, at = several && at ? at->next : at)
            if (!several || at)
                gw_check_layers(model, several ? at : list, r->make_ups.items[k].layers.items,
                                r->make_ups.items[k].layers.n);
    }
}

static void no_such_lite(struct gw_model *model, const struct gw_glass_mark *mark)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, mark->lite);
    for (size_t i = 0; i < model->project.lites.n; i++) gw_nearest_offer(&nearest, model->project.lites.items[i].name);
    FAULT(model, mark->node, "lite", "the project has no lite type '%s'%s", mark->lite,
          gw_nearest_question(model->arena, &nearest));
}

static void check_glass(struct gw_model *model, struct gw_submittal *s)
{
    for (size_t i = 0; i < s->glass.n; i++) {
        struct gw_glass_mark *mark = &s->glass.items[i];
        if (!mark->node) continue;
        mark->type = gw_model_lite(model, mark->lite);
        if (mark->lite && !mark->type) no_such_lite(model, mark);
        gw_check_layers(model, gw_node_get(mark->node, "layers"), mark->layers.items, mark->layers.n);
        for (size_t k = 0; mark->mark && k < i; k++)
            if (s->glass.items[k].node && s->glass.items[k].mark && strcmp(s->glass.items[k].mark, mark->mark) == 0)
                FAULT(model, mark->node, "mark", "glass mark '%s' is listed twice; first on line %u", mark->mark,
                      s->glass.items[k].node->line);
    }
}

static enum gw_shop_kind drawn_named(const char *item)
{
    for (size_t i = 0; i < COUNT(gw_shop_fields); i++)
        if (gw_words_alike(gw_shop_fields[i].key, item)) return (enum gw_shop_kind)(i + 1);
    return GW_SHOP_ITEM;
}

static void no_such_item(struct gw_model *model, const struct gw_shop_value *d)
{
    struct gw_nearest nearest;
    gw_nearest_start(&nearest, d->item);
    for (size_t i = 0; i < COUNT(gw_shop_fields); i++) gw_nearest_offer(&nearest, gw_shop_fields[i].key);
    for (int i = 0; i < GW_ITEM_COUNT; i++) gw_nearest_offer(&nearest, gw_item_kinds[i].id);
    FAULT(model, d->node, "item", "there is no item '%s'%s", d->item, gw_nearest_question(model->arena, &nearest));
}

static void read_drawn(struct gw_model *model, struct gw_load *load, struct gw_shop_value *d)
{
    const struct gw_node *value = gw_node_get(d->node, "value");
    d->what = drawn_named(d->item);
    d->id = gw_item_named(d->item);
    d->read = (struct gw_item_value){GW_ABSENT, 0};
    if (d->what == GW_SHOP_ITEM && d->id == GW_ITEM_COUNT) {
        no_such_item(model, d);
        return;
    }
    /* as the registry writes it, whatever the file's hyphens */
    d->item = d->what == GW_SHOP_ITEM ? gw_item_kinds[d->id].id : gw_shop_fields[d->what - 1].key;
    if (!value || !d->value) return;
    if (d->what == GW_SHOP_ITEM) gw_item_read(&d->read, load, d->id, value);
    else gw_field_load(load, &gw_shop_fields[d->what - 1], value, &d->read.number);
}

static void check_drawn_wall(struct gw_model *model, const struct gw_shop_value *d)
{
    struct gw_face face;
    struct gw_nearest nearest;
    if (!d->wall || gw_model_face(model, d->wall, &face)) return;
    gw_nearest_start(&nearest, d->wall);
    for (size_t i = 0; i < model->project.walls.n; i++) gw_nearest_offer(&nearest, model->project.walls.items[i].name);
    for (size_t i = 0; i < model->project.elevations.n; i++)
        gw_nearest_offer(&nearest, model->project.elevations.items[i].name);
    FAULT(model, d->node, "wall", "the project has no wall '%s'%s", d->wall,
          gw_nearest_question(model->arena, &nearest));
}

static void check_drawings(struct gw_model *model, struct gw_load *load, struct gw_submittal *s)
{
    for (size_t i = 0; i < s->drawings.n; i++) {
        struct gw_shop_value *d = &s->drawings.items[i];
        if (!d->node) continue;
        check_drawn_wall(model, d);
        if (d->item) read_drawn(model, load, d);
    }
}

static void check_decisions(struct gw_model *model)
{
    for (size_t i = 0; i < model->project.decisions.n; i++)
        for (size_t k = 0; k < i; k++)
            if (model->project.decisions.items[k].number == model->project.decisions.items[i].number)
                FAULT(model, model->project.decisions.items[i].node, "number", "comment %d is decided twice",
                      model->project.decisions.items[i].number);
}

/* Reading ---------------------------------------------------------------------------------------------------------- */

/* What the file begins with: comments and a mark of the bytes' order aside, its first key is ours. Only of such a file
 * are lines shown. */
static bool is_ours(const struct gw_source *source)
{
    const char *at = source->text + gw_source_mark(source), *end = source->text + source->length;
    static const char key[] = "galeward";
    while (at < end) {
        at += strspn(at, " \t\r\n{\"'");
        if (*at == '#') at += strcspn(at, "\r\n");
        else if (strncmp(at, "---", 3) == 0) at += 3;
        else break;
    }
    return (size_t)(end - at) > sizeof key && memcmp(at, key, sizeof key - 1) == 0;
}

static bool refuse_foreign(struct gw_model *model, const struct gw_source *source, const char *key)
{
    if (is_ours(source)) return false;
    gw_diag_add(model->diags, GW_ERROR, "wrong_file", key, source, 0, 0,
                "no file of this program: it does not begin with 'galeward: 1'");
    return true;
}

static const struct gw_system *load_named(struct gw_model *model, const struct gw_submittal *s, const char *file,
                                          const struct gw_node *at)
{
    if (!file || !at) return NULL;
    const struct gw_source *source = gw_read_beside(model, s->source->name, file, at);
    if (!source || refuse_foreign(model, source, at->key)) return NULL;
    struct gw_system *system = gw_alloc(model->arena, 1, sizeof *system);
    return gw_load_system(model, source, at->key, system) ? system : NULL;
}

static void load_systems(struct gw_submittal *s, struct gw_model *model)
{
    const struct gw_node *head = gw_node_get(s->node, "submittal"), *offer = gw_node_get(s->node, "offer");
    const char *accepted = s->submittal ? s->submittal->accepted : NULL;
    s->accepted_system = load_named(model, s, accepted, head ? gw_node_get(head, "accepted") : NULL);
    s->offered_system = load_named(model, s, s->offer, offer);
}

static bool refuse_other(struct gw_model *model, const struct gw_node *root)
{
    static const struct {
        const char *key, *what;
    } others[] = {{"project", "this is a project"},
                  {"system", "this is a system file"},
                  {"requirement_set", "this is a requirement set"}};
    for (size_t i = 0; i < COUNT(others); i++) {
        const struct gw_node *at = gw_node_get(root, others[i].key);
        if (!at || gw_node_get(root, "submittal")) continue;
        gw_diag_node(model->diags, GW_ERROR, "wrong_file", others[i].key, at, "%s, and no submittal", others[i].what);
        return true;
    }
    return false;
}

static bool load(struct gw_submittal *out, struct gw_model *model)
{
    const size_t before = model->diags->errors;
    const struct gw_node *root = gw_yaml_draft(model->arena, out->source, model->diags);
    if (!root || refuse_other(model, root)) return false;
    gw_note_input(model, out->source);
    struct gw_load loading = gw_loader(model, root);
    const struct gw_source *source = out->source;
    loading.assumptions = NULL;
    gw_record_load(&loading, &gw_submittal_record, root, "", out);
    out->source = source;
    if (!out->node) return false;
    check_reports(model, out);
    check_glass(model, out);
    check_drawings(model, &loading, out);
    check_decisions(model);
    load_systems(out, model);
    return model->diags->errors == before;
}

bool gw_submittal_load_source(struct gw_submittal *out, struct gw_model *model, const struct gw_source *source)
{
    *out = (struct gw_submittal){.source = source};
    const bool good = !refuse_foreign(model, source, "") && load(out, model);
    gw_diags_sort(model->diags);
    return good;
}

bool gw_submittal_load(struct gw_submittal *out, struct gw_model *model, const char *path)
{
    const struct gw_source *source = gw_source_read(model->arena, path, model->diags);
    return source && gw_submittal_load_source(out, model, source);
}
