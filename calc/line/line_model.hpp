#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "line/random_stream.hpp"
#include "line/work_hours.hpp"
#include "line/work_variation.hpp"

namespace seamtakt {

/// A stage of the line, as numbers.
struct LineStage {
  std::string id;
  int servers = 1;
  int buffer_after = 0;  ///< units that may wait after it; after the last stage any number, but for a pull
  /// Share of time in which a server can work, and the mean time of a stop. A stop comes after an
  /// exponentially distributed time of work (not of waiting), the work then continues where it was, and the
  /// repair is exponentially distributed; mean work between stops = repair*availability/(1 - availability).
  /// Without a repair time the stops are spread evenly: work takes 1/availability as long.
  /// Source: derived; both distributions are common practice, no source.
  double availability = 1, repair_s = 0;
  double yield = 1;     ///< share of units that leave it right; the others go to `rework_to`
  int rework_to = -1;   ///< this stage or an earlier one; -1: a unit that isn't right leaves as scrap
  double rework_s = 0;  ///< work that a unit sent back needs there; then it passes all later stages again
  WorkVariation variation{};  ///< of its work, but not of rework
  int people = -1;            ///< group of which one person is there while it works; -1: it needs none
};

/// People whom stages share: one of them is at a service from its begin to its end, stops and changes
/// included, and not while a unit waits or blocks its server.
struct LinePeople {
  std::string id;
  int count = 1;
};

/// The assembly line takes the first unit at first_s and then one a takt from the last buffer; where none is
/// there it takes the next as soon as it comes, and counts from then. A unit that is taken has left the line.
struct LinePull {
  double takt_s = 0, first_s = 0;
};

/// A line and the units that go through it, in the order of their release. Times are in s of working time.
struct LineModel {
  std::vector<LineStage> stages;
  std::vector<std::uint32_t> random_stream_id;  ///< per unit: its number in the random streams
  std::vector<double> work_s;    ///< [unit*stages + stage], first visit and every later one but a rework
  int change_stage = -1;         ///< where change_s is spent
  std::vector<double> change_s;  ///< per unit: wire package and tip changes; empty: none
  std::vector<LinePeople> people;
  std::optional<LinePull> pull;  ///< empty: units leave as they are done
  /// Per unit: before then it isn't complete, and those behind it go first; empty: all are at 0.
  std::vector<double> available_s;
  std::vector<double> due_s;               ///< per unit, infinite where it isn't due; empty: none is
  std::shared_ptr<const WorkHours> hours;  ///< none: working time is the clock's

  std::size_t unit_count() const { return random_stream_id.size(); }
  std::size_t stage_count() const { return stages.size(); }
};

/// Throws InputError for an impossible model: no stage, a share or time outside its range, rework to a
/// later stage, fewer than 1 % right where the others are sent back, more than 1000 stops to expect while a
/// unit is at a stage. std::invalid_argument where the lists
/// don't fit together. Where it came from is named by `where`.
void check_line_model(const LineModel& model, const std::string& where);

/// Random stops to expect while each unit makes one visit of each stage: work / (mean work between stops).
double expected_stops(const LineModel& model);

/// Whether the line is deterministic.
bool is_certain(const LineModel& model);

/// What a stage's stops cost, prepared for drawing. Common random numbers: the stops of a unit at a stage
/// depend on seed, stage, unit and visit alone.
class StopTimes {
 public:
  StopTimes(const LineModel& model, std::uint64_t seed);

  /// Time of stops (s) while `work_s` is done.
  double stop_s(std::size_t stage, std::uint32_t random_stream_id, std::uint32_t visit, double work_s) const {
    const Stage& s = stages_[stage];
    if (s.kind == Kind::none) return 0;
    if (s.kind == Kind::even) return work_s * s.even_per_s;
    // -log u >= 1 - u: most services see no stop and need no logarithm.
    const double u = s.up.uniform(random_stream_id, visit);
    return (1 - u) * s.mean_up_s >= work_s ? 0 : drawn_s(s, random_stream_id, visit, work_s, u);
  }

  /// Whether the unit leaves the stage right.
  bool right(std::size_t stage, std::uint32_t random_stream_id, std::uint32_t visit) const {
    const Stage& s = stages_[stage];
    // uniform() is never 0, so a yield of 0 lets nothing pass.
    return s.yield >= 1 || s.quality.uniform(random_stream_id, visit) <= s.yield;
  }

 private:
  enum class Kind { none, even, random };
  struct Stage {
    Kind kind = Kind::none;
    double even_per_s = 0;
    double mean_up_s = 0, repair_s = 0, yield = 1;
    RandomStream up, repair, quality;
  };
  /// `u`: the first draw of its time of work.
  static double drawn_s(const Stage& stage, std::uint32_t random_stream_id, std::uint32_t visit,
                        double work_s, double u);
  std::vector<Stage> stages_;
};

}  // namespace seamtakt
