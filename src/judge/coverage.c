#include "judge/coverage.h"
#include "judge/glass_lite.h"

#include "base/fields.h"
#include "base/tolerance.h"
#include "judge/anchor_load.h"
#include "judge/leaning.h"
#include "judge/measured.h"
#include "judge/member.h"
#include "judge/specimen.h"

#include "tables_data.h"

#include <string.h>

/* Pressures -------------------------------------------------------------------------------------------------- */

struct gw_pressures gw_proved(struct gw_ask *ask, const struct gw_rating *rating)
{
    const struct gw_proof_loads *row = &ask->model->tables->proof_loads[GW_ROW_PROOF_LOADS_E330];
    const struct gw_both_ways *held = rating->held;
    struct gw_pressures p = {rating->positive, rating->negative};
    if (!held) return p;
    gw_used_add(&ask->engine.used, &row->row);
    if (gw_given(held->positive)) p.inward = held->positive / row->proof;
    if (gw_given(held->negative)) p.outward = held->negative / row->proof;
    return p;
}

/* A structural test of the fixed wall, unless the link belongs to lites of a component of its own. */
static bool begin(struct gw_showing *out, const struct gw_rating *rating, enum gw_component component)
{
    out->applies = rating->test == GW_TEST_STRUCTURAL && gw_same_component(rating, component);
    if (!out->applies) return false;
    if (!rating->tested) out->why = GW_PLAINLY(GW_NO_SPECIMEN);
    out->foreign = !rating->tested;
    return rating->tested != NULL;
}

static struct gw_message held_less(struct gw_ask *ask, bool inward, double held, double here)
{
    const char *way = inward ? "inward" : "outward";
    return GW_SAY(ask->arena, "it shows {} {}, here {} is asked", gw_of_capacity(GW_PRESSURE, held), gw_of_text(way),
                  gw_of_demand(GW_PRESSURE, here));
}

/* The direction in which it is the shorter. */
static void set_low(struct gw_showing *out, enum gw_dim dim, struct gw_pressures held, double inward, double outward)
{
    const bool presses = !(outward / held.outward > inward / held.inward);
    out->low.dim = dim;
    out->low.direction = presses ? GW_INWARD : GW_OUTWARD;
    out->low.asked = presses ? inward : outward;
    out->low.held = presses ? held.inward : held.outward;
}

/* What it held both ways, against what is asked; silence is no failure. True: it covers, and held less. */
static bool hold(struct gw_showing *out, enum gw_dim dim, struct gw_pressures held, double inward, double outward)
{
    const bool low = held.inward < inward * (1 - GW_HAIR) || held.outward < outward * (1 - GW_HAIR);
    const bool silent = !low && !(gw_given(held.inward) && gw_given(held.outward));
    if (silent && !gw_said(&out->why)) out->why = GW_PLAINLY("the rating gives no value for this direction");
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    out->met = low || silent ? GW_NO : GW_YES;
    if (low) set_low(out, dim, held, inward, outward);
    return out->covers && low;
}

/* The element's pressures; `turns`: it also bends the other way, past an anchor, where the other pressure tests it. */
static void finish(struct gw_showing *out, struct gw_ask *ask, const struct gw_rating *rating,
                   const struct gw_element *e, bool turns)
{
    const struct gw_pressures asked = gw_pressures_on(ask, e), proved = gw_proved(ask, rating);
    const double in = turns ? gw_greater(asked) : asked.inward, outward = turns ? gw_greater(asked) : asked.outward;
    const bool presses = proved.inward < in * (1 - GW_HAIR);
    gw_compare_number(ask, "pressure inward", GW_PRESSURE, proved.inward, in, proved.inward >= in * (1 - GW_HAIR));
    gw_compare_number(ask, "pressure outward", GW_PRESSURE, proved.outward, outward,
                      proved.outward >= outward * (1 - GW_HAIR));
    if (hold(out, GW_PRESSURE, proved, in, outward))
        out->why = held_less(ask, presses, presses ? proved.inward : proved.outward, presses ? in : outward);
    out->proof = ask->model->tables->proof_loads[GW_ROW_PROOF_LOADS_E330].proof *
                 (in >= outward ? proved.inward / in : proved.outward / outward);
}

/* Edges of lites ----------------------------------------------------------------------------------------------------
 */

