#include "cut_disk.hpp"

#include <sched.h>
#include <signal.h>
#include <sys/mount.h>
#include <sys/prctl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <system_error>
#include <thread>

#include "base/json/json_node.hpp"
#include "mounted_image.hpp"
#include "support/program_paths.hpp"

namespace seamtakt {

namespace {

/// Runs a shell command; returns its output if it failed or took too long, else an empty text.
std::string failure_of(const std::string& command, int seconds) {
  const ScratchFolder notes(ScratchFolder::On::memory);
  const std::string limit = "timeout -k 5 " + std::to_string(seconds) + " ";
  const int status = std::system((limit + command + " 2>" + (notes / "said")).c_str());
  if (status == 0) return {};
  return command + ": " + read_file(notes / "said", 65536) + " (status " + std::to_string(status) + ")";
}

void must(const std::string& command, int seconds = 30) {
  if (const std::string failure = failure_of(command, seconds); !failure.empty())
    throw std::runtime_error(failure);
}

/// Ten seconds for something that another process does.
bool comes_true(const std::function<bool()>& holds) {
  for (int i = 0; i < 1000; ++i) {
    if (holds()) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(10));
  }
  return false;
}

void write_bytes(const std::string& path, const std::string& bytes) {
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  if (!file.write(bytes.data(), static_cast<std::streamsize>(bytes.size())).flush())
    throw std::runtime_error("can't write " + path);
}

/// The program cutdisk while it runs.
class RunningCutDisk {
 public:
  RunningCutDisk(const std::string& folder, const std::string& image, const std::string& log)
      : folder_(folder) {
    child_ = fork();
    if (child_ == 0) {
      prctl(PR_SET_PDEATHSIG, SIGKILL);
      execl(cutdisk_program(), cutdisk_program(), folder.c_str(), image.c_str(), log.c_str(), nullptr);
      _exit(98);
    }
    const auto is_there = [&] { return std::filesystem::exists(folder_ + "/disk"); };
    comes_true([&] { return ended() || is_there(); });
    if (!ended() && is_there()) return;
    stop();
    constexpr int mount_refused = 4;  // libfuse's
    if (WIFEXITED(status_) && WEXITSTATUS(status_) == mount_refused)
      throw std::system_error(EPERM, std::generic_category(), "FUSE can't mount");
    throw std::runtime_error("cutdisk doesn't show its files");
  }
  ~RunningCutDisk() { stop(); }
  RunningCutDisk(const RunningCutDisk&) = delete;
  RunningCutDisk& operator=(const RunningCutDisk&) = delete;

  /// Unmounts it and waits for its end; the log is whole then.
  void finish() {
    // The loop device may let go of the disk a little after the unmount of what was on it.
    if (!comes_true([&] { return umount2(folder_.c_str(), 0) == 0; }) || !comes_true([&] { return ended(); }))
      throw std::runtime_error("cutdisk doesn't end");
    if (status_ != 0) throw std::runtime_error("cutdisk failed");
  }

 private:
  bool ended() {
    if (child_ > 0 && waitpid(child_, &status_, WNOHANG) == child_) child_ = 0;
    return child_ == 0;
  }
  void stop() {
    if (child_ > 0) {
      kill(child_, SIGKILL);
      waitpid(child_, &status_, 0);
      child_ = 0;
    }
    // A mount of a killed cutdisk remains; without one this does nothing.
    umount2(folder_.c_str(), MNT_DETACH);
  }

  std::string folder_;
  pid_t child_ = -1;
  int status_ = 0;
};

/// Mounts that end with this process, its children's too.
bool keep_mounts_private() {
  static const bool done =
      unshare(CLONE_NEWNS) == 0 && mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr) == 0;
  return done;
}

}  // namespace

std::string why_no_power_cuts() {
  if (*cutdisk_program() == 0) return "built without libfuse3-dev";
  if (geteuid() != 0) return "not root";
  if (access("/dev/fuse", R_OK | W_OK) != 0) return "no /dev/fuse";
  for (const char* program : {"mkfs.ext4", "timeout"})
    if (std::system((std::string("command -v ") + program + " >/dev/null 2>&1").c_str()) != 0)
      return std::string("no program ") + program;
  if (!keep_mounts_private()) return "no mount namespace of its own";
  try {
    CutRecording trial([](const std::string&) {});
    trial.run([](const std::string& folder) { return "touch " + folder + "/file"; });
  } catch (const std::system_error& error) {
    // Only what the machine refuses; any other failure is a fault of these tests.
    return error.what();
  }
  return {};
}

CutRecording::CutRecording(const std::function<void(const std::string& folder)>& prepare, int megabytes) {
  for (const char* name : {"disk", "files"}) std::filesystem::create_directory(scratch_ / name);
  must("truncate -s " + std::to_string(megabytes) + "M " + (scratch_ / "before"));
  // All is written now: the file system's own set-up must not be mixed with the program's writes.
  must("mkfs.ext4 -q -b 4096 -J size=4 -E lazy_itable_init=0,lazy_journal_init=0 " + (scratch_ / "before"));
  {
    const MountedImage mounted(scratch_ / "before", scratch_ / "files");
    prepare(scratch_ / "files");
  }
  before_ = read_file(scratch_ / "before", std::size_t{1} << 30);
}

void CutRecording::run(const std::function<std::string(const std::string& folder)>& command) {
  RunningCutDisk disk(scratch_ / "disk", scratch_ / "before", scratch_ / "log");
  {
    const MountedImage mounted(scratch_ / "disk/disk", scratch_ / "files");
    must(command(scratch_ / "files") + " >" + (scratch_ / "disk/acks"), 60);
  }
  disk.finish();
  events_ = read_cut_log(scratch_ / "log");
}

std::vector<std::string> CutRecording::bad_states(
    int count, unsigned seed,
    const std::function<std::string(const std::string&, const std::string&)>& check) const {
  std::vector<std::string> bad;
  each_cut_state(before_, events_, count, seed, [&](const CutState& state) {
    std::string problem;
    try {
      write_bytes(scratch_ / "after", state.image);
      const MountedImage mounted(scratch_ / "after", scratch_ / "files");
      problem = check(scratch_ / "files", state.acknowledged);
    } catch (const std::exception& error) {
      problem = error.what();
    }
    if (!problem.empty()) bad.push_back(state.what + ": " + problem);
  });
  return bad;
}

}  // namespace seamtakt
