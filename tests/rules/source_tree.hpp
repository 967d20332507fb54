#pragma once

#include <filesystem>

#include "support/source_path.hpp"

namespace seamtakt::rules {

namespace fs = std::filesystem;

/// The source tree that the rules are held to.
inline const fs::path root = source_path();

}  // namespace seamtakt::rules
