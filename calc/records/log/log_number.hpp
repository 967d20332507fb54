#pragma once

#include <string_view>

namespace seamtakt {

/// As parse_number (base/csv.hpp), correctly rounded and bit for bit the same, but quick for the short
/// decimal numbers that loggers write.
bool parse_log_number(std::string_view text, bool decimal_comma, double& value);

}  // namespace seamtakt
