/* What counts as equal where two ways to one number part: by rounding, or by a drawing's. A bound of convergence, and
 * what is left of a sum that is zero, are a solver's own and stand beside it. */
#ifndef BASE_TOLERANCE_H
#define BASE_TOLERANCE_H

/* Relative: of a ratio, a limit, a length. What is met to the digits of its own unit, feet or meters, is met. */
static const double GW_HAIR = 1e-9;
/* m: heights and widths are sums, which differ in their last bits; what is nearer stands at one place. */
static const double GW_HAIR_M = 1e-6;
/* Relative: dimensions of a drawing, each rounded, that ought to add up or to meet. */
static const double GW_HAIR_DRAWN = 1e-6;
/* Relative: a strength of a standard in round numbers of another unit, 100 ksi as 690 MPa. Grades differ by more. */
static const double GW_HAIR_GRADE = 5e-3;

#endif
