#pragma once

#include <ctime>
#include <string>

namespace seamtakt::cli {

/// Only the command line reads the clock: the libraries take times as arguments.

/// "2026-11-25T14:21:02Z".
std::string utc_text_of_s(std::time_t moment_s);
std::string utc_now();

/// Now, or the moment that SOURCE_DATE_EPOCH names, so that two runs give the same bytes.
std::string made_at_utc();

/// "2026-11-25", UTC: what dates in a plan are judged on.
std::string today();

}  // namespace seamtakt::cli
