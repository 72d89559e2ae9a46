/* What the checks say of the system as it is claimed: what fails, what is not shown, what is to be remarked on. One
 * comment a cause, however many places share it. */
#include "causes.h"

#include "galeward/memo.h"

#include <string.h>

/* What a rating that names no report has in a pass: it is remarked on, or shows it alone. */
enum statement { NO_STATEMENT, STATED_TOO, STATED_ALONE };

/* Findings of one check that say the same but for figures. */
struct cause_group {
    const struct gw_finding *worst;
    const struct gw_message *said; /* NULL: another group says it */
    enum gw_consequence consequence;
    GW_LIST(const char *) places;
    size_t capacity;
    long n;            /* elements */
    bool zones, walls; /* of more than one */
    enum statement stated;
};
struct cause_groups {
    struct cause_group *items;
    size_t n, capacity;
    struct gw_memo known;
};

/* By the test of a link, which is no finding of its own. */
static bool by_link_as_rated(const struct gw_finding *f) { return f->link && f->link->as_rated; }

/* What stands on links speaks through them, where the link is as grave: a test that is asked for and too short fails a
 * path whose links pass by calculation. */
static bool speaks(const struct gw_finding *f)
{
    const bool through = f->demand->check->path && f->link;
    return !through || by_link_as_rated(f) || gw_said(&f->question) ||
           gw_verdict_rank(f->link->verdict) < gw_verdict_rank(f->verdict);
}

static enum statement statement_in(const struct told_by *by, size_t i)
{
    const struct gw_finding *f = &by->claimed[i], *without = &by->named[i];
    if (f->verdict != GW_PASS || !gw_said(&f->remark)) return NO_STATEMENT;
    if (without->verdict != GW_PASS) return STATED_ALONE;
    return gw_said(&without->remark) ? NO_STATEMENT : STATED_TOO;
}

/* A remark that rests on evidence which the same review takes away is none. */
static bool is_cause(const struct reviewing *r, const struct told_by *by, size_t i)
{
    const struct gw_finding *f = &by->claimed[i];
    if (f->verdict == GW_PASS)
        return gw_said(&f->remark) && by->reported[i].verdict == GW_PASS && gw_said(&by->reported[i].remark);
    return (f->verdict == GW_FAIL || f->verdict == GW_NOT_SHOWN) && speaks(f) && !r->explained[i];
}

static void add_place(struct cause_group *g, struct reviewing *r, const char *where)
{
    for (size_t i = 0; i < g->places.n; i++)
        if (strcmp(g->places.items[i], where) == 0) return;
    g->places.items = gw_grow(r->arena, g->places.items, g->places.n, &g->capacity, sizeof *g->places.items);
    g->places.items[g->places.n++] = where;
}

/* `e` joins those of which the worst is. */
static void reach(struct cause_group *g, const struct gw_element *e, const struct gw_element *worst)
{
    if (!e || !worst) return;
    g->walls = g->walls || strcmp(e->wall, worst->wall) != 0;
    g->zones = g->zones || e->zone != worst->zone;
}

static const struct gw_message *message_of(const struct gw_finding *f)
{
    if (f->verdict == GW_PASS) return &f->remark;
    if (by_link_as_rated(f)) return &f->link->message; /* its own names the link's place */
    return f->verdict == GW_NOT_SHOWN && gw_said(&f->question) ? &f->question : &f->message;
}

static void group(struct cause_groups *groups, struct reviewing *r, const struct gw_finding *f, enum statement stated)
{
    struct gw_text key;
    gw_text_init(&key, r->arena);
    gw_text_addf(&key, "%s|%s|%s|%d|%d|", f->demand->check->id, f->demand->name ? f->demand->name : "",
                 f->demand->row ? f->demand->row->id : "", (int)f->verdict, (int)stated);
    gw_message_shape(&key, message_of(f));
    size_t **known = (size_t **)gw_memo_at(&groups->known, r->arena, key.at, key.length);
    if (!*known) {
        *known = gw_alloc(r->arena, 1, sizeof **known);
        **known = groups->n;
        groups->items = gw_grow(r->arena, groups->items, groups->n, &groups->capacity, sizeof *groups->items);
        groups->items[groups->n++] = (struct cause_group){.worst = f, .said = message_of(f), .stated = stated};
    }
    struct cause_group *g = &groups->items[**known];
    add_place(g, r, f->demand->where);
    reach(g, f->demand->element, g->worst->demand->element);
    g->n += (long)gw_places_of(r, f);
    if (!gw_graver(f, g->worst)) return;
    g->worst = f;
    g->said = message_of(f);
}

