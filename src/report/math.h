/* Formulas as they are set: symbols with their subscripts, fractions, roots; one tree for MathML and for pages that are
 * drawn. */
#ifndef GALEWARD_REPORT_MATH_H
#define GALEWARD_REPORT_MATH_H

#include "galeward/engine.h"

enum gw_math_kind {
    GW_M_ROW,      /* parts, one after the other */
    GW_M_QUANTITY, /* italic */
    GW_M_UPRIGHT,  /* words, names of functions, subscripts that describe */
    GW_M_NUMBER,
    GW_M_OPERATOR, /* with room on both sides */
    GW_M_TIMES,    /* of a product that is read from its factors standing side by side */
    GW_M_APPLY,    /* between a function and its bracket */
    GW_M_FRACTION, /* two parts */
    GW_M_SCRIPT,   /* base, subscript, superscript; the last two may be NULL */
    GW_M_ROOT,
    GW_M_BRACKETS, /* that grow with their part; `text`: both of them, "()" or "||" */
    GW_M_COMMA
};
enum { GW_MATH_PARTS = 3 };
struct gw_math {
    enum gw_math_kind kind;
    const char *text;
    struct gw_math *parts[GW_MATH_PARTS]; /* of a row its first */
    struct gw_math *next;                 /* in a row */
};

/* "K_zt,h": K with a subscript; "lambda": its Greek letter; "Mny_x": M with "ny,x"; a word stays one. */
struct gw_math *gw_math_symbol(struct gw_arena *arena, const char *name);
/* "-1.5", "1e-05" */
struct gw_math *gw_math_number(struct gw_arena *arena, const char *text);
/* The step's formula; with its values in their places, in those units. NULL: it has none. */
struct gw_math *gw_math_formula(struct gw_arena *arena, const struct gw_step *step);
struct gw_math *gw_math_values(struct gw_arena *arena, const struct gw_step *step, enum gw_units shown);

/* As presentation MathML (Core), without the <math> around it. */
void gw_math_ml(struct gw_text *out, const struct gw_math *math);

#endif
