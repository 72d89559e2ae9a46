/* Seismic force, drift, clearance, bonded lites, exemptions: limits, symmetries, derivations by another way, and the
 * mistakes that are easily made. */
#include "support.h"

#define EACH(i, list)                                                                                                  \
    size_t i = 0;                                                                                                      \
    i < sizeof(list) / sizeof *(list);                                                                                 \
    i++

static const double IN = 0.0254, LB = 4.4482216152605;

static struct gw_engine engine_new(void)
{
    struct gw_engine engine;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    return engine;
}

static bool noted(struct gw_seismic_notes notes, const char *part)
{
    for (unsigned i = 0; i < notes.n; i++)
        if (strstr(notes.items[i], part)) return true;
    return false;
}

/* Force --------------------------------------------------------------------------------------------------------------
 */

static struct gw_seismic_force_case wall(enum gw_edition edition, enum gw_seismic_part part, double height_ratio)
{
    return (struct gw_seismic_force_case){.edition = edition,
                                          .sds = 0.83,
                                          .weight = 1234,
                                          .height_ratio = height_ratio,
                                          .importance = 1,
                                          .part = part,
                                          .ap = GW_ABSENT,
                                          .rp = GW_ABSENT,
                                          .car = GW_ABSENT,
                                          .rpo = GW_ABSENT,
                                          .period = GW_ABSENT,
                                          .response_modification = GW_ABSENT,
                                          .overstrength = GW_ABSENT,
                                          .structure_importance = GW_ABSENT};
}

static struct gw_seismic_force_result force_of(const struct gw_seismic_force_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_seismic_force_result out;
    enum gw_status status = gw_seismic_force(&out, in, &engine);
    if (status) print_error("%s: %s\n", engine.fault.key, told(&engine.fault));
    assert_int_equal(status, GW_OK);
    return out;
}

static enum gw_status refusal(const struct gw_seismic_force_case *in, const char *key)
{
    struct gw_engine engine = engine_new();
    struct gw_seismic_force_result out;
    enum gw_status status = gw_seismic_force(&out, in, &engine);
    assert_int_not_equal(status, GW_OK);
    assert_string_equal(engine.fault.key, key);
    return status;
}

static const enum gw_edition EDITIONS[] = {GW_ASCE7_10, GW_ASCE7_16, GW_ASCE7_22};
static const enum gw_seismic_part PARTS[] = {GW_PART_WALL_ELEMENT, GW_PART_CONNECTION_BODY, GW_PART_FASTENERS};

static void force_stays_between_its_limits(void **state)
{
    (void)state;
    int low = 0, high = 0, between = 0;
    for (EACH(e, EDITIONS))
        for (EACH(p, PARTS))
            for (double z = 0; z < 1.3; z += 0.11) {
                struct gw_seismic_force_case in = wall(EDITIONS[e], PARTS[p], z);
                in.importance = p == 2 ? 1.5 : 1;
                struct gw_seismic_force_result r = force_of(&in);
                const double unit = in.sds * in.weight * in.importance;
                assert_near(r.minimum, 0.3 * unit, 1e-9 * unit);
                assert_near(r.maximum, 1.6 * unit, 1e-9 * unit);
                assert_near(r.force, fmin(fmax(r.computed, r.minimum), r.maximum), 1e-9 * unit);
                assert_near(r.vertical, 0.2 * in.sds * in.weight, 1e-9 * unit);
                low += strcmp(r.governs, "minimum") == 0;
                high += strcmp(r.governs, "maximum") == 0;
                between += strcmp(r.governs, "formula") == 0;
            }
    assert_true(low > 0 && high > 0 && between > 0);
}

static void force_grows_with_what_drives_it(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS))
        for (EACH(p, PARTS)) {
            double last = 0, before = 0;
            for (double z = 0; z < 1.05; z += 0.0999) {
                struct gw_seismic_force_case in = wall(EDITIONS[e], PARTS[p], z), more = in;
                /* Before its limits 7-22 has a step down just above grade, where R_mu goes from 1 to 1.3. */
                double force = force_of(&in).force;
                assert_true(force >= last * (1 - 1e-12));
                if (z > 0.05) assert_true(force_of(&in).computed > before);
                before = z > 0.05 ? force_of(&in).computed : 0;
                last = force;
                more.sds *= 1.7;
                assert_near(force_of(&more).force, 1.7 * force_of(&in).force, 1e-9 * force);
                more = in;
                more.weight *= 0.3;
                assert_near(force_of(&more).force, 0.3 * force_of(&in).force, 1e-9 * force);
                more = in;
                more.importance = 1.5;
                assert_near(force_of(&more).force, 1.5 * force_of(&in).force, 1e-9 * force);
            }
        }
}

static void above_the_roof_as_at_the_roof(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_seismic_force_case roof = wall(EDITIONS[e], GW_PART_WALL_ELEMENT, 1), above = roof;
        above.height_ratio = 1.4;
        assert_near(force_of(&above).force, force_of(&roof).force, 1e-12);
        assert_true(noted(force_of(&above).notes, "above the roof"));
        assert_false(noted(force_of(&roof).notes, "above the roof"));
    }
}

