/* Formulas of derivations as trees. */
#include "galeward/formula.h"

#include <math.h>
#include <string.h>

struct parser {
    struct gw_arena *arena;
    const char *at;
    const char *const *names;
    unsigned n_names;
    bool failed;
};

static struct gw_formula *sum(struct parser *p);

static bool is_digit(char c) { return c >= '0' && c <= '9'; }
static bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_'; }

static struct gw_formula *node(struct parser *p, enum gw_formula_kind kind, struct gw_formula *a, struct gw_formula *b)
{
    struct gw_formula *out = gw_alloc(p->arena, 1, sizeof *out);
    *out = (struct gw_formula){.kind = kind, .arg = -1, .of = {a, b}, .n = a ? b ? 2 : 1 : 0};
    return out;
}

static bool take(struct parser *p, char c)
{
    if (*p->at != c) return false;
    p->at++;
    return true;
}

static void want(struct parser *p, char c)
{
    if (!take(p, c)) p->failed = true;
}

static size_t word_span(const char *text)
{
    size_t i = 0;
    while (is_letter(text[i]) || is_digit(text[i])) i++;
    return i;
}

/* The longest name that stands here: one may go on behind a comma. */
static int name_at(const struct parser *p, size_t *length)
{
    int found = -1;
    *length = 0;
    for (unsigned i = 0; i < p->n_names; i++) {
        const size_t n = strlen(p->names[i]);
        const bool here = strncmp(p->at, p->names[i], n) == 0 && !is_letter(p->at[n]) && !is_digit(p->at[n]);
        if (!here || n <= *length) continue;
        found = (int)i;
        *length = n;
    }
    return found;
}

static bool is_function(const char *name)
{
    static const char *const known[] = {"exp", "ln", "log10", "sqrt", "abs", "min", "max"};
    for (size_t i = 0; i < sizeof known / sizeof *known; i++)
        if (strcmp(known[i], name) == 0) return true;
    return false;
}

static struct gw_formula *call(struct parser *p, size_t length)
{
    struct gw_formula *out = node(p, GW_F_CALL, NULL, NULL);
    out->text = gw_strndup(p->arena, p->at, length);
    p->at += length;
    want(p, '(');
    do {
        while (take(p, ' ')) continue;
        out->of[out->n++] = sum(p);
    } while (out->n < GW_FORMULA_PARTS && !p->failed && take(p, ','));
    want(p, ')');
    const bool pair = strcmp(out->text, "min") == 0 || strcmp(out->text, "max") == 0;
    if (!is_function(out->text) || (pair ? out->n < 2 : out->n != 1)) p->failed = true;
    return out;
}

static struct gw_formula *number(struct parser *p)
{
    struct gw_formula *out = node(p, GW_F_NUMBER, NULL, NULL);
    const size_t length = gw_read_number(p->at, strlen(p->at), &out->number);
    out->text = gw_strndup(p->arena, p->at, length);
    p->at += length;
    if (!length) p->failed = true;
    return out;
}

/* The name of an argument, or of a function before its bracket. */
static struct gw_formula *named(struct parser *p)
{
    size_t length;
    const int arg = name_at(p, &length);
    if (arg < 0) return call(p, word_span(p->at));
    struct gw_formula *out = node(p, GW_F_NAME, NULL, NULL);
    out->arg = arg;
    p->at += length;
    return out;
}

static struct gw_formula *primary(struct parser *p)
{
    if (take(p, '(')) {
        struct gw_formula *inner = sum(p);
        want(p, ')');
        return node(p, GW_F_GROUP, inner, NULL);
    }
    return is_letter(*p->at) ? named(p) : number(p);
}

/* The exponent binds tighter than a sign before it, and to the right. */
static struct gw_formula *power(struct parser *p)
{
    if (take(p, '-')) return node(p, GW_F_MINUS, power(p), NULL);
    struct gw_formula *base = primary(p);
    return take(p, '^') ? node(p, GW_F_POWER, base, power(p)) : base;
}

static struct gw_formula *product(struct parser *p)
{
    struct gw_formula *out = power(p);
    for (;;) {
        if (p->failed) return out;
        if (take(p, '*')) out = node(p, GW_F_MULTIPLY, out, power(p));
        else if (take(p, '/')) out = node(p, GW_F_DIVIDE, out, power(p));
        else return out;
    }
}

static struct gw_formula *sum(struct parser *p)
{
    struct gw_formula *out = product(p);
    for (;;) {
        if (p->failed) return out;
        if (take(p, '+')) out = node(p, GW_F_ADD, out, product(p));
        else if (take(p, '-')) out = node(p, GW_F_SUBTRACT, out, product(p));
        else return out;
    }
}

