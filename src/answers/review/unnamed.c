/* Stated capacities that name no report: what stands on the system file's own word, and what an evidence rule makes of
 * it. Each is held against the same system in which it alone would name one. */
#include "causes.h"

#include <string.h>

/* Its own figure counts for nothing without a report, and says so: the usual one is judged. */
static bool counts_without(const char *key) { return strcmp(key, "silicone") != 0; }

/* Keys of records that may name a report and do not: "anchor", "mullion.past_anchor". */
struct paths {
    const char **items;
    size_t n, capacity;
};

static void add_path(struct paths *paths, struct reviewing *r, const char *path)
{
    for (size_t i = 0; i < paths->n; i++)
        if (strcmp(paths->items[i], path) == 0) return;
    paths->items = gw_grow(r->arena, paths->items, paths->n, &paths->capacity, sizeof *paths->items);
    paths->items[paths->n++] = path;
}

static const char *inner_path(struct gw_arena *arena, const char *path, const char *key)
{
    return *path ? gw_format(arena, "%s.%s", path, key) : key;
}

static void find_paths(struct paths *paths, struct reviewing *r, const struct gw_record *record, const void *at,
                       const char *path)
{
    for (size_t i = 0; at && i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        const void *member = (const char *)at + f->offset;
        if (f->flags & GW_MANY) continue; /* ratings; options are taken before */
        if (f->type == GW_T_RECORD && counts_without(f->key))
            find_paths(paths, r, f->record, *(const void *const *)member, inner_path(r->arena, path, f->key));
        else if (f->flags & GW_REPORT && *path && !*(const char *const *)member) add_path(paths, r, path);
    }
}

static const void *with_reports(struct reviewing *r, const struct gw_record *record, const void *at, const char *path,
                                const char *except)
{
    char *copy = gw_alloc(r->arena, 1, record->size);
    bool other = false;
    memcpy(copy, at, record->size);
    for (size_t i = 0; i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        const void **member = (const void **)(void *)(copy + f->offset), *inner;
        if (f->flags & GW_MANY) continue;
        if (f->type == GW_T_RECORD && *member && counts_without(f->key)) {
            inner = *member;
            *member = with_reports(r, f->record, inner, inner_path(r->arena, path, f->key), except);
            other = other || *member != inner;
        } else if (f->flags & GW_REPORT && *path && !*member && !(except && strcmp(path, except) == 0)) {
            *member = "its report";
            other = true;
        }
    }
    return other ? copy : at;
}

void gw_name_reports(struct reviewing *r, struct gw_system *system, const char *except)
{
    const struct gw_system *other = with_reports(r, &gw_system_record, system, "", except);
    if (other != system) *system = *other;
}

/* What stands on it ------------------------------------------------------------------------------------------------ */

static bool is_stated(const struct gw_finding *named, const struct gw_finding *not_named)
{
    const bool judged = not_named->verdict == GW_PASS || not_named->verdict == GW_FAIL;
    return judged && not_named->evidence == GW_BY_STATEMENT && named->evidence != GW_BY_STATEMENT;
}

struct standing {
    const struct gw_finding *worst;
    const char **places;
    size_t n;
};

static bool has_place(const struct standing *s, const char *where)
{
    for (size_t i = 0; i < s->n; i++)
        if (strcmp(s->places[i], where) == 0) return true;
    return false;
}

/* Where it governs: a lite whose path leads over it says so of the link. */
static struct standing standing_on(struct reviewing *r, const struct gw_finding *named, const struct gw_finding *is)
{
    const size_t n = r->bench.judgement.demands.n;
    struct standing out = {.places = gw_alloc(r->arena, n + 1, sizeof *out.places)};
    for (size_t i = 0; i < n; i++) {
        if (!is_stated(&named[i], &is[i])) continue;
        r->stated[i] = true;
        if (is[i].demand->check->path) continue;
        if (!has_place(&out, is[i].demand->where)) out.places[out.n++] = is[i].demand->where;
        if (!out.worst || gw_graver(&is[i], out.worst)) out.worst = &is[i];
    }
    return out;
}

