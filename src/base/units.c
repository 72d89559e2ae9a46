/* Quantities as people write them. The units themselves are rows of tables/units.yaml. */
#include "galeward/units.h"

#include "base/slope.h"
#include "base/spelling.h"

#include <math.h>
#include <string.h>

static const struct gw_dim_info DIMS[GW_DIM_COUNT] = {
    [GW_RATIO] = {"ratio", "ratio", "", {"", "", ""}, {"", "", ""}, {4, 4, 4}, "0.38", "0.38"},
    [GW_LENGTH] = {"length", "length", "m", {"m", "ft", "m"}, {NULL, "ft", "m"}, {3, 2, 3}, "12 ft 6 in", "3.8 m"},
    [GW_THICKNESS] = {"length", "thickness", "m", {"mm", "in", "mm"}, {NULL, "in", "mm"}, {2, 3, 2}, "1/4 in", "6 mm"},
    [GW_AREA] = {"area", "area", "m2", {"m2", "ft2", "m2"}, {NULL, "ft2", "m2"}, {3, 1, 2}, "32 ft2", "3 m2"},
    [GW_VOLUME] =
        {"volume", "volume", "m3", {"m3", "ft3", "m3"}, {NULL, "ft3", "m3"}, {2, 0, 1}, "90000 ft3", "2500 m3"},
    [GW_SPEED] = {"speed", "speed", "m_s", {"m/s", "mph", "m/s"}, {NULL, "mph", "m/s"}, {2, 1, 2}, "120 mph", "54 m/s"},
    [GW_PRESSURE] =
        {"pressure", "pressure", "pa", {"Pa", "psf", "Pa"}, {NULL, "psf", "Pa"}, {1, 1, 0}, "45 psf", "2.15 kPa"},
    [GW_STRESS] = {"stress", "stress", "pa", {"Pa", "psi", "MPa"}, {NULL, "psi", "Pa"}, {1, 0, 2}, "25 ksi", "170 MPa"},
    [GW_FORCE] = {"force", "force", "n", {"N", "lb", "N"}, {NULL, "lb", "N"}, {1, 1, 1}, "195 lb", "870 N"},
    [GW_LINE_LOAD] = {"force per length",
                      "line_load",
                      "n_m",
                      {"N/m", "lb/in", "N/m"},
                      {NULL, "lb/in", "N/m"},
                      {1, 2, 1},
                      "10 lb/in",
                      "1750 N/m"},
    [GW_MOMENT] =
        {"moment", "moment", "nm", {"N-m", "in-lb", "N-m"}, {NULL, "in-lb", "N-m"}, {2, 1, 2}, "95 in-lb", "11 N-m"},
    [GW_MASS] = {"mass", "mass", "kg", {"kg", "lb", "kg"}, {NULL, "lb", "kg"}, {2, 1, 2}, "220 lb", "100 kg"},
    [GW_TIME] = {"time",
                 "time",
                 "s",
                 {"s", "s", "s"},
                 {NULL, NULL, NULL}, /* seconds or years: a bare number is neither */
                 {3, 3, 3},
                 "3 s",
                 "3 s"},
    [GW_IMPULSE] = {"impulse",
                    "impulse",
                    "pa_s",
                    {"Pa-s", "psi-ms", "Pa-s"},
                    {NULL, "psi-ms", "Pa-s"},
                    {2, 2, 2},
                    "28 psi-ms",
                    "190 Pa-s"},
    [GW_LEAKAGE] = {"air leakage",
                    "leakage",
                    "m_s",
                    {"L/(s m2)", "cfm/ft2", "L/(s m2)"},
                    {NULL, "cfm/ft2", "L/(s m2)"},
                    {3, 3, 3},
                    "0.06 cfm/ft2",
                    "0.3 L/(s m2)"},
    [GW_ANGLE] = {"angle", "angle", "rad", {"deg", "deg", "deg"}, {NULL, "deg", "deg"}, {1, 1, 1}, "5 deg", "5 deg"},
    [GW_TEMPERATURE] = {"temperature",
                        "temperature",
                        "k",
                        {"K", "degF", "degC"},
                        {NULL, "degF", "degC"},
                        {1, 1, 1},
                        "70 degF",
                        "20 degC"},
    [GW_SECTION_MODULUS] = {"section modulus",
                            "section_modulus",
                            "m3",
                            {"mm3", "in3", "mm3"},
                            {NULL, "in3", "mm3"},
                            {0, 3, 0},
                            "3.1 in3",
                            "51000 mm3"},
    [GW_INERTIA] = {"moment of inertia",
                    "inertia",
                    "m4",
                    {"mm4", "in4", "mm4"},
                    {NULL, "in4", "mm4"},
                    {0, 3, 0},
                    "9.35 in4",
                    "3900000 mm4"},
    [GW_PER_LENGTH] = {"per length",
                       "per_length",
                       "per_m",
                       {"1/m", "1/ft", "1/m"},
                       {NULL, "1/ft", "1/m"},
                       {8, 8, 8},
                       "20 1/in",
                       "790 1/m"},
    [GW_WIND_CONSTANT] = {"pressure per speed squared",
                          "wind_constant",
                          "pa_s2_m2",
                          {"Pa/(m/s)2", "psf/mph2", "Pa/(m/s)2"},
                          {NULL, "psf/mph2", "Pa/(m/s)2"},
                          {6, 6, 6},
                          "0.00256 psf/mph2",
                          "0.613 Pa/(m/s)2"},
    [GW_COST] = {"cost", "cost", "", {"", "", ""}, {"", "", ""}, {2, 2, 2}, "1200", "1200"},
    [GW_COST_PER_LENGTH] = {"cost per length",
                            "cost_per_length",
                            "per_m",
                            {"per m", "per ft", "per m"},
                            {NULL, "per ft", "per m"},
                            {2, 2, 2},
                            "9.5 per ft",
                            "31 per m"},
    [GW_COST_PER_AREA] = {"cost per area",
                          "cost_per_area",
                          "per_m2",
                          {"per m2", "per ft2", "per m2"},
                          {NULL, "per ft2", "per m2"},
                          {2, 2, 2},
                          "78 per ft2",
                          "840 per m2"},
    [GW_SECTION_AREA] = {"section area",
                         "section_area",
                         "m2",
                         {"mm2", "in2", "mm2"},
                         {NULL, "in2", "mm2"},
                         {1, 4, 1},
                         "0.032 in2",
                         "21 mm2"},
    [GW_BENDING] = {"bending moment",
                    "bending",
                    "nm",
                    {"N-mm", "in-lb", "N-mm"},
                    {NULL, "in-lb", "N-m"},
                    {0, 1, 0},
                    "520 in-lb",
                    "59 N-m"},
    [GW_SHEAR_FLOW] = {"shear flow",
                       "shear_flow",
                       "n_m",
                       {"N/mm", "lb/in", "N/mm"},
                       {NULL, "lb/in", "N/mm"},
                       {3, 2, 3},
                       "40 lb/in",
                       "7 N/mm"},
    [GW_WARPING] = {"warping constant",
                    "warping",
                    "m6",
                    {"mm6", "in6", "mm6"},
                    {NULL, "in6", "mm6"},
                    {0, 3, 0},
                    "5.2 in6",
                    "1400000000 mm6"},
    [GW_BEAM_LENGTH] =
        {"length", "beam_length", "m", {"m", "in", "m"}, {NULL, "in", "m"}, {4, 3, 4}, "144 in", "3.66 m"},
    [GW_BEAM_STRESS] =
        {"stress", "beam_stress", "pa", {"Pa", "psi", "Pa"}, {NULL, "psi", "Pa"}, {0, 2, 0}, "25 ksi", "170 MPa"},
    [GW_BEAM_INERTIA] = {"moment of inertia",
                         "beam_inertia",
                         "m4",
                         {"m4", "in4", "m4"},
                         {NULL, "in4", "m4"},
                         {10, 3, 10},
                         "9.35 in4",
                         "3900000 mm4"},
    [GW_BEAM_MODULUS] = {"section modulus",
                         "beam_modulus",
                         "m3",
                         {"m3", "in3", "m3"},
                         {NULL, "in3", "m3"},
                         {8, 3, 8},
                         "3.1 in3",
                         "51000 mm3"},
    [GW_VELOCITY] =
        {"velocity", "velocity", "m_s", {"m/s", "ft/s", "m/s"}, {NULL, "ft/s", "m/s"}, {3, 2, 3}, "50 ft/s", "15 m/s"},
    [GW_ACCELERATION] = {"acceleration",
                         "acceleration",
                         "m_s2",
                         {"m/s2", "ft/s2", "m/s2"},
                         {NULL, "ft/s2", "m/s2"},
                         {4, 4, 4},
                         "32.174 ft/s2",
                         "9.81 m/s2"},
    [GW_FLOW] =
        {"flow", "flow", "m3_s", {"m3/s", "ft3/s", "m3/s"}, {NULL, "ft3/s", "m3/s"}, {8, 6, 8}, "1.5 gpm", "0.1 L/s"},
    [GW_DRAINED] =
        {"flow", "drained_flow", "m3_s", {"m3/s", "gpm", "L/s"}, {NULL, "gpm", "L/s"}, {8, 3, 4}, "1.5 gpm", "0.1 L/s"},
    [GW_UNIT_WEIGHT] = {"weight per volume",
                        "unit_weight",
                        "n_m3",
                        {"N/m3", "lb/ft3", "N/m3"},
                        {NULL, "lb/ft3", "N/m3"},
                        {1, 2, 1},
                        "62.4 lb/ft3",
                        "9800 N/m3"},
    [GW_MOMENTUM] = {"momentum",
                     "momentum",
                     "n_s",
                     {"N-s", "lbf-s", "N-s"},
                     {NULL, "lbf-s", "N-s"},
                     {2, 2, 2},
                     "14 lbf-s",
                     "62 N-s"},
    [GW_ENERGY] = {"energy", "energy", "j", {"J", "ft-lb", "J"}, {NULL, "ft-lb", "J"}, {1, 1, 1}, "350 ft-lb", "475 J"},
    [GW_SLOPE] = {"slope", "slope", "", {"", "", ""}, {"", "", ""}, {4, 4, 4}, "1/4 in per ft", "1:48"},
};

