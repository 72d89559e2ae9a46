/* Velocity pressure: K_z, K_e, q. */
#include "wind_internal.h"

const struct gw_wind_velocity *gw_wind_velocity_row(const struct wind_run *run)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_VELOCITY; i++) {
        const struct gw_wind_velocity *row = &tables->wind_velocity[i];
        if (row->edition == (int)run->in->edition) return GW_USE(run->engine, row);
    }
    gw_refuse(run->engine, GW_MISSING, "edition", "edition of ASCE 7 is not given");
    return NULL;
}

static const struct gw_wind_terrain *terrain_row(const struct wind_run *run)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_TERRAIN; i++) {
        const struct gw_wind_terrain *row = &tables->wind_terrain[i];
        if (row->edition == (int)run->in->edition && row->exposure == (int)run->in->exposure)
            return GW_USE(run->engine, row);
    }
    gw_refuse(run->engine, GW_MISSING, "exposure", "exposure is not given");
    return NULL;
}

static const struct gw_wind_low_height *low_height_row(const struct wind_run *run)
{
    const struct gw_tables *tables = run->engine->tables;
    for (size_t i = 0; i < GW_N_WIND_LOW_HEIGHT; i++) {
        const struct gw_wind_low_height *row = &tables->wind_low_height[i];
        if (row->edition == (int)run->in->edition && row->exposure == (int)run->in->exposure)
            return GW_USE(run->engine, row);
    }
    gw_refuse(run->engine, GW_MISSING, "exposure", "exposure is not given");
    return NULL;
}

static double lowest_height(const struct wind_run *run, const struct gw_wind_low_height *low)
{
    switch (run->in->exposure_b_floor) {
    case GW_FLOOR_ALWAYS:
        return low->always_m;
    case GW_FLOOR_NEVER:
        return low->never_m;
    case GW_FLOOR_UNSET:
    case GW_FLOOR_EDITION:
        break;
    }
    return low->by_edition_m;
}

/* The editions differ on low heights in Exposure B, and offices differ on the newer rule: say which one was taken. */
static void note_floor_rule(const struct wind_run *run, const struct gw_wind_low_height *low, const char *clause)
{
    const char *text = "low heights in Exposure B: K_z falls below the older floor, by the rule of this edition";
    if (run->in->exposure_b_floor == GW_FLOOR_ALWAYS)
        text = "low heights in Exposure B: K_z held at the older floor, as asked for (exposure_b_floor: always)";
    else if (run->in->exposure_b_floor == GW_FLOOR_NEVER)
        text = "low heights in Exposure B: K_z falls below the older floor, as asked for (exposure_b_floor: never)";
    else if (!wind_below(low->by_edition_m, low->always_m))
        text =
            "low heights in Exposure B: K_z held at the floor for components and cladding, by the rule of this edition";
    gw_wind_note(run, "K_z", clause, text);
}

/* The height that K_z is worked out for: not below the first of the table, not above the gradient height. */
static double held_height(const struct wind_run *run, const struct gw_wind_terrain *terrain,
                          const struct gw_wind_low_height *low, double z, const char *clause)
{
    double least = lowest_height(run, low);
    if (gw_given(low->kz_always) && wind_below(z, low->always_m)) note_floor_rule(run, low, clause);
    if (z < least) {
        gw_wind_note_of(run, "z", clause, gw_of_quantity(GW_LENGTH, least),
                        "z raised to the lowest height at which K_z is taken");
        return least;
    }
    if (z > terrain->zg_m) {
        gw_wind_note_of(run, "z", clause, gw_of_quantity(GW_LENGTH, terrain->zg_m),
                        "z is above the gradient height: K_z held at its value there");
        return terrain->zg_m;
    }
    return z;
}

double gw_wind_kz_of_run(const struct wind_run *run, const char *symbol, double z)
{
    const struct gw_wind_velocity *velocity = gw_wind_velocity_row(run);
    if (!velocity) return GW_ABSENT;
    const struct gw_wind_terrain *terrain = terrain_row(run);
    const struct gw_wind_low_height *low = terrain ? low_height_row(run) : NULL;
    if (!low) return GW_ABSENT;
    const char *clause = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_KZ);
    double held = held_height(run, terrain, low, z, clause);
    double kz = velocity->kz_scale * pow(held / terrain->zg_m, 2 / terrain->alpha);
    const bool floored = run->in->exposure_b_floor == GW_FLOOR_ALWAYS && kz < low->kz_always;
    GW_STEP(run->engine, floored ? "K_table" : symbol, GW_RATIO, kz, clause, "k*(z/z_g)^(2/alpha)",
            {"k", velocity->kz_scale, GW_RATIO}, {"z", held, GW_LENGTH}, {"z_g", terrain->zg_m, GW_LENGTH},
            {"alpha", terrain->alpha, GW_RATIO});
    if (!floored) return kz;
    GW_STEP(run->engine, symbol, GW_RATIO, low->kz_always, clause, "max(K_table, K_least)", {"K_table", kz, GW_RATIO},
            {"K_least", low->kz_always, GW_RATIO});
    note_floor_rule(run, low, clause);
    return low->kz_always;
}

