/* Parts of the page of a specification. */
#ifndef REPORT_SPECIFY_H
#define REPORT_SPECIFY_H

#include "galeward/specify.h"
#include "report/page.h"

/* The page, and where its numbered paragraphs stand: 2.3. */
struct specified_page {
    struct page page;
    const struct gw_specification *spec;
    unsigned article, paragraph;
};
/* "2. Wind pressures": the paragraphs that follow are 2.1, 2.2 ... */
void gw_spec_article(struct specified_page *p, const char *title);
void gw_spec_paragraph(struct specified_page *p, const char *text);
/* "R-01 to R-04" of the rows of a check; nothing where there are none. */
const char *gw_spec_rows_of(struct specified_page *p, const char *check);
const char *gw_spec_quantity(struct specified_page *p, enum gw_dim dim, double si, enum rounding rounding);

/* specify_pressures.c */
const char *gw_spec_part(bool framing, bool parapet); /* "lites above the roof line" */
/* Who says pressures besides the method: "given S-001"; "": nobody. */
const char *gw_spec_pressures_by(struct specified_page *p);
/* "screws 32.1 psf inward": what below the roof line takes more than these, Pa, allowable stress; "": nothing. */
const char *gw_spec_more_than(struct specified_page *p, double inward, double outward);
void gw_spec_pressures(struct specified_page *p);
/* specify_tests.c */
void gw_spec_tests(struct specified_page *p);

#endif
