/* Shared by the files of src/model only. */
#ifndef GALEWARD_MODEL_INTERNAL_H
#define GALEWARD_MODEL_INTERNAL_H

#include "galeward/model.h"

/* What no single field can tell: references, sums, orders. Faults go to the model's diagnostics. */
void gw_validate_project(struct gw_model *model);
void gw_validate_openings(struct gw_model *model);
/* validate.c: of `layers` at that node. What is missing is asked for by the check; what is wrong is a fault here. */
void gw_check_layers(struct gw_model *model, const struct gw_node *node, const struct gw_layer *layers, size_t n);
void gw_validate_given(struct gw_model *model);
/* doubts.c: warnings. */
void gw_doubt_wall(struct gw_model *model, const struct gw_wall *wall);
void gw_doubt_openings(struct gw_model *model);
void gw_validate_system(struct gw_model *model, const struct gw_system *system);
/* records_requirements.c */
extern const struct gw_record gw_requirements_record;
/* load.c: a file that was read; how the records of a file are loaded, whose root tells the units of bare numbers. */
void gw_note_input(struct gw_model *model, const struct gw_source *source);
struct gw_load gw_loader(struct gw_model *model, const struct gw_node *root);
/* A file named in another one, relative to that; NULL after a fault at the name. */
const struct gw_source *gw_read_beside(struct gw_model *model, const char *from, const char *file,
                                       const struct gw_node *at);
/* A system file; `named_in`: the key that names it. False after a fault. */
bool gw_load_system(struct gw_model *model, const struct gw_source *source, const char *named_in,
                    struct gw_system *system);
/* options.c: names, what is required, what it costs; then what a price counts is known. False after a fault. `preset`:
 * of the file's bare numbers. */
bool gw_validate_options(struct gw_model *model, struct gw_system *system, enum gw_units preset);
/* An option takes no recorded failure away. `with`: the system with that option. */
void gw_keep_ratings(struct gw_model *model, const struct gw_system *system, const struct gw_system *with,
                     size_t option);
/* variant.c: values of a file written alike. */
bool gw_same_value(const struct gw_node *a, const struct gw_node *b);
/* weighed.c: adds metal, or changes a section or a pressure plate from what the system has. */
bool gw_option_changes_metal(const struct gw_system *system, const struct gw_system_option *o);
/* The option whose frame_weight holds with all of these that bear on it: they are itself and what it requires. NULL: no
 * one's does. */
const struct gw_system_option *gw_option_weighing(const struct gw_system *system, gw_option_set taken);
/* Warns of inserts that may not fit in their tubes; of an option, where they did without it. */
void gw_doubt_inserts(struct gw_model *model, const struct gw_system *system, const struct gw_system *without,
                      const struct gw_node *at);
/* Warns of an option that only adds metal and weighs less. `with`: the system with that option. */
void gw_doubt_weight(struct gw_model *model, const struct gw_system *system, const struct gw_system *with,
                     size_t option);
void gw_validate_alternatives(struct gw_model *model, struct gw_lite_type *type);
/* price.c: `cost` of a node, in one of the dimensions that it may have; a bare number is of the first. */
struct gw_priced {
    const char *of, *example;
    enum gw_dim dims[2];
    size_t n;
};
void gw_settle_price(struct gw_price *out, struct gw_model *model, const struct gw_node *node, enum gw_units preset,
                     const struct gw_priced *may);
/* validate.c: shared with the files that follow. */
bool gw_same_length(double a, double b);
const char *gw_shown(struct gw_model *model, enum gw_dim dim, double si);     /* the same of any quantity */
const char *gw_feet(struct gw_model *model, double si);                       /* in the units of the file */
const struct gw_node *gw_at_key(const struct gw_node *node, const char *key); /* its value; else the node */
/* Was anything already said of the value, its key, or what it holds? What follows from a fault is no second fault. */
bool gw_holds_fault(const struct gw_model *model, const struct gw_node *node);
/* A key of the mapping was not known: what seems to be missing may only be misspelled. */
bool gw_has_unknown_key(const struct gw_model *model, const struct gw_node *mapping);
void gw_check_building(struct gw_model *model, const struct gw_node *node, const char *name);
/* Rules of the site and of movements (validate_site.c). */
void gw_validate_site(struct gw_model *model);
void gw_check_lite(struct gw_model *model, const struct gw_node *node, const char *name);
/* validate_system.c: its framing. */
void gw_validate_framing(struct gw_model *model, const struct gw_system *system);
/* validate_installation.c: clamp, gasket, drainage, its own limits. */
void gw_validate_installation(struct gw_model *model, const struct gw_system *system);
/* corners.c: two ends of a face, each one thing; that named walls meet; what is taken where none is named. */
void gw_check_ends(struct gw_model *model, const struct gw_node *face, const struct gw_end *ends, size_t n);
void gw_check_openings_ends(struct gw_model *model, const struct gw_node *face, const struct gw_end *ends, size_t n);
void gw_check_corners(struct gw_model *model, const struct gw_wall *wall);
/* Of a wall what verdicts may hang on. */
void gw_assume_of_wall(struct gw_model *model, const struct gw_wall *wall, struct gw_message text);
void gw_assume_corners(struct gw_model *model, const struct gw_wall *wall);
/* settle.c: editions and options where they are not given; then the conventions, once the project has been validated.
 */
void gw_settle_project(struct gw_model *model);
void gw_assume_conventions(struct gw_model *model);
/* breach.c: what is waived against the code, and what that does to the pressures. */
void gw_settle_breach(struct gw_model *model);
/* validate.c: where every candidate says how far apart its screws are, no verdict goes by what is usual. */
void gw_settle_screws(struct gw_model *model);
void gw_assume_system(struct gw_model *model, const struct gw_system *system);
/* The project's `assume` rows into a copy of the tables. */
void gw_correct_tables(struct gw_model *model);

#endif