/* The force that shears the connections is not the wall's: forgetting it would design them for a third. */
static void fasteners_take_their_own_force(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_engine engine = engine_new();
        struct gw_seismic_force_case in = wall(EDITIONS[e], GW_PART_UNSET, 1);
        struct gw_seismic_forces all;
        assert_int_equal(gw_seismic_forces(&all, &in, &engine), GW_OK);
        assert_near(all.wall_element.force, all.connection_body.force, 1e-9);
        double ratio = all.fasteners.force / all.wall_element.force;
        if (EDITIONS[e] == GW_ASCE7_22) assert_near(ratio, 1.6 / (0.4 * 3.5 / 1.3 / 1.5), 1e-9);
        else assert_near(ratio, 1.25 / 1.0 * 2.5, 1e-9);
        assert_true(noted(all.wall_element.notes, "fasteners"));
        assert_true(noted(all.connection_body.notes, "fasteners"));
        assert_false(noted(all.fasteners.notes, "fasteners of the connecting system take"));
        assert_int_equal(refusal(&in, EDITIONS[e] == GW_ASCE7_22 ? "car" : "ap"), GW_MISSING);
        in.part = GW_PART_FASTENERS;
        assert_int_equal(gw_seismic_forces(&all, &in, &engine), GW_BAD_VALUE);
    }
}

static void coefficients_given_stand_before_the_table(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_ASCE7_16, GW_PART_WALL_ELEMENT, 0.5);
    in.ap = 2.5, in.rp = 3.5;
    struct gw_seismic_force_result r = force_of(&in);
    assert_near(r.computed, 0.4 * 2.5 * 0.83 * 1234 * 2 / 3.5, 1e-6);
    assert_false(noted(r.notes, "a_p and R_p"));
    in.rp = GW_ABSENT;
    r = force_of(&in);
    assert_near(r.rp, 2.5, 0);
    assert_true(noted(r.notes, "a_p and R_p"));
    in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, 0.5);
    assert_true(noted(force_of(&in).notes, "C_AR and R_po are recalled"));
    in.car = 1, in.rpo = 1.5;
    assert_false(noted(force_of(&in).notes, "C_AR and R_po are recalled"));
    assert_true(noted(force_of(&in).notes, "recalled, not seen"));
    in.ap = 1;
    assert_true(noted(force_of(&in).notes, "not used in asce7-22"));
}

/* A period that is not known gives the most; a short one, the same; a_1 and a_2 have no step at 0.4 s. */
static void height_factor_of_22(void **state)
{
    (void)state;
    for (double z = 0.1; z < 1.05; z += 0.3) {
        struct gw_seismic_force_case in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, z);
        const double unknown = force_of(&in).hf;
        double last = unknown;
        for (double period = 0.1; period < 6; period *= 1.3) {
            in.period = period;
            double hf = force_of(&in).hf;
            assert_true(hf <= last + 1e-12);
            assert_true(hf >= 1);
            if (period <= 0.4) assert_near(hf, unknown, 1e-12);
            last = hf;
        }
        in.period = 0.4 * (1 - 1e-9);
        double before = force_of(&in).hf;
        in.period = 0.4 * (1 + 1e-9);
        assert_near(force_of(&in).hf, before, 1e-7);
    }
}

static void ductility_of_22(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_ASCE7_22, GW_PART_WALL_ELEMENT, 0.6), half;
    in.response_modification = 6, in.overstrength = 2.5, in.structure_importance = 1.25;
    assert_near(force_of(&in).rmu, sqrt(1.1 * 6 / (1.25 * 2.5)), 1e-12);
    in.response_modification = 3; /* 1.03, raised */
    assert_near(force_of(&in).rmu, 1.3, 1e-12);
    half = in;
    half.overstrength = GW_ABSENT;
    assert_int_equal(refusal(&half, "overstrength"), GW_MISSING);
    half = in;
    half.structure_importance = GW_ABSENT;
    assert_int_equal(refusal(&half, "structure_importance"), GW_MISSING);
    in.height_ratio = 0;
    assert_near(force_of(&in).rmu, 1, 0);
    assert_near(force_of(&in).hf, 1, 0);
}

static void what_a_force_needs(void **state)
{
    (void)state;
    struct gw_seismic_force_case in = wall(GW_EDITION_UNSET, GW_PART_FASTENERS, 0.6);
    assert_int_equal(refusal(&in, "edition"), GW_MISSING);
    in.edition = GW_ASCE7_16;
    in.sds = GW_ABSENT;
    assert_int_equal(refusal(&in, "sds"), GW_MISSING);
    in.sds = 0.5, in.weight = -3;
    assert_int_equal(refusal(&in, "weight"), GW_BAD_VALUE);
    in.weight = INFINITY;
    assert_int_equal(refusal(&in, "weight"), GW_BAD_VALUE);
    in.weight = 3, in.height_ratio = -0.1;
    assert_int_equal(refusal(&in, "height_ratio"), GW_BAD_VALUE);
    in.height_ratio = 0.1, in.rp = 0;
    assert_int_equal(refusal(&in, "rp"), GW_BAD_VALUE);
}

