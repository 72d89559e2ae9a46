/* Glazing that the code wants protected from debris and the project does not: it may break, and the building is open
 * there. Where that is so its pressures are those of a partially enclosed building, unless someone answers for less. */
#include "model_internal.h"

#include <string.h>

/* Debris goes by the edition that wind goes by, unless the project names another. */
static enum gw_debris_edition edition_of(const struct gw_codes *codes)
{
    static const enum gw_debris_edition same[] = {
        [GW_ASCE7_10] = GW_DEBRIS_ASCE7_10, [GW_ASCE7_16] = GW_DEBRIS_ASCE7_16, [GW_ASCE7_22] = GW_DEBRIS_ASCE7_22};
    return codes->debris ? codes->debris : same[codes->wind];
}

void gw_model_debris_case(const struct gw_model *model, double height, struct gw_debris_case *out)
{
    static const struct gw_impact none = {
        .wind_zone = GW_NO_ZONE, .region_wind_speed = GW_ABSENT, .aggregate_roof_height = GW_ABSENT, .bite = GW_ABSENT};
    const struct gw_project *p = &model->project;
    const struct gw_impact *impact = p->site->impact ? p->site->impact : &none;
    *out = (struct gw_debris_case){.edition = edition_of(p->codes),
                                   .basic_wind_speed = p->site->basic_wind_speed,
                                   .region_wind_speed = impact->region_wind_speed,
                                   .coast_distance = p->site->coast_distance,
                                   .risk_category = p->project->risk_category,
                                   .health_care = impact->health_care,
                                   .height = height,
                                   .hurricane_prone = p->site->hurricane_prone,
                                   .exposure_d_at_shore = impact->exposure_d_at_shore,
                                   .high_velocity_zone = impact->high_velocity_zone,
                                   .hawaii = impact->hawaii,
                                   .aggregate_roof_height = impact->aggregate_roof_height};
}

bool gw_model_waives(const struct gw_model *model)
{
    for (size_t i = 0; i < model->waivers.n; i++)
        if (model->waivers.items[i].decided) return true;
    return false;
}

const struct gw_waiver *gw_model_waiver(const struct gw_model *model, const struct gw_building *building)
{
    for (size_t i = 0; i < model->waivers.n; i++)
        if (model->waivers.items[i].building == building) return &model->waivers.items[i];
    return NULL;
}

bool gw_model_breached(const struct gw_model *model, const struct gw_building *building)
{
    const struct gw_waiver *waiver = gw_model_waiver(model, building);
    return waiver && waiver->counted != building->enclosure;
}

/* The lower the glazing, the larger the missile. Absent: the project has none in that building. */
static double lowest_glazing(const struct gw_model *model, const struct gw_building *building)
{
    const struct gw_project *p = &model->project;
    double lowest = GW_ABSENT; /* fmin leaves out an absent one */
    for (size_t i = 0; i < p->walls.n; i++)
        if (gw_model_building(model, p->walls.items[i].building) == building)
            lowest = fmin(lowest, p->walls.items[i].floors.items[0]);
    for (size_t i = 0; i < model->openings.n; i++) {
        const struct gw_opening *o = &model->openings.items[i];
        if (gw_model_opening_building(model, o) == building) lowest = fmin(lowest, gw_given(o->sill) ? o->sill : 0);
    }
    return gw_given(lowest) ? fmax(lowest, 0) : lowest;
}

/* Missiles and zones rise with what they ask. A zone that the project leaves open is no lower zone. */
static bool asks_less(const struct gw_impact *impact, const struct gw_debris_result *code)
{
    if (impact->rule == GW_IMPACT_NONE || impact->missile < code->missile) return true;
    return impact->wind_zone != GW_NO_ZONE && code->wind_zone != GW_NO_ZONE && impact->wind_zone < code->wind_zone;
}

/* From ASCE 7-10 on maps are of the strength level, as is the site's speed: 7-05 cannot decide by it. */
static enum gw_status by_code(struct gw_debris_result *code, const struct gw_debris_case *in, struct gw_engine *engine)
{
    if (in->edition == GW_DEBRIS_ASCE7_05 && in->hurricane_prone != GW_NO)
        return gw_refuse(engine, GW_MISSING, "basic_wind_speed",
                         "asce7-05 goes by nominal wind speeds, the site's is of the strength level");
    return gw_debris(code, in, engine);
}

static const char *asked_by_project(struct gw_model *model)
{
    const struct gw_impact *impact = model->project.site->impact;
    if (impact->rule == GW_IMPACT_NONE) return "the project asks for no impact protection";
    const char *missile = gw_choice_name(gw_missile_choices, (int)impact->missile);
    if (impact->wind_zone == GW_NO_ZONE) return gw_format(model->arena, "the project asks for missile %s", missile);
    return gw_format(model->arena, "the project asks for missile %s, wind zone %d", missile, impact->wind_zone);
}

