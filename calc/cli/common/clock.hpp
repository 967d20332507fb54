#pragma once

#include <ctime>
#include <string>

namespace seamtakt::cli {

/// The clock stays in the command line: the libraries take their times as arguments.

/// "2026-11-25T14:21:02Z".
std::string utc_text_of_s(std::time_t moment_s);
std::string utc_now();

/// "2026-11-25", UTC: what dates in a plan are judged on.
std::string today();

}  // namespace seamtakt::cli
