/* What holds where the project says nothing: editions that its building code adopts, options, conventions. Whatever is
 * taken is listed among the assumptions. */
#include "model_internal.h"

#include "tables_data.h"

void gw_assume_of_wall(struct gw_model *model, const struct gw_wall *wall, struct gw_message text)
{
    const struct gw_assumption said = {.subject = GW_OF_WALL, .name = wall->name, .text = text, .decides = true};
    gw_assume_that(model->arena, &model->assumptions, &said);
}

/* What verdicts may hang on, of the project as a whole. */
static void assume_deciding(struct gw_model *model, const char *where, struct gw_message text)
{
    const struct gw_assumption said = {.where = where, .text = text, .decides = true};
    gw_assume_that(model->arena, &model->assumptions, &said);
}

static void assume_edition(struct gw_model *model, const char *what, const char *edition, const char *code)
{
    gw_assume(model->arena, &model->assumptions, "codes",
              GW_SAY(model->arena, "{}: {} (adopted by {})", gw_of_text(what), gw_of_text(edition), gw_of_text(code)));
}

static enum gw_edition wind_edition(const struct gw_model *model, enum gw_building_code code)
{
    for (size_t i = 0; i < GW_N_CODE_WIND_EDITION; i++)
        if (model->tables->code_wind_edition[i].code == (int)code)
            return (enum gw_edition)model->tables->code_wind_edition[i].edition;
    return GW_EDITION_UNSET;
}

static enum gw_glass_standard glass_edition(const struct gw_model *model, enum gw_building_code code)
{
    for (size_t i = 0; i < GW_N_CODE_GLASS_EDITION; i++)
        if (model->tables->code_glass_edition[i].code == (int)code)
            return (enum gw_glass_standard)model->tables->code_glass_edition[i].edition;
    return GW_GLASS_STANDARD_UNSET;
}

/* The editions that the building code adopts, unless the file names them. */
static void settle_editions(struct gw_model *model)
{
    const struct gw_codes *codes = model->project.codes;
    if (!codes || !codes->building) return;
    const char *code = gw_choice_name(gw_building_code_choices, (int)codes->building);
    struct gw_codes *settled = gw_alloc(model->arena, 1, sizeof *settled);
    *settled = *codes;
    if (!codes->wind) {
        settled->wind = wind_edition(model, codes->building);
        assume_edition(model, "wind", gw_choice_name(gw_edition_choices, (int)settled->wind), code);
    }
    if (!codes->glass) {
        settled->glass = glass_edition(model, codes->building);
        assume_edition(model, "glass", gw_choice_name(gw_glass_standard_choices, (int)settled->glass), code);
    }
    model->project.codes = settled;
}

static void assume_glass(struct gw_model *model)
{
    const struct gw_glass_rules *rules = model->project.glass;
    bool cavity = false, interlayer = false;
    for (size_t i = 0; i < model->project.lites.n; i++)
        for (size_t k = 0; k < model->project.lites.items[i].layers.n; k++) {
            cavity = cavity || gw_given(model->project.lites.items[i].layers.items[k].cavity);
            interlayer = interlayer || model->project.lites.items[i].layers.items[k].interlayer;
        }
    gw_assume(model->arena, &model->assumptions, "glass", GW_PLAINLY("a lite is taken as large as its column and row"));
    if (cavity && !(rules && rules->sealing && rules->service.n))
        assume_deciding(model, "glass",
                        GW_PLAINLY("units sealed as in service: no climatic load (glass: sealing, service)"));
    if (interlayer && !(rules && gw_given(rules->interlayer_temperature)))
        gw_assume(model->arena, &model->assumptions, "glass",
                  GW_SAY(model->arena, "interlayers at {} (glass: interlayer_temperature)",
                         gw_of_quantity(GW_TEMPERATURE, model->tables->interlayer_usual[0].temperature_k)));
}

