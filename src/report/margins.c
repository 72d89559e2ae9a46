#include "report/margins.h"

#include "base/fields.h"

#include <math.h>
#include <string.h>

static const char *verdict_word(int verdict) { return gw_verdict_name((enum gw_verdict)verdict); }

#define BEFORE                                                                                                         \
    F(gw_margin, input, GW_T_TEXT, .help = "what moves"),                                                              \
        F(gw_margin, of, GW_T_TEXT, .help = "the building, where there are more")
#define AFTER                                                                                                          \
    F(gw_margin, verdict, GW_T_WORD, .word = verdict_word,                                                             \
      .help = "of the candidate then; where nothing flips it, the one it has"),                                        \
        F(gw_margin, check, GW_T_TEXT, .help = "what flips it"),                                                       \
        FIELD(gw_margin, "element", where, GW_T_TEXT, .help = "and where"),                                            \
    {                                                                                                                  \
        .key = "message", .type = GW_T_MESSAGE, .hops = 1, .via = {offsetof(struct gw_margin, note)},                  \
        .help = "where it flips back, what could not be computed, places that are new then"                            \
    }
static const struct gw_field NUMBER[] = {
    BEFORE,
    F(gw_margin, value, GW_T_NUMBER, .help = "as it is, in `unit`"),
    F(gw_margin, flips_at, GW_T_NUMBER,
      .help = "nearest value on its side, to 0.5 %, with another verdict; null: none from half to double"),
    FIELD(gw_margin, "unit", dim, GW_T_UNIT, .help = "SI unit of the values, as the end of a key"),
    AFTER,
};
static const struct gw_record NUMBER_RECORD =
    RECORD("margin", gw_margin, NUMBER, .help = "how far an input may move, alone");
static const struct gw_field WORD[] = {
    BEFORE,
    FIELD(gw_margin, "value", value_word, GW_T_TEXT, .help = "as it is"),
    FIELD(gw_margin, "flips_at", flips_word, GW_T_TEXT, .help = "a word with another verdict; null: none"),
    AFTER,
};
static const struct gw_record WORD_RECORD = RECORD("margin", gw_margin, WORD, .help = "an input that is a word");
void gw_margins_rows(struct gw_margins *m, struct gw_arena *arena)
{
    m->rows.items = gw_alloc(arena, m->items.n + 1, sizeof *m->rows.items);
    m->rows.n = m->items.n;
    for (size_t i = 0; i < m->items.n; i++) {
        const struct gw_margin *row = &m->items.items[i];
        m->rows.items[i] = (struct gw_described){row->word ? &WORD_RECORD : &NUMBER_RECORD, row};
    }
}

/* The page --------------------------------------------------------------------------------------------------------- */

/* A word of the file as people write it. */
static const char *spoken(struct gw_arena *arena, const char *word)
{
    char *out = gw_strdup(arena, word);
    for (char *c = out; *c; c++)
        if (*c == '_') *c = ' ';
    return out;
}

/* The flip's figure on the safe side of it: less where more flips a pass. */
static const char *figure(struct page *page, const struct gw_margin *m, double value)
{
    const bool above = m->flips_at > m->value;
    if (m->dim == GW_RATIO) {
        struct gw_text text;
        gw_text_init(&text, page->arena);
        gw_add_figure(&text, value, above ? DOWN : UP);
        return text.at;
    }
    return gw_quantity_text(page, m->dim, value, above ? DOWN : UP);
}

static const char *now_words(struct page *page, const struct gw_margin *m)
{
    if (m->word) return spoken(page->arena, m->value_word);
    return m->dim == GW_RATIO ? "1" : gw_quantity_text(page, m->dim, m->value, NEAREST);
}

static const char *flip_words(struct page *page, const struct gw_margin *m)
{
    if (m->word) return m->flips_word ? spoken(page->arena, m->flips_word) : "at none of the others";
    return gw_given(m->flips_at) ? figure(page, m, m->flips_at) : "none from half to double";
}

static const char *note_words(struct page *page, const struct gw_margin *m)
{
    return m->note ? gw_message_text(page->arena, m->note, page->shown) : "";
}

static const char *input_words(struct page *page, const struct gw_margin *m)
{
    return m->of ? gw_format(page->arena, "%s of %s", m->input, m->of) : m->input;
}

static void margin_row(struct page *page, const struct gw_margin *m)
{
    struct gw_report *report = page->report;
    const bool flips = m->flips_word || gw_given(m->flips_at);
    gw_report_cell(report, input_words(page, m));
    gw_report_cell(report, now_words(page, m));
    gw_report_cell(report, flip_words(page, m));
    if (flips) gw_report_toned(report, gw_verdict_tone((int)m->verdict), gw_verdict_name(m->verdict));
    else gw_report_cell(report, "");
    gw_report_cell(report, m->check ? gw_format(page->arena, "%s at %s", m->check, m->where) : "");
    gw_report_cell(report, note_words(page, m));
}

void gw_page_margins(struct page *page, const struct gw_margins *m)
{
    static const struct gw_report_column columns[] = {{.title = "Input"},
                                                      {.title = "Now", .right = true},
                                                      {.title = "Changes at", .right = true},
                                                      {.title = "To"},
                                                      {.title = "By"},
                                                      {.title = "Remark"}};
    gw_report_table(page->report,
                    "What would change it: each input alone, from half to double, the nearest value at which the "
                    "verdict is another.",
                    columns, COUNT(columns));
    for (size_t i = 0; i < m->items.n; i++) margin_row(page, &m->items.items[i]);
}

/* What it has to move by, of its value; of what is no number, or flips to nothing graver, infinite. */
static double move(const struct gw_margins *all, const struct gw_margin *m)
{
    const bool graver = gw_verdict_rank(m->verdict) > gw_verdict_rank(all->verdict);
    return m->word || !graver || !gw_given(m->flips_at) ? (double)INFINITY : fabs(m->flips_at / m->value - 1);
}

/* The least, of inputs that are not told yet. */
static const struct gw_margin *next_margin(const struct gw_margins *all, const struct gw_margin *const *told, size_t n)
{
    const struct gw_margin *best = NULL;
    for (size_t i = 0; i < all->items.n; i++) {
        const struct gw_margin *m = &all->items.items[i];
        bool known = isinf(move(all, m));
        for (size_t k = 0; k < n && !known; k++) known = strcmp(told[k]->input, m->input) == 0 && told[k]->of == m->of;
        if (!known && (!best || move(all, m) < move(all, best))) best = m;
    }
    return best;
}

const char *gw_least_margins(struct page *page, const struct gw_margins *m, size_t most)
{
    enum { TOLD = 3 };
    const struct gw_margin *told[TOLD];
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t n = 0; n < TOLD && n < most && (told[n] = next_margin(m, told, n)) != NULL; n++)
        gw_text_addf(&out, "%s%s at %s %s (now %s)", n ? "; " : "",
                     told[n]->verdict == GW_FAIL ? "fails" : "is not shown", input_words(page, told[n]),
                     flip_words(page, told[n]), now_words(page, told[n]));
    return out.length ? out.at : "";
}
