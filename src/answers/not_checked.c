/* What this program does not compute, and whom to ask. */
#include "galeward/answers.h"

#include <string.h>

/* From 7-22 on, and only for the two upper categories. */
static bool tornado_applies(const struct gw_project *p)
{
    return p->codes->wind == GW_ASCE7_22 && p->project->risk_category >= GW_RISK_III;
}

void gw_list_not_checked(struct gw_answer *out, struct gw_ask *ask)
{
    static const struct gw_not_checked tornado = {
        "tornado loads: this project, by ASCE 7-22 and in Risk Category III or IV, is one that chapter 32 applies to; "
        "it may govern over every wind pressure here, and is not computed",
        "the structural engineer", true};
    static const struct gw_not_checked rows[] = {
        {"tornado loads (ASCE 7-22 chapter 32; may govern for Risk Category III and IV)", "the structural engineer",
         false},
        {"joints round walls and openings", "the architect", false},
        {"snow on sloped lites beyond given loads", "the structural engineer", false},
        {"guards and loads of people on the glass", "the architect", false},
        {"safety glazing", "the architect", false},
        {"thermal stress of glass", "the glass supplier", false},
        {"sunshades, fins and maintenance loads", "the architect", false},
        {"perimeter fire containment", "the architect", false},
        {"condensation", "the specification writer", false},
        {"acoustics", "the specification writer", false},
    };
    out->not_checked.n = sizeof rows / sizeof *rows;
    out->not_checked.items = gw_alloc(ask->arena, out->not_checked.n, sizeof *rows);
    memcpy(out->not_checked.items, rows, sizeof rows);
    if (tornado_applies(&ask->model->project)) out->not_checked.items[0] = tornado;
}
