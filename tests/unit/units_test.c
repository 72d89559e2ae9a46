/* Numbers and quantities, read and printed. */
#include "support.h"

#include <locale.h>

/* Numbers -----------------------------------------------------------------------------------------------------------
 */

static const char *number(double value, int digits)
{
    static char out[GW_NUMBER_SIZE];
    size_t length = gw_print_number(out, value, digits);
    assert_int_equal(length, strlen(out));
    return out;
}

static const char *decimals(double value, int places)
{
    static char out[GW_NUMBER_SIZE];
    size_t length = gw_print_fixed(out, value, places);
    assert_int_equal(length, strlen(out));
    return out;
}

static void check_printing(void)
{
    assert_string_equal(number(1234.5, 6), "1234.5");
    assert_string_equal(number(0.00256, 6), "0.00256");
    assert_string_equal(number(-0.0, 6), "0");
    assert_string_equal(number(1e-9, 3), "1e-09");
    assert_string_equal(decimals(12.345, 1), "12.3");
    assert_string_equal(decimals(-0.001, 2), "0.00");
    assert_string_equal(decimals(-0.5, 1), "-0.5");
    assert_string_equal(decimals(45, 0), "45");
}

struct reading {
    const char *text;
    size_t used;
    double value;
};

static void check_reading(void)
{
    static const struct reading cases[] = {
        {"12.5", 4, 12.5},
        {"12,5", 2, 12},
        {"-0.25 ft", 5, -0.25},
        {"+3", 2, 3},
        {".5", 2, 0.5},
        {"5.", 2, 5},
        {"1e3", 3, 1000},
        {"1e", 1, 1},
        {"1.25E-2x", 7, 0.0125},
        {"0.1234567890123456789", 21, 0.1234567890123456789},
        {"123456789012345678", 18, 123456789012345678.0},
        {"", 0, 0},
        {"-", 0, 0},
        {".", 0, 0},
        {"nan", 0, 0},
        {"inf", 0, 0},
        {"e5", 0, 0},
        {"0x10", 1, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        double value = 0;
        size_t used = gw_read_number(cases[i].text, strlen(cases[i].text), &value);
        if (used != cases[i].used) print_error("'%s'\n", cases[i].text);
        assert_int_equal(used, cases[i].used);
        if (used) assert_near(value, cases[i].value, 0);
    }
    double huge;
    assert_int_equal(gw_read_number("1e999", 5, &huge), 5);
    assert_true(isinf(huge));
}

static void numbers(void **state)
{
    (void)state;
    check_printing();
    check_reading();
}

static void numbers_under_a_comma_locale(void **state)
{
    (void)state;
    static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "de_DE"};
    const char *set = NULL;
    for (size_t i = 0; i < sizeof names / sizeof *names && !set; i++) set = setlocale(LC_ALL, names[i]);
    if (!set) {
        print_message("skipped: no locale with a decimal comma is installed (de_DE.UTF-8)\n");
        skip();
    }
    check_printing();
    check_reading();
    setlocale(LC_ALL, "C");
}

