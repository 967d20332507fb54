#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "base/json/json_writer.hpp"
#include "plan/plan.hpp"
#include "records/passes/pass_record.hpp"
#include "records/statistics/process_chart.hpp"

namespace seamtakt {

/// How one logged quantity of the passes of one schedule behaved on one robot, in the order of the records.
/// Robots differ: pooled, their difference would look like a process out of control.
struct QuantityStatistics {
  std::string schedule, robot, quantity, unit;
  std::vector<double> values;  ///< of the steady part; heat input of the whole pass
  std::vector<std::string> places;
  ProcessChart chart;
  std::vector<RunsSignal> chart_signals;
  std::optional<Capability> capability;  ///< where the schedule limits the quantity
};

/// How it drifts for one seam and robot.
struct SeamDrift {
  std::string weldment, seam, robot, quantity, unit;
  Drift per_day;
};

struct ProcessStatistics {
  std::vector<QuantityStatistics> quantities;
  std::vector<SeamDrift> drifts;  ///< those that are certain at the family rate of all that were tested
};

/// Statistics of records that name a schedule of the plan. A chart needs 8 passes, a drift 8 passes over at
/// least a day of calendar time (common practice, no source). Adds findings: signals (one note a chart), a
/// Ppk whose lower 95 % bound is below 1.33 (warn; common practice), drifts (warn): of all drifts tested at
/// once, those that keep the rate of false ones at 5 % (certain_at_family_rate).
ProcessStatistics process_statistics(const std::vector<PassRecord>& records, const Plan& plan,
                                     Findings& findings);

/// The member "statistics".
void write_statistics(JsonWriter& json, const ProcessStatistics& statistics);

}  // namespace seamtakt
