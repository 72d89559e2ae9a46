/* Input of CalculiX for two odd beams, and its results as reference cases; tests/fem/beam.sh calls both.
 *
 *   beam write CASE                 prints the input
 *   beam read CASE RESULTS VERSION  prints the reference case from the .dat file
 *
 * Quadratic beam elements (B32) along x, load along y, a solid rectangle of 12 by 12 mm: shear adds 3 (h/l)^2 of the
 * deflection, 5e-5. A spread load is put on the corner nodes as the simple beams between them hand it on, which keeps
 * every moment at a node; Poisson's ratio is none, for the moment of a strip's edges is not part of a beam.
 *
 * A hinge is two nodes in one place that move together. Reactions come from the supports' nodes; moments from the
 * reactions by statics. */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { SUPPORTS = 4, LOADS = 3, PLACES = 5, MOST = 400 };
static const double DEPTH = 0.012, STEP = 0.025; /* m: of the section; between corner nodes */

struct load {
    double from, to, start, end, force; /* a force stands at `from` */
};
struct odd_beam {
    const char *name, *about;
    double length, supports[SUPPORTS], hinge; /* hinge: 0 none */
    int n_supports;
    double stiffer_from, moduli[2]; /* Pa */
    struct load loads[LOADS];
    int n_loads;
    double places[PLACES]; /* whose deflections are compared */
};

static const struct odd_beam BEAMS[] = {
    {.name = "spliced",
     .about = "three spans, a splice, stepped stiffness, triangular load",
     .length = 9.6,
     .supports = {0, 3.2, 6.1, 9.6},
     .n_supports = 4,
     .hinge = 3.9,
     .stiffer_from = 4.5,
     .moduli = {70e9, 155e9},
     .loads = {{.from = 0, .to = 5, .start = 0, .end = 6.3}, {.from = 5, .to = 9.6, .start = 2.7, .end = 2.7}},
     .n_loads = 2,
     .places = {1.5, 3.9, 4.9, 7, 8.1}},
    {.name = "overhang",
     .about = "both ends over, a force on the tip",
     .length = 6.4,
     .supports = {0.9, 2.7, 5.2},
     .n_supports = 3,
     .stiffer_from = 3,
     .moduli = {70e9, 110e9},
     .loads = {{.from = 6.4, .force = 11.3}, {.from = 0, .to = 3.6, .start = 9.1, .end = 2.2}},
     .n_loads = 2,
     .places = {0, 1.8, 3.5, 4.2, 6.4}},
};

static int corners_of(const struct odd_beam *b) { return (int)lround(b->length / STEP); }

/* Corner i is node 2 i + 1, the middle of the element behind it 2 i + 2. Behind a hinge everything is MOST * 4 higher.
 */
static int node_at(const struct odd_beam *b, int i, bool behind)
{
    const int hinge = b->hinge > 0 ? (int)lround(b->hinge / STEP) : MOST;
    return 2 * i + 1 + (i > hinge || (i == hinge && behind) ? 4 * MOST : 0);
}

static void write_mesh(const struct odd_beam *b)
{
    const int n = corners_of(b);
    printf("*NODE, NSET=ALL\n");
    for (int i = 0; i <= n; i++) {
        printf("%d, %.10g, 0, 0\n", node_at(b, i, false), i * STEP);
        if (node_at(b, i, true) != node_at(b, i, false)) printf("%d, %.10g, 0, 0\n", node_at(b, i, true), i * STEP);
        if (i < n) printf("%d, %.10g, 0, 0\n", node_at(b, i, true) + 1, (i + 0.5) * STEP);
    }
    for (int part = 0; part < 2; part++) {
        printf("*ELEMENT, TYPE=B32, ELSET=PART%d\n", part);
        for (int i = 0; i < n; i++)
            if (((i + 0.5) * STEP > b->stiffer_from) == part)
                printf("%d, %d, %d, %d\n", i + 1, node_at(b, i, true), node_at(b, i, true) + 1,
                       node_at(b, i + 1, false));
        printf("*MATERIAL, NAME=METAL%d\n*ELASTIC\n%.10g, 0\n", part, b->moduli[part]);
        printf("*BEAM SECTION, ELSET=PART%d, MATERIAL=METAL%d, SECTION=RECT\n%.10g, %.10g\n0, 0, -1\n", part, part,
               DEPTH, DEPTH);
    }
    if (b->hinge > 0) {
        const int i = (int)lround(b->hinge / STEP);
        for (int freedom = 1; freedom <= 2; freedom++)
            printf("*EQUATION\n2\n%d, %d, 1, %d, %d, -1\n", node_at(b, i, false), freedom, node_at(b, i, true),
                   freedom);
    }
}

/* Of load on one element: to its ends as from a simple beam. */
static void spread(double forces[MOST], const struct load *l, int i)
{
    const double from = i * STEP, slope = (l->end - l->start) / (l->to - l->from);
    const double a = l->start + slope * (from - l->from), c = a + slope * STEP;
    if (from < l->from - STEP / 2 || from > l->to - STEP / 2) return;
    forces[i] += STEP * (2 * a + c) / 6;
    forces[i + 1] += STEP * (a + 2 * c) / 6;
}

static void gather(double forces[MOST], const struct odd_beam *b)
{
    for (int k = 0; k < b->n_loads; k++) {
        const struct load *l = &b->loads[k];
        if (!(l->to > 0)) forces[lround(l->from / STEP)] += l->force;
        for (int i = 0; l->to > 0 && i < corners_of(b); i++) spread(forces, l, i);
    }
}

