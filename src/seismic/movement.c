/* Movement of joints: what opens and closes them, added up three ways. */
#include "galeward/movement.h"

#include "tables_data.h"

static const char BUDGET[] = "movement budget of a joint";
static const char THERMAL[] = "free thermal expansion";
static const char SLOT[] = "slot of an anchor that moves";
static const char NOTE_SRSS[] =
    "srss holds for independent random items only: live load, temperature and creep may come "
    "together, so size the joint by the arithmetic or the mixed sum";
static const char NOTE_ONE_WAY[] = "a tolerance was taken in one direction only; tolerances go both ways";
static const char NOTE_EXPANSION[] = "the coefficient of expansion is a handbook value that was not seen in its source";
static const char NOTE_RANGE[] = "no service temperatures given: the usual range of a material's surface is taken";
static const char NOTE_SET[] = "no temperature at installation given: the whole range is taken each way";

static void note(const char **notes, unsigned *n, const char *text)
{
    for (unsigned i = 0; i < *n; i++)
        if (notes[i] == text) return;
    if (*n < GW_MOVEMENT_NOTES) notes[(*n)++] = text;
}

static enum gw_status not_negative(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value >= 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must not be negative", gw_of_text(key));
}

static enum gw_status positive(const char *key, double value, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (value > 0 && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must be above zero", gw_of_text(key));
}

/* Running sums of one way. */
struct sums {
    double movements, tolerances, movements_squared, tolerances_squared;
};

static void add(struct sums *sums, const struct gw_movement_item *item)
{
    if (item->kind == GW_TOLERANCE) {
        sums->tolerances += item->value;
        sums->tolerances_squared += item->value * item->value;
    } else {
        sums->movements += item->value;
        sums->movements_squared += item->value * item->value;
    }
}

static void close_sums(struct gw_movement_sums *out, const struct sums *sums, const char *const *symbols,
                       struct gw_engine *engine)
{
    const double random = sqrt(sums->tolerances_squared), all = sqrt(sums->movements_squared);
    out->arithmetic = sums->movements + sums->tolerances;
    out->mixed = sums->movements + random;
    out->srss = hypot(all, random);
    GW_STEP(engine, symbols[0], GW_THICKNESS, out->arithmetic, BUDGET, "M+T", {"M", sums->movements, GW_THICKNESS},
            {"T", sums->tolerances, GW_THICKNESS});
    GW_STEP(engine, symbols[1], GW_THICKNESS, out->mixed, BUDGET, "M+t", {"M", sums->movements, GW_THICKNESS},
            {"t", random, GW_THICKNESS});
    GW_STEP(engine, symbols[2], GW_THICKNESS, out->srss, BUDGET, "sqrt(m^2+t^2)", {"m", all, GW_THICKNESS},
            {"t", random, GW_THICKNESS});
}

static enum gw_status check_item(const struct gw_movement_item *item, struct gw_engine *engine)
{
    if (item->kind == GW_MOVEMENT_UNSET)
        return gw_refuse(engine, GW_MISSING, "kind", "kind of an item is not given: movement or tolerance");
    if (item->kind == GW_MOVEMENT && item->direction == GW_DIRECTION_UNSET)
        return gw_refuse(engine, GW_MISSING, "direction", "direction of a movement is not given: open, close or both");
    return not_negative("value", item->value, engine);
}

static void trace_item(const struct gw_movement_item *item, enum gw_direction way, struct gw_engine *engine)
{
    GW_STEP(engine, item->name ? item->name : "item", GW_THICKNESS, item->value, BUDGET, "m",
            {"m", item->value, GW_THICKNESS});
    GW_TRACE_SAY(engine, item->kind == GW_TOLERANCE ? "tolerance" : "movement", BUDGET, "{} {}",
                 gw_of_quantity(GW_THICKNESS, item->value),
                 gw_of_text(way == GW_BOTH_WAYS ? "each way"
                            : way == GW_CLOSES  ? "closes"
                                                : "opens"));
}

static struct gw_movement_sums beyond(const struct gw_movement_sums *sums, double more)
{
    return (struct gw_movement_sums){sums->arithmetic + more, sums->mixed + more, sums->srss + more};
}

enum gw_status gw_movement_sum(struct gw_movement_result *out, const struct gw_movement_item *items, size_t n,
                               double least_gap, double least_overlap, struct gw_engine *engine)
{
    static const char *const closes[] = {"closing, arithmetic", "closing, mixed", "closing, srss"};
    static const char *const opens[] = {"opening, arithmetic", "opening, mixed", "opening, srss"};
    struct sums closing = {0}, opening = {0};
    *out = (struct gw_movement_result){.n_notes = 0};
    enum gw_status status = not_negative("least_gap", least_gap, engine);
    if (!status && gw_given(least_overlap)) status = not_negative("least_overlap", least_overlap, engine);
    for (size_t i = 0; i < n && !status; i++) {
        const struct gw_movement_item *item = &items[i];
        status = check_item(item, engine);
        if (status) break;
        enum gw_direction way = item->direction == GW_DIRECTION_UNSET ? GW_BOTH_WAYS : item->direction;
        if (item->kind == GW_TOLERANCE && way != GW_BOTH_WAYS) note(out->notes, &out->n_notes, NOTE_ONE_WAY);
        trace_item(item, way, engine);
        if (way != GW_OPENS) add(&closing, item);
        if (way != GW_CLOSES) add(&opening, item);
    }
    if (status) return status;
    close_sums(&out->closing, &closing, closes, engine);
    close_sums(&out->opening, &opening, opens, engine);
    out->joint = beyond(&out->closing, least_gap);
    out->engagement = beyond(&out->opening, least_overlap); /* absent with it */
    note(out->notes, &out->n_notes, NOTE_SRSS);
    return GW_OK;
}

/* Thermal ------------------------------------------------------------------------------------------------------------
 */

double gw_thermal_length(double expansion_per_k, double length, double difference_k, struct gw_engine *engine)
{
    double grown = expansion_per_k * length * difference_k;
    GW_STEP(engine, "dL", GW_THICKNESS, grown, THERMAL, "alpha*L*dT", {"alpha", expansion_per_k, GW_RATIO},
            {"L", length, GW_THICKNESS}, {"dT", difference_k, GW_RATIO});
    return grown;
}

static enum gw_status find_expansion(struct gw_thermal_result *out, const struct gw_thermal_case *in,
                                     struct gw_engine *engine)
{
    out->expansion_per_k = in->expansion_per_k;
    if (gw_given(in->expansion_per_k) && in->material != GW_EXPANDS_UNSET)
        return gw_refuse(engine, GW_BAD_VALUE, "expansion_per_k", "give the material or its expansion_per_k, not both");
    if (gw_given(in->expansion_per_k)) return positive("expansion_per_k", in->expansion_per_k, engine);
    for (size_t i = 0; i < GW_N_THERMAL_EXPANSION; i++) {
        const struct gw_thermal_expansion *row = &engine->tables->thermal_expansion[i];
        if (row->material != (int)in->material) continue;
        out->expansion_per_k = GW_USE(engine, row)->per_k;
        if (row->row.basis == GW_SECOND_HAND || row->row.basis == GW_MEMORY)
            note(out->notes, &out->n_notes, NOTE_EXPANSION);
        return GW_OK;
    }
    return gw_refuse(engine, GW_MISSING, "material", "give the material, or its expansion_per_k");
}

static enum gw_status check_pair(double low, const char *low_key, double high, const char *high_key,
                                 struct gw_engine *engine)
{
    if (gw_given(low) != gw_given(high))
        return gw_refuse(engine, GW_MISSING, gw_given(low) ? high_key : low_key, "give both {} and {}, or neither",
                         gw_of_text(low_key), gw_of_text(high_key));
    if (!gw_given(low) || low <= high) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, low_key, "{} is above {}", gw_of_text(low_key), gw_of_text(high_key));
}

