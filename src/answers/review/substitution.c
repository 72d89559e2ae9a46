/* What is offered against what was accepted, key by key. */
#include "causes.h"

#include <string.h>

/* What a wall is made of does not hang on these. */
static bool counts(const struct gw_field *field)
{
    static const char *const no[] = {"galeward", "units", "cost"};
    for (size_t i = 0; i < sizeof no / sizeof *no; i++)
        if (strcmp(field->key, no[i]) == 0) return false;
    return true;
}

/* What it costs, and what the cost counts, is of no wall. */
static bool is_price(const char *path)
{
    static const char *const keys[] = {"cost", "once", "of"};
    const char *last = strrchr(path, '.');
    for (size_t i = 0; last && i < sizeof keys / sizeof *keys; i++)
        if (strcmp(last + 1, keys[i]) == 0) return true;
    return false;
}

static void leave_prices(struct gw_record_differences *differences)
{
    size_t n = 0;
    for (size_t i = 0; i < differences->list.n; i++)
        if (!is_price(differences->list.items[i].path)) differences->list.items[n++] = differences->list.items[i];
    differences->list.n = n;
}

void gw_find_substitutions(struct substitutions *out, struct reviewing *r)
{
    const struct gw_record *record = &gw_system_record;
    *out = (struct substitutions){gw_alloc(r->arena, record->n, sizeof *out->items), 0};
    for (size_t i = 0; r->accepted && r->accepted != r->judged && i < record->n; i++) {
        const struct gw_field *f = &record->fields[i];
        struct substitution *s = &out->items[out->n];
        if (f->type == GW_T_NODE || !counts(f)) continue;
        gw_field_differ(&s->differences, r->arena, f, (const char *)r->accepted + f->offset,
                        (const char *)r->judged + f->offset);
        leave_prices(&s->differences);
        if (!s->differences.list.n) continue;
        s->part = i;
        gw_otherness_of(&s->other, r, i, &s->differences);
        r->substituted.parts |= s->other.parts;
        r->substituted.joints = r->substituted.joints || s->other.joints;
        out->n++;
    }
}

static struct gw_message value(struct reviewing *r, const struct gw_message *m)
{
    return gw_said(m) ? *m : GW_SAY(r->arena, "{}", gw_of_text("not given"));
}

static struct gw_message listed(struct reviewing *r, const struct substitution *s, bool accepted)
{
    struct gw_message all = {0};
    for (size_t i = 0; i < s->differences.list.n; i++) {
        const struct gw_record_difference *d = &s->differences.list.items[i];
        const struct gw_message is = value(r, accepted ? &d->a : &d->b);
        const struct gw_message one =
            *d->path ? GW_SAY(r->arena, "{} {}", gw_of_text(d->path), gw_of_message(&is)) : is;
        all = gw_say_both(r->arena, &all, ", ", &one);
    }
    return all;
}

/* At the key of the file that is offered; where it leaves the key out, at that file. */
static const struct gw_node *place_of(const struct reviewing *r, const char *key)
{
    const struct gw_node *at = gw_node_get(r->judged->node, key);
    return at ? at : r->judged->node;
}

static const struct gw_member_spec *member_of(const struct gw_system *system, const char *key)
{
    return strcmp(key, "mullion") == 0          ? system->mullion
           : strcmp(key, "corner_mullion") == 0 ? system->corner_mullion
           : strcmp(key, "jamb_mullion") == 0   ? system->jamb_mullion
           : strcmp(key, "transom") == 0        ? system->transom
                                                : NULL;
}

/* A section whose insert may not fit in it is not what was judged. */
static void ask_of_insert(struct gw_comment *c, struct reviewing *r, const char *key)
{
    const struct gw_member_spec *offered = member_of(r->judged, key);
    if (gw_insert_too_deep(member_of(r->accepted, key))) return; /* asked of the system already */
    c->ask = gw_ask_if_it_fits(r, offered);
    if (!gw_said(&c->ask) || c->consequence <= GW_IT_IS_NOT_SHOWN) return;
    c->consequence = GW_IT_IS_NOT_SHOWN;
    c->evidence = GW_EVIDENCE_NONE;
}

void gw_tell_substitution(struct reviewing *r, const struct substitution *s, const struct effect *effect,
                          const struct gw_system *accepted, const struct gw_system *offered)
{
    const char *key = gw_system_record.fields[s->part].key;
    const bool reckoned = gw_is_assumption(key, &s->differences);
    const enum gw_consequence none = reckoned ? GW_A_REMARK : GW_IT_DIFFERS;
    struct gw_comment *c = gw_comment_add(r, "substitution", key, gw_consequence_of(effect, none));
    c->where = GW_SAY(r->arena, "{} of {}", gw_of_text(key), gw_of_text(r->judged->name));
    c->submitted = listed(r, s, false);
    c->needed = listed(r, s, true);
    c->basis = reckoned
                   ? GW_SAY(r->arena, "a number of the design, of no specimen: {} was accepted",
                            gw_of_text(r->submittal->submittal->accepted))
                   : GW_SAY(r->arena, "a substitution: {} was accepted", gw_of_text(r->submittal->submittal->accepted));
    gw_comment_effect(c, effect);
    gw_lines_as_offered(c, r, key, accepted, offered);
    ask_of_insert(c, r, key);
    if (c->consequence != none) c->disposition = GW_SPECIFIED_ITEM;
    gw_comment_at(c, place_of(r, key));
}
