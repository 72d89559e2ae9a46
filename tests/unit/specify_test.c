/* What a project asks, written as a requirement set and read again: a set that is left as it is changes nothing. */
#include "support.h"

#include "galeward/specify.h"

struct judged {
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
};

static void judge(struct judged *out, struct gw_arena *arena, const char *path, const char *set)
{
    gw_diags_init(&out->diags, arena);
    assert_true(gw_model_load(&out->model, arena, &out->diags, path, NULL, 0));
    if (set) assert_true(gw_model_require_source(&out->model, gw_source_from(arena, "set.yaml", set, strlen(set))));
    assert_true(gw_takeoff_run(&out->takeoff, &out->model, arena, &out->diags));
    gw_ask_init(&out->ask, &out->model, &out->takeoff, arena);
    gw_answer_check(&out->answer, &out->ask);
}

static const char *set_of(struct judged *j, struct gw_arena *arena, enum gw_units shown)
{
    struct gw_results results;
    struct gw_specification specification;
    struct gw_text text;
    struct gw_engine engine;
    gw_results_of(&results, arena, &j->answer, shown);
    gw_specify(&specification, &j->answer, &j->ask, shown);
    const struct gw_specified specified = {&results, &specification};
    const struct gw_result result = gw_result_specify(arena, &specified);
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    gw_text_init(&text, arena);
    assert_int_equal(gw_format_named("yaml")->render(&text, &result, &engine, false), GW_OK);
    return text.at;
}

static bool same(double a, double b)
{
    if (isnan(a) || isnan(b)) return isnan(a) && isnan(b);
    return (isinf(a) && isinf(b)) || fabs(a - b) <= 1e-12 * fabs(a);
}

static void compare(const struct judged *site, const struct judged *set)
{
    assert_true(site->answer.judgement.findings.n > 1000);
    assert_int_equal(site->answer.judgement.findings.n, set->answer.judgement.findings.n);
    for (size_t i = 0; i < site->answer.judgement.findings.n; i++) {
        const struct gw_finding *a = &site->answer.judgement.findings.items[i],
                                *b = &set->answer.judgement.findings.items[i];
        assert_string_equal(a->demand->where, b->demand->where);
        assert_int_equal(a->verdict, b->verdict);
        assert_int_equal(a->evidence, b->evidence);
        assert_true(same(a->utilization, b->utilization));
        assert_true(same(a->required, b->required));
    }
    assert_int_equal(site->answer.below_site.n, set->answer.below_site.n);
    assert_false(gw_below_unaccepted(&set->answer));
}

static void left_as_it_is(const char *path, enum gw_units shown)
{
    static struct judged site, set;
    struct gw_arena arena;
    gw_arena_init(&arena, gw_system_host());
    judge(&site, &arena, path, NULL);
    judge(&set, &arena, path, set_of(&site, &arena, shown));
    assert_true(set.takeoff.by_set.n > 0);
    compare(&site, &set);
    gw_arena_release(&arena);
}

static void a_set_left_as_it_is_changes_nothing(void **state)
{
    (void)state;
    left_as_it_is("projects/tern-street.yaml", GW_US);
    left_as_it_is("projects/gull-point.yaml", GW_US);
    left_as_it_is("projects/gull-point.yaml", GW_SI);
}

/* Every pressure of the wall by one factor: demands of all links follow it, the strength of what holds them does not.
 */
static void every_link_follows_the_row(void **state)
{
    static struct judged site, set;
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    judge(&site, &arena, "projects/gull-point.yaml", NULL);
    judge(&set, &arena, "projects/gull-point.yaml",
          "{galeward: 1, requirement_set: {project: Gull Point Library}, requires: [{id: R-01, check: structural,\n"
          " inward: 63.909899699433 psf, outward: 83.23842504554008 psf, level: asd}]}");
    assert_int_equal(set.takeoff.by_set.n, 1);
    assert_near(set.takeoff.by_set.items[0].factor[0], 2, 1e-9);
    assert_near(set.takeoff.by_set.items[0].factor[1], 2, 1e-9);
    for (size_t i = 0; i < site.takeoff.elements.n; i++) {
        const struct gw_element *a = &site.takeoff.elements.items[i], *b = &set.takeoff.elements.items[i];
        assert_near(b->inward_asd.pa, 2 * a->inward_asd.pa, 1e-6);
        assert_near(b->outward.pa, 2 * a->outward.pa, 1e-6);
    }
    for (size_t i = 0; i < site.answer.reactions.n; i++)
        assert_near(set.answer.reactions.items[i].outward, 2 * site.answer.reactions.items[i].outward, 1e-5);
    for (size_t i = 0; i < site.answer.members.n; i++)
        assert_near(set.answer.members.items[i].moment, 2 * site.answer.members.items[i].moment, 1e-5);
    gw_arena_release(&arena);
}

/* Of the lites of all walls and parts. */
static struct gw_specified_proof greatest_proof(const struct gw_specification *s)
{
    struct gw_specified_proof out = {.set_limit = 0};
    for (size_t i = 0; i < s->proofs.n; i++) {
        const struct gw_specified_proof *p = &s->proofs.items[i];
        if (p->framing) continue;
        out.inward = fmax(out.inward, p->inward);
        out.outward = fmax(out.outward, p->outward);
        out.set_limit = fmax(out.set_limit, p->set_limit);
    }
    return out;
}

