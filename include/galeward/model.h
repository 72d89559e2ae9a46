/* The records of a project file and of a system file, in SI, as they were given.
 *
 * Absent values: GW_ABSENT, NULL, an UNSET choice, GW_UNSAID, GW_NO_INTEGER. Defaults that were taken are listed among
 * the assumptions. Field tables: src/model/records*.c (also what each field means, its unit and its default). */
#ifndef GALEWARD_MODEL_H
#define GALEWARD_MODEL_H

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
enum gw_system_kind { GW_SYSTEM_UNSET, GW_STICK, GW_UNITIZED, GW_WINDOW_WALL };
enum gw_glazing { GW_GLAZING_UNSET, GW_CAPTURED, GW_SILICONE, GW_MIXED };
enum gw_test {
    GW_TEST_UNSET,
    GW_TEST_STRUCTURAL,
    GW_TEST_AIR,
    GW_TEST_WATER,
    GW_TEST_SWAY,
    GW_TEST_IMPACT,
    GW_TEST_BLAST,
    GW_TEST_OTHER
};

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

/* How a building counts whose glazing may be broken: by whom, and why. */
struct gw_after_breach {
    enum gw_enclosure enclosure;
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
struct gw_lite_type {
    const char *name;
    GW_LIST(struct gw_layer) layers;
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

struct gw_water_requirement {
    double pressure, share, floor, cap;
    enum gw_water_rule rule;
};
struct gw_air_requirement {
    double leakage, at;
};
struct gw_other_requirement {
    const char *name;
    double at_least, at_most;
    const struct gw_node *node;
};
enum gw_evidence_rule { GW_EVIDENCE_RULE_UNSET, GW_ASKS_TEST, GW_ASKS_CALCULATION };
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
    GW_LIST(struct gw_tunnel_row) wind_tunnel;
    const struct gw_requirements *requirements;
    GW_LIST(struct gw_elevation_spec) elevations;
    const struct gw_openings *openings;
    GW_LIST(const char *) candidates;
    const struct gw_options *options;
    GW_LIST(struct gw_correction) assume;
    const struct gw_node *node;
};

/* How each edge of a tested lite was held; `all` where one word was given for all of them. */
enum gw_edge_hold { GW_EDGE_HOLD_UNSET, GW_EDGE_PLATE, GW_EDGE_SILICONE, GW_EDGE_FREE };
struct gw_tested_hold {
    enum gw_edge_hold all, head, sill, left, right;
};
struct gw_tested_lite {
    double width, height;
    GW_LIST(struct gw_layer) layers;
    int support; /* edges held; GW_NO_INTEGER: not recorded */
    const struct gw_tested_hold *hold;
    enum gw_component component;
};
struct gw_measured {
    double value, at; /* m, Pa */
};
struct gw_tested_transom {
    double span, above, below;
    const struct gw_measured *deflection; /* under wind, at a pressure */
};
struct gw_tested_fastening {
    double diameter, spacing, end_distance;
};
enum gw_included {
    GW_INCLUDED_UNSET,
    GW_INCLUDES_ANCHORS,
    GW_INCLUDES_SPLICE,
    GW_INCLUDES_STACK_JOINT,
    GW_INCLUDES_CORNER,
    GW_INCLUDES_PARAPET
};
/* What one specimen measured; a dimension that is not recorded is never taken from elsewhere. */
struct gw_tested {
    double module, span;
    int spans;
    double overhang;
    GW_LIST(struct gw_tested_lite) lites;
    double lite_width, lite_height; /* of one lite, as short form */
    enum gw_component component;
    const char *make_up; /* of that lite: a lite type of the project */
    GW_LIST(struct gw_layer) layers;
    double side_gap, end_gap, bite, bead_thickness, story_height; /* sway */
    const struct gw_tested_transom *transom;
    const struct gw_tested_fastening *fastening;
    const char *reinforcement; /* "none", or what it was */
    GW_LIST(int) includes;     /* enum gw_included */
};
struct gw_both_ways {
    double positive, negative;
};
/* Of a sway test: to the drift of a story in service, or in growing steps until glass falls out. */
enum gw_sway { GW_SWAY_UNSET, GW_SWAY_STATIC, GW_SWAY_DYNAMIC };
struct gw_rating {
    enum gw_test test;
    enum gw_sway kind;
    const char *name;
    double positive, negative, pressure, impulse, leakage, at, value, drift;
    enum gw_component component;
    const struct gw_both_ways *held, *failed_at; /* greatest pressures held; at which it failed or was stopped */
    const struct gw_measured *deflection;        /* of the mullion, at a pressure */
    const struct gw_tested *tested;
    const char *report;
    enum gw_missile missile;
    int wind_zone, cycles;
    enum gw_bool after_structural; /* water, air */
    enum gw_bool small_missile_shown, high_velocity_zone;
    double bite;
    enum gw_hazard hazard;
    enum gw_condition condition;
    const struct gw_node *node;
};
enum gw_insert_metal { GW_INSERT_UNSET, GW_INSERT_STEEL, GW_INSERT_ALUMINUM };
struct gw_insert_spec {
    enum gw_insert_metal metal;
    double inertia_x, section_modulus_x, yield;
};
/* A tube, or properties. */
struct gw_member_spec {
    enum gw_metal alloy;
    const struct gw_tube *tube;
    double area, inertia_x, inertia_y, section_modulus_x, section_modulus_y, torsion_constant;
    double allowable_moment, allowable_torque, unbraced_length;
    const struct gw_insert_spec *insert;
    double block_offset, eccentricity; /* transoms */
};
struct gw_plate_spec {
    enum gw_metal alloy;
    double width, thickness, hole;
};
enum gw_hold { GW_HOLD_UNSET, GW_HOLD_TAPPED, GW_HOLD_CHASE };
struct gw_screw_spec {
    double diameter, threads_per_inch;
    enum gw_thread thread;
    enum gw_hold hold;
    enum gw_metal alloy;
    double engagement, ultimate, head_diameter, tested_pullout;
    const char *report;
};
struct gw_capacity_spec {
    double capacity;
    const char *report;
};
/* What a mullion takes where it runs past an anchor, holes counted: each alone; together they add up to 1. */
struct gw_past_anchor_spec {
    double moment, reaction;
    const char *report;
};
struct gw_seat_spec {
    enum gw_metal alloy; /* figures of a leg or chair, or the capacity of each, N */
    double capacity, length, thickness, arm;
    const char *report;
};
struct gw_anchor_spec {
    double inward, outward, along, dead, eccentricity, bolt_arm, bolt_tension, bolt_shear;
    enum gw_interaction interaction, bolt_interaction; /* with the dead load; of a bolt's tension with its shear */
    int bolts;
    const char *report;
};
struct gw_silicone_spec {
    double bite, thickness, design_stress, shear_strain;
    enum gw_bool carries_weight; /* unsaid: setting blocks do */
};
/* How the system takes the drift of a story, and the gaps round its glass. */
struct gw_drift_spec {
    enum gw_drift_path path;
    double slip, side_gap, end_gap, bite;
};
struct gw_stack_spec {
    double width, least_gap, engagement, least_overlap;
};
struct gw_adds {
    double inertia_x, section_modulus_x;
};
struct gw_system_option {
    const char *name;
    const struct gw_adds *adds;
    double cost;
};
struct gw_system_head {
    const char *name;
    enum gw_system_kind kind;
    enum gw_glazing glazing;
};
struct gw_system {
    int galeward;
    enum gw_units units;
    const struct gw_system_head *system;
    const char *name; /* system->name, for short */
    const char *file;
    GW_LIST(double) pocket;
    GW_LIST(struct gw_rating) ratings;
    const struct gw_member_spec *mullion, *corner_mullion, *jamb_mullion, *transom;
    const struct gw_plate_spec *pressure_plate;
    const struct gw_screw_spec *screw;
    const struct gw_silicone_spec *silicone;
    const struct gw_capacity_spec *transom_connection, *splice;
    const struct gw_seat_spec *glass_seat;
    const struct gw_past_anchor_spec *past_anchor;
    const struct gw_anchor_spec *anchor, *corner_anchor;
    const struct gw_drift_spec *drift;
    const struct gw_stack_spec *stack_joint;
    double frame_weight;
    GW_LIST(struct gw_system_option) options;
    double cost;
    const struct gw_node *node;
};

extern const struct gw_record gw_project_record, gw_system_record, gw_wall_record, gw_opening_record,
    gw_building_record;
extern const struct gw_record gw_layer_record, gw_air_record, gw_tube_record, gw_topography_record;
/* choices.c: words that more than one record knows. */
extern const struct gw_choice gw_units_choices[], gw_edition_choices[], gw_exposure_choices[], gw_component_choices[],
    gw_enclosure_choices[], gw_building_code_choices[], gw_risk_choices[], gw_test_choices[], gw_water_rule_choices[],
    gw_shape_choices[], gw_treatment_choices[], gw_interlayer_choices[], gw_glass_standard_choices[],
    gw_glass_route_choices[], gw_edge_finish_choices[], gw_span_choices[], gw_thread_choices[], gw_design_choices[],
    gw_metal_choices[], gw_floor_choices[], gw_strip_cap_choices[], gw_version_choices[];
extern const struct gw_choice gw_debris_edition_choices[], gw_protection_choices[], gw_missile_choices[],
    gw_missile_size_choices[], gw_cycle_direction_choices[], gw_cycle_schedule_choices[], gw_proof_protocol_choices[],
    gw_sequence_test_choices[], gw_sequence_when_choices[], gw_drift_structure_choices[], gw_drift_path_choices[],
    gw_hazard_choices[], gw_condition_choices[], gw_blast_unit_choices[], gw_bolt_interaction_choices[];

/* Refuses an order of layers that is no lite, and keys that do not belong to a layer; `at`: which layer. */
enum gw_status gw_layers_check(size_t *at, const struct gw_layer *layers, size_t n, struct gw_engine *engine);
/* Of all of them, m, nominal; absent where a layer's is not given. */
double gw_layers_thickness(const struct gw_layer *layers, size_t n);
/* Layers, from outside to inside, as panes and cavities; checks them first. Their texts for reports:
 * "6 mm heat strengthened + 12 mm cavity + 6 mm annealed". */
enum gw_status gw_make_up_from(struct gw_make_up *out, const struct gw_layer *layers, size_t n,
                               struct gw_engine *engine);
void gw_layers_say(struct gw_text *out, const struct gw_layer *layers, size_t n, enum gw_units shown,
                   const struct gw_tables *tables);
/* An outside corner at the end of the wall itself, whoever meets it. */
bool gw_end_is_corner(const struct gw_end *end);
enum gw_status gw_air_from(struct gw_air *out, const struct gw_air_state *state, const char *key,
                           struct gw_engine *engine);
bool gw_anchor_carries(const struct gw_wall_anchor *anchor, enum gw_anchor_load_word load);

/* A building for whose glazing the project asks for less protection from debris than the code, or may do so. */
struct gw_waiver {
    const struct gw_building *building;
    bool decided;              /* false: a fact is missing that the code's demand hangs on */
    enum gw_enclosure counted; /* the enclosure that its pressures go by */
    const char *text;          /* "waived against the code: ..." */
};

/* Everything one run works from. */
struct gw_input {
    const char *file;
    char sha256[65];
};
struct gw_model {
    struct gw_arena *arena;
    struct gw_diags *diags;
    struct gw_assumptions assumptions;
    const struct gw_tables *tables; /* the standard ones, or a corrected copy */
    struct gw_project project;
    GW_LIST(struct gw_opening) openings;
    GW_LIST(struct gw_waiver) waivers; /* each is a warning too */
    GW_LIST(struct gw_system) systems;
    GW_LIST(struct gw_input) inputs;
    size_t inputs_capacity;
    const struct gw_source *source; /* what it was loaded from, for gw_model_reload */
    const char *const *changes;
    size_t n_changes;
};

/* Loads a project ("-": standard input) with its schedule and candidates; all mistakes of all files are reported. True
 * when there was no error. `changes` are "path=value" settings applied to the document before loading (may be NULL). */
bool gw_model_load(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags, const char *path,
                   const char *const *changes, size_t n_changes);
/* The same from text in memory; files that it names lie beside source->name. */
bool gw_model_load_source(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags,
                          const struct gw_source *source, const char *const *changes, size_t n_changes);
/* The same project, its files read anew, on other tables; they must outlive it. The project's own corrections stand. */
bool gw_model_reload(struct gw_model *model, const struct gw_model *of, struct gw_arena *arena, struct gw_diags *diags,
                     const struct gw_tables *tables);
const struct gw_building *gw_model_building(const struct gw_model *model, const char *name);
/* The wall that meets another at its end (0 left, 1 right, seen from outside), named at either of them; NULL. */
const char *gw_model_meets(const struct gw_model *model, const struct gw_wall *wall, size_t end);
/* breach.c: the debris case of the site's glazing whose lowest edge stands at a height, by code, whatever the project
 * asks for; the edition may be unset. NULL: nothing is waived for that building. */
void gw_model_debris_case(const struct gw_model *model, double height, struct gw_debris_case *out);
bool gw_model_waives(const struct gw_model *model); /* something, for sure */
const struct gw_waiver *gw_model_waiver(const struct gw_model *model, const struct gw_building *building);
/* What an opening stands in, of a wall on a grid or of an elevation; false: neither has that name. */
struct gw_face {
    const char *building;
    double width;
    double bottom, top;    /* m above ground; absent: an elevation */
    struct gw_end ends[2]; /* left, right */
};
bool gw_model_face(const struct gw_model *model, const char *name, struct gw_face *out);
/* Of the opening, else of its wall. */
const struct gw_building *gw_model_opening_building(const struct gw_model *model, const struct gw_opening *opening);
const struct gw_lite_type *gw_model_lite(const struct gw_model *model, const char *name);

#ifdef __cplusplus
}
#endif

#endif
