#pragma once

#include <functional>
#include <string>
#include <vector>

#include "cut_log.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt {

/// Why no power cuts can be played here ("not root"), empty where they can. std::runtime_error
/// where the machine allows all, and the disk still doesn't work. From here on this process has its
/// mounts for itself, so that none outlives it, however it ends.
std::string why_no_power_cuts();

/// A disk with ext4 on it, whose writes are kept while a program works there.
class CutRecording {
 public:
  /// A disk of so many MB. `prepare` writes the initial content into a folder before the program starts.
  explicit CutRecording(const std::function<void(const std::string& folder)>& prepare, int megabytes = 10);

  /// Runs the command that `command` makes for the folder; each line that it prints is an acknowledgement.
  /// std::runtime_error where it fails or takes more than a minute.
  void run(const std::function<std::string(const std::string& folder)>& command);

  /// Faults of `count` disks after a power cut, found by `check`, which is given the folder and the
  /// acknowledged lines; empty texts are left out.
  std::vector<std::string> bad_states(
      int count, unsigned seed,
      const std::function<std::string(const std::string&, const std::string&)>& check) const;

 private:
  ScratchFolder scratch_{ScratchFolder::On::memory};
  std::string before_;
  std::vector<CutEvent> events_;
};

}  // namespace seamtakt
