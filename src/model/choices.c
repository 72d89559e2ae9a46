/* The words of a choice that more than one record knows: the files, the cases of calc, the tables and the reports. */
#include "galeward/model.h"

const struct gw_choice gw_level_choices[] = {
    {"strength", GW_LEVEL_STRENGTH, "1.0 W"}, {"asd", GW_LEVEL_ASD, "0.6 W"}, {0}};
const struct gw_choice gw_units_choices[] = {{"us", GW_US, "bare numbers in ft, psf, mph; thicknesses in in"},
                                             {"si", GW_SI, "bare numbers in m, Pa, m/s; thicknesses in mm"},
                                             {0}};
const struct gw_also gw_level_words[] = {
    {"ultimate", "strength", "pressures for combinations with 1.0 W, not multiplied by 0.6", GW_WARNING},
    {"LRFD", "strength", "pressures for combinations with 1.0 W, not multiplied by 0.6", GW_WARNING},
    {"strength level", "strength", NULL, GW_NOTE},
    {"allowable", "asd", "allowable-stress pressures, taken as multiplied by 0.6 already", GW_WARNING},
    {"allowable stress", "asd", "allowable-stress pressures, taken as multiplied by 0.6 already", GW_WARNING},
    {"service", NULL,
     "it may be either: write strength for pressures of combinations with 1.0 W, asd for those multiplied by 0.6", 0},
    {"nominal", NULL,
     "it may be either: write strength for pressures of combinations with 1.0 W, asd for those multiplied by 0.6", 0},
    {"ULS", NULL,
     "an ultimate limit state has load factors of its code in it: write strength only for pressures of combinations "
     "with 1.0 W of ASCE 7, asd for those multiplied by 0.6",
     0},
    {"factored", NULL,
     "by which factor? Write strength only for pressures of combinations with 1.0 W of ASCE 7, asd for those "
     "multiplied by 0.6",
     0},
    {"characteristic", NULL,
     "a characteristic value goes by the wind of another return period: write strength for pressures of combinations "
     "with 1.0 W of ASCE 7, asd for those multiplied by 0.6",
     0},
    {"SLS", NULL,
     "a serviceability limit state is neither: write strength for pressures of combinations with 1.0 W, asd for those "
     "multiplied by 0.6",
     0},
    {"design", NULL,
     "it may be either: write strength for pressures of combinations with 1.0 W, asd for those multiplied by 0.6", 0},
    {"working", NULL, "it may be either: write asd for pressures multiplied by 0.6, strength for others", 0},
    {0}};
const struct gw_also gw_units_words[] = {
    {"metric", "si", NULL, GW_NOTE}, {"imperial", "us", NULL, GW_NOTE}, {"inch", "us", NULL, GW_NOTE}, {0}};
const struct gw_also gw_exposure_words[] = {
    {.says = "exposures of ASCE 7 26.7 are B (urban, suburban, wooded), C (open terrain), D (flat, water); terrain "
             "categories of other codes are others"}};
const struct gw_also gw_treatment_words[] = {{"toughened", "tempered", NULL, GW_NOTE},
                                             {"fully tempered", "tempered", NULL, GW_NOTE},
                                             {"heat soaked tempered", "tempered", NULL, GW_NOTE},
                                             {"semi tempered", "heat_strengthened", NULL, GW_NOTE},
                                             {"half tempered", "heat_strengthened", NULL, GW_NOTE},
                                             {"float", "annealed", NULL, GW_NOTE},
                                             {0}};
const struct gw_also gw_interlayer_words[] = {
    {"ionomer", "ionoplast", NULL, GW_NOTE},
    {.says = "a stiff ionomer is ionoplast; any other, acoustic or stiff PVB too, is other with its shear_modulus"}};
const struct gw_also gw_edition_words[] = {{"7-10", "asce7-10", NULL, GW_NOTE},
                                           {"7-16", "asce7-16", NULL, GW_NOTE},
                                           {"7-22", "asce7-22", NULL, GW_NOTE},
                                           {"asce/sei 7-10", "asce7-10", NULL, GW_NOTE},
                                           {"asce/sei 7-16", "asce7-16", NULL, GW_NOTE},
                                           {"asce/sei 7-22", "asce7-22", NULL, GW_NOTE},
                                           {0}};
const struct gw_also gw_risk_words[] = {{"1", "I", NULL, GW_NOTE},
                                        {"2", "II", NULL, GW_NOTE},
                                        {"3", "III", NULL, GW_NOTE},
                                        {"4", "IV", NULL, GW_NOTE},
                                        {"category I", "I", NULL, GW_NOTE},
                                        {"category II", "II", NULL, GW_NOTE},
                                        {"category III", "III", NULL, GW_NOTE},
                                        {"category IV", "IV", NULL, GW_NOTE},
                                        {0}};
