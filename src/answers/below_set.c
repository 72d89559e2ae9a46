/* Rows of a requirement set that ask for less than the site does: verdicts go by the set, and readers must know it. */
#include "galeward/answers.h"

/* "quay, zone 5, above the roof line" */
static struct gw_message place_of(struct gw_ask *ask, const struct gw_required *row)
{
    struct gw_text text;
    gw_text_init(&text, ask->arena);
    gw_text_add(&text, row->wall ? row->wall : "every wall");
    if (row->zone != GW_NO_INTEGER) gw_text_addf(&text, ", zone %d", row->zone);
    if (row->part == GW_ABOVE_ROOF) gw_text_add(&text, ", above the roof line");
    if (row->of == GW_SET_FRAMING) gw_text_add(&text, ", framing");
    if (row->component) gw_text_addf(&text, ", %s", gw_choice_name(gw_component_choices, (int)row->component));
    if (row->name) gw_text_addf(&text, ", %s", row->name);
    return GW_PLAINLY(text.at);
}

static struct gw_message accepted(const struct gw_ask *ask)
{
    const struct gw_acceptance *by = ask->model->project.requirement_set_accepted;
    if (!by) return (struct gw_message){0};
    return GW_SAY(ask->arena, "; accepted by {}: {}", gw_of_text(by->by), gw_of_text(by->reason));
}

static void add(struct gw_answer *out, struct gw_ask *ask, size_t *capacity, const struct gw_required *row,
                struct gw_message more)
{
    const struct gw_message place = place_of(ask, row), by = accepted(ask);
    out->below_site.items =
        gw_grow(ask->arena, out->below_site.items, out->below_site.n, capacity, sizeof *out->below_site.items);
    out->below_site.items[out->below_site.n++] =
        (struct gw_below_site){.said = GW_SAY(ask->arena, "{} ({}): {}{}", gw_of_text(row->id), gw_of_message(&place),
                                              gw_of_message(&more), gw_of_message(&by)),
                               .row = row,
                               .node = row->node};
}

/* "27.2 psf outward, more than the set's 21.8": figures that would read alike with more digits. */
static struct gw_message one_way(struct gw_ask *ask, const struct gw_by_set *s, int way)
{
    static const char *const ways[] = {"inward", "outward"};
    const double site = s->greatest[way], set = s->asked[way];
    const bool near = site - set < 0.01 * site;
    const struct gw_value more = near ? gw_of_quantity(GW_PRESSURE, site) : gw_of_shown(GW_PRESSURE, site),
                          less = near ? gw_of_quantity(GW_PRESSURE, set) : gw_of_shown(GW_PRESSURE, set);
    if (!(s->factor[way] < 1)) return (struct gw_message){0};
    return GW_SAY(ask->arena, "{} {}, more than the set's {}", more, gw_of_text(ways[way]), gw_of_bare(less));
}

static void pressures(struct gw_answer *out, struct gw_ask *ask, size_t *capacity)
{
    for (size_t i = 0; i < ask->takeoff->by_set.n; i++) {
        const struct gw_by_set *s = &ask->takeoff->by_set.items[i];
        const struct gw_message in = one_way(ask, s, 0), suction = one_way(ask, s, 1),
                                both = gw_say_both(ask->arena, &in, ", and ", &suction);
        if (gw_said(&both))
            add(out, ask, capacity, s->row, GW_SAY(ask->arena, "the site asks {}", gw_of_message(&both)));
    }
}

/* Of the places of a row the one of which the site asks most. */
static const struct gw_demand *worst_of(const struct gw_judgement *j, const struct gw_required *row)
{
    const struct gw_demand *worst = NULL;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (d->row != row || !d->below_row) continue;
        const double value = d->below_row->value, before = worst ? worst->below_row->value : 0;
        if (!worst || (d->at_most ? value < before : value > before)) worst = d;
    }
    return worst;
}

void gw_find_below_rows(struct gw_answer *out, struct gw_ask *ask, size_t *capacity)
{
    const struct gw_requirement_set *set = out->model->set; /* a project that was refused has none */
    if (!set) return;
    pressures(out, ask, capacity);
    for (size_t i = 0; i < set->requires.n; i++) {
        const struct gw_demand *worst = worst_of(&out->judgement, &set->requires.items[i]);
        if (worst) add(out, ask, capacity, &set->requires.items[i], worst->below_row->said);
    }
}

bool gw_below_unaccepted(const struct gw_answer *answer)
{
    if (answer->model->project.requirement_set_accepted) return false;
    for (size_t i = 0; i < answer->below_site.n; i++)
        if (answer->below_site.items[i].row) return true;
    return false;
}