static void importance_factors(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    const double want[] = {1, 1, 1.25, 1.5};
    double factor;
    for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
        assert_int_equal(gw_structure_importance(&factor, (enum gw_risk)risk, &engine), GW_OK);
        assert_near(factor, want[risk - GW_RISK_I], 0);
        assert_int_equal(gw_component_importance(&factor, (enum gw_risk)risk, GW_NO, &engine), GW_OK);
        assert_near(factor, risk == GW_RISK_IV ? 1.5 : 1, 0);
        assert_int_equal(gw_component_importance(&factor, (enum gw_risk)risk, GW_YES, &engine), GW_OK);
        assert_near(factor, 1.5, 0);
    }
    assert_int_equal(gw_structure_importance(&factor, GW_RISK_UNSET, &engine), GW_MISSING);
    assert_int_equal(gw_component_importance(&factor, GW_RISK_UNSET, GW_UNSAID, &engine), GW_MISSING);
}

/* Drift --------------------------------------------------------------------------------------------------------------
 */

static struct gw_drift_case story(enum gw_risk risk)
{
    return (struct gw_drift_case){.drift = GW_ABSENT,
                                  .drift_with_importance = GW_ABSENT,
                                  .importance = GW_ABSENT,
                                  .risk = risk,
                                  .structure = GW_DRIFT_OTHER,
                                  .story_height = 3.9,
                                  .redundancy = GW_ABSENT};
}

static struct gw_drift_result drift_of(const struct gw_drift_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_drift_result out;
    assert_int_equal(gw_story_drift(&out, in, &engine), GW_OK);
    return out;
}

/* I_e belongs once into D_pI, also when the engineer's drift came with it. */
static void importance_is_counted_once(void **state)
{
    (void)state;
    for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
        struct gw_drift_case plain = story((enum gw_risk)risk), counted = plain;
        plain.drift = 0.041;
        struct gw_drift_result first = drift_of(&plain);
        assert_near(first.drift_with_importance, 0.041 * first.importance, 1e-12);
        counted.drift_with_importance = first.drift_with_importance;
        struct gw_drift_result again = drift_of(&counted);
        assert_near(again.drift_with_importance, first.drift_with_importance, 1e-12);
        assert_near(again.drift, 0.041, 1e-12);
        struct gw_engine engine = engine_new();
        struct gw_fallout_result fallout;
        assert_int_equal(gw_fallout(&fallout, again.drift_with_importance, GW_ABSENT, &engine), GW_OK);
        assert_near(fallout.required, 1.25 * first.importance * 0.041, 1e-12);
    }
}

static void allowable_drift_falls_with_risk(void **state)
{
    (void)state;
    for (int structure = GW_DRIFT_LOW_RISE; structure <= GW_DRIFT_OTHER; structure++) {
        double last = INFINITY;
        for (int risk = GW_RISK_I; risk <= GW_RISK_IV; risk++) {
            struct gw_drift_case in = story((enum gw_risk)risk);
            in.structure = (enum gw_drift_structure)structure;
            struct gw_drift_result r = drift_of(&in);
            assert_true(r.allowable <= last);
            assert_true(r.allowable >= 0.007 && r.allowable <= 0.025);
            assert_near(r.drift, r.allowable * 3.9, 1e-12);
            last = r.allowable;
            in.redundancy = 1.3;
            assert_near(drift_of(&in).drift, r.drift / 1.3, 1e-12);
            in.drift = 0.03; /* the engineer's governs over the table */
            assert_near(drift_of(&in).drift, 0.03, 0);
            assert_false(gw_given(drift_of(&in).allowable));
        }
    }
}

static void recalled_rows_say_so(void **state)
{
    (void)state;
    struct gw_drift_case in = story(GW_RISK_IV);
    assert_false(noted(drift_of(&in).notes, "is recalled, not seen"));
    in.structure = GW_DRIFT_MASONRY;
    assert_true(noted(drift_of(&in).notes, "is recalled, not seen"));
}

static void connections_allow_half_an_inch(void **state)
{
    (void)state;
    struct gw_drift_case in = story(GW_RISK_IV);
    in.drift = 0.2 * IN;
    assert_near(drift_of(&in).connection, 0.5 * IN, 1e-12);
    in.drift = 0.4 * IN;
    assert_near(drift_of(&in).connection, 0.6 * IN, 1e-12);
}

static void what_a_drift_needs(void **state)
{
    (void)state;
    const struct {
        struct gw_drift_case in;
        enum gw_status status;
        const char *key;
    } cases[] = {
        {{.drift = 1, .drift_with_importance = 1, .importance = 1}, GW_BAD_VALUE, "drift_with_importance"},
        {{.drift = 0.1, .drift_with_importance = GW_ABSENT, .importance = GW_ABSENT}, GW_MISSING, "risk_category"},
        {{.drift = GW_ABSENT, .drift_with_importance = GW_ABSENT, .importance = 1}, GW_MISSING, "drift"},
        {{.drift = GW_ABSENT, .drift_with_importance = GW_ABSENT, .importance = 1, .structure = GW_DRIFT_OTHER},
         GW_MISSING,
         "risk_category"},
        {{.drift = -0.1, .drift_with_importance = GW_ABSENT, .importance = 1}, GW_BAD_VALUE, "drift"},
    };
    for (EACH(i, cases)) {
        struct gw_engine engine = engine_new();
        struct gw_drift_result out;
        assert_int_equal(gw_story_drift(&out, &cases[i].in, &engine), cases[i].status);
        assert_string_equal(engine.fault.key, cases[i].key);
    }
}

