/* The records of a project file, in SI, as they were given.
 *
 * Absent values: GW_ABSENT, NULL, an UNSET choice, GW_UNSAID, GW_NO_INTEGER. Defaults that were taken are listed among
 * the assumptions. Field tables: src/model/records*.c (also what each field means, its unit and its default). */
#ifndef GALEWARD_PROJECT_H
#define GALEWARD_PROJECT_H

#include "galeward/anchor.h"
#include "galeward/bending.h"
#include "galeward/blast.h"
#include "galeward/debris.h"
#include "galeward/fastener.h"
#include "galeward/lite.h"
#include "galeward/movement.h"
#include "galeward/plate.h"
#include "galeward/record.h"
#include "galeward/seismic.h"
#include "galeward/weather.h"
#include "galeward/wind.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_level { GW_LEVEL_UNSET, GW_LEVEL_STRENGTH, GW_LEVEL_ASD };
enum gw_component { GW_COMPONENT_UNSET, GW_FIXED, GW_VENT, GW_DOOR, GW_SPANDREL };
enum gw_end_kind { GW_END_UNSET, GW_CORNER, GW_REENTRANT, GW_NO_CORNER };
enum gw_impact_word { GW_IMPACT_UNSET, GW_IMPACT_BY_CODE, GW_IMPACT_NONE };
enum gw_blast_word { GW_BLAST_UNSET, GW_BLAST_NONE };
enum gw_blast_unit { GW_BLAST_UNIT_UNSET, GW_BLAST_INNER_ALONE };
enum gw_governs { GW_GOVERNS_UNSET, GW_ONEROUS, GW_GIVEN_GOVERN };
enum gw_between { GW_BETWEEN_UNSET, GW_BETWEEN_SMALLER, GW_BETWEEN_INTERPOLATE };
enum gw_qz_rule { GW_QZ_UNSET, GW_QZ_TOP, GW_QZ_CENTER };
enum gw_edge_rule { GW_EDGE_UNSET, GW_EDGE_ANY_PART, GW_EDGE_BY_AREA };
enum gw_anchor_area { GW_ANCHOR_UNSET, GW_ANCHOR_AS_MULLION, GW_ANCHOR_TRIBUTARY };

struct gw_info {
    const char *name, *number, *by;
    enum gw_risk risk_category;
};
struct gw_codes {
    enum gw_building_code building;
    enum gw_edition wind;
    enum gw_glass_standard glass;
    const char *aluminum;
    enum gw_debris_edition debris;
};
struct gw_seismic {
    enum gw_seismic_category category;
    double sds;
    double story_drift, story_drift_ratio; /* m, or of the story's height: D_p, without importance */
    enum gw_drift_structure structure;     /* for the allowable drift, where none is given */
    double story_height;                   /* m, of openings of a schedule */
    double component_importance;
};
/* Of the joints of the wall, by the structural engineer; m, K. */
struct gw_movement_rules {
    double live_load, live_load_below, shortening, rebound;
    double coldest, hottest, set_coldest, set_warmest;
    double fabrication, erection;
};
struct gw_impact {
    enum gw_impact_word rule;
    enum gw_missile missile;
    int wind_zone;
    double region_wind_speed, aggregate_roof_height, bite;
    enum gw_bool health_care, exposure_d_at_shore, high_velocity_zone, hawaii;
    const struct gw_node *node;
};
struct gw_blast {
    enum gw_blast_word none;
    double pressure, impulse, charge, standoff;
    enum gw_hazard hazard; /* the worst allowed */
    enum gw_condition condition;
    enum gw_blast_unit unit;
};

struct gw_site {
    double basic_wind_speed;
    enum gw_exposure exposure;
    double elevation;
    const struct gw_topography *topography;
    enum gw_bool hurricane_prone;
    double coast_distance;
    const struct gw_seismic *seismic;
    const struct gw_impact *impact;
    const struct gw_blast *blast;
    enum gw_floor_rule exposure_b_floor;
};

/* What a reviewer decides on a comment of a review. */
enum gw_disposition {
    GW_DISPOSITION_UNSET,
    GW_NO_EXCEPTION,
    GW_CORRECTIONS_NOTED,
    GW_REVISE,
    GW_REJECTED,
    GW_SPECIFIED_ITEM
};
struct gw_decision {
    int number; /* of the comment */
    enum gw_disposition disposition;
    const char *by, *reason;
    const struct gw_node *node;
};

