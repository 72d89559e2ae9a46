/* Any bytes as a submittal for a good project: load, review, print. Of what it names its systems are there as
 * system.yaml. */
#include "fuzz_wall.h"

#include "galeward/review.h"

static void check(const struct gw_review *review)
{
    for (size_t i = 0; i < review->comments.n; i++) {
        const struct gw_comment *c = &review->comments.items[i];
        fuzz_require(c->number == (int)i + 1, "comments are numbered in their order");
        for (size_t k = 0; k < i; k++)
            fuzz_require(strcmp(c->item, review->comments.items[k].item) != 0 ||
                             strcmp(c->subject, review->comments.items[k].subject) != 0,
                         "no two comments have one name");
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct fuzz_wall w;
    struct gw_submittal submittal;
    struct gw_review review;
    if (size > FUZZ_LARGEST) return 0;
    fuzz_wall_open(&w);
    if (gw_submittal_load_source(&submittal, &w.model, fuzz_source(&w.arena, data, size))) {
        gw_review_submittal(&review, &w.ask, &w.answer, &submittal, NULL);
        check(&review);
        const struct gw_reviewed reviewed = {&w.results, &review};
        const struct gw_result result = gw_result_review(&w.arena, &reviewed);
        fuzz_wall_print(&w, &result);
    }
    fuzz_wall_close(&w);
    return 0;
}
