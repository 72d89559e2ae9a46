/* Of 'galeward calc lite'. */
#include "lite.h"

#include "base/fields.h"

#include "galeward/model.h"

#include <string.h>

enum { MAKE_UPS = 400 }; /* that `lightest_of` may list */

static const struct gw_field LISTED[] = {
    F(listed, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_REQUIRED | GW_MANY, .help = "as of a lite"),
};
static const struct gw_record LISTED_RECORD = RECORD("make-up", listed, LISTED, .list_key = "layers");
#define L(key_, dim_, ...) NUM(lite_case, key_, dim_, __VA_ARGS__)
static const struct gw_field LITE[] = {
    L(width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    L(height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.01, 20), .help = "clear opening"),
    F(lite_case, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY,
      .help = "from outside to inside: glass, and between two glasses a cavity or an interlayer"),
    F(lite_case, support, GW_T_INTEGER, .fallback = "4", LIMITS(1, 4), .help = "edges held"),
    PICK(lite_case, span, gw_span_choices,
         .help = "fewer than four edges: the side that runs across the free edges, or out from the only held one"),
    PICK(lite_case, edge_finish, gw_edge_finish_choices, .help = "of free edges"),
    L(pressure, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), .help = "inward, allowable-stress level"),
    L(pressure_out, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e6), .help = "outward, allowable-stress level"),
    L(duration, GW_TIME, LIMITS(1e-3, 1e10), .help = "of the load; absent: 3 s"),
    L(temperature, GW_TEMPERATURE, LIMITS(200, 400), .help = "of interlayers; absent: 50 degC"),
    L(probability, GW_RATIO, .help = "of breakage; absent: 0.008"),
    L(slope, GW_ANGLE, LIMITS(0, 1.5707964), .help = "from horizontal; absent: vertical"),
    L(snow, GW_PRESSURE, .flags = GW_MAGNITUDE, LIMITS(0, 1e5), .help = "on sloped glass"),
    L(deflection_limit, GW_LENGTH, LIMITS(0.0001, 1), .help = "center deflection of the glass, at most"),
    L(deflection_ratio, GW_RATIO, LIMITS(10, 500), .help = "short side over deflection, at least"),
    PICK(lite_case, edition, gw_glass_standard_choices, .fallback = "e1300-16", .help = "of ASTM E1300"),
    FIELD(lite_case, "basis", route, GW_T_CHOICE, .choices = gw_glass_route_choices, .fallback = "lower",
          .help = "which route governs"),
    F(lite_case, sealing, GW_T_RECORD, .record = &gw_air_record, .help = "of cavities; with service: climatic load"),
    F(lite_case, service, GW_T_RECORD, .record = &gw_air_record, .help = "state of the gas in service"),
    F(lite_case, lightest_of, GW_T_RECORD, .record = &LISTED_RECORD, .flags = GW_MANY,
      .help = "make-ups to choose from, instead of layers"),
    L(thicknesses, GW_THICKNESS, .flags = GW_MANY, LIMITS(0.001, 0.1), .help = "try each listed make-up with these"),
    PICK(lite_case, treatments, gw_treatment_choices, .flags = GW_MANY, .help = "try each listed make-up with these"),
    F(lite_case, greatest_width, GW_T_BOOL, .help = "find the greatest width at this height"),
};
static const struct gw_record LITE_CASE_RECORD = RECORD("lite", lite_case, LITE);

static enum gw_status find_air(struct gw_lite *lite, const struct lite_case *given, struct gw_engine *engine)
{
    lite->climate = given->sealing || given->service;
    if (!lite->climate) return GW_OK;
    if (!given->sealing || !given->service)
        return gw_refuse(engine, GW_MISSING, given->sealing ? "service" : "sealing",
                         "sealing and service are given together");
    enum gw_status status = gw_air_from(&lite->sealing, given->sealing, "sealing", engine);
    return status ? status : gw_air_from(&lite->service, given->service, "service", engine);
}

