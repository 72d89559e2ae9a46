/* What 'check --qualifications' writes: numbered sentences, those of the whole bid and those of each candidate. */
#include "report/qualifications.h"

#include "base/fields.h"
#include "report/results.h"

static const struct gw_field QUALIFICATION[] = {
    F(gw_qualification, number, GW_T_INTEGER, .help = "of the sentence; each candidate's go on from those of the bid"),
    FIELD(gw_system, "candidate", name, GW_T_TEXT, .help = "name of the system; null: of the whole bid",
          THROUGH(gw_qualification, candidate)),
    F(gw_qualification, kind, GW_T_TEXT,
      .help = "site, set, waived, below the site, not asked, assumed, not checked; plan, fails, open, statement, to "
              "confirm, "
              "remark, recalled"),
    F(gw_qualification, text, GW_T_TEXT, .help = "the sentence"),
};
static const struct gw_record QUALIFICATION_RECORD =
    RECORD("qualification", gw_qualification, QUALIFICATION, .help = "what a price assumes");
static const struct gw_field QUALIFICATIONS[] = {
    F(gw_qualifications, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    FIELD(gw_answer, "summaries", judgement.summaries, GW_T_RECORD, .flags = GW_MANY, .record = &gw_summary_record,
          .help = "every candidate", THROUGH2(gw_qualifications, results, gw_results, answer)),
    FIELD(gw_qualifications, "qualifications", items, GW_T_RECORD, .flags = GW_MANY, .record = &QUALIFICATION_RECORD,
          .help = "what the price assumes"),
};
static const struct gw_record QUALIFICATIONS_RECORD =
    RECORD("qualifications", gw_qualifications, QUALIFICATIONS, .help = "what 'check --qualifications' writes");

static void sentences(struct page *page, const struct gw_qualifications *all, const struct gw_system *candidate)
{
    for (size_t i = 0; i < all->items.n; i++) {
        const struct gw_qualification *q = &all->items.items[i];
        if (q->candidate == candidate) gw_report_numbered(page->report, q->number, q->text);
    }
}

static void qualifications_page(struct gw_report *report, const struct gw_result *result)
{
    const struct gw_qualifications *all = result->value;
    struct page page = gw_page_of(report, all->results);
    const struct gw_judgement *j = &all->results->answer->judgement;
    const struct gw_info *info = all->results->answer->model->project.project;
    gw_report_heading(report, 1, gw_format(page.arena, "Qualifications of the price: %s", info->name));
    gw_report_line(report,
                   "For a bid: the first list, then that of the candidate that is offered, whose numbers go on.");
    gw_report_heading(report, 2, "Whichever candidate is offered");
    sentences(&page, all, NULL);
    for (size_t i = 0; i < j->summaries.n; i++) {
        const struct gw_summary *s = &j->summaries.items[i];
        gw_report_heading(report, 2,
                          gw_format(page.arena, "%s: %s", s->candidate->name, gw_verdict_loud((int)s->verdict)));
        sentences(&page, all, s->candidate);
    }
    gw_report_heading(report, 2, "Caution");
    gw_report_line(report, gw_caution_text());
    gw_report_line(report, gw_made_from(&page));
}

struct gw_result gw_result_qualifications(struct gw_arena *arena, const struct gw_results *results)
{
    struct gw_qualifications *all = gw_alloc(arena, 1, sizeof *all);
    gw_qualify(all, arena, results);
    return (struct gw_result){.shown = results->shown,
                              .record = &QUALIFICATIONS_RECORD,
                              .value = all,
                              .rows = "qualifications",
                              .page = qualifications_page};
}
