#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/results/column.hpp"
#include "records/actual/cycle_actual.hpp"

namespace seamtakt {

/// A unit's time beside its planned cycle, as tables show it.
struct ActualUnitRow {
  std::string unit_serial, weldment;
  std::optional<double> logged_s, planned_cycle_s, time_s, planned_s, difference_s;
  std::uint64_t unmatched = 0;  ///< passes skipped, repeated, out of order or not planned
  Sentence largest;             ///< the differences that matter most
  Sentence notes;
};

/// A step of a unit, as tables show it.
struct ActualStepRow {
  std::string unit_serial, weldment, robot;
  Sentence kind;  ///< arc or gap
  std::string from, to;
  std::optional<double> start_s, planned_start_s, time_s, rest_s, planned_s, difference_s;
  Sentence parts;  ///< what the plan has in a gap; of an arc: what it is to the plan
  Sentence skipped, extra;
};

std::vector<ActualUnitRow> actual_unit_rows(const CycleActual& actual);
std::vector<ActualStepRow> actual_step_rows(const UnitActual& unit);
/// Of all units, one after the other.
std::vector<ActualStepRow> actual_step_rows(const CycleActual& actual);

std::span<const Column<ActualUnitRow>> actual_unit_columns();
std::span<const Column<ActualStepRow>> actual_step_columns();

/// "56:27", "1:02:03"; minutes and seconds as a shop's clock has them, rounded to whole seconds.
std::string duration_text(double time_s);
/// The same with its sign: "+13:34".
std::string signed_duration_text(double time_s);

/// One line: "AE-26-0102 (TT): 56:27 in the log, whole cycle planned 42:53; from first to last arc 56:26,
/// planned 42:30 (+13:56); passes not as planned: 1; largest: ...". Says why where there is no comparison.
Sentence unit_actual_sentence(const UnitActual& unit);

}  // namespace seamtakt
