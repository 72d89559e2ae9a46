/* Input of CalculiX (a general-purpose finite-element program, Debian's calculix-ccx) for one plate, and its results as
 * a reference case; tests/fem/run.sh calls both.
 *
 *   deck write ASPECT Q_STAR THICKNESS MESH         prints the input
 *   deck read ASPECT Q_STAR THICKNESS MESH RESULTS  prints the reference case from the .frd file
 *
 * A quarter of the plate, its middle at the origin, x along the long side, z with the pressure; short side 1 m, so that
 * THICKNESS is t/b. MESH x MESH quadratic shells with reduced integration, in cosine steps: the smallest, beside the
 * supported edges, is 0.6/MESH^2 of the short side.
 *
 * What the program makes of it, and what that asks for:
 * - A shell becomes a layer of solids, with nodes on both faces and, under the shell's corners, in the middle. w = 0 at
 *   a shell's node holds the middle, or the mean of both faces: the edge still turns, both ways (soft support).
 * - On the lines of symmetry the rotation is held too, else the faces would slide past each other there.
 * - Stresses come from the solids (OUTPUT=3D); those of the shells are means through the thickness.
 * - With NLGEOM the pressure follows the surface as it turns.
 * - Equilibrium is asked for to 1e-6: the default, 0.5 % of the mean force, is the size of what is compared. */
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double ELASTIC_MODULUS = 71.7e9, POISSONS_RATIO = 0.22, SHORT_SIDE = 1;

struct plate {
    double aspect, q_star, thickness;
    int mesh; /* shells each way on the quarter */
};

static double area_of(const struct plate *p) { return SHORT_SIDE * SHORT_SIDE * p->aspect; }

static double pressure_of(const struct plate *p)
{
    return p->q_star * ELASTIC_MODULUS * pow(p->thickness, 4) / pow(area_of(p), 2);
}

/* The input -----------------------------------------------------------------------------------------------------------
 */

/* Of line i out of 0..2 MESH; the odd ones lie halfway between their neighbors. */
static double place(const struct plate *p, int i, double half_side)
{
    if (i % 2) return (place(p, i - 1, half_side) + place(p, i + 1, half_side)) / 2;
    return half_side * sin(acos(-1.0) / 4 * i / p->mesh);
}

static int node_at(const struct plate *p, int i, int k) { return k * (2 * p->mesh + 1) + i + 1; }

static void write_nodes(const struct plate *p)
{
    const double half[2] = {SHORT_SIDE * p->aspect / 2, SHORT_SIDE / 2};
    printf("*NODE, NSET=ALL\n");
    for (int k = 0; k <= 2 * p->mesh; k++)
        for (int i = 0; i <= 2 * p->mesh; i++)
            if (i % 2 == 0 || k % 2 == 0)
                printf("%d, %.10g, %.10g, 0\n", node_at(p, i, k), place(p, i, half[0]), place(p, k, half[1]));
}

static void write_shells(const struct plate *p)
{
    static const int corners_then_sides[8][2] = {{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}};
    printf("*ELEMENT, TYPE=S8R, ELSET=PLATE\n");
    for (int k = 0; k < p->mesh; k++)
        for (int i = 0; i < p->mesh; i++) {
            printf("%d", k * p->mesh + i + 1);
            for (int c = 0; c < 8; c++)
                printf(", %d", node_at(p, 2 * i + corners_then_sides[c][0], 2 * k + corners_then_sides[c][1]));
            printf("\n");
        }
}

/* One degree of freedom on the line of nodes i = at or, upright false, k = at. */
static void hold(const struct plate *p, bool upright, int at, int freedom)
{
    for (int i = 0; i <= 2 * p->mesh; i++)
        printf("%d, %d, %d\n", upright ? node_at(p, at, i) : node_at(p, i, at), freedom, freedom);
}

static void write_supports(const struct plate *p)
{
    printf("*BOUNDARY\n");
    hold(p, true, 0, 1);
    hold(p, true, 0, 5);
    hold(p, false, 0, 2);
    hold(p, false, 0, 4);
    hold(p, true, 2 * p->mesh, 3);
    hold(p, false, 2 * p->mesh, 3);
}

/* The first increment is one that converges in a few steps from rest; the program lengthens the others itself. */
static void write_step(const struct plate *p)
{
    printf("*STEP, NLGEOM, INC=1000\n*STATIC\n%.6g, 1, 1e-6, 0.3\n", fmin(1, 16 / p->q_star));
    printf("*CONTROLS, PARAMETERS=FIELD\n1e-6, 1e-6\n");
    printf("*DLOAD\nPLATE, P, %.10g\n", pressure_of(p));
    printf("*NODE FILE, OUTPUT=3D, FREQUENCY=1000\nU\n*EL FILE, OUTPUT=3D, FREQUENCY=1000\nS\n*END STEP\n");
}

