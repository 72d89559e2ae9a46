/* What to ask whom: the questions behind everything that is not shown, each once. */
#include "galeward/answers.h"
#include "galeward/memo.h"

#include <string.h>

/* What stands on links is not shown for their questions, which they ask themselves, unless it has one of its own. */
static bool asks(const struct gw_finding *f)
{
    return f->verdict == GW_NOT_SHOWN && (!(f->demand->check->path && f->link) || gw_said(&f->question)) &&
           gw_said(&f->message);
}

static void ask_once(struct gw_answer *out, struct gw_memo *known, size_t *capacity, struct gw_ask *ask,
                     const struct gw_finding *f)
{
    const struct gw_message *question = gw_said(&f->question) ? &f->question : &f->message;
    const char *words = gw_message_text(ask->arena, question, GW_SI);
    const char *key =
        gw_format(ask->arena, "%s|%s", f->candidate->file ? f->candidate->file : f->candidate->name, words);
    void **at = gw_memo_at(known, ask->arena, key, strlen(key));
    size_t *index = *at;
    if (!index) {
        *at = index = gw_alloc(ask->arena, 1, sizeof *index);
        *index = out->missing.n;
        out->missing.items =
            gw_grow(ask->arena, out->missing.items, out->missing.n, capacity, sizeof *out->missing.items);
        out->missing.items[out->missing.n++] = (struct gw_request){.first = f, .question = *question};
    }
    out->missing.items[*index].places++;
}

void gw_find_missing(struct gw_answer *out, struct gw_ask *ask)
{
    struct gw_memo known = {0};
    size_t capacity = 0;
    for (size_t i = 0; i < out->judgement.findings.n; i++)
        if (asks(&out->judgement.findings.items[i]))
            ask_once(out, &known, &capacity, ask, &out->judgement.findings.items[i]);
}
