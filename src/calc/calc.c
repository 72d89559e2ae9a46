/* One case in, one JSON object out. */
#include "galeward/calc.h"

#include "base/fields.h"

#include "galeward/model.h"

#include "blast.h"
#include "debris.h"
#include "fastener.h"
#include "frame.h"
#include "glass.h"
#include "line.h"
#include "section.h"
#include "seismic.h"
#include "weather.h"

#include <string.h>

static enum gw_status run_wind(void *out, const void *in, struct gw_engine *engine)
{
    return gw_wind_pressure(out, in, engine);
}

static const char *const *wind_notes(const void *out, size_t *n)
{
    const struct gw_wind_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

static enum gw_status run_plate(void *out, const void *in, struct gw_engine *engine)
{
    return gw_plate(out, in, engine);
}

static const char *const *plate_notes(const void *out, size_t *n)
{
    const struct gw_plate_result *result = out;
    *n = result->n_notes;
    return result->notes;
}

static const struct gw_calc_kind KINDS[] = {
    {.name = "wind",
     .help = "wind pressure on a piece of wall, ASCE 7-10, 7-16 or 7-22",
     .example = "edition=asce7-16 basic_wind_speed='120 mph' exposure=C mean_roof_height='48 ft' least_width='75 ft' "
                "enclosure=enclosed effective_area='24 ft2' zone=5",
     .input = &gw_wind_case_record,
     .output = &gw_wind_result_record,
     .run = run_wind,
     .notes = wind_notes},
    {.name = "laminate",
     .help = "effective thicknesses of laminated glass, two plies",
     .example = "plies='[5.56 mm, 5.56 mm]' interlayer.thickness='1.52 mm' interlayer.shear_modulus='7.1 MPa' "
                "length='1500 mm'",
     .input = &gw_laminate_record,
     .output = &gw_laminate_answer_record,
     .run = gw_run_laminate},
    {.name = "cavity",
     .help = "sealed insulating unit of two or three monolithic lites: cavity pressures, load sharing, stresses",
     .example = "width='1800 mm' height='1200 mm' lites='[5.56 mm, 5.56 mm]' gaps='[13.2 mm]' pressure_outdoor='2 kPa' "
                "atmospheric_pressure='101.325 kPa' temperature='288.15 K' "
                "sealing='{atmospheric_pressure: 101.325 kPa, temperature: 288.15 K}'",
     .input = &gw_cavity_case_record,
     .output = &gw_cavity_answer_record,
     .run = gw_run_cavity,
     .workspace = GW_PLATE_WORKSPACE},
    {.name = "lite",
     .help = "strength and deflection of a lite: single, laminated, double, triple; lightest make-up, greatest width",
     .example = "width='48 in' height='72 in' layers='[{glass: 6 mm, treatment: annealed}]' pressure='40 psf'",
     .input = &gw_lite_case_record,
     .output = &gw_lite_answer_record,
     .run = gw_run_lite,
     .workspace = GW_LITE_WORKSPACE,
     .notes = gw_lite_notes},
    {.name = "plate",
     .help = "rectangular plate on four simply supported edges, large deflection",
     .example = "width='48 in' height='72 in' thickness='5.56 mm' pressure='40 psf'",
     .input = &gw_plate_case_record,
     .output = &gw_plate_result_record,
     .run = run_plate,
     .workspace = GW_PLATE_WORKSPACE,
     .notes = plate_notes},
    {.name = "support",
     .help = "lite held on three edges, two or one: linear deflection, edge stress, limit pressure",
     .example = "edges=2 span='48 in' breadth='72 in' thickness='9.02 mm' pressure='30 psf' treatment=tempered "
                "edge_finish=polished",
     .input = &gw_support_case_record,
     .output = &gw_support_answer_record,
     .run = gw_run_support,
     .notes = gw_support_notes},
    {.name = "section",
     .help = "properties of a cross section: tube, polygon with voids, or center lines of thin walls",
     .example = "tube='{width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}'",
     .input = &gw_section_case_record,
     .output = &gw_section_answer_record,
     .run = gw_run_section,
     .workspace = GW_SECTION_WORKSPACE,
     .notes = gw_section_notes},
    {.name = "bending",
     .help = "allowable moment and shear of an aluminum or steel member",
     .example = "alloy=6063-T6 tube='{width: 2.5 in, depth: 6 in, flange: 0.125 in, web: 0.125 in}' "
                "unbraced_length='12 ft'",
     .input = &gw_bending_case_record,
     .output = &gw_bending_answer_record,
     .run = gw_run_bending,
     .notes = gw_bending_notes},
    {.name = "share",
     .help = "parts that bend together: inserts, split mullions, composite members",
     .example = "moment='60 kip-in' parts='[{elastic_modulus: 10100 ksi, inertia: 8 in4, section_modulus: 2.67 in3}, "
                "{elastic_modulus: 29000 ksi, inertia: 2.5 in4, section_modulus: 1.25 in3}]'",
     .input = &gw_share_case_record,
     .output = &gw_share_answer_record,
     .run = gw_run_share,
     .notes = gw_share_notes},
    {.name = "beam",
     .help = "straight beam under any piecewise linear load: spans, overhangs, hinges, clamps, steps of stiffness",
     .example = "length='24 ft' supports='[0 ft, 12 ft, 24 ft]' loads='[{from: 0 ft, to: 24 ft, start: 12.5 lb/in}]' "
                "elastic_modulus='10100 ksi' inertia='9.35 in4'",
     .input = &gw_beam_case_record,
     .output = &gw_beam_answer_record,
     .run = gw_run_beam,
     .notes = gw_beam_notes},
    {.name = "member",
     .help = "mullion or rail under the wind on its lites: reactions, moments, deflection and its limit",
     .example = "orientation=vertical span='12 ft' pressure='30 psf' shedding=two_way "
                "left='{width: 5 ft, heights: [30 in, 84 in, 30 in]}' right='{width: 5 ft, heights: [6 ft, 6 ft]}' "
                "elastic_modulus='10100 ksi' inertia='9.35 in4'",
     .input = &gw_member_case_record,
     .output = &gw_member_answer_record,
     .run = gw_run_member,
     .notes = gw_beam_notes},
    {.name = "shedding",
     .help = "what lites give to the horizontal between them: moment, reaction, deflection",
     .example = "span='5 ft' pressure='30 psf' height_above='6 ft' height_below='30 in'",
     .input = &gw_shedding_case_record,
     .output = &gw_shedding_answer_record,
     .run = gw_run_shedding},
    {.name = "screw",
     .help = "one screw: areas, tension, shear, pull-out, pull-over, bearing, tilting, interaction",
     .example =
         "diameter='1/4 in' threads_per_inch=20 thread=coarse engagement='1/8 in' alloy=6063-T6 ultimate='100 ksi'",
     .input = &gw_screw_case_record,
     .output = &gw_screw_answer_record,
     .run = gw_run_screw,
     .notes = gw_screw_notes},
    {.name = "pressure_plate",
     .help = "plate that clamps glass on a line of screws: screw tension, chase, bending along and across",
     .example =
         "pressure='42 psf' tributary_width='5 ft' spacing='9 in' plate='{width: 2 in, thickness: 1/4 in, alloy: "
         "6063-T6, arm: 7/8 in}' screw_allowable='500 lb' chase_tested='1500 lb'",
     .input = &gw_pressure_plate_case_record,
     .output = &gw_pressure_plate_answer_record,
     .run = gw_run_pressure_plate,
     .notes = gw_pressure_plate_notes},
    {.name = "connection",
     .help = "end of a horizontal on its fasteners: shear block, or screws in slots",
     .example =
         "connection=shear_block wind='450 lb' dead='100 lb' load='{x: 0 in, y: 0 in}' fasteners='[{x: 1 in, y: 0 "
         "in}, {x: 3 in, y: 0 in}]' allowable='380 lb'",
     .input = &gw_connection_case_record,
     .output = &gw_connection_answer_record,
     .run = gw_run_connection},
    {.name = "rail_dead_load",
     .help = "horizontal under the weight of its glass: moment, deflection, twist",
     .example = "glass_weight='195 lb' span='60 in' block_offset='15 in' elastic_modulus='10100 ksi' inertia='1.2 in4'",
     .input = &gw_rail_case_record,
     .output = &gw_rail_answer_record,
     .run = gw_run_rail,
     .notes = gw_rail_notes},
    {.name = "anchor",
     .help = "anchor of a vertical: reactions, bolts, load combinations",
     .example =
         "pressure_in='30 psf' pressure_out='42 psf' wall_weight='10 psf' spacing='5 ft' tributary_height='13 ft' "
         "eccentricity='4 in' bolt_arm='5 in' bolts=1",
     .input = &gw_anchor_case_record,
     .output = &gw_anchor_answer_record,
     .run = gw_run_anchor,
     .notes = gw_anchor_notes},
    {.name = "silicone",
     .help = "structural silicone: bite, thickness, stresses",
     .example = "width='5 ft' height='8 ft' pressure='42 psf' movement='0.1 in' strain=0.2",
     .input = &gw_silicone_case_record,
     .output = &gw_silicone_answer_record,
     .run = gw_run_silicone,
     .notes = gw_silicone_notes},
    {.name = "sealant_joint",
     .help = "width of a sealant joint that moves",
     .example = "movement='1/4 in' capability=0.25 tolerance='1/8 in'",
     .input = &gw_joint_case_record,
     .output = &gw_joint_answer_record,
     .run = gw_run_joint},
    {.name = "seismic_force",
     .help = "force of an earthquake on a wall, its connections or their fasteners, ASCE 7-10, 7-16 or 7-22",
     .example = "edition=asce7-16 sds=1.0 weight='650 lb' height_ratio=1 importance=1 part=fasteners",
     .input = &gw_seismic_force_record,
     .output = &gw_seismic_force_answer_record,
     .run = gw_run_seismic_force,
     .notes = gw_seismic_force_notes},
    {.name = "story_drift",
     .help = "drift of a story, what of it reaches a lite and its connections, fallout drift of the glass",
     .example = "risk_category=IV structure=other story_height='13 ft' distribution=racking frame_height='73 in'",
     .input = &gw_story_drift_record,
     .output = &gw_story_drift_answer_record,
     .run = gw_run_story_drift,
     .notes = gw_story_drift_notes},
    {.name = "clearance",
     .help = "drift at which glass meets its frame, against the drift that it must stand",
     .example = "lite_width='60 in' lite_height='72 in' side_gap='3/8 in' end_gap='1/2 in' drift='1.56 in' "
                "importance=1.5 story_height='156 in' frame_height='73 in' distribution=racking",
     .input = &gw_clearance_record,
     .output = &gw_clearance_answer_record,
     .run = gw_run_clearance,
     .notes = gw_clearance_notes},
    {.name = "silicone_racking",
     .help = "a lite bonded on four edges in a frame that racks: its turn, slips and strain of the bead",
     .example = "drift_in_lite='0.73 in' lite_width='60 in' lite_height='72 in' thickness='3/8 in'",
     .input = &gw_racking_record,
     .output = &gw_racking_answer_record,
     .run = gw_run_racking,
     .notes = gw_racking_notes},
    {.name = "movement",
     .help = "closing and opening of a joint: movements and tolerances added up three ways",
     .example = "items='[{name: live load, value: 3/4 in, direction: close, kind: movement}, "
                "{name: erection, value: 1/8 in, direction: both, kind: tolerance}]' least_gap='1/4 in'",
     .input = &gw_movement_record,
     .output = &gw_movement_answer_record,
     .run = gw_run_movement,
     .notes = gw_movement_notes},
    {.name = "debris",
     .help = "wind-borne debris: is protection required, which wind zone, which missile",
     .example = "edition=asce7-16 basic_wind_speed='145 mph' coast_distance='0.5 mi' risk_category=II height='12 ft' "
                "hurricane_prone=true",
     .input = &gw_debris_case_record,
     .output = &gw_debris_answer_record,
     .run = gw_run_debris,
     .notes = gw_debris_notes},
    {.name = "cycles",
     .help = "pressure cycles after an impact test",
     .example = "pressure_positive='45 psf' pressure_negative='60 psf'",
     .input = &gw_cycles_case_record,
     .output = &gw_cycles_answer_record,
     .run = gw_run_cycles,
     .notes = gw_cycles_notes},
    {.name = "water",
     .help = "water test pressure from the design pressure; head, upstand, dynamic test, field test",
     .example = "positive_pressure='47 psf' basis=curtain_wall upstand='2 in'",
     .input = &gw_water_case_record,
     .output = &gw_water_answer_record,
     .run = gw_run_water,
     .notes = gw_water_notes},
    {.name = "leakage",
     .help = "air leakage at another pressure, and what a test shows of a limit there",
     .example = "leakage='0.06 cfm/ft2' at='1.57 psf' to='6.24 psf' limit='0.06 cfm/ft2'",
     .input = &gw_leakage_case_record,
     .output = &gw_leakage_answer_record,
     .run = gw_run_leakage},
    {.name = "proof",
     .help = "structural test: preload, proof loads, permanent set, deflection",
     .example = "pressure_positive='45 psf' pressure_negative='60 psf' span='12 ft 6 in' basis=curtain_wall",
     .input = &gw_proof_case_record,
     .output = &gw_proof_answer_record,
     .run = gw_run_proof},
    {.name = "sequence",
     .help = "tests of a mock-up in their order, with their pressures",
     .example = "pressure_positive='45 psf' pressure_negative='60 psf' span='12 ft 6 in' story_height='13 ft'",
     .input = &gw_sequence_case_record,
     .output = &gw_sequence_answer_record,
     .run = gw_run_sequence},
    {.name = "weep",
     .help = "flow out of weeps under net head, surface tension, drainage ratio",
     .example = "slot='{length: 2 in, height: 1/4 in}' count=2 head='1 in' adverse_pressure='2 psf' wet_area='50 ft2' "
                "leak_fraction=0.10",
     .input = &gw_weep_case_record,
     .output = &gw_weep_answer_record,
     .run = gw_run_weep,
     .notes = gw_weep_notes},
    {.name = "equalization",
     .help = "steady share of the pressure on the outer screen of a vented cavity",
     .example = "vent_to_leak=5 pressure='30 psf'",
     .input = &gw_equalization_case_record,
     .output = &gw_equalization_answer_record,
     .run = gw_run_equalization,
     .notes = gw_equalization_notes},
    {.name = "blast",
     .help = "air blast on a face from charge and standoff, for protective design",
     .example = "charge='100 kg' standoff='15 m'",
     .input = &gw_blast_case_record,
     .output = &gw_blast_answer_record,
     .run = gw_run_blast,
     .notes = gw_blast_notes},
    {.name = "response",
     .help = "lite under a blast: deflection, break, the pairs of pressure and impulse that break it",
     .example = "width='1.2 m' height='1.8 m' layers='[{glass: 6 mm, treatment: heat_strengthened}, {interlayer: pvb, "
                "thickness: 1.52 mm}, {glass: 6 mm, treatment: heat_strengthened}]' pressure='4 psi' "
                "impulse='28 psi-ms' probability=0.008",
     .input = &gw_response_case_record,
     .output = &gw_response_answer_record,
     .run = gw_run_response,
     .workspace = GW_PLATE_WORKSPACE,
     .notes = gw_response_notes},
};

const struct gw_calc_kind *gw_calc_kinds(size_t *n)
{
    *n = sizeof KINDS / sizeof *KINDS;
    return KINDS;
}

const struct gw_calc_kind *gw_calc_find(const char *name)
{
    for (size_t i = 0; i < sizeof KINDS / sizeof *KINDS; i++)
        if (strcmp(KINDS[i].name, name) == 0) return &KINDS[i];
    return NULL;
}

/* Keys that a case of any kind may hold besides its own; `id` is kept as the node that it is. */
struct manner {
    enum gw_units units;
    enum gw_bool trace;
};
static const struct gw_field MANNER[] = {
    PICK(manner, units, gw_units_choices, .help = "of bare numbers"),
    F(manner, trace, GW_T_BOOL, .help = "adds the derivation"),
};
static const struct gw_record MANNER_RECORD = RECORD("case", manner, MANNER);

struct call {
    struct gw_json json;
    struct gw_arena *arena;
    struct gw_diags diags;
    const struct gw_node *id;
    struct manner manner;
    struct gw_calc_answer answer;
    struct gw_node common, own; /* the mapping in two: MANNER's keys, and the kind's */
};

static void append(struct gw_arena *arena, struct gw_node ***end, const struct gw_node *child)
{
    struct gw_node *copy = gw_alloc(arena, 1, sizeof *copy);
    *copy = *child;
    copy->next = NULL;
    **end = copy;
    *end = &copy->next;
}

static void split(struct call *call, const struct gw_node *node)
{
    struct gw_node **common = &call->common.first, **own = &call->own.first;
    call->common = call->own = *node;
    if (node->kind != GW_MAPPING) return;
    call->common.first = call->own.first = NULL;
    for (const struct gw_node *child = node->first; child; child = child->next) {
        if (strcmp(child->key, "id") == 0) call->id = child;
        else append(call->arena, gw_record_field(&MANNER_RECORD, child->key) ? &common : &own, child);
    }
}

static bool fail(struct call *call, const char *code, const char *key, const char *message)
{
    call->answer.error_code = code;
    call->answer.error_key = key;
    call->answer.error = gw_strdup(call->arena, message);
    gw_json_key(&call->json, "error");
    gw_json_open(&call->json, '{');
    gw_json_key(&call->json, "code");
    gw_json_text(&call->json, code);
    gw_json_key(&call->json, "key");
    gw_json_text(&call->json, key);
    gw_json_key(&call->json, "message");
    gw_json_text(&call->json, message);
    gw_json_close(&call->json, '}');
    return false;
}

static bool fail_first(struct call *call)
{
    for (size_t i = 0; i < call->diags.n; i++) {
        const struct gw_diag *diag = &call->diags.items[i];
        if (diag->severity == GW_ERROR) return fail(call, diag->code, diag->key, diag->message);
    }
    return fail(call, "bad_value", "", "the case is wrong");
}

static bool load(struct call *call, const struct gw_calc_kind *kind, void *in)
{
    struct gw_load load = {.arena = call->arena, .diags = &call->diags, .units = gw_units_standard()};
    bool good = call->own.kind != GW_MAPPING || !call->common.first ||
                gw_record_load(&load, &MANNER_RECORD, &call->common, "", &call->manner);
    load.preset = call->manner.units;
    return good && gw_record_load(&load, kind->input, &call->own, "", in);
}

static void write_notes(struct call *call, const struct gw_calc_kind *kind, const void *out)
{
    size_t n = 0;
    const char *const *notes = kind->notes ? kind->notes(out, &n) : NULL;
    gw_json_key(&call->json, "notes");
    gw_json_open(&call->json, '[');
    for (size_t i = 0; i < n; i++) gw_json_text(&call->json, notes[i]);
    for (size_t i = 0; i < call->diags.n; i++) gw_json_text(&call->json, call->diags.items[i].message);
    gw_json_close(&call->json, ']');
}

static void member(struct gw_json *json, const char *key, const char *text)
{
    gw_json_key(json, key);
    gw_json_text(json, text);
}

static void write_step(struct gw_json *json, const struct gw_step *step, enum gw_units shown)
{
    struct gw_text substituted;
    gw_text_init(&substituted, json->out->arena);
    gw_step_substituted(&substituted, step, shown);
    gw_json_open(json, '{');
    member(json, "symbol", step->symbol);
    member(json, "formula", step->formula);
    member(json, "substituted", step->formula ? substituted.at : NULL);
    gw_json_key(json, "result");
    gw_json_number(json, gw_quantity_shown(gw_units_standard(), step->dim, shown, step->value));
    member(json, "unit", step->formula ? gw_dim_info(step->dim)->shown[shown] : NULL);
    member(json, "clause", step->clause);
    member(json, "note", step->note);
    gw_json_close(json, '}');
}

void gw_calc_trace(struct gw_json *json, const struct gw_trace *trace, enum gw_units shown)
{
    gw_json_open(json, '[');
    for (size_t i = 0; i < trace->n; i++) write_step(json, &trace->steps[i], shown);
    gw_json_close(json, ']');
}

static bool run(struct call *call, const struct gw_calc_kind *kind, const struct gw_tables *tables)
{
    struct gw_engine engine;
    struct gw_trace trace;
    void *in = gw_alloc(call->arena, 1, kind->input->size), *out = gw_alloc(call->arena, 1, kind->output->size);
    if (!load(call, kind, in)) return fail_first(call);
    bool traced = call->manner.trace == GW_YES;
    gw_trace_init(&trace, call->arena);
    gw_engine_init(&engine, tables, traced ? &trace : NULL);
    if (kind->workspace) engine.workspace = gw_alloc_bare(call->arena, kind->workspace);
    enum gw_status status = kind->run(out, in, &engine);
    if (status != GW_OK) return fail(call, gw_status_code(status), engine.fault.key, engine.fault.message);
    call->answer.in = in;
    call->answer.out = out;
    call->answer.units = call->manner.units;
    gw_json_record(&call->json, kind->output, out, false);
    write_notes(call, kind, out);
    if (!traced) return true;
    gw_json_key(&call->json, "trace");
    gw_calc_trace(&call->json, &trace, call->manner.units);
    return true;
}

static bool run_whole(struct call *call, struct gw_text *out, const struct gw_calc_kind *kind,
                      const struct gw_node *node, const struct gw_tables *tables)
{
    call->manner = (struct manner){GW_UNITS_NONE, GW_UNSAID};
    gw_json_init(&call->json, out, false);
    gw_diags_init(&call->diags, call->arena);
    split(call, node);
    gw_json_open(&call->json, '{');
    if (call->id) {
        gw_json_key(&call->json, "id");
        gw_json_node(&call->json, call->id);
    }
    bool good = run(call, kind, tables);
    gw_json_close(&call->json, '}');
    return good;
}

bool gw_calc_case(struct gw_text *out, struct gw_arena *arena, const struct gw_calc_kind *kind,
                  const struct gw_node *node, const struct gw_tables *tables)
{
    struct call call = {.arena = arena};
    return run_whole(&call, out, kind, node, tables);
}

bool gw_calc_run(struct gw_calc_answer *answer, struct gw_arena *arena, const struct gw_calc_kind *kind,
                 const struct gw_node *node, const struct gw_tables *tables)
{
    struct call call = {.arena = arena};
    struct gw_text unread;
    gw_text_init(&unread, arena);
    bool good = run_whole(&call, &unread, kind, node, tables);
    *answer = call.answer;
    return good;
}