static int write_input(const struct plate *p)
{
    write_nodes(p);
    write_shells(p);
    printf("*MATERIAL, NAME=GLASS\n*ELASTIC\n%.10g, %.10g\n", ELASTIC_MODULUS, POISSONS_RATIO);
    printf("*SHELL SECTION, ELSET=PLATE, MATERIAL=GLASS\n%.10g\n", p->thickness);
    write_supports(p);
    write_step(p);
    return 0;
}

/* The results ---------------------------------------------------------------------------------------------------------
 */

enum block { NONE, PLACES, DISPLACEMENTS, STRESSES };

/* A node of the solids. */
struct node {
    double place[3], displacement[3];
    double stress[6]; /* xx yy zz xy yz zx */
};

struct results {
    struct node *nodes; /* by the program's numbers */
    size_t n;
    char version[32];
    double load; /* reached, of the whole */
};

static struct node *node_of(struct results *r, size_t id)
{
    if (id >= r->n) {
        const size_t n = 2 * id + 1;
        struct node *nodes = realloc(r->nodes, n * sizeof *nodes);
        if (!nodes) exit(3);
        for (size_t i = r->n; i < n; i++) nodes[i] = (struct node){.place = {NAN, NAN, NAN}};
        r->nodes = nodes;
        r->n = n;
    }
    return &r->nodes[id];
}

static double *values_of(struct node *node, enum block block)
{
    if (block == PLACES) return node->place;
    return block == DISPLACEMENTS ? node->displacement : node->stress;
}

/* " -1", the node's number to column 13, then values of twelve columns without a gap. */
static void take_values(struct results *r, const char *line, enum block block)
{
    char field[13] = "";
    memcpy(field, line + 3, 10);
    double *values = values_of(node_of(r, strtoul(field, NULL, 10)), block);
    const size_t length = strlen(line);
    for (size_t i = 0; i < (block == STRESSES ? 6 : 3) && 13 + 12 * (i + 1) <= length; i++) {
        memcpy(field, line + 13 + 12 * i, 12);
        values[i] = strtod(field, NULL);
    }
}

static bool starts(const char *line, const char *with) { return strncmp(line, with, strlen(with)) == 0; }

static bool read_results(struct results *r, const char *path)
{
    char line[256];
    enum block block = NONE;
    FILE *file = fopen(path, "r");
    if (!file) return false;
    while (fgets(line, sizeof line, file)) {
        if (starts(line, "    1UVERSION")) sscanf(line, " 1UVERSION Version %31s", r->version);
        else if (starts(line, "  100CL") && strlen(line) > 12) r->load = strtod(line + 12, NULL);
        else if (starts(line, "    2C")) block = PLACES;
        else if (starts(line, " -4  DISP ")) block = DISPLACEMENTS;
        else if (starts(line, " -4  STRESS ")) block = STRESSES;
        else if (starts(line, " -3") || starts(line, " -4")) block = NONE;
        else if (starts(line, " -1") && block && strlen(line) > 13) take_values(r, line, block);
    }
    return fclose(file) == 0 && r->version[0] && fabs(r->load - 1) < 1e-9;
}

/* Largest eigenvalue of the symmetric stress. */
static double principal(const double s[6])
{
    const double mean = (s[0] + s[1] + s[2]) / 3, x = s[0] - mean, y = s[1] - mean, z = s[2] - mean;
    const double square = (x * x + y * y + z * z) / 2 + s[3] * s[3] + s[4] * s[4] + s[5] * s[5];
    const double cube = x * y * z + 2 * s[3] * s[4] * s[5] - x * s[4] * s[4] - y * s[5] * s[5] - z * s[3] * s[3];
    if (!(square > 0)) return mean;
    const double cosine = cube / 2 * pow(3 / square, 1.5);
    return mean + 2 * sqrt(square / 3) * cos(acos(fmax(-1, fmin(1, cosine))) / 3);
}

/* On the line through the middle of the plate; NULL: none. */
static const struct node *find_at_center(const struct results *r, const struct plate *p, double z)
{
    for (size_t i = 0; i < r->n; i++) {
        const double *place = r->nodes[i].place;
        if (fabs(place[0]) + fabs(place[1]) + fabs(place[2] - z) < p->thickness / 100) return &r->nodes[i];
    }
    return NULL;
}

static double to_edge(const struct plate *p, const struct node *node)
{
    return fmin(SHORT_SIDE * p->aspect / 2 - node->place[0], SHORT_SIDE / 2 - node->place[1]);
}

/* On the face away from the pressure, no nearer to the edges than the margin. */
static const struct node *find_largest(const struct results *r, const struct plate *p, double margin)
{
    const struct node *best = NULL;
    for (size_t i = 0; i < r->n; i++) {
        const struct node *node = &r->nodes[i];
        if (!(fabs(node->place[2] - p->thickness / 2) < p->thickness / 100)) continue;
        if (to_edge(p, node) < margin - p->thickness / 100) continue;
        if (!best || principal(node->stress) > principal(best->stress)) best = node;
    }
    return best;
}

