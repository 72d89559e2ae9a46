/* --set and --vary: what a key names, and that nothing is said of it twice. */
#include "cli.h"

#include <string.h>

struct search {
    struct gw_arena *arena;
    const char *key;
    const char *found[8], *place; /* place: of the first, '?' for the item of every list on its way */
    const struct gw_field *field;
    size_t n;
    const char *nearest;
    size_t distance;
};

static bool is_list_of_records(const struct gw_field *f)
{
    return f->type == GW_T_RECORD && f->flags & GW_MANY && !(f->flags & (GW_NAMED | GW_WRAP));
}

static void found_key(struct search *s, const struct gw_field *field, const char *path, const char *place)
{
    if (s->n == sizeof s->found / sizeof *s->found) return;
    if (!s->n) {
        s->place = place;
        s->field = field;
    }
    s->found[s->n++] = path;
}

static void search_record(struct search *s, const struct gw_record *record, const char *prefix, const char *placed,
                          unsigned depth)
{
    for (size_t i = 0; i < record->n && depth < 8; i++) {
        const struct gw_field *f = &record->fields[i];
        if (f->type == GW_T_NODE) continue;
        const char *path = gw_format(s->arena, "%s%s%s", prefix, *prefix ? "." : "", f->key);
        const char *place = gw_format(s->arena, "%s%s%s", placed, *prefix ? "." : "", f->key);
        size_t d = gw_edit_distance(s->key, f->key, 3);
        if (d == 0) found_key(s, f, path, place);
        if (d < s->distance) {
            s->distance = d;
            s->nearest = path;
        }
        if (f->type == GW_T_RECORD && !(f->flags & GW_NAMED))
            search_record(s, f->record, path, is_list_of_records(f) ? gw_format(s->arena, "%s.?", place) : place,
                          depth + 1);
    }
}

static const char *joined(struct gw_arena *arena, const char *const *words, size_t n)
{
    struct gw_text list;
    gw_text_init(&list, arena);
    for (size_t i = 0; i < n; i++) gw_text_addf(&list, "%s%s", i ? ", " : "", words[i]);
    return list.length ? list.at : "";
}

static const char *keys_of_project(struct gw_arena *arena)
{
    const struct gw_record *record = &gw_project_record;
    const char **keys = gw_alloc(arena, record->n, sizeof(const char *));
    size_t n = 0;
    for (size_t i = 0; i < record->n; i++)
        if (record->fields[i].key && !(record->fields[i].flags & GW_HIDDEN)) keys[n++] = record->fields[i].key;
    return joined(arena, keys, n);
}

bool find_setting(struct cli *cli, const char *key, struct setting *out)
{
    struct search s = {.arena = &cli->arena, .key = key, .distance = 3};
    *out = (struct setting){.path = key, .place = key}; /* by the file's own names, which it is still to be read for */
    if (strcmp(key, "edition") == 0) out->path = out->place = "codes.wind";
    if (strchr(key, '.') || out->path != key) return true;
    search_record(&s, &gw_project_record, "", "", 0);
    if (s.n == 1) {
        *out = (struct setting){s.found[0], s.place, s.field};
        return true;
    }
    if (s.n) complain("'%s' occurs more than once; give it in full: %s", key, joined(s.arena, s.found, s.n));
    else if (s.nearest) complain("'%s' is not a key of the project file; did you mean '%s'?", key, s.nearest);
    else complain("'%s' is not a key of the project file; its keys are %s", key, keys_of_project(s.arena));
    return false;
}

/* Of --set and --vary in their order: how it was given, and where it leads. */
struct said {
    const char *text, *key, *path;
    bool varied;
};

static bool read_said(struct cli *cli, struct said *out, const char *text, bool varied)
{
    *out = (struct said){.text = text, .varied = varied};
    out->key = gw_strndup(&cli->arena, text, strcspn(text, "="));
    struct setting found;
    if (!find_setting(cli, out->key, &found)) return false;
    out->path = found.path;
    return true;
}

