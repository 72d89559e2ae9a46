/* The field tables of the project and system files: what each key means, its unit, its limits and its default.
 * Loader, JSON Schema and the field reference all come from here. Ranges are in SI. */
#include "base/fields.h"

#include "model/records_site.h"
#include "model_internal.h"

static const struct gw_choice END_KINDS[] = {{"corner", GW_CORNER, "an outside corner"},
                                             {"reentrant", GW_REENTRANT, "an inside corner: no edge strip"},
                                             {"none", GW_NO_CORNER, "the wall goes on"},
                                             {0}};
static const struct gw_choice GOVERNS[] = {{"onerous", GW_ONEROUS, "the more onerous of computed and given"},
                                           {"given", GW_GIVEN_GOVERN, "the given ones"},
                                           {0}};
static const struct gw_choice QZ_RULES[] = {{"top", GW_QZ_TOP, ""}, {"center", GW_QZ_CENTER, ""}, {0}};
static const struct gw_choice EDGE_RULES[] = {
    {"any_part", GW_EDGE_ANY_PART, ""},
    {"by_area", GW_EDGE_BY_AREA, "members that cross: the zone that holds the larger part"},
    {0}};
static const struct gw_choice ANCHOR_AREAS[] = {
    {"mullion", GW_ANCHOR_AS_MULLION, ""}, {"tributary", GW_ANCHOR_TRIBUTARY, ""}, {0}};
static const struct gw_field INFO[] = {
    F(gw_info, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "project name"),
    F(gw_info, number, GW_T_TEXT, .help = "project number"),
    F(gw_info, by, GW_T_TEXT, .help = "who wrote the file"),
    PICK(gw_info, risk_category, gw_risk_choices, .also = gw_risk_words, .fallback = "II",
         .help = "risk category; the wind speed comes from its map"),
};
static const struct gw_record INFO_RECORD = RECORD("project", gw_info, INFO);

static const struct gw_field CODES[] = {
    PICK(gw_codes, building, gw_building_code_choices, .flags = GW_REQUIRED, .help = "building code in force"),
    PICK(gw_codes, wind, gw_edition_choices, .also = gw_edition_words,
         .help = "edition of ASCE 7; absent: the one that the building code adopts"),
    PICK(gw_codes, glass, gw_glass_standard_choices, .also = gw_glass_standard_words,
         .help = "edition of ASTM E1300; absent: by the building code"),
    F(gw_codes, aluminum, GW_T_TEXT, .help = "edition of the Aluminum Design Manual; absent: by the building code"),
    PICK(gw_codes, debris, gw_debris_edition_choices, .also = gw_edition_words,
         .help = "edition for wind-borne debris; absent: that for wind"),
};
static const struct gw_record CODES_RECORD = RECORD("codes", gw_codes, CODES);

static const struct gw_field AFTER_BREACH[] = {
    PICK(gw_after_breach, enclosure, gw_enclosure_choices, .flags = GW_REQUIRED,
         .help = "enclosure class that its pressures go by"),
    F(gw_after_breach, by, GW_T_TEXT, .flags = GW_REQUIRED, .help = "who answers for it"),
    F(gw_after_breach, reason, GW_T_TEXT, .flags = GW_REQUIRED, .help = "why"),
};
static const struct gw_record AFTER_BREACH_RECORD = RECORD("enclosure after breach", gw_after_breach, AFTER_BREACH);

static const struct gw_field ACCEPTANCE[] = {
    F(gw_acceptance, by, GW_T_TEXT, .flags = GW_REQUIRED, .help = "who answers for it"),
    F(gw_acceptance, reason, GW_T_TEXT, .flags = GW_REQUIRED, .help = "why"),
};
static const struct gw_record ACCEPTANCE_RECORD = RECORD("acceptance", gw_acceptance, ACCEPTANCE);