/* Every reason of every lite at the edges that a screw, a plate or a bead holds; of like ones that of the largest. */
static struct gw_message short_beside(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    struct gw_leaning lites = {.n = 0};
    struct gw_message why = {0};
    const struct gw_element *of = NULL; /* whose reason is alone so far */
    if (e->kind == GW_LITE) return gw_specimen_short_of_lite(ask, rating, e);
    gw_lites_beside(&lites, ask, e);
    for (size_t i = 0; i < lites.n; i++) {
        const struct gw_element *lite = lites.items[i].on;
        const struct gw_message one = gw_specimen_short_of_lite(ask, rating, lite);
        const bool alike = of && gw_specimen_alike(ask, &one, &why);
        if (!gw_said(&one) || (alike && of->width * of->pane >= lite->width * lite->pane)) continue;
        if (alike) why = one;
        else gw_specimen_add(ask, &why, one);
        of = of && !alike ? NULL : lite;
    }
    return why;
}

void gw_test_edges(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                   const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    out->why = short_beside(ask, rating, e);
    if (e->kind == GW_SCREW)
        gw_specimen_add(ask, &out->why, gw_specimen_fastened(ask, rating->tested->fastening, e->height));
    finish(out, ask, rating, e, false);
}

/* Framing ---------------------------------------------------------------------------------------------------- */

bool gw_specimen_includes(const struct gw_rating *rating, enum gw_included what)
{
    for (size_t i = 0; rating->tested && i < rating->tested->includes.n; i++)
        if (rating->tested->includes.items[i] == (int)what) return true;
    return false;
}

/* A recorded deflection shows a lower pressure in proportion, with an insert undiminished, never a higher one. `share`:
 * what is limited over what was measured. */
static void show_deflection(struct gw_showing *out, struct gw_ask *ask, const struct gw_measured *measured,
                            double asked, double share, bool insert)
{
    out->met = GW_UNSAID;
    out->low.asked = out->proof = GW_ABSENT;
    if (measured)
        gw_compare_number(ask, "pressure at the deflection", GW_PRESSURE, measured->at, asked,
                          measured->at >= asked * (1 - GW_HAIR));
    if (!measured)
        out->why = GW_PLAINLY("the report records no deflection; ask the manufacturer for it, with its pressure");
    else if (measured->at < asked * (1 - GW_HAIR))
        out->why = GW_SAY(ask->arena, "its deflection was measured at {}, here {}",
                          gw_of_capacity(GW_PRESSURE, measured->at), gw_of_demand(GW_PRESSURE, asked));
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    if (!out->covers) return;
    out->provided[0] = share * (insert ? measured->value : measured->value * asked / measured->at);
}

/* A wind test shows no weight: what carries glass is calculated or stated besides. */
void gw_test_transom(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                     const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    const struct gw_tested_transom *t = rating->tested->transom;
    if (!t) {
        out->why =
            GW_PLAINLY("the report records no transom; ask the manufacturer for its span and the lites beside it");
    } else {
        const struct gw_dimension d[] = {{"transom span", t->span, e->span},
                                         {"height above the transom", e->above > 0 ? t->above : e->above, e->above},
                                         {"height below the transom", e->below > 0 ? t->below : e->below, e->below}};
        out->why = gw_specimen_short_of(ask, d, COUNT(d));
    }
    if (!gw_said(&out->why) && e->parapet && !gw_specimen_includes(rating, GW_INCLUDES_PARAPET))
        out->why = GW_PLAINLY("framing above the roof carries both skins of the parapet: the report names none");
    out->weight = e->above > 0; /* of the glass that rests on it */
    finish(out, ask, rating, e, false);
}

void gw_test_transom_deflection(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                                const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    gw_test_transom(out, ask, demand, rating);
    if (!out->applies || !rating->tested) return;
    /* a pressure too low for its strength: here its deflection counts */
    if (out->covers) out->why = (struct gw_message){0};
    /* the level at which the limit is asked */
    const double asked = fmax(fabs(e->inward_deflection), fabs(e->outward_deflection));
    if (out->covers) show_deflection(out, ask, rating->tested->transom->deflection, asked, 1, false);
    gw_transom_against(out, ask, rating->tested->transom, e, asked);
}

