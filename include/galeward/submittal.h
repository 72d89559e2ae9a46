/* A submittal: what is offered now, the reports behind it, the glass schedule and the dimensions of the drawings, as
 * its file gives them.
 *
 * SI; GW_ABSENT, NULL, GW_NO_INTEGER and UNSET choices are what the file leaves out. Field tables and rules:
 * src/model/submittal.c. */
#ifndef GALEWARD_SUBMITTAL_H
#define GALEWARD_SUBMITTAL_H

#include "galeward/model.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_report_by { GW_REPORT_BY_UNSET, GW_BY_INDEPENDENT, GW_BY_MANUFACTURER, GW_BY_UNKNOWN };
enum gw_report_place { GW_REPORT_PLACE_UNSET, GW_IN_LABORATORY, GW_IN_THE_FIELD, GW_BY_COMPUTING };
enum gw_report_pages { GW_PAGES_UNSET, GW_PAGES_COMPLETE, GW_PAGES_SUMMARY, GW_PAGES_UNKNOWN };

struct gw_listed_make_up {
    GW_LIST(struct gw_layer) layers;
};
/* What a report states of make-ups, reinforcement and fastening counts as recorded by the ratings that name it. */
struct gw_submitted_report {
    const char *id, *standard;
    const char *date; /* 2019-05-02 */
    enum gw_report_by by;
    enum gw_report_place place;
    const char *system;
    GW_LIST(struct gw_listed_make_up) make_ups;
    const char *reinforcement; /* "none", or what it was */
    const struct gw_tested_fastening *fastening;
    enum gw_report_pages pages;
    const struct gw_node *node;
};

struct gw_glass_mark {
    const char *mark, *lite;
    GW_LIST(struct gw_layer) layers;
    const struct gw_lite_type *type; /* of the project; NULL after a fault */
    const struct gw_node *node;
};

/* What a drawing gives: an item of galeward/items.h, or a dimension that the take-off has. */
enum gw_shop_kind {
    GW_SHOP_ITEM,
    GW_SHOP_SPAN,          /* of a mullion between its anchors */
    GW_SHOP_MODULE,        /* between mullions */
    GW_SHOP_MULLION_DEPTH, /* of its section */
    GW_SHOP_ANCHOR_SPACING /* along the mullion */
};
struct gw_shop_value {
    const char *sheet, *wall, *item;
    int zone; /* GW_NO_INTEGER: the whole wall */
    const char *value;
    /* what these came to */
    enum gw_shop_kind what;
    enum gw_item_id id; /* GW_SHOP_ITEM alone */
    struct gw_item_value read;
    const struct gw_node *node;
};
/* As people read it: "12 in". */
struct gw_value gw_shop_shown(const struct gw_shop_value *drawing);
/* The dimensions of drawings that are no items, in the order of enum gw_shop_kind, from GW_SHOP_SPAN. */
extern const struct gw_field gw_shop_fields[GW_SHOP_ANCHOR_SPACING];

struct gw_submittal_head {
    const char *number;
    int revision;
    const char *date, *title;
    const char *accepted; /* a system file, beside the submittal; NULL */
};
struct gw_submittal {
    int galeward;
    enum gw_units units;
    const struct gw_submittal_head *submittal;
    const char *offer; /* the same */
    GW_LIST(struct gw_submitted_report) reports;
    GW_LIST(struct gw_glass_mark) glass;
    GW_LIST(struct gw_shop_value) drawings;
    GW_LIST(const char *) deviations;
    const struct gw_node *node;
    const struct gw_source *source;
    const struct gw_system *accepted_system, *offered_system; /* loaded; NULL: none is named */
};
extern const struct gw_record gw_submittal_record;

/* A submittal of a model that loaded, with the systems that it names; all mistakes of its files are reported to the
 * model's diagnostics. A file that does not begin as one of ours is refused without a word of it. True when there was
 * no error. */
bool gw_submittal_load(struct gw_submittal *out, struct gw_model *model, const char *path);
bool gw_submittal_load_source(struct gw_submittal *out, struct gw_model *model, const struct gw_source *source);
/* By its number, as ratings name it; NULL. */
const struct gw_submitted_report *gw_submitted_report(const struct gw_submittal *submittal, const char *id);

#ifdef __cplusplus
}
#endif

#endif
