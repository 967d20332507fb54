#include "save_check.hpp"

#include <algorithm>
#include <fstream>

#include "base/json/json_node.hpp"
#include "driver/versions.hpp"
#include "fault_run.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt {

namespace {

constexpr unsigned older = 1, old_version = 2, new_version = 3;

unsigned version_in(const std::string& path) {
  return whole_version(read_file(path, std::size_t{1} << 30), version_size);
}

void write_version(const std::string& path, unsigned version) {
  std::ofstream(path, std::ios::binary) << version_text(version, version_size);
}

bool is(const std::string& call, const char* name) {
  return call.starts_with(std::string(name).append(" "));
}

/// A save in a folder of its own, with a fault at one point, and the resulting errors.
class SaveCase {
 public:
  SaveCase(std::string how, FaultPoint point)
      : how_(std::move(how)), point_(std::move(point)), path_(folder_ / "f") {
    write_version(path_, old_version);
    if (keeps()) write_version(path_ + "~", older);
  }

  FaultOutcome run() { return outcome_ = run_save_driver(how_, path_, new_version, new_version, point_); }

  std::vector<std::string> problems() {
    check_content();
    check_backup();
    if (outcome_.exit_code > 0) check_reported_failure();
    if (point_.mode == "eintr") expect(acknowledged(), "a signal made the save fail");
    if (point_.mode == "eio" || point_.mode == "enospc") check_not_passed_over();
    if (outcome_.exit_code < 0) check_leftovers();
    return problems_;
  }

  /// Whether all bytes are on the disk before the name leads to them, and the name before the save is
  /// acknowledged.
  std::vector<std::string> order_problems() {
    const auto& calls = outcome_.calls;
    const auto last = [&](const std::string& call) {
      return std::find(calls.rbegin(), calls.rend(), call).base() - calls.begin();  // 0: none
    };
    for (std::size_t i = 0; i < calls.size(); ++i) {
      if (!is(calls[i], "write")) continue;
      const std::string file = calls[i].substr(6);
      expect(last("fsync " + file) > static_cast<std::ptrdiff_t>(i) + 1, "no fsync after writing " + file);
      expect(file != path_, "the file itself is written to");
      const auto renamed = last("rename " + file);
      expect(renamed == 0 || last("fsync " + file) < renamed, "renamed before the fsync of " + file);
      expect(last("fsync " + folder_.path()) > renamed, "the folder isn't synced after the rename");
    }
    expect(acknowledged(), "a save without a fault fails: " + outcome_.error);
    return problems_;
  }

 private:
  bool keeps() const { return how_ == "keep"; }
  bool is_own() const { return how_ == "keep" || how_ == "honest"; }
  bool acknowledged() const { return !outcome_.acknowledged.empty(); }

  void expect(bool holds, const std::string& what) {
    if (holds) return;
    std::string text = how_;
    text.append(", ").append(point_.mode).append(point_.sticky ? " from call " : " at call ");
    text.append(std::to_string(point_.call)).append(" (").append(call()).append("): ").append(what);
    problems_.push_back(text);
  }

  std::string call() const {
    const auto index = static_cast<std::size_t>(point_.call);
    return index > 0 && index <= outcome_.calls.size() ? outcome_.calls[index - 1] : "none";
  }

  void check_content() {
    const unsigned version = version_in(path_);
    expect(version == old_version || version == new_version, "the file is neither the old nor the new one");
    if (acknowledged()) expect(version == new_version, "acknowledged, but the file isn't the new one");
  }

  void check_backup() {
    if (!keeps()) return;
    const unsigned version = version_in(path_ + "~");
    expect(version == older || version == old_version, "the backup isn't whole");
    if (acknowledged()) expect(version == old_version, "acknowledged, but the backup isn't the old file");
  }

  void check_reported_failure() {
    expect(outcome_.exit_code == 2 || outcome_.exit_code == 3,
           "exit code " + std::to_string(outcome_.exit_code));
    expect(std::count(outcome_.error.begin(), outcome_.error.end(), '\n') == 1,
           "not one line: " + outcome_.error);
    const bool is_saved = outcome_.error.find("is saved, but") != std::string::npos;
    expect(is_saved == (version_in(path_) == new_version),
           "the message is wrong about the file: " + outcome_.error);
    // Where every call fails from some point on, the temporary can't be removed.
    if (!point_.sticky) expect(leftovers() == 0, "a temporary is left");
  }

  /// A failure of these calls must be reported; the folder's close has no effect, and a failed link has a
  /// fallback.
  void check_not_passed_over() {
    const std::string at = call();
    const bool matters = is(at, "open") || is(at, "write") || is(at, "fsync") || is(at, "rename") ||
                         is(at, "read") || is(at, "fchmod") ||
                         (is(at, "close") && at != "close " + folder_.path());
    if (matters) expect(!acknowledged(), "the failure was passed over");
  }

  std::ptrdiff_t leftovers() const {
    const auto names = folder_.names();
    return std::count_if(names.begin(), names.end(),
                         [](const std::string& name) { return name != "f" && name != "f~"; });
  }

  /// The next save after a kill clears up.
  void check_leftovers() {
    if (!is_own()) return;
    run_save_driver(how_, path_, new_version + 1, new_version + 1, {});
    expect(version_in(path_) == new_version + 1, "the save after it fails");
    expect(leftovers() == 0, "a temporary is left by the save after it");
  }

  const ScratchFolder folder_;
  std::string how_;
  FaultPoint point_;
  std::string path_;
  FaultOutcome outcome_;
  std::vector<std::string> problems_;
};

}  // namespace

std::vector<std::string> broken_promises(const std::string& how, int* runs) {
  SaveCase without_fault(how, {});
  const auto calls = static_cast<long>(without_fault.run().calls.size());
  std::vector<std::string> problems = without_fault.order_problems();
  const auto try_point = [&](const FaultPoint& point) {
    SaveCase with_fault(how, point);
    with_fault.run();
    for (std::string& problem : with_fault.problems()) problems.push_back(std::move(problem));
    if (runs) ++*runs;
  };
  for (long call = 1; call <= calls; ++call) {
    for (const char* mode : {"eio", "enospc", "eintr", "short", "lie", "kill", "kill-after"})
      try_point({mode, call});
    for (const char* mode : {"eio", "enospc", "short", "lie"}) try_point({mode, call, true});
  }
  return problems;
}

}  // namespace seamtakt