static void note_no_elevation(const struct wind_run *run, const char *clause)
{
    if (gw_given(run->in->ke) || gw_given(run->in->elevation))
        gw_wind_note(run, "K_e", clause,
                     "this edition has no ground elevation factor: elevation and ke are not used, K_e = 1");
}

double gw_wind_ke_of_run(const struct wind_run *run)
{
    const struct gw_wind_velocity *velocity = gw_wind_velocity_row(run);
    if (!velocity) return GW_ABSENT;
    const struct gw_wind_case *in = run->in;
    const char *clause = gw_wind_clause(run, GW_ROW_WIND_CLAUSES_KE);
    if (!gw_given(velocity->ke_rate_per_m)) {
        note_no_elevation(run, clause);
        return 1;
    }
    if (gw_given(in->ke)) {
        gw_trace_found(run->engine, "K_e", GW_RATIO, in->ke, clause, "as given", NULL, 0);
        return in->ke;
    }
    if (!gw_given(in->elevation)) {
        gw_trace_note(run->engine, "K_e", clause, "no elevation given: K_e = 1, permitted in all cases");
        return 1;
    }
    double ke = exp(-velocity->ke_rate_per_m * in->elevation);
    GW_STEP(run->engine, "K_e", GW_RATIO, ke, clause, "exp(-c_e*z_e)", {"c_e", velocity->ke_rate_per_m, GW_PER_LENGTH},
            {"z_e", in->elevation, GW_LENGTH});
    return ke;
}

/* The equation of the edition: with K_d or without it, with K_e or before there was one. */
static const char *velocity_formula(const struct gw_wind_velocity *velocity)
{
    if (velocity->kd_in_pressure == GW_YES) return "c*K_z*K_zt*K_e*V^2";
    return gw_given(velocity->ke_rate_per_m) ? "c*K_z*K_zt*K_d*K_e*V^2" : "c*K_z*K_zt*K_d*V^2";
}

static double velocity_pressure(const struct wind_run *run, const struct gw_wind_velocity *velocity,
                                const struct wind_names *names, const struct wind_level *at, double ke)
{
    const struct gw_wind_constant *constant =
        &run->engine->tables->wind_constant[GW_ROW_WIND_CONSTANT_VELOCITY_PRESSURE];
    gw_used_add(&run->engine->used, &constant->row);
    double c = constant->value_pa_s2_m2, v = run->in->basic_wind_speed;
    double kd = velocity->kd_in_pressure == GW_YES ? 1 : velocity->kd;
    double q = c * at->kz * at->kzt * kd * ke * v * v;
    GW_STEP(run->engine, names->q, GW_PRESSURE, q, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_VELOCITY),
            velocity_formula(velocity), {"c", c, GW_WIND_CONSTANT}, {names->kz_in_q, at->kz, GW_RATIO},
            {names->kzt_in_q, at->kzt, GW_RATIO}, {"K_d", kd, GW_RATIO}, {"K_e", ke, GW_RATIO}, {"V", v, GW_SPEED});
    return q;
}

static double topographic_factor(const struct wind_run *run, const char *symbol, double z)
{
    if (!gw_given(run->in->kzt)) return gw_wind_kzt_of_run(run, symbol, run->in->topography, z);
    gw_trace_found(run->engine, symbol, GW_RATIO, run->in->kzt, gw_wind_clause(run, GW_ROW_WIND_CLAUSES_KZT),
                   "as given", NULL, 0);
    return run->in->kzt;
}

bool gw_wind_level_at(const struct wind_run *run, double z, double ke, const struct wind_names *names,
                      struct wind_level *level)
{
    const struct gw_wind_velocity *velocity = gw_wind_velocity_row(run);
    if (!velocity) return false;
    const char *before = gw_trace_at(run->engine, names->place);
    level->kz = gw_wind_kz_of_run(run, names->kz, z);
    level->kzt = topographic_factor(run, names->kzt, z);
    const bool known = gw_given(level->kz) && gw_given(level->kzt);
    if (known) level->q = velocity_pressure(run, velocity, names, level, ke);
    gw_trace_at(run->engine, before);
    return known;
}

double gw_wind_kz(enum gw_edition edition, enum gw_exposure exposure, enum gw_floor_rule floor, double z,
                  struct gw_engine *engine)
{
    const struct gw_wind_case in = {.edition = edition, .exposure = exposure, .exposure_b_floor = floor};
    const struct wind_run run = {.engine = engine, .in = &in};
    return gw_wind_kz_of_run(&run, "K_z", z);
}

double gw_wind_ke(enum gw_edition edition, double elevation, struct gw_engine *engine)
{
    const struct gw_wind_case in = {.edition = edition, .elevation = elevation, .ke = GW_ABSENT};
    const struct wind_run run = {.engine = engine, .in = &in};
    return gw_wind_ke_of_run(&run);
}
