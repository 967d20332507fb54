#pragma once

#include <array>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "plan/plan.hpp"
#include "records/passes/arc_sums.hpp"

namespace seamtakt {

/// What is judged bin by bin. The travel speed comes from the signal or from the positions: which of the two
/// counts is known when the log is read.
enum class Binned { current, voltage, wire_feed, travel_by_signal, travel_by_positions, gas_flow };
inline constexpr std::size_t binned_count = 6;

/// By what a pass is judged bin by bin.
struct ExcursionRules {
  const ScheduleLimits* limits = nullptr;  ///< nullptr: it isn't
  std::int64_t window_ns = 0, gas_window_ns = 0;
  double lead_ohm = 0;        ///< between where the voltage is measured and the arc
  bool by_positions = false;  ///< whether positions are followed along the seam
};

/// How far a pass has come along its steady part, in each of the measures that may turn out to be its length.
struct SteadyWay {
  std::int64_t time_ns = 0;
  double travelled_mm = 0;  ///< by the logged travel speed
  double progress_mm = 0;   ///< by positions, signed
};

/// Neighbouring bins that lay beyond the same bound.
struct OutsideSpan {
  Binned what = Binned::current;
  bool high = false;
  std::int64_t begin_ns = 0, end_ns = 0;  ///< as logged
  SteadyWay from, to;
  double worst = 0;  ///< mean of the bin that lay furthest out
  double limit = 0;
};

/// What the bins of a pass came to.
struct ExcursionTotals {
  std::vector<OutsideSpan> spans;                   ///< in order, by quantity: those kept
  std::array<std::uint64_t, binned_count> count{};  ///< of all spans
  std::array<SteadyWay, binned_count> outside{};    ///< length of all spans, in each measure
  SteadyWay whole;                                  ///< of the steady part
};

/// Sums of the steady part's beginning.
struct BinSums {
  std::int64_t time_ns = 0;
  HeldSum current, voltage, wire_feed, travel_speed, gas_flow;
  double progress_mm = 0;
  /// Of the rows that came one by one, as all with positions do: intervals, and those with a gap before them.
  std::int64_t intervals = 0, gaps = 0;

  static BinSums of(const SteadySums& sums);
  void add(const SteadyPiece& piece);
  SteadyWay way() const;
};

/// Rows that are added up at once, to be cut where a bin ends.
class StretchRows {
 public:
  virtual ~StretchRows() = default;
  /// What their first intervals add up to: as few as make `least_ns`, or all.
  virtual SteadyPiece first(std::int64_t least_ns) const = 0;
};

/// Consecutive bins of one width over the steady part of a pass. A bin takes whole intervals, as many as make
/// the width, from where the one before ended; it continues after an arc-off gap. What is left at the end is
/// a bin where it makes half a width, else it belongs to the bin before. A steady part shorter than the width
/// has no bins: its mean judges it.
///
/// A bin's sums are the differences of the pass's running sums at its two ends, so that a row costs a
/// compare. The sums are whole numbers, and where a bin ends follows from the rows alone: chunks and threads
/// don't show. Memory: the spans outside a limit, of which the longest are kept.
class ExcursionBins {
 public:
  struct Limit {
    Binned what;
    Interval bounds;
    std::int64_t lower, upper;  ///< on the grid
  };

  ExcursionBins(std::int64_t width_ns, std::vector<Limit> limits, double lead_ohm)
      : width_ns_(width_ns), limits_(std::move(limits)), lead_ohm_(lead_ohm), outside_(limits_.size()) {}

  /// After each interval: the sums with it.
  void note(const SteadySums& sums, std::int64_t begin_ns, std::int64_t end_ns) {
    if (!open_) open(begin_ns);
    ++intervals_;
    if (begin_ns != latest_ns_) ++gaps_;
    latest_ns_ = end_ns;
    if (sums.time_ns - begun_.time_ns >= width_ns_) close(sums_at(sums), end_ns);
  }
  /// Before rows are added at once that take `time_ns` from `begin_ns` on: ends the bins that end within
  /// them.
  void cut(const SteadySums& before, std::int64_t begin_ns, std::int64_t time_ns, const StretchRows& rows);
  void finish(const SteadySums& sums, ExcursionTotals& totals);

 private:
  struct Outside {
    std::vector<OutsideSpan> spans;
    std::uint64_t count = 0;
    SteadyWay length;
  };

  void open(std::int64_t begin_ns) {
    open_ = true;
    begin_ns_ = begin_ns;
  }
  BinSums sums_at(const SteadySums& sums) const;
  void close(const BinSums& now, std::int64_t end_ns);
  void judge_waiting();
  /// gap_behind: the next interval doesn't follow on the bin's last one, or there is none.
  void judge(const BinSums& from, const BinSums& to, std::int64_t begin_ns, std::int64_t end_ns,
             bool gap_behind);
  std::optional<double> outside_value(const Limit& limit, const BinSums& from, const BinSums& to, bool at_gap,
                                      bool& high) const;

  std::int64_t width_ns_;
  std::vector<Limit> limits_;
  double lead_ohm_;
  std::vector<Outside> outside_;  ///< of each limit
  BinSums begun_;                 ///< where the bin began that is being filled
  bool open_ = false;             ///< it holds an interval
  std::int64_t begin_ns_ = 0, latest_ns_ = std::numeric_limits<std::int64_t>::min();
  std::int64_t intervals_ = 0, gaps_ = 0;
  // The bin before it waits, as it may have to take in what is left at the end.
  bool has_waiting_ = false;
  BinSums waiting_from_;
  std::int64_t waiting_begin_ns_ = 0, waiting_end_ns_ = 0;
};

/// The bins of a pass: those of the gas flow have a width of their own.
class ExcursionWatch {
 public:
  explicit ExcursionWatch(const ExcursionRules& rules);
  /// Whether there is a limit to be watched.
  bool any() const { return !bins_.empty(); }

  void note(const SteadySums& sums, std::int64_t begin_ns, std::int64_t end_ns) {
    for (ExcursionBins& bins : bins_) bins.note(sums, begin_ns, end_ns);
  }
  void cut(const SteadySums& before, std::int64_t begin_ns, std::int64_t time_ns, const StretchRows& rows) {
    for (ExcursionBins& bins : bins_) bins.cut(before, begin_ns, time_ns, rows);
  }
  ExcursionTotals finish(const SteadySums& sums);

 private:
  std::vector<ExcursionBins> bins_;
};

}  // namespace seamtakt
