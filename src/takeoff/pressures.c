/* The pressure on a group: computed, or given by the drawings, or from the wind tunnel. */
#include "takeoff_internal.h"

#include "tables_data.h"

#include <string.h>

/* Openings that were stated are those of the whole building: what breaks is open besides, wherever it is. */
static void count_breach(struct gw_wind_case *out, const struct gw_waiver *waiver)
{
    if (waiver->counted == out->enclosure) return;
    out->enclosure = waiver->counted;
    out->highest_opening = out->internal_volume = out->opening_area = GW_ABSENT;
}

void gw_building_case(const struct gw_model *model, const struct gw_building *building, struct gw_wind_case *out)
{
    const struct gw_site *site = model->project.site;
    const struct gw_waiver *waiver = gw_model_waiver(model, building);
    *out = (struct gw_wind_case){.edition = model->project.codes->wind,
                                 .basic_wind_speed = site->basic_wind_speed,
                                 .exposure = site->exposure,
                                 .mean_roof_height = building->roof_height,
                                 .height = GW_ABSENT,
                                 .least_width = building->least_width,
                                 .elevation = site->elevation,
                                 .ke = GW_ABSENT,
                                 .kzt = GW_ABSENT,
                                 .topography = site->topography,
                                 .enclosure = building->enclosure,
                                 .effective_area = GW_ABSENT,
                                 .span = GW_ABSENT,
                                 .width = GW_ABSENT,
                                 .zone = 4,
                                 .roof_slope = building->roof_slope,
                                 .alternative_60_90 = building->alternative_60_90,
                                 .exposure_b_floor = site->exposure_b_floor,
                                 .strip_cap = model->project.options->strip_cap,
                                 .highest_opening = building->highest_opening,
                                 .internal_volume = building->internal_volume,
                                 .opening_area = building->opening_area};
    if (waiver) count_breach(out, waiver);
}

void gw_building_parapet(const struct gw_building *building, struct gw_wind_parapet *out)
{
    *out = (struct gw_wind_parapet){.top = building->roof_height + building->parapet_height,
                                    .height = building->parapet_height,
                                    .gcpi = building->parapet_gcpi,
                                    .perimeter = building->parapet_perimeter,
                                    .corner_distance = GW_ABSENT};
}

void gw_report_fault(const struct gw_builder *b, const struct gw_node *node, const char *where,
                     const struct gw_fault *fault)
{
    gw_diag_node(b->diags, GW_ERROR, gw_status_code(fault->status), fault->key, node, "%s: %s%s", where,
                 fault->status == GW_OUTSIDE_METHOD ? "outside the method: " : "",
                 gw_fault_text(b->arena, fault, b->model->project.units));
}

void gw_takeoff_case(const struct gw_model *model, const struct gw_element *e, struct gw_wind_case *out,
                     struct gw_wind_parapet *parapet)
{
    const struct gw_building *building = e->building;
    gw_building_case(model, building, out);
    bool center = model->project.options->inward_height == GW_QZ_CENTER;
    double z = center ? (e->bottom + e->top) / 2 : e->top;
    const double ground = 0.001; /* m: the method starts above the ground; K_z is constant near it */
    out->height = e->parapet ? building->roof_height : fmax(fmin(z, building->roof_height), ground);
    out->effective_area = e->effective_area;
    out->zone = e->zone;
    if (!e->parapet) return;
    gw_building_parapet(building, parapet);
    parapet->corner_distance = gw_given(e->roof_distance) ? e->roof_distance : HUGE_VAL;
    out->parapet = parapet;
}

static bool holds_skin(enum gw_kind kind) { return kind == GW_LITE || kind == GW_SCREW; }