static const struct gw_field BUILDING[] = {
    F(gw_building, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name that walls refer to"),
    NUM(gw_building, roof_height, GW_LENGTH, .flags = GW_REQUIRED, BUILDING_HEIGHT,
        .help = "mean roof height above ground (eave height for slopes up to 10 deg)"),
    NUM(gw_building, least_width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.5, 5000), LIKELY(3, 500),
        .help = "least horizontal plan dimension"),
    NUM(gw_building, roof_slope, GW_ANGLE, .fallback = "0 deg", LIMITS(0, 1.5), .help = "roof slope"),
    PICK(gw_building, enclosure, gw_enclosure_choices, .flags = GW_REQUIRED,
         .help = "enclosure class; decides the internal pressure"),
    NUM(gw_building, highest_opening, GW_LENGTH, LIMITS(0, 1000),
        .help = "partially enclosed: level of the highest opening that feeds the internal pressure"),
    NUM(gw_building, internal_volume, GW_VOLUME, LIMITS(0, 1e8), .help = "partially enclosed: unpartitioned volume"),
    NUM(gw_building, opening_area, GW_AREA, LIMITS(0, 1e6),
        .help = "partially enclosed: total openings in the envelope"),
    NUM(gw_building, parapet_height, GW_LENGTH, LIMITS(0, 30), .help = "parapet above the roof"),
    NUM(gw_building, parapet_gcpi, GW_RATIO, .fallback = "0.18", LIMITS(0, 0.55), .flags = GW_SILENT,
        .help = "internal pressure coefficient inside a hollow parapet; 0 for a solid one"),
    F(gw_building, parapet_perimeter, GW_T_BOOL, .fallback = "false", .flags = GW_SILENT,
      .help = "the parapet runs round the whole roof"),
    F(gw_building, alternative_60_90, GW_T_BOOL, .fallback = "false", .flags = GW_SILENT,
      .help = "between 60 and 90 ft: use the low-rise coefficients where permitted"),
    F(gw_building, enclosure_after_breach, GW_T_RECORD, .record = &AFTER_BREACH_RECORD,
      .help = "impact protection waived against the code: how the building counts then; absent: partially enclosed"),
    PLACE(gw_building),
};
const struct gw_record gw_building_record = RECORD("building", gw_building, BUILDING);

static const struct gw_field END[] = {
    PICK(gw_end, kind, END_KINDS, .help = "what the wall ends at"),
    NUM(gw_end, corner_at, GW_LENGTH, LIMITS(0, 1000),
        .help = "the outside corner lies this far beyond the wall's end"),
    F(gw_end, corner, GW_T_TEXT,
      .help = "an outside corner, and the wall that meets this one there: its left end this one's right end"),
};
static const struct gw_record END_RECORD = RECORD("end", gw_end, END, .scalar_key = "kind");
#define ENDS_EXAMPLE "both, left and right: [corner, corner]"
static const struct gw_field COLUMNS[] = {
    F(gw_columns, count, GW_T_INTEGER, LIMITS(1, 1000000), .help = "how many"),
    NUM(gw_columns, width, GW_LENGTH, LIMITS(0.01, 100), LIKELY(0.3, 6), .help = "width of each"),
    NUM(gw_columns, widths, GW_LENGTH, .flags = GW_MANY, LIMITS(0.01, 100), LIKELY(0.3, 6),
        .help = "widths from the left, seen from outside"),
};
static const struct gw_record COLUMNS_RECORD = RECORD("columns", gw_columns, COLUMNS, .list_key = "widths");
static const struct gw_field ROW[] = {
    NUM(gw_row_spec, height, GW_LENGTH, .flags = GW_REQUIRED, .keyword = "rest",
        .keyword_at = offsetof(struct gw_row_spec, rest), LIMITS(0.01, 100), LIKELY(0.15, 8),
        .help = "height of the row, or rest"),
    F(gw_row_spec, lite, GW_T_TEXT, .flags = GW_REQUIRED, .help = "lite type"),
    PLACE(gw_row_spec),
};
static const struct gw_record ROW_RECORD = RECORD("row", gw_row_spec, ROW);
static const struct gw_field STORY[] = {F(gw_story, rows, GW_T_RECORD, .record = &ROW_RECORD,
                                          .flags = GW_MANY | GW_REQUIRED, .help = "rows from the floor up")};
static const struct gw_record STORY_RECORD = RECORD("rows of one floor", gw_story, STORY, .list_key = "rows");
static const struct gw_field SCREWS[] = {NUM(gw_screws, spacing, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0.01, 2),
                                             LIKELY(0.1, 0.61), .help = "on center")};
static const struct gw_record SCREWS_RECORD = RECORD("screws", gw_screws, SCREWS);

static const struct gw_choice ANCHOR_LOADS[] = {
    {"wind", GW_ANCHOR_WIND, "every anchor"}, {"dead", GW_ANCHOR_DEAD, "fixed; without it slotted"}, {0}};
static const struct gw_field WALL_ANCHOR[] = {
    NUM(gw_wall_anchor, at, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(-100, 1000), .help = "elevation above ground"),
    PICK(gw_wall_anchor, carries, ANCHOR_LOADS, .flags = GW_MANY,
         .help =
             "[wind], or [wind, dead] where a piece of mullion hangs or stands on it; absent of all: the top one of "
             "each piece carries dead load"),
};
static const struct gw_record WALL_ANCHOR_RECORD =
    RECORD("anchor of a wall", gw_wall_anchor, WALL_ANCHOR, .scalar_key = "at");
