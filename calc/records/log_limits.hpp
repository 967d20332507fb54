#pragma once

#include <cstddef>

namespace seamtakt {

/// What an arc log may hold. Beyond a limit the log is refused, so that no file, however long its lines, takes
/// more memory than these name.
struct LogLimits {
  std::size_t field_bytes = 4096;
  std::size_t record_bytes = 65536;
  std::size_t columns = 256;
  std::size_t listed_rejections = 100;      ///< all are counted
  std::size_t passes = 100'000;             ///< of one audit
  std::size_t listed_interruptions = 100;   ///< of one pass; all are counted
  std::size_t carried_values = 8;           ///< different values of one carried column in one pass
};

}  // namespace seamtakt
