/* Answers to calls that are nearly right. All of them are refused: each returns EXIT_CALL after a complaint. */
#ifndef NEAR_MISS_H
#define NEAR_MISS_H

#include "cli.h"

/* `next`: the word after it, which may be its value, or NULL. */
int unknown_option(struct cli *cli, const struct command *command, const char *word, const char *next);
/* A word such as "units=us" that was to be an option; EXIT_PASS where it is none. */
int dashless_option(struct cli *cli, const struct command *command, const char *word);
int unknown_command(struct cli *cli, const char *name, const char *const *names, size_t n);
/* "; did you mean 'us'?", or "". `names` end with NULL. */
const char *meant_units(struct cli *cli, const char *value);
const char *meant_format(struct cli *cli, const char *value, const char *const *names);

/* options.c: what the options are. False, NULL: none. */
bool option_bit_of(const char *name, unsigned *bit, bool *wants_value);
const char *option_name(size_t i);

#endif