/* Above the roof, glass and its screws take the outer skin's pressure, framing both skins together. */
static void take_computed(struct gw_element *e, const struct gw_wind_result *r, struct gw_engine *engine)
{
    const struct gw_parapet_result *p = r->parapet_result;
    e->inward = r->positive;
    e->outward = r->negative;
    e->inward_by = e->outward_by = (struct gw_pressure_source){.source = e->governs, .how = ""};
    if (!e->parapet || !p) return;
    e->inward.pa = holds_skin(e->kind) ? p->skin_positive : p->windward_net;
    e->outward.pa = holds_skin(e->kind) ? p->skin_negative : -p->leeward_net;
    if (holds_skin(e->kind)) return;
    gw_trace_group(engine, GW_WIND_PARAPET);
    GW_STEP(engine, "p_framing,out", GW_PRESSURE, e->outward.pa, "positive is inward", "-p_leeward",
            {"p_leeward", p->leeward_net, GW_PRESSURE});
}

struct gw_strength gw_given_strength(enum gw_level level, double pa, struct gw_engine *engine)
{
    return level == GW_LEVEL_ASD ? gw_to_strength((struct gw_asd){pa}, engine) : (struct gw_strength){pa};
}

bool gw_speaks_of(const char *building, int zone, const struct gw_element *e)
{
    return zone == e->zone && (!building || strcmp(building, e->building->name) == 0);
}

const char *gw_pressure_source_text(struct gw_arena *arena, const struct gw_pressure_source *source)
{
    return source->by ? gw_format(arena, "%s %s%s", source->by, source->source, source->how) : source->source;
}

/* A derivation has its steps to say so. */
const char *gw_governed_by(const struct gw_builder *b, const char *what, const char *source, const char *how)
{
    return b->takeoff ? gw_format(b->arena, "%s %s%s", what, source, how) : "";
}

/* The tunnel's building was not broken open: the greater of its pressures and the computed ones. */
static void take_greater(struct gw_element *e, struct gw_strength computed_in, struct gw_strength computed_out,
                         const char *source, struct gw_engine *engine)
{
    const double inward = fmax(e->inward.pa, computed_in.pa), outward = fmin(e->outward.pa, computed_out.pa);
    GW_STEP(engine, "p_greater,in", GW_PRESSURE, inward, source, "max(p, p_tunnel)", {"p", computed_in.pa, GW_PRESSURE},
            {"p_tunnel", e->inward.pa, GW_PRESSURE});
    GW_STEP(engine, "p_greater,out", GW_PRESSURE, outward, source, "min(p, p_tunnel)",
            {"p", computed_out.pa, GW_PRESSURE}, {"p_tunnel", e->outward.pa, GW_PRESSURE});
    e->inward.pa = inward;
    e->outward.pa = outward;
}

/* The test result, but not less than the code's floor, which is a share of Zone 4 whatever the element's own zone. */
static void take_tunnel(struct gw_builder *b, struct gw_element *e, struct gw_engine *engine)
{
    const struct gw_project *p = &b->model->project;
    for (size_t i = 0; i < p->wind_tunnel.n && !e->parapet; i++) {
        const struct gw_tunnel_row *row = &p->wind_tunnel.items[i];
        if (!gw_speaks_of(row->building, row->zone, e)) continue;
        struct gw_wind_case in;
        struct gw_wind_parapet unused;
        struct gw_wind_result zone_4;
        gw_takeoff_case(b->model, e, &in, &unused);
        in.zone = 4;
        gw_trace_at(engine, "4");
        if (gw_wind_pressure(&zone_4, &in, engine) != GW_OK) return;
        gw_trace_group(engine, GW_TAKEOFF_GIVEN);
        gw_trace_at(engine, "in");
        const struct gw_strength test_in = gw_given_strength(row->level, row->inward, engine);
        const struct gw_strength computed_in = e->inward, computed_out = e->outward;
        e->inward = gw_wind_tunnel(test_in, zone_4.positive, engine);
        gw_trace_at(engine, "out");
        const struct gw_strength test_out = gw_given_strength(row->level, -row->outward, engine);
        e->outward = gw_wind_tunnel(test_out, zone_4.negative, engine);
        gw_trace_at(engine, NULL);
        bool floored = e->outward.pa < test_out.pa || e->inward.pa > test_in.pa;
        const bool breached = gw_model_breached(b->model, e->building);
        if (breached) take_greater(e, computed_in, computed_out, row->source, engine);
        const char *how = breached ? ", or computed where greater" : floored ? ", code floor" : "";
        e->governs = gw_governed_by(b, "wind tunnel", row->source, how);
        e->inward_by = e->outward_by = (struct gw_pressure_source){"wind tunnel", row->source, how, NULL};
        e->computed = false;
    }
}

