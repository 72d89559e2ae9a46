/* What a system states of the way of water, against what the site and practice ask, by the items that judge it. */
#include "report/draw/weep.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

/* As the system is, but for what it asks of the work: then the site, geometry or practice is what it is held to. */
static const struct gw_system *without_own(const struct weep *w)
{
    struct gw_system *copy = gw_alloc(w->d.sheet.arena, 1, sizeof *copy);
    *copy = *w->d.system;
    copy->installation = NULL;
    if (!copy->drainage) return copy;
    struct gw_drainage_spec *drainage = gw_alloc(w->d.sheet.arena, 1, sizeof *drainage);
    *drainage = *copy->drainage;
    drainage->slots = drainage->slot_length = drainage->slot_height = GW_ABSENT;
    copy->drainage = drainage;
    return copy;
}

static double own_least(const struct weep *w, enum gw_item_id item)
{
    const struct gw_installation *own = w->d.system->installation;
    return own && own->of[item] ? own->of[item]->at_least : GW_ABSENT;
}

/* By the item: a dam as high as is asked, over the head that it is asked for. */
static void set_head(struct weep *w)
{
    struct gw_item_limit limit;
    struct gw_item_result *r = gw_alloc(w->d.sheet.arena, 1, sizeof *r);
    struct gw_as_read read;
    const struct gw_system *system = without_own(w);
    const struct gw_item *dam = gw_item_of(GW_ITEM_end_dam_height);
    gw_item_limit_at(&limit, &w->d.ask, dam, &w->spot, system);
    gw_as_read_clear(&read);
    read.of[dam->id].number = gw_given(limit.at_least) ? limit.at_least : 0;
    gw_item_judge(r, &w->d.ask, dam, &w->spot, &read, system);
    w->needed = limit.at_least;
    w->head = r->remaining > 0 ? limit.at_least / r->remaining : GW_ABSENT;
    if (!gw_given(w->head)) w->unknown = r->message;
}

void gw_weep_figures(struct weep *w)
{
    const struct gw_drainage_spec *s = w->d.system->drainage;
    const struct gw_installation *own = w->d.system->installation;
    w->depth = s ? s->pocket_depth : GW_ABSENT;
    w->upstand = s ? s->upstand : GW_ABSENT;
    w->slots = s ? s->slots : GW_ABSENT;
    w->slot_length = s ? s->slot_length : GW_ABSENT;
    w->slot_height = s ? s->slot_height : GW_ABSENT;
    w->offset = own_least(w, GW_ITEM_weep_offset);
    w->dam = own_least(w, GW_ITEM_end_dam_height);
    w->slope = own_least(w, GW_ITEM_sill_slope);
    w->cover = own ? own->of[GW_ITEM_cover_weep_length] : NULL;
    set_head(w);
}

/* Everything that the system states of its weeps, as if it had been read. */
static struct gw_as_read as_stated(const struct weep *w)
{
    struct gw_as_read read;
    gw_as_read_clear(&read);
    read.drawn = true;
    read.of[GW_ITEM_weep_count].number = w->slots;
    read.of[GW_ITEM_weep_length].number = w->slot_length;
    read.of[GW_ITEM_weep_height].number = w->slot_height;
    read.of[GW_ITEM_cover_weep_length].number = w->cover ? w->cover->at_least : GW_ABSENT;
    read.of[GW_ITEM_weep_offset].number = w->offset;
    read.of[GW_ITEM_end_dam_height].number = w->dam;
    read.of[GW_ITEM_sill_slope].number = w->slope;
    return read;
}

static void add_item(struct weep *w, const char *name, enum gw_item_id item)
{
    const struct gw_as_read read = as_stated(w);
    gw_detail_item(&w->d, name, item, &w->spot, &read, without_own(w));
}

/* Sizes of the slots alone: whether they drain is the first line. */
static void add_size(struct weep *w, const char *name, enum gw_item_id item, double value)
{
    gw_detail_practice(&w->d, name, item, &w->spot, value, without_own(w));
}

static const char *times(const struct weep *w, double factor)
{
    struct gw_text text;
    gw_text_init(&text, w->d.sheet.arena);
    if (!isfinite(factor)) return "any";
    gw_text_fixed(&text, floor(factor * 100 + 1e-9) / 100, 2);
    return text.at;
}

/* What the slots pass over what the test's spray lets in, at the bad end of the share and at the good one. */
static void add_flow(struct weep *w)
{
    struct detail *d = &w->d;
    struct gw_item_result *r = gw_alloc(d->sheet.arena, 1, sizeof *r);
    struct gw_as_read read;
    gw_as_read_clear(&read);
    read.drawn = true;
    read.of[GW_ITEM_weep_count].number = w->slots;
    gw_item_judge(r, &d->ask, gw_item_of(GW_ITEM_weep_count), &w->spot, &read, d->system);
    const bool known = gw_given(r->remaining_worst);
    struct detail_row row = {.name = "Drainage over rain let in",
                             .mark = known ? gw_detail_item_mark(r->verdict) : MARK_ASK,
                             .verdict = known ? gw_item_verdict_name(r->verdict) : "not shown",
                             .how = gw_detail_said(d, &r->message)};
    if (known) {
        const bool range = r->remaining > r->remaining_worst * 1.005;
        row.provided = range
                           ? gw_format(d->sheet.arena, "%s to %s", times(w, r->remaining_worst), times(w, r->remaining))
                           : times(w, r->remaining_worst);
        row.required = times(w, r->required);
    }
    gw_detail_row(d, row);
}

/* An upstand inside is held to what an end dam is: the head of the test, and a margin. */
static void add_upstand(struct weep *w)
{
    struct gw_as_read read = as_stated(w);
    read.of[GW_ITEM_end_dam_height].number = w->upstand;
    gw_detail_item(&w->d, "Upstand to inner air seal", GW_ITEM_end_dam_height, &w->spot, &read, without_own(w));
}

void gw_weep_rows(struct weep *w)
{
    if (gw_said(&w->where)) {
        gw_detail_row(&w->d, (struct detail_row){.name = "Weeps",
                                                 .mark = MARK_ASK,
                                                 .verdict = "not shown",
                                                 .how = gw_detail_said(&w->d, &w->where)});
        return;
    }
    add_flow(w);
    add_size(w, "Slots under one lite", GW_ITEM_weep_count, w->slots);
    add_size(w, "Length of a slot", GW_ITEM_weep_length, w->slot_length);
    add_size(w, "Height of a slot", GW_ITEM_weep_height, w->slot_height);
    add_item(w, "Length of a cover's slot", GW_ITEM_cover_weep_length);
    add_item(w, "Offset, plate to cover", GW_ITEM_weep_offset);
    add_upstand(w);
    add_item(w, "End dam at the sill", GW_ITEM_end_dam_height);
    add_item(w, "Slope of the sill, outward", GW_ITEM_sill_slope);
}
