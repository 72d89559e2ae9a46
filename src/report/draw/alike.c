/* Drawings of many candidates: those with the same figures share one, the gravest stand on the page, the others are
 * named with the command that draws them. */
#include "report/draw/pictures.h"
#include "report/draw/sheet.h"
#include "report/page.h"

#include <string.h>

enum { MOST = 2 }; /* of a kind on one page */

/* Candidates whose drawings say the same: the gravest, or of like ones the first, and the others. */
struct group {
    const struct gw_finding *first;
    struct gw_text names; /* of the others: "Knot 120, Ruff 190" */
};

struct kind {
    const char *what; /* of the drawing's name */
    const struct gw_finding *(*worst)(const struct gw_results *results, const struct gw_system *candidate);
    bool (*alike)(struct gw_arena *arena, const struct gw_results *results, const struct gw_finding *a,
                  const struct gw_finding *b);
    void (*figure)(struct gw_figure *out, struct gw_arena *arena, const struct gw_results *results,
                   const struct gw_finding *of, const char *also);
};

static bool stands_before(const struct gw_finding *a, const struct gw_finding *b)
{
    return gw_graver(a, b) && !gw_graver(b, a);
}

static struct group *group_of(struct page *page, const struct kind *kind, struct group *groups, size_t *n,
                              const struct gw_finding *f)
{
    for (size_t i = 0; i < *n; i++)
        if (kind->alike(page->arena, page->results, groups[i].first, f)) return &groups[i];
    groups[*n] = (struct group){.first = f};
    gw_text_init(&groups[*n].names, page->arena);
    return &groups[(*n)++];
}

static size_t gather(struct page *page, const struct kind *kind, struct group *groups)
{
    const struct gw_judgement *j = &page->results->answer->judgement;
    const struct sheet words = {.arena = page->arena, .shown = page->shown};
    size_t n = 0;
    for (size_t i = 0; i < j->summaries.n; i++) {
        const struct gw_finding *f = kind->worst(page->results, j->summaries.items[i].candidate);
        struct group *g = f && f->demand->element->grid ? group_of(page, kind, groups, &n, f) : NULL;
        if (g && g->first != f)
            gw_text_addf(&g->names, "%s%s", g->names.length ? ", " : "",
                         gw_sheet_name(&words, gw_safe(page->arena, f->candidate->name)));
    }
    for (size_t i = 1; i < n; i++)
        for (size_t k = i; k > 0 && stands_before(groups[k].first, groups[k - 1].first); k--) {
            const struct group other = groups[k];
            groups[k] = groups[k - 1];
            groups[k - 1] = other;
        }
    return n;
}

static const char *name_of(struct page *page, const struct kind *kind, const struct gw_finding *f)
{
    return gw_format(page->arena, "%s:%s:%s", kind->what, gw_picture_word(page->arena, f->demand->element->wall),
                     gw_picture_word(page->arena, f->candidate->name));
}

static const struct kind KINDS[] = {
    {"screws", gw_worst_of_screws, gw_screws_alike, gw_screws_figure},
    {"blast", gw_worst_of_blast, gw_blast_alike, gw_blast_figure},
};
enum { N_KINDS = sizeof KINDS / sizeof *KINDS };

struct drawn {
    struct gw_figure items[N_KINDS * MOST];
    size_t n;
    struct gw_text rest; /* names of drawings that have no room */
};

static void add_kind(struct page *page, const struct kind *kind, struct drawn *out)
{
    struct group *groups = gw_alloc(page->arena, page->results->answer->judgement.summaries.n + 1, sizeof *groups);
    const size_t n = gather(page, kind, groups);
    for (size_t i = 0; i < n; i++) {
        const char *names = groups[i].names.length ? groups[i].names.at : NULL;
        const char *also = names ? gw_format(page->arena, "The same figures: %s.", names) : NULL;
        if (i >= MOST) gw_text_addf(&out->rest, ", %s", name_of(page, kind, groups[i].first));
        else kind->figure(&out->items[out->n++], page->arena, page->results, groups[i].first, also);
    }
}

void gw_page_shared_pictures(struct page *page)
{
    const struct gw_answer *answer = page->results->answer;
    struct drawn drawn = {.n = 0};
    if (!page->report->pictures || !answer->judgement.summaries.n) return;
    gw_text_init(&drawn.rest, page->arena);
    for (size_t i = 0; i < N_KINDS; i++) add_kind(page, &KINDS[i], &drawn);
    const char *own = gw_picture_word(page->arena, answer->judgement.summaries.items[0].candidate->name);
    const char *lead = drawn.n ? "Drawn once for candidates with the same figures, the gravest first. " : "";
    const char *file = answer->model->inputs.n ? answer->model->inputs.items[0].file : "PROJECT.yaml";
    gw_report_section(page->report, GW_PART_ANSWERS, "Drawings of the candidates");
    gw_report_line(page->report,
                   gw_format(page->arena,
                             "%sEach candidate's own: 'galeward check %s -o drawing.svg --drawing NAME'; NAME is "
                             "use:%s, section:%s%s or another of those that '--drawing list' names.",
                             lead, file, own, own, drawn.rest.length ? drawn.rest.at : ""));
    for (size_t i = 0; i < drawn.n; i++) gw_report_figure(page->report, &drawn.items[i]);
}
