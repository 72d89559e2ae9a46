/* Seismic force on a wall, on its connections and on their fasteners. */
#include "seismic_internal.h"

static const char NOTE_ABOVE[] = "the attachment is above the roof: z/h counts as 1, as the standard has it";
static const char NOTE_TABLE[] = "a_p and R_p are those of the table for the part, believed unchanged since ASCE 7-05";
static const char NOTE_TABLE_22[] =
    "C_AR and R_po of the part were not seen in the standard itself: give those of ASCE 7-22 Table 13.5-1";
static const char NOTE_22[] = "the force of ASCE 7-22 was not seen in the standard itself: confirm H_f and R_mu";
static const char NOTE_VERTICAL[] =
    "the vertical force was not seen in the standard itself; it acts with the horizontal one, up or down";
static const char NOTE_FASTENERS[] =
    "fasteners of the connecting system take a much higher force than the wall and the bodies of its connections";
static const char NOTE_OTHER_EDITION[] =
    "car, rpo, period, response_modification, overstrength and structure_importance "
    "belong to asce7-22: not used in this edition";
static const char NOTE_OTHER_EDITION_22[] = "ap and rp belong to asce7-10 and asce7-16: not used in asce7-22";

void gw_seismic_note(struct gw_seismic_notes *notes, const char *text)
{
    for (unsigned i = 0; i < notes->n; i++)
        if (notes->items[i] == text) return;
    if (notes->n < GW_SEISMIC_NOTES) notes->items[notes->n++] = text;
}

void gw_seismic_note_unseen(struct gw_seismic_notes *notes, const struct gw_row *row, const char *text)
{
    if (row->basis == GW_SECOND_HAND || row->basis == GW_MEMORY) gw_seismic_note(notes, text);
}

static enum gw_status number(const char *key, double value, bool good, const char *what, struct gw_engine *engine)
{
    if (!gw_given(value)) return gw_refuse(engine, GW_MISSING, key, "{} is needed", gw_of_text(key));
    if (good && isfinite(value)) return GW_OK;
    return gw_refuse(engine, GW_BAD_VALUE, key, "{} must {}", gw_of_text(key), gw_of_text(what));
}

enum gw_status gw_seismic_positive(const char *key, double value, struct gw_engine *engine)
{
    return number(key, value, value > 0, "be above zero", engine);
}

enum gw_status gw_seismic_not_negative(const char *key, double value, struct gw_engine *engine)
{
    return number(key, value, value >= 0, "not be negative", engine);
}

/* A case on its way: its edition's rule, z/h as it counts, the coefficients of its part. */
struct force {
    const struct gw_seismic_force_case *in;
    struct gw_seismic_force_result *out;
    struct gw_engine *engine;
    const struct gw_seismic_force_rule *rule;
    double z_h;
};

static enum gw_status open_force(struct force *f)
{
    struct gw_engine *engine = f->engine;
    if (f->in->edition == GW_EDITION_UNSET)
        return gw_refuse(engine, GW_MISSING, "edition", "edition of ASCE 7 is not given");
    const struct gw_seismic_force_rule *rules = engine->tables->seismic_force_rule;
    size_t row = 0;
    while (row < GW_N_SEISMIC_FORCE_RULE && rules[row].edition != (int)f->in->edition) row++;
    if (row == GW_N_SEISMIC_FORCE_RULE)
        return gw_refuse(engine, GW_OUTSIDE_METHOD, "edition", "no seismic force for this edition");
    f->rule = GW_USE(engine, &rules[row]);
    enum gw_status status = gw_seismic_positive("sds", f->in->sds, engine);
    if (!status) status = gw_seismic_positive("weight", f->in->weight, engine);
    if (!status) status = gw_seismic_not_negative("height_ratio", f->in->height_ratio, engine);
    if (!status) status = gw_seismic_positive("importance", f->in->importance, engine);
    if (status) return status;
    f->z_h = fmin(f->in->height_ratio, 1);
    if (f->in->height_ratio > 1) {
        gw_seismic_note(&f->out->notes, NOTE_ABOVE);
        gw_trace_note(engine, "z/h", f->rule->clause, NOTE_ABOVE);
    }
    return GW_OK;
}

/* A coefficient that is given, or the table's for the part. */
static enum gw_status take(const char *key, double *out, double given, enum gw_seismic_part part, double tabulated,
                           struct gw_engine *engine)
{
    *out = gw_given(given) ? given : tabulated;
    if (gw_given(given) || part != GW_PART_UNSET) return gw_seismic_positive(key, *out, engine);
    return gw_refuse(engine, GW_MISSING, key,
                     "give {}, or part (wall_element, connection_body or fasteners) to take it from the table",
                     gw_of_text(key));
}

