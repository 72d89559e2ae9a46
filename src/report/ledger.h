/* Tables by height: what reads alike is one row, zone 4 beside zone 5. */
#ifndef REPORT_LEDGER_H
#define REPORT_LEDGER_H

#include "report/page.h"

/* What stands in one zone of a row: figures of its worst, at both levels, magnitudes; absent: none, or not known. */
struct ledger_zone {
    long count;
    double inward, outward, inward_asd, outward_asd;
    const char *governs;            /* of the greatest outward one */
    const struct gw_element *worst; /* the same; NULL: nothing here */
};
enum { LEDGER_ZONES = 2 /* 4, 5 */ };
struct ledger_row {
    const struct gw_element *element; /* the first of them */
    const char *part;                 /* what stands in the first column: no row holds two of them */
    double bottom, top;               /* of all of them; of pieces with a height of their own, that */
    double area;                      /* of anchors, the largest: the wall that hangs on it */
    int story, to_story;              /* of the lowest and the highest of them, from 1; 0: none */
    size_t groups;
    enum gw_dim dim; /* of the figures, and the decimals that they are printed with */
    int decimals;
    struct ledger_zone zones[LEDGER_ZONES];
    struct ledger_zone first[LEDGER_ZONES]; /* of the lowest of them */
};
/* How rows are taken together: those whose printed figures are equal, or differ by no more than a share of them; and
 * where that leaves more than `most` of a part on one side of the roof line, by greater and greater shares. 0: equal
 * ones only, as many as there are. */
struct ledger_rule {
    double share;
    size_t most;
};
/* part, heights, floors, area; of each zone count_4, inward_4, outward_4: strength / allowable-stress level; governs.
 */
extern const struct gw_record gw_ledger_record;

/* Columns of a zone, its number written out. */
#define LEDGER_COLUMNS(zone_, dim_)                                                                                    \
    COLUMN("Zone " #zone_, "count_" #zone_, .right = true),                                                            \
        COLUMN("In", "inward_" #zone_, .dim = dim_, .right = true),                                                    \
        COLUMN("Out", "outward_" #zone_, .dim = dim_, .right = true)

/* The row of one element, under what its part of the wall is called: figures are its pressures. */
struct ledger_row gw_ledger_row(struct page *page, const struct gw_element *element, const char *part);
/* The greatest of its figures, of a view's rows. */
double gw_ledger_badness(const void *row);
/* Sorts rows of one wall and takes together those that are alike, from below; each figure is the worst of its row.
 * Returns how many are left, at the front. */
size_t gw_ledger_merge(struct page *page, struct ledger_row *rows, size_t n, const struct ledger_rule *rule);

#endif