const struct gw_also gw_glass_standard_words[] = {
    {"ASTM E1300-04", "e1300-04", NULL, GW_NOTE},   {"ASTM E1300-09a", "e1300-09a", NULL, GW_NOTE},
    {"ASTM E1300-12a", "e1300-12a", NULL, GW_NOTE}, {"ASTM E1300-16", "e1300-16", NULL, GW_NOTE},
    {"ASTM E1300-24", "e1300-24", NULL, GW_NOTE},   {0}};
const struct gw_choice gw_edition_choices[] = {
    {"asce7-10", GW_ASCE7_10, ""}, {"asce7-16", GW_ASCE7_16, ""}, {"asce7-22", GW_ASCE7_22, ""}, {0}};
const struct gw_choice gw_exposure_choices[] = {{"B", GW_EXPOSURE_B, "urban, suburban, wooded"},
                                                {"C", GW_EXPOSURE_C, "open terrain"},
                                                {"D", GW_EXPOSURE_D, "flat unobstructed, water"},
                                                {0}};
const struct gw_choice gw_component_choices[] = {
    {"fixed", GW_FIXED, ""}, {"vent", GW_VENT, ""}, {"door", GW_DOOR, ""}, {"spandrel", GW_SPANDREL, ""}, {0}};
const struct gw_choice gw_enclosure_choices[] = {{"enclosed", GW_ENCLOSED, ""},
                                                 {"partially_enclosed", GW_PARTIALLY_ENCLOSED, ""},
                                                 {"partially_open", GW_PARTIALLY_OPEN, ""},
                                                 {"open", GW_OPEN, ""},
                                                 {0}};
const struct gw_choice gw_building_code_choices[] = {{"ibc-2012", GW_IBC_2012, ""}, {"ibc-2015", GW_IBC_2015, ""},
                                                     {"ibc-2018", GW_IBC_2018, ""}, {"ibc-2021", GW_IBC_2021, ""},
                                                     {"ibc-2024", GW_IBC_2024, ""}, {0}};
const struct gw_choice gw_risk_choices[] = {
    {"I", GW_RISK_I, ""}, {"II", GW_RISK_II, ""}, {"III", GW_RISK_III, ""}, {"IV", GW_RISK_IV, ""}, {0}};
const struct gw_choice gw_test_choices[] = {{"structural", GW_TEST_STRUCTURAL, "ASTM E330"},
                                            {"air", GW_TEST_AIR, "ASTM E283"},
                                            {"water", GW_TEST_WATER, "ASTM E331"},
                                            {"sway", GW_TEST_SWAY, "AAMA 501.4, 501.6"},
                                            {"impact", GW_TEST_IMPACT, "ASTM E1886, E1996"},
                                            {"blast", GW_TEST_BLAST, "ASTM F1642"},
                                            {"other", GW_TEST_OTHER, "any number with a name"},
                                            {0}};
const struct gw_choice gw_water_rule_choices[] = {{"R", GW_WATER_R, ""},
                                                  {"LC", GW_WATER_LC, ""},
                                                  {"CW", GW_WATER_CW, ""},
                                                  {"AW", GW_WATER_AW, ""},
                                                  {"curtain_wall", GW_WATER_CURTAIN_WALL, ""},
                                                  {0}};
const struct gw_choice gw_choose_choices[] = {
    {"zone", GW_CHOOSE_ZONE, "one zone of one wall, below or above the roof line"},
    {"wall", GW_CHOOSE_WALL, "one wall"},
    {"project", GW_CHOOSE_PROJECT, "the whole project"},
    {0}};
const struct gw_choice gw_version_choices[] = {{"1", 1, ""}, {0}};
const struct gw_choice gw_shape_choices[] = {
    {"ridge", GW_RIDGE, ""}, {"escarpment", GW_ESCARPMENT, ""}, {"hill", GW_HILL, "axisymmetric"}, {0}};
const struct gw_choice gw_floor_choices[] = {{"edition", GW_FLOOR_EDITION, "as the edition has it"},
                                             {"always", GW_FLOOR_ALWAYS, "K_z at least 0.70 in exposure B"},
                                             {"never", GW_FLOOR_NEVER, "from 15 ft up"},
                                             {0}};