/* What is compared. */
struct answers {
    const struct node *middle, *face; /* at the center: mid-thickness, and away from the pressure */
    const struct node *largest;       /* principal stress */
    const struct node *inside;        /* largest two thicknesses or more from the edges */
};

static bool find_answers(struct answers *a, const struct results *r, const struct plate *p)
{
    a->middle = find_at_center(r, p, 0);
    a->face = find_at_center(r, p, p->thickness / 2);
    a->largest = find_largest(r, p, 0);
    a->inside = find_largest(r, p, 2 * p->thickness);
    return a->middle && a->face && a->largest && a->inside;
}

/* The smallest shell, over the thickness. */
static double resolution(const struct plate *p)
{
    const int last = 2 * p->mesh;
    return (place(p, last, SHORT_SIDE / 2) - place(p, last - 2, SHORT_SIDE / 2)) / p->thickness;
}

/* "plate-fem-1p6-800-0p002-24": no point in a name. */
static void print_head(const struct plate *p, const struct results *r, double deflection, const char *what,
                       const char *of)
{
    char id[64];
    snprintf(id, sizeof id, "plate-fem-%g-%g-%g-%d%s", p->aspect, p->q_star, p->thickness, p->mesh, what);
    for (char *at = id; *at; at++)
        if (*at == '.') *at = 'p';
    printf("  - id: %s\n    kind: plate\n", id);
    printf("    source: \"CalculiX %s, a/b %g, q* %g: %d x %d shells on a quarter, t/b %g, w/b %.2g%s\"\n", r->version,
           p->aspect, p->q_star, p->mesh, p->mesh, p->thickness / SHORT_SIDE, deflection / SHORT_SIDE, of);
    printf("    basis: fem\n    in: {width: %g m, height: %g m, thickness: %g m, pressure: %.10g Pa, elastic_modulus: "
           "%g Pa, poissons_ratio: %g, method: direct}\n    expect:\n",
           SHORT_SIDE * p->aspect, SHORT_SIDE, p->thickness, pressure_of(p), ELASTIC_MODULUS, POISSONS_RATIO);
}

static void print_largest(const struct plate *p, const struct node *node, double tolerance)
{
    printf("      stress_max_pa: {value: %.5e Pa, tolerance: %.2g %%} # at %.3f and %.3f of the half sides\n\n",
           principal(node->stress), tolerance, node->place[0] / (SHORT_SIDE * p->aspect / 2),
           node->place[1] / (SHORT_SIDE / 2));
}

/* Percent. 0.5; the plate equations take slopes as small, and from w/b = 0.02 that shows. In a strip that bends to a
 * cylinder the moment in the middle is q (c^2 - w^2)/2, where the pressure follows the surface and the drawn-in half
 * span c is b/2 - 1.23 w^2/b: 9 (w/b)^2 below that of a flat one. */
static double center_tolerance(double deflection)
{
    const double slenderness = deflection / SHORT_SIDE;
    return slenderness > 0.02 ? 0.5 + 900 * slenderness * slenderness : 0.5;
}

/* Percent. The stress of a soft support changes within one thickness of the edge, by much beside a corner, and plate
 * theory without shear has no such layer: the largest stress of all is held no closer than the mesh resolves that
 * (measured: up to 13 % where the smallest shell is one thickness wide). */
static double layer_tolerance(const struct plate *p) { return 13 * resolution(p); }

/* The largest stress beyond the layer is held to 1 % where the mesh is fine. */
static void print_cases(const struct plate *p, const struct results *r, const struct answers *a)
{
    const double deflection = a->middle->displacement[2];
    print_head(p, r, deflection, "", "");
    printf("      deflection_m: {value: %.5e m, tolerance: %.2g %%}\n", deflection, center_tolerance(deflection));
    printf("      stress_centre_pa: {value: %.5e Pa, tolerance: %.2g %%}\n", principal(a->face->stress),
           center_tolerance(deflection));
    print_largest(p, a->largest, layer_tolerance(p));
    if (p->mesh < 32) return;
    print_head(p, r, deflection, "-inside", "; two thicknesses or more from the edges");
    print_largest(p, a->inside, 1);
}

static int read_case(const struct plate *p, const char *path)
{
    struct results r = {0};
    struct answers answers;
    const bool good = read_results(&r, path) && find_answers(&answers, &r, p);
    if (good) print_cases(p, &r, &answers);
    else fprintf(stderr, "deck: %s: no results at the full load\n", path);
    free(r.nodes);
    return good ? 0 : 1;
}

int main(int argc, char **argv)
{
    if (argc < 6) {
        fprintf(stderr,
                "usage: deck write ASPECT Q_STAR THICKNESS MESH | deck read ASPECT Q_STAR THICKNESS MESH RESULTS\n");
        return 2;
    }
    const struct plate p = {strtod(argv[2], NULL), strtod(argv[3], NULL), strtod(argv[4], NULL),
                            (int)strtol(argv[5], NULL, 10)};
    if (strcmp(argv[1], "write") == 0) return write_input(&p);
    return argc > 6 ? read_case(&p, argv[6]) : 2;
}
