#include "cli/host.h"

#include "galeward/text.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static void *allocate(void *user, size_t bytes)
{
    (void)user;
    return malloc(bytes);
}

static void release(void *user, void *memory)
{
    (void)user;
    free(memory);
}

/* Names that lead nowhere are the caller's fault, all else is the system's. */
static struct gw_read refused(int error)
{
    bool no_file = error == ENOENT || error == ENOTDIR || error == ELOOP || error == ENAMETOOLONG;
    return (struct gw_read){no_file ? GW_READ_NO_FILE : GW_READ_REFUSED, strerror(error)};
}

/* By the file names of its folder alone: other capitals, or one letter off. */
static bool is_near(const char *name, const char *wanted)
{
    char a[NAME_MAX + 1], b[NAME_MAX + 1];
    const char *const words[] = {name, wanted};
    char *const small[] = {a, b};
    for (size_t k = 0; k < 2; k++) {
        size_t i = 0;
        for (; words[k][i] && i < NAME_MAX; i++)
            small[k][i] = (char)(words[k][i] >= 'A' && words[k][i] <= 'Z' ? words[k][i] + ('a' - 'A') : words[k][i]);
        small[k][i] = '\0';
    }
    return gw_edit_distance(a, b, 1) <= 1;
}

static struct gw_read no_such_file(const char *path)
{
    static char why[NAME_MAX + 80];
    const char *slash = strrchr(path, '/'), *name = slash ? slash + 1 : path;
    char folder[PATH_MAX] = ".";
    struct gw_read none = refused(ENOENT);
    if (slash && (size_t)(slash - path) + 2 < sizeof folder)
        snprintf(folder, sizeof folder, "%.*s", (int)(slash - path) + 1, path);
    DIR *listing = opendir(folder);
    for (struct dirent *e; listing && (e = readdir(listing)) != NULL;) {
        if (e->d_name[0] == '.' || !is_near(e->d_name, name)) continue;
        snprintf(why, sizeof why, "%s; did you mean '%s'?", none.why, e->d_name);
        none.why = why;
        break;
    }
    if (listing) closedir(listing);
    return none;
}

static struct gw_read hand_over(int file, gw_take *take, void *sink)
{
    char chunk[1 << 15];
    for (;;) {
        ssize_t n = read(file, chunk, sizeof chunk);
        if (n < 0 && errno == EINTR) continue;
        if (n < 0) return refused(errno);
        if (n == 0 || !take(sink, chunk, (size_t)n)) return (struct gw_read){GW_READ_WHOLE, NULL};
    }
}

/* NULL: a regular file. */
static const char *other_kind(mode_t mode)
{
    if (S_ISREG(mode)) return NULL;
    if (S_ISDIR(mode)) return "it is a directory";
    if (S_ISFIFO(mode)) return "it is a named pipe; write '-' to read standard input";
    if (S_ISSOCK(mode)) return "it is a socket";
    return "it is a device";
}

static struct gw_read read_file(void *user, const char *path, gw_take *take, void *sink)
{
    struct stat info;
    (void)user;
    if (strcmp(path, "-") == 0) return hand_over(STDIN_FILENO, take, sink);
    /* Without O_NONBLOCK opening a pipe would wait for its writer. */
    int file = open(path, O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC);
    if (file < 0) return errno == ENOENT ? no_such_file(path) : refused(errno);
    struct gw_read result;
    if (fstat(file, &info) != 0) result = refused(errno);
    else if (other_kind(info.st_mode)) result = (struct gw_read){GW_READ_NO_FILE, other_kind(info.st_mode)};
    else result = hand_over(file, take, sink);
    close(file);
    return result;
}

const struct gw_host *gw_system_host(void)
{
    static const struct gw_host host = {.allocate = allocate, .release = release, .read = read_file};
    return &host;
}
