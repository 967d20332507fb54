// From the time between two passes of a robot: its air speed, and the times of a start and of a sensed point.
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "formula/move_time.hpp"
#include "plan/seam_geometry.hpp"
#include "records/learn/learn_parts.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

namespace {

/// Nor is a speed known where its interval is wider than this share of it, on either side.
constexpr double widest_speed_share = 0.25;
constexpr double least_move_mm = 1;
/// Nor the time of a sensed point where its interval is wider than this share of it, or than this.
constexpr double widest_sense_share = 0.25, widest_sense_s = 0.25;

/// From one pass to the next of the same robot and unit.
struct Gap {
  double distance_mm = 0;
  /// Between the arcs, without post-flow and the wrist's turn as the plan has them, and with the time for
  /// which the next arc burned before it moved: the air move, sensing and the start remain.
  double time_s = 0;
  double sense_points = 0;
};

/// The planned seam of a record, where it has a run.
const Seam* welded_seam(const Plan& plan, const PassRecord& record) {
  const Seam* seam = planned_seam(plan, record);
  return seam != nullptr && !weld_runs(*seam).empty() ? seam : nullptr;
}

/// Passes of a robot that follow one another directly.
bool follows(const PassRecord& last, const PassRecord& next) {
  return last.unit_serial == next.unit_serial && last.weldment == next.weldment && last.seam != next.seam &&
         last.has_calendar_time == next.has_calendar_time && last.source_last == next.source &&
         last.last_arc_ns < next.first_arc_ns && last.pass && next.pass;
}

/// Between them the positioner turns.
bool turns(const Seam& from, const Seam& to) {
  return !from.orientation.empty() && !to.orientation.empty() && from.orientation != to.orientation;
}

std::optional<Gap> gap_between(const PassRecord& last, const Example& next, const Plan& plan,
                               const Robot& robot) {
  // A schedule with its own start time tells nothing about the robot's; without the time at rest the end of
  // the start is unknown.
  if (next.schedule->arc_start_s || !next.record->start_stand_s) return std::nullopt;
  const Seam *from = welded_seam(plan, last), *to = welded_seam(plan, *next.record);
  if (from == nullptr || to == nullptr || turns(*from, *to)) return std::nullopt;
  Gap gap;
  gap.distance_mm = distance_mm(pass_ends(*from, *last.pass).end, pass_ends(*to, *next.record->pass).begin);
  if (gap.distance_mm < least_move_mm) return std::nullopt;
  const double between_s = static_cast<double>(next.record->first_arc_ns - last.last_arc_ns) / 1e9;
  gap.time_s = between_s - robot.post_flow_s - robot.wrist_s + *next.record->start_stand_s;
  gap.sense_points = to->sense_points;
  return gap;
}

using Gaps = std::map<const PassRecord*, Gap>;  ///< by the record that follows

Gaps gaps_of(Examples all, const Plan& plan, const Robot& robot,
             const std::set<const PassRecord*>& after_more) {
  std::sort(all.begin(), all.end(), [](const Example& a, const Example& b) {
    return a.record->first_arc_ns < b.record->first_arc_ns;
  });
  const std::set<std::string_view> parallel = parallel_units(all);
  Gaps gaps;
  const PassRecord* last = nullptr;  // of this robot
  bool others_between = false;
  for (const Example& next : all) {
    if (next.record->robot != robot.id) {
      others_between = true;
      continue;
    }
    // Where robots take turns, this one may have waited for the other.
    const bool may_wait = others_between && !parallel.contains(next.record->unit_serial);
    if (last != nullptr && !may_wait && !after_more.contains(next.record) && follows(*last, *next.record))
      if (const auto gap = gap_between(*last, next, plan, robot)) gaps[next.record] = *gap;
    last = next.record;
    others_between = false;
  }
  return gaps;
}

/// Start + air move at speed x e^p + sensing: parameters are the start (s), p and, where it is fitted, the
/// time of a sensed point (s).
double residual_of(const Gap& gap, const Robot& robot, const Eigen::VectorXd& parameters,
                   Eigen::Ref<Eigen::VectorXd> slopes) {
  const double speed = robot.air_speed_mm_s * std::exp(parameters[1]), rate = robot.air_acceleration_mm_s2;
  const auto move = move_time(gap.distance_mm, speed, rate, rate);
  slopes[0] = -1;
  slopes[1] = move.reaches_speed ? gap.distance_mm / speed - speed / rate : 0;
  const bool fits_sensing = parameters.size() > 2;
  if (fits_sensing) slopes[2] = -gap.sense_points;
  return gap.time_s - parameters[0] - move.time_s -
         gap.sense_points * (fits_sensing ? parameters[2] : robot.sense_point_s);
}

LearnedParameter parameter_of(const std::string& name, const char* unit, double old_value,
                              const CheckedFit& checked) {
  LearnedParameter parameter;
  parameter.name = name;
  parameter.unit = unit;
  parameter.old_value = old_value;
  parameter.records = checked.fit.rows;
  parameter.outliers = checked.fit.rejected;
  return parameter;
}

LearnedParameter start_of(const Robot& robot, const CheckedFit& checked) {
  auto parameter = parameter_of("cell/robots/" + robot.id + "/arc_start_s", "s", robot.arc_start_s, checked);
  parameter.new_value = checked.fit.parameters[0];
  parameter.low_95 = checked.fit.low_95[0];
  parameter.high_95 = checked.fit.high_95[0];
  parameter.leave_one_out_low = checked.left_out_low[0];
  parameter.leave_one_out_high = checked.left_out_high[0];
  if (parameter.new_value > 0)
    parameter.prediction_sd_pct = 100 * checked.prediction_sd / parameter.new_value;
  // A hundredth of a second is below what a cycle shows.
  parameter.proposed = parameter.new_value >= 0 && (robot.arc_start_s < parameter.low_95 - 0.01 ||
                                                    robot.arc_start_s > parameter.high_95 + 0.01);
  return parameter;
}

LearnedParameter speed_of(const Robot& robot, const CheckedFit& checked) {
  auto parameter =
      parameter_of("cell/robots/" + robot.id + "/air_speed_mm_s", "mm/s", robot.air_speed_mm_s, checked);
  const auto speed = [&](const Eigen::VectorXd& of) { return robot.air_speed_mm_s * std::exp(of[1]); };
  parameter.new_value = speed(checked.fit.parameters);
  parameter.low_95 = speed(checked.fit.low_95);
  parameter.high_95 = speed(checked.fit.high_95);
  parameter.leave_one_out_low = speed(checked.left_out_low);
  parameter.leave_one_out_high = speed(checked.left_out_high);
  // The share of a move of a second.
  parameter.prediction_sd_pct = 100 * checked.prediction_sd;
  parameter.proposed = robot.air_speed_mm_s < parameter.low_95 || robot.air_speed_mm_s > parameter.high_95;
  return parameter;
}

LearnedParameter sensing_of(const Robot& robot, const CheckedFit& checked) {
  auto parameter =
      parameter_of("cell/robots/" + robot.id + "/sense_point_s", "s", robot.sense_point_s, checked);
  parameter.new_value = checked.fit.parameters[2];
  parameter.low_95 = checked.fit.low_95[2];
  parameter.high_95 = checked.fit.high_95[2];
  parameter.leave_one_out_low = checked.left_out_low[2];
  parameter.leave_one_out_high = checked.left_out_high[2];
  if (parameter.new_value > 0)
    parameter.prediction_sd_pct = 100 * checked.prediction_sd / parameter.new_value;
  parameter.proposed = parameter.new_value >= 0 && lies_outside(parameter, 0.01);
  return parameter;
}

bool is_clear(const CheckedFit& checked) {
  const double up = std::expm1(checked.fit.high_95[1] - checked.fit.parameters[1]);
  return std::isfinite(up) && up <= widest_speed_share && checked.fit.high_95[0] >= 0 &&
         2 * checked.fit.rejected < checked.fit.rows;
}

/// Whether the time of a sensed point is told apart from that of a start.
bool tells_sensing(const CheckedFit& checked) {
  const double value = checked.fit.parameters[2], half = (checked.fit.high_95[2] - checked.fit.low_95[2]) / 2;
  return is_clear(checked) && checked.fit.high_95[2] >= 0 &&
         half <= std::max(widest_sense_s, widest_sense_share * value);
}

/// With sensing as a third parameter where the gaps tell it, else with the plan's.
std::optional<CheckedFit> fit_of(const Examples& rows, const Gaps& gaps, const Robot& robot,
                                 Learned& learned) {
  const ExampleResidual residual = [&](const Example& example, const Eigen::VectorXd& parameters,
                                       Eigen::Ref<Eigen::VectorXd> slopes) {
    return residual_of(gaps.at(example.record), robot, parameters, slopes);
  };
  double fewest = std::numeric_limits<double>::infinity(), most = 0;
  for (const auto& [record, gap] : gaps) {
    fewest = std::min(fewest, gap.sense_points);
    most = std::max(most, gap.sense_points);
  }
  const std::string name = "cell/robots/" + robot.id + "/sense_point_s";
  if (most > fewest) {
    const auto checked =
        checked_fit(rows, residual, Eigen::Vector3d(robot.arc_start_s, 0, robot.sense_point_s));
    if (checked && tells_sensing(*checked)) return checked;
    learned.undetermined.push_back(
        {name, "The times between passes don't tell it apart from an arc start."_word});
  } else if (most > 0) {
    learned.undetermined.push_back(
        {name, "Each gap has as many sensed points: it can't be told apart from an arc start."_word});
  }
  return checked_fit(rows, residual, Eigen::Vector2d(robot.arc_start_s, 0));
}

}  // namespace

