#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "records/log/log_row.hpp"
#include "records/log/sort_window.hpp"
#include "records/passes/pass_accumulator.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

/// What a pass is.
struct PassKey {
  std::string unit_serial, weldment, seam;
  int pass = 0;  ///< 0: not known

  auto operator<=>(const PassKey&) const = default;
};

/// A pass while its log is read.
struct PassEntry {
  PassEntry(PassKey identity, const AccumulationRules& rules, std::size_t sort_rows)
      : key(std::move(identity)), sums(rules), window(sort_rows) {}

  PassKey key;
  bool numbered = false;  ///< its number was given here, by the order of the arcs
  bool repeated = false;  ///< the same pass is in another log too
  bool is_cut = false;    ///< the arc was on across the border of two units' times
  std::optional<PlannedPass> planned;
  EnergySource energy_source = EnergySource::voltage_and_current;
  LogSignal signal = LogSignal::instantaneous;
  std::string robot, schedule_revision;
  bool revision_changed = false;
  std::vector<CarriedColumn> carried;
  std::uint64_t carried_more = 0;  ///< values beyond those kept
  std::size_t first_log = 0, last_log = 0;
  bool counts_seconds = true;
  PassAccumulator sums;
  SortWindow window;
  bool recent = false;

  bool has_arc() const { return sums.totals().arc_starts > 0; }
};

}  // namespace seamtakt
