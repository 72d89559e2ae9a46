#include "judge/joint_budget.h"

#include "tables_data.h"

const char gw_unknown_movement[] = "how far do the floor edges deflect under live load? Ask the structural engineer "
                                   "(movement: live_load; 0 where they do not)";

bool gw_knows_movement(const struct gw_model *model)
{
    const struct gw_movement_rules *m = model->project.movement;
    return m && gw_given(m->live_load);
}

/* Without temperatures in service the whole usual range counts each way, whatever it was while measured. */
static struct gw_thermal_case temperatures(const struct gw_movement_rules *m, const struct gw_built_joint *built)
{
    const bool known = m && gw_given(m->hottest);
    struct gw_thermal_case in = {.expansion_per_k = GW_ABSENT,
                                 .hottest = m ? m->hottest : GW_ABSENT,
                                 .coldest = m ? m->coldest : GW_ABSENT,
                                 .set_warmest = m ? m->set_warmest : GW_ABSENT,
                                 .set_coldest = m ? m->set_coldest : GW_ABSENT};
    if (!built) return in;
    in.set_coldest = known ? built->coldest : GW_ABSENT;
    in.set_warmest = known ? built->warmest : GW_ABSENT;
    return in;
}

enum gw_status gw_joint_parts(struct gw_movement_item *items, size_t *n, struct gw_ask *ask,
                              const struct gw_mullion_joint *joint, const struct gw_built_joint *built)
{
    const struct gw_movement_rules *m = ask->model->project.movement;
    struct gw_thermal_result thermal;
    struct gw_thermal_case warm = temperatures(m, built);
    warm.length = joint->length;
    warm.material = GW_EXPANDS_ALUMINUM;
    enum gw_status status = gw_thermal_movement(&thermal, &warm, &ask->engine);
    if (status != GW_OK) return status;
    const struct gw_stack_joint in = {.live_above = m->live_load,
                                      .live_below = gw_given(m->live_load_below) ? m->live_load_below : m->live_load,
                                      .shortening = m->shortening,
                                      .rebound = m->rebound,
                                      .thermal = built && built->still ? NULL : &thermal,
                                      .stories = (double)joint->stories,
                                      .fabrication = built ? 0 : m->fabrication,
                                      .erection = built ? 0 : m->erection};
    *n = gw_joint_items(items, &in, &ask->engine);
    return GW_OK;
}

enum gw_status gw_joint_budget(struct gw_movement_result *out, struct gw_ask *ask, const struct gw_mullion_joint *joint,
                               const struct gw_built_joint *built, double least_gap, double least_overlap)
{
    struct gw_movement_item items[GW_JOINT_ITEMS];
    size_t n = 0;
    const enum gw_status status = gw_joint_parts(items, &n, ask, joint, built);
    return status == GW_OK ? gw_movement_sum(out, items, n, least_gap, least_overlap, &ask->engine) : status;
}

static double expansion_of(struct gw_ask *ask, enum gw_expands material)
{
    for (size_t i = 0; i < GW_N_THERMAL_EXPANSION; i++) {
        const struct gw_thermal_expansion *row = &ask->model->tables->thermal_expansion[i];
        if (row->material != (int)material) continue;
        gw_used_add(&ask->engine.used, &row->row);
        return row->per_k;
    }
    return GW_ABSENT;
}

enum gw_status gw_frame_about_glass(struct gw_thermal_result *out, struct gw_ask *ask, double length)
{
    struct gw_thermal_case in = temperatures(ask->model->project.movement, NULL);
    in.length = length;
    in.expansion_per_k = expansion_of(ask, GW_EXPANDS_ALUMINUM) - expansion_of(ask, GW_EXPANDS_GLASS);
    return gw_thermal_movement(out, &in, &ask->engine);
}
