#pragma once

#include <string>

namespace seamtakt {

/// A path within the source tree: source_path("/reference/demo/orders.csv"). The tree's own place is known to
/// one small file alone, so that a clone elsewhere finds all other tests in the compiler's cache.
std::string source_path(const std::string& below = "");

/// A path within the build folder.
std::string build_path(const std::string& below = "");

}  // namespace seamtakt