static struct gw_lite_drift_result share_of(enum gw_drift_path path, double drift, double slip)
{
    const struct gw_lite_drift_case in = {
        .path = path, .drift = drift, .story_height = 3.962, .frame_height = 1.854, .slip = slip, .unit_width = 1.47};
    struct gw_engine engine = engine_new();
    struct gw_lite_drift_result out;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OK);
    return out;
}

/* The drift of the story is not that of the lite, and the paths agree where they meet. */
static void share_of_the_lite(void **state)
{
    (void)state;
    const double drift = 0.0396, whole = share_of(GW_PATH_ALL_IN_LITE, drift, GW_ABSENT).in_lite;
    const double racked = share_of(GW_PATH_RACKING, drift, GW_ABSENT).in_lite;
    assert_near(whole, drift, 0);
    assert_near(racked, drift * 1.854 / 3.962, 1e-12);
    assert_true(racked < 0.5 * whole);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, 0).in_lite, racked, 1e-12);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, drift).in_lite, 0, 0);
    assert_near(share_of(GW_PATH_SLIDING_HEAD, drift, 1).slip, drift, 0);
    double last = racked;
    for (double slip = 0.005; slip < drift; slip += 0.005) {
        struct gw_lite_drift_result r = share_of(GW_PATH_SLIDING_HEAD, drift, slip);
        assert_near(r.slip, slip, 0);
        assert_true(r.in_lite < last);
        last = r.in_lite;
    }
    assert_near(share_of(GW_PATH_SLIDING, drift, GW_ABSENT).in_lite, 0, 0);
    assert_near(share_of(GW_PATH_SLIDING, drift, GW_ABSENT).slip, drift, 0);
    assert_near(share_of(GW_PATH_TILTING, drift, GW_ABSENT).in_lite, 0, 0);
}

/* Two units turned each about its lower left corner, by the rotation itself: how far points that touched have parted
 * along the joint. */
static void tilting_units_slip_along_their_joint(void **state)
{
    (void)state;
    const double height = 3.962, width = 1.47;
    for (double drift = 0.001; drift < 0.08; drift *= 3) {
        struct gw_lite_drift_result r = share_of(GW_PATH_TILTING, drift, GW_ABSENT);
        double angle = asin(drift / height), middle = height / 2;
        double left_unit = -sin(-angle) * width + cos(angle) * middle; /* right edge of the left unit */
        double right_unit = cos(angle) * middle;                       /* left edge of the right one */
        assert_near(r.joint_slip, left_unit - right_unit, 1e-9);
        assert_near(r.lift, width * sin(angle), 1e-9);
        assert_near(r.angle, angle, 0.001 * angle);
    }
}

static void what_a_share_needs(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_lite_drift_result out;
    struct gw_lite_drift_case in = {.path = GW_PATH_RACKING,
                                    .drift = 0.03,
                                    .story_height = 3,
                                    .frame_height = 3.1,
                                    .slip = GW_ABSENT,
                                    .unit_width = GW_ABSENT};
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OUTSIDE_METHOD);
    in.frame_height = 3;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_OK);
    assert_near(out.in_lite, 0.03, 1e-15);
    in.path = GW_PATH_SLIDING_HEAD;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "slip");
    in.path = GW_PATH_TILTING;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
    assert_string_equal(engine.fault.key, "unit_width");
    in.path = GW_PATH_UNSET;
    assert_int_equal(gw_lite_drift(&out, &in, &engine), GW_MISSING);
}

/* Clearance ----------------------------------------------------------------------------------------------------------
 */

static struct gw_clearance_result clearance_of(const struct gw_clearance_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_clearance_result out;
    assert_int_equal(gw_clearance(&out, in, &engine), GW_OK);
    return out;
}

/* The rectangle, turned, stays inside the parallelogram when its four corners do. */
static bool fits(const struct gw_clearance_case *in, double frame_angle, double turn)
{
    for (int corner = 0; corner < 4; corner++) {
        double x = (corner & 1 ? 0.5 : -0.5) * in->lite_width, y = (corner & 2 ? 0.5 : -0.5) * in->lite_height;
        double u = x * cos(turn) + y * sin(turn), v = y * cos(turn) - x * sin(turn);
        if (fabs(v) > in->lite_height / 2 + in->end_gap) return false;
        if (fabs(u - frame_angle * v) > in->lite_width / 2 + in->side_gap) return false;
    }
    return true;
}

static bool fits_somehow(const struct gw_clearance_case *in, double frame_angle)
{
    enum { STEPS = 4000 };
    for (int i = 0; i <= STEPS; i++)
        if (fits(in, frame_angle, frame_angle * i / STEPS)) return true;
    return false;
}

/* Largest drift by trying, with the geometry itself instead of its linear form. */
static double drift_by_trying(const struct gw_clearance_case *in)
{
    double good = 0, bad = 4 * (in->side_gap + in->end_gap * in->lite_height / in->lite_width) / in->lite_height;
    for (int i = 0; i < 30; i++) {
        double middle = (good + bad) / 2;
        if (fits_somehow(in, middle)) good = middle;
        else bad = middle;
    }
    return good * in->lite_height;
}