static struct gw_message not_hung(const struct gw_rating *rating, const struct gw_element *e)
{
    if (e->parapet && !gw_specimen_includes(rating, GW_INCLUDES_PARAPET))
        return GW_PLAINLY("framing above the roof carries both skins of the parapet: a wall test does not show it; ask "
                          "for a calculation");
    if (e->corner && !gw_specimen_includes(rating, GW_INCLUDES_CORNER))
        return GW_PLAINLY("a corner mullion takes both faces: a flat specimen does not show it");
    return (struct gw_message){0};
}

/* Reinforcement is a part: where the record says nothing it is as the system has it; one made stronger keeps the test.
 */
static struct gw_message without_reinforcement(struct gw_ask *ask, const struct gw_tested *t)
{
    const struct gw_member_spec *m = ask->system ? gw_part(ask->system, mullion) : NULL;
    const bool reinforced = t->reinforcement && strcmp(t->reinforcement, "none") != 0;
    if (!reinforced || !m || m->insert) return (struct gw_message){0};
    return GW_SAY(ask->arena, "tested with reinforcement ({}), which the system has not", gw_of_text(t->reinforcement));
}

/* One unit alone stands or hangs there, in the specimen as here. */
static struct gw_message half_not_hung(const struct gw_ask *ask, const struct gw_rating *rating,
                                       const struct gw_element *e, const char *why)
{
    const bool half = ask->system && gw_is_half(ask->system, e);
    return half && !gw_specimen_includes(rating, GW_INCLUDES_JAMB) ? GW_PLAINLY(why) : (struct gw_message){0};
}

/* m of the specimen's wall that loaded such a mullion: of a half that of half its end bay, which is at least as wide as
 * the narrowest lite recorded. */
static double loaded_width(const struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    if (!ask->system || !gw_is_half(ask->system, e)) return t->module;
    if (!gw_given(t->module)) return GW_ABSENT;
    double bay = fmin(t->module, t->lite_width); /* fmin takes what is given */
    for (size_t i = 0; i < t->lites.n; i++) bay = fmin(bay, t->lites.items[i].width);
    return bay / 2;
}

/* Another mullion than the specimen's, whatever its dimensions. */
static struct gw_message other_mullion(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_message unhung = not_hung(rating, e);
    if (gw_said(&unhung)) return unhung;
    const struct gw_message half =
        half_not_hung(ask, rating, e,
                      "the last half mullion of units stands here: a specimen's interior mullion does not show it "
                      "(tested: includes: jamb)");
    if (gw_said(&half)) return half;
    return without_reinforcement(ask, rating->tested);
}

static struct gw_message short_of_mullion(struct gw_ask *ask, const struct gw_rating *rating,
                                          const struct gw_element *e)
{
    const struct gw_tested *t = rating->tested;
    const struct gw_message other = other_mullion(ask, rating, e);
    const double overhang = gw_given(t->overhang) ? t->overhang : 0, width = loaded_width(ask, t, e);
    const char *across = gw_given(width) && width < t->module ? "half of the end bay" : "module";
    if (gw_said(&other)) return other;
    if (e->overhang) {
        const struct gw_dimension d[] = {{"overhang", overhang, e->span}, {across, width, e->width}};
        return gw_specimen_short_of(ask, d, COUNT(d));
    }
    const struct gw_dimension d[] = {{"span", t->span, e->span}, {across, width, e->width}};
    return gw_specimen_short_of(ask, d, COUNT(d));
}

/* A simple span bends more than the spans of any piece; as many equal spans bend alike, unless its splice let them bend
 * less. */
static bool bends_alike(struct gw_ask *ask, const struct gw_tested *t, const struct gw_element *e)
{
    const double equal = ask->model->tables->test_rule[GW_ROW_TEST_RULE_EQUAL_SPANS].value;
    if (t->spans <= 1 || e->overhang) return true;
    return t->spans == e->spans && gw_equal_spans(e, equal) && !gw_specimen_relieved(ask, t);
}

/* A simple span covers the spans of any piece. A continuous specimen covers as many equal spans of its own length or
 * less; else only what feels no more, by the same beam, than it did. */
