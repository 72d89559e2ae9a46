/* Fields that describe a struct where it lies, as JSON, as CSV, and as a table that people read. */
#include "support.h"

#include "base/fields.h"
#include "galeward/report.h"
#include "report/view.h"

struct owner {
    const char *name;
    struct gw_strength pressure;
};
struct part {
    const struct owner *owner;
    long count;
    bool open;
    enum gw_kind kind;
    enum gw_dim dim;
    double width, depth;
    struct gw_message message;
    struct gw_used used;
};
struct whole {
    struct part first;
    GW_LIST(const struct part *) parts;
    GW_LIST(const char *) words;
    struct gw_described own;
};

static const char *kind_word(int kind) { return kind == GW_SCREW ? NULL : gw_kind_names[kind]; }

static bool both(struct gw_text *out, const void *thing, enum gw_units shown)
{
    const struct part *p = thing;
    (void)shown;
    if (p->owner) gw_text_addf(out, "%s x %ld", p->owner->name, p->count);
    return p->owner != NULL;
}

static const struct gw_field OWNER[] = {
    F(owner, name, GW_T_TEXT, .help = ""),
    FIELD(owner, "pressure", pressure.pa, GW_T_NUMBER, .dim = GW_PRESSURE, .help = ""),
};
static const struct gw_record OWNER_RECORD = RECORD("owner", owner, OWNER);

static const struct gw_field PART[] = {
    F(part, owner, GW_T_RECORD, .record = &OWNER_RECORD, .flags = GW_FLAT),
    FIELD(owner, "far", name, GW_T_TEXT, .hops = 1, .via = {offsetof(struct part, owner)}, .help = ""),
    F(part, count, GW_T_COUNT, .help = ""),
    F(part, open, GW_T_YES_NO, .help = ""),
    F(part, kind, GW_T_WORD, .word = kind_word, .help = ""),
    F(part, dim, GW_T_UNIT, .help = ""),
    NUM(part, width, GW_LENGTH, .help = ""),
    NUM(part, depth, GW_LENGTH, .help = ""),
    F(part, message, GW_T_MESSAGE, .help = ""),
    FIELD(part, "basis", used, GW_T_BASIS, .help = ""),
    {.key = "both", .type = GW_T_SAID, .say = both, .flags = GW_TABLES_ONLY},
};
static const struct gw_record PART_RECORD = RECORD("part", part, PART);

static const struct gw_field WHOLE[] = {
    F(whole, first, GW_T_RECORD, .record = &PART_RECORD, .flags = GW_INSIDE, .help = ""),
    F(whole, parts, GW_T_RECORD, .record = &PART_RECORD, .flags = GW_MANY | GW_POINTERS, .help = ""),
    F(whole, words, GW_T_TEXT, .flags = GW_MANY, .help = ""),
    F(whole, own, GW_T_DESCRIBED, .help = ""),
};
static const struct gw_record WHOLE_RECORD = RECORD("whole", whole, WHOLE);

static const struct owner NORTH = {"north, 1", {1000}};

static struct part part_of(struct gw_arena *arena, const struct owner *owner, enum gw_kind kind)
{
    struct part p = {.owner = owner, .count = 3000000000, .open = true, .kind = kind, .dim = GW_FORCE};
    p.width = 3.048;
    p.depth = GW_ABSENT;
    p.message = GW_SAY(arena, "at {}", gw_of_quantity(GW_LENGTH, 3.048));
    return p;
}

static void json_of_structs(void **state)
{
    struct world *w = *state;
    struct part parts[] = {part_of(&w->arena, &NORTH, GW_LITE), part_of(&w->arena, NULL, GW_SCREW)};
    const struct part *list[] = {&parts[1]};
    const char *words[] = {"a", "b"};
    struct whole whole = {.first = parts[0], .parts = {list, 1}, .words = {words, 2}, .own = {&OWNER_RECORD, &NORTH}};
    struct gw_text text;
    struct gw_json json;
    gw_text_init(&text, &w->arena);
    gw_json_init(&json, &text, false);
    json.shown = GW_US;
    gw_json_open(&json, '{');
    gw_json_record(&json, &WHOLE_RECORD, &whole, false);
    gw_json_close(&json, '}');
    assert_string_equal(
        text.at,
        "{\"first\":{\"name\":\"north, 1\",\"pressure_pa\":1000,\"far\":\"north, "
        "1\",\"count\":3000000000,\"open\":true,"
        "\"kind\":\"lite\",\"dim\":\"n\",\"width_m\":3.048,\"depth_m\":null,\"message\":\"at 10 "
        "ft\",\"basis\":\"none\"},"
        "\"parts\":[{\"name\":null,\"pressure_pa\":null,\"far\":null,\"count\":3000000000,\"open\":true,\"kind\":null,"
        "\"dim\":\"n\",\"width_m\":3.048,\"depth_m\":null,\"message\":\"at 10 ft\",\"basis\":\"none\"}],"
        "\"words\":[\"a\",\"b\"],\"own\":{\"name\":\"north, 1\",\"pressure_pa\":1000}}");
}