static void set_levels(const struct gw_builder *b, struct gw_element *e, struct gw_engine *engine)
{
    enum gw_building_code code = b->model->project.codes->building;
    bool framing = e->kind == GW_MULLION || e->kind == GW_TRANSOM;
    gw_trace_group(engine, GW_WIND_LEVEL);
    gw_trace_at(engine, "in");
    e->inward_asd = gw_to_asd(e->inward, engine);
    e->inward_deflection = framing ? gw_wind_deflection_pa(e->inward, code, true, engine) : GW_ABSENT;
    gw_trace_at(engine, "out");
    e->outward_asd = gw_to_asd(e->outward, engine);
    e->outward_deflection = framing ? gw_wind_deflection_pa(e->outward, code, true, engine) : GW_ABSENT;
}

/* A trial's: so many times what governs. */
static void take_factor(const struct gw_builder *b, struct gw_element *e)
{
    e->inward.pa *= b->model->pressures;
    e->outward.pa *= b->model->pressures;
}

/* Computed, then tunnel, then given: the same for a take-off and for a derivation. */
static enum gw_status find_pressures(struct gw_builder *b, struct gw_element *e, struct gw_engine *engine,
                                     struct gw_wind_result *result)
{
    struct gw_wind_case in;
    struct gw_wind_parapet parapet;
    gw_takeoff_case(b->model, e, &in, &parapet);
    enum gw_status status = gw_wind_pressure(result, &in, engine);
    if (status != GW_OK) return status;
    e->governs = gw_choice_name(gw_edition_choices, (int)in.edition);
    take_computed(e, result, engine);
    e->computed = true;
    take_tunnel(b, e, engine);
    gw_take_given(b, e, engine);
    take_factor(b, e);
    set_levels(b, e, engine);
    if (e->by_set) gw_scale_by_set(e);
    return GW_OK;
}

struct remark {
    const struct gw_assumptions *list;
    const char *where;
    const struct gw_message *text;
};

static bool is_remark(const void *context, size_t item)
{
    const struct remark *r = context;
    return strcmp(r->list->items[item].where, r->where) == 0 && gw_message_same(&r->list->items[item].text, r->text);
}

void gw_takeoff_assume(struct gw_builder *b, const char *where, struct gw_message text)
{
    struct gw_assumptions *list = &b->takeoff->assumptions;
    const unsigned hash = gw_hash_text(gw_hash_text(1, where), text.format);
    size_t item;
    if (gw_index_find(&item, &b->assumed, hash, is_remark, &(struct remark){list, where, &text})) return;
    gw_index_add(&b->assumed, b->arena, hash, list->n);
    list->items = gw_grow(b->arena, list->items, list->n, &list->capacity, sizeof *list->items);
    list->items[list->n++] = (struct gw_assumption){.where = where, .text = text, .decides = true};
}

/* One message serves all elements in a row of which the same is said. */
static const struct gw_message *outside_of(struct gw_builder *b, const struct gw_fault *fault)
{
    const struct gw_message limit = gw_fault_said(fault);
    if (b->outside && gw_message_same(b->outside->values[0].as.message, &limit)) return b->outside;
    const struct gw_message kept = gw_fault_kept(b->arena, fault);
    struct gw_message *said = gw_alloc(b->arena, 1, sizeof *said);
    *said = GW_SAY(b->arena, "outside the method: {}", gw_of_message(&kept));
    return b->outside = said;
}