static struct gw_message other_continuity(struct gw_ask *ask, const struct gw_rating *rating,
                                          const struct gw_element *e, bool deflection)
{
    const struct gw_tested *t = rating->tested;
    const struct gw_pressures proved = gw_proved(ask, rating);
    const double spans = t->spans > 1 ? t->spans : 1;
    if (bends_alike(ask, t, e)) {
        gw_compare_number(ask, "spans of the piece", GW_RATIO, spans, e->spans, true);
        return (struct gw_message){0};
    }
    const double least = fmin(proved.inward, proved.outward);
    const double at = deflection && rating->deflection ? rating->deflection->at : least;
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    const double here = deflection ? s->forces.deflection : s->forces.moment;
    const double there = deflection ? gw_specimen_deflection(ask, t, at * loaded_width(ask, t, e))
                                    : gw_specimen_moment(ask, t, at * loaded_width(ask, t, e));
    const bool feels_less = !gw_said(&s->fault) && here <= there * (1 + GW_HAIR);
    if (feels_less) gw_compare_words(ask, "continuity", "what it felt", "feels no more, by the same beam", true);
    if (feels_less) return (struct gw_message){0};
    gw_compare_number(ask, "spans of the piece", GW_RATIO, spans, e->spans, false);
    if (gw_given(t->splice_at) && gw_specimen_relieved(ask, t))
        return GW_SAY(ask->arena, "its splice {} past an anchor let its spans feel less than this piece",
                      gw_of_quantity(GW_LENGTH, t->splice_at));
    return GW_SAY(ask->arena, "tested over {} spans, here {}: a continuous specimen feels less than this piece",
                  gw_of_count(t->spans), gw_of_count(e->spans));
}

struct gw_message gw_specimen_short_of_mullion(struct gw_ask *ask, const struct gw_rating *rating,
                                               const struct gw_element *e)
{
    if (!rating->tested) return GW_PLAINLY(GW_NO_SPECIMEN);
    const struct gw_message why = short_of_mullion(ask, rating, e);
    return gw_said(&why) ? why : other_continuity(ask, rating, e, false);
}

void gw_test_mullion(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                     const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    out->why = gw_specimen_short_of_mullion(ask, rating, e);
    finish(out, ask, rating, e, e->spans > 1 || e->overhang);
}

/* A corner, a parapet and a half mullion are others; nor does a bare specimen speak of what an insert stiffens. */
static bool is_like(struct gw_ask *ask, const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_message unhung = not_hung(rating, e);
    const struct gw_tested *t = rating->tested;
    const bool half = ask->system && gw_is_half(ask->system, e);
    const bool insert = ask->system && gw_part(ask->system, mullion) && gw_part(ask->system, mullion)->insert;
    const bool bare = t->reinforcement && gw_says_none(t->reinforcement);
    return !gw_said(&unhung) && !half && !e->overhang && !(bare && insert) && fabs(t->span - e->span) < GW_HAIR_M;
}

/* What was measured as the piece here would bend it, and whether that speaks against it. */
static void mullion_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_rating *rating,
                            const struct gw_element *e, double asked)
{
    const struct gw_measured *measured = rating->deflection;
    const struct gw_tested *t = rating->tested;
    struct gw_beam_result *felt = gw_alloc_bare(ask->arena, sizeof *felt);
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    if (!measured || !gw_given(t->module) || !gw_given(t->span) || gw_said(&s->fault)) return;
    if (!gw_specimen_feels(felt, ask, t, measured->at * loaded_width(ask, t, e))) return;
    const struct gw_framing_bend bend = gw_framing_bend_again(ask, e, s->forces.deflection, s->forces.moment);
    const double unit = fabs(felt->deflection_max.value);
    const bool as_many = (t->spans <= 1 && e->spans <= 1) || (t->spans > 1 && bends_alike(ask, t, e));
    const bool scaled =
        measured->at < asked * (1 - GW_HAIR) || loaded_width(ask, t, e) < e->width - GW_HAIR_M || !as_many;
    out->as_stiff = measured->value * bend.response / unit;
    if (is_like(ask, rating, e)) gw_reading_against(out, ask, measured, &bend, unit, scaled);
}

/* What the edge of glass bends of it, where that is nearer to its limit. */
static double edge_share(struct gw_ask *ask, const struct gw_element *e)
{
    const struct gw_stretch *s = gw_stretch_of(ask, e);
    if (gw_said(&s->fault) || !(s->forces.deflection > 0)) return 1;
    return gw_framing_bend_again(ask, e, s->forces.deflection, s->forces.moment).response / s->forces.deflection;
}

/* What was measured of a longer or wider piece is more than this one bends: enough for a pass, and no figure of it. The
 * figure is that of a piece as stiff as the specimen. */
