/* What differs between a written result and the same computed anew. */
#include "report/against.h"

#include "base/fields.h"
#include "report/results.h"

#include <math.h>
#include <string.h>

enum { MOST_KEYS = 6 };

/* A list of a result: `keys` tell which entry it is, `where` is its place, `lead` stands for it where it is new or
 * gone.
 */
struct listing {
    const char *list, *what, *where, *lead;
    const char *keys[MOST_KEYS]; /* without the first, where that is a direction: another one may decide now */
    bool judged;                 /* in what 'check' writes alone */
};

static const struct listing LISTINGS[] = {
    {"summaries", "summary", "candidate", "verdict", {"candidate"}, true},
    {"verdicts", "verdict", "element", "verdict", {"direction", "candidate", "check", "name", "element"}, true},
    {"demands", "demand", "element", "status", {"check", "name", "element"}, false},
    {"reactions", "reaction", "element", "count", {"element"}, false},
    {"members", "member", "element", "count", {"element"}, false},
    {"mock_up", "mock-up", "test", "method", {"test", "again", "method"}, false},
    {"differences", "difference", "element", "given_pa", {"element", "direction"}, false},
    {"reaches", "reach", "zone", "mullion_span_m", {"candidate", "zone"}, true},
};
static const struct listing INPUTS = {"inputs", "input", "file", "sha256", {NULL}, false};
static const struct listing ELEMENTS = {"elements", "element", "id", "count", {NULL}, false};

/* A file may be named from elsewhere: the same bytes are the same file. */
static const char *const BY_HASH[] = {"file", "sha256", NULL}, *const BY_BYTES[] = {"sha256", NULL},
                         *const BY_FILE[] = {"file", NULL}, *const BY_FILE_NAME[] = {GW_FILE_NAME, NULL};
static const char *const *const INPUT_PASSES[] = {BY_HASH, BY_BYTES, BY_FILE, BY_FILE_NAME};
/* An element by its name and place, then by its place, as one before it may be new, at last by its name. */
#define PLACE_KEYS                                                                                                     \
    "wall", "kind", "mark", "columns", "component", "lite", "bottom_m", "top_m", "elevation_m", "width_m", "height_m", \
        "zone", "parapet", NULL
static const char *const BY_BOTH[] = {"id", PLACE_KEYS}, *const BY_PLACE[] = {PLACE_KEYS},
                         *const BY_ID[] = {"id", NULL};
static const char *const *const ELEMENT_PASSES[] = {BY_BOTH, BY_PLACE, BY_ID};

struct pairing {
    const struct listing *listing;
    struct columns columns;
    struct rows now, was;
};

/* Changes -----------------------------------------------------------------------------------------------------------
 */

static const char *kept(const struct comparison *c, const char *text)
{
    return text ? gw_strdup(c->arena, text) : NULL;
}

static const char *place_words(const struct comparison *c, const struct pairing *p, const struct row *row)
{
    const struct gw_either where = gw_row_value(c, &p->columns, row, p->listing->where);
    if (gw_given(where.number)) return gw_format(c->arena, "%s %d", p->listing->where, (int)where.number);
    return where.words ? kept(c, where.words) : "project";
}

/* Where the element of the change stands; one that is gone says it itself. */
static void place_change(const struct comparison *c, const struct pairing *p, const struct row *row,
                         struct gw_change *change)
{
    const struct named *found = gw_names_find(&c->elements, change->where);
    const struct gw_element *e = found ? &c->takeoff->elements.items[found->index] : NULL;
    const double zone = gw_row_value(c, &p->columns, row, "zone").number;
    change->wall = e ? e->wall : kept(c, gw_row_value(c, &p->columns, row, "wall").words);
    change->kind = e ? gw_kind_names[e->kind] : kept(c, gw_row_value(c, &p->columns, row, "kind").words);
    change->mark = e ? e->mark : kept(c, gw_row_value(c, &p->columns, row, "mark").words);
    change->zone = e ? e->zone : gw_given(zone) ? (int)zone : 0;
}

