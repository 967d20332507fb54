// From the time between two passes of a robot: its air speed, and the time of a start.
#include <algorithm>
#include <cmath>
#include <map>

#include "formula/move_time.hpp"
#include "plan/seam_geometry.hpp"
#include "records/learn/learn_parts.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt {

namespace {

/// Nor is a speed known where its interval is wider than this share of it, on either side.
constexpr double widest_share = 0.25;
constexpr double least_move_mm = 1;

/// From one pass to the next of the same robot and unit.
struct Gap {
  double distance_mm = 0;
  /// Between the arcs, without post-flow, sensing and the wrist's turn as the plan has them, and with the
  /// time for which the next arc burned before it moved: the air move and the start remain.
  double time_s = 0;
};

/// The planned seam of a record, where it has a run.
const Seam* welded_seam(const Plan& plan, const PassRecord& record) {
  const Seam* seam = planned_seam(plan, record);
  return seam != nullptr && !weld_runs(*seam).empty() ? seam : nullptr;
}

/// Passes that follow one another directly, with none of any robot begun between them: else this one may have
/// waited for the other.
bool follows(const PassRecord& last, const PassRecord& next) {
  return last.robot == next.robot && last.unit_serial == next.unit_serial && last.weldment == next.weldment &&
         last.seam != next.seam && last.has_calendar_time == next.has_calendar_time &&
         last.source_last == next.source && last.last_arc_ns < next.first_arc_ns && last.pass && next.pass;
}

std::optional<Gap> gap_between(const PassRecord& last, const Example& next, const Plan& plan,
                               const Robot& robot) {
  // A schedule with its own start time tells nothing about the robot's; without the time at rest the end of
  // the start is unknown.
  if (next.schedule->arc_start_s || !next.record->start_stand_s) return std::nullopt;
  const Seam *from = welded_seam(plan, last), *to = welded_seam(plan, *next.record);
  if (from == nullptr || to == nullptr) return std::nullopt;
  Gap gap;
  gap.distance_mm = distance_mm(pass_ends(*from, *last.pass).end, pass_ends(*to, *next.record->pass).begin);
  if (gap.distance_mm < least_move_mm) return std::nullopt;
  const double between_s = static_cast<double>(next.record->first_arc_ns - last.last_arc_ns) / 1e9;
  gap.time_s = between_s - robot.post_flow_s - robot.wrist_s - to->sense_points * robot.sense_point_s +
               *next.record->start_stand_s;
  return gap;
}

using Gaps = std::map<const PassRecord*, Gap>;  ///< by the record that follows

Gaps gaps_of(Examples all, const Plan& plan, const Robot& robot) {
  std::sort(all.begin(), all.end(), [](const Example& a, const Example& b) {
    return a.record->first_arc_ns < b.record->first_arc_ns;
  });
  Gaps gaps;
  for (std::size_t i = 1; i < all.size(); ++i) {
    const PassRecord &last = *all[i - 1].record, &next = *all[i].record;
    if (next.robot != robot.id || !follows(last, next)) continue;
    if (const auto gap = gap_between(last, all[i], plan, robot)) gaps[&next] = *gap;
  }
  return gaps;
}

/// Start + air move at speed x e^p: parameters are the start (s) and p.
double residual_of(const Gap& gap, const Robot& robot, const Eigen::VectorXd& parameters,
                   Eigen::Ref<Eigen::VectorXd> slopes) {
  const double speed = robot.air_speed_mm_s * std::exp(parameters[1]), rate = robot.air_acceleration_mm_s2;
  const auto move = move_time(gap.distance_mm, speed, rate, rate);
  slopes[0] = -1;
  slopes[1] = move.reaches_speed ? gap.distance_mm / speed - speed / rate : 0;
  return gap.time_s - parameters[0] - move.time_s;
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

bool is_clear(const CheckedFit& checked) {
  const double up = std::expm1(checked.fit.high_95[1] - checked.fit.parameters[1]);
  return std::isfinite(up) && up <= widest_share && checked.fit.high_95[0] >= 0 &&
         2 * checked.fit.rejected < checked.fit.rows;
}

}  // namespace

void learn_moves(const Examples& all, const Plan& plan, const Robot& robot, Learned& learned) {
  const std::string place = "cell/robots/" + robot.id;
  const Gaps gaps = gaps_of(all, plan, robot);
  Examples rows;
  for (const Example& example : all)
    if (gaps.contains(example.record)) rows.push_back(example);
  if (rows.empty() || robot.air_speed_mm_s <= 0 || robot.air_acceleration_mm_s2 <= 0) return;
  if (rows.size() < least_records) return note_too_few(place + "/air_speed_mm_s", rows.size(), learned);
  const ExampleResidual residual = [&](const Example& example, const Eigen::VectorXd& parameters,
                                       Eigen::Ref<Eigen::VectorXd> slopes) {
    return residual_of(gaps.at(example.record), robot, parameters, slopes);
  };
  const auto checked = checked_fit(rows, residual, Eigen::Vector2d(robot.arc_start_s, 0));
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
}

}  // namespace seamtakt
