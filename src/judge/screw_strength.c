/* What the torque of a plate's screw pulls, against its thread and the screw itself. */
#include "judge/screw_line.h"

#include "judge/plated.h"

#include "base/tolerance.h"

static double over(double capacity, double demand) { return demand > 0 ? capacity / demand : (double)INFINITY; }

/* N, of the screw at either end: between its tension where the joint is stiff, and both where it is soft. fmax takes
 * what is given. */
static double at_most(const struct gw_pull *p)
{
    return p->stopped ? fmax(p->most, p->suction) : p->most + fmax(p->suction, 0);
}
static double at_least(const struct gw_pull *p) { return fmax(p->least, p->suction); }

static struct gw_message pulled(struct gw_ask *ask, const struct gw_pull *p)
{
    const struct gw_value least = gw_of_quantity(GW_FORCE, at_least(p)), most = gw_of_quantity(GW_FORCE, at_most(p));
    const char *suction = p->stopped || !(p->suction > 0) ? NULL : ", with suction,";
    return GW_SAY(ask->arena, "{} {}{} pulls the screw with {} to {}",
                  gw_of_text(p->was_read ? "its torque of" : "the least torque that is asked,"),
                  gw_of_quantity(GW_MOMENT, p->torque),
                  gw_of_text(suction       ? suction
                             : p->was_read ? ""
                                           : ","),
                  least, most);
}

/* Whether less thread holds it than the system's screws have. */
static bool is_shorter(const struct gw_system *system, const struct gw_system *as_read)
{
    return as_read->screw != system->screw;
}

static void look_at_thread(struct gw_left *out, struct gw_ask *ask, const struct gw_pull *p,
                           const struct gw_system *system, const struct gw_system *as_read)
{
    const double holds = gw_thread_strips_at(ask, as_read);
    const bool shorter = is_shorter(system, as_read);
    const struct gw_message pull = pulled(ask, p);
    if (!gw_given(holds)) {
        if (p->tight)
            gw_left_unknown(out, GW_PLAINLY("at what tension does the thread strip? Ask the manufacturer for a test of "
                                            "its pull-out (screw: tested_pullout)"));
        return;
    }
    if (!(holds > 0)) {
        gw_left_by(out, "thread", 0, 0, 1, GW_SAY(ask->arena, "{}, and no thread holds it", gw_of_message(&pull)));
        return;
    }
    if (!p->tight && !shorter && at_most(p) <= holds * (1 + GW_HAIR)) return;
    gw_left_by(out, "thread", over(holds, at_least(p)), over(holds, at_most(p)), 1,
               GW_SAY(ask->arena, "{}, where {} strips at {}{}", gw_of_message(&pull),
                      gw_of_text(shorter ? "as little thread" : "its thread"), gw_of_quantity(GW_FORCE, holds),
                      gw_of_text(shorter && gw_given(system->screw->tested_pullout)
                                     ? ", in proportion to what was tested (how much thread was engaged there? screw: "
                                       "engagement)"
                                     : "")));
}

static void look_at_screw(struct gw_left *out, struct gw_ask *ask, const struct gw_pull *p,
                          const struct gw_system *system)
{
    const struct gw_message pull = pulled(ask, p);
    const double area = gw_screw_tension_area(ask, system->screw);
    const double takes = system->screw->ultimate * area; /* absent: not known */
    if (!gw_given(takes)) {
        if (p->tight)
            gw_left_unknown(out, GW_PLAINLY("at what tension does the screw break? Ask the manufacturer (screw: "
                                            "threads_per_inch, ultimate)"));
        return;
    }
    if (!p->tight && at_most(p) <= takes * (1 + GW_HAIR)) return;
    gw_left_by(out, "breaking", over(takes, at_least(p)), over(takes, at_most(p)), 1,
               GW_SAY(ask->arena, "{}, where it breaks at {}", gw_of_message(&pull), gw_of_quantity(GW_FORCE, takes)));
}

void gw_left_strengths(struct gw_left *out, struct gw_ask *ask, const struct gw_pull *pull,
                       const struct gw_system *system, const struct gw_system *as_read)
{
    look_at_thread(out, ask, pull, system, as_read);
    look_at_screw(out, ask, pull, system);
}

double gw_screw_tension_area(struct gw_ask *ask, const struct gw_screw_spec *s)
{
    static const double INCH = 0.0254; /* m, exact */
    const struct gw_screw screw = {.thread = s->thread,
                                   .diameter = s->diameter,
                                   .pitch = INCH / s->threads_per_inch,
                                   .stripping = GW_ABSENT,
                                   .minor = GW_ABSENT};
    struct gw_screw_areas areas;
    return gw_screw_areas(&areas, &screw, &ask->engine) == GW_OK ? areas.tension : GW_ABSENT;
}