static const struct gw_field WALL[] = {
    F(gw_wall, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name of the wall"),
    F(gw_wall, building, GW_T_TEXT, .help = "its building; may be left out when there is one"),
    NUM(gw_wall, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 10000), .help = "overall width"),
    NUM(gw_wall, floors, GW_LENGTH, .flags = GW_MANY | GW_REQUIRED, LIMITS(-100, 1000),
        .example = "levels, not a number of stories: [0 ft, 14 ft, 28 ft]",
        .help = "elevations above ground, lowest first; the first is the sill"),
    F(gw_wall, anchors, GW_T_RECORD, .record = &WALL_ANCHOR_RECORD, .flags = GW_MANY,
      .help = "anchor elevations, or what each carries besides; absent: the floors and the roof or the top"),
    NUM(gw_wall, splices, GW_LENGTH, .flags = GW_MANY, LIMITS(-100, 1000),
        .help = "splice elevations; absent: one piece an anchor span"),
    NUM(gw_wall, top, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.1, 1000), .help = "elevation of the top"),
    F(gw_wall, ends, GW_T_RECORD, .record = &END_RECORD, .flags = GW_MANY | GW_REQUIRED, .example = ENDS_EXAMPLE,
      .help = "left and right end, seen from outside"),
    F(gw_wall, columns, GW_T_RECORD, .record = &COLUMNS_RECORD, .flags = GW_REQUIRED,
      .help = "lite columns: count and width, or a list of widths"),
    F(gw_wall, rows, GW_T_RECORD, .record = &STORY_RECORD, .flags = GW_MANY | GW_WRAP | GW_REQUIRED,
      .help = "rows from each floor up; or a list of rows for each floor"),
    F(gw_wall, screws, GW_T_RECORD, .record = &SCREWS_RECORD,
      .help = "pressure-plate screws; absent: 9 in on center, common practice"),
    PLACE(gw_wall),
};
const struct gw_record gw_wall_record = RECORD("wall", gw_wall, WALL);

static const struct gw_field LAYER[] = {
    NUM(gw_layer, glass, GW_THICKNESS, LIMITS(0.001, 0.1), LIKELY(0.002, 0.026), .help = "glass, nominal thickness"),
    PICK(gw_layer, treatment, gw_treatment_choices, .also = gw_treatment_words, .help = "heat treatment of the glass"),
    NUM(gw_layer, cavity, GW_THICKNESS, LIMITS(0.001, 0.2), LIKELY(0.005, 0.03), .help = "sealed cavity"),
    F(gw_layer, frit, GW_T_BOOL, .help = "ceramic frit fired on one surface of the glass"),
    PICK(gw_layer, interlayer, gw_interlayer_choices, .also = gw_interlayer_words, .help = "interlayer material"),
    NUM(gw_layer, thickness, GW_THICKNESS, LIMITS(0.0001, 0.02), .help = "interlayer thickness, nominal"),
    NUM(gw_layer, shear_modulus, GW_STRESS, LIMITS(1, 1e10), .help = "of the interlayer, from test data"),
    PLACE(gw_layer),
};
static const struct gw_also LAYER_OTHERS[] = {{"airspace", NULL, "write cavity", GW_NOTE},
                                              {"air space", NULL, "write cavity", GW_NOTE},
                                              {"air", NULL, "write cavity", GW_NOTE},
                                              {"gap", NULL, "write cavity", GW_NOTE},
                                              {0}};