static struct gw_message standing_words(struct reviewing *r, const struct standing *s)
{
    const struct gw_finding *f = s->worst;
    const struct gw_message used =
        gw_given(f->utilization) ? GW_SAY(r->arena, ", {} of what is stated is used", gw_of_number(f->utilization, 3))
                                 : (struct gw_message){0};
    const struct gw_message more =
        s->n > 1 ? GW_SAY(r->arena, " and {} more", gw_of_count((long)s->n - 1)) : (struct gw_message){0};
    return GW_SAY(r->arena, "{} stands on the system file's own word at {}{}{}", gw_of_text(f->demand->check->id),
                  gw_of_text(f->demand->where), gw_of_message(&more), gw_of_message(&used));
}

static const struct gw_node *node_of(const struct reviewing *r, const char *path)
{
    const struct gw_node *node = r->judged->node, *next;
    for (const char *key = path; node && *key; node = next ? next : node) {
        const size_t n = strcspn(key, ".");
        next = gw_node_get(node, gw_strndup(r->arena, key, n));
        if (!next) break; /* an option's */
        key += n + (key[n] == '.');
    }
    return node;
}

static void tell(struct reviewing *r, const char *path, const struct effect *effect, const struct standing *s)
{
    const enum gw_consequence consequence = effect->n ? GW_IT_IS_NOT_SHOWN : GW_A_REMARK;
    struct gw_comment *c = gw_comment_add(r, "report_unnamed", path, consequence);
    if (effect->n) gw_comment_effect(c, effect);
    else {
        c->effect = standing_words(r, s);
        c->places.items = s->places;
        c->places.n = s->n;
        c->disposition = GW_CORRECTIONS_NOTED; /* the report */
    }
    c->where = GW_SAY(r->arena, "{} of {}", gw_of_text(path), gw_of_text(r->judged->name));
    c->submitted = GW_PLAINLY("a stated capacity that names no report");
    c->needed = GW_PLAINLY("the report of the test or calculation that gives it, every page");
    c->basis = effect->n ? GW_PLAINLY("a figure that names no report is a statement, which the project's evidence rule "
                                      "does not take")
                         : GW_PLAINLY("a figure that names no report is a statement");
    c->ask = GW_PLAINLY("which report gives it? Ask the manufacturer, or the engineer who stated it");
    c->evidence = GW_BY_STATEMENT;
    gw_comment_at(c, node_of(r, path));
}

static const struct gw_finding *judge_named(struct bench *bench, struct reviewing *r, const struct paths *except)
{
    struct look *looks = gw_alloc(r->arena, except->n + 1, sizeof *looks);
    for (size_t i = 0; i <= except->n; i++) {
        looks[i] = r->bench.looks[0];
        looks[i].named = true;
        looks[i].unnamed = i < except->n ? except->items[i] : NULL;
    }
    gw_bench_judge(r, bench, r->ask->model, r->ask->takeoff, looks, except->n + 1);
    return gw_bench_findings(bench, except->n);
}

static bool differs(const struct reviewing *r, const struct gw_finding *named)
{
    const struct gw_finding *is = gw_bench_findings(&r->bench, 0);
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++)
        if (named[i].evidence != is[i].evidence || named[i].verdict != is[i].verdict) return true;
    return false;
}

/* Most systems have keys that could name a report and state nothing: one look tells whether any matters. */
void gw_tell_unnamed(struct reviewing *r)
{
    struct paths paths = {.n = 0};
    struct bench *bench = gw_alloc(r->arena, 2, sizeof *bench);
    for (size_t i = 0; i < r->built.n; i++) find_paths(&paths, r, &gw_system_record, r->built.items[i].system, "");
    if (!paths.n || !differs(r, judge_named(&bench[0], r, &(struct paths){.n = 0}))) return;
    const struct gw_finding *named = judge_named(&bench[1], r, &paths);
    for (size_t i = 0; i < paths.n; i++) {
        const struct gw_finding *is = gw_bench_findings(&bench[1], i);
        const struct standing standing = standing_on(r, named, is);
        struct effect effect;
        gw_effect_of(&effect, r, named, is, r->bench.judgement.demands.n);
        if (!effect.n && !standing.n) continue;
        tell(r, paths.items[i], &effect, &standing);
        gw_comment_tells(r, &effect);
    }
}