static struct gw_change change_of(const struct comparison *c, const struct pairing *p, const struct row *row)
{
    struct gw_change change = {.what = p->listing->what, .where = place_words(c, p, row)};
    const char *direction = gw_row_value(c, &p->columns, row, "direction").words;
    change.candidate = kept(c, gw_row_value(c, &p->columns, row, "candidate").words);
    change.check = kept(c, gw_row_value(c, &p->columns, row, "check").words);
    change.direction = direction && *direction ? kept(c, direction) : NULL;
    change.was.number = change.is.number = change.was_use = change.use = GW_ABSENT;
    place_change(c, p, row, &change);
    return change;
}

static void add_change(struct comparison *c, struct gw_change change)
{
    struct gw_against *out = c->out;
    change.was.words = kept(c, change.was.words);
    out->changes.items =
        gw_grow(c->arena, out->changes.items, out->changes.n, &out->capacity, sizeof *out->changes.items);
    out->changes.items[out->changes.n++] = change;
}

static bool same_value(struct gw_either a, struct gw_either b)
{
    if (!a.words != !b.words || gw_given(a.number) != gw_given(b.number)) return false;
    if (a.words && strcmp(a.words, b.words) != 0) return false;
    if (!gw_given(a.number)) return true;
    return fabs(a.number - b.number) <= GW_AGAINST_TOLERANCE * fmax(fabs(a.number), fabs(b.number));
}

/* Whether the pair of numbers has been told of this entry: the first of `terms` stand beside them too. */
static bool told_before(const struct gw_against *out, size_t from, const struct gw_change *change)
{
    if (!gw_given(change->was.number) || !gw_given(change->is.number)) return false;
    for (size_t i = from; i < out->changes.n; i++) {
        const struct gw_change *before = &out->changes.items[i];
        if (same_value(before->was, change->was) && same_value(before->is, change->is)) return true;
    }
    return false;
}

/* Entries -----------------------------------------------------------------------------------------------------------
 */

/* One entry on both sides. */
struct entry {
    struct comparison *c;
    const struct pairing *pairing;
    const struct row *now, *was;
    struct gw_change base; /* what every change of it says */
    bool begun;            /* base is made */
    size_t from;           /* its first change */
};

/* The unit that an entry names is that of its values that have none of their own; but not of its use. */
static enum gw_dim dim_of(const struct columns *columns, const struct column *column, const void *item)
{
    if (column->field->dim || column->field->type != GW_T_NUMBER || strcmp(column->key, "utilisation") == 0)
        return column->field->dim;
    for (size_t i = 0; i < columns->n; i++) {
        const struct column *unit = &columns->items[i];
        if (unit->field->type != GW_T_UNIT) continue;
        const void *base = unit->flat ? gw_field_struct(unit->flat, gw_field_at(unit->flat, item)) : item;
        const enum gw_dim *dim = gw_field_at(unit->field, base);
        return dim ? *dim : GW_RATIO;
    }
    return GW_RATIO;
}

/* `within`: the key of a list in the entry and which of its items, or "". */
static void compare_value(struct entry *e, const struct columns *columns, const struct column *column,
                          const struct row *now, const struct row *was, const char *within)
{
    struct comparison *c = e->c;
    if (!gw_json_get(was->was, column->key)) return; /* of another version */
    const struct gw_either then = gw_row_value(c, columns, was, column->key),
                           value = gw_row_value(c, columns, now, column->key);
    if (same_value(then, value)) {
        c->out->unchanged++;
        return;
    }
    if (!e->begun) e->base = change_of(c, e->pairing, e->now);
    e->begun = true;
    struct gw_change change = e->base;
    change.key = *within ? gw_format(c->arena, "%s%s", within, column->key) : column->key;
    change.was = then;
    change.is = value;
    change.dim = dim_of(columns, column, now->now);
    if (*within) change.direction = kept(c, gw_row_value(c, columns, now, "direction").words);
    if (!told_before(c->out, e->from, &change)) add_change(c, change);
}

static bool is_sentence(const struct column *column) { return column->field->type == GW_T_MESSAGE; }