const struct gw_record gw_layer_record = RECORD("layer", gw_layer, LAYER, .others = LAYER_OTHERS);
static const struct gw_field AIR_STATE[] = {
    NUM(gw_air_state, atmospheric_pressure, GW_PRESSURE, LIMITS(30000, 120000), .help = "as measured, not reduced"),
    NUM(gw_air_state, elevation, GW_LENGTH, LIMITS(-500, 9000), .help = "instead of the pressure: above sea level"),
    NUM(gw_air_state, temperature, GW_TEMPERATURE, .flags = GW_REQUIRED, LIMITS(200, 400),
        .help = "of the gas, say 20 degC"),
};
const struct gw_record gw_air_record = RECORD("air", gw_air_state, AIR_STATE);
static const struct gw_field GLASS_RULES[] = {
    FIELD(gw_glass_rules, "basis", route, GW_T_CHOICE, .choices = gw_glass_route_choices, .fallback = "lower",
          .help = "which route governs glass"),
    NUM(gw_glass_rules, deflection_limit, GW_LENGTH, LIMITS(0.001, 1),
        .help = "center deflection of the glass, at most"),
    NUM(gw_glass_rules, deflection_ratio, GW_RATIO, LIMITS(10, 500), .help = "short side over deflection, at least"),
    NUM(gw_glass_rules, probability, GW_RATIO, LIMITS(1e-6, 0.5), .help = "of breakage; absent: the standard's 0.008"),
    NUM(gw_glass_rules, interlayer_temperature, GW_TEMPERATURE, LIMITS(200, 400), .help = "absent: 50 degC"),
    F(gw_glass_rules, sealing, GW_T_RECORD, .record = &gw_air_record,
      .help = "where insulating units were sealed; absent: no climatic load"),
    F(gw_glass_rules, service, GW_T_RECORD, .record = &gw_air_record, .flags = GW_MANY,
      .help = "states of the gas in service, say summer and winter"),
    PLACE(gw_glass_rules),
};
static const struct gw_record GLASS_RULES_RECORD = RECORD("glass", gw_glass_rules, GLASS_RULES);
static const struct gw_field FRAMING_RULES[] = {
    NUM(gw_framing_rules, deflection_cap, GW_LENGTH, LIMITS(0.001, 1),
        .help = "deflection of framing under wind, at most, besides the span's limit; specified practice: 3/4 in"),
    NUM(gw_framing_rules, dead_load_limit, GW_LENGTH, LIMITS(0.0005, 0.1),
        .help = "of horizontals over glass; absent: span/360 and 1/8 in"),
};
static const struct gw_record FRAMING_RULES_RECORD = RECORD("framing", gw_framing_rules, FRAMING_RULES);
#define MOVES(key_, dim_, ...) NUM(gw_movement_rules, key_, dim_, __VA_ARGS__)
static const struct gw_field MOVEMENT_RULES[] = {
    MOVES(live_load, GW_LENGTH, LIMITS(0, 0.3), LIKELY(0, 0.06),
          .help = "live-load deflection of the floor edge above a joint"),
    MOVES(live_load_below, GW_LENGTH, LIMITS(0, 0.3), LIKELY(0, 0.06),
          .help = "of the floor edge below it; absent: the same"),
    MOVES(shortening, GW_LENGTH, LIMITS(0, 0.1), LIKELY(0, 0.02),
          .help = "of the columns, a story, after the wall is set"),
    MOVES(rebound, GW_LENGTH, LIMITS(0, 0.1), LIKELY(0, 0.03), .help = "of the structure, that opens a joint"),
    MOVES(coldest, GW_TEMPERATURE, LIMITS(200, 400), LIKELY(213, 303),
          .help = "of the metal in service; absent: the usual range"),
    MOVES(hottest, GW_TEMPERATURE, LIMITS(200, 400), LIKELY(283, 373), .help = "of the metal in service"),
    MOVES(set_coldest, GW_TEMPERATURE, LIMITS(200, 400), LIKELY(243, 313),
          .help = "of the metal at installation; absent: any"),
    MOVES(set_warmest, GW_TEMPERATURE, LIMITS(200, 400), LIKELY(263, 333), .help = "of the metal at installation"),
    MOVES(fabrication, GW_LENGTH, LIMITS(0, 0.05), LIKELY(0, 0.015), .help = "tolerance each way; absent: the usual"),
    MOVES(erection, GW_LENGTH, LIMITS(0, 0.05), LIKELY(0, 0.025), .help = "tolerance each way; absent: the usual"),
};
static const struct gw_record MOVEMENT_RULES_RECORD = RECORD("movement", gw_movement_rules, MOVEMENT_RULES);
static const struct gw_field ALTERNATIVE[] = {
    F(gw_lite_alternative, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name"),
    F(gw_lite_alternative, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY | GW_REQUIRED,
      .help = "from outside to inside"),
    F(gw_lite_alternative, cost, GW_T_TEXT, .help = "per ft2 or m2 of its lites, or each"),
    PLACE(gw_lite_alternative),
};
static const struct gw_record ALTERNATIVE_RECORD = RECORD("alternative", gw_lite_alternative, ALTERNATIVE);
static const struct gw_field LITE[] = {
    F(gw_lite_type, name, GW_T_TEXT, .flags = GW_HIDDEN, .help = "the key"),
    F(gw_lite_type, layers, GW_T_RECORD, .record = &gw_layer_record, .flags = GW_MANY,
      .example = "[{glass: 6 mm, treatment: tempered}, {cavity: 12 mm}, {glass: 6 mm, treatment: tempered}]",
      .help = "from outside to inside"),
    F(gw_lite_type, support, GW_T_INTEGER, .fallback = "4", .flags = GW_SILENT, LIMITS(1, 4), .help = "edges held"),
    PICK(gw_lite_type, span, gw_span_choices, .help = "fewer than four edges: the side that runs across the free ones"),
    PICK(gw_lite_type, edge_finish, gw_edge_finish_choices, .help = "of free edges"),
    PICK(gw_lite_type, component, gw_component_choices, .fallback = "fixed", .flags = GW_SILENT,
         .help = "what kind of component it is"),
    F(gw_lite_type, cost, GW_T_TEXT, .help = "per ft2 or m2 of its lites, or each"),
    PICK(gw_lite_type, choose, gw_choose_choices, .fallback = "zone", .flags = GW_SILENT,
         .help = "the part within which one make-up is taken"),
    F(gw_lite_type, alternatives, GW_T_RECORD, .record = &ALTERNATIVE_RECORD, .flags = GW_MANY,
      .help = "make-ups that may stand in its place"),
    PLACE(gw_lite_type),
};
static const struct gw_record LITE_RECORD = RECORD("lite type", gw_lite_type, LITE);

static const struct gw_field GIVEN[] = {
    F(gw_given_row, building, GW_T_TEXT, .help = "building; absent: all"),
    F(gw_given_row, zone, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(4, 5), .help = "4 or 5"),
    NUM(gw_given_row, area, GW_AREA, .flags = GW_REQUIRED, LIMITS(0.001, 10000), .help = "effective area of the row"),
    NUM(gw_given_row, up_to, GW_LENGTH, LIMITS(0, 1000),
        .help = "for elements whose top is no higher; absent: any height"),
    NUM(gw_given_row, inward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE | GW_NO_MINUS, PRESSURE_RANGE,
        .help = "inward pressure"),
    NUM(gw_given_row, outward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE,
        .help = "outward pressure, magnitude"),
    PICK(gw_given_row, level, gw_level_choices, .also = gw_level_words, .flags = GW_REQUIRED,
         .help = "strength or asd"),
    F(gw_given_row, source, GW_T_TEXT, .help = "sheet"),
    PLACE(gw_given_row),
};
static const struct gw_record GIVEN_ROW_RECORD = RECORD("given pressure", gw_given_row, GIVEN);
static const struct gw_choice BETWEEN[] = {
    {"smaller", GW_BETWEEN_SMALLER, "the row of the next smaller area, which is safe"},
    {"interpolate", GW_BETWEEN_INTERPOLATE, "by the logarithm of the area"},
    {0}};
static const struct gw_field GIVEN_ROWS[] = {
    PICK(gw_given, between, BETWEEN, .fallback = "smaller", .flags = GW_SILENT,
         .help = "between the areas of a zone and a building"),
    F(gw_given, rows, GW_T_RECORD, .record = &GIVEN_ROW_RECORD, .flags = GW_MANY | GW_REQUIRED,
      .help = "one a zone and area"),
    PLACE(gw_given),
};
static const struct gw_record GIVEN_RECORD = RECORD("given", gw_given, GIVEN_ROWS, .list_key = "rows");
static const struct gw_field TUNNEL[] = {
    F(gw_tunnel_row, building, GW_T_TEXT, .help = "building; absent: all"),
    F(gw_tunnel_row, zone, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(4, 5), .help = "4 or 5"),
    NUM(gw_tunnel_row, inward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE | GW_NO_MINUS, PRESSURE_RANGE,
        .help = "inward pressure"),
    NUM(gw_tunnel_row, outward, GW_PRESSURE, .flags = GW_REQUIRED | GW_MAGNITUDE, PRESSURE_RANGE,
        .help = "outward pressure, magnitude"),
    PICK(gw_tunnel_row, level, gw_level_choices, .also = gw_level_words, .flags = GW_REQUIRED,
         .help = "strength or asd"),
    F(gw_tunnel_row, source, GW_T_TEXT, .flags = GW_REQUIRED, .help = "report"),
    PLACE(gw_tunnel_row),
};
static const struct gw_record TUNNEL_RECORD = RECORD("wind-tunnel result", gw_tunnel_row, TUNNEL);

static const struct gw_field ELEVATION[] = {
    F(gw_elevation_spec, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "name that openings refer to"),
    F(gw_elevation_spec, building, GW_T_TEXT, .help = "its building; may be left out when there is one"),
    NUM(gw_elevation_spec, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 10000), .help = "overall width"),
    F(gw_elevation_spec, ends, GW_T_RECORD, .record = &END_RECORD, .flags = GW_MANY | GW_REQUIRED,
      .example = ENDS_EXAMPLE, .help = "left and right end, seen from outside"),
    PLACE(gw_elevation_spec),
};
static const struct gw_record ELEVATION_RECORD = RECORD("elevation", gw_elevation_spec, ELEVATION);