static enum gw_status find_lite(struct gw_lite *lite, const struct lite_case *given, struct gw_engine *engine)
{
    *lite = (struct gw_lite){.width = given->width,
                             .height = given->height,
                             .temperature = given->temperature,
                             .probability = given->probability,
                             .edges = given->support,
                             .span = given->span,
                             .finish = given->edge_finish,
                             .edition = given->edition,
                             .route = given->route};
    enum gw_status status = find_air(lite, given, engine);
    if (status != GW_OK || given->lightest_of.n) return status;
    if (!given->layers.n) return gw_refuse(engine, GW_MISSING, "layers", "give layers, or lightest_of to choose from");
    return gw_make_up_from(&lite->make_up, given->layers.items, given->layers.n, engine);
}

static enum gw_status find_demand(struct gw_lite_demand *demand, const struct lite_case *given, double dead,
                                  struct gw_engine *engine)
{
    enum gw_status status = GW_OK;
    demand->n = 0;
    demand->deflection_limit =
        gw_lite_deflection_limit(given->deflection_limit, given->deflection_ratio, given->width, given->height);
    if (gw_given(given->slope)) {
        const struct gw_sloped sloped = {given->pressure, given->pressure_out, given->snow, given->slope, dead};
        if (gw_given(given->duration))
            return gw_refuse(engine, GW_BAD_VALUE, "duration", "sloped glass has the durations of its combinations");
        return gw_lite_sloped(demand, &sloped, engine);
    }
    if (gw_given(given->snow))
        return gw_refuse(engine, GW_MISSING, "slope", "snow rests on sloped glass: give its slope from horizontal");
    if (gw_given(given->pressure) || !gw_given(given->pressure_out))
        demand->loads[demand->n++] = (struct gw_lite_load){"inward", given->pressure, given->duration};
    if (gw_given(given->pressure_out))
        demand->loads[demand->n++] = (struct gw_lite_load){"outward", -given->pressure_out, given->duration};
    return status;
}

static void note(struct lite_answer *answer, const char *constant)
{
    struct gw_lite_result *r = &answer->verdict.results[answer->verdict.governing];
    if (r->n_notes < GW_LITE_NOTES) r->notes[r->n_notes++] = constant;
}

static enum gw_status run_one(struct lite_answer *answer, const struct gw_lite *lite, const struct lite_case *given,
                              struct gw_engine *engine)
{
    struct gw_lite_demand demand;
    struct gw_trace *trace = engine->trace;
    bool sloped = gw_given(given->slope);
    enum gw_status status =
        find_demand(&demand, given, sloped ? gw_make_up_weight(&lite->make_up, engine) : GW_ABSENT, engine);
    if (status == GW_OK) status = gw_lite_check(&answer->verdict, lite, &demand, engine);
    if (status != GW_OK) return status;
    gw_lite_answer(answer);
    engine->trace = NULL; /* searches are not part of the derivation */
    if (!sloped)
        status = gw_lite_greatest_pressure(&answer->greatest_pressure, lite, &answer->result->load,
                                           demand.deflection_limit, engine);
    if (status == GW_OK && given->greatest_width == GW_YES)
        status = gw_given(given->pressure) || gw_given(given->pressure_out)
                     ? gw_lite_greatest_width(&answer->greatest_width, lite, &demand, engine)
                     : gw_refuse(engine, GW_MISSING, "pressure", "the greatest width needs a pressure");
    engine->trace = trace;
    if (status == GW_OK && answer->greatest_width >= gw_lite_widest(lite, engine))
        note(answer, "the greatest width is where the method ends, sides 5 : 1: the lite may take more");
    return status;
}

/* A make-up of the list with all its glass of one thickness and treatment; absent, 0: as listed. */
static enum gw_status vary(struct gw_make_up *out, const struct listed *listed, double thickness,
                           enum gw_treatment treatment, struct gw_engine *engine)
{
    enum gw_status status = gw_make_up_from(out, listed->layers.items, listed->layers.n, engine);
    for (int i = 0; i < out->n_panes; i++)
        for (int k = 0; k < out->panes[i].n_plies; k++) {
            if (gw_given(thickness)) out->panes[i].plies[k].nominal = thickness;
            if (treatment) out->panes[i].plies[k].treatment = treatment;
        }
    return status;
}

