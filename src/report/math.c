/* From formulas to what is set. */
#include "report/math.h"

#include <ctype.h>
#include <string.h>

static struct gw_math *make(struct gw_arena *arena, enum gw_math_kind kind, const char *text)
{
    struct gw_math *out = gw_alloc(arena, 1, sizeof *out);
    *out = (struct gw_math){.kind = kind, .text = text};
    return out;
}

static struct gw_math *row(struct gw_arena *arena) { return make(arena, GW_M_ROW, NULL); }

static void append(struct gw_math *row, struct gw_math *part)
{
    struct gw_math **end = &row->parts[0];
    while (*end) end = &(*end)->next;
    *end = part;
}

/* Symbols ---------------------------------------------------------------------------------------------------------- */

static const struct {
    const char *name, *letter;
} GREEK[] = {{"alpha", "α"}, {"beta", "β"},   {"gamma", "γ"}, {"delta", "δ"},  {"epsilon", "ε"}, {"zeta", "ζ"},
             {"eta", "η"},   {"theta", "θ"},  {"kappa", "κ"}, {"lambda", "λ"}, {"mu", "μ"},      {"nu", "ν"},
             {"xi", "ξ"},    {"rho", "ρ"},    {"sigma", "σ"}, {"tau", "τ"},    {"phi", "φ"},     {"chi", "χ"},
             {"psi", "ψ"},   {"omega", "ω"},  {"pi", "π"},    {"Delta", "Δ"},  {"Sigma", "Σ"},   {"Omega", "Ω"},
             {"Phi", "Φ"},   {"Lambda", "Λ"}, {"Gamma", "Γ"}, {"Theta", "Θ"}};

static const char *greek(const char *head, size_t length)
{
    for (size_t i = 0; i < sizeof GREEK / sizeof *GREEK; i++)
        if (strlen(GREEK[i].name) == length && memcmp(GREEK[i].name, head, length) == 0) return GREEK[i].letter;
    return NULL;
}

/* Long enough to be a word: "drift", "share". */
static bool is_word(const char *head, size_t length)
{
    enum { WORD = 4 };
    for (size_t i = 0; i < length; i++)
        if (!islower((unsigned char)head[i])) return false;
    return length >= WORD;
}

