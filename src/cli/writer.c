#include "writer.h"

#include "cli.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* For the signal handler, which can be handed nothing. */
static char unfinished[PATH_MAX];
static volatile sig_atomic_t is_unfinished;

void writer_abandon(void)
{
    if (is_unfinished) unlink(unfinished);
    is_unfinished = 0;
}

static void on_signal(int signal_number)
{
    writer_abandon();
    signal(signal_number, SIG_DFL);
    raise(signal_number);
}

static sigset_t ending_signals(void)
{
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    sigaddset(&set, SIGHUP);
    return set;
}

/* What the caller ignores (nohup) stays ignored. */
static void catch_signal(int signal_number)
{
    struct sigaction old, action = {.sa_handler = on_signal, .sa_mask = ending_signals()};
    if (sigaction(signal_number, NULL, &old) == 0 && old.sa_handler == SIG_DFL) sigaction(signal_number, &action, NULL);
}

void writer_start(void)
{
    /* A descriptor that was closed would go to the next file opened, and what is said there into it. Opened the wrong
     * way round it fails in use, as a closed one does. */
    for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++)
        if (fcntl(fd, F_GETFD) < 0 && open("/dev/null", fd == STDIN_FILENO ? O_WRONLY : O_RDONLY) < 0) return;
    signal(SIGXFSZ, SIG_IGN);
    signal(SIGPIPE, SIG_IGN);
    catch_signal(SIGINT);
    catch_signal(SIGTERM);
    catch_signal(SIGHUP);
}

static const char *beside(struct gw_arena *arena, const char *path, const char *name)
{
    const char *slash = strrchr(path, '/');
    if (name[0] == '/' || !slash) return name;
    return gw_format(arena, "%.*s/%s", (int)(slash - path), path, name);
}

/* Where the last component leads, also if nothing is there yet; NULL where links go round. */
static const char *follow_links(struct gw_arena *arena, const char *path)
{
    enum { MOST = 40 };
    for (int i = 0; i < MOST; i++) {
        char next[PATH_MAX];
        ssize_t n = readlink(path, next, sizeof next - 1);
        if (n < 0) return path;
        next[n] = '\0';
        path = beside(arena, path, gw_strdup(arena, next));
    }
    errno = ELOOP;
    return NULL;
}

static bool is_standard_output(const struct stat *info)
{
    struct stat out;
    return fstat(STDOUT_FILENO, &out) == 0 && out.st_dev == info->st_dev && out.st_ino == info->st_ino;
}

/* A file's mode: of the one that it replaces, else as the system would make it. */
static bool give_mode(int fd, const struct stat *earlier)
{
    mode_t mask = umask(0);
    umask(mask);
    if (!earlier) return fchmod(fd, 0666 & ~mask) == 0;
    /* Only root can keep another's ownership; who cannot owns the new file. */
    int kept = fchown(fd, earlier->st_uid, earlier->st_gid);
    return fchmod(fd, earlier->st_mode & (kept == 0 ? 07777 : 0777)) == 0;
}

static FILE *open_temporary(struct writer *w, struct gw_arena *arena, const struct stat *earlier)
{
    char *name = gw_strdup(arena, beside(arena, w->target, ".galeward-XXXXXX"));
    if (strlen(name) >= sizeof unfinished) {
        errno = ENAMETOOLONG;
        return NULL;
    }
    sigset_t ending = ending_signals(), before;
    sigprocmask(SIG_BLOCK, &ending, &before);
    int fd = mkstemp(name);
    if (fd >= 0) {
        memcpy(unfinished, name, strlen(name) + 1);
        is_unfinished = 1;
        w->temporary = name;
    }
    sigprocmask(SIG_SETMASK, &before, NULL);
    if (fd < 0) return NULL;
    FILE *file = give_mode(fd, earlier) ? fdopen(fd, "wb") : NULL;
    if (file) return file;
    int why = errno;
    close(fd);
    writer_abandon();
    errno = why;
    return NULL;
}

static FILE *open_in_place(const char *path)
{
    int fd = open(path, O_WRONLY | O_NOCTTY | O_CLOEXEC);
    FILE *file = fd < 0 ? NULL : fdopen(fd, "wb");
    if (fd >= 0 && !file) close(fd);
    return file;
}

static FILE *open_path(struct writer *w, struct gw_arena *arena)
{
    struct stat info;
    if (stat(w->path, &info) != 0) {
        w->target = errno == ENOENT ? follow_links(arena, w->path) : NULL;
        return w->target ? open_temporary(w, arena, NULL) : NULL;
    }
    if (is_standard_output(&info)) return stdout;
    if (!S_ISREG(info.st_mode)) return open_in_place(w->path);
    w->target = follow_links(arena, w->path);
    if (!w->target || access(w->target, W_OK) != 0) return NULL;
    return open_temporary(w, arena, &info);
}

static int complain_of(const struct writer *w, int error)
{
    if (w->path) return refuse("cannot write '%s': %s", w->path, strerror(error));
    if (error == EPIPE) return EXIT_OURS; /* the reader has seen enough */
    return refuse("cannot write to standard output: %s", strerror(error));
}

bool writer_open(struct writer *w, struct gw_arena *arena, const char *path)
{
    *w = (struct writer){.path = path};
    w->file = path ? open_path(w, arena) : stdout;
    if (!w->file) complain_of(w, errno);
    return w->file;
}

bool writer_add(struct writer *w, const char *bytes, size_t n)
{
    errno = 0;
    if (!w->error && fwrite(bytes, 1, n, w->file) != n) w->error = errno ? errno : EIO;
    return !w->error;
}

bool writer_flush(struct writer *w)
{
    errno = 0;
    if (!w->error && fflush(w->file) != 0) w->error = errno ? errno : EIO;
    return !w->error;
}

int writer_close(struct writer *w, int code)
{
    bool give_up = code > EXIT_UNSHOWN;
    writer_flush(w);
    if (w->temporary && !give_up && !w->error && fsync(fileno(w->file)) != 0) w->error = errno;
    if (w->file != stdout && fclose(w->file) != 0 && !w->error) w->error = errno;
    w->file = NULL;
    if (w->temporary && !give_up && !w->error && rename(w->temporary, w->target) != 0) w->error = errno;
    if (w->temporary && !give_up && !w->error) is_unfinished = 0;
    writer_abandon();
    if (w->error && !give_up) return complain_of(w, w->error);
    return code;
}
