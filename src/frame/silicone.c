/* Structural silicone: bite by the trapezoid that the short side hands to its edge, thickness by movement. */
#include "galeward/silicone.h"

#include "fastener_internal.h"
#include "tables_data.h"

static const char BITE_CLAUSE[] = "ASTM C1401, half of the short side on each edge";
static const char DEAD_CLAUSE[] = "ASTM C1401, weight on the whole perimeter";
static const char MOVEMENT_CLAUSE[] = "ASTM C1401, stretch of the diagonal";

static const char NOTE_APPROVED[] = "above the usual allowable stress: the sealant's manufacturer must approve it";
static const char NOTE_SUPPORTED[] = "the weight of the lite is carried by setting blocks";
static const char NOTE_STILL[] = "no movement between glass and frame is given: the least thickness";
static const char NOTE_SHAPE[] = "the bead offered is outside its proportions";
static const char NOTE_WIDE[] = "the beads of opposite edges would meet: no bead holds this lite";

/* A case with its defaults. */
struct bead {
    struct gw_silicone_case in;
    const struct gw_silicone_shape *shape;
    bool dead, moves;
};

static void note(struct gw_silicone_result *out, const char *text)
{
    fastener_note(out->notes, &out->n_notes, GW_SILICONE_NOTES, text);
}

static double stress_row(int row, struct gw_engine *engine)
{
    return GW_USE(engine, &engine->tables->silicone_stress[row])->stress_pa;
}

static enum gw_status check(const struct gw_silicone_case *in, struct gw_engine *engine)
{
    enum gw_status status = gw_fastener_positive("width", in->width, engine);
    if (!status) status = gw_fastener_positive("height", in->height, engine);
    if (!status) status = gw_fastener_magnitude("pressure", in->pressure, engine);
    if (!status) status = gw_fastener_positive_if_given("allowable", in->allowable, engine);
    if (!status) status = gw_fastener_magnitude_if_given("weight", in->weight, engine);
    if (!status) status = gw_fastener_positive_if_given("dead_allowable", in->dead_allowable, engine);
    if (!status) status = gw_fastener_magnitude_if_given("movement", in->movement, engine);
    if (!status) status = gw_fastener_positive_if_given("strain", in->strain, engine);
    if (!status) status = gw_fastener_positive_if_given("bite", in->bite, engine);
    if (!status) status = gw_fastener_positive_if_given("thickness", in->thickness, engine);
    return status;
}

static enum gw_status open_bead(struct bead *bead, struct gw_silicone_result *out, const struct gw_silicone_case *in,
                                struct gw_engine *engine)
{
    *bead = (struct bead){.in = *in};
    enum gw_status status = check(in, engine);
    if (status) return status;
    const double usual = stress_row(GW_ROW_SILICONE_STRESS_WIND, engine);
    const double most = engine->tables->silicone_stress[GW_ROW_SILICONE_STRESS_WIND_APPROVED].stress_pa;
    bead->shape = GW_USE(engine, &engine->tables->silicone_shape[0]);
    bead->dead = gw_given(in->weight) && in->weight > 0;
    bead->moves = gw_given(in->movement) && in->movement > 0;
    if (!gw_given(in->allowable)) bead->in.allowable = usual;
    if (bead->dead && !gw_given(in->dead_allowable))
        bead->in.dead_allowable = stress_row(GW_ROW_SILICONE_STRESS_DEAD, engine);
    if (bead->in.allowable > most * (1 + GW_HAIR))
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "allowable", "structural silicone is designed to {} at most",
                         gw_of_quantity(GW_STRESS, most));
    if (bead->in.allowable > usual * (1 + GW_HAIR)) {
        stress_row(GW_ROW_SILICONE_STRESS_WIND_APPROVED, engine);
        note(out, NOTE_APPROVED);
    }
    if (bead->moves && !gw_given(in->strain))
        return gw_refuse(
            engine, GW_MISSING, "strain",
            "a movement wants the strain of the sealant at its allowable stress, from the manufacturer's curve");
    if (!bead->dead) note(out, NOTE_SUPPORTED);
    if (!bead->moves) note(out, NOTE_STILL);
    return GW_OK;
}

static void bites(struct gw_silicone_result *out, const struct bead *bead, struct gw_engine *engine)
{
    const struct gw_silicone_case *in = &bead->in;
    const double short_side = fmin(in->width, in->height);
    out->bite_wind = in->pressure * short_side / 2 / in->allowable;
    GW_STEP(engine, "B_wind", GW_THICKNESS, out->bite_wind, BITE_CLAUSE, "q*(b/2)/sigma_t",
            {"q", in->pressure, GW_STRESS}, {"b", short_side, GW_THICKNESS}, {"sigma_t", in->allowable, GW_STRESS});
    if (!bead->dead) return;
    out->bite_dead = in->weight / (2 * (in->width + in->height)) / in->dead_allowable;
    GW_STEP(engine, "B_dead", GW_THICKNESS, out->bite_dead, DEAD_CLAUSE, "G/(2*(w+h)*tau)",
            {"G|D", in->weight, GW_FORCE}, {"w", in->width, GW_THICKNESS}, {"h", in->height, GW_THICKNESS},
            {"tau", in->dead_allowable, GW_STRESS});
}