/* Each wall and part once; those of lites below the roof line are what the mock-up takes, framing above it is there. */
static void proofs_are_one_a_wall_and_part(void **state)
{
    static struct judged site;
    struct gw_specification s;
    struct gw_arena arena;
    double inward = 0, outward = 0, step_in = 0, step_out = 0;
    size_t framing = 0;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    judge(&site, &arena, "projects/tern-street.yaml", NULL);
    gw_specify(&s, &site.answer, &site.ask, GW_US);
    assert_int_equal(s.proofs.n, 5); /* east: lites, lites and framing above the roof line; north; plant room */
    for (size_t i = 0; i < s.proofs.n; i++) {
        const struct gw_specified_proof *p = &s.proofs.items[i];
        framing += p->framing;
        if (p->framing) assert_near(p->inward / PSF, 1.5 * 122.5, 0.1);
        if (p->first->parapet) assert_true(isnan(p->set_limit));
        else inward = fmax(inward, p->inward), outward = fmax(outward, p->outward);
    }
    assert_int_equal(framing, 1);
    for (size_t i = 0; i < site.answer.mock_up.n; i++) {
        const struct gw_sequence_step *step = &site.answer.mock_up.steps[i];
        if (step->test == GW_STEP_PROOF_IN) step_in = step->pressure;
        if (step->test == GW_STEP_PROOF_OUT) step_out = -step->pressure;
    }
    assert_near(step_in, inward, 1e-9 * inward);
    assert_near(step_out, outward, 1e-9 * outward);
    gw_arena_release(&arena);
}

/* 31.95 psf inward times 1.5; a span of 14 ft gives up 14 x 12 x 0.002 = 0.336 in. */
static void proof_is_of_the_greatest_pressure_and_span(void **state)
{
    static struct judged site;
    struct gw_specification s;
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    judge(&site, &arena, "projects/gull-point.yaml", NULL);
    gw_specify(&s, &site.answer, &site.ask, GW_US);
    assert_near(greatest_proof(&s).inward / PSF, 1.5 * 31.95495, 1e-3);
    assert_near(greatest_proof(&s).set_limit / FT * 12, 0.336, 1e-6);
    assert_near(s.field_water / PSF, 10, 1e-6); /* two thirds of 15 psf */
    gw_arena_release(&arena);
}

/* A parapet over a roof of 20 deg has no pressure by the method. The wall goes from its first floor to 29 ft. */
#define SLOPED(floor, anchors)                                                                                         \
    "galeward: 1\nproject: {name: Sloped}\ncodes: {building: ibc-2021, wind: asce7-16}\n"                              \
    "site: {basic_wind_speed: 115 mph, exposure: C, hurricane_prone: false, seismic: {category: A}, impact: none, "    \
    "blast: none}\nbuildings: [{name: hall, roof_height: 20 ft, least_width: 80 ft, roof_slope: 20 deg, enclosure: "   \
    "enclosed, parapet_height: 9 ft}]\n"                                                                               \
    "walls: [{name: s, building: hall, width: 20 ft, floors: [" floor "], top: 29 ft, anchors: [" anchors              \
    "], ends: [none, none], columns: {count: 4, width: 5 ft}, rows: [{height: rest, lite: a}]}]\n"                     \
    "lites: {a: {layers: [{glass: 6 mm, treatment: tempered}]}}\n"

static bool asks_for_share(const struct gw_specification *s)
{
    for (size_t i = 0; i < s->questions.n; i++)
        if (strstr(s->questions.items[i].question.format, "usual share")) return true;
    return false;
}

static void specify(struct gw_specification *out, struct judged *j, struct gw_arena *arena, const char *project)
{
    gw_diags_init(&j->diags, arena);
    const struct gw_source *source = gw_source_from(arena, "sloped.yaml", project, strlen(project));
    assert_true(gw_model_load_source(&j->model, arena, &j->diags, source, NULL, 0));
    assert_true(gw_takeoff_run(&j->takeoff, &j->model, arena, &j->diags));
    gw_ask_init(&j->ask, &j->model, &j->takeoff, arena);
    gw_answer_check(&j->answer, &j->ask);
    gw_specify(out, &j->answer, &j->ask, GW_US);
}

static void what_the_wind_leaves_open_is_said(void **state)
{
    static struct judged above, whole;
    struct gw_specification s;
    struct gw_arena arena;
    (void)state;
    gw_arena_init(&arena, gw_system_host());
    specify(&s, &above, &arena, SLOPED("20 ft", "20 ft, 29 ft"));
    assert_string_equal(s.proof_fault.format, "no pressure of article 2 is known for a lite");
    assert_non_null(strstr(above.answer.mock_up_fault.format, "no lite stands below the roof line"));
    assert_false(
        asks_for_share(&s)); /* of a wind that is not known there is none: the wall asks for its water itself */
    specify(&s, &whole, &arena, SLOPED("0 ft, 10 ft", "0 ft, 10 ft, 20 ft, 29 ft"));
    assert_false(gw_said(&s.proof_fault));
    assert_true(greatest_proof(&s).inward > 0);
    assert_near(greatest_proof(&s).set_limit / FT * 12, 10 * 12 * 0.002, 1e-6);
    assert_false(gw_said(&whole.answer.mock_up_fault));
    assert_true(asks_for_share(&s));
    gw_arena_release(&arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_set_left_as_it_is_changes_nothing), cmocka_unit_test(every_link_follows_the_row),
        cmocka_unit_test(proof_is_of_the_greatest_pressure_and_span), cmocka_unit_test(proofs_are_one_a_wall_and_part),
        cmocka_unit_test(what_the_wind_leaves_open_is_said)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
