/* The keys of the site: wind, topography, earthquakes, impact, blast. As in records.c. */
#include "model/records_site.h"
#include "base/fields.h"

#include "galeward/model.h"

static const struct gw_choice SIDES[] = {{"upwind", GW_UPWIND, ""}, {"downwind", GW_DOWNWIND, ""}, {0}};
static const struct gw_choice CATEGORIES[] = {{"A", GW_SDC_A, ""},
                                              {"B", GW_SDC_B, ""},
                                              {"C", GW_SDC_C, ""},
                                              {"D", GW_SDC_D, ""},
                                              {"E", GW_SDC_E, ""},
                                              {"F", GW_SDC_F, ""},
                                              {0}};
static const struct gw_also IMPACT_ALSO[] = {
    {.says = "by_code, or a missile with its wind zone: {missile: D, wind_zone: 3}"}};
static const struct gw_choice IMPACT_WORDS[] = {{"by_code", GW_IMPACT_BY_CODE, ""}, {"none", GW_IMPACT_NONE, ""}, {0}};
static const struct gw_choice BLAST_WORDS[] = {{"none", GW_BLAST_NONE, ""}, {0}};
static const struct gw_field TOPOGRAPHY[] = {
    PICK(gw_topography, shape, gw_shape_choices, .flags = GW_REQUIRED, .help = "shape of the hill"),
    NUM(gw_topography, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 5000), LIKELY(1, 1500),
        .help = "H, above the terrain upwind"),
    NUM(gw_topography, half_length, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 50000), LIKELY(5, 10000),
        .help = "L_h, from the crest upwind to half of H"),
    NUM(gw_topography, distance, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0, 100000), LIKELY(0, 20000),
        .below = "; of a site upwind of the crest write the distance without a sign and side: upwind",
        .help = "x, from the crest to the site"),
    PICK(gw_topography, side, SIDES, .fallback = "downwind", .help = "which side of the crest the site lies on"),
    F(gw_topography, conditions_met, GW_T_BOOL, .fallback = "true",
      .help = "the site conditions of 26.8.1 that are not numbers (isolated, twice as high as its neighbors, upper "
              "half) hold"),
};
const struct gw_record gw_topography_record = RECORD("topography", gw_topography, TOPOGRAPHY);

static const struct gw_field SEISMIC[] = {
    PICK(gw_seismic, category, CATEGORIES, .flags = GW_REQUIRED, .help = "seismic design category"),
    NUM(gw_seismic, sds, GW_RATIO, LIMITS(0, 5), LIKELY(0.02, 3), .help = "S_DS, g"),
    NUM(gw_seismic, story_drift, GW_LENGTH, LIMITS(0.0001, 2), LIKELY(0.002, 0.3),
        .help = "drift of a story by the structural engineer, without the importance factor"),
    NUM(gw_seismic, story_drift_ratio, GW_RATIO, LIMITS(0.0001, 0.1), LIKELY(0.001, 0.03),
        .help = "the same as part of the story's height; neither: the allowable one, by 'structure'"),
    PICK(gw_seismic, structure, gw_drift_structure_choices,
         .help = "row of the allowable story drift, where the engineer gives none; neither: the drift is asked for"),
    NUM(gw_seismic, story_height, GW_LENGTH, LIMITS(1, 50), LIKELY(2, 15),
        .help = "round openings of a schedule, and of a wall that ends below its slab"),
    NUM(gw_seismic, component_importance, GW_RATIO, LIMITS(1, 1.5), .help = "I_p; absent: by the risk category"),
};
static const struct gw_record SEISMIC_RECORD =
    RECORD("seismic", gw_seismic, SEISMIC, .example = "{category: B}, its letter for the site");
