#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "line/line_model.hpp"
#include "line/line_run.hpp"

namespace seamtakt {

/// What the assembly line behind this one wants: its first unit at `first_s`, and one every `takt_s` from
/// then on.
struct TaktGoal {
  double takt_s = 0, first_s = 0;
};

/// The first unit is wanted when a mean unit would be through a line that has nothing else to do: the mean
/// over the units of their work at all stages. So no order of the same units has an advantage by its first
/// one.
TaktGoal takt_goal(const LineModel& model, double takt_s);

/// How a run serves the assembly line. A unit that is early waits there; one that isn't there when it is
/// wanted is a takt miss, and the next one is wanted takt_s after it came. Scrap serves nobody. Source:
/// derived from this definition.
struct TaktCount {
  int misses = 0;
  double lost_s = 0;  ///< that the assembly line waited
  /// Units that left more than takt_s behind the one before, whether wanted or not.
  int intervals_over_takt = 0;
};
TaktCount count_takt(const LineRun& run, const TaktGoal& goal);

enum class MissCause { repair, change, rework, work };
/// "repair", "wire or tip change", ...
Word word_of(MissCause cause);

/// A takt miss and what made it. The chain of activities without a gap that ended with the unit's leaving is
/// compared with that of the miss before, which set when this unit was wanted (with the begin of the day for
/// the first). If the unit had come in time without the repairs that its chain has more, they are the cause;
/// else its wire and tip changes, else its rework (all work on scrap, and on other units what goes beyond one
/// visit of each stage); at the stage with most of it. Else it is the work, at the stage with most
/// of that.
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