static void complain_of(const struct said *first, const struct said *again)
{
    const char *option = again->varied ? "--vary" : "--set", *done = again->varied ? "varied" : "set";
    const char *same = first->text + strcspn(first->text, "=") + 1, *more = again->text + strcspn(again->text, "=") + 1;
    if (first->varied != again->varied)
        complain("'%s' is set and varied: leave --set %s out", first->path, first->text);
    else if (strcmp(first->key, again->key) != 0)
        complain("%s %s: '%s' and '%s' are one key, %s twice", option, again->text, first->key, again->key, done);
    else if (again->varied)
        complain("--vary %s: '%s' is varied twice; write --vary %s=%s,%s", again->text, again->key, again->key, same,
                 more);
    else complain("--set %s: '%s' is set twice; the first was --set %s", again->text, again->key, first->text);
}

bool check_settings(struct cli *cli)
{
    const struct options *o = &cli->options;
    struct said *all = gw_alloc(&cli->arena, o->n_set + o->n_vary + 1, sizeof *all);
    for (size_t i = 0; i < o->n_set + o->n_vary; i++) {
        bool varied = i >= o->n_set;
        if (!read_said(cli, &all[i], varied ? o->vary[i - o->n_set] : o->set[i], varied)) return false;
        for (size_t k = 0; k < i; k++)
            if (strcmp(all[k].path, all[i].path) == 0) {
                complain_of(&all[k], &all[i]);
                return false;
            }
    }
    return true;
}

const char **full_settings(struct cli *cli, size_t more)
{
    const struct options *o = &cli->options;
    const char **full = gw_alloc(&cli->arena, o->n_set + more + 1, sizeof(const char *));
    for (size_t i = 0; i < o->n_set; i++) {
        size_t length = strcspn(o->set[i], "=");
        struct setting found;
        if (!find_setting(cli, gw_strndup(&cli->arena, o->set[i], length), &found)) return NULL;
        full[i] = gw_format(&cli->arena, "%s%s", found.place, o->set[i] + length);
    }
    return full;
}

/* A comma within [ ], { } or quotes that the value begins with parts nothing. NULL: what is open does not end. */
static const char *end_of_value(const char *at)
{
    const char quote = *at == '"' || *at == '\'' ? *at : '\0';
    size_t depth = 0;
    if (quote) {
        at = strchr(at + 1, quote);
        return at && (!at[1] || at[1] == ',') ? at + 1 : NULL;
    }
    for (; *at && (depth || *at != ','); at++) {
        if (*at == '[' || *at == '{') depth++;
        if ((*at == ']' || *at == '}') && depth) depth--;
    }
    return depth ? NULL : at;
}

/* Without blanks around it, nor the quotes that held its commas together. */
static const char *trimmed(struct gw_arena *arena, const char *from, const char *end)
{
    while (end > from && end[-1] == ' ') end--;
    bool quoted = end - from > 1 && (*from == '"' || *from == '\'') && end[-1] == *from;
    if (quoted) from++, end--;
    return gw_strndup(arena, from, (size_t)(end - from));
}

bool split_values(struct cli *cli, const char *text, const char **values, size_t *n)
{
    *n = 0;
    for (const char *at = text + strcspn(text, "=") + 1;; at++) {
        at += strspn(at, " ");
        const char *end = end_of_value(at);
        if (!end) {
            complain("--vary %s: a bracket or quote is not closed", text);
            return false;
        }
        values[*n] = trimmed(&cli->arena, at, end);
        if (!*values[*n]) {
            complain("--vary %s: a value is missing beside a comma", text);
            return false;
        }
        for (size_t i = 0; i < *n; i++)
            if (strcmp(values[i], values[*n]) == 0) {
                complain("--vary %s: '%s' is given twice", text, values[i]);
                return false;
            }
        ++*n;
        at = end;
        if (!*at) return true;
    }
}
