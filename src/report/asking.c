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

/* Up to the next clause that asks or orders; one that does neither goes on with the one before it. */
static size_t clause_length(const char *at)
{
    for (const char *p = at; *p; p++)
        if ((*p == ';' || *p == ':') && p[1] == ' ' && kind_of(p + 2) != SAYS) return (size_t)(p - at);
    return strlen(at);
}

const char *gw_ask_and_do(struct gw_arena *arena, const char *sentence)
{
    static const char *const prefixes[] = {[SAYS] = "", [ASKS] = "Ask: ", [ORDERS] = "Do: "};
    enum kind before = SAYS;
    struct gw_text text;
    gw_text_init(&text, arena);
    gw_text_add(&text, "");
    for (const char *at = sentence; *at;) {
        const size_t length = clause_length(at);
        const enum kind kind = kind_of(at);
        const char *prefix = kind != before ? prefixes[kind] : "";
        const char first = *prefix ? at[0] : (char)toupper((unsigned char)at[0]);
        const bool stopped = strchr(".?", at[length - 1]) != NULL;
        gw_text_addf(&text, "%s%s%c%.*s%s", text.length ? " " : "", prefix, first, (int)length - 1, at + 1,
                     stopped        ? ""
                     : kind == ASKS ? "?"
                                    : ".");
        before = kind;
        at += length + (at[length] ? 2 : 0);
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