/* The one text is the other without one or more of its questions. */
static bool asks_less(const char *less, const char *more)
{
    const size_t n = strlen(less), m = strlen(more);
    size_t from = 0, end = 0;
    if (n >= m) return false;
    while (from < n && less[from] == more[from]) from++;
    while (end < n - from && less[n - 1 - end] == more[m - 1 - end]) end++;
    return from + end == n && memchr(more + from, '?', m - n);
}

/* One cause that leaves more open at some of its places: said by what it leaves open at most. */
static bool is_part(struct reviewing *r, const struct cause_group *g, const struct cause_group *of)
{
    const struct gw_demand *a = g->worst->demand, *b = of->worst->demand;
    if (g->worst->verdict != GW_NOT_SHOWN || of->worst->verdict != GW_NOT_SHOWN) return false;
    return a->check == b->check && a->name == b->name && a->row == b->row &&
           asks_less(gw_message_text(r->arena, g->said, GW_SI), gw_message_text(r->arena, of->said, GW_SI));
}

static void join(struct cause_groups *groups, struct reviewing *r)
{
    for (size_t i = 0; i < groups->n; i++)
        for (size_t k = 0; k < groups->n; k++) {
            struct cause_group *part = &groups->items[i], *of = &groups->items[k];
            if (!part->said || !of->said || !is_part(r, part, of)) continue;
            for (size_t p = 0; p < part->places.n; p++) add_place(of, r, part->places.items[p]);
            reach(of, part->worst->demand->element, of->worst->demand->element);
            of->n += part->n;
            of->walls = of->walls || part->walls;
            of->zones = of->zones || part->zones;
            part->said = NULL;
        }
}

/* "east, zone 5", "east" where it is of several zones; else the lite type, the wall or the project. */
static const char *subject_of(struct reviewing *r, const struct cause_group *g)
{
    const struct gw_demand *d = g->worst->demand;
    if (d->name) return d->name;
    if (!d->element) return d->where;
    if (g->walls) return "several walls";
    return g->zones ? d->element->wall : gw_format(r->arena, "%s, zone %d", d->element->wall, d->element->zone);
}

/* Rounded as wherever it is asked; a limit as a capacity is. */
static struct gw_value asked_value(bool at_most, enum gw_dim dim, double value)
{
    return at_most ? gw_of_capacity(dim, value) : gw_of_demand(dim, value);
}

/* Terms of one dimension are of two directions, or of one. */
static struct gw_message every_term(struct reviewing *r, const struct gw_demand *d)
{
    struct gw_message said = {0};
    for (unsigned i = 0; i < GW_TERM_LIMIT; i++) {
        const struct gw_term *t = gw_term_of(d, i);
        if (!gw_given(t->value)) continue;
        const char *most = d->at_most && !gw_given(t->response) ? "at most " : "";
        const char *direction = gw_load_direction_name(t->direction);
        const struct gw_message one =
            GW_SAY(r->arena, "{}{}{}{}", gw_of_text(most), asked_value(d->at_most, t->dim, t->value),
                   gw_of_text(*direction ? " " : ""), gw_of_text(direction));
        said = gw_said(&said) ? gw_say_both(r->arena, &said, ", ", &one) : one;
    }
    return said;
}

static struct gw_message asked(struct reviewing *r, const struct gw_finding *f)
{
    const struct gw_demand *d = f->demand;
    if (!gw_given(f->required) && gw_given(gw_term_of(d, 0)->value) && d->state == GW_ASKED) return every_term(r, d);
    if (!gw_given(f->required)) return d->message;
    return GW_SAY(r->arena, "{}{} {}", gw_of_text(f->at_most ? "at most " : ""),
                  asked_value(f->at_most, f->dim, f->required), gw_of_text(gw_load_direction_name(f->direction)));
}