static void as_here(struct gw_showing *out, struct gw_ask *ask, double limit)
{
    const double most = out->provided[0];
    if (!out->covers || !(most <= limit) || !(out->as_stiff < most * (1 - GW_HAIR))) return;
    out->provided[0] = out->as_stiff;
    out->how = GW_SAY(ask->arena, "as stiff as its specimen, which bent {}", gw_of_quantity(GW_THICKNESS, most));
}

void gw_test_mullion_deflection(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                                const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    const double asked = gw_greater(gw_pressures_on(ask, e));
    const bool insert = ask->system && gw_part(ask->system, mullion) && gw_part(ask->system, mullion)->insert;
    out->why = short_of_mullion(ask, rating, e);
    if (!gw_said(&out->why)) out->why = other_continuity(ask, rating, e, true);
    if (!gw_said(&out->why) && e->overhang && rating->deflection)
        out->why =
            GW_PLAINLY("its deflection was measured between anchors, and nobody measured the end past the last one");
    out->covers = !gw_said(&out->why);
    out->foreign = !out->covers;
    /* a piece that only bends less under its pressure than another did under its own is no part of what that measured
     */
    if (out->covers)
        show_deflection(out, ask, rating->deflection, asked, edge_share(ask, e),
                        insert || !bends_alike(ask, rating->tested, e));
    mullion_against(out, ask, rating, e, asked);
    /* slip of an insert is no less at a lower pressure */
    if (insert && out->covers) out->as_stiff = fmax(out->as_stiff, out->provided[0]);
    else if (bends_alike(ask, rating->tested, e)) as_here(out, ask, gw_term_of(demand, 0)->value);
}

/* A splice in this stretch that no anchor holds; a wall that names none has its joints at anchors. */
static bool splice_in_span(const struct gw_element *e)
{
    const struct gw_wall_lines *l = &e->grid->lines;
    bool inside = false;
    for (size_t i = 0; i < l->n_splices; i++) {
        bool held = l->splices[i] < e->bottom - GW_HAIR_M || l->splices[i] > e->top + GW_HAIR_M;
        for (size_t k = 0; k < l->n_anchors; k++) held = held || fabs(l->splices[i] - l->anchors[k]) < GW_HAIR_M;
        inside = inside || !held;
    }
    return inside;
}

/* Named, it is shown as far as its specimen could have held one: one span folds at a splice inside it. */
static struct gw_message splice_not_hung(const struct gw_rating *rating, const struct gw_element *e)
{
    const struct gw_tested *t = rating->tested;
    if (!gw_specimen_includes(rating, GW_INCLUDES_SPLICE))
        return GW_PLAINLY("the report names no splice in its specimen");
    if (t->spans <= 1 && !gw_given(t->splice_shear) && splice_in_span(e))
        return GW_PLAINLY("a specimen of one span has no splice inside it, which would let it fold: one at its end "
                          "shows none between anchors; ask the manufacturer for its spans and where its splice lay "
                          "(tested: spans, splice_at), or what that carried (splice_shear)");
    return (struct gw_message){0};
}

void gw_test_splice(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                    const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    const struct gw_pressures proved = gw_proved(ask, rating);
    const struct gw_tested *t = rating->tested;
    const double full = gw_splice_carried(ask, t, fmin(proved.inward, proved.outward)),
                 carried =
                     ask->system && gw_is_half(ask->system, e) ? full * loaded_width(ask, t, e) / t->module : full,
                 asked = gw_term_of(demand, 0)->value;
    /* where it lay tells its force, whatever the spans here are */
    const bool placed = gw_given(t->splice_at) && gw_given(carried);
    out->why = placed ? other_mullion(ask, rating, e) : short_of_mullion(ask, rating, e);
    if (!gw_said(&out->why)) out->why = splice_not_hung(rating, e);
    if (gw_given(carried) && !gw_said(&out->why) && carried < asked * (1 - GW_HAIR))
        out->why = GW_SAY(ask->arena, "its splice carried {}, here {}", gw_of_capacity(GW_FORCE, carried),
                          gw_of_demand(GW_FORCE, asked));
    finish(out, ask, rating, e, e->spans > 1 || e->overhang);
    if (gw_given(carried)) return;
    out->unmeasured = GW_PLAINLY("a splice hung in its specimen, and what it carried is not recorded: ask the "
                                 "manufacturer (tested: splice_shear, or splice_at)");
    out->confirm = t->spans > 1
                       ? GW_PLAINLY("to confirm: where in its specimen did the splice lie (tested: splice_at), "
                                    "or what shear did it carry (splice_shear)?")
                       : GW_PLAINLY("to confirm: what shear did the splice of its specimen, at the end of a "
                                    "span, carry (tested: splice_shear)?");
}

