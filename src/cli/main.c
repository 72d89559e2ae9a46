/* The command table, and the way into it. */
#include "cli.h"
#include "host.h"
#include "near_miss.h"
#include "writer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct command COMMANDS[] = {
    {"new", "print a commented starter file", "new [project|system|requirements|submittal|readings] [-o FILE]",
     "Prints a small project file, a system file, a requirement set, a submittal or a sheet of readings, to be edited. "
     "It\n"
     "checks clean as it stands; set, submittal and readings are of the starter project.\n\n"
     "  galeward new -o clinic.yaml\n  galeward new system -o offer.yaml\n  galeward new requirements -o set.yaml\n"
     "  galeward new submittal -o submittal.yaml\n  galeward new readings -o readings.csv\n",
     0, 0, cmd_new, 1, NULL},
    {"demand", "what the site asks of every element", "demand PROJECT [options]",
     "By wall, height and zone the pressures; glass by size; what framing and anchors must bring. --all: every group\n"
     "of like elements with its count.\n"
     "PROJECT is a file, or - for standard input. --against compares with a result that 'demand' wrote as JSON: which\n"
     "files changed, which elements are new or gone, which values differ by more than 1e-9. Exit code 1 if any "
     "does.\n\n"
     "  galeward demand clinic.yaml\n  galeward demand clinic.yaml -o elements.csv\n"
     "  galeward demand clinic.yaml -o bid.json\n  galeward demand clinic.yaml --against bid.json\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_AGAINST | TAKES_REQUIREMENTS | TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FIGURE, cmd_demand, 1, NULL},
    {"check", "whether each candidate system answers it", "check PROJECT [options]",
     "A verdict on each candidate of the project: pass, fail, not shown or not required. Exit code 0 when all pass.\n"
     "--vary computes every combination and prints a matrix; a key may be given in full (site.exposure) or alone\n"
     "where it occurs once; in a list by an item's name or number (walls.east.top, walls.1.floors.2), by a key for "
     "all\n"
     "of them (walls.top). A comma parts values, but not within [ ], { } or quotes. --sensitivity moves each recalled "
     "number behind a verdict by 10 % either way, one at a\n"
     "time, computes everything anew and lists the verdicts that flip. --qualifications says what a price assumes,\n"
     "as numbered sentences that go into a bid. --against compares with a result that 'check' wrote as JSON: which\n"
     "files changed, which verdicts, which values; exit code 1 if anything differs. --plan judges each candidate with\n"
     "what a plan of 'select' chooses place by place; --with takes an option, or an alternative of a lite, in every\n"
     "place.\n\n"
     "  galeward check clinic.yaml\n  galeward check clinic.yaml --vary exposure=B,C --vary "
     "edition=asce7-16,asce7-22\n"
     "  galeward check clinic.yaml --with \"steel insert\" --with vision=\"thicker outer pane\"\n"
     "  galeward check clinic.yaml --qualifications -o qualifications.md\n"
     "  galeward check clinic.yaml -o bid.json\n  galeward check clinic.yaml --against bid.json\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_VARY | TAKES_PAGE | TAKES_SENSITIVITY | TAKES_QUALIFICATIONS |
         TAKES_AGAINST | TAKES_PLAN | TAKES_REQUIREMENTS | TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FIGURE, cmd_check, 1, NULL},
    {"select", "the cheapest plan of each candidate that passes everywhere", "select PROJECT [options]",
     "Of the options of each candidate and the alternatives of the lites it takes, place by place (a wall, its edge or "
     "its\n"
     "middle, below or above the roof line), those with which every check passes at the least cost; what the same "
     "choice "
     "in\n"
     "every place would cost; what is missing, what blocks it. Without any cost the least mass. CSV has a row a place. "
     "Exit\n"
     "code 0 when every candidate has a plan that passes.\n\n"
     "  galeward select clinic.yaml\n  galeward select clinic.yaml -o bid.csv\n  galeward select clinic.yaml -o "
     "plan.yaml\n"
     "  galeward check clinic.yaml --plan plan.yaml\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FILE | GW_HAS_FIGURE, cmd_select, 1, NULL},
    {"specify", "the performance requirements, as a specification has them", "specify PROJECT [options]",
     "Pressures by wall, zone and part, deflection, air, water, proof, drift, debris, blast and other ratings, each "
     "with\n"
     "its test, evidence and what to submit; the mock-up's tests in their order; what is still open. -o FILE.yaml\n"
     "writes the requirement set, by which 'check PROJECT --requirements FILE.yaml' judges instead of by the site.\n\n"
     "  galeward specify clinic.yaml -o performance.md\n  galeward specify clinic.yaml -o set.yaml\n"
     "  galeward check clinic.yaml --requirements set.yaml\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FILE | GW_HAS_FIGURE, cmd_specify, 1, NULL},
    {"review", "a submittal against the project: numbered comments", "review PROJECT SUBMITTAL [options]",
     "Each claim of the submittal against what is asked, the accepted system, the reports behind it, the glass and "
     "the\n"
     "dimensions of the drawings: what was submitted, what is needed, why, what the checks come to with it, and how "
     "the\n"
     "trade answers. --previous RESULT keeps the numbers of an earlier review: comments are new, open or closed. The\n"
     "project's 'decisions' are the reviewer's own. Exit code 1 if any comment is above a remark.\n\n"
     "  galeward review clinic.yaml submittal.yaml\n  galeward review clinic.yaml submittal.yaml --requirements "
     "set.yaml -o review.json\n"
     "  galeward review clinic.yaml submittal-r2.yaml --previous review.json -o review.sarif\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_PLAN | TAKES_REQUIREMENTS | TAKES_PREVIOUS |
         TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_LOG | GW_HAS_FIGURE, cmd_review, 2, NULL},
    {"explain", "one element's pressure, step by step", "explain PROJECT [ELEMENT] [options]",
     "Prints the computation as an engineer writes it, with clauses. Without ELEMENT it lists the elements.\n"
     "ELEMENT is one of them, the mark of an opening, or WALL:COLUMN:STORY; after these two :KIND, else the lite.\n"
     "--all prints every step, not only those that lead to a result.\n\n"
     "  galeward explain clinic.yaml east/lite/1\n  galeward explain clinic.yaml east:3:2:screw\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_PLAN | TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FIGURE, cmd_explain, 2, NULL},
    {"inspect", "what to measure on the wall, and what readings leave of it",
     "inspect PROJECT [READINGS.csv] [options]",
     "Without readings, a sheet: by wall and stage what to measure, to what limit and whose, how many, why, and what "
     "to "
     "do\n"
     "when one is outside. --format csv writes the places to be filled in. With readings, a verdict on each row: "
     "within; "
     "\n"
     "outside, holds (how much is left); not met; unknown (what to measure or to ask); then what they say of the "
     "places\n"
     "that were not looked at. Exit code 1 unless all are within, 2 with wrong rows. CSV has a row a reading.\n\n"
     "  galeward inspect clinic.yaml\n  galeward inspect clinic.yaml -o readings.csv\n"
     "  galeward inspect clinic.yaml readings.csv --system systems/heron.yaml\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_SET | TAKES_PAGE | TAKES_PLAN | TAKES_REQUIREMENTS | TAKES_SYSTEM |
         TAKES_DRAWING,
     GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FIGURE, cmd_inspect, 2, NULL},
    {"calc", "one case, or a stream of cases, through an engine", "calc KIND [key=value ...] [options]",
     "Without key=value, cases are read from standard input: one JSON object a line, or YAML documents separated by\n"
     "lines of ---. One JSON object a line comes back, in order, SI to the last digit. 'calc KIND --help' lists the "
     "keys.\n"
     "--format text or md gives results as people read them, in the units of the case (US where it names none) or of\n"
     "--units, rounded; --format csv a line a case. With --units a case of key=value answers as text.\n"
     "-o FILE.svg draws one case, of the kinds that --list marks.\n\n"
     "  galeward calc --list\n  galeward calc wind < cases.jsonl\n  galeward calc wind -o cases.csv < cases.jsonl\n"
     "  galeward calc cycles pressure_positive='40 psf' pressure_negative='55 psf' --units us\n"
     "  galeward calc plate width='48 in' height='72 in' thickness='5.56 mm' pressure='40 psf' -o plate.svg\n",
     TAKES_LIST | TAKES_UNITS | TAKES_FORMAT, GW_HAS_DATA | GW_HAS_PAGE | GW_HAS_FIGURE, cmd_calc, ANY_NUMBER, "json"},
    {"tables", "the numbers that come from standards, with their sources", "tables [NAME] [options]",
     "Lists the tables, or prints one, in the units of its source unless --units is given.\n\n"
     "  galeward tables\n  galeward tables wind_terrain\n",
     TAKES_FORMAT | TAKES_UNITS | TAKES_LIST, GW_HAS_DATA | GW_HAS_PAGE, cmd_tables, 1, NULL},
    {"schema", "JSON Schema or field reference of the files",
     "schema "
     "[project|system|requirements|submittal|readings|results|explanation|selections|changes|specification|review|"
     "inspection|inspection-sheet|calc-KIND] "
     "[options]",
     "JSON Schema (draft 2020-12) for editors; with --format md the field reference.\n\n"
     "  galeward schema project -o project.schema.json\n",
     TAKES_FORMAT, GW_HAS_SCHEMA, cmd_schema, 1, NULL},
};

const struct command *command_list(size_t *n)
{
    *n = sizeof COMMANDS / sizeof *COMMANDS;
    return COMMANDS;
}

static void overview(struct gw_text *out)
{
    size_t n;
    const struct command *commands = command_list(&n);
    gw_text_add(out, "galeward: wind pressures on curtain walls, and whether a system on offer answers them\n\n"
                     "usage: galeward COMMAND [options]\n\n");
    for (size_t i = 0; i < n; i++) {
        gw_text_addf(out, "  %s", commands[i].name);
        gw_text_repeat(out, ' ', 10 - strlen(commands[i].name));
        gw_text_addf(out, "%s\n", commands[i].summary);
    }
    gw_text_add(out, "\n'galeward COMMAND --help' says more, with an example; 'galeward --version' the version.\n"
                     "Begin with: galeward new -o project.yaml, then galeward demand project.yaml\n");
}

static int command_help(struct cli *cli, const struct command *command)
{
    struct gw_text text;
    gw_text_init(&text, &cli->arena);
    gw_text_addf(&text, "usage: galeward %s\n\n%s\n", command->usage, command->help);
    list_options(&text, command);
    return deliver(cli, &text);
}

static const struct command *find_command(const char *name)
{
    for (size_t i = 0; i < sizeof COMMANDS / sizeof *COMMANDS; i++)
        if (strcmp(COMMANDS[i].name, name) == 0) return &COMMANDS[i];
    return NULL;
}

static int no_such_command(struct cli *cli, const char *name)
{
    const char *names[sizeof COMMANDS / sizeof *COMMANDS];
    size_t n = sizeof names / sizeof *names;
    for (size_t i = 0; i < n; i++) names[i] = COMMANDS[i].name;
    return unknown_command(cli, name, names, n);
}

/* --help [COMMAND], --version. */
static int say_what_it_is(struct cli *cli, bool help, int argc, char **argv)
{
    struct gw_text text;
    const int most = help ? 3 : 2;
    if (argc > most)
        return complain("'%s' is one argument too many: galeward %s%s", argv[most], argv[1], help ? " [COMMAND]" : "");
    if (argc == 3) {
        const struct command *command = find_command(argv[2]);
        return command ? command_help(cli, command) : no_such_command(cli, argv[2]);
    }
    gw_text_init(&text, &cli->arena);
    if (help) overview(&text);
    else gw_text_add(&text, "galeward " GW_VERSION "\n");
    return deliver(cli, &text);
}

static int dispatch(struct cli *cli, int argc, char **argv)
{
    struct gw_text text;
    gw_text_init(&text, &cli->arena);
    if (argc < 2) {
        overview(&text);
        fputs(text.at, stderr);
        return EXIT_CALL;
    }
    const char *name = argv[1];
    bool help = strcmp(name, "--help") == 0 || strcmp(name, "-h") == 0 || strcmp(name, "help") == 0;
    if (help || strcmp(name, "--version") == 0) return say_what_it_is(cli, help, argc, argv);
    const struct command *command = find_command(name);
    if (!command) return no_such_command(cli, name);
    if (!read_options(cli, command, argc - 2, argv + 2)) return EXIT_CALL;
    bool own_help = command->run == cmd_calc && cli->options.n_arguments;
    return cli->options.help && !own_help ? command_help(cli, command) : command->run(cli);
}

struct call {
    struct cli cli;
    int argc, code;
    char **argv;
};

static void answer(void *argument)
{
    struct call *call = argument;
    call->code = dispatch(&call->cli, call->argc, call->argv);
}

static void guard_scratch(void *argument)
{
    struct call *call = argument;
    if (!gw_guard(&call->cli.scratch, answer, call)) gw_arena_fail(&call->cli.arena);
}

int main(int argc, char **argv)
{
    struct call call = {.argc = argc, .argv = argv};
    writer_start();
    gw_arena_init(&call.cli.arena, gw_system_host());
    gw_arena_init(&call.cli.scratch, gw_system_host());
    if (!gw_guard(&call.cli.arena, guard_scratch, &call)) call.code = refuse("out of memory");
    writer_abandon();
    gw_arena_release(&call.cli.scratch);
    gw_arena_release(&call.cli.arena);
    return call.code;
}
