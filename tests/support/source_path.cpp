#include "support/source_path.hpp"

namespace seamtakt {

std::string source_path(const std::string& below) {
  return SEAMTAKT_SOURCE_DIR + below;
}

std::string build_path(const std::string& below) {
  return SEAMTAKT_BUILD_DIR + below;
}

}  // namespace seamtakt
