/* Ratings that the project asks for by name. */
#include "judge/checks.h"

#include <string.h>

static void demand(struct gw_demand *out, struct gw_ask *ask, const struct gw_place *place)
{
    const struct gw_other_requirement *r = place->other;
    out->at_most = gw_given(r->at_most);
    gw_demand_term(out, ask, GW_RATIO, GW_NO_DIRECTION, out->at_most ? r->at_most : r->at_least);
    out->message = GW_SAY(ask->arena, "required by the project: {}", gw_of_text(out->at_most ? "at most" : "at least"));
}

static void test(struct gw_showing *out, struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const bool named = rating->name && strcmp(rating->name, d->name) == 0;
    (void)ask;
    out->applies = named && (rating->test == GW_TEST_OTHER || rating->test == GW_TEST_UNSET);
    out->covers = true;
    out->provided[0] = rating->value;
}

const struct gw_check gw_check_other = {.id = "other",
                                        .title = "Named rating",
                                        .clause = "project specification",
                                        .scope = GW_PER_NAME,
                                        .does = &(const struct gw_functions){.demand = demand, .test = test}};