/* As the gaps shrink beside the lite the formula becomes exact. */
static void clearance_is_where_the_lite_binds(void **state)
{
    (void)state;
    const double shapes[][2] = {{1.5, 1.8}, {1.5, 1.5}, {2.2, 0.9}, {0.8, 2.4}};
    for (EACH(i, shapes)) {
        double worst[2];
        for (int fine = 0; fine < 2; fine++) {
            const double scale = fine ? 0.1 : 1;
            const struct gw_clearance_case in = {.lite_width = shapes[i][0],
                                                 .lite_height = shapes[i][1],
                                                 .side_gap = 0.009 * scale,
                                                 .end_gap = 0.012 * scale,
                                                 .drift_in_lite = GW_ABSENT};
            worst[fine] = fabs(drift_by_trying(&in) / clearance_of(&in).clearance - 1);
        }
        assert_true(worst[0] < 0.05);
        assert_true(worst[1] < 0.006);
        assert_true(worst[1] < worst[0] / 5);
    }
}

static struct gw_clearance_case lite_of_60_by_72(double drift, double importance, enum gw_edition edition)
{
    return (struct gw_clearance_case){.lite_width = 60 * IN,
                                      .lite_height = 72 * IN,
                                      .side_gap = 0.375 * IN,
                                      .end_gap = 0.5 * IN,
                                      .drift_in_lite = drift,
                                      .importance = importance,
                                      .edition = edition};
}

/* The gaps have roles: taking one for the other, or the height for the width, gives another drift. */
static void gaps_and_sides_have_roles(void **state)
{
    (void)state;
    struct gw_clearance_case in = lite_of_60_by_72(GW_ABSENT, GW_ABSENT, GW_EDITION_UNSET), other = in;
    other.side_gap = in.end_gap, other.end_gap = in.side_gap;
    assert_near(clearance_of(&in).clearance, 1.95 * IN, 1e-12);
    assert_near(clearance_of(&other).clearance, 1.90 * IN, 1e-12);
    other = in;
    other.lite_width = in.lite_height, other.lite_height = in.lite_width;
    assert_near(clearance_of(&other).clearance, (0.75 + 60.0 / 72) * IN, 1e-12);
    other.lite_width = other.lite_height;
    assert_near(clearance_of(&other).clearance, 1.75 * IN, 1e-12);
    other.side_gap = 0;
    assert_near(clearance_of(&other).clearance, 1.0 * IN, 1e-12);
}

/* All of 1.56 in goes into the lite: without I_e the clearance of 1.95 in just does, with it it does not. */
static void the_edition_decides(void **state)
{
    (void)state;
    for (EACH(e, EDITIONS)) {
        struct gw_clearance_case in = lite_of_60_by_72(1.56 * IN, 1.5, EDITIONS[e]);
        struct gw_clearance_result r = clearance_of(&in);
        assert_near(r.required_without, 1.95 * IN, 1e-12);
        assert_near(r.required_with_importance, 2.925 * IN, 1e-12);
        assert_int_equal(r.passes_without, GW_YES);
        assert_int_equal(r.passes_with_importance, GW_NO);
        assert_int_equal(r.passes, EDITIONS[e] == GW_ASCE7_10 ? GW_YES : GW_NO);
        assert_near(r.fallout_required, 2.925 * IN, 1e-12);
        assert_true(noted(r.notes, "recalled to differ between editions"));
        in.drift_in_lite = 0.73 * IN;
        assert_int_equal(clearance_of(&in).passes, GW_YES);
        in.drift_in_lite = 1.5601 * IN;
        assert_int_equal(clearance_of(&in).passes_without, GW_NO);
    }
    struct gw_clearance_case in = lite_of_60_by_72(1.56 * IN, 1.5, GW_EDITION_UNSET);
    assert_int_equal(clearance_of(&in).passes, GW_UNSAID);
    in.drift_in_lite = GW_ABSENT;
    assert_int_equal(clearance_of(&in).passes_without, GW_UNSAID);
    assert_false(gw_given(clearance_of(&in).required_without));
}

static void fallout_against_a_test(void **state)
{
    (void)state;
    struct gw_engine engine = engine_new();
    struct gw_fallout_result r;
    assert_int_equal(gw_fallout(&r, 2 * IN, 2.5 * IN, &engine), GW_OK);
    assert_int_equal(r.passes, GW_YES);
    assert_int_equal(gw_fallout(&r, 2 * IN, 2.4999 * IN, &engine), GW_OK);
    assert_int_equal(r.passes, GW_NO);
    assert_int_equal(gw_fallout(&r, 0, 0.49 * IN, &engine), GW_OK); /* half an inch at least */
    assert_int_equal(r.passes, GW_NO);
    assert_int_equal(gw_fallout(&r, 0.1 * IN, GW_ABSENT, &engine), GW_OK);
    assert_near(r.required, 0.5 * IN, 1e-12);
    assert_int_equal(r.passes, GW_UNSAID);
    assert_int_equal(gw_fallout(&r, GW_ABSENT, 1, &engine), GW_MISSING);
    assert_int_equal(gw_fallout(&r, 0.1, -1, &engine), GW_BAD_VALUE);
}

