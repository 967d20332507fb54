// Refusals of the machine during a save: rights, space, sizes. Each case runs in a child process of its
// own, since it changes what the whole process may do.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sched.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <functional>
#include <system_error>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"
#include "support/scratch_folder.hpp"

using namespace seamtakt;

namespace {

enum Result { saved = 0, bad_input = 2, machine_failed = 3, other_exception = 4, could_not_try = 77 };

struct Ended {
  int code = -1;  ///< exit code; -1 where a signal ended it
  std::errc error{};
};

/// Runs in a child: `prepare` (false: this machine can't), then the save.
Ended save_in_child(const std::string& path, const std::string& bytes, const std::function<bool()>& prepare) {
  int ends[2];
  if (pipe(ends) != 0) return {};
  const pid_t child = fork();
  if (child == 0) {
    int result = saved, error = 0;
    try {
      if (!prepare()) _exit(could_not_try);
      save_atomically(path, bytes);
    } catch (const InputError&) {
      result = bad_input;
    } catch (const std::system_error& failure) {
      result = machine_failed;
      error = failure.code().value();
    } catch (...) {
      result = other_exception;
    }
    if (write(ends[1], &error, sizeof error) < 0) _exit(98);
    _exit(result);
  }
  close(ends[1]);
  int error = 0, status = 0;
  const ssize_t count = read(ends[0], &error, sizeof error);
  close(ends[0]);
  waitpid(child, &status, 0);
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1,
          count == sizeof error ? static_cast<std::errc>(error) : std::errc()};
}

bool become_nobody() {
  return getuid() != 0 || (setgid(65534) == 0 && setuid(65534) == 0);
}

void expect_old_file_alone(const ScratchFolder& folder) {
  EXPECT_EQ(read_file(folder / "f", 100), "old");
  EXPECT_EQ(folder.names(), std::set<std::string>{"f"});
}

}  // namespace

TEST(SaveSurroundingsTest, a_folder_without_write_permission_is_the_machines_failure) {
  const ScratchFolder folder;
  std::ofstream(folder / "f") << "old";
  ASSERT_EQ(chmod((folder / "f").c_str(), 0666), 0);
  ASSERT_EQ(chmod(folder.path().c_str(), 0555), 0);
  const Ended ended = save_in_child(folder / "f", "new", become_nobody);
  EXPECT_EQ(ended.code, machine_failed);
  EXPECT_EQ(ended.error, std::errc::permission_denied);
  expect_old_file_alone(folder);
}

TEST(SaveSurroundingsTest, a_file_made_read_only_is_not_replaced) {
  const ScratchFolder folder;
  std::ofstream(folder / "f") << "old";
  ASSERT_EQ(chmod((folder / "f").c_str(), 0444), 0);
  ASSERT_EQ(chmod(folder.path().c_str(), 0777), 0);
  const Ended ended = save_in_child(folder / "f", "new", become_nobody);
  EXPECT_EQ(ended.code, machine_failed);
  EXPECT_EQ(ended.error, std::errc::permission_denied);
  expect_old_file_alone(folder);
}