/* Never a guess: the group keeps its count and place, its pressures stay absent, its verdicts not shown. */
static void leave_outside(struct gw_builder *b, struct gw_element *e, const struct gw_fault *fault)
{
    struct gw_arena *arena = b->arena;
    e->outside = outside_of(b, fault);
    e->governs = "outside the method";
    e->inward_by = e->outward_by = (struct gw_pressure_source){.source = NULL};
    e->inward.pa = e->outward.pa = e->inward_asd.pa = e->outward_asd.pa = GW_ABSENT;
    e->inward_deflection = e->outward_deflection = GW_ABSENT;
    gw_takeoff_assume(b, gw_format(arena, "wall %s, %s", e->wall, e->parapet ? "above the roof" : "below the roof"),
                      GW_SAY(arena, "{}; no pressure is given there", gw_of_message(e->outside)));
}

void gw_element_pressures(struct gw_builder *b, struct gw_element *e)
{
    struct gw_engine engine;
    struct gw_wind_result result;
    if (b->failed) return;
    gw_engine_init(&engine, b->model->tables, NULL);
    enum gw_status status = find_pressures(b, e, &engine, &result);
    if (status == GW_OUTSIDE_METHOD) {
        leave_outside(b, e, &engine.fault);
    } else if (status != GW_OK) {
        gw_report_fault(b, b->room->node, e->id, &engine.fault);
        b->failed = true;
    }
    e->used = engine.used;
}

enum gw_status gw_takeoff_again(const struct gw_model *model, struct gw_element *e)
{
    struct gw_engine engine;
    struct gw_wind_result result;
    struct gw_builder b = {.model = model};
    const char *governs = e->governs;
    gw_engine_init(&engine, model->tables, NULL);
    const enum gw_status status = find_pressures(&b, e, &engine, &result);
    e->governs = governs;
    e->used = engine.used;
    return status;
}

static void trace_area(const struct gw_element *e, bool anchor_tributary, struct gw_engine *engine)
{
    if (e->kind == GW_ANCHOR && e->parapet) {
        gw_trace_found(engine, "A", GW_AREA, e->effective_area, "ASCE 7 26.2",
                       "above the roof: no larger than that of the mullions it holds there", NULL, 0);
        return;
    }
    bool by_span = e->kind == GW_MULLION || e->kind == GW_TRANSOM || (e->kind == GW_ANCHOR && !anchor_tributary);
    if (by_span) {
        gw_wind_effective_area(e->span, e->kind == GW_TRANSOM ? e->height : e->width, engine);
        return;
    }
    GW_STEP(engine, "A", GW_AREA, e->effective_area, "ASCE 7 26.2", "w*h", {"w", e->width, GW_LENGTH},
            {"h", e->height, GW_LENGTH});
}

static const char *zone_because(const struct gw_element *e)
{
    if (e->place_unknown) return "5, the worst: its place is not known";
    if (e->zone == 5) return "5: it stands in the strip of width a beside an outside corner";
    return "4: it stands clear of the strips of width a beside the outside corners";
}

enum gw_status gw_takeoff_derive(const struct gw_model *model, const struct gw_element *e, struct gw_trace *trace,
                                 struct gw_wind_result *out)
{
    struct gw_engine engine;
    struct gw_element again = *e;
    struct gw_builder b = {.model = model};
    gw_engine_init(&engine, model->tables, trace);
    const struct gw_waiver *waiver = gw_model_waiver(model, e->building);
    if (waiver) gw_trace_note(&engine, "GC_pi", "site: impact", waiver->text);
    static const char *const groups[] = {GW_WIND_VELOCITY, GW_WIND_COEFFICIENTS, GW_WIND_NET,
                                         GW_WIND_PARAPET,  GW_TAKEOFF_GIVEN,     GW_WIND_LEVEL};
    for (size_t i = 0; i < sizeof groups / sizeof *groups; i++) gw_trace_group(&engine, groups[i]);
    gw_trace_group(&engine, GW_WIND_COEFFICIENTS);
    trace_area(e, model->project.options->anchor_area == GW_ANCHOR_TRIBUTARY, &engine);
    const enum gw_status status = find_pressures(&b, &again, &engine, out);
    gw_trace_group(&engine, GW_WIND_COEFFICIENTS);
    if (status == GW_OK)
        GW_FOUND(&engine, "zone", GW_RATIO, GW_ABSENT, "zones of a wall", zone_because(e),
                 {"a", out->zone_width, GW_LENGTH});
    return status;
}