std::set<std::string_view> parallel_units(const Examples& by_time) {
  struct Busy {
    std::string_view robot;
    std::int64_t until_ns;
  };
  std::map<std::string_view, Busy> busy;  // by unit: the arc that ends last so far
  std::set<std::string_view> parallel;
  for (const Example& example : by_time) {
    const PassRecord& record = *example.record;
    const auto [at, is_first] = busy.emplace(record.unit_serial, Busy{record.robot, record.last_arc_ns});
    if (is_first) continue;
    if (at->second.robot != record.robot && record.first_arc_ns < at->second.until_ns)
      parallel.insert(record.unit_serial);
    if (record.last_arc_ns > at->second.until_ns) at->second = {record.robot, record.last_arc_ns};
  }
  return parallel;
}

void learn_moves(const Examples& all, const Plan& plan, const Robot& robot,
                 const std::set<const PassRecord*>& after_more, Learned& learned) {
  const std::string place = "cell/robots/" + robot.id;
  if (robot.approach_mm || robot.clearance_mm || robot.track) {
    learned.undetermined.push_back(
        {place + "/air_speed_mm_s", "The robot's ways aren't straight: no speed is refitted to them."_word});
    return;
  }
  const Gaps gaps = gaps_of(all, plan, robot, after_more);
  Examples rows;
  for (const Example& example : all)
    if (gaps.contains(example.record)) rows.push_back(example);
  if (rows.empty() || robot.air_speed_mm_s <= 0 || robot.air_acceleration_mm_s2 <= 0) return;
  if (rows.size() < least_records) return note_too_few(place + "/air_speed_mm_s", rows.size(), learned);
  const auto checked = fit_of(rows, gaps, robot, learned);
  if (!checked || !is_clear(*checked)) {
    learned.findings.push_back(
        {"learn.moves.unclear", Severity::note, place, static_cast<double>(rows.size()), std::nullopt, "",
         "The times between passes don't follow the robot's ways: they hold waits, or the log isn't of the "
         "cell's own timing; air speed and arc start stay as they are."_word,
         learn_source});
    return;
  }
  const LearnedParameter start = start_of(robot, *checked), speed = speed_of(robot, *checked);
  Robot& proposal = *find_by_id(learned.proposal.cell->robots, robot.id);
  if (start.proposed) proposal.arc_start_s = start.new_value;
  if (speed.proposed) proposal.air_speed_mm_s = speed.new_value;
  learned.parameters.push_back(start);
  learned.parameters.push_back(speed);
  if (checked->fit.parameters.size() < 3) return;
  const LearnedParameter sensing = sensing_of(robot, *checked);
  if (sensing.proposed) proposal.sense_point_s = sensing.new_value;
  learned.parameters.push_back(sensing);
}

}  // namespace seamtakt
