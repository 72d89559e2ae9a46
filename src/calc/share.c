/* Of 'galeward calc share'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"
#include "galeward/share.h"

struct part_case {
    double elastic_modulus, inertia, section_modulus, area, centroid;
};
struct share_case {
    double moment;
    GW_LIST(struct part_case) parts;
    GW_LIST(double) loads;
    double gap, span, moment_per_deflection, shear;
    enum gw_bool composite;
};
struct share_answer {
    struct gw_share_result result;
    GW_LIST(double) shares, moments, stresses, axial, shear_flows, interlock;
};

#define P(key_, dim_, ...) NUM(part_case, key_, dim_, __VA_ARGS__)
static const struct gw_field PART[] = {
    P(elastic_modulus, GW_STRESS, .flags = GW_REQUIRED, LIMITS(1e6, 1e13), .help = "of its material"),
    P(inertia, GW_INERTIA, .flags = GW_REQUIRED, LIMITS(0, 1), .help = "about its own axis"),
    P(section_modulus, GW_SECTION_MODULUS, .flags = GW_REQUIRED, LIMITS(0, 1),
      .help = "about its own axis, lesser face"),
    P(area, GW_SECTION_AREA, .help = "composite: needed"),
    P(centroid, GW_THICKNESS, LIMITS(-10, 10), .help = "composite: from any line common to all parts"),
};
static const struct gw_record PART_RECORD = RECORD("part", part_case, PART);
#define S(key_, dim_, ...) NUM(share_case, key_, dim_, __VA_ARGS__)
static const struct gw_field CASE[] = {
    S(moment, GW_MOMENT, .flags = GW_REQUIRED | GW_MAGNITUDE, .help = "on all parts together"),
    F(share_case, parts, GW_T_RECORD, .record = &PART_RECORD, .flags = GW_REQUIRED | GW_MANY,
      .help = "the first one gives the modulus of equivalent_inertia and is the one that a gap leaves alone"),
    S(loads, GW_LINE_LOAD, .flags = GW_MANY,
      .help = "what reaches each part, for the interlock force of split mullions"),
    S(gap, GW_THICKNESS, LIMITS(0, 0.1), .help = "loose fit between the first part and the others, on the loaded side"),
    S(span, GW_LENGTH, LIMITS(0.01, 50), .help = "with gap: simple span, uniform load"),
    S(moment_per_deflection, GW_FORCE, .help = "with gap, instead of span: of the first part where contact comes"),
    F(share_case, composite, GW_T_BOOL, .help = "joined for shear: one neutral axis"),
    S(shear, GW_FORCE, .flags = GW_MAGNITUDE, .help = "composite: for the shear flow"),
};
static const struct gw_record SHARE_CASE_RECORD = RECORD("share", share_case, CASE);

#define A(key_, member_, dim_, help_) OUT(share_answer, key_, member_, dim_, help_)
#define EACH_PART(key_, member_, dim_, help_) OUT_MANY(share_answer, key_, member_, dim_, help_)
static const struct gw_field ANSWER[] = {
    EACH_PART("shares", shares, GW_RATIO, "of the moment; composite: with the couple of the axial forces"),
    EACH_PART("moments", moments, GW_MOMENT, "about each part's own axis"),
    EACH_PART("stresses", stresses, GW_STRESS, "largest of each part"),
    A("equivalent_inertia", result.equivalent_inertia, GW_INERTIA, "in the first part's modulus, gap closed"),
    A("contact_moment", result.contact_moment, GW_MOMENT, "at which the gap closes"),
    EACH_PART("interlock", interlock, GW_LINE_LOAD, "load less share: what each part hands to the others"),
    A("neutral_axis", result.neutral_axis, GW_THICKNESS, "composite: from the common line"),
    EACH_PART("axial", axial, GW_FORCE, "composite: tension positive where the moment compresses greater centroids"),
    EACH_PART("shear_flows", shear_flows, GW_LINE_LOAD, "composite: between each part and the rest"),
};
static const struct gw_record SHARE_ANSWER_RECORD = RECORD("share result", share_answer, ANSWER);

static enum gw_status fill(struct gw_share *share, const struct share_case *given, struct gw_engine *engine)
{
    *share = (struct gw_share){.moment = given->moment,
                               .n_parts = (unsigned)given->parts.n,
                               .composite = given->composite == GW_YES,
                               .shear = given->shear,
                               .gap = given->gap,
                               .span = given->span,
                               .per_gap = given->moment_per_deflection};
    if (given->parts.n > GW_SHARE_PARTS)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "parts", "more than {} parts", gw_of_count(GW_SHARE_PARTS));
    if (given->loads.n && given->loads.n != given->parts.n)
        return gw_refuse(engine, GW_BAD_VALUE, "loads", "{} loads on {} parts", gw_of_count((long)given->loads.n),
                         gw_of_count((long)given->parts.n));
    for (size_t i = 0; i < given->parts.n; i++) {
        const struct part_case *p = &given->parts.items[i];
        share->parts[i] =
            (struct gw_share_part){p->elastic_modulus, p->inertia,
                                   p->section_modulus, p->area,
                                   p->centroid,        given->loads.n ? given->loads.items[i] : GW_ABSENT};
    }
    return GW_OK;
}

static enum gw_status run_share(void *out, const void *in, struct gw_engine *engine)
{
    const struct share_case *given = in;
    struct share_answer *answer = out;
    struct gw_share_result *r = &answer->result;
    struct gw_share share;
    enum gw_status status = fill(&share, given, engine);
    if (!status) status = gw_share_moment(r, &share, engine);
    if (status) return status;
    const size_t n = share.n_parts;
    answer->shares.items = r->shares, answer->moments.items = r->moments, answer->stresses.items = r->stresses;
    answer->axial.items = r->axial, answer->shear_flows.items = r->flow, answer->interlock.items = r->interlock;
    answer->shares.n = answer->moments.n = answer->stresses.n = n;
    answer->axial.n = share.composite ? n : 0;
    answer->shear_flows.n = gw_given(share.shear) ? n : 0;
    answer->interlock.n = given->loads.n;
    return GW_OK;
}

static const char *const *share_notes(const void *out, size_t *n)
{
    const struct share_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_share = {
    .name = "share",
    .help = "parts that bend together: inserts, split mullions, composite members",
    .example = "moment='60 kip-in' parts='[{elastic_modulus: 10100 ksi, inertia: 8 in4, section_modulus: 2.67 in3}, "
               "{elastic_modulus: 29000 ksi, inertia: 2.5 in4, section_modulus: 1.25 in3}]'",
    .input = &SHARE_CASE_RECORD,
    .output = &SHARE_ANSWER_RECORD,
    .run = run_share,
    .notes = share_notes};
