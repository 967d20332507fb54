#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "plan/plan.hpp"
#include "records/learn/weighings.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// A number of the plan as the records have it.
struct LearnedParameter {
  std::string name;  ///< e.g. "wires/G3Si1/alpha_mm_s_A"
  std::string unit;
  double old_value = 0;
  double new_value = 0, low_95 = 0, high_95 = 0;
  std::size_t records = 0;
  std::size_t outliers = 0;  ///< of the records, those that counted for nothing
  /// Estimates when each record in turn is left out: their span, and the standard deviation of what the
  /// others predict for the one left out, in % of it.
  double leave_one_out_low = 0, leave_one_out_high = 0, prediction_sd_pct = 0;
  bool proposed = false;  ///< the old value is outside the interval, so the new one goes into the proposal
};

struct Learned {
  std::vector<LearnedParameter> parameters;
  Plan proposal;  ///< the plan with the proposed values
  Findings findings;
};

/// Refits those numbers of the plan that records can determine:
///  - a wire's melting coefficients: ln I of the steady part against the melting law at the logged wire feed,
///    both coefficients where the currents differ enough to tell them apart, else one factor for both;
///  - a schedule's waveform factor: mean(u*i)/(mean u * mean i) of the steady part, where samples are
///    instantaneous;
///  - a robot's crater time: how long the torch was at rest at the end with the arc on;
///  - a robot's air speed and arc start: the time between passes that follow one another directly, over the
///    way between them by the plan's geometry (trapezoid with the plan's acceleration, post-flow, sensing and
///    wrist's turn as planned); the start is the remainder, from the torch's arrival to its motion. Only
///    where the times correlate with the distances: a log of passes without the cell's own timing gives a
///    note.
///  - a wire's deposition efficiency: mass gained by weighed welds over the mass of wire fed by their records
///    (wire area * mean feed * arc time * density of the wire as fed). Without weighings a note says that
///    logs can't determine it.
/// Robust (see robust_fit). Fewer than 6 records of a kind give a note. Records without a schedule of the
/// plan are left out.
Learned learn(const std::vector<PassRecord>& records, const Plan& plan,
              const std::vector<Weighing>& weighings = {});

}  // namespace seamtakt
