#pragma once

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <set>
#include <stdexcept>
#include <string>

namespace seamtakt {

/// A new folder for one test, removed with it.
class ScratchFolder {
 public:
  /// `memory`: a file system in memory, where the machine has one, so that a flush takes no time. What a
  /// killed process had written stays there as it does on a disk; of a loss of power it shows nothing.
  enum class On { disk, memory };
  explicit ScratchFolder(On place = On::disk) {
    std::string name = (folder_on(place) / "seamtakt-test-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no scratch folder");
    path_ = name;
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::permissions(path_, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;

  const std::string& path() const { return path_; }
  std::string operator/(const std::string& name) const { return path_ + "/" + name; }

  std::set<std::string> names() const {
    std::set<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(path_))
      names.insert(entry.path().filename());
    return names;
  }

 private:
  static std::filesystem::path folder_on(On place) {
    constexpr const char* in_memory = "/dev/shm";
    return place == On::memory && access(in_memory, W_OK) == 0 ? in_memory
                                                               : std::filesystem::temp_directory_path();
  }

  std::string path_;
};

}  // namespace seamtakt
