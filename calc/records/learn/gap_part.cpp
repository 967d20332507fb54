#include "records/learn/gap_part.hpp"

#include <algorithm>
#include <cmath>

#include "cell/travel/turn_times.hpp"

namespace seamtakt {

namespace {

constexpr double same_moment_s = 1e-6;
constexpr double no_wait_s = 1e-3;

const std::string& orientation_of(const Weldment& weldment, const std::string& seam_id) {
  static const std::string none;
  const Seam* seam = find_by_id(weldment.seams, seam_id);
  return seam != nullptr ? seam->orientation : none;
}

/// In which the positioner is before a turn: that of the last arc before it which needs one.
std::string orientation_before(const Weldment& weldment, const CycleResult& cycle, double time_s) {
  std::string orientation;
  double latest_s = -1;
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc || move.start_s > time_s || move.start_s < latest_s) continue;
    const std::string& needs = orientation_of(weldment, move.seam);
    if (needs.empty()) continue;
    orientation = needs;
    latest_s = move.start_s;
  }
  return orientation;
}

/// As the timeline takes it: the turn of this direction, else that of the other one; the number of turns
/// where there is neither.
std::size_t turn_index(const Positioner& positioner, const std::string& from, const std::string& to) {
  const auto find = [&](const std::string& a, const std::string& b) {
    const auto at = std::find_if(positioner.turns.begin(), positioner.turns.end(),
                                 [&](const Turn& turn) { return turn.from == a && turn.to == b; });
    return static_cast<std::size_t>(at - positioner.turns.begin());
  };
  const std::size_t forth = find(from, to);
  return forth < positioner.turns.size() ? forth : find(to, from);
}

std::vector<double> turns_deg(const Plan& plan, const std::string& from, const std::string& to) {
  const Orientation *before = find_by_id(plan.cell->orientations, from),
                    *after = find_by_id(plan.cell->orientations, to);
  return before && after ? axis_turns_deg(*plan.cell, *before, *after) : std::vector<double>();
}

/// A turn in which each axis turns at its speed and the slowest one decides.
void add_axes(const Plan& plan, const std::string& from, const std::string& to, GapParts& parts) {
  constexpr double surely_slower = 2;
  const std::vector<double>& speeds_deg_s = plan.cell->positioner->axis_deg_s;
  const std::vector<double> axes_deg = turns_deg(plan, from, to);
  std::vector<double> times_s;
  for (std::size_t i = 0; i < axes_deg.size(); ++i) times_s.push_back(axes_deg[i] / speeds_deg_s[i]);
  const auto slowest = std::max_element(times_s.begin(), times_s.end());
  const auto axis = static_cast<std::size_t>(slowest - times_s.begin());
  for (std::size_t i = 0; i < times_s.size(); ++i)
    if (i != axis && surely_slower * times_s[i] > *slowest) {
      parts.unknowable.push_back({"cell/positioner/axis_deg_s/" + std::to_string(i),
                                  "Axes turn together that take nearly the same time."_word});
      return;
    }
  parts.parts.push_back({"cell/positioner/axis_deg_s/" + std::to_string(axis),
                         [axis](Plan& of) { return &of.cell->positioner->axis_deg_s[axis]; },
                         axes_deg[axis] / 90});
  parts.parts.push_back(
      {"cell/positioner/settle_s", [](Plan& of) { return &of.cell->positioner->settle_s; }});
}

void add_turn(const Plan& plan, const CycleResult& cycle, const Move& turn, GapParts& parts) {
  const Weldment* weldment = find_by_id(plan.weldments, cycle.weldment);
  if (!plan.cell->positioner || weldment == nullptr) {
    parts.parts.push_back(
        {"cell/orientation_change_s", [](Plan& of) { return &of.cell->orientation_change_s; }});
    return;
  }
  const Positioner& positioner = *plan.cell->positioner;
  std::string from = orientation_before(*weldment, cycle, turn.start_s);
  if (from.empty()) from = positioner.load_orientation;
  const std::string to =
      turn.seam.empty() ? positioner.load_orientation : orientation_of(*weldment, turn.seam);
  const std::size_t index = turn_index(positioner, from, to);
  if (index < positioner.turns.size()) {
    const Turn& known = positioner.turns[index];
    parts.parts.push_back({"cell/positioner/turns/" + known.from + "-" + known.to + "/time_s",
                           [index](Plan& of) { return &of.cell->positioner->turns[index].time_s; }});
  } else if (turns_deg(plan, from, to).empty()) {
    parts.parts.push_back(
        {"cell/orientation_change_s", [](Plan& of) { return &of.cell->orientation_change_s; }});
  } else {
    add_axes(plan, from, to, parts);
  }
}