static enum gw_status find_swing(struct gw_thermal_result *out, const struct gw_thermal_case *in,
                                 struct gw_engine *engine)
{
    enum gw_status status = check_pair(in->coldest, "coldest", in->hottest, "hottest", engine);
    if (!status) status = check_pair(in->set_coldest, "set_coldest", in->set_warmest, "set_warmest", engine);
    if (status) return status;
    if (!gw_given(in->hottest)) {
        if (gw_given(in->set_warmest))
            return gw_refuse(engine, GW_MISSING, "hottest", "temperatures at installation need those in service");
        const struct gw_temperature_range *row =
            GW_USE(engine, &engine->tables->temperature_range[GW_ROW_TEMPERATURE_RANGE_SURFACE]);
        out->rise = out->fall = row->range_k;
        note(out->notes, &out->n_notes, NOTE_RANGE);
        note(out->notes, &out->n_notes, NOTE_SET);
        gw_trace_note(engine, "dT", THERMAL, NOTE_RANGE);
        return GW_OK;
    }
    bool set = gw_given(in->set_warmest);
    if (!set) note(out->notes, &out->n_notes, NOTE_SET);
    out->rise = fmax(in->hottest - (set ? in->set_coldest : in->coldest), 0);
    out->fall = fmax((set ? in->set_warmest : in->hottest) - in->coldest, 0);
    gw_trace_note(engine, "dT", THERMAL,
                  set ? "in kelvin: hottest less coldest at installation; warmest at installation less coldest"
                      : NOTE_SET);
    return GW_OK;
}

