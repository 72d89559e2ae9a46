/* What the library takes from the program that it runs in: memory, and files by name. It opens no file, prints nothing,
 * and never ends the process. */
#ifndef GALEWARD_HOST_H
#define GALEWARD_HOST_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* `why` is one short phrase, valid until the next read; NULL when whole. */
enum gw_read_status {
    GW_READ_WHOLE,
    GW_READ_NO_FILE, /* the name is wrong: nothing there, or a thing that is not read as a file */
    GW_READ_REFUSED  /* the system would not: no permission, an error of the device, no memory */
};
struct gw_read {
    enum gw_read_status status;
    const char *why;
};

/* Takes the next bytes of a file; false: no more are wanted, and the host stops there. Never jumps. */
typedef bool gw_take(void *sink, const char *bytes, size_t n);

struct gw_host {
    void *user; /* handed back in every call */
    /* As malloc and free. NULL: no memory left (see gw_guard). */
    void *(*allocate)(void *user, size_t bytes);
    void (*release)(void *user, void *memory);
    /* Hands the whole of the file to `take`, in any number of pieces. `path` is as the user or a project wrote it, "-"
     * is standard input. */
    struct gw_read (*read)(void *user, const char *path, gw_take *take, void *sink);
    /* Bytes that an arena asks for at a time; 0: 16 KiB at first, doubling up to 4 MiB. */
    size_t step;
};

#ifdef __cplusplus
}
#endif

#endif