static enum gw_status find_coefficients(struct force *f)
{
    const struct gw_seismic_force_case *in = f->in;
    const struct gw_seismic_coefficients *row = &f->engine->tables->seismic_coefficients[0];
    for (size_t i = 0; i < GW_N_SEISMIC_COEFFICIENTS; i++)
        if (f->engine->tables->seismic_coefficients[i].part == (int)in->part)
            row = &f->engine->tables->seismic_coefficients[i];
    enum gw_status status = take("ap", &f->out->ap, in->ap, in->part, row->ap, f->engine);
    if (!status) status = take("rp", &f->out->rp, in->rp, in->part, row->rp, f->engine);
    if (status || (gw_given(in->ap) && gw_given(in->rp))) return status;
    gw_used_add(&f->engine->used, &row->row);
    gw_seismic_note_unseen(&f->out->notes, &row->row, NOTE_TABLE);
    GW_TRACE_SAY(f->engine, "a_p, R_p", row->row.source, "{} and {}: {}", gw_of_number(f->out->ap, 6),
                 gw_of_number(f->out->rp, 6), gw_of_text(row->title));
    return GW_OK;
}

static enum gw_status find_coefficients_22(struct force *f)
{
    const struct gw_seismic_force_case *in = f->in;
    const struct gw_seismic_coefficients_22 *row = &f->engine->tables->seismic_coefficients_22[0];
    for (size_t i = 0; i < GW_N_SEISMIC_COEFFICIENTS_22; i++)
        if (f->engine->tables->seismic_coefficients_22[i].part == (int)in->part)
            row = &f->engine->tables->seismic_coefficients_22[i];
    double car = f->z_h > 0 ? row->car_above : row->car_at_grade;
    enum gw_status status = take("car", &f->out->car, in->car, in->part, car, f->engine);
    if (!status) status = take("rpo", &f->out->rpo, in->rpo, in->part, row->rpo, f->engine);
    if (status || (gw_given(in->car) && gw_given(in->rpo))) return status;
    gw_used_add(&f->engine->used, &row->row);
    gw_seismic_note_unseen(&f->out->notes, &row->row, NOTE_TABLE_22);
    GW_TRACE_SAY(f->engine, "C_AR, R_po", row->row.source, "{} and {}: {}", gw_of_number(f->out->car, 6),
                 gw_of_number(f->out->rpo, 6), gw_of_text(row->title));
    return GW_OK;
}

static void find_height_factor(struct force *f)
{
    const struct gw_seismic_height_22 *row = GW_USE(f->engine, &f->engine->tables->seismic_height_22[0]);
    struct gw_seismic_force_result *out = f->out;
    const double period = f->in->period;
    if (!gw_given(period)) {
        out->hf = 1 + row->linear_unknown * f->z_h;
        GW_STEP(f->engine, "H_f", GW_RATIO, out->hf, row->clause, "1+k*z_h", {"k", row->linear_unknown, GW_RATIO},
                {"z_h", f->z_h, GW_RATIO});
        return;
    }
    const double a1 = fmin(row->unit_period_s / period, row->linear_most);
    const double a2 = fmax(1 - (row->period_s / period) * (row->period_s / period), 0);
    out->hf = 1 + a1 * f->z_h + a2 * pow(f->z_h, row->power);
    GW_STEP(f->engine, "a_1", GW_RATIO, a1, row->clause, "min(T_1/T_a,k)", {"T_1", row->unit_period_s, GW_TIME},
            {"T_a", period, GW_TIME}, {"k", row->linear_most, GW_RATIO});
    GW_STEP(f->engine, "a_2", GW_RATIO, a2, row->clause, "max(1-(T_0/T_a)^2,0)", {"T_0", row->period_s, GW_TIME},
            {"T_a", period, GW_TIME});
    GW_STEP(f->engine, "H_f", GW_RATIO, out->hf, row->clause, "1+a_1*z_h+a_2*z_h^n", {"a_1", a1, GW_RATIO},
            {"z_h", f->z_h, GW_RATIO}, {"a_2", a2, GW_RATIO}, {"n", row->power, GW_RATIO});
}

static void find_ductility(struct force *f)
{
    const struct gw_seismic_ductility_22 *row = GW_USE(f->engine, &f->engine->tables->seismic_ductility_22[0]);
    const struct gw_seismic_force_case *in = f->in;
    struct gw_seismic_force_result *out = f->out;
    if (!(f->z_h > 0) || !gw_given(in->response_modification)) {
        out->rmu = f->z_h > 0 ? row->unknown : row->at_grade;
        gw_trace_found(f->engine, "R_mu", GW_RATIO, out->rmu, row->clause,
                       f->z_h > 0 ? "the structure's system is unknown" : "at or below grade", NULL, 0);
        return;
    }
    double root = sqrt(row->factor * in->response_modification / (in->structure_importance * in->overstrength));
    out->rmu = fmax(root, row->least);
    GW_STEP(f->engine, "R_mu", GW_RATIO, out->rmu, row->clause, "max(sqrt(c*R/(I_e*Omega_0)),m)",
            {"c", row->factor, GW_RATIO}, {"R", in->response_modification, GW_RATIO},
            {"I_e", in->structure_importance, GW_RATIO}, {"Omega_0", in->overstrength, GW_RATIO},
            {"m", row->least, GW_RATIO});
}

