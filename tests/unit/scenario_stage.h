/* A scenario while it runs: its files, made of those of its base and its own; a part of scenario_test.c. */

/* The text of a project or a system: keys of a base, then others --------------------------------------------------- */

/* NULL: no text, or after a fault. Only block mappings, whose keys begin their lines. */
static const struct gw_node *keys_of(struct gw_arena *arena, const char *text, struct gw_diags *diags)
{
    if (!text) return NULL;
    const struct gw_node *root = gw_yaml_read(arena, gw_source_from(arena, "scenario", text, strlen(text)), diags);
    for (const struct gw_node *c = root ? root->first : NULL; c; c = c->next)
        if (root->kind != GW_MAPPING || c->key_column != 1)
            gw_diag_node(diags, GW_ERROR, "layout", "", root, "wants keys that begin their lines");
    return diags->errors ? NULL : root;
}

static const char *line_of(const char *text, unsigned line)
{
    for (; line > 1 && *text; text++) line -= *text == '\n';
    return text;
}

static void add_key(struct gw_text *out, const char *text, const struct gw_node *child)
{
    const char *from = line_of(text, child->key_line);
    const char *to = child->next ? line_of(text, child->next->key_line) : from + strlen(from);
    gw_text_bytes(out, from, (size_t)(to - from));
    if (to > from && to[-1] != '\n') gw_text_add(out, "\n");
}

/* A key with nothing after it takes the base's away. */
static const char *merged(struct gw_arena *arena, const char *base, const char *more, struct gw_diags *diags)
{
    const struct gw_node *old = keys_of(arena, base, diags), *new = keys_of(arena, more, diags);
    struct gw_text out;
    gw_text_init(&out, arena);
    for (const struct gw_node *c = old ? old->first : NULL; c; c = c->next)
        if (!gw_node_get(new, c->key)) add_key(&out, base, c);
    for (const struct gw_node *c = new ? new->first : NULL; c; c = c->next)
        if (c->kind != GW_SCALAR || c->length || c->quoted) add_key(&out, more, c);
    return out.at;
}

/* A scenario while it runs ------------------------------------------------------------------------------------------
 */

struct stage {
    struct gw_host host;
    struct gw_arena arena;
    struct gw_diags diags;
    struct named_text texts[MOST_TEXTS]; /* systems, then other files */
    size_t n_systems, n_texts;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_judgement judgement;
    struct gw_submittal submittal;
    struct gw_answer answer;
    struct gw_review review;
    struct gw_readings readings;
    const struct gw_system *hung;
    struct gw_inspection inspection;
    struct gw_inspection_sheet sheet;
    const struct scenario *scenario;
    size_t wrong;
};

static struct gw_read read_text(void *user, const char *path, gw_take *take, void *sink)
{
    const struct stage *s = user;
    for (size_t i = 0; i < s->n_texts; i++)
        if (strcmp(s->texts[i].name, path) == 0) {
            take(sink, s->texts[i].text, strlen(s->texts[i].text));
            return (struct gw_read){GW_READ_WHOLE, NULL};
        }
    return (struct gw_read){GW_READ_NO_FILE, "no such file"};
}

static void wrong(struct stage *s, const struct gw_node *at, const char *about, const char *what, const char *want,
                  const char *got)
{
    print_error("%s:%u: %s: %s%s%s: want %s, got %s\n", at->source->name, at->line, s->scenario->name, about,
                *about ? ": " : "", what, want, got);
    s->wrong++;
}

static struct named_text *text_named(struct stage *s, const char *name)
{
    for (size_t i = 0; i < s->n_texts; i++)
        if (strcmp(s->texts[i].name, name) == 0) return &s->texts[i];
    assert_true(s->n_texts < MOST_TEXTS);
    s->texts[s->n_texts] = (struct named_text){name, NULL};
    return &s->texts[s->n_texts++];
}

static void put_system(struct stage *s, const char *name, const char *text)
{
    struct named_text *file = text_named(s, name);
    file->text = merged(&s->arena, file->text, text, &s->diags);
}

static void put_systems(struct stage *s, const struct parts *parts)
{
    if (parts->system) put_system(s, "system.yaml", parts->system);
    for (size_t i = 0; i < parts->systems.n; i++)
        put_system(s, parts->systems.items[i].name, parts->systems.items[i].text);
}

static void put_files(struct stage *s, const struct parts *parts)
{
    for (size_t i = 0; i < parts->files.n; i++) *text_named(s, parts->files.items[i].name) = parts->files.items[i];
}

static void put_offer(struct stage *s)
{
    const char *own = s->scenario->offer;
    if (own) text_named(s, "offer.yaml")->text = merged(&s->arena, text_named(s, "system.yaml")->text, own, &s->diags);
}

/* The project as it is loaded: every system is a candidate where the project names none. */
static const char *project_text(struct stage *s, const struct parts *base, const struct parts *own)
{
    struct gw_text out;
    put_systems(s, base);
    put_systems(s, own);
    s->n_systems = s->n_texts;
    put_files(s, base);
    put_files(s, own);
    put_offer(s);
    gw_text_init(&out, &s->arena);
    gw_text_add(&out, merged(&s->arena, base->project, own->project, &s->diags));
    bool named = gw_node_get(keys_of(&s->arena, out.at, &s->diags), "candidates");
    for (size_t i = 0; i < s->n_systems && !named; i++)
        gw_text_addf(&out, "%s%s", i ? ", " : "candidates: [", s->texts[i].name);
    if (s->n_systems && !named) gw_text_add(&out, "]\n");
    return out.at;
}

static const char **settings_of(struct stage *s, const struct parts *base, const struct parts *own, size_t *n)
{
    const char **list = gw_alloc(&s->arena, base->settings.n + own->settings.n + 1, sizeof *list);
    for (size_t i = 0; i < base->settings.n; i++) list[(*n)++] = base->settings.items[i];
    for (size_t i = 0; i < own->settings.n; i++) list[(*n)++] = own->settings.items[i];
    return list;
}