static const struct gw_field OPENING_COLUMNS[] = {
    F(gw_opening_columns, mark, GW_T_TEXT, .help = "header of the mark"),
    F(gw_opening_columns, wall, GW_T_TEXT, .help = "header of the wall"),
    F(gw_opening_columns, building, GW_T_TEXT, .help = "header of the building"),
    F(gw_opening_columns, width, GW_T_TEXT, .help = "header of the width"),
    F(gw_opening_columns, height, GW_T_TEXT, .help = "header of the height"),
    F(gw_opening_columns, count, GW_T_TEXT, .help = "header of the count"),
    F(gw_opening_columns, sill, GW_T_TEXT, .help = "header of the sill elevation"),
    F(gw_opening_columns, offset, GW_T_TEXT, .help = "header of the offset"),
    F(gw_opening_columns, lite, GW_T_TEXT, .help = "header of the lite type"),
};
static const struct gw_record OPENING_COLUMNS_RECORD =
    RECORD("columns of the schedule", gw_opening_columns, OPENING_COLUMNS);
static const struct gw_field OPENINGS[] = {
    F(gw_openings, file, GW_T_TEXT, .flags = GW_REQUIRED, .help = "CSV file, beside the project file"),
    F(gw_openings, columns, GW_T_RECORD, .record = &OPENING_COLUMNS_RECORD, .help = "which header holds which field"),
    PLACE(gw_openings),
};
static const struct gw_record OPENINGS_RECORD = RECORD("openings", gw_openings, OPENINGS, .scalar_key = "file");

