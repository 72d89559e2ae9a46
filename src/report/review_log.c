/* A review as findings beside its files. */
#include "report/review.h"

#include <string.h>

/* Of the comments' own items; those of drawings and of checks have their titles. */
static const struct {
    const char *item, *about;
} ABOUT[] = {{"report_missing", "a report that a rating names is not submitted"},
             {"report_unnamed", "a stated capacity names no report"},
             {"report_place", "where a report's test was made"},
             {"report_system", "which system a report is of"},
             {"report_pages", "whether a report is complete"},
             {"report_by", "who made a report"},
             {"report_standard", "which standard a report is by"},
             {"report_age", "how old a report is"},
             {"report_make_up", "which make-up of glass a report is of"},
             {"report_reinforcement", "whether a report's mullions were reinforced"},
             {"report_fastening", "how a report's plates were fastened"},
             {"glass", "the glass schedule against the project's lites"},
             {"offer", "what is offered"},
             {"option", "an option that the project takes"},
             {"substitution", "a part of the system that is another than the accepted one"},
             {"span", "span of a mullion as drawn"},
             {"module", "distance of mullions as drawn"},
             {"mullion_depth", "depth of a mullion as drawn"},
             {"anchor_spacing", "distance of anchors along a mullion as drawn"}};

const char *gw_comment_about(const char *item)
{
    for (size_t i = 0; i < sizeof ABOUT / sizeof *ABOUT; i++)
        if (strcmp(ABOUT[i].item, item) == 0) return ABOUT[i].about;
    const enum gw_item_id id = gw_item_named(item);
    const struct gw_check *check = gw_check_find(item);
    if (id != GW_ITEM_COUNT) return gw_item_kinds[id].title;
    return check ? check->title : item;
}

static enum gw_log_level level_of(enum gw_consequence consequence)
{
    static const enum gw_log_level levels[] = {[GW_IT_FAILS] = GW_LOG_ERROR,
                                               [GW_IT_IS_NOT_SHOWN] = GW_LOG_WARNING,
                                               [GW_IT_DIFFERS] = GW_LOG_WARNING,
                                               [GW_A_REMARK] = GW_LOG_NOTE};
    return levels[consequence];
}

static void add(struct gw_text *out, const char *lead, const struct gw_message *m, enum gw_units shown)
{
    if (!gw_said(m)) return;
    gw_text_addf(out, "%s", lead);
    gw_message_print(out, m, shown);
}

/* "Comment 4, L-1041: submitted a summary; needed the complete report. ..." */
static const char *sentence(struct gw_arena *arena, const struct gw_comment *c, enum gw_units shown)
{
    struct gw_text out;
    gw_text_init(&out, arena);
    gw_text_addf(&out, "Comment %d, ", c->number);
    gw_message_print(&out, &c->where, shown);
    add(&out, ": submitted ", &c->submitted, shown);
    add(&out, "; needed ", &c->needed, shown);
    add(&out, ", since ", &c->basis, shown);
    gw_text_add(&out, ".");
    add(&out, " Effect: ", &c->effect, shown);
    gw_text_addf(&out, "%s Disposition: %s.", gw_said(&c->effect) ? "." : "",
                 gw_choice_name(gw_disposition_choices, (int)c->disposition));
    return out.at;
}

static enum gw_log_state state_of(const struct gw_comment *c)
{
    if (c->status == GW_COMMENT_CLOSED) return GW_LOG_ABSENT;
    return c->stood ? GW_LOG_UNCHANGED : GW_LOG_NEW;
}

void gw_review_log(struct gw_log *out, struct gw_arena *arena, const struct gw_result *result)
{
    const struct gw_reviewed *reviewed = result->value;
    for (size_t i = 0; i < reviewed->review->comments.n; i++) {
        const struct gw_comment *c = &reviewed->review->comments.items[i];
        out->list.items = gw_grow(arena, out->list.items, out->list.n, &out->capacity, sizeof *out->list.items);
        out->list.items[out->list.n++] = (struct gw_logged){
            .rule = c->item,
            .rule_text = gw_comment_about(c->item),
            .level = level_of(c->consequence),
            .message = sentence(arena, c, result->shown),
            .file = c->file ? c->file : reviewed->review->submittal->source->name,
            .line = c->line ? c->line : 1,
            .column = c->column,
            .fingerprint = gw_format(arena, "%s|%s", c->item, c->subject),
            .state = state_of(c),
            .accepted = c->decision ? gw_format(arena, "%s: %s", c->decision->by, c->decision->reason) : NULL};
    }
}
