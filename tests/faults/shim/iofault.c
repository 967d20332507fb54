/* Loaded with LD_PRELOAD: counts the calls that touch files below IOFAULT_PATH and, at call number IOFAULT_CALL
   (from it on where IOFAULT_STICKY is set), does what IOFAULT_MODE says:
     eio, enospc, eintr   fail with that error, nothing done (close closes all the same)
     short                read or write half of what was asked for
     lie                  say that it was done, and do nothing (a read gives zeros)
     kill, kill-after     the process dies before or after the call
   With IOFAULT_NAME only calls of that name count. Each call is a line "NUMBER NAME PATH" in the file IOFAULT_LOG. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

enum { MOST_FILES = 1024, LONGEST_PATH = 600 };
static char paths[MOST_FILES][LONGEST_PATH]; /* of the open files that are watched; "" for others */
static long calls;

static const char* setting(const char* name) {
  const char* value = getenv(name);
  return value ? value : "";
}

static int is(const char* mode) { return strcmp(setting("IOFAULT_MODE"), mode) == 0; }

static int is_watched(const char* path) {
  const char* prefix = setting("IOFAULT_PATH");
  return *prefix && path && strncmp(path, prefix, strlen(prefix)) == 0;
}

static const char* path_of(int file) { return file >= 0 && file < MOST_FILES ? paths[file] : ""; }

/* The log is written by bare system calls, so that it can't be counted or failed. */
static void log_call(const char* name, const char* path) {
  char line[LONGEST_PATH + 64];
  const int size = snprintf(line, sizeof line, "%ld %s %s\n", calls, name, path);
  if (!*setting("IOFAULT_LOG") || size < 0) return;
  const int file = (int)syscall(SYS_openat, AT_FDCWD, setting("IOFAULT_LOG"), O_WRONLY | O_CREAT | O_APPEND, 0644);
  if (file < 0) return;
  syscall(SYS_write, file, line, (size_t)size < sizeof line ? (size_t)size : sizeof line - 1);
  syscall(SYS_close, file);
}

/* Counts a call; 1 where it is the one to be tampered with. */
static int hit(const char* name, const char* path) {
  if (!is_watched(path)) return 0;
  if (*setting("IOFAULT_NAME") && strcmp(name, setting("IOFAULT_NAME")) != 0) return 0;
  ++calls;
  log_call(name, path);
  const long wanted = atol(setting("IOFAULT_CALL"));
  const int now = wanted > 0 && (calls == wanted || (calls > wanted && *setting("IOFAULT_STICKY")));
  if (now && is("kill")) syscall(SYS_kill, getpid(), SIGKILL);
  return now;
}

/* The error that a call at fault reports; 0 where its mode has none. */
static int fault(void) { return is("eio") ? EIO : is("enospc") ? ENOSPC : is("eintr") ? EINTR : 0; }

static long finish(int now, long result) {
  if (now && is("kill-after")) syscall(SYS_kill, getpid(), SIGKILL);
  return result;
}

#define REAL(type, name, ...) ((type(*)(__VA_ARGS__))dlsym(RTLD_NEXT, name))
#define FAIL_IF(now)       \
  do {                     \
    if ((now) && fault()) { \
      errno = fault();     \
      return -1;           \
    }                      \
  } while (0)

static int open_watched(const char* name, const char* path, int flags, mode_t mode) {
  const int now = hit("open", path);
  FAIL_IF(now);
  const int file = REAL(int, name, const char*, int, ...)(path, flags, mode);
  if (file >= 0 && file < MOST_FILES) snprintf(paths[file], LONGEST_PATH, "%s", is_watched(path) ? path : "");
  return (int)finish(now, file);
}

#define OPEN(name)                                 \
  int name(const char* path, int flags, ...) {     \
    va_list rest;                                  \
    va_start(rest, flags);                         \
    const mode_t mode = (mode_t)va_arg(rest, int); \
    va_end(rest);                                  \
    return open_watched(#name, path, flags, mode); \
  }
OPEN(open)
OPEN(open64)

int close(int file) {
  const int now = *path_of(file) ? hit("close", path_of(file)) : 0;
  if (file >= 0 && file < MOST_FILES) paths[file][0] = '\0';
  const int result = REAL(int, "close", int)(file);
  FAIL_IF(now);
  return (int)finish(now, result);
}

ssize_t write(int file, const void* bytes, size_t size) {
  const int now = *path_of(file) ? hit("write", path_of(file)) : 0;
  FAIL_IF(now);
  if (now && is("lie")) return (ssize_t)size;
  if (now && is("short") && size > 1) size /= 2;
  return finish(now, REAL(ssize_t, "write", int, const void*, size_t)(file, bytes, size));
}

ssize_t read(int file, void* bytes, size_t size) {
  const int now = *path_of(file) ? hit("read", path_of(file)) : 0;
  FAIL_IF(now);
  if (now && is("short") && size > 1) size /= 2;
  const ssize_t count = REAL(ssize_t, "read", int, void*, size_t)(file, bytes, size);
  if (now && is("lie") && count > 0) memset(bytes, 0, (size_t)count);
  return finish(now, count);
}

#define PREAD(name)                                                                                      \
  ssize_t name(int file, void* bytes, size_t size, off_t at) {                                           \
    const int now = *path_of(file) ? hit("read", path_of(file)) : 0;                                     \
    FAIL_IF(now);                                                                                        \
    if (now && is("short") && size > 1) size /= 2;                                                       \
    const ssize_t count = REAL(ssize_t, #name, int, void*, size_t, off_t)(file, bytes, size, at);        \
    if (now && is("lie") && count > 0) memset(bytes, 0, (size_t)count);                                  \
    return finish(now, count);                                                                           \
  }
PREAD(pread)
PREAD(pread64)

#define PWRITE(name)                                                                                     \
  ssize_t name(int file, const void* bytes, size_t size, off_t at) {                                     \
    const int now = *path_of(file) ? hit("write", path_of(file)) : 0;                                    \
    FAIL_IF(now);                                                                                        \
    if (now && is("lie")) return (ssize_t)size;                                                          \
    if (now && is("short") && size > 1) size /= 2;                                                       \
    return finish(now, REAL(ssize_t, #name, int, const void*, size_t, off_t)(file, bytes, size, at));    \
  }
PWRITE(pwrite)
PWRITE(pwrite64)

#define ON_FILE(name, parameters, arguments, ...)                            \
  int name parameters {                                                      \
    const int now = *path_of(file) ? hit(#name, path_of(file)) : 0;          \
    FAIL_IF(now);                                                            \
    if (now && is("lie")) return 0;                                          \
    return (int)finish(now, REAL(int, #name, __VA_ARGS__) arguments);        \
  }
ON_FILE(fsync, (int file), (file), int)
ON_FILE(fdatasync, (int file), (file), int)
ON_FILE(fchmod, (int file, mode_t mode), (file, mode), int, mode_t)
ON_FILE(ftruncate, (int file, off_t size), (file, size), int, off_t)
ON_FILE(ftruncate64, (int file, off_t size), (file, size), int, off_t)

#define ON_PATH(name, parameters, arguments, ...)                     \
  int name parameters {                                               \
    const int now = hit(#name, path);                                 \
    FAIL_IF(now);                                                     \
    if (now && is("lie")) return 0;                                   \
    return (int)finish(now, REAL(int, #name, __VA_ARGS__) arguments); \
  }
ON_PATH(unlink, (const char* path), (path), const char*)
ON_PATH(rename, (const char* path, const char* to), (path, to), const char*, const char*)
ON_PATH(link, (const char* path, const char* to), (path, to), const char*, const char*)
