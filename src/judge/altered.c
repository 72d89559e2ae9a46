/* Which parts of a system a test was of, and whether an option made one of them another. */
#include "judge/checks.h"
#include "judge/judge_internal.h"
#include "judge/member.h"

/* The parts that a test of this check was of. */
static uint32_t tested_parts(const struct gw_demand *d, const struct gw_system *system)
{
#define BIT(part) ((uint32_t)1 << GW_PART_##part)
    const struct gw_element *e = d->element;
    const bool half = e && gw_is_half(system, e);
    const uint32_t mullion = !e          ? 0
                             : e->corner ? BIT(corner_mullion)
                             : half      ? BIT(jamb_mullion)
                                         : BIT(mullion),
                   anchor = !e          ? 0
                            : e->corner ? BIT(corner_anchor)
                            : half      ? BIT(jamb_anchor)
                                        : BIT(anchor),
                   edges = BIT(screw) | BIT(pressure_plate) | BIT(silicone);
    const struct {
        const struct gw_check *check;
        uint32_t parts;
    } of[] = {{&gw_check_mullion, mullion},
              {&gw_check_mullion_deflection, mullion},
              {&gw_check_transom, BIT(transom)},
              {&gw_check_transom_deflection, BIT(transom)},
              {&gw_check_transom_connection, BIT(transom_connection)},
              {&gw_check_splice, BIT(splice)},
              {&gw_check_anchor, anchor},
              {&gw_check_screw, edges},
              {&gw_check_plate, edges},
              {&gw_check_structural, e && e->kind == GW_MULLION ? mullion : edges},
              {&gw_check_debris, edges},
              {&gw_check_blast, edges},
              {&gw_check_seismic_glass, edges | BIT(drift)},
              {&gw_check_seismic_silicone, edges | BIT(drift)}};
#undef BIT
    for (size_t i = 0; i < sizeof of / sizeof *of; i++)
        if (of[i].check == d->check) return of[i].parts;
    return 0;
}

/* An option made the part another than the one that was tested: that test is of something else. */
bool gw_is_altered(struct gw_ask *ask, const struct gw_demand *d, const struct gw_rating *rating)
{
    const uint32_t parts = tested_parts(d, ask->system);
    if (ask->system->reads) ask->system->reads->parts |= parts;
    return ((ask->system->altered | rating->altered) & parts) != 0;
}