enum gw_status gw_thermal_movement(struct gw_thermal_result *out, const struct gw_thermal_case *in,
                                   struct gw_engine *engine)
{
    *out = (struct gw_thermal_result){.n_notes = 0};
    enum gw_status status = positive("length", in->length, engine);
    if (!status) status = find_expansion(out, in, engine);
    if (!status) status = find_swing(out, in, engine);
    if (status) return status;
    out->growth = gw_thermal_length(out->expansion_per_k, in->length, out->rise, engine);
    out->shrinkage = gw_thermal_length(out->expansion_per_k, in->length, out->fall, engine);
    return GW_OK;
}

/* A stack joint ------------------------------------------------------------------------------------------------------
 */

struct list {
    struct gw_movement_item *items;
    size_t n;
};

static void put(struct list *list, const char *name, double value, enum gw_direction way, enum gw_movement_kind kind)
{
    if (gw_given(value)) list->items[list->n++] = (struct gw_movement_item){name, value, way, kind};
}

/* The usual tolerance is the wider one of practice. */
static double tolerance(double given, int row, struct gw_engine *engine)
{
    return gw_given(given) ? given : GW_USE(engine, &engine->tables->joint_tolerance[row])->most_m;
}

size_t gw_joint_items(struct gw_movement_item *items, const struct gw_stack_joint *in, struct gw_engine *engine)
{
    struct list list = {.items = items};
    const double stories = gw_given(in->stories) ? in->stories : 1;
    put(&list, "live load, floor above", in->live_above, GW_CLOSES, GW_MOVEMENT);
    put(&list, "live load, floor below", in->live_below, GW_OPENS, GW_MOVEMENT);
    put(&list, "shortening of columns", in->shortening * stories, GW_CLOSES, GW_MOVEMENT);
    put(&list, "rebound", in->rebound, GW_OPENS, GW_MOVEMENT);
    if (in->thermal) {
        put(&list, "thermal growth", in->thermal->growth, GW_CLOSES, GW_MOVEMENT);
        put(&list, "thermal shrinkage", in->thermal->shrinkage, GW_OPENS, GW_MOVEMENT);
    }
    put(&list, "fabrication", tolerance(in->fabrication, GW_ROW_JOINT_TOLERANCE_FABRICATION, engine), GW_BOTH_WAYS,
        GW_TOLERANCE);
    put(&list, "erection", tolerance(in->erection, GW_ROW_JOINT_TOLERANCE_ERECTION, engine), GW_BOTH_WAYS,
        GW_TOLERANCE);
    return list.n;
}

enum gw_status gw_floor_movement(double *out, double span, double span_ratio, struct gw_engine *engine)
{
    enum gw_status status = positive("span", span, engine);
    if (status) return status;
    if (!gw_given(span_ratio)) span_ratio = GW_USE(engine, &engine->tables->floor_deflection[0])->span_ratio;
    status = positive("span_ratio", span_ratio, engine);
    if (status) return status;
    *out = span / span_ratio;
    GW_STEP(engine, "d_LL", GW_THICKNESS, *out, "share of the span", "L/r", {"L", span, GW_THICKNESS},
            {"r", span_ratio, GW_RATIO});
    return GW_OK;
}

enum gw_status gw_anchor_slot(double *out, double bolt, double movement, double tolerance_each_way,
                              struct gw_engine *engine)
{
    enum gw_status status = positive("bolt", bolt, engine);
    if (!status) status = not_negative("movement", movement, engine);
    if (!status) status = not_negative("tolerance", tolerance_each_way, engine);
    if (status) return status;
    *out = bolt + 2 * (movement + tolerance_each_way);
    GW_STEP(engine, "slot", GW_THICKNESS, *out, SLOT, "d+2*(m+t)", {"d", bolt, GW_THICKNESS},
            {"m", movement, GW_THICKNESS}, {"t", tolerance_each_way, GW_THICKNESS});
    return GW_OK;
}
