/* Steps of a derivation: formula, values, result as they are written by hand, then the clause. */
#include "report/markup.h"
#include "report/math.h"
#include "report/render_html.h"

/* Each of these is one piece, so that a narrow screen breaks a line between them. */
static void piece(struct html *html, const char *sign, const struct gw_math *math, const char *unit, bool bold)
{
    gw_text_add(html->out, bold ? "<b><math>" : "<math>");
    if (*sign) gw_text_addf(html->out, "<mo>%s</mo>", sign);
    gw_math_ml(html->out, math);
    if (*unit) {
        gw_text_add(html->out, "<mspace width=\"0.25em\"/><mtext>");
        gw_markup_text(html->out, unit);
        gw_text_add(html->out, "</mtext>");
    }
    gw_text_add(html->out, bold ? "</math></b> " : "</math> ");
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

static void words(struct html *html, const char *before, const char *text)
{
    if (!*text) return;
    gw_text_addf(html->out, "<div class=\"of\">%s", before);
    gw_markup_text(html->out, text);
    gw_text_add(html->out, "</div>");
}

void gw_html_steps(struct html *html, const struct gw_block *first, size_t n)
{
    gw_text_add(html->out, "<ol class=\"steps\">\n");
    for (size_t i = 0; i < n; i++) {
        const struct gw_equation *e = &first[i].equation;
        gw_text_addf(html->out, "<li id=\"step%zu\"><span class=\"no\">%zu</span><div class=\"eq\">", e->number,
                     e->number);
        equation(html, e);
        gw_text_add(html->out, "</div>");
        words(html, "", e->note);
        words(html, "", e->clause);
        gw_text_add(html->out, "</li>\n");
    }
    gw_text_add(html->out, "</ol>\n");
}
