/* The registry: one row a check. To add one, add a row; see DEVELOPERS.md. */
#include "judge_internal.h"

#include <string.h>

static bool knows_seismic(const struct gw_model *m)
{
    const struct gw_seismic *s = m->project.site->seismic;
    /* most of category B is exempt */
    return s && (s->category == GW_SDC_A || s->category == GW_SDC_B || gw_given(s->sds));
}

static bool knows_debris(const struct gw_model *m)
{
    return m->project.site->hurricane_prone != GW_UNSAID || m->project.site->impact;
}

static const char *waive_debris(const struct gw_model *m)
{
    const struct gw_site *s = m->project.site;
    if (s->impact && s->impact->rule == GW_IMPACT_NONE) return "the project asks for no impact rating";
    bool asked = s->impact && s->impact->missile;
    return !asked && s->hurricane_prone == GW_NO ? "the site is not in the hurricane-prone region" : NULL;
}

/* From ASCE 7-10 on maps are of the strength level, as is the site's speed. */
static bool knows_debris_speed(const struct gw_model *m)
{
    const struct gw_impact *impact = m->project.site->impact;
    return m->project.codes->debris != GW_DEBRIS_ASCE7_05 || (impact && impact->missile) || waive_debris(m);
}

static bool knows_blast(const struct gw_model *m) { return m->project.site->blast != NULL; }

static bool knows_blast_load(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    bool any = gw_given(b->pressure) || gw_given(b->impulse) || gw_given(b->charge) || gw_given(b->standoff);
    return b->none == GW_BLAST_NONE || any;
}

static bool knows_blast_pair(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    return gw_given(b->pressure) == gw_given(b->impulse);
}

static bool knows_blast_burst(const struct gw_model *m)
{
    const struct gw_blast *b = m->project.site->blast;
    return gw_given(b->charge) == gw_given(b->standoff);
}

static const char *waive_seismic(const struct gw_model *m)
{
    bool waived = m->project.site->seismic->category == GW_SDC_A;
    return waived ? "Seismic Design Category A: chapter 13 of ASCE 7 does not apply" : NULL;
}

static const char *waive_blast(const struct gw_model *m)
{
    return m->project.site->blast->none == GW_BLAST_NONE ? "the project asks for none" : NULL;
}

static const char *waive_glass_deflection(const struct gw_model *m)
{
    const struct gw_glass_rules *rules = m->project.glass;
    bool limited = rules && (gw_given(rules->deflection_limit) || gw_given(rules->deflection_ratio));
    return limited ? NULL : "the project sets no limit (glass: deflection_limit, deflection_ratio)";
}

static const struct gw_need SEISMIC_NEEDS[] = {
    {knows_seismic, "which seismic design category and S_DS? Ask the structural engineer (site: seismic)"}, {0}};
static bool knows_movement(const struct gw_model *m)
{
    return !m->project.walls.n || (m->project.movement && gw_given(m->project.movement->live_load));
}

static const char *waive_movement(const struct gw_model *m)
{
    return m->project.walls.n ? NULL : "no walls, so no joints between pieces one above the other";
}

static const struct gw_need MOVEMENT_NEEDS[] = {
    {knows_movement, "how far do the floor edges deflect under live load? Ask the structural engineer (movement: "
                     "live_load; 0 where they do not)"},
    {0}};
static const struct gw_need DEBRIS_NEEDS[] = {
    {knows_debris, "is the site in the hurricane-prone region, and must the glazing be impact resistant? Ask the "
                   "architect (site: hurricane_prone, impact)"},
    {knows_debris_speed, "which missile is asked for? asce7-05 goes by nominal wind speeds, the site's is of the "
                         "strength level: give the missile (site: impact) or a later edition (codes: debris)"},
    {0}};
