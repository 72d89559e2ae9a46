/* What a framing member takes whatever loads it, and how stiff it is: from its tube or from stated properties, with the
 * insert that bends with it. Allowable-stress design. Never asks for a load: `capacity` of every check on members.
 *
 * A tube is given by its nominal walls and taken by its design walls (bending.h), about x and, on its side, about y.
 * Stated properties are taken as they are: no strength about y, no shear. An insert shares by stiffness and the part
 * that is used up first limits both (share.h); it counts about x only, and not in shear. Where a part of the strength
 * is not known, it is absent and nothing stands in for it: a tube whose bending about y is outside the method keeps
 * what it takes about x. SI, pure. */
#ifndef GALEWARD_MEMBER_STRENGTH_H
#define GALEWARD_MEMBER_STRENGTH_H

#include "galeward/bending.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_member_insert {
    bool steel;                     /* carbon steel; else aluminum */
    double inertia, modulus, yield; /* m4, m3, about its own axis; Pa */
};
struct gw_member_section {
    enum gw_metal metal;
    const struct gw_tube *tube;                             /* NULL: stated */
    double unbraced_length;                                 /* m; tubes */
    double allowable_moment, inertia_x, inertia_y, torsion; /* Nm, m4; stated; absent: not known */
    double allowable_torque;                                /* Nm, the same */
    const struct gw_member_insert *insert;                  /* NULL: none */
};

struct gw_member_strength {
    double moment, moment_y; /* Nm, allowable about x, of all parts together; about y */
    double shear, shear_y;   /* N, allowable, along the webs of a tube; across */
    double torque;           /* Nm, allowable twisting moment; a tube's by Bredt, its weaker wall all round */
    double stiffness;        /* N m2, E I about x of all parts */
    double elastic_modulus, shear_modulus; /* Pa, of the member itself; shear: of aluminum */
    double inertia_y, torsion;             /* m4, of the member itself */
    const char *governing;                 /* limit state of `moment`; "" */
    struct gw_fault about_y;               /* why a tube's strength about y is not known; else no format */
};
/* Refuses what bending.h and section.h refuse about x, and a metal that is not given. Where the bending of a tube is
 * outside the method its stiffness, but for stainless steel, which yields gradually, is found all the same. */
enum gw_status gw_member_strength(struct gw_member_strength *out, const struct gw_member_section *in,
                                  struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
