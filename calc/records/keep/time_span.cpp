#include "records/keep/time_span.hpp"

#include <string>

#include "base/time/log_time.hpp"

namespace seamtakt {

std::optional<TimeSpan> span_of(std::string_view text) {
  constexpr std::size_t day_characters = 10;  // "2026-03-02"
  LogTime time;
  if (text.size() == day_characters) {
    if (!parse_iso8601(std::string(text) + "T00:00:00Z", time)) return std::nullopt;
    return TimeSpan{time.ns, time.ns + day_ns};
  }
  if (!parse_iso8601(text, time)) return std::nullopt;
  return TimeSpan{time.ns, time.ns};
}

}  // namespace seamtakt
