/* A project with its schedule and candidates, loaded: everything one run works from. */
#ifndef GALEWARD_MODEL_H
#define GALEWARD_MODEL_H

#include "galeward/requirement_set.h"
#include "galeward/system.h"

#ifdef __cplusplus
extern "C" {
#endif

extern const struct gw_record gw_project_record, gw_system_record, gw_wall_record, gw_opening_record,
    gw_building_record, gw_requirement_set_record, gw_required_record;
extern const struct gw_record gw_layer_record, gw_air_record, gw_tube_record, gw_topography_record,
    gw_tested_fastening_record, gw_tested_record;
/* choices.c: words that more than one record knows. */
extern const struct gw_choice gw_units_choices[], gw_edition_choices[], gw_exposure_choices[], gw_component_choices[],
    gw_enclosure_choices[], gw_building_code_choices[], gw_risk_choices[], gw_test_choices[], gw_water_rule_choices[],
    gw_shape_choices[], gw_treatment_choices[], gw_interlayer_choices[], gw_glass_standard_choices[],
    gw_glass_route_choices[], gw_edge_finish_choices[], gw_span_choices[], gw_thread_choices[], gw_design_choices[],
    gw_metal_choices[], gw_floor_choices[], gw_strip_cap_choices[], gw_version_choices[], gw_choose_choices[],
    gw_level_choices[];
extern const struct gw_choice gw_debris_edition_choices[], gw_protection_choices[], gw_missile_choices[],
    gw_missile_size_choices[], gw_cycle_direction_choices[], gw_cycle_schedule_choices[], gw_proof_protocol_choices[],
    gw_sequence_test_choices[], gw_sequence_when_choices[], gw_drift_structure_choices[], gw_drift_path_choices[],
    gw_hazard_choices[], gw_condition_choices[], gw_blast_unit_choices[], gw_bolt_interaction_choices[],
    gw_disposition_choices[];
/* Other words for them. */
extern const struct gw_also gw_level_words[], gw_units_words[], gw_exposure_words[], gw_treatment_words[],
    gw_interlayer_words[], gw_edition_words[], gw_risk_words[], gw_glass_standard_words[];

/* Refuses an order of layers that is no lite, and keys that do not belong to a layer; `at`: which layer. */
enum gw_status gw_layers_check(size_t *at, const struct gw_layer *layers, size_t n, struct gw_engine *engine);
/* Of all of them, m, nominal; absent where a layer's is not given. */
double gw_layers_thickness(const struct gw_layer *layers, size_t n);
/* Layers, from outside to inside, as panes and cavities; checks them first. Their texts for reports:
 * "6 mm heat strengthened + 12 mm cavity + 6 mm annealed"; in US units as the trade names them, "1/2 in (12 mm)
 * cavity". What has no name there is a quantity. */
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
/* A file that holds a plan alone. */
struct gw_plan_file {
    int galeward;
    GW_LIST(struct gw_chosen_row) chosen;
};
/* Taken in every place: an option of whichever candidates have it, or an alternative of a lite type. */
struct gw_with {
    const char *lite; /* NULL: an option */
    const char *name;
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
    const char *plan_file; /* whose rows stand in the place of project.chosen; NULL */
    struct gw_with *withs; /* taken in every place besides */
    size_t n_withs;
    const struct gw_source *source; /* what it was loaded from, for gw_model_reload */
    const char *const *changes;
    size_t n_changes;
    const char *const *moves; /* settings put over `changes` */
    size_t n_moves;
    double pressures;                     /* every design pressure of the take-off is so many times its own; 1 */
    const struct gw_requirement_set *set; /* what is judged by instead of what the site asks; NULL: the site alone */
    const struct gw_source *set_source;
    bool judges_ages;                  /* of reports, by the set's limit: those of a submittal */
    const struct gw_blast *site_blast; /* under a set: as the project has it; NULL: it has none */
    const struct gw_model *tested; /* whose lite types tests name, where this one's glass is another; NULL: its own */
};

/* Loads a project ("-": standard input) with its schedule and candidates; all mistakes of all files are reported. True
 * when there was no error. `changes` are "path=value" settings applied to the document before loading (may be NULL). */
bool gw_model_load(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags, const char *path,
                   const char *const *changes, size_t n_changes);
/* The same from text in memory; files that it names lie beside source->name. */
bool gw_model_load_source(struct gw_model *model, struct gw_arena *arena, struct gw_diags *diags,
                          const struct gw_source *source, const char *const *changes, size_t n_changes);
/* Takes the rows of that file in the place of the project's `chosen`. False after a diagnostic. */
bool gw_model_take_plan(struct gw_model *model, const char *path);
extern const struct gw_record gw_plan_file_record;
/* A requirement set for a model that loaded and is not taken off yet: from now on it is judged by. All mistakes of the
 * file are reported; a file of the project that has changed since is a warning. True when there was no error. */
bool gw_model_require(struct gw_model *model, const char *path);
bool gw_model_require_source(struct gw_model *model, const struct gw_source *source);
/* The same project, its files read anew, on other tables; they must outlive it. The project's own corrections stand,
 * and what was chosen. */
bool gw_model_reload(struct gw_model *model, const struct gw_model *of, struct gw_arena *arena, struct gw_diags *diags,
                     const struct gw_tables *tables);
/* The same project, its files read anew, with settings put over those it was loaded with; they must outlive it. */
bool gw_model_move(struct gw_model *model, const struct gw_model *of, struct gw_arena *arena, struct gw_diags *diags,
                   const char *const *moves, size_t n_moves);
/* The option by its place in the file, below GW_OPTION_LIMIT. */
static inline gw_option_set gw_option_bit(size_t option) { return (gw_option_set)1 << option; }
/* The option and what it requires, directly or by what it requires. */
gw_option_set gw_option_with_required(const struct gw_system *system, size_t option);
/* Never taken together: of one group, or they set one key (but frame_weight), or keys of one insert, tube or screw, to
 * different values. */
bool gw_options_exclude(const struct gw_system *system, size_t a, size_t b);
/* Those that change something under a key of the system file; of frame_weight also those that change metal. */
gw_option_set gw_options_touching(const struct gw_system *system, const char *key);
/* Of options that are taken those that change metal or speak of its weight, where nobody says what the framing weighs
 * with all of them; else none. */
gw_option_set gw_options_unweighed(const struct gw_system *system, gw_option_set taken);
/* `base` with options taken: changes merge in the file's order, what is added comes last. What `base` points to is
 * shared. Where they change metal, frame_weight is what one of them states, which requires the others; else it is
 * absent and `unweighed` says with which. False after a diagnostic: together they make no valid file. */
bool gw_system_with(struct gw_system *out, struct gw_model *model, const struct gw_system *base, gw_option_set taken);
/* m, how deep an insert of that inertia and section modulus is, 2 I/S, if it is as deep on both sides of its axis; one
 * that is not is less deep, and never less than I/S. Absent: an option adds it as numbers. */
double gw_insert_depth(const struct gw_insert_spec *insert);
/* It may not fit: it is deeper so than the tube is inside. False where either is not known. */
bool gw_insert_too_deep(const struct gw_member_spec *spec);
/* A part that is another in `with` than in `without`, by the keys of `change`, and still the one that was tested. */
bool gw_part_stays_tested(enum gw_system_part part, const struct gw_node *change, const struct gw_system *with,
                          const struct gw_system *without);
const struct gw_building *gw_model_building(const struct gw_model *model, const char *name);
/* The wall that meets another at its end (0 left, 1 right, seen from outside), named at either of them; NULL. */
const char *gw_model_meets(const struct gw_model *model, const struct gw_wall *wall, size_t end);
/* breach.c: the debris case of the site's glazing whose lowest edge stands at a height, by code, whatever the project
 * asks for; the edition may be unset. NULL: nothing is waived for that building. */
void gw_model_debris_case(const struct gw_model *model, double height, struct gw_debris_case *out);
bool gw_model_waives(const struct gw_model *model); /* something, for sure */
const struct gw_waiver *gw_model_waiver(const struct gw_model *model, const struct gw_building *building);
/* Its pressures go by another enclosure than its own, of which given ones and a wind tunnel's know nothing. */
bool gw_model_breached(const struct gw_model *model, const struct gw_building *building);
/* Openings of a schedule that name no wall are counted under this name. */
#define GW_WALL_UNKNOWN "schedule"
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
/* Layer by layer the same glass: nominal thicknesses by their designation, cavities and interlayers as they are spelled
 * in inches and in millimeters. */
bool gw_layers_alike(const struct gw_tables *tables, const struct gw_layer *a, size_t n, const struct gw_layer *b,
                     size_t m);
/* The same of a name in the record of a test: what was tested stays what it was, whatever glass is judged. */
const struct gw_lite_type *gw_model_tested_lite(const struct gw_model *model, const char *name);

#ifdef __cplusplus
}
#endif

#endif
