/* Layers as a file lists them, as panes and cavities. */
#include "galeward/model.h"

#include "base/tolerance.h"

#include "tables_data.h"

static bool is_glass(const struct gw_layer *l) { return gw_given(l->glass); }

static const char MORE_PANES[] = "more than three panes: ask the glass supplier for a calculation",
                  MORE_PLIES[] = "more than four plies in a pane: ask the glass supplier for a calculation";

static enum gw_status add_glass(struct gw_make_up *m, const struct gw_layer *layer, bool bonded,
                                struct gw_engine *engine)
{
    if (!bonded) {
        if (m->n_panes == GW_PANES) return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", MORE_PANES);
        m->panes[m->n_panes++] = (struct gw_pane){.n_plies = 0};
    }
    struct gw_pane *pane = &m->panes[m->n_panes - 1];
    if (pane->n_plies == GW_PLIES) return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", MORE_PLIES);
    pane->plies[pane->n_plies++] = (struct gw_ply){layer->glass, layer->treatment, layer->frit == GW_YES};
    return GW_OK;
}

static enum gw_status add_bond(struct gw_make_up *m, const struct gw_layer *layer, struct gw_engine *engine)
{
    struct gw_pane *pane = &m->panes[m->n_panes - 1];
    if (!gw_given(layer->thickness))
        return gw_refuse(engine, GW_MISSING, "thickness", "how thick is the interlayer? Ask the glass supplier");
    if (pane->n_plies == GW_PLIES) return gw_refuse(engine, GW_OUTSIDE_METHOD, "layers", MORE_PLIES);
    pane->bonds[pane->n_plies - 1] = (struct gw_bond){layer->thickness, layer->interlayer, layer->shear_modulus};
    return GW_OK;
}

static enum gw_status wrong(struct gw_engine *engine, const char *message)
{
    return gw_refuse(engine, GW_BAD_VALUE, "layers", message);
}

/* A key that its layer cannot have would be lost in silence. */
static enum gw_status check_keys(const struct gw_layer *l, struct gw_engine *engine)
{
    if (is_glass(l) + gw_given(l->cavity) + (l->interlayer != GW_INTERLAYER_UNSET) != 1)
        return wrong(engine, "a layer is one of glass, cavity and interlayer");
    if (l->interlayer == GW_INTERLAYER_UNSET && (gw_given(l->thickness) || gw_given(l->shear_modulus)))
        return wrong(engine, "thickness and shear_modulus belong to an interlayer; glass and cavity hold their own "
                             "thickness");
    if (!is_glass(l) && (l->treatment != GW_TREATMENT_UNSET || l->frit == GW_YES))
        return wrong(engine, "treatment and frit belong to a layer of glass");
    if (l->frit == GW_YES && l->treatment == GW_ANNEALED)
        return wrong(engine, "ceramic frit is fired on: its glass is heat_strengthened or tempered, not annealed");
    return GW_OK;
}

/* Between two glasses stands one cavity or one interlayer, and nothing stands outside of glass. */
static enum gw_status check_place(const struct gw_layer *layers, size_t i, size_t n, struct gw_engine *engine)
{
    const bool glass = is_glass(&layers[i]);
    if (glass && i % 2) return wrong(engine, "two glasses in a row: a cavity or an interlayer belongs between them");
    if (!glass && i == 0) return wrong(engine, "layers begin with the outermost glass");
    if (!glass && i % 2 == 0)
        return wrong(engine, "a cavity or an interlayer stands between two glasses, one of them alone");
    if (!glass && i + 1 == n) return wrong(engine, "layers end with the innermost glass: what is behind this one?");
    return GW_OK;
}

enum gw_status gw_layers_check(size_t *at, const struct gw_layer *layers, size_t n, struct gw_engine *engine)
{
    enum gw_status status = GW_OK;
    for (*at = 0; *at < n; (*at)++) {
        status = check_keys(&layers[*at], engine);
        if (status == GW_OK) status = check_place(layers, *at, n, engine);
        if (status != GW_OK) return status;
    }
    *at = 0;
    return n ? GW_OK : wrong(engine, "no layers: glass at least");
}

double gw_layers_thickness(const struct gw_layer *layers, size_t n)
{
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        const struct gw_layer *l = &layers[i];
        sum += gw_given(l->glass) ? l->glass : gw_given(l->cavity) ? l->cavity : l->thickness;
    }
    return sum;
}

enum gw_status gw_make_up_from(struct gw_make_up *out, const struct gw_layer *layers, size_t n,
                               struct gw_engine *engine)
{
    *out = (struct gw_make_up){.n_panes = 0};
    size_t at;
    enum gw_status status = gw_layers_check(&at, layers, n, engine);
    bool bonded = false;
    for (size_t i = 0; i < n && status == GW_OK; i++) {
        const struct gw_layer *l = &layers[i];
        if (is_glass(l)) {
            status = add_glass(out, l, bonded, engine);
            continue;
        }
        bonded = l->interlayer != GW_INTERLAYER_UNSET;
        if (bonded) status = add_bond(out, l, engine);
        else if (out->n_panes < GW_PANES) out->gaps[out->n_panes - 1] = l->cavity;
    }
    return status;
}

