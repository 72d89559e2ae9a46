/* What is to be asked, and what to be done, of a sentence that says both. */
#include "report/asking.h"

#include "galeward/text.h"

#include <ctype.h>
#include <string.h>

enum kind { SAYS, ASKS, ORDERS };

static bool begins(const char *text, const char *const *with, size_t n)
{
    for (size_t i = 0; i < n; i++)
        if (*text == *with[i] && strncmp(text, with[i], strlen(with[i])) == 0) return true;
    return false;
}

static enum kind kind_of(const char *clause)
{
    static const char *const asking[] = {"how ",       "what ",     "which ",    "where ",   "was ",  "were ",
                                         "is ",        "are ",      "can ",      "could ",   "does ", "do ",
                                         "did ",       "has ",      "have ",     "who ",     "when ", "from which ",
                                         "from where", "of which ", "at which ", "on which "};
    static const char *const ordering[] = {"look ", "measure ", "count ", "pull ", "ask ", "test on", "read torques "};
    if (begins(clause, asking, sizeof asking / sizeof *asking)) return ASKS;
    return begins(clause, ordering, sizeof ordering / sizeof *ordering) ? ORDERS : SAYS;
}

/* A clause, and what it is. */
struct clause {
    const char *at;
    size_t length;
    enum kind kind;
};

/* Up to the next semicolon, and to a colon before what asks or orders: what else follows a colon goes on with it. Not
 * within parentheses. */
static size_t clause_length(const char *at)
{
    long depth = 0;
    for (const char *p = at; *p; p++) {
        depth += (*p == '(') - (*p == ')');
        if (depth > 0 || p[1] != ' ') continue;
        if (*p == ';' || (*p == ':' && kind_of(p + 2) != SAYS)) return (size_t)(p - at);
    }
    return strlen(at);
}

/* False: there is none left. */
static bool next_clause(struct clause *out, const char **at)
{
    if (!**at) return false;
    *out = (struct clause){*at, clause_length(*at), kind_of(*at)};
    *at += out->length + ((*at)[out->length] ? 2 : 0);
    return true;
}

static void add_clause(struct gw_text *text, const char *before, const struct clause *c, bool capital)
{
    const char first = c->length ? c->at[0] : ' ';
    gw_text_addf(text, "%s%c%.*s", before, capital ? (char)toupper((unsigned char)first) : first,
                 c->length ? (int)c->length - 1 : 0, c->at + 1);
}

static void stop(struct gw_text *text, const char *mark)
{
    if (text->length && !strchr(".?", text->at[text->length - 1])) gw_text_add(text, mark);
}

/* What says something, wherever it stands, before what asks and orders. */
static void add_facts(struct gw_text *text, const char *at)
{
    struct clause c;
    while (next_clause(&c, &at))
        if (c.kind == SAYS) add_clause(text, text->length ? "; " : "", &c, !text->length);
    stop(text, ".");
}

const char *gw_ask_and_do(struct gw_arena *arena, const char *sentence)
{
    static const char *const prefixes[] = {[SAYS] = "", [ASKS] = "Ask: ", [ORDERS] = "Do: "};
    enum kind before = SAYS;
    struct clause c;
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add(&text, "");
    add_facts(&text, sentence);
    for (const char *at = sentence; next_clause(&c, &at);) {
        if (c.kind == SAYS) continue;
        const bool same = c.kind == before;
        if (text.length) gw_text_add(&text, " ");
        add_clause(&text, same ? "" : prefixes[c.kind], &c, same);
        stop(&text, c.kind == ASKS ? "?" : ".");
        before = c.kind;
    }
    return text.at;
}

const char *gw_if_missed(struct gw_arena *arena, const char *sentence)
{
    const char *words = gw_ask_and_do(arena, sentence);
    const size_t order = strlen("Do: "), question = strlen("Ask: ");
    if (strncmp(words, "Do: ", order) == 0) return gw_format(arena, "If missed: %s", words + order);
    if (strncmp(words, "Ask: ", question) == 0) return gw_format(arena, "If missed, ask: %s", words + question);
    return gw_format(arena, "If missed: %s", words);
}
