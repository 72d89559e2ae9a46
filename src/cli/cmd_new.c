#include "cli.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

static const char PROJECT[] =
    "# A starter project: every line is an invention to be replaced. 'galeward schema project' knows all keys.\n"
    "galeward: 1\n"
    "units: us                      # bare numbers in ft, psf, mph; or si; or give every number its unit\n"
    "project: {name: Plover Lane Clinic, number: \"26-014\", risk_category: II}\n"
    "codes: {building: ibc-2021}    # the edition of ASCE 7 follows; wind: asce7-22 overrides it\n"
    "site:\n"
    "  basic_wind_speed: 118 mph    # from the hazard map for the risk category\n"
    "  exposure: C                  # B suburban, C open, D water\n"
    "  hurricane_prone: false\n"
    "  # elevation: 820 ft          # lower air density; without it K_e = 1.0\n"
    "  # topography: {shape: hill, height: 60 ft, half_length: 300 ft, distance: 0 ft}\n"
    "  # seismic: {category: D, sds: 1.0, story_drift: 1.5 in}   # by the structural engineer, without importance\n"
    "  #   or story_drift_ratio: 0.01, or structure: other for the allowable drift; category A and most of B are "
    "exempt\n"
    "  # impact: by_code            # hurricane-prone sites: with coast_distance: 2 mi; where the code asks, none "
    "counts "
    "as an opening\n"
    "  # blast: none                # or {pressure: 4 psi, impulse: 28 psi-ms, hazard: low}\n"
    "buildings:\n"
    "  - {name: main, roof_height: 42 ft, least_width: 80 ft, enclosure: enclosed}\n"
    "walls:                         # seen from outside, from the left and from the ground up\n"
    "  - name: south\n"
    "    building: main\n"
    "    width: 60 ft\n"
    "    floors: [0 ft, 14 ft, 28 ft]\n"
    "    top: 42 ft\n"
    "    ends: [corner, corner]     # or reentrant, none, {corner_at: 4 ft}\n"
    "    columns: {count: 12, width: 5 ft}\n"
    "    rows: [{height: 3 ft, lite: spandrel}, {height: rest, lite: vision}]\n"
    "# elevations: [{name: east, width: 80 ft, ends: [corner, corner]}]   # faces whose openings are in a schedule\n"
    "# openings: schedule.csv       # columns mark, wall, width, height, count, sill, offset (from the wall's left "
    "edge), "
    "lite\n"
    "lites:\n"
    "  # from outside to inside; treatment: annealed, heat_strengthened, tempered\n"
    "  vision: {layers: [{glass: 6 mm, treatment: heat_strengthened}, {cavity: 12 mm}, {glass: 6 mm, treatment: "
    "annealed}]}\n"
    "  spandrel: {layers: [{glass: 6 mm, treatment: heat_strengthened}], component: spandrel}\n"
    "  # laminated: {layers: [{glass: 5 mm, treatment: annealed}, {interlayer: pvb, thickness: 1.52 mm}, {glass: 5 mm, "
    "treatment: annealed}]}\n"
    "# glass:                       # how every lite is judged; without it for strength, sealed as in service\n"
    "#   deflection_limit: 1 in     # center deflection of the glass, at most\n"
    "#   deflection_ratio: 60       # short side over deflection, at least\n"
    "#   sealing: {elevation: 700 ft, temperature: 70 degF}   # where units are made; with service: climatic load\n"
    "#   service: [{elevation: 20 ft, temperature: 110 degF}, {elevation: 20 ft, temperature: -10 degF}]\n"
    "# movement:                    # of the joints between pieces, by the structural engineer\n"
    "#   live_load: 3/4 in          # of a floor edge; 0 where it does not move\n"
    "#   shortening: 1/8 in         # of the columns, a story, after the wall is set\n"
    "#   coldest: -10 degF          # of the metal; hottest: 170 degF, set_coldest: 40 degF, set_warmest: 80 degF with "
    "it\n"
    "requirements:\n"
    "  air: {leakage: 0.06 cfm/ft2, at: 6.24 psf}\n"
    "  # water: 12 psf              # without it: a share of the design pressure\n"
    "# candidates: [offer.yaml]     # system files beside this one: 'galeward new system -o offer.yaml'\n";

