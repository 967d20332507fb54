#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <string>

#include "records/passes/pass_grouper.hpp"

namespace seamtakt {

/// What of a row tells where it goes.
inline constexpr std::array routed_texts = {LogText::unit_serial, LogText::weldment, LogText::seam,
                                            LogText::pass,        LogText::job,      LogText::robot};

/// Samples of one robot without identity: passes follow one another, separated by arc-off gaps.
struct PassGrouper::Stream {
  PassKey key;  ///< unit, weldment, seam as far as known
  std::string robot;
  PassEntry* open = nullptr;
  bool is_cut = false;  ///< its next pass begins where a unit's time ended with the arc on
  SortWindow window{0};
};

/// Where rows with the same identity texts go.
struct PassGrouper::Route {
  std::array<std::string, routed_texts.size()> texts;
  std::int64_t from_ns =
      std::numeric_limits<std::int64_t>::min();  ///< span of time in which the unit is this one
  std::int64_t until_ns = std::numeric_limits<std::int64_t>::max();
  PassKey key;
  PassEntry* entry = nullptr;  ///< identified
  Stream* stream = nullptr;    ///< not identified
  bool job_without_unit = false;
  bool is_cut = false;  ///< begins where a unit's time ended with the arc on

  bool fits(const LogRow& row) const {
    for (std::size_t i = 0; i < texts.size(); ++i)
      if (row[routed_texts[i]] != texts[i]) return false;
    return row.time.ns >= from_ns && row.time.ns < until_ns;
  }
};

}  // namespace seamtakt
