#include "records/pass_accumulator.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace seamtakt {

namespace {

using Q = LogQuantity;

/// Steps needed before a long one can be told from a slow logger's ordinary one.
constexpr std::uint64_t steps_to_know = 8;
constexpr std::int64_t out_of_proportion = 10;

HeldValue held(const LogSample& sample, Q quantity, std::int64_t ns) {
  if (!sample.has(quantity)) return {};
  return {sample[quantity] * static_cast<double>(ns), ns};
}

bool has_position(const LogSample& sample) {
  return sample.has(Q::x_mm) && sample.has(Q::y_mm);
}

Point_mm position(const LogSample& sample) {
  return {sample[Q::x_mm], sample[Q::y_mm], sample[Q::z_mm]};
}

/// Whether a logger gave current and voltage (or what stands for it) again, to the last digit.
bool repeats(const LogSample& a, const LogSample& b) {
  if (a[Q::current_A] != b[Q::current_A]) return false;
  const Q beside = a.has(Q::voltage_V) ? Q::voltage_V : a.has(Q::power_W) ? Q::power_W : Q::energy_J;
  return a.has(beside) && b.has(beside) && a[beside] == b[beside];
}

}  // namespace

PassAccumulator::PassAccumulator(const AccumulationRules& rules) : rules_(rules) {
  if (rules_.seam == nullptr || rules_.seam->path_mm.size() < 2) return;
  SeamTracker tracker(*rules_.seam);
  const SeamCoverage coverage(tracker.length_mm(), tracker.closed());
  follower_ = std::make_unique<SeamFollower>(SeamFollower{tracker, coverage});
}

bool PassAccumulator::is_hole(std::int64_t ns) const {
  const std::int64_t step = ns - last_.ns;
  if (step <= rules_.hole_ns || totals_.steps < steps_to_know) return false;
  return step > out_of_proportion * (totals_.steps_ns / static_cast<std::int64_t>(totals_.steps));
}

void PassAccumulator::add(const LogSample& sample) {
  if (totals_.samples == 0) {
    totals_.first_ns = totals_.latest_ns = sample.ns;
    totals_.first_line = sample.line;
    totals_.utc_offset_min = sample.utc_offset_min;
    if (sample.arc_on) begin_arc(sample, true);
  } else {
    step_to(sample);
  }
  const bool arc_reaches_here = sample.arc_on || (totals_.samples > 0 && last_.arc_on);
  ++totals_.samples;
  totals_.latest_ns = std::max(totals_.latest_ns, sample.ns);
  totals_.last_line = sample.line;
  if (arc_reaches_here) {
    totals_.samples_to_arc_end = totals_.samples;
    totals_.line_of_arc_end = sample.line;
    totals_.arc_end_ns = totals_.latest_ns;
  }
  if (sample.arc_on_logged >= 0 && (sample.arc_on_logged == 1) != sample.arc_on)
    totals_.arc_on_disagrees.note(sample.line);
  last_ = sample;
}

void PassAccumulator::step_to(const LogSample& sample) {
  const std::int64_t step = sample.ns - last_.ns;
  const bool hole = is_hole(sample.ns);
  if (step > 0 && !hole) {
    totals_.steps_ns += step;
    ++totals_.steps;
  }
  if (step < 0) totals_.backwards.note(sample.line);
  if (step == 0) totals_.equal_times.note(sample.line);
  if (last_.arc_on && (step < 0 || hole)) {
    // Nothing is known of what lies between: the arc is taken as ended here and begun anew.
    end_arc(last_.ns, last_.line);
    if (hole) totals_.holes.note(sample.line);
    if (sample.arc_on) begin_arc(sample, hole);
    return;
  }
  if (last_.arc_on && step > 0) take(interval_to(sample), sample);
  if (last_.arc_on && step == 0 && !repeats(last_, sample)) {
    settle_held();
    frozen_ = false;
    repeated_since_ns_ = sample.ns;
  }
  if (sample.arc_on && !last_.arc_on) begin_arc(sample, true);
  if (!sample.arc_on && last_.arc_on) end_arc(sample.ns, sample.line);
}

