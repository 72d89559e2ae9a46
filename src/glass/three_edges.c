/* Plate simply supported on three edges, the fourth free, uniform pressure, small deflection: Levy's series.
 *
 * D lap^2 w = q; x along the free edge (length 1), y from the held edge opposite it (0) to the free edge (ratio).
 * w = (4 q/(pi^5 D)) SUM over odd m of Y(y) sin(k x)/m^5, k = m pi, which meets the two sides and leaves for each m
 *     Y = 1 + (c1 + c2 s) e^-s + (c3 + c4 u) e^-u,   s = k y, u = k (ratio - y).
 * Written with the two exponentials that fall away from the edges, not with cosh and sinh, nothing overflows and
 * nothing cancels. The four constants follow from held edge, y = 0:      w = 0, w_yy = 0 free edge, y = ratio:  w_yy +
 * nu w_xx = 0 (no moment), w_yyy + (2 - nu) w_xxy = 0 (no edge reaction). */
#include "galeward/support.h"

#include "glass/glass_internal.h"

/* Y and its derivatives by s. */
struct term {
    double y[4];
};

static void constants(double c[4], double length, double nu)
{
    const double e = exp(-length), ee = e * e, n = 1 - nu;
    /* The held edge gives c1 = -1 - (c3 + c4 length) e and c2 = -1/2 - c4 e; put into the free edge's two: */
    const double m3 = n * (1 - ee), m4 = -2 * n * length * ee + 2 * ee - 2, m0 = nu + n * (1 + length / 2) * e - e;
    const double v3 = -n * (1 + ee), v4 = -2 * n * length * ee - (1 + nu) * (1 + ee),
                 v0 = n * (1 + length / 2) * e + (1 + nu) / 2 * e;
    const double determinant = m3 * v4 - m4 * v3;
    c[2] = (m0 * v4 - m4 * v0) / determinant;
    c[3] = (m3 * v0 - v3 * m0) / determinant;
    c[0] = -1 - (c[2] + c[3] * length) * e;
    c[1] = -0.5 - c[3] * e;
}

/* (a + b s) e^-s differentiated d times is (-1)^d (a - d b + b s) e^-s. */
static void term_at(struct term *out, const double c[4], double s, double u)
{
    const double near_held = exp(-s), near_free = exp(-u);
    for (int d = 0; d < 4; d++) {
        double held = (c[0] - d * c[1] + c[1] * s) * near_held, free = (c[2] - d * c[3] + c[3] * u) * near_free;
        out->y[d] = (d % 2 ? -held : held) + free; /* u falls where s grows: both signs cancel */
    }
    out->y[0] += 1;
}

void gw_three_edge_at(struct gw_three_edge_point *out, double ratio, double nu, double x, double y, int terms)
{
    const double stiffness = 1 / (12 * (1 - nu * nu)); /* D over E t^3 */
    *out = (struct gw_three_edge_point){0};
    for (int i = 0; i < terms; i++) {
        const double m = 2 * i + 1, k = m * PI, load = 4 / pow(PI * m, 5), sine = sin(k * x), cosine = cos(k * x);
        double c[4];
        struct term t;
        constants(c, k * ratio, nu);
        term_at(&t, c, k * y, k * (ratio - y));
        out->deflection += load * t.y[0] * sine / stiffness;
        out->stress_x += 6 * load * k * k * (t.y[0] - nu * t.y[2]) * sine;
        out->stress_y += 6 * load * k * k * (nu * t.y[0] - t.y[2]) * sine;
        out->stress_xy += 6 * load * k * k * (1 - nu) * t.y[1] * cosine;
        out->reaction_x += load * k * k * k * (t.y[0] - (2 - nu) * t.y[2]) * cosine;
        out->reaction_y += load * k * k * k * ((2 - nu) * t.y[1] - t.y[3]) * sine;
    }
    out->corner = out->stress_xy / 3;
}

/* Largest principal stress of either face: they are each other's negative. */
static double principal(double ratio, double nu, double x, double y, int terms)
{
    struct gw_three_edge_point p;
    gw_three_edge_at(&p, ratio, nu, x, y, terms);
    return fabs(p.stress_x + p.stress_y) / 2 + hypot((p.stress_x - p.stress_y) / 2, p.stress_xy);
}

/* Of a grid on half of the plate. */
static void scan(struct gw_three_edge *out, double ratio, double nu)
{
    enum { ACROSS = 8, ALONG = 16, COARSE_TERMS = 20 };
    out->largest = -1;
    for (int i = ACROSS; i >= 0; i--)
        for (int j = ALONG; j >= 0; j--) {
            double x = 0.5 * i / ACROSS, y = ratio * j / ALONG, now = principal(ratio, nu, x, y, COARSE_TERMS);
            if (now <= out->largest) continue;
            out->largest = now;
            out->x = x;
            out->y = y;
        }
}

/* Up the hill in steps that are halved where no neighbor is higher. */
static void climb(struct gw_three_edge *out, double ratio, double nu)
{
    enum { HALVINGS = 10 };
    static const int WAYS[4][2] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    double step = 1.0 / 32;
    out->largest = principal(ratio, nu, out->x, out->y, GW_THREE_EDGE_TERMS);
    for (int halved = 0; halved < HALVINGS;) {
        bool moved = false;
        for (int way = 0; way < 4 && !moved; way++) {
            double x = out->x + step * WAYS[way][0], y = out->y + step * ratio * WAYS[way][1];
            if (x < 0 || x > 0.5 || y < 0 || y > ratio) continue;
            double now = principal(ratio, nu, x, y, GW_THREE_EDGE_TERMS);
            moved = now > out->largest;
            if (moved) *out = (struct gw_three_edge){out->alpha, out->beta, now, x, y};
        }
        if (moved) continue;
        step /= 2;
        halved++;
    }
}

void gw_three_edge(struct gw_three_edge *out, double ratio, double nu)
{
    struct gw_three_edge_point middle;
    gw_three_edge_at(&middle, ratio, nu, 0.5, ratio, GW_THREE_EDGE_TERMS);
    *out = (struct gw_three_edge){.alpha = middle.deflection, .beta = middle.stress_x};
    scan(out, ratio, nu);
    climb(out, ratio, nu);
}
