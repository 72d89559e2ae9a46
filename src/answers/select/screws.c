/* How many screws stand at a place, at the spacing that is hung there: the wall's own, else that of an option that is
 * taken, else the system's. Two options that change the screw otherwise are never taken together, so what is taken
 * first tells the spacing. */
#include "answers/select/select_internal.h"

/* As the file would be read with the option: what it does not change stays the system's. */
static double changed_length(const struct gw_system *system, const struct gw_node *screw, const char *key, double own)
{
    const struct gw_node *node = gw_node_get(screw, key);
    double value;
    size_t at;
    if (!node) return own;
    if (node->kind != GW_SCALAR || gw_quantity_read(gw_units_standard(), GW_LENGTH, system->units, node->text,
                                                    node->length, &value, &at) != GW_QUANTITY_OK)
        return GW_ABSENT;
    return value;
}

static const struct gw_node *screw_of(const struct gw_system_option *o)
{
    return o->change ? gw_node_get(o->change, "screw") : NULL;
}

/* By place. */
static void count(const struct search *s, long *by_place, double spacing, double end_distance)
{
    const struct gw_takeoff *t = s->ask->takeoff;
    for (size_t i = 0; i < t->elements.n; i++) {
        const struct gw_element *e = &t->elements.items[i];
        if (e->kind == GW_SCREW) by_place[s->places->of[i]] += gw_takeoff_screws(t, e, spacing, end_distance);
    }
}

void gw_search_screws(struct search *s)
{
    const struct gw_screw_spec *own = s->candidate->screw;
    const double spacing = own ? own->spacing : GW_ABSENT, end = own ? own->end_distance : GW_ABSENT;
    const size_t places = s->places->n;
    s->screws = gw_alloc(s->arena, (1 + s->candidate->options.n) * places + 1, sizeof *s->screws);
    count(s, s->screws, spacing, end);
    for (size_t i = 0; i < s->candidate->options.n; i++) {
        const struct gw_node *screw = screw_of(&s->candidate->options.items[i]);
        if (!gw_node_get(screw, "spacing") && !gw_node_get(screw, "end_distance")) continue;
        s->spacing |= gw_option_bit(i);
        count(s, &s->screws[(1 + i) * places], changed_length(s->candidate, screw, "spacing", spacing),
              changed_length(s->candidate, screw, "end_distance", end));
    }
}

long gw_search_screws_at(const struct search *s, size_t place, gw_option_set taken)
{
    size_t at = 0;
    for (size_t i = 0; i < s->candidate->options.n && !at; i++)
        if (taken & s->spacing & gw_option_bit(i)) at = 1 + i;
    return s->screws[at * s->places->n + place];
}