/// The turn that a wait for the positioner is; nullptr where the robot waits for more than that.
const Move* turn_waited_for(const CycleResult& cycle, const Move& wait) {
  for (const Move& move : cycle.moves)
    if (move.kind == MoveKind::orientation && std::fabs(move.start_s - wait.start_s) < same_moment_s &&
        std::fabs(move.end_s - wait.end_s) < same_moment_s)
      return &move;
  return nullptr;
}

/// A sensed point as often as the seam has them.
void add_sensing(const Plan& plan, const CycleResult& cycle, const Move& move, std::size_t robot,
                 GapParts& parts) {
  const Weldment* weldment = find_by_id(plan.weldments, cycle.weldment);
  const Seam* seam = weldment != nullptr ? find_by_id(weldment->seams, move.seam) : nullptr;
  for (int i = 0; seam != nullptr && i < seam->sense_points; ++i)
    parts.parts.push_back({"cell/robots/" + move.robot + "/sense_point_s",
                           [robot](Plan& of) { return &of.cell->robots[robot].sense_point_s; }});
}

void add_of_robot(const Plan& plan, const CycleResult& cycle, const Move& move, bool with_sensing,
                  GapParts& parts) {
  const Robot* robot = find_by_id(plan.cell->robots, move.robot);
  if (robot == nullptr) return;
  const auto index = static_cast<std::size_t>(robot - plan.cell->robots.data());
  const std::string place = "cell/robots/" + move.robot + "/";
  if (move.kind == MoveKind::sense && with_sensing) add_sensing(plan, cycle, move, index, parts);
  if (move.kind == MoveKind::wire_change && robot->wire_change_s)
    parts.parts.push_back(
        {place + "wire_change_s", [index](Plan& of) { return &*of.cell->robots[index].wire_change_s; }});
  if (move.kind == MoveKind::spool_change && robot->spool_change_s)
    parts.parts.push_back(
        {place + "spool_change_s", [index](Plan& of) { return &*of.cell->robots[index].spool_change_s; }});
  if (move.kind == MoveKind::tip_change && robot->tip_change)
    parts.parts.push_back({place + "tip_change/time_s",
                           [index](Plan& of) { return &of.cell->robots[index].tip_change->time_s; }});
}

void add_move(const Plan& plan, const CycleResult& cycle, const Move& move, bool with_sensing,
              GapParts& parts) {
  switch (move.kind) {
    case MoveKind::orientation:
      return add_turn(plan, cycle, move, parts);
    case MoveKind::service:
      if (plan.cell->torch_service)
        parts.parts.push_back(
            {"cell/torch_service/time_s", [](Plan& of) { return &of.cell->torch_service->time_s; }});
      return;
    case MoveKind::wait: {
      if (move.end_s - move.start_s < no_wait_s) return;
      const Move* turn = move.cause == WaitCause::positioner ? turn_waited_for(cycle, move) : nullptr;
      if (turn != nullptr)
        add_turn(plan, cycle, *turn, parts);
      else
        parts.waits = true;
      return;
    }
    default:
      return add_of_robot(plan, cycle, move, with_sensing, parts);
  }
}

}  // namespace

GapParts gap_parts(const Plan& plan, const PlannedTimeline& planned, const CycleStep& gap,
                   bool with_sensing) {
  GapParts parts;
  for (const Move* move : planned.moves(gap.robot, gap.planned_from_s, gap.planned_to_s))
    add_move(plan, planned.cycle(), *move, with_sensing, parts);
  return parts;
}

}  // namespace seamtakt