struct gw_formula *gw_formula_parse(struct gw_arena *arena, const char *text, const char *const *names, unsigned n)
{
    struct parser p = {.arena = arena, .at = text, .names = names, .n_names = n};
    struct gw_formula *out = sum(&p);
    return p.failed || *p.at ? NULL : out;
}

bool gw_formula_uses(const struct gw_formula *f, int arg)
{
    if (f->kind == GW_F_NAME) return f->arg == arg;
    for (unsigned i = 0; i < f->n; i++)
        if (gw_formula_uses(f->of[i], arg)) return true;
    return false;
}

void gw_formula_renumber(struct gw_formula *f, const int *places)
{
    if (f->kind == GW_F_NAME) f->arg = places[f->arg];
    for (unsigned i = 0; i < f->n; i++) gw_formula_renumber(f->of[i], places);
}

int gw_formula_rank(const struct gw_formula *f)
{
    static const int ranks[] = {
        [GW_F_NUMBER] = 5, [GW_F_NAME] = 5,     [GW_F_CALL] = 5,     [GW_F_GROUP] = 5,  [GW_F_MINUS] = 3,
        [GW_F_ADD] = 1,    [GW_F_SUBTRACT] = 1, [GW_F_MULTIPLY] = 2, [GW_F_DIVIDE] = 2, [GW_F_POWER] = 4};
    return ranks[f->kind];
}

static void print_call(struct gw_text *out, const struct gw_formula *f, const struct gw_formula_words *words)
{
    gw_text_addf(out, "%s(", f->text);
    for (unsigned i = 0; i < f->n; i++) {
        if (i) gw_text_add(out, ", "); /* a name may hold a comma without */
        gw_formula_print(out, f->of[i], words);
    }
    gw_text_add(out, ")");
}

void gw_formula_print(struct gw_text *out, const struct gw_formula *f, const struct gw_formula_words *words)
{
    static const char *const signs[] = {
        [GW_F_ADD] = "+", [GW_F_SUBTRACT] = "-", [GW_F_MULTIPLY] = "*", [GW_F_DIVIDE] = "/", [GW_F_POWER] = "^"};
    switch (f->kind) {
    case GW_F_NUMBER:
        gw_text_add(out, f->text);
        return;
    case GW_F_NAME:
        words->name(out, words->context, f->arg);
        return;
    case GW_F_CALL:
        print_call(out, f, words);
        return;
    case GW_F_GROUP:
        gw_text_add(out, "(");
        gw_formula_print(out, f->of[0], words);
        gw_text_add(out, ")");
        return;
    case GW_F_MINUS:
        gw_text_add(out, "-");
        gw_formula_print(out, f->of[0], words);
        return;
    default:
        gw_formula_print(out, f->of[0], words);
        gw_text_add(out, signs[f->kind]);
        gw_formula_print(out, f->of[1], words);
        return;
    }
}

static double value_of_call(const struct gw_formula *f, const double *values)
{
    double a = gw_formula_value(f->of[0], values);
    if (strcmp(f->text, "exp") == 0) return exp(a);
    if (strcmp(f->text, "ln") == 0) return log(a);
    if (strcmp(f->text, "log10") == 0) return log10(a);
    if (strcmp(f->text, "sqrt") == 0) return sqrt(a);
    if (strcmp(f->text, "abs") == 0) return fabs(a);
    for (unsigned i = 1; i < f->n; i++) {
        const double b = gw_formula_value(f->of[i], values);
        a = strcmp(f->text, "min") == 0 ? fmin(a, b) : fmax(a, b);
    }
    return a;
}

double gw_formula_value(const struct gw_formula *f, const double *values)
{
    const double a = f->n && f->kind != GW_F_CALL ? gw_formula_value(f->of[0], values) : 0;
    const double b = f->n > 1 && f->kind != GW_F_CALL ? gw_formula_value(f->of[1], values) : 0;
    switch (f->kind) {
    case GW_F_NUMBER:
        return f->number;
    case GW_F_NAME:
        return values[f->arg];
    case GW_F_CALL:
        return value_of_call(f, values);
    case GW_F_GROUP:
        return a;
    case GW_F_MINUS:
        return -a;
    case GW_F_ADD:
        return a + b;
    case GW_F_SUBTRACT:
        return a - b;
    case GW_F_MULTIPLY:
        return a * b;
    case GW_F_DIVIDE:
        return a / b;
    case GW_F_POWER:
        return pow(a, b);
    }
    return NAN;
}