static const char *asked_by_code(struct gw_model *model, const struct gw_debris_result *code,
                                 const struct gw_engine *engine)
{
    struct gw_text text;
    if (engine->fault.status != GW_OK)
        return gw_format(model->arena, "what the code asks for is not known and taken as more: %s",
                         gw_fault_text(model->arena, &engine->fault, model->project.units));
    gw_text_init(&text, model->arena);
    gw_text_addf(&text, "%s asks for missile %s",
                 gw_choice_name(gw_debris_edition_choices, (int)edition_of(model->project.codes)),
                 gw_choice_name(gw_missile_choices, (int)code->missile));
    if (code->wind_zone != GW_NO_ZONE) gw_text_addf(&text, ", wind zone %d", code->wind_zone);
    gw_text_addf(&text, " (%s)", code->reason);
    return text.at;
}

static bool is_meant(const char *row_building, const struct gw_building *b)
{
    return !row_building || strcmp(row_building, b->name) == 0;
}

/* What was given for the building as it is says nothing of it once it is open. */
static const char *given_besides(const struct gw_model *model, const struct gw_waiver *waiver)
{
    const struct gw_project *p = &model->project;
    const struct gw_building *b = waiver->building;
    bool given = false, tunnel = false;
    for (size_t i = 0; p->given && i < p->given->rows.n; i++)
        given = given || is_meant(p->given->rows.items[i].building, b);
    for (size_t i = 0; i < p->wind_tunnel.n; i++) tunnel = tunnel || is_meant(p->wind_tunnel.items[i].building, b);
    if (!given && !tunnel) return "";
    if (waiver->counted != b->enclosure)
        return given ? ", and by the given ones where those are greater"
                     : ", and by those of the wind tunnel where those are greater";
    if (given && p->pressures == GW_GIVEN_GOVERN) return ", below the roof by the given ones where a row speaks of it";
    return given ? ", and by the given ones where those are greater" : ", below the roof by those of the wind tunnel";
}

/* A building whose walls are open on all sides stays open, whatever breaks. */
static void count(struct gw_model *model, struct gw_waiver *out, const char *asked, const char *code)
{
    const struct gw_building *b = out->building;
    const struct gw_after_breach *stated = b->enclosure_after_breach;
    out->counted = stated ? stated->enclosure : b->enclosure == GW_OPEN ? GW_OPEN : GW_PARTIALLY_ENCLOSED;
    struct gw_text text;
    gw_text_init(&text, model->arena);
    gw_text_addf(&text, "%s: %s, %s; pressures of '%s' go by enclosure %s",
                 out->decided ? "waived against the code" : "perhaps waived against the code", asked, code, b->name,
                 gw_choice_name(gw_enclosure_choices, (int)out->counted));
    const char *besides = given_besides(model, out);
    if (stated) gw_text_addf(&text, " after a breach%s, stated by %s: %s", besides, stated->by, stated->reason);
    else gw_text_addf(&text, "%s (a building may state enclosure_after_breach: enclosure, by, reason)", besides);
    out->text = text.at;
}

static void settle_building(struct gw_model *model, const struct gw_building *building)
{
    const struct gw_impact *impact = model->project.site->impact;
    const double lowest = lowest_glazing(model, building);
    if (!gw_given(lowest)) return;
    struct gw_debris_case in;
    struct gw_debris_result code = {.wind_zone = GW_NO_ZONE};
    struct gw_engine engine;
    gw_engine_init(&engine, model->tables, NULL);
    gw_model_debris_case(model, lowest, &in);
    const bool decided = by_code(&code, &in, &engine) == GW_OK;
    if (decided && (code.required != GW_YES || !asks_less(impact, &code))) return;
    struct gw_waiver *waiver = &model->waivers.items[model->waivers.n++];
    *waiver = (struct gw_waiver){.building = building, .decided = decided};
    count(model, waiver, asked_by_project(model), asked_by_code(model, &code, &engine));
    gw_diag_node(model->diags, GW_WARNING, "waived", "impact", impact->node, "%s", waiver->text);
}

void gw_settle_breach(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    const struct gw_impact *impact = p->site->impact;
    if (!impact || (impact->rule != GW_IMPACT_NONE && !impact->missile)) return;
    model->waivers.items = gw_alloc(model->arena, p->buildings.n + 1, sizeof *model->waivers.items);
    for (size_t i = 0; i < p->buildings.n; i++) settle_building(model, &p->buildings.items[i]);
}
