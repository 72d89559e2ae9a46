/* A screw through the plate and what lies under it, into its chase. */
#include "clamp/clamp_internal.h"

static const char STACK[] = "lengths along the screw";

static enum gw_status check(const struct gw_screw_length_case *in, struct gw_engine *engine)
{
    const struct {
        const char *key;
        double value;
    } needed[] = {{"length", in->length}, {"plate", in->plate}, {"chase", in->chase}},
      given[] = {{"stack", in->stack}, {"tip", in->tip}, {"engagement_required", in->engagement_required}};
    enum gw_status status = GW_OK;
    for (int i = 0; i < 3 && !status; i++) status = gw_clamp_positive(needed[i].key, needed[i].value, engine);
    if (!status && !gw_given(in->stack))
        status = gw_refuse(engine, GW_MISSING, "stack", "{} is needed", gw_of_text("stack"));
    for (int i = 0; i < 3 && !status; i++) status = gw_clamp_not_below_zero(given[i].key, given[i].value, engine);
    return status;
}

enum gw_status gw_screw_length(struct gw_screw_length_result *out, const struct gw_screw_length_case *in,
                               struct gw_engine *engine)
{
    *out = (struct gw_screw_length_result){
        .tip_clearance = GW_ABSENT, .engagement = GW_ABSENT, .engagement_enough = GW_UNSAID};
    const enum gw_status status = check(in, engine);
    const double tip = gw_given(in->tip) ? in->tip : 0;
    if (status) return status;
    out->tip_clearance = in->plate + in->stack + in->chase - in->length;
    GW_STEP(engine, "c", GW_THICKNESS, out->tip_clearance, STACK, "t+h+d-L", {"t", in->plate, GW_THICKNESS},
            {"h", in->stack, GW_THICKNESS}, {"d", in->chase, GW_THICKNESS}, {"L", in->length, GW_THICKNESS});
    out->bottomed = !(out->tip_clearance > 0);
    out->engagement = fmax(fmin(in->length - in->plate - in->stack, in->chase) - tip, 0);
    GW_STEP(engine, "e", GW_THICKNESS, out->engagement, STACK, "max(min(L-t-h, d)-a, 0)",
            {"L", in->length, GW_THICKNESS}, {"t", in->plate, GW_THICKNESS}, {"h", in->stack, GW_THICKNESS},
            {"d", in->chase, GW_THICKNESS}, {"a", tip, GW_THICKNESS});
    if (gw_given(in->engagement_required))
        out->engagement_enough = out->engagement >= in->engagement_required ? GW_YES : GW_NO;
    return GW_OK;
}