static enum gw_status check_structure(const struct gw_seismic_force_case *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } system[] = {{"response_modification", in->response_modification},
                  {"overstrength", in->overstrength},
                  {"structure_importance", in->structure_importance}};
    int given = 0;
    for (size_t i = 0; i < 3; i++) given += gw_given(system[i].value);
    for (size_t i = 0; i < 3 && given; i++) {
        if (!gw_given(system[i].value))
            return gw_refuse(engine, GW_MISSING, system[i].key,
                             "response_modification, overstrength and structure_importance go together: give all, or "
                             "none where the structure is unknown");
        enum gw_status status = gw_seismic_positive(system[i].key, system[i].value, engine);
        if (status) return status;
    }
    return gw_given(in->period) ? gw_seismic_positive("period", in->period, engine) : GW_OK;
}

static enum gw_status compute_22(struct force *f)
{
    const struct gw_seismic_force_case *in = f->in;
    struct gw_seismic_force_result *out = f->out;
    enum gw_status status = check_structure(in, f->engine);
    if (!status) status = find_coefficients_22(f);
    if (status) return status;
    find_height_factor(f);
    find_ductility(f);
    if (gw_given(in->ap) || gw_given(in->rp)) gw_seismic_note(&out->notes, NOTE_OTHER_EDITION_22);
    gw_seismic_note_unseen(&out->notes, &f->rule->row, NOTE_22);
    out->computed =
        f->rule->share * in->sds * in->importance * in->weight * (out->hf / out->rmu) * (out->car / out->rpo);
    GW_STEP(f->engine, "F_p", GW_FORCE, out->computed, f->rule->clause, "c*S_DS*I_p*W_p*(H_f/R_mu)*(C_AR/R_po)",
            {"c", f->rule->share, GW_RATIO}, {"S_DS", in->sds, GW_RATIO}, {"I_p", in->importance, GW_RATIO},
            {"W_p", in->weight, GW_FORCE}, {"H_f", out->hf, GW_RATIO}, {"R_mu", out->rmu, GW_RATIO},
            {"C_AR", out->car, GW_RATIO}, {"R_po", out->rpo, GW_RATIO});
    return GW_OK;
}

static enum gw_status compute(struct force *f)
{
    const struct gw_seismic_force_case *in = f->in;
    struct gw_seismic_force_result *out = f->out;
    enum gw_status status = find_coefficients(f);
    if (status) return status;
    if (gw_given(in->car) || gw_given(in->rpo) || gw_given(in->period) || gw_given(in->response_modification) ||
        gw_given(in->overstrength) || gw_given(in->structure_importance))
        gw_seismic_note(&out->notes, NOTE_OTHER_EDITION);
    out->computed =
        f->rule->share * out->ap * in->sds * in->weight * (1 + f->rule->height * f->z_h) / (out->rp / in->importance);
    GW_STEP(f->engine, "F_p", GW_FORCE, out->computed, f->rule->clause, "c*a_p*S_DS*W_p*(1+k*z_h)/(R_p/I_p)",
            {"c", f->rule->share, GW_RATIO}, {"a_p", out->ap, GW_RATIO}, {"S_DS", in->sds, GW_RATIO},
            {"W_p", in->weight, GW_FORCE}, {"k", f->rule->height, GW_RATIO}, {"z_h", f->z_h, GW_RATIO},
            {"R_p", out->rp, GW_RATIO}, {"I_p", in->importance, GW_RATIO});
    return GW_OK;
}

static double limit(const struct force *f, const char *symbol, double share)
{
    const struct gw_seismic_force_case *in = f->in;
    double value = share * in->sds * in->importance * in->weight;
    GW_STEP(f->engine, symbol, GW_FORCE, value, f->rule->clause, "c*S_DS*I_p*W_p", {"c", share, GW_RATIO},
            {"S_DS", in->sds, GW_RATIO}, {"I_p", in->importance, GW_RATIO}, {"W_p", in->weight, GW_FORCE});
    return value;
}

