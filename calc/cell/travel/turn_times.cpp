#include "cell/travel/turn_times.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

namespace {

/// The angle between two positions of an axis the shorter way round, 0 to 180 degrees.
double shorter_deg(double from_deg, double to_deg) {
  const double angle_deg = std::fmod(std::abs(to_deg - from_deg), 360.0);
  return std::min(angle_deg, 360 - angle_deg);
}

const Turn* find_turn(const Positioner& positioner, const std::string& from, const std::string& to) {
  const auto found = std::find_if(positioner.turns.begin(), positioner.turns.end(),
                                  [&](const Turn& turn) { return turn.from == from && turn.to == to; });
  return found == positioner.turns.end() ? nullptr : &*found;
}

/// Of this direction, else of the other one.
const Turn* turn_between(const Positioner& positioner, const std::string& from, const std::string& to) {
  const Turn* forth = find_turn(positioner, from, to);
  return forth ? forth : find_turn(positioner, to, from);
}

}  // namespace

double turn_time_s(const Cell& cell, const Orientation& from, const Orientation& to) {
  if (from.id == to.id) return 0;
  if (!cell.positioner) return cell.orientation_change_s;
  const Positioner& positioner = *cell.positioner;
  if (const Turn* turn = turn_between(positioner, from.id, to.id)) return turn->time_s;
  const std::vector<double> turns_deg = axis_turns_deg(cell, from, to);
  if (turns_deg.empty()) return cell.orientation_change_s;
  double slowest_s = 0;
  for (std::size_t i = 0; i < turns_deg.size(); ++i)
    slowest_s = std::max(slowest_s, turns_deg[i] / positioner.axis_deg_s[i]);
  return slowest_s + positioner.settle_s;
}

std::vector<double> axis_turns_deg(const Cell& cell, const Orientation& from, const Orientation& to) {
  std::vector<double> turns_deg;
  if (!cell.positioner || turn_between(*cell.positioner, from.id, to.id)) return turns_deg;
  const std::size_t axes = cell.positioner->axis_deg_s.size();
  if (from.axes_deg.size() != axes || to.axes_deg.size() != axes) return turns_deg;
  for (std::size_t i = 0; i < axes; ++i) turns_deg.push_back(shorter_deg(from.axes_deg[i], to.axes_deg[i]));
  return turns_deg;
}

std::vector<double> turn_times_s(const Cell& cell) {
  std::vector<double> times_s;
  if (!cell.positioner) return times_s;
  for (const Orientation& from : cell.orientations)
    for (const Orientation& to : cell.orientations) times_s.push_back(turn_time_s(cell, from, to));
  return times_s;
}

}  // namespace seamtakt
