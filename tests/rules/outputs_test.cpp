// Files that people name are written by save_output alone, which asks what they would cover.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "rules/source_tree.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

TEST(Outputs, NoFileIsSavedWithoutALookAtWhatIsThere) {
  // Who may save at once: what asks itself, a key that asked before, recovery copies in the program's own
  // folder.
  const std::set<std::string> allowed = {"calc/base/files/atomic_save.cpp", "calc/base/files/atomic_save.hpp",
                                         "calc/base/files/output_file.cpp", "calc/ledger/tree/key_file.cpp",
                                         "gui/document/recovery.cpp"};
  int callers = 0;
  for (const char* folder : {"calc", "gui"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
      const std::string extension = entry.path().extension().string();
      if (extension != ".cpp" && extension != ".hpp") continue;
      std::ifstream stream(entry.path(), std::ios::binary);
      const std::string text{std::istreambuf_iterator<char>(stream), {}};
      const std::string name = std::filesystem::relative(entry.path(), root).string();
      callers += text.find("save_output(") != std::string::npos;
      for (const char* way : {"save_atomically(", "std::ofstream", "std::fopen", "QSaveFile"})
        EXPECT_TRUE(text.find(way) == std::string::npos || allowed.contains(name))
            << name << " writes with " << way;
    }
  EXPECT_GT(callers, 6);
}

}  // namespace
}  // namespace seamtakt::rules
