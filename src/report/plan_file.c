/* Plans as a file that 'check --plan' and the key 'chosen' of a project read. */
#include "galeward/json.h"
#include "report/select.h"

#include <string.h>

/* A word or a few, which YAML reads as that text without quotes. */
static bool is_plain(const char *text)
{
    static const char letters[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    static const char *const words[] = {"null", "true", "false", "yes", "no", "on", "off", "y", "n"};
    const size_t length = strlen(text);
    if (!length || !strchr(letters, *text) || text[length - 1] == ' ') return false;
    for (size_t i = 0; i < length; i++)
        if (!strchr(letters, text[i]) && !strchr("0123456789 _-.", text[i])) return false;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (gw_words_alike(words[i], text)) return false;
    return true;
}

static void add_text(struct gw_text *out, const char *text)
{
    struct gw_json json;
    if (is_plain(text)) {
        gw_text_add(out, text);
        return;
    }
    gw_json_init(&json, out, false);
    gw_json_text(&json, text);
}

static void add_options(struct gw_text *out, const struct gw_selected *place)
{
    gw_text_add(out, ", options: [");
    for (size_t i = 0; i < place->option_names.n; i++) {
        gw_text_add(out, i ? ", " : "");
        add_text(out, place->option_names.items[i]);
    }
    gw_text_add(out, "]");
}

/* Of those that there is a choice of. */
static void add_lites(struct gw_text *out, const struct gw_selected *place)
{
    size_t n = 0;
    for (size_t i = 0; i < place->lites.n; i++) {
        const struct gw_selected_lite *l = &place->lites.items[i];
        if (!l->type->alternatives.n) continue;
        gw_text_add(out, n++ ? ", " : ", lites: {");
        add_text(out, l->type->name);
        gw_text_add(out, ": ");
        if (l->name) add_text(out, l->name);
        else gw_text_add(out, "null");
    }
    gw_text_add(out, n ? "}" : "");
}

static void add_bid(struct gw_text *out, const struct gw_bid *bid)
{
    for (size_t p = 0; p < bid->places.n; p++) {
        const struct gw_selected *place = &bid->places.items[p];
        gw_text_add(out, "  - {candidate: ");
        add_text(out, bid->candidate->name);
        gw_text_add(out, ", wall: ");
        add_text(out, place->place->wall);
        gw_text_addf(out, ", zone: %d, part: %s roof", place->place->zone, place->place->parapet ? "above" : "below");
        add_options(out, place);
        add_lites(out, place);
        gw_text_add(out, "}\n");
    }
}

void gw_write_plan(struct gw_text *out, const struct gw_result *result)
{
    const struct selections *s = result->value;
    size_t n = 0;
    gw_text_add(
        out, "# What 'galeward select' chose; 'galeward check --plan' judges it, as a project does with these rows.\n"
             "galeward: 1\n");
    for (size_t i = 0; i < s->items.n; i++) n += gw_given(s->items.items[i].bid->cost);
    gw_text_add(out, n ? "chosen:\n" : "chosen: []\n");
    for (size_t i = 0; i < s->items.n; i++)
        if (gw_given(s->items.items[i].bid->cost)) add_bid(out, s->items.items[i].bid);
}