const struct gw_choice gw_strip_cap_choices[] = {
    {"none", GW_STRIP_CAP_NONE, "the wider strip"},
    {"edition", GW_STRIP_CAP_EDITION, "0.8 h where the edition has it: asce7-16 and later, wide, low, flat buildings"},
    {0}};
const struct gw_choice gw_glass_standard_choices[] = {{"e1300-04", GW_E1300_04, ""},   {"e1300-09a", GW_E1300_09A, ""},
                                                      {"e1300-12a", GW_E1300_12A, ""}, {"e1300-16", GW_E1300_16, ""},
                                                      {"e1300-24", GW_E1300_24, ""},   {0}};
const struct gw_choice gw_glass_route_choices[] = {
    {"lower", GW_ROUTE_LOWER, "the lower resistance of the two"},
    {"standard", GW_ROUTE_STANDARD, "the standard's factors"},
    {"first_principles", GW_ROUTE_PRINCIPLES, "plies and cavities as they share the load"},
    {0}};
const struct gw_choice gw_span_choices[] = {{"width", GW_SPAN_WIDTH, ""}, {"height", GW_SPAN_HEIGHT, ""}, {0}};
const struct gw_choice gw_treatment_choices[] = {
    {"annealed", GW_ANNEALED, ""}, {"heat_strengthened", GW_HEAT_STRENGTHENED, ""}, {"tempered", GW_TEMPERED, ""}, {0}};
const struct gw_choice gw_design_choices[] = {
    {"asd", GW_DESIGN_ASD, "allowable strength"}, {"lrfd", GW_DESIGN_LRFD, "load and resistance factors"}, {0}};
const struct gw_choice gw_metal_choices[] = {{"6063-T5", GW_METAL_6063_T5, ""},
                                             {"6063-T6", GW_METAL_6063_T6, ""},
                                             {"6061-T6", GW_METAL_6061_T6, ""},
                                             {"6061-T6511", GW_METAL_6061_T6, "as 6061-T6"},
                                             {"6005A-T61", GW_METAL_6005A_T61, ""},
                                             {"6105-T5", GW_METAL_6105_T5, ""},
                                             {"A36", GW_METAL_A36, "steel"},
                                             {"A500-B", GW_METAL_A500_B, "steel, rectangular"},
                                             {"A500-C", GW_METAL_A500_C, "steel, rectangular"},
                                             {"A992", GW_METAL_A992, "steel"},
                                             {"A572-50", GW_METAL_A572_50, "steel"},
                                             {"304", GW_METAL_STAINLESS_304, "stainless steel"},
                                             {"316", GW_METAL_STAINLESS_316, "stainless steel"},
                                             {0}};
const struct gw_choice gw_blast_unit_choices[] = {
    {"inner_alone", GW_BLAST_INNER_ALONE, "of an insulating unit, the inner pane takes the whole load"}, {0}};
/* Best first. */
const struct gw_choice gw_hazard_choices[] = {{"no_break", GW_HAZARD_NO_BREAK, ""},
                                              {"no_hazard", GW_HAZARD_NO_HAZARD, ""},
                                              {"minimal", GW_HAZARD_MINIMAL, ""},
                                              {"very_low", GW_HAZARD_VERY_LOW, ""},
                                              {"low", GW_HAZARD_LOW, ""},
                                              {"high", GW_HAZARD_HIGH, ""},
                                              {0}};
const struct gw_choice gw_condition_choices[] = {{"1", GW_CONDITION_1, ""},
                                                 {"2", GW_CONDITION_2, ""},
                                                 {"3a", GW_CONDITION_3A, ""},
                                                 {"3b", GW_CONDITION_3B, ""},
                                                 {"4", GW_CONDITION_4, ""},
                                                 {"5", GW_CONDITION_5, ""},
                                                 {0}};
const struct gw_choice gw_debris_edition_choices[] = {{"asce7-05", GW_DEBRIS_ASCE7_05, ""},
                                                      {"asce7-10", GW_DEBRIS_ASCE7_10, ""},
                                                      {"asce7-16", GW_DEBRIS_ASCE7_16, ""},
                                                      {"asce7-22", GW_DEBRIS_ASCE7_22, ""},
                                                      {0}};
const struct gw_choice gw_protection_choices[] = {{"none", GW_PROTECTION_NONE, ""},
                                                  {"basic", GW_PROTECTION_BASIC, ""},
                                                  {"enhanced", GW_PROTECTION_ENHANCED, ""},
                                                  {0}};
const struct gw_choice gw_missile_choices[] = {{"A", GW_MISSILE_A, ""}, {"B", GW_MISSILE_B, ""},
                                               {"C", GW_MISSILE_C, ""}, {"D", GW_MISSILE_D, ""},
                                               {"E", GW_MISSILE_E, ""}, {0}};
