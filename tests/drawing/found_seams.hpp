#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <set>
#include <string>
#include <vector>

#include "drawing/made_assembly.hpp"
#include "drawing/seam_finder.hpp"
#include "drawing/step_file.hpp"

namespace seamtakt::drawing::tests {

/// A seam as the finder gives it, in the truth's terms.
struct FoundSeam {
  TrueSeam seam;
  std::set<std::string> flags;
  std::string position;
  bool is_closed = false;
};

struct FoundSeams {
  Assembly assembly;
  Found found;
  std::vector<FoundSeam> all() const;
  /// Without a flag: what is offered.
  std::vector<TrueSeam> offered() const;
};

FoundSeams find_in(const std::filesystem::path& file, const FindOptions& options = {});

/// Missed and extra seams, a line each; nothing where all agree: parts, type, length within 0.2 % (or 0.002
/// mm), angle within 1 degree, thickness within 0.05 mm.
std::vector<std::string> differences(const std::vector<TrueSeam>& truth, const std::vector<TrueSeam>& found);
::testing::AssertionResult agree(const std::vector<TrueSeam>& truth, const std::vector<TrueSeam>& found);

}  // namespace seamtakt::drawing::tests