static struct gw_message anchors_held_less(struct gw_ask *ask, struct gw_pressures held, double in, double outward)
{
    const bool presses = held.inward < in * (1 - GW_HAIR);
    return GW_SAY(
        ask->arena, "the anchors of its specimen show {}, here {} of wind are asked, and no wind test shows a weight",
        gw_of_capacity(GW_FORCE, presses ? held.inward : held.outward), gw_of_demand(GW_FORCE, presses ? in : outward));
}

/* Less wall hung on them than hangs here: their force tells of a smaller specimen, not of a pressure too low. */
static bool bears_less(struct gw_ask *ask, const struct gw_element *e, double area, double in, double outward)
{
    const struct gw_pressures here = gw_pressures_on(ask, e);
    return here.inward * area < in * (1 - GW_HAIR) || here.outward * area < outward * (1 - GW_HAIR);
}

/* m of wall on the anchor that bore most: between two spans a whole one; else half of one, with what ran on past it. */
static double height_on_anchor(const struct gw_tested *t)
{
    const double past = gw_given(t->overhang) ? t->overhang : 0, whole = t->span + past;
    return t->spans > 1 ? t->span : whole * whole / (2 * t->span);
}

/* A laboratory holds the specimen by anchors of its own unless the report says otherwise. What its own anchors held is
 * half a simple span, between two spans a whole one; the weight that hangs on an anchor no wind test shows. */
void gw_test_anchor(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                    const struct gw_rating *rating)
{
    const struct gw_element *e = demand->element;
    if (!begin(out, rating, GW_FIXED)) return;
    const struct gw_tested *t = rating->tested;
    const struct gw_pressures proved = gw_proved(ask, rating);
    const struct gw_message half =
        half_not_hung(ask, rating, e,
                      "one unit alone hangs on it: a specimen's anchor that two units share does not show it (tested: "
                      "includes: jamb)");
    const double area = loaded_width(ask, t, e) * height_on_anchor(t);
    if (!gw_specimen_includes(rating, GW_INCLUDES_ANCHORS))
        out->why = GW_PLAINLY("a laboratory holds the specimen by anchors of its own");
    else if (e->corner && !gw_specimen_includes(rating, GW_INCLUDES_CORNER))
        out->why = GW_PLAINLY("an anchor at a corner takes both faces: a flat specimen does not show it");
    else if (gw_said(&half)) out->why = half;
    else if (!gw_given(area))
        out->why = GW_PLAINLY("the report records no module and span; ask the manufacturer for them");
    const struct gw_mullion_bearing *bearing = gw_anchor_bearing(e);
    /* a reaction that the system itself states is not outweighed: its factor against failure is not known */
    const struct gw_anchor_spec *stated = ask->system ? gw_anchor_of(ask->system, e) : NULL;
    const bool says = stated && gw_given(stated->inward) && gw_given(stated->outward);
    out->weight = says || bearing->piece > 0 || bearing->borne != GW_BORNE_ONCE;
    const struct gw_pressures held = {proved.inward * area, proved.outward * area};
    const double in = gw_term_of(demand, 0)->value, outward = gw_term_of(demand, 1)->value;
    const bool own = gw_specimen_includes(rating, GW_INCLUDES_ANCHORS);
    gw_compare_words(ask, "anchors", own ? "hung in the specimen" : "not named", "the system's", own);
    gw_compare_number(ask, "wind on it inward", GW_FORCE, held.inward, in, held.inward >= in * (1 - GW_HAIR));
    gw_compare_number(ask, "wind on it outward", GW_FORCE, held.outward, outward,
                      held.outward >= outward * (1 - GW_HAIR));
    if (!hold(out, GW_FORCE, held, in, outward)) return;
    out->why = anchors_held_less(ask, held, in, outward);
    out->foreign = bears_less(ask, e, area, in, outward);
    out->covers = !out->foreign;
}
