#pragma once

#include <gtest/gtest.h>

#include "support/scratch_folder.hpp"

namespace seamtakt {

/// For tests that run on a disk and in memory: on a disk a kill mostly strikes while the program waits for
/// it, in memory the program's own steps.
inline auto scratch_places() {
  return testing::Values(ScratchFolder::On::disk, ScratchFolder::On::memory);
}

inline std::string place_name(const testing::TestParamInfo<ScratchFolder::On>& info) {
  return info.param == ScratchFolder::On::memory ? "memory" : "disk";
}

}  // namespace seamtakt
