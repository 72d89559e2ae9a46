/* What a scenario expects of the review of a submittal; a part of scenario_test.c. */

/* Written as a result and read again, as --previous does. */
static const struct gw_previous *as_written(struct stage *s, const struct gw_review *review)
{
    struct gw_results results;
    struct gw_text out;
    struct gw_engine none = {.tables = gw_tables_standard()};
    gw_results_of(&results, &s->arena, review->answer, GW_US);
    const struct gw_reviewed reviewed = {&results, review};
    const struct gw_result result = gw_result_review(&s->arena, &reviewed);
    gw_text_init(&out, &s->arena);
    gw_format_named("json")->render(&out, &result, &none, false);
    return gw_review_previous(&s->arena, gw_source_from(&s->arena, "r1.json", out.at, out.length),
                              s->model.project.project->name, review->submittal->submittal, &s->diags);
}

static void review(struct stage *s)
{
    const char *text = s->scenario->previous;
    struct gw_submittal *earlier = gw_alloc(&s->arena, 1, sizeof *earlier);
    const struct gw_previous *previous = NULL;
    gw_answer_demand(&s->answer, &s->ask);
    if (text) {
        const bool good =
            gw_submittal_load_source(earlier, &s->model, gw_source_from(&s->arena, "r1.yaml", text, strlen(text)));
        if (!good) print_diags(&s->diags);
        assert_true(good);
        gw_review_submittal(&s->review, &s->ask, &s->answer, earlier, NULL);
        previous = as_written(s, &s->review);
        assert_non_null(previous);
    }
    gw_review_submittal(&s->review, &s->ask, &s->answer, &s->submittal, previous);
}

/* Its submittal, where it has one; what is offered is the system but for the scenario's own keys. */
static bool read_submittal(struct stage *s)
{
    const char *text = s->scenario->submittal;
    if (!text) return true;
    return gw_submittal_load_source(&s->submittal, &s->model,
                                    gw_source_from(&s->arena, "submittal.yaml", text, strlen(text)));
}

static const char *all_words(struct stage *s, const struct gw_comment *c)
{
    const struct gw_message *const said[] = {&c->where, &c->submitted, &c->needed, &c->basis, &c->effect, &c->ask};
    struct gw_text out;
    gw_text_init(&out, &s->arena);
    for (size_t i = 0; i < COUNT(said); i++) {
        gw_text_add(&out, i ? " | " : "");
        gw_message_print(&out, said[i], GW_US);
    }
    return out.at;
}

static void compare_text(struct stage *s, const struct expectation *x, const char *about, const char *what,
                         const char *want, const char *got)
{
    if (!same_or_any(want, got)) wrong(s, x->node, about, what, want, got);
}

static void compare_comment(struct stage *s, const struct expectation *x, const struct gw_comment *c)
{
    const char *about = gw_format(&s->arena, "comment %d, %s, %s", c->number, c->item, c->subject);
    const size_t before = s->wrong;
    compare_text(s, x, about, "consequence", x->consequence, gw_consequence_name(c->consequence));
    compare_text(s, x, about, "disposition", x->disposition,
                 gw_choice_name(gw_disposition_choices, (int)c->disposition));
    compare_text(s, x, about, "status", x->status, gw_comment_status_name(c->status));
    compare_word(s, x, about, "evidence", EVIDENCE, x->evidence, 1 + (int)c->evidence);
    if (x->number != GW_NO_INTEGER && x->number != c->number)
        wrong(s, x->node, about, "number", gw_format(&s->arena, "%d", x->number),
              gw_format(&s->arena, "%d", c->number));
    wants_words(s, x, about, "says", x->says.items, x->says.n, all_words(s, c), true);
    wants_words(s, x, about, "says_not", x->says_not.items, x->says_not.n, all_words(s, c), false);
    if (s->wrong > before && !x->says.n) print_error("  %s\n", all_words(s, c));
}

static const char *comments_there(struct stage *s)
{
    struct gw_text out;
    gw_text_init(&out, &s->arena);
    for (size_t i = 0; i < s->review.comments.n; i++) {
        const struct gw_comment *c = &s->review.comments.items[i];
        gw_text_addf(&out, "%s%s (%s): %s", i ? "; " : "", c->item, c->subject, gw_consequence_name(c->consequence));
    }
    return out.length ? out.at : "none";
}

static void compare_comments(struct stage *s, const struct expectation *x)
{
    int n = 0;
    for (size_t i = 0; i < s->review.comments.n; i++) {
        const struct gw_comment *c = &s->review.comments.items[i];
        if (strcmp(x->comment, c->item) != 0 || !same_or_any(x->subject, c->subject)) continue;
        compare_comment(s, x, c);
        n++;
    }
    if (x->count == GW_NO_INTEGER ? !n : n != x->count)
        wrong(s, x->node, x->comment, "comments",
              x->count == GW_NO_INTEGER ? "some" : gw_format(&s->arena, "%d", x->count), comments_there(s));
}

static void compare_review(struct stage *s)
{
    const struct scenario *x = s->scenario;
    const enum gw_consequence worst = gw_review_worst(&s->review);
    const char *verdict = worst == GW_CONSEQUENCES ? "no comment" : gw_consequence_name(worst);
    if (!same_or_any(x->review_verdict, verdict))
        wrong(s, x->node, "review", "review_verdict", x->review_verdict,
              gw_format(&s->arena, "%s: %s", verdict, comments_there(s)));
    const char *disposition = gw_choice_name(gw_disposition_choices, (int)s->review.disposition);
    if (!same_or_any(x->review_disposition, disposition))
        wrong(s, x->node, "review", "review_disposition", x->review_disposition, disposition);
    if (!same_or_any(x->review_because, words(&s->review.because)))
        wrong(s, x->node, "review", "review_because", x->review_because, words(&s->review.because));
    for (size_t i = 0; i < x->complete.n; i++) {
        bool found = false;
        for (size_t k = 0; k < s->review.complete.n && !found; k++) {
            const struct gw_complete *c = &s->review.complete.items[k];
            found =
                strstr(gw_format(&s->arena, "%s, %s: %s", c->item, c->subject, words(&c->said)), x->complete.items[i]);
        }
        if (!found) wrong(s, x->node, "", "complete", x->complete.items[i], "none such");
    }
}