const struct gw_dim_info *gw_dim_info(enum gw_dim dim) { return &DIMS[dim]; }

const char *gw_dim_example(enum gw_dim dim, enum gw_units units)
{
    return units == GW_SI ? DIMS[dim].example_si : DIMS[dim].example;
}

enum gw_dim gw_dim_by_key(const char *key)
{
    int dim = 0;
    while (dim < GW_DIM_COUNT && strcmp(DIMS[dim].key, key) != 0) dim++;
    return (enum gw_dim)dim;
}

enum gw_dim gw_unit_dim(enum gw_dim dim)
{
    switch ((int)dim) {
    case GW_THICKNESS:
    case GW_BEAM_LENGTH:
        return GW_LENGTH;
    case GW_BEAM_STRESS:
        return GW_STRESS;
    case GW_BEAM_INERTIA:
        return GW_INERTIA;
    case GW_BEAM_MODULUS:
        return GW_SECTION_MODULUS;
    case GW_SECTION_AREA:
        return GW_AREA;
    case GW_BENDING:
        return GW_MOMENT;
    case GW_SHEAR_FLOW:
        return GW_LINE_LOAD;
    case GW_DRAINED:
        return GW_FLOW;
    case GW_SLOPE:
        return GW_RATIO;
    }
    return dim;
}