static struct gw_message claimed(struct reviewing *r, const struct gw_finding *f)
{
    if (f->demand->state == GW_NOT_KNOWN) return GW_PLAINLY("what is asked is not known, so nothing can be compared");
    if (!gw_given(f->provided)) return GW_PLAINLY("nothing that shows it");
    return GW_SAY(r->arena, "{} {}",
                  f->at_most ? gw_of_demand(f->dim, f->provided) : gw_of_capacity(f->dim, f->provided),
                  gw_of_text(gw_load_direction_name(f->direction)));
}

static struct gw_message basis_of(struct reviewing *r, const struct gw_demand *d)
{
    if (!d->row) return GW_SAY(r->arena, "{}", gw_of_text(d->check->clause));
    return GW_SAY(r->arena, "{} of the requirement set; {}", gw_of_text(d->row->id),
                  gw_of_text(d->row->test ? d->row->test : d->check->clause));
}

/* Those of the test that is short, its own or that of a link. */
static const struct gw_finding *figures_of(const struct gw_finding *f)
{
    if (by_link_as_rated(f)) return f->link;
    return f->rated && !gw_given(f->provided) ? f->rated : f;
}

static void tell(struct reviewing *r, const struct cause_group *g)
{
    const struct gw_finding *f = g->worst;
    const bool remark = f->verdict == GW_PASS && g->stated != STATED_ALONE;
    const enum gw_consequence consequence = f->verdict == GW_FAIL ? GW_IT_FAILS
                                            : remark              ? GW_A_REMARK
                                                                  : GW_IT_IS_NOT_SHOWN;
    struct gw_comment *c = gw_comment_add(r, f->demand->check->id, subject_of(r, g), consequence);
    const struct gw_message more =
        GW_SAY(r->arena, "{} places, at worst {}", gw_of_count(g->n), gw_of_text(f->demand->where));
    c->where = g->n > 1 ? more : GW_SAY(r->arena, "{}", gw_of_text(f->demand->where));
    const struct gw_finding *figures = figures_of(f);
    c->submitted = claimed(r, figures);
    c->needed = asked(r, figures);
    c->basis = basis_of(r, f->demand);
    if (f->demand->state != GW_NOT_KNOWN) c->effect = by_link_as_rated(f) ? f->message : *g->said;
    c->evidence = f->evidence;
    c->places.items = g->places.items;
    c->places.n = g->places.n;
    if (f->verdict == GW_FAIL) c->disposition = GW_REJECTED;
    if (g->stated) c->disposition = GW_SPECIFIED_ITEM; /* the report */
    gw_comment_at(c, r->judged->node);
}

/* Of a pass, what is to be confirmed of its test: each question of a check once. */
static void ask_to_confirm(struct reviewing *r, const struct gw_finding *f)
{
    const struct gw_demand *d = f->demand;
    const char *item = d->name ? d->name : d->check->id, *said = gw_message_text(r->arena, &f->confirm, GW_SI);
    for (size_t i = 0; i < r->out->confirm.n; i++) {
        const struct gw_complete *c = &r->out->confirm.items[i];
        if (strcmp(c->item, item) == 0 && strcmp(gw_message_text(r->arena, &c->said, GW_SI), said) == 0) return;
    }
    gw_confirm_add(r, item, d->where, f->confirm);
}

void gw_tell_checks(struct reviewing *r, const struct told_by *by)
{
    struct cause_groups groups = {.n = 0};
    for (size_t i = 0; i < r->bench.judgement.demands.n; i++) {
        const struct gw_finding *f = &by->claimed[i];
        if (is_cause(r, by, i)) group(&groups, r, f, statement_in(by, i));
        const bool passes = f->verdict == GW_PASS && by->reported[i].verdict == GW_PASS;
        if (passes && gw_said(&f->confirm) && !r->stated[i]) ask_to_confirm(r, f);
    }
    join(&groups, r);
    for (size_t i = 0; i < groups.n; i++)
        if (groups.items[i].said) tell(r, &groups.items[i]);
}