#define HEADER(key_, help_) F(gw_reading_columns, key_, GW_T_TEXT, .help = "header of " help_)
static const struct gw_field READING_COLUMNS[] = {
    HEADER(wall, "the wall"),
    HEADER(column, "the column of lites"),
    HEADER(story, "the story"),
    HEADER(row, "the row"),
    HEADER(edge, "the edge"),
    HEADER(line, "the vertical line"),
    HEADER(point, "the point along the edge"),
    HEADER(item, "what was measured"),
    HEADER(value, "the value"),
    HEADER(date, "the day of reading"),
    HEADER(installed, "the day of fastening"),
    HEADER(temperature, "the temperature"),
    HEADER(repaired, "whether it was repaired before it was read"),
    HEADER(sample, "how the place was chosen"),
    HEADER(by, "the crew"),
    HEADER(note, "notes"),
};
static const struct gw_record READING_COLUMNS_RECORD =
    RECORD("columns of the readings", gw_reading_columns, READING_COLUMNS);
static const struct gw_field READINGS[] = {
    F(gw_readings_rules, file, GW_T_TEXT, .help = "CSV file, beside the project file, where 'inspect' is given none"),
    F(gw_readings_rules, system, GW_T_TEXT,
      .help = "which of the candidates was hung, as 'candidates' lists it; may be left out when there is one"),
    F(gw_readings_rules, columns, GW_T_RECORD, .record = &READING_COLUMNS_RECORD,
      .help = "which header holds which field"),
    PLACE(gw_readings_rules),
};
static const struct gw_record READINGS_RECORD = RECORD("readings", gw_readings_rules, READINGS, .scalar_key = "file");

static const struct gw_also COUNTS[] = {{"qty", "count", NULL, GW_NOTE}, {"quantity", "count", NULL, GW_NOTE}, {0}};
static const struct gw_field OPENING[] = {
    F(gw_opening, mark, GW_T_TEXT, .flags = GW_REQUIRED, .help = "mark on the drawings"),
    F(gw_opening, wall, GW_T_TEXT,
      .help = "wall or elevation it stands in; absent: its ends are not known, taken in the edge zone"),
    F(gw_opening, building, GW_T_TEXT, .help = "its building; absent: its wall's, or the only one"),
    NUM(gw_opening, width, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 100), LIKELY(0.3, 12), .help = "width"),
    NUM(gw_opening, height, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.05, 100), LIKELY(0.3, 12), .help = "height"),
    F(gw_opening, count, GW_T_INTEGER, .also = COUNTS, .fallback = "1", .flags = GW_SILENT, LIMITS(1, 1000000),
      LIKELY(1, 5000), .help = "how many"),
    NUM(gw_opening, sill, GW_LENGTH, LIMITS(-100, 1000),
        .help = "sill above ground; absent: taken at the top of the building"),
    NUM(gw_opening, offset, GW_LENGTH, LIMITS(0, 10000),
        .help = "from the left edge of its wall, seen from outside, to its own; absent: taken in the edge zone"),
    F(gw_opening, lite, GW_T_TEXT, .help = "lite type"),
    PLACE(gw_opening),
};
const struct gw_record gw_opening_record = RECORD("opening", gw_opening, OPENING);

