#pragma once

#include <string>

#include "drawing/seam_finder.hpp"
#include "drawing/step_file.hpp"

namespace seamtakt::drawing {

struct Drawing {
  std::string path;
  Assembly assembly;
  FindOptions options;
  Found found;
};

/// The result as the program prints it: version 1 of the form "seamtakt-drawing".
std::string result_json(const Drawing& drawing);
/// The same as tables for people.
std::string result_text(const Drawing& drawing);

const char* type_name(JointType type);
std::vector<std::string> flag_names(const SideFlags& flags);

}  // namespace seamtakt::drawing
