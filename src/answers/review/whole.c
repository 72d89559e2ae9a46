/* The stamp of a submittal as a whole: one disposition for all that is open, and why. */
#include "review_internal.h"

/* What asks for another submittal is graver than what does not; what is not to be built at all is the gravest. */
static int gravity(enum gw_disposition disposition)
{
    static const int of[] = {
        [GW_DISPOSITION_UNSET] = 0, [GW_NO_EXCEPTION] = 0, [GW_CORRECTIONS_NOTED] = 1, [GW_REVISE] = 2,
        [GW_SPECIFIED_ITEM] = 3,    [GW_REJECTED] = 4,
    };
    return of[disposition];
}

static bool is_open(const struct gw_comment *c) { return c->status != GW_COMMENT_CLOSED; }

static enum gw_disposition gravest_of(const struct gw_review *out)
{
    enum gw_disposition most = GW_NO_EXCEPTION;
    for (size_t i = 0; i < out->comments.n; i++)
        if (is_open(&out->comments.items[i]) && gravity(out->comments.items[i].disposition) > gravity(most))
            most = out->comments.items[i].disposition;
    return most;
}

/* "comments 1, 2, 3 and 4 more are": those that are disposed of so. */
static struct gw_message numbers_of(struct reviewing *r, enum gw_disposition disposition)
{
    enum { SAID = 3 };
    struct gw_text out;
    long n = 0;
    gw_text_init(&out, r->arena);
    for (size_t i = 0; i < r->out->comments.n; i++) {
        const struct gw_comment *c = &r->out->comments.items[i];
        if (!is_open(c) || c->disposition != disposition) continue;
        if (n++ < SAID) gw_text_addf(&out, "%s%d", n > 1 ? ", " : "", c->number);
    }
    if (n > SAID) gw_text_addf(&out, " and %ld more", n - SAID);
    return GW_SAY(r->arena, "{} {} {}", gw_of_text(n == 1 ? "comment" : "comments"), gw_of_text(out.at),
                  gw_of_text(n == 1 ? "is" : "are"));
}

/* "2 fail, 1 not shown" */
static const char *counts_of(struct reviewing *r)
{
    static const char *const words[][2] = {[GW_IT_FAILS] = {"fails", "fail"},
                                           [GW_IT_IS_NOT_SHOWN] = {"not shown", "not shown"},
                                           [GW_IT_DIFFERS] = {"differs", "differ"},
                                           [GW_A_REMARK] = {"remark", "remarks"}};
    struct gw_text out;
    gw_text_init(&out, r->arena);
    for (int c = 0; c < GW_CONSEQUENCES; c++)
        if (r->out->counts[c])
            gw_text_addf(&out, "%s%ld %s", out.length ? ", " : "", r->out->counts[c], words[c][r->out->counts[c] > 1]);
    return out.at;
}

static struct gw_message decided(struct reviewing *r)
{
    long n = 0;
    for (size_t i = 0; i < r->out->comments.n; i++) n += r->out->comments.items[i].status == GW_COMMENT_ACCEPTED;
    if (!n) return (struct gw_message){0};
    return GW_SAY(r->arena, "; {} as the reviewer decided", gw_of_count(n));
}

void gw_dispose_of_whole(struct reviewing *r)
{
    struct gw_review *out = r->out;
    long open = 0;
    for (int c = 0; c < GW_CONSEQUENCES; c++) open += out->counts[c];
    out->disposition = gravest_of(out);
    if (!open) {
        out->because = GW_PLAINLY("no comment is open");
        return;
    }
    const struct gw_message which = numbers_of(r, out->disposition), by = decided(r);
    const struct gw_message of =
        open == 1 ? GW_PLAINLY("the only one open") : GW_SAY(r->arena, "the gravest of {} open", gw_of_count(open));
    out->because = GW_SAY(r->arena, "{} {}: {}{}", gw_of_message(&which), gw_of_message(&of), gw_of_text(counts_of(r)),
                          gw_of_message(&by));
}