struct variant {
    size_t listed, thickness, treatment;
};

static struct variant variant_of(const struct lite_case *given, size_t i)
{
    size_t thicknesses = given->thicknesses.n ? given->thicknesses.n : 1,
           treatments = given->treatments.n ? given->treatments.n : 1;
    return (struct variant){i / (thicknesses * treatments), i / treatments % thicknesses, i % treatments};
}

static double thickness_of(const struct lite_case *given, struct variant v)
{
    return given->thicknesses.n ? given->thicknesses.items[v.thickness] : GW_ABSENT;
}

static enum gw_treatment treatment_of(const struct lite_case *given, struct variant v)
{
    return given->treatments.n ? (enum gw_treatment)((const int *)given->treatments.items)[v.treatment]
                               : GW_TREATMENT_UNSET;
}

static size_t count_variants(const struct lite_case *given)
{
    size_t n = given->lightest_of.n;
    if (given->thicknesses.n) n *= given->thicknesses.n;
    return given->treatments.n ? n * given->treatments.n : n;
}

static void answer_choices(struct lite_answer *answer, const struct gw_lite_choices *found,
                           const struct lite_case *given)
{
    for (int i = 0; i < found->n; i++) {
        const struct gw_lite_choice *c = &found->items[i];
        const struct gw_lite_result *r = &c->verdict.results[c->verdict.governing];
        struct variant v = variant_of(given, (size_t)c->index);
        enum gw_treatment treatment = treatment_of(given, v);
        answer->chosen[i] =
            (struct choice_answer){.make_up = (int)v.listed + 1,
                                   .thickness = thickness_of(given, v),
                                   .treatment = treatment ? gw_choice_name(gw_treatment_choices, (int)treatment) : NULL,
                                   .weight = c->weight,
                                   .utilization = c->use,
                                   .load_resistance = r->resistance,
                                   .deflection = r->deflection};
    }
    answer->choices.items = answer->chosen;
    answer->choices.n = (size_t)found->n;
    answer->tried = found->tried;
    answer->failed = found->failed;
    answer->refused = found->refused;
}

/* The lightest becomes the lite whose figures are shown. */
static enum gw_status run_choice(struct lite_answer *answer, struct gw_lite *lite, const struct lite_case *given,
                                 struct gw_engine *engine)
{
    struct gw_make_up *list = (void *)((char *)engine->workspace + GW_PLATE_WORKSPACE);
    struct gw_lite_choices found;
    struct gw_lite_demand demand;
    struct gw_trace *trace = engine->trace;
    const size_t n = count_variants(given);
    if (given->layers.n) return gw_refuse(engine, GW_BAD_VALUE, "layers", "layers or lightest_of, not both");
    if (gw_given(given->slope))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "slope", "a sloped lite is checked make-up by make-up");
    if (!gw_given(given->pressure) && !gw_given(given->pressure_out))
        return gw_refuse(engine, GW_MISSING, "pressure", "choosing needs a pressure");
    if (n > MAKE_UPS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "lightest_of", "at most {} make-ups", gw_of_count(MAKE_UPS));
    enum gw_status status = find_demand(&demand, given, GW_ABSENT, engine);
    for (size_t i = 0; i < n && status == GW_OK; i++) {
        struct variant v = variant_of(given, i);
        status =
            vary(&list[i], &given->lightest_of.items[v.listed], thickness_of(given, v), treatment_of(given, v), engine);
    }
    engine->trace = NULL; /* the derivation is that of the lightest */
    if (status == GW_OK) status = gw_lite_lightest(&found, lite, list, n, &demand, engine);
    engine->trace = trace;
    if (status != GW_OK) return status;
    answer_choices(answer, &found, given);
    if (!found.n) return GW_OK;
    lite->make_up = list[found.items[0].index];
    return run_one(answer, lite, given, engine);
}

