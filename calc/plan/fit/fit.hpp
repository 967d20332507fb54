#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "base/parallel/thread_pool.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Settings for seams inside all limits: wire feed speed, arc voltage, travel speed and the number of passes,
/// best by one measure, in steps that a robot's panel has (0.1 m/min, 0.1 V, 0.1 mm/s; a fifth of that where
/// a window is narrower). All that `evaluate` calls a fail is a limit, and so is the largest fillet
/// (plan/largest_fillet.hpp): heat input that only more weld metal would bring is no improvement. The planned
/// preheat is enough for the fitted settings where such settings exist; otherwise they need no more preheat
/// than the planned ones. So is the limit of the estimated hardness kept, with the estimate's scatter, where
/// such settings exist. Where the planned settings break a limit or are short of preheat, and a schedule of
/// the plan meets all limits unchanged, the seam takes that schedule. Voltage follows the current along the
/// conventional load line (0.05 V/A, IEC 60974-1, recalled), so that the arc keeps its length, and leaves
/// that line only where nothing fits on it. Where a schedule states no limits, 0.6 to 1.4 times its setting
/// is searched, and a finding says so. Under a guarded decision the limits are tightened by the expanded
/// uncertainty where room is left.
/// What is held stays as it is planned, and the limits of the rest are kept with the margin that is asked
/// for; a schedule of the plan is taken only where it does so too.

enum class FitObjective {
  time,  ///< arc time with its starts and ends
  heat,  ///< heat brought in by all passes
  cost,  ///< wire, gas, energy and the robot's or welder's time
};

std::optional<FitObjective> fit_objective_of(std::string_view name);
const char* to_string(FitObjective objective);

/// What can stay as it is planned.
enum class FitHold { wire_feed, voltage, travel_speed, passes };
inline constexpr FitHold fit_holds[] = {FitHold::wire_feed, FitHold::voltage, FitHold::travel_speed,
                                        FitHold::passes};

std::optional<FitHold> fit_hold_of(std::string_view name);
const char* to_string(FitHold hold);

struct FitOptions {
  static constexpr double most_margin_pct = 50;

  FitObjective objective = FitObjective::time;
  std::vector<std::string> seams;  ///< "WELDMENT/SEAM", or an id that one weldment alone has; empty: all
  std::vector<FitHold> holds;
  /// Share of each limit that a value stays inside it. Not of what is estimated (preheat, hardness).
  double margin_pct = 0;

  bool is_held(FitHold hold) const { return std::find(holds.begin(), holds.end(), hold) != holds.end(); }
};

/// One choice of settings.
struct FitPoint {
  double wire_feed_speed_m_min = 0, arc_voltage_V = 0, travel_speed_mm_s = 0, current_A = 0;
  double arc_power_W = 0, melting_rate_kg_h = 0, heat_input_kJ_mm = 0;
  int passes = 1;
};

/// New settings for the passes that a seam welds with one schedule.
struct FitChange {
  std::string schedule;  ///< the one that was planned
  FitPoint settings;
};

/// What a seam's fitted passes are welded with, and what that gives for the whole seam.
struct FitSettings {
  std::string schedule;
  int revision = 1;
  double wire_feed_speed_m_min = 0, arc_voltage_V = 0, travel_speed_mm_s = 0;
  int passes = 0;                            ///< with this schedule
  double time_s = 0, heat_kJ = 0, cost = 0;  ///< of all the seam's passes
  double heat_input_kJ_mm = 0;               ///< of one fitted pass
  std::optional<double> leg_mm;
};

/// A limit that settings break.
struct BrokenLimit {
  std::string rule;
  Sentence sentence;
};

/// A limit that the settings are at, or that conflicts with others.
struct FitLimit {
  std::string rule;
  Sentence what;  ///< "Heat input"
  std::string key, unit;
  bool is_upper = true;
  std::optional<double> bound;  ///< empty: broken whatever the settings
  /// Of a conflict: to what the bound would have to move so that settings keep the other limits of the
  /// conflict, in the steps that were searched. Where several settings do, those that break the fewest limits
  /// beside the conflict count. Empty where the bound is.
  std::optional<double> needed;
  Sentence sentence;  ///< "Heat input at most 0.79 kJ/mm"
  /// Limits beside the conflict that are broken even then: empty where moving this one bound is enough.
  std::vector<BrokenLimit> needed_with{};
};

struct FittedSeam {
  std::string weldment, seam;
  bool has_settings = false;  ///< settings inside all limits were found
  bool is_changed = false;    ///< and they are better than what was planned, or that broke a limit
  /// `after` is an unchanged schedule of the plan, not new settings.
  bool is_existing = false;
  FitSettings before, after;       ///< after: only with settings
  std::vector<FitChange> changes;  ///< none where it takes a schedule of the plan
  std::vector<FitLimit>
      binding;  ///< without one of these (or, where none does it alone, without all) the seam would do better
  std::vector<FitLimit>
      conflicts;  ///< without settings: no settings keep all of these, and each is needed for that
  /// Where the planned settings broke a limit: schedules of the plan with the same process and wire that keep
  /// all limits on this seam unchanged, in as many passes as planned, besides the one that it takes.
  std::vector<std::string> other_schedules;
  std::vector<std::string> left_as_they_are;  ///< other seams on the schedule that this one had
};

struct FitResult {
  Plan plan;  ///< with the fitted settings
  std::vector<FittedSeam> seams;
  Findings findings;
};

/// The plan with the settings of these seams of a fit of it, and no others: what a person took over.
Plan take_over(const Plan& plan, std::vector<FittedSeam> seams);

/// Fits the seams and returns the plan with the new settings. A schedule that others use, or that is approved
/// or under review, isn't changed: the seam gets the next revision of it as a draft with an id of its own
/// (shared by seams whose fit is the same). A seam welded with several schedules keeps the others (root, cap)
/// and has the one that lays most fitted, the others only where they break a limit of their own. InputError
/// where a seam isn't there. The result doesn't depend on the number of threads.
FitResult fit(const Plan& plan, const FitOptions& options = {}, ThreadPool& pool = ThreadPool::shared());

}  // namespace seamtakt
