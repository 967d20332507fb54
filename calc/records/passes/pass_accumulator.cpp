#include "records/passes/pass_accumulator.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace seamtakt {

namespace {

using Q = LogQuantity;

/// Steps needed before a long one can be told from a slow logger's ordinary one.
constexpr std::uint64_t steps_to_know = 8;
constexpr std::int64_t out_of_proportion = 10;

/// Cells into which the times that wait are divided: at ordinary rates each interval has one of its own.
constexpr std::int64_t crater_cells = 4096, held_cells = 1024;

std::int64_t cell_width_ns(std::int64_t span_ns, std::int64_t cells) {
  return std::max<std::int64_t>(span_ns / cells, 1);
}

HeldSum held(const LogSample& sample, Q quantity, std::int64_t on_grid_value, std::int64_t ns) {
  HeldSum sum;
  if (sample.has(quantity)) sum.add(on_grid_value, ns);
  return sum;
}

bool has_position(const LogSample& sample) {
  return sample.has(Q::x_mm) && sample.has(Q::y_mm);
}

Point_mm position(const LogSample& sample) {
  return {sample[Q::x_mm], sample[Q::y_mm], sample[Q::z_mm]};
}

/// Whether a logger repeated current and voltage (or the power given instead), to the last digit.
bool repeats(const LogSample& a, const LogSample& b) {
  if (a[Q::current_A] != b[Q::current_A]) return false;
  const Q beside = a.has(Q::voltage_V) ? Q::voltage_V : a.has(Q::power_W) ? Q::power_W : Q::energy_J;
  return a.has(beside) && b.has(beside) && a[beside] == b[beside];
}

}  // namespace

PassAccumulator::PassAccumulator(const AccumulationRules& rules) : rules_(rules) {
  if (rules_.seam != nullptr && rules_.seam->path_mm.size() >= 2) {
    SeamTracker tracker(*rules_.seam);
    const SeamCoverage coverage(tracker.length_mm(), tracker.closed());
    follower_ = std::make_unique<SeamFollower>(SeamFollower{tracker, coverage});
  }
  rules_.excursions.by_positions = follower_ != nullptr;
  ExcursionWatch watch(rules_.excursions);
  if (watch.any()) watch_ = std::make_unique<ExcursionWatch>(std::move(watch));
}

bool PassAccumulator::is_hole(std::int64_t ns) const {
  const std::int64_t step = ns - last_.ns;
  if (step <= rules_.hole_ns || totals_.steps < steps_to_know) return false;
  return step > out_of_proportion * (totals_.steps_ns / static_cast<std::int64_t>(totals_.steps));
}

PassAccumulator::GridValues PassAccumulator::grid_of(const LogSample& sample) const {
  GridValues grid;
  grid.current = on_grid(sample[Q::current_A]);
  grid.voltage = on_grid(sample[Q::voltage_V]);
  grid.wire_feed = on_grid(sample[Q::wire_feed_speed_m_min]);
  grid.travel_speed = on_grid(sample[Q::travel_speed_mm_s]);
  grid.gas_flow = on_grid(sample[Q::gas_flow_l_min]);
  grid.power = rules_.energy_source == EnergySource::power
                   ? on_grid(sample[Q::power_W])
                   : static_cast<std::int64_t>(product_on_grid(grid.voltage, grid.current));
  return grid;
}

void PassAccumulator::add(const LogSample& sample) {
  const bool first = totals_.samples == 0;
  GridValues grid;
  if (sample.arc_on || (!first && last_.arc_on)) grid = grid_of(sample);
  if (first) {
    totals_.first_ns = totals_.latest_ns = sample.ns;
    totals_.first_line = sample.line;
    totals_.utc_offset_min = sample.utc_offset_min;
    if (sample.arc_on) begin_arc(sample, true);
  } else {
    step_to(sample, grid);
  }
  count_in(sample, 1);
  if (sample.arc_on_logged >= 0 && (sample.arc_on_logged == 1) != sample.arc_on)
    totals_.arc_on_disagrees.note(sample.line);
  last_ = sample;
  last_grid_ = grid;
}

