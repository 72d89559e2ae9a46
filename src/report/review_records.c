/* What 'review' writes as data. */
#include "base/fields.h"
#include "report/draw/pictures.h"
#include "report/results.h"
#include "report/review.h"
#include "report/view.h"

static const char *consequence_word(int c) { return gw_consequence_name((enum gw_consequence)c); }
static const char *status_word(int s) { return gw_comment_status_name((enum gw_comment_status)s); }
static const char *evidence_word(int e) { return gw_evidence_name((enum gw_evidence)e); }
static const char *verdict_word(int v) { return gw_verdict_name((enum gw_verdict)v); }

#define C(key_, type_, ...) F(gw_comment, key_, type_, __VA_ARGS__)
static const struct gw_field COMMENT[] = {
    C(number, GW_T_INTEGER, .help = "that persists over revisions (--previous)"),
    C(item, GW_T_TEXT,
      .help = "what it is about: substitution, glass, an item of a drawing, a check, report_missing, report_pages and "
              "their like"),
    C(subject, GW_T_TEXT, .help = "report, glass mark, part, or wall and zone: with the item, who the comment is"),
    C(where, GW_T_MESSAGE, .help = "the places"),
    C(submitted, GW_T_MESSAGE, .help = "what was submitted"),
    C(needed, GW_T_MESSAGE, .help = "what is needed"),
    C(basis, GW_T_MESSAGE, .help = "why: row of the requirement set, standard, rule, accepted system"),
    C(consequence, GW_T_WORD, .word = consequence_word, .help = "fails, not shown, differs or remark"),
    C(disposition, GW_T_CHOICE, .choices = gw_disposition_choices,
      .help = "as the trade answers; the reviewer's own where the project decides"),
    C(evidence, GW_T_WORD, .word = evidence_word,
      .help = "that the claim rests on: test, calculation, statement, none"),
    C(status, GW_T_WORD, .word = status_word, .help = "new, open, closed or accepted"),
    C(effect, GW_T_MESSAGE, .help = "what the checks come to with it; null: no check changes"),
    FIELD(gw_comment, "question", ask, GW_T_MESSAGE, .help = "what to ask, and whom; null: nothing"),
    C(places, GW_T_TEXT, .flags = GW_MANY, .help = "elements, rows or sheets that share the cause"),
    C(file, GW_T_TEXT, .help = "where it stands"),
    C(line, GW_T_INTEGER, .help = "line of the file; 0: nowhere in particular"),
    FIELD(gw_decision, "decided_by", by, GW_T_TEXT, .help = "who decided", THROUGH(gw_comment, decision)),
    FIELD(gw_decision, "reason", reason, GW_T_TEXT, .help = "why", THROUGH(gw_comment, decision)),
};
static const struct gw_record COMMENT_RECORD =
    RECORD("comment", gw_comment, COMMENT, .help = "one cause, however many places share it");
static const struct gw_field COMPLETE[] = {
    F(gw_complete, item, GW_T_TEXT, .help = "what it is about"),
    F(gw_complete, subject, GW_T_TEXT, .help = "report, glass mark, sheet and place, row"),
    F(gw_complete, said, GW_T_MESSAGE, .help = "what was submitted"),
};
static const struct gw_record COMPLETE_RECORD =
    RECORD("complete", gw_complete, COMPLETE, .help = "what raises no comment");

static const struct gw_field HEAD[] = {
    F(gw_submittal_head, number, GW_T_TEXT, .help = "of the submittal"),
    F(gw_submittal_head, revision, GW_T_INTEGER, .help = "of it"),
    F(gw_submittal_head, date, GW_T_TEXT, .help = "of it"),
    F(gw_submittal_head, title, GW_T_TEXT, .help = "what is submitted"),
    F(gw_submittal_head, accepted, GW_T_TEXT, .help = "system file that was accepted"),
};
static const struct gw_record HEAD_RECORD =
    RECORD("submittal", gw_submittal_head, HEAD, .help = "the submittal, as its file says");

static bool verdict(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct gw_review *review = thing;
    const enum gw_consequence worst = gw_review_worst(review);
    (void)shown;
    gw_text_add(out, worst == GW_CONSEQUENCES ? "no comment" : gw_consequence_name(worst));
    return true;
}

