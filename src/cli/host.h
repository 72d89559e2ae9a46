/* The machine as the library's host: memory by malloc, files by POSIX. Of the program, of the table generator and of
 * the tests. */
#ifndef CLI_HOST_H
#define CLI_HOST_H

#include "galeward/host.h"

/* Reads regular files, and standard input whatever it is. A folder, a device, a pipe by name is no file: reading it
 * could wait forever, or never end. */
const struct gw_host *gw_system_host(void);

#endif
