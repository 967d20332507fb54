#pragma once

namespace seamtakt::test {

#ifdef SEAMTAKT_SANITIZED
inline constexpr bool sanitized = true;
#else
inline constexpr bool sanitized = false;
#endif

/// How often a test does the same: under the sanitizers each round takes some ten times as long.
template <class Count>
constexpr Count rounds(Count usual, Count under_sanitizers) {
  return sanitized ? under_sanitizers : usual;
}

}  // namespace seamtakt::test
