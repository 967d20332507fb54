#include "records/passes/excursion_bins.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "records/passes/seam_progress.hpp"

namespace seamtakt {

namespace {

/// Spans of a quantity that are kept apart; more than a weld that passes can have.
constexpr std::size_t most_spans = 1000;
/// Beyond what a log may hold of any quantity, and within what is on the grid.
constexpr double beyond_logged = 2.5e6;

HeldSum between(const HeldSum& from, const HeldSum& to) {
  return {to.times_ns - from.times_ns, to.ns - from.ns};
}

std::int64_t bound_on_grid(const std::optional<double>& bound, double without) {
  return on_grid(std::clamp(bound.value_or(without), -beyond_logged, beyond_logged));
}

/// The sum of a logged quantity over a bin.
HeldSum sum_of(Binned what, const BinSums& from, const BinSums& to) {
  switch (what) {
    case Binned::current:
      return between(from.current, to.current);
    case Binned::voltage:
      return between(from.voltage, to.voltage);
    case Binned::wire_feed:
      return between(from.wire_feed, to.wire_feed);
    case Binned::travel_by_signal:
      return between(from.travel_speed, to.travel_speed);
    case Binned::gas_flow:
      return between(from.gas_flow, to.gas_flow);
    case Binned::travel_by_positions:
      break;
  }
  return {};
}

/// `slack`: by which the value may be wrong either way.
std::optional<double> outside_of(const Interval& bounds, double value, double slack, bool& high) {
  const bool low = bounds.lower && value + slack < *bounds.lower;
  high = bounds.upper && value - slack > *bounds.upper;
  return low || high ? std::optional<double>(value) : std::nullopt;
}

void add_length(SteadyWay& length, const SteadyWay& from, const SteadyWay& to) {
  length.time_ns += to.time_ns - from.time_ns;
  length.travelled_mm += to.travelled_mm - from.travelled_mm;
  length.progress_mm += to.progress_mm - from.progress_mm;
}

/// Drops the shorter half of spans that are too many; the longer ones decide.
void keep_the_longest(std::vector<OutsideSpan>& spans) {
  if (spans.size() < 2 * most_spans) return;
  const auto time = [](const OutsideSpan& span) { return span.to.time_ns - span.from.time_ns; };
  std::vector<std::int64_t> times;
  for (const OutsideSpan& span : spans) times.push_back(time(span));
  const auto nth = times.begin() + static_cast<std::ptrdiff_t>(most_spans - 1);
  std::nth_element(times.begin(), nth, times.end(), std::greater<>());
  const std::int64_t least = *nth;
  auto as_long = static_cast<std::size_t>(
      std::count_if(spans.begin(), spans.end(), [&](const OutsideSpan& s) { return time(s) > least; }));
  std::erase_if(spans, [&](const OutsideSpan& span) {
    if (time(span) != least) return time(span) < least;
    return as_long++ >= most_spans;
  });
}

}  // namespace

BinSums BinSums::of(const SteadySums& sums) {
  return {sums.time_ns,
          sums.current,
          sums.voltage,
          sums.wire_feed,
          sums.travel_speed,
          sums.gas_flow,
          sums.progress_mm.value()};
}

void BinSums::add(const SteadyPiece& piece) {
  time_ns += piece.time_ns;
  current.add(piece.current);
  voltage.add(piece.voltage);
  wire_feed.add(piece.wire_feed);
  travel_speed.add(piece.travel_speed);
  gas_flow.add(piece.gas_flow);
  progress_mm += piece.progress_mm;
}

SteadyWay BinSums::way() const {
  return {time_ns, in_unit_seconds(travel_speed.times_ns), progress_mm};
}

void ExcursionBins::cut(const SteadySums& before, std::int64_t begin_ns, std::int64_t time_ns,
                        const StretchRows& rows) {
  if (!open_) open(begin_ns);
  for (std::int64_t done_ns = 0;;) {
    const std::int64_t needed_ns = width_ns_ - (before.time_ns + done_ns - begun_.time_ns);
    if (needed_ns >= time_ns - done_ns) return;  // what ends with the last row is seen by note()
    const SteadyPiece head = rows.first(done_ns + needed_ns);
    if (head.time_ns >= time_ns) return;
    BinSums now = sums_at(before);
    now.add(head);
    done_ns = head.time_ns;
    close(now, begin_ns + done_ns);
    open(begin_ns + done_ns);
  }
}

BinSums ExcursionBins::sums_at(const SteadySums& sums) const {
  BinSums now = BinSums::of(sums);
  now.intervals = intervals_;
  now.gaps = gaps_;
  return now;
}

void ExcursionBins::judge_waiting() {
  judge(waiting_from_, begun_, waiting_begin_ns_, waiting_end_ns_, begin_ns_ != waiting_end_ns_);
}

void ExcursionBins::close(const BinSums& now, std::int64_t end_ns) {
  if (has_waiting_) judge_waiting();
  has_waiting_ = true;
  waiting_from_ = begun_;
  waiting_begin_ns_ = begin_ns_;
  waiting_end_ns_ = end_ns;
  begun_ = now;
  open_ = false;
}

void ExcursionBins::finish(const SteadySums& sums, ExcursionTotals& totals) {
  const BinSums now = sums_at(sums);
  const std::int64_t left_ns = now.time_ns - begun_.time_ns;
  if (has_waiting_ && 2 * left_ns >= width_ns_) {
    judge_waiting();
    judge(begun_, now, begin_ns_, latest_ns_, true);
  } else if (has_waiting_) {
    judge(waiting_from_, now, waiting_begin_ns_, left_ns > 0 ? latest_ns_ : waiting_end_ns_, true);
  }
  for (std::size_t i = 0; i < limits_.size(); ++i) {
    const auto what = static_cast<std::size_t>(limits_[i].what);
    totals.spans.insert(totals.spans.end(), outside_[i].spans.begin(), outside_[i].spans.end());
    totals.count[what] = outside_[i].count;
    totals.outside[what] = outside_[i].length;
  }
}

void ExcursionBins::judge(const BinSums& from, const BinSums& to, std::int64_t begin_ns, std::int64_t end_ns,
                          bool gap_behind) {
  const bool at_gap = gap_behind || to.gaps != from.gaps;
  for (std::size_t i = 0; i < limits_.size(); ++i) {
    const Limit& limit = limits_[i];
    bool high = false;
    const auto value = outside_value(limit, from, to, at_gap, high);
    if (!value) continue;
    const SteadyWay begin = from.way(), end = to.way();
    Outside& outside = outside_[i];
    add_length(outside.length, begin, end);
    OutsideSpan* const last = outside.spans.empty() ? nullptr : &outside.spans.back();
    if (last != nullptr && last->high == high && last->to.time_ns == begin.time_ns) {
      last->end_ns = end_ns;
      last->to = end;
      last->worst = high ? std::max(last->worst, *value) : std::min(last->worst, *value);
      continue;
    }
    ++outside.count;
    keep_the_longest(outside.spans);
    outside.spans.push_back({limit.what, high, begin_ns, end_ns, begin, end, *value,
                             high ? *limit.bounds.upper : *limit.bounds.lower});
  }
}

std::optional<double> ExcursionBins::outside_value(const Limit& limit, const BinSums& from, const BinSums& to,
                                                   bool at_gap, bool& high) const {
  if (limit.what == Binned::travel_by_positions) {
    const double time_s = seconds(to.time_ns - from.time_ns);
    const double way_mm = std::fabs(to.progress_mm - from.progress_mm);
    const auto intervals = static_cast<double>(std::max<std::int64_t>(to.intervals - from.intervals, 1));
    // Either end may lag behind by what the tracker gathers up. At an arc's ends nobody saw when, between two
    // samples, the torch set out or stopped, nor when the arc was struck or went out.
    const double slack_mm = SeamTracker::least_move_mm + (at_gap ? 2 * way_mm / intervals : 0);
    return outside_of(limit.bounds, way_mm / time_s, slack_mm / time_s, high);
  }
  const HeldSum sum = sum_of(limit.what, from, to);
  if (sum.ns == 0) return std::nullopt;
  if (limit.what == Binned::voltage && lead_ohm_ > 0) {
    const double current_A = between(from.current, to.current).mean().value_or(0);
    return outside_of(limit.bounds, *sum.mean() - lead_ohm_ * current_A, 0, high);
  }
  const bool low = limit.bounds.lower && sum.times_ns < static_cast<Int128>(limit.lower) * sum.ns;
  high = limit.bounds.upper && sum.times_ns > static_cast<Int128>(limit.upper) * sum.ns;
  return low || high ? sum.mean() : std::nullopt;
}

ExcursionWatch::ExcursionWatch(const ExcursionRules& rules) {
  if (rules.limits == nullptr) return;
  std::vector<ExcursionBins::Limit> limits, of_gas;
  const auto add = [](std::vector<ExcursionBins::Limit>& to, Binned what,
                      const std::optional<Interval>& bounds) {
    if (bounds && (bounds->lower || bounds->upper))
      to.push_back({what, *bounds, bound_on_grid(bounds->lower, -beyond_logged),
                    bound_on_grid(bounds->upper, beyond_logged)});
  };
  add(limits, Binned::current, rules.limits->current_A);
  add(limits, Binned::voltage, rules.limits->voltage_V);
  add(limits, Binned::wire_feed, rules.limits->wire_feed_speed_m_min);
  add(limits, Binned::travel_by_signal, rules.limits->travel_speed_mm_s);
  if (rules.by_positions) add(limits, Binned::travel_by_positions, rules.limits->travel_speed_mm_s);
  add(of_gas, Binned::gas_flow, rules.limits->gas_flow_l_min);
  if (!limits.empty()) bins_.emplace_back(rules.window_ns, std::move(limits), rules.lead_ohm);
  if (!of_gas.empty()) bins_.emplace_back(rules.gas_window_ns, std::move(of_gas), 0);
}

ExcursionTotals ExcursionWatch::finish(const SteadySums& sums) {
  ExcursionTotals totals;
  totals.whole = BinSums::of(sums).way();
  for (ExcursionBins& bins : bins_) bins.finish(sums, totals);
  return totals;
}

}  // namespace seamtakt