static const struct gw_need BLAST_NEEDS[] = {
    {knows_blast,
     "is there a blast requirement? Ask the owner's security consultant (site: blast; 'none' if there is none)"},
    {knows_blast_load, "which pressure and impulse, or which charge and standoff? Ask the owner's security consultant "
                       "(site: blast)"},
    {knows_blast_pair, "peak pressure and impulse go together, both reflected: which is the other one? Ask the "
                       "owner's security consultant (site: blast: pressure, impulse)"},
    {knows_blast_burst, "charge and standoff go together: which is the other one? Ask the owner's security "
                        "consultant (site: blast: charge, standoff)"},
    {0}};

#define BIT(kind) (1u << (kind))

static const struct gw_check CHECKS[] = {
    {"structural", "Structural test against wind pressure", "ASTM E330", GW_PER_ELEMENT, BIT(GW_LITE) | BIT(GW_MULLION),
     NULL, NULL, gw_demand_structural, gw_compare, gw_offer_structural, false},
    {"air", "Air leakage", "ASTM E283", GW_PER_WALL, 0, NULL, NULL, gw_demand_air, gw_compare, gw_offer_air, false},
    {"water", "Water penetration", "ASTM E331", GW_PER_WALL, 0, NULL, NULL, gw_demand_water, gw_compare, gw_offer_water,
     false},
    {"other", "Named rating", "project specification", GW_PER_NAME, 0, NULL, NULL, gw_demand_other, gw_compare,
     gw_offer_other, false},
    {"glass", "Glass strength", "ASTM E1300", GW_PER_ELEMENT, BIT(GW_LITE), NULL, NULL, gw_demand_glass,
     gw_settle_calculated, NULL, true},
    {"glass_deflection", "Deflection at the center of glass", "project limit", GW_PER_ELEMENT, BIT(GW_LITE), NULL,
     waive_glass_deflection, gw_demand_glass_deflection, gw_settle_calculated, NULL, false},
    {"pocket", "Glass thickness in the glazing pocket", "system data", GW_PER_LITE_TYPE, 0, NULL, NULL,
     gw_demand_pocket, gw_settle_pocket, NULL, false},
    {"mullion", "Mullions: bending and shear", "Aluminum Design Manual F, G", GW_PER_ELEMENT, BIT(GW_MULLION), NULL,
     NULL, gw_demand_structural, gw_settle_mullion, NULL, true},
    {"mullion_deflection", "Mullions: deflection under wind", "IBC 1604.3.7, 2403.3", GW_PER_ELEMENT, BIT(GW_MULLION),
     NULL, NULL, gw_demand_structural, gw_settle_mullion_deflection, NULL, true},
    {"splice", "Splices of mullions: shear", "maker's test", GW_PER_ELEMENT, BIT(GW_MULLION), NULL, NULL,
     gw_demand_structural, gw_settle_splice, NULL, true},
    {"transom", "Transoms: bending by wind and glass weight", "Aluminum Design Manual F", GW_PER_ELEMENT,
     BIT(GW_TRANSOM), NULL, NULL, gw_demand_structural, gw_settle_transom, NULL, true},
    {"transom_deflection", "Transoms: deflection", "IBC 1604.3.7, 2403.3", GW_PER_ELEMENT, BIT(GW_TRANSOM), NULL, NULL,
     gw_demand_structural, gw_settle_transom_deflection, NULL, true},
    {"transom_connection", "Ends of transoms", "maker's test", GW_PER_ELEMENT, BIT(GW_TRANSOM), NULL, NULL,
     gw_demand_structural, gw_settle_transom_connection, NULL, true},
    {"screw", "Screws of the pressure plate", "Aluminum Design Manual J.5", GW_PER_ELEMENT, BIT(GW_SCREW), NULL, NULL,
     gw_demand_structural, gw_settle_screw, NULL, true},
    {"plate", "Pressure plate between screws", "Aluminum Design Manual F", GW_PER_ELEMENT, BIT(GW_SCREW), NULL, NULL,
     gw_demand_structural, gw_settle_plate, NULL, true},
    {"silicone", "Structural silicone: bite", "ASTM C1401", GW_PER_ELEMENT, BIT(GW_LITE), NULL, NULL,
     gw_demand_structural, gw_settle_silicone, NULL, true},
    {"anchor", "Anchors to the structure", "ASCE 7 combinations", GW_PER_ELEMENT, BIT(GW_ANCHOR), NULL, NULL,
     gw_demand_structural, gw_settle_anchor, NULL, true},
    {"seismic_force", "Seismic force on anchors", "ASCE 7 13.3", GW_PER_ELEMENT, BIT(GW_ANCHOR), SEISMIC_NEEDS,
     waive_seismic, gw_demand_seismic_force, gw_settle_seismic_force, NULL, false},
    {"seismic_glass", "Glass in its pocket when the story drifts", "ASCE 7 13.5.9", GW_PER_ELEMENT, BIT(GW_LITE),
     SEISMIC_NEEDS, waive_seismic, gw_demand_seismic_glass, gw_settle_seismic_glass, NULL, false},
    {"seismic_silicone", "Structural silicone when the story drifts", "ASTM C1401", GW_PER_ELEMENT, BIT(GW_LITE),
     SEISMIC_NEEDS, waive_seismic, gw_demand_seismic_glass, gw_settle_seismic_silicone, NULL, false},
    {"movement", "Joints between pieces one above the other", "sum of movements", GW_PER_PROJECT, 0, MOVEMENT_NEEDS,
     waive_movement, gw_demand_movement, gw_settle_movement, NULL, false},
    {"debris", "Wind-borne debris", "ASTM E1886, E1996", GW_PER_ELEMENT, BIT(GW_LITE), DEBRIS_NEEDS, waive_debris,
     gw_demand_debris, gw_settle_debris, NULL, false},
    {"blast", "Blast", "ASTM F1642, F2248", GW_PER_ELEMENT, BIT(GW_LITE), BLAST_NEEDS, waive_blast, gw_demand_blast,
     gw_settle_blast, NULL, false},
};

