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

/* What asks for another submittal goes before what does not, and among those what fails before what is not shown: a
 * paper that is missing is not the first to send for where a screw is too long. */
enum step { TAKEN, NOTED, ANOTHER, NEVER };

static enum step step_of(enum gw_disposition disposition)
{
    const int g = gravity(disposition);
    return g >= gravity(GW_REJECTED) ? NEVER : g >= gravity(GW_REVISE) ? ANOTHER : g > 0 ? NOTED : TAKEN;
}

/* The gravest open comments: of one step and consequence. */
struct gravest {
    enum step step;
    enum gw_consequence consequence;
};

static bool is_gravest(const struct gravest *g, const struct gw_comment *c)
{
    return is_open(c) && step_of(c->disposition) == g->step && c->consequence == g->consequence;
}

static struct gravest find_gravest(const struct gw_review *out)
{
    struct gravest g = {TAKEN, GW_CONSEQUENCES};
    for (size_t i = 0; i < out->comments.n; i++) {
        const struct gw_comment *c = &out->comments.items[i];
        const enum step step = step_of(c->disposition);
        if (!is_open(c) || step < g.step || (step == g.step && c->consequence >= g.consequence)) continue;
        g = (struct gravest){step, c->consequence};
    }
    return g;
}

static enum gw_disposition disposition_of(const struct gw_review *out, const struct gravest *g)
{
    enum gw_disposition most = GW_NO_EXCEPTION;
    for (size_t i = 0; i < out->comments.n; i++)
        if (is_gravest(g, &out->comments.items[i]) && gravity(out->comments.items[i].disposition) > gravity(most))
            most = out->comments.items[i].disposition;
    return most;
}

/* "comments 1, 2, 3 and 4 more are" */
static struct gw_message numbers_of(struct reviewing *r, const struct gravest *g)
{
    enum { SAID = 3 };
    struct gw_text out;
    long n = 0;
    gw_text_init(&out, r->arena);
    for (size_t i = 0; i < r->out->comments.n; i++) {
        const struct gw_comment *c = &r->out->comments.items[i];
        if (!is_gravest(g, c)) continue;
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
    const struct gravest gravest = find_gravest(out);
    out->disposition = disposition_of(out, &gravest);
    if (!open) {
        out->because = GW_PLAINLY("no comment is open");
        return;
    }
    const struct gw_message which = numbers_of(r, &gravest), by = decided(r);
    const struct gw_message of =
        open == 1 ? GW_PLAINLY("the only one open") : GW_SAY(r->arena, "the gravest of {} open", gw_of_count(open));
    out->because = GW_SAY(r->arena, "{} {}: {}{}", gw_of_message(&which), gw_of_message(&of), gw_of_text(counts_of(r)),
                          gw_of_message(&by));
}