static const struct gw_field CORRECTION[] = {
    F(gw_correction, table, GW_T_TEXT, .flags = GW_REQUIRED, .help = "table, see 'galeward tables'"),
    F(gw_correction, row, GW_T_TEXT, .flags = GW_REQUIRED, .help = "row id"),
    F(gw_correction, column, GW_T_TEXT, .flags = GW_REQUIRED, .help = "column"),
    F(gw_correction, value, GW_T_TEXT, .flags = GW_REQUIRED, .help = "the number that replaces the table's"),
    F(gw_correction, reason, GW_T_TEXT, .flags = GW_REQUIRED, .help = "why"),
    F(gw_correction, by, GW_T_TEXT, .flags = GW_REQUIRED, .help = "who answers for it"),
    PLACE(gw_correction),
};
static const struct gw_record CORRECTION_RECORD = RECORD("correction", gw_correction, CORRECTION);

const struct gw_choice gw_disposition_choices[] = {
    {"no exception taken", GW_NO_EXCEPTION, "as submitted"},
    {"make corrections noted", GW_CORRECTIONS_NOTED, "with what is noted, without another submittal"},
    {"revise and resubmit", GW_REVISE, "changed or completed, and submitted again"},
    {"rejected", GW_REJECTED, "not as submitted, whatever is changed of it"},
    {"submit specified item", GW_SPECIFIED_ITEM, "what was specified, instead of what is offered"},
    {0}};
static const struct gw_field DECISION[] = {
    F(gw_decision, number, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(1, 100000), .help = "of the comment"),
    PICK(gw_decision, disposition, gw_disposition_choices, .flags = GW_REQUIRED, .help = "in the place of its own"),
    F(gw_decision, by, GW_T_TEXT, .flags = GW_REQUIRED, .help = "who decides"),
    F(gw_decision, reason, GW_T_TEXT, .flags = GW_REQUIRED, .help = "why"),
    PLACE(gw_decision),
};
static const struct gw_record DECISION_RECORD = RECORD("decision", gw_decision, DECISION);

static const struct gw_field OPTIONS[] = {
    PICK(gw_options, inward_height, QZ_RULES, .fallback = "top", .flags = GW_SILENT,
         .help = "where q_z of an element is taken"),
    PICK(gw_options, edge_zone, EDGE_RULES, .fallback = "any_part", .flags = GW_SILENT,
         .help = "when an element counts as zone 5"),
    PICK(gw_options, anchor_area, ANCHOR_AREAS, .fallback = "mullion", .flags = GW_SILENT,
         .help = "effective area of an anchor"),
    PICK(gw_options, strip_cap, gw_strip_cap_choices, .fallback = "none", .flags = GW_SILENT,
         .help = "cap of the edge strip of wide, low buildings"),
};
static const struct gw_record OPTIONS_RECORD = RECORD("options", gw_options, OPTIONS);

static const struct gw_choice ROOF_PARTS[] = {
    {"below roof", GW_BELOW_ROOF, "what the roof line cuts too"}, {"above roof", GW_ABOVE_ROOF, "on a parapet"}, {0}};
static const struct gw_field CHOSEN_LITE[] = {
    F(gw_chosen_lite, type, GW_T_TEXT, .help = "lite type"),
    F(gw_chosen_lite, name, GW_T_TEXT, .flags = GW_REQUIRED, .help = "one of its alternatives; null: its own make-up"),
    PLACE(gw_chosen_lite),
};
static const struct gw_record CHOSEN_LITE_RECORD =
    RECORD("make-up chosen", gw_chosen_lite, CHOSEN_LITE, .scalar_key = "name");
static const struct gw_field CHOSEN[] = {
    F(gw_chosen_row, candidate, GW_T_TEXT, .help = "name of the system; may be left out when there is one"),
    F(gw_chosen_row, wall, GW_T_TEXT, .flags = GW_REQUIRED, .help = "wall, or elevation of the schedule"),
    F(gw_chosen_row, zone, GW_T_INTEGER, .flags = GW_REQUIRED, LIMITS(4, 5), .help = "4, or 5: the edge strips"),
    PICK(gw_chosen_row, part, ROOF_PARTS, .fallback = "below roof", .flags = GW_SILENT, .help = "of the wall there"),
    F(gw_chosen_row, options, GW_T_TEXT, .flags = GW_MANY | GW_ALONE, .help = "names of options of the system"),
    F(gw_chosen_row, lites, GW_T_RECORD, .record = &CHOSEN_LITE_RECORD, .flags = GW_MANY | GW_NAMED,
      .help = "by lite type the name of one of its alternatives"),
    PLACE(gw_chosen_row),
};
static const struct gw_record CHOSEN_RECORD = RECORD("place chosen for", gw_chosen_row, CHOSEN);

