/* A face that the wave meets at an angle. */
#include "galeward/blast.h"

/* [Randers-Pehrson and Bannister 1997]: of the pressures at one time; with angle and histories fixed it holds for
 * their integrals as well. */
double gw_blast_oblique(double reflected, double incident, double angle)
{
    const double c = cos(angle);
    return reflected * c * c + incident * (1 + c * c - 2 * c);
}
