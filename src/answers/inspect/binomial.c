/* Exact limits of a share. */
#include "galeward/inspection.h"

#include <math.h>

/* P(X <= k) of n trials at p, by its terms from the k-th down, each from the one above it. */
static double at_most(long k, long n, double p)
{
    if (k >= n || p <= 0) return 1;
    if (k < 0 || p >= 1) return 0;
    const double log_term = lgamma((double)n + 1) - lgamma((double)k + 1) - lgamma((double)(n - k) + 1) +
                            (double)k * log(p) + (double)(n - k) * log1p(-p);
    /* terms grow downwards while k is above the mean: then the other tail is the small one */
    if ((double)k > (double)n * p) return 1 - at_most(n - k - 1, n, 1 - p);
    const double odds = (1 - p) / p;
    double term = exp(log_term), sum = 0;
    for (long i = k; i >= 0 && term > sum * 1e-17; i--) {
        sum += term;
        term *= (double)i / (double)(n - i + 1) * odds;
    }
    return sum;
}

/* The share at which so many or fewer are found with that risk. */
static double bisect(long k, long n, double risk)
{
    double low = 0, high = 1;
    for (int i = 0; i < 100 && high - low > 1e-15 * high; i++) {
        const double middle = low + (high - low) / 2;
        if (at_most(k, n, middle) > risk) low = middle;
        else high = middle;
    }
    return low + (high - low) / 2;
}

void gw_binomial_limits(double *least, double *most, long outside, long n, double risk)
{
    *least = outside <= 0 ? 0 : 1 - bisect(n - outside, n, risk);
    *most = outside >= n ? 1 : bisect(outside, n, risk);
}

long gw_sample_size(double share, double confidence) { return (long)ceil(log1p(-confidence) / log1p(-share) - 1e-9); }
