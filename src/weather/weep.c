/* Flow out of weeps under the head that the air pressure leaves. */
#include "weather_internal.h"

#include "base/tolerance.h"

static const char NOTE_SHUT[] = "the air pressure holds the water up: nothing drains, and air blows in";
static const char NOTE_HELD[] =
    "the net head does not overcome the surface tension at the opening: it may not start to "
    "drain";
static const char NOTE_ROUND[] = "smaller than the least round weep of practice";
static const char NOTE_SLOT[] = "lower than the least slot of practice";
static const char NOTE_PART_ROUND[] =
    "the hole runs part full: the formula of a full one gives up to 15 % more than the water would";
static const char NOTE_PART_SLOT[] = "the slot runs part full: as a weir, where that gives less";

struct weep {
    struct gw_weep_case in;
    bool round;
    double size;     /* m: diameter, or height of the slot */
    double one_area; /* m2 */
    double gravity;  /* m/s2 */
    double weir;     /* discharge coefficient */
};

static void note(struct gw_weep_result *out, const char *text)
{
    if (out->n_notes < GW_WEEP_NOTES) out->notes[out->n_notes++] = text;
}

static enum gw_status check_shape(const struct gw_weep_case *in, struct gw_engine *engine)
{
    bool round = gw_given(in->diameter), slot = gw_given(in->slot_length) || gw_given(in->slot_height);
    if (round == slot)
        return gw_refuse(engine, round ? GW_BAD_VALUE : GW_MISSING, "diameter",
                         "give a diameter or a slot, one of them");
    if (round) return weather_positive("diameter", in->diameter, engine);
    enum gw_status status = weather_positive("length", in->slot_length, engine);
    return status ? status : weather_positive("height", in->slot_height, engine);
}

static enum gw_status check(const struct gw_weep_case *in, struct gw_engine *engine)
{
    enum gw_status status = check_shape(in, engine);
    if (!status) status = weather_magnitude("head", in->head, engine);
    if (!status && gw_given(in->adverse_pressure))
        status = weather_magnitude("adverse_pressure", in->adverse_pressure, engine);
    if (!status) status = weather_if_given("discharge_coefficient", in->discharge_coefficient, engine);
    if (!status) status = weather_if_given("wet_area", in->wet_area, engine);
    if (!status) status = weather_if_given("leak_fraction", in->leak_fraction, engine);
    if (status) return status;
    if (in->count < 1) return gw_refuse(engine, GW_BAD_VALUE, "count", "count must be at least 1");
    if (gw_given(in->discharge_coefficient) && in->discharge_coefficient > 1)
        return gw_refuse(engine, GW_BAD_VALUE, "discharge_coefficient", "discharge_coefficient cannot exceed 1");
    if (gw_given(in->leak_fraction) && in->leak_fraction > 1)
        return gw_refuse(engine, GW_BAD_VALUE, "leak_fraction", "leak_fraction cannot exceed 1");
    if (gw_given(in->wet_area) != gw_given(in->leak_fraction))
        return gw_refuse(engine, GW_MISSING, gw_given(in->wet_area) ? "leak_fraction" : "wet_area",
                         "rain that gets in needs wet_area and leak_fraction");
    return GW_OK;
}

static void open_weep(struct weep *w, const struct gw_weep_case *in, struct gw_engine *engine)
{
    const struct gw_weep_discharge *row = &engine->tables->weep_discharge[GW_ROW_WEEP_DISCHARGE_SHARP_EDGE];
    const double pi = 3.14159265358979323846;
    *w = (struct weep){.in = *in, .round = gw_given(in->diameter), .gravity = weather_water(engine)->gravity_m_s2};
    if (!gw_given(in->adverse_pressure)) w->in.adverse_pressure = 0;
    if (!gw_given(in->discharge_coefficient)) w->in.discharge_coefficient = GW_USE(engine, row)->orifice;
    w->weir = row->weir;
    w->size = w->round ? in->diameter : in->slot_height;
    w->one_area = w->round ? pi / 4 * in->diameter * in->diameter : in->slot_length * in->slot_height;
}

static void find_head(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    const double weight = weather_water(engine)->unit_weight_n_m3;
    out->net_head = w->in.head - w->in.adverse_pressure / weight;
    GW_STEP(engine, "h_net", GW_LENGTH, out->net_head, "head less adverse air pressure", "h-p/gamma",
            {"h", w->in.head, GW_LENGTH}, {"p", w->in.adverse_pressure, GW_PRESSURE},
            {"gamma", weight, GW_UNIT_WEIGHT});
    if (out->net_head > 0) return;
    note(out, NOTE_SHUT);
}