static void thickness(struct gw_silicone_result *out, const struct bead *bead, struct gw_engine *engine)
{
    const struct gw_silicone_case *in = &bead->in;
    if (!bead->moves) return;
    out->thickness_movement = in->movement / sqrt((1 + in->strain) * (1 + in->strain) - 1);
    GW_STEP(engine, "T_movement", GW_THICKNESS, out->thickness_movement, MOVEMENT_CLAUSE, "d/sqrt((1+eps)^2-1)",
            {"d", in->movement, GW_THICKNESS}, {"eps", in->strain, GW_RATIO});
}

static double round_up(double value, double step) { return ceil(value / step * (1 - GW_HAIR)) * step; }

/* A thin wide bead is made thicker, a narrow thick one wider. */
static void proportion(struct gw_silicone_result *out, const struct bead *bead, struct gw_engine *engine)
{
    const struct gw_silicone_shape *shape = bead->shape;
    const double dead = bead->dead ? out->bite_dead : 0, moved = bead->moves ? out->thickness_movement : 0;
    const double bite = round_up(fmax(out->bite_wind, dead), shape->bite_step_m);
    out->thickness = round_up(fmax(fmax(shape->least_m, moved), bite / shape->ratio), shape->thickness_step_m);
    out->bite = fmax(bite, round_up(out->thickness, shape->bite_step_m));
    out->aspect = out->bite / out->thickness;
    GW_TRACE_SAY(engine, "B, T", shape->row.source,
                 "{} and {}: rounded up; the bite at least the thickness and at most its multiple, the thickness at "
                 "least the least",
                 gw_of_quantity(GW_THICKNESS, out->bite), gw_of_quantity(GW_THICKNESS, out->thickness));
}

static void use(struct gw_silicone_result *out, double ratio, const char *name)
{
    if (!gw_given(ratio) || (out->governing && ratio <= out->utilization)) return;
    out->utilization = ratio;
    out->governing = name;
}

static void stresses(struct gw_silicone_result *out, const struct bead *bead, struct gw_engine *engine)
{
    const struct gw_silicone_case *in = &bead->in;
    const double bite = gw_given(in->bite) ? in->bite : out->bite, short_side = fmin(in->width, in->height);
    const double t = gw_given(in->thickness) ? in->thickness : out->thickness;
    out->stress_wind = in->pressure * short_side / 2 / bite;
    GW_STEP(engine, "sigma", GW_STRESS, out->stress_wind, BITE_CLAUSE, "q*(b/2)/B", {"q", in->pressure, GW_STRESS},
            {"b", short_side, GW_THICKNESS}, {"B", bite, GW_THICKNESS});
    use(out, out->stress_wind / in->allowable, "wind");
    if (bead->dead) {
        out->stress_dead = in->weight / (2 * (in->width + in->height)) / bite;
        GW_STEP(engine, "tau", GW_STRESS, out->stress_dead, DEAD_CLAUSE, "G/(2*(w+h)*B)", {"G|D", in->weight, GW_FORCE},
                {"w", in->width, GW_THICKNESS}, {"h", in->height, GW_THICKNESS}, {"B", bite, GW_THICKNESS});
        use(out, out->stress_dead / in->dead_allowable, "dead");
    }
    if (bead->moves) {
        out->strain = hypot(t, in->movement) / t - 1;
        GW_STEP(engine, "eps", GW_RATIO, out->strain, MOVEMENT_CLAUSE, "sqrt(T^2+d^2)/T-1", {"T", t, GW_THICKNESS},
                {"d", in->movement, GW_THICKNESS});
        use(out, out->strain / in->strain, "movement");
    }
    const double hair = 1 + GW_HAIR;
    const bool room = 2 * bite < short_side;
    if (!room) note(out, NOTE_WIDE);
    const bool fits =
        room && bite * hair >= t && bite <= bead->shape->ratio * t * hair && t * hair >= bead->shape->least_m;
    out->fits = fits ? GW_YES : GW_NO;
    if (!fits) note(out, NOTE_SHAPE);
}

double gw_silicone_suction(double bite, double allowable, double width, double height, struct gw_engine *engine)
{
    const double short_side = fmin(width, height);
    const double stress = gw_given(allowable) ? allowable : stress_row(GW_ROW_SILICONE_STRESS_WIND, engine);
    GW_STEP(engine, "q_a", GW_STRESS, 2 * bite * stress / short_side, BITE_CLAUSE, "2*B*sigma_t/b",
            {"B", bite, GW_THICKNESS}, {"sigma_t", stress, GW_STRESS}, {"b", short_side, GW_THICKNESS});
    return 2 * bite * stress / short_side;
}

enum gw_status gw_silicone(struct gw_silicone_result *out, const struct gw_silicone_case *in, struct gw_engine *engine)
{
    struct bead bead;
    *out = (struct gw_silicone_result){.governing = NULL};
    out->bite_dead = out->thickness_movement = out->stress_dead = out->strain = GW_ABSENT;
    enum gw_status status = open_bead(&bead, out, in, engine);
    if (status) return status;
    bites(out, &bead, engine);
    thickness(out, &bead, engine);
    proportion(out, &bead, engine);
    stresses(out, &bead, engine);
    return GW_OK;
}
