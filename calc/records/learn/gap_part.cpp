#include "records/learn/gap_part.hpp"

#include <algorithm>
#include <cmath>

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
  } else if (positioner.axis_deg_s.empty()) {
    parts.parts.push_back(
        {"cell/orientation_change_s", [](Plan& of) { return &of.cell->orientation_change_s; }});
  } else {
    parts.unknowable.push_back({"cell/positioner/axis_deg_s",
                                "A turn's time doesn't tell the axes' speeds from the settling."_word});
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
