/* What is said of a value that its field does not take. */
#include "base/record_say.h"

#include "base/spelling.h"

#include <string.h>

void gw_load_say(struct gw_load *load, const char *code, const struct gw_field *field, const struct gw_node *node,
                 const char *message)
{
    gw_diag_node(load->diags, GW_ERROR, code, field->key, node, "%s", message);
}

const char *gw_kind_word(const struct gw_node *node)
{
    return node->kind == GW_MAPPING ? "a mapping" : node->kind == GW_SEQUENCE ? "a list" : "a single value";
}

/* A short form goes by the key that the user wrote. */
const char *gw_load_label(const struct gw_field *field, const struct gw_node *node)
{
    return node->key ? node->key : field->key;
}

const char *gw_article(const char *noun) { return strchr("aeiou", noun[0]) ? "an" : "a"; }

bool gw_want_scalar(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, const char *what)
{
    if (node->kind == GW_SCALAR && node->length) return true;
    gw_load_say(load, "wrong_type", field, node,
                gw_format(load->arena, "'%s' wants %s, not %s", gw_load_label(field, node), what,
                          node->kind == GW_SCALAR ? "nothing" : gw_kind_word(node)));
    return false;
}

/* 'mPa' where there is 'MPa', or NULL. */
static const char *mega_unit(struct gw_load *load, const struct gw_field *field, const char *written)
{
    if (written[0] != 'm') return NULL;
    const char *mega = gw_format(load->arena, "M%s", written + 1);
    const struct gw_unit *unit = gw_unit_alike(load->units, gw_unit_dim(field->dim), mega, strlen(mega));
    return unit && unit->name[0] == 'M' ? unit->name : NULL;
}

static const char *not_a_unit(struct gw_load *load, const struct gw_field *field, const char *written)
{
    const char *mega = mega_unit(load, field, written);
    if (mega)
        return gw_format(
            load->arena,
            "'%s' is not '%s': a small m is a thousandth, a capital M a million; write %s if that is meant", written,
            mega, mega);
    /* No unit is suggested: the nearest word may be a unit of another size. */
    return gw_format(load->arena, "'%s' is not a unit of %s; write for example %s", written,
                     gw_dim_info(field->dim)->name, gw_dim_example(field->dim, load->preset));
}

/* What a number broken off in the middle wants to be told. */
static const char *broken_number(const char *rest)
{
    if (rest[0] == ',') return "a comma in the number";
    if (strchr(rest, '\t')) return "a tab in the value";
    if (rest[0] == '.' || rest[0] == '/') return "no such number";
    return NULL;
}

static const char *unit_message(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                                const char *rest)
{
    const char *broken = *rest ? broken_number(rest) : NULL;
    const double share = 1.01; /* what may be above 1 is counted or read off, and no share */
    if (!broken && field->dim == GW_RATIO && field->greatest > share)
        return gw_format(load->arena, "'%s' is no unit of a number that has none; write the number alone: %.*s", rest,
                         (int)gw_read_number(node->text, node->length, &(double){0}), node->text);
    if (!broken) return not_a_unit(load, field, rest);
    return gw_format(load->arena, "'%s' is not understood, %s; write for example %s", node->text, broken,
                     gw_dim_example(field->dim, load->preset));
}

/* To so many digits, but with no exponent for a large number. */
static double rounded(double value, int digits)
{
    if (!(fabs(value) > 0)) return 0;
    double unit = pow(10, floor(log10(fabs(value))) - digits + 1);
    return round(value / unit) * unit;
}

const char *gw_show_limit(struct gw_load *load, const struct gw_field *field, double si, int digits)
{
    struct gw_text text;
    gw_text_init(&text, load->arena);
    enum gw_units shown = load->preset ? load->preset : GW_US;
    gw_text_number(&text, rounded(gw_quantity_shown(load->units, field->dim, shown, si), digits), 12);
    const char *unit = gw_dim_info(field->dim)->shown[shown];
    if (*unit) gw_text_addf(&text, " %s", unit);
    return text.at;
}

const char *gw_range_hint(struct gw_load *load, const struct gw_field *field, const struct gw_node *node)
{
    double number;
    if (*gw_serial_hint(load->arena, node->text)) return gw_serial_hint(load->arena, node->text);
    if (gw_read_number(node->text, node->length, &number) != node->length) return "";
    const double percent = number / 100, metric = number / 1000;
    const bool share = field->type == GW_T_NUMBER && field->dim == GW_RATIO && field->greatest > 0.99;
    if (share && field->greatest < 1.01 && number > 1 && percent <= 1) {
        struct gw_text text;
        gw_text_init(&text, load->arena);
        gw_text_number(&text, percent, 6);
        return gw_format(load->arena, "; %s per cent is %s", node->text, text.at);
    }
    const bool doubted = field->likely_least < field->likely_most;
    const double least = doubted ? field->likely_least : field->least,
                 most = doubted ? field->likely_most : field->greatest;
    if (field->dim != GW_THICKNESS || load->preset != GW_US || metric < least || metric > most) return "";
    return gw_format(load->arena, "; did you mean %s mm?", node->text);
}

