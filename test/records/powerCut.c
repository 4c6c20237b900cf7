/*
 * Loaded before the C library (LD_PRELOAD), writes down what a program writes to the files of one folder and what it syncs,
 * so that the state of the disk can be made up again as a power cut would have left it. See powerCut.ts.
 *
 * A record: kind (1 byte), offset, length of path, length of data (8 bytes each, this machine's order), path, data.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/uio.h>
#include <unistd.h>

static pthread_mutex_t one_at_a_time = PTHREAD_MUTEX_INITIALIZER;

static void *real(const char *name) { return dlsym(RTLD_NEXT, name); }

static int log_file(void) {
  static int file = -1;
  if (file == -1) file = open(getenv("POWER_CUT_LOG"), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  return file;
}

static int is_watched(const char *path) {
  const char *folder = getenv("POWER_CUT_FOLDER");
  return folder != NULL && strncmp(path, folder, strlen(folder)) == 0;
}

static int path_of(int fd, char *path) {
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, PATH_MAX - 1);
  if (length < 0) return 0;
  path[length] = 0;
  return is_watched(path);
}

static void note(char kind, const char *path, int64_t offset, const void *data, uint64_t size) {
  static ssize_t (*real_writev)(int, const struct iovec *, int);
  if (real_writev == NULL) real_writev = real("writev");
  uint64_t head[3] = {(uint64_t)offset, strlen(path), size};
  struct iovec parts[4] = {{&kind, 1}, {head, sizeof head}, {(void *)path, head[1]}, {(void *)data, size}};
  if (real_writev(log_file(), parts, 4) < 0) abort();
}

#define OFFSET_WRITE(name, offset_type)                                                        \
  ssize_t name(int fd, const void *data, size_t size, offset_type offset) {                    \
    ssize_t (*call)(int, const void *, size_t, offset_type) = real(#name);                     \
    char path[PATH_MAX];                                                                       \
    if (!path_of(fd, path)) return call(fd, data, size, offset);                               \
    pthread_mutex_lock(&one_at_a_time);                                                        \
    ssize_t written = call(fd, data, size, offset);                                            \
    if (written > 0) note('w', path, offset, data, written);                                   \
    pthread_mutex_unlock(&one_at_a_time);                                                      \
    return written;                                                                            \
  }
OFFSET_WRITE(pwrite, off_t)
OFFSET_WRITE(pwrite64, off64_t)

ssize_t write(int fd, const void *data, size_t size) {
  ssize_t (*call)(int, const void *, size_t) = real("write");
  char path[PATH_MAX];
  if (!path_of(fd, path)) return call(fd, data, size);
  pthread_mutex_lock(&one_at_a_time);
  ssize_t written = call(fd, data, size);
  if (written > 0) note('w', path, lseek(fd, 0, SEEK_CUR) - written, data, written);
  pthread_mutex_unlock(&one_at_a_time);
  return written;
}

#define TRUNCATE(name, offset_type)                                                            \
  int name(int fd, offset_type size) {                                                         \
    int (*call)(int, offset_type) = real(#name);                                               \
    char path[PATH_MAX];                                                                       \
    int is_ours = path_of(fd, path);                                                           \
    int outcome = call(fd, size);                                                              \
    if (is_ours && outcome == 0) note('t', path, size, "", 0);                                 \
    return outcome;                                                                            \
  }
TRUNCATE(ftruncate, off_t)
TRUNCATE(ftruncate64, off64_t)

/* Noted after it has come back: only then is it a promise. */
#define SYNC(name)                                                                             \
  int name(int fd) {                                                                           \
    int (*call)(int) = real(#name);                                                            \
    char path[PATH_MAX];                                                                       \
    int is_ours = path_of(fd, path);                                                           \
    int outcome = call(fd);                                                                    \
    if (is_ours && outcome == 0) note('s', path, 0, "", 0);                                    \
    return outcome;                                                                            \
  }
SYNC(fsync)
SYNC(fdatasync)

int unlink(const char *path) {
  int (*call)(const char *) = real("unlink");
  int outcome = call(path);
  if (outcome == 0 && is_watched(path)) note('u', path, 0, "", 0);
  return outcome;
}

int rename(const char *from, const char *to) {
  int (*call)(const char *, const char *) = real("rename");
  int outcome = call(from, to);
  if (outcome == 0 && is_watched(from)) note('r', from, 0, to, strlen(to));
  return outcome;
}
