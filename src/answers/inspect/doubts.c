/* What makes a reading doubtful, whatever its value is: its day, its point, its temperature, the tool it was set with.
 */
#include "answers/inspect/inspect_internal.h"

#include "base/tolerance.h"

#include <string.h>

/* Of itself -------------------------------------------------------------------------------------------------------- */

bool gw_is_before_fastening(const struct gw_inspected *row)
{
    const struct gw_reading *r = row->reading;
    return r->day != GW_NO_DAY && r->installed_on != GW_NO_DAY && r->day < r->installed_on;
}

/* Numbers run from 1 by one, distances from an end. */
static bool is_no_point(const struct gw_reading *r)
{
    if (r->at_distance) return r->at < 0;
    return r->at < 1 - GW_HAIR || fabs(r->at - round(r->at)) > GW_HAIR;
}

/* A point farther along an edge than it is long; of a number: twice as many screws as are asked have no room there. */
static bool is_beyond(const struct gw_inspected *row)
{
    const struct gw_reading *r = row->reading;
    const struct gw_element *lite = row->spot.lite, *screws = row->spot.screws;
    if (!gw_given(r->at) || !lite || row->spot.edge < 0 || row->spot.worst) return false;
    const double length = row->spot.edge >= GW_EDGE_LEFT ? lite->pane : lite->width;
    if (r->at_distance) return r->at > length * (1 + GW_HAIR);
    return row->item->on == GW_ON_SCREWS && screws && (r->at - 1) * screws->height / 2 > length;
}

/* K, of what the project has metal get, the end that such a one is beyond; absent: none, or it does not say. */
static double passed_by(const struct gw_inspecting *in, double temperature)
{
    const struct gw_movement_rules *m = in->ask->model->project.movement;
    if (m && temperature > m->hottest * (1 + GW_HAIR)) return m->hottest;
    return m && temperature < m->coldest * (1 - GW_HAIR) ? m->coldest : GW_ABSENT;
}

bool gw_is_no_temperature(const struct gw_inspecting *in, const struct gw_reading *r)
{
    return gw_given(passed_by(in, r->temperature));
}

static struct gw_message off_the_range(struct gw_inspecting *in, const struct gw_reading *r)
{
    const double passed = passed_by(in, r->temperature);
    const bool hot = r->temperature > passed;
    return GW_SAY(in->ask->arena,
                  "read at {}, and by the project metal gets no {} than {} (movement: {}): which is right",
                  gw_of_quantity(GW_TEMPERATURE, r->temperature), gw_of_text(hot ? "hotter" : "colder"),
                  gw_of_quantity(GW_TEMPERATURE, passed), gw_of_text(hot ? "hottest" : "coldest"));
}

struct gw_message gw_cannot_be(struct gw_inspecting *in, const struct gw_inspected *row, const struct gw_as_read *read)
{
    const struct gw_reading *r = row->reading;
    const bool width = row->item->id == GW_ITEM_joint_width;
    if (gw_is_before_fastening(row)) return GW_PLAINLY("read before it was fastened: which of the two days is wrong");
    if (is_no_point(r))
        return GW_PLAINLY("points are numbered from 1, or measured from the left or lower end: where was it read");
    if (is_beyond(row)) return GW_PLAINLY("its point lies beyond the end of that line: where was it read");
    if (width && !gw_given(r->temperature))
        return GW_PLAINLY("the joint moves with the metal: what was its temperature when the width was read");
    if (row->item->on == GW_ON_JOINT && gw_is_no_temperature(in, r)) return off_the_range(in, r);
    if (width && !gw_given(read->temperature_most))
        return GW_PLAINLY("of the air alone: what was the temperature of the metal, or how hot does a surface get "
                          "(movement: {hottest: ...})");
    return GW_PLAINLY(NULL);
}

/* The tool --------------------------------------------------------------------------------------------------------- */

