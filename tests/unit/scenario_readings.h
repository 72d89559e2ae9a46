/* What a scenario expects of readings; a part of scenario_test.c. */

static void wants_words(struct stage *s, const struct expectation *x, const char *about, const char *what,
                        const char *const *wanted, size_t n, const char *said, bool there)
{
    for (size_t i = 0; i < n; i++)
        if (!strstr(said, wanted[i]) == there) wrong(s, x->node, about, what, wanted[i], said);
}

static void compare_result(struct stage *s, const struct expectation *x, const char *about,
                           const struct gw_inspected *row)
{
    static const struct gw_item_result none = {.remaining = GW_ABSENT,
                                               .remaining_worst = GW_ABSENT,
                                               .required = GW_ABSENT,
                                               .limit = {.at_least = GW_ABSENT, .at_most = GW_ABSENT}};
    const struct gw_item_result *r = row->result ? row->result : &none;
    const enum gw_dim dim = gw_item_kinds[row->item->id].value.dim;
    compare_number(s, x, about, "remaining", GW_RATIO, x->remaining, r->remaining);
    compare_number(s, x, about, "remaining_worst", GW_RATIO, x->remaining_worst, r->remaining_worst);
    compare_number(s, x, about, "required", GW_RATIO, x->required, r->required);
    compare_number(s, x, about, "at_least", dim, x->at_least, r->limit.at_least);
    compare_number(s, x, about, "at_most", dim, x->at_most, r->limit.at_most);
    const char *mechanism = r->mechanism ? r->mechanism : "none", *basis = gw_limit_basis_name(r->limit.basis);
    if (!same_or_any(x->mechanism, mechanism)) wrong(s, x->node, about, "mechanism", x->mechanism, mechanism);
    if (!same_or_any(x->limit_basis, basis)) wrong(s, x->node, about, "limit_basis", x->limit_basis, basis);
}

static void compare_reading(struct stage *s, const struct expectation *x)
{
    const struct gw_inspected *row = NULL;
    for (size_t i = 0; i < s->inspection.rows.n; i++) {
        const struct gw_inspected *r = &s->inspection.rows.items[i];
        if (r->reading->node->line == (unsigned)x->reading && same_or_any(x->item, gw_item_kinds[r->item->id].id))
            row = r;
    }
    const char *about = gw_format(&s->arena, "reading %d", x->reading);
    if (!row) {
        wrong(s, x->node, about, "row", x->item ? x->item : "one", "none");
        return;
    }
    const char *said = gw_message_text(&s->arena, &row->message, GW_US);
    const size_t before = s->wrong;
    compare_word(s, x, about, "verdict", VERDICTS, x->verdict, READ + (int)row->verdict);
    compare_result(s, x, about, row);
    if (x->where && !strstr(row->place, x->where)) wrong(s, x->node, about, "where", x->where, row->place);
    wants_words(s, x, about, "says", x->says.items, x->says.n, said, true);
    wants_words(s, x, about, "says_not", x->says_not.items, x->says_not.n, said, false);
    wants_words(s, x, about, "action_says", x->action_says.items, x->action_says.n,
                gw_message_text(&s->arena, &row->action, GW_US), true);
    if (s->wrong > before) print_error("  %s: %s\n", row->place, said);
}

static const char *next_places(struct stage *s, const struct gw_item *item)
{
    struct gw_text list;
    gw_text_init(&list, &s->arena);
    gw_text_add(&list, "");
    for (size_t i = 0; i < s->inspection.next.n; i++)
        if (s->inspection.next.items[i].item == item) gw_text_addf(&list, "%s\n", s->inspection.next.items[i].place);
    return list.at;
}