const struct gw_choice gw_missile_size_choices[] = {
    {"small", GW_SMALL_MISSILE, ""}, {"large", GW_LARGE_MISSILE, ""}, {0}};
const struct gw_choice gw_cycle_direction_choices[] = {
    {"inward", GW_CYCLE_INWARD, ""}, {"outward", GW_CYCLE_OUTWARD, ""}, {0}};
const struct gw_choice gw_cycle_schedule_choices[] = {
    {"impact", GW_CYCLES_IMPACT, "after an impact test"},
    {"fatigue", GW_CYCLES_FATIGUE, "Florida's, for cladding without an impact test"},
    {0}};
const struct gw_choice gw_thread_choices[] = {
    {"coarse", GW_THREAD_COARSE, "machine thread"}, {"spaced", GW_THREAD_SPACED, "tapping thread"}, {0}};
const struct gw_choice gw_interlayer_choices[] = {{"pvb", GW_INTERLAYER_PVB, "polyvinyl butyral"},
                                                  {"ionoplast", GW_INTERLAYER_IONOPLAST, ""},
                                                  {"other", GW_INTERLAYER_OTHER, "give shear_modulus"},
                                                  {0}};
const struct gw_choice gw_drift_structure_choices[] = {
    {"low_rise", GW_DRIFT_LOW_RISE, "at most 4 stories, no masonry shear walls, finishes detailed for the drift"},
    {"masonry_cantilever", GW_DRIFT_MASONRY_CANTILEVER, "masonry cantilever shear walls"},
    {"masonry", GW_DRIFT_MASONRY, "other masonry shear walls"},
    {"other", GW_DRIFT_OTHER, ""},
    {0}};
const struct gw_choice gw_drift_path_choices[] = {
    {"racking", GW_PATH_RACKING, "the frame racks evenly over the story"},
    {"all_in_lite", GW_PATH_ALL_IN_LITE, "stiff bands above and below the glazed one"},
    {"sliding_head", GW_PATH_SLIDING_HEAD, "a receptor or track slides, the rest racks the frame"},
    {"sliding", GW_PATH_SLIDING, "unitized, the stack joint slides"},
    {"tilting", GW_PATH_TILTING, "unitized, the units tilt"},
    {0}};
const struct gw_choice gw_edge_finish_choices[] = {
    {"clean_cut", GW_CLEAN_CUT, ""}, {"seamed", GW_SEAMED, ""}, {"polished", GW_POLISHED, ""}, {0}};
const struct gw_choice gw_proof_protocol_choices[] = {
    {"e330", GW_PROOF_E330, "ASTM E330"}, {"tas202", GW_PROOF_TAS202, "Florida's"}, {0}};
const struct gw_choice gw_sequence_test_choices[] = {{"preload", GW_STEP_PRELOAD, ""},
                                                     {"air", GW_STEP_AIR, ""},
                                                     {"water", GW_STEP_WATER, ""},
                                                     {"dynamic_water", GW_STEP_DYNAMIC, ""},
                                                     {"design_inward", GW_STEP_DESIGN_IN, ""},
                                                     {"design_outward", GW_STEP_DESIGN_OUT, ""},
                                                     {"sway", GW_STEP_SWAY, ""},
                                                     {"thermal_cycling", GW_STEP_THERMAL, ""},
                                                     {"proof_inward", GW_STEP_PROOF_IN, ""},
                                                     {"proof_outward", GW_STEP_PROOF_OUT, ""},
                                                     {"sway_safety", GW_STEP_SAFETY, ""},
                                                     {0}};
const struct gw_choice gw_sequence_when_choices[] = {{"always", GW_WHEN_ALWAYS, ""},
                                                     {"dynamic", GW_WHEN_DYNAMIC, ""},
                                                     {"sway", GW_WHEN_SWAY, ""},
                                                     {"thermal", GW_WHEN_THERMAL, ""},
                                                     {0}};
const struct gw_choice gw_bolt_interaction_choices[] = {
    {"none", GW_INTERACTION_NONE, "each for itself, by the report"},
    {"linear", GW_INTERACTION_LINEAR, "straight sum of the ratios"},
    {"elliptic", GW_INTERACTION_ELLIPTIC, "root of the sum of their squares, by the report"},
    {"steel_bolt", GW_INTERACTION_STEEL_BOLT, "steel bolts by AISC 360 J3.7: the ratios add up to 1.3"},
    {0}};
