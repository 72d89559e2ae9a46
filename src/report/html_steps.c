/* Steps of a derivation: formula, values, result as they are written by hand, then the clause. */
#include "report/markup.h"
#include "report/math.h"
#include "report/render_html.h"

#include <math.h>
#include <string.h>

/* A line breaks before "=" and before the operators that no bracket, bar or root holds: there one <math> ends and the
 * next begins. */
static void broken(struct gw_text *out, const struct gw_math *math)
{
    if (math->kind == GW_M_OPERATOR) {
        gw_text_addf(out, "</math><wbr><math><mo form=\"infix\">%s</mo>", math->text);
        return;
    }
    if (math->kind != GW_M_ROW) {
        gw_math_ml(out, math);
        return;
    }
    for (const struct gw_math *part = math->parts[0]; part; part = part->next) broken(out, part);
}

static void piece(struct html *html, const char *sign, const struct gw_math *math, const char *unit, bool bold)
{
    gw_text_add(html->out, bold ? "<b><math>" : "<math>");
    if (*sign) gw_text_addf(html->out, "<mo form=\"infix\">%s</mo>", sign);
    if (bold) gw_math_ml(html->out, math); /* a result is one */
    else broken(html->out, math);
    if (*unit) {
        gw_text_add(html->out, "<mspace width=\"0.25em\"/><mtext>");
        gw_markup_text(html->out, unit);
        gw_text_add(html->out, "</mtext>");
    }
    gw_text_add(html->out, bold ? "</math></b> " : "</math> ");
}

/* Its width in figures, about; of a row that may break its widest part. */
static double extent(const struct gw_math *math, bool breaks)
{
    const double script = 0.7, sign = 2;
    double sum = 0, widest = 0;
    switch (math->kind) {
    case GW_M_ROW:
        for (const struct gw_math *part = math->parts[0]; part; part = part->next) {
            if (breaks && part->kind == GW_M_OPERATOR) sum = 0;
            sum += extent(part, breaks);
            widest = fmax(widest, sum);
        }
        return widest;
    case GW_M_FRACTION:
        return fmax(extent(math->parts[0], false), extent(math->parts[1], false));
    case GW_M_SCRIPT:
        for (size_t i = 1; i < GW_MATH_PARTS; i++)
            if (math->parts[i]) widest = fmax(widest, extent(math->parts[i], false));
        return extent(math->parts[0], false) + script * widest;
    case GW_M_ROOT:
    case GW_M_BRACKETS:
        return extent(math->parts[0], false) + sign;
    case GW_M_OPERATOR:
        return sign;
    default:
        return math->text ? (double)strlen(math->text) : 0;
    }
}

/* Wider than a phone holds: it moves sideways there, by the keyboard too. */
static bool is_wide(struct html *html, const struct gw_equation *e)
{
    const double most = 24;
    if (!*e->formula) return false;
    return extent(gw_math_formula(html->arena, e->step), true) > most ||
           extent(gw_math_values(html->arena, e->step, e->shown), true) > most;
}

static void equation(struct html *html, const struct gw_equation *e)
{
    const struct gw_math *symbol = gw_math_symbol(html->arena, e->symbol);
    if (*e->symbol) piece(html, "", symbol, "", false);
    if (*e->formula) {
        piece(html, "=", gw_math_formula(html->arena, e->step), "", false);
        piece(html, "=", gw_math_values(html->arena, e->step, e->shown), "", false);
    }
    if (*e->result) piece(html, "=", gw_math_number(html->arena, e->result), e->unit, true);
}

static void words(struct html *html, const char *kind, const char *text)
{
    if (!*text) return;
    gw_text_addf(html->out, "<div class=\"%s\">", kind);
    gw_markup_text(html->out, text);
    gw_text_add(html->out, "</div>");
}

void gw_html_steps(struct html *html, const struct gw_block *first, size_t n)
{
    gw_text_add(html->out, "<ol class=\"steps\">\n");
    for (size_t i = 0; i < n; i++) {
        const struct gw_equation *e = &first[i].equation;
        gw_text_addf(html->out, "<li id=\"step%zu\"><span class=\"no\">%zu</span><div class=\"eq\"", e->number,
                     e->number);
        if (is_wide(html, e))
            gw_text_addf(html->out, " role=\"group\" tabindex=\"0\" aria-label=\"Formula %zu\"", e->number);
        gw_text_add(html->out, ">");
        equation(html, e);
        gw_text_add(html->out, "</div>");
        words(html, "of", e->note);
        words(html, "of at", e->clause);
        gw_text_add(html->out, "</li>\n");
    }
    gw_text_add(html->out, "</ol>\n");
}
