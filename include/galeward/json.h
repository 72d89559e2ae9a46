/* JSON written a piece at a time; commas, quotes and escapes take care of themselves. */
#ifndef GALEWARD_JSON_H
#define GALEWARD_JSON_H

#include "galeward/record.h"

#ifdef __cplusplus
extern "C" {
#endif

struct gw_json {
    struct gw_text *out;
    bool pretty, pending; /* pending: a comma is due before the next value */
    unsigned depth;
    enum gw_units shown;   /* of quantities in sentences */
    enum gw_units derived; /* of the steps of a derivation; both are GW_SI at first */
};

void gw_json_init(struct gw_json *json, struct gw_text *out, bool pretty);
void gw_json_open(struct gw_json *json, char bracket); /* '{' or '[' */
void gw_json_close(struct gw_json *json, char bracket);
void gw_json_key(struct gw_json *json, const char *key);
void gw_json_text(struct gw_json *json, const char *text); /* NULL: null */
void gw_json_number(struct gw_json *json, double value);   /* 12 digits; not finite: null */
void gw_json_integer(struct gw_json *json, long long value);
void gw_json_bool(struct gw_json *json, bool value);
void gw_json_null(struct gw_json *json);
/* Members of an output record into an open object: absent values are left out when `skip_absent`, else null. */
void gw_json_record(struct gw_json *json, const struct gw_record *record, const void *value, bool skip_absent);
/* Opens a result: {"galeward": 1, "version": ... */
void gw_json_result(struct gw_json *json);
/* A document node as it was given. */
void gw_json_node(struct gw_json *json, const struct gw_node *node);

#ifdef __cplusplus
}
#endif

#endif
