/* The command-line program: one file a command, each thin. */
#ifndef CLI_H
#define CLI_H

#include "galeward/calc.h"
#include "galeward/report.h"

enum { EXIT_PASS = 0, EXIT_UNSHOWN = 1, EXIT_CALL = 2, EXIT_OURS = 3 };

struct options {
    const struct gw_format *format; /* given, or by the file's ending, or the first that the command can write */
    const char *against;            /* a result to compare with; NULL: none */
    const char *previous;           /* an earlier result of the same review; NULL: none */
    const char *requirements;       /* a set to judge by; NULL: the site */
    const char *system;             /* which candidate was hung; NULL: the project says, or the only one */
    const char *output;             /* file; NULL: standard output */
    bool format_said;               /* by --format or the ending */
    enum gw_units units;
    bool list, help, all, date, sources, sensitivity, qualifications;
    const char **vary; /* "key=a,b" */
    size_t n_vary;
    const char **set; /* "path=value" */
    size_t n_set;
    const char *drawing; /* name, or "list"; NULL: the first */
    const char *plan;    /* file; NULL: the project's own */
    const char **with;   /* "option", "lite=alternative" */
    size_t n_with;
    const char **arguments;
    size_t n_arguments;
};

struct cli {
    struct gw_arena arena;
    struct gw_arena scratch; /* of one case of many; empty between commands */
    struct options options;
    const struct command *command;
};

struct command {
    const char *name, *summary, *usage, *help;
    unsigned takes; /* options besides --help and -o, by enum option_bit */
    unsigned parts; /* of what it writes, by enum gw_part; 0: text that is no result */
    int (*run)(struct cli *cli);
    size_t most;        /* arguments */
    const char *format; /* where nothing names one; NULL: the first that it can write */
};
enum { ANY_NUMBER = 1 << 16 }; /* the command reads them itself */

enum option_bit {
    TAKES_FORMAT = 1,
    TAKES_UNITS = 2,
    TAKES_SET = 4,
    TAKES_VARY = 8,
    TAKES_LIST = 16,
    TAKES_SOURCES = 32,
    TAKES_SENSITIVITY = 64,
    TAKES_ALL = 128,
    TAKES_DATE = 256,
    TAKES_QUALIFICATIONS = 512,
    TAKES_AGAINST = 1024,
    TAKES_PLAN = 2048,
    TAKES_REQUIREMENTS = 4096,
    TAKES_DRAWING = 8192,
    TAKES_PREVIOUS = 16384,
    TAKES_SYSTEM = 32768,
    TAKES_PAGE = TAKES_ALL | TAKES_DATE | TAKES_SOURCES
};

/* options.c */
bool read_options(struct cli *cli, const struct command *command, int argc, char **argv);
void list_options(struct gw_text *out, const struct command *command);

/* main.c */
const struct command *command_list(size_t *n);

/* output.c */
/* To standard error: the call is wrong (returns EXIT_CALL), or the system refuses something (EXIT_OURS). */
int complain(const char *format, ...) __attribute__((format(printf, 1, 2)));
int refuse(const char *format, ...) __attribute__((format(printf, 1, 2)));
/* The nearest of `names`, or NULL; for "did you mean". */
const char *nearest_name(const char *name, const char *const *names, size_t n);
/* "; did you mean 'x'?" or "". */
const char *did_you_mean(struct cli *cli, const char *name, const char *const *names, size_t n);
/* The whole text to the file of -o, which is replaced whole or not at all, or to standard output. Returns an exit code.
 */
int deliver(struct cli *cli, const struct gw_text *text);
/* True after a complaint: the file of -o is one that was read, by whatever name. */
bool writes_over(const struct cli *cli, const char *read, const char *by);
/* project.c: of the project's files. */
bool writes_over_inputs(const struct cli *cli, const struct gw_model *model);
/* The result in the format that was asked for. */
int deliver_result(struct cli *cli, const struct gw_result *result);

/* project.c */
struct run {
    struct gw_arena *arena;
    struct gw_diags diags;
    struct gw_model model;
    struct gw_takeoff takeoff;
    struct gw_ask ask;
    struct gw_answer answer;
    struct gw_results results;
};
/* Loads, takes off and judges; says every diagnostic. EXIT_PASS, or the code to leave with. */
int run_project(struct run *run, struct cli *cli, bool judge);
/* Its parts: loads and takes off; then, of an answer, what is written. */
int open_project(struct run *run, struct cli *cli);
void write_up(struct run *run, struct cli *cli);
/* Of a project that was taken off: opens the ask, with what the project, --plan and --with choose. False after a
 * diagnostic. */
bool plan_project(struct run *run, const struct cli *cli);
/* Of a project that did not load: EXIT_OURS where the system would not read a file. */
int code_of(const struct gw_diags *diags);
void say_diags(struct gw_arena *arena, const struct gw_diags *diags);

/* settings.c */
/* Where a setting's key leads, which may be given in full or as a key that occurs once. False after a complaint. */
struct setting {
    const char *path, *place;     /* dotted; place: as the model takes it, "buildings.?.top" of a key alone */
    const struct gw_field *field; /* of a key alone */
};
bool find_setting(struct cli *cli, const char *key, struct setting *out);
/* That each key is set or varied once; false after a complaint. */
bool check_settings(struct cli *cli);
/* --set with its keys in full, and room for more; NULL after a complaint. */
const char **full_settings(struct cli *cli, size_t more);
/* The values of "key=a,b", for which there is room; false after a complaint. */
bool split_values(struct cli *cli, const char *text, const char **values, size_t *n);

int cmd_new(struct cli *cli);
int cmd_demand(struct cli *cli);
int cmd_check(struct cli *cli);
int cmd_select(struct cli *cli);
int cmd_specify(struct cli *cli);
int cmd_review(struct cli *cli);
int cmd_explain(struct cli *cli);
int cmd_inspect(struct cli *cli);
int cmd_calc(struct cli *cli);
int cmd_tables(struct cli *cli);
int cmd_schema(struct cli *cli);
/* against.c: '--against' of 'check' and 'demand' */
bool check_against(const struct cli *cli); /* false after a complaint */
int compare_against(struct cli *cli, const struct run *run, bool judged);
/* vary.c: 'check --vary' */
int vary_check(struct cli *cli);
/* draw.c: 'calc KIND -o FILE.svg' */
bool wants_drawing(const struct cli *cli);
int check_drawing(struct cli *cli, const struct gw_calc_kind *kind);
int draw_case(struct cli *cli, const struct gw_calc_kind *kind, const struct gw_node *node);
/* Of one case: what was wrong with it. EXIT_UNSHOWN. */
int refused_case(const struct gw_calc_kind *kind, const char *code, const char *key, const char *message);
/* show.c: results of 'calc' for people */
bool wants_json(const struct cli *cli);
/* Cases one after the other, all in the units that were asked for, else those of the first case, else US. */
struct show {
    const struct cli *cli;
    const struct gw_calc_kind *kind;
    enum gw_units shown;
    size_t n;
};
/* Of a case that could not be read (NULL) what `diags` say. False: the case has an error, which is shown in its place.
 */
bool show_case(struct show *show, struct gw_text *out, const struct gw_node *node, const struct gw_diags *diags);
/* The only case; its error is a complaint. */
int show_only(struct cli *cli, const struct gw_calc_kind *kind, const struct gw_node *node);

#endif