static int write_input(const struct odd_beam *b)
{
    double forces[MOST] = {0};
    gather(forces, b);
    write_mesh(b);
    printf("*BOUNDARY\nALL, 3, 3\n1, 1, 1\n");
    for (int k = 0; k < b->n_supports; k++) printf("%d, 2, 2\n", node_at(b, (int)lround(b->supports[k] / STEP), false));
    printf("*STEP\n*STATIC\n*CLOAD\n");
    for (int i = 0; i <= corners_of(b); i++)
        if (fabs(forces[i]) > 0) printf("%d, 2, %.12g\n", node_at(b, i, false), forces[i]);
    printf("*NODE PRINT, NSET=ALL\nU, RF\n*END STEP\n");
    return 0;
}

/* Results
 * ----------------------------------------------------------------------------------------------------------------
 */

struct results {
    double deflection[8 * MOST], reaction[8 * MOST]; /* by node */
    bool found;
};

static bool read_results(struct results *r, const char *path)
{
    char line[256];
    double *into = NULL;
    FILE *file = fopen(path, "r");
    if (!file) return false;
    while (fgets(line, sizeof line, file)) {
        int node = 0;
        double x, y;
        if (strstr(line, "displacements")) into = r->deflection;
        else if (strstr(line, "forces")) into = r->reaction;
        else if (into && sscanf(line, "%d %lf %lf", &node, &x, &y) == 3 && node > 0 && node < 8 * MOST) {
            into[node] = y;
            r->found = true;
        }
    }
    return fclose(file) == 0 && r->found;
}

static double moment_at(const struct odd_beam *b, const double reactions[SUPPORTS], double x)
{
    double moment = 0, forces[MOST] = {0};
    gather(forces, b);
    for (int i = 0; i * STEP < x; i++) moment -= forces[i] * (x - i * STEP);
    for (int k = 0; k < b->n_supports && b->supports[k] < x; k++) moment += reactions[k] * (x - b->supports[k]);
    return moment;
}

static void print_input(const struct odd_beam *b)
{
    const double inertia = pow(DEPTH, 4) / 12 * 1e12;
    printf("    in:\n      length: %g m\n      supports: [", b->length);
    for (int k = 0; k < b->n_supports; k++) printf("%s%g m", k ? ", " : "", b->supports[k]);
    if (b->hinge > 0) printf("]\n      hinges: [%g m", b->hinge);
    printf("]\n      segments: [{to: %g m, elastic_modulus: %g GPa, inertia: %.10g mm4}, {elastic_modulus: %g GPa, "
           "inertia: %.10g mm4}]\n      loads: [",
           b->stiffer_from, b->moduli[0] / 1e9, inertia, b->moduli[1] / 1e9, inertia);
    for (int k = 0; k < b->n_loads; k++) {
        const struct load *l = &b->loads[k];
        if (l->to > 0)
            printf("%s{from: %g m, to: %g m, start: %g N/m, end: %g N/m}", k ? ", " : "", l->from, l->to, l->start,
                   l->end);
        else printf("%s{at: %g m, force: %g N}", k ? ", " : "", l->from, l->force);
    }
    printf("]\n      at: [");
    for (int k = 0; k < PLACES; k++) printf("%s%g m", k ? ", " : "", b->places[k]);
    printf("]\n");
}

/* 0.05 %: shear, and the corner nodes' forces in place of the spread load. */
static int read_case(const struct odd_beam *b, const char *path, const char *version)
{
    static struct results r;
    double reactions[SUPPORTS], forces[MOST] = {0}, size = 0;
    if (!read_results(&r, path)) {
        fprintf(stderr, "beam: %s: no results\n", path);
        return 1;
    }
    printf("  - id: beam-fem-%s\n    kind: beam\n    source: \"CalculiX %s, B32 elements of %g mm: %s\"\n    basis: "
           "fem\n",
           b->name, version, STEP * 1000, b->about);
    print_input(b);
    printf("    expect:\n");
    gather(forces, b);
    for (int k = 0; k < b->n_supports; k++) {
        const int corner = (int)lround(b->supports[k] / STEP);
        reactions[k] = forces[corner] - r.reaction[node_at(b, corner, false)];
        size = fmax(size, fabs(reactions[k]));
    }
    for (int k = 0; k < b->n_supports; k++)
        printf("      reactions_n.%d: {value: %.5e N, tolerance: %.2g N}\n", k, reactions[k], 1e-4 * size);
    size = 0;
    for (int k = 0; k < PLACES; k++)
        size = fmax(size, fabs(r.deflection[node_at(b, (int)lround(b->places[k] / STEP), false)]));
    for (int k = 0; k < PLACES; k++) {
        printf("      deflections_m.%d: {value: %.5e m, tolerance: %.2g m}\n", k,
               r.deflection[node_at(b, (int)lround(b->places[k] / STEP), false)], 5e-4 * size);
        printf("      moments_nm.%d: {value: %.5e N-m, tolerance: 0.001 N-m}\n", k,
               moment_at(b, reactions, b->places[k]));
    }
    return 0;
}

int main(int argc, char **argv)
{
    for (size_t i = 0; argc > 2 && i < sizeof BEAMS / sizeof *BEAMS; i++) {
        if (strcmp(argv[2], BEAMS[i].name) != 0) continue;
        if (strcmp(argv[1], "write") == 0) return write_input(&BEAMS[i]);
        if (argc > 4) return read_case(&BEAMS[i], argv[3], argv[4]);
    }
    fprintf(stderr, "usage: beam write CASE | beam read CASE RESULTS VERSION; cases: spliced, overhang\n");
    return 2;
}
