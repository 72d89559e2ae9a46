/* What an impact rating shows of what is asked. */
#include "debris_internal.h"

static void add(struct gw_impact_comparison *out, enum gw_shown shown, const char *text)
{
    if (shown > out->shown) out->shown = shown;
    if (out->n < GW_IMPACT_REASONS) out->reasons[out->n++] = (struct gw_reason){shown, text};
}

static bool is_lumber(enum gw_missile missile) { return missile >= GW_MISSILE_C && missile <= GW_MISSILE_E; }

bool gw_missile_covers(enum gw_missile tested, enum gw_missile asked)
{
    if (asked == GW_MISSILE_A) return tested == GW_MISSILE_A;
    return is_lumber(asked) && is_lumber(tested) && tested >= asked;
}

/* Ball against lumber: the small missile breaks by number and edge, so one does not stand for the other by itself. */
static void weigh_missile(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                          const struct gw_impact_demand *demand)
{
    if (rating->missile == GW_MISSILE_UNSET) {
        add(out, GW_UNSHOWN, "the rating names no missile; ask the manufacturer for it");
    } else if (demand->missile == GW_MISSILE_A && is_lumber(rating->missile)) {
        if (rating->small_missile_shown == GW_YES)
            add(out, GW_SHOWN_PROVIDED, "the report or the code lets the large missile stand for the small one");
        else {
            out->other_missile = true;
            add(out, GW_UNSHOWN,
                "a large missile does not by itself show the small one; ask whether the report or "
                "the local code says so");
        }
    } else if (rating->missile == GW_MISSILE_B) {
        out->other_missile = true;
        add(out, GW_UNSHOWN, "missile B is for skylights, not for walls");
    } else if (!gw_missile_covers(rating->missile, demand->missile)) {
        out->other_missile = true;
        add(out, GW_BELOW, "the missile tested is less than the one asked for");
    }
}

/* Only the highest zone is tested otherwise: twice on each specimen. A lower label elsewhere is the same test. */
static void weigh_zone(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                       const struct gw_impact_demand *demand, struct gw_engine *engine)
{
    const struct gw_debris_impacts *twice = &engine->tables->debris_impacts[GW_ROW_DEBRIS_IMPACTS_ZONE_4];
    if (demand->high_velocity_zone == GW_YES) {
        if (rating->high_velocity_zone != GW_YES)
            add(out, GW_UNSHOWN,
                "the high-velocity hurricane zone has tests of its own (TAS 201, 202, 203); ask for "
                "the product approval");
        return;
    }
    if (demand->wind_zone == GW_NO_ZONE || rating->high_velocity_zone == GW_YES) return;
    bool needs_two = demand->wind_zone >= (int)twice->from_zone && is_lumber(demand->missile);
    if (needs_two) gw_used_add(&engine->used, &twice->row);
    if (rating->wind_zone == GW_NO_ZONE) {
        add(out, needs_two ? GW_UNSHOWN : GW_SHOWN_PROVIDED,
            needs_two ? "the rating names no wind zone: zone 4 is struck twice on each specimen; ask the manufacturer"
                      : "the rating names no wind zone");
    } else if (rating->wind_zone < demand->wind_zone) {
        add(out, needs_two ? GW_UNSHOWN : GW_SHOWN_PROVIDED,
            needs_two ? "tested for a lower wind zone: zone 4 is struck twice on each specimen"
                      : "labeled for a lower wind zone; the missile and the impacts are the same");
    }
}

static void weigh_pressure(struct gw_impact_comparison *out, struct gw_asd rated, struct gw_asd asked,
                           const char *absent, const char *low)
{
    if (!gw_given(rated.pa)) add(out, GW_UNSHOWN, absent);
    else if (!debris_within(asked.pa, rated.pa)) add(out, GW_BELOW, low);
}

static void weigh_cycles(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                         struct gw_engine *engine)
{
    if (rating->cycles == GW_NO_ZONE) return; /* an impact rating implies its schedule */
    if (rating->cycles < gw_debris_cycles_total(GW_CYCLES_IMPACT, engine))
        add(out, GW_UNSHOWN,
            "the specimen was cycled less than after an impact test: cladding's fatigue schedule is "
            "not the impact schedule");
}

/* A test reaches equal and smaller lites, unrotated, held in no less bite. */
static void weigh_size(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                       const struct gw_impact_demand *demand)
{
    if (!gw_given(rating->width) || !gw_given(rating->height))
        add(out, GW_UNSHOWN, "the tested lite's size is not given; ask the manufacturer for it");
    else if (!debris_within(demand->width, rating->width) || !debris_within(demand->height, rating->height))
        add(out, GW_UNSHOWN, "the lite is larger than the one tested, each side as it stands");
    if (!gw_given(rating->bite))
        add(out, GW_UNSHOWN, "the tested glass bite is not given; ask the manufacturer for it");
    else if (!gw_given(demand->bite)) add(out, GW_UNSHOWN, "the project's glass bite is not given, nor the system's");
    else if (!debris_reaches(demand->bite, rating->bite))
        add(out, GW_UNSHOWN, "the glass bite is less than the one tested");
}

void gw_impact_compare(struct gw_impact_comparison *out, const struct gw_impact_rating *rating,
                       const struct gw_impact_demand *demand, struct gw_engine *engine)
{
    *out = (struct gw_impact_comparison){.shown = GW_SHOWN};
    weigh_missile(out, rating, demand);
    weigh_zone(out, rating, demand, engine);
    weigh_pressure(out, rating->positive, demand->positive, "the rating gives no inward pressure",
                   "the inward pressure cycled is less than the design pressure");
    weigh_pressure(out, rating->negative, demand->negative, "the rating gives no outward pressure",
                   "the outward pressure cycled is less than the design pressure");
    weigh_cycles(out, rating, engine);
    weigh_size(out, rating, demand);
    if (out->shown == GW_SHOWN)
        add(out, GW_SHOWN_PROVIDED,
            "provided that interlayer, make-up, glazing method, fasteners and anchors are as tested");
}
