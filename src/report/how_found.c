/* How figures of a table come about, said under it where the page itself has no steps of theirs. */
#include "report/how_found.h"
#include "report/results.h"

#include <string.h>

/* As a shell reads it; a name that no command line holds is left to the reader. */
static const char *typed(struct page *page, const char *name)
{
    enum { LONG = 80 };
    const bool plain =
        strspn(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789/._:-") == strlen(name);
    if (strlen(name) > LONG || strchr(name, '\'')) return NULL;
    return plain ? name : gw_format(page->arena, "'%s'", name);
}

static const char *project_file(struct page *page)
{
    const struct gw_model *model = page->results->answer->model;
    const char *file = model->inputs.n ? typed(page, model->inputs.items[0].file) : NULL;
    return file ? file : "PROJECT";
}

const char *gw_explain_command(struct page *page, const struct gw_element *e)
{
    const char *element = e ? typed(page, e->id) : NULL;
    return gw_format(page->arena, "galeward explain %s %s", project_file(page), element ? element : "ELEMENT");
}

void gw_page_how_planned(struct page *page)
{
    if (!page->report->pictures) return;
    const char *file = project_file(page);
    gw_report_line(page->report, gw_format(page->arena,
                                           "Steps: galeward select %s -o plan.yaml, then galeward explain %s ELEMENT "
                                           "--plan plan.yaml. Costs are sums of those in the files.",
                                           file, file));
}

void gw_page_how_found(struct page *page, const struct gw_element *example, const char *rest)
{
    const bool planned = page->results->answer->plans != NULL;
    const char *command = gw_explain_command(page, example), *with = planned ? ", with the choices of this run" : "";
    if (!page->report->pictures) return;
    gw_report_line(page->report, example ? gw_format(page->arena, "Steps: %s%s, or another element's name.%s%s",
                                                     command, with, *rest ? " " : "", rest)
                                         : gw_format(page->arena, "Steps: %s%s, by the element's name.%s%s", command,
                                                     with, *rest ? " " : "", rest));
}

/* "D2" of what was found so; NULL: the report has it not. */
static const char *derivation_of(struct page *page, const struct gw_finding *f)
{
    const struct gw_derivations *all = &page->results->derivations;
    for (size_t i = 0; i < all->list.n; i++) {
        const struct gw_finding *own = all->list.items[i].finding;
        if (own && own->candidate == f->candidate && own->demand == f->demand)
            return gw_format(page->arena, "D%zu", i + 1);
    }
    return NULL;
}

const char *gw_derivations_of(struct page *page, const struct gw_system *candidate)
{
    const struct gw_derivations *all = &page->results->derivations;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t i = 0; i < all->list.n; i++) {
        const struct gw_finding *own = all->list.items[i].finding;
        if (own && own->candidate == candidate) gw_text_addf(&out, "%sD%zu", out.length ? ", " : "", i + 1);
    }
    return out.length ? out.at : NULL;
}

const char *gw_steps_of(struct page *page, const struct gw_finding *f)
{
    const char *own = derivation_of(page, f), *link = f->link ? derivation_of(page, f->link) : NULL;
    if (link)
        return gw_format(page->arena, "%s%s%s, of %s, on which it leans", own ? own : "", own ? " and " : "", link,
                         f->link->demand->where);
    if (own) return own;
    if (f->evidence != GW_BY_CALCULATION || !f->demand->element) return NULL;
    return gw_format(page->arena, "explain %s", f->demand->where);
}
