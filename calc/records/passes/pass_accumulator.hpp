#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "plan/plan.hpp"
#include "records/log/log_sample.hpp"
#include "records/passes/arc_sums.hpp"
#include "records/passes/excursion_bins.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/piece_queue.hpp"
#include "records/passes/seam_progress.hpp"
#include "records/passes/torch_path.hpp"

namespace seamtakt {

/// Where a pass's energy comes from.
enum class EnergySource { voltage_and_current, power, energy_counter };

/// How samples are added up.
struct AccumulationRules {
  std::int64_t frozen_ns = 2'000'000'000;
  std::int64_t hole_ns = 1'000'000'000;  ///< a longer step, out of proportion to the others, has no samples
  std::int64_t arc_start_ns = 0, crater_ns = 0;  ///< cut off each arc to get its steady part
  EnergySource energy_source = EnergySource::voltage_and_current;
  const Seam* seam = nullptr;  ///< along which positions are projected; nullptr: not known
  std::size_t listed_interruptions = 100;
  ExcursionRules excursions;
};

/// The torch is at rest at a logged travel speed up to this (common practice, no source).
inline constexpr double standing_mm_s = 0.5;

/// Something that went wrong in a log, how often, and where first.
struct Irregularity {
  std::uint64_t count = 0, first_line = 0;
  void note(std::uint64_t line) {
    if (count++ == 0) first_line = line;
  }
};

/// What a pass's samples add up to.
struct PassTotals {
  std::uint64_t samples = 0, arc_starts = 0;
  std::int64_t first_ns = 0, latest_ns = 0;
  std::int16_t utc_offset_min = 0;
  std::uint64_t first_line = 0, last_line = 0;
  /// The same up to the row in which the arc last went out.
  std::uint64_t samples_to_arc_end = 0, line_of_arc_end = 0;
  std::int64_t first_arc_ns = 0, arc_end_ns = 0;

  ArcSums whole;
  SteadySums steady;
  std::int64_t frozen_ns = 0;
  /// Of the arcs in which the torch moved (by the logged travel speed): how long it was at rest before and
  /// after.
  std::int64_t start_stand_ns = 0, end_stand_ns = 0;
  std::uint64_t moved_arcs = 0;
  Irregularity backwards, equal_times, holes, frozen, counter_resets, arc_on_disagrees;
  std::int64_t steps_ns = 0;  ///< of all ordinary steps
  std::uint64_t steps = 0;
  std::vector<Interruption> interruptions;
  std::uint64_t interruption_count = 0;
  std::optional<double> interpass_C;  ///< at the first arc
  bool has_positions = false;
  double covered_mm = 0, overlap_mm = 0, mean_off_mm = 0;  ///< where the seam is known
  std::vector<WeldedSpan> spans;                           ///< likewise; what is covered, along its path
  ExcursionTotals excursions;                              ///< where limits are known
};

/// Neighbouring rows of one pass that were added up elsewhere: each with the arc on, each later than the one
/// before by less than a hole, none repeating the one before, none with a position or a counter, none with
/// the torch standing.
struct ArcStretch {
  ArcPiece piece;
  std::uint64_t rows = 0;
  std::int64_t least_step_ns = 0;
  std::int64_t arc_on_until_ns = 0;  ///< the arc is known to stay on until then at least
  LogSample last;
  const StretchRows* each = nullptr;  ///< the rows one by one
};

/// Rows with the arc off: each later than the one before by less than a hole.
struct OffStretch {
  std::uint64_t rows = 0;
  LogSample last;
};

/// Adds up the samples of one pass in one sweep. Memory doesn't grow with their number. Sums are whole
/// numbers: however the samples are dealt out to add() and add_stretch(), they come out the same to the last
/// bit. An interval between two samples counts as arc time where its first sample is on. Sums are of time
/// stamps as logged, never of an assumed rate.
class PassAccumulator {
 public:
  explicit PassAccumulator(const AccumulationRules& rules);

  void add(const LogSample& sample);
  /// Takes the rows that follow the last one at once; false where they must come one by one.
  bool add_stretch(const ArcStretch& stretch);
  bool add_stretch(const OffStretch& stretch);
  /// No more samples: what waits is settled.
  void finish();
  /// As finish(), but samples may still come: gives memory back at the price of a crater time at this place.
  void set_aside();

  const PassTotals& totals() const { return totals_; }
  bool arc_is_on() const { return totals_.samples > 0 && last_.arc_on; }
  std::int64_t last_ns() const { return last_.ns; }
  /// Since when the arc has been off; only where it was on before and is off now.
  std::int64_t off_since_ns() const { return off_since_ns_; }
  /// Whether the step from the last sample to this time is one without samples.
  bool is_hole(std::int64_t ns) const;

 private:
  /// Values of a sample as whole numbers.
  struct GridValues {
    std::int64_t current = 0, voltage = 0, wire_feed = 0, travel_speed = 0, gas_flow = 0, power = 0;
  };
  GridValues grid_of(const LogSample& sample) const;
  void step_to(const LogSample& sample, const GridValues& grid);
  void count_in(const LogSample& sample, std::uint64_t rows);
  void note_standing(std::int64_t ns);
  void note_motion();
  /// is_start: counted among the arc starts.
  void begin_arc(const LogSample& sample, bool is_start);
  void end_arc(std::int64_t ns, std::uint64_t line);
  void note_interruption(std::int64_t from_ns, std::int64_t to_ns, std::uint64_t line);
  ArcPiece piece_to(const LogSample& sample, const GridValues& grid);
  void add_power(const LogSample& sample, const GridValues& grid, std::int64_t ns, ArcPiece& piece);
  void locate(const LogSample& sample, ArcPiece& piece);
  bool has_left(const LogSample& sample) const;
  void take(const ArcPiece& piece, const LogSample& sample);
  void settle(const ArcPiece& piece);
  void settle_held();
  void add_steady_until(std::int64_t end_ns);
  /// The sums of the steady part as far as it is known.
  const SteadySums& steady_sums() const { return cuts_steady_part() ? totals_.steady : totals_.whole.means; }
  void watch(const SteadyPiece& added) {
    if (watch_) watch_->note(steady_sums(), added.end_ns - added.time_ns, added.end_ns);
  }
  bool cuts_steady_part() const { return rules_.arc_start_ns > 0 || rules_.crater_ns > 0; }

  AccumulationRules rules_;
  PassTotals totals_;
  LogSample last_;
  GridValues last_grid_;  ///< of last_, where its arc is on
  bool any_arc_ = false;
  std::int64_t arc_begin_ns_ = 0, off_since_ns_ = 0;
  std::uint64_t off_line_ = 0;
  bool frozen_ = false;
  bool moved_ = false;            ///< in this arc
  std::int64_t standing_ns_ = 0;  ///< since its begin, or since the torch last moved
  std::int64_t repeated_since_ns_ = 0;
  PieceQueue<ArcPiece> held_;       ///< repeat their predecessor: arc time unless it lasts too long
  PieceQueue<SteadyPiece> crater_;  ///< might turn out to be in the crater's time
  struct SeamFollower {
    SeamTracker tracker;
    SeamCoverage coverage;
    double along_mm = 0;
    bool placed = false;
  };
  std::unique_ptr<SeamFollower> follower_;
  std::unique_ptr<ExcursionWatch> watch_;  ///< where there are limits to be watched
  TorchPath torch_path_;
  double way_mm_ = 0;  ///< of this arc so far
};

}  // namespace seamtakt
