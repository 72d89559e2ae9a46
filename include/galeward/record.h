/* The record registry: one field table describes a struct, in and out. It drives YAML, CSV and stream input, JSON
 * output, "did you mean", the JSON Schema and the field reference. Nothing about a field is written twice. */
#ifndef GALEWARD_RECORD_H
#define GALEWARD_RECORD_H

#include "galeward/document.h"
#include "galeward/engine.h"
#include "galeward/message.h"

#ifdef __cplusplus
extern "C" {
#endif

enum gw_type {
    GW_T_NUMBER,  /* double; GW_ABSENT when not given */
    GW_T_INTEGER, /* int; GW_NO_INTEGER */
    GW_T_BOOL,    /* enum gw_bool */
    GW_T_TEXT,    /* const char *; NULL */
    GW_T_CHOICE,  /* int of an enum whose 0 is "not given" */
    GW_T_RECORD,  /* const struct X *; NULL */
    GW_T_NODE,    /* const struct gw_node *: where the record stands; takes no key */
    GW_T_TREE,    /* const struct gw_node *: a mapping kept as it was written, whose keys are another record's; NULL */
    /* Of results, which are written and never read: structs as they lie in the domain. */
    GW_T_YES_NO,    /* bool */
    GW_T_COUNT,     /* long */
    GW_T_WORD,      /* an enum, named by `word`, or by `choices` where 0 is a value too */
    GW_T_MESSAGE,   /* struct gw_message, worded in the reader's units; null where nothing was said */
    GW_T_BASIS,     /* struct gw_used: the weakest basis in it */
    GW_T_UNIT,      /* enum gw_dim: its SI unit, as the end of a key */
    GW_T_SAID,      /* the text that `say` makes of the struct */
    GW_T_FIGURE,    /* the number that `figure` makes of the struct, in the reader's units */
    GW_T_DESCRIBED, /* struct gw_described: whatever its own record says */
    GW_T_EITHER     /* struct gw_either: a number or words; null where it is neither */
};

#define GW_NO_INTEGER (-2147483647 - 1)

enum gw_field_flag {
    GW_REQUIRED = 1,
    GW_MANY = 2,         /* a sequence of these: struct gw_many */
    GW_NAMED = 4,        /* with GW_MANY: a mapping whose keys become each record's first text field */
    GW_MAGNITUDE = 8,    /* a minus sign is taken off */
    GW_WRAP = 16,        /* with GW_MANY: a sequence of plain items is one item given as a sequence */
    GW_HIDDEN = 32,      /* not in the field reference */
    GW_SILENT = 64,      /* its default is not worth listing among the assumptions */
    GW_ALONE = 2048,     /* with GW_MANY: a single plain item stands for a list of itself */
    GW_ORDERED = 4096,   /* with GW_MANY: the order of its items tells two lists apart */
    GW_REPORT = 8192,    /* a text that names a report: "none", "n/a", "TBD" and their like name none, with a warning */
    GW_NO_MINUS = 16384, /* with GW_MAGNITUDE: a minus sign is doubted, since it would be the other way */
    GW_DATE = 32768,     /* a text that is a day, 2026-09-14 (galeward/day.h); anything else is refused */
    /* Of results: */
    GW_INSIDE = 128,      /* a record that lies in the struct, not behind a pointer */
    GW_POINTERS = 256,    /* with GW_MANY: a list of pointers to records */
    GW_FLAT = 512,        /* a record whose keys stand among ours */
    GW_TABLES_ONLY = 1024 /* put together from other fields for a table that people read: no key of its own */
};

/* A value of either kind: a number, words, or neither (GW_ABSENT and NULL). */
struct gw_either {
    double number; /* SI */
    const char *words;
};

/* A list in a record. Declare members as GW_LIST(struct gw_wall). */
struct gw_many {
    void *items;
    size_t n;
};
#define GW_LIST(type)                                                                                                  \
    struct {                                                                                                           \
        type *items;                                                                                                   \
        size_t n;                                                                                                      \
    }

struct gw_choice {
    const char *name;
    int value;
    const char *help;
};

/* Another word for one of the choices, as drawings and reports have it. `name` NULL: it may be more than one of them,
 * and is refused. `says`: what a reader is told, as the end of a sentence; of the last, without a word, of any word
 * that is none of them. */
struct gw_also {
    const char *word, *name, *says;
    enum gw_severity severity; /* of what is told where it is taken */
};

struct gw_record;
enum { GW_HOPS = 3 };

struct gw_field {
    const char *key;
    enum gw_type type;
    size_t offset;
    unsigned flags;
    enum gw_dim dim;
    const struct gw_record *record;
    const struct gw_choice *choices;  /* ends with a NULL name */
    const struct gw_also *also;       /* other words for them, or in headers for the key; ends with a NULL word */
    double least, greatest;           /* refused outside; both 0: no limit */
    const char *below;                /* what to write instead of a value below the least; NULL */
    double likely_least, likely_most; /* a warning outside; both 0: none */
    const char *fallback;             /* default, as a user would write it; NULL: none */
    const char *keyword;              /* a word accepted in a number's place ("rest"): the number is then absent, */
    size_t keyword_at;                /* and the bool there in the struct true; not in lists */
    const char *help;
    const char *example; /* what to write where another kind of value stands; NULL */
    /* Of results. `via`: offsets of pointers to follow, the first in the record's struct, before `offset` counts. */
    size_t via[GW_HOPS];
    unsigned hops;
    const char *(*word)(int value); /* NULL: null */
    /* False: there is none. `thing` is what `via` and `offset` lead to. */
    bool (*say)(struct gw_text *out, const void *thing, enum gw_units shown);
    double (*figure)(const void *thing, enum gw_units shown);
};

/* A struct with the record that describes it, for results whose shape is known only when they are there. */
struct gw_described {
    const struct gw_record *record;
    const void *value;
};

struct gw_record {
    const char *name;
    size_t size;
    const struct gw_field *fields;
    size_t n;
    const struct gw_also *elsewhere;   /* keys that stand in another record, and where; ends with a NULL word */
    const char *scalar_key, *list_key; /* the field that a bare scalar, or a bare sequence, sets */
    const char *help;
    const char *example;          /* as of a field */
    const struct gw_also *others; /* keys that it has not, and what to write instead (`says`); ends with a NULL word */
};

/* What an assumption may be said of, one by one, so that pages can say it once of all. */
enum gw_subject { GW_OF_NOTHING, GW_OF_WALL, GW_OF_BUILDING, GW_OF_SYSTEM };

/* A default that was taken, or anything else assumed: printed with every result. */
struct gw_assumption {
    const char *where; /* "wall east" */
    struct gw_message text;
    enum gw_subject subject;
    const char *name; /* of the subject; NULL: of nothing */
    bool decides;     /* verdicts would often be others: pages say it by itself */
};

struct gw_assumptions {
    struct gw_assumption *items;
    size_t n, capacity;
};

struct gw_load {
    struct gw_arena *arena;
    struct gw_diags *diags;
    struct gw_assumptions *assumptions; /* NULL: not wanted */
    struct gw_unit_list units;
    enum gw_units preset;
    bool alone; /* no preset serves its values: each stands with its unit */
};

/* Sets every field of `*out` to "not given". */
void gw_record_clear(const struct gw_record *record, void *out);
/* One field, which lies `at`. */
void gw_field_clear(const struct gw_field *field, void *at);
/* True where nothing that both give differs; what either leaves out tells nothing. */
bool gw_record_alike(const struct gw_record *record, const void *a, const void *b);
/* One value in which two structs of one record differ, as people read it; not said: it gives none. */
struct gw_record_difference {
    const char *path; /* "tube.depth", "[2].report" in a list, of items with names "[steel insert]" */
    struct gw_message a, b;
};
struct gw_record_differences {
    GW_LIST(struct gw_record_difference) list;
    size_t capacity;
};
/* Every value in which two values of one field differ, which lie `a` and `b`; what one of them leaves out differs too.
 * Items of a list are brought together by what they have alike, then by their kind (their first key), so that their
 * order tells nothing unless it is of a kind that has one. */
void gw_field_differ(struct gw_record_differences *out, struct gw_arena *arena, const struct gw_field *field,
                     const void *a, const void *b);
/* Fills `*out` (record->size bytes) from the node; reports every fault in it; true when there was none. `path` names
 * the place for assumptions. */
bool gw_record_load(struct gw_load *load, const struct gw_record *record, const struct gw_node *node, const char *path,
                    void *out);
/* The value of one field at a node that stands apart from its record, into the value's own place `*at`, which is
 * cleared first: where another field tells what kind of value it is. True when there was no fault. */
bool gw_field_load(struct gw_load *load, const struct gw_field *field, const struct gw_node *node, void *at);
/* Once for a place, however often it is said. Of a message with values GW_SAY keeps them. */
void gw_assume(struct gw_arena *arena, struct gw_assumptions *list, const char *where, struct gw_message text);
/* The same of a subject with that name, or of nothing but `where`; `*said` may be changed afterwards. */
void gw_assume_that(struct gw_arena *arena, struct gw_assumptions *list, const struct gw_assumption *said);

const char *gw_choice_name(const struct gw_choice *choices, int value); /* "" for 0 */
/* The choice of that name, or the only one that differs from it in capitals, spaces, hyphens and '_' alone; or NULL. */
const struct gw_choice *gw_choice_match(const struct gw_choice *choices, const char *word);
/* Do two words differ in those alone? */
bool gw_words_alike(const char *a, const char *b);
bool gw_says_none(const char *text); /* "none", "None", "n/a", "-", "not reinforced" */
const struct gw_field *gw_record_field(const struct gw_record *record, const char *key);
/* The nearest of the record's keys, or NULL. */
const char *gw_record_nearest(const struct gw_record *record, const char *key);
/* Key in JSON output: the field's key and its unit's suffix. */
void gw_field_json_key(struct gw_text *out, const struct gw_field *field);

/* Where the field's value lies, of a record with several fields in results: pointers followed; NULL where one of them
 * is, or the record itself. */
const void *gw_field_at(const struct gw_field *field, const void *record);
/* Of what gw_field_at found, NULL included. */
bool gw_field_is_absent(const struct gw_field *field, const void *at);
/* What a field says that is written as text; NULL: nothing, or not such a field. Of the arena where it had to be made.
 */
const char *gw_field_words(struct gw_arena *arena, const struct gw_field *field, const void *at, enum gw_units shown);
/* Whether results give it a key of its own. */
bool gw_field_is_written(const struct gw_field *field);
/* The struct of a record that is not a list, and an item of a list of records. */
const void *gw_field_struct(const struct gw_field *field, const void *at);
const void *gw_field_item(const struct gw_field *field, const struct gw_many *many, size_t i);

/* A step of a derivation (struct gw_step). */
extern const struct gw_record gw_step_record;

#ifdef __cplusplus
}
#endif

#endif
