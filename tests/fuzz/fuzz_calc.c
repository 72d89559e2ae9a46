/* A line that names a kind of calc, then any bytes as its case, JSON or YAML. Nothing may crash or leak, and what comes
 * back is JSON: a result, or an error that says what is wrong. */
#include "fuzz.h"

#include "galeward/calc.h"

static void check_answer(struct gw_arena *arena, const struct gw_text *answer, bool good)
{
    struct gw_diags diags;
    gw_diags_init(&diags, arena);
    const struct gw_source *source = gw_source_from(arena, "answer", answer->at, answer->length);
    const struct gw_node *root = gw_json_read(arena, source, &diags);
    fuzz_require(root && root->kind == GW_MAPPING, "the answer is a JSON object");
    fuzz_require(good == !gw_node_get(root, "error"), "an answer is a result or an error");
    if (!good) fuzz_require(gw_node_get(gw_node_get(root, "error"), "message") != NULL, "an error has a message");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct gw_arena arena;
    struct gw_diags diags;
    const uint8_t *line = memchr(data, '\n', size);
    if (size > FUZZ_LARGEST || !line) return 0;
    gw_arena_init(&arena, NULL);
    gw_diags_init(&diags, &arena);
    size_t named = (size_t)(line - data), skipped = named + 1;
    const struct gw_calc_kind *kind = gw_calc_find(gw_strndup(&arena, (const char *)data, named));
    const struct gw_source *source = fuzz_source(&arena, data + skipped, size - skipped);
    const bool json = source->length && source->text[0] == '{'; /* as the command tells them apart */
    const struct gw_node *node = kind ? (json ? gw_json_read : gw_yaml_read)(&arena, source, &diags) : NULL;
    if (node) {
        struct gw_text answer;
        gw_text_init(&answer, &arena);
        bool good = gw_calc_case(&answer, &arena, kind, node, gw_tables_standard());
        check_answer(&arena, &answer, good);
    }
    fuzz_print(&diags);
    gw_arena_release(&arena);
    return kind ? 0 : -1; /* -1: not worth keeping */
}