void PassAccumulator::begin_arc(const LogSample& sample, bool is_start) {
  if (any_arc_ && sample.ns >= off_since_ns_) note_interruption(off_since_ns_, sample.ns, off_line_);
  if (!any_arc_ && sample.has(Q::interpass_C)) totals_.interpass_C = sample[Q::interpass_C];
  any_arc_ = true;
  if (is_start) ++totals_.arc_starts;
  arc_begin_ns_ = repeated_since_ns_ = sample.ns;
  frozen_ = false;
  torch_path_.lift();
  if (follower_) {
    follower_->tracker.lift();
    follower_->placed = false;
  }
  way_mm_ = 0;
  if (!has_position(sample)) return;
  totals_.has_positions = true;
  if (follower_) {
    follower_->along_mm = follower_->tracker.move_to(position(sample), true);
    follower_->placed = true;
  } else {
    torch_path_.move_to(position(sample), false);
  }
}

void PassAccumulator::end_arc(std::int64_t ns, std::uint64_t line) {
  settle_held();
  add_steady_until(ns - rules_.crater_ns);
  crater_.clear();
  off_since_ns_ = ns;
  off_line_ = line;
  if (follower_) follower_->coverage.finish_piece();
}

void PassAccumulator::note_interruption(std::int64_t from_ns, std::int64_t to_ns, std::uint64_t line) {
  ++totals_.interruption_count;
  if (totals_.interruptions.size() < rules_.listed_interruptions)
    totals_.interruptions.push_back({seconds(from_ns - totals_.first_ns), seconds(to_ns - from_ns), line});
}

ArcInterval PassAccumulator::interval_to(const LogSample& sample) {
  const std::int64_t ns = sample.ns - last_.ns;
  ArcInterval interval;
  interval.begin_ns = last_.ns;
  interval.end_ns = sample.ns;
  interval.time_ns = ns;
  interval.current = held(last_, Q::current_A, ns);
  interval.voltage = held(last_, Q::voltage_V, ns);
  interval.wire_feed = held(last_, Q::wire_feed_speed_m_min, ns);
  interval.travel_speed = held(last_, Q::travel_speed_mm_s, ns);
  interval.gas_flow = held(last_, Q::gas_flow_l_min, ns);
  interval.min_current_A = interval.max_current_A = last_[Q::current_A];
  interval.min_voltage_V = interval.max_voltage_V = last_[Q::voltage_V];
  add_power(sample, ns, interval);
  if (last_.has(Q::travel_speed_mm_s)) {
    // Once the arc is out the robot may already be on its way through the air: that speed isn't welding
    // speed.
    const bool both = sample.arc_on && sample.has(Q::travel_speed_mm_s);
    const double speed =
        both ? (last_[Q::travel_speed_mm_s] + sample[Q::travel_speed_mm_s]) / 2 : last_[Q::travel_speed_mm_s];
    interval.travelled_mm = speed * seconds(ns);
  }
  if (last_.has(Q::wire_used_mm) && sample.has(Q::wire_used_mm)) {
    const double used = sample[Q::wire_used_mm] - last_[Q::wire_used_mm];
    if (used < 0) totals_.counter_resets.note(sample.line);
    interval.wire_used_mm = std::max(used, 0.0);
  }
  locate(sample, interval);
  return interval;
}

void PassAccumulator::add_power(const LogSample& sample, std::int64_t ns, ArcInterval& interval) {
  if (rules_.energy_source == EnergySource::energy_counter) {
    if (!last_.has(Q::energy_J) || !sample.has(Q::energy_J)) {
      interval.no_power_ns = ns;
      return;
    }
    const double energy = sample[Q::energy_J] - last_[Q::energy_J];
    if (energy < 0) totals_.counter_resets.note(sample.line);
    interval.energy_J = std::max(energy, 0.0);
    interval.power = {interval.energy_J * 1e9, ns};
    return;
  }
  const bool logged = rules_.energy_source == EnergySource::power;
  const Q needed = logged ? Q::power_W : Q::voltage_V;
  if (!last_.has(needed)) {
    interval.no_power_ns = ns;
    return;
  }
  const auto power_of = [&](const LogSample& s) {
    return logged ? s[Q::power_W] : s[Q::voltage_V] * s[Q::current_A];
  };
  const double before = power_of(last_), after = sample.has(needed) ? power_of(sample) : before;
  interval.power = {before * static_cast<double>(ns), ns};
  interval.energy_J = (before + after) / 2 * seconds(ns);
}

