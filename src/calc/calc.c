/* One case in, one JSON object out. */
#include "galeward/calc.h"

#include "base/fields.h"

#include "galeward/model.h"

#include <string.h>

struct manner {
    enum gw_units units;
    enum gw_bool trace;
};
static const struct gw_field MANNER[] = {
    PICK(manner, units, gw_units_choices, .help = "of bare numbers"),
    F(manner, trace, GW_T_BOOL, .help = "adds the derivation"),
};
static const struct gw_record MANNER_RECORD = RECORD("case", manner, MANNER);

struct call {
    struct gw_json json;
    struct gw_arena *arena;
    struct gw_diags diags;
    const struct gw_node *id;
    struct manner manner;
    enum gw_units shown; /* in which a refusal is said; none: as the case says */
    struct gw_calc_answer answer;
    struct gw_node common, own; /* the mapping in two: MANNER's keys, and the kind's */
};

static void append(struct gw_arena *arena, struct gw_node ***end, const struct gw_node *child)
{
    struct gw_node *copy = gw_alloc(arena, 1, sizeof *copy);
    *copy = *child;
    copy->next = NULL;
    **end = copy;
    *end = &copy->next;
}

static void split(struct call *call, const struct gw_node *node)
{
    struct gw_node **common = &call->common.first, **own = &call->own.first;
    call->common = call->own = *node;
    if (node->kind != GW_MAPPING) return;
    call->common.first = call->own.first = NULL;
    for (const struct gw_node *child = node->first; child; child = child->next) {
        if (strcmp(child->key, "id") == 0) call->id = child;
        else append(call->arena, gw_record_field(&MANNER_RECORD, child->key) ? &common : &own, child);
    }
}

static bool fail(struct call *call, const char *code, const char *key, const char *message)
{
    call->answer.error_code = code;
    call->answer.error_key = key;
    call->answer.error = gw_strdup(call->arena, message);
    gw_json_key(&call->json, "error");
    gw_json_open(&call->json, '{');
    gw_json_key(&call->json, "code");
    gw_json_text(&call->json, code);
    gw_json_key(&call->json, "key");
    gw_json_text(&call->json, key);
    gw_json_key(&call->json, "message");
    gw_json_text(&call->json, message);
    gw_json_close(&call->json, '}');
    return false;
}

static bool fail_first(struct call *call)
{
    for (size_t i = 0; i < call->diags.n; i++) {
        const struct gw_diag *diag = &call->diags.items[i];
        if (diag->severity == GW_ERROR) return fail(call, diag->code, diag->key, diag->message);
    }
    return fail(call, "bad_value", "", "the case is wrong");
}

static bool load(struct call *call, const struct gw_calc_kind *kind, void *in)
{
    struct gw_load load = {.arena = call->arena, .diags = &call->diags, .units = gw_units_standard()};
    bool good = call->own.kind != GW_MAPPING || !call->common.first ||
                gw_record_load(&load, &MANNER_RECORD, &call->common, "", &call->manner);
    load.preset = call->manner.units;
    if (call->manner.units) call->json.shown = call->manner.units;
    return good && gw_record_load(&load, kind->input, &call->own, "", in);
}

static void take_notes(struct call *call, const struct gw_calc_kind *kind, const void *out)
{
    size_t n = 0;
    const char *const *notes = kind->notes ? kind->notes(out, &n) : NULL;
    struct gw_calc_answer *answer = &call->answer;
    answer->notes.items = gw_alloc(call->arena, n + call->diags.n + 1, sizeof(const char *));
    for (size_t i = 0; i < n; i++) answer->notes.items[answer->notes.n++] = notes[i];
    for (size_t i = 0; i < call->diags.n; i++) answer->notes.items[answer->notes.n++] = call->diags.items[i].message;
}

static void write_notes(struct call *call)
{
    gw_json_key(&call->json, "notes");
    gw_json_open(&call->json, '[');
    for (size_t i = 0; i < call->answer.notes.n; i++) gw_json_text(&call->json, call->answer.notes.items[i]);
    gw_json_close(&call->json, ']');
}

void gw_calc_trace(struct gw_json *json, const struct gw_trace *trace, enum gw_units shown)
{
    enum gw_units before = json->derived;
    json->derived = shown;
    gw_json_open(json, '[');
    for (size_t i = 0; i < trace->n; i++) {
        gw_json_open(json, '{');
        gw_json_record(json, &gw_step_record, &trace->steps[i], false);
        gw_json_close(json, '}');
    }
    gw_json_close(json, ']');
    json->derived = before;
}

static bool run(struct call *call, const struct gw_calc_kind *kind, const struct gw_tables *tables)
{
    struct gw_engine engine;
    struct gw_trace trace;
    void *in = gw_alloc(call->arena, 1, kind->input->size), *out = gw_alloc(call->arena, 1, kind->output->size);
    if (!load(call, kind, in)) return fail_first(call);
    bool traced = call->manner.trace == GW_YES;
    gw_trace_init(&trace, call->arena);
    gw_engine_init(&engine, tables, traced ? &trace : NULL);
    if (kind->workspace) engine.workspace = gw_alloc_bare(call->arena, kind->workspace);
    enum gw_status status = kind->run(out, in, &engine);
    if (status != GW_OK)
        return fail(call, gw_status_code(status), engine.fault.key,
                    gw_fault_text(call->arena, &engine.fault, call->shown ? call->shown : call->json.shown));
    call->answer.in = in;
    call->answer.out = out;
    call->answer.units = call->manner.units;
    take_notes(call, kind, out);
    gw_json_record(&call->json, kind->output, out, false);
    write_notes(call);
    if (!traced) return true;
    call->answer.trace = trace;
    gw_json_key(&call->json, "trace");
    gw_trace_settle(&trace, NULL, 0);
    gw_calc_trace(&call->json, &trace, call->manner.units);
    return true;
}

static bool run_whole(struct call *call, struct gw_text *out, const struct gw_calc_kind *kind,
                      const struct gw_node *node, const struct gw_tables *tables)
{
    call->manner = (struct manner){GW_UNITS_NONE, GW_UNSAID};
    gw_json_init(&call->json, out, false);
    gw_diags_init(&call->diags, call->arena);
    split(call, node);
    gw_json_open(&call->json, '{');
    if (call->id) {
        gw_json_key(&call->json, "id");
        gw_json_node(&call->json, call->id);
    }
    bool good = run(call, kind, tables);
    gw_json_close(&call->json, '}');
    return good;
}

bool gw_calc_case(struct gw_text *out, struct gw_arena *arena, const struct gw_calc_kind *kind,
                  const struct gw_node *node, const struct gw_tables *tables)
{
    struct call call = {.arena = arena};
    return run_whole(&call, out, kind, node, tables);
}

/* A plain id as it was written, any other as JSON. */
static const char *id_text(struct gw_arena *arena, const struct gw_node *id)
{
    struct gw_text text;
    struct gw_json json;
    if (id->kind == GW_SCALAR) return id->text;
    gw_text_init(&text, arena);
    gw_json_init(&json, &text, false);
    gw_json_node(&json, id);
    return text.at;
}

bool gw_calc_run(struct gw_calc_answer *answer, struct gw_arena *arena, const struct gw_calc_kind *kind,
                 const struct gw_node *node, const struct gw_tables *tables, enum gw_units shown)
{
    struct call call = {.arena = arena, .shown = shown};
    struct gw_text unread;
    gw_text_init(&unread, arena);
    bool good = run_whole(&call, &unread, kind, node, tables);
    *answer = call.answer;
    if (call.id) answer->id = id_text(arena, call.id);
    return good;
}