#define OF_REVIEW(key_, member_, type_, ...)                                                                           \
    FIELD(gw_review, key_, member_, type_, __VA_ARGS__, THROUGH(gw_reviewed, review))
#define OF_JUDGED(key_, member_, help_) OF_REVIEW(key_, member_.verdict, GW_T_WORD, .word = verdict_word, .help = help_)
static const struct gw_field REVIEWED[] = {
    F(gw_reviewed, results, GW_T_RECORD, .record = &gw_remarks_record, .flags = GW_FLAT),
    FIELD(gw_submittal, "submittal", submittal, GW_T_RECORD, .record = &HEAD_RECORD, .help = "what was reviewed",
          THROUGH2(gw_reviewed, review, gw_review, submittal)),
    OUT_SAID("verdict", verdict, "the gravest consequence of a comment that is not closed, or no comment",
             THROUGH(gw_reviewed, review)),
    OF_REVIEW("disposition", disposition, GW_T_CHOICE, .choices = gw_disposition_choices,
              .help = "of the whole: that of its gravest open comments, as decided where the project decides"),
    OF_REVIEW("because", because, GW_T_MESSAGE,
              .help = "which comments ask for it, and how many there are of each kind"),
    FIELD(gw_system, "system", name, GW_T_TEXT, .help = "that was judged",
          THROUGH2(gw_reviewed, review, gw_review, judged)),
    OF_JUDGED("as_claimed", as_claimed, "verdict of the system if every report held"),
    OF_JUDGED("as_evidenced", as_evidenced, "the same with the evidence that does not hold taken away"),
    OF_REVIEW("comments", comments, GW_T_RECORD, .record = &COMMENT_RECORD, .flags = GW_MANY,
              .help = "by consequence; closed ones last"),
    OF_REVIEW("complete", complete, GW_T_RECORD, .record = &COMPLETE_RECORD, .flags = GW_MANY,
              .help = "complete, and without comment"),
    OF_REVIEW("to_ask", confirm, GW_T_RECORD, .record = &COMPLETE_RECORD, .flags = GW_MANY,
              .help = "what of the evidence is to be confirmed; it changes no verdict"),
    FIELD(gw_submittal, "deviations", deviations, GW_T_TEXT, .flags = GW_MANY,
          .help = "as the submitter wrote them; not judged", THROUGH2(gw_reviewed, review, gw_review, submittal)),
    OF_REVIEW("previous", previous, GW_T_TEXT, .help = "result that comments are compared with"),
};
const struct gw_record gw_review_record = RECORD("review", gw_reviewed, REVIEWED, .help = "what 'review' writes");

static const struct view_column SHEET_COLUMNS[] = {
    COLUMN("Number", "number"),
    COLUMN("Item", "item"),
    COLUMN("Subject", "subject"),
    COLUMN("Where", "where"),
    COLUMN("Submitted", "submitted"),
    COLUMN("Needed", "needed"),
    COLUMN("Why", "basis"),
    COLUMN("Consequence", "consequence"),
    COLUMN("Disposition", "disposition"),
    COLUMN("Evidence", "evidence"),
    COLUMN("Status", "status"),
    COLUMN("Effect", "effect"),
    COLUMN("Ask", "question"),
};
static const struct view SHEET = VIEW(&COMMENT_RECORD, SHEET_COLUMNS);

void gw_review_sheet(struct gw_report *sheet, const struct gw_result *result)
{
    const struct gw_reviewed *reviewed = result->value;
    struct page page = gw_page_of(sheet, reviewed->results);
    gw_view_sheet(&page, &SHEET, reviewed->review->comments.items, reviewed->review->comments.n);
}

struct gw_result gw_result_review(struct gw_arena *arena, const struct gw_reviewed *reviewed)
{
    struct gw_pictures *pictures = gw_alloc(arena, 1, sizeof *pictures);
    gw_pictures_of_review(pictures, arena, reviewed->results, reviewed->review);
    return (struct gw_result){.shown = reviewed->results->shown,
                              .record = &gw_review_record,
                              .value = reviewed,
                              .rows = "comments",
                              .page = gw_review_page,
                              .sheet = gw_review_sheet,
                              .pictures = pictures,
                              .log = gw_review_log};
}
