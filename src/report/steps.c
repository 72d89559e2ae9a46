/* Steps of a derivation, with what they are given and the units that they change. */
#include "report/steps.h"
#include "report/results.h"

#include <string.h>

static bool is_shown(const struct page *page, const struct gw_step *step)
{
    return step->leads == GW_YES || page->results->all;
}

static bool is_given_before(const struct page *page, const struct gw_trace *trace, size_t step, unsigned arg)
{
    const char *name = trace->steps[step].args[arg].name;
    for (size_t i = 0; i <= step; i++) {
        const struct gw_step *s = &trace->steps[i];
        for (unsigned k = 0; is_shown(page, s) && k < (i == step ? arg : s->n_args); k++)
            if (!s->from[k] && strcmp(s->args[k].name, name) == 0) return true;
    }
    return false;
}

static void add_in(struct page *page, struct gw_text *out, enum gw_dim dim, double value, int digits)
{
    const char *unit = gw_dim_info(dim)->shown[page->shown];
    gw_text_number(out, gw_quantity_shown(gw_units_standard(), dim, page->shown, value), digits);
    gw_text_addf(out, "%s%s", *unit ? " " : "", unit);
}

/* A pressure on glass and framing goes with inches there, and stands in psf where it comes from. */
static void add_given(struct page *page, struct gw_text *out, const struct gw_arg *arg)
{
    const double greatest = 5e4; /* Pa: no wind presses so hard, and few stresses are so small */
    gw_text_addf(out, "%s%s = ", out->length ? ", " : "", arg->name);
    add_in(page, out, arg->dim, arg->value, 6);
    if (arg->dim != GW_STRESS || page->shown == GW_SI || !(fabs(arg->value) < greatest)) return;
    gw_text_add(out, " (");
    add_in(page, out, GW_PRESSURE, arg->value, 6);
    gw_text_add(out, ")");
}

/* Figures that a step takes in another unit than that of the step which gives them: "w: 7.16535 psf is 0.04975941 psi"
 */
static struct gw_step with_units(struct page *page, const struct gw_trace *trace, const struct gw_step *step)
{
    enum { AS_PRINTED = 6, AS_TAKEN = 7 };
    struct gw_step out = *step;
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (unsigned k = 0; step->formula && !gw_step_is_plain(step) && k < step->n_args; k++) {
        const struct gw_step *from = step->from[k] ? &trace->steps[step->from[k] - 1] : NULL;
        const struct gw_arg *arg = &step->args[k];
        if (!from || !is_shown(page, from)) continue;
        const char *was = gw_dim_info(from->dim)->shown[page->shown], *is = gw_dim_info(arg->dim)->shown[page->shown];
        if (strcmp(was, is) == 0) continue;
        gw_text_addf(&text, "%s%s: ", text.length ? ", " : "", arg->name);
        add_in(page, &text, from->dim, from->value, AS_PRINTED);
        gw_text_add(&text, " is ");
        add_in(page, &text, arg->dim, arg->value, AS_TAKEN);
    }
    if (!text.length) return out;
    const struct gw_message units = GW_SAY(page->arena, "{}", gw_of_text(text.at));
    out.note = gw_said(&step->note) ? gw_say_both(page->arena, &step->note, "; ", &units) : units;
    return out;
}

/* Titles are alike by their words: equal literals need not be one. */
static bool same_group(const char *a, const char *b) { return a == b || (a && b && strcmp(a, b) == 0); }

/* What steps from `first` to the end of its group take without another step giving it. */
static void put_given(struct page *page, const struct gw_trace *trace, size_t first)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    for (size_t i = first; i < trace->n && same_group(trace->steps[i].group, trace->steps[first].group); i++) {
        const struct gw_step *s = &trace->steps[i];
        for (unsigned k = 0; is_shown(page, s) && s->formula && !gw_step_is_plain(s) && k < s->n_args; k++)
            if (!s->from[k] && !is_given_before(page, trace, i, k)) add_given(page, &text, &s->args[k]);
    }
    if (text.length) gw_report_line(page->report, gw_format(page->arena, "Given: %s", text.at));
}

size_t gw_put_steps(struct page *page, const struct gw_trace *trace, size_t number)
{
    const struct gw_step *before = NULL;
    size_t left_out = 0;
    for (size_t i = 0; i < trace->n; i++) {
        const struct gw_step *s = &trace->steps[i];
        left_out += !is_shown(page, s);
        if (!is_shown(page, s)) continue;
        const bool opens = !before || !same_group(before->group, s->group);
        if (opens && s->group) gw_report_heading(page->report, 3, s->group);
        if (opens) put_given(page, trace, i);
        const struct gw_step told = with_units(page, trace, s);
        gw_report_equation(page->report, &told, ++number, page->shown);
        before = s;
    }
    if (left_out)
        gw_report_line(page->report,
                       gw_format(page->arena, "(%zu more %s to none of these results: --all prints %s)", left_out,
                                 left_out > 1 ? "steps lead" : "step leads", left_out > 1 ? "them" : "it"));
    return number;
}
