/* Water and air hold for the kinds of joint in the specimen, and after its structural load. */
#include "judge/coverage.h"
#include "judge/outcome.h"
#include "judge/specimen.h"

/* Where units stand one upon the other, and mullions of sticks: at splices; without any, at every anchor but the first
 * and the last, as is assumed. A window wall's stand between slabs, and meet at the splices that are named. */
static bool has_pieces(const struct gw_wall_lines *l) { return l->n_splices || l->n_anchors > 2; }

/* A wall's joint of a kind; openings of a schedule are framed in one piece. */
struct joint {
    enum gw_included kind;
    const char *word, *said;
    bool here;
};
enum { JOINTS = 3 };

static void find_joints(struct joint *out, const struct gw_ask *ask, const struct gw_wall_grid *g)
{
    const enum gw_system_kind kind = ask->system ? ask->system->system->kind : GW_SYSTEM_UNSET;
    const bool units = kind == GW_UNITIZED, slab = kind == GW_WINDOW_WALL;
    out[0] = (struct joint){GW_INCLUDES_STACK_JOINT, "stack_joint", "stack joints between units",
                            g && units && has_pieces(&g->lines)};
    const bool named = g && g->lines.n_splices > 0;
    out[1] = (struct joint){GW_INCLUDES_SPLICE, "splice",
                            named ? "splices of mullions" : "splices of mullions (at each anchor, none being named)",
                            g && !units && (slab ? named : has_pieces(&g->lines))};
    out[2] = (struct joint){GW_INCLUDES_CORNER, "corner", "an outside corner",
                            g && (g->left_corner < GW_HAIR_M || g->right_corner < GW_HAIR_M)};
}

static struct gw_message not_in_specimen(struct gw_ask *ask, const struct gw_rating *rating, const struct joint *joints)
{
    for (size_t i = 0; i < JOINTS; i++)
        if (joints[i].here && !gw_specimen_includes(rating, joints[i].kind))
            return GW_SAY(ask->arena,
                          "the wall has {}, which the specimen is recorded without; ask for a test with "
                          "them (tested: includes)",
                          gw_of_text(joints[i].said));
    return (struct gw_message){0};
}

static struct gw_message ask_what_was_tested(struct gw_ask *ask, const struct gw_rating *rating,
                                             const struct joint *joints)
{
    const bool recorded = rating->tested && rating->tested->includes.n;
    const bool load = rating->after_structural == GW_UNSAID;
    struct gw_text text;
    gw_text_init(&text, ask->arena);
    for (size_t i = 0; i < JOINTS && !recorded; i++)
        if (joints[i].here) gw_text_addf(&text, "%s%s", text.length ? ", " : "", joints[i].word);
    const bool hung = text.length > 0;
    if (!load && !hung) return (struct gw_message){0};
    const struct gw_message specimen =
        GW_SAY(ask->arena, "which joints had the specimen (tested: includes: {})?", gw_of_text(text.at));
    const struct gw_message after = GW_PLAINLY("was it measured after the structural load (after_structural)?");
    if (!load || !hung) return load ? after : specimen;
    return gw_say_both(ask->arena, &specimen, " ", &after);
}

bool gw_is_short(const struct gw_showing *showing, const struct gw_demand *demand)
{
    const double use = gw_use_of(gw_term_of(demand, 0)->value, showing->provided[0], demand->at_most);
    return gw_verdict_of(use, GW_UNSAID) == GW_FAIL;
}

static void ask_about_record(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                             const struct gw_message *question)
{
    out->covers = !demand->by_report || gw_is_short(out, demand);
    out->why = demand->by_report ? GW_SAY(ask->arena, "the project asks for {} by test, and the record leaves open: {}",
                                          gw_of_text(demand->check->id), gw_of_message(question))
                                 : GW_SAY(ask->arena, "to confirm: {}", gw_of_message(question));
}

void gw_ask_joints(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *demand,
                   const struct gw_rating *rating)
{
    struct joint joints[JOINTS];
    const bool fixed = gw_same_component(rating, GW_FIXED); /* joints of the wall are none of a vent's */
    const struct gw_wall_grid *wall = gw_takeoff_wall(ask->takeoff, demand->where);
    find_joints(joints, ask, fixed ? wall : NULL);
    const bool recorded = rating->tested && rating->tested->includes.n;
    struct gw_message why = {0};
    if (rating->after_structural == GW_NO)
        why = GW_PLAINLY("measured before the structural load: ask for the result after it");
    else if (recorded) why = not_in_specimen(ask, rating, joints);
    if (!gw_said(&why)) why = gw_specimen_pressed_otherwise(ask, rating, wall);
    out->covers = !gw_said(&why);
    out->why = why;
    if (!out->covers) return;
    const struct gw_message question = ask_what_was_tested(ask, rating, joints);
    if (gw_said(&question)) ask_about_record(out, ask, demand, &question);
}