static void csv_of_structs(void **state)
{
    struct world *w = *state;
    struct part parts[] = {part_of(&w->arena, &NORTH, GW_LITE), part_of(&w->arena, NULL, GW_SCREW)};
    const struct part *list[] = {&parts[0], &parts[1]};
    struct whole whole = {.parts = {list, 2}};
    struct gw_text text;
    gw_text_init(&text, &w->arena);
    gw_csv_records(&text, gw_record_field(&WHOLE_RECORD, "parts"), &whole);
    assert_string_equal(text.at, "name,pressure_pa,far,count,open,kind,dim,width_m,depth_m,message,basis\n"
                                 "\"north, 1\",1000,\"north, 1\",3000000000,true,lite,n,3.048,,at 3.048 m,none\n"
                                 ",,,3000000000,true,,n,3.048,,at 3.048 m,none\n");
}

/* Views ------------------------------------------------------------------------------------------------------------ */

static bool same_kind(const void *a, const void *b)
{
    return ((const struct part *)a)->kind == ((const struct part *)b)->kind;
}

static void add_counts(void *into, const void *row, bool first)
{
    if (!first) ((struct part *)into)->count += ((const struct part *)row)->count;
}

static const struct view_column COLUMNS[] = {
    COLUMN("Step", NULL),
    COLUMN("Both", "both"),
    COLUMN("Pressure", "pressure", .rounding = UP),
    COLUMN("Width", "width", .rounding = DOWN, .dim = GW_THICKNESS),
    COLUMN("Depth", "depth"),
    COLUMN("Count", "count"),
};

static const char *table_of(struct world *w, const struct view *view, const void *rows, size_t n)
{
    struct gw_report report;
    struct gw_text text;
    gw_report_init(&report, &w->arena);
    struct page page = {.report = &report, .arena = &w->arena, .shown = GW_US};
    gw_view_list(&page, "", view, rows, n);
    gw_text_init(&text, &w->arena);
    gw_render_csv(&text, &report);
    return text.length ? text.at : "";
}

/* 1000 Pa is 20.885 psf: a demand goes up; 3.04789332 m is 119.9958 in: a capacity goes down. */
static void cells_come_from_fields(void **state)
{
    struct world *w = *state;
    struct part parts[] = {part_of(&w->arena, &NORTH, GW_LITE), part_of(&w->arena, NULL, GW_SCREW)};
    const struct view view = VIEW(&PART_RECORD, COLUMNS);
    parts[0].count = parts[1].count = 3;
    parts[0].width = 3.04789332;
    assert_string_equal(table_of(w, &view, parts, 2), "Step,Both,Pressure psf,Width in,Depth ft,Count\n"
                                                      "1,\"north, 1 x 3\",20.9,119.995,,3\n"
                                                      "2,,,120.000,,3\n");
    assert_string_equal(table_of(w, &view, parts, 0), "");
}

static void like_rows_become_one(void **state)
{
    struct world *w = *state;
    struct part parts[3];
    const enum gw_kind kinds[] = {GW_LITE, GW_SCREW, GW_LITE};
    static const struct view_column columns[] = {COLUMN("Kind", "kind"), COLUMN("Count", "count")};
    const struct view view = VIEW(&PART_RECORD, columns, .same = same_kind, .merge = add_counts);
    for (int i = 0; i < 3; i++) parts[i] = part_of(&w->arena, &NORTH, kinds[i]);
    for (int i = 0; i < 3; i++) parts[i].count = i + 1;
    assert_string_equal(table_of(w, &view, parts, 3), "Kind,Count\nlite,4\n,2\n");
    assert_int_equal(parts[0].count, 1); /* the rows themselves stay as they were */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        WORLD_TEST(json_of_structs),
        WORLD_TEST(csv_of_structs),
        WORLD_TEST(cells_come_from_fields),
        WORLD_TEST(like_rows_become_one),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
