/* Of 'galeward calc movement'. */
#include "kinds.h"

#include "base/fields.h"

#include "galeward/model.h"

enum { THERMAL_LIMIT = 4, ITEM_LIMIT = 40 };

struct thermal_item {
    const char *name;
    struct gw_thermal_case given;
};
struct movement_case {
    GW_LIST(struct gw_movement_item) items;
    GW_LIST(struct thermal_item) thermal;
    double least_gap, least_overlap;
};
struct movement_answer {
    struct gw_movement_result result;
    double growth[THERMAL_LIMIT], shrinkage[THERMAL_LIMIT];
    GW_LIST(double) thermal_growth, thermal_shrinkage;
};

static const struct gw_choice DIRECTIONS[] = {
    {"open", GW_OPENS, ""}, {"close", GW_CLOSES, ""}, {"both", GW_BOTH_WAYS, "so much each way"}, {0}};
static const struct gw_choice KINDS[] = {
    {"movement", GW_MOVEMENT, "may come together with the others"}, {"tolerance", GW_TOLERANCE, "independent"}, {0}};
static const struct gw_choice MATERIALS[] = {{"aluminum", GW_EXPANDS_ALUMINUM, ""},
                                             {"glass", GW_EXPANDS_GLASS, ""},
                                             {"steel", GW_EXPANDS_STEEL, "carbon steel"},
                                             {"stainless_steel", GW_EXPANDS_STAINLESS_STEEL, "type 304"},
                                             {"stainless_316", GW_EXPANDS_STAINLESS_316, "type 316"},
                                             {"concrete", GW_EXPANDS_CONCRETE, ""},
                                             {0}};

static const struct gw_field ITEM[] = {
    F(gw_movement_item, name, GW_T_TEXT, .help = "what moves"),
    NUM(gw_movement_item, value, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 10),
        .help = "magnitude; both: so much each way"),
    PICK(gw_movement_item, direction, DIRECTIONS, .help = "open, close or both; absent: both, for a tolerance"),
    PICK(gw_movement_item, kind, KINDS, .flags = GW_REQUIRED, .help = "movement or tolerance"),
};
static const struct gw_record ITEM_RECORD = RECORD("item", gw_movement_item, ITEM);

#define HEAT(key_, dim_, ...) FIELD(thermal_item, #key_, given.key_, GW_T_NUMBER, .dim = dim_, __VA_ARGS__)
static const struct gw_field THERMAL[] = {
    F(thermal_item, name, GW_T_TEXT, .help = "what warms and cools"),
    HEAT(length, GW_LENGTH, .flags = GW_REQUIRED, LIMITS(0.001, 500), .help = "of the piece"),
    FIELD(thermal_item, "material", given.material, GW_T_CHOICE, .choices = MATERIALS, .help = "or expansion_per_k"),
    HEAT(expansion_per_k, GW_RATIO, LIMITS(1e-7, 1e-3), .help = "per kelvin (a value per degF times 1.8)"),
    HEAT(hottest, GW_TEMPERATURE, LIMITS(150, 500), .help = "of the material in service; absent: the usual range"),
    HEAT(coldest, GW_TEMPERATURE, LIMITS(150, 500), .help = "of the material in service"),
    HEAT(set_warmest, GW_TEMPERATURE, LIMITS(150, 500), .help = "at installation; absent: any of the range"),
    HEAT(set_coldest, GW_TEMPERATURE, LIMITS(150, 500), .help = "at installation"),
};
static const struct gw_record THERMAL_RECORD = RECORD("thermal", thermal_item, THERMAL);

static const struct gw_field MOVEMENT[] = {
    F(movement_case, items, GW_T_RECORD, .record = &ITEM_RECORD, .flags = GW_MANY,
      .help = "movements and tolerances of the joint"),
    F(movement_case, thermal, GW_T_RECORD, .record = &THERMAL_RECORD, .flags = GW_MANY,
      .help = "pieces whose growth closes the joint and whose shrinkage opens it: two items each"),
    NUM(movement_case, least_gap, GW_THICKNESS, .flags = GW_REQUIRED, LIMITS(0, 1),
        .help = "that the closed joint keeps: gasket at its solid height, sealant at its limit"),
    NUM(movement_case, least_overlap, GW_THICKNESS, LIMITS(0, 1), .help = "that the open joint keeps engaged"),
};
static const struct gw_record MOVEMENT_RECORD = RECORD("movement", movement_case, MOVEMENT);