/* Bonded lites -------------------------------------------------------------------------------------------------------
 */

static struct gw_racking_result racking_of(double drift, double width, double height, double thickness)
{
    const struct gw_racking_case in = {drift, width, height, thickness};
    struct gw_engine engine = engine_new();
    struct gw_racking_result out;
    assert_int_equal(gw_silicone_racking(&out, &in, &engine), GW_OK);
    return out;
}

/* Shear energy of the bead, over its stiffness: the square of the slip between frame and lite, summed over the
 * perimeter, for a lite that turns by `turn` and moves by (right, up). */
static double bead_energy(double width, double height, double angle, double turn, double right, double up)
{
    enum { PIECES = 400 };
    double sum = 0;
    for (int side = 0; side < 4; side++)
        for (int i = 0; i < PIECES; i++) {
            double along = (i + 0.5) / PIECES - 0.5, x, y, length;
            if (side < 2) x = along * width, y = (side ? 0.5 : -0.5) * height, length = width / PIECES;
            else x = (side == 2 ? -0.5 : 0.5) * width, y = along * height, length = height / PIECES;
            double slip_x = angle * y - (turn * y + right), slip_y = 0 - (-turn * x + up);
            sum += (slip_x * slip_x + slip_y * slip_y) * length;
        }
    return sum;
}

/* Coordinate by coordinate, each step to the bottom of the parabola through three points. */
static double turn_of_least_energy(double width, double height, double angle)
{
    double at[3] = {0.1 * angle, 0.3 * angle * height, -0.2 * angle * height};
    const double step[3] = {0.3 * angle, 0.2 * angle * height, 0.2 * angle * height};
    for (int round = 0; round < 8; round++)
        for (int k = 0; k < 3; k++) {
            double energy[3], start = at[k];
            for (int i = 0; i < 3; i++) {
                at[k] = start + (i - 1) * step[k];
                energy[i] = bead_energy(width, height, angle, at[0], at[1], at[2]);
            }
            at[k] = start + step[k] * (energy[0] - energy[2]) / (2 * (energy[0] - 2 * energy[1] + energy[2]));
        }
    assert_near(at[1], 0, 1e-6 * angle * height); /* it turns about its middle */
    assert_near(at[2], 0, 1e-6 * angle * height);
    return at[0];
}

static void bonded_lite_turns_by_least_energy(void **state)
{
    (void)state;
    const double shapes[][2] = {{1.5, 1.5}, {1.5, 2.1}, {2.7, 1.1}, {0.6, 3.0}, {1.0, 1.01}};
    for (EACH(i, shapes)) {
        const double width = shapes[i][0], height = shapes[i][1];
        struct gw_racking_result r = racking_of(0.01 * height, width, height, 0.01);
        assert_near(r.frame_angle, 0.01, 1e-15);
        assert_near(r.lite_rotation, turn_of_least_energy(width, height, 0.01), 1e-5 * 0.01);
        double here = bead_energy(width, height, 0.01, r.lite_rotation, 0, 0);
        assert_true(bead_energy(width, height, 0.01, 0, 0, 0) > here);    /* not at rest */
        assert_true(bead_energy(width, height, 0.01, 0.01, 0, 0) > here); /* not with the sides */
    }
}

static void bonded_lite_at_its_limits(void **state)
{
    (void)state;
    struct gw_racking_result square = racking_of(0.02, 1.3, 1.3, 0.008);
    assert_near(square.lite_rotation, square.frame_angle / 2, 1e-15);
    assert_near(square.slip_horizontal, square.slip_vertical, 1e-15);
    /* Head and sill change places with the sides: the two turns add up to the frame's angle. */
    double tall = racking_of(0.018, 1.1, 1.8, 0.01).lite_rotation,
           wide = racking_of(0.011, 1.8, 1.1, 0.01).lite_rotation;
    assert_near(tall + wide, 0.01, 1e-15);
    assert_true(tall > wide); /* a tall lite goes with its sides */
    assert_near(racking_of(0.05, 0.02, 5, 0.01).lite_rotation, 0.01, 1e-5);
    struct gw_racking_result once = racking_of(0.02, 1.1, 1.8, 0.01), twice = racking_of(0.04, 1.1, 1.8, 0.01);
    assert_near(twice.slip_corner, 2 * once.slip_corner, 1e-15);
    assert_near(racking_of(0.02, 1.1, 1.8, 0.02).strain_corner, once.strain_corner / 2, 1e-12);
    assert_near(once.slip_corner, hypot(once.slip_horizontal, once.slip_vertical), 1e-15);
    assert_near(once.extension_corner, sqrt(0.01 * 0.01 + pow(once.slip_corner, 2)) / 0.01 - 1, 1e-12);
    assert_true(once.extension_corner < once.strain_corner);
    assert_near(racking_of(0, 1.1, 1.8, 0.01).strain_corner, 0, 0);
    const struct gw_racking_case large = {0.19, 1.1, 1.8, 0.01};
    struct gw_engine engine = engine_new();
    assert_int_equal(gw_silicone_racking(&once, &large, &engine), GW_OUTSIDE_METHOD);
}

/* Exemptions ---------------------------------------------------------------------------------------------------------
 */