static void compare_share(struct stage *s, const struct expectation *x)
{
    const struct gw_item_share *share = NULL;
    for (size_t i = 0; i < s->inspection.items.n; i++)
        if (strcmp(gw_item_kinds[s->inspection.items.items[i].item->id].id, x->item) == 0)
            share = &s->inspection.items.items[i];
    if (!share) {
        wrong(s, x->node, x->item, "share", "one", "none");
        return;
    }
    if (x->places != GW_NO_INTEGER && x->places != (int)share->places)
        wrong(s, x->node, x->item, "places", gw_format(&s->arena, "%d", x->places),
              gw_format(&s->arena, "%ld", share->places));
    if (x->outside != GW_NO_INTEGER && x->outside != (int)share->outside)
        wrong(s, x->node, x->item, "outside", gw_format(&s->arena, "%d", x->outside),
              gw_format(&s->arena, "%ld", share->outside));
    compare_number(s, x, x->item, "least", GW_RATIO, x->least, share->least);
    compare_number(s, x, x->item, "most", GW_RATIO, x->most, share->most);
    if (x->enough != GW_UNSAID && (x->enough == GW_YES) != share->enough)
        wrong(s, x->node, x->item, "enough", x->enough == GW_YES ? "yes" : "no", words(&share->why));
    wants_words(s, x, x->item, "says", x->says.items, x->says.n, words(&share->why), true);
    wants_words(s, x, x->item, "next", x->next.items, x->next.n, next_places(s, share->item), true);
}

/* "place: limit; why it does not hold"; "vision: limit" */
static const char *other_limits(struct stage *s, const struct gw_sheet_item *row)
{
    struct gw_text list;
    gw_text_init(&list, &s->arena);
    gw_text_add(&list, "");
    for (size_t i = 0; i < row->other.n; i++) {
        const struct gw_sheet_place *place = &row->other.items[i];
        gw_text_addf(&list, "%s: %s; %s\n", place->place, gw_message_text(&s->arena, &place->held_to, GW_US),
                     gw_message_text(&s->arena, &place->condemns, GW_US));
    }
    for (size_t i = 0; i < row->types.n; i++)
        gw_text_addf(&list, "%s: %s\n", row->types.items[i].lites,
                     gw_message_text(&s->arena, &row->types.items[i].first.held_to, GW_US));
    return list.at;
}

static void compare_sheet(struct stage *s, const struct expectation *x)
{
    const struct gw_sheet_item *row = NULL;
    for (size_t i = 0; i < s->sheet.items.n; i++) {
        const struct gw_sheet_item *item = &s->sheet.items.items[i];
        if (strcmp(gw_item_kinds[item->item->id].id, x->sheet) == 0 && same_or_any(x->wall, item->wall)) row = item;
    }
    if (!row) {
        wrong(s, x->node, x->sheet, "item", "one", "none");
        return;
    }
    const enum gw_dim dim = gw_item_kinds[row->item->id].value.dim;
    const char *said = gw_message_text(&s->arena, &row->most.condemns, GW_US);
    compare_number(s, x, x->sheet, "at_least", dim, x->at_least, row->most.limit.at_least);
    compare_number(s, x, x->sheet, "at_most", dim, x->at_most, row->most.limit.at_most);
    const char *basis = gw_limit_basis_name(row->most.limit.basis);
    if (!same_or_any(x->limit_basis, basis)) wrong(s, x->node, x->sheet, "limit_basis", x->limit_basis, basis);
    if (x->where && !strstr(row->most.place, x->where)) wrong(s, x->node, x->sheet, "where", x->where, row->most.place);
    if (x->places != GW_NO_INTEGER && x->places != (int)row->places)
        wrong(s, x->node, x->sheet, "places", gw_format(&s->arena, "%d", x->places),
              gw_format(&s->arena, "%ld", row->places));
    wants_words(s, x, x->sheet, "says", x->says.items, x->says.n, said, true);
    wants_words(s, x, x->sheet, "says_not", x->says_not.items, x->says_not.n, said, false);
    wants_words(s, x, x->sheet, "others", x->others.items, x->others.n, other_limits(s, row), true);
    if (x->count != GW_NO_INTEGER && x->count != (int)row->other.n)
        wrong(s, x->node, x->sheet, "count", gw_format(&s->arena, "%d", x->count),
              gw_format(&s->arena, "%zu", row->other.n));
}
