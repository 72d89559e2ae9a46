/* Cholesky factors of dense matrices: lower triangle, row by row. */
#include "glass/glass_internal.h"

/* Rows of `right` before row i, each times its entry of `row`, are taken off row i: four rows at a pass. */
static void take_off(double *restrict target, const double *right, const double *row, ptrdiff_t rows, ptrdiff_t columns)
{
    ptrdiff_t k = 0;
    for (; k + 4 <= rows; k += 4) {
        const double *a = right + k * columns, factor[4] = {-row[k], -row[k + 1], -row[k + 2], -row[k + 3]};
        plate_add_rows(target, factor, (const double *const[4]){a, a + columns, a + 2 * columns, a + 3 * columns},
                       columns);
    }
    for (; k < rows; k++)
        for (ptrdiff_t j = 0; j < columns; j++) target[j] -= row[k] * right[k * columns + j];
}

static double dot(const double *a, const double *b, ptrdiff_t n)
{
    double sum[4] = {0, 0, 0, 0};
    ptrdiff_t k = 0;
    for (; k + 4 <= n; k += 4)
        for (ptrdiff_t c = 0; c < 4; c++) sum[c] += a[k + c] * b[k + c];
    for (; k < n; k++) sum[0] += a[k] * b[k];
    return sum[0] + sum[1] + (sum[2] + sum[3]);
}

/* False when the matrix is not positive definite. */
bool gw_plate_factor(double *a, ptrdiff_t n)
{
    for (ptrdiff_t i = 0; i < n; i++) {
        double *row = a + i * n;
        for (ptrdiff_t j = 0; j < i; j++) {
            const double *other = a + j * n;
            row[j] = (row[j] - dot(row, other, j)) / other[j];
        }
        double pivot = row[i] - dot(row, row, i);
        if (!(pivot > 0)) return false;
        row[i] = sqrt(pivot);
    }
    return true;
}

void gw_plate_forward(const double *factor, double *right, ptrdiff_t n, ptrdiff_t columns)
{
    for (ptrdiff_t i = 0; i < n; i++) {
        const double *row = factor + i * n;
        double *target = right + i * columns;
        take_off(target, right, row, i, columns);
        for (ptrdiff_t j = 0; j < columns; j++) target[j] /= row[i];
    }
}

void gw_plate_backward(const double *factor, double *right, ptrdiff_t n)
{
    for (ptrdiff_t i = n - 1; i >= 0; i--) {
        const double *row = factor + i * n;
        right[i] /= row[i];
        for (ptrdiff_t k = 0; k < i; k++) right[k] -= row[k] * right[i];
    }
}