/* A list in an entry, item by item. */
static void compare_parts(struct entry *e, const struct column *list, const void *holder)
{
    struct comparison *c = e->c;
    const struct gw_json_value *then = gw_json_get(e->was->was, list->key);
    const struct gw_many *many = gw_field_at(list->field, holder);
    const struct columns columns = gw_columns_of(c->arena, list->field->record);
    for (size_t i = 0; many && i < many->n && i < gw_json_count(then); i++) {
        const struct row now = {.now = gw_field_item(list->field, many, i)}, was = {.was = gw_json_item(then, i)};
        const char *within = gw_format(c->arena, "%s.%zu.", list->key, i + 1);
        for (size_t k = 0; k < columns.n; k++) compare_value(e, &columns, &columns.items[k], &now, &was, within);
    }
}

static void add_use(struct entry *e)
{
    const struct columns *columns = &e->pairing->columns;
    for (size_t i = e->from; i < e->c->out->changes.n; i++) {
        e->c->out->changes.items[i].was_use = gw_row_value(e->c, columns, e->was, "utilisation").number;
        e->c->out->changes.items[i].use = gw_row_value(e->c, columns, e->now, "utilisation").number;
    }
}

/* An element's name may be another one; that of a file too. */
static void compare_entry(struct comparison *c, const struct pairing *p, const struct row *now, const struct row *was)
{
    struct entry e = {.c = c, .pairing = p, .now = now, .was = was, .from = c->out->changes.n};
    for (size_t i = 0; i < p->columns.n; i++) {
        const struct column *column = &p->columns.items[i];
        const struct gw_field *flat = column->flat;
        const void *holder = flat ? gw_field_struct(flat, gw_field_at(flat, now->now)) : now->now;
        if (is_sentence(column) || strcmp(column->key, p->listing->where) == 0) continue;
        if (!(column->field->flags & GW_MANY)) compare_value(&e, &p->columns, column, now, was, "");
        else if (column->field->type == GW_T_RECORD) compare_parts(&e, column, holder);
    }
    add_use(&e);
}

static void add_lone(struct comparison *c, const struct pairing *p, const struct row *row)
{
    struct gw_change change = change_of(c, p, row);
    const struct gw_either value = gw_row_value(c, &p->columns, row, p->listing->lead);
    change.key = p->listing->lead;
    change.is_new = row->now != NULL;
    change.is_gone = !change.is_new;
    *(change.is_new ? &change.is : &change.was) = value;
    *(change.is_new ? &change.use : &change.was_use) = gw_row_value(c, &p->columns, row, "utilisation").number;
    for (size_t i = 0; i < p->columns.n; i++)
        if (row->now && strcmp(p->columns.items[i].key, change.key) == 0)
            change.dim = dim_of(&p->columns, &p->columns.items[i], row->now);
    add_change(c, change);
}

/* Lists -------------------------------------------------------------------------------------------------------------
 */

static const struct gw_record *record_of(const struct comparison *c)
{
    return c->judged ? &gw_results_record : &gw_demand_results_record;
}

static const struct gw_field *find_list(const struct comparison *c, const char *key)
{
    const struct gw_field *list = gw_record_field(record_of(c), key);
    return list ? list : gw_record_field(&gw_remarks_record, key);
}

static struct pairing pair(struct comparison *c, const struct listing *listing, const char *const *const *passes,
                           size_t n)
{
    const struct gw_field *list = find_list(c, listing->list);
    struct pairing p = {.listing = listing, .columns = gw_columns_of(c->arena, list->record)};
    p.now = gw_rows_now(c, list, c->out->results);
    p.was = gw_rows_was(c, gw_json_get(c->root, listing->list));
    for (size_t i = 0; i < n; i++) gw_rows_pair(c, &p.columns, &p.now, &p.was, passes[i]);
    return p;
}

static void compare_rows(struct comparison *c, const struct pairing *p)
{
    for (size_t i = 0; i < p->now.n; i++)
        if (p->now.partner[i]) compare_entry(c, p, &p->now.items[i], &p->was.items[p->now.partner[i] - 1]);
        else add_lone(c, p, &p->now.items[i]);
    for (size_t i = 0; i < p->was.n; i++)
        if (!p->was.partner[i]) add_lone(c, p, &p->was.items[i]);
}

