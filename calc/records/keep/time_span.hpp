#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace seamtakt {

inline constexpr std::int64_t day_ns = 86'400ll * 1'000'000'000;

/// When something was, as its text says it; since 1970 UTC.
struct TimeSpan {
  std::int64_t begin_ns = 0, end_ns = 0;  ///< equal for a moment
};

/// Of "2026-03-02" (a whole day) or a time; empty where the text is neither.
std::optional<TimeSpan> span_of(std::string_view text);

}  // namespace seamtakt
