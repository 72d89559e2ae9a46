/* How parts that bend together share a moment: steel inserts in aluminum, the halves of a split mullion, built-up
 * members.
 *
 * Side by side (the default): equal deflection, each part bends about its own axis, so their stiffnesses add and no
 * shear passes between them. With a gap the first part carries all until it has deflected by the gap. Composite: joined
 * so that plane sections stay plane, one neutral axis; the joint must carry the shear flow. SI, pure. */
#ifndef GALEWARD_SHARE_H
#define GALEWARD_SHARE_H

#include "galeward/engine.h"

#ifdef __cplusplus
extern "C" {
#endif

enum { GW_SHARE_PARTS = 8, GW_SHARE_NOTES = 4 };

struct gw_share_part {
    double elastic_modulus;  /* Pa */
    double inertia, modulus; /* m4, m3, about its own axis */
    double area, centroid;   /* m2, m from any common line across the bending; composite only */
    double load;             /* N/m, what reaches this part; absent: no interlock force */
};

struct gw_share {
    double moment; /* Nm, magnitude */
    struct gw_share_part parts[GW_SHARE_PARTS];
    unsigned n_parts;
    bool composite;
    double shear;   /* N, composite: for the shear flow */
    double gap;     /* m, between the first part and the others, on the side to which it deflects */
    double span;    /* m, with gap: simple span, uniform load, contact at midspan */
    double per_gap; /* N, with gap, instead of span: moment in the first part per deflection at the contact */
};

struct gw_share_result {
    double shares[GW_SHARE_PARTS];    /* of the moment; composite: with the axial forces' couple; they add up to 1 */
    double moments[GW_SHARE_PARTS];   /* Nm, about each part's own axis */
    double axial[GW_SHARE_PARTS];     /* N, composite: tension positive, the moment compressing greater `centroid` */
    double stresses[GW_SHARE_PARTS];  /* Pa, largest in each part */
    double flow[GW_SHARE_PARTS];      /* N/m, composite with shear: between each part and the rest */
    double interlock[GW_SHARE_PARTS]; /* N/m, load less share of all load: what the part hands to the others */
    double equivalent_inertia;        /* m4, in the first part's modulus; after the gap has closed */
    double contact_moment;            /* Nm, at which the gap closes */
    double neutral_axis;              /* m, composite: from the common line */
    const char *notes[GW_SHARE_NOTES];
    unsigned n_notes;
};

/* What parts side by side take together, without a gap: moments go by stiffness, so the part that is used up first
 * limits the whole. `allowable`: of the part alone, Nm; one that is absent leaves the whole absent. */
struct gw_share_strength {
    double elastic_modulus, inertia, allowable;
};
struct gw_share_limit {
    double moment;             /* Nm */
    double equivalent_inertia; /* m4, in the first part's modulus */
    unsigned governs;          /* from 0; the first of equal ones */
};
enum gw_status gw_share_allowable(struct gw_share_limit *out, const struct gw_share_strength *parts, unsigned n,
                                  struct gw_engine *engine);
enum gw_status gw_share_moment(struct gw_share_result *out, const struct gw_share *in, struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
