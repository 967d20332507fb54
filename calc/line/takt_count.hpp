#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "line/line_model.hpp"
#include "line/line_run.hpp"

namespace seamtakt {

/// Demand of the assembly line after this one: its first unit at `first_s`, and one every `takt_s` from then
/// on.
struct TaktGoal {
  double takt_s = 0, first_s = 0;
};

/// The first unit is due when a mean unit would have passed an otherwise empty line: the mean over the units
/// of their work at all stages. So no order of the same units gains by its first one.
TaktGoal takt_goal(const LineModel& model, double takt_s);

/// How a run supplies the assembly line. A unit that is early waits there; one that isn't there when it is
/// due is a takt miss, and the next one is due takt_s after its arrival. Scrap doesn't count. Source: derived
/// from this definition.
struct TaktCount {
  int misses = 0;
  double lost_s = 0;  ///< that the assembly line waited
  /// Units that left more than takt_s after the one before, whether due or not.
  int intervals_over_takt = 0;
};
TaktCount count_takt(const LineRun& run, const TaktGoal& goal);

enum class MissCause { repair, change, parts, rework, work };
/// "repair", "wire or tip change", "parts that came late", ...
Word word_of(MissCause cause);

/// A takt miss and its cause. The gapless chain of activities that ended with the unit's leaving is compared
/// with that of the previous miss, which set when this unit was due (for the first: with the begin of the
/// day). If the unit would have been in time without the additional repairs in its chain, they are the cause;
/// else its wire and tip changes, else the time until a cart was complete, else its rework (all work on
/// scrap, and on other units all work beyond one visit of each stage); at the stage with most of it. Else it
/// is the work, at the stage with most of that.
struct TaktMiss {
  std::uint32_t unit = 0;
  double wanted_s = 0, left_s = 0;
  int stage = 0;
  MissCause cause = MissCause::work;
};
std::vector<TaktMiss> explain_misses(const LineRun& run, const LineTrace& trace, std::size_t stages,
                                     const TaktGoal& goal);

/// Units that leave right, per hour: those that left after the first instant of leaving, over the time from
/// then to the last, so that filling and emptying the line don't count. Where all leave at once: over the
/// makespan. 0 where none leaves, or at once.
double throughput_per_h(const LineRun& run);

/// Units that leave right, per hour of a day of `day_s`, or of the run where that takes longer. For a run of
/// a part of the day's units: those left out make the day no shorter, so leaving out slow ones is no gain.
double finished_per_h(const LineRun& run, double day_s);

/// The units one after another that took longest to leave.
struct WorstWindow {
  int units = 0;  ///< that left within it, the one at its begin not counted
  double start_s = 0, end_s = 0;
  double throughput_per_h = 0;
};
/// `units`: how many, at least 1; fewer where the run has fewer. Empty for less than two units.
std::optional<WorstWindow> worst_window(const LineRun& run, int units);

}  // namespace seamtakt
