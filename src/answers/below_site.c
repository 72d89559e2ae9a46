/* Requirements of the project that ask for less than the site does: verdicts go by them, and readers must know it. */
#include "galeward/answers.h"

#include <string.h>

struct lowest {
    const struct gw_demand *worst;
    long places;
};

/* Of a limit that is not to be exceeded the lower value asks for more. */
static bool asks_more(const struct gw_demand *a, const struct gw_demand *b)
{
    return a->at_most ? a->below->value < b->below->value : a->below->value > b->below->value;
}

/* "water, wall east (at worst of 3): the project asks ..." */
static struct gw_message whole(struct gw_ask *ask, const struct lowest *of)
{
    const struct gw_demand *d = of->worst;
    const struct gw_message others =
        of->places > 1 ? GW_SAY(ask->arena, " (at worst of {})", gw_of_count(of->places)) : (struct gw_message){0};
    return GW_SAY(ask->arena, "{}, wall {}{}: {}; verdicts go by the project's", gw_of_text(d->check->id),
                  gw_of_text(d->where), gw_of_message(&others), gw_of_message(&d->below->said));
}

static const struct gw_node *stands_at(const struct gw_ask *ask, const char *key)
{
    const struct gw_node *all = gw_node_get(ask->model->project.node, "requirements");
    const struct gw_node *own = all ? gw_node_get(all, key) : NULL;
    return own ? own : all;
}

static void add(struct gw_answer *out, struct gw_ask *ask, const struct lowest *of, size_t *capacity)
{
    if (!of->worst) return;
    out->below_site.items =
        gw_grow(ask->arena, out->below_site.items, out->below_site.n, capacity, sizeof *out->below_site.items);
    out->below_site.items[out->below_site.n++] =
        (struct gw_below_site){.said = whole(ask, of), .node = stands_at(ask, of->worst->check->id)};
}

/* The demands of a check follow each other. */
void gw_find_below_site(struct gw_answer *out, struct gw_ask *ask)
{
    const struct gw_judgement *j = &out->judgement;
    struct lowest of = {NULL, 0};
    size_t capacity = 0;
    for (size_t i = 0; i < j->demands.n; i++) {
        const struct gw_demand *d = &j->demands.items[i];
        if (!d->below) continue;
        if (of.worst && of.worst->check != d->check) {
            add(out, ask, &of, &capacity);
            of = (struct lowest){NULL, 0};
        }
        if (!of.worst || asks_more(d, of.worst)) of.worst = d;
        of.places++;
    }
    add(out, ask, &of, &capacity);
    gw_find_below_rows(out, ask, &capacity);
}
