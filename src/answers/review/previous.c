/* Reading the comments of an earlier result. */
#include "previous.h"

#include "base/json_read.h"

#include <math.h>
#include <string.h>

struct reading {
    struct gw_arena *arena;
    struct gw_diags *diags;
    const struct gw_source *source; /* its name alone */
    const char *project;
    const struct gw_submittal_head *now;
    struct gw_previous *out;
    bool good;
};

static bool refuse(struct reading *r, const char *code, const char *message)
{
    gw_diag_add(r->diags, GW_ERROR, code, NULL, r->source, 0, 0, "%s", message);
    r->good = false;
    return false;
}

/* Of the same submittal, and of no later revision. */
static bool is_before(struct reading *r, const struct gw_json_value *submittal)
{
    const char *number = gw_json_words(gw_json_get(submittal, "number"));
    const double revision = gw_json_double(gw_json_get(submittal, "revision"));
    if (number && r->now->number && strcmp(number, r->now->number) != 0)
        return refuse(r, "other_submittal", "a review of another submittal: its comments have other numbers");
    if (r->now->revision != GW_NO_INTEGER && revision > r->now->revision)
        return refuse(r, "later_revision", "a review of a later revision: what it closed cannot be new here");
    return true;
}

static bool is_ours(struct reading *r, const struct gw_json_value *root)
{
    const double format = gw_json_double(gw_json_get(root, "galeward"));
    if (!(format >= 1) || !gw_json_words(gw_json_get(root, "version")))
        return refuse(r, "no_result", "no result of this program: it does not begin with 'galeward: 1' and a version");
    if (format > 1)
        return refuse(r, "newer", "a result of a newer version of this program: it says 'galeward' above 1");
    if (!gw_json_is_list(gw_json_get(root, "comments")))
        return refuse(r, "other_command", "no result of 'review': it lists no comments");
    const char *project = gw_json_words(gw_json_get(root, "project"));
    if (!project || strcmp(project, r->project) != 0)
        return refuse(r, "other_project", "a review of another project: its comments have other numbers");
    return is_before(r, gw_json_get(root, "submittal"));
}

static const char *words(struct reading *r, const struct gw_json_value *comment, const char *key)
{
    const char *text = gw_json_words(gw_json_get(comment, key));
    return text ? gw_strdup(r->arena, text) : "";
}

static enum gw_consequence consequence(const char *word)
{
    enum gw_consequence c = GW_IT_FAILS;
    while (c < GW_A_REMARK && strcmp(gw_consequence_name(c), word) != 0) c++;
    return c;
}

static enum gw_evidence evidence(const char *word)
{
    enum gw_evidence e = GW_BY_STATEMENT;
    while (e > GW_EVIDENCE_NONE && strcmp(gw_evidence_name(e), word) != 0) e--;
    return e;
}

static const char **places(struct reading *r, const struct gw_json_value *list, size_t *n)
{
    const char **out = gw_alloc(r->arena, gw_json_count(list) + 1, sizeof *out);
    for (size_t i = 0; i < gw_json_count(list); i++) {
        const char *text = gw_json_words(gw_json_item(list, i));
        if (text) out[(*n)++] = gw_strdup(r->arena, text);
    }
    return out;
}

static bool take(struct reading *r, const struct gw_json_value *comment)
{
    const double most = 1e6, number = gw_json_double(gw_json_get(comment, "number"));
    const char *item = gw_json_words(gw_json_get(comment, "item")),
               *subject = gw_json_words(gw_json_get(comment, "subject"));
    if (!item || !subject || !(number >= 1 && number <= most) || number != floor(number))
        return refuse(r, "no_result", "a comment without number, item or subject");
    const struct gw_choice *disposition = gw_choice_match(gw_disposition_choices, words(r, comment, "disposition"));
    struct gw_past_comment *past = &r->out->items[r->out->n++];
    *past = (struct gw_past_comment){
        .number = (int)number,
        .item = gw_strdup(r->arena, item),
        .subject = gw_strdup(r->arena, subject),
        .where = words(r, comment, "where"),
        .submitted = words(r, comment, "submitted"),
        .needed = words(r, comment, "needed"),
        .basis = words(r, comment, "basis"),
        .consequence = consequence(words(r, comment, "consequence")),
        .disposition = disposition ? (enum gw_disposition)disposition->value : GW_DISPOSITION_UNSET,
        .evidence = evidence(words(r, comment, "evidence")),
        .closed = strcmp(words(r, comment, "status"), gw_comment_status_name(GW_COMMENT_CLOSED)) == 0};
    past->places.items = places(r, gw_json_get(comment, "places"), &past->places.n);
    return true;
}

static void use(void *context, const struct gw_json_value *root)
{
    struct reading *r = context;
    if (!is_ours(r, root)) return;
    const struct gw_json_value *list = gw_json_get(root, "comments");
    const size_t n = gw_json_count(list);
    r->out->items = gw_alloc(r->arena, n + 1, sizeof *r->out->items);
    for (size_t i = 0; i < n; i++)
        if (!take(r, gw_json_item(list, i))) return;
}

const struct gw_previous *gw_review_previous(struct gw_arena *arena, const struct gw_source *source,
                                             const char *project, const struct gw_submittal_head *now,
                                             struct gw_diags *diags)
{
    /* What is said of it is said without its lines: it may be anybody's. */
    const struct gw_source *unshown = gw_source_from(arena, source->name, "", 0);
    struct gw_previous *out = gw_alloc(arena, 1, sizeof *out);
    struct reading r = {arena, diags, unshown, project, now, out, true};
    const size_t before = diags->n;
    out->file = source->name;
    const bool read = gw_json_use(arena, source, diags, use, &r);
    for (size_t i = before; i < diags->n; i++) diags->items[i].source = unshown;
    return read && r.good ? out : NULL;
}