static const char SYSTEM[] =
    "# A starter system file: what a candidate claims. Every figure is an invention to be replaced.\n"
    "galeward: 1\n"
    "units: us\n"
    "system: {name: Plover 60, kind: stick, glazing: captured}   # stick, unitized, window_wall; captured, silicone, "
    "mixed\n"
    "pocket: [1 in, 1/4 in]         # overall glass thicknesses that it takes\n"
    "ratings:                       # a rating holds for what was tested: give every dimension of the report\n"
    "  - test: structural           # ASTM E330, allowable-stress level\n"
    "    positive: 40 psf\n"
    "    negative: 45 psf\n"
    "    report: R-100\n"
    "    tested: {module: 5 ft, span: 14 ft, spans: 1, lite_width: 5 ft, lite_height: 11 ft}\n"
    "  - {test: air, leakage: 0.06 cfm/ft2, at: 6.24 psf, report: R-101}\n"
    "  - {test: water, pressure: 12 psf, report: R-101}\n"
    "  # - {test: other, name: u_factor, value: 0.38}\n"
    "# Framing: what a test does not reach is calculated, and shown only where every link is. Without a link: not "
    "shown.\n"
    "# mullion: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 6 in, flange: 0.188 in, web: 0.125 in}}\n"
    "#   no tube: {alloy: 6063-T6, inertia_x: 12.4 in4, inertia_y: 2.9 in4, allowable_moment: 62000 in-lb}\n"
    "#   reinforced: insert: {metal: steel, inertia_x: 2.5 in4, section_modulus_x: 1.25 in3, yield: 36 ksi}\n"
    "#   unbraced_length: 6 ft      # of the inner flange; without it the whole span\n"
    "# corner_mullion: {alloy: 6063-T6, tube: {width: 5 in, depth: 6 in, flange: 0.188 in, web: 0.188 in}}\n"
    "# transom: {alloy: 6063-T6, tube: {width: 2.5 in, depth: 5 in, flange: 0.125 in, web: 0.125 in}, block_offset: 15 "
    "in, "
    "eccentricity: 1 in}\n"
    "# glass_seat: {alloy: 6063-T6, length: 4 in, thickness: 1/4 in, arm: 1/2 in}     # beyond the transom's own "
    "depth; "
    "or capacity\n"
    "# transom_connection: {capacity: 700 lb, report: R-110}     # allowable, of one end; splice alike\n"
    "# splice: {capacity: 1900 lb, report: R-111}\n"
    "# pressure_plate: {alloy: 6063-T6, width: 2.25 in, thickness: 1/4 in, hole: 0.281 in}\n"
    "# screw: {diameter: 1/4 in, threads_per_inch: 20, hold: chase, ultimate: 100 ksi, head_diameter: 1/2 in, "
    "tested_pullout: 1800 lb, report: R-112}\n"
    "#   in a wall: hold: tapped, alloy: 6063-T6, engagement: 0.125 in\n"
    "# silicone: {bite: 5/8 in, thickness: 3/8 in}     # of structural glazing; 20 psi unless design_stress says "
    "otherwise\n"
    "#   carries_weight: true where no setting blocks do\n"
    "# anchor: {inward: 2400 lb, outward: 3300 lb, along: 800 lb, dead: 1100 lb, report: calculation C-1}\n"
    "#   its bolts too: eccentricity: 4 in, bolt_arm: 5 in, bolts: 2, bolt_tension: 2600 lb, bolt_shear: 1500 lb\n"
    "#   loads act together by the straight sum of their ratios, unless a report gives less (interaction, "
    "bolt_interaction)\n"
    "# corner_anchor: {inward: 1500 lb, outward: 2000 lb, along: 800 lb, dead: 1100 lb}     # of each face, with the "
    "other's at once\n"
    "# frame_weight: 3 psf          # of wall, without glass\n"
    "# Earthquakes and movement:\n"
    "# drift: {path: racking, side_gap: 3/8 in, end_gap: 1/2 in, bite: 1/2 in}     # all_in_lite, sliding_head (slip: "
    "1 in), "
    "sliding, "
    "tilting\n"
    "# stack_joint: {width: 1.75 in, least_gap: 1/4 in, engagement: 1.5 in, least_overlap: 1/2 in}\n"
    "#   silicone: shear_strain: 0.6; a racking test, kind static (AAMA 501.4) or dynamic (AAMA 501.6), with its "
    "specimen:\n"
    "#   {test: sway, kind: dynamic, drift: 3 in, report: R-120, tested: {lite_width: 5 ft, lite_height: 9 ft, "
    "make_up: "
    "vision, side_gap: 3/8 in,\n"
    "#     end_gap: 1/2 in, bite: 1/2 in, story_height: 13 ft}}     # bonded glass: bite and bead_thickness instead of "
    "the gaps\n";

/* A starter must not take the place of somebody's work. */
int cmd_new(struct cli *cli)
{
    static const char *const names[] = {"project", "system"};
    const struct options *o = &cli->options;
    const char *what = o->n_arguments ? o->arguments[0] : names[0];
    struct gw_text text;
    struct stat info;
    bool system = strcmp(what, names[1]) == 0;
    if (!system && strcmp(what, names[0]) != 0)
        return complain("there is no starter '%s': project or system%s", what, did_you_mean(cli, what, names, 2));
    if (o->output && stat(o->output, &info) == 0 && S_ISREG(info.st_mode))
        return complain("'%s' is already there: it is left as it is", o->output);
    gw_text_init(&text, &cli->arena);
    gw_text_add(&text, system ? SYSTEM : PROJECT);
    return deliver(cli, &text);
}
