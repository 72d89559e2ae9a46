/* What the requirement set's rows ask to be submitted, and nothing in the submittal shows. */
#include "review_internal.h"

#include <ctype.h>
#include <string.h>

/* Rows of one check that miss the same: one comment. */
struct lacking {
    const struct gw_required *first;
    const char *what;
    GW_LIST(const char *) rows;
    size_t capacity;
};
struct lackings {
    struct lacking *items;
    size_t n, capacity;
};

static bool has_word(const char *text, const char *word)
{
    const size_t length = strlen(word);
    for (; *text; text++) {
        size_t n = 0;
        while (word[n] && tolower((unsigned char)text[n]) == word[n]) n++;
        if (n == length) return true;
    }
    return false;
}

static enum gw_test test_of(const char *check)
{
    static const struct {
        const char *check;
        enum gw_test test;
    } of[] = {{"structural", GW_TEST_STRUCTURAL},
              {"water", GW_TEST_WATER},
              {"air", GW_TEST_AIR},
              {"seismic_glass", GW_TEST_SWAY},
              {"debris", GW_TEST_IMPACT},
              {"blast", GW_TEST_BLAST},
              {"other", GW_TEST_OTHER}};
    for (size_t i = 0; i < sizeof of / sizeof *of; i++)
        if (strcmp(of[i].check, check) == 0) return of[i].test;
    return GW_TEST_UNSET;
}

static bool same_name(const char *a, const char *b) { return !a || (b && strcmp(a, b) == 0); }

/* A rating of that test names a report that is submitted, whatever it is worth: that is said of the report. */
static bool has_report(const struct reviewing *r, const struct gw_required *row)
{
    const enum gw_test test = test_of(row->check);
    for (size_t i = 0; i < r->ratings.n; i++) {
        const struct gw_rating *rating = r->ratings.items[i];
        if (rating->test == test && same_name(row->name, rating->name) &&
            gw_submitted_report(r->submittal, rating->report))
            return true;
    }
    return false;
}

static bool has_calculation(const struct reviewing *r)
{
    for (size_t i = 0; i < r->submittal->reports.n; i++)
        if (r->submittal->reports.items[i].place == GW_BY_COMPUTING) return true;
    return false;
}

/* What is asked for in words of its own is looked for by them: reports, calculations, drawings, glass. */
static bool is_shown(const struct reviewing *r, const struct gw_required *row, const char *what)
{
    const struct gw_submittal *s = r->submittal;
    if ((has_word(what, "report") || has_word(what, "test") || has_word(what, "certificate")) && has_report(r, row))
        return true;
    if ((has_word(what, "calculation") || has_word(what, "analysis")) && has_calculation(r)) return true;
    if ((has_word(what, "drawing") || has_word(what, "clearance")) && s->drawings.n) return true;
    return has_word(what, "glass") && s->glass.n > 0;
}

/* A comment on the check, or on a report that is not there, has said it. */
static bool is_said(const struct reviewing *r, const struct gw_required *row)
{
    for (size_t i = 0; i < r->out->comments.n; i++) {
        const struct gw_comment *c = &r->out->comments.items[i];
        const bool stated = c->evidence == GW_BY_STATEMENT; /* that asks for its report, not for what a row lists */
        if (c->consequence <= GW_IT_IS_NOT_SHOWN && !stated && strcmp(c->item, row->check) == 0 &&
            same_name(row->name, c->subject))
            return true;
        if (strcmp(c->item, "report_missing") != 0) continue;
        for (size_t k = 0; k < r->ratings.n; k++) {
            const struct gw_rating *rating = r->ratings.items[k];
            if (rating->report && rating->test == test_of(row->check) && same_name(row->name, rating->name) &&
                gw_words_alike(rating->report, c->subject))
                return true;
        }
    }
    return false;
}

static void note(struct lackings *all, struct reviewing *r, const struct gw_required *row, const char *what)
{
    size_t at = 0;
    while (at < all->n &&
           (strcmp(all->items[at].first->check, row->check) != 0 || strcmp(all->items[at].what, what) != 0))
        at++;
    if (at == all->n) {
        all->items = gw_grow(r->arena, all->items, all->n, &all->capacity, sizeof *all->items);
        all->items[all->n++] = (struct lacking){.first = row, .what = what};
    }
    struct lacking *l = &all->items[at];
    l->rows.items = gw_grow(r->arena, l->rows.items, l->rows.n, &l->capacity, sizeof *l->rows.items);
    l->rows.items[l->rows.n++] = row->id;
}

static void tell(struct reviewing *r, const struct lacking *l)
{
    const struct gw_required *row = l->first;
    struct gw_comment *c =
        gw_comment_add(r, row->check, gw_format(r->arena, "%s: %s", row->id, l->what), GW_IT_IS_NOT_SHOWN);
    c->where = l->rows.n > 1
                   ? GW_SAY(r->arena, "{} and {} rows more", gw_of_text(row->id), gw_of_count((long)l->rows.n - 1))
                   : GW_SAY(r->arena, "{}", gw_of_text(row->id));
    c->submitted = GW_PLAINLY("nothing of it");
    c->needed = GW_SAY(r->arena, "{}", gw_of_text(l->what));
    c->basis = row->test ? GW_SAY(r->arena, "{} of the requirement set, {} (submit)", gw_of_text(row->id),
                                  gw_of_text(row->test))
                         : GW_SAY(r->arena, "{} of the requirement set (submit)", gw_of_text(row->id));
    c->places.items = l->rows.items;
    c->places.n = l->rows.n;
    gw_comment_at(c, r->submittal->node);
}

/* Of drawings or glass alone nothing else is asked here. */
static bool speaks(const struct reviewing *r) { return r->submittal->offered_system || r->submittal->reports.n; }

void gw_review_missing(struct reviewing *r)
{
    const struct gw_requirement_set *set = r->ask->model->set;
    struct lackings all = {.n = 0};
    for (size_t i = 0; set && speaks(r) && i < set->requires.n; i++) {
        const struct gw_required *row = &set->requires.items[i];
        for (size_t k = 0; k < row->submit.n; k++) {
            const char *what = row->submit.items[k];
            if (is_shown(r, row, what))
                gw_complete_add(r, row->check, row->id, GW_SAY(r->arena, "submitted: {}", gw_of_text(what)));
            else if (!is_said(r, row)) note(&all, r, row, what);
        }
    }
    for (size_t i = 0; i < all.n; i++) tell(r, &all.items[i]);
}