/* How much of the head is the quantity's own letter: what follows it describes. */
static size_t letter_span(const char *head, size_t length)
{
    size_t letters = strspn(head, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz");
    if (letters > length) letters = length;
    if (greek(head, letters) || is_word(head, letters)) return letters;
    if (length >= 2 && memcmp(head, "GC", 2) == 0) return 2; /* a gust factor and a coefficient, told as one */
    return length ? 1 : 0;
}

struct gw_math *gw_math_symbol(struct gw_arena *arena, const char *name)
{
    const size_t head = strcspn(name, "_"), letters = letter_span(name, head);
    const char *letter = greek(name, letters), *after = name[head] ? name + head + 1 : "";
    const char *own = gw_strndup(arena, name + letters, head - letters);
    const char *sub = *own && *after ? gw_format(arena, "%s,%s", own, after) : *own ? own : after;
    struct gw_math *base = make(arena, is_word(name, letters) && !letter ? GW_M_UPRIGHT : GW_M_QUANTITY,
                                letter ? letter : gw_strndup(arena, name, letters));
    if (!*sub) return base;
    struct gw_math *out = make(arena, GW_M_SCRIPT, NULL);
    out->parts[0] = base;
    out->parts[1] = make(arena, GW_M_UPRIGHT, gw_strdup(arena, sub));
    return out;
}

/* Numbers ---------------------------------------------------------------------------------------------------------- */

static struct gw_math *power_of_ten(struct gw_arena *arena, const char *exponent)
{
    struct gw_math *out = make(arena, GW_M_SCRIPT, NULL);
    const bool negative = *exponent == '-';
    exponent += strspn(exponent, "+-0");
    out->parts[0] = make(arena, GW_M_NUMBER, "10");
    out->parts[2] = make(arena, GW_M_NUMBER, gw_format(arena, "%s%s", negative ? "−" : "", exponent));
    return out;
}

struct gw_math *gw_math_number(struct gw_arena *arena, const char *text)
{
    const char *e = strpbrk(text, "eE");
    const bool negative = *text == '-';
    const char *digits = gw_format(arena, "%s%.*s", negative ? "−" : "",
                                   e ? (int)(e - text) - negative : (int)strlen(text), text + negative);
    struct gw_math *number = make(arena, GW_M_NUMBER, digits);
    if (!e) return number;
    struct gw_math *out = row(arena);
    append(out, number);
    append(out, make(arena, GW_M_OPERATOR, "×"));
    append(out, power_of_ten(arena, e + 1));
    return out;
}

/* Formulas --------------------------------------------------------------------------------------------------------- */

struct setting {
    struct gw_arena *arena;
    const struct gw_step *step;
    bool values;
    enum gw_units shown;
};

static struct gw_math *set(const struct setting *s, const struct gw_formula *f);

/* Where its place says what brackets would say: above and below a bar, in an exponent, under a root. */
static struct gw_math *set_bare(const struct setting *s, const struct gw_formula *f)
{
    return set(s, f->kind == GW_F_GROUP ? f->of[0] : f);
}

static struct gw_math *brackets(const struct setting *s, const char *both, struct gw_math *inside)
{
    struct gw_math *out = make(s->arena, GW_M_BRACKETS, both);
    out->parts[0] = inside;
    return out;
}

static struct gw_math *value(const struct setting *s, int arg)
{
    const struct gw_arg *a = &s->step->args[arg];
    const double shown = gw_quantity_shown(gw_units_standard(), a->dim, s->shown, a->value);
    struct gw_text text;
    gw_text_init(&text, s->arena);
    gw_text_number(&text, shown, GW_STEP_DIGITS);
    struct gw_math *number = gw_math_number(s->arena, text.at);
    return shown < 0 ? brackets(s, "()", number) : number;
}

static struct gw_math *call(const struct setting *s, const struct gw_formula *f)
{
    if (strcmp(f->text, "sqrt") == 0) {
        struct gw_math *root = make(s->arena, GW_M_ROOT, NULL);
        root->parts[0] = set_bare(s, f->of[0]);
        return root;
    }
    struct gw_math *inside = row(s->arena), *out = row(s->arena);
    for (unsigned i = 0; i < f->n; i++) {
        if (i) append(inside, make(s->arena, GW_M_COMMA, ","));
        append(inside, set_bare(s, f->of[i]));
    }
    if (strcmp(f->text, "abs") == 0) return brackets(s, "||", inside);
    struct gw_math *name = make(s->arena, GW_M_UPRIGHT, f->text);
    if (strcmp(f->text, "log10") == 0) {
        struct gw_math *log = make(s->arena, GW_M_SCRIPT, NULL);
        log->parts[0] = make(s->arena, GW_M_UPRIGHT, "log");
        log->parts[1] = make(s->arena, GW_M_NUMBER, "10");
        name = log;
    }
    append(out, name);
    append(out, make(s->arena, GW_M_APPLY, NULL));
    append(out, brackets(s, "()", inside));
    return out;
}

/* What stands at the left end of a factor: a figure there would run into the one before it. */
static bool begins_with_figure(const struct setting *s, const struct gw_formula *f)
{
    while (f->kind == GW_F_MULTIPLY || f->kind == GW_F_POWER) f = f->of[0];
    return f->kind == GW_F_NUMBER || (f->kind == GW_F_NAME && s->values);
}

static struct gw_math *pair(const struct setting *s, const struct gw_formula *f, const char *sign)
{
    struct gw_math *out = row(s->arena);
    const bool product = f->kind == GW_F_MULTIPLY;
    append(out, set(s, f->of[0]));
    append(out, product && !begins_with_figure(s, f->of[1]) ? make(s->arena, GW_M_TIMES, NULL)
                                                            : make(s->arena, GW_M_OPERATOR, sign));
    append(out, set(s, f->of[1]));
    return out;
}

static struct gw_math *fraction(const struct setting *s, const struct gw_formula *f)
{
    struct gw_math *out = make(s->arena, GW_M_FRACTION, NULL);
    out->parts[0] = set_bare(s, f->of[0]);
    out->parts[1] = set_bare(s, f->of[1]);
    return out;
}

/* The exponent of a symbol stands above its subscript. */
static struct gw_math *power(const struct setting *s, const struct gw_formula *f)
{
    struct gw_math *base = set(s, f->of[0]), *exponent = set_bare(s, f->of[1]);
    if (base->kind == GW_M_SCRIPT && !base->parts[2]) {
        base->parts[2] = exponent;
        return base;
    }
    struct gw_math *out = make(s->arena, GW_M_SCRIPT, NULL);
    out->parts[0] = base->kind == GW_M_ROW || base->kind == GW_M_FRACTION ? brackets(s, "()", base) : base;
    out->parts[2] = exponent;
    return out;
}

static struct gw_math *set(const struct setting *s, const struct gw_formula *f)
{
    struct gw_math *out;
    switch (f->kind) {
    case GW_F_NUMBER:
        return gw_math_number(s->arena, f->text);
    case GW_F_NAME:
        return s->values ? value(s, f->arg) : gw_math_symbol(s->arena, s->step->args[f->arg].name);
    case GW_F_CALL:
        return call(s, f);
    case GW_F_GROUP:
        return brackets(s, "()", set(s, f->of[0]));
    case GW_F_MINUS:
        out = row(s->arena);
        append(out, make(s->arena, GW_M_UPRIGHT, "−"));
        append(out, set(s, f->of[0]));
        return out;
    case GW_F_DIVIDE:
        return fraction(s, f);
    case GW_F_POWER:
        return power(s, f);
    case GW_F_ADD:
        return pair(s, f, "+");
    case GW_F_SUBTRACT:
        return pair(s, f, "−");
    case GW_F_MULTIPLY:
        return pair(s, f, "×");
    }
    return NULL;
}

struct gw_math *gw_math_formula(struct gw_arena *arena, const struct gw_step *step)
{
    return step->tree ? set(&(struct setting){arena, step, false, GW_SI}, step->tree) : NULL;
}

struct gw_math *gw_math_values(struct gw_arena *arena, const struct gw_step *step, enum gw_units shown)
{
    return step->tree ? set(&(struct setting){arena, step, true, shown}, step->tree) : NULL;
}