static void close_force(const struct force *f)
{
    const struct gw_seismic_vertical *vertical = GW_USE(f->engine, &f->engine->tables->seismic_vertical[0]);
    struct gw_seismic_force_result *out = f->out;
    out->minimum = limit(f, "F_p,min", f->rule->least);
    out->maximum = limit(f, "F_p,max", f->rule->most);
    out->force = fmax(fmin(out->computed, out->maximum), out->minimum);
    out->governs = out->computed > out->maximum ? "maximum" : out->computed < out->minimum ? "minimum" : "formula";
    GW_STEP(f->engine, "F_p", GW_FORCE, out->force, f->rule->clause, "max(min(F,F_max),F_min)",
            {"F", out->computed, GW_FORCE}, {"F_max|F_p,max", out->maximum, GW_FORCE},
            {"F_min|F_p,min", out->minimum, GW_FORCE});
    out->vertical = vertical->share * f->in->sds * f->in->weight;
    GW_STEP(f->engine, "F_v", GW_FORCE, out->vertical, vertical->clause, "c*S_DS*W_p", {"c", vertical->share, GW_RATIO},
            {"S_DS", f->in->sds, GW_RATIO}, {"W_p", f->in->weight, GW_FORCE});
    gw_seismic_note_unseen(&out->notes, &vertical->row, NOTE_VERTICAL);
    if (f->in->part == GW_PART_WALL_ELEMENT || f->in->part == GW_PART_CONNECTION_BODY)
        gw_seismic_note(&out->notes, NOTE_FASTENERS);
}

double gw_height_ratio(double z, double h) { return fmin(fmax(z / h, 0), 1); }

enum gw_status gw_seismic_force(struct gw_seismic_force_result *out, const struct gw_seismic_force_case *in,
                                struct gw_engine *engine)
{
    struct force f = {.in = in, .out = out, .engine = engine, .rule = &engine->tables->seismic_force_rule[0]};
    *out = (struct gw_seismic_force_result){.governs = NULL};
    out->ap = out->rp = out->car = out->rpo = out->hf = out->rmu = GW_ABSENT;
    enum gw_status status = open_force(&f);
    if (!status) status = (in->edition == GW_ASCE7_22 ? compute_22 : compute)(&f);
    if (!status) close_force(&f);
    return status;
}

enum gw_status gw_seismic_forces(struct gw_seismic_forces *out, const struct gw_seismic_force_case *in,
                                 struct gw_engine *engine)
{
    const struct {
        enum gw_seismic_part part;
        struct gw_seismic_force_result *result;
    } parts[] = {{GW_PART_WALL_ELEMENT, &out->wall_element},
                 {GW_PART_CONNECTION_BODY, &out->connection_body},
                 {GW_PART_FASTENERS, &out->fasteners}};
    const double own[] = {in->ap, in->rp, in->car, in->rpo};
    for (size_t i = 0; i < sizeof own / sizeof *own; i++)
        if (gw_given(own[i]) || in->part != GW_PART_UNSET)
            return gw_refuse(engine, GW_BAD_VALUE, "part", "the three parts take their coefficients from the table");
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++) {
        struct gw_seismic_force_case one = *in;
        one.part = parts[i].part;
        enum gw_status status = gw_seismic_force(parts[i].result, &one, engine);
        if (status) return status;
    }
    return GW_OK;
}

enum gw_status gw_structure_importance(double *out, enum gw_risk risk, struct gw_engine *engine)
{
    for (size_t i = 0; i < GW_N_SEISMIC_IMPORTANCE; i++) {
        const struct gw_seismic_importance *row = &engine->tables->seismic_importance[i];
        if (row->risk != (int)risk) continue;
        *out = GW_USE(engine, row)->factor;
        GW_STEP(engine, "I_e", GW_RATIO, *out, row->row.source, "I_e", {"I_e", *out, GW_RATIO});
        return GW_OK;
    }
    return gw_refuse(engine, GW_MISSING, "risk_category", "risk_category is needed for the importance factor");
}

enum gw_status gw_component_importance(double *out, enum gw_risk risk, enum gw_bool life_safety,
                                       struct gw_engine *engine)
{
    if (risk == GW_RISK_UNSET && life_safety != GW_YES)
        return gw_refuse(engine, GW_MISSING, "risk_category", "risk_category is needed for the importance factor");
    bool essential = life_safety == GW_YES || risk == GW_RISK_IV;
    const struct gw_component_importance *row =
        &engine->tables->component_importance[essential ? GW_ROW_COMPONENT_IMPORTANCE_ESSENTIAL
                                                        : GW_ROW_COMPONENT_IMPORTANCE_ORDINARY];
    *out = GW_USE(engine, row)->factor;
    GW_STEP(engine, "I_p", GW_RATIO, *out, row->clause, "I_p", {"I_p", *out, GW_RATIO});
    return GW_OK;
}