enum gw_status gw_air_from(struct gw_air *out, const struct gw_air_state *state, const char *key,
                           struct gw_engine *engine)
{
    const struct gw_standard_air *air = &engine->tables->standard_air[0];
    *out = (struct gw_air){state->atmospheric_pressure, state->temperature};
    if (gw_given(state->atmospheric_pressure) && gw_given(state->elevation))
        return gw_refuse(engine, GW_BAD_VALUE, key, "{}: atmospheric_pressure and elevation, one of the two is enough",
                         gw_of_text(key));
    if (!gw_given(state->atmospheric_pressure) && !gw_given(state->elevation))
        return gw_refuse(engine, GW_MISSING, key, "{}: at which elevation above sea level, or atmospheric_pressure?",
                         gw_of_text(key));
    if (gw_given(state->atmospheric_pressure)) return GW_OK;
    gw_used_add(&engine->used, &air->row);
    out->pressure = air->pressure_pa * pow(1 - air->lapse * state->elevation, air->exponent);
    /* The lapse is tied to meters. */
    GW_STEP(engine, "p_air", GW_PRESSURE, out->pressure, air->row.source, "p_0*(1-c*H)^n",
            {"p_0", air->pressure_pa, GW_PRESSURE}, {"c", air->lapse, GW_RATIO}, {"H", state->elevation, GW_RATIO},
            {"n", air->exponent, GW_RATIO});
    return GW_OK;
}

static const char *treatment_words(enum gw_treatment treatment)
{
    static const char *const words[] = {"of unknown treatment", "annealed", "heat strengthened", "tempered"};
    return words[treatment];
}

/* "1/4 in (6 mm)" for readers in inches, "6 mm" for others. */
static void say_names(struct gw_text *out, double metric, const char *trade, enum gw_units shown)
{
    const int digits = 3;
    const bool both = shown == GW_US && *trade;
    if (both) gw_text_addf(out, "%s (", trade);
    gw_text_number(out, metric * 1000, digits);
    gw_text_add(out, both ? " mm)" : " mm");
}

/* 1/4 in is called 6 mm: one designation, one name. A designation that inches do not know has none in them. */
static void say_glass(struct gw_text *out, const struct gw_layer *l, enum gw_units shown,
                      const struct gw_tables *tables)
{
    const struct gw_glass_thickness *row = gw_glass_designation(tables, l->glass);
    const char *trade = row && gw_given(row->inch_m) ? row->trade : "";
    say_names(out, row ? row->metric_m : l->glass, trade, shown);
    gw_text_addf(out, " %s%s", treatment_words(l->treatment), l->frit == GW_YES ? " with frit" : "");
}

/* 12 mm and 1/2 in are sold for each other and are not the same: what was written keeps its size, 1/2 in is 12.7 mm. */
static void say_between(struct gw_text *out, double thickness, enum gw_units shown, const struct gw_tables *tables)
{
    const double near = 1e-5; /* m: told by what was written */
    for (size_t i = 0; i < GW_N_LAYER_THICKNESS; i++) {
        const struct gw_layer_thickness *row = &tables->layer_thickness[i];
        if (fabs(thickness - row->metric_m) < near) {
            say_names(out, row->metric_m, row->trade, shown);
            return;
        }
        if (fabs(thickness - row->inch_m) < near && shown == GW_US) {
            gw_text_add(out, row->trade);
            return;
        }
    }
    gw_quantity_print(out, gw_units_standard(), GW_THICKNESS, shown, thickness);
}

void gw_layers_say(struct gw_text *out, const struct gw_layer *layers, size_t n, enum gw_units shown,
                   const struct gw_tables *tables)
{
    for (size_t i = 0; i < n; i++) {
        const struct gw_layer *l = &layers[i];
        if (i) gw_text_add(out, " + ");
        if (is_glass(l)) {
            say_glass(out, l, shown, tables);
            continue;
        }
        const double thickness = gw_given(l->cavity) ? l->cavity : l->thickness;
        if (gw_given(thickness)) say_between(out, thickness, shown, tables);
        if (gw_given(l->cavity)) gw_text_add(out, " cavity");
        else gw_text_addf(out, " %s", gw_choice_name(gw_interlayer_choices, (int)l->interlayer));
    }
}

static bool both_absent(double a, double b) { return !gw_given(a) && !gw_given(b); }

/* 6 mm and 1/4 in are one designation. */
static bool same_glass(const struct gw_tables *tables, double a, double b)
{
    const struct gw_glass_thickness *row = gw_given(a) && gw_given(b) ? gw_glass_designation(tables, a) : NULL;
    return both_absent(a, b) || (row ? row == gw_glass_designation(tables, b) : fabs(a - b) < GW_HAIR_M);
}

static bool is_spelled_so(double a, double b, double apart) { return both_absent(a, b) || fabs(a - b) <= apart; }

bool gw_layers_alike(const struct gw_tables *tables, const struct gw_layer *a, size_t n, const struct gw_layer *b,
                     size_t m)
{
    const struct gw_size_spelling *t = tables->size_spelling;
    bool alike = n == m;
    for (size_t i = 0; alike && i < n; i++)
        alike = same_glass(tables, a[i].glass, b[i].glass) && a[i].treatment == b[i].treatment &&
                is_spelled_so(a[i].cavity, b[i].cavity, t[GW_ROW_SIZE_SPELLING_CAVITY].apart_m) &&
                a[i].interlayer == b[i].interlayer &&
                is_spelled_so(a[i].thickness, b[i].thickness, t[GW_ROW_SIZE_SPELLING_INTERLAYER].apart_m) &&
                (a[i].frit == GW_YES) == (b[i].frit == GW_YES); /* fired on, it takes strength */
    return alike;
}