bool PassAccumulator::has_left(const LogSample& sample) const {
  if (sample.arc_on || !has_position(last_)) return false;
  const double arc_s = seconds(last_.ns - arc_begin_ns_);
  const double pace_mm_s = arc_s > 0 ? way_mm_ / arc_s : 0;
  return distance_mm(position(last_), position(sample)) > 2 * pace_mm_s * seconds(sample.ns - last_.ns) + 1;
}

void PassAccumulator::locate(const LogSample& sample, ArcInterval& interval) {
  if (!has_position(sample)) return;
  totals_.has_positions = true;
  // With the arc out the robot may already be on its way through the air: then the weld ended where it was
  // last.
  const Point_mm torch = position(has_left(sample) ? last_ : sample);
  if (!follower_) {
    const TorchPath::Increment moved = torch_path_.move_to(torch, !sample.arc_on);
    interval.torch_fine_mm = moved.fine_mm;
    interval.torch_coarse_mm = moved.coarse_mm;
    way_mm_ += moved.fine_mm;
    return;
  }
  SeamFollower& follower = *follower_;
  const double along = follower.tracker.move_to(torch, !sample.arc_on);
  const double before = std::exchange(follower.along_mm, along);
  if (!std::exchange(follower.placed, true) || follower.tracker.sprang()) return;
  interval.located = true;
  interval.along_low_mm = std::min(before, along);
  interval.along_high_mm = std::max(before, along);
  interval.progress_mm = along - before;
  way_mm_ += std::fabs(along - before);
}

void PassAccumulator::take(const ArcInterval& interval, const LogSample& sample) {
  if (repeats(last_, sample)) {
    held_.push(interval);
    if (sample.ns - repeated_since_ns_ <= rules_.frozen_ns) return;
    if (!frozen_) totals_.frozen.note(last_.line);
    frozen_ = true;
    totals_.frozen_ns += interval.end_ns - held_.front().begin_ns;
    held_.clear();
    return;
  }
  if (frozen_) {
    totals_.frozen_ns += interval.time_ns;
  } else {
    settle_held();
    settle(interval);
  }
  frozen_ = false;
  repeated_since_ns_ = sample.ns;
}

void PassAccumulator::settle_held() {
  for (; !held_.empty(); held_.pop()) settle(held_.front());
}

void PassAccumulator::settle(const ArcInterval& interval) {
  totals_.whole.add(interval);
  if (interval.located) follower_->coverage.pass(interval.along_low_mm, interval.along_high_mm);
  if (rules_.arc_start_ns == 0 && rules_.crater_ns == 0) return;  // steady is whole, see finish()
  if (interval.begin_ns >= arc_begin_ns_ + rules_.arc_start_ns) crater_.push(interval);
  add_steady_until(interval.end_ns - rules_.crater_ns);
}

void PassAccumulator::add_steady_until(std::int64_t end_ns) {
  for (; !crater_.empty() && crater_.front().end_ns <= end_ns; crater_.pop())
    totals_.steady.add(crater_.front());
}

void PassAccumulator::set_aside() {
  settle_held();
  held_.release();
  crater_.release();
}

void PassAccumulator::finish() {
  if (arc_is_on()) end_arc(last_.ns, last_.line);
  settle_held();
  held_.release();
  crater_.release();
  if (rules_.arc_start_ns == 0 && rules_.crater_ns == 0) totals_.steady = totals_.whole;
  if (!follower_) return;
  follower_->coverage.finish_piece();
  totals_.covered_mm = follower_->coverage.covered_mm();
  totals_.overlap_mm = follower_->coverage.overlap_mm();
  totals_.mean_off_mm = follower_->tracker.mean_off_mm();
  follower_.reset();
}

}  // namespace seamtakt