/* How a building counts whose glazing may be broken: by whom, and why. */
struct gw_after_breach {
    enum gw_enclosure enclosure;
    const char *by, *reason;
};
/* Who answers for something that the program would not let pass, and why. */
struct gw_acceptance {
    const char *by, *reason;
};
struct gw_building {
    const char *name;
    double roof_height, least_width, roof_slope;
    enum gw_enclosure enclosure;
    double highest_opening, internal_volume, opening_area;
    double parapet_height, parapet_gcpi;
    enum gw_bool parapet_perimeter, alternative_60_90;
    const struct gw_after_breach *enclosure_after_breach;
    const struct gw_node *node;
};

struct gw_end {
    enum gw_end_kind kind;
    double corner_at;
    const char *corner; /* an outside corner: the wall that meets this one there */
};
struct gw_columns {
    int count;
    double width;
    GW_LIST(double) widths;
};
struct gw_row_spec {
    double height; /* absent where it is the rest */
    bool rest;     /* what the floor's other rows leave */
    const char *lite;
    const struct gw_node *node;
};
struct gw_story {
    GW_LIST(struct gw_row_spec) rows;
};
struct gw_screws {
    double spacing;
};

enum gw_anchor_load_word { GW_ANCHOR_LOAD_UNSET, GW_ANCHOR_WIND, GW_ANCHOR_DEAD };
struct gw_wall_anchor {
    double at;
    GW_LIST(int) carries; /* enum gw_anchor_load_word; none: nothing is said */
};

struct gw_wall {
    const char *name, *building;
    double width;
    GW_LIST(double) floors;
    GW_LIST(struct gw_wall_anchor) anchors;
    GW_LIST(double) splices;
    double top;
    GW_LIST(struct gw_end) ends;
    const struct gw_columns *columns;
    GW_LIST(struct gw_story) rows;
    const struct gw_screws *screws;
    const struct gw_node *node;
};

/* One of glass, cavity, interlayer. */
struct gw_layer {
    double glass;
    enum gw_treatment treatment;
    enum gw_bool frit;
    double cavity;
    enum gw_interlayer interlayer;
    double thickness, shear_modulus;
    const struct gw_node *node;
};
/* The part within which something is chosen everywhere or nowhere. */
enum gw_choose { GW_CHOOSE_UNSET, GW_CHOOSE_ZONE, GW_CHOOSE_WALL, GW_CHOOSE_PROJECT };
/* A number, and what it is a price of. */
struct gw_price {
    double value;    /* per m, per m2 or each, by `dim`; absent: none given */
    enum gw_dim dim; /* GW_COST, GW_COST_PER_LENGTH, GW_COST_PER_AREA */
};
/* Another make-up of a lite type, that may stand in its place. */
struct gw_lite_alternative {
    const char *name;
    GW_LIST(struct gw_layer) layers;
    const char *cost; /* as it was written */
    struct gw_price price;
    const struct gw_lite_type *as; /* the type with this make-up in the place of its own */
    const struct gw_node *node;
};
struct gw_lite_type {
    const char *name;
    GW_LIST(struct gw_layer) layers;
    const char *cost; /* as it was written */
    struct gw_price price;
    enum gw_choose choose;
    GW_LIST(struct gw_lite_alternative) alternatives;
    int support;
    enum gw_lite_span span;
    enum gw_edge_finish edge_finish;
    enum gw_component component;
    const struct gw_node *node;
};

/* State of the air: by its pressure, or by the elevation in the standard atmosphere. */
struct gw_air_state {
    double atmospheric_pressure, elevation, temperature;
};
struct gw_glass_rules {
    enum gw_glass_route route;
    double deflection_limit, deflection_ratio; /* m; short side over limit */
    double probability, interlayer_temperature;
    const struct gw_air_state *sealing;
    GW_LIST(struct gw_air_state) service;
    const struct gw_node *node;
};

struct gw_framing_rules {
    double deflection_cap, dead_load_limit;
};

struct gw_given_row {
    const char *building;
    int zone;
    double area, up_to, inward, outward;
    enum gw_level level;
    const char *source;
    const struct gw_node *node;
};

/* Pressures from the structural drawings, and what holds between their areas. */
struct gw_given {
    enum gw_between between;
    GW_LIST(struct gw_given_row) rows;
    const struct gw_node *node;
};