const struct gw_unit *gw_unit_find(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length)
{
    for (size_t i = 0; i < units.n; i++) {
        const struct gw_unit *u = &units.items[i];
        if (u->dim == gw_unit_dim(dim) && strlen(u->name) == length && memcmp(u->name, name, length) == 0) return u;
    }
    return NULL;
}

const struct gw_unit *gw_unit_written(struct gw_unit_list units, enum gw_dim dim, const char *name, size_t length)
{
    const struct gw_unit *exact = gw_unit_find(units, dim, name, length);
    return exact ? exact : gw_unit_alike(units, gw_unit_dim(dim), name, length);
}

static bool is_known_unit(struct gw_unit_list units, const char *name, size_t length)
{
    for (int dim = 0; dim < GW_DIM_COUNT; dim++)
        if (gw_unit_written(units, (enum gw_dim)dim, name, length)) return true;
    return false;
}

struct cursor {
    const char *text;
    size_t length, at;
};

static void skip_spaces(struct cursor *c)
{
    while (c->at < c->length && c->text[c->at] == ' ') c->at++;
}

static bool starts_digit(const struct cursor *c, size_t at)
{
    return at < c->length && c->text[at] >= '0' && c->text[at] <= '9';
}

/* "3/8" at `at`: numerator and denominator are whole numbers. Returns the bytes read, 0 for none. */
static size_t fraction_at(const struct cursor *c, size_t at, double *value)
{
    double over = 0, under = 0;
    size_t i = at;
    if (!starts_digit(c, i)) return 0;
    for (; starts_digit(c, i); i++) over = over * 10 + (c->text[i] - '0');
    if (i >= c->length || c->text[i] != '/') return 0;
    i++;
    if (!starts_digit(c, i)) return 0;
    for (; starts_digit(c, i); i++) under = under * 10 + (c->text[i] - '0');
    if (under == 0) return 0;
    *value = over / under;
    return i - at;
}

/* Digits in threes after commas, where they can be nothing else: "1,234,567" or "1,234.5". One comma alone may be a
 * decimal comma, and is no number. Returns the bytes read, 0 for none. */