void PassAccumulator::count_in(const LogSample& sample, std::uint64_t rows) {
  const bool arc_reaches_here = sample.arc_on || (totals_.samples > 0 && last_.arc_on);
  totals_.samples += rows;
  totals_.latest_ns = std::max(totals_.latest_ns, sample.ns);
  totals_.last_line = sample.line;
  if (!arc_reaches_here) return;
  totals_.samples_to_arc_end = totals_.samples;
  totals_.line_of_arc_end = sample.line;
  totals_.arc_end_ns = totals_.latest_ns;
}

void PassAccumulator::step_to(const LogSample& sample, const GridValues& grid) {
  const std::int64_t step = sample.ns - last_.ns;
  const bool hole = is_hole(sample.ns);
  if (step > 0 && !hole) {
    totals_.steps_ns += step;
    ++totals_.steps;
  }
  if (step < 0) totals_.backwards.note(sample.line);
  if (step == 0) totals_.equal_times.note(sample.line);
  if (last_.arc_on && (step < 0 || hole)) {
    // The time between is unknown: the arc is assumed to end here and to begin again.
    end_arc(last_.ns, last_.line);
    if (hole) totals_.holes.note(sample.line);
    if (sample.arc_on) begin_arc(sample, hole);
    return;
  }
  if (last_.arc_on && step > 0) {
    note_standing(step);
    take(piece_to(sample, grid), sample);
  }
  if (last_.arc_on && step == 0 && !repeats(last_, sample)) {
    settle_held();
    frozen_ = false;
    repeated_since_ns_ = sample.ns;
  }
  if (sample.arc_on && !last_.arc_on) begin_arc(sample, true);
  if (!sample.arc_on && last_.arc_on) end_arc(sample.ns, sample.line);
}

void PassAccumulator::note_standing(std::int64_t ns) {
  if (!last_.has(Q::travel_speed_mm_s)) return;
  if (last_[Q::travel_speed_mm_s] <= standing_mm_s) {
    standing_ns_ += ns;
  } else {
    note_motion();
  }
}

void PassAccumulator::note_motion() {
  if (!moved_) totals_.start_stand_ns += standing_ns_;
  moved_ = true;
  standing_ns_ = 0;
}