static void assume_site(struct gw_model *model)
{
    const struct gw_site *site = model->project.site;
    if (!site) return;
    if (!gw_given(site->elevation))
        gw_assume(model->arena, &model->assumptions, "site",
                  GW_PLAINLY("elevation not given: K_e = 1.0, which is safe above sea level"));
    if (!site->topography) assume_deciding(model, "site", GW_PLAINLY("no topography given: K_zt = 1.0"));
    for (size_t i = 0; i < model->project.walls.n; i++)
        for (size_t k = 0; k < model->project.walls.items[i].ends.n; k++)
            if (model->project.walls.items[i].name && model->project.walls.items[i].ends.items[k].kind == GW_REENTRANT)
                gw_assume_of_wall(model, &model->project.walls.items[i],
                                  GW_PLAINLY("no edge strip at the re-entrant end"));
}

/* Defaults that only some projects feel are listed where they are felt, and only when they were not written. */
static void assume_unless(struct gw_model *model, const struct gw_node *node, const char *key, const char *where,
                          struct gw_message text)
{
    if (!gw_node_get(node, key)) gw_assume(model->arena, &model->assumptions, where, text);
}

static void assume_of_building(struct gw_model *model, const struct gw_building *b, const char *key,
                               struct gw_message text)
{
    const struct gw_assumption said = {.subject = GW_OF_BUILDING, .name = b->name, .text = text};
    if (!gw_node_get(b->node, key)) gw_assume_that(model->arena, &model->assumptions, &said);
}

static void assume_building(struct gw_model *model, const struct gw_building *b)
{
    if (!b->name) return;
    const struct gw_wind_figure *figure = &model->tables->wind_figure[GW_ROW_WIND_FIGURE_WALL];
    if (b->roof_height > figure->low_height_m && b->roof_height < figure->alternative_height_m)
        assume_of_building(model, b, "alternative_60_90",
                           GW_PLAINLY("alternative_60_90: false (default): the coefficients of high buildings"));
    if (!gw_given(b->parapet_height)) return;
    assume_of_building(model, b, "parapet_gcpi",
                       GW_SAY(model->arena, "parapet_gcpi: {} (default): a hollow parapet",
                              gw_of_text(gw_record_field(&gw_building_record, "parapet_gcpi")->fallback)));
    assume_of_building(model, b, "parapet_perimeter",
                       GW_PLAINLY("parapet_perimeter: false (default): roof corners count as zone 3"));
}

static bool goes_on(const struct gw_wall *w)
{
    bool on = false;
    for (size_t i = 0; i < w->ends.n; i++) on = on || w->ends.items[i].kind == GW_NO_CORNER;
    return on;
}

/* Where the take-off stands on something that the wall does not say. */
static void assume_wall(struct gw_model *model, const struct gw_wall *w)
{
    if (!w->name) return;
    if (!gw_node_get(w->node, "anchors"))
        gw_assume_of_wall(
            model, w,
            GW_PLAINLY("anchors: not given: at the floors, and at the roof or the head where the wall ends below it"));
    if (!gw_node_get(w->node, "splices"))
        gw_assume_of_wall(
            model, w, GW_PLAINLY("splices: not given: a joint at every anchor, each piece of mullion a simple span"));
    gw_assume_corners(model, w);
    if (goes_on(w))
        gw_assume_of_wall(
            model, w,
            GW_PLAINLY(
                "ends: none: the wall goes on with a bay as wide as its last one; the mullion there carries a full "
                "bay, and no corner is near"));
}

static void assume_take_off(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    for (size_t i = 0; i < p->walls.n; i++) assume_wall(model, &p->walls.items[i]);
    gw_assume(model->arena, &model->assumptions, "effective area",
              GW_PLAINLY("a lite its face; mullions and transoms span x max(width, span/3); a screw what it carries"));
}

static void assume_given(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    assume_unless(model, p->node, "pressures", "given",
                  GW_PLAINLY("pressures: onerous (default): the more onerous of given and computed governs"));
    gw_assume(model->arena, &model->assumptions, "given",
              p->given->between == GW_BETWEEN_INTERPOLATE
                  ? GW_PLAINLY("between: interpolate: between two areas of a zone and a building by the logarithm of "
                               "the area")
                  : GW_PLAINLY("between: smaller: between two areas the row of the next smaller one, which is safe"));
}

bool gw_anchor_carries(const struct gw_wall_anchor *anchor, enum gw_anchor_load_word load)
{
    for (size_t i = 0; i < anchor->carries.n; i++)
        if (anchor->carries.items[i] == (int)load) return true;
    return false;
}

