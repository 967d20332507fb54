#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
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

/// How many of a robot's gaps between passes could be used for times of the cell, and why others not.
struct GapUse {
  std::string robot;
  std::size_t gaps = 0, used = 0;
  std::vector<std::pair<Word, std::size_t>> left_out;  ///< by reason
};

/// A time that the gaps hold and don't determine.
struct Undetermined {
  std::string name;
  Word why;
};

struct Learned {
  std::vector<LearnedParameter> parameters;
  std::vector<GapUse> gaps;
  std::vector<Undetermined> undetermined;
  Plan proposal;  ///< the plan with the proposed values
  Findings findings;
};

/// Refits those numbers of the plan that records can determine:
///  - a wire's melting coefficients: ln I of the steady part against the melting law at the logged wire feed,
///    both coefficients where the currents differ enough to tell them apart, else one factor for both; with
///    new coefficients the wire's U_melting_pct is the 95 % half-width of the currents that they tell;
///  - a schedule's waveform factor: mean(u*i)/(mean u * mean i) of the steady part, where samples are
///    instantaneous;
///  - a robot's crater time: how long the torch was at rest at the end with the arc on;
///  - a robot's air speed, arc start and time of a sensed point: the time between passes that follow one
///    another directly, over the way between them by the plan's geometry (trapezoid with the plan's
///    acceleration, post-flow and wrist's turn as planned); the start is the remainder, from the torch's
///    arrival to its motion. Only where the times correlate with the distances: a log of passes without the
///    cell's own timing gives a note. Sensing where the numbers of points differ enough to tell it from a
///    start, else as planned;
///  - the positioner's turns (or its axes' speeds and settling, where turns by different angles tell them
///    apart), torch service, changes of wire, tip and spool (and sensing, where the log lacks
///    the torch's motion): the differences between the gaps and the plan's, with the robots' new times in it.
///    Gaps beside a skipped, repeated or unplanned pass and with a planned wait are left out, and so is a
///    robot whose plain gaps aren't within 0.5 s of the plan at the median. Only what the gaps determine:
///    others are listed (`undetermined`);
///  - the index of two stations, or loading at one (where unloading is 0: a log tells only both together):
///  the
///    time from a unit's last arc to the next one's first, without the ways home and out;
///  - a wire's deposition efficiency: mass gained by weighed welds over the mass of wire fed by their records
///    (wire area * mean feed * arc time * density of the wire as fed). Without weighings a note says that
///    logs can't determine it.
/// Robust (see robust_fit). Fewer than 6 records of a kind give a note. Records without a schedule of the
/// plan are left out.
Learned learn(const std::vector<PassRecord>& records, const Plan& plan,
              const std::vector<Weighing>& weighings = {});

}  // namespace seamtakt