static bool is_unchecked(const struct gw_inspected *row)
{
    return row->item->id == GW_ITEM_driver_checked && gw_is_open(row) &&
           strcmp(gw_item_word(row->item->id, row->reading->value), "no") == 0;
}

/* Of that day and crew, or it may be: where one of them says no day, or, on one wall, no crew. */
static bool may_be_of(const struct gw_reading *torque, const struct gw_reading *driver)
{
    const bool days = torque->day != GW_NO_DAY && driver->day != GW_NO_DAY;
    if (days && torque->day != driver->day) return false;
    if (torque->by && driver->by) return strcmp(torque->by, driver->by) == 0;
    return !torque->wall || !driver->wall || strcmp(torque->wall, driver->wall) == 0;
}

/* Drivers that were not checked, of one day, crew and wall the first; and torques that are not sure for it, by thing
 * and value. */
struct tools {
    const struct gw_inspected **drivers;
    size_t n;
    struct gw_memo told, torques;
};

static void find_drivers(struct tools *t, struct gw_inspecting *in)
{
    struct gw_arena *arena = in->ask->arena;
    t->drivers = gw_alloc(arena, in->out->rows.n + 1, sizeof(struct gw_inspected *));
    for (size_t i = 0; i < in->out->rows.n; i++) {
        const struct gw_inspected *row = &in->out->rows.items[i];
        const struct gw_reading *r = row->reading;
        if (!is_unchecked(row)) continue;
        const char *whose = gw_format(arena, "%s\n%s", r->by ? r->by : "", r->wall ? r->wall : "");
        void **at = gw_memo_named(&t->told, arena, &r->day, sizeof r->day, whose);
        if (!*at) t->drivers[t->n++] = row;
        *at = t;
    }
}

static void doubt(struct gw_inspecting *in, struct gw_inspected *row, const struct gw_inspected *driver)
{
    gw_add_said(in, row,
                GW_SAY(in->ask->arena,
                       "the driver of that day was not checked (row {} of the file): its torques are not sure",
                       gw_of_count((long)driver->reading->node->line)));
    row->verdict = GW_ITEM_UNKNOWN;
    row->action = GW_PLAINLY("read the torques of that day anew");
}

static const void **torque_of(struct tools *t, struct gw_inspecting *in, size_t thing, double value)
{
    double key[] = {(double)thing, value};
    return (const void **)gw_memo_at(&t->torques, in->ask->arena, key, sizeof key);
}

static void doubt_torque(struct tools *t, struct gw_inspecting *in, struct gw_inspected *row)
{
    const struct gw_inspected *driver = NULL;
    for (size_t i = 0; i < t->n && !driver; i++)
        if (may_be_of(row->reading, t->drivers[i]->reading)) driver = t->drivers[i];
    if (!driver) return;
    *torque_of(t, in, row->thing, row->reading->value.number) = driver;
    if (row->verdict == GW_ITEM_WITHIN || row->verdict == GW_ITEM_OUTSIDE_HOLDS) doubt(in, row, driver);
}

/* What holds only by such a torque is as little sure. */
void gw_doubt_torques(struct gw_inspecting *in)
{
    struct tools t = {0};
    struct gw_inspected *rows = in->out->rows.items;
    find_drivers(&t, in);
    for (size_t i = 0; t.n && i < in->out->rows.n; i++)
        if (rows[i].item->id == GW_ITEM_screw_torque && rows[i].thing && gw_is_open(&rows[i]))
            doubt_torque(&t, in, &rows[i]);
    for (size_t i = 0; t.n && i < in->out->rows.n; i++) {
        if (rows[i].verdict != GW_ITEM_OUTSIDE_HOLDS || !rows[i].with || !gw_is_open(&rows[i])) continue;
        const struct gw_inspected *driver =
            *torque_of(&t, in, rows[i].thing, rows[i].with->of[GW_ITEM_screw_torque].number);
        if (driver) doubt(in, &rows[i], driver);
    }
}
