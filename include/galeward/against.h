/* A written result against the same computed anew: what differs, and where. */
#ifndef GALEWARD_AGAINST_H
#define GALEWARD_AGAINST_H

#include "galeward/report.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Numbers that differ by no more than this part of the greater one are the same. */
#define GW_AGAINST_TOLERANCE 1e-9

/* One value that differs. Of an entry that is new or gone it is the value that stands for the entry (its count, its
 * verdict), and one side has none. */
struct gw_change {
    const char *what;  /* input, summary, verdict, element, demand, member, reaction, difference, reach, mock-up */
    const char *where; /* file, element, wall, lite type, project */
    const char *candidate, *check, *direction; /* NULL: of none */
    const char *key;                           /* as in the result, with its unit */
    struct gw_either was, is;
    enum gw_dim dim;
    bool is_new, is_gone;
    /* Of verdicts and candidates: the use of either side. */
    double was_use, use;
    /* Of elements, and of what is asked of them, for tables: where they stand. NULL, 0: nowhere. */
    const char *wall, *kind, *mark;
    int zone;
};

struct gw_against {
    const struct gw_results *results; /* computed anew */
    const char *file;                 /* the result that was read */
    const char *version;              /* of the program that wrote it */
    const char *project;              /* its name there; NULL: none */
    long unchanged;                   /* values that are the same */
    GW_LIST(struct gw_change) changes;
    size_t capacity;
};

/* MiB that a result may have. */
enum { GW_RESULT_LIMIT = 512 };

/* Compares files by their hashes, entries by what they say of the same place, values to GW_AGAINST_TOLERANCE. Elements
 * are the same where their place and size are, whatever their number in their wall. Sentences, and lists that hold
 * nothing else (assumptions, warnings, what to ask), are not compared: they follow from the values, and are worded in
 * the reader's units. A key that only one side has, as results of two versions may, is passed over. `judged`: it is
 * what 'check' writes, else 'demand'. False after a diagnostic: the text is no JSON, or no such result; the diagnostic
 * never holds a part of the text. */
bool gw_against(struct gw_against *out, struct gw_arena *arena, const struct gw_results *results, bool judged,
                const struct gw_source *source, struct gw_diags *diags);
struct gw_result gw_result_against(const struct gw_against *against);
/* What it writes as data. */
extern const struct gw_record gw_against_record;

#ifdef __cplusplus
}
#endif

#endif