/* What the elements were called: the entries that follow speak of them by their names. */
static void take_names(struct comparison *c, const struct pairing *p)
{
    c->renamed.items = gw_alloc(c->arena, p->was.n + 1, sizeof *c->renamed.items);
    for (size_t i = 0; i < p->was.n; i++) {
        const char *id = gw_json_words(gw_json_get(p->was.items[i].was, "id"));
        if (id && p->was.partner[i]) c->renamed.items[c->renamed.n++] = (struct named){id, p->was.partner[i] - 1};
    }
    gw_names_sort(&c->renamed);
}

static void index_elements(struct comparison *c)
{
    const size_t n = c->takeoff->elements.n;
    c->elements = (struct names){gw_alloc(c->arena, n + 1, sizeof *c->elements.items), n};
    for (size_t i = 0; i < n; i++) c->elements.items[i] = (struct named){c->takeoff->elements.items[i].id, i};
    gw_names_sort(&c->elements);
}

static void compare(struct comparison *c)
{
    index_elements(c);
    const struct pairing inputs = pair(c, &INPUTS, INPUT_PASSES, COUNT(INPUT_PASSES));
    const struct pairing elements = pair(c, &ELEMENTS, ELEMENT_PASSES, COUNT(ELEMENT_PASSES));
    compare_rows(c, &inputs);
    take_names(c, &elements);
    compare_rows(c, &elements);
    for (size_t i = 0; i < COUNT(LISTINGS); i++) {
        const char *const *const passes[] = {LISTINGS[i].keys, LISTINGS[i].keys + 1};
        const size_t n = strcmp(LISTINGS[i].keys[0], "direction") == 0 ? 2 : 1;
        if (!c->judged && LISTINGS[i].judged) continue;
        if (!gw_json_is_list(gw_json_get(c->root, LISTINGS[i].list))) continue; /* of another version */
        const struct pairing p = pair(c, &LISTINGS[i], passes, n);
        compare_rows(c, &p);
    }
}

/* Whether it is one of ours -----------------------------------------------------------------------------------------
 */

static bool refuse(struct comparison *c, const char *code, const char *message)
{
    gw_diag_add(c->diags, GW_ERROR, code, NULL, c->source, 0, 0, "%s", message);
    return false;
}

static bool is_ours(struct comparison *c)
{
    const double format = gw_json_double(gw_json_get(c->root, "galeward"));
    const char *version = gw_json_words(gw_json_get(c->root, "version"));
    const bool judged = gw_json_is_list(gw_json_get(c->root, "verdicts"));
    const char *command = c->judged ? "check" : "demand";
    if (!gw_given(format) || !version)
        return refuse(c, "no_result", "no result of this program: it does not begin with 'galeward: 1' and a version");
    if (format > 1)
        return refuse(c, "newer", "a result of a newer version of this program: it says 'galeward' above 1");
    if (format != 1) return refuse(c, "no_result", "no result of this program: 'galeward' is not 1");
    if (!gw_json_is_list(gw_json_get(c->root, "elements")) || !gw_json_is_list(gw_json_get(c->root, "inputs")))
        return refuse(c, "other_command", gw_format(c->arena, "no result of '%s': it lists no elements", command));
    if (judged != c->judged)
        return refuse(c, "other_command",
                      gw_format(c->arena, "a result of '%s', not of '%s'", judged ? "check" : "demand", command));
    c->out->version = kept(c, version);
    c->out->project = kept(c, gw_json_words(gw_json_get(c->root, "project")));
    return true;
}

static void use_root(void *context, const struct gw_json_value *root)
{
    struct comparison *c = context;
    c->root = root;
    c->good = is_ours(c);
    if (c->good) compare(c);
}

bool gw_against(struct gw_against *out, struct gw_arena *arena, const struct gw_results *results, bool judged,
                const struct gw_source *source, struct gw_diags *diags)
{
    /* What is said of it is said without its lines: it may be anybody's. */
    const struct gw_source *unshown = gw_source_from(arena, source->name, "", 0);
    struct comparison c = {.arena = arena,
                           .out = out,
                           .takeoff = results->answer->takeoff,
                           .judged = judged,
                           .diags = diags,
                           .source = unshown};
    *out = (struct gw_against){.results = results, .file = source->name};
    const size_t before = diags->n;
    const bool read = gw_json_use(arena, source, diags, use_root, &c);
    for (size_t i = before; i < diags->n; i++) diags->items[i].source = unshown;
    return read && c.good;
}