#define SUM(key_, member_, help_) OUT(movement_answer, key_, result.member_, GW_THICKNESS, help_)
static const struct gw_field ANSWER[] = {
    SUM("closing_arithmetic", closing.arithmetic, "all items add"),
    SUM("closing_mixed", closing.mixed, "movements add, tolerances by root sum of squares"),
    SUM("closing_srss", closing.srss, "all by root sum of squares: independent random items only"),
    SUM("opening_arithmetic", opening.arithmetic, "as for closing"),
    SUM("opening_mixed", opening.mixed, "as for closing"),
    SUM("opening_srss", opening.srss, "as for closing"),
    SUM("joint_arithmetic", joint.arithmetic, "closing and least_gap: nominal joint"),
    SUM("joint_mixed", joint.mixed, "as above"),
    SUM("joint_srss", joint.srss, "as above"),
    SUM("engagement_arithmetic", engagement.arithmetic, "opening and least_overlap"),
    SUM("engagement_mixed", engagement.mixed, "as above"),
    SUM("engagement_srss", engagement.srss, "as above"),
    OUT_MANY(movement_answer, "thermal_growth", thermal_growth, GW_THICKNESS, "of each thermal piece"),
    OUT_MANY(movement_answer, "thermal_shrinkage", thermal_shrinkage, GW_THICKNESS, "of each thermal piece"),
};
static const struct gw_record MOVEMENT_ANSWER_RECORD = RECORD("movement result", movement_answer, ANSWER);

struct budget {
    struct gw_movement_item items[ITEM_LIMIT + 2 * THERMAL_LIMIT];
    size_t n;
    const char *notes[GW_MOVEMENT_NOTES];
    unsigned n_notes;
};

static void add_note(const char **notes, unsigned *n, const char *text)
{
    for (unsigned i = 0; i < *n; i++)
        if (notes[i] == text) return;
    if (*n < GW_MOVEMENT_NOTES) notes[(*n)++] = text;
}

static enum gw_status warm(struct budget *budget, struct movement_answer *answer, const struct movement_case *given,
                           struct gw_engine *engine)
{
    for (size_t i = 0; i < given->thermal.n; i++) {
        const struct thermal_item *item = &given->thermal.items[i];
        const char *name = item->name ? item->name : "thermal";
        struct gw_thermal_result heat;
        enum gw_status status = gw_thermal_movement(&heat, &item->given, engine);
        if (status) return status;
        answer->growth[i] = heat.growth;
        answer->shrinkage[i] = heat.shrinkage;
        budget->items[budget->n++] = (struct gw_movement_item){name, heat.growth, GW_CLOSES, GW_MOVEMENT};
        budget->items[budget->n++] = (struct gw_movement_item){name, heat.shrinkage, GW_OPENS, GW_MOVEMENT};
        for (unsigned k = 0; k < heat.n_notes; k++) add_note(budget->notes, &budget->n_notes, heat.notes[k]);
    }
    return GW_OK;
}

static enum gw_status run_movement(void *out, const void *in, struct gw_engine *engine)
{
    const struct movement_case *given = in;
    struct movement_answer *answer = out;
    struct budget budget = {.n = 0};
    if (!given->items.n && !given->thermal.n)
        return gw_refuse(engine, GW_MISSING, "items", "give items, or thermal pieces, or both");
    if (given->items.n > ITEM_LIMIT || given->thermal.n > THERMAL_LIMIT)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, given->items.n > ITEM_LIMIT ? "items" : "thermal",
                         "a joint takes up to {} items and {} thermal pieces", gw_of_count((long)ITEM_LIMIT),
                         gw_of_count((long)THERMAL_LIMIT));
    for (size_t i = 0; i < given->items.n; i++) budget.items[budget.n++] = given->items.items[i];
    enum gw_status status = warm(&budget, answer, given, engine);
    if (!status)
        status =
            gw_movement_sum(&answer->result, budget.items, budget.n, given->least_gap, given->least_overlap, engine);
    if (status) return status;
    answer->thermal_growth.items = answer->growth, answer->thermal_shrinkage.items = answer->shrinkage;
    answer->thermal_growth.n = answer->thermal_shrinkage.n = given->thermal.n;
    for (unsigned i = 0; i < budget.n_notes; i++)
        add_note(answer->result.notes, &answer->result.n_notes, budget.notes[i]);
    return GW_OK;
}

static const char *const *movement_notes(const void *out, size_t *n)
{
    const struct movement_answer *answer = out;
    *n = answer->result.n_notes;
    return answer->result.notes;
}

const struct gw_calc_kind gw_kind_movement = {
    .name = "movement",
    .help = "closing and opening of a joint: movements and tolerances added up three ways",
    .example = "items='[{name: live load, value: 3/4 in, direction: close, kind: movement}, "
               "{name: erection, value: 1/8 in, direction: both, kind: tolerance}]' least_gap='1/4 in'",
    .input = &MOVEMENT_RECORD,
    .output = &MOVEMENT_ANSWER_RECORD,
    .run = run_movement,
    .notes = movement_notes};