TEST(SaveSurroundingsTest, rights_of_another_owner_are_not_widened) {
  if (getuid() != 0) GTEST_SKIP() << "needs root to give a file to somebody else";
  const ScratchFolder folder;
  std::ofstream(folder / "f") << "old";
  ASSERT_EQ(chmod(folder.path().c_str(), 0777), 0);
  // Group 0 may read it; the saver isn't in that group, so the new file mustn't give its own group that
  // right.
  ASSERT_EQ(chmod((folder / "f").c_str(), 0666), 0);
  const Ended ended = save_in_child(folder / "f", "new", become_nobody);
  EXPECT_EQ(ended.code, saved);
  struct stat status {};
  ASSERT_EQ(stat((folder / "f").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 07777, 0606u);
}

TEST(SaveSurroundingsTest, root_keeps_the_owner_of_the_file) {
  if (getuid() != 0) GTEST_SKIP() << "needs root to give a file to somebody else";
  const ScratchFolder folder;
  std::ofstream(folder / "f") << "old";
  ASSERT_EQ(chown((folder / "f").c_str(), 65534, 65534), 0);
  ASSERT_EQ(chmod((folder / "f").c_str(), 0640), 0);
  save_atomically(folder / "f", "new");
  struct stat status {};
  ASSERT_EQ(stat((folder / "f").c_str(), &status), 0);
  EXPECT_EQ(status.st_uid, 65534u);
  EXPECT_EQ(status.st_gid, 65534u);
  EXPECT_EQ(status.st_mode & 07777, 0640u);
}

TEST(SaveSurroundingsTest, a_limit_on_file_sizes_is_reported_and_does_not_end_the_program) {
  const ScratchFolder folder;
  std::ofstream(folder / "f") << "old";
  const Ended ended = save_in_child(folder / "f", std::string(100000, 'x'), [] {
    const rlimit limit{10000, 10000};
    return setrlimit(RLIMIT_FSIZE, &limit) == 0;
  });
  EXPECT_EQ(ended.code, machine_failed);
  EXPECT_EQ(ended.error, std::errc::file_too_large);
  expect_old_file_alone(folder);
}

TEST(SaveSurroundingsTest, a_full_disk_and_a_read_only_one_leave_the_old_file) {
  const ScratchFolder folder;
  const std::string path = folder / "f";
  // 7: the old file has changed, or another file is left beside it.
  const auto on_small_disk = [&](unsigned long later_flags, std::size_t size) {
    return save_in_child(path, "x", [&] {
      if (getuid() != 0 || unshare(CLONE_NEWNS) != 0) return false;
      if (mount("none", "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0) return false;
      if (mount("tmpfs", folder.path().c_str(), "tmpfs", 0, "size=256k") != 0) return false;
      std::ofstream(path) << "old";
      if (mount("tmpfs", folder.path().c_str(), "tmpfs", MS_REMOUNT | later_flags, "size=256k") != 0)
        return false;
      std::errc error{};
      try {
        save_atomically(path, std::string(size, 'x'));
      } catch (const std::system_error& failure) {
        error = static_cast<std::errc>(failure.code().value());
      }
      if (read_file(path, 100) != "old" || folder.names() != std::set<std::string>{"f"}) _exit(7);
      throw std::system_error(std::make_error_code(error));
    });
  };
  const Ended full = on_small_disk(0, 1u << 20);
  if (full.code == could_not_try)
    GTEST_SKIP() << "this machine allows no mounts: full and read-only disks were not tried";
  EXPECT_EQ(full.code, machine_failed);
  EXPECT_EQ(full.error, std::errc::no_space_on_device);
  const Ended read_only = on_small_disk(MS_RDONLY, 10);
  EXPECT_EQ(read_only.code, machine_failed);
  EXPECT_EQ(read_only.error, std::errc::read_only_file_system);
}

TEST(SaveSurroundingsTest, targets_that_are_no_files_are_bad_input) {
  const ScratchFolder folder;
  ASSERT_EQ(mkdir((folder / "d").c_str(), 0755), 0);
  ASSERT_EQ(mkfifo((folder / "p").c_str(), 0600), 0);
  const auto nothing = [] { return true; };
  EXPECT_EQ(save_in_child(folder / "d", "x", nothing).code, bad_input);
  EXPECT_EQ(save_in_child(folder / "p", "x", nothing).code, bad_input);
  EXPECT_EQ(save_in_child(folder / std::string(256, 'n'), "x", nothing).code, bad_input);
  EXPECT_EQ(save_in_child(folder / std::string(5000, 'n'), "x", nothing).code, bad_input);
  ASSERT_EQ(symlink("f", (folder / "s").c_str()), 0);
  EXPECT_EQ(save_in_child(folder / "s", "x", nothing).code, saved);
  EXPECT_EQ(folder.names(), (std::set<std::string>{"d", "f", "p", "s"}));
}