static struct gw_exemption_case glass_unknown(void)
{
    return (struct gw_exemption_case){.edition = GW_ASCE7_16,
                                      .importance = GW_ABSENT,
                                      .parapet = GW_UNSAID,
                                      .clearance_passes = GW_UNSAID,
                                      .monolithic = GW_UNSAID,
                                      .height_above_walk = GW_ABSENT,
                                      .single_thickness = GW_UNSAID,
                                      .interlayer = GW_ABSENT,
                                      .captured = GW_UNSAID,
                                      .bead = GW_ABSENT,
                                      .other_anchorage = GW_UNSAID};
}

static struct gw_exemptions exempt(const struct gw_exemption_case *in)
{
    struct gw_engine engine = engine_new();
    struct gw_exemptions out;
    assert_int_equal(gw_seismic_exemptions(&out, in, &engine), GW_OK);
    assert_true(noted(out.notes, "recalled"));
    return out;
}

static void nothing_known_exempts_nothing(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    struct gw_exemptions r = exempt(&in);
    for (int i = 0; i < GW_EXEMPT_COUNT; i++) {
        assert_int_equal(r.of[i].applies, GW_UNSAID);
        assert_non_null(r.of[i].condition);
        assert_non_null(r.of[i].clause);
    }
    assert_int_equal(r.chapter, GW_EXEMPT_COUNT);
    assert_int_equal(r.glass, GW_EXEMPT_COUNT);
}

static void categories_exempt(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    in.category = GW_SDC_A;
    assert_int_equal(exempt(&in).chapter, GW_EXEMPT_CATEGORY_A);
    in.category = GW_SDC_D;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_A].applies, GW_NO);
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
    in.category = GW_SDC_B;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_UNSAID);
    in.parapet = GW_NO;
    in.importance = 1.5;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
    assert_string_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].condition, "I_p is 1");
    in.importance = 1;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_YES);
    assert_int_equal(exempt(&in).chapter, GW_EXEMPT_CATEGORY_B);
    in.parapet = GW_YES;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_CATEGORY_B].applies, GW_NO);
}

static void tempered_glass_low_down(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown();
    in.treatment = GW_TEMPERED, in.monolithic = GW_YES, in.risk = GW_RISK_III, in.height_above_walk = 10 * FT;
    struct gw_exemptions r = exempt(&in);
    assert_int_equal(r.of[GW_EXEMPT_TEMPERED].applies, GW_YES);
    assert_int_equal(r.glass, GW_EXEMPT_TEMPERED);
    assert_null(r.of[GW_EXEMPT_TEMPERED].condition);
    assert_int_equal(r.of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    in.height_above_walk = 10.01 * FT;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
    in.height_above_walk = 8 * FT, in.risk = GW_RISK_IV;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
    in.risk = GW_RISK_II, in.monolithic = GW_UNSAID;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_UNSAID);
    in.monolithic = GW_YES, in.treatment = GW_HEAT_STRENGTHENED;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_TEMPERED].applies, GW_NO);
}

static void anchored_laminated_glass(void **state)
{
    (void)state;
    struct gw_exemption_case in = glass_unknown(), other;
    in.treatment = GW_ANNEALED, in.monolithic = GW_NO, in.single_thickness = GW_YES, in.interlayer = 0.030 * IN;
    in.captured = GW_YES, in.bead = 0.5 * IN;
    assert_int_equal(exempt(&in).of[GW_EXEMPT_LAMINATED].applies, GW_YES);
    other = in, other.interlayer = 0.015 * IN;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.bead = 0.375 * IN;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other.other_anchorage = GW_YES;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_YES);
    other = in, other.captured = GW_NO;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.treatment = GW_TEMPERED;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_NO);
    other = in, other.single_thickness = GW_UNSAID;
    assert_int_equal(exempt(&other).of[GW_EXEMPT_LAMINATED].applies, GW_UNSAID);
    other = in, other.clearance_passes = GW_YES;
    struct gw_exemptions r = exempt(&other);
    assert_int_equal(r.of[GW_EXEMPT_CLEARANCE].applies, GW_YES);
    assert_int_equal(r.glass, GW_EXEMPT_CLEARANCE);
    other.edition = GW_EDITION_UNSET;
    struct gw_engine engine = engine_new();
    assert_int_equal(gw_seismic_exemptions(&r, &other, &engine), GW_MISSING);
}

/* The same case in both systems of units -----------------------------------------------------------------------------
 */

static double answer(struct world *w, const char *kind, const char *yaml, const char *key)
{
    struct gw_text out;
    struct gw_calc_answer a;
    double value = GW_ABSENT;
    gw_text_init(&out, &w->arena);
    const struct gw_calc_kind *k = gw_calc_find(kind);
    bool good = gw_calc_case(&out, &w->arena, k, node_of(w, yaml), gw_tables_standard());
    if (!good) print_error("%s\n", out.at);
    assert_true(good && gw_calc_run(&a, &w->arena, k, node_of(w, yaml), gw_tables_standard()));
    const char *text = text_at(node_of(w, out.at), key);
    assert_int_equal(gw_read_number(text, strlen(text), &value), strlen(text));
    return value;
}