enum gw_evidence_rule { GW_EVIDENCE_RULE_UNSET, GW_ASKS_TEST, GW_ASKS_CALCULATION };
struct gw_water_requirement {
    double pressure, share, floor, cap;
    enum gw_water_rule rule;
    enum gw_bool dynamic;  /* by the dynamic test too */
    GW_LIST(int) evidence; /* enum gw_evidence_rule, a test alone; empty: what a report leaves unsaid is asked */
};
struct gw_air_requirement {
    double leakage, at;
    GW_LIST(int) evidence; /* as of water */
};
struct gw_other_requirement {
    const char *name;
    double at_least, at_most;
    const struct gw_node *node;
};
struct gw_structural_requirement {
    GW_LIST(int) evidence; /* enum gw_evidence_rule; empty: any */
};
struct gw_requirements {
    const struct gw_structural_requirement *structural;
    const struct gw_water_requirement *water;
    const struct gw_air_requirement *air;
    GW_LIST(struct gw_other_requirement) other;
};

/* A face that openings of a schedule stand in, where no wall on a grid is. */
struct gw_elevation_spec {
    const char *name, *building;
    double width;
    GW_LIST(struct gw_end) ends;
    const struct gw_node *node;
};

struct gw_opening_columns {
    const char *mark, *wall, *building, *width, *height, *count, *sill, *offset, *lite;
};
struct gw_openings {
    const char *file;
    const struct gw_opening_columns *columns;
    const struct gw_node *node;
};
struct gw_opening {
    const char *mark, *wall, *building;
    double width, height;
    int count;
    double sill, offset; /* m: above ground; from its wall's left edge to its own, seen from outside */
    const char *lite;
    const struct gw_node *node;
};

/* Headers of a sheet of readings (galeward/readings.h), where they are others than its own. */
struct gw_reading_columns {
    const char *wall, *column, *story, *row, *edge, *line, *point, *item, *value, *date, *installed, *temperature,
        *repaired, *sample, *by, *note;
};
struct gw_readings_rules {
    const char *file, *system; /* relative to the project's; the sheet; which candidate was hung */
    const struct gw_reading_columns *columns;
    const struct gw_node *node;
};

struct gw_correction {
    const char *table, *row, *column, *value, *reason, *by;
    const struct gw_node *node;
};
struct gw_options {
    enum gw_qz_rule inward_height;
    enum gw_edge_rule edge_zone;
    enum gw_anchor_area anchor_area;
    enum gw_strip_cap strip_cap;
};
/* What is chosen at one place of the walls: a row of a plan. */
enum gw_roof_part { GW_ROOF_PART_UNSET, GW_BELOW_ROOF, GW_ABOVE_ROOF };
struct gw_chosen_lite {
    const char *type, *name; /* the alternative; NULL: its own make-up */
    const struct gw_node *node;
};
struct gw_chosen_row {
    const char *candidate; /* NULL: the only one */
    const char *wall;
    int zone;
    enum gw_roof_part part;
    GW_LIST(const char *) options;
    GW_LIST(struct gw_chosen_lite) lites;
    const struct gw_node *node;
};
struct gw_tunnel_row {
    const char *building;
    int zone;
    double inward, outward;
    enum gw_level level;
    const char *source;
    const struct gw_node *node;
};

struct gw_project {
    int galeward;
    enum gw_units units;
    const struct gw_info *project;
    const struct gw_codes *codes;
    const struct gw_site *site;
    GW_LIST(struct gw_building) buildings;
    GW_LIST(struct gw_wall) walls;
    GW_LIST(struct gw_lite_type) lites;
    const struct gw_glass_rules *glass;
    const struct gw_framing_rules *framing;
    const struct gw_movement_rules *movement;
    const struct gw_given *given; /* NULL: none */
    enum gw_governs pressures;
    const struct gw_acceptance *lower_than_computed; /* NULL: nobody answers for given pressures that are */
    GW_LIST(struct gw_tunnel_row) wind_tunnel;
    const struct gw_requirements *requirements;
    const struct gw_acceptance *requirement_set_accepted; /* NULL: nobody answers for a set below the site */
    GW_LIST(struct gw_elevation_spec) elevations;
    const struct gw_openings *openings;
    GW_LIST(const char *) candidates;
    GW_LIST(struct gw_chosen_row) chosen;
    const struct gw_readings_rules *readings;
    const struct gw_options *options;
    GW_LIST(struct gw_correction) assume;
    GW_LIST(struct gw_decision) decisions; /* on comments of a review */
    const struct gw_node *node;
};

#ifdef __cplusplus
}
#endif

#endif
