/* What a plan takes, in words: what each option changes and each make-up is, where it is taken, what it comes to. */
#include "report/check.h"
#include "report/select.h"

#include <string.h>

static const char *counted_words(struct page *page, const struct gw_system_option *o, double quantity)
{
    static const char *const each[] = {
        [GW_COUNTS_WALL] = "of wall",       [GW_COUNTS_LITE] = "of lites", [GW_COUNTS_MULLION] = "of mullion",
        [GW_COUNTS_TRANSOM] = "of transom", [GW_COUNTS_SCREW] = "screws",  [GW_COUNTS_ANCHOR] = "anchors"};
    const bool length = o->of == GW_COUNTS_MULLION || o->of == GW_COUNTS_TRANSOM;
    const bool area = o->of == GW_COUNTS_WALL || (o->of == GW_COUNTS_LITE && o->price.dim != GW_COST);
    const char *n = length ? gw_quantity_text(page, GW_LENGTH, quantity, NEAREST)
                    : area ? gw_quantity_text(page, GW_AREA, quantity, NEAREST)
                           : gw_format(page->arena, "%.0f", quantity);
    const char *what = o->of == GW_COUNTS_LITE && !area ? "lites" : each[o->of];
    return gw_format(page->arena, "%s %s", n, what);
}

/* As the file has it, on one line: "mullion: {insert: {metal: steel}}"; without the braces of the outermost. */
static void add_node(struct gw_text *out, const struct gw_node *node, bool outermost)
{
    const char *const ends = node->kind == GW_SEQUENCE ? "[]" : outermost ? "" : "{}";
    if (node->kind == GW_SCALAR) {
        gw_text_add(out, node->text);
        return;
    }
    if (*ends) gw_text_addf(out, "%c", ends[0]);
    for (const struct gw_node *child = node->first; child; child = child->next) {
        if (child != node->first) gw_text_add(out, ", ");
        if (node->kind == GW_MAPPING) gw_text_addf(out, "%s: ", child->key);
        add_node(out, child, false);
    }
    if (*ends) gw_text_addf(out, "%c", ends[1]);
}

/* " (changes frame_weight: 4.5 psf; adds inertia_x: 4.2 in4)"; "" of one that changes nothing. */
static const char *changed_words(struct page *page, const struct gw_system_option *o)
{
    const struct gw_node *adds = o->adds ? gw_node_get(o->node, "adds") : NULL;
    struct gw_text out;
    gw_text_init(&out, page->arena);
    if (o->change) {
        gw_text_add(&out, "changes ");
        add_node(&out, o->change, true);
    }
    if (adds) {
        gw_text_addf(&out, "%sadds to the mullion ", out.length ? "; " : "");
        add_node(&out, adds, true);
    }
    return out.length ? gw_format(page->arena, " (%s)", out.at) : "";
}

/* Where an option is taken, what it counts there, what it comes to. */
static void tell_option(struct page *page, const struct gw_bid *bid, const struct gw_system_option *o)
{
    struct gw_text out;
    double sum = 0;
    size_t n = 0;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < bid->places.n; p++)
        for (size_t i = 0; i < bid->places.items[p].options.n; i++) {
            const struct gw_selected_option *taken = &bid->places.items[p].options.items[i];
            if (taken->option != o) continue;
            gw_text_addf(&out, "%s%s in ", n++ ? "; " : "", counted_words(page, o, taken->quantity));
            gw_add_plan_place(&out, bid->places.items[p].place);
            sum += taken->cost;
        }
    if (!n) return;
    if (o->cost) gw_text_addf(&out, ", at %s: %s", o->cost, gw_cost_text(page->arena, sum));
    if (gw_given(o->once))
        gw_text_addf(&out, "%s once %s", o->cost ? ", and" : "; ", gw_cost_text(page->arena, o->once));
    gw_report_item(page->report, gw_format(page->arena, "%s%s: %s", o->name, changed_words(page, o), out.at));
}

static void tell_make_up(struct page *page, const struct gw_bid *bid, const struct gw_lite_alternative *a,
                         const struct gw_lite_type *type)
{
    struct gw_text out;
    double sum = 0;
    size_t n = 0;
    gw_text_init(&out, page->arena);
    for (size_t p = 0; p < bid->places.n; p++)
        for (size_t i = 0; i < bid->places.items[p].lites.n; i++) {
            const struct gw_selected_lite *l = &bid->places.items[p].lites.items[i];
            if (l->type != type || l->name != a->name) continue;
            gw_text_addf(&out, "%s%ld lites, %s, in ", n++ ? "; " : "", l->count,
                         gw_quantity_text(page, GW_AREA, l->area, NEAREST));
            gw_add_plan_place(&out, bid->places.items[p].place);
            sum += l->cost;
        }
    if (!n) return;
    if (a->cost) gw_text_addf(&out, ", at %s: %s", a->cost, gw_cost_text(page->arena, sum));
    if (type->cost) gw_text_addf(&out, " (its own make-up is %s)", type->cost);
    gw_report_item(page->report, gw_format(page->arena, "%s, %s: %s", type->name, a->name, out.at));
}

void gw_tell_choices(struct page *page, const struct selections *s, const struct gw_bid *bid)
{
    const struct gw_project *project = &s->bids->model->project;
    for (size_t i = 0; i < bid->candidate->options.n; i++) tell_option(page, bid, &bid->candidate->options.items[i]);
    for (size_t i = 0; i < project->lites.n; i++)
        for (size_t k = 0; k < project->lites.items[i].alternatives.n; k++)
            tell_make_up(page, bid, &project->lites.items[i].alternatives.items[k], &project->lites.items[i]);
}

/* Make-ups, which belong to the project and not to a candidate -------------------------------------------------------
 */

static const char *layers_words(struct page *page, const struct gw_lite_type *type)
{
    struct gw_text out;
    gw_text_init(&out, page->arena);
    gw_layers_say(&out, type->layers.items, type->layers.n, page->shown, page->results->answer->model->tables);
    return out.length ? out.at : "not given";
}

static bool is_taken(const struct selections *s, const struct gw_lite_type *type, const char *name)
{
    for (size_t i = 0; i < s->items.n; i++) {
        const struct gw_bid *bid = s->items.items[i].bid;
        for (size_t p = 0; p < bid->places.n; p++)
            for (size_t k = 0; k < bid->places.items[p].lites.n; k++) {
                const struct gw_selected_lite *l = &bid->places.items[p].lites.items[k];
                if (l->type == type && l->name == name) return true;
            }
    }
    return false;
}

void gw_tell_make_ups(struct page *page, const struct selections *s)
{
    const struct gw_project *project = &s->bids->model->project;
    size_t told = 0;
    for (size_t i = 0; i < project->lites.n; i++) {
        const struct gw_lite_type *type = &project->lites.items[i];
        if (!type->alternatives.n) continue;
        if (!told++)
            gw_report_section(page->report, GW_PART_ANSWERS, "Make-ups that the plans take, outermost layer first");
        gw_report_item(page->report,
                       gw_format(page->arena, "%s, its own make-up: %s", type->name, layers_words(page, type)));
        for (size_t k = 0; k < type->alternatives.n; k++) {
            const struct gw_lite_alternative *a = &type->alternatives.items[k];
            if (is_taken(s, type, a->name))
                gw_report_item(page->report,
                               gw_format(page->arena, "%s, %s: %s", type->name, a->name, layers_words(page, a->as)));
        }
    }
}