/* What bears the weight where no anchor says it. */
static void assume_bearing(struct gw_model *model)
{
    bool wall = false;
    for (size_t i = 0; i < model->project.walls.n; i++) {
        const struct gw_wall *w = &model->project.walls.items[i];
        wall = wall || !w->anchors.n || !w->anchors.items[0].carries.n;
    }
    if (wall)
        assume_deciding(
            model, "walls",
            GW_PLAINLY(
                "anchors: carries not given: each piece of mullion hangs on its top anchor, the others are slotted "
                "and take wind alone"));
    if (model->openings.n)
        assume_deciding(
            model, "openings",
            GW_PLAINLY("a frame stands on its lower anchors, the upper ones are slotted and take wind alone"));
}

void gw_assume_conventions(struct gw_model *model)
{
    const struct gw_project *p = &model->project;
    const struct gw_node *options = gw_node_get(p->node, "options");
    assume_site(model);
    for (size_t i = 0; i < p->buildings.n; i++) assume_building(model, &p->buildings.items[i]);
    assume_bearing(model);
    if (p->site && p->site->exposure == GW_EXPOSURE_B)
        assume_unless(model, gw_node_get(p->node, "site"), "exposure_b_floor", "site",
                      GW_PLAINLY("exposure_b_floor: edition (default): the least K_z is the edition's own"));
    if (p->given) assume_given(model);
    assume_take_off(model);
    assume_unless(model, options, "inward_height", "options",
                  GW_PLAINLY("inward_height: top (default): q_z at each element's top"));
    assume_unless(model, options, "edge_zone", "options",
                  GW_PLAINLY("edge_zone: any_part (default): any part in the strip is zone 5"));
    assume_unless(model, options, "anchor_area", "options",
                  GW_PLAINLY("anchor_area: mullion (default): an anchor has the effective area of its mullion"));
}

static void settle_options(struct gw_model *model)
{
    if (model->project.options) return;
    struct gw_options *options = gw_alloc(model->arena, 1, sizeof *options);
    *options = (struct gw_options){GW_QZ_TOP, GW_EDGE_ANY_PART, GW_ANCHOR_AS_MULLION, GW_STRIP_CAP_NONE};
    model->project.options = options;
}

static void assume_of_system(struct gw_model *model, const struct gw_system *system, struct gw_message text)
{
    const struct gw_assumption said = {
        .subject = GW_OF_SYSTEM, .name = system->system->name, .text = text, .decides = true};
    gw_assume_that(model->arena, &model->assumptions, &said);
}

/* Of members whose strength is calculated from their section. */
static void assume_unbraced(struct gw_model *model, const struct gw_system *system)
{
    static const char *const names[] = {"mullion", "corner_mullion", "jamb_mullion", "transom"};
    const struct gw_member_spec *const members[] = {system->mullion, system->corner_mullion, system->jamb_mullion,
                                                    system->transom};
    struct gw_text which;
    gw_text_init(&which, model->arena);
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        const struct gw_member_spec *m = members[i];
        if (m && m->tube && !gw_given(m->unbraced_length))
            gw_text_addf(&which, "%s%s", which.length ? ", " : "", names[i]);
    }
    if (which.length)
        assume_of_system(model, system,
                         GW_SAY(model->arena,
                                "{}: unbraced_length not given: the span (glass does not brace the inner flange)",
                                gw_of_text(which.at)));
}

void gw_assume_system(struct gw_model *model, const struct gw_system *system)
{
    if (system->system->glazing != GW_CAPTURED && system->silicone && system->silicone->carries_weight == GW_UNSAID)
        assume_of_system(model, system,
                         GW_PLAINLY("setting blocks carry the weight of the glass, the bead none of it (silicone: "
                                    "carries_weight)"));
    assume_unbraced(model, system);
    if (system->transom && !gw_given(system->transom->block_offset))
        assume_of_system(model, system,
                         GW_PLAINLY("transom: block_offset not given: setting blocks at the quarter points"));
}

void gw_settle_project(struct gw_model *model)
{
    settle_editions(model);
    if (model->project.lites.n) assume_glass(model);
    settle_options(model);
}
