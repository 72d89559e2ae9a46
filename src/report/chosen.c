/* With which choices candidates were judged, said before their verdicts. */
#include "galeward/plan.h"
#include "report/page.h"

#include <string.h>

static void add_places(struct gw_text *out, const struct gw_plan_places *places, const char *const *words, size_t first)
{
    for (size_t k = first; k < places->n; k++)
        if (strcmp(words[k], words[first]) == 0)
            gw_text_addf(out, "%szone %d of %s%s", k > first ? ", " : "", places->items[k].zone, places->items[k].wall,
                         places->items[k].parapet ? " above the roof" : "");
}

/* Places where the same is chosen, once. */
static void tell(struct page *page, const struct gw_planned *planned, const char *lead)
{
    const struct gw_plan_places *places = planned->plan.places;
    const struct gw_model *model = page->results->answer->model;
    const char **words = gw_alloc(page->arena, places->n + 1, sizeof *words);
    struct gw_text out;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < places->n; p++) words[p] = gw_choice_words(&planned->plan, p, model, page->arena);
    for (size_t p = 0; p < places->n; p++) {
        bool told = !*words[p];
        size_t n = 0;
        for (size_t k = 0; k < p && !told; k++) told = strcmp(words[k], words[p]) == 0;
        if (told) continue;
        for (size_t k = p; k < places->n; k++) n += strcmp(words[k], words[p]) == 0;
        gw_text_addf(&out, "%s%s (", out.length ? "; " : "", words[p]);
        if (n == places->n) gw_text_add(&out, "everywhere");
        else add_places(&out, places, words, p);
        gw_text_add(&out, ")");
    }
    gw_report_item(page->report, gw_format(page->arena, "%s%s", lead, out.at));
}

bool gw_has_choices(const struct gw_model *model)
{
    for (size_t i = 0; i < model->project.lites.n; i++)
        if (model->project.lites.items[i].alternatives.n) return true;
    for (size_t i = 0; i < model->systems.n; i++)
        if (model->systems.items[i].options.n) return true;
    return false;
}

/* Where another page may say of the same candidate that it passes. */
static void as_offered(struct page *page, const struct gw_model *model)
{
    if (model->systems.n && gw_has_choices(model))
        gw_report_line(page->report,
                       gw_is_short(page)
                           ? "As offered, without options; 'select' looks for those with which it passes."
                           : "As offered, without options, and the project's lites with their own make-ups; "
                             "'select' looks for those with which it passes.");
}

void gw_page_chosen(struct page *page)
{
    const struct gw_plans *plans = page->results->answer->plans;
    const struct gw_model *model = page->results->answer->model;
    if (!plans) {
        as_offered(page, model);
        return;
    }
    gw_report_line(page->report, model->plan_file
                                     ? gw_format(page->arena, "Judged with the plan of %s:", model->plan_file)
                                     : "Judged with what is chosen:");
    for (size_t c = 0; c < model->systems.n; c++) {
        const char *name = model->systems.items[c].name;
        if (plans->items[c].chosen) tell(page, &plans->items[c], gw_format(page->arena, "%s: ", name));
        else gw_report_item(page->report, gw_format(page->arena, "%s: as it is, nothing is chosen for it", name));
    }
}

void gw_page_chosen_at(struct page *page, const struct gw_element *element)
{
    const struct gw_plans *plans = page->results->answer->plans;
    const struct gw_model *model = page->results->answer->model;
    const size_t place = plans ? plans->places.of[element->index] : 0;
    for (size_t c = 0; plans && c < model->systems.n; c++) {
        const char *words = gw_choice_words(&plans->items[c].plan, place, model, page->arena);
        gw_report_line(page->report, gw_format(page->arena, "%s is taken here with: %s.", model->systems.items[c].name,
                                               *words ? words : "nothing chosen"));
    }
}