/* What is printed with 17 digits reads back to the same bits. */
/* More digits than any double has: the last of them decides, and none is lost. */
static void numbers_of_any_length(void **state)
{
    struct world *w = *state;
    static const struct {
        const char *head;
        size_t zeros;
        const char *tail;
        double value;
    } cases[] = {
        {"1", 2000, "e-2000", 1},
        {"0.", 2000, "25e2001", 2.5},
        {"9007199254740993", 0, "", 9007199254740992.0},     /* a tie goes to the even one */
        {"9007199254740993.", 900, "1", 9007199254740994.0}, /* beyond the digits that are kept */
        {"-9007199254740993.", 900, "0", -9007199254740992.0},
        {"1e", 2000, "2", 100},
        {"-0.", 300, "e-9", 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        struct gw_text text;
        double value = -1;
        gw_text_init(&text, &w->arena);
        gw_text_add(&text, cases[i].head);
        gw_text_repeat(&text, '0', cases[i].zeros);
        gw_text_add(&text, cases[i].tail);
        assert_int_equal(gw_read_number(text.at, text.length, &value), text.length);
        assert_true(value == cases[i].value);
    }
}

static void numbers_round_trip(void **state)
{
    (void)state;
    draw_from(1);
    for (int i = 0; i < 20000; i++) {
        const uint64_t bits = draw_bits();
        double value = ldexp((double)(bits >> 11), (int)(bits % 120) - 100), back;
        const char *text = number(value, 17);
        assert_int_equal(gw_read_number(text, strlen(text), &back), strlen(text));
        assert_near(back, value, 0);
    }
}

/* Quantities --------------------------------------------------------------------------------------------------------
 */

struct quantity {
    enum gw_dim dim;
    enum gw_units preset;
    const char *text;
    enum gw_quantity_fault fault;
    double si;
};

static const struct quantity QUANTITIES[] = {
    {GW_LENGTH, GW_UNITS_NONE, "5 ft 6 in", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6 1/2\"", GW_QUANTITY_OK, 1.6891},
    {GW_LENGTH, GW_UNITS_NONE, "5' 6\"", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'6\"", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5′-6″", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "12'-0\"", GW_QUANTITY_OK, 3.6576},
    {GW_LENGTH, GW_UNITS_NONE, "12'", GW_QUANTITY_OK, 3.6576},
    {GW_LENGTH, GW_UNITS_NONE, "1/4 in", GW_QUANTITY_OK, 0.00635},
    {GW_RATIO, GW_UNITS_NONE, "-1/48", GW_QUANTITY_OK, -1.0 / 48},
    {GW_LENGTH, GW_UNITS_NONE, "-3/8 in", GW_QUANTITY_OK, -0.009525},
    {GW_LENGTH, GW_UNITS_NONE, "--3/8 in", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_UNITS_NONE, "6 1/2 in", GW_QUANTITY_OK, 0.1651},
    {GW_LENGTH, GW_UNITS_NONE, "6-1/2 in", GW_QUANTITY_OK, 0.1651},
    {GW_LENGTH, GW_UNITS_NONE, "-5 ft 6 in", GW_QUANTITY_OK, -1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "1524 mm", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_UNITS_NONE, "1524mm", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_UNITS_NONE, "  5 ft  ", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_US, "5", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_SI, "5", GW_QUANTITY_OK, 5},
    {GW_THICKNESS, GW_US, "1/4", GW_QUANTITY_OK, 0.00635},
    {GW_THICKNESS, GW_SI, "6", GW_QUANTITY_OK, 0.006},
    {GW_LENGTH, GW_SI, "5 ft", GW_QUANTITY_OK, 1.524},
    {GW_PRESSURE, GW_UNITS_NONE, "2.15 kPa", GW_QUANTITY_OK, 2150},
    {GW_PRESSURE, GW_UNITS_NONE, "2.15 kN/m2", GW_QUANTITY_OK, 2150},
    {GW_PRESSURE, GW_UNITS_NONE, "300 N/m²", GW_QUANTITY_OK, 300},
    {GW_PRESSURE, GW_UNITS_NONE, "12 mbar", GW_QUANTITY_OK, 1200},
    {GW_PRESSURE, GW_UNITS_NONE, "12 hPa", GW_QUANTITY_OK, 1200},
    {GW_PRESSURE, GW_UNITS_NONE, "0.28 bar", GW_QUANTITY_OK, 28000},
    {GW_PRESSURE, GW_UNITS_NONE, "1 Mbar", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_IMPULSE, GW_UNITS_NONE, "0.19 kPa-s", GW_QUANTITY_OK, 190},
    {GW_LEAKAGE, GW_UNITS_NONE, "3.6 m3/(h·m2)", GW_QUANTITY_OK, 0.001},
    {GW_LEAKAGE, GW_UNITS_NONE, "3.6 m3/h/m2", GW_QUANTITY_OK, 0.001},
    {GW_PRESSURE, GW_US, "45", GW_QUANTITY_OK, 45 * 47.88025898033584},
    {GW_SPEED, GW_UNITS_NONE, "120 mph", GW_QUANTITY_OK, 53.6448},
    {GW_MOMENT, GW_UNITS_NONE, "95 in-lb", GW_QUANTITY_OK, 95 * 0.1129848290276167},
    {GW_TEMPERATURE, GW_UNITS_NONE, "32 degF", GW_QUANTITY_OK, 273.15},
    {GW_RATIO, GW_UNITS_NONE, "0.38", GW_QUANTITY_OK, 0.38},
    {GW_RATIO, GW_UNITS_NONE, "20 %", GW_QUANTITY_OK, 0.2},
    {GW_COST_PER_LENGTH, GW_UNITS_NONE, "9.5 per ft", GW_QUANTITY_OK, 9.5 / 0.3048},
    {GW_LENGTH, GW_UNITS_NONE, "5", GW_QUANTITY_NO_UNIT, 0},
    {GW_LENGTH, GW_US, "5 psf", GW_QUANTITY_WRONG_UNIT, 0},
    {GW_PRESSURE, GW_US, "5 ft", GW_QUANTITY_WRONG_UNIT, 0},
    {GW_LENGTH, GW_US, "5 furlong", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft junk", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft )", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 ft 6 ft", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "5 ft 12", GW_QUANTITY_TRAILING, 0},
    {GW_TIME, GW_UNITS_NONE, "60 d", GW_QUANTITY_OK, 5184000},
    {GW_TIME, GW_UNITS_NONE, "1 day", GW_QUANTITY_OK, 86400},
    {GW_TIME, GW_UNITS_NONE, "9 months", GW_QUANTITY_OK, 9 * 730 * 3600.0},
    {GW_TIME, GW_UNITS_NONE, "2.5 years", GW_QUANTITY_OK, 2.5 * 8760 * 3600},
    {GW_LENGTH, GW_US, "5 m 6 in", GW_QUANTITY_TRAILING, 0},
    {GW_PRESSURE, GW_US, "45 psf 3", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "1e400 ft", GW_QUANTITY_RANGE, 0},
    {GW_LENGTH, GW_US, "nan ft", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "inf", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "ft", GW_QUANTITY_NOT_A_NUMBER, 0},
    {GW_LENGTH, GW_US, "", GW_QUANTITY_NOT_A_NUMBER, 0},
    /* Bare inches after written feet. */
    {GW_LENGTH, GW_UNITS_NONE, "5'6", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6 1/2", GW_QUANTITY_OK, 1.6891},
    {GW_LENGTH, GW_UNITS_NONE, "5 ft 6", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5ft6", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5ft6in", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5' 6-1/2\"", GW_QUANTITY_OK, 1.6891},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6''", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5 ft2", GW_QUANTITY_WRONG_UNIT, 0},
    {GW_LENGTH, GW_US, "5-6", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "5-6\"", GW_QUANTITY_TRAILING, 0},
    {GW_LENGTH, GW_US, "5 6", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_LENGTH, GW_US, "5 6 1/2", GW_QUANTITY_UNKNOWN_UNIT, 0},
    /* Marks of word processors and spreadsheets. */
    {GW_LENGTH, GW_UNITS_NONE, "5′ 6″", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5’-6”", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5‘–6“", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "5 ft 6 in", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "−5 ft", GW_QUANTITY_OK, -1.524},
    {GW_LENGTH, GW_UNITS_NONE, "5'-6½\"", GW_QUANTITY_OK, 1.6891},
    {GW_LENGTH, GW_UNITS_NONE, "¼ in", GW_QUANTITY_OK, 0.00635},
    {GW_LENGTH, GW_UNITS_NONE, "1⁄4 in", GW_QUANTITY_OK, 0.00635},
    {GW_LENGTH, GW_UNITS_NONE, "5 × 6 ft", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_MOMENT, GW_UNITS_NONE, "3 kN·m", GW_QUANTITY_OK, 3000},
    {GW_AREA, GW_UNITS_NONE, "1 ft²", GW_QUANTITY_OK, 0.09290304},
    /* Commas: thousands where they can be nothing else. */
    {GW_FORCE, GW_UNITS_NONE, "1,234,567 N", GW_QUANTITY_OK, 1234567},
    {GW_FORCE, GW_UNITS_NONE, "-1,234.5 N", GW_QUANTITY_OK, -1234.5},
    {GW_FORCE, GW_UNITS_NONE, "1,200 N", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "1,200", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "1,5", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "12,34,567 N", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "1,234,5678 N", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "1,234.5,6 N", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_FORCE, GW_SI, "0,200,300 N", GW_QUANTITY_UNKNOWN_UNIT, 0},
    /* Units by their other names, in capitals, with stops. */
    {GW_LENGTH, GW_UNITS_NONE, "5 FEET", GW_QUANTITY_OK, 1.524},
    {GW_LENGTH, GW_UNITS_NONE, "5 Ft. 6 In.", GW_QUANTITY_OK, 1.6764},
    {GW_LENGTH, GW_UNITS_NONE, "6 inches", GW_QUANTITY_OK, 0.1524},
    {GW_LENGTH, GW_UNITS_NONE, "25 MM", GW_QUANTITY_OK, 0.025},
    {GW_LENGTH, GW_UNITS_NONE, "25 mm.", GW_QUANTITY_OK, 0.025},
    {GW_LENGTH, GW_UNITS_NONE, "25 Mm", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_AREA, GW_UNITS_NONE, "1 SF", GW_QUANTITY_OK, 0.09290304},
    {GW_AREA, GW_UNITS_NONE, "1 sq. ft.", GW_QUANTITY_OK, 0.09290304},
    {GW_AREA, GW_UNITS_NONE, "1 ft^2", GW_QUANTITY_OK, 0.09290304},
    {GW_PRESSURE, GW_UNITS_NONE, "1 PSF", GW_QUANTITY_OK, 47.88025898033584},
    {GW_PRESSURE, GW_UNITS_NONE, "2 KPA", GW_QUANTITY_OK, 2000},
    {GW_PRESSURE, GW_UNITS_NONE, "2 kpa", GW_QUANTITY_OK, 2000},
    {GW_PRESSURE, GW_UNITS_NONE, "2 MPa", GW_QUANTITY_OK, 2e6},
    {GW_STRESS, GW_UNITS_NONE, "2 MPA", GW_QUANTITY_OK, 2e6},
    {GW_STRESS, GW_UNITS_NONE, "2 mPa", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_STRESS, GW_UNITS_NONE, "2 mpa", GW_QUANTITY_UNKNOWN_UNIT, 0},
    {GW_MOMENT, GW_UNITS_NONE, "1 lb-in", GW_QUANTITY_OK, 0.1129848290276167},
    {GW_LINE_LOAD, GW_UNITS_NONE, "1 kN/m", GW_QUANTITY_OK, 1000},
    {GW_LINE_LOAD, GW_UNITS_NONE, "1 kip/ft", GW_QUANTITY_OK, 4448.2216152605 / 0.3048},
    {GW_LINE_LOAD, GW_UNITS_NONE, "1 PLF", GW_QUANTITY_OK, 4.4482216152605 / 0.3048},
    {GW_FORCE, GW_UNITS_NONE, "1 LBF", GW_QUANTITY_OK, 4.4482216152605},
    {GW_SPEED, GW_UNITS_NONE, "120 MPH", GW_QUANTITY_OK, 53.6448},
    {GW_SPEED, GW_UNITS_NONE, "30 M/S", GW_QUANTITY_OK, 30},
    {GW_TEMPERATURE, GW_UNITS_NONE, "32 °F", GW_QUANTITY_OK, 273.15},
    {GW_TEMPERATURE, GW_UNITS_NONE, "32 F", GW_QUANTITY_OK, 273.15},
};

static void quantities(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof QUANTITIES / sizeof *QUANTITIES; i++) {
        const struct quantity *q = &QUANTITIES[i];
        double value = -77;
        size_t at = 999, length = strlen(q->text);
        enum gw_quantity_fault fault =
            gw_quantity_read(gw_units_standard(), q->dim, q->preset, q->text, length, &value, &at);
        if (fault != q->fault) print_error("'%s'\n", q->text);
        assert_int_equal(fault, q->fault);
        if (fault == GW_QUANTITY_OK) assert_near(value, q->si, 1e-12 * fmax(1, fabs(q->si)));
        else assert_near(value, -77, 0);
        assert_true(at <= length);
    }
}

static void quantity_fault_place(void **state)
{
    (void)state;
    double value;
    size_t at;
    gw_quantity_read(gw_units_standard(), GW_LENGTH, GW_US, "12.5 psf", 8, &value, &at);
    assert_int_equal(at, 5);
    gw_quantity_read(gw_units_standard(), GW_PRESSURE, GW_US, "45 psf 3", 8, &value, &at);
    assert_int_equal(at, 7);
}

/* Every dimension in every system of units: shown, printed, read back. */
static void units_round_trip(void **state)
{
    struct world *w = *state;
    struct gw_unit_list units = gw_units_standard();
    const double si = 37.123456789;
    for (int dim = 0; dim < GW_DIM_COUNT; dim++) {
        for (int shown = GW_UNITS_NONE; shown <= GW_SI; shown++) {
            struct gw_text text;
            gw_text_init(&text, &w->arena);
            gw_text_number(&text, gw_quantity_shown(units, (enum gw_dim)dim, (enum gw_units)shown, si), 17);
            gw_text_addf(&text, " %s", gw_dim_info((enum gw_dim)dim)->shown[shown]);
            double back = 0;
            size_t at;
            enum gw_quantity_fault fault =
                gw_quantity_read(units, (enum gw_dim)dim, GW_US, text.at, text.length, &back, &at);
            if (fault != GW_QUANTITY_OK) print_error("%s: '%s'\n", gw_dim_info((enum gw_dim)dim)->key, text.at);
            assert_int_equal(fault, GW_QUANTITY_OK);
            assert_near(back, si, 1e-12 * si);
        }
    }
}

/* A bare number in a preset is the same as the number with the preset's unit; examples are readable. */
static void bare_numbers_and_examples(void **state)
{
    struct world *w = *state;
    struct gw_unit_list units = gw_units_standard();
    for (int dim = 0; dim < GW_DIM_COUNT; dim++) {
        const struct gw_dim_info *info = gw_dim_info((enum gw_dim)dim);
        double value = 0, bare = 0, with_unit = 0;
        size_t at;
        assert_int_equal(gw_dim_by_key(info->key), dim);
        assert_int_equal(
            gw_quantity_read(units, (enum gw_dim)dim, GW_UNITS_NONE, info->example, strlen(info->example), &value, &at),
            GW_QUANTITY_OK);
        for (int preset = GW_US; preset <= GW_SI; preset++) {
            const char *text = gw_format(&w->arena, "3 %s", info->bare[preset]);
            gw_quantity_read(units, (enum gw_dim)dim, (enum gw_units)preset, "3", 1, &bare, &at);
            gw_quantity_read(units, (enum gw_dim)dim, GW_UNITS_NONE, text, strlen(text), &with_unit, &at);
            assert_near(bare, with_unit, 0);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers),         cmocka_unit_test(numbers_under_a_comma_locale),
        WORLD_TEST(numbers_of_any_length), cmocka_unit_test(numbers_round_trip),
        cmocka_unit_test(quantities),      cmocka_unit_test(quantity_fault_place),
        WORLD_TEST(units_round_trip),      WORLD_TEST(bare_numbers_and_examples),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
