#pragma once

#include <string>

#include "line/line_result.hpp"

namespace seamtakt::cli {

/// A line's result for people, without findings.
std::string line_text(const LineResult& line, bool with_units);

}  // namespace seamtakt::cli
