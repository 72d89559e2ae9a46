/* What chapter 13 does not ask, and glass that its drift does not concern. */
#include "seismic_internal.h"

#include "base/tolerance.h"

static const char NOTE_RECALLED[] =
    "the exemptions of ASCE 7 13.1.4 and 13.5.9.1 are recalled, alike in the three editions: read the edition's text";

/* One condition of an exemption: met, not met, or not known. */
struct condition {
    enum gw_bool met;
    const char *text;
};

static enum gw_bool yes_if(bool known, bool met) { return !known ? GW_UNSAID : met ? GW_YES : GW_NO; }

static bool at_most(double value, double limit) { return seismic_reaches(limit, value); }

/* A condition that fails decides; else one that is not known. */
static void weigh(struct gw_exemption *out, const struct condition *conditions, size_t n)
{
    out->applies = GW_YES;
    out->condition = NULL;
    for (size_t i = 0; i < n; i++) {
        bool worse = conditions[i].met == GW_NO ? out->applies != GW_NO
                                                : conditions[i].met == GW_UNSAID && out->applies == GW_YES;
        if (!worse) continue;
        out->applies = conditions[i].met;
        out->condition = conditions[i].text;
    }
}
#define WEIGH(out, ...)                                                                                                \
    weigh(out, (const struct condition[]){__VA_ARGS__},                                                                \
          sizeof((const struct condition[]){__VA_ARGS__}) / sizeof(struct condition))

static enum gw_bool known_category(const struct gw_exemption_case *in, enum gw_seismic_category category)
{
    return yes_if(in->category != GW_SDC_UNSET, in->category == category);
}

static enum gw_bool not_of(enum gw_bool value)
{
    return value == GW_UNSAID ? GW_UNSAID : value == GW_YES ? GW_NO : GW_YES;
}

static void chapter_exemptions(struct gw_exemptions *out, const struct gw_exemption_case *in)
{
    const double one = 1;
    WEIGH(&out->of[GW_EXEMPT_CATEGORY_A], {known_category(in, GW_SDC_A), "Seismic Design Category A"});
    WEIGH(&out->of[GW_EXEMPT_CATEGORY_B], {known_category(in, GW_SDC_B), "Seismic Design Category B"},
          {not_of(in->parapet), "the wall is no parapet"},
          {yes_if(gw_given(in->importance), in->importance <= one + GW_HAIR), "I_p is 1"});
}

static void tempered_exemption(struct gw_exemption *out, const struct gw_exemption_case *in,
                               const struct gw_exemption_limit *limit)
{
    WEIGH(out,
          {yes_if(in->treatment != GW_TREATMENT_UNSET, in->treatment == GW_TEMPERED), "the glass is fully tempered"},
          {in->monolithic, "the glass is monolithic"},
          {yes_if(in->risk != GW_RISK_UNSET, in->risk != GW_RISK_IV), "the risk category is I, II or III"},
          {yes_if(gw_given(in->height_above_walk), at_most(in->height_above_walk, limit->height_m)),
           "the glass is no higher above a walking surface than the limit"});
}

static enum gw_bool is_anchored(const struct gw_exemption_case *in, const struct gw_exemption_limit *limit)
{
    if (in->other_anchorage == GW_YES) return GW_YES;
    return yes_if(gw_given(in->bead), seismic_reaches(in->bead, limit->bead_m));
}

static void laminated_exemption(struct gw_exemption *out, const struct gw_exemption_case *in,
                                const struct gw_exemption_limit *limit)
{
    WEIGH(out, {not_of(in->monolithic), "the glass is laminated"},
          {in->single_thickness, "the laminated glass stands alone, not in an insulating unit"},
          {yes_if(in->treatment != GW_TREATMENT_UNSET, in->treatment != GW_TEMPERED),
           "the plies are annealed or heat-strengthened"},
          {yes_if(gw_given(in->interlayer), seismic_reaches(in->interlayer, limit->interlayer_m)),
           "the interlayer is at least as thick as the limit"},
          {in->captured, "the glass is captured mechanically in a glazing pocket"},
          {is_anchored(in, limit), "a wet-glazed perimeter bead of the least contact, or other approved anchorage"});
}

static enum gw_exempt first_of(const struct gw_exemptions *out, int from, int to)
{
    for (int i = from; i <= to; i++)
        if (out->of[i].applies == GW_YES) return (enum gw_exempt)i;
    return GW_EXEMPT_COUNT;
}

enum gw_status gw_seismic_exemptions(struct gw_exemptions *out, const struct gw_exemption_case *in,
                                     struct gw_engine *engine)
{
    const struct gw_exemption_limit *limit = GW_USE(engine, &engine->tables->exemption_limit[0]);
    *out = (struct gw_exemptions){.chapter = GW_EXEMPT_COUNT, .glass = GW_EXEMPT_COUNT};
    if (in->edition == GW_EDITION_UNSET)
        return gw_refuse(engine, GW_MISSING, "edition", "edition of ASCE 7 is not given");
    for (size_t i = 0; i < GW_N_SEISMIC_EXEMPTION; i++) {
        const struct gw_seismic_exemption *row = &engine->tables->seismic_exemption[i];
        struct gw_exemption *one = &out->of[row->exempt];
        one->title = row->title, one->conditions = row->conditions, one->clause = row->clause;
        gw_seismic_note_unseen(&out->notes, &row->row, NOTE_RECALLED);
    }
    chapter_exemptions(out, in);
    WEIGH(&out->of[GW_EXEMPT_CLEARANCE], {in->clearance_passes, "the clearance is enough by the edition's wording"});
    tempered_exemption(&out->of[GW_EXEMPT_TEMPERED], in, limit);
    laminated_exemption(&out->of[GW_EXEMPT_LAMINATED], in, limit);
    out->chapter = first_of(out, GW_EXEMPT_CATEGORY_A, GW_EXEMPT_CATEGORY_B);
    out->glass = first_of(out, GW_EXEMPT_CLEARANCE, GW_EXEMPT_LAMINATED);
    for (size_t i = 0; i < GW_N_SEISMIC_EXEMPTION; i++)
        if (out->of[engine->tables->seismic_exemption[i].exempt].applies == GW_YES)
            gw_used_add(&engine->used, &engine->tables->seismic_exemption[i].row);
    return GW_OK;
}
