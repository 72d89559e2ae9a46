/* The list of the checks, in the order in which they are told: one line each. The check itself, gw_check_NAME, stands
 * in check/NAME.c. */
#ifndef GALEWARD_JUDGE_CHECKS_H
#define GALEWARD_JUDGE_CHECKS_H

#include "judge/check.h"

#define GW_CHECKS(X)                                                                                                   \
    X(structural)                                                                                                      \
    X(air)                                                                                                             \
    X(water)                                                                                                           \
    X(other)                                                                                                           \
    X(glass)                                                                                                           \
    X(glass_deflection)                                                                                                \
    X(pocket)                                                                                                          \
    X(mullion)                                                                                                         \
    X(mullion_deflection)                                                                                              \
    X(past_anchor)                                                                                                     \
    X(splice)                                                                                                          \
    X(transom)                                                                                                         \
    X(transom_deflection)                                                                                              \
    X(transom_connection)                                                                                              \
    X(glass_seat)                                                                                                      \
    X(screw)                                                                                                           \
    X(plate)                                                                                                           \
    X(silicone)                                                                                                        \
    X(anchor)                                                                                                          \
    X(seismic_force)                                                                                                   \
    X(seismic_glass)                                                                                                   \
    X(seismic_silicone)                                                                                                \
    X(movement)                                                                                                        \
    X(debris)                                                                                                          \
    X(blast)

#define GW_DECLARE_CHECK(name_) extern const struct gw_check gw_check_##name_;
GW_CHECKS(GW_DECLARE_CHECK)
#undef GW_DECLARE_CHECK

#endif
