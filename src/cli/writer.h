/* Where results go: standard output, or the file of -o, whole or not at all. */
#ifndef CLI_WRITER_H
#define CLI_WRITER_H

#include "galeward/arena.h"

#include <stdio.h>

/* A regular file is written as a fresh temporary beside it, which takes its place when all of it is on the disk: with
 * the mode of the earlier file, and behind the symbolic link that leads there. Devices and pipes are written in place.
 * What the system refuses is said on standard error. */
struct writer {
    FILE *file;
    const char *path;      /* as given; NULL: standard output */
    const char *target;    /* behind symbolic links */
    const char *temporary; /* NULL: written in place */
    int error;             /* errno of the first failure */
};

/* False after a complaint. One writer at a time; names live in the arena. */
bool writer_open(struct writer *w, struct gw_arena *arena, const char *path);
/* False once anything failed; writer_close says what. */
bool writer_add(struct writer *w, const char *bytes, size_t n);
bool writer_flush(struct writer *w);
/* `code` of the run so far: beyond EXIT_UNSHOWN the file is given up. Returns it, or EXIT_OURS after a complaint. */
int writer_close(struct writer *w, int code);
/* Removes the temporary of a writer that will not be closed anymore. */
void writer_abandon(void);
/* Before anything is opened: a limit of file sizes or a reader that went away is an error of a write, not the end of
 * the process, and descriptors 0 to 2 are taken. */
void writer_start(void);

#endif
