/* Values that drawings give: shared by the files that judge them. */
#ifndef GALEWARD_REVIEW_DRAWN_H
#define GALEWARD_REVIEW_DRAWN_H

#include "review_internal.h"

/* One drawn value and what it comes to. */
struct judged_value {
    const struct gw_shop_value *drawn;
    enum gw_consequence consequence; /* GW_CONSEQUENCES: as it should be */
    struct gw_message needed, basis, effect, ask;
    enum gw_evidence evidence;
    const char *already; /* by what the system itself is short with that value, as another comment says; NULL */
    bool told;
};

/* "left by clamp: 1.11, 1.5 required; ..." */
struct gw_message gw_left_words(struct reviewing *r, const struct gw_item_result *result);

/* Of one wall, and of one zone of it where both name one. */
bool gw_drawn_at_one_place(const struct gw_shop_value *a, const struct gw_shop_value *b);

/* drawn_own.c: of a value that is the system's own and short by itself by what it is, where a comment says so already
 * of that wall, of a check or a substitution; NULL: none does. */
const char *gw_said_of_the_system(struct reviewing *r, const struct gw_shop_value *d,
                                  const struct gw_item_result *result);

/* drawn_sizes.c: spans and modules against what was taken off, the depth against the section. */
void gw_judge_drawn_size(struct judged_value *v, struct reviewing *r);
void gw_judge_drawn_depth(struct judged_value *v, struct reviewing *r);
/* Sizes of one wall that hold one by one may not together. */
void gw_judge_sizes_together(struct judged_value *list, struct reviewing *r, size_t n);

#endif
