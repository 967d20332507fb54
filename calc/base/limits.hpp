#pragma once

#include <string>

namespace seamtakt {

/// The limits on input files as lines of text, for --limits: taken from JsonLimits and CsvLimits themselves.
std::string limits_text();

}  // namespace seamtakt