void PassAccumulator::begin_arc(const LogSample& sample, bool is_start) {
  if (any_arc_ && sample.ns >= off_since_ns_) note_interruption(off_since_ns_, sample.ns, off_line_);
  if (!any_arc_ && sample.has(Q::interpass_C)) totals_.interpass_C = sample[Q::interpass_C];
  if (!any_arc_) totals_.first_arc_ns = sample.ns;
  any_arc_ = true;
  if (is_start) ++totals_.arc_starts;
  arc_begin_ns_ = repeated_since_ns_ = sample.ns;
  frozen_ = moved_ = false;
  standing_ns_ = 0;
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
  if (moved_) {
    totals_.end_stand_ns += standing_ns_;
    ++totals_.moved_arcs;
  }
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

ArcPiece PassAccumulator::piece_to(const LogSample& sample, const GridValues& grid) {
  const std::int64_t ns = sample.ns - last_.ns;
  ArcPiece piece;
  piece.begin_ns = last_.ns;
  piece.steady.end_ns = sample.ns;
  piece.steady.time_ns = ns;
  piece.steady.current = held(last_, Q::current_A, last_grid_.current, ns);
  piece.steady.voltage = held(last_, Q::voltage_V, last_grid_.voltage, ns);
  piece.steady.wire_feed = held(last_, Q::wire_feed_speed_m_min, last_grid_.wire_feed, ns);
  piece.steady.travel_speed = held(last_, Q::travel_speed_mm_s, last_grid_.travel_speed, ns);
  piece.steady.gas_flow = held(last_, Q::gas_flow_l_min, last_grid_.gas_flow, ns);
  piece.current_squared = product_on_grid(last_grid_.current, last_grid_.current) * ns;
  piece.voltage_squared = product_on_grid(last_grid_.voltage, last_grid_.voltage) * ns;
  piece.min_current_A = piece.max_current_A = last_[Q::current_A];
  piece.min_voltage_V = piece.max_voltage_V = last_[Q::voltage_V];
  add_power(sample, grid, ns, piece);
  if (last_.has(Q::travel_speed_mm_s)) {
    // Once the arc is out the robot may already be on its way through the air: that speed isn't welding
    // speed.
    const bool both = sample.arc_on && sample.has(Q::travel_speed_mm_s);
    piece.travelled_twice =
        static_cast<Int128>(last_grid_.travel_speed + (both ? grid.travel_speed : last_grid_.travel_speed)) *
        ns;
  }
  if (last_.has(Q::wire_used_mm) && sample.has(Q::wire_used_mm)) {
    const double used = sample[Q::wire_used_mm] - last_[Q::wire_used_mm];
    if (used < 0) totals_.counter_resets.note(sample.line);
    piece.wire_used_mm = std::max(used, 0.0);
  }
  locate(sample, piece);
  return piece;
}

void PassAccumulator::add_power(const LogSample& sample, const GridValues& grid, std::int64_t ns,
                                ArcPiece& piece) {
  if (rules_.energy_source == EnergySource::energy_counter) {
    if (!last_.has(Q::energy_J) || !sample.has(Q::energy_J)) {
      piece.no_power_ns = ns;
      return;
    }
    const double energy = sample[Q::energy_J] - last_[Q::energy_J];
    if (energy < 0) totals_.counter_resets.note(sample.line);
    piece.counted_J = std::max(energy, 0.0);
    piece.steady.power.ns = ns;
    return;
  }
  const bool logged = rules_.energy_source == EnergySource::power;
  const Q needed = logged ? Q::power_W : Q::voltage_V;
  if (!last_.has(needed)) {
    piece.no_power_ns = ns;
    return;
  }
  piece.steady.power.add(last_grid_.power, ns);
  const std::int64_t after = sample.has(needed) ? grid.power : last_grid_.power;
  piece.energy_twice = (static_cast<Int128>(last_grid_.power) + after) * ns;
}

bool PassAccumulator::has_left(const LogSample& sample) const {
  if (sample.arc_on || !has_position(last_)) return false;
  const double arc_s = seconds(last_.ns - arc_begin_ns_);
  const double pace_mm_s = arc_s > 0 ? way_mm_ / arc_s : 0;
  return distance_mm(position(last_), position(sample)) > 2 * pace_mm_s * seconds(sample.ns - last_.ns) + 1;
}

void PassAccumulator::locate(const LogSample& sample, ArcPiece& piece) {
  if (!has_position(sample)) return;
  totals_.has_positions = true;
  // With the arc out the robot may already be on its way through the air: then the weld ended where it was
  // last.
  const Point_mm torch = position(has_left(sample) ? last_ : sample);
  if (!follower_) {
    const TorchPath::Increment moved = torch_path_.move_to(torch, !sample.arc_on);
    piece.torch_fine_mm = moved.fine_mm;
    piece.torch_coarse_mm = moved.coarse_mm;
    way_mm_ += moved.fine_mm;
    return;
  }
  SeamFollower& follower = *follower_;
  const double along = follower.tracker.move_to(torch, !sample.arc_on);
  const double before = std::exchange(follower.along_mm, along);
  if (!std::exchange(follower.placed, true) || follower.tracker.sprang()) return;
  piece.located = true;
  piece.along_low_mm = std::min(before, along);
  piece.along_high_mm = std::max(before, along);
  piece.steady.progress_mm = along - before;
  way_mm_ += std::fabs(along - before);
}

void PassAccumulator::take(const ArcPiece& piece, const LogSample& sample) {
  if (repeats(last_, sample)) {
    if (frozen_ || sample.ns - repeated_since_ns_ > rules_.frozen_ns) {
      if (!frozen_) totals_.frozen.note(last_.line);
      frozen_ = true;
      totals_.frozen_ns += sample.ns - (held_.empty() ? piece.begin_ns : held_.front().begin_ns);
      held_.clear();
      return;
    }
    held_.push((piece.begin_ns - repeated_since_ns_) / cell_width_ns(rules_.frozen_ns, held_cells), piece,
               [](ArcPiece& earlier, const ArcPiece& later) { earlier.merge(later); });
    return;
  }
  if (frozen_) {
    totals_.frozen_ns += piece.steady.time_ns;
  } else {
    settle_held();
    settle(piece);
  }
  frozen_ = false;
  repeated_since_ns_ = sample.ns;
}

void PassAccumulator::settle_held() {
  for (; !held_.empty(); held_.pop()) settle(held_.front());
}

void PassAccumulator::settle(const ArcPiece& piece) {
  totals_.whole.add(piece);
  if (piece.located) follower_->coverage.pass(piece.along_low_mm, piece.along_high_mm);
  if (!cuts_steady_part()) return watch(piece.steady);  // steady is whole, see finish()
  if (piece.begin_ns >= arc_begin_ns_ + rules_.arc_start_ns)
    crater_.push((piece.begin_ns - arc_begin_ns_) / cell_width_ns(rules_.crater_ns, crater_cells),
                 piece.steady, [](SteadyPiece& earlier, const SteadyPiece& later) { earlier.add(later); });
  add_steady_until(piece.steady.end_ns - rules_.crater_ns);
}

void PassAccumulator::add_steady_until(std::int64_t end_ns) {
  for (; !crater_.empty() && crater_.front().end_ns <= end_ns; crater_.pop()) {
    totals_.steady.add(crater_.front());
    watch(crater_.front());
  }
}

bool PassAccumulator::add_stretch(const ArcStretch& stretch) {
  const ArcPiece& piece = stretch.piece;
  if (totals_.samples == 0 || !last_.arc_on || frozen_ || last_.ns != piece.begin_ns) return false;
  const std::int64_t steady_from_ns = arc_begin_ns_ + rules_.arc_start_ns;
  const std::int64_t settled_ns = stretch.arc_on_until_ns - rules_.crater_ns;
  if (cuts_steady_part()) {
    // Each interval must have a cell of its own, and the whole stretch be on one side of each cut.
    const bool own_cells = stretch.least_step_ns >= cell_width_ns(rules_.crater_ns, crater_cells);
    const bool one_side = piece.begin_ns >= steady_from_ns ? piece.steady.end_ns <= settled_ns
                                                           : piece.steady.end_ns <= steady_from_ns;
    if (!own_cells || !one_side) return false;
  }
  settle_held();
  if (piece.steady.travel_speed.ns > 0) note_motion();
  if (cuts_steady_part()) add_steady_until(std::min(settled_ns, piece.begin_ns));
  const bool is_steady = !cuts_steady_part() || piece.begin_ns >= steady_from_ns;
  if (is_steady && watch_) watch_->cut(steady_sums(), piece.begin_ns, piece.steady.time_ns, *stretch.each);
  totals_.whole.add(piece);
  if (is_steady && cuts_steady_part()) totals_.steady.add(piece.steady);
  if (is_steady) watch(piece.steady);
  totals_.steps_ns += piece.steady.time_ns;
  totals_.steps += stretch.rows;
  repeated_since_ns_ = stretch.last.ns;
  count_in(stretch.last, stretch.rows);
  last_ = stretch.last;
  last_grid_ = grid_of(last_);
  return true;
}

bool PassAccumulator::add_stretch(const OffStretch& stretch) {
  if (totals_.samples == 0 || last_.arc_on) return false;
  totals_.steps_ns += stretch.last.ns - last_.ns;
  totals_.steps += stretch.rows;
  count_in(stretch.last, stretch.rows);
  last_ = stretch.last;
  return true;
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
  if (!cuts_steady_part()) totals_.steady = totals_.whole.means;
  if (watch_) totals_.excursions = watch_->finish(totals_.steady);
  watch_.reset();
  if (!follower_) return;
  follower_->coverage.finish_piece();
  totals_.covered_mm = follower_->coverage.covered_mm();
  totals_.overlap_mm = follower_->coverage.overlap_mm();
  totals_.spans = follower_->coverage.spans();
  totals_.mean_off_mm = follower_->tracker.mean_off_mm();
  follower_.reset();
}

}  // namespace seamtakt
