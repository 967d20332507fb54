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

/// How one logged quantity of the passes of one schedule behaved: all robots, in the order of the records.
struct QuantityStatistics {
  std::string schedule, quantity, unit;
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
  std::vector<SeamDrift> drifts;  ///< those whose 95 % interval doesn't hold nought
};

/// Statistics of records that name a schedule of the plan. A chart needs 8 passes, a drift 8 passes over at
/// least a day of calendar time (common practice, no source). Adds findings: signals (note), a Ppk below 1.33
/// (warn; common practice), drifts (warn).
ProcessStatistics process_statistics(const std::vector<PassRecord>& records, const Plan& plan,
                                     Findings& findings);

/// The member "statistics".
void write_statistics(JsonWriter& json, const ProcessStatistics& statistics);

}  // namespace seamtakt