static const char *quantity_message(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                                    enum gw_quantity_fault fault, const char *rest)
{
    const struct gw_dim_info *dim = gw_dim_info(field->dim);
    const char *a = gw_article(dim->name), *key = gw_load_label(field, node);
    switch (fault) {
    case GW_QUANTITY_NOT_A_NUMBER:
        if (field->dim == GW_RATIO && field->greatest > field->least)
            return gw_format(load->arena, "'%s' wants a plain number between %s and %s, not '%s'", key,
                             gw_show_limit(load, field, field->least, 6),
                             gw_show_limit(load, field, field->greatest, 6), node->text);
        return gw_format(load->arena, "'%s' wants %s %s such as %s, not '%s'%s%s", key, a, dim->name,
                         gw_dim_example(field->dim, load->preset), node->text, field->keyword ? ", or the word " : "",
                         field->keyword ? field->keyword : "");
    case GW_QUANTITY_NO_UNIT:
        return gw_format(load->arena, "'%s' has no unit: write one (%s)%s%s", node->text,
                         field->example ? field->example : gw_dim_example(field->dim, load->preset),
                         !dim->bare[GW_US] ? ""
                         : load->alone     ? " in its own cell"
                         : strcmp(node->source->name, "command line") == 0
                             ? ", or units=us or units=si besides"
                             : ", or 'units: us' or 'units: si' at the top",
                         gw_serial_hint(load->arena, node->text));
    case GW_QUANTITY_WRONG_UNIT:
        return gw_format(load->arena, "'%s' wants %s %s such as %s; '%s' measures something else", key, a, dim->name,
                         gw_dim_example(field->dim, load->preset), rest);
    case GW_QUANTITY_UNKNOWN_UNIT:
        return unit_message(load, field, node, rest);
    case GW_QUANTITY_TRAILING:
        return gw_format(load->arena, "'%s' after the value is not understood; write for example %s", rest,
                         gw_dim_example(field->dim, load->preset));
    case GW_QUANTITY_RANGE:
        return gw_format(load->arena, "'%s' is too large a number", node->text);
    case GW_QUANTITY_OK:
        break;
    }
    return "";
}

void gw_say_quantity_fault(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                           enum gw_quantity_fault fault, size_t at)
{
    static const char *const codes[] = {
        [GW_QUANTITY_NOT_A_NUMBER] = "wrong_type",    [GW_QUANTITY_NO_UNIT] = "no_unit",
        [GW_QUANTITY_WRONG_UNIT] = "wrong_dimension", [GW_QUANTITY_UNKNOWN_UNIT] = "unknown_unit",
        [GW_QUANTITY_TRAILING] = "bad_value",         [GW_QUANTITY_RANGE] = "bad_value"};
    struct gw_node place = *node;
    const bool share = node->length && node->text[node->length - 1] == '%';
    const char *hint = (fault == GW_QUANTITY_WRONG_UNIT && !share) || fault == GW_QUANTITY_RANGE
                           ? ""
                           : gw_value_hint(load->arena, field->dim, load->preset, node->text);
    if (*hint) {
        gw_load_say(load, codes[fault], field, node,
                    gw_format(load->arena, "'%s' is not understood as %s %s: %s", node->text,
                              gw_article(gw_dim_info(field->dim)->name), gw_dim_info(field->dim)->name, hint));
        return;
    }
    bool at_rest =
        fault == GW_QUANTITY_WRONG_UNIT || fault == GW_QUANTITY_UNKNOWN_UNIT || fault == GW_QUANTITY_TRAILING;
    if (at_rest && !node->quoted) place.column += (unsigned)gw_text_width(gw_strndup(load->arena, node->text, at));
    gw_load_say(load, codes[fault], field, &place, quantity_message(load, field, node, fault, node->text + at));
}

const char *gw_whole_hint(struct gw_load *load, const char *text)
{
    if (strchr(text, ',')) return ": write it without the comma";
    const char *hint = gw_value_hint(load->arena, GW_RATIO, load->preset, text);
    size_t digits = strspn(text, "0123456789");
    if (*hint) return gw_format(load->arena, ": %s", hint);
    bool hexadecimal = text[0] == '0' && strchr("xX", text[1]);
    return digits && text[digits] && !hexadecimal && !strchr(".eE/", text[digits])
               ? gw_format(load->arena, ": write %.*s alone", (int)digits, text)
               : "";
}

static bool has_choice(const struct gw_field *field, const char *name)
{
    for (const struct gw_choice *c = field->choices; c->name; c++)
        if (strcmp(c->name, name) == 0) return true;
    return false;
}