static size_t thousands_at(const struct cursor *c, double *value)
{
    enum { LONGEST = 32 };
    char digits[LONGEST];
    size_t i = c->at, n = 0, commas = 0;
    bool negative = i < c->length && c->text[i] == '-';
    i += negative;
    while (starts_digit(c, i) && n < 3) digits[n++] = c->text[i++];
    if (!n || digits[0] == '0') return 0;
    for (; i < c->length && c->text[i] == ',' && n + 3 < LONGEST; commas++) {
        for (size_t k = 1; k <= 3; k++) {
            if (!starts_digit(c, i + k)) return 0;
            digits[n++] = c->text[i + k];
        }
        i += 4;
    }
    bool point = commas && i < c->length && c->text[i] == '.' && starts_digit(c, i + 1);
    if (point) digits[n++] = c->text[i++];
    while (point && starts_digit(c, i) && n < LONGEST) digits[n++] = c->text[i++];
    if (!(commas > 1 || point) || starts_digit(c, i) || (i < c->length && strchr(".,", c->text[i]))) return 0;
    if (gw_read_number(digits, n, value) != n) return 0;
    if (negative) *value = -*value;
    return i - c->at;
}

/* "-1/48". Returns the bytes read, 0 for none. */
static size_t negative_fraction_at(const struct cursor *c, double *value)
{
    const bool negative = c->at < c->length && c->text[c->at] == '-';
    const size_t used = negative ? fraction_at(c, c->at + 1, value) : 0;
    if (used) *value = -*value;
    return used ? used + 1 : 0;
}

/* "6 1/2", "6-1/2", "3/8", "-1/48", "12.5" */
static bool read_mixed(struct cursor *c, double *value)
{
    size_t used = fraction_at(c, c->at, value);
    if (!used) used = negative_fraction_at(c, value);
    if (!used) used = thousands_at(c, value);
    if (used) {
        c->at += used;
        return true;
    }
    used = gw_read_number(c->text + c->at, c->length - c->at, value);
    if (!used) return false;
    c->at += used;
    double part;
    if (c->at < c->length && (c->text[c->at] == ' ' || c->text[c->at] == '-')) {
        used = fraction_at(c, c->at + 1, &part);
        if (used) {
            *value += *value < 0 ? -part : part;
            c->at += used + 1;
        }
    }
    return true;
}

/* A unit runs to the end or to a space followed by a digit ("ft 6 in"), or to the '-' of 5'-6". */
static size_t unit_span(const struct cursor *c)
{
    size_t i = c->at;
    while (i < c->length) {
        char ch = c->text[i];
        bool splits =
            (ch == ' ' || ch == '-') &&
            (starts_digit(c, i + 1) || (i + 2 < c->length && c->text[i + 1] == ' ' && starts_digit(c, i + 2)));
        if (splits || (i > c->at && (c->text[i - 1] == '\'') && starts_digit(c, i))) break;
        i++;
    }
    while (i > c->at && c->text[i - 1] == ' ') i--;
    return i - c->at;
}

struct reading {
    struct gw_unit_list units;
    enum gw_dim dim;
    enum gw_units preset;
};

static bool is_foot(const struct reading *r, const struct gw_unit *unit)
{
    const struct gw_unit *foot = gw_unit_find(r->units, GW_LENGTH, "ft", 2);
    return unit && foot && gw_unit_dim(r->dim) == GW_LENGTH && !(fabs(unit->factor - foot->factor) > 0);
}

/* "ft6in" where it is no unit: the feet before the digit. */
static size_t feet_span(const struct reading *r, const struct cursor *c, size_t span)
{
    size_t n = 0;
    while (n < span && !starts_digit(c, c->at + n)) n++;
    if (n == span || is_known_unit(r->units, c->text + c->at, span)) return span;
    return is_foot(r, gw_unit_written(r->units, r->dim, c->text + c->at, n)) ? n : span;
}

static enum gw_quantity_fault read_unit(const struct reading *r, struct cursor *c, const struct gw_unit **unit)
{
    skip_spaces(c);
    size_t span = unit_span(c);
    if (!span) {
        const char *bare = DIMS[r->dim].bare[r->preset];
        if (!bare) return GW_QUANTITY_NO_UNIT;
        *unit = gw_unit_find(r->units, r->dim, bare, strlen(bare));
        return *unit || !*bare ? GW_QUANTITY_OK : GW_QUANTITY_UNKNOWN_UNIT;
    }
    *unit = gw_unit_written(r->units, r->dim, c->text + c->at, span);
    if (!*unit) {
        span = feet_span(r, c, span);
        *unit = gw_unit_written(r->units, r->dim, c->text + c->at, span);
    }
    if (!*unit)
        return is_known_unit(r->units, c->text + c->at, span) ? GW_QUANTITY_WRONG_UNIT : GW_QUANTITY_UNKNOWN_UNIT;
    c->at += span;
    return GW_QUANTITY_OK;
}

