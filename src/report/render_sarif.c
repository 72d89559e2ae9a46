/* Findings as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format), for programs that show them beside the
 * files that they are about. */
#include "galeward/json.h"
#include "report/page.h"

#include <ctype.h>
#include <string.h>

static void text_member(struct gw_json *json, const char *key, const char *text)
{
    gw_json_key(json, key);
    gw_json_text(json, text);
}

static void open_member(struct gw_json *json, const char *key, char bracket)
{
    gw_json_key(json, key);
    gw_json_open(json, bracket);
}

/* {"text": ...} */
static void message(struct gw_json *json, const char *key, const char *text)
{
    open_member(json, key, '{');
    text_member(json, "text", text);
    gw_json_close(json, '}');
}

/* Without "folder/..", as URIs are compared. */
const char *gw_path_without_detours(struct gw_arena *arena, const char *path)
{
    char *out = gw_strdup(arena, path);
    for (char *at; (at = strstr(out, "/../"));) {
        char *from = at;
        while (from > out && from[-1] != '/') from--;
        if (from == at || (at - from == 2 && from[0] == '.' && from[1] == '.')) break;
        memmove(from, at + 4, strlen(at + 4) + 1);
    }
    return out;
}

/* A path as a URI: relative ones stay relative. */
static const char *uri_of(struct gw_arena *arena, const char *given)
{
    const char *path = gw_path_without_detours(arena, given);
    static const char hex[] = "0123456789ABCDEF", plain[] = "-._~/";
    struct gw_text out;
    gw_text_init(&out, arena);
    if (*path == '/') gw_text_add(&out, "file://");
    for (; *path; path++) {
        const unsigned char c = (unsigned char)*path;
        const char escaped[] = {'%', hex[c >> 4], hex[c & 15]};
        if (c < 0x80 && (isalnum(c) || strchr(plain, c))) gw_text_bytes(&out, path, 1);
        else gw_text_bytes(&out, escaped, sizeof escaped);
    }
    return out.at;
}

/* Rules ------------------------------------------------------------------------------------------------------------ */

static size_t first_of_rule(const struct gw_log *log, size_t i)
{
    size_t k = 0;
    while (strcmp(log->list.items[k].rule, log->list.items[i].rule) != 0) k++;
    return k;
}

static long long rule_index(const struct gw_log *log, size_t i)
{
    const size_t first = first_of_rule(log, i);
    long long n = 0;
    for (size_t k = 0; k < first; k++) n += first_of_rule(log, k) == k;
    return n;
}

static void tool(struct gw_json *json, const struct gw_log *log)
{
    open_member(json, "tool", '{');
    open_member(json, "driver", '{');
    text_member(json, "name", "galeward");
    text_member(json, "version", GW_VERSION);
    open_member(json, "rules", '[');
    for (size_t i = 0; i < log->list.n; i++) {
        if (first_of_rule(log, i) != i) continue;
        gw_json_open(json, '{');
        text_member(json, "id", log->list.items[i].rule);
        message(json, "shortDescription", log->list.items[i].rule_text);
        gw_json_close(json, '}');
    }
    gw_json_close(json, ']');
    gw_json_close(json, '}');
    gw_json_close(json, '}');
}

/* Results ---------------------------------------------------------------------------------------------------------- */

static void region(struct gw_json *json, const struct gw_logged *l)
{
    open_member(json, "region", '{');
    gw_json_key(json, "startLine");
    gw_json_integer(json, l->line);
    if (l->column) {
        gw_json_key(json, "startColumn");
        gw_json_integer(json, l->column);
    }
    gw_json_close(json, '}');
}

static void location(struct gw_json *json, const struct gw_logged *l)
{
    gw_json_open(json, '{');
    open_member(json, "physicalLocation", '{');
    open_member(json, "artifactLocation", '{');
    text_member(json, "uri", uri_of(json->out->arena, l->file));
    gw_json_close(json, '}');
    if (l->line) region(json, l);
    gw_json_close(json, '}');
    gw_json_close(json, '}');
}

static void suppression(struct gw_json *json, const char *why)
{
    open_member(json, "suppressions", '[');
    gw_json_open(json, '{');
    text_member(json, "kind", "external");
    text_member(json, "status", "accepted");
    text_member(json, "justification", why);
    gw_json_close(json, '}');
    gw_json_close(json, ']');
}

static void result(struct gw_json *json, const struct gw_log *log, size_t i)
{
    static const char *const levels[] = {"error", "warning", "note"}, *const states[] = {"new", "unchanged", "absent"};
    const struct gw_logged *l = &log->list.items[i];
    gw_json_open(json, '{');
    text_member(json, "ruleId", l->rule);
    gw_json_key(json, "ruleIndex");
    gw_json_integer(json, rule_index(log, i));
    text_member(json, "level", levels[l->level]);
    message(json, "message", l->message);
    open_member(json, "locations", '[');
    if (l->file) location(json, l);
    gw_json_close(json, ']');
    text_member(json, "baselineState", states[l->state]);
    open_member(json, "partialFingerprints", '{');
    text_member(json, "itemAndSubject/v1", l->fingerprint);
    gw_json_close(json, '}');
    if (l->accepted) suppression(json, l->accepted);
    gw_json_close(json, '}');
}

void gw_render_sarif(struct gw_text *out, const struct gw_log *log)
{
    struct gw_json json;
    gw_json_init(&json, out, true);
    gw_json_open(&json, '{');
    text_member(&json, "$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json");
    text_member(&json, "version", "2.1.0");
    open_member(&json, "runs", '[');
    gw_json_open(&json, '{');
    tool(&json, log);
    text_member(&json, "columnKind", "unicodeCodePoints");
    open_member(&json, "results", '[');
    for (size_t i = 0; i < log->list.n; i++) result(&json, log, i);
    gw_json_close(&json, ']');
    gw_json_close(&json, '}');
    gw_json_close(&json, ']');
    gw_json_close(&json, '}');
    gw_text_add(out, "\n");
}