static void units_do_not_matter(void **state)
{
    struct world *w = *state;
    double us =
        answer(w, "seismic_force",
               "{units: us, edition: asce7-16, sds: 1, weight: 100, height_ratio: 0.4, importance: 1, part: fasteners}",
               "force_n");
    double si =
        answer(w, "seismic_force",
               "{units: si, edition: asce7-16, sds: 1, weight: 444.82216152605, height_ratio: 0.4, importance: 1, "
               "part: fasteners}",
               "force_n");
    assert_near(us, si, 1e-8);
    assert_near(us, 90 * LB, 1e-8); /* 0.4 x 1.25 x 1.8 */
    us = answer(w, "clearance", "{units: us, lite_width: 5, lite_height: 6, side_gap: 3/8, end_gap: 1/2}",
                "clearance_drift_m");
    si = answer(w, "clearance", "{units: si, lite_width: 1.524, lite_height: 1.8288, side_gap: 9.525, end_gap: 12.7}",
                "clearance_drift_m");
    assert_near(us, si, 1e-12);
    us = answer(w, "silicone_racking",
                "{units: us, drift_in_lite: 0.73, lite_width: 5, lite_height: 6, thickness: 3/8}", "strain_corner");
    si = answer(w, "silicone_racking",
                "{units: si, drift_in_lite: 18.542, lite_width: 1.524, lite_height: 1.8288, thickness: 9.525}",
                "strain_corner");
    assert_near(us, si, 1e-11);
}

/* Without a distribution the two heights mean even racking, and the answer says so. */
static void racking_is_said(void **state)
{
    struct world *w = *state;
    static const char lite[] =
        "lite_width: 60 in, lite_height: 72 in, side_gap: 3/8 in, end_gap: 1/2 in, drift: 1.56 in, "
        "importance: 1.5, story_height: 156 in, frame_height: 73 in";
    struct gw_text out;
    gw_text_init(&out, &w->arena);
    assert_true(gw_calc_case(&out, &w->arena, gw_calc_find("clearance"), node_of(w, gw_format(&w->arena, "{%s}", lite)),
                             gw_tables_standard()));
    assert_non_null(strstr(out.at, "no distribution given"));
    assert_non_null(strstr(out.at, "\"passes_with_importance\":true"));
    assert_non_null(strstr(out.at, "\"passes\":null"));
    gw_text_init(&out, &w->arena);
    assert_true(
        gw_calc_case(&out, &w->arena, gw_calc_find("clearance"),
                     node_of(w, gw_format(&w->arena, "{%s, distribution: all_in_lite, edition: asce7-22}", lite)),
                     gw_tables_standard()));
    assert_null(strstr(out.at, "no distribution given"));
    assert_non_null(strstr(out.at, "\"passes_with_importance\":false"));
    assert_non_null(strstr(out.at, "\"passes_without_importance\":true"));
    assert_non_null(strstr(out.at, "\"passes\":false"));
}

/* The importance taken out is the importance put in; z/h stays between grade and roof. */
static void small_rules(void **state)
{
    struct gw_engine engine;
    (void)state;
    gw_engine_init(&engine, gw_tables_standard(), NULL);
    assert_near(gw_drift_without_importance(0.0375, 1.25, &engine), 0.03, 1e-15);
    assert_near(gw_drift_of_ratio(0.012, 4.2, &engine), 0.0504, 1e-15);
    assert_near(gw_height_ratio(7.2, 24), 0.3, 1e-15);
    assert_near(gw_height_ratio(-2, 24), 0, 0);
    assert_near(gw_height_ratio(25, 24), 1, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(force_stays_between_its_limits),
        cmocka_unit_test(force_grows_with_what_drives_it),
        cmocka_unit_test(above_the_roof_as_at_the_roof),
        cmocka_unit_test(fasteners_take_their_own_force),
        cmocka_unit_test(coefficients_given_stand_before_the_table),
        cmocka_unit_test(height_factor_of_22),
        cmocka_unit_test(ductility_of_22),
        cmocka_unit_test(what_a_force_needs),
        cmocka_unit_test(importance_factors),
        cmocka_unit_test(importance_is_counted_once),
        cmocka_unit_test(allowable_drift_falls_with_risk),
        cmocka_unit_test(recalled_rows_say_so),
        cmocka_unit_test(connections_allow_half_an_inch),
        cmocka_unit_test(what_a_drift_needs),
        cmocka_unit_test(share_of_the_lite),
        cmocka_unit_test(tilting_units_slip_along_their_joint),
        cmocka_unit_test(what_a_share_needs),
        cmocka_unit_test(clearance_is_where_the_lite_binds),
        cmocka_unit_test(gaps_and_sides_have_roles),
        cmocka_unit_test(the_edition_decides),
        cmocka_unit_test(fallout_against_a_test),
        cmocka_unit_test(bonded_lite_turns_by_least_energy),
        cmocka_unit_test(bonded_lite_at_its_limits),
        cmocka_unit_test(nothing_known_exempts_nothing),
        cmocka_unit_test(categories_exempt),
        cmocka_unit_test(tempered_glass_low_down),
        cmocka_unit_test(anchored_laminated_glass),
        cmocka_unit_test(small_rules),
        WORLD_TEST(units_do_not_matter),
        WORLD_TEST(racking_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