/* After feet may come inches, and only inches; less than a foot of them may be bare: 5'-6, 5 ft 6. */
static enum gw_quantity_fault read_inches(const struct reading *r, struct cursor *c, double *si)
{
    if (c->at < c->length && c->text[c->at] == '-') c->at++;
    skip_spaces(c);
    double inches;
    const struct gw_unit *unit = NULL;
    size_t at = c->at;
    if (!read_mixed(c, &inches) || inches < 0) return GW_QUANTITY_TRAILING;
    struct reading with_unit = *r;
    with_unit.preset = GW_UNITS_NONE;
    enum gw_quantity_fault fault = read_unit(&with_unit, c, &unit);
    const struct gw_unit *inch = gw_unit_find(r->units, GW_LENGTH, "in", 2);
    const double foot = 12;
    if (fault == GW_QUANTITY_NO_UNIT && inches < foot) {
        unit = inch;
        fault = GW_QUANTITY_OK;
    }
    if (fault == GW_QUANTITY_NO_UNIT) c->at = at;
    if (fault != GW_QUANTITY_OK) return fault == GW_QUANTITY_NO_UNIT ? GW_QUANTITY_TRAILING : fault;
    if (!inch || fabs(unit->factor - inch->factor) > 0) {
        c->at = at;
        return GW_QUANTITY_TRAILING;
    }
    *si += (*si < 0 ? -inches : inches) * unit->factor;
    return GW_QUANTITY_OK;
}

static enum gw_quantity_fault read_all(const struct reading *r, struct cursor *c, double *si)
{
    double number;
    const struct gw_unit *unit = NULL;
    skip_spaces(c);
    if (!read_mixed(c, &number)) return GW_QUANTITY_NOT_A_NUMBER;
    skip_spaces(c);
    const size_t end = c->at;
    enum gw_quantity_fault fault = read_unit(r, c, &unit);
    if (fault != GW_QUANTITY_OK) return fault;
    const bool written = c->at > end; /* "5-6" is no 5 ft, though bare numbers are feet */
    skip_spaces(c);
    *si = unit ? number * unit->factor + unit->offset : number;
    if (c->at < c->length && written && is_foot(r, unit)) fault = read_inches(r, c, si);
    skip_spaces(c);
    if (fault == GW_QUANTITY_OK && c->at < c->length) return GW_QUANTITY_TRAILING;
    if (fault == GW_QUANTITY_OK && !isfinite(*si)) return GW_QUANTITY_RANGE;
    return fault;
}

enum gw_quantity_fault gw_quantity_read(struct gw_unit_list units, enum gw_dim dim, enum gw_units preset,
                                        const char *text, size_t length, double *value, size_t *at)
{
    struct reading r = {units, dim, preset};
    struct cursor c = {text, length, 0};
    struct gw_plain plain;
    double si = 0;
    const bool marked = gw_plain_text(&plain, text, length);
    if (marked) c = (struct cursor){plain.text, plain.length, 0};
    if (dim == GW_SLOPE && gw_slope_read(&si, units, c.text, c.length)) {
        *value = si;
        *at = length;
        return GW_QUANTITY_OK;
    }
    enum gw_quantity_fault fault = read_all(&r, &c, &si);
    if (c.at > c.length) c.at = c.length;
    *at = marked ? plain.from[c.at] : c.at;
    if (fault == GW_QUANTITY_OK) *value = si;
    return fault;
}

double gw_quantity_shown(struct gw_unit_list units, enum gw_dim dim, enum gw_units shown, double si)
{
    const char *name = DIMS[dim].shown[shown];
    const struct gw_unit *unit = *name ? gw_unit_find(units, dim, name, strlen(name)) : NULL;
    return unit ? (si - unit->offset) / unit->factor : si;
}

void gw_quantity_print(struct gw_text *out, struct gw_unit_list units, enum gw_dim dim, enum gw_units shown, double si)
{
    gw_text_fixed(out, gw_quantity_shown(units, dim, shown, si), DIMS[dim].decimals[shown]);
    if (*DIMS[dim].shown[shown]) gw_text_addf(out, " %s", DIMS[dim].shown[shown]);
}
