/* Bending and shear strength of a framing member about x, allowable-stress design.
 *
 * Aluminum: Aluminum Design Manual chapters F and G: yielding, rupture, local buckling by the weighted average of
 * flange and web, lateral-torsional buckling, web shear; metal in the weld-affected zone by its own strengths. Steel:
 * compact rectangular tubes, and shapes known to be compact and braced.
 *
 * The unbraced length is the caller's: the distance between points that hold the compression flange sideways. Pressure
 * from outside compresses the outer flange of a simple span, suction the inner one, which glass does not hold: check
 * both, each with its own length and compression side. Loads act at the shear center. SI, pure. */
#ifndef GALEWARD_BENDING_H
#define GALEWARD_BENDING_H

#include "galeward/alloy.h"
#include "galeward/section.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_adm { GW_ADM_UNSET, GW_ADM_2015, GW_ADM_2020 };
/* Open: symmetric about x or about its center (channel, I, Z); other shapes need elastic_moment. */
enum gw_profile { GW_PROFILE_UNSET, GW_PROFILE_CLOSED, GW_PROFILE_OPEN };
enum gw_element_stress { GW_ELEMENT_UNSET, GW_ELEMENT_COMPRESSION, GW_ELEMENT_BENDING };

/* A flat element on the compression side. */
struct gw_flat_element {
    enum gw_element_stress stress;
    double width, thickness; /* m; width clear between what supports it */
    int edges;               /* supported: 2 or 1; in bending 2 */
    double stress_ratio;     /* bending: co/cc, other edge over the edge most compressed; symmetric -1; absent: -1 */
};

enum { GW_FLAT_ELEMENTS = 16, GW_BENDING_NOTES = 8 };

/* Every number may be absent; what is then not known stays absent in the result, and a note says so. */
struct gw_bending {
    enum gw_metal metal;
    enum gw_adm edition;                                  /* aluminum; unset: 2020 */
    double thickness;                                     /* m, thickest metal */
    double plastic, modulus_compression, modulus_tension; /* m3: Z, Sc, St */
    double area, inertia_y, torsion, warping;             /* m2, m4, m4, m6 */
    enum gw_profile profile;
    double elastic_moment;           /* Nm, of lateral-torsional buckling, from an analysis; goes before the shape */
    double compression_flange_share; /* of Iy */
    double unbraced_length;          /* m; 0: braced throughout */
    double cb;                       /* or quarter_moments; neither: 1 */
    double quarter_moments[4];       /* Nm, magnitudes: greatest, and at 1/4, 1/2, 3/4 of the unbraced length */
    double flange_inertia,
        flange_distance;              /* m4, m: of all flange elements; axis to center of the compression flange */
    double web_inertia, web_distance; /* m4, m: of all web elements; axis to the web's compressed edge */
    struct gw_flat_element elements[GW_FLAT_ELEMENTS];
    unsigned n_elements;
    bool compact;                               /* shown elsewhere: no element buckles before it yields */
    bool welded;                                /* all of the section is affected by welding */
    int webs;                                   /* that carry shear; 0: unknown */
    double web_depth, web_clear, web_thickness; /* m: whole depth, clear height, of one web */
    const struct gw_tube *tube;                 /* NULL: not a tube */
};

/* Allowable (nominal over its safety factor) and nominal moments, Nm; forces in N. Absent: not known. */
struct gw_bending_result {
    double yielding, rupture, local, lateral;
    double nominal_yielding, nominal_rupture, nominal_local, nominal_lateral;
    double allowable; /* absent where one of the four is */
    const char *governing;
    double shear_allowable, shear_nominal;
    double flange_stress, web_stress, shear_stress; /* Pa, nominal: Fc, Fb, Fs */
    double slenderness, slenderness_limit;          /* of lateral-torsional buckling: lambda, Cc */
    double cb;
    const char *notes[GW_BENDING_NOTES];
    unsigned n_notes;
};

/* Everything absent. */
void gw_bending_clear(struct gw_bending *out);
/* A welded tube of steel is made thinner than its nominal wall: everything but its weight goes by the grade's design
 * wall (AISC 360 B4.2), which is the nominal one where the grade's wall is full. Its corners are round, as the AISC
 * Manual takes them: by the thicker wall where the two differ. Of aluminum the same tube. */
struct gw_tube gw_tube_by_design(const struct gw_tube *tube, enum gw_metal metal, struct gw_engine *engine);
/* Section properties, elements and webs of a tube bent about x, by its nominal walls; a steel's strength is found by
 * its design walls all the same. The tube must outlive `out`. */
enum gw_status gw_bending_tube(struct gw_bending *out, const struct gw_tube *tube, struct gw_engine *engine);
/* Refuses what the method does not cover; what is merely not given leaves its part absent. */
enum gw_status gw_bending_strength(struct gw_bending_result *out, const struct gw_bending *in,
                                   struct gw_engine *engine);

#ifdef __cplusplus
}
#endif

#endif
