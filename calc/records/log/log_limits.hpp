#pragma once

#include <cstddef>

#include "base/csv/csv.hpp"

namespace seamtakt {

/// Limits of an arc log. Beyond those of a CSV the log is refused, so that no file, however long its lines,
/// takes more memory than these allow.
struct LogLimits : CsvLimits {
  std::size_t listed_rejections = 100;     ///< all are counted
  std::size_t passes = 10'000;             ///< of one audit; each takes some 4 KB, 8 KB where JSON is written
  std::size_t listed_interruptions = 100;  ///< of one pass; all are counted
  std::size_t carried_values = 8;          ///< different values of one carried column in one pass
};

}  // namespace seamtakt
