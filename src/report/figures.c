/* Figures as people read them: in the units shown, rounded to the safe side. */
#include "report/long_names.h"
#include "report/page.h"

#include "base/tolerance.h"

#include <string.h>

struct page gw_page_of(struct gw_report *report, const struct gw_results *results)
{
    enum gw_units shown = results->shown ? results->shown : GW_US;
    if (report->pictures && !report->n && !report->long_names.n)
        report->long_names = gw_long_names_of(report->arena, results->answer->model);
    return (struct page){report, report->arena, results, shown};
}

static double rounded(double value, int decimals, enum rounding rounding)
{
    /* A figure that is a whole number of steps but for the last bits of a double stays where it is. */
    const double slack = 1e-7, scale = pow(10, decimals);
    if (rounding == NEAREST) return value;
    double steps = fabs(value) * scale;
    steps = rounding == UP ? ceil(steps - slack) : floor(steps + slack);
    return copysign(steps / scale, value);
}

const char *gw_cost_text(struct gw_arena *arena, double cost)
{
    enum { GROUP = 3 };
    struct gw_text plain, out;
    if (!gw_given(cost)) return "";
    gw_text_init(&plain, arena);
    gw_text_init(&out, arena);
    gw_text_fixed(&plain, cost, 2);
    const size_t first = strcspn(plain.at, "0123456789"), whole = strspn(plain.at + first, "0123456789");
    gw_text_bytes(&out, plain.at, first);
    for (size_t i = 0; i < whole; i++) {
        if (i && (whole - i) % GROUP == 0) gw_text_add(&out, ",");
        gw_text_bytes(&out, plain.at + first + i, 1);
    }
    gw_text_add(&out, plain.at + first + whole);
    return out.at;
}

double gw_printed(enum gw_dim dim, enum gw_units shown, double si, int decimals, enum rounding rounding)
{
    return rounded(gw_quantity_shown(gw_units_standard(), dim, shown, si), decimals, rounding);
}

double gw_times_printed(enum gw_dim dim, enum gw_units shown, double factor, double si)
{
    const double printed = gw_printed(dim, shown, si, gw_dim_info(dim)->decimals[shown], UP);
    return factor * printed / gw_quantity_shown(gw_units_standard(), dim, shown, 1);
}

void gw_add_bare(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, enum rounding rounding)
{
    if (!gw_given(si)) return;
    int decimals = gw_dim_info(dim)->decimals[shown];
    double value = gw_printed(dim, shown, si, decimals, rounding);
    if (dim == GW_RATIO) gw_text_number(out, value, 6);
    else gw_text_fixed(out, value, decimals);
}

/* To four digits: 6.24 psf must not become 6.3 where 6.24 psf answers it. */
static double to_four_digits(double value, enum rounding rounding)
{
    if (value == 0 || !isfinite(value)) return value;
    int decimals = 3 - (int)floor(log10(fabs(value)));
    double scale = pow(10, decimals);
    return rounding == NEAREST ? round(value * scale) / scale : rounded(value, decimals, rounding);
}

void gw_add_figure(struct gw_text *out, double value, enum rounding rounding)
{
    enum { PLAIN = 9 }; /* digits: no power of ten below a thousand million */
    gw_text_number(out, to_four_digits(value, rounding), PLAIN);
}

void gw_add_quantity(struct gw_text *out, enum gw_dim dim, enum gw_units shown, double si, enum rounding rounding)
{
    const char *unit = gw_dim_info(dim)->shown[shown];
    if (!gw_given(si)) return;
    gw_add_figure(out, gw_quantity_shown(gw_units_standard(), dim, shown, si), rounding);
    if (*unit) gw_text_addf(out, " %s", unit);
}

const char *gw_quantity_text(struct page *page, enum gw_dim dim, double si, enum rounding rounding)
{
    struct gw_text text;
    gw_text_init(&text, page->arena);
    gw_add_quantity(&text, dim, page->shown, si, rounding);
    return text.length ? text.at : "";
}

const char *gw_as_required(struct page *page, const struct gw_finding *f)
{
    const char *text = gw_quantity_text(page, f->dim, f->required, f->at_most ? NEAREST : UP);
    return f->at_most && *text ? gw_format(page->arena, "limit %s", text) : text;
}

const char *gw_as_provided(struct page *page, const struct gw_finding *f)
{
    const char *text = gw_quantity_text(page, f->dim, f->provided, f->at_most ? NEAREST : DOWN);
    return f->at_most && *text ? gw_format(page->arena, "here %s", text) : text;
}

void gw_add_utilization(struct gw_text *out, double value)
{
    if (!gw_given(value)) return;
    if (isinf(value)) gw_text_add(out, "none provided");
    else gw_text_fixed(out, rounded(value, 2, UP), 2);
}

void gw_add_extent(struct gw_text *out, enum gw_units shown, double bottom, double top)
{
    gw_add_bare(out, GW_LENGTH, shown, bottom, NEAREST);
    gw_text_add(out, " - ");
    gw_add_bare(out, GW_LENGTH, shown, top, NEAREST);
}

void gw_add_heights(struct gw_text *out, enum gw_units shown, double low, double high)
{
    const int decimals = gw_dim_info(GW_LENGTH)->decimals[shown] - 1;
    const double from = gw_quantity_shown(gw_units_standard(), GW_LENGTH, shown, low),
                 to = gw_quantity_shown(gw_units_standard(), GW_LENGTH, shown, high);
    gw_text_fixed(out, from, decimals);
    if (to - from < GW_HAIR_M) return;
    gw_text_add(out, " to ");
    gw_text_fixed(out, to, decimals);
}

void gw_add_levels(struct gw_text *out, enum gw_units shown, double strength, double asd)
{
    if (!gw_given(strength)) return;
    gw_add_bare(out, GW_PRESSURE, shown, strength, UP);
    gw_text_add(out, " / ");
    gw_add_bare(out, GW_PRESSURE, shown, asd, UP);
}

const char *gw_basis_words(enum gw_basis basis)
{
    return basis == GW_MEMORY ? "recalled" : basis == GW_SECOND_HAND ? "second-hand" : gw_basis_name(basis);
}

bool gw_say_basis(struct gw_text *out, const void *used, enum gw_units shown)
{
    (void)shown;
    gw_text_add(out, gw_basis_words(gw_used_weakest(used)));
    return true;
}

bool gw_is_weak(enum gw_basis basis) { return basis == GW_MEMORY || basis == GW_PRACTICE; }

enum gw_tone gw_basis_tone(int basis) { return basis >= GW_MEMORY ? GW_DOUBTFUL : GW_PLAIN; }

enum gw_tone gw_verdict_tone(int verdict)
{
    return verdict == GW_PASS        ? GW_GOOD
           : verdict == GW_FAIL      ? GW_BAD
           : verdict == GW_NOT_SHOWN ? GW_DOUBTFUL
                                     : GW_PLAIN;
}
