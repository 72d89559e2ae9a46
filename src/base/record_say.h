/* What the loader of records says of values. */
#ifndef GALEWARD_RECORD_SAY_H
#define GALEWARD_RECORD_SAY_H

#include "galeward/record.h"

void gw_load_say(struct gw_load *load, const char *code, const struct gw_field *field, const struct gw_node *node,
                 const char *message);
/* A short form goes by the key that the user wrote. */
const char *gw_load_label(const struct gw_field *field, const struct gw_node *node);
const char *gw_kind_word(const struct gw_node *node);
/* What a number out of its range may have been meant as: "; did you mean 12 mm?", or "". */
const char *gw_range_hint(struct gw_load *load, const struct gw_field *field, const struct gw_node *node);
const char *gw_article(const char *noun);
/* True of a scalar that is not empty; else says that `what` is wanted. */
bool gw_want_scalar(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *what);
/* That the node is none of the field's choices, and why (the other word that it is, or the last), or the nearest. */
void gw_say_no_choice(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                      const struct gw_also *also);
/* Returns the field that was meant, perhaps. */
const struct gw_field *gw_say_unknown_key(struct gw_load *load, const struct gw_record *record,
                                          const struct gw_node *child);
/* "[1,5 m]" is two values to YAML, and may have been meant as one: true after saying so. */
bool gw_say_split_number(struct gw_load *load, const struct gw_field *field, const struct gw_node *item);
/* A limit in the reader's units, with so many digits. */
const char *gw_show_limit(struct gw_load *load, const struct gw_field *field, double si, int digits);
void gw_say_quantity_fault(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                           enum gw_quantity_fault fault, size_t at);
/* ": " and what to write for a whole number that is none, or "". */
const char *gw_whole_hint(struct gw_load *load, const char *text);

#endif