static const struct gw_field PROJECT[] = {
    PICK(gw_project, galeward, gw_version_choices, .flags = GW_REQUIRED, .help = "version of the file format: 1"),
    PICK(gw_project, units, gw_units_choices, .also = gw_units_words,
         .help = "unit of bare numbers; absent: every number carries its unit"),
    F(gw_project, project, GW_T_RECORD, .record = &INFO_RECORD, .flags = GW_REQUIRED,
      .help = "name, number, risk category"),
    F(gw_project, codes, GW_T_RECORD, .record = &CODES_RECORD, .flags = GW_REQUIRED, .help = "codes and editions"),
    F(gw_project, site, GW_T_RECORD, .record = &gw_site_record, .flags = GW_REQUIRED, .help = "what the site does"),
    F(gw_project, buildings, GW_T_RECORD, .record = &gw_building_record, .flags = GW_MANY | GW_REQUIRED,
      .help = "each building, penthouse and setback"),
    F(gw_project, walls, GW_T_RECORD, .record = &gw_wall_record, .flags = GW_MANY, .help = "curtain walls on a grid"),
    F(gw_project, lites, GW_T_RECORD, .record = &LITE_RECORD, .flags = GW_MANY | GW_NAMED,
      .help = "lite types by name"),
    F(gw_project, glass, GW_T_RECORD, .record = &GLASS_RULES_RECORD, .help = "how glass is judged"),
    F(gw_project, framing, GW_T_RECORD, .record = &FRAMING_RULES_RECORD, .help = "how framing is judged"),
    F(gw_project, movement, GW_T_RECORD, .record = &MOVEMENT_RULES_RECORD, .help = "of the structure and of the metal"),
    F(gw_project, given, GW_T_RECORD, .record = &GIVEN_RECORD,
      .help = "pressures from the structural drawings: a list of rows, or with 'between'"),
    PICK(gw_project, pressures, GOVERNS, .fallback = "onerous", .flags = GW_SILENT,
         .help = "which pressures govern where some are given"),
    F(gw_project, lower_than_computed, GW_T_RECORD, .record = &ACCEPTANCE_RECORD,
      .help = "who accepts given pressures that are lower than the computed ones and govern; absent: nothing passes"),
    F(gw_project, wind_tunnel, GW_T_RECORD, .record = &TUNNEL_RECORD, .flags = GW_MANY,
      .help = "wind-tunnel results, subject to the code's floor"),
    F(gw_project, requirements, GW_T_RECORD, .record = &gw_requirements_record, .help = "what the specification asks"),
    F(gw_project, requirement_set_accepted, GW_T_RECORD, .record = &ACCEPTANCE_RECORD,
      .help = "who accepts a requirement set that asks for less than the site; absent: exit code 1"),
    F(gw_project, elevations, GW_T_RECORD, .record = &ELEVATION_RECORD, .flags = GW_MANY,
      .help = "faces that openings of the schedule stand in, besides walls"),
    F(gw_project, openings, GW_T_RECORD, .record = &OPENINGS_RECORD, .help = "schedule of openings"),
    F(gw_project, candidates, GW_T_TEXT, .flags = GW_MANY, .help = "system files, relative to this file"),
    F(gw_project, chosen, GW_T_RECORD, .record = &CHOSEN_RECORD, .flags = GW_MANY,
      .help =
          "a plan: what of each candidate is chosen where, as 'select -o plan.yaml' writes it; elsewhere nothing is"),
    F(gw_project, readings, GW_T_RECORD, .record = &READINGS_RECORD, .help = "what was measured on the wall"),
    F(gw_project, options, GW_T_RECORD, .record = &OPTIONS_RECORD, .help = "conventions of the take-off"),
    F(gw_project, assume, GW_T_RECORD, .record = &CORRECTION_RECORD, .flags = GW_MANY,
      .help = "corrections to the program's tables"),
    F(gw_project, decisions, GW_T_RECORD, .record = &DECISION_RECORD, .flags = GW_MANY,
      .help = "on comments of 'review': they are accepted, their consequence stays"),
    PLACE(gw_project),
};
const struct gw_record gw_project_record = RECORD("the project file", gw_project, PROJECT);

static const struct gw_field PLAN_FILE[] = {
    PICK(gw_plan_file, galeward, gw_version_choices, .flags = GW_REQUIRED, .help = "version of the file format: 1"),
    F(gw_plan_file, chosen, GW_T_RECORD, .record = &CHOSEN_RECORD, .flags = GW_MANY | GW_REQUIRED,
      .help = "what of each candidate is chosen where; elsewhere nothing is"),
};
const struct gw_record gw_plan_file_record = RECORD("the plan", gw_plan_file, PLAN_FILE, .help = "a file of --plan");