const struct gw_check *gw_check_list(size_t *n)
{
    *n = sizeof CHECKS / sizeof *CHECKS;
    return CHECKS;
}

/* From 7-22 on, and only for the two upper categories. */
static bool tornado_applies(const struct gw_project *p)
{
    return p->codes->wind == GW_ASCE7_22 && p->project->risk_category >= GW_RISK_III;
}

const struct gw_not_checked *gw_not_checked_list(size_t *n, const struct gw_model *m)
{
    static const struct gw_not_checked tornado = {
        "tornado loads: this project, by ASCE 7-22 and in Risk Category III or IV, is one that chapter 32 applies to; "
        "it may govern over every wind pressure here, and is not computed",
        "the structural engineer"};
    static const struct gw_not_checked rows[] = {
        {"tornado loads (ASCE 7-22 chapter 32; may govern for Risk Category III and IV)", "the structural engineer"},
        {"joints round walls and openings", "the architect"},
        {"snow on sloped lites beyond given loads", "the structural engineer"},
        {"guards and loads of people on the glass", "the architect"},
        {"safety glazing", "the architect"},
        {"thermal stress of glass", "the glass supplier"},
        {"sunshades, fins and maintenance loads", "the architect"},
        {"perimeter fire containment", "the architect"},
        {"condensation", "the specification writer"},
        {"acoustics", "the specification writer"},
    };
    *n = sizeof rows / sizeof *rows;
    struct gw_not_checked *list = gw_alloc(m->arena, *n, sizeof *list);
    memcpy(list, rows, sizeof rows);
    if (tornado_applies(&m->project)) list[0] = tornado;
    return list;
}

const char *gw_verdict_name(enum gw_verdict verdict)
{
    static const char *const names[] = {"not shown", "pass", "fail", "not required"};
    return names[verdict];
}

const char *gw_evidence_name(enum gw_evidence evidence)
{
    static const char *const names[] = {"none", "test", "calculation", "statement"};
    return names[evidence];
}
