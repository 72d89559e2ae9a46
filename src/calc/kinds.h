/* The list of the kinds of 'galeward calc', in the order in which they are shown: one line each. The kind itself,
 * gw_kind_NAME, stands in its family's file. */
#ifndef GALEWARD_CALC_KINDS_H
#define GALEWARD_CALC_KINDS_H

#include "galeward/calc.h"

#define GW_CALC_KINDS(X)                                                                                               \
    X(wind)                                                                                                            \
    X(laminate)                                                                                                        \
    X(cavity)                                                                                                          \
    X(lite)                                                                                                            \
    X(plate)                                                                                                           \
    X(support)                                                                                                         \
    X(section)                                                                                                         \
    X(bending)                                                                                                         \
    X(member_strength)                                                                                                 \
    X(share)                                                                                                           \
    X(beam)                                                                                                            \
    X(member)                                                                                                          \
    X(shedding)                                                                                                        \
    X(mullion_line)                                                                                                    \
    X(corner)                                                                                                          \
    X(transom)                                                                                                         \
    X(screw)                                                                                                           \
    X(screw_pull)                                                                                                      \
    X(pressure_plate)                                                                                                  \
    X(connection)                                                                                                      \
    X(rail_dead_load)                                                                                                  \
    X(setting_chair)                                                                                                   \
    X(clamp)                                                                                                           \
    X(gasket)                                                                                                          \
    X(screw_length)                                                                                                    \
    X(relaxation)                                                                                                      \
    X(anchor)                                                                                                          \
    X(anchor_load)                                                                                                     \
    X(anchor_bolts)                                                                                                    \
    X(silicone)                                                                                                        \
    X(sealant_joint)                                                                                                   \
    X(seismic_force)                                                                                                   \
    X(story_drift)                                                                                                     \
    X(clearance)                                                                                                       \
    X(silicone_racking)                                                                                                \
    X(movement)                                                                                                        \
    X(debris)                                                                                                          \
    X(cycles)                                                                                                          \
    X(water)                                                                                                           \
    X(leakage)                                                                                                         \
    X(proof)                                                                                                           \
    X(sequence)                                                                                                        \
    X(weep)                                                                                                            \
    X(equalization)                                                                                                    \
    X(blast)                                                                                                           \
    X(response)

#define GW_DECLARE_KIND(name_) extern const struct gw_calc_kind gw_kind_##name_;
GW_CALC_KINDS(GW_DECLARE_KIND)
#undef GW_DECLARE_KIND

#endif
