/* What is missing, for the first screen: each question once, those that hold back most. */
#include "base/fields.h"
#include "report/check.h"
#include "report/view.h"

#include <string.h>

struct question_row {
    const char *candidate, *words;
    long places;
};
static const struct gw_field QUESTION_ROW[] = {
    F(question_row, candidate, GW_T_TEXT),
    F(question_row, places, GW_T_COUNT),
    FIELD(question_row, "question", words, GW_T_TEXT),
};
static const struct gw_record QUESTION_ROW_RECORD =
    RECORD("question", question_row, QUESTION_ROW, .help = "what to ask");
static const struct view_column QUESTION_COLUMNS[] = {
    COLUMN("Candidate", "candidate"),
    COLUMN("Places", "places"),
    COLUMN("What is missing, whom to ask", "question"),
};
static const struct view QUESTIONS = VIEW(&QUESTION_ROW_RECORD, QUESTION_COLUMNS);

/* So many are shown, but one a candidate up to the second number; before them what the project's own people know. */
enum { ASKED = 7, ASKED_MOST = 12, OF_PROJECT = 6 };

/* Of all candidates that it is asked of. */
struct question {
    const char *words;
    long places, held; /* of one; of all */
    GW_LIST(const char *) names;
    size_t capacity;
    bool project; /* asked once, whoever the candidate is: of engineer, architect, owner */
    bool shown;
};

struct questions {
    struct page *page;
    struct gw_memo known;
    struct question **items;
    size_t n, capacity;
};

static struct question *ask(struct questions *all, const struct verdict_story *story, const struct cause *c)
{
    struct gw_arena *arena = all->page->arena;
    const char *words = gw_cause_words(all->page, c);
    const long places = gw_places_count(&c->at);
    const char *key = c->project ? words : gw_format(arena, "%ld|%s", places, words);
    void **at = gw_memo_at(&all->known, arena, key, strlen(key));
    struct question *q = *at;
    if (!q) {
        *at = q = gw_alloc(arena, 1, sizeof *q);
        *q = (struct question){.words = words, .places = places, .project = c->project};
        all->items = gw_grow(arena, all->items, all->n, &all->capacity, sizeof(struct question *));
        all->items[all->n++] = q;
    }
    q->held += c->held;
    q->names.items = gw_grow(arena, q->names.items, q->names.n, &q->capacity, sizeof *q->names.items);
    q->names.items[q->names.n++] = story->summary->candidate->name;
    return q;
}

/* Those of the project or the others that hold back most, until `most` are shown. */
static size_t choose_held(struct questions *all, bool project, size_t shown, size_t most)
{
    for (struct question *best; shown < most; shown++) {
        best = NULL;
        for (size_t i = 0; i < all->n; i++) {
            struct question *q = all->items[i];
            if (!q->shown && q->project == project && (!best || q->held > best->held)) best = q;
        }
        if (!best) break;
        best->shown = true;
    }
    return shown;
}

/* The project's, the first of each candidate, then what holds back most. */
static size_t choose(struct questions *all, struct question *const *firsts, size_t n)
{
    const bool few = gw_is_short(all->page);
    const size_t own = choose_held(all, true, 0, few ? 1 : OF_PROJECT);
    const size_t most = few ? GW_FIRST_LINES - 1 - own : ASKED_MOST;
    size_t shown = 0;
    for (size_t i = 0; i < n && shown < most; i++) {
        if (!firsts[i] || firsts[i]->shown) continue;
        firsts[i]->shown = true;
        shown++;
    }
    return own + choose_held(all, false, shown, few ? most : ASKED);
}

static const char *whose(struct page *page, const struct question *q, size_t candidates)
{
    if (q->project) return "the project";
    if (q->names.n == 1) return q->names.items[0];
    if (q->names.n == candidates) return "all";
    return gw_format(page->arena, "%s and %zu more", q->names.items[0], q->names.n - 1);
}

void gw_check_questions(struct page *page, const struct verdict_story *stories, size_t n)
{
    struct questions all = {.page = page};
    struct question **firsts = gw_alloc(page->arena, n + 1, sizeof(struct question *));
    struct question_row rows[OF_PROJECT + ASKED_MOST + 1];
    size_t at = 0;
    for (size_t i = 0; i < n; i++)
        for (size_t k = 0; k < stories[i].questions.n; k++) {
            struct question *q = ask(&all, &stories[i], stories[i].questions.items[k]);
            if (!firsts[i] && !q->project) firsts[i] = q;
        }
    if (!all.n) return;
    const size_t shown = choose(&all, firsts, n);
    for (int project = 1; project >= 0; project--)
        for (size_t i = 0; i < all.n; i++) {
            const struct question *q = all.items[i];
            if (q->shown && q->project == project)
                rows[at++] = (struct question_row){whose(page, q, n), q->words, q->places};
        }
    gw_report_section(page->report, GW_PART_FIRST, "What is missing");
    gw_view_list(page, "", &QUESTIONS, rows, at);
    if (all.n > shown) gw_report_line(page->report, gw_format(page->arena, "And %zu more below.", all.n - shown));
}
