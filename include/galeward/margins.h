/* What would change a choice: how far each input may move, alone, until the verdict of a candidate with its plan is
 * another one. */
#ifndef GALEWARD_MARGINS_H
#define GALEWARD_MARGINS_H

#include "galeward/select.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The nearest flip of one input on one side of its value; or none on either. Numbers are looked at from half to double:
 *   wind speed     m/s
 *   story height   m, of the tallest story: every height below the roof line times one factor; what stands above it
 *                  moves along; openings of a schedule stay where they are
 *   module         m, of the widest column: the walls keep their widths, so their columns change by whole ones, alike
 *   tunnel factor  of every design pressure, as a wind-tunnel result might multiply it; the code's floor stands apart
 * Words: exposure, edition (of the wind standard), enclosure (of each building): every other value. */
struct gw_margin {
    const char *input;
    const char *of; /* the building, where the project has more than one; NULL */
    enum gw_dim dim;
    bool word;
    double value, flips_at;              /* SI; flips_at to 0.5 %, on the side where the verdict is another; absent */
    const char *value_word, *flips_word; /* of words; flips_word NULL: none flips it */
    enum gw_verdict verdict;             /* then; without a flip the one it has */
    const char *check, *where;           /* what flips it, and where; NULL */
    const struct gw_message *note;       /* it flips back; not computed; new places. NULL */
};
struct gw_margins {
    const struct gw_system *candidate;
    enum gw_verdict verdict; /* as it is */
    GW_LIST(struct gw_margin) items;
    size_t capacity;
    GW_LIST(struct gw_described) rows; /* the same, as they are written */
    long tried;                        /* projects that were judged */
};

/* Of a bid of gw_select on that model. The project's files are read anew for each value; every check is made anew with
 * the same choices: a place takes those of the same wall, zone and part, a new one those of its wall's same part in the
 * other zone, else none. `scratch` is rewound. */
void gw_find_margins(struct gw_margins *out, const struct gw_model *model, const struct gw_bid *bid,
                     struct gw_arena *arena, struct gw_arena *scratch);

#ifdef __cplusplus
}
#endif

#endif
