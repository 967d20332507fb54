#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

#include "support/scratch_folder.hpp"

namespace seamtakt {

/// Tests that each have a new folder of their own.
class FolderTest : public ::testing::Test {
 protected:
  std::string path(const std::string& name) const { return folder / name; }
  /// Writes a file of the folder; its path.
  std::string write(const std::string& name, std::string_view bytes) const {
    std::ofstream(folder / name, std::ios::binary) << bytes;
    return folder / name;
  }

 private:
  const ScratchFolder scratch_;

 protected:
  const std::filesystem::path folder = scratch_.path();
};

}  // namespace seamtakt