static const struct gw_field IMPACT[] = {
    PICK(gw_impact, rule, IMPACT_WORDS, .also = IMPACT_ALSO, .help = "by_code or none"),
    PICK(gw_impact, missile, gw_missile_choices, .help = "required missile level; goes before the code's"),
    F(gw_impact, wind_zone, GW_T_INTEGER, LIMITS(1, 4), .help = "required wind zone, with missile"),
    NUM(gw_impact, bite, GW_THICKNESS, LIMITS(0.001, 0.2), LIKELY(0.004, 0.06),
        .help = "glass bite of the project's glazing"),
    NUM(gw_impact, region_wind_speed, GW_SPEED, LIMITS(1, 300), LIKELY(36, 100),
        .help = "Risk Category III: from the Category II map, which the region goes by"),
    NUM(gw_impact, aggregate_roof_height, GW_LENGTH, LIMITS(0, 1000), LIKELY(2, 450),
        .help = "highest roof with gravel within 1,500 ft; absent: none"),
    F(gw_impact, health_care, GW_T_BOOL, .help = "Risk Category III: health care facility; absent: no"),
    F(gw_impact, exposure_d_at_shore, GW_T_BOOL,
      .help = "asce7-22: Exposure D upwind at the water; absent: taken as true"),
    F(gw_impact, high_velocity_zone, GW_T_BOOL, .help = "Florida's, with rules of its own; absent: no"),
    F(gw_impact, hawaii, GW_T_BOOL, .help = "absent: no"),
    PLACE(gw_impact),
};
static const struct gw_record IMPACT_RECORD = RECORD("impact", gw_impact, IMPACT, .scalar_key = "rule");
static const struct gw_field BLAST[] = {
    PICK(gw_blast, none, BLAST_WORDS, .flags = GW_HIDDEN, .help = "no blast requirement"),
    NUM(gw_blast, pressure, GW_PRESSURE, LIMITS(0, 1e8), LIKELY(1000, 2e7), .help = "peak reflected pressure"),
    NUM(gw_blast, impulse, GW_IMPULSE, LIMITS(0, 1e7), LIKELY(10, 1e5), .help = "reflected impulse"),
    NUM(gw_blast, charge, GW_MASS, LIMITS(0, 1e6), LIKELY(0.2, 50000),
        .help = "TNT equivalent, from the security consultant"),
    NUM(gw_blast, standoff, GW_LENGTH, LIMITS(0, 1e4), LIKELY(0.5, 1000), .help = "distance from the charge"),
    PICK(gw_blast, hazard, gw_hazard_choices, .help = "worst hazard rating allowed"),
    PICK(gw_blast, condition, gw_condition_choices, .help = "worst performance condition allowed"),
    PICK(gw_blast, unit, gw_blast_unit_choices,
         .help = "how an insulating unit without a blast rating is calculated; absent: it is not"),
};
static const struct gw_record BLAST_RECORD = RECORD("blast", gw_blast, BLAST, .scalar_key = "none");

static const struct gw_field SITE[] = {
    NUM(gw_site, basic_wind_speed, GW_SPEED, .flags = GW_REQUIRED, LIMITS(1, 300), LIKELY(36, 100),
        .help = "3-second gust from the hazard map for the risk category"),
    PICK(gw_site, exposure, gw_exposure_choices, .also = gw_exposure_words, .flags = GW_REQUIRED,
         .help = "worst exposure of any wind direction"),
    NUM(gw_site, elevation, GW_LENGTH, LIMITS(-500, 9000), LIKELY(-100, 4500),
        .help = "ground above sea level; absent: K_e = 1.0, which is safe"),
    F(gw_site, topography, GW_T_RECORD, .record = &gw_topography_record,
      .help = "hill, ridge or escarpment; absent: K_zt = 1.0"),
    F(gw_site, hurricane_prone, GW_T_BOOL, .help = "the site lies in the hurricane-prone region"),
    NUM(gw_site, coast_distance, GW_LENGTH, LIMITS(0, 1e7), LIKELY(0, 4e6),
        .help = "to the coastal mean high water line"),
    F(gw_site, seismic, GW_T_RECORD, .record = &SEISMIC_RECORD, .help = "seismic design category and S_DS"),
    F(gw_site, impact, GW_T_RECORD, .record = &IMPACT_RECORD,
      .help = "by_code, none, or a missile level and wind zone"),
    F(gw_site, blast, GW_T_RECORD, .record = &BLAST_RECORD,
      .help = "none, or pressure and impulse, or charge and standoff"),
    PICK(gw_site, exposure_b_floor, gw_floor_choices, .fallback = "edition", .flags = GW_SILENT,
         .help = "least K_z of exposure B near the ground"),
};
const struct gw_record gw_site_record = RECORD("site", gw_site, SITE);
