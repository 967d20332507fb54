#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "ledger/store/sqlite.hpp"

namespace seamtakt::test {

inline constexpr std::uint64_t any_seq = UINT64_MAX;  ///< altered, but no record can be named

/// One way of altering the sample store.
struct TamperCase {
  const char* name;
  std::uint64_t first_bad;  ///< any_seq: not asked
  std::function<void(Sqlite&)> alter;
};

/// Each must be seen by both verifiers.
const std::vector<TamperCase>& tamper_cases();

/// Runs statements with the guards off and puts them back as they were, as a careful forger would.
void unguarded(Sqlite& store, const std::string& sql);

}  // namespace seamtakt::test