void gw_say_no_choice(struct gw_load *load, const struct gw_field *field, const struct gw_node *node,
                      const struct gw_also *also)
{
    struct gw_text words;
    struct gw_nearest nearest;
    const bool no = node->kind == GW_SCALAR && (gw_words_alike(node->text, "no") || gw_words_alike(node->text, "off"));
    gw_text_init(&words, load->arena);
    gw_nearest_start(&nearest, node->kind != GW_SCALAR ? "" : no && has_choice(field, "none") ? "none" : node->text);
    for (const struct gw_choice *c = field->choices; c->name; c++) {
        gw_text_addf(&words, "%s%s", words.length ? " | " : "", c->name);
        gw_nearest_offer(&nearest, c->name);
    }
    bool several = field->choices[1].name;
    if (!gw_want_scalar(load, field, node, gw_format(load->arena, "%s%s", several ? "one of " : "", words.at))) return;
    const char *question = gw_nearest_question(load->arena, &nearest), *key = gw_load_label(field, node);
    if (also && also->says && (also->word || !*question)) question = gw_format(load->arena, "; %s", also->says);
    gw_load_say(load, "bad_value", field, node,
                several
                    ? gw_format(load->arena, "'%s' is not a value of '%s': %s%s", node->text, key, words.at, question)
                    : gw_format(load->arena, "'%s' wants %s, not '%s'%s", key, words.at, node->text, question));
}

/* "width_ft: 5" of a field 'width': its unit goes with the value. */
static const char *unit_in_key(struct gw_load *load, const struct gw_record *record, const struct gw_node *child)
{
    const char *unit = strrchr(child->key, '_');
    if (!unit || child->kind != GW_SCALAR) return NULL;
    const char *key = gw_strndup(load->arena, child->key, (size_t)(unit - child->key));
    const struct gw_field *field = gw_record_field(record, key);
    if (!field || field->type != GW_T_NUMBER ||
        !gw_unit_alike(load->units, gw_unit_dim(field->dim), unit + 1, strlen(unit + 1)))
        return NULL;
    return gw_format(load->arena, "a unit goes with the value: write %s: %s %s", key, child->text, unit + 1);
}

/* Keys that a slip of YAML made of a value: "width:5 ft", "{width: 1,200 ft}". */
static const char *value_in_key(struct gw_load *load, const struct gw_node *child)
{
    const char *colon = strchr(child->key, ':');
    if (child->kind != GW_SCALAR || child->length) return NULL;
    if (colon && colon[1])
        return gw_format(load->arena, "put a space after the ':': %.*s: %s", (int)(colon - child->key), child->key,
                         colon + 1);
    if (child->key[0] >= '0' && child->key[0] <= '9')
        return "a comma parts values here: write the number before it without commas, with a point for decimals";
    return NULL;
}

/* A key of other people's files. */
static const char *written_instead(const struct gw_record *record, const char *key)
{
    for (const struct gw_also *o = record->others; o && o->word; o++)
        if (gw_words_alike(o->word, key)) return o->says;
    return NULL;
}

const struct gw_field *gw_say_unknown_key(struct gw_load *load, const struct gw_record *record,
                                          const struct gw_node *child)
{
    const char *why = value_in_key(load, child);
    if (!why) why = written_instead(record, child->key);
    const char *nearest = why ? NULL : gw_record_nearest(record, child->key);
    if (!why) why = unit_in_key(load, record, child);
    for (const struct gw_also *other = record->elsewhere; !why && other && other->word; other++) {
        if (!gw_words_alike(other->word, child->key)) continue;
        why = gw_format(load->arena, "it stands at %s", other->says);
        nearest = NULL;
    }
    if (!why && nearest) why = gw_format(load->arena, "did you mean '%s'?", nearest);
    gw_diag_key(load->diags, GW_ERROR, "unknown_key", child, "'%s' is not a key of %s%s%s", child->key, record->name,
                why ? "; " : "", why ? why : "");
    return nearest ? gw_record_field(record, nearest) : NULL;
}

bool gw_say_split_number(struct gw_load *load, const struct gw_field *field, const struct gw_node *item)
{
    const struct gw_node *next = item->next;
    if (field->type != GW_T_NUMBER || !next || item->kind != GW_SCALAR || next->kind != GW_SCALAR) return false;
    if (item->quoted || next->quoted || next->line != item->line) return false;
    const size_t digits = strspn(item->text, "0123456789"), more = strspn(next->text, "0123456789");
    const bool touching = next->column == item->column + item->length + 1;
    if (!touching || !digits || digits != item->length || !more || more == next->length) return false;
    gw_load_say(load, "bad_value", field, item,
                gw_format(load->arena,
                          "'%s,%s' in a list is two values: write %s.%s for one, or a space after the comma and a unit "
                          "to each for two",
                          item->text, next->text, item->text, next->text));
    return true;
}
