/* One screw: every strength that its inputs allow, and its demands against them. */
#include "fastener_internal.h"

#include "tables_data.h"

static const char NOTE_SPACED[] =
    "tension and shear of the screw are not shown: the minor diameter of this spaced thread "
    "is not in the table: give minor_diameter";
static const char NOTE_FACTOR[] = "the safety factor given is the screw's; the metal around it keeps at least that of "
                                  "screws (metal_safety_factor for bolts)";
static const char NOTE_NOT_SHOWN[] =
    "the utilization is not shown: a demand in tension wants the screw's strength, its "
    "engagement and metal; one in shear the sheet and edge_distance too";
static const char NOTE_THIN[] =
    "the formula of pull-out is unsafe for drilled-in screws in metal this thin: published tests of them stand in its "
    "place where they are lower";

static void clear(struct gw_screw_result *out)
{
    *out = (struct gw_screw_result){.governing = NULL};
    out->areas.tension = out->areas.root = GW_ABSENT;
    out->tension = out->shear = out->tension_yield = GW_ABSENT;
    out->pullout_nominal = out->pullout = out->pullover_nominal = out->pullover = GW_ABSENT;
    out->bearing_nominal = out->bearing = out->tilting_nominal = out->tilting = GW_ABSENT;
    out->interaction = out->utilization = GW_ABSENT;
}

static void note(struct gw_screw_result *out, const char *text)
{
    fastener_note(out->notes, &out->n_notes, GW_SCREW_NOTES, text);
}

static enum gw_status check(const struct gw_screw_case *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } positive[] = {{"ultimate", in->ultimate},
                    {"yield", in->yield},
                    {"tested_tension", in->tested_tension},
                    {"tested_shear", in->tested_shear},
                    {"safety_factor", in->safety_factor},
                    {"metal_safety_factor", in->metal_safety_factor}};
    enum gw_status status = gw_fastener_magnitude_if_given("tension", in->demand_tension, engine);
    if (!status) status = gw_fastener_magnitude_if_given("shear", in->demand_shear, engine);
    for (size_t i = 0; !status && i < sizeof positive / sizeof *positive; i++)
        status = gw_fastener_positive_if_given(positive[i].key, positive[i].value, engine);
    if (status) return status;
    if (in->metal && !gw_given(in->engagement))
        return gw_refuse(engine, GW_MISSING, "engagement", "engagement goes with the metal that holds the thread");
    if (gw_given(in->engagement) && !in->metal)
        return gw_refuse(engine, GW_MISSING, "alloy", "engagement wants an alloy, or metal_ultimate and metal_yield");
    return GW_OK;
}

static void factors(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine)
{
    const double usual = gw_screw_safety(engine);
    out->safety_factor = gw_given(in->safety_factor) ? in->safety_factor : usual;
    /* A screw's lower factor is not the metal's. */
    out->metal_safety_factor =
        gw_given(in->metal_safety_factor) ? in->metal_safety_factor : fmax(out->safety_factor, usual);
    if (gw_given(in->safety_factor) && !gw_given(in->metal_safety_factor) && (in->metal || in->sheet))
        note(out, NOTE_FACTOR);
}

static double of_test(const char *symbol, double tested, double safety_factor, struct gw_engine *engine)
{
    const double extra = GW_USE(engine, &engine->tables->fastener_safety[GW_ROW_FASTENER_SAFETY_TESTED_SCREW])->factor;
    const double allowable = tested / (extra * safety_factor);
    GW_STEP(engine, symbol, GW_FORCE, allowable, "ADM 2015 J.5, tested screws", "R_test/(c*SF)",
            {"R_test", tested, GW_FORCE}, {"c", extra, GW_RATIO}, {"SF", safety_factor, GW_RATIO});
    return allowable;
}

static void strength(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine)
{
    const double factor = out->safety_factor;
    const bool known = gw_given(out->areas.root), stressed = gw_given(in->ultimate) && known;
    if (gw_given(in->tested_tension)) out->tension = of_test("T_a", in->tested_tension, factor, engine);
    else if (stressed) out->tension = gw_screw_tension(in->ultimate, out->areas.tension, factor, engine);
    if (gw_given(in->tested_shear)) out->shear = of_test("V_a", in->tested_shear, factor, engine);
    else if (stressed) out->shear = gw_screw_shear(in->ultimate, out->areas.root, factor, engine);
    if (gw_given(in->ultimate) && !known) note(out, NOTE_SPACED);
    if (!gw_given(in->yield) || !known) return;
    out->tension_yield = in->yield * out->areas.tension;
    GW_STEP(engine, "T_y", GW_FORCE, out->tension_yield, "yield on the stress area", "F_y*A_s",
            {"F_y", in->yield, GW_STRESS}, {"A_s", out->areas.tension, GW_SECTION_AREA});
}

static double allowable(const char *symbol, double nominal, double factor, struct gw_engine *engine)
{
    const double value = nominal / factor;
    GW_STEP(engine, symbol, GW_FORCE, value, "allowable strength", "R_n/SF", {"R_n", nominal, GW_FORCE},
            {"SF", factor, GW_RATIO});
    return value;
}