/* Full bore: Q = C A sqrt(2 g h), h to the middle of the opening. */
static void run_full(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    const double c = w->in.discharge_coefficient;
    out->velocity = sqrt(2 * w->gravity * out->net_head);
    out->flow = c * out->area * out->velocity;
    GW_STEP(engine, "v", GW_VELOCITY, out->velocity, "orifice", "sqrt(2*g*h_net)", {"g", w->gravity, GW_ACCELERATION},
            {"h_net", out->net_head, GW_LENGTH});
    GW_STEP(engine, "Q", GW_FLOW, out->flow, "orifice", "C*A*v", {"C", c, GW_RATIO}, {"A", out->area, GW_AREA},
            {"v", out->velocity, GW_VELOCITY});
}

/* Water below the top of the slot: a weir of the depth over its lower edge. */
static void run_part_full(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    const struct gw_weep_discharge *row = &engine->tables->weep_discharge[GW_ROW_WEEP_DISCHARGE_SHARP_EDGE];
    const double length = w->in.count * w->in.slot_length, depth = out->net_head + w->in.slot_height / 2;
    const double full = out->flow, weir = 2.0 / 3 * w->weir * length * sqrt(2 * w->gravity) * pow(depth, 1.5);
    gw_used_add(&engine->used, &row->row);
    out->flow = fmin(full, weir);
    GW_STEP(engine, "Q", GW_FLOW, out->flow, "weir, slot part full", "min(Q_full,(2/3)*C*L*sqrt(2*g)*H^1.5)",
            {"Q_full", full, GW_FLOW}, {"C", w->weir, GW_RATIO}, {"L", length, GW_LENGTH},
            {"g", w->gravity, GW_ACCELERATION}, {"H", depth, GW_LENGTH});
}

static void drain(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    if (!(out->net_head > 0)) return;
    out->part_full = out->net_head < w->size / 2 ? GW_YES : GW_NO;
    run_full(out, w, engine);
    if (out->part_full == GW_NO) return;
    if (!w->round) run_part_full(out, w, engine);
    note(out, w->round ? NOTE_PART_ROUND : NOTE_PART_SLOT);
}

static void hold_back(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    const struct gw_weep_least *least =
        &engine->tables->weep_least[w->round ? GW_ROW_WEEP_LEAST_ROUND : GW_ROW_WEEP_LEAST_SLOT_HEIGHT];
    out->held_head = w->round ? gw_capillary_hole(w->size, engine) : gw_capillary_slot(w->size, engine);
    if (w->size < GW_USE(engine, least)->size_m * (1 - GW_HAIR)) note(out, w->round ? NOTE_ROUND : NOTE_SLOT);
    if (!(out->net_head > 0)) return;
    out->least_size = w->size * (out->held_head / out->net_head);
    GW_STEP(engine, "d_least", GW_LENGTH, out->least_size, "surface tension", "d*h_held/h_net",
            {"d", w->size, GW_LENGTH}, {"h_held", out->held_head, GW_LENGTH}, {"h_net", out->net_head, GW_LENGTH});
    if (out->net_head < out->held_head) note(out, NOTE_HELD);
}

/* Spray on the area, as much of it as the outer seals let in. */
static void load_by_rain(struct gw_weep_result *out, const struct weep *w, struct gw_engine *engine)
{
    const struct gw_water_spray *spray = &engine->tables->water_spray[GW_ROW_WATER_SPRAY_SPRAY];
    if (!gw_given(w->in.wet_area)) return;
    out->demand = GW_USE(engine, spray)->rate_m_s * w->in.wet_area * w->in.leak_fraction;
    out->drainage_ratio = out->flow / out->demand;
    GW_STEP(engine, "Q_d", GW_FLOW, out->demand, spray->row.source, "r*A*f", {"r", spray->rate_m_s, GW_VELOCITY},
            {"A", w->in.wet_area, GW_AREA}, {"f", w->in.leak_fraction, GW_RATIO});
    GW_STEP(engine, "ratio", GW_RATIO, out->drainage_ratio, "drainage", "Q/Q_d", {"Q", out->flow, GW_FLOW},
            {"Q_d", out->demand, GW_FLOW});
}

enum gw_status gw_weep(struct gw_weep_result *out, const struct gw_weep_case *in, struct gw_engine *engine)
{
    struct weep w;
    *out = (struct gw_weep_result){.part_full = GW_UNSAID};
    out->least_size = out->demand = out->drainage_ratio = GW_ABSENT;
    enum gw_status status = check(in, engine);
    if (status) return status;
    open_weep(&w, in, engine);
    out->area = in->count * w.one_area;
    find_head(out, &w, engine);
    drain(out, &w, engine);
    hold_back(out, &w, engine);
    load_by_rain(out, &w, engine);
    return GW_OK;
}
