/* Make-ups as readers of either units name them. */
#include "support.h"

#include "galeward/model.h"

static const double METER = 1, INCH = 0.0254;

static void reads(struct world *w, const struct gw_layer *layer, const char *us, const char *si)
{
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_layers_say(&text, layer, 1, GW_US, gw_tables_standard());
    assert_string_equal(text.at, us);
    gw_text_init(&text, &w->arena);
    gw_layers_say(&text, layer, 1, GW_SI, gw_tables_standard());
    assert_string_equal(text.at, si);
}

static struct gw_layer layer(double glass, double cavity, double thickness)
{
    return (struct gw_layer){.glass = glass,
                             .cavity = cavity,
                             .thickness = thickness,
                             .treatment = gw_given(glass) ? GW_TEMPERED : GW_TREATMENT_UNSET,
                             .interlayer = gw_given(thickness) ? GW_INTERLAYER_PVB : GW_INTERLAYER_UNSET};
}

/* One designation of glass has two spellings; 12 mm and 1/2 in of cavity are two sizes. */
static void named_as_sold(void **state)
{
    struct world *w = *state;
    const struct gw_layer metric = layer(0.006 * METER, GW_ABSENT, GW_ABSENT);
    const struct gw_layer inches = layer(0.25 * INCH, GW_ABSENT, GW_ABSENT);
    const struct gw_layer spacer = layer(GW_ABSENT, 0.012 * METER, GW_ABSENT);
    const struct gw_layer half = layer(GW_ABSENT, 0.5 * INCH, GW_ABSENT);
    const struct gw_layer sheet = layer(GW_ABSENT, GW_ABSENT, 0.00152 * METER);
    reads(w, &metric, "1/4 in (6 mm) tempered", "6 mm tempered");
    reads(w, &inches, "1/4 in (6 mm) tempered", "6 mm tempered");
    reads(w, &spacer, "1/2 in (12 mm) cavity", "12 mm cavity");
    reads(w, &half, "1/2 in cavity", "12.70 mm cavity");
    reads(w, &sheet, "0.060 in (1.52 mm) pvb", "1.52 mm pvb");
}

/* What has no name stays a size: 2.7 mm is no inch size, 13 mm no spacer. */
static void without_a_name(void **state)
{
    struct world *w = *state;
    const struct gw_layer thin = layer(0.0027 * METER, GW_ABSENT, GW_ABSENT);
    const struct gw_layer odd = layer(GW_ABSENT, 0.013 * METER, GW_ABSENT);
    reads(w, &thin, "2.7 mm tempered", "2.7 mm tempered");
    reads(w, &odd, "0.512 in cavity", "13.00 mm cavity");
}

int main(void)
{
    const struct CMUnitTest tests[] = {WORLD_TEST(named_as_sold), WORLD_TEST(without_a_name)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
