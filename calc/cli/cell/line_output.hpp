#pragma once

#include <string>

#include "base/json/json_writer.hpp"
#include "line/line_result.hpp"

namespace seamtakt::cli {

/// The members of a line's result, beside findings and provenance.
void write_line(JsonWriter& json, const LineResult& line);

/// The same for people, without findings.
std::string line_text(const LineResult& line, bool with_units);

}  // namespace seamtakt::cli
