/* A formula of a derivation as a tree: parsed once where its step is recorded; texts, typeset pages and evaluation all
 * walk the same nodes.
 *
 * Grammar, loosest first: a+b a-b · a*b a/b · -a · a^b (to the right) · number, name, function(a, b), (a). Functions:
 * exp ln log10 sqrt abs min max. Names are those of the arguments, which may go on behind a comma ("K_zt,h"). */
#ifndef GALEWARD_FORMULA_H
#define GALEWARD_FORMULA_H

#include "galeward/text.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_formula_kind {
    GW_F_NUMBER, /* `text`: as written */
    GW_F_NAME,   /* `arg` */
    GW_F_CALL,   /* `text`: the function; `of`: its arguments */
    GW_F_GROUP,  /* brackets round of[0] */
    GW_F_MINUS,  /* of[0] */
    GW_F_ADD,
    GW_F_SUBTRACT,
    GW_F_MULTIPLY,
    GW_F_DIVIDE,
    GW_F_POWER
};
enum { GW_FORMULA_PARTS = 4 };
struct gw_formula {
    enum gw_formula_kind kind;
    const char *text;
    double number;
    int arg; /* of a name: its place among the names that were given */
    struct gw_formula *of[GW_FORMULA_PARTS];
    unsigned n;
};

/* NULL: it is none, or has a name that is not among `names`. `text` must outlive the tree. */
struct gw_formula *gw_formula_parse(struct gw_arena *arena, const char *text, const char *const *names, unsigned n);
bool gw_formula_uses(const struct gw_formula *formula, int arg);
/* After names were taken out or moved: the new place of each. */
void gw_formula_renumber(struct gw_formula *formula, const int *places);
/* What stands in the place of a name. */
struct gw_formula_words {
    void (*name)(struct gw_text *out, const void *context, int arg);
    const void *context;
};
/* On one line, as it was written but for what stands in the places of names. */
void gw_formula_print(struct gw_text *out, const struct gw_formula *formula, const struct gw_formula_words *words);
/* `values` by the place of the name. */
double gw_formula_value(const struct gw_formula *formula, const double *values);

/* How tightly a node binds, 1 (a sum) to 5 (what stands alone): for brackets where a printer needs none or more. */
int gw_formula_rank(const struct gw_formula *formula);

#ifdef __cplusplus
}
#endif

#endif