static enum gw_status run_lite(void *out, const void *in, struct gw_engine *engine)
{
    const struct lite_case *given = in;
    struct lite_answer *answer = out;
    struct gw_lite lite;
    gw_lite_answer_nothing(answer);
    enum gw_status status = find_lite(&lite, given, engine);
    if (status != GW_OK) return status;
    return given->lightest_of.n ? run_choice(answer, &lite, given, engine) : run_one(answer, &lite, given, engine);
}

static const char *const *lite_notes(const void *out, size_t *n)
{
    const struct lite_answer *answer = out;
    *n = answer->result ? (size_t)answer->result->n_notes : 0;
    return answer->result ? answer->result->notes : NULL;
}

const struct gw_calc_kind gw_kind_lite = {
    .name = "lite",
    .help = "strength and deflection of a lite: single, laminated, double, triple; lightest make-up, greatest width",
    .example = "width='48 in' height='72 in' layers='[{glass: 6 mm, treatment: annealed}]' pressure='40 psf'",
    .input = &LITE_CASE_RECORD,
    .output = &gw_lite_answer_record,
    .run = run_lite,
    .workspace = GW_PLATE_WORKSPACE + MAKE_UPS * sizeof(struct gw_make_up),
    .notes = lite_notes};

enum gw_status gw_lite_plate(struct gw_plate_case *plate, double *deflection_thickness, const char **pane,
                             const void *in, const void *out, struct gw_engine *engine)
{
    const struct lite_case *given = in;
    const struct lite_answer *answer = out;
    const struct gw_lite_result *r = answer->result;
    if (!r) return gw_refuse(engine, GW_OUTSIDE_METHOD, "lightest_of", "none of the make-ups passes: nothing to draw");
    if (!gw_given(r->load.pressure))
        return gw_refuse(engine, GW_MISSING, "pressure", "a drawing shows the lite under a pressure: give one");
    if (given->support != 4)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "support", "drawings show lites on four edges");
    const struct gw_lite size = {.width = given->width, .height = given->height};
    const int governing = gw_lite_governing_plate(plate, &size, r);
    *pane = answer->governing;
    *deflection_thickness =
        r->panes[governing].principles.deflection_thickness; /* of a laminated pane by either basis */
    return GW_OK;
}

/* Of a choice: the listed make-up with what was tried in its place. */
static void chosen_layers(struct gw_lite_chart *chart, struct gw_arena *arena, const struct lite_case *given,
                          const struct choice_answer *chosen)
{
    const struct listed *listed = &given->lightest_of.items[chosen->make_up - 1];
    struct gw_layer *layers = gw_alloc(arena, listed->layers.n, sizeof *layers);
    for (size_t i = 0; i < listed->layers.n; i++) {
        layers[i] = listed->layers.items[i];
        if (!gw_given(layers[i].glass)) continue;
        if (gw_given(chosen->thickness)) layers[i].glass = chosen->thickness;
        for (int t = 0; chosen->treatment && gw_treatment_choices[t].name; t++)
            if (strcmp(gw_treatment_choices[t].name, chosen->treatment) == 0)
                layers[i].treatment = (enum gw_treatment)gw_treatment_choices[t].value;
    }
    chart->layers = layers;
    chart->n_layers = listed->layers.n;
}

void gw_lite_chart(struct gw_lite_chart *chart, struct gw_arena *arena, const void *in, const void *out)
{
    const struct lite_case *given = in;
    const struct lite_answer *answer = out;
    *chart = (struct gw_lite_chart){.layers = given->layers.items,
                                    .n_layers = given->layers.n,
                                    .verdict = &answer->verdict,
                                    .deflection_limit = gw_lite_deflection_limit(
                                        given->deflection_limit, given->deflection_ratio, given->width, given->height)};
    if (answer->choices.n) chosen_layers(chart, arena, given, &answer->choices.items[0]);
}