static enum gw_status thread_holds(struct gw_screw_result *out, const struct gw_screw_case *in,
                                   struct gw_engine *engine)
{
    if (!in->metal) return GW_OK;
    enum gw_status status = gw_screw_pullout(&out->pullout_nominal, &in->screw, in->engagement, in->metal, engine);
    if (status) return status;
    out->pullout = allowable("R_a", out->pullout_nominal, out->metal_safety_factor, engine);
    out->thin = gw_screw_in_thin_metal(in->engagement, engine->tables);
    if (out->thin) note(out, NOTE_THIN);
    return GW_OK;
}

static enum gw_status sheet_holds(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine)
{
    if (!in->sheet) return GW_OK;
    const double factor = out->metal_safety_factor;
    const bool over = gw_given(in->head.diameter) || in->head.kind > GW_HEAD_FLAT; /* the others need no diameter */
    enum gw_status status = GW_OK;
    if (over) {
        status = gw_screw_pullover(&out->pullover_nominal, &in->screw, &in->head, in->sheet, engine);
        if (status) return status;
        out->pullover = allowable("R_a", out->pullover_nominal, factor, engine);
    }
    if (!gw_given(in->edge_distance)) return GW_OK;
    status = gw_screw_bearing(&out->bearing_nominal, in->screw.diameter, in->edge_distance, in->sheet, engine);
    if (status) return status;
    out->bearing = allowable("R_a", out->bearing_nominal, factor, engine);
    if (!in->metal || in->engagement > in->sheet->thickness * (1 + GW_HAIR)) return GW_OK;
    status = gw_fastener_positive("metal_ultimate", in->metal->ultimate, engine);
    if (status) return status;
    out->tilting_nominal = gw_screw_tilting(in->screw.diameter, in->engagement, in->metal->ultimate, engine);
    out->tilting = allowable("R_a", out->tilting_nominal, factor, engine);
    return GW_OK;
}

static void use(struct gw_screw_result *out, double ratio, const char *name)
{
    if (!gw_given(ratio) || (gw_given(out->utilization) && ratio <= out->utilization)) return;
    out->utilization = ratio;
    out->governing = name;
}

/* Every link that a demand passes through must be known. */
static bool shown(const struct gw_screw_result *out, const struct gw_screw_case *in)
{
    const bool pulled = gw_given(in->demand_tension) && in->demand_tension > 0;
    const bool sheared = gw_given(in->demand_shear) && in->demand_shear > 0;
    const bool tension = gw_given(out->tension) && gw_given(out->pullout) && (!in->sheet || gw_given(out->pullover));
    return (!pulled || tension) && (!sheared || (gw_given(out->shear) && gw_given(out->bearing)));
}

static void judge(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine)
{
    const double tension = gw_given(in->demand_tension) ? in->demand_tension : 0;
    const double shear = gw_given(in->demand_shear) ? in->demand_shear : 0;
    if (!gw_given(in->demand_tension) && !gw_given(in->demand_shear)) return;
    if (gw_given(out->tension) && gw_given(out->shear))
        out->interaction = gw_fastener_interaction(tension, out->tension, shear, out->shear, engine);
    if (!shown(out, in)) {
        note(out, NOTE_NOT_SHOWN);
        return;
    }
    if (gw_given(out->interaction)) use(out, sqrt(out->interaction), "screw");
    else use(out, fmax(tension / out->tension, shear / out->shear), "screw");
    use(out, tension / out->pullout, "pull-out");
    use(out, tension / out->pullover, "pull-over");
    use(out, shear / out->bearing, "bearing");
    use(out, shear / out->tilting, "tilting");
}

enum gw_status gw_screw_solve(struct gw_screw_result *out, const struct gw_screw_case *in, struct gw_engine *engine)
{
    clear(out);
    enum gw_status status = check(in, engine);
    if (!status) status = gw_screw_areas(&out->areas, &in->screw, engine);
    if (status) return status;
    factors(out, in, engine);
    strength(out, in, engine);
    status = thread_holds(out, in, engine);
    if (!status) status = sheet_holds(out, in, engine);
    if (!status) judge(out, in, engine);
    return status;
}

/* The least so far, or what is not known. */
static void hold(struct gw_screw_hold *out, double allowable, const char *by)
{
    if (!gw_given(out->allowable) || allowable >= out->allowable) return;
    *out = (struct gw_screw_hold){allowable, by};
}

enum gw_status gw_screw_hold(struct gw_screw_hold *out, const struct gw_screw_result *solved, double tested_pullout,
                             struct gw_engine *engine)
{
    const bool tested = gw_given(tested_pullout);
    double pullout = solved->pullout;
    enum gw_status status = GW_OK;
    if (tested) status = gw_tested_strength(&pullout, GW_SEAT_CHASE, tested_pullout, solved->safety_factor, engine);
    *out = (struct gw_screw_hold){INFINITY, ""};
    hold(out, solved->tension, "tension of the screw");
    hold(out, solved->pullover, "pull-over of the plate");
    hold(out, pullout,
         tested         ? "tested pull-out"
         : solved->thin ? "pull-out from thin metal, by published tests of drilled-in screws"
                        : "pull-out of the thread");
    return status;
}
