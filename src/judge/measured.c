#include "judge/measured.h"

#include "judge/transom_load.h"

void gw_reading_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_measured *measured,
                        const struct gw_framing_bend *bend, double felt, bool scaled)
{
    const double here = measured->value * bend->response / felt;
    if (!(here > bend->limit * (1 + GW_HAIR))) return;
    const struct gw_message where = gw_framing_bend_message(ask, bend);
    out->adverse = out->covers = true;
    out->presumed = scaled;
    out->foreign = false;
    out->met = GW_UNSAID;
    out->proof = GW_ABSENT;
    out->provided[0] = here;
    out->why =
        GW_SAY(ask->arena, "its {} measured at {} is {} here ({}), above {}",
               gw_of_quantity(GW_THICKNESS, measured->value), gw_of_quantity(GW_PRESSURE, measured->at),
               gw_of_quantity(GW_THICKNESS, here), gw_of_message(&where), gw_of_quantity(GW_THICKNESS, bend->limit));
}

/* With E I of 1. */
static double transom_feels(const struct gw_ask *ask, const struct gw_element *e, double pressure)
{
    const struct gw_shed_case shed = gw_shed_to(e, pressure);
    struct gw_engine untold = ask->engine;
    untold.trace = NULL;
    return gw_shed_deflection(&shed, 1, 1, &untold);
}

void gw_transom_against(struct gw_showing *out, struct gw_ask *ask, const struct gw_tested_transom *tested,
                        const struct gw_element *e, double asked)
{
    if (!tested || !tested->deflection || !(fabs(tested->span - e->span) < GW_HAIR_M)) return;
    struct gw_element specimen = *e; /* glazed alike */
    if (gw_given(tested->above) || e->above > 0) specimen.above = tested->above;
    if (gw_given(tested->below) || e->below > 0) specimen.below = tested->below;
    if (!gw_given(specimen.above) || !gw_given(specimen.below)) return;
    const struct gw_framing_bend bend = gw_framing_bend_again(ask, e, transom_feels(ask, e, asked), GW_ABSENT);
    const double felt = transom_feels(ask, &specimen, tested->deflection->at);
    const bool scaled = tested->deflection->at < asked * (1 - GW_HAIR) || specimen.above < e->above - GW_HAIR_M ||
                        specimen.below < e->below - GW_HAIR_M;
    if (felt > 0) gw_reading_against(out, ask, tested->deflection, &bend, felt, scaled);
}
