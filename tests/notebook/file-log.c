/* Writes down every change to the files under POWER_CUT_FOLDER, in order, as it passes on its way to the system.
 * Loaded before the C library (LD_PRELOAD). A record is: a letter, then numbers of 8 bytes, then bytes.
 *   O id length path   a file was opened; N when it was made by that
 *   W id offset length bytes      T id size      S id (synced)      F id (sync failed)
 *   U length path (taken away)    R length path length path (renamed)    D length path (folder synced)
 * With POWER_CUT_FAIL_EVERY=n every n-th sync fails with EIO, and nothing was synced. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define MOST 4096
static struct { int64_t id; char *folder; } files[MOST];
static int64_t next_id = 1;
static int log_fd = -1;
static long fail_every = 0, syncs = 0;
static const char *folder = NULL;
static pthread_mutex_t guard = PTHREAD_MUTEX_INITIALIZER;

static ssize_t (*real_write)(int, const void *, size_t);
static ssize_t (*real_pwrite)(int, const void *, size_t, off64_t);
static int (*real_open)(const char *, int, ...);

__attribute__((constructor)) static void start(void) {
  folder = getenv("POWER_CUT_FOLDER");
  const char *every = getenv("POWER_CUT_FAIL_EVERY");
  const char *log = getenv("POWER_CUT_LOG");
  fail_every = every ? atol(every) : 0;
  real_write = dlsym(RTLD_NEXT, "write");
  real_pwrite = dlsym(RTLD_NEXT, "pwrite64");
  real_open = dlsym(RTLD_NEXT, "open64");
  if (folder && log) log_fd = real_open(log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
}

static void put(const void *bytes, size_t length) {
  const char *at = bytes;
  while (length > 0) {
    ssize_t done = real_write(log_fd, at, length);
    if (done <= 0) abort();
    at += done;
    length -= (size_t)done;
  }
}
static void letter(char what) { put(&what, 1); }
static void number(int64_t value) { put(&value, 8); }
static void text(const char *path) { number((int64_t)strlen(path)); put(path, strlen(path)); }
static int ours(const char *path) { return log_fd >= 0 && path && strncmp(path, folder, strlen(folder)) == 0; }
static int64_t id_of(int fd) { return fd >= 0 && fd < MOST ? files[fd].id : 0; }

static int opened(const char *path, int flags, mode_t mode, int fd_given, int existed) {
  int fd = fd_given;
  (void)flags; (void)mode;
  if (fd < 0 || fd >= MOST || !ours(path)) return fd;
  struct stat seen;
  fstat(fd, &seen);
  pthread_mutex_lock(&guard);
  if (S_ISDIR(seen.st_mode)) {
    files[fd].id = -1;
    files[fd].folder = strdup(path);
  } else {
    files[fd].id = next_id++;
    letter(existed ? 'O' : 'N');
    number(files[fd].id);
    text(path);
    if (existed && (flags & O_TRUNC)) { letter('T'); number(files[fd].id); number(0); }
  }
  pthread_mutex_unlock(&guard);
  return fd;
}

static int open_any(const char *path, int flags, mode_t mode) {
  struct stat seen;
  int existed = !ours(path) || stat(path, &seen) == 0;
  return opened(path, flags, mode, real_open(path, flags, mode), existed);
}
#define MODE_OF(last) mode_t mode = 0; if (flags & O_CREAT) { va_list rest; va_start(rest, last); mode = va_arg(rest, mode_t); va_end(rest); }
int open(const char *path, int flags, ...) { MODE_OF(flags) return open_any(path, flags, mode); }
int open64(const char *path, int flags, ...) { MODE_OF(flags) return open_any(path, flags, mode); }

static void wrote(int fd, off64_t offset, const void *bytes, ssize_t length) {
  if (length <= 0 || id_of(fd) <= 0) return;
  pthread_mutex_lock(&guard);
  letter('W'); number(files[fd].id); number(offset); number(length); put(bytes, (size_t)length);
  pthread_mutex_unlock(&guard);
}
ssize_t write(int fd, const void *bytes, size_t length) {
  off64_t offset = id_of(fd) > 0 ? lseek64(fd, 0, SEEK_CUR) : 0;
  ssize_t done = real_write(fd, bytes, length);
  wrote(fd, offset, bytes, done);
  return done;
}
ssize_t pwrite64(int fd, const void *bytes, size_t length, off64_t offset) {
  ssize_t done = real_pwrite(fd, bytes, length, offset);
  wrote(fd, offset, bytes, done);
  return done;
}
ssize_t pwrite(int fd, const void *bytes, size_t length, off_t offset) { return pwrite64(fd, bytes, length, offset); }

int ftruncate64(int fd, off64_t size) {
  static int (*real)(int, off64_t);
  if (!real) real = dlsym(RTLD_NEXT, "ftruncate64");
  int done = real(fd, size);
  if (done == 0 && id_of(fd) > 0) {
    pthread_mutex_lock(&guard);
    letter('T'); number(files[fd].id); number(size);
    pthread_mutex_unlock(&guard);
  }
  return done;
}
int ftruncate(int fd, off_t size) { return ftruncate64(fd, size); }

static int synced(int fd, const char *name) {
  int (*real)(int) = dlsym(RTLD_NEXT, name);
  int64_t id = id_of(fd);
  if (id == 0) return real(fd);
  pthread_mutex_lock(&guard);
  int fails = id > 0 && fail_every > 0 && ++syncs % fail_every == 0;
  if (id < 0) { letter('D'); text(files[fd].folder); }
  else { letter(fails ? 'F' : 'S'); number(id); }
  pthread_mutex_unlock(&guard);
  if (!fails) return real(fd);
  errno = EIO;
  return -1;
}
int fsync(int fd) { return synced(fd, "fsync"); }
int fdatasync(int fd) { return synced(fd, "fdatasync"); }

int close(int fd) {
  static int (*real)(int);
  if (!real) real = dlsym(RTLD_NEXT, "close");
  if (fd >= 0 && fd < MOST) files[fd].id = 0;
  return real(fd);
}
int unlink(const char *path) {
  static int (*real)(const char *);
  if (!real) real = dlsym(RTLD_NEXT, "unlink");
  int done = real(path);
  if (done == 0 && ours(path)) {
    pthread_mutex_lock(&guard);
    letter('U'); text(path);
    pthread_mutex_unlock(&guard);
  }
  return done;
}
int rename(const char *from, const char *to) {
  static int (*real)(const char *, const char *);
  if (!real) real = dlsym(RTLD_NEXT, "rename");
  int done = real(from, to);
  if (done == 0 && ours(from)) {
    pthread_mutex_lock(&guard);
    letter('R'); text(from); text(to);
    pthread_mutex_unlock(&guard);
  }
  return done;
}
