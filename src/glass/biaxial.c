/* The biaxial correction as a mean over directions. */
#include "glass/glass_internal.h"

/* Normal stress at twice the angle v from the first principal direction: (s1+s2)/2 + (s1-s2)/2 cos v. */
double gw_biaxial_mean(double s1, double s2, double m)
{
    enum { POINTS = 16 };
    /* Mathematics, not a table: roots of the Legendre polynomial P_16 above zero and the weights of its Gauss rule, as
     * gw_plate_gauss(16, ...) gives them; written out because this runs at every node of every solution. */
    static const double X[POINTS / 2] = {0.0950125098376374402, 0.2816035507792589133, 0.4580167776572273863,
                                         0.6178762444026437484, 0.7554044083550030339, 0.8656312023878317439,
                                         0.9445750230732325761, 0.9894009349916499326};
    static const double WEIGHT[POINTS / 2] = {0.1894506104550684963, 0.1826034150449235889, 0.1691565193950025382,
                                              0.1495959888165767321, 0.1246289712555338720, 0.0951585116824927848,
                                              0.0622535239386478929, 0.0271524594117540949};
    if (!(s1 > 0)) return 0;
    double mean = (s1 + s2) / 2, swing = (s1 - s2) / 2, sum = 0;
    double reach = mean >= swing ? PI : acos(-mean / swing); /* tension only up to here */
    for (int i = 0; i < POINTS / 2; i++) {
        double below = mean + swing * cos(reach / 2 * (1 - X[i])), above = mean + swing * cos(reach / 2 * (1 + X[i]));
        sum += WEIGHT[i] * (plate_power(fmax(below, 0), m) + plate_power(fmax(above, 0), m));
    }
    return sum * reach / 2 / PI;
}
