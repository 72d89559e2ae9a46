/* What is set, as MathML. */
#include "report/markup.h"
#include "report/math.h"

static void element(struct gw_text *out, const char *name, const char *text)
{
    gw_text_addf(out, "<%s>", name);
    gw_markup_text(out, text);
    gw_text_addf(out, "</%s>", name);
}

static void parts(struct gw_text *out, const char *name, const struct gw_math *math)
{
    gw_text_addf(out, "<%s>", name);
    for (size_t i = 0; i < GW_MATH_PARTS; i++)
        if (math->parts[i]) gw_math_ml(out, math->parts[i]);
    gw_text_addf(out, "</%s>", name);
}

static void row(struct gw_text *out, const struct gw_math *math)
{
    gw_text_add(out, "<mrow>");
    for (const struct gw_math *part = math->parts[0]; part; part = part->next) gw_math_ml(out, part);
    gw_text_add(out, "</mrow>");
}

static void script(struct gw_text *out, const struct gw_math *math)
{
    parts(out, math->parts[1] && math->parts[2] ? "msubsup" : math->parts[1] ? "msub" : "msup", math);
}

static void brackets(struct gw_text *out, const struct gw_math *math)
{
    gw_text_addf(out, "<mrow><mo>%c</mo>", math->text[0]);
    gw_math_ml(out, math->parts[0]);
    gw_text_addf(out, "<mo>%c</mo></mrow>", math->text[1]);
}

void gw_math_ml(struct gw_text *out, const struct gw_math *math)
{
    switch (math->kind) {
    case GW_M_ROW:
        row(out, math);
        return;
    case GW_M_QUANTITY:
        element(out, "mi", math->text);
        return;
    case GW_M_UPRIGHT:
        element(out, "mtext", math->text);
        return;
    case GW_M_NUMBER:
        element(out, "mn", math->text);
        return;
    case GW_M_OPERATOR:
        element(out, "mo", math->text);
        return;
    case GW_M_TIMES:
        gw_text_add(out, "<mo>&#x2062;</mo>");
        return;
    case GW_M_APPLY:
        gw_text_add(out, "<mo>&#x2061;</mo>");
        return;
    case GW_M_COMMA:
        element(out, "mo", ",");
        return;
    case GW_M_FRACTION:
        parts(out, "mfrac", math);
        return;
    case GW_M_SCRIPT:
        script(out, math);
        return;
    case GW_M_ROOT:
        parts(out, "msqrt", math);
        return;
    case GW_M_BRACKETS:
        brackets(out, math);
        return;
    }
}
